//! The result of locating.

use crate::anchor::Anchored;
use crate::carried::Carried;
use crate::local_bias::LocalBias;
use crate::locating::pieces_of;
use tussock_plane::Leg;
use tussock_types::{Place, math};

/// How the path between fixes was found.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum PathMethod {
    /// Lines fitted to straight legs, corners where they meet.
    Legs,
    /// Straight legs at one speed, corners, stands and the lawn's edge together ([`crate::anchor`]).
    Anchored,
    /// Constant-velocity smoothing of all fixes.
    Smoothed,
    /// Straight chords between sparse fixes.
    Chords,
    /// Sparse fixes, the turns between them put back.
    Rebuilt,
}

/// A corner of the path. The machine arrives, may wait, and leaves.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Vertex {
    /// Where.
    pub place: Place,
    /// When it arrives, seconds since 1970 in UTC.
    pub arrive_s: f64,
    /// When it leaves.
    pub leave_s: f64,
}

/// An unbroken piece of path: no silence inside.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Piece {
    /// Corners in time order; one corner alone is a halt without any drive.
    pub vertices: Vec<Vertex>,
}

/// A halt of a minute or more, or of any length at the station.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Halt {
    /// Mean place.
    pub place: Place,
    /// First fix of the halt.
    pub start_s: f64,
    /// Last fix inside it.
    pub end_s: f64,
    /// Whether it stood at the station.
    pub at: HaltPlace,
    /// Radius that holds 19 of 20 of its fixes.
    pub radius_m: f64,
    /// Where it came from: the place some seconds before.
    pub came_from: Option<Place>,
}

/// Where a halt took place.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum HaltPlace {
    /// At the charging station.
    Station,
    /// Anywhere else.
    Elsewhere,
}

/// Time without usable fixes.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Gap {
    /// Last fix before.
    pub start_s: f64,
    /// First fix after.
    pub end_s: f64,
    /// Distance between the two.
    pub moved_m: f64,
}

/// A jump of the receiver that stayed: positions before and after belong to two stretches, each with an offset of its own.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Step {
    /// First fix after it.
    pub time_s: f64,
    /// How far it went east.
    pub east_m: f64,
    /// How far it went north.
    pub north_m: f64,
}

/// Position error, as far as the log tells.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct NoiseEstimate {
    /// White part per axis.
    pub white_m: f64,
    /// Slow part per axis, where standing time shows it.
    pub drift_m: Option<f64>,
    /// Random-walk rate of the slow part, square metres per second and axis.
    pub drift_rate_m2_per_s: f64,
    /// Time in which the slow part forgets itself, where standing time shows it.
    pub drift_time_s: Option<f64>,
    /// Where the white part comes from.
    pub source: tussock_types::NoiseSource,
}

/// Slow part of the position error per axis that is reckoned with, by where it is known from.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum ReckonedDrift {
    /// Standing time shows it.
    Measured {
        /// Standard deviation per axis.
        drift_m: f64,
    },
    /// The user says so.
    Stated {
        /// Standard deviation per axis.
        drift_m: f64,
    },
    /// Straight drives allow no more.
    Driven {
        /// Standard deviation per axis.
        drift_m: f64,
    },
    /// Usual for such fixes.
    Usual {
        /// Standard deviation per axis.
        drift_m: f64,
    },
}

impl ReckonedDrift {
    /// Standard deviation per axis.
    pub const fn drift_m(self) -> f64 {
        match self {
            Self::Measured { drift_m }
            | Self::Stated { drift_m }
            | Self::Driven { drift_m }
            | Self::Usual { drift_m } => drift_m,
        }
    }
}

/// Where one machine was.
#[derive(Clone, Debug, PartialEq)]
pub struct Track {
    /// Name of the machine.
    pub machine: String,
    /// Unbroken pieces in time order.
    pub pieces: Vec<Piece>,
    /// Halts in time order.
    pub halts: Vec<Halt>,
    /// Silences in time order.
    pub gaps: Vec<Gap>,
    /// Steps of the receiver in time order; no piece goes across one.
    pub steps: Vec<Step>,
    /// Stretches in which it was carried or pushed, in time order; no piece reaches into them.
    pub carried: Vec<Carried>,
    /// How the path was found.
    pub method: PathMethod,
    /// Position error.
    pub noise: NoiseEstimate,
    /// Slow part of the position error to reckon with, also where it cannot be measured.
    pub reckoned_drift: ReckonedDrift,
    /// Usual time between fixes.
    pub period_s: f64,
    /// Usual driving speed; `None` when it hardly moves.
    pub speed_mps: Option<f64>,
    /// Fixes used.
    pub fixes_used: usize,
    /// Fixes taken out for poor quality.
    pub gated_quality: usize,
    /// Fixes taken out as jumps.
    pub gated_jumps: usize,
    /// The station, where known or recognised.
    pub station: Option<Place>,
    /// Trips from the station and back.
    pub outings: Option<usize>,
    /// First and last used fix.
    pub span_s: Option<(f64, f64)>,
    /// The same, of all fixes where those before or after make a silence.
    pub read_s: Option<(f64, f64)>,
    /// The fixes that were used: time and place, for the face-value count.
    pub kept: Kept,
    /// What the positions were held by, where they are poor; pasts that agree with the log can be drawn from it.
    pub anchored: Option<Box<Anchored>>,
    /// Ground on which positions are always bent the same way; the path is straightened there.
    pub bent: Option<LocalBias>,
}

/// Fixes that passed the gates, as columns.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Kept {
    /// Seconds since 1970 in UTC.
    pub time_s: Vec<f64>,
    /// East.
    pub east_m: Vec<f64>,
    /// North.
    pub north_m: Vec<f64>,
    /// Index of the unbroken run that the fix belongs to.
    pub run: Vec<u32>,
    /// How many times the usual error the receiver reckons with; empty where it does not change, or is not told.
    pub error_factor: Vec<f32>,
}

impl Kept {
    /// Place of the fix at `index`.
    pub fn place(&self, index: usize) -> Place {
        Place::new(self.east_m[index], self.north_m[index])
    }

    /// How many times the usual error the fix may have.
    pub fn error_factor_at(&self, index: usize) -> f64 {
        self.error_factor.get(index).copied().map_or(1.0, f64::from)
    }

    /// Number of fixes.
    pub fn len(&self) -> usize {
        self.time_s.len()
    }

    /// True without fixes.
    pub fn is_empty(&self) -> bool {
        self.time_s.is_empty()
    }

    /// Index ranges of the unbroken runs.
    pub fn runs(&self) -> Vec<std::ops::Range<usize>> {
        let mut runs = Vec::new();
        let mut start = 0;
        for index in 1..=self.len() {
            if index == self.len() || self.run[index] != self.run[start] {
                runs.push(start..index);
                start = index;
            }
        }
        if self.is_empty() { Vec::new() } else { runs }
    }
}

/// Drift that nothing rules out matters from here on: less is within what precise logs were seen to have.
const DRIFT_MATTERS_M: f64 = 0.1;

impl Track {
    /// Position error that is left in the path, standard deviation per axis. Measured, but for what of the white part the method
    /// leaves (line fits about 0.3 of it, smoothing 0.6: found on simulated drives).
    pub fn position_error_m(&self) -> f64 {
        if let Some(anchored) = &self.anchored {
            return anchored.error_m();
        }
        let left = match self.method {
            PathMethod::Legs => 0.3,
            PathMethod::Smoothed => 0.6,
            PathMethod::Anchored | PathMethod::Chords | PathMethod::Rebuilt => 1.0,
        };
        let drift_m = self.noise.drift_m.or_else(|| self.unseen_drift_m());
        math::hypot(left * self.noise.white_m, drift_m.unwrap_or(0.0))
    }

    /// Drift that standing time does not show and driving does not rule out, where it matters; `None` where it was measured.
    ///
    /// Between sparse fixes legs cannot be followed: what the turns say is in their interval.
    pub fn unseen_drift_m(&self) -> Option<f64> {
        let is_followed = matches!(self.method, PathMethod::Legs | PathMethod::Smoothed);
        match self.reckoned_drift {
            ReckonedDrift::Measured { .. } => None,
            other => Some(other.drift_m()).filter(|drift_m| is_followed && *drift_m > DRIFT_MATTERS_M),
        }
    }

    /// Pieces of another past that agrees with the log just as well; the same for the same numbers. `None` where only the
    /// one path is known.
    pub fn drawn(&self, seed: u64, number: u64) -> Option<Vec<Piece>> {
        let anchored = self.anchored.as_deref()?;
        let corners = anchored.draw(seed, number);
        Some(pieces_of(&anchored.chain, &corners))
    }

    /// Length of the path.
    pub fn path_m(&self) -> f64 {
        self.legs()
            .map(|(from, to)| from.place.distance_m(to.place))
            .sum()
    }

    /// Time on the move.
    pub fn driving_s(&self) -> f64 {
        self.legs()
            .map(|(from, to)| (to.arrive_s - from.leave_s).max(0.0))
            .sum()
    }

    /// Every drive from corner to corner.
    pub fn legs(&self) -> impl Iterator<Item = (Vertex, Vertex)> + '_ {
        self.pieces
            .iter()
            .flat_map(|piece| piece.vertices.windows(2).map(|pair| (pair[0], pair[1])))
    }

    /// The same for an index of legs, with the time of leaving and of arriving.
    pub fn straight_legs(&self) -> impl Iterator<Item = Leg> + '_ {
        self.legs().map(|(from, to)| Leg {
            from: from.place,
            to: to.place,
            start_s: from.leave_s,
            end_s: to.arrive_s,
        })
    }

    /// Time at the station; `None` when none is known.
    pub fn at_station_s(&self) -> Option<f64> {
        self.station.map(|_| {
            self.halts
                .iter()
                .filter(|halt| halt.at == HaltPlace::Station)
                .map(|halt| halt.end_s - halt.start_s)
                .sum()
        })
    }

    /// Time in silences.
    pub fn silent_s(&self) -> f64 {
        self.gaps.iter().map(|gap| gap.end_s - gap.start_s).sum()
    }
}
