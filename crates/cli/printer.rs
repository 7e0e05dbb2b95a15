//! The only place that writes to the terminal: data on stdout, all else on stderr.

use crate::exit::{CommandFailure, Exit, failure};
use anstream::{AutoStream, ColorChoice};
use anstyle::{AnsiColor, Style as TextStyle};
use std::borrow::Cow;
use std::io::{ErrorKind, IsTerminal, Write};
use tussock_report::{Colour, Style, Voice, is_hostile};

const ERROR: TextStyle = AnsiColor::Magenta.on_default().bold();
const HINT: TextStyle = AnsiColor::Cyan.on_default().bold();
/// Width of the answer in columns if stdout is not a terminal.
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
                voice: Voice::default(),
            },
        }
    }

    /// How an answer is styled on this stdout.
    pub(crate) const fn style(&self, voice: Voice) -> Style {
        Style { voice, ..self.style }
    }

    /// Data: our own text, or JSON.
    pub(crate) fn data(&self, bytes: &[u8]) -> Result<(), CommandFailure> {
        let mut out = std::io::stdout().lock();
        out.write_all(&harmless_json(bytes))
            .and_then(|()| out.flush())
            .map_err(|error| match error.kind() {
                ErrorKind::BrokenPipe => CommandFailure::ReaderGone,
                _ => failure!("stdout: cannot be written: {error}"),
            })
    }

    /// A line that is not data.
    pub(crate) fn note(&self, text: &str) {
        let mut err = anstream::stderr().lock();
        // If even stderr is closed, there is nobody left to tell.
        let _ = writeln!(err, "{}", harmless(text));
    }

    /// What to do next: for people at a terminal only, so that a script that succeeded sees nothing.
    pub(crate) fn hint(&self, text: &str) {
        if !std::io::stderr().is_terminal() {
            return;
        }
        let mut err = anstream::stderr().lock();
        let _ = writeln!(err, "{HINT}hint:{HINT:#} {}", harmless(text));
    }

    /// Reports what went wrong, and returns the exit code for it.
    pub(crate) fn failure(&self, failure: &CommandFailure) -> Exit {
        match failure {
            CommandFailure::ReaderGone => Exit::Done,
            CommandFailure::Interrupted => Exit::Interrupted,
            CommandFailure::Told { message, hints, exit } => {
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
                *exit
            }
        }
    }
}

/// Names come from files and arguments: none of them may control the terminal.
pub(crate) fn harmless(text: &str) -> String {
    text.chars()
        .map(|letter| if is_hostile(letter) { '\u{fffd}' } else { letter })
        .collect()
}

/// JSON in which characters that could control the terminal are written as escapes with the same meaning; any other data
/// unchanged.
fn harmless_json(bytes: &[u8]) -> Cow<'_, [u8]> {
    // Line ends and tabs occur between values; inside texts they are already escaped.
    let is_raw = |letter: char| is_hostile(letter) && !matches!(letter, '\n' | '\r' | '\t');
    let text = std::str::from_utf8(bytes).unwrap_or_default();
    if !text.starts_with('{') || !text.contains(is_raw) {
        return Cow::Borrowed(bytes);
    }
    let mut out = String::with_capacity(text.len() + 64);
    for letter in text.chars() {
        if is_raw(letter) {
            let units = letter.encode_utf16(&mut [0; 2]).to_vec();
            units
                .iter()
                .for_each(|unit| out.push_str(&format!("\\u{unit:04x}")));
        } else {
            out.push(letter);
        }
    }
    Cow::Owned(out.into_bytes())
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

    #[test]
    fn json_means_the_same_when_its_marks_are_escaped() {
        let name = "\u{9b}2J\u{202e}\u{200f}\u{7f}\u{e0041}\u{fc}\n";
        let text = format!("{:#}\n", serde_json::json!({"name": name}));
        let shown = String::from_utf8(harmless_json(text.as_bytes()).into_owned()).expect("text");
        assert!(
            !shown.contains(|letter| is_hostile(letter) && letter != '\n'),
            "{shown:?}"
        );
        let read: serde_json::Value = serde_json::from_str(&shown).expect("JSON");
        assert_eq!(read["name"], name);
    }
}
