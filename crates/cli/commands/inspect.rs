//! `tussock inspect`: is this log good enough?

use crate::args::{Format, InspectArguments};
use crate::exit::Exit;
use crate::inputs;
use crate::printer::Printer;
use crate::progress::Progress;
use crate::{CommandResult, commands, wishes};
use tussock::Stage;

pub(crate) fn run(arguments: &InspectArguments, printer: &Printer) -> CommandResult {
    let mut options = wishes::read_options(&arguments.log)?;
    wishes::threads(arguments.log.threads)?;
    inputs::check(&arguments.log.logs, "a log (GPX, NMEA 0183, CSV, ...)")?;
    inputs::check_garden(arguments.plan.as_ref(), arguments.log.settings.as_ref())?;
    let settings = inputs::settings(arguments.log.settings.as_deref())?;
    options.limits = settings.limits.clone();
    let plan = arguments
        .plan
        .as_ref()
        .map(|path| commands::sound_plan(path, &settings))
        .transpose()?;
    let progress = Progress::new();
    let assembled = inputs::logs(&arguments.log.logs, &options, &|what, done| {
        progress.tell(what, done)
    })?;
    let tell = |stage: Stage, done_fraction: f64| progress.tell(stage.words(), done_fraction);
    let job = commands::job(&assembled, plan.as_ref(), &settings, &tell);
    let inspection =
        tussock::inspect(&job).map_err(|error| commands::cannot_go_on(&error, arguments.plan.as_deref()))?;
    drop(progress);
    let text = match arguments.format {
        Format::Human => tussock_report::answer_inspection(&inspection, printer.style()),
        Format::Json => tussock_report::inspection_to_json(&inspection)?,
    };
    printer.data(text.as_bytes())?;
    Ok(Exit::Done)
}
