//! Where one machine was: the result of locating.

use crate::anchor::Anchored;
use crate::carried::Carried;
use crate::local_bias::LocalBias;
use crate::parts::{Gap, Halt, Kept, NoiseEstimate, PathMethod, Piece, ReckonedDrift, Step, Vertex};
use crate::stays::Standing;
use tussock_plane::Leg;
use tussock_types::{Place, math};

/// Where one machine was.
#[derive(Clone, Debug, PartialEq)]
pub struct Track {
    /// Name of the machine.
    pub machine: String,
    /// Unbroken pieces in time order.
    pub pieces: Vec<Piece>,
    /// Halts in time order.
    pub halts: Vec<Halt>,
    /// Whether its receiver smooths its own positions.
    pub smooths: bool,
    /// Stays of a machine whose receiver does, in time order.
    pub stays: Vec<Standing>,
    /// Silences in time order.
    pub gaps: Vec<Gap>,
    /// Steps of the receiver in time order; no piece crosses one.
    pub steps: Vec<Step>,
    /// Stretches in which the machine was carried or pushed, in time order; no piece reaches into them.
    pub carried: Vec<Carried>,
    /// How the path was found.
    pub method: PathMethod,
    /// Position error.
    pub noise: NoiseEstimate,
    /// Slow part of the position error that is assumed, even if it cannot be measured.
    pub reckoned_drift: ReckonedDrift,
    /// Usual time between fixes.
    pub period_s: f64,
    /// Usual driving speed; `None` if the machine hardly moves.
    pub speed_mps: Option<f64>,
    /// Fixes used.
    pub fixes_used: usize,
    /// Fixes removed for poor quality.
    pub gated_quality: usize,
    /// Fixes removed as jumps.
    pub gated_jumps: usize,
    /// The station, if known or recognised.
    pub station: Option<Place>,
    /// Trips from the station and back.
    pub outings: Option<usize>,
    /// First and last used fix.
    pub span_s: Option<(f64, f64)>,
    /// The same for all fixes, if those before or after make a silence.
    pub read_s: Option<(f64, f64)>,
    /// The fixes that were used: time and place, for the count as logged.
    pub kept: Kept,
    /// What held the positions, if they are poor; pasts that agree with the log can be drawn from it.
    pub anchored: Option<Box<Anchored>>,
    /// Ground on which positions are always bent in the same direction; the path is straightened there.
    pub bent: Option<LocalBias>,
}

/// Drift that nothing rules out matters from here on: precise logs have been seen to have less.
const DRIFT_MATTERS_M: f64 = 0.1;

/// A receiver restarts this often (common practice, no source),
const RESTARTS: f64 = 4.0;
/// plus this often per hour.
const RESTARTS_PER_H: f64 = 0.5;

impl Track {
    /// Whether the steps are so few that each may be permanent. A sky that is poor over part of the lawn displaces positions
    /// and moves them back at every drive through it: what is off there is not off afterwards.
    pub fn are_restarts(&self) -> bool {
        let ends_s = self.kept.time_s.last().zip(self.kept.time_s.first());
        let logged_h = ends_s.map_or(0.0, |(end_s, start_s)| (end_s - start_s) / 3600.0);
        self.steps.len() as f64 <= RESTARTS + RESTARTS_PER_H * logged_h
    }

    /// Position error in the path, standard deviation per axis: the anchored path's own estimate, or else the white part
    /// plus the drift that the log shows or does not rule out. Line fits leave less of the white part, but nothing is
    /// claimed for them.
    pub fn position_error_m(&self) -> f64 {
        if let Some(anchored) = &self.anchored {
            return anchored.error_m();
        }
        let drift_m = self.noise.drift_m.or_else(|| self.unseen_drift_m());
        math::hypot(self.noise.white_m, drift_m.unwrap_or(0.0))
    }

    /// Drift that standing time does not show and driving does not rule out, if it matters; `None` if it was measured.
    ///
    /// Between sparse fixes legs cannot be followed; their interval already contains what the turns show.
    pub fn unseen_drift_m(&self) -> Option<f64> {
        let is_followed = matches!(self.method, PathMethod::Legs | PathMethod::Smoothed);
        match self.reckoned_drift {
            ReckonedDrift::Measured { .. } => None,
            other => Some(other.drift_m()).filter(|drift_m| is_followed && *drift_m > DRIFT_MATTERS_M),
        }
    }

    /// Pieces of another past that agrees with the log equally well; the same for the same numbers. `None` if only the one
    /// path is known.
    pub fn drawn(&self, seed: u64, number: u64) -> Option<Vec<Piece>> {
        let anchored = self.anchored.as_deref()?;
        let corners = anchored.draw(seed, number);
        Some(anchored.chain.pieces(&corners))
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

    /// The same for an index of legs, with the times of departure and arrival.
    pub fn straight_legs(&self) -> impl Iterator<Item = Leg> + '_ {
        self.legs().map(|(from, to)| Leg {
            from: from.place,
            to: to.place,
            start_s: from.leave_s,
            end_s: to.arrive_s,
        })
    }

    /// Time in silences.
    pub fn silent_s(&self) -> f64 {
        self.gaps.iter().map(|gap| gap.end_s - gap.start_s).sum()
    }
}
