//! How large is a difference?

use super::{mean, variance};

/// Cohen's d for pairs (d_z): mean difference over the standard deviation of the differences (Cohen, *Statistical Power
/// Analysis for the Behavioral Sciences*, 1988, section 2.3.5). `None` for fewer than two differences, or if all are equal.
pub fn cohen_d_paired(differences: &[f64]) -> Option<f64> {
    let spread = variance(differences).sqrt();
    (differences.len() >= 2 && spread > 0.0).then(|| mean(differences) / spread)
}

/// Cliff's delta: how often a value of `b` is above one of `a`, minus how often it is below, from -1 to 1 (Cliff, *Dominance
/// statistics*, 1993, DOI 10.1037/0033-2909.114.3.494). `None` if either is empty.
///
/// Cost: n log n.
pub fn cliffs_delta(a: &[f64], b: &[f64]) -> Option<f64> {
    if a.is_empty() || b.is_empty() {
        return None;
    }
    let mut sorted = a.to_vec();
    sorted.sort_by(f64::total_cmp);
    let sum: f64 = b
        .iter()
        .map(|value| {
            let below = sorted.partition_point(|other| other < value);
            let above = sorted.len() - sorted.partition_point(|other| other <= value);
            below as f64 - above as f64
        })
        .sum();
    Some(sum / (a.len() as f64 * b.len() as f64))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn effects_of_small_samples_worked_out_by_hand() {
        // Differences 1, 2, 3: mean 2, standard deviation 1.
        assert!((cohen_d_paired(&[1.0, 2.0, 3.0]).unwrap() - 2.0).abs() < 1e-12);
        assert_eq!(cohen_d_paired(&[1.0, 1.0]), None);
        assert_eq!(cohen_d_paired(&[1.0]), None);
        // 9 pairs: above in 3 + 2 + 1, below in 0 + 0 + 1, alike in the rest.
        assert!((cliffs_delta(&[1.0, 2.0, 3.0], &[4.0, 3.0, 2.0]).unwrap() - 5.0 / 9.0).abs() < 1e-12);
        // ALG-21: 42 pairs, U = 10 of the smaller side: delta = 1 - 2 U / 42.
        let (a, b) = (
            [1.0, 2.0, 3.0, 4.0, 5.0, 6.0, 7.0],
            [3.5, 4.5, 5.5, 6.5, 7.5, 8.5],
        );
        assert!((cliffs_delta(&a, &b).unwrap() - (1.0 - 20.0 / 42.0)).abs() < 1e-12);
        assert_eq!(cliffs_delta(&a, &[]), None);
    }

    proptest::proptest! {
        #[test]
        fn delta_is_what_all_pairs_say_and_turns_with_the_sides(
            a in proptest::collection::vec(-5_i32..5, 1..20), b in proptest::collection::vec(-5_i32..5, 1..20),
        ) {
            let real = |values: &[i32]| values.iter().map(|value| f64::from(*value)).collect::<Vec<_>>();
            let found = cliffs_delta(&real(&a), &real(&b)).unwrap();
            let slow: i32 = a.iter().flat_map(|one| b.iter().map(move |other| (other - one).signum())).sum();
            assert!((found - f64::from(slow) / (a.len() * b.len()) as f64).abs() < 1e-12);
            assert!((found + cliffs_delta(&real(&b), &real(&a)).unwrap()).abs() < 1e-12);
        }
    }
}
