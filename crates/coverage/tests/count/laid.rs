//! Sweeps drawn by hand on a rectangular lawn.

use tussock_coverage::swath::Sweep;
use tussock_coverage::visits::{Count, cell_for_width_m, count, grid_over};
use tussock_plane::BitGrid;
use tussock_types::{Grid, Place};

/// Cutting width.
pub(crate) const WIDTH_M: f64 = 0.22;
/// Time away that makes a new visit.
pub(crate) const AWAY_S: f64 = 30.0;
/// Driving speed.
pub(crate) const SPEED_MPS: f64 = 0.4;

/// A lawn over a box, with the usual cells for the cutting width.
pub(crate) fn lawn(south_west: Place, north_east: Place) -> BitGrid {
    lawn_of(grid_over(
        south_west,
        north_east,
        cell_for_width_m(WIDTH_M),
        40_000_000,
    ))
}

/// All cells of a grid are lawn.
pub(crate) fn lawn_of(grid: Grid) -> BitGrid {
    let mut lawn = BitGrid::new(grid);
    (0..grid.rows).for_each(|row| lawn.set_span(row, 0, grid.columns));
    lawn
}

/// A lawn with room for everything within `reach_m` of the origin.
pub(crate) fn lawn_around(reach_m: f64) -> BitGrid {
    lawn(Place::new(-reach_m, -reach_m), Place::new(reach_m, reach_m))
}

/// Legs driven one after the other, without waits; a leap from one to the next takes no time.
pub(crate) fn driven(legs: &[(Place, Place)]) -> Vec<Sweep> {
    let mut now_s = 0.0;
    legs.iter()
        .map(|(from, to)| {
            let start_s = now_s;
            now_s += from.distance_m(*to) / SPEED_MPS;
            Sweep {
                from: *from,
                to: *to,
                start_s,
                end_s: now_s,
                driving_before_s: start_s,
                driving_s: now_s - start_s,
            }
        })
        .collect()
}

/// Legs along a polyline.
pub(crate) fn along(corners: &[Place]) -> Vec<(Place, Place)> {
    corners.windows(2).map(|pair| (pair[0], pair[1])).collect()
}

/// Counts from the first to the last of the sweeps.
pub(crate) fn counted(lawn: BitGrid, sweeps: &[Sweep]) -> Count {
    let end_s = sweeps.iter().map(|sweep| sweep.end_s).fold(0.0, f64::max);
    count(lawn, sweeps, WIDTH_M, AWAY_S, (0.0, end_s))
}

/// Visited area.
pub(crate) fn visited_m2(count: &Count) -> f64 {
    count.visited.count() as f64 * count.grid.cell_m2()
}

/// The count's own standard deviation of the visited area.
pub(crate) fn cell_error_m2(count: &Count) -> f64 {
    count.cell_error_fraction() * count.lawn.count() as f64 * count.grid.cell_m2()
}

/// A leg rotated about the origin and shifted: no angle and no offset may matter.
pub(crate) fn placed(leg: &[(Place, Place)], angle_rad: f64, shift: Place) -> Vec<(Place, Place)> {
    let (sin, cos) = angle_rad.sin_cos();
    let place = |at: Place| {
        Place::new(
            cos * at.east_m - sin * at.north_m + shift.east_m,
            sin * at.east_m + cos * at.north_m + shift.north_m,
        )
    };
    leg.iter().map(|(from, to)| (place(*from), place(*to))).collect()
}
