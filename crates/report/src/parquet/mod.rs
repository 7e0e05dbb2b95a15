//! What is known of each square of ground, for tools that read tables?
//!
//! GeoParquet 1.1.0: one row for each square with some lawn, from south to north and west to east.
//!
//! | column | type | meaning |
//! |---|---|---|
//! | `geometry` | WKB point | centre of the square, WGS 84, longitude before latitude |
//! | `east_m`, `north_m` | double | the same centre on the tangent plane |
//! | `visited_probability` | float | probability that a point of its lawn was driven over |
//! | `visits_expected` | float | expected number of visits |
//! | `first_visit_s`, `last_visit_s` | float, nullable | seconds from the start of the log |
//! | `last_visit` | timestamp in microseconds UTC, nullable | the same as a time; null when never, or without a date |
//! | `lawn` | float | fraction of the square that is lawn |
//!
//! Without a place on Earth there is no `geometry` column and no `geo` metadata. The coordinate reference system
//! is left out of the metadata, which by the standard means OGC:CRS84. Key-value metadata hold the grid and
//! the origin. Compressed with zstd; the same findings give the same bytes.

mod fixes;
mod legs;

use crate::{ReportError, geojson::rounded, words};
use parquet::basic::{Compression, LogicalType, Repetition, TimeUnit, Type as Physical, ZstdLevel};
use parquet::data_type::{ByteArray, ByteArrayType, DataType, DoubleType, FloatType, Int64Type};
use parquet::errors::ParquetError;
use parquet::file::metadata::KeyValue;
use parquet::file::properties::{EnabledStatistics, WriterProperties};
use parquet::file::writer::{SerializedFileWriter, SerializedRowGroupWriter};
use parquet::schema::types::{ColumnPath, Type};
use serde_json::json;
use std::sync::Arc;
use tussock_types::{Cells, Findings, Place};

pub use fixes::fixes_parquet;
pub use legs::legs_parquet;

const FILE: &str = "cells.parquet";

/// The squares as `cells.parquet`.
///
/// # Errors
/// [`ReportError::NoCells`] when nothing was counted.
pub fn cells_parquet(findings: &Findings) -> Result<Vec<u8>, ReportError> {
    let Some(cells) = &findings.cells else {
        return Err(ReportError::NoCells { file: FILE });
    };
    let rows = Rows::of(findings, cells)?;
    write(findings, cells, &rows).map_err(|source| ReportError::Parquet { file: FILE, source })
}

/// The columns.
struct Rows {
    geo: Option<Geo>,
    east_m: Vec<f64>,
    north_m: Vec<f64>,
    visited_probability: Vec<f32>,
    visits_expected: Vec<f32>,
    first_visit_s: Nullable<f32>,
    last_visit_s: Nullable<f32>,
    last_visit_us: Nullable<i64>,
    lawn: Vec<f32>,
}

/// Shapes and the box that holds them.
#[derive(Default)]
struct Geo {
    wkb: Vec<ByteArray>,
    bbox: Option<[f64; 4]>,
}

impl Geo {
    fn take(&mut self, lon_deg: f64, lat_deg: f64) {
        let b = self.bbox.get_or_insert([lon_deg, lat_deg, lon_deg, lat_deg]);
        *b = [
            b[0].min(lon_deg),
            b[1].min(lat_deg),
            b[2].max(lon_deg),
            b[3].max(lat_deg),
        ];
    }

    /// What GeoParquet wants to know of the column.
    fn metadata(&self, kind: &str) -> KeyValue {
        let mut column = json!({ "encoding": "WKB", "geometry_types": [kind] });
        if let Some(bbox) = self.bbox {
            column["bbox"] = json!(bbox);
        }
        let geo = json!({
            "version": "1.1.0",
            "primary_column": "geometry",
            "columns": { "geometry": column },
        });
        KeyValue::new("geo".to_owned(), geo.to_string())
    }
}

/// Values that are there, and for each row whether there is one.
struct Nullable<T> {
    values: Vec<T>,
    levels: Vec<i16>,
}

impl<T> Nullable<T> {
    fn of(rows: impl Iterator<Item = Option<T>>) -> Self {
        let mut column = Self {
            values: Vec::new(),
            levels: Vec::new(),
        };
        for value in rows {
            column.levels.push(i16::from(value.is_some()));
            column.values.extend(value);
        }
        column
    }
}

/// A point as well-known binary, little-endian (OGC 06-103r4, section 8).
fn wkb_point(lon_deg: f64, lat_deg: f64) -> ByteArray {
    let mut bytes = vec![1, 1, 0, 0, 0];
    bytes.extend(lon_deg.to_le_bytes());
    bytes.extend(lat_deg.to_le_bytes());
    ByteArray::from(bytes)
}

impl Rows {
    fn of(findings: &Findings, cells: &Cells) -> Result<Self, ReportError> {
        let grid = cells.grid;
        let kept: Vec<usize> = (0..grid.cells())
            .filter(|&square| cells.lawn_fraction.get(square).is_some_and(|&lawn| lawn > 0.0))
            .collect();
        let centres: Vec<Place> = kept
            .iter()
            .map(|&square| grid.centre(square % grid.columns, square / grid.columns))
            .collect();
        let mut geo = findings.frame.origin().map(|_| Geo::default());
        if let Some(geo) = &mut geo {
            for &centre in &centres {
                let at = findings
                    .frame
                    .to_geo(centre)
                    .ok_or(ReportError::NoPlaceOnEarth { file: FILE })?;
                let (lon_deg, lat_deg) = (rounded(at.lon_deg), rounded(at.lat_deg));
                geo.wkb.push(wkb_point(lon_deg, lat_deg));
                geo.take(lon_deg, lat_deg);
            }
        }
        let column = |values: &[f32]| -> Vec<f32> {
            kept.iter()
                .map(|&square| values.get(square).copied().unwrap_or(f32::NAN))
                .collect()
        };
        let some = |values: &[f32]| -> Vec<Option<f32>> {
            column(values)
                .into_iter()
                .map(|value| (!value.is_nan()).then_some(value))
                .collect()
        };
        let last = some(&cells.last_visit_s);
        let start_s = findings.span.start_unix_s;
        let last_visit_us = last.iter().map(|last_s| {
            let unix_s = start_s? + f64::from((*last_s)?);
            Some((unix_s * 1e6).round() as i64)
        });
        Ok(Self {
            geo,
            east_m: centres.iter().map(|centre| centre.east_m).collect(),
            north_m: centres.iter().map(|centre| centre.north_m).collect(),
            visited_probability: column(&cells.visited_probability),
            visits_expected: column(&cells.visits_expected),
            first_visit_s: Nullable::of(some(&cells.first_visit_s).into_iter()),
            last_visit_us: Nullable::of(last_visit_us),
            last_visit_s: Nullable::of(last.into_iter()),
            lawn: column(&cells.lawn_fraction),
        })
    }
}

fn field(name: &str, physical: Physical, repetition: Repetition) -> Result<Arc<Type>, ParquetError> {
    Type::primitive_type_builder(name, physical)
        .with_repetition(repetition)
        .build()
        .map(Arc::new)
}

fn schema(rows: &Rows) -> Result<Arc<Type>, ParquetError> {
    const OPTIONAL: Repetition = Repetition::OPTIONAL;
    const REQUIRED: Repetition = Repetition::REQUIRED;
    let mut fields = Vec::new();
    if rows.geo.is_some() {
        fields.push(field("geometry", Physical::BYTE_ARRAY, REQUIRED)?);
    }
    fields.push(field("east_m", Physical::DOUBLE, REQUIRED)?);
    fields.push(field("north_m", Physical::DOUBLE, REQUIRED)?);
    fields.push(field("visited_probability", Physical::FLOAT, REQUIRED)?);
    fields.push(field("visits_expected", Physical::FLOAT, REQUIRED)?);
    fields.push(field("first_visit_s", Physical::FLOAT, OPTIONAL)?);
    fields.push(field("last_visit_s", Physical::FLOAT, OPTIONAL)?);
    let last_visit = Type::primitive_type_builder("last_visit", Physical::INT64)
        .with_repetition(OPTIONAL)
        .with_logical_type(Some(LogicalType::timestamp(true, TimeUnit::MICROS)))
        .build()?;
    fields.push(Arc::new(last_visit));
    fields.push(field("lawn", Physical::FLOAT, REQUIRED)?);
    Type::group_type_builder("squares")
        .with_fields(fields)
        .build()
        .map(Arc::new)
}

fn metadata(findings: &Findings, cells: &Cells, rows: &Rows) -> Vec<KeyValue> {
    let mut pairs = Vec::new();
    pairs.extend(rows.geo.as_ref().map(|geo| geo.metadata("Point")));
    let grid = json!(cells.grid).to_string();
    pairs.push(KeyValue::new("tussock:grid".to_owned(), grid));
    pairs.push(KeyValue::new(
        "tussock:cell_m".to_owned(),
        cells.grid.cell_m.to_string(),
    ));
    pairs.extend(frame_metadata(findings));
    pairs
}

/// Origin and version.
fn frame_metadata(findings: &Findings) -> Vec<KeyValue> {
    let mut pairs = Vec::new();
    if let Some(origin) = findings.frame.origin() {
        let origin = json!({ "lat_deg": origin.lat_deg, "lon_deg": origin.lon_deg }).to_string();
        pairs.push(KeyValue::new("tussock:origin".to_owned(), origin));
    }
    let version = words::plain(&findings.tool_version, 20);
    pairs.push(KeyValue::new("tussock:version".to_owned(), version));
    pairs
}

fn writer(schema: Arc<Type>, pairs: Vec<KeyValue>) -> Result<SerializedFileWriter<Vec<u8>>, ParquetError> {
    let properties = WriterProperties::builder()
        .set_compression(Compression::ZSTD(ZstdLevel::try_new(3)?))
        .set_created_by("tussock".to_owned())
        .set_key_value_metadata(Some(pairs))
        // Smallest and largest bytes of a shape help nobody.
        .set_column_statistics_enabled(ColumnPath::from("geometry"), EnabledStatistics::None)
        .set_column_dictionary_enabled(ColumnPath::from("geometry"), false)
        .build();
    SerializedFileWriter::new(Vec::new(), schema, Arc::new(properties))
}

fn write(findings: &Findings, cells: &Cells, rows: &Rows) -> Result<Vec<u8>, ParquetError> {
    let mut file = writer(schema(rows)?, metadata(findings, cells, rows))?;
    let mut group = file.next_row_group()?;
    if let Some(geo) = &rows.geo {
        column::<ByteArrayType>(&mut group, &geo.wkb, None)?;
    }
    column::<DoubleType>(&mut group, &rows.east_m, None)?;
    column::<DoubleType>(&mut group, &rows.north_m, None)?;
    column::<FloatType>(&mut group, &rows.visited_probability, None)?;
    column::<FloatType>(&mut group, &rows.visits_expected, None)?;
    column::<FloatType>(
        &mut group,
        &rows.first_visit_s.values,
        Some(&rows.first_visit_s.levels),
    )?;
    column::<FloatType>(
        &mut group,
        &rows.last_visit_s.values,
        Some(&rows.last_visit_s.levels),
    )?;
    column::<Int64Type>(
        &mut group,
        &rows.last_visit_us.values,
        Some(&rows.last_visit_us.levels),
    )?;
    column::<FloatType>(&mut group, &rows.lawn, None)?;
    group.close()?;
    file.into_inner()
}

fn column<T: DataType>(
    group: &mut SerializedRowGroupWriter<'_, Vec<u8>>,
    values: &[T::T],
    levels: Option<&[i16]>,
) -> Result<(), ParquetError> {
    let mut column = group
        .next_column()?
        .ok_or_else(|| ParquetError::General("schema has too few columns".to_owned()))?;
    column.typed::<T>().write_batch(values, levels, None)?;
    column.close()
}
