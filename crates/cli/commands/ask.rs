//! `tussock ask`: what is known of one place?

use crate::args::{AskArguments, Format};
use crate::exit::{CommandFailure, Exit, failure};
use crate::inputs::{name, told};
use crate::printer::Printer;
use crate::{CommandResult, commands, wishes};
use tussock::AskedPlace;
use tussock_types::Place;

pub(crate) fn run(arguments: &AskArguments, printer: &Printer) -> CommandResult {
    let place = place(arguments)?;
    let findings = commands::saved_findings(&arguments.findings)?;
    let found = tussock::ask(&findings, place, arguments.said.clone())
        .map_err(|error| failure!("{}: {}", name(&arguments.findings), told(&error)))?;
    let text = match arguments.format {
        Format::Human => tussock_report::answer_complaint(&found, &findings, printer.style()),
        Format::Json => tussock_report::complaint_to_json(&found)?,
    };
    printer.data(text.as_bytes())?;
    Ok(Exit::Done)
}

fn place(arguments: &AskArguments) -> Result<AskedPlace, CommandFailure> {
    if let Some(typed) = &arguments.at {
        return wishes::position("--at", typed).map(AskedPlace::Geo);
    }
    let typed = arguments.at_m.as_deref().unwrap_or_default();
    let parsed = typed.split_once(',').and_then(|(east, north)| {
        let (east_m, north_m): (f64, f64) = (east.trim().parse().ok()?, north.trim().parse().ok()?);
        (east_m.is_finite() && north_m.is_finite()).then(|| Place::new(east_m, north_m))
    });
    parsed
        .map(AskedPlace::Local)
        .ok_or_else(|| failure!("--at-m: {typed:?} is no place, expected metres east,north, such as 4.5,-2"))
}
