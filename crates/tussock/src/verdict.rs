//! Is this log good enough?
//!
//! Two answers. Positions: the smallest pocket that they can find is set by the largest of four errors: where the positions
//! are wrong, where the path between fixes is not known, where digits are missing, and how far the receiver jumped. A pocket
//! shows when it is some `WIDTH_PER_SD` (5.4) times wider than the position error per axis. Duration: the smallest pocket
//! that luck does not explain after so much driving, and the hours that are missing. What moves like a walk or a car is no
//! drive of a mower, whatever its positions.

use crate::{clock_check, receiver_accuracy, stale_positions};
use tussock_coverage::luck::Drive;
use tussock_locate::anchor::{Anchored, EdgeUse};
use tussock_locate::local_bias::LocalBias;
use tussock_locate::{PathMethod, ReckonedDrift, Track};
use tussock_survey::interval::{self, WIDTH_PER_SD};
use tussock_survey::{Survey, log_findings};
use tussock_types::math;
use tussock_types::{FixQuality, LogLevel, LogVerdict, NoiseSource, PlanOffset, Trace};

/// No pocket narrower than this can be told from the gaps between passes.
const LEAST_FINDABLE_M: f64 = 0.3;
/// Less driving than this shows nothing of a lawn: some hundred metres of path (common practice, no source).
const LEAST_DRIVING_S: f64 = 600.0;
/// As fast as people walk, between slow and usual (Bohannon 1997, Age and Ageing 26, table 2: comfortable gait of adults
/// 1.27 to 1.46 m/s); faster machines state their speed.
const WALK_MPS: f64 = 1.1;
/// The same where the path has no straight legs.
const STROLL_MPS: f64 = 0.7;

/// Judges the logs.
pub(crate) fn verdict(survey: &Survey<'_>) -> LogVerdict {
    let (settings, traces) = (survey.settings(), survey.job().traces);
    let drive = survey.must_be_a_garden().ok().and_then(|()| survey.drive().ok());
    if let Some(advice) = hopeless(survey) {
        let nothing_m = settings.limits.extent_m;
        return LogVerdict {
            level: LogLevel::Unusable,
            positions: LogLevel::Unusable,
            duration: LogLevel::Unusable,
            smallest_findable_pocket_m2: disc_m2(nothing_m),
            smallest_findable_width_m: nothing_m,
            hours_more_needed: None,
            good_enough: false,
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
    let duration = Duration::of(survey, drive);
    let level = positions_level.max(duration.level);
    let width_m = positions.width_m().max(duration.width_m);
    let advice = match (&duration.not_a_mower, positions_level) {
        (Some(sentence), _) => sentence.clone(),
        (None, LogLevel::Good) => format!("Positions are right to about {}.", metres(positions.error_m)),
        (None, _) => positions.advice(survey),
    };
    let mut remarks: Vec<String> = duration.sentence(wanted_m).into_iter().collect();
    remarks.extend(step_remarks(survey));
    remarks.extend(clock_check::too_old(&survey.tracks));
    for (track, trace) in survey.tracks.iter().zip(traces) {
        remarks.extend(track.bent.as_ref().map(|bent| bent_remark(survey, bent)));
        remarks.extend(match &track.anchored {
            Some(anchored) => held_remarks(track, anchored),
            None => drift_remark(track, trace).into_iter().collect(),
        });
    }
    remarks.extend(silence_remark(survey));
    remarks.extend(left_out_remark(survey));
    if survey.tracks.iter().any(|track| track.station.is_none()) && survey.site.is_none() {
        remarks.push(
            "No station was recognised: rests of ten minutes and more do not recur at one place.".to_owned(),
        );
    }
    remarks.extend(receiver_accuracy::remarks(&survey.tracks, traces));
    remarks.extend(stale_positions::remarks(traces, survey.job().inputs));
    remarks.extend(clock_check::remark(&survey.tracks, settings));
    LogVerdict {
        level,
        positions: positions_level,
        duration: duration.level,
        smallest_findable_pocket_m2: disc_m2(width_m),
        smallest_findable_width_m: width_m,
        hours_more_needed: duration.hours_more,
        good_enough: level == LogLevel::Good,
        advice,
        remarks,
    }
}

/// Width of the smallest pocket that the positions can show: narrower ones are not made.
pub(crate) fn shown_width_m(survey: &Survey<'_>) -> f64 {
    Positions::of(survey).width_m()
}

fn disc_m2(width_m: f64) -> f64 {
    std::f64::consts::FRAC_PI_4 * width_m * width_m
}

/// What the positions can show.
struct Positions {
    /// Error per axis.
    error_m: f64,
    /// How far the path between two fixes may lie off their chord.
    between_m: f64,
    /// Steps of the coordinates.
    digits_m: f64,
    /// Largest jump that stayed.
    step_m: f64,
    /// Whether the error is assumed, not seen.
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
            // What the log cannot rule out, whether or not the path shows it.
            let drift_m = track.reckoned_drift.drift_m();
            found.is_guess |= matches!(track.reckoned_drift, ReckonedDrift::Usual { .. })
                && commonest(trace) == FixQuality::Unknown
                && (drift_m > track.noise.white_m || track.noise.source == NoiseSource::Default);
            found.error_m = found.error_m.max(drift_m);
            if track.method == PathMethod::Chords {
                // A turn between two fixes may lie half a step off the chord.
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
    fn advice(&self, survey: &Survey<'_>) -> String {
        let width_m = self.width_m();
        if self.step_m >= width_m {
            "The receiver jumped and stayed where it had jumped to: positions before and after lie beside each other. Look \
             for what shades its sky, or give the stretches before and after as files of their own."
                .to_owned()
        } else if self.by_error_m() >= width_m && self.is_guess {
            "How far positions are off does not show in this log: let the machine stand for ten minutes with the logger on."
                .to_owned()
        } else if self.by_error_m() >= width_m {
            format!(
                "Positions are off by about {}: mount the antenna higher with a clear view of the sky, or log with an RTK \
                 receiver.",
                metres(self.error_m)
            )
        } else if self.between_m >= width_m {
            let periods_s = survey.tracks.iter().map(|track| track.period_s);
            format!(
                "One fix every {:.0} s leaves turns unseen: log one every second.",
                periods_s.fold(0.0, f64::max)
            )
        } else {
            format!(
                "The positions are logged in steps of {}: let the logger write more digits (seven decimals of a degree, \
                 five of a minute).",
                metres(self.digits_m)
            )
        }
    }
}

/// What so much driving can show.
struct Duration {
    level: LogLevel,
    driving_s: f64,
    /// Gaps up to this width are luck.
    width_m: f64,
    hours_more: Option<f64>,
    /// Why this is no drive of a mower.
    not_a_mower: Option<String>,
}

impl Duration {
    fn of(survey: &Survey<'_>, drive: Option<&Drive>) -> Self {
        let settings = survey.settings();
        let driving_s: f64 = survey.tracks.iter().map(Track::driving_s).sum();
        let (width_m, height_m) = survey.extent_m();
        let everywhere_m = width_m.max(height_m);
        let wanted_m = settings.pockets.min_width_m;
        let not_a_mower = settings
            .machine
            .speed_mps
            .is_none()
            .then(|| survey.tracks.iter().find_map(walked))
            .flatten();
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
    fn sentence(&self, wanted_m: f64) -> Option<String> {
        if self.level == LogLevel::Good || self.not_a_mower.is_some() {
            return None;
        }
        let driven = match self.driving_s {
            s if !(s >= 1.0) => "The machine stood the whole time".to_owned(),
            s if s < 120.0 => format!("Only {s:.0} s of driving were logged"),
            s if s < 2.0 * LEAST_DRIVING_S => format!("Only {:.0} min of driving were logged", s / 60.0),
            s => format!("{:.1} h of driving were logged", s / 3600.0),
        };
        Some(match self.hours_more {
            Some(hours) if hours < 1000.0 => format!(
                "{driven}: about {} h more are needed until a bare place {wanted_m:.1} m wide is more than bad luck.",
                if hours < 10.0 {
                    format!("{hours:.1}")
                } else {
                    format!("{hours:.0}")
                }
            ),
            _ => format!("{driven}: let the logger run for some whole outings."),
        })
    }
}

/// Why a track was walked, not driven by a mower.
fn walked(track: &Track) -> Option<String> {
    let speed_mps = track.speed_mps?;
    let is_straight = matches!(track.method, PathMethod::Legs | PathMethod::Anchored);
    (speed_mps > WALK_MPS || (speed_mps > STROLL_MPS && !is_straight)).then(|| {
        format!(
            "It moves at {speed_mps:.1} m/s, as fast as people walk: give a log of the machine at work, or say its speed if \
             it is that fast (machine.speed_mps)."
        )
    })
}

/// Jumps of the receiver that stayed.
fn step_remarks(survey: &Survey<'_>) -> Vec<String> {
    const SAID: usize = 3;
    let steps: Vec<_> = survey.tracks.iter().flat_map(|track| &track.steps).collect();
    let mut remarks: Vec<String> = steps
        .iter()
        .take(SAID)
        .map(|step| {
            format!(
                "The receiver jumped by {} at {} and stayed there.",
                metres(math::hypot(step.east_m, step.north_m)),
                log_findings::rfc3339(step.time_s).unwrap_or_else(|| format!("second {:.0}", step.time_s))
            )
        })
        .collect();
    if steps.len() > SAID {
        remarks.push(format!("And {} more jumps of that kind.", steps.len() - SAID));
    }
    remarks
}

/// What stands in for drift that the log does not show.
fn drift_remark(track: &Track, trace: &Trace) -> Option<String> {
    match track.reckoned_drift {
        ReckonedDrift::Usual { drift_m } if commonest(trace) == FixQuality::Unknown => Some(format!(
            "The log does not say how good its positions are, and never stands long enough to show it; {} is assumed. Where \
             it is known, say it (positions.drift_m).",
            metres(drift_m)
        )),
        ReckonedDrift::Driven { drift_m } => Some(format!(
            "The machine never stands long enough to show how positions wander; its straight drives allow {} at most.",
            metres(drift_m)
        )),
        _ => None,
    }
}

/// How much of the time has no usable fixes, where it matters.
fn silence_remark(survey: &Survey<'_>) -> Option<String> {
    let (start_s, end_s) = survey.span_s();
    // Logs of several nights are far apart, and a machine that charges need not be logged: that is no silence.
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
    (silent_s > 0.05 * span_s).then(|| {
        format!(
            "{:.0} % of the time there are no usable fixes; nothing is claimed about it.",
            100.0 * silent_s / span_s
        )
    })
}

/// Which fixes were left out, where they are more than a few.
fn left_out_remark(survey: &Survey<'_>) -> Option<String> {
    let jumps: usize = survey.tracks.iter().map(|track| track.gated_jumps).sum();
    let poor: usize = survey.tracks.iter().map(|track| track.gated_quality).sum();
    let used: usize = survey.tracks.iter().map(|track| track.fixes_used).sum();
    let fixes = |number: usize| match number {
        1 => "1 fix was".to_owned(),
        _ => format!("{number} fixes were"),
    };
    match (poor, jumps) {
        _ if (jumps + poor) * 50 <= used => None,
        (poor, 0) => Some(format!("{} left out for poor quality.", fixes(poor))),
        (0, jumps) => Some(format!("{} left out as jumps.", fixes(jumps))),
        (poor, jumps) => Some(format!(
            "{} left out for poor quality and {jumps} as jumps.",
            fixes(poor)
        )),
    }
}

/// Ground on which the receiver is always off the same way.
fn bent_remark(survey: &Survey<'_>, bent: &LocalBias) -> String {
    let point = survey.site.as_ref().map(|site| site.frame.to_geo(bent.place));
    let place = point.map_or_else(
        || {
            format!(
                "{:.0} m east, {:.0} m north",
                bent.place.east_m, bent.place.north_m
            )
        },
        |point| format!("{:.6}, {:.6}", point.lat_deg, point.lon_deg),
    );
    format!(
        "On about {:.0} m2 around {place} positions are always off the same way, by up to {:.1} m, as beside a wall or \
         under trees. The path was straightened there; how much of that survey was visited is less sure.",
        bent.area_m2, bent.largest_m
    )
}

/// What became of the plan's edge as a hold for poor positions, and where the plan lies.
fn held_remarks(track: &Track, anchored: &Anchored) -> Vec<String> {
    let mut remarks = Vec::new();
    if matches!(anchored.edges, EdgeUse::Refused { .. }) {
        remarks.push(
            "The turns do not gather at the plan's edge (lanes, or a plan that does not fit): it does not hold the positions."
                .to_owned(),
        );
    }
    if let Some(offset) = log_findings::plan_offset(track).filter(PlanOffset::is_beside) {
        remarks.push(format!(
            "The plan is drawn {:.1} m beside the log ({:.1} m east, {:.1} m north of it); it was moved to where the log says.",
            math::hypot(offset.east_m, offset.north_m),
            -offset.east_m,
            -offset.north_m
        ));
    }
    remarks
}

/// Why a log shows nothing at all, and what to do.
fn hopeless(survey: &Survey<'_>) -> Option<String> {
    let settings = survey.settings();
    let read: usize = survey.job().traces.iter().map(Trace::len).sum();
    let used = survey.fixes_used();
    let jumps: usize = survey.tracks.iter().map(|track| track.gated_jumps).sum();
    let (width_m, height_m) = survey.extent_m();
    if jumps > used {
        Some(format!(
            "{jumps} of {read} positions lie farther from the one before than a mower drives in that time ({} m/s, \
             positions.max_speed_mps): a vehicle, or positions that jump.",
            settings.positions.max_speed_mps
        ))
    } else if used < 2 {
        Some(format!(
            "{used} of {read} fixes can be used, which shows no drive: let the logger run for a whole outing."
        ))
    } else if width_m.max(height_m) > settings.limits.extent_m {
        Some(format!(
            "The positions extend over {:.1} km: this is no log of one garden, or its jumps hide it; give the files of one \
             garden only.",
            width_m.max(height_m) / 1000.0
        ))
    } else if let Some((period_s, _)) = survey.too_coarse() {
        Some(format!(
            "One fix every {} says nothing of a lawn: log one every second.",
            tussock_survey::period(period_s)
        ))
    } else {
        None
    }
}

fn metres(value_m: f64) -> String {
    if value_m < 1.0 {
        format!("{:.0} cm", 100.0 * value_m)
    } else {
        format!("{value_m:.1} m")
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
