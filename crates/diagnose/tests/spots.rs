//! Stuck spots compared with a slow twin and published values.

use approx::assert_abs_diff_eq;
use proptest::prelude::*;
use tussock_coverage::luck::agreement;
use tussock_diagnose::stuck::{Spot, stuck_spots};
use tussock_locate::{Halt, HaltPlace, Kept, NoiseEstimate, PathMethod, Track};
use tussock_plane::LegIndex;
use tussock_types::{NoiseSource, Place};

/// Reach between episodes of one spot if positions are exact.
const REACH_M: f64 = 1.5;
const STUCK_AFTER_S: f64 = 120.0;

/// Ten minutes of standing at a place, as the `number`th halt.
fn halt(number: usize, place: Place, came_from: Option<Place>) -> Halt {
    let start_s = 1000.0 * (number as f64 + 1.0);
    Halt {
        place,
        start_s,
        end_s: start_s + 600.0,
        at: HaltPlace::Elsewhere,
        radius_m: 0.1,
        came_from,
    }
}

fn track(halts: Vec<Halt>, drift_m: f64) -> Track {
    let end_s = 1000.0 * (halts.len() as f64 + 2.0);
    Track {
        machine: String::new(),
        pieces: Vec::new(),
        halts,
        smooths: false,
        stays: Vec::new(),
        gaps: Vec::new(),
        steps: Vec::new(),
        carried: Vec::new(),
        method: PathMethod::Legs,
        noise: NoiseEstimate {
            white_m: 0.0,
            drift_m: Some(drift_m),
            drift_rate_m2_per_s: 0.0,
            drift_time_s: None,
            source: NoiseSource::Default,
        },
        reckoned_drift: tussock_locate::ReckonedDrift::Measured { drift_m: 0.0 },
        period_s: 1.0,
        speed_mps: None,
        fixes_used: 0,
        gated_quality: 0,
        gated_jumps: 0,
        station: None,
        outings: None,
        span_s: Some((0.0, end_s)),
        read_s: Some((0.0, end_s)),
        kept: Kept::default(),
        anchored: None,
        bent: None,
    }
}

fn spots_of(places: &[Place], drift_m: f64) -> Vec<Spot> {
    let halts = (0..)
        .zip(places)
        .map(|(number, place)| halt(number, *place, None))
        .collect();
    stuck_spots(
        &[track(halts, drift_m)],
        &LegIndex::build(Vec::new()),
        STUCK_AFTER_S,
    )
}

/// Every pair is checked, and two that are close become one group: union-find without any index.
fn slow_groups(places: &[Place], reach_m: f64) -> Vec<Vec<usize>> {
    let mut group: Vec<usize> = (0..places.len()).collect();
    for one in 0..places.len() {
        for other in 0..one {
            if places[one].distance_m(places[other]) <= reach_m {
                let (keep, gone) = (group[other], group[one]);
                group
                    .iter_mut()
                    .filter(|name| **name == gone)
                    .for_each(|name| *name = keep);
            }
        }
    }
    let mut names = group.clone();
    names.sort_unstable();
    names.dedup();
    names
        .iter()
        .map(|name| (0..places.len()).filter(|at| group[*at] == *name).collect())
        .collect()
}

fn middle(places: &[Place], members: &[usize]) -> Place {
    let count = members.len() as f64;
    Place::new(
        members.iter().map(|at| places[*at].east_m).sum::<f64>() / count,
        members.iter().map(|at| places[*at].north_m).sum::<f64>() / count,
    )
}

/// Places anywhere, some only a few ULPs from another, some just within or beyond reach of one.
fn places() -> impl Strategy<Value = Vec<Place>> {
    let more = (
        0..5_u8,
        any::<prop::sample::Index>(),
        -9.0..9.0_f64,
        -9.0..9.0_f64,
    );
    prop::collection::vec(more, 1..60).prop_map(|drawn| {
        let mut places: Vec<Place> = Vec::new();
        for (kind, index, east_m, north_m) in drawn {
            let known = (!places.is_empty()).then(|| places[index.index(places.len())]);
            places.push(match (kind, known) {
                (0, Some(at)) => Place::new(at.east_m.next_up(), at.north_m.next_down()),
                (1, Some(at)) => Place::new(at.east_m + REACH_M * (1.0 - 1e-9), at.north_m),
                (2, Some(at)) => Place::new(at.east_m, at.north_m - REACH_M * (1.0 + 1e-9)),
                _ => Place::new(east_m, north_m),
            });
        }
        places
    })
}

proptest! {
    #[test]
    fn spots_are_those_of_a_look_at_every_pair(places in places(), drift_m in prop_oneof![Just(0.0), 0.0..1.0_f64]) {
        let found = spots_of(&places, drift_m);
        let mut expected: Vec<(usize, Place)> = slow_groups(&places, REACH_M + drift_m)
            .iter()
            .map(|members| (members.len(), middle(&places, members)))
            .collect();
        prop_assert_eq!(found.len(), expected.len());
        prop_assert_eq!(found.iter().map(|spot| spot.episodes).sum::<usize>(), places.len());
        for spot in &found {
            let same = expected
                .iter()
                .position(|(episodes, place)| *episodes == spot.episodes && place.distance_m(spot.place) < 1e-9);
            prop_assert!(same.is_some(), "{:?} is none of {:?}", spot, expected);
            expected.swap_remove(same.unwrap_or_default());
            prop_assert!((spot.lost_s - 600.0 * spot.episodes as f64).abs() < 1e-6);
        }
        prop_assert!(found.windows(2).all(|pair| pair[0].lost_s >= pair[1].lost_s));
    }

    #[test]
    fn the_order_of_the_halts_does_not_matter(places in places(), seed in any::<u64>()) {
        let mut shuffled = places.clone();
        let count = shuffled.len() as u64;
        for at in 0..count {
            let other = seed.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(at) % count;
            shuffled.swap(at as usize, other as usize);
        }
        let sizes = |places: &[Place]| {
            let mut sizes: Vec<usize> = spots_of(places, 0.0).iter().map(|spot| spot.episodes).collect();
            sizes.sort_unstable();
            sizes
        };
        prop_assert_eq!(sizes(&places), sizes(&shuffled));
    }
}

/// ALG-14b, DBSCAN by scikit-learn 1.9.1 with reach 0.5 and two points for a core: groups of six, five and two, and one
/// point of noise, which here is a spot with a single episode. Drawn three times as large to fit our reach. With four points
/// for a core (ALG-14a, c) DBSCAN answers another question.
#[test]
fn two_points_within_reach_are_a_cluster_as_published() {
    let points = [
        (0.0, 0.0),
        (0.3, 0.0),
        (0.0, 0.3),
        (0.3, 0.3),
        (0.15, 0.15),
        (5.0, 5.0),
        (5.2, 5.0),
        (5.0, 5.2),
        (5.2, 5.2),
        (5.1, 5.1),
        (2.5, 2.5),
        (0.75, 0.15),
        (9.0, 9.0),
        (9.2, 9.0),
    ];
    let labels = [0, 0, 0, 0, 0, 1, 1, 1, 1, 1, -1, 0, 2, 2];
    let places: Vec<Place> = points
        .iter()
        .map(|(east, north)| Place::new(3.0 * east, 3.0 * north))
        .collect();
    let found = spots_of(&places, 0.0);
    let sizes: Vec<usize> = found.iter().map(|spot| spot.episodes).collect();
    assert_eq!(sizes, [6, 5, 2, 1]);
    for (spot, label) in found.iter().zip([0, 1, 2, -1]) {
        let members: Vec<usize> = (0..points.len()).filter(|at| labels[*at] == label).collect();
        assert_abs_diff_eq!(
            spot.place.distance_m(middle(&places, &members)),
            0.0,
            epsilon = 1e-9
        );
    }
}

/// ALG-26, scipy 1.17.1 circmean of 350, 10, 20 and 5 degrees: 6.271074, mean resultant length 0.982253.
#[test]
fn the_approach_is_the_mean_on_the_circle() {
    let courses_deg = [350.0_f64, 10.0, 20.0, 5.0];
    let halts = (0..)
        .zip(courses_deg)
        .map(|(number, course_deg)| {
            let (sin, cos) = course_deg.to_radians().sin_cos();
            halt(
                number,
                Place::new(4.0, 7.0),
                Some(Place::new(4.0 - 3.0 * sin, 7.0 - 3.0 * cos)),
            )
        })
        .collect();
    let found = stuck_spots(&[track(halts, 0.0)], &LegIndex::build(Vec::new()), STUCK_AFTER_S);
    assert_eq!(found.len(), 1);
    assert_abs_diff_eq!(found[0].approach_deg.unwrap(), 6.271_074, epsilon = 1e-6);
    let directions = courses_deg.map(|deg| (deg.to_radians(), 1.0));
    assert_abs_diff_eq!(agreement(&directions, 1.0), 0.982_253, epsilon = 1e-6);
}

/// From all around there is no mean course.
#[test]
fn courses_that_do_not_agree_have_no_approach() {
    let halts = (0..4)
        .map(|number| {
            let (sin, cos) = (90.0 * number as f64).to_radians().sin_cos();
            halt(
                number,
                Place::new(0.0, 0.0),
                Some(Place::new(2.0 * sin, 2.0 * cos)),
            )
        })
        .collect();
    let found = stuck_spots(&[track(halts, 0.0)], &LegIndex::build(Vec::new()), STUCK_AFTER_S);
    assert_eq!(found[0].approach_deg, None);
}
