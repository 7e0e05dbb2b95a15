//! Faulty plan files, each with its fault named and located, and the round trip.

use super::*;
use proptest::prelude::*;

const SQUARE: &str = "[[[5.0, 52.0], [5.001, 52.0], [5.001, 52.001], [5.0, 52.001], [5.0, 52.0]]]";

fn read(text: &str) -> Result<PlanRead, PlanFileError> {
    read_plan("garden.geojson", text.as_bytes(), &LimitSettings::default())
}

fn collection(features: &[String]) -> String {
    format!(
        "{{\"type\": \"FeatureCollection\", \"features\": [{}]}}",
        features.join(", ")
    )
}

fn feature(properties: &str, kind: &str, coordinates: &str) -> String {
    format!(
        "{{\"type\": \"Feature\", \"properties\": {properties}, \"geometry\": {{\"type\": \"{kind}\", \"coordinates\": {coordinates}}}}}"
    )
}

fn faults(feature: String) -> Vec<String> {
    let read = read(&collection(&[feature])).unwrap();
    read.faults
        .iter()
        .map(|fault| format!("{}{fault}", if fault.is_fatal { "" } else { "note: " }))
        .collect()
}

#[track_caller]
fn only(feature: String, expected: &str) {
    assert_eq!(faults(feature), [expected]);
}

#[test]
fn a_whole_plan_is_read() {
    let text = collection(&[
        feature(
            "{\"role\": \"lawn\", \"name\": \"front\", \"stroke\": \"#00aa00\"}",
            "Polygon",
            SQUARE,
        ),
        feature(
            "{\"role\": \"Lawn\"}",
            "MultiPolygon",
            &format!("[{SQUARE}, {SQUARE}]"),
        ),
        feature(
            "{\"role\": \"boundary\"}",
            "LineString",
            &SQUARE[1..SQUARE.len() - 1],
        ),
        feature("{\"role\": \"exclusion\"}", "Polygon", SQUARE),
        feature(
            "{\"role\": \"obstacle\", \"radius_m\": 0.4, \"name\": 7}",
            "Point",
            "[5.0005, 52.0005, 12.5]",
        ),
        feature(
            "{\"role\": \"guide\", \"outing_share_fraction\": 0.25}",
            "LineString",
            "[[5, 52], [5.0002, 52.0003]]",
        ),
        feature("{\"role\": \"station\"}", "Point", "[5, 52]"),
    ]);
    let found = read(&format!("\u{feff}{text}")).unwrap();
    assert_eq!(found.faults, []);
    let features = &found.plan.features;
    let names: Vec<&str> = features.iter().map(|feature| feature.name.as_str()).collect();
    assert_eq!(
        names,
        [
            "front",
            "lawn-2",
            "boundary-1",
            "exclusion-1",
            "7",
            "guide-1",
            "station-1"
        ]
    );
    assert_eq!(features[4].radius_m, Some(0.4));
    assert_eq!(
        features[4].shape,
        PlanShape::Point(GeoPoint {
            lat_deg: 52.0005,
            lon_deg: 5.0005
        })
    );
    assert_eq!(features[5].outing_share_fraction, Some(0.25));
    assert!(matches!(&features[1].shape, PlanShape::Polygons(polygons) if polygons.len() == 2));
    assert!(
        features
            .iter()
            .enumerate()
            .all(|(index, feature)| feature.index == index)
    );
}

#[test]
fn what_is_not_json_is_refused_with_line_and_column() {
    let error = read("{\"type\": \"FeatureCollection\",\n  features: []}").unwrap_err();
    assert_eq!(
        error.to_string(),
        "garden.geojson: line 2, column 3: not JSON: key must be a string"
    );
    assert_eq!(
        read("").unwrap_err().to_string(),
        "garden.geojson: line 1, column 1: not JSON: the file is empty"
    );
    let error = read("<gpx></gpx>").unwrap_err().to_string();
    assert!(error.ends_with("this looks like XML"), "{error}");
    assert!(matches!(
        read("{\"a\": 1e999}"),
        Err(PlanFileError::NotJson { .. })
    ));
    assert!(matches!(
        read(&"[".repeat(100_000)),
        Err(PlanFileError::NotJson { .. })
    ));
    assert!(matches!(
        read_plan("x", &[0xff, 0xfe, 0x00], &LimitSettings::default()),
        Err(PlanFileError::NotJson { .. })
    ));
}

#[test]
fn what_is_no_collection_is_refused_with_what_it_is() {
    let said = |text: &str| read(text).unwrap_err().to_string();
    let rest = ", expected a GeoJSON FeatureCollection (an object with \"type\": \"FeatureCollection\" and \"features\")";
    assert_eq!(said("[1]"), format!("garden.geojson: it holds a list{rest}"));
    assert_eq!(said("{}"), format!("garden.geojson: it has no \"type\"{rest}"));
    assert_eq!(
        said("{\"type\": \"Polygon\"}"),
        format!("garden.geojson: its \"type\" is \"Polygon\"{rest}")
    );
    assert_eq!(
        said("{\"type\": \"FeatureCollection\"}"),
        format!("garden.geojson: it has no \"features\"{rest}")
    );
}

#[test]
fn too_many_corners_are_refused() {
    let limits = LimitSettings {
        plan_corners: 9,
        ..LimitSettings::default()
    };
    let text = collection(&[
        feature("{\"role\": \"lawn\"}", "Polygon", SQUARE),
        feature("{\"role\": \"lawn\"}", "Polygon", SQUARE),
    ]);
    let error = read_plan("garden.geojson", text.as_bytes(), &limits).unwrap_err();
    assert_eq!(
        error.to_string(),
        "garden.geojson: 10 corners are more than the limit of 9 (limits.plan_corners)"
    );
    let long = " ".repeat(2 << 20);
    let error = read_plan("garden.geojson", long.as_bytes(), &limits).unwrap_err();
    assert!(error.to_string().contains("bytes are more than"), "{error}");
}

#[test]
fn roles_must_be_there_and_known() {
    let words = "lawn, boundary, exclusion, obstacle, guide, station";
    only(
        feature("{}", "Polygon", SQUARE),
        &format!("feature 0: properties.role is missing (expected one of {words})"),
    );
    only(
        feature("null", "Polygon", SQUARE),
        &format!("feature 0: properties.role is missing (expected one of {words})"),
    );
    only(
        feature("{\"role\": \"exlusion\", \"name\": \"pond\"}", "Polygon", SQUARE),
        &format!(
            "feature 0 \"pond\": \"exlusion\" is no role, the nearest is \"exclusion\" (expected one of {words})"
        ),
    );
    only(
        feature("{\"role\": \"no-go zone\"}", "Polygon", SQUARE),
        &format!(
            "feature 0: \"no-go zone\" is no role, the nearest is \"exclusion\" (expected one of {words})"
        ),
    );
    only(
        feature("{\"role\": 3}", "Polygon", SQUARE),
        &format!("feature 0: properties.role is 3 (expected one of {words})"),
    );
}

#[test]
fn geometries_must_fit_the_role() {
    only(
        feature("{\"role\": \"lawn\"}", "LineString", "[[5, 52], [5.1, 52]]"),
        "feature 0 \"lawn-1\": its geometry is \"LineString\" (expected a Polygon or MultiPolygon for a lawn)",
    );
    only(
        feature("{\"role\": \"station\"}", "MultiPoint", "[[5, 52]]"),
        "feature 0 \"station-1\": its geometry is \"MultiPoint\" (expected a Point for a station)",
    );
    only(
        "{\"type\": \"Feature\", \"properties\": {\"role\": \"guide\"}, \"geometry\": null}".to_owned(),
        "feature 0 \"guide-1\": it has no geometry (expected a LineString)",
    );
    only(
        "17".to_owned(),
        "feature 0: it is a number (expected an object with \"type\": \"Feature\")",
    );
    only(
        "{\"type\": \"Polygon\"}".to_owned(),
        "feature 0: its \"type\" is \"Polygon\" (expected \"Feature\")",
    );
}

#[test]
fn rings_must_be_closed_and_have_corners() {
    only(
        feature(
            "{\"role\": \"lawn\"}",
            "Polygon",
            "[[[5, 52], [5.001, 52], [5.001, 52.001], [5, 52.001]]]",
        ),
        "feature 0 \"lawn-1\", ring 0: the ring is not closed: it starts at longitude 5, latitude 52 and ends at longitude 5, \
         latitude 52.001 at 52.0010000, 5.0000000 (expected a last position equal to the first)",
    );
    let hole = format!(
        "{}, [[5.0002, 52.0002], [5.0003, 52.0002], [5.0002, 52.0002]]]",
        &SQUARE[..SQUARE.len() - 1]
    );
    only(
        feature("{\"role\": \"lawn\"}", "Polygon", &hole),
        "feature 0 \"lawn-1\", ring 1: the ring has 3 position(s) (expected at least 4, the last equal to the first)",
    );
    only(
        feature("{\"role\": \"lawn\"}", "Polygon", "[]"),
        "feature 0 \"lawn-1\": its coordinates hold no ring (expected a list of rings, each a list of positions)",
    );
    assert!(
        faults(feature(
            "{\"role\": \"boundary\"}",
            "LineString",
            "[[5, 52], [5.001, 52], [5.001, 52.001]]"
        ))[0]
            .contains("not closed")
    );
    assert!(
        faults(feature("{\"role\": \"guide\"}", "LineString", "[[5, 52]]"))[0]
            .contains("the line has 1 position(s)")
    );
}

#[test]
fn an_open_ring_is_closed_so_that_other_checks_can_go_on() {
    let text = collection(&[feature(
        "{\"role\": \"lawn\"}",
        "Polygon",
        "[[[5, 52], [5.001, 52], [5.001, 52.001], [5, 52.001]]]",
    )]);
    let found = read(&text).unwrap();
    let PlanShape::Polygons(polygons) = &found.plan.features[0].shape else {
        panic!()
    };
    assert_eq!(polygons[0].rings[0].len(), 5);
    assert!(found.faults[0].is_fatal);
}

#[test]
fn positions_must_be_numbers_in_range_and_swaps_are_suspected() {
    let with = |position: &str| {
        feature(
            "{\"role\": \"lawn\"}",
            "Polygon",
            &format!("[[[5, 52], {position}, [5.001, 52.001], [5, 52]]]"),
        )
    };
    let expected = "(expected longitude from -180 to 180, then latitude from -90 to 90 degrees)";
    only(
        with("[52.5, 144.9]"),
        &format!(
            "feature 0 \"lawn-1\", ring 0: position 1 has longitude 52.5, latitude 144.9; latitude and longitude look swapped {expected}"
        ),
    );
    only(
        with("[500000.0, 5761000.5]"),
        &format!(
            "feature 0 \"lawn-1\", ring 0: position 1 has longitude 500000, latitude 5761000.5; these look like metres of a map projection {expected}"
        ),
    );
    only(
        with("[5]"),
        "feature 0 \"lawn-1\", ring 0: position 1 is [5] (expected [longitude, latitude] as numbers)",
    );
    only(
        with("[\"5.0\", \"52.0\"]"),
        "feature 0 \"lawn-1\", ring 0: position 1 is [\"5.0\",\"52.0\"] (expected [longitude, latitude] as numbers)",
    );
    only(
        with("null"),
        "feature 0 \"lawn-1\", ring 0: position 1 is null (expected [longitude, latitude] as numbers)",
    );
}

#[test]
fn a_round_obstacle_needs_a_radius_and_a_share_is_a_fraction() {
    let tree = |rest: &str| feature(&format!("{{\"role\": \"obstacle\"{rest}}}"), "Point", "[5, 52]");
    only(
        tree(""),
        "feature 0 \"obstacle-1\": radius_m is missing (expected properties.radius_m for an obstacle given as a point)",
    );
    only(
        tree(", \"radius_m\": -0.4"),
        "feature 0 \"obstacle-1\": radius_m is -0.4 (expected a radius above 0)",
    );
    only(
        tree(", \"radius_m\": \"0.4\""),
        "feature 0 \"obstacle-1\": radius_m is \"0.4\" (expected a number without quotes)",
    );
    let found = faults(tree(", \"radius\": 0.4"));
    assert_eq!(
        found[0],
        "note: feature 0 \"obstacle-1\": properties.radius is not read (expected properties.radius_m)"
    );
    only(
        feature(
            "{\"role\": \"guide\", \"outing_share_fraction\": 30}",
            "LineString",
            "[[5, 52], [5.001, 52]]",
        ),
        "feature 0 \"guide-1\": outing_share_fraction is 30; is it in percent? (expected a number from 0 to 1)",
    );
}

#[test]
fn other_reference_systems_are_refused() {
    let named = |crs: &str| {
        format!(
            "{{\"type\": \"FeatureCollection\", \"crs\": {{\"type\": \"name\", \"properties\": {{\"name\": \"{crs}\"}}}}, \"features\": []}}"
        )
    };
    assert_eq!(read(&named("urn:ogc:def:crs:OGC:1.3:CRS84")).unwrap().faults, []);
    let found = read(&named("urn:ogc:def:crs:EPSG::25832")).unwrap().faults;
    assert!(found[0].is_fatal && found[0].found.contains("25832"));
}

#[test]
fn all_faults_come_at_once() {
    let text = collection(&[
        feature("{\"role\": \"lwan\"}", "Polygon", SQUARE),
        feature("{\"role\": \"lawn\"}", "Polygon", SQUARE),
        feature("{\"role\": \"obstacle\"}", "Point", "[5, 52]"),
        feature("{\"role\": \"station\"}", "Point", "[5, 152]"),
    ]);
    let found = read(&text).unwrap();
    let features: Vec<Option<usize>> = found.faults.iter().map(|fault| fault.feature).collect();
    assert_eq!(features, [Some(0), Some(2), Some(3)]);
}

fn plan_at(lat_deg: f64, lon_deg: f64) -> Plan {
    let station = PlanFeature::new(
        PlanRole::Station,
        "station",
        0,
        PlanShape::Point(GeoPoint { lat_deg, lon_deg }),
    );
    Plan {
        features: vec![station],
    }
}

#[test]
fn rings_are_written_by_the_right_hand_rule_and_zero_has_no_sign() {
    let clockwise = "[[[0, 0], [0, 0.001], [0.001, 0.001], [0.001, 0], [0, 0]], [[0.0002, 0.0002], [0.0004, 0.0002], [0.0004, 0.0004], [0.0002, 0.0002]]]";
    let plan = read(&collection(&[feature(
        "{\"role\": \"lawn\", \"name\": \"a \\\"quoted\\\" name\"}",
        "Polygon",
        clockwise,
    )]))
    .unwrap()
    .plan;
    let text = write_plan(&plan);
    assert!(
        text.contains("[[[0.00000000, 0.00000000], [0.00100000, 0.00000000], [0.00100000, 0.00100000]"),
        "{text}"
    );
    assert!(
        text.contains("[[0.00020000, 0.00020000], [0.00040000, 0.00040000]"),
        "{text}"
    );
    assert!(text.contains("a \\\"quoted\\\" name"), "{text}");
    let mut odd = plan_at(-1e-12, f64::NAN);
    assert!(write_plan(&odd).contains("[null, 0.00000000]"));
    odd.features[0].radius_m = Some(f64::NAN);
    assert!(serde_json::from_str::<Value>(&write_plan(&odd)).is_ok());
    assert_eq!(read(&write_plan(&Plan::default())).unwrap().plan, Plan::default());
}

fn any_point() -> impl Strategy<Value = GeoPoint> {
    (-90.0f64..=90.0, -180.0f64..=180.0).prop_map(|(lat_deg, lon_deg)| GeoPoint { lat_deg, lon_deg })
}

fn any_feature() -> impl Strategy<Value = PlanFeature> {
    let shape = prop_oneof![
        prop::collection::vec(any_point(), 2..6)
            .prop_map(|points| (PlanRole::Guide, PlanShape::Line(points))),
        any_point().prop_map(|point| (PlanRole::Station, PlanShape::Point(point))),
        any_point().prop_map(|point| (PlanRole::Obstacle, PlanShape::Point(point))),
        prop::collection::vec(prop::collection::vec(any_point(), 3..6), 1..3).prop_map(|rings| {
            let rings = rings
                .into_iter()
                .map(|mut ring| {
                    ring.push(ring[0]);
                    ring
                })
                .collect();
            (PlanRole::Lawn, PlanShape::Polygons(vec![GeoPolygon { rings }]))
        }),
    ];
    (
        shape,
        "[a-z\"\\\\ü<&]{1,8}",
        0.01f64..5.0,
        prop::option::of(0.0f64..1.0),
    )
        .prop_map(|((role, shape), name, radius_m, share)| PlanFeature {
            role,
            name,
            index: 0,
            shape,
            radius_m: (role == PlanRole::Obstacle).then_some(radius_m),
            outing_share_fraction: share.filter(|_| role == PlanRole::Guide),
        })
}

/// Every position, with rings in a fixed direction.
fn flattened(feature: &PlanFeature) -> Vec<GeoPoint> {
    match &feature.shape {
        PlanShape::Point(point) => vec![*point],
        PlanShape::Line(points) => points.clone(),
        PlanShape::Polygons(polygons) => polygons
            .iter()
            .flat_map(|polygon| &polygon.rings)
            .flat_map(|ring| {
                let mut ring = ring.clone();
                ring.sort_by(|a, b| {
                    a.lat_deg
                        .total_cmp(&b.lat_deg)
                        .then(a.lon_deg.total_cmp(&b.lon_deg))
                });
                ring
            })
            .collect(),
    }
}

proptest! {
    #[test]
    fn a_written_plan_reads_back_within_half_a_step(features in prop::collection::vec(any_feature(), 0..6)) {
        let mut plan = Plan { features };
        for (index, feature) in plan.features.iter_mut().enumerate() {
            feature.index = index;
        }
        let back = read(&write_plan(&plan)).unwrap();
        prop_assert_eq!(&back.faults, &vec![]);
        prop_assert_eq!(back.plan.features.len(), plan.features.len());
        for (found, given) in back.plan.features.iter().zip(&plan.features) {
            prop_assert_eq!(&found.name, given.name.trim());
            prop_assert_eq!((found.role, found.index, found.radius_m, found.outing_share_fraction),
                (given.role, given.index, given.radius_m, given.outing_share_fraction));
            for (a, b) in flattened(found).iter().zip(flattened(given)) {
                prop_assert!((a.lat_deg - b.lat_deg).abs() <= 5.1e-9 && (a.lon_deg - b.lon_deg).abs() <= 5.1e-9);
            }
        }
    }

    #[test]
    fn no_text_makes_the_reader_panic(text in "[\\[\\]{}:,\"a-z0-9. -]{0,200}") {
        let _ = read(&text);
        let _ = read(&collection(&[text]));
    }
}
