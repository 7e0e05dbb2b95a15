//! How do positions wander while the machine stands?
//!
//! Question: how large are the white part and the slow part of the position error, and how fast does the slow part change?
//! The positions of a standing machine show nothing else. Model: first-order Gauss-Markov drift plus white noise. Exact maximum
//! likelihood by a scalar Kalman filter (innovations form, Schweppe 1965, DOI 10.1109/TIT.1965.1053737), with all stands and
//! both axes pooled; stands at one place share one mean, solved in closed form by filtering a column of ones as well
//! (generalised least squares). The scale drops out in closed form, so only two numbers are searched for: the ratio of the
//! two parts and the drift time, the latter with a weak prior. Good to 3 to 5 % for the rate at which drift walks, and to 10
//! to 20 % for its size and its time: one night does not show more.
//!
//! Cost: about 140 runs over the fixes at rest, some milliseconds.

use crate::blocks::Blocks;
use tussock_types::Place;
use tussock_types::math;

/// A stretch of standing time.
#[derive(Clone, Debug, Default)]
pub struct Stand {
    /// The fixes, averaged to about one a second.
    pub fixes: Blocks,
    /// Stands with the same number were at the same place.
    pub place: usize,
}

/// What the stands show.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct DriftFit {
    /// White part per axis, of one fix.
    pub white_m: f64,
    /// Slow part per axis.
    pub drift_m: f64,
    /// Drift time.
    pub drift_time_s: f64,
    /// Standing time behind it.
    pub stood_s: f64,
}

impl DriftFit {
    /// Rate at which the slow part walks.
    pub fn rate_m2_per_s(&self) -> f64 {
        2.0 * self.drift_m * self.drift_m / self.drift_time_s
    }
}

/// Less standing time shows nothing about the slow part.
const LEAST_STOOD_S: f64 = 600.0;
/// The coarse search uses about this many fixes.
const MOST_FIXES: usize = 3000;
const COARSE_ROUNDS: usize = 2;
/// Prior of the drift time: centre, and factor of one standard deviation.
const USUAL_TIME_S: f64 = 400.0;
const USUAL_TIME_FACTOR_LN: f64 = 0.8;
/// Fixes farther from the middle of their stand than this, in median deviations, are a fault and not scatter.
const FAULT: f64 = 9.0;

/// Fits the stands. `None` if there is too little standing time, or if positions are held.
pub fn fit(stands: &[Stand]) -> Option<DriftFit> {
    let stood_s: f64 = stands
        .iter()
        .filter_map(|stand| Some(stand.fixes.time_s.last()? - stand.fixes.time_s.first()?))
        .sum();
    if stood_s < LEAST_STOOD_S {
        return None;
    }
    let total: usize = stands.iter().map(|stand| stand.fixes.time_s.len()).sum();
    let stride = total.div_ceil(MOST_FIXES).max(1);
    let mut stands: Vec<Stand> = stands.iter().map(without_faults).collect();
    stands.retain(|stand| stand.fixes.time_s.len() > 10);
    let count: usize = stands.iter().map(|stand| stand.fixes.time_s.len()).sum();
    if count < 60 || held(&stands) {
        return None;
    }
    // Coarse grids on fewer fixes, then finer ones around the best on all.
    let coarse: Vec<Stand> = stands.iter().map(|stand| thinned(stand, stride)).collect();
    let mut best = (f64::INFINITY, 1.0, USUAL_TIME_S, 1.0);
    let (mut ratio_ln, mut time_ln) = (2.3, math::ln(USUAL_TIME_S));
    let (mut ratio_step, mut time_step) = (1.7_f64, 0.85_f64);
    for round in 0..6 {
        let reach: i32 = if round == 0 { 4 } else { 2 };
        let stands = if round < COARSE_ROUNDS { &coarse } else { &stands };
        if round == COARSE_ROUNDS {
            best.0 = f64::INFINITY;
        }
        let (middle_ratio, middle_time) = (ratio_ln, time_ln);
        for a in -reach..=reach {
            for b in -reach..=reach {
                let (ratio, time) = (
                    middle_ratio + f64::from(a) * ratio_step,
                    middle_time + f64::from(b) * time_step,
                );
                let prior = 0.5 * ((time - math::ln(USUAL_TIME_S)) / USUAL_TIME_FACTOR_LN).powi(2);
                let (nats, white_m2) = cost(stands, math::exp(ratio), math::exp(time));
                if nats + prior < best.0 {
                    best = (nats + prior, ratio, time, white_m2);
                    (ratio_ln, time_ln) = (ratio, time);
                }
            }
        }
        ratio_step *= 0.45;
        time_step *= 0.45;
    }
    let (nats, ratio, time, white_m2) = best;
    if !nats.is_finite() {
        return None;
    }
    Some(DriftFit {
        white_m: white_m2.sqrt(),
        drift_m: (white_m2 * math::exp(ratio)).sqrt(),
        drift_time_s: math::exp(time),
        stood_s,
    })
}

/// Cost in nats of a ratio (slow over white variance) and a drift time, with the white variance that fits them best.
fn cost(stands: &[Stand], ratio: f64, time_s: f64) -> (f64, f64) {
    let places = stands.iter().map(|stand| stand.place + 1).max().unwrap_or(0);
    // For each place: ones x ones, ones x east, ones x north.
    let mut ones = vec![[0.0_f64; 3]; places];
    let (mut squares, mut log_sum, mut count) = (0.0_f64, 0.0_f64, 0.0_f64);
    for stand in stands {
        let mut spread = ratio;
        let mut states = [0.0_f64; 3];
        let sums = &mut ones[stand.place];
        let (mut last_s, mut last_dt_s, mut keeps) = (f64::NAN, f64::NAN, 1.0);
        let (mut settled, mut weight, mut log_weight) = (f64::INFINITY, 0.0, 0.0);
        for at in 0..stand.fixes.time_s.len() {
            let time = stand.fixes.time_s[at];
            if at > 0 {
                let dt_s = time - last_s;
                if dt_s != last_dt_s {
                    keeps = math::exp(-dt_s / time_s);
                    last_dt_s = dt_s;
                }
                states.iter_mut().for_each(|state| *state *= keeps);
                spread = keeps * keeps * spread + ratio * (1.0 - keeps * keeps);
            }
            last_s = time;
            // On even steps the filter settles, and no more divisions are needed.
            if (spread - settled).abs() > 1e-12 * ratio {
                settled = spread;
                weight = 1.0 / (spread + 1.0);
                log_weight = math::ln(weight);
            }
            let gain = spread * weight;
            let seen = [1.0, stand.fixes.east_m[at], stand.fixes.north_m[at]];
            let surprise: [f64; 3] = std::array::from_fn(|column| seen[column] - states[column]);
            sums[0] += weight * surprise[0] * surprise[0];
            sums[1] += weight * surprise[0] * surprise[1];
            sums[2] += weight * surprise[0] * surprise[2];
            squares += weight * (surprise[1] * surprise[1] + surprise[2] * surprise[2]);
            log_sum -= 2.0 * log_weight;
            count += 2.0;
            for (state, surprise) in states.iter_mut().zip(surprise) {
                *state += gain * surprise;
            }
            spread *= weight;
        }
    }
    let mut means = 0.0_f64;
    for [one, east, north] in ones {
        if one > 0.0 {
            squares -= (east * east + north * north) / one;
            means += 2.0;
        }
    }
    let white_m2 = (squares / (count - means).max(1.0)).max(1e-12);
    (
        0.5 * (count * math::ln(white_m2) + log_sum + squares / white_m2),
        white_m2,
    )
}

/// Removes what lies far off the middle of a stand, or jumps away and back; moves the middle near zero to keep digits.
fn without_faults(stand: &Stand) -> Stand {
    let fixes = &stand.fixes;
    let deviation = |column: &[f64]| -> (f64, f64) {
        let mut sorted = column.to_vec();
        let middle = math::median(&mut sorted).unwrap_or(0.0);
        let mut off: Vec<f64> = column.iter().map(|value| (value - middle).abs()).collect();
        (middle, math::median(&mut off).unwrap_or(0.0))
    };
    let (east_m, east_off_m) = deviation(&fixes.east_m);
    let (north_m, north_off_m) = deviation(&fixes.north_m);
    let reach_m = FAULT * east_off_m.max(north_off_m).max(0.002);
    let mut kept = Blocks::default();
    for at in 0..fixes.time_s.len() {
        let place = Place::new(fixes.east_m[at], fixes.north_m[at]);
        if place.distance_m(Place::new(east_m, north_m)) <= reach_m {
            kept.time_s.push(fixes.time_s[at]);
            kept.east_m.push(place.east_m);
            kept.north_m.push(place.north_m);
        }
    }
    Stand {
        fixes: kept,
        place: stand.place,
    }
}

/// One fix in `stride`.
fn thinned(stand: &Stand, stride: usize) -> Stand {
    let some = |column: &[f64]| column.iter().step_by(stride).copied().collect();
    Stand {
        fixes: Blocks {
            time_s: some(&stand.fixes.time_s),
            east_m: some(&stand.fixes.east_m),
            north_m: some(&stand.fixes.north_m),
            ..Blocks::default()
        },
        place: stand.place,
    }
}

/// Whether the receiver held its positions: if fixes do not scatter at rest, they show nothing.
fn held(stands: &[Stand]) -> bool {
    let (mut same, mut steps) = (0_usize, 0_usize);
    for stand in stands {
        for at in 1..stand.fixes.time_s.len() {
            steps += 1;
            same += usize::from(
                stand.fixes.east_m[at] == stand.fixes.east_m[at - 1]
                    && stand.fixes.north_m[at] == stand.fixes.north_m[at - 1],
            );
        }
    }
    same * 2 > steps
}

/// Finds which stands were at one place: those that lie as near to the longest as their scatter allows.
pub fn same_place(stands: &mut [Stand]) {
    let lapse_s = |stand: &Stand| match (stand.fixes.time_s.first(), stand.fixes.time_s.last()) {
        (Some(first), Some(last)) => last - first,
        _ => 0.0,
    };
    let middles: Vec<(Place, f64)> = stands
        .iter()
        .map(|stand| {
            let middle = |column: &[f64]| math::median(&mut column.to_vec()).unwrap_or(0.0);
            let place = Place::new(middle(&stand.fixes.east_m), middle(&stand.fixes.north_m));
            let mut off_m: Vec<f64> = (0..stand.fixes.time_s.len())
                .map(|at| place.distance_m(Place::new(stand.fixes.east_m[at], stand.fixes.north_m[at])))
                .collect();
            (place, math::median(&mut off_m).unwrap_or(0.0))
        })
        .collect();
    let Some(longest) =
        (0..stands.len()).max_by(|a, b| lapse_s(&stands[*a]).total_cmp(&lapse_s(&stands[*b])))
    else {
        return;
    };
    let (home, spread_m) = middles[longest];
    let mut next = 1;
    for (stand, (place, own_m)) in stands.iter_mut().zip(&middles) {
        if place.distance_m(home) <= 0.5 + 3.0 * spread_m.max(*own_m) {
            stand.place = 0;
        } else {
            stand.place = next;
            next += 1;
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use rand::SeedableRng;
    use rand_chacha::ChaCha8Rng;
    use rand_distr::{Distribution, StandardNormal};

    const SEED: u64 = 20_260_503;

    /// Stands of an hour each at one place, drift running on between them.
    fn stands(count: usize, white_m: f64, drift_m: f64, time_s: f64, seed: u64) -> Vec<Stand> {
        let mut dice = ChaCha8Rng::seed_from_u64(seed);
        let mut normal = || -> f64 { StandardNormal.sample(&mut dice) };
        (0..count)
            .map(|number| {
                let mut fixes = Blocks::default();
                let keeps: f64 = math::exp(-1.0 / time_s);
                let mut drift = [drift_m * normal(), drift_m * normal()];
                for second in 0..3600 {
                    for axis in &mut drift {
                        *axis = keeps * *axis + drift_m * (1.0 - keeps * keeps).sqrt() * normal();
                    }
                    fixes.time_s.push(7200.0 * number as f64 + f64::from(second));
                    fixes.east_m.push(40.0 + drift[0] + white_m * normal());
                    fixes.north_m.push(-7.0 + drift[1] + white_m * normal());
                }
                Stand { fixes, place: 0 }
            })
            .collect()
    }

    fn middle(mut values: Vec<f64>) -> f64 {
        math::median(&mut values).expect("not empty")
    }

    /// The rate is what the path depends on: it must be right; size and time are only as good as one night is long.
    #[test]
    fn six_hours_of_standing_tell_white_and_rate() {
        for (white_m, drift_m, time_s) in [(0.01, 0.015, 600.0), (0.08, 0.3, 600.0), (0.3, 2.0, 300.0)] {
            let fits: Vec<DriftFit> = (0..7)
                .map(|run| fit(&stands(6, white_m, drift_m, time_s, SEED + run)).expect("stood long enough"))
                .collect();
            let of = |value: &dyn Fn(&DriftFit) -> f64| middle(fits.iter().map(value).collect());
            let white = of(&|fit| fit.white_m / white_m);
            let rate = of(&|fit| fit.rate_m2_per_s() / (2.0 * drift_m * drift_m / time_s));
            let size = of(&|fit| fit.drift_m / drift_m);
            let time = of(&|fit| fit.drift_time_s / time_s);
            assert!((white - 1.0).abs() < 0.02, "white {white}");
            assert!((rate - 1.0).abs() < 0.06, "rate {rate}");
            assert!((size - 1.0).abs() < 0.15, "size {size}");
            assert!((0.7..1.4).contains(&time), "time {time}");
        }
    }

    /// An excursion of a hundred metres happens in recorded data.
    #[test]
    fn an_excursion_does_not_move_the_fit() {
        let clean = stands(2, 0.08, 0.3, 600.0, SEED);
        let mut spoilt = clean.clone();
        for at in 500..520 {
            spoilt[0].fixes.east_m[at] += 100.0;
        }
        let (clean, spoilt) = (fit(&clean).expect("stands"), fit(&spoilt).expect("stands"));
        assert!(
            (spoilt.white_m / clean.white_m - 1.0).abs() < 0.02,
            "{spoilt:?} {clean:?}"
        );
        assert!((spoilt.rate_m2_per_s() / clean.rate_m2_per_s() - 1.0).abs() < 0.05);
    }

    #[test]
    fn held_positions_and_short_stands_tell_nothing() {
        let mut held = stands(1, 0.0, 0.0, 600.0, SEED);
        assert_eq!(fit(&held), None);
        held[0].fixes.time_s.truncate(300);
        held[0].fixes.east_m.truncate(300);
        held[0].fixes.north_m.truncate(300);
        assert_eq!(fit(&held), None);
        assert_eq!(fit(&[]), None);
    }

    /// The slow twin: the full covariance matrix, by Cholesky.
    #[test]
    fn the_filter_gives_the_likelihood_of_the_full_covariance() {
        let mut short = stands(1, 0.08, 0.3, 60.0, SEED).remove(0);
        for column in [
            &mut short.fixes.time_s,
            &mut short.fixes.east_m,
            &mut short.fixes.north_m,
        ] {
            column.truncate(60);
        }
        let (ratio, time_s) = (9.0, 80.0);
        let count = short.fixes.time_s.len();
        let mut lower = vec![vec![0.0_f64; count]; count];
        for row in 0..count {
            for column in 0..=row {
                let lag_s = short.fixes.time_s[row] - short.fixes.time_s[column];
                let mut value = ratio * math::exp(-lag_s / time_s) + f64::from(u8::from(row == column));
                value -= (0..column)
                    .map(|at| lower[row][at] * lower[column][at])
                    .sum::<f64>();
                lower[row][column] = if row == column {
                    value.sqrt()
                } else {
                    value / lower[column][column]
                };
            }
        }
        let solve = |seen: &[f64]| -> Vec<f64> {
            let mut out = vec![0.0; count];
            for row in 0..count {
                let known: f64 = (0..row).map(|at| lower[row][at] * out[at]).sum();
                out[row] = (seen[row] - known) / lower[row][row];
            }
            out
        };
        let dot = |a: &[f64], b: &[f64]| a.iter().zip(b).map(|(a, b)| a * b).sum::<f64>();
        let (one, east, north) = (
            solve(&vec![1.0; count]),
            solve(&short.fixes.east_m),
            solve(&short.fixes.north_m),
        );
        let rss = dot(&east, &east) + dot(&north, &north)
            - (dot(&one, &east).powi(2) + dot(&one, &north).powi(2)) / dot(&one, &one);
        let n = 2.0 * count as f64;
        let white_m2 = rss / (n - 2.0);
        let log_determinant: f64 = (0..count).map(|at| 2.0 * math::ln(lower[at][at])).sum();
        let slow = 0.5 * (n * math::ln(white_m2) + 2.0 * log_determinant + rss / white_m2);
        let (fast, fast_white_m2) = cost(&[short], ratio, time_s);
        assert!((fast - slow).abs() < 1e-6 * slow.abs(), "{fast} {slow}");
        assert!((fast_white_m2 / white_m2 - 1.0).abs() < 1e-8);
    }
}
