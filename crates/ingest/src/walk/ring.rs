//! A ring from a walk: its end is found, the gap closed, and corners without effect and small loops are removed.

use super::clean::{Cleaned, LEFT_FRACTION};
use super::place::{SAME_M, WalkedPlace};
use tussock_types::{GeoPoint, Place};

/// A gap of at most this is closed,
pub(super) const CLOSED_M: f64 = 5.0;
/// and of at most this fraction of the walk.
const CLOSED_FRACTION: f64 = 0.25;
/// Also a gap that noise alone explains: the noise of two ends, times three.
const GAP_PER_NOISE: f64 = 4.2;
/// Corners that move the line by less than this are dropped.
const SIMPLIFIED_M: f64 = 0.05;
/// A walker who stands still draws loops shorter than this.
const LOOP_M: f64 = 3.0;
/// Loops up to this fraction of the ring come from the receiver: no lawn crosses itself.
const LOOP_FRACTION: f64 = 0.1;
/// The first and the last position are one corner if the walker stood at one of them and they are closer than this.
const START_M: f64 = 2.0;
/// A walk is back at its start within this fraction of its greatest distance from it.
const BACK_FRACTION: f64 = 0.3;
/// A second round follows the first to within this many metres, and within this fraction of it.
const SECOND_ROUND_M: f64 = 8.0;
const SECOND_ROUND_FRACTION: f64 = 0.06;
/// Number of positions that are compared with the first round.
const COMPARED: usize = 200;
/// Number of edges of the first round that they are compared with.
const COMPARED_EDGES: usize = 2_000;
/// With more corners than this, loops are left to the checks on the ground.
const MOST_CORNERS_FOR_LOOPS: usize = 5_000;

pub(super) struct Ring {
    /// Closed.
    pub(super) points: Vec<GeoPoint>,
    pub(super) gap_m: f64,
    pub(super) cut_off_m: f64,
    pub(super) loops_cut: usize,
    pub(super) area_m2: f64,
    pub(super) length_m: f64,
}

#[derive(Debug, PartialEq)]
pub(super) enum RingFault {
    TooFew { corners: usize },
    Open { gap_m: f64, limit_m: f64 },
}

/// A line without the corners that hardly move it.
pub(super) fn simplified_line(walk: &Cleaned) -> Vec<GeoPoint> {
    let steps = simplified(&walk.steps, tolerance_m(walk));
    steps.iter().map(|step| step.point).collect()
}

fn tolerance_m(walk: &Cleaned) -> f64 {
    SIMPLIFIED_M.max(LEFT_FRACTION * walk.noise_m)
}

/// Distance walked from the start to each position.
pub(super) fn walked_m(steps: &[WalkedPlace]) -> Vec<f64> {
    let mut last = steps.first().map(|step| step.place).unwrap_or_default();
    let along = steps.iter().scan(0.0, |sum_m, step| {
        *sum_m += step.place.distance_m(last);
        last = step.place;
        Some(*sum_m)
    });
    along.collect()
}

/// A closed ring from a walk around something.
pub(super) fn ring_of(walk: &Cleaned) -> Result<Ring, RingFault> {
    let mut steps = walk.steps.clone();
    if steps.len() < 3 {
        return Err(RingFault::TooFew { corners: steps.len() });
    }
    let walked = walked_m(&steps);
    let length_m = walked[walked.len() - 1];
    let end = end_of_first_round(&steps, &walked).unwrap_or_else(|| nearest_end(&steps, &walked));
    let gap_m = steps[end].place.distance_m(steps[0].place);
    let limit_m = (CLOSED_M + GAP_PER_NOISE * walk.noise_m).min(CLOSED_FRACTION * walked[end]);
    if gap_m > limit_m {
        return Err(RingFault::Open { gap_m, limit_m });
    }
    let cut_off_m = length_m - walked[end];
    steps.truncate(end + 1);
    let is_one_corner = gap_m < START_M && steps.len() > 3;
    if gap_m < SAME_M || (is_one_corner && steps[0].is_corner) {
        steps.pop();
    } else if is_one_corner && steps[end].is_corner {
        steps.remove(0);
    }
    let mut steps = simplified_ring(steps, tolerance_m(walk));
    let loops_cut = cut_loops(&mut steps, LOOP_M.max(LOOP_FRACTION * walked[end]));
    if steps.len() < 3 {
        return Err(RingFault::TooFew { corners: steps.len() });
    }
    steps.push(steps[0]);
    let cross = |pair: &[WalkedPlace]| {
        let (a, b) = (pair[0].place, pair[1].place);
        a.east_m * b.north_m - b.east_m * a.north_m
    };
    Ok(Ring {
        area_m2: 0.5 * steps.windows(2).map(cross).sum::<f64>().abs(),
        length_m: walked_m(&steps).last().copied().unwrap_or(0.0),
        points: steps.iter().map(|step| step.point).collect(),
        gap_m,
        cut_off_m,
        loops_cut,
    })
}

/// Where the second half of the walk comes closest to the start, the first such place.
fn nearest_end(steps: &[WalkedPlace], walked: &[f64]) -> usize {
    let from_start_m = |position: usize| steps[position].place.distance_m(steps[0].place);
    (2..steps.len())
        .filter(|&position| walked[position] >= walked[walked.len() - 1] / 2.0)
        .min_by(|&a, &b| from_start_m(a).total_cmp(&from_start_m(b)))
        .unwrap_or(steps.len() - 1)
}

/// Where the walk was first back at its start, if everything after that follows what came before: somebody walked round
/// twice.
fn end_of_first_round(steps: &[WalkedPlace], walked: &[f64]) -> Option<usize> {
    let from_start_m = |position: usize| steps[position].place.distance_m(steps[0].place);
    let reach_m = (0..steps.len()).map(from_start_m).fold(0.0, f64::max);
    let near_m = CLOSED_M.min(BACK_FRACTION * reach_m);
    let left = (0..steps.len()).find(|&position| from_start_m(position) > 2.0 * near_m)?;
    let back = (left..steps.len()).find(|&position| from_start_m(position) <= near_m)?;
    let stay = (back..steps.len()).take_while(|&position| from_start_m(position) <= near_m);
    let end = stay.min_by(|&a, &b| from_start_m(a).total_cmp(&from_start_m(b)))?;
    let first: Vec<Place> = (0..=end)
        .step_by(end / COMPARED_EDGES + 1)
        .map(|position| steps[position].place)
        .collect();
    let limit_m = SECOND_ROUND_M.min(SECOND_ROUND_FRACTION * walked[end]);
    let rest: Vec<&WalkedPlace> = (steps[end..].iter())
        .step_by((steps.len() - end) / COMPARED + 1)
        .collect();
    let follows = |step: &&&WalkedPlace| {
        let mut edges = first.windows(2);
        edges.any(|edge| step.place.off_piece_m(edge[0], edge[1]) <= limit_m)
    };
    let following = rest.iter().filter(follows).count();
    // One in ten may be off: that is the receiver, not the walker.
    (10 * following >= 9 * rest.len()).then_some(end)
}

/// Simplifies an open list of corners of a ring, in two halves between its start and the corner farthest from it.
fn simplified_ring(steps: Vec<WalkedPlace>, tolerance_m: f64) -> Vec<WalkedPlace> {
    let far = (0..steps.len())
        .max_by(|&a, &b| {
            let from_start_m = |position: usize| steps[position].place.distance_m(steps[0].place);
            from_start_m(a).total_cmp(&from_start_m(b))
        })
        .unwrap_or(0);
    let mut out = simplified(&steps[..=far], tolerance_m);
    let back: Vec<WalkedPlace> = steps[far..].iter().chain(&steps[..1]).copied().collect();
    let mut back = simplified(&back, tolerance_m);
    // Both halves contain their ends.
    back.pop();
    out.pop();
    out.append(&mut back);
    out
}

/// Douglas & Peucker 1973, without recursion, from one place where the walker stood to the next.
fn simplified(steps: &[WalkedPlace], tolerance_m: f64) -> Vec<WalkedPlace> {
    if steps.len() < 3 {
        return steps.to_vec();
    }
    let mut keep: Vec<bool> = steps.iter().map(|step| step.is_corner).collect();
    keep[0] = true;
    keep[steps.len() - 1] = true;
    let kept: Vec<usize> = (0..steps.len()).filter(|&position| keep[position]).collect();
    let mut stack: Vec<(usize, usize)> = kept.windows(2).map(|pair| (pair[0], pair[1])).collect();
    while let Some((first, last)) = stack.pop() {
        let farthest = (first + 1..last)
            .map(|position| {
                let off_m = steps[position]
                    .place
                    .off_piece_m(steps[first].place, steps[last].place);
                (position, off_m)
            })
            .max_by(|a, b| a.1.total_cmp(&b.1));
        if let Some((position, off_m)) = farthest
            && off_m > tolerance_m
        {
            keep[position] = true;
            stack.push((first, position));
            stack.push((position, last));
        }
    }
    let kept = steps.iter().zip(keep).filter(|(_, keep)| *keep);
    kept.map(|(step, _)| *step).collect()
}

/// Cuts off short loops where the ring crosses itself; returns how many.
fn cut_loops(steps: &mut Vec<WalkedPlace>, loop_m: f64) -> usize {
    if steps.len() > MOST_CORNERS_FOR_LOOPS {
        return 0;
    }
    let mut cut = cut_loops_of_line(steps, loop_m);
    // The edge that closes the ring can cross others too, so repeat this from another start.
    let half = steps.len() / 2;
    steps.rotate_left(half);
    cut += cut_loops_of_line(steps, loop_m);
    let half = half.min(steps.len());
    steps.rotate_right(half);
    cut
}

fn cut_loops_of_line(steps: &mut Vec<WalkedPlace>, loop_m: f64) -> usize {
    let mut cut = 0;
    let mut first = 0;
    while first + 2 < steps.len() {
        match loop_from(steps, first, loop_m) {
            Some((end, part)) => {
                // Up to the crossing, and on from there.
                let crossing = between(&steps[first], &steps[first + 1], part);
                // What is left of the edge may cross another edge.
                steps.splice(first + 1..=end, [crossing]);
                cut += 1;
            }
            None => first += 1,
        }
    }
    cut
}

/// The last corner of a short loop that begins on the edge after a corner, and the part of that edge before the crossing.
fn loop_from(steps: &[WalkedPlace], first: usize, loop_m: f64) -> Option<(usize, f64)> {
    let mut length_m = 0.0;
    for second in first + 2..steps.len() - 1 {
        length_m += steps[second - 1].place.distance_m(steps[second].place);
        if length_m > loop_m {
            return None;
        }
        let edge = |position: usize| (steps[position].place, steps[position + 1].place);
        if let Some(part) = cross(edge(first), edge(second)) {
            return Some((second, part));
        }
    }
    None
}

/// A position on the way from one to another.
fn between(from: &WalkedPlace, to: &WalkedPlace, part: f64) -> WalkedPlace {
    let mix = |a: f64, b: f64| a + part * (b - a);
    // The short way round, even across the antimeridian.
    let east_deg = (to.point.lon_deg - from.point.lon_deg + 180.0).rem_euclid(360.0) - 180.0;
    WalkedPlace {
        point: GeoPoint {
            lat_deg: mix(from.point.lat_deg, to.point.lat_deg),
            lon_deg: (from.point.lon_deg + part * east_deg + 180.0).rem_euclid(360.0) - 180.0,
        },
        place: Place::new(
            mix(from.place.east_m, to.place.east_m),
            mix(from.place.north_m, to.place.north_m),
        ),
        is_corner: false,
    }
}

/// Where two edges cross in the middle of both: the fraction of the first before the crossing.
fn cross((a, b): (Place, Place), (c, d): (Place, Place)) -> Option<f64> {
    let side = |p: Place, q: Place, r: Place| {
        (q.east_m - p.east_m) * (r.north_m - p.north_m) - (q.north_m - p.north_m) * (r.east_m - p.east_m)
    };
    let (from_a, from_b) = (side(c, d, a), side(c, d, b));
    (side(a, b, c) * side(a, b, d) < 0.0 && from_a * from_b < 0.0).then(|| from_a / (from_a - from_b))
}
