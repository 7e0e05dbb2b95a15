//! What a plan promises, before anyone digs.

use crate::{Estimate, Findings, OutOfReach, Passage};
use serde::{Deserialize, Serialize};

/// What a plan promises.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct PlanForecast {
    /// Lawn to be cut.
    pub lawn_m2: f64,
    /// Distance inside the edge at which the machine's middle is taken to turn.
    pub setback_m: f64,
    /// Speed that the machine is taken to drive at.
    pub speed_mps: f64,
    /// Narrow connections, narrowest first; crossings are those of a day's driving.
    pub passages: Vec<Passage>,
    /// Share of path behind each passage over its fair share, in the same order, for outings of an hour.
    pub passage_share_fraction: Vec<f64>,
    /// Part of the runs in which nine tenths of the ground behind each passage are driven over after each day; without days empty.
    pub passage_done_fraction: Vec<Vec<f64>>,
    /// Parts that the cutting disc cannot get to, largest first.
    pub out_of_reach: Vec<OutOfReach>,
    /// Strips along edges and corners that the disc leaves, all together.
    pub edges_m2: f64,
    /// Boundary, round the lawn and round each zone; ways between them and slack come on top.
    pub boundary_m: f64,
    /// Guide runs.
    pub guides_m: f64,
    /// What working days bring; null without a cutting width, or where no machine has room.
    pub days: Option<ForecastDays>,
    /// Findings of one simulated run, as long as the promise has days: the one of all runs that is nearest to the middle. Null where it
    /// was not asked for, and without days.
    pub typical: Option<Box<Findings>>,
}

/// How the lawn fills up.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct ForecastDays {
    /// Working hours a day, charging included.
    pub working_h_per_day: f64,
    /// Visited fraction after each day: median of the runs and the range of nine in ten.
    pub visited_fraction: Vec<Estimate>,
    /// Working hours a day that the promise needs; null where 24 do not do.
    pub needed_h_per_day: Option<f64>,
    /// Runs behind it.
    pub runs: u64,
}
