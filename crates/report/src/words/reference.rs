//! How is the distance to a surveyed path put into words?

use super::{count, metres, number, path_length, plain};
use serde::Serialize;
use tussock_types::{ErrorLength, ErrorTime, ReferenceErrors, ReferenceFindings};

/// What the figures of a row are.
pub(crate) const REFERENCE_HEADS: [&str; 4] = ["mean", "rms", "95 %", "largest"];

/// One error, for the fixes as logged or for the path that was found from them.
#[derive(Serialize)]
pub(crate) struct ReferenceRow {
    pub(crate) what: &'static str,
    pub(crate) whose: &'static str,
    pub(crate) figures: [String; 4],
}

/// What was compared with what.
pub(crate) fn reference_head(found: &ReferenceFindings) -> String {
    let mut head = format!(
        "{} of {}, {} compared",
        path_length(found.length_m),
        plain(&found.name, 40),
        super::plural(found.compared_fixes, "fix", "fixes")
    );
    if found.beside_fixes > 0 {
        head.push_str(&format!(
            "; {} more than {} beside it left out",
            count(found.beside_fixes),
            metres(found.beside_m)
        ));
    }
    head
}

/// Rows of the table; errors that are unknown have none.
pub(crate) fn reference_rows(found: &ReferenceFindings) -> Vec<ReferenceRow> {
    [("logged", &found.logged), ("located", &found.located)]
        .into_iter()
        .flat_map(|(whose, errors)| {
            table(errors)
                .into_iter()
                .map(move |(what, figures)| ReferenceRow { what, whose, figures })
        })
        .collect()
}

/// What a path without times leaves open.
pub(crate) fn reference_note(found: &ReferenceFindings) -> Option<&'static str> {
    (!found.is_timed).then_some("The surveyed path has no times: errors along it and in time cannot be told.")
}

fn table(errors: &ReferenceErrors) -> Vec<(&'static str, [String; 4])> {
    let metres = |found: &ErrorLength| {
        [found.mean_m, found.rms_m, found.p95_m, found.max_m].map(|value| format!("{} m", number(value, 3)))
    };
    let seconds = |found: &ErrorTime| {
        [found.mean_s, found.rms_s, found.p95_s, found.max_s].map(|value| format!("{} s", number(value, 1)))
    };
    [
        ("cross-track", errors.cross_track.as_ref().map(metres)),
        ("along-track", errors.along_track.as_ref().map(metres)),
        ("timing", errors.timing.as_ref().map(seconds)),
        ("pass to pass", errors.pass_to_pass.as_ref().map(metres)),
    ]
    .into_iter()
    .filter_map(|(what, cells)| Some((what, cells?)))
    .collect()
}
