//! What does the page show besides the findings themselves? Drawings, keys of the map, dates, and the first screen.

use super::{handout, plots, stills};
use crate::filters::{input, shown, surveyed};
use crate::map::{Drawing, Furniture, Grounds, legend_entries, page_entries};
use crate::messages::Voice;
use crate::messages::{named, say};
use crate::raster::wait_colour;
use crate::words::{self, duration, hours};
use crate::{ramp, raster};
use minijinja::{Value, context, value::Serde};
use serde::Serialize;
use tussock_types::math;
use tussock_types::{Findings, MissedPocket, PlanRole, Said};

pub(super) fn page(voice: Voice, findings: &Findings) -> Value {
    let revisits = findings.revisits.as_ref();
    let coverage = findings.coverage.as_ref();
    let over_time = findings.over_time.as_ref().and_then(|over_time| {
        let promised = findings.settings.promise.visited_fraction;
        plots::over_time(
            voice,
            over_time,
            coverage.map(|coverage| coverage.visited_fraction),
            promised,
        )
    });
    let (of_plan, of_log): (Vec<&Said>, Vec<&Said>) =
        (findings.log_verdict.remarks.iter()).partition(|said| said.is_of_plan());
    context! {
        findings => shown(findings),
        asked => asked(voice, findings),
        checks_line => words::checks_line(voice, &findings.checks),
        of_plan => Serde(of_plan),
        of_log => Serde(of_log),
        when => when(voice, findings),
        others => other_causes(voice, findings),
        none_missed => crate::terminal::none_missed(voice, findings),
        decide_h => crate::terminal::decide_h(findings),
        dark => words::dark(voice, findings),
        map => Serde(map(voice, findings)),
        stills => Serde(stills::stills(voice, findings)),
        still_key => [ramp::hex(raster::BEFORE), ramp::hex(raster::SINCE)],
        over_time,
        histogram => revisits.and_then(|revisits| plots::histogram(voice, revisits)),
        waits => revisits.and_then(|revisits| plots::waits(voice, revisits.interval_h, allowed_h(findings))),
        nights => Serde(findings.nights.as_deref().and_then(|nights| plots::nights(voice, nights))),
        activities => Serde(activities(voice, findings)),
        surveyed => findings.reference.as_ref().map(|found| surveyed(voice, found)),
        inputs => findings.inputs.iter().map(|of| input(voice, of)).collect::<Vec<Value>>(),
        paper => Serde(handout::paper(voice, findings)),
    }
}

/// Places asked about, with their answers.
fn asked(voice: Voice, findings: &Findings) -> Value {
    let asked = |complaint| words::asked(voice, complaint, findings);
    Serde(findings.complaints.iter().map(asked).collect::<Vec<_>>()).into()
}

/// Causes of the smaller pockets, if they differ from that of the largest.
fn other_causes(voice: Voice, findings: &Findings) -> Vec<String> {
    let cause = |pocket: &MissedPocket| Some(pocket.causes.as_ref()?.first()?.cause);
    let Some((first, others)) = findings.missed_pockets.split_first() else {
        return Vec::new();
    };
    let other = |pocket: &MissedPocket| {
        let found = cause(pocket).filter(|found| cause(first).is_some_and(|first| first != *found))?;
        Some(format!(
            "{}: {}",
            words::plain(&pocket.id, 12),
            named(voice, "cause", &found)
        ))
    };
    others.iter().filter_map(other).take(3).collect()
}

/// The map and what is around it.
#[derive(Serialize)]
struct Map {
    svg: String,
    scale: Option<String>,
    /// Grounds to choose from: key, words, and the key of each.
    grounds: Vec<GroundKey>,
    /// The legend, whose entries are switches.
    key: Vec<Switch>,
    placeless: bool,
    is_tall: bool,
    /// Whether it is so narrow that its legend has space beside it.
    is_slim: bool,
}

#[derive(Serialize)]
struct GroundKey {
    layer: &'static str,
    name: String,
    title: String,
    steps: Vec<Step>,
}

#[derive(Serialize)]
pub(super) struct Step {
    colour: String,
    words: String,
}

#[derive(Serialize)]
struct Switch {
    layer: &'static str,
    is_on: bool,
    samples: Vec<[String; 2]>,
}

/// Longest allowed wait, if the grass is known.
fn allowed_h(findings: &Findings) -> Option<f64> {
    let turf = findings.installation.as_ref()?.turf.as_ref()?;
    Some(turf.allowed_interval_h).filter(|h| h.is_finite() && *h > 0.0)
}

/// End of the log in seconds from its start: of the last night, or else of the last visit.
fn end_s(findings: &Findings) -> f64 {
    let nights = findings.nights.iter().flatten().map(|night| night.end_s);
    let visits = findings.cells.iter().flat_map(|cells| &cells.last_visit_s);
    let last = |values: &mut dyn Iterator<Item = f64>| values.filter(|s| s.is_finite()).fold(0.0, f64::max);
    last(&mut nights.clone()).max(last(&mut visits.map(|&s| f64::from(s))))
}

fn map(voice: Voice, findings: &Findings) -> Map {
    let drawing = Drawing::of(voice, findings, Furniture::Bare);
    let grounds = Grounds::All {
        allowed_h: allowed_h(findings),
        end_s: end_s(findings),
    };
    Map {
        svg: drawing.page_svg(&say!(voice, "map-north-up"), grounds),
        scale: drawing.scale_svg(findings),
        grounds: drawing
            .ground
            .as_ref()
            .map(|ground| ground_keys(voice, findings, ground))
            .unwrap_or_default(),
        key: switches(voice, findings),
        placeless: findings.frame.origin().is_none(),
        is_tall: drawing.height > 0.75 * drawing.width,
        is_slim: drawing.height > 0.9 * drawing.width,
    }
}

fn ground_keys(voice: Voice, findings: &Findings, ground: &raster::Ground) -> Vec<GroundKey> {
    let mut keys = vec![GroundKey {
        layer: "visits",
        name: say!(voice, "ground-visits"),
        title: say!(voice, "times-driven-over-darker"),
        steps: visit_key(voice, ground.scale),
    }];
    if let Some((low_h, high_h)) = ground.waits_h() {
        let step = |index: usize| {
            let share = index as f64 / 4.0;
            Step {
                colour: ramp::hex(wait_colour(share)),
                words: hours(voice, low_h * math::powf(high_h / low_h, share)),
            }
        };
        let mut steps: Vec<Step> = (0..=4).map(step).collect();
        steps.push(Step {
            colour: ramp::hex(ramp::NEVER),
            words: say!(voice, "less-than-twice"),
        });
        keys.push(GroundKey {
            layer: "waits",
            name: say!(voice, "ground-waits"),
            title: say!(voice, "usual-time-between-two"),
            steps,
        });
    }
    if let Some(allowed_h) = allowed_h(findings) {
        keys.push(GroundKey {
            layer: "overdue",
            name: say!(voice, "ground-overdue"),
            title: say!(voice, "last-visit-longer-ago", hours = hours(voice, allowed_h)),
            steps: vec![
                Step {
                    colour: "url(#hatch)".to_owned(),
                    words: say!(voice, "ground-overdue"),
                },
                Step {
                    colour: ramp::hex(raster::BEFORE),
                    words: say!(voice, "time-again"),
                },
            ],
        });
    }
    keys
}

/// Entries of one layer are one switch.
fn switches(voice: Voice, findings: &Findings) -> Vec<Switch> {
    let mut switches: Vec<Switch> = Vec::new();
    for entry in legend_entries(voice, findings)
        .into_iter()
        .chain(page_entries(voice, findings))
    {
        let sample = [
            format!(
                "<svg viewBox=\"0 -14 34 20\" width=\"34\" height=\"20\" aria-hidden=\"true\">{}</svg>",
                entry.sample
            ),
            entry.words,
        ];
        match switches
            .iter_mut()
            .find(|switch| switch.layer == entry.layer.key())
        {
            Some(switch) => switch.samples.push(sample),
            None => switches.push(Switch {
                layer: entry.layer.key(),
                is_on: entry.layer.is_on(),
                samples: vec![sample],
            }),
        }
    }
    let has_station = findings
        .plan
        .as_ref()
        .is_some_and(|plan| plan.of_role(PlanRole::Station).next().is_some());
    if has_station && let Some(switch) = switches.iter_mut().find(|switch| switch.layer == "plan") {
        switch
            .samples
            .push([STATION.to_owned(), say!(voice, "charging-station")]);
    }
    switches
}

const STATION: &str = "<svg viewBox=\"0 -14 34 20\" width=\"34\" height=\"20\" aria-hidden=\"true\"><path \
    d=\"M8,-5h18v9h-18z M6.5,-5l10.5,-7 10.5,7z\" fill=\"#fffefa\" stroke=\"#1c2431\" stroke-width=\"1.6\"/></svg>";

pub(super) fn when(voice: Voice, findings: &Findings) -> String {
    let zone = findings.settings.garden.time_zone.as_deref();
    let read = |text: &Option<String>| words::local_time(voice, text.as_deref()?, zone);
    let zone_words = match words::offset(findings.span.start.as_deref(), zone) {
        zone if zone.is_utc() => "UTC".to_owned(),
        zone => {
            let (hours, minutes, _) = zone.as_hms();
            format!("UTC{hours:+03}:{:02}", minutes.unsigned_abs())
        }
    };
    let span = match (read(&findings.span.start), read(&findings.span.end)) {
        (Some(start), Some(end)) => say!(
            voice,
            "to-start",
            start = start,
            end = end,
            zone_words = zone_words
        ),
        _ => say!(voice, "without-dates"),
    };
    let logs = say!(voice, "count-log-file", count = findings.inputs.len());
    let driven = words::duration(voice, findings.span.driving_s);
    say!(voice, "driving-from", span = span, driven = driven, logs = logs)
}

pub(super) fn visit_key(voice: Voice, scale: ramp::VisitScale) -> Vec<Step> {
    let steps = scale.key(voice).into_iter();
    steps.map(|(colour, words)| Step { colour, words }).collect()
}

/// Hours by activity: label, time, part of the span.
#[derive(Serialize)]
struct TimeRow {
    label: String,
    time: String,
    percent: String,
}

fn activities(voice: Voice, findings: &Findings) -> Vec<TimeRow> {
    let span = &findings.span;
    // Transit is part of driving, so it is shown below it and not added.
    let rows = [
        (say!(voice, "driving"), Some(span.driving_s)),
        (say!(voice, "driving-along"), span.transit_s),
        (say!(voice, "activity-station"), span.at_station_s),
        (say!(voice, "standing-turning"), Some(span.halted_s)),
        (say!(voice, "activity-carried"), span.carried_s),
        (say!(voice, "activity-silent"), Some(span.silent_s)),
    ];
    let total_s: f64 = [
        Some(span.driving_s),
        span.at_station_s,
        Some(span.halted_s),
        span.carried_s,
        Some(span.silent_s),
    ]
    .into_iter()
    .flatten()
    .filter(|s| s.is_finite())
    .sum();
    let row = |(label, time_s): (String, Option<f64>)| TimeRow {
        label,
        time: time_s.map_or_else(|| say!(voice, "not-told-apart-yet"), |s| duration(voice, s)),
        percent: match time_s {
            Some(s) if total_s > 0.0 && s.is_finite() => {
                format!("{:.1}", (s / total_s * 100.0).clamp(0.0, 100.0))
            }
            _ => "0".to_owned(),
        },
    };
    rows.into_iter().map(row).collect()
}
