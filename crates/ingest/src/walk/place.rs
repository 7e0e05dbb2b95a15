//! Where a walker was: on Earth, and in metres around the beginning of the walk.

use tussock_types::math;
use tussock_types::{GeoPoint, Place};

/// Positions closer than this are one.
pub(super) const SAME_M: f64 = 0.001;

/// Metres around one position: radii of curvature of WGS 84 there (IOGP 373-7-2, section 4.1.1). Exact to a millimetre over
/// a hundred metres, which is all that a walk needs.
#[derive(Clone, Copy)]
pub(super) struct LocalScale {
    origin: GeoPoint,
    north_m_per_deg: f64,
    east_m_per_deg: f64,
}

impl LocalScale {
    pub(super) fn at(origin: GeoPoint) -> Self {
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

    pub(super) fn place(&self, point: GeoPoint) -> Place {
        let east_deg = (point.lon_deg - self.origin.lon_deg + 180.0).rem_euclid(360.0) - 180.0;
        Place::new(
            east_deg * self.east_m_per_deg,
            (point.lat_deg - self.origin.lat_deg) * self.north_m_per_deg,
        )
    }

    pub(super) fn point(&self, place: Place) -> GeoPoint {
        let lon_deg = self.origin.lon_deg + place.east_m / self.east_m_per_deg;
        GeoPoint {
            lat_deg: self.origin.lat_deg + place.north_m / self.north_m_per_deg,
            lon_deg: (lon_deg + 180.0).rem_euclid(360.0) - 180.0,
        }
    }
}

/// Distance between two positions of a garden.
pub(super) fn distance_m(from: GeoPoint, to: GeoPoint) -> f64 {
    LocalScale::at(from).place(to).distance_m(Place::default())
}

/// A walked position: where on Earth, and where in metres.
#[derive(Clone, Copy)]
pub(super) struct WalkedPlace {
    pub(super) point: GeoPoint,
    pub(super) place: Place,
    /// The walker stood here, so it is kept as it is.
    pub(super) is_corner: bool,
}
