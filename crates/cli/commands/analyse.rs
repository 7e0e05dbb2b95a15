//! `tussock analyse`: what was visited, what was missed, where did it get stuck?

use crate::args::{AnalyseArguments, Format};
use crate::exit::{CommandFailure, Exit};
use crate::inputs;
use crate::outputs::{NewFile, OutputFolder, Rendered, write_new};
use crate::printer::Printer;
use crate::progress::Progress;
use crate::{CommandResult, commands, wishes};
use tussock::{Advice, AnalyseError, Calibrate, Job, MendedPlan, Stage, Survey};
use tussock_report::Privacy;
use tussock_types::{Findings, Trace};

pub(crate) fn run(arguments: &AnalyseArguments, printer: &Printer) -> CommandResult {
    let mut options = wishes::read_options(&arguments.log)?;
    let cut_width_m = wishes::cut_width_m(arguments.cut_width.as_deref())?;
    let threshold = wishes::fail_under(arguments)?;
    wishes::threads(arguments.log.threads)?;
    let given = (arguments.log.logs.iter())
        .chain(&arguments.plan)
        .chain(&arguments.reference)
        .chain(&arguments.log.settings);
    let folder = (arguments.out.as_ref())
        .map(|path| OutputFolder::probe(path, given))
        .transpose()?;
    let file_of_plan = (arguments.write_plan.as_deref())
        .map(NewFile::probe)
        .transpose()?;
    inputs::check(&arguments.log.logs, inputs::A_LOG)?;
    inputs::check_garden(arguments.plan.as_ref(), arguments.log.settings.as_ref())?;
    inputs::check(&arguments.reference, "a surveyed path (GPX or CSV)")?;
    let mut settings = inputs::settings(arguments.log.settings.as_deref())?;
    settings.machine.cut_width_m = cut_width_m.or(settings.machine.cut_width_m);
    settings
        .complaint
        .extend(wishes::complaints(&arguments.complaint)?);
    let voices = wishes::voices(arguments.voice, &settings.garden);
    wishes::threshold_has_width(threshold, &settings)?;
    options.limits = settings.limits.clone();
    let plan = arguments
        .plan
        .as_ref()
        .map(|path| commands::sound_plan(path, &settings))
        .transpose()?;
    let reference = arguments
        .reference
        .as_ref()
        .map(|path| inputs::reference(path, &options))
        .transpose()?;
    let progress = Progress::new();
    let assembled = inputs::logs(&arguments.log.logs, &options, &|what, done| {
        progress.tell(what, done)
    })?;
    let tell = |stage: Stage, done_fraction: f64| progress.tell(stage.words(), done_fraction);
    let job = Job {
        seed: arguments.seed,
        advice: if arguments.no_suggestions {
            Advice::LeftOut
        } else {
            Advice::Given
        },
        ..commands::job(&assembled, plan.as_ref(), &settings, &tell)
    };
    let calibrate = if arguments.calibrate {
        Calibrate::Always
    } else {
        Calibrate::Auto
    };
    let cannot_go_on = |error| commands::cannot_go_on(&error, arguments.plan.as_deref());
    let survey = Survey::of(&job).map_err(cannot_go_on)?;
    let mut findings = tussock::analyse_survey(&survey, calibrate).map_err(cannot_go_on)?;
    if let Some(reference) = &reference {
        let found = tussock::against_reference(&survey, reference).map_err(cannot_go_on)?;
        findings.reference = Some(found);
    }
    // Before coordinates are removed from the findings.
    let mended = file_of_plan
        .as_ref()
        .map(|_| tussock::mended_plan(&survey, &findings));
    let privacy = Privacy::from(arguments.private);
    let written = match &folder {
        None => Vec::new(),
        Some(folder) => {
            progress.tell("drawing", 0.0);
            let mut files = commands::render(&findings, privacy, &arguments.picture, voices.page)?;
            if privacy == Privacy::Full {
                files.push(fixes(&assembled.traces)?);
            }
            folder.write(&files)?
        }
    };
    drop(progress);
    if folder.is_some() {
        commands::note_left_out(&findings, privacy, printer, voices.terminal);
    }
    if privacy == Privacy::Private {
        findings = tussock_report::redact(&findings)?;
    }
    let human = || {
        let style = printer.style(voices.terminal);
        let mut text = tussock_report::answer(&findings, style);
        if arguments.map {
            text.push_str(&tussock_report::answer_map(&findings, style));
        }
        text
    };
    let json = || tussock_report::to_json(&findings);
    commands::tell(arguments.format, human, json, &written, printer, voices.terminal)?;
    if let (Some(file), Some(mended)) = (&file_of_plan, &mended) {
        write_mended(file, mended, printer)?;
    }
    if arguments.format == Format::Human {
        for hint in tussock_report::hints(&findings, voices.terminal) {
            printer.hint(&hint);
        }
    }
    Ok(judge(&findings, threshold, printer))
}

/// Writes the plan as the log shows the garden, and reports what changed in it.
fn write_mended(
    file: &NewFile,
    mended: &Result<MendedPlan, AnalyseError>,
    printer: &Printer,
) -> Result<(), CommandFailure> {
    let mended = mended
        .as_ref()
        .map_err(|error| commands::cannot_go_on(error, None))?;
    write_new(&[(file, tussock_ingest::write_plan(&mended.plan).as_bytes())])?;
    let mut changes = Vec::new();
    if mended.moved_m > 0.0 {
        changes.push(format!("moved {:.2} m as a whole", mended.moved_m));
    }
    if mended.sides > 0 {
        changes.push(format!("sides moved by themselves: {}", mended.sides));
    }
    if mended.added > 0 {
        changes.push(format!("things added that turned the mower: {}", mended.added));
    }
    changes.extend(mended.left_out.iter().map(|zone| {
        format!("zone \"{zone}\" left out, which is driven over: look whether what lies there is safe")
    }));
    let changes = match changes.is_empty() {
        true => "it lies where the log says, and nothing in it was changed".to_owned(),
        false => changes.join("; "),
    };
    printer.note(&format!("plan written: {changes}"));
    Ok(())
}

/// The fixes as read. They are not part of the findings, so `tussock report` cannot make this file again.
fn fixes(traces: &[Trace]) -> Result<Rendered, CommandFailure> {
    let bytes = tussock_report::fixes_parquet(traces, tussock::TOOL_VERSION)?;
    Ok(Rendered {
        name: "fixes.parquet".to_owned(),
        bytes,
    })
}

/// Exit code 1 below the threshold, judged by the low end of the interval if there is one.
fn judge(findings: &Findings, threshold_fraction: Option<f64>, printer: &Printer) -> Exit {
    let (Some(threshold_fraction), Some(coverage)) = (threshold_fraction, &findings.coverage) else {
        return Exit::Done;
    };
    let visited = coverage.visited_fraction;
    let (judged_fraction, which) = match visited.low {
        Some(low) => (low, "the low end of the visited fraction"),
        None => (visited.estimate, "the visited fraction"),
    };
    if judged_fraction >= threshold_fraction {
        return Exit::Done;
    }
    printer.note(&format!(
        "below the threshold: {which} is {:.2} %, expected at least {} %",
        judged_fraction * 100.0,
        threshold_fraction * 100.0
    ));
    Exit::BelowThreshold
}
