//! What is known about each square of ground? For tools that read tables.
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
//! Without geographic coordinates there is no `geometry` column and no `geo` metadata. The coordinate reference system is
//! left out of the metadata, which by the standard means OGC:CRS84. Key-value metadata holds the grid and the origin.
//! Compressed with zstd; the same findings give the same bytes.

mod fixes;
mod legs;
mod table;

use crate::{ReportError, geojson::rounded, words};
use parquet::data_type::{ByteArray, DoubleType, FloatType, Int64Type};
use parquet::errors::ParquetError;
use parquet::file::metadata::KeyValue;
use serde_json::json;
use table::TableWriter;
use tussock_types::{Cells, Findings, Place};

pub use fixes::fixes_parquet;
pub use legs::legs_parquet;

const FILE: &str = "cells.parquet";

/// The squares as `cells.parquet`.
///
/// # Errors
/// [`ReportError::NoCells`] if nothing was counted.
pub fn cells_parquet(findings: &Findings) -> Result<Vec<u8>, ReportError> {
    let Some(cells) = &findings.cells else {
        return Err(ReportError::NoCells { file: FILE });
    };
    let grid = cells.grid;
    let lawn = cells.lawn_fraction.iter().take(grid.cells()).enumerate();
    let kept: Vec<usize> = lawn
        .filter(|(_, lawn)| **lawn > 0.0)
        .map(|(square, _)| square)
        .collect();
    let centre = |&square: &usize| grid.centre(square % grid.columns, square / grid.columns);
    let centres: Vec<Place> = kept.iter().map(centre).collect();
    let geo = Geo::of(findings, FILE, centres.chunks_exact(1))?;
    write(findings, cells, &kept, &centres, geo).map_err(|source| ReportError::Parquet { file: FILE, source })
}

/// Shapes and the box that holds them.
#[derive(Default)]
struct Geo {
    wkb: Vec<ByteArray>,
    bbox: Option<[f64; 4]>,
}

impl Geo {
    /// Shapes on the plane, each with one place or two; none without geographic coordinates.
    fn of<'a>(
        findings: &Findings,
        file: &'static str,
        shapes: impl Iterator<Item = &'a [Place]>,
    ) -> Result<Option<Self>, ReportError> {
        if findings.frame.origin().is_none() {
            return Ok(None);
        }
        let mut geo = Self::default();
        for shape in shapes {
            let corners: Option<Vec<(f64, f64)>> = shape
                .iter()
                .map(|&place| {
                    let at = findings.frame.to_geo(place)?;
                    Some((rounded(at.lon_deg), rounded(at.lat_deg)))
                })
                .collect();
            geo.take(&corners.ok_or(ReportError::NoPlaceOnEarth { file })?);
        }
        Ok(Some(geo))
    }

    /// A point, or a line of several, as well-known binary, little-endian (OGC 06-103r4, section 8).
    fn take(&mut self, corners: &[(f64, f64)]) {
        let mut bytes = match corners.len() {
            1 => vec![1, 1, 0, 0, 0],
            count => [&[1, 2, 0, 0, 0], &(count as u32).to_le_bytes()[..]].concat(),
        };
        for &(lon_deg, lat_deg) in corners {
            bytes.extend(lon_deg.to_le_bytes());
            bytes.extend(lat_deg.to_le_bytes());
            let b = self.bbox.get_or_insert([lon_deg, lat_deg, lon_deg, lat_deg]);
            *b = [
                b[0].min(lon_deg),
                b[1].min(lat_deg),
                b[2].max(lon_deg),
                b[3].max(lat_deg),
            ];
        }
        self.wkb.push(ByteArray::from(bytes));
    }

    /// What GeoParquet requires about the column.
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

fn write(
    findings: &Findings,
    cells: &Cells,
    kept: &[usize],
    centres: &[Place],
    geo: Option<Geo>,
) -> Result<Vec<u8>, ParquetError> {
    let column = |values: &[f32]| -> Vec<f32> {
        let value = |&square: &usize| values.get(square).copied().unwrap_or(f32::NAN);
        kept.iter().map(value).collect()
    };
    let some = |values: &[f32]| -> Vec<Option<f32>> {
        let some = |value: f32| (!value.is_nan()).then_some(value);
        column(values).into_iter().map(some).collect()
    };
    let last_visit_s = some(&cells.last_visit_s);
    let start_s = findings.span.start_unix_s;
    let last_visit_us: Vec<Option<i64>> = last_visit_s
        .iter()
        .map(|last_s| Some(((start_s? + f64::from((*last_s)?)) * 1e6).round() as i64))
        .collect();
    let mut pairs: Vec<KeyValue> = geo.iter().map(|geo| geo.metadata("Point")).collect();
    let pair = |name: &str, value: String| KeyValue::new(name.to_owned(), value);
    pairs.push(pair("tussock:grid", json!(cells.grid).to_string()));
    pairs.push(pair("tussock:cell_m", cells.grid.cell_m.to_string()));
    pairs.extend(frame_metadata(findings));
    let mut table = TableWriter::default();
    table.shapes(geo)?;
    table.column::<DoubleType>("east_m", centres.iter().map(|centre| centre.east_m))?;
    table.column::<DoubleType>("north_m", centres.iter().map(|centre| centre.north_m))?;
    table.column::<FloatType>("visited_probability", column(&cells.visited_probability))?;
    table.column::<FloatType>("visits_expected", column(&cells.visits_expected))?;
    table.nullable::<FloatType>("first_visit_s", some(&cells.first_visit_s))?;
    table.nullable::<FloatType>("last_visit_s", last_visit_s)?;
    table.put::<Int64Type>("last_visit", table::time(), true, last_visit_us)?;
    table.column::<FloatType>("lawn", column(&cells.lawn_fraction))?;
    table.written("squares", pairs)
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
