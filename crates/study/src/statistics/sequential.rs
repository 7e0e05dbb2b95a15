//! After how many nights is a change decided?
//!
//! Question: somebody looks every morning and stops as soon as a pocket looks better. A test made for one look then errs far
//! more often than it claims. After which night is the gain more than luck, however often somebody looked?
//!
//! Method. Luck deals in half hours of driving: without a change, those before and those after are of one kind, whatever
//! keeps the machine out, and any of them could have come before. So the half hours are shuffled between the two sides, and
//! the test counts how often the mean after lies as far above the mean before as it really does (a permutation test: Pitman
//! 1937, DOI 10.2307/2984124; with one added to both counts, Phipson & Smyth 2010, DOI 10.2202/1544-6115.1585). The allowed
//! error is spent over the nights: half of it on the first, a sixth on the second, one part in `k (k + 1)` on night `k`
//! (error spending: Lan & DeMets 1983, DOI 10.1093/biomet/70.3.659). All nights together then err by no more than the whole,
//! wherever the test stops.
//!
//! If a fitted machine explains the nights before, its simulated nights show the effect of luck as well, and more sharply
//! where ground was shut: the mean of as many of them (smoothed bootstrap, Silverman & Young 1987, DOI
//! 10.1093/biomet/74.3.469) hardly ever reaches the mean of those after. Either test may decide, each with half of the
//! error.
//!
//! Exact: the error, if half hours are independent. Approximate: that they are, since a machine stays for some minutes where
//! it is. Cost: 20,000 shuffles per night and pocket at most, a few milliseconds.

use super::{mean, normal_quantile, variance};
use rand::seq::SliceRandom;
use rand::{RngExt, SeedableRng};
use rand_chacha::ChaCha8Rng;
use tussock_types::math;

/// Allowed error over all nights, for the lawn, and as much for all pockets together.
const ERROR_FRACTION: f64 = 0.025;
/// Shuffles behind a decision.
const SHUFFLES: usize = 20_000;
/// Looks at most this many nights ahead.
const AHEAD: usize = 10;

/// Simulated nights are spread by this factor about their mean, because a fit does not know everything that differs from
/// night to night.
pub const MORE_THAN_FITTED: f64 = 1.15;
/// Nights are assumed to differ by at least this, whatever the simulated ones do.
const LEAST_SD_FRACTION: f64 = 0.02;

/// What half hours and nights visited of one pocket.
#[derive(Clone, Debug, PartialEq)]
pub struct BeforeAndSince {
    /// Half hours before the change.
    pub before_fraction: Vec<f64>,
    /// Half hours after it, night by night.
    pub after_fraction: Vec<Vec<f64>>,
    /// Whole nights after it, in the same order.
    pub nights_fraction: Vec<f64>,
    /// Simulated nights without the change, as long as those after; empty if no machine explains the side before.
    pub unchanged_fraction: Vec<f64>,
}

/// What the nights decide.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Decided {
    /// It is more, decided after this many nights.
    After(u32),
    /// Open: this many more nights like these would decide it.
    More(u32),
    /// Open, and many more nights would not decide it.
    Open,
}

/// The error that one of several tests, which share it, may spend on a night, counted from 1.
pub fn error_of_night(night: usize, tests: usize) -> f64 {
    ERROR_FRACTION / (night * (night + 1) * tests.max(1)) as f64
}

/// Whether and when it is decided that the nights after show more of a pocket than those before; `tests` share the error.
pub fn decided(seen: &BeforeAndSince, tests: usize, seed: u64) -> Decided {
    let mut dice = ChaCha8Rng::seed_from_u64(seed);
    let logged = seen.after_fraction.len();
    let (mut after, mut nights): (Vec<f64>, Vec<f64>) = (Vec::new(), Vec::new());
    for number in 0..logged + AHEAD {
        if number == logged && mean(&after) <= mean(&seen.before_fraction) {
            return Decided::Open;
        }
        after.extend(&seen.after_fraction[number % logged]);
        nights.extend(seen.nights_fraction.get(number % logged));
        let error_fraction = 0.5 * error_of_night(number + 1, tests);
        if is_beyond_luck(&seen.before_fraction, &after, error_fraction, &mut dice)
            || is_beyond_nights(&seen.unchanged_fraction, &nights, error_fraction, &mut dice)
        {
            return match (number + 1).checked_sub(logged) {
                None | Some(0) => Decided::After(number as u32 + 1),
                Some(more) => Decided::More(more as u32),
            };
        }
    }
    Decided::Open
}

/// Whether the mean of as many simulated nights hardly ever reaches that of the logged nights.
fn is_beyond_nights(unchanged: &[f64], nights: &[f64], error_fraction: f64, dice: &mut ChaCha8Rng) -> bool {
    if unchanged.len() < 2 || nights.is_empty() {
        return false;
    }
    let middle = mean(unchanged);
    let sd = variance(unchanged).sqrt();
    // Silverman's rule of thumb.
    let kernel_sd = (1.06 * sd * math::powf(unchanged.len() as f64, -0.2)).max(LEAST_SD_FRACTION);
    let least: f64 = nights.iter().sum();
    hardly_ever(error_fraction, || {
        let night = |dice: &mut ChaCha8Rng| {
            let value = unchanged[dice.random_range(0..unchanged.len())];
            let normal = normal_quantile(dice.random_range(1e-12..1.0));
            middle + MORE_THAN_FITTED * (value - middle) + kernel_sd * normal
        };
        nights.iter().map(|_| night(dice)).sum::<f64>() >= least
    })
}

/// Whether something comes true in no more than this fraction of the draws.
fn hardly_ever(error_fraction: f64, mut comes_true: impl FnMut() -> bool) -> bool {
    let most = error_fraction * (1 + SHUFFLES) as f64 - 1.0;
    let mut times = 0.0;
    (0..SHUFFLES).all(|_| {
        times += f64::from(u8::from(comes_true()));
        times <= most
    })
}

/// Whether shuffled half hours of one kind would hardly ever differ by as much: in no more than this fraction of the
/// shuffles.
fn is_beyond_luck(before: &[f64], after: &[f64], error_fraction: f64, dice: &mut ChaCha8Rng) -> bool {
    let mut all = [after, before].concat();
    // Given the sum of all, the sum after is sufficient.
    let seen: f64 = after.iter().sum();
    let least = seen - 1e-9 * seen.abs().max(1.0);
    hardly_ever(error_fraction, || {
        let (_, dealt) = all.partial_shuffle(dice, before.len());
        dealt.iter().sum::<f64>() >= least
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    const SEED: u64 = 20;
    const RUNS: u64 = 200;

    /// Half hours of a machine that comes by with some probability, and visits part of the pocket when it does.
    fn half_hours(dice: &mut ChaCha8Rng, odds: f64, count: usize) -> Vec<f64> {
        let visited = |dice: &mut ChaCha8Rng| {
            if dice.random_bool(odds) {
                dice.random_range(0.1..0.4)
            } else {
                0.0
            }
        };
        (0..count).map(|_| visited(dice)).collect()
    }

    /// Share of sequences of six nights that are decided, with one test in each, when the probability changes from one in
    /// five.
    fn share_decided(odds: f64) -> f64 {
        let is_decided = |run: &u64| {
            let mut dice = ChaCha8Rng::seed_from_u64(SEED + run);
            let of = BeforeAndSince {
                before_fraction: half_hours(&mut dice, 0.2, 16),
                after_fraction: (0..6).map(|_| half_hours(&mut dice, odds, 8)).collect(),
                nights_fraction: Vec::new(),
                unchanged_fraction: Vec::new(),
            };
            matches!(decided(&of, 1, *run), Decided::After(_))
        };
        (0..RUNS).filter(is_decided).count() as f64 / RUNS as f64
    }

    #[test]
    fn whoever_stops_at_the_first_good_night_errs_in_no_more_than_is_spent() {
        // Two standard deviations of a share of 0.025 in 200 runs are 0.022.
        let share = share_decided(0.2);
        assert!(share <= ERROR_FRACTION + 0.022, "{share}");
        assert!(share_decided(0.9) > 0.8);
    }

    #[test]
    fn luck_is_that_of_counting_all_ways_to_deal() {
        // Three empty half hours before, three full ones after: one way in twenty.
        let mut dice = ChaCha8Rng::seed_from_u64(SEED);
        assert!(is_beyond_luck(&[0.0; 3], &[1.0; 3], 0.056, &mut dice));
        assert!(!is_beyond_luck(&[0.0; 3], &[1.0; 3], 0.044, &mut dice));
        assert!(!is_beyond_luck(&[0.3; 3], &[0.3; 5], 0.999, &mut dice));
    }

    #[test]
    fn all_that_is_spent_on_any_number_of_nights_stays_below_the_whole() {
        let spent: f64 = (1..10_000).map(|night| error_of_night(night, 1)).sum();
        assert!(spent < ERROR_FRACTION && spent > 0.999 * ERROR_FRACTION);
    }

    #[test]
    fn a_gain_that_is_open_says_how_many_nights_like_these_would_decide_it() {
        let night = vec![0.0, 0.3, 0.3, 0.0];
        let mut of = BeforeAndSince {
            before_fraction: vec![0.0; 24],
            after_fraction: vec![night.clone()],
            nights_fraction: Vec::new(),
            unchanged_fraction: Vec::new(),
        };
        let Decided::More(more) = decided(&of, 1, SEED) else {
            panic!("a night is not enough");
        };
        of.after_fraction = vec![night; 1 + more as usize];
        assert_eq!(decided(&of, 1, SEED), Decided::After(1 + more));
        of.after_fraction = vec![vec![0.0; 4]];
        assert_eq!(decided(&of, 1, SEED), Decided::Open);
    }

    #[test]
    fn one_night_in_ground_that_no_simulated_night_reached_is_enough() {
        // The half hours alone leave it open: the machine was inside once, for long.
        let of = |unchanged: Vec<f64>| BeforeAndSince {
            before_fraction: vec![0.0; 16],
            after_fraction: vec![vec![0.0, 0.0, 0.0, 0.4, 0.5, 0.2, 0.0, 0.0]],
            nights_fraction: vec![0.9],
            unchanged_fraction: unchanged,
        };
        assert_ne!(decided(&of(Vec::new()), 1, SEED), Decided::After(1));
        assert_eq!(decided(&of(vec![0.0; 200]), 1, SEED), Decided::After(1));
        // If one night in ten gets in by luck, it is not.
        let lucky: Vec<f64> = (0..200)
            .map(|run| if run % 10 == 0 { 0.9 } else { 0.0 })
            .collect();
        assert_ne!(decided(&of(lucky), 1, SEED), Decided::After(1));
    }
}
