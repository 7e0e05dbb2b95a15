//! Where are positions always bent in the same direction?
//!
//! Question: beside walls and under trees a receiver may be off by decimetres or metres, always by the same amount at the
//! same place; that is neither noise nor drift. Where, and by how much? A machine drives straight from turn to turn. Where
//! many straight drives in many directions show the same kink, positions are bent. Method: lines are fitted to the drives
//! from turn to turn by iteratively reweighted least squares (Cauchy weights; Holland & Welsch 1977, DOI
//! 10.1080/03610927708827533), so that the straight and steady part of each decides. The residuals are gathered on nodes a
//! metre apart, each with a hat function of that width, and solved for the one offset that explains them; lines and offsets
//! are improved in turn (backfitting; Buja, Hastie & Tibshirani 1989, DOI 10.1214/aos/1176347115). Only the part across the
//! drives is evidence of a bend, because the speed may change at edges and on slopes: it must be larger than [`LEAST_M`] and
//! than a few standard errors from drive to drive, over a few square metres, and drives in several directions must agree.
//!
//! Exact: nothing. Approximate: an offset that grows evenly over the whole lawn bends no line and is not seen (it is the
//! plan's rotation and scale); a slope on which wheels always slip really does bend drives; larger drift than
//! [`MOST_DRIFT_M`] hides all bends. On simulated walls of 0.5 to 1.5 m, 3 m wide, a tenth to a fifth is left. Cost: three
//! line fits to every drive if nothing is bent, fifteen times that otherwise.

use crate::{Kept, Piece};
use foldhash::fast::FixedState;
use rayon::prelude::*;
use std::collections::{HashMap, HashSet};
use tussock_plane::Vector;
use tussock_types::Place;
use tussock_types::math;

/// Distance between nodes.
const NODE_M: f64 = 1.0;
/// Smaller bends are not corrected.
pub const LEAST_M: f64 = 0.15;
/// Larger drift bends every drive.
pub const MOST_DRIFT_M: f64 = 0.5;

/// When a bend is believed.
struct Sure {
    /// It is larger than this.
    least_m: f64,
    /// It must also be larger than this many standard errors.
    errors: f64,
    /// On this many adjacent nodes, each about a square metre.
    nodes: usize,
    /// Somewhere it must be at least this large.
    peak_m: f64,
}

const SURE: Sure = Sure {
    least_m: LEAST_M,
    errors: 3.5,
    nodes: 5,
    peak_m: 0.25,
};
/// If more than this fraction of the ground would be bent, the drives are: the machine curves, or slips down a slope.
const MOST_FRACTION: f64 = 0.4;
/// The same if the largest bend is larger than walls cause.
const MOST_M: f64 = 2.5;
/// Before drives are improved, this much is a hint.
const HINT: Sure = Sure {
    least_m: 0.07,
    errors: 1.0,
    nodes: 3,
    peak_m: 0.1,
};
/// Fewer drives over one node show nothing.
const LEAST_DRIVES: f64 = 5.0;
/// Directions of drives are divided into this many sectors of half a turn.
const SECTORS: usize = 6;
const LEAST_IN_SECTOR: f64 = 1.0;
const LEAST_SECTORS: usize = 3;
/// Smaller changes of direction may come from the bend itself.
const TURN_COSINE: f64 = 0.9;
/// A longer stop is a turn.
const STOP_S: f64 = 0.7;
/// The machine may still be turning for this long before and after.
const END_CUT_S: f64 = 0.5;
/// Shorter drives show no kink.
const LEAST_DRIVE_M: f64 = 3.0;
const LEAST_FIXES: usize = 8;
/// Fewer drives are not worth a thread.
const DRIVES_AT_ONCE: usize = 32;
/// Rounds of the backfitting.
const ROUNDS: usize = 15;
/// Rounds of the reweighting for each line.
const REWEIGHTINGS: usize = 6;
/// Cauchy's tuning constant: 95 % efficiency at the normal.
const CAUCHY: f64 = 2.385;
/// Scatter of the speed from drive to drive, as a fraction of it.
const SPEED_SD: f64 = 0.03;
/// Deviations along a drive count for less than those across it, because the speed may change.
const ALONG_SHARE: f64 = 0.5;
/// The neighbours of a node count as much as this many drives over it.
const LEAN_DRIVES: f64 = 1.5;
/// Farther than this from the origin of the plane nothing is searched for, because nodes are numbered.
const FAR_M: f64 = 1e6;
/// Weight that holds each node at zero.
const RIDGE: f64 = 0.5;

type Node = (i32, i32);
/// By node, with a hash for few bytes: no outsider chooses nodes to make them collide.
type ByNode<T> = HashMap<Node, T, FixedState>;

/// By how much positions are bent, place by place.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct LocalBias {
    /// Offset of positions at each bent node: node, east, north.
    offsets_m: ByNode<Vector>,
    /// Largest offset.
    pub largest_m: f64,
    /// Where it is the largest.
    pub place: Place,
    /// Ground on which positions are off by more than [`LEAST_M`].
    pub area_m2: f64,
}

fn node(value_m: f64) -> (i32, f64) {
    let at = value_m / NODE_M;
    let base = at.floor();
    (base as i32, at - base)
}

/// The four nodes around a place with their weights.
fn around(place: Place) -> [(Node, f64); 4] {
    let (east, right) = node(place.east_m);
    let (north, up) = node(place.north_m);
    [
        ((east, north), (1.0 - right) * (1.0 - up)),
        ((east + 1, north), right * (1.0 - up)),
        ((east, north + 1), (1.0 - right) * up),
        ((east + 1, north + 1), right * up),
    ]
}

fn offset_at(offsets_m: &ByNode<Vector>, place: Place) -> Vector {
    let mut sum = Vector::default();
    for (node, weight) in around(place) {
        if let Some(offset_m) = offsets_m.get(&node) {
            sum = sum + *offset_m * weight;
        }
    }
    sum
}

/// Solves place + offset at place = logged. Offsets change by less than one metre per metre, or they could not be undone.
fn straightened(offsets_m: &ByNode<Vector>, logged: Place, guess: Place) -> Place {
    const STEPS: usize = 12;
    let mut place = guess;
    for _ in 0..STEPS {
        let next: Place = (Vector::from(logged) - offset_at(offsets_m, place)).into();
        let moved_m = next.distance_m(place);
        // Half steps: a steep bend would otherwise be overshot to and fro.
        place = place.middle(next);
        if moved_m < 1e-3 {
            break;
        }
    }
    place
}

impl LocalBias {
    /// The true place for a logged position.
    pub fn straightened(&self, logged: Place) -> Place {
        straightened(&self.offsets_m, logged, logged)
    }
}

/// A drive from turn to turn, at one speed along one line.
struct Line {
    time_s: Vec<f64>,
    places: Vec<Place>,
    /// Where the machine was according to this drive.
    seen: Vec<Place>,
    middle_s: f64,
    centre: Place,
    velocity_mps: Vector,
}

/// Joins pieces of path that continue in the same direction and takes the fixes of each.
fn drives(kept: &Kept, pieces: &[Piece]) -> Vec<Line> {
    let mut found = Vec::new();
    let mut take = |start_s: f64, end_s: f64| {
        let first = kept
            .time_s
            .partition_point(|time_s| *time_s < start_s + END_CUT_S);
        let end = kept.time_s.partition_point(|time_s| *time_s <= end_s - END_CUT_S);
        if end < first + LEAST_FIXES || kept.place(first).distance_m(kept.place(end - 1)) < LEAST_DRIVE_M {
            return;
        }
        found.push(Line {
            time_s: kept.time_s[first..end].to_vec(),
            places: (first..end).map(|index| kept.place(index)).collect(),
            seen: (first..end).map(|index| kept.place(index)).collect(),
            middle_s: 0.0,
            centre: Place::default(),
            velocity_mps: Vector::new(1.0, 0.0),
        });
    };
    for piece in pieces {
        let mut open: Option<(f64, f64, Vector)> = None;
        for pair in piece.vertices.windows(2) {
            let (from, to) = (pair[0], pair[1]);
            let Some(along) = Vector::direction(from.place, to.place) else {
                continue;
            };
            let is_short = from.leave_s - from.arrive_s < STOP_S;
            let goes_on = open.filter(|(_, _, last)| along.dot(*last) > TURN_COSINE && is_short);
            match goes_on {
                Some((start_s, _, _)) => open = Some((start_s, to.arrive_s, along)),
                None => {
                    if let Some((start_s, end_s, _)) = open {
                        take(start_s, end_s);
                    }
                    open = Some((from.leave_s, to.arrive_s, along));
                }
            }
        }
        if let Some((start_s, end_s, _)) = open {
            take(start_s, end_s);
        }
    }
    found
}

impl Line {
    fn along(&self) -> Vector {
        let Vector { east, north } = self.velocity_mps;
        let speed_mps = math::hypot(east, north).max(1e-9);
        Vector::new(east / speed_mps, north / speed_mps)
    }

    /// Weighted regression of places on time.
    fn regress(&mut self, places: &[Place], weights: &[f64], scale_m: f64, speed_mps: f64) {
        let sum: f64 = weights.iter().sum::<f64>().max(1e-12);
        let mean =
            |of: &dyn Fn(usize) -> f64| (0..places.len()).map(|at| weights[at] * of(at)).sum::<f64>() / sum;
        self.middle_s = mean(&|at| self.time_s[at]);
        self.centre = Place::new(mean(&|at| places[at].east_m), mean(&|at| places[at].north_m));
        let (mut tt, mut te, mut tn) = (0.0, 0.0, 0.0);
        for (at, place) in places.iter().enumerate() {
            let time_s = self.time_s[at] - self.middle_s;
            tt += weights[at] * time_s * time_s;
            te += weights[at] * time_s * (place.east_m - self.centre.east_m);
            tn += weights[at] * time_s * (place.north_m - self.centre.north_m);
        }
        let found_mps = math::hypot(te, tn) / tt.max(1e-12);
        if found_mps > 0.0 {
            // The usual speed is known, and motors keep to it.
            let (own, usual) = (tt / (scale_m * scale_m), 1.0 / (SPEED_SD * speed_mps).powi(2));
            let share = (own + usual * speed_mps / found_mps) / (own + usual);
            self.velocity_mps = Vector::new(share * te / tt, share * tn / tt);
        }
    }

    /// Square of how far a place lies off, in units of Cauchy's scale.
    fn square(&self, at: usize, place: Place, scale_m: f64) -> f64 {
        let off_m = self.off_m(at, place);
        off_m.dot(off_m) / (CAUCHY * scale_m).powi(2)
    }

    /// Cauchy weights of places.
    fn weigh(&self, places: &[Place], scale_m: f64, weights: &mut [f64]) {
        for (at, place) in places.iter().enumerate() {
            weights[at] = 1.0 / (1.0 + self.square(at, *place, scale_m));
        }
    }

    /// The cost of the places, without the scatter of the speed.
    fn cost(&self, places: &[Place], scale_m: f64) -> f64 {
        let places = places.iter().enumerate();
        places.fold(0.0, |sum, (at, place)| {
            sum + math::ln_1p(self.square(at, *place, scale_m))
        })
    }

    /// Fits the drive to places, with little weight on those far off: starting from its whole, its first half and its last
    /// half.
    fn fit(&mut self, places: &[Place], scale_m: f64, speed_mps: f64) {
        let count = places.len();
        let half = count.div_ceil(2);
        let mut best: Option<(f64, f64, Place, Vector)> = None;
        for start in [0..count, 0..half, count - half..count] {
            let mut weights: Vec<f64> = (0..count)
                .map(|at| f64::from(u8::from(start.contains(&at))))
                .collect();
            for _ in 1..REWEIGHTINGS {
                self.regress(places, &weights, scale_m, speed_mps);
                self.weigh(places, scale_m, &mut weights);
            }
            self.regress(places, &weights, scale_m, speed_mps);
            let mut cost = self.cost(places, scale_m);
            let found_mps = size(&self.velocity_mps);
            cost += ((found_mps - speed_mps) / (SPEED_SD * speed_mps)).powi(2);
            if best.is_none_or(|(least, ..)| cost < least) {
                best = Some((cost, self.middle_s, self.centre, self.velocity_mps));
            }
        }
        if let Some((_, middle_s, centre, velocity_mps)) = best {
            (self.middle_s, self.centre, self.velocity_mps) = (middle_s, centre, velocity_mps);
        }
    }

    fn look(&mut self) {
        for (seen, time_s) in self.seen.iter_mut().zip(&self.time_s) {
            *seen = (Vector::from(self.centre) + self.velocity_mps * (time_s - self.middle_s)).into();
        }
    }

    /// The vector from where it should have been to a place.
    fn off_m(&self, at: usize, place: Place) -> Vector {
        Vector::between(self.centre, place) - self.velocity_mps * (self.time_s[at] - self.middle_s)
    }

    /// Distance to the left of the line.
    fn left_m(&self, at: usize, place: Place) -> f64 {
        self.along().left().dot(self.off_m(at, place))
    }
}

fn size(way: &Vector) -> f64 {
    math::hypot(way.east, way.north)
}

/// What the drives over one node show.
#[derive(Clone, Copy, Default)]
struct Sum {
    /// Weighted sum of across times across: east-east, east-north, north-north.
    square: [f64; 3],
    /// And of across times distance.
    pull: Vector,
    /// Drives over it.
    drives: f64,
    /// The last of them.
    last: usize,
}

impl Sum {
    fn add(&mut self, across: Vector, off_m: f64, weight: f64) {
        self.square[0] += weight * across.east * across.east;
        self.square[1] += weight * across.east * across.north;
        self.square[2] += weight * across.north * across.north;
        self.pull = self.pull + across * weight * off_m;
    }

    fn count(&mut self, number: usize) {
        if self.last != number {
            self.last = number;
            self.drives += 1.0;
        }
    }

    fn solved_m(&self) -> Vector {
        let [ee, en, nn] = [self.square[0] + RIDGE, self.square[1], self.square[2] + RIDGE];
        let determinant = ee * nn - en * en;
        let Vector { east, north } = self.pull;
        Vector::new(
            (nn * east - en * north) / determinant,
            (ee * north - en * east) / determinant,
        )
    }
}

/// Searches for ground on which positions are bent. `white_m` is their white part per axis.
///
/// `None` if nothing is bent, or too little was driven to show it.
pub fn find(kept: &Kept, pieces: &[Piece], white_m: f64, speed_mps: f64) -> Option<LocalBias> {
    let is_near = |value_m: &f64| value_m.abs() < FAR_M;
    if !kept.east_m.iter().chain(&kept.north_m).all(is_near) {
        return None;
    }
    let mut lines = drives(kept, pieces);
    let scale_m = white_m.max(0.02);
    let mut offsets_m: ByNode<Vector> = ByNode::default();
    for round in 0..ROUNDS {
        let mut sums: ByNode<Sum> = ByNode::default();
        // Drives are fitted in parallel, then counted one after the other.
        let straightened: Vec<Vec<Place>> = lines
            .par_iter_mut()
            .with_min_len(DRIVES_AT_ONCE)
            .map(|line| {
                let places: Vec<Place> = (line.places.iter().zip(&line.seen))
                    .map(|(logged, seen)| (Vector::from(*logged) - offset_at(&offsets_m, *seen)).into())
                    .collect();
                line.fit(&places, scale_m, speed_mps);
                line.look();
                places
            })
            .collect();
        for (number, (line, places)) in lines.iter().zip(&straightened).enumerate() {
            let (along, across) = (line.along(), line.along().left());
            for (at, seen) in line.seen.iter().enumerate() {
                let off_m = line.off_m(at, places[at]);
                for (node, weight) in around(*seen) {
                    let sum = sums.entry(node).or_default();
                    sum.count(number + 1);
                    sum.add(across, across.dot(off_m), weight);
                    sum.add(along, along.dot(off_m), ALONG_SHARE * weight);
                }
            }
        }
        for (node, sum) in &sums {
            let offset_m = offsets_m.entry(*node).or_default();
            *offset_m = *offset_m + sum.solved_m();
        }
        offsets_m = smoothed(&offsets_m, &sums);
        if round == 0 && believed(&lines, &offsets_m, HINT).is_none() {
            return None;
        }
    }
    let driven_m2 = NODE_M * NODE_M * offsets_m.len() as f64;
    believed(&lines, &offsets_m, SURE)
        .filter(|found| found.area_m2 <= MOST_FRACTION * driven_m2 && found.largest_m <= MOST_M)
}

/// Nodes with few drives lean on their neighbours.
fn smoothed(offsets_m: &ByNode<Vector>, sums: &ByNode<Sum>) -> ByNode<Vector> {
    offsets_m
        .iter()
        .map(|(&(east, north), offset_m)| {
            let drives = |node: &Node| sums.get(node).map_or(0.0, |sum| sum.drives);
            let own = drives(&(east, north));
            let (mut around, mut weights) = (Vector::default(), 0.0);
            for step in [
                (-1, 0),
                (1, 0),
                (0, -1),
                (0, 1),
                (-1, -1),
                (-1, 1),
                (1, -1),
                (1, 1),
            ] {
                let node = (east + step.0, north + step.1);
                if let Some(other_m) = offsets_m.get(&node) {
                    let weight = drives(&node);
                    around = around + *other_m * weight;
                    weights += weight;
                }
            }
            let lean = if weights > 0.0 { LEAN_DRIVES } else { 0.0 };
            let sum = (own + lean).max(1e-12);
            let mixed =
                |own_m: f64, others_m: f64| (own * own_m + lean * others_m / weights.max(1e-12)) / sum;
            let mixed = Vector::new(
                mixed(offset_m.east, around.east),
                mixed(offset_m.north, around.north),
            );
            ((east, north), mixed)
        })
        .collect()
}

/// What drives show about a node's offset.
#[derive(Clone, Copy, Debug, Default)]
struct Says {
    drives: f64,
    /// Squares of the distance that the offset leaves, and of the distance that it explains.
    left_m2: f64,
    explained_m2: f64,
    /// By direction of the drive: number of drives, the distance that they show and the one expected, along the offset.
    sectors: [[f64; 3]; SECTORS],
}

impl Says {
    fn take(&mut self, off_m: f64, across: Vector, offset_m: Vector, share: f64) {
        let expected_m = across.dot(offset_m);
        self.drives += share;
        self.left_m2 += share * (off_m - expected_m).powi(2);
        self.explained_m2 += share * expected_m * expected_m;
        let turns = across.angle_rad() / std::f64::consts::PI;
        let sector = &mut self.sectors[((turns.rem_euclid(1.0) * SECTORS as f64) as usize).min(SECTORS - 1)];
        sector[0] += share;
        sector[1] += share * off_m * expected_m.signum();
        sector[2] += share * expected_m.abs();
    }

    /// Whether the drives show it beyond doubt, in more than one direction and against none: a way that was driven again and
    /// again, like the one home, has bends of its own.
    fn agree(&self, errors: f64) -> bool {
        let (mut with, mut against) = (0, 0);
        for [drives, said_m, expected_m] in self.sectors {
            if drives >= LEAST_IN_SECTOR && expected_m > 0.0 {
                if said_m > 0.5 * expected_m {
                    with += 1;
                } else {
                    against += 1;
                }
            }
        }
        self.drives >= LEAST_DRIVES
            && self.explained_m2 * self.drives > errors * errors * self.left_m2
            && with >= LEAST_SECTORS
            && against <= 1
    }
}

/// The nodes that are bent beyond doubt, with those around them.
fn believed(lines: &[Line], offsets_m: &ByNode<Vector>, sure: Sure) -> Option<LocalBias> {
    // Each drive over a node counts once, by how far off it is there along the offset; drives are separated in time.
    let of_lines: Vec<ByNode<[f64; 2]>> = lines
        .par_iter()
        .with_min_len(DRIVES_AT_ONCE)
        .map(|line| {
            let mut own: ByNode<[f64; 2]> = ByNode::default();
            for (at, logged) in line.places.iter().enumerate() {
                let left_m = line.left_m(at, *logged);
                for (node, weight) in around(line.seen[at]) {
                    let sum = own.entry(node).or_default();
                    sum[0] += weight * left_m;
                    sum[1] += weight;
                }
            }
            own
        })
        .collect();
    let mut says: ByNode<Says> = ByNode::default();
    for (line, own) in lines.iter().zip(of_lines) {
        let across = line.along().left();
        for (node, [off_m, weight]) in own {
            if let (Some(offset_m), true) = (offsets_m.get(&node), weight > 0.0) {
                says.entry(node)
                    .or_default()
                    .take(off_m / weight, across, *offset_m, weight.min(1.0));
            }
        }
    }
    let is_bent = |node: &Node| {
        offsets_m
            .get(node)
            .zip(says.get(node))
            .is_some_and(|(offset_m, says)| size(offset_m) > sure.least_m && says.agree(sure.errors))
    };
    let mut bent: Vec<Node> = offsets_m.keys().filter(|node| is_bent(node)).copied().collect();
    bent.sort_unstable();
    // From there, as far as drives do not contradict it.
    let may_belong = |node: &Node| {
        offsets_m
            .get(node)
            .is_some_and(|offset_m| size(offset_m) > 0.5 * sure.least_m)
            && says.get(node).is_none_or(|says| says.explained_m2 > says.left_m2)
    };
    let mut open: HashSet<Node, FixedState> = offsets_m
        .keys()
        .filter(|node| may_belong(node))
        .copied()
        .collect();
    open.extend(&bent);
    let seeds: HashSet<Node, FixedState> = bent.iter().copied().collect();
    let mut kept_nodes: Vec<Node> = Vec::new();
    for start in &bent {
        if !open.remove(start) {
            continue;
        }
        let mut patch = vec![*start];
        let mut next = 0;
        while next < patch.len() {
            let (east, north) = patch[next];
            next += 1;
            for other in [
                (east - 1, north),
                (east + 1, north),
                (east, north - 1),
                (east, north + 1),
            ] {
                if open.remove(&other) {
                    patch.push(other);
                }
            }
        }
        let peak_m = patch
            .iter()
            .map(|node| size(&offsets_m[node]))
            .fold(0.0, f64::max);
        let sure_nodes = patch.iter().filter(|node| seeds.contains(node)).count();
        if sure_nodes >= sure.nodes && peak_m >= sure.peak_m {
            kept_nodes.extend(patch);
        }
    }
    let peak = kept_nodes
        .iter()
        .max_by(|a, b| size(&offsets_m[a]).total_cmp(&size(&offsets_m[b])))
        .copied()?;
    let mut found = LocalBias {
        largest_m: size(&offsets_m[&peak]),
        place: Place::new(f64::from(peak.0) * NODE_M, f64::from(peak.1) * NODE_M),
        area_m2: kept_nodes
            .iter()
            .filter(|node| size(&offsets_m[node]) > LEAST_M)
            .count() as f64
            * NODE_M
            * NODE_M,
        offsets_m: ByNode::default(),
    };
    for (east, north) in kept_nodes {
        // Two nodes farther on the bend has faded.
        for node in (-2..=2).flat_map(|a| (-2..=2).map(move |b| (east + a, north + b))) {
            if let Some(offset_m) = offsets_m.get(&node) {
                found.offsets_m.insert(node, *offset_m);
            }
        }
    }
    Some(found)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::Vertex;

    /// Drives to and fro across a square in several directions, a fix a second, the last metres before its eastern edge bent.
    fn across(origin_m: f64, bent_m: f64) -> (Kept, Vec<Piece>) {
        let (mut kept, mut pieces) = (Kept::default(), Vec::new());
        let mut time_s = 0.0;
        for number in 0..120 {
            let heading_rad = 0.26 * f64::from(number % 7 - 3);
            let start_m = 0.17 * f64::from(number);
            let at = |second: f64| {
                let driven_m = 0.4 * second;
                (
                    driven_m * math::cos(heading_rad),
                    start_m + driven_m * math::sin(heading_rad),
                )
            };
            let lapse_s = (16.0 / (0.4 * math::cos(heading_rad))).floor();
            let vertex = |second: f64| {
                let (east_m, north_m) = at(second);
                Vertex::passed(Place::new(origin_m + east_m, north_m), time_s + second)
            };
            pieces.push(Piece {
                vertices: vec![vertex(0.0), vertex(lapse_s)],
            });
            for second in 0..=lapse_s as u32 {
                let (east_m, north_m) = at(f64::from(second));
                let off_m = bent_m * ((east_m - 13.0) / 3.0).clamp(0.0, 1.0);
                kept.time_s.push(time_s + f64::from(second));
                kept.east_m.push(origin_m + east_m + off_m);
                kept.north_m.push(north_m + off_m);
                kept.run.push(number as u32);
            }
            time_s += lapse_s + 20.0;
        }
        (kept, pieces)
    }

    #[test]
    fn a_bend_is_found_where_it_is_and_undone() {
        assert_eq!(find(&across(0.0, 0.0).0, &across(0.0, 0.0).1, 0.01, 0.4), None);
        let (kept, pieces) = across(0.0, 0.6);
        let found = find(&kept, &pieces, 0.01, 0.4).expect("six decimetres each way");
        assert!(found.place.east_m > 14.0, "{:?}", found.place);
        assert!(
            (found.largest_m - 0.6 * 2.0_f64.sqrt()).abs() < 0.25,
            "{}",
            found.largest_m
        );
        // Far from the edge nothing moves.
        let inside = Place::new(6.0, 8.0);
        assert_eq!(found.straightened(inside), inside);
    }

    #[test]
    fn far_off_places_are_left_alone() {
        let (kept, pieces) = across(1e13, 0.6);
        assert_eq!(find(&kept, &pieces, 0.01, 0.4), None);
    }
}
