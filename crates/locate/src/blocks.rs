//! Fixes averaged to about one a second: within a second nothing happens that would show in a swath.

use crate::Kept;
use std::ops::Range;
use tussock_types::{Place, math};

/// Closer fixes are averaged to about one a second before legs and halts are separated: within a second nothing happens that
/// would show in a swath.
pub(crate) const BLOCK_S: f64 = 0.9;

/// Fixes of one run, averaged to about one a second if they come faster.
#[derive(Clone, Debug, Default)]
pub struct Blocks {
    /// Mean time of the fixes in a block.
    pub time_s: Vec<f64>,
    /// Mean east.
    pub east_m: Vec<f64>,
    /// Mean north.
    pub north_m: Vec<f64>,
    /// The largest of their [`Kept::error_factor`]; empty if it does not change.
    pub error_factor: Vec<f64>,
}

impl Blocks {
    pub(crate) fn place(&self, index: usize) -> Place {
        Place::new(self.east_m[index], self.north_m[index])
    }

    /// The factor over the usual error that a block may have.
    pub(crate) fn error_factor_at(&self, index: usize) -> f64 {
        self.error_factor.get(index).copied().unwrap_or(1.0)
    }
}

/// Averages neighbouring fixes of a run into blocks at least `least_s` apart.
pub fn blocks(kept: &Kept, run: Range<usize>, least_s: f64) -> Blocks {
    let mut blocks = Blocks::default();
    let mut start = run.start;
    while start < run.end {
        let mut end = start + 1;
        while end < run.end && kept.time_s[end] - kept.time_s[start] < least_s {
            end += 1;
        }
        let share = 1.0 / (end - start) as f64;
        blocks
            .time_s
            .push(kept.time_s[start..end].iter().sum::<f64>() * share);
        blocks
            .east_m
            .push(kept.east_m[start..end].iter().sum::<f64>() * share);
        blocks
            .north_m
            .push(kept.north_m[start..end].iter().sum::<f64>() * share);
        if !kept.error_factor.is_empty() {
            let worst = (start..end)
                .map(|index| kept.error_factor_at(index))
                .fold(1.0, f64::max);
            blocks.error_factor.push(worst);
        }
        start = end;
    }
    blocks
}

/// Median step between blocks; 1 s for fewer than two.
pub fn median_step_s(blocks: &Blocks) -> f64 {
    let mut steps_s: Vec<f64> = blocks.time_s.windows(2).map(|pair| pair[1] - pair[0]).collect();
    math::median(&mut steps_s)
        .filter(|step_s| *step_s > 0.0)
        .unwrap_or(1.0)
}
