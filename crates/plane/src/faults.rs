//! What is wrong with one ring of a plan, and where?

use crate::ring::{self, DEGENERATE_M2, Edges};
use crate::{Frame, Region};
use geo::LineIntersection;
use geo::algorithm::line_intersection::line_intersection;
use geo_types::Coord;
use tussock_types::math;
use tussock_types::{GeoPoint, Place, PlanFault, PlanFeature, plural};

/// Rings that enclose less than this enclose nothing (a square decimetre).
const NO_GROUND_M2: f64 = 0.01;
/// Number of places named for one ring; the rest are only counted.
const PLACES_NAMED: usize = 3;
/// After this many crossings the search ends: the ring is a tangle.
const CROSSINGS_SOUGHT: usize = 100;

/// A fault of a feature that stops the analysis.
pub(crate) fn fatal(
    feature: &PlanFeature,
    found: impl Into<String>,
    expected: impl Into<String>,
) -> PlanFault {
    PlanFault {
        feature: Some(feature.index),
        name: Some(feature.name.clone()),
        ..of_plan(found, expected, true)
    }
}

/// A fault of a feature that is worth a look.
pub(crate) fn warning(
    feature: &PlanFeature,
    found: impl Into<String>,
    expected: impl Into<String>,
) -> PlanFault {
    PlanFault {
        is_fatal: false,
        ..fatal(feature, found, expected)
    }
}

/// A fault of the whole plan.
pub(crate) fn of_plan(found: impl Into<String>, expected: impl Into<String>, is_fatal: bool) -> PlanFault {
    PlanFault {
        found: found.into(),
        expected: expected.into(),
        is_fatal,
        ..PlanFault::default()
    }
}

/// Faults of the reader and of [`crate::Site::build`] as one list in the order of the file. If the reader already found a
/// feature unusable, consequences of that are left out.
pub fn merge_faults(read: Vec<PlanFault>, built: Vec<PlanFault>) -> Vec<PlanFault> {
    let unusable = |feature: Option<usize>| {
        read.iter()
            .any(|fault| fault.is_fatal && fault.feature.is_some() && fault.feature == feature)
    };
    let mut fresh: Vec<PlanFault> = built
        .into_iter()
        .filter(|fault| !unusable(fault.feature) && !read.contains(fault))
        .collect();
    let mut all = read;
    all.append(&mut fresh);
    // Faults of the whole plan come first; the sort is stable.
    all.sort_by_key(|fault| fault.feature.map_or(0, |feature| feature + 1));
    all
}

/// Reports invalid positions; true if all are valid.
pub(crate) fn positions_are_sound(
    feature: &PlanFeature,
    ring: Option<usize>,
    points: &[GeoPoint],
    faults: &mut Vec<PlanFault>,
) -> bool {
    let is_sound = |point: &GeoPoint| point.lat_deg.abs() <= 90.0 && point.lon_deg.abs() <= 180.0;
    let Some((corner, point)) = points.iter().enumerate().find(|(_, point)| !is_sound(point)) else {
        return true;
    };
    let looks_swapped =
        point.lat_deg.abs() > 90.0 && point.lat_deg.abs() <= 180.0 && point.lon_deg.abs() <= 90.0;
    let hint = if looks_swapped {
        "; latitude and longitude look swapped"
    } else {
        ""
    };
    let found = format!(
        "corner {corner} has latitude {}, longitude {}{hint}",
        point.lat_deg, point.lon_deg
    );
    faults.push(PlanFault {
        ring,
        ..fatal(
            feature,
            found,
            "latitude from -90 to 90 and longitude from -180 to 180 degrees",
        )
    });
    false
}

/// Checks one ring and returns its places; `None` if no ground can be made of it.
pub(crate) fn checked_ring(
    feature: &PlanFeature,
    number: usize,
    points: &[GeoPoint],
    frame: &Frame,
    faults: &mut Vec<PlanFault>,
) -> Option<Vec<Place>> {
    let at_ring = |fault: PlanFault, at: Option<Place>| PlanFault {
        ring: Some(number),
        at: at.map(|place| frame.to_geo(place)),
        ..fault
    };
    if points.is_empty() {
        faults.push(at_ring(
            fatal(feature, "the ring has no corners", "at least 3 corners"),
            None,
        ));
        return None;
    }
    if !positions_are_sound(feature, Some(number), points, faults) {
        return None;
    }
    let mut places: Vec<Place> = points.iter().map(|point| frame.to_place(*point)).collect();
    let gap_m = places[0].distance_m(places[places.len() - 1]);
    if points.first() != points.last() && gap_m > 0.001 {
        let found = format!("the ring is not closed, its ends are {gap_m:.2} m apart");
        let expected = "a last point equal to the first";
        faults.push(at_ring(fatal(feature, found, expected), places.last().copied()));
        places.push(places[0]);
    }
    let repeated: Vec<usize> = (1..places.len())
        .filter(|&corner| places[corner].distance_m(places[corner - 1]) < 0.001)
        // A ring that is closed within a millimetre, though not to the bit, counts as closed.
        .filter(|&corner| corner + 1 < places.len() || places.len() <= 2)
        .collect();
    let mut corners: Vec<Coord<f64>> = places.iter().map(|place| ring::coord(*place)).collect();
    corners.dedup_by(|later, kept| math::hypot(later.x - kept.x, later.y - kept.y) < 0.001);
    if let Some(last) = corners.last_mut() {
        *last = ring::coord(places[0]);
    }
    if corners.len() < 4 {
        let count = corners.len().saturating_sub(1).max(1);
        let corners = plural(count, "different corner", "different corners");
        let found = format!("the ring has only {corners}");
        faults.push(at_ring(
            fatal(feature, found, "at least 3"),
            places.first().copied(),
        ));
        return None;
    }
    if let Some(&first) = repeated.first() {
        let found = match repeated.len() {
            1 => format!("corner {first} repeats the corner before it"),
            count => format!("{count} corners repeat the corner before them, the first is corner {first}"),
        };
        faults.push(at_ring(
            warning(feature, found, "each corner once"),
            Some(places[first]),
        ));
    }
    let tangle = Tangle::of(&corners);
    let closed: Vec<Place> = corners.iter().map(|corner| ring::place(*corner)).collect();
    let shoelace_m2 = ring::signed_area_m2(&corners).abs();
    let wound_m2 = match Region::from_rings(vec![vec![closed.clone()]]) {
        Ok(region) => region.area_m2(),
        Err(error) => {
            faults.push(at_ring(fatal(feature, error.to_string(), "a simple ring"), None));
            return None;
        }
    };
    // A ring can also cross itself exactly at a corner. One of its loops then runs in the other direction and its area is
    // subtracted from the rest.
    let crosses_at_corner = !tangle.touches.is_empty() && wound_m2 - shoelace_m2 > NO_GROUND_M2;
    let crossings: Vec<Place> = if crosses_at_corner {
        tangle.crossings.iter().chain(&tangle.touches).copied().collect()
    } else {
        tangle.crossings.clone()
    };
    if !crossings.is_empty() {
        for place in crossings.iter().take(PLACES_NAMED) {
            let fault = fatal(
                feature,
                "the outline crosses itself",
                "an outline that meets itself nowhere",
            );
            faults.push(at_ring(fault, Some(*place)));
        }
        if crossings.len() > PLACES_NAMED {
            let more = crossings.len() - PLACES_NAMED;
            let or_more = if tangle.is_cut_short { " or more" } else { "" };
            let found = format!("the outline crosses itself at {more}{or_more} other places");
            faults.push(at_ring(fatal(feature, found, ""), None));
        }
    } else if wound_m2 < NO_GROUND_M2 {
        let found = format!("the ring encloses no ground ({wound_m2:.4} m2)");
        faults.push(at_ring(
            fatal(feature, found, "an outline around ground"),
            places.first().copied(),
        ));
        if wound_m2 < DEGENERATE_M2 {
            return None;
        }
    } else if let Some(place) = tangle.touches.first() {
        let found = "the outline touches itself or doubles back";
        faults.push(at_ring(
            warning(feature, found, "an outline that meets itself nowhere"),
            Some(*place),
        ));
    }
    Some(closed)
}

/// Where a ring meets itself.
#[derive(Default)]
struct Tangle {
    /// Two edges cross in the middle of both.
    crossings: Vec<Place>,
    /// A corner lies on another edge or corner, or edges lie on top of each other.
    touches: Vec<Place>,
    is_cut_short: bool,
}

impl Tangle {
    fn of(corners: &[Coord<f64>]) -> Self {
        let count = corners.len() - 1;
        let edges = Edges::of(corners);
        let mut tangle = Self::default();
        for first in 0..count {
            for second in edges.near_after(first) {
                let is_next = second == first + 1 || (first == 0 && second == count - 1);
                match line_intersection(edges.edge(first), edges.edge(second)) {
                    Some(LineIntersection::SinglePoint {
                        intersection,
                        is_proper: true,
                    }) => tangle.crossings.push(ring::place(intersection)),
                    Some(LineIntersection::SinglePoint { intersection, .. }) if !is_next => {
                        tangle.touches.push(ring::place(intersection));
                    }
                    Some(LineIntersection::Collinear { intersection })
                        if intersection.start != intersection.end =>
                    {
                        tangle.touches.push(ring::place(intersection.start));
                    }
                    _ => {}
                }
                if tangle.crossings.len() + tangle.touches.len() >= CROSSINGS_SOUGHT {
                    tangle.is_cut_short = true;
                    return tangle;
                }
            }
        }
        tangle
    }
}
