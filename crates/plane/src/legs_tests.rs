//! The index against a search over every leg.

use super::*;
use proptest::prelude::*;

fn leg(e0: f64, n0: f64, e1: f64, n1: f64) -> Leg {
    Leg {
        from: Place::new(e0, n0),
        to: Place::new(e1, n1),
        start_s: 0.0,
        end_s: 1.0,
    }
}

fn slowly_within(legs: &[Leg], place: Place, radius_m: f64) -> Vec<usize> {
    (0..legs.len())
        .filter(|&number| legs[number].distance_m(place) <= radius_m)
        .collect()
}

#[test]
fn a_leg_is_as_near_as_its_nearest_point() {
    let slanted = leg(0.0, 0.0, 4.0, 3.0);
    assert!((slanted.distance_m(Place::new(2.0, 1.5)) - 0.0).abs() < 1e-15);
    assert!((slanted.distance_m(Place::new(-3.0, 0.0)) - 3.0).abs() < 1e-15);
    assert!((slanted.distance_m(Place::new(4.0, 10.0)) - 7.0).abs() < 1e-15);
    assert!((leg(1.0, 1.0, 1.0, 1.0).distance_m(Place::new(4.0, 5.0)) - 5.0).abs() < 1e-15);
    assert_eq!(slanted.length_m(), 5.0);
}

#[test]
fn nothing_is_near_when_there_is_nothing() {
    let none = LegIndex::build(Vec::new());
    assert!(none.within(Place::default(), 1e9).is_empty());
    assert_eq!(none.nearest(Place::default()), None);
}

#[test]
fn legs_that_are_nowhere_keep_their_number_and_are_never_found() {
    let index = LegIndex::build(vec![
        leg(f64::NAN, 0.0, 1.0, 1.0),
        leg(0.0, 0.0, 1.0, 0.0),
        leg(0.0, f64::INFINITY, 1.0, 1.0),
    ]);
    assert_eq!(index.legs().len(), 3);
    assert_eq!(index.within(Place::new(0.5, 0.5), 100.0), [1]);
    assert_eq!(index.nearest(Place::new(0.5, 0.5)), Some((1, 0.5)));
    assert_eq!(index.nearest(Place::new(f64::NAN, 0.5)), None);
    assert!(index.within(Place::new(0.5, 0.5), f64::NAN).is_empty());
    assert!(index.within(Place::new(0.5, 0.5), -1.0).is_empty());
}

#[test]
fn of_legs_equally_near_the_first_is_the_nearest() {
    let index = LegIndex::build(vec![
        leg(5.0, 5.0, 6.0, 6.0),
        leg(1.0, -1.0, 1.0, 1.0),
        leg(-1.0, -1.0, -1.0, 1.0),
    ]);
    assert_eq!(index.nearest(Place::default()), Some((1, 1.0)));
}

fn coordinate() -> impl Strategy<Value = f64> {
    // Many exactly equal and touching legs: a mower that stands, turns on the spot, drives along an axis.
    prop_oneof![(-6i32..6).prop_map(f64::from), -6.0f64..6.0]
}

proptest! {
    #[test]
    fn the_index_equals_a_look_at_every_leg(
        ends in prop::collection::vec((coordinate(), coordinate(), coordinate(), coordinate()), 0..120),
        east_m in coordinate(), north_m in coordinate(),
        radius_m in prop_oneof![Just(0.0), Just(1.0), 0.0f64..8.0],
    ) {
        let legs: Vec<Leg> = ends.into_iter().map(|(a, b, c, d)| leg(a, b, c, d)).collect();
        let index = LegIndex::build(legs.clone());
        let place = Place::new(east_m, north_m);
        prop_assert_eq!(index.within(place, radius_m), slowly_within(&legs, place, radius_m));
        let nearest = legs
            .iter()
            .enumerate()
            .map(|(number, leg)| (number, leg.distance_m(place)))
            .min_by(|a, b| a.1.total_cmp(&b.1));
        prop_assert_eq!(index.nearest(place), nearest);
    }
}
