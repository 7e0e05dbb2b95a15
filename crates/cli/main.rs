//! The command `tussock`: finds the grass that an autonomous mower leaves standing.
//!
//! The counter: it takes arguments, opens files, calls the rooms below, and writes out their answers. It measures nothing
//! itself.
//!
//! Every run takes the same steps in the same order, so that a mistake is reported before any work is done: arguments
//! ([`args`], as typed) -> wishes ([`wishes`], checked) -> outputs ([`outputs`], probed) -> inputs ([`inputs`], read) ->
//! work ([`commands`]) -> everything rendered -> everything written -> answer printed.

mod args;
mod commands;
mod exit;
mod inputs;
mod interrupt;
mod journal;
mod metrics;
mod outputs;
mod printer;
mod progress;
mod units;
mod wishes;

use args::{Arguments, Command};
use clap::Parser;
use exit::{CommandFailure, Exit};
use printer::Printer;
use std::process::ExitCode;

fn main() -> ExitCode {
    let printer = Printer::new();
    interrupt::install();
    let arguments = match Arguments::try_parse() {
        Ok(arguments) => arguments,
        Err(error) => return usage(&error).into(),
    };
    let result = match arguments.command {
        Command::Inspect(arguments) => commands::inspect::run(&arguments, &printer),
        Command::Analyse(arguments) => commands::analyse::run(&arguments, &printer),
        Command::Compare(arguments) => commands::compare::run(&arguments, &printer),
        Command::Plan(arguments) => commands::plan::run(&arguments, &printer),
        Command::Ask(arguments) => commands::ask::run(&arguments, &printer),
        Command::Visits(arguments) => commands::visits::run(&arguments, &printer),
        Command::Report(arguments) => commands::report::run(&arguments, &printer),
        Command::Batch(arguments) => commands::batch::run(&arguments, &printer),
        Command::Simulate(arguments) => commands::simulate::run(&arguments, &printer),
    };
    result.unwrap_or_else(|failure| printer.failure(&failure)).into()
}

/// Help and version go to stdout, wrong use to stderr; a reader that has gone is not an error.
fn usage(error: &clap::Error) -> Exit {
    let printed = error.print();
    match (error.use_stderr(), printed) {
        (true, _) => Exit::Failed,
        (false, Err(gone)) if gone.kind() != std::io::ErrorKind::BrokenPipe => Exit::Failed,
        (false, _) => Exit::Done,
    }
}

/// The result of a command.
type CommandResult = Result<Exit, CommandFailure>;
