//! A log that ends in the middle loses what comes after the end, and nothing before it.
//!
//! Slow scanners of the raw text, which share no code with the readers, determine which fixes lie before a cut.

use crate::{hold, recordings, unix_s};
use rand::{RngExt, SeedableRng};
use rand_chacha::ChaCha8Rng;
use std::collections::{BTreeMap, HashMap, HashSet};
use tussock_ingest::{IngestError, LogFile, read_log};
use tussock_types::LogFormat;

const SEED: u64 = 20_261_125;
/// Cuts of each recording. Those in its last tenth are as likely as all others together.
const CUTS: usize = 20;
/// The same, if there is time.
const MANY_CUTS: usize = 200;
/// Longer recordings are shortened first, to keep the test short.
const LONGEST: usize = 150_000;

type Key = (i64, u64, u64);

fn key(file: &LogFile, index: usize) -> Key {
    let (lat, lon) = file.trace.positions.pair(index);
    (
        (file.trace.time_s[index] * 1e6).round() as i64,
        lat.to_bits(),
        lon.to_bits(),
    )
}

fn attribute(tag: &str, name: &str) -> Option<f64> {
    let from = tag.find(&format!(" {name}=\""))? + name.len() + 3;
    tag[from..].split('"').next()?.trim().parse().ok()
}

/// Every point that is complete, with the byte at which it ends.
fn points_of_gpx(text: &str) -> HashMap<Key, usize> {
    let mut ends = HashMap::new();
    let mut from = 0;
    while let Some(start) = text[from..].find("<trkpt").map(|n| from + n) {
        let Some(end) = text[start..].find("</trkpt>").map(|n| start + n + 8) else {
            break;
        };
        from = end;
        let point = &text[start..end];
        let time = point
            .find("<time>")
            .and_then(|at| point[at + 6..].split('<').next())
            .filter(|time| time.ends_with('Z'));
        let (Some(lat), Some(lon), Some(time)) = (attribute(point, "lat"), attribute(point, "lon"), time)
        else {
            continue;
        };
        ends.entry(((unix_s(time) * 1e6).round() as i64, lat.to_bits(), lon.to_bits()))
            .or_insert(end);
    }
    ends
}

/// Times of day, in milliseconds, of which every position sentence stands before a byte: that byte.
fn times_of_nmea(bytes: &[u8]) -> BTreeMap<i64, usize> {
    let mut ends = BTreeMap::new();
    let mut from = 0;
    while let Some(at) = bytes[from..].iter().position(|&b| b == b'$').map(|n| from + n) {
        from = at + 1;
        let end = bytes[at..]
            .iter()
            .position(|&b| b == b'\n')
            .map_or(bytes.len(), |n| at + n + 1);
        let text = String::from_utf8_lossy(&bytes[at..end]);
        let fields: Vec<&str> = text.split(',').collect();
        let time = match fields[0].get(3..) {
            Some("GGA" | "RMC" | "GNS") => fields.get(1),
            Some("GLL") => fields.get(5),
            _ => None,
        };
        if let Some(ms) = time.and_then(|time| time_of_day_ms(time)) {
            ends.insert(ms, end);
        }
    }
    ends
}

fn time_of_day_ms(text: &str) -> Option<i64> {
    let (hour, minute, second) = (text.get(0..2)?, text.get(2..4)?, text.get(4..)?);
    let second: f64 = second.parse().ok()?;
    Some(
        (hour.parse::<i64>().ok()? * 3600 + minute.parse::<i64>().ok()? * 60) * 1000
            + (second * 1000.0).round() as i64,
    )
}

fn of_day_ms(time_s: f64) -> i64 {
    (time_s.rem_euclid(86_400.0) * 1000.0).round() as i64
}

fn read(name: &str, bytes: &[u8]) -> Result<LogFile, IngestError> {
    let file = read_log(name, bytes, &recordings::options(name))?;
    hold(&file);
    Ok(file)
}

fn cuts(rng: &mut ChaCha8Rng, count: usize, length: usize) -> Vec<usize> {
    (0..count)
        .map(|number| match number % 2 {
            0 => rng.random_range(length / 10..=length),
            _ => rng.random_range(length - length / 10..=length),
        })
        .collect()
}

#[test]
fn of_a_log_that_is_cut_off_every_fix_before_the_cut_survives() {
    survives(CUTS);
}

#[test]
#[ignore = "two hundred cuts of each recording"]
fn of_a_log_that_is_cut_off_anywhere_every_fix_before_the_cut_survives() {
    survives(MANY_CUTS);
}

fn survives(count_of_cuts: usize) {
    let mut rng = ChaCha8Rng::seed_from_u64(SEED);
    let mut held: BTreeMap<&str, usize> = BTreeMap::new();
    for (name, path) in recordings::vendored() {
        let bytes = std::fs::read(path).unwrap();
        let bytes = &bytes[..bytes.len().min(LONGEST)];
        let Ok(whole) = read(&name, bytes) else { continue };
        let all: Vec<Key> = (0..whole.trace.len()).map(|index| key(&whole, index)).collect();
        for cut in cuts(&mut rng, count_of_cuts, bytes.len()) {
            let part = match read(&name, &bytes[..cut]) {
                Ok(part) => Some(part),
                // The cut may take the only date with it; the error says so, and a date can be given.
                Err(IngestError::NoDate { .. }) => continue,
                // Else there must be nothing to survive, which is held below.
                Err(_) => None,
            };
            let found: HashSet<Key> = part
                .iter()
                .flat_map(|part| (0..part.trace.len()).map(|index| key(part, index)))
                .collect();
            let (kind, count) = match whole.facts.format {
                LogFormat::Gpx => {
                    let ends = points_of_gpx(&String::from_utf8_lossy(bytes));
                    let expected: Vec<&Key> = all
                        .iter()
                        .filter(|key| ends.get(*key).is_some_and(|end| *end <= cut))
                        .collect();
                    for key in &expected {
                        assert!(found.contains(key), "{name} cut at {cut}: {key:?} is lost");
                    }
                    ("gpx", expected.len())
                }
                LogFormat::Nmea => {
                    let ends = times_of_nmea(bytes);
                    let times: HashSet<i64> = part
                        .iter()
                        .flat_map(|part| &part.trace.time_s)
                        .map(|time_s| of_day_ms(*time_s))
                        .collect();
                    let expected: Vec<i64> = whole
                        .trace
                        .time_s
                        .iter()
                        .map(|time_s| of_day_ms(*time_s))
                        .filter(|ms| ends.get(ms).is_some_and(|end| *end <= cut))
                        .collect();
                    for ms in &expected {
                        assert!(
                            times.contains(ms),
                            "{name} cut at {cut}: the fix at {ms} ms of the day is lost"
                        );
                    }
                    ("nmea", expected.len())
                }
                LogFormat::Csv | LogFormat::Pos => {
                    let rows = |bytes: &[u8]| bytes.iter().filter(|&&b| b == b'\n').count();
                    let no_fixes = rows(bytes) + 1 - all.len().min(rows(bytes) + 1);
                    let expected = rows(&bytes[..cut]).saturating_sub(no_fixes);
                    assert!(
                        found.len() >= expected,
                        "{name} cut at {cut}: {} of {expected} fixes",
                        found.len()
                    );
                    ("csv", expected)
                }
                // Pairs of lists: their own tests cut them off.
                LogFormat::Kml | LogFormat::MfJson | LogFormat::GpsdJson => continue,
            };
            *held.entry(kind).or_default() += count;
            // Only the fix that was being written may differ; nothing is invented. (A date that comes late dates what
            // precedes it, so only the times of day of sentences are compared.)
            if whole.facts.format != LogFormat::Nmea {
                let made_up = found.iter().filter(|key| !all.contains(key)).count();
                assert!(
                    made_up <= 1,
                    "{name} cut at {cut}: {made_up} fixes are not in the whole log"
                );
            }
        }
    }
    // The test cannot run empty unnoticed.
    for (kind, least) in [("gpx", 50_000), ("nmea", 20_000), ("csv", 50_000)] {
        assert!(held.get(kind).is_some_and(|count| *count > least), "{held:?}");
    }
}
