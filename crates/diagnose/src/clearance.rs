//! How much room is there, and what can be reached?
//!
//! Question: how far is each place from the nearest edge of the ground that the machine may drive on, and which lawn does
//! the cutting disc reach if the machine's middle keeps its distance from those edges?
//!
//! Method: the exact Euclidean distance transform of the ground's cells ([`tussock_plane::distance`], after Meijster,
//! Roerdink & Hesselink 2000). Reach is a dilation (Serra 1982): the ground where the middle can be, grown by half the
//! cutting width.
//!
//! Approximate: distances to within half a cell (0.05 m on lawns up to 1,500 m2). Cost: linear in cells, a few milliseconds.

use tussock_plane::distance::{self, Connectivity};
use tussock_plane::{BitGrid, Region, rasterise};
use tussock_types::{Grid, OutOfReach, OutOfReachWhy, Place};

/// Most cells of a clearance map; larger lawns get larger cells.
const MOST_CELLS: f64 = 250_000.0;
/// Side of a cell.
const CELL_M: f64 = 0.1;

/// Distance from each place to the nearest edge.
#[derive(Clone, Debug)]
pub struct Clearance {
    /// Its cells, with at least one cell of foreign ground on every side.
    pub grid: Grid,
    /// Ground on which the machine may drive, before any setback.
    pub ground: BitGrid,
    /// Distance of each cell's middle to the edge, row by row; 0 outside.
    pub clear_m: Vec<f32>,
}

impl Clearance {
    /// Clearance within some ground.
    pub fn of(region: &Region) -> Self {
        let (low, high) = region.bounds().unwrap_or_default();
        let (width_m, height_m) = (high.east_m - low.east_m, high.north_m - low.north_m);
        let cell_m = CELL_M.max((width_m * height_m / MOST_CELLS).sqrt());
        let grid = Grid {
            east_min_m: low.east_m - 2.0 * cell_m,
            north_min_m: low.north_m - 2.0 * cell_m,
            cell_m,
            columns: (width_m / cell_m).ceil() as usize + 4,
            rows: (height_m / cell_m).ceil() as usize + 4,
        };
        let ground = rasterise(region, &grid);
        let squares = distance::squared(grid.columns, grid.rows, |column, row| !ground.get(column, row));
        // The edge lies half a cell before the centre of the nearest foreign cell.
        let clear_m = squares
            .iter()
            .map(|square| (((f64::from(*square).sqrt() - 0.5) * cell_m).max(0.0)) as f32)
            .collect();
        Self {
            grid,
            ground,
            clear_m,
        }
    }

    /// Number of the cell at a place; `None` beyond the map.
    pub fn cell(&self, place: Place) -> Option<usize> {
        self.grid
            .cell_at(place)
            .map(|(column, row)| row * self.grid.columns + column)
    }

    /// Middle of a cell by number.
    pub fn centre(&self, cell: usize) -> Place {
        self.grid
            .centre(cell % self.grid.columns, cell / self.grid.columns)
    }

    /// Clearance at a place; 0 beyond the map.
    pub fn at_m(&self, place: Place) -> f64 {
        self.cell(place).map_or(0.0, |cell| f64::from(self.clear_m[cell]))
    }

    /// The cell with the most clearance among these; the first of equal ones.
    pub fn roomiest(&self, cells: impl Iterator<Item = usize>) -> Option<usize> {
        cells.max_by(|a, b| self.clear_m[*a].total_cmp(&self.clear_m[*b]).then(b.cmp(a)))
    }

    /// The cell of the ground nearest to a place, within a few metres.
    pub fn nearest_cell(&self, place: Place) -> Option<usize> {
        if let Some(cell) = self.cell(place).filter(|cell| self.clear_m[*cell] > 0.0) {
            return Some(cell);
        }
        const WITHIN_M: f64 = 5.0;
        (0..self.clear_m.len())
            .filter(|cell| self.clear_m[*cell] > 0.0)
            .map(|cell| (cell, self.centre(cell).distance_m(place)))
            .filter(|(_, distance_m)| *distance_m <= WITHIN_M)
            .min_by(|a, b| a.1.total_cmp(&b.1))
            .map(|(cell, _)| cell)
    }

    /// Cells that are connected to `from`, over cell sides, by ground with at least this clearance; all false if `from`
    /// itself has less.
    pub fn joined(&self, from: usize, least_m: f64) -> Vec<bool> {
        let mut joined = vec![false; self.clear_m.len()];
        let open = |cell: usize| self.clear_m[cell] > 0.0 && f64::from(self.clear_m[cell]) >= least_m;
        if !open(from) {
            return joined;
        }
        let mut stack = vec![from];
        joined[from] = true;
        while let Some(cell) = stack.pop() {
            for next in self.beside(cell) {
                if !joined[next] && open(next) {
                    joined[next] = true;
                    stack.push(next);
                }
            }
        }
        joined
    }

    /// The four cells that share a side. The map's rim is foreign ground, so they always exist for cells of the ground.
    pub(crate) fn beside(&self, cell: usize) -> [usize; 4] {
        let columns = self.grid.columns;
        let last = self.clear_m.len() - 1;
        [
            cell.saturating_sub(1),
            (cell + 1).min(last),
            cell.saturating_sub(columns),
            (cell + columns).min(last),
        ]
    }
}

/// What the disc reaches.
#[derive(Clone, Debug)]
pub struct Reach {
    /// Cells within half a cutting width of where the machine's middle can be, starting from the station.
    pub reached: Vec<bool>,
    /// Where the middle could be, whether or not it can get there.
    pub anywhere: Vec<bool>,
}

impl Reach {
    /// Reach of a machine whose middle stays `setback_m` inside the edges (negative: it goes past them), from the parts that
    /// contain `from`. `half_width_m` is half the cutting width plus the offset of the disc's middle from the machine's.
    pub fn of(clearance: &Clearance, from: &[usize], setback_m: f64, half_width_m: f64) -> Self {
        // Allow half a cell on the way: a lane just as wide as the machine needs must not close because of its cells.
        let least_m = (setback_m - 0.5 * clearance.grid.cell_m).max(0.0);
        let has_room = |cell: usize| {
            clearance.clear_m[cell] > 0.0 && f64::from(clearance.clear_m[cell]) >= setback_m - 1e-6
        };
        let mut middle = vec![false; clearance.clear_m.len()];
        for start in from {
            // From the nearest place with enough room.
            let Some(start) = with_room(clearance, *start, least_m) else {
                continue;
            };
            if !middle[start] {
                for (mine, one) in middle.iter_mut().zip(clearance.joined(start, least_m)) {
                    *mine |= one;
                }
            }
        }
        for (cell, mine) in middle.iter_mut().enumerate() {
            *mine &= has_room(cell);
        }
        let anywhere: Vec<bool> = (0..middle.len()).map(has_room).collect();
        // A machine that goes past the edge also cuts past it: its disc reaches that much farther.
        let half_width_m = half_width_m + (-setback_m).max(0.0);
        Self {
            reached: grown(clearance, &middle, half_width_m),
            anywhere: grown(clearance, &anywhere, half_width_m),
        }
    }
}

impl Reach {
    /// Lawn that the disc does not reach, part by part, largest first.
    ///
    /// A part is cut off if the machine's middle could be in most of it once it got there; otherwise the edge keeps the disc
    /// away. The place of a part is its roomiest cell, which a person can walk to.
    pub fn left_out(&self, clearance: &Clearance, is_lawn: impl Fn(Place) -> bool) -> Vec<OutOfReach> {
        let grid = clearance.grid;
        let mut mask = BitGrid::new(grid);
        for (cell, reached) in self.reached.iter().enumerate() {
            if !reached && is_lawn(clearance.centre(cell)) {
                mask.set(cell % grid.columns, cell / grid.columns);
            }
        }
        let mut parts: Vec<OutOfReach> = distance::parts(&mask, Connectivity::Eight)
            .into_iter()
            .map(|part| {
                let cells: Vec<usize> = part
                    .runs
                    .iter()
                    .flat_map(|run| (run.start..run.end).map(|column| run.row * grid.columns + column))
                    .collect();
                let open = cells.iter().filter(|cell| self.anywhere[**cell]).count();
                let place = clearance
                    .roomiest(cells.iter().copied())
                    .map(|cell| clearance.centre(cell))
                    .unwrap_or_default();
                OutOfReach {
                    area_m2: cells.len() as f64 * grid.cell_m2(),
                    east_m: place.east_m,
                    north_m: place.north_m,
                    why: if 2 * open >= cells.len() {
                        OutOfReachWhy::CutOff
                    } else {
                        OutOfReachWhy::Edge
                    },
                }
            })
            .collect();
        parts.sort_by(|a, b| b.area_m2.total_cmp(&a.area_m2));
        parts
    }
}

/// The nearest cell with enough room, searching outwards ring by ring.
fn with_room(clearance: &Clearance, from: usize, least_m: f64) -> Option<usize> {
    const WITHIN_CELLS: usize = 50;
    let columns = clearance.grid.columns;
    let (x, y) = (from % columns, from / columns);
    let open = |cell: usize| clearance.clear_m[cell] > 0.0 && f64::from(clearance.clear_m[cell]) >= least_m;
    let near = |at: usize, most: usize| at.saturating_sub(WITHIN_CELLS)..(at + WITHIN_CELLS + 1).min(most);
    near(y, clearance.grid.rows)
        .flat_map(|row| near(x, columns).map(move |column| (column, row)))
        .filter(|(column, row)| open(row * columns + column))
        .min_by_key(|(column, row)| column.abs_diff(x).pow(2) + row.abs_diff(y).pow(2))
        .map(|(column, row)| row * columns + column)
}

/// Ground within a distance of these cells.
fn grown(clearance: &Clearance, cells: &[bool], by_m: f64) -> Vec<bool> {
    let grid = clearance.grid;
    if !cells.iter().any(|one| *one) {
        return vec![false; cells.len()];
    }
    let limit = (by_m / grid.cell_m + 0.5).powi(2);
    distance::squared(grid.columns, grid.rows, |column, row| {
        cells[row * grid.columns + column]
    })
    .iter()
    .zip(&clearance.clear_m)
    .map(|(square, clear_m)| *clear_m > 0.0 && f64::from(*square) <= limit)
    .collect()
}
