//! What a change brings, in numbers.
//!
//! A narrow passage gives a night nearly two outcomes: mostly all of the pocket, sometimes nothing. The mean describes
//! neither. The estimate is therefore the centre of the window that holds most runs (a mode, Parzen 1962, DOI
//! 10.1214/aoms/1177704472, by the shorth-like window of Venter 1967), the interval is that of single runs, and a change is
//! accepted by its mean gain (bootstrap, Efron 1979).

use crate::night_simulation::{Fractions, GOLDEN, mixed};
use tussock_types::Estimate;
use tussock_types::math::{self, mean};

/// The estimate of a pocket is the centre of the densest window of this width.
pub(super) const POCKET_WINDOW: f64 = 0.30;
/// The same for the lawn.
pub(super) const LAWN_WINDOW: f64 = 0.10;
/// A pocket must gain more than this.
pub(super) const GAIN: f64 = 0.20;
/// A pocket is mended when more than this is driven over.
pub(super) const DONE: f64 = 0.85;
/// And it must lie this close to the prediction.
pub(super) const POCKET_NEAR: f64 = 0.15;
/// And the lawn this close.
pub(super) const LAWN_NEAR: f64 = 0.05;
/// The lawn's mean may fall by no more than this.
pub(super) const LAWN_LOSS: f64 = 0.005;
/// Positions better than this are precise.
const PRECISE_M: f64 = 0.05;
/// Resamplings of the mean gain.
const RESAMPLINGS: u64 = 400;

/// By how much the interval of single runs is widened for what the fit does not know.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Widened {
    pub(super) pocket: f64,
    pub(super) lawn: f64,
}

impl Widened {
    /// Given the standard deviation of places on the path.
    pub(super) fn by(position_sd_m: f64) -> Self {
        let (pocket, lawn) = if position_sd_m <= PRECISE_M {
            (0.05, 0.02)
        } else {
            (0.10, 0.03)
        };
        Self { pocket, lawn }
    }
}

/// What most of several runs visit of a pocket, with the interval of single runs; `position_sd_m` is that of the log to
/// which the machine was fitted.
pub fn pocket_predicted(visited_fractions: &[f64], position_sd_m: f64) -> Estimate {
    estimate(
        visited_fractions,
        POCKET_WINDOW,
        Widened::by(position_sd_m).pocket,
    )
}

/// Runs of one version.
#[derive(Clone, Debug, Default)]
pub(super) struct Runs {
    pub(super) lawn: Vec<f64>,
    pub(super) pocket: Vec<f64>,
}

impl Runs {
    /// For one pocket, by its number.
    pub(super) fn of(runs: &[Fractions], pocket: usize) -> Self {
        Self {
            lawn: runs.iter().map(|run| run.lawn).collect(),
            pocket: runs
                .iter()
                .map(|run| run.pockets.get(pocket).copied().unwrap_or(0.0))
                .collect(),
        }
    }

    pub(super) fn append(&mut self, more: Self) {
        self.lawn.extend(more.lawn);
        self.pocket.extend(more.pocket);
    }

    pub(super) fn pocket_estimate(&self, widened: Widened) -> Estimate {
        estimate(&self.pocket, POCKET_WINDOW, widened.pocket)
    }

    pub(super) fn lawn_estimate(&self, widened: Widened) -> Estimate {
        estimate(&self.lawn, LAWN_WINDOW, widened.lawn)
    }

    /// Share of runs that gain enough compared with the log and lie close to the prediction.
    pub(super) fn certainty(&self, in_log: f64) -> f64 {
        let (pocket, lawn) = (
            densest(&self.pocket, POCKET_WINDOW),
            densest(&self.lawn, LAWN_WINDOW),
        );
        let good = self.pocket.iter().zip(&self.lawn).filter(|(here, all)| {
            **here - in_log > GAIN
                && (**here - pocket).abs() <= POCKET_NEAR
                && (**all - lawn).abs() <= LAWN_NEAR
        });
        good.count() as f64 / self.pocket.len().max(1) as f64
    }

    /// The score for ranking candidates: the most certain first; among equals, by the pocket's mean.
    pub(super) fn score(&self, in_log: f64) -> f64 {
        self.certainty(in_log) + 0.2 * mean(&self.pocket)
    }
}

/// Windows that hold fewer values than the fullest by no more than this fraction of all are as good.
const AS_GOOD: f64 = 0.03;

/// Centre of the window of this width that holds most values; among windows that hold (nearly) as many, the one nearest to
/// the median.
pub(super) fn densest(values: &[f64], width: f64) -> f64 {
    let mut sorted = values.to_vec();
    sorted.sort_by(f64::total_cmp);
    let median = math::quantile(&sorted, 0.5).unwrap_or(0.0);
    let held = |centre: f64| {
        let first = sorted.partition_point(|value| *value < centre - 0.5 * width - 1e-12);
        let end = sorted.partition_point(|value| *value <= centre + 0.5 * width + 1e-12);
        end.saturating_sub(first)
    };
    // A fullest window can always be moved until a value lies on its rim.
    let centres: Vec<(usize, f64)> = sorted
        .iter()
        .flat_map(|value| [value - 0.5 * width, value + 0.5 * width])
        .chain([median])
        .map(|centre| (held(centre), centre))
        .collect();
    let most = centres.iter().map(|centre| centre.0).max().unwrap_or(0);
    let enough = most as f64 - AS_GOOD * sorted.len() as f64;
    centres
        .into_iter()
        .filter(|centre| centre.0 as f64 >= enough)
        .min_by(|a, b| (a.1 - median).abs().total_cmp(&(b.1 - median).abs()))
        .map_or(0.0, |centre| centre.1.clamp(0.0, 1.0))
}

fn estimate(values: &[f64], window: f64, widened: f64) -> Estimate {
    let mut sorted = values.to_vec();
    sorted.sort_by(f64::total_cmp);
    Estimate {
        estimate: densest(&sorted, window),
        low: Some((math::quantile(&sorted, 0.05).unwrap_or(0.0) - widened).max(0.0)),
        high: Some((math::quantile(&sorted, 0.95).unwrap_or(0.0) + widened).min(1.0)),
    }
}

/// Lower end (5 %) of the mean gain over resampled runs.
pub(super) fn least_mean_gain(before: &[f64], after: &[f64], seed: u64) -> f64 {
    let mut state = seed ^ 0x5DEE_CE66_D1CE_4E5B;
    let mut below = |count: usize| {
        state = state.wrapping_add(GOLDEN);
        (mixed(state) % count.max(1) as u64) as usize
    };
    let mut gains: Vec<f64> = (0..RESAMPLINGS)
        .map(|_| {
            let mut drawn = |values: &[f64]| {
                (0..values.len())
                    .map(|_| values[below(values.len())])
                    .sum::<f64>()
                    / values.len().max(1) as f64
            };
            drawn(after) - drawn(before)
        })
        .collect();
    gains.sort_by(f64::total_cmp);
    math::quantile(&gains, 0.05).unwrap_or(0.0)
}

#[cfg(test)]
mod tests {
    use super::*;
    use approx::assert_abs_diff_eq;

    #[test]
    fn two_valued_runs_are_estimated_by_what_most_of_them_show() {
        let mut runs = vec![0.97; 15];
        runs.extend([0.0; 5]);
        assert_abs_diff_eq!(densest(&runs, POCKET_WINDOW), 0.97, epsilon = 1e-12);
        assert_abs_diff_eq!(mean(&runs), 0.7275, epsilon = 1e-12);
        // The window need not be centred on a value: 0.6 to 0.9 holds all three.
        assert_abs_diff_eq!(densest(&[0.6, 0.88, 0.9, 0.1], 0.3), 0.75, epsilon = 1e-12);
    }

    #[test]
    fn certainty_is_the_share_of_runs_that_meet_all_three_conditions() {
        let runs = Runs {
            pocket: vec![0.9, 0.95, 0.85, 0.1, 0.92],
            lawn: vec![0.97, 0.98, 0.80, 0.97, 0.97],
        };
        // The third fails because of the lawn, the fourth in gain and closeness.
        assert_abs_diff_eq!(runs.certainty(0.0), 0.6, epsilon = 1e-12);
        assert_abs_diff_eq!(runs.certainty(0.8), 0.0, epsilon = 1e-12);
    }

    #[test]
    fn the_lower_end_of_the_mean_gain_is_that_of_the_normal_law() {
        // Alternating 0 and 1: mean 1/2, sd 1/2; 100 runs each side: sd of the difference sqrt(2) / 20.
        let alternating: Vec<f64> = (0..100).map(|at| f64::from(at % 2)).collect();
        let shifted: Vec<f64> = alternating.iter().map(|value| value + 0.3).collect();
        let least = least_mean_gain(&alternating, &shifted, 7);
        assert_abs_diff_eq!(least, 0.3 - 1.645 * 2.0_f64.sqrt() / 20.0, epsilon = 0.015);
    }

    #[test]
    fn the_interval_is_widened_and_stays_a_fraction() {
        let runs = Runs {
            pocket: (0..=100).map(|at| f64::from(at) / 100.0).collect(),
            lawn: vec![0.5; 101],
        };
        let widened = Widened {
            pocket: 0.05,
            lawn: 0.02,
        };
        let pocket = runs.pocket_estimate(widened);
        assert_abs_diff_eq!(pocket.low.unwrap(), 0.0, epsilon = 1e-12);
        assert_abs_diff_eq!(pocket.high.unwrap(), 1.0, epsilon = 1e-12);
        let lawn = runs.lawn_estimate(widened);
        assert_abs_diff_eq!(lawn.low.unwrap(), 0.48, epsilon = 1e-12);
        assert_abs_diff_eq!(lawn.high.unwrap(), 0.52, epsilon = 1e-12);
    }
}
