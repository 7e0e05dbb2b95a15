//! What an analysis is given, and how it reports its progress.

use tussock_types::{LogFacts, Plan, Settings, Trace, worded};

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
    /// Random seed.
    pub seed: u64,
    /// Whether suggestions are made, which takes a few seconds.
    pub advice: Advice,
    /// Is told the progress: the stage, and the fraction of the whole that is done.
    pub progress: Option<&'a (dyn Fn(Stage, f64) + Sync)>,
}

/// Whether suggestions are made.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Advice {
    /// Suggestions are made if there are missed pockets.
    #[default]
    Given,
    /// No suggestions are made.
    LeftOut,
}

/// Whether logs like the given ones are simulated on the plan to correct estimation bias.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Calibrate {
    /// If the log needs it: sparse fixes with an error of half a metre or more.
    #[default]
    Auto,
    /// Whenever it is possible.
    Always,
    /// Not at all.
    Never,
}

worded! {
    /// Stages of an analysis, for progress.
    #[derive(Clone, Copy, Debug, PartialEq, Eq)]
    Stage,
    /// What to show while it runs.
    words {
        /// Finding the path behind the fixes.
        Locating = "locating",
        /// Counting visits.
        Counting = "counting",
        /// Simulating logs like the given ones.
        Calibrating = "calibrating",
        /// Looking for reasons.
        Diagnosing = "diagnosing",
        /// Trying changes.
        Suggesting = "suggesting",
    }
}

impl<'a> Job<'a> {
    /// A job with defaults: no plan, suggestions given, seed 0.
    pub const fn new(traces: &'a [Trace], settings: &'a Settings) -> Self {
        Self {
            traces,
            inputs: &[],
            plan: None,
            settings,
            seed: 0,
            advice: Advice::Given,
            progress: None,
        }
    }

    /// Adds facts about the files that the traces came from.
    #[must_use]
    pub const fn with_inputs(self, inputs: &'a [LogFacts]) -> Self {
        Self { inputs, ..self }
    }

    /// On a plan.
    #[must_use]
    pub const fn on(self, plan: &'a Plan) -> Self {
        Self {
            plan: Some(plan),
            ..self
        }
    }

    /// With another seed.
    #[must_use]
    pub const fn with_seed(self, seed: u64) -> Self {
        Self { seed, ..self }
    }

    /// Without suggestions, which take a few seconds.
    #[must_use]
    pub const fn without_advice(self) -> Self {
        Self {
            advice: Advice::LeftOut,
            ..self
        }
    }
}

impl Job<'_> {
    /// Reports the progress of the work.
    pub fn tell(&self, stage: Stage, done_fraction: f64) {
        if let Some(progress) = self.progress {
            progress(stage, done_fraction);
        }
    }
}
