//! Damage in the middle of a log costs what is damaged, and nothing else.

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

#[test]
fn one_flipped_bit_costs_a_fix_or_two_and_a_checksum_lets_none_of_them_in() {
    let mut rng = ChaCha8Rng::seed_from_u64(SEED);
    let (csv, nmea, gpx) = (csv(&csv_rows()), nmea_rows().concat(), gpx(&gpx_rows()));
    for (log, first) in [(&csv, 13), (&nmea, 0), (&gpx, 19)] {
        let whole = fixes(&read(log));
        assert_eq!(whole.len(), ROWS);
        let (mut lost, mut changed, mut opened) = (0, 0, 0);
        for _ in 0..400 {
            let mut bytes = log.as_bytes().to_vec();
            let at = rng.random_range(first..bytes.len());
            bytes[at] ^= 1 << rng.random_range(0..8);
            let found = fixes(&read(&bytes));
            let missing = whole.difference(&found).count();
            // A line end that is gone joins two rows; a quote or a bracket that comes up can take the next point along.
            // Known gap: a quote, a remark or an instruction that a flip opens in GPX takes the rest along.
            if log.starts_with('<') && missing > 2 {
                opened += 1;
                continue;
            }
            assert!(
                missing <= 2,
                "byte {at}: {missing} fixes are lost, near {:?}",
                String::from_utf8_lossy(&bytes[at.saturating_sub(20)..(at + 20).min(bytes.len())])
            );
            lost += usize::from(missing > 0);
            changed += found.difference(&whole).count();
        }
        assert!(opened <= 40, "{opened} of 400 flips cost more than two fixes");
        assert!(lost > 50, "only {lost} of 400 flips hit a fix");
        if log.starts_with('$') {
            // One bit never leaves an exclusive or as it was.
            assert_eq!(changed, 0);
        }
    }
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
