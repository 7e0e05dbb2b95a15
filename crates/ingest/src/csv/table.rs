//! Lines, cells, and where a table begins.

use super::Scale;
use super::columns::{Columns, Field, FieldPlaces};
use crate::error::IngestError;
use crate::ledger::{excerpt, line_of};
use crate::lines::{TextLine, TextLines};
use crate::number::{Decimal, decimal};
use tussock_types::LogFormat;

/// A header is searched for in this many lines.
const HEADER_WITHIN: usize = 64;
/// What separates cells.
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

/// Cuts a line into cells; quotes and blanks around a cell are dropped.
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

/// A header line without the sign that makes it a remark.
fn bare(line: &[u8]) -> &[u8] {
    line.trim_ascii_start()
        .trim_ascii_start()
        .strip_prefix(b"#")
        .or_else(|| line.strip_prefix(b"%"))
        .unwrap_or(line)
}

pub(super) struct CsvTable {
    pub(super) layout: FieldPlaces,
    pub(super) separator: Separator,
    /// First byte after the header.
    pub(super) body: usize,
    /// First byte of the header.
    pub(super) header: usize,
    /// Cells of a full row.
    pub(super) width: usize,
    /// The names in front of each cell of a row: `lat=`, as in the first row.
    pub(super) keys: Vec<Vec<u8>>,
    /// The clock of a solution file.
    pub(super) scale: Option<Scale>,
}

impl CsvTable {
    fn new(layout: FieldPlaces, separator: Separator, header: usize, body: usize, width: usize) -> Self {
        Self {
            layout,
            separator,
            body,
            header,
            width,
            keys: Vec::new(),
            scale: None,
        }
    }
}

/// What kind of table it is, if a line near the top names columns for the position.
pub(crate) fn kind(text: &[u8]) -> Option<LogFormat> {
    find_header(text).map(|table| match table.scale {
        Some(_) => LogFormat::Pos,
        None => LogFormat::Csv,
    })
}

/// The clock that the header of a solution file names first.
pub(super) fn clock_of_solution(line: &[u8]) -> Option<Scale> {
    let header = line.trim_ascii_start().strip_prefix(b"%")?.trim_ascii_start();
    let end = header.iter().position(|&byte| !byte.is_ascii_uppercase())?;
    let has_position = memchr::memmem::find(header, b"latitude").is_some()
        || memchr::memmem::find(header, b"-baseline(m)").is_some();
    Scale::of(&header[..end]).filter(|_| has_position)
}

/// The table below the header of a solution file. The row after it shows how many columns the clock takes.
fn solution(text: &[u8], header: &TextLine<'_>, separator: Separator, named: &[&[u8]]) -> Option<CsvTable> {
    let scale = clock_of_solution(header.content)?;
    let mut row = Vec::new();
    let rows = TextLines::new(&text[header.end..]).map(|line| line.content);
    let first = rows
        .take(HEADER_WITHIN)
        .find(|line| !line.trim_ascii().is_empty() && !is_remark(line));
    cells(first.unwrap_or_default(), separator, &mut row);
    let has_week = row.first().is_some_and(|cell| number(cell, separator).is_some());
    let clock: &[&[u8]] = match (row.len() > named.len(), has_week) {
        (_, true) => &[b"week", b"tow"],
        (true, false) => &[b"date", b"time"],
        (false, false) => &[b"time"],
    };
    let others = named.iter().skip(1).map(|&name| match name {
        b"Q" => &b"quality"[..],
        b"ns" => b"nsat",
        other => other,
    });
    let names: Vec<&[u8]> = clock.iter().copied().chain(others).collect();
    let layout = FieldPlaces::of_header(&names);
    layout.has_position().then_some(CsvTable {
        scale: Some(scale),
        ..CsvTable::new(layout, separator, header.start, header.end, names.len())
    })
}

/// A table whose rows name each cell; this is the first row.
fn keyed(row: &TextLine<'_>, separator: Separator, found: &[&[u8]]) -> Option<CsvTable> {
    let key_of = |cell: &&[u8]| match memchr::memchr(b'=', cell) {
        Some(at)
            if cell[..at]
                .iter()
                .all(|byte| byte.is_ascii_alphanumeric() || b"_- ".contains(byte)) =>
        {
            Some(cell[..=at].to_vec())
        }
        Some(_) => None,
        None => cell.is_empty().then(Vec::new),
    };
    let keys: Vec<Vec<u8>> = found.iter().map(key_of).collect::<Option<_>>()?;
    let names: Vec<&[u8]> = keys
        .iter()
        .map(|key| key.strip_suffix(b"=").unwrap_or(key))
        .collect();
    let layout = FieldPlaces::of_header(&names);
    layout.has_position().then_some(CsvTable {
        keys,
        ..CsvTable::new(layout, separator, row.start, row.start, found.len())
    })
}

pub(super) fn find_header(text: &[u8]) -> Option<CsvTable> {
    let mut found = Vec::new();
    for line in TextLines::new(text).take(HEADER_WITHIN) {
        if line.content.len() > 1 << 16 {
            continue;
        }
        for separator in SEPARATORS {
            cells(bare(line.content), separator, &mut found);
            if let Some(table) =
                solution(text, &line, separator, &found).or_else(|| keyed(&line, separator, &found))
            {
                return Some(table);
            }
            let layout = FieldPlaces::of_header(&found);
            if layout.has_position() && found.len() >= 2 {
                return Some(CsvTable::new(
                    layout,
                    separator,
                    line.start,
                    line.end,
                    found.len(),
                ));
            }
        }
    }
    None
}

/// The table as the user describes it.
pub(super) fn table_of_columns(name: &str, text: &[u8], columns: &Columns) -> Result<CsvTable, IngestError> {
    let mut found = Vec::new();
    let mut missing: Option<(Field, String, String, usize)> = None;
    for line in TextLines::new(text).take(HEADER_WITHIN) {
        if line.content.trim_ascii().is_empty() || line.content.len() > 1 << 16 {
            continue;
        }
        if !columns.needs_header() && is_remark(line.content) {
            continue;
        }
        for separator in SEPARATORS {
            cells(bare(line.content), separator, &mut found);
            match FieldPlaces::of_columns(columns, &found) {
                Ok(layout) if layout.width() <= found.len() => {
                    let width = found.len();
                    // Numbered columns: the first line is a row, unless its position is not numeric.
                    let position = layout.get(Field::Lat).or(layout.get(Field::East)).unwrap_or(0);
                    let is_row = !columns.needs_header()
                        && (found[position].is_empty() || number(found[position], separator).is_some());
                    let body = if is_row { line.start } else { line.end };
                    return Ok(CsvTable::new(layout, separator, line.start, body, width));
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

/// A number, with a decimal comma if the comma does not separate cells.
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
