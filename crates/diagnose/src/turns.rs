//! What stands where the machine turned?
//!
//! Question: which turns have no edge of the plan nearby, and what would explain them?
//!
//! Method. Turns ([`tussock_locate::turns`]) far inside the ground are gathered by single linkage over an R-tree's
//! neighbours (Ester et al. 1996, core of one); four or more that lie on a circle (least squares, Kasa 1976, DOI
//! 10.1109/TIM.1976.6312298) are an obstacle that no plan shows.
//!
//! Approximate: at metre errors radii come out too large, because scatter widens the circle. Cost: turns times edges.

use rstar::{RTree, primitives::GeomWithData};
use tussock_locate::turns::Turn;
use tussock_plane::{Edge, Leg};
use tussock_types::{Place, Presence};

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
    /// Radius of the thing: that of the circle through the turns, minus the setback.
    pub radius_m: f64,
    /// Turns at it.
    pub turns: usize,
    /// First and last of them, seconds since 1970.
    pub within_s: (f64, f64),
}

impl Obstacle {
    /// Whether a machine drove through it while other drives turned there: then nothing stood there.
    pub fn is_driven_through(&self, legs: impl Iterator<Item = Leg>, error_m: f64) -> bool {
        self.drives_through(legs, error_m).meanwhile
    }

    /// Whether it stood there all the time, if it stood there at all.
    pub fn presence(&self, legs: impl Iterator<Item = Leg>, error_m: f64) -> Presence {
        let through = self.drives_through(legs, error_m);
        match (through.before, through.after) {
            (true, true) => Presence::CameAndWent,
            (true, false) => Presence::Came,
            (false, true) => Presence::Went,
            (false, false) => Presence::Throughout,
        }
    }

    /// When drives led through it: a single one may be a position error, two are not.
    fn drives_through(&self, legs: impl Iterator<Item = Leg>, error_m: f64) -> DrivesThrough {
        const LEAST_M: f64 = 0.1;
        const DRIVES: usize = 2;
        let inner_m = 0.5 * self.radius_m - 2.0 * error_m;
        let is_through = |leg: &Leg| {
            Edge::between(leg.from.into(), leg.to.into())
                .is_some_and(|edge| edge.distance_m(self.place) < inner_m)
        };
        let (mut before, mut meanwhile, mut after) = (0, 0, 0);
        for leg in legs.filter(|leg| inner_m > LEAST_M && is_through(leg)) {
            match leg {
                _ if leg.end_s <= self.within_s.0 => before += 1,
                _ if leg.start_s >= self.within_s.1 => after += 1,
                _ => meanwhile += 1,
            }
        }
        DrivesThrough {
            before: before >= DRIVES,
            meanwhile: meanwhile >= DRIVES,
            after: after >= DRIVES,
        }
    }
}

/// Whether drives led through a thing before, while and after it turned the machine.
struct DrivesThrough {
    before: bool,
    meanwhile: bool,
    after: bool,
}

/// Fewer turns at one place may be chance.
const LEAST_AT_ONE: usize = 4;
/// Larger circles are edges.
const LARGEST_M: f64 = 4.0;

/// Obstacles that no plan shows; the one with most turns first.
pub fn obstacles(inner: &[Turn], setback_m: f64, error_m: f64) -> Vec<Obstacle> {
    let link_m = 0.8 + 1.5 * error_m;
    let mut groups = linked(inner.iter().map(|turn| turn.place), link_m);
    groups.retain(|group| group.len() >= 3);
    // Turns around a large object may be farther apart than a link, so groups that fit one circle are joined.
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
                within_s: (group.iter().map(|turn| inner[*turn].time_s))
                    .fold((f64::INFINITY, f64::NEG_INFINITY), |(first_s, last_s), time_s| {
                        (first_s.min(time_s), last_s.max(time_s))
                    }),
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

/// Groups of places that are linked by steps of at most `link_m`, as numbers, each in ascending order.
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
    /// Root mean square distance of the places from the circle.
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
    use tussock_plane::Vector;
    use tussock_types::math;

    fn turn(east_m: f64, north_m: f64, edge_m: f64) -> Turn {
        Turn {
            place: Place::new(east_m, north_m),
            time_s: 0.0,
            into: Vector::new(1.0, 0.0),
            into_m: 5.0,
            onward: Vector::new(-1.0, 0.0),
            onward_m: 5.0,
            edge_m,
            at: None,
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
    fn what_was_driven_through_meanwhile_does_not_stand_there() {
        let thing = Obstacle {
            place: Place::new(0.0, 0.0),
            radius_m: 1.0,
            turns: 6,
            within_s: (100.0, 900.0),
        };
        let leg = |start_s: f64, north_m: f64| Leg {
            from: Place::new(-5.0, north_m),
            to: Place::new(5.0, north_m),
            start_s,
            end_s: start_s + 25.0,
        };
        let is_driven_through = |legs: &[Leg]| thing.is_driven_through(legs.iter().copied(), 0.02);
        assert!(is_driven_through(&[leg(200.0, 0.1), leg(500.0, -0.2)]));
        assert!(
            !is_driven_through(&[leg(200.0, 0.1), leg(500.0, 0.9)]),
            "one beside it"
        );
        assert!(
            !is_driven_through(&[leg(0.0, 0.1), leg(950.0, 0.0)]),
            "before and after"
        );
        assert!(
            !thing.is_driven_through([leg(200.0, 0.1), leg(500.0, 0.0)].into_iter(), 0.3),
            "unsure by as much"
        );
        let presence = |legs: &[Leg]| thing.presence(legs.iter().copied(), 0.02);
        let (before, after) = (
            [leg(0.0, 0.1), leg(40.0, -0.1)],
            [leg(950.0, 0.0), leg(990.0, 0.1)],
        );
        assert_eq!(presence(&before), Presence::Came);
        assert_eq!(presence(&after), Presence::Went);
        assert_eq!(presence(&[before, after].concat()), Presence::CameAndWent);
        assert_eq!(presence(&[before[0], after[0]]), Presence::Throughout);
    }
}
