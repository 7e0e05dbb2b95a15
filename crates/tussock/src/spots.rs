//! Stuck spots, and what lies near them.

use crate::ground::Ground;
use crate::layout::Layout;
use tussock_diagnose::stuck;
use tussock_types::StuckSpot;

/// Stuck spots with what to look at.
pub(crate) fn stuck_findings(ground: &Ground, layout: &Layout) -> Vec<StuckSpot> {
    layout
        .spots
        .iter()
        .enumerate()
        .map(|(number, spot)| {
            let geo = ground.geo(spot.place);
            StuckSpot {
                id: format!("S{}", number + 1),
                lat: geo.map(|geo| geo.lat_deg),
                lon: geo.map(|geo| geo.lon_deg),
                east_m: spot.place.east_m,
                north_m: spot.place.north_m,
                radius_m: spot.radius_m,
                episodes: spot.episodes as u64,
                minutes: spot.lost_s / 60.0,
                passes_through: spot.passes_through as u64,
                approach_deg: spot.approach_deg,
                certainty: spot.certainty(),
                why: why_stuck(spot, ground, layout),
            }
        })
        .collect()
}

/// What to look at, from what lies near.
fn why_stuck(spot: &stuck::Spot, ground: &Ground, layout: &Layout) -> String {
    const NEAR_M: f64 = 1.0;
    let passage = layout
        .necks
        .iter()
        .find(|(neck, _)| {
            neck.middle.distance_m(spot.place) <= 0.5 * neck.width_m.max(neck.length_m) + NEAR_M
        })
        .map(|(neck, _)| format!("in the passage that is {:.1} m wide", neck.width_m));
    let near = ground.site.as_ref().and_then(|site| {
        let zones = site.exclusions.iter().map(|zone| ("exclusion zone", zone));
        let obstacles = site.obstacles.iter().map(|obstacle| ("obstacle", obstacle));
        zones
            .chain(obstacles)
            .map(|(kind, named)| (kind, &named.name, named.shape.edge_distance_m(spot.place)))
            .filter(|(.., distance_m)| *distance_m <= NEAR_M)
            .min_by(|a, b| a.2.total_cmp(&b.2))
            .map(|(kind, name, distance_m)| format!("{distance_m:.1} m from the edge of {kind} \"{name}\""))
            .or_else(|| {
                let distance_m = site.drawn_lawn.edge_distance_m(spot.place);
                (distance_m <= NEAR_M).then(|| format!("{distance_m:.1} m from the lawn's edge"))
            })
    });
    let near = match (passage, near) {
        (Some(passage), Some(near)) => Some(format!("{passage}, {near}")),
        (passage, near) => passage.or(near),
    };
    let place = match (near, &ground.site) {
        (Some(near), _) => format!("It lies {near}: look for roots, a step or soft ground there."),
        (None, Some(_)) => "Nothing in the plan is near: look for roots, a hole or soft ground.".to_owned(),
        (None, None) => "Look for roots, a hole or soft ground.".to_owned(),
    };
    let course = spot.approach_deg.map_or_else(String::new, |deg| {
        format!(" It mostly came driving {}.", compass(deg))
    });
    format!("{place}{course}")
}

pub(crate) fn compass(course_deg: f64) -> &'static str {
    const NAMES: [&str; 8] = [
        "north",
        "north-east",
        "east",
        "south-east",
        "south",
        "south-west",
        "west",
        "north-west",
    ];
    NAMES[((course_deg / 45.0).round() as usize) % 8]
}
