//! What the operator reads in the morning.

use crate::Estimate;
use serde::{Deserialize, Serialize};

/// One morning: which gardens need a visit, and since when.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Morning {
    /// Version of this layout.
    pub schema_version: u32,
    /// Version of the tool.
    pub tool_version: String,
    /// Date of the night that is over, `2026-05-01`.
    pub night: String,
    /// Gardens in the store.
    pub known: u64,
    /// Gardens whose log of this night is there.
    pub with_log: u64,
    /// Gardens that rest: they raise no alarm.
    pub resting: u64,
    /// Gardens that need a visit, those that gain most from it first.
    pub gardens: Vec<GardenMorning>,
    /// What failed in this night and the one before.
    pub failures: Vec<MorningFailure>,
}

/// A garden that needs a visit.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct GardenMorning {
    /// Its name in the store.
    pub garden: String,
    /// Its name in the settings.
    pub name: Option<String>,
    /// Lawn that would be driven over each night, and is not.
    pub gain_m2: f64,
    /// Its lawn.
    pub lawn_m2: Option<f64>,
    /// What is wrong, the most important first.
    pub reasons: Vec<MorningReason>,
    /// Part of the lawn that was driven over within the promised days.
    pub visited_within_days_fraction: Option<f64>,
    /// Promised part.
    pub promised_fraction: Option<f64>,
    /// Promised days.
    pub promised_days: Option<f64>,
    /// Its last two weeks, oldest first.
    pub nights: Vec<MorningNight>,
}

/// What kind of trouble.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Alarm {
    /// A missed pocket that persists.
    MissedPocket,
    /// A place that catches the machine night after night.
    StuckSpot,
    /// It drives fewer hours than it did.
    LostHours,
    /// Less of the lawn is visited than before, beyond both intervals.
    LessVisited,
    /// An expected log did not come.
    Absent,
    /// Positions are worse than they were.
    ReceiverWorse,
    /// Longer without usable positions than before.
    Silences,
}

/// One thing that is wrong.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct MorningReason {
    /// What kind.
    pub alarm: Alarm,
    /// What it is about: identity of a pocket, a spot, a machine; empty for the whole garden.
    pub what: String,
    /// First night of it, `2026-05-01`.
    pub since: String,
    /// Nights in which it showed.
    pub nights: u64,
    /// Lawn that would be driven over each night without it.
    pub gain_m2: f64,
    /// One sentence.
    pub sentence: String,
}

/// One night behind it.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct MorningNight {
    /// Its date.
    pub night: String,
    /// Visited fraction.
    pub visited_fraction: Option<Estimate>,
    /// Area of missed pockets.
    pub missed_m2: Option<f64>,
    /// Hours driving.
    pub driving_h: Option<f64>,
    /// Minutes lost at stuck spots.
    pub stuck_min: Option<f64>,
    /// Hours without usable fixes.
    pub silent_h: Option<f64>,
    /// Standard deviation of positions.
    pub position_error_m: Option<f64>,
}

/// Something that failed.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct MorningFailure {
    /// Garden.
    pub garden: String,
    /// Log, night, plan or settings.
    pub what: String,
    /// A word.
    pub reason: String,
    /// One sentence.
    pub detail: String,
}
