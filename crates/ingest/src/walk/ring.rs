//! A ring from a walk: its end found, the gap closed, noise and small loops taken out.

use tussock_types::math;
use tussock_types::{GeoPoint, Place};

/// A gap of at most this is closed.
pub(super) const CLOSED_M: f64 = 5.0;
/// And of at most this part of the walk.
const CLOSED_FRACTION: f64 = 0.25;
/// Corners that move the line by less than this are left out.
const SIMPLIFIED_M: f64 = 0.05;
/// Loops shorter than this are drawn by a walker who stands still.
const LOOP_M: f64 = 3.0;
/// Positions nearer than this are one.
const SAME_M: f64 = 0.001;
/// Above this many corners loops are left to the checks on the ground.
const MOST_CORNERS_FOR_LOOPS: usize = 5_000;

pub(super) struct Ring {
    /// Closed.
    pub(super) points: Vec<GeoPoint>,
    pub(super) gap_m: f64,
    pub(super) cut_off_m: f64,
    pub(super) loops_cut: usize,
}

#[derive(Debug, PartialEq)]
pub(super) enum RingFault {
    TooFew { corners: usize },
    Open { gap_m: f64, limit_m: f64 },
}

/// Metres around one position: radii of curvature of WGS 84 there (IOGP 373-7-2, section 4.1.1). True to a millimetre
/// over a hundred metres, which is all that a walk needs.
#[derive(Clone, Copy)]
struct LocalScale {
    origin: GeoPoint,
    north_m_per_deg: f64,
    east_m_per_deg: f64,
}

impl LocalScale {
    fn at(origin: GeoPoint) -> Self {
        const SEMI_MAJOR_M: f64 = 6_378_137.0;
        const E2: f64 = 0.006_694_379_990_141_316;
        let (sin, cos) = math::sin_cos(origin.lat_deg.to_radians());
        let root = 1.0 - E2 * sin * sin;
        Self {
            origin,
            north_m_per_deg: (SEMI_MAJOR_M * (1.0 - E2) / math::powf(root, 1.5)).to_radians(),
            east_m_per_deg: (SEMI_MAJOR_M / root.sqrt() * cos).to_radians(),
        }
    }

    fn place(&self, point: GeoPoint) -> Place {
        let east_deg = (point.lon_deg - self.origin.lon_deg + 180.0).rem_euclid(360.0) - 180.0;
        Place::new(
            east_deg * self.east_m_per_deg,
            (point.lat_deg - self.origin.lat_deg) * self.north_m_per_deg,
        )
    }
}

/// Distance between two positions of a garden.
pub(super) fn distance_m(from: GeoPoint, to: GeoPoint) -> f64 {
    LocalScale::at(from).place(to).distance_m(Place::default())
}

/// A walked position: where on Earth, and where in metres.
#[derive(Clone, Copy)]
struct WalkedPlace {
    point: GeoPoint,
    place: Place,
}

fn steps_of(points: &[GeoPoint]) -> Vec<WalkedPlace> {
    let Some(&first) = points.first() else {
        return Vec::new();
    };
    let near = LocalScale::at(first);
    let mut steps: Vec<WalkedPlace> = points
        .iter()
        .map(|&point| WalkedPlace {
            point,
            place: near.place(point),
        })
        .collect();
    steps.dedup_by(|later, kept| later.place.distance_m(kept.place) < SAME_M);
    steps
}

/// A line without the corners that hardly move it.
pub(super) fn simplified_line(points: &[GeoPoint]) -> Vec<GeoPoint> {
    let steps = simplified(&steps_of(points));
    steps.iter().map(|step| step.point).collect()
}

/// A closed ring from a walk around something.
pub(super) fn ring_of(points: &[GeoPoint]) -> Result<Ring, RingFault> {
    let mut steps = steps_of(points);
    if steps.len() < 3 {
        return Err(RingFault::TooFew { corners: steps.len() });
    }
    let walked: Vec<f64> = steps
        .iter()
        .scan((0.0, steps[0].place), |(sum_m, last), step| {
            *sum_m += step.place.distance_m(*last);
            *last = step.place;
            Some(*sum_m)
        })
        .collect();
    let length_m = walked[walked.len() - 1];
    let from_start_m = |position: usize| steps[position].place.distance_m(steps[0].place);
    // The end is where the second half of the walk is nearest to the start, the first such place.
    let end = (2..steps.len())
        .filter(|&position| walked[position] >= length_m / 2.0)
        .min_by(|&a, &b| from_start_m(a).total_cmp(&from_start_m(b)))
        .unwrap_or(steps.len() - 1);
    let gap_m = from_start_m(end);
    let limit_m = CLOSED_M.min(CLOSED_FRACTION * walked[end]);
    if gap_m > limit_m {
        return Err(RingFault::Open { gap_m, limit_m });
    }
    let cut_off_m = length_m - walked[end];
    steps.truncate(end + 1);
    if gap_m < SAME_M {
        steps.pop();
    }
    let mut steps = simplified_ring(steps);
    let loops_cut = cut_loops(&mut steps);
    if steps.len() < 3 {
        return Err(RingFault::TooFew { corners: steps.len() });
    }
    let mut points: Vec<GeoPoint> = steps.iter().map(|step| step.point).collect();
    points.push(points[0]);
    Ok(Ring {
        points,
        gap_m,
        cut_off_m,
        loops_cut,
    })
}

/// Simplifies an open list of corners of a ring, in two halves between its start and the corner farthest from it.
fn simplified_ring(steps: Vec<WalkedPlace>) -> Vec<WalkedPlace> {
    let far = (0..steps.len())
        .max_by(|&a, &b| {
            let from_start_m = |position: usize| steps[position].place.distance_m(steps[0].place);
            from_start_m(a).total_cmp(&from_start_m(b))
        })
        .unwrap_or(0);
    let mut out = simplified(&steps[..=far]);
    let back: Vec<WalkedPlace> = steps[far..].iter().chain(&steps[..1]).copied().collect();
    let mut back = simplified(&back);
    // Both halves hold their ends.
    back.pop();
    out.pop();
    out.append(&mut back);
    out
}

/// Douglas & Peucker 1973, without recursion.
fn simplified(steps: &[WalkedPlace]) -> Vec<WalkedPlace> {
    if steps.len() < 3 {
        return steps.to_vec();
    }
    let mut keep = vec![false; steps.len()];
    keep[0] = true;
    keep[steps.len() - 1] = true;
    let mut stack = vec![(0, steps.len() - 1)];
    while let Some((first, last)) = stack.pop() {
        let farthest = (first + 1..last)
            .map(|position| {
                let off_m = distance_to_piece_m(steps[position].place, steps[first].place, steps[last].place);
                (position, off_m)
            })
            .max_by(|a, b| a.1.total_cmp(&b.1));
        if let Some((position, off_m)) = farthest
            && off_m > SIMPLIFIED_M
        {
            keep[position] = true;
            stack.push((first, position));
            stack.push((position, last));
        }
    }
    let kept = steps.iter().zip(keep).filter(|(_, keep)| *keep);
    kept.map(|(step, _)| *step).collect()
}

fn distance_to_piece_m(place: Place, from: Place, to: Place) -> f64 {
    let (de, dn) = (to.east_m - from.east_m, to.north_m - from.north_m);
    let (pe, pn) = (place.east_m - from.east_m, place.north_m - from.north_m);
    let length_squared = de * de + dn * dn;
    let along = if length_squared > 0.0 {
        ((pe * de + pn * dn) / length_squared).clamp(0.0, 1.0)
    } else {
        0.0
    };
    math::hypot(pe - along * de, pn - along * dn)
}

/// Cuts off short loops where the ring crosses itself; gives how many.
fn cut_loops(steps: &mut Vec<WalkedPlace>) -> usize {
    if steps.len() > MOST_CORNERS_FOR_LOOPS {
        return 0;
    }
    let mut cut = cut_loops_of_line(steps);
    // The edge that closes the ring can cross others too: the same from another start.
    let half = steps.len() / 2;
    steps.rotate_left(half);
    cut += cut_loops_of_line(steps);
    let half = half.min(steps.len());
    steps.rotate_right(half);
    cut
}

fn cut_loops_of_line(steps: &mut Vec<WalkedPlace>) -> usize {
    let mut cut = 0;
    let mut first = 0;
    while first + 2 < steps.len() {
        match loop_from(steps, first) {
            Some((end, part)) => {
                // Up to the crossing, and on from there.
                let crossing = between(&steps[first], &steps[first + 1], part);
                steps.splice(first + 1..=end, [crossing]);
                cut += 1;
                first += 1;
            }
            None => first += 1,
        }
    }
    cut
}

/// The last corner of a short loop that begins on the edge after a corner, and the part of that edge before the crossing.
fn loop_from(steps: &[WalkedPlace], first: usize) -> Option<(usize, f64)> {
    let mut length_m = 0.0;
    for second in first + 2..steps.len() - 1 {
        length_m += steps[second - 1].place.distance_m(steps[second].place);
        if length_m > LOOP_M {
            return None;
        }
        let edge = |position: usize| (steps[position].place, steps[position + 1].place);
        if let Some(part) = cross(edge(first), edge(second)) {
            return Some((second, part));
        }
    }
    None
}

/// A step on the way from one to another.
fn between(from: &WalkedPlace, to: &WalkedPlace, part: f64) -> WalkedPlace {
    let mix = |a: f64, b: f64| a + part * (b - a);
    // The short way round, also on the antimeridian.
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
    }
}

/// Where two edges cross in the middle of both: the part of the first before the crossing.
fn cross((a, b): (Place, Place), (c, d): (Place, Place)) -> Option<f64> {
    let side = |p: Place, q: Place, r: Place| {
        (q.east_m - p.east_m) * (r.north_m - p.north_m) - (q.north_m - p.north_m) * (r.east_m - p.east_m)
    };
    let (from_a, from_b) = (side(c, d, a), side(c, d, b));
    (side(a, b, c) * side(a, b, d) < 0.0 && from_a * from_b < 0.0).then(|| from_a / (from_a - from_b))
}
