//! What stays with the customer: the second of two pages on paper.
//!
//! The first page is the first screen, with the map. This one lists where to look with a tape, what is suggested and what
//! that will bring, and what to beware of; never more than fits, and never more than "driven over".

use super::facts;
use crate::messages::{named, say};
use crate::words::{self, area, metres, minutes};
use serde::Serialize;
use tussock_types::{Findings, Place, Said};

/// Pockets that fit.
const POCKETS: usize = 4;
/// Stuck spots that fit.
const SPOTS: usize = 2;
/// Changes that fit.
const CHANGES: usize = 2;
/// Entries up to which sentences may be long.
const ROOMY: usize = 4;
/// Letters of a sentence that fit where the page is full.
const SENTENCE: usize = 125;
/// Letters of a sentence where there is room.
const LONG_SENTENCE: usize = 320;
/// Cautions of suggestions that fit.
const CAUTIONS: usize = 5;

/// The second page.
#[derive(Serialize)]
pub(super) struct Handout {
    places: Vec<Line>,
    changes: Vec<Line>,
    cautions: Vec<String>,
    more: Option<String>,
    promise: Option<String>,
}

/// An id, what it is, where, and a sentence.
#[derive(Serialize)]
struct Line {
    id: String,
    what: String,
    lines: Vec<String>,
    text: String,
}

pub(super) fn paper(findings: &Findings) -> Handout {
    let entries = findings.missed_pockets.len()
        + findings.stuck_spots.len()
        + findings.suggestions.as_deref().unwrap_or_default().len();
    let letters = if entries <= ROOMY { LONG_SENTENCE } else { SENTENCE };
    let short = |said: &Said| words::plain(&crate::text(said), letters);
    let mut places: Vec<Line> = Vec::new();
    for pocket in findings.missed_pockets.iter().take(POCKETS) {
        let place = Place::new(pocket.east_m, pocket.north_m);
        let first = pocket.causes.as_ref().and_then(|causes| causes.first());
        let cause = first.map(|found| format!("{}. ", words::capital(&named("cause", &found.cause))));
        places.push(Line {
            id: words::plain(&pocket.id, 8),
            what: say!(
                "not-driven-over-up",
                area = area(pocket.area_m2),
                length = metres(pocket.widest_m)
            ),
            lines: words::tapes(&pocket.tape, place),
            text: format!("{}{}", cause.unwrap_or_default(), short(&pocket.why)),
        });
    }
    for spot in findings.stuck_spots.iter().take(SPOTS) {
        places.push(Line {
            id: words::plain(&spot.id, 8),
            what: say!("mower-stood-here-all", as = tussock_types::times(spot.episodes as usize), time = minutes(spot.minutes)),
            lines: Vec::new(),
            text: short(&spot.why),
        });
    }
    let change = |suggestion: &tussock_types::Suggestion| Line {
        id: words::plain(&suggestion.id, 8),
        what: named("suggestion", &suggestion.kind).to_owned(),
        lines: facts::cost(suggestion),
        text: say!(
            "pocket-driven-over-this",
            why = short(&suggestion.why),
            percent = words::percent(suggestion.pocket_fraction_in_log),
            fraction = words::with_interval(suggestion.predicted.pocket_fraction_before),
            fraction_2 = words::with_interval(suggestion.predicted.pocket_fraction_after)
        ),
    };
    let suggestions = findings.suggestions.as_deref().unwrap_or_default();
    let mut cautions: Vec<String> = Vec::new();
    for caution in suggestions
        .iter()
        .take(CHANGES)
        .flat_map(|change| &change.cautions)
    {
        let caution = words::plain(&crate::text(caution), 130);
        if !cautions.contains(&caution) && cautions.len() < CAUTIONS {
            cautions.push(caution);
        }
    }
    let left_out = findings.missed_pockets.len().saturating_sub(POCKETS)
        + findings.stuck_spots.len().saturating_sub(SPOTS)
        + suggestions.len().saturating_sub(CHANGES);
    let promise = findings.over_time.as_ref().map(|over_time| {
        let promised = &findings.settings.promise;
        say!(
            "promised-lawn-within-percent",
            percent = words::percent(promised.visited_fraction),
            days = words::days(promised.days),
            word = words::capital(&named("promise", &over_time.promise.verdict))
        )
    });
    Handout {
        places,
        changes: suggestions.iter().take(CHANGES).map(change).collect(),
        cautions,
        more: (left_out > 0).then(|| say!("more-on-page-on", left_out = left_out)),
        promise,
    }
}
