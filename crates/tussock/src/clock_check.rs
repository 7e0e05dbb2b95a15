//! Does the machine drive at hours at which it rests?
//!
//! A logger that writes local time and calls it UTC (a `Z` behind it) shifts everything by whole hours. The working hours
//! in the settings tell: the driving time of each minute of the week is laid over them, as logged and shifted by every
//! whole hour up to half a day.
//!
//! Exact: minutes of driving per minute of the week, as far as the path is. Not seen: shifts between hours that all fit,
//! half hours, and weekdays of which the settings say nothing.
//!
//! Cost: one step per minute driven, and one look at the week per hour of shift.

use tussock_locate::Track;
use tussock_types::{Duty, Settings, offset_s};

const WEEK_MIN: usize = 7 * 24 * 60;
/// From Monday 00:00 to Thursday 00:00: 1970 began on a Thursday.
const FIRST_THURSDAY_S: f64 = 3.0 * 86_400.0;
/// Less driving than this at hours of rest is a schedule that is not kept to the minute.
const LEAST_REST_S: f64 = 600.0;
/// And a smaller share of all driving than this.
const LEAST_REST_FRACTION: f64 = 0.05;

/// 2005-01-01 in UTC: before it nobody logged a mower once a second with a receiver (common practice, no source), while week
/// counters that rolled over and clocks that were never set give dates of the century before.
const OLDEST_S: f64 = 1_104_537_600.0;
/// 1971: seconds from the logger's own start stay below, and are no date.
const DATED_S: f64 = 365.0 * 86_400.0;

/// One sentence when the log is dated before such logs were made.
pub(crate) fn too_old(tracks: &[Track]) -> Option<String> {
    let starts_s = tracks
        .iter()
        .filter_map(|track| track.span_s)
        .map(|span_s| span_s.0);
    let first_s = starts_s.fold(f64::INFINITY, f64::min);
    let date =
        tussock_survey::log_findings::rfc3339(first_s).filter(|_| (DATED_S..OLDEST_S).contains(&first_s))?;
    Some(format!(
        "The log begins on {}: the clock of the logger was not set, or its week counter rolled over. Dates are wrong; times of \
         day may be right (--date sets the day of logs that hold times only).",
        date.get(..10).unwrap_or(&date)
    ))
}

/// One sentence when a good part of the driving falls in hours of rest.
pub(crate) fn remark(tracks: &[Track], settings: &Settings) -> Option<String> {
    let week = settings.hours.week();
    if !week.contains(&Duty::Rest) {
        return None;
    }
    let zone = settings.garden.time_zone.as_deref();
    let zone_s = f64::from(zone.and_then(offset_s).unwrap_or(0));
    let driven_s = driven_per_minute_s(tracks, zone_s);
    let all_s: f64 = driven_s.iter().sum();
    let rest_s = |shift_h: i32| -> f64 {
        (0..WEEK_MIN)
            .filter(|minute| {
                let shifted = *minute as i64 + 60 * i64::from(shift_h);
                week[shifted.rem_euclid(WEEK_MIN as i64) as usize] == Duty::Rest
            })
            .map(|minute| driven_s[minute])
            .sum()
    };
    let as_logged_s = rest_s(0);
    if as_logged_s < LEAST_REST_S.max(LEAST_REST_FRACTION * all_s) {
        return None;
    }
    // The shift that undoes the time zone comes first: it is the common mistake. Then the smaller ones.
    let undone_h = (-zone_s / 3600.0).round() as i32;
    let mut shifts_h: Vec<i32> = (-12..=12).filter(|shift_h| *shift_h != 0).collect();
    shifts_h.sort_by_key(|shift_h| (*shift_h != undone_h, shift_h.abs()));
    let best = shifts_h
        .into_iter()
        .map(|shift_h| (shift_h, rest_s(shift_h)))
        .min_by(|a, b| a.1.total_cmp(&b.1));
    let zone_words = match zone {
        Some(zone) => format!("time zone {zone}"),
        None => "no time zone is set, so UTC".to_owned(),
    };
    let mut sentence = format!(
        "{:.0} of {:.0} min of driving fall in hours at which the settings let the machine rest ({zone_words})",
        as_logged_s / 60.0,
        all_s / 60.0
    );
    match best {
        Some((shift_h, left_s)) if left_s <= 0.1 * as_logged_s => {
            let way = if shift_h < 0 { "earlier" } else { "later" };
            sentence += &format!("; {} h {way} they would fit", shift_h.abs());
            if shift_h == undone_h {
                sentence += ": the log seems to have local time labelled as UTC";
            }
        }
        _ => sentence += "; no shift by whole hours makes them fit",
    }
    Some(sentence + ".")
}

/// Seconds driven in each minute of the week, from Monday 00:00 local time on.
fn driven_per_minute_s(tracks: &[Track], zone_s: f64) -> Vec<f64> {
    let mut driven_s = vec![0.0; WEEK_MIN];
    for (from, to) in tracks.iter().flat_map(Track::legs) {
        let (mut at_s, end_s) = (
            from.leave_s + zone_s + FIRST_THURSDAY_S,
            to.arrive_s + zone_s + FIRST_THURSDAY_S,
        );
        while at_s < end_s {
            let minute = (at_s / 60.0).floor();
            let until_s = ((minute + 1.0) * 60.0).min(end_s);
            driven_s[minute.rem_euclid(WEEK_MIN as f64) as usize] += until_s - at_s;
            at_s = until_s;
        }
    }
    driven_s
}
