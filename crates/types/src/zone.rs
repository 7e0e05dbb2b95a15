//! What does the garden's clock show?

use jiff::{Timestamp, tz::TimeZone};

const DAY_S: f64 = 86_400.0;

/// A time zone: a fixed offset from UTC, or a name from the IANA Time Zone Database, with its summer time. The database is
/// built in, so the same logs give the same nights on every machine.
#[derive(Clone, Debug, PartialEq)]
pub enum GardenClock {
    /// This many seconds ahead of UTC at all times.
    Fixed(i32),
    /// With the offset that the database gives for each moment.
    Named(TimeZone),
}

impl GardenClock {
    /// Parses a zone such as `UTC`, `+02:00`, `-03:30`, `Europe/Berlin`; `None` for another form, an unknown name, or beyond
    /// 14 hours.
    pub fn parse(text: &str) -> Option<Self> {
        if text == "UTC" || text == "Z" {
            return Some(Self::Fixed(0));
        }
        let (sign, rest) = match text.split_at_checked(1)? {
            ("+", rest) => (1, rest),
            ("-", rest) => (-1, rest),
            // Abbreviations such as EST are not what they seem.
            _ if text.contains('/') => return TimeZone::get(text).ok().map(Self::Named),
            _ => return None,
        };
        let (hour, minute) = rest.split_once(':')?;
        let is_plain = |part: &str| part.len() == 2 && part.bytes().all(|byte| byte.is_ascii_digit());
        if !is_plain(hour) || !is_plain(minute) {
            return None;
        }
        let (hour, minute): (i32, i32) = (hour.parse().ok()?, minute.parse().ok()?);
        let total_s = hour * 3600 + minute * 60;
        (minute < 60 && total_s <= 14 * 3600).then_some(Self::Fixed(sign * total_s))
    }

    /// The zone given in the settings; UTC if they name none.
    pub fn of(text: Option<&str>) -> Self {
        text.and_then(Self::parse).unwrap_or(Self::Fixed(0))
    }

    /// Seconds by which the clock is ahead of UTC at a moment.
    pub fn offset_s(&self, unix_s: f64) -> i32 {
        match self {
            Self::Fixed(offset_s) => *offset_s,
            Self::Named(zone) => Timestamp::from_second(unix_s.floor() as i64)
                .map_or(0, |moment| zone.to_offset(moment).seconds()),
        }
    }

    /// What the clock shows at a moment, as seconds since its own 1970-01-01T00:00.
    pub fn local_s(&self, unix_s: f64) -> f64 {
        unix_s + f64::from(self.offset_s(unix_s))
    }

    /// The moment at which the clock shows an hour of a day (days since 1970-01-01). An hour that summer time skips begins
    /// when the clock has been put forward; of an hour that comes twice, the first counts.
    pub fn moment_unix_s(&self, day: i32, hour: u8) -> f64 {
        let shown_s = f64::from(day) * DAY_S + f64::from(hour) * 3600.0;
        // Try the offsets half a day on either side; of the two moments they give, take the earlier one that shows at least
        // that hour.
        let by = |near_s: f64| shown_s - f64::from(self.offset_s(near_s));
        let (one_s, other_s) = (by(shown_s - DAY_S), by(shown_s + DAY_S));
        let (first_s, second_s) = (one_s.min(other_s), one_s.max(other_s));
        if self.local_s(first_s) >= shown_s {
            first_s
        } else {
            second_s
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn offsets_and_names_are_read_and_nothing_else() {
        let rows = [
            ("UTC", Some(0)),
            ("+02:00", Some(7200)),
            ("-03:30", Some(-12_600)),
            ("+14:00", Some(50_400)),
            ("Europe/Berlin", Some(3600)),
            ("Asia/Kathmandu", Some(19_800)),
            ("+14:01", None),
            ("02:00", None),
            ("+2:00", None),
            ("+02:60", None),
            ("Europe/Nowhere", None),
            ("EST", None),
            ("", None),
            ("é", None),
        ];
        for (text, offset_s) in rows {
            assert_eq!(
                GardenClock::parse(text).map(|zone| zone.offset_s(0.0)),
                offset_s,
                "{text}"
            );
        }
    }

    #[test]
    fn summer_time_begins_and_ends_when_the_law_says() {
        let berlin = GardenClock::parse("Europe/Berlin").unwrap();
        // 2026-03-29T01:00:00Z and 2026-10-25T01:00:00Z (Directive 2000/84/EC).
        for (turn_s, before_s, after_s) in [(1_774_746_000.0, 3600, 7200), (1_792_890_000.0, 7200, 3600)] {
            assert_eq!(berlin.offset_s(turn_s - 0.5), before_s);
            assert_eq!(berlin.offset_s(turn_s), after_s);
        }
        let day = |unix_s: f64| (unix_s / DAY_S).floor() as i32;
        let (spring, autumn) = (day(1_774_746_000.0), day(1_792_890_000.0));
        for (day, hour, unix_s) in [
            (spring, 0, 1_774_746_000.0 - 7200.0),
            // Skipped hour: 02:00 is 03:00.
            (spring, 2, 1_774_746_000.0),
            (spring, 12, 1_774_746_000.0 + 9.0 * 3600.0),
            // Repeated hour: the first one.
            (autumn, 2, 1_792_890_000.0 - 3600.0),
            (autumn, 3, 1_792_890_000.0 + 3600.0),
            (autumn, 12, 1_792_890_000.0 + 10.0 * 3600.0),
        ] {
            assert_eq!(berlin.moment_unix_s(day, hour), unix_s, "{day} {hour}");
        }
        assert_eq!(
            GardenClock::Fixed(7200).moment_unix_s(spring, 12),
            f64::from(spring) * DAY_S + 10.0 * 3600.0
        );
    }
}
