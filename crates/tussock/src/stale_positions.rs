//! Does the receiver hold or repeat positions?
//!
//! Some receivers hold their position while they believe that they are standing (static hold); others repeat the last one
//! while they have none. Either way, a position equals the one before it to the last digit while time goes on. Rests then
//! look better than the positions are, and an error estimated from them is too small.
//!
//! Coarse digits cause repeats of their own; with them, a repeat counts only if the receiver itself reports a speed.
//!
//! Cost: linear in the fixes.

use tussock_types::{LogFacts, Said, Trace};

/// A held stretch lasts at least this long, and has at least this many fixes.
const HELD_S: f64 = 10.0;
const HELD_FIXES: usize = 5;
/// A smaller share of all fixes is chance.
const LEAST_FRACTION: f64 = 0.05;
/// Finer digits show scatter even at rest.
const FINE_DIGITS_M: f64 = 0.02;

/// Fixes of one trace that repeat the position before them.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub(crate) struct Repeats {
    /// All of them.
    pub(crate) count: usize,
    /// Those during which the receiver reports a speed high enough to show.
    pub(crate) moving: usize,
    /// Longest stretch at one position: its duration and its number of fixes.
    pub(crate) longest_s: f64,
    pub(crate) longest_fixes: usize,
}

impl Repeats {
    pub(crate) fn of(trace: &Trace, digits_m: f64) -> Self {
        let mut out = Self::default();
        let mut start = 0;
        for index in 1..trace.len() {
            let same = trace.positions.pair(index) == trace.positions.pair(index - 1)
                && trace.segment[index] == trace.segment[index - 1];
            if !same {
                start = index;
                continue;
            }
            out.count += 1;
            let step_s = trace.time_s[index] - trace.time_s[index - 1];
            let reported_m = f64::from(trace.speed_mps[index]) * step_s;
            if reported_m > (2.0 * digits_m).max(0.1) {
                out.moving += 1;
            }
            let stretch_s = trace.time_s[index] - trace.time_s[start];
            if stretch_s > out.longest_s {
                out.longest_s = stretch_s;
                out.longest_fixes = index - start + 1;
            }
        }
        out
    }
}

/// One remark for each trace whose positions are held or repeated.
pub(crate) fn remarks(traces: &[Trace], inputs: &[LogFacts]) -> Vec<Said> {
    traces
        .iter()
        .filter_map(|trace| {
            let digits_m = inputs
                .iter()
                .filter(|facts| facts.machine == trace.machine)
                .filter_map(|facts| facts.resolution_m)
                .fold(0.0, f64::max);
            remark(Repeats::of(trace, digits_m), trace.len(), digits_m)
        })
        .collect()
}

fn remark(repeats: Repeats, fixes: usize, digits_m: f64) -> Option<Said> {
    let repeated = |count: usize| count as f64 / fixes as f64;
    let longest_s = repeats.longest_s;
    if repeated(repeats.moving) > LEAST_FRACTION {
        return Some(Said::PositionsRepeated {
            repeated_fraction: repeated(repeats.moving),
            longest_s,
        });
    }
    let is_held = longest_s >= HELD_S && repeats.longest_fixes >= HELD_FIXES;
    (repeated(repeats.count) > LEAST_FRACTION && is_held && digits_m <= FINE_DIGITS_M).then(|| {
        Said::PositionsHeld {
            repeated_fraction: repeated(repeats.count),
            longest_s,
        }
    })
}
