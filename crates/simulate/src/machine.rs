//! What kind of machine is it, and for how long does it run?
//!
//! A roaming machine drives straight legs, turns at a line by some law, and goes home when its battery requires it.
//! Everything random in that is stated here as small distributions that can be set by hand or taken from a log.

use std::sync::Arc;
use tussock_plane::RegionError;
use tussock_types::Place;

/// How long something lasts.
#[derive(Clone, Debug, PartialEq)]
pub enum Spell {
    /// Always the same time.
    Fixed {
        /// The time.
        s: f64,
    },
    /// Any time between two limits, all equally likely.
    Between {
        /// Shortest.
        min_s: f64,
        /// Longest.
        max_s: f64,
    },
    /// One of the times seen in a log, slightly varied.
    Observed {
        /// The times.
        s: Vec<f64>,
        /// Varied by at most this fraction, either way.
        jitter_fraction: f64,
    },
}

impl Spell {
    /// The shortest and longest time that can be drawn.
    pub fn range_s(&self) -> (f64, f64) {
        match self {
            Self::Fixed { s } => (*s, *s),
            Self::Between { min_s, max_s } => (*min_s, *max_s),
            Self::Observed { s, jitter_fraction } => {
                let least = s.iter().copied().fold(f64::INFINITY, f64::min);
                let most = s.iter().copied().fold(f64::NEG_INFINITY, f64::max);
                (least * (1.0 - jitter_fraction), most * (1.0 + jitter_fraction))
            }
        }
    }

    fn check(&self, what: &'static str, least_s: f64, expected: &'static str) -> Result<(), SimulateError> {
        let (min_s, max_s) = self.range_s();
        check(what, min_s, least_s, 1e7, expected)?;
        let expected = "a longest time that is not below the shortest";
        check(what, max_s, min_s, 1e7, expected)
    }
}

/// One observed turn: both angles anticlockwise from the inward normal of the edge, in (-pi/2, pi/2).
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct TurnPair {
    /// Where a mirror would have sent the machine.
    pub mirror_rad: f64,
    /// Where it went.
    pub out_rad: f64,
}

/// Which way the machine goes after a turn at an edge. A direction that leads nowhere (into the corner's other edge) is
/// drawn again.
#[derive(Clone, Debug, PartialEq)]
pub enum TurnLaw {
    /// Lambert's law: the density falls with the cosine of the angle from the inward normal. The mean leg is then pi A/P
    /// whatever the shape (Cauchy-Crofton; Santalo 1976).
    CosineFromNormal,
    /// All inward directions equally likely. The mean leg is then not pi A/P.
    UniformFromNormal,
    /// Like a mirror, with a normal error.
    ReflectWithSpread {
        /// Standard deviation of the error.
        sd_deg: f64,
    },
    /// Turned from the incoming heading by an angle between two, left or right.
    FromHeading {
        /// Least turn.
        min_deg: f64,
        /// Largest turn.
        max_deg: f64,
    },
    /// Drawn from observed turns with a similar way in: one of the nearest `neighbours`, counting mirrored copies.
    Observed {
        /// The turns, in any order.
        pairs: Arc<[TurnPair]>,
        /// How many neighbours to draw from; 60 is a good number.
        neighbours: usize,
    },
}

/// How the machine covers the lawn.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Pattern {
    /// Straight on until an edge, then in another direction.
    Roaming,
    /// To and fro in parallel lanes (cells after Choset & Pignon 1998), then from the beginning.
    Lanes(Lanes),
    /// Round and round outwards from somewhere on the lawn until an edge is met, then a straight leg by the turn law, and the
    /// next spiral on the way: an Archimedean spiral, left or right by chance.
    Spiral {
        /// From ring to ring.
        pitch_m: f64,
    },
    /// Lanes in one outing and roaming in the next, in turn. The lanes continue where they were left.
    Combined(Lanes),
}

/// How parallel lanes lie.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Lanes {
    /// Distance from lane to lane.
    pub spacing_m: f64,
    /// Direction of the lanes, anticlockwise from east.
    pub direction_deg: f64,
    /// Standard deviation of a lane's sideways error.
    pub jitter_m: f64,
    /// The direction turns by this with every round.
    pub turn_each_round_deg: f64,
    /// Every round begins with so many turns round along all edges, one spacing apart; lanes fill what is left.
    pub headland_rounds: usize,
    /// It stands so long at the end of every lane, besides turning.
    pub pause_s: f64,
}

impl Lanes {
    /// Lanes that are the same in every round.
    pub const fn new(spacing_m: f64, direction_deg: f64, jitter_m: f64) -> Self {
        Self {
            spacing_m,
            direction_deg,
            jitter_m,
            turn_each_round_deg: 0.0,
            headland_rounds: 0,
            pause_s: 0.0,
        }
    }
}

impl Pattern {
    /// Its lanes, if it has any.
    pub(crate) const fn lanes(self) -> Option<Lanes> {
        match self {
            Self::Lanes(lanes) | Self::Combined(lanes) => Some(lanes),
            Self::Roaming | Self::Spiral { .. } => None,
        }
    }
}

/// How the machine comes home when its time is over. With lanes it knows where it is and drives home through the lawn.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum HomeWay {
    /// Along whatever it meets first: a guide run, or the edge that leads to the station.
    GuideOrBoundary,
    /// Looks for a guide run for a while, before an edge is good enough.
    GuideElseBoundary {
        /// For this long.
        search_s: f64,
    },
}

/// When it drives once round along the outer edge before anything else. Such an outing takes no guide run; without a
/// station there is one round, at the start.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum EdgeRound {
    /// Never.
    #[default]
    Never,
    /// In the first outing of every 24 h of the run.
    EachNight,
    /// In every outing.
    EachOuting,
}

/// How it leaves the station.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Departure {
    /// Forwards.
    Forwards,
    /// Backwards on to the lawn, then it turns.
    Backwards,
}

/// A machine. [`Machine::default`] is a small roaming one.
#[derive(Clone, Debug, PartialEq)]
pub struct Machine {
    /// Driving speed. Default 0.4.
    pub speed_mps: f64,
    /// How far its middle goes past the turning line (the boundary, or else the lawn's edge; the same for exclusion zones
    /// and obstacles); negative if it turns before the line. Default -0.2.
    pub past_boundary_m: f64,
    /// Duration of a turn. Default 1.5 to 2.5 s.
    pub turning: Spell,
    /// Law of the turns. Default uniform.
    pub turn_law: TurnLaw,
    /// Roaming or lanes.
    pub pattern: Pattern,
    /// Time from leaving the station until it starts for home. Default 55 to 75 min.
    pub roaming: Spell,
    /// Time at the station between two outings. Default 50 to 70 min.
    pub charging: Spell,
    /// How it leaves the station.
    pub departure: Departure,
    /// Heading of a departure without a guide run: within this angle of straight into the lawn, on either side. Default 60.
    pub departure_spread_deg: f64,
    /// Headings of departures without a guide run that were seen in a log, anticlockwise from east. If there are any, one of
    /// them is used, changed by at most the spread to either side. Default none.
    pub departure_headings_rad: Arc<[f64]>,
    /// Share of outings along each guide run that does not state its own. Default 0.
    pub guide_share_fraction: f64,
    /// It leaves a guide run somewhere between these parts of its length. Default 0.6 to 1.
    pub guide_exit_fraction: (f64, f64),
    /// How it comes home.
    pub home_way: HomeWay,
    /// It stops where it is if the way home takes longer than this. Default 5,400.
    pub give_up_s: f64,
    /// Standard deviation of a leg's speed, relative. Default 0.
    pub speed_sd_fraction: f64,
    /// Standard deviation of a leg's curvature. Default 0.
    pub curvature_sd_per_m: f64,
    /// Standard deviation by which the heading has wandered after 1 m of a leg; it grows with the root of the way. Default 0.
    pub heading_walk_deg: f64,
    /// Pull of a slope: legs are curved downhill by this times the sine of their angle to downhill. Default 0.
    pub slope_pull_per_m: f64,
    /// Where downhill is, anticlockwise from east. Default 0.
    pub downhill_deg: f64,
    /// Radius of the arcs on which it turns, begun before the edge; 0 turns on the spot, at the edge. Roaming machines only;
    /// from guide runs, out of the station and out of stuck spots they turn on the spot all the same. Default 0.
    pub turning_radius_m: f64,
    /// Over so much way before a turn it slows down, evenly along the way to 0.3 of its speed; arcs are driven as slowly. Default 0.
    pub slowing_m: f64,
    /// When it drives round along the edge. Default never.
    pub edge_round: EdgeRound,
    /// Mean loss of speed to slipping wheels: each leg loses between nothing and twice this. Default 0.
    pub slip_fraction: f64,
}

impl Machine {
    /// The default machine with another pattern.
    pub fn of(pattern: Pattern) -> Self {
        Self {
            pattern,
            ..Self::default()
        }
    }
}

impl Default for Machine {
    fn default() -> Self {
        Self {
            speed_mps: 0.4,
            past_boundary_m: -0.2,
            turning: Spell::Between {
                min_s: 1.5,
                max_s: 2.5,
            },
            turn_law: TurnLaw::UniformFromNormal,
            pattern: Pattern::Roaming,
            roaming: Spell::Between {
                min_s: 3300.0,
                max_s: 4500.0,
            },
            charging: Spell::Between {
                min_s: 3000.0,
                max_s: 4200.0,
            },
            departure: Departure::Forwards,
            departure_spread_deg: 60.0,
            departure_headings_rad: Arc::new([]),
            guide_share_fraction: 0.0,
            guide_exit_fraction: (0.6, 1.0),
            home_way: HomeWay::GuideOrBoundary,
            give_up_s: 5400.0,
            speed_sd_fraction: 0.0,
            curvature_sd_per_m: 0.0,
            heading_walk_deg: 0.0,
            slope_pull_per_m: 0.0,
            downhill_deg: 0.0,
            turning_radius_m: 0.0,
            slowing_m: 0.0,
            edge_round: EdgeRound::Never,
            slip_fraction: 0.0,
        }
    }
}

/// What the wheels do while the machine is stuck.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Manner {
    /// Nothing.
    Stands,
    /// A few centimetres to and fro.
    Wiggles,
}

/// A place that catches the machine when it drives into it. The machine then goes back roughly the way it came.
#[derive(Clone, Debug, PartialEq)]
pub struct StuckSpot {
    /// Middle.
    pub place: Place,
    /// Radius.
    pub radius_m: f64,
    /// Probability that an entry gets stuck.
    pub probability: f64,
    /// Duration of an episode.
    pub duration: Spell,
    /// What the wheels do.
    pub manner: Manner,
}

/// One run of the machine.
#[derive(Clone, Debug, PartialEq)]
pub struct Run {
    /// The run ends after this many hours, wherever the machine is.
    pub hours: f64,
    /// Random seed.
    pub seed: u64,
    /// Time at the station before the first outing.
    pub start_stay_s: f64,
    /// Places that catch it.
    pub stuck_spots: Vec<StuckSpot>,
}

impl Run {
    /// A run without bad places that begins with two minutes at the station.
    pub const fn new(hours: f64, seed: u64) -> Self {
        Self {
            hours,
            seed,
            start_stay_s: 120.0,
            stuck_spots: Vec::new(),
        }
    }
}

/// Why nothing was simulated.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
#[non_exhaustive]
pub enum SimulateError {
    /// A value that no machine or run can have.
    #[error("{what} is {value}; expected {expected}")]
    OutOfRange {
        /// Name of the value.
        what: &'static str,
        /// The value.
        value: f64,
        /// What it should be.
        expected: &'static str,
    },
    /// The turning line leaves no room.
    #[error(
        "a machine that turns {past_boundary_m} m past the edge has no room on {lawn_m2:.1} m2 of lawn; expected a smaller setback or a larger lawn"
    )]
    NoRoom {
        /// Where the machine turns.
        past_boundary_m: f64,
        /// The lawn.
        lawn_m2: f64,
    },
    /// The turning line could not be worked out.
    #[error("the turning line could not be drawn")]
    TurningLine(#[from] RegionError),
}

/// Checks a field by its name.
macro_rules! within {
    ($of:ident.$field:ident, $low:expr, $high:expr, $expected:expr) => {
        check(stringify!($field), $of.$field, $low, $high, $expected)?
    };
}

/// Checks that a number is finite and in a range.
pub(crate) fn check(
    what: &'static str,
    value: f64,
    low: f64,
    high: f64,
    expected: &'static str,
) -> Result<(), SimulateError> {
    // Written so that NaN fails too.
    if value >= low && value <= high {
        Ok(())
    } else {
        Err(SimulateError::OutOfRange {
            what,
            value,
            expected,
        })
    }
}

impl Machine {
    pub(crate) fn check(&self) -> Result<(), SimulateError> {
        let expected = "a time that is not negative (outings and charging at least 1 s)";
        let spell = |what, spell: &Spell, least_s| spell.check(what, least_s, expected);
        let share = |what, value| check(what, value, 0.0, 1.0, "a number from 0 to 1");
        within!(self.speed_mps, 0.01, 10.0, "0.01 to 10 m/s");
        within!(self.past_boundary_m, -5.0, 5.0, "-5 to 5 m");
        spell("turning", &self.turning, 0.0)?;
        spell("roaming", &self.roaming, 1.0)?;
        spell("charging", &self.charging, 1.0)?;
        within!(self.departure_spread_deg, 0.0, 90.0, "0 to 90 degrees");
        for &rad in self.departure_headings_rad.iter() {
            check("departure heading", rad, -10.0, 10.0, "an angle in radians")?;
        }
        share("guide_share_fraction", self.guide_share_fraction)?;
        let (low, high) = self.guide_exit_fraction;
        share("guide_exit_fraction", low)?;
        check("guide_exit_fraction", high, low, 1.0, "from its lower end to 1")?;
        within!(self.give_up_s, 0.0, 1e7, "0 to 10,000,000 s");
        within!(self.speed_sd_fraction, 0.0, 0.5, "0 to 0.5");
        within!(self.curvature_sd_per_m, 0.0, 1.0, "0 to 1 per m");
        within!(self.heading_walk_deg, 0.0, 45.0, "0 to 45 degrees");
        within!(self.slope_pull_per_m, 0.0, 1.0, "0 to 1 per m");
        within!(self.downhill_deg, -1e4, 1e4, "an angle in degrees");
        let (most_m, expected) = match self.pattern {
            Pattern::Roaming => (5.0, "0 to 5 m"),
            _ => (0.0, "0: only a roaming machine turns on arcs"),
        };
        within!(self.turning_radius_m, 0.0, most_m, expected);
        within!(self.slowing_m, 0.0, 10.0, "0 to 10 m");
        within!(self.slip_fraction, 0.0, 0.45, "0 to 0.45");
        match &self.turn_law {
            TurnLaw::CosineFromNormal | TurnLaw::UniformFromNormal => {}
            TurnLaw::ReflectWithSpread { sd_deg } => {
                check("sd_deg", *sd_deg, 0.0, 360.0, "0 to 360 degrees")?
            }
            TurnLaw::FromHeading { min_deg, max_deg } => {
                let (low, high) = (*min_deg, *max_deg);
                check("min_deg", low, 0.0, 180.0, "0 to 180 degrees")?;
                check("max_deg", high, low, 180.0, "from min_deg to 180 degrees")?;
            }
            TurnLaw::Observed { pairs, neighbours } => {
                let count = pairs.len() as f64;
                check("number of observed turns", count, 1.0, 1e9, "at least 1")?;
                check("neighbours", *neighbours as f64, 1.0, 1e9, "at least 1")?;
                for pair in pairs.iter() {
                    check("mirror_rad", pair.mirror_rad, -1.6, 1.6, "-pi/2 to pi/2")?;
                    check("out_rad", pair.out_rad, -1.6, 1.6, "-pi/2 to pi/2")?;
                }
            }
        }
        if let Pattern::Spiral { pitch_m } = self.pattern {
            check("pitch_m", pitch_m, 0.02, 100.0, "0.02 to 100 m")?;
        }
        if let Some(lanes) = self.pattern.lanes() {
            let angle = |what, value| check(what, value, -1e4, 1e4, "an angle in degrees");
            within!(lanes.spacing_m, 0.02, 100.0, "0.02 to 100 m");
            angle("direction_deg", lanes.direction_deg)?;
            within!(lanes.jitter_m, 0.0, 10.0, "0 to 10 m");
            angle("turn_each_round_deg", lanes.turn_each_round_deg)?;
            let rounds = lanes.headland_rounds as f64;
            check("headland_rounds", rounds, 0.0, 20.0, "0 to 20")?;
            within!(lanes.pause_s, 0.0, 3600.0, "0 to 3600 s");
        }
        Ok(())
    }
}

impl Run {
    pub(crate) fn check(&self) -> Result<(), SimulateError> {
        within!(self.hours, 1e-6, 10_000.0, "above 0 and at most 10,000 h");
        within!(self.start_stay_s, 0.0, 1e7, "0 to 10,000,000 s");
        for spot in &self.stuck_spots {
            within!(spot.radius_m, 1e-3, 100.0, "0.001 to 100 m");
            let on_the_plane = |what, value| check(what, value, -1e6, 1e6, "a place on the plane");
            on_the_plane("east_m of a stuck spot", spot.place.east_m)?;
            on_the_plane("north_m of a stuck spot", spot.place.north_m)?;
            within!(spot.probability, 0.0, 1.0, "a number from 0 to 1");
            spot.duration
                .check("duration", 0.0, "a time that is not negative")?;
        }
        Ok(())
    }
}
