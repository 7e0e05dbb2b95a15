//! GPX: what real files do to a reader.

use crate::{noticed, read, refuse, skipped, unix_s};
use tussock_ingest::IngestError;
use tussock_types::{FixQuality, SkipReason};

fn gpx(inside: &str) -> String {
    format!(
        "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<gpx version=\"1.1\" creator=\"a logger\" \
         xmlns=\"http://www.topografix.com/GPX/1/1\">\n{inside}\n</gpx>\n"
    )
}

fn track(points: &str) -> String {
    gpx(&format!("<trk><trkseg>{points}</trkseg></trk>"))
}

fn point(second: usize) -> String {
    point_with(second, "")
}

fn point_with(second: usize, children: &str) -> String {
    format!(
        "<trkpt lat=\"52.{second:06}\" lon=\"5.0\"><ele>1.5</ele><time>2026-05-01T12:{:02}:{:02}Z</time>{children}</trkpt>",
        second / 60,
        second % 60
    )
}

fn timed(time: &str) -> String {
    format!("<trkpt lat=\"52.1\" lon=\"5.0\"><time>{time}</time></trkpt>")
}

#[test]
fn points_in_order_become_a_trace_and_every_byte_is_used() {
    let file = read(track(&(0..50).map(point).collect::<String>()));
    assert_eq!(file.trace.len(), 50);
    assert_eq!(file.facts.bytes_used, file.facts.bytes);
    assert_eq!(file.facts.made_by.as_deref(), Some("a logger"));
    assert_eq!(file.trace.time_s[0], unix_s("2026-05-01T12:00:00Z"));
    assert_eq!(file.trace.height_msl_m[7], 1.5);
    assert!(file.facts.notices.is_empty());
}

#[test]
fn names_are_read_without_their_prefix() {
    let log = "<g:gpx xmlns:g=\"http://www.topografix.com/GPX/1/1\" creator='x'><g:trk><g:trkseg><g:trkpt lon='5' lat='52'>\
               <g:time>2026-05-01T12:00:00Z</g:time></g:trkpt></g:trkseg></g:trk></g:gpx>";
    assert_eq!(read(log).trace.positions.pair(0), (52.0, 5.0));
}

#[test]
fn the_order_of_children_does_not_matter() {
    let log = track(
        "<trkpt lon=\"5\" lat=\"52\"><hdop>0.7</hdop><time>2026-05-01T12:00:00Z</time><ele>3</ele><sat>9</sat></trkpt>",
    );
    let fix = read(log).trace.fix(0);
    assert_eq!((fix.hdop, fix.height_msl_m, fix.satellites), (0.7, 3.0, 9));
}

#[test]
fn speed_course_and_accuracy_come_from_extensions_of_any_namespace() {
    for (open, close, prefix) in [
        ("<extensions>", "</extensions>", ""),
        (
            "<extensions><gpxtpx:TrackPointExtension>",
            "</gpxtpx:TrackPointExtension></extensions>",
            "gpxtpx:",
        ),
        ("<extensions><a:b><a:c>", "</a:c></a:b></extensions>", "q:"),
        ("<extensions><a:b xmlns:a=\"urn:x\">", "</a:b></extensions>", "a:"),
    ] {
        let inside = format!(
            "{open}<{prefix}speed>0.41</{prefix}speed><{prefix}course>271.5</{prefix}course><{prefix}accuracy>3.0192</{prefix}accuracy>\
             <{prefix}hdop>0.9</{prefix}hdop><{prefix}time>ignored</{prefix}time>{close}"
        );
        let file = read(track(&point_with(0, &inside)));
        let fix = file.trace.fix(0);
        assert_eq!(
            (fix.speed_mps, fix.course_deg, fix.hdop),
            (0.41, 271.5, 0.9),
            "{open}"
        );
        assert!((fix.claimed_sd_m - 2.0).abs() < 1e-6);
    }
}

#[test]
fn gpx_1_0_speed_and_course_stand_in_the_point() {
    let file = read(track(&point_with(0, "<course>90</course><speed>0.5</speed>")));
    assert_eq!((file.trace.course_deg[0], file.trace.speed_mps[0]), (90.0, 0.5));
}

#[test]
fn the_kind_of_fix_is_known_and_an_unknown_word_says_nothing() {
    for (word, quality) in [
        ("2d", FixQuality::Autonomous),
        ("3d", FixQuality::Autonomous),
        ("3D", FixQuality::Autonomous),
        ("dgps", FixQuality::Differential),
        ("pps", FixQuality::Precise),
        ("rtk", FixQuality::RtkFixed),
        ("float", FixQuality::RtkFloat),
        ("something_else", FixQuality::Unknown),
    ] {
        assert_eq!(
            read(track(&point_with(0, &format!("<fix>{word}</fix>"))))
                .trace
                .quality,
            [quality],
            "{word}"
        );
    }
    let file = read(track(&(point(0) + &point_with(1, "<fix>none</fix>"))));
    assert_eq!((file.trace.len(), skipped(&file, SkipReason::NoFix)), (1, 1));
}

#[test]
fn a_faulty_point_costs_that_point_and_is_located() {
    for (bad, reason) in [
        (
            "<trkpt lat=\"52.1\"><time>2026-05-01T12:00:01Z</time></trkpt>",
            SkipReason::Malformed,
        ),
        (
            "<trkpt lat=\"abc\" lon=\"5\"><time>2026-05-01T12:00:01Z</time></trkpt>",
            SkipReason::Malformed,
        ),
        (
            "<trkpt lat=\"52,1\" lon=\"5\"><time>2026-05-01T12:00:01Z</time></trkpt>",
            SkipReason::Malformed,
        ),
        (
            "<trkpt lat=\"NaN\" lon=\"5\"><time>2026-05-01T12:00:01Z</time></trkpt>",
            SkipReason::NotFinite,
        ),
        (
            "<trkpt lat=\"inf\" lon=\"5\"><time>2026-05-01T12:00:01Z</time></trkpt>",
            SkipReason::NotFinite,
        ),
        (
            "<trkpt lat=\"90.0000001\" lon=\"5\"><time>2026-05-01T12:00:01Z</time></trkpt>",
            SkipReason::OutOfRange,
        ),
        (
            "<trkpt lat=\"52\" lon=\"-180.5\"><time>2026-05-01T12:00:01Z</time></trkpt>",
            SkipReason::OutOfRange,
        ),
        (
            "<trkpt lat=\"0\" lon=\"0.0\"><time>2026-05-01T12:00:01Z</time></trkpt>",
            SkipReason::NullIsland,
        ),
        (
            "<trkpt lat=\"90\" lon=\"0.0\"><time>2026-05-01T12:00:01Z</time></trkpt>",
            SkipReason::Pole,
        ),
        ("<trkpt lat=\"52\" lon=\"5\"/>", SkipReason::NoTime),
        (
            "<trkpt lat=\"52\" lon=\"5\"><time>  </time></trkpt>",
            SkipReason::NoTime,
        ),
        (
            "<trkpt lat=\"52\" lon=\"5\"><time>noon</time></trkpt>",
            SkipReason::Malformed,
        ),
        (
            "<trkpt lat=\"52\" lon=\"5\"><time>1901-12-13T20:45:52Z</time></trkpt>",
            SkipReason::OutOfRange,
        ),
        (
            "<trkpt lat=\"52\" lon=\"5\"><time>1980-01-06T00:00:00Z</time></trkpt>",
            SkipReason::OutOfRange,
        ),
    ] {
        let log = track(&format!("\n{}\n{bad}\n{}", point(0), point(2)));
        let file = read(&log);
        assert_eq!(file.trace.len(), 2, "{bad}");
        let place = &file.facts.places[0];
        assert_eq!((place.reason, place.line, place.count), (reason, 5, 1), "{bad}");
        assert_eq!(&log[place.byte_start as usize..place.byte_end as usize], bad);
    }
}

#[test]
fn longitude_180_is_a_place() {
    let file = read(track(
        "<trkpt lat=\"-17\" lon=\"180\"><time>2026-05-01T12:00:01Z</time></trkpt>",
    ));
    assert_eq!(file.trace.positions.pair(0), (-17.0, 180.0));
}

#[test]
fn times_are_read_with_offset_with_fraction_and_with_a_leap_second() {
    for (text, same) in [
        ("2026-05-01T14:00:00.25+02:00", "2026-05-01T12:00:00.25Z"),
        ("2026-05-01 12:00:00Z", "2026-05-01T12:00:00Z"),
        ("2016-12-31T23:59:60Z", "2017-01-01T00:00:00Z"),
        ("2026-05-01T12:00:00.1234567Z", "2026-05-01T12:00:00.123456Z"),
    ] {
        assert!(
            (read(track(&timed(text))).trace.time_s[0] - unix_s(same)).abs() < 1e-6,
            "{text}"
        );
    }
}

#[test]
fn a_time_without_zone_is_taken_as_utc_and_said_once() {
    let file = read(track(
        &("\n".to_string() + &timed("2026-05-01T12:00:00") + &timed("2026-05-01T12:00:01.000000")),
    ));
    assert_eq!(file.trace.time_s[0], unix_s("2026-05-01T12:00:00Z"));
    let notices: Vec<_> = file
        .facts
        .notices
        .iter()
        .filter(|notice| notice.said.code() == "TimeWithoutZone")
        .collect();
    assert_eq!(notices.len(), 1);
    assert_eq!(notices[0].line, 4);
}

#[test]
fn the_night_on_which_clocks_go_back_is_no_step_back() {
    let file = read(track(
        &(timed("2026-10-25T02:59:59+02:00") + &timed("2026-10-25T02:00:00+01:00")),
    ));
    assert_eq!(file.trace.time_s[1] - file.trace.time_s[0], 1.0);
}

#[test]
fn of_two_points_at_one_time_the_better_stays() {
    let file = read(track(
        &(point_with(0, "<fix>3d</fix>")
            + &point_with(0, "<fix>dgps</fix>")
            + &point_with(0, "<fix>2d</fix>")),
    ));
    assert_eq!(file.trace.quality, [FixQuality::Differential]);
    assert_eq!(skipped(&file, SkipReason::DuplicateTime), 2);
}

#[test]
fn a_new_segment_or_track_is_a_new_segment_and_an_empty_one_is_not() {
    let file = read(gpx(&format!(
        "<trk><trkseg>{}{}</trkseg><trkseg></trkseg><trkseg>{}</trkseg></trk><trk/><trk><trkseg/><trkseg>{}</trkseg></trk>",
        point(0),
        point(1),
        point(2),
        point(3)
    )));
    assert_eq!(file.trace.segment, [0, 0, 1, 2]);
}

#[test]
fn tracks_out_of_order_are_sorted() {
    let part = |from: usize, to: usize| {
        format!(
            "<trk><trkseg>{}</trkseg></trk>",
            (from..to).map(point).collect::<String>()
        )
    };
    let file = read(gpx(&(part(40, 60) + &part(0, 20) + &part(20, 40))));
    assert_eq!(file.trace.len(), 60);
    assert_eq!(file.trace.segment[19], 0);
    assert_eq!(file.trace.segment[20], 1);
    assert_eq!(file.trace.segment[59], 2);
    assert_eq!(file.facts.bytes_used, file.facts.bytes);
}

#[test]
fn a_track_with_the_newest_point_first_is_turned_round() {
    let file = read(track(&(0..50).rev().map(point).collect::<String>()));
    assert_eq!(file.trace.len(), 50);
    assert!(noticed(&file, "NewestFirst"));
}

#[test]
fn waypoints_and_routes_are_no_positions_of_a_machine() {
    let route =
        "<rte><name>r</name><rtept lat=\"1\" lon=\"2\"><time>2026-05-01T12:00:00Z</time></rtept></rte>";
    let waypoint = "<wpt lat=\"1\" lon=\"2\"><time>2026-05-01T12:00:00Z</time></wpt>";
    let file = read(gpx(&format!(
        "{waypoint}\n{route}\n<trk><trkseg>{}</trkseg></trk>{waypoint}",
        point(0)
    )));
    assert_eq!(file.trace.len(), 1);
    assert_eq!(skipped(&file, SkipReason::NotAPosition), 4);
    assert_eq!(file.facts.faults(), 0);
    let error = refuse(gpx(&format!("{waypoint}{route}")));
    assert!(
        error.to_string().contains("0 tracks, 1 waypoints, 1 routes"),
        "{error}"
    );
}

#[test]
fn a_track_without_any_time_is_refused_as_such() {
    let error = refuse(track(
        "\n<trkpt lat=\"52\" lon=\"5\"/><trkpt lat=\"52\" lon=\"5.1\"/>",
    ));
    assert!(
        matches!(
            error,
            IngestError::NoTimes {
                positions: 2,
                line: 4,
                ..
            }
        ),
        "{error}"
    );
}

#[test]
fn an_empty_track_is_refused_as_such() {
    let error = refuse(gpx("<trk><name>n</name><trkseg></trkseg></trk>"));
    assert!(error.to_string().contains("1 tracks"), "{error}");
}

#[test]
fn comments_cdata_and_entities_do_no_harm() {
    let log = track(
        "<trkpt lat=\"52\" lon=\"5\"><!-- acc:30 --><time><![CDATA[2026-05-01T12:00:00Z]]></time><name>a &amp; b &unknown; & c</name></trkpt>\
         <!-- <trkpt lat=\"1\" lon=\"1\"/> -->",
    );
    assert_eq!(read(log).trace.len(), 1);
}

#[test]
fn an_entity_bomb_stays_text() {
    let log = "<!DOCTYPE gpx [<!ENTITY a \"aaaaaaaaaa\"><!ENTITY b \"&a;&a;&a;&a;\">]><gpx creator=\"&b;\"><trk><name>&b;</name><trkseg>"
        .to_string()
        + &point(0)
        + "</trkseg></trk></gpx>";
    assert_eq!(read(log).trace.len(), 1);
}

#[test]
fn where_the_xml_breaks_what_came_before_is_kept() {
    let log = track(&(0..20).map(point).collect::<String>());
    let whole_point = point(0).len();
    let start = log.find("<trkpt").unwrap();
    for cut in [
        start + 5 * whole_point + 10,
        start + 5 * whole_point + whole_point - 3,
    ] {
        let file = read(&log[..cut]);
        assert_eq!(file.trace.len(), 5);
        assert_eq!(skipped(&file, SkipReason::Truncated), 1);
        assert_eq!(file.facts.places[0].byte_start as usize, start + 5 * whole_point);
        assert_eq!(file.facts.places[0].byte_end as usize, cut);
    }
}

#[test]
fn where_the_xml_breaks_reading_goes_on_at_the_next_point() {
    let log = track(&(0..20).map(point).collect::<String>());
    let start = log.find("<trkpt").unwrap() + 7 * point(0).len();
    for broken in [
        "<trkpt lat=\"52\" lon=\"5\"><!-- never closed",
        "<trkpt lat=\"52\" lon=\"5></trkpt>",
        "<trkpt lat=\"52\" lon=\"5\"><name a='></name></trkpt>",
        "<trkpt lat=\"52\" lon=\"5\"><![CDATA[</trkpt>",
        "<trkpt lat=\"52\" lon=\"5\"><?trkpt>",
        "<trkpt lat=\"52\" lon=\"5\"><!DOCTYPE a [</trkpt>",
        "<trkpt lat=\"52\" lon=\"5\"><!time></trkpt>",
        "<trkpt lat=\"52\" lon=\"5\"><",
    ] {
        let file = read(log.replacen(&point(7), broken, 1));
        assert_eq!(file.trace.len(), 19, "{broken}");
        let place = &file.facts.places[0];
        assert_eq!(
            (place.reason, place.count),
            (SkipReason::Malformed, 1),
            "{broken}"
        );
        assert_eq!(place.byte_start as usize, start, "{broken}");
        assert_eq!(place.byte_end as usize, start + broken.len(), "{broken}");
        // Behind the last point there is nothing to go on at.
        let file = read(log.replacen(&point(19), broken, 1));
        assert_eq!(file.trace.len(), 19, "{broken}");
        assert_eq!(file.facts.faults(), 1, "{broken}");
    }
}

#[test]
fn a_segment_that_begins_behind_broken_markup_begins() {
    let log = track(&format!("{}<!never</trkseg><trkseg>{}", point(0), point(1)));
    let file = read(&log);
    assert_eq!((file.trace.len(), file.trace.segment[1]), (2, 1));
}

#[test]
fn points_that_somebody_took_out_stay_out() {
    let log = track(&format!(
        "{}<!-- {}{} -->{}<!-- x -->",
        point(0),
        point(1),
        point(2),
        point(3)
    ));
    assert_eq!(read(log).trace.len(), 2);
}

#[test]
fn a_waypoint_or_route_that_never_ends_takes_no_point_along() {
    for open in [
        "<wpt lat=\"52\" lon=\"5\"><name>a</name></wqt>",
        "<rte><rtept lat=\"52\" lon=\"5\"></rte ",
    ] {
        for log in [
            track(&format!("{}{open}{}", point(0), point(1))),
            track(&(point(0) + &point(1))).replace("<trk>", &format!("{open}<trk>")),
        ] {
            let file = read(&log);
            assert_eq!(file.trace.len(), 2, "{log}");
            assert_eq!(
                skipped(&file, SkipReason::NotAPosition),
                if open.contains("rtept") { 2 } else { 1 },
                "{log}"
            );
        }
    }
}

#[test]
fn elements_that_never_end_do_not_add_up_to_a_depth() {
    let waypoint = "<wpt lat=\"52\" lon=\"5\"><a><b></wpt>";
    let not_closed = "<trkpt lat=\"52\" lon=\"5\"><a><b>";
    let both = waypoint.repeat(1000) + &not_closed.repeat(1000);
    let file = read(track(&(both + "</trkpt>" + &point(1))));
    assert_eq!(file.trace.len(), 1);
    assert_eq!(skipped(&file, SkipReason::NotAPosition), 1000);
    assert_eq!(skipped(&file, SkipReason::Malformed), 999);
}

#[test]
fn a_document_type_ends_before_the_first_track() {
    let log = "<!DOCTYPE gpx [<!ENTITY a \"b\" ]>".to_owned()
        + &track(&(point_with(0, "<cmt><![CDATA[a]]></cmt>") + &point(1)));
    assert_eq!(read(log).trace.len(), 2);
}

#[test]
fn a_log_whose_root_is_damaged_is_still_told_by_its_points() {
    let log = track(&(0..5).map(point).collect::<String>());
    let from = log.find("<trk>").unwrap();
    for head in [
        "<gpx!version=\"1.1\">",
        "",
        "<qpx>",
        "<?xml version=\"1.0\"?<gpx>",
        "rest of a sector",
    ] {
        assert_eq!(read(head.to_owned() + &log[from..]).trace.len(), 5, "{head}");
    }
}

#[test]
fn marks_of_byte_order_before_the_text_are_counted() {
    let log = "\u{feff}\u{feff}\u{feff}".to_owned() + &track(&(point(0) + "<trkpt/>" + &point(1)));
    let file = read(&log);
    assert_eq!(file.trace.len(), 2);
    let place = &file.facts.places[file.facts.places.len() - 1];
    assert_eq!(
        &log[place.byte_start as usize..place.byte_end as usize],
        "<trkpt/>"
    );
}

#[test]
fn a_logger_that_was_switched_off_leaves_no_fault_behind() {
    let log = track(&(0..5).map(point).collect::<String>());
    let file = read(log.split("</trkseg>").next().unwrap_or_default());
    assert_eq!((file.trace.len(), file.facts.faults()), (5, 0));
    assert!(noticed(&file, "FileNotClosed"));
}

#[test]
fn a_point_that_is_never_closed_costs_that_point() {
    let file = read(track(&format!(
        "{}<trkpt lat=\"52\" lon=\"5\"><time>2026-05-01T12:00:01Z</time>{}",
        point(0),
        point(2)
    )));
    assert_eq!((file.trace.len(), skipped(&file, SkipReason::Malformed)), (2, 1));
}

#[test]
fn wrong_end_tags_do_no_harm() {
    let log = track(&(0..4).map(point).collect::<String>()).replace(
        "</ele><time>2026-05-01T12:00:01Z",
        "</elle><time>2026-05-01T12:00:01Z",
    );
    assert_eq!(read(log).trace.len(), 4);
}

#[test]
fn two_files_written_one_after_the_other_are_read_both() {
    let file = read(track(&point(0)) + &track(&point(1)));
    assert_eq!((file.trace.len(), file.trace.segment[1]), (2, 1));
}

#[test]
fn rubbish_round_the_document_is_skipped() {
    let file = read(track(&point(0)) + "\0\0\0\0");
    assert_eq!(file.facts.skipped_bytes[&SkipReason::NotOfTheFormat], 4);
    let file = read("logger 1.2 started\n".to_string() + &track(&point(0)));
    assert_eq!(file.trace.len(), 1);
}

fn utf16(text: &str, big_endian: bool, with_mark: bool) -> Vec<u8> {
    let mark = with_mark.then_some(0xfeff_u16);
    mark.into_iter()
        .chain(text.encode_utf16())
        .flat_map(|unit| {
            if big_endian {
                unit.to_be_bytes()
            } else {
                unit.to_le_bytes()
            }
        })
        .collect()
}

#[test]
fn utf_8_with_mark_utf_16_and_latin_1_are_read() {
    let log = track(&(point(0) + "<trkpt lat=\"0\" lon=\"0\"/>" + &point(1)))
        .replace("a logger", "L\u{f6}gger \u{1f33f}");
    let plain = read(&log);
    assert_eq!(plain.facts.made_by.as_deref(), Some("L\u{f6}gger \u{1f33f}"));
    let marked = read("\u{feff}".to_string() + &log);
    assert_eq!(format!("{:?}", marked.trace), format!("{:?}", plain.trace));
    assert_eq!(
        marked.facts.places[0].byte_start,
        plain.facts.places[0].byte_start + 3
    );
    for (big_endian, with_mark) in [(false, true), (false, false), (true, true), (true, false)] {
        let bytes = utf16(&log, big_endian, with_mark);
        let file = read(&bytes);
        assert_eq!(format!("{:?}", file.trace), format!("{:?}", plain.trace));
        assert_eq!(file.facts.made_by, plain.facts.made_by);
        // The place is one of the file's own bytes.
        let place = &file.facts.places[0];
        let inside = &bytes[place.byte_start as usize..place.byte_end as usize];
        assert_eq!(inside, utf16("<trkpt lat=\"0\" lon=\"0\"/>", big_endian, false));
    }
    let latin = log.replace("UTF-8", "ISO-8859-1").replace(" \u{1f33f}", "");
    let bytes: Vec<u8> = latin
        .chars()
        .map(|c| u8::try_from(u32::from(c)).unwrap_or(b'?'))
        .collect();
    let file = read(&bytes);
    assert_eq!(format!("{:?}", file.trace), format!("{:?}", plain.trace));
    assert_eq!(file.facts.made_by.as_deref(), Some("L\u{f6}gger"));
}

#[test]
fn coordinates_from_binary_numbers_do_not_pretend_to_a_resolution() {
    let file = read(track(
        "<trkpt lat=\"37.24173816852271556854248046875\" lon=\"5\"><time>2026-05-01T12:00:00Z</time></trkpt>",
    ));
    assert_eq!(file.facts.resolution_m, None);
    let file = read(track(&timed("2026-05-01T12:00:00Z")));
    assert_eq!(file.facts.resolution_m, Some(11_112.0));
}

#[test]
fn one_step_of_just_1024_weeks_between_points_is_repaired() {
    let file = read(track(
        &(timed("2006-09-15T12:00:00Z") + &timed("2026-05-01T12:00:01Z")),
    ));
    assert_eq!(file.trace.time_s[0], unix_s("2026-05-01T12:00:00Z"));
    assert!(noticed(&file, "WeekRolloverRepaired"));
}
