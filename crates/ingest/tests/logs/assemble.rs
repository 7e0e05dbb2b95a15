//! Several files: from one machine, from two, and repeated.

use crate::{hold_trace, read};
use tussock_ingest::{Assembled, IngestError, LogFile, assemble};
use tussock_types::{FixQuality, Said, SkipReason};

/// A log with one fix a second, starting at a given second, at a latitude that follows the second.
fn log(name: &str, seconds: std::ops::Range<usize>, east_deg: f64) -> LogFile {
    let rows: String = seconds
        .map(|s| {
            let (hour, minute, second) = (8 + s / 3600, s / 60 % 60, s % 60);
            format!(
                "2026-05-01T{hour:02}:{minute:02}:{second:02}Z,{:.7},{:.7},4\n",
                52.0 + s as f64 * 1e-6,
                5.0 + east_deg
            )
        })
        .collect();
    let mut file = read(format!("time,lat,lon,quality\n{rows}"));
    file.facts.name = name.into();
    file
}

fn together(files: Vec<LogFile>) -> Assembled {
    let names: Vec<String> = files.iter().map(|file| file.facts.name.clone()).collect();
    let assembled = assemble(files).unwrap_or_else(|error| panic!("{error}"));
    assert_eq!(
        assembled
            .inputs
            .iter()
            .map(|facts| facts.name.clone())
            .collect::<Vec<_>>(),
        names
    );
    assembled.traces.iter().for_each(hold_trace);
    let fixes: u64 = assembled.inputs.iter().map(|facts| facts.fixes).sum();
    assert_eq!(
        fixes,
        assembled
            .traces
            .iter()
            .map(|trace| trace.len() as u64)
            .sum::<u64>()
    );
    assembled
}

#[test]
fn files_of_one_machine_make_one_trace_whatever_their_order() {
    let all = together(vec![
        log("c", 400..600, 0.0),
        log("a", 0..200, 0.0),
        log("b", 200..400, 0.0),
    ]);
    assert_eq!(all.traces.len(), 1);
    assert_eq!(all.traces[0].len(), 600);
    assert_eq!(all.traces[0].machine, "machine-1");
    assert!(all.inputs.iter().all(|facts| facts.machine == "machine-1"));
    // Each goes on within the usual period of the one before.
    assert_eq!(all.traces[0].segment[599], 0);
}

#[test]
fn a_file_after_a_gap_begins_a_new_segment() {
    let all = together(vec![log("a", 0..200, 0.0), log("b", 300..400, 0.0)]);
    assert_eq!(all.traces[0].segment[199], 0);
    assert_eq!(all.traces[0].segment[200], 1);
}

#[test]
fn the_same_time_at_different_places_is_two_machines_in_the_order_given() {
    let all = together(vec![
        log("late", 100..300, 0.001),
        log("early", 0..300, 0.0),
        log("later", 300..400, 0.001),
    ]);
    assert_eq!(all.traces.len(), 2);
    assert_eq!(all.traces[0].positions.pair(0).1, 5.001);
    assert_eq!(all.traces[0].len(), 300);
    let machines: Vec<&str> = all.inputs.iter().map(|facts| &facts.machine[..]).collect();
    assert_eq!(machines[..2], ["machine-1", "machine-2"]);
}

#[test]
fn a_few_decimetres_apart_is_one_machine() {
    let all = together(vec![log("a", 0..200, 0.0), log("b", 100..300, 4e-6)]);
    assert_eq!(all.traces.len(), 1);
    assert_eq!(all.traces[0].len(), 300);
}

#[test]
fn overlapping_fixes_collapse_and_are_counted() {
    let all = together(vec![log("a", 0..200, 0.0), log("b", 150..300, 0.0)]);
    assert_eq!(all.traces[0].len(), 300);
    assert_eq!(all.inputs[1].fixes, 100);
    assert_eq!(all.inputs[1].skipped[&SkipReason::DuplicateTime], 50);
    assert!(
        all.inputs[1]
            .notices
            .iter()
            .any(|notice| notice.said.code() == "OverlapsAnotherLog")
    );
    assert_eq!(all.traces[0].quality[299], FixQuality::RtkFixed);
    assert_eq!(all.traces[0].segment[299], 0);
}

#[test]
fn a_log_is_named_without_its_folders() {
    let options = tussock_ingest::ReadOptions::default();
    let text = "time,lat,lon\n2026-05-01T08:00:00Z,52.0,5.0\n2026-05-01T08:00:01Z,52.0,5.0\n";
    for name in [
        "/gardens/a customer/night.csv",
        "gardens\\a customer\\night.csv",
        "night.csv",
    ] {
        let read = tussock_ingest::read_log(name, text.as_bytes(), &options)
            .unwrap_or_else(|error| panic!("{error}"));
        assert_eq!(read.facts.name, "night.csv");
    }
}

#[test]
fn the_same_log_under_two_names_is_read_once() {
    let all = together(vec![log("a", 0..200, 0.0), log("b", 0..200, 0.0)]);
    assert_eq!(all.traces.len(), 1);
    assert_eq!(all.traces[0].len(), 200);
    let again = &all.inputs[1];
    assert_eq!((again.fixes, again.bytes_used), (0, 0));
    assert_eq!(again.skipped[&SkipReason::SameLogTwice], 200);
    assert_eq!(again.skipped_bytes[&SkipReason::SameLogTwice], again.bytes);
    assert_eq!(again.machine, "machine-1");
    let log = "a".to_owned();
    assert_eq!(again.notices[0].said, Said::SameLogTwice { log });
}

#[test]
fn the_same_outing_in_two_formats_is_one_machine_told_twice() {
    let csv = log("a.csv", 0..100, 0.0);
    let points: String = (0..100)
        .map(|s| {
            format!(
                "<trkpt lat=\"{:.7}\" lon=\"5.0\"><time>2026-05-01T08:{:02}:{:02}Z</time></trkpt>",
                52.0 + s as f64 * 1e-6,
                s / 60,
                s % 60
            )
        })
        .collect();
    let mut gpx = read(format!("<gpx><trk><trkseg>{points}</trkseg></trk></gpx>"));
    gpx.facts.name = "a.gpx".into();
    let all = together(vec![csv, gpx]);
    assert_eq!(all.traces.len(), 1);
    assert_eq!(all.traces[0].len(), 100);
}

#[test]
fn rough_positions_need_more_distance_to_be_two_machines() {
    let rough = |name: &str, east_deg: f64| {
        let rows: String = (0..200)
            .map(|s| {
                format!(
                    "2026-05-01T08:{:02}:{:02}Z,52,{:.7},1,4.0\n",
                    s / 60,
                    s % 60,
                    5.0 + east_deg
                )
            })
            .collect();
        let mut file = read(format!("time,lat,lon,quality,hdop\n{rows}"));
        file.facts.name = name.into();
        file
    };
    // 12 m apart at HDOP 4 may be one machine; 60 m may not.
    assert_eq!(
        together(vec![rough("a", 0.0), rough("b", 0.000_175)])
            .traces
            .len(),
        1
    );
    assert_eq!(
        together(vec![rough("a", 0.0), rough("b", 0.000_875)])
            .traces
            .len(),
        2
    );
}

#[test]
fn local_metres_and_latitude_do_not_mix() {
    let mut local = read("time_s,x_m,y_m\n1,0,0\n2,0,1\n");
    local.facts.name = "survey".into();
    let error = assemble(vec![log("night", 0..10, 0.0), local]).unwrap_err();
    assert!(matches!(error, IngestError::MixedPositions { .. }));
    assert_eq!(
        error.to_string(),
        "survey is in local metres and night in latitude and longitude, expected one kind for all logs"
    );
}

#[test]
fn nothing_makes_nothing() {
    assert_eq!(together(Vec::new()).traces.len(), 0);
}
