//! Which cells lie under the disc on one straight piece?
//!
//! The disc's sweep is a capsule. It is convex, so every row of cell centres meets it in one span: the hull of the spans of
//! its two discs and of the rectangle between them. Exact for the centres.

use tussock_plane::Vector;
use tussock_types::Grid;

/// Calls back with row, first column and column past the last for every row of the capsule.
pub(crate) fn spans(
    grid: &Grid,
    from: Vector,
    to: Vector,
    radius_m: f64,
    mut each: impl FnMut(usize, usize, usize),
) {
    let row_of = |north_m: f64| (north_m - grid.north_min_m) / grid.cell_m - 0.5;
    let column_of = |east_m: f64| (east_m - grid.east_min_m) / grid.cell_m - 0.5;
    let lowest = row_of(from.north.min(to.north) - radius_m).ceil().max(0.0);
    let highest = row_of(from.north.max(to.north) + radius_m)
        .floor()
        .min(grid.rows as f64 - 1.0);
    if lowest > highest {
        return;
    }
    let step = to - from;
    let aside = step.unit().map(|along| along.left() * radius_m);
    for row in lowest as usize..=highest as usize {
        let y = grid.north_min_m + (row as f64 + 0.5) * grid.cell_m;
        let (mut west, mut east) = (f64::INFINITY, f64::NEG_INFINITY);
        for middle in [from, to] {
            let left_m2 = radius_m * radius_m - (y - middle.north) * (y - middle.north);
            if left_m2 >= 0.0 {
                west = west.min(middle.east - left_m2.sqrt());
                east = east.max(middle.east + left_m2.sqrt());
            }
        }
        if let Some(aside) = aside {
            let corners = [from - aside, to - aside, to + aside, from + aside];
            for number in 0..4 {
                let (a, b) = (corners[number], corners[(number + 1) % 4]);
                if (a.north <= y) != (b.north <= y) {
                    let x = a.east + (y - a.north) / (b.north - a.north) * (b.east - a.east);
                    west = west.min(x);
                    east = east.max(x);
                }
            }
        }
        let first = column_of(west).ceil().max(0.0);
        let last = column_of(east).floor().min(grid.columns as f64 - 1.0);
        if first <= last {
            each(row, first as usize, last as usize + 1);
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::dice::Dice;

    #[test]
    fn spans_hold_the_cells_whose_centres_are_within_the_radius_and_no_other() {
        const SEED: u64 = 11;
        let grid = Grid {
            east_min_m: -2.0,
            north_min_m: -1.5,
            cell_m: 0.1,
            columns: 40,
            rows: 30,
        };
        let mut dice = Dice::new(SEED, 0);
        for case in 0..300 {
            let mut place = || Vector::new(dice.between(-2.5, 2.5), dice.between(-2.0, 2.0));
            let from = place();
            let to = match case % 4 {
                0 => from,
                1 => Vector::new(place().east, from.north),
                2 => Vector::new(from.east, place().north),
                _ => place(),
            };
            let radius_m = dice.between(0.02, 0.6);
            let mut fast = vec![false; grid.cells()];
            spans(&grid, from, to, radius_m, |row, first, end| {
                for column in first..end {
                    fast[row * grid.columns + column] = true;
                }
            });
            for row in 0..grid.rows {
                for column in 0..grid.columns {
                    let centre = Vector::from(grid.centre(column, row));
                    let step = to - from;
                    let part = if step.length() > 0.0 {
                        ((centre - from).dot(step) / step.dot(step)).clamp(0.0, 1.0)
                    } else {
                        0.0
                    };
                    let distance_m = (centre - from - step * part).length();
                    if (distance_m - radius_m).abs() > 1e-9 {
                        assert_eq!(
                            fast[row * grid.columns + column],
                            distance_m < radius_m,
                            "case {case}, cell {column}, {row}"
                        );
                    }
                }
            }
        }
    }
}
