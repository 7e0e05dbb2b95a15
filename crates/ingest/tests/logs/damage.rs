//! Damage in the middle of a log loses what is damaged, and nothing else.

use crate::{read, sentence};
use rand::seq::SliceRandom;
use rand::{RngExt, SeedableRng};
use rand_chacha::ChaCha8Rng;
use std::collections::HashSet;
use tussock_ingest::LogFile;

const SEED: u64 = 20_261_126;
const ROWS: usize = 600;

/// Rows that differ in time and place, one a second.
fn csv_rows() -> Vec<String> {
    (0..ROWS)
        .map(|row| {
            format!(
                "2026-05-01T12:{:02}:{:02}Z,52.{:06},5.{:06}\n",
                row / 60,
                row % 60,
                row * 7,
                row * 11
            )
        })
        .collect()
}

fn csv(rows: &[String]) -> String {
    "time,lat,lon\n".to_owned() + &rows.concat()
}

fn nmea_rows() -> Vec<String> {
    (0..ROWS)
        .map(|row| {
            sentence(&format!(
                "GPRMC,12{:02}{:02}.00,A,5200.{:04},N,00500.{:04},E,1.0,9.0,010526,,,A",
                row / 60,
                row % 60,
                row * 7,
                row * 11
            ))
        })
        .collect()
}

fn gpx_rows() -> Vec<String> {
    (0..ROWS)
        .map(|row| {
            format!(
                "<trkpt lat=\"52.{:06}\" lon=\"5.{:06}\"><time>2026-05-01T12:{:02}:{:02}Z</time></trkpt>\n",
                row * 7,
                row * 11,
                row / 60,
                row % 60
            )
        })
        .collect()
}

fn gpx(rows: &[String]) -> String {
    format!("<gpx><trk><trkseg>\n{}</trkseg></trk></gpx>", rows.concat())
}

fn fixes(file: &LogFile) -> HashSet<(i64, u64, u64)> {
    (0..file.trace.len())
        .map(|index| {
            let (lat_deg, lon_deg) = file.trace.positions.pair(index);
            (
                (file.trace.time_s[index] * 1e3).round() as i64,
                lat_deg.to_bits(),
                lon_deg.to_bits(),
            )
        })
        .collect()
}

/// As loggers and programs write it: a head with everything that may precede a track, segments, extensions, remarks.
fn gpx_with_everything(rows: &[String]) -> String {
    let points: String =
        rows.iter()
            .enumerate()
            .map(|(row, point)| {
                let point = match row % 3 {
                0 => point.clone(),
                1 => point.replace(
                    "<time>",
                    "<ele>12.5</ele><extensions><x:a at=\"1\"><x:hdop>0.9</x:hdop></x:a></extensions><time>",
                ),
                _ => point.replace("</time>", "</time><accuracy>1.5</accuracy><cmt><![CDATA[a > b]]></cmt>"),
            };
                match row % 100 {
                    40 => point + "<!-- a remark -->\n",
                    70 => point + "<?x a segment ends?>\n</trkseg>\n<trkseg>\n",
                    _ => point,
                }
            })
            .collect();
    format!(
        "<?xml version=\"1.0\"?>\n<!DOCTYPE gpx [<!ENTITY a \"b\">]>\n<gpx version=\"1.1\" creator=\"x\">\n\
         <!-- made by hand --><metadata><name><![CDATA[front & back]]></name></metadata>\n\
         <wpt lat=\"52.1\" lon=\"5.1\"><name>gate</name></wpt>\n\
         <rte><name>way</name><rtept lat=\"52.1\" lon=\"5.1\"></rtept><rtept lat=\"52.2\" lon=\"5.1\"/></rte>\n\
         <trk><name>lawn</name><trkseg>\n{points}</trkseg></trk></gpx>\n"
    )
}

#[test]
fn one_flipped_bit_costs_a_fix_or_two_and_a_checksum_lets_none_of_them_in() {
    let mut rng = ChaCha8Rng::seed_from_u64(SEED);
    let (csv, nmea, gpx) = (csv(&csv_rows()), nmea_rows().concat(), gpx(&gpx_rows()));
    let all = gpx_with_everything(&gpx_rows());
    for (log, first, flips) in [(&csv, 13, 400), (&nmea, 0, 400), (&gpx, 0, 3000), (&all, 0, 3000)] {
        let whole = fixes(&read(log));
        assert_eq!(whole.len(), ROWS);
        let (mut lost, mut changed) = (0, 0);
        for _ in 0..flips {
            let mut bytes = log.as_bytes().to_vec();
            let at = rng.random_range(first..bytes.len());
            bytes[at] ^= 1 << rng.random_range(0..8);
            let found = fixes(&read(&bytes));
            let missing = whole.difference(&found).count();
            // A missing line end joins two rows, and whatever opens in one point loses at most the next one too.
            assert!(
                missing <= 2,
                "byte {at}: {missing} fixes are lost, near {:?}",
                String::from_utf8_lossy(&bytes[at.saturating_sub(20)..(at + 20).min(bytes.len())])
            );
            lost += usize::from(missing > 0);
            changed += found.difference(&whole).count();
        }
        assert!(lost * 8 > flips, "only {lost} of {flips} flips hit a fix");
        if log.starts_with('$') {
            // One bit never leaves an exclusive or as it was.
            assert_eq!(changed, 0);
        }
    }
}

#[test]
fn every_bit_of_what_stands_before_and_between_the_points_may_flip() {
    let rows = gpx_rows();
    // Two points before everything that may be between segments, and two after it.
    let log = gpx_with_everything(&rows[38..73]);
    let whole = fixes(&read(&log));
    assert_eq!(whole.len(), 35);
    for at in 0..log.len() {
        for bit in 0..8 {
            let mut bytes = log.as_bytes().to_vec();
            bytes[at] ^= 1 << bit;
            let found = fixes(&read(&bytes));
            let missing = whole.difference(&found).count();
            assert!(
                missing <= 2,
                "bit {bit} of byte {at}: {missing} fixes are lost, near {:?}",
                String::from_utf8_lossy(&bytes[at.saturating_sub(20)..(at + 20).min(bytes.len())])
            );
        }
    }
}

#[test]
fn a_thousand_flipped_bits_cost_about_a_thousand_fixes_and_never_the_whole_log() {
    let mut rng = ChaCha8Rng::seed_from_u64(SEED);
    let rows: Vec<String> = (0..10)
        .flat_map(|_| gpx_rows())
        .enumerate()
        .map(|(row, point)| {
            // Ten hours of ten minutes each.
            point.replace("T12:", &format!("T{:02}:", 8 + row / ROWS))
        })
        .collect();
    let log = gpx_with_everything(&rows);
    let whole = fixes(&read(&log));
    assert_eq!(whole.len(), 10 * ROWS);
    let mut bytes = log.into_bytes();
    for _ in 0..1000 {
        let at = rng.random_range(400..bytes.len());
        bytes[at] ^= 1 << rng.random_range(0..8);
    }
    let missing = whole.difference(&fixes(&read(&bytes))).count();
    assert!((100..1200).contains(&missing), "{missing} fixes are lost");
}

#[test]
fn shuffled_lines_lose_fixes_but_make_none_up() {
    let mut rng = ChaCha8Rng::seed_from_u64(SEED);
    for (mut rows, name) in [(csv_rows(), "csv"), (nmea_rows(), "nmea"), (gpx_rows(), "gpx")] {
        let log = |rows: &[String]| match name {
            "csv" => csv(rows),
            "nmea" => rows.concat(),
            _ => gpx(rows),
        };
        let whole = fixes(&read(log(&rows)));
        // A few neighbours out of place: only those can be lost.
        let mut few = rows.clone();
        for at in [50, 200, 420] {
            few.swap(at, at + 3);
        }
        let found = fixes(&read(log(&few)));
        assert!(found.is_subset(&whole), "{name}");
        assert!(found.len() >= ROWS - 6, "{name}: {} fixes", found.len());
        // All of them: what is left is in order and was there.
        rows.shuffle(&mut rng);
        let found = fixes(&read(log(&rows)));
        assert!(found.is_subset(&whole), "{name}");
        assert!(found.len() >= 20, "{name}: {} fixes", found.len());
    }
}

#[test]
fn a_clock_that_jumps_costs_the_fixes_that_it_dates_wrongly() {
    // An hour late, for twenty seconds or for five minutes; and set back by a day for a moment.
    let late = |row: &String| row.replace("T12:", "T13:");
    let early = |row: &String| row.replace("2026-05-01", "2026-04-30");
    for (from, to, change) in [
        (100, 120, &late as &dyn Fn(&String) -> String),
        (100, 400, &late),
        (300, 303, &early),
        (0, 3, &early),
    ] {
        let rows: Vec<String> = csv_rows()
            .iter()
            .enumerate()
            .map(|(at, row)| {
                if (from..to).contains(&at) {
                    change(row)
                } else {
                    row.clone()
                }
            })
            .collect();
        let found = read(csv(&rows));
        let good: HashSet<_> = fixes(&read(csv(&csv_rows())));
        let kept = fixes(&found).intersection(&good).count();
        // Every fix with its right time stays.
        assert_eq!(
            kept,
            ROWS - (to - from),
            "{from} to {to}: {:?}",
            found.facts.skipped
        );
    }
}
