//! Squares on the ground.

use crate::Place;
use serde::{Deserialize, Serialize};

/// A grid of square cells with axes east and north. Row 0 is in the south; cells are stored row by row, from west to east.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Grid {
    /// East coordinate of the western edge of column 0.
    pub east_min_m: f64,
    /// North coordinate of the southern edge of row 0.
    pub north_min_m: f64,
    /// Side of a cell.
    pub cell_m: f64,
    /// Number of columns.
    pub columns: usize,
    /// Number of rows.
    pub rows: usize,
}

impl Grid {
    /// Number of cells.
    pub const fn cells(&self) -> usize {
        self.columns * self.rows
    }

    /// Area of a cell.
    pub const fn cell_m2(&self) -> f64 {
        self.cell_m * self.cell_m
    }

    /// Centre of the cell at a column and row.
    pub fn centre(&self, column: usize, row: usize) -> Place {
        Place::new(
            self.east_min_m + (column as f64 + 0.5) * self.cell_m,
            self.north_min_m + (row as f64 + 0.5) * self.cell_m,
        )
    }

    /// Column and row of the cell that holds a place; `None` outside the grid.
    pub fn cell_at(&self, place: Place) -> Option<(usize, usize)> {
        let column = ((place.east_m - self.east_min_m) / self.cell_m).floor();
        let row = ((place.north_m - self.north_min_m) / self.cell_m).floor();
        let inside = column >= 0.0 && row >= 0.0 && column < self.columns as f64 && row < self.rows as f64;
        inside.then_some((column as usize, row as usize))
    }
}

/// What is known about each square of ground, on a grid coarse enough to be drawn and passed on.
///
/// A square combines `k x k` cells of the counting grid, so that sums over squares give the areas of the findings. Each
/// column has [`Grid::cells`] values.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Cells {
    /// The squares.
    pub grid: Grid,
    /// Part of the square that is lawn, from 0 to 1.
    pub lawn_fraction: Vec<f32>,
    /// Probability that a point of the square's lawn was driven over (with one realisation, the part of it that was); 0 off
    /// the lawn.
    pub visited_probability: Vec<f32>,
    /// Expected number of visits, averaged over the square's lawn.
    pub visits_expected: Vec<f32>,
    /// Seconds from the start of the span to the first visit to any of the square's lawn; NaN if never visited.
    pub first_visit_s: Vec<f32>,
    /// Seconds from the start of the span to the last visit to any of the square's lawn; NaN if never visited.
    pub last_visit_s: Vec<f32>,
}
