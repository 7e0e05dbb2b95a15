//! Nothing on the first day breaks it: odd plans, logs, clocks and settings, each garden tried with everything that the library
//! does, and some of them by the command. What is odd, and what must hold, stands in `fuzz/src`; a fuzz target runs the same.

#[allow(
    unreachable_pub,
    dead_code,
    reason = "the same file is the library of the fuzz targets"
)]
#[path = "../fuzz/src/bodies.rs"]
mod bodies;

#[allow(
    dead_code,
    unused_imports,
    unused_macros,
    reason = "shared with the tests of the command"
)]
mod support;

use arbitrary::Unstructured;
use bodies::analysis::{Tally, tally};
use bodies::odd::invent;
use rand::{Rng, RngExt, SeedableRng};
use rand_chacha::ChaCha8Rng;
use support::Folder;

const SEED: u64 = 20_261_129;
/// Gardens in a plain run, and in a long one.
const FEW: u64 = 60;
/// Gardens that the command gets, from their files.
const BY_COMMAND: u64 = 8;
const MANY: u64 = 5_000;
/// What the process may hold at most, all that ran before included.
const MOST_BYTES: u64 = 500 << 20;

/// Bytes of a garden: the stream of its number.
fn garden(number: u64) -> Vec<u8> {
    let mut rng = ChaCha8Rng::seed_from_u64(SEED);
    rng.set_stream(number);
    let mut bytes = vec![0; rng.random_range(20..160)];
    rng.fill_bytes(&mut bytes);
    bytes
}

/// The most that this process held; `None` where nobody counts it.
fn peak_bytes() -> Option<u64> {
    let status = std::fs::read_to_string("/proc/self/status").ok()?;
    let line = status.lines().find_map(|line| line.strip_prefix("VmHWM:"))?;
    Some(line.split_whitespace().next()?.parse::<u64>().ok()? * 1024)
}

#[allow(clippy::print_stdout, reason = "long runs say how far they are")]
fn many(numbers: std::ops::Range<u64>) {
    let (mut sum, mut broken) = (Tally::default(), Vec::new());
    let mut most_bytes = peak_bytes();
    let count = numbers.end - numbers.start;
    for number in numbers {
        if number % 250 == 0 && number > 0 {
            println!("{number}: {sum:?}");
        }
        match std::panic::catch_unwind(|| tally(&garden(number))) {
            Ok(tally) => sum.add(tally),
            Err(_) => broken.push(number),
        }
        if peak_bytes() > most_bytes.map(|bytes| bytes + MOST_BYTES / 10) {
            most_bytes = peak_bytes();
            println!("garden {number} took the peak to {most_bytes:?} bytes");
        }
    }
    println!("{count} gardens: {sum:?}, at most {:?} bytes", peak_bytes());
    assert!(broken.is_empty(), "gardens {broken:?} broke, see above");
    // A generator whose gardens are all refused would find nothing.
    assert!(u64::from(sum.analysed) * 3 > count, "{sum:?}");
    for part in [sum.refused, sum.compared, sum.drawn, sum.aligned, sum.nights] {
        assert!(u64::from(part) * 40 > count, "{sum:?}");
    }
    assert!(
        peak_bytes().is_none_or(|bytes| bytes <= MOST_BYTES),
        "{:?}",
        peak_bytes()
    );
}

#[test]
fn odd_gardens_are_answered_or_refused_with_a_word() {
    many(0..FEW);
}

#[test]
#[ignore = "takes an hour: tests/run --full"]
fn five_thousand_odd_gardens_are_answered_or_refused_with_a_word() {
    many(FEW..FEW + MANY);
}

#[test]
fn the_command_answers_odd_gardens_or_ends_with_a_word() {
    for number in 0..BY_COMMAND {
        let (odd, _) =
            invent(&mut Unstructured::new(&garden(number))).expect("bytes that have run out are zeros");
        let folder = Folder::new();
        let mut logs = String::new();
        for (name, log) in &odd.logs {
            folder.write(name, log);
            folder.write(&format!("gardens/odd/{name}"), log);
            logs = format!("{logs} {name}");
        }
        let mut plan = "";
        if let Some(text) = &odd.plan {
            folder.write("plan.geojson", text);
            folder.write("gardens/odd/plan.geojson", text);
            plan = "--plan plan.geojson";
        }
        folder.write("settings.toml", &odd.settings);
        folder.write("gardens/odd/settings.toml", &odd.settings);
        let (first, last) = (&odd.logs[0].0, &odd.logs[odd.logs.len() - 1].0);
        for line in [
            format!("inspect{logs} {plan}"),
            format!("analyse{logs} {plan} --settings settings.toml --no-suggestions --out answer"),
            format!("compare --before {first} --after {last} {plan} --settings settings.toml"),
            "plan check plan.geojson".to_owned(),
            format!("plan align plan.geojson{logs} --out aligned.geojson"),
            format!("plan from-trace{logs} --out drawn.geojson"),
            "batch run gardens --store store --no-suggestions".to_owned(),
            "batch report --store store".to_owned(),
        ] {
            let ran = folder.tussock(&line);
            assert!(matches!(ran.code, Some(0..=2)), "{line}: {ran}\n{}", odd.said);
            assert!(!ran.stderr.contains("panicked"), "{line}: {ran}\n{}", odd.said);
            assert!(
                ran.code == Some(0) || !ran.stderr.is_empty() || !ran.stdout.is_empty(),
                "{line}"
            );
        }
    }
}
