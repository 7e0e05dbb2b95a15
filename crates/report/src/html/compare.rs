//! What did a change bring?
//!
//! The same kind of page as the report: one sentence, the two maps side by side, the outcome for each pocket, the difference
//! with its interval and the sources of that, and predictions beside measurements.

use super::page;
use crate::filters::compared;
use crate::map::{self, pocket_id, twin_svg};
use crate::messages::Voice;
use crate::messages::say;
use crate::ramp::VisitScale;
use crate::raster::Ground;
use crate::words;
use minijinja::{Value, context, value::Serde};
use tussock_types::{ComparedSide, Comparison, Findings};

pub(super) fn page(voice: Voice, comparison: &Comparison) -> Value {
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
    let side = |label: String, which: map::Side, side: &ComparedSide, findings: Option<&Findings>| {
        let drawn = findings.map(|findings| twin_svg(voice, findings, which, pockets, scale));
        let (map, scale) = drawn.map_or((None, None), |drawn| (Some(drawn.svg), drawn.scale));
        let when = findings.map(|findings| page::when(voice, findings));
        context! { label, map, scale, when, found => Serde(side) }
    };
    context! {
        title => garden
            .map(words::name)
            .filter(|name| !name.is_empty())
            .unwrap_or_else(|| say!(voice, "before-after")),
        sides => [
            side(say!(voice, "before"), map::Side::Before, &comparison.before, before),
            side(say!(voice, "after"), map::Side::After, &comparison.after, after),
        ],
        visit_key => Serde(page::visit_key(voice, scale)),
        pocket_ids => pockets.iter().map(pocket_id).collect::<Vec<_>>(),
        ..compared(voice, comparison)
    }
}
