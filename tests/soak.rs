//! A long run in one process: memory and open files stay where they are, and the same log gives the same answer at the end.

use std::collections::BTreeMap;
use std::path::Path;
use std::time::{Duration, Instant};
use tussock::types::{LogFacts, Plan, Settings, Trace};
use tussock::{Advice, Job};
use tussock_ingest::{ReadOptions, assemble, read_log, read_plan};

/// How long the long run takes.
const MINUTES: u64 = 20;
/// Memory may be this much more at the end than after the second round: heaps settle, leaks do not.
const MOST_GROWTH_BYTES: u64 = 32 << 20;

/// A garden as it is read again and again.
struct Case {
    name: String,
    log: Vec<u8>,
    plan: Vec<u8>,
}

fn demo() -> Vec<Case> {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("fixtures/demo");
    let read = |name: &str| std::fs::read(folder.join(name)).expect("it is there");
    [
        "before/2026-05-04.gpx.gz",
        "before/2026-05-05.gpx.gz",
        "after/2026-05-11.gpx.gz",
    ]
    .map(|name| Case {
        name: name.to_owned(),
        log: read(name),
        plan: read("plan.geojson"),
    })
    .into()
}

/// Reads, analyses and writes; the digest of what comes out is its text.
fn answer(case: &Case) -> String {
    let settings = Settings {
        machine: tussock::types::MachineSettings {
            cut_width_m: Some(0.22),
            ..Default::default()
        },
        ..Settings::default()
    };
    let file = read_log(&case.name, &case.log[..], &ReadOptions::default()).expect("a log");
    let assembled = assemble(vec![file]).expect("one log");
    let plan = read_plan("plan", &case.plan, &settings.limits)
        .expect("a plan")
        .plan;
    let (traces, inputs): (&[Trace], &[LogFacts]) = (&assembled.traces, &assembled.inputs);
    let plan: Option<&Plan> = Some(&plan);
    let findings = tussock::analyse(&Job {
        traces,
        inputs,
        plan,
        settings: &settings,
        seed: 7,
        advice: Advice::LeftOut,
        progress: None,
    })
    .expect("findings");
    let page = tussock_report::html(&findings, tussock_report::Voice::default()).expect("a page");
    tussock_report::to_json(&findings).expect("JSON") + &page
}

/// Resident bytes and open files of this process; `None` where nobody counts them.
fn held() -> Option<(u64, usize)> {
    let status = std::fs::read_to_string("/proc/self/status").ok()?;
    let line = status.lines().find_map(|line| line.strip_prefix("VmRSS:"))?;
    let bytes = line.split_whitespace().next()?.parse::<u64>().ok()? * 1024;
    let files = std::fs::read_dir("/proc/self/fd").ok()?.count();
    Some((bytes, files))
}

/// Goes round the cases for so long, at least three times.
fn soak(cases: &[Case], least: Duration) {
    let start = Instant::now();
    let mut first: BTreeMap<&str, String> = BTreeMap::new();
    let mut settled = None;
    let mut rounds = 0;
    while rounds < 3 || start.elapsed() < least {
        for case in cases {
            let text = answer(case);
            let known = first.entry(&case.name).or_insert_with(|| text.clone());
            assert!(
                *known == text,
                "{} gives another answer in round {rounds}",
                case.name
            );
        }
        rounds += 1;
        if rounds == 2 {
            settled = held();
        }
    }
    if let (Some((bytes_then, files_then)), Some((bytes_now, files_now))) = (settled, held()) {
        // What a run of twenty minutes is for: its figures, on a terminal.
        #[allow(clippy::print_stdout)]
        {
            println!(
                "{rounds} rounds in {:?}: {:.1} MB after two, {:.1} MB at the end, {files_now} open files",
                start.elapsed(),
                bytes_then as f64 / 1e6,
                bytes_now as f64 / 1e6
            );
        }
        assert_eq!(files_then, files_now, "open files");
        assert!(
            bytes_now < bytes_then + MOST_GROWTH_BYTES,
            "{bytes_then} bytes grew to {bytes_now}"
        );
    }
}

#[test]
fn a_few_rounds_give_the_same_answer_in_the_same_memory() {
    soak(&demo()[..1], Duration::ZERO);
}

#[test]
#[ignore = "takes twenty minutes"]
fn twenty_minutes_give_the_same_answers_in_the_same_memory() {
    soak(&demo(), Duration::from_secs(60 * MINUTES));
}
