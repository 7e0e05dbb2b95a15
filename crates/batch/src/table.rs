//! Where is everything kept, and who can read it?
//!
//! Plain Parquet, one set of columns per table, compressed with zstd. Tables that have nights are folders by night, such as
//! `nights/night=2026-05-01/part-00000007-0.parquet`: DuckDB, Polars and Spark read the night from the path. The commit
//! record ([`crate::Store`]) lists the files that are alive; between runs there are no others. `docs/store.md` is the
//! reference for readers.
//!
//! Exact: numbers are kept as they were found. Rows of a file are sorted by garden, then by the rest of the row.

use crate::BatchError;
use crate::night::{self, NightNumber};
use parquet::basic::{Compression, LogicalType, Repetition, Type as Physical, ZstdLevel};
use parquet::column::reader::ColumnReader;
use parquet::data_type::{ByteArray, ByteArrayType, DataType, DoubleType, Int64Type};
use parquet::errors::ParquetError;
use parquet::file::metadata::{KeyValue, RowGroupMetaData};
use parquet::file::properties::WriterProperties;
use parquet::file::reader::{ChunkReader, FileReader, SerializedFileReader};
use parquet::file::writer::{SerializedFileWriter, SerializedRowGroupWriter};
use parquet::schema::types::{SchemaDescPtr, Type};
use serde::{Deserialize, Serialize};
use std::cmp::Ordering;
use std::collections::BTreeSet;
use std::sync::Arc;

/// Version of tables and commit record. Version 2 added the tables `usual` and `alarms`, and the last three columns of
/// `gardens`.
pub const SCHEMA_VERSION: u32 = 2;
/// Oldest version that can be read: what it lacks is null, and is worked out by the next run.
pub const OLDEST_SCHEMA_VERSION: u32 = 1;
/// Rows of a row group: a reader that wants one garden skips the other groups by their smallest and largest name.
const GROUP_ROWS: usize = 2_000;

/// What a column holds.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ColumnKind {
    /// UTF-8 text.
    Text,
    /// Whole number.
    Count,
    /// Number with decimals.
    Number,
    /// Bytes that only `tussock` can read.
    Packed,
}

/// One column. Every column but `garden` may be null.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Column {
    /// Its name, with its unit.
    pub name: &'static str,
    /// What it holds.
    pub kind: ColumnKind,
    /// Its meaning, for the reference.
    pub meaning: &'static str,
}

/// Whether a table is kept by night.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Parted {
    /// In a folder for each night.
    ByNight,
    /// In a single folder.
    Not,
}

/// One table.
#[derive(Debug, PartialEq, Eq)]
pub struct StoreTable {
    /// Its name and folder.
    pub name: &'static str,
    /// Whether it is kept by night.
    pub parted: Parted,
    /// Its columns; the first is `garden`, the second distinguishes rows of one garden (and night).
    pub columns: &'static [Column],
}

/// One value.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Value {
    /// Nothing.
    Null,
    /// Text.
    Text(String),
    /// Whole number.
    Count(i64),
    /// Number.
    Number(f64),
    /// Bytes.
    Packed(Vec<u8>),
}

impl Value {
    /// The text, if it is one.
    pub fn text(&self) -> Option<&str> {
        match self {
            Self::Text(text) => Some(text),
            _ => None,
        }
    }

    /// The whole number, if it is one.
    pub fn count(&self) -> Option<i64> {
        match self {
            Self::Count(count) => Some(*count),
            _ => None,
        }
    }

    /// The number, if it is one.
    pub fn number(&self) -> Option<f64> {
        match self {
            Self::Number(number) => Some(*number),
            _ => None,
        }
    }
}

/// A number; null if it is not finite.
impl From<f64> for Value {
    fn from(number: f64) -> Self {
        if number.is_finite() {
            Self::Number(number)
        } else {
            Self::Null
        }
    }
}

impl<T: Into<Self>> From<Option<T>> for Value {
    fn from(value: Option<T>) -> Self {
        value.map_or(Self::Null, Into::into)
    }
}

macro_rules! value_from {
    ($($kind:ty: $make:expr),+ $(,)?) => {
        $(impl From<$kind> for Value {
            fn from(from: $kind) -> Self {
                $make(from)
            }
        })+
    };
}

value_from! {
    &str: |text: &str| Self::Text(text.to_owned()),
    &String: |text: &String| Self::Text(text.clone()),
    String: Self::Text,
    i64: Self::Count,
    u64: |count: u64| Self::Count(i64::try_from(count).unwrap_or(i64::MAX)),
    usize: |count: usize| Self::from(count as u64),
}

/// A row of a table; columns that are not named are null.
macro_rules! row {
    ($table:ident { $($name:ident: $value:expr),+ $(,)? }) => {{
        let mut row = $table.empty();
        $(row[$table.at(stringify!($name))] = crate::table::Value::from($value);)+
        row
    }};
}
pub(crate) use row;

/// Values in the order of the table's columns.
pub type TableRow = Vec<Value>;

const GARDEN: Column = Column {
    name: "garden",
    kind: ColumnKind::Text,
    meaning: "name of the garden: its folder, or its name in the manifest",
};

/// Tables with their columns after the first: what a column holds, its name, and its meaning.
macro_rules! tables {
    ($($(#[$about:meta])* $table:ident $name:literal $parted:ident { $($kind:ident $column:literal $meaning:literal;)+ })+) => {
        $($(#[$about])*
        pub static $table: StoreTable = StoreTable {
            name: $name,
            parted: Parted::$parted,
            columns: &[GARDEN, $(Column { name: $column, kind: ColumnKind::$kind, meaning: $meaning }),+],
        };)+
    };
}

tables! {
    /// Each log that was read.
    LOGS "logs" ByNight {
        Text "log" "path of the log below the place of the logs";
        Text "machine" "machine that logged, where the place of the log says so";
        Text "sha256" "SHA-256 of its bytes, hexadecimal";
        Text "same_as" "log of the same content that was counted instead";
        Count "bytes" "bytes as stored";
        Count "modified_unix_ms" "when it was last written, milliseconds since 1970";
        Text "format" "gpx, nmea or csv";
        Count "fixes" "fixes that it gave";
        Count "skipped" "faulty pieces of it, and fixes of nights set aside";
        Number "first_fix_unix_s" "first fix, seconds since 1970 in UTC";
        Number "last_fix_unix_s" "last fix, seconds since 1970 in UTC";
        Text "nights" "nights that it counts for, 2026-05-01,2026-05-02";
    }
    /// Each night of each garden.
    NIGHTS "nights" ByNight {
        Text "key" "digest of everything that the row depends on: tool, settings, plan, logs";
        Text "plan_sha256" "SHA-256 of the plan; another plan begins another story";
        Count "logs" "different logs of the night";
        Text "machines" "machines whose visits are united, comma between";
        Number "lawn_m2" "lawn, zones and obstacles taken out";
        Number "visited_fraction" "visited area over lawn area";
        Number "visited_low_fraction" "lower end of its 90 % interval";
        Number "visited_high_fraction" "upper end of its 90 % interval";
        Number "missed_m2" "area of missed pockets";
        Number "not_yet_m2" "area of not-yet pockets";
        Number "unseen_m2" "area without evidence";
        Number "driving_h" "hours driving, on the lawn and along guide runs";
        Number "at_station_h" "hours at the station";
        Number "stuck_min" "minutes lost at stuck spots";
        Number "silent_h" "hours without usable fixes";
        Count "outings" "trips from the station";
        Number "position_error_m" "standard deviation of positions per axis, white and drift together";
        Count "fixes_used" "fixes behind the path";
        Text "good_enough" "yes or no: whether the log can show the pocket that was asked for";
        Number "start_unix_s" "first fix, seconds since 1970 in UTC";
        Number "span_h" "hours from first to last fix";
        Number "cut_width_m" "cutting width used";
        Number "speed_mps" "usual driving speed";
    }
    /// Each pocket of each night.
    POCKETS "pockets" ByNight {
        Text "pocket" "its name in that night's findings: M1, N1";
        Text "id" "its identity over nights: night and name under which it was first seen";
        Text "first_night" "night in which it was first seen";
        Count "nights" "nights in which it was seen, this one included";
        Text "verdict" "missed or not_yet";
        Number "area_m2" "area";
        Number "widest_m" "diameter of the largest circle that fits in";
        Number "lat" "latitude of that circle's middle";
        Number "lon" "longitude of it";
        Number "east_m" "east of it on the lawn's plane";
        Number "north_m" "north of it";
        Number "chance_fraction" "probability that luck alone leaves a pocket of this width";
        Text "cause" "likeliest cause";
        Text "why" "one sentence";
        Text "said" "the same as a code with its values, JSON";
        Text "outline" "rings on the plan's plane, metres east and north, as JSON";
    }
    /// Each stuck spot of each night.
    STUCK_SPOTS "stuck_spots" ByNight {
        Text "spot" "its name in that night's findings: S1";
        Number "lat" "latitude";
        Number "lon" "longitude";
        Number "east_m" "east on the lawn's plane";
        Number "north_m" "north";
        Number "radius_m" "radius that holds the episodes";
        Count "episodes" "how often";
        Number "lost_min" "minutes lost there";
        Number "certainty" "how sure it is a place of its own, 0 to 1; null where not measured";
        Text "why" "what to look at";
        Text "said" "the same as a code with its values, JSON";
    }
    /// Suggestions for the gardens that need them most.
    SUGGESTIONS "suggestions" ByNight {
        Text "suggestion" "its name in that night's findings: G1";
        Text "kind" "guide_run, zone_move, zone_shrink, zone_add, more_hours, boundary_shift";
        Text "why" "one sentence";
        Text "pockets" "pockets that it is meant to mend, comma between";
        Number "wire_m" "wire to lay";
        Number "outing_share_fraction" "share of outings to send along it";
        Number "pocket_before_fraction" "predicted visited part of the pocket, nothing changed";
        Number "pocket_after_fraction" "the same, changed";
        Number "visited_before_fraction" "predicted visited part of the lawn, nothing changed";
        Number "visited_after_fraction" "the same, changed";
        Number "certainty" "share of simulated runs that bear it out";
        Text "geometry" "line or outline on the plan's plane, metres east and north, as JSON";
    }
    /// Everything that failed.
    FAILURES "failures" ByNight {
        Text "what" "path of the log, night as 2026-05-01, or plan or settings";
        Text "reason" "unreadable, damaged, clock, plan, settings, analysis, time, memory, died, pieces";
        Text "detail" "one sentence";
        Text "sha256" "SHA-256 of the input, or of the inputs' digests";
        Count "bytes" "bytes of a log as stored";
        Count "modified_unix_ms" "when a log was last written, milliseconds since 1970";
        Text "tool_version" "version that failed";
    }
    /// Each garden, with its rolling state.
    GARDENS "gardens" Not {
        Text "name" "name of the garden from its settings";
        Text "plan_sha256" "SHA-256 of the plan";
        Text "plan_since" "first night under this plan";
        Text "settings_sha256" "SHA-256 of the settings";
        Text "expected" "weekdays whose night should bring a log: 1111111 from Monday on";
        Text "rests" "spans of nights without alarms, 2026-11-01/2027-03-15, comma between";
        Text "machines" "machines that have logged so far, with their last night: name=2026-05-01, comma between";
        Number "promised_fraction" "promised visited fraction";
        Number "promised_days" "within so many days";
        Text "last_night" "newest night in the state";
        Packed "last_visits" "last visit of each square of the lawn, zstd; see below";
        Text "time_zone" "time zone of the garden: UTC, +02:00 or a name of the IANA database";
        Count "night_turns_at_h" "hour of its clock at which a night ends and the next begins";
        Text "outline" "rings of the lawn on the plan's plane, metres east and north, as JSON";
    }
    /// What is usual in each garden: medians of its last 28 nights under the plan.
    USUAL "usual" Not {
        Text "key" "digest of the nights from which this row and the garden's alarms follow";
        Count "nights" "nights under the plan";
        Number "visited_fraction" "visited area over lawn area";
        Number "driving_h" "hours driving";
        Number "span_h" "hours from first to last fix";
        Number "silent_h" "hours without usable fixes";
        Number "position_error_m" "standard deviation of positions per axis";
    }
    /// Alarms, including mended ones. Missing logs (absent) and the promise depend on the date, and are worked out when they
    /// are asked for.
    ALARMS "alarms" Not {
        Text "alarm" "kind, what and since, which tell alarms of a garden apart";
        Text "kind" "less_visited, lost_hours, receiver_worse, silences, missed_pocket, stuck_spot";
        Text "what" "identity of a pocket or a spot; empty for the whole garden";
        Text "plan_sha256" "SHA-256 of the plan under which it opened";
        Text "since" "first night of it";
        Text "opened" "night whose log decided that";
        Text "mended" "first night without it; null while it is open";
        Text "closed" "night whose log decided that";
        Count "nights" "nights that showed it";
        Number "usual" "usual before it, frozen then: a fraction, hours or metres, as in nights";
        Number "usual_sd" "standard deviation of what was usual, on the scale that is watched";
        Number "found" "median since then in the same unit; area in m2 of a pocket, minutes lost at a spot";
        Number "gain_m2" "lawn that would be driven over each night without it";
        Number "east_m" "east of a pocket or a spot on the lawn's plane";
        Number "north_m" "north of it";
        Number "lat" "latitude of it";
        Number "lon" "longitude of it";
        Text "why" "one sentence on a pocket or a spot";
        Text "said" "the same as a code with its values, JSON";
    }
}

/// All tables.
pub static TABLES: [&StoreTable; 9] = [
    &LOGS,
    &NIGHTS,
    &POCKETS,
    &STUCK_SPOTS,
    &SUGGESTIONS,
    &FAILURES,
    &GARDENS,
    &USUAL,
    &ALARMS,
];

impl StoreTable {
    /// A row of nothing but nulls.
    pub fn empty(&self) -> TableRow {
        vec![Value::Null; self.columns.len()]
    }

    /// Index of a column.
    ///
    /// # Panics
    /// Never for a name in the table; any other name is a mistake of ours that tests find.
    pub fn at(&self, name: &str) -> usize {
        self.columns
            .iter()
            .position(|column| column.name == name)
            .unwrap_or(0)
    }

    /// The folder of a night below the store's, with `/` as separator.
    pub fn folder(&self, night: Option<NightNumber>) -> String {
        match night {
            Some(night) => format!("{}/night={}", self.name, night::words(night)),
            None => self.name.to_owned(),
        }
    }
}

/// A total order of rows: garden first, then column by column.
pub fn order(one: &TableRow, other: &TableRow) -> Ordering {
    for (a, b) in one.iter().zip(other) {
        let ordering = match (a, b) {
            (Value::Text(a), Value::Text(b)) => a.cmp(b),
            (Value::Count(a), Value::Count(b)) => a.cmp(b),
            (Value::Number(a), Value::Number(b)) => a.total_cmp(b),
            (Value::Packed(a), Value::Packed(b)) => a.cmp(b),
            (a, b) => rank(a).cmp(&rank(b)),
        };
        if ordering != Ordering::Equal {
            return ordering;
        }
    }
    Ordering::Equal
}

const fn rank(value: &Value) -> u8 {
    match value {
        Value::Null => 0,
        Value::Text(_) => 1,
        Value::Count(_) => 2,
        Value::Number(_) => 3,
        Value::Packed(_) => 4,
    }
}

/// Rows as a Parquet file. Rows are sorted first, so the same rows give the same bytes.
///
/// # Errors
/// [`BatchError::Table`] if the library refuses, which would be a bug of ours.
pub fn write(
    table: &'static StoreTable,
    mut rows: Vec<TableRow>,
    tool_version: &str,
) -> Result<Vec<u8>, BatchError> {
    rows.sort_by(order);
    written(table, &rows, tool_version).map_err(|source| BatchError::Table {
        table: table.name,
        file: "new file".to_owned(),
        source,
    })
}

fn schema(table: &StoreTable) -> Result<Arc<Type>, ParquetError> {
    let fields = table.columns.iter().enumerate().map(|(at, column)| {
        let logical = (column.kind == ColumnKind::Text).then_some(LogicalType::String);
        let repetition = if at == 0 {
            Repetition::REQUIRED
        } else {
            Repetition::OPTIONAL
        };
        Type::primitive_type_builder(column.name, physical(column.kind))
            .with_repetition(repetition)
            .with_logical_type(logical)
            .build()
            .map(Arc::new)
    });
    Type::group_type_builder(table.name)
        .with_fields(fields.collect::<Result<_, _>>()?)
        .build()
        .map(Arc::new)
}

fn written(
    table: &'static StoreTable,
    rows: &[TableRow],
    tool_version: &str,
) -> Result<Vec<u8>, ParquetError> {
    let pairs = vec![
        KeyValue::new("tussock:schema_version".to_owned(), SCHEMA_VERSION.to_string()),
        KeyValue::new("tussock:version".to_owned(), tool_version.to_owned()),
    ];
    let properties = WriterProperties::builder()
        .set_compression(Compression::ZSTD(ZstdLevel::try_new(3)?))
        .set_created_by("tussock".to_owned())
        .set_key_value_metadata(Some(pairs))
        .build();
    let mut file = SerializedFileWriter::new(Vec::new(), schema(table)?, Arc::new(properties))?;
    for rows in rows.chunks(GROUP_ROWS) {
        let mut group = file.next_row_group()?;
        for (at, column) in table.columns.iter().enumerate() {
            let values = rows.iter().map(|row| row.get(at).unwrap_or(&Value::Null));
            match column.kind {
                ColumnKind::Text | ColumnKind::Packed => {
                    write_column::<ByteArrayType>(&mut group, at, values, |value| match value {
                        Value::Text(text) => Some(ByteArray::from(text.as_bytes().to_vec())),
                        Value::Packed(bytes) => Some(ByteArray::from(bytes.clone())),
                        _ => None,
                    })
                }
                ColumnKind::Count => write_column::<Int64Type>(&mut group, at, values, Value::count),
                ColumnKind::Number => write_column::<DoubleType>(&mut group, at, values, Value::number),
            }?;
        }
        group.close()?;
    }
    file.into_inner()
}

fn write_column<'a, T: DataType>(
    group: &mut SerializedRowGroupWriter<'_, Vec<u8>>,
    at: usize,
    values: impl Iterator<Item = &'a Value>,
    take: impl Fn(&Value) -> Option<T::T>,
) -> Result<(), ParquetError> {
    let mut levels: Vec<i16> = Vec::new();
    let mut present: Vec<T::T> = Vec::new();
    for value in values {
        let value = take(value);
        levels.push(i16::from(value.is_some()));
        present.extend(value);
    }
    let mut column = group
        .next_column()?
        .ok_or_else(|| ParquetError::General("schema has too few columns".to_owned()))?;
    column
        .typed::<T>()
        .write_batch(&present, (at > 0).then_some(&levels[..]), None)?;
    column.close()
}

/// Which gardens are read.
#[derive(Clone, Copy)]
pub enum Keep<'a> {
    /// All.
    All,
    /// Those for which it holds; every name is checked.
    If(&'a dyn Fn(&str) -> bool),
    /// These. Groups of rows that cannot contain any of them are not read: rows are sorted by garden.
    Named(&'a BTreeSet<&'a str>),
}

impl Keep<'_> {
    fn keeps(self, garden: &str) -> bool {
        match self {
            Self::All => true,
            Self::If(keep) => keep(garden),
            Self::Named(names) => names.contains(garden),
        }
    }

    /// Whether a group may contain one of them, given its smallest and largest name.
    fn may_be_in(self, group: &RowGroupMetaData) -> bool {
        let Self::Named(names) = self else {
            return true;
        };
        let sound = group.column(0).statistics();
        let Some(statistics) = sound.filter(|statistics| !statistics.is_min_max_deprecated()) else {
            return true;
        };
        let bound =
            |bytes: Option<&[u8]>| bytes.and_then(|bytes| std::str::from_utf8(bytes).ok().map(str::to_owned));
        let (least, greatest) = (
            bound(statistics.min_bytes_opt()),
            bound(statistics.max_bytes_opt()),
        );
        match (least, greatest) {
            // Bounds that were truncated are still bounds.
            (Some(least), Some(greatest)) if least <= greatest => {
                names.range(&least[..]..=&greatest[..]).next().is_some()
            }
            _ => true,
        }
    }
}

/// Rows of a Parquet file of a table. Only rows whose garden is kept are built; columns that are not wanted are null.
///
/// # Errors
/// If the bytes are not such a file.
pub fn read(
    table: &'static StoreTable,
    file: &str,
    bytes: impl ChunkReader + 'static,
    wanted: &[usize],
    keep: Keep<'_>,
) -> Result<Vec<TableRow>, BatchError> {
    let failed = |source| BatchError::Table {
        table: table.name,
        file: file.to_owned(),
        source,
    };
    let reader = SerializedFileReader::new(bytes).map_err(failed)?;
    let schema = columns_of(table, file, &reader)?;
    let mut out: Vec<TableRow> = Vec::new();
    for number in 0..reader.num_row_groups() {
        if !keep.may_be_in(reader.metadata().row_group(number)) {
            continue;
        }
        let group = reader.get_row_group(number).map_err(failed)?;
        let rows = usize::try_from(group.metadata().num_rows()).unwrap_or(0);
        let gardens = column_of(
            group.get_column_reader(0).map_err(failed)?,
            rows,
            ColumnKind::Text,
            // Apache Spark declares every column nullable.
            schema.column(0).max_def_level() == 0,
        )
        .map_err(failed)?;
        let kept: Vec<bool> = gardens
            .iter()
            .map(|garden| garden.text().is_some_and(|garden| keep.keeps(garden)))
            .collect();
        if !kept.contains(&true) {
            continue;
        }
        let start = out.len();
        out.extend(
            gardens
                .into_iter()
                .zip(&kept)
                .filter(|(_, kept)| **kept)
                .map(|(garden, _)| {
                    let mut row = table.empty();
                    row[0] = garden;
                    row
                }),
        );
        // Columns of later versions are null.
        let there = 1..schema.num_columns();
        for &at in wanted.iter().filter(|at| there.contains(at)) {
            let reader = group.get_column_reader(at).map_err(failed)?;
            let values = column_of(reader, rows, table.columns[at].kind, false).map_err(failed)?;
            let kept_values = values.into_iter().zip(&kept).filter(|(_, kept)| **kept);
            for (row, (value, _)) in out[start..].iter_mut().zip(kept_values) {
                row[at] = value;
            }
        }
    }
    Ok(out)
}

/// The columns of a file: those of the table by name and type, or the first of them, because versions add theirs at the end.
fn columns_of(
    table: &'static StoreTable,
    file: &str,
    reader: &dyn FileReader,
) -> Result<SchemaDescPtr, BatchError> {
    let schema = reader.metadata().file_metadata().schema_descr_ptr();
    let fits = (1..=table.columns.len()).contains(&schema.num_columns())
        && schema.columns().iter().zip(table.columns).all(|(found, column)| {
            found.name() == column.name && found.physical_type() == physical(column.kind)
        });
    if fits {
        return Ok(schema);
    }
    let found: Vec<String> = schema
        .columns()
        .iter()
        .map(|column| format!("{} {}", column.name(), column.physical_type()))
        .collect();
    Err(BatchError::BadTable {
        table: table.name,
        file: file.to_owned(),
        found: format!("columns {}", found.join(", ")),
        expected: format!("the columns of schema version {SCHEMA_VERSION}, or the first of them"),
    })
}

const fn physical(kind: ColumnKind) -> Physical {
    match kind {
        ColumnKind::Text | ColumnKind::Packed => Physical::BYTE_ARRAY,
        ColumnKind::Count => Physical::INT64,
        ColumnKind::Number => Physical::DOUBLE,
    }
}

/// The number of rows in a Parquet file of a table.
///
/// # Errors
/// If the bytes are not such a file.
pub fn rows_in(table: &'static StoreTable, file: &str, bytes: bytes::Bytes) -> Result<usize, BatchError> {
    let reader = SerializedFileReader::new(bytes).map_err(|source| BatchError::Table {
        table: table.name,
        file: file.to_owned(),
        source,
    })?;
    columns_of(table, file, &reader)?;
    Ok(usize::try_from(reader.metadata().file_metadata().num_rows()).unwrap_or(0))
}

fn column_of(
    reader: ColumnReader,
    rows: usize,
    kind: ColumnKind,
    required: bool,
) -> Result<Vec<Value>, ParquetError> {
    fn values<T: DataType>(
        mut reader: parquet::column::reader::ColumnReaderImpl<T>,
        rows: usize,
        required: bool,
        make: impl Fn(T::T) -> Result<Value, ParquetError>,
    ) -> Result<Vec<Value>, ParquetError> {
        let (mut present, mut levels) = (Vec::new(), Vec::new());
        let mut read = 0;
        while read < rows {
            let (records, _, _) = reader.read_records(
                rows - read,
                (!required).then_some(&mut levels),
                None,
                &mut present,
            )?;
            if records == 0 {
                return Err(ParquetError::General(format!(
                    "column ends after {read} of {rows} rows"
                )));
            }
            read += records;
        }
        let mut present = present.into_iter();
        let mut next = |is_there: bool| match (is_there, is_there.then(|| present.next()).flatten()) {
            (true, Some(value)) => make(value),
            _ => Ok(Value::Null),
        };
        if required {
            return (0..rows).map(|_| next(true)).collect();
        }
        levels.iter().map(|level| next(*level > 0)).collect()
    }
    match (reader, kind) {
        (ColumnReader::ByteArrayColumnReader(reader), ColumnKind::Text) => {
            values(reader, rows, required, |value| {
                String::from_utf8(value.data().to_vec())
                    .map(Value::Text)
                    .map_err(|error| ParquetError::General(format!("text is not UTF-8: {error}")))
            })
        }
        (ColumnReader::ByteArrayColumnReader(reader), ColumnKind::Packed) => {
            values(reader, rows, required, |value| {
                Ok(Value::Packed(value.data().to_vec()))
            })
        }
        (ColumnReader::Int64ColumnReader(reader), ColumnKind::Count) => {
            values(reader, rows, required, |value| Ok(Value::Count(value)))
        }
        (ColumnReader::DoubleColumnReader(reader), ColumnKind::Number) => {
            values(reader, rows, required, |value| Ok(Value::Number(value)))
        }
        (_, kind) => Err(ParquetError::General(format!("column does not hold {kind:?}"))),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn row(garden: &str, log: &str, fixes: Option<i64>) -> TableRow {
        let mut row = LOGS.empty();
        row[0] = garden.into();
        row[1] = log.into();
        row[LOGS.at("fixes")] = fixes.map_or(Value::Null, Value::Count);
        row[LOGS.at("first_fix_unix_s")] = Value::Number(1.25);
        row
    }

    #[test]
    fn rows_come_back_sorted_with_their_nulls() {
        let rows = vec![
            row("b", "2", Some(5)),
            row("a", "ä", None),
            row("b", "1", Some(-1)),
        ];
        let bytes = write(&LOGS, rows.clone(), "1").unwrap();
        let all: Vec<usize> = (0..LOGS.columns.len()).collect();
        let back = read(&LOGS, "x", bytes::Bytes::from(bytes.clone()), &all, Keep::All).unwrap();
        assert_eq!(back, [rows[1].clone(), rows[2].clone(), rows[0].clone()]);
        let some = read(
            &LOGS,
            "x",
            bytes::Bytes::from(bytes),
            &[1],
            Keep::If(&|garden| garden == "b"),
        )
        .unwrap();
        assert_eq!(some.len(), 2);
        assert_eq!(some[1][1], Value::from("2"));
        assert_eq!(some[1][LOGS.at("fixes")], Value::Null);
    }

    #[test]
    fn named_gardens_come_from_their_groups_alone_and_are_those_that_a_look_at_each_row_finds() {
        // Long names agree in more characters than the statistics keep; the groups hold 2,000 rows.
        let long = "x".repeat(100);
        let name = |number: usize| format!("{long}{number:05}");
        let rows: Vec<TableRow> = (0..9_000)
            .map(|number| row(&name(number / 3), "1", Some(number as i64)))
            .collect();
        let bytes = bytes::Bytes::from(write(&LOGS, rows, "1").unwrap());
        let all: Vec<usize> = (0..LOGS.columns.len()).collect();
        for wanted in [vec![0, 1], vec![666, 667, 2_999], vec![1_500], vec![5_000]] {
            let names: Vec<String> = wanted.iter().map(|number| name(*number)).collect();
            let names: BTreeSet<&str> = names.iter().map(String::as_str).collect();
            let by_name = read(&LOGS, "x", bytes.clone(), &all, Keep::Named(&names)).unwrap();
            let one_by_one = Keep::If(&|garden| names.contains(garden));
            assert_eq!(
                by_name,
                read(&LOGS, "x", bytes.clone(), &all, one_by_one).unwrap()
            );
            assert_eq!(
                by_name.len(),
                if wanted == [5_000] { 0 } else { 3 * wanted.len() }
            );
        }
        let short: Vec<TableRow> = (0..9_000)
            .map(|number| row(&format!("{number:05}"), "1", None))
            .collect();
        let reader =
            SerializedFileReader::new(bytes::Bytes::from(write(&LOGS, short, "1").unwrap())).unwrap();
        let names = BTreeSet::from(["04500"]);
        let groups = reader.metadata().row_groups();
        let read: Vec<bool> = groups
            .iter()
            .map(|group| Keep::Named(&names).may_be_in(group))
            .collect();
        assert_eq!(read, [false, false, true, false, false]);
    }

    #[test]
    fn every_table_can_be_written_empty_and_full_and_names_its_columns_once() {
        for table in TABLES {
            let full: TableRow = table
                .columns
                .iter()
                .map(|column| match column.kind {
                    ColumnKind::Text => "x".into(),
                    ColumnKind::Count => Value::Count(3),
                    ColumnKind::Number => Value::Number(0.5),
                    ColumnKind::Packed => Value::Packed(vec![0, 255]),
                })
                .collect();
            let all: Vec<usize> = (0..table.columns.len()).collect();
            for rows in [vec![], vec![full]] {
                let bytes = write(table, rows.clone(), "1").unwrap();
                assert_eq!(
                    read(table, "x", bytes::Bytes::from(bytes), &all, Keep::All).unwrap(),
                    rows
                );
            }
            let mut names: Vec<&str> = table.columns.iter().map(|column| column.name).collect();
            names.sort_unstable();
            names.dedup();
            assert_eq!(names.len(), table.columns.len());
        }
    }

    #[test]
    fn a_file_of_another_table_or_of_nothing_is_told() {
        let bytes = write(&LOGS, Vec::new(), "1").unwrap();
        assert!(matches!(
            read(&NIGHTS, "x", bytes::Bytes::from(bytes), &[1], Keep::All),
            Err(BatchError::BadTable { .. })
        ));
        assert!(matches!(
            read(&NIGHTS, "x", bytes::Bytes::from_static(b"PAR1"), &[1], Keep::All),
            Err(BatchError::Table { .. })
        ));
    }
}
