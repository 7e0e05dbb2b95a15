//! Drives round and round outwards.
//!
//! An Archimedean spiral, `r = pitch * angle / (2 pi)`, driven in chords that deviate from it by at most [`SAGITTA_M`]. It
//! ends at the first edge; the machine turns by its law, drives part of the way to the next edge, and starts again.

use crate::drive::{Driver, LegEnd, LegLimits};
use crate::machine::Pattern;
use std::f64::consts::TAU;
use tussock_plane::Vector;

/// Chords deviate from the spiral by no more than this.
const SAGITTA_M: f64 = 0.005;
/// Longest chord, as an angle, for the tight part of the spiral.
const MOST_CHORD_RAD: f64 = 0.5;
/// The next spiral begins between these fractions of the way to the next edge.
const BEGINS_FRACTION: (f64, f64) = (0.3, 0.7);

impl Driver<'_> {
    /// Spirals, and ways between them, until a time; nothing for machines with another pattern.
    pub(crate) fn spirals_until(&mut self, until_s: f64) {
        let Pattern::Spiral { pitch_m } = self.machine.pattern else {
            return;
        };
        while !self.is_over() && self.time_s < until_s {
            let room_m = self
                .part()
                .cast(self.place, self.heading, f64::INFINITY)
                .map_or(0.0, |hit| hit.distance_m);
            let way_m = room_m * self.dice.between(BEGINS_FRACTION.0, BEGINS_FRACTION.1);
            match self.limited_leg(way_m) {
                LegEnd::Freed(heading) => self.heading = heading,
                LegEnd::Edge(edge) => self.turn_at_edge(edge),
                _ => self.spiral(pitch_m, until_s),
            }
        }
    }

    fn limited_leg(&mut self, within_m: f64) -> LegEnd {
        self.leg(LegLimits {
            guides_from_s: f64::INFINITY,
            within_m,
        })
    }

    /// One spiral about the place where it is.
    fn spiral(&mut self, pitch_m: f64, until_s: f64) {
        let middle = self.place;
        let begins_rad = self.heading.angle_rad();
        let begins = self.record.vertices.len();
        let spin = if self.dice.happens(0.5) { 1.0 } else { -1.0 };
        let mut angle_rad: f64 = 0.0;
        while !self.is_over() && self.time_s < until_s {
            let radius_m = pitch_m * angle_rad / TAU;
            // Sagitta of a chord over an angle a: r a2 / 8.
            let step_rad = (8.0 * SAGITTA_M / radius_m.max(1e-3)).sqrt().min(MOST_CHORD_RAD);
            angle_rad += step_rad;
            let next = middle + Vector::of_angle(begins_rad + spin * angle_rad) * (pitch_m * angle_rad / TAU);
            let step = next - self.place;
            let Some(heading) = step.unit() else { return };
            self.heading = heading;
            match self.limited_leg(step.length()) {
                LegEnd::Edge(edge) => {
                    self.leg_begins = begins;
                    self.turn_at_edge(edge);
                    return;
                }
                LegEnd::Freed(heading) => {
                    self.heading = heading;
                    return;
                }
                LegEnd::Guide(..) | LegEnd::Done => {}
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::SAGITTA_M;
    use crate::drive::{Driver, Yard};
    use crate::machine::{Machine, Pattern, Run};
    use crate::square_tests::square;
    use std::f64::consts::TAU;
    use tussock_plane::Vector;

    #[test]
    fn a_spiral_has_the_length_of_its_closed_form_and_ends_at_the_edge() {
        const PITCH_M: f64 = 0.2;
        let site = square(24.0);
        let machine = Machine {
            past_boundary_m: 0.0,
            ..Machine::of(Pattern::Spiral { pitch_m: PITCH_M })
        };
        let yard = Yard::new(&site, 0.0).unwrap();
        let run = Run::new(2.0, 5);
        let mut driver = Driver::new(&yard, &machine, &run);
        let middle = Vector::from(site.lawn.centroid().unwrap());
        driver.place = middle;
        driver.record.vertices.clear();
        driver.spiral(PITCH_M, f64::INFINITY);
        // 12 m from the middle to the nearest edge: 60 rings.
        let radius_m = (driver.place - middle).length();
        assert!((11.99..12.21).contains(&radius_m), "{radius_m}");
        let corners: Vec<Vector> = driver
            .record
            .vertices
            .iter()
            .map(|vertex| vertex.place.into())
            .collect();
        let driven_m: f64 = corners.windows(2).map(|pair| (pair[1] - pair[0]).length()).sum();
        // Arc length of an Archimedean spiral: pitch / (4 pi) (a sqrt(1 + a2) + asinh a).
        let angle_rad = TAU * radius_m / PITCH_M;
        let arc_m =
            PITCH_M / (2.0 * TAU) * (angle_rad * (1.0 + angle_rad * angle_rad).sqrt() + angle_rad.asinh());
        assert!((driven_m / arc_m - 1.0).abs() < 2e-3, "{driven_m} for {arc_m}");
        // Never inwards, except for the last chord, which the edge cuts short.
        for (before, after) in corners.iter().zip(corners.iter().skip(1)) {
            assert!((*after - middle).length() >= (*before - middle).length() - SAGITTA_M);
        }
    }
}
