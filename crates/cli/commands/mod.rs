//! One file for each command.

pub(crate) mod analyse;
pub(crate) mod ask;
pub(crate) mod batch;
pub(crate) mod compare;
pub(crate) mod gardens;
pub(crate) mod inspect;
pub(crate) mod plan;
pub(crate) mod report;
pub(crate) mod simulate;
pub(crate) mod visits;

use crate::args::{Format, LogArguments, PictureArguments};
use crate::exit::{CommandFailure, failure};
use crate::inputs::name;
use crate::outputs::Rendered;
use crate::printer::Printer;
use crate::progress::Progress;
use crate::{inputs, wishes};
use std::path::{Path, PathBuf};
use tussock::{AnalyseError, Job, Stage};
use tussock_ingest::Assembled;
use tussock_report::{Output, Privacy, Voice};
use tussock_types::{Findings, Plan, PlanFault, Settings, with_causes};

/// Findings of an earlier analysis.
pub(crate) fn saved_findings(path: &Path) -> Result<Findings, CommandFailure> {
    inputs::check([&path.to_path_buf()], "findings.json of an earlier analysis")?;
    let bytes = inputs::bytes(path)?;
    tussock_report::from_json(&bytes).map_err(|error| {
        failure!("{}: {}", name(path), with_causes(&error))
            .hint("findings.json is written by tussock analyse --out DIR")
    })
}

/// An analysis that cannot continue, with the plan's faults and what to do.
pub(crate) fn cannot_go_on(error: &AnalyseError, plan: Option<&Path>) -> CommandFailure {
    match error {
        AnalyseError::PlanFaults(faults) => plan_faults(&plan.map(name).unwrap_or_default(), faults),
        _ => CommandFailure::from(error).maybe_hint(error.hint()),
    }
}

/// A plan that cannot be used.
pub(crate) fn plan_faults(plan_name: &str, faults: &[PlanFault]) -> CommandFailure {
    CommandFailure::told(tussock_types::plan_faults(plan_name, faults))
}

/// Renders everything that goes into a folder.
pub(crate) fn render(
    findings: &Findings,
    privacy: Privacy,
    picture: &PictureArguments,
    voice: Voice,
) -> Result<Vec<Rendered>, CommandFailure> {
    let outputs = tussock_report::outputs_sized(findings, privacy, picture.png_width, voice)?;
    Ok(outputs
        .into_iter()
        .map(|Output { name, bytes }| Rendered {
            name: name.to_owned(),
            bytes,
        })
        .collect())
}

/// Reports which files are missing and why, unless that was asked for.
pub(crate) fn note_left_out(findings: &Findings, privacy: Privacy, printer: &Printer, voice: Voice) {
    if privacy == Privacy::Full {
        for (file, reason) in tussock_report::left_out(findings, privacy, voice) {
            printer.note(&format!("note: no {file}: {reason}"));
        }
    }
}

/// A job without suggestions and with seed 0 that reports its progress.
pub(crate) fn job<'a>(
    assembled: &'a Assembled,
    plan: Option<&'a Plan>,
    settings: &'a Settings,
    tell: &'a (dyn Fn(Stage, f64) + Sync),
) -> Job<'a> {
    Job {
        plan,
        progress: Some(tell),
        ..Job::new(&assembled.traces, settings)
            .with_inputs(&assembled.inputs)
            .without_advice()
    }
}

/// Reads logs, with a plan if there is one, and asks a question about them.
pub(crate) fn ask<T>(
    log: &LogArguments,
    plan_path: Option<&PathBuf>,
    question: impl FnOnce(&Job<'_>) -> Result<T, AnalyseError>,
) -> Result<(T, Settings), CommandFailure> {
    let mut options = wishes::read_options(log)?;
    wishes::threads(log.threads)?;
    inputs::check(&log.logs, inputs::A_LOG)?;
    inputs::check_garden(plan_path, log.settings.as_ref())?;
    let settings = inputs::settings(log.settings.as_deref())?;
    options.limits = settings.limits.clone();
    let plan = plan_path.map(|path| sound_plan(path, &settings)).transpose()?;
    let progress = Progress::new();
    let assembled = inputs::logs(&log.logs, &options, &|what, done| progress.tell(what, done))?;
    let tell = |stage: Stage, done_fraction: f64| progress.tell(stage.words(), done_fraction);
    let answer = question(&job(&assembled, plan.as_ref(), &settings, &tell))
        .map_err(|error| cannot_go_on(&error, plan_path.map(PathBuf::as_path)))?;
    Ok((answer, settings))
}

/// Prints an answer in the format that was asked for, and which files hold it too.
pub(crate) fn tell<E: std::error::Error>(
    format: Format,
    human: impl FnOnce() -> String,
    json: impl FnOnce() -> Result<String, E>,
    written: &[PathBuf],
    printer: &Printer,
    voice: Voice,
) -> Result<(), CommandFailure> {
    let names: Vec<String> = written.iter().map(|path| path.display().to_string()).collect();
    let text = match format {
        Format::Human => human() + &tussock_report::answer_files(&names, printer.style(voice)),
        Format::Json => json()?,
    };
    if format == Format::Json && !names.is_empty() {
        printer.note(&format!("written: {}", names.join(", ")));
    }
    printer.data(text.as_bytes())
}

/// A plan without faults in its text. Faults of its ground are found when it is used.
pub(crate) fn sound_plan(path: &Path, settings: &Settings) -> Result<Plan, CommandFailure> {
    let (plan, faults) = inputs::plan(path, settings)?;
    tussock::sound_plan(plan, faults).map_err(|faults| plan_faults(&name(path), &faults))
}
