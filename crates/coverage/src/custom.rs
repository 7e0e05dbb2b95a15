//! Counting on the user's own grid.
//!
//! Question: how many cells of *this* grid were visited, by *this* rule? Published cell counts use grids that somebody laid
//! out: an origin, two axes (possibly rotated, possibly not quite at right angles if three corners were surveyed), and a
//! number of cells along each. Papers differ in what counts as visited, so the rule has a name ([`VisitRule`]).
//!
//! ```text
//!   end of rows o . . . .        a fix on a lower or left edge belongs to the cell, one on an upper or right edge to the
//!               . | | | .        next: cells are half-open, and each place belongs to one cell at most
//!        origin o-+-+-+-o end of columns
//! ```
//!
//! Exact: which cell holds a place, for the three corners as given ([`CustomGrid::cell_at`]). Cells that a path crosses are
//! found row by row with the same half-open edges, by plain arithmetic: where a path meets an edge is right to about 1e-12
//! of the grid's extent. Centres under a swath are found as in [`crate::swath`]. Areas are exact along lines through the
//! cells and summed across them by the midpoint rule, with at least [`LINES_PER_WIDTH`] lines per cutting width: a single
//! lane along the grid's axis can be off by one line, anything else by far less.
//!
//! Cost: one division per fix; the cells met; for areas, the lines met by each leg, and sorting them.

mod count;
mod exact;

pub use count::{GridCount, LINES_PER_WIDTH, VisitRule, count};

use std::cmp::Ordering;
use tussock_types::Place;
use tussock_types::math;

/// Most cells of a grid.
pub const MOST_CELLS: usize = 50_000_000;

/// How a grid is divided along its two axes.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Division {
    /// This many cells between the corners.
    Counts {
        /// Cells along the first axis.
        columns: usize,
        /// Cells along the second.
        rows: usize,
    },
    /// Cells of this size; the last ones may reach past the corners.
    Sides {
        /// Side along the first axis.
        column_m: f64,
        /// Side along the second.
        row_m: f64,
    },
}

/// Cells between two axes from one corner. Column 0 and row 0 touch the origin.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct CustomGrid {
    origin: Place,
    columns_end: Place,
    rows_end: Place,
    columns: usize,
    rows: usize,
}

/// Why a grid cannot be laid out.
#[derive(Clone, Debug, PartialEq)]
#[non_exhaustive]
pub enum CustomGridError {
    /// A coordinate is not a finite number.
    NotFinite {
        /// Which corner.
        corner: &'static str,
        /// As given.
        place: Place,
    },
    /// The corners lie on one line.
    Flat {
        /// Area of the parallelogram between the axes.
        area_m2: f64,
    },
    /// No cell, or too many.
    Cells {
        /// Along the first axis.
        columns: f64,
        /// Along the second.
        rows: f64,
    },
}

impl std::fmt::Display for CustomGridError {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        match self {
            Self::NotFinite { corner, place } => write!(
                f,
                "the {corner} of the grid is at {}, {}; expected finite numbers",
                place.east_m, place.north_m
            ),
            Self::Flat { area_m2 } => write!(
                f,
                "the three corners of the grid span {area_m2:e} m2; expected corners that do not lie on one line"
            ),
            Self::Cells { columns, rows } => write!(
                f,
                "the grid has {columns} x {rows} cells; expected at least one along each axis and at most {MOST_CELLS} in all"
            ),
        }
    }
}

impl std::error::Error for CustomGridError {}

impl CustomGrid {
    /// A grid spanned by three corners: the origin, where the columns end, and where the rows end.
    ///
    /// # Errors
    /// [`CustomGridError`].
    pub fn from_corners(
        origin: Place,
        columns_end: Place,
        rows_end: Place,
        division: Division,
    ) -> Result<Self, CustomGridError> {
        let corners = [
            ("origin", origin),
            ("end of the columns", columns_end),
            ("end of the rows", rows_end),
        ];
        for (corner, place) in corners {
            if !place.east_m.is_finite() || !place.north_m.is_finite() {
                return Err(CustomGridError::NotFinite { corner, place });
            }
        }
        let mut grid = Self {
            origin,
            columns_end,
            rows_end,
            columns: 1,
            rows: 1,
        };
        let area_m2 = grid.signed_area_m2().abs();
        let (along_m, across_m) = grid.extent_m();
        if !(area_m2 > 1e-9 * along_m * across_m) {
            return Err(CustomGridError::Flat { area_m2 });
        }
        let (columns, rows) = match division {
            Division::Counts { columns, rows } => (columns as f64, rows as f64),
            // Slight rounding is no reason for another cell.
            Division::Sides { column_m, row_m } => (
                (along_m / column_m - 1e-9).ceil(),
                (across_m / row_m - 1e-9).ceil(),
            ),
        };
        if !(columns >= 1.0 && rows >= 1.0 && columns * rows <= MOST_CELLS as f64) {
            return Err(CustomGridError::Cells { columns, rows });
        }
        (grid.columns, grid.rows) = (columns as usize, rows as usize);
        if let Division::Sides { column_m, row_m } = division {
            grid.columns_end = stretched(origin, columns_end, columns * column_m / along_m);
            grid.rows_end = stretched(origin, rows_end, rows * row_m / across_m);
        }
        Ok(grid)
    }

    /// A grid of rectangles whose first axis points `direction_deg` anticlockwise from east, the second a quarter turn
    /// further.
    ///
    /// # Errors
    /// [`CustomGridError`].
    pub fn turned(
        origin: Place,
        direction_deg: f64,
        cell_m: (f64, f64),
        columns: usize,
        rows: usize,
    ) -> Result<Self, CustomGridError> {
        let (sine, cosine) = math::sin_cos(direction_deg.to_radians());
        let (along_m, across_m) = (columns as f64 * cell_m.0, rows as f64 * cell_m.1);
        Self::from_corners(
            origin,
            Place::new(origin.east_m + along_m * cosine, origin.north_m + along_m * sine),
            Place::new(
                origin.east_m - across_m * sine,
                origin.north_m + across_m * cosine,
            ),
            Division::Counts { columns, rows },
        )
    }

    /// Where column 0 and row 0 begin.
    pub const fn origin(&self) -> Place {
        self.origin
    }

    /// Cells along the first axis.
    pub const fn columns(&self) -> usize {
        self.columns
    }

    /// Cells along the second axis.
    pub const fn rows(&self) -> usize {
        self.rows
    }

    /// Number of cells.
    pub const fn cells(&self) -> usize {
        self.columns * self.rows
    }

    /// Length of the two axes.
    pub fn extent_m(&self) -> (f64, f64) {
        (
            self.origin.distance_m(self.columns_end),
            self.origin.distance_m(self.rows_end),
        )
    }

    /// Area of one cell.
    pub fn cell_m2(&self) -> f64 {
        self.signed_area_m2().abs() / self.cells() as f64
    }

    /// The place this many columns and rows from the origin; whole numbers are corners of cells.
    pub fn place_at(&self, columns: f64, rows: f64) -> Place {
        let (along, across) = (columns / self.columns as f64, rows / self.rows as f64);
        let (a, b) = self.axes_m();
        Place::new(
            self.origin.east_m + along * a.0 + across * b.0,
            self.origin.north_m + along * a.1 + across * b.1,
        )
    }

    /// Centre of a cell.
    pub fn centre(&self, column: usize, row: usize) -> Place {
        self.place_at(column as f64 + 0.5, row as f64 + 0.5)
    }

    /// Corners of a cell, in order.
    pub fn corners(&self, column: usize, row: usize) -> [Place; 4] {
        let (x, y) = (column as f64, row as f64);
        [(x, y), (x + 1.0, y), (x + 1.0, y + 1.0), (x, y + 1.0)].map(|(x, y)| self.place_at(x, y))
    }

    /// Column and row of the one cell that holds a place; `None` outside. Lower and left edges belong to a cell, upper and
    /// right ones do not. Exact for the three corners as given.
    pub fn cell_at(&self, place: Place) -> Option<(usize, usize)> {
        let column = self.index(place, self.columns_end, self.rows_end, self.columns)?;
        let row = self.index(place, self.rows_end, self.columns_end, self.rows)?;
        Some((column, row))
    }

    /// The one of `count` parts from the origin towards `end` that holds a place, divided by lines parallel to the other
    /// axis.
    fn index(&self, place: Place, end: Place, other_end: Place, count: usize) -> Option<usize> {
        let from = self.origin;
        let cross = |place: Place| {
            let (x, y) = (place.east_m - from.east_m, place.north_m - from.north_m);
            let (bx, by) = (other_end.east_m - from.east_m, other_end.north_m - from.north_m);
            (x * by - y * bx, (x * by).abs() + (y * bx).abs())
        };
        let ((part, part_size), (whole, whole_size)) = (cross(place), cross(end));
        let parts = count as f64;
        let at = parts * part / whole;
        // Three roundings in each cross product, three after it; twice that to be safe.
        let error = 16.0
            * f64::EPSILON
            * (parts * part_size / whole.abs() + at.abs() * whole_size / whole.abs() + at.abs());
        let nearest = at.round();
        let index = if (at - nearest).abs() > error {
            at.floor()
        } else {
            let side = exact::side_of_edge(place, from, end, other_end, parts, nearest);
            let before = if whole > 0.0 {
                Ordering::Less
            } else {
                Ordering::Greater
            };
            if side == before { nearest - 1.0 } else { nearest }
        };
        (index >= 0.0 && index < parts).then_some(index as usize)
    }

    /// The two axes as vectors.
    fn axes_m(&self) -> ((f64, f64), (f64, f64)) {
        let step = |end: Place| (end.east_m - self.origin.east_m, end.north_m - self.origin.north_m);
        (step(self.columns_end), step(self.rows_end))
    }

    fn signed_area_m2(&self) -> f64 {
        let (a, b) = self.axes_m();
        a.0 * b.1 - a.1 * b.0
    }

    /// Columns and rows from the origin, by plain arithmetic.
    fn coordinates(&self, place: Place) -> (f64, f64) {
        let (a, b) = self.axes_m();
        let area_m2 = self.signed_area_m2();
        let (x, y) = (
            place.east_m - self.origin.east_m,
            place.north_m - self.origin.north_m,
        );
        (
            self.columns as f64 * (x * b.1 - y * b.0) / area_m2,
            self.rows as f64 * (a.0 * y - a.1 * x) / area_m2,
        )
    }
}

fn stretched(from: Place, to: Place, times: f64) -> Place {
    from.towards(to, times)
}
