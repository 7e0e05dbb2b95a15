//! `tussock compare`: what did a change bring?

use crate::args::{CompareArguments, LogArguments};
use crate::exit::{CommandFailure, Exit, failure};
use crate::inputs::{self, name};
use crate::outputs::{OutputFolder, Rendered};
use crate::printer::Printer;
use crate::progress::Progress;
use crate::{CommandResult, commands, wishes};
use std::path::{Path, PathBuf};
use tussock::{CompareError, Job, Side, Sides};
use tussock_ingest::{Assembled, ReadOptions};
use tussock_report::Voice;
use tussock_types::{Comparison, Findings, Plan, Settings, file_name, with_causes};

/// A side as it was given.
struct Given {
    names: Vec<String>,
    findings: Findings,
    from: Option<(Assembled, Plan)>,
}

pub(crate) fn run(arguments: &CompareArguments, printer: &Printer) -> CommandResult {
    let log = LogArguments {
        logs: Vec::new(),
        settings: arguments.settings.clone(),
        date: None,
        columns: arguments.columns.clone(),
        strict: false,
        threads: arguments.threads,
    };
    let mut options = wishes::read_options(&log)?;
    let cut_width_m = wishes::cut_width_m(arguments.cut_width.as_deref())?;
    wishes::threads(arguments.threads)?;
    let sides = arguments.before.iter().chain(&arguments.after);
    let given = (sides.clone().chain(&arguments.plan))
        .chain(&arguments.after_plan)
        .chain(&arguments.settings);
    let folder = (arguments.out.as_ref())
        .map(|path| OutputFolder::probe(path, given))
        .transpose()?;
    inputs::check(sides, "a log (GPX, NMEA 0183, CSV, ...) or findings.json")?;
    inputs::check_garden(arguments.plan.as_ref(), arguments.settings.as_ref())?;
    inputs::check(arguments.after_plan.as_ref(), "a plan (GeoJSON)")?;
    let mut settings = inputs::settings(arguments.settings.as_deref())?;
    settings.machine.cut_width_m = cut_width_m.or(settings.machine.cut_width_m);
    let voices = wishes::voices(arguments.voice, &settings.garden);
    options.limits = settings.limits.clone();
    let after_plan = arguments.after_plan.as_ref().or(arguments.plan.as_ref());
    let progress = Progress::new();
    let asked = Asked {
        options: &options,
        settings: &settings,
        seed: arguments.seed,
        progress: &progress,
    };
    let before = asked.side(&arguments.before, arguments.plan.as_deref())?;
    let after = asked.side(&arguments.after, after_plan.map(PathBuf::as_path))?;
    progress.tell("comparing", 0.9);
    let (before_job, after_job) = (asked.job(&before), asked.job(&after));
    let comparison = tussock::compare(&Sides {
        before: told_side(&before, before_job.as_ref()),
        after: told_side(&after, after_job.as_ref()),
        seed: arguments.seed,
    })
    .map_err(|error| cannot_compare(&error))?;
    let written = match &folder {
        None => Vec::new(),
        Some(folder) => {
            progress.tell("drawing", 0.95);
            folder.write(&render(&comparison, voices.page)?)?
        }
    };
    drop(progress);
    let human = || tussock_report::answer_comparison(&comparison, printer.style(voices.terminal));
    let json = || tussock_report::comparison_to_json(&comparison);
    commands::tell(arguments.format, human, json, &written, printer, voices.terminal)?;
    Ok(Exit::Done)
}

struct Asked<'a> {
    options: &'a ReadOptions,
    settings: &'a Settings,
    seed: u64,
    progress: &'a Progress,
}

impl Asked<'_> {
    /// One side: saved findings, or logs that are analysed now.
    fn side(&self, paths: &[PathBuf], plan: Option<&Path>) -> Result<Given, CommandFailure> {
        // What is handed over names no folders.
        let names: Vec<String> = paths
            .iter()
            .map(|path| file_name(&name(path)).to_owned())
            .collect();
        let saved: Vec<bool> = paths
            .iter()
            .map(|path| inputs::is_saved(path))
            .collect::<Result<_, _>>()?;
        if saved.iter().any(|is_saved| *is_saved) {
            let [path] = paths else {
                return Err(failure!(
                    "{} files on one side with findings among them, expected one findings.json or logs only",
                    paths.len()
                ));
            };
            let findings = tussock_report::from_json(&inputs::bytes(path)?)
                .map_err(|error| failure!("{}: {}", name(path), with_causes(&error)))?;
            return Ok(Given {
                names,
                findings,
                from: None,
            });
        }
        let Some(plan_path) = plan else {
            return Err(
                CommandFailure::told("no plan is given, expected one where a side is a log")
                    .hint("give it with --plan garden.geojson"),
            );
        };
        let plan = commands::sound_plan(plan_path, self.settings)?;
        let assembled = inputs::logs(paths, self.options, &|what, done| {
            self.progress.tell(what, 0.4 * done)
        })?;
        let findings = tussock::analyse(&self.job_of(&assembled, &plan))
            .map_err(|error| commands::cannot_go_on(&error, Some(plan_path)))?;
        Ok(Given {
            names,
            findings,
            from: Some((assembled, plan)),
        })
    }

    fn job_of<'b>(&'b self, assembled: &'b Assembled, plan: &'b Plan) -> Job<'b> {
        let job = Job::new(&assembled.traces, self.settings).with_inputs(&assembled.inputs);
        job.on(plan).with_seed(self.seed).without_advice()
    }

    fn job<'b>(&'b self, given: &'b Given) -> Option<Job<'b>> {
        given
            .from
            .as_ref()
            .map(|(assembled, plan)| self.job_of(assembled, plan))
    }
}

fn told_side<'a>(given: &'a Given, job: Option<&'a Job<'a>>) -> Side<'a> {
    Side {
        names: given.names.clone(),
        findings: &given.findings,
        job,
    }
}

fn cannot_compare(error: &CompareError) -> CommandFailure {
    match error {
        CompareError::Analyse(error) => commands::cannot_go_on(error, None),
        _ => CommandFailure::from(error).maybe_hint(error.hint()),
    }
}

fn render(comparison: &Comparison, voice: Voice) -> Result<Vec<Rendered>, CommandFailure> {
    let rendered = |name: &str, text: String| Rendered {
        name: name.to_owned(),
        bytes: text.into_bytes(),
    };
    Ok(vec![
        rendered("comparison.json", tussock_report::comparison_to_json(comparison)?),
        rendered(
            "comparison.html",
            tussock_report::html_comparison(comparison, voice)?,
        ),
    ])
}
