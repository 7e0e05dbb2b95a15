//! How far is the log from a surveyed path? A small table.

use super::{LABEL_COLUMNS, Sheet};
use crate::words::{self, REFERENCE_HEADS};
use tussock_types::ReferenceFindings;

/// Columns that the table needs; in less room its rows become sentences.
const TABLE_COLUMNS: usize = 68;

pub(super) fn rows(sheet: &mut Sheet, found: &ReferenceFindings) {
    sheet.row("Reference", &words::reference_head(found));
    if found.compared_fixes == 0 {
        return;
    }
    let is_wide = sheet.width() >= TABLE_COLUMNS;
    if is_wide {
        sheet.line(&line("", &REFERENCE_HEADS.map(str::to_owned)));
    }
    for row in words::reference_rows(found) {
        let label = format!("{}, {}", row.what, row.whose);
        if is_wide {
            sheet.line(&line(&label, &row.figures));
        } else {
            let figures: Vec<String> = REFERENCE_HEADS
                .iter()
                .zip(&row.figures)
                .map(|(head, figure)| format!("{head} {figure}"))
                .collect();
            sheet.indented(2, &format!("{label}: {}", figures.join(", ")));
        }
    }
    if let Some(note) = words::reference_note(found) {
        sheet.indented(LABEL_COLUMNS, note);
    }
}

fn line(label: &str, figures: &[String; 4]) -> String {
    let mut line = format!("  {label:<22}");
    for figure in figures {
        let gap = 11_usize.saturating_sub(words::columns(figure));
        line.push_str(&" ".repeat(gap));
        line.push_str(figure);
    }
    line
}
