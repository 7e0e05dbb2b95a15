//! Plans with every kind of fault, and what is left of a lawn.

use super::*;
use tussock_types::GeoPolygon;
use tussock_types::math;

const ORIGIN: GeoPoint = GeoPoint {
    lat_deg: 52.0,
    lon_deg: 5.0,
};

fn geo(east_m: f64, north_m: f64) -> GeoPoint {
    Frame::at(ORIGIN).to_geo(Place::new(east_m, north_m))
}

fn line(corners: &[(f64, f64)]) -> Vec<GeoPoint> {
    corners.iter().map(|&(e, n)| geo(e, n)).collect()
}

fn closed(corners: &[(f64, f64)]) -> Vec<GeoPoint> {
    let mut points = line(corners);
    points.push(points[0]);
    points
}

fn rectangle(e0: f64, n0: f64, e1: f64, n1: f64) -> Vec<GeoPoint> {
    closed(&[(e0, n0), (e1, n0), (e1, n1), (e0, n1)])
}

/// Features in the order of a file, with the names that a reader gives.
#[derive(Default)]
struct Draw {
    plan: Plan,
}

impl Draw {
    fn add(mut self, role: PlanRole, shape: PlanShape) -> Self {
        let index = self.plan.features.len();
        self.plan.features.push(PlanFeature::new(
            role,
            format!("{}-{}", role.word(), index),
            index,
            shape,
        ));
        self
    }

    fn polygon(self, role: PlanRole, rings: Vec<Vec<GeoPoint>>) -> Self {
        self.add(role, PlanShape::Polygons(vec![GeoPolygon { rings }]))
    }

    /// A lawn of 40 by 25 m.
    fn with_lawn() -> Self {
        Self::default().polygon(PlanRole::Lawn, vec![rectangle(0.0, 0.0, 40.0, 25.0)])
    }

    fn tree(mut self, east_m: f64, north_m: f64, radius_m: Option<f64>) -> Self {
        self = self.add(PlanRole::Obstacle, PlanShape::Point(geo(east_m, north_m)));
        self.plan.features.last_mut().unwrap().radius_m = radius_m;
        self
    }

    fn faults(&self) -> Vec<String> {
        let faults = match Site::build(&self.plan) {
            Ok((_, faults)) => {
                assert!(faults.iter().all(|fault| !fault.is_fatal));
                faults
            }
            Err(faults) => {
                assert!(faults.iter().any(|fault| fault.is_fatal));
                faults
            }
        };
        faults
            .iter()
            .map(|fault| format!("{}{fault}", if fault.is_fatal { "" } else { "note: " }))
            .collect()
    }

    fn is_refused(&self) -> bool {
        Site::build(&self.plan).is_err()
    }
}

#[track_caller]
fn only(faults: Vec<String>, expected: &str) {
    assert_eq!(faults, [expected]);
}

#[test]
fn a_sound_plan_has_no_faults_and_its_areas() {
    let draw = Draw::with_lawn()
        .polygon(PlanRole::Exclusion, vec![rectangle(30.0, 15.0, 35.0, 20.0)])
        .tree(10.0, 10.0, Some(0.5))
        .polygon(PlanRole::Obstacle, vec![rectangle(0.0, 0.0, 2.0, 3.0)])
        .polygon(PlanRole::Lawn, vec![rectangle(40.0, 10.0, 50.0, 12.0)])
        .add(
            PlanRole::Boundary,
            PlanShape::Line(rectangle(-0.2, -0.2, 40.2, 25.2)),
        )
        .add(PlanRole::Station, PlanShape::Point(geo(20.0, 0.5)))
        .add(
            PlanRole::Guide,
            PlanShape::Line(line(&[(20.0, 0.5), (20.0, 11.0), (45.0, 11.0)])),
        );
    assert_eq!(draw.faults(), [""; 0]);
    let (site, _) = Site::build(&draw.plan).unwrap();
    // Moved from the drawing's frame to the site's, the lawn changes by parts per billion.
    let near =
        |found: f64, expected: f64| assert!((found - expected).abs() < 1e-3, "{found} is not {expected}");
    let tree_m2 = std::f64::consts::PI * 0.25;
    near(site.drawn_lawn.area_m2(), 1000.0 + 20.0);
    near(site.lawn.area_m2(), 1020.0 - 25.0 - 6.0 - tree_m2);
    near(site.lawns[0].shape.area_m2(), 1000.0 - 25.0 - 6.0 - tree_m2);
    near(site.lawns[1].shape.area_m2(), 20.0);
    near(site.exclusions[0].shape.area_m2(), 25.0);
    near(site.obstacles[0].shape.area_m2(), tree_m2);
    near(site.boundary.as_ref().unwrap().area_m2(), 40.4 * 25.4);
    near(
        site.guides[0]
            .shape
            .windows(2)
            .map(|p| p[0].distance_m(p[1]))
            .sum(),
        10.5 + 25.0,
    );
    assert_eq!(
        (site.lawns[1].name.as_str(), site.lawns[1].feature),
        ("lawn-4", 4)
    );
    // The origin is the middle of mass of what is drawn.
    near(
        site.drawn_lawn.centroid().unwrap().distance_m(Place::default()),
        0.0,
    );
    let station = site.station.unwrap();
    near(site.frame.to_place(geo(20.0, 0.5)).distance_m(station), 0.0);
}

#[test]
fn the_frame_can_be_given() {
    let frame = Frame::at(geo(3.0, 4.0));
    let (site, _) = Site::build_in(&Draw::with_lawn().plan, frame).unwrap();
    let (low, _) = site.lawn.bounds().unwrap();
    // North of the two frames differs by a microradian.
    assert!(low.distance_m(Place::new(-3.0, -4.0)) < 1e-4);
    assert_eq!(site.frame, frame);
}

#[test]
fn an_empty_plan_has_no_lawn() {
    only(
        Draw::default().faults(),
        "plan: no feature has the role lawn (expected at least one polygon with properties.role = \"lawn\")",
    );
}

#[test]
fn a_crossing_outline_is_refused_with_the_place_of_the_crossing() {
    let draw = Draw::default().polygon(
        PlanRole::Lawn,
        vec![closed(&[(0.0, 0.0), (20.0, 20.0), (20.0, 0.0), (0.0, 20.0)])],
    );
    let faults = Site::build(&draw.plan).unwrap_err();
    let crossing = faults
        .iter()
        .find(|fault| fault.found.contains("crosses itself"))
        .unwrap();
    assert!(crossing.is_fatal && crossing.ring == Some(0));
    let at = Frame::at(ORIGIN).to_place(crossing.at.unwrap());
    assert!(at.distance_m(Place::new(10.0, 10.0)) < 1e-4, "{at:?}");
}

#[test]
fn a_crossing_at_a_corner_is_a_crossing_and_a_touch_is_not() {
    let crossing = [
        (0.0, 0.0),
        (10.0, 10.0),
        (20.0, 20.0),
        (20.0, 0.0),
        (10.0, 10.0),
        (0.0, 20.0),
    ];
    let draw = Draw::default().polygon(PlanRole::Lawn, vec![closed(&crossing)]);
    assert!(draw.is_refused());
    assert!(draw.faults()[0].contains("crosses itself"), "{:?}", draw.faults());
    let touch = [
        (0.0, 0.0),
        (10.0, 10.0),
        (20.0, 0.0),
        (20.0, 20.0),
        (10.0, 10.0),
        (0.0, 20.0),
    ];
    let draw = Draw::default().polygon(PlanRole::Lawn, vec![closed(&touch)]);
    assert!(!draw.is_refused());
    assert!(draw.faults()[0].starts_with("note: feature 0 \"lawn-0\", ring 0: the outline touches itself"));
    let (site, _) = Site::build(&draw.plan).unwrap();
    assert!((site.lawn.area_m2() - 200.0).abs() < 1e-3);
}

#[test]
fn a_tangle_is_named_three_times_and_counted() {
    let zigzag: Vec<(f64, f64)> = (0..40)
        .map(|step| {
            let angle_rad = f64::from(step) * 2.6;
            (10.0 * math::cos(angle_rad), 10.0 * math::sin(angle_rad))
        })
        .collect();
    let faults = Draw::default()
        .polygon(PlanRole::Lawn, vec![closed(&zigzag)])
        .faults();
    assert_eq!(faults.len(), 4, "{faults:?}");
    assert!(faults[3].contains("other places"), "{faults:?}");
}

#[test]
fn an_unclosed_ring_is_refused_with_its_gap() {
    let draw = Draw::default().polygon(
        PlanRole::Lawn,
        vec![line(&[(0.0, 0.0), (20.0, 0.0), (20.0, 20.0), (0.0, 20.0)])],
    );
    assert!(draw.is_refused());
    let faults = draw.faults();
    assert!(
        faults[0].contains("the ring is not closed, its ends are 20.00 m apart"),
        "{faults:?}"
    );
}

#[test]
fn rings_without_ground_are_refused() {
    let of = |corners: &[(f64, f64)]| {
        Draw::default()
            .polygon(PlanRole::Lawn, vec![closed(corners)])
            .faults()
            .remove(0)
    };
    assert!(of(&[(0.0, 0.0)]).contains("only 1 different corner"));
    assert!(of(&[(0.0, 0.0), (5.0, 5.0)]).contains("only 2 different corners"));
    assert!(of(&[(0.0, 0.0), (5.0, 5.0), (10.0, 10.0)]).contains("encloses no ground"));
    assert!(of(&[(0.0, 0.0), (0.05, 0.0), (0.0, 0.05)]).contains("the lawn has only 0.00 m2"));
    let zone = Draw::with_lawn().polygon(
        PlanRole::Exclusion,
        vec![closed(&[(1.0, 1.0), (1.05, 1.0), (1.0, 1.05)])],
    );
    assert!(
        zone.faults()[0].contains("encloses no ground (0.001"),
        "{:?}",
        zone.faults()
    );
    let faults = Draw::default().polygon(PlanRole::Lawn, vec![vec![]]).faults();
    assert!(faults[0].contains("the ring has no corners"), "{faults:?}");
    let faults = Draw::default().polygon(PlanRole::Lawn, vec![]).faults();
    assert!(
        faults[0].contains("it has no outline (expected a polygon)"),
        "{faults:?}"
    );
}

#[test]
fn a_tiny_lawn_is_refused() {
    only(
        Draw::default()
            .polygon(PlanRole::Lawn, vec![rectangle(0.0, 0.0, 0.9, 0.9)])
            .faults(),
        "plan: the lawn has only 0.81 m2 (expected at least 1 m2)",
    );
}

#[test]
fn repeated_corners_are_noted() {
    let mut ring = rectangle(0.0, 0.0, 40.0, 25.0);
    ring.insert(2, ring[2]);
    ring.insert(2, ring[2]);
    let faults = Draw::default().polygon(PlanRole::Lawn, vec![ring]).faults();
    assert_eq!(faults.len(), 1);
    assert!(
        faults[0].starts_with("note: feature 0 \"lawn-0\", ring 0: 2 corners repeat the corner before them"),
        "{faults:?}"
    );
}

#[test]
fn positions_that_are_no_positions_are_named_and_swaps_are_suspected() {
    let mut ring = rectangle(0.0, 0.0, 40.0, 25.0);
    ring[1].lat_deg = f64::NAN;
    let faults = Draw::default().polygon(PlanRole::Lawn, vec![ring]).faults();
    assert!(
        faults[0].contains("ring 0: corner 1 has latitude NaN, longitude"),
        "{faults:?}"
    );
    let swapped = GeoPoint {
        lat_deg: 144.9,
        lon_deg: -37.8,
    };
    let faults = Draw::with_lawn()
        .add(PlanRole::Station, PlanShape::Point(swapped))
        .faults();
    assert_eq!(
        faults[0],
        "feature 1 \"station-1\": corner 0 has latitude 144.9, longitude -37.8; latitude and longitude look swapped \
         (expected latitude from -90 to 90 and longitude from -180 to 180 degrees)"
    );
}

#[test]
fn zones_outside_are_refused_when_wholly_and_noted_when_partly() {
    let outside = Draw::with_lawn().polygon(PlanRole::Exclusion, vec![rectangle(60.0, 0.0, 65.0, 5.0)]);
    assert!(outside.is_refused());
    assert!(
        outside.faults()[0].contains("it lies wholly outside the lawn"),
        "{:?}",
        outside.faults()
    );
    let partly = Draw::with_lawn().polygon(PlanRole::Exclusion, vec![rectangle(38.0, 0.0, 42.0, 5.0)]);
    assert!(!partly.is_refused());
    assert!(
        partly.faults()[0].contains("10.00 m2 of its 20.00 m2 lie outside the lawn"),
        "{:?}",
        partly.faults()
    );
    let beside = Draw::with_lawn().tree(60.0, 0.0, Some(0.4));
    assert!(!beside.is_refused());
    assert!(beside.faults()[0].starts_with("note: "));
    let pond = rectangle(10.0, 10.0, 15.0, 15.0);
    let in_hole = Draw::default()
        .polygon(
            PlanRole::Lawn,
            vec![rectangle(0.0, 0.0, 40.0, 25.0), pond.clone()],
        )
        .polygon(PlanRole::Exclusion, vec![pond]);
    assert!(!in_hole.is_refused());
    assert!(
        in_hole.faults()[0].contains("the lawn already has a hole there"),
        "{:?}",
        in_hole.faults()
    );
}

#[test]
fn zones_that_leave_no_lawn_are_refused() {
    let draw = Draw::with_lawn().polygon(PlanRole::Exclusion, vec![rectangle(0.0, 0.0, 40.0, 25.0)]);
    assert!(
        draw.faults().iter().any(|fault| fault.contains("leave no lawn")),
        "{:?}",
        draw.faults()
    );
}

#[test]
fn holes_that_are_not_inside_are_refused_and_overlapping_ones_noted() {
    let lawn = rectangle(0.0, 0.0, 40.0, 25.0);
    let out = Draw::default().polygon(
        PlanRole::Lawn,
        vec![lawn.clone(), rectangle(35.0, 5.0, 45.0, 10.0)],
    );
    assert!(
        out.faults()[0].contains("ring 1: the hole is not inside the outline, 25.00 m2 of it lie outside"),
        "{:?}",
        out.faults()
    );
    assert!(out.is_refused());
    let holes = [rectangle(5.0, 5.0, 10.0, 10.0), rectangle(8.0, 5.0, 12.0, 10.0)];
    let both = Draw::default().polygon(PlanRole::Lawn, vec![lawn, holes[0].clone(), holes[1].clone()]);
    assert!(
        both.faults()[0].contains("ring 2: the hole overlaps another one by 10.00 m2"),
        "{:?}",
        both.faults()
    );
    let (site, _) = Site::build(&both.plan).unwrap();
    assert!((site.lawn.area_m2() - (1000.0 - 35.0)).abs() < 1e-3);
}

#[test]
fn lawns_that_overlap_are_noted_and_counted_once() {
    let draw = Draw::with_lawn().polygon(PlanRole::Lawn, vec![rectangle(30.0, 0.0, 60.0, 25.0)]);
    let faults = draw.faults();
    assert!(
        faults[0].starts_with("note: feature 1 \"lawn-1\": it overlaps lawn \"lawn-0\" by 250.00 m2"),
        "{faults:?}"
    );
    let (site, _) = Site::build(&draw.plan).unwrap();
    assert!((site.lawn.area_m2() - 1500.0).abs() < 1e-3);
}

#[test]
fn guide_runs_start_at_the_station_and_keep_out_of_zones() {
    let draw = Draw::with_lawn()
        .add(PlanRole::Station, PlanShape::Point(geo(0.0, 0.0)))
        .polygon(PlanRole::Exclusion, vec![rectangle(10.0, 5.0, 15.0, 15.0)])
        .add(
            PlanRole::Guide,
            PlanShape::Line(line(&[(30.0, 10.0), (5.0, 10.0), (1.0, 1.0)])),
        )
        .add(PlanRole::Guide, PlanShape::Line(line(&[(1.0, 1.0), (1.0, 1.0)])));
    let faults = draw.faults();
    let has = |words: &str| faults.iter().any(|fault| fault.contains(words));
    assert!(
        has("it starts 31.6 m from the station; it seems drawn the other way round"),
        "{faults:?}"
    );
    assert!(has("it runs 5.0 m through zone \"exclusion-2\""), "{faults:?}");
    assert!(has("the line has 1 different point(s)"), "{faults:?}");
    let lonely = Draw::with_lawn().add(PlanRole::Guide, PlanShape::Line(line(&[(1.0, 1.0), (9.0, 1.0)])));
    assert!(
        lonely.faults()[0].contains("there is no station"),
        "{:?}",
        lonely.faults()
    );
}

#[test]
fn shares_of_outings_are_fractions_that_add_up() {
    let guide = |share: f64, north_m: f64| {
        let mut draw = Draw::default().add(
            PlanRole::Guide,
            PlanShape::Line(line(&[(0.0, 0.0), (9.0, north_m)])),
        );
        draw.plan.features[0].outing_share_fraction = Some(share);
        draw.plan.features.remove(0)
    };
    let with = |shares: &[f64]| {
        let mut draw = Draw::with_lawn().add(PlanRole::Station, PlanShape::Point(geo(0.0, 0.0)));
        draw.plan.features.extend(
            shares
                .iter()
                .zip(1..)
                .map(|(share, north)| guide(*share, f64::from(north))),
        );
        draw
    };
    assert_eq!(with(&[0.4, 0.6]).faults(), [""; 0]);
    assert!(
        with(&[0.4, 0.7]).faults()[0].contains("add up to 1.100"),
        "{:?}",
        with(&[0.4, 0.7]).faults()
    );
    assert!(with(&[30.0]).is_refused() && with(&[f64::NAN]).is_refused());
}

#[test]
fn a_station_far_from_the_lawn_is_noted() {
    let draw = Draw::with_lawn().add(PlanRole::Station, PlanShape::Point(geo(-8.0, 3.0)));
    assert!(
        draw.faults()[0].contains("it stands 8.0 m outside the lawn"),
        "{:?}",
        draw.faults()
    );
    let near = Draw::with_lawn().add(PlanRole::Station, PlanShape::Point(geo(-4.0, 3.0)));
    assert_eq!(near.faults(), [""; 0]);
    let two = near.add(PlanRole::Station, PlanShape::Point(geo(1.0, 3.0)));
    // A second machine may have a station of its own.
    assert_eq!(two.faults(), [""; 0]);
}

#[test]
fn obstacles_given_as_points_need_a_radius() {
    assert!(Draw::with_lawn().tree(3.0, 3.0, None).faults()[0].contains("radius_m is missing"));
    assert!(Draw::with_lawn().tree(3.0, 3.0, Some(-1.0)).faults()[0].contains("radius_m is -1"));
    assert!(Draw::with_lawn().tree(3.0, 3.0, Some(f64::NAN)).is_refused());
}

#[test]
fn shapes_that_a_role_cannot_have_are_refused() {
    let faults = Draw::with_lawn()
        .add(PlanRole::Lawn, PlanShape::Point(geo(0.0, 0.0)))
        .add(
            PlanRole::Station,
            PlanShape::Line(line(&[(0.0, 0.0), (1.0, 0.0)])),
        )
        .add(PlanRole::Guide, PlanShape::Point(geo(0.0, 0.0)))
        .faults();
    assert_eq!(
        faults,
        [
            "feature 1 \"lawn-1\": a point cannot be a lawn (expected a polygon)",
            "feature 2 \"station-2\": a line cannot be a station (expected a point)",
            "feature 3 \"guide-3\": a point cannot be a guide (expected a line from the station outwards)",
        ]
    );
}

#[test]
fn a_plan_wider_than_any_garden_names_what_is_far() {
    let draw = Draw::with_lawn().tree(6000.0, 0.0, Some(1.0));
    assert!(
        draw.faults()[0]
            .starts_with("feature 1 \"obstacle-1\": it reaches 6000 m from the lawn's first corner"),
        "{:?}",
        draw.faults()
    );
    // The far side of the Earth is not near.
    let opposite = Draw::with_lawn().add(
        PlanRole::Station,
        PlanShape::Point(GeoPoint {
            lat_deg: -52.0,
            lon_deg: -175.0,
        }),
    );
    assert!(
        opposite.faults()[0].contains("more than 100 km"),
        "{:?}",
        opposite.faults()
    );
}

#[test]
fn a_garden_on_the_antimeridian_is_a_garden() {
    let frame = Frame::at(GeoPoint {
        lat_deg: -17.0,
        lon_deg: 179.99995,
    });
    let corner = |e: f64, n: f64| frame.to_geo(Place::new(e, n));
    let ring = vec![
        corner(-20.0, 0.0),
        corner(20.0, 0.0),
        corner(20.0, 20.0),
        corner(-20.0, 20.0),
        corner(-20.0, 0.0),
    ];
    assert!(ring.iter().any(|point| point.lon_deg < 0.0));
    let (site, faults) = Site::build(&Draw::default().polygon(PlanRole::Lawn, vec![ring]).plan).unwrap();
    assert!(faults.is_empty() && (site.lawn.area_m2() - 800.0).abs() < 1e-3);
}

#[test]
fn all_faults_come_at_once_in_the_order_of_the_file() {
    let faults = Draw::default()
        .polygon(
            PlanRole::Lawn,
            vec![closed(&[(0.0, 0.0), (20.0, 20.0), (20.0, 0.0), (0.0, 20.0)])],
        )
        .tree(1.0, 1.0, None)
        .polygon(
            PlanRole::Exclusion,
            vec![line(&[(1.0, 1.0), (2.0, 1.0), (2.0, 2.0)])],
        )
        .add(PlanRole::Guide, PlanShape::Line(line(&[(1.0, 1.0)])))
        .faults();
    assert!(faults.len() >= 4, "{faults:?}");
    let features: Vec<&str> = faults
        .iter()
        .map(|fault| fault.split('"').next().unwrap().trim_start_matches("note: "))
        .collect();
    assert!(features.is_sorted(), "{features:?}");
}

#[test]
fn what_follows_from_an_unreadable_feature_is_left_out() {
    let read = vec![PlanFault {
        feature: Some(1),
        ..of_plan("the ring has 2 points", "", true)
    }];
    let built = vec![
        of_plan("the lawn has only 0.50 m2", "", true),
        PlanFault {
            feature: Some(1),
            ..of_plan("it has no outline", "", true)
        },
        PlanFault {
            feature: Some(0),
            ..of_plan("it overlaps", "", false)
        },
    ];
    let all = crate::merge_faults(read, built);
    let words: Vec<&str> = all.iter().map(|fault| fault.found.as_str()).collect();
    assert_eq!(
        words,
        [
            "the lawn has only 0.50 m2",
            "it overlaps",
            "the ring has 2 points"
        ]
    );
}
