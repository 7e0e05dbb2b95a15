//! The outline of a lawn from the trace alone.
//!
//! The swath is grown until neighbouring passes meet, holes are filled, and it is shrunk again (morphological closing,
//! Serra 1982); what is no wider than a few swaths (a walk to the gate, the way along a guide run) falls away. Ground
//! beyond the outermost drive cannot be missed and islands count as lawn: the visited fraction is flattering, and the
//! report says so. Exact to about one cell: `CELL_M`, more in boxes of several hectares.

use crate::AnalyseError;
use tussock_coverage::{swath, visits};
use tussock_locate::Track;
use tussock_plane::distance;
use tussock_plane::{BitGrid, Region, outlines};
use tussock_types::Place;

const CELL_M: f64 = 0.1;
/// Passes nearer to each other than twice this have lawn between them.
const CLOSE_M: f64 = 1.5;
/// Boxes of more than five hectares are drawn on coarser cells.
const MOST_CELLS: u64 = 5_000_000;
/// Ground narrower than this is a way, not a lawn.
const LEAST_WIDTH_M: f64 = 1.0;

/// Draws the outline; `cut_width_m` is the width to paint with.
pub fn outline(tracks: &[Track], cut_width_m: f64, most_cells: u64) -> Result<Region, AnalyseError> {
    let no_outline = || AnalyseError::NoOutline {
        least_m: LEAST_WIDTH_M,
    };
    let drives = || {
        tracks
            .iter()
            .flat_map(Track::legs)
            .map(|(from, to)| (from.place, to.place))
    };
    // Of the path, not of the fixes: it may lie beside them.
    let (low, high) = Place::bounds(drives().flat_map(|(from, to)| [from, to])).ok_or_else(no_outline)?;
    let margin_m = CLOSE_M + cut_width_m + 3.0 * CELL_M;
    let low = Place::new(low.east_m - margin_m, low.north_m - margin_m);
    let high = Place::new(high.east_m + margin_m, high.north_m + margin_m);
    let grid = visits::grid_over(low, high, CELL_M, most_cells.min(MOST_CELLS));
    let mut painted = BitGrid::new(grid);
    // Grown at once: a wider brush.
    swath::mark(&mut painted, drives(), 0.5 * cut_width_m + CLOSE_M);
    let (columns, rows) = (grid.columns, grid.rows);
    // Holes: free ground that does not reach the rim of the grid.
    let mut free = BitGrid::new(grid);
    for row in 0..rows {
        free.set_span(row, 0, columns);
    }
    free.and_not_in_place(&painted);
    for part in distance::parts(&free, distance::Connectivity::Four) {
        let window = part.window();
        let on_rim = window.column_start == 0
            || window.row_start == 0
            || window.column_end == columns
            || window.row_end == rows;
        if !on_rim {
            part.runs
                .iter()
                .for_each(|run| painted.set_span(run.row, run.start, run.end));
        }
    }
    let shrink = (CLOSE_M / grid.cell_m).powi(2);
    let squares = distance::squared(columns, rows, |column, row| !painted.get(column, row));
    let mut lawn = BitGrid::new(grid);
    for row in 0..rows {
        for column in 0..columns {
            if f64::from(squares[row * columns + column]) > shrink {
                lawn.set(column, row);
            }
        }
    }
    let mut kept = BitGrid::new(grid);
    for pocket in tussock_coverage::pockets::pockets(&lawn, LEAST_WIDTH_M, 2.0) {
        let own = pocket.cells.grid;
        let column_start = ((own.east_min_m - grid.east_min_m) / grid.cell_m).round() as usize;
        let row_start = ((own.north_min_m - grid.north_min_m) / grid.cell_m).round() as usize;
        for row in 0..own.rows {
            distance::runs_of_row(pocket.cells.row(row), own.columns, |start, end| {
                kept.set_span(row_start + row, column_start + start, column_start + end);
            });
        }
    }
    if kept.count() == 0 {
        return Err(no_outline());
    }
    let region = Region::from_rings(outlines(&kept))?;
    Ok(Region::from_rings(region.outline_simplified(grid.cell_m))?)
}
