//! How this was counted, and from which files.

use super::facts::{Fact, fact};
use crate::messages::{named, say};
use crate::words::{self, area, count, duration, metres, number, percent};
use serde::Serialize;
use tussock_types::{Findings, NoiseSource, OutlineSource};

/// How this was counted.
pub(super) fn method_facts(findings: &Findings) -> Vec<Fact> {
    let mut facts = Vec::new();
    if let Some(coverage) = &findings.coverage {
        facts.push(fact(
            "Cutting width",
            say!("cm-number", number = number(coverage.cut_width_m * 100.0, 0)),
            "As given in the settings. A centimetre more would count more ground.",
        ));
        facts.push(fact(
            "Counting square",
            metres(coverage.cell_m),
            say!(
                "lawn-counted-squares-this",
                number = number(coverage.cell_error_fraction * 100.0, 2)
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
            "As logged",
            percent(coverage.as_logged_fraction),
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
        say!(
            "standard-deviation-per-axis-from",
            word = named("noise-source", &findings.positions.source)
        ),
    ));
    if findings.positions.source == NoiseSource::Default {
        facts.push(fact(
            "Beware",
            say!("default-error"),
            "The log gives no way to tell how exact it is; log an hour at the station to find out.",
        ));
    }
    if let Some(offset) = findings.plan_offset() {
        facts.push(fact(
            "Plan against log",
            say!(
                "m-east-m-north",
                number = number(offset.east_m, 2),
                number_2 = number(offset.north_m, 2),
                number_3 = number(offset.rotation_deg, 1)
            ),
            if offset.is_beside() {
                say!("plan-moved-by-this", length = metres(offset.sd_m))
            } else {
                say!("known-within-no-more", length = metres(offset.sd_m))
            },
        ));
    }
    facts.push(match findings.outline_source {
        OutlineSource::Plan => fact("Outline", say!("from-plan"), "Lawn, zones and obstacles as drawn in the plan."),
        OutlineSource::Trace => fact(
            "Outline",
            say!("from-log-itself-again"),
            "Ground beyond the outermost drive is not counted, so no figure here is for the whole lawn. Walk the outline to change that.",
        ),
    });
    let span = &findings.span;
    facts.push(fact(
        "Path",
        words::path_length(span.path_m),
        say!(
            "from-one",
            fixes = words::fixes(span),
            time = duration(span.period_s)
        ),
    ));
    if let Some(speed_mps) = span.speed_mps {
        let outings = span
            .outings
            .map(|outings| say!("count-outing", count = outings))
            .unwrap_or_else(|| say!("number-outings-not-known"));
        facts.push(fact(
            "Usual speed",
            format!("{} m/s", number(speed_mps, 2)),
            say!("while-driving", outings = outings),
        ));
    }
    facts
}

fn position_figure(findings: &Findings) -> String {
    let mut parts = Vec::new();
    if let Some(white_m) = findings.positions.white_m {
        parts.push(say!("from-fix-fix-length", length = metres(white_m)));
    }
    if let Some(drift_m) = findings.positions.drift_m {
        parts.push(say!("drift-length", length = metres(drift_m)));
    }
    if parts.is_empty() {
        say!("not-known")
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
                .map(|place| say!("line-count", count = count(place.line)))
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
