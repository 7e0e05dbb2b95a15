//! How a run ends.

use std::process::ExitCode;

/// The exit codes that scripts may rely on.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Exit {
    /// 0: done.
    Done,
    /// 1: done, but a threshold that the user set was missed.
    BelowThreshold,
    /// 2: wrong use, or something failed; nothing was written unless the message says so.
    Failed,
    /// 3: a night shift is done, but for logs or gardens that could not be used.
    SomeUnusable,
    /// 4: a night shift found nothing where there was something.
    NothingFound,
    /// 5: the store or its disk is at fault.
    Store,
    /// 130: interrupted.
    Interrupted,
}

impl Exit {
    pub(crate) const fn code(self) -> u8 {
        match self {
            Self::Done => 0,
            Self::BelowThreshold => 1,
            Self::Failed => 2,
            Self::SomeUnusable => 3,
            Self::NothingFound => 4,
            Self::Store => 5,
            Self::Interrupted => 130,
        }
    }
}

impl From<Exit> for ExitCode {
    fn from(exit: Exit) -> Self {
        Self::from(exit.code())
    }
}

/// Why a run stopped early.
#[derive(Debug)]
pub(crate) enum CommandFailure {
    /// Something to tell: what was found and what was expected, then what to do about it.
    Told {
        /// One sentence, lower case, no full stop; further lines give details.
        message: String,
        /// What the user can do.
        hints: Vec<String>,
        /// How the run ends.
        exit: Exit,
    },
    /// The reader of our output went away; that ends the run well.
    ReaderGone,
    /// Ctrl-C.
    Interrupted,
}

/// Something to tell, written as for `format!`.
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

    /// Ends with another code than 2.
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

/// An error of a room below, told with its causes.
impl<E: std::error::Error> From<E> for CommandFailure {
    fn from(error: E) -> Self {
        Self::told(crate::inputs::told(&error))
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
        assert_eq!(codes.map(Exit::code), [0, 1, 2, 3, 4, 5, 130]);
    }
}
