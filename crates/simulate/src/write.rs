//! What does a simulated log look like as a file?
//!
//! Plain writers for logs that tests and examples read back: GPX 1.1, NMEA 0183 (RMC, GGA and GST with checksums) and CSV
//! with named columns. Positions have 9 decimals of a degree or 8 decimals of a minute (a tenth and a fiftieth of a
//! millimetre), times have milliseconds.

use std::fmt::Write as _;
use time::OffsetDateTime;
use time::format_description::StaticFormatDescription;
use time::macros::format_description;
use tussock_types::{Fix, FixQuality, Positions, Trace};

/// Date and time of day; the epoch for times outside the calendar's range.
fn moment(time_s: f64) -> OffsetDateTime {
    let milliseconds = (time_s * 1000.0).round() as i128;
    OffsetDateTime::from_unix_timestamp_nanos(milliseconds * 1_000_000).unwrap_or(OffsetDateTime::UNIX_EPOCH)
}

const RFC_3339: StaticFormatDescription =
    format_description!("[year]-[month]-[day]T[hour]:[minute]:[second].[subsecond digits:3]Z");
const NMEA_CLOCK: StaticFormatDescription =
    format_description!("[hour][minute][second].[subsecond digits:3]");
const NMEA_DATE: StaticFormatDescription = format_description!("[day][month][year repr:last_two]");

fn written(time_s: f64, format: StaticFormatDescription) -> String {
    moment(time_s).format(format).unwrap_or_default()
}

fn escaped(text: &str) -> String {
    text.replace('&', "&amp;")
        .replace('<', "&lt;")
        .replace('>', "&gt;")
        .replace('"', "&quot;")
}

/// The trace as GPX 1.1: one track, with a track segment for every segment. A trace in local metres has no geographic
/// coordinates and gives a track without points.
pub fn gpx_bytes(trace: &Trace) -> Vec<u8> {
    let mut out = String::with_capacity(200 * trace.len() + 400);
    out.push_str("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n");
    out.push_str(
        "<gpx xmlns=\"http://www.topografix.com/GPX/1/1\" version=\"1.1\" creator=\"tussock sandbox\">\n",
    );
    let _ = writeln!(out, "<trk><name>{}</name>", escaped(&trace.machine));
    let is_geographic = matches!(trace.positions, Positions::Geographic { .. });
    let mut open = None;
    for number in 0..if is_geographic { trace.len() } else { 0 } {
        let fix = trace.fix(number);
        if open != Some(fix.segment) {
            out.push_str(if open.is_some() {
                "</trkseg>\n<trkseg>\n"
            } else {
                "<trkseg>\n"
            });
            open = Some(fix.segment);
        }
        gpx_point(&mut out, &fix);
    }
    if open.is_some() {
        out.push_str("</trkseg>\n");
    }
    out.push_str("</trk>\n</gpx>\n");
    out.into_bytes()
}

fn gpx_point(out: &mut String, fix: &Fix) {
    let _ = write!(out, "<trkpt lat=\"{:.9}\" lon=\"{:.9}\">", fix.first, fix.second);
    if fix.height_msl_m.is_finite() {
        let _ = write!(out, "<ele>{:.2}</ele>", fix.height_msl_m);
    }
    let _ = write!(out, "<time>{}</time>", written(fix.time_s, RFC_3339));
    match fix.quality {
        FixQuality::Autonomous => out.push_str("<fix>3d</fix>"),
        FixQuality::Differential | FixQuality::RtkFixed | FixQuality::RtkFloat => {
            out.push_str("<fix>dgps</fix>")
        }
        FixQuality::Precise => out.push_str("<fix>pps</fix>"),
        _ => {}
    }
    if fix.satellites != u8::MAX {
        let _ = write!(out, "<sat>{}</sat>", fix.satellites);
    }
    if fix.hdop.is_finite() {
        let _ = write!(out, "<hdop>{:.2}</hdop>", fix.hdop);
    }
    out.push_str("</trkpt>\n");
}

/// GGA quality.
const fn gga_quality(quality: FixQuality) -> u8 {
    match quality {
        FixQuality::Unknown | FixQuality::Autonomous => 1,
        FixQuality::Differential => 2,
        FixQuality::Precise => 3,
        FixQuality::RtkFixed => 4,
        FixQuality::RtkFloat => 5,
        FixQuality::Estimated => 6,
        FixQuality::Manual => 7,
        FixQuality::Simulated => 8,
        FixQuality::Other => 9,
    }
}

/// RMC positioning mode.
const fn mode(quality: FixQuality) -> char {
    match quality {
        FixQuality::Unknown | FixQuality::Autonomous | FixQuality::Other => 'A',
        FixQuality::Differential => 'D',
        FixQuality::Precise => 'P',
        FixQuality::RtkFixed => 'R',
        FixQuality::RtkFloat => 'F',
        FixQuality::Estimated => 'E',
        FixQuality::Manual => 'M',
        FixQuality::Simulated => 'S',
    }
}

fn sentence(out: &mut String, body: &str) {
    let sum = body.bytes().fold(0, |sum, byte| sum ^ byte);
    let _ = write!(out, "${body}*{sum:02X}\r\n");
}

/// Degrees and minutes: `ddmm.mmmmmmmm,N`.
fn minutes(degrees: f64, width: usize, letters: [char; 2]) -> String {
    // Rounded as a whole, so that 59.999999999 minutes become the next degree.
    let units = (degrees.abs() * 60.0 * 1e8).round() as u64;
    let (whole, rest) = (units / 6_000_000_000, units % 6_000_000_000);
    let letter = letters[usize::from(degrees < 0.0)];
    format!(
        "{whole:0width$}{:02}.{:08},{letter}",
        rest / 100_000_000,
        rest % 100_000_000
    )
}

/// The trace as NMEA 0183: RMC, GGA and, if the receiver claims an accuracy, GST. One epoch without a fix precedes each new
/// segment. A trace in local metres has no geographic coordinates and gives nothing.
pub fn nmea_bytes(trace: &Trace) -> Vec<u8> {
    let mut out = String::with_capacity(230 * trace.len());
    if !matches!(trace.positions, Positions::Geographic { .. }) {
        return Vec::new();
    }
    let mut segment = None;
    let mut last_s = f64::NEG_INFINITY;
    for number in 0..trace.len() {
        let fix = trace.fix(number);
        if segment.is_some_and(|segment| segment != fix.segment) {
            void(&mut out, (last_s + fix.time_s) / 2.0);
        }
        segment = Some(fix.segment);
        last_s = fix.time_s;
        epoch(&mut out, &fix);
    }
    out.into_bytes()
}

fn clock_and_date(time_s: f64) -> (String, String) {
    (written(time_s, NMEA_CLOCK), written(time_s, NMEA_DATE))
}

fn void(out: &mut String, time_s: f64) {
    let (clock, date) = clock_and_date(time_s);
    sentence(out, &format!("GNRMC,{clock},V,,,,,,,{date},,,N"));
    sentence(out, &format!("GNGGA,{clock},,,,,0,00,,,M,,M,,"));
}

fn epoch(out: &mut String, fix: &Fix) {
    let (clock, date) = clock_and_date(fix.time_s);
    let lat = minutes(fix.first, 2, ['N', 'S']);
    let lon = minutes(fix.second, 3, ['E', 'W']);
    let number = |value: f32, factor: f64, decimals: usize| {
        if value.is_finite() {
            format!("{:.decimals$}", f64::from(value) * factor)
        } else {
            String::new()
        }
    };
    let knots = number(fix.speed_mps, 3600.0 / 1852.0, 3);
    let course = number(fix.course_deg, 1.0, 1);
    sentence(
        out,
        &format!(
            "GNRMC,{clock},A,{lat},{lon},{knots},{course},{date},,,{}",
            mode(fix.quality)
        ),
    );
    let satellites = if fix.satellites == u8::MAX {
        String::new()
    } else {
        format!("{:02}", fix.satellites)
    };
    let (hdop, height) = (number(fix.hdop, 1.0, 2), number(fix.height_msl_m, 1.0, 2));
    let quality = gga_quality(fix.quality);
    sentence(
        out,
        &format!("GNGGA,{clock},{lat},{lon},{quality},{satellites},{hdop},{height},M,47.0,M,,"),
    );
    if fix.claimed_sd_m.is_finite() {
        let sd = number(fix.claimed_sd_m, 1.0, 3);
        let up = number(fix.claimed_sd_m, 1.8, 3);
        sentence(out, &format!("GNGST,{clock},{sd},{sd},{sd},0.0,{sd},{sd},{up}"));
    }
}

/// The trace as CSV: `time,lat,lon,...` or `time,x_m,y_m,...` with times as RFC 3339 in UTC.
pub fn csv_bytes(trace: &Trace) -> Vec<u8> {
    let is_geographic = matches!(trace.positions, Positions::Geographic { .. });
    let mut out = String::with_capacity(80 * trace.len() + 80);
    out.push_str(if is_geographic {
        "time,lat,lon,hdop,speed_mps\n"
    } else {
        "time,x_m,y_m,hdop,speed_mps\n"
    });
    for number in 0..trace.len() {
        let fix = trace.fix(number);
        let decimals = if is_geographic { 9 } else { 4 };
        let _ = write!(
            out,
            "{},{:.decimals$},{:.decimals$},",
            written(fix.time_s, RFC_3339),
            fix.first,
            fix.second
        );
        for (value, end) in [(fix.hdop, ','), (fix.speed_mps, '\n')] {
            if value.is_finite() {
                let _ = write!(out, "{value:.2}");
            }
            out.push(end);
        }
    }
    out.into_bytes()
}
