//! `tussock plan`: is this plan sound; make one from a walk.

use crate::args::{
    AlignArguments, Format, FromTraceArguments, FromWalkArguments, PlanCheckArguments, PlanCommand,
};
use crate::exit::{CommandFailure, Exit};
use crate::inputs::{self, name};
use crate::outputs::{NewFile, OutputFolder, Rendered, write_new};
use crate::printer::{Printer, harmless};
use crate::{CommandResult, commands, wishes};
use serde_json::json;
use std::path::Path;
use tussock::{AlignVerdict, PlanReport, PlanRow, TypicalRun};
use tussock_ingest::WalkError;
use tussock_report::Voice;
use tussock_types::math;
use tussock_types::{PlanForecast, PlanRole, Settings, decimal, plural};

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
    let written = match (&folder, &forecast) {
        (Some(folder), Some(forecast)) => folder.write(&drawn(
            forecast,
            &settings,
            wishes::voices(arguments.voice, &settings.garden).page,
        )?)?,
        _ => Vec::new(),
    };
    let text = match arguments.format {
        Format::Human => {
            let ahead = forecast
                .as_ref()
                .map(|forecast| ahead(forecast, &settings))
                .unwrap_or_default();
            let files = written
                .iter()
                .map(|path| format!("Written: {}\n", path.display()));
            let gap = if written.is_empty() { "" } else { "\n" };
            table(&report, is_sound) + &ahead + gap + &files.collect::<String>()
        }
        Format::Json => json(&report, forecast.as_ref(), is_sound),
    };
    printer.data(text.as_bytes())?;
    if is_sound {
        Ok(Exit::Done)
    } else {
        Err(commands::plan_faults(&name(&arguments.plan), &report.faults))
    }
}

fn table(report: &PlanReport, is_sound: bool) -> String {
    let mut text = String::new();
    if let (Some(lawn_m2), Some(edge_m), true) = (report.lawn_m2, report.edge_m, is_sound) {
        text.push_str(&format!("Lawn to be cut: {lawn_m2:.1} m2 within {edge_m:.1} m of edge (zones and obstacles taken out).\n\n"));
        let widest = report
            .rows
            .iter()
            .map(|row| row.name.chars().count())
            .max()
            .unwrap_or(0)
            .clamp(4, 40);
        text.push_str(&format!(
            "{:>7}  {:<9}  {:<widest$}  {:>10}  {:>9}\n",
            "feature", "role", "name", "area m2", "length m"
        ));
        for row in &report.rows {
            let name: String = harmless(&row.name).chars().take(40).collect();
            let number = |value: Option<f64>| value.map_or("-".to_owned(), |value| format!("{value:.1}"));
            text.push_str(&format!(
                "{:>7}  {:<9}  {name:<widest$}  {:>10}  {:>9}\n",
                row.feature,
                row.role.word(),
                number(row.area_m2),
                number(row.length_m)
            ));
        }
        if report.faults.is_empty() {
            text.push_str("\nNo faults.\n");
        } else {
            text.push_str("\nTo look at:\n");
            for fault in &report.faults {
                text.push_str(&format!("  {}\n", harmless(&fault.to_string())));
            }
        }
    }
    text
}

/// The plan's forecast, in words.
fn ahead(forecast: &PlanForecast, settings: &Settings) -> String {
    let mut text = String::new();
    if !forecast.passages.is_empty() {
        text.push_str(&format!(
            "\nPassages, for a machine whose middle turns {:.2} m before the edge:\n\n{:>3}  {:>7}  {:>6}  {:>8}  {:>9}  {:>15}  {:>10}\n",
            forecast.setback_m, "id", "width m", "free m", "length m", "behind m2", "changes per day", "fair share"
        ));
        for (passage, share) in forecast.passages.iter().zip(&forecast.passage_share_fraction) {
            let changes = passage.crossings_expected.unwrap_or(0.0);
            text.push_str(&format!(
                "{:>3}  {:>7.2}  {:>6.2}  {:>8.1}  {:>9.0}  {changes:>15.1}  {:>8.0} %\n",
                passage.id,
                passage.width_m,
                passage.free_width_m.max(0.0),
                passage.length_m,
                passage.behind_m2,
                100.0 * share
            ));
        }
        if forecast
            .passages
            .iter()
            .any(|passage| passage.free_width_m <= 0.0)
        {
            text.push_str("Where nothing is free the machine does not get through.\n");
        }
    }
    for part in &forecast.out_of_reach {
        text.push_str(&format!(
            "\nOut of reach: {:.1} m2 round {} m east, {} m north of the lawn's middle.\n",
            part.area_m2,
            decimal(part.east_m, 1),
            decimal(part.north_m, 1)
        ));
    }
    if forecast.edges_m2 > 0.0 {
        text.push_str(&format!(
            "\nEdges and corners that the disc does not get to: {:.1} m2 (to trim by hand).\n",
            forecast.edges_m2
        ));
    }
    if let Some(days) = &forecast.days {
        text.push_str(&format!(
            "\nDriven over, at {:.1} working hours a day ({} simulated runs, nine of ten in the range):\n",
            days.working_h_per_day, days.runs
        ));
        for (number, fraction) in days.visited_fraction.iter().enumerate() {
            text.push_str(&format!(
                "  day {:>2}  {:>5.1} %  ({:.1} to {:.1} %)\n",
                number + 1,
                100.0 * fraction.estimate,
                100.0 * fraction.low.unwrap_or(fraction.estimate),
                100.0 * fraction.high.unwrap_or(fraction.estimate)
            ));
        }
        let promise = &settings.promise;
        text.push_str(&match days.needed_h_per_day {
            Some(hours) => format!(
                "The promise ({:.0} % within {}) needs about {hours:.1} working hours a day. Add hours by day: small animals are out at night.\n",
                100.0 * promise.visited_fraction,
                plural(promise.days, "day", "days")
            ),
            None => format!(
                "The promise ({:.0} % within {}) cannot be reached with more hours alone.\n",
                100.0 * promise.visited_fraction,
                plural(promise.days, "day", "days")
            ),
        });
    }
    text
}

fn json(report: &PlanReport, forecast: Option<&PlanForecast>, is_sound: bool) -> String {
    let rows: Vec<_> = report
        .rows
        .iter()
        .map(|PlanRow { role, name, feature, area_m2, length_m }| {
            json!({"feature": feature, "role": role.word(), "name": name, "area_m2": area_m2, "length_m": length_m})
        })
        .collect();
    let value = json!({
        "is_sound": is_sound,
        "lawn_m2": report.lawn_m2,
        "edge_m": report.edge_m,
        "features": rows,
        "faults": report.faults,
        "forecast": forecast.map(|forecast| PlanForecast { typical: None, ..forecast.clone() }),
    });
    format!("{value:#}\n")
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
    for notice in &walked.notices {
        printer.note(&format!("note: {}", notice.sentence));
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
