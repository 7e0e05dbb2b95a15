//! Where on a line is a place, which corners matter, and how small a box holds everything?
//!
//! Question: which place of a straight piece is nearest to another place, which corners of a line carry its course, and how
//! long and wide is the smallest box, in any direction, around several places? The nearest place by projection; corners by
//! Douglas & Peucker (1973); the box by the sides of the convex hull (Freeman & Shapira 1975, DOI 10.1145/360881.360919),
//! both from `geo`.
//!
//! Exact up to rounding. Cost: constant; n log n as a rule; n log n.

use crate::ring::{coord, place};
use geo::{MinimumRotatedRect, Simplify};
use geo_types::{LineString, MultiPoint, Point};
use tussock_types::Place;

/// The place on a straight piece that is nearest to another place; for a piece without length, its start.
pub fn nearest_on_piece(from: Place, to: Place, other: Place) -> Place {
    let (east_m, north_m) = (to.east_m - from.east_m, to.north_m - from.north_m);
    let square_m2 = east_m * east_m + north_m * north_m;
    if !(square_m2 > 0.0) {
        return from;
    }
    let along =
        ((other.east_m - from.east_m) * east_m + (other.north_m - from.north_m) * north_m) / square_m2;
    let share = along.clamp(0.0, 1.0);
    Place::new(from.east_m + share * east_m, from.north_m + share * north_m)
}

/// A line without the corners that move it by no more than a tolerance; its ends stay.
pub fn line_simplified(line: &[Place], tolerance_m: f64) -> Vec<Place> {
    if line.len() < 3 || !(tolerance_m > 0.0) {
        return line.to_vec();
    }
    let line: LineString<f64> = line.iter().map(|one| coord(*one)).collect();
    line.simplify(tolerance_m).into_iter().map(place).collect()
}

/// Long and short side of the smallest box, in any direction, around several places, in metres; `None` for places on one
/// line.
pub fn smallest_box_m(places: &[Place]) -> Option<(f64, f64)> {
    let points: MultiPoint<f64> = places.iter().map(|one| Point(coord(*one))).collect();
    let corners = points.minimum_rotated_rect()?;
    let mut sides = corners
        .exterior()
        .0
        .windows(2)
        .map(|pair| place(pair[0]).distance_m(place(pair[1])));
    let (one, other) = (sides.next()?, sides.next()?);
    Some((one.max(other), one.min(other)))
}

#[cfg(test)]
mod tests {
    use super::*;
    use approx::assert_abs_diff_eq;
    use tussock_types::math;

    #[test]
    fn the_nearest_place_lies_between_the_ends() {
        let (from, to) = (Place::new(1.0, 1.0), Place::new(5.0, 1.0));
        assert_eq!(
            nearest_on_piece(from, to, Place::new(3.0, 9.0)),
            Place::new(3.0, 1.0)
        );
        assert_eq!(nearest_on_piece(from, to, Place::new(-3.0, 2.0)), from);
        assert_eq!(nearest_on_piece(from, from, Place::new(-3.0, 2.0)), from);
        for place in [(3.0, 9.0), (-3.0, 2.0), (7.5, 0.0), (4.0, 1.0)]
            .map(|(east_m, north_m)| Place::new(east_m, north_m))
        {
            for to in [to, from, Place::new(2.0, 6.0)] {
                let nearest = nearest_on_piece(from, to, place);
                assert_abs_diff_eq!(
                    place.off_piece_m(from, to),
                    place.distance_m(nearest),
                    epsilon = 1e-12
                );
            }
        }
    }

    #[test]
    fn a_staircase_is_a_straight_line_within_its_steps() {
        let steps: Vec<Place> = (0..40)
            .map(|step| Place::new(f64::from(step / 2), f64::from((step + 1) / 2)))
            .collect();
        assert_eq!(line_simplified(&steps, 1.0).len(), 2);
        assert_eq!(line_simplified(&steps, 0.1).len(), steps.len());
        assert_eq!(line_simplified(&steps[..1], 1.0).len(), 1);
    }

    #[test]
    fn the_box_of_a_turned_rectangle_has_its_sides() {
        let (sine, cosine) = math::sin_cos(0.4_f64);
        let turned: Vec<Place> = [(0.0, 0.0), (9.0, 0.0), (9.0, 1.5), (0.0, 1.5), (4.0, 0.7)]
            .iter()
            .map(|(x, y)| Place::new(cosine * x - sine * y, sine * x + cosine * y))
            .collect();
        let (long_m, short_m) = smallest_box_m(&turned).unwrap();
        assert_abs_diff_eq!(long_m, 9.0, epsilon = 1e-9);
        assert_abs_diff_eq!(short_m, 1.5, epsilon = 1e-9);
        assert!(smallest_box_m(&turned[..1]).is_none());
    }
}
