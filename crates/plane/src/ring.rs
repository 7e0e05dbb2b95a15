//! Small exact helpers on closed rings.

use geo::{Intersects, Kernel, Orientation};
use geo_types::{Coord, Line};
use rstar::primitives::{CachedEnvelope, GeomWithData, Rectangle};
use rstar::{AABB, RTree};
use tussock_types::Place;

/// Points closer than this are one point: nothing on a lawn is smaller than a micrometre.
pub(crate) const SAME_POINT_M: f64 = 1e-6;
/// Rings with less area than this are dropped: a square millimetre.
pub(crate) const DEGENERATE_M2: f64 = 1e-6;

pub(crate) fn coord(place: Place) -> Coord<f64> {
    Coord {
        x: place.east_m,
        y: place.north_m,
    }
}

pub(crate) fn place(coord: Coord<f64>) -> Place {
    Place::new(coord.x, coord.y)
}

/// On which side of the line from `a` to `b` is `c`? Adaptive exact arithmetic (Shewchuk 1997).
pub(crate) fn side(a: Coord<f64>, b: Coord<f64>, c: Coord<f64>) -> Orientation {
    geo::algorithm::kernels::RobustKernel::orient2d(a, b, c)
}

/// True when the ray from `c` towards the east crosses the edge, by the half-open rule: an edge owns its lower end,
/// and ground owns its western edge. Exact.
pub(crate) fn ray_crosses(a: Coord<f64>, b: Coord<f64>, c: Coord<f64>) -> bool {
    if (a.y > c.y) == (b.y > c.y) {
        return false;
    }
    let (low, high) = if a.y < b.y { (a, b) } else { (b, a) };
    // With the edge pointing up, its west is on the left.
    side(low, high, c) == Orientation::CounterClockwise
}

/// Edges of a closed ring, searchable by place.
pub(crate) struct Edges<'a> {
    corners: &'a [Coord<f64>],
    tree: RTree<CachedEnvelope<GeomWithData<Rectangle<[f64; 2]>, usize>>>,
}

impl<'a> Edges<'a> {
    pub(crate) fn of(corners: &'a [Coord<f64>]) -> Self {
        let boxes = corners.windows(2).enumerate().map(|(number, edge)| {
            let rectangle = Rectangle::from_aabb(envelope(edge[0], edge[1]));
            CachedEnvelope::new(GeomWithData::new(rectangle, number))
        });
        let tree = RTree::bulk_load(boxes.collect());
        Self { corners, tree }
    }

    pub(crate) fn edge(&self, number: usize) -> Line<f64> {
        Line::new(self.corners[number], self.corners[number + 1])
    }

    /// Later edges whose boxes meet that of this one, in order.
    pub(crate) fn near_after(&self, number: usize) -> Vec<usize> {
        let bounds = envelope(self.corners[number], self.corners[number + 1]);
        let near = self.tree.locate_in_envelope_intersecting(bounds);
        let mut later: Vec<usize> = near
            .map(|entry| entry.data)
            .filter(|&other| other > number)
            .collect();
        later.sort_unstable();
        later
    }
}

fn envelope(from: Coord<f64>, to: Coord<f64>) -> AABB<[f64; 2]> {
    AABB::from_corners([from.x, from.y], [to.x, to.y])
}

/// True if no two edges of a closed ring meet, except neighbours. Gives `geo`'s answer without looking at every pair.
pub(crate) fn is_simple(corners: &[Coord<f64>]) -> bool {
    let edges = Edges::of(corners);
    (0..corners.len().saturating_sub(1)).all(|first| {
        edges.near_after(first).into_iter().all(|second| {
            let (one, other) = (edges.edge(first), edges.edge(second));
            one.start == other.end || one.end == other.start || !one.intersects(&other)
        })
    })
}

/// Area of a closed ring, positive anticlockwise (shoelace formula, shifted to the first corner to keep digits).
pub(crate) fn signed_area_m2(ring: &[Coord<f64>]) -> f64 {
    let Some(&first) = ring.first() else { return 0.0 };
    let doubled: f64 = ring
        .windows(2)
        .map(|edge| {
            let (a, b) = (edge[0] - first, edge[1] - first);
            a.x * b.y - b.x * a.y
        })
        .sum();
    doubled / 2.0
}
