//! Where does the machine drive again and again?
//!
//! Question: which lines are visited so much more often than the rest that they may become ruts? More passes wear the turf:
//! the figure is a reason to look, not a verdict.
//!
//! Method: squares of the count with many times the lawn's mean visits, as connected parts; a part's line is its longest
//! shortest path (two breadth-first sweeps). Exact given the count; if positions are poorer than the width of a swath, lines
//! are smeared and nothing is reported.

use std::collections::VecDeque;
use tussock_plane::line_simplified;
use tussock_types::{Cells, Place};

/// A line that is visited far more often than the rest.
#[derive(Clone, Debug, PartialEq)]
pub struct Worn {
    /// The line.
    pub line: Vec<Place>,
    /// Its length.
    pub length_m: f64,
    /// Mean visits on it over the lawn's mean.
    pub times_mean: f64,
    /// Most visits of one square of it.
    pub most_visits: f64,
}

/// "Far more often" means at least this many times the mean.
const TIMES_MEAN: f64 = 4.0;
/// Fewer visits leave no rut (common practice, no source).
const LEAST_VISITS: f64 = 12.0;
/// Shorter parts are turning places.
const LEAST_LENGTH_M: f64 = 2.0;
/// At most this many are listed, the longest first.
const MOST: usize = 12;

/// Worn lines, longest first.
pub fn worn_lines(cells: &Cells) -> Vec<Worn> {
    let grid = cells.grid;
    let (mut sum, mut lawn) = (0.0, 0.0);
    for (visits, part) in cells.visits_expected.iter().zip(&cells.lawn_fraction) {
        sum += f64::from(*visits) * f64::from(*part);
        lawn += f64::from(*part);
    }
    let mean = if lawn > 0.0 { sum / lawn } else { 0.0 };
    let limit = (TIMES_MEAN * mean).max(LEAST_VISITS);
    if !(mean > 0.0) {
        return Vec::new();
    }
    let is_worn =
        |cell: usize| cells.lawn_fraction[cell] > 0.0 && f64::from(cells.visits_expected[cell]) >= limit;
    let mut seen = vec![false; grid.cells()];
    let mut found = Vec::new();
    for first in 0..grid.cells() {
        if seen[first] || !is_worn(first) {
            continue;
        }
        let (one, _, all) = farthest(cells, first, &is_worn);
        all.iter().for_each(|cell| seen[*cell] = true);
        let (other, before, _) = farthest(cells, one, &is_worn);
        let mut way = vec![other];
        let mut at = other;
        while let Some(earlier) = before[at] {
            way.push(earlier);
            at = earlier;
        }
        let line: Vec<Place> = way
            .iter()
            .map(|cell| grid.centre(cell % grid.columns, cell / grid.columns))
            .collect();
        let line = line_simplified(&line, 0.75 * grid.cell_m);
        let length_m: f64 = line.windows(2).map(|pair| pair[0].distance_m(pair[1])).sum();
        if length_m < LEAST_LENGTH_M {
            continue;
        }
        let visits = |cell: &usize| f64::from(cells.visits_expected[*cell]);
        found.push(Worn {
            line,
            length_m,
            times_mean: all.iter().map(visits).sum::<f64>() / all.len() as f64 / mean,
            most_visits: all.iter().map(visits).fold(0.0, f64::max),
        });
    }
    found.sort_by(|a, b| b.length_m.total_cmp(&a.length_m));
    found.truncate(MOST);
    found
}

/// The cell farthest from `from` in its part, the cell from which each one was reached, and the part.
fn farthest(
    cells: &Cells,
    from: usize,
    is_in: &impl Fn(usize) -> bool,
) -> (usize, Vec<Option<usize>>, Vec<usize>) {
    let (columns, rows) = (cells.grid.columns, cells.grid.rows);
    let mut before: Vec<Option<usize>> = vec![None; cells.grid.cells()];
    let mut seen = vec![false; before.len()];
    let mut queue = VecDeque::from([from]);
    let mut all = Vec::new();
    seen[from] = true;
    let mut last = from;
    while let Some(cell) = queue.pop_front() {
        last = cell;
        all.push(cell);
        let (column, row) = (cell % columns, cell / columns);
        for y in row.saturating_sub(1)..=(row + 1).min(rows - 1) {
            for x in column.saturating_sub(1)..=(column + 1).min(columns - 1) {
                let next = y * columns + x;
                if !seen[next] && is_in(next) {
                    seen[next] = true;
                    before[next] = Some(cell);
                    queue.push_back(next);
                }
            }
        }
    }
    (last, before, all)
}

#[cfg(test)]
mod tests {
    use super::*;
    use approx::assert_abs_diff_eq;
    use tussock_types::Grid;

    #[test]
    fn a_row_of_many_visits_is_one_line_and_a_spot_is_none() {
        let grid = Grid {
            east_min_m: 0.0,
            north_min_m: 0.0,
            cell_m: 0.1,
            columns: 100,
            rows: 60,
        };
        let mut visits = vec![3.0_f32; grid.cells()];
        for column in 10..80 {
            visits[20 * 100 + column] = 60.0;
        }
        visits[50 * 100 + 50] = 90.0;
        let cells = Cells {
            grid,
            lawn_fraction: vec![1.0; grid.cells()],
            visited_probability: vec![1.0; grid.cells()],
            visits_expected: visits,
            first_visit_s: vec![0.0; grid.cells()],
            last_visit_s: vec![0.0; grid.cells()],
        };
        let found = worn_lines(&cells);
        assert_eq!((found.len(), found[0].line.len()), (1, 2));
        assert_abs_diff_eq!(found[0].length_m, 6.9, epsilon = 1e-9);
        assert_abs_diff_eq!(
            found[0].times_mean,
            60.0 / (3.0 + 57.0 * 70.0 / 6000.0 + 87.0 / 6000.0),
            epsilon = 1e-3
        );
        assert_eq!(found[0].most_visits, 60.0);
    }
}
