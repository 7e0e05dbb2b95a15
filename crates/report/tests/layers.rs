//! The files that other tools open.

use crate::garden::{findings, frame, full_findings, hostile_findings, local_findings};
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
        Some(tussock_report::text(&pocket.why).as_str())
    );
}

#[test]
fn local_metres_make_no_geojson_and_say_why() {
    let error = write_geojson(&local_findings()).unwrap_err();
    assert!(matches!(error, ReportError::NoPlaceOnEarth { .. }));
    assert_eq!(
        error.to_string(),
        "no findings.geojson: positions are in local metres, without geographic coordinates, expected an origin in \
         the settings"
    );
}

#[test]
fn hostile_text_stays_text_in_geojson() {
    let text = write_geojson(&hostile_findings()).unwrap();
    collection(&text);
    assert!(!text.contains('\u{202e}') && !text.contains("\\u001b") && !text.contains("\\u0000"));
}

mod gpx_waypoints {
    use super::*;
    use tussock_report::{Voice, pockets_gpx};

    #[test]
    fn pockets_and_stuck_spots_are_read_back_as_waypoints() {
        let sample = full_findings();
        let read = gpx::read(pockets_gpx(&sample, Voice::default()).unwrap().as_slice()).unwrap();
        assert_eq!(read.version, gpx::GpxVersion::Gpx11);
        let names: Vec<&str> = read
            .waypoints
            .iter()
            .map(|waypoint| waypoint.name.as_deref().unwrap())
            .collect();
        assert_eq!(names, ["M1", "M2", "S1"]);
        let point = read.waypoints[0].point();
        let place = frame()
            .to_place(tussock_types::GeoPoint {
                lat_deg: point.y(),
                lon_deg: point.x(),
            })
            .unwrap();
        assert!(place.distance_m(crate::garden::M1) < 0.001);
        let description = read.waypoints[0].description.as_deref().unwrap();
        assert!(
            description.contains("m from the tool shed's south-east corner"),
            "{description}"
        );
        assert_eq!(read.routes.len(), 1);
        assert_eq!(read.routes[0].points.len(), 3);
        let bounds = read.metadata.unwrap().bounds.unwrap();
        assert!(bounds.min().y <= point.y() && point.y() <= bounds.max().y);
    }

    #[test]
    fn children_stand_in_the_order_of_the_schema() {
        let text = String::from_utf8(pockets_gpx(&full_findings(), Voice::default()).unwrap()).unwrap();
        let at = |what: &str| text.find(what).unwrap_or_else(|| panic!("{what}"));
        assert!(at("<metadata>") < at("<wpt") && at("<wpt") < at("<rte>"));
        for (first, second) in [("<name>M1", "<desc>Missed"), ("<desc>Missed", "<type>")] {
            assert!(at(first) < at(second), "{first} {second}");
        }
        assert!(!text.contains("<trk>") && !text.contains("<keywords>"));
        assert!(text.contains("xmlns=\"http://www.topografix.com/GPX/1/1\""));
    }

    #[test]
    fn hostile_text_stays_text_in_gpx() {
        let bytes = pockets_gpx(&hostile_findings(), Voice::default()).unwrap();
        let text = std::str::from_utf8(&bytes).unwrap();
        assert!(!text.contains("<script") && !text.contains("]]>") && !text.contains('\u{202e}'));
        assert!(!text.chars().any(|c| c != '\n' && c.is_control()));
        assert!(bytes.len() < 20_000, "{}", bytes.len());
        assert_eq!(gpx::read(bytes.as_slice()).unwrap().waypoints.len(), 3);
    }

    #[test]
    fn local_metres_make_no_waypoints() {
        assert!(matches!(
            pockets_gpx(&local_findings(), Voice::default()),
            Err(ReportError::NoPlaceOnEarth { .. })
        ));
    }
}

mod squares {
    use super::*;
    use parquet::file::reader::{FileReader, SerializedFileReader};
    use parquet::record::{Field, Row};
    use tussock_report::{cells_parquet, from_json, redact, to_json};
    use tussock_types::Findings;

    fn reader(findings: &Findings) -> SerializedFileReader<bytes::Bytes> {
        SerializedFileReader::new(bytes::Bytes::from(cells_parquet(findings).unwrap())).unwrap()
    }

    fn rows(findings: &Findings) -> Vec<Row> {
        reader(findings)
            .get_row_iter(None)
            .unwrap()
            .map(Result::unwrap)
            .collect()
    }

    fn value(row: &Row, name: &str) -> Field {
        row.get_column_iter()
            .find(|(column, _)| *column == name)
            .unwrap()
            .1
            .clone()
    }

    fn float(row: &Row, name: &str) -> f64 {
        match value(row, name) {
            Field::Float(value) => f64::from(value),
            Field::Double(value) => value,
            other => panic!("{name} is {other:?}"),
        }
    }

    #[test]
    fn every_square_with_lawn_is_a_row_and_sums_give_the_areas() {
        let sample = findings();
        let cells = sample.cells.as_ref().unwrap();
        let rows = rows(&sample);
        assert_eq!(
            rows.len(),
            cells.lawn_fraction.iter().filter(|lawn| **lawn > 0.0).count()
        );
        let square_m2 = cells.grid.cell_m2();
        let lawn_m2: f64 = rows.iter().map(|row| float(row, "lawn") * square_m2).sum();
        let visited_m2: f64 = rows
            .iter()
            .map(|row| float(row, "lawn") * float(row, "visited_probability") * square_m2)
            .sum();
        let coverage = sample.coverage.as_ref().unwrap();
        assert!((lawn_m2 - coverage.lawn_m2).abs() < 1e-6 * coverage.lawn_m2);
        assert!((visited_m2 - coverage.visited_m2).abs() < 1e-6 * coverage.lawn_m2);
    }

    #[test]
    fn centres_are_points_on_earth_and_times_are_utc() {
        let sample = findings();
        let start_s = sample.span.start_unix_s.unwrap();
        let mut never = 0;
        for row in rows(&sample) {
            let Field::Bytes(wkb) = value(&row, "geometry") else {
                panic!("geometry is binary")
            };
            let wkb = wkb.data();
            assert_eq!((wkb.len(), &wkb[..5]), (21, [1u8, 1, 0, 0, 0].as_slice()));
            let point = tussock_types::GeoPoint {
                lon_deg: f64::from_le_bytes(wkb[5..13].try_into().unwrap()),
                lat_deg: f64::from_le_bytes(wkb[13..21].try_into().unwrap()),
            };
            let centre = Place::new(float(&row, "east_m"), float(&row, "north_m"));
            assert!(frame().to_place(point).unwrap().distance_m(centre) < 0.001);
            match (value(&row, "last_visit"), value(&row, "last_visit_s")) {
                (Field::Null, Field::Null) => never += 1,
                (Field::TimestampMicros(us), Field::Float(last_s)) => {
                    assert!((us as f64 / 1e6 - start_s - f64::from(last_s)).abs() < 1e-5);
                }
                other => panic!("{other:?}"),
            }
        }
        assert!(never > 0);
    }

    #[test]
    fn the_metadata_are_geoparquet_1_1_without_crs() {
        let reader = reader(&findings());
        let pairs = reader
            .metadata()
            .file_metadata()
            .key_value_metadata()
            .unwrap()
            .clone();
        let of = |key: &str| {
            pairs
                .iter()
                .find(|pair| pair.key == key)
                .and_then(|pair| pair.value.clone())
        };
        let geo: serde_json::Value = serde_json::from_str(&of("geo").unwrap()).unwrap();
        assert_eq!(geo["version"], "1.1.0");
        assert_eq!(geo["primary_column"], "geometry");
        let column = &geo["columns"]["geometry"];
        assert_eq!(column["encoding"], "WKB");
        assert_eq!(column["geometry_types"], serde_json::json!(["Point"]));
        assert_eq!(column["bbox"].as_array().unwrap().len(), 4);
        assert!(column.get("crs").is_none());
        assert_eq!(of("tussock:cell_m").unwrap(), "0.2");
        assert!(of("tussock:origin").unwrap().contains("54.5234179"));
        let codec = reader.metadata().row_group(0).column(0).compression();
        assert!(matches!(codec, parquet::basic::Compression::ZSTD(_)), "{codec:?}");
    }

    #[test]
    fn private_squares_have_neither_place_nor_date() {
        let private = redact(&findings()).unwrap();
        let reader = reader(&private);
        let names: Vec<&str> = reader
            .metadata()
            .file_metadata()
            .schema()
            .get_fields()
            .iter()
            .map(|field| field.name())
            .collect();
        assert!(!names.contains(&"geometry"), "{names:?}");
        let pairs = reader.metadata().file_metadata().key_value_metadata().unwrap();
        assert!(
            !pairs
                .iter()
                .any(|pair| pair.key == "geo" || pair.key == "tussock:origin")
        );
        assert!(
            rows(&private)
                .iter()
                .all(|row| value(row, "last_visit") == Field::Null)
        );
        assert!(
            rows(&private)
                .iter()
                .any(|row| value(row, "last_visit_s") != Field::Null)
        );
    }

    #[test]
    fn a_saved_result_gives_the_same_bytes_again() {
        let sample = findings();
        let back = from_json(to_json(&sample).unwrap().as_bytes()).unwrap();
        assert!(cells_parquet(&sample).unwrap() == cells_parquet(&back).unwrap());
    }

    #[test]
    fn without_squares_there_is_no_table() {
        let error = cells_parquet(&crate::garden::bare_findings()).unwrap_err();
        assert_eq!(
            error.to_string(),
            "no cells.parquet: the findings hold no squares, expected a cutting width in the settings"
        );
    }
}

mod legs {
    use super::*;
    use parquet::file::reader::{FileReader, SerializedFileReader};
    use parquet::record::Field;
    use tussock_report::{legs_parquet, redact};

    fn rows(bytes: Vec<u8>) -> Vec<Vec<(String, Field)>> {
        let reader = SerializedFileReader::new(bytes::Bytes::from(bytes)).unwrap();
        let rows = reader.get_row_iter(None).unwrap();
        rows.map(|row| row.unwrap().into_columns()).collect()
    }

    fn double(row: &[(String, Field)], name: &str) -> f64 {
        match &row.iter().find(|(column, _)| column == name).unwrap().1 {
            Field::Double(value) => *value,
            other => panic!("{name} is {other:?}"),
        }
    }

    #[test]
    fn every_straight_piece_is_a_row_and_lengths_add_up_to_the_lines() {
        let mut sample = findings();
        let second = sample.driven_lines[0].split_off(500);
        sample.driven_lines.push(second);
        let rows = rows(legs_parquet(&sample).unwrap());
        let drawn_m: f64 = sample
            .driven_lines
            .iter()
            .flat_map(|line| line.windows(2))
            .map(|ends| ends[0].distance_m(ends[1]))
            .sum();
        let told_m: f64 = rows.iter().map(|row| double(row, "length_m")).sum();
        assert!((drawn_m - told_m).abs() < 1e-6 * drawn_m);
        let pieces: usize = sample.driven_lines.iter().map(|line| line.len() - 1).sum();
        assert_eq!(rows.len(), pieces);
        let first = &rows[0];
        let Field::Bytes(wkb) = &first[0].1 else {
            panic!("geometry is binary")
        };
        let wkb = wkb.data();
        assert_eq!(
            (wkb.len(), &wkb[..9]),
            (41, [1u8, 2, 0, 0, 0, 2, 0, 0, 0].as_slice())
        );
        let point = tussock_types::GeoPoint {
            lon_deg: f64::from_le_bytes(wkb[25..33].try_into().unwrap()),
            lat_deg: f64::from_le_bytes(wkb[33..41].try_into().unwrap()),
        };
        let end = Place::new(double(first, "to_east_m"), double(first, "to_north_m"));
        assert!(frame().to_place(point).unwrap().distance_m(end) < 0.001);
    }

    #[test]
    fn private_and_local_legs_have_no_place_on_earth_and_none_are_none() {
        for sample in [redact(&findings()).unwrap(), local_findings()] {
            let rows = rows(legs_parquet(&sample).unwrap());
            assert_eq!(rows[0][0].0, "line");
        }
        let error = legs_parquet(&crate::garden::bare_findings()).unwrap_err();
        assert_eq!(
            error.to_string(),
            "no legs.parquet: the findings hold no driven lines, expected a log with movement"
        );
    }
}
