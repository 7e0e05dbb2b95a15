//! Two numbers that belong together.

use std::ops::{Add, Mul, Neg, Sub};
use tussock_types::Place;

/// A place or a direction on the plane, in metres.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub(crate) struct Vec2 {
    pub(crate) x: f64,
    pub(crate) y: f64,
}

impl Vec2 {
    pub(crate) const fn new(x: f64, y: f64) -> Self {
        Self { x, y }
    }

    /// Unit vector of an angle, anticlockwise from east.
    pub(crate) fn of_angle(angle_rad: f64) -> Self {
        let (sin, cos) = libm::sincos(angle_rad);
        Self::new(cos, sin)
    }

    pub(crate) fn angle_rad(self) -> f64 {
        libm::atan2(self.y, self.x)
    }

    pub(crate) fn dot(self, other: Self) -> f64 {
        self.x * other.x + self.y * other.y
    }

    pub(crate) fn cross(self, other: Self) -> f64 {
        self.x * other.y - self.y * other.x
    }

    /// A square root is exact in IEEE 754, `hypot` is not.
    pub(crate) fn length(self) -> f64 {
        self.dot(self).sqrt()
    }

    /// Turned a quarter to the left.
    pub(crate) const fn left(self) -> Self {
        Self::new(-self.y, self.x)
    }

    /// The same direction with length 1; `None` without a direction.
    pub(crate) fn unit(self) -> Option<Self> {
        let length = self.length();
        (length > 1e-12).then(|| self * (1.0 / length))
    }

    /// Turned anticlockwise.
    pub(crate) fn turned(self, angle_rad: f64) -> Self {
        let c = Self::of_angle(angle_rad);
        Self::new(self.x * c.x - self.y * c.y, self.x * c.y + self.y * c.x)
    }
}

impl Add for Vec2 {
    type Output = Self;
    fn add(self, other: Self) -> Self {
        Self::new(self.x + other.x, self.y + other.y)
    }
}

impl Sub for Vec2 {
    type Output = Self;
    fn sub(self, other: Self) -> Self {
        Self::new(self.x - other.x, self.y - other.y)
    }
}

impl Mul<f64> for Vec2 {
    type Output = Self;
    fn mul(self, factor: f64) -> Self {
        Self::new(self.x * factor, self.y * factor)
    }
}

impl Neg for Vec2 {
    type Output = Self;
    fn neg(self) -> Self {
        Self::new(-self.x, -self.y)
    }
}

impl From<Place> for Vec2 {
    fn from(place: Place) -> Self {
        Self::new(place.east_m, place.north_m)
    }
}

impl From<Vec2> for Place {
    fn from(v: Vec2) -> Self {
        Self::new(v.x, v.y)
    }
}
