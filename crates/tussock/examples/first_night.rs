//! The first nights of a garden: is the log good enough, what was missed, why, what to change?
//!
//! `cargo run --release -p tussock --example first_night` reads the bundled demo; `first_night PLAN SETTINGS LOG...` reads
//! yours.
#![allow(clippy::print_stdout)]

use std::error::Error;
use std::fs::{self, File};
use tussock::types::LogLevel;
use tussock::{Job, Survey, analyse_survey, inspect};
use tussock_ingest::{ReadOptions, assemble, read_log, read_plan, read_settings};

const DEMO: &str = concat!(env!("CARGO_MANIFEST_DIR"), "/../../fixtures/demo");

fn main() -> Result<(), Box<dyn Error>> {
    let given: Vec<String> = std::env::args().skip(1).collect();
    let demo = [
        "plan.geojson",
        "settings.toml",
        "before/2026-05-04.gpx.gz",
        "before/2026-05-05.gpx.gz",
    ];
    let paths = if given.is_empty() {
        demo.map(|file| format!("{DEMO}/{file}")).to_vec()
    } else {
        given
    };
    let [plan, settings, logs @ ..] = paths.as_slice() else {
        return Err("expected a plan, settings and logs".into());
    };
    let settings = read_settings(settings, &fs::read_to_string(settings)?)?;
    let plan = read_plan(plan, &fs::read(plan)?, &settings.limits)?.plan;
    let mut read = Vec::new();
    for log in logs {
        read.push(read_log(log, File::open(log)?, &ReadOptions::default())?);
    }
    let read = assemble(read)?;
    let job = Job::new(&read.traces, &settings)
        .with_inputs(&read.inputs)
        .on(&plan);

    let verdict = inspect(&job)?.log_verdict;
    println!(
        "The log is {}; it shows pockets from {:.2} m wide.",
        if verdict.level == LogLevel::Good {
            "good enough"
        } else {
            "not good enough"
        },
        verdict.smallest_findable_width_m
    );
    // The path is found once; everything else that is asked about the log asks the survey.
    let survey = Survey::of(&job)?;
    let findings = analyse_survey(&survey, tussock::Calibrate::Auto)?;
    if let Some(coverage) = &findings.coverage {
        let visited = coverage.visited_fraction;
        println!(
            "Driven over: {:.1} % of {:.0} m².",
            100.0 * visited.estimate,
            coverage.lawn_m2
        );
    }
    for pocket in &findings.missed_pockets {
        let cause = pocket.causes.iter().flatten().next().map(|cause| cause.cause);
        println!("{}: {:.1} m² missed, {cause:?}.", pocket.id, pocket.area_m2);
    }
    for suggestion in findings.suggestions.iter().flatten() {
        println!(
            "{}: {:?} for {:?}.",
            suggestion.id, suggestion.kind, suggestion.pocket_ids
        );
    }
    Ok(())
}
