//! Which night does a fix belong to, and which night is over?
//!
//! A night is named by the date on which it begins and lasts from one turn to the next: a day, or an hour more or less when
//! summer time ends or begins. It turns at noon by the garden's own clock unless the manifest gives another hour. A machine
//! that works from dusk to dawn then has one night, and so does, with a turn at 3, one that works by day. The clock is the
//! one in the settings (`[garden] time_zone`).
//!
//! A night's work is over six hours before its turn: at six in the morning, if it turns at noon. The morning report
//! therefore covers the night that has just ended.
//!
//! Exact: whole seconds since 1970, no leap seconds, as in the logs.

use time::{Date, Duration};
use tussock_types::GardenClock;

const DAY_S: f64 = 86_400.0;
const WORK_ENDS_BEFORE_TURN_S: f64 = 6.0 * 3600.0;
/// The hour at which a night turns if nothing else is stated.
pub const USUAL_TURN_H: u8 = 12;

/// Days since 1970-01-01, by which nights are counted.
pub type NightNumber = i32;

/// The night that contains a moment.
pub fn night_of(unix_s: f64, zone: &GardenClock, turn_h: u8) -> NightNumber {
    ((zone.local_s(unix_s) - f64::from(turn_h) * 3600.0) / DAY_S).floor() as NightNumber
}

/// First moment of a night, seconds since 1970 in UTC.
pub fn start_unix_s(night: NightNumber, zone: &GardenClock, turn_h: u8) -> f64 {
    zone.moment_unix_s(night, turn_h)
}

/// The newest night whose work is over at a moment.
pub fn last_over(now_unix_s: f64, zone: &GardenClock, turn_h: u8) -> NightNumber {
    night_of(now_unix_s + WORK_ENDS_BEFORE_TURN_S, zone, turn_h) - 1
}

/// `2026-05-01`.
pub fn words(night: NightNumber) -> String {
    date(night).to_string()
}

fn date(night: NightNumber) -> Date {
    const FIRST: Date = time::macros::date!(1970 - 01 - 01);
    FIRST
        .checked_add(Duration::days(i64::from(night)))
        .unwrap_or(FIRST)
}

/// Weekday of the date that names the night, 0 for Monday.
pub fn weekday(night: NightNumber) -> u32 {
    u32::from(date(night).weekday().number_days_from_monday())
}

/// Night of a date as in `2026-05-01`.
pub fn parse(text: &str) -> Option<NightNumber> {
    let format = time::macros::format_description!("[year]-[month]-[day]");
    let date = Date::parse(text, format).ok()?;
    i32::try_from((date - time::macros::date!(1970 - 01 - 01)).whole_days()).ok()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_night_runs_from_noon_to_noon_by_the_gardens_clock() {
        let at = |text: &str| {
            time::OffsetDateTime::parse(text, &time::format_description::well_known::Rfc3339)
                .unwrap()
                .unix_timestamp() as f64
        };
        let first = parse("2026-05-01").unwrap();
        let east = GardenClock::Fixed(7200);
        for (moment, zone_s, night) in [
            ("2026-05-01T12:00:00Z", 0, first),
            ("2026-05-02T11:59:59Z", 0, first),
            ("2026-05-02T12:00:00Z", 0, first + 1),
            // 11:30 in UTC is 13:30 two hours further east.
            ("2026-05-01T11:30:00Z", 7200, first),
            ("2026-05-01T11:30:00Z", 0, first - 1),
            ("2026-05-01T23:30:00Z", -9 * 3600, first),
        ] {
            assert_eq!(
                night_of(at(moment), &GardenClock::Fixed(zone_s), 12),
                night,
                "{moment} {zone_s}"
            );
        }
        assert_eq!(start_unix_s(first, &east, 12), at("2026-05-01T10:00:00Z"));
        // At six in the morning the previous night is over, a minute earlier it is not.
        assert_eq!(last_over(at("2026-05-02T04:00:00Z"), &east, 12), first);
        assert_eq!(last_over(at("2026-05-02T03:59:00Z"), &east, 12), first - 1);
        assert_eq!(last_over(at("2026-05-02T09:59:00Z"), &east, 12), first);
        assert_eq!(last_over(at("2026-05-01T19:00:00Z"), &east, 3), first);
        assert_eq!(words(first), "2026-05-01");
        // 2026-05-01 is a Friday.
        assert_eq!(weekday(first), 4);
    }

    #[test]
    fn every_moment_has_one_night_also_where_summer_time_begins_and_ends() {
        let zone = GardenClock::parse("Europe/Berlin").unwrap();
        for date in ["2026-03-28", "2026-10-24"] {
            for turn_h in [0, 2, 3, 12] {
                let first = parse(date).unwrap() - 1;
                for night in first..first + 4 {
                    let (from_s, to_s) = (
                        start_unix_s(night, &zone, turn_h),
                        start_unix_s(night + 1, &zone, turn_h),
                    );
                    assert!(
                        (22.0..=26.0).contains(&((to_s - from_s) / 3600.0)),
                        "{date} {turn_h}"
                    );
                    for (unix_s, of) in [
                        (from_s, night),
                        (to_s - 1.0, night),
                        (f64::midpoint(from_s, to_s), night),
                    ] {
                        assert_eq!(
                            night_of(unix_s, &zone, turn_h),
                            of,
                            "{date} {turn_h} {}",
                            unix_s - from_s
                        );
                    }
                }
            }
        }
        // Six in the morning by the clock on the wall, in winter and in summer.
        let at = |day: &str, hour| zone.moment_unix_s(parse(day).unwrap(), hour);
        for (day, hour, night) in [
            ("2026-03-28", 6, "2026-03-27"),
            ("2026-03-29", 6, "2026-03-28"),
            ("2026-03-30", 6, "2026-03-29"),
            ("2026-10-25", 6, "2026-10-24"),
            ("2026-10-26", 5, "2026-10-24"),
        ] {
            assert_eq!(words(last_over(at(day, hour), &zone, 12)), night, "{day}");
        }
    }
}
