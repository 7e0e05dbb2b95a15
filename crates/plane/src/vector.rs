//! Directions and straight pieces on the plane: the one vector and the one edge type of all rooms.

use crate::Region;
use std::ops::{Add, Mul, Neg, Sub};
use tussock_types::{Place, math};

/// A place or a direction on the plane, in metres.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Vector {
    /// East.
    pub east: f64,
    /// North.
    pub north: f64,
}

impl Vector {
    /// From its two parts.
    pub const fn new(east: f64, north: f64) -> Self {
        Self { east, north }
    }

    /// Unit vector of an angle, anticlockwise from east.
    pub fn of_angle(angle_rad: f64) -> Self {
        let (sin, cos) = math::sin_cos(angle_rad);
        Self::new(cos, sin)
    }

    /// The way between two places.
    pub fn between(from: Place, to: Place) -> Self {
        Self::new(to.east_m - from.east_m, to.north_m - from.north_m)
    }

    /// The direction from one place to another, of length 1; `None` if they coincide.
    pub fn direction(from: Place, to: Place) -> Option<Self> {
        let (way, length_m) = (Self::between(from, to), from.distance_m(to));
        (length_m > 0.0).then(|| Self::new(way.east / length_m, way.north / length_m))
    }

    /// Its angle, anticlockwise from east.
    pub fn angle_rad(self) -> f64 {
        math::atan2(self.north, self.east)
    }

    /// Inner product.
    pub fn dot(self, other: Self) -> f64 {
        self.east * other.east + self.north * other.north
    }

    /// Area of the parallelogram, positive if `other` lies to the left.
    pub fn cross(self, other: Self) -> f64 {
        self.east * other.north - self.north * other.east
    }

    /// Length. A square root is exact in IEEE 754, `hypot` is not.
    pub fn length(self) -> f64 {
        self.dot(self).sqrt()
    }

    /// Rotated a quarter turn to the left.
    pub const fn left(self) -> Self {
        Self::new(-self.north, self.east)
    }

    /// The same direction with length 1; `None` if there is hardly any length.
    pub fn unit(self) -> Option<Self> {
        let length = self.length();
        (length > 1e-12 && length.is_finite()).then(|| self * (1.0 / length))
    }

    /// Rotated anticlockwise.
    pub fn turned(self, angle_rad: f64) -> Self {
        let c = Self::of_angle(angle_rad);
        Self::new(
            self.east * c.east - self.north * c.north,
            self.east * c.north + self.north * c.east,
        )
    }

    /// Angle from this direction to another, in (-pi, pi].
    pub fn angle_to_rad(self, other: Self) -> f64 {
        math::atan2(self.cross(other), self.dot(other))
    }
}

impl Add for Vector {
    type Output = Self;
    fn add(self, other: Self) -> Self {
        Self::new(self.east + other.east, self.north + other.north)
    }
}

impl Sub for Vector {
    type Output = Self;
    fn sub(self, other: Self) -> Self {
        Self::new(self.east - other.east, self.north - other.north)
    }
}

impl Mul<f64> for Vector {
    type Output = Self;
    fn mul(self, by: f64) -> Self {
        Self::new(self.east * by, self.north * by)
    }
}

impl Neg for Vector {
    type Output = Self;
    fn neg(self) -> Self {
        Self::new(-self.east, -self.north)
    }
}

impl From<Place> for Vector {
    fn from(place: Place) -> Self {
        Self::new(place.east_m, place.north_m)
    }
}

impl From<Vector> for Place {
    fn from(vector: Vector) -> Self {
        Self::new(vector.east, vector.north)
    }
}

/// A straight piece of a region's outline, with ground on its left.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Edge {
    /// Where it begins.
    pub from: Vector,
    /// Unit vector to its end.
    pub along: Vector,
    /// Its length.
    pub length_m: f64,
}

impl Edge {
    /// The edge between two corners; `None` if they coincide.
    pub fn between(from: Vector, to: Vector) -> Option<Self> {
        let length_m = (to - from).length();
        (length_m > 1e-9).then(|| Self {
            from,
            along: (to - from) * (1.0 / length_m),
            length_m,
        })
    }

    /// All edges of a region, ring by ring.
    pub fn all_of(region: &Region) -> Vec<Self> {
        region
            .edges()
            .filter_map(|(from, to)| Self::between(from.into(), to.into()))
            .collect()
    }

    /// Where it ends.
    pub fn end(&self) -> Vector {
        self.from + self.along * self.length_m
    }

    /// Unit normal pointing into the ground.
    pub const fn inwards(&self) -> Vector {
        self.along.left()
    }

    /// How far along the edge's line a place lies, measured from its beginning.
    pub fn run_m(&self, place: Place) -> f64 {
        self.along.dot(Vector::from(place) - self.from)
    }

    /// How far inside the edge's line a place lies.
    pub fn inside_m(&self, place: Place) -> f64 {
        self.along.cross(Vector::from(place) - self.from)
    }

    /// How far past either end of the edge a place lies; 0 beside it.
    pub fn past_m(&self, place: Place) -> f64 {
        let run_m = self.run_m(place);
        (-run_m).max(run_m - self.length_m).max(0.0)
    }

    /// Whether a place lies beside it, between its two ends.
    pub fn is_beside(&self, place: Place) -> bool {
        (0.0..=self.length_m).contains(&self.run_m(place))
    }

    /// Distance of a place from the edge's nearest point.
    pub fn distance_m(&self, place: Place) -> f64 {
        math::hypot(self.past_m(place), self.inside_m(place))
    }

    /// A place moved into the ground, at right angles to the edge.
    pub fn moved_in(&self, place: Place, by_m: f64) -> Place {
        (Vector::from(place) + self.inwards() * by_m).into()
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use approx::assert_abs_diff_eq;

    #[test]
    fn an_edge_has_its_ground_on_the_left() {
        let edge = Edge::between(Vector::new(1.0, 0.0), Vector::new(5.0, 0.0)).unwrap();
        let place = Place::new(6.0, 2.0);
        assert_abs_diff_eq!(edge.inside_m(place), 2.0);
        assert_abs_diff_eq!(edge.past_m(place), 1.0);
        assert_abs_diff_eq!(edge.distance_m(place), 5f64.sqrt(), epsilon = 1e-12);
        assert!(!edge.is_beside(place) && edge.is_beside(Place::new(3.0, -1.0)));
        assert_eq!(edge.moved_in(Place::new(2.0, 0.0), 0.5), Place::new(2.0, 0.5));
        assert_eq!(edge.end(), Vector::new(5.0, 0.0));
        assert_eq!(Edge::between(edge.from, edge.from), None);
    }

    #[test]
    fn a_quarter_turn_to_the_left_is_positive() {
        let east = Vector::new(1.0, 0.0);
        assert_abs_diff_eq!(east.angle_to_rad(east.left()), std::f64::consts::FRAC_PI_2);
        assert_abs_diff_eq!(east.turned(0.3).angle_rad(), 0.3, epsilon = 1e-15);
        assert_eq!(Vector::default().unit(), None);
    }
}
