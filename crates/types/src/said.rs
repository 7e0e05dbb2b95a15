//! What is said, as data: a code with its values. Sentences stand in `report`'s catalogue alone, so that every language is possible,
//! and a test asks for the reason and not for its wording.

use serde::{Deserialize, Serialize};

/// Whether something holds that a sentence turns on.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Whether {
    /// It does.
    Yes,
    /// It does not.
    No,
}

impl From<bool> for Whether {
    fn from(holds: bool) -> Self {
        if holds { Self::Yes } else { Self::No }
    }
}

/// One line a code, with the values that its sentence needs: numbers carry their unit in the name, text is a name or a word of ours.
macro_rules! said {
    ($($code:ident { $($value:ident: $kind:ty),* })*) => {
        /// Something that is said. In JSON `{"code": .., "values": {..}}`; what each code means is its message in
        /// `crates/report/messages/en.ftl`.
        #[allow(missing_docs)]
        #[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
        #[serde(tag = "code", content = "values", rename_all = "snake_case")]
        pub enum Said { $($code { $($value: $kind),* },)* }

        impl Said {
            /// Every code, as it is called in Rust, with the names of its values.
            pub const CODES: &[(&str, &[&str])] = &[$((stringify!($code), &[$(stringify!($value)),*])),*];

            /// The code, as it is called in Rust.
            pub const fn code(&self) -> &'static str {
                match self { $(Self::$code { .. } => stringify!($code),)* }
            }
        }
    };
}

said! {
    // What the positions of a log can show, or the one thing to change.
    PositionsRight { error_m: f64 }
    PositionsOff { error_m: f64 }
    ReceiverJumps {}
    ErrorNotShown {}
    FixesTooRare { period_s: f64 }
    DigitsTooCoarse { step_m: f64 }
    // Why a log shows nothing of a lawn.
    MostlyJumps { jumps: u64, fixes: u64, max_speed_mps: f64 }
    TooFewFixes { used: u64, fixes: u64 }
    NotOneGarden { extent_m: f64 }
    FixesFarTooRare { period_s: f64 }
    WalkingPace { speed_mps: f64 }
    WalkRound { speed_mps: f64, length_m: f64, area_m2: f64, gpx: Whether }
    // What else stands against a log.
    StoodAllTheTime {}
    DroveTooShort { driven_s: f64 }
    DroveTooShortBy { driven_s: f64, missing_h: f64, wanted_m: f64 }
    ReceiverJumped { size_m: f64, time: String }
    ReceiverJumpedOften { jumps: u64 }
    ReceiverJumpsBack { jumps: u64 }
    StopsNotPlaced { lost_min: f64 }
    DateTooOld { date: String }
    PositionsBent { area_m2: f64, largest_m: f64, place: String }
    TurnsNotAtEdge {}
    PlanBeside { distance_m: f64, east_m: f64, north_m: f64 }
    EdgeInside { edge_deg: f64, offset_m: f64, turns: u64 }
    EdgeOutside { edge_deg: f64, offset_m: f64, turns: u64 }
    ZoneDriven { zone: String, path_m: f64 }
    DriftAssumed { drift_m: f64 }
    DriftAtMost { drift_m: f64 }
    SilentLong { silent_fraction: f64 }
    FixesLeftOut { poor: u64, jumps: u64 }
    NoStation {}
    ClaimTooGood { claimed_m: f64, scatter_m: f64 }
    RtkFixedTooGood { usual_m: f64, scatter_m: f64 }
    PositionsRepeated { repeated_fraction: f64, longest_s: f64 }
    PositionsHeld { repeated_fraction: f64, longest_s: f64 }
    DrivesAtRest { rest_min: f64, driven_min: f64, time_zone: String }
    DrivesAtRestShifted { rest_min: f64, driven_min: f64, time_zone: String, shift_h: f64, later: Whether, local_time: Whether }
    Calibrated { runs: u64, points: f64 }
    WaysDisagree { by_path_fraction: f64, as_logged_fraction: f64 }
    // Why the count as logged differs from the estimate.
    AsLoggedSilent { as_logged_fraction: f64, silent_fraction: f64 }
    AsLoggedSparse { as_logged_fraction: f64, period_s: f64 }
    AsLoggedSpread { as_logged_fraction: f64, error_m: f64 }
    AsLoggedAside { as_logged_fraction: f64, error_m: f64 }
    NotCalibratedNoWidth {}
    NotCalibratedNoPlan {}
    NotCalibratedLanes {}
    NotCalibratedNoDrive {}
    NotCalibratedNoRun {}
    // What follows where two answers to one question contradict each other.
    IntervalHoldsBoth { one_fraction: f64, other_fraction: f64 }
    IntervalWider { times: f64 }
    IntervalWiderBy { more_fraction: f64 }
    PlanNotBelieved { explained_fraction: f64 }
    LegsUnlike { logged_m: f64, drawn_m: f64 }
    ShowsWider { widest_m: f64 }
    // Why a pocket was missed.
    TooNarrowToExplain { widest_m: f64 }
    GapTooNarrow { behind_m2: f64, width_m: f64, needed_m: f64 }
    NoWayIn { area_m2: f64 }
    NoWayInDriven { area_m2: f64 }
    TurnsBeforeEdge { setback_m: f64 }
    ZoneElsewhere { zone: String, path_m: f64 }
    ZoneElsewhereTowards { zone: String, path_m: f64, towards_deg: f64 }
    StuckOnTheWay { times: u64, lost_min: f64 }
    StuckOnTheWayPast { times: u64, lost_min: f64, past: u64, at_least: Whether }
    PassageShut { width_m: f64, expected: u64, driven_h: f64 }
    SomethingStands { widest_m: f64, turns: u64 }
    SomethingMayStand { widest_m: f64, turns: u64 }
    StripStays { length_m: f64, width_m: f64, edge_deg: f64 }
    StripStaysTurns { length_m: f64, width_m: f64, edge_deg: f64, here_m: f64, elsewhere_m: f64 }
    PassageSeldomFound { entries: u64, at_least: Whether, driven_h: f64, width_m: f64, behind_m2: f64, share_ratio: f64 }
    BehindPassageSeldom { behind_m2: f64, width_m: f64, share_ratio: f64 }
    ComesSeldom { share_ratio: f64 }
    NotShown {}
    // Evidence for it.
    LuckNotLanes { width_m: f64 }
    LuckUnderThousandth { width_m: f64 }
    LuckOneIn { width_m: f64, lawns: u64 }
    PassageWidth { width_m: f64, free_m: f64, length_m: f64 }
    PassageCrossings { crossings: u64, expected: u64, at_least: Whether }
    DrivenBehind { path_m: f64, share_ratio: f64 }
    NothingDrivenIn {}
    CellsNearEdge { within_m: f64 }
    PathInZone { path_m: f64 }
    TurnsBeside { turns: u64 }
    StopsOnTheWay { stops: u64, lost_min: f64, passes: u64 }
    ShareBehind { share_ratio: f64 }
    CrossingsExpected { expected: u64 }
    TurnsInFront { turns: u64 }
    TurnsAround { turns: u64, rim_fraction: f64 }
    PassesExpected { passes: u64 }
    StripShape { length_m: f64, widest_m: f64, within_m: f64 }
    TurnsAlong { turns: u64 }
    PathNearby { share_ratio: f64 }
    ShareSimulated { share_ratio: f64 }
    // Evidence against it.
    GapNearlyWide {}
    FewTurns { turns: u64 }
    VisitsHidden {}
    StripThin {}
    ZoneMayBeOpen {}
    AlsoBehindPassage { width_m: f64 }
    OneOutingMatters {}
    LuckLeavesSuch {}
    LookDecides { look: NextLook, log_h: f64, told_fraction: f64 }
    // Ground of which nothing is decided.
    NotYet { driven_h: f64, lawn_m2: f64, widest_m: f64 }
    NotYetUntil { driven_h: f64, lawn_m2: f64, widest_m: f64, decided_h: f64 }
    HiddenBySilence { chance_fraction: f64 }
    ShownTooLittle {}
    CauseWithheld {}
    // What to look at where it got stuck.
    StuckNear { feature: StuckNear, name: String, distance_m: f64 }
    StuckInPassage { width_m: f64 }
    StuckInPassageNear { width_m: f64, feature: StuckNear, name: String, distance_m: f64 }
    StuckInTheOpen {}
    StuckSomewhere {}
    // What to change.
    LayGuideRun { wire_m: f64, outings_of_ten: u64, pocket: String, longer: Whether, added_h: f64, log_h: f64, before_fraction: f64, after_fraction: f64 }
    MoveZone { zone: String, shift_m: f64, pocket: String, longer: Whether, added_h: f64, log_h: f64, before_fraction: f64, after_fraction: f64 }
    ShrinkZone { zone: String, faces_deg: f64, shift_m: f64, passage_m: f64, pocket: String, longer: Whether, added_h: f64, log_h: f64, before_fraction: f64, after_fraction: f64 }
    AddZone { spot: String, pocket: String, longer: Whether, added_h: f64, log_h: f64, before_fraction: f64, after_fraction: f64 }
    WorkLonger { added_h: f64, pocket: String, log_h: f64, before_fraction: f64, after_fraction: f64 }
    ShiftBoundary { shift_m: f64, pocket: String, longer: Whether, added_h: f64, log_h: f64, before_fraction: f64, after_fraction: f64 }
    FacingSide { faces_deg: f64 }
    // How well a simulated machine fits the log.
    FitTrusted { speed_mps: f64, turns: u64, outings: u64 }
    FitVisitsDiffer {}
    FitPathDiffers {}
    NotFittedLanes {}
    NotFittedSeveralMachines { machines: u64 }
    NotFittedFewTurns { turns: u64, expected: u64 }
    NotFittedNoLegs {}
    NotFittedNoGround {}
    NotSimulated { why: String }
    // Hours and grass.
    PromiseBeyondHours { promised_fraction: f64, promised_days: f64, needed_h: f64 }
    PromiseNeedsHours { promised_fraction: f64, promised_days: f64, needed_h: f64, worked_h: f64, driven_h: f64 }
    PromiseBeyondReach { promised_fraction: f64, promised_days: f64, worked_h: f64, driven_h: f64 }
    PromiseHoursUnknown { promised_fraction: f64, promised_days: f64, worked_h: f64, driven_h: f64 }
    LowerCutUnknown {}
    LowerCut { visited_fraction: f64 }
    LowerCutPlacesOpen { places: u64 }
    LowerCutUnsure { visited_fraction: f64 }
    GrassLogTooShort { growth_mm: f64, allowed_days: f64, log_days: f64 }
    GrassOverdue { overdue_fraction: f64, growth_mm: f64, allowed_days: f64 }
    GrassTooManyPasses { passes: f64, allowed_days: f64 }
    GrassEnoughPasses { growth_mm: f64, allowed_days: f64 }
    // What a change brought.
    LawnUnknown {}
    LawnMore { points: f64 }
    LawnLess { points: f64 }
    LawnAlike {}
    PocketsMended { pockets: String }
    PocketsBetter { pockets: String }
    PocketsNew { pockets: String }
    PocketCompared { pocket: String, before_fraction: f64, after_fraction: f64, change: PocketChange, within_luck: Whether }
    ChangeDecided { pocket: String, decided: u64, nights: u64 }
    ChangeOpen { pocket: String, more: u64 }
    // What to beware of.
    BladesOnLawn {}
    BladesNear {}
    OutlineFromDrive {}
    PlanFault { fault: String }
    DigAtSpot {}
    Dig {}
    ZoneMayProtect {}
    HoursByDay {}
    DrivenInTheDark { dark_h: f64 }
    BeyondTheLine {}
    LookBeforeZone {}
    GuideExitUnknown {}
    LocalCodes {}
    OtherReasons {}
    AtEqualHours {}
    NightsUnknown {}
    PlanUnsureBefore {}
    PlanUnsureAfter {}
    // What is known of a place that somebody points at.
    PlaceOften { visits: f64, lawn_visits: f64 }
    PlaceSeldom { visits: f64, lawn_visits: f64 }
    PlaceFew { visits: f64, lawn_visits: f64 }
    PlaceNever { pocket: String, area_m2: f64 }
    PlaceGap {}
    PlaceNotYet { pocket: String, decided_h: f64 }
    PlaceNotYetOpen { pocket: String }
    PlaceUnseen { ground: String }
    PlaceIsStuckSpot { spot: String, lost_min: f64 }
    PlaceOffLawn { distance_m: f64 }
    PlaceElsewhere { distance_m: f64 }
    PlaceBeyondOutline { distance_m: f64 }
    PlaceInIsland { island: String, area_m2: f64 }
    PlaceCannotTell { error_m: f64 }
    PlaceNeedsWidth {}
    PlaceCompared { said: String, before_visits: f64, before_h: f64, after_visits: f64, after_h: f64 }
    // From where a tape is laid; an empty body is the lawn, an empty thing beside it the station.
    LandmarkStation {}
    LandmarkMiddle { body: String }
    LandmarkCornerAt { body: String, beside: String }
    LandmarkCornerNearest { body: String }
    LandmarkCorner { body: String, wind_deg: f64, outermost: Whether }
    LandmarkCornerApart { body: String, wind_deg: f64, farther: Whether, beside: String }
    // What the reader of a log did or noticed.
    TimeWithoutZone {}
    TimeIsRelative {}
    GpsTime {}
    WeekRolloverRepaired { fixes: u64, days: u64, date: String }
    LateFixes { fixes: u64 }
    NewestFirst {}
    BlockOutOfOrder {}
    TracksOverlap {}
    TimesDoNotFit { times: u64, positions: u64 }
    ConstantQuality { manual: Whether }
    SeveralMachines { machines: u64 }
    SameLogTwice { log: String }
    OverlapsAnotherLog { fixes: u64, date: String }
    FileNotClosed {}
    FileDamaged { fault: String }
    LineTooLong { bytes: u64, limit: u64 }
    LineCut { bytes: u64, limit: u64 }
    AttributeTooLong { bytes: u64, limit: u64 }
    DocumentTypeIgnored {}
    // What the reader of a walk did or noticed.
    WalkMarkupBroken { places: u64 }
    WalkTakenAsLawn { track: String, area_m2: f64, length_m: f64 }
    WalkPositionsSkipped { positions: u64, track: String }
    WalkNameUnknown { track: String, seems: String }
    WalkSpikesCut { positions: u64, track: String }
    WalkWaitsAsCorners { places: u64, track: String }
    WalkPiecesJoined { pieces: u64, track: String }
    WalkOverlapCut { past_m: f64, track: String }
    WalkGapClosed { gap_m: f64, track: String }
    WalkLoopsCut { loops: u64, track: String }
    WalkGuideTurned { track: String }
}

/// What of the plan lies near a stuck spot.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum StuckNear {
    /// An exclusion zone.
    Zone,
    /// An obstacle.
    Obstacle,
    /// The lawn's edge.
    LawnEdge,
}

/// What tells two causes apart.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum NextLook {
    /// A look into the passage.
    Passage,
    /// The width of the passage, with a tape.
    Width,
    /// A look at the ground itself.
    Ground,
    /// Where the zone lies.
    Zone,
    /// The place where the machine gets stuck.
    StuckSpot,
    /// Where the machine turns before the edge.
    Edge,
    /// Another log.
    AnotherLog,
}

/// What became of a pocket.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum PocketChange {
    /// Nearly all of it is driven over now.
    Mended,
    /// More of it than before, beyond luck.
    Better,
    /// No difference beyond luck.
    Unchanged,
    /// It was driven over before.
    New,
}

impl Said {
    /// Whether it tells how the drawing differs from the garden.
    pub const fn is_of_plan(&self) -> bool {
        matches!(
            self,
            Self::TurnsNotAtEdge {}
                | Self::PlanBeside { .. }
                | Self::EdgeInside { .. }
                | Self::EdgeOutside { .. }
                | Self::ZoneDriven { .. }
        )
    }
}
