//! How wrong are the positions, as far as the log itself shows it?
//!
//! White part: second differences of a straight, steady drive hold nothing but noise, with variance 6 w^2 for white noise of
//! standard deviation w; the median excludes turns. Slow part: the structure function D(h) = E (z(t+h) - z(t))^2 of standing
//! time grows from 2 w^2, by q h at first and by twice the drift's variance in the end (first-order Gauss-Markov process,
//! Brown & Hwang, Introduction to Random Signals and Applied Kalman Filtering). Approximate: a standing machine sees only
//! one sky, and a receiver that holds its position while standing shows no error at all; this is recognised by repeated
//! positions and not believed.

use crate::{Kept, NoiseEstimate, ReckonedDrift, halts::Rest};
use tussock_types::{FixQuality, NoiseSource, Trace, math};

/// A smaller error is not believed of any garden log: antennas, machines and lawns are not that smooth (common practice, no
/// source).
pub const LEAST_WHITE_M: f64 = 0.004;

/// Random-walk rate relative to the white part if no standing time shows it, per second. Between the values of centimetre
/// logs (0.008) and metre logs (0.3) with simulated first-order Gauss-Markov drift.
const USUAL_RATE_PER_S: f64 = 0.03;

/// Usual time over which the slow part of the error changes (customary for multipath; from memory).
pub const USUAL_DRIFT_TIME_S: f64 = 600.0;

impl NoiseEstimate {
    /// Whether the slow part is known of the receiver, not seen in the log.
    pub fn is_known(&self) -> bool {
        matches!(self.source, NoiseSource::DeviceCard | NoiseSource::Stated)
    }

    /// Slow part per axis; where no stay is long enough to show it, what it grows to in a usual drift time
    /// (`sigma^2 = q tau / 2`).
    pub(crate) fn slow_m(&self) -> f64 {
        let grown_m = || (0.5 * USUAL_DRIFT_TIME_S * self.drift_rate_m2_per_s).sqrt();
        self.drift_m.unwrap_or_else(grown_m)
    }
}

/// Median time between neighbouring fixes of a run; 1 s for a trace of fewer than two fixes.
pub fn usual_period_s(kept: &Kept) -> f64 {
    let mut steps_s: Vec<f64> = kept.time_s.windows(2).map(|pair| pair[1] - pair[0]).collect();
    math::median(&mut steps_s)
        .filter(|step_s| *step_s > 0.0)
        .unwrap_or(1.0)
}

/// What the roughness of the path shows.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Roughness {
    /// White part per axis, never below [`LEAST_WHITE_M`].
    pub white_m: f64,
    /// Fraction of neighbouring fixes that repeat each other to the last digit.
    pub repeated_fraction: f64,
}

/// White part of the error from second differences of moving fixes about one second apart.
pub fn roughness(kept: &Kept, period_s: f64) -> Roughness {
    let stride = ((1.0 / period_s).round() as usize).max(1);
    let mut second_m = Vec::new();
    let mut repeated = 0_usize;
    for index in 2 * stride..kept.len() {
        let (first, middle) = (index - 2 * stride, index - stride);
        if kept.run[first] != kept.run[index] {
            continue;
        }
        let east_m = kept.east_m[index] - 2.0 * kept.east_m[middle] + kept.east_m[first];
        let north_m = kept.north_m[index] - 2.0 * kept.north_m[middle] + kept.north_m[first];
        if east_m == 0.0 && north_m == 0.0 {
            repeated += 1;
            continue;
        }
        second_m.push(east_m.abs());
        second_m.push(north_m.abs());
    }
    let compared = second_m.len() / 2 + repeated;
    let repeated_fraction = repeated as f64 / compared.max(1) as f64;
    // Half of |N(0, 6 w^2)| lies below 0.6745 sqrt(6) w.
    let white_m =
        math::median(&mut second_m).map_or(LEAST_WHITE_M, |value| value / (0.6745 * 6.0_f64.sqrt()));
    Roughness {
        white_m: white_m.max(LEAST_WHITE_M),
        repeated_fraction,
    }
}

/// Usual driving speed: the speed that most windows of eight seconds and more agree on, without standing.
///
/// Within eight seconds most windows hold no turn; the noise of the two ends is subtracted from the squared length. The
/// noisier the positions, the longer the window, up to sixteen seconds: drift alone must not look like a drive.
pub fn usual_speed_mps(kept: &Kept, white_m: f64, drift_rate_m2_per_s: f64) -> Option<f64> {
    let window_s = (8.0 + 20.0 * white_m).min(16.0);
    // Displacement of a machine that stands, per axis.
    let standing_m2 = 2.0 * white_m * white_m + drift_rate_m2_per_s * window_s;
    const BIN_MPS: f64 = 0.01;
    let mut speeds_mps = Vec::new();
    let mut start = 0;
    for index in 0..kept.len() {
        while kept.run[start] != kept.run[index] || kept.time_s[index] - kept.time_s[start] > window_s + 1e-6
        {
            start += 1;
        }
        let lapse_s = kept.time_s[index] - kept.time_s[start];
        if lapse_s < 0.6 * window_s {
            continue;
        }
        let square_m2 = kept.place(index).distance_m(kept.place(start)).powi(2) - 2.0 * standing_m2;
        let speed_mps = square_m2.max(0.0).sqrt() / lapse_s;
        let threshold_mps = (2.2 * standing_m2.sqrt() / lapse_s).max(0.04);
        if speed_mps > threshold_mps {
            speeds_mps.push(speed_mps);
        }
    }
    if speeds_mps.is_empty() {
        // Sparse logs: the upper part of the chord speeds, because chords cut corners.
        let mut chords_mps: Vec<f64> = (1..kept.len())
            .filter(|index| kept.run[*index] == kept.run[index - 1])
            .map(|index| {
                kept.place(index).distance_m(kept.place(index - 1))
                    / (kept.time_s[index] - kept.time_s[index - 1])
            })
            .filter(|speed_mps| *speed_mps > 0.02)
            .collect();
        if chords_mps.len() < 3 {
            return None;
        }
        let upper = chords_mps.len() * 9 / 10;
        let (_, value, _) = chords_mps.select_nth_unstable_by(upper, f64::total_cmp);
        return Some(*value);
    }
    if speeds_mps.len() < 5 {
        return None;
    }
    let fastest_mps = speeds_mps.iter().copied().fold(0.0, f64::max);
    let bins = ((fastest_mps / BIN_MPS) as usize + 8).min(4000);
    let mut counts = vec![0.0_f64; bins];
    for speed_mps in &speeds_mps {
        if let Some(count) = counts.get_mut((speed_mps / BIN_MPS) as usize) {
            *count += 1.0;
        }
    }
    // Seven-bin sums: a mode that chance in one bin does not move. The straight windows are the fastest, so the mode is
    // searched for above the median.
    let window = |centre: usize| -> f64 {
        counts[centre.saturating_sub(3)..(centre + 4).min(bins)]
            .iter()
            .sum()
    };
    let mode = (0..bins).max_by(|a, b| window(*a).total_cmp(&window(*b)))?;
    let near_mps: Vec<f64> = speeds_mps
        .iter()
        .copied()
        .filter(|speed_mps| (speed_mps - (mode as f64 + 0.5) * BIN_MPS).abs() < 4.0 * BIN_MPS)
        .collect();
    let mut near_mps = near_mps;
    math::median(&mut near_mps)
}

/// What the receiver says about itself.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Claims {
    /// Median standard deviation per axis that it claims.
    pub claimed_sd_m: Option<f64>,
    /// Median HDOP.
    pub hdop: Option<f64>,
    /// Commonest quality.
    pub quality: Option<FixQuality>,
}

impl Claims {
    /// Reads them from a trace.
    pub fn of(trace: &Trace) -> Self {
        let finite = |column: &[f32]| -> Vec<f64> {
            column
                .iter()
                .copied()
                .filter(|value| value.is_finite())
                .map(f64::from)
                .collect()
        };
        let quality = FixQuality::ALL
            .into_iter()
            .max_by_key(|quality| trace.quality.iter().filter(|found| *found == quality).count())
            .filter(|quality| *quality != FixQuality::Unknown && !trace.is_empty());
        Self {
            claimed_sd_m: math::median(&mut finite(&trace.claimed_sd_m)),
            hdop: math::median(&mut finite(&trace.hdop)),
            quality,
        }
    }

    /// User range error by quality (common practice, no source): metres of horizontal error per unit of HDOP.
    fn user_range_error_m(quality: FixQuality) -> f64 {
        match quality {
            FixQuality::RtkFixed => 0.015,
            FixQuality::RtkFloat => 0.3,
            FixQuality::Differential | FixQuality::Precise => 1.0,
            _ => 2.5,
        }
    }
}

/// Slow part of the error according to what the receiver calls its fixes, if nothing better is known (common practice, no
/// source).
fn usual_drift_m(quality: FixQuality) -> f64 {
    match quality {
        FixQuality::RtkFixed | FixQuality::Simulated => 0.02,
        FixQuality::RtkFloat => 0.3,
        FixQuality::Differential | FixQuality::Precise => 1.0,
        _ => 2.0,
    }
}

/// The slow part per axis to assume: as measured while standing, else as known of the receiver, else what is usual for such fixes, or less
/// if straight drives do not allow that much.
pub(crate) fn reckoned_drift(
    noise: &NoiseEstimate,
    allowed_m: Option<f64>,
    claims: &Claims,
) -> ReckonedDrift {
    if let Some(drift_m) = noise.drift_m {
        return match noise.is_known() {
            true => ReckonedDrift::Known { drift_m },
            false => ReckonedDrift::Measured { drift_m },
        };
    }
    let usual_m = expected_drift_m(None, claims);
    match allowed_m {
        Some(drift_m) if drift_m < usual_m => ReckonedDrift::Driven { drift_m },
        _ => ReckonedDrift::Usual { drift_m: usual_m },
    }
}

/// The same before anything is measured: as known of the receiver, else what is usual for such fixes.
pub(crate) fn expected_drift_m(known_m: Option<f64>, claims: &Claims) -> f64 {
    known_m.unwrap_or_else(|| usual_drift_m(claims.quality.unwrap_or(FixQuality::Unknown)))
}

/// Combines what standing time, driving and the receiver show.
pub fn estimate(
    kept: &Kept,
    rests: &[Rest],
    rough: Roughness,
    period_s: f64,
    speed_mps: Option<f64>,
    claims: &Claims,
) -> Seen {
    let structure = structure_function(kept, rests, rough.white_m);
    // Driving shows the white part only if a step is short compared with a leg.
    let driving_tells = period_s <= 2.5 && speed_mps.is_some();
    let (white_m, source) = match (&structure, driving_tells) {
        (Some(found), true) => (rough.white_m.max(found.white_m), NoiseSource::StationScatter),
        (Some(found), false) => (found.white_m, NoiseSource::StationScatter),
        (None, true) => (rough.white_m, NoiseSource::DrivingRoughness),
        (None, false) => match (claims.claimed_sd_m, claims.hdop, claims.quality) {
            (Some(sd_m), _, _) => (sd_m, NoiseSource::ReceiverClaim),
            (None, Some(hdop), Some(quality)) => (
                hdop * Claims::user_range_error_m(quality) / 2.0_f64.sqrt(),
                NoiseSource::DilutionOfPrecision,
            ),
            _ => (2.0, NoiseSource::Default),
        },
    };
    let white_m = white_m.max(LEAST_WHITE_M);
    let drift_rate_m2_per_s = structure
        .as_ref()
        .and_then(|found| found.rate_m2_per_s)
        .unwrap_or(USUAL_RATE_PER_S * white_m * white_m)
        .clamp(1e-4 * white_m * white_m, white_m * white_m);
    let seen = NoiseEstimate {
        white_m,
        drift_m: structure.as_ref().and_then(|found| found.drift_m),
        drift_rate_m2_per_s,
        drift_time_s: None,
        source,
    };
    Seen {
        noise: seen,
        shows_drift: structure.is_some_and(|found| found.is_long),
    }
}

/// What a log shows of the error of its positions.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Seen {
    /// The error law.
    pub noise: NoiseEstimate,
    /// Whether stays are long enough to show the slow part.
    pub shows_drift: bool,
}

struct Structure {
    white_m: f64,
    rate_m2_per_s: Option<f64>,
    drift_m: Option<f64>,
    /// Whether stays are long enough to show the slow part.
    is_long: bool,
}

/// Structure function of standing time. `None` with less than two minutes of it, or if positions are held.
fn structure_function(kept: &Kept, rests: &[Rest], rough_white_m: f64) -> Option<Structure> {
    // The ends are cut off: the machine may still be rolling into place.
    const END_CUT_S: f64 = 15.0;
    let stretches: Vec<std::ops::Range<usize>> = rests
        .iter()
        .map(|rest| {
            let first = (rest.first..rest.end).find(|index| kept.time_s[*index] >= rest.start_s + END_CUT_S);
            let last = (rest.first..rest.end)
                .rev()
                .find(|index| kept.time_s[*index] <= rest.end_s - END_CUT_S);
            first.unwrap_or(0)..last.map_or(0, |index| index + 1)
        })
        .filter(|range| range.end > range.start + 10)
        .collect();
    let total_s: f64 = stretches
        .iter()
        .map(|range| kept.time_s[range.end - 1] - kept.time_s[range.start])
        .sum();
    if total_s < 120.0 {
        return None;
    }
    let mut held = 0_usize;
    let mut steps = 0_usize;
    for range in &stretches {
        for index in range.start + 1..range.end {
            steps += 1;
            held += usize::from(kept.place(index) == kept.place(index - 1));
        }
    }
    if held * 2 > steps {
        return None;
    }
    let at_lag = |lag_s: f64| kept.change_m2(&stretches, lag_s);
    let shortest_s = stretches
        .iter()
        .map(|range| {
            (kept.time_s[range.end - 1] - kept.time_s[range.start]) / (range.end - range.start - 1) as f64
        })
        .fold(f64::INFINITY, f64::min)
        .max(0.9);
    let near_m2 = at_lag(shortest_s)?;
    let white_m = (near_m2 / 2.0).sqrt().max(LEAST_WHITE_M);
    let far_m2 = at_lag(30.0);
    let rate_m2_per_s = far_m2.map(|far_m2| ((far_m2 - near_m2) / (30.0 - shortest_s)).max(0.0));
    let long_m2 = at_lag(900.0).or_else(|| at_lag(300.0));
    // If no stay is long enough: what the slow part grows to in a usual drift time, sigma^2 = q tau / 2.
    let drift_m = long_m2
        .map(|long_m2| ((long_m2 - near_m2) / 2.0).max(0.0).sqrt())
        .or_else(|| rate_m2_per_s.map(|rate_m2_per_s| (0.5 * USUAL_DRIFT_TIME_S * rate_m2_per_s).sqrt()));
    // A rest that is much smoother than the drive was filtered by the receiver: take its slow part, not its white part.
    let white_m = if white_m < 0.3 * rough_white_m {
        rough_white_m
    } else {
        white_m
    };
    Some(Structure {
        white_m,
        rate_m2_per_s,
        drift_m,
        is_long: long_m2.is_some(),
    })
}
