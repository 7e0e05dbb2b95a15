//! From findings to rows.

use crate::night::NightNumber;
use crate::table::{NIGHTS, POCKETS, STUCK_SPOTS, SUGGESTIONS, TableRow, Value, row};
use tussock_types::math;
use tussock_types::{Estimate, Findings, Grid, LogLevel, Place, PlanOffset, Said, StuckSpot, Suggestion};

/// A word of an enumeration as written in JSON.
fn word(value: impl serde::Serialize) -> Value {
    match serde_json::to_value(value) {
        Ok(serde_json::Value::String(word)) => Value::Text(word),
        _ => Value::Null,
    }
}

/// The parts of a night's row that do not come from the findings.
pub(crate) struct NightFacts<'a> {
    pub(crate) garden: &'a str,
    pub(crate) key: String,
    pub(crate) plan_sha256: &'a str,
    pub(crate) logs: usize,
}

pub(crate) fn night(facts: NightFacts<'_>, findings: &Findings) -> TableRow {
    let coverage = findings.coverage.as_ref();
    let of = |take: fn(&tussock_types::Coverage) -> f64| coverage.map(take);
    let visited: Option<Estimate> = coverage.map(|coverage| coverage.visited_fraction);
    let span = &findings.span;
    let positions = &findings.positions;
    let error_m = match (positions.white_m, positions.drift_m) {
        (None, None) => None,
        (white_m, drift_m) => Some(math::hypot(white_m.unwrap_or(0.0), drift_m.unwrap_or(0.0))),
    };
    let nights = findings.nights.as_ref().filter(|nights| !nights.is_empty());
    let hours = nights.map(|nights| nights.iter().map(|night| &night.hours));
    let driving_h = hours
        .clone()
        .map(|hours| hours.map(|of| of.driving_h + of.transit_h).sum());
    let span_h: Option<f64> = hours.map(|hours| {
        hours
            .map(|of| {
                let standing_h = of.at_station_h + of.halted_h + of.carried_h + of.silent_h;
                of.driving_h + of.transit_h + of.turning_h + of.reversing_h + standing_h
            })
            .sum()
    });
    let stuck_min: f64 = findings.stuck_spots.iter().map(|spot| spot.minutes).sum();
    let good_enough = findings.log_verdict.level == LogLevel::Good;
    let machines: Vec<&str> = findings.machines.iter().map(|machine| &machine.id[..]).collect();
    row!(NIGHTS {
        garden: facts.garden,
        key: facts.key,
        plan_sha256: facts.plan_sha256,
        logs: facts.logs,
        machines: machines.join(","),
        lawn_m2: of(|coverage| coverage.lawn_m2),
        visited_fraction: visited.map(|visited| visited.estimate),
        visited_low_fraction: visited.and_then(|visited| visited.low),
        visited_high_fraction: visited.and_then(|visited| visited.high),
        missed_m2: of(|coverage| coverage.missed_m2),
        not_yet_m2: of(|coverage| coverage.not_yet_m2),
        unseen_m2: of(|coverage| coverage.unseen_m2),
        driving_h: driving_h.unwrap_or(span.driving_s / 3600.0),
        at_station_h: span.at_station_s.map(|s| s / 3600.0),
        stuck_min: stuck_min,
        silent_h: span.silent_s / 3600.0,
        outings: span.outings,
        position_error_m: error_m,
        fixes_used: span.fixes_used,
        good_enough: if good_enough { "yes" } else { "no" },
        start_unix_s: span.start_unix_s,
        span_h: span_h,
        cut_width_m: of(|coverage| coverage.cut_width_m),
        speed_mps: span.speed_mps,
    })
}

/// Where something is on the plan, given where the findings say that it is in the log.
fn on_plan(place: Place, offset: Option<PlanOffset>) -> Place {
    let Some(by) = offset.filter(PlanOffset::is_beside) else {
        return place;
    };
    let about = (by.about_east_m, by.about_north_m);
    let unmoved = Place::new(place.east_m - by.east_m, place.north_m - by.north_m);
    turned(unmoved, about, -by.rotation_deg, about)
}

/// Where a place of the plan is in the log: the inverse of [`on_plan`].
fn in_log(place: Place, offset: Option<PlanOffset>) -> Place {
    let Some(by) = offset.filter(PlanOffset::is_beside) else {
        return place;
    };
    let to = (by.about_east_m + by.east_m, by.about_north_m + by.north_m);
    turned(place, (by.about_east_m, by.about_north_m), by.rotation_deg, to)
}

/// A place rotated about one place, which is then moved to another.
fn turned(place: Place, from: (f64, f64), rotation_deg: f64, to: (f64, f64)) -> Place {
    let (east_m, north_m) = (place.east_m - from.0, place.north_m - from.1);
    let (sin, cos) = math::sin_cos(rotation_deg.to_radians());
    Place::new(
        to.0 + cos * east_m - sin * north_m,
        to.1 + sin * east_m + cos * north_m,
    )
}

/// What is said, for whoever says it in another language.
pub(crate) fn as_data(said: &Said) -> Value {
    serde_json::to_string(said).map_or(Value::Null, Value::Text)
}

pub(crate) fn outline(rings: &[Vec<Place>], offset: Option<PlanOffset>) -> Value {
    // To the centimetre, because people read rows too.
    let cm = |value_m: f64| (value_m * 100.0).round() / 100.0;
    let rings: Vec<Vec<(f64, f64)>> = rings
        .iter()
        .map(|ring| {
            ring.iter()
                .map(|place| on_plan(*place, offset))
                .map(|place| (cm(place.east_m), cm(place.north_m)))
                .collect()
        })
        .collect();
    serde_json::to_string(&rings).map_or(Value::Null, Value::Text)
}

pub(crate) fn pockets(garden: &str, findings: &Findings) -> Vec<TableRow> {
    let offset = findings.plan_offset();
    // The two kinds of pockets share these fields by name.
    macro_rules! pocket {
        ($pocket:ident, $verdict:literal, $cause:expr) => {{
            let at = on_plan(Place::new($pocket.east_m, $pocket.north_m), offset);
            row!(POCKETS {
                garden: garden,
                pocket: &$pocket.id,
                verdict: $verdict,
                area_m2: $pocket.area_m2,
                widest_m: $pocket.widest_m,
                lat: $pocket.lat,
                lon: $pocket.lon,
                east_m: at.east_m,
                north_m: at.north_m,
                chance_fraction: $pocket.chance_fraction,
                cause: $cause,
                why: tussock_report::text(&$pocket.why),
                said: as_data(&$pocket.why),
                outline: outline(&$pocket.outline, offset),
            })
        }};
    }
    let missed = findings.missed_pockets.iter().map(|pocket| {
        let cause = pocket.causes.as_ref().and_then(|causes| causes.first());
        pocket!(pocket, "missed", cause.map(|cause| word(cause.cause)))
    });
    let not_yet = findings
        .not_yet
        .iter()
        .map(|pocket| pocket!(pocket, "not_yet", Value::Null));
    missed.chain(not_yet).collect()
}

pub(crate) fn stuck_spots(garden: &str, findings: &Findings) -> Vec<TableRow> {
    let offset = findings.plan_offset();
    let row = |spot: &StuckSpot| {
        let at = on_plan(Place::new(spot.east_m, spot.north_m), offset);
        row!(STUCK_SPOTS {
            garden: garden,
            spot: &spot.id,
            lat: spot.lat,
            lon: spot.lon,
            east_m: at.east_m,
            north_m: at.north_m,
            radius_m: spot.radius_m,
            episodes: spot.episodes,
            lost_min: spot.minutes,
            certainty: spot.certainty,
            why: tussock_report::text(&spot.why),
            said: as_data(&spot.why),
        })
    };
    findings.stuck_spots.iter().map(row).collect()
}

pub(crate) fn suggestions(garden: &str, findings: &Findings) -> Vec<TableRow> {
    let offset = findings.plan_offset();
    let row = |suggestion: &Suggestion| {
        let predicted = &suggestion.predicted;
        row!(SUGGESTIONS {
            garden: garden,
            suggestion: &suggestion.id,
            kind: word(suggestion.kind),
            why: tussock_report::text(&suggestion.why),
            pockets: suggestion.pocket_ids.join(","),
            wire_m: suggestion.wire_m,
            outing_share_fraction: suggestion.outing_share_fraction,
            pocket_before_fraction: predicted.pocket_fraction_before.estimate,
            pocket_after_fraction: predicted.pocket_fraction_after.estimate,
            visited_before_fraction: predicted.visited_fraction_before.estimate,
            visited_after_fraction: predicted.visited_fraction_after.estimate,
            certainty: suggestion.certainty,
            geometry: outline(std::slice::from_ref(&suggestion.geometry), offset),
        })
    };
    findings.suggestions.iter().flatten().map(row).collect()
}

/// The squares of the lawn, with 0 off it, 1 not visited, 2 visited, on a grid that is fixed to the plan: the same for every
/// night, even if the log shows that the plan is displaced.
pub(crate) fn visited(findings: &Findings, (low, high): (Place, Place)) -> Option<(Grid, Vec<u8>)> {
    let cells = findings.cells.as_ref()?;
    findings.coverage.as_ref()?;
    let side_m = cells.grid.cell_m;
    let count = |from_m: f64, to_m: f64| ((to_m - from_m) / side_m).ceil().clamp(1.0, 1e5) as usize;
    let grid = Grid {
        east_min_m: low.east_m,
        north_min_m: low.north_m,
        cell_m: side_m,
        columns: count(low.east_m, high.east_m),
        rows: count(low.north_m, high.north_m),
    };
    let mark = |at: usize| {
        let place = in_log(
            grid.centre(at % grid.columns, at / grid.columns),
            findings.plan_offset(),
        );
        let Some((column, row)) = cells.grid.cell_at(place) else {
            return 0;
        };
        let at = row * cells.grid.columns + column;
        match (cells.lawn_fraction.get(at), cells.visited_probability.get(at)) {
            (Some(lawn), Some(visited)) if *lawn >= 0.5 => 1 + u8::from(*visited >= 0.5),
            _ => 0,
        }
    };
    Some((grid, (0..grid.cells()).map(mark).collect()))
}

/// The nights named in a list.
pub(crate) fn nights_in(text: &str) -> Vec<NightNumber> {
    text.split(',').filter_map(crate::night::parse).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_way_into_the_log_and_back_is_no_way() {
        let offset = Some(PlanOffset {
            east_m: 1.5,
            north_m: -0.7,
            rotation_deg: 3.0,
            about_east_m: 4.0,
            about_north_m: -2.0,
            sd_m: 0.01,
        });
        let there = in_log(Place::new(12.0, 7.0), offset);
        assert!(there.distance_m(Place::new(12.0, 7.0)) > 1.0);
        assert!(on_plan(there, offset).distance_m(Place::new(12.0, 7.0)) < 1e-9);
        // The place about which it is rotated is only moved.
        let about = in_log(Place::new(4.0, -2.0), offset);
        assert!(about.distance_m(Place::new(5.5, -2.7)) < 1e-12);
    }
}
