//! Do cells, headline, fixes as logged and simulated runs give the same fraction?

use crate::Follows;
use tussock_locate::{PathMethod, Track};
use tussock_survey::Survey;
use tussock_survey::calibrate::{AsLogged, CONFLICT};
use tussock_survey::coverage_count::{CoverageCount, SMALL_ERROR_M};
use tussock_types::math;
use tussock_types::{Cells, Check, CheckKind, Estimate, Said};

/// The ends of the interval around its estimate, from which both ways of counting are measured.
fn ends(visited: Estimate) -> Option<(f64, f64)> {
    Some((visited.low? - visited.estimate, visited.high? - visited.estimate))
}

/// The squares hold single-precision numbers.
const ROUNDING: f64 = 1e-4;

/// The sum over cells against the headline, as a part of the lawn: no correction may be larger than the interval allows.
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

/// Mean of the positive part of a normal deviate, over its standard deviation: an error moves the edge of a pass outwards by
/// this much, while whatever it moves inwards may be covered by another pass.
const OUTWARDS: f64 = 0.399;

/// The count as logged against the corrected one, as a part of the lawn. Simply joined, the fixes make a longer path than
/// was driven and move the edges of passes; the correction may take off no more than these effects add.
pub fn as_logged(
    survey: &Survey<'_>,
    counted: &CoverageCount,
    visited: Estimate,
) -> Option<(Check, Follows)> {
    // If a receiver smooths its own positions, its white part does not show what its errors add; `two_roads` handles that
    // case.
    if survey.tracks.iter().any(|track| track.smooths) {
        return None;
    }
    let (low, high) = ends(visited)?;
    let drive = survey.drive().ok()?;
    let open = 1.0 - visited.estimate;
    let white_m = (survey.tracks.iter())
        .map(|track| track.noise.white_m)
        .fold(0.0, f64::max);
    // Every pass has two edges; the open part of the lawn is the share of them that no other pass covers.
    let edges_per_m = 2.0 * drive.path_m / drive.lawn_m2.max(1e-9) * open;
    let by_edges = OUTWARDS * white_m * edges_per_m;
    // If errors make a path this many times as long, the open ground falls to that power of itself (random search, Koopman
    // 1946).
    let longer = survey.tracks.iter().map(joined_ratio).fold(1.0, f64::max);
    let by_path = open - math::powf(open, longer);
    // Poor positions also leave the lawn, and a displaced plan is moved for the path alone, so a count that is too low shows
    // nothing then.
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

/// Length of the joined fixes over that of the drive, as the stated error implies: each step has two errors in both axes.
fn joined_ratio(track: &Track) -> f64 {
    let step_m = track.period_s * track.speed_mps.unwrap_or(0.0);
    match step_m > 0.0 {
        true => math::hypot(1.0, 2.0 * track.noise.white_m / step_m),
        false => 1.0,
    }
}

/// The count by the fitted path against the count as logged, corrected by simulated runs, in standard deviations of the
/// difference.
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
    // Then only the road as logged is used, with twice the width.
    (check, Follows::Nothing)
}
