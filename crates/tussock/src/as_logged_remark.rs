//! Why does the count as logged differ from the estimate?
//!
//! Nothing is measured here: what the survey and the count know already is put in order, the first reason that holds first.

use crate::verdict::silent_fraction;
use tussock_locate::{SPARSE_PERIOD_S, Track};
use tussock_survey::Survey;
use tussock_survey::unseen::HiddenFraction;
use tussock_types::{Coverage, Said, math};

/// Hidden ground that explains so much of the difference is the reason.
const EXPLAINS: f64 = 0.5;

/// The reason, where the two lie farther apart than half of the interval.
pub(crate) fn as_logged_remark(
    survey: &Survey<'_>,
    coverage: &Coverage,
    hidden: HiddenFraction,
) -> Option<Said> {
    let (visited, as_logged_fraction) = (coverage.visited_fraction, coverage.as_logged_fraction);
    let half_width = 0.5 * (visited.high? - visited.low?);
    let more = as_logged_fraction - visited.estimate;
    if more.abs() <= half_width {
        return None;
    }
    let tracks = &survey.tracks;
    let period_s = tracks.iter().map(|track| track.period_s).fold(0.0, f64::max);
    let error_m = tracks.iter().map(logged_error_m).fold(0.0, f64::max);
    Some(if -more * EXPLAINS < hidden.expected_fraction && more < 0.0 {
        Said::AsLoggedSilent {
            as_logged_fraction,
            silent_fraction: silent_fraction(survey),
        }
    } else if period_s > SPARSE_PERIOD_S {
        Said::AsLoggedSparse {
            as_logged_fraction,
            period_s,
        }
    } else if more > 0.0 {
        Said::AsLoggedSpread {
            as_logged_fraction,
            error_m,
        }
    } else {
        Said::AsLoggedAside {
            as_logged_fraction,
            error_m,
        }
    })
}

/// How far logged positions are off, per axis.
fn logged_error_m(track: &Track) -> f64 {
    math::hypot(track.noise.white_m, track.reckoned_drift.drift_m())
}
