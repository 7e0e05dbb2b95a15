//! Which fixes can be believed?
//!
//! Fixes with a poor dilution of precision are removed first. The rest is cut wherever two neighbours are farther apart than
//! the machine can drive, and the chain of stretches that keeps most fixes is used: a bad first fix does not condemn the
//! good ones that follow, and a burst of jumps is dropped as a whole. If positions jump and stay there, the chain continues
//! beyond the jump at the price of a minute's fixes: the receiver made a step, the log is divided into two stretches there,
//! and both are kept. Linear in fixes; quadratic only in the number of jumps that follow each other within `LOOK_BACK`
//! stretches.

use crate::{Gap, Kept, Step, noise};
use tussock_types::math;
use tussock_types::{FixQuality, PositionSettings, Trace};

/// A chain may skip this many stretches: a log with more jumps in a row is not that of a machine.
const LOOK_BACK: usize = 64;
/// If positions jump for less than this, it is a burst: two steps, there and back, would then cost as many fixes as they
/// keep.
const STEP_STAYS_S: f64 = 60.0;
/// And at least this many fixes if the log is sparse.
const STEP_STAYS_FIXES: f64 = 8.0;

/// What passed.
#[derive(Clone, Debug, Default)]
pub struct Gated {
    /// The fixes to use, divided into runs.
    pub kept: Kept,
    /// Silences between the runs.
    pub gaps: Vec<Gap>,
    /// Steps between the runs.
    pub steps: Vec<Step>,
    /// First and last used fix; of all fixes, if those before or after make a silence.
    pub read_s: Option<(f64, f64)>,
    /// Removed for poor quality.
    pub quality: usize,
    /// Removed as jumps.
    pub jumps: usize,
}

/// If two fixes are further apart, nothing shows where a mower went: in this time it drives about 50 m and turns ten times
/// on a usual lawn (common practice, no source). Five times the sparsest period, 30 s, at which turns are still put back.
const LONGEST_HOP_S: f64 = 150.0;

/// The time between two fixes that counts as a silence, in a log with this usual period.
pub fn silence_s(settings: &PositionSettings, period_s: f64) -> f64 {
    settings
        .max_silence_s
        .unwrap_or((5.0 * period_s).clamp(10.0, LONGEST_HOP_S))
}

/// The factor over the usual error for each fix, from its dilution of precision.
///
/// Only clearly poorer values count: a dilution that varies with the satellites says nothing about a single fix.
fn scales(trace: &Trace, chosen: &[usize]) -> Vec<f32> {
    const CLEARLY: f32 = 1.5;
    const MOST: f32 = 10.0;
    const LEAST_TOLD: f64 = 0.9;
    let mut told: Vec<f64> = chosen
        .iter()
        .map(|index| f64::from(trace.hdop[*index]))
        .filter(|hdop| hdop.is_finite() && *hdop > 0.0)
        .collect();
    if (told.len() as f64) < LEAST_TOLD * chosen.len() as f64 {
        return Vec::new();
    }
    let Some(usual) = math::median(&mut told) else {
        return Vec::new();
    };
    let scales: Vec<f32> = chosen
        .iter()
        .map(|index| (trace.hdop[*index] / usual as f32).min(MOST))
        .map(|scale| if scale >= CLEARLY { scale } else { 1.0 })
        .collect();
    if scales.iter().all(|scale| *scale <= 1.0) {
        return Vec::new();
    }
    scales
}

/// Applies the outlier filter and divides the trace into runs at silences and where the log says that reception was lost.
///
/// `drift_m` is the slow part of the error that is assumed: where the receiver says that its error becomes several times as
/// large, positions jump by as much. Nothing drives faster than `max_speed_mps` from fix to fix.
pub fn gate(
    trace: &Trace,
    east_m: &[f64],
    north_m: &[f64],
    settings: &PositionSettings,
    drift_m: f64,
    max_speed_mps: f64,
) -> Gated {
    let believable = |index: usize| {
        !(f64::from(trace.hdop[index]) > settings.max_hdop)
            && !is_no_measurement(trace.quality[index])
            && east_m[index].is_finite()
            && north_m[index].is_finite()
            && trace.time_s[index].is_finite()
    };
    let good: Vec<usize> = (0..trace.len()).filter(|index| believable(*index)).collect();
    let quality = trace.len() - good.len();

    let columns = |indices: &[usize]| Kept {
        time_s: indices.iter().map(|index| trace.time_s[*index]).collect(),
        east_m: indices.iter().map(|index| east_m[*index]).collect(),
        north_m: indices.iter().map(|index| north_m[*index]).collect(),
        run: indices.iter().map(|index| trace.segment[*index]).collect(),
        error_factor: scales(trace, indices),
    };
    let rough = columns(&good);
    let period_s = noise::usual_period_s(&rough);
    let white_m = noise::roughness(&rough, period_s).white_m;
    let silence_s = silence_s(settings, period_s);

    let chain = Chain::of(&rough, max_speed_mps, (white_m, drift_m), period_s);
    let jumps = good.len() - chain.fixes.len();
    let chosen: Vec<usize> = chain.fixes.iter().map(|index| good[*index]).collect();
    let mut kept = columns(&chosen);

    let mut gaps = Vec::new();
    let mut steps = Vec::new();
    let mut run = 0_u32;
    let mut segment = kept.run.first().copied().unwrap_or(0);
    for index in 0..kept.len() {
        if index > 0 {
            let start_s = kept.time_s[index - 1];
            let end_s = kept.time_s[index];
            if kept.run[index] != segment || end_s - start_s > silence_s {
                segment = kept.run[index];
                run += 1;
                gaps.push(Gap {
                    start_s,
                    end_s,
                    moved_m: kept.place(index).distance_m(kept.place(index - 1)),
                });
            } else if chain.steps.binary_search(&index).is_ok() {
                run += 1;
                steps.push(Step {
                    time_s: end_s,
                    east_m: kept.east_m[index] - kept.east_m[index - 1],
                    north_m: kept.north_m[index] - kept.north_m[index - 1],
                    left_m: kept.place(index).distance_m(kept.place(index - 1)),
                });
            }
        }
        kept.run[index] = run;
    }
    Gated {
        read_s: read_s(trace, &kept, silence_s),
        kept,
        gaps,
        steps,
        quality,
        jumps,
    }
}

/// First and last used fix; of all fixes, if those before or after make a silence.
fn read_s(trace: &Trace, kept: &Kept, silence_s: f64) -> Option<(f64, f64)> {
    let (first_s, last_s) = kept.time_s.first().copied().zip(kept.time_s.last().copied())?;
    let mut times_s = trace.time_s.iter().copied().filter(|time_s| time_s.is_finite());
    let (start_s, end_s) = (times_s.next()?, times_s.next_back().unwrap_or(last_s));
    let beyond = |used_s: f64, read_s: f64| {
        if (used_s - read_s).abs() > silence_s {
            read_s
        } else {
            used_s
        }
    };
    Some((beyond(first_s, start_s), beyond(last_s, end_s)))
}

/// The fixes that one machine may have driven.
struct Chain {
    /// Their indices.
    fixes: Vec<usize>,
    /// Which of them come after a step: places in `fixes`.
    steps: Vec<usize>,
}

impl Chain {
    fn of(fixes: &Kept, max_speed_mps: f64, (white_m, drift_m): (f64, f64), period_s: f64) -> Self {
        let possible = |from: usize, to: usize| {
            let (before, after) = (fixes.error_factor_at(from), fixes.error_factor_at(to));
            // Two noisy fixes differ by sqrt(2) w per axis; eight of those are beyond any luck of a long log.
            let slack_m = 0.5 + 8.0 * white_m * before.max(after) + 3.0 * drift_m * (after - before).abs();
            let reach_m = max_speed_mps * (fixes.time_s[to] - fixes.time_s[from]) + slack_m;
            fixes.place(from).distance_m(fixes.place(to)) <= reach_m
        };
        let mut stretches: Vec<(usize, usize)> = Vec::new();
        let mut start = 0;
        for index in 1..=fixes.len() {
            if index == fixes.len() || !possible(index - 1, index) {
                stretches.push((start, index));
                start = index;
            }
        }
        if fixes.is_empty() || stretches.len() == 1 {
            return Self {
                fixes: (0..fixes.len()).collect(),
                steps: Vec::new(),
            };
        }
        let step_fixes = (STEP_STAYS_S / period_s).max(STEP_STAYS_FIXES) as usize;
        // weight[k]: most fixes in a chain that ends with stretch k, after paying for each step
        let mut weight = vec![0_usize; stretches.len()];
        let mut before: Vec<Option<usize>> = vec![None; stretches.len()];
        let mut heaviest = 0;
        for current in 0..stretches.len() {
            let (first, end) = stretches[current];
            if current > 0 && weight[heaviest] > step_fixes {
                (weight[current], before[current]) = (weight[heaviest] - step_fixes, Some(heaviest));
            }
            for earlier in current.saturating_sub(LOOK_BACK)..current {
                if weight[earlier] > weight[current] && possible(stretches[earlier].1 - 1, first) {
                    (weight[current], before[current]) = (weight[earlier], Some(earlier));
                }
            }
            weight[current] += end - first;
            if weight[current] > weight[heaviest] {
                heaviest = current;
            }
        }
        let mut chosen = vec![heaviest];
        while let Some(index) = before[chosen[chosen.len() - 1]] {
            chosen.push(index);
        }
        chosen.reverse();
        let mut chain = Self {
            fixes: Vec::new(),
            steps: Vec::new(),
        };
        for (at, index) in chosen.iter().enumerate() {
            let (first, end) = stretches[*index];
            if at > 0 && !possible(stretches[chosen[at - 1]].1 - 1, first) {
                chain.steps.push(chain.fixes.len());
            }
            chain.fixes.extend(first..end);
        }
        chain
    }
}

/// True for qualities that do not stand for a measured place.
const fn is_no_measurement(quality: FixQuality) -> bool {
    matches!(quality, FixQuality::Manual)
}
