//! Is this log good enough?
//!
//! The smallest pocket that a log can find is set by the largest of three errors: where the positions are wrong, where
//! the path between fixes is not known, and where digits are missing. A pocket shows when it is some
//! `WIDTH_PER_SD` (5.4) times wider than the position error per axis.

use crate::ground::Ground;
use crate::interval::WIDTH_PER_SD;
use crate::{claim, clock_check, inspect, repeats};
use tussock_diagnose::luck::Drive;
use tussock_locate::anchor::{Anchored, EdgeUse};
use tussock_locate::bent::Bent;
use tussock_locate::{PathMethod, ReckonedDrift, Track};
use tussock_types::{FixQuality, LogFacts, LogVerdict, NoiseSource, PlanOffset, Settings, Trace};

/// No pocket narrower than this can be told from the gaps between passes.
const LEAST_FINDABLE_M: f64 = 0.3;

/// Judges the logs. `drive` is known once a lawn is.
pub(crate) fn verdict(
    ground: &Ground,
    traces: &[Trace],
    inputs: &[LogFacts],
    settings: &Settings,
    drive: Option<&Drive>,
) -> LogVerdict {
    let wanted_m = settings.pockets.min_width_m;
    if let Some(hopeless) = hopeless(ground, traces, settings) {
        return hopeless;
    }
    let mut remarks = Vec::new();

    let mut error_m: f64 = 0.0;
    let mut between_m: f64 = 0.0;
    let mut is_guess = false;
    for (track, trace) in ground.tracks.iter().zip(traces) {
        remarks.extend(track.bent.as_ref().map(|bent| bent_remark(ground, bent)));
        let white_m = match track.method {
            // Line fits take most of the white part away; the rest is about this share of it.
            PathMethod::Legs => 0.3 * track.noise.white_m,
            PathMethod::Anchored => 0.0,
            PathMethod::Smoothed => 0.6 * track.noise.white_m,
            PathMethod::Chords | PathMethod::Rebuilt => track.noise.white_m,
        };
        if let Some(anchored) = &track.anchored {
            error_m = error_m.max(anchored.error_m());
            remarks.extend(held_remarks(track, anchored));
            continue;
        }
        match track.reckoned_drift {
            ReckonedDrift::Usual { drift_m } if commonest(trace) == FixQuality::Unknown => remarks.push(format!(
                "The log does not say how good its positions are, and never stands long enough to show it; \
                 {} is assumed. Where it is known, say it (positions.drift_m).",
                metres(drift_m)
            )),
            ReckonedDrift::Driven { drift_m } => remarks.push(format!(
                "The machine never stands long enough to show how positions wander; its straight drives allow {} at most.",
                metres(drift_m)
            )),
            _ => {}
        }
        let drift_m = track.reckoned_drift.drift_m();
        is_guess |= matches!(track.reckoned_drift, ReckonedDrift::Usual { .. })
            && commonest(trace) == FixQuality::Unknown
            && (drift_m > white_m || track.noise.source == NoiseSource::Default);
        error_m = error_m.max(white_m.hypot(drift_m));
        if track.method == PathMethod::Chords {
            // A turn between two fixes may lie half a step off the chord.
            between_m = between_m.max(0.5 * track.period_s * track.speed_mps.unwrap_or(0.4));
        }
    }
    let digits_m = inputs
        .iter()
        .filter_map(|facts| facts.resolution_m)
        .fold(0.0, f64::max);

    let by_error_m = WIDTH_PER_SD * error_m;
    let by_digits_m = if digits_m > 0.02 { 4.0 * digits_m } else { 0.0 };
    let width_m = by_error_m.max(between_m).max(by_digits_m).max(LEAST_FINDABLE_M);
    let good_enough = width_m <= wanted_m;

    let (start_s, end_s) = ground.span_s();
    // Logs of several nights are far apart, and a machine that charges need not be logged: that is no silence.
    let is_rest = |gap: &tussock_locate::Gap| gap.moved_m < 3.0 && gap.end_s - gap.start_s > 1800.0;
    let gaps = || {
        ground
            .tracks
            .iter()
            .flat_map(|track| &track.gaps)
            .filter(|gap| !is_rest(gap))
    };
    let silent_s: f64 = gaps().map(|gap| gap.end_s - gap.start_s).sum();
    let rest_s: f64 = ground
        .tracks
        .iter()
        .flat_map(|track| &track.gaps)
        .filter(|gap| is_rest(gap))
        .map(|gap| gap.end_s - gap.start_s)
        .sum();
    let span_s = ((end_s - start_s) * ground.tracks.len() as f64 - rest_s).max(1e-9);
    if silent_s > 0.05 * span_s {
        remarks.push(format!(
            "{:.0} % of the time there are no usable fixes; nothing is claimed about it.",
            100.0 * silent_s / span_s
        ));
    }
    let jumps: usize = ground.tracks.iter().map(|track| track.gated_jumps).sum();
    let poor: usize = ground.tracks.iter().map(|track| track.gated_quality).sum();
    let used: usize = ground.tracks.iter().map(|track| track.fixes_used).sum();
    if (jumps + poor) * 50 > used {
        let fixes = |number: usize| match number {
            1 => "1 fix was".to_owned(),
            _ => format!("{number} fixes were"),
        };
        remarks.push(match (poor, jumps) {
            (poor, 0) => format!("{} left out for poor quality.", fixes(poor)),
            (0, jumps) => format!("{} left out as jumps.", fixes(jumps)),
            (poor, jumps) => format!("{} left out for poor quality and {jumps} as jumps.", fixes(poor)),
        });
    }
    if ground.tracks.iter().any(|track| track.station.is_none()) && ground.site.is_none() {
        remarks.push(
            "No station was recognised: rests of ten minutes and more do not recur at one place.".to_owned(),
        );
    }
    if let Some(luck_m) = drive
        .and_then(Drive::decisive_width_m)
        .filter(|luck_m| *luck_m > wanted_m)
    {
        remarks.push(format!(
                "After this much driving luck alone still leaves gaps up to {luck_m:.1} m wide; more nights narrow that."
            ));
    }
    remarks.extend(claim::remarks(&ground.tracks, traces));
    remarks.extend(repeats::remarks(traces, inputs));
    remarks.extend(clock_check::remark(&ground.tracks, settings));
    let advice = if good_enough {
        format!("Positions are right to about {}.", metres(error_m))
    } else if by_error_m >= between_m && by_error_m >= by_digits_m && is_guess {
        "How far positions are off does not show in this log: let the machine stand for ten minutes with the logger on."
            .to_owned()
    } else if by_error_m >= between_m && by_error_m >= by_digits_m {
        format!(
            "Positions are off by about {}: mount the antenna higher with a clear view of the sky, or log with an RTK \
             receiver.",
            metres(error_m)
        )
    } else if between_m >= by_digits_m {
        let period_s = ground
            .tracks
            .iter()
            .map(|track| track.period_s)
            .fold(0.0, f64::max);
        format!("One fix every {period_s:.0} s leaves turns unseen: log one every second.")
    } else {
        format!(
            "The positions are logged in steps of {}: let the logger write more digits (seven decimals of a degree, five of \
             a minute).",
            metres(digits_m)
        )
    };
    LogVerdict {
        smallest_findable_pocket_m2: std::f64::consts::FRAC_PI_4 * width_m * width_m,
        smallest_findable_width_m: width_m,
        good_enough,
        advice,
        remarks,
    }
}

/// Ground on which the receiver is always off the same way.
fn bent_remark(ground: &Ground, bent: &Bent) -> String {
    let point = ground.site.as_ref().map(|site| site.frame.to_geo(bent.place));
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
         under trees. The path was straightened there; how much of that ground was visited is less sure.",
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
    if let Some(offset) = inspect::plan_offset(track).filter(PlanOffset::is_beside) {
        remarks.push(format!(
            "The plan is drawn {:.1} m beside the log ({:.1} m east, {:.1} m north of it); it was moved to where the log says.",
            offset.east_m.hypot(offset.north_m),
            -offset.east_m,
            -offset.north_m
        ));
    }
    remarks
}

/// The verdict on a log that shows nothing at all.
fn hopeless(ground: &Ground, traces: &[Trace], settings: &Settings) -> Option<LogVerdict> {
    let read: usize = traces.iter().map(Trace::len).sum();
    let (width_m, height_m) = ground.extent_m();
    let limit_m = settings.limits.extent_m;
    let advice = if ground.fixes_used() < 2 {
        format!(
            "{} of {read} fixes can be used, which shows no drive: let the logger run for a whole outing.",
            ground.fixes_used()
        )
    } else if width_m.max(height_m) > limit_m {
        format!(
            "The positions extend over {:.1} km: this is no log of one garden, or its jumps hide it; give the files of one \
             garden only.",
            width_m.max(height_m) / 1000.0
        )
    } else if let Some((period_s, _)) = ground.too_coarse(settings) {
        format!(
            "One fix every {} says nothing of a lawn: log one every second.",
            crate::error::period(period_s)
        )
    } else {
        return None;
    };
    Some(LogVerdict {
        smallest_findable_pocket_m2: std::f64::consts::FRAC_PI_4 * limit_m * limit_m,
        smallest_findable_width_m: limit_m,
        good_enough: false,
        advice,
        remarks: Vec::new(),
    })
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
