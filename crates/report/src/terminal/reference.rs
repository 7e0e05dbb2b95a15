//! How far is the log from a surveyed path? A small table.

use super::{LABEL_COLUMNS, Sheet};
use crate::words;
use tussock_types::{ErrorLength, ErrorTime, ReferenceErrors, ReferenceFindings};

/// Columns that the table needs; in less room its rows become sentences.
const TABLE_COLUMNS: usize = 68;

pub(super) fn rows(sheet: &mut Sheet, found: &ReferenceFindings) {
    let mut head = format!(
        "{} of {}, {} fixes compared",
        words::path_length(found.length_m),
        words::plain(&found.name, 40),
        words::count(found.compared_fixes)
    );
    if found.beside_fixes > 0 {
        head.push_str(&format!(
            "; {} more than {} beside it left out",
            words::count(found.beside_fixes),
            words::metres(found.beside_m)
        ));
    }
    sheet.row("Reference", &head);
    if found.compared_fixes == 0 {
        return;
    }
    let heads = ["mean", "rms", "95 %", "largest"];
    let is_wide = sheet.width() >= TABLE_COLUMNS;
    if is_wide {
        sheet.line(&line("", heads.map(str::to_owned)));
    }
    for (whose, errors) in [("logged", &found.logged), ("located", &found.located)] {
        for (what, cells) in table(errors) {
            if is_wide {
                sheet.line(&line(&format!("{what}, {whose}"), cells));
            } else {
                let words: Vec<String> = heads
                    .iter()
                    .zip(&cells)
                    .map(|(head, cell)| format!("{head} {cell}"))
                    .collect();
                sheet.indented(2, &format!("{what}, {whose}: {}", words.join(", ")));
            }
        }
    }
    if !found.is_timed {
        sheet.indented(
            LABEL_COLUMNS,
            "The surveyed path has no times: errors along it and in time cannot be told.",
        );
    }
}

fn table(errors: &ReferenceErrors) -> Vec<(&'static str, [String; 4])> {
    let metres = |found: &ErrorLength| {
        [found.mean_m, found.rms_m, found.p95_m, found.max_m]
            .map(|value| format!("{} m", words::number(value, 3)))
    };
    let seconds = |found: &ErrorTime| {
        [found.mean_s, found.rms_s, found.p95_s, found.max_s]
            .map(|value| format!("{} s", words::number(value, 1)))
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

fn line(label: &str, cells: [String; 4]) -> String {
    let mut line = format!("  {label:<22}");
    for cell in cells {
        let gap = 11_usize.saturating_sub(words::columns(&cell));
        line.push_str(&" ".repeat(gap));
        line.push_str(&cell);
    }
    line
}
