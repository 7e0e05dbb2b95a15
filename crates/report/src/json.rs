//! How is a result kept so that it can be drawn again tomorrow?
//!
//! Pretty JSON in the field order of [`Findings`]. The ground in squares is the one large part: each of its
//! columns is written as the little-endian bytes of its 32-bit floats, compressed with zlib (RFC 1950) and
//! spelled in base64 (RFC 4648, section 4):
//!
//! ```text
//! "cells": {
//!   "grid": { "east_min_m": .., "north_min_m": .., "cell_m": .., "columns": .., "rows": .. },
//!   "packing": "float32 little-endian, zlib, base64",
//!   "lawn_fraction": "eJz..", "visited_probability": "eJz..", "visits_expected": "eJz..",
//!   "first_visit_s": "eJz..", "last_visit_s": "eJz.."       NaN where never visited
//! }
//! ```
//!
//! In Python a column is `numpy.frombuffer(zlib.decompress(base64.b64decode(text)), "<f4")`, rows from south to
//! north.
//!
//! Exact: every number comes back bit for bit, but for the sign of zero. A number that is not finite anywhere else is refused by name,
//! since JSON cannot hold it. Cost: linear; a night of 1,400 m2 takes a few milliseconds.

use crate::{ReportError, finite};
use base64::{Engine, engine::general_purpose::STANDARD};
use flate2::{Compression, read::ZlibDecoder, write::ZlibEncoder};
use serde::ser::{Error as _, SerializeStruct};
use serde::{Deserialize, Serialize, Serializer};
use serde_json::ser::{Formatter, PrettyFormatter};
use std::io::{Read, Write};
use tussock_types::{Cells, Comparison, Findings, Grid, Inspection, SCHEMA_VERSION};

/// How the columns of the squares are packed.
const PACKING: &str = "float32 little-endian, zlib, base64";

/// More squares than this are refused: the counting grid itself may not be larger.
const MAX_SQUARES: usize = 64_000_000;

/// Columns of squares as text.
#[derive(Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
struct Packed {
    grid: Grid,
    packing: String,
    lawn_fraction: String,
    visited_probability: String,
    visits_expected: String,
    first_visit_s: String,
    last_visit_s: String,
}

fn pack_column(values: &[f32]) -> std::io::Result<String> {
    let mut encoder = ZlibEncoder::new(Vec::new(), Compression::default());
    let bytes: Vec<u8> = values.iter().flat_map(|value| value.to_le_bytes()).collect();
    encoder.write_all(&bytes)?;
    Ok(STANDARD.encode(encoder.finish()?))
}

fn pack(cells: &Cells) -> std::io::Result<Packed> {
    Ok(Packed {
        grid: cells.grid,
        packing: PACKING.to_owned(),
        lawn_fraction: pack_column(&cells.lawn_fraction)?,
        visited_probability: pack_column(&cells.visited_probability)?,
        visits_expected: pack_column(&cells.visits_expected)?,
        first_visit_s: pack_column(&cells.first_visit_s)?,
        last_visit_s: pack_column(&cells.last_visit_s)?,
    })
}

fn unpack_column(column: &'static str, text: &str, squares: usize) -> Result<Vec<f32>, ReportError> {
    let fault = |found: String| ReportError::Cells {
        column,
        found,
        expected: format!("{squares} numbers as {PACKING}"),
    };
    let packed = STANDARD
        .decode(text)
        .map_err(|error| fault(format!("no base64 ({error})")))?;
    let expected_bytes = squares * 4;
    let mut bytes = Vec::new();
    // One byte more than expected shows a column that is too long without unpacking all of it.
    ZlibDecoder::new(packed.as_slice())
        .take(expected_bytes as u64 + 1)
        .read_to_end(&mut bytes)
        .map_err(|error| fault(format!("no zlib ({error})")))?;
    if bytes.len() != expected_bytes {
        let more = if bytes.len() > expected_bytes {
            "more than "
        } else {
            ""
        };
        return Err(fault(format!("{more}{} bytes", bytes.len().min(expected_bytes))));
    }
    Ok(bytes
        .chunks_exact(4)
        .map(|four| f32::from_le_bytes([four[0], four[1], four[2], four[3]]))
        .collect())
}

fn unpack(packed: &Packed) -> Result<Cells, ReportError> {
    let grid = packed.grid;
    let squares = grid
        .columns
        .checked_mul(grid.rows)
        .filter(|&squares| squares <= MAX_SQUARES);
    let is_sound = grid.cell_m > 0.0
        && [grid.cell_m, grid.east_min_m, grid.north_min_m]
            .iter()
            .all(|m| m.is_finite());
    let Some(squares) = squares.filter(|_| is_sound) else {
        return Err(ReportError::Cells {
            column: "grid",
            found: format!("{} x {} squares of {} m", grid.columns, grid.rows, grid.cell_m),
            expected: format!("at most {MAX_SQUARES} squares with a positive side"),
        });
    };
    if packed.packing != PACKING {
        return Err(ReportError::Cells {
            column: "packing",
            found: format!("\"{}\"", crate::words::plain(&packed.packing, 60)),
            expected: format!("\"{PACKING}\""),
        });
    }
    Ok(Cells {
        grid,
        lawn_fraction: unpack_column("lawn_fraction", &packed.lawn_fraction, squares)?,
        visited_probability: unpack_column("visited_probability", &packed.visited_probability, squares)?,
        visits_expected: unpack_column("visits_expected", &packed.visits_expected, squares)?,
        first_visit_s: unpack_column("first_visit_s", &packed.first_visit_s, squares)?,
        last_visit_s: unpack_column("last_visit_s", &packed.last_visit_s, squares)?,
    })
}

/// What becomes of the squares.
#[derive(Clone, Copy, PartialEq)]
enum Squares {
    Packed,
    LeftOut,
}

/// Findings as they stand in the file.
struct Saved<'a> {
    findings: &'a Findings,
    squares: Squares,
}

/// Writes every field under its own name; a field that is added to the findings and forgotten here does not
/// compile.
macro_rules! write_fields {
    ($saved:expr, $serializer:expr, { $($field:ident),* $(,)? }) => {{
        let Findings { $($field,)* cells } = $saved.findings;
        let count = [$(stringify!($field)),*].len() + 1;
        let mut state = $serializer.serialize_struct("Findings", count)?;
        $(state.serialize_field(stringify!($field), $field)?;)*
        let packed = match ($saved.squares, cells) {
            (Squares::Packed, Some(cells)) => Some(pack(cells).map_err(S::Error::custom)?),
            _ => None,
        };
        state.serialize_field("cells", &packed)?;
        state.end()
    }};
}

impl Serialize for Saved<'_> {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        write_fields!(self, serializer, {
            schema_version,
            tool_version,
            settings,
            inputs,
            frame,
            log_verdict,
            span,
            positions,
            coverage,
            by_width,
            revisits,
            over_time,
            missed_pockets,
            not_yet,
            unseen,
            stuck_spots,
            worn_lines,
            strays,
            possible_stops,
            installation,
            nights,
            fit,
            reference,
            suggestions,
            cautions,
            plan,
            lawn_outline,
            outline_source,
            driven_lines,
        })
    }
}

/// The findings as `findings.json`.
///
/// # Errors
/// [`ReportError::NotFinite`] names the first number that JSON cannot hold.
pub fn to_json(findings: &Findings) -> Result<String, ReportError> {
    finite::check(&Saved {
        findings,
        squares: Squares::LeftOut,
    })?;
    let saved = Saved {
        findings,
        squares: Squares::Packed,
    };
    pretty(&saved)
}

/// A comparison as it stands in the file: its findings are packed like those of a file of their own.
struct SavedComparison<'a> {
    comparison: &'a Comparison,
    squares: Squares,
}

impl Serialize for SavedComparison<'_> {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        let Comparison {
            schema_version,
            tool_version,
            sentence,
            common_m2,
            changed,
            before: side_before,
            after: side_after,
            difference,
            pockets,
            predictions,
            findings_before,
            findings_after,
            cautions,
        } = self.comparison;
        let squares = self.squares;
        let before = findings_before
            .as_deref()
            .map(|findings| Saved { findings, squares });
        let after = findings_after
            .as_deref()
            .map(|findings| Saved { findings, squares });
        let mut state = serializer.serialize_struct("Comparison", 13)?;
        state.serialize_field("schema_version", schema_version)?;
        state.serialize_field("tool_version", tool_version)?;
        state.serialize_field("sentence", sentence)?;
        state.serialize_field("common_m2", common_m2)?;
        state.serialize_field("changed", changed)?;
        state.serialize_field("before", side_before)?;
        state.serialize_field("after", side_after)?;
        state.serialize_field("difference", difference)?;
        state.serialize_field("pockets", pockets)?;
        state.serialize_field("predictions", predictions)?;
        state.serialize_field("findings_before", &before)?;
        state.serialize_field("findings_after", &after)?;
        state.serialize_field("cautions", cautions)?;
        state.end()
    }
}

/// The comparison as `comparison.json`.
///
/// # Errors
/// [`ReportError::NotFinite`] names the first number that JSON cannot hold.
pub fn comparison_to_json(comparison: &Comparison) -> Result<String, ReportError> {
    finite::check(&SavedComparison {
        comparison,
        squares: Squares::LeftOut,
    })?;
    pretty(&SavedComparison {
        comparison,
        squares: Squares::Packed,
    })
}

/// Reads `comparison.json` back.
///
/// # Errors
/// When the bytes are no JSON, of another schema version, or hold squares that do not unpack.
pub fn comparison_from_json(bytes: &[u8]) -> Result<Comparison, ReportError> {
    let mut value: serde_json::Value = serde_json::from_slice(bytes).map_err(not_findings)?;
    check_version(&value)?;
    let mut sides = ["findings_before", "findings_after"].map(|side| {
        let cells = value
            .get_mut(side)
            .and_then(|findings| findings.get_mut("cells"))
            .map(serde_json::Value::take);
        cells.filter(|cells| !cells.is_null())
    });
    let mut comparison: Comparison = serde_json::from_value(value).map_err(not_findings)?;
    let [before, after] = &mut sides;
    for (findings, cells) in [
        (&mut comparison.findings_before, before.take()),
        (&mut comparison.findings_after, after.take()),
    ] {
        if let (Some(findings), Some(cells)) = (findings, cells) {
            let packed: Packed = serde_json::from_value(cells).map_err(not_findings)?;
            findings.cells = Some(unpack(&packed)?);
        }
    }
    Ok(comparison)
}

/// The inspection of a log as JSON.
///
/// # Errors
/// [`ReportError::NotFinite`] names the first number that JSON cannot hold.
pub fn inspection_to_json(inspection: &Inspection) -> Result<String, ReportError> {
    finite::check(inspection)?;
    pretty(inspection)
}

/// Pretty JSON with a line end; zero has no sign.
pub(crate) fn pretty(value: &impl Serialize) -> Result<String, ReportError> {
    let mut bytes = Vec::new();
    let mut serializer = serde_json::Serializer::with_formatter(&mut bytes, Plain(PrettyFormatter::new()));
    value
        .serialize(&mut serializer)
        .map_err(|source| ReportError::Json { source })?;
    bytes.push(b'\n');
    Ok(String::from_utf8_lossy(&bytes).into_owned())
}

struct Plain(PrettyFormatter<'static>);

macro_rules! as_pretty {
    ($($name:ident($($is_first:ident)?)),* $(,)?) => {
        $(fn $name<W: ?Sized + Write>(&mut self, to: &mut W $(, $is_first: bool)?) -> std::io::Result<()> {
            self.0.$name(to $(, $is_first)?)
        })*
    };
}

impl Formatter for Plain {
    as_pretty!(
        begin_array(),
        begin_array_value(is_first),
        end_array_value(),
        end_array(),
        begin_object(),
        begin_object_key(is_first),
        begin_object_value(),
        end_object_value(),
        end_object(),
    );

    fn write_f64<W: ?Sized + Write>(&mut self, to: &mut W, value: f64) -> std::io::Result<()> {
        // The sum of a negative and a positive zero is positive.
        self.0.write_f64(to, value + 0.0)
    }
}

/// Reads `findings.json` back.
///
/// # Errors
/// When the bytes are no JSON, of another schema version, or hold squares that do not unpack.
pub fn from_json(bytes: &[u8]) -> Result<Findings, ReportError> {
    let mut value: serde_json::Value = serde_json::from_slice(bytes).map_err(not_findings)?;
    check_version(&value)?;
    let cells = value.get_mut("cells").map(serde_json::Value::take);
    let mut findings: Findings = serde_json::from_value(value).map_err(not_findings)?;
    if let Some(cells) = cells.filter(|cells| !cells.is_null()) {
        let packed: Packed = serde_json::from_value(cells).map_err(not_findings)?;
        findings.cells = Some(unpack(&packed)?);
    }
    Ok(findings)
}

fn check_version(value: &serde_json::Value) -> Result<(), ReportError> {
    let version = value.get("schema_version").cloned().unwrap_or_default();
    if version == SCHEMA_VERSION {
        return Ok(());
    }
    let found = match version {
        serde_json::Value::Null => "none".to_owned(),
        other => crate::words::plain(&other.to_string(), 20),
    };
    Err(ReportError::SchemaVersion {
        found,
        expected: SCHEMA_VERSION,
    })
}

fn not_findings(error: serde_json::Error) -> ReportError {
    let message = error.to_string();
    let message = message.split(" at line ").next().unwrap_or_default();
    ReportError::NotFindings {
        message: crate::words::plain(message, 200),
        line: error.line(),
        column: error.column(),
    }
}
