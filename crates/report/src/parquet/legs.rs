//! Where did the machine drive? For tools that read tables.
//!
//! GeoParquet 1.1.0: one row for each straight piece of the driven lines, in order.
//!
//! | column | type | meaning |
//! |---|---|---|
//! | `geometry` | WKB line of two points | the piece, WGS 84, longitude before latitude |
//! | `line` | 64-bit integer | the unbroken line that it belongs to, from 0 |
//! | `from_east_m`, `from_north_m`, `to_east_m`, `to_north_m` | double | the same on the tangent plane |
//! | `length_m` | double | its length |
//!
//! Approximate: the lines are those of the page, simplified to a few centimetres; the fixes themselves are in
//! `fixes.parquet`. Without geographic coordinates there is no `geometry` column.

use super::{Geo, TableWriter, frame_metadata};
use crate::ReportError;
use parquet::data_type::{DoubleType, Int64Type};
use parquet::errors::ParquetError;
use tussock_types::{Findings, Place};

const FILE: &str = "legs.parquet";

/// A straight piece and the line that it belongs to.
type Piece<'a> = (i64, &'a [Place]);

/// The driven lines as `legs.parquet`.
///
/// # Errors
/// [`ReportError::NoLines`] if nothing was driven.
pub fn legs_parquet(findings: &Findings) -> Result<Vec<u8>, ReportError> {
    let pieces: Vec<Piece<'_>> = (0i64..)
        .zip(&findings.driven_lines)
        .flat_map(|(line, places)| places.windows(2).map(move |ends| (line, ends)))
        .filter(|(_, ends)| ends[0].distance_m(ends[1]).is_finite())
        .collect();
    if pieces.is_empty() {
        return Err(ReportError::NoLines { file: FILE });
    }
    let geo = Geo::of(findings, FILE, pieces.iter().map(|(_, ends)| *ends))?;
    write(findings, &pieces, geo).map_err(|source| ReportError::Parquet { file: FILE, source })
}

/// A column's name, and its number for a piece.
type LegColumn = (&'static str, fn(&[Place]) -> f64);

const NUMBERS: [LegColumn; 5] = [
    ("from_east_m", |ends| ends[0].east_m),
    ("from_north_m", |ends| ends[0].north_m),
    ("to_east_m", |ends| ends[1].east_m),
    ("to_north_m", |ends| ends[1].north_m),
    ("length_m", |ends| ends[0].distance_m(ends[1])),
];

fn write(findings: &Findings, pieces: &[Piece<'_>], geo: Option<Geo>) -> Result<Vec<u8>, ParquetError> {
    let mut pairs = Vec::new();
    pairs.extend(geo.as_ref().map(|geo| geo.metadata("LineString")));
    pairs.extend(frame_metadata(findings));
    let mut table = TableWriter::default();
    table.shapes(geo)?;
    table.column::<Int64Type>("line", pieces.iter().map(|(line, _)| *line))?;
    for (name, number) in NUMBERS {
        table.column::<DoubleType>(name, pieces.iter().map(move |(_, ends)| number(ends)))?;
    }
    table.written("legs", pairs)
}
