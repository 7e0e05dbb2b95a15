//! What shape is a pocket?
//!
//! Question: how long, how wide, how close to an edge is it, and what lies around it? Worked out from its cells, a few
//! thousand of them at most; lengths come from the smallest box in any direction.

use crate::clearance::Clearance;
use crate::passages::Neck;
use tussock_plane::distance;
use tussock_plane::{BitGrid, smallest_box_m};
use tussock_types::Place;

/// A pocket as a shape.
#[derive(Clone, Debug)]
pub struct Shape {
    /// Centres of its cells, thinned out evenly.
    pub cells: Vec<Place>,
    /// Centres of the cells at its rim, thinned out evenly.
    pub rim: Vec<Place>,
    /// Middle of the largest circle in it.
    pub place: Place,
    /// Area.
    pub area_m2: f64,
    /// Diameter of that circle.
    pub widest_m: f64,
    /// Long side of the smallest box.
    pub length_m: f64,
    /// Long side over short side of it.
    pub aspect: f64,
    /// The distance from the nearest edge of the ground within which nine cells in ten lie.
    pub edge_p90_m: f64,
    /// Mean share of it that was driven over.
    pub visited_fraction: f64,
}

/// Number of cells that are examined.
const CELLS: usize = 2500;

impl Shape {
    /// Reads a pocket's mask.
    pub fn of(
        mask: &BitGrid,
        place: Place,
        area_m2: f64,
        widest_m: f64,
        visited_fraction: f64,
        clearance: &Clearance,
    ) -> Self {
        let grid = mask.grid;
        let is_on =
            |column: usize, row: usize| column < grid.columns && row < grid.rows && mask.get(column, row);
        let mut rim = Vec::new();
        let mut cells = Vec::new();
        for (column, row) in mask.cells_on() {
            let centre = grid.centre(column, row);
            cells.push(centre);
            let inside = column > 0
                && row > 0
                && is_on(column - 1, row)
                && is_on(column + 1, row)
                && is_on(column, row - 1)
                && is_on(column, row + 1);
            if !inside {
                rim.push(centre);
            }
        }
        // These are cell centres: add half a cell on every side.
        let (length_m, width_m) = smallest_box_m(&rim)
            .map_or((grid.cell_m, grid.cell_m), |(long_m, short_m)| {
                (long_m + grid.cell_m, short_m + grid.cell_m)
            });
        let cells = thinned(cells, CELLS);
        let mut edge: Vec<f64> = cells.iter().map(|cell| clearance.at_m(*cell)).collect();
        edge.sort_by(f64::total_cmp);
        Self {
            rim: thinned(rim, CELLS / 4),
            edge_p90_m: edge.get(edge.len() * 9 / 10).copied().unwrap_or(0.0),
            cells,
            place,
            area_m2,
            widest_m,
            length_m,
            aspect: length_m / width_m.max(1e-9),
            visited_fraction,
        }
    }

    /// Distance of a place from the pocket; near enough 0 inside.
    pub fn distance_m(&self, place: Place) -> f64 {
        self.cells
            .iter()
            .chain(&self.rim)
            .map(|cell| cell.distance_m(place))
            .fold(f64::INFINITY, f64::min)
    }

    /// Part of it that lies behind a neck.
    pub fn behind_fraction(&self, clearance: &Clearance, neck: &Neck) -> f64 {
        let behind = self
            .cells
            .iter()
            .filter(|cell| neck.is_behind(clearance, **cell) == Some(true))
            .count();
        behind as f64 / (self.cells.len() as f64).max(1.0)
    }

    /// Ground within this many metres of it, without the pocket itself, on the cells of the clearance map.
    pub fn around(&self, clearance: &Clearance, within_m: f64) -> Vec<bool> {
        let grid = clearance.grid;
        let mut own = vec![false; clearance.clear_m.len()];
        for cell in self.cells.iter().filter_map(|cell| clearance.cell(*cell)) {
            own[cell] = true;
        }
        let limit = (within_m / grid.cell_m).powi(2);
        let squares = distance::squared(grid.columns, grid.rows, |column, row| {
            own[row * grid.columns + column]
        });
        // Thinned cells leave holes, so ground within half a metre counts as the pocket's own.
        let own_limit = (0.5 / grid.cell_m).powi(2);
        squares
            .iter()
            .zip(&clearance.clear_m)
            .map(|(square, clear_m)| {
                let square = f64::from(*square);
                *clear_m > 0.0 && square <= limit && square > own_limit
            })
            .collect()
    }
}

/// Places at regular intervals, at most this many.
fn thinned(places: Vec<Place>, most: usize) -> Vec<Place> {
    let stride = places.len().div_ceil(most).max(1);
    places.into_iter().step_by(stride).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use approx::assert_abs_diff_eq;
    use tussock_plane::{Region, rasterise};
    use tussock_types::Grid;
    use tussock_types::math;

    #[test]
    fn a_turned_strip_keeps_its_length_and_aspect() {
        let (sine, cosine) = math::sin_cos(0.5_f64);
        let ring = [(0.0, 0.0), (9.0, 0.0), (9.0, 1.5), (0.0, 1.5), (0.0, 0.0)]
            .map(|(x, y)| Place::new(cosine * x - sine * y, sine * x + cosine * y));
        let region = Region::from_rings(vec![vec![ring.to_vec()]]).unwrap();
        let mask = rasterise(
            &region,
            &Grid {
                east_min_m: -2.0,
                north_min_m: -2.0,
                cell_m: 0.02,
                columns: 600,
                rows: 500,
            },
        );
        let clearance = Clearance::of(&region);
        let shape = Shape::of(&mask, Place::new(4.0, 3.0), 13.5, 1.5, 0.0, &clearance);
        assert_abs_diff_eq!(shape.length_m, 9.0, epsilon = 0.05);
        assert_abs_diff_eq!(shape.aspect, 6.0, epsilon = 0.2);
        assert_abs_diff_eq!(shape.edge_p90_m, 0.68, epsilon = 0.1);
    }
}
