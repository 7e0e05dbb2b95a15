//! Where was the machine, exactly, at every moment?
//!
//! A piecewise linear path with times. Nothing in it is estimated; places between two vertices lie on the straight line at
//! constant speed, and a standing machine has two vertices at one place.

use tussock_plane::Vector;
use tussock_types::Place;

/// What the machine does from one vertex to the next.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Doing {
    /// At the station.
    AtStation,
    /// Over the lawn, as its pattern says.
    Driving,
    /// Along a guide run or an edge, or between the station and the lawn.
    Transit,
    /// Standing at an edge to turn.
    Turning,
    /// Backwards out of the station or out of a bad place.
    Reversing,
    /// Caught by a stuck spot, standing or wiggling.
    Stuck,
    /// Given up on the way home.
    Stranded,
}

impl Doing {
    /// True if it is moving by itself.
    pub const fn is_under_way(self) -> bool {
        matches!(self, Self::Driving | Self::Transit | Self::Reversing)
    }
}

/// A corner of the path.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct TrueVertex {
    /// Seconds from the start of the run.
    pub time_s: f64,
    /// Place of the machine's middle.
    pub place: Place,
    /// Heading of the body from here on, anticlockwise from east; while turning it swings to the next vertex's.
    pub heading_rad: f64,
    /// What it does until the next vertex.
    pub doing: Doing,
}

/// One trip from the station and back.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct TrueOuting {
    /// Leaves the station.
    pub start_s: f64,
    /// When it starts for home; the end of the run if it never did.
    pub homeward_s: f64,
    /// When it is back; the end of the run if it is still out.
    pub end_s: f64,
    /// Number of the guide run along which it left.
    pub guide: Option<usize>,
    /// Where it left the guide run.
    pub guide_exit: Option<Place>,
    /// Number of the guide run along which it came home, once it had reached it.
    pub home_guide: Option<usize>,
}

/// Standing still away from the station.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct TrueHalt {
    /// From.
    pub start_s: f64,
    /// To.
    pub end_s: f64,
    /// Where.
    pub place: Place,
    /// Turning, stuck or stranded.
    pub doing: Doing,
}

/// Caught by a stuck spot.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct StuckEpisode {
    /// Number of the spot in the run.
    pub spot: usize,
    /// From.
    pub start_s: f64,
    /// To.
    pub end_s: f64,
    /// Where it was caught.
    pub place: Place,
    /// Heading with which it came.
    pub heading_rad: f64,
}

/// Time at the station.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Stay {
    /// From.
    pub start_s: f64,
    /// To.
    pub end_s: f64,
}

/// Everything that happened.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct TrueRun {
    /// Seed of the run.
    pub seed: u64,
    /// The path: at least two vertices, with times strictly increasing from 0 to the end of the run.
    pub vertices: Vec<TrueVertex>,
    /// Outings in order.
    pub outings: Vec<TrueOuting>,
    /// Halts in order.
    pub halts: Vec<TrueHalt>,
    /// Stuck episodes in order.
    pub stuck: Vec<StuckEpisode>,
    /// Stays at the station in order.
    pub stays: Vec<Stay>,
}

/// Place, motion and activity at one moment.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Moment {
    pub(crate) place: Vector,
    pub(crate) velocity_mps: Vector,
    pub(crate) heading_rad: f64,
}

impl TrueRun {
    /// When the run ends.
    pub fn end_s(&self) -> f64 {
        self.vertices.last().map_or(0.0, |vertex| vertex.time_s)
    }

    /// Straight pieces in order of time: start, end, and what was done.
    pub fn pieces(&self) -> impl Iterator<Item = (TrueVertex, TrueVertex)> {
        self.vertices.windows(2).map(|pair| (pair[0], pair[1]))
    }

    /// Time spent on one thing.
    pub fn time_s(&self, doing: Doing) -> f64 {
        self.sum(|one| one == doing, |from, to| to.time_s - from.time_s)
    }

    /// Time in motion by itself.
    pub fn driving_s(&self) -> f64 {
        self.sum(Doing::is_under_way, |from, to| to.time_s - from.time_s)
    }

    /// Length driven by itself.
    pub fn driven_m(&self) -> f64 {
        let length_m =
            |from: TrueVertex, to: TrueVertex| (Vector::from(to.place) - Vector::from(from.place)).length();
        self.sum(Doing::is_under_way, length_m)
    }

    fn sum(&self, counts: impl Fn(Doing) -> bool, of: impl Fn(TrueVertex, TrueVertex) -> f64) -> f64 {
        let pieces = self.pieces().filter(|(from, _)| counts(from.doing));
        pieces
            .map(|(from, to)| of(from, to))
            .fold(0.0, |sum, more| sum + more)
    }

    /// Where it was at a time; before and after the run, at its ends.
    pub fn place_at(&self, time_s: f64) -> Place {
        self.moment(self.piece_at(time_s), time_s).place.into()
    }

    /// Number of the piece that a time falls in.
    fn piece_at(&self, time_s: f64) -> usize {
        let after = self.vertices.partition_point(|vertex| vertex.time_s <= time_s);
        after.saturating_sub(1).min(self.vertices.len().saturating_sub(2))
    }

    /// The moment at a time within a known piece.
    pub(crate) fn moment(&self, piece: usize, time_s: f64) -> Moment {
        let (Some(from), Some(to)) = (self.vertices.get(piece), self.vertices.get(piece + 1)) else {
            return Moment {
                place: Vector::default(),
                velocity_mps: Vector::default(),
                heading_rad: 0.0,
            };
        };
        let lasts_s = to.time_s - from.time_s;
        let done = ((time_s - from.time_s) / lasts_s).clamp(0.0, 1.0);
        let step = Vector::from(to.place) - Vector::from(from.place);
        let swing_rad = if from.doing == Doing::Turning {
            // The shorter way round.
            let raw = to.heading_rad - from.heading_rad;
            let turns = (raw / std::f64::consts::TAU).round();
            raw - turns * std::f64::consts::TAU
        } else {
            0.0
        };
        Moment {
            place: Vector::from(from.place) + step * done,
            velocity_mps: step * (1.0 / lasts_s),
            heading_rad: from.heading_rad + swing_rad * done,
        }
    }

    /// Cuts everything off at the end of the run.
    pub(crate) fn cut_at(&mut self, end_s: f64) {
        let keep = self.vertices.partition_point(|vertex| vertex.time_s < end_s);
        if keep < self.vertices.len() && keep > 0 {
            let mut last = self.vertices[keep];
            last.place = self.moment(keep - 1, end_s).place.into();
            last.time_s = end_s;
            self.vertices.truncate(keep);
            self.vertices.push(last);
        }
        self.outings.retain(|outing| outing.start_s < end_s);
        self.halts.retain(|halt| halt.start_s < end_s);
        self.stuck.retain(|episode| episode.start_s < end_s);
        self.stays.retain(|stay| stay.start_s < end_s);
        for outing in &mut self.outings {
            outing.homeward_s = outing.homeward_s.min(end_s);
            outing.end_s = outing.end_s.min(end_s);
        }
        for (start_s, end) in self
            .halts
            .iter_mut()
            .map(|halt| (halt.start_s, &mut halt.end_s))
            .chain(
                self.stuck
                    .iter_mut()
                    .map(|episode| (episode.start_s, &mut episode.end_s)),
            )
            .chain(self.stays.iter_mut().map(|stay| (stay.start_s, &mut stay.end_s)))
        {
            *end = end.min(end_s).max(start_s);
        }
    }
}
