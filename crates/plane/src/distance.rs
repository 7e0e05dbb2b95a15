//! Distance to the nearest visited or foreign cell, and connected parts.
//!
//! Exact squared Euclidean distance transform after Meijster, Roerdink & Hesselink (2000), DOI 10.1007/0-306-47025-X_36:
//! first along columns, then a lower envelope along rows or, in thin ground, shifts of the row by as many columns as can be
//! nearer; both are exact. Within a row only the run of unvisited cells and its two neighbours matter, so visited ground
//! costs next to nothing. Parts are found on runs of cells with a union-find.

use crate::BitGrid;
use rayon::prelude::*;

/// A rectangle of cells: columns and rows, ends excluded.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Window {
    /// First column.
    pub column_start: usize,
    /// One past the last column.
    pub column_end: usize,
    /// First row.
    pub row_start: usize,
    /// One past the last row.
    pub row_end: usize,
}

impl Window {
    /// Number of columns.
    pub const fn columns(&self) -> usize {
        self.column_end - self.column_start
    }

    /// Number of rows.
    pub const fn rows(&self) -> usize {
        self.row_end - self.row_start
    }

    /// The window enlarged on all sides, clipped to the grid.
    #[must_use]
    pub fn grown(&self, cells: usize, columns: usize, rows: usize) -> Self {
        Self {
            column_start: self.column_start.saturating_sub(cells),
            column_end: (self.column_end + cells).min(columns),
            row_start: self.row_start.saturating_sub(cells),
            row_end: (self.row_end + cells).min(rows),
        }
    }
}

/// Squared distance, in cells, from each cell of a window to the nearest cell of it for which `is_zero` holds.
///
/// Ground outside the window is ignored. Without any such cell all distances are at least the window's size.
pub fn squared(columns: usize, rows: usize, is_zero: impl Fn(usize, usize) -> bool) -> Vec<u32> {
    squared_of_rows(columns, rows, |row, cells| {
        for (column, cell) in cells.iter_mut().enumerate() {
            *cell = if is_zero(column, row) { 0 } else { u32::MAX };
        }
    })
}

/// The same inside a window of a mask, to the nearest cell that is off, row by row and only where needed: `each` gets the
/// number of a row in the window and a function to query. Its results are returned in the order of rows. Memory is two bytes
/// per cell.
pub fn of_rows_in<T: Send>(
    mask: &BitGrid,
    window: Window,
    each: impl Fn(usize, &mut RowSquares<'_>) -> T + Sync,
) -> Vec<T> {
    if u16::try_from(window.columns() + window.rows()).is_ok() {
        of_rows_with::<u16, T>(mask, window, each)
    } else {
        of_rows_with::<u32, T>(mask, window, each)
    }
}

fn of_rows_with<H: Height, T: Send>(
    mask: &BitGrid,
    window: Window,
    each: impl Fn(usize, &mut RowSquares<'_>) -> T + Sync,
) -> Vec<T> {
    let columns = window.columns();
    let cells = along_columns::<H>(columns, window.rows(), |row, cells| {
        fill_from(mask, window, row, cells)
    });
    let own_room = || (RowOf::new(columns), vec![0; columns]);
    let one = |(row_of, out): &mut (RowOf, Vec<u32>), (row, heights): (usize, &[H])| {
        for (wide, height) in row_of.heights.iter_mut().zip(heights) {
            *wide = (*height).into();
        }
        let known = 0..0;
        each(row, &mut RowSquares { row_of, out, known })
    };
    if cells.len() < CELLS_FOR_THREADS {
        let mut room = own_room();
        let rows = cells.chunks_exact(columns.max(1)).enumerate();
        rows.map(|row| one(&mut room, row)).collect()
    } else {
        let rows = cells.par_chunks_exact(columns).enumerate();
        rows.with_min_len(ROWS_AT_ONCE).map_init(own_room, one).collect()
    }
}

/// Squared distances of one row, computed when they are needed.
pub struct RowSquares<'a> {
    row_of: &'a mut RowOf,
    out: &'a mut [u32],
    /// Columns whose distances were computed last.
    known: std::ops::Range<usize>,
}

impl RowSquares<'_> {
    /// The distances of several adjacent columns, all of them on in the mask.
    ///
    /// # Panics
    /// If a column lies outside the window.
    pub fn of(&mut self, start: usize, end: usize) -> &[u32] {
        if start < self.known.start || end > self.known.end {
            let heights = &self.row_of.heights;
            debug_assert!(heights[start..end].iter().all(|height| *height > 0));
            let is_zero = |height: &u32| *height == 0;
            let from = heights[..start].iter().rposition(is_zero).map_or(0, |at| at + 1);
            let to = heights[end..]
                .iter()
                .position(is_zero)
                .map_or(heights.len(), |off| end + off);
            self.row_of.run(from, to, &mut self.out[from..to]);
            self.known = from..to;
        }
        &self.out[start..end]
    }
}

/// A distance along a column, in cells.
trait Height: Copy + Send + Sync + Into<u32> {
    const ZERO: Self;
    const ALL_ONES: Self;
    fn of(cells: usize) -> Self;
    fn keep_where_on(self, mask: Self) -> Self;
    fn at_most(self, other: Self) -> Self;
    fn next(self) -> Self;
}

macro_rules! height {
    ($number:ty) => {
        impl Height for $number {
            const ZERO: Self = 0;
            const ALL_ONES: Self = Self::MAX;
            fn of(cells: usize) -> Self {
                Self::try_from(cells).unwrap_or(Self::MAX)
            }
            #[inline]
            fn keep_where_on(self, mask: Self) -> Self {
                self & mask
            }
            #[inline]
            fn at_most(self, other: Self) -> Self {
                self.min(other)
            }
            #[inline]
            fn next(self) -> Self {
                self.wrapping_add(1)
            }
        }
    };
}
height!(u16);
height!(u32);

/// Writes 0 for each cell of a row that is off, and all ones for any other.
fn fill_from<H: Height>(mask: &BitGrid, window: Window, row: usize, cells: &mut [H]) {
    /// Number of cells handled at once.
    const LANES: usize = 16;
    const BITS: [u16; LANES] = {
        let mut bits = [0; LANES];
        let mut lane = 0;
        while lane < LANES {
            bits[lane] = 1 << lane;
            lane += 1;
        }
        bits
    };
    let words = mask.row(window.row_start + row);
    for (number, cells) in cells.chunks_mut(LANES).enumerate() {
        let column = window.column_start + LANES * number;
        let (word, bit) = (column / 64, column % 64);
        let mut some = words[word] >> bit;
        if bit > 64 - LANES {
            some |= words.get(word + 1).map_or(0, |next| next << (64 - bit));
        }
        for (cell, bit) in cells.iter_mut().zip(BITS) {
            *cell = if some as u16 & bit == 0 {
                H::ZERO
            } else {
                H::ALL_ONES
            };
        }
    }
}

/// Distances along columns, down and up; whole rows at a time, so that several cells are handled at once.
///
/// `fill` writes 0 for each cell of a row from which distances are measured, and all ones for any other.
fn along_columns<H: Height>(columns: usize, rows: usize, fill: impl Fn(usize, &mut [H])) -> Vec<H> {
    let far = H::of(columns + rows);
    let mut cells = vec![H::ZERO; columns * rows];
    for row in 0..rows {
        let (before, rest) = cells.split_at_mut(row * columns);
        let here = &mut rest[..columns];
        fill(row, here);
        match row.checked_sub(1) {
            None => here.iter_mut().for_each(|cell| *cell = far.keep_where_on(*cell)),
            Some(last) => here
                .iter_mut()
                .zip(&before[last * columns..])
                .for_each(|(cell, before)| *cell = before.next().at_most(far).keep_where_on(*cell)),
        }
    }
    for row in (0..rows.saturating_sub(1)).rev() {
        let (here, after) = cells.split_at_mut((row + 1) * columns);
        here[row * columns..]
            .iter_mut()
            .zip(&after[..columns])
            .for_each(|(cell, after)| *cell = cell.at_most(after.next()));
    }
    cells
}

fn squared_of_rows(columns: usize, rows: usize, fill: impl Fn(usize, &mut [u32])) -> Vec<u32> {
    let mut cells = along_columns::<u32>(columns, rows, fill);
    // From here on rows are independent of each other.
    if cells.len() < CELLS_FOR_THREADS {
        let mut row_of = RowOf::new(columns);
        cells
            .chunks_exact_mut(columns.max(1))
            .for_each(|row| row_of.row(row));
    } else {
        cells
            .par_chunks_exact_mut(columns)
            .with_min_len(ROWS_AT_ONCE)
            .for_each_init(|| RowOf::new(columns), RowOf::row);
    }
    cells
}

/// From this many cells on, threads are worth starting.
const CELLS_FOR_THREADS: usize = 100_000;
const ROWS_AT_ONCE: usize = 32;
/// Shifting a line this many times costs as much as the envelope.
const SHIFTS_AS_ENVELOPE: usize = 48;
/// More than any square that the shifts produce, and small enough for another one to be added.
const BEYOND: i16 = 1 << 14;

/// Distances along the columns of one row, and working space for it.
struct RowOf {
    heights: Vec<u32>,
    /// For the envelope.
    sites: Vec<usize>,
    begins: Vec<i64>,
    /// For the shifts: squares of heights with space on both sides, and the smallest so far.
    line: Vec<i16>,
    least: Vec<i16>,
}

impl RowOf {
    fn new(columns: usize) -> Self {
        Self {
            heights: vec![0; columns],
            sites: Vec::with_capacity(columns),
            begins: Vec::with_capacity(columns),
            line: Vec::with_capacity(columns + 2 * SHIFTS_AS_ENVELOPE),
            least: Vec::with_capacity(columns),
        }
    }

    /// Turns distances along columns into squared distances.
    fn row(&mut self, row: &mut [u32]) {
        self.heights.copy_from_slice(row);
        let mut start = 0;
        while start < row.len() {
            if row[start] == 0 {
                start += 1;
                continue;
            }
            let end = row[start..]
                .iter()
                .position(|height| *height == 0)
                .map_or(row.len(), |run| start + run);
            self.run(start, end, &mut row[start..end]);
            start = end;
        }
    }

    /// Squared distances of a run of cells that are not zero.
    fn run(&mut self, start: usize, end: usize, out: &mut [u32]) {
        let (length, has_both_ends) = (end - start, start > 0 && end < self.heights.len());
        // The zero beside the run is no farther than this, and nothing beyond it is closer.
        let to_the_side = if has_both_ends { length.div_ceil(2) } else { length };
        let highest = self.heights[start..end].iter().copied().max().unwrap_or(0);
        // Whatever is closer than straight up or down lies within fewer columns than that.
        let shifts = to_the_side.min((highest as usize).saturating_sub(1));
        // Squares of heights must be small, too.
        if shifts <= SHIFTS_AS_ENVELOPE && highest < 1 << 7 {
            self.by_shifts(start, end, shifts, out);
        } else {
            self.by_envelope(start, end, out);
        }
    }

    /// Shifts the line of squares to either side again and again, handling several cells at once.
    fn by_shifts(&mut self, start: usize, end: usize, shifts: usize, out: &mut [u32]) {
        let (line, least) = (&mut self.line, &mut self.least);
        let length = end - start;
        least.clear();
        least.extend(
            self.heights[start..end]
                .iter()
                .map(|height| (height * height) as i16),
        );
        if shifts > 0 {
            line.clear();
            line.resize(length + 2 * shifts, BEYOND);
            line[shifts..shifts + length].copy_from_slice(least);
            if start > 0 {
                line[shifts - 1] = 0;
            }
            if end < self.heights.len() {
                line[shifts + length] = 0;
            }
        }
        for across in 1..=shifts {
            let square = (across * across) as i16;
            let (left, right) = (&line[shifts - across..], &line[shifts + across..]);
            for ((least, left), right) in least.iter_mut().zip(left).zip(right) {
                *least = (*least).min(*left.min(right) + square);
            }
        }
        for (cell, square) in out.iter_mut().zip(least) {
            *cell = *square as u32;
        }
    }

    fn by_envelope(&mut self, start: usize, end: usize, out: &mut [u32]) {
        let Self {
            heights,
            sites,
            begins,
            ..
        } = self;
        let (from, to) = (start.saturating_sub(1), (end + 1).min(heights.len()));
        envelope(heights, from, to, sites, begins);
        let mut site = sites.len() - 1;
        for (cell, column) in out.iter_mut().zip(start..end).rev() {
            while begins[site] > column as i64 {
                site -= 1;
            }
            let across = column as i64 - sites[site] as i64;
            let height = i64::from(heights[sites[site]]);
            *cell = u32::try_from(across * across + height * height).unwrap_or(u32::MAX);
        }
    }
}

/// Lower envelope of the parabolas over columns `start..end`.
fn envelope(heights: &[u32], start: usize, end: usize, sites: &mut Vec<usize>, begins: &mut Vec<i64>) {
    sites.clear();
    begins.clear();
    sites.push(start);
    begins.push(start as i64);
    let square = |column: usize| i64::from(heights[column]) * i64::from(heights[column]);
    let value = |at: i64, site: usize| (at - site as i64).pow(2) + square(site);
    for column in start + 1..end {
        while let (Some(site), Some(begin)) = (sites.last(), begins.last()) {
            if value(*begin, *site) > value(*begin, column) {
                sites.pop();
                begins.pop();
            } else {
                break;
            }
        }
        match sites.last() {
            None => {
                sites.push(column);
                begins.push(start as i64);
            }
            Some(site) => {
                let (earlier, later) = (*site as i64, column as i64);
                let over = later * later - earlier * earlier + square(column) - square(*site);
                let under = 2 * (later - earlier);
                // Division of 64 bits takes several times as long, and is hardly ever needed.
                let meet = match (i32::try_from(over), i32::try_from(under)) {
                    (Ok(over), Ok(under)) => i64::from(over.div_euclid(under)),
                    _ => over.div_euclid(under),
                };
                if meet + 1 < end as i64 {
                    sites.push(column);
                    begins.push(meet + 1);
                }
            }
        }
    }
}

/// Which neighbours count as connected.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Connectivity {
    /// Cells that share a side.
    Four,
    /// Cells that share a side or a corner.
    Eight,
}

/// A run of cells in one row, end excluded.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct CellRun {
    /// Row.
    pub row: usize,
    /// First column.
    pub start: usize,
    /// One past the last column.
    pub end: usize,
}

/// One connected part of a mask.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct MaskPart {
    /// Its runs, row by row from the south.
    pub runs: Vec<CellRun>,
}

impl MaskPart {
    /// Number of cells.
    pub fn cells(&self) -> u64 {
        self.runs.iter().map(|run| (run.end - run.start) as u64).sum()
    }

    /// Smallest window that holds it.
    pub fn window(&self) -> Window {
        let mut window = Window {
            column_start: usize::MAX,
            column_end: 0,
            row_start: usize::MAX,
            row_end: 0,
        };
        for run in &self.runs {
            window.column_start = window.column_start.min(run.start);
            window.column_end = window.column_end.max(run.end);
            window.row_start = window.row_start.min(run.row);
            window.row_end = window.row_end.max(run.row + 1);
        }
        window
    }
}

/// Runs of set bits of a row.
pub fn runs_of_row(words: &[u64], columns: usize, mut each: impl FnMut(usize, usize)) {
    let mut open: Option<usize> = None;
    for (index, word) in words.iter().enumerate() {
        if *word == 0 && open.is_none() {
            continue;
        }
        if *word == u64::MAX && open.is_some() {
            continue;
        }
        let mut bit = 0;
        while bit < 64 {
            let rest = word >> bit;
            match open {
                None => {
                    if rest == 0 {
                        break;
                    }
                    bit += rest.trailing_zeros() as usize;
                    open = Some(index * 64 + bit);
                }
                Some(start) => {
                    let ones = (!rest).trailing_zeros() as usize;
                    if bit + ones >= 64 {
                        break;
                    }
                    bit += ones;
                    each(start, index * 64 + bit);
                    open = None;
                }
            }
        }
    }
    if let Some(start) = open {
        each(start, columns);
    }
}

/// Runs of a mask, row by row, with the number of the connected part that each belongs to.
pub struct Labelled {
    /// Runs of all parts, row by row.
    pub runs: Vec<CellRun>,
    /// Number of the part that each run belongs to.
    pub number: Vec<usize>,
    /// How many parts there are; they are numbered in the order of their first run.
    pub count: usize,
}

/// Finds the connected parts of a mask.
pub fn labelled(mask: &BitGrid, connectivity: Connectivity) -> Labelled {
    let reach = usize::from(connectivity == Connectivity::Eight);
    let mut runs: Vec<CellRun> = Vec::new();
    let mut parent: Vec<usize> = Vec::new();
    let mut above = 0..0;
    for row in 0..mask.grid.rows {
        let begin = runs.len();
        runs_of_row(mask.row(row), mask.grid.columns, |start, end| {
            runs.push(CellRun { row, start, end })
        });
        parent.extend(begin..runs.len());
        let mut before = above.start;
        for index in begin..runs.len() {
            while before < above.end && runs[before].end + reach <= runs[index].start {
                before += 1;
            }
            let mut touching = before;
            while touching < above.end && runs[touching].start < runs[index].end + reach {
                let (one, two) = (root(&mut parent, touching), root(&mut parent, index));
                let (low, high) = (one.min(two), one.max(two));
                parent[high] = low;
                touching += 1;
            }
        }
        above = begin..runs.len();
    }
    let mut number = vec![usize::MAX; runs.len()];
    let mut count = 0;
    for index in 0..runs.len() {
        // The first run of a part is its root.
        let top = root(&mut parent, index);
        if top == index {
            number[index] = count;
            count += 1;
        } else {
            number[index] = number[top];
        }
    }
    Labelled { runs, number, count }
}

impl Labelled {
    /// The parts, each with its runs.
    pub fn parts(&self) -> Vec<MaskPart> {
        let mut found = vec![MaskPart { runs: Vec::new() }; self.count];
        for (run, number) in self.runs.iter().zip(&self.number) {
            found[*number].runs.push(*run);
        }
        found
    }
}

/// Connected parts of a mask, in the order of their first run.
pub fn parts(mask: &BitGrid, connectivity: Connectivity) -> Vec<MaskPart> {
    labelled(mask, connectivity).parts()
}

fn root(parent: &mut [usize], mut index: usize) -> usize {
    while parent[index] != index {
        parent[index] = parent[parent[index]];
        index = parent[index];
    }
    index
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;
    use tussock_types::Grid;

    fn mask(rows: &[&str]) -> BitGrid {
        let grid = Grid {
            east_min_m: 0.0,
            north_min_m: 0.0,
            cell_m: 1.0,
            columns: rows[0].len(),
            rows: rows.len(),
        };
        let mut mask = BitGrid::new(grid);
        for (row, text) in rows.iter().enumerate() {
            for (column, letter) in text.chars().enumerate() {
                if letter == '1' {
                    mask.set(column, row);
                }
            }
        }
        mask
    }

    // ALG-01, ALG-02: scipy.ndimage.label with a cross and with a square.
    #[test]
    fn parts_of_the_small_grid_with_four_and_with_eight_neighbours() {
        let mask = mask(&["100110", "010010", "000000", "110010", "010100", "000001"]);
        let sizes = |connectivity| {
            let mut sizes: Vec<u64> = parts(&mask, connectivity).iter().map(MaskPart::cells).collect();
            sizes.sort_unstable_by(|a, b| b.cmp(a));
            sizes
        };
        assert_eq!(sizes(Connectivity::Four), [3, 3, 1, 1, 1, 1, 1]);
        assert_eq!(sizes(Connectivity::Eight), [3, 3, 2, 2, 1]);
    }

    /// Large enough for threads: a lattice of zeros, whose distances are known.
    #[test]
    fn distances_over_many_rows_are_those_to_the_next_knot_of_a_lattice() {
        let (columns, rows, step) = (410, 390, 26);
        assert!(columns * rows > CELLS_FOR_THREADS);
        let found = squared(columns, rows, |column, row| {
            column % step == 13 && row % step == 13
        });
        let off = |at: usize| at.abs_diff(at / step * step + 13) as u32;
        for row in 0..rows {
            for column in 0..columns - columns % step {
                let (across, up) = (off(column), off(row));
                assert_eq!(
                    found[row * columns + column],
                    across * across + up * up,
                    "{column} {row}"
                );
            }
        }
    }

    // ALG-03: scipy.ndimage.distance_transform_edt squared.
    #[test]
    fn squared_distances_from_the_middle_of_five_by_five() {
        let found = squared(5, 5, |column, row| column == 2 && row == 2);
        let expected = [
            8, 5, 4, 5, 8, 5, 2, 1, 2, 5, 4, 1, 0, 1, 4, 5, 2, 1, 2, 5, 8, 5, 4, 5, 8,
        ];
        assert_eq!(found, expected);
    }

    proptest! {
        #[test]
        fn squared_distances_equal_a_search_over_all_cells(
            columns in 1..24_usize, rows in 1..20_usize, bits in proptest::collection::vec(0..7_u8, 480),
        ) {
            let is_zero = |column: usize, row: usize| bits[row * columns + column] == 0;
            let found = squared(columns, rows, is_zero);
            let zeros: Vec<(i64, i64)> = (0..rows)
                .flat_map(|row| (0..columns).map(move |column| (column, row)))
                .filter(|(column, row)| is_zero(*column, *row))
                .map(|(column, row)| (column as i64, row as i64))
                .collect();
            prop_assume!(!zeros.is_empty());
            // The same from a mask that continues around the window.
            let grid = Grid { east_min_m: 0.0, north_min_m: 0.0, cell_m: 1.0, columns: columns + 70, rows: rows + 2 };
            let mut mask = BitGrid::new(grid);
            for row in 0..rows + 2 {
                for column in 0..columns + 70 {
                    let inside = column.checked_sub(61).zip(row.checked_sub(1)).filter(|(x, y)| *x < columns && *y < rows);
                    if inside.is_none_or(|(x, y)| !is_zero(x, y)) {
                        mask.set(column, row);
                    }
                }
            }
            let window = Window { column_start: 61, column_end: 61 + columns, row_start: 1, row_end: 1 + rows };
            let by_rows = of_rows_in(&mask, window, |row, squares| {
                let mut line = vec![0; columns];
                runs_of_row(mask.row(row + 1), columns + 70, |start, end| {
                    let (start, end) = (start.max(61) - 61, end.min(61 + columns).saturating_sub(61));
                    if start < end {
                        line[start..end].copy_from_slice(squares.of(start, end));
                    }
                });
                line
            });
            prop_assert_eq!(&by_rows.concat(), &found);
            for row in 0..rows {
                for column in 0..columns {
                    let nearest = zeros
                        .iter()
                        .map(|(x, y)| (x - column as i64).pow(2) + (y - row as i64).pow(2))
                        .min()
                        .unwrap();
                    prop_assert_eq!(i64::from(found[row * columns + column]), nearest);
                }
            }
        }

        #[test]
        fn squared_distances_in_open_ground_equal_a_search_over_all_zeros(
            columns in 1..170_usize, rows in 1..90_usize, knots in proptest::collection::vec((0..170_usize, 0..90_usize), 1..12),
        ) {
            let zeros: Vec<(usize, usize)> = knots.iter().map(|(x, y)| (x % columns, y % rows)).collect();
            let found = squared(columns, rows, |column, row| zeros.contains(&(column, row)));
            let mut mask = BitGrid::new(Grid { east_min_m: 0.0, north_min_m: 0.0, cell_m: 1.0, columns, rows });
            for row in 0..rows {
                for column in 0..columns {
                    if !zeros.contains(&(column, row)) {
                        mask.set(column, row);
                    }
                    let square = |(x, y): &(usize, usize)| x.abs_diff(column).pow(2) + y.abs_diff(row).pow(2);
                    let nearest = zeros.iter().map(square).min();
                    prop_assert_eq!(Some(found[row * columns + column] as usize), nearest, "{} {}", column, row);
                }
            }
            let window = Window { column_start: 0, column_end: columns, row_start: 0, row_end: rows };
            let by_rows = of_rows_in(&mask, window, |row, squares| {
                let mut line = vec![0; columns];
                runs_of_row(mask.row(row), columns, |start, end| {
                    line[start..end].copy_from_slice(squares.of(start, end));
                });
                (row, line)
            });
            prop_assert!(by_rows.iter().map(|(row, _)| *row).eq(0..rows));
            prop_assert_eq!(by_rows.into_iter().flat_map(|(_, squares)| squares).collect::<Vec<_>>(), found);
        }

        #[test]
        fn parts_equal_a_flood_fill(
            columns in 1..140_usize, rows in 1..12_usize, bits in proptest::collection::vec(any::<bool>(), 1680),
            eight in any::<bool>(),
        ) {
            let grid = Grid { east_min_m: 0.0, north_min_m: 0.0, cell_m: 1.0, columns, rows };
            let mut mask = BitGrid::new(grid);
            for row in 0..rows {
                for column in 0..columns {
                    if bits[row * columns + column] {
                        mask.set(column, row);
                    }
                }
            }
            let connectivity = if eight { Connectivity::Eight } else { Connectivity::Four };
            let mut sizes: Vec<u64> = parts(&mask, connectivity).iter().map(MaskPart::cells).collect();
            let mut seen = vec![false; columns * rows];
            let mut slow = Vec::new();
            for begin in 0..columns * rows {
                if seen[begin] || !bits[begin] {
                    continue;
                }
                let mut stack = vec![begin];
                seen[begin] = true;
                let mut size = 0_u64;
                while let Some(cell) = stack.pop() {
                    size += 1;
                    let (column, row) = ((cell % columns) as i64, (cell / columns) as i64);
                    for (dx, dy) in [(1, 0), (-1, 0), (0, 1), (0, -1), (1, 1), (1, -1), (-1, 1), (-1, -1)] {
                        let (x, y) = (column + dx, row + dy);
                        let near = eight || dx == 0 || dy == 0;
                        if near && x >= 0 && y >= 0 && x < columns as i64 && y < rows as i64 {
                            let next = y as usize * columns + x as usize;
                            if bits[next] && !seen[next] {
                                seen[next] = true;
                                stack.push(next);
                            }
                        }
                    }
                }
                slow.push(size);
            }
            sizes.sort_unstable();
            slow.sort_unstable();
            prop_assert_eq!(sizes, slow);
        }
    }
}
