//! Where on Earth is each finding, for any tool that opens maps?
//!
//! One FeatureCollection after RFC 7946: longitude before latitude, eight decimals (a millimetre), outer rings anticlockwise
//! and holes clockwise, no `crs` member, a `bbox` for the whole. Every feature has `properties.kind` and `properties.id`;
//! ground of which only the area is known has a null geometry, as the standard allows (section 3.2).
//!
//! Exact: positions come back to within a millimetre. Known limit: a garden on the 180th meridian is not cut in two. Cost:
//! linear in the corners of the outlines.

use crate::{ReportError, words};
use geojson::{Bbox, Feature, FeatureCollection, Geometry, GeometryValue, JsonObject, Position, feature::Id};
use serde::Serialize;
use serde_json::{Value, json};
use tussock_types::{Findings, FrameFindings, Place, SuggestionKind, Tape};

/// The findings as `findings.geojson`.
///
/// # Errors
/// [`ReportError::NoPlaceOnEarth`] if the positions are in local metres without an origin.
pub fn geojson(findings: &Findings) -> Result<String, ReportError> {
    let Some(_) = findings.frame.origin() else {
        return Err(ReportError::NoPlaceOnEarth {
            file: "findings.geojson",
        });
    };
    let frame = &findings.frame;
    let mut features = Vec::new();
    for pocket in &findings.missed_pockets {
        let causes = pocket.causes.iter().flatten();
        let causes = causes.map(|found| json!({ "cause": found.cause, "rank": found.rank }));
        let more = json!({
            "middle": middle(pocket.lat, pocket.lon),
            "causes": pocket.causes.as_ref().map(|_| causes.collect::<Vec<_>>()),
            "tape": tape(&pocket.tape),
            "suggestion_ids": names(&pocket.suggestion_ids),
            "why": crate::text(&pocket.why),
        });
        let told = &["area_m2", "widest_m", "chance_fraction", "certainty"];
        features.push(feature(
            "missed_pocket",
            polygon(frame, &pocket.outline),
            pocket,
            told,
            more,
        )?);
    }
    for pocket in &findings.not_yet {
        let more = json!({
            "middle": middle(pocket.lat, pocket.lon),
            "tape": tape(&pocket.tape),
            "why": crate::text(&pocket.why),
        });
        let told = &["area_m2", "widest_m", "chance_fraction", "hours_to_decide"];
        features.push(feature(
            "not_yet",
            polygon(frame, &pocket.outline),
            pocket,
            told,
            more,
        )?);
    }
    for ground in findings.unseen.iter().flatten() {
        let shape = polygon(frame, &ground.outline);
        let more = json!({ "why": crate::text(&ground.why) });
        features.push(feature("unseen", shape, ground, &["area_m2"], more)?);
    }
    for spot in &findings.stuck_spots {
        let at = point(frame, Place::new(spot.east_m, spot.north_m));
        let told = &[
            "radius_m",
            "episodes",
            "minutes",
            "passes_through",
            "certainty",
            "approach_deg",
        ];
        let more = json!({ "why": crate::text(&spot.why) });
        features.push(feature("stuck_spot", at, spot, told, more)?);
    }
    for worn in findings.worn_lines.iter().flatten() {
        let told = &["times_mean", "length_m", "most_visits"];
        features.push(feature(
            "worn_line",
            line(frame, &worn.line),
            worn,
            told,
            Value::Null,
        )?);
    }
    for stray in findings.strays.iter().flatten() {
        let at = point(frame, Place::new(stray.east_m, stray.north_m));
        let told = &["start_s", "duration_s", "farthest_m", "came_back"];
        features.push(feature("stray", at, stray, told, Value::Null)?);
    }
    for suggestion in findings.suggestions.iter().flatten() {
        let geometry = match suggestion.kind {
            SuggestionKind::ZoneMove | SuggestionKind::ZoneShrink | SuggestionKind::ZoneAdd => {
                polygon(frame, std::slice::from_ref(&suggestion.geometry))
            }
            _ => line(frame, &suggestion.geometry),
        };
        let more = json!({
            "change": suggestion.kind,
            "pocket_ids": names(&suggestion.pocket_ids),
            "together_with": names(&suggestion.together_with),
            "why": crate::text(&suggestion.why),
            "cautions": suggestion.cautions.iter().map(crate::text).collect::<Vec<_>>(),
        });
        let told = &[
            "wire_m",
            "outing_share_fraction",
            "shift_m",
            "added_h_per_day",
            "pocket_fraction_in_log",
            "certainty",
            "shown_after_h",
            "done_after_h",
            "predicted",
        ];
        features.push(feature("suggestion", geometry, suggestion, told, more)?);
    }
    let collection = FeatureCollection {
        bbox: bounds(&features),
        features,
        foreign_members: None,
    };
    crate::json::pretty(&collection)
}

/// A feature for something found: the fields that are copied, and more.
fn feature(
    kind: &str,
    value: Option<GeometryValue>,
    found: &impl Serialize,
    told: &[&str],
    more: Value,
) -> Result<Feature, ReportError> {
    let found = serde_json::to_value(found).map_err(|source| ReportError::Json { source })?;
    let id = words::name(found["id"].as_str().unwrap_or_default());
    let mut members = JsonObject::new();
    for field in told {
        members.insert((*field).to_owned(), found[*field].clone());
    }
    if let Value::Object(more) = more {
        members.extend(more);
    }
    members.insert("kind".to_owned(), kind.into());
    members.insert("id".to_owned(), id.clone().into());
    Ok(Feature {
        bbox: None,
        geometry: value.map(Geometry::new),
        id: Some(Id::String(id)),
        properties: Some(members),
        foreign_members: None,
    })
}

fn middle(lat: Option<f64>, lon: Option<f64>) -> Value {
    match (lat, lon) {
        (Some(lat), Some(lon)) => json!([rounded(lon), rounded(lat)]),
        _ => Value::Null,
    }
}

fn tape(tape: &[Tape]) -> Value {
    tape.iter()
        .map(|tape| json!({ "from": words::name(&tape.from), "distance_m": tape.distance_m, "sd_m": tape.sd_m }))
        .collect()
}

fn names(ids: &[String]) -> Vec<String> {
    ids.iter().map(|id| words::name(id)).collect()
}

/// Eight decimals of a degree.
pub(crate) fn rounded(degrees: f64) -> f64 {
    (degrees * 1e8).round() / 1e8
}

fn position(frame: &FrameFindings, place: Place) -> Option<Position> {
    let point = frame.to_geo(place)?;
    Some(Position::from([rounded(point.lon_deg), rounded(point.lat_deg)]))
}

fn point(frame: &FrameFindings, place: Place) -> Option<GeometryValue> {
    position(frame, place).map(|coordinates| GeometryValue::Point { coordinates })
}

fn positions(frame: &FrameFindings, places: &[Place]) -> Option<Vec<Position>> {
    let mut line: Vec<Position> = places
        .iter()
        .map(|&place| position(frame, place))
        .collect::<Option<_>>()?;
    line.dedup();
    Some(line)
}

fn line(frame: &FrameFindings, places: &[Place]) -> Option<GeometryValue> {
    let coordinates = positions(frame, places)?;
    (coordinates.len() >= 2).then_some(GeometryValue::LineString { coordinates })
}

/// The direction of a ring (RFC 7946, section 3.1.6).
#[derive(Clone, Copy, PartialEq)]
enum Turn {
    Anticlockwise,
    Clockwise,
}

fn polygon(frame: &FrameFindings, rings: &[Vec<Place>]) -> Option<GeometryValue> {
    let mut coordinates = Vec::new();
    for (index, places) in rings.iter().enumerate() {
        let turn = if index == 0 {
            Turn::Anticlockwise
        } else {
            Turn::Clockwise
        };
        match ring(frame, places, turn) {
            Some(ring) => coordinates.push(ring),
            // Without its outer ring there is no polygon; a hole too small for eight decimals is dropped.
            None if index == 0 => return None,
            None => {}
        }
    }
    (!coordinates.is_empty()).then_some(GeometryValue::Polygon { coordinates })
}

fn ring(frame: &FrameFindings, places: &[Place], turn: Turn) -> Option<Vec<Position>> {
    let mut ring = positions(frame, places)?;
    if ring.first() != ring.last() {
        let first = ring.first()?.clone();
        ring.push(first);
    }
    let is_anticlockwise = twice_signed_area(&ring) > 0.0;
    if is_anticlockwise != (turn == Turn::Anticlockwise) {
        ring.reverse();
    }
    (ring.len() >= 4).then_some(ring)
}

/// Twice the signed area about the ring's own first corner, so that nothing large cancels.
fn twice_signed_area(ring: &[Position]) -> f64 {
    let Some(first) = ring.first() else {
        return 0.0;
    };
    ring.windows(2)
        .map(|edge| {
            let (ax, ay) = (edge[0][0] - first[0], edge[0][1] - first[1]);
            let (bx, by) = (edge[1][0] - first[0], edge[1][1] - first[1]);
            ax * by - bx * ay
        })
        .sum()
}

fn bounds(features: &[Feature]) -> Option<Bbox> {
    let mut bounds: Option<[f64; 4]> = None;
    let mut take = |position: &Position| {
        let b = bounds.get_or_insert([position[0], position[1], position[0], position[1]]);
        *b = [
            b[0].min(position[0]),
            b[1].min(position[1]),
            b[2].max(position[0]),
            b[3].max(position[1]),
        ];
    };
    for geometry in features.iter().filter_map(|feature| feature.geometry.as_ref()) {
        match &geometry.value {
            GeometryValue::Point { coordinates } => take(coordinates),
            GeometryValue::LineString { coordinates } => coordinates.iter().for_each(&mut take),
            GeometryValue::Polygon { coordinates } => coordinates.iter().flatten().for_each(&mut take),
            _ => {}
        }
    }
    bounds.map(Vec::from)
}
