//! Does a bad place catch the machine, and what then?
//!
//! A leg that enters a spot's circle is caught with the spot's probability, somewhere between the rim and the deepest place
//! on its way; a machine that starts inside does not enter. After the episode it goes back the way it came, give or take
//! 20 degrees.

use crate::drive::Driver;
use crate::machine::Manner;
use crate::run::{Doing, StuckEpisode};
use std::f64::consts::PI;
use tussock_plane::Vector;

/// A wiggling machine moves this far to and fro.
const WIGGLE_M: f64 = 0.08;

impl Driver<'_> {
    /// Whether a stuck spot catches the machine on a stretch: number of the spot and distance.
    pub(crate) fn caught(&mut self, heading: Vector, reach_m: f64) -> Option<(usize, f64)> {
        let run = self.run;
        let mut entries: Vec<(f64, f64, usize)> = Vec::new();
        for (number, spot) in run.stuck_spots.iter().enumerate() {
            let gap = Vector::from(spot.place) - self.place;
            let (ahead_m, aside_m) = (gap.dot(heading), gap.cross(heading));
            let depth_m2 = spot.radius_m * spot.radius_m - aside_m * aside_m;
            // A machine that starts inside does not enter.
            if depth_m2 <= 0.0 || gap.dot(gap) < spot.radius_m * spot.radius_m {
                continue;
            }
            let half_m = depth_m2.sqrt();
            if ahead_m - half_m > 0.0 && ahead_m - half_m < reach_m {
                entries.push((ahead_m - half_m, ahead_m, number));
            }
        }
        entries.sort_by(|a, b| a.0.total_cmp(&b.0));
        for (enters_m, deepest_m, number) in entries {
            if self.dice.happens(run.stuck_spots[number].probability) {
                let caught_m = self.dice.between(enters_m, deepest_m.min(reach_m).max(enters_m));
                return Some((number, caught_m));
            }
        }
        None
    }

    /// Waits until a stuck episode is over; returns the heading with which the machine goes on.
    pub(crate) fn stick(&mut self, number: usize, heading: Vector, came_m: f64) -> Vector {
        let spot = &self.run.stuck_spots[number];
        let duration_s = self.dice.spell_s(&spot.duration);
        let start_s = self.time_s;
        let caught = self.place;
        self.heading = heading;
        if spot.manner == Manner::Wiggles && came_m > WIGGLE_M {
            while self.time_s < start_s + duration_s {
                let back = caught + (-heading) * self.dice.between(0.02, WIGGLE_M);
                for to in [back, caught] {
                    let lasts_s = self.dice.between(1.0, 4.0);
                    self.corner(Doing::Stuck);
                    self.time_s += lasts_s;
                    self.place = to;
                }
            }
        } else {
            self.wait(duration_s, Doing::Stuck);
        }
        if self.time_s > start_s {
            self.record.stuck.push(StuckEpisode {
                spot: number,
                start_s,
                end_s: self.time_s,
                place: caught.into(),
                heading_rad: heading.angle_rad(),
            });
        }
        self.free_heading(|dice| heading.turned(PI + 0.35 * dice.normal()))
    }
}
