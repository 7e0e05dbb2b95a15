//! How the garden is laid out and worked: passages, things that stand in no plan, ways home, hours, grass, slope.

use super::facts::{Fact, fact};
use crate::map::key;
use crate::messages::{named, say};
use crate::words::{self, area, count, metres, number};
use serde::Serialize;
use tussock_types::{Findings, FitFigure, FitFound, Installation, Passage, Place, ReferenceFindings};

/// A row with an id that can be found on the map.
#[derive(Serialize)]
pub(super) struct SiteRow {
    key: String,
    id: String,
    cells: Vec<String>,
}

/// The lie of the garden.
#[derive(Serialize)]
pub(super) struct SiteFacts {
    passages: Vec<SiteRow>,
    obstacles: Vec<SiteRow>,
    out_of_reach: Vec<[String; 2]>,
    facts: Vec<Fact>,
}

/// Hours and grass.
#[derive(Serialize)]
pub(super) struct Work {
    facts: Vec<Fact>,
}

fn passage(index: usize, passage: &Passage) -> SiteRow {
    let unknown = || say!("not-logged");
    let crossings = match (passage.crossings, passage.crossings_expected) {
        (Some(seen), Some(expected)) => {
            say!("about-count", count = count(seen), number = number(expected, 0))
        }
        (Some(seen), None) => count(seen),
        _ => unknown(),
    };
    SiteRow {
        key: key('p', index),
        id: words::plain(&passage.id, 12),
        cells: vec![
            metres(passage.width_m),
            match passage.free_width_m {
                free_m if free_m < 0.0 => "shut".to_owned(),
                free_m => metres(free_m),
            },
            metres(passage.length_m),
            area(passage.behind_m2),
            crossings,
            passage.share_ratio.map_or_else(unknown, words::whole_percent),
        ],
    }
}

pub(super) fn lie(findings: &Findings) -> Option<SiteFacts> {
    let installation = findings.installation.as_ref()?;
    let obstacles = installation.unlisted_obstacles.iter().enumerate();
    let obstacle = |(index, thing): (usize, &tussock_types::UnlistedObstacle)| {
        let place = Place::new(thing.east_m, thing.north_m);
        SiteRow {
            key: key('o', index),
            id: words::plain(&thing.id, 12),
            cells: vec![
                count(thing.turns),
                metres(2.0 * thing.radius_m),
                words::position(thing.lat, thing.lon, place),
            ],
        }
    };
    let reach =
        |ground: &tussock_types::OutOfReach| [area(ground.area_m2), named("out-of-reach", &ground.why)];
    let lie = SiteFacts {
        passages: installation
            .passages
            .iter()
            .enumerate()
            .map(|(index, found)| passage(index, found))
            .collect(),
        obstacles: obstacles.map(obstacle).collect(),
        out_of_reach: installation.out_of_reach.iter().map(reach).collect(),
        facts: lie_facts(installation),
    };
    let is_empty = lie.passages.is_empty()
        && lie.obstacles.is_empty()
        && lie.out_of_reach.is_empty()
        && lie.facts.is_empty();
    (!is_empty).then_some(lie)
}

fn lie_facts(installation: &Installation) -> Vec<Fact> {
    let mut facts = Vec::new();
    if let Some(setback_m) = installation.setback_m {
        facts.push(fact(
            "Turns inside the line by",
            metres(setback_m),
            "Usual distance between the middle of the machine and the line at which it turns.",
        ));
    }
    if let Some(outings) = &installation.outings {
        let charging = outings
            .median_charging_min
            .map(|min| say!("at-station-between-two", time = words::minutes(min)))
            .unwrap_or_default();
        facts.push(fact(
            "Outings",
            count(outings.count),
            say!(
                "usually-out-began-along",
                time = words::minutes(outings.median_out_min),
                charging = charging,
                count = count(outings.along_guide)
            ),
        ));
    }
    let home: Vec<String> = installation
        .ways_home
        .iter()
        .map(|way| {
            let along = named("way-home", &way.along);
            format!(
                "{} {along} ({})",
                count(way.times),
                words::minutes(way.median_min)
            )
        })
        .collect();
    if !home.is_empty() {
        facts.push(fact(
            "Ways home",
            say!("count-way", count = home.len()),
            say!("brackets-usual-time-join", join = home.join(", ")),
        ));
    }
    facts
}

pub(super) fn work(findings: &Findings) -> Option<Work> {
    let installation = findings.installation.as_ref()?;
    let mut facts = Vec::new();
    if let Some(hours) = &installation.hours {
        let per_day = |h: f64| say!("day-hours", hours = words::hours(h));
        facts.push(fact(
            "Works",
            per_day(hours.working_h_per_day),
            say!(
                "between-first-departure-last",
                hours = words::hours(hours.driving_h_per_day),
                said = crate::text(&hours.said)
            ),
        ));
        if let Some(allowed_h) = hours.allowed_h_per_day {
            facts.push(fact(
                "Allowed",
                per_day(allowed_h),
                "Working hours in the settings, mean over the week.",
            ));
        }
        facts.push(fact(
            "The promise needs",
            hours.needed_h_per_day.map_or_else(|| say!("more-than"), per_day),
            "Working hours at this pace; no hours would do where part of the lawn does not fill up at all.",
        ));
    }
    if let Some(lower) = &installation.lower_cut {
        facts.push(fact(
            "Lower the blades?",
            named("lower-cut", &lower.answer),
            crate::text(&lower.said),
        ));
    }
    if let Some(turf) = &installation.turf {
        let source = named("growth-source", &turf.growth_source);
        facts.push(fact(
            "Growth",
            say!("mm-day", number = number(turf.growth_mm_per_day, 1)),
            format!("{}. {}", words::capital(&source), crate::text(&turf.said)),
        ));
        facts.push(fact(
            "Longest wait allowed",
            words::hours(turf.allowed_interval_h),
            "Under the one-third rule: never take more than a third of the blade at once.",
        ));
    }
    if let Some(slope) = &installation.slope {
        facts.push(fact(
            "Slope",
            format!(
                "{} ± {}°",
                number(slope.steep_deg, 0),
                number(2.0 * slope.sd_deg, 0)
            ),
            say!(
                "tenth-lawn-steeper-steepest",
                place = words::position(None, None, slope.steepest_at)
            ),
        ));
    }
    (!facts.is_empty()).then_some(Work { facts })
}

/// How well simulated runs look like the log.
#[derive(Serialize)]
pub(super) struct Fit {
    word: &'static str,
    sentence: String,
    runs: String,
    rows: Vec<[String; 3]>,
}

pub(super) fn fit(fit: &FitFound) -> Fit {
    let row = |row: &tussock_types::FitRow| {
        let scale = if row.what == FitFigure::VisitedFraction {
            100.0
        } else {
            1.0
        };
        let range = match (row.simulated.low, row.simulated.high) {
            (Some(low), Some(high)) => format!(" ({} to {})", figure(scale * low), figure(scale * high)),
            _ => String::new(),
        };
        [
            named("fit-figure", &row.what),
            figure(scale * row.logged),
            format!("{}{range}", figure(scale * row.simulated.estimate)),
        ]
    };
    Fit {
        word: if fit.is_trusted {
            "Predictions are made from it"
        } else {
            "No predictions are made from it"
        },
        sentence: crate::text(&fit.said),
        runs: count(u64::from(fit.runs)),
        rows: fit.rows.iter().map(row).collect(),
    }
}

/// How far the log is from a surveyed path.
#[derive(Serialize)]
pub(super) struct Surveyed {
    head: String,
    heads: [&'static str; 4],
    rows: Vec<Vec<String>>,
    note: Option<&'static str>,
}

pub(super) fn surveyed(found: &ReferenceFindings) -> Surveyed {
    let row = |row: words::ReferenceRow| {
        let label = format!("{}, {}", words::capital(row.what), row.whose);
        std::iter::once(label).chain(row.figures).collect()
    };
    Surveyed {
        head: words::reference_head(found),
        heads: words::REFERENCE_HEADS,
        rows: words::reference_rows(found).into_iter().map(row).collect(),
        note: words::reference_note(found),
    }
}

/// A figure whose unit stands in its words: three digits that count.
fn figure(value: f64) -> String {
    let decimals = match value.abs() {
        v if v >= 100.0 => 0,
        v if v >= 10.0 => 1,
        _ => 2,
    };
    number(value, decimals)
}
