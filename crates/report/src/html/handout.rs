//! What stays with the customer? The second of two pages on paper.
//!
//! The first page is the first screen, with the map. This one lists where to look with a tape, what is suggested and what
//! that will bring, and what to beware of; never more than fits, and it never claims more than "driven over".

use crate::messages::Voice;
use crate::words;
use serde::Serialize;
use tussock_types::Findings;

/// Pockets that fit.
const POCKETS: usize = 4;
/// Stuck spots that fit.
const SPOTS: usize = 2;
/// Changes that fit.
const CHANGES: usize = 2;
/// With up to this many entries, sentences may be long.
const ROOMY: usize = 4;
/// Letters of a sentence that fit if the page is full.
const SENTENCE: usize = 125;
/// Letters of a sentence if there is space.
const LONG_SENTENCE: usize = 320;
/// Number of cautions of suggestions that fit.
const CAUTIONS: usize = 5;
/// Letters of all cautions that fit where the page is full; where it is not, any caution fits in any language.
const CAUTION_LETTERS: usize = 650;
const LONG_CAUTION: usize = 300;

/// How much of each fits on the second page.
#[derive(Serialize)]
pub(super) struct Handout {
    pockets: usize,
    spots: usize,
    changes: usize,
    letters: usize,
    left_out: usize,
    cautions: Vec<String>,
}

pub(super) fn paper(voice: Voice, findings: &Findings) -> Handout {
    let suggestions = findings.suggestions.as_deref().unwrap_or_default();
    let (pockets, spots) = (findings.missed_pockets.len(), findings.stuck_spots.len());
    let is_roomy = pockets + spots + suggestions.len() <= ROOMY;
    let mut cautions: Vec<String> = Vec::new();
    let shown = suggestions.iter().take(CHANGES);
    for caution in shown.flat_map(|change| &change.cautions) {
        let caution = crate::messages::said(voice, caution);
        if !cautions.contains(&caution) && cautions.len() < CAUTIONS {
            cautions.push(caution);
        }
    }
    let letters = match is_roomy {
        true => LONG_CAUTION,
        false => CAUTION_LETTERS / cautions.len().max(1),
    };
    let cautions = cautions.iter().map(|caution| words::plain(caution, letters));
    let cautions = cautions.collect();
    Handout {
        pockets: POCKETS,
        spots: SPOTS,
        changes: CHANGES,
        letters: if is_roomy { LONG_SENTENCE } else { SENTENCE },
        left_out: pockets.saturating_sub(POCKETS)
            + spots.saturating_sub(SPOTS)
            + suggestions.len().saturating_sub(CHANGES),
        cautions,
    }
}
