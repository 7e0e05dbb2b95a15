//! Which fixes to believe.
//!
//! Fixes with a poor dilution of precision go first. What remains is cut wherever two neighbours are further apart
//! than the machine can drive, and the longest chain of mutually possible stretches is kept: a bad first fix does not
//! condemn the good ones that follow, and a burst of jumps goes as a whole. Linear in fixes; quadratic only in the
//! number of jumps that follow each other within `LOOK_BACK` stretches.

use crate::{Gap, Kept, noise};
use tussock_types::{FixQuality, PositionSettings, Trace};

/// So many stretches back a chain may reach over: more jumps in a row are no log of a machine.
const LOOK_BACK: usize = 64;

/// What passed.
#[derive(Clone, Debug, Default)]
pub struct Gated {
    /// The fixes to use, cut into runs.
    pub kept: Kept,
    /// Silences between the runs.
    pub gaps: Vec<Gap>,
    /// Taken out for poor quality.
    pub quality: usize,
    /// Taken out as jumps.
    pub jumps: usize,
}

/// Longer between two fixes, nothing tells where a mower went: it drives some 50 m and turns ten times on a usual lawn (common
/// practice, no source). Five times the sparsest period, 30 s, at which turns are still put back.
const LONGEST_HOP_S: f64 = 150.0;

/// Time between two fixes that is a silence, in a log of this usual period.
pub fn silence_s(settings: &PositionSettings, period_s: f64) -> f64 {
    settings
        .max_silence_s
        .unwrap_or((5.0 * period_s).clamp(10.0, LONGEST_HOP_S))
}

/// How many times the usual error each fix may have, by its dilution of precision.
///
/// Only what is clearly poorer counts: a dilution that breathes with the satellites says nothing of a single fix.
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
    let Some(usual) = noise::median(&mut told) else {
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

/// Applies the gates and cuts the trace into runs at silences and where the log says that reception was lost.
pub fn gate(trace: &Trace, east_m: &[f64], north_m: &[f64], settings: &PositionSettings) -> Gated {
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
        error_factor: Vec::new(),
    };
    let rough = columns(&good);
    let period_s = noise::usual_period_s(&rough);
    let white_m = noise::roughness(&rough, period_s).white_m;
    let silence_s = silence_s(settings, period_s);

    let chain = possible_chain(&rough, settings.max_speed_mps, white_m);
    let jumps = good.len() - chain.len();
    let chosen: Vec<usize> = chain.iter().map(|index| good[*index]).collect();
    let mut kept = columns(&chosen);
    kept.error_factor = scales(trace, &chosen);

    let mut gaps = Vec::new();
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
            }
        }
        kept.run[index] = run;
    }
    Gated {
        kept,
        gaps,
        quality,
        jumps,
    }
}

/// Indices of the longest chain of stretches that one machine can have driven.
fn possible_chain(fixes: &Kept, max_speed_mps: f64, white_m: f64) -> Vec<usize> {
    // Two noisy fixes differ by sqrt(2) w per axis; eight of those are beyond any luck of a long log.
    let slack_m = 0.5 + 8.0 * white_m;
    let possible = |from: usize, to: usize| {
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
    if fixes.is_empty() {
        return Vec::new();
    }
    if stretches.len() == 1 {
        return (0..fixes.len()).collect();
    }
    // weight[k]: most fixes in a chain that ends with stretch k
    let mut weight = vec![0_usize; stretches.len()];
    let mut before: Vec<Option<usize>> = vec![None; stretches.len()];
    for current in 0..stretches.len() {
        let (first, end) = stretches[current];
        for earlier in current.saturating_sub(LOOK_BACK)..current {
            if weight[earlier] > weight[current] && possible(stretches[earlier].1 - 1, first) {
                weight[current] = weight[earlier];
                before[current] = Some(earlier);
            }
        }
        weight[current] += end - first;
    }
    let mut next = (0..stretches.len()).max_by_key(|index| (weight[*index], std::cmp::Reverse(*index)));
    let mut chosen = Vec::new();
    while let Some(index) = next {
        chosen.push(index);
        next = before[index];
    }
    chosen
        .iter()
        .rev()
        .flat_map(|index| stretches[*index].0..stretches[*index].1)
        .collect()
}

/// True for qualities that are no measurement of a place.
const fn is_no_measurement(quality: FixQuality) -> bool {
    matches!(quality, FixQuality::Manual)
}
