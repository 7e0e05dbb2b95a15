//! Which fixes does a log of gpsd contain?
//!
//! One JSON object per line, as written by `gpspipe -w` and `gpsdecode`. Objects of class TPV are fixes; all others
//! (satellites, devices, versions) are skipped as [`SkipReason::NotAPosition`]. Its error estimates are not used, because
//! their confidence level is stated as unknown.
//!
//! Reference: gpsd_json(5), "TPV".
//!
//! Cost: one pass, one small object a line.

use crate::clock::{self, Zone};
use crate::error::IngestError;
use crate::ledger::line_of;
use crate::lines::{TextLine, TextLines};
use crate::number::{DEGREE_M, WrittenSteps, decimal};
use crate::reading::{self, Reading};
use serde::Deserialize;
use tussock_types::{Fix, FixQuality, LimitSettings, Said, SkipReason};

/// The parts of a report that matter.
#[derive(Deserialize)]
struct Report<'a> {
    #[serde(borrow)]
    class: Option<std::borrow::Cow<'a, str>>,
    mode: Option<u8>,
    status: Option<u8>,
    time: Option<GpsdTime<'a>>,
    lat: Option<f64>,
    lon: Option<f64>,
    #[serde(rename = "altMSL")]
    alt_msl: Option<f64>,
    alt: Option<f64>,
    speed: Option<f64>,
    track: Option<f64>,
}

/// Seconds since 1970 before version 2.96 (2011), ISO 8601 since.
#[derive(Deserialize)]
#[serde(untagged)]
enum GpsdTime<'a> {
    Unix(f64),
    #[serde(borrow)]
    Text(std::borrow::Cow<'a, str>),
}

/// True if the text contains a fix of gpsd.
pub(crate) fn holds_reports(head: &[u8]) -> bool {
    memchr::memmem::find_iter(head, b"\"TPV\"").any(|at| {
        let before = head[..at].trim_ascii_end();
        before
            .strip_suffix(b":")
            .and_then(|before| before.trim_ascii_end().strip_suffix(b"\"class\""))
            .is_some_and(|before| before.trim_ascii_end().ends_with(b"{"))
    })
}

/// Reads all fixes.
pub(crate) fn read(name: &str, text: &[u8], limits: &LimitSettings) -> Result<Reading, IngestError> {
    let mut reading = Reading::new(text.len());
    let mut steps = WrittenSteps::default();
    for line in TextLines::new(text) {
        let (start, end) = (line.start as u64, line.end as u64);
        let length = line.content.len() as u64;
        if line.content.trim_ascii().is_empty() {
            reading.ledger.used(start, end);
            continue;
        }
        let outcome = if length > limits.line_bytes {
            let line = || line_of(text, start);
            reading.notice_at(
                line,
                Said::LineTooLong {
                    bytes: length,
                    limit: limits.line_bytes,
                },
            );
            Err(SkipReason::TooLong)
        } else {
            fix(&line)
        };
        match outcome {
            Ok(fix) => {
                steps.add(decimals(line.content));
                reading.take(fix, start, end);
            }
            Err(reason) => reading.skip(start, end, reason),
        }
        crate::check_size(name, &reading, text, limits, end)?;
    }
    reading.resolution_m = steps.resolution_m(DEGREE_M);
    reading.holds = format!("reports; skipped {}", reading.ledger.words());
    Ok(reading)
}

/// The fix of a line, or why there is none.
fn fix(line: &TextLine<'_>) -> Result<Fix, SkipReason> {
    let content = line.content.trim_ascii();
    if !content.starts_with(b"{") {
        return Err(SkipReason::NotOfTheFormat);
    }
    let report: Report<'_> = serde_json::from_slice(content).map_err(|_| {
        if line.is_complete {
            SkipReason::Malformed
        } else {
            SkipReason::Truncated
        }
    })?;
    if report.class.as_deref() != Some("TPV") {
        return Err(SkipReason::NotAPosition);
    }
    let (Some(lat_deg), Some(lon_deg), 2..) = (report.lat, report.lon, report.mode.unwrap_or(0)) else {
        return Err(SkipReason::NoFix);
    };
    reading::geographic_fault(lat_deg, lon_deg).map_or(Ok(()), Err)?;
    let written = match report.time.ok_or(SkipReason::NoTime)? {
        GpsdTime::Unix(unix_s) => clock::in_range(unix_s, Zone::Stated),
        GpsdTime::Text(text) => clock::instant(text.as_bytes()),
    };
    let or_nan = |value: Option<f64>, check: fn(f64) -> f32| value.map_or(f32::NAN, check);
    let mut fix = Fix::bare(written.map_err(SkipReason::from)?.time_s, lat_deg, lon_deg);
    fix.quality = quality(report.status);
    fix.speed_mps = or_nan(report.speed, reading::speed_mps);
    fix.course_deg = or_nan(report.track, reading::course);
    fix.height_msl_m = or_nan(report.alt_msl.or(report.alt), reading::height_m);
    Ok(fix)
}

/// From the status of a report.
fn quality(status: Option<u8>) -> FixQuality {
    match status {
        None | Some(0) => FixQuality::Unknown,
        Some(1) => FixQuality::Autonomous,
        Some(2) => FixQuality::Differential,
        Some(3) => FixQuality::RtkFixed,
        Some(4) => FixQuality::RtkFloat,
        Some(5 | 6) => FixQuality::Estimated,
        Some(8) => FixQuality::Simulated,
        Some(9) => FixQuality::Precise,
        Some(_) => FixQuality::Other,
    }
}

/// Digits after the point of the latitude, as written.
fn decimals(line: &[u8]) -> u8 {
    let Some(at) = memchr::memmem::find(line, b"\"lat\"") else {
        return 0;
    };
    let value = line[at + 5..].trim_ascii_start();
    let value = value.strip_prefix(b":").unwrap_or(value).trim_ascii_start();
    let end = value
        .iter()
        .position(|byte| b",} ".contains(byte))
        .unwrap_or(value.len());
    decimal(&value[..end]).map_or(0, |number| number.decimals)
}
