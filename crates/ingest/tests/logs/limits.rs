//! Each limit from both sides: what just fits is read, one more is refused or passed over, with value, limit and key.

use crate::{hold, read_with, sentence};
use std::io::{Read, Write};
use tussock_ingest::{IngestError, LogFile, ReadOptions, read_log};
use tussock_types::{LimitSettings, Said, SkipReason};

/// Changes the limits so that one of them is the given value.
type Set = fn(&mut LimitSettings, u64);

fn limited(set: Set, value: u64) -> ReadOptions {
    let mut options = ReadOptions::default();
    set(&mut options.limits, value);
    options
}

fn gzip(bytes: &[u8]) -> Vec<u8> {
    let mut encoder = flate2::write::GzEncoder::new(Vec::new(), flate2::Compression::best());
    encoder.write_all(bytes).unwrap();
    encoder.finish().unwrap()
}

fn csv(rows: usize) -> String {
    (0..rows).fold("time,lat,lon\n".to_owned(), |text, row| {
        format!(
            "{text}2026-05-01T{:02}:{:02}:{:02}Z,52.{row:06},5\n",
            row / 3600,
            row / 60 % 60,
            row % 60
        )
    })
}

fn nmea(rows: usize) -> String {
    (0..rows)
        .map(|row| {
            sentence(&format!(
                "GPRMC,12{:02}{:02},A,5200.0,N,00500.0,E,1,9,010526,,,A",
                row / 60,
                row % 60
            ))
        })
        .collect()
}

fn points(rows: usize) -> String {
    (0..rows)
        .map(|row| {
            format!(
                "<trkpt lat=\"52\" lon=\"5\"><time>2026-05-01T12:{:02}:{:02}Z</time></trkpt>",
                row / 60,
                row % 60
            )
        })
        .collect()
}

fn gpx(inside: &str) -> String {
    format!("<gpx creator=\"x\"><trk><trkseg>{inside}</trkseg></trk></gpx>")
}

/// Reads with the limit at `most`, and is refused with one less.
fn holds_to(log: &[u8], key: &str, set: Set, most: u64) {
    let file = read_with(log, &limited(set, most)).unwrap_or_else(|error| panic!("{key} {most}: {error}"));
    assert!(file.facts.fixes > 0);
    let error = read_with(log, &limited(set, most - 1)).unwrap_err();
    let IngestError::Limit { value, limit, .. } = &error else {
        panic!("{key}: {error}")
    };
    assert!(*value > *limit && *limit == most - 1, "{error}");
    let words = format!("{value} is more than {}, the limit set by limits.{key}", most - 1);
    assert!(error.to_string().contains(&words), "{error}");
    assert_eq!(
        error.hint(),
        Some(format!("raise {key} under [limits] in the settings"))
    );
}

#[test]
fn bytes_of_a_log_as_stored() {
    let log = csv(100);
    holds_to(
        log.as_bytes(),
        "log_bytes",
        |l, v| l.log_bytes = v,
        log.len() as u64,
    );
    let packed = gzip(log.as_bytes());
    holds_to(&packed, "log_bytes", |l, v| l.log_bytes = v, packed.len() as u64);
}

#[test]
fn bytes_of_a_log_after_decompression() {
    let log = csv(100);
    let set: Set = |l, v| l.unpacked_bytes = v;
    holds_to(&gzip(log.as_bytes()), "unpacked_bytes", set, log.len() as u64);
}

#[test]
fn bytes_after_decompression_for_each_stored_byte() {
    // Long remarks pack well; the log is beyond the size from which on the ratio counts.
    let remark = format!("#{}\n", " ".repeat(60_000));
    let log = format!("{}{}", csv(10), remark.repeat(400));
    let packed = gzip(log.as_bytes());
    let ratio = (log.len() / packed.len()) as u64;
    assert!(ratio > 400, "{ratio}");
    let set: Set = |l, v| l.unpacked_ratio = v;
    assert!(read_with(&packed, &limited(set, 1100)).is_ok());
    let error = read_with(&packed, &ReadOptions::default()).unwrap_err();
    assert!(
        error
            .to_string()
            .contains("is more than 200, the limit set by limits.unpacked_ratio"),
        "{error}"
    );
    // A small log may pack as well as it likes.
    let small = gzip(format!("{}{}", csv(10), remark.repeat(200)).as_bytes());
    assert!(read_with(&small, &ReadOptions::default()).is_ok());
}

#[test]
fn memory_for_text_and_fixes() {
    let set: Set = |l, v| l.memory_bytes = v;
    for log in [csv(500), nmea(500), gpx(&points(500))] {
        // The memory needed is more than the text, and is found by trying: it must have a single edge.
        let (mut refused, mut read) = (log.len() as u64, 16 << 20);
        while read - refused > 1 {
            let middle = (read + refused) / 2;
            match read_with(log.as_bytes(), &limited(set, middle)) {
                Ok(_) => read = middle,
                Err(_) => refused = middle,
            }
        }
        holds_to(log.as_bytes(), "memory_bytes", set, read);
        let a_fix = (read - log.len() as u64) / 500;
        assert!((120..=200).contains(&a_fix), "{a_fix} bytes a fix");
    }
    // Places that are skipped take memory too.
    let faults = format!(
        "{}{}",
        csv(10),
        "2026-05-01T12:00:00Z,x,5\n# remark\n".repeat(1000)
    );
    let error = read_with(faults.as_bytes(), &limited(set, 100_000)).unwrap_err();
    assert!(error.to_string().contains("limits.memory_bytes"), "{error}");
    assert!(read_with(faults.as_bytes(), &limited(set, 400_000)).is_ok());
    // So does a second copy of the text: UTF-16, and GPX in a single-byte encoding.
    let wide: Vec<u8> = csv(10).encode_utf16().flat_map(u16::to_le_bytes).collect();
    let error = read_with(&wide, &limited(set, wide.len() as u64 * 5 / 2 - 1)).unwrap_err();
    assert!(error.to_string().contains("limits.memory_bytes"), "{error}");
    let latin = [gpx(&points(3)).as_bytes(), b"<!-- \xe9 -->"].concat();
    let error = read_with(&latin, &limited(set, latin.len() as u64 * 2 - 1)).unwrap_err();
    assert!(error.to_string().contains("limits.memory_bytes"), "{error}");
}

#[test]
fn fixes() {
    let set: Set = |l, v| l.fixes = v;
    for log in [csv(20), nmea(20), gpx(&points(20))] {
        holds_to(log.as_bytes(), "fixes", set, 20);
    }
}

#[test]
fn nested_elements() {
    let set: Set = |l, v| l.element_depth = v as u32;
    for leaf in ["<a></a>", "<a/>"] {
        let inside = format!("{}{leaf}{}", "<a>".repeat(30), "</a>".repeat(30));
        holds_to(gpx(&(points(2) + &inside)).as_bytes(), "element_depth", set, 34);
    }
}

/// Exactly one piece was passed over as too long, and a remark says so.
fn too_long(file: &LogFile, said: &Said) {
    assert_eq!(file.facts.skipped.get(&SkipReason::TooLong), Some(&1), "{said:?}");
    let notice = file
        .facts
        .notices
        .iter()
        .find(|notice| notice.said == *said)
        .unwrap_or_else(|| panic!("{said:?}: {:?}", file.facts.notices));
    assert!(notice.line > 0);
}

#[test]
fn bytes_of_a_line() {
    let set: Set = |l, v| l.line_bytes = v;
    let row = format!("2026-05-01T12:00:03Z,52,5,{}", "x".repeat(300));
    let body = "GPTXT,".to_owned() + &"x".repeat(300);
    let point = format!(
        "<trkpt lat=\"52\" lon=\"5\"><time>2026-05-01T13:00:00Z</time><name>{}</name></trkpt>",
        "x".repeat(300)
    );
    for (log, bytes) in [
        (csv(3) + &row + "\n", row.len()),
        (nmea(3) + &sentence(&body), body.len()),
        (gpx(&(points(3) + &point)), point.len()),
    ] {
        let fits = read_with(log.as_bytes(), &limited(set, bytes as u64)).unwrap();
        assert!(!fits.facts.skipped.contains_key(&SkipReason::TooLong));
        let longer = read_with(log.as_bytes(), &limited(set, bytes as u64 - 1)).unwrap();
        let (bytes, limit) = (bytes as u64, bytes as u64 - 1);
        too_long(&longer, &Said::LineTooLong { bytes, limit });
        assert!(longer.facts.fixes >= 3);
    }
}

#[test]
fn bytes_of_an_attribute() {
    let set: Set = |l, v| l.attribute_bytes = v;
    let point = format!(
        "<trkpt lat=\"52\" lon=\"5\" x=\"{}\"><time>2026-05-01T13:00:00Z</time></trkpt>",
        "x".repeat(300)
    );
    let log = gpx(&(points(3) + &point));
    assert_eq!(
        read_with(log.as_bytes(), &limited(set, 300)).unwrap().facts.fixes,
        4
    );
    let longer = read_with(log.as_bytes(), &limited(set, 299)).unwrap();
    let (bytes, limit) = (300, 299);
    too_long(&longer, &Said::AttributeTooLong { bytes, limit });
    assert_eq!(longer.facts.fixes, 3);
    // Of the root it is left unread, and the log goes on.
    let log = log.replace("creator=\"x\"", &format!("creator=\"{}\"", "x".repeat(301)));
    let fits = read_with(log.as_bytes(), &limited(set, 301)).unwrap();
    assert!(fits.facts.made_by.is_some());
    let longer = read_with(log.as_bytes(), &limited(set, 300)).unwrap();
    assert_eq!(longer.facts.made_by, None);
    assert_eq!(longer.facts.fixes, 4);
}

#[test]
fn of_a_stretch_without_an_end_only_the_ends_are_kept_and_no_byte_is_lost() {
    let set: Set = |l, v| l.line_bytes = v;
    let zeros = "\0".repeat(100_000);
    for log in [
        csv(3) + &zeros + "\n2026-05-01T12:00:03Z,52,5\n",
        nmea(3) + &zeros + "\n" + &nmea(5),
        gpx(&(points(3) + &zeros + &points(5))),
    ] {
        let file = read_with(log.as_bytes(), &limited(set, 500)).unwrap();
        assert!(file.facts.fixes >= 4, "{:?}", file.facts);
        assert_eq!(file.facts.bytes, log.len() as u64);
        let notice = file
            .facts
            .notices
            .iter()
            .find(|notice| notice.said.code() == "LineCut");
        let said = &notice.unwrap().said;
        assert!(
            matches!(
                said,
                Said::LineCut {
                    bytes: 500..,
                    limit: 500
                }
            ),
            "{said:?}"
        );
        // The same log under the usual limit: the same fixes, the same places.
        let whole = read_with(log.as_bytes(), &ReadOptions::default()).unwrap();
        assert_eq!(format!("{:?}", whole.trace), format!("{:?}", file.trace));
        let ends = |file: &LogFile| -> Vec<(u64, u64)> {
            let places = file.facts.places.iter();
            places.map(|place| (place.byte_start, place.byte_end)).collect()
        };
        assert_eq!(ends(&whole), ends(&file));
    }
    // In UTF-16 characters stay whole.
    let wide: Vec<u8> = (csv(3) + &"x".repeat(100_000) + "\n2026-05-01T12:00:03Z,52,5\n")
        .encode_utf16()
        .flat_map(u16::to_le_bytes)
        .collect();
    let file = read_with(&wide, &limited(set, 500)).unwrap();
    assert_eq!(file.facts.fixes, 4);
    assert_eq!(file.facts.bytes, wide.len() as u64);
}

/// Returns its bytes a few at a time, interrupted again and again.
struct Slow<'a>(&'a [u8], bool);

impl Read for Slow<'_> {
    fn read(&mut self, buffer: &mut [u8]) -> std::io::Result<usize> {
        self.1 = !self.1;
        if self.1 {
            return Err(std::io::ErrorKind::Interrupted.into());
        }
        let count = buffer.len().min(self.0.len()).min(7);
        buffer[..count].copy_from_slice(&self.0[..count]);
        self.0 = &self.0[count..];
        Ok(count)
    }
}

#[test]
fn a_log_that_comes_in_small_interrupted_pieces_is_the_same_log() {
    for log in [csv(50).into_bytes(), gzip(csv(50).as_bytes())] {
        let whole = read_log("log", &log[..], &ReadOptions::default()).unwrap();
        let pieces = read_log("log", Slow(&log, false), &ReadOptions::default()).unwrap();
        hold(&pieces);
        assert_eq!(format!("{:?}", pieces.trace), format!("{:?}", whole.trace));
        assert_eq!(pieces.facts, whole.facts);
    }
}

#[test]
fn a_read_error_midway_says_at_which_byte() {
    struct Broken(usize);
    impl Read for Broken {
        fn read(&mut self, buffer: &mut [u8]) -> std::io::Result<usize> {
            let count = self.0.min(buffer.len());
            if count == 0 {
                return Err(std::io::Error::other("the card was taken out"));
            }
            self.0 -= count;
            let log = csv(100);
            buffer[..count].copy_from_slice(&log.as_bytes()[..count]);
            Ok(count)
        }
    }
    let error = read_log("night.csv", Broken(1000), &ReadOptions::default()).unwrap_err();
    assert_eq!(
        error.to_string(),
        "night.csv: cannot be read past byte 1000: the card was taken out"
    );
    // Inside a compressed log, the card's place is reported, not the unpacker's.
    let packed = gzip(csv(1000).as_bytes());
    let half = packed.len() / 2;
    let broken = (&packed[..half]).chain(Broken(0));
    let error = read_log("night.csv", broken, &ReadOptions::default()).unwrap_err();
    assert_eq!(
        error.to_string(),
        format!("night.csv: cannot be read past byte {half}: the card was taken out")
    );
}

#[test]
fn entities_that_a_document_defines_are_never_replaced() {
    let bomb = "<?xml version=\"1.0\"?>\n<!DOCTYPE gpx [<!ENTITY a \"ha\"><!ENTITY b \"&a;&a;&a;&a;&a;&a;&a;&a;\">\
                <!ENTITY c \"&b;&b;&b;&b;&b;&b;&b;&b;\"><!ENTITY s SYSTEM \"file:///etc/hostname\">]>\n";
    let log = format!(
        "{bomb}{}",
        gpx(&(points(2)
            + "<trkpt lat=\"52\" lon=\"5\"><time>2026-05-01T13:00:00Z</time><ele>&c;</ele><name>&s;</name></trkpt>"))
    )
    .replace("creator=\"x\"", "creator=\"&c;\"");
    let file = read_with(log.as_bytes(), &ReadOptions::default()).unwrap();
    assert_eq!(file.facts.fixes, 3);
    assert_eq!(file.facts.made_by.as_deref(), Some("&c;"));
    let notice = &file.facts.notices[0];
    assert_eq!((&notice.said, notice.line), (&Said::DocumentTypeIgnored {}, 2));
}

#[test]
fn sentences_and_tags_that_never_end_cost_no_more_than_reading_them() {
    // Each of these once cost the square of its length, or could.
    let piece = |text: &str| text.repeat(3_000_000 / text.len());
    for log in [
        piece("!GPRMC,120000,"),
        piece("$GPRMC,120000,\x01"),
        piece("!GPRMC,12\x01"),
        piece("<!>") + "<![",
        piece("<gpx "),
        piece("\""),
        piece("\"a,"),
        piece("<!--"),
        piece("<![CDATA["),
        piece("&"),
        gpx(&piece("<trkpt lat=\"52\" lon=\"5\">")),
        gpx(&piece("<wpt>")),
        gpx(&piece("&")),
        gpx(&piece("<!--<trk")),
        gpx(&piece("<!--<trk-->")),
        gpx(&piece("<![CDATA[<trk")),
        gpx(&piece("<?<trk")),
        gpx(&piece("<!DOCTYPE a [<trk")),
        gpx(&piece("<!x><trk")),
        gpx(&piece("<trk \"")),
        gpx(&piece("<a '<trkpt lat=\"52\" lon=\"5\">")),
        "time,lat,lon\n".to_owned() + &piece("\"\",,\" "),
    ] {
        let start = std::time::Instant::now();
        if let Ok(file) = read_log("log", log.as_bytes(), &ReadOptions::default()) {
            hold(&file);
        }
        let elapsed = start.elapsed();
        // A square of this length takes minutes; a slow machine is given time.
        assert!(elapsed.as_secs() < 10, "{:?} took {elapsed:?}", &log[..30]);
    }
}

/// A limit that is added here does not compile until it is named, and fails until both of its sides are tested.
#[test]
fn every_limit_has_a_test_of_both_of_its_sides() {
    let LimitSettings {
        log_bytes: _,
        unpacked_bytes: _,
        unpacked_ratio: _,
        memory_bytes: _,
        line_bytes: _,
        attribute_bytes: _,
        element_depth: _,
        fixes: _,
        plan_corners: _,
        cells: _,
        extent_m: _,
    } = LimitSettings::default();
    let here = include_str!("limits.rs");
    let plans = include_str!("../../src/plan_file_tests.rs");
    let analyses = include_str!("../../../../tests/hostile.rs");
    for (key, file, test) in [
        ("log_bytes", here, "bytes_of_a_log_as_stored"),
        ("unpacked_bytes", here, "bytes_of_a_log_after_decompression"),
        (
            "unpacked_ratio",
            here,
            "bytes_after_decompression_for_each_stored_byte",
        ),
        ("memory_bytes", here, "memory_for_text_and_fixes"),
        ("line_bytes", here, "bytes_of_a_line"),
        ("attribute_bytes", here, "bytes_of_an_attribute"),
        ("element_depth", here, "nested_elements"),
        ("fixes", here, "fixes"),
        ("plan_corners", plans, "too_many_corners_are_refused"),
        ("plan_corners", analyses, "limits_of_an_analysis_from_both_sides"),
        ("extent_m", analyses, "limits_of_an_analysis_from_both_sides"),
        ("cells", analyses, "the_cell_grows_until_the_lawn_fits_its_limit"),
    ] {
        let body = file.split(&format!("#[test]\nfn {test}() {{")).nth(1);
        let body = body.unwrap_or_else(|| panic!("no test {test}"));
        let body = body.split("#[test]").next().unwrap_or_default();
        assert!(body.contains(key), "{test} does not speak of {key}");
    }
}
