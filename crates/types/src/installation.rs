//! What the log says about the installation, beyond the pockets.

use crate::{Estimate, Place, Said};
use serde::{Deserialize, Serialize};

/// Passages, obstacles, outings, hours and grass: all that was found about how the garden is laid out and worked.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
pub struct Installation {
    /// How far the machine's middle stays inside the line at which it turns, usually; null where turns do not tell.
    pub setback_m: Option<f64>,
    /// Narrow connections between parts of the lawn, narrowest first.
    pub passages: Vec<Passage>,
    /// Things that turned the machine round inside the lawn and stand in no plan.
    pub unlisted_obstacles: Vec<UnlistedObstacle>,
    /// Lawn that the cutting disc cannot get to, largest first.
    pub out_of_reach: Vec<OutOfReach>,
    /// How it came home, most frequent first. Empty where no station is known.
    pub ways_home: Vec<WayHome>,
    /// Trips from the station; null where no station is known.
    pub outings: Option<OutingsFound>,
    /// Hours worked and hours that the promise needs.
    pub hours: Option<HoursFound>,
    /// May the cutting height be lowered now?
    pub lower_cut: Option<LowerCut>,
    /// Grass and passes; null without turf settings.
    pub turf: Option<TurfFound>,
    /// Slope, where heights are good enough.
    pub slope: Option<SlopeFound>,
}

/// A narrow connection between two parts of the lawn.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Passage {
    /// `P1`, ...
    pub id: String,
    /// Across it, from side to side at its narrowest.
    pub across: [Place; 2],
    /// Latitude of its middle; null for a log in local metres.
    pub lat: Option<f64>,
    /// Longitude of it.
    pub lon: Option<f64>,
    /// Width at its narrowest, from the plan.
    pub width_m: f64,
    /// Of it free for the machine's middle: the width without the setback at both sides; negative when it is shut.
    pub free_width_m: f64,
    /// Length over which it stays narrow.
    pub length_m: f64,
    /// Lawn on the far side, seen from the station.
    pub behind_m2: f64,
    /// Changes of side seen in the log; for poor positions a lower bound. Null where nothing was logged.
    pub crossings: Option<u64>,
    /// Changes of side of a machine that roams freely, for the path driven. Null where nothing was logged.
    pub crossings_expected: Option<f64>,
    /// Changes of side per day of the log. Null where nothing was logged.
    pub crossings_per_day: Option<f64>,
    /// Path on the far side over its fair share (its part of the lawn): 1 where it gets as much as the rest, 2 where twice as much.
    /// Null where nothing was logged.
    pub share_ratio: Option<f64>,
}

/// Something that turned the machine round inside the lawn and stands in no plan.
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
    /// Radius of a round one that fits the turns, the setback taken off.
    pub radius_m: f64,
    /// Turns at it.
    pub turns: u64,
    /// Whether it stood there all the time.
    pub presence: Presence,
}

/// Whether a thing in the lawn stood there while the machine was logged.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Presence {
    /// Nothing says otherwise.
    Throughout,
    /// Its place was driven through before it first turned the machine.
    Came,
    /// Its place was driven through after it last did.
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

/// Lawn that the cutting disc cannot get to.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct OutOfReach {
    /// Area.
    pub area_m2: f64,
    /// A place in it.
    pub east_m: f64,
    /// A place in it.
    pub north_m: f64,
    /// Why.
    pub why: OutOfReachWhy,
}

/// Why the disc does not get there.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum OutOfReachWhy {
    /// Strip along the edge or a corner: the middle of the machine turns before the disc is there.
    Edge,
    /// A part of its own behind a passage that is too narrow, or without any connection.
    CutOff,
}

/// A way home.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct WayHome {
    /// Which.
    pub along: HomeAlong,
    /// How often.
    pub times: u64,
    /// Usual time on it.
    pub median_min: f64,
}

/// Along what it came home.
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
    /// How many, unfinished ones included.
    pub count: u64,
    /// Usual time out.
    pub median_out_min: f64,
    /// Usual time at the station between two.
    pub median_charging_min: Option<f64>,
    /// Where free driving began, one place an outing.
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
    /// Working hours that the settings allow per day, mean over the week; null without hours settings.
    pub allowed_h_per_day: Option<f64>,
    /// Working hours per day that the promise needs at this pace; null where no hours would do.
    pub needed_h_per_day: Option<f64>,
    /// What is said of it.
    pub said: Said,
}

/// May the cutting height be lowered?
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct LowerCut {
    /// The answer.
    pub answer: LowerCutAnswer,
    /// What is said of it.
    pub said: Said,
}

/// The answer to "may the cutting height be lowered?".
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum LowerCutAnswer {
    /// Every place within reach was visited at the present height.
    Yes,
    /// Some was not.
    NotYet,
    /// This log cannot tell.
    CannotTell,
}

/// Grass and passes.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct TurfFound {
    /// Growth used.
    pub growth_mm_per_day: f64,
    /// Where it comes from.
    pub growth_source: GrowthSource,
    /// Longest time between visits under the one-third rule.
    pub allowed_interval_h: f64,
    /// Part of the lawn past it at the end of the log.
    pub overdue_fraction: Option<f64>,
    /// Fewer passes than the grass needs, enough, or more than is good for it.
    pub said: Said,
}

/// Where the growth comes from.
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

/// A silence that may have been a stop.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct PossibleStop {
    /// East.
    pub east_m: f64,
    /// North.
    pub north_m: f64,
    /// Seconds from the start of the span.
    pub start_s: f64,
    /// Minutes of silence: what was lost is at most this.
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
    /// Part driven over up to its end.
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

/// Hours by activity. Together they are the time from first to last fix.
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
    /// Backwards.
    pub reversing_h: f64,
    /// Standing away from the station.
    pub halted_h: f64,
    /// Being carried.
    pub carried_h: f64,
    /// Without usable fixes.
    pub silent_h: f64,
}

/// The machine as fitted to this log, and how well runs of it look like the log.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct FitFound {
    /// Whether predictions are made from it.
    pub is_trusted: bool,
    /// What is said of it.
    pub said: Said,
    /// Runs behind the comparison.
    pub runs: u32,
    /// Logged beside simulated, what predictions depend on most first.
    pub rows: Vec<FitRow>,
}

/// One figure of the log beside that of simulated runs.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct FitRow {
    /// Which.
    pub what: FitFigure,
    /// In the log.
    pub logged: f64,
    /// In simulated runs: median and the range that nine of ten lie in.
    pub simulated: Estimate,
}

/// A figure by which simulated runs are held against the log.
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
