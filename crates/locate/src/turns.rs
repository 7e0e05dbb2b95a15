//! Where and how did the machine turn?
//!
//! Question: at which places did the machine change its heading, which edge turned it there, and how far inside its edges
//! does it usually turn (the setback)?
//!
//! Method. A turn is a corner between two drives. Backing off belongs to the turn: the corner at its far end is not a second
//! turn, and the way onwards is the drive after it. A long stand is a stop, a corner next to the station is manoeuvring, and
//! a corner on the way along a guide run or the boundary is steering. The edge that turned the machine is the nearest one
//! that the drive before led to and the drive after leads away from; near a second edge of another direction it is unknown
//! which it was. The setback is the median of the turns around the densest place.
//!
//! Exact, given the path. Position error blurs angles: only legs longer than five position errors show a heading. Cost:
//! turns times edges.

use crate::plan_fit::{self, EdgeTurn, TurnError, TurnsFit};
use crate::{PathMethod, Track, noise};
use tussock_plane::{Edge, Region, Vector};
use tussock_types::{MachineSettings, Place};

/// Smaller changes of heading are bends (cosine of 20 degrees).
const LEAST_TURN_COS: f64 = 0.94;
/// A machine backs off no farther than this (common practice, no source).
const MOST_REVERSE_M: f64 = 1.5;
/// From lane to lane the machine moves sideways by less than this (common practice, no source).
const MOST_ASIDE_M: f64 = 0.7;
/// Straight back, nearly (cosine of 26 degrees).
const STRAIGHT_BACK: f64 = 0.9;
/// Longer stands are stops.
const LONGEST_TURN_S: f64 = 30.0;
/// Within this distance of the station the machine manoeuvres.
const APRON_M: f64 = 2.0;
/// Shorter legs say little about a heading.
const LEAST_HEADING_M: f64 = 1.0;
/// And legs must be longer than this many position errors.
const LEGS_OVER_ERROR: f64 = 5.0;
/// A more distant edge did not turn the machine.
const MOST_SETBACK_M: f64 = 1.5;
/// A second edge closer than this makes a corner.
const CORNER_M: f64 = 0.6;
/// Edges that differ by less are one bend of a round object (cosine of 30 degrees).
const SAME_EDGE: f64 = 0.866;
/// Legs that graze an edge do not show whether they lead to it (sine of about 6 degrees).
const GRAZING: f64 = 0.1;
/// Turns within this of the usual distance were made at that edge.
const AT_EDGE_M: f64 = 0.25;
/// Fewer turns do not show the setback.
const LEAST_TURNS: usize = 12;
/// How far inside its edge a machine turns if nothing is known: half a body or less (common practice, no source).
const USUAL_SETBACK_M: f64 = 0.15;

/// A corner between two drives.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Turn {
    /// Where.
    pub place: Place,
    /// When it began, seconds since 1970.
    pub time_s: f64,
    /// Heading before, a unit vector.
    pub into: Vector,
    /// Length of the drive before.
    pub into_m: f64,
    /// Heading after, without backing off.
    pub onward: Vector,
    /// Length of the drive after.
    pub onward_m: f64,
    /// Distance to the nearest edge of the ground; negative outside.
    pub edge_m: f64,
    /// The edge that turned it, if one did and the legs are long enough to show it.
    pub at: Option<AtEdge>,
}

/// A turn at a known edge.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct AtEdge {
    /// How far inside the edge's line.
    pub inside_m: f64,
    /// Unit normal of the edge, into the ground.
    pub inwards: Vector,
}

impl Turn {
    /// Whether both legs are long enough to show their headings under this position error.
    pub fn tells_headings(&self, error_m: f64) -> bool {
        self.into_m.min(self.onward_m) >= LEAST_HEADING_M + LEGS_OVER_ERROR * error_m
    }
}

/// Turns of a track on the ground that it may drive on; `transits` are times along guide runs and edges.
pub fn turns(track: &Track, ground: &Region, transits: &[(f64, f64)]) -> Vec<Turn> {
    turns_within(track, ground, transits, track.position_error_m())
}

/// The same, assuming this position error.
fn turns_within(track: &Track, ground: &Region, transits: &[(f64, f64)], error_m: f64) -> Vec<Turn> {
    let least_m = 0.3 + 2.0 * error_m;
    let edges = Edge::all_of(ground);
    let mut turns = Vec::new();
    let mut transits = transits.iter().peekable();
    for piece in &track.pieces {
        let drive = |number: usize| -> Option<(Vector, f64)> {
            let (from, to) = (piece.vertices.get(number)?, piece.vertices.get(number + 1)?);
            let way = Vector::between(from.place, to.place);
            way.unit().map(|unit| (unit, way.length()))
        };
        for (number, here) in piece.vertices.iter().enumerate().skip(1) {
            while transits.next_if(|transit| transit.1 < here.arrive_s).is_some() {}
            let is_steering = transits.peek().is_some_and(|transit| transit.0 <= here.arrive_s);
            let is_home = (track.station).is_some_and(|station| station.distance_m(here.place) < APRON_M);
            let (Some((into, into_m)), Some((mut onward, mut onward_m))) = (drive(number - 1), drive(number))
            else {
                continue;
            };
            let before = number.checked_sub(2).and_then(drive);
            let has_backed_off = into_m <= MOST_REVERSE_M
                && before.is_some_and(|(came, came_m)| came.dot(into) < -STRAIGHT_BACK && came_m > into_m);
            if is_steering
                || is_home
                || has_backed_off
                || into_m < least_m
                || onward_m < 0.1
                || into.dot(onward) > LEAST_TURN_COS
                || here.leave_s - here.arrive_s > LONGEST_TURN_S
            {
                continue;
            }
            if onward_m <= MOST_REVERSE_M
                && into.dot(onward) < -STRAIGHT_BACK
                && let Some(after) = drive(number + 1)
            {
                (onward, onward_m) = after;
            }
            let distance_m = ground.edge_distance_m(here.place);
            let mut turn = Turn {
                place: here.place,
                time_s: here.arrive_s,
                into,
                into_m,
                onward,
                onward_m,
                edge_m: if ground.contains(here.place) {
                    distance_m
                } else {
                    -distance_m
                },
                at: None,
            };
            if turn.tells_headings(error_m) {
                turn.at = at_edge(&turn, &edges);
            }
            turns.push(turn);
        }
    }
    turns
}

/// How the ground of a plan lies in logs whose path was found without it; `None` if there are no such logs, or too few turns
/// in them.
pub fn plan_fit(tracks: &[Track], ground: &Region, expected: &Setback) -> Option<TurnsFit> {
    let by_legs: Vec<&Track> = tracks
        .iter()
        .filter(|track| track.method == PathMethod::Legs)
        .collect();
    let turns: Vec<EdgeTurn> = by_legs
        .iter()
        .flat_map(|track| sharp_turns(track, ground))
        .collect();
    let errors = by_legs.iter().map(|track| shown_error(track));
    let error = errors.max_by(|a, b| a.total_m().total_cmp(&b.total_m()))?;
    let (edges, inset_m) = (Edge::all_of(ground), (expected.inside_m, expected.sd_m));
    let found = plan_fit::fit(&turns, &edges, inset_m, error)?;
    if found.is_another_garden() {
        let halves = turns.chunks(turns.len().div_ceil(2));
        let explained = |half: &[EdgeTurn]| {
            plan_fit::fit(half, &edges, inset_m, error).map_or(0.0, |fit| fit.explained_fraction)
        };
        if halves
            .into_iter()
            .any(|half| explained(half) > plan_fit::HALF_EXPLAINED)
        {
            return None;
        }
    }
    Some(found)
}

/// The same for a stretch of one log.
pub(crate) fn plan_fit_of_stretch(
    track: &Track,
    within_s: &std::ops::Range<f64>,
    ground: &Region,
    expected: &Setback,
) -> Option<TurnsFit> {
    let mut turns = sharp_turns(track, ground);
    turns.retain(|turn| within_s.contains(&turn.time_s));
    let inset_m = (expected.inside_m, expected.sd_m);
    plan_fit::fit(&turns, &Edge::all_of(ground), inset_m, shown_error(track))
}

/// Position error of turns as far as the log of a track shows it: a drift that nothing shows moves the plan as a whole.
fn shown_error(track: &Track) -> TurnError {
    TurnError {
        each_m: track.noise.white_m,
        shared_m: track.noise.drift_m.unwrap_or(0.0),
        shared_s: track.noise.drift_time_s.unwrap_or(noise::USUAL_DRIFT_TIME_S),
    }
}

/// Turns that an edge may have caused.
fn sharp_turns(track: &Track, ground: &Region) -> Vec<EdgeTurn> {
    let error_m = shown_error(track).total_m();
    let turns = turns_within(track, ground, &[], error_m).into_iter();
    let telling = turns
        .filter(|turn| turn.tells_headings(error_m))
        .map(|turn| EdgeTurn {
            place: turn.place,
            time_s: turn.time_s,
            into: turn.into,
            onward: turn.onward,
        });
    let mut found: Vec<EdgeTurn> = telling.filter(EdgeTurn::is_sharp).collect();
    found.extend(lane_ends(track, LEAST_HEADING_M + LEGS_OVER_ERROR * error_m));
    found.sort_by(|a, b| a.time_s.total_cmp(&b.time_s));
    found
}

/// Where lanes end: a drive of at least `least_m`, a short move sideways, and a drive back.
fn lane_ends(track: &Track, least_m: f64) -> impl Iterator<Item = EdgeTurn> + '_ {
    let corners = track.pieces.iter().flat_map(|piece| piece.vertices.windows(4));
    corners.filter_map(move |corners| {
        let way = |at: usize| Vector::between(corners[at].place, corners[at + 1].place);
        let (into, aside, back) = (way(0), way(1), way(2));
        let is_end = into.length().min(back.length()) >= least_m && aside.length() <= MOST_ASIDE_M;
        let (into, onward) = (into.unit()?, back.unit()?);
        (is_end && into.dot(onward) < -STRAIGHT_BACK).then_some(EdgeTurn {
            place: corners[1].place,
            time_s: corners[1].arrive_s,
            into,
            onward,
        })
    })
}

/// The edge at which a turn was made; `None` if there is none, and in corners.
fn at_edge(turn: &Turn, edges: &[Edge]) -> Option<AtEdge> {
    let near: Vec<(f64, &Edge)> = edges
        .iter()
        .map(|edge| (edge.distance_m(turn.place), edge))
        .filter(|(off_m, _)| *off_m <= MOST_SETBACK_M + CORNER_M)
        .collect();
    let (off_m, edge) = near
        .iter()
        .filter(|(_, edge)| {
            turn.into.dot(edge.inwards()) < -GRAZING && turn.onward.dot(edge.inwards()) > GRAZING
        })
        .min_by(|a, b| a.0.total_cmp(&b.0))?;
    let is_corner = near.iter().any(|(other_m, other)| {
        other.inwards().dot(edge.inwards()) < SAME_EDGE && *other_m <= off_m + CORNER_M
    });
    let inside_m = edge.inside_m(turn.place);
    (edge.is_beside(turn.place) && !is_corner && inside_m.abs() <= MOST_SETBACK_M).then(|| AtEdge {
        inside_m,
        inwards: edge.inwards(),
    })
}

/// How far inside its edges the machine turns.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Setback {
    /// Distance of its middle from the edge; negative outside.
    pub inside_m: f64,
    /// Standard deviation of that.
    pub sd_m: f64,
    /// How it is known.
    pub source: SetbackSource,
}

/// How a setback is known.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum SetbackSource {
    /// The settings state it.
    Stated,
    /// The log shows it.
    Measured,
    /// The usual value for such machines.
    Usual,
}

impl Setback {
    /// What is known about a setback before looking at the log.
    pub fn expected(machine: &MachineSettings) -> Self {
        let (inside_m, sd_m, source) = match (machine.past_boundary_m, machine.body_width_m) {
            (Some(past_m), _) => (-past_m, 0.05, SetbackSource::Stated),
            (None, Some(body_m)) => (0.5 * body_m, 0.15, SetbackSource::Usual),
            (None, None) => (USUAL_SETBACK_M, 0.15, SetbackSource::Usual),
        };
        Self {
            inside_m,
            sd_m,
            source,
        }
    }

    /// The setback of a track: what was found together with the path if edges held it, or else what the turns show; `None`
    /// if there are too few to show anything.
    pub fn measured(track: &Track, turns: &[Turn]) -> Option<Self> {
        let error_m = track.position_error_m();
        let (inside_m, sd_m) = match &track.anchored {
            Some(anchored) => (anchored.inset_m, 0.3 * error_m),
            None => Self::gathered(turns, error_m)?,
        };
        Some(Self {
            inside_m,
            sd_m,
            source: SetbackSource::Measured,
        })
    }

    /// How far inside their edges most of these turns lie, and its standard deviation; `None` for too few.
    pub fn gathered(turns: &[Turn], error_m: f64) -> Option<(f64, f64)> {
        densest(turns, error_m)
    }

    /// Whether a turn was made at its edge, at the usual distance.
    pub fn holds(&self, at: &AtEdge, error_m: f64) -> bool {
        (at.inside_m - self.inside_m).abs() <= AT_EDGE_M + 3.0 * error_m
    }
}

/// Median of the turns around the densest place, and its standard deviation.
fn densest(turns: &[Turn], error_m: f64) -> Option<(f64, f64)> {
    let mut inside_m: Vec<f64> = turns
        .iter()
        .filter_map(|turn| turn.at)
        .map(|at| at.inside_m)
        .collect();
    if inside_m.len() < LEAST_TURNS {
        return None;
    }
    inside_m.sort_by(f64::total_cmp);
    let reach_m = AT_EDGE_M + 3.0 * error_m;
    // The window that holds most values.
    let (mut first, mut best) = (0, 0..0);
    for end in 0..inside_m.len() {
        while inside_m[end] - inside_m[first] > reach_m {
            first += 1;
        }
        if end + 1 - first > best.len() {
            best = first..end + 1;
        }
    }
    let middle_m = inside_m[best.start + best.len() / 2];
    // Once more, centred on it.
    let about: Vec<f64> = inside_m
        .into_iter()
        .filter(|one_m| (one_m - middle_m).abs() <= 0.5 * reach_m)
        .collect();
    let median_m = about.get(about.len() / 2).copied()?;
    let count = about.len() as f64;
    let spread_m = (about.iter().map(|one_m| (one_m - median_m).powi(2)).sum::<f64>() / count).sqrt();
    Some((median_m, 1.25 * spread_m / count.sqrt()))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn turn(inside_m: f64) -> Turn {
        let inwards = Vector::new(0.0, 1.0);
        Turn {
            place: Place::new(5.0, inside_m),
            time_s: 0.0,
            into: Vector::new(0.6, -0.8),
            into_m: 4.0,
            onward: Vector::new(0.6, 0.8),
            onward_m: 4.0,
            edge_m: inside_m,
            at: Some(AtEdge { inside_m, inwards }),
        }
    }

    #[test]
    fn the_setback_is_where_most_turns_agree() {
        let mut turns: Vec<Turn> = (0..60).map(|n| turn(0.2 + 0.002 * f64::from(n % 5))).collect();
        turns.extend((0..15).map(|n| turn(0.3 + 0.05 * f64::from(n))));
        let (inside_m, sd_m) = densest(&turns, 0.0).unwrap();
        assert!(
            (inside_m - 0.204).abs() < 0.02 && sd_m < 0.02,
            "{inside_m} {sd_m}"
        );
        assert_eq!(densest(&turns[..5], 0.0), None);
    }

    #[test]
    fn a_turn_belongs_to_the_edge_that_it_was_driven_at_and_to_none_in_a_corner() {
        let corner = |east: f64, north: f64| Vector::new(east, north);
        let square = [
            corner(0.0, 0.0),
            corner(10.0, 0.0),
            corner(10.0, 10.0),
            corner(0.0, 10.0),
            corner(0.0, 0.0),
        ];
        let edges: Vec<Edge> = square
            .windows(2)
            .filter_map(|pair| Edge::between(pair[0], pair[1]))
            .collect();
        let at = at_edge(&turn(0.2), &edges).unwrap();
        assert!((at.inside_m - 0.2).abs() < 1e-12 && at.inwards == Vector::new(0.0, 1.0));
        let in_corner = Turn {
            place: Place::new(9.7, 0.2),
            ..turn(0.2)
        };
        assert_eq!(at_edge(&in_corner, &edges), None);
        let in_the_middle = Turn {
            place: Place::new(5.0, 5.0),
            ..turn(5.0)
        };
        assert_eq!(at_edge(&in_the_middle, &edges), None);
    }
}
