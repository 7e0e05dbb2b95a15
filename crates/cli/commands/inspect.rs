//! `tussock inspect`: is this log good enough?

use crate::args::{Format, InspectArguments};
use crate::exit::Exit;
use crate::printer::Printer;
use crate::{CommandResult, commands, wishes};

pub(crate) fn run(arguments: &InspectArguments, printer: &Printer) -> CommandResult {
    let (inspection, settings) = commands::ask(&arguments.log, arguments.plan.as_ref(), tussock::inspect)?;
    let text = match arguments.format {
        Format::Human => {
            let voices = wishes::voices(arguments.voice, &settings.garden);
            tussock_report::answer_inspection(&inspection, printer.style(voices.terminal))
        }
        Format::Json => tussock_report::inspection_to_json(&inspection)?,
    };
    printer.data(text.as_bytes())?;
    Ok(Exit::Done)
}
