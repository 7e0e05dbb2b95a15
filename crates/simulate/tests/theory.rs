//! Closed forms against which the sandbox and the published figures are checked; no room uses them.
//!
//! - Misra & Enge, *Global Positioning System* (2006), chapter 6: circles and ellipses of a normal position error; HDOP.
//! - Stoyan, Kendall & Mecke, *Stochastic Geometry*: covered fraction of a Boolean model.

use std::f64::consts::PI;
use tussock_simulate::laws::random_search_fraction;
use tussock_types::math;

/// Fraction of the lawn that random search visits exactly this many times (Poisson).
pub(crate) fn visits_fraction(coverage_factor: f64, visits: u32) -> f64 {
    let factorial: f64 = (1..=visits).map(f64::from).product();
    math::exp(-coverage_factor) * math::powf(coverage_factor, f64::from(visits)) / factorial
}

/// Mean path until a roaming machine meets a gap in the edge: `pi A / g`. The gap is what is free for the machine's middle.
///
/// Holds for Lambert's law wherever the gap is. With uniform turns on a 20 x 10 m lawn the value is 2.0 times too long in a
/// corner and 1.35 times too short in the middle of a long side (tested).
pub(crate) fn path_to_gap_m(area_m2: f64, gap_m: f64) -> f64 {
    PI * area_m2 / gap_m
}

/// Probability that two independent random chords cross within: `2 pi A / P^2`.
pub(crate) fn chords_cross_fraction(area_m2: f64, perimeter_m: f64) -> f64 {
    2.0 * PI * area_m2 / (perimeter_m * perimeter_m)
}

/// Visited fraction after this many legs by Lambert's law: `1 - exp(-pi w N / P)`; the area cancels.
pub(crate) fn fraction_after_legs(cut_width_m: f64, legs: f64, perimeter_m: f64) -> f64 {
    random_search_fraction(PI * cut_width_m * legs / perimeter_m)
}

/// Mean number of visits until each of n equal places was visited once (coupon collector): `n (1 + 1/2 + ... + 1/n)`.
pub(crate) fn visits_to_all(places: u32) -> f64 {
    f64::from(places)
        * (1..=places)
            .rev()
            .map(|number| 1.0 / f64::from(number))
            .sum::<f64>()
}

/// Expected visited fraction of n equal places after this many visits: `1 - (1 - 1/n)^m`.
pub(crate) fn occupied_fraction(places: u32, visits: u32) -> f64 {
    -math::exp_m1(f64::from(visits) * math::ln_1p(-1.0 / f64::from(places)))
}

/// Covered fraction of a Boolean model of discs: `1 - exp(-lambda pi r^2)`.
pub(crate) fn boolean_model_fraction(discs_per_m2: f64, radius_m: f64) -> f64 {
    -math::exp_m1(-discs_per_m2 * PI * radius_m * radius_m)
}

/// What two neighbouring lanes leave between them if each has its own normal error.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Sliver {
    /// Probability that anything is left.
    pub(crate) probability: f64,
    /// Mean width of what is left, counting none as 0.
    pub(crate) mean_m: f64,
}

/// The gap between lanes: `s - w` plus a normal error of `sigma sqrt(2)`, cut off at 0.
pub(crate) fn sliver(cut_width_m: f64, spacing_m: f64, lateral_sd_m: f64) -> Sliver {
    let sd_m = lateral_sd_m * std::f64::consts::SQRT_2;
    let mean_m = spacing_m - cut_width_m;
    if sd_m <= 0.0 {
        return Sliver {
            probability: if mean_m > 0.0 { 1.0 } else { 0.0 },
            mean_m: mean_m.max(0.0),
        };
    }
    let z = mean_m / sd_m;
    let probability = 0.5 * math::erfc(-z / std::f64::consts::SQRT_2);
    let density = math::exp(-z * z / 2.0) / (2.0 * PI).sqrt();
    Sliver {
        probability,
        mean_m: mean_m * probability + sd_m * density,
    }
}

/// Gini coefficient of counts, given how many places have 0, 1, 2, ... of them; 0 if all are equal or none is counted.
pub(crate) fn gini_of_histogram(places_with: &[u64]) -> f64 {
    let places: f64 = places_with.iter().map(|&places| places as f64).sum();
    let total: f64 = places_with
        .iter()
        .enumerate()
        .map(|(count, &places)| count as f64 * places as f64)
        .sum();
    if total == 0.0 {
        return 0.0;
    }
    // Twice the area between the diagonal and the Lorenz curve, by trapezoids.
    let (mut share, mut under) = (0.0, 0.0);
    for (count, &here) in places_with.iter().enumerate() {
        let next = share + count as f64 * here as f64 / total;
        under += (share + next) * here as f64 / places;
        share = next;
    }
    1.0 - under
}

/// First-order Gauss-Markov error: the fraction kept after a time, `exp(-dt / tau)`.
pub(crate) fn kept_fraction(dt_s: f64, drift_time_s: f64) -> f64 {
    math::exp(-dt_s / drift_time_s)
}

/// The same: the new part in a step, in standard deviations of the whole, `sqrt(1 - phi^2)`.
pub(crate) fn innovation_fraction(dt_s: f64, drift_time_s: f64) -> f64 {
    (-math::exp_m1(-2.0 * dt_s / drift_time_s)).sqrt()
}

/// Variance of the mean over a time, relative to that of one value: `2 (tau/T)^2 (T/tau - 1 + exp(-T/tau))`.
pub(crate) fn mean_variance_fraction(mean_over_s: f64, drift_time_s: f64) -> f64 {
    let ratio = mean_over_s / drift_time_s;
    2.0 / (ratio * ratio) * (ratio + math::exp_m1(-ratio))
}

/// How many independent values these correlated ones are worth: `N / (1 + 2 sum (1 - k/N) phi^k)`.
pub(crate) fn effective_samples(samples: u32, dt_s: f64, drift_time_s: f64) -> f64 {
    let keeps = kept_fraction(dt_s, drift_time_s);
    let count = f64::from(samples);
    let (mut sum, mut power) = (0.0, 1.0);
    for lag in 1..samples {
        power *= keeps;
        sum += (1.0 - f64::from(lag) / count) * power;
    }
    count / (1.0 + 2.0 * sum)
}

/// Standard deviation of the difference of two values, relative to that of one: `sqrt(2 (1 - rho))`.
pub(crate) fn difference_fraction(dt_s: f64, drift_time_s: f64) -> f64 {
    (-2.0 * math::exp_m1(-dt_s / drift_time_s)).sqrt()
}

/// Mean step between two fixes of a receiver at rest with white error: `sigma sqrt(pi)` (Rayleigh).
pub(crate) fn phantom_step_m(white_m: f64) -> f64 {
    white_m * PI.sqrt()
}

/// Mean logged step over the true one with white error (Rice): a logged path is too long by this factor.
pub(crate) fn path_inflation_factor(step_m: f64, white_m: f64) -> f64 {
    // The difference of two fixes has variance 2 sigma^2 per axis; with x = step^2 / (4 sigma^2) the Rice mean is
    // sd sqrt(pi/2) L(-x/2), L(-y) = exp(-y/2) ((1 + y) I0(y/2) + y I1(y/2)).
    let sd_m = white_m * std::f64::consts::SQRT_2;
    let y = step_m * step_m / (2.0 * sd_m * sd_m);
    if y > 500.0 {
        // Rice far from 0: step (1 + 1/(4y) + ...).
        return 1.0 + 1.0 / (4.0 * y) + 1.0 / (32.0 * y * y);
    }
    let half = y / 2.0;
    // I0 and I1 of y/2, scaled by exp(-y/2), as series with positive terms.
    let (mut i0, mut i1, mut term, mut k) = (0.0, 0.0, math::exp(-half), 0.0);
    while term > 1e-18 * i0 || k < half {
        i0 += term;
        i1 += term * (half / 2.0) / (k + 1.0);
        k += 1.0;
        term *= (half / 2.0 / k) * (half / 2.0 / k);
    }
    sd_m * (PI / 2.0).sqrt() * ((1.0 + y) * i0 + y * i1) / step_m
}

/// Radius that holds this fraction of the positions, over the standard deviation per axis: Rayleigh's quantile.
pub(crate) fn circle_radius_factor(share_fraction: f64) -> f64 {
    (-2.0 * math::ln(1.0 - share_fraction)).sqrt()
}

/// Fraction of the positions within a circle of this many standard deviations per axis.
pub(crate) fn circle_fraction(radius_factor: f64) -> f64 {
    1.0 - math::exp(-0.5 * radius_factor * radius_factor)
}

/// Fraction of the positions within a circle, if standard deviations differ between two perpendicular axes. Uses the
/// trapezoidal rule over the bearing, in which the integral is smooth and periodic: exact to rounding for ratios down to a
/// hundredth.
pub(crate) fn ellipse_fraction(radius_m: f64, long_sd_m: f64, short_sd_m: f64) -> f64 {
    const STEPS: u32 = 4096;
    let outside: f64 = (0..STEPS)
        .map(|step| {
            let (sin, cos) = math::sin_cos(2.0 * PI * f64::from(step) / f64::from(STEPS));
            // Along a bearing the density falls like exp(-r^2 k / 2).
            let k = (cos / long_sd_m).powi(2) + (sin / short_sd_m).powi(2);
            math::exp(-0.5 * radius_m * radius_m * k) / (k * long_sd_m * short_sd_m)
        })
        .sum::<f64>()
        / f64::from(STEPS);
    1.0 - outside
}

/// Radius that holds this fraction of the positions if the axes differ.
pub(crate) fn ellipse_radius_m(share_fraction: f64, long_sd_m: f64, short_sd_m: f64) -> f64 {
    let (mut low_m, mut high_m) = (0.0, 40.0 * long_sd_m.max(short_sd_m));
    for _ in 0..100 {
        let middle_m = 0.5 * (low_m + high_m);
        if ellipse_fraction(middle_m, long_sd_m, short_sd_m) < share_fraction {
            low_m = middle_m;
        } else {
            high_m = middle_m;
        }
    }
    0.5 * (low_m + high_m)
}

/// Root mean square distance of a horizontal position, from its dilution and the error of a range.
pub(crate) fn distance_rms_m(hdop: f64, range_error_m: f64) -> f64 {
    hdop * range_error_m
}
