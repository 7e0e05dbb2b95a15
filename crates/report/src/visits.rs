//! Which visits did a garden have, and what did each bring?
//!
//! One row a visit, in the order of the logs: who came, what the customer said, what was changed, and what became of the
//! pocket. Everything is taken from comparisons; nothing is measured here.

use crate::messages::{Voice, named, say};
use crate::private::Privacy;
use crate::words::{self, ListMark, listed, percent};
use minijinja::{Value, context, value::Serde};
use serde::Serialize;
use tussock_types::{
    BuiltAs, ComparedPocket, Comparison, Findings, LawnWhen, PocketChange, Said, VisitDone, Whether,
};

/// The visits that comparisons show, each with the name of its folder: earliest first. If private, without names, dates
/// and what was said.
pub fn visits(compared: Vec<(String, Comparison)>, privacy: Privacy) -> Vec<VisitDone> {
    let mut dated: Vec<(Option<i64>, VisitDone)> = compared
        .into_iter()
        .map(|(name, comparison)| {
            let after = comparison.findings_after.as_deref();
            let start_s = after.and_then(|after| after.span.start_unix_s);
            (
                start_s.map(|start_s| (1000.0 * start_s) as i64),
                visit(name, &comparison, privacy),
            )
        })
        .collect();
    dated.sort_by(|a, b| a.0.cmp(&b.0).then_with(|| a.1.name.cmp(&b.1.name)));
    dated.into_iter().map(|(_, visit)| visit).collect()
}

fn visit(name: String, comparison: &Comparison, privacy: Privacy) -> VisitDone {
    let before = comparison.findings_before.as_deref();
    let after = comparison.findings_after.as_deref();
    let suggested = |id: &str| {
        let all = before
            .and_then(|before| before.suggestions.as_deref())
            .unwrap_or_default();
        all.iter()
            .find(|suggestion| suggestion.id == id)
            .map(|suggestion| suggestion.kind)
    };
    let built = (comparison.predictions.iter())
        .filter(|held| held.built == BuiltAs::Suggested)
        .filter_map(|held| suggested(held.id.as_deref()?));
    let told = VisitDone {
        name: String::new(),
        visit: None,
        start: None,
        said: None,
        built: built.collect(),
        pocket: pocket(comparison, before).cloned(),
        difference: comparison.difference,
    };
    match privacy {
        Privacy::Private => told,
        Privacy::Full => VisitDone {
            name,
            visit: [after, before]
                .into_iter()
                .flatten()
                .find_map(|side| side.visit.clone()),
            start: after.and_then(|after| after.span.start.clone()),
            said: [before, after].into_iter().flatten().find_map(|side| {
                side.complaints
                    .iter()
                    .find_map(|complaint| complaint.said.clone())
            }),
            ..told
        },
    }
}

/// The pocket that the customer pointed at, else the largest before, else the largest.
fn pocket<'a>(comparison: &'a Comparison, before: Option<&Findings>) -> Option<&'a ComparedPocket> {
    let asked = before.iter().flat_map(|before| &before.complaints);
    let asked = asked.filter_map(|complaint| match &complaint.answer {
        Some(Said::PlaceNever { pocket, .. }) => Some(pocket.as_str()),
        _ => None,
    });
    let earlier = || {
        comparison
            .pockets
            .iter()
            .filter(|pocket| pocket.found == LawnWhen::Before)
    };
    asked
        .filter_map(|id| earlier().find(|pocket| pocket.id == id))
        .chain(earlier())
        .chain(&comparison.pockets)
        .next()
}

/// A visit in words.
#[derive(Serialize)]
struct Row {
    when: String,
    who: String,
    machine: String,
    said: String,
    changed: String,
    pocket: String,
    decided: String,
}

/// What both windows say about the visits.
pub(crate) fn told(voice: Voice, visits: &[VisitDone]) -> Value {
    let rows: Vec<Row> = visits.iter().map(|visit| row(voice, visit)).collect();
    context! {
        rows => Serde(rows),
        title => say!(voice, "visits-title", count = visits.len()),
        tool_version => env!("CARGO_PKG_VERSION"),
    }
}

fn row(voice: Voice, done: &VisitDone) -> Row {
    let visit = done.visit.clone().unwrap_or_default();
    let text = |text: Option<String>| text.map(|text| words::plain(&text, 120)).unwrap_or_default();
    let date = |start: &String| start.chars().take(10).collect();
    let built = done.built.iter().map(|kind| named(voice, "suggestion", kind));
    let machine = [visit.machine, visit.serial].into_iter().flatten();
    let state = |pocket: &ComparedPocket| {
        let nights =
            |nights: Option<u32>| nights.map_or_else(|| "none".to_owned(), |nights| nights.to_string());
        // Where nights cannot be told apart, the nights of a simulated machine decide.
        let decided = match (pocket.decided_after_nights, &pocket.said) {
            (None, Said::PocketCompared { within_luck, .. })
                if matches!(pocket.change, PocketChange::Mended | PocketChange::Better)
                    && *within_luck == Whether::No =>
            {
                "beyond_luck".to_owned()
            }
            (decided, _) => nights(decided),
        };
        let change = named(voice, "pocket-change", &pocket.change);
        let state = say!(
            voice,
            "visits-decided",
            decided = decided,
            more = nights(pocket.more_nights)
        );
        listed(voice, [change, state], ListMark::Comma)
    };
    Row {
        when: text(visit.when.or_else(|| done.start.as_ref().map(date))),
        who: text(visit.who),
        machine: text(Some(machine.collect::<Vec<String>>().join(", "))),
        said: text(done.said.clone()),
        changed: visit.done.map_or_else(
            || listed(voice, built, ListMark::Comma),
            |done| words::plain(&done, 200),
        ),
        pocket: done.pocket.as_ref().map_or_else(String::new, |pocket| {
            say!(
                voice,
                "visits-pocket",
                id = words::plain(&pocket.id, 8),
                before = percent(voice, pocket.before_fraction.estimate),
                after = percent(voice, pocket.after_fraction.estimate)
            )
        }),
        decided: done.pocket.as_ref().map_or_else(String::new, state),
    }
}
