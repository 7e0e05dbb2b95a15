//! How far is it to the edge in this direction?
//!
//! The machine's middle stays within the turning region: the boundary (or else the lawn as drawn) moved by the setback,
//! without zones and obstacles, which are moved the other way. Rays are cast against its edges one by one: gardens have tens
//! to hundreds of edges, for which a loop is faster than an index.
//!
//! Exact up to rounding: a ray ends at the first edge that leads out of the region. Edges that lead in do not end it, so a
//! machine standing on an edge needs no special case; edges are a nanometre longer than drawn, so that no ray slips out at a
//! corner.

use tussock_plane::Vector;
use tussock_plane::{Joins, Region, RegionError, Site};

/// Edges are longer by this at both ends.
const OVERLENGTH_M: f64 = 1e-9;
/// A ray that leads out this slightly runs along the edge. Over 100 m it ends a tenth of a micrometre outside.
const ALONG: f64 = 1e-9;
/// An edge this far behind still counts as the one on which the machine stands.
const BEHIND_M: f64 = 1e-6;
/// A way around a corner keeps this far from it, so that neither of its edges is met.
const CLEAR_OF_CORNER_M: f64 = 1e-5;
/// Smaller parts hold no machine.
const SMALLEST_PART_M2: f64 = 0.01;

/// Ground on which the machine's middle can be: the boundary (or else the lawn as drawn) moved out by `past_boundary_m` (in,
/// if negative), without exclusion zones and obstacles, which are moved the other way.
///
/// # Errors
/// Errors of the polygon engine.
pub fn turning_region(site: &Site, past_boundary_m: f64) -> Result<Region, RegionError> {
    let outline = site.boundary.as_ref().unwrap_or(&site.drawn_lawn);
    let outer = outline.grown_by(past_boundary_m, Joins::Mitred)?;
    let mut kept_out = Region::empty();
    for zone in site.exclusions.iter().chain(&site.obstacles) {
        kept_out = kept_out.union(&zone.shape.grown_by(-past_boundary_m, Joins::Mitred)?)?;
    }
    outer.minus(&kept_out)
}

/// One straight edge, with ground on its left.
#[derive(Clone, Copy, Debug)]
pub(crate) struct GroundEdge {
    pub(crate) from: Vector,
    /// Unit vector along it.
    pub(crate) along: Vector,
    pub(crate) length_m: f64,
    /// Number of its ring in the part.
    pub(crate) ring: usize,
    /// Distance along the ring to its start.
    pub(crate) ring_m: f64,
}

impl GroundEdge {
    /// Unit normal into the ground.
    pub(crate) const fn inwards(&self) -> Vector {
        self.along.left()
    }
}

/// Where a ray ends.
#[derive(Clone, Copy, Debug)]
pub(crate) struct RayHit {
    pub(crate) distance_m: f64,
    /// Number of the edge in the part.
    pub(crate) edge: usize,
}

/// A place on a ring.
#[derive(Clone, Copy, Debug)]
pub(crate) struct OnRing {
    pub(crate) edge: usize,
    pub(crate) ring: usize,
    /// Distance along the ring.
    pub(crate) ring_m: f64,
    pub(crate) place: Vector,
    pub(crate) distance_m: f64,
}

/// A connected part of the turning region.
#[derive(Clone, Debug)]
pub(crate) struct GroundPart {
    pub(crate) edges: Vec<GroundEdge>,
    /// Closed corners of each ring.
    pub(crate) rings: Vec<Vec<Vector>>,
    pub(crate) region: Region,
}

impl GroundPart {
    fn new(region: Region) -> Self {
        let rings: Vec<Vec<Vector>> = region
            .rings()
            .into_iter()
            .flatten()
            .map(|ring| ring.into_iter().map(Vector::from).collect())
            .collect();
        let mut edges = Vec::new();
        for (number, ring) in rings.iter().enumerate() {
            let mut ring_m = 0.0;
            for pair in ring.windows(2) {
                let step = pair[1] - pair[0];
                let length_m = step.length();
                if let Some(along) = step.unit() {
                    edges.push(GroundEdge {
                        from: pair[0],
                        along,
                        length_m,
                        ring: number,
                        ring_m,
                    });
                }
                ring_m += length_m;
            }
        }
        Self { edges, rings, region }
    }

    /// The parts of a region that can hold a machine.
    pub(crate) fn all_of(region: &Region) -> Vec<Self> {
        region
            .parts()
            .into_iter()
            .filter(|part| part.area_m2() > SMALLEST_PART_M2)
            .map(Self::new)
            .collect()
    }

    /// Where a ray from a place on this ground leaves it; `None` if it does not within the distance.
    pub(crate) fn cast(&self, from: Vector, heading: Vector, within_m: f64) -> Option<RayHit> {
        let mut best: Option<RayHit> = None;
        let mut best_m = within_m;
        for (number, edge) in self.edges.iter().enumerate() {
            // Positive if the heading leads out to the right of the edge.
            let outward = heading.cross(edge.along);
            if outward <= ALONG {
                continue;
            }
            let gap = edge.from - from;
            let distance_m = gap.cross(edge.along) / outward;
            if distance_m < -BEHIND_M || distance_m > best_m {
                continue;
            }
            let along_m = gap.cross(heading) / outward;
            if along_m < -OVERLENGTH_M || along_m > edge.length_m + OVERLENGTH_M {
                continue;
            }
            best_m = distance_m.max(0.0);
            best = Some(RayHit {
                distance_m: best_m,
                edge: number,
            });
        }
        best
    }

    /// True if the straight way between two places stays on this ground.
    pub(crate) fn is_free(&self, from: Vector, to: Vector) -> bool {
        let step = to - from;
        let length_m = step.length();
        match step.unit() {
            None => true,
            Some(heading) => self
                .cast(from, heading, length_m)
                .is_none_or(|hit| hit.distance_m > length_m - 1e-7),
        }
    }

    /// The shortest way on this ground, over corners that project into it (Dijkstra 1959 on the visibility graph). Without
    /// its start; `None` if there is none.
    pub(crate) fn shortest_way(&self, from: Vector, to: Vector) -> Option<Vec<Vector>> {
        let mut nodes = vec![from, to];
        for ring in &self.rings {
            let corners = ring.len().saturating_sub(1);
            nodes.extend((0..corners).filter_map(|number| {
                let (before, here, after) = (
                    ring[(number + corners - 1) % corners],
                    ring[number],
                    ring[number + 1],
                );
                let (comes, goes) = ((here - before).unit()?, (after - here).unit()?);
                let inwards = (comes.left() + goes.left()).unit()?;
                (comes.cross(goes) < 0.0).then(|| here + inwards * CLEAR_OF_CORNER_M)
            }));
        }
        let mut distance_m = vec![f64::INFINITY; nodes.len()];
        let mut came = vec![0; nodes.len()];
        let mut is_settled = vec![false; nodes.len()];
        distance_m[0] = 0.0;
        loop {
            let open = (0..nodes.len()).filter(|&node| !is_settled[node] && distance_m[node].is_finite());
            let node = open.min_by(|&a, &b| distance_m[a].total_cmp(&distance_m[b]))?;
            if node == 1 {
                break;
            }
            is_settled[node] = true;
            for next in 0..nodes.len() {
                let through_m = distance_m[node] + (nodes[next] - nodes[node]).length();
                if !is_settled[next] && through_m < distance_m[next] && self.is_free(nodes[node], nodes[next])
                {
                    distance_m[next] = through_m;
                    came[next] = node;
                }
            }
        }
        let mut way = Vec::new();
        let mut node = 1;
        while node != 0 {
            way.push(nodes[node]);
            node = came[node];
        }
        way.reverse();
        Some(way)
    }

    /// The nearest place on any ring.
    pub(crate) fn nearest_on_ring(&self, place: Vector) -> Option<OnRing> {
        self.nearest_where(place, |_| true)
    }

    /// The nearest place on a ring.
    pub(crate) fn nearest_on(&self, place: Vector, ring: usize) -> Option<OnRing> {
        self.nearest_where(place, |edge| edge.ring == ring)
    }

    fn nearest_where(&self, place: Vector, counts: impl Fn(&GroundEdge) -> bool) -> Option<OnRing> {
        let mut best: Option<OnRing> = None;
        for (number, edge) in self.edges.iter().enumerate().filter(|(_, edge)| counts(edge)) {
            let along_m = (place - edge.from).dot(edge.along).clamp(0.0, edge.length_m);
            let foot = edge.from + edge.along * along_m;
            let distance_m = (place - foot).length();
            if best.is_none_or(|best| distance_m < best.distance_m) {
                best = Some(OnRing {
                    edge: number,
                    ring: edge.ring,
                    ring_m: edge.ring_m + along_m,
                    place: foot,
                    distance_m,
                });
            }
        }
        best
    }

    /// Length of a ring.
    pub(crate) fn ring_length_m(&self, ring: usize) -> f64 {
        self.edges
            .iter()
            .filter(|edge| edge.ring == ring)
            .map(|edge| edge.length_m)
            .sum()
    }

    pub(crate) fn contains(&self, place: Vector) -> bool {
        self.region.contains(place.into())
    }
}

/// A line that can be followed.
#[derive(Clone, Debug)]
pub(crate) struct GuideLine {
    pub(crate) corners: Vec<Vector>,
    /// Distance to each corner.
    pub(crate) at_m: Vec<f64>,
}

impl GuideLine {
    pub(crate) fn new(corners: Vec<Vector>) -> Self {
        let mut at_m = Vec::with_capacity(corners.len());
        let mut sum_m = 0.0;
        for (number, corner) in corners.iter().enumerate() {
            if number > 0 {
                sum_m += (*corner - corners[number - 1]).length();
            }
            at_m.push(sum_m);
        }
        Self { corners, at_m }
    }

    pub(crate) fn length_m(&self) -> f64 {
        self.at_m.last().copied().unwrap_or(0.0)
    }

    /// The place at this distance along it.
    pub(crate) fn place(&self, along_m: f64) -> Vector {
        let last = self.corners.len() - 1;
        let after = self
            .at_m
            .partition_point(|&at_m| at_m <= along_m)
            .clamp(1, last.max(1));
        let (from, to) = (self.corners[after - 1], self.corners[after.min(last)]);
        let length_m = self.at_m[after.min(last)] - self.at_m[after - 1];
        if length_m <= 0.0 {
            return from;
        }
        from + (to - from) * ((along_m - self.at_m[after - 1]) / length_m).clamp(0.0, 1.0)
    }

    /// Corners on the way from one place along it to another, including that place.
    pub(crate) fn way(&self, from_m: f64, to_m: f64) -> Vec<Vector> {
        let mut way: Vec<Vector> = self
            .corners
            .iter()
            .zip(&self.at_m)
            .filter(|&(_, &at_m)| at_m > from_m.min(to_m) && at_m < from_m.max(to_m))
            .map(|(corner, _)| *corner)
            .collect();
        if to_m < from_m {
            way.reverse();
        }
        way.push(self.place(to_m));
        way
    }

    /// The first crossing by a straight way: distance on that way and distance along this line.
    pub(crate) fn crossing(
        &self,
        from: Vector,
        heading: Vector,
        after_m: f64,
        within_m: f64,
    ) -> Option<(f64, f64)> {
        let mut best: Option<(f64, f64)> = None;
        for (number, pair) in self.corners.windows(2).enumerate() {
            let piece = pair[1] - pair[0];
            let across = heading.cross(piece);
            if across == 0.0 {
                continue;
            }
            let gap = pair[0] - from;
            let distance_m = gap.cross(piece) / across;
            let part = gap.cross(heading) / across;
            if distance_m > after_m
                && distance_m <= within_m
                && (0.0..=1.0).contains(&part)
                && best.is_none_or(|(best_m, _)| distance_m < best_m)
            {
                best = Some((
                    distance_m,
                    self.at_m[number] + part * (self.at_m[number + 1] - self.at_m[number]),
                ));
            }
        }
        best
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use tussock_types::Place;

    fn ell() -> GroundPart {
        let corners = [
            (0.0, 0.0),
            (10.0, 0.0),
            (10.0, 4.0),
            (4.0, 4.0),
            (4.0, 10.0),
            (0.0, 10.0),
        ];
        let ring = corners.map(|(x, y)| Place::new(x, y)).to_vec();
        GroundPart::new(Region::from_rings(vec![vec![ring]]).unwrap())
    }

    #[test]
    fn the_shortest_way_bends_at_the_corner_that_stands_in() {
        let way = ell()
            .shortest_way(Vector::new(9.0, 3.0), Vector::new(3.0, 9.0))
            .unwrap();
        assert_eq!(way.len(), 2);
        assert!((way[0] - Vector::new(4.0, 4.0)).length() < 2e-5);
        assert_eq!(way[1], Vector::new(3.0, 9.0));
        assert_eq!(
            ell()
                .shortest_way(Vector::new(1.0, 1.0), Vector::new(9.0, 3.0))
                .unwrap()
                .len(),
            1
        );
        assert!(
            ell()
                .shortest_way(Vector::new(1.0, 1.0), Vector::new(9.0, 9.0))
                .is_none()
        );
    }

    #[test]
    fn a_ray_from_an_edge_or_a_corner_ends_at_the_far_edge_and_one_that_leads_out_ends_at_once() {
        let ell = ell();
        let cast = |from, heading| ell.cast(from, heading, f64::INFINITY).map(|hit| hit.distance_m);
        assert_eq!(cast(Vector::new(5.0, 0.0), Vector::new(0.0, 1.0)), Some(4.0));
        assert_eq!(cast(Vector::new(0.0, 0.0), Vector::new(1.0, 0.0)), Some(10.0));
        assert_eq!(cast(Vector::new(5.0, 0.0), Vector::new(0.0, -1.0)), Some(0.0));
        assert_eq!(cast(Vector::new(10.0, 4.0), Vector::new(0.6, 0.8)), Some(0.0));
        // Through the projecting corner, and along the edge that ends there.
        let diagonal = cast(Vector::new(0.0, 0.0), Vector::new(0.5_f64.sqrt(), 0.5_f64.sqrt())).unwrap();
        assert!((diagonal - 32.0_f64.sqrt()).abs() < 1e-6);
        assert_eq!(cast(Vector::new(10.0, 4.0), Vector::new(-1.0, 0.0)), Some(10.0));
    }
}
