//! Guide runs keep the clearance that they state, all along.

use super::world::site;
use proptest::prelude::*;
use tussock_diagnose::suggest::{End, Room, guide_lines};
use tussock_plane::{BitGrid, Region, Site, rasterise};
use tussock_simulate::Yard;
use tussock_simulate::gardens::{GardenKind, invent};
use tussock_types::{Grid, Place};

const SETBACK_M: f64 = 0.2;
const CELL_M: f64 = 0.15;

fn yard(site: &Site) -> Yard {
    Yard::new(site, -SETBACK_M).unwrap()
}

/// A square pocket about a place.
fn pocket(site: &Site, middle: Place, half_m: f64) -> BitGrid {
    let (low, high) = site.lawn.bounds().unwrap();
    let grid = Grid {
        east_min_m: low.east_m,
        north_min_m: low.north_m,
        cell_m: 0.1,
        columns: ((high.east_m - low.east_m) / 0.1) as usize + 1,
        rows: ((high.north_m - low.north_m) / 0.1) as usize + 1,
    };
    let corner =
        |east: f64, north: f64| Place::new(middle.east_m + east * half_m, middle.north_m + north * half_m);
    let ring = vec![
        corner(-1.0, -1.0),
        corner(1.0, -1.0),
        corner(1.0, 1.0),
        corner(-1.0, 1.0),
        corner(-1.0, -1.0),
    ];
    let square = Region::from_rings(vec![vec![ring]]).unwrap();
    rasterise(&square.intersect(&site.lawn).unwrap(), &grid)
}

/// Least clearance of a line, checked every centimetre.
fn slow_clearance_m(region: &Region, line: &[Place]) -> f64 {
    let mut least_m = f64::INFINITY;
    for pair in line.windows(2) {
        let steps = (pair[0].distance_m(pair[1]) / 0.01).ceil().max(1.0) as usize;
        for step in 0..=steps {
            let share = step as f64 / steps as f64;
            let place = pair[0].towards(pair[1], share);
            let off_m = region.edge_distance_m(place);
            least_m = least_m.min(if region.contains(place) { off_m } else { -off_m });
        }
    }
    least_m
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(24))]
    #[test]
    fn a_guide_run_keeps_its_clearance_all_along_and_ends_in_the_pocket(
        kind in 0..5_usize, seed in 0..500_u64, at in (0.05..0.95_f64, 0.05..0.95_f64), half_m in 0.8..3.0_f64,
    ) {
        let site = site(&invent(GardenKind::ALL[kind], seed));
        let yard = yard(&site);
        let room = Room::of(yard.turning_region(), CELL_M);
        let (low, high) = site.lawn.bounds().unwrap();
        let middle = Place::new(
            low.east_m + at.0 * (high.east_m - low.east_m),
            low.north_m + at.1 * (high.north_m - low.north_m),
        );
        let pocket = pocket(&site, middle, half_m);
        let station = site.station.unwrap();
        for (end, laid) in guide_lines(&room, station, &[], &pocket) {
            prop_assert_eq!(laid.line[0], station);
            // From the station to the ground for its middle a machine drives over the lawn's edge.
            let on_ground = &laid.line[1..];
            prop_assert!(on_ground.len() > 1 || end == End::Far);
            let slow_m = slow_clearance_m(yard.turning_region(), on_ground);
            prop_assert!(laid.clearance_m >= 0.02);
            prop_assert!(slow_m >= laid.clearance_m - 1e-9 && slow_m <= laid.clearance_m + 0.02, "{slow_m} {laid:?}");
            let last = *laid.line.last().unwrap();
            let is_near = pocket.cells_on().any(|(x, y)| pocket.grid.centre(x, y).distance_m(last) < 0.2);
            prop_assert!(is_near, "{last:?}");
            let length_m: f64 = laid.line.windows(2).map(|pair| pair[0].distance_m(pair[1])).sum();
            prop_assert!((laid.wire_m - length_m).abs() < 1e-9);
        }
    }
}

#[test]
fn clearances_of_the_grid_are_distances_from_the_edge() {
    let site = site(&invent(GardenKind::Islands, 8));
    let yard = yard(&site);
    let region = yard.turning_region();
    let room = Room::of(region, 0.5);
    for row in 0..room.grid.rows {
        for column in 0..room.grid.columns {
            let place = room.grid.centre(column, row);
            let off_m = region.edge_distance_m(place).min(2.0);
            let expected_m = if region.contains(place) { off_m } else { -off_m };
            assert!((room.at(column, row) - expected_m).abs() < 1e-9);
        }
    }
}

#[test]
fn a_second_guide_run_branches_off_the_first_where_that_saves_wire() {
    let site = site(&invent(GardenKind::TwoRooms { passage_m: 1.6 }, 3));
    let yard = yard(&site);
    let room = Room::of(yard.turning_region(), CELL_M);
    let (low, high) = site.lawn.bounds().unwrap();
    // The two places of the lawn farthest from the station.
    let station = site.station.unwrap();
    let far = (0..400)
        .map(|step| {
            Place::new(
                low.east_m + f64::from(step % 20) / 20.0 * (high.east_m - low.east_m),
                low.north_m + f64::from(step / 20) / 20.0 * (high.north_m - low.north_m),
            )
        })
        .filter(|place| {
            yard.turning_region().contains(*place) && yard.turning_region().edge_distance_m(*place) > 0.8
        })
        .max_by(|a, b| a.distance_m(station).total_cmp(&b.distance_m(station)))
        .unwrap();
    let first = guide_lines(&room, station, &[], &pocket(&site, far, 0.8));
    let main = first[0].1.line.clone();
    // Two metres beside the end of the first.
    let beside = Place::new(far.east_m + 1.5, far.north_m + 1.5);
    let second = guide_lines(
        &room,
        station,
        std::slice::from_ref(&main),
        &pocket(&site, beside, 0.8),
    );
    for (_, laid) in second {
        let whole_m: f64 = laid.line.windows(2).map(|pair| pair[0].distance_m(pair[1])).sum();
        assert!(laid.wire_m < 0.67 * whole_m, "{} of {whole_m}", laid.wire_m);
        assert_eq!(laid.line[0], station);
    }
}
