//! A plan as GeoJSON.

use serde_json::{Map, Value};
use std::fmt::Write;
use tussock_types::{GeoPoint, GeoPolygon, Plan, PlanShape, decimal};

/// Writes a plan as RFC 7946 GeoJSON, one feature per line: longitude before latitude, 8 decimals (a millimetre), outer
/// rings anticlockwise and holes clockwise (right-hand rule).
pub fn write_plan(plan: &Plan) -> String {
    let mut text = String::from("{\"type\": \"FeatureCollection\", \"features\": [");
    for (position, feature) in plan.features.iter().enumerate() {
        text.push_str(if position == 0 { "\n" } else { ",\n" });
        let mut properties = Map::new();
        properties.insert("role".to_owned(), feature.role.word().into());
        properties.insert("name".to_owned(), feature.name.as_str().into());
        if let Some(radius_m) = feature.radius_m {
            properties.insert("radius_m".to_owned(), radius_m.into());
        }
        if let Some(share_fraction) = feature.outing_share_fraction {
            properties.insert("outing_share_fraction".to_owned(), share_fraction.into());
        }
        let properties = Value::Object(properties);
        // Writing to a string cannot fail.
        let _ = write!(
            text,
            "{{\"type\": \"Feature\", \"properties\": {properties}, \"geometry\": {{\"type\": "
        );
        match &feature.shape {
            PlanShape::Point(point) => {
                text.push_str("\"Point\", \"coordinates\": ");
                write_position(&mut text, *point);
            }
            PlanShape::Line(points) => {
                text.push_str("\"LineString\", \"coordinates\": ");
                write_list(&mut text, points, |text, point| write_position(text, *point));
            }
            PlanShape::Polygons(polygons) => match polygons.as_slice() {
                [polygon] => {
                    text.push_str("\"Polygon\", \"coordinates\": ");
                    write_polygon(&mut text, polygon);
                }
                _ => {
                    text.push_str("\"MultiPolygon\", \"coordinates\": ");
                    write_list(&mut text, polygons, write_polygon);
                }
            },
        }
        text.push_str("}}");
    }
    text.push_str("\n]}\n");
    text
}

fn write_list<T>(text: &mut String, items: &[T], write_item: impl Fn(&mut String, &T)) {
    text.push('[');
    for (position, item) in items.iter().enumerate() {
        if position > 0 {
            text.push_str(", ");
        }
        write_item(text, item);
    }
    text.push(']');
}

fn write_polygon(text: &mut String, polygon: &GeoPolygon) {
    let rings: Vec<Vec<GeoPoint>> = polygon
        .rings
        .iter()
        .enumerate()
        .map(|(position, ring)| {
            let is_hole = position > 0;
            let mut ring = ring.clone();
            if (turn_of(&ring) < 0.0) != is_hole {
                ring.reverse();
            }
            ring
        })
        .collect();
    write_list(text, &rings, |text, ring| {
        write_list(text, ring, |text, point| write_position(text, *point));
    });
}

/// Twice the area of a ring in square degrees, positive anticlockwise; longitudes unwrapped across the antimeridian.
fn turn_of(ring: &[GeoPoint]) -> f64 {
    let Some(first) = ring.first() else { return 0.0 };
    let offset = |point: &GeoPoint| {
        let east_deg = (point.lon_deg - first.lon_deg + 180.0).rem_euclid(360.0) - 180.0;
        (east_deg, point.lat_deg - first.lat_deg)
    };
    ring.windows(2)
        .map(|edge| {
            let (a, b) = (offset(&edge[0]), offset(&edge[1]));
            a.0 * b.1 - b.0 * a.1
        })
        .sum()
}

fn write_position(text: &mut String, point: GeoPoint) {
    let number = |degrees: f64| {
        if !degrees.is_finite() {
            // JSON has no such number; a reader will then name the place.
            return "null".to_owned();
        }
        decimal(degrees, 8)
    };
    let _ = write!(text, "[{}, {}]", number(point.lon_deg), number(point.lat_deg));
}
