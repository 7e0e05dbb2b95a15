//! The one call: traces, plan and settings in, findings out.
//!
//! | question | call |
//! |---|---|
//! | Is this log good enough? | [`inspect`] |
//! | How does its receiver err at rest? | [`errors_at_rest`] |
//! | How much was driven over, what was missed, where did it get stuck? | [`analyse`] |
//! | How many cells of this grid were visited, by this rule? | [`count_on_grid`] |
//! | How far is the log from a surveyed path? | [`against_reference`] |
//! | What are the measures of a pattern used in papers? | [`measures::measures`] |
//! | Do two patterns differ, and how many nights are needed to show it? | [`statistics`] |
//! | What did a change bring? | [`compare`] |
//! | What is the plan with a suggestion built in? | [`built`] |
//! | Is this plan sound, and how large is everything in it? | [`check_plan`] |
//! | How must the plan move to agree with the log? | [`align`] |
//! | What does the plan look like when it is drawn to match the garden? | [`mended_plan`] |
//!
//! ```
//! use tussock::types::{Fix, Settings, Trace};
//! use tussock::{Job, analyse};
//!
//! // Twenty lanes of 12 m, half a metre apart, one fix a second at 0.4 m/s, in metres of the log's own.
//! let mut trace = Trace::local("m1");
//! for second in 0..700 {
//!     let (lane, along_m) = (second / 35, 0.35 * f64::from(second % 35));
//!     let east_m = if lane % 2 == 0 { along_m } else { 12.0 - along_m };
//!     trace.push(Fix::bare(1.8e9 + f64::from(second), east_m, 0.5 * f64::from(lane)));
//! }
//! let mut settings = Settings::default();
//! settings.machine.cut_width_m = Some(0.22);
//! let findings = analyse(&Job::new(&[trace], &settings).without_advice())?;
//! let visited = findings.coverage.expect("a cutting width was given").visited_fraction;
//! assert!((0.3..0.7).contains(&visited.estimate), "lanes half a metre apart leave half of it: {visited:?}");
//! # Ok::<(), tussock::AnalyseError>(())
//! ```
//!
//! The rooms below are re-exported: [`types`], [`plane`], [`locate`], [`coverage`], [`diagnose`], [`simulate`].
//! `tussock-ingest` reads logs and `tussock-report` draws findings; nothing here opens a file, prints, or asks the clock.
//! The same job gives the same findings on any number of threads.

mod align;
mod analyse;
mod as_logged_remark;
mod ask;
mod built;
mod clock_check;
mod compare;
#[cfg(test)]
mod error_tests;
mod from_trace;
mod inspect;
mod mended;
mod plan_check;
mod plan_forecast;
mod receiver_accuracy;
mod stale_positions;
mod verdict;

pub use align::{AlignVerdict, Aligned, align};
pub use analyse::{analyse, analyse_as, analyse_survey};
pub use ask::ask;
pub use built::built;
pub use compare::{CompareError, Side, Sides, compare};
pub use from_trace::plan_from_trace;
pub use inspect::{errors_at_rest, inspect};
pub use mended::{MendedPlan, mended_plan};
pub use plan_check::{PlanReport, PlanRow, check_plan, sound_plan};
pub use plan_forecast::{TypicalRun, plan_forecast};
pub use tussock_coverage as coverage;
pub use tussock_diagnose as diagnose;
pub use tussock_locate as locate;
pub use tussock_plane as plane;
pub use tussock_simulate as simulate;
pub use tussock_study::{
    BESIDE_M, DUE_WITHIN_S, GridCorners, GridJob, GridJobError, GridPath, PASSES_WITHIN_S, against_reference,
    count_on_grid, measures, statistics,
};
pub use tussock_survey::{Advice, AnalyseError, Calibrate, Job, Stage, Survey};
pub use tussock_types as types;

/// Version of the tool, as stated in every result.
pub const TOOL_VERSION: &str = env!("CARGO_PKG_VERSION");
