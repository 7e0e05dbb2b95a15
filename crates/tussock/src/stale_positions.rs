//! Does the receiver hold or repeat positions?
//!
//! Some receivers hold their position while they believe to stand (static hold), others hand out the last one while they
//! have none. Either way a position repeats the one before it to the last digit while time goes on. Rests then look
//! better than the positions are, and an error read from them is too small.
//!
//! Coarse digits make repeats of their own: there only repeats while the receiver itself reports a speed count.
//!
//! Cost: linear in the fixes.

use tussock_types::{LogFacts, Trace};

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

/// One sentence per trace whose positions are held or repeated.
pub(crate) fn remarks(traces: &[Trace], inputs: &[LogFacts]) -> Vec<String> {
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

fn remark(repeats: Repeats, fixes: usize, digits_m: f64) -> Option<String> {
    let least = LEAST_FRACTION * fixes as f64;
    let percent = |count: usize| 100.0 * count as f64 / fixes as f64;
    if repeats.moving as f64 > least {
        return Some(format!(
            "{:.0} % of the fixes repeat the position before them to the last digit while the receiver reports a speed \
             (longest for {:.0} s): it hands out old positions.",
            percent(repeats.moving),
            repeats.longest_s
        ));
    }
    let is_held = repeats.longest_s >= HELD_S && repeats.longest_fixes >= HELD_FIXES;
    if repeats.count as f64 > least && is_held && digits_m <= FINE_DIGITS_M {
        return Some(format!(
            "{:.0} % of the fixes repeat the position before them to the last digit (longest for {:.0} s): the receiver \
             holds its position while it stands, so rests look better than its positions are; switch static hold off.",
            percent(repeats.count),
            repeats.longest_s
        ));
    }
    None
}
