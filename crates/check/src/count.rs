//! Do cells, headline, fixes as logged and simulated runs say the same fraction?

use crate::Follows;
use tussock_locate::{PathMethod, Track};
use tussock_survey::Survey;
use tussock_survey::calibrate::{AsLogged, CONFLICT};
use tussock_survey::coverage_count::{CoverageCount, SMALL_ERROR_M};
use tussock_types::math;
use tussock_types::{Cells, Check, CheckKind, Estimate, Said};

/// The interval about its estimate, which both are then measured from.
fn ends(visited: Estimate) -> Option<(f64, f64)> {
    Some((visited.low? - visited.estimate, visited.high? - visited.estimate))
}

/// Squares hold single-precision numbers.
const ROUNDING: f64 = 1e-4;

/// The cells' sum against the headline, as a part of the lawn: no correction may be larger than the interval allows.
pub fn cell_sum(cells: &Cells, visited: Estimate) -> Option<(Check, Follows)> {
    let (low, high) = ends(visited)?;
    let (mut sum, mut lawn) = (0.0, 0.0);
    for (part, probability) in cells.lawn_fraction.iter().zip(&cells.visited_probability) {
        sum += f64::from(*part) * f64::from(*probability);
        lawn += f64::from(*part);
    }
    let fraction = sum / f64::max(lawn, 1e-9);
    let check = Check::of(
        CheckKind::CellSum,
        fraction - visited.estimate,
        (Some(low - ROUNDING), Some(high + ROUNDING)),
        Said::IntervalHoldsBoth {
            one_fraction: visited.estimate,
            other_fraction: fraction,
        },
    );
    Some((check, Follows::Holds { fraction }))
}

/// Mean of what a normal deviate is above zero, over its standard deviation: so far an error moves the edge of a pass outwards, and what
/// it moves inwards may lie under another pass.
const OUTWARDS: f64 = 0.399;

/// The count as logged against the corrected one, as a part of the lawn. Joined as they are, fixes make a longer path than was driven
/// and move the edges of passes; the correction takes off no more than these add.
pub fn as_logged(
    survey: &Survey<'_>,
    counted: &CoverageCount,
    visited: Estimate,
) -> Option<(Check, Follows)> {
    // Of a receiver that smooths its own positions the white part does not say what its errors add; the other road does.
    if survey.tracks.iter().any(|track| track.smooths) {
        return None;
    }
    let (low, high) = ends(visited)?;
    let drive = survey.drive().ok()?;
    let open = 1.0 - visited.estimate;
    let white_m = (survey.tracks.iter())
        .map(|track| track.noise.white_m)
        .fold(0.0, f64::max);
    // Every pass has two edges; what is open of the lawn is the part of them that no other pass covers.
    let edges_per_m = 2.0 * drive.path_m / drive.lawn_m2.max(1e-9) * open;
    let by_edges = OUTWARDS * white_m * edges_per_m;
    // A path that errors make so many times as long leaves the open ground to that power (random search, Koopman 1946).
    let longer = survey.tracks.iter().map(joined_ratio).fold(1.0, f64::max);
    let by_path = open - math::powf(open, longer);
    // Poor positions also leave the lawn, and a plan that lies beside them is laid there for the path alone: too few is no sign then.
    let is_precise = survey.tracks.iter().all(is_precise);
    let fraction = counted.as_logged_fraction();
    let check = Check::of(
        CheckKind::AsLogged,
        fraction - visited.estimate,
        (
            is_precise.then_some(low - by_edges),
            Some(high + by_edges + if is_precise { 0.0 } else { by_path }),
        ),
        Said::IntervalHoldsBoth {
            one_fraction: visited.estimate,
            other_fraction: fraction,
        },
    );
    Some((check, Follows::Holds { fraction }))
}

fn is_precise(track: &Track) -> bool {
    track.method == PathMethod::Legs
        && track.position_error_m() <= SMALL_ERROR_M
        && track.steps.is_empty()
        && track.carried.is_empty()
}

/// Length of the joined fixes over that of the drive, as the stated error has it: two errors of both axes in each step.
fn joined_ratio(track: &Track) -> f64 {
    let step_m = track.period_s * track.speed_mps.unwrap_or(0.0);
    match step_m > 0.0 {
        true => math::hypot(1.0, 2.0 * track.noise.white_m / step_m),
        false => 1.0,
    }
}

/// The count by the fitted path against the count as logged that simulated runs corrected, in standard deviations of the difference.
pub fn two_roads(by_path: Estimate, as_logged: AsLogged) -> (Check, Follows) {
    let check = Check::of(
        CheckKind::TwoRoads,
        as_logged.apart(by_path),
        (None, Some(CONFLICT)),
        Said::WaysDisagree {
            by_path_fraction: by_path.estimate,
            as_logged_fraction: as_logged.visited_fraction,
        },
    );
    // The road as logged is taken alone then, twice as wide.
    (check, Follows::Nothing)
}
