//! Is the promise kept?
//!
//! A promise is a fraction of the lawn within a number of days. Every run of that many consecutive nights is examined: what
//! it visited by itself, whatever came before. The worst one decides, with the uncertainty of the visited fraction: the
//! promise is kept or broken if the probability exceeds 95 % on one side; otherwise the log cannot tell. A log shorter than
//! the promise can show that the promise is already kept, or that it can no longer be kept because more ground is missed
//! than it allows; otherwise it cannot tell.
//!
//! Approximate: errors of the visited fraction are taken as normal, and as equal in all runs of nights.

use crate::nights::Nights;
use tussock_types::math;
use tussock_types::{Coverage, Estimate, Promise, PromiseVerdict, Settings};

/// A verdict is given beyond this probability.
const SURE: f64 = 0.95;
/// The ends of a 90 % interval are this many standard deviations apart.
const APART: f64 = 2.0 * Estimate::END_SDS;
/// A visited fraction is never known better than this.
const LEAST_SD: f64 = 0.001;

/// The answer if the log shows too little, or if the lawn is drawn from the drive and nobody knows what lies beyond it.
pub const CANNOT_TELL: Promise = Promise {
    verdict: PromiseVerdict::CannotTell,
    probability: None,
};

/// Whether the promise is kept, and how likely.
pub fn promise(coverage: &Coverage, nights: &Nights, settings: &Settings) -> Promise {
    let promised = settings.promise.visited_fraction;
    let visited = coverage.visited_fraction;
    let sd = visited
        .low
        .zip(visited.high)
        .map_or(LEAST_SD, |(low, high)| ((high - low) / APART).max(LEAST_SD));
    let kept = |fraction: f64| 0.5 * math::erfc(-(fraction - promised) / sd / std::f64::consts::SQRT_2);
    // The runs of nights are counted from one path; the estimate includes its bias.
    let counted = nights
        .nights
        .last()
        .and_then(|night| night.visited_so_far_fraction)
        .unwrap_or(visited.estimate);
    let worst = nights
        .stretches_fraction
        .iter()
        .map(|fraction| fraction + visited.estimate - counted)
        .reduce(f64::min);
    let (verdict, probability) = match worst {
        Some(fraction) => {
            let probability = kept(fraction);
            let verdict = if probability >= SURE {
                PromiseVerdict::Kept
            } else if probability <= 1.0 - SURE {
                PromiseVerdict::Broken
            } else {
                PromiseVerdict::CannotTell
            };
            (verdict, Some(probability))
        }
        None if kept(visited.estimate) >= SURE => (PromiseVerdict::Kept, Some(kept(visited.estimate))),
        None if coverage.missed_m2 / coverage.lawn_m2.max(1e-9) > 1.0 - promised + sd => {
            (PromiseVerdict::Broken, Some(0.0))
        }
        None => (PromiseVerdict::CannotTell, None),
    };
    Promise { verdict, probability }
}

#[cfg(test)]
mod tests {
    use super::*;
    use tussock_types::{ActivityHours, Estimate, Night};

    fn coverage(estimate: f64, missed_m2: f64) -> Coverage {
        Coverage {
            lawn_m2: 1000.0,
            reachable_m2: None,
            visited_m2: 1000.0 * estimate,
            missed_m2,
            not_yet_m2: 0.0,
            unseen_m2: 0.0,
            sliver_m2: 0.0,
            visited_fraction: Estimate {
                estimate,
                low: Some(estimate - 0.005),
                high: Some(estimate + 0.005),
            },
            as_logged_fraction: estimate,
            as_logged_differs: None,
            cut_width_m: 0.22,
            cell_m: 0.02,
            cell_error_fraction: 0.0,
            realisations: 1,
            lawns: Vec::new(),
        }
    }

    fn nights(stretches: &[f64]) -> Nights {
        Nights {
            nights: vec![Night {
                date: None,
                start_s: 0.0,
                end_s: 1.0,
                hours: ActivityHours::default(),
                visited_fraction: None,
                visited_so_far_fraction: None,
                dark: None,
            }],
            stretches_fraction: stretches.to_vec(),
        }
    }

    // The promise of the defaults: 95 % within 3 days.
    #[test]
    fn the_worst_stretch_decides_and_short_logs_say_only_what_is_sure() {
        let settings = Settings::default();
        let verdict = |estimate, missed_m2, stretches: &[f64]| {
            promise(&coverage(estimate, missed_m2), &nights(stretches), &settings).verdict
        };
        assert_eq!(verdict(0.99, 0.0, &[0.97, 0.96, 0.98]), PromiseVerdict::Kept);
        assert_eq!(verdict(0.99, 0.0, &[0.97, 0.93, 0.98]), PromiseVerdict::Broken);
        assert_eq!(
            verdict(0.99, 0.0, &[0.97, 0.951, 0.98]),
            PromiseVerdict::CannotTell
        );
        assert_eq!(verdict(0.97, 0.0, &[]), PromiseVerdict::Kept);
        assert_eq!(verdict(0.90, 20.0, &[]), PromiseVerdict::CannotTell);
        assert_eq!(verdict(0.90, 80.0, &[]), PromiseVerdict::Broken);
    }
}
