//! The door: GPX, NMEA 0183, CSV, KML, RTKLIB .pos, MF-JSON, gpsd JSON, plans, settings and walks from bytes.
//!
//! A log comes in as bytes and goes out as a [`Trace`] in strictly increasing time, together with [`LogFacts`]: a located
//! list of everything that was not used, and why. Bad data never stops the reading; only an [`IngestError`] does.
//!
//! ```
//! use tussock_ingest::{ReadOptions, read_log};
//!
//! let log = b"time,lat,lon\n2026-05-01T12:00:00Z,52.00001,5.00001\n2026-05-01T12:00:01Z,oops,5.00001\n";
//! let file = read_log("night.csv", &log[..], &ReadOptions::default())?;
//! assert_eq!(file.trace.len(), 1);
//! assert_eq!(file.facts.faults(), 1);
//! assert_eq!(file.facts.places[0].line, 3);
//! # Ok::<(), tussock_ingest::IngestError>(())
//! ```
//!
//! Every byte of a log (after decompression) is either used or in exactly one skipped place: `bytes_used` and the lengths of
//! the places add up to `bytes`.
//!
//! Cost: one pass over the bytes; in memory, the text of the log and 131 bytes per fix while reading, 51 afterwards. Text
//! and fixes together may not exceed `limits.memory_bytes`.

mod apart;
mod assemble;
mod clock;
mod csv;
mod error;
mod error_series;
#[cfg(test)]
mod error_tests;
mod gpsd;
mod gpx;
mod kml;
mod ledger;
mod lines;
mod mf_json;
mod nmea;
mod number;
mod order;
mod pairs;
mod plan_file;
mod reading;
mod recognise;
mod reference_file;
mod settings_file;
mod sieve;
mod source;
mod walk;

pub use assemble::{Assembled, assemble};
pub use csv::{Columns, ColumnsError};
pub use error::IngestError;
pub use error_series::{read_error_series, write_error_series};
pub use plan_file::{PlanFileError, PlanRead, read_plan, write_plan};
pub use reference_file::read_reference;
pub use settings_file::{
    SettingsError, SettingsFault, read_settings, read_settings_bytes, settings_reference,
};
pub use source::digest;
pub use tussock_types::day_span_min;
pub use walk::{
    WalkError, WalkFault, WalkGuess, WalkRole, WalkedPlan, complaints_from_waypoints, plan_from_walk,
};

use reading::{PositionsOn, Reading};
use recognise::Recognised;
use source::Source;
use std::sync::OnceLock;
use tussock_types::{LimitSettings, LogFacts, LogFormat, Notice, Said, Trace, file_name};

/// What to do with a faulty piece of a log.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Policy {
    /// Skip it, count it, and record where it is.
    #[default]
    Lenient,
    /// Stop at the first one.
    Strict,
}

/// How to read a log.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct ReadOptions {
    /// The day on which the log begins, for logs that contain times of day only. In a log with dates it serves as evidence
    /// of a week rollover.
    pub date: Option<time::Date>,
    /// Which column of a CSV log holds what; by default this is read from the header.
    pub columns: Option<Columns>,
    /// What to do with faults.
    pub policy: Policy,
    /// The limits.
    pub limits: LimitSettings,
}

/// A log that was read.
#[derive(Clone, Debug, PartialEq)]
pub struct LogFile {
    /// Everything about it apart from its fixes.
    pub facts: LogFacts,
    /// Its fixes. The machine has no name until logs are assembled.
    pub trace: Trace,
    /// Fixes of further machines that are logged in the same file.
    pub others: Vec<Trace>,
}

/// The bytes of a log, fetched and unpacked, but not yet read.
pub struct RawLog {
    name: String,
    source: Source,
    sha256: OnceLock<String>,
}

impl RawLog {
    /// Fetches a log.
    ///
    /// # Errors
    /// If the bytes cannot be fetched, are empty, cannot be unpacked, or exceed a limit.
    ///
    /// # Panics
    /// Never.
    pub fn fetch(name: &str, input: impl std::io::Read, limits: &LimitSettings) -> Result<Self, IngestError> {
        Ok(Self {
            name: name.into(),
            source: Source::read(name, input, limits)?,
            sha256: OnceLock::new(),
        })
    }

    /// SHA-256 of the bytes as given, hexadecimal. Computed once, here or in parallel with [`Self::read`].
    ///
    /// # Panics
    /// Never.
    pub fn sha256(&self) -> &str {
        self.sha256.get_or_init(|| self.source.sha256())
    }

    /// Reads the log.
    ///
    /// # Errors
    /// If it is not a log, contains no position with a time, or exceeds a limit; under [`Policy::Strict`] at the first
    /// fault.
    ///
    /// # Panics
    /// Never.
    pub fn read(&self, options: &ReadOptions) -> Result<LogFile, IngestError> {
        let (read, sha256) = rayon::join(|| self.read_text(options), || self.sha256());
        let mut log = read?;
        log.facts.sha256 = sha256.into();
        Ok(log)
    }

    /// Reads it, except for its digest.
    fn read_text(&self, options: &ReadOptions) -> Result<LogFile, IngestError> {
        let (name, text) = (&self.name[..], &self.source.text[..]);
        let format = match recognise::recognise(text, options.columns.as_ref()) {
            Recognised::Log(format) => format,
            Recognised::Not(found, byte) => {
                return Err(IngestError::NotALog {
                    name: name.into(),
                    found,
                    byte,
                });
            }
        };
        let mut reading = match format {
            LogFormat::Gpx => gpx::read(name, &self.source, &options.limits, gpx::FastPath::USUAL)?,
            LogFormat::Nmea => nmea::read(name, text, options)?,
            LogFormat::Csv | LogFormat::Pos => csv::read(name, text, options)?,
            LogFormat::Kml => kml::read(name, text, &options.limits)?,
            LogFormat::MfJson => mf_json::read(name, text, &options.limits)?,
            LogFormat::GpsdJson => gpsd::read(name, text, &options.limits)?,
        };
        check_size(name, &reading, text, &options.limits, text.len() as u64)?;
        if let Some(hole) = self.source.longest_hole() {
            let limit = options.limits.line_bytes;
            let line = ledger::line_of(text, hole.at);
            // Notices about the ends that were kept would state too small a value.
            let is_of_the_ends =
                |notice: &Notice| matches!(notice.said, Said::LineTooLong { .. }) && notice.line == line;
            reading.notices.retain(|notice| !is_of_the_ends(notice));
            let bytes = hole.bytes.saturating_add(limit);
            reading.notice(line, Said::LineCut { bytes, limit });
        }
        if reading.ground == PositionsOn::Earth && format != LogFormat::Nmea && !reading.times_are_relative {
            order::repair_rollover(&mut reading, options.date);
        }
        if !reading.times_are_relative {
            order::drop_impossible_times(&mut reading);
        }
        if reading.found.is_empty() {
            return Err(nothing_found(name, format, text, &reading));
        }
        let mut traces = Vec::new();
        let machines = apart::machines(name, &mut reading)?;
        let is_split = machines.len() > 1;
        for found in machines {
            reading.found = found;
            if is_split {
                reading.look_at_order();
            }
            traces.push(order::settle(&mut reading));
        }
        if is_split {
            let machines = traces.len() as u64;
            reading.notice(0, Said::SeveralMachines { machines });
        }
        if let Some(fault) = self.source.damaged.clone() {
            reading.notice(0, Said::FileDamaged { fault });
        }
        finish(name, format, &self.source, reading, traces, options)
    }
}

/// Reads one log of any kind.
///
/// # Errors
/// As [`RawLog::fetch`] and [`RawLog::read`].
///
/// # Panics
/// Never.
pub fn read_log(
    name: &str,
    input: impl std::io::Read,
    options: &ReadOptions,
) -> Result<LogFile, IngestError> {
    RawLog::fetch(name, input, &options.limits)?.read(options)
}

fn nothing_found(name: &str, format: LogFormat, text: &[u8], reading: &Reading) -> IngestError {
    if reading.timeless.count > 0 {
        return IngestError::NoTimes {
            name: name.into(),
            positions: reading.timeless.count,
            line: ledger::line_of(text, reading.timeless.first_byte),
        };
    }
    IngestError::NoPositions {
        name: name.into(),
        format,
        found: reading.holds.clone(),
    }
}

fn finish(
    name: &str,
    format: LogFormat,
    source: &Source,
    reading: Reading,
    traces: Vec<Trace>,
    options: &ReadOptions,
) -> Result<LogFile, IngestError> {
    let closed = reading.ledger.close(&source.text, source.to_log());
    if options.policy == Policy::Strict
        && let Some(place) = closed.places.iter().find(|place| !place.reason.is_expected())
    {
        return Err(IngestError::Strict {
            name: name.into(),
            reason: place.reason,
            line: place.line,
            byte: place.byte_start,
            excerpt: place.excerpt.clone(),
        });
    }
    let skipped_total: u64 = closed.skipped_bytes.values().sum();
    let facts = LogFacts {
        name: file_name(name).into(),
        sha256: String::new(),
        format,
        made_by: reading.made_by,
        machine: String::new(),
        bytes: source.bytes,
        // If the text is not the log byte for byte, the used bytes are what is left of the log.
        bytes_used: if source.is_converted() {
            source.bytes - skipped_total
        } else {
            closed.used_bytes
        },
        fixes: traces.iter().map(|trace| trace.len() as u64).sum(),
        skipped: closed.skipped,
        skipped_bytes: closed.skipped_bytes,
        places: closed.places,
        notices: reading.notices,
        resolution_m: reading.resolution_m,
    };
    let mut traces = traces.into_iter();
    let trace = traces.next().unwrap_or_else(|| Trace::local(""));
    Ok(LogFile {
        facts,
        trace,
        others: traces.collect(),
    })
}

/// Refuses more fixes than the limit, and text, fixes and places that do not fit into memory together.
#[inline]
pub(crate) fn check_size(
    name: &str,
    reading: &Reading,
    text: &[u8],
    limits: &LimitSettings,
    byte: u64,
) -> Result<(), IngestError> {
    let fixes = reading.found.len() as u64;
    within(name, "number of fixes", fixes, (limits.fixes, "fixes"), byte)?;
    check_memory(name, text.len() as u64 + reading.memory_bytes(), limits, byte)
}

/// Refuses nesting deeper than anything that a logger writes.
pub(crate) fn check_depth(
    name: &str,
    depth: u32,
    limits: &LimitSettings,
    byte: u64,
) -> Result<(), IngestError> {
    let limit = (u64::from(limits.element_depth), "element_depth");
    within(name, "nested elements", u64::from(depth), limit, byte)
}

/// Refuses anything beyond a limit, naming the limit's key.
#[inline]
fn within(
    name: &str,
    what: &'static str,
    value: u64,
    (limit, key): (u64, &'static str),
    byte: u64,
) -> Result<(), IngestError> {
    if value <= limit {
        return Ok(());
    }
    Err(IngestError::Limit {
        name: name.into(),
        what,
        value,
        limit,
        key,
        byte,
    })
}

/// The most fixes that [`check_size`] accepts while no more places are recorded.
pub(crate) fn most_fixes(reading: &Reading, text: &[u8], limits: &LimitSettings) -> usize {
    let room_bytes = limits.memory_bytes.saturating_sub(text.len() as u64);
    let most = limits.fixes.min(reading.fixes_within(room_bytes));
    usize::try_from(most).unwrap_or(usize::MAX)
}

/// Refuses to hold more than the limit.
#[inline]
pub(crate) fn check_memory(
    name: &str,
    held_bytes: u64,
    limits: &LimitSettings,
    byte: u64,
) -> Result<(), IngestError> {
    let limit = (limits.memory_bytes, "memory_bytes");
    within(
        name,
        "bytes of memory for text and fixes",
        held_bytes,
        limit,
        byte,
    )
}
