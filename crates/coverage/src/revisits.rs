//! How much time passes between visits?
//!
//! Every cell has finished intervals and one that the end of the log cuts short. Leaving the last one out would favour short
//! intervals; Kaplan and Meier's estimate counts it for as long as it lasted. Intervals are collected in bins of one per
//! cent, which is the accuracy of the quantiles.

use std::sync::OnceLock;
use tussock_types::IntervalQuantiles;
use tussock_types::math;

const BINS: usize = 2200;
/// Shortest interval that is distinguished; ratio of neighbouring bins.
const SHORTEST_S: f64 = 10.0;
const RATIO: f64 = 1.01;

/// Finished and censored intervals.
#[derive(Clone, Debug)]
pub struct Intervals {
    finished: Vec<u64>,
    unfinished: Vec<u64>,
    bins: &'static Bins,
}

impl Default for Intervals {
    fn default() -> Self {
        static BINS_ONCE: OnceLock<Bins> = OnceLock::new();
        Self {
            finished: vec![0; BINS],
            unfinished: vec![0; BINS],
            bins: BINS_ONCE.get_or_init(Bins::new),
        }
    }
}

/// Finds the bin of an interval without a logarithm, because there are millions of intervals.
#[derive(Debug)]
struct Bins {
    /// For the upper bits of an interval's representation, the bin of the smallest interval that has them.
    first: Vec<u16>,
    /// Smallest interval of each bin, and infinity.
    least_s: Vec<f32>,
}

/// Bits of an interval that are ignored: steps of a 256th, several to a bin.
const LOW_BITS: u32 = 15;

impl Bins {
    fn new() -> Self {
        // Positive floats sort like their bits, so the smallest of a bin is found by bisection.
        let least_s = (0..BINS)
            .map(|bin| {
                let (mut below, mut at) = (0, f32::INFINITY.to_bits());
                while at - below > 1 {
                    let middle = below + (at - below) / 2;
                    if by_logarithm(f32::from_bits(middle)) >= bin {
                        at = middle;
                    } else {
                        below = middle;
                    }
                }
                if bin == 0 { 0.0 } else { f32::from_bits(at) }
            })
            .chain([f32::INFINITY])
            .collect();
        let first = (0..=f32::INFINITY.to_bits() >> LOW_BITS)
            .map(|high| by_logarithm(f32::from_bits(high << LOW_BITS)) as u16)
            .collect();
        Self { first, least_s }
    }

    fn of(&self, interval_s: f32) -> usize {
        if !(interval_s > 0.0) {
            return 0;
        }
        let mut bin = usize::from(self.first[(interval_s.to_bits() >> LOW_BITS) as usize]);
        while self.least_s[bin + 1] <= interval_s && bin + 1 < BINS {
            bin += 1;
        }
        bin
    }
}

fn by_logarithm(interval_s: f32) -> usize {
    let ratio = f64::from(interval_s) / SHORTEST_S;
    (math::ln(ratio.max(1.0)) / math::ln(RATIO)).min(BINS as f64 - 1.0) as usize
}

impl Intervals {
    fn bin(&self, interval_s: f32) -> usize {
        self.bins.of(interval_s)
    }

    /// Adds the intervals of another part of the lawn.
    pub(crate) fn add(&mut self, other: &Self) {
        for (own, others) in [
            (&mut self.finished, &other.finished),
            (&mut self.unfinished, &other.unfinished),
        ] {
            own.iter_mut().zip(others).for_each(|(sum, more)| *sum += more);
        }
    }

    /// Adds an interval that ended with a visit.
    pub fn finished(&mut self, interval_s: f32) {
        let bin = self.bin(interval_s);
        self.finished[bin] += 1;
    }

    /// Adds an interval that the end of the log cut short.
    pub fn unfinished(&mut self, interval_s: f32) {
        let bin = self.bin(interval_s);
        self.unfinished[bin] += 1;
    }

    /// Middle of each bin, the number of intervals that ended in it, and the number that were cut short in it.
    fn rows(&self) -> Vec<(f64, u64, u64)> {
        let middle_s = |bin: usize| SHORTEST_S * math::powf(RATIO, bin as f64 + 0.5);
        (0..BINS)
            .map(|bin| (middle_s(bin), self.finished[bin], self.unfinished[bin]))
            .collect()
    }

    /// The survival curve, in steps of one percent of the interval.
    pub fn survival(&self) -> Vec<SurvivalStep> {
        survival(&self.rows())
    }

    /// Intervals that a visit ended, and intervals that the end of the log cut short.
    pub fn finished_and_unfinished(&self) -> (u64, u64) {
        (self.finished.iter().sum(), self.unfinished.iter().sum())
    }

    /// Mean and standard deviation of the intervals that a visit ended, seconds; `None` without any.
    pub fn finished_law_s(&self) -> Option<(f64, f64)> {
        let of = |power: i32| {
            let rows = self.rows().into_iter();
            rows.map(|(middle_s, finished, _)| middle_s.powi(power) * finished as f64)
                .sum::<f64>()
        };
        let count = of(0);
        let mean_s = of(1) / count;
        (count > 0.0).then(|| (mean_s, (of(2) / count - mean_s * mean_s).max(0.0).sqrt()))
    }

    /// Median, 90 % and 99 % of the revisit interval; `None` if the log is too short to reach them.
    pub fn quantiles(&self) -> IntervalQuantiles {
        let curve = kaplan_meier(&self.rows());
        let hours_at = |survival: f64| {
            curve
                .iter()
                .find(|(_, left)| *left <= survival)
                .map(|(interval_s, _)| interval_s / 3600.0)
        };
        IntervalQuantiles {
            p50: hours_at(0.5),
            p90: hours_at(0.1),
            p99: hours_at(0.01),
        }
    }
}

/// Survival after each time: rows of (time, events, censored), times increasing.
pub fn kaplan_meier(rows: &[(f64, u64, u64)]) -> Vec<(f64, f64)> {
    survival(rows)
        .iter()
        .map(|step| (step.interval_s, step.survival_fraction))
        .collect()
}

/// One step of a survival curve.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SurvivalStep {
    /// Intervals that end here.
    pub interval_s: f64,
    /// Intervals that are at least as long.
    pub at_risk: u64,
    /// Those that a visit ended here.
    pub finished: u64,
    /// Fraction of all intervals that are longer.
    pub survival_fraction: f64,
    /// Standard deviation of that fraction for independent intervals (Greenwood 1926). Adjacent cells share their passes, so
    /// the true one is larger.
    pub sd_fraction: f64,
    /// Ends of the 90 % interval on the scale of log(-log) (Kalbfleisch & Prentice, *The Statistical Analysis of Failure Time Data*,
    /// 1980), which stays within 0 and 1.
    pub low_fraction: f64,
    /// See `low_fraction`.
    pub high_fraction: f64,
}

/// The survival curve with its uncertainty: rows of (time, events, censored), times increasing. One step for each time with
/// an event.
pub fn survival(rows: &[(f64, u64, u64)]) -> Vec<SurvivalStep> {
    /// Standard deviations to the ends of a 90 % interval.
    const ENDS: f64 = 1.644_853_626_951_472_2;
    let mut at_risk: u64 = rows.iter().map(|(_, events, censored)| events + censored).sum();
    let (mut survival, mut greenwood) = (1.0, 0.0);
    let mut curve = Vec::new();
    for (interval_s, events, censored) in rows {
        if *events > 0 && at_risk > 0 {
            let (ended, open) = (*events as f64, at_risk as f64);
            survival *= 1.0 - ended / open;
            greenwood += ended / (open * (open - ended));
            let (sd_fraction, low_fraction, high_fraction) = if survival > 0.0 {
                let power = math::exp(ENDS * greenwood.sqrt() / math::ln(survival));
                let (one, other) = (math::powf(survival, power), math::powf(survival, 1.0 / power));
                (survival * greenwood.sqrt(), one.min(other), one.max(other))
            } else {
                (0.0, 0.0, 0.0)
            };
            curve.push(SurvivalStep {
                interval_s: *interval_s,
                at_risk,
                finished: *events,
                survival_fraction: survival,
                sd_fraction,
                low_fraction,
                high_fraction,
            });
        }
        at_risk -= events + censored;
    }
    curve
}

/// Gini coefficient of visits given as a histogram: 0 if all cells are equal.
pub fn gini(histogram: &[u64]) -> f64 {
    let cells: f64 = histogram.iter().map(|cells| *cells as f64).sum();
    let visits: f64 = histogram
        .iter()
        .enumerate()
        .map(|(number, cells)| number as f64 * *cells as f64)
        .sum();
    if cells == 0.0 || visits == 0.0 {
        return 0.0;
    }
    // Ranks treat each class as a block: sum of (2 i - n - 1) x_i over sorted cells, divided by n sum x.
    let mut before = 0.0;
    let mut sum = 0.0;
    for (number, class) in histogram.iter().enumerate() {
        let class = *class as f64;
        sum += number as f64 * class * (2.0 * before + class - cells);
        before += class;
    }
    sum / (cells * visits)
}

/// Median of visits given as a histogram.
pub fn median(histogram: &[u64]) -> f64 {
    let cells: u64 = histogram.iter().sum();
    let at = |rank: u64| {
        let mut seen = 0;
        histogram.iter().position(|class| {
            seen += class;
            seen > rank
        })
    };
    match (cells, at(cells.saturating_sub(1) / 2), at(cells / 2)) {
        (0, ..) => 0.0,
        (_, Some(low), Some(high)) => (low + high) as f64 / 2.0,
        _ => 0.0,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use approx::assert_abs_diff_eq;

    // ALG-28: remission times of 21 patients on 6-MP (Freireich et al. 1963), recomputed.
    #[test]
    fn the_bin_of_every_kind_of_interval_is_that_of_its_logarithm() {
        let bins = Bins::new();
        let mut interval_s = 1e-3_f32;
        while interval_s < 1e12 {
            for near in [-2_i32, -1, 0, 1, 2] {
                let near_s = f32::from_bits(interval_s.to_bits().wrapping_add_signed(near));
                assert_eq!(bins.of(near_s), by_logarithm(near_s), "{near_s}");
            }
            interval_s *= 1.000_37;
        }
        for bin in 1..BINS {
            let least_s = bins.least_s[bin];
            assert_eq!(by_logarithm(least_s), bins.of(least_s));
            let below_s = f32::from_bits(least_s.to_bits() - 1);
            assert_eq!(by_logarithm(below_s), bins.of(below_s));
        }
        for odd_s in [
            0.0,
            -1.0,
            f32::NAN,
            f32::NEG_INFINITY,
            f32::INFINITY,
            f32::MAX,
            f32::MIN_POSITIVE,
        ] {
            assert_eq!(bins.of(odd_s), by_logarithm(odd_s), "{odd_s}");
        }
    }

    #[test]
    fn survival_of_the_textbook_data() {
        let rows = [
            (6.0, 3, 1),
            (7.0, 1, 0),
            (9.0, 0, 1),
            (10.0, 1, 1),
            (11.0, 0, 1),
            (13.0, 1, 0),
            (16.0, 1, 0),
            (17.0, 0, 1),
            (19.0, 0, 1),
            (20.0, 0, 1),
            (22.0, 1, 0),
            (23.0, 1, 0),
            (25.0, 0, 1),
            (32.0, 0, 2),
            (34.0, 0, 1),
            (35.0, 0, 1),
        ];
        let expected = [
            0.857143, 0.806723, 0.752941, 0.690196, 0.627451, 0.537815, 0.448179,
        ];
        let curve = kaplan_meier(&rows);
        assert_eq!(curve.len(), expected.len());
        for ((_, found), expected) in curve.iter().zip(expected) {
            assert_abs_diff_eq!(*found, expected, epsilon = 1e-6);
        }
    }

    #[test]
    fn greenwood_of_the_textbook_data_worked_out_by_hand() {
        // Three of 21 end at 6 and one is cut short, one of 17 ends at 7: variances S2 3 / (21 x 18), S2 (3 / 378 + 1 / (17
        // x 16)).
        let steps = survival(&[(6.0, 3, 1), (7.0, 1, 0), (9.0, 0, 16)]);
        let first = 6.0_f64 / 7.0;
        let second = first * 16.0 / 17.0;
        assert_abs_diff_eq!(
            steps[0].sd_fraction,
            first * (3.0_f64 / 378.0).sqrt(),
            epsilon = 1e-12
        );
        let greenwood = 3.0_f64 / 378.0 + 1.0 / 272.0;
        assert_abs_diff_eq!(steps[1].sd_fraction, second * greenwood.sqrt(), epsilon = 1e-12);
        assert_eq!((steps[1].at_risk, steps[1].finished), (17, 1));
        // On the log(-log) scale the ends are symmetric about the estimate.
        let scale = |part: f64| math::ln(-math::ln(part));
        let (low, high) = (scale(steps[1].low_fraction), scale(steps[1].high_fraction));
        assert_abs_diff_eq!(0.5 * (low + high), scale(second), epsilon = 1e-9);
        assert!(steps[1].low_fraction < second && second < steps[1].high_fraction);
        // The very last one ends: nothing survives, and nothing is not a number.
        let all = survival(&[(1.0, 1, 0), (2.0, 1, 0)]);
        assert_eq!((all[1].survival_fraction, all[1].high_fraction), (0.0, 0.0));
    }

    // ALG-23: Gini coefficients, recomputed.
    #[test]
    fn gini_of_small_samples() {
        let histogram = |values: &[usize]| {
            let mut histogram = vec![0_u64; values.iter().max().unwrap() + 1];
            values.iter().for_each(|value| histogram[*value] += 1);
            histogram
        };
        assert_abs_diff_eq!(gini(&histogram(&[0, 0, 0, 1])), 0.75, epsilon = 1e-12);
        assert_abs_diff_eq!(gini(&histogram(&[1, 2, 3, 4])), 0.25, epsilon = 1e-12);
        assert_abs_diff_eq!(gini(&histogram(&[0, 1, 1, 2, 3, 5, 8])), 0.485714, epsilon = 1e-6);
        assert_abs_diff_eq!(gini(&histogram(&[3, 3, 3])), 0.0, epsilon = 1e-12);
    }

    #[test]
    fn the_median_lies_between_two_middle_cells() {
        assert_abs_diff_eq!(median(&[2, 1, 1]), 0.5, epsilon = 1e-12);
        assert_abs_diff_eq!(median(&[0, 3]), 1.0, epsilon = 1e-12);
        assert_abs_diff_eq!(median(&[]), 0.0, epsilon = 1e-12);
    }

    #[test]
    fn quantiles_of_an_exponential_interval_are_within_a_percent() {
        let mut intervals = Intervals::default();
        let count = 20_000;
        for index in 0..count {
            let part = (f64::from(index) + 0.5) / f64::from(count);
            intervals.finished((-3600.0 * math::ln(1.0 - part)) as f32);
        }
        let found = intervals.quantiles();
        assert_abs_diff_eq!(found.p50.unwrap(), std::f64::consts::LN_2, epsilon = 0.008);
        assert_abs_diff_eq!(found.p90.unwrap(), math::ln(10.0_f64), epsilon = 0.025);
    }
}
