//! The statistics of a few outcomes (tests only). `examples/reference.rs` says what our methods answer, for other libraries to compare.

/// Interval of a share of which `with` of `all` were seen; `deviations` is 1.96 for 95 % (Wilson 1927,
/// DOI 10.1080/01621459.1927.10502953).
pub fn share_interval(with: usize, all: usize, deviations: f64) -> (f64, f64) {
    let (with, all, square) = (with as f64, all as f64, deviations * deviations);
    let middle = (with + 0.5 * square) / (all + square);
    let half = deviations / (all + square) * (with * (all - with) / all + 0.25 * square).sqrt();
    (middle - half, middle + half)
}

#[cfg(test)]
mod tests {
    use super::share_interval;

    /// SciPy 1.17.1 (`binomtest(...).proportion_ci(method="wilson")`).
    #[test]
    fn alg_22_the_interval_of_a_share_is_that_of_wilson() {
        const DEVIATIONS: f64 = 1.959_963_984_540_054;
        let near = |found: f64, expected: f64| {
            assert!((found - expected).abs() <= 1e-6, "{found} is not {expected}");
        };
        let (low, high) = share_interval(8, 10, DEVIATIONS);
        near(low, 0.490_162);
        near(high, 0.943_318);
        let (low, high) = share_interval(47, 50, DEVIATIONS);
        near(low, 0.837_829);
        near(high, 0.979_385);
    }
}
