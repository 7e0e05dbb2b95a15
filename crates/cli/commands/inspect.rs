//! `tussock inspect`: is this log good enough?

use crate::args::{Format, InspectArguments};
use crate::exit::Exit;
use crate::outputs::{NewFile, write_new};
use crate::printer::Printer;
use crate::{CommandResult, commands, wishes};

pub(crate) fn run(arguments: &InspectArguments, printer: &Printer) -> CommandResult {
    let card = arguments.write_error.as_deref().map(NewFile::probe).transpose()?;
    let ((inspection, errors), settings) = commands::ask(&arguments.log, arguments.plan.as_ref(), |job| {
        let errors = card.as_ref().map(|_| tussock::errors_at_rest(job)).transpose()?;
        Ok((tussock::inspect(job)?, errors))
    })?;
    let text = match arguments.format {
        Format::Human => {
            let voices = wishes::voices(arguments.voice, &settings.garden);
            tussock_report::answer_inspection(&inspection, printer.style(voices.terminal))
        }
        Format::Json => tussock_report::inspection_to_json(&inspection)?,
    };
    if let (Some(card), Some(errors)) = (&card, &errors) {
        write_new(&[(card, tussock_ingest::write_error_series(errors).as_bytes())])?;
        printer.note(&format!(
            "error at rest, {:.0} min: written",
            errors.lasts_s() / 60.0
        ));
    }
    printer.data(text.as_bytes())?;
    Ok(Exit::Done)
}
