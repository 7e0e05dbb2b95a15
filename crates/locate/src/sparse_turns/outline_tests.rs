//! Rays, ellipses and ways along the line, compared with slow twins that step along it.

use super::outline::{Between, Outline};
use proptest::prelude::*;
use tussock_plane::Region;
use tussock_plane::Vector;
use tussock_types::Place;
use tussock_types::math;

const STEP_M: f64 = 0.002;

fn ring(corners: &[(f64, f64)]) -> Vec<Place> {
    corners
        .iter()
        .map(|(east, north)| Place::new(*east, *north))
        .collect()
}

/// An L with an island.
fn ground() -> Region {
    let outer = ring(&[
        (0.0, 0.0),
        (14.0, 0.0),
        (14.0, 6.0),
        (6.0, 7.0),
        (5.0, 12.0),
        (0.0, 12.0),
    ]);
    let island = ring(&[(8.0, 2.0), (10.0, 2.5), (9.0, 4.0)]);
    Region::from_rings(vec![vec![outer, island]]).expect("an L is ground")
}

fn outline() -> Outline {
    Outline::of(&ground(), 0.0).expect("an L is ground")
}

/// Every place on the line, a step apart.
fn walked() -> Vec<Vector> {
    ground()
        .edges()
        .flat_map(|(from, to)| {
            let (from, to) = (Vector::from(from), Vector::from(to));
            let steps = ((to - from).length() / STEP_M).ceil() as usize;
            (0..steps).map(move |step| from + (to - from) * (step as f64 / steps as f64))
        })
        .collect()
}

fn place() -> impl Strategy<Value = Vector> {
    (0.0..14.0_f64, 0.0..12.0_f64).prop_map(|(east, north)| Vector::new(east, north))
}

fn inside() -> impl Strategy<Value = Vector> {
    place().prop_filter("on the ground", |place| {
        ground().contains((*place).into()) && ground().edge_distance_m((*place).into()) > 0.01
    })
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]

    #[test]
    fn turns_of_a_length_lie_where_stepping_finds_them(a in inside(), b in inside(), more_m in 0.3..9.0_f64) {
        let length_m = (b - a).length() + more_m;
        let outline = outline();
        let mut found: Vec<Between> = Vec::new();
        outline.near(a, b, 20.0).between(a, b, length_m, 0.0, &mut found);
        let sum_m = |place: Vector| (place - a).length() + (place - b).length();
        for turn in &found {
            prop_assert!((sum_m(turn.place) - length_m).abs() < 1e-6);
            prop_assert!(ground().edge_distance_m(turn.place.into()) < 1e-9);
        }
        let walked = walked();
        for pair in walked.windows(2) {
            let one_ring = (pair[1] - pair[0]).length() < 2.0 * STEP_M;
            if one_ring && (sum_m(pair[0]) < length_m) != (sum_m(pair[1]) < length_m) {
                let near = found.iter().any(|turn| (turn.place - pair[0]).length() < 3.0 * STEP_M);
                prop_assert!(near, "no turn near {:?}", pair[0]);
            }
        }
    }

    #[test]
    fn a_ray_ends_where_stepping_leaves_the_ground(from in inside(), angle_rad in 0.0..std::f64::consts::TAU) {
        let heading = Vector::new(math::cos(angle_rad), math::sin(angle_rad));
        let outline = outline();
        let near = outline.near(from, from, 30.0);
        let hit = near.cast(from, heading, 30.0, 0.0).unwrap();
        let ground = ground();
        let steps = (hit.distance_m / STEP_M) as usize;
        for step in 0..steps {
            let place = from + heading * (step as f64 * STEP_M);
            prop_assert!(ground.contains(place.into()), "left before the hit");
        }
        let beyond = hit.place + heading * 1e-6;
        prop_assert!(!ground.contains(beyond.into()) || ground.edge_distance_m(beyond.into()) < 1e-6);
        prop_assert!(near.is_free(from, from + heading * (hit.distance_m - 1e-4), 0.0));
        prop_assert!(!near.is_free(from, from + heading * (hit.distance_m + 0.05), 0.0)
            || heading.cross(hit.edge.along) < 0.1);
    }

    #[test]
    fn the_way_along_the_line_is_the_shorter_one(a in place(), b in place()) {
        let outline = outline();
        let near = outline.near(a, b, 40.0);
        let (from, to) = (near.foot(a).unwrap(), near.foot(b).unwrap());
        let walked = walked();
        let nearest = walked.iter().map(|place| (*place - a).length()).fold(f64::INFINITY, f64::min);
        prop_assert!((nearest - from.distance_m).abs() < STEP_M);
        if let Some((corners, length_m)) = near.along(&from, &to, 12) {
            let mut at = from.place;
            let mut sum_m = 0.0;
            for corner in corners.iter().chain([&to.place]) {
                sum_m += (*corner - at).length();
                at = *corner;
            }
            prop_assert!((sum_m - length_m).abs() < 1e-9);
            let around_m: f64 = ground().perimeter_m();
            prop_assert!(length_m <= 0.5 * around_m + 1e-9);
            prop_assert!(length_m >= (to.place - from.place).length() - 1e-9);
        }
    }
}

#[test]
fn the_line_lies_inside_by_the_inset_and_round_islands_outside() {
    let near_m = |inset_m: f64, place: Vector| {
        let outline = Outline::of(&ground(), inset_m).unwrap();
        outline.near(place, place, 5.0).foot(place).unwrap().distance_m
    };
    for inset_m in [0.0, 0.2, 0.35, -0.1] {
        assert!(near_m(inset_m, Vector::new(3.0, inset_m)) < 1e-6);
        // Below the middle of the island's lower edge.
        let below = Vector::new(0.5, -2.0).unit().unwrap();
        assert!(near_m(inset_m, Vector::new(9.0, 2.25) + below * inset_m) < 1e-6);
    }
    assert!(
        Outline::of(&ground(), 5.0).is_none(),
        "nothing is left so far inside"
    );
}
