//! Times in the cells of a CSV log, of whatever kind its writer chose.

use crate::clock::{self, DAY_US, TimeFault, Zone, clock_time, day_number, one_or_two, seconds};
use crate::number::{Decimal, whole};

/// Smaller numbers are not Unix seconds of any log: July 1979.
const LEAST_UNIX_S: f64 = 3e8;

/// How a column writes its times; decided once, from the first rows.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum TimeKind {
    /// Date and time of day in one cell.
    Instant,
    /// Seconds since 1970.
    Unix,
    /// Milliseconds since 1970.
    UnixMs,
    /// Microseconds since 1970.
    UnixUs,
    /// Seconds since the logger's own start.
    Relative,
    /// `hhmmss.ss`, as in NMEA.
    Packed,
    /// `hh:mm:ss.ss`.
    OfDay,
    /// A GPS week in one column, seconds or milliseconds of the week in another.
    OfWeek,
}

impl TimeKind {
    /// From a cell; `None` if it is not a time of any kind.
    pub(super) fn of(cell: &[u8], number: Option<Decimal>, is_relative: bool) -> Option<Self> {
        let cell = cell.trim_ascii();
        if let Some(number) = number.filter(|number| number.value.is_finite()) {
            let size = number.value.abs();
            return Some(match size {
                _ if size >= 1e14 => Self::UnixUs,
                _ if size >= 1e11 => Self::UnixMs,
                _ if size >= LEAST_UNIX_S => Self::Unix,
                _ if !is_relative && packed(cell).is_some() => Self::Packed,
                _ => Self::Relative,
            });
        }
        if clock_time(cell).is_some() {
            return Some(Self::OfDay);
        }
        date_and_rest(cell, Some(Order::MonthFirst)).map(|_| Self::Instant)
    }

    /// True if it needs a date from elsewhere.
    pub(super) fn is_of_day(self) -> bool {
        matches!(self, Self::Packed | Self::OfDay)
    }
}

/// GPS time in seconds since 1970, from the cell with the week and seconds into it.
pub(super) fn of_week(week: &[u8], of_week_s: f64, given: Option<i32>) -> Option<f64> {
    let week = full_week(whole(week)?, given)?;
    (0.0..=clock::WEEK_S)
        .contains(&of_week_s)
        .then(|| clock::gps_s(week, of_week_s))
}

/// The full number of a week that may be one of ten bits (IS-GPS-200), as sent by satellites: those need a given day.
pub(super) fn full_week(week: u32, given: Option<i32>) -> Option<u32> {
    const TEN_BITS: u32 = 1024;
    if week >= TEN_BITS {
        return Some(week);
    }
    let given_s = f64::from(given?) * clock::DAY_S;
    let rounds = (given_s - clock::gps_s(week, 0.0)) / (f64::from(TEN_BITS) * clock::WEEK_S);
    Some(week + TEN_BITS * rounds.round().max(0.0) as u32)
}

/// The kind of most cells. Seconds that run past the clock's 59 are not times of day, however many of them look like it.
pub(super) fn most(counts: &[(TimeKind, u32)]) -> Option<TimeKind> {
    let count = |kind| {
        counts
            .iter()
            .find(|(known, _)| *known == kind)
            .map_or(0, |(_, count)| *count)
    };
    let (kind, most) = *counts.iter().max_by_key(|(_, count)| *count)?;
    let runs_on = kind == TimeKind::Packed && 10 * count(TimeKind::Relative) >= most;
    Some(if runs_on { TimeKind::Relative } else { kind })
}

/// What comes first in a date with slashes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Order {
    DayFirst,
    MonthFirst,
}

/// `hhmmss` with a fraction, in microseconds into the day.
fn packed(cell: &[u8]) -> Option<i64> {
    let cell = cell.trim_ascii();
    let point = cell.iter().position(|&b| b == b'.').unwrap_or(cell.len());
    // Writers that store it as a number lose leading zeros.
    let value = whole(&cell[..point]).filter(|_| point <= 6)?;
    let (hour, minute, second) = (value / 10_000, value / 100 % 100, value % 100);
    if hour > 23 || minute > 59 || second > 60 {
        return None;
    }
    let (micros, rest) = match &cell[point..] {
        b"" | b"." => (0, &b""[..]),
        tail => clock::fraction_us(tail)?,
    };
    rest.is_empty()
        .then_some(i64::from(hour * 3600 + minute * 60 + second) * 1_000_000 + micros)
}

/// A time of day in microseconds, how far ahead of UTC it is in seconds, and whether it stated that.
pub(super) fn of_day(cell: &[u8], kind: TimeKind) -> Option<(i64, i64, Zone)> {
    if kind == TimeKind::Packed {
        return packed(cell).map(|micros| (micros, 0, Zone::Missing));
    }
    let (micros, rest) = clock_time(cell.trim_ascii())?;
    let rest = rest.trim_ascii();
    let half = rest.get(rest.len().saturating_sub(2)..).unwrap_or_default();
    let (micros, rest) = if half.eq_ignore_ascii_case(b"am") || half.eq_ignore_ascii_case(b"pm") {
        let afternoon_us = if half[0].eq_ignore_ascii_case(&b'p') {
            DAY_US / 2
        } else {
            0
        };
        let is_of_half = (DAY_US / 24..DAY_US / 24 * 13).contains(&micros);
        let of_half_us = is_of_half.then_some(micros % (DAY_US / 2))?;
        (of_half_us + afternoon_us, &rest[..rest.len() - 2])
    } else {
        (micros, rest)
    };
    let (ahead_s, zone) = clock::zone(rest)?;
    Some((micros, ahead_s, zone))
}

/// A date in one of the usual forms, and what follows it. The inner option is empty if the calendar has no such day.
pub(super) fn date_and_rest(cell: &[u8], order: Option<Order>) -> Option<(Option<i32>, &[u8])> {
    let cell = cell.trim_ascii();
    if let Some(found) = clock::date_year_first(cell) {
        return Some(found);
    }
    let digits = cell.iter().take_while(|b| b.is_ascii_digit()).count();
    if digits == 8 {
        let value = whole(&cell[..8])?;
        return Some((
            day_number((value / 10_000) as i32, value / 100 % 100, value % 100),
            &cell[8..],
        ));
    }
    if digits == 6 && cell.len() == 6 {
        // In the form used by RMC.
        let value = whole(cell)?;
        let year = value % 100;
        let year = year as i32 + if year >= 80 { 1900 } else { 2000 };
        return Some((day_number(year, value / 100 % 100, value / 10_000), &[]));
    }
    let (first, second, year, rest) = slashed(cell)?;
    let (day, month) = match order_of(cell).or(order)? {
        Order::DayFirst => (first, second),
        Order::MonthFirst => (second, first),
    };
    Some((day_number(year, month, day), rest))
}

/// Two numbers and a year, separated by slashes, dots or dashes.
fn slashed(cell: &[u8]) -> Option<(u32, u32, i32, &[u8])> {
    let (first, rest) = one_or_two(cell)?;
    let separator = *rest.first()?;
    if !matches!(separator, b'/' | b'.' | b'-') {
        return None;
    }
    let (second, rest) = one_or_two(&rest[1..])?;
    if *rest.first()? != separator {
        return None;
    }
    let year = whole(rest.get(1..5)?)?;
    Some((first, second, year as i32, &rest[5..]))
}

/// What a date shows about its own order: with dots the day comes first, and no month is above 12.
pub(super) fn order_of(cell: &[u8]) -> Option<Order> {
    let cell = cell.trim_ascii();
    let (first, second, _, _) = slashed(cell)?;
    let dotted = cell.get(..3).is_some_and(|head| head.contains(&b'.'));
    if dotted || first > 12 {
        Some(Order::DayFirst)
    } else if second > 12 || first == second {
        Some(Order::MonthFirst)
    } else {
        None
    }
}

/// True for a date that can be read in two ways.
pub(super) fn is_ambiguous(cell: &[u8]) -> bool {
    clock::date_year_first(cell.trim_ascii()).is_none()
        && slashed(cell.trim_ascii()).is_some()
        && order_of(cell).is_none()
}

/// An instant from one cell.
pub(super) fn instant(
    cell: &[u8],
    number: Option<Decimal>,
    kind: TimeKind,
    order: Option<Order>,
) -> Result<clock::Written, TimeFault> {
    let scaled = |unit: f64| {
        let number = number.ok_or(TimeFault::Malformed)?;
        clock::in_range(number.value / unit, Zone::Stated)
    };
    match kind {
        TimeKind::Unix => scaled(1.0),
        TimeKind::UnixMs => scaled(1e3),
        TimeKind::UnixUs => scaled(1e6),
        TimeKind::Relative => {
            let number = number
                .filter(|number| number.value.is_finite())
                .ok_or(TimeFault::Malformed)?;
            if number.value.abs() >= LEAST_UNIX_S {
                return Err(TimeFault::OutOfRange);
            }
            Ok(clock::Written {
                time_s: number.value,
                zone: Zone::Stated,
            })
        }
        TimeKind::Instant => match clock::instant(cell) {
            Err(TimeFault::Malformed) => {
                // The year is not first: a date in another order, followed by a time of day.
                let (day, rest) = date_and_rest(cell, order).ok_or(TimeFault::Malformed)?;
                let rest = rest.strip_prefix(b"T").unwrap_or(rest);
                let rest = rest.strip_prefix(b",").unwrap_or(rest);
                let (micros, ahead_s, zone) = of_day(rest, TimeKind::OfDay).ok_or(TimeFault::Malformed)?;
                let day = day.ok_or(TimeFault::OutOfRange)?;
                clock::in_range(seconds(day, micros - ahead_s * 1_000_000), zone)
            }
            known => known,
        },
        TimeKind::Packed | TimeKind::OfDay | TimeKind::OfWeek => Err(TimeFault::Malformed),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn of(cell: &str, is_relative: bool) -> Option<TimeKind> {
        TimeKind::of(
            cell.as_bytes(),
            crate::number::decimal(cell.as_bytes()),
            is_relative,
        )
    }

    #[test]
    fn the_kind_of_a_time_is_told_from_its_shape() {
        for (cell, kind) in [
            ("2026-05-01T12:00:00Z", TimeKind::Instant),
            ("05/13/2026 12:00:00", TimeKind::Instant),
            ("1777636800", TimeKind::Unix),
            ("1777636800.25", TimeKind::Unix),
            ("1777636800250", TimeKind::UnixMs),
            ("1777636800250000", TimeKind::UnixUs),
            ("3856.8573", TimeKind::Packed),
            ("095301.00", TimeKind::Packed),
            ("10:05:40", TimeKind::OfDay),
            ("99.5", TimeKind::Relative),
        ] {
            assert_eq!(of(cell, false), Some(kind), "{cell}");
        }
        assert_eq!(of("3856.8573", true), Some(TimeKind::Relative));
        assert_eq!(of("soon", false), None);
    }

    #[test]
    fn a_day_is_read_in_every_usual_order() {
        let day = day_number(2026, 5, 13);
        for cell in [
            "2026-05-13",
            "2026/05/13",
            "20260513",
            "130526",
            "05/13/2026",
            "13/05/2026",
            "13.05.2026",
            "13-5-2026",
        ] {
            assert_eq!(
                date_and_rest(cell.as_bytes(), None),
                Some((day, &b""[..])),
                "{cell}"
            );
        }
        assert_eq!(date_and_rest(b"05/06/2026", None), None);
        assert_eq!(
            date_and_rest(b"05/06/2026", Some(Order::DayFirst)).unwrap().0,
            day_number(2026, 6, 5)
        );
        assert_eq!(
            date_and_rest(b"05.06.2026", None).unwrap().0,
            day_number(2026, 6, 5)
        );
        assert!(is_ambiguous(b"05/06/2026"));
        assert!(!is_ambiguous(b"05/05/2026"));
    }
}
