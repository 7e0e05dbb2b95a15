//! Which cells were visited, by which rule?

use super::CustomGrid;
use crate::swath::{Capsule, Sweep};
use std::collections::BTreeMap;
use tussock_types::Place;
use tussock_types::math;

/// What makes a cell visited.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum VisitRule {
    /// A fix lies in it. The usual rule of contests: it ignores ground between two fixes.
    FixInside,
    /// The path, a line without width, crosses it.
    PathCrosses,
    /// Its centre was under the cutting disc.
    SwathCoversCentre {
        /// Diameter of the disc.
        cut_width_m: f64,
    },
    /// The part of it that was under the cutting disc.
    AreaWeighted {
        /// Diameter of the disc.
        cut_width_m: f64,
    },
}

/// The result of the count, cell by cell: row 0 first, each row from column 0 on.
#[derive(Clone, Debug, PartialEq)]
pub struct GridCount {
    /// The grid.
    pub grid: CustomGrid,
    /// The rule.
    pub rule: VisitRule,
    /// Visited part of each cell: 0 or 1, or anything between by area.
    pub visited_fraction: Vec<f64>,
    /// Visits of each cell. By area: swept area over the cell's area, counting each leg separately.
    pub visits: Vec<f64>,
    /// Fixes in each cell; for the other rules, straight pieces of path that met it.
    pub hits: Vec<u32>,
}

impl GridCount {
    /// Number of visited cells; by area, cells of which at least half was visited.
    pub fn cells_visited(&self) -> usize {
        self.visited_fraction.iter().filter(|part| **part >= 0.5).count()
    }

    /// Visited area: whole cells or, by area, the sum of parts.
    pub fn visited_m2(&self) -> f64 {
        self.visited_fraction.iter().sum::<f64>() * self.grid.cell_m2()
    }
}

/// Least number of lines across a cutting width along which areas are measured.
pub const LINES_PER_WIDTH: f64 = 64.0;

/// Counts visits of a grid's cells.
///
/// `fixes` are times and places, with the number of the unbroken run that each belongs to, in time order;
/// [`VisitRule::FixInside`] uses nothing else. The other rules use only `sweeps`, in time order. A cell that is left and
/// entered again has a new visit if the machine was away for more than `new_pass_after_s`; by area there are no visits, only
/// swept area.
pub fn count(
    grid: &CustomGrid,
    rule: VisitRule,
    fixes: impl IntoIterator<Item = (f64, Place, u32)>,
    sweeps: &[Sweep],
    new_pass_after_s: f64,
) -> GridCount {
    let mut passes = Passes::new(grid, new_pass_after_s);
    match rule {
        VisitRule::FixInside => fixes_inside(grid, fixes, &mut passes),
        VisitRule::PathCrosses => {
            for sweep in sweeps {
                path_crosses(grid, sweep, &mut passes);
            }
        }
        VisitRule::SwathCoversCentre { cut_width_m } => {
            let level = Level::of(grid);
            for sweep in sweeps {
                level.centres_under(sweep, 0.5 * cut_width_m, &mut passes);
            }
        }
        VisitRule::AreaWeighted { cut_width_m } => {
            return Level::of(grid).areas_under(rule, sweeps, 0.5 * cut_width_m);
        }
    }
    GridCount {
        grid: *grid,
        rule,
        visited_fraction: passes
            .visits
            .iter()
            .map(|visits| if *visits > 0 { 1.0 } else { 0.0 })
            .collect(),
        visits: passes.visits.iter().map(|visits| f64::from(*visits)).collect(),
        hits: passes.hits,
    }
}

struct Passes {
    columns: usize,
    away_s: f64,
    last_s: Vec<f64>,
    visits: Vec<u32>,
    hits: Vec<u32>,
}

impl Passes {
    fn new(grid: &CustomGrid, away_s: f64) -> Self {
        let cells = grid.cells();
        Self {
            columns: grid.columns(),
            away_s,
            last_s: vec![f64::NEG_INFINITY; cells],
            visits: vec![0; cells],
            hits: vec![0; cells],
        }
    }

    /// Adds a stay in a cell.
    fn stay(&mut self, (column, row): (usize, usize), arrive_s: f64, leave_s: f64) {
        let cell = row * self.columns + column;
        self.hits[cell] = self.hits[cell].saturating_add(1);
        if arrive_s - self.last_s[cell] > self.away_s {
            self.visits[cell] = self.visits[cell].saturating_add(1);
        }
        self.last_s[cell] = self.last_s[cell].max(leave_s);
    }
}

fn fixes_inside(grid: &CustomGrid, fixes: impl IntoIterator<Item = (f64, Place, u32)>, passes: &mut Passes) {
    // Where each run was last, so that machines whose fixes alternate are kept separate.
    let mut before: BTreeMap<u32, ((usize, usize), f64)> = BTreeMap::new();
    for (time_s, place, run) in fixes {
        let Some(cell) = grid.cell_at(place) else {
            before.remove(&run);
            continue;
        };
        // Between two fixes in one cell it never left, however far apart in time they are.
        let since_s = match before.insert(run, (cell, time_s)) {
            Some((there, at_s)) if there == cell => at_s,
            _ => time_s,
        };
        passes.stay(cell, since_s, time_s);
    }
}

/// Cells that a straight piece meets, by strips between lines of the grid (Amanatides & Woo 1987 walk the same cells).
fn path_crosses(grid: &CustomGrid, sweep: &Sweep, passes: &mut Passes) {
    let (columns, rows) = (grid.columns() as f64, grid.rows() as f64);
    let (from, to) = (grid.coordinates(sweep.from), grid.coordinates(sweep.to));
    let lapse_s = sweep.end_s - sweep.start_s;
    // Go upwards, and remember whether times run the other way.
    let is_turned = to.1 < from.1;
    let (low, high) = if is_turned { (to, from) } else { (from, to) };
    let (dx, dy) = (high.0 - low.0, high.1 - low.1);
    if !(dx.is_finite() && dy.is_finite()) || high.1 < 0.0 || low.1 >= rows {
        return;
    }
    let time_s = |x: f64, y: f64| {
        let part = if dx.abs() > dy {
            (x - low.0) / dx
        } else if dy > 0.0 {
            (y - low.1) / dy
        } else {
            0.0
        };
        let part = part.clamp(0.0, 1.0);
        sweep.start_s + lapse_s * if is_turned { 1.0 - part } else { part }
    };
    // One division per crossing: exact if the true value is a whole number and the products are.
    let x_at = |y: f64| (low.0 * dy + (y - low.1) * dx) / dy;
    for row in low.1.floor().max(0.0) as usize..=high.1.floor().min(rows - 1.0) as usize {
        let floor = row as f64;
        let (bottom, is_entered) = (low.1.max(floor), low.1 < floor);
        let is_left = high.1 >= floor + 1.0;
        let top = high.1.min(floor + 1.0);
        let x_in = if is_entered { x_at(bottom) } else { low.0 };
        let x_out = if is_left { x_at(top) } else { high.0 };
        // The end of a strip belongs to the next one: a cell that is only touched there is not met.
        let first = x_in.min(x_out).floor();
        let last = if is_left && x_out > x_in {
            x_out.ceil() - 1.0
        } else {
            x_in.max(x_out).floor()
        };
        let (first, last) = (first.max(0.0), last.max(x_in.floor()).min(columns - 1.0));
        if !(first <= last) {
            continue;
        }
        let (left, right) = (x_in.min(x_out), x_in.max(x_out));
        for column in first as usize..=last as usize {
            let (x0, x1) = ((column as f64).max(left), (column as f64 + 1.0).min(right));
            let y_of = |x: f64| {
                if dx.abs() > 0.0 {
                    (low.1 + (x - low.0) * dy / dx).clamp(bottom, top)
                } else {
                    bottom
                }
            };
            let (one, other) = if dx.abs() > 0.0 {
                (time_s(x0, y_of(x0)), time_s(x1, y_of(x1)))
            } else {
                (time_s(x0, bottom), time_s(x1, top))
            };
            // A stand has all its time in its one cell.
            let (arrive_s, leave_s) = if dx == 0.0 && dy == 0.0 {
                (sweep.start_s, sweep.end_s)
            } else {
                (one.min(other), one.max(other))
            };
            passes.stay((column, row), arrive_s, leave_s);
        }
    }
}

/// The grid rotated so that its rows are level, in metres.
struct Level {
    grid: CustomGrid,
    /// Unit vector along the rows.
    along: (f64, f64),
    /// The first axis, whole.
    row_length_m: f64,
    /// The second axis, whole: along and across the rows.
    axis_m: (f64, f64),
}

impl Level {
    fn of(grid: &CustomGrid) -> Self {
        let (a, b) = grid.axes_m();
        let row_length_m = math::hypot(a.0, a.1);
        let along = (a.0 / row_length_m, a.1 / row_length_m);
        Self {
            grid: *grid,
            along,
            row_length_m,
            axis_m: (b.0 * along.0 + b.1 * along.1, b.1 * along.0 - b.0 * along.1),
        }
    }

    fn laid(&self, place: Place) -> (f64, f64) {
        let origin = self.grid.origin();
        let (x, y) = (place.east_m - origin.east_m, place.north_m - origin.north_m);
        (
            x * self.along.0 + y * self.along.1,
            y * self.along.0 - x * self.along.1,
        )
    }

    /// Rows, as parts of the second axis, between two heights.
    fn parts_between(&self, low_m: f64, high_m: f64) -> (f64, f64) {
        let (one, other) = (low_m / self.axis_m.1, high_m / self.axis_m.1);
        (one.min(other), one.max(other))
    }

    fn centres_under(&self, sweep: &Sweep, radius_m: f64, passes: &mut Passes) {
        let (from, to) = (self.laid(sweep.from), self.laid(sweep.to));
        let capsule = Capsule::new(from, to, radius_m);
        let (columns, rows) = (self.grid.columns() as f64, self.grid.rows() as f64);
        let (low, high) = self.parts_between(from.1.min(to.1) - radius_m, from.1.max(to.1) + radius_m);
        let first_row = (low * rows - 0.5).ceil().max(0.0);
        let last_row = (high * rows - 0.5).floor().min(rows - 1.0);
        if !(first_row <= last_row) {
            return;
        }
        let cell_m = self.row_length_m / columns;
        let square_m2 = (to.0 - from.0).powi(2) + (to.1 - from.1).powi(2);
        let lapse_s = sweep.end_s - sweep.start_s;
        for row in first_row as usize..=last_row as usize {
            let part = (row as f64 + 0.5) / rows;
            let (start_m, y_m) = (part * self.axis_m.0, part * self.axis_m.1);
            let (left_m, right_m) = capsule.span_at(y_m);
            let first = ((left_m - start_m) / cell_m - 0.5).ceil().max(0.0);
            let last = ((right_m - start_m) / cell_m - 0.5).floor().min(columns - 1.0);
            if !(first <= last) {
                continue;
            }
            for column in first as usize..=last as usize {
                let (arrive_s, leave_s) = if square_m2 > 0.0 {
                    let x_m = start_m + (column as f64 + 0.5) * cell_m;
                    let along =
                        ((x_m - from.0) * (to.0 - from.0) + (y_m - from.1) * (to.1 - from.1)) / square_m2;
                    let nearest_s = sweep.start_s + along.clamp(0.0, 1.0) * lapse_s;
                    (nearest_s, nearest_s)
                } else {
                    (sweep.start_s, sweep.end_s)
                };
                passes.stay((column, row), arrive_s, leave_s);
            }
        }
    }

    fn areas_under(&self, rule: VisitRule, sweeps: &[Sweep], radius_m: f64) -> GridCount {
        let (columns, rows) = (self.grid.columns(), self.grid.rows());
        let cells = self.grid.cells();
        let mut count = GridCount {
            grid: self.grid,
            rule,
            visited_fraction: vec![0.0; cells],
            visits: vec![0.0; cells],
            hits: vec![0; cells],
        };
        let capsules: Vec<(Capsule, f64, f64)> = sweeps
            .iter()
            .map(|sweep| {
                let (from, to) = (self.laid(sweep.from), self.laid(sweep.to));
                let (low, high) =
                    self.parts_between(from.1.min(to.1) - radius_m, from.1.max(to.1) + radius_m);
                (Capsule::new(from, to, radius_m), low, high)
            })
            .collect();
        let row_height_m = self.axis_m.1.abs() / rows as f64;
        let lines = (row_height_m * LINES_PER_WIDTH / (2.0 * radius_m))
            .ceil()
            .clamp(16.0, 4096.0) as usize;
        let weight = 1.0 / lines as f64;
        let cell_m = self.row_length_m / columns as f64;
        let mut met = vec![usize::MAX; columns];
        let mut spans: Vec<(f64, f64)> = Vec::new();
        for row in 0..rows {
            let (bottom, top) = (row as f64 / rows as f64, (row as f64 + 1.0) / rows as f64);
            let near: Vec<usize> = (0..capsules.len())
                .filter(|index| capsules[*index].1 < top && capsules[*index].2 > bottom)
                .collect();
            if near.is_empty() {
                continue;
            }
            let base = row * columns;
            // Straight pieces that met each cell: line by line of one piece, counting each cell once.
            met.fill(usize::MAX);
            for index in &near {
                for line in 0..lines {
                    if let Some((left_m, right_m)) = self.clipped(&capsules[*index].0, row, line, lines) {
                        let last = ((right_m / cell_m).ceil() as usize).clamp(1, columns);
                        let first = ((left_m / cell_m) as usize).min(last);
                        let hits = &mut count.hits[base + first..base + last];
                        for (met, hits) in met[first..last].iter_mut().zip(hits) {
                            if *met != *index {
                                *met = *index;
                                *hits += 1;
                            }
                        }
                    }
                }
            }
            for line in 0..lines {
                spans.clear();
                spans.extend(
                    near.iter()
                        .filter_map(|index| self.clipped(&capsules[*index].0, row, line, lines)),
                );
                for span in &spans {
                    spread(&mut count.visits[base..base + columns], *span, cell_m, weight);
                }
                spans.sort_by(|a, b| a.0.total_cmp(&b.0));
                let swept = &mut count.visited_fraction[base..base + columns];
                let mut open: Option<(f64, f64)> = None;
                // The last one ends whatever is open.
                let nowhere = (f64::INFINITY, f64::INFINITY);
                for (left_m, right_m) in spans.iter().copied().chain([nowhere]) {
                    if let Some((_, end_m)) = open.as_mut().filter(|(_, end_m)| left_m <= *end_m) {
                        *end_m = end_m.max(right_m);
                    } else if let Some(done) = open.replace((left_m, right_m)) {
                        spread(swept, done, cell_m, weight);
                    }
                }
            }
        }
        // Sums of the parts of one cell can exceed the whole by rounding.
        for part in &mut count.visited_fraction {
            *part = part.min(1.0);
        }
        count
    }

    /// Where a line through a row of cells lies under a capsule, in metres from the row's start.
    fn clipped(&self, capsule: &Capsule, row: usize, line: usize, lines: usize) -> Option<(f64, f64)> {
        let part = (row as f64 + (line as f64 + 0.5) / lines as f64) / self.grid.rows() as f64;
        let start_m = part * self.axis_m.0;
        let (left_m, right_m) = capsule.span_at(part * self.axis_m.1);
        let (left_m, right_m) = (
            (left_m - start_m).max(0.0),
            (right_m - start_m).min(self.row_length_m),
        );
        (left_m < right_m).then_some((left_m, right_m))
    }
}

/// Adds a stretch to the cells of a row, as parts of a cell times a weight.
fn spread(row: &mut [f64], (left_m, right_m): (f64, f64), cell_m: f64, weight: f64) {
    let first = ((left_m / cell_m) as usize).min(row.len() - 1);
    let last = ((right_m / cell_m) as usize).min(row.len() - 1);
    if first == last {
        row[first] += weight * (right_m - left_m) / cell_m;
        return;
    }
    row[first] += weight * ((first as f64 + 1.0) - left_m / cell_m);
    for part in &mut row[first + 1..last] {
        *part += weight;
    }
    row[last] += weight * (right_m / cell_m - last as f64);
}
