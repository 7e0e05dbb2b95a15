//! Times as logs write them.
//!
//! Days are counted from 1970-01-01 with `time::Date`, so that we cannot get leap years and month lengths wrong. Seconds are
//! kept as whole microseconds until the last step: `12:00:00.60` is the same instant wherever it is written.

use crate::number::{TEN_WHOLE, eight, leading_digits};
use time::{Date, Month};

/// Days from 1970-01-01; `None` if the calendar has no such day.
pub(crate) fn day_number(year: i32, month: u32, day: u32) -> Option<i32> {
    // Howard Hinnant's days_from_civil, valid for all years that logs can contain; the calendar check comes first.
    if !(1..=12).contains(&month) || day == 0 || day > days_in_month(year, month) {
        return None;
    }
    let shifted = if month <= 2 { year - 1 } else { year };
    let era = shifted.div_euclid(400);
    let year_of_era = shifted.rem_euclid(400);
    let month_from_march = (month as i32 + 9) % 12;
    let day_of_year = (153 * month_from_march + 2) / 5 + day as i32 - 1;
    let day_of_era = year_of_era * 365 + year_of_era / 4 - year_of_era / 100 + day_of_year;
    Some(era * 146_097 + day_of_era - 719_468)
}

fn days_in_month(year: i32, month: u32) -> u32 {
    match month {
        4 | 6 | 9 | 11 => 30,
        2 if year.rem_euclid(4) == 0 && (year.rem_euclid(100) != 0 || year.rem_euclid(400) == 0) => 29,
        2 => 28,
        _ => 31,
    }
}

/// Days from 1970-01-01.
pub(crate) fn day_of(date: Date) -> i32 {
    date.to_julian_day() - UNIX_JULIAN_DAY
}

/// The calendar date of a day number, written like `2026-05-01`.
pub(crate) fn day_words(day: i32) -> String {
    Date::from_julian_day(day.saturating_add(UNIX_JULIAN_DAY))
        .map_or_else(|_| format!("day {day}"), |d| d.to_string())
}

const UNIX_JULIAN_DAY: i32 = 2_440_588;

/// Microseconds of one day.
pub(crate) const DAY_US: i64 = 86_400_000_000;
/// Seconds of one day.
pub(crate) const DAY_S: f64 = 86_400.0;
/// 1024 weeks: the ten bits of the week number that GPS satellites send.
pub(crate) const ROLLOVER_DAYS: i32 = 7168;

/// The first day that a log can contain. The GPS time scale begins on 1980-01-06, and receivers that do not know the time
/// yet start there, so nothing before 1981 was ever measured.
pub(crate) fn first_day() -> i32 {
    calendar_day(1981)
}

/// The first day that is too late.
pub(crate) fn last_day() -> i32 {
    calendar_day(2100)
}

fn calendar_day(year: i32) -> i32 {
    Date::from_calendar_date(year, Month::January, 1).map_or(0, day_of)
}

/// Seconds since 1970 from a day and microseconds into it.
pub(crate) fn seconds(day: i32, of_day_us: i64) -> f64 {
    let micros = i64::from(day) * DAY_US + of_day_us;
    micros as f64 / 1e6
}

/// The day on which GPS weeks begin to count, 1980-01-06 (IS-GPS-200).
const GPS_FIRST_DAY: i32 = 3657;
/// Seconds of a week.
pub(crate) const WEEK_S: f64 = 604_800.0;
/// The months, such as 198107, at whose start UTC fell back by one more second behind GPS time (IERS, Bulletin C; none since
/// 2017).
const LEAPS: [u32; 18] = [
    198_107, 198_207, 198_307, 198_507, 198_801, 199_001, 199_101, 199_207, 199_307, 199_407, 199_601,
    199_707, 199_901, 200_601, 200_901, 201_207, 201_507, 201_701,
];

/// UTC from GPS time, both in seconds since 1970 as counted by a calendar without leap seconds.
pub(crate) fn utc_of_gps_s(gps_s: f64) -> f64 {
    let is_past = |(count, &month): (usize, &u32)| {
        day_number((month / 100) as i32, month % 100, 1)
            .is_some_and(|day| gps_s >= f64::from(day) * DAY_S + (count + 1) as f64)
    };
    let leaps = LEAPS.iter().enumerate().rev().position(is_past);
    gps_s - leaps.map_or(0, |later| LEAPS.len() - later) as f64
}

/// GPS time in seconds since 1970 from a full week number and seconds into the week.
pub(crate) fn gps_s(week: u32, of_week_s: f64) -> f64 {
    f64::from(GPS_FIRST_DAY) * DAY_S + f64::from(week) * WEEK_S + of_week_s
}

/// A time as written, and whether it stated its zone.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Written {
    pub(crate) time_s: f64,
    pub(crate) zone: Zone,
}

/// Whether a time stated its zone.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Zone {
    Stated,
    Missing,
}

/// Why a time could not be used.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum TimeFault {
    Malformed,
    OutOfRange,
}

impl From<TimeFault> for tussock_types::SkipReason {
    fn from(fault: TimeFault) -> Self {
        match fault {
            TimeFault::Malformed => Self::Malformed,
            TimeFault::OutOfRange => Self::OutOfRange,
        }
    }
}

fn two(text: &[u8]) -> Option<u32> {
    match text {
        [a, b] if a.is_ascii_digit() && b.is_ascii_digit() => {
            Some(u32::from(a - b'0') * 10 + u32::from(b - b'0'))
        }
        _ => None,
    }
}

/// `hh:mm[:ss[.fff]]` with digits only; seconds up to 60. Microseconds into the day and the rest of the text.
pub(crate) fn clock_time(text: &[u8]) -> Option<(i64, &[u8])> {
    let hour = two(text.get(0..2)?)?;
    if *text.get(2)? != b':' {
        return None;
    }
    let minute = two(text.get(3..5)?)?;
    let mut rest = &text[5..];
    let mut second = 0;
    let mut micros = 0;
    if rest.first() == Some(&b':') {
        second = two(rest.get(1..3)?)?;
        rest = &rest[3..];
        (micros, rest) = fraction_us(rest)?;
    }
    // 24:00:00 is the end of the day in ISO 8601, and :60 a leap second.
    if hour > 24 || minute > 59 || second > 60 || (hour == 24 && (minute > 0 || second > 0 || micros > 0)) {
        return None;
    }
    Some((
        i64::from(hour * 3600 + minute * 60 + second) * 1_000_000 + micros,
        rest,
    ))
}

/// An optional fraction of a second after a point or comma, rounded down to microseconds; at least one digit.
pub(crate) fn fraction_us(text: &[u8]) -> Option<(i64, &[u8])> {
    if !matches!(text.first(), Some(b'.' | b',')) {
        return Some((0, text));
    }
    let digits = text[1..].iter().take_while(|b| b.is_ascii_digit()).count();
    if digits == 0 {
        return None;
    }
    let mut micros = 0_i64;
    for place in 0..6 {
        let digit = if place < digits {
            i64::from(text[1 + place] - b'0')
        } else {
            0
        };
        micros = micros * 10 + digit;
    }
    Some((micros, &text[1 + digits..]))
}

/// Reads `Z`, `+hh:mm`, `-hhmm`, `+hh`, `UTC` or nothing. Returns the offset in seconds.
pub(crate) fn zone(text: &[u8]) -> Option<(i64, Zone)> {
    let text = text.trim_ascii();
    match text {
        b"" => return Some((0, Zone::Missing)),
        b"Z" | b"z" | b"UTC" | b"GMT" | b"utc" => return Some((0, Zone::Stated)),
        _ => {}
    }
    let sign = match text[0] {
        b'+' => 1,
        b'-' => -1,
        _ => return None,
    };
    let (hour, minute) = match &text[1..] {
        [a, b] => (two(&[*a, *b])?, 0),
        [a, b, b':', c, d] | [a, b, c, d] => (two(&[*a, *b])?, two(&[*c, *d])?),
        _ => return None,
    };
    (hour <= 18 && minute <= 59).then_some((sign * i64::from(hour * 3600 + minute * 60), Zone::Stated))
}

/// The form that most logs use, `2026-05-01T12:00:00Z`, read directly.
#[inline]
fn plain_utc(text: &[u8]) -> Option<f64> {
    let text: &[u8; 20] = text.try_into().ok()?;
    if text[4] != b'-'
        || text[7] != b'-'
        || text[10] != b'T'
        || text[13] != b':'
        || text[16] != b':'
        || text[19] != b'Z'
    {
        return None;
    }
    let pair = |at: usize| two(&text[at..at + 2]);
    let (year, month, day) = (pair(0)? * 100 + pair(2)?, pair(5)?, pair(8)?);
    let (hour, minute, second) = (pair(11)?, pair(14)?, pair(17)?);
    if hour > 23 || minute > 59 || second > 60 {
        return None;
    }
    let day = day_number(year as i32, month, day)?;
    Some((i64::from(day) * 86_400 + i64::from(hour * 3600 + minute * 60 + second)) as f64)
}

/// Reads instants in the form that most logs use, `2026-05-01T12:00:00[.123]Z`, and remembers the day: the next fix nearly
/// always has the same.
#[derive(Debug, Default)]
pub(crate) struct PlainUtc {
    /// The date read last, as written.
    date: [u8; 10],
    /// Its first second since 1970.
    first_s: i64,
}

impl PlainUtc {
    /// The instant at a place, and where it ends; equal to that of [`instant`]. `None` for any other shape, and for anything
    /// that no log can contain.
    #[inline]
    pub(crate) fn read(&mut self, text: &[u8], at: usize) -> Option<(f64, usize)> {
        // The values allowed in place of a digit and of a colon, once their own bits are removed.
        const ABOVE: u64 = u64::from_le_bytes([0x76, 0x76, 0x7f, 0x76, 0x76, 0x7f, 0x76, 0x76]);
        const HIGH: u64 = 0x8080_8080_8080_8080;
        let head: &[u8; 20] = text.get(at..at.checked_add(20)?)?.try_into().ok()?;
        if head[..10] != self.date {
            self.turn_to(head)?;
        }
        let [.., a, b, c, d, e, f, g, h, end] = *head;
        let clock = u64::from_le_bytes([a, b, c, d, e, f, g, h]) ^ u64::from_le_bytes(*b"00:00:00");
        if head[10] != b'T' || (((clock & !HIGH) + ABOVE) | clock) & HIGH != 0 {
            return None;
        }
        let pairs = clock * 10 + (clock >> 8);
        let part = |byte: u32| (pairs >> (8 * byte)) as i64 & 0xff;
        let (hour, minute, second) = (part(0), part(3), part(6));
        if hour > 23 || minute > 59 || second > 60 {
            return None;
        }
        let whole_s = self.first_s + hour * 3600 + minute * 60 + second;
        if end == b'Z' {
            return Some((whole_s as f64, at + 20));
        }
        let (value, count) = leading_digits(eight(text, at + 20)?);
        if end != b'.' || !(1..=6).contains(&count) || *text.get(at + 20 + count)? != b'Z' {
            return None;
        }
        let micros = whole_s * 1_000_000 + (value * TEN_WHOLE[6 - count]) as i64;
        Some((micros as f64 / 1e6, at + 21 + count))
    }

    #[cold]
    fn turn_to(&mut self, text: &[u8; 20]) -> Option<()> {
        if text[4] != b'-' || text[7] != b'-' {
            return None;
        }
        let pair = |at: usize| two(&text[at..at + 2]);
        let day = day_number((pair(0)? * 100 + pair(2)?) as i32, pair(5)?, pair(8)?)?;
        // A leap second may end on the day after the last one.
        if !(FIRST..LAST - 1).contains(&day) {
            return None;
        }
        self.date.copy_from_slice(&text[..10]);
        self.first_s = i64::from(day) * 86_400;
        Some(())
    }
}

/// Reads an instant as written by GPX and most CSV writers: `xsd:dateTime` (XML Schema part 2, 3.2.7), also with a blank or
/// slashes. Without a zone UTC is assumed, as the GPX schema requires of writers.
pub(crate) fn instant(text: &[u8]) -> Result<Written, TimeFault> {
    if let Some(time_s) = plain_utc(text) {
        return in_range(time_s, Zone::Stated);
    }
    let text = text.trim_ascii();
    let (day, rest) = date_year_first(text).ok_or(TimeFault::Malformed)?;
    let rest = match rest.first() {
        Some(b'T' | b't' | b' ') => rest[1..].trim_ascii_start(),
        _ => return Err(TimeFault::Malformed),
    };
    let (of_day_us, rest) = clock_time(rest).ok_or(TimeFault::Malformed)?;
    let (offset_s, zone) = zone(rest).ok_or(TimeFault::Malformed)?;
    let day = day.ok_or(TimeFault::OutOfRange)?;
    in_range(seconds(day, of_day_us - offset_s * 1_000_000), zone)
}

/// `yyyy-mm-dd`, `yyyy/mm/dd`, `yyyy.mm.dd`. The inner option is empty if the calendar has no such day.
pub(crate) fn date_year_first(text: &[u8]) -> Option<(Option<i32>, &[u8])> {
    let (negative, text) = match text.first()? {
        b'-' => (true, &text[1..]),
        _ => (false, text),
    };
    let digits = text.iter().take_while(|b| b.is_ascii_digit()).count();
    if !(4..=9).contains(&digits) {
        return None;
    }
    let year = crate::number::whole(&text[..digits])? as i32;
    let separator = *text.get(digits)?;
    if !matches!(separator, b'-' | b'/' | b'.') {
        return None;
    }
    let rest = &text[digits + 1..];
    let (month, rest) = one_or_two(rest)?;
    if *rest.first()? != separator {
        return None;
    }
    let (day, rest) = one_or_two(&rest[1..])?;
    if negative || digits > 4 {
        return Some((None, rest));
    }
    if !(1..=12).contains(&month) || !(1..=31).contains(&day) {
        return None;
    }
    Some((day_number(year, month, day), rest))
}

/// One or two digits and what follows.
pub(crate) fn one_or_two(text: &[u8]) -> Option<(u32, &[u8])> {
    let digits = text.iter().take(3).take_while(|b| b.is_ascii_digit()).count();
    if !(1..=2).contains(&digits) {
        return None;
    }
    Some((crate::number::whole(&text[..digits])?, &text[digits..]))
}

/// Refuses instants that no log can contain.
pub(crate) fn in_range(time_s: f64, zone: Zone) -> Result<Written, TimeFault> {
    let day = time_s / DAY_S;
    if day < f64::from(FIRST) || day >= f64::from(LAST) || !time_s.is_finite() {
        return Err(TimeFault::OutOfRange);
    }
    Ok(Written { time_s, zone })
}

/// 1981-01-01 and 2100-01-01; a test compares them with [`first_day`] and [`last_day`].
const FIRST: i32 = 4018;
const LAST: i32 = 47_482;

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn at(text: &str) -> Result<f64, TimeFault> {
        instant(text.as_bytes()).map(|w| w.time_s)
    }

    #[test]
    fn bounds_are_the_calendar_days_that_they_say() {
        assert_eq!(FIRST, first_day());
        assert_eq!(LAST, last_day());
    }

    #[test]
    fn day_numbers_agree_with_the_calendar_of_the_time_crate() {
        for day in -800_000..800_000 {
            let date = Date::from_julian_day(day + UNIX_JULIAN_DAY).unwrap();
            let number = day_number(
                date.year(),
                u32::from(u8::from(date.month())),
                u32::from(date.day()),
            );
            assert_eq!(number, Some(day));
        }
        assert_eq!(day_number(2026, 2, 29), None);
        assert_eq!(day_number(2026, 4, 31), None);
        assert_eq!(day_number(2026, 13, 1), None);
        assert_eq!(day_number(2026, 1, 0), None);
    }

    #[test]
    fn the_same_instant_is_read_from_every_way_to_write_it() {
        let noon = 1_777_636_800.0;
        for text in [
            "2026-05-01T12:00:00Z",
            "2026-05-01T12:00:00.000Z",
            "2026-05-01T14:00:00+02:00",
            "2026-05-01T07:00:00-05",
            "2026-05-01T17:30:00+0530",
            "2026-05-01t12:00:00z",
            "2026-05-01 12:00:00",
            "2026/05/01 12:00:00",
            "  2026-05-01T12:00:00Z\n",
            "2026-05-01T12:00Z",
            "2026-05-01T11:59:60Z",
            "2026-5-1 12:00:00 UTC",
        ] {
            assert_eq!(at(text), Ok(noon), "{text}");
        }
        assert_eq!(at("2026-04-30T24:00:00Z"), at("2026-05-01T00:00:00Z"));
    }

    #[test]
    fn fractions_of_any_length_are_read() {
        let whole = at("2026-05-01T12:00:00Z").unwrap();
        for (text, part) in [
            ("2026-05-01T12:00:00.5Z", 0.5),
            ("2026-05-01T12:00:00.25Z", 0.25),
            ("2026-05-01T12:00:00,125Z", 0.125),
            ("2026-05-01T12:00:00.8800000Z", 0.88),
            ("2026-05-01T12:00:00.123456789Z", 0.123456),
        ] {
            assert!((at(text).unwrap() - whole - part).abs() < 3e-7, "{text}");
        }
    }

    proptest! {
        #![proptest_config(ProptestConfig::with_cases(4000))]

        #[test]
        fn the_usual_shape_is_read_as_any_other(
            dates in proptest::collection::vec("(19[78]|20[0-9])[0-9]-[01][0-9]-[0-3][0-9]|[0-9:T.-]{10}", 1..4),
            clock in "T[0-2][0-9]:[0-6][0-9]:[0-6][0-9]|[0-9:T]{9}",
            fraction in "(\\.[0-9]{0,8})?",
            behind in "[Zz<+0 ]",
        ) {
            let mut plain = PlainUtc::default();
            for date in &dates {
                let written = format!("{date}{clock}{fraction}{behind}");
                let text = format!("{written}</time>");
                let slow = instant(written.as_bytes());
                if let Some((time_s, end)) = plain.read(text.as_bytes(), 0) {
                    prop_assert_eq!(end, written.len());
                    prop_assert_eq!(slow, Ok(Written { time_s, zone: Zone::Stated }), "{}", written);
                } else if slow.is_ok() && behind == "Z" {
                    // Left to the other reader: more digits than microseconds, the end of a day as 24:00, the last day.
                    let left = fraction.len() > 7 || clock.starts_with("T24") || date == "2099-12-31";
                    prop_assert!(left, "{} was not read", written);
                }
            }
        }
    }

    #[test]
    fn a_missing_zone_is_noticed() {
        assert_eq!(instant(b"2026-05-01T12:00:00").unwrap().zone, Zone::Missing);
        assert_eq!(instant(b"2026-05-01T12:00:00Z").unwrap().zone, Zone::Stated);
    }

    #[test]
    fn times_that_no_log_can_hold_are_out_of_range() {
        for text in [
            "1901-01-01T00:00:00Z",
            "1980-01-06T00:00:00Z",
            "2100-01-01T00:00:00Z",
            "12026-05-01T12:00:00Z",
        ] {
            assert_eq!(at(text), Err(TimeFault::OutOfRange), "{text}");
        }
        assert!(at("1994-03-23T12:35:19Z").is_ok());
        assert!(at("2099-12-31T23:59:59Z").is_ok());
    }

    #[test]
    fn what_is_no_time_is_malformed() {
        for text in [
            "",
            "now",
            "2026-05-01",
            "2026-05-01T",
            "2026-05-01T12",
            "2026-05-01T12:60:00Z",
            "2026-05-01T25:00:00Z",
            "2026-05-01T12:00:61Z",
            "2026-13-01T12:00:00Z",
            "2026-05-01T12:00:00.Z",
            "2026-05-01T12:00:00X",
            "2026-05-01T12:00:00+99:00",
            "26-05-01T12:00:00Z",
            "2026-05-01T24:00:01Z",
        ] {
            assert_eq!(at(text), Err(TimeFault::Malformed), "{text}");
        }
    }
}
