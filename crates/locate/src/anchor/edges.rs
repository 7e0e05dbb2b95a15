//! At which edge did the machine turn?

use tussock_plane::{Edge, Vector};
use tussock_types::Place;
use tussock_types::math;

/// A turn: where it seems to be on the drawn plan, how sure that is, and the directions in and out.
#[derive(Clone, Copy, Debug)]
pub struct UnsureTurn {
    /// Expected place on the plan.
    pub place: Place,
    /// Its covariance: east-east, east-north, north-north.
    pub spread_m2: [f64; 3],
    /// Direction of the leg that ends here.
    pub into: Vector,
    /// Direction of the leg that begins here.
    pub onward: Vector,
}

/// An edge that a turn may have been made at.
#[derive(Clone, Copy, Debug)]
pub struct Match {
    /// Index of the edge.
    pub edge: usize,
    /// Trust in it, 0 to 1.
    pub weight: f64,
}

/// A distance from the turning line that counts as none, standard deviation.
pub const EDGE_SD_M: f64 = 0.05;
/// The machine drives at an edge at least this steeply.
const LEAST_INTO: f64 = 0.03;
/// And it leaves the edge.
const MOST_ONWARD: f64 = 0.15;
/// Fraction of turns that are made for other reasons, spread over this width.
const STRAY_FRACTION: f64 = 0.3;
const STRAY_WIDTH_M: f64 = 8.0;
/// Edges that cost more are ignored: four standard deviations.
const MOST_COST: f64 = 16.0;
/// Less trust counts as none.
const LEAST_WEIGHT: f64 = 0.25;

/// Finds the edge for a turn.
///
/// Only edges that the machine drove at and then left are considered. Cost of an edge: distance in standard deviations,
/// across and past its ends. The best one is trusted according to how much likelier it is than a turn anywhere, and than the
/// best edge of another direction.
pub fn find(edges: &[Edge], turn: &UnsureTurn, inset_m: f64, inset_sd_m: f64, loose_m: f64) -> Option<Match> {
    let [ee, en, nn] = turn.spread_m2;
    let along_spread = |unit: Vector| {
        ee * unit.east * unit.east + 2.0 * en * unit.east * unit.north + nn * unit.north * unit.north
    };
    let base_m2 = EDGE_SD_M * EDGE_SD_M + inset_sd_m * inset_sd_m + loose_m * loose_m;
    let mut best: Option<(f64, f64, f64, usize)> = None;
    let mut costs: Vec<(f64, usize)> = Vec::with_capacity(8);
    for (index, edge) in edges.iter().enumerate() {
        let out = -edge.inwards();
        if turn.into.dot(out) <= LEAST_INTO || turn.onward.dot(out) >= MOST_ONWARD {
            continue;
        }
        let off_m = inset_m - edge.inside_m(turn.place);
        let variance_m2 = along_spread(out) + base_m2;
        let across = off_m * off_m / variance_m2;
        if across > MOST_COST {
            continue;
        }
        let past_m = edge.past_m(turn.place);
        let cost = across + past_m * past_m / (along_spread(edge.along) + 0.01 + loose_m * loose_m);
        costs.push((cost, index));
        if best.is_none_or(|(least, ..)| cost < least) {
            best = Some((cost, off_m, variance_m2, index));
        }
    }
    let (cost, off_m, variance_m2, index) = best?;
    if cost > MOST_COST {
        return None;
    }
    let near = math::exp(-0.5 * off_m * off_m / variance_m2) / (std::f64::consts::TAU * variance_m2).sqrt();
    let mut weight =
        (1.0 - STRAY_FRACTION) * near / ((1.0 - STRAY_FRACTION) * near + STRAY_FRACTION / STRAY_WIDTH_M);
    let rival = costs
        .iter()
        .filter(|(_, other)| edges[*other].along.dot(edges[index].along) < 0.9)
        .map(|(cost, _)| *cost)
        .fold(f64::INFINITY, f64::min);
    if rival.is_finite() {
        weight /= 1.0 + math::exp(-(rival - cost) / 2.0);
    }
    (weight >= LEAST_WEIGHT).then_some(Match { edge: index, weight })
}
