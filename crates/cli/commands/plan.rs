//! `tussock plan`: is this plan sound; make one from a walk.

use crate::args::{AlignArguments, FromTraceArguments, FromWalkArguments, PlanCheckArguments, PlanCommand};
use crate::exit::{CommandFailure, Exit};
use crate::inputs::{self, name};
use crate::outputs::{NewFile, OutputFolder, Rendered, write_new};
use crate::printer::Printer;
use crate::{CommandResult, commands, wishes};
use serde_json::json;
use std::convert::Infallible;
use std::path::Path;
use tussock::{AlignVerdict, PlanReport, PlanRow, TypicalRun};
use tussock_ingest::WalkError;
use tussock_report::Voice;
use tussock_types::math;
use tussock_types::{GardenSettings, PlanForecast, PlanRole, Settings};

pub(crate) fn run(command: &PlanCommand, printer: &Printer) -> CommandResult {
    match command {
        PlanCommand::Check(arguments) => check(arguments, printer),
        PlanCommand::FromWalk(arguments) => from_walk(arguments, printer),
        PlanCommand::FromTrace(arguments) => from_trace(arguments, printer),
        PlanCommand::Align(arguments) => align(arguments, printer),
    }
}

fn check(arguments: &PlanCheckArguments, printer: &Printer) -> CommandResult {
    let given = std::iter::once(&arguments.plan).chain(&arguments.settings);
    let folder = (arguments.out.as_deref())
        .map(|path| OutputFolder::probe(path, given))
        .transpose()?;
    inputs::check([&arguments.plan], "a plan (GeoJSON)")?;
    let mut settings = inputs::settings(arguments.settings.as_deref())?;
    let cut_width_m = wishes::cut_width_m(arguments.cut_width.as_deref())?;
    settings.machine.cut_width_m = cut_width_m.or(settings.machine.cut_width_m);
    let (plan, read_faults) = inputs::plan(&arguments.plan, &settings)?;
    let mut report = tussock::check_plan(&plan);
    let is_sound = report.is_sound() && !read_faults.iter().any(|fault| fault.is_fatal);
    report.faults = tussock::plane::merge_faults(read_faults, std::mem::take(&mut report.faults));
    let typical = match &folder {
        Some(_) => TypicalRun::Analysed,
        None => TypicalRun::LeftOut,
    };
    let forecast = match is_sound {
        true => tussock::plan_forecast(&plan, &settings, typical, arguments.seed),
        false => None,
    };
    let voices = wishes::voices(arguments.voice, &settings.garden);
    let written = match (&folder, &forecast) {
        (Some(folder), Some(forecast)) => folder.write(&drawn(forecast, &settings, voices.page)?)?,
        _ => Vec::new(),
    };
    let checked = json(&report, forecast.as_ref(), is_sound);
    let style = printer.style(voices.terminal);
    let human = || tussock_report::answer_plan(&checked, &report.faults, forecast.as_ref(), &settings, style);
    let json = || Ok::<_, Infallible>(format!("{checked:#}\n"));
    commands::tell(arguments.format, human, json, &written, printer, voices.terminal)?;
    if is_sound {
        Ok(Exit::Done)
    } else {
        Err(commands::plan_faults(&name(&arguments.plan), &report.faults))
    }
}

fn json(report: &PlanReport, forecast: Option<&PlanForecast>, is_sound: bool) -> serde_json::Value {
    let rows: Vec<_> = report
        .rows
        .iter()
        .map(|PlanRow { role, name, feature, area_m2, length_m }| {
            json!({"feature": feature, "role": role.word(), "name": name, "area_m2": area_m2, "length_m": length_m})
        })
        .collect();
    json!({
        "is_sound": is_sound,
        "lawn_m2": report.lawn_m2,
        "edge_m": report.edge_m,
        "features": rows,
        "faults": report.faults,
        "forecast": forecast.map(|forecast| PlanForecast { typical: None, ..forecast.clone() }),
    })
}

/// The page and the picture.
fn drawn(
    forecast: &PlanForecast,
    settings: &Settings,
    voice: Voice,
) -> Result<Vec<Rendered>, CommandFailure> {
    let page = tussock_report::html_forecast(forecast, settings, tussock::TOOL_VERSION, voice)?;
    let picture = match &forecast.typical {
        Some(typical) => Some(tussock_report::map_png(
            typical,
            tussock_report::MAP_WIDTH_PX,
            voice,
        )?),
        None => None,
    };
    let file = |name: &str, bytes: Vec<u8>| Rendered {
        name: name.to_owned(),
        bytes,
    };
    let picture = picture.map(|bytes| file("plan.png", bytes));
    Ok(std::iter::once(file("plan.html", page.into_bytes()))
        .chain(picture)
        .collect())
}

/// Where a plan goes; `None` is stdout. Checked before anything is read.
fn new_file(out: &Path) -> Result<Option<NewFile>, CommandFailure> {
    if inputs::is_stdin(out) {
        return Ok(None);
    }
    NewFile::probe(out).map(Some)
}

fn write_plan(file: Option<&NewFile>, text: &str, printer: &Printer) -> Result<(), CommandFailure> {
    match file {
        None => printer.data(text.as_bytes()),
        Some(file) => write_new(&[(file, text.as_bytes())]),
    }
}

fn from_walk(arguments: &FromWalkArguments, printer: &Printer) -> CommandResult {
    let roles = wishes::walk_roles(&arguments.role)?;
    let file = new_file(&arguments.out)?;
    inputs::check([&arguments.walk], "a walk recorded as GPX")?;
    let bytes = inputs::bytes(&arguments.walk)?;
    let walked = tussock_ingest::plan_from_walk(&name(&arguments.walk), &bytes, &roles)
        .map_err(|error| asked(error, arguments))?;
    let voice = wishes::voices(arguments.voice, &GardenSettings::default()).terminal;
    for notice in &walked.notices {
        printer.note(&tussock_report::said(voice, &notice.said));
    }
    let report = tussock::check_plan(&walked.plan);
    let text = tussock_ingest::write_plan(&walked.plan);
    write_plan(file.as_ref(), &text, printer)?;
    for role in PlanRole::ALL {
        let count = walked.plan.of_role(role).count();
        if count > 0 {
            printer.note(&format!("{}: {count}", role.word()));
        }
    }
    if !report.is_sound() {
        // The walk is written all the same: correcting it in a map program is less work than walking again.
        return Err(commands::plan_faults(&name(&arguments.out), &report.faults)
            .hint("the plan was written as walked; mend these places in it, then run tussock plan check"));
    }
    for fault in &report.faults {
        printer.note(&format!("to look at: {fault}"));
    }
    Ok(Exit::Done)
}

/// Adds what to do about it: if tracks are asked about, the whole command that says what they seem to be.
fn asked(error: WalkError, arguments: &FromWalkArguments) -> CommandFailure {
    let WalkError::Unclear { guesses, .. } = &error else {
        return error.into();
    };
    if !guesses.iter().any(|guess| guess.role == Some(PlanRole::Lawn)) {
        return CommandFailure::from(error).hint(
            "walk along the lawn's edge until you are back where you began, within some 5 m; a track that is nearly closed can be \
             mended in a map program",
        );
    }
    let mut command = format!(
        "tussock plan from-walk {}",
        quoted(&arguments.walk.to_string_lossy())
    );
    let seeming = guesses
        .iter()
        .filter_map(|guess| Some(format!("{}={}", guess.title, guess.role?.word())));
    for role in arguments.role.iter().cloned().chain(seeming) {
        command.push_str(&format!(" --role {}", quoted(&role)));
    }
    if !inputs::is_stdin(&arguments.out) {
        command.push_str(&format!(" --out {}", quoted(&arguments.out.to_string_lossy())));
    }
    CommandFailure::from(error)
        .hint(format!("if that is right, run: {command}"))
        .hint("if not, change the roles in it (lawn, boundary, exclusion, obstacle, guide, station); what has none is left out")
}

/// As one word of a shell.
fn quoted(word: &str) -> String {
    let is_plain = |letter: char| letter.is_ascii_alphanumeric() || "./_-=".contains(letter);
    match !word.is_empty() && word.chars().all(is_plain) {
        true => word.to_owned(),
        false if word.contains(['"', '$', '`', '\\', '!']) => format!("'{}'", word.replace('\'', "'\\''")),
        // Double quotes are understood by the shells of Windows too.
        false => format!("\"{word}\""),
    }
}

fn from_trace(arguments: &FromTraceArguments, printer: &Printer) -> CommandResult {
    let file = new_file(&arguments.out)?;
    let (plan, _) = commands::ask(&arguments.log, None, tussock::plan_from_trace)?;
    let text = tussock_ingest::write_plan(&plan);
    write_plan(file.as_ref(), &text, printer)?;
    printer.note(
        "drawn from the drive: zones, obstacles and ground that was never reached are not in it; mend it in a map program, then \
         run tussock plan check",
    );
    Ok(Exit::Done)
}

fn align(arguments: &AlignArguments, printer: &Printer) -> CommandResult {
    let file = new_file(&arguments.out)?;
    let (aligned, _) = commands::ask(&arguments.log, Some(&arguments.plan), tussock::align)?;
    let text = tussock_ingest::write_plan(&aligned.plan);
    write_plan(file.as_ref(), &text, printer)?;
    let offset = aligned.offset;
    let side = |value_m: f64, plus: &str, minus: &str| {
        format!(
            "{:.2} m {}",
            value_m.abs(),
            if value_m < 0.0 { minus } else { plus }
        )
    };
    printer.note(&match aligned.verdict {
        AlignVerdict::Moved => format!(
            "moved {} and {}, turned {:.1} degrees {}; right to about {:.2} m",
            side(offset.east_m, "east", "west"),
            side(offset.north_m, "north", "south"),
            offset.rotation_deg.abs(),
            if offset.rotation_deg < 0.0 {
                "clockwise"
            } else {
                "anticlockwise"
            },
            offset.sd_m
        ),
        AlignVerdict::InPlace => format!(
            "the plan lies where the log says, to about {:.2} m; it was left as it is",
            (3.0 * offset.sd_m).max(math::hypot(offset.east_m, offset.north_m))
        ),
    });
    Ok(Exit::Done)
}
