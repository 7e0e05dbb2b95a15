//! Ways with one, two or three turns at the line.
//!
//! From a known heading, the first turn is where its ray meets the line; the last may be where the next heading's ray, run
//! backwards, meets it; a turn in between follows from the length of the way. The length that is left over is divided
//! between heading and wait according to their errors (a Kalman update of one number).

use super::outline::Between;
use super::ways::{BELIEVED_SD, From, Ways, outside, sine, surprise};
use std::f64::consts::PI;
use tussock_plane::Vector;
use tussock_types::math;

impl Ways<'_> {
    /// Straight to the line along the heading, then to the second fix.
    pub(super) fn one_turn_ahead(&mut self, from: &From, heading: Vector, sd_rad: f64) {
        let (a, b) = (self.interval.from, self.interval.to);
        let reach_m = self.how.speed_mps * from.time_s;
        let Some(hit) = self.ahead(a, heading, reach_m + 0.5) else {
            return;
        };
        let (first_m, to_b) = (hit.distance_m, b - hit.place);
        let (Some(out), second_m) = (to_b.unit(), to_b.length()) else {
            return;
        };
        let length_m = first_m + second_m;
        let wait_m = self.how.speed_mps * self.how.wait_s;
        let off_m = length_m - (reach_m - wait_m);
        let sine_in = sine(heading, &hit.edge);
        let slope = hit.edge.along.dot(heading - out);
        let place_sd_m = math::hypot(sd_rad * first_m / sine_in, self.how.white_m / sine_in);
        let length_sd_m = self.how.length_sd_m(length_m, 1.0);
        let sd_m = math::hypot(length_sd_m, place_sd_m * slope);
        if off_m.abs() <= BELIEVED_SD * sd_m {
            // The residual is shared between the heading and the wait.
            let gain = place_sd_m * place_sd_m * slope / (sd_m * sd_m);
            let at_m = (hit.place - hit.edge.from).dot(hit.edge.along) - gain * off_m;
            let turn = hit.edge.from + hit.edge.along * at_m.clamp(0.0, hit.edge.length_m);
            if let Some(out) = (b - turn).unit()
                && self.is_free(turn, b)
            {
                let left_m = place_sd_m * length_sd_m / sd_m;
                let out_sd_rad =
                    math::hypot(left_m * out.cross(hit.edge.along).abs(), self.how.across_sd_m()) / second_m;
                let cost = surprise(off_m, sd_m) + math::ln(PI * second_m);
                self.push(from, &[turn], Some((out, out_sd_rad)), cost);
            }
        }
        // It is turning again when the fix is taken.
        if let Some(foot) = self.interval.to_foot
            && off_m <= BELIEVED_SD * sd_m
            && off_m >= -wait_m - BELIEVED_SD * sd_m
            && second_m > 0.1
            && self.is_free(hit.place, b)
        {
            let over = outside(off_m, -wait_m, 0.0) / sd_m;
            let cost = math::ln(PI * second_m / sine(out, &foot.edge))
                + surprise(foot.distance_m, self.how.line_sd_m())
                + 0.5 * over * over;
            self.push_turning(from, &[hit.place], -off_m / self.how.speed_mps, cost);
        }
    }

    /// One turn, located by the length of the way, or by the heading that follows.
    pub(super) fn one_turn_anywhere(&mut self, from: &From) {
        const SHIFTS_SD: [f64; 3] = [0.0, -1.2, 1.2];
        let (a, b) = (self.interval.from, self.interval.to);
        let length_m = self.how.speed_mps * (from.time_s - self.how.wait_s);
        if length_m <= 0.0 {
            return;
        }
        let sd_m = self.how.length_sd_m(length_m, 1.0);
        let mut places = std::mem::take(&mut self.between);
        let mut turns: Vec<(Between, f64)> = Vec::new();
        for shift_sd in SHIFTS_SD {
            self.interval
                .near
                .between(a, b, length_m + shift_sd * sd_m, sd_m, &mut places);
            let off = |place: &Between| shift_sd + place.excess_m / sd_m;
            turns.extend(places.iter().map(|place| (*place, off(place))));
        }
        self.between = places;
        if let Some(next) = self.interval.next_heading
            && let Some(hit) = self.ahead(b, next * -1.0, length_m + 0.5)
        {
            let off_m = (hit.place - a).length() + hit.distance_m - length_m;
            let slope = (hit.place - a)
                .unit()
                .map_or(0.0, |first| hit.edge.along.dot(first - next));
            if off_m.abs() <= BELIEVED_SD * sd_m {
                let between = Between {
                    place: hit.place,
                    edge: hit.edge,
                    excess_m: off_m,
                    slope,
                };
                turns.push((between, off_m / sd_m));
            }
        }
        for (turn, off_sd) in turns {
            let (first, second) = (turn.place - a, b - turn.place);
            let (Some(inwards), Some(out)) = (first.unit(), second.unit()) else {
                continue;
            };
            if !self.is_free(a, turn.place) || !self.is_free(turn.place, b) {
                continue;
            }
            let (first_m, second_m) = (first.length(), second.length());
            let per_rad = (first_m / sine(inwards, &turn.edge) * turn.slope).abs().max(0.2);
            let cost = self.heading_cost(&from.state, inwards, first_m)
                + math::ln(per_rad)
                + math::ln(PI * second_m)
                + 0.5 * off_sd * off_sd;
            let place_sd_m = (0.6 * sd_m / turn.slope.abs().max(0.1)).min(1.0);
            let out_sd_rad = math::hypot(
                place_sd_m * out.cross(turn.edge.along).abs(),
                self.how.across_sd_m(),
            ) / second_m;
            self.push(from, &[turn.place], Some((out, out_sd_rad)), cost);
        }
    }

    /// Two or three turns, the first given by the heading.
    pub(super) fn turns_ahead(&mut self, from: &From, heading: Vector) {
        let (a, b) = (self.interval.from, self.interval.to);
        let how = self.how;
        let reach_m = how.speed_mps * from.time_s;
        let wait_m = how.speed_mps * how.wait_s;
        let Some(hit) = self.ahead(a, heading, reach_m - 2.0 * wait_m) else {
            return;
        };
        let left_m = reach_m - 2.0 * wait_m - hit.distance_m;
        if left_m <= 0.0 {
            return;
        }
        let sd_m = how.length_sd_m(reach_m, 2.0);
        let mut places = std::mem::take(&mut self.between);
        self.interval
            .near
            .between(hit.place, b, left_m, sd_m, &mut places);
        let next = self.interval.next_heading;
        let back = next.and_then(|next| self.ahead(b, next * -1.0, reach_m));
        if let Some(back) = back {
            let off_m = (back.place - hit.place).length() + back.distance_m - left_m;
            if off_m.abs() <= BELIEVED_SD * sd_m
                && let (Some(next), Some(middle)) = (next, (back.place - hit.place).unit())
            {
                places.push(Between {
                    place: back.place,
                    edge: back.edge,
                    excess_m: off_m,
                    slope: back.edge.along.dot(middle - next),
                });
            }
        }
        for turn in &places {
            let (middle, last) = (turn.place - hit.place, b - turn.place);
            let (Some(across), Some(out)) = (middle.unit(), last.unit()) else {
                continue;
            };
            if !self.is_free(hit.place, turn.place) || !self.is_free(turn.place, b) {
                continue;
            }
            let last_m = last.length();
            let per_rad = (middle.length() / sine(across, &turn.edge) * turn.slope)
                .abs()
                .max(0.3);
            let off = turn.excess_m / sd_m;
            let cost = math::ln(PI * PI * last_m * per_rad) + 0.5 * off * off;
            let place_sd_m = (sd_m / turn.slope.abs().max(0.1)).min(1.5);
            let out_sd_rad =
                math::hypot(place_sd_m * out.cross(turn.edge.along).abs(), how.across_sd_m()) / last_m;
            self.push(from, &[hit.place, turn.place], Some((out, out_sd_rad)), cost);
        }
        // Three turns need a heading at both ends.
        if let Some((back, next)) = back.zip(next) {
            let left_m = left_m - wait_m - back.distance_m;
            self.interval
                .near
                .between(hit.place, back.place, left_m, sd_m, &mut places);
            for turn in &places {
                let legs_m = [turn.place - hit.place, back.place - turn.place].map(Vector::length);
                if legs_m[0] < 0.05
                    || legs_m[1] < 0.05
                    || !self.is_free(hit.place, turn.place)
                    || !self.is_free(turn.place, back.place)
                    || !self.is_free(back.place, b)
                {
                    continue;
                }
                let off = turn.excess_m / sd_m;
                let cost = math::ln(PI * legs_m[0].max(0.5))
                    + math::ln(PI * legs_m[1].max(0.5))
                    + math::ln(PI * back.distance_m.max(0.5))
                    + math::ln(turn.slope.abs().max(0.3))
                    + 0.5 * off * off;
                self.push(
                    from,
                    &[hit.place, turn.place, back.place],
                    Some((next, 0.03)),
                    cost,
                );
            }
        }
        self.between = places;
    }

    /// Two turns from an unknown heading to a known one.
    pub(super) fn two_turns_back(&mut self, from: &From) {
        let (a, b) = (self.interval.from, self.interval.to);
        let how = self.how;
        let Some(next) = self.interval.next_heading else {
            return;
        };
        let length_m = how.speed_mps * (from.time_s - 2.0 * how.wait_s);
        let Some(back) = self.ahead(b, next * -1.0, length_m) else {
            return;
        };
        let sd_m = how.length_sd_m(length_m, 2.0);
        let mut places = std::mem::take(&mut self.between);
        self.interval
            .near
            .between(a, back.place, length_m - back.distance_m, sd_m, &mut places);
        for turn in &places {
            let (first, middle) = (turn.place - a, back.place - turn.place);
            let (Some(inwards), Some(_)) = (first.unit(), middle.unit()) else {
                continue;
            };
            if !self.is_free(a, turn.place)
                || !self.is_free(turn.place, back.place)
                || !self.is_free(back.place, b)
            {
                continue;
            }
            let per_rad = (first.length() / sine(inwards, &turn.edge) * turn.slope)
                .abs()
                .max(0.3);
            let off = turn.excess_m / sd_m;
            let cost = self.heading_cost(&from.state, inwards, first.length())
                + math::ln(per_rad)
                + math::ln(PI * middle.length().max(0.3))
                + math::ln(PI * back.distance_m.max(0.3))
                + 0.5 * off * off;
            self.push(from, &[turn.place, back.place], Some((next, 0.03)), cost);
        }
        self.between = places;
    }
}
