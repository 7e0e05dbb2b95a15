//! Lines, cells, and where a table begins.

use super::columns::{Columns, Field, Layout};
use crate::error::IngestError;
use crate::ledger::{excerpt, line_of};
use crate::number::{Decimal, decimal};

/// A header is looked for in so many lines.
const HEADER_WITHIN: usize = 64;
/// What parts cells.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Separator {
    Byte(u8),
    Blanks,
}

const SEPARATORS: [Separator; 4] = [
    Separator::Byte(b';'),
    Separator::Byte(b'\t'),
    Separator::Byte(b','),
    Separator::Blanks,
];

/// A line with its place; the line end is part of the place but not of the content.
#[derive(Clone, Copy)]
pub(super) struct Line<'a> {
    pub(super) start: usize,
    pub(super) end: usize,
    pub(super) content: &'a [u8],
    pub(super) is_complete: bool,
}

/// Lines ended by line feed, carriage return and line feed, or (where there is no line feed at all) carriage return.
pub(super) struct Lines<'a> {
    text: &'a [u8],
    at: usize,
    ending: u8,
}

impl<'a> Lines<'a> {
    pub(super) fn new(text: &'a [u8]) -> Self {
        let has_feed = memchr::memchr(b'\n', text).is_some();
        Self {
            text,
            at: 0,
            ending: if has_feed { b'\n' } else { b'\r' },
        }
    }
}

impl<'a> Iterator for Lines<'a> {
    type Item = Line<'a>;

    fn next(&mut self) -> Option<Line<'a>> {
        let start = self.at;
        if start >= self.text.len() {
            return None;
        }
        let (content_end, end, is_complete) = match memchr::memchr(self.ending, &self.text[start..]) {
            Some(offset) => (start + offset, start + offset + 1, true),
            None => (self.text.len(), self.text.len(), false),
        };
        self.at = end;
        let content = self.text[start..content_end]
            .strip_suffix(b"\r")
            .unwrap_or(&self.text[start..content_end]);
        Some(Line {
            start,
            end,
            content,
            is_complete,
        })
    }
}

/// Cuts a line into cells; quotes and blanks round a cell are dropped.
pub(super) fn cells<'a>(line: &'a [u8], separator: Separator, cells: &mut Vec<&'a [u8]>) {
    cells.clear();
    match separator {
        Separator::Blanks => cells.extend(
            line.split(u8::is_ascii_whitespace)
                .filter(|cell| !cell.is_empty()),
        ),
        Separator::Byte(separator) => {
            let mut rest = line;
            loop {
                let trimmed = rest.trim_ascii_start();
                if trimmed.first() == Some(&b'"')
                    && let Some(close) = memchr::memchr(b'"', &trimmed[1..])
                {
                    cells.push(&trimmed[1..=close]);
                    let after = &trimmed[close + 2..];
                    match memchr::memchr(separator, after) {
                        Some(next) => rest = &after[next + 1..],
                        None => return,
                    }
                    continue;
                }
                match memchr::memchr(separator, rest) {
                    Some(next) => {
                        cells.push(rest[..next].trim_ascii());
                        rest = &rest[next + 1..];
                    }
                    None => {
                        cells.push(rest.trim_ascii());
                        return;
                    }
                }
            }
        }
    }
}

pub(super) fn is_remark(line: &[u8]) -> bool {
    let line = line.trim_ascii_start();
    line.starts_with(b"#") || line.starts_with(b"%") || line.starts_with(b"//")
}

/// A header line without the sign that makes a remark of it.
fn bare(line: &[u8]) -> &[u8] {
    line.trim_ascii_start()
        .trim_ascii_start()
        .strip_prefix(b"#")
        .or_else(|| line.strip_prefix(b"%"))
        .unwrap_or(line)
}

pub(super) struct Table {
    pub(super) layout: Layout,
    pub(super) separator: Separator,
    /// First byte behind the header.
    pub(super) body: usize,
    /// First byte of the header.
    pub(super) header: usize,
    /// Cells of a full row.
    pub(super) width: usize,
}

/// True when a line near the top names columns for time and position, or at least for the position.
pub(crate) fn has_header(text: &[u8]) -> bool {
    find_header(text).is_some()
}

pub(super) fn find_header(text: &[u8]) -> Option<Table> {
    let mut found = Vec::new();
    for line in Lines::new(text).take(HEADER_WITHIN) {
        if line.content.len() > 1 << 16 {
            continue;
        }
        for separator in SEPARATORS {
            cells(bare(line.content), separator, &mut found);
            let layout = Layout::of_header(&found);
            if layout.has_position() && found.len() >= 2 {
                return Some(Table {
                    layout,
                    separator,
                    body: line.end,
                    header: line.start,
                    width: found.len(),
                });
            }
        }
    }
    None
}

/// The table as the user describes it.
pub(super) fn table_of_columns(name: &str, text: &[u8], columns: &Columns) -> Result<Table, IngestError> {
    let mut found = Vec::new();
    let mut missing: Option<(Field, String, String, usize)> = None;
    for line in Lines::new(text).take(HEADER_WITHIN) {
        if line.content.trim_ascii().is_empty() || line.content.len() > 1 << 16 {
            continue;
        }
        if !columns.needs_header() && is_remark(line.content) {
            continue;
        }
        for separator in SEPARATORS {
            cells(bare(line.content), separator, &mut found);
            match Layout::of_columns(columns, &found) {
                Ok(layout) if layout.width() <= found.len() => {
                    let width = found.len();
                    // Numbered columns: the first line is a row, unless its position is no number.
                    let position = layout.get(Field::Lat).or(layout.get(Field::East)).unwrap_or(0);
                    let is_row = !columns.needs_header()
                        && (found[position].is_empty() || number(found[position], separator).is_some());
                    let body = if is_row { line.start } else { line.end };
                    return Ok(Table {
                        layout,
                        separator,
                        body,
                        header: line.start,
                        width,
                    });
                }
                Ok(layout) => {
                    let wanted = format!("#{}", layout.width());
                    missing.get_or_insert((Field::Time, wanted, words(&found), line.start));
                }
                Err((field, wanted)) => {
                    if found.len() > 1 {
                        missing.get_or_insert((field, wanted, words(&found), line.start));
                    }
                }
            }
        }
    }
    let (field, wanted, have, start) =
        missing.unwrap_or_else(|| (Field::Time, "any".into(), "none".into(), 0));
    Err(IngestError::ColumnMissing {
        name: name.into(),
        wanted,
        field: field.key(),
        have,
        line: line_of(text, start as u64),
    })
}

fn words(cells: &[&[u8]]) -> String {
    let shown: Vec<String> = cells
        .iter()
        .take(30)
        .map(|cell| format!("{:?}", excerpt(cell)))
        .collect();
    shown.join(", ")
}

/// A number, with a decimal comma where the comma does not part cells.
pub(super) fn number(cell: &[u8], separator: Separator) -> Option<Decimal> {
    if separator != Separator::Byte(b',')
        && cell.len() <= 40
        && let Some(comma) = memchr::memchr(b',', cell)
        && memchr::memchr(b'.', cell).is_none()
    {
        let mut copy = [0_u8; 40];
        copy[..cell.len()].copy_from_slice(cell);
        copy[comma] = b'.';
        return decimal(&copy[..cell.len()]);
    }
    decimal(cell)
}
