//! Which night does a fix belong to?
//!
//! A night is named by the date on which it begins and lasts a day, from one turn to the next. The turn is noon by the
//! garden's own clock unless the manifest says another hour: then a machine that works from dusk to dawn has one night, and so
//! has, with a turn at 3, one that works by day. The clock is the fixed offset of the settings (`[garden] time_zone`), so an
//! hour of summer time moves the turn by an hour; no machine that the turn suits is near it.
//!
//! Exact: whole seconds since 1970, no leap seconds, as in the logs.

use time::{Date, Duration};

const DAY_S: f64 = 86_400.0;
/// The turn of the day where nobody says otherwise.
pub const USUAL_TURN_H: u8 = 12;

/// Days since 1970-01-01: how nights are counted.
pub type NightNumber = i32;

/// The night that holds a moment.
pub fn night_of(unix_s: f64, zone_s: i32, turn_h: u8) -> NightNumber {
    ((unix_s + f64::from(zone_s) - f64::from(turn_h) * 3600.0) / DAY_S).floor() as NightNumber
}

/// First moment of a night, seconds since 1970 in UTC.
pub fn start_unix_s(night: NightNumber, zone_s: i32, turn_h: u8) -> f64 {
    f64::from(night) * DAY_S + f64::from(turn_h) * 3600.0 - f64::from(zone_s)
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
        for (moment, zone_s, night) in [
            ("2026-05-01T12:00:00Z", 0, first),
            ("2026-05-02T11:59:59Z", 0, first),
            ("2026-05-02T12:00:00Z", 0, first + 1),
            // 11:30 in UTC is 13:30 two hours further east.
            ("2026-05-01T11:30:00Z", 7200, first),
            ("2026-05-01T11:30:00Z", 0, first - 1),
            ("2026-05-01T23:30:00Z", -9 * 3600, first),
        ] {
            assert_eq!(night_of(at(moment), zone_s, 12), night, "{moment} {zone_s}");
        }
        assert_eq!(start_unix_s(first, 7200, 12), at("2026-05-01T10:00:00Z"));
        assert_eq!(words(first), "2026-05-01");
        // 2026-05-01 is a Friday.
        assert_eq!(weekday(first), 4);
    }
}
