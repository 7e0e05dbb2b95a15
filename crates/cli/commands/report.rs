//! `tussock report`: draw page and files again from saved findings.

use crate::CommandResult;
use crate::args::ReportArguments;
use crate::commands;
use crate::exit::Exit;
use crate::outputs::OutputFolder;
use crate::printer::Printer;
use crate::wishes;
use tussock_report::Privacy;

pub(crate) fn run(arguments: &ReportArguments, printer: &Printer) -> CommandResult {
    let folder = OutputFolder::probe(&arguments.out, [&arguments.findings])?;
    let findings = commands::saved_findings(&arguments.findings)?;
    let privacy = Privacy::from(arguments.private);
    let voices = wishes::voices(arguments.voice, &findings.settings.garden);
    let written = folder.write(&commands::render(
        &findings,
        privacy,
        &arguments.picture,
        voices.page,
    )?)?;
    commands::note_left_out(&findings, privacy, printer, voices.terminal);
    let names: Vec<String> = written.iter().map(|path| path.display().to_string()).collect();
    printer.data(tussock_report::answer_files(&names, printer.style(voices.terminal)).as_bytes())?;
    Ok(Exit::Done)
}
