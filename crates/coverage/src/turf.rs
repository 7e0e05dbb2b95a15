//! How often does the grass need the machine?
//!
//! Growth comes from the settings, or from the mean temperature by the growth-potential curve of Gelernter & Stowell (2005):
//! `exp(-0.5 ((T - T0) / s)^2)`, cool-season grass T0 = 20, s = 5.5, warm-season T0 = 31, s = 7 degrees Celsius. At its
//! best, grass is assumed to grow 7.6 mm a day, as implied by Iowa State University Extension's advice for Kentucky
//! bluegrass in spring (2.5 in, every five days, under the one-third rule).
//!
//! The one-third rule (Iowa State University Extension; Cornell gardening): grass kept at height h may grow to 1.5 h, which
//! takes `0.5 h / growth` days. Exact as arithmetic; growth is a guess within a factor of two.

use tussock_types::math;
use tussock_types::{Grass, GrowthSource, TurfSettings};

/// Growth on the best day.
pub const BEST_GROWTH_MM_PER_DAY: f64 = 7.6;

/// Growth at a temperature over growth at the best temperature. For warm-season grass it stays at 1 above the best
/// temperature, as in the authors' later form.
pub fn growth_potential(mean_temperature_c: f64, grass: Grass) -> f64 {
    let (best_c, spread_c) = match grass {
        Grass::Cool => (20.0, 5.5),
        Grass::Warm => (31.0, 7.0),
    };
    if grass == Grass::Warm && mean_temperature_c > best_c {
        return 1.0;
    }
    math::exp(-0.5 * ((mean_temperature_c - best_c) / spread_c).powi(2))
}

/// Growth and where its figure comes from; `None` if the settings do not mention it.
pub fn growth_mm_per_day(turf: &TurfSettings) -> Option<(f64, GrowthSource)> {
    turf.growth_mm_per_day
        .map(|growth| (growth, GrowthSource::Settings))
        .or_else(|| {
            turf.mean_temperature_c.map(|temperature_c| {
                (
                    BEST_GROWTH_MM_PER_DAY * growth_potential(temperature_c, turf.grass),
                    GrowthSource::Temperature,
                )
            })
        })
}

/// Longest time between visits that the one-third rule allows, in days.
pub fn allowed_interval_days(cut_height_mm: f64, growth_mm_per_day: f64) -> Option<f64> {
    (growth_mm_per_day > 0.0 && cut_height_mm > 0.0).then(|| 0.5 * cut_height_mm / growth_mm_per_day)
}

#[cfg(test)]
mod tests {
    use super::*;
    use approx::assert_abs_diff_eq;

    // TURF-01, TURF-02: Gelernter & Stowell 2005, values recomputed.
    #[test]
    fn growth_potential_follows_the_published_curves() {
        for (at_c, cool, warm) in [
            (5.0, 0.024_258, 0.001_010),
            (10.0, 0.191_495, 0.011_109),
            (15.0, 0.661_515, 0.073_370),
            (16.9, 0.853_130, 0.131_510),
            (20.0, 1.0, 0.290_924),
            (22.5, 0.901_851, 0.478_430),
            (25.0, 0.661_515, 0.692_569),
            (30.0, 0.191_495, 0.989_848),
            (35.0, 0.024_258, 1.0),
        ] {
            assert_abs_diff_eq!(growth_potential(at_c, Grass::Cool), cool, epsilon = 1e-6);
            assert_abs_diff_eq!(growth_potential(at_c, Grass::Warm), warm, epsilon = 1e-6);
        }
    }

    // TURF-03: worked values published at asianturfgrass.com: 0.85 at 16.9 C, 0.66 at 15 C, 0.90 at 2.5 C off the best; warm-season
    // grass overtakes above 24.8 C.
    #[test]
    fn worked_values_of_the_curve_come_out() {
        let cool = |at_c| growth_potential(at_c, Grass::Cool);
        assert_abs_diff_eq!(cool(16.9), 0.85, epsilon = 0.005);
        assert_abs_diff_eq!(cool(15.0), 0.66, epsilon = 0.005);
        assert_abs_diff_eq!(cool(17.5), 0.90, epsilon = 0.005);
        let ahead = |at_c| growth_potential(at_c, Grass::Warm) > cool(at_c);
        assert!(!ahead(24.8) && ahead(24.9));
    }

    // TURF-05, TURF-06: the one-third rule (Iowa State University Extension), as arithmetic.
    #[test]
    fn the_one_third_rule_gives_the_longest_interval() {
        for (height_mm, growth, days) in [(50.0, 3.0, 8.333), (50.0, 5.0, 5.0), (76.2, 8.0, 4.7625)] {
            assert_abs_diff_eq!(
                allowed_interval_days(height_mm, growth).unwrap(),
                days,
                epsilon = 1e-3
            );
        }
        assert_eq!(allowed_interval_days(50.0, 0.0), None);
        // 3 in lawn: mow at 4.5 in.
        assert_abs_diff_eq!(allowed_interval_days(76.2, 38.1).unwrap(), 1.0, epsilon = 1e-12);
    }

    #[test]
    fn growth_is_the_users_own_first() {
        let mut turf = TurfSettings {
            mean_temperature_c: Some(20.0),
            ..TurfSettings::default()
        };
        assert_eq!(growth_mm_per_day(&turf), Some((7.6, GrowthSource::Temperature)));
        turf.growth_mm_per_day = Some(3.0);
        assert_eq!(growth_mm_per_day(&turf), Some((3.0, GrowthSource::Settings)));
        assert_eq!(growth_mm_per_day(&TurfSettings::default()), None);
    }
}
