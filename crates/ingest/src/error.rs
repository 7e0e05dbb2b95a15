//! What can stop a log from being read at all?

use tussock_types::{LogFormat, SkipReason};

/// Why a log, or a set of logs, could not be read. Anything less serious is skipped, counted and located in
/// [`tussock_types::LogFacts`].
#[derive(Debug, thiserror::Error)]
#[non_exhaustive]
pub enum IngestError {
    /// The bytes could not be fetched (a directory, a broken disk, no permission).
    #[error("{name}: cannot be read{}: {source}", place(*byte))]
    Read {
        /// Name of the log.
        name: String,
        /// Where reading stopped, from 0, in the bytes as stored.
        byte: u64,
        /// The system's error.
        source: std::io::Error,
    },
    /// Nothing in it.
    #[error("{name}: is empty (0 bytes), expected a log (GPX, NMEA 0183, CSV, ...)")]
    Empty {
        /// Name of the log.
        name: String,
    },
    /// A kind of log that is not known here.
    #[error(
        "{name}: is not a log: found {found} at byte {byte}, expected GPX, NMEA 0183 sentences, CSV with named columns, KML tracks, RTKLIB .pos, MF-JSON or gpsd JSON"
    )]
    NotALog {
        /// Name of the log.
        name: String,
        /// What it seems to be instead.
        found: String,
        /// Where that was seen.
        byte: u64,
    },
    /// A compressed log that cannot be unpacked.
    #[error("{name}: compressed data cannot be unpacked after {unpacked} bytes: {source}")]
    Unpack {
        /// Name of the log.
        name: String,
        /// Bytes that could be unpacked before that.
        unpacked: u64,
        /// The unpacker's error.
        source: std::io::Error,
    },
    /// Positions, but none of them with a time.
    #[error(
        "{name}: holds {positions} positions but no times (first at line {line}), expected a time with each position"
    )]
    NoTimes {
        /// Name of the log.
        name: String,
        /// Positions seen.
        positions: u64,
        /// Line of the first.
        line: u64,
    },
    /// Times of day, but no date anywhere.
    #[error(
        "{name}: holds times of day ({time_of_day} at line {line}) but no date anywhere, expected a sentence or column with the date"
    )]
    NoDate {
        /// Name of the log.
        name: String,
        /// The first time of day.
        time_of_day: String,
        /// Line of it.
        line: u64,
    },
    /// A log of the right kind without a single usable position.
    #[error("{name}: {} log without a usable position: {found}, expected positions with times", format.words())]
    NoPositions {
        /// Name of the log.
        name: String,
        /// Its kind.
        format: LogFormat,
        /// What it holds instead.
        found: String,
    },
    /// Two machines, and nothing that tells whose a fix is.
    #[error(
        "{name}: its positions jump to and fro between places {apart_m:.0} m apart: two machines in one file, or a receiver that jumps, \
         expected one machine, or a column that names it (--columns machine=NAME,...)"
    )]
    TwoMachines {
        /// Name of the log.
        name: String,
        /// Distance of the two places, in the middle.
        apart_m: f64,
    },
    /// A limit was passed.
    #[error("{name}: {what} at byte {byte}: {value} is more than {limit}, the limit set by limits.{key}")]
    Limit {
        /// Name of the log.
        name: String,
        /// What is too large.
        what: &'static str,
        /// Its size (as far as it was followed).
        value: u64,
        /// The limit.
        limit: u64,
        /// The key in the settings that holds the limit.
        key: &'static str,
        /// Where it was noticed.
        byte: u64,
    },
    /// A column that was requested does not exist.
    #[error("{name}: line {line} has no column {wanted:?} for {field}, its columns are {have}")]
    ColumnMissing {
        /// Name of the log.
        name: String,
        /// The requested column.
        wanted: String,
        /// What it should hold.
        field: &'static str,
        /// Columns of the log.
        have: String,
        /// Line of the header, or of the first row.
        line: u64,
    },
    /// A date that can be read in two ways.
    #[error(
        "{name}: dates such as {value} (line {line}) can be read with the day or the month first, expected year-month-day or a day above 12 somewhere"
    )]
    DateOrder {
        /// Name of the log.
        name: String,
        /// The first date.
        value: String,
        /// Line of it.
        line: u64,
    },
    /// Times that do not state from when they count.
    #[error(
        "{name}: times such as {value} (line {line}) do not say on which day they were, expected {expected}"
    )]
    NoClock {
        /// Name of the log.
        name: String,
        /// The first of them.
        value: String,
        /// Line of it.
        line: u64,
        /// What would state it.
        expected: &'static str,
    },
    /// Under [`crate::Policy::Strict`]: the first fault.
    #[error("{name}: line {line}, byte {byte}: {}: {excerpt:?}", reason.words())]
    Strict {
        /// Name of the log.
        name: String,
        /// What is wrong.
        reason: SkipReason,
        /// Line of it, from 1.
        line: u64,
        /// Byte of it, from 0.
        byte: u64,
        /// Its first characters.
        excerpt: String,
    },
    /// A recorded error with an invalid row.
    #[error("{name}: line {line}: found {found}, expected {expected}")]
    ErrorSeries {
        /// Name of the file.
        name: String,
        /// Its line.
        line: u64,
        /// What was found.
        found: String,
        /// What was expected.
        expected: &'static str,
    },
    /// A surveyed path that is not one.
    #[error("{name}: holds {corners} positions, expected a path of at least two")]
    NoPath {
        /// Name of the file.
        name: String,
        /// Positions in it.
        corners: u64,
    },
    /// Logs on Earth and logs in local metres in one set.
    #[error(
        "{local} is in local metres and {geographic} in latitude and longitude, expected one kind for all logs"
    )]
    MixedPositions {
        /// A log in local metres.
        local: String,
        /// A log on Earth.
        geographic: String,
    },
}

/// What was expected, if that can be said.
pub(crate) fn wanted(expected: &str) -> String {
    match expected {
        "" => String::new(),
        expected => format!(", expected {expected}"),
    }
}

/// Faults of a file, one per line.
pub(crate) fn listed(name: &str, faults: &[impl std::fmt::Display]) -> String {
    let lines: Vec<String> = faults.iter().map(|fault| format!("{name}: {fault}")).collect();
    lines.join("\n")
}

/// Where reading stopped, if it had begun.
fn place(byte: u64) -> String {
    if byte == 0 {
        String::new()
    } else {
        format!(" past byte {byte}")
    }
}

impl IngestError {
    /// What the user can do about it, if anything.
    pub fn hint(&self) -> Option<String> {
        match self {
            Self::NoDate { .. } => Some("give the day on which the log begins: --date 2026-05-01".into()),
            Self::NoClock { .. } => Some(
                "GPS time: --columns week=#1,tow=#2,lat=#3,lon=#4; seconds from a start of the logger's own: --columns time_s=#1,lat=#2,lon=#3"
                    .into(),
            ),
            Self::NotALog { .. } => Some(
                "for rows without known column names say which column holds what: --columns time=#1,lat=#2,lon=#3"
                    .into(),
            ),
            Self::ColumnMissing { .. } => {
                Some("--columns takes names from the header, or numbers such as #3 counted from 1".into())
            }
            Self::Limit { key, .. } => Some(format!("raise {key} under [limits] in the settings")),
            Self::NoTimes { .. } => {
                Some("record a track instead of exporting a route; a planned route has no times".into())
            }
            Self::Strict { .. } => Some("leave out --strict to skip what cannot be used".into()),
            Self::DateOrder { .. } => Some("write dates as 2026-05-01".into()),
            _ => None,
        }
    }
}
