//! What is said about a place that somebody pointed at: the same in every window.

use crate::messages::Voice;
use crate::messages::{named, say};
use crate::words;
use serde::Serialize;
use time::format_description::well_known::Rfc3339;
use time::macros::format_description;
use time::{OffsetDateTime, UtcOffset};
use tussock_types::{ComplaintFindings, Findings, GardenClock, Place, Said};

/// Letters of the complaint that are repeated.
const SAID: usize = 200;

/// A place asked about, in words.
#[derive(Serialize)]
pub(crate) struct AskedPlace {
    /// What was said about it.
    pub(crate) said: Option<String>,
    /// The answer in a word or two.
    pub(crate) word: String,
    /// The whole answer.
    pub(crate) answer: String,
    /// Why the pocket or spot that holds it exists.
    pub(crate) held: Option<String>,
    pub(crate) place: String,
    /// How often it was driven over, compared with the lawn.
    pub(crate) visits: Option<String>,
    pub(crate) last: Option<String>,
    pub(crate) due: Option<String>,
}

pub(crate) fn asked(voice: Voice, complaint: &ComplaintFindings, findings: &Findings) -> AskedPlace {
    let cannot_tell = || say!(voice, "this-log-cannot-tell");
    let of_code = |answer: &Said| {
        let code = serde_json::to_value(answer).ok()?;
        Some(named(voice, "asked-short", &code.get("code")?))
    };
    let answer = complaint.answer.as_ref();
    let lawn_visits = findings.revisits.as_ref().map(|revisits| revisits.mean_per_cell);
    let one_place = |visits: f64| words::number(voice, visits, 1);
    AskedPlace {
        said: (complaint.said.as_deref())
            .map(|said| words::plain(said, SAID))
            .filter(|said| !said.is_empty()),
        word: answer.and_then(of_code).unwrap_or_else(cannot_tell),
        answer: answer.map_or_else(cannot_tell, |answer| crate::messages::said(voice, answer)),
        held: answer.and_then(|answer| held(voice, answer, findings)),
        place: words::position(
            voice,
            complaint.lat,
            complaint.lon,
            Place::new(complaint.east_m, complaint.north_m),
        ),
        visits: complaint.visits.map(|visits| {
            let visits = say!(
                voice,
                "asked-visits",
                number = one_place(visits.estimate),
                low = one_place(visits.low.unwrap_or(visits.estimate)),
                high = one_place(visits.high.unwrap_or(visits.estimate))
            );
            match lawn_visits {
                Some(mean) => say!(
                    voice,
                    "asked-visits-beside",
                    visits = visits,
                    mean = one_place(mean)
                ),
                None => visits,
            }
        }),
        last: (complaint.last_visit.as_deref())
            .and_then(|text| local_time(voice, text, findings.settings.garden.time_zone.as_deref())),
        due: complaint
            .due_h
            .map(|due_h| say!(voice, "asked-due", hours = words::hours(voice, due_h))),
    }
}

/// Why the pocket that holds a place is missed, or why the spot costs time.
fn held(voice: Voice, answer: &Said, findings: &Findings) -> Option<String> {
    match answer {
        Said::PlaceNever { pocket: id, .. } => {
            let pocket = findings.missed_pockets.iter().find(|pocket| pocket.id == *id)?;
            Some(crate::messages::said(voice, &pocket.why))
        }
        Said::PlaceIsStuckSpot { spot: id, .. } => {
            let spot = findings.stuck_spots.iter().find(|spot| spot.id == *id)?;
            Some(words::why_stuck(voice, spot))
        }
        _ => None,
    }
}

/// By how much the garden's clock was ahead of UTC at an RFC 3339 time; UTC for anything else.
pub(crate) fn offset(text: Option<&str>, zone: Option<&str>) -> UtcOffset {
    let time = text.and_then(|text| OffsetDateTime::parse(text, &Rfc3339).ok());
    let offset = time.map(|time| GardenClock::of(zone).offset_s(time.unix_timestamp() as f64));
    UtcOffset::from_whole_seconds(offset.unwrap_or(0)).unwrap_or(UtcOffset::UTC)
}

/// An RFC 3339 time, given in the garden's local time.
pub(crate) fn local_time(voice: Voice, text: &str, zone: Option<&str>) -> Option<String> {
    let time = OffsetDateTime::parse(text, &Rfc3339).ok()?;
    let time = time.to_offset(offset(Some(text), zone));
    Some(say!(
        voice,
        "date-time",
        day = time.day(),
        month = u8::from(time.month()),
        year = time.year().to_string(),
        hour = format!("{:02}", time.hour()),
        minute = format!("{:02}", time.minute())
    ))
}

/// The hour and minute of it alone, to the nearest minute.
pub(crate) fn clock(text: &str, zone: Option<&str>) -> Option<String> {
    let time = OffsetDateTime::parse(text, &Rfc3339).ok()? + time::Duration::seconds(30);
    let clock = format_description!("[hour]:[minute]");
    time.to_offset(offset(Some(text), zone)).format(clock).ok()
}
