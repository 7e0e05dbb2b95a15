//! How does a lawn fill up? Two laws that bound it.
//!
//! With C = w v t / A, swept area over lawn area: random search visits 1 - exp(-C) (Koopman, Search and Screening,
//! OEG Report 56, 1946, chapter 3), exhaustive search min(1, C). The ratio of times to the same fraction p is
//! -ln(1 - p) / p (Gage, Randomized search strategies with imperfect sensors, 1993).

use tussock_simulate::laws::{exhaustive_fraction, random_search_fraction};
use tussock_types::math;

/// Where a visited fraction lies between the two laws: 0 on the random law, 1 on the exhaustive line, negative below the
/// random law. `None` if the two laws are too close to distinguish, or nearly everything is visited.
pub fn pattern_efficiency(swept: f64, visited_fraction: f64) -> Option<f64> {
    let (random, exhaustive) = (random_search_fraction(swept), exhaustive_fraction(swept));
    (exhaustive - random > 0.02 && swept > 0.1).then(|| (visited_fraction - random) / (exhaustive - random))
}

/// Driving hours until a visited fraction is reached.
///
/// Read off the curve if it gets there; otherwise continued by the exponential law of the ground that is still open, without
/// the part that never fills (`out_of_reach_fraction`). `None` if the fraction is out of reach.
pub fn hours_to(
    target_fraction: f64,
    driving_h: &[f64],
    visited_fraction: &[f64],
    out_of_reach_fraction: f64,
) -> Option<f64> {
    if let Some(index) = visited_fraction
        .iter()
        .position(|visited| *visited >= target_fraction)
    {
        if index == 0 {
            return driving_h.first().copied();
        }
        let (low, high) = (visited_fraction[index - 1], visited_fraction[index]);
        let part = if high > low {
            (target_fraction - low) / (high - low)
        } else {
            1.0
        };
        return Some(driving_h[index - 1] + part * (driving_h[index] - driving_h[index - 1]));
    }
    let (end_h, end) = (*driving_h.last()?, *visited_fraction.last()?);
    let open = 1.0 - out_of_reach_fraction;
    if open <= target_fraction || end >= open {
        return None;
    }
    // Rate over the second half: the first half fills faster than any law that holds for the rest.
    let middle = driving_h.iter().position(|hours| *hours >= 0.5 * end_h)?;
    let lapse_h = end_h - driving_h[middle];
    let rate_per_h = math::ln((open - visited_fraction[middle]) / (open - end)) / lapse_h;
    if !(rate_per_h > 0.0) || !rate_per_h.is_finite() {
        return None;
    }
    Some(end_h + math::ln((open - end) / (open - target_fraction)) / rate_per_h)
}

#[cfg(test)]
mod tests {
    use super::*;
    use approx::assert_abs_diff_eq;

    // COV-01: Koopman 1946 and min(1, C), recomputed.
    #[test]
    fn laws_agree_with_published_tables() {
        let table = [
            (0.25, 0.221199, 0.25),
            (0.5, 0.393469, 0.5),
            (1.0, 0.632121, 1.0),
            (1.5, 0.776870, 1.0),
            (2.0, 0.864665, 1.0),
            (3.0, 0.950213, 1.0),
        ];
        for (swept, random, exhaustive) in table {
            assert_abs_diff_eq!(random_search_fraction(swept), random, epsilon = 5e-7);
            assert_abs_diff_eq!(exhaustive_fraction(swept), exhaustive, epsilon = 1e-12);
        }
    }

    #[test]
    fn hours_are_read_off_the_curve_or_continued_by_its_law() {
        // w 0.22 m, v 0.4 m/s, A 500 m2: 95 % by random search takes 4.728 h (COV-04), 99 % 7.268 h.
        let per_h = 0.22 * 0.4 * 3600.0 / 500.0;
        let hours: Vec<f64> = (0..=100).map(|index| f64::from(index) * 0.05).collect();
        let curve: Vec<f64> = hours.iter().map(|h| random_search_fraction(per_h * h)).collect();
        assert_abs_diff_eq!(
            hours_to(0.95, &hours, &curve, 0.0).unwrap(),
            4.728,
            epsilon = 1e-3
        );
        assert_abs_diff_eq!(
            hours_to(0.99, &hours, &curve, 0.0).unwrap(),
            7.268,
            epsilon = 1e-2
        );
        assert_eq!(hours_to(0.99, &hours, &curve, 0.02), None);
    }

    #[test]
    fn efficiency_is_nought_on_the_random_law_and_one_on_the_line() {
        assert_abs_diff_eq!(
            pattern_efficiency(1.0, random_search_fraction(1.0)).unwrap(),
            0.0,
            epsilon = 1e-12
        );
        assert_abs_diff_eq!(pattern_efficiency(1.0, 1.0).unwrap(), 1.0, epsilon = 1e-12);
        assert_eq!(pattern_efficiency(8.0, 1.0), None);
    }
}
