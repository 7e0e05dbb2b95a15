//! Figures with the sentence that a customer understands, in the order of the page.

use super::plots;
use crate::map::key;
use crate::messages::{named, say};
use crate::words::{self, area, duration, hours, metres, minutes, number, percent};
use serde::Serialize;
use tussock_types::{Estimate, Findings, MissedPocket, Place, Revisits, Said, StuckSpot, Suggestion};

/// A figure and what it means.
#[derive(Serialize)]
pub(super) struct Fact {
    pub(super) label: String,
    pub(super) figure: String,
    pub(super) meaning: String,
}

pub(super) fn fact(label: &str, figure: String, meaning: impl Into<String>) -> Fact {
    Fact {
        label: label.to_owned(),
        figure,
        meaning: meaning.into(),
    }
}

/// One missed pocket.
#[derive(Serialize)]
pub(super) struct PocketEntry {
    key: String,
    id: String,
    area: String,
    widest: String,
    place: String,
    tape: Vec<String>,
    why: String,
    causes: Vec<CauseEntry>,
    chance: String,
    certainty: Option<String>,
    suggestions: Vec<Link>,
}

/// Another place on the page, or only its id where there is none.
#[derive(Serialize)]
struct Link {
    key: Option<String>,
    id: String,
}

#[derive(Serialize)]
struct CauseEntry {
    name: String,
    meaning: String,
    rank: Option<&'static str>,
    evidence_for: Vec<String>,
    evidence_against: Vec<String>,
}

fn sentences(said: &[Said]) -> Vec<String> {
    said.iter().map(crate::text).collect()
}

/// A probability in words that do not pretend to more digits than they have.
pub(super) fn chance(fraction: f64) -> String {
    match fraction {
        f if !f.is_finite() => "unknown".to_owned(),
        f if f < 1e-4 => say!("less-than"),
        f if f < 0.000_95 => say!(
            "about-number",
            number = number((1.0 / f / 100.0).round() * 100.0, 0)
        ),
        f if f < 0.01 => say!(
            "about-number",
            number = number((1.0 / f / 10.0).round() * 10.0, 0)
        ),
        f => percent(f),
    }
}

pub(super) fn pockets(findings: &Findings) -> Vec<PocketEntry> {
    let pockets = findings.missed_pockets.iter().enumerate();
    pockets
        .map(|(index, found)| pocket(findings, index, found))
        .collect()
}

/// Where suggestions stand on the page.
fn links(findings: &Findings, ids: &[String]) -> Vec<Link> {
    let all = findings.suggestions.as_deref().unwrap_or_default();
    let link = |id: &String| Link {
        key: all
            .iter()
            .position(|suggestion| suggestion.id == *id)
            .map(|index| key('g', index)),
        id: words::plain(id, 12),
    };
    ids.iter().map(link).collect()
}

fn pocket(findings: &Findings, index: usize, pocket: &MissedPocket) -> PocketEntry {
    let found = pocket.causes.as_deref().unwrap_or_default();
    let causes = found.iter().enumerate().map(|(index, cause)| CauseEntry {
        name: words::capital(&named("cause", &cause.cause)),
        meaning: named("cause-meaning", &cause.cause),
        rank: words::rank(index, found.len()),
        evidence_for: sentences(&cause.evidence_for),
        evidence_against: sentences(&cause.evidence_against),
    });
    let place = Place::new(pocket.east_m, pocket.north_m);
    PocketEntry {
        key: key('m', index),
        id: words::plain(&pocket.id, 12),
        area: area(pocket.area_m2),
        widest: metres(pocket.widest_m),
        place: words::position(pocket.lat, pocket.lon, place),
        tape: words::tapes(&pocket.tape, place),
        why: crate::text(&pocket.why),
        causes: causes.collect(),
        chance: chance(pocket.chance_fraction),
        certainty: pocket.certainty.map(words::whole_percent),
        suggestions: links(findings, &pocket.suggestion_ids),
    }
}

/// One not-yet pocket.
#[derive(Serialize)]
pub(super) struct NotYetEntry {
    key: String,
    id: String,
    area: String,
    widest: String,
    chance: String,
    decided: String,
    tape: Vec<String>,
}

pub(super) fn not_yet(findings: &Findings) -> Vec<NotYetEntry> {
    let row = |(index, pocket): (usize, &tussock_types::NotYetPocket)| NotYetEntry {
        key: key('n', index),
        id: words::plain(&pocket.id, 12),
        area: area(pocket.area_m2),
        widest: metres(pocket.widest_m),
        chance: chance(pocket.chance_fraction),
        decided: pocket.hours_to_decide.map_or_else(|| say!("cannot-be"), hours),
        tape: words::tapes(&pocket.tape, Place::new(pocket.east_m, pocket.north_m)),
    };
    findings.not_yet.iter().enumerate().map(row).collect()
}

/// One stuck spot.
#[derive(Serialize)]
pub(super) struct SpotEntry {
    key: String,
    id: String,
    lost: String,
    times: String,
    through: String,
    radius: String,
    place: String,
    approach: Option<String>,
    why: String,
}

pub(super) fn spots(findings: &Findings) -> Vec<SpotEntry> {
    let spots = findings.stuck_spots.iter().enumerate();
    spots.map(|(index, found)| spot(index, found)).collect()
}

fn spot(index: usize, spot: &StuckSpot) -> SpotEntry {
    SpotEntry {
        key: key('s', index),
        id: words::plain(&spot.id, 12),
        lost: minutes(spot.minutes),
        times: say!("count-time", count = spot.episodes),
        through: say!("count-time", count = spot.passes_through),
        radius: metres(spot.radius_m),
        place: words::position(spot.lat, spot.lon, Place::new(spot.east_m, spot.north_m)),
        approach: spot.approach_deg.map(crate::messages::compass),
        why: crate::text(&spot.why),
    }
}

/// A worn line.
#[derive(Serialize)]
pub(super) struct WornEntry {
    key: String,
    id: String,
    text: String,
}

pub(super) fn worn(findings: &Findings) -> Vec<WornEntry> {
    let row = |(index, worn): (usize, &tussock_types::WornLine)| WornEntry {
        key: key('w', index),
        id: words::plain(&worn.id, 12),
        text: say!(
            "long-driven-over-times",
            length = metres(worn.length_m),
            number = number(worn.times_mean, 1),
            count = say!("count-time", count = worn.most_visits)
        ),
    };
    findings
        .worn_lines
        .iter()
        .flatten()
        .enumerate()
        .map(row)
        .collect()
}

/// One suggested change.
#[derive(Serialize)]
pub(super) struct ChangeEntry {
    key: String,
    id: String,
    kind: String,
    why: String,
    cost: Vec<String>,
    addresses: Vec<Link>,
    together: String,
    plot: String,
    rows: Vec<[String; 4]>,
    certainty: Option<String>,
    shown_after: Option<String>,
    cautions: Vec<String>,
}

pub(super) fn changes(findings: &Findings) -> Vec<ChangeEntry> {
    let suggestions = findings.suggestions.iter().flatten().enumerate();
    suggestions
        .map(|(index, suggestion)| change(findings, index, suggestion))
        .collect()
}

/// What a change needs, in a few words each.
pub(super) fn cost(suggestion: &Suggestion) -> Vec<String> {
    let mut cost = Vec::new();
    if let Some(wire_m) = suggestion.wire_m {
        cost.push(say!("wire-length", length = metres(wire_m)));
    }
    if let Some(shift_m) = suggestion.shift_m {
        cost.push(say!("shift-length", length = metres(shift_m)));
    }
    if let Some(added_h) = suggestion.added_h_per_day {
        cost.push(say!("more-day", hours = hours(added_h)));
    }
    if let Some(share) = suggestion.outing_share_fraction {
        cost.push(say!(
            "outings-sent-along-percent",
            percent = words::whole_percent(share)
        ));
    }
    cost
}

fn change(findings: &Findings, index: usize, suggestion: &Suggestion) -> ChangeEntry {
    let predicted = suggestion.predicted;
    let in_log = Estimate::bare(suggestion.pocket_fraction_in_log);
    let lawn = findings.coverage.as_ref().map_or_else(
        || say!("not-counted-again"),
        |coverage| words::with_interval(coverage.visited_fraction),
    );
    let pockets = findings.missed_pockets.iter().enumerate();
    let addresses = suggestion.pocket_ids.iter().map(|id| Link {
        key: pockets
            .clone()
            .find(|(_, pocket)| pocket.id == *id)
            .map(|(index, _)| key('m', index)),
        id: words::plain(id, 12),
    });
    let together: Vec<String> = suggestion
        .together_with
        .iter()
        .map(|id| words::plain(id, 12))
        .collect();
    let row = |label, value, is_measured| plots::GainRow {
        label,
        value,
        is_measured,
    };
    ChangeEntry {
        key: key('g', index),
        id: words::plain(&suggestion.id, 12),
        kind: named("suggestion", &suggestion.kind),
        why: crate::text(&suggestion.why),
        cost: cost(suggestion),
        addresses: addresses.collect(),
        together: together.join(", "),
        plot: plots::gains(&[
            row("in this log", in_log, true),
            row("if nothing changes", predicted.pocket_fraction_before, false),
            row("if changed", predicted.pocket_fraction_after, false),
        ]),
        rows: vec![
            [
                say!("pocket-again"),
                percent(suggestion.pocket_fraction_in_log),
                words::with_interval(predicted.pocket_fraction_before),
                words::with_interval(predicted.pocket_fraction_after),
            ],
            [
                say!("whole-lawn"),
                lawn,
                words::with_interval(predicted.visited_fraction_before),
                words::with_interval(predicted.visited_fraction_after),
            ],
        ],
        certainty: suggestion.certainty.map(words::whole_percent),
        shown_after: suggestion.shown_after_h.map(hours),
        cautions: sentences(&suggestion.cautions),
    }
}

/// How often the lawn was driven over.
pub(super) fn revisit_facts(revisits: &Revisits) -> Vec<Fact> {
    let quantile = |value: Option<f64>| value.map_or_else(|| say!("longer-than-this-log"), hours);
    let mut facts = vec![
        fact(
            "Visits, typical",
            number(revisits.median_per_cell, 0),
            say!(
                "half-lawn-driven-over",
                number = number(revisits.mean_per_cell, 1)
            ),
        ),
        fact(
            "Evenness (Gini)",
            number(revisits.gini, 2),
            "0 would be the same number of visits everywhere, 1 all visits in one place.",
        ),
        fact(
            "Time between visits",
            quantile(revisits.interval_h.p50),
            say!(
                "half-waits-are-shorter",
                interval_h = quantile(revisits.interval_h.p90),
                interval_h_2 = quantile(revisits.interval_h.p99)
            ),
        ),
    ];
    if let Some(overdue) = revisits.overdue_fraction {
        facts.push(fact(
            "Overdue",
            percent(overdue),
            "This part of the lawn has grown past the one-third rule since its last visit.",
        ));
    }
    facts
}

/// Hours by activity: label, time, part of the span.
#[derive(Serialize)]
pub(super) struct TimeRow {
    label: &'static str,
    time: String,
    percent: String,
}

pub(super) fn activities(findings: &Findings) -> Vec<TimeRow> {
    let span = &findings.span;
    // Transit is part of driving, so it is told apart below it and not added.
    let rows = [
        ("driving", Some(span.driving_s)),
        ("of it along a guide or the boundary", span.transit_s),
        ("at the station", span.at_station_s),
        ("standing elsewhere, turning", Some(span.halted_s)),
        ("carried", span.carried_s),
        ("without fixes", Some(span.silent_s)),
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
    let row = |(label, time_s): (&'static str, Option<f64>)| TimeRow {
        label,
        time: time_s.map_or_else(|| say!("not-told-apart-yet"), duration),
        percent: match time_s {
            Some(s) if total_s > 0.0 && s.is_finite() => {
                format!("{:.1}", (s / total_s * 100.0).clamp(0.0, 100.0))
            }
            _ => "0".to_owned(),
        },
    };
    rows.into_iter().map(row).collect()
}
