//! How is the distance to a surveyed path put into words?

use super::{length, metres, number, path_length, plain};
use crate::messages::Voice;
use crate::messages::say;
use serde::Serialize;
use tussock_types::{ErrorLength, ErrorTime, ReferenceErrors, ReferenceFindings};

/// What the figures of a row are.
pub(crate) fn reference_heads(voice: Voice) -> [String; 4] {
    [
        say!(voice, "error-mean"),
        say!(voice, "error-rms"),
        say!(voice, "error-95"),
        say!(voice, "error-largest"),
    ]
}

/// One error, for the fixes as logged or for the path that was found from them.
#[derive(Serialize)]
pub(crate) struct ReferenceRow {
    pub(crate) what: String,
    pub(crate) whose: String,
    pub(crate) figures: [String; 4],
}

/// What was compared with what.
pub(crate) fn reference_head(voice: Voice, found: &ReferenceFindings) -> String {
    say!(
        voice,
        "reference-head",
        length = path_length(voice, found.length_m),
        name = plain(&found.name, 40),
        fixes = say!(voice, "count-fix", count = found.compared_fixes),
        beside = found.beside_fixes,
        distance = metres(voice, found.beside_m)
    )
}

/// Rows of the table; errors that are unknown have none.
pub(crate) fn reference_rows(voice: Voice, found: &ReferenceFindings) -> Vec<ReferenceRow> {
    [
        (say!(voice, "error-logged"), &found.logged),
        (say!(voice, "error-located"), &found.located),
    ]
    .into_iter()
    .flat_map(|(whose, errors)| {
        table(voice, errors)
            .into_iter()
            .map(move |(what, figures)| ReferenceRow {
                what,
                whose: whose.clone(),
                figures,
            })
    })
    .collect()
}

/// What a path without times leaves open.
pub(crate) fn reference_note(voice: Voice, found: &ReferenceFindings) -> Option<String> {
    (!found.is_timed).then(|| say!(voice, "reference-untimed"))
}

fn table(voice: Voice, errors: &ReferenceErrors) -> Vec<(String, [String; 4])> {
    let metres = |found: &ErrorLength| {
        [found.mean_m, found.rms_m, found.p95_m, found.max_m].map(|value| length(voice, value, 3))
    };
    let seconds = |found: &ErrorTime| {
        [found.mean_s, found.rms_s, found.p95_s, found.max_s]
            .map(|value| format!("{} s", number(voice, value, 1)))
    };
    [
        (
            say!(voice, "error-cross-track"),
            errors.cross_track.as_ref().map(metres),
        ),
        (
            say!(voice, "error-along-track"),
            errors.along_track.as_ref().map(metres),
        ),
        (say!(voice, "error-timing"), errors.timing.as_ref().map(seconds)),
        (
            say!(voice, "error-pass-to-pass"),
            errors.pass_to_pass.as_ref().map(metres),
        ),
    ]
    .into_iter()
    .filter_map(|(what, cells)| Some((what, cells?)))
    .collect()
}
