//! Nothing that can be in a file makes a reader panic or lose count of its bytes.

use crate::{hold, recordings};
use proptest::prelude::*;
use rand::{RngExt, SeedableRng};
use rand_chacha::ChaCha8Rng;
use tussock_ingest::{ReadOptions, read_log};

const SEED: u64 = 20_260_502;
/// Longer recordings are shortened first, to keep the test short.
const LONGEST: usize = 40_000;

fn try_to_read(bytes: &[u8]) {
    for columns in [None, Some("time=#1,lat=#2,lon=#3")] {
        let options = ReadOptions {
            columns: columns.and_then(|c| c.parse().ok()),
            ..ReadOptions::default()
        };
        match read_log("log", bytes, &options) {
            Ok(file) => hold(&file),
            Err(error) => assert!(!error.to_string().is_empty()),
        }
    }
}

#[test]
fn recordings_cut_off_anywhere_are_read() {
    let mut rng = ChaCha8Rng::seed_from_u64(SEED);
    for (_, path) in recordings::vendored() {
        let bytes = std::fs::read(path).unwrap();
        let bytes = &bytes[..bytes.len().min(LONGEST)];
        for _ in 0..200 {
            try_to_read(&bytes[..rng.random_range(0..=bytes.len())]);
        }
    }
}

#[test]
fn recordings_with_flipped_bytes_are_read() {
    let mut rng = ChaCha8Rng::seed_from_u64(SEED);
    for (_, path) in recordings::vendored() {
        let bytes = std::fs::read(path).unwrap();
        let bytes = &bytes[..bytes.len().min(LONGEST)];
        for _ in 0..40 {
            let mut bytes = bytes.to_vec();
            for _ in 0..rng.random_range(1..60) {
                let at = rng.random_range(0..bytes.len());
                bytes[at] = match rng.random_range(0..4) {
                    0 => rng.random(),
                    1 => b"<>&\"'/$!*,;\n\r\0"[rng.random_range(0..14)],
                    2 => rng.random_range(b'0'..=b'9'),
                    _ => bytes[at] ^ 1 << rng.random_range(0..8),
                };
            }
            try_to_read(&bytes);
        }
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(400))]

    #[test]
    fn any_bytes_are_read_or_refused(bytes in proptest::collection::vec(any::<u8>(), 0..400)) {
        try_to_read(&bytes);
    }

    #[test]
    fn pieces_of_logs_in_any_order_are_read_or_refused(
        pieces in proptest::collection::vec(proptest::sample::select(vec![
            "<gpx>", "</gpx>", "<trk>", "<trkseg>", "</trkseg>", "</trk>", "<trkpt lat=\"52\" lon=\"5\">", "</trkpt>",
            "<time>2026-05-01T12:00:00Z</time>", "<time>", "</time>", "<!--", "-->", "<![CDATA[", "]]>", "&", "<wpt lat=\"1\" lon=\"2\">",
            "</wpt>", "<rte>", "</rte>", "<extensions>", "</extensions>", "<a b='", "'>", "\"", "\n", "\0", "\u{feff}", "x",
            "$GPRMC,120000,A,5200.0,N,00500.0,E,1,9,010526,,,A", "$GPGGA,120001,5200.0,N,00500.0,E,1,08,0.9,1.0,M,,M,,\r\n",
            "$GPZDA,120001,01,05,2026,00,00\r\n", "*47", "$", "!", "time,lat,lon\n", "2026-05-01T12:00:00Z,52,5\n", ",", ";",
        ]), 0..60)
    ) {
        try_to_read(pieces.concat().as_bytes());
    }
}
