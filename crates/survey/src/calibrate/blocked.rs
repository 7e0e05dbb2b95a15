//! Which ground did the machine never enter, although the plan allows it?
//!
//! Question: a fence that is missing from the plan closes off part of the lawn, and errors of metres spill fixes over it.
//! Where is it? Method: fixes of the log are compared, as kernel densities (Silverman 1986, section 4.2), with fixes of
//! simulated logs that have the same errors and are driven on the plan as drawn. Blurring by a symmetric error leaves half
//! of the density at a straight fence, whatever the error: ground with less than half of the expected density lies behind
//! it. Ground is taken out only if it is wide, the lack of fixes is not chance, and there are no more fixes on it than
//! errors spill over its edge: otherwise it was entered, only seldom.
//!
//! Approximate: the fence is drawn to about a metre. Cost: two passes over a grid for each log.

use rayon::prelude::*;
use tussock_coverage::pockets;
use tussock_plane::distance;
use tussock_plane::{BitGrid, Region, outlines, rasterise};
use tussock_types::math;
use tussock_types::{Grid, Place};

/// Side of a cell.
const CELL_M: f64 = 0.5;
/// Standard deviation of the kernel: about fifty fixes of a night at one in 20 s.
const KERNEL_M: f64 = 2.0;
/// Ground beside the lawn that is examined too, because a fence ends beyond the edge.
const MARGIN_M: f64 = 4.0;
/// At a fence half of the density is left.
const AT_A_FENCE: f64 = 0.5;
/// The usual ratio is found in this many rounds, each time without the ground behind the fence.
const LOOKS_AT_THE_REST: usize = 4;
/// Ground with less of the expected density than this is not examined.
const LEAST_EXPECTED: f64 = 0.02;
/// Narrower ground is not a part of a lawn, and may be left out by luck.
const LEAST_WIDTH_M: f64 = 4.0;
/// Fixes come along legs, several to each, so their number scatters more than by Poisson's law: by this factor in variance.
const LEGS_SCATTER: f64 = 2.0;
/// Fixes must be too few by this many standard deviations.
const SURE: f64 = 4.0;
/// They may exceed what spills over a fence by this many standard deviations.
const SURE_OF_VISITS: f64 = 2.0;

/// A smoothed count of fixes for each cell.
fn density(grid: &Grid, fixes: &[Place]) -> Vec<f64> {
    let mut counts = vec![0.0; grid.cells()];
    for place in fixes {
        if let Some((column, row)) = grid.cell_at(*place) {
            counts[row * grid.columns + column] += 1.0;
        }
    }
    let reach = (3.0 * KERNEL_M / grid.cell_m).ceil() as usize;
    let weights: Vec<f64> = (0..=reach)
        .map(|cells| math::exp(-0.5 * (cells as f64 * grid.cell_m / KERNEL_M).powi(2)))
        .collect();
    let whole = weights[0] + 2.0 * weights[1..].iter().sum::<f64>();
    // Along rows, then along columns.
    let mut blurred = counts;
    for (lines, length, step, stride) in [
        (grid.rows, grid.columns, 1, grid.columns),
        (grid.columns, grid.rows, grid.columns, 1),
    ] {
        let mut next = vec![0.0; grid.cells()];
        for line in 0..lines {
            for at in 0..length {
                let value = blurred[line * stride + at * step];
                if value == 0.0 {
                    continue;
                }
                for to in at.saturating_sub(reach)..=(at + reach).min(length - 1) {
                    next[line * stride + to * step] += value * weights[at.abs_diff(to)] / whole;
                }
            }
        }
        blurred = next;
    }
    blurred
}

/// Parts of the lawn that the log leaves out and the simulated logs do not; `None` if there are none.
pub(super) fn never_entered(
    lawn: &Region,
    logged: &[Place],
    simulated: &[Vec<Place>],
    error_m: f64,
) -> Option<Region> {
    let (low, high) = lawn.bounds()?;
    let cells = |least_m: f64, most_m: f64| ((most_m - least_m + 2.0 * MARGIN_M) / CELL_M).ceil() as usize;
    let grid = Grid {
        east_min_m: low.east_m - MARGIN_M,
        north_min_m: low.north_m - MARGIN_M,
        cell_m: CELL_M,
        columns: cells(low.east_m, high.east_m),
        rows: cells(low.north_m, high.north_m),
    };
    let own = density(&grid, logged);
    let others: Vec<Vec<f64>> = simulated.par_iter().map(|fixes| density(&grid, fixes)).collect();
    let expected: Vec<f64> = (0..grid.cells())
        .map(|cell| others.iter().map(|one| one[cell]).sum::<f64>() / others.len().max(1) as f64)
        .collect();
    let on_lawn = rasterise(lawn, &grid);
    let mean = on_lawn
        .cells_on()
        .map(|(column, row)| expected[row * grid.columns + column])
        .sum::<f64>()
        / (on_lawn.count() as f64).max(1.0);
    let ratio = |cell: usize| {
        (expected[cell] > LEAST_EXPECTED * mean).then(|| own[cell] / expected[cell].max(f64::MIN_POSITIVE))
    };
    // What a blocked part lacks, the rest has in excess: the usual ratio of the rest is the reference.
    let mut ratios: Vec<f64> = on_lawn
        .cells_on()
        .filter_map(|(column, row)| ratio(row * grid.columns + column))
        .collect();
    ratios.sort_by(f64::total_cmp);
    let mut rest = ratios.as_slice();
    let mut usual = 0.0;
    for _ in 0..LOOKS_AT_THE_REST {
        usual = *rest.get(rest.len() / 2)?;
        rest = &ratios[ratios.partition_point(|ratio| *ratio < AT_A_FENCE * usual)..];
    }
    let mut left_out = BitGrid::new(grid);
    for row in 0..grid.rows {
        for column in 0..grid.columns {
            if ratio(row * grid.columns + column).is_some_and(|ratio| ratio < AT_A_FENCE * usual) {
                left_out.set(column, row);
            }
        }
    }
    let mut blocked = Vec::new();
    for part in pockets::pockets(&left_out, LEAST_WIDTH_M, LEAST_WIDTH_M * LEAST_WIDTH_M) {
        let is_inside = |place: &Place| {
            part.cells
                .grid
                .cell_at(*place)
                .is_some_and(|(column, row)| part.cells.get(column, row))
        };
        let count = |fixes: &[Place]| fixes.iter().filter(|place| is_inside(place)).count() as f64;
        let seen = count(logged) / usual;
        let meant = simulated.iter().map(|fixes| count(fixes)).sum::<f64>() / simulated.len().max(1) as f64;
        if meant - seen < SURE * (LEGS_SCATTER * meant).sqrt() {
            continue;
        }
        let spilt = spilt(&part.cells, &left_out, &on_lawn, &expected, error_m);
        if seen > spilt + SURE_OF_VISITS * (LEGS_SCATTER * spilt).sqrt() {
            continue;
        }
        let stepped = Region::from_rings(outlines(&part.cells)).ok()?;
        blocked.extend(Region::from_rings(stepped.outline_simplified(1.2 * CELL_M)));
    }
    let blocked = Region::union_of(&blocked).ok()?;
    (!blocked.is_empty()).then_some(blocked)
}

/// Fixes that errors would carry over the edge into closed-off ground if there were a straight fence.
fn spilt(part: &BitGrid, left_out: &BitGrid, on_lawn: &BitGrid, expected: &[f64], error_m: f64) -> f64 {
    let grid = left_out.grid;
    let to_the_open = distance::squared(grid.columns, grid.rows, |column, row| {
        on_lawn.get(column, row) && !left_out.get(column, row)
    });
    part.cells_on()
        .filter_map(|(column, row)| grid.cell_at(part.grid.centre(column, row)))
        .map(|(column, row)| {
            let cell = row * grid.columns + column;
            let depth_m = (f64::from(to_the_open[cell]).sqrt() - 0.5).max(0.0) * grid.cell_m;
            expected[cell] * beyond(depth_m / error_m.max(1e-3))
        })
        .sum()
}

/// Share of a normal error beyond this many standard deviations (Abramowitz & Stegun 1964, 26.2.17).
fn beyond(deviations: f64) -> f64 {
    const B: [f64; 5] = [
        0.319_381_530,
        -0.356_563_782,
        1.781_477_937,
        -1.821_255_978,
        1.330_274_429,
    ];
    let t = 1.0 / (1.0 + 0.231_641_9 * deviations);
    let series = B.iter().rev().fold(0.0, |sum, b| (sum + b) * t);
    math::exp(-0.5 * deviations * deviations) / (2.0 * std::f64::consts::PI).sqrt() * series
}

#[cfg(test)]
mod tests {
    use super::*;
    use rand::{RngExt, SeedableRng};
    use rand_chacha::ChaCha8Rng;
    use rand_distr::{Distribution, Normal};

    fn box_of(east_m: f64, north_m: f64) -> Region {
        let at = Place::new;
        Region::from_rings(vec![vec![vec![
            at(0.0, 0.0),
            at(east_m, 0.0),
            at(east_m, north_m),
            at(0.0, north_m),
            at(0.0, 0.0),
        ]]])
        .expect("a rectangle")
    }

    /// Fixes strewn over a rectangle with two metres of error.
    fn strewn(east_m: f64, north_m: f64, fixes: usize, seed: u64) -> Vec<Place> {
        let mut dice = ChaCha8Rng::seed_from_u64(seed);
        let error = Normal::new(0.0, 2.0).expect("a spread");
        (0..fixes)
            .map(|_| {
                Place::new(
                    dice.random_range(0.0..east_m) + error.sample(&mut dice),
                    dice.random_range(0.0..north_m) + error.sample(&mut dice),
                )
            })
            .collect()
    }

    #[test]
    fn the_fence_lies_where_half_of_the_fixes_are_left() {
        let lawn = box_of(40.0, 20.0);
        let simulated: Vec<Vec<Place>> = (1..5).map(|seed| strewn(40.0, 20.0, 800, seed)).collect();
        // The machine stays west of 28 m.
        let blocked =
            never_entered(&lawn, &strewn(28.0, 20.0, 800, 9), &simulated, 2.0).expect("it is large");
        let inside = blocked.intersect(&lawn).expect("two sound regions");
        assert!((inside.area_m2() - 240.0).abs() < 30.0, "{}", inside.area_m2());
        let (low, _) = inside.bounds().expect("it is large");
        assert!((low.east_m - 28.0).abs() < 1.5, "{low:?}");
    }

    #[test]
    fn ground_that_was_entered_seldom_has_no_fence_before_it() {
        let lawn = box_of(40.0, 20.0);
        let simulated: Vec<Vec<Place>> = (1..5).map(|seed| strewn(40.0, 20.0, 800, seed)).collect();
        let mut logged = strewn(28.0, 20.0, 560, 9);
        // A quarter of its share east of 28 m.
        logged.extend(
            strewn(12.0, 20.0, 60, 10)
                .into_iter()
                .map(|place| Place::new(place.east_m + 28.0, place.north_m)),
        );
        assert_eq!(never_entered(&lawn, &logged, &simulated, 2.0), None);
    }

    #[test]
    fn tails_of_the_normal_law_agree_with_published_ones() {
        // Abramowitz & Stegun 1964, table 26.1.
        for (deviations, tail) in [
            (0.0, 0.5),
            (1.0, 0.158_655_25),
            (2.0, 0.022_750_13),
            (3.0, 0.001_349_90),
        ] {
            assert!(
                (beyond(deviations) - tail).abs() < 1e-7,
                "{deviations}: {}",
                beyond(deviations)
            );
        }
    }

    #[test]
    fn a_lawn_driven_as_it_is_drawn_has_no_fence() {
        let lawn = box_of(40.0, 20.0);
        let simulated: Vec<Vec<Place>> = (1..5).map(|seed| strewn(40.0, 20.0, 800, seed)).collect();
        for seed in 20..40 {
            assert_eq!(
                never_entered(&lawn, &strewn(40.0, 20.0, 800, seed), &simulated, 2.0),
                None
            );
        }
    }
}
