//! `tussock batch`: many gardens every night.

use crate::args::{
    BatchCommand, BatchForgetArguments, BatchReportArguments, BatchRunArguments, BatchWorkerArguments, Format,
};
use crate::exit::{Exit, failure};
use crate::outputs::{NewFile, write_new};
use crate::printer::Printer;
use crate::progress::Progress;
use crate::{CommandResult, units};
use serde_json::json;
use std::time::{SystemTime, UNIX_EPOCH};
use tussock_batch::pool::Crew;
use tussock_batch::run::{Shift, ShiftNews};
use tussock_batch::{Failed, PlaceReach, Store, forget, morning, night};
use tussock_types::plural;

pub(crate) fn run(command: &BatchCommand, printer: &Printer) -> CommandResult {
    match command {
        BatchCommand::Run(arguments) => batch_run(arguments, printer),
        BatchCommand::Report(arguments) => report(arguments, printer),
        BatchCommand::Forget(arguments) => forgotten(arguments, printer),
        BatchCommand::Worker(arguments) => worker(arguments),
    }
}

fn batch_run(arguments: &BatchRunArguments, printer: &Printer) -> CommandResult {
    let longest_s = units::time_s("--time-limit", &arguments.time_limit, "120s")?;
    if !(0.01..=86_400.0).contains(&longest_s) {
        return Err(failure!(
            "--time-limit: {:?} is {longest_s} s, expected 10 ms to 1 d",
            arguments.time_limit
        ));
    }
    let cores = std::thread::available_parallelism().map_or(1, usize::from);
    let program = std::env::current_exe()
        .map_err(|error| failure!("this program cannot be found to start workers: {error}"))?;
    let limit = arguments.memory_limit.to_string();
    let run = Shift {
        place: arguments.place.clone(),
        store: arguments.store.clone(),
        crew: Crew {
            program,
            arguments: ["batch", "worker", "--memory-limit", &limit]
                .map(Into::into)
                .to_vec(),
            workers: arguments.workers.unwrap_or(cores).clamp(1, 1024),
            longest_s,
        },
        chunk: arguments.chunk,
        advice: if arguments.no_suggestions {
            tussock::Advice::LeftOut
        } else {
            tussock::Advice::Given
        },
        now_unix_s: match &arguments.now {
            Some(typed) => units::moment_unix_s("--now", typed)?,
            None => clock_unix_s(),
        },
        expire_at_most_fraction: match &arguments.expire_at_most {
            Some(typed) => units::percent_as_fraction("--expire-at-most", typed)?,
            None => forget::USUAL_EXPIRY_FRACTION,
        },
        reach: if arguments.allow_outside {
            PlaceReach::Anywhere
        } else {
            PlaceReach::Inside
        },
    };
    let progress = Progress::new();
    let (mut gardens, mut behind, mut in_hand) = (0, 0, 0);
    let mut tell = |what: ShiftNews| {
        if arguments.format == Format::Json {
            note_json(&what, printer);
        }
        match what {
            ShiftNews::Gardens(count) => gardens = count,
            ShiftNews::Behind(count) => (behind, in_hand) = (count, 0),
            ShiftNews::Expired(expired) => {
                if arguments.format == Format::Human {
                    printer.note(&format!(
                        "expired: {} of gardens before {} ({})",
                        plural(expired.nights, "night", "nights"),
                        night::words(expired.first),
                        plural(expired.rows, "row", "rows")
                    ));
                }
            }
            ShiftNews::Advising(count) => progress.tell(
                &format!("suggestions for {}", plural(count, "garden", "gardens")),
                0.99,
            ),
            ShiftNews::Garden { garden, failed, .. } => {
                in_hand += 1;
                if arguments.format == Format::Human {
                    failed.iter().for_each(|one| note_failed(&garden, one, printer));
                }
                let done = (behind + in_hand) as f64 / f64::max(gardens as f64, 1.0);
                progress.tell(
                    &format!("{} of {}", behind + in_hand, plural(gardens, "garden", "gardens")),
                    done,
                );
            }
        }
    };
    let done = tussock_batch::run::run(&run, &mut tell)?;
    drop(progress);
    match arguments.format {
        Format::Human => printer.data(
            format!(
                "{}, {} with something new: {} read, {} analysed, {} failed; {} in {}\n",
                plural(done.gardens, "garden", "gardens"),
                done.with_news,
                plural(done.logs, "log", "logs"),
                plural(done.nights, "night", "nights"),
                done.failures,
                plural(done.files, "file", "files"),
                crate::printer::harmless(&arguments.store.display().to_string())
            )
            .as_bytes(),
        )?,
        Format::Json => printer.data(
            format!(
                "{}\n",
                json!({
                    "gardens": done.gardens, "with_news": done.with_news, "logs": done.logs, "nights": done.nights,
                    "failures": done.failures, "expired_rows": done.expired, "files": done.files,
                })
            )
            .as_bytes(),
        )?,
    }
    Ok(if done.failures == 0 {
        Exit::Done
    } else {
        Exit::Failed
    })
}

fn note_failed(garden: &str, one: &Failed, printer: &Printer) {
    let digest = one
        .sha256
        .get(..12)
        .map(|start| format!(" [{start}]"))
        .unwrap_or_default();
    printer.note(&format!(
        "failed: {garden}: {} ({}){digest}: {}",
        one.what, one.reason, one.detail
    ));
}

fn note_json(what: &ShiftNews, printer: &Printer) {
    let line = match what {
        ShiftNews::Gardens(count) => json!({"gardens": count}),
        ShiftNews::Behind(count) => json!({"behind": count}),
        ShiftNews::Advising(count) => json!({"advising": count}),
        ShiftNews::Expired(expired) => json!({
            "expired_nights": expired.nights, "expired_rows": expired.rows, "expired_before": night::words(expired.first),
        }),
        ShiftNews::Garden {
            garden,
            logs,
            nights,
            failed,
        } => {
            json!({"garden": garden, "logs": logs, "nights": nights, "failed": failed})
        }
    };
    printer.note(&line.to_string());
}

fn clock_unix_s() -> f64 {
    SystemTime::now()
        .duration_since(UNIX_EPOCH)
        .map_or(0.0, |since| since.as_secs_f64())
}

/// The last night that is over by the clock in UTC and a turn at noon.
fn last_night() -> night::NightNumber {
    night::night_of(clock_unix_s(), 0, night::USUAL_TURN_H) - 1
}

fn report(arguments: &BatchReportArguments, printer: &Printer) -> CommandResult {
    let night = match &arguments.date {
        None => last_night(),
        Some(typed) => night::parse(typed)
            .ok_or_else(|| failure!("--date: {typed:?} is no date, expected one such as 2026-05-01"))?,
    };
    let page = arguments.out.as_deref().map(NewFile::probe).transpose()?;
    let store = Store::open(&arguments.store)?;
    let found = morning::morning(&store, night)?;
    if let Some(page) = &page {
        let html = tussock_report::html_morning(&found)?;
        write_new(&[(page, html.as_bytes())])?;
        printer.note(&format!("written: {}", page.path().display()));
    }
    match arguments.format {
        Format::Human => printer.data(tussock_report::answer_morning(&found).as_bytes())?,
        Format::Json => {
            let text = serde_json::to_string_pretty(&found)?;
            printer.data(format!("{text}\n").as_bytes())?;
        }
    }
    let visits = arguments.fail_on_visit && !found.gardens.is_empty();
    Ok(if visits { Exit::BelowThreshold } else { Exit::Done })
}

fn forgotten(arguments: &BatchForgetArguments, printer: &Printer) -> CommandResult {
    // A store that is not there is not made.
    Store::open(&arguments.store)?;
    let mut store = Store::open_to_write(&arguments.store, tussock::TOOL_VERSION)?;
    let rows = store.forget(&arguments.garden)?;
    if rows == 0 {
        return Err(failure!(
            "{}: no garden of this name in {}",
            arguments.garden,
            arguments.store.display()
        ));
    }
    printer.note(&format!(
        "{}: {} taken out",
        arguments.garden,
        plural(rows, "row", "rows")
    ));
    Ok(Exit::Done)
}

fn worker(arguments: &BatchWorkerArguments) -> CommandResult {
    tussock_batch::work::limit_memory(arguments.memory_limit << 20)
        .map_err(|error| failure!("memory cannot be limited: {error}"))?;
    // Each worker is one of many: threads of its own would only push each other aside.
    rayon::ThreadPoolBuilder::new().num_threads(1).build_global()?;
    tussock_batch::work::serve(std::io::stdin().lock(), std::io::stdout().lock())?;
    Ok(Exit::Done)
}
