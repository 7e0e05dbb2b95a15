//! `tussock batch`: many gardens every night.

use crate::args::{
    BatchAcknowledgeArguments, BatchCheckArguments, BatchCommand, BatchForgetArguments, BatchMarkArguments,
    BatchMuteArguments, BatchReportArguments, BatchRunArguments, BatchWorkerArguments, Format,
};
use crate::exit::{CommandFailure, Exit, failure};
use crate::journal::{Gravity, Journal};
use crate::outputs::{NewFile, write_new};
use crate::printer::Printer;
use crate::progress::Progress;
use crate::{CommandResult, metrics, units, wishes};
use serde_json::{Value, json};
use std::time::{SystemTime, UNIX_EPOCH};
use tussock_batch::morning::{self, NightChoice};
use tussock_batch::pool::Crew;
use tussock_batch::run::{Done, Shift, ShiftNews};
use tussock_batch::{BatchError, Failed, Mark, PlaceReach, Store, check, forget, night};
use tussock_types::{Alarm, AlarmState, GardenSettings, Morning, plural};

pub(crate) fn run(command: &BatchCommand, printer: &Printer) -> CommandResult {
    match command {
        BatchCommand::Run(arguments) => batch_run(arguments, printer),
        BatchCommand::Report(arguments) => report(arguments, printer),
        BatchCommand::Check(arguments) => batch_check(arguments, printer),
        BatchCommand::Acknowledge(arguments) => acknowledge(arguments, printer),
        BatchCommand::Mute(arguments) => mute(arguments, printer),
        BatchCommand::Forget(arguments) => forgotten(arguments, printer),
        BatchCommand::Worker(arguments) => worker(arguments),
    }
}

/// A fault of the store or its disk has its own exit code.
fn told(error: &BatchError) -> CommandFailure {
    let told = CommandFailure::from(error);
    let is_of_store = matches!(
        error,
        BatchError::Disk { .. }
            | BatchError::NoStore { .. }
            | BatchError::SchemaVersion { .. }
            | BatchError::InUse { .. }
            | BatchError::Overtaken { .. }
            | BatchError::Table { .. }
            | BatchError::BadTable { .. }
    );
    if is_of_store {
        told.ending(Exit::Store)
    } else {
        told
    }
}

fn now_unix_s(typed: Option<&String>) -> Result<f64, CommandFailure> {
    typed.map_or_else(
        || Ok(clock_unix_s()),
        |typed| units::moment_unix_s("--now", typed),
    )
}

const fn reach(allow_outside: bool) -> PlaceReach {
    if allow_outside {
        PlaceReach::Anywhere
    } else {
        PlaceReach::Inside
    }
}

fn shift(arguments: &BatchRunArguments) -> Result<Shift, CommandFailure> {
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
    Ok(Shift {
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
        now_unix_s: now_unix_s(arguments.now.as_ref())?,
        expire_at_most_fraction: match &arguments.expire_at_most {
            Some(typed) => units::percent_as_fraction("--expire-at-most", typed)?,
            None => forget::USUAL_EXPIRY_FRACTION,
        },
        reach: reach(arguments.allow_outside),
    })
}

fn batch_run(arguments: &BatchRunArguments, printer: &Printer) -> CommandResult {
    let run = shift(arguments)?;
    let metrics = arguments.metrics.as_deref().map(metrics::probe).transpose()?;
    let begin_unix_s = clock_unix_s();
    let mut night = ShiftTelling::new(printer, arguments.log_format);
    let outcome = tussock_batch::run::run(&run, &mut |what| night.tell(what));
    let (done, result) = match outcome {
        Ok(done) => {
            let exit = ending(&done);
            (done, Ok(exit))
        }
        Err(error) => (Done::default(), Err(failed_run(&run, &error))),
    };
    if let Some(metrics) = metrics {
        let now_unix_s = run.now_unix_s;
        let found = Store::open(&run.store)
            .and_then(|store| morning::morning(&store, NightChoice::LastOver { now_unix_s }));
        let code = match &result {
            Ok(exit) | Err(CommandFailure::Told { exit, .. }) => *exit as u8,
            Err(_) => Exit::Failed as u8,
        };
        let (found, end_unix_s) = (found.ok(), clock_unix_s());
        let night = found.as_ref().and_then(|found| night::parse(&found.night));
        let figures = json!({
            "exit_code": code, "end_unix_s": end_unix_s.floor(), "duration_s": (end_unix_s - begin_unix_s).max(0.0),
            "gardens": done.gardens, "with_news": done.with_news, "found": done.found, "logs": done.logs,
            "nights": done.nights, "failures": done.failures, "files": done.files,
            "night_unix_s": night.map(|night| 86_400 * i64::from(night)),
            "to_visit": found.as_ref().map(visits),
        });
        metrics.write(&tussock_report::metrics(&figures, found.as_ref())?)?;
    }
    let figures = json!({
        "gardens": done.gardens, "with_news": done.with_news, "logs": done.logs, "nights": done.nights,
        "failures": done.failures, "expired_rows": done.expired, "files": done.files,
    });
    let text = format!(
        "{}, {} with something new: {} read, {} analysed, {} failed; {} in {}",
        plural(done.gardens, "garden", "gardens"),
        done.with_news,
        plural(done.logs, "log", "logs"),
        plural(done.nights, "night", "nights"),
        done.failures,
        plural(done.files, "file", "files"),
        arguments.store.display()
    );
    let exit = night.end(result, &text, &figures)?;
    // A run that failed has no figures.
    if arguments.format == Format::Json && matches!(exit, Exit::Done | Exit::SomeUnusable) {
        printer.data(format!("{figures}\n").as_bytes())?;
    }
    Ok(exit)
}

fn batch_check(arguments: &BatchCheckArguments, printer: &Printer) -> CommandResult {
    let now_unix_s = now_unix_s(arguments.now.as_ref())?;
    let reach = reach(arguments.allow_outside);
    let mut dry = ShiftTelling::new(printer, arguments.log_format);
    let outcome = check::check(&arguments.place, reach, now_unix_s, &mut |what| dry.tell(what));
    let done = outcome.as_ref().cloned().unwrap_or_default();
    let result = match outcome {
        Ok(done) if done.found == 0 => Ok(Exit::NothingFound),
        Ok(done) => Ok(ending(&done)),
        Err(error) => Err(told(&error)),
    };
    let text = format!(
        "{}, {} in all: {} could not be used",
        plural(done.gardens, "garden", "gardens"),
        plural(done.found, "log", "logs"),
        done.failures
    );
    let figures = json!({"gardens": done.gardens, "logs": done.found, "failures": done.failures});
    dry.end(result, &text, &figures)
}

/// Reports what a run does while it does it, and how it ended.
struct ShiftTelling<'a> {
    journal: Journal<'a>,
    progress: Progress,
    gardens: usize,
    behind: usize,
    in_hand: usize,
}

impl<'a> ShiftTelling<'a> {
    fn new(printer: &'a Printer, format: Format) -> Self {
        Self {
            journal: Journal::new(printer, format, clock_unix_s()),
            progress: Progress::new(),
            gardens: 0,
            behind: 0,
            in_hand: 0,
        }
    }

    fn tell(&mut self, what: ShiftNews) {
        let journal = &self.journal;
        match what {
            ShiftNews::Gardens(count) => self.gardens = count,
            ShiftNews::Behind(count) => (self.behind, self.in_hand) = (count, 0),
            ShiftNews::Expired(expired) => {
                let first = night::words(expired.first);
                let text = format!(
                    "expired: {} of gardens before {first} ({})",
                    plural(expired.nights, "night", "nights"),
                    plural(expired.rows, "row", "rows")
                );
                let figures = json!({
                    "expired_nights": expired.nights, "expired_rows": expired.rows, "expired_before": first,
                });
                journal.tell(Gravity::Info, None, &text, &figures);
            }
            ShiftNews::Advising(count) => {
                let text = format!("suggestions for {}", plural(count, "garden", "gardens"));
                self.progress.tell(&text, 0.99);
                journal.detail(None, &text, &json!({"advising": count}));
            }
            ShiftNews::Garden {
                garden,
                logs,
                nights,
                failed,
            } => {
                self.in_hand += 1;
                failed.iter().for_each(|one| note_failed(&garden, one, journal));
                journal.detail(
                    Some(&garden),
                    "garden done",
                    &json!({"logs": logs, "nights": nights}),
                );
                let done = self.behind + self.in_hand;
                let text = format!("{done} of {}", plural(self.gardens, "garden", "gardens"));
                self.progress
                    .tell(&text, done as f64 / f64::max(self.gardens as f64, 1.0));
            }
        }
    }

    /// The last line: what was done, or why it was not.
    fn end(self, result: CommandResult, text: &str, figures: &Value) -> CommandResult {
        drop(self.progress);
        match result {
            Ok(exit) => {
                let level = if exit == Exit::Done {
                    Gravity::Info
                } else {
                    Gravity::Warning
                };
                self.journal.tell(level, None, text, figures);
                Ok(exit)
            }
            Err(failure) => self.journal.failure(failure),
        }
    }
}

/// The outcome of a run that was completed.
const fn ending(done: &Done) -> Exit {
    if done.found == 0 && done.known > 0 {
        Exit::NothingFound
    } else if done.failures > 0 {
        Exit::SomeUnusable
    } else {
        Exit::Done
    }
}

/// If the place is gone but the store knows gardens from it, that is not wrong use.
fn failed_run(run: &Shift, error: &BatchError) -> CommandFailure {
    let is_gone = matches!(error, BatchError::Bucket { .. } | BatchError::Place { .. })
        && Store::open(&run.store).is_ok_and(|store| store.files() > 0);
    let told = told(error);
    if is_gone {
        told.ending(Exit::NothingFound)
    } else {
        told
    }
}

fn note_failed(garden: &str, one: &Failed, journal: &Journal<'_>) {
    let digest = one
        .sha256
        .get(..12)
        .map(|start| format!(" [{start}]"))
        .unwrap_or_default();
    let text = format!(
        "failed: {garden}: {} ({}){digest}: {}",
        one.what, one.reason, one.detail
    );
    let figures = json!({"what": one.what, "reason": one.reason, "sha256": one.sha256});
    journal.tell(Gravity::Warning, Some(garden), &text, &figures);
}

fn clock_unix_s() -> f64 {
    SystemTime::now()
        .duration_since(UNIX_EPOCH)
        .map_or(0.0, |since| since.as_secs_f64())
}

fn date(flag: &str, typed: &str) -> Result<night::NightNumber, CommandFailure> {
    night::parse(typed)
        .ok_or_else(|| failure!("{flag}: {typed:?} is no date, expected one such as 2026-05-01"))
}

fn report(arguments: &BatchReportArguments, printer: &Printer) -> CommandResult {
    let choice = match &arguments.date {
        Some(typed) => NightChoice::Date(date("--date", typed)?),
        None => NightChoice::LastOver {
            now_unix_s: now_unix_s(arguments.now.as_ref())?,
        },
    };
    let page = arguments.out.as_deref().map(NewFile::probe).transpose()?;
    let found = Store::open(&arguments.store)
        .and_then(|store| morning::morning(&store, choice))
        .map_err(|error| told(&error))?;
    let voices = wishes::voices(arguments.voice, &GardenSettings::default());
    if let Some(page) = &page {
        let html = tussock_report::html_morning(&found, voices.page)?;
        write_new(&[(page, html.as_bytes())])?;
        printer.note(&format!("written: {}", page.path().display()));
    }
    match arguments.format {
        Format::Human => printer.data(tussock_report::answer_morning(&found, voices.terminal).as_bytes())?,
        Format::Json => {
            let text = serde_json::to_string_pretty(&found)?;
            printer.data(format!("{text}\n").as_bytes())?;
        }
    }
    printer.note(&tussock_report::morning_summary(&found, voices.terminal));
    Ok(
        match (arguments.fail_on_visit, visits(&found), found.deliveries.len()) {
            (true, 1.., _) => Exit::BelowThreshold,
            (true, 0, 1..) => Exit::NothingFound,
            _ => Exit::Done,
        },
    )
}

/// Gardens with an alarm that nobody has acknowledged.
fn visits(found: &Morning) -> usize {
    let is_open = |garden: &&tussock_types::GardenMorning| {
        garden
            .reasons
            .iter()
            .any(|reason| reason.state == AlarmState::Open)
    };
    found.gardens.iter().filter(is_open).count()
}

fn acknowledge(arguments: &BatchAcknowledgeArguments, printer: &Printer) -> CommandResult {
    let on = arguments
        .date
        .as_deref()
        .map(|typed| date("--date", typed))
        .transpose()?;
    marked(&arguments.mark, None, on, "acknowledged", printer)
}

fn mute(arguments: &BatchMuteArguments, printer: &Printer) -> CommandResult {
    let until = night::words(date("--until", &arguments.until)?);
    let said = format!("muted until {until}");
    marked(&arguments.mark, Some(until), None, &said, printer)
}

/// Records what the operator says about open alarms, on the morning after the last night that is over unless another is
/// named.
fn marked(
    arguments: &BatchMarkArguments,
    muted_until: Option<String>,
    on: Option<night::NightNumber>,
    said: &str,
    printer: &Printer,
) -> CommandResult {
    let alarm: Option<Alarm> = match &arguments.alarm {
        None => None,
        Some(typed) => Some(Alarm::parse(typed).ok_or_else(|| {
            let kinds: Vec<&str> = Alarm::ALL.iter().map(|alarm| alarm.word()).collect();
            failure!(
                "--alarm: {typed:?} is no kind of alarm, expected one of {}",
                kinds.join(", ")
            )
        })?),
    };
    let store = Store::open(&arguments.store).map_err(|error| told(&error))?;
    let choice = on.map_or(
        NightChoice::LastOver {
            now_unix_s: clock_unix_s(),
        },
        NightChoice::Date,
    );
    let night = store
        .night_of(&arguments.garden, choice)
        .map_err(|error| told(&error))?;
    let Some(night) = night else {
        return Err(failure!(
            "{}: no garden of this name in {}",
            arguments.garden,
            arguments.store.display()
        ));
    };
    let mark = Mark {
        garden: arguments.garden.clone(),
        alarm,
        muted_until,
        on: night::words(night),
        reason: arguments.reason.clone(),
    };
    store.mark(mark).map_err(|error| told(&error))?;
    let which = arguments.alarm.as_deref().unwrap_or("all alarms");
    printer.note(&format!("{}: {which} {said}", arguments.garden));
    Ok(Exit::Done)
}

fn forgotten(arguments: &BatchForgetArguments, printer: &Printer) -> CommandResult {
    // A store that does not exist is not created.
    let rows = Store::open(&arguments.store)
        .and_then(|_| Store::open_to_write(&arguments.store, tussock::TOOL_VERSION))
        .and_then(|mut store| store.forget(&arguments.garden))
        .map_err(|error| told(&error))?;
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
    // Each worker is one of many: threads of its own would only compete with the others.
    rayon::ThreadPoolBuilder::new().num_threads(1).build_global()?;
    tussock_batch::work::serve(std::io::stdin().lock(), std::io::stdout().lock())?;
    Ok(Exit::Done)
}
