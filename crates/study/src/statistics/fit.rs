//! Does a sample follow a law?

use tussock_types::math;

/// How far a sample is from a law.
#[derive(Clone, Copy, Debug, PartialEq, serde::Serialize, serde::Deserialize)]
pub struct LawFit {
    /// Largest distance between the sample's distribution and the law's.
    pub distance_fraction: f64,
    /// Probability of a distance at least this large if the law holds and values are independent.
    pub probability: f64,
    /// Values.
    pub values: u64,
}

/// Up to this many values the probability is exact.
const EXACT_UP_TO: usize = 140;

/// The test of Kolmogorov and Smirnov against a law without free parameters, given by its distribution function. `None` without
/// values.
///
/// The probability is exact up to 140 values (Marsaglia, Tsang & Wang, *Evaluating Kolmogorov's distribution*, 2003, DOI
/// 10.18637/jss.v008.i18); beyond that it is the limit with Vrbik's correction (*Small-sample corrections to
/// Kolmogorov-Smirnov test statistic*, 2018), good to 0.0005. If a parameter of the law was taken from the same sample, the
/// probability comes out too large.
pub fn kolmogorov_smirnov(values: &[f64], below: impl Fn(f64) -> f64) -> Option<LawFit> {
    if values.is_empty() {
        return None;
    }
    let mut sorted = values.to_vec();
    sorted.sort_by(f64::total_cmp);
    let count = sorted.len() as f64;
    let distance = sorted.iter().enumerate().fold(0.0_f64, |most, (index, value)| {
        let law = below(*value);
        most.max(law - index as f64 / count)
            .max((index as f64 + 1.0) / count - law)
    });
    Some(LawFit {
        distance_fraction: distance,
        probability: if values.len() <= EXACT_UP_TO {
            (1.0 - exactly_below(values.len(), distance)).clamp(0.0, 1.0)
        } else {
            limit_above(corrected(count, distance))
        },
        values: values.len() as u64,
    })
}

/// The distance times the root of the number, shifted so that the limit holds for few values too.
fn corrected(count: f64, distance: f64) -> f64 {
    let scaled = count.sqrt() * distance;
    scaled + 1.0 / (6.0 * count.sqrt()) + (scaled - 1.0) / (4.0 * count)
}

/// Probability of a larger value in the limit of many values.
fn limit_above(lambda: f64) -> f64 {
    if lambda < 0.2 {
        return 1.0;
    }
    let mut sum = 0.0;
    for term in 1..=100 {
        let term = f64::from(term);
        let sign = if term % 2.0 == 1.0 { 2.0 } else { -2.0 };
        let add = sign * math::exp(-2.0 * term * term * lambda * lambda);
        sum += add;
        if add.abs() < 1e-15 {
            break;
        }
    }
    sum.clamp(0.0, 1.0)
}

/// Probability that the distance of `count` values stays below: an entry of a matrix to the power of `count`.
fn exactly_below(count: usize, distance: f64) -> f64 {
    let n = count as f64;
    let reach = distance * distance * n;
    if reach > 7.24 || (reach > 3.76 && count > 99) {
        // The upper tail, from the same paper: seven digits, and no large matrices.
        return 1.0 - 2.0 * math::exp(-(2.000_071 + 0.331 / n.sqrt() + 1.409 / n) * reach);
    }
    let k = (n * distance).floor() as usize + 1;
    let size = 2 * k - 1;
    let h = k as f64 - n * distance;
    let mut step = vec![0.0; size * size];
    for row in 0..size {
        for column in 0..size {
            if row + 1 >= column {
                step[row * size + column] = 1.0;
            }
        }
    }
    for row in 0..size {
        step[row * size] -= h.powi(row as i32 + 1);
        step[(size - 1) * size + row] -= h.powi((size - row) as i32);
    }
    if 2.0 * h - 1.0 > 0.0 {
        step[(size - 1) * size] += (2.0 * h - 1.0).powi(size as i32);
    }
    for row in 0..size {
        for column in 0..size {
            let below = (row + 1).saturating_sub(column);
            for divisor in 1..=below {
                step[row * size + column] /= divisor as f64;
            }
        }
    }
    // Powers of the matrix, scaled so that no entry overflows.
    let product = |a: &[f64], b: &[f64]| {
        let mut c = vec![0.0; size * size];
        for row in 0..size {
            for inner in 0..size {
                let left = a[row * size + inner];
                if left != 0.0 {
                    for column in 0..size {
                        c[row * size + column] += left * b[inner * size + column];
                    }
                }
            }
        }
        c
    };
    let mut power: Vec<f64> = (0..size * size)
        .map(|at| if at / size == at % size { 1.0 } else { 0.0 })
        .collect();
    // Each step is divided by its number, which builds up count! gradually.
    for number in 1..=count {
        power = product(&power, &step);
        let scale = number as f64 / n;
        for entry in &mut power {
            *entry *= scale;
        }
    }
    power[(k - 1) * size + k - 1]
}

#[cfg(test)]
mod tests {
    use super::*;

    // ALG-20: scipy kstest, exact.
    #[test]
    fn distances_and_probabilities_are_those_of_the_reference() {
        let uniform = [0.1, 0.25, 0.4, 0.55, 0.7, 0.95];
        let found = kolmogorov_smirnov(&uniform, |value| value).unwrap();
        assert!((found.distance_fraction - 0.133_333_333).abs() < 1e-8);
        assert!((found.probability - 0.99928).abs() < 1e-5, "{found:?}");
        let waits = [5.0, 12.0, 18.0, 31.0, 44.0, 70.0, 95.0, 140.0];
        let found = kolmogorov_smirnov(&waits, |value| -math::exp_m1(-value / 50.0_f64)).unwrap();
        assert!((found.distance_fraction - 0.128_403_036).abs() < 1e-8);
        assert!((found.probability - 0.996_547).abs() < 1e-5, "{found:?}");
        assert_eq!(kolmogorov_smirnov(&[], |value| value), None);
    }

    #[test]
    fn one_value_has_the_law_that_can_be_worked_out_by_hand() {
        // With one value the distance is max(u, 1 - u): P(D < d) = 2 d - 1.
        for distance in [0.55, 0.7, 0.95] {
            assert!((exactly_below(1, distance) - (2.0 * distance - 1.0)).abs() < 1e-12);
        }
    }

    #[test]
    fn the_limit_meets_the_exact_law() {
        for distance in [0.06, 0.09, 0.12] {
            let limit = limit_above(corrected(140.0, distance));
            let exact = 1.0 - exactly_below(140, distance);
            assert!((limit - exact).abs() < 5e-4, "{distance}: {limit} for {exact}");
        }
        // Half of all samples are farther off than 0.82757 over the root of their number (Kolmogorov 1933).
        assert!((limit_above(0.827_573_56) - 0.5).abs() < 1e-6);
    }
}
