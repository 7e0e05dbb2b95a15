//! Does the machine drive at hours when it should rest?
//!
//! A logger that writes local time and calls it UTC (with a `Z` after it) shifts everything by whole hours. The working
//! hours in the settings reveal this: the driving time of each minute of the week is compared with them, as logged and
//! shifted by every whole hour up to half a day.
//!
//! Exact: minutes of driving per minute of the week, as far as the path is exact. Not seen: shifts between hours that all
//! fit, half hours, and weekdays that the settings do not mention.
//!
//! Cost: one step per minute driven, and one look at the week per hour of shift.

use tussock_locate::Track;
use tussock_types::{Duty, GardenClock, Said, Settings};

const WEEK_MIN: usize = 7 * 24 * 60;
/// From Monday 00:00 to Thursday 00:00: 1970 began on a Thursday.
const FIRST_THURSDAY_S: f64 = 3.0 * 86_400.0;
/// Less driving than this in hours of rest only means a schedule that is not kept to the minute.
const LEAST_REST_S: f64 = 600.0;
/// The same for a share of all driving smaller than this.
const LEAST_REST_FRACTION: f64 = 0.05;

/// 2012-01-01 in UTC. Receivers count 1,024 weeks and start again (IS-GPS-200, 20.3.3.3.1.1): a counter that rolled over
/// once dates the logs of 2019 to 2031 as 1999 to 2011, and few mowers were logged before then.
const OLDEST_S: f64 = 1_325_376_000.0;
/// 1971: seconds since the logger's own start stay below this, and are not a date.
const DATED_S: f64 = 365.0 * 86_400.0;

/// The remark on a log dated before such logs were made.
pub(crate) fn too_old(tracks: &[Track]) -> Option<Said> {
    let starts_s = tracks
        .iter()
        .filter_map(|track| track.span_s)
        .map(|span_s| span_s.0);
    let first_s = starts_s.fold(f64::INFINITY, f64::min);
    let date =
        tussock_survey::log_findings::rfc3339(first_s).filter(|_| (DATED_S..OLDEST_S).contains(&first_s))?;
    Some(Said::DateTooOld {
        date: date.get(..10).unwrap_or(&date).to_owned(),
    })
}

/// The remark when a good part of the driving falls in hours of rest.
pub(crate) fn remark(tracks: &[Track], settings: &Settings) -> Option<Said> {
    let week = settings.hours.week();
    if !week.contains(&Duty::Rest) {
        return None;
    }
    let zone = settings.garden.time_zone.as_deref();
    let first_s = tracks
        .iter()
        .filter_map(|track| track.span_s)
        .map(|span_s| span_s.0);
    let zone_s = f64::from(GardenClock::of(zone).offset_s(first_s.fold(f64::INFINITY, f64::min)));
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
    // The shift that undoes the time zone comes first, because that is the common mistake; then the smaller ones.
    let undone_h = (-zone_s / 3600.0).round() as i32;
    let mut shifts_h: Vec<i32> = (-12..=12).filter(|shift_h| *shift_h != 0).collect();
    shifts_h.sort_by_key(|shift_h| (*shift_h != undone_h, shift_h.abs()));
    let best = shifts_h
        .into_iter()
        .map(|shift_h| (shift_h, rest_s(shift_h)))
        .min_by(|a, b| a.1.total_cmp(&b.1));
    let (rest_min, driven_min) = (as_logged_s / 60.0, all_s / 60.0);
    let time_zone = zone.unwrap_or_default().to_owned();
    Some(match best.filter(|(_, left_s)| *left_s <= 0.1 * as_logged_s) {
        Some((shift_h, _)) => Said::DrivesAtRestShifted {
            rest_min,
            driven_min,
            time_zone,
            shift_h: f64::from(shift_h.abs()),
            later: (shift_h > 0).into(),
            local_time: (shift_h == undone_h).into(),
        },
        None => Said::DrivesAtRest {
            rest_min,
            driven_min,
            time_zone,
        },
    })
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
