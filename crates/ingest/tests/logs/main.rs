//! Logs of every kind, read from outside as the rest of the workspace reads them.

#![allow(clippy::unwrap_used, reason = "a test that cannot go on shall say so")]

mod all_bytes;
mod assemble;
mod check_values;
mod clocks;
mod csv;
mod cut_off;
mod damage;
mod errors;
mod gpx;
mod limits;
mod lists;
mod nmea;
mod nmea_dates;
mod oracles;
mod recordings;
mod robustness;

use tussock_ingest::{IngestError, LogFile, ReadOptions, read_log};
use tussock_types::{SkipReason, Trace};

/// Reads a log and checks what is true of every log: all bytes accounted for, times increasing, columns of one length.
pub(crate) fn read_with(bytes: &[u8], options: &ReadOptions) -> Result<LogFile, IngestError> {
    let file = read_log("log", bytes, options)?;
    hold(&file);
    Ok(file)
}

/// Reads a log that must be readable.
pub(crate) fn read(bytes: impl AsRef<[u8]>) -> LogFile {
    read_with(bytes.as_ref(), &ReadOptions::default()).unwrap_or_else(|error| panic!("{error}"))
}

/// Reads a log that must not be readable.
pub(crate) fn refuse(bytes: impl AsRef<[u8]>) -> IngestError {
    match read_with(bytes.as_ref(), &ReadOptions::default()) {
        Ok(file) => panic!("read {} fixes from what is no log", file.facts.fixes),
        Err(error) => error,
    }
}

/// What holds for every log that was read.
pub(crate) fn hold(file: &LogFile) {
    let facts = &file.facts;
    let listed: u64 = facts
        .places
        .iter()
        .map(|place| place.byte_end - place.byte_start)
        .sum();
    assert_eq!(
        facts.bytes_used + listed,
        facts.bytes,
        "used and listed bytes: {:?}",
        facts.places
    );
    assert_eq!(listed, facts.skipped_bytes.values().sum::<u64>());
    let mut end = 0;
    for place in &facts.places {
        assert!(
            place.byte_start >= end && place.byte_start < place.byte_end,
            "places overlap: {:?}",
            facts.places
        );
        end = place.byte_end;
    }
    assert!(end <= facts.bytes);
    for (reason, count) in &facts.skipped {
        let listed: u64 = facts
            .places
            .iter()
            .filter(|place| place.reason == *reason)
            .map(|place| place.count)
            .sum();
        assert_eq!(listed, *count, "{reason:?}");
    }
    hold_trace(&file.trace);
    assert_eq!(facts.fixes, file.trace.len() as u64);
}

/// What holds for every trace.
pub(crate) fn hold_trace(trace: &Trace) {
    let length = trace.len();
    assert!(
        trace.time_s.windows(2).all(|pair| pair[0] < pair[1]),
        "times do not rise"
    );
    assert!(
        trace
            .segment
            .windows(2)
            .all(|pair| pair[0] <= pair[1] && pair[1] - pair[0] <= 1),
        "segments do not count up"
    );
    for other in [
        trace.positions.len(),
        trace.segment.len(),
        trace.quality.len(),
        trace.hdop.len(),
        trace.claimed_sd_m.len(),
        trace.speed_mps.len(),
        trace.course_deg.len(),
        trace.height_msl_m.len(),
        trace.satellites.len(),
    ] {
        assert_eq!(other, length);
    }
}

/// A sentence with its checksum and line end.
pub(crate) fn sentence(body: &str) -> String {
    let sum = body.bytes().fold(0, |sum, byte| sum ^ byte);
    format!("${body}*{sum:02X}\r\n")
}

/// Several sentences.
pub(crate) fn sentences(bodies: &[&str]) -> String {
    bodies.iter().map(|body| sentence(body)).collect()
}

/// How many pieces were skipped for a reason.
pub(crate) fn skipped(file: &LogFile, reason: SkipReason) -> u64 {
    file.facts.skipped.get(&reason).copied().unwrap_or(0)
}

/// True when a notice was given.
pub(crate) fn noticed(file: &LogFile, key: &str) -> bool {
    file.facts.notices.iter().any(|notice| notice.said.code() == key)
}

/// Seconds since 1970 of an instant such as `2026-05-01T12:00:00Z`, by the `time` crate.
pub(crate) fn unix_s(text: &str) -> f64 {
    let format = time::format_description::well_known::Rfc3339;
    let instant =
        time::OffsetDateTime::parse(text, &format).unwrap_or_else(|error| panic!("{text}: {error}"));
    instant.unix_timestamp_nanos() as f64 / 1e9
}

/// Folder of this crate's workspace.
pub(crate) fn workspace() -> std::path::PathBuf {
    std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("../..")
}
