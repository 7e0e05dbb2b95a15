//! Used and skipped bytes add up to all bytes, for every recording, whole, damaged, spliced and zipped.

use crate::{hold, recordings};
use rand::{RngExt, SeedableRng};
use rand_chacha::ChaCha8Rng;
use std::io::Write;
use tussock_ingest::{Policy, ReadOptions, read_log};

const SEED: u64 = 20_261_126;
/// Pieces of recordings are at most this long.
const PIECE: usize = 30_000;

/// Reads and adds up the located list; true if there was something to add up.
fn sums_up(name: &str, bytes: &[u8]) -> bool {
    match read_log(name, bytes, &recordings::options(name)) {
        Ok(file) => {
            let listed: u64 = file
                .facts
                .places
                .iter()
                .map(|place| place.byte_end - place.byte_start)
                .sum();
            assert_eq!(file.facts.bytes_used + listed, file.facts.bytes, "{name}");
            assert_eq!(file.facts.bytes, bytes.len() as u64, "{name}");
            hold(&file);
            true
        }
        Err(_) => false,
    }
}

#[test]
fn used_and_skipped_bytes_of_every_recording_are_all_its_bytes() {
    let all = recordings::vendored();
    let read = all
        .iter()
        .filter(|(name, path)| {
            let bytes = std::fs::read(path).unwrap();
            let encoded = matches!(bytes.get(..2), Some([0xff, 0xfe] | [0xfe, 0xff] | [0x1f, 0x8b]));
            assert!(!encoded, "{name}: this test counts bytes as given");
            sums_up(name, &bytes)
        })
        .count();
    assert!(read >= 45, "{read} of {}", all.len());
}

#[test]
fn used_and_skipped_bytes_of_zipped_recordings_are_all_bytes_inside() {
    for (name, path) in recordings::vendored() {
        let bytes = std::fs::read(path).unwrap();
        let bytes = &bytes[..bytes.len().min(PIECE)];
        let mut zip = flate2::write::GzEncoder::new(Vec::new(), flate2::Compression::fast());
        zip.write_all(bytes).unwrap();
        let zipped = zip.finish().unwrap();
        let plain = read_log(&name, bytes, &recordings::options(&name));
        let inside = read_log(&name, &zipped[..], &recordings::options(&name));
        match (plain, inside) {
            (Ok(plain), Ok(inside)) => {
                hold(&inside);
                assert_eq!(inside.facts.places, plain.facts.places, "{name}");
                assert_eq!(inside.facts.bytes, plain.facts.bytes, "{name}");
                assert_eq!(inside.trace.time_s, plain.trace.time_s, "{name}");
            }
            (Err(_), Err(_)) => {}
            (plain, inside) => panic!("{name}: {:?}, zipped {:?}", plain.is_ok(), inside.is_ok()),
        }
    }
}

#[test]
fn used_and_skipped_bytes_of_damaged_recordings_are_all_their_bytes() {
    let mut rng = ChaCha8Rng::seed_from_u64(SEED);
    let all: Vec<(String, Vec<u8>)> = recordings::vendored()
        .into_iter()
        .map(|(name, path)| (name, std::fs::read(path).unwrap()))
        .collect();
    let mut read = 0;
    let mut tried = 0;
    for (name, bytes) in &all {
        let start = rng.random_range(0..=bytes.len().saturating_sub(PIECE));
        let first = &bytes[..bytes.len().min(PIECE)];
        let middle = &bytes[start..bytes.len().min(start + PIECE)];
        for damage in 0..24 {
            let mut log = if damage % 2 == 0 { first } else { middle }.to_vec();
            let (a, b) = (rng.random_range(0..=log.len()), rng.random_range(0..=log.len()));
            let (from, to) = (a.min(b), a.max(b));
            match damage / 2 % 6 {
                // A block is lost, repeated, overwritten with zeros, or out of place.
                0 => drop(log.drain(from..to)),
                1 => log.extend_from_within(from..to),
                2 => log[from..to.min(from + 700)].fill(0),
                3 => log.rotate_left(from),
                // Another log in the middle of it.
                4 => {
                    let (_, other) = &all[rng.random_range(0..all.len())];
                    let piece = other[..other.len().min(2000)].to_vec();
                    log.splice(from..from, piece);
                }
                _ => {
                    for _ in 0..rng.random_range(1..200) {
                        let at = rng.random_range(0..log.len());
                        log[at] = rng.random();
                    }
                }
            }
            tried += 1;
            read += usize::from(sums_up_decoded(name, &log));
        }
    }
    assert!(read * 3 > tried * 2, "only {read} of {tried} were read");
}

/// Like [`sums_up`], if damage may have made the text look like another encoding.
fn sums_up_decoded(name: &str, bytes: &[u8]) -> bool {
    let mut any = false;
    for policy in [Policy::Lenient, Policy::Strict] {
        let options = ReadOptions {
            policy,
            ..recordings::options(name)
        };
        if let Ok(file) = read_log(name, bytes, &options) {
            hold(&file);
            any = true;
        }
    }
    any
}
