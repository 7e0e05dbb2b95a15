//! Finds connected unvisited ground.
//!
//! ```text
//!   unvisited        a disc fits      grown back        pocket
//!   ########         ........         ........
//!   #.######   ->    ...##...   ->    .######.   ->     one part, area, widest place
//!   ########         ........         ........
//! ```
//!
//! Unvisited lawn is opened by a disc of the least width (Serra 1982); where no such disc fits, it is a sliver. The widest
//! place is the largest inscribed circle, from the distance transform. Exact on the cells; widths are right to within two
//! cells. Places where a disc might fit are found first by a square inside it, 64 cells at a time, so a lawn that has only
//! slivers costs next to nothing.

use rayon::prelude::*;
use tussock_plane::BitGrid;
use tussock_plane::distance::{self, CellRun, Connectivity, Labelled, MaskPart, Window};
use tussock_types::{Grid, Place};

/// Connected unvisited ground in which a disc of the least width fits.
#[derive(Clone, Debug)]
pub struct Pocket {
    /// Its cells, on a part of the counting grid.
    pub cells: BitGrid,
    /// Area.
    pub area_m2: f64,
    /// Diameter of the largest circle that fits inside.
    pub widest_m: f64,
    /// Middle of that circle.
    pub place: Place,
}

/// The width of a strip is twice the distance from its middle cell to the nearest foreign centre, less one cell if an odd
/// number of cells lies across it, and exactly that if an even number does: half a cell lies in between.
const RIM_CELLS: f64 = 0.5;

/// Pockets of a mask at least `least_width_m` wide and of at least `least_area_m2`, largest first.
pub fn pockets(unvisited: &BitGrid, least_width_m: f64, least_area_m2: f64) -> Vec<Pocket> {
    let grid = unvisited.grid;
    let reach_cells = 0.5 * (least_width_m / grid.cell_m + RIM_CELLS);
    let reach_square = reach_cells * reach_cells;
    let half_square = ((reach_cells / std::f64::consts::SQRT_2).ceil() as usize).saturating_sub(1);
    let candidates = eroded_by_square(unvisited, half_square);
    let margin = (1.5 * reach_cells).ceil() as usize + 3;

    let mut opened = BitGrid::new(grid);
    let mut cores: Vec<Core> = Vec::new();
    let disc = Disc::new(reach_square);
    let candidates = distance::parts(&candidates, Connectivity::Eight);
    let found: Vec<Vec<Middles>> = grouped(&candidates, margin, grid)
        .par_iter()
        .map(|(window, candidates)| middles(unvisited, *window, candidates, reach_square))
        .collect();
    for one in found.into_iter().flatten() {
        disc.grow(&mut opened, one.widest.row, one.start, one.end);
        cores.push(one.widest);
    }
    let labelled = distance::labelled(&opened, Connectivity::Four);
    let widest = widest_of_parts(&labelled, &cores);
    let parts = labelled.parts();
    let mut pockets: Vec<Pocket> = parts
        .iter()
        .zip(widest)
        .filter_map(|(part, core)| {
            let core = core?;
            let area_m2 = part.cells() as f64 * grid.cell_m2();
            (area_m2 >= least_area_m2).then(|| Pocket {
                cells: cut_out(part, grid),
                area_m2,
                widest_m: (2.0 * f64::from(core.square).sqrt() - RIM_CELLS) * grid.cell_m,
                place: grid.centre(core.column, core.row),
            })
        })
        .collect();
    pockets.sort_by(|a, b| b.area_m2.total_cmp(&a.area_m2));
    pockets
}

/// A run of cells in which the disc's centre may lie.
struct Middles {
    start: usize,
    end: usize,
    widest: Core,
}

/// Of a run of cells in which the disc's centre may lie, the one farthest from foreign ground.
#[derive(Clone, Copy)]
struct Core {
    column: usize,
    row: usize,
    square: u32,
    /// Among several that are equally wide, the first counts: the candidate that contains it, part by part.
    order: usize,
}

/// Where in the candidates of a window the disc's centre may lie, row by row.
fn middles(unvisited: &BitGrid, window: Window, candidates: &[&MaskPart], reach_square: f64) -> Vec<Middles> {
    let mut by_row: Vec<Vec<(usize, CellRun)>> = vec![Vec::new(); window.rows()];
    for numbered in candidates
        .iter()
        .flat_map(|candidate| &candidate.runs)
        .copied()
        .enumerate()
    {
        by_row[numbered.1.row - window.row_start].push(numbered);
    }
    let of_rows = distance::of_rows_in(unvisited, window, |row, squares| {
        let mut found = Vec::new();
        for (order, run) in &by_row[row] {
            let line = squares.of(run.start - window.column_start, run.end - window.column_start);
            each_run_where(line, reach_square, |start, end| {
                let widest =
                    (start..end).fold(start, |best, at| if line[at] > line[best] { at } else { best });
                found.push(Middles {
                    start: run.start + start,
                    end: run.start + end,
                    widest: Core {
                        column: run.start + widest,
                        row: run.row,
                        square: line[widest],
                        order: *order,
                    },
                });
            });
        }
        found
    });
    of_rows.into_iter().flatten().collect()
}

/// Windows in which distances are looked up, with the candidates inside: one for each, or a single one if many small ones
/// would cover the same ground several times.
fn grouped(candidates: &[MaskPart], margin: usize, grid: Grid) -> Vec<(Window, Vec<&MaskPart>)> {
    let windows: Vec<Window> = candidates
        .iter()
        .map(|candidate| candidate.window().grown(margin, grid.columns, grid.rows))
        .collect();
    let Some(whole) = windows.iter().copied().reduce(|one, other| Window {
        column_start: one.column_start.min(other.column_start),
        column_end: one.column_end.max(other.column_end),
        row_start: one.row_start.min(other.row_start),
        row_end: one.row_end.max(other.row_end),
    }) else {
        return Vec::new();
    };
    let cells = |window: &Window| window.columns() * window.rows();
    if windows.iter().map(cells).sum::<usize>() >= cells(&whole) {
        return vec![(whole, candidates.iter().collect())];
    }
    windows
        .into_iter()
        .zip(candidates.iter().map(|one| vec![one]))
        .collect()
}

/// Stretches of a line of squares that reach this far: start, and one past the end.
fn each_run_where(line: &[u32], reach_square: f64, mut each: impl FnMut(usize, usize)) {
    let mut open = None;
    for (at, square) in line.iter().enumerate() {
        match (f64::from(*square) >= reach_square, open) {
            (true, None) => open = Some(at),
            (false, Some(start)) => {
                each(start, at);
                open = None;
            }
            _ => {}
        }
    }
    if let Some(start) = open {
        each(start, line.len());
    }
}

/// Half the width of a disc in each row, from its centre on.
struct Disc {
    half_widths: Vec<usize>,
}

impl Disc {
    /// All cells closer than the square root of `reach_square`.
    fn new(reach_square: f64) -> Self {
        let mut half_widths = Vec::new();
        while ((half_widths.len() * half_widths.len()) as f64) < reach_square {
            let up = half_widths.len();
            let is_in = |across: &usize| ((across * across + up * up) as f64) < reach_square;
            half_widths.push((0..).take_while(is_in).count() - 1);
        }
        Self { half_widths }
    }

    /// Marks what the disc covers while its centre moves along a row.
    fn grow(&self, opened: &mut BitGrid, row: usize, start: usize, end: usize) {
        let (columns, rows) = (opened.grid.columns, opened.grid.rows);
        for (up, half) in self.half_widths.iter().enumerate() {
            let (from, to) = (start.saturating_sub(*half), (end + half).min(columns));
            for row in [row.checked_sub(up), (up > 0).then_some(row + up)]
                .into_iter()
                .flatten()
            {
                if row < rows {
                    opened.set_span(row, from, to);
                }
            }
        }
    }
}

/// For each part, its core cell with the largest distance, if it has one.
fn widest_of_parts(labelled: &Labelled, cores: &[Core]) -> Vec<Option<Core>> {
    let Labelled { runs, number, count } = labelled;
    let rows = runs.last().map_or(0, |run| run.row + 1);
    let mut row_starts = vec![0; rows + 1];
    for run in runs {
        row_starts[run.row + 1] += 1;
    }
    for row in 0..rows {
        row_starts[row + 1] += row_starts[row];
    }
    let mut widest: Vec<Option<Core>> = vec![None; *count];
    for core in cores {
        let of_row = &runs[row_starts[core.row]..row_starts[core.row + 1]];
        let after = of_row.partition_point(|run| run.start <= core.column);
        let Some(at) = after.checked_sub(1).filter(|at| core.column < of_row[*at].end) else {
            continue;
        };
        let best = &mut widest[number[row_starts[core.row] + at]];
        let is_first_of_widest = best.is_none_or(|best: Core| {
            core.square > best.square || (core.square == best.square && core.order < best.order)
        });
        if is_first_of_widest {
            *best = Some(*core);
        }
    }
    widest
}

/// The part on its own grid, with cells in the same places.
fn cut_out(part: &MaskPart, grid: Grid) -> BitGrid {
    let window = part.window();
    let own = Grid {
        east_min_m: grid.east_min_m + window.column_start as f64 * grid.cell_m,
        north_min_m: grid.north_min_m + window.row_start as f64 * grid.cell_m,
        cell_m: grid.cell_m,
        columns: window.columns(),
        rows: window.rows(),
    };
    let mut cells = BitGrid::new(own);
    for run in &part.runs {
        cells.set_span(
            run.row - window.row_start,
            run.start - window.column_start,
            run.end - window.column_start,
        );
    }
    cells
}

/// Cells around which a square of `2 half + 1` cells a side lies wholly in the mask; cells beyond the grid are foreign.
fn eroded_by_square(mask: &BitGrid, half: usize) -> BitGrid {
    if half == 0 {
        return mask.clone();
    }
    let length = 2 * half + 1;
    let rows = mask.grid.rows;
    let words = mask.row(0).len();
    // Along rows: after the loop, bit x stands for cells x .. x + length.
    let mut lines: Vec<Vec<u64>> = (0..rows)
        .map(|row| {
            let mut line = mask.row(row).to_vec();
            let mut reached = 1;
            while reached < length {
                let step = reached.min(length - reached);
                let ahead = shifted_down(&line, step);
                line.iter_mut()
                    .zip(&ahead)
                    .for_each(|(word, ahead)| *word &= ahead);
                reached += step;
            }
            shifted_up(&line, half)
        })
        .collect();
    // Across rows likewise.
    let mut reached = 1;
    while reached < length {
        let step = reached.min(length - reached);
        for row in 0..rows {
            if row + step < rows {
                let (low, high) = lines.split_at_mut(row + step);
                low[row]
                    .iter_mut()
                    .zip(&high[0])
                    .for_each(|(word, ahead)| *word &= ahead);
            } else {
                lines[row] = vec![0; words];
            }
        }
        reached += step;
    }
    let mut eroded = BitGrid::new(mask.grid);
    for row in half..rows {
        eroded.row_mut(row).copy_from_slice(&lines[row - half]);
    }
    eroded
}

/// Bit x of the result is bit x + by.
fn shifted_down(line: &[u64], by: usize) -> Vec<u64> {
    let (words, bits) = (by / 64, by % 64);
    (0..line.len())
        .map(|index| {
            let low = line.get(index + words).copied().unwrap_or(0);
            let high = line.get(index + words + 1).copied().unwrap_or(0);
            if bits == 0 {
                low
            } else {
                low >> bits | high << (64 - bits)
            }
        })
        .collect()
}

/// Bit x of the result is bit x - by.
fn shifted_up(line: &[u64], by: usize) -> Vec<u64> {
    let (words, bits) = (by / 64, by % 64);
    (0..line.len())
        .map(|index| {
            let high = index.checked_sub(words).map_or(0, |at| line[at]);
            let low = index.checked_sub(words + 1).map_or(0, |at| line[at]);
            if bits == 0 {
                high
            } else {
                high << bits | low >> (64 - bits)
            }
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use approx::assert_abs_diff_eq;
    use proptest::prelude::*;

    fn blank(columns: usize, rows: usize, cell_m: f64) -> BitGrid {
        BitGrid::new(Grid {
            east_min_m: 3.0,
            north_min_m: -2.0,
            cell_m,
            columns,
            rows,
        })
    }

    #[test]
    fn a_disc_is_found_with_its_area_width_and_middle() {
        let mut mask = blank(200, 160, 0.05);
        let middle = Place::new(7.0, 2.0);
        crate::swath::mark(&mut mask, [(middle, middle)].into_iter(), 1.0);
        let found = pockets(&mask, 1.0, 0.5);
        assert_eq!(found.len(), 1);
        assert_abs_diff_eq!(found[0].area_m2, std::f64::consts::PI, epsilon = 0.03);
        assert_abs_diff_eq!(found[0].widest_m, 2.0, epsilon = 0.1);
        assert!(found[0].place.distance_m(middle) < 0.06);
    }

    #[test]
    fn slivers_and_tails_do_not_count_and_a_neck_parts_two_pockets() {
        let mut mask = blank(400, 200, 0.05);
        // Two rooms of 3 x 3 m, a strip of 0.6 m between them, and a tail of 0.6 m.
        for row in 20..80 {
            mask.set_span(row, 20, 80);
            mask.set_span(row, 140, 200);
        }
        for row in 44..56 {
            mask.set_span(row, 80, 140);
            mask.set_span(row, 200, 300);
        }
        let found = pockets(&mask, 1.0, 0.5);
        assert_eq!(found.len(), 2);
        for pocket in &found {
            assert_abs_diff_eq!(pocket.widest_m, 3.0, epsilon = 0.05);
            assert_abs_diff_eq!(pocket.area_m2, 9.0, epsilon = 0.25);
        }
        assert_eq!(pockets(&mask, 0.5, 0.5).len(), 1);
        assert_eq!(pockets(&mask, 3.2, 0.5).len(), 0);
    }

    /// The same opening by definition: every disc that fits.
    fn slow_opening(mask: &BitGrid, least_width_m: f64) -> (u64, f64) {
        let grid = mask.grid;
        let reach = 0.5 * (least_width_m / grid.cell_m + RIM_CELLS);
        let (columns, rows) = (grid.columns as i64, grid.rows as i64);
        let set = |column: i64, row: i64| {
            column >= 0
                && row >= 0
                && column < columns
                && row < rows
                && mask.get(column as usize, row as usize)
        };
        let span = reach.ceil() as i64;
        let disc: Vec<(i64, i64)> = (-span..=span)
            .flat_map(|dy| (-span..=span).map(move |dx| (dx, dy)))
            .filter(|(dx, dy)| ((dx * dx + dy * dy) as f64) < reach * reach)
            .collect();
        let mut opened = std::collections::BTreeSet::new();
        for row in 0..rows {
            for column in 0..columns {
                if disc.iter().all(|(dx, dy)| set(column + dx, row + dy)) {
                    opened.extend(disc.iter().map(|(dx, dy)| (column + dx, row + dy)));
                }
            }
        }
        (opened.len() as u64, opened.len() as f64 * grid.cell_m2())
    }

    proptest! {
        #![proptest_config(ProptestConfig::with_cases(60))]
        #[test]
        fn opened_area_equals_the_union_of_all_discs_that_fit(
            discs in proptest::collection::vec((0.0..6.0_f64, 0.0..4.0_f64, 0.1..1.4_f64), 1..7),
            least_width_m in 0.3..1.6_f64,
        ) {
            let mut mask = BitGrid::new(Grid {
                east_min_m: -0.1, north_min_m: -0.1, cell_m: 0.1, columns: 64, rows: 44,
            });
            for (east_m, north_m, radius_m) in discs {
                let at = Place::new(east_m, north_m);
                crate::swath::mark(&mut mask, [(at, at)].into_iter(), radius_m);
            }
            // The outermost cells are foreign, as on a grid over a lawn.
            for row in 0..44 {
                for column in 0..64 {
                    if row == 0 || row == 43 || column == 0 || column == 63 {
                        let word = column / 64;
                        mask.row_mut(row)[word] &= !(1 << (column % 64));
                    }
                }
            }
            let found: f64 = pockets(&mask, least_width_m, 0.0).iter().map(|pocket| pocket.area_m2).sum();
            let (_, expected) = slow_opening(&mask, least_width_m);
            prop_assert!((found - expected).abs() < 1e-9, "{found} {expected}");
        }
    }
}
