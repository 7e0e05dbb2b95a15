//! The files that other tools open.

mod garden;

use garden::{findings, frame, full_findings, hostile_findings, local_findings};
use geojson::{FeatureCollection, GeometryValue, Position};
use std::collections::BTreeSet;
use tussock_report::{ReportError, geojson as write_geojson};
use tussock_types::Place;

fn collection(text: &str) -> FeatureCollection {
    text.parse::<geojson::GeoJson>().unwrap().try_into().unwrap()
}

fn twice_area(ring: &[Position]) -> f64 {
    ring.windows(2)
        .map(|edge| {
            (edge[0][0] - ring[0][0]) * (edge[1][1] - ring[0][1])
                - (edge[1][0] - ring[0][0]) * (edge[0][1] - ring[0][1])
        })
        .sum()
}

#[test]
fn every_kind_of_finding_is_a_feature_with_kind_and_id() {
    let text = write_geojson(&full_findings()).unwrap();
    let collection = collection(&text);
    let kinds: BTreeSet<String> = collection
        .features
        .iter()
        .map(|feature| feature.property("kind").unwrap().as_str().unwrap().to_owned())
        .collect();
    let expected = [
        "missed_pocket",
        "not_yet",
        "stray",
        "stuck_spot",
        "suggestion",
        "unseen",
        "worn_line",
    ];
    assert_eq!(kinds.iter().map(String::as_str).collect::<Vec<_>>(), expected);
    for feature in &collection.features {
        let id = feature.property("id").unwrap().as_str().unwrap();
        assert_eq!(feature.id, Some(geojson::feature::Id::String(id.to_owned())));
    }
    assert!(!text.contains("\"crs\""));
}

#[test]
fn rings_are_closed_and_follow_the_right_hand_rule() {
    let mut sample = findings();
    // A hole in the pocket, drawn the wrong way round on purpose.
    let hole = [
        (22.0, -5.0),
        (23.0, -5.0),
        (23.0, -4.0),
        (22.0, -4.0),
        (22.0, -5.0),
    ];
    sample.missed_pockets[0].outline[0].reverse();
    sample.missed_pockets[0]
        .outline
        .push(hole.map(|(e, n)| Place::new(e, n)).to_vec());
    let mut rings_seen = 0;
    for feature in collection(&write_geojson(&sample).unwrap()).features {
        if let Some(GeometryValue::Polygon { coordinates }) = feature.geometry.map(|geometry| geometry.value)
        {
            for (index, ring) in coordinates.iter().enumerate() {
                assert_eq!(ring.first(), ring.last());
                assert_eq!(twice_area(ring) > 0.0, index == 0);
                rings_seen += 1;
            }
        }
    }
    assert_eq!(rings_seen, 5);
}

#[test]
fn positions_have_eight_decimals_and_come_back_within_a_millimetre() {
    let sample = findings();
    let text = write_geojson(&sample).unwrap();
    let collection = collection(&text);
    let pocket = &sample.missed_pockets[0];
    let Some(GeometryValue::Polygon { coordinates }) = collection.features[0]
        .geometry
        .as_ref()
        .map(|geometry| &geometry.value)
    else {
        panic!("M1 is a polygon")
    };
    for position in &coordinates[0] {
        assert_eq!((position[0] * 1e8).round() / 1e8, position[0]);
        let place = frame()
            .to_place(tussock_types::GeoPoint {
                lat_deg: position[1],
                lon_deg: position[0],
            })
            .unwrap();
        let nearest = pocket.outline[0]
            .iter()
            .map(|corner| corner.distance_m(place))
            .fold(f64::INFINITY, f64::min);
        assert!(nearest < 0.001, "{nearest}");
    }
    for word in text
        .split(|c: char| !c.is_ascii_digit() && c != '.')
        .filter(|word| word.contains("54.52"))
    {
        let decimals = word.split_once('.').unwrap().1.len();
        assert!(decimals <= 8, "{word}");
    }
}

#[test]
fn the_bbox_holds_every_position_and_touches_the_outermost() {
    let collection = collection(&write_geojson(&findings()).unwrap());
    let bbox = collection.bbox.clone().unwrap();
    let mut seen = [f64::INFINITY, f64::INFINITY, f64::NEG_INFINITY, f64::NEG_INFINITY];
    for feature in &collection.features {
        let positions: Vec<&Position> = match feature.geometry.as_ref().map(|geometry| &geometry.value) {
            Some(GeometryValue::Polygon { coordinates }) => coordinates.iter().flatten().collect(),
            Some(GeometryValue::Point { coordinates }) => vec![coordinates],
            _ => Vec::new(),
        };
        for position in positions {
            seen = [
                seen[0].min(position[0]),
                seen[1].min(position[1]),
                seen[2].max(position[0]),
                seen[3].max(position[1]),
            ];
        }
    }
    assert_eq!(bbox, seen);
}

#[test]
fn pockets_carry_their_figures() {
    let sample = findings();
    let collection = collection(&write_geojson(&sample).unwrap());
    let pocket = &sample.missed_pockets[0];
    let feature = &collection.features[0];
    assert_eq!(
        feature.property("area_m2").unwrap().as_f64(),
        Some(pocket.area_m2)
    );
    assert_eq!(
        feature.property("widest_m").unwrap().as_f64(),
        Some(pocket.widest_m)
    );
    assert_eq!(
        feature.property("chance_fraction").unwrap().as_f64(),
        Some(pocket.chance_fraction)
    );
    assert_eq!(
        feature.property("tape").unwrap().as_array().map(Vec::len),
        Some(2)
    );
    assert_eq!(
        feature.property("why").unwrap().as_str(),
        Some(pocket.why.as_str())
    );
}

#[test]
fn local_metres_make_no_geojson_and_say_why() {
    let error = write_geojson(&local_findings()).unwrap_err();
    assert!(matches!(error, ReportError::NoPlaceOnEarth { .. }));
    assert_eq!(
        error.to_string(),
        "no findings.geojson: positions are in local metres without a place on Earth, expected an origin in \
         the settings"
    );
}

#[test]
fn hostile_text_stays_text_in_geojson() {
    let text = write_geojson(&hostile_findings()).unwrap();
    collection(&text);
    assert!(!text.contains('\u{202e}') && !text.contains("\\u001b") && !text.contains("\\u0000"));
}
