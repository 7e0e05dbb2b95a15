//! Swath areas against closed forms and against polygons.

use crate::laid::{
    AWAY_S, WIDTH_M, along, cell_error_m2, counted, driven, lawn_around, lawn_of, placed, visited_m2,
};
use approx::{assert_abs_diff_eq, assert_relative_eq};
use geo::{Area, BooleanOps, Polygon};
use std::f64::consts::{FRAC_PI_4, PI, TAU};
use tussock_coverage::swath;
use tussock_coverage::visits::{count, grid_over};
use tussock_plane::BitGrid;
use tussock_types::{Grid, Place};

/// Turned by angles that no grid line has, shifted by parts of a cell.
const ANGLES_RAD: [f64; 6] = [0.11, 0.37, 0.74, 1.29, 2.03, 2.71];

fn shift(index: usize) -> Place {
    Place::new(0.0071 * index as f64, -0.0053 * index as f64)
}

/// Each place within four of the count's own standard deviations, and their mean within four of those of a mean.
fn assert_area(legs: &[(Place, Place)], expected_m2: f64) {
    let mut sum_m2 = 0.0;
    let mut variance_m4 = 0.0;
    for (index, angle_rad) in ANGLES_RAD.iter().enumerate() {
        let count = counted(
            lawn_around(12.0),
            &driven(&placed(legs, *angle_rad, shift(index))),
        );
        let (found_m2, error_m2) = (visited_m2(&count), cell_error_m2(&count));
        assert!(
            error_m2 > 0.0 && error_m2 < 0.01 * expected_m2,
            "stated error {error_m2} m2 of {expected_m2} m2"
        );
        assert!(
            (found_m2 - expected_m2).abs() <= 4.0 * error_m2,
            "{found_m2} m2 for {expected_m2} m2 at {angle_rad} rad, stated error {error_m2} m2"
        );
        sum_m2 += found_m2;
        variance_m4 += error_m2 * error_m2;
    }
    let count = ANGLES_RAD.len() as f64;
    let off_m2 = (sum_m2 / count - expected_m2).abs();
    assert!(off_m2 <= 4.0 * variance_m4.sqrt() / count, "mean {off_m2} m2 off");
}

fn lane(from: (f64, f64), to: (f64, f64)) -> (Place, Place) {
    (Place::new(from.0, from.1), Place::new(to.0, to.1))
}

/// ALG-04. Half a disc at each end (Steiner's formula for the parallel set of a segment): L w + pi w^2 / 4.
#[test]
fn one_leg_sweeps_a_capsule() {
    let expected_m2 = 10.0 * WIDTH_M + FRAC_PI_4 * WIDTH_M * WIDTH_M;
    assert_abs_diff_eq!(expected_m2, 2.238_013_271_1, epsilon = 1e-9);
    assert_area(&[lane((-5.0, 0.0), (5.0, 0.0))], expected_m2);
}

/// ALG-06. The square of the crossing counts once: 2 (L w + pi w^2 / 4) - w^2.
#[test]
fn two_crossing_legs_share_a_square() {
    let expected_m2 = 2.0 * (10.0 * WIDTH_M + FRAC_PI_4 * WIDTH_M * WIDTH_M) - WIDTH_M * WIDTH_M;
    assert_abs_diff_eq!(expected_m2, 4.427_626_542_2, epsilon = 1e-9);
    assert_area(
        &[lane((-5.0, 0.0), (5.0, 0.0)), lane((0.0, -5.0), (0.0, 5.0))],
        expected_m2,
    );
}

/// ALG-07. Two discs of radius r at distance d overlap in 2 r^2 acos(d / 2r) - d sqrt(r^2 - d^2 / 4); half of it lies
/// beyond each end of two lanes. Without the ends ten lanes at 0.18 m cover 10 (9 * 0.18 + 0.22) = 18.4 m2.
#[test]
fn ten_lanes_overlap_along_their_sides() {
    let (radius_m, apart_m) = (0.5 * WIDTH_M, 0.18_f64);
    let lens_m2 = 2.0 * radius_m * radius_m * (apart_m / WIDTH_M).acos()
        - apart_m * (radius_m * radius_m - 0.25 * apart_m * apart_m).sqrt();
    let expected_m2 = 18.4 + 10.0 * PI * radius_m * radius_m - 9.0 * lens_m2;
    let lanes: Vec<(Place, Place)> = (0..10)
        .map(|number| {
            let north_m = apart_m * (f64::from(number) - 4.5);
            lane((-5.0, north_m), (5.0, north_m))
        })
        .collect();
    assert_area(&lanes, expected_m2);
}

/// ALG-08. Lanes to and fro with short cross-overs, 101.62 m: the buffer of the polyline with 64 segments a quarter has
/// 18.77178 m2 (GEOS 3.14 by shapely 2.2).
#[test]
fn lanes_to_and_fro_sweep_the_buffer_of_their_line() {
    let corners: Vec<Place> = (0..10)
        .flat_map(|number| {
            let north_m = 0.18 * (f64::from(number) - 4.5);
            let (start_m, end_m) = if number % 2 == 0 { (-5.0, 5.0) } else { (5.0, -5.0) };
            [Place::new(start_m, north_m), Place::new(end_m, north_m)]
        })
        .collect();
    let legs = along(&corners);
    let length_m: f64 = legs.iter().map(|(from, to)| from.distance_m(*to)).sum();
    assert_abs_diff_eq!(length_m, 101.62, epsilon = 1e-9);
    assert_area(&legs, 18.77178);
}

/// ALG-09. The disc fills a quarter outside the bend; inside it two strips share a square:
/// L w + pi r^2 + (pi / 4 - 1) r^2.
#[test]
fn a_right_angle_is_rounded_outside_and_shared_inside() {
    let radius_m = 0.5 * WIDTH_M;
    let expected_m2 = 10.0 * WIDTH_M + PI * radius_m * radius_m + (FRAC_PI_4 - 1.0) * radius_m * radius_m;
    assert_abs_diff_eq!(expected_m2, 2.235_416_588_9, epsilon = 1e-9);
    assert_area(
        &along(&[
            Place::new(-2.5, -2.5),
            Place::new(2.5, -2.5),
            Place::new(2.5, 2.5),
        ]),
        expected_m2,
    );
}

/// ALG-10. An annulus: 2 pi R w. A polygon of 720 sides keeps within 2.9e-5 m of the circle, 1e-5 of the area.
#[test]
fn a_circle_sweeps_an_annulus() {
    let expected_m2 = TAU * 3.0 * WIDTH_M;
    assert_abs_diff_eq!(expected_m2, 4.146_902_302_7, epsilon = 1e-9);
    let corners: Vec<Place> = (0..=720)
        .map(|side| {
            let angle_rad = TAU * f64::from(side) / 720.0;
            Place::new(3.0 * angle_rad.cos(), 3.0 * angle_rad.sin())
        })
        .collect();
    assert_area(&along(&corners), expected_m2);
}

/// Along the grid, whole rows of cells fall in or out: each side of the strip is wrong by at most half a cell, whatever the
/// offset, and the mean over all offsets is right.
#[test]
fn a_leg_along_the_grid_is_wrong_by_a_row_at_most() {
    let expected_m2 = 10.0 * WIDTH_M + FRAC_PI_4 * WIDTH_M * WIDTH_M;
    let offsets = 40;
    let mut sum_m2 = 0.0;
    let mut cell_m = 0.0;
    for offset in 0..offsets {
        let lawn = lawn_around(6.0);
        cell_m = lawn.grid.cell_m;
        let north_m = cell_m * f64::from(offset) / f64::from(offsets);
        let count = counted(lawn, &driven(&[lane((-5.0, north_m), (5.0, north_m))]));
        let off_m2 = (visited_m2(&count) - expected_m2).abs();
        // The leg, and the caps as far as they go.
        assert!(
            off_m2 <= (10.0 + WIDTH_M) * cell_m,
            "{off_m2} m2 off at {north_m} m"
        );
        sum_m2 += visited_m2(&count) / f64::from(offsets);
    }
    // Forty offsets tell the mean to a fortieth of a row.
    assert_abs_diff_eq!(sum_m2, expected_m2, epsilon = 10.0 * cell_m / f64::from(offsets));
}

/// ALG-13, by numpy: cells of half and of a quarter of a width are too coarse for a strip along the grid, whatever its
/// offset. This is why a cell is a ninth of the width and not a simple fraction of it.
#[test]
fn coarse_cells_misjudge_a_strip_along_the_grid_as_published() {
    let exact_m2 = 10.0 * WIDTH_M + FRAC_PI_4 * WIDTH_M * WIDTH_M;
    for (cell_m, expected_percent) in [(0.1, [36.28, -8.85, -8.85]), (0.05, [13.16, -8.96, -8.85])] {
        for (offset, expected) in [0.0, 0.25, 0.5].into_iter().zip(expected_percent) {
            // Centres lie at whole cells, moved by the offset both ways.
            let low_m = -(20.5 - offset) * cell_m;
            let mut mask = BitGrid::new(Grid {
                east_min_m: low_m,
                north_min_m: low_m,
                cell_m,
                columns: 40 + (10.0 / cell_m) as usize,
                rows: 41,
            });
            swath::mark(
                &mut mask,
                [lane((0.0, 0.0), (10.0, 0.0))].into_iter(),
                0.5 * WIDTH_M,
            );
            let found = 100.0 * (mask.area_m2() / exact_m2 - 1.0);
            assert_abs_diff_eq!(found, expected, epsilon = 0.05);
        }
    }
}

/// A disc that stands: pi w^2 / 4, within what its few cells allow.
#[test]
fn a_stand_paints_a_disc() {
    for index in 0..8 {
        let at = shift(index);
        let count = counted(lawn_around(1.0), &driven(&[(at, at)]));
        let off_m2 = (visited_m2(&count) - FRAC_PI_4 * WIDTH_M * WIDTH_M).abs();
        assert!(off_m2 <= 4.0 * cell_error_m2(&count), "{off_m2} m2 off");
    }
}

/// Outline of a capsule with `sides` corners on each cap.
fn capsule(leg: (Place, Place), radius_m: f64, sides: u32) -> Polygon<f64> {
    let (from, to) = leg;
    let heading_rad = (to.north_m - from.north_m).atan2(to.east_m - from.east_m);
    let cap = |centre: Place, start_rad: f64| {
        (0..=sides).map(move |side| {
            let angle_rad = start_rad + PI * f64::from(side) / f64::from(sides);
            (
                centre.east_m + radius_m * angle_rad.cos(),
                centre.north_m + radius_m * angle_rad.sin(),
            )
        })
    };
    let ring: Vec<(f64, f64)> = cap(to, heading_rad - 0.5 * PI)
        .chain(cap(from, heading_rad + 0.5 * PI))
        .collect();
    Polygon::new(ring.into(), Vec::new())
}

#[test]
fn the_union_of_capsules_as_polygons_has_the_same_area() {
    let legs = [
        lane((-4.0, -1.0), (4.1, 1.3)),
        lane((-3.0, 2.0), (3.7, -2.4)),
        lane((0.2, -4.0), (-0.9, 4.4)),
        lane((-4.0, -0.9), (4.1, 1.45)),
    ];
    let polygons: Vec<Polygon<f64>> = legs.iter().map(|leg| capsule(*leg, 0.5 * WIDTH_M, 256)).collect();
    // The polygon itself: caps of 256 sides are low by (pi / 256)^2 / 6.
    assert_relative_eq!(
        polygons[0].unsigned_area(),
        legs[0].0.distance_m(legs[0].1) * WIDTH_M + FRAC_PI_4 * WIDTH_M * WIDTH_M,
        max_relative = 1e-5
    );
    let union = polygons[1..]
        .iter()
        .fold(geo::MultiPolygon::from(polygons[0].clone()), |all, next| {
            all.union(next)
        });
    let count = counted(lawn_around(6.0), &driven(&legs));
    let off_m2 = (visited_m2(&count) - union.unsigned_area()).abs();
    assert!(off_m2 <= 4.0 * cell_error_m2(&count), "{off_m2} m2 off");
}

#[test]
fn a_grid_holds_to_its_limit_and_keeps_the_wanted_cell_where_it_fits() {
    let at = |east_m, north_m| Place::new(east_m, north_m);
    let mut grown = 0;
    for (width_m, height_m) in [
        (40.0, 35.0),
        (5000.0, 5000.0),
        (5000.0, 0.0),
        (0.0, 0.0),
        (3000.0, 0.2),
        (1e5, 1e5),
    ] {
        for most_cells in [100_u64, 1_000, 99_999, 40_000_000] {
            let grid = grid_over(at(0.0, 0.0), at(width_m, height_m), 0.0238, most_cells);
            assert!(
                grid.cells() as u64 <= most_cells,
                "{width_m} x {height_m}: {grid:?}"
            );
            // With one cell fewer than the desired size needs, it grows; with as many, it does not.
            let wanted = ((width_m / 0.0238 + 3.0) * (height_m / 0.0238 + 3.0)).ceil();
            assert_eq!(
                grid.cell_m > 0.0238,
                wanted > most_cells as f64,
                "{width_m} x {height_m}, {most_cells}"
            );
            grown += usize::from(grid.cell_m > 0.0238);
            // It grows no more than it must, by a little.
            let half_as_many =
                ((width_m / grid.cell_m + 3.0) * (height_m / grid.cell_m + 3.0)) > 0.9 * most_cells as f64;
            assert!(grid.cell_m == 0.0238 || half_as_many, "{grid:?}");
        }
    }
    assert!(grown > 8);
}

#[test]
fn a_jump_of_100_km_does_not_allocate_the_land_between() {
    // One leg here, one 100 km away, on a lawn that spans both.
    let leg = |east_m: f64| (Place::new(east_m, 0.0), Place::new(east_m + 20.0, 0.0));
    let near = [leg(0.0), leg(30.0)];
    let far = [leg(0.0), leg(100_000.0)];
    let touched = |legs: &[(Place, Place)]| {
        let (low, high) = (Place::new(-1.0, -1.0), Place::new(legs[1].1.east_m + 1.0, 1.0));
        let lawn = lawn_of(grid_over(low, high, 0.1, 40_000_000));
        let cells = lawn.grid.cells();
        let count = count(lawn, &driven(legs), WIDTH_M, AWAY_S, (0.0, 200.0));
        (count.touched_tiles(), cells)
    };
    let ((here, few), (there, many)) = (touched(&near), touched(&far));
    assert!(many > 1000 * few, "{many} and {few} cells");
    // A tile is 32 cells wide, so a leg of 20 m touches seven or eight, once or twice as high.
    assert!((14..=32).contains(&here), "{here}");
    assert!(here.abs_diff(there) <= 4, "{here} and {there} tiles");
}
