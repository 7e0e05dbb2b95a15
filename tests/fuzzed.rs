//! The bodies of the fuzz targets, over their corpora, over mutations of them, and over mutated recordings.
//!
//! Long runs with an engine: `fuzz/run TARGET`. What breaks there becomes a file `regression-...` in the corpus, and is replayed
//! here for ever.

#[allow(
    unreachable_pub,
    dead_code,
    reason = "the same file is the library of the fuzz targets"
)]
#[path = "../fuzz/src/bodies.rs"]
mod bodies;

use bodies::{Body, TARGETS, hold};
use rand::{Rng, RngExt, SeedableRng};
use rand_chacha::ChaCha8Rng;
use std::path::{Path, PathBuf};
use tussock_ingest::{ReadOptions, read_log};

const SEED: u64 = 20_261_126;
/// Mutated logs in a plain run.
const MUTATED_LOGS: usize = 10_000;
/// Recordings longer than this are cut down first, to keep the test short.
const LONGEST: usize = 30_000;
/// No mutated log may cost more than so many times what it cost unmutated.
const MOST_TIMES: u64 = 10;
/// Below this the clock of the scheduler, page faults and the like drown what is measured.
const LEAST_COST_NS: u64 = 400_000;

fn root() -> &'static Path {
    Path::new(env!("CARGO_MANIFEST_DIR"))
}

fn files_below(folder: &Path) -> Vec<PathBuf> {
    let mut found = Vec::new();
    let mut folders = vec![folder.to_path_buf()];
    while let Some(folder) = folders.pop() {
        let entries =
            std::fs::read_dir(&folder).unwrap_or_else(|error| panic!("{}: {error}", folder.display()));
        for entry in entries.flatten() {
            if entry.path().is_dir() {
                folders.push(entry.path());
            } else {
                found.push(entry.path());
            }
        }
    }
    found.sort();
    found
}

fn corpus(target: &str) -> Vec<(PathBuf, Vec<u8>)> {
    let files = files_below(&root().join("fuzz/corpus").join(target));
    let read = |path: PathBuf| {
        std::fs::read(&path)
            .map(|bytes| (path, bytes))
            .expect("it is there")
    };
    files.into_iter().map(read).collect()
}

/// Runs a body and says on which bytes it broke.
fn run(body: Body, data: &[u8], what: &str) {
    let caught = std::panic::catch_unwind(|| body(data));
    assert!(
        caught.is_ok(),
        "{what} broke on {:?}",
        String::from_utf8_lossy(&data[..data.len().min(2000)])
    );
}

/// Changes some bytes, drops, doubles or moves a stretch, or puts in a piece of another file.
fn mutate(rng: &mut ChaCha8Rng, bytes: &mut Vec<u8>, other: &[u8]) {
    const TOKENS: [&[u8]; 16] = [
        b"<",
        b">",
        b"\"",
        b"&",
        b"$",
        b"*",
        b",",
        b";",
        b"\n",
        b"\0",
        b"nan",
        b"1e309",
        b"-0",
        b"99999999999999999999",
        b"</trkpt>",
        b"\xff\xfe",
    ];
    for _ in 0..rng.random_range(1..=4) {
        let length = bytes.len();
        let (a, b) = (rng.random_range(0..=length), rng.random_range(0..=length));
        let (from, to) = (a.min(b), a.max(b).min(a.min(b) + 3000));
        match rng.random_range(0..8) {
            0 => drop(bytes.drain(from..to)),
            1 => bytes.extend_from_within(from..to),
            2 => bytes[from..to].fill(rng.random()),
            3 => bytes.truncate(a),
            4 => {
                let start = rng.random_range(0..=other.len());
                let piece = &other[start..other.len().min(start + 800)];
                bytes.splice(from..from, piece.iter().copied());
            }
            5 => {
                let token = TOKENS[rng.random_range(0..TOKENS.len())];
                bytes.splice(from..from, token.iter().copied());
            }
            _ => {
                for _ in 0..rng.random_range(1..30) {
                    if bytes.is_empty() {
                        break;
                    }
                    let at = rng.random_range(0..bytes.len());
                    bytes[at] = match rng.random_range(0..3) {
                        0 => rng.random(),
                        1 => bytes[at] ^ (1 << rng.random_range(0..8)),
                        _ => rng.random_range(b'0'..=b'9'),
                    };
                }
            }
        }
    }
}

/// Nanoseconds that this thread was on a processor; 0 where nobody counts them.
fn on_processor_ns() -> u64 {
    std::fs::read_to_string("/proc/thread-self/schedstat")
        .ok()
        .and_then(|text| text.split_whitespace().next()?.parse().ok())
        .unwrap_or(0)
}

#[test]
fn every_entry_of_every_corpus_holds() {
    for (target, body) in TARGETS {
        let entries = corpus(target);
        assert!(entries.len() >= 3, "{target} has {} entries", entries.len());
        for (path, bytes) in entries {
            // `fuzz/run` lets the engine read so much: it cuts longer entries, and half a seed is none.
            assert!(bytes.len() <= 20_000, "{} is not small", path.display());
            run(body, &bytes, &path.display().to_string());
        }
    }
}

#[test]
fn mutations_of_every_corpus_hold() {
    let mut rng = ChaCha8Rng::seed_from_u64(SEED);
    // Odd gardens are bytes without a form: `odd_gardens.rs` draws its own.
    for (target, body) in TARGETS.into_iter().filter(|(target, _)| *target != "analysis") {
        let entries = corpus(target);
        for round in 0..400 {
            let mut bytes = entries[rng.random_range(0..entries.len())].1.clone();
            let other = &entries[rng.random_range(0..entries.len())].1;
            mutate(&mut rng, &mut bytes, other);
            run(body, &bytes, &format!("{target}, round {round}"));
        }
    }
}

#[test]
fn logs_built_from_any_bytes_hold() {
    let mut rng = ChaCha8Rng::seed_from_u64(SEED);
    for round in 0..600 {
        let mut bytes = vec![0; rng.random_range(1..3000)];
        rng.fill_bytes(&mut bytes);
        run(
            bodies::gpx_structured,
            &bytes,
            &format!("gpx_structured, round {round}"),
        );
        run(
            bodies::nmea_structured,
            &bytes,
            &format!("nmea_structured, round {round}"),
        );
    }
}

#[test]
fn ten_thousand_mutated_logs_are_read_or_refused_at_the_cost_of_reading_them() {
    let mut rng = ChaCha8Rng::seed_from_u64(SEED);
    let recordings: Vec<(PathBuf, Vec<u8>)> = files_below(&root().join("fixtures/recordings"))
        .into_iter()
        .filter(|path| {
            let name = path.file_name().unwrap_or_default().to_string_lossy();
            !name.starts_with("LICENSE") && !name.ends_with(".md")
        })
        .map(|path| {
            let mut bytes = std::fs::read(&path).expect("it is there");
            bytes.truncate(LONGEST);
            (path, bytes)
        })
        .collect();
    assert!(recordings.len() >= 50);
    let options = ReadOptions {
        date: time::Date::from_ordinal_date(2026, 121).ok(),
        ..ReadOptions::default()
    };
    let cost_of = |bytes: &[u8]| {
        let before_ns = on_processor_ns();
        let read = read_log("log", bytes, &options);
        (on_processor_ns() - before_ns, read)
    };
    let usual_ns: Vec<u64> = recordings
        .iter()
        .map(|(_, bytes)| {
            (0..3)
                .map(|_| cost_of(bytes).0)
                .min()
                .unwrap_or(0)
                .max(LEAST_COST_NS)
        })
        .collect();
    let (mut read, mut worst) = (0, 0.0_f64);
    for number in 0..MUTATED_LOGS {
        let which = number % recordings.len();
        let (path, bytes) = &recordings[which];
        let mut bytes = bytes.clone();
        let other = &recordings[rng.random_range(0..recordings.len())].1;
        mutate(&mut rng, &mut bytes, other);
        let (mut cost_ns, outcome) = cost_of(&bytes);
        match outcome {
            Ok(file) => {
                hold(&file);
                read += 1;
            }
            Err(error) => assert!(!error.to_string().is_empty()),
        }
        if cost_ns > 2 * usual_ns[which] {
            // Page faults or a busy machine may have been counted: of what looks dear, the least of four counts.
            cost_ns = (0..3).map(|_| cost_of(&bytes).0).fold(cost_ns, u64::min);
        }
        worst = worst.max(cost_ns as f64 / usual_ns[which] as f64);
        assert!(
            cost_ns <= MOST_TIMES * usual_ns[which],
            "log {number} from {}: {cost_ns} ns, unmutated {} ns",
            path.display(),
            usual_ns[which]
        );
    }
    println!("{read} of {MUTATED_LOGS} were read, the dearest at {worst:.1} times its unmutated cost");
    assert!(read * 2 > MUTATED_LOGS, "only {read} were read");
}

#[test]
fn every_target_is_built_has_a_corpus_and_stands_in_the_table() {
    let targets: Vec<String> = files_below(&root().join("fuzz/targets"))
        .iter()
        .map(|path| {
            path.file_stem()
                .unwrap_or_default()
                .to_string_lossy()
                .into_owned()
        })
        .collect();
    let mut names: Vec<&str> = TARGETS.iter().map(|(name, _)| *name).collect();
    names.sort_unstable();
    assert_eq!(targets, names);
    let manifest = std::fs::read_to_string(root().join("fuzz/Cargo.toml")).expect("it is there");
    let table = std::fs::read_to_string(root().join("docs/fuzzing.md")).expect("it is there");
    for name in names {
        assert!(
            manifest.contains(&format!("path = \"targets/{name}.rs\"")),
            "{name}"
        );
        let body =
            std::fs::read_to_string(root().join(format!("fuzz/targets/{name}.rs"))).expect("it is there");
        assert!(body.contains(&format!("bodies::{name}(data)")), "{name}");
        assert!(
            table.contains(&format!("| `{name}` |")),
            "{name} is not in docs/fuzzing.md"
        );
    }
}
