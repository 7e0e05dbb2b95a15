//! Stuck spots, and what lies near them.

use crate::site_analysis::SiteAnalysis;
use crate::{stuck, worn};
use tussock_locate::activities;
use tussock_survey::Survey;
use tussock_survey::outings;
use tussock_types::{Cells, PossibleStop, Said, Stray, StuckNear, StuckSpot, WornLine};

/// Stuck spots, each with what to look at.
pub fn stuck_findings(survey: &Survey<'_>, layout: &SiteAnalysis) -> Vec<StuckSpot> {
    layout
        .spots
        .iter()
        .enumerate()
        .map(|(number, spot)| {
            let geo = survey.geo(spot.place);
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
                certainty: None,
                why: why_stuck(spot, survey, layout),
            }
        })
        .collect()
}

/// Larger errors smear a line over more than a swath.
const SMEARED_M: f64 = 0.15;

/// Worn lines; `None` if positions are too poor to show them.
pub fn worn_findings(layout: &SiteAnalysis, cells: &Cells) -> Option<Vec<WornLine>> {
    (layout.error_m <= SMEARED_M).then(|| {
        worn::worn_lines(cells)
            .into_iter()
            .enumerate()
            .map(|(number, line)| WornLine {
                id: format!("W{}", number + 1),
                line: line.line,
                times_mean: line.times_mean,
                length_m: line.length_m,
                most_visits: line.most_visits.round() as u64,
            })
            .collect()
    })
}

/// At most this many strays are listed.
const MOST_STRAYS: usize = 20;

/// Times outside the outline; `None` without a plan.
pub fn stray_findings(survey: &Survey<'_>, layout: &SiteAnalysis) -> Option<Vec<Stray>> {
    let site = survey.site.as_ref()?;
    let outline = site.boundary.as_ref().unwrap_or(&site.drawn_lawn);
    let guides = survey.guides();
    let (start_s, _) = survey.span_s();
    let mut found: Vec<outings::Stray> = survey
        .tracks
        .iter()
        .flat_map(|track| outings::strays(track, outline, &guides, -layout.setback_m, layout.error_m))
        .collect();
    found.sort_by(|a, b| a.start_s.total_cmp(&b.start_s));
    found.truncate(MOST_STRAYS);
    Some(
        found
            .into_iter()
            .enumerate()
            .map(|(number, stray)| Stray {
                id: format!("X{}", number + 1),
                start_s: stray.start_s - start_s,
                duration_s: stray.end_s - stray.start_s,
                farthest_m: stray.farthest_m,
                east_m: stray.place.east_m,
                north_m: stray.place.north_m,
                came_back: stray.came_back,
            })
            .collect(),
    )
}

/// Silences during which the machine may have been stuck, longest first, where the fixes are.
pub fn possible_stops(survey: &Survey<'_>) -> Vec<PossibleStop> {
    let (start_s, _) = survey.span_s();
    let mut found: Vec<PossibleStop> = survey
        .tracks
        .iter()
        .flat_map(activities::possible_stops)
        .map(|stop| PossibleStop {
            east_m: stop.place.east_m,
            north_m: stop.place.north_m,
            start_s: stop.start_s - start_s,
            most_minutes: (stop.end_s - stop.start_s) / 60.0,
        })
        .collect();
    found.sort_by(|a, b| {
        b.most_minutes
            .total_cmp(&a.most_minutes)
            .then(a.start_s.total_cmp(&b.start_s))
    });
    found
}

/// What to look at, given what lies nearby.
fn why_stuck(spot: &stuck::Spot, survey: &Survey<'_>, layout: &SiteAnalysis) -> Said {
    const NEAR_M: f64 = 1.0;
    let passage = layout.necks.iter().find(|(neck, _)| {
        neck.middle.distance_m(spot.place) <= 0.5 * neck.width_m.max(neck.length_m) + NEAR_M
    });
    let width_m = passage.map(|(neck, _)| neck.width_m);
    let near = survey.site.as_ref().and_then(|site| {
        let zones = site.exclusions.iter().map(|zone| (StuckNear::Zone, zone));
        let obstacles = site
            .obstacles
            .iter()
            .map(|obstacle| (StuckNear::Obstacle, obstacle));
        let edge = (
            StuckNear::LawnEdge,
            String::new(),
            site.drawn_lawn.edge_distance_m(spot.place),
        );
        zones
            .chain(obstacles)
            .map(|(feature, named)| {
                (
                    feature,
                    named.name.clone(),
                    named.shape.edge_distance_m(spot.place),
                )
            })
            .filter(|(.., distance_m)| *distance_m <= NEAR_M)
            .min_by(|a, b| a.2.total_cmp(&b.2))
            .or_else(|| (edge.2 <= NEAR_M).then_some(edge))
    });
    match (width_m, near) {
        (Some(width_m), Some((feature, name, distance_m))) => Said::StuckInPassageNear {
            width_m,
            feature,
            name,
            distance_m,
        },
        (Some(width_m), None) => Said::StuckInPassage { width_m },
        (None, Some((feature, name, distance_m))) => Said::StuckNear {
            feature,
            name,
            distance_m,
        },
        (None, None) if survey.site.is_some() => Said::StuckInTheOpen {},
        (None, None) => Said::StuckSomewhere {},
    }
}
