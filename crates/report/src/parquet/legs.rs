//! Where it drove, for tools that read tables?
//!
//! GeoParquet 1.1.0: one row for each straight piece of the driven lines, in order.
//!
//! | column | type | meaning |
//! |---|---|---|
//! | `geometry` | WKB line of two points | the piece, WGS 84, longitude before latitude |
//! | `line` | 64-bit integer | which unbroken line it belongs to, from 0 |
//! | `from_east_m`, `from_north_m`, `to_east_m`, `to_north_m` | double | the same on the tangent plane |
//! | `length_m` | double | its length |
//!
//! Approximate: the lines are those of the page, simplified to a few centimetres; the fixes themselves stand in
//! `fixes.parquet`. Without a place on Earth there is no `geometry` column.

use super::{Geo, column, field, frame_metadata, writer};
use crate::{ReportError, geojson::rounded};
use parquet::basic::{Repetition, Type as Physical};
use parquet::data_type::{ByteArray, ByteArrayType, DoubleType, Int64Type};
use parquet::errors::ParquetError;
use parquet::schema::types::Type;
use std::sync::Arc;
use tussock_types::{Findings, Place};

const FILE: &str = "legs.parquet";

/// The driven lines as `legs.parquet`.
///
/// # Errors
/// [`ReportError::NoLines`] when nothing was driven.
pub fn legs_parquet(findings: &Findings) -> Result<Vec<u8>, ReportError> {
    let pieces = pieces(findings);
    if pieces.is_empty() {
        return Err(ReportError::NoLines { file: FILE });
    }
    let geo = match findings.frame.origin() {
        None => None,
        Some(_) => Some(geometry(findings, &pieces).ok_or(ReportError::NoPlaceOnEarth { file: FILE })?),
    };
    write(findings, &pieces, geo.as_ref()).map_err(|source| ReportError::Parquet { file: FILE, source })
}

/// A straight piece and the line that it belongs to.
struct Piece {
    line: i64,
    from: Place,
    to: Place,
}

fn pieces(findings: &Findings) -> Vec<Piece> {
    let lines = (0i64..).zip(&findings.driven_lines);
    let piece = |line: i64, ends: &[Place]| Piece {
        line,
        from: ends[0],
        to: ends[1],
    };
    lines
        .flat_map(|(line, places)| places.windows(2).map(move |ends| piece(line, ends)))
        .filter(|piece| piece.from.distance_m(piece.to).is_finite())
        .collect()
}

fn geometry(findings: &Findings, pieces: &[Piece]) -> Option<Geo> {
    let mut geo = Geo::default();
    for piece in pieces {
        let mut bytes = vec![1, 2, 0, 0, 0];
        bytes.extend(2u32.to_le_bytes());
        for place in [piece.from, piece.to] {
            let at = findings.frame.to_geo(place)?;
            let (lon_deg, lat_deg) = (rounded(at.lon_deg), rounded(at.lat_deg));
            bytes.extend(lon_deg.to_le_bytes());
            bytes.extend(lat_deg.to_le_bytes());
            geo.take(lon_deg, lat_deg);
        }
        geo.wkb.push(ByteArray::from(bytes));
    }
    Some(geo)
}

const COLUMNS: [&str; 5] = [
    "from_east_m",
    "from_north_m",
    "to_east_m",
    "to_north_m",
    "length_m",
];

fn write(findings: &Findings, pieces: &[Piece], geo: Option<&Geo>) -> Result<Vec<u8>, ParquetError> {
    const REQUIRED: Repetition = Repetition::REQUIRED;
    let mut fields = Vec::new();
    if geo.is_some() {
        fields.push(field("geometry", Physical::BYTE_ARRAY, REQUIRED)?);
    }
    fields.push(field("line", Physical::INT64, REQUIRED)?);
    for name in COLUMNS {
        fields.push(field(name, Physical::DOUBLE, REQUIRED)?);
    }
    let schema = Type::group_type_builder("legs").with_fields(fields).build()?;
    let mut pairs = Vec::new();
    pairs.extend(geo.map(|geo| geo.metadata("LineString")));
    pairs.extend(frame_metadata(findings));
    let mut file = writer(Arc::new(schema), pairs)?;
    let mut group = file.next_row_group()?;
    if let Some(geo) = geo {
        column::<ByteArrayType>(&mut group, &geo.wkb, None)?;
    }
    let lines: Vec<i64> = pieces.iter().map(|piece| piece.line).collect();
    column::<Int64Type>(&mut group, &lines, None)?;
    let values: [fn(&Piece) -> f64; 5] = [
        |piece| piece.from.east_m,
        |piece| piece.from.north_m,
        |piece| piece.to.east_m,
        |piece| piece.to.north_m,
        |piece| piece.from.distance_m(piece.to),
    ];
    for value in values {
        let values: Vec<f64> = pieces.iter().map(value).collect();
        column::<DoubleType>(&mut group, &values, None)?;
    }
    group.close()?;
    file.into_inner()
}
