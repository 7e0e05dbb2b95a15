//! What came out. The shape of `findings.json`, schema version 2.
//!
//! A field that a stage has not produced is `None` (null in JSON), never absent and never invented. Positions are in
//! the log's frame; metres east and north are on the tangent plane at [`FrameFindings`].

use crate::math;
use crate::{
    Cells, FitFound, FixQuality, GeoPoint, Installation, LogFacts, Night, Place, Plan, PossibleStop,
    ReferenceFindings, Said, Settings, SiteVisit, UnlistedObstacle,
};
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;

/// Version of the layout of `findings.json`.
pub const SCHEMA_VERSION: u32 = 2;

/// An estimate with its 90 % interval; `low` and `high` are null until a stage has produced them.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Estimate {
    /// Best value.
    pub estimate: f64,
    /// Lower end of the 90 % interval.
    pub low: Option<f64>,
    /// Upper end of the 90 % interval.
    pub high: Option<f64>,
}

impl Estimate {
    /// A value whose interval nobody has worked out.
    pub const fn bare(estimate: f64) -> Self {
        Self {
            estimate,
            low: None,
            high: None,
        }
    }

    /// Standard deviations from the middle to either end of a 90 % interval (normal law).
    pub const END_SDS: f64 = 1.645;

    /// A fraction with its standard deviation: the interval is cut off at 0 and 1.
    pub fn of_fraction(fraction: f64, sd_fraction: f64) -> Self {
        Self {
            estimate: fraction,
            low: Some((fraction - Self::END_SDS * sd_fraction).max(0.0)),
            high: Some((fraction + Self::END_SDS * sd_fraction).min(1.0)),
        }
    }
}

/// Everything that one analysis found.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Findings {
    /// [`SCHEMA_VERSION`].
    pub schema_version: u32,
    /// Version of the tool.
    pub tool_version: String,
    /// All settings, as used.
    pub settings: Settings,
    /// The log files, in the order given.
    pub inputs: Vec<InputFindings>,
    /// The tangent plane in which metres east and north are given.
    pub frame: FrameFindings,
    /// Is this log good enough?
    pub log_verdict: LogVerdict,
    /// Two independent answers to one question, held against each other: those that this log allows.
    pub checks: Vec<Check>,
    /// Times and lengths.
    pub span: Span,
    /// What is known of the position error.
    pub positions: PositionFindings,
    /// How plan and log lie to each other. Null without a plan, and where the log does not tell.
    pub plan_fit: Option<PlanFit>,
    /// Machines whose visits are united here.
    pub machines: Vec<MachineFindings>,
    /// Places that the customer pointed at, each with its answer.
    pub complaints: Vec<ComplaintFindings>,
    /// Who came, when and why. Null where the settings do not say.
    pub visit: Option<SiteVisit>,
    /// Silences, longest first, at most 20.
    pub silences: Vec<Silence>,
    /// How much of the lawn was driven over. Null when there is no cutting width: see `by_width`.
    pub coverage: Option<Coverage>,
    /// Visited fraction for cutting widths from 17 to 35 cm, where the width was not given.
    pub by_width: Option<Vec<WidthRow>>,
    /// How often.
    pub revisits: Option<Revisits>,
    /// How the lawn filled up.
    pub over_time: Option<OverTime>,
    /// Connected unvisited ground that luck does not explain, largest first.
    pub missed_pockets: Vec<MissedPocket>,
    /// The same where luck still explains it.
    pub not_yet: Vec<NotYetPocket>,
    /// Ground without evidence. Null until a stage tells it from missed ground.
    pub unseen: Option<Vec<UnseenGround>>,
    /// Where it repeatedly lost time away from the station, most minutes first.
    pub stuck_spots: Vec<StuckSpot>,
    /// Cells visited far more often than the rest. Null until a stage looks for them.
    pub worn_lines: Option<Vec<WornLine>>,
    /// Positions outside the boundary by more than their error. Null until a stage looks for them.
    pub strays: Option<Vec<Stray>>,
    /// Silences away from the station that may have been stops, longest first. Null until a stage looks for them.
    pub possible_stops: Option<Vec<PossibleStop>>,
    /// What the log says about the installation. Null until a stage works it out.
    pub installation: Option<Installation>,
    /// Each night apart, in order. Null until a stage tells them apart.
    pub nights: Option<Vec<Night>>,
    /// How well a simulated machine fits this log. Null where none was fitted.
    pub fit: Option<FitFound>,
    /// How far the log is from a surveyed path. Null where none was given.
    pub reference: Option<ReferenceFindings>,
    /// What to change. Null until a stage makes suggestions.
    pub suggestions: Option<Vec<Suggestion>>,
    /// Suggestions to make together, the most ground for the work first. Empty where fewer than two pockets can be mended.
    #[serde(default)]
    pub change_set: Vec<SetStep>,
    /// General cautions.
    pub cautions: Vec<Said>,
    /// The plan as used, for drawing; laid where the log says where the two lie beside each other. Null without one.
    pub plan: Option<Plan>,
    /// Outline of the lawn as counted, in metres: outer ring and holes of each part, closed.
    pub lawn_outline: Vec<Vec<Vec<Place>>>,
    /// Where the outline came from.
    pub outline_source: OutlineSource,
    /// How the drive drew it, and what it leaves open. Null with a plan.
    pub drawn_outline: Option<DrawnOutline>,
    /// Driven lines for drawing, simplified to a few centimetres; one list of places for each unbroken piece.
    pub driven_lines: Vec<Vec<Place>>,
    /// The ground in squares, for maps and `cells.parquet`. `report` packs its columns into `findings.json`.
    #[serde(skip)]
    pub cells: Option<Cells>,
}

/// Where the outline of the lawn came from.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum OutlineSource {
    /// The plan.
    Plan,
    /// The trace itself: ground beyond the outermost drive cannot be missed, so the fraction is flattering.
    Trace,
}

/// One log file.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct InputFindings {
    /// Everything that the reader knows of it; its fields stand at the same level in JSON.
    #[serde(flatten)]
    pub facts: LogFacts,
}

/// The tangent plane (EPSG method 9837) in which metres are given.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct FrameFindings {
    /// Latitude of the origin; null for a log in local metres without an origin.
    pub origin_lat: Option<f64>,
    /// Longitude of the origin.
    pub origin_lon: Option<f64>,
}

/// Is this log good enough?
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct LogVerdict {
    /// The worse of the next two.
    pub level: LogLevel,
    /// Whether the positions, and how often they were logged, show pockets as small as asked for.
    pub positions: LogLevel,
    /// Whether the machine drove for long enough that such pockets are more than luck.
    pub duration: LogLevel,
    /// Area of the smallest pocket that this log can find.
    pub smallest_findable_pocket_m2: f64,
    /// Its width: below it, positions or luck hide a pocket.
    pub smallest_findable_width_m: f64,
    /// Hours of driving that are missing until a pocket as small as asked for can be told from luck; null where none are, or
    /// where no hours would do.
    pub hours_more_needed: Option<f64>,
    /// The one thing to change where it is not good, else what it can show.
    pub advice: Said,
    /// What else stands against trusting it, worst first.
    pub remarks: Vec<Said>,
}

impl LogVerdict {
    /// Area of a pocket so wide: that of a disc.
    pub fn pocket_m2(width_m: f64) -> f64 {
        std::f64::consts::FRAC_PI_4 * width_m * width_m
    }

    /// Makes it say that only pockets from this width up show.
    pub fn shows_from(&mut self, width_m: f64) {
        self.smallest_findable_width_m = width_m;
        self.smallest_findable_pocket_m2 = Self::pocket_m2(width_m);
    }
}

/// How far a log can be trusted, the best first.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum LogLevel {
    /// It shows what was asked for.
    Good,
    /// It shows less.
    Limited,
    /// It shows nothing of a lawn.
    Unusable,
}

/// Why a fix was left out of the path.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum LeftOut {
    /// Poor dilution of precision, or no measurement.
    PoorQuality,
    /// Farther from its neighbours than a machine drives.
    Jump,
}

/// Times and lengths of all traces together.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Span {
    /// First fix, RFC 3339 in UTC.
    pub start: Option<String>,
    /// Last fix.
    pub end: Option<String>,
    /// First fix, seconds since 1970 in UTC; null in private outputs.
    pub start_unix_s: Option<f64>,
    /// Number of fixes that were read: used, carried and left out together.
    pub fixes_read: u64,
    /// Number of fixes used for the path.
    pub fixes_used: u64,
    /// Number of fixes while it was carried.
    pub fixes_carried: u64,
    /// Usual time between two fixes.
    pub period_s: f64,
    /// Number of fixes left out, for each reason.
    pub fixes_left_out: BTreeMap<LeftOut, u64>,
    /// Length of the driven path.
    pub path_m: f64,
    /// Time on the move.
    pub driving_s: f64,
    /// Of it along a guide run or the boundary; null until a stage tells.
    pub transit_s: Option<f64>,
    /// Time at the station; null when no station is known.
    pub at_station_s: Option<f64>,
    /// Time standing elsewhere, turning included.
    pub halted_s: f64,
    /// Time being carried; null until a stage tells.
    pub carried_s: Option<f64>,
    /// Time without usable fixes.
    pub silent_s: f64,
    /// Usual driving speed.
    pub speed_mps: Option<f64>,
    /// Trips from the station and back; null when no station is known.
    pub outings: Option<u64>,
}

/// Time without usable fixes.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Silence {
    /// Last fix before it, RFC 3339 in UTC; null in private outputs.
    pub start: Option<String>,
    /// First fix after it.
    pub end: Option<String>,
    /// Seconds from the start of the span.
    pub start_s: f64,
    /// How long.
    pub duration_s: f64,
    /// Distance between the places at its two ends.
    pub moved_m: f64,
    /// Place of the last fix before it; null until a stage tells.
    #[serde(rename = "where")]
    pub place: Option<Place>,
    /// Ground that the machine may have driven over meanwhile; null until a stage works it out.
    pub bridged_m2: Option<f64>,
}

/// What is known of the position error.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct PositionFindings {
    /// White part, per axis.
    pub white_m: Option<f64>,
    /// What the receiver's own filter leaves, per axis; null until a stage tells it apart.
    pub filtered_m: Option<f64>,
    /// Time constant of that filter.
    pub filtered_time_s: Option<f64>,
    /// Drift part, per axis.
    pub drift_m: Option<f64>,
    /// Drift time.
    pub drift_time_s: Option<f64>,
    /// How heavy the tails are: degrees of freedom of Student's t; null until a stage tells.
    pub tails: Option<f64>,
    /// Where these figures come from.
    pub source: NoiseSource,
    /// Jumps of the receiver that stayed: positions before and after lie beside each other.
    pub steps: Vec<ReceiverStep>,
    /// Whether turns at the boundary were used to hold the drift; null until a stage does.
    pub anchored: Option<bool>,
}

/// A jump of the receiver that stayed.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct ReceiverStep {
    /// First fix after it, RFC 3339 in UTC; null in private outputs.
    pub time: Option<String>,
    /// How far it went east.
    pub east_m: f64,
    /// How far it went north.
    pub north_m: f64,
}

/// Where the noise model comes from.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum NoiseSource {
    /// Scatter while standing at the station.
    StationScatter,
    /// Scatter while standing elsewhere.
    RestScatter,
    /// Roughness of the path while driving (tells the white part only).
    DrivingRoughness,
    /// The device card of the receiver.
    DeviceCard,
    /// The settings.
    Stated,
    /// The receiver's own claim (GST, accuracy fields).
    ReceiverClaim,
    /// DOP times a user range error by fix quality.
    DilutionOfPrecision,
    /// A stated default.
    Default,
}

/// How the plan lies in the log's frame: turned about a place of its own, then moved east and north, it lies where the log says.
#[derive(Clone, Copy, Debug, Default, PartialEq, Serialize, Deserialize)]
pub struct PlanOffset {
    /// East.
    pub east_m: f64,
    /// North.
    pub north_m: f64,
    /// Turn, anticlockwise.
    pub rotation_deg: f64,
    /// East of the place about which it is turned, on the plan's plane.
    pub about_east_m: f64,
    /// North of it.
    pub about_north_m: f64,
    /// Standard deviation of the offset per axis.
    pub sd_m: f64,
}

impl PlanOffset {
    /// Offsets smaller than this are left alone whatever the log says: nobody draws a plan better.
    const LEAST_M: f64 = 0.10;
    /// Offsets within so many standard deviations are no offset.
    const SURE: f64 = 3.0;

    /// So far from its middle a garden has its corners.
    const CORNER_M: f64 = 15.0;

    /// Whether plan and log lie beside each other by more than chance, in the middle or at the corners. Then positions, the plan
    /// among them, are given where the log says that they lie.
    pub fn is_beside(&self) -> bool {
        let sure_m = Self::LEAST_M.max(Self::SURE * self.sd_m);
        let turned_m = Self::CORNER_M * self.rotation_deg.to_radians().abs();
        math::hypot(self.east_m, self.north_m) > sure_m || turned_m > sure_m
    }
}

impl Findings {
    /// How the plan lies in the log's frame, where the log tells.
    pub fn plan_offset(&self) -> Option<PlanOffset> {
        self.plan_fit.as_ref().and_then(|fit| fit.offset)
    }
}

/// What two independent answers are held against each other. `docs/checks.md` has the unit of each statistic and what follows.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum CheckKind {
    /// Fixes left out, against their prediction.
    FixesLeftOut,
    /// The cells' sum, against the headline.
    CellSum,
    /// The count as logged, against the corrected one.
    AsLogged,
    /// The count by the fitted path, against the count as logged that simulated runs corrected.
    TwoRoads,
    /// Turns, against each edge of the plan.
    TurnsAtEdges,
    /// A garden drawn from the fitted machine, against the log.
    DrawnGarden,
    /// One half of the log, against the other.
    HalvesOfLog,
    /// Silences, against what is claimed.
    Silences,
    /// The plan's place, against the turns.
    PlanPlace,
    /// What the verdict says that the log shows, against what is drawn.
    ShownGround,
}

impl CheckKind {
    /// All of them, in the order in which they are listed.
    pub const ALL: [Self; 10] = [
        Self::FixesLeftOut,
        Self::HalvesOfLog,
        Self::PlanPlace,
        Self::TurnsAtEdges,
        Self::DrawnGarden,
        Self::CellSum,
        Self::AsLogged,
        Self::TwoRoads,
        Self::Silences,
        Self::ShownGround,
    ];
}

/// Two independent answers to one question.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Check {
    /// Which.
    pub check: CheckKind,
    /// What was measured; its unit is that of the check.
    pub statistic: f64,
    /// Where it should lie; null where nothing is too little.
    pub expected_low: Option<f64>,
    /// Where it should lie; null where nothing is too much.
    pub expected_high: Option<f64>,
    /// Whether it does.
    pub holds: bool,
    /// What follows where it does not; null where it holds.
    pub consequence: Option<Said>,
}

impl Check {
    /// A statistic held against the range that it should lie in. `consequence` follows where it does not.
    pub fn of(
        check: CheckKind,
        statistic: f64,
        (expected_low, expected_high): (Option<f64>, Option<f64>),
        consequence: Said,
    ) -> Self {
        let low = expected_low.unwrap_or(f64::NEG_INFINITY);
        let high = expected_high.unwrap_or(f64::INFINITY);
        let holds = (low..=high).contains(&statistic);
        Self {
            check,
            statistic,
            expected_low,
            expected_high,
            holds,
            consequence: (!holds).then_some(consequence),
        }
    }
}

/// Whether plan and log belong together.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum PlanFitVerdict {
    /// They do, as drawn.
    Fits,
    /// They do, with the plan moved.
    Moved,
    /// They do, but for some edges.
    EdgesDiffer,
    /// The plan is of another garden.
    AnotherGarden,
    /// Nobody judged it, or the log does not tell.
    Unknown,
}

/// How plan and log lie to each other.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct PlanFit {
    /// Whether they belong together.
    pub verdict: PlanFitVerdict,
    /// How the plan lies in the log's frame.
    pub offset: Option<PlanOffset>,
    /// Edges that lie elsewhere than drawn. Empty until a stage tells.
    pub edges: Vec<PlanEdge>,
    /// Zones that were driven over. Empty until a stage tells.
    pub driven_zones: Vec<DrivenZone>,
    /// Obstacles that no plan shows. Empty until a stage tells.
    pub unlisted_obstacles: Vec<UnlistedObstacle>,
    /// Islands without a zone. Empty until a stage tells.
    pub unlisted_islands: Vec<UnlistedIsland>,
}

/// How one edge of the plan lies to the log.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct PlanEdge {
    /// Its number among the edges of the ground on which the machine may drive.
    pub edge: u64,
    /// How far outwards of its drawn place it lies.
    pub offset_m: f64,
    /// Standard deviation of that.
    pub sd_m: f64,
    /// Where it lies, from end to end.
    pub line: [Place; 2],
}

/// A drawn zone that was driven over.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct DrivenZone {
    /// Number of the feature of the plan.
    pub feature: usize,
    /// Path inside it.
    pub path_m: f64,
}

/// Ground that is circled and never entered.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct UnlistedIsland {
    /// `I1`, ...
    pub id: String,
    /// Latitude of its middle; null for a log in local metres.
    pub lat: Option<f64>,
    /// Longitude of it.
    pub lon: Option<f64>,
    /// East.
    pub east_m: f64,
    /// North.
    pub north_m: f64,
    /// Area.
    pub area_m2: f64,
    /// Its outline, closed, in metres.
    pub outline: Vec<Place>,
}

/// A lawn that the drive drew, for want of a plan.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct DrawnOutline {
    /// How far inside its edges the machine is taken to turn.
    pub setback_m: f64,
    /// How far the edges may lie elsewhere, as a standard deviation.
    pub edge_sd_m: f64,
    /// Ground inside that the machine turned on and never entered, largest first. It is left out of the lawn, and asked about.
    pub islands: Vec<UnlistedIsland>,
    /// The longest stretch of the outer edge at which the machine turned nowhere: the one to walk first. Null where it turned
    /// everywhere.
    pub unturned: Option<UnturnedEdge>,
}

/// A stretch of a drawn edge at which the machine turned nowhere.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct UnturnedEdge {
    /// Latitude of its middle; null for a log in local metres.
    pub lat: Option<f64>,
    /// Longitude of it.
    pub lon: Option<f64>,
    /// East.
    pub east_m: f64,
    /// North.
    pub north_m: f64,
    /// Along the edge.
    pub length_m: f64,
}

/// How a machine moves.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum MotionModel {
    /// Straight legs and turns on the spot.
    Legs,
    /// Arcs.
    Arcs,
    /// Lanes with headland rounds.
    Lanes,
    /// Spirals.
    Spirals,
    /// None that predicts fixes left out: counted as logged.
    AsLogged,
}

/// Quantiles of the straight legs of a machine.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct LegLengths {
    /// Half of them are shorter.
    pub median: f64,
    /// Nine of ten are shorter.
    pub p90: f64,
}

/// One machine.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct MachineFindings {
    /// Its name in the logs.
    pub id: String,
    /// How it moves; null until a stage chooses.
    pub model: Option<MotionModel>,
    /// Usual driving speed.
    pub speed_mps: Option<f64>,
    /// Null until a stage works it out.
    pub turning_radius_m: Option<f64>,
    /// How far its middle stays inside the line at which it turns; null until a stage works it out for each machine.
    pub setback_m: Option<f64>,
    /// Null until a stage works it out.
    pub legs_m: Option<LegLengths>,
    /// Turns seen; null until a stage counts them for each machine.
    pub turns: Option<u64>,
    /// Whether predictions are made from it; null until a stage judges.
    pub trusted: Option<bool>,
    /// Trips from the station and back; null when no station is known.
    pub outings: Option<u64>,
}

/// A place that the customer pointed at, and what this log knows of it.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct ComplaintFindings {
    /// Latitude; null for a log in local metres.
    pub lat: Option<f64>,
    /// Longitude.
    pub lon: Option<f64>,
    /// East.
    pub east_m: f64,
    /// North.
    pub north_m: f64,
    /// What the customer said, in their words.
    pub said: Option<String>,
    /// How often it was driven over.
    pub visits: Option<Estimate>,
    /// When last, RFC 3339 in UTC.
    pub last_visit: Option<String>,
    /// Usual time between two visits.
    pub due_h: Option<f64>,
    /// The answer.
    pub answer: Option<Said>,
}

/// How much was driven over. `visited_m2 + missed_m2 + not_yet_m2 + unseen_m2 + sliver_m2 = lawn_m2`.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Coverage {
    /// Lawn, exclusion zones and obstacles taken out.
    pub lawn_m2: f64,
    /// What the cutting disc can get to; null until a stage works it out.
    pub reachable_m2: Option<f64>,
    /// Driven over.
    pub visited_m2: f64,
    /// In missed pockets.
    pub missed_m2: f64,
    /// In not-yet pockets.
    pub not_yet_m2: f64,
    /// Without evidence (0 until a stage tells it apart).
    pub unseen_m2: f64,
    /// Unvisited, but too narrow to be a pocket.
    pub sliver_m2: f64,
    /// Visited area over lawn area.
    pub visited_fraction: Estimate,
    /// The same as logged: from raw fixes joined by straight lines, nothing corrected.
    pub as_logged_fraction: f64,
    /// Why that lies farther from the estimate than half of its interval; null where it does not.
    pub as_logged_differs: Option<Said>,
    /// Cutting width used.
    pub cut_width_m: f64,
    /// Side of a counting cell.
    pub cell_m: f64,
    /// Area error that the cells cause: standard deviation of the visited fraction.
    pub cell_error_fraction: f64,
    /// Realisations of the position error that were counted.
    pub realisations: u32,
    /// Each lawn apart.
    pub lawns: Vec<LawnCoverage>,
}

/// One lawn of several.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct LawnCoverage {
    /// Its name.
    pub name: String,
    /// Its area, zones and obstacles taken out.
    pub lawn_m2: f64,
    /// Its visited fraction.
    pub visited_fraction: Estimate,
}

/// Visited fraction for one cutting width.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct WidthRow {
    /// Cutting width.
    pub cut_width_m: f64,
    /// Visited fraction.
    pub visited_fraction: Estimate,
}

/// How often the lawn was visited, over its cells.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Revisits {
    /// Median number of visits of a cell.
    pub median_per_cell: f64,
    /// Mean number.
    pub mean_per_cell: f64,
    /// Part of the lawn visited 0, 1, 2, ... times; the last entry holds all that is more.
    pub histogram: Vec<f64>,
    /// Gini coefficient of the visits: 0 when all alike.
    pub gini: f64,
    /// Time between visits of one cell, the unfinished last one censored (Kaplan-Meier).
    pub interval_h: IntervalQuantiles,
    /// Part of the lawn past its longest allowed interval; null without turf settings.
    pub overdue_fraction: Option<f64>,
}

/// Quantiles of the revisit interval, hours; null where the log is too short to tell.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct IntervalQuantiles {
    /// Median.
    pub p50: Option<f64>,
    /// 90 %.
    pub p90: Option<f64>,
    /// 99 %.
    pub p99: Option<f64>,
}

/// How the lawn filled up with driving time.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct OverTime {
    /// Driving hours.
    pub driving_h: Vec<f64>,
    /// Visited fraction at those hours.
    pub visited_fraction: Vec<f64>,
    /// Koopman's random search law 1 - exp(-w v t / A) at those hours.
    pub random_law_fraction: Vec<f64>,
    /// The exhaustive line min(1, w v t / A) at those hours.
    pub exhaustive_fraction: Vec<f64>,
    /// Driving-over of new ground per swept area, relative: 0 on the random law, 1 on the exhaustive line.
    pub efficiency: Option<f64>,
    /// Driving hours to 95 %; null when out of reach.
    pub hours_to_95: Option<f64>,
    /// Driving hours to 99 %; null when out of reach.
    pub hours_to_99: Option<f64>,
    /// Whether the promise is kept.
    pub promise: Promise,
}

/// Whether the promise is kept.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Promise {
    /// The answer.
    pub verdict: PromiseVerdict,
    /// Probability that it is kept; null until a stage works it out.
    pub probability: Option<f64>,
}

/// The answer to "is the promise kept?".
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum PromiseVerdict {
    /// It is.
    Kept,
    /// It is not.
    Broken,
    /// This log cannot tell.
    CannotTell,
}

/// Why a pocket was missed.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Cause {
    /// No way in for the body.
    WalledOff,
    /// Too few crossings of a narrow way.
    NarrowPassage,
    /// A strip of constant width along the edge.
    EdgeBand,
    /// Turns show the real line away from the drawn one.
    ZoneMisplaced,
    /// It gets stuck on the way.
    BeyondStuckSpot,
    /// Open, but outings and geometry bring it there too seldom.
    TooFewVisits,
    /// The whole lawn follows the law, just not long enough.
    TooLittleTime,
    /// This log does not show why.
    Undetermined,
}

/// One cause.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct CauseFindings {
    /// The cause.
    pub cause: Cause,
    /// 1 for the likeliest of those named, 2 for the next.
    pub rank: u32,
    /// How often it is the right one of those named; null, since nobody measured it.
    pub certainty_fraction: Option<f64>,
    /// Evidence for it.
    pub evidence_for: Vec<Said>,
    /// Evidence against it.
    pub evidence_against: Vec<Said>,
}

/// A distance to walk with a tape.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Tape {
    /// From where: a corner, the station, an obstacle, in words.
    pub from: String,
    /// The same as data. Null in findings of older versions.
    #[serde(default)]
    pub landmark: Option<Said>,
    /// How far to the pocket's middle.
    pub distance_m: f64,
    /// Standard deviation of that distance, from the position error; null until a stage works it out.
    pub sd_m: Option<f64>,
    /// That place, for drawing.
    pub from_east_m: f64,
    /// That place, for drawing.
    pub from_north_m: f64,
}

/// Connected unvisited ground that luck does not explain.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct MissedPocket {
    /// `M1`, `M2`, ... by falling area.
    pub id: String,
    /// Area.
    pub area_m2: f64,
    /// Diameter of the largest circle that fits in.
    pub widest_m: f64,
    /// Latitude of that circle's middle; null for a log in local metres.
    pub lat: Option<f64>,
    /// Longitude of it.
    pub lon: Option<f64>,
    /// East of it.
    pub east_m: f64,
    /// North of it.
    pub north_m: f64,
    /// Outline: outer ring and holes, closed, in metres.
    pub outline: Vec<Vec<Place>>,
    /// How sure it is that this ground was not driven over, 0 to 1; null where it was
    /// not measured how often such pockets were there.
    pub certainty: Option<f64>,
    /// Probability that luck alone would leave a pocket of at least this width.
    pub chance_fraction: f64,
    /// Part of it that was driven over (0 for one realisation).
    pub visited_fraction: f64,
    /// Causes, likeliest first; none where the log does not show how the plan lies. Null until a stage names them.
    pub causes: Option<Vec<CauseFindings>>,
    /// What would tell the first two of them apart; null where fewer are named.
    pub next_look: Option<Said>,
    /// For the customer.
    pub why: Said,
    /// Distances from two plan features that one can see.
    pub tape: Vec<Tape>,
    /// Suggestions that concern it.
    pub suggestion_ids: Vec<String>,
}

/// Connected unvisited ground that luck still explains.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct NotYetPocket {
    /// `N1`, `N2`, ... by falling area.
    pub id: String,
    /// Area.
    pub area_m2: f64,
    /// Diameter of the largest circle that fits in.
    pub widest_m: f64,
    /// Latitude of that circle's middle; null for a log in local metres.
    pub lat: Option<f64>,
    /// Longitude of it.
    pub lon: Option<f64>,
    /// East of it.
    pub east_m: f64,
    /// North of it.
    pub north_m: f64,
    /// Outline: outer ring and holes, closed, in metres.
    pub outline: Vec<Vec<Place>>,
    /// Probability that luck alone would leave a pocket of at least this width.
    pub chance_fraction: f64,
    /// Driving hours from the start of this log after which it can be decided; null when it cannot be said.
    pub hours_to_decide: Option<f64>,
    /// For the customer: nothing is wrong, and how long to wait.
    pub why: Said,
    /// Distances from two plan features that one can see.
    pub tape: Vec<Tape>,
}

/// Ground without evidence.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct UnseenGround {
    /// `U1`, ...
    pub id: String,
    /// Area.
    pub area_m2: f64,
    /// Outline: outer ring and holes, closed, in metres.
    pub outline: Vec<Vec<Place>>,
    /// Why nothing is known.
    pub why: Said,
}

/// A place where the machine lost time away from the station.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct StuckSpot {
    /// `S1`, ... by falling minutes.
    pub id: String,
    /// Latitude; null for a log in local metres.
    pub lat: Option<f64>,
    /// Longitude.
    pub lon: Option<f64>,
    /// East.
    pub east_m: f64,
    /// North.
    pub north_m: f64,
    /// Radius that holds the episodes.
    pub radius_m: f64,
    /// How often.
    pub episodes: u64,
    /// How long in all.
    pub minutes: f64,
    /// How often it drove through within the radius without getting stuck.
    pub passes_through: u64,
    /// How sure it is that this is a place of its own, 0 to 1; null, since nobody measured it.
    pub certainty: Option<f64>,
    /// What to look at.
    pub why: Said,
    /// Compass course on which it came driving, where most episodes agree.
    pub approach_deg: Option<f64>,
}

/// Cells visited far more often than the rest.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct WornLine {
    /// `W1`, ...
    pub id: String,
    /// The line.
    pub line: Vec<Place>,
    /// Visits there over the lawn's mean.
    pub times_mean: f64,
    /// Length.
    pub length_m: f64,
    /// Most visits of one place in it.
    pub most_visits: u64,
}

/// Positions outside the boundary by more than the position error.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Stray {
    /// `X1`, ...
    pub id: String,
    /// Seconds from the start of the span.
    pub start_s: f64,
    /// How long.
    pub duration_s: f64,
    /// How far out.
    pub farthest_m: f64,
    /// East of the farthest place.
    pub east_m: f64,
    /// North of it.
    pub north_m: f64,
    /// Whether it came back by itself within the log.
    pub came_back: bool,
}

/// What kind of change.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum SuggestionKind {
    /// Lay a guide run.
    GuideRun,
    /// Move an exclusion zone.
    ZoneMove,
    /// Shrink one.
    ZoneShrink,
    /// Add one.
    ZoneAdd,
    /// Work longer.
    MoreHours,
    /// Shift the boundary.
    BoundaryShift,
}

/// A change and what it will bring.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Suggestion {
    /// `G1`, ...
    pub id: String,
    /// What kind.
    pub kind: SuggestionKind,
    /// What to do, and what most logs will show then.
    pub why: Said,
    /// Its geometry: the line of a guide run from the station outwards, the new outline of a zone or of the boundary.
    pub geometry: Vec<Place>,
    /// Number of the feature of the plan that the geometry takes the place of; null where it is added.
    pub feature: Option<usize>,
    /// Wire to lay.
    pub wire_m: Option<f64>,
    /// Share of outings to send along it.
    pub outing_share_fraction: Option<f64>,
    /// On which side of what can be seen it lies; null until a stage tells.
    pub side: Option<Said>,
    /// Pockets that it is meant to mend.
    pub pocket_ids: Vec<String>,
    /// Smaller and larger changes of that kind, cheapest first. Null where no other size was tried.
    pub ladder: Option<Vec<Rung>>,
    /// Shift of a zone or of the boundary.
    pub shift_m: Option<f64>,
    /// Working hours added per day.
    pub added_h_per_day: Option<f64>,
    /// Other suggestions that it needs beside it.
    pub together_with: Vec<String>,
    /// Part of the pocket that this log shows driven over.
    pub pocket_fraction_in_log: f64,
    /// What it will bring: the estimate is what most single nights will show, the ends hold nine of ten.
    pub predicted: Predicted,
    /// Share of simulated runs in which the pocket gains more than 20 points, lies within 15 points of the prediction and
    /// the lawn within 5.
    pub certainty: Option<f64>,
    /// Driving hours after which the gain shows in most runs.
    pub shown_after_h: Option<f64>,
    /// Driving hours after which nine of ten gardens have 85 % of the pocket driven over; null where that takes too long to tell.
    pub done_after_h: Option<f64>,
    /// Cautions.
    pub cautions: Vec<Said>,
}

/// A change of some size, and what it brings.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Rung {
    /// How far a side is moved, or how much wire is laid; null where hours are added.
    pub size_m: Option<f64>,
    /// Share of outings to send along a guide run.
    #[serde(default)]
    pub outing_share_fraction: Option<f64>,
    /// Working hours added per day.
    #[serde(default)]
    pub added_h_per_day: Option<f64>,
    /// The pocket, changed: the mean of single logs, and the ends that hold nine of ten.
    pub pocket_fraction_after: Estimate,
    /// What it costs elsewhere: the mean of the whole lawn, changed, less its mean unchanged. Null in findings of older versions.
    #[serde(default)]
    pub lawn_gain_fraction: Option<f64>,
}

/// One of several changes that are made together, counted after those before it.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct SetStep {
    /// Id of the suggestion, `G1`.
    pub id: String,
    /// Ground of the pockets that it adds to what the steps before it let the machine drive over: the mean of simulated logs.
    pub gained_m2: f64,
    /// Part of all these pockets that is driven over with it and the steps before it: the mean of simulated logs, and the
    /// ends that hold nine of ten.
    pub pockets_fraction_after: Estimate,
    /// The whole lawn then: the mean of simulated logs, and the ends that hold nine of ten.
    pub visited_fraction_after: Estimate,
}

/// Predicted fractions.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Predicted {
    /// Lawn, nothing changed.
    pub visited_fraction_before: Estimate,
    /// Lawn, changed.
    pub visited_fraction_after: Estimate,
    /// Pocket, nothing changed.
    pub pocket_fraction_before: Estimate,
    /// Pocket, changed.
    pub pocket_fraction_after: Estimate,
}

/// What `tussock inspect` says: is this log good enough, before anything is counted.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Inspection {
    /// [`SCHEMA_VERSION`].
    pub schema_version: u32,
    /// Version of the tool.
    pub tool_version: String,
    /// The log files, in the order given.
    pub inputs: Vec<InputFindings>,
    /// The verdict.
    pub log_verdict: LogVerdict,
    /// The checks that need no count.
    pub checks: Vec<Check>,
    /// Times and lengths.
    pub span: Span,
    /// What is known of the position error.
    pub positions: PositionFindings,
    /// How the plan lies in the log's frame. Null without a plan, and where the log does not tell.
    pub plan_fit: Option<PlanFit>,
    /// Machines that logged.
    pub machines: Vec<MachineFindings>,
    /// Silences, longest first, at most 20.
    pub silences: Vec<Silence>,
    /// Extent of the positions, east by north.
    pub extent_m: (f64, f64),
    /// Middle of the positions; null for local metres.
    pub middle: Option<GeoPoint>,
    /// Number of fixes per quality.
    pub qualities: Vec<(FixQuality, u64)>,
    /// Median and 95 % of HDOP where logged.
    pub hdop: Option<(f64, f64)>,
    /// Fixes whose position repeats the one before to the last digit.
    pub repeated_positions: u64,
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_check_holds_if_and_only_if_its_statistic_lies_in_its_range() {
        let values = [
            f64::NEG_INFINITY,
            -1.5,
            -1.0,
            0.0,
            1.0,
            1.5,
            f64::INFINITY,
            f64::NAN,
        ];
        let ends = [None, Some(-1.0), Some(0.0), Some(1.0)];
        for statistic in values {
            for (low, high) in ends.iter().flat_map(|low| ends.map(|high| (*low, high))) {
                let check = Check::of(CheckKind::CellSum, statistic, (low, high), Said::NotShown {});
                let is_within = low.unwrap_or(f64::NEG_INFINITY) <= statistic
                    && statistic <= high.unwrap_or(f64::INFINITY);
                assert_eq!(check.holds, is_within, "{check:?}");
                assert_eq!(check.consequence.is_none(), check.holds, "{check:?}");
            }
        }
    }
}
