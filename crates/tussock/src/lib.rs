//! The one call: traces, plan and settings in, findings out.
//!
//! | question | call |
//! |---|---|
//! | Is this log good enough? | [`inspect`] |
//! | How much was driven over, what was missed, where did it get stuck? | [`analyse`] |
//! | How many cells of this grid were visited, by this rule? | [`count_on_grid`] |
//! | How far is the log from a surveyed path? | [`against_reference`] |
//! | What do a pattern's numbers say, as papers give them? | [`measures::measures`] |
//! | Do two patterns differ, and how many nights does it take to tell? | [`statistics`] |
//! | What did a change bring? | [`compare`] |
//! | What would the plan be with a suggestion built in? | [`built`] |
//! | Is this plan sound, and how large is everything in it? | [`check_plan`] |
//! | Where does the plan lie, as the log sees it? | [`align`] |
//!
//! The rooms below stay reachable: [`types`], [`plane`], [`locate`], [`coverage`], [`diagnose`], [`simulate`]. Reading logs is
//! the business of `tussock-ingest`, drawing findings that of `tussock-report`; nothing here opens a file, prints, or asks
//! the clock. The same job gives the same findings on any number of threads.

mod advice;
mod align;
mod analyse;
mod because;
mod built;
mod calibrate;
mod clock_check;
mod compare;
mod coverage_count;
mod error;
#[cfg(test)]
mod error_tests;
mod from_trace;
mod ground;
mod inspect;
mod installation;
mod interval;
pub mod measures;
mod nights;
mod on_grid;
mod outline;
mod pattern;
mod plan_check;
mod plan_forecast;
mod plan_offset;
mod pocket_verdicts;
mod promise;
mod receiver_accuracy;
mod reference;
mod site_analysis;
mod spots;
mod stale_positions;
pub mod statistics;
mod unseen;
mod verdict;

pub use align::{AlignVerdict, Aligned, align};
pub use analyse::{analyse, analyse_as};
pub use built::built;
pub use compare::{CompareError, Side, Sides, compare};
pub use error::AnalyseError;
pub use from_trace::plan_from_trace;
pub use inspect::inspect;
pub use on_grid::{GridCorners, GridJob, GridJobError, GridPath, count_on_grid};
pub use plan_check::{PlanReport, PlanRow, check_plan};
pub use plan_forecast::{Days, PlanForecast, plan_forecast};
pub use reference::{BESIDE_M, DUE_WITHIN_S, PASSES_WITHIN_S, against_reference};
pub use tussock_coverage as coverage;
pub use tussock_diagnose as diagnose;
pub use tussock_locate as locate;
pub use tussock_plane as plane;
pub use tussock_simulate as simulate;
pub use tussock_types as types;

use tussock_types::{LogFacts, Plan, Settings, Trace};

/// Version of the tool, as it stands in every result.
pub const TOOL_VERSION: &str = env!("CARGO_PKG_VERSION");

/// What an analysis is given.
#[derive(Clone, Copy)]
pub struct Job<'a> {
    /// One trace for each machine.
    pub traces: &'a [Trace],
    /// Facts about the files that the traces came from.
    pub inputs: &'a [LogFacts],
    /// What was installed; without it the outline is drawn from the trace.
    pub plan: Option<&'a Plan>,
    /// What the user wants.
    pub settings: &'a Settings,
    /// Seed of everything random.
    pub seed: u64,
    /// Whether suggestions are made: they take some seconds.
    pub advice: Advice,
    /// Told how far the work is: the stage, and the fraction of the whole that is done.
    pub progress: Option<&'a (dyn Fn(Stage, f64) + Sync)>,
}

/// Whether suggestions are made.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Advice {
    /// They are, where there are missed pockets.
    #[default]
    Given,
    /// They are left out.
    LeftOut,
}

/// Whether logs like the given ones are simulated on the plan, to take off what estimating does to them.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Calibrate {
    /// Where the log needs it: sparse fixes with an error of half a metre and more.
    #[default]
    Auto,
    /// Wherever it can be done.
    Always,
    /// Not at all.
    Never,
}

/// Stages of an analysis, for progress.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Stage {
    /// Finding the path behind the fixes.
    Locating,
    /// Counting visits.
    Counting,
    /// Simulating logs like the given ones.
    Calibrating,
    /// Looking for reasons.
    Diagnosing,
    /// Trying changes.
    Suggesting,
}

impl Stage {
    /// What to show while it lasts.
    pub const fn words(self) -> &'static str {
        match self {
            Self::Locating => "locating",
            Self::Counting => "counting",
            Self::Calibrating => "calibrating",
            Self::Diagnosing => "diagnosing",
            Self::Suggesting => "suggesting",
        }
    }
}

impl Job<'_> {
    fn tell(&self, stage: Stage, done_fraction: f64) {
        if let Some(progress) = self.progress {
            progress(stage, done_fraction);
        }
    }
}
