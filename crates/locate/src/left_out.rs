//! Are fixes as far from the path as their error law says?
//!
//! Method: fixes that are left out are predicted from the fixes before and after on the same straight leg, or, where edges hold the path, by
//! all fixes before; the spread of what is left is compared with the stated one. Approximate: a leg that is not straight looks like error.
//!
//! Cost: one pass over the fixes.

use crate::{PathMethod, Track};
use tussock_types::math;

/// Fixes are predicted from those this long before and after: longer than receivers smooth over, shorter than most legs.
const LAG_S: f64 = 3.0;
/// Positions may err by this factor more than stated: the sky at the station and over the lawn differ by as much (recorded:
/// 1.5 to 1.6).
pub const MOST_RATIO: f64 = 2.0;
/// Fewer fixes than this do not show the spread.
const LEAST_FIXES: usize = 200;
/// Half of the squared lengths of a normal pair lie below this many variances, nineteen in twenty below the other (chi
/// squared, two degrees).
const HALF_CHI2: f64 = 1.386;
const MOST_CHI2: f64 = 5.991;

/// Spread of the fixes that are left out over the stated one: the larger one of the middle and of nineteen in twenty. `None` without straight
/// legs, or with too few fixes on them.
pub fn error_ratio(track: &Track) -> Option<f64> {
    match (&track.anchored, track.method) {
        (Some(anchored), _) => Some(anchored.surprise.sqrt()),
        (None, PathMethod::Legs) => leg_ratio(track),
        _ => None,
    }
}

fn leg_ratio(track: &Track) -> Option<f64> {
    let kept = &track.kept;
    let step = (LAG_S / track.period_s).round().max(1.0) as usize;
    let lag_s = step as f64 * track.period_s;
    let noise = &track.noise;
    let variance_m2 = 1.5 * noise.white_m.powi(2) + 0.5 * lag_s * noise.drift_rate_m2_per_s;
    let mut squares: Vec<f64> = Vec::new();
    let mut index = 0;
    for leg in track.straight_legs() {
        while index < kept.len() && kept.time_s[index] < leg.start_s {
            index += 1;
        }
        let first = index;
        while index < kept.len() && kept.time_s[index] <= leg.end_s {
            index += 1;
        }
        for at in (first + step..).take_while(|at| at + step < index) {
            let (before, after) = (at - step, at + step);
            let lapse_s = kept.time_s[after] - kept.time_s[before];
            if kept.run[before] != kept.run[after] || (lapse_s - 2.0 * lag_s).abs() > 0.2 * lag_s {
                continue;
            }
            let share = (kept.time_s[at] - kept.time_s[before]) / lapse_s;
            let off = |column: &[f64]| column[at] - column[before] - share * (column[after] - column[before]);
            let square_m2 = off(&kept.east_m).powi(2) + off(&kept.north_m).powi(2);
            squares.push(square_m2 / (variance_m2 * kept.error_factor_at(at).powi(2)));
        }
    }
    if squares.len() < LEAST_FIXES {
        return None;
    }
    squares.sort_by(f64::total_cmp);
    let half = math::quantile(&squares, 0.5)? / HALF_CHI2;
    let most = math::quantile(&squares, 0.95)? / MOST_CHI2;
    Some(half.max(most).sqrt())
}

/// Whether its positions err by more than its error law says.
pub fn errs_more(track: &Track) -> bool {
    error_ratio(track).is_some_and(|ratio| ratio > MOST_RATIO)
}
