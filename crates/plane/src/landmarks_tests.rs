//! Landmarks of a drawn garden and the tapes from them.

use super::*;
use crate::Frame;
use proptest::prelude::*;
use tussock_types::math;
use tussock_types::{GeoPoint, GeoPolygon, Plan, PlanFeature, PlanRole, PlanShape, Said, Whether};

/// Role, name, corners (one for a point), radius.
type Drawn<'a> = (PlanRole, &'a str, &'a [(f64, f64)], Option<f64>);

fn garden(features: &[Drawn]) -> Site {
    let frame = Frame::at(GeoPoint {
        lat_deg: 52.0,
        lon_deg: 5.0,
    });
    let features = features
        .iter()
        .enumerate()
        .map(|(index, (role, name, corners, radius_m))| {
            let points: Vec<GeoPoint> = corners
                .iter()
                .map(|&(e, n)| frame.to_geo(Place::new(e, n)))
                .collect();
            let shape = match points.len() {
                1 => PlanShape::Point(points[0]),
                _ => {
                    let mut ring = points.clone();
                    ring.push(points[0]);
                    PlanShape::Polygons(vec![GeoPolygon { rings: vec![ring] }])
                }
            };
            PlanFeature {
                radius_m: *radius_m,
                ..PlanFeature::new(*role, *name, index, shape)
            }
        })
        .collect();
    let (site, faults) = Site::build_in(&Plan { features }, frame).unwrap();
    assert!(faults.is_empty(), "{faults:?}");
    site
}

fn usual_garden() -> Site {
    garden(&[
        (
            PlanRole::Lawn,
            "front",
            &[(0.0, 0.0), (30.0, 0.0), (30.0, 20.0), (0.0, 20.0)],
            None,
        ),
        (
            PlanRole::Exclusion,
            "pond",
            &[(20.0, 10.0), (25.0, 10.0), (25.0, 14.0), (20.0, 14.0)],
            None,
        ),
        (PlanRole::Obstacle, "apple tree", &[(8.0, 12.0)], Some(0.3)),
        (PlanRole::Station, "station-1", &[(15.0, 0.2)], None),
    ])
}

fn words(site: &Site) -> Vec<String> {
    site.landmarks()
        .into_iter()
        .map(|landmark| landmark.words)
        .collect()
}

#[test]
fn a_garden_is_known_by_its_station_trees_and_corners_and_not_by_what_was_only_drawn() {
    let found = words(&usual_garden());
    assert_eq!(
        found,
        [
            "the station",
            "the middle of the apple tree",
            "the north-east corner of the lawn",
            "the north-west corner of the lawn",
            "the south-west corner of the lawn",
            "the south-east corner of the lawn",
        ]
    );
    let site = usual_garden();
    let corner = site
        .landmarks()
        .into_iter()
        .find(|landmark| landmark.words == "the north-west corner of the lawn")
        .unwrap();
    assert!(corner.place.distance_m(Place::new(0.0, 20.0)) < 0.01);
    // A pocket beside the pond is measured from things that stand there, not from the pond's drawn corners.
    let from: Vec<String> = tape(&site.landmarks(), Place::new(19.0, 12.0))
        .into_iter()
        .map(|tape| tape.from)
        .collect();
    assert_eq!(from, ["the middle of the apple tree", "the station"]);
}

#[test]
fn a_zone_over_the_edge_makes_no_corner() {
    let site = garden(&[
        (
            PlanRole::Lawn,
            "lawn",
            &[(0.0, 0.0), (30.0, 0.0), (30.0, 20.0), (0.0, 20.0)],
            None,
        ),
        (
            PlanRole::Exclusion,
            "terrace",
            &[(22.0, 0.0), (30.0, 0.0), (30.0, 6.0), (22.0, 6.0)],
            None,
        ),
    ]);
    assert_eq!(
        words(&site),
        [
            "the north-east corner of the lawn",
            "the north-west corner of the lawn",
            "the south-west corner of the lawn",
        ]
    );
}

#[test]
fn corners_are_named_by_what_is_beside_them() {
    let site = garden(&[
        (
            PlanRole::Lawn,
            "lawn",
            &[(0.0, 0.0), (30.0, 0.0), (30.0, 20.0), (0.0, 20.0)],
            None,
        ),
        (
            PlanRole::Obstacle,
            "shed",
            &[(25.0, 16.0), (28.5, 16.0), (28.5, 18.5), (25.0, 18.5)],
            None,
        ),
        (PlanRole::Obstacle, "Linde 2", &[(10.0, 10.0)], Some(0.4)),
        (PlanRole::Station, "station", &[(6.0, 0.5)], None),
    ]);
    let found = words(&site);
    assert_eq!(
        found,
        [
            "the station",
            "the north-east corner of the shed",
            "the north-west corner of the shed",
            "the south-west corner of the shed",
            "the south-east corner of the shed",
            "the middle of Linde 2",
            "the corner of the lawn at the shed",
            "the corner of the lawn nearest the station",
            "the north-west corner of the lawn",
            "the south-east corner of the lawn",
        ]
    );
}

/// Two arms to the north: two corners in the south-east, two in the south-west, two in the north.
const COMB: [(f64, f64); 8] = [
    (0.0, 0.0),
    (20.0, 0.0),
    (20.0, 20.0),
    (14.0, 20.0),
    (14.0, 6.0),
    (6.0, 6.0),
    (6.0, 20.0),
    (0.0, 20.0),
];

#[test]
fn corners_in_one_wind_are_told_apart_by_what_one_sees() {
    let site = garden(&[
        (PlanRole::Lawn, "lawn", &COMB, None),
        (PlanRole::Station, "station", &[(0.0, 4.0)], None),
    ]);
    let landmarks = site.landmarks();
    let at = |words: &str| {
        let found = landmarks.iter().find(|landmark| landmark.words == words);
        found
            .map(|landmark| {
                (
                    landmark.place.east_m.round() as i64,
                    landmark.place.north_m.round() as i64,
                )
            })
            .unwrap_or_else(|| panic!("{words} not in {landmarks:?}"))
    };
    assert_eq!(
        at("the south-east corner of the lawn, the one nearer the station"),
        (14, 6)
    );
    assert_eq!(
        at("the south-east corner of the lawn, the one farther from the station"),
        (20, 0)
    );
    let mut unique: Vec<&String> = landmarks.iter().map(|landmark| &landmark.words).collect();
    unique.sort();
    unique.dedup();
    assert_eq!(unique.len(), landmarks.len());
    // As data it says the same, and fits no other landmark either.
    let farther = "the south-east corner of the lawn, the one farther from the station";
    let farther = landmarks.iter().find(|landmark| landmark.words == farther);
    let apart = Said::LandmarkCornerApart {
        body: String::new(),
        wind_deg: 135.0,
        farther: Whether::Yes,
        beside: String::new(),
    };
    assert_eq!(farther.unwrap().said, apart);
    for (at, one) in landmarks.iter().enumerate() {
        assert!(
            landmarks[..at].iter().all(|other| other.said != one.said),
            "{one:?}"
        );
    }
    // With nothing to distinguish them, only the outermost corners are named.
    let bare = words(&garden(&[(PlanRole::Lawn, "lawn", &COMB, None)]));
    assert_eq!(
        bare,
        [
            "the north-east corner of the lawn",
            "the north-west corner of the lawn",
            "the outermost south-west corner of the lawn",
            "the outermost south-east corner of the lawn"
        ]
    );
}

#[test]
fn of_several_corners_in_one_wind_the_outermost_is_known() {
    let site = garden(&[(
        PlanRole::Lawn,
        "lawn",
        &[
            (0.0, 0.0),
            (20.0, 0.0),
            (20.0, 12.0),
            (30.0, 12.0),
            (30.0, 20.0),
            (0.0, 20.0),
        ],
        None,
    )]);
    let found = site.landmarks();
    let outermost = "the outermost north-east corner of the lawn";
    let at = found.iter().find(|landmark| landmark.words == outermost).unwrap();
    assert!(at.place.distance_m(Place::new(30.0, 20.0)) < 0.01, "{found:?}");
}

#[test]
fn lawns_go_by_their_names_and_features_of_the_same_name_by_their_number() {
    let square = |e: f64, n: f64, side: f64| [(e, n), (e + side, n), (e + side, n + side), (e, n + side)];
    let site = garden(&[
        (PlanRole::Lawn, "front", &square(0.0, 0.0, 20.0), None),
        (PlanRole::Lawn, "back lawn", &square(40.0, 0.0, 20.0), None),
        (PlanRole::Obstacle, "shed", &square(5.0, 5.0, 3.0), None),
        (PlanRole::Obstacle, "shed", &square(50.0, 5.0, 3.0), None),
    ]);
    let found = words(&site);
    for expected in [
        "the north-east corner of lawn front",
        "the north-east corner of the back lawn",
        "the north-east corner of the shed (feature 2)",
        "the north-east corner of the shed (feature 3)",
    ] {
        assert!(
            found.iter().any(|words| words == expected),
            "{expected} not in {found:?}"
        );
    }
}

#[test]
fn round_edges_and_small_jogs_have_no_corners() {
    let disc: Vec<(f64, f64)> = (0..60)
        .map(|step| {
            let (sin, cos) = math::sin_cos(f64::from(step) / 60.0 * std::f64::consts::TAU);
            (10.0 * cos, 10.0 * sin)
        })
        .collect();
    let site = garden(&[(PlanRole::Lawn, "round", &disc, None)]);
    assert_eq!(words(&site), [""; 0]);
    let jog = [
        (0.0, 0.0),
        (10.0, 0.0),
        (10.0, 0.15),
        (20.0, 0.15),
        (20.0, 10.0),
        (0.0, 10.0),
    ];
    assert_eq!(words(&garden(&[(PlanRole::Lawn, "jogged", &jog, None)])).len(), 4);
}

fn mark(words: &str, east_m: f64, north_m: f64) -> Landmark {
    Landmark {
        words: words.to_owned(),
        said: Said::LandmarkStation {},
        place: Place::new(east_m, north_m),
        kind: LandmarkKind::Body,
    }
}

#[test]
fn what_stands_there_goes_before_a_corner_of_the_lawn_where_both_are_as_good() {
    let corner = |words: &str, east_m: f64, north_m: f64| Landmark {
        kind: LandmarkKind::LawnCorner,
        ..mark(words, east_m, north_m)
    };
    let from = |marks: &[Landmark]| -> Vec<String> {
        let tapes = tape(marks, Place::default());
        tapes.into_iter().map(|tape| tape.from).collect()
    };
    let marks = [
        corner("corner", 10.0, 0.0),
        mark("shed", -11.0, 0.0),
        mark("tree", 0.0, 8.0),
    ];
    assert_eq!(from(&marks), ["tree", "shed"]);
    // But not where the corner is far better.
    let marks = [
        corner("corner", 6.0, 0.0),
        mark("shed", -11.0, 0.0),
        mark("tree", 0.0, 8.0),
    ];
    assert_eq!(from(&marks), ["corner", "tree"]);
}

#[test]
fn tapes_cross_well_even_when_others_are_nearer() {
    let marks = [
        mark("a", 10.0, 0.0),
        mark("b", 11.0, 0.2),
        mark("c", -9.0, 0.0),
        mark("d", 0.0, 14.04),
    ];
    let found = tape(&marks, Place::default());
    assert_eq!(
        found.iter().map(|tape| tape.from.as_str()).collect::<Vec<_>>(),
        ["c", "d"]
    );
    assert_eq!(
        found.iter().map(|tape| tape.distance_m).collect::<Vec<_>>(),
        [9.0, 14.0]
    );
    assert_eq!((found[1].from_east_m, found[1].from_north_m), (0.0, 14.04));
}

#[test]
fn long_tapes_are_avoided() {
    let marks = [
        mark("near", 10.0, 0.0),
        mark("slanting", 12.0, 12.0),
        mark("far", 0.0, 60.0),
    ];
    assert_eq!(tape(&marks, Place::default())[1].from, "slanting");
}

#[test]
fn one_landmark_gives_one_tape_and_none_gives_none() {
    assert_eq!(tape(&[mark("a", 3.0, 4.0)], Place::default())[0].distance_m, 5.0);
    assert!(tape(&[], Place::default()).is_empty());
    assert_eq!(
        tape(&[mark("a", f64::NAN, 4.0), mark("b", 0.0, 1.0)], Place::default()).len(),
        1
    );
}

proptest! {
    #[test]
    fn a_pair_that_crosses_well_is_taken_when_there_is_one(
        places in prop::collection::vec((-20.0f64..20.0, -20.0f64..20.0), 2..12),
    ) {
        let marks: Vec<Landmark> = places.iter().enumerate().map(|(n, &(e, north))| mark(&format!("mark {n}"), e, north)).collect();
        let target = Place::default();
        let well = |a: Place, b: Place| {
            let angle = angle_deg(target, a, target, b);
            (LEAST_CROSSING_DEG..=180.0 - LEAST_CROSSING_DEG).contains(&angle)
        };
        let far_enough = |place: Place| place.distance_m(target) >= ON_THE_SPOT_M;
        let is_possible = marks.iter().any(|a| marks.iter().any(|b| a != b && far_enough(a.place) && far_enough(b.place) && well(a.place, b.place)));
        let found = tape(&marks, target);
        prop_assert_eq!(found.len(), 2);
        prop_assert!(found[0].distance_m <= found[1].distance_m);
        let [a, b] = [&found[0], &found[1]].map(|tape| Place::new(tape.from_east_m, tape.from_north_m));
        prop_assert!(!is_possible || well(a, b));
    }
}
