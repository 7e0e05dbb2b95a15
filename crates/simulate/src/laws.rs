//! What does theory say?
//!
//! Closed forms against which a simulated or logged machine can be checked. `C` is the coverage factor `w v t / A`: area
//! swept over area of the lawn.
//!
//! - Koopman, *Search and Screening* (OEG Report 56, 1946), chapter 3: random, exhaustive and inverse-cube search.
//! - Gage, *Randomized search strategies with imperfect sensors* (NOSC), for many robots.
//! - Cauchy-Crofton, in Santalo, *Integral Geometry and Geometric Probability* (1976): mean chord pi A/P under Lambert's law.

use std::f64::consts::PI;
use tussock_types::math;

/// Coverage factor: swept area over lawn area.
pub fn coverage_factor(cut_width_m: f64, speed_mps: f64, driving_s: f64, lawn_m2: f64) -> f64 {
    cut_width_m * speed_mps * driving_s / lawn_m2
}

/// Koopman's random search: visited fraction `1 - exp(-C)`.
pub fn random_search_fraction(coverage_factor: f64) -> f64 {
    -math::exp_m1(-coverage_factor)
}

/// Exhaustive search: visited fraction `min(1, C)`.
pub fn exhaustive_fraction(coverage_factor: f64) -> f64 {
    coverage_factor.min(1.0)
}

/// Parallel sweeps with an inverse-cube detector: `erf(sqrt(pi) C / 2)`.
pub fn inverse_cube_fraction(coverage_factor: f64) -> f64 {
    math::erf(PI.sqrt() / 2.0 * coverage_factor)
}

/// Coverage factor that random search needs for a visited fraction: `-ln(1 - f)`.
pub fn random_search_factor(visited_fraction: f64) -> f64 {
    -math::ln_1p(-visited_fraction)
}

/// Mean time between two visits of one place under random search: `A / (w v)`.
pub fn mean_revisit_s(cut_width_m: f64, speed_mps: f64, lawn_m2: f64) -> f64 {
    lawn_m2 / (cut_width_m * speed_mps)
}

/// Mean leg of a machine that turns by Lambert's law: `pi A / P`, whatever the shape.
pub fn mean_free_path_m(area_m2: f64, perimeter_m: f64) -> f64 {
    PI * area_m2 / perimeter_m
}

/// Gini coefficient of Poisson counts: `exp(-2 m) (I0(2 m) + I1(2 m))` with modified Bessel functions.
pub fn gini_of_poisson(mean: f64) -> f64 {
    // Both series at once: I0(2m) = sum m^2k / k!^2, I1(2m) = sum m^(2k+1) / (k! (k+1)!). All terms are positive, so nothing
    // cancels; each starts scaled by exp(-2m).
    let mut term = math::exp(-2.0 * mean);
    let mut sum = 0.0;
    let mut k = 0.0;
    while term > 1e-17 * sum || k < mean {
        sum += term * (1.0 + mean / (k + 1.0));
        k += 1.0;
        term *= (mean / k) * (mean / k);
    }
    sum
}
