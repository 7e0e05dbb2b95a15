//! Night simulations are the same on any number of threads, and agree with a slow count.

use super::world::site;
use tussock_diagnose::night_simulation::{Access, CELL_M, Cast, Scene};
use tussock_plane::{BitGrid, Region, Site, rasterise};
use tussock_simulate::gardens::{GardenKind, invent};
use tussock_simulate::{Machine, Run, Yard};
use tussock_types::Place;

const SEED: u64 = 5;
const CUT_WIDTH_M: f64 = 0.22;

fn cast(site: &Site, hours: f64, access: Access) -> Cast {
    let machine = Machine::default();
    Cast {
        yard: Yard::new(site, machine.past_boundary_m).unwrap(),
        machine,
        run: Run::new(hours, 0),
        access,
    }
}

fn square(middle: Place, half_m: f64) -> Region {
    let corner =
        |east: f64, north: f64| Place::new(middle.east_m + east * half_m, middle.north_m + north * half_m);
    let ring = vec![
        corner(-1.0, -1.0),
        corner(1.0, -1.0),
        corner(1.0, 1.0),
        corner(-1.0, 1.0),
        corner(-1.0, -1.0),
    ];
    Region::from_rings(vec![vec![ring]]).unwrap()
}

/// Cells within the radius of any leg, one by one.
fn slow(lawn: &BitGrid, legs: &[[Place; 2]], radius_m: f64) -> f64 {
    let mut visited = 0.0;
    for (column, row) in lawn.cells_on() {
        let at = lawn.grid.centre(column, row);
        let is_under = legs.iter().any(|[from, to]| {
            let (dx, dy) = (to.east_m - from.east_m, to.north_m - from.north_m);
            let square = dx * dx + dy * dy;
            let along = if square > 0.0 {
                (((at.east_m - from.east_m) * dx + (at.north_m - from.north_m) * dy) / square).clamp(0.0, 1.0)
            } else {
                0.0
            };
            at.distance_m(Place::new(from.east_m + along * dx, from.north_m + along * dy)) <= radius_m
        });
        visited += f64::from(u8::from(is_under));
    }
    visited / lawn.count() as f64
}

#[test]
fn fractions_and_density_agree_with_a_count_cell_by_cell() {
    let site = site(&invent(GardenKind::Ell, SEED));
    let cast = cast(&site, 1.0, Access::AsIs);
    let mut scene = Scene::of(&site, CELL_M, CUT_WIDTH_M);
    let pocket = rasterise(&square(site.lawn.centroid().unwrap(), 2.0), &scene.lawn.grid);
    scene = scene.with_pocket(&pocket);
    let found = cast.play(&scene, SEED, 0..2).unwrap();
    for (number, fractions) in found.iter().enumerate() {
        let legs = cast.legs(SEED, number as u64).unwrap();
        assert!((fractions.lawn - slow(&scene.lawn, &legs, 0.5 * CUT_WIDTH_M)).abs() < 1e-3);
        assert!((fractions.pockets[0] - slow(&scene.pockets[0], &legs, 0.5 * CUT_WIDTH_M)).abs() < 1e-3);
    }
    // Mean density times area is the path on the lawn, except for what lies beyond its edge.
    let density = cast.density(&scene, SEED, 0..4).unwrap();
    let path_m: f64 = (0..4)
        .flat_map(|number| cast.legs(SEED, number).unwrap())
        .map(|[from, to]| from.distance_m(to))
        .sum::<f64>()
        / 4.0;
    let counted_m = density.mean(&scene.lawn) * site.lawn.area_m2();
    assert!((counted_m / path_m - 1.0).abs() < 0.05, "{counted_m} {path_m}");
}

#[test]
fn rehearsals_are_the_same_on_any_number_of_threads() {
    let site = site(&invent(GardenKind::You, SEED));
    let scene = Scene::of(&site, CELL_M, CUT_WIDTH_M);
    for access in [Access::AsIs, Access::Free { path_m: 3000.0 }] {
        let cast = cast(&site, 2.0, access);
        let on = |threads: usize| {
            rayon::ThreadPoolBuilder::new()
                .num_threads(threads)
                .build()
                .unwrap()
                .install(|| {
                    let runs = cast.play(&scene, SEED, 0..8).unwrap();
                    (runs, cast.density(&scene, SEED, 0..8).unwrap())
                })
        };
        assert_eq!(on(1), on(3));
    }
}
