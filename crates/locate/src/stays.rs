//! When does the machine stand, if the receiver smooths its own positions?
//!
//! Question: a receiver's filter lets the positions of a machine at rest creep over metres. No radius distinguishes such a
//! stay from driving. Method: standing means that the track does not go anywhere of its own accord. The measure, over
//! windows of three minutes, is the mean length of the second difference |z(t+h) - 2 z(t) + z(t-h)| at h of 8, 20 and 40 s,
//! in which a slow drift cancels and a drive with turns does not. A hidden Markov model of two states (Rabiner 1989, DOI
//! 10.1109/5.18626) learns from the log what each looks like; its states have multivariate Student densities (5 degrees of
//! freedom, weights after Lange, Little & Taylor 1989, DOI 10.2307/2290063). The stays show how far positions wander within
//! a lag, without assuming a law.
//!
//! Approximate: both ends of a stay, to half a minute. Known limits: stays shorter than about three minutes; errors that
//! wander as fast as the machine drives.
//!
//! Cost: a few milliseconds a night.

use crate::noise::usual_speed_mps;
use crate::{Halt, Kept, NoiseEstimate, halts};
use std::ops::Range;
use tussock_types::{NoiseSource, math};

/// Lags of the second differences.
const LAGS_S: [f64; 3] = [8.0, 20.0, 40.0];
/// Differences below this fraction of those of driving show nothing more: held positions, or gaps that a logger filled.
const LEAST_OF_DRIVING: f64 = 0.1;
/// Length of a window, and the step from one to the next.
const WINDOW_S: f64 = 180.0;
const STRIDE_S: f64 = 10.0;
/// The track is sampled at this step.
const STEP_S: f64 = 2.0;
/// A stretch with fewer fixes is mostly silence.
const MOST_STEPS: usize = 8;
/// Fraction of a window that must be logged.
const LEAST_LOGGED: f64 = 0.3;
/// The windows with the longest differences are driving; less than this fraction of theirs is standing, as a first guess.
const DRIVES_QUANTILE: f64 = 0.9;
const STANDS_BELOW: f64 = 0.7;
/// Rates of leaving a stay and of starting one, per second.
const LEAVES_PER_S: f64 = 1.0 / 1800.0;
const ARRIVES_PER_S: f64 = 1.0 / 3600.0;
/// Windows overlap, so each counts only in part.
const WEIGHT: f64 = 1.5 * STRIDE_S / WINDOW_S;
/// The two states must differ by at least this, over all lags: driving alone, cut in two, differs by less.
const APART: f64 = 2.4;
const FREEDOM: f64 = 5.0;
const ROUNDS: usize = 12;
/// Shorter stays do not count.
const LEAST_S: f64 = 180.0;
/// Time for rolling into place and out of it.
const END_CUT_S: f64 = 45.0;
/// Stays at least this long show how the error wanders.
const TELLING_S: f64 = 600.0;

/// While it stands, a receiver that smooths its own positions moves within a minute by more than this factor over its motion
/// from fix to fix; first-order drift under equally large white error moves about three times as much.
const SMOOTHS: f64 = 3.5;
/// Less than this within a minute is drift such as precise receivers have.
const SMOOTHS_FROM_M: f64 = 0.1;
/// An error that wanders as far within ten seconds as it ever does, and farther than from fix to fix, is over within seconds: neither
/// white nor a drift. What is less than centimetres does no harm.
const SOON_S: f64 = 10.0;
const FAST_FROM_M: f64 = 0.05;
const GROWS: f64 = 1.3;
const SATURATED: f64 = 1.4;
const FAST_LAGS_S: [f64; 7] = [2.0, 3.0, 5.0, 8.0, 12.0, 20.0, 30.0];
/// From fix to fix, a standing machine creeps less far than a driving one; a drive in a narrow corner does not.
const CREEPS: f64 = 0.95;
/// It also gets less far in the shortest lag; a drive without turns gets farther.
const GETS: f64 = 0.85;
/// Lags at which the error is read: a minute, and long ones, the longest that stays allow.
const MINUTE_S: f64 = 60.0;
const LONG_S: [f64; 3] = [1800.0, 900.0, 300.0];

/// A machine that drives, drives this far in such a time for half of some three minutes: 0.15 m/s, slower than any mower (common
/// practice, no source). Of six recordings of standing receivers that wander by up to 1.6 m, none does for more than 0.41 of three minutes;
/// simulated drives at 0.2 m/s do for 0.86 once an hour.
const DRIVES_S: f64 = 8.0;
const DRIVES_M: f64 = 1.2;
const DRIVES_SHARE: f64 = 0.5;
/// Moves that a window must have to count.
const LEAST_MOVES: usize = 15;
/// A shorter drive shows in so long and so straight a move at an even speed (0.3 m/s). The standing receivers get 5.2 m far in this time.
const STRAIGHT_S: f64 = 20.0;
const STRAIGHT_M: f64 = 6.0;
const OFF_MIDDLE_M: f64 = 1.0;

/// Whether the machine stood for ten minutes and more, and never drove. Also true of receivers that wander by metres; a wander faster than
/// mowers drive cannot be told from driving.
pub fn stood_throughout(kept: &Kept) -> bool {
    let lasts_s = |run: &Range<usize>| kept.time_s[run.end - 1] - kept.time_s[run.start];
    let mut runs = kept.runs();
    let all_s: f64 = runs.iter().map(lasts_s).sum();
    runs.retain(|run| lasts_s(run) >= WINDOW_S);
    let told_s: f64 = runs.iter().map(lasts_s).sum();
    told_s >= TELLING_S.max(0.5 * all_s)
        && !kept.runs().into_iter().any(|run| goes_straight(kept, run))
        && !runs.into_iter().any(|run| drives(kept, run))
}

/// The first fix at least so long after another, looked for from `from` on; the end of the run if there is none.
fn later(kept: &Kept, run: &Range<usize>, from: usize, index: usize, lapse_s: f64) -> usize {
    let is_before = |at: &usize| *at < run.end && kept.time_s[*at] - kept.time_s[index] < lapse_s - 1e-6;
    (from..).find(|at| !is_before(at)).unwrap_or(run.end)
}

/// Whether it moves straight and evenly for a while.
fn goes_straight(kept: &Kept, run: Range<usize>) -> bool {
    let (mut half, mut whole) = (run.start, run.start);
    run.clone().any(|index| {
        half = later(kept, &run, half, index, 0.5 * STRAIGHT_S);
        whole = later(kept, &run, whole, index, STRAIGHT_S);
        whole < run.end && {
            let (from, to) = (kept.place(index), kept.place(whole));
            from.distance_m(to) >= STRAIGHT_M && kept.place(half).distance_m(from.middle(to)) <= OFF_MIDDLE_M
        }
    })
}

/// Whether it drives in any three minutes of an unbroken stretch.
fn drives(kept: &Kept, run: Range<usize>) -> bool {
    let (mut next, mut first, mut far) = (run.start, 0, 0);
    // Times of the moves, and which of them went far enough; those from `first` on are in the window.
    let mut moves: Vec<(f64, bool)> = Vec::new();
    for index in run.clone() {
        next = later(kept, &run, next, index, DRIVES_S);
        if next >= run.end {
            break;
        }
        let (time_s, is_far) = (
            kept.time_s[index],
            kept.place(next).distance_m(kept.place(index)) >= DRIVES_M,
        );
        moves.push((time_s, is_far));
        far += usize::from(is_far);
        while moves[first].0 < time_s - WINDOW_S {
            far -= usize::from(moves[first].1);
            first += 1;
        }
        let count = moves.len() - first;
        let is_whole = time_s - moves[first].0 >= 0.9 * WINDOW_S;
        if is_whole && count >= LEAST_MOVES && far as f64 >= DRIVES_SHARE * count as f64 {
            return true;
        }
    }
    false
}

/// A stretch of standing time.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Standing {
    /// From.
    pub start_s: f64,
    /// To.
    pub end_s: f64,
}

impl Standing {
    /// How long it lasts.
    pub fn lasts_s(&self) -> f64 {
        self.end_s - self.start_s
    }

    /// Fixes of its inner part, without `cut_s` at either end.
    pub fn fixes(&self, kept: &Kept, cut_s: f64) -> Range<usize> {
        let first = kept
            .time_s
            .partition_point(|time_s| *time_s < self.start_s + cut_s);
        let end = kept
            .time_s
            .partition_point(|time_s| *time_s <= self.end_s - cut_s);
        first..end.max(first)
    }
}

/// How a receiver that smooths its own positions moves at rest.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Smooth {
    /// It moves much more within a minute than from fix to fix.
    smooths: bool,
    /// From fix to fix, per axis.
    near_m: f64,
    /// Within the longest lag that is shown.
    drift_m: f64,
    drift_rate_m2_per_s: f64,
    /// Where it is over within seconds: the white error of each fix that averages out as slowly over a leg.
    as_white_m: Option<f64>,
}

impl Smooth {
    /// `None` of positions at rest that neither move so much more within a minute than from fix to fix, nor wander as far as they ever do
    /// within seconds.
    pub(crate) fn of(kept: &Kept, at_rest: &[Range<usize>], period_s: f64) -> Option<Self> {
        let change = |lag_s| changes_m(kept, at_rest, lag_s);
        let (near_m, minute_m) = (change(period_s)?, change(MINUTE_S)?);
        let long_m = LONG_S.into_iter().find_map(change).unwrap_or(minute_m);
        let soon_m = change(SOON_S)?;
        let is_soon_over =
            minute_m >= FAST_FROM_M && soon_m >= GROWS * near_m && long_m <= SATURATED * soon_m;
        let smooths = minute_m >= SMOOTHS_FROM_M && minute_m >= SMOOTHS * near_m;
        (smooths || is_soon_over).then(|| Self {
            smooths,
            near_m,
            drift_m: long_m,
            drift_rate_m2_per_s: match is_soon_over {
                true => 2.0 * (soon_m * soon_m - near_m * near_m) / (SOON_S - period_s),
                false => 2.0 * minute_m * minute_m / MINUTE_S,
            },
            as_white_m: is_soon_over.then(|| as_white_m(change, minute_m, period_s)),
        })
    }
}

/// Standard deviation of white errors whose mean over a long time varies as much: the sum of the autocovariance over all lags.
fn as_white_m(change: impl Fn(f64) -> Option<f64>, level_m: f64, period_s: f64) -> f64 {
    let covariance_m2 =
        |lag_s: f64| change(lag_s).map_or(0.0, |change_m| (level_m * level_m - change_m * change_m).max(0.0));
    let (mut sum_m2_s, mut last) = (0.0, (period_s, covariance_m2(period_s)));
    for lag_s in FAST_LAGS_S.into_iter().filter(|lag_s| *lag_s > period_s) {
        let next = (lag_s, covariance_m2(lag_s));
        sum_m2_s += 0.5 * (next.0 - last.0) * (last.1 + next.1);
        last = next;
    }
    (level_m * level_m + 2.0 * sum_m2_s / period_s).sqrt()
}

/// What is known of a log whose receiver smooths its own positions.
#[derive(Clone, Debug, PartialEq)]
pub struct Smoothing {
    /// When the machine stood.
    pub stays: Vec<Standing>,
    /// Driving speed; `None` if it cannot be determined.
    pub speed_mps: Option<f64>,
    law: Smooth,
    source: NoiseSource,
}

impl Smoothing {
    /// `None` if stays do not show that the receiver smooths.
    pub fn of(kept: &Kept, stays: &[Standing], period_s: f64) -> Option<Self> {
        let law = Smooth::of(kept, &inner(kept, stays), period_s)?;
        let driven = left_out(kept, stays);
        let slower = |lag_s| {
            Some(moved_m(kept, &inner(kept, stays), lag_s)? / moved_m(&driven, &driven.runs(), lag_s)?)
        };
        let is_slower = slower(period_s)? <= CREEPS && slower(LAGS_S[0])? <= GETS;
        if !is_slower && !recur(kept, &inner(kept, stays), law.drift_m) {
            return None;
        }
        Some(Self::under(law, NoiseSource::StationScatter, &driven, stays))
    }

    /// The same of a log that stood the whole time.
    pub(crate) fn of_standing(kept: &Kept, period_s: f64) -> Option<Self> {
        let law = Smooth::of(kept, &kept.runs(), period_s)?;
        let whole = |run: Range<usize>| Standing {
            start_s: kept.time_s[run.start],
            end_s: kept.time_s[run.end - 1],
        };
        Some(Self {
            stays: kept.runs().into_iter().map(whole).collect(),
            speed_mps: None,
            law,
            source: NoiseSource::StationScatter,
        })
    }

    /// As another log of the same receiver shows it; `None` where the stays of this one are long enough to tell.
    pub(crate) fn known(kept: &Kept, stays: &[Standing], law: Smooth) -> Option<Self> {
        let is_shown = change_m(kept, stays, MINUTE_S).is_some();
        (!is_shown).then(|| Self::under(law, NoiseSource::DeviceCard, &left_out(kept, stays), stays))
    }

    /// Whether positions at rest creep, so that fix-to-fix motion shows no error.
    pub(crate) fn smooths(&self) -> bool {
        self.law.smooths
    }

    /// The error under which legs are to be found, where it is neither white nor slow.
    pub(crate) fn path_noise(&self, noise: &NoiseEstimate) -> Option<NoiseEstimate> {
        let white_m = self.law.as_white_m?;
        Some(NoiseEstimate {
            white_m,
            drift_m: None,
            drift_rate_m2_per_s: 1e-4 * white_m * white_m,
            source: self.source,
            ..*noise
        })
    }

    fn under(law: Smooth, source: NoiseSource, driven: &Kept, stays: &[Standing]) -> Self {
        Self {
            stays: stays.to_vec(),
            speed_mps: match law.as_white_m {
                Some(_) => usual_speed_mps(driven, law.drift_m, 0.0),
                None => usual_speed_mps(driven, law.near_m, law.drift_rate_m2_per_s),
            },
            law,
            source,
        }
    }

    /// An error law with the slow part that the stays show.
    pub fn noise(&self, noise: &NoiseEstimate) -> NoiseEstimate {
        NoiseEstimate {
            drift_m: Some(self.law.drift_m),
            drift_rate_m2_per_s: self.law.drift_rate_m2_per_s,
            source: self.source,
            ..*noise
        }
    }
}

type Feature = [f64; 3];

/// Features of each window; `None` if too little was logged.
#[derive(Default)]
struct Windows {
    middle_s: Vec<f64>,
    feature: Vec<Option<Feature>>,
}

/// Finds the stays. Empty if either standing or driving is not seen.
pub fn stays(kept: &Kept) -> Vec<Standing> {
    let windows = windows(kept);
    let Some(standing) = standing(&windows.feature) else {
        return Vec::new();
    };
    let mut stays: Vec<Standing> = Vec::new();
    for (middle_s, standing) in windows.middle_s.iter().zip(standing) {
        if !standing {
            continue;
        }
        let (start_s, end_s) = (middle_s - 0.5 * STRIDE_S, middle_s + 0.5 * STRIDE_S);
        match stays.last_mut() {
            Some(last) if start_s - last.end_s < 0.5 * STRIDE_S => last.end_s = end_s,
            _ => stays.push(Standing { start_s, end_s }),
        }
    }
    stays.retain(|stay| stay.lasts_s() >= LEAST_S);
    stays
}

fn windows(kept: &Kept) -> Windows {
    let mut windows = Windows::default();
    for run in kept.runs() {
        windows.add(kept, run);
    }
    windows
}

impl Windows {
    /// Windows of an unbroken stretch; what is logged right before and after it is ignored.
    fn add(&mut self, kept: &Kept, run: Range<usize>) {
        let first_s = kept.time_s[run.start];
        let steps = ((kept.time_s[run.end - 1] - first_s) / STEP_S) as usize + 1;
        if steps > MOST_STEPS * run.len() {
            return;
        }
        let mut index = run.start;
        let places: Vec<(f64, f64)> = (0..steps)
            .map(|step| {
                let time_s = first_s + step as f64 * STEP_S;
                while index + 2 < run.end && kept.time_s[index + 1] < time_s {
                    index += 1;
                }
                let next = (index + 1).min(run.end - 1);
                let lapse_s = (kept.time_s[next] - kept.time_s[index]).max(1e-9);
                let share = ((time_s - kept.time_s[index]) / lapse_s).clamp(0.0, 1.0);
                let between = |column: &[f64]| column[index] + share * (column[next] - column[index]);
                (between(&kept.east_m), between(&kept.north_m))
            })
            .collect();
        // Sums of the lengths up to each step, and their number, for each lag.
        let sums = LAGS_S.map(|lag_s| {
            let lag = (lag_s / STEP_S) as usize;
            let mut sums = vec![(0.0, 0_u32)];
            let (mut sum, mut count) = (0.0, 0);
            for step in 0..steps {
                if step >= lag && step + lag < steps {
                    let (before, here, after) = (places[step - lag], places[step], places[step + lag]);
                    sum += math::hypot(
                        after.0 - 2.0 * here.0 + before.0,
                        after.1 - 2.0 * here.1 + before.1,
                    );
                    count += 1;
                }
                sums.push((sum, count));
            }
            sums
        });
        let (half, stride) = ((0.5 * WINDOW_S / STEP_S) as usize, (STRIDE_S / STEP_S) as usize);
        for step in (0..steps).step_by(stride) {
            let (from, to) = (step.saturating_sub(half), (step + half).min(steps));
            let means = [0, 1, 2].map(|lag: usize| {
                let count = f64::from(sums[lag][to].1 - sums[lag][from].1);
                (count >= LEAST_LOGGED * 2.0 * half as f64)
                    .then(|| 2.0 * math::ln((sums[lag][to].0 - sums[lag][from].0) / count))
            });
            let feature = match means {
                [Some(short), Some(middle), Some(long)] => Some([short, middle, long]),
                _ => None,
            };
            self.middle_s.push(first_s + step as f64 * STEP_S);
            self.feature.push(feature);
        }
    }
}

/// The windows in which the machine stands.
fn standing(features: &[Option<Feature>]) -> Option<Vec<bool>> {
    let mut driving = [0.0; 3];
    for (lag, driving) in driving.iter_mut().enumerate() {
        let mut known: Vec<f64> = features.iter().flatten().map(|feature| feature[lag]).collect();
        known.sort_by(f64::total_cmp);
        *driving = math::quantile(&known, DRIVES_QUANTILE)?;
    }
    let least = driving.map(|driving| driving + 2.0 * math::ln(LEAST_OF_DRIVING));
    let features: Vec<Option<Feature>> = features
        .iter()
        .map(|feature| feature.map(|feature| [0, 1, 2].map(|lag| feature[lag].max(least[lag]))))
        .collect();
    let features = features.as_slice();
    let threshold = driving[2] + 2.0 * math::ln(STANDS_BELOW);
    // Probability of standing.
    let mut stands: Vec<f64> = features
        .iter()
        .map(|feature| match feature {
            Some(feature) => f64::from(u8::from(feature[2] < threshold)),
            None => 0.5,
        })
        .collect();
    let mut states: Option<[Student; 2]> = None;
    for _ in 0..ROUNDS {
        let shares: [Vec<f64>; 2] = [stands.clone(), stands.iter().map(|share| 1.0 - share).collect()];
        let [stand, drive] = [0, 1].map(|state| {
            let old = states.as_ref().map(|states| &states[state]);
            Student::fitted(features, &shares[state], old)
        });
        let found = [stand?, drive?];
        stands = smoothed(features, &found);
        states = Some(found);
    }
    let [stand, drive] = states?;
    let apart: f64 = drive
        .mean
        .iter()
        .zip(&stand.mean)
        .map(|(drive, stand)| drive - stand)
        .sum();
    (apart > APART).then(|| stands.iter().map(|share| *share > 0.5).collect())
}

/// A Student density of three variables with the lower triangle of its scale matrix' Cholesky factor.
struct Student {
    mean: Feature,
    lower: [[f64; 3]; 3],
}

impl Student {
    /// Weighted moments; values far off by the former density count for less.
    fn fitted(features: &[Option<Feature>], shares: &[f64], old: Option<&Self>) -> Option<Self> {
        let weigh = |feature: &Feature, share: f64| {
            share * old.map_or(1.0, |old| (FREEDOM + 3.0) / (FREEDOM + old.distance(feature)))
        };
        let known = || {
            features
                .iter()
                .zip(shares)
                .filter_map(|(feature, share)| Some((feature.as_ref()?, *share)))
        };
        let total: f64 = known().map(|(_, share)| share).sum();
        let weights: f64 = known().map(|(feature, share)| weigh(feature, share)).sum();
        if total < WINDOW_S / STRIDE_S {
            return None;
        }
        let mut mean = [0.0; 3];
        for (feature, share) in known() {
            let weight = weigh(feature, share) / weights;
            mean.iter_mut()
                .zip(feature)
                .for_each(|(mean, value)| *mean += weight * value);
        }
        let mut scale = [[0.0; 3]; 3];
        for (feature, share) in known() {
            let weight = weigh(feature, share) / total;
            for row in 0..3 {
                for column in 0..3 {
                    scale[row][column] +=
                        weight * (feature[row] - mean[row]) * (feature[column] - mean[column]);
                }
            }
        }
        let mut lower = [[0.0; 3]; 3];
        for row in 0..3 {
            for column in 0..=row {
                let known: f64 = (0..column).map(|at| lower[row][at] * lower[column][at]).sum();
                lower[row][column] = if row == column {
                    (scale[row][row] + 1e-3 - known).max(1e-6).sqrt()
                } else {
                    (scale[row][column] - known) / lower[column][column]
                };
            }
        }
        Some(Self { mean, lower })
    }

    /// Squared distance from the mean in standard deviations.
    fn distance(&self, feature: &Feature) -> f64 {
        let mut solved = [0.0; 3];
        for row in 0..3 {
            let known: f64 = (0..row).map(|at| self.lower[row][at] * solved[at]).sum();
            solved[row] = (feature[row] - self.mean[row] - known) / self.lower[row][row];
        }
        solved.iter().map(|value| value * value).sum()
    }

    fn log_density(&self, feature: &Feature) -> f64 {
        let log_root: f64 = (0..3).map(|at| math::ln(self.lower[at][at])).sum();
        -log_root - 0.5 * (FREEDOM + 3.0) * math::ln(1.0 + self.distance(feature) / FREEDOM)
    }
}

/// Probability of standing in each window, given all of them (forwards and backwards).
fn smoothed(features: &[Option<Feature>], states: &[Student; 2]) -> Vec<f64> {
    let (leaves, arrives) = (LEAVES_PER_S * STRIDE_S, ARRIVES_PER_S * STRIDE_S);
    let step = |[stand, drive]: [f64; 2]| {
        [
            stand * (1.0 - leaves) + drive * arrives,
            stand * leaves + drive * (1.0 - arrives),
        ]
    };
    let back = |[stand, drive]: [f64; 2]| {
        [
            (1.0 - leaves) * stand + leaves * drive,
            arrives * stand + (1.0 - arrives) * drive,
        ]
    };
    let even = |[stand, drive]: [f64; 2]| {
        let sum = (stand + drive).max(f64::MIN_POSITIVE);
        [stand / sum, drive / sum]
    };
    let seen: Vec<[f64; 2]> = features
        .iter()
        .map(|feature| {
            let Some(feature) = feature else { return [1.0; 2] };
            let logs = [0, 1].map(|state| WEIGHT * states[state].log_density(feature));
            let most = logs[0].max(logs[1]);
            logs.map(|log| math::exp(log - most))
        })
        .collect();
    let mut forward = Vec::with_capacity(seen.len());
    let mut now = [0.5, 0.5];
    for [stand, drive] in &seen {
        let next = step(now);
        now = even([next[0] * stand, next[1] * drive]);
        forward.push(now);
    }
    let mut later = [1.0, 1.0];
    for at in (0..seen.len()).rev() {
        let both = even([forward[at][0] * later[0], forward[at][1] * later[1]]);
        later = even(back([seen[at][0] * later[0], seen[at][1] * later[1]]));
        forward[at] = both;
    }
    forward.into_iter().map(|both| both[0]).collect()
}

/// The fixes outside all stays; nothing leads across a stay.
pub fn left_out(kept: &Kept, stays: &[Standing]) -> Kept {
    let mut driven = Kept::default();
    let mut left = stays.iter().peekable();
    let mut passed = 0;
    for index in 0..kept.len() {
        let time_s = kept.time_s[index];
        while left.next_if(|stay| stay.end_s < time_s).is_some() {
            passed += 1;
        }
        if left.peek().is_some_and(|stay| stay.start_s <= time_s) {
            continue;
        }
        driven.time_s.push(time_s);
        driven.east_m.push(kept.east_m[index]);
        driven.north_m.push(kept.north_m[index]);
        driven.run.push(kept.run[index] + passed);
    }
    driven
}

/// Inner parts of the stays that are long enough to show how the error wanders.
fn inner(kept: &Kept, stays: &[Standing]) -> Vec<Range<usize>> {
    let long = stays.iter().filter(|stay| stay.lasts_s() >= TELLING_S);
    long.map(|stay| stay.fixes(kept, END_CUT_S)).collect()
}

/// Whether two stays and more were at one place, as a charging machine's are.
fn recur(kept: &Kept, stays: &[Range<usize>], wanders_m: f64) -> bool {
    let mean = |stay: &Range<usize>| halts::halt(kept, stay.clone(), (0.0, 0.0)).place;
    let places: Vec<_> = stays.iter().filter(|stay| !stay.is_empty()).map(mean).collect();
    places.len() > 1
        && places
            .iter()
            .all(|place| place.distance_m(places[0]) <= wanders_m)
}

/// How far positions wander within a lag while the machine stands, per axis: root of half the mean square change, robust.
/// `None` if no stay is long enough.
pub fn change_m(kept: &Kept, stays: &[Standing], lag_s: f64) -> Option<f64> {
    changes_m(kept, &inner(kept, stays), lag_s)
}

fn changes_m(kept: &Kept, at_rest: &[Range<usize>], lag_s: f64) -> Option<f64> {
    let change_m2 = kept.change_m2(at_rest, lag_s);
    change_m2.map(|change_m2| (0.5 * change_m2).sqrt())
}

/// Median distance between two positions this far apart in time; `None` if there are too few.
fn moved_m(kept: &Kept, stretches: &[Range<usize>], lag_s: f64) -> Option<f64> {
    let mut moved_m = Vec::new();
    kept.for_each_change(stretches, lag_s, |east_m, north_m| {
        moved_m.push(math::hypot(east_m, north_m))
    });
    let enough = moved_m.len() >= 60;
    math::median(&mut moved_m).filter(|_| enough)
}

/// Joins the halts into which drift has broken one stay; the place is where it stood longest.
pub fn of_one_stay(halts: Vec<Halt>, stays: &[Standing]) -> Vec<Halt> {
    /// Both ends of a stay are known to within half a window.
    const SLACK_S: f64 = 90.0;
    let lasts_s = |halt: &Halt| halt.end_s - halt.start_s;
    let mut stays = stays.iter().peekable();
    let mut joined: Vec<(Option<Standing>, Halt)> = Vec::new();
    for halt in halts {
        while stays.next_if(|stay| stay.end_s + SLACK_S < halt.end_s).is_some() {}
        let stay = (stays.peek().copied().copied()).filter(|stay| stay.start_s - SLACK_S <= halt.start_s);
        match joined.last_mut() {
            Some((Some(last), whole)) if stay == Some(*last) => {
                let (start_s, end_s) = (whole.start_s, halt.end_s);
                if lasts_s(&halt) > lasts_s(whole) {
                    *whole = halt;
                }
                (whole.start_s, whole.end_s) = (start_s, end_s);
            }
            _ => joined.push((stay, halt)),
        }
    }
    joined.into_iter().map(|(_, halt)| halt).collect()
}

/// Stays as halts.
pub fn as_halts(kept: &Kept, stays: &[Standing]) -> Vec<Halt> {
    let with_fixes = stays.iter().map(|stay| (stay, stay.fixes(kept, 0.0)));
    with_fixes
        .filter(|(_, fixes)| !fixes.is_empty())
        .map(|(stay, fixes)| halts::halt(kept, fixes, (stay.start_s, stay.end_s)))
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A first-order error forgets by `keep` from fix to fix: its mean varies as that of white errors (1 + keep) / (1 - keep) times as large
    /// in the square.
    #[test]
    fn errors_that_forget_within_seconds_average_out_as_larger_white_ones_do() {
        let (sd_m, period_s) = (0.7, 1.0);
        for time_s in [2.0, 3.0, 5.0, 10.0] {
            let change_m = |lag_s: f64| Some(sd_m * (1.0 - math::exp(-lag_s / time_s)).sqrt());
            let keep = math::exp(-period_s / time_s);
            let exact_m = sd_m * ((1.0 + keep) / (1.0 - keep)).sqrt();
            let found_m = as_white_m(change_m, sd_m, period_s);
            assert!((found_m / exact_m - 1.0).abs() < 0.1, "{found_m} m for {exact_m}");
        }
        assert_eq!(as_white_m(|_| Some(sd_m), sd_m, period_s), sd_m);
    }
}
