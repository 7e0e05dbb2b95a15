//! The measurements: a log is located once, and every quantity is worked out from it once.
//!
//! | question | module |
//! |---|---|
//! | where was the machine, and on what ground? | [`Survey`] |
//! | does it roam or drive lanes? | [`pattern`] |
//! | how much was driven over, and how sure is that? | [`coverage_count`], [`interval`], [`calibrate`] |
//! | what was driven over while nothing was logged? | [`unseen`] |
//! | when, night by night, and is the promise kept? | [`nights`], [`promise`] |
//! | when did it leave the station, when was it outside? | [`outings`] |
//! | what kind of machine was it? | [`fitted`] |
//! | how is the plan offset from the log? | [`plan_offset`] |
//! | is it a person's walk round the garden instead? | [`walk_round`] |
//!
//! Every other room asks here; none measures again.

pub mod calibrate;
pub mod coverage_count;
mod error;
#[cfg(test)]
mod error_tests;
pub mod fitted;
pub mod interval;
mod job;
mod lanes;
pub mod laws;
pub mod log_findings;
pub mod nights;
pub mod outings;
pub mod outline;
pub mod over_time;
pub mod pattern;
pub mod plan_offset;
pub mod promise;
pub mod sun;
pub mod survey;
pub mod unseen;
pub mod walk_round;

pub use error::{AnalyseError, period};
pub use job::{Advice, Calibrate, Job, Stage};
pub use survey::{Lawn, Survey};
