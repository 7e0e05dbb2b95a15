//! After how many nights is a change decided?
//!
//! Question: somebody looks every morning and stops as soon as a pocket looks better. A test made for one look then errs far more
//! often than it says. After which night is the gain more than luck, however often one looked?
//!
//! Method. Half hours of driving are what luck deals out: without a change those before and those after are of one kind, whatever keeps
//! the machine out, and any of them could have been before. So the half hours are shuffled between the two sides, and it is counted how
//! often the mean after lies as far above the mean before as it does (a permutation test: Pitman 1937, DOI 10.2307/2984124; with
//! one added to both counts, Phipson & Smyth 2010, DOI 10.2202/1544-6115.1585). The error is spent over the nights: half of it on the
//! first, a sixth on the second, one in `k (k + 1)` on night `k` (error spending: Lan & DeMets 1983, DOI 10.1093/biomet/70.3.659).
//! All nights together then err in no more than the whole, wherever one stops.
//!
//! Exact: the error, if half hours are dealt out independently. Approximate: that they are; a machine stays for some minutes where it is.
//! Cost: 20,000 shuffles a night and pocket, some milliseconds.

use rand::SeedableRng;
use rand::seq::SliceRandom;
use rand_chacha::ChaCha8Rng;

/// Error of all nights, for the lawn, and as much for all pockets together.
const ERROR_FRACTION: f64 = 0.025;
/// Shuffles behind a decision.
const SHUFFLES: usize = 20_000;
/// Nights are looked ahead by so many.
const AHEAD: usize = 10;

/// What half hours visited, of one pocket.
#[derive(Clone, Debug)]
pub(super) struct HalfHours {
    /// Before the change.
    pub(super) before: Vec<f64>,
    /// After it, night by night.
    pub(super) after: Vec<Vec<f64>>,
}

/// What nights decide.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Decided {
    /// More, after so many nights.
    After(u32),
    /// Open: so many more nights like these decide it.
    More(u32),
    /// Open, and many more would not decide it.
    Open,
}

/// Error that may be spent on a night, counted from 1, by one of some tests that share it.
pub(super) fn error_of_night(night: usize, tests: usize) -> f64 {
    ERROR_FRACTION / (night * (night + 1) * tests.max(1)) as f64
}

/// Whether and when the nights after are decided to show more of a pocket than those before; `tests` share the error.
pub(super) fn decided(half_hours: &HalfHours, tests: usize, seed: u64) -> Decided {
    let mut dice = ChaCha8Rng::seed_from_u64(seed);
    let seen = half_hours.after.len();
    let mut after: Vec<f64> = Vec::new();
    for (number, night) in half_hours.after.iter().enumerate() {
        after.extend(night);
        let error_fraction = error_of_night(number + 1, tests);
        if is_beyond_luck(&half_hours.before, &after, error_fraction, &mut dice) {
            return Decided::After(number as u32 + 1);
        }
    }
    if mean(&after) <= mean(&half_hours.before) {
        return Decided::Open;
    }
    for more in 1..=AHEAD {
        after.extend(&half_hours.after[(more - 1) % seen]);
        let error_fraction = error_of_night(seen + more, tests);
        if is_beyond_luck(&half_hours.before, &after, error_fraction, &mut dice) {
            return Decided::More(more as u32);
        }
    }
    Decided::Open
}

/// Whether half hours of one kind, dealt out anew, would hardly ever differ by as much: in no more than this part of the deals.
fn is_beyond_luck(before: &[f64], after: &[f64], error_fraction: f64, dice: &mut ChaCha8Rng) -> bool {
    let mut all = [after, before].concat();
    // With the sum of all given, the sum after says it all.
    let seen: f64 = after.iter().sum();
    let least = seen - 1e-9 * seen.abs().max(1.0);
    let most = error_fraction * (1 + SHUFFLES) as f64 - 1.0;
    let mut as_far = 0.0;
    (0..SHUFFLES).all(|_| {
        let (_, dealt) = all.partial_shuffle(dice, before.len());
        as_far += f64::from(u8::from(dealt.iter().sum::<f64>() >= least));
        as_far <= most
    })
}

fn mean(values: &[f64]) -> f64 {
    values.iter().sum::<f64>() / values.len().max(1) as f64
}

#[cfg(test)]
mod tests {
    use super::*;
    use rand::RngExt;

    const SEED: u64 = 20;
    const RUNS: u64 = 200;

    /// Half hours of a machine that comes by with some odds, and visits some of the pocket when it does.
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

    /// Share of rows of six nights that are decided, one test in each, when odds change from one in five.
    fn share_decided(odds: f64) -> f64 {
        let is_decided = |run: &u64| {
            let mut dice = ChaCha8Rng::seed_from_u64(SEED + run);
            let of = HalfHours {
                before: half_hours(&mut dice, 0.2, 8),
                after: (0..6).map(|_| half_hours(&mut dice, odds, 8)).collect(),
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
        let mut of = HalfHours {
            before: vec![0.0; 20],
            after: vec![night.clone()],
        };
        let Decided::More(more) = decided(&of, 1, SEED) else {
            panic!("a night is not enough");
        };
        of.after = vec![night; 1 + more as usize];
        assert_eq!(decided(&of, 1, SEED), Decided::After(1 + more));
        of.after = vec![vec![0.0; 4]];
        assert_eq!(decided(&of, 1, SEED), Decided::Open);
    }
}
