//! Where on Earth is a place of the findings, and where in the findings is a point on Earth?
//!
//! A saved result must be drawable by code that knows no algorithm, so the plain arithmetic between WGS 84 and the tangent
//! plane of [`FrameFindings`] is here, beside the numbers that it explains.
//!
//! Method: geographic to geocentric coordinates (EPSG method 9602) and geocentric to topocentric coordinates (EPSG method
//! 9837), IOGP Publication 373-7-2, at ellipsoidal height 0. The way back needs no iteration: the height of a place above
//! the tangent plane is the root of a quadratic (the normal through the place meets the ellipsoid), and the latitude of a
//! point on the ellipsoid is a single arc tangent.
//!
//! Exact up to rounding (about a nanometre for a garden). Not defined beyond the horizon of the origin.

use crate::math;
use crate::{FrameFindings, GeoPoint, Place};

/// Semi-major axis of WGS 84 (EPSG 7030).
const SEMI_MAJOR_M: f64 = 6_378_137.0;
/// Flattening of WGS 84 (EPSG 7030).
const FLATTENING: f64 = 1.0 / 298.257_223_563;

type Vector = [f64; 3];

fn dot(a: Vector, b: Vector) -> f64 {
    a[0] * b[0] + a[1] * b[1] + a[2] * b[2]
}

/// First eccentricity, squared.
fn eccentricity2() -> f64 {
    FLATTENING * (2.0 - FLATTENING)
}

/// Geocentric metres of a point at height 0 (EPSG 9602).
fn geocentric(point: GeoPoint) -> Vector {
    let (lat_sin, lat_cos) = math::sin_cos(point.lat_deg.to_radians());
    let (lon_sin, lon_cos) = math::sin_cos(point.lon_deg.to_radians());
    let normal_m = SEMI_MAJOR_M / (1.0 - eccentricity2() * lat_sin * lat_sin).sqrt();
    [
        normal_m * lat_cos * lon_cos,
        normal_m * lat_cos * lon_sin,
        normal_m * (1.0 - eccentricity2()) * lat_sin,
    ]
}

/// Directions east, north and up at a point.
fn axes(point: GeoPoint) -> [Vector; 3] {
    let (lat_sin, lat_cos) = math::sin_cos(point.lat_deg.to_radians());
    let (lon_sin, lon_cos) = math::sin_cos(point.lon_deg.to_radians());
    [
        [-lon_sin, lon_cos, 0.0],
        [-lat_sin * lon_cos, -lat_sin * lon_sin, lat_cos],
        [lat_cos * lon_cos, lat_cos * lon_sin, lat_sin],
    ]
}

impl FrameFindings {
    /// The origin on Earth; `None` for a log in local metres without one.
    pub fn origin(&self) -> Option<GeoPoint> {
        let origin = GeoPoint {
            lat_deg: self.origin_lat?,
            lon_deg: self.origin_lon?,
        };
        (origin.lat_deg.is_finite() && origin.lon_deg.is_finite()).then_some(origin)
    }

    /// The place on the tangent plane of a point on Earth; `None` without an origin.
    pub fn to_place(&self, point: GeoPoint) -> Option<Place> {
        let origin = self.origin()?;
        let [east, north, _] = axes(origin);
        let (from, to) = (geocentric(origin), geocentric(point));
        let offset = [to[0] - from[0], to[1] - from[1], to[2] - from[2]];
        Some(Place::new(dot(offset, east), dot(offset, north)))
    }

    /// The point on Earth of a place on the tangent plane; `None` without an origin, or beyond the horizon.
    pub fn to_geo(&self, place: Place) -> Option<GeoPoint> {
        let origin = self.origin()?;
        let [east, north, up] = axes(origin);
        let centre = geocentric(origin);
        let level: Vector =
            std::array::from_fn(|axis| place.east_m * east[axis] + place.north_m * north[axis]);
        // The ellipsoid is the set of x with x.Mx = 1. The origin lies on it and M(origin) points up, so the
        // constant term of the quadratic is level.M(level) alone: nothing large cancels.
        let polar_m = SEMI_MAJOR_M * (1.0 - FLATTENING);
        let weight = [SEMI_MAJOR_M.powi(-2), SEMI_MAJOR_M.powi(-2), polar_m.powi(-2)];
        let weighted = |v: Vector| -> Vector { std::array::from_fn(|axis| v[axis] * weight[axis]) };
        let square = dot(weighted(up), up);
        let half = dot(weighted(centre), up) + dot(weighted(level), up);
        let constant = dot(weighted(level), level);
        let root = half * half - square * constant;
        if root.is_nan() || root < 0.0 {
            return None;
        }
        let up_m = -constant / (half + root.sqrt());
        let point: Vector = std::array::from_fn(|axis| centre[axis] + level[axis] + up_m * up[axis]);
        let axis_distance_m = math::hypot(point[0], point[1]);
        Some(GeoPoint {
            lat_deg: math::atan2(point[2], (1.0 - eccentricity2()) * axis_distance_m).to_degrees(),
            lon_deg: math::atan2(point[1], point[0]).to_degrees(),
        })
    }
}

/// Typed text that is not a valid place.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct NotAPlace(String);

impl std::fmt::Display for NotAPlace {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.write_str(&self.0)
    }
}

impl std::error::Error for NotAPlace {}

/// Two numbers separated by a comma.
fn pair(typed: &str) -> Option<(f64, f64)> {
    let (first, second) = typed.split_once(',')?;
    Some((first.trim().parse().ok()?, second.trim().parse().ok()?))
}

/// Parses what people type: `40.00006,-30.00012`, latitude first.
impl std::str::FromStr for GeoPoint {
    type Err = NotAPlace;

    fn from_str(typed: &str) -> Result<Self, NotAPlace> {
        pair(typed)
            .map(|(lat_deg, lon_deg)| Self { lat_deg, lon_deg })
            .filter(|at| at.lat_deg.abs() <= 90.0 && at.lon_deg.abs() <= 180.0)
            .ok_or_else(|| {
                NotAPlace(format!(
                    "{typed:?} is no position, expected latitude,longitude in degrees, such as 40.00006,-30.00012"
                ))
            })
    }
}

/// Parses what people type: `4.5,-2`, east first.
impl std::str::FromStr for Place {
    type Err = NotAPlace;

    fn from_str(typed: &str) -> Result<Self, NotAPlace> {
        pair(typed)
            .map(|(east_m, north_m)| Self::new(east_m, north_m))
            .filter(|at| at.east_m.is_finite() && at.north_m.is_finite())
            .ok_or_else(|| {
                NotAPlace(format!(
                    "{typed:?} is no place, expected metres east,north, such as 4.5,-2"
                ))
            })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn frame(lat_deg: f64, lon_deg: f64) -> FrameFindings {
        FrameFindings {
            origin_lat: Some(lat_deg),
            origin_lon: Some(lon_deg),
        }
    }

    #[test]
    fn a_place_goes_to_earth_and_back_within_ten_nanometres() {
        for origin_lat in [-89.0, -55.0, -0.0, 1e-9, 47.5, 71.0, 89.9] {
            for origin_lon in [-179.999, -70.0, 0.0, 11.25, 180.0] {
                let frame = frame(origin_lat, origin_lon);
                for (east_m, north_m) in [(0.0, 0.0), (12.5, -30.25), (-2_500.0, 2_500.0), (0.001, 4_000.0)] {
                    let place = Place::new(east_m, north_m);
                    let back = frame.to_place(frame.to_geo(place).unwrap()).unwrap();
                    assert!(
                        place.distance_m(back) < 1e-8,
                        "{origin_lat} {origin_lon} {place:?} {back:?}"
                    );
                }
            }
        }
    }

    #[test]
    fn one_degree_of_latitude_at_the_equator_is_the_chord_of_its_arc() {
        // On the meridian through the origin at the equator the north axis is the polar axis: north_m is the
        // geocentric z of the point, (1 - e2) N sin(lat).
        let frame = frame(0.0, 0.0);
        let place = frame
            .to_place(GeoPoint {
                lat_deg: 1.0,
                lon_deg: 0.0,
            })
            .unwrap();
        let sin = math::sin(1f64.to_radians());
        let z_m = SEMI_MAJOR_M * (1.0 - eccentricity2()) * sin / (1.0 - eccentricity2() * sin * sin).sqrt();
        assert!((place.north_m - z_m).abs() < 1e-8 && place.east_m.abs() < 1e-9);
    }

    #[test]
    fn one_hundred_metres_along_the_parallel_follow_the_radius_of_curvature() {
        // A small angle of longitude spans N cos(lat) sin(angle) east of the origin.
        let origin_lat: f64 = 52.0;
        let frame = frame(origin_lat, 8.0);
        let sin = math::sin(origin_lat.to_radians());
        let parallel_m =
            SEMI_MAJOR_M / (1.0 - eccentricity2() * sin * sin).sqrt() * math::cos(origin_lat.to_radians());
        let angle = 100.0 / parallel_m;
        let place = frame
            .to_place(GeoPoint {
                lat_deg: origin_lat,
                lon_deg: 8.0 + angle.to_degrees(),
            })
            .unwrap();
        assert!((place.east_m - parallel_m * math::sin(angle)).abs() < 1e-7);
    }

    #[test]
    fn there_is_no_place_on_earth_without_an_origin_or_beyond_the_horizon() {
        let nowhere = FrameFindings {
            origin_lat: None,
            origin_lon: None,
        };
        assert_eq!(nowhere.to_geo(Place::new(1.0, 1.0)), None);
        assert_eq!(nowhere.to_place(GeoPoint::default()), None);
        assert_eq!(frame(10.0, 10.0).to_geo(Place::new(7e6, 0.0)), None);
        assert_eq!(frame(10.0, 10.0).to_geo(Place::new(f64::NAN, 0.0)), None);
    }
}
