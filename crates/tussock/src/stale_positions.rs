//! Does the receiver hold or repeat positions?
//!
//! Some receivers hold their position while they believe to stand (static hold), others hand out the last one while they
//! have none. Either way a position repeats the one before it to the last digit while time goes on. Rests then look
//! better than the positions are, and an error read from them is too small.
//!
//! Coarse digits make repeats of their own: there only repeats while the receiver itself reports a speed count.
//!
//! Cost: linear in the fixes.

use tussock_types::{LogFacts, Said, Trace};

/// A held stretch is at least so long, and of at least so many fixes.
const HELD_S: f64 = 10.0;
const HELD_FIXES: usize = 5;
/// A smaller share of all fixes than this is chance.
const LEAST_FRACTION: f64 = 0.05;
/// Digits finer than this show any scatter at rest.
const FINE_DIGITS_M: f64 = 0.02;

/// Fixes that repeat the position before them, of one trace.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub(crate) struct Repeats {
    /// All of them.
    pub(crate) count: usize,
    /// Those during which the receiver reports a speed that would have shown.
    pub(crate) moving: usize,
    /// Longest stretch at one position: its time and its fixes.
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

/// One for each trace whose positions are held or repeated.
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
