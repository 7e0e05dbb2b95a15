//! When is it dark?
//!
//! The Sun's apparent place by the low-accuracy series of Meeus, *Astronomical Algorithms* (2nd edition 1998), chapter 25, on sidereal
//! time by his chapter 12; its altitude by the spherical triangle. The series is good to 0.01 degrees, which is 2 to 5 s of time at
//! mid-latitudes; refraction at the horizon differs by more from day to day. Left out: delta T, parallax, the height of the place.
//!
//! Dark is what lies after civil dusk or before civil dawn: the Sun's middle more than 6 degrees below the horizon. The upper limb sets at
//! -50 minutes of arc. Times are found where the altitude crosses such a value, in steps that no day or night of more than ten
//! minutes slips through; polar day and polar night have no crossings and need no case of their own.

use tussock_types::{GeoPoint, math};

/// The Sun's middle at civil dusk and dawn.
pub const CIVIL_DEG: f64 = -6.0;
/// The Sun's middle when its upper limb is seen on the horizon: radius and refraction.
pub const HORIZON_DEG: f64 = -50.0 / 60.0;
/// Altitudes are looked at in such steps; crossings are found to a tenth of a second.
const STEP_S: f64 = 600.0;
const HALVINGS: usize = 13;
/// 2000-01-01T12:00Z.
const J2000_UNIX_S: f64 = 946_728_000.0;
const DAY_S: f64 = 86_400.0;

/// Right ascension and declination of the Sun, radians.
fn place_rad(days: f64) -> (f64, f64) {
    let centuries = days / 36_525.0;
    let sin_deg = |deg: f64| math::sin(deg.to_radians());
    let mean_deg = 280.466_46 + centuries * (36_000.769_83 + centuries * 0.000_303_2);
    let anomaly_deg = 357.529_11 + centuries * (35_999.050_29 - centuries * 0.000_153_7);
    let centre_deg = (1.914_602 - centuries * (0.004_817 + centuries * 0.000_014)) * sin_deg(anomaly_deg)
        + (0.019_993 - centuries * 0.000_101) * sin_deg(2.0 * anomaly_deg)
        + 0.000_289 * sin_deg(3.0 * anomaly_deg);
    let node_rad = (125.04 - 1934.136 * centuries).to_radians();
    let longitude_rad = (mean_deg + centre_deg - 0.005_69 - 0.004_78 * math::sin(node_rad)).to_radians();
    let obliquity_deg = 23.439_291 - 0.013_004 * centuries + 0.002_56 * math::cos(node_rad);
    let (sin_obliquity, cos_obliquity) = math::sin_cos(obliquity_deg.to_radians());
    let (sin, cos) = math::sin_cos(longitude_rad);
    (
        math::atan2(cos_obliquity * sin, cos),
        math::asin(sin_obliquity * sin),
    )
}

/// Altitude of the Sun's middle over the horizon without refraction, degrees.
pub fn altitude_deg(unix_s: f64, at: GeoPoint) -> f64 {
    let days = (unix_s - J2000_UNIX_S) / DAY_S;
    let (ascension_rad, declination_rad) = place_rad(days);
    let sidereal_deg = 280.460_618_37 + 360.985_647_366_29 * days;
    let hour_angle_rad = (sidereal_deg.rem_euclid(360.0) + at.lon_deg).to_radians() - ascension_rad;
    let (sin_lat, cos_lat) = math::sin_cos(at.lat_deg.to_radians());
    let (sin_declination, cos_declination) = math::sin_cos(declination_rad);
    let sin = sin_lat * sin_declination + cos_lat * cos_declination * math::cos(hour_angle_rad);
    math::asin(sin.clamp(-1.0, 1.0)).to_degrees()
}

/// When the Sun's middle passes an altitude within a time.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Crossings {
    /// Stretches during which it is below.
    pub below_s: Vec<(f64, f64)>,
    /// The first time that it goes below; `None` where it does not.
    pub sets_s: Option<f64>,
    /// The first time that it comes up.
    pub rises_s: Option<f64>,
}

/// Where the Sun passes an altitude from one moment to another.
pub fn crossings(at: GeoPoint, altitude: f64, from_s: f64, to_s: f64) -> Crossings {
    let is_below = |time_s: f64| altitude_deg(time_s, at) < altitude;
    let mut found = Crossings::default();
    let mut begins_s = is_below(from_s).then_some(from_s);
    let mut early_s = from_s;
    while early_s < to_s {
        let late_s = (early_s + STEP_S).min(to_s);
        if is_below(late_s) != begins_s.is_some() {
            let (mut before_s, mut after_s) = (early_s, late_s);
            for _ in 0..HALVINGS {
                let middle_s = 0.5 * (before_s + after_s);
                if is_below(middle_s) == begins_s.is_some() {
                    before_s = middle_s;
                } else {
                    after_s = middle_s;
                }
            }
            match begins_s.take() {
                Some(start_s) => {
                    found.below_s.push((start_s, after_s));
                    found.rises_s = found.rises_s.or(Some(after_s));
                }
                None => {
                    begins_s = Some(after_s);
                    found.sets_s = found.sets_s.or(begins_s);
                }
            }
        }
        early_s = late_s;
    }
    found.below_s.extend(begins_s.map(|start_s| (start_s, to_s)));
    found
}

#[cfg(test)]
mod tests {
    use super::*;
    use time::macros::datetime;

    const DAY: f64 = DAY_S;

    fn at(lat_deg: f64, lon_deg: f64) -> GeoPoint {
        GeoPoint { lat_deg, lon_deg }
    }

    // Meeus, example 25.a, with the figures of the documentation of PyMeeus (ex-Sun.rst), which reproduces it: the Sun on 1992 October 13
    // at 0h TD has right ascension 13h 13m 31.4s and declination -7 deg 47' 06".
    #[test]
    fn the_sun_stands_where_the_worked_example_has_it() {
        let days = (datetime!(1992-10-13 0:00 UTC).unix_timestamp() as f64 - J2000_UNIX_S) / DAY;
        let (ascension_rad, declination_rad) = place_rad(days);
        let expected_deg = 15.0 * (13.0 + 13.0 / 60.0 + 31.4 / 3600.0);
        let ascension_deg = ascension_rad.to_degrees().rem_euclid(360.0);
        assert!(
            (ascension_deg - expected_deg).abs() < 0.001,
            "{ascension_deg} for {expected_deg}"
        );
        let expected_deg = -(7.0 + 47.0 / 60.0 + 6.0 / 3600.0);
        assert!((declination_rad.to_degrees() - expected_deg).abs() < 0.001);
    }

    /// Sunset, dusk, dawn and sunrise from one noon or midnight on.
    fn times_s(place: GeoPoint, from: time::OffsetDateTime) -> [f64; 4] {
        let from_s = from.unix_timestamp() as f64;
        let [sun, civil] = [HORIZON_DEG, CIVIL_DEG].map(|deg| crossings(place, deg, from_s, from_s + DAY));
        [sun.sets_s, civil.sets_s, civil.rises_s, sun.rises_s].map(|time_s| time_s.unwrap())
    }

    // The documentation of Skyfield (almanac.rst), which works from the ephemeris DE421: Bluffton, 40.8939 N 83.8917 W, the Sun's middle at
    // -0.8333 and -6 degrees.
    #[test]
    fn times_are_those_of_an_almanac_from_an_ephemeris() {
        let bluffton = at(40.8939, -83.8917);
        let [sunset_s, dusk_s, dawn_s, sunrise_s] = times_s(bluffton, datetime!(2019-11-08 5:00 UTC));
        for (found_s, expected) in [
            (dawn_s, datetime!(2019-11-08 11:45:18 UTC)),
            (sunrise_s, datetime!(2019-11-08 12:14:15 UTC)),
            (sunset_s, datetime!(2019-11-08 22:23:52 UTC)),
            (dusk_s, datetime!(2019-11-08 22:52:48 UTC)),
        ] {
            assert!(
                (found_s - expected.unix_timestamp() as f64).abs() < 5.0,
                "{found_s} for {expected}"
            );
        }
        let [sunset_s, _, _, sunrise_s] = times_s(bluffton, datetime!(2018-09-12 4:00 UTC));
        assert!((sunrise_s - datetime!(2018-09-12 11:13:13 UTC).unix_timestamp() as f64).abs() < 5.0);
        assert!((sunset_s - datetime!(2018-09-12 23:49:38 UTC).unix_timestamp() as f64).abs() < 5.0);
    }

    // The worked example of the Almanac for Computers 1990 (Nautical Almanac Office): Wayne, 40.9 N 74.3 W, 25 June 1990, zenith distance
    // 90 deg 50'; the Sun rises at 9h 26m UT. That algorithm is good to a minute or two.
    #[test]
    fn the_sun_rises_when_the_almanac_for_computers_says() {
        let [.., sunrise_s] = times_s(at(40.9, -74.3), datetime!(1990-06-25 4:00 UTC));
        let off_s = sunrise_s - datetime!(1990-06-25 9:26 UTC).unix_timestamp() as f64;
        assert!(off_s.abs() < 120.0, "{off_s}");
    }

    #[test]
    fn polar_day_and_polar_night_have_no_dusk_and_a_white_night_no_dark() {
        let noon_s = |moment: time::OffsetDateTime| moment.unix_timestamp() as f64;
        let far_north = at(78.2, 15.6);
        let summer_s = noon_s(datetime!(2026-06-21 12:00 UTC));
        assert_eq!(
            crossings(far_north, HORIZON_DEG, summer_s, summer_s + DAY),
            Crossings::default()
        );
        let winter_s = noon_s(datetime!(2026-12-21 0:00 UTC));
        let all = Crossings {
            below_s: vec![(winter_s, winter_s + DAY)],
            ..Crossings::default()
        };
        assert_eq!(crossings(far_north, CIVIL_DEG, winter_s, winter_s + DAY), all);
        // At 63 degrees north the midsummer Sun sets, but it stays civil twilight.
        let white = at(63.0, 10.0);
        assert!(
            crossings(white, HORIZON_DEG, summer_s, summer_s + DAY)
                .sets_s
                .is_some()
        );
        assert_eq!(
            crossings(white, CIVIL_DEG, summer_s, summer_s + DAY),
            Crossings::default()
        );
    }

    #[test]
    fn where_the_sun_goes_down_after_it_came_up_the_night_runs_to_the_end() {
        let midnight_s = datetime!(2026-05-01 0:00 UTC).unix_timestamp() as f64;
        let night = crossings(at(50.0, 0.0), CIVIL_DEG, midnight_s, midnight_s + DAY);
        let [(start_s, dawn_s), (dusk_s, end_s)] = night.below_s[..] else {
            panic!("{night:?}")
        };
        assert_eq!((start_s, end_s), (midnight_s, midnight_s + DAY));
        assert_eq!((night.rises_s, night.sets_s), (Some(dawn_s), Some(dusk_s)));
    }
}
