//! Is it luck or not?
//!
//! The swaths of a machine that turns at random are very nearly a Poisson line process (Miles 1964, Random polygons
//! determined by random lines in a plane, DOI 10.1073/pnas.52.4.901): with rho metres of path per square metre the open
//! polygons between lines have intensity rho^2 / pi and an in-circle radius that is exponential. The expected number of
//! unvisited places at least D wide on a lawn of area A under swaths of width w is
//!
//! ```text
//!   N(D) = (A rho^2 / pi) exp(-rho (D + w))        chance = 1 - exp(-N)
//! ```
//!
//! which already accounts for all places that were examined. The middle of a lawn gets fewer passes than its edges, so the
//! path density there is taken as [`MIDDLE_SHARE`] of the mean. This is a first estimate, with free access everywhere; for
//! ground behind passages it is only a bound.
//!
//! A machine that drives lanes leaves nothing wide to luck: whatever is wider than two swaths after one whole tour is
//! missed, and before that the machine may simply not have got there yet. Lanes show by leg directions that agree up to half
//! or quarter turns ([`pattern`], mean resultant length of doubled or fourfold angles, Mardia & Jupp, Directional
//! Statistics, 2000).

use tussock_types::math;

/// Path density in the middle of a lawn over its mean, for a machine that turns at the edge: 0.8 to 0.9 in simulated
/// gardens.
pub const MIDDLE_SHARE: f64 = 0.85;

/// A pocket is missed if luck would leave one that wide in at most this share of such lawns.
pub const MISSED_CHANCE_FRACTION: f64 = 0.05;

/// How the machine covers a lawn.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Pattern {
    /// Straight on until something turns the machine.
    Roaming,
    /// Side by side.
    Lanes,
}

/// Shorter legs are turns and cross-overs.
const LEAST_LEG_M: f64 = 1.0;
/// Agreement of leg directions above which a drive is in lanes; roaming in a rectangle stays below one half.
const LANES_AGREEMENT: f64 = 0.8;

/// Distinguishes lanes from roaming by the directions of legs, each given by its extent east and north.
pub fn pattern(legs_m: impl Iterator<Item = (f64, f64)>) -> Pattern {
    let long: Vec<(f64, f64)> = legs_m
        .map(|(east_m, north_m)| (math::atan2(north_m, east_m), math::hypot(east_m, north_m)))
        .filter(|(_, length_m)| *length_m >= LEAST_LEG_M)
        .collect();
    if long.len() >= 10 && agreement(&long, 2.0).max(agreement(&long, 4.0)) > LANES_AGREEMENT {
        Pattern::Lanes
    } else {
        Pattern::Roaming
    }
}

/// Mean resultant length of directions (radians, weight) multiplied by `fold`: 1 if all agree up to turns by `360 / fold`
/// degrees.
pub fn agreement(directions: &[(f64, f64)], fold: f64) -> f64 {
    axis(directions, fold).0
}

/// The same, with the mean direction itself in radians, from 0 up to a full turn over `fold`; 0 and 0 without weight.
pub fn axis(directions: &[(f64, f64)], fold: f64) -> (f64, f64) {
    let (cosines, sines, weights) =
        directions
            .iter()
            .fold((0.0, 0.0, 0.0), |(c, s, w), (angle_rad, weight)| {
                (
                    c + weight * math::cos(fold * angle_rad),
                    s + weight * math::sin(fold * angle_rad),
                    w + weight,
                )
            });
    if weights > 0.0 {
        let turn = std::f64::consts::TAU;
        (
            math::hypot(cosines, sines) / weights,
            math::atan2(sines, cosines).rem_euclid(turn) / fold,
        )
    } else {
        (0.0, 0.0)
    }
}

/// What was driven, as far as luck is concerned.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Drive {
    /// Lawn area.
    pub lawn_m2: f64,
    /// Path driven on it.
    pub path_m: f64,
    /// Cutting width.
    pub cut_width_m: f64,
    /// Driving speed.
    pub speed_mps: f64,
    /// How the machine covers the lawn.
    pub pattern: Pattern,
    /// Path density at the place in question over the lawn's mean; [`MIDDLE_SHARE`] if nothing else is known. Ground that
    /// gets fewer passes than the rest keeps wider gaps by luck.
    pub place_share: f64,
}

/// Path of one whole tour over lawn area and width: lanes overlap, and ends are driven twice.
const TOUR: f64 = 1.25;

impl Drive {
    /// The same drive for a place with this share of the mean path density, at most [`MIDDLE_SHARE`].
    #[must_use]
    pub fn at_place(&self, share: f64) -> Self {
        Self {
            place_share: share.clamp(0.0, MIDDLE_SHARE),
            ..*self
        }
    }

    /// Metres of path per square metre of lawn, at the place in question.
    fn density_per_m(&self) -> f64 {
        self.place_share * self.path_m / self.lawn_m2.max(1e-9)
    }

    /// Logarithm of the expected number of chance pockets that are at least this wide.
    fn log_expected(&self, width_m: f64) -> f64 {
        let rho = self.density_per_m();
        math::ln(self.lawn_m2 * rho * rho / std::f64::consts::PI) - rho * (width_m + self.cut_width_m)
    }

    /// Probability that luck alone leaves a pocket at least this wide somewhere on this lawn.
    pub fn chance_fraction(&self, width_m: f64) -> f64 {
        if !(self.path_m > 0.0) || !(self.lawn_m2 > 0.0) {
            return 1.0;
        }
        if self.pattern == Pattern::Lanes {
            let is_toured = self.path_m * self.cut_width_m >= TOUR * self.lawn_m2;
            return if is_toured && width_m > 2.0 * self.cut_width_m {
                0.0
            } else {
                1.0
            };
        }
        let rho = self.density_per_m();
        // Too little was driven for the law to hold: before the lines have divided the lawn, anything may be luck.
        if rho * (width_m + self.cut_width_m) < 2.0 {
            return 1.0;
        }
        -math::exp_m1(-math::exp(self.log_expected(width_m)))
    }

    /// Width that luck leaves in [`MISSED_CHANCE_FRACTION`] of such lawns: wider pockets are missed.
    pub fn decisive_width_m(&self) -> Option<f64> {
        if self.pattern == Pattern::Lanes {
            return None;
        }
        let rho = self.density_per_m();
        let expected = -math::ln(1.0 - MISSED_CHANCE_FRACTION);
        let width_m =
            math::ln(self.lawn_m2 * rho * rho / (std::f64::consts::PI * expected)) / rho - self.cut_width_m;
        (self.path_m > 0.0 && width_m.is_finite() && self.chance_fraction(width_m.max(0.0)) < 0.2)
            .then_some(width_m.max(0.0))
    }

    /// Width from which on a pocket is more than luck; `None` if this much driving shows nothing yet.
    pub fn findable_width_m(&self) -> Option<f64> {
        match self.pattern {
            Pattern::Roaming => self.decisive_width_m(),
            Pattern::Lanes => {
                let width_m = 2.0 * self.cut_width_m;
                // Just beyond, a whole tour decides.
                (self.chance_fraction(1.01 * width_m) <= MISSED_CHANCE_FRACTION).then_some(width_m)
            }
        }
    }

    /// Driving hours from the start after which a pocket this wide can be distinguished from luck, at this machine's pace.
    pub fn hours_to_decide(&self, width_m: f64) -> Option<f64> {
        if !(self.path_m > 0.0) || !(self.speed_mps > 0.0) || !(width_m > 0.0) {
            return None;
        }
        if self.pattern == Pattern::Lanes {
            let tour_m = TOUR * self.lawn_m2 / self.cut_width_m;
            return (width_m > 2.0 * self.cut_width_m).then(|| tour_m / self.speed_mps / 3600.0);
        }
        // The chance falls with the path once the lines have divided the lawn: bisect beyond that point.
        let reach_m = width_m + self.cut_width_m;
        let at = |path_m: f64| Self { path_m, ..*self }.chance_fraction(width_m) > MISSED_CHANCE_FRACTION;
        if !(self.place_share > 0.0) {
            return None;
        }
        let mut low_m = 2.0 / reach_m * self.lawn_m2 / self.place_share;
        let mut high_m = low_m;
        while at(high_m) {
            high_m *= 2.0;
            if high_m > 1e9 {
                return None;
            }
        }
        for _ in 0..60 {
            let middle_m = 0.5 * (low_m + high_m);
            if at(middle_m) {
                low_m = middle_m
            } else {
                high_m = middle_m
            }
        }
        Some(high_m / self.speed_mps / 3600.0)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use approx::assert_abs_diff_eq;

    fn night(lawn_m2: f64, hours: f64, share: f64) -> Drive {
        // Undo the share of the middle, so that the closed form itself is tested.
        Drive {
            lawn_m2,
            path_m: share * hours * 3600.0 * 0.4 / MIDDLE_SHARE,
            cut_width_m: 0.22,
            speed_mps: 0.4,
            pattern: Pattern::Roaming,
            place_share: MIDDLE_SHARE,
        }
    }

    // ALG-27: directions of lanes driven to and fro, by numpy: R1 .008725, R2 .999086.
    #[test]
    fn lanes_agree_when_their_angles_are_doubled() {
        let lanes: Vec<(f64, f64)> = [0.0_f64, 180.0, 2.0, 178.0, 1.0, 181.0, 359.0, 179.0]
            .iter()
            .map(|deg| (deg.to_radians(), 1.0))
            .collect();
        assert_abs_diff_eq!(agreement(&lanes, 1.0), 0.008725, epsilon = 1e-6);
        assert_abs_diff_eq!(agreement(&lanes, 2.0), 0.999086, epsilon = 1e-6);
    }

    #[test]
    fn lanes_decide_after_one_tour_and_roaming_stays_roaming() {
        let tour_m = TOUR * 600.0 / 0.22;
        let drive = |path_m| Drive {
            lawn_m2: 600.0,
            path_m,
            pattern: Pattern::Lanes,
            ..night(600.0, 1.0, 1.0)
        };
        assert_abs_diff_eq!(drive(0.9 * tour_m).chance_fraction(5.0), 1.0);
        assert_abs_diff_eq!(drive(1.1 * tour_m).chance_fraction(5.0), 0.0);
        assert_abs_diff_eq!(drive(1.1 * tour_m).chance_fraction(0.3), 1.0);
        assert_abs_diff_eq!(
            drive(1.0).hours_to_decide(5.0).unwrap(),
            tour_m / 0.4 / 3600.0,
            epsilon = 1e-9
        );
        let lanes = (0..40).map(|lane| (if lane % 2 == 0 { 20.0 } else { -20.0 }, 0.1));
        assert_eq!(pattern(lanes), Pattern::Lanes);
        // Golden-angle steps go everywhere.
        let everywhere = (0..40)
            .map(|leg| math::sin_cos(f64::from(leg) * 2.399_963))
            .map(|(s, c)| (9.0 * c, 9.0 * s));
        assert_eq!(pattern(everywhere), Pattern::Roaming);
    }

    #[test]
    fn ground_that_gets_half_the_passes_needs_twice_the_hours() {
        let drive = night(1500.0, 8.0, 1.0);
        let whole = drive.hours_to_decide(2.0).unwrap();
        let half = drive.at_place(0.5 * MIDDLE_SHARE).hours_to_decide(2.0).unwrap();
        assert_abs_diff_eq!(half / whole, 2.0, epsilon = 1e-6);
        assert!(drive.at_place(0.4).chance_fraction(1.5) > drive.chance_fraction(1.5));
    }

    // Closed form by hand: 1,500 m2 and 3,000 m2, 8 h at 0.4 m/s and 0.22 m, pockets of 1 m.
    #[test]
    fn expected_chance_pockets_of_the_closed_form() {
        assert_abs_diff_eq!(
            math::exp(night(1500.0, 8.0, 1.0).log_expected(1.0)),
            2.40,
            epsilon = 0.05
        );
        assert_abs_diff_eq!(
            math::exp(night(3000.0, 8.0, 1.0).log_expected(1.0)),
            130.0,
            epsilon = 2.0
        );
    }

    #[test]
    fn hours_to_decide_solve_for_the_chance_limit() {
        let drive = night(800.0, 1.0, MIDDLE_SHARE);
        for width_m in [1.0, 1.6, 2.5, 5.0] {
            let hours = drive.hours_to_decide(width_m).unwrap();
            let then = Drive {
                path_m: hours * 3600.0 * 0.4,
                ..drive
            };
            assert_abs_diff_eq!(
                then.chance_fraction(width_m),
                MISSED_CHANCE_FRACTION,
                epsilon = 1e-6
            );
        }
    }

    #[test]
    fn chance_is_certain_for_a_lawn_hardly_driven_and_falls_with_the_drive() {
        assert_abs_diff_eq!(night(1500.0, 0.2, 1.0).chance_fraction(1.0), 1.0);
        let chances: Vec<f64> = [4.0, 8.0, 12.0, 20.0]
            .map(|hours| night(1500.0, hours, 1.0).chance_fraction(1.0))
            .into();
        assert!(chances.windows(2).all(|pair| pair[1] <= pair[0]), "{chances:?}");
        assert!(chances[3] < 0.01);
    }

    #[test]
    fn the_decisive_width_has_the_limit_as_its_chance() {
        let drive = night(1500.0, 12.0, 1.0);
        let width_m = drive.decisive_width_m().unwrap();
        assert_abs_diff_eq!(
            drive.chance_fraction(width_m),
            MISSED_CHANCE_FRACTION,
            epsilon = 1e-9
        );
    }
}
