//! Our readers compared with the `gpx` and `nmea` crates, where those can read at all.

use crate::{read, recordings, workspace};
use std::collections::BTreeMap;
use tussock_ingest::{ReadOptions, read_log};
use tussock_types::LogFormat;

/// Recordings that the `gpx` crate refuses, with its message. This list must only get shorter.
const GPX_REFUSED: [(&str, &str); 2] = [
    (
        "gpx/gpxpy/gpx1.1_with_all_fields.gpx",
        "invalid child element `magvar` in `waypoint`",
    ),
    (
        "gpx/gpxpy/unicode_with_bom.gpx",
        "invalid element, `gpx` lacks required attribute `version`",
    ),
];

/// These have extensions of a whole track segment, which the schema allows but the crate does not know. They are removed
/// from its copy.
const SEGMENT_EXTENSIONS: &str = "gpx/gps-accuracy/routeA/";

fn without_extensions(text: &str) -> String {
    let mut rest = text;
    let mut out = String::with_capacity(text.len());
    while let Some(open) = rest.find("<extensions>") {
        let Some(close) = rest[open..].find("</extensions>") else {
            break;
        };
        out.push_str(&rest[..open]);
        rest = &rest[open + close + "</extensions>".len()..];
    }
    out + rest
}

#[test]
fn points_agree_with_the_gpx_crate() {
    let mut compared = 0;
    let mut refusals = 0;
    for (name, path) in recordings::vendored()
        .into_iter()
        .filter(|(name, _)| name.ends_with(".gpx"))
    {
        let bytes = std::fs::read(path).unwrap();
        let copy = if name.starts_with(SEGMENT_EXTENSIONS) {
            assert!(
                gpx::read(&bytes[..]).is_err(),
                "{name} is read by gpx now: leave it whole"
            );
            without_extensions(&String::from_utf8_lossy(&bytes)).into_bytes()
        } else {
            bytes.clone()
        };
        let refused = GPX_REFUSED.iter().find(|(known, _)| *known == name);
        let theirs = match gpx::read(&copy[..]) {
            Ok(theirs) => theirs,
            Err(error) => {
                assert_eq!(
                    refused.map(|(_, words)| (*words).to_string()),
                    Some(error.to_string()),
                    "{name}"
                );
                refusals += 1;
                continue;
            }
        };
        assert!(refused.is_none(), "{name} is read by gpx now: shorten the list");
        let mut expected: Vec<(f64, f64, f64)> = Vec::new();
        for waypoint in theirs
            .tracks
            .iter()
            .flat_map(|track| &track.segments)
            .flat_map(|segment| &segment.points)
        {
            if let Some(time) = waypoint.time {
                let instant = time::OffsetDateTime::from(time);
                let time_s = instant.unix_timestamp_nanos().div_euclid(1000) as f64 / 1e6;
                expected.push((time_s, waypoint.point().y(), waypoint.point().x()));
            }
        }
        expected.sort_by(|a, b| a.0.total_cmp(&b.0));
        expected.dedup_by(|next, first| next.0 == first.0);
        match read_log(&name, &bytes[..], &ReadOptions::default()) {
            Ok(file) => {
                let found: Vec<(f64, f64, f64)> = (0..file.trace.len())
                    .map(|index| {
                        let fix = file.trace.fix(index);
                        (fix.time_s, fix.first, fix.second)
                    })
                    .collect();
                assert_eq!(found, expected, "{name}");
                compared += found.len();
            }
            Err(error) => assert!(expected.is_empty(), "{name}: {error}"),
        }
    }
    assert!(compared > 20_000, "{compared}");
    assert_eq!(refusals, GPX_REFUSED.len());
}

/// Mode letters, one per satellite system: the standard allows as many as there are systems, the crate at most two.
const MODES: &str = "GNS with a mode letter for each of more than two systems";
/// The sign of the local zone: the crate knows only the minus.
const ZONE_SIGN: &str = "ZDA with a plus before the hours of the local zone";

/// Sentences that the `nmea` crate refuses although they are right: recording, number, kind, and why we read them. The test
/// checks the list exactly, so that it only ever changes on purpose; it should only get shorter.
const NMEA_REFUSED: [(&str, usize, &str, &str); 7] = [
    ("nmea/gpsd/beidou-bd.log", 5, "GNS", MODES),
    ("nmea/gpsd/ericsson-gru04-02-70sec.log", 71, "GNS", MODES),
    ("nmea/gpsd/firefly-II.log", 23, "ZDA", ZONE_SIGN),
    ("nmea/gpsd/furuno_gl_ga.log", 16, "GNS", MODES),
    ("nmea/gpsd/furuno_gl_ga.log", 16, "ZDA", ZONE_SIGN),
    ("nmea/gpsd/telit-pls83-w.log", 10, "GNS", MODES),
    ("nmea/misc/TrimbleR2SampleData.txt", 34, "GNS", MODES),
];

/// True if a refused sentence is what the reason says.
fn is_reason(text: &str, reason: &str) -> bool {
    let fields: Vec<&str> = text.split([',', '*']).collect();
    match reason {
        MODES => fields.get(6).is_some_and(|modes| modes.len() > 2),
        ZONE_SIGN => fields.get(5).is_some_and(|zone| zone.starts_with('+')),
        _ => false,
    }
}

#[test]
fn positions_agree_with_the_nmea_crate_sentence_by_sentence() {
    let mut compared = 0;
    let mut refused: BTreeMap<(String, String), usize> = BTreeMap::new();
    for (name, path) in recordings::vendored()
        .into_iter()
        .filter(|(name, _)| name.starts_with("nmea/"))
    {
        let bytes = std::fs::read(path).unwrap();
        let Ok(file) = read_log(&name, &bytes[..], &ReadOptions::default()) else {
            continue;
        };
        if file.facts.format != LogFormat::Nmea {
            continue;
        }
        // Each of their positions must be one of ours, unless we say that this epoch was skipped.
        let ours: std::collections::HashSet<(u64, u64)> = (0..file.trace.len())
            .map(|index| file.trace.positions.pair(index))
            .map(|(lat, lon)| {
                (
                    (lat * 1e9).round() as i64 as u64,
                    (lon * 1e9).round() as i64 as u64,
                )
            })
            .collect();
        let skipped = |byte: usize| {
            file.facts
                .places
                .iter()
                .any(|place| (place.byte_start..place.byte_end).contains(&(byte as u64)))
        };
        let mut from = 0;
        while let Some(at) = bytes[from..].iter().position(|&b| b == b'$').map(|n| from + n) {
            from = at + 1;
            let end = bytes[at..]
                .iter()
                .position(|&b| b == b'\n')
                .map_or(bytes.len(), |n| at + n);
            let Ok(text) = std::str::from_utf8(&bytes[at..end]) else {
                continue;
            };
            let text = text.trim_end();
            let kind = text.get(3..6).unwrap_or_default();
            if !["GGA", "RMC", "GLL", "GNS", "VTG", "ZDA", "GST"].contains(&kind) || skipped(at) {
                continue;
            }
            match nmea::parse_str(text) {
                Ok(nmea::ParseResult::GGA(theirs)) => {
                    let (Some(lat), Some(lon)) = (theirs.latitude, theirs.longitude) else {
                        continue;
                    };
                    let key = ((lat * 1e9).round() as i64, (lon * 1e9).round() as i64);
                    let near = (-1..=1)
                        .any(|a| (-1..=1).any(|b| ours.contains(&((key.0 + a) as u64, (key.1 + b) as u64))));
                    assert!(near, "{name}: {text}");
                    compared += 1;
                }
                Ok(_) => {}
                Err(error) => {
                    // A sentence that we use must not have a wrong checksum according to the crate.
                    assert!(
                        !matches!(error, nmea::Error::ChecksumMismatch { .. }),
                        "{name}: {text}"
                    );
                    let known = NMEA_REFUSED
                        .iter()
                        .find(|(known, _, of, _)| *known == name && *of == kind);
                    let reason = known.map_or("", |(.., reason)| *reason);
                    assert!(is_reason(text, reason), "{name}: {error}: {text}");
                    *refused.entry((name.clone(), kind.to_owned())).or_default() += 1;
                }
            }
        }
    }
    assert!(compared > 3_000, "{compared}");
    let listed: BTreeMap<(String, String), usize> = NMEA_REFUSED
        .iter()
        .map(|(name, count, kind, _)| (((*name).to_owned(), (*kind).to_owned()), *count))
        .collect();
    assert_eq!(refused, listed);
}

#[test]
fn all_fields_of_rmc_and_gga_agree_with_the_nmea_crate() {
    let path = workspace().join("fixtures/recordings/nmea/misc/MTV.Local1.ublox-F9K.20200206-181434.nmea");
    let text = std::fs::read_to_string(path).unwrap();
    let mut compared = 0;
    for line in text.lines().filter(|line| line.get(3..6) == Some("RMC")) {
        let Ok(nmea::ParseResult::RMC(theirs)) = nmea::parse_str(line) else {
            continue;
        };
        let (Some(lat), Some(lon), Some(date), Some(time)) =
            (theirs.lat, theirs.lon, theirs.fix_date, theirs.fix_time)
        else {
            continue;
        };
        let fix = read(format!("{line}\r\n")).trace.fix(0);
        assert!(
            (fix.first - lat).abs() < 1e-12 && (fix.second - lon).abs() < 1e-12,
            "{line}"
        );
        let seconds = date.and_time(time).and_utc().timestamp_micros() as f64 / 1e6;
        assert_eq!(fix.time_s, seconds, "{line}");
        if let Some(knots) = theirs.speed_over_ground {
            assert!((fix.speed_mps - knots * 1852.0 / 3600.0).abs() < 1e-4);
        }
        if let Some(course) = theirs.true_course {
            assert_eq!(fix.course_deg, course % 360.0);
        }
        compared += 1;
    }
    assert!(compared > 1_500, "{compared}");
}
