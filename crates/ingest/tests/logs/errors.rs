//! What stops a log: each kind with its words, its value, its expectation and its place.

use crate::{read, read_with, refuse, sentence};
use std::io::{Read, Write};
use tussock_ingest::{IngestError, Policy, ReadOptions, read_log};
use tussock_types::{LimitSettings, SkipReason};

const ROWS: &str =
    "time,lat,lon\n2026-05-01T12:00:00Z,52,5\n2026-05-01T12:00:01Z,52,5\n2026-05-01T12:00:02Z,52,5\n";

fn limited(change: impl FnOnce(&mut LimitSettings)) -> ReadOptions {
    let mut options = ReadOptions::default();
    change(&mut options.limits);
    options
}

fn gzip(bytes: &[u8]) -> Vec<u8> {
    let mut encoder = flate2::write::GzEncoder::new(Vec::new(), flate2::Compression::default());
    encoder.write_all(bytes).unwrap();
    encoder.finish().unwrap()
}

#[test]
fn an_empty_file_says_so() {
    assert_eq!(
        refuse("").to_string(),
        "log: is empty (0 bytes), expected a log (GPX, NMEA 0183, CSV, ...)"
    );
    assert!(matches!(refuse(gzip(b"")), IngestError::Empty { .. }));
    assert!(refuse(" \n\n").to_string().contains("nothing but blanks"));
}

#[test]
fn what_cannot_be_fetched_says_why() {
    struct Directory;
    impl Read for Directory {
        fn read(&mut self, _: &mut [u8]) -> std::io::Result<usize> {
            Err(std::io::Error::other("is a directory"))
        }
    }
    let error = read_log("garden", Directory, &ReadOptions::default()).unwrap_err();
    assert_eq!(error.to_string(), "garden: cannot be read: is a directory");
    assert!(std::error::Error::source(&error).is_some());
}

#[test]
fn what_is_no_log_says_what_it_seems_to_be() {
    for (bytes, found) in [
        (&b"PK\x03\x04rest"[..], "a ZIP archive"),
        (b"%PDF-1.7", "a PDF document"),
        (b"\x89PNG\r\n", "a PNG picture"),
        (b"<osm version=\"0.6\"><node/></osm>", "XML with the root <osm>"),
        (
            b"<?xml version=\"1.0\"?><!-- c --><!DOCTYPE html><html/>",
            "XML with the root <html>",
        ),
        (b"{\"type\": \"FeatureCollection\"}", "JSON"),
        (b"just a letter", "text that begins with \"just a letter\""),
        (b"\x01\x02\x03\x04\x05\x06\x07\x08", "binary data"),
        (b"a,b,c\n1,2,3\n", "text that begins with \"a,b,c\u{b7}1,2,3\""),
    ] {
        let error = refuse(bytes);
        assert!(matches!(error, IngestError::NotALog { .. }));
        assert!(error.to_string().contains(found), "{error}");
    }
}

#[test]
fn gzip_is_known_by_its_bytes() {
    let file = read(gzip(ROWS.as_bytes()));
    assert_eq!(format!("{:?}", file.trace), format!("{:?}", read(ROWS).trace));
    assert_eq!(file.facts.bytes, ROWS.len() as u64);
    // Two members one after the other are one file.
    let (head, tail) = ROWS.split_at(30);
    assert_eq!(
        read([gzip(head.as_bytes()), gzip(tail.as_bytes())].concat())
            .trace
            .len(),
        3
    );
}

#[test]
fn damaged_gzip_keeps_what_came_before() {
    let rows: String = (0..3600)
        .map(|s| {
            format!(
                "2026-05-01T12:{:02}:{:02}Z,52.{:06},5\n",
                s / 60,
                s % 60,
                s * 7919 % 1_000_000
            )
        })
        .collect();
    let packed = gzip(format!("time,lat,lon\n{rows}").as_bytes());
    let file = read(&packed[..packed.len() / 2]);
    assert!(file.trace.len() > 500);
    assert!(
        file.facts
            .notices
            .iter()
            .any(|notice| notice.said.code() == "FileDamaged")
    );
    assert!(matches!(refuse(&packed[..8]), IngestError::Unpack { .. }));
}

#[test]
fn every_limit_names_value_limit_and_key() {
    let packed = gzip(&vec![b' '; 100_000]);
    let deep = format!("<gpx>{}", "<a>".repeat(70));
    for (bytes, options, words) in [
        (
            ROWS.as_bytes(),
            limited(|l| l.log_bytes = 50),
            "stored log at byte 50: 51 is more than 50, the limit set by limits.log_bytes",
        ),
        (
            &packed[..],
            limited(|l| l.unpacked_bytes = 1000),
            "unpacked log at byte 1000: 1001 is more than 1000, the limit set by limits.unpacked_bytes",
        ),
        (ROWS.as_bytes(), limited(|l| l.fixes = 2), "number of fixes"),
        (
            deep.as_bytes(),
            ReadOptions::default(),
            "nested elements at byte 194: 65 is more than 64, the limit set by limits.element_depth",
        ),
    ] {
        let error = read_with(bytes, &options).unwrap_err();
        assert!(error.to_string().contains(words), "{error}");
        assert!(error.hint().is_some_and(|hint| hint.contains("under [limits]")));
    }
    for log in [
        sentence("GPRMC,120000,A,5200.0,N,00500.0,E,1,9,010526,,,A")
            + &sentence("GPRMC,120001,A,5200.0,N,00500.0,E,1,9,010526,,,A"),
        "<gpx><trk><trkseg><trkpt lat=\"52\" lon=\"5\"><time>2026-05-01T12:00:00Z</time></trkpt>\
         <trkpt lat=\"52\" lon=\"5\"><time>2026-05-01T12:00:01Z</time></trkpt></trkseg></trk></gpx>"
            .into(),
    ] {
        let error = read_with(log.as_bytes(), &limited(|l| l.fixes = 1)).unwrap_err();
        assert!(
            error
                .to_string()
                .contains("2 is more than 1, the limit set by limits.fixes"),
            "{error}"
        );
    }
}

#[test]
fn a_line_longer_than_the_limit_is_skipped() {
    let options = limited(|l| l.line_bytes = 200);
    let log = format!("{ROWS}2026-05-01T12:00:03Z,52,5,{}\n", "x".repeat(300));
    let file = read_with(log.as_bytes(), &options).unwrap();
    assert_eq!(file.facts.skipped[&SkipReason::TooLong], 1);
    let log = sentence("GPRMC,120000,A,5200.0,N,00500.0,E,1,9,010526,,,A")
        + &sentence(&format!("GPTXT,{}", "x".repeat(300)));
    let file = read_with(log.as_bytes(), &options).unwrap();
    assert_eq!(file.facts.skipped[&SkipReason::TooLong], 1);
    let point = |second: usize, name: &str| {
        format!(
            "<trkpt lat=\"52\" lon=\"5\"><time>2026-05-01T12:00:0{second}Z</time><name>{name}</name></trkpt>"
        )
    };
    let log = format!(
        "<gpx><trk><trkseg>{}{}</trkseg></trk></gpx>",
        point(0, "a"),
        point(1, &"x".repeat(300))
    );
    let file = read_with(log.as_bytes(), &options).unwrap();
    assert_eq!(file.facts.skipped[&SkipReason::TooLong], 1);
}

#[test]
fn strict_stops_at_the_first_fault_and_not_at_what_is_no_position() {
    let strict = ReadOptions {
        policy: Policy::Strict,
        ..ReadOptions::default()
    };
    assert!(read_with(format!("# remark\n{ROWS}").as_bytes(), &strict).is_ok());
    let log = format!("{ROWS}2026-05-01T12:00:03Z,north,5\n2026-05-01T12:00:04Z,,5\n");
    let error = read_with(log.as_bytes(), &strict).unwrap_err();
    assert_eq!(
        error.to_string(),
        "log: line 5, byte 91: malformed field: \"2026-05-01T12:00:03Z,north,5\u{b7}2026-05-01T12:00:04Z,,5\""
    );
    assert!(error.hint().is_some());
}

#[test]
fn excerpts_are_kept_for_the_first_twenty_places_and_bytes_for_all() {
    let rows: String = (0..60)
        .map(|s| {
            format!(
                "2026-05-01T12:00:{s:02}Z,{},5\n",
                if s % 2 == 0 { "52" } else { "x" }
            )
        })
        .collect();
    let file = read(format!("time,lat,lon\n{rows}"));
    assert_eq!(file.facts.places.len(), 30);
    assert_eq!(
        file.facts
            .places
            .iter()
            .filter(|place| !place.excerpt.is_empty())
            .count(),
        20
    );
    assert_eq!(file.facts.skipped_bytes[&SkipReason::Malformed], 30 * 25);
}

#[test]
fn the_hash_is_that_of_the_bytes_as_given() {
    // By sha256sum of the GNU core utilities.
    assert_eq!(
        read(ROWS).facts.sha256,
        "03f14481c8593b9b909313d4f40a2bc0e74fb4b83a2abd56b717fc71e13e3058"
    );
    assert_ne!(read(gzip(ROWS.as_bytes())).facts.sha256, read(ROWS).facts.sha256);
}

#[test]
fn zstandard_is_unpacked_and_a_torn_end_keeps_what_came_before() {
    let mut text = String::from("time,lat,lon\n");
    for second in 0..40_000_u32 {
        let wiggle = second.wrapping_mul(2_654_435_761) % 1000;
        text.push_str(&format!(
            "2026-05-01T{:02}:{:02}:{:02}Z,52.0000{wiggle:03},5.0000{wiggle:03}\n",
            second / 3600,
            second / 60 % 60,
            second % 60
        ));
    }
    let packed = zstd::encode_all(text.as_bytes(), 3).unwrap();
    let options = tussock_ingest::ReadOptions::default();
    let plain = tussock_ingest::read_log("a", text.as_bytes(), &options).unwrap();
    let whole = tussock_ingest::read_log("a", &packed[..], &options).unwrap();
    assert_eq!(whole.trace.time_s, plain.trace.time_s);
    assert_eq!(whole.trace.positions, plain.trace.positions);
    assert_ne!(whole.facts.sha256, plain.facts.sha256);
    let torn = tussock_ingest::read_log("a", &packed[..packed.len() / 2], &options).unwrap();
    let kept = torn.trace.len();
    assert!(kept > 1000 && kept < plain.trace.len(), "{kept}");
    assert!(torn.trace.time_s[..kept - 1] == plain.trace.time_s[..kept - 1]);
    assert!(
        torn.facts
            .notices
            .iter()
            .any(|notice| notice.said.code() == "FileDamaged")
    );
    let mut small = options;
    small.limits.unpacked_bytes = 1000;
    assert!(matches!(
        tussock_ingest::read_log("a", &packed[..], &small),
        Err(tussock_ingest::IngestError::Limit { .. })
    ));
}
