//! The researcher's bench: the questions that papers ask, beside those of a garden.
//!
//! | question | item |
//! |---|---|
//! | What are the measures of a pattern used in papers? | [`measures::measures`] |
//! | Which pattern is it? | [`measures::guess_pattern`] |
//! | Do two patterns differ, and how many nights are needed to show it? | [`statistics`] |
//! | How many cells of this grid were visited, by this rule? | [`count_on_grid`] |
//! | How far is the log from a surveyed path? | [`against_reference`] |
//!
//! Everything here uses the survey of the log; nothing is located a second time.

#[cfg(test)]
mod error_tests;
pub mod measures;
mod on_grid;
mod reference;
pub mod statistics;

pub use on_grid::{GridCorners, GridJob, GridJobError, GridPath, count_on_grid};
pub use reference::{BESIDE_M, DUE_WITHIN_S, PASSES_WITHIN_S, against_reference};
