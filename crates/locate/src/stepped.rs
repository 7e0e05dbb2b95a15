//! What if positions jump and stay there?
//!
//! Question: a receiver restarts, or loses its fix and finds another, and from then on all positions are off by the same
//! amount; where was the machine? Method: the jump, less the distance driven while it happened, is subtracted from all later
//! positions. If the ground is known and each stretch has enough turns, the edges show more precisely how the stretches lie
//! to each other ([`crate::plan_fit`]); the one with most turns stays. Jumps that come more often are not restarts
//! ([`Track::are_restarts`]) and are not undone. Approximate: the distance driven across the jump comes from the mean of the
//! speeds before and after. Cost: the path is found twice, with edges three times, only in logs with such jumps.

use crate::plan_fit::TurnsFit;
use crate::turns::{self, Setback};
use crate::{Kept, PathMethod, Step, Track};
use tussock_plane::{Region, Vector};
use tussock_types::Settings;
use tussock_types::math;

/// Speeds before and after a jump are averaged over this time.
const PACE_S: f64 = 3.0;
/// Stretches that agree this well are left alone.
const LEAST_M: f64 = 0.05;

/// East and north of every fix.
type EastNorth = (Vec<f64>, Vec<f64>);

/// The track of a trace with the jumps of its receiver undone, and its positions without them; `None` if nothing jumped.
/// `once` finds the path of positions as they are; `time_s` increases.
pub(crate) fn located(
    once: impl Fn(&[f64], &[f64]) -> Track,
    time_s: &[f64],
    (east_m, north_m): (&[f64], &[f64]),
    ground: Option<&Region>,
    settings: &Settings,
) -> (Track, Option<EastNorth>) {
    let track = once(east_m, north_m);
    let is_followed = matches!(
        track.method,
        PathMethod::Legs | PathMethod::Smoothed | PathMethod::Anchored
    );
    if track.steps.is_empty() || !is_followed || !track.are_restarts() {
        return (track, None);
    }
    let mut steps = track.steps.clone();
    let mut jumps: Vec<Vector> = Vec::with_capacity(steps.len());
    for step in &mut steps {
        let (jump, left_m) = jump(&track.kept, step);
        step.left_m = left_m;
        jumps.push(jump);
    }
    let mut steady = without(&steps, &jumps, time_s, (east_m, north_m));
    let mut better = once(&steady.0, &steady.1);
    if let Some(ground) = ground.filter(|_| better.method == PathMethod::Legs) {
        let fits = fits(&better, ground, settings, &steps);
        let mut is_moved = false;
        for (at, pair) in fits.windows(2).enumerate() {
            if let [Some(before), Some(after)] = pair {
                let (before, after) = (before.offset, after.offset);
                let apart = Vector::new(after.east_m - before.east_m, after.north_m - before.north_m);
                is_moved |= apart.length() > LEAST_M;
                jumps[at] = jumps[at] + apart;
                steps[at].left_m = 3.0 * math::hypot(before.sd_m, after.sd_m);
            }
        }
        if is_moved {
            steady = without(&steps, &jumps, time_s, (east_m, north_m));
            better = once(&steady.0, &steady.1);
        }
    }
    better.steps = steps;
    (better, Some(steady))
}

/// Positions with all earlier jumps undone.
fn without(
    steps: &[Step],
    jumps: &[Vector],
    time_s: &[f64],
    (east_m, north_m): (&[f64], &[f64]),
) -> EastNorth {
    let mut sum = Vector::default();
    let sums: Vec<Vector> = std::iter::once(sum)
        .chain(jumps.iter().map(|jump| {
            sum = sum + *jump;
            sum
        }))
        .collect();
    let places = time_s.iter().zip(east_m.iter().zip(north_m));
    places
        .map(|(time_s, (east_m, north_m))| {
            let by = sums[steps.partition_point(|step| step.time_s <= *time_s)];
            (east_m - by.east, north_m - by.north)
        })
        .unzip()
}

/// By how much positions jumped, less the distance driven meanwhile, and how uncertain that is.
fn jump(kept: &Kept, step: &Step) -> (Vector, f64) {
    let after = kept.time_s.partition_point(|time_s| *time_s < step.time_s);
    // Carried stretches are not among the fixes.
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
            turns::plan_fit_of_stretch(track, &within, ground, &expected).filter(TurnsFit::is_trusted)
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn each_position_loses_the_jumps_before_it() {
        let step = |time_s: f64| Step {
            time_s,
            east_m: 0.0,
            north_m: 0.0,
            left_m: 0.0,
        };
        let jumps = [Vector::new(1.0, 0.0), Vector::new(-3.0, 2.0)];
        let (east_m, north_m) = without(
            &[step(1.0), step(2.0)],
            &jumps,
            &[0.0, 1.0, 1.5, 2.0, f64::NAN],
            (&[10.0; 5], &[20.0; 5]),
        );
        assert_eq!(east_m, [10.0, 9.0, 9.0, 12.0, 10.0]);
        assert_eq!(north_m, [20.0, 20.0, 20.0, 18.0, 20.0]);
    }
}
