//! Which cells were visited, how often, and when?

use crate::{revisits::Intervals, swath};
use rayon::prelude::*;
use tussock_plane::BitGrid;
use tussock_types::{Grid, Place};

/// Side of a tile, in cells: a tile of counters fits the innermost cache.
const TILE: usize = 32;

/// Counters of one tile; allocated when the first swath touches it.
struct Tile {
    visits: [u16; TILE * TILE],
    first_s: [f32; TILE * TILE],
    last_s: [f32; TILE * TILE],
}

impl Tile {
    fn boxed() -> Box<Self> {
        Box::new(Self {
            visits: [0; TILE * TILE],
            first_s: [f32::NAN; TILE * TILE],
            last_s: [f32::NEG_INFINITY; TILE * TILE],
        })
    }
}

/// One row of a tile.
pub(crate) struct TileRow<'a> {
    start: usize,
    visits: &'a [u16],
    first_s: &'a [f32],
    last_s: &'a [f32],
}

impl TileRow<'_> {
    /// Visits, first and last time of the cells from one column up to, but not including, another.
    pub(crate) fn cells(&self, from: usize, to: usize) -> impl Iterator<Item = (u16, f32, f32)> {
        let cells = from - self.start..to - self.start;
        let times = self.first_s[cells.clone()]
            .iter()
            .zip(&self.last_s[cells.clone()]);
        self.visits[cells]
            .iter()
            .zip(times)
            .map(|(visits, (first_s, last_s))| (*visits, *first_s, *last_s))
    }
}

/// What one count found.
pub struct Count {
    /// The counting grid.
    pub grid: Grid,
    /// Cells whose centre is lawn.
    pub lawn: BitGrid,
    /// Lawn cells visited at least once.
    pub visited: BitGrid,
    /// Revisit intervals, finished ones and censored ones.
    pub intervals: Intervals,
    /// Lawn area first visited within each of the buckets of driving time, in cells.
    pub new_cells: Vec<u64>,
    /// Length of a bucket.
    pub bucket_s: f64,
    tiles: Vec<Option<Box<Tile>>>,
    tile_columns: usize,
}

/// From this many sweeps on, threads are worth starting.
const SWEEPS_FOR_STRIPS: usize = 200;
/// Buckets of driving time.
const BUCKETS: usize = 400;

/// Side of a counting cell for a cutting width: an irrational part of it, near a ninth.
pub fn cell_for_width_m(cut_width_m: f64) -> f64 {
    cut_width_m / (7.0 + 5.0_f64.sqrt())
}

/// A grid over a box, with cells of the desired side or larger if `most_cells` (at least 16) demands it.
pub fn grid_over(south_west: Place, north_east: Place, cell_m: f64, most_cells: u64) -> Grid {
    let (width_m, height_m) = (
        north_east.east_m - south_west.east_m,
        north_east.north_m - south_west.north_m,
    );
    // (width / cell + 3) (height / cell + 3) <= most, solved for 1 / cell: rounding up and the rim add three cells at most.
    let inner_cells = most_cells.max(16) as f64 - 9.0;
    let rim_m = 3.0 * (width_m + height_m);
    let per_m = 2.0 * inner_cells / (rim_m + (rim_m * rim_m + 4.0 * width_m * height_m * inner_cells).sqrt());
    let cell_m = cell_m.max(1.0 / per_m).max(1e-6);
    Grid {
        east_min_m: south_west.east_m - cell_m,
        north_min_m: south_west.north_m - cell_m,
        cell_m,
        columns: (width_m / cell_m).ceil() as usize + 2,
        rows: (height_m / cell_m).ceil() as usize + 2,
    }
}

/// Counts visits of lawn cells by sweeps in time order.
///
/// `start_s` is subtracted from all times; `end_s` ends the unfinished intervals. Memory: 10 bytes for each cell of a
/// touched tile of 32 x 32, and 2 bits for each cell of the grid.
pub fn count(
    lawn: BitGrid,
    sweeps: &[swath::Sweep],
    cut_width_m: f64,
    new_pass_after_s: f64,
    (start_s, end_s): (f64, f64),
) -> Count {
    let grid = lawn.grid;
    let tile_columns = grid.columns.div_ceil(TILE);
    let tile_rows = grid.rows.div_ceil(TILE);
    let driving_s = sweeps
        .last()
        .map_or(0.0, |sweep| sweep.driving_before_s + sweep.driving_s);
    let mut count = Count {
        grid,
        visited: BitGrid::new(grid),
        lawn,
        intervals: Intervals::default(),
        new_cells: vec![0; BUCKETS],
        bucket_s: (driving_s / BUCKETS as f64).max(1e-9),
        tiles: std::iter::repeat_with(|| None)
            .take(tile_columns * tile_rows)
            .collect(),
        tile_columns,
    };
    let away_s = new_pass_after_s as f32;
    // Strips of tiles are counted in parallel: cells are independent of each other, and sums of whole numbers do not depend
    // on the order.
    let strips = if sweeps.len() < SWEEPS_FOR_STRIPS {
        1
    } else {
        rayon::current_num_threads().clamp(1, tile_rows.max(1))
    };
    let strip_rows = tile_rows.div_ceil(strips).max(1);
    let (lawn, bucket_s, buckets) = (&count.lawn, count.bucket_s, count.new_cells.len());
    let done: Vec<Strip> = count
        .tiles
        .chunks_mut((strip_rows * tile_columns).max(1))
        .enumerate()
        .map(|(number, tiles)| (number * strip_rows * TILE, tiles))
        .collect::<Vec<_>>()
        .into_par_iter()
        .map(|(row_start, tiles)| {
            let row_end = (row_start + strip_rows * TILE).min(grid.rows);
            let mut strip = Strip {
                lawn,
                row_start,
                row_end,
                tiles,
                tile_columns,
                visited: vec![0; lawn.row_words() * (row_end - row_start)],
                intervals: Intervals::default(),
                new_cells: vec![0; buckets],
                bucket_s,
            };
            for sweep in sweeps {
                strip.sweep(sweep, 0.5 * cut_width_m, away_s, start_s);
            }
            strip
        })
        .collect();
    let sums: Vec<_> = done
        .into_iter()
        .map(|strip| (strip.row_start, strip.visited, strip.intervals, strip.new_cells))
        .collect();
    for (row_start, visited, intervals, new_cells) in sums {
        for (row, words) in visited.chunks_exact(count.lawn.row_words().max(1)).enumerate() {
            count.visited.row_mut(row_start + row).copy_from_slice(words);
        }
        count.intervals.add(&intervals);
        count
            .new_cells
            .iter_mut()
            .zip(new_cells)
            .for_each(|(sum, new)| *sum += new);
    }
    count.close((end_s - start_s) as f32);
    count
}

/// Rows of tiles that are counted separately.
struct Strip<'a> {
    lawn: &'a BitGrid,
    row_start: usize,
    row_end: usize,
    tiles: &'a mut [Option<Box<Tile>>],
    tile_columns: usize,
    /// Words of the rows.
    visited: Vec<u64>,
    intervals: Intervals,
    new_cells: Vec<u64>,
    bucket_s: f64,
}

impl Strip<'_> {
    fn sweep(&mut self, sweep: &swath::Sweep, radius_m: f64, away_s: f32, start_s: f64) {
        let grid = self.lawn.grid;
        let length_m = sweep.from.distance_m(sweep.to);
        let lapse_s = sweep.end_s - sweep.start_s;
        let begin_s = sweep.start_s - start_s;
        // Time of closest approach is linear along a row.
        let (along_east, along_north) = if length_m > 0.0 {
            (
                (sweep.to.east_m - sweep.from.east_m) / (length_m * length_m),
                (sweep.to.north_m - sweep.from.north_m) / (length_m * length_m),
            )
        } else {
            (0.0, 0.0)
        };
        let moves = length_m > 0.0;
        let Self {
            lawn,
            row_start,
            row_end,
            visited,
            intervals,
            new_cells,
            bucket_s,
            tiles,
            tile_columns,
        } = self;
        let row_words = lawn.row_words();
        swath::for_each_span_in(
            &grid,
            *row_start..*row_end,
            sweep.from,
            sweep.to,
            radius_m,
            |row, start, end| {
                let first = grid.centre(start, row);
                let part_at_start = (first.east_m - sweep.from.east_m) * along_east
                    + (first.north_m - sweep.from.north_m) * along_north;
                let part_per_cell = grid.cell_m * along_east;
                let lawn_row = lawn.row(row);
                let mut column = start;
                while column < end {
                    let tile_end = ((column / TILE + 1) * TILE).min(end);
                    // Tile columns are half a word, so one look shows whether any of it is lawn.
                    let word = lawn_row[column / 64];
                    let mask = span_mask(column % 64, tile_end - column);
                    if word & mask == 0 {
                        column = tile_end;
                        continue;
                    }
                    let tile = tiles[((row - *row_start) / TILE) * *tile_columns + column / TILE]
                        .get_or_insert_with(Tile::boxed);
                    let base = (row % TILE) * TILE;
                    for at in column..tile_end {
                        if word >> (at % 64) & 1 == 0 {
                            continue;
                        }
                        let cell = base + at % TILE;
                        let part = (part_at_start + part_per_cell * (at - start) as f64).clamp(0.0, 1.0);
                        let arrive_s = (begin_s + part * lapse_s) as f32;
                        let leave_s = if moves {
                            arrive_s
                        } else {
                            (begin_s + lapse_s) as f32
                        };
                        let arrive_s = if moves { arrive_s } else { begin_s as f32 };
                        let last_s = tile.last_s[cell];
                        if arrive_s - last_s > away_s {
                            if last_s == f32::NEG_INFINITY {
                                tile.first_s[cell] = arrive_s;
                                visited[(row - *row_start) * row_words + at / 64] |= 1 << (at % 64);
                                let driven_s = sweep.driving_before_s + part * sweep.driving_s;
                                let bucket = ((driven_s / *bucket_s) as usize).min(new_cells.len() - 1);
                                new_cells[bucket] += 1;
                            } else {
                                intervals.finished(arrive_s - last_s);
                            }
                            tile.visits[cell] = tile.visits[cell].saturating_add(1);
                        }
                        tile.last_s[cell] = last_s.max(leave_s);
                    }
                    column = tile_end;
                }
            },
        );
    }
}

impl Count {
    /// Adds the unfinished last interval of each visited cell.
    fn close(&mut self, end_s: f32) {
        for tile in self.tiles.iter().flatten() {
            for (visits, last_s) in tile.visits.iter().zip(&tile.last_s) {
                if *visits > 0 {
                    self.intervals.unfinished((end_s - last_s).max(0.0));
                }
            }
        }
    }

    /// Number of tiles of 32 x 32 cells that were touched: only these take memory.
    pub fn touched_tiles(&self) -> usize {
        self.tiles.iter().flatten().count()
    }

    /// Visits of a cell.
    pub fn visits(&self, column: usize, row: usize) -> u16 {
        self.tile(column, row).map_or(0, |(tile, cell)| tile.visits[cell])
    }

    /// First and last visit of a cell, seconds from the start.
    pub fn first_and_last_s(&self, column: usize, row: usize) -> Option<(f32, f32)> {
        self.tile(column, row)
            .filter(|(tile, cell)| tile.visits[*cell] > 0)
            .map(|(tile, cell)| (tile.first_s[cell], tile.last_s[cell]))
    }

    /// Counters of a row inside the tile of a cell, if it was touched, and the first column beyond that tile.
    pub(crate) fn tile_row(&self, column: usize, row: usize) -> (Option<TileRow<'_>>, usize) {
        let start = column / TILE * TILE;
        let row_in_tile = self.tile(start, row).map(|(tile, cell)| TileRow {
            start,
            visits: &tile.visits[cell..cell + TILE],
            first_s: &tile.first_s[cell..cell + TILE],
            last_s: &tile.last_s[cell..cell + TILE],
        });
        (row_in_tile, start + TILE)
    }

    fn tile(&self, column: usize, row: usize) -> Option<(&Tile, usize)> {
        let tile = self
            .tiles
            .get((row / TILE) * self.tile_columns + column / TILE)?
            .as_deref()?;
        Some((tile, (row % TILE) * TILE + column % TILE))
    }

    /// Lawn cells by number of visits.
    pub fn visit_histogram(&self) -> Vec<u64> {
        let mut histogram = vec![0_u64; 1];
        let mut touched = 0;
        for tile in self.tiles.iter().flatten() {
            for visits in tile.visits.iter().filter(|visits| **visits > 0) {
                let visits = usize::from(*visits);
                if visits >= histogram.len() {
                    histogram.resize(visits + 1, 0);
                }
                histogram[visits] += 1;
                touched += 1;
            }
        }
        histogram[0] = self.lawn.count() - touched;
        histogram
    }

    /// Visited part of the lawn; 0 for no lawn.
    pub fn visited_fraction(&self) -> f64 {
        self.visited.count() as f64 / (self.lawn.count() as f64).max(1.0)
    }

    /// Standard deviation of the visited fraction that comes from counting cell centres instead of area, for edges that run
    /// across the grid in all directions. A single leg along the grid's axes can be off by a row of cells.
    ///
    /// Variance of an area counted on a square lattice: 0.0724 B u^3 for boundary length B and spacing u (Matheron;
    /// Gundersen & Jensen 1987, DOI 10.1111/j.1365-2818.1987.tb02837.x). B from cell edges by Cauchy's pi / 4.
    pub fn cell_error_fraction(&self) -> f64 {
        let mut edges = 0_u64;
        for row in 0..self.grid.rows {
            let here = self.visited.row(row);
            let above = (row + 1 < self.grid.rows).then(|| self.visited.row(row + 1));
            for (index, word) in here.iter().enumerate() {
                let next = here.get(index + 1).map_or(0, |next| next << 63);
                edges += u64::from((word ^ (word >> 1 | next)).count_ones());
                if let Some(above) = above {
                    edges += u64::from((word ^ above[index]).count_ones());
                }
            }
        }
        let boundary = edges as f64 * std::f64::consts::FRAC_PI_4;
        (0.0724 * boundary).sqrt() / (self.lawn.count() as f64).max(1.0)
    }
}

/// Bits from `start` on, `length` of them; a tile never crosses a word.
fn span_mask(start: usize, length: usize) -> u64 {
    let ones = if length >= 64 {
        u64::MAX
    } else {
        (1_u64 << length) - 1
    };
    ones << start
}
