//! What was really visited, and what was not?
//!
//! The exact path swept by the cutting disc, cell by cell. A pocket is unvisited lawn opened by a disc of the least width
//! (Serra 1982): what remains wherever such a disc fits. Pieces connect over edges and corners of cells.
//!
//! Exact: which cell centres were under the disc and how often. Approximate: areas and widths, by the cell. Nothing here is
//! shared with the code that it judges.
//!
//! Cost: path length over cell, times the width in cells; a night at 2 cm takes a few tenths of a second.

use crate::distance::{Beyond, squared_distances};
use crate::run::{Doing, TrueRun};
use crate::swath;
use tussock_plane::Vector;
use tussock_plane::{BitGrid, Site, rasterise};
use tussock_types::{Grid, Place};

/// How truth is counted.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Counting {
    /// Width of the disc.
    pub cut_width_m: f64,
    /// Side of a cell.
    pub cell_m: f64,
    /// Pockets are at least this wide.
    pub min_width_m: f64,
    /// And at least this large.
    pub min_area_m2: f64,
    /// Coming back after this long is a new visit; an outing in between makes one too.
    pub new_pass_after_s: f64,
    /// Whether ground under guide runs and followed edges counts.
    pub cuts_in_transit: bool,
}

impl Counting {
    /// Pockets from 0.8 m and 0.5 m2, visits 30 s apart, blades always turning.
    pub const fn new(cut_width_m: f64, cell_m: f64) -> Self {
        Self {
            cut_width_m,
            cell_m,
            min_width_m: 0.8,
            min_area_m2: 0.5,
            new_pass_after_s: 30.0,
            cuts_in_transit: true,
        }
    }
}

/// Unvisited ground wide enough to see.
#[derive(Clone, Debug, PartialEq)]
pub struct TruePocket {
    /// Area after opening.
    pub area_m2: f64,
    /// Diameter of the largest circle that fits inside.
    pub widest_m: f64,
    /// Middle of that circle.
    pub middle: Place,
    /// Its cells.
    pub cells: Vec<(usize, usize)>,
}

/// The truth about a run.
#[derive(Clone, Debug)]
pub struct Truth {
    /// The lawn without zones and obstacles.
    pub lawn: BitGrid,
    /// Visited lawn.
    pub visited: BitGrid,
    /// Visits of each cell, on the lawn and beside it, row by row.
    pub visits: Vec<u16>,
    /// Visited lawn over lawn.
    pub visited_fraction: f64,
    /// Pockets, largest first.
    pub pockets: Vec<TruePocket>,
}

impl Truth {
    /// How many lawn cells were visited 0, 1, 2, ... times.
    pub fn visits_histogram(&self) -> Vec<u64> {
        let mut histogram = Vec::new();
        for (column, row) in self.lawn.cells_on() {
            let visits = usize::from(self.visits[row * self.lawn.grid.columns + column]);
            if histogram.len() <= visits {
                histogram.resize(visits + 1, 0);
            }
            histogram[visits] += 1;
        }
        histogram
    }
}

/// Counts a run on a site. Cells are aligned to the lawn's south-western corner.
///
/// # Panics
/// Never; a cell or width that is not a positive number gives a truth without cells.
pub fn truth(run: &TrueRun, site: &Site, counting: &Counting) -> Truth {
    let grid = grid_of(site, counting);
    let lawn = rasterise(&site.lawn, &grid);
    let visits = count_visits(run, &grid, counting);
    let mut visited = BitGrid::new(grid);
    for (column, row) in lawn.cells_on() {
        if visits[row * grid.columns + column] > 0 {
            visited.set(column, row);
        }
    }
    let lawn_cells = lawn.count();
    let visited_fraction = if lawn_cells > 0 {
        visited.count() as f64 / lawn_cells as f64
    } else {
        0.0
    };
    Truth {
        pockets: pockets(&lawn, &visited, counting),
        visited_fraction,
        lawn,
        visited,
        visits,
    }
}

fn grid_of(site: &Site, counting: &Counting) -> Grid {
    let is_sound = counting.cell_m > 0.0 && counting.cell_m.is_finite();
    let (cell_m, size) = match site.lawn.bounds() {
        Some((low, high)) if is_sound => {
            let count = |length_m: f64| (length_m / counting.cell_m).ceil() as usize;
            (
                counting.cell_m,
                (
                    low,
                    count(high.east_m - low.east_m),
                    count(high.north_m - low.north_m),
                ),
            )
        }
        _ => (1.0, (Place::default(), 0, 0)),
    };
    let (low, columns, rows) = size;
    Grid {
        east_min_m: low.east_m,
        north_min_m: low.north_m,
        cell_m,
        columns,
        rows,
    }
}

fn count_visits(run: &TrueRun, grid: &Grid, counting: &Counting) -> Vec<u16> {
    let mut visits = vec![0_u16; grid.cells()];
    let mut last_s = vec![f64::NEG_INFINITY; grid.cells()];
    let mut last_outing = vec![u32::MAX; grid.cells()];
    let mut outing = 0_u32;
    let radius_m = counting.cut_width_m / 2.0;
    if !(radius_m > 0.0 && radius_m.is_finite()) {
        return visits;
    }
    for (from, to) in run.pieces() {
        if from.doing == Doing::AtStation {
            outing += 1;
        }
        if from.doing == Doing::Transit && !counting.cuts_in_transit {
            continue;
        }
        let (start, step) = (
            Vector::from(from.place),
            Vector::from(to.place) - Vector::from(from.place),
        );
        let lasts_s = to.time_s - from.time_s;
        let length_m2 = step.dot(step);
        let half_s = if length_m2 > 0.0 {
            radius_m / length_m2.sqrt() * lasts_s
        } else {
            0.0
        };
        swath::spans(
            grid,
            from.place.into(),
            to.place.into(),
            radius_m,
            |row, first, end| {
                for column in first..end {
                    let cell = row * grid.columns + column;
                    // Under the disc around the moment when its centre is nearest.
                    let part = if length_m2 > 0.0 {
                        ((Vector::from(grid.centre(column, row)) - start).dot(step) / length_m2)
                            .clamp(0.0, 1.0)
                    } else {
                        0.0
                    };
                    let nearest_s = from.time_s + part * lasts_s;
                    let comes_s = (nearest_s - half_s).max(from.time_s);
                    let goes_s = if length_m2 > 0.0 {
                        (nearest_s + half_s).min(to.time_s)
                    } else {
                        to.time_s
                    };
                    if comes_s - last_s[cell] > counting.new_pass_after_s || last_outing[cell] != outing {
                        visits[cell] = visits[cell].saturating_add(1);
                    }
                    last_s[cell] = goes_s;
                    last_outing[cell] = outing;
                }
            },
        );
    }
    visits
}

fn pockets(lawn: &BitGrid, visited: &BitGrid, counting: &Counting) -> Vec<TruePocket> {
    let grid = lawn.grid;
    let (columns, rows) = (grid.columns, grid.rows);
    let mut open = vec![false; grid.cells()];
    for (column, row) in lawn.cells_on() {
        open[row * columns + column] = !visited.get(column, row);
    }
    let squared = squared_distances(&open, columns, rows, Beyond::Off);
    // From a centre to the nearest centre that is off; the edge lies half a cell nearer.
    let radius_cells = counting.min_width_m / 2.0 / grid.cell_m + 0.5;
    let core: Vec<bool> = squared
        .iter()
        .map(|&squared| squared >= radius_cells * radius_cells)
        .collect();
    if !core.contains(&true) {
        return Vec::new();
    }
    // Grown back: open cells within the radius of the core.
    let outside_core: Vec<bool> = core.iter().map(|&is_core| !is_core).collect();
    let to_core = squared_distances(&outside_core, columns, rows, Beyond::On);
    let reach = (counting.min_width_m / 2.0 / grid.cell_m).powi(2);
    let pocket: Vec<bool> = (0..grid.cells())
        .map(|cell| open[cell] && (core[cell] || to_core[cell] <= reach))
        .collect();
    let mut pockets = Vec::new();
    let mut seen = vec![false; grid.cells()];
    for first in 0..grid.cells() {
        if !pocket[first] || seen[first] {
            continue;
        }
        let mut cells = Vec::new();
        let mut stack = vec![first];
        seen[first] = true;
        while let Some(cell) = stack.pop() {
            cells.push((cell % columns, cell / columns));
            let (column, row) = (cell % columns, cell / columns);
            for next_row in row.saturating_sub(1)..=(row + 1).min(rows - 1) {
                for next_column in column.saturating_sub(1)..=(column + 1).min(columns - 1) {
                    let next = next_row * columns + next_column;
                    if pocket[next] && !seen[next] {
                        seen[next] = true;
                        stack.push(next);
                    }
                }
            }
        }
        cells.sort_unstable_by_key(|&(column, row)| (row, column));
        let area_m2 = cells.len() as f64 * grid.cell_m2();
        let widest = cells
            .iter()
            .copied()
            .max_by(|a, b| squared[a.1 * columns + a.0].total_cmp(&squared[b.1 * columns + b.0]));
        if let Some((column, row)) = widest
            && area_m2 >= counting.min_area_m2
        {
            pockets.push(TruePocket {
                area_m2,
                widest_m: (2.0 * squared[row * columns + column].sqrt() - 1.0) * grid.cell_m,
                middle: grid.centre(column, row),
                cells,
            });
        }
    }
    pockets.sort_by(|a, b| b.area_m2.total_cmp(&a.area_m2));
    pockets
}
