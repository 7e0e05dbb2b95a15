//! What a night shift reports on stderr: lines for people, or one JSON object per line for programs.

use crate::CommandResult;
use crate::args::Format;
use crate::exit::CommandFailure;
use crate::printer::Printer;
use serde_json::{Value, json};
use time::OffsetDateTime;
use time::format_description::well_known::Rfc3339;

/// How serious it is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Gravity {
    Info,
    Warning,
    Error,
}

/// Reports what a run does, under one name for the run.
pub(crate) struct Journal<'a> {
    printer: &'a Printer,
    format: Format,
    run: String,
}

impl<'a> Journal<'a> {
    /// A run is named after its start time and its process.
    pub(crate) fn new(printer: &'a Printer, format: Format, begin_unix_s: f64) -> Self {
        Self {
            printer,
            format,
            run: format!("{}-{}", begin_unix_s as u64, std::process::id()),
        }
    }

    /// Reports one event; in JSON with its figures.
    pub(crate) fn tell(&self, level: Gravity, garden: Option<&str>, message: &str, figures: &Value) {
        match self.format {
            Format::Human => self.printer.note(message),
            Format::Json => self.line(level, garden, message, figures),
        }
    }

    /// Details that only programs need.
    pub(crate) fn detail(&self, garden: Option<&str>, message: &str, figures: &Value) {
        if self.format == Format::Json {
            self.line(Gravity::Info, garden, message, figures);
        }
    }

    /// Reports why the run ends, and ends it: in JSON here, otherwise where every command does.
    pub(crate) fn failure(&self, failure: CommandFailure) -> CommandResult {
        match failure {
            CommandFailure::Told { message, exit, .. } if self.format == Format::Json => {
                self.line(Gravity::Error, None, &message, &json!({"exit_code": exit as u8}));
                Ok(exit)
            }
            other => Err(other),
        }
    }

    fn line(&self, level: Gravity, garden: Option<&str>, message: &str, figures: &Value) {
        let level = match level {
            Gravity::Info => "info",
            Gravity::Warning => "warning",
            Gravity::Error => "error",
        };
        let now = OffsetDateTime::now_utc().replace_nanosecond(0).ok();
        let mut line = json!({
            "time": now.and_then(|now| now.format(&Rfc3339).ok()),
            "level": level, "run": self.run, "garden": garden, "message": message,
        });
        if let (Some(line), Some(figures)) = (line.as_object_mut(), figures.as_object()) {
            line.extend(figures.clone());
        }
        self.printer.note(&line.to_string());
    }
}
