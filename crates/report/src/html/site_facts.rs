//! How the garden is laid out and worked: passages, things that stand in no plan, ways home, hours, grass, slope.

use super::facts::{Fact, fact};
use crate::map::key;
use crate::words::{self, area, count, metres, number};
use serde::Serialize;
use tussock_types::{
    Findings, FitFound, GrowthSource, HomeAlong, Installation, LowerCutAnswer, OutOfReachWhy, Passage, Place,
    ReferenceFindings,
};

/// A row with an id that can be found on the map.
#[derive(Serialize)]
pub(super) struct Row {
    key: String,
    id: String,
    cells: Vec<String>,
}

/// The lie of the garden.
#[derive(Serialize)]
pub(super) struct SiteFacts {
    passages: Vec<Row>,
    obstacles: Vec<Row>,
    out_of_reach: Vec<[String; 2]>,
    facts: Vec<Fact>,
}

/// Hours and grass.
#[derive(Serialize)]
pub(super) struct Work {
    facts: Vec<Fact>,
}

fn passage(index: usize, passage: &Passage) -> Row {
    let unknown = || "not logged".to_owned();
    let crossings = match (passage.crossings, passage.crossings_expected) {
        (Some(seen), Some(expected)) => format!("{} of about {}", count(seen), number(expected, 0)),
        (Some(seen), None) => count(seen),
        _ => unknown(),
    };
    Row {
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
        Row {
            key: key('o', index),
            id: words::plain(&thing.id, 12),
            cells: vec![
                count(thing.turns),
                metres(2.0 * thing.radius_m),
                words::position(thing.lat, thing.lon, place),
            ],
        }
    };
    let reach = |ground: &tussock_types::OutOfReach| {
        let why = match ground.why {
            OutOfReachWhy::Edge => {
                "a strip along the edge or a corner: the machine turns before the disc is there"
            }
            OutOfReachWhy::CutOff => "shut off behind a passage that is too narrow, or without any way in",
        };
        [area(ground.area_m2), why.to_owned()]
    };
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
            .map(|min| format!("; {} at the station between two", words::minutes(min)))
            .unwrap_or_default();
        facts.push(fact(
            "Outings",
            count(outings.count),
            format!(
                "Usually {} out{charging}. {} began along a guide run.",
                words::minutes(outings.median_out_min),
                count(outings.along_guide)
            ),
        ));
    }
    let home: Vec<String> = installation
        .ways_home
        .iter()
        .map(|way| {
            let along = match way.along {
                HomeAlong::GuideRun => "along a guide run",
                HomeAlong::Boundary => "along the boundary",
                HomeAlong::Straight => "straight over the lawn",
            };
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
            words::plural(home.len(), "way", "ways"),
            format!("{}; in brackets the usual time.", home.join(", ")),
        ));
    }
    facts
}

pub(super) fn work(findings: &Findings) -> Option<Work> {
    let installation = findings.installation.as_ref()?;
    let mut facts = Vec::new();
    if let Some(hours) = &installation.hours {
        let per_day = |h: f64| format!("{} a day", words::hours(h));
        facts.push(fact(
            "Works",
            per_day(hours.working_h_per_day),
            format!(
                "Between first departure and last return, {} of it driving. {}",
                words::hours(hours.driving_h_per_day),
                words::sentence(&hours.sentence)
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
            hours
                .needed_h_per_day
                .map_or_else(|| "more than hours".to_owned(), per_day),
            "Working hours at this pace; no hours would do where part of the lawn does not fill up at all.",
        ));
    }
    if let Some(lower) = &installation.lower_cut {
        let word = match lower.answer {
            LowerCutAnswer::Yes => "yes",
            LowerCutAnswer::NotYet => "not yet",
            LowerCutAnswer::CannotTell => "this log cannot tell",
        };
        facts.push(fact(
            "Lower the blades?",
            word.to_owned(),
            words::sentence(&lower.sentence),
        ));
    }
    if let Some(turf) = &installation.turf {
        let source = match turf.growth_source {
            GrowthSource::Settings => "from the settings",
            GrowthSource::Temperature => "from the mean temperature",
        };
        facts.push(fact(
            "Growth",
            format!("{} mm a day", number(turf.growth_mm_per_day, 1)),
            format!("{}. {}", words::capital(source), words::sentence(&turf.sentence)),
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
            format!(
                "A tenth of the lawn is steeper. The steepest part lies {}.",
                words::position(None, None, slope.steepest_at)
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
        let range = match (row.simulated.low, row.simulated.high) {
            (Some(low), Some(high)) => format!(" ({} to {})", figure(low), figure(high)),
            _ => String::new(),
        };
        [
            words::name(&row.what),
            figure(row.logged),
            format!("{}{range}", figure(row.simulated.estimate)),
        ]
    };
    Fit {
        word: if fit.is_trusted {
            "Predictions are made from it"
        } else {
            "No predictions are made from it"
        },
        sentence: words::sentence(&fit.sentence),
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
