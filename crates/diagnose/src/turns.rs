//! Where did it turn, and what stands there?
//!
//! Question: how far from the edges does the machine turn, which turns have no edge of the plan near them, and what
//! would explain those?
//!
//! Method. A turn is a corner between two drives; backing off before a turn does not make a second one, and a long stop is
//! no turn. The setback is the middle of the turns that agree (a trimmed median, repeated). Turns far inside the ground are
//! gathered by single linkage over an R-tree's neighbours (Ester et al. 1996, core of one); four or more that lie on a circle (least
//! squares, Kasa 1976, DOI 10.1109/TIM.1976.6312298) are an obstacle that no plan shows.
//!
//! Approximate: radii at metre errors come out too large, since scatter widens the circle. Cost: turns times edges.

use rstar::{RTree, primitives::GeomWithData};
use tussock_locate::Track;
use tussock_plane::Region;
use tussock_types::Place;

/// A corner between two drives.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Turn {
    /// Where.
    pub place: Place,
    /// When it began, seconds since 1970.
    pub time_s: f64,
    /// Heading before, a unit vector.
    pub into: [f64; 2],
    /// Heading after.
    pub onward: [f64; 2],
    /// Distance to the nearest edge of the ground; negative outside.
    pub edge_m: f64,
}

/// Smaller changes of heading are bends.
const LEAST_TURN_COS: f64 = 0.94;
/// A machine backs off no farther than this (common practice, no source).
const MOST_REVERSE_M: f64 = 1.5;
/// Longer stands are stops.
const LONGEST_TURN_S: f64 = 30.0;
/// Next to the station it manoeuvres.
const APRON_M: f64 = 2.0;

/// Turns of a track; `transits` are times along guide runs and edges, `error_m` the position error that is left.
pub fn turns(track: &Track, ground: &Region, transits: &[(f64, f64)], error_m: f64) -> Vec<Turn> {
    let least_m = 0.3 + 2.0 * error_m;
    let mut turns = Vec::new();
    let mut next_transit = 0;
    for piece in &track.pieces {
        for (at, three) in piece.vertices.windows(3).enumerate() {
            let [from, here, to] = [three[0], three[1], three[2]];
            while transits
                .get(next_transit)
                .is_some_and(|one| one.1 < here.arrive_s)
            {
                next_transit += 1;
            }
            if transits
                .get(next_transit)
                .is_some_and(|one| one.0 <= here.arrive_s)
            {
                continue;
            }
            let (before_m, after_m) = (from.place.distance_m(here.place), here.place.distance_m(to.place));
            if before_m < least_m || after_m < 0.1 || here.leave_s - here.arrive_s > LONGEST_TURN_S {
                continue;
            }
            let unit = |from: Place, to: Place, length_m: f64| {
                [
                    (to.east_m - from.east_m) / length_m,
                    (to.north_m - from.north_m) / length_m,
                ]
            };
            let into = unit(from.place, here.place, before_m);
            let onward = unit(here.place, to.place, after_m);
            if into[0] * onward[0] + into[1] * onward[1] > LEAST_TURN_COS {
                continue;
            }
            // The corner after backing off is not where something stood.
            let backed = at > 0 && before_m <= MOST_REVERSE_M && {
                let earlier = piece.vertices[at - 1].place;
                let length_m = earlier.distance_m(from.place);
                let came = unit(earlier, from.place, length_m.max(1e-9));
                came[0] * into[0] + came[1] * into[1] < -0.9 && length_m > before_m
            };
            if backed
                || track
                    .station
                    .is_some_and(|station| station.distance_m(here.place) < APRON_M)
            {
                continue;
            }
            let distance_m = ground.edge_distance_m(here.place);
            turns.push(Turn {
                place: here.place,
                time_s: here.arrive_s,
                into,
                onward,
                edge_m: if ground.contains(here.place) {
                    distance_m
                } else {
                    -distance_m
                },
            });
        }
    }
    turns
}

/// Fewer turns tell no setback.
const LEAST_TURNS: usize = 12;

/// Distance inside the edge at which most turns lie; `None` for too few.
pub fn setback_m(turns: &[Turn], error_m: f64) -> Option<f64> {
    let mut near: Vec<f64> = turns
        .iter()
        .map(|turn| turn.edge_m)
        .filter(|edge_m| edge_m.abs() < 1.0 + 2.0 * error_m)
        .collect();
    near.sort_by(f64::total_cmp);
    let spread_m = 0.15 + 2.0 * error_m;
    for _ in 0..4 {
        if near.len() < LEAST_TURNS {
            return None;
        }
        let middle_m = near[near.len() / 2];
        near.retain(|edge_m| (edge_m - middle_m).abs() <= spread_m);
    }
    near.get(near.len() / 2).copied()
}

/// Turns farther inside than any edge of the plan explains.
pub fn inner(turns: &[Turn], setback_m: f64, error_m: f64) -> Vec<Turn> {
    let least_m = setback_m.max(0.0) + 0.3 + 2.4 * error_m;
    turns
        .iter()
        .filter(|turn| turn.edge_m > least_m)
        .copied()
        .collect()
}

/// A round thing that turned the machine.
#[derive(Clone, Debug, PartialEq)]
pub struct Obstacle {
    /// Its middle.
    pub place: Place,
    /// Radius of the thing: that of the circle through the turns, the setback taken off.
    pub radius_m: f64,
    /// Turns at it.
    pub turns: usize,
}

/// Fewer turns at one place happen by chance.
const LEAST_AT_ONE: usize = 4;
/// Larger circles are edges.
const LARGEST_M: f64 = 4.0;

/// Obstacles that no plan shows, most turns first.
pub fn obstacles(inner: &[Turn], setback_m: f64, error_m: f64) -> Vec<Obstacle> {
    let link_m = 0.8 + 1.5 * error_m;
    let mut groups = linked(inner.iter().map(|turn| turn.place), link_m);
    groups.retain(|group| group.len() >= 3);
    // Turns round a large body may lie farther apart than a link: groups that fit one circle are one.
    loop {
        let fit = |group: &[usize]| circle(group.iter().map(|turn| inner[*turn].place));
        let joined = (0..groups.len())
            .flat_map(|a| (0..a).map(move |b| (b, a)))
            .find(|(a, b)| {
                let both: Vec<usize> = groups[*a].iter().chain(&groups[*b]).copied().collect();
                fit(&both)
                    .is_some_and(|circle| circle.radius_m <= LARGEST_M && circle.scatter_m <= 0.1 + error_m)
            });
        let Some((a, b)) = joined else { break };
        let more = groups.remove(b);
        groups[a].extend(more);
    }
    let mut found: Vec<Obstacle> = groups
        .iter()
        .filter(|group| group.len() >= LEAST_AT_ONE)
        .filter_map(|group| {
            let circle = circle(group.iter().map(|turn| inner[*turn].place))
                .filter(|circle| circle.radius_m <= LARGEST_M && circle.scatter_m <= 0.25 + 1.5 * error_m)?;
            Some(Obstacle {
                place: circle.middle,
                radius_m: (circle.radius_m - setback_m.max(0.0) - 0.7 * error_m).max(0.05),
                turns: group.len(),
            })
        })
        .collect();
    found.sort_by(|a, b| {
        b.turns
            .cmp(&a.turns)
            .then(a.place.east_m.total_cmp(&b.place.east_m))
    });
    found
}

/// Groups of places that are linked by steps of at most `link_m`, as numbers; each in rising order.
pub(crate) fn linked(places: impl Iterator<Item = Place>, link_m: f64) -> Vec<Vec<usize>> {
    let places: Vec<[f64; 2]> = places.map(|place| [place.east_m, place.north_m]).collect();
    let tree = RTree::bulk_load(
        places
            .iter()
            .enumerate()
            .map(|(number, place)| GeomWithData::new(*place, number))
            .collect(),
    );
    let mut seen = vec![false; places.len()];
    let mut groups = Vec::new();
    for first in 0..places.len() {
        if seen[first] {
            continue;
        }
        seen[first] = true;
        let (mut group, mut open) = (Vec::new(), vec![first]);
        while let Some(one) = open.pop() {
            group.push(one);
            for near in tree.locate_within_distance(places[one], link_m * link_m) {
                if !seen[near.data] {
                    seen[near.data] = true;
                    open.push(near.data);
                }
            }
        }
        group.sort_unstable();
        groups.push(group);
    }
    groups
}

struct Circle {
    middle: Place,
    radius_m: f64,
    /// Root mean square distance of the places from it.
    scatter_m: f64,
}

/// Circle through places by linear least squares; `None` for places on a line.
fn circle(places: impl Iterator<Item = Place> + Clone) -> Option<Circle> {
    let count = places.clone().count() as f64;
    if count < 3.0 {
        return None;
    }
    let (east_m, north_m) = places.clone().fold((0.0, 0.0), |sum, place| {
        (sum.0 + place.east_m, sum.1 + place.north_m)
    });
    let middle = Place::new(east_m / count, north_m / count);
    let (mut xx, mut xy, mut yy, mut xz, mut yz, mut z) = (0.0, 0.0, 0.0, 0.0, 0.0, 0.0);
    for place in places.clone() {
        let (x, y) = (place.east_m - middle.east_m, place.north_m - middle.north_m);
        let square = x * x + y * y;
        xx += x * x;
        xy += x * y;
        yy += y * y;
        xz += x * square;
        yz += y * square;
        z += square;
    }
    let determinant = xx * yy - xy * xy;
    if !(determinant > 1e-3 * xx * yy) {
        return None;
    }
    let (x, y) = (
        (xz * yy - yz * xy) / (2.0 * determinant),
        (yz * xx - xz * xy) / (2.0 * determinant),
    );
    let radius_m = (x * x + y * y + z / count).sqrt();
    let found = Place::new(middle.east_m + x, middle.north_m + y);
    let scatter: f64 = places
        .map(|place| (place.distance_m(found) - radius_m).powi(2))
        .sum();
    Some(Circle {
        middle: found,
        radius_m,
        scatter_m: (scatter / count).sqrt(),
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use approx::assert_abs_diff_eq;
    use tussock_types::math;

    fn turn(east_m: f64, north_m: f64, edge_m: f64) -> Turn {
        Turn {
            place: Place::new(east_m, north_m),
            time_s: 0.0,
            into: [1.0, 0.0],
            onward: [-1.0, 0.0],
            edge_m,
        }
    }

    #[test]
    fn a_circle_through_exact_places_is_exact() {
        let places = (0..7).map(|step| {
            let (sine, cosine) = math::sin_cos(f64::from(step));
            Place::new(3.0 + 1.5 * cosine, -2.0 + 1.5 * sine)
        });
        let found = circle(places).unwrap();
        assert_abs_diff_eq!(found.middle.east_m, 3.0, epsilon = 1e-9);
        assert_abs_diff_eq!(found.middle.north_m, -2.0, epsilon = 1e-9);
        assert_abs_diff_eq!(found.radius_m, 1.5, epsilon = 1e-9);
        assert!(circle((0..5).map(|step| Place::new(f64::from(step), 1.0))).is_none());
    }

    #[test]
    fn turns_round_a_trunk_are_one_obstacle_and_three_turns_are_none() {
        let round: Vec<Turn> = (0..8)
            .map(|step| {
                let (sine, cosine) = math::sin_cos(0.8 * f64::from(step));
                turn(10.0 + 0.6 * cosine, 5.0 + 0.6 * sine, 4.0)
            })
            .collect();
        let found = obstacles(&round, 0.2, 0.0);
        assert_eq!((found.len(), found[0].turns), (1, 8));
        assert_abs_diff_eq!(found[0].radius_m, 0.4, epsilon = 1e-6);
        assert!(obstacles(&round[..3], 0.2, 0.0).is_empty());
    }

    #[test]
    fn the_setback_is_where_most_turns_agree() {
        let mut turns: Vec<Turn> = (0..60)
            .map(|n| turn(0.0, 0.0, 0.2 + 0.002 * f64::from(n % 5)))
            .collect();
        turns.extend((0..15).map(|n| turn(0.0, 0.0, 0.3 + 0.05 * f64::from(n))));
        assert_abs_diff_eq!(setback_m(&turns, 0.0).unwrap(), 0.204, epsilon = 0.02);
        assert_eq!(setback_m(&turns[..5], 0.0), None);
    }
}
