//! `tussock ask`: what is known about one place?

use crate::args::{AskArguments, Format};
use crate::exit::{CommandFailure, Exit, failure};
use crate::inputs::{self, name};
use crate::printer::Printer;
use crate::{CommandResult, commands, wishes};
use tussock_types::{ComplaintFindings, ComplaintSettings, Place, with_causes};

pub(crate) fn run(arguments: &AskArguments, printer: &Printer) -> CommandResult {
    let asked = places(arguments)?;
    let findings = commands::saved_findings(&arguments.findings)?;
    let found: Vec<ComplaintFindings> = (asked.iter())
        .map(|asked| tussock::ask(&findings, asked))
        .collect::<Result<_, _>>()
        .map_err(|error| failure!("{}: {}", name(&arguments.findings), with_causes(&error)))?;
    let text = match arguments.format {
        Format::Human => {
            let voices = wishes::voices(arguments.voice, &findings.settings.garden);
            let style = printer.style(voices.terminal);
            let answer = |found| tussock_report::answer_complaint(found, &findings, style);
            found.iter().map(answer).collect::<Vec<String>>().join("\n")
        }
        Format::Json => tussock_report::complaints_to_json(&found)?,
    };
    printer.data(text.as_bytes())?;
    Ok(Exit::Done)
}

fn places(arguments: &AskArguments) -> Result<Vec<ComplaintSettings>, CommandFailure> {
    if let Some(path) = &arguments.waypoints {
        return Ok(tussock_ingest::complaints_from_waypoints(
            &name(path),
            &inputs::bytes(path)?,
        )?);
    }
    let mut asked = ComplaintSettings {
        said: arguments.said.clone(),
        ..ComplaintSettings::default()
    };
    if let Some(typed) = &arguments.at {
        let at = wishes::position("--at", typed)?;
        asked.at_deg = Some([at.lat_deg, at.lon_deg]);
    } else {
        let typed = arguments.at_m.as_deref().unwrap_or_default();
        let at: Place = typed.parse().map_err(|error| failure!("--at-m: {error}"))?;
        asked.at_m = Some([at.east_m, at.north_m]);
    }
    Ok(vec![asked])
}
