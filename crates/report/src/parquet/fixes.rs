//! Which fixes were read, for tools that read tables?
//!
//! GeoParquet 1.1.0: one row for each fix, machine by machine, in time order, as read: nothing is smoothed or left out.
//!
//! | column | type | meaning |
//! |---|---|---|
//! | `geometry` | WKB point | the position, WGS 84, longitude before latitude; not for logs in metres of their own |
//! | `east_m`, `north_m` | double | the position of a log in metres of its own |
//! | `machine` | text | name of the machine |
//! | `time` | timestamp in microseconds UTC | when |
//! | `segment` | 32-bit integer | counts up where reception was lost or a file ended |
//! | `quality` | text | how the receiver found it, as in `findings.json` |
//! | `hdop`, `claimed_sd_m`, `speed_mps`, `course_deg`, `height_msl_m` | float, nullable | null where not logged |
//! | `satellites` | 32-bit integer, nullable | null where not logged |
//!
//! Exact: the numbers of the log, digit for digit. Cost: some 50 bytes of memory a fix; 28,800 fixes make about 0.4 MB.

use super::{Geo, Nullable, column, field, wkb_point, writer};
use crate::ReportError;
use parquet::basic::{LogicalType, Repetition, TimeUnit, Type as Physical};
use parquet::data_type::{ByteArray, ByteArrayType, DoubleType, FloatType, Int32Type, Int64Type};
use parquet::errors::ParquetError;
use parquet::file::metadata::KeyValue;
use parquet::schema::types::Type;
use std::sync::Arc;
use tussock_types::{FixQuality, Positions, Trace};

const FILE: &str = "fixes.parquet";

/// A column of numbers of a trace.
type Numbers = fn(&Trace) -> &[f32];

/// Columns of numbers that a log need not have, and where they stand in a trace.
const OPTIONAL: [(&str, Numbers); 5] = [
    ("hdop", |trace| &trace.hdop),
    ("claimed_sd_m", |trace| &trace.claimed_sd_m),
    ("speed_mps", |trace| &trace.speed_mps),
    ("course_deg", |trace| &trace.course_deg),
    ("height_msl_m", |trace| &trace.height_msl_m),
];

/// The fixes as `fixes.parquet`. `tool_version` stands in the file's metadata.
///
/// # Errors
/// [`ReportError::Parquet`] when traces on Earth and traces in metres of their own stand together.
pub fn fixes_parquet(traces: &[Trace], tool_version: &str) -> Result<Vec<u8>, ReportError> {
    write(traces, tool_version).map_err(|source| ReportError::Parquet { file: FILE, source })
}

/// What the findings call a quality.
fn quality_words(quality: FixQuality) -> Result<ByteArray, ParquetError> {
    match serde_json::to_value(quality) {
        Ok(serde_json::Value::String(words)) => Ok(ByteArray::from(words.into_bytes())),
        _ => Err(ParquetError::General("a quality without a name".to_owned())),
    }
}

fn write(traces: &[Trace], tool_version: &str) -> Result<Vec<u8>, ParquetError> {
    const REQUIRED: Repetition = Repetition::REQUIRED;
    let is_on_earth = traces
        .iter()
        .all(|trace| matches!(trace.positions, Positions::Geographic { .. }));
    let is_local = traces
        .iter()
        .all(|trace| matches!(trace.positions, Positions::Local { .. }));
    if !is_on_earth && !is_local {
        return Err(ParquetError::General(
            "some positions lie on Earth, some in metres of their own; expected one kind".to_owned(),
        ));
    }
    let text = |name: &str| -> Result<Arc<Type>, ParquetError> {
        Type::primitive_type_builder(name, Physical::BYTE_ARRAY)
            .with_repetition(REQUIRED)
            .with_logical_type(Some(LogicalType::String))
            .build()
            .map(Arc::new)
    };
    let mut fields = Vec::new();
    if is_on_earth {
        fields.push(field("geometry", Physical::BYTE_ARRAY, REQUIRED)?);
    } else {
        fields.push(field("east_m", Physical::DOUBLE, REQUIRED)?);
        fields.push(field("north_m", Physical::DOUBLE, REQUIRED)?);
    }
    fields.push(text("machine")?);
    let time = Type::primitive_type_builder("time", Physical::INT64)
        .with_repetition(REQUIRED)
        .with_logical_type(Some(LogicalType::timestamp(true, TimeUnit::MICROS)))
        .build()?;
    fields.push(Arc::new(time));
    fields.push(field("segment", Physical::INT32, REQUIRED)?);
    fields.push(text("quality")?);
    for (name, _) in OPTIONAL {
        fields.push(field(name, Physical::FLOAT, Repetition::OPTIONAL)?);
    }
    fields.push(field("satellites", Physical::INT32, Repetition::OPTIONAL)?);
    let schema = Type::group_type_builder("fixes").with_fields(fields).build()?;

    let fixes = || {
        traces
            .iter()
            .flat_map(|trace| (0..trace.len()).map(move |index| (trace, index)))
    };
    let mut geo = Geo::default();
    if is_on_earth {
        for (trace, index) in fixes() {
            let (lat_deg, lon_deg) = trace.positions.pair(index);
            geo.wkb.push(wkb_point(lon_deg, lat_deg));
            geo.take(lon_deg, lat_deg);
        }
    }
    let mut pairs = vec![KeyValue::new(
        "tussock:version".to_owned(),
        crate::words::plain(tool_version, 20),
    )];
    if is_on_earth {
        pairs.push(geo.metadata("Point"));
    }
    let mut file = writer(Arc::new(schema), pairs)?;
    let mut group = file.next_row_group()?;
    if is_on_earth {
        column::<ByteArrayType>(&mut group, &geo.wkb, None)?;
    } else {
        let east_m: Vec<f64> = fixes()
            .map(|(trace, index)| trace.positions.pair(index).0)
            .collect();
        let north_m: Vec<f64> = fixes()
            .map(|(trace, index)| trace.positions.pair(index).1)
            .collect();
        column::<DoubleType>(&mut group, &east_m, None)?;
        column::<DoubleType>(&mut group, &north_m, None)?;
    }
    let machines: Vec<ByteArray> = traces
        .iter()
        .flat_map(|trace| {
            let name = ByteArray::from(trace.machine.clone().into_bytes());
            std::iter::repeat_n(name, trace.len())
        })
        .collect();
    column::<ByteArrayType>(&mut group, &machines, None)?;
    let times_us: Vec<i64> = fixes()
        .map(|(trace, index)| (trace.time_s[index] * 1e6).round() as i64)
        .collect();
    column::<Int64Type>(&mut group, &times_us, None)?;
    let segments: Vec<i32> = fixes()
        .map(|(trace, index)| i32::try_from(trace.segment[index]).unwrap_or(i32::MAX))
        .collect();
    column::<Int32Type>(&mut group, &segments, None)?;
    let qualities = fixes()
        .map(|(trace, index)| quality_words(trace.quality[index]))
        .collect::<Result<Vec<_>, _>>()?;
    column::<ByteArrayType>(&mut group, &qualities, None)?;
    for (_, values) in OPTIONAL {
        let values = Nullable::of(fixes().map(|(trace, index)| {
            let value = values(trace)[index];
            (!value.is_nan()).then_some(value)
        }));
        column::<FloatType>(&mut group, &values.values, Some(&values.levels))?;
    }
    let satellites = Nullable::of(fixes().map(|(trace, index)| {
        let count = trace.satellites[index];
        (count != u8::MAX).then_some(i32::from(count))
    }));
    column::<Int32Type>(&mut group, &satellites.values, Some(&satellites.levels))?;
    group.close()?;
    file.into_inner()
}
