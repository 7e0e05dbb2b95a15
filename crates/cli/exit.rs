//! How a run ends.

use std::process::ExitCode;
use tussock_types::with_causes;

/// The exit codes that scripts may rely on.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Exit {
    /// Done.
    Done = 0,
    /// Done, but a threshold that the user set was missed.
    BelowThreshold = 1,
    /// Wrong use, or something failed; nothing was written unless the message says so.
    Failed = 2,
    /// A night shift is done, except for logs or gardens that could not be used.
    SomeUnusable = 3,
    /// A night shift found nothing where there used to be something.
    NothingFound = 4,
    /// The store or its disk is at fault.
    Store = 5,
    /// Interrupted.
    Interrupted = 130,
}

impl From<Exit> for ExitCode {
    fn from(exit: Exit) -> Self {
        Self::from(exit as u8)
    }
}

/// Why a run stopped early.
#[derive(Debug)]
pub(crate) enum CommandFailure {
    /// Something to report: what was found and what was expected, then what to do about it.
    Told {
        /// One sentence, lower case, no full stop; further lines give details.
        message: String,
        /// What the user can do.
        hints: Vec<String>,
        /// How the run ends.
        exit: Exit,
    },
    /// Whoever read our output has gone; the run then ends without an error.
    ReaderGone,
    /// Ctrl-C.
    Interrupted,
}

/// Something to report, written as for `format!`.
macro_rules! failure {
    ($($said:tt)*) => {
        $crate::exit::CommandFailure::told(format!($($said)*))
    };
}
pub(crate) use failure;

impl CommandFailure {
    pub(crate) fn told(message: impl Into<String>) -> Self {
        Self::Told {
            message: message.into(),
            hints: Vec::new(),
            exit: Exit::Failed,
        }
    }

    pub(crate) fn hint(mut self, hint: impl Into<String>) -> Self {
        if let Self::Told { hints, .. } = &mut self {
            hints.push(hint.into());
        }
        self
    }

    /// Uses an exit code other than 2.
    pub(crate) fn ending(mut self, ends: Exit) -> Self {
        if let Self::Told { exit, .. } = &mut self {
            *exit = ends;
        }
        self
    }

    pub(crate) fn maybe_hint(self, hint: Option<impl Into<String>>) -> Self {
        match hint {
            Some(hint) => self.hint(hint),
            None => self,
        }
    }
}

/// An error of a room below, reported with its causes.
impl<E: std::error::Error> From<E> for CommandFailure {
    fn from(error: E) -> Self {
        Self::told(with_causes(&error))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_codes_are_the_documented_ones() {
        let codes = [
            Exit::Done,
            Exit::BelowThreshold,
            Exit::Failed,
            Exit::SomeUnusable,
            Exit::NothingFound,
            Exit::Store,
            Exit::Interrupted,
        ];
        assert_eq!(codes.map(|exit| exit as u8), [0, 1, 2, 3, 4, 5, 130]);
    }
}
