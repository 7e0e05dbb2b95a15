//! Is a pocket like this one usual for this machine on this plan?
//!
//! Question: the closed form of [`tussock_coverage::luck`] takes free access for granted. A part behind a wide passage is
//! visited in bursts, and a far corner less often than the middle. Would nights of the fitted machine, from its own station,
//! leave a pocket like this one somewhere?
//!
//! Method: a Monte Carlo test with the largest statistic over the lawn (Barnard 1963; Besag & Diggle 1977), so that the
//! number of places examined is taken into account. The statistic is `rho (D + w)`, the mean path density at the place times
//! the width of gap plus swath, so that what is normal at that place counts. The tail is a Gumbel law fitted by moments to
//! the maxima of the runs.
//!
//! Approximate: the fitted machine, and a tail from a few tens of runs. Cost: a run and its pockets, a few milliseconds
//! each.

use crate::night_simulation::{Cast, Scene};
use tussock_coverage::pockets;
use tussock_plane::BitGrid;
use tussock_simulate::SimulateError;
use tussock_types::Place;
use tussock_types::math;

/// Runs behind a tail: ranks alone would end at one in sixty-one.
pub const RUNS: u64 = 60;
/// Narrower gaps in runs are ignored.
const LEAST_WIDTH_M: f64 = 0.5;
const LEAST_AREA_M2: f64 = 0.2;
/// Path density is smoothed over this distance to either side.
const SMOOTH_M: f64 = 1.5;

/// What is usual.
#[derive(Clone, Debug)]
pub struct ChanceBaseline {
    scene: Scene,
    /// Smoothed path density, metres per square metre, row by row.
    per_m: Vec<f64>,
    mean_per_m: f64,
    gumbel: (f64, f64),
}

impl ChanceBaseline {
    /// Simulates a few tens of nights.
    ///
    /// # Errors
    /// [`SimulateError`].
    pub fn of(cast: &Cast, scene: Scene, seed: u64) -> Result<Self, SimulateError> {
        let density = cast.density(&scene, seed, 0..RUNS)?;
        let mean_per_m = density.mean(&scene.lawn);
        let per_m = smoothed(&density.per_m, &scene.lawn);
        let maxima = cast.judge(&scene, seed, 0..RUNS, |_, painted| {
            let mut unvisited = scene.lawn.clone();
            unvisited.and_not_in_place(painted);
            pockets::pockets(&unvisited, LEAST_WIDTH_M, LEAST_AREA_M2)
                .iter()
                .map(|pocket| at(&scene.lawn, &per_m, pocket.place) * (pocket.widest_m + scene.cut_width_m))
                .fold(0.0, f64::max)
        })?;
        Ok(Self {
            gumbel: gumbel(&maxima),
            scene,
            per_m,
            mean_per_m,
        })
    }

    /// Probability that a night leaves a pocket at least this wide somewhere on the lawn, allowing for the place where it
    /// lies.
    pub fn chance_fraction(&self, place: Place, widest_m: f64) -> f64 {
        let statistic = at(&self.scene.lawn, &self.per_m, place) * (widest_m + self.scene.cut_width_m);
        let (middle, spread) = self.gumbel;
        -math::exp_m1(-math::exp(-(statistic - middle) / spread))
    }

    /// Path density at a place over the lawn's mean.
    pub fn share(&self, place: Place) -> f64 {
        if self.mean_per_m > 0.0 {
            at(&self.scene.lawn, &self.per_m, place) / self.mean_per_m
        } else {
            1.0
        }
    }
}

fn at(lawn: &BitGrid, values: &[f64], place: Place) -> f64 {
    lawn.grid
        .cell_at(place)
        .map_or(0.0, |(column, row)| values[row * lawn.grid.columns + column])
}

/// Mean over the lawn in a square around each cell, by sums over rectangles.
fn smoothed(values: &[f32], lawn: &BitGrid) -> Vec<f64> {
    let grid = lawn.grid;
    let (columns, rows) = (grid.columns, grid.rows);
    let wide = columns + 1;
    let mut sums = vec![(0.0_f64, 0.0_f64); wide * (rows + 1)];
    for row in 0..rows {
        for column in 0..columns {
            let own = if lawn.get(column, row) {
                (f64::from(values[row * columns + column]), 1.0)
            } else {
                (0.0, 0.0)
            };
            let (left, below, corner) = (
                sums[(row + 1) * wide + column],
                sums[row * wide + column + 1],
                sums[row * wide + column],
            );
            sums[(row + 1) * wide + column + 1] = (
                own.0 + left.0 + below.0 - corner.0,
                own.1 + left.1 + below.1 - corner.1,
            );
        }
    }
    let reach = (SMOOTH_M / grid.cell_m).round() as usize;
    (0..rows * columns)
        .map(|cell| {
            let (column, row) = (cell % columns, cell / columns);
            let (x0, x1) = (column.saturating_sub(reach), (column + reach + 1).min(columns));
            let (y0, y1) = (row.saturating_sub(reach), (row + reach + 1).min(rows));
            let corner = |x: usize, y: usize| sums[y * wide + x];
            let (a, b, c, d) = (corner(x1, y1), corner(x0, y1), corner(x1, y0), corner(x0, y0));
            let cells = a.1 - b.1 - c.1 + d.1;
            if cells > 0.0 {
                (a.0 - b.0 - c.0 + d.0) / cells
            } else {
                0.0
            }
        })
        .collect()
}

/// Location and scale of a Gumbel law, by moments.
fn gumbel(values: &[f64]) -> (f64, f64) {
    const EULER: f64 = 0.577_215_664_901_532_9;
    let count = (values.len() as f64).max(1.0);
    let mean = values.iter().sum::<f64>() / count;
    let variance = values.iter().map(|value| (value - mean).powi(2)).sum::<f64>() / (count - 1.0).max(1.0);
    let spread = (6.0 * variance).sqrt() / std::f64::consts::PI;
    (mean - EULER * spread, spread.max(1e-6))
}

#[cfg(test)]
mod tests {
    use super::*;
    use approx::assert_abs_diff_eq;
    use tussock_types::Grid;

    // The quantiles of a Gumbel law that go in come out again: x = mu - beta ln(-ln p).
    #[test]
    fn a_gumbel_law_is_recovered_from_its_own_quantiles() {
        let values: Vec<f64> = (0..4000)
            .map(|step| {
                let part = (f64::from(step) + 0.5) / 4000.0;
                7.0 - 1.5 * math::ln(-math::ln(part))
            })
            .collect();
        let (middle, spread) = gumbel(&values);
        assert_abs_diff_eq!(middle, 7.0, epsilon = 0.02);
        assert_abs_diff_eq!(spread, 1.5, epsilon = 0.02);
    }

    #[test]
    fn smoothing_keeps_what_is_alike_and_leaves_foreign_ground_out() {
        let grid = Grid {
            east_min_m: 0.0,
            north_min_m: 0.0,
            cell_m: 0.5,
            columns: 20,
            rows: 12,
        };
        let mut lawn = BitGrid::new(grid);
        (0..12).for_each(|row| lawn.set_span(row, 0, 10));
        let values = vec![3.0_f32; grid.cells()];
        let smooth = smoothed(&values, &lawn);
        assert!((0..12).all(|row| (smooth[row * 20 + 9] - 3.0).abs() < 1e-9));
        assert_abs_diff_eq!(smooth[19], 0.0);
    }
}
