//! When was the machine carried or pushed?
//!
//! Question: which stretches of the log did the machine not drive? Anything that moves much faster than the machine can,
//! over seconds and well beyond the error, was carried, and so was anything that leaves the garden at a pace other than the
//! machine's. Those fixes are removed before anything is fitted, so that they never make a swath and never pull a leg.
//!
//! Method: windows of 3, 10 and 30 s whose chord no drive can explain; within each, the part that exceeds the usual speed
//! most (a cumulative sum against a rate between the two paces, Page 1954, DOI 10.1093/biomet/41.1-2.100). Approximate: a
//! machine that is carried no faster than 2.5 times its own speed, or slower than people walk, is taken for driving. Cost:
//! linear in fixes, plus the edges of the ground for each fix outside it.

use crate::{Kept, NoiseEstimate};
use rayon::prelude::*;
use std::ops::Range;
use tussock_plane::{Region, Vector};
use tussock_types::math;

/// A stretch in which the machine was carried or pushed.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Carried {
    /// Last fix that the machine drove itself (or the first of all).
    pub start_s: f64,
    /// First fix that it drove itself again (or the last of all).
    pub end_s: f64,
    /// Fixes left out.
    pub fixes: usize,
}

/// Faster than the usual speed by this factor is not driving (common practice, no source).
pub(crate) const FASTER: f64 = 2.5;
/// Nobody walks slower than this with a machine in hand (common practice, no source).
const SLOWEST_WALK_MPS: f64 = 0.8;
/// Windows to look through.
const WINDOWS_S: [f64; 3] = [3.0, 10.0, 30.0];
/// And beyond the error by this many standard deviations, over whole nights.
const SURE: f64 = 6.0;
/// If more than this fraction of the log would be carried, the usual speed must be wrong.
const MOST_FRACTION: f64 = 0.2;
/// Stretches this close together are one.
const ONE_S: f64 = 5.0;
/// This far out it is outside the garden whatever the plan's own error, and no machine drives at another pace there.
const FAR_OUT_M: f64 = 3.0;
const OTHER_PACE: f64 = 1.3;
/// Fewer are not worth a thread.
const FIXES_AT_ONCE: usize = 4096;

/// Standard deviation of the difference of two fixes this far apart in time, per axis.
fn step_sd_m(noise: &NoiseEstimate, lapse_s: f64) -> f64 {
    let wandered_m2 = noise.drift_rate_m2_per_s * lapse_s;
    let most_m2 = noise
        .drift_m
        .map_or(f64::INFINITY, |drift_m| 2.0 * drift_m * drift_m);
    (2.0 * noise.white_m * noise.white_m + wandered_m2.min(most_m2)).sqrt()
}

/// How far apart two fixes may be by error alone.
fn slack_m(kept: &Kept, noise: &NoiseEstimate, (from, to): (usize, usize)) -> f64 {
    let (before, after) = (kept.error_factor_at(from), kept.error_factor_at(to));
    let lapse_s = kept.time_s[to] - kept.time_s[from];
    // Where the receiver says that its error grows or shrinks, its slow part jumps.
    let jump_m = (after - before).abs() * noise.slow_m();
    SURE * (before.max(after) * step_sd_m(noise, lapse_s)) + 3.0 * jump_m
}

/// Removes carried stretches from the fixes; the rest is divided into runs there.
pub fn lift_out(
    kept: Kept,
    noise: &NoiseEstimate,
    speed_mps: Option<f64>,
    ground: Option<&Region>,
) -> (Kept, Vec<Carried>) {
    let Some(speed_mps) = speed_mps else {
        return (kept, Vec::new());
    };
    let (mut found, out) = rayon::join(
        || too_fast(&kept, noise, speed_mps),
        || ground.map(|ground| out_of_the_garden(&kept, noise, speed_mps, ground)),
    );
    found.extend(out.unwrap_or_default());
    let found = joined(&kept, found);
    let lapse_s = |range: &Range<usize>| kept.time_s[range.end - 1] - kept.time_s[range.start];
    let carried_s: f64 = found.iter().map(lapse_s).sum();
    let whole_s: f64 = kept.runs().iter().map(lapse_s).sum();
    if found.is_empty() || carried_s > MOST_FRACTION * whole_s {
        return (kept, Vec::new());
    }
    let mut left = Kept::default();
    let mut carried = Vec::new();
    let mut next = found.iter().peekable();
    let mut run = 0_u32;
    let mut last: Option<usize> = None;
    for index in 0..kept.len() {
        // The fixes at both ends are still the machine's own, unless nothing lies beyond them.
        while let Some(range) = next.next_if(|range| range.end <= index) {
            carried.push(lifted(&kept, range));
        }
        if next.peek().is_some_and(|range| is_inside(&kept, range, index)) {
            continue;
        }
        if let Some(last) = last {
            let is_across = next
                .peek()
                .is_some_and(|range| range.start <= last && index < range.end);
            run += u32::from(is_across || index != last + 1 || kept.run[index] != kept.run[last]);
        }
        last = Some(index);
        left.time_s.push(kept.time_s[index]);
        left.east_m.push(kept.east_m[index]);
        left.north_m.push(kept.north_m[index]);
        left.run.push(run);
        left.error_factor.extend(kept.error_factor.get(index));
    }
    carried.extend(next.map(|range| lifted(&kept, range)));
    if left.is_empty() {
        return (kept, Vec::new());
    }
    (left, carried)
}

/// Whether a fix of a stretch is removed with it: not the two that it shares with the drives before and after.
fn is_inside(kept: &Kept, range: &Range<usize>, index: usize) -> bool {
    let is_first = index == range.start && index > 0 && kept.run[index - 1] == kept.run[index];
    let is_last = index + 1 == range.end && range.end < kept.len() && kept.run[range.end] == kept.run[index];
    range.contains(&index) && !is_first && !is_last
}

fn lifted(kept: &Kept, range: &Range<usize>) -> Carried {
    Carried {
        start_s: kept.time_s[range.start],
        end_s: kept.time_s[range.end - 1],
        fixes: range
            .clone()
            .filter(|index| is_inside(kept, range, *index))
            .count(),
    }
}

/// Joins stretches that overlap or nearly touch; in order. Each holds its first and its last fix and one in between.
fn joined(kept: &Kept, mut ranges: Vec<Range<usize>>) -> Vec<Range<usize>> {
    ranges.sort_by_key(|range| range.start);
    let mut joined: Vec<Range<usize>> = Vec::new();
    for range in ranges {
        match joined.last_mut() {
            Some(last)
                if range.start < last.end
                    || kept.run[range.start] == kept.run[last.end - 1]
                        && kept.time_s[range.start] - kept.time_s[last.end - 1] < ONE_S =>
            {
                last.end = last.end.max(range.end);
            }
            _ => joined.push(range),
        }
    }
    joined
}

/// Stretches faster than the machine can drive.
fn too_fast(kept: &Kept, noise: &NoiseEstimate, speed_mps: f64) -> Vec<Range<usize>> {
    let limit_mps = (FASTER * speed_mps).max(SLOWEST_WALK_MPS);
    let between_mps = 0.5 * (speed_mps + limit_mps);
    let mut found: Vec<Range<usize>> = Vec::new();
    for window_s in WINDOWS_S {
        for run in kept.runs() {
            let mut start = run.start;
            for end in run.clone() {
                while start + 1 < end && kept.time_s[end] - kept.time_s[start + 1] >= window_s {
                    start += 1;
                }
                let lapse_s = kept.time_s[end] - kept.time_s[start];
                if lapse_s < window_s || lapse_s > 2.0 * window_s + 30.0 {
                    continue;
                }
                let chord_m = kept.place(start).distance_m(kept.place(end));
                let over_m = chord_m - limit_mps * lapse_s;
                if over_m > 0.0 && over_m > slack_m(kept, noise, (start, end)) {
                    found.push(fastest_part(kept, start..end + 1, chord_m, between_mps));
                }
            }
        }
    }
    found
}

/// The part of a window that exceeds a pace between driving and being carried by most.
fn fastest_part(kept: &Kept, window: Range<usize>, chord_m: f64, between_mps: f64) -> Range<usize> {
    let (from, to) = (kept.place(window.start), kept.place(window.end - 1));
    let way = Vector::between(from, to);
    let along = Vector::new(way.east / chord_m, way.north / chord_m);
    let (mut best_m, mut best) = (0.0, window.clone());
    let (mut ahead_m, mut start) = (0.0, window.start);
    for index in window.start + 1..window.end {
        let step_m = Vector::between(kept.place(index - 1), kept.place(index)).dot(along);
        ahead_m += step_m - between_mps * (kept.time_s[index] - kept.time_s[index - 1]);
        if ahead_m <= 0.0 {
            (ahead_m, start) = (0.0, index);
        } else if ahead_m > best_m {
            (best_m, best) = (ahead_m, start..index + 1);
        }
    }
    best
}

/// Stretches far outside the garden at a pace other than the machine's.
fn out_of_the_garden(
    kept: &Kept,
    noise: &NoiseEstimate,
    speed_mps: f64,
    ground: &Region,
) -> Vec<Range<usize>> {
    const PACE_WINDOW_S: f64 = 5.0;
    let sd_m = math::hypot(noise.white_m, noise.drift_m.unwrap_or(0.0));
    let reach_m = |index: usize| 0.4 + 3.0 * sd_m * kept.error_factor_at(index);
    let out_m: Vec<f64> = (0..kept.len())
        .into_par_iter()
        .with_min_len(FIXES_AT_ONCE)
        .map(|index| {
            let place = kept.place(index);
            if ground.contains(place) {
                0.0
            } else {
                ground.edge_distance_m(place)
            }
        })
        .collect();
    let mut found = Vec::new();
    for run in kept.runs() {
        let mut start: Option<usize> = None;
        let mut farthest_m = 0.0_f64;
        for index in run.start..=run.end {
            let off_m = out_m[..run.end].get(index).copied().unwrap_or(0.0);
            if off_m > reach_m(index) {
                start.get_or_insert(index);
                farthest_m = farthest_m.max(off_m - reach_m(index));
                continue;
            }
            if let Some(first) = start.take().filter(|_| farthest_m > FAR_OUT_M) {
                // The ways out and back in are part of it.
                let range = first.saturating_sub(1).max(run.start)..(index + 1).min(run.end);
                if pace_mps(kept, range.clone(), PACE_WINDOW_S)
                    > OTHER_PACE * speed_mps + 2.0 * step_sd_m(noise, PACE_WINDOW_S) / PACE_WINDOW_S
                {
                    found.push(range);
                }
            }
            farthest_m = 0.0;
        }
    }
    found
}

/// Median speed over windows of a stretch while the machine moves.
fn pace_mps(kept: &Kept, range: Range<usize>, window_s: f64) -> f64 {
    let mut paces_mps = Vec::new();
    let mut start = range.start;
    for end in range {
        while start < end && kept.time_s[end] - kept.time_s[start + 1] >= window_s {
            start += 1;
        }
        let lapse_s = kept.time_s[end] - kept.time_s[start];
        if lapse_s >= window_s {
            paces_mps.push(kept.place(start).distance_m(kept.place(end)) / lapse_s);
        }
    }
    let moving_mps = paces_mps.iter().copied().fold(0.0, f64::max) / 4.0;
    paces_mps.retain(|pace_mps| *pace_mps >= moving_mps);
    math::median(&mut paces_mps).unwrap_or(0.0)
}
