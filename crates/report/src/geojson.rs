//! Where on Earth is each finding, for any tool that opens maps?
//!
//! One FeatureCollection after RFC 7946: longitude before latitude, eight decimals (a millimetre), outer rings
//! anticlockwise and holes clockwise, no `crs` member, a `bbox` for the whole. Every feature has
//! `properties.kind` and `properties.id`; ground of which only the area is known has a null geometry, which the
//! standard allows (section 3.2).
//!
//! Exact: positions come back within a millimetre. Known limit: a garden on the 180th meridian is not cut in
//! two. Cost: linear in the corners of the outlines.

use crate::{ReportError, words};
use geojson::{Bbox, Feature, FeatureCollection, Geometry, GeometryValue, JsonObject, Position, feature::Id};
use serde_json::{Value, json};
use tussock_types::{Findings, FrameFindings, Place, SuggestionKind, Tape};

/// The findings as `findings.geojson`.
///
/// # Errors
/// [`ReportError::NoPlaceOnEarth`] when the positions are in local metres without an origin.
pub fn geojson(findings: &Findings) -> Result<String, ReportError> {
    let Some(_) = findings.frame.origin() else {
        return Err(ReportError::NoPlaceOnEarth {
            file: "findings.geojson",
        });
    };
    let frame = &findings.frame;
    let mut features = Vec::new();
    for pocket in &findings.missed_pockets {
        let causes: Option<Vec<Value>> = pocket.causes.as_ref().map(|causes| {
            causes
                .iter()
                .map(|found| json!({ "cause": found.cause, "rank": found.rank }))
                .collect()
        });
        let properties = json!({
            "area_m2": pocket.area_m2,
            "widest_m": pocket.widest_m,
            "middle": middle(pocket.lat, pocket.lon),
            "chance_fraction": pocket.chance_fraction,
            "certainty": pocket.certainty,
            "why": crate::text(&pocket.why),
            "causes": causes,
            "tape": tape(&pocket.tape),
            "suggestion_ids": names(&pocket.suggestion_ids),
        });
        features.push(feature(
            "missed_pocket",
            &pocket.id,
            polygon(frame, &pocket.outline),
            properties,
        ));
    }
    for pocket in &findings.not_yet {
        let properties = json!({
            "area_m2": pocket.area_m2,
            "widest_m": pocket.widest_m,
            "middle": middle(pocket.lat, pocket.lon),
            "chance_fraction": pocket.chance_fraction,
            "hours_to_decide": pocket.hours_to_decide,
            "why": crate::text(&pocket.why),
            "tape": tape(&pocket.tape),
        });
        features.push(feature(
            "not_yet",
            &pocket.id,
            polygon(frame, &pocket.outline),
            properties,
        ));
    }
    for ground in findings.unseen.iter().flatten() {
        let properties = json!({ "area_m2": ground.area_m2, "why": crate::text(&ground.why) });
        features.push(feature(
            "unseen",
            &ground.id,
            polygon(frame, &ground.outline),
            properties,
        ));
    }
    for spot in &findings.stuck_spots {
        let properties = json!({
            "radius_m": spot.radius_m,
            "episodes": spot.episodes,
            "minutes": spot.minutes,
            "passes_through": spot.passes_through,
            "certainty": spot.certainty,
            "approach_deg": spot.approach_deg,
            "why": crate::text(&spot.why),
        });
        let point = point(frame, Place::new(spot.east_m, spot.north_m));
        features.push(feature("stuck_spot", &spot.id, point, properties));
    }
    for worn in findings.worn_lines.iter().flatten() {
        let properties = json!({
            "times_mean": worn.times_mean,
            "length_m": worn.length_m,
            "most_visits": worn.most_visits,
        });
        features.push(feature(
            "worn_line",
            &worn.id,
            line(frame, &worn.line),
            properties,
        ));
    }
    for stray in findings.strays.iter().flatten() {
        let properties = json!({
            "start_s": stray.start_s,
            "duration_s": stray.duration_s,
            "farthest_m": stray.farthest_m,
            "came_back": stray.came_back,
        });
        let point = point(frame, Place::new(stray.east_m, stray.north_m));
        features.push(feature("stray", &stray.id, point, properties));
    }
    for suggestion in findings.suggestions.iter().flatten() {
        let geometry = match suggestion.kind {
            SuggestionKind::ZoneMove | SuggestionKind::ZoneShrink | SuggestionKind::ZoneAdd => {
                polygon(frame, std::slice::from_ref(&suggestion.geometry))
            }
            _ => line(frame, &suggestion.geometry),
        };
        let cautions: Vec<String> = suggestion.cautions.iter().map(crate::text).collect();
        let properties = json!({
            "change": suggestion.kind,
            "why": crate::text(&suggestion.why),
            "wire_m": suggestion.wire_m,
            "outing_share_fraction": suggestion.outing_share_fraction,
            "shift_m": suggestion.shift_m,
            "added_h_per_day": suggestion.added_h_per_day,
            "pocket_ids": names(&suggestion.pocket_ids),
            "together_with": names(&suggestion.together_with),
            "pocket_fraction_in_log": suggestion.pocket_fraction_in_log,
            "certainty": suggestion.certainty,
            "shown_after_h": suggestion.shown_after_h,
            "predicted": suggestion.predicted,
            "cautions": cautions,
        });
        features.push(feature("suggestion", &suggestion.id, geometry, properties));
    }
    let collection = FeatureCollection {
        bbox: bounds(&features),
        features,
        foreign_members: None,
    };
    crate::json::pretty(&collection)
}

fn feature(kind: &str, id: &str, value: Option<GeometryValue>, properties: Value) -> Feature {
    let id = words::name(id);
    let mut members = JsonObject::new();
    members.insert("kind".to_owned(), kind.into());
    members.insert("id".to_owned(), id.clone().into());
    if let Value::Object(properties) = properties {
        members.extend(properties);
    }
    Feature {
        bbox: None,
        geometry: value.map(Geometry::new),
        id: Some(Id::String(id)),
        properties: Some(members),
        foreign_members: None,
    }
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

/// Which way a ring runs (RFC 7946, section 3.1.6).
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
            // Without its outer ring there is no polygon; a hole too small for eight decimals is none.
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
