//! What is known of a receiver before its log is read?
//!
//! A log whose machine never stands long enough does not show how its positions wander. Then somebody may say so: with a device
//! card, the recorded error of a stay of the same receiver, or with two numbers. The card's law is fitted as that of the log's own stays
//! would be ([`crate::drift`], [`crate::stays`]); what the log itself shows comes first. Approximate: receiver and sky were the same then.
//!
//! Cost: that of [`crate::drift::fit`], once for all logs of a garden.

use crate::stays::Smooth;
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
    /// place, or of each elsewhere. Stays follow each other after a minute; all of a log that never drives is one. Empty without any.
    pub fn errors_at_rest(&self) -> ErrorSeries {
        let kept = &self.kept;
        let within = |start_s: f64, end_s: f64| {
            let first = kept
                .time_s
                .partition_point(|time_s| *time_s < start_s + END_CUT_S);
            let end = kept.time_s.partition_point(|time_s| *time_s <= end_s - END_CUT_S);
            first..end.max(first)
        };
        let stretches: Vec<Range<usize>> = if !(self.driving_s() >= 1.0) {
            kept.runs()
        } else if self.smooths {
            self.stays
                .iter()
                .map(|stay| within(stay.start_s, stay.end_s))
                .collect()
        } else {
            self.halts
                .iter()
                .map(|halt| within(halt.start_s, halt.end_s))
                .collect()
        };
        let lasts_s = |stretch: &Range<usize>| match stretch.is_empty() {
            true => 0.0,
            false => kept.time_s[stretch.end - 1] - kept.time_s[stretch.start],
        };
        let mut stands: Vec<drift::Stand> = stretches
            .into_iter()
            .filter(|stretch| lasts_s(stretch) >= LEAST_S - 2.0 * END_CUT_S)
            .map(|stretch| drift::Stand {
                fixes: blocks::Blocks {
                    time_s: kept.time_s[stretch.clone()].to_vec(),
                    east_m: kept.east_m[stretch.clone()].to_vec(),
                    north_m: kept.north_m[stretch].to_vec(),
                    ..blocks::Blocks::default()
                },
                place: 0,
            })
            .collect();
        drift::same_place(&mut stands);
        let mut series = ErrorSeries::default();
        for stand in &stands {
            let together = || stands.iter().filter(|other| other.place == stand.place);
            let middle = |column: fn(&blocks::Blocks) -> &Vec<f64>| {
                let values = together().flat_map(|other| column(&other.fixes));
                values.sum::<f64>() / together().map(|other| other.fixes.time_s.len()).sum::<usize>() as f64
            };
            let (east_m, north_m) = (middle(|fixes| &fixes.east_m), middle(|fixes| &fixes.north_m));
            let start_s = series.time_s.last().map_or(0.0, |last_s| last_s + BETWEEN_S);
            let first_s = stand.fixes.time_s.first().copied().unwrap_or_default();
            let times_s = stand.fixes.time_s.iter();
            series
                .time_s
                .extend(times_s.map(|time_s| start_s + (time_s - first_s)));
            series
                .east_m
                .extend(stand.fixes.east_m.iter().map(|value| value - east_m));
            series
                .north_m
                .extend(stand.fixes.north_m.iter().map(|value| value - north_m));
        }
        series
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
