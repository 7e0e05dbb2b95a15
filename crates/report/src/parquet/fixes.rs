//! Which fixes were read? For tools that read tables.
//!
//! GeoParquet 1.1.0: one row for each fix, machine by machine, in time order, as read: nothing is smoothed or left out.
//!
//! | column | type | meaning |
//! |---|---|---|
//! | `geometry` | WKB point | the position, WGS 84, longitude before latitude; not for logs in metres of their own |
//! | `east_m`, `north_m` | double | the position of a log in metres of its own |
//! | `machine` | text | name of the machine |
//! | `time` | timestamp in microseconds UTC | when |
//! | `segment` | 32-bit integer | goes up by one wherever reception was lost or a file ended |
//! | `quality` | text | how the receiver found it, as in `findings.json` |
//! | `hdop`, `claimed_sd_m`, `speed_mps`, `course_deg`, `height_msl_m` | float, nullable | null where not logged |
//! | `satellites` | 32-bit integer, nullable | null where not logged |
//!
//! Exact: the numbers of the log, digit for digit. Cost: about 50 bytes of memory per fix; 28,800 fixes make about 0.4 MB.

use super::{Geo, TableWriter, table};
use crate::ReportError;
use parquet::basic::LogicalType;
use parquet::data_type::{ByteArray, ByteArrayType, DoubleType, FloatType, Int32Type, Int64Type};
use parquet::errors::ParquetError;
use parquet::file::metadata::KeyValue;
use tussock_types::{FixQuality, Positions, Trace};

const FILE: &str = "fixes.parquet";

/// A column of numbers of a trace.
type Numbers = fn(&Trace) -> &[f32];

/// Columns of numbers that a log need not have, and where they are in a trace.
const OPTIONAL: [(&str, Numbers); 5] = [
    ("hdop", |trace| &trace.hdop),
    ("claimed_sd_m", |trace| &trace.claimed_sd_m),
    ("speed_mps", |trace| &trace.speed_mps),
    ("course_deg", |trace| &trace.course_deg),
    ("height_msl_m", |trace| &trace.height_msl_m),
];

/// The fixes as `fixes.parquet`. `tool_version` goes into the file's metadata.
///
/// # Errors
/// [`ReportError::Parquet`] if traces on Earth and traces in metres of their own are mixed.
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
    let count_on_earth = traces
        .iter()
        .filter(|trace| matches!(trace.positions, Positions::Geographic { .. }))
        .count();
    let is_on_earth = count_on_earth == traces.len();
    if !is_on_earth && count_on_earth > 0 {
        return Err(ParquetError::General(
            "some positions lie on Earth, some in metres of their own; expected one kind".to_owned(),
        ));
    }
    let fixes = || {
        traces
            .iter()
            .flat_map(|trace| (0..trace.len()).map(move |index| (trace, index)))
    };
    let pair = |(trace, index): (&Trace, usize)| trace.positions.pair(index);
    let version = crate::words::plain(tool_version, 20);
    let mut pairs = vec![KeyValue::new("tussock:version".to_owned(), version)];
    let mut table = TableWriter::default();
    if is_on_earth {
        let mut geo = Geo::default();
        for (lat_deg, lon_deg) in fixes().map(pair) {
            geo.take(&[(lon_deg, lat_deg)]);
        }
        pairs.push(geo.metadata("Point"));
        table.shapes(Some(geo))?;
    } else {
        table.column::<DoubleType>("east_m", fixes().map(move |fix| pair(fix).0))?;
        table.column::<DoubleType>("north_m", fixes().map(move |fix| pair(fix).1))?;
    }
    let text = Some(LogicalType::String);
    let machines = traces.iter().flat_map(|trace| {
        let name = ByteArray::from(trace.machine.clone().into_bytes());
        std::iter::repeat_n(Some(name), trace.len())
    });
    table.put::<ByteArrayType>("machine", text.clone(), false, machines)?;
    let times_us = fixes().map(|(trace, index)| Some((trace.time_s[index] * 1e6).round() as i64));
    table.put::<Int64Type>("time", table::time(), false, times_us)?;
    let segment = |(trace, index): (&Trace, usize)| i32::try_from(trace.segment[index]).unwrap_or(i32::MAX);
    table.column::<Int32Type>("segment", fixes().map(segment))?;
    let qualities = fixes()
        .map(|(trace, index)| quality_words(trace.quality[index]).map(Some))
        .collect::<Result<Vec<_>, _>>()?;
    table.put::<ByteArrayType>("quality", text, false, qualities)?;
    for (name, values) in OPTIONAL {
        let values = fixes().map(move |(trace, index)| {
            let value = values(trace)[index];
            (!value.is_nan()).then_some(value)
        });
        table.nullable::<FloatType>(name, values)?;
    }
    let satellites = fixes().map(|(trace, index)| {
        let count = trace.satellites[index];
        (count != u8::MAX).then_some(i32::from(count))
    });
    table.nullable::<Int32Type>("satellites", satellites)?;
    table.written("fixes", pairs)
}
