//! What the sentences say that matter here: RMC, GGA, GNS, GLL, GST, VTG and ZDA.
//!
//! Field layouts after "NMEA Revealed" (gpsd project). An empty field says nothing, and is never read as zero.

use crate::clock::{day_number, fraction_us};
use crate::number::{decimal, whole};
use crate::reading::{self, gga_quality};
use tussock_types::{FixQuality, SkipReason};

/// A knot in metres per second: 1852 m in an hour.
pub(super) const KNOT_MPS: f64 = 1852.0 / 3600.0;

/// Most fields that are looked at; longer sentences keep the rest to themselves.
const FIELDS: usize = 16;

/// The fields of a sentence, the address first.
pub(super) struct Fields<'a> {
    fields: [&'a [u8]; FIELDS],
    count: usize,
}

impl<'a> Fields<'a> {
    #[inline]
    pub(super) fn of(body: &'a [u8]) -> Self {
        const COMMAS: u64 = 0x2c2c_2c2c_2c2c_2c2c;
        const LOW: u64 = 0x7f7f_7f7f_7f7f_7f7f;
        let mut fields: [&[u8]; FIELDS] = [&[]; FIELDS];
        let (mut count, mut from, mut base) = (0, 0, 0);
        let mut take = |at: usize| {
            fields[count] = &body[from..at];
            count += 1;
            from = at + 1;
            count == FIELDS
        };
        // Bodies are printable ASCII, so that a zero byte after the exclusive or is a comma, and nothing carries over.
        let mut words = body.chunks_exact(8);
        for word in &mut words {
            let word = u64::from_le_bytes([
                word[0], word[1], word[2], word[3], word[4], word[5], word[6], word[7],
            ]);
            let mut hits = !(((word ^ COMMAS) & LOW).wrapping_add(LOW)) & !LOW;
            while hits != 0 {
                if take(base + hits.trailing_zeros() as usize / 8) {
                    return Self {
                        fields,
                        count: FIELDS,
                    };
                }
                hits &= hits - 1;
            }
            base += 8;
        }
        for (offset, &byte) in words.remainder().iter().enumerate() {
            if byte == b',' && take(base + offset) {
                return Self {
                    fields,
                    count: FIELDS,
                };
            }
        }
        take(body.len());
        Self { fields, count }
    }

    /// The field at `index`; empty where the sentence is shorter.
    #[inline]
    pub(super) fn get(&self, index: usize) -> &'a [u8] {
        self.fields[index]
    }

    pub(super) fn count(&self) -> usize {
        self.count
    }
}

/// A latitude and longitude, in degrees, and digits behind the point of the minutes.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Position {
    pub(super) lat_deg: f64,
    pub(super) lon_deg: f64,
    pub(super) decimals: u8,
}

/// Four fields: latitude, N or S, longitude, E or W. `Ok(None)` when they are empty.
#[inline]
pub(super) fn position(fields: &Fields<'_>, at: usize) -> Result<Option<Position>, SkipReason> {
    let [lat, north, lon, east] = [0, 1, 2, 3].map(|offset| fields.get(at + offset).trim_ascii());
    if lat.is_empty() && lon.is_empty() {
        return Ok(None);
    }
    let (lat_deg, lat_decimals) = degrees(lat).ok_or(SkipReason::Malformed)?;
    let (lon_deg, lon_decimals) = degrees(lon).ok_or(SkipReason::Malformed)?;
    let lat_deg = match north {
        b"N" | b"n" => lat_deg,
        b"S" | b"s" => -lat_deg,
        _ => return Err(SkipReason::Malformed),
    };
    let lon_deg = match east {
        b"E" | b"e" => lon_deg,
        b"W" | b"w" => -lon_deg,
        _ => return Err(SkipReason::Malformed),
    };
    if let Some(fault) = reading::geographic_fault(lat_deg, lon_deg) {
        return Err(fault);
    }
    Ok(Some(Position {
        lat_deg,
        lon_deg,
        decimals: lat_decimals.max(lon_decimals),
    }))
}

/// `ddmm.mmmm` or `dddmm.mmmm`: the last two digits before the point and what follows are minutes.
#[inline]
pub(super) fn degrees(text: &[u8]) -> Option<(f64, u8)> {
    const TEN: [f64; 12] = [1e0, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11];
    let point = text.iter().position(|&b| b == b'.');
    let whole_digits = point.unwrap_or(text.len());
    let fraction = point.map_or(&b""[..], |at| &text[at + 1..]);
    let decimals = fraction.len();
    if !(3..=5).contains(&whole_digits) {
        return None;
    }
    if decimals > 11 {
        return long_degrees(text, whole_digits);
    }
    let value = digits(fraction, digits(&text[..whole_digits], 0)?)?;
    // Degrees and minutes part at the hundreds of whole minutes; all of it is exact until the divisions.
    let unit = TEN[decimals] as u64;
    let degrees = value / (100 * unit);
    let minutes = (value % (100 * unit)) as f64 / TEN[decimals];
    // Some receivers round 59.99999 up to 60.
    if minutes > 60.0 {
        return None;
    }
    Some((degrees as f64 + minutes / 60.0, decimals as u8))
}

/// More digits than whole numbers carry: the standard library reads the minutes.
#[cold]
fn long_degrees(text: &[u8], whole_digits: usize) -> Option<(f64, u8)> {
    let (degrees, minutes) = text.split_at(whole_digits - 2);
    if !minutes.iter().all(|b| b.is_ascii_digit() || *b == b'.') {
        return None;
    }
    let (degrees, minutes) = (whole(degrees)?, decimal(minutes)?);
    (minutes.value <= 60.0).then_some((f64::from(degrees) + minutes.value / 60.0, minutes.decimals))
}

/// Appends decimal digits to a number.
#[inline]
fn digits(text: &[u8], mut value: u64) -> Option<u64> {
    for &byte in text {
        let digit = byte.wrapping_sub(b'0');
        if digit > 9 {
            return None;
        }
        value = value * 10 + u64::from(digit);
    }
    Some(value)
}

/// `hhmmss[.sss]` in microseconds into the day. `Ok(None)` when empty.
#[inline]
pub(super) fn time_of_day(text: &[u8]) -> Result<Option<i64>, SkipReason> {
    let text = text.trim_ascii();
    if text.is_empty() {
        return Ok(None);
    }
    let head = text.get(..6).ok_or(SkipReason::Malformed)?;
    if !head.iter().all(u8::is_ascii_digit) {
        return Err(SkipReason::Malformed);
    }
    let pair = |at: usize| i64::from(head[at] - b'0') * 10 + i64::from(head[at + 1] - b'0');
    let (hour, minute, second) = (pair(0), pair(2), pair(4));
    if hour > 23 || minute > 59 || second > 60 {
        return Err(SkipReason::Malformed);
    }
    let tail = &text[6..];
    let micros = match tail {
        b"" | b"." => 0,
        _ => match fraction_us(tail) {
            Some((micros, b"")) => micros,
            _ => return Err(SkipReason::Malformed),
        },
    };
    Ok(Some((hour * 3600 + minute * 60 + second) * 1_000_000 + micros))
}

/// `ddmmyy` as days since 1970. NMEA gives no century: 80 to 99 are 19xx, since the GPS time scale begins in 1980, the
/// rest 20xx.
#[inline]
pub(super) fn date(text: &[u8]) -> Option<i32> {
    let text = text.trim_ascii();
    if text.len() != 6 {
        return None;
    }
    let value = whole(text)?;
    let year = value % 100;
    day_number(century(year), value / 100 % 100, value / 10_000)
}

/// The year that two digits mean.
pub(super) fn century(two_digits: u32) -> i32 {
    two_digits as i32 + if two_digits >= 80 { 1900 } else { 2000 }
}

/// Day, month and four-digit year of ZDA, from three fields. Two-digit years occur.
pub(super) fn zda_date(fields: &Fields<'_>) -> Option<i32> {
    let (day, month, year) = (
        whole(fields.get(2))?,
        whole(fields.get(3))?,
        whole(fields.get(4))?,
    );
    let year = if year < 100 { century(year) } else { year as i32 };
    day_number(year, month, day)
}

/// What one of RMC, GGA, GNS or GLL says of having a fix.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Says {
    Nothing,
    NoFix,
    Fix,
}

/// GGA quality. Empty says nothing; anything that is no number is malformed.
#[inline]
pub(super) fn quality(text: &[u8]) -> Result<(Says, FixQuality), SkipReason> {
    let text = text.trim_ascii();
    if text.is_empty() {
        return Ok((Says::Nothing, FixQuality::Unknown));
    }
    let code = whole(text).ok_or(SkipReason::Malformed)?;
    Ok(gga_quality(code).map_or((Says::NoFix, FixQuality::Unknown), |quality| (Says::Fix, quality)))
}

/// A mode letter of RMC, GLL or GNS.
pub(super) fn mode(letter: u8) -> (Says, FixQuality) {
    match letter {
        b'A' => (Says::Fix, FixQuality::Autonomous),
        b'D' => (Says::Fix, FixQuality::Differential),
        b'E' => (Says::Fix, FixQuality::Estimated),
        b'F' => (Says::Fix, FixQuality::RtkFloat),
        b'M' => (Says::Fix, FixQuality::Manual),
        b'N' => (Says::NoFix, FixQuality::Unknown),
        b'P' => (Says::Fix, FixQuality::Precise),
        b'R' => (Says::Fix, FixQuality::RtkFixed),
        b'S' => (Says::Fix, FixQuality::Simulated),
        _ => (Says::Nothing, FixQuality::Unknown),
    }
}

/// The best of the mode letters of GNS, one for each system of satellites.
pub(super) fn modes(text: &[u8]) -> (Says, FixQuality) {
    let mut best = (Says::Nothing, FixQuality::Unknown);
    for &letter in text.trim_ascii() {
        let (says, quality) = mode(letter);
        best = match (best.0, says) {
            (Says::Fix, Says::Fix) if reading::rank(quality) > reading::rank(best.1) => (says, quality),
            (Says::Fix, _) | (Says::NoFix, Says::NoFix | Says::Nothing) => best,
            _ => (says, quality),
        };
    }
    best
}

/// A number that must not be negative, times a factor; NaN when empty or not one.
#[inline]
pub(super) fn scaled(text: &[u8], factor: f64) -> f32 {
    decimal(text).map_or(f32::NAN, |number| reading::not_negative(number.value * factor))
}

/// A course in degrees; NaN when empty or not one.
#[inline]
pub(super) fn course(text: &[u8]) -> f32 {
    decimal(text).map_or(f32::NAN, |number| reading::course(number.value))
}

/// A number of any sign; NaN when empty or not one.
#[inline]
pub(super) fn signed(text: &[u8]) -> f32 {
    decimal(text).map_or(f32::NAN, |number| reading::finite(number.value))
}

/// Standard deviation per axis from those of latitude and longitude: the root of their mean square.
pub(super) fn per_axis_sd(lat_m: f64, lon_m: f64) -> f32 {
    reading::not_negative(((lat_m * lat_m + lon_m * lon_m) / 2.0).sqrt())
}

/// Standard deviations north and east, and their covariance, of an error ellipse: semi-axes, and the bearing of the long one
/// from true north.
pub(super) fn of_ellipse(long_m: f64, short_m: f64, bearing_deg: f64) -> (f64, f64, f64) {
    let (sin, cos) = bearing_deg.to_radians().sin_cos();
    (
        (long_m * cos).hypot(short_m * sin),
        (long_m * sin).hypot(short_m * cos),
        (long_m * long_m - short_m * short_m) * sin * cos,
    )
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Closed form; fields as the gpsd project tells them ("NMEA Revealed").
    #[test]
    fn err_07_and_08_an_error_ellipse_turned_to_north_and_east() {
        for (ellipse, expected, tolerance) in [
            (
                (0.014, 0.009, 35.0),
                [0.012_576_413, 0.010_901_094, 5.403_232_569e-5],
                1e-9,
            ),
            (
                (3.0, 1.0, 30.0),
                [7.0_f64.sqrt(), 3.0_f64.sqrt(), 2.0 * 3.0_f64.sqrt()],
                1e-12,
            ),
        ] {
            let (north, east, covariance) = of_ellipse(ellipse.0, ellipse.1, ellipse.2);
            for (found, expected) in [north, east, covariance].into_iter().zip(expected) {
                assert!((found - expected).abs() <= tolerance, "{found} is not {expected}");
            }
        }
    }
}
