//! The user's own grids, against slow twins in whole numbers, closed forms and polygons.

#![allow(clippy::unwrap_used)]

use crate::laid::driven;
use approx::{assert_abs_diff_eq, assert_relative_eq};
use geo::{Area, BooleanOps, LineString, Polygon};
use proptest::prelude::*;
use tussock_coverage::custom::{CustomGrid, CustomGridError, Division, GridCount, VisitRule, count};
use tussock_coverage::swath::Sweep;
use tussock_types::Place;

/// Coordinates are whole multiples of this, so that whole numbers say exactly where they lie.
const UNIT_M: f64 = 1.0 / (1_u64 << 40) as f64;

type Whole = (i64, i64);

fn place((x, y): Whole) -> Place {
    Place::new(x as f64 * UNIT_M, y as f64 * UNIT_M)
}

/// The cell by whole numbers: floor of `count * cross / cross`.
fn slow_cell(point: Whole, corners: [Whole; 3], cells: (i64, i64)) -> Option<(usize, usize)> {
    let wide =
        |(x, y): Whole, (ox, oy): Whole| (i128::from(x) - i128::from(ox), i128::from(y) - i128::from(oy));
    let (a, b, p) = (
        wide(corners[1], corners[0]),
        wide(corners[2], corners[0]),
        wide(point, corners[0]),
    );
    let cross = |u: (i128, i128), v: (i128, i128)| u.0 * v.1 - u.1 * v.0;
    let floor = |top: i128, bottom: i128| {
        if bottom > 0 {
            top.div_euclid(bottom)
        } else {
            (-top).div_euclid(-bottom)
        }
    };
    let column = floor(i128::from(cells.0) * cross(p, b), cross(a, b));
    let row = floor(i128::from(cells.1) * cross(a, p), cross(a, b));
    let inside = (0..i128::from(cells.0)).contains(&column) && (0..i128::from(cells.1)).contains(&row);
    inside.then_some((column as usize, row as usize))
}

fn grid(corners: [Whole; 3], cells: (i64, i64)) -> Option<CustomGrid> {
    CustomGrid::from_corners(
        place(corners[0]),
        place(corners[1]),
        place(corners[2]),
        Division::Counts {
            columns: cells.0 as usize,
            rows: cells.1 as usize,
        },
    )
    .ok()
}

proptest! {
    #[test]
    fn the_cell_of_any_place_is_the_one_that_whole_numbers_say(
        origin in (-(1_i64 << 47)..1 << 47, -(1_i64 << 47)..1 << 47),
        a in (-(1_i64 << 46)..1 << 46, -(1_i64 << 46)..1 << 46),
        b in (-(1_i64 << 46)..1 << 46, -(1_i64 << 46)..1 << 46),
        cells in (1_i64..90, 1_i64..90),
        at in (-0.2..1.2_f64, -0.2..1.2_f64),
        nudge in (-3_i64..4, -3_i64..4),
        on_edges in any::<bool>(),
    ) {
        let corners = [origin, (origin.0 + a.0, origin.1 + a.1), (origin.0 + b.0, origin.1 + b.1)];
        let Some(grid) = grid(corners, cells) else { return Ok(()) };
        // Anywhere, or within a few units (about a picometre) of an edge, where plain arithmetic cannot decide.
        let part = |share: f64, cells: i64| {
            if on_edges { (share * cells as f64).round() / cells as f64 } else { share }
        };
        let (u, v) = (part(at.0, cells.0), part(at.1, cells.1));
        let point = (
            origin.0 + (u * a.0 as f64 + v * b.0 as f64) as i64 + nudge.0,
            origin.1 + (u * a.1 as f64 + v * b.1 as f64) as i64 + nudge.1,
        );
        prop_assert_eq!(grid.cell_at(place(point)), slow_cell(point, corners, cells));
    }

    #[test]
    fn corners_of_cells_belong_to_the_cell_above_them(
        a in (-60_i64..60, -60_i64..60), b in (-60_i64..60, -60_i64..60),
        cells in (1_i64..20, 1_i64..20), at in (0_i64..20, 0_i64..20),
    ) {
        // Axes that the cells divide, so that corners of cells are whole numbers and lie on edges exactly.
        let unit = 1_i64 << 30;
        let (a, b) = ((a.0 * unit, a.1 * unit), (b.0 * unit, b.1 * unit));
        let corners = [(unit, -unit), (unit + cells.0 * a.0, -unit + cells.0 * a.1), (unit + cells.1 * b.0, -unit + cells.1 * b.1)];
        let Some(grid) = grid(corners, cells) else { return Ok(()) };
        let corner = (unit + at.0 * a.0 + at.1 * b.0, -unit + at.0 * a.1 + at.1 * b.1);
        let inside = at.0 < cells.0 && at.1 < cells.1;
        prop_assert_eq!(grid.cell_at(place(corner)), inside.then_some((at.0 as usize, at.1 as usize)));
    }

    #[test]
    fn a_path_crosses_the_cells_that_fractions_say(
        ends in prop::collection::vec((-16_i64..112, -16_i64..88), 2..6), turned in any::<bool>(),
    ) {
        // A unit grid of 12 x 9, ends on eighths: many on edges and corners.
        let grid = if turned {
            // The same cells, axes exchanged and mirrored.
            CustomGrid::from_corners(Place::default(), Place::new(0.0, 12.0), Place::new(9.0, 0.0), Division::Counts { columns: 12, rows: 9 })
        } else {
            CustomGrid::from_corners(Place::default(), Place::new(12.0, 0.0), Place::new(0.0, 9.0), Division::Counts { columns: 12, rows: 9 })
        }.unwrap();
        let laid = |(x, y): (i64, i64)| {
            let (x, y) = (x as f64 / 8.0, y as f64 / 8.0);
            if turned { Place::new(y, x) } else { Place::new(x, y) }
        };
        let sweeps = timed(&ends.windows(2).map(|pair| (laid(pair[0]), laid(pair[1]))).collect::<Vec<_>>());
        let found = count(&grid, VisitRule::PathCrosses, [], &sweeps, 0.0);
        for row in 0..9 {
            for column in 0..12 {
                let times = ends.windows(2).filter(|pair| slow_crosses(pair[0], pair[1], (column, row))).count();
                prop_assert_eq!(found.hits[(row * 12 + column) as usize] as usize, times, "cell {} {}", column, row);
                prop_assert_eq!(found.visited_fraction[(row * 12 + column) as usize] > 0.0, times > 0);
            }
        }
    }

    #[test]
    fn centres_under_a_swath_are_those_that_a_distance_test_finds(
        from in (-2.0..9.0_f64, -2.0..9.0_f64), to in (-2.0..9.0_f64, -2.0..9.0_f64),
        stands in any::<bool>(), cut_width_m in 0.1..2.0_f64, direction_deg in -180.0..180.0_f64,
        lean in -0.8..0.8_f64,
    ) {
        let grid = leaning(direction_deg, lean);
        let (from, to) = (Place::new(from.0, from.1), Place::new(to.0, to.1));
        let to = if stands { from } else { to };
        let found = count(&grid, VisitRule::SwathCoversCentre { cut_width_m }, [], &timed(&[(from, to)]), 0.0);
        for row in 0..grid.rows() {
            for column in 0..grid.columns() {
                let centre = grid.centre(column, row);
                let distance_m = centre.off_piece_m(from, to);
                // On the rim to the last digits it may fall either way.
                if (distance_m - 0.5 * cut_width_m).abs() > 1e-9 {
                    prop_assert_eq!(found.hits[row * grid.columns() + column] > 0, distance_m < 0.5 * cut_width_m);
                }
            }
        }
    }
}

/// A grid of 7 x 5 cells of 0.6 x 0.9 m, its second axis leaning.
fn leaning(direction_deg: f64, lean: f64) -> CustomGrid {
    let straight =
        CustomGrid::turned(Place::new(1.0, 2.0), direction_deg, (0.6, 0.9), 7, 5).expect("a sound grid");
    let (a, b) = (straight.place_at(7.0, 0.0), straight.place_at(7.0 * lean, 5.0));
    CustomGrid::from_corners(straight.origin(), a, b, Division::Counts { columns: 7, rows: 5 })
        .expect("a sound grid")
}

/// Ten seconds a leg, one after the other.
fn timed(legs: &[(Place, Place)]) -> Vec<Sweep> {
    let mut start_s = 0.0;
    legs.iter()
        .map(|(from, to)| {
            start_s += 10.0;
            Sweep {
                from: *from,
                to: *to,
                start_s: start_s - 10.0,
                end_s: start_s,
                driving_before_s: start_s - 10.0,
                driving_s: 10.0,
            }
        })
        .collect()
}

/// Whether any place of a straight piece lies in a half-open unit cell, with ends in eighths: bounds on the fraction of the
/// way, each with whether it belongs.
fn slow_crosses(from: Whole, to: Whole, (column, row): (i64, i64)) -> bool {
    let mut lower = vec![((0, 1), true)];
    let mut upper = vec![((1, 1), true)];
    for (at, step, low) in [
        (from.0, to.0 - from.0, 8 * column),
        (from.1, to.1 - from.1, 8 * row),
    ] {
        let (first, end) = (low - at, low + 8 - at);
        match step {
            0 if first > 0 || end <= 0 => return false,
            0 => {}
            step if step > 0 => {
                lower.push(((first, step), true));
                upper.push(((end, step), false));
            }
            step => {
                upper.push(((-first, -step), true));
                lower.push(((-end, -step), false));
            }
        }
    }
    lower.iter().all(|((a, b), low_belongs)| {
        upper.iter().all(|((c, d), high_belongs)| {
            let (left, right) = (a * d, c * b);
            left < right || (left == right && *low_belongs && *high_belongs)
        })
    })
}

#[test]
fn a_fix_on_an_edge_is_of_one_cell_and_a_stay_is_one_visit() {
    let grid = CustomGrid::turned(Place::default(), 0.0, (1.0, 1.0), 3, 2).unwrap();
    let fix = |time_s: f64, x: f64, y: f64| (time_s, Place::new(x, y), 0);
    let fixes = [
        fix(0.0, 0.5, 0.5),
        // Sixty seconds in one cell are one visit.
        fix(60.0, 0.6, 0.5),
        // On the edge: of the next cell.
        fix(61.0, 1.0, 0.5),
        fix(62.0, 0.9, 0.5),
        fix(70.0, 1.5, 1.0),
        // Back after more than 30 s.
        fix(110.0, 0.2, 0.2),
        // On the upper edge: outside.
        fix(111.0, 0.5, 2.0),
    ];
    let found = count(&grid, VisitRule::FixInside, fixes, &[], 30.0);
    assert_eq!(found.hits, [4, 1, 0, 0, 1, 0]);
    assert_eq!(found.visits, [2.0, 1.0, 0.0, 0.0, 1.0, 0.0]);
    assert_eq!(found.cells_visited(), 3);
    assert_abs_diff_eq!(found.visited_m2(), 3.0, epsilon = 1e-12);
    // Every entry a visit of its own.
    let found = count(&grid, VisitRule::FixInside, fixes, &[], 0.0);
    assert_eq!(found.visits, [3.0, 1.0, 0.0, 0.0, 1.0, 0.0]);
}

#[test]
fn corners_on_one_line_no_cells_and_no_numbers_make_no_grid() {
    let one = Division::Counts { columns: 1, rows: 1 };
    let at = Place::new;
    let made = |a, b, division| CustomGrid::from_corners(at(0.0, 0.0), a, b, division);
    assert!(matches!(
        made(at(1.0, 1.0), at(2.0, 2.0), one),
        Err(CustomGridError::Flat { .. })
    ));
    assert!(matches!(
        made(at(0.0, 0.0), at(2.0, 2.0), one),
        Err(CustomGridError::Flat { .. })
    ));
    let nan = made(at(f64::NAN, 1.0), at(2.0, 2.0), one).unwrap_err();
    assert_eq!(
        nan.to_string(),
        "the end of the columns of the grid is at NaN, 1; expected finite numbers"
    );
    let none = Division::Counts { columns: 0, rows: 4 };
    assert!(matches!(
        made(at(1.0, 0.0), at(0.0, 1.0), none),
        Err(CustomGridError::Cells { .. })
    ));
    let fine = Division::Sides {
        column_m: 1e-6,
        row_m: 1e-6,
    };
    assert!(matches!(
        made(at(1.0, 0.0), at(0.0, 1.0), fine),
        Err(CustomGridError::Cells { .. })
    ));
    // Sides that do not divide the axis reach past it.
    let grid = made(
        at(1.0, 0.0),
        at(0.0, 1.0),
        Division::Sides {
            column_m: 0.3,
            row_m: 0.25,
        },
    )
    .unwrap();
    assert_eq!((grid.columns(), grid.rows()), (4, 4));
    assert_abs_diff_eq!(grid.extent_m().0, 1.2, epsilon = 1e-12);
    assert_abs_diff_eq!(grid.cell_m2(), 0.075, epsilon = 1e-12);
}

fn by_area(grid: &CustomGrid, legs: &[(Place, Place)], cut_width_m: f64) -> GridCount {
    count(
        grid,
        VisitRule::AreaWeighted { cut_width_m },
        [],
        &timed(legs),
        0.0,
    )
}

#[test]
fn areas_of_capsules_agree_with_closed_forms() {
    let at = Place::new;
    // ALG-04: one capsule of 10 m and 0.22 m; ALG-06: two that cross.
    for direction_deg in [0.0, 17.0, 90.0, 203.0] {
        let middle = CustomGrid::turned(at(0.0, 0.0), direction_deg, (0.5, 0.7), 40, 30)
            .unwrap()
            .place_at(20.0, 15.0);
        let grid = CustomGrid::turned(
            at(-middle.east_m, -middle.north_m),
            direction_deg,
            (0.5, 0.7),
            40,
            30,
        )
        .unwrap();
        let one = by_area(&grid, &[(at(-5.0, 0.0), at(5.0, 0.0))], 0.22);
        // A lane along the axis can be off by one line of 64 in the width.
        assert_relative_eq!(one.visited_m2(), 2.2380132711, max_relative = 1.0 / 64.0);
        let legs = [(at(-5.0, 0.0), at(5.0, 0.0)), (at(0.0, -5.0), at(0.0, 5.0))];
        let two = by_area(&grid, &legs, 0.22);
        assert_relative_eq!(two.visited_m2(), 4.4276265422, max_relative = 1.0 / 64.0);
        assert_relative_eq!(
            two.visits.iter().sum::<f64>() * grid.cell_m2(),
            2.0 * 2.2380132711,
            max_relative = 1.0 / 64.0
        );
        if direction_deg == 17.0 {
            assert_relative_eq!(two.visited_m2(), 4.4276265422, max_relative = 2e-4);
        }
    }
    // ALG-07: ten flat passes 18 cm apart, 22 cm wide: 18.4 m2 within their length, 16.364 % driven over again.
    let grid = CustomGrid::turned(at(0.0, 0.0), 0.0, (1.0, 0.25), 10, 12).unwrap();
    let lanes: Vec<_> = (0..10)
        .map(|lane| f64::from(lane) * 0.18 + 0.5)
        .map(|y| (at(-1.0, y), at(11.0, y)))
        .collect();
    let found = by_area(&grid, &lanes, 0.22);
    assert_relative_eq!(found.visited_m2(), 18.4, max_relative = 2e-3);
    let swept_m2 = found.visits.iter().sum::<f64>() * grid.cell_m2();
    assert_abs_diff_eq!(1.0 - found.visited_m2() / swept_m2, 0.16364, epsilon = 2e-3);
    assert_eq!(found.hits[2 * 10 + 3], 2);
}

#[test]
fn the_part_of_each_cell_is_what_polygons_say() {
    let at = Place::new;
    let ring = |places: &[Place]| {
        let line: Vec<(f64, f64)> = places.iter().map(|place| (place.east_m, place.north_m)).collect();
        Polygon::new(LineString::from(line), Vec::new())
    };
    for (direction_deg, lean) in [(0.0, 0.0), (23.0, 0.0), (-71.0, 0.4), (140.0, -0.6)] {
        let grid = leaning(direction_deg, lean);
        let middle = grid.place_at(3.5, 2.5);
        // A strip that reaches past the grid on both sides, so that its ends do not matter.
        let (sine, cosine) = 0.63_f64.sin_cos();
        let (from, to) = (
            at(middle.east_m - 20.0 * cosine, middle.north_m - 20.0 * sine),
            at(middle.east_m + 20.0 * cosine, middle.north_m + 20.0 * sine),
        );
        let half_m = 0.35;
        let aside = |place: Place, by_m: f64| at(place.east_m - by_m * sine, place.north_m + by_m * cosine);
        let strip = ring(&[
            aside(from, -half_m),
            aside(to, -half_m),
            aside(to, half_m),
            aside(from, half_m),
        ]);
        let found = by_area(&grid, &[(from, to)], 2.0 * half_m);
        for row in 0..grid.rows() {
            for column in 0..grid.columns() {
                let cell = ring(&grid.corners(column, row));
                let expected = cell.intersection(&strip).unsigned_area() / cell.unsigned_area();
                let part = found.visited_fraction[row * grid.columns() + column];
                assert!(
                    (part - expected).abs() < 4e-4,
                    "{direction_deg} {column} {row}: {part} for {expected}"
                );
            }
        }
    }
}

#[test]
fn a_square_grid_along_the_axes_counts_what_the_lawn_grid_counts() {
    let legs = [(0.3, 0.4, 5.2, 3.3), (5.2, 3.3, 1.0, 5.9), (1.0, 5.9, 6.1, 0.2)]
        .map(|(a, b, c, d)| (Place::new(a, b), Place::new(c, d)));
    let grid = CustomGrid::turned(Place::default(), 0.0, (0.1, 0.1), 70, 70).unwrap();
    let found = count(
        &grid,
        VisitRule::SwathCoversCentre { cut_width_m: 0.22 },
        [],
        &driven(&legs),
        30.0,
    );
    let mut mask = tussock_plane::BitGrid::new(tussock_types::Grid {
        east_min_m: 0.0,
        north_min_m: 0.0,
        cell_m: 0.1,
        columns: 70,
        rows: 70,
    });
    tussock_coverage::swath::mark(&mut mask, legs.iter().copied(), 0.11);
    assert_eq!(found.cells_visited() as u64, mask.count());
    for (column, row) in mask.cells_on() {
        assert!(found.visits[row * 70 + column] > 0.0);
    }
}
