//! Which squares of a grid are lawn?
//!
//! ```text
//!    edge      edge            a scan line through the cell centres meets the edges at these columns;
//! --+--/--+--+--\--+--         between the first and the second is ground, then not, then ground again
//!   . / # #  # # \ .   .
//! ```
//!
//! Scan conversion with the even-odd rule (Foley, van Dam, Feiner & Hughes 1990, section 3.6): a cell belongs if its centre
//! is inside. Exact: the comparison of a centre with an edge uses exact arithmetic (Shewchuk 1997), so the mask equals
//! [`Region::contains`] at every centre. Approximate: the area of the mask; a strip along the axes is off by up to a cell in
//! width, an oblique one by far less.
//!
//! Cost: one comparison for every crossing of an edge with a scan line, then 64 cells at a time.

use crate::ring;
use crate::{Region, region};
use geo::Orientation;
use geo_types::Coord;
use tussock_types::Grid;

/// One bit for every cell of a grid. Each row starts at a new word; bits past the last column stay zero.
#[derive(Clone, Debug, PartialEq)]
pub struct BitGrid {
    /// The cells.
    pub grid: Grid,
    words: Vec<u64>,
    row_words: usize,
}

impl BitGrid {
    /// All cells off.
    pub fn new(grid: Grid) -> Self {
        let row_words = grid.columns.div_ceil(64);
        Self {
            grid,
            words: vec![0; row_words * grid.rows],
            row_words,
        }
    }

    /// Words that hold one row.
    pub fn row_words(&self) -> usize {
        self.row_words
    }

    /// Whether a cell is on; false outside.
    pub fn get(&self, column: usize, row: usize) -> bool {
        column < self.grid.columns
            && row < self.grid.rows
            && self.words[row * self.row_words + column / 64] >> (column % 64) & 1 == 1
    }

    /// Turns a cell on; nothing happens outside.
    pub fn set(&mut self, column: usize, row: usize) {
        if column < self.grid.columns && row < self.grid.rows {
            self.words[row * self.row_words + column / 64] |= 1 << (column % 64);
        }
    }

    /// Turns a cell off; nothing happens outside.
    pub fn clear(&mut self, column: usize, row: usize) {
        if column < self.grid.columns && row < self.grid.rows {
            self.words[row * self.row_words + column / 64] &= !(1 << (column % 64));
        }
    }

    /// Turns on the cells of a row from one column up to, but not including, another; cells outside the grid are ignored.
    pub fn set_span(&mut self, row: usize, column_start: usize, column_end: usize) {
        let column_end = column_end.min(self.grid.columns);
        if row >= self.grid.rows || column_start >= column_end {
            return;
        }
        let words = &mut self.words[row * self.row_words..][..self.row_words];
        let (first, last) = (column_start / 64, (column_end - 1) / 64);
        let from_start = u64::MAX << (column_start % 64);
        let to_end = u64::MAX >> (63 - (column_end - 1) % 64);
        if first == last {
            words[first] |= from_start & to_end;
        } else {
            words[first] |= from_start;
            words[first + 1..last].fill(u64::MAX);
            words[last] |= to_end;
        }
    }

    /// The words of a row, lowest column in the lowest bit of the first.
    ///
    /// # Panics
    /// If the grid does not have that row.
    pub fn row(&self, row: usize) -> &[u64] {
        &self.words[row * self.row_words..][..self.row_words]
    }

    /// The words of a row, for writing. Bits past the last column must stay zero.
    ///
    /// # Panics
    /// If the grid does not have that row.
    pub fn row_mut(&mut self, row: usize) -> &mut [u64] {
        &mut self.words[row * self.row_words..][..self.row_words]
    }

    /// All words, row by row.
    pub fn words(&self) -> &[u64] {
        &self.words
    }

    /// All words, for writing. Bits past the last column of a row must stay zero.
    pub fn words_mut(&mut self) -> &mut [u64] {
        &mut self.words
    }

    /// Number of cells that are on.
    pub fn count(&self) -> u64 {
        self.words.iter().map(|word| u64::from(word.count_ones())).sum()
    }

    /// Area of the cells that are on.
    pub fn area_m2(&self) -> f64 {
        self.count() as f64 * self.grid.cell_m2()
    }

    /// Keeps the cells that are on in both.
    ///
    /// # Panics
    /// If the other mask has a different number of rows or columns.
    pub fn and_in_place(&mut self, other: &Self) {
        self.combine(other, |mine, theirs| mine & theirs);
    }

    /// Adds the cells of the other mask.
    ///
    /// # Panics
    /// If the other mask has a different number of rows or columns.
    pub fn or_in_place(&mut self, other: &Self) {
        self.combine(other, |mine, theirs| mine | theirs);
    }

    /// Removes the cells of the other mask.
    ///
    /// # Panics
    /// If the other mask has a different number of rows or columns.
    pub fn and_not_in_place(&mut self, other: &Self) {
        self.combine(other, |mine, theirs| mine & !theirs);
    }

    fn combine(&mut self, other: &Self, rule: impl Fn(u64, u64) -> u64) {
        assert_eq!(
            (self.grid.columns, self.grid.rows),
            (other.grid.columns, other.grid.rows),
            "masks of different grids"
        );
        for (mine, theirs) in self.words.iter_mut().zip(&other.words) {
            *mine = rule(*mine, *theirs);
        }
    }

    /// Columns and rows of the cells that are on, row by row from west to east.
    pub fn cells_on(&self) -> impl Iterator<Item = (usize, usize)> {
        (0..self.grid.rows).flat_map(move |row| {
            self.row(row)
                .iter()
                .enumerate()
                .flat_map(move |(word, &bits)| bits_on(bits).map(move |bit| (word * 64 + bit, row)))
        })
    }

    /// Stretches of cells that are on in a row, as first column and the column after the last, from west to east.
    ///
    /// # Panics
    /// If the grid does not have that row.
    pub fn runs(&self, row: usize) -> CellRuns<'_> {
        CellRuns {
            words: self.row(row),
            next_column: 0,
        }
    }
}

/// Positions of the bits that are on, lowest first.
pub(crate) fn bits_on(mut bits: u64) -> impl Iterator<Item = usize> {
    std::iter::from_fn(move || {
        let bit = (bits != 0).then(|| bits.trailing_zeros() as usize)?;
        bits &= bits - 1;
        Some(bit)
    })
}

/// Iterator of [`BitGrid::runs`].
#[derive(Clone, Debug)]
pub struct CellRuns<'a> {
    words: &'a [u64],
    next_column: usize,
}

impl CellRuns<'_> {
    /// First column from `column` on whose bit, after `flip`, is on; the end of the words if there is none.
    fn first_from(&self, column: usize, flip: u64) -> usize {
        let mut word = column / 64;
        let Some(&bits) = self.words.get(word) else {
            return self.words.len() * 64;
        };
        let mut bits = (bits ^ flip) & (u64::MAX << (column % 64));
        while bits == 0 {
            word += 1;
            match self.words.get(word) {
                Some(&next) => bits = next ^ flip,
                None => return self.words.len() * 64,
            }
        }
        word * 64 + bits.trailing_zeros() as usize
    }
}

impl Iterator for CellRuns<'_> {
    type Item = (usize, usize);

    fn next(&mut self) -> Option<Self::Item> {
        let start = self.first_from(self.next_column, 0);
        if start >= self.words.len() * 64 {
            return None;
        }
        let end = self.first_from(start, u64::MAX);
        self.next_column = end;
        Some((start, end))
    }
}

/// The cells of a grid whose centre is on a region.
///
/// # Example
/// ```
/// use tussock_plane::{Region, rasterise};
/// use tussock_types::{Grid, Place};
///
/// # fn main() -> Result<(), tussock_plane::RegionError> {
/// let triangle = [(0.0, 0.0), (4.0, 0.0), (0.0, 4.0)].map(|(e, n)| Place::new(e, n)).to_vec();
/// let grid = Grid { east_min_m: 0.0, north_min_m: 0.0, cell_m: 1.0, columns: 4, rows: 4 };
/// let mask = rasterise(&Region::from_rings(vec![vec![triangle]])?, &grid);
/// let drawn: Vec<String> = (0..4)
///     .rev()
///     .map(|row| (0..4).map(|column| if mask.get(column, row) { '#' } else { '.' }).collect())
///     .collect();
/// assert_eq!(drawn, ["....", "#...", "##..", "###."]); // a centre on the slanted edge belongs to the other side
/// # Ok(())
/// # }
/// ```
pub fn rasterise(region: &Region, grid: &Grid) -> BitGrid {
    let mut mask = BitGrid::new(*grid);
    let mut crossings: Vec<(u32, u32)> = Vec::new();
    let shape = region.as_multi_polygon();
    for edge in region::rings_of(shape).flat_map(|ring| ring.0.windows(2)) {
        let (low, high) = if edge[0].y < edge[1].y {
            (edge[0], edge[1])
        } else {
            (edge[1], edge[0])
        };
        // An edge owns its lower end: rows whose centre is from low.y up to, but not including, high.y.
        let first = first_centre(low.y, grid.north_min_m, grid.cell_m, grid.rows);
        let end = first_centre(high.y, grid.north_min_m, grid.cell_m, grid.rows);
        let slope = (high.x - low.x) / (high.y - low.y);
        for row in first..end {
            let north_m = grid.centre(0, row).north_m;
            let guess_m = low.x + (north_m - low.y) * slope;
            let column = first_column(grid, low, high, north_m, guess_m);
            if column < grid.columns {
                crossings.push((row as u32, column as u32));
            }
        }
    }
    crossings.sort_unstable();
    let mut rest = crossings.as_slice();
    while let Some(&(row, start)) = rest.first() {
        // A span without a second crossing runs to the edge of the grid.
        match rest.get(1) {
            Some(&(next_row, end)) if next_row == row => {
                mask.set_span(row as usize, start as usize, end as usize);
                rest = &rest[2..];
            }
            _ => {
                mask.set_span(row as usize, start as usize, grid.columns);
                rest = &rest[1..];
            }
        }
    }
    mask
}

/// First row whose centre is not below a north coordinate; the number of rows if there is none.
fn first_centre(north_m: f64, min_m: f64, cell_m: f64, rows: usize) -> usize {
    let centre_m = |row: usize| min_m + (row as f64 + 0.5) * cell_m;
    let guess = ((north_m - min_m) / cell_m - 0.5).ceil();
    let mut row = guess.clamp(0.0, rows as f64) as usize;
    while row > 0 && centre_m(row - 1) >= north_m {
        row -= 1;
    }
    while row < rows && centre_m(row) < north_m {
        row += 1;
    }
    row
}

/// First column whose centre, on a scan line, is not west of an edge; the number of columns if there is none.
fn first_column(grid: &Grid, low: Coord<f64>, high: Coord<f64>, north_m: f64, guess_m: f64) -> usize {
    let is_west = |column: usize| {
        let centre = Coord {
            x: grid.centre(column, 0).east_m,
            y: north_m,
        };
        ring::side(low, high, centre) == Orientation::CounterClockwise
    };
    let guess = ((guess_m - grid.east_min_m) / grid.cell_m - 0.5).ceil();
    let mut column = guess.clamp(0.0, grid.columns as f64) as usize;
    while column > 0 && !is_west(column - 1) {
        column -= 1;
    }
    while column < grid.columns && is_west(column) {
        column += 1;
    }
    column
}

#[cfg(test)]
#[path = "raster_tests.rs"]
mod tests;
