//! How far is it to the line at which the machine turns?
//!
//! A grid over the ground for the machine's middle. Each cell has its exact distance from that ground's edge, positive
//! inside, capped at [`MOST_M`]. Cost: edges times the cells within that distance.

use tussock_plane::{Region, rasterise};
use tussock_types::{Grid, Place};

/// Larger clearances are not distinguished.
const MOST_M: f64 = 2.0;

/// Clearances over a region.
#[derive(Clone, Debug)]
pub struct Room {
    /// The cells.
    pub grid: Grid,
    /// Row by row: distance from the edge, negative outside.
    pub clear_m: Vec<f64>,
    edges: Vec<(Place, Place)>,
}

/// Whether two straight pieces cross.
fn crosses(a: (Place, Place), b: (Place, Place)) -> bool {
    let side = |from: Place, to: Place, place: Place| {
        (to.east_m - from.east_m) * (place.north_m - from.north_m)
            - (to.north_m - from.north_m) * (place.east_m - from.east_m)
    };
    let (one, two) = (side(a.0, a.1, b.0), side(a.0, a.1, b.1));
    let (three, four) = (side(b.0, b.1, a.0), side(b.0, b.1, a.1));
    (one > 0.0) != (two > 0.0) && (three > 0.0) != (four > 0.0)
}

impl Room {
    /// Clearances of a region, on cells of `cell_m`.
    pub fn of(region: &Region, cell_m: f64) -> Self {
        let (low, high) = region.bounds().unwrap_or_default();
        let cells = |length_m: f64| (length_m / cell_m).ceil().max(1.0) as usize + 2;
        let grid = Grid {
            east_min_m: low.east_m - cell_m,
            north_min_m: low.north_m - cell_m,
            cell_m,
            columns: cells(high.east_m - low.east_m),
            rows: cells(high.north_m - low.north_m),
        };
        let edges: Vec<(Place, Place)> = region.edges().collect();
        let mut clear_m = vec![MOST_M; grid.cells()];
        let within = |value_m: f64, min_m: f64, most: usize| {
            (((value_m - min_m) / cell_m).floor().max(0.0) as usize).min(most.saturating_sub(1))
        };
        for (from, to) in &edges {
            let columns = within(from.east_m.min(to.east_m) - MOST_M, grid.east_min_m, grid.columns)
                ..=within(from.east_m.max(to.east_m) + MOST_M, grid.east_min_m, grid.columns);
            let rows = within(from.north_m.min(to.north_m) - MOST_M, grid.north_min_m, grid.rows)
                ..=within(from.north_m.max(to.north_m) + MOST_M, grid.north_min_m, grid.rows);
            for row in rows {
                for column in columns.clone() {
                    let here = &mut clear_m[row * grid.columns + column];
                    *here = here.min(grid.centre(column, row).off_piece_m(*from, *to));
                }
            }
        }
        let inside = rasterise(region, &grid);
        for row in 0..grid.rows {
            for column in 0..grid.columns {
                if !inside.get(column, row) {
                    clear_m[row * grid.columns + column] *= -1.0;
                }
            }
        }
        Self { grid, clear_m, edges }
    }

    /// At a cell.
    pub fn at(&self, column: usize, row: usize) -> f64 {
        self.clear_m[row * self.grid.columns + column]
    }

    /// Clearance along the whole of a straight piece, exactly; 0 if it crosses the edge.
    pub fn along_m(&self, from: Place, to: Place) -> f64 {
        let mut least_m = f64::INFINITY;
        for edge in &self.edges {
            if crosses((from, to), *edge) {
                return 0.0;
            }
            let ends_m = from
                .off_piece_m(edge.0, edge.1)
                .min(to.off_piece_m(edge.0, edge.1))
                .min(edge.0.off_piece_m(from, to))
                .min(edge.1.off_piece_m(from, to));
            least_m = least_m.min(ends_m);
        }
        least_m
    }

    /// The same for a line of several pieces.
    pub fn along_line_m(&self, line: &[Place]) -> f64 {
        line.windows(2)
            .map(|pair| self.along_m(pair[0], pair[1]))
            .fold(f64::INFINITY, f64::min)
    }

    /// The cell nearest to a place that has at least this clearance.
    pub fn nearest_cell(&self, place: Place, least_m: f64) -> Option<(usize, usize)> {
        let mut best: Option<(f64, (usize, usize))> = None;
        for row in 0..self.grid.rows {
            for column in 0..self.grid.columns {
                if self.at(column, row) >= least_m {
                    let off_m = self.grid.centre(column, row).distance_m(place);
                    if best.is_none_or(|(best_m, _)| off_m < best_m) {
                        best = Some((off_m, (column, row)));
                    }
                }
            }
        }
        best.map(|(_, cell)| cell)
    }
}
