//! How is a result stored so that it can be drawn again tomorrow?
//!
//! Pretty-printed JSON in the field order of [`Findings`]. The ground in squares is the one large part: each of its columns
//! is written as the little-endian bytes of its 32-bit floats, compressed with zlib (RFC 1950) and encoded in base64 (RFC
//! 4648, section 4):
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
//! Every message, `{"code": .., "values": {..}}`, is written with its `text` in words; reading keeps code and values and
//! drops the text, so that a later version, or another language, can put it into words again.
//!
//! Exact: every number comes back bit for bit, except for the sign of zero. Any other number that is not finite is refused
//! by name, since JSON cannot represent it. Cost: linear; a night of 1,400 m2 takes a few milliseconds.

use crate::{ReportError, messages::text_of};
use base64::{Engine, engine::general_purpose::STANDARD};
use ciborium::Value;
use flate2::{Compression, read::ZlibDecoder, write::ZlibEncoder};
use serde::ser::Error as _;
use serde::{Deserialize, Serialize};
use serde_json::ser::{Formatter, PrettyFormatter};
use std::io::{Read, Write};
use tussock_types::{
    Cells, Comparison, ComplaintFindings, Findings, Grid, Inspection, SCHEMA_VERSION, VisitDone,
};

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
    // One byte more than expected reveals a column that is too long without unpacking all of it.
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

/// A value as a tree in the order of its fields, in which every number is finite and every message has its text.
///
/// # Errors
/// [`ReportError::NotFinite`] names the first number that JSON cannot represent, with the path to it.
pub(crate) fn tree(value: &impl Serialize) -> Result<Value, ReportError> {
    let mut tree = Value::serialized(value).map_err(|error| ReportError::Json {
        source: serde_json::Error::custom(error),
    })?;
    finish(&mut tree, &mut String::new())?;
    Ok(tree)
}

fn finish(value: &mut Value, path: &mut String) -> Result<(), ReportError> {
    let at = path.len();
    let text = text_of(value);
    match value {
        Value::Float(value) if !value.is_finite() => {
            return Err(ReportError::NotFinite {
                field: path.clone(),
                value: *value,
            });
        }
        Value::Array(items) => {
            for (index, item) in items.iter_mut().enumerate() {
                path.push_str(&format!("[{index}]"));
                finish(item, path)?;
                path.truncate(at);
            }
        }
        Value::Map(fields) => {
            for (name, field) in fields.iter_mut() {
                path.push_str(if at == 0 { "" } else { "." });
                path.push_str(name.as_text().unwrap_or_default());
                finish(field, path)?;
                path.truncate(at);
            }
            fields.extend(text.map(|text| ("text".into(), text.into())));
        }
        _ => {}
    }
    Ok(())
}

/// Findings with their squares, packed.
fn packed_tree(findings: &Findings) -> Result<Value, ReportError> {
    let mut tree = tree(findings)?;
    let cells = findings.cells.as_ref().map(pack).transpose();
    let cells = cells.map_err(|error| ReportError::Json {
        source: serde_json::Error::io(error),
    })?;
    if let Value::Map(fields) = &mut tree {
        fields.push(("cells".into(), crate::json::tree(&cells)?));
    }
    Ok(tree)
}

/// The findings as `findings.json`.
///
/// # Errors
/// [`ReportError::NotFinite`] names the first number that JSON cannot represent.
pub fn to_json(findings: &Findings) -> Result<String, ReportError> {
    pretty(&packed_tree(findings)?)
}

/// The comparison as `comparison.json`; its findings are packed like those in a file of their own.
///
/// # Errors
/// [`ReportError::NotFinite`] names the first number that JSON cannot represent.
pub fn comparison_to_json(comparison: &Comparison) -> Result<String, ReportError> {
    let mut tree = tree(comparison)?;
    let sides = [
        ("findings_before", &comparison.findings_before),
        ("findings_after", &comparison.findings_after),
    ];
    for (side, findings) in sides {
        let fields = tree.as_map_mut().into_iter().flatten();
        for (_, field) in fields.filter(|(name, _)| name.as_text() == Some(side)) {
            *field = findings
                .as_deref()
                .map(packed_tree)
                .transpose()?
                .unwrap_or(Value::Null);
        }
    }
    pretty(&tree)
}

/// Reads `comparison.json` back.
///
/// # Errors
/// If the bytes are not JSON, have another schema version, or contain squares that do not unpack.
pub fn comparison_from_json(bytes: &[u8]) -> Result<Comparison, ReportError> {
    let mut value: serde_json::Value = serde_json::from_slice(bytes).map_err(not_findings)?;
    check_version(&value)?;
    let cells = ["findings_before", "findings_after"].map(|side| take_cells(value.get_mut(side)));
    let mut comparison: Comparison = serde_json::from_value(value).map_err(not_findings)?;
    let findings = [&mut comparison.findings_before, &mut comparison.findings_after];
    for (findings, cells) in findings.into_iter().zip(cells) {
        if let Some(findings) = findings {
            findings.cells = cells?;
        }
    }
    Ok(comparison)
}

/// Takes the squares out of findings and unpacks them.
fn take_cells(findings: Option<&mut serde_json::Value>) -> Result<Option<Cells>, ReportError> {
    let cells = findings.and_then(|findings| findings.get_mut("cells"));
    let packed = cells.map_or(serde_json::Value::Null, serde_json::Value::take);
    let packed: Option<Packed> = serde_json::from_value(packed).map_err(not_findings)?;
    packed.as_ref().map(unpack).transpose()
}

/// The inspection of a log as JSON.
///
/// # Errors
/// [`ReportError::NotFinite`] names the first number that JSON cannot represent.
pub fn inspection_to_json(inspection: &Inspection) -> Result<String, ReportError> {
    pretty(&tree(inspection)?)
}

/// What is known about places, as a JSON list; each answer has its text beside the code.
///
/// # Errors
/// [`ReportError::Json`].
pub fn complaints_to_json(complaints: &[ComplaintFindings]) -> Result<String, ReportError> {
    pretty(&tree(&complaints)?)
}

/// The visits to a garden as a JSON list.
///
/// # Errors
/// [`ReportError::Json`].
pub fn visits_to_json(visits: &[VisitDone]) -> Result<String, ReportError> {
    pretty(&tree(&visits)?)
}

/// Pretty-printed JSON with a line end; zero has no sign.
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

    // A tree returns a number that fits as 32 bits; its digits must be those of 64.
    fn write_f32<W: ?Sized + Write>(&mut self, to: &mut W, value: f32) -> std::io::Result<()> {
        self.write_f64(to, f64::from(value))
    }
}

/// Whether the first bytes of a file (a few thousand) are those of saved findings: JSON that is not a log of gpsd and
/// contains no geometry.
pub fn looks_saved(start: &[u8]) -> bool {
    let start = String::from_utf8_lossy(start);
    let says = |key: &str| start.contains(key);
    let is_log = !says("\"schema_version\"") && (says("\"class\"") || says("\"type\""));
    start.trim_start().starts_with('{') && !is_log
}

/// Reads `findings.json` back.
///
/// # Errors
/// If the bytes are not JSON, have another schema version, or contain squares that do not unpack.
pub fn from_json(bytes: &[u8]) -> Result<Findings, ReportError> {
    let mut value: serde_json::Value = serde_json::from_slice(bytes).map_err(not_findings)?;
    check_version(&value)?;
    let cells = take_cells(Some(&mut value))?;
    let findings: Findings = serde_json::from_value(value).map_err(not_findings)?;
    Ok(Findings { cells, ..findings })
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
