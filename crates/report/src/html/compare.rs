//! What did a change bring?
//!
//! The same kind of page as the report: one sentence, the two maps side by side, what became of each pocket, the
//! difference with its interval and where that comes from, and predictions beside measurements.

use super::STYLE;
use crate::map::{Drawing, Furniture};
use crate::words::{self, area, percent};
use serde::Serialize;
use tussock_types::{ComparedPocket, ComparedSide, Comparison, Findings, LawnWhen, PredictionHeld};

/// Everything that the template shows.
#[derive(Serialize)]
pub(super) struct ComparePage {
    style: &'static str,
    version: String,
    title: String,
    sentence: String,
    difference: String,
    meaning: &'static str,
    sources: String,
    common: String,
    sides: [Side; 2],
    changed: Vec<String>,
    pocket_sum: Option<String>,
    pockets: Vec<Pocket>,
    predictions: Vec<Held>,
    cautions: Vec<String>,
}

#[derive(Serialize)]
struct Side {
    label: &'static str,
    figure: String,
    interval: String,
    equal: Option<String>,
    nights: String,
    driving: String,
    names: Vec<String>,
    map: Option<String>,
}

#[derive(Serialize)]
struct Pocket {
    id: String,
    found: &'static str,
    area: String,
    before: String,
    after: String,
    change: &'static str,
    sentence: String,
}

#[derive(Serialize)]
struct Held {
    id: String,
    pocket: String,
    built: &'static str,
    predicted: String,
    measured: String,
    meaning: &'static str,
}

fn side(label: &'static str, side: &ComparedSide, findings: Option<&Findings>) -> Side {
    Side {
        label,
        figure: percent(side.visited_fraction.estimate),
        interval: words::interval(side.visited_fraction),
        equal: side.at_equal_hours_fraction.map(percent),
        nights: words::plural(side.nights as usize, "night", "nights"),
        driving: words::hours(side.driving_h),
        names: side.names.iter().take(12).map(|name| words::name(name)).collect(),
        map: findings.map(|findings| Drawing::of(findings, Furniture::Bare).svg()),
    }
}

fn pocket(pocket: &ComparedPocket) -> Pocket {
    Pocket {
        id: words::plain(&pocket.id, 12),
        found: match pocket.found {
            LawnWhen::Before => "before",
            LawnWhen::After => "after",
        },
        area: area(pocket.area_m2),
        before: words::with_interval(pocket.before_fraction),
        after: words::with_interval(pocket.after_fraction),
        change: words::pocket_change(pocket.change),
        sentence: words::sentence(&pocket.sentence),
    }
}

fn held(held: &PredictionHeld) -> Held {
    Held {
        id: words::plain(&held.id, 12),
        pocket: words::plain(&held.pocket, 12),
        built: if held.was_built { "built" } else { "not built" },
        predicted: words::with_interval(held.predicted_fraction),
        measured: percent(held.measured_fraction),
        meaning: words::prediction_meaning(held),
    }
}

pub(super) fn page(comparison: &Comparison) -> ComparePage {
    let before = comparison.findings_before.as_deref();
    let after = comparison.findings_after.as_deref();
    let garden = after
        .or(before)
        .and_then(|findings| findings.settings.garden.name.as_deref());
    let changed = comparison.changed.iter().map(|ground| {
        let when = match ground.lawn {
            LawnWhen::Before => "was lawn only before",
            LawnWhen::After => "is lawn only since",
        };
        format!("{} {when}.", area(ground.area_m2))
    });
    ComparePage {
        style: STYLE,
        version: words::plain(&comparison.tool_version, 20),
        title: garden
            .map(words::name)
            .filter(|name| !name.is_empty())
            .unwrap_or_else(|| "Before and after".to_owned()),
        sentence: words::sentence(&comparison.sentence),
        difference: words::points_with_interval(comparison.difference.visited_fraction),
        meaning: words::difference_meaning(comparison.difference.is_real),
        sources: words::difference_sources(&comparison.difference),
        common: area(comparison.common_m2),
        sides: [
            side("Before", &comparison.before, before),
            side("After", &comparison.after, after),
        ],
        changed: changed.collect(),
        pocket_sum: (!comparison.pockets.is_empty()).then(|| words::pocket_changes(&comparison.pockets)),
        pockets: comparison.pockets.iter().map(pocket).collect(),
        predictions: comparison.predictions.iter().map(held).collect(),
        cautions: comparison
            .cautions
            .iter()
            .map(|text| words::sentence(text))
            .collect(),
    }
}
