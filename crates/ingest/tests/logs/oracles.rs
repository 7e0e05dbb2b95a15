//! Our readers beside the `gpx` and `nmea` crates, where those can read at all.

use crate::{read, recordings, workspace};
use std::collections::BTreeMap;
use tussock_ingest::{ReadOptions, read_log};
use tussock_types::LogFormat;

/// Recordings that the `gpx` crate refuses, and its words. This list must only get shorter.
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

/// These have extensions of a whole track segment, which the schema allows and the crate does not know. They are taken
/// out of its copy.
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
    for (name, path) in recordings::vendored()
        .into_iter()
        .filter(|(name, _)| name.ends_with(".gpx"))
    {
        let bytes = std::fs::read(path).unwrap();
        let copy = if name.starts_with(SEGMENT_EXTENSIONS) {
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
}

/// Sentences that the `nmea` crate refuses though they are right; it must not grow. By kind of refusal.
#[derive(Default, Debug)]
struct Refusals(BTreeMap<&'static str, usize>);

#[test]
fn positions_agree_with_the_nmea_crate_sentence_by_sentence() {
    let mut compared = 0;
    let mut refusals = Refusals::default();
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
            if text.get(3..6) != Some("GGA") || skipped(at) {
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
                Err(nmea::Error::ChecksumMismatch { .. }) => *refusals.0.entry("checksum").or_default() += 1,
                Err(_) => *refusals.0.entry("other").or_default() += 1,
            }
        }
    }
    assert!(compared > 3_000, "{compared}");
    // A sentence that we use must not have a wrong checksum in their eyes.
    assert_eq!(refusals.0.get("checksum"), None, "{refusals:?}");
    assert!(
        refusals
            .0
            .get("other")
            .is_none_or(|&count| count <= OTHER_REFUSALS),
        "{refusals:?}"
    );
}

/// GGA sentences that only the oracle refuses: integer age of corrections, altitude without unit and the like.
const OTHER_REFUSALS: usize = 60;

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
