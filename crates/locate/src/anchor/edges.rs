//! Which edge was it that the machine turned at?

use tussock_plane::Region;
use tussock_types::Place;
use tussock_types::math;

/// A straight piece of the line at which the machine turns.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Edge {
    /// One end.
    pub from_m: [f64; 2],
    /// Unit vector to the other.
    pub along: [f64; 2],
    /// Its length.
    pub length_m: f64,
    /// Unit vector that points off the lawn.
    pub out: [f64; 2],
    /// Distance of the edge from the origin along `out`.
    pub reach_m: f64,
}

impl Edge {
    /// Distance of a place from the line through this edge, positive on the lawn's side.
    pub fn inside_m(&self, place: Place) -> f64 {
        self.reach_m - self.out[0] * place.east_m - self.out[1] * place.north_m
    }

    /// Whether the place lies between the two ends.
    pub fn is_beside(&self, place: Place) -> bool {
        let run_m = self.along[0] * (place.east_m - self.from_m[0])
            + self.along[1] * (place.north_m - self.from_m[1]);
        (0.0..=self.length_m).contains(&run_m)
    }

    /// Moves a place away from the edge, onto the lawn.
    pub fn push_in(&self, place: &mut Place, by_m: f64) {
        place.east_m -= by_m * self.out[0];
        place.north_m -= by_m * self.out[1];
    }
}

/// All edges of a region.
pub fn edges(region: &Region) -> Vec<Edge> {
    region
        .edges()
        .filter_map(|(from, to)| {
            let length_m = from.distance_m(to);
            if length_m < 1e-6 {
                return None;
            }
            let along = [
                (to.east_m - from.east_m) / length_m,
                (to.north_m - from.north_m) / length_m,
            ];
            let out = [along[1], -along[0]];
            Some(Edge {
                from_m: [from.east_m, from.north_m],
                along,
                length_m,
                out,
                reach_m: out[0] * from.east_m + out[1] * from.north_m,
            })
        })
        .collect()
}

/// A turn: where it seems to be on the drawn plan, how sure that is, and the way in and out.
#[derive(Clone, Copy, Debug)]
pub struct Turn {
    /// Expected place on the plan.
    pub place: Place,
    /// Its covariance: east-east, east-north, north-north.
    pub spread_m2: [f64; 3],
    /// Direction of the leg that ends here.
    pub into: [f64; 2],
    /// Direction of the leg that begins here.
    pub onward: [f64; 2],
}

/// An edge that a turn may have been made at.
#[derive(Clone, Copy, Debug)]
pub struct Match {
    /// Index of the edge.
    pub edge: usize,
    /// Trust in it, 0 to 1.
    pub weight: f64,
}

/// Distance of the turning line that counts as nothing, standard deviation.
pub const EDGE_SD_M: f64 = 0.05;
/// The machine drives at an edge at least so steeply.
const LEAST_INTO: f64 = 0.03;
/// And leaves it.
const MOST_ONWARD: f64 = 0.15;
/// Part of turns that are made for other reasons, spread over this width.
const STRAY_FRACTION: f64 = 0.3;
const STRAY_WIDTH_M: f64 = 8.0;
/// Dearer edges are not looked at: four standard deviations.
const MOST_COST: f64 = 16.0;
/// Less trust than this is none.
const LEAST_WEIGHT: f64 = 0.25;

fn dot(a: [f64; 2], b: [f64; 2]) -> f64 {
    a[0] * b[0] + a[1] * b[1]
}

/// Finds the edge for a turn.
///
/// Only edges that it drove at and then left come into question. Cost of an edge: distance in standard deviations across
/// and past its ends. The best one is trusted by how much likelier it is than a turn anywhere, and than the best edge of
/// another direction.
pub fn find(edges: &[Edge], turn: &Turn, inset_m: f64, inset_sd_m: f64, loose_m: f64) -> Option<Match> {
    let [ee, en, nn] = turn.spread_m2;
    let along_spread =
        |unit: [f64; 2]| ee * unit[0] * unit[0] + 2.0 * en * unit[0] * unit[1] + nn * unit[1] * unit[1];
    let at = [turn.place.east_m, turn.place.north_m];
    let base_m2 = EDGE_SD_M * EDGE_SD_M + inset_sd_m * inset_sd_m + loose_m * loose_m;
    let mut best: Option<(f64, f64, f64, usize)> = None;
    let mut costs: Vec<(f64, usize)> = Vec::with_capacity(8);
    for (index, edge) in edges.iter().enumerate() {
        if dot(turn.into, edge.out) <= LEAST_INTO || dot(turn.onward, edge.out) >= MOST_ONWARD {
            continue;
        }
        let off_m = dot(edge.out, at) - edge.reach_m + inset_m;
        let variance_m2 = along_spread(edge.out) + base_m2;
        let across = off_m * off_m / variance_m2;
        if across > MOST_COST {
            continue;
        }
        let run_m = dot(edge.along, [at[0] - edge.from_m[0], at[1] - edge.from_m[1]]);
        let past_m = (-run_m).max(run_m - edge.length_m).max(0.0);
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
        .filter(|(_, other)| dot(edges[*other].out, edges[index].out) < 0.9)
        .map(|(cost, _)| *cost)
        .fold(f64::INFINITY, f64::min);
    if rival.is_finite() {
        weight /= 1.0 + math::exp(-(rival - cost) / 2.0);
    }
    (weight >= LEAST_WEIGHT).then_some(Match { edge: index, weight })
}
