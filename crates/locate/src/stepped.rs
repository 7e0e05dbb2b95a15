//! Positions that jump and stay.
//!
//! Question: a receiver is restarted, or loses its fix and finds another, and from then on all positions are off by the same; where
//! was the machine? Method: the jump, less what was driven while it happened, is taken off all later positions. Where the ground is
//! known and each stretch has turns enough, the edges say better how the stretches lie to each other ([`crate::plan_fit`]); the one
//! with most turns stays. Approximate: what was driven across the jump is the mean of the speeds before and after. Cost: the path is
//! found twice, with the edges three times, in logs with such jumps alone.

use crate::plan_fit::TurnsFit;
use crate::turns::{self, Setback};
use crate::{Kept, PathMethod, Step, Track};
use tussock_plane::{Region, Vector};
use tussock_types::math;
use tussock_types::{Settings, Trace};

/// Speeds before and after a jump are taken over so long.
const PACE_S: f64 = 3.0;
/// Stretches that lie together as well as this are left alone.
const LEAST_M: f64 = 0.05;

/// The track of a trace, the jumps of its receiver taken off. `once` finds the path behind positions as they are; the fixes of the
/// answer are where they would have been without the jumps.
pub(crate) fn located(
    once: impl Fn(&[f64], &[f64]) -> Track,
    trace: &Trace,
    (east_m, north_m): (&[f64], &[f64]),
    ground: Option<&Region>,
    settings: &Settings,
) -> Track {
    let track = once(east_m, north_m);
    let is_followed = matches!(
        track.method,
        PathMethod::Legs | PathMethod::Smoothed | PathMethod::Anchored
    );
    if track.steps.is_empty() || !is_followed {
        return track;
    }
    let mut steps = track.steps.clone();
    let mut jumps: Vec<Vector> = Vec::with_capacity(steps.len());
    for step in &mut steps {
        let (jump, left_m) = jump(&track.kept, step);
        step.left_m = left_m;
        jumps.push(jump);
    }
    let times_s: Vec<f64> = steps.iter().map(|step| step.time_s).collect();
    let again = |jumps: &[Vector]| {
        let shifted = |column: &[f64], axis: fn(&Vector) -> f64| -> Vec<f64> {
            let by_m = |time_s: f64| -> f64 {
                let earlier = times_s.iter().zip(jumps).filter(|(step_s, _)| **step_s <= time_s);
                earlier.map(|(_, jump)| axis(jump)).sum()
            };
            let fixes = column.iter().zip(&trace.time_s);
            fixes.map(|(value_m, time_s)| value_m - by_m(*time_s)).collect()
        };
        let (east_m, north_m) = (
            shifted(east_m, |jump| jump.east),
            shifted(north_m, |jump| jump.north),
        );
        once(&east_m, &north_m)
    };
    let mut better = again(&jumps);
    if let Some(ground) = ground.filter(|_| better.method == PathMethod::Legs) {
        let fits = fits(&better, ground, settings, &steps);
        let mut is_moved = false;
        for (at, pair) in fits.windows(2).enumerate() {
            if let [Some(before), Some(after)] = pair {
                let apart = Vector::new(after.east_m - before.east_m, after.north_m - before.north_m);
                is_moved |= apart.length() > LEAST_M;
                jumps[at] = jumps[at] + apart;
                steps[at].left_m = 3.0 * math::hypot(before.sd_m, after.sd_m);
            }
        }
        if is_moved {
            better = again(&jumps);
        }
    }
    better.steps = steps;
    better
}

/// By how much positions jumped, what was driven meanwhile taken off, and how unsure that is.
fn jump(kept: &Kept, step: &Step) -> (Vector, f64) {
    let after = kept.time_s.partition_point(|time_s| *time_s < step.time_s);
    // What was carried is not among the fixes.
    let Some(before) = after.checked_sub(1).filter(|_| after < kept.len()) else {
        return (Vector::default(), step.left_m);
    };
    let pace = |from: usize, to: usize| {
        let lapse_s = kept.time_s[to] - kept.time_s[from];
        let way = Vector::between(kept.place(from), kept.place(to));
        if lapse_s > 0.0 {
            way * (1.0 / lapse_s)
        } else {
            Vector::default()
        }
    };
    let first = (kept.time_s).partition_point(|time_s| *time_s < kept.time_s[before] - PACE_S);
    let last = (kept.time_s).partition_point(|time_s| *time_s <= step.time_s + PACE_S) - 1;
    let (slow, fast) = (pace(first, before), pace(after, last));
    let lapse_s = step.time_s - kept.time_s[before];
    let driven = (slow + fast) * (0.5 * lapse_s);
    let unsure_m = 0.5 * lapse_s * (fast - slow).length().max(0.5 * (fast + slow).length());
    (Vector::new(step.east_m, step.north_m) - driven, unsure_m)
}

/// How the ground lies in each stretch between the steps.
fn fits(track: &Track, ground: &Region, settings: &Settings, steps: &[Step]) -> Vec<Option<TurnsFit>> {
    let expected = Setback::expected(&settings.machine);
    let ends_s = steps.iter().map(|step| step.time_s).chain([f64::INFINITY]);
    let mut start_s = f64::NEG_INFINITY;
    ends_s
        .map(|end_s| {
            let within = start_s..end_s;
            start_s = end_s;
            turns::plan_fit_of_stretch(track, &within, ground, &expected)
        })
        .collect()
}
