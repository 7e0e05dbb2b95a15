//! What a handful of outcomes say: quantiles, spread that a few wild ones do not move, intervals.
//!
//! Quantiles are those of type 7 (Hyndman & Fan 1996, DOI 10.1080/00031305.1996.10473566). The interval of a share is Wilson's
//! (1927, DOI 10.1080/01621459.1927.10502953). The interval of a mean is the percentile bootstrap (Efron & Tibshirani 1993,
//! section 13.3); it scatters with the seed.

use rand::{RngExt, SeedableRng};
use rand_chacha::ChaCha8Rng;

/// Scale of the median absolute deviation that makes it a standard deviation for normal values.
const NORMAL_MAD: f64 = 1.482_602_218_505_602;

/// Value below which this part of the values lies; NaN without any.
pub fn quantile(values: &[f64], part: f64) -> f64 {
    let mut sorted = values.to_vec();
    sorted.sort_by(f64::total_cmp);
    let Some(last) = sorted.len().checked_sub(1) else {
        return f64::NAN;
    };
    let at = part.clamp(0.0, 1.0) * last as f64;
    let below = at.floor() as usize;
    let above = (below + 1).min(last);
    sorted[below] + (at - below as f64) * (sorted[above] - sorted[below])
}

/// Median distance from the median.
pub fn median_absolute_deviation(values: &[f64]) -> f64 {
    let middle = quantile(values, 0.5);
    let off: Vec<f64> = values.iter().map(|value| (value - middle).abs()).collect();
    quantile(&off, 0.5)
}

/// Standard deviation by the median absolute deviation.
pub fn robust_sd(values: &[f64]) -> f64 {
    NORMAL_MAD * median_absolute_deviation(values)
}

/// Interval of a share of which `with` of `all` were seen; `deviations` is 1.96 for 95 %.
pub fn share_interval(with: usize, all: usize, deviations: f64) -> (f64, f64) {
    let (with, all, square) = (with as f64, all as f64, deviations * deviations);
    let middle = (with + 0.5 * square) / (all + square);
    let half = deviations / (all + square) * (with * (all - with) / all + 0.25 * square).sqrt();
    (middle - half, middle + half)
}

/// Standard error of a mean, and its 95 % interval, from resampled values.
pub fn mean_interval(values: &[f64], resamples: usize, seed: u64) -> (f64, (f64, f64)) {
    let mut dice = ChaCha8Rng::seed_from_u64(seed);
    let count = values.len() as f64;
    let means: Vec<f64> = (0..resamples)
        .map(|_| {
            (0..values.len())
                .map(|_| values[dice.random_range(0..values.len())])
                .sum::<f64>()
                / count
        })
        .collect();
    let mean = means.iter().sum::<f64>() / resamples as f64;
    let variance = means.iter().map(|one| (one - mean).powi(2)).sum::<f64>() / resamples as f64;
    (
        variance.sqrt(),
        (quantile(&means, 0.025), quantile(&means, 0.975)),
    )
}

#[cfg(test)]
mod tests {
    use super::*;

    const DATA: [f64; 10] = [3.0, 5.0, 7.0, 7.0, 8.0, 9.0, 10.0, 12.0, 15.0, 18.0];

    fn near(found: f64, expected: f64, tolerance: f64) {
        assert!((found - expected).abs() <= tolerance, "{found} is not {expected}");
    }

    /// Analytic standard error with 1/n; percentile interval of SciPy 1.17.1 (`stats.bootstrap`, 9999 resamples).
    #[test]
    fn alg_18_the_bootstrap_of_a_mean_is_that_of_scipy() {
        let (se, (low, high)) = mean_interval(&DATA, 9999, 12_345);
        near(DATA.iter().sum::<f64>() / 10.0, 9.4, 1e-12);
        near(se, 1.365_283_9, 0.03);
        near(low, 6.895, 0.25);
        near(high, 12.2, 0.25);
    }

    /// NumPy 2.4.6 and SciPy 1.17.1.
    #[test]
    fn alg_19_quantiles_and_the_median_absolute_deviation_are_those_of_numpy_and_scipy() {
        for (part, expected) in [(0.05, 3.9), (0.25, 7.0), (0.5, 8.5), (0.75, 11.5), (0.95, 16.65)] {
            near(quantile(&DATA, part), expected, 1e-6);
        }
        near(median_absolute_deviation(&DATA), 2.5, 1e-6);
        near(robust_sd(&DATA), 3.706_505_5, 1e-6);
    }

    /// SciPy 1.17.1 (`binomtest(...).proportion_ci(method="wilson")`).
    #[test]
    fn alg_22_the_interval_of_a_share_is_that_of_wilson() {
        const DEVIATIONS: f64 = 1.959_963_984_540_054;
        let (low, high) = share_interval(8, 10, DEVIATIONS);
        near(low, 0.490_162, 1e-6);
        near(high, 0.943_318, 1e-6);
        let (low, high) = share_interval(47, 50, DEVIATIONS);
        near(low, 0.837_829, 1e-6);
        near(high, 0.979_385, 1e-6);
    }
}
