//! The line at which the machine turns, as edges that can be queried.
//!
//! Question: where does a straight drive end, and where on the line can a turn lie if the length of the way is known? Both
//! are answered in closed form, edge by edge; the places at which two legs together have a given length lie on an ellipse
//! about their ends.
//!
//! Exact up to rounding. Cost: the edges near an interval are selected once by their boxes, and only they are queried.

use std::ops::Deref;
use tussock_plane::{Edge, Joins, Region, Vector};

/// An edge of the line, and a position on it.
#[derive(Clone, Copy, Debug)]
pub(super) struct LineEdge {
    pub(super) edge: Edge,
    /// Number of its ring.
    ring: usize,
    /// Number among all edges; the edges of a ring follow each other.
    number: usize,
}

impl Deref for LineEdge {
    type Target = Edge;
    fn deref(&self) -> &Edge {
        &self.edge
    }
}

/// The line at which the machine's middle turns: edges of the ground, moved inwards by the inset.
#[derive(Clone, Debug)]
pub struct Outline {
    edges: Vec<LineEdge>,
    /// First edge of each ring, and one past the last.
    rings: Vec<(usize, usize)>,
}

/// A place on the line, and how far it is from the requested one.
#[derive(Clone, Copy, Debug)]
pub(super) struct Foot {
    pub(super) place: Vector,
    pub(super) distance_m: f64,
    pub(super) edge: LineEdge,
}

/// A place for a turn between two others.
#[derive(Clone, Copy, Debug)]
pub(super) struct Between {
    pub(super) place: Vector,
    pub(super) edge: LineEdge,
    /// By how much the two legs together are longer than requested.
    pub(super) excess_m: f64,
    /// Change of their length with the position along the edge.
    pub(super) slope: f64,
}

/// Rays and edges meet slightly beyond their ends, so that nothing slips out at a corner.
const OVERLENGTH_M: f64 = 1e-7;
/// A ray that leads out this slightly runs along the edge.
const ALONG: f64 = 1e-9;
/// Corners that move the line by less are dropped: plans are drawn to a millimetre, and every edge near a drive is queried.
const STRAIGHT_M: f64 = 0.002;

impl Outline {
    /// The line at which a machine turns that keeps `inset_m` inside the ground's edge (outside, if negative). `None` if
    /// nothing remains of the ground.
    pub fn of(ground: &Region, inset_m: f64) -> Option<Self> {
        let inner = ground.grown_by(-inset_m, Joins::Mitred).ok()?;
        let mut outline = Self {
            edges: Vec::new(),
            rings: Vec::new(),
        };
        for ring in inner.outline_simplified(STRAIGHT_M).into_iter().flatten() {
            let first = outline.edges.len();
            for pair in ring.windows(2) {
                if let Some(edge) = Edge::between(pair[0].into(), pair[1].into()) {
                    outline.edges.push(LineEdge {
                        edge,
                        ring: outline.rings.len(),
                        number: outline.edges.len(),
                    });
                }
            }
            outline.rings.push((first, outline.edges.len()));
        }
        (!outline.edges.is_empty()).then_some(outline)
    }

    /// Edges that come within `reach_m` of the box around two places.
    pub(super) fn near(&self, a: Vector, b: Vector, reach_m: f64) -> Near<'_> {
        let low = Vector::new(a.east.min(b.east) - reach_m, a.north.min(b.north) - reach_m);
        let high = Vector::new(a.east.max(b.east) + reach_m, a.north.max(b.north) + reach_m);
        let edges = self.edges.iter().copied().filter(|edge| {
            let end = edge.end();
            edge.from.east.max(end.east) >= low.east
                && edge.from.east.min(end.east) <= high.east
                && edge.from.north.max(end.north) >= low.north
                && edge.from.north.min(end.north) <= high.north
        });
        Near {
            outline: self,
            edges: edges.collect(),
        }
    }
}

/// The edges near an interval.
#[derive(Debug)]
pub(super) struct Near<'a> {
    outline: &'a Outline,
    edges: Vec<LineEdge>,
}

impl Near<'_> {
    /// Where a ray leads out, within a distance. A start up to `behind_m` outside counts as on the line.
    pub(super) fn cast(&self, from: Vector, heading: Vector, within_m: f64, behind_m: f64) -> Option<Foot> {
        let mut best: Option<(f64, usize)> = None;
        let mut best_m = within_m;
        for (number, edge) in self.edges.iter().enumerate() {
            // Positive if the heading leads out to the right of the edge.
            let outward = heading.cross(edge.along);
            if outward <= ALONG {
                continue;
            }
            let gap = edge.from - from;
            let distance_m = gap.cross(edge.along) / outward;
            // Behind, measured at right angles to the edge.
            if distance_m > best_m || distance_m * outward < -behind_m {
                continue;
            }
            let along_m = gap.cross(heading) / outward;
            if (-OVERLENGTH_M..=edge.length_m + OVERLENGTH_M).contains(&along_m) {
                best_m = distance_m;
                best = Some((distance_m, number));
            }
        }
        best.map(|(distance_m, number)| {
            let distance_m = distance_m.max(0.0);
            Foot {
                place: from + heading * distance_m,
                distance_m,
                edge: self.edges[number],
            }
        })
    }

    /// True if the straight way between two places stays on the ground; `slack_m` is how far outside its end may lie.
    pub(super) fn is_free(&self, from: Vector, to: Vector, slack_m: f64) -> bool {
        let step = to - from;
        let length_m = step.length();
        let Some(heading) = step.unit() else { return true };
        self.edges.iter().all(|edge| {
            let outward = heading.cross(edge.along);
            if outward <= ALONG {
                return true;
            }
            let gap = edge.from - from;
            let distance_m = gap.cross(edge.along) / outward;
            let left_m = (length_m - distance_m) * outward;
            if distance_m < OVERLENGTH_M || left_m <= slack_m {
                return true;
            }
            let along_m = gap.cross(heading) / outward;
            !(-OVERLENGTH_M..=edge.length_m + OVERLENGTH_M).contains(&along_m)
        })
    }

    /// The nearest place on the line.
    pub(super) fn foot(&self, place: Vector) -> Option<Foot> {
        let mut best: Option<Foot> = None;
        for edge in &self.edges {
            let along_m = (place - edge.from).dot(edge.along).clamp(0.0, edge.length_m);
            let foot = edge.from + edge.along * along_m;
            let distance_m = (place - foot).length();
            if best.is_none_or(|best| distance_m < best.distance_m) {
                best = Some(Foot {
                    place: foot,
                    distance_m,
                    edge: *edge,
                });
            }
        }
        best
    }

    /// Places on the line whose distances from `a` and `b` add up to `length_m`, and those where the sum touches it from
    /// above by no more than `most_excess_m`.
    pub(super) fn between(
        &self,
        a: Vector,
        b: Vector,
        length_m: f64,
        most_excess_m: f64,
        found: &mut Vec<Between>,
    ) {
        found.clear();
        if length_m.is_nan() || length_m <= 0.0 {
            return;
        }
        for edge in &self.edges {
            let (to_a, to_b) = (a - edge.from, b - edge.from);
            // |P b| = alpha + beta s for P on the ellipse at way s along the edge.
            let beta = (to_a - to_b).dot(edge.along) / length_m;
            let alpha = (length_m * length_m - to_a.dot(to_a) + to_b.dot(to_b)) / (2.0 * length_m);
            let square = 1.0 - beta * beta;
            if square < 1e-9 {
                continue;
            }
            let middle = (to_b.dot(edge.along) + alpha * beta) / square;
            let inside = middle * middle - (to_b.dot(to_b) - alpha * alpha) / square;
            let mut push = |along_m: f64| {
                if !(0.0..=edge.length_m).contains(&along_m) {
                    return;
                }
                let place = edge.from + edge.along * along_m;
                let (from_a, from_b) = (place - a, place - b);
                let excess_m = from_a.length() + from_b.length() - length_m;
                if excess_m.abs() <= most_excess_m.max(1e-6) {
                    let slope = from_a
                        .unit()
                        .zip(from_b.unit())
                        .map_or(0.0, |(one, two)| edge.along.dot(one + two));
                    found.push(Between {
                        place,
                        edge: *edge,
                        excess_m,
                        slope,
                    });
                }
            };
            if inside > 0.0 {
                let half = inside.sqrt();
                push(middle - half);
                push(middle + half);
            } else {
                push(middle);
            }
        }
    }

    /// Corners of the way along the line from one foot to another, the shorter way round, and its length. `None` if the feet
    /// are on different rings or there are more than `most` corners.
    pub(super) fn along(&self, from: &Foot, to: &Foot, most: usize) -> Option<(Vec<Vector>, f64)> {
        if from.edge.ring != to.edge.ring {
            return None;
        }
        let (first, end) = self.outline.rings[from.edge.ring];
        let count = end - first;
        let edges = &self.outline.edges;
        let forwards = |start: &Foot, goal: &Foot| -> Option<(Vec<Vector>, f64)> {
            let mut corners = Vec::new();
            let mut number = start.edge.number;
            let mut at = start.place;
            let mut length_m = 0.0;
            // On one edge, but backwards: go the long way round.
            let mut is_first = (goal.place - start.place).dot(start.edge.along) < 0.0;
            while number != goal.edge.number || is_first {
                is_first = false;
                if corners.len() == most {
                    return None;
                }
                let corner = edges[number].end();
                length_m += (corner - at).length();
                corners.push(corner);
                at = corner;
                number = first + (number - first + 1) % count;
            }
            Some((corners, length_m + (goal.place - at).length()))
        };
        let onwards = forwards(from, to);
        let backwards = forwards(to, from).map(|(mut corners, length_m)| {
            corners.reverse();
            (corners, length_m)
        });
        match (onwards, backwards) {
            (Some(one), Some(two)) => Some(if one.1 <= two.1 { one } else { two }),
            (one, two) => one.or(two),
        }
    }
}
