//! What did a change bring?
//!
//! The same kind of page as the report: one sentence, the two maps side by side, what became of each pocket, the
//! difference with its interval and where that comes from, and predictions beside measurements.

use super::page::{self, Step};
use super::{Head, plots};
use crate::map::{self, key, pocket_id, twin_svg};
use crate::messages::{named, say};
use crate::ramp::VisitScale;
use crate::raster::Ground;
use crate::words::{self, area, percent};
use serde::Serialize;
use tussock_types::{ComparedPocket, ComparedSide, Comparison, Estimate, Findings, LawnWhen, PredictionHeld};

/// Everything that the template shows.
#[derive(Serialize)]
pub(super) struct ComparePage {
    head: Head,
    version: String,
    title: String,
    sentence: String,
    difference: String,
    meaning: &'static str,
    sources: String,
    common: String,
    sides: [SideEntry; 2],
    changed: Vec<String>,
    visit_key: Vec<Step>,
    pocket_sum: Option<String>,
    pockets: Vec<ComparedEntry>,
    predictions: Vec<Held>,
    cautions: Vec<String>,
}

#[derive(Serialize)]
struct SideEntry {
    label: &'static str,
    figure: String,
    interval: String,
    equal: Option<String>,
    nights: String,
    driving: String,
    names: Vec<String>,
    map: Option<String>,
    scale: Option<String>,
    when: Option<String>,
}

#[derive(Serialize)]
struct ComparedEntry {
    key: String,
    id: String,
    found: &'static str,
    area: String,
    before: String,
    after: String,
    change: String,
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
    plot: String,
}

fn side(
    which: map::Side,
    side: &ComparedSide,
    findings: Option<&Findings>,
    pockets: &[ComparedPocket],
    scale: VisitScale,
) -> SideEntry {
    let drawn = findings.map(|findings| twin_svg(findings, which, pockets, scale));
    let (map, scale) = drawn.map_or((None, None), |drawn| (Some(drawn.svg), drawn.scale));
    let label = match which {
        map::Side::Before => "Before",
        map::Side::After => "After",
    };
    SideEntry {
        label,
        figure: percent(side.visited_fraction.estimate),
        interval: words::interval(side.visited_fraction),
        equal: side.at_equal_hours_fraction.map(percent),
        nights: say!("count-night", count = side.nights as usize),
        driving: words::hours(side.driving_h),
        names: side.names.iter().take(12).map(|name| words::name(name)).collect(),
        map,
        scale,
        when: findings.map(page::when),
    }
}

fn pocket((index, pocket): (usize, &ComparedPocket)) -> ComparedEntry {
    ComparedEntry {
        key: key('c', index),
        id: pocket_id(pocket),
        found: match pocket.found {
            LawnWhen::Before => "before",
            LawnWhen::After => "after",
        },
        area: area(pocket.area_m2),
        before: words::with_interval(pocket.before_fraction),
        after: words::with_interval(pocket.after_fraction),
        change: named("pocket-change", &pocket.change),
        sentence: crate::text(&pocket.said),
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
        plot: plots::gains(&[
            plots::GainRow {
                label: "predicted",
                value: held.predicted_fraction,
                is_measured: false,
            },
            plots::GainRow {
                label: "measured after",
                value: Estimate::bare(held.measured_fraction),
                is_measured: true,
            },
        ]),
    }
}

pub(super) fn page(comparison: &Comparison) -> ComparePage {
    let before = comparison.findings_before.as_deref();
    let after = comparison.findings_after.as_deref();
    let pockets = &comparison.pockets;
    let grounds = [before, after].into_iter().flatten();
    let most = grounds
        .filter_map(|findings| Ground::of(findings.cells.as_ref()?))
        .map(|ground| ground.scale.most)
        .fold(4.0, f64::max);
    let scale = VisitScale { most };
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
        head: Head::new(),
        version: words::plain(&comparison.tool_version, 20),
        title: garden
            .map(words::name)
            .filter(|name| !name.is_empty())
            .unwrap_or_else(|| say!("before-after")),
        sentence: words::comparison_said(comparison),
        difference: words::points_with_interval(comparison.difference.visited_fraction),
        meaning: words::difference_meaning(comparison.difference.is_real),
        sources: words::difference_sources(&comparison.difference),
        common: area(comparison.common_m2),
        sides: [
            side(map::Side::Before, &comparison.before, before, pockets, scale),
            side(map::Side::After, &comparison.after, after, pockets, scale),
        ],
        changed: changed.collect(),
        visit_key: page::visit_key(scale),
        pocket_sum: (!pockets.is_empty()).then(|| words::pocket_changes(pockets)),
        pockets: pockets.iter().enumerate().map(pocket).collect(),
        predictions: comparison.predictions.iter().map(held).collect(),
        cautions: comparison.cautions.iter().map(crate::text).collect(),
    }
}
