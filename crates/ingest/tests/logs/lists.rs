//! Formats that list times and positions separately, and reports of gpsd.

use crate::{noticed, read, refuse, skipped, unix_s, workspace};
use tussock_ingest::IngestError;
use tussock_types::{FixQuality, LogFormat, SkipReason};

const SECONDS: usize = 6;

fn when(second: usize) -> String {
    format!("<when>2026-05-01T12:00:0{second}Z</when>\n")
}

fn coord(second: usize) -> String {
    format!("<gx:coord>5.000{second} 52.000{second} 12.5</gx:coord>\n")
}

fn kml(inside: &str) -> String {
    format!(
        "<?xml version=\"1.0\"?>\n<kml xmlns=\"http://www.opengis.net/kml/2.2\" xmlns:gx=\"http://www.google.com/kml/ext/2.2\">\n<Document>{inside}</Document></kml>\n"
    )
}

fn track(inside: &str) -> String {
    kml(&format!("<Placemark><gx:Track>\n{inside}</gx:Track></Placemark>"))
}

fn each(of: impl Fn(usize) -> String) -> String {
    (0..SECONDS).map(of).collect()
}

/// All six fixes, in their places.
fn is_whole(log: &str) {
    let file = read(log);
    assert_eq!((file.trace.len(), file.facts.faults()), (SECONDS, 0), "{log}");
    for second in 0..SECONDS {
        let fix = file.trace.fix(second);
        let place = (52.0 + second as f64 / 1e4, 5.0 + second as f64 / 1e4);
        assert_eq!(fix.time_s, unix_s(&format!("2026-05-01T12:00:0{second}Z")));
        assert!((fix.first - place.0).abs() < 1e-12 && (fix.second - place.1).abs() < 1e-12);
        assert_eq!(fix.height_msl_m, 12.5);
    }
    assert_eq!(file.facts.bytes_used, file.facts.bytes);
    assert!((file.facts.resolution_m.unwrap() - 11.112).abs() < 1e-9);
}

#[test]
fn a_track_lists_times_and_positions_in_any_order() {
    for inside in [
        each(when) + &each(coord),
        each(|second| when(second) + &coord(second)),
        each(coord) + &each(when),
        each(|second| coord(second) + &when(second)),
    ] {
        is_whole(&track(&inside));
    }
    // KML 2.3 has tracks of its own, without a prefix.
    is_whole(&track(&(each(when) + &each(coord))).replace("gx:", ""));
}

#[test]
fn placemarks_with_a_time_stamp_and_a_point_are_fixes() {
    let placemark = |second: usize| {
        format!(
            "<Placemark><TimeStamp>{}</TimeStamp><Point><coordinates>5.000{second},52.000{second},12.5</coordinates></Point></Placemark>",
            when(second)
        )
    };
    is_whole(&kml(&each(placemark)));
    let with_place = kml(&(each(placemark)
        + "<Placemark><name>station</name><Point><coordinates>5.1,52.1</coordinates></Point></Placemark>"));
    let file = read(with_place);
    assert_eq!(
        (file.trace.len(), skipped(&file, SkipReason::NotAPosition)),
        (SECONDS, 1)
    );
}

#[test]
fn lines_without_times_are_no_log() {
    let error = refuse(kml(
        "<Placemark><LineString><coordinates>5.1,52.1,0 5.2,52.2,0\n5.3,52.3,0</coordinates></LineString></Placemark>",
    ));
    assert!(
        matches!(
            error,
            IngestError::NoTimes {
                positions: 3,
                line: 3,
                ..
            }
        ),
        "{error}"
    );
}

#[test]
fn a_lost_time_shifts_no_other() {
    // Alternating: the position without a time is left out, and only that one.
    let file = read(track(&each(|second| {
        if second == 2 {
            coord(2)
        } else {
            when(second) + &coord(second)
        }
    })));
    assert_eq!(
        (file.trace.len(), skipped(&file, SkipReason::NoTime)),
        (SECONDS - 1, 1)
    );
    assert_eq!(file.trace.positions.pair(2).0, 52.0003);
    // In lists: nobody can say which one is lost.
    let other = track(&(each(when) + &each(coord)));
    let lost = each(|second| if second == 2 { String::new() } else { when(second) }) + &each(coord);
    let file = read(other.replace("</Document>", &format!("<gx:Track>{lost}</gx:Track></Document>")));
    assert_eq!(
        (file.trace.len(), skipped(&file, SkipReason::NoTime)),
        (SECONDS, SECONDS as u64)
    );
    assert!(noticed(&file, "TimesDoNotFit"));
}

#[test]
fn a_faulty_position_or_time_costs_that_fix() {
    let whole = track(&(each(when) + &each(coord)));
    for (from, to, reason) in [
        ("5.0002 52.0002", "5.0002 north", SkipReason::Malformed),
        ("5.0002 52.0002", "5.0002 95", SkipReason::OutOfRange),
        ("5.0002 52.0002", "0 0", SkipReason::NullIsland),
        ("12:00:02Z", "noon", SkipReason::Malformed),
        (
            "2026-05-01T12:00:02Z",
            "1970-01-01T12:00:02Z",
            SkipReason::OutOfRange,
        ),
    ] {
        let file = read(whole.replace(from, to));
        assert_eq!(
            (file.trace.len(), skipped(&file, reason)),
            (SECONDS - 1, 1),
            "{to}"
        );
    }
}

#[test]
fn a_track_that_is_cut_off_or_broken_keeps_what_it_holds() {
    let whole = track(&(each(when) + &each(coord)));
    let cut = whole.find("5.0004").unwrap();
    let file = read(&whole[..cut]);
    assert_eq!(file.trace.len(), 4);
    assert!(skipped(&file, SkipReason::Truncated) > 0 && noticed(&file, "FileNotClosed"));
    // A missing quote swallows the time after it, and so all of two lists.
    let turns = track(&each(|second| when(second) + &coord(second)));
    let file = read(turns.replacen("<gx:coord>5.0002", "<gx:coord a=\">5.0002", 1));
    assert_eq!(
        (file.trace.len(), skipped(&file, SkipReason::Malformed)),
        (SECONDS - 1, 1)
    );
}

#[test]
fn a_broken_list_of_times_is_not_paired_by_its_head() {
    let lists = each(when) + &each(coord);
    let broken = lists.replacen(
        "<when>2026-05-01T12:00:02Z</when>",
        "<when a=\">2026-05-01T12:00:02Z</when>",
        1,
    );
    let sound = format!("<Placemark><gx:Track>{lists}</gx:Track></Placemark></Document>");
    let file = read(track(&broken).replace("</Document>", &sound));
    assert_eq!(
        (file.trace.len(), noticed(&file, "TimesDoNotFit")),
        (SECONDS, true)
    );
    let file = read(track(&lists.replacen("5.0002", "5.0&#48;02", 1)));
    assert_eq!(
        (file.trace.len(), skipped(&file, SkipReason::Malformed)),
        (SECONDS - 1, 1)
    );
}

fn moving_point(times: &str, places: &str) -> String {
    format!(
        "{{\"type\":\"MovingPoint\",\"datetimes\":[{times}],\"coordinates\":[{places}],\"interpolation\":\"Linear\"}}"
    )
}

fn times() -> String {
    each(|second| format!("\"2026-05-01T12:00:0{second}Z\","))
        .trim_end_matches(',')
        .to_owned()
}

fn places() -> String {
    each(|second| format!("[5.000{second}, 52.000{second}, 12.5],"))
        .trim_end_matches(',')
        .to_owned()
}

#[test]
fn moving_points_are_read_wherever_they_stand() {
    let point = moving_point(&times(), &places());
    let millis = each(|second| format!("{},", 1_777_636_800_000_u64 + 1000 * second as u64));
    let (head, tail) = (
        "{\"type\":\"Feature\",\"properties\":{\"name\":\"a \\\"quoted\\\" [name]\"},",
        "}",
    );
    for log in [
        point.clone(),
        moving_point(millis.trim_end_matches(','), &places()),
        format!(
            "{head}\"temporalGeometry\":{point},\"temporalProperties\":[{{\"datetimes\":[{}],\"speed\":[1,2]}}]{tail}",
            times()
        ),
        format!(
            "{{\"type\":\"FeatureCollection\",\"crs\":{{\"properties\":{{\"name\":\"urn:ogc:def:crs:OGC:1.3:CRS84\"}}}},\"features\":[{head}\"temporalGeometry\":{{\"type\":\"MovingGeometryCollection\",\"prisms\":[{point}]}}{tail}]}}"
        ),
        format!(
            "{{\"type\":\"MovingPoint\",\"sequences\":[{{\"coordinates\":[{}],\"datetimes\":[{}]}}]}}",
            places(),
            times()
        ),
        format!(
            "{{\"type\":\"Feature\",\"geometry\":{{\"type\":\"LineString\",\"coordinates\":[{}]}},\"properties\":{{\"datetimes\":[{}]}}}}",
            places(),
            times()
        ),
    ] {
        let file = read(&log);
        assert_eq!(file.trace.len(), SECONDS, "{log}");
        assert_eq!((file.facts.format, file.facts.faults()), (LogFormat::MfJson, 0));
        assert_eq!(file.trace.time_s[3], unix_s("2026-05-01T12:00:03Z"));
        assert_eq!(file.trace.positions.pair(3), (52.0003, 5.0003));
        // White space and line ends mean nothing.
        let spread = log.replace("],", "] ,\n\t");
        assert_eq!(format!("{:?}", read(spread).trace), format!("{:?}", file.trace));
    }
}

#[test]
fn times_of_one_feature_are_never_those_of_another() {
    let first = format!("{{\"temporalProperties\":[{{\"datetimes\":[{}]}}]}}", times());
    let second = format!("{{\"temporalGeometry\":{{\"coordinates\":[{}]}}}}", places());
    let error = refuse(format!("{{\"features\":[{first},{second}]}}"));
    assert!(
        matches!(error, IngestError::NoTimes { positions: 6, .. }),
        "{error}"
    );
}

#[test]
fn moving_points_that_are_damaged_keep_what_is_sound() {
    let log = moving_point(&times(), &places());
    let file = read(&log[..log.find("5.0004").unwrap()]);
    assert_eq!((file.trace.len(), noticed(&file, "FileNotClosed")), (4, true));
    let file = read(log.replace("52.0002", "x52"));
    assert_eq!(
        (file.trace.len(), skipped(&file, SkipReason::Malformed)),
        (SECONDS - 1, 1)
    );
    let error = refuse(log.replace("[5.0002, 52.0002, 12.5],", ""));
    assert!(
        matches!(error, IngestError::NoTimes { positions: 5, .. }),
        "{error}"
    );
    let error = refuse(log.replace("\"type\"", "\"crs\":{\"name\":\"EPSG:28992\"},\"type\"")).to_string();
    assert!(
        error.contains("EPSG:28992") && error.contains("EPSG:4326"),
        "{error}"
    );
    let error = refuse("[".repeat(10_000) + &log);
    assert!(
        matches!(
            error,
            IngestError::Limit {
                key: "element_depth",
                ..
            }
        ),
        "{error}"
    );
}

fn report(second: usize, more: &str) -> String {
    format!(
        "{{\"class\":\"TPV\",\"device\":\"/dev/tty\",\"mode\":3,\"time\":\"2026-05-01T12:00:0{second}.000Z\",\"lat\":52.000{second},\"lon\":5.000{second},\"altMSL\":12.5{more}}}\n"
    )
}

#[test]
fn reports_of_gpsd_are_fixes() {
    let log = "{\"class\":\"VERSION\",\"release\":\"3.25\"}\n".to_owned()
        + &each(|second| report(second, ",\"speed\":0.4,\"track\":271.5,\"status\":3,\"eph\":1.9"));
    let file = read(&log);
    assert_eq!(
        (file.trace.len(), file.facts.format),
        (SECONDS, LogFormat::GpsdJson)
    );
    assert_eq!(
        (skipped(&file, SkipReason::NotAPosition), file.facts.faults()),
        (1, 0)
    );
    let fix = file.trace.fix(2);
    assert_eq!(
        (fix.time_s, fix.first, fix.second),
        (unix_s("2026-05-01T12:00:02Z"), 52.0002, 5.0002)
    );
    assert_eq!(
        (fix.speed_mps, fix.course_deg, fix.height_msl_m),
        (0.4, 271.5, 12.5)
    );
    assert_eq!(
        (fix.quality, fix.claimed_sd_m.is_nan()),
        (FixQuality::RtkFixed, true)
    );
    assert!((file.facts.resolution_m.unwrap() - 11.112).abs() < 1e-9);
    // As older versions wrote times.
    let file = read(log.replace("\"2026-05-01T12:00:02.000Z\"", "1777636802.0"));
    assert_eq!(file.trace.time_s[2], unix_s("2026-05-01T12:00:02Z"));
}

/// gpsd read the same sentences and wrote these reports from them.
#[test]
fn reports_of_gpsd_agree_with_the_sentences_that_it_made_them_of() {
    let recording = |name: &str| {
        let path = workspace().join("fixtures/recordings").join(name);
        read(std::fs::read(path).unwrap()).trace
    };
    let (ours, theirs) = (
        recording("nmea/gpsd/nmea-rtk.log"),
        recording("gpsd/nmea-rtk.json"),
    );
    assert!(
        theirs.len() > 100 && theirs.len() == ours.len(),
        "{} and {}",
        theirs.len(),
        ours.len()
    );
    for index in 0..ours.len() {
        let (one, other) = (ours.fix(index), theirs.fix(index));
        assert!((one.time_s - other.time_s).abs() < 1e-3);
        assert!(
            (one.first - other.first).abs() < 1e-9 && (one.second - other.second).abs() < 1e-9,
            "{index}"
        );
        assert!((one.speed_mps - other.speed_mps).abs() < 1e-3 || one.speed_mps.is_nan());
        assert_eq!(one.height_msl_m, other.height_msl_m);
        assert_eq!(one.quality, other.quality, "{index}");
    }
}

#[test]
fn a_faulty_report_costs_that_report() {
    for (from, to, reason) in [
        ("\"mode\":3", "\"mode\":1", SkipReason::NoFix),
        ("\"lat\":52.0003,", "", SkipReason::NoFix),
        ("\"time\":\"2026-05-01T12:00:03.000Z\",", "", SkipReason::NoTime),
        ("2026-05-01T12:00:03.000Z", "2137 422922", SkipReason::Malformed),
        (
            "2026-05-01T12:00:03.000Z",
            "1970-01-01T00:00:03Z",
            SkipReason::OutOfRange,
        ),
        ("52.0003", "north", SkipReason::Malformed),
        ("52.0003", "99", SkipReason::OutOfRange),
        ("{\"class\":\"TPV\"", "gpsd died", SkipReason::NotOfTheFormat),
    ] {
        let bad = report(3, "").replacen(from, to, 1);
        let file = read(each(|second| {
            if second == 3 {
                bad.clone()
            } else {
                report(second, "")
            }
        }));
        assert_eq!(
            (file.trace.len(), skipped(&file, reason)),
            (SECONDS - 1, 1),
            "{to}"
        );
        assert_eq!(file.facts.places[0].line, 4);
    }
    let log = each(|second| report(second, ""));
    let file = read(&log[..log.len() - 20]);
    assert_eq!(
        (file.trace.len(), skipped(&file, SkipReason::Truncated)),
        (SECONDS - 1, 1)
    );
    let fix = read(report(0, ",\"speed\":1e308")).trace.fix(0);
    assert!(fix.speed_mps.is_nan());
}
