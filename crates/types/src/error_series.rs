//! How a receiver erred.

use crate::math;
use std::ops::Range;

/// What a receiver said less where it was: columns of one length, times rising.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct ErrorSeries {
    /// Seconds from any moment.
    pub time_s: Vec<f64>,
    /// Error to the east.
    pub east_m: Vec<f64>,
    /// Error to the north.
    pub north_m: Vec<f64>,
}

/// A longer lapse between two rows parts a series; or more of its usual steps.
const APART_S: f64 = 30.0;
const APART_STEPS: f64 = 10.0;

impl ErrorSeries {
    /// Usual time between two rows; 1 s for fewer than two.
    pub fn step_s(&self) -> f64 {
        let mut steps_s: Vec<f64> = self.time_s.windows(2).map(|pair| pair[1] - pair[0]).collect();
        math::median(&mut steps_s).unwrap_or(1.0)
    }

    /// How long it lasts, lapses left out.
    pub fn lasts_s(&self) -> f64 {
        let stretches = self.stretches().into_iter().filter(|stretch| !stretch.is_empty());
        stretches
            .map(|stretch| self.time_s[stretch.end - 1] - self.time_s[stretch.start])
            .sum()
    }

    /// Stretches of rows without a lapse, in order: a series may hold several stays.
    pub fn stretches(&self) -> Vec<Range<usize>> {
        let step_s = self.step_s();
        let is_apart = |pair: &[f64]| pair[1] - pair[0] > APART_S.max(APART_STEPS * step_s);
        let lapses = self.time_s.windows(2).enumerate();
        let starts = lapses
            .filter(|(_, pair)| is_apart(pair))
            .map(|(before, _)| before + 1);
        let mut first = 0;
        let mut stretches: Vec<Range<usize>> = starts
            .map(|start| std::mem::replace(&mut first, start)..start)
            .collect();
        stretches.push(first..self.time_s.len());
        stretches
    }

    /// East and north error so long after its start; between two rows on the line, after its end back again, and so on. Nought
    /// without rows.
    pub fn at(&self, time_s: f64) -> (f64, f64) {
        let (Some(first_s), Some(last_s)) = (self.time_s.first(), self.time_s.last()) else {
            return (0.0, 0.0);
        };
        let lasts_s = last_s - first_s;
        let turned_s = if lasts_s > 0.0 {
            time_s.rem_euclid(2.0 * lasts_s)
        } else {
            0.0
        };
        let seen_s = first_s + turned_s.min(2.0 * lasts_s - turned_s);
        let after = self
            .time_s
            .partition_point(|row_s| *row_s <= seen_s)
            .min(self.time_s.len() - 1);
        let before = after.saturating_sub(1);
        let lapse_s = self.time_s[after] - self.time_s[before];
        let share = if lapse_s > 0.0 {
            ((seen_s - self.time_s[before]) / lapse_s).clamp(0.0, 1.0)
        } else {
            0.0
        };
        let between = |column: &[f64]| column[before] + share * (column[after] - column[before]);
        (between(&self.east_m), between(&self.north_m))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_series_runs_to_and_fro() {
        let series = ErrorSeries {
            time_s: vec![10.0, 11.0, 13.0],
            east_m: vec![0.0, 1.0, 3.0],
            north_m: vec![0.0, -1.0, -3.0],
        };
        for (time_s, east_m) in [
            (0.0, 0.0),
            (0.5, 0.5),
            (2.0, 2.0),
            (3.0, 3.0),
            (4.0, 2.0),
            (6.0, 0.0),
            (7.0, 1.0),
            (-1.0, 1.0),
        ] {
            assert_eq!(series.at(time_s), (east_m, -east_m), "{time_s}");
        }
        assert_eq!(ErrorSeries::default().at(1.0), (0.0, 0.0));
    }
}
