//! Combines counting cells into squares that can be drawn and passed on.

use crate::visits::Count;
use tussock_types::{Cells, Grid};

/// Target side of a square: finer than a swath, coarse enough for a page.
const AIM_M: f64 = 0.1;
/// Most squares of one result.
const MOST_SQUARES: usize = 300_000;

/// Combines `k x k` cells of the count into squares; sums over squares give the areas of the count.
pub fn squares(count: &Count) -> Cells {
    let fine = count.grid;
    let mut k = (AIM_M / fine.cell_m).round().max(1.0) as usize;
    while fine.columns.div_ceil(k) * fine.rows.div_ceil(k) > MOST_SQUARES {
        k += 1;
    }
    let grid = Grid {
        east_min_m: fine.east_min_m,
        north_min_m: fine.north_min_m,
        cell_m: fine.cell_m * k as f64,
        columns: fine.columns.div_ceil(k),
        rows: fine.rows.div_ceil(k),
    };
    let cells = grid.cells();
    let mut lawn = vec![0_u32; cells];
    let mut visited = vec![0_u32; cells];
    let mut visits = vec![0_u32; cells];
    let mut first_s = vec![f32::NAN; cells];
    let mut last_s = vec![f32::NAN; cells];
    for row in 0..fine.rows {
        tussock_plane::distance::runs_of_row(count.lawn.row(row), fine.columns, |start, end| {
            // As long as square and tile stay the same.
            let mut column = start;
            while column < end {
                let square = column / k;
                let (tile, tile_end) = count.tile_row(column, row);
                let stop = end.min((square + 1) * k).min(tile_end);
                let at = (row / k) * grid.columns + square;
                lawn[at] += (stop - column) as u32;
                if let Some(tile) = tile {
                    for (number, first, last) in tile.cells(column, stop) {
                        if number > 0 {
                            visited[at] += 1;
                            visits[at] += u32::from(number);
                            first_s[at] = first_s[at].min(first);
                            last_s[at] = last_s[at].max(last);
                        }
                    }
                }
                column = stop;
            }
        });
    }
    let share = |counts: &[u32]| -> Vec<f32> {
        counts
            .iter()
            .zip(&lawn)
            .map(|(part, all)| {
                if *all == 0 {
                    0.0
                } else {
                    *part as f32 / *all as f32
                }
            })
            .collect()
    };
    let whole = (k * k) as f32;
    Cells {
        grid,
        visited_probability: share(&visited),
        visits_expected: share(&visits),
        lawn_fraction: lawn.iter().map(|cells| *cells as f32 / whole).collect(),
        first_visit_s: first_s,
        last_visit_s: last_s,
    }
}
