//! How does a machine turn that cannot turn on the spot?
//!
//! ```text
//!         ^                  the leg is driven to the edge, then taken back to where the arc to the new heading fits:
//!     .-. |  new heading     as late as it can begin, to a millimetre, and never tighter than the radius
//!    (   '|
//! ====\===|======= edge      before a straight edge that is met under an angle of sine c, an arc that begins
//!      leg                   to the side of the edge begins r (1 - cosine) / c before it
//! ```
//!
//! Arcs are driven in chords that leave them by at most [`SAGITTA_M`]. Where no arc fits before the edge, the machine goes back to
//! where the leg began, and up to three radii farther, and turns as far as there is room.
//!
//! Approximate: stuck spots do not catch it on an arc, and no guide run is taken there.

use crate::drive::{DRAWS, Driver, SHORTEST_LEG_M};
use crate::run::Doing;
use tussock_plane::Vector;

/// Chords leave the arc by no more than this.
const SAGITTA_M: f64 = 0.002;
/// An arc begins at most so many radii before the edge; other headings are drawn first.
const MOST_BEFORE_RADII: f64 = 6.0;
/// Beginnings tried to a radius; the last interval is halved [`HALVINGS`] times.
const TRIED_PER_RADIUS: f64 = 8.0;
const HALVINGS: usize = 8;
/// Speed at the end of slowing down, as part of the leg's.
pub(crate) const SLOWEST_FRACTION: f64 = 0.3;
/// Pieces in which it slows down.
const SLOWING_PIECE_M: f64 = 0.05;

impl Driver<'_> {
    /// Turns at an edge that the present leg has reached, on an arc to a heading drawn by the law.
    pub(crate) fn turn_on_arc(&mut self, edge: usize) {
        let radius_m = self.machine.turning_radius_m;
        let back = self.way_back();
        let most_m = lengths_m(&back).sum::<f64>().min(MOST_BEFORE_RADII * radius_m);
        let is_slow = self.machine.slowing_m > 0.0;
        let speed_mps = self.leg_speed_mps * if is_slow { SLOWEST_FRACTION } else { 1.0 };
        for _ in 0..DRAWS {
            let heading = self.after_edge(self.part().edges[edge]);
            if let Some((before_m, arc)) = self.latest_arc(&back, heading, most_m) {
                self.take_back(before_m);
                self.slow_down();
                arc.iter().for_each(|to| self.go(*to, speed_mps, Doing::Driving));
                self.heading = heading;
                return;
            }
        }
        // Too narrow for all of them: back to where it came from and some way more, and round as far as there is room.
        self.slow_down();
        let start = back.last().copied().unwrap_or(self.place);
        let next = back.iter().rev().nth(1);
        let comes = next
            .and_then(|next| (*next - start).unit())
            .unwrap_or(self.heading);
        let room_m = self.part().cast(start, -comes, 3.0 * radius_m);
        let room_m = room_m.map_or(3.0 * radius_m, |hit| 0.9 * hit.distance_m);
        for corner in back.iter().copied().chain([start + (-comes) * room_m]) {
            self.go(corner, self.machine.speed_mps, Doing::Reversing);
        }
        let way_round = [1.0, -1.0].map(|side| {
            let angles = (1..=30).map(|step| side * f64::from(step) * 0.1);
            angles
                .map_while(|angle_rad| self.free_arc(self.place, self.heading, angle_rad))
                .last()
        });
        let farther = way_round.into_iter().flatten().max_by_key(Vec::len);
        // The clock runs even where nothing moves.
        self.wait(1.0, Doing::Turning);
        let arc = farther.iter().flatten();
        arc.for_each(|to| self.go(*to, speed_mps, Doing::Driving));
    }

    /// Places of the present leg, last first, the present one included.
    fn way_back(&self) -> Vec<Vector> {
        let corners = self.record.vertices.iter().skip(self.leg_begins).rev();
        let driven = corners.take_while(|vertex| vertex.doing == Doing::Driving);
        std::iter::once(self.place)
            .chain(driven.map(|vertex| vertex.place.into()))
            .collect()
    }

    /// The arc to a heading that begins as late as it can on the way back: how far before the end, and its corners.
    fn latest_arc(&self, back: &[Vector], heading: Vector, most_m: f64) -> Option<(f64, Vec<Vector>)> {
        let radius_m = self.machine.turning_radius_m;
        let at = |before_m: f64, side: f64| {
            let (place, comes) = before(back, before_m)?;
            let shorter_rad = comes.angle_to_rad(heading);
            let around = if shorter_rad * side >= 0.0 {
                0.0
            } else {
                side * std::f64::consts::TAU
            };
            let angle_rad = shorter_rad + around;
            let arc = self.free_arc(place, comes, angle_rad)?;
            Some((before_m + radius_m * angle_rad.abs(), before_m, arc))
        };
        let step_m = radius_m / TRIED_PER_RADIUS;
        let tries = (most_m / step_m).floor() as usize;
        let best = [1.0, -1.0].into_iter().filter_map(|side| {
            let first = (0..=tries).find_map(|number| Some((number, at(number as f64 * step_m, side)?)));
            let (number, mut found) = first?;
            let (mut late_m, mut early_m) = ((number as f64 - 1.0).max(0.0) * step_m, found.1);
            for _ in 0..HALVINGS {
                let middle_m = 0.5 * (late_m + early_m);
                match at(middle_m, side) {
                    Some(fits) => (found, early_m) = (fits, middle_m),
                    None => late_m = middle_m,
                }
            }
            Some(found)
        });
        let (_, before_m, arc) = best.min_by(|a, b| a.0.total_cmp(&b.0))?;
        Some((before_m, arc))
    }

    /// Corners of an arc that stays on the ground, with room for a leg at its end.
    fn free_arc(&self, from: Vector, heading: Vector, angle_rad: f64) -> Option<Vec<Vector>> {
        let radius_m = self.machine.turning_radius_m;
        let most_rad = (8.0 * SAGITTA_M / radius_m).sqrt().min(0.5);
        let chords = (angle_rad.abs() / most_rad).ceil().max(1.0);
        let to_middle = heading.left() * (radius_m * angle_rad.signum());
        let part = self.part();
        let mut corners = Vec::with_capacity(chords as usize);
        let mut here = from;
        for number in 1..=chords as usize {
            let next = from + to_middle - to_middle.turned(angle_rad * number as f64 / chords);
            if !part.is_free(here, next) {
                return None;
            }
            corners.push(next);
            here = next;
        }
        let goes = heading.turned(angle_rad);
        part.cast(here, goes, SHORTEST_LEG_M).is_none().then_some(corners)
    }

    /// Takes the last metres of the present leg back; gives the places that it went through from there on.
    fn take_back(&mut self, way_m: f64) -> Vec<Vector> {
        let mut way = vec![self.place];
        let mut left_m = way_m;
        while let Some(last) = self.record.vertices.last().copied() {
            if left_m <= 0.0 || self.record.vertices.len() <= self.leg_begins || last.doing != Doing::Driving
            {
                break;
            }
            let from = Vector::from(last.place);
            let step = self.place - from;
            let kept_m = step.length() - left_m;
            self.heading = step.unit().unwrap_or(self.heading);
            // Of less than a micrometre, nothing is kept: the clock could not tell its ends apart.
            if kept_m > 1e-6 {
                let part = kept_m / step.length();
                self.place = from + step * part;
                self.time_s = last.time_s + (self.time_s - last.time_s) * part;
                break;
            }
            (self.place, self.time_s) = (from, last.time_s);
            self.record.vertices.pop();
            left_m -= step.length();
            way.push(from);
        }
        way.reverse();
        way
    }

    /// Drives the end of the present leg again, more and more slowly.
    pub(crate) fn slow_down(&mut self) {
        let slowing_m = self.machine.slowing_m;
        if slowing_m <= 0.0 {
            return;
        }
        let (heading, way) = (self.heading, self.take_back(slowing_m));
        let mut left_m: f64 =
            lengths_m(&way).sum::<f64>() + way.first().map_or(0.0, |first| (*first - self.place).length());
        for corner in way {
            while let Some(ahead) = (corner - self.place).unit() {
                let open_m = (corner - self.place).length();
                let piece_m = open_m.min(SLOWING_PIECE_M);
                let next = if piece_m < open_m {
                    self.place + ahead * piece_m
                } else {
                    corner
                };
                let slowed = 1.0 - (left_m - 0.5 * piece_m) / slowing_m;
                self.go(
                    next,
                    self.leg_speed_mps * (1.0 - (1.0 - SLOWEST_FRACTION) * slowed),
                    Doing::Driving,
                );
                self.place = next;
                left_m -= piece_m;
            }
        }
        self.heading = heading;
    }
}

fn lengths_m(way: &[Vector]) -> impl Iterator<Item = f64> {
    way.windows(2).map(|pair| (pair[1] - pair[0]).length())
}

/// Place and heading so far before the end of a way that is given from its end.
fn before(back: &[Vector], before_m: f64) -> Option<(Vector, Vector)> {
    let mut left_m = before_m;
    for pair in back.windows(2) {
        let Some(heading) = (pair[0] - pair[1]).unit() else {
            continue;
        };
        let length_m = (pair[0] - pair[1]).length();
        if left_m <= length_m {
            return Some((pair[0] + (-heading) * left_m, heading));
        }
        left_m -= length_m;
    }
    None
}

#[cfg(test)]
#[allow(clippy::disallowed_methods)]
mod tests {
    // The host's mathematics is the oracle here.
    use super::*;
    use crate::drive::{LegEnd, LegLimits, Yard};
    use crate::machine::{Machine, Run};
    use crate::square_tests::square;
    use std::f64::consts::PI;

    const SEED: u64 = 17;
    const OPEN: LegLimits = LegLimits {
        guides_from_s: f64::INFINITY,
        within_m: f64::INFINITY,
    };

    /// A machine in the middle of a square of 200 m whose edges it may touch.
    fn in_the_open<T>(machine: Machine, ask: impl Fn(&mut Driver<'_>) -> T) -> T {
        let site = square(200.0);
        let machine = Machine {
            past_boundary_m: 0.0,
            ..machine
        };
        let yard = Yard::new(&site, 0.0).unwrap();
        let run = Run::new(100.0, SEED);
        let mut driver = Driver::new(&yard, &machine, &run);
        driver.place = site.lawn.centroid().unwrap().into();
        ask(&mut driver)
    }

    #[test]
    fn before_a_straight_edge_an_arc_begins_where_its_closed_form_says() {
        let radius_m = 0.4;
        for angle_deg in [15.0_f64, 40.0, 65.0, 90.0] {
            let graze_rad = angle_deg.to_radians();
            let machine = Machine {
                turning_radius_m: radius_m,
                ..Machine::default()
            };
            let before_m = in_the_open(machine, |driver| {
                driver.place = driver.place + Vector::new(0.0, -95.0);
                driver.heading = Vector::of_angle(-graze_rad);
                assert!(matches!(driver.leg(OPEN), LegEnd::Edge(_)));
                let back = driver.way_back();
                // To the left, away from the edge; north-east.
                let found = driver.latest_arc(&back, Vector::of_angle(PI / 4.0), 5.0);
                found.unwrap().0
            });
            let expected_m = radius_m * (0.5 * graze_rad).tan();
            let chord_m = (SAGITTA_M + 1e-3) / graze_rad.sin();
            assert!(
                (before_m - expected_m).abs() < chord_m,
                "{angle_deg}: {before_m} for {expected_m}"
            );
        }
    }

    #[test]
    fn slowing_down_takes_the_time_of_its_closed_form_and_moves_nothing() {
        let (slowing_m, speed_mps) = (0.6, 0.4);
        let ends = [0.0, slowing_m].map(|slowing_m| {
            in_the_open(
                Machine {
                    slowing_m,
                    speed_mps,
                    ..Machine::default()
                },
                |driver| {
                    driver.heading = Vector::new(1.0, 0.0);
                    driver.leg(OPEN);
                    driver.slow_down();
                    (driver.place, driver.time_s, driver.heading)
                },
            )
        });
        assert!((ends[0].0 - ends[1].0).length() < 1e-9 && (ends[0].2 - ends[1].2).length() < 1e-9);
        // v falls evenly with the way from v0 to 0.3 v0: the time is s / (0.7 v0) ln (1 / 0.3).
        let slow_s = slowing_m / (0.7 * speed_mps) * (1.0_f64 / SLOWEST_FRACTION).ln();
        let more_s = ends[1].1 - ends[0].1;
        assert!(
            (more_s - (slow_s - slowing_m / speed_mps)).abs() < 0.01 * slow_s,
            "{more_s}"
        );
    }

    #[test]
    fn a_slope_turns_legs_downhill_by_its_closed_form() {
        let (pull_per_m, way_m) = (0.05, 30.0);
        let machine = Machine {
            slope_pull_per_m: pull_per_m,
            downhill_deg: -90.0,
            ..Machine::default()
        };
        let heading_rad = in_the_open(machine, |driver| {
            driver.heading = Vector::new(1.0, 0.0);
            driver.leg(LegLimits {
                within_m: way_m,
                ..OPEN
            });
            driver.heading.angle_rad()
        });
        // The angle to downhill obeys d angle / d way = -pull sin angle: its half has a tangent that decays.
        let left_rad = 2.0 * ((PI / 4.0).tan() * (-pull_per_m * way_m).exp()).atan();
        assert!(
            (heading_rad - (left_rad - PI / 2.0)).abs() < 0.03,
            "{heading_rad} for {}",
            left_rad - PI / 2.0
        );
    }

    #[test]
    fn a_wandering_heading_spreads_with_the_root_of_the_way() {
        let (walk_deg, way_m, legs) = (3.0, 25.0, 2000);
        let machine = Machine {
            heading_walk_deg: walk_deg,
            ..Machine::default()
        };
        let variance_deg2 = in_the_open(machine, |driver| {
            let start = driver.place;
            let squares = (0..legs).map(|_| {
                (driver.place, driver.heading) = (start, Vector::new(1.0, 0.0));
                driver.leg(LegLimits {
                    within_m: way_m,
                    ..OPEN
                });
                driver.heading.angle_rad().to_degrees().powi(2)
            });
            squares.sum::<f64>() / f64::from(legs)
        });
        // After the last of 50 pieces it has not turned yet. 3 standard deviations of a variance from 2000 are 9.5 %.
        let expected_deg2 = walk_deg * walk_deg * way_m * 49.0 / 50.0;
        assert!(
            (variance_deg2 / expected_deg2 - 1.0).abs() < 0.095,
            "{variance_deg2} for {expected_deg2}"
        );
    }
}
