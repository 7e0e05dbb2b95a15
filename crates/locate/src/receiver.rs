//! What is known of a receiver before its log is read?
//!
//! A log whose machine never stands long enough does not show how its positions wander. Then somebody may say so: with a device
//! card, the recorded error of a stay of the same receiver, or with two numbers. The card's law is fitted as that of the log's own stays
//! would be ([`crate::drift`], [`crate::stays`]); what the log itself shows comes first. Approximate: receiver and sky were the same then.
//!
//! Cost: that of [`crate::drift::fit`], once for all logs of a garden.

use crate::stays::{Smooth, Standing};
use crate::{Kept, NoiseEstimate, Track, blocks, drift};
use std::ops::Range;
use tussock_types::{ErrorSeries, NoiseSource, PositionSettings};

/// Shorter stays tell little of the slow part.
const LEAST_S: f64 = 600.0;
/// Rolling into place and out of it.
const END_CUT_S: f64 = 45.0;
/// Between the stays of a written series: longer than what parts them, short enough to be played.
const BETWEEN_S: f64 = 60.0;

/// How a receiver errs, known from elsewhere.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ReceiverLaw {
    /// White part per axis; `None` where only the slow part is known.
    pub white_m: Option<f64>,
    /// Slow part per axis.
    pub drift_m: f64,
    /// Time in which it forgets itself.
    pub drift_time_s: f64,
    /// What a receiver that smooths its own positions shows of itself at rest.
    pub(crate) smooth: Option<Smooth>,
    source: NoiseSource,
}

impl ReceiverLaw {
    /// The law of the card, else of the stated numbers. `None` without either, and of a card with less than ten minutes or held positions.
    pub fn of(settings: &PositionSettings) -> Option<Self> {
        let errors = settings.card.as_ref().and_then(|card| card.errors.as_deref());
        match (errors, settings.drift_m) {
            (Some(errors), _) => Self::of_card(errors),
            (None, Some(drift_m)) => Some(Self {
                white_m: None,
                drift_m,
                drift_time_s: settings.drift_time_s,
                smooth: None,
                source: NoiseSource::Stated,
            }),
            (None, None) => None,
        }
    }

    fn of_card(errors: &ErrorSeries) -> Option<Self> {
        let (kept, stretches) = at_rest(errors);
        let fit = drift_at_rest(&kept, &stretches)?;
        Some(Self {
            white_m: Some(fit.white_m),
            drift_m: fit.drift_m,
            drift_time_s: fit.drift_time_s,
            smooth: Smooth::of(&kept, &stretches, errors.step_s()),
            source: NoiseSource::DeviceCard,
        })
    }

    /// An error law with the slow part from here.
    pub(crate) fn fill(&self, noise: NoiseEstimate) -> NoiseEstimate {
        let seen = [NoiseSource::DrivingRoughness, NoiseSource::StationScatter];
        let white_m = self.white_m.filter(|_| !seen.contains(&noise.source));
        NoiseEstimate {
            white_m: white_m.unwrap_or(noise.white_m),
            drift_m: Some(self.drift_m),
            drift_rate_m2_per_s: (2.0 * self.drift_m * self.drift_m / self.drift_time_s)
                .max(1e-4 * noise.white_m * noise.white_m),
            drift_time_s: Some(self.drift_time_s),
            source: self.source,
        }
    }
}

/// The error law of fixes at rest, all at one place; `None` where they are too few, or held.
pub(crate) fn drift_at_rest(kept: &Kept, stretches: &[Range<usize>]) -> Option<drift::DriftFit> {
    let stands = stretches.iter().map(|stretch| drift::Stand {
        fixes: blocks::blocks(kept, stretch.clone(), blocks::BLOCK_S),
        place: 0,
    });
    drift::fit(&stands.collect::<Vec<_>>())
}

impl Track {
    /// What the receiver said while the machine stood for ten minutes and more, less where that was: the mean of all stays at one
    /// place, or of each elsewhere. Metres east and north, times in seconds from the first; stays follow each other after a minute, and
    /// all of a log that never drives is one. Empty without any.
    pub fn errors_at_rest(&self) -> ErrorSeries {
        let mut stands = self.stands();
        drift::same_place(&mut stands);
        let mut series = ErrorSeries::default();
        for stand in &stands {
            let together: Vec<&blocks::Blocks> = (stands.iter())
                .filter(|other| other.place == stand.place)
                .map(|other| &other.fixes)
                .collect();
            let count: usize = together.iter().map(|fixes| fixes.time_s.len()).sum();
            let mean = |column: fn(&blocks::Blocks) -> &Vec<f64>| {
                together.iter().flat_map(|fixes| column(fixes)).sum::<f64>() / count as f64
            };
            let (east_m, north_m) = (mean(|fixes| &fixes.east_m), mean(|fixes| &fixes.north_m));
            let begins_s = series.time_s.last().map_or(0.0, |last_s| last_s + BETWEEN_S);
            let fixes = &stand.fixes;
            let since_s = fixes
                .time_s
                .iter()
                .map(|time_s| begins_s + (time_s - fixes.time_s[0]));
            series.time_s.extend(since_s);
            series
                .east_m
                .extend(fixes.east_m.iter().map(|value_m| value_m - east_m));
            series
                .north_m
                .extend(fixes.north_m.iter().map(|value_m| value_m - north_m));
        }
        series
    }

    /// Its long stays, without their ends; never one without fixes.
    fn stands(&self) -> Vec<drift::Stand> {
        let kept = &self.kept;
        let inner = |(start_s, end_s)| Standing { start_s, end_s }.fixes(kept, END_CUT_S);
        let stretches: Vec<Range<usize>> = if !(self.driving_s() >= 1.0) {
            kept.runs()
        } else if self.smooths {
            let stays = self.stays.iter();
            stays.map(|stay| inner((stay.start_s, stay.end_s))).collect()
        } else {
            let halts = self.halts.iter();
            halts.map(|halt| inner((halt.start_s, halt.end_s))).collect()
        };
        let is_long = |stretch: &Range<usize>| {
            !stretch.is_empty()
                && kept.time_s[stretch.end - 1] - kept.time_s[stretch.start] >= LEAST_S - 2.0 * END_CUT_S
        };
        let long = stretches.into_iter().filter(is_long);
        long.map(|stretch| stand(kept, stretch)).collect()
    }
}

/// All fixes of a stretch at rest.
fn stand(kept: &Kept, stretch: Range<usize>) -> drift::Stand {
    drift::Stand {
        fixes: blocks::Blocks {
            time_s: kept.time_s[stretch.clone()].to_vec(),
            east_m: kept.east_m[stretch.clone()].to_vec(),
            north_m: kept.north_m[stretch].to_vec(),
            ..blocks::Blocks::default()
        },
        place: 0,
    }
}

/// The card as fixes of a machine at rest, and its unbroken stretches.
fn at_rest(errors: &ErrorSeries) -> (Kept, Vec<Range<usize>>) {
    let stretches = errors.stretches();
    let mut kept = Kept {
        time_s: errors.time_s.clone(),
        east_m: errors.east_m.clone(),
        north_m: errors.north_m.clone(),
        ..Kept::default()
    };
    for (number, stretch) in stretches.iter().enumerate() {
        kept.run.extend(stretch.clone().map(|_| number as u32));
    }
    (kept, stretches)
}
