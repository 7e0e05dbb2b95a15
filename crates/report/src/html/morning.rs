//! Which gardens need a visit, and since when?
//!
//! One table in the order of what a visit gains; behind each garden, folded away, stand
//! its last two weeks.

use super::Head;
use crate::words::{self, area, percent};
use serde::Serialize;
use tussock_types::{GardenMorning, Morning, MorningNight};

/// Everything that the template shows.
#[derive(Serialize)]
pub(super) struct MorningPage {
    head: Head,
    version: String,
    night: String,
    summary: String,
    gardens: Vec<Garden>,
    failures: Vec<Failure>,
}

#[derive(Serialize)]
struct Garden {
    name: String,
    folder: String,
    gain: String,
    within: Option<String>,
    reasons: Vec<String>,
    nights: Vec<Night>,
}

#[derive(Serialize)]
struct Night {
    date: String,
    visited: String,
    interval: String,
    missed: String,
    driving: String,
    stuck: String,
    silent: String,
    error: String,
}

#[derive(Serialize)]
struct Failure {
    garden: String,
    what: String,
    reason: String,
    detail: String,
}

fn or_dash(text: Option<String>) -> String {
    text.unwrap_or_else(|| "\u{2013}".to_owned())
}

fn night(night: &MorningNight) -> Night {
    Night {
        date: words::plain(&night.night, 12),
        visited: or_dash(night.visited_fraction.map(|visited| percent(visited.estimate))),
        interval: night.visited_fraction.map(words::interval).unwrap_or_default(),
        missed: or_dash(night.missed_m2.map(area)),
        driving: or_dash(night.driving_h.map(words::hours)),
        stuck: or_dash(night.stuck_min.map(|stuck_min| format!("{stuck_min:.0} min"))),
        silent: or_dash(night.silent_h.map(words::hours)),
        error: or_dash(
            night
                .position_error_m
                .map(|error_m| format!("{:.0} cm", error_m * 100.0)),
        ),
    }
}

fn garden(garden: &GardenMorning) -> Garden {
    let within = match (
        garden.visited_within_days_fraction,
        garden.promised_days,
        garden.promised_fraction,
    ) {
        (Some(visited), Some(days), Some(promised)) => Some(format!(
            "{} of the lawn driven over in the last {}; promised are {}",
            percent(visited),
            words::days(days.round()),
            percent(promised)
        )),
        _ => None,
    };
    Garden {
        name: words::name(garden.name.as_deref().unwrap_or(&garden.garden)),
        folder: words::name(&garden.garden),
        gain: area(garden.gain_m2),
        within,
        reasons: garden
            .reasons
            .iter()
            .map(|reason| words::sentence(&reason.sentence))
            .collect(),
        nights: garden.nights.iter().map(night).collect(),
    }
}

pub(super) fn page(morning: &Morning) -> MorningPage {
    MorningPage {
        head: Head::new(),
        version: words::plain(&morning.tool_version, 20),
        night: words::plain(&morning.night, 12),
        summary: crate::morning::summary(morning),
        gardens: morning.gardens.iter().map(garden).collect(),
        failures: morning
            .failures
            .iter()
            .map(|failure| Failure {
                garden: words::name(&failure.garden),
                what: words::name(&failure.what),
                reason: words::plain(&failure.reason, 20),
                detail: words::sentence(&failure.detail),
            })
            .collect(),
    }
}
