//! How far can positions have wandered while the machine drove straight?
//!
//! Question: a log that never stands shows no drift. How large can it be? Drift bends legs that were driven straight, and
//! longer legs more. Model: white noise of variance w² and a random walk of rate q (a first-order Gauss-Markov drift, seen
//! for less than its drift time). The mean square about the line fitted to a leg of time T is then w² + qT/15 (the mean
//! square of a Brownian path about its own regression line), and that of second differences at step h is 6w² + 2qh. Each leg
//! gives one q, and the median over all legs excludes turns and slips. Over a drift time the walk grows to σ² = qτ/2.
//!
//! Exact: the two mean squares. Approximate: the drift time cannot be seen within legs, so a customary value is used; a
//! median of skewed values lies below their mean, which a factor corrects (found on simulated walks); a machine that slips
//! sideways bends its legs too and counts as drift, so the result errs on the large side. One pass over the fixes.

use crate::blocks::Blocks;
use crate::noise::USUAL_DRIFT_TIME_S;
use crate::segment::{Part, PartKind};
use tussock_types::math;

/// Shorter legs are hardly bent.
const LEAST_LEG_S: f64 = 12.0;
/// Fewer legs show nothing.
const LEAST_LEGS: usize = 12;
/// Fewer fixes do not define a line.
const LEAST_FIXES: usize = 8;
/// Mean of the values over their median.
const MEAN_OVER_MEDIAN: f64 = 1.6;

/// Slow part of the error per axis that the straight legs allow; `None` with too few of them.
pub(crate) fn allowed_drift_m(runs: &[(Blocks, Vec<Part>)]) -> Option<f64> {
    let mut rates_m2_per_s: Vec<f64> = runs
        .iter()
        .flat_map(|(blocks, parts)| parts.iter().filter_map(|part| rate_m2_per_s(blocks, *part)))
        .collect();
    if rates_m2_per_s.len() < LEAST_LEGS {
        return None;
    }
    let usual_m2_per_s = MEAN_OVER_MEDIAN * math::median(&mut rates_m2_per_s)?.max(0.0);
    Some((0.5 * USUAL_DRIFT_TIME_S * usual_m2_per_s).sqrt())
}

/// Rate of the walk that bends one leg; below 0 if chance made the leg straighter than its noise.
fn rate_m2_per_s(blocks: &Blocks, part: Part) -> Option<f64> {
    // The first and the last fix may be in the turn.
    let (first, end) = (part.first + 1, part.last);
    if part.kind != PartKind::Leg || end < first + LEAST_FIXES {
        return None;
    }
    let time_s = &blocks.time_s[first..end];
    let leg_s = time_s[time_s.len() - 1] - time_s[0];
    if leg_s < LEAST_LEG_S {
        return None;
    }
    let count = time_s.len() as f64;
    let (from, to) = (blocks.place(first), blocks.place(end - 1));
    let (east_m, north_m) = (to.east_m - from.east_m, to.north_m - from.north_m);
    let length_m = math::hypot(east_m, north_m);
    if !(length_m > 0.0) {
        return None;
    }
    // Across the leg only: along it, speed changes too.
    let across_m: Vec<f64> = (first..end)
        .map(|index| {
            let at = blocks.place(index);
            ((at.north_m - from.north_m) * east_m - (at.east_m - from.east_m) * north_m) / length_m
        })
        .collect();
    let mean_s = time_s.iter().sum::<f64>() / count;
    let mean_m = across_m.iter().sum::<f64>() / count;
    let spread_s2: f64 = time_s.iter().map(|time_s| (time_s - mean_s).powi(2)).sum();
    let moment: f64 = time_s
        .iter()
        .zip(&across_m)
        .map(|(time_s, across_m)| (time_s - mean_s) * (across_m - mean_m))
        .sum();
    let slope_mps = moment / spread_s2;
    let about_line_m2 = time_s
        .iter()
        .zip(&across_m)
        .map(|(time_s, across_m)| (across_m - mean_m - slope_mps * (time_s - mean_s)).powi(2))
        .sum::<f64>()
        / (count - 2.0);
    let second_m2 = across_m
        .windows(3)
        .map(|three| (three[2] - 2.0 * three[1] + three[0]).powi(2))
        .sum::<f64>()
        / (count - 2.0);
    let step_s = leg_s / (count - 1.0);
    Some((about_line_m2 - second_m2 / 6.0) / (leg_s / 15.0 - step_s / 3.0))
}

#[cfg(test)]
mod tests {
    use super::*;
    use rand::SeedableRng;
    use rand_chacha::ChaCha8Rng;
    use rand_distr::{Distribution, StandardNormal};

    const SEED: u64 = 611;

    /// Legs of `leg_s` at one fix a second, white noise and a Gauss-Markov drift of ten minutes on both axes.
    fn drives(legs: usize, leg_s: usize, white_m: f64, drift_m: f64, seed: u64) -> Vec<(Blocks, Vec<Part>)> {
        let mut random = ChaCha8Rng::seed_from_u64(seed);
        let mut normal = || -> f64 { StandardNormal.sample(&mut random) };
        let keeps = math::exp(-1.0 / USUAL_DRIFT_TIME_S);
        let mut drift = [drift_m * normal(), drift_m * normal()];
        (0..legs)
            .map(|leg| {
                let (sin, cos) = math::sin_cos(leg as f64 * 2.4);
                let mut blocks = Blocks::default();
                for second in 0..=leg_s {
                    for axis in &mut drift {
                        *axis = keeps * *axis + drift_m * (1.0 - keeps * keeps).sqrt() * normal();
                    }
                    blocks.time_s.push((leg * 100 + second) as f64);
                    blocks
                        .east_m
                        .push(0.4 * second as f64 * cos + drift[0] + white_m * normal());
                    blocks
                        .north_m
                        .push(0.4 * second as f64 * sin + drift[1] + white_m * normal());
                }
                let part = Part {
                    kind: PartKind::Leg,
                    first: 0,
                    last: leg_s,
                };
                (blocks, vec![part])
            })
            .collect()
    }

    #[test]
    fn the_drift_of_simulated_walks_is_found_to_a_third() {
        for (white_m, drift_m) in [(0.0, 2.0), (0.02, 0.3), (0.1, 2.0), (0.01, 1.0)] {
            for leg_s in [15, 25, 40] {
                let found_m =
                    allowed_drift_m(&drives(400, leg_s, white_m, drift_m, SEED)).expect("enough legs");
                assert!(
                    (found_m / drift_m - 1.0).abs() < 0.33,
                    "{found_m} m for {drift_m} m, white {white_m} m, legs of {leg_s} s"
                );
            }
        }
    }

    #[test]
    fn straight_drives_of_a_good_receiver_allow_little() {
        for leg_s in [15, 25, 40] {
            let found_m = allowed_drift_m(&drives(400, leg_s, 0.01, 0.0, SEED)).expect("enough legs");
            assert!(found_m < 0.05, "{found_m} m, legs of {leg_s} s");
        }
    }

    #[test]
    fn few_or_short_legs_say_nothing() {
        assert_eq!(
            allowed_drift_m(&drives(LEAST_LEGS - 1, 30, 0.01, 0.3, SEED)),
            None
        );
        assert_eq!(allowed_drift_m(&drives(100, 10, 0.01, 0.3, SEED)), None);
    }
}
