//! Which files are written, and what private ones do not reveal.

use crate::garden::{bare_findings, findings, full_findings, hostile_findings, local_findings};
use tussock_report::{
    Output, Privacy, Voice, answer, answer_inspection, from_json, left_out, outputs, redact,
};
use tussock_types::Said;

fn names(outputs: &[Output]) -> Vec<&'static str> {
    outputs.iter().map(|output| output.name).collect()
}

#[test]
fn the_files_follow_from_what_is_known() {
    let full = outputs(&findings(), Privacy::Full, Voice::default()).unwrap();
    assert_eq!(
        names(&full),
        [
            "findings.json",
            "findings.geojson",
            "report.html",
            "map.png",
            "cells.parquet",
            "legs.parquet",
            "pockets.gpx"
        ]
    );
    assert!(left_out(&findings(), Privacy::Full, Voice::default()).is_empty());
    let private = outputs(&findings(), Privacy::Private, Voice::default()).unwrap();
    assert_eq!(
        names(&private),
        [
            "findings.json",
            "report.html",
            "map.png",
            "cells.parquet",
            "legs.parquet"
        ]
    );
    let local = outputs(&local_findings(), Privacy::Full, Voice::default()).unwrap();
    assert_eq!(
        names(&local),
        [
            "findings.json",
            "report.html",
            "map.png",
            "cells.parquet",
            "legs.parquet"
        ]
    );
    let bare = outputs(&bare_findings(), Privacy::Full, Voice::default()).unwrap();
    assert_eq!(names(&bare), ["findings.json", "report.html", "map.png"]);
    for (findings, privacy) in [
        (local_findings(), Privacy::Full),
        (bare_findings(), Privacy::Full),
    ] {
        let written = names(&outputs(&findings, privacy, Voice::default()).unwrap());
        for (name, reason) in left_out(&findings, privacy, Voice::default()) {
            assert!(!written.contains(&name) && !reason.is_empty());
        }
        assert_eq!(
            written.len() + left_out(&findings, privacy, Voice::default()).len(),
            7
        );
    }
}

#[test]
fn the_same_findings_give_the_same_bytes() {
    assert!(
        outputs(&full_findings(), Privacy::Full, Voice::default()).unwrap()
            == outputs(&full_findings(), Privacy::Full, Voice::default()).unwrap()
    );
}

/// Unpacks what a reader could unpack: the text of JSON and HTML, the bytes of the rest.
fn holds(bytes: &[u8], needle: &str) -> bool {
    bytes
        .windows(needle.len())
        .any(|window| window.eq_ignore_ascii_case(needle.as_bytes()))
}

#[test]
fn private_files_tell_neither_place_nor_names_nor_dates_nor_digests() {
    let mut sample = full_findings();
    // What could slip through in sentences.
    let fault = |text: &str| Said::PlanFault {
        fault: text.to_owned(),
    };
    sample.missed_pockets[0].why = fault(
        "Beside the lily pond at 54.5233766 since 2026-06-01T23:10:00Z, says field logger 7 of Fennmoor House.",
    );
    sample
        .log_verdict
        .remarks
        .push(fault("night-0601.nmea stops at 02:14:07 on 1/6/2026"));
    sample.cautions.push(fault("The Orchard lawn slopes."));
    sample.inputs[0].facts.machine = "Bertha".to_owned();
    sample.machines[0].id = "Bertha".to_owned();
    let installation = sample.installation.as_mut().unwrap();
    let tell = "Bertha came round the old pear tree of Fennmoor House on 2026-06-02 at 54.5234";
    installation.hours.as_mut().unwrap().said = fault(tell);
    installation.lower_cut.as_mut().unwrap().said = fault(tell);
    installation.turf.as_mut().unwrap().said = fault(tell);
    let fit = sample.fit.as_mut().unwrap();
    fit.said = fault(tell);
    sample.stuck_spots[0].why = fault("Bertha stands under the old pear tree.");
    let needles = [
        "54.523",
        "54.52",
        "3.2176",
        "3.217",
        "5431.4",
        "2026-06",
        "/2026",
        "02:14",
        "22:10",
        "00:10",
        "Fennmoor",
        "Gate code",
        "night-0601",
        "field logger",
        "9f86d081",
        "Orchard",
        "lily pond",
        "tool shed",
        "pear tree",
        "plum tree",
        "Bertha",
        "$GPGGA",
        "1780351800",
    ];
    let private = outputs(&sample, Privacy::Private, Voice::default()).unwrap();
    for output in &private {
        for needle in needles {
            assert!(!holds(&output.bytes, needle), "{} holds {needle}", output.name);
        }
    }
    let said = answer(&redact(&sample).unwrap(), Default::default());
    for needle in needles {
        assert!(!holds(said.as_bytes(), needle), "the answer holds {needle}");
    }
    // The needles are real: the full files contain each of them somewhere.
    let full = outputs(&sample, Privacy::Full, Voice::default()).unwrap();
    for needle in needles
        .iter()
        .filter(|needle| !["02:14", "00:10"].contains(needle))
    {
        assert!(full.iter().any(|output| holds(&output.bytes, needle)), "{needle}");
    }
}

#[test]
fn redacting_keeps_every_figure_in_metres_and_seconds() {
    let sample = full_findings();
    let private = redact(&sample).unwrap();
    assert_eq!(
        private.coverage.as_ref().unwrap().visited_m2,
        sample.coverage.as_ref().unwrap().visited_m2
    );
    assert_eq!(
        private.missed_pockets[0].outline,
        sample.missed_pockets[0].outline
    );
    assert_eq!(
        private.missed_pockets[0].tape[1].distance_m,
        sample.missed_pockets[0].tape[1].distance_m
    );
    assert_eq!(private.missed_pockets[0].tape[1].from, "the station");
    assert_eq!(
        private.missed_pockets[0].tape[0].from,
        "the obstacle-1's south-east corner"
    );
    assert_eq!(private.span.driving_s, sample.span.driving_s);
    assert_eq!(private.lawn_outline, sample.lawn_outline);
    assert_eq!(
        redact(&private).unwrap().missed_pockets,
        private.missed_pockets,
        "nothing is left to take out"
    );
}

#[test]
fn private_json_is_read_back() {
    let private = outputs(&full_findings(), Privacy::Private, Voice::default()).unwrap();
    let back = from_json(&private[0].bytes).unwrap();
    assert_eq!(back.frame.origin_lat, None);
    assert_eq!(back.plan, None);
}

#[test]
fn hostile_names_stop_no_output() {
    assert_eq!(
        outputs(&hostile_findings(), Privacy::Full, Voice::default())
            .unwrap()
            .len(),
        7
    );
    assert_eq!(
        outputs(&hostile_findings(), Privacy::Private, Voice::default())
            .unwrap()
            .len(),
        5
    );
    let look = crate::garden::inspection();
    assert!(!answer_inspection(&look, Default::default()).is_empty());
}

#[test]
fn a_night_on_3000_square_metres_stays_small_enough_to_send() {
    for sample in [full_findings(), crate::garden::crowded_findings()] {
        for output in outputs(&sample, Privacy::Full, Voice::default()).unwrap() {
            println!("{}: {} bytes", output.name, output.bytes.len());
            if output.name == "report.html" {
                assert!(output.bytes.len() <= 1_500_000);
            }
        }
    }
}
