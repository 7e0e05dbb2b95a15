//! Ways on which the machine may have come from one fix to the next.
//!
//! A machine drives straight up to the line, turns there into any direction inwards, and drives on. The weight of every way
//! is minus the logarithm of the density, per square metre, with which that machine logs the next fix at its place. From a
//! known heading, one turn puts it on a half circle, blurred by the wait: `1 / (pi r)` times a normal density of the length;
//! from an unknown heading the places of the turn lie on an ellipse; two turns integrate over the direction in between. So
//! straight, turned once and turned twice compare on one scale, without hand-set weights; only surprises (a turn away from
//! the line, a chord that nothing explains) carry a stated penalty.

use super::Rebuild;
use super::outline::{Between, Foot, LineEdge, Near};
use std::f64::consts::{PI, TAU};
use tussock_plane::Vector;
use tussock_types::math;

/// Most corners that a way can have.
pub(super) const MOST_CORNERS: usize = 6;
/// Residuals up to this many standard deviations are believed.
pub(super) const BELIEVED_SD: f64 = 4.0;
/// Least standard deviation of a heading: nothing drives straighter.
const LEAST_HEADING_SD_RAD: f64 = 0.004;
/// Headings known this well are followed; others only weigh what the length of the way shows.
const FOLLOWED_SD_RAD: f64 = 0.05;
/// Penalty of following the line instead of turning there.
const FOLLOWS_LINE: f64 = 3.0;
/// Penalty of a turn away from the line.
const TURNS_AWAY: f64 = 4.0;
/// Penalty of a chord that nothing explains.
const UNEXPLAINED: f64 = 5.0;

/// What is known about the machine at a fix.
#[derive(Clone, Copy, Debug)]
pub(super) struct State {
    /// Heading and its standard deviation.
    pub(super) heading: Option<(Vector, f64)>,
    /// Time that the turn under way at the fix still needs.
    pub(super) turning_s: Option<f64>,
    /// Total weight of all ways up to here.
    pub(super) cost: f64,
}

/// A way from one fix to the next.
#[derive(Clone, Copy, Debug)]
pub(super) struct Way {
    corners: [Vector; MOST_CORNERS],
    count: usize,
    /// Whether it turns at the corners rather than just bending with the line.
    pub(super) waits_at_corners: bool,
    /// False if neither the line nor a straight drive leads to the second fix.
    pub(super) is_explained: bool,
    /// Time that the turn at the first fix still needs.
    pub(super) start_wait_s: f64,
    /// Time spent turning at the second fix.
    pub(super) end_wait_s: f64,
    pub(super) to: State,
}

impl Way {
    fn new(corners: &[Vector], to: State) -> Option<Self> {
        let mut all = [Vector::default(); MOST_CORNERS];
        all.get_mut(..corners.len())?.copy_from_slice(corners);
        Some(Self {
            corners: all,
            count: corners.len(),
            waits_at_corners: true,
            is_explained: true,
            start_wait_s: 0.0,
            end_wait_s: 0.0,
            to,
        })
    }

    pub(super) fn corners(&self) -> &[Vector] {
        &self.corners[..self.count]
    }
}

/// Two consecutive fixes, and what is near them.
#[derive(Debug)]
pub(super) struct Interval<'a> {
    pub(super) from: Vector,
    pub(super) to: Vector,
    pub(super) lapse_s: f64,
    pub(super) near: Near<'a>,
    /// Heading from the second fix on, if the next interval shows it.
    pub(super) next_heading: Option<Vector>,
    /// Feet of both fixes on the line, if they are near enough to be on it.
    pub(super) from_foot: Option<Foot>,
    pub(super) to_foot: Option<Foot>,
}

/// Minus the logarithm of the normal density.
pub(super) fn surprise(off: f64, sd: f64) -> f64 {
    let z = off / sd;
    0.5 * z * z + math::ln(sd * TAU.sqrt())
}

/// How far a value lies outside of a range.
pub(super) fn outside(value: f64, low: f64, high: f64) -> f64 {
    (low - value).max(value - high).max(0.0)
}

/// Sine of the angle between a direction and an edge, kept away from zero.
pub(super) fn sine(direction: Vector, edge: &LineEdge) -> f64 {
    direction.cross(edge.along).abs().max(0.05)
}

impl Rebuild {
    /// Error of a fix relative to the turning line.
    pub(super) fn line_sd_m(&self) -> f64 {
        math::hypot(math::hypot(self.white_m, self.outline_m), 0.02)
    }

    /// Error of the length of a way with this many turns.
    pub(super) fn length_sd_m(&self, length_m: f64, turns: f64) -> f64 {
        let wait_m = self.speed_mps * self.wait_sd_s;
        let per_turn_m2 = wait_m * wait_m + 2.0 * self.outline_m * self.outline_m;
        (2.0 * self.white_m * self.white_m
            + turns * per_turn_m2
            + (self.speed_sd_fraction * length_m).powi(2)
            + 0.02 * 0.02)
            .sqrt()
    }

    /// Error of the difference of two fixes, across.
    pub(super) fn across_sd_m(&self) -> f64 {
        (2.0 * self.white_m * self.white_m + 0.01 * 0.01).sqrt()
    }
}

/// Collects the ways of one interval from one state.
pub(super) struct Ways<'a> {
    pub(super) how: &'a Rebuild,
    pub(super) interval: &'a Interval<'a>,
    pub(super) found: Vec<(usize, Way)>,
    pub(super) between: Vec<Between>,
}

impl<'a> Ways<'a> {
    pub(super) fn new(how: &'a Rebuild, interval: &'a Interval<'a>) -> Self {
        Self {
            how,
            interval,
            found: Vec::new(),
            between: Vec::new(),
        }
    }

    /// All ways from a state; `number` is passed along with them.
    pub(super) fn from(&mut self, number: usize, state: &State) {
        let start_s = state.turning_s.unwrap_or(0.0).min(self.interval.lapse_s);
        let one = From {
            number,
            state: *state,
            start_s,
            time_s: self.interval.lapse_s - start_s,
        };
        self.chord(&one);
        self.stand(&one);
        self.straight(&one);
        self.along_line(&one);
        let before = self.found.len();
        match state.heading {
            Some((heading, sd_rad)) => {
                if sd_rad < FOLLOWED_SD_RAD {
                    self.one_turn_ahead(&one, heading, sd_rad);
                }
                if sd_rad >= FOLLOWED_SD_RAD || self.found.len() == before {
                    self.one_turn_anywhere(&one);
                }
                self.turns_ahead(&one, heading);
                self.lanes(&one, heading);
                self.turn_away(&one, heading, sd_rad);
            }
            None => {
                self.one_turn_anywhere(&one);
                self.two_turns_back(&one);
                self.along_lane(&one);
            }
        }
    }

    /// The chord alone.
    pub(super) fn plain(&mut self, number: usize, state: &State) {
        let time_s = self.interval.lapse_s;
        self.chord(&From {
            number,
            state: *state,
            start_s: 0.0,
            time_s,
        });
    }

    pub(super) fn push(
        &mut self,
        from: &From,
        corners: &[Vector],
        heading: Option<(Vector, f64)>,
        cost: f64,
    ) -> Option<&mut Way> {
        if !cost.is_finite() {
            return None;
        }
        let state = State {
            heading: heading.map(|(heading, sd_rad)| (heading, sd_rad.max(LEAST_HEADING_SD_RAD))),
            turning_s: None,
            cost: from.state.cost + cost,
        };
        let mut way = Way::new(corners, state)?;
        way.start_wait_s = from.start_s;
        self.found.push((from.number, way));
        self.found.last_mut().map(|(_, way)| way)
    }

    /// The way ends while the machine turns at the second fix.
    pub(super) fn push_turning(&mut self, from: &From, corners: &[Vector], used_s: f64, cost: f64) {
        let wait_s = self.how.wait_s;
        if let Some(way) = self.push(from, corners, None, cost) {
            let used_s = used_s.clamp(0.0, wait_s);
            way.end_wait_s = used_s;
            way.to.turning_s = Some(wait_s - used_s);
        }
    }

    pub(super) fn is_free(&self, from: Vector, to: Vector) -> bool {
        // Fixes may lie outside by their error; turns lie on the line.
        let is_fix = to == self.interval.to;
        let slack_m = if is_fix { 3.0 * self.how.line_sd_m() } else { 1e-5 };
        self.interval.near.is_free(from, to, slack_m)
    }

    pub(super) fn ahead(&self, from: Vector, heading: Vector, within_m: f64) -> Option<Foot> {
        let behind_m = 3.0 * self.how.line_sd_m();
        self.interval.near.cast(from, heading, within_m, behind_m)
    }

    /// The weight of the direction of the first leg.
    pub(super) fn heading_cost(&self, state: &State, direction: Vector, length_m: f64) -> f64 {
        match state.heading {
            Some((heading, sd_rad)) => {
                let off_rad = heading.angle_to_rad(direction);
                surprise(
                    off_rad,
                    math::hypot(sd_rad, self.how.across_sd_m() / length_m.max(0.1)),
                )
            }
            None if state.turning_s.is_some() => math::ln(PI),
            None => math::ln(TAU),
        }
    }

    fn chord(&mut self, from: &From) {
        let reach_m = (self.how.speed_mps * from.time_s).max(0.5);
        let chord_m = (self.interval.to - self.interval.from).length();
        let sd_m = self.how.length_sd_m(chord_m, 0.0);
        let excess = ((chord_m - reach_m) / sd_m).clamp(0.0, BELIEVED_SD);
        let cost = math::ln(PI * reach_m * reach_m) + UNEXPLAINED + 0.5 * excess * excess;
        if let Some(way) = self.push(from, &[], None, cost) {
            way.is_explained = false;
        }
    }

    /// Still turning.
    fn stand(&mut self, from: &From) {
        let chord_m = (self.interval.to - self.interval.from).length();
        let sd_m = 1.5 * self.how.across_sd_m();
        if chord_m > BELIEVED_SD * sd_m || self.interval.to_foot.is_none() {
            return;
        }
        let turned_s = self.how.wait_s - from.start_s + self.interval.lapse_s;
        let over = outside(turned_s, 0.0, self.how.wait_s) / self.how.wait_sd_s;
        let cost = 2.0 * surprise(chord_m, sd_m) + 0.5 * over * over;
        self.push_turning(from, &[], turned_s, cost);
    }

    fn straight(&mut self, from: &From) {
        let (a, b) = (self.interval.from, self.interval.to);
        let chord_m = (b - a).length();
        let Some(direction) = (b - a).unit() else { return };
        let reach_m = self.how.speed_mps * from.time_s;
        let turns = if from.state.turning_s.is_some() { 1.0 } else { 0.0 };
        let sd_m = self.how.length_sd_m(chord_m, turns);
        let off_m = chord_m - reach_m;
        // Per metre across instead of per radian.
        let across = self.heading_cost(&from.state, direction, chord_m) + math::ln(chord_m);
        let is_straight = off_m.abs() <= BELIEVED_SD * sd_m;
        let wait_m = self.how.speed_mps * self.how.wait_s;
        let foot = self
            .interval
            .to_foot
            .filter(|_| off_m <= BELIEVED_SD * sd_m && off_m >= -wait_m - BELIEVED_SD * sd_m);
        if (!is_straight && foot.is_none()) || !self.is_free(a, b) {
            return;
        }
        if is_straight {
            let sd_rad = self.how.across_sd_m() / chord_m;
            let heading = match from.state.heading {
                // Two measurements of one heading.
                Some((before, before_sd_rad)) => {
                    let share = before_sd_rad.powi(2) / (before_sd_rad.powi(2) + sd_rad * sd_rad);
                    (
                        before.turned(share * before.angle_to_rad(direction)),
                        sd_rad * share.sqrt(),
                    )
                }
                None => (direction, sd_rad),
            };
            self.push(from, &[], Some(heading), across + surprise(off_m, sd_m));
        }
        if let Some(foot) = foot {
            let line_sd_m = self.how.line_sd_m();
            let over = outside(off_m, -wait_m, 0.0) / sd_m;
            let cost = across + surprise(foot.distance_m, line_sd_m) + 0.5 * over * over;
            self.push_turning(from, &[], -off_m / self.how.speed_mps, cost);
        }
    }

    /// If most drives are parallel, an unknown heading is probably one of the two along the lanes.
    fn along_lane(&mut self, from: &From) {
        const LANE_SD_RAD: f64 = 0.02;
        let Some(lane_rad) = self.how.lane_rad else { return };
        let (north, east) = math::sin_cos(lane_rad);
        for heading in [Vector::new(east, north), Vector::new(-east, -north)] {
            let mut from = *from;
            from.state.heading = Some((heading, LANE_SD_RAD));
            from.state.cost += math::ln(2.0_f64);
            self.lanes(&from, heading);
        }
    }

    /// To and fro: the line, a hop to a parallel lane, and back, once or more often.
    fn lanes(&mut self, from: &From, heading: Vector) {
        let (a, b) = (self.interval.from, self.interval.to);
        let how = self.how;
        if how.lane_share_fraction <= 0.0 {
            return;
        }
        let apart = heading.cross(b - a);
        if apart.abs() > 3.0 {
            return;
        }
        let aside = Vector::new(-heading.north, heading.east);
        let reach_m = how.speed_mps * from.time_s;
        for hops in 1..=3_usize {
            let mut corners = [Vector::default(); MOST_CORNERS];
            let mut at = a;
            let mut direction = heading;
            let mut length_m = 0.0;
            let mut is_sound = true;
            for hop in 0..hops {
                let Some(hit) = self.ahead(at, direction, reach_m - length_m) else {
                    is_sound = false;
                    break;
                };
                // The lane that follows, entered at the same line.
                let offset_m = apart * (hop + 1) as f64 / hops as f64;
                let on_lane = a + aside * offset_m + heading * (hit.place - a).dot(heading);
                let inside = on_lane - direction * (0.5 + apart.abs());
                let Some(entry) = self.ahead(inside, direction, 1.5 + 2.0 * apart.abs()) else {
                    is_sound = false;
                    break;
                };
                length_m += hit.distance_m + (entry.place - hit.place).length();
                corners[2 * hop] = hit.place;
                corners[2 * hop + 1] = entry.place;
                at = entry.place;
                direction = direction * -1.0;
            }
            if !is_sound {
                return;
            }
            let last = b - at;
            if last.dot(direction) <= 0.0 || !self.is_free(at, b) {
                continue;
            }
            let length_m = length_m + last.length();
            let turns = 2.0 * hops as f64;
            let sd_m = how.length_sd_m(length_m, turns);
            let off_m = length_m - (reach_m - turns * how.speed_mps * how.wait_s);
            if off_m.abs() > BELIEVED_SD * sd_m {
                continue;
            }
            let sd_rad = from
                .state
                .heading
                .map_or(0.05, |(_, sd_rad)| math::hypot(sd_rad, 0.01));
            let cost = surprise(off_m, sd_m) - hops as f64 * math::ln(how.lane_share_fraction);
            self.push(from, &corners[..2 * hops], Some((direction, sd_rad)), cost);
        }
    }

    /// Along the line, from the first fix or from where the heading meets the line.
    fn along_line(&mut self, from: &From) {
        const MOST_BENDS: usize = MOST_CORNERS - 1;
        let Some(goal) = self.interval.to_foot else { return };
        let a = self.interval.from;
        let how = self.how;
        let reach_m = how.speed_mps * from.time_s;
        let met = from.state.heading.and_then(|(heading, _)| {
            let hit = self.ahead(a, heading, reach_m)?;
            Some((
                hit.distance_m,
                Foot {
                    distance_m: 0.0,
                    ..hit
                },
                FOLLOWS_LINE + 1.0,
            ))
        });
        let on_it = self.interval.from_foot.map(|foot| (0.0, foot, FOLLOWS_LINE));
        for (before_m, start, penalty) in [on_it, met].into_iter().flatten() {
            let Some((bends, along_m)) = self.interval.near.along(&start, &goal, MOST_BENDS) else {
                continue;
            };
            let length_m = before_m + along_m;
            let sd_m = how.length_sd_m(length_m, 0.0);
            let off_m = length_m - reach_m;
            if off_m.abs() > BELIEVED_SD * sd_m {
                continue;
            }
            let cost = surprise(off_m, sd_m) + surprise(goal.distance_m, how.line_sd_m()) + penalty;
            let mut corners = Vec::with_capacity(MOST_CORNERS);
            if before_m > 0.0 {
                corners.push(start.place);
            }
            corners.extend(bends);
            let last = corners.last().copied().unwrap_or(a);
            let heading = (goal.place - last).unit().map(|heading| (heading, 0.02));
            if let Some(way) = self.push(from, &corners, heading, cost) {
                way.waits_at_corners = false;
            }
        }
    }

    /// A turn before the line: something stood there that is not in the plan.
    fn turn_away(&mut self, from: &From, heading: Vector, sd_rad: f64) {
        let (a, b) = (self.interval.from, self.interval.to);
        let how = self.how;
        let reach_m = how.speed_mps * from.time_s;
        let length_m = reach_m - how.speed_mps * how.wait_s;
        let chord = b - a;
        let room_m = length_m - chord.dot(heading);
        if length_m <= chord.length() || room_m < 0.1 {
            return;
        }
        let first_m = (length_m * length_m - chord.dot(chord)) / (2.0 * room_m);
        if self
            .ahead(a, heading, first_m)
            .is_some_and(|hit| hit.distance_m < first_m - 3.0 * how.line_sd_m())
        {
            return;
        }
        let turn = a + heading * first_m;
        let Some(out) = (b - turn).unit().filter(|_| self.is_free(turn, b)) else {
            return;
        };
        let second_m = (b - turn).length();
        let place_sd_m = math::hypot(how.length_sd_m(length_m, 1.0), sd_rad * first_m);
        let cost = math::ln(PI * second_m.max(0.2)) + math::ln(reach_m) + TURNS_AWAY;
        let heading = Some((out, place_sd_m / second_m.max(0.1)));
        if let Some(way) = self.push(from, &[turn], heading, cost) {
            way.is_explained = false;
        }
    }
}

/// The state from which a way starts, and the time that it has.
#[derive(Clone, Copy, Debug)]
pub(super) struct From {
    pub(super) number: usize,
    pub(super) state: State,
    pub(super) start_s: f64,
    pub(super) time_s: f64,
}
