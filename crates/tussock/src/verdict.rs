//! Is this log good enough?
//!
//! There are two answers. Positions: the smallest pocket that they can show is set by the largest of four errors: wrong
//! positions, an unknown path between fixes, missing digits, and jumps of the receiver. A pocket shows if it is about
//! `WIDTH_PER_SD` (5.4) times wider than the position error per axis. Duration: the smallest pocket that luck does not
//! explain after this much driving, and the number of hours that are missing. Whatever moves like a walk or a car is not the
//! drive of a mower, however good its positions.

use crate::{clock_check, receiver_accuracy, stale_positions};
use tussock_coverage::luck::Drive;
use tussock_locate::anchor::{Anchored, EdgeUse};
use tussock_locate::local_bias::LocalBias;
use tussock_locate::plan_fit::TurnsFit;
use tussock_locate::{PathMethod, ReckonedDrift, Track};
use tussock_survey::interval::{self, WIDTH_PER_SD};
use tussock_survey::walk_round::{WalkRound, walk_round};
use tussock_survey::{Survey, log_findings};
use tussock_types::math;
use tussock_types::{
    DrivenZone, FixQuality, LogFormat, LogLevel, LogVerdict, NoiseSource, Place, PlanOffset, Said, Trace,
};

/// A narrower pocket cannot be distinguished from the gaps between passes.
const LEAST_FINDABLE_M: f64 = 0.3;
/// Less driving than this shows nothing about a lawn: it is a few hundred metres of path (common practice, no source).
const LEAST_DRIVING_S: f64 = 600.0;
/// Judges the logs.
pub(crate) fn verdict(survey: &Survey<'_>, driven_zones: &[DrivenZone]) -> LogVerdict {
    let (settings, traces) = (survey.settings(), survey.job().traces);
    let drive = survey.must_be_a_garden().ok().and_then(|()| survey.drive().ok());
    if let Some(advice) = hopeless(survey) {
        let nothing_m = settings.limits.extent_m;
        return LogVerdict {
            level: LogLevel::Unusable,
            positions: LogLevel::Unusable,
            duration: LogLevel::Unusable,
            smallest_findable_pocket_m2: LogVerdict::pocket_m2(nothing_m),
            smallest_findable_width_m: nothing_m,
            hours_more_needed: None,
            advice,
            remarks: Vec::new(),
        };
    }
    let positions = Positions::of(survey);
    let wanted_m = settings.pockets.min_width_m;
    let positions_level = match positions.width_m() <= wanted_m {
        true => LogLevel::Good,
        false => LogLevel::Limited,
    };
    let walk = walk_round(&survey.tracks, settings);
    let walked_mps = walk.as_ref().map(|walk| walk.speed_mps);
    let duration = Duration::of(survey, drive, walked_mps.or_else(|| survey.walking_pace_mps()));
    let level = positions_level.max(duration.level);
    let width_m = positions.width_m().max(duration.width_m);
    let advice = match (walk, duration.not_a_mower, positions_level) {
        (Some(walk), ..) => walk_advice(survey, walk),
        (None, Some(speed_mps), _) => Said::WalkingPace { speed_mps },
        (None, None, LogLevel::Good) => Said::PositionsRight {
            error_m: positions.error_m,
        },
        (None, None, _) => positions.advice(survey),
    };
    let mut remarks: Vec<Said> = duration.remark(wanted_m).into_iter().collect();
    remarks.extend(step_remarks(survey));
    remarks.extend(clock_check::too_old(&survey.tracks));
    for (track, trace) in survey.tracks.iter().zip(traces) {
        remarks.extend(track.bent.as_ref().map(|bent| bent_remark(survey, bent)));
        remarks.extend(match &track.anchored {
            Some(anchored) => held_remarks(track, anchored),
            None => drift_remark(track, trace).into_iter().collect(),
        });
    }
    let laid = survey.laid.as_ref();
    remarks.extend(laid.and_then(|laid| beside_remark(laid.fit.offset)));
    remarks.extend(survey.plan_fit().into_iter().flat_map(edge_remarks));
    remarks.extend(driven_zones.iter().map(|zone| zone_remark(survey, zone)));
    remarks.extend(silence_remark(survey));
    remarks.extend(left_out_remark(survey));
    if survey.tracks.iter().any(|track| track.station.is_none()) && survey.site.is_none() {
        remarks.push(Said::NoStation {});
    }
    remarks.extend(receiver_accuracy::remarks(&survey.tracks, traces));
    remarks.extend(stale_positions::remarks(traces, survey.job().inputs));
    remarks.extend(clock_check::remark(&survey.tracks, settings));
    LogVerdict {
        level,
        positions: positions_level,
        duration: duration.level,
        smallest_findable_pocket_m2: LogVerdict::pocket_m2(width_m),
        smallest_findable_width_m: width_m,
        hours_more_needed: duration.hours_more,
        advice,
        remarks,
    }
}

/// The advice that a person walked, and what a walk is good for.
fn walk_advice(survey: &Survey<'_>, walk: WalkRound) -> Said {
    let inputs = survey.job().inputs;
    Said::WalkRound {
        speed_mps: walk.speed_mps,
        length_m: walk.length_m,
        area_m2: walk.area_m2,
        gpx: inputs.iter().all(|facts| facts.format == LogFormat::Gpx).into(),
    }
}

/// Width of the smallest pocket that the positions can show: no narrower ones are made.
pub(crate) fn shown_width_m(survey: &Survey<'_>) -> f64 {
    Positions::of(survey).width_m()
}

/// What the positions can show.
struct Positions {
    /// Error per axis.
    error_m: f64,
    /// How far the path between two fixes may be from their chord.
    between_m: f64,
    /// Step size of the coordinates.
    digits_m: f64,
    /// Largest jump that stayed.
    step_m: f64,
    /// Whether the error is assumed, not observed.
    is_guess: bool,
}

impl Positions {
    fn of(survey: &Survey<'_>) -> Self {
        let (traces, inputs) = (survey.job().traces, survey.job().inputs);
        let mut found = Self {
            error_m: 0.0,
            between_m: 0.0,
            digits_m: inputs
                .iter()
                .filter_map(|facts| facts.resolution_m)
                .fold(0.0, f64::max),
            step_m: interval::step_m(survey),
            is_guess: false,
        };
        for (track, trace) in survey.tracks.iter().zip(traces) {
            found.error_m = found.error_m.max(track.position_error_m());
            if track.anchored.is_some() {
                continue;
            }
            // The drift that the log cannot rule out, whether or not the path shows it.
            let drift_m = track.reckoned_drift.drift_m();
            found.is_guess |= matches!(track.reckoned_drift, ReckonedDrift::Usual { .. })
                && commonest(trace) == FixQuality::Unknown
                && (drift_m > track.noise.white_m || track.noise.source == NoiseSource::Default);
            found.error_m = found.error_m.max(drift_m);
            if track.method == PathMethod::Chords {
                // A turn between two fixes may be half a step off the chord.
                let step_m = track.period_s * track.speed_mps.unwrap_or(0.4);
                found.between_m = found.between_m.max(0.5 * step_m);
            }
        }
        found
    }

    fn by_error_m(&self) -> f64 {
        WIDTH_PER_SD * self.error_m
    }

    fn by_digits_m(&self) -> f64 {
        if self.digits_m > 0.02 {
            4.0 * self.digits_m
        } else {
            0.0
        }
    }

    /// Width of the smallest pocket.
    fn width_m(&self) -> f64 {
        self.by_error_m()
            .max(self.between_m)
            .max(self.by_digits_m())
            .max(self.step_m)
            .max(LEAST_FINDABLE_M)
    }

    /// The one thing to change.
    fn advice(&self, survey: &Survey<'_>) -> Said {
        let width_m = self.width_m();
        if self.step_m >= width_m {
            Said::ReceiverJumps {}
        } else if self.by_error_m() >= width_m && self.is_guess {
            Said::ErrorNotShown {}
        } else if self.by_error_m() >= width_m {
            Said::PositionsOff {
                error_m: self.error_m,
            }
        } else if self.between_m >= width_m {
            let periods_s = survey.tracks.iter().map(|track| track.period_s);
            Said::FixesTooRare {
                period_s: periods_s.fold(0.0, f64::max),
            }
        } else {
            Said::DigitsTooCoarse {
                step_m: self.digits_m,
            }
        }
    }
}

/// What this much driving can show.
struct Duration {
    level: LogLevel,
    driving_s: f64,
    /// Gaps up to this width may be luck.
    width_m: f64,
    hours_more: Option<f64>,
    /// The speed, if it is not that of a mower.
    not_a_mower: Option<f64>,
}

impl Duration {
    fn of(survey: &Survey<'_>, drive: Option<&Drive>, not_a_mower: Option<f64>) -> Self {
        let settings = survey.settings();
        let driving_s: f64 = survey.tracks.iter().map(Track::driving_s).sum();
        let (width_m, height_m) = survey.extent_m();
        let everywhere_m = width_m.max(height_m);
        let wanted_m = settings.pockets.min_width_m;
        let by_luck_m = drive.and_then(|drive| drive.findable_width_m());
        let level = match by_luck_m {
            _ if not_a_mower.is_some() || !(driving_s >= LEAST_DRIVING_S) => LogLevel::Unusable,
            Some(luck_m) if luck_m <= wanted_m => LogLevel::Good,
            _ => LogLevel::Limited,
        };
        let hours_more = drive
            .filter(|_| level != LogLevel::Good && not_a_mower.is_none())
            .and_then(|drive| drive.hours_to_decide(wanted_m))
            .map(|hours| hours - driving_s / 3600.0)
            .filter(|hours| *hours > 0.0);
        Self {
            level,
            driving_s,
            width_m: match level {
                LogLevel::Unusable => everywhere_m,
                _ => by_luck_m.unwrap_or(everywhere_m).min(everywhere_m),
            },
            hours_more,
            not_a_mower,
        }
    }

    /// What is missing.
    fn remark(&self, wanted_m: f64) -> Option<Said> {
        let driven_s = self.driving_s;
        match self.hours_more.filter(|hours| *hours < 1000.0) {
            _ if self.level == LogLevel::Good || self.not_a_mower.is_some() => None,
            _ if !(driven_s >= 1.0) => Some(Said::StoodAllTheTime {}),
            Some(missing_h) => Some(Said::DroveTooShortBy {
                driven_s,
                missing_h,
                wanted_m,
            }),
            None => Some(Said::DroveTooShort { driven_s }),
        }
    }
}

/// Jumps of the receiver that stayed.
fn step_remarks(survey: &Survey<'_>) -> Vec<Said> {
    const SAID: usize = 3;
    let often = survey.tracks.iter().filter(|track| !track.are_restarts());
    let often: usize = often.map(|track| track.steps.len()).sum();
    let restarts = survey.tracks.iter().filter(|track| track.are_restarts());
    let steps: Vec<_> = restarts.flat_map(|track| &track.steps).collect();
    let more = steps.len().saturating_sub(SAID) as u64;
    let jumped = steps.iter().take(SAID).map(|step| Said::ReceiverJumped {
        size_m: math::hypot(step.east_m, step.north_m),
        time: log_findings::rfc3339(step.time_s).unwrap_or_else(|| format!("{:.0} s", step.time_s)),
    });
    jumped
        .chain((more > 0).then_some(Said::ReceiverJumpedOften { jumps: more }))
        .chain((often > 0).then_some(Said::ReceiverJumpsBack { jumps: often as u64 }))
        .collect()
}

/// What stands in for drift if the log does not show it.
fn drift_remark(track: &Track, trace: &Trace) -> Option<Said> {
    match track.reckoned_drift {
        ReckonedDrift::Usual { drift_m } if commonest(trace) == FixQuality::Unknown => {
            Some(Said::DriftAssumed { drift_m })
        }
        ReckonedDrift::Driven { drift_m } => Some(Said::DriftAtMost { drift_m }),
        _ => None,
    }
}

/// How much of the time has no usable fixes, if that matters.
fn silence_remark(survey: &Survey<'_>) -> Option<Said> {
    let silent_fraction = silent_fraction(survey);
    (silent_fraction > 0.05).then_some(Said::SilentLong { silent_fraction })
}

/// How much of the time has no usable fixes.
pub(crate) fn silent_fraction(survey: &Survey<'_>) -> f64 {
    let (start_s, end_s) = survey.span_s();
    // Logs of several nights are far apart, and a charging machine need not be logged: neither is a silence.
    let is_rest = |gap: &tussock_locate::Gap| gap.moved_m < 3.0 && gap.end_s - gap.start_s > 1800.0;
    let (mut silent_s, mut rest_s) = (0.0, 0.0);
    for track in &survey.tracks {
        for gap in &track.gaps {
            *(if is_rest(gap) { &mut rest_s } else { &mut silent_s }) += gap.end_s - gap.start_s;
        }
        let ends = track.read_s.zip(track.span_s);
        silent_s += ends.map_or(0.0, |(read_s, used_s)| used_s.0 - read_s.0 + read_s.1 - used_s.1);
    }
    let span_s = ((end_s - start_s) * survey.tracks.len() as f64 - rest_s).max(1e-9);
    silent_s / span_s
}

/// Which fixes were left out, if they are more than a few.
fn left_out_remark(survey: &Survey<'_>) -> Option<Said> {
    let jumps: usize = survey.tracks.iter().map(|track| track.gated_jumps).sum();
    let poor: usize = survey.tracks.iter().map(|track| track.gated_quality).sum();
    let used: usize = survey.tracks.iter().map(|track| track.fixes_used).sum();
    ((jumps + poor) * 50 > used).then_some(Said::FixesLeftOut {
        poor: poor as u64,
        jumps: jumps as u64,
    })
}

/// Ground on which the receiver is always off in the same direction.
fn bent_remark(survey: &Survey<'_>, bent: &LocalBias) -> Said {
    let point = survey.site.as_ref().map(|site| site.frame.to_geo(bent.place));
    let Place { east_m, north_m } = bent.place;
    Said::PositionsBent {
        area_m2: bent.area_m2,
        largest_m: bent.largest_m,
        place: match point {
            Some(point) => format!("{:.6}, {:.6}", point.lat_deg, point.lon_deg),
            None => format!("{east_m:.0} m E, {north_m:.0} m N"),
        },
    }
}

/// Whether the plan's edge could hold poor positions, and where the plan lies.
fn held_remarks(track: &Track, anchored: &Anchored) -> Vec<Said> {
    let refused = matches!(anchored.edges, EdgeUse::Refused { .. }).then_some(Said::TurnsNotAtEdge {});
    let beside = log_findings::held_offset(track).and_then(beside_remark);
    refused.into_iter().chain(beside).collect()
}

/// The remark that the plan was moved to where the log shows it.
fn beside_remark(offset: PlanOffset) -> Option<Said> {
    offset.is_beside().then(|| Said::PlanBeside {
        distance_m: math::hypot(offset.east_m, offset.north_m),
        east_m: -offset.east_m,
        north_m: -offset.north_m,
    })
}

/// Edges of the plan that lie elsewhere than drawn.
fn edge_remarks(fit: &TurnsFit) -> impl Iterator<Item = Said> + '_ {
    fit.displaced().map(log_findings::edge_said)
}

fn zone_remark(survey: &Survey<'_>, zone: &DrivenZone) -> Said {
    let mut zones = survey.site.iter().flat_map(|site| &site.exclusions);
    let name = zones
        .find(|named| named.feature == zone.feature)
        .map(|named| named.name.clone());
    Said::ZoneDriven {
        zone: name.unwrap_or_default(),
        path_m: zone.path_m,
    }
}

/// Why a log shows nothing at all, and what to do about it.
fn hopeless(survey: &Survey<'_>) -> Option<Said> {
    let settings = survey.settings();
    let fixes = survey.job().traces.iter().map(Trace::len).sum::<usize>() as u64;
    let used = survey.fixes_used() as u64;
    let jumps = survey.tracks.iter().map(|track| track.gated_jumps).sum::<usize>() as u64;
    let (width_m, height_m) = survey.extent_m();
    let extent_m = width_m.max(height_m);
    if jumps > used {
        Some(Said::MostlyJumps {
            jumps,
            fixes,
            max_speed_mps: settings.positions.max_speed_mps,
        })
    } else if used < 2 {
        Some(Said::TooFewFixes { used, fixes })
    } else if extent_m > settings.limits.extent_m {
        Some(Said::NotOneGarden { extent_m })
    } else {
        let (period_s, _) = survey.too_coarse()?;
        Some(Said::FixesFarTooRare { period_s })
    }
}

/// The quality that most fixes have.
pub(crate) fn commonest(trace: &Trace) -> FixQuality {
    FixQuality::ALL
        .into_iter()
        .max_by_key(|quality| trace.quality.iter().filter(|found| *found == quality).count())
        .filter(|_| !trace.is_empty())
        .unwrap_or(FixQuality::Unknown)
}
