//! When exactly did the machine arrive, and when did it leave?
//!
//! Fixes come about once a second, and a turn lies between them. Given the velocities on both sides, arrival and departure
//! are linear in the fixes around the corner: least squares over the corner's place (which absorbs the drift) and the two
//! times, with the fixes assigned again to leg, wait and leg a few times. The usual wait is a weak prior.

use super::chain::{Drive, Span};
use crate::segment::PartKind;
use tussock_types::math;

/// Fixes within this time on either side are used.
const WINDOW_S: f64 = 6.0;
/// The two ends of a longer stand are treated separately.
const WAIT_S: f64 = 8.0;
/// Standard deviation of the usual wait.
const WAIT_SD_S: f64 = 1.0;
/// No event is moved by more than this.
const MOST_S: f64 = 2.0;
/// No machine's clock is believed to be more precise than this.
const SHARPEST_S: f64 = 0.08;

/// Improves the times of all corners of a drive. `noise_m` is the error of a fix against its neighbours.
pub fn sharpen(drive: &mut Drive, speed_mps: f64, usual_wait_s: f64, noise_m: f64) {
    let spans = &drive.spans;
    let legs: Vec<usize> = (0..spans.len())
        .filter(|index| spans[*index].kind == PartKind::Leg)
        .collect();
    let mut found = Vec::with_capacity(legs.len());
    for pair in legs.windows(2) {
        let (before, after) = (spans[pair[0]], spans[pair[1]]);
        let pair_s = (before.end_s, after.start_s);
        let solved = |before, after: Option<Span>, usual_wait_s| {
            solve(drive, before, after, pair_s, usual_wait_s, speed_mps, noise_m)
        };
        let (arrive, leave) = if pair_s.1 - pair_s.0 > WAIT_S {
            (solved(Some(before), None, None), solved(None, Some(after), None))
        } else {
            let times = solved(Some(before), Some(after), Some(usual_wait_s));
            (times, times)
        };
        found.push((
            pair[0],
            pair[1],
            arrive.map(|times| times.0),
            leave.map(|times| times.1),
        ));
    }
    for (before, after, arrive, leave) in found {
        let spans = &mut drive.spans;
        if let Some((arrive_s, sd_s)) = arrive {
            let earliest_s = 0.5 * (spans[before].start_s + spans[before].end_s);
            spans[before].end_s = arrive_s
                .max(earliest_s.max(spans[before].end_s - MOST_S))
                .min(spans[before].end_s + MOST_S);
            spans[before].timing_s[1] = sd_s.max(SHARPEST_S);
        }
        if let Some((leave_s, sd_s)) = leave {
            // Never before the middle of the previous leg: times must increase.
            let first_s = 0.5 * (spans[before].start_s + spans[before].end_s);
            let latest_s = 0.5 * (spans[after].start_s + spans[after].end_s);
            spans[after].start_s = leave_s
                .max(
                    first_s
                        .max(spans[after].start_s - MOST_S)
                        .min(spans[after].start_s),
                )
                .min(latest_s.min(spans[after].start_s + MOST_S));
            spans[after].timing_s[0] = sd_s.max(SHARPEST_S);
        }
        if spans[after].start_s < spans[before].end_s {
            let middle_s = 0.5 * (spans[after].start_s + spans[before].end_s);
            spans[after].start_s = middle_s;
            spans[before].end_s = middle_s;
        }
        // Whatever lies in between fills the time in between.
        let (start_s, end_s) = (spans[before].end_s, spans[after].start_s);
        let count = after - before - 1;
        for (number, span) in spans[before + 1..after].iter_mut().enumerate() {
            let share = |part: usize| start_s + (end_s - start_s) * part as f64 / count as f64;
            span.start_s = share(number);
            span.end_s = share(number + 1);
        }
    }
}

/// Usual speed, from the fixes along legs whose directions are known: slope of the way along each leg over time, without its
/// ends, weighted by what white noise and drift leave of it. `None` with too few legs.
pub fn pace(drives: &[Drive], white_m: f64, drift_rate_m2_per_s: f64) -> Option<f64> {
    const LEAST_LEGS: usize = 12;
    const END_S: f64 = 2.0;
    let mut slopes: Vec<(f64, f64)> = Vec::new();
    for drive in drives {
        for span in &drive.spans {
            let lapse_s = span.end_s - span.start_s;
            let fixes = drive.fixes(span.start_s + END_S, span.end_s - END_S);
            if span.kind != PartKind::Leg || lapse_s < 10.0 || fixes.len() < 4 {
                continue;
            }
            let along_m = |at: usize| {
                drive.blocks.east_m[at] * span.along[0] + drive.blocks.north_m[at] * span.along[1]
            };
            let count = fixes.len() as f64;
            let middle_s = drive.blocks.time_s[fixes.clone()].iter().sum::<f64>() / count;
            let middle_m = fixes.clone().map(along_m).sum::<f64>() / count;
            let (mut tt, mut tx) = (0.0, 0.0);
            for at in fixes {
                let time_s = drive.blocks.time_s[at] - middle_s;
                tt += time_s * time_s;
                tx += time_s * (along_m(at) - middle_m);
            }
            // Slope of a random walk over a stretch: 6/5 of its rate over the stretch.
            let variance = white_m * white_m / tt + 1.2 * drift_rate_m2_per_s / (lapse_s - 2.0 * END_S);
            slopes.push((tx / tt, 1.0 / (variance + 1e-6)));
        }
    }
    if slopes.len() < LEAST_LEGS {
        return None;
    }
    let mut bare: Vec<f64> = slopes.iter().map(|(slope, _)| *slope).collect();
    let middle_mps = math::median(&mut bare)?;
    let (mut sum, mut weights) = (0.0, 0.0);
    for (slope, weight) in slopes {
        if (slope - middle_mps).powi(2) * weight < 9.0 {
            sum += slope * weight;
            weights += weight;
        }
    }
    let speed_mps = if weights > 0.0 { sum / weights } else { middle_mps };
    (speed_mps > 0.0).then_some(speed_mps)
}

/// Usual wait at a turn: the one with which the fixes around all corners agree best, when the time of each turn is free.
/// `None` with too few turns.
pub fn usual_wait_s(drives: &[Drive], speed_mps: f64) -> Option<f64> {
    const LEAST_TURNS: usize = 12;
    const STEP_S: f64 = 0.25;
    const GRID: usize = 21;
    let mut costs = [0.0; GRID];
    let mut turns = 0;
    for drive in drives {
        for triple in drive.spans.windows(3) {
            let direct = triple[0].kind == PartKind::Leg && triple[1].kind == PartKind::Leg;
            let waited = triple[0].kind == PartKind::Leg
                && triple[1].kind == PartKind::Halt
                && triple[2].kind == PartKind::Leg
                && triple[1].end_s - triple[1].start_s < 6.0;
            let after = if direct {
                triple[1]
            } else if waited {
                triple[2]
            } else {
                continue;
            };
            let before = triple[0];
            if before.end_s - before.start_s < WINDOW_S || after.end_s - after.start_s < WINDOW_S {
                continue;
            }
            turns += 1;
            let middle_s = 0.5 * (before.end_s + after.start_s);
            for (number, cost) in costs.iter_mut().enumerate() {
                *cost += turn_cost(drive, before, after, middle_s, STEP_S * number as f64, speed_mps);
            }
        }
    }
    if turns < LEAST_TURNS {
        return None;
    }
    let best = (0..GRID).min_by(|a, b| costs[*a].total_cmp(&costs[*b]))?;
    // A parabola through the best and its neighbours.
    let shift = if best > 0 && best + 1 < GRID {
        let (low, here, high) = (costs[best - 1], costs[best], costs[best + 1]);
        let bend = low - 2.0 * here + high;
        if bend > 0.0 {
            (0.5 * (low - high) / bend).clamp(-0.5, 0.5)
        } else {
            0.0
        }
    } else {
        0.0
    };
    Some(STEP_S * (best as f64 + shift))
}

/// Least sum of squares around a corner for a given wait.
fn turn_cost(
    drive: &Drive,
    before: Span,
    after: Span,
    mut middle_s: f64,
    wait_s: f64,
    speed_mps: f64,
) -> f64 {
    let fixes = drive.fixes(middle_s - WINDOW_S - 1.0, middle_s + WINDOW_S + 1.0);
    let count = fixes.len() as f64;
    let mut best = f64::INFINITY;
    for _ in 0..4 {
        let (arrive_s, leave_s) = (middle_s - 0.5 * wait_s, middle_s + 0.5 * wait_s);
        let (mut sum, mut sum_t) = ([0.0; 2], [0.0; 2]);
        let (mut tt, mut tr, mut rr) = (0.0, 0.0, 0.0);
        for at in fixes.clone() {
            let time_s = drive.blocks.time_s[at];
            let place = [drive.blocks.east_m[at], drive.blocks.north_m[at]];
            for axis in 0..2 {
                let (slope, known) = if time_s < arrive_s {
                    (
                        -speed_mps * before.along[axis],
                        speed_mps * before.along[axis] * (time_s - arrive_s),
                    )
                } else if time_s > leave_s {
                    (
                        -speed_mps * after.along[axis],
                        speed_mps * after.along[axis] * (time_s - leave_s),
                    )
                } else {
                    (0.0, 0.0)
                };
                let residual = place[axis] - known;
                sum[axis] += residual;
                sum_t[axis] += slope;
                tt += slope * slope;
                tr += slope * residual;
                rr += residual * residual;
            }
        }
        for axis in 0..2 {
            tt -= sum_t[axis] * sum_t[axis] / count;
            tr -= sum_t[axis] * sum[axis] / count;
            rr -= sum[axis] * sum[axis] / count;
        }
        best = best.min(rr);
        if !(tt > 0.0) {
            break;
        }
        middle_s += (tr / tt).clamp(-0.7, 0.7);
    }
    best
}

type Times = ((f64, f64), (f64, f64));

/// Arrival and departure with their standard deviations.
fn solve(
    drive: &Drive,
    before: Option<Span>,
    after: Option<Span>,
    (mut arrive_s, mut leave_s): (f64, f64),
    usual_wait_s: Option<f64>,
    speed_mps: f64,
    noise_m: f64,
) -> Option<Times> {
    let from_s = match before {
        Some(span) => span.start_s.max(arrive_s - WINDOW_S),
        None => leave_s - WINDOW_S,
    };
    let to_s = match after {
        Some(span) => span.end_s.min(leave_s + WINDOW_S),
        None => arrive_s + WINDOW_S,
    };
    let fixes = drive.fixes(from_s, to_s);
    if fixes.len() < 4 {
        return None;
    }
    let velocity = |span: Option<Span>| {
        span.map_or([0.0; 2], |span| {
            [speed_mps * span.along[0], speed_mps * span.along[1]]
        })
    };
    let (into, onward) = (velocity(before), velocity(after));
    let weight = 1.0 / (noise_m * noise_m);
    let mut sd_s = (1.0, 1.0);
    for _ in 0..5 {
        // Unknown: corner (2), arrival, leaving. The corner is eliminated.
        let count = fixes.len() as f64;
        let (mut sum, mut sum_a, mut sum_b) = ([0.0; 2], [0.0; 2], [0.0; 2]);
        let (mut aa, mut ab, mut bb, mut ar, mut br) = (0.0, 0.0, 0.0, 0.0, 0.0);
        for at in fixes.clone() {
            let time_s = drive.blocks.time_s[at];
            let place = [drive.blocks.east_m[at], drive.blocks.north_m[at]];
            for axis in 0..2 {
                // Place = corner + into (t - arrival) before, corner + onward (t - leaving) after.
                let (slope_a, slope_b, known) = if before.is_some() && time_s < arrive_s {
                    (-into[axis], 0.0, into[axis] * time_s)
                } else if after.is_some() && time_s > leave_s {
                    (0.0, -onward[axis], onward[axis] * time_s)
                } else {
                    (0.0, 0.0, 0.0)
                };
                // Times relative to the present guess, to keep digits.
                let residual = place[axis] - known - slope_a * arrive_s - slope_b * leave_s;
                sum[axis] += residual;
                sum_a[axis] += slope_a;
                sum_b[axis] += slope_b;
                aa += slope_a * slope_a;
                ab += slope_a * slope_b;
                bb += slope_b * slope_b;
                ar += slope_a * residual;
                br += slope_b * residual;
            }
        }
        for axis in 0..2 {
            aa -= sum_a[axis] * sum_a[axis] / count;
            ab -= sum_a[axis] * sum_b[axis] / count;
            bb -= sum_b[axis] * sum_b[axis] / count;
            ar -= sum_a[axis] * sum[axis] / count;
            br -= sum_b[axis] * sum[axis] / count;
        }
        // A weak pull to the present guess, and to the usual wait.
        let hold = 1.0 / (MOST_S * MOST_S);
        let (mut aa, mut ab, mut bb, mut ar, mut br) = (
            aa * weight + hold,
            ab * weight,
            bb * weight + hold,
            ar * weight,
            br * weight,
        );
        if let Some(usual_s) = usual_wait_s {
            let trust = 1.0 / (WAIT_SD_S * WAIT_SD_S);
            let off_s = usual_s - (leave_s - arrive_s);
            aa += trust;
            bb += trust;
            ab -= trust;
            ar -= trust * off_s;
            br += trust * off_s;
        }
        let determinant = aa * bb - ab * ab;
        if !(determinant > 0.0) {
            return None;
        }
        arrive_s += ((bb * ar - ab * br) / determinant).clamp(-1.0, 1.0);
        leave_s += ((aa * br - ab * ar) / determinant).clamp(-1.0, 1.0);
        if leave_s < arrive_s {
            let middle_s = 0.5 * (arrive_s + leave_s);
            (arrive_s, leave_s) = (middle_s, middle_s);
        }
        sd_s = ((bb / determinant).sqrt(), (aa / determinant).sqrt());
    }
    (arrive_s.is_finite() && leave_s.is_finite()).then_some(((arrive_s, sd_s.0), (leave_s, sd_s.1)))
}
