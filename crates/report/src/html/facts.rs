//! Figures with the sentence that a customer understands, in the order of the page.

use crate::words::{self, area, count, duration, hours, metres, minutes, number, percent, plural};
use serde::Serialize;
use tussock_types::{
    Coverage, Findings, MissedPocket, NoiseSource, OutlineSource, Place, Revisits, StuckSpot, Suggestion,
};

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
pub(super) struct Pocket {
    id: String,
    area: String,
    widest: String,
    place: String,
    tape: Vec<String>,
    why: String,
    causes: Vec<Reason>,
    chance: String,
    certainty: String,
    suggestions: Vec<String>,
}

#[derive(Serialize)]
struct Reason {
    name: &'static str,
    meaning: &'static str,
    weight: String,
    evidence_for: Vec<String>,
    evidence_against: Vec<String>,
}

fn sentences(texts: &[String]) -> Vec<String> {
    texts.iter().map(|text| words::sentence(text)).collect()
}

/// A probability in words that do not pretend to more digits than they have.
fn chance(fraction: f64) -> String {
    match fraction {
        f if !f.is_finite() => "unknown".to_owned(),
        f if f < 1e-4 => "less than 1 in 10,000".to_owned(),
        f if f < 0.01 => format!("about 1 in {}", number((1.0 / f / 10.0).round() * 10.0, 0)),
        f => percent(f),
    }
}

pub(super) fn pocket(pocket: &MissedPocket) -> Pocket {
    let causes = pocket.causes.iter().flatten().map(|found| Reason {
        name: words::cause(found.cause),
        meaning: words::cause_meaning(found.cause),
        weight: words::whole_percent(found.weight_fraction),
        evidence_for: sentences(&found.evidence_for),
        evidence_against: sentences(&found.evidence_against),
    });
    let place = Place::new(pocket.east_m, pocket.north_m);
    Pocket {
        id: words::plain(&pocket.id, 12),
        area: area(pocket.area_m2),
        widest: metres(pocket.widest_m),
        place: words::position(pocket.lat, pocket.lon, place),
        tape: tape(&pocket.tape),
        why: words::sentence(&pocket.why),
        causes: causes.collect(),
        chance: chance(pocket.chance_fraction),
        certainty: match pocket.certainty {
            Some(certainty) => words::whole_percent(certainty),
            None => "not worked out yet".to_owned(),
        },
        suggestions: pocket
            .suggestion_ids
            .iter()
            .map(|id| words::plain(id, 12))
            .collect(),
    }
}

fn tape(tape: &[tussock_types::Tape]) -> Vec<String> {
    tape.iter()
        .map(|tape| format!("{} from {}", metres(tape.distance_m), words::name(&tape.from)))
        .collect()
}

/// One not-yet pocket.
#[derive(Serialize)]
pub(super) struct NotYet {
    id: String,
    area: String,
    widest: String,
    chance: String,
    decided: String,
    tape: Vec<String>,
}

pub(super) fn not_yet(findings: &Findings) -> Vec<NotYet> {
    let row = |pocket: &tussock_types::NotYetPocket| NotYet {
        id: words::plain(&pocket.id, 12),
        area: area(pocket.area_m2),
        widest: metres(pocket.widest_m),
        chance: chance(pocket.chance_fraction),
        decided: pocket
            .hours_to_decide
            .map_or_else(|| "cannot be said".to_owned(), hours),
        tape: tape(&pocket.tape),
    };
    findings.not_yet.iter().map(row).collect()
}

/// One stuck spot.
#[derive(Serialize)]
pub(super) struct Spot {
    id: String,
    lost: String,
    times: String,
    through: String,
    radius: String,
    place: String,
    certainty: String,
    why: String,
}

pub(super) fn spot(spot: &StuckSpot) -> Spot {
    Spot {
        id: words::plain(&spot.id, 12),
        lost: minutes(spot.minutes),
        times: count(spot.episodes),
        through: count(spot.passes_through),
        radius: metres(spot.radius_m),
        place: words::position(spot.lat, spot.lon, Place::new(spot.east_m, spot.north_m)),
        certainty: words::whole_percent(spot.certainty),
        why: words::sentence(&spot.why),
    }
}

/// One suggested change.
#[derive(Serialize)]
pub(super) struct Change {
    id: String,
    kind: &'static str,
    why: String,
    cost: Vec<String>,
    addresses: String,
    rows: Vec<[String; 3]>,
    cautions: Vec<String>,
}

pub(super) fn change(suggestion: &Suggestion) -> Change {
    let predicted = suggestion.predicted;
    let mut cost = Vec::new();
    if let Some(wire_m) = suggestion.wire_m {
        cost.push(format!("{} of wire", metres(wire_m)));
    }
    if let Some(share) = suggestion.outing_share_fraction {
        cost.push(format!(
            "{} of the outings sent along it",
            words::whole_percent(share)
        ));
    }
    let with = |estimate: tussock_types::Estimate| {
        format!("{} ({})", percent(estimate.estimate), words::interval(estimate))
    };
    let ids: Vec<String> = suggestion
        .addresses
        .iter()
        .map(|id| words::plain(id, 12))
        .collect();
    Change {
        id: words::plain(&suggestion.id, 12),
        kind: words::suggestion(suggestion.kind),
        why: words::sentence(&suggestion.why),
        cost,
        addresses: ids.join(", "),
        rows: vec![
            [
                "the pocket".to_owned(),
                with(predicted.pocket_fraction_before),
                with(predicted.pocket_fraction_after),
            ],
            [
                "the whole lawn".to_owned(),
                with(predicted.visited_fraction_before),
                with(predicted.visited_fraction_after),
            ],
        ],
        cautions: sentences(&suggestion.cautions),
    }
}

/// What the share of the lawn means in square metres out of a hundred, and what is missing.
pub(super) fn of_a_hundred(findings: &Findings, coverage: &Coverage) -> String {
    let share = number(coverage.visited_fraction.estimate * 100.0, 0);
    let of_a_hundred = format!("Of every 100 m² of lawn, the cutting disc passed over about {share} m².");
    let pockets = &findings.missed_pockets;
    let widest_m = pockets.iter().map(|pocket| pocket.widest_m).fold(0.0, f64::max);
    match pockets.len() {
        0 => format!("{of_a_hundred} No pocket stayed bare that luck does not explain."),
        1 => format!(
            "{of_a_hundred} One missed pocket stayed bare, {} wide.",
            metres(widest_m)
        ),
        many => format!(
            "{of_a_hundred} {} stayed bare, the widest {}.",
            plural(many, "missed pocket", "missed pockets"),
            metres(widest_m)
        ),
    }
}

/// How often the lawn was driven over.
pub(super) fn revisit_facts(revisits: &Revisits) -> Vec<Fact> {
    let quantile = |value: Option<f64>| value.map_or_else(|| "longer than this log".to_owned(), hours);
    let mut facts = vec![
        fact(
            "Visits, typical",
            number(revisits.median_per_cell, 0),
            format!(
                "Half of the lawn was driven over at least this often; the mean is {}.",
                number(revisits.mean_per_cell, 1)
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
            format!(
                "Half of the waits are shorter. Nine in ten: {}. 99 in 100: {}.",
                quantile(revisits.interval_h.p90),
                quantile(revisits.interval_h.p99)
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
pub(super) struct Activity {
    label: &'static str,
    time: String,
    percent: String,
}

pub(super) fn activities(findings: &Findings) -> Vec<Activity> {
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
    let row = |(label, time_s): (&'static str, Option<f64>)| Activity {
        label,
        time: time_s.map_or_else(|| "not told apart yet".to_owned(), duration),
        percent: match time_s {
            Some(s) if total_s > 0.0 && s.is_finite() => {
                format!("{:.1}", (s / total_s * 100.0).clamp(0.0, 100.0))
            }
            _ => "0".to_owned(),
        },
    };
    rows.into_iter().map(row).collect()
}

/// How this was counted.
pub(super) fn method_facts(findings: &Findings) -> Vec<Fact> {
    let mut facts = Vec::new();
    if let Some(coverage) = &findings.coverage {
        facts.push(fact(
            "Cutting width",
            format!("{} cm", number(coverage.cut_width_m * 100.0, 0)),
            "As given in the settings. A centimetre more would count more ground.",
        ));
        facts.push(fact(
            "Counting square",
            metres(coverage.cell_m),
            format!(
                "The lawn was counted in squares of this side; that alone moves the result by about {} points.",
                number(coverage.cell_error_fraction * 100.0, 2)
            ),
        ));
        facts.push(fact(
            "Realisations",
            count(u64::from(coverage.realisations)),
            match coverage.realisations {
                0 | 1 => "Counted once, on the likeliest path; the position error is not yet played through.",
                _ => "So many likely paths were counted, to see how far the position error moves the result.",
            },
        ));
        facts.push(fact(
            "At face value",
            percent(coverage.face_value_fraction),
            "What joining the raw fixes by straight lines would give. For comparison only.",
        ));
        if let Some(reachable_m2) = coverage.reachable_m2 {
            facts.push(fact(
                "Reachable",
                area(reachable_m2),
                "The part of the lawn that the disc can get to at all.",
            ));
        }
    }
    facts.push(fact(
        "Position error",
        position_figure(findings),
        format!(
            "Standard deviation per axis, from {}.",
            words::noise_source(findings.positions.source)
        ),
    ));
    if findings.positions.source == NoiseSource::Default {
        facts.push(fact(
            "Beware",
            "default error".to_owned(),
            "The log gives no way to tell how exact it is; log an hour at the station to find out.",
        ));
    }
    if let Some(offset) = findings.positions.plan_offset {
        facts.push(fact(
            "Plan against log",
            format!(
                "{} m east, {} m north, turned {}°",
                number(offset.east_m, 2),
                number(offset.north_m, 2),
                number(offset.rotation_deg, 1)
            ),
            if offset.is_beside() {
                format!(
                    "The plan was moved by this to fit the log; known within {}.",
                    metres(offset.sd_m)
                )
            } else {
                format!(
                    "Known within {}: no more than chance, so the plan stays as it is drawn.",
                    metres(offset.sd_m)
                )
            },
        ));
    }
    facts.push(match findings.outline_source {
        OutlineSource::Plan => fact("Outline", "from the plan".to_owned(), "Lawn, zones and obstacles as drawn in the plan."),
        OutlineSource::Trace => fact(
            "Outline",
            "from the log itself".to_owned(),
            "Ground beyond the outermost drive cannot be missed, so every figure here flatters. A walked outline mends that.",
        ),
    });
    let span = &findings.span;
    facts.push(fact(
        "Path",
        words::path_length(span.path_m),
        format!(
            "From {} fixes, one every {}; {} more were left out for poor quality or jumps.",
            count(span.fixes_used),
            duration(span.period_s),
            count(span.fixes_gated)
        ),
    ));
    if let Some(speed_mps) = span.speed_mps {
        let outings = span
            .outings
            .map(|outings| {
                plural(
                    usize::try_from(outings).unwrap_or(usize::MAX),
                    "outing",
                    "outings",
                )
            })
            .unwrap_or_else(|| "number of outings not known".to_owned());
        facts.push(fact(
            "Usual speed",
            format!("{} m/s", number(speed_mps, 2)),
            format!("While driving; {outings}."),
        ));
    }
    facts
}

fn position_figure(findings: &Findings) -> String {
    let mut parts = Vec::new();
    if let Some(white_m) = findings.positions.white_m {
        parts.push(format!("{} from fix to fix", metres(white_m)));
    }
    if let Some(drift_m) = findings.positions.drift_m {
        parts.push(format!("{} drift", metres(drift_m)));
    }
    if parts.is_empty() {
        "not known".to_owned()
    } else {
        parts.join(", ")
    }
}

/// One input file.
#[derive(Serialize)]
pub(super) struct Input {
    name: String,
    format: &'static str,
    made_by: String,
    machine: String,
    fixes: String,
    sha256: String,
    skipped: Vec<[String; 3]>,
    notices: Vec<String>,
}

pub(super) fn inputs(findings: &Findings) -> Vec<Input> {
    let input = |input: &tussock_types::InputFindings| {
        let facts = &input.facts;
        let skipped = facts.skipped.iter().map(|(reason, pieces)| {
            let place = facts.places.iter().find(|place| place.reason == *reason);
            let at = place
                .map(|place| format!("line {}", count(place.line)))
                .unwrap_or_default();
            [count(*pieces), reason.words().to_owned(), at]
        });
        Input {
            name: words::name(&facts.name),
            format: facts.format.words(),
            made_by: facts.made_by.as_deref().map(words::name).unwrap_or_default(),
            machine: words::name(&facts.machine),
            fixes: count(facts.fixes),
            sha256: words::plain(&facts.sha256, 64),
            skipped: skipped.collect(),
            notices: facts
                .notices
                .iter()
                .map(|notice| words::sentence(&notice.sentence))
                .collect(),
        }
    };
    findings.inputs.iter().map(input).collect()
}
