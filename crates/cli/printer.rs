//! The only place that writes to the terminal: data on stdout, all else on stderr.

use crate::exit::{Exit, Failure};
use anstream::{AutoStream, ColorChoice};
use anstyle::{AnsiColor, Style as TextStyle};
use std::io::{ErrorKind, IsTerminal, Write};
use tussock_report::{Colour, Style};

const ERROR: TextStyle = AnsiColor::Magenta.on_default().bold();
const HINT: TextStyle = AnsiColor::Cyan.on_default().bold();
/// Columns of the answer where stdout is no terminal.
const COLUMNS_ELSEWHERE: usize = 80;

/// Writes data and messages.
pub(crate) struct Printer {
    style: Style,
}

impl Printer {
    pub(crate) fn new() -> Self {
        // `choice` knows NO_COLOR, CLICOLOR, CLICOLOR_FORCE and TERM, and whether stdout is a terminal.
        let colour = match AutoStream::choice(&std::io::stdout()) {
            ColorChoice::Never => Colour::Plain,
            _ => Colour::Ansi,
        };
        let width_columns = terminal_size::terminal_size_of(std::io::stdout())
            .map_or(COLUMNS_ELSEWHERE, |(terminal_size::Width(columns), _)| {
                usize::from(columns)
            });
        Self {
            style: Style {
                colour,
                width_columns,
            },
        }
    }

    /// How an answer is set on this stdout.
    pub(crate) const fn style(&self) -> Style {
        self.style
    }

    /// Data, as it is.
    pub(crate) fn data(&self, bytes: &[u8]) -> Result<(), Failure> {
        let mut out = std::io::stdout().lock();
        out.write_all(bytes)
            .and_then(|()| out.flush())
            .map_err(|error| match error.kind() {
                ErrorKind::BrokenPipe => Failure::ReaderGone,
                _ => Failure::told(format!("stdout: cannot be written: {error}")),
            })
    }

    /// One line that is no data.
    pub(crate) fn note(&self, text: &str) {
        let mut err = anstream::stderr().lock();
        // Where even stderr is closed there is nobody left to tell.
        let _ = writeln!(err, "{}", harmless(text));
    }

    /// What to do next: for people at a terminal, so that a script that succeeded hears nothing.
    pub(crate) fn hint(&self, text: &str) {
        if !std::io::stderr().is_terminal() {
            return;
        }
        let mut err = anstream::stderr().lock();
        let _ = writeln!(err, "{HINT}hint:{HINT:#} {}", harmless(text));
    }

    /// Says what went wrong, and which exit code that is.
    pub(crate) fn failure(&self, failure: &Failure) -> Exit {
        match failure {
            Failure::ReaderGone => Exit::Done,
            Failure::Interrupted => Exit::Interrupted,
            Failure::Told { message, hints } => {
                let mut err = anstream::stderr().lock();
                let mut lines = message.lines();
                let _ = writeln!(
                    err,
                    "{ERROR}error:{ERROR:#} {}",
                    harmless(lines.next().unwrap_or_default())
                );
                for line in lines {
                    let _ = writeln!(err, "  {}", harmless(line));
                }
                for hint in hints {
                    let _ = writeln!(err, "{HINT}hint:{HINT:#} {}", harmless(hint));
                }
                Exit::Failed
            }
        }
    }
}

/// Names come from files and arguments: none of them may steer the terminal.
pub(crate) fn harmless(text: &str) -> String {
    let is_steering = |letter: char| {
        letter.is_control()
            || matches!(letter, '\u{200e}' | '\u{200f}' | '\u{202a}'..='\u{202e}' | '\u{2066}'..='\u{2069}')
    };
    text.chars()
        .map(|letter| if is_steering(letter) { '\u{fffd}' } else { letter })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_name_cannot_steer_the_terminal() {
        assert_eq!(
            harmless("a\u{1b}[2Jb\u{202e}c\r.gpx"),
            "a\u{fffd}[2Jb\u{fffd}c\u{fffd}.gpx"
        );
    }
}
