//! Numbers with their unit, as people type them: `22cm`, `0.22 m`, `9in`, `0.75 ft`, `95%`, `30 s`, `8h`.
//!
//! A bare number is refused: 22 of what? A guess could be wrong by a factor of a hundred without anyone noticing.

use crate::exit::{CommandFailure, failure};
use tussock_types::LENGTH_UNITS;

/// A unit, and how many base units it is.
type Unit = (&'static str, f64, f64);

const TIMES: [Unit; 5] = [
    ("ms", 1.0, 1000.0),
    ("min", 60.0, 1.0),
    ("s", 1.0, 1.0),
    ("h", 3600.0, 1.0),
    ("d", 86_400.0, 1.0),
];

const CURVATURES: [Unit; 1] = [("/m", 1.0, 1.0)];
const ANGLES: [Unit; 1] = [("deg", 1.0, 1.0)];

/// A length in metres; `flag` is named in the message.
pub(crate) fn length_m(flag: &str, typed: &str, example: &str) -> Result<f64, CommandFailure> {
    let expected = format!("a length with its unit (mm, cm, m, in or ft), such as {example}");
    measure(flag, typed, &LENGTH_UNITS, &expected, example)
}

/// A time in seconds.
pub(crate) fn time_s(flag: &str, typed: &str, example: &str) -> Result<f64, CommandFailure> {
    let expected = format!("a time with its unit (ms, s, min, h or d), such as {example}");
    measure(flag, typed, &TIMES, &expected, example)
}

/// A curvature in turns of one radian to the metre.
pub(crate) fn curvature_per_m(flag: &str, typed: &str, example: &str) -> Result<f64, CommandFailure> {
    let expected = format!("a curvature with its unit (/m), such as {example}");
    measure(flag, typed, &CURVATURES, &expected, example)
}

/// An angle in degrees.
pub(crate) fn angle_deg(flag: &str, typed: &str, example: &str) -> Result<f64, CommandFailure> {
    let expected = format!("an angle with its unit (deg), such as {example}");
    measure(flag, typed, &ANGLES, &expected, example)
}

/// A share between 0 and 1, typed in percent with or without the sign.
pub(crate) fn percent_as_fraction(flag: &str, typed: &str) -> Result<f64, CommandFailure> {
    let number = typed.trim().trim_end_matches('%').trim_end();
    match number.parse::<f64>() {
        Ok(percent) if (0.0..=100.0).contains(&percent) => Ok(percent / 100.0),
        _ => Err(failure!(
            "{flag}: {typed:?} is no share, expected percent from 0 to 100, such as 95"
        )),
    }
}

/// Seconds since 1970 of a date with time and zone.
pub(crate) fn moment_unix_s(flag: &str, typed: &str) -> Result<f64, CommandFailure> {
    time::OffsetDateTime::parse(typed, &time::format_description::well_known::Rfc3339)
        .map(|moment| moment.unix_timestamp() as f64 + f64::from(moment.nanosecond()) * 1e-9)
        .map_err(|_| failure!("{flag}: {typed:?} is no time, expected one such as 2026-05-01T20:00:00Z"))
}

fn measure(
    flag: &str,
    typed: &str,
    units: &[Unit],
    expected: &str,
    example: &str,
) -> Result<f64, CommandFailure> {
    let trimmed = typed.trim();
    let end = trimmed
        .find(|letter: char| letter == '/' || letter.is_alphabetic() && letter != 'e' && letter != 'E')
        .unwrap_or(trimmed.len());
    let (number, unit) = trimmed.split_at(end);
    let refused = |found: &str| failure!("{flag}: {typed:?} {found}, expected {expected}");
    let Ok(number) = number.trim().parse::<f64>() else {
        return Err(refused("is not a number with a unit"));
    };
    if !number.is_finite() {
        return Err(refused("is not finite"));
    }
    if unit.is_empty() {
        let unit = example.trim_start_matches(|letter: char| letter != '/' && !letter.is_alphabetic());
        return Err(refused("has no unit").hint(format!("did you mean {trimmed}{unit}?")));
    }
    match units.iter().find(|(name, ..)| *name == unit) {
        // If the factor is a power of ten below one, dividing keeps 22cm at exactly 0.22.
        Some((_, times, per)) => Ok(number * times / per),
        None => Err(refused(&format!(
            "has the unit {unit:?}, which is not known here"
        ))),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn message(result: Result<f64, CommandFailure>) -> (String, Vec<String>) {
        match result {
            Err(CommandFailure::Told { message, hints, .. }) => (message, hints),
            other => panic!("expected a message, got {other:?}"),
        }
    }

    #[test]
    fn the_same_width_in_three_units_is_the_same_number() {
        for typed in ["22cm", "0.22 m", "220mm", " 22 cm ", "2.2e1cm"] {
            assert_eq!(length_m("--cut-width", typed, "22cm").ok(), Some(0.22), "{typed}");
        }
    }

    #[test]
    fn inches_and_feet_are_exact() {
        assert_eq!(length_m("--cut-width", "9in", "22cm").ok(), Some(0.2286));
        assert_eq!(length_m("--cut-width", "0.75 ft", "22cm").ok(), Some(0.2286));
    }

    #[test]
    fn a_bare_number_is_refused_and_the_hint_names_the_unit() {
        let (message, hints) = message(length_m("--cut-width", "22", "22cm"));
        assert_eq!(
            message,
            "--cut-width: \"22\" has no unit, expected a length with its unit (mm, cm, m, in or ft), such as 22cm"
        );
        assert_eq!(hints, ["did you mean 22cm?"]);
    }

    #[test]
    fn unknown_units_words_and_infinities_are_refused() {
        for typed in ["9yd", "wide", "", "infm", "NaNcm", "1.2.3m", "-"] {
            assert!(length_m("--cut-width", typed, "22cm").is_err(), "{typed}");
        }
    }

    #[test]
    fn times_know_milliseconds_from_minutes_from_metres() {
        assert_eq!(time_s("--period", "200ms", "1s").ok(), Some(0.2));
        assert_eq!(time_s("--period", "2min", "1s").ok(), Some(120.0));
        assert_eq!(time_s("--hours", "8h", "8h").ok(), Some(28_800.0));
        assert!(time_s("--period", "2m", "1s").is_err());
    }

    #[test]
    fn curvatures_are_to_the_metre_and_angles_in_degrees() {
        assert_eq!(
            curvature_per_m("--curvature", "0.02/m", "0.02/m").ok(),
            Some(0.02)
        );
        assert_eq!(
            curvature_per_m("--curvature", "2e-2 /m", "0.02/m").ok(),
            Some(0.02)
        );
        assert_eq!(angle_deg("--downhill", "-90 deg", "180deg").ok(), Some(-90.0));
        assert_eq!(
            message(curvature_per_m("--curvature", "0.02", "0.02/m")).1,
            ["did you mean 0.02/m?"]
        );
        assert!(curvature_per_m("--curvature", "50m", "0.02/m").is_err());
    }

    #[test]
    fn percent_may_carry_its_sign_and_must_lie_between_0_and_100() {
        assert_eq!(percent_as_fraction("--fail-under", "95").ok(), Some(0.95));
        assert_eq!(percent_as_fraction("--fail-under", "95 %").ok(), Some(0.95));
        for typed in ["-1", "100.1", "all", "NaN", ""] {
            assert!(percent_as_fraction("--fail-under", typed).is_err(), "{typed}");
        }
    }
}
