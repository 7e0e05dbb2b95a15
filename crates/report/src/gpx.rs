//! How does somebody with a hand-held receiver or a phone walk to the pockets?
//!
//! GPX 1.1: one waypoint for the middle of each missed pocket and for each stuck spot, named by its id, with the message and
//! the tape distances in `desc`; suggested guide runs are routes. Eight decimals make a millimetre; the walker's receiver
//! will be less exact, which is why the tape distances are given too.
//!
//! Written with the `gpx` crate. Its writer puts tracks before routes and keywords before times, against the
//! schema's order, so neither tracks nor keywords nor times are written.

use crate::messages::Voice;
use crate::messages::say;
use crate::{ReportError, geojson::rounded, words};
use geo_types::{Point, Rect, coord};
use gpx::{Gpx, GpxVersion, Metadata, Route, Waypoint};
use tussock_types::{Findings, GeoPoint, Place, SuggestionKind, Tape};

/// The findings as `pockets.gpx`.
///
/// # Errors
/// [`ReportError::NoPlaceOnEarth`] if the positions are in local metres without an origin.
pub fn pockets_gpx(findings: &Findings, voice: Voice) -> Result<Vec<u8>, ReportError> {
    if findings.frame.origin().is_none() {
        return Err(ReportError::NoPlaceOnEarth { file: "pockets.gpx" });
    }
    let geo = |east_m: f64, north_m: f64| findings.frame.to_geo(Place::new(east_m, north_m));
    let mut waypoints = Vec::new();
    for pocket in &findings.missed_pockets {
        let figures = say!(
            voice,
            "missed-widest",
            area = words::area(voice, pocket.area_m2),
            length = words::metres(voice, pocket.widest_m),
            said = crate::messages::said(voice, &pocket.why)
        );
        if let Some(at) = geo(pocket.east_m, pocket.north_m) {
            let place = Place::new(pocket.east_m, pocket.north_m);
            let text = with_tape(voice, figures, &pocket.tape, place);
            waypoints.push(waypoint(at, &pocket.id, &text, "missed_pocket"));
        }
    }
    for spot in &findings.stuck_spots {
        let figures = say!(
            voice,
            "stuck-lost-within",
            count = say!(voice, "count-time", count = spot.episodes),
            time = words::minutes(voice, spot.minutes),
            length = words::metres(voice, spot.radius_m),
            said = words::why_stuck(voice, spot)
        );
        if let Some(at) = geo(spot.east_m, spot.north_m) {
            waypoints.push(waypoint(at, &spot.id, &figures, "stuck_spot"));
        }
    }
    let mut routes = Vec::new();
    for suggestion in findings.suggestions.iter().flatten() {
        if suggestion.kind != SuggestionKind::GuideRun {
            continue;
        }
        let points: Vec<Waypoint> = suggestion
            .geometry
            .iter()
            .filter_map(|place| geo(place.east_m, place.north_m))
            .map(|at| Waypoint::new(point(at)))
            .collect();
        routes.push(Route {
            name: Some(text(&words::name(&suggestion.id))),
            description: Some(text(&say!(
                voice,
                "suggested-guide",
                said = crate::messages::said(voice, &suggestion.why)
            ))),
            type_: Some("suggestion".to_owned()),
            points,
            ..Route::default()
        });
    }
    let all = || {
        waypoints
            .iter()
            .chain(routes.iter().flat_map(|route| &route.points))
            .map(Waypoint::point)
    };
    let bounds = all().map(|at| Rect::new(at.0, at.0)).reduce(|a, b| {
        Rect::new(
            coord! { x: a.min().x.min(b.min().x), y: a.min().y.min(b.min().y) },
            coord! { x: a.max().x.max(b.max().x), y: a.max().y.max(b.max().y) },
        )
    });
    let name = findings.settings.garden.name.as_deref().map(words::name);
    let document = Gpx {
        version: GpxVersion::Gpx11,
        creator: Some(text(&say!(
            voice,
            "tussock-id",
            id = words::plain(&findings.tool_version, 20)
        ))),
        metadata: Some(Metadata {
            name: name.map(|name| text(&name)),
            description: Some(say!(voice, "ground-mower-left-out")),
            bounds,
            ..Metadata::default()
        }),
        waypoints,
        tracks: Vec::new(),
        routes,
    };
    let mut bytes = Vec::new();
    gpx::write(&document, &mut bytes).map_err(|source| ReportError::Gpx { source })?;
    bytes.push(b'\n');
    Ok(bytes)
}

fn with_tape(voice: Voice, figures: String, tape: &[Tape], place: Place) -> String {
    match words::tape(voice, tape, place) {
        Some(tape) => say!(voice, "tape-figures", figures = figures, tape = tape),
        None => figures,
    }
}

/// The writer escapes `<` and `&`; this is the only other sequence that must not occur in text (XML 1.0, section 2.4).
fn text(plain: &str) -> String {
    plain.replace("]]>", "]] >")
}

fn point(at: GeoPoint) -> Point<f64> {
    Point::new(rounded(at.lon_deg), rounded(at.lat_deg))
}

fn waypoint(at: GeoPoint, id: &str, sentence: &str, kind: &str) -> Waypoint {
    let mut waypoint = Waypoint::new(point(at));
    waypoint.name = Some(text(&words::name(id)));
    waypoint.description = Some(text(sentence));
    waypoint.type_ = Some(kind.to_owned());
    waypoint
}
