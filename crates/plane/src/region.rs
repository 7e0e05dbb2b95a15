//! How large is this ground, what is left of it without that zone, and where does the machine's body fit?
//!
//! [`Region`] is the only way to polygon operations. Boolean operations and offsets come from `geo` (whose engine overlays
//! on an integer grid of about a billionth of the extent). They are defined only for valid shapes and can panic on
//! degenerate ones, so every shape is checked and cleaned on the way in, and a panic below becomes an error.
//!
//! Exact: area, bounds, distance to the edge, [`Region::contains`] (exact arithmetic where rounding could decide).
//! Approximate: boolean operations and offsets move corners by less than a micrometre on a garden; round joins are polygons
//! that stay within 0.13 % of the true arc's radius.
//!
//! Cost: operations n log n in corners; `contains` and `edge_distance_m` look at every edge of small shapes; larger ones get
//! an index of edges, built when it is first needed.

use crate::ring::{self, DEGENERATE_M2, SAME_POINT_M};
use geo::algorithm::bool_ops::FillRule;
use geo::algorithm::buffer::{BufferStyle, LineJoin};
use geo::algorithm::line_intersection::line_intersection;
use geo::coordinate_position::CoordPos;
use geo::dimensions::Dimensions;
use geo::{
    BooleanOps, BoundingRect, Buffer, Intersects, LineIntersection, OpType, PreparedGeometry, Relate,
    Simplify,
};
use geo_types::{Coord, LineString, MultiPolygon, Polygon};
use rstar::primitives::Line;
use rstar::{AABB, RTree};
use std::panic::{AssertUnwindSafe, catch_unwind};
use std::sync::{Arc, OnceLock};
use tussock_types::Place;
use tussock_types::math;

/// Shapes with more edges than this get an index of their edges.
const EDGES_WITHOUT_INDEX: usize = 48;
/// Places farther from the origin are refused: the plane itself ends before that.
const FARTHEST_M: f64 = 1e7;
/// Longest piece of a round join, in radii: the polygon stays within 0.13 % of the radius.
const ROUND_PIECE_RADII: f64 = 0.1;
/// Sharpest corner that a mitred join keeps, radians (6 degrees): the tip stays within 20 offsets.
const MITRE_LEAST_RAD: f64 = 0.1;

/// How corners are joined when a region grows (outward corners) or shrinks (inward corners).
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Joins {
    /// With an arc: every point within the distance, and no other.
    Round,
    /// With the two edges drawn on until they meet.
    Mitred,
}

/// Why polygon work was refused or failed.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
#[non_exhaustive]
pub enum RegionError {
    /// A coordinate is not a finite number, or is so large that no plane holds it.
    #[error(
        "part {part}, ring {ring}, corner {corner} lies at {east_m} m east, {north_m} m north; expected finite numbers below {FARTHEST_M} m"
    )]
    NotOnThePlane {
        /// Part of the region, from 0.
        part: usize,
        /// Ring of the part, 0 the outer one.
        ring: usize,
        /// Corner of the ring, from 0.
        corner: usize,
        /// Its east coordinate.
        east_m: f64,
        /// Its north coordinate.
        north_m: f64,
    },
    /// A distance is not a finite number.
    #[error("cannot grow a region by {distance_m} m; expected a finite number below {FARTHEST_M} m")]
    DistanceNotFinite {
        /// The distance.
        distance_m: f64,
    },
    /// The polygon engine gave up.
    #[error("the polygon engine failed at \"{operation}\" on {corners} corners: {reason}")]
    EngineFailed {
        /// The operation that was requested.
        operation: &'static str,
        /// Size of the task.
        corners: usize,
        /// The engine's message.
        reason: String,
    },
}

/// Ground: any number of polygons with holes, in metres; finite, closed, without degenerate rings, valid.
///
/// Outer rings run anticlockwise, holes clockwise. A place on an edge belongs to the ground to the east and north of it, so
/// regions that share an edge share no place.
///
/// # Example
/// ```
/// use tussock_plane::{Joins, Region};
/// use tussock_types::Place;
///
/// # fn main() -> Result<(), tussock_plane::RegionError> {
/// let lawn = Region::from_rings(vec![vec![vec![
///     Place::new(0.0, 0.0),
///     Place::new(40.0, 0.0),
///     Place::new(40.0, 25.0),
///     Place::new(0.0, 25.0),
/// ]]])?;
/// assert_eq!(lawn.area_m2(), 1000.0);
/// assert!((lawn.grown_by(-0.3, Joins::Round)?.area_m2() - 39.4 * 24.4).abs() < 1e-4);
/// # Ok(())
/// # }
/// ```
#[derive(Clone, Debug)]
pub struct Region {
    shape: MultiPolygon<f64>,
    bounds: Option<(Place, Place)>,
    edge_count: usize,
    index: OnceLock<Arc<RTree<Line<[f64; 2]>>>>,
}

impl PartialEq for Region {
    fn eq(&self, other: &Self) -> bool {
        self.shape == other.shape
    }
}

impl Region {
    /// A region from parts, each an outer ring and its holes. Rings need not be closed, may run in either direction, and are
    /// dropped if they enclose less than a square millimetre. Rings that cross or overlap are resolved: whatever an outer
    /// ring encloses, and no hole of that part removes, is ground.
    ///
    /// # Errors
    /// [`RegionError::NotOnThePlane`] for numbers that are not finite; [`RegionError::EngineFailed`] if the polygon engine
    /// cannot resolve the rings.
    pub fn from_rings(parts: Vec<Vec<Vec<Place>>>) -> Result<Self, RegionError> {
        for (part, rings) in parts.iter().enumerate() {
            for (ring, corners) in rings.iter().enumerate() {
                for (corner, place) in corners.iter().enumerate() {
                    let (east_m, north_m) = (place.east_m, place.north_m);
                    // Written so that NaN fails too.
                    if !(east_m.abs() <= FARTHEST_M && north_m.abs() <= FARTHEST_M) {
                        return Err(RegionError::NotOnThePlane {
                            part,
                            ring,
                            corner,
                            east_m,
                            north_m,
                        });
                    }
                }
            }
        }
        let shape: MultiPolygon<f64> = parts
            .into_iter()
            .map(|rings| {
                let mut rings = rings
                    .into_iter()
                    .map(|corners| LineString::new(corners.into_iter().map(ring::coord).collect()));
                let outer = rings.next().unwrap_or_else(|| LineString::new(Vec::new()));
                Polygon::new(outer, rings.collect())
            })
            .collect();
        // By width, not by area: the loops of a ring that crosses itself can cancel out.
        let shape = cleaned_by(shape, |corners| width_m(corners) > SAME_POINT_M);
        let corners = corner_count(&shape);
        let is_valid = catch("validity", corners, || is_valid(&shape))?;
        if is_valid {
            return Ok(Self::trusted(cleaned(shape)));
        }
        let shape = catch("putting rings in order", corners, || in_order(&shape))?;
        Ok(Self::trusted(cleaned(shape)))
    }

    /// No ground at all.
    pub fn empty() -> Self {
        Self::trusted(MultiPolygon::new(Vec::new()))
    }

    /// A disc, as a regular polygon with the disc's own area.
    ///
    /// # Errors
    /// [`RegionError::NotOnThePlane`] if the centre or the radius is not finite.
    pub fn disc(middle: Place, radius_m: f64) -> Result<Self, RegionError> {
        const CORNERS: usize = 48;
        let step_rad = std::f64::consts::TAU / CORNERS as f64;
        let corner_m = radius_m * (step_rad / math::sin(step_rad)).sqrt();
        let ring = (0..CORNERS)
            .map(|corner| {
                let (sin, cos) = math::sin_cos(corner as f64 * step_rad);
                Place::new(middle.east_m + corner_m * cos, middle.north_m + corner_m * sin)
            })
            .collect();
        Self::from_rings(vec![vec![ring]])
    }

    /// Wraps a shape that is known to be clean and valid.
    fn trusted(shape: MultiPolygon<f64>) -> Self {
        let mut bounds: Option<(Place, Place)> = None;
        for point in shape.iter().flat_map(|polygon| polygon.exterior().coords()) {
            let (low, high) = bounds.get_or_insert((ring::place(*point), ring::place(*point)));
            low.east_m = low.east_m.min(point.x);
            low.north_m = low.north_m.min(point.y);
            high.east_m = high.east_m.max(point.x);
            high.north_m = high.north_m.max(point.y);
        }
        let edge_count = rings_of(&shape).map(|ring| ring.0.len().saturating_sub(1)).sum();
        Self {
            shape,
            bounds,
            edge_count,
            index: OnceLock::new(),
        }
    }

    /// True without ground.
    pub fn is_empty(&self) -> bool {
        self.shape.0.is_empty()
    }

    /// Area, without holes.
    pub fn area_m2(&self) -> f64 {
        rings_of(&self.shape)
            .map(|ring| ring::signed_area_m2(&ring.0))
            .sum()
    }

    /// Length of all edges, including those of holes.
    pub fn perimeter_m(&self) -> f64 {
        self.edges().map(|(from, to)| from.distance_m(to)).sum()
    }

    /// True when a place is on this ground. Exact; false for NaN.
    pub fn contains(&self, place: Place) -> bool {
        let Some((low, high)) = self.bounds else {
            return false;
        };
        let inside_bounds = (low.east_m..=high.east_m).contains(&place.east_m)
            && (low.north_m..=high.north_m).contains(&place.north_m);
        if !inside_bounds {
            return false;
        }
        let point = ring::coord(place);
        let crossings = match self.edge_index() {
            None => rings_of(&self.shape)
                .flat_map(|ring| ring.0.windows(2))
                .filter(|edge| ring::ray_crosses(edge[0], edge[1], point))
                .count(),
            Some(index) => {
                let ray = AABB::from_corners([point.x, point.y], [high.east_m, point.y]);
                index
                    .locate_in_envelope_intersecting(ray)
                    .filter(|edge| ring::ray_crosses(edge.from.into(), edge.to.into(), point))
                    .count()
            }
        };
        crossings % 2 == 1
    }

    /// Distance to the nearest edge, from inside or outside; infinite if there is no edge, NaN for NaN.
    pub fn edge_distance_m(&self, place: Place) -> f64 {
        if place.east_m.is_nan() || place.north_m.is_nan() {
            return f64::NAN;
        }
        match self.edge_index() {
            Some(index) if place.east_m.is_finite() && place.north_m.is_finite() => index
                .nearest_neighbor([place.east_m, place.north_m])
                .map_or(f64::INFINITY, |edge| {
                    let [from, to] = [edge.from, edge.to].map(|p| Place::new(p[0], p[1]));
                    place.off_piece_m(from, to)
                }),
            _ => self
                .edges()
                .map(|(from, to)| place.off_piece_m(from, to))
                .fold(f64::INFINITY, f64::min),
        }
    }

    /// Length of a line within this ground.
    pub fn length_inside_m(&self, line: &[Place]) -> f64 {
        line.windows(2)
            .map(|piece| self.piece_inside_m(piece[0], piece[1]))
            .sum()
    }

    fn piece_inside_m(&self, from: Place, to: Place) -> f64 {
        let Some((low, high)) = self.bounds else {
            return 0.0;
        };
        let (a, b) = (ring::coord(from), ring::coord(to));
        let apart = a.x.max(b.x) < low.east_m
            || a.x.min(b.x) > high.east_m
            || a.y.max(b.y) < low.north_m
            || a.y.min(b.y) > high.north_m;
        let length_m = from.distance_m(to);
        if apart || !length_m.is_finite() || length_m == 0.0 {
            return 0.0;
        }
        // Between two edges that it meets, the piece is wholly inside or wholly outside: its middle decides.
        let mut cuts = vec![0.0, 1.0];
        let along = |point: Coord<f64>| {
            ((point.x - a.x) * (b.x - a.x) + (point.y - a.y) * (b.y - a.y)) / (length_m * length_m)
        };
        let mut meet = |edge: (Coord<f64>, Coord<f64>)| match line_intersection(
            geo_types::Line::new(a, b),
            geo_types::Line::new(edge.0, edge.1),
        ) {
            Some(LineIntersection::SinglePoint { intersection, .. }) => cuts.push(along(intersection)),
            Some(LineIntersection::Collinear { intersection }) => {
                cuts.extend([along(intersection.start), along(intersection.end)]);
            }
            None => {}
        };
        match self.edge_index() {
            None => self
                .edges()
                .for_each(|(p, q)| meet((ring::coord(p), ring::coord(q)))),
            Some(index) => index
                .locate_in_envelope_intersecting(AABB::from_corners([a.x, a.y], [b.x, b.y]))
                .for_each(|edge| meet((edge.from.into(), edge.to.into()))),
        }
        cuts.sort_unstable_by(f64::total_cmp);
        let middle = |share: f64| Place::new(a.x + share * (b.x - a.x), a.y + share * (b.y - a.y));
        cuts.windows(2)
            .filter(|cut| cut[1] > cut[0] && self.contains(middle((cut[0] + cut[1]) / 2.0)))
            .map(|cut| (cut[1] - cut[0]) * length_m)
            .sum()
    }

    /// South-western and north-eastern corner of the smallest upright box around it; `None` when empty.
    pub fn bounds(&self) -> Option<(Place, Place)> {
        self.bounds
    }

    /// Centre of mass; `None` if empty.
    pub fn centroid(&self) -> Option<Place> {
        let (low, _) = self.bounds?;
        let (mut doubled_m2, mut east_m3, mut north_m3) = (0.0, 0.0, 0.0);
        let origin = ring::coord(low);
        for edge in rings_of(&self.shape).flat_map(|ring| ring.0.windows(2)) {
            let (a, b) = (edge[0] - origin, edge[1] - origin);
            let cross = a.x * b.y - b.x * a.y;
            doubled_m2 += cross;
            east_m3 += cross * (a.x + b.x);
            north_m3 += cross * (a.y + b.y);
        }
        Some(Place::new(
            low.east_m + east_m3 / (3.0 * doubled_m2),
            low.north_m + north_m3 / (3.0 * doubled_m2),
        ))
    }

    /// Ground that is in this region or in the other.
    ///
    /// # Errors
    /// [`RegionError::EngineFailed`].
    pub fn union(&self, other: &Self) -> Result<Self, RegionError> {
        if other.is_empty() {
            return Ok(self.clone());
        }
        if self.is_empty() {
            return Ok(other.clone());
        }
        self.overlaid(other, OpType::Union, "union")
    }

    /// The ground of this region that is not in the other.
    ///
    /// # Errors
    /// [`RegionError::EngineFailed`].
    pub fn minus(&self, other: &Self) -> Result<Self, RegionError> {
        if self.is_empty() || other.is_empty() {
            return Ok(self.clone());
        }
        self.overlaid(other, OpType::Difference, "difference")
    }

    /// The ground that is in both.
    ///
    /// # Errors
    /// [`RegionError::EngineFailed`].
    pub fn intersect(&self, other: &Self) -> Result<Self, RegionError> {
        if self.is_empty() || other.is_empty() {
            return Ok(Self::empty());
        }
        self.overlaid(other, OpType::Intersection, "intersection")
    }

    /// Union of many regions.
    ///
    /// # Errors
    /// [`RegionError::EngineFailed`].
    pub fn union_of<'a>(regions: impl IntoIterator<Item = &'a Self>) -> Result<Self, RegionError> {
        regions
            .into_iter()
            .try_fold(Self::empty(), |sum, region| sum.union(region))
    }

    /// All ground within a distance of this region or, for a negative distance, all ground of it that is farther than that
    /// from its edge.
    ///
    /// # Errors
    /// [`RegionError::DistanceNotFinite`], [`RegionError::EngineFailed`].
    pub fn grown_by(&self, distance_m: f64, joins: Joins) -> Result<Self, RegionError> {
        if distance_m.is_nan() || distance_m.abs() > FARTHEST_M {
            return Err(RegionError::DistanceNotFinite { distance_m });
        }
        if self.is_empty() || distance_m == 0.0 {
            return Ok(self.clone());
        }
        let join = match joins {
            Joins::Round => LineJoin::Round(ROUND_PIECE_RADII),
            Joins::Mitred => LineJoin::Miter(MITRE_LEAST_RAD),
        };
        let shape = catch("offset", self.edge_count, || {
            self.shape
                .buffer_with_style(BufferStyle::new(distance_m).line_join(join))
        })?;
        Ok(Self::trusted(cleaned(shape)))
    }

    /// Each connected polygon as a region of its own.
    pub fn parts(&self) -> Vec<Self> {
        self.shape
            .iter()
            .map(|polygon| Self::trusted(MultiPolygon::new(vec![polygon.clone()])))
            .collect()
    }

    /// The same without its holes.
    pub fn filled(&self) -> Self {
        let outer = |polygon: &Polygon<f64>| Polygon::new(polygon.exterior().clone(), Vec::new());
        let shape: MultiPolygon<f64> = self.shape.iter().map(outer).collect();
        // Only a part that lay in another part's hole can overlap now.
        match self.shape.0.len() {
            0 | 1 => Self::trusted(shape),
            _ => Self::trusted(
                catch("filling holes", self.edge_count, || cleaned(in_order(&shape))).unwrap_or(shape),
            ),
        }
    }

    /// Closed rings of each part: the outer one anticlockwise, then holes clockwise.
    pub fn rings(&self) -> Vec<Vec<Vec<Place>>> {
        rings_as_places(&self.shape)
    }

    /// Closed rings of each part, without corners whose removal moves the line by less than the tolerance (Douglas & Peucker
    /// 1973). For drawing: rings that come closer to each other than that may touch.
    pub fn outline_simplified(&self, tolerance_m: f64) -> Vec<Vec<Vec<Place>>> {
        if tolerance_m.is_nan() || tolerance_m <= 0.0 {
            return self.rings();
        }
        rings_as_places(&cleaned(self.shape.simplify(tolerance_m)))
    }

    /// Every edge, ground on its left.
    pub fn edges(&self) -> impl Iterator<Item = (Place, Place)> {
        rings_of(&self.shape)
            .flat_map(|ring| ring.0.windows(2))
            .map(|edge| (ring::place(edge[0]), ring::place(edge[1])))
    }

    /// The shape as `geo` has it.
    pub fn as_multi_polygon(&self) -> &MultiPolygon<f64> {
        &self.shape
    }

    fn overlaid(&self, other: &Self, rule: OpType, operation: &'static str) -> Result<Self, RegionError> {
        let shape = catch(operation, self.edge_count + other.edge_count, || {
            self.shape.boolean_op(&other.shape, rule)
        })?;
        Ok(Self::trusted(cleaned(shape)))
    }

    fn edge_index(&self) -> Option<&RTree<Line<[f64; 2]>>> {
        if self.edge_count <= EDGES_WITHOUT_INDEX {
            return None;
        }
        let build = || {
            let edges = self
                .edges()
                .map(|(from, to)| Line::new([from.east_m, from.north_m], [to.east_m, to.north_m]))
                .collect();
            Arc::new(RTree::bulk_load(edges))
        };
        Some(self.index.get_or_init(build))
    }
}

pub(crate) fn rings_of(shape: &MultiPolygon<f64>) -> impl Iterator<Item = &LineString<f64>> {
    shape
        .iter()
        .flat_map(|polygon| std::iter::once(polygon.exterior()).chain(polygon.interiors()))
}

fn rings_as_places(shape: &MultiPolygon<f64>) -> Vec<Vec<Vec<Place>>> {
    let places = |ring: &LineString<f64>| ring.coords().map(|point| ring::place(*point)).collect();
    shape
        .iter()
        .map(|polygon| {
            std::iter::once(polygon.exterior())
                .chain(polygon.interiors())
                .map(places)
                .collect()
        })
        .collect()
}

fn corner_count(shape: &MultiPolygon<f64>) -> usize {
    rings_of(shape).map(|ring| ring.0.len()).sum()
}

/// Drops repeated corners and rings that enclose nothing, closes rings, and orients them correctly.
fn cleaned(shape: MultiPolygon<f64>) -> MultiPolygon<f64> {
    cleaned_by(shape, |corners| {
        ring::signed_area_m2(corners).abs() >= DEGENERATE_M2
    })
}

fn cleaned_by(shape: MultiPolygon<f64>, holds_ground: impl Fn(&[Coord<f64>]) -> bool) -> MultiPolygon<f64> {
    shape
        .into_iter()
        .filter_map(|polygon| {
            let (outer, holes) = polygon.into_inner();
            let outer = cleaned_ring(outer, 1.0, &holds_ground)?;
            let holes = holes.into_iter();
            let holes = holes
                .filter_map(|hole| cleaned_ring(hole, -1.0, &holds_ground))
                .collect();
            Some(Polygon::new(outer, holes))
        })
        .collect()
}

fn cleaned_ring(
    ring: LineString<f64>,
    turn: f64,
    holds_ground: impl Fn(&[Coord<f64>]) -> bool,
) -> Option<LineString<f64>> {
    let near = |a: Coord<f64>, b: Coord<f64>| (a.x - b.x).abs().max((a.y - b.y).abs()) <= SAME_POINT_M;
    let mut corners = ring.0;
    corners.dedup_by(|later, kept| near(*later, *kept));
    while corners.len() > 1 && near(corners[0], corners[corners.len() - 1]) {
        corners.pop();
    }
    if corners.len() < 3 {
        return None;
    }
    corners.push(corners[0]);
    if !holds_ground(&corners) {
        return None;
    }
    if ring::signed_area_m2(&corners) * turn < 0.0 {
        corners.reverse();
    }
    Some(LineString::new(corners))
}

/// Largest distance of a corner from the line through the first corner and the one farthest from it.
fn width_m(corners: &[Coord<f64>]) -> f64 {
    let from_first = |corner: &Coord<f64>| math::hypot(corner.x - corners[0].x, corner.y - corners[0].y);
    let Some(far) = corners
        .iter()
        .max_by(|a, b| from_first(a).total_cmp(&from_first(b)))
    else {
        return 0.0;
    };
    let (first, line, length_m) = (corners[0], *far - corners[0], from_first(far));
    let offset_m =
        |corner: &Coord<f64>| ((*corner - first).x * line.y - (*corner - first).y * line.x).abs() / length_m;
    corners.iter().map(offset_m).fold(0.0, f64::max)
}

/// Whether no ring meets itself, holes lie in their outer ring, and neither holes nor parts share more than points (OGC
/// 06-103r4, section 6.1.11). The rules are those of `geo`'s own check, which looks at every pair of edges and of rings.
fn is_valid(shape: &MultiPolygon<f64>) -> bool {
    rings_of(shape).all(|ring| ring::is_simple(&ring.0))
        && shape.iter().all(|polygon| {
            let filled = |ring: &LineString<f64>| Polygon::new(ring.clone(), Vec::new());
            let outer = filled(polygon.exterior());
            let outer = PreparedGeometry::from(&outer);
            let holes: Vec<Polygon<f64>> = polygon.interiors().iter().map(filled).collect();
            let is_inside = |hole: &Polygon<f64>| {
                let found = outer.relate(hole);
                found.is_contains()
                    && found.get(CoordPos::OnBoundary, CoordPos::OnBoundary) != Dimensions::OneDimensional
            };
            holes.iter().all(is_inside) && lie_apart(&holes)
        })
        && lie_apart(&shape.0)
}

/// Whether polygons share no more than points.
fn lie_apart(polygons: &[Polygon<f64>]) -> bool {
    polygons.iter().enumerate().all(|(number, one)| {
        let bounds = one.bounding_rect();
        let near = |other: &&Polygon<f64>| {
            bounds
                .zip(other.bounding_rect())
                .is_some_and(|(a, b)| a.intersects(&b))
        };
        polygons[number + 1..].iter().filter(near).all(|other| {
            let found = one.relate(other);
            found.get(CoordPos::Inside, CoordPos::Inside) != Dimensions::TwoDimensional
                && found.get(CoordPos::OnBoundary, CoordPos::OnBoundary) != Dimensions::OneDimensional
        })
    })
}

/// What any outer ring encloses (however often it winds) and no hole of the same part removes.
fn in_order(shape: &MultiPolygon<f64>) -> MultiPolygon<f64> {
    let nothing = MultiPolygon::<f64>::new(Vec::new());
    let filled = |ring: &LineString<f64>| {
        Polygon::new(ring.clone(), Vec::new()).boolean_op_with_fill_rule(
            &nothing,
            OpType::Union,
            FillRule::NonZero,
        )
    };
    shape.iter().fold(nothing.clone(), |sum, polygon| {
        let holes = polygon
            .interiors()
            .iter()
            .fold(nothing.clone(), |sum, hole| sum.union(&filled(hole)));
        sum.union(&filled(polygon.exterior()).difference(&holes))
    })
}

/// Runs polygon work of the engine below and turns a panic there into an error.
fn catch<T>(operation: &'static str, corners: usize, work: impl FnOnce() -> T) -> Result<T, RegionError> {
    catch_unwind(AssertUnwindSafe(work)).map_err(|panic| RegionError::EngineFailed {
        operation,
        corners,
        reason: panic
            .downcast_ref::<&str>()
            .map(ToString::to_string)
            .or_else(|| panic.downcast_ref::<String>().cloned())
            .unwrap_or_else(|| "no reason given".to_owned()),
    })
}

#[cfg(test)]
#[path = "region_tests.rs"]
mod tests;
