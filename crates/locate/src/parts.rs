//! What a track is made of: corners and pieces, halts and silences, steps, error laws, and the fixes that were used.

use tussock_types::{Place, math};

/// How the path between fixes was found.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum PathMethod {
    /// Lines fitted to straight legs, with corners where they meet.
    Legs,
    /// Straight legs at one speed, corners, stands and the lawn's edge solved together ([`crate::anchor`]).
    Anchored,
    /// Constant-velocity smoothing of all fixes.
    Smoothed,
    /// Straight chords between sparse fixes.
    Chords,
    /// Sparse fixes, with the turns between them put back.
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

impl Vertex {
    /// A corner at which it does not wait.
    pub const fn passed(place: Place, time_s: f64) -> Self {
        let (arrive_s, leave_s) = (time_s, time_s);
        Self {
            place,
            arrive_s,
            leave_s,
        }
    }

    /// The stand of a halt.
    pub(crate) const fn of_halt(halt: &Halt) -> Self {
        let (place, arrive_s, leave_s) = (halt.place, halt.start_s, halt.end_s);
        Self {
            place,
            arrive_s,
            leave_s,
        }
    }
}

/// An unbroken piece of path: no silence inside.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Piece {
    /// Corners in time order; a single corner is a halt without any drive.
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
    /// Radius that holds 19 in 20 of its fixes.
    pub radius_m: f64,
    /// Where the machine came from: its place a few seconds before.
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

/// A jump of the receiver that stays: positions before and after belong to two stretches, each with its own offset.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Step {
    /// First fix after it.
    pub time_s: f64,
    /// How far it went east.
    pub east_m: f64,
    /// How far it went north.
    pub north_m: f64,
    /// How far the positions after it may still be displaced from those before, once the step has been removed.
    pub left_m: f64,
}

/// Position error, as far as the log shows it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct NoiseEstimate {
    /// White part per axis.
    pub white_m: f64,
    /// Slow part per axis, if standing time shows it.
    pub drift_m: Option<f64>,
    /// Random-walk rate of the slow part, square metres per second and axis.
    pub drift_rate_m2_per_s: f64,
    /// Correlation time of the slow part, if standing time shows it.
    pub drift_time_s: Option<f64>,
    /// Where the white part comes from.
    pub source: tussock_types::NoiseSource,
}

/// Slow part of the position error per axis that is assumed, by its source.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum ReckonedDrift {
    /// Standing time shows it.
    Measured {
        /// Standard deviation per axis.
        drift_m: f64,
    },
    /// The device card or the settings say so.
    Known {
        /// Standard deviation per axis.
        drift_m: f64,
    },
    /// Straight drives allow no more than this.
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
            | Self::Known { drift_m }
            | Self::Driven { drift_m }
            | Self::Usual { drift_m } => drift_m,
        }
    }
}

/// Fixes that passed the outlier filter, as columns.
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
    /// The factor over its usual error that the receiver assumes; empty if it does not change, or is unknown.
    pub error_factor: Vec<f32>,
}

impl Kept {
    /// For every two fixes of a stretch that are this far apart in time (at most half as much again, plus a second): the
    /// change of position, east and north.
    pub(crate) fn for_each_change(
        &self,
        stretches: &[std::ops::Range<usize>],
        lag_s: f64,
        mut each: impl FnMut(f64, f64),
    ) {
        for fixes in stretches {
            let mut later = fixes.start;
            for index in fixes.clone() {
                while later < fixes.end && self.time_s[later] - self.time_s[index] < lag_s - 1e-6 {
                    later += 1;
                }
                if later >= fixes.end {
                    break;
                }
                if self.time_s[later] - self.time_s[index] <= 1.5 * lag_s + 1.0 {
                    each(
                        self.east_m[later] - self.east_m[index],
                        self.north_m[later] - self.north_m[index],
                    );
                }
            }
        }
    }

    /// Mean square change of the position within a lag, per axis, estimated by the median: half of all squared normal
    /// deviates lie below 0.4549. `None` if fewer than thirty pairs of fixes are that far apart.
    pub(crate) fn change_m2(&self, stretches: &[std::ops::Range<usize>], lag_s: f64) -> Option<f64> {
        let mut squares_m2 = Vec::new();
        self.for_each_change(stretches, lag_s, |east_m, north_m| {
            squares_m2.extend([east_m * east_m, north_m * north_m]);
        });
        let enough = squares_m2.len() >= 60;
        math::median(&mut squares_m2)
            .filter(|_| enough)
            .map(|square_m2| square_m2 / 0.4549)
    }

    /// Place of the fix at `index`.
    pub fn place(&self, index: usize) -> Place {
        Place::new(self.east_m[index], self.north_m[index])
    }

    /// The factor over the usual error that the fix may have.
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

/// Ensures that no corner begins before the previous one ended: two that are timed separately may overlap by a few
/// hundredths of a second if legs are shorter than the accuracy of their timing.
pub(crate) fn in_order(pieces: &mut [Piece]) {
    let mut now_s = f64::NEG_INFINITY;
    for vertex in pieces.iter_mut().flat_map(|piece| &mut piece.vertices) {
        vertex.arrive_s = vertex.arrive_s.max(now_s);
        vertex.leave_s = vertex.leave_s.max(vertex.arrive_s);
        now_s = vertex.leave_s;
    }
}
