//! Where and how it turned at an edge.
//!
//! A turn is a corner between two long legs of which the first leads to an edge and the second away from it. Short drives
//! straight back between the two are backing off and belong to the turn. Turns near a second edge of another direction are
//! corners of the lawn: which edge turned the machine is not known there, and they are left out.

use tussock_locate::{Track, Vertex};
use tussock_plane::Region;
use tussock_simulate::TurnPair;
use tussock_types::Place;
use tussock_types::math;

/// Legs shorter than this say little of a heading.
const LEAST_LEG_M: f64 = 1.0;
/// And they are longer than so many position errors.
const LEGS_OVER_ERROR: f64 = 5.0;
/// An edge farther off than this did not turn the machine.
const MOST_SETBACK_M: f64 = 1.5;
/// A second edge nearer than this makes a corner.
const CORNER_M: f64 = 0.6;
/// Edges that differ by less are one bend of a round body (cosine of 30 degrees).
const SAME_EDGE: f64 = 0.866;
/// Legs that graze an edge do not tell whether they lead to it (sine of about 6 degrees).
const GRAZING: f64 = 0.1;
/// A machine backs off no farther than this.
const MOST_REVERSE_M: f64 = 1.5;
/// Turns within this of the usual distance were made at that edge.
const AT_EDGE_M: f64 = 0.25;

/// An edge of the ground on which the machine's middle would be without a setback; ground on the left.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Edge {
    from: [f64; 2],
    along: [f64; 2],
    length_m: f64,
}

impl Edge {
    pub(crate) fn all_of(ground: &Region) -> Vec<Self> {
        ground
            .edges()
            .filter_map(|(from, to)| {
                let length_m = from.distance_m(to);
                (length_m > 1e-9).then(|| Self {
                    from: [from.east_m, from.north_m],
                    along: [
                        (to.east_m - from.east_m) / length_m,
                        (to.north_m - from.north_m) / length_m,
                    ],
                    length_m,
                })
            })
            .collect()
    }

    /// Unit normal into the ground.
    pub(crate) const fn inwards(&self) -> [f64; 2] {
        [-self.along[1], self.along[0]]
    }

    /// Distance from the edge's nearest place, and how far inside its line, where the foot lies on the edge.
    pub(crate) fn at(&self, place: Place) -> (f64, Option<f64>) {
        let gap = [place.east_m - self.from[0], place.north_m - self.from[1]];
        let along_m = gap[0] * self.along[0] + gap[1] * self.along[1];
        let inside_m = self.along[0] * gap[1] - self.along[1] * gap[0];
        let over_m = (-along_m).max(along_m - self.length_m).max(0.0);
        (math::hypot(over_m, inside_m), (over_m == 0.0).then_some(inside_m))
    }
}

/// One turn at an edge.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Turn {
    /// How far inside the edge.
    pub(crate) inside_m: f64,
    /// Angles from the inward normal.
    pub(crate) pair: TurnPair,
}

/// Unit vector of a drive and its length.
pub(crate) fn way(from: Place, to: Place) -> Option<([f64; 2], f64)> {
    let step = [to.east_m - from.east_m, to.north_m - from.north_m];
    let length_m = math::hypot(step[0], step[1]);
    (length_m > 1e-6).then(|| ([step[0] / length_m, step[1] / length_m], length_m))
}

fn dot(a: [f64; 2], b: [f64; 2]) -> f64 {
    a[0] * b[0] + a[1] * b[1]
}

fn cross(a: [f64; 2], b: [f64; 2]) -> f64 {
    a[0] * b[1] - a[1] * b[0]
}

/// Turns of a track for which `counts` holds at their time.
pub(crate) fn turns(track: &Track, edges: &[Edge], sd_m: f64, counts: impl Fn(f64) -> bool) -> Vec<Turn> {
    let least_m = LEAST_LEG_M + LEGS_OVER_ERROR * sd_m;
    let mut turns = Vec::new();
    for piece in &track.pieces {
        for (number, corner) in piece.vertices.iter().enumerate() {
            if number == 0 || !counts(corner.arrive_s) {
                continue;
            }
            let Some((came, came_m)) = way(piece.vertices[number - 1].place, corner.place) else {
                continue;
            };
            let Some((goes, goes_m)) = onwards(&piece.vertices, number, came) else {
                continue;
            };
            if came_m < least_m || goes_m < least_m {
                continue;
            }
            turns.extend(turn(corner.place, came, goes, edges));
        }
    }
    turns
}

/// The way after a corner; over a short drive straight back.
fn onwards(vertices: &[Vertex], number: usize, came: [f64; 2]) -> Option<([f64; 2], f64)> {
    let next = vertices.get(number + 1)?;
    let (goes, goes_m) = way(vertices[number].place, next.place)?;
    if goes_m <= MOST_REVERSE_M
        && dot(came, goes) < -0.9
        && let Some(after) = vertices.get(number + 2)
    {
        return way(next.place, after.place);
    }
    Some((goes, goes_m))
}

fn turn(place: Place, came: [f64; 2], goes: [f64; 2], edges: &[Edge]) -> Option<Turn> {
    let near: Vec<(f64, Option<f64>, &Edge)> = edges
        .iter()
        .map(|edge| (edge.at(place), edge))
        .filter(|((off_m, _), _)| *off_m <= MOST_SETBACK_M + CORNER_M)
        .map(|((off_m, inside_m), edge)| (off_m, inside_m, edge))
        .collect();
    let (off_m, inside_m, edge) = near
        .iter()
        .filter(|(_, _, edge)| dot(came, edge.inwards()) < -GRAZING && dot(goes, edge.inwards()) > GRAZING)
        .min_by(|a, b| a.0.total_cmp(&b.0))?;
    let is_corner = near.iter().any(|(other_m, _, other)| {
        dot(other.inwards(), edge.inwards()) < SAME_EDGE && *other_m <= off_m + CORNER_M
    });
    let inside_m = (*inside_m)?;
    if is_corner || inside_m.abs() > MOST_SETBACK_M {
        return None;
    }
    let inwards = edge.inwards();
    let mirror = [
        came[0] - 2.0 * inwards[0] * dot(came, inwards),
        came[1] - 2.0 * inwards[1] * dot(came, inwards),
    ];
    let angle_rad = |heading: [f64; 2]| math::atan2(cross(inwards, heading), dot(inwards, heading));
    Some(Turn {
        inside_m,
        pair: TurnPair {
            mirror_rad: angle_rad(mirror),
            out_rad: angle_rad(goes),
        },
    })
}

/// Usual distance inside the edge at which it turns and its standard deviation: median of the densest place, then of the turns
/// about it.
pub(crate) fn setback_m(turns: &[Turn], sd_m: f64) -> Option<(f64, f64)> {
    let mut inside_m: Vec<f64> = turns.iter().map(|turn| turn.inside_m).collect();
    inside_m.sort_by(f64::total_cmp);
    let reach_m = AT_EDGE_M + 3.0 * sd_m;
    // The window that holds most.
    let (mut first, mut best) = (0, (0, 0));
    for end in 0..inside_m.len() {
        while inside_m[end] - inside_m[first] > reach_m {
            first += 1;
        }
        if end + 1 - first > best.1 - best.0 {
            best = (first, end + 1);
        }
    }
    let held = inside_m.get(best.0..best.1).filter(|held| !held.is_empty())?;
    let middle_m = held[held.len() / 2];
    // Once more, evenly about it.
    let about: Vec<f64> = inside_m
        .iter()
        .copied()
        .filter(|one_m| (one_m - middle_m).abs() <= 0.5 * reach_m)
        .collect();
    let median_m = about.get(about.len() / 2).copied()?;
    let count = about.len() as f64;
    let spread_m = (about.iter().map(|one_m| (one_m - median_m).powi(2)).sum::<f64>() / count).sqrt();
    Some((median_m, 1.25 * spread_m / count.sqrt()))
}

/// Pairs of the turns that were made at the usual distance.
pub(crate) fn pairs(turns: &[Turn], setback_m: f64, sd_m: f64) -> Vec<TurnPair> {
    turns
        .iter()
        .filter(|turn| (turn.inside_m - setback_m).abs() <= AT_EDGE_M + 3.0 * sd_m)
        .map(|turn| turn.pair)
        .collect()
}
