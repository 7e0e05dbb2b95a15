//! What the log says about the installation, beyond the pockets.

use crate::{Estimate, Place, Said};
use serde::{Deserialize, Serialize};

/// Passages, obstacles, outings, hours and grass: everything that was found about how the garden is laid out and worked.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
pub struct Installation {
    /// How far inside the line at which it turns the machine's middle usually stays; null if the turns do not show it.
    pub setback_m: Option<f64>,
    /// Narrow connections between parts of the lawn, narrowest first.
    pub passages: Vec<Passage>,
    /// Things inside the lawn that turned the machine round and are in no plan.
    pub unlisted_obstacles: Vec<UnlistedObstacle>,
    /// Lawn that the cutting disc cannot reach, largest first.
    pub out_of_reach: Vec<OutOfReach>,
    /// How the machine came home, most frequent way first. Empty if no station is known.
    pub ways_home: Vec<WayHome>,
    /// Trips from the station; null if no station is known.
    pub outings: Option<OutingsFound>,
    /// Hours worked, and hours that the promise needs.
    pub hours: Option<HoursFound>,
    /// May the cutting height be lowered now?
    pub lower_cut: Option<LowerCut>,
    /// Grass and passes; null without turf settings.
    pub turf: Option<TurfFound>,
    /// Slope, if heights are good enough.
    pub slope: Option<SlopeFound>,
}

/// A narrow connection between two parts of the lawn.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Passage {
    /// `P1`, ...
    pub id: String,
    /// The two ends of a line across it at its narrowest.
    pub across: [Place; 2],
    /// Latitude of its middle; null for a log in local metres.
    pub lat: Option<f64>,
    /// Longitude of its middle.
    pub lon: Option<f64>,
    /// Width at its narrowest, from the plan.
    pub width_m: f64,
    /// The width that is free for the machine's middle: the width minus the setback on both sides; negative if the passage
    /// is shut.
    pub free_width_m: f64,
    /// Length over which the passage stays narrow.
    pub length_m: f64,
    /// Lawn on the far side, seen from the station.
    pub behind_m2: f64,
    /// Crossings from one side to the other seen in the log; a lower bound if positions are poor. Null if nothing was
    /// logged.
    pub crossings: Option<u64>,
    /// Crossings that a freely roaming machine would make over the same path. Null if nothing was logged.
    pub crossings_expected: Option<f64>,
    /// Crossings per day of the log. Null if nothing was logged.
    pub crossings_per_day: Option<f64>,
    /// Path on the far side over its fair share (its part of the lawn): 1 if that side gets as much as the rest, 2 if twice
    /// as much. Null if nothing was logged.
    pub share_ratio: Option<f64>,
}

/// Something inside the lawn that turned the machine round and is in no plan.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct UnlistedObstacle {
    /// `O1`, ...
    pub id: String,
    /// Latitude; null for a log in local metres.
    pub lat: Option<f64>,
    /// Longitude.
    pub lon: Option<f64>,
    /// East.
    pub east_m: f64,
    /// North.
    pub north_m: f64,
    /// Radius of a circle that fits the turns, minus the setback.
    pub radius_m: f64,
    /// Turns at it.
    pub turns: u64,
    /// Whether it was there all the time.
    pub presence: Presence,
}

/// Whether a thing in the lawn was there while the machine was logged.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Presence {
    /// There is no sign that it was not.
    Throughout,
    /// The machine drove through its place before it first turned there.
    Came,
    /// The machine drove through its place after it last turned there.
    Went,
    /// Both.
    CameAndWent,
}

impl Presence {
    /// Whether it was still there at the end of the log.
    pub const fn is_at_the_end(self) -> bool {
        matches!(self, Self::Throughout | Self::Came)
    }
}

/// Lawn that the cutting disc cannot reach.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct OutOfReach {
    /// Area.
    pub area_m2: f64,
    /// East coordinate of a place in it.
    pub east_m: f64,
    /// North coordinate of a place in it.
    pub north_m: f64,
    /// Why.
    pub why: OutOfReachWhy,
}

/// Why the disc does not get there.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum OutOfReachWhy {
    /// A strip along the edge, or a corner: the machine's middle turns before the disc gets there.
    Edge,
    /// A separate part behind a passage that is too narrow, or without any connection.
    CutOff,
}

/// A way home.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct WayHome {
    /// The line that it followed.
    pub along: HomeAlong,
    /// How often.
    pub times: u64,
    /// Usual time on it.
    pub median_min: f64,
}

/// What the machine followed on the way home.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum HomeAlong {
    /// A guide run.
    GuideRun,
    /// The boundary.
    Boundary,
    /// Straight over the lawn.
    Straight,
}

/// Trips from the station.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct OutingsFound {
    /// Number of outings, unfinished ones included.
    pub count: u64,
    /// Usual time out.
    pub median_out_min: f64,
    /// Usual time at the station between two outings.
    pub median_charging_min: Option<f64>,
    /// Where free driving began, one place per outing.
    pub starts: Vec<Place>,
    /// Outings that began along a guide run.
    pub along_guide: u64,
}

/// Hours worked and hours needed.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct HoursFound {
    /// Hours under way per day of the log.
    pub driving_h_per_day: f64,
    /// Hours between first departure and last return, charging included, per day.
    pub working_h_per_day: f64,
    /// Working hours per day that the settings allow, mean over the week; null without hours settings.
    pub allowed_h_per_day: Option<f64>,
    /// Working hours per day that the promise needs at this pace; null if no number of hours would do.
    pub needed_h_per_day: Option<f64>,
    /// The answer in words.
    pub said: Said,
}

/// May the cutting height be lowered?
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct LowerCut {
    /// The answer.
    pub answer: LowerCutAnswer,
    /// The answer in words.
    pub said: Said,
}

/// The answer to "may the cutting height be lowered?".
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum LowerCutAnswer {
    /// Every place within reach was visited at the present height.
    Yes,
    /// Some places were not.
    NotYet,
    /// This log cannot tell.
    CannotTell,
}

/// Grass and passes.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct TurfFound {
    /// Growth used.
    pub growth_mm_per_day: f64,
    /// Source of that figure.
    pub growth_source: GrowthSource,
    /// Longest time between visits that the one-third rule allows.
    pub allowed_interval_h: f64,
    /// Part of the lawn that was past it at the end of the log.
    pub overdue_fraction: Option<f64>,
    /// Fewer passes than the grass needs, enough, or more than is good for it.
    pub said: Said,
}

/// Where the figure for growth comes from.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum GrowthSource {
    /// The settings.
    Settings,
    /// Mean temperature, by the growth-potential curve.
    Temperature,
}

/// Slope of the lawn.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct SlopeFound {
    /// Slope that a tenth of the lawn exceeds.
    pub steep_deg: f64,
    /// Its standard deviation.
    pub sd_deg: f64,
    /// Where the steepest part lies.
    pub steepest_at: Place,
}

/// A silence during which the machine may have been stuck.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct PossibleStop {
    /// East.
    pub east_m: f64,
    /// North.
    pub north_m: f64,
    /// Seconds from the start of the span.
    pub start_s: f64,
    /// Minutes of silence: an upper bound of the time lost.
    pub most_minutes: f64,
}

/// One night (or day) of work: from a long rest to the next, at most 24 hours by the garden's clock.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Night {
    /// Local date on which it began, `2026-05-01`; null in private outputs.
    pub date: Option<String>,
    /// Seconds from the start of the span.
    pub start_s: f64,
    /// Seconds from the start of the span.
    pub end_s: f64,
    /// Hours by activity.
    pub hours: ActivityHours,
    /// Part of the lawn driven over in this night alone; null without a cutting width.
    pub visited_fraction: Option<f64>,
    /// Part driven over by the end of this night.
    pub visited_so_far_fraction: Option<f64>,
    /// What of it was in the dark; null where the log has no place on Earth, or a clock before the year 2000.
    pub dark: Option<DarkHours>,
}

/// What fell in the dark: after civil dusk or before civil dawn, the Sun's middle more than 6 degrees below the horizon. Times are RFC
/// 3339 in UTC, the first in the 24 hours that a night is given; null where there is none (polar day, polar night, a night that stays
/// white), and in private outputs. Good to some seconds; hills and the weather of the day make minutes.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
pub struct DarkHours {
    /// Driving in the dark, ways along guide runs and the boundary included.
    pub driven_h: f64,
    /// Upper limb of the Sun on the horizon in the evening.
    pub sunset: Option<String>,
    /// Civil dusk.
    pub dusk: Option<String>,
    /// Civil dawn.
    pub dawn: Option<String>,
    /// Upper limb of the Sun on the horizon in the morning.
    pub sunrise: Option<String>,
}

/// Hours by activity. Together they make up the time from the first fix to the last.
#[derive(Clone, Copy, Debug, Default, PartialEq, Serialize, Deserialize)]
pub struct ActivityHours {
    /// At the station.
    pub at_station_h: f64,
    /// Driving over the lawn.
    pub driving_h: f64,
    /// Along a guide run or the boundary.
    pub transit_h: f64,
    /// Turning.
    pub turning_h: f64,
    /// Driving backwards.
    pub reversing_h: f64,
    /// Standing away from the station.
    pub halted_h: f64,
    /// Being carried.
    pub carried_h: f64,
    /// Without usable fixes.
    pub silent_h: f64,
}

/// The machine as fitted to this log, and how well simulated runs of it resemble the log.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct FitFound {
    /// Whether the machine may be used for predictions.
    pub is_trusted: bool,
    /// A verdict in words.
    pub said: Said,
    /// Number of runs in the comparison.
    pub runs: u32,
    /// Logged figures beside simulated ones; first those that predictions depend on most.
    pub rows: Vec<FitRow>,
}

/// One figure of the log beside the same figure of simulated runs.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct FitRow {
    /// Which figure.
    pub what: FitFigure,
    /// In the log.
    pub logged: f64,
    /// In simulated runs: the median, and the range that holds nine in ten.
    pub simulated: Estimate,
}

/// A figure in which simulated runs are compared with the log.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum FitFigure {
    /// Part of the lawn driven over.
    VisitedFraction,
    /// Path driven.
    PathM,
    /// Correlation of the map of visits with the mean of simulated runs.
    VisitsMapCorrelation,
    /// Leg between two turns, median.
    LegM,
    /// Path between two visits of a place 2 m wide, median.
    RevisitPathM,
}
