//! Are latitude and longitude swapped?

use tussock_types::math;
use tussock_types::{GeoPoint, Plan, PlanShape};

/// A plan farther from the log than this does not fit it, degrees (about 11 km).
const FITS_DEG: f64 = 0.1;

/// True when a plan lies near the middle of a log only with latitude and longitude swapped.
pub fn looks_swapped(plan: &Plan, log_middle: GeoPoint) -> bool {
    let Some(middle) = middle_of(plan) else {
        return false;
    };
    let swapped = GeoPoint {
        lat_deg: middle.lon_deg,
        lon_deg: middle.lat_deg,
    };
    let is_near = |point: GeoPoint| {
        let turn_deg = (point.lon_deg - log_middle.lon_deg).rem_euclid(360.0);
        let turn_deg = turn_deg.min(360.0 - turn_deg);
        let east_deg = turn_deg * math::cos(log_middle.lat_deg.to_radians());
        math::hypot(point.lat_deg - log_middle.lat_deg, east_deg) < FITS_DEG
    };
    is_near(swapped) && !is_near(middle)
}

/// Mean of all positions.
fn middle_of(plan: &Plan) -> Option<GeoPoint> {
    let mut sum = (0.0, 0.0, 0u32);
    let mut add = |point: &GeoPoint| {
        sum = (sum.0 + point.lat_deg, sum.1 + point.lon_deg, sum.2 + 1);
    };
    for feature in &plan.features {
        match &feature.shape {
            PlanShape::Polygons(polygons) => polygons
                .iter()
                .flat_map(|polygon| polygon.rings.iter().flatten())
                .for_each(&mut add),
            PlanShape::Line(points) => points.iter().for_each(&mut add),
            PlanShape::Point(point) => add(point),
        }
    }
    let (lat_deg, lon_deg, count) = sum;
    (count > 0).then(|| GeoPoint {
        lat_deg: lat_deg / f64::from(count),
        lon_deg: lon_deg / f64::from(count),
    })
}
