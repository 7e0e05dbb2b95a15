//! By which law does the machine turn, how long are its legs, and are they in lanes?

use super::LEAST_LEG_M;
use crate::statistics::{LawFit, kolmogorov_smirnov};
use serde::{Deserialize, Serialize};
use tussock_coverage::luck;
use tussock_plane::Joins;
use tussock_simulate::{TurnPair, laws as theory};
use tussock_survey::Survey;
use tussock_types::math;

/// Angles after a turn, from the inward normal of the edge, compared with laws.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct TurnLaws {
    /// Turns at an edge with both legs known.
    pub turns: u64,
    /// Mean size of the angle.
    pub mean_size_deg: f64,
    /// Lambert's law, density as the cosine of the angle: its mean size is 32.7 degrees, and only with it is the mean leg pi
    /// A / P.
    pub cosine: LawFit,
    /// All angles equally likely: mean size 45 degrees.
    pub uniform: LawFit,
    /// Correlation of the angle with that of a mirror: 1 for a machine that reflects, 0 for one that forgets where it came
    /// from.
    pub mirror_correlation: f64,
    /// Standard deviation of the angle about that of a mirror.
    pub about_mirror_sd_deg: f64,
}

/// Legs from turn to turn, compared with laws.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct LegLaws {
    /// Legs of at least a metre.
    pub legs: u64,
    /// Their mean length.
    pub mean_m: f64,
    /// Median length.
    pub median_m: f64,
    /// Standard deviation over mean: 1 for an exponential law.
    pub variation: f64,
    /// pi A / P of the ground on which the machine's middle can be: the mean leg under Lambert's law, whatever the shape.
    /// Null if there is no such ground.
    pub pi_area_over_perimeter_m: Option<f64>,
    /// The lengths against an exponential law with the same mean. The mean comes from the same sample, so the probability is
    /// too large.
    pub exponential: LawFit,
}

/// Direction of lanes from legs weighted by their length.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct LaneDirection {
    /// Direction of the one axis, anticlockwise from east, from 0 up to 180.
    pub axis_deg: f64,
    /// Mean resultant length of doubled angles: 1 if all legs lie along one axis.
    pub one_axis: f64,
    /// The same for fourfold angles: 1 if they lie along two axes a quarter turn apart.
    pub two_axes: f64,
}

pub(super) fn turns(survey: &Survey<'_>) -> Option<TurnLaws> {
    of_pairs(&survey.turn_pairs())
}

/// Laws of turns with these angles; `None` without any.
pub(crate) fn of_pairs(pairs: &[TurnPair]) -> Option<TurnLaws> {
    let out: Vec<f64> = pairs.iter().map(|pair| pair.out_rad).collect();
    let count = out.len() as f64;
    let quarter = std::f64::consts::FRAC_PI_2;
    // Turned the shorter way round: both angles are within a quarter turn of the normal.
    let off: Vec<f64> = pairs.iter().map(|pair| pair.out_rad - pair.mirror_rad).collect();
    let mean = |of: &dyn Fn(&TurnPair) -> f64| pairs.iter().map(of).sum::<f64>() / count;
    let (out_mean, mirror_mean) = (mean(&|pair| pair.out_rad), mean(&|pair| pair.mirror_rad));
    let both = mean(&|pair| (pair.out_rad - out_mean) * (pair.mirror_rad - mirror_mean));
    let out_var = mean(&|pair| (pair.out_rad - out_mean).powi(2));
    let mirror_var = mean(&|pair| (pair.mirror_rad - mirror_mean).powi(2));
    Some(TurnLaws {
        turns: pairs.len() as u64,
        mean_size_deg: out.iter().map(|angle| angle.abs()).sum::<f64>().to_degrees() / count,
        cosine: kolmogorov_smirnov(&out, |angle| {
            0.5 * (1.0 + math::sin(angle.clamp(-quarter, quarter)))
        })?,
        uniform: kolmogorov_smirnov(&out, |angle| (0.5 + angle / (2.0 * quarter)).clamp(0.0, 1.0))?,
        mirror_correlation: if out_var * mirror_var > 0.0 {
            both / (out_var * mirror_var).sqrt()
        } else {
            0.0
        },
        about_mirror_sd_deg: (off.iter().map(|off| off * off).sum::<f64>() / count)
            .sqrt()
            .to_degrees(),
    })
}

pub(super) fn legs(survey: &Survey<'_>) -> Option<LegLaws> {
    let mut lengths_m: Vec<f64> = survey
        .tracks
        .iter()
        .flat_map(tussock_locate::Track::legs)
        .map(|(from, to)| from.place.distance_m(to.place))
        .filter(|length_m| *length_m >= LEAST_LEG_M)
        .collect();
    lengths_m.sort_by(f64::total_cmp);
    let region = survey.drivable().ok()?;
    let setback = survey.setback().ok()?;
    let middle = region.grown_by(-setback.inside_m, Joins::Mitred).ok();
    let mean_m = lengths_m.iter().sum::<f64>() / lengths_m.len() as f64;
    let variance = lengths_m
        .iter()
        .map(|length_m| (length_m - mean_m).powi(2))
        .sum::<f64>()
        / lengths_m.len() as f64;
    Some(LegLaws {
        legs: lengths_m.len() as u64,
        mean_m,
        median_m: *lengths_m.get(lengths_m.len() / 2)?,
        variation: variance.sqrt() / mean_m,
        pi_area_over_perimeter_m: middle
            .filter(|middle| middle.perimeter_m() > 0.0)
            .map(|middle| theory::mean_free_path_m(middle.area_m2(), middle.perimeter_m())),
        exponential: kolmogorov_smirnov(&lengths_m, |length_m| -math::exp_m1(-length_m / mean_m))?,
    })
}

pub(super) fn lanes(survey: &Survey<'_>) -> Option<LaneDirection> {
    let directions: Vec<(f64, f64)> = survey
        .tracks
        .iter()
        .flat_map(tussock_locate::Track::legs)
        .map(|(from, to)| {
            let (east_m, north_m) = (
                to.place.east_m - from.place.east_m,
                to.place.north_m - from.place.north_m,
            );
            (math::atan2(north_m, east_m), math::hypot(east_m, north_m))
        })
        .filter(|(_, length_m)| *length_m >= LEAST_LEG_M)
        .collect();
    lane_direction(&directions)
}

/// Direction of lanes from directions in radians and their weights; `None` without any.
pub(crate) fn lane_direction(directions: &[(f64, f64)]) -> Option<LaneDirection> {
    if directions.is_empty() {
        return None;
    }
    let (one_axis, axis_rad) = luck::axis(directions, 2.0);
    Some(LaneDirection {
        axis_deg: axis_rad.to_degrees().rem_euclid(180.0),
        one_axis,
        two_axes: luck::agreement(directions, 4.0),
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    // ALG-27: R2 .999086 by numpy; the axis of these lanes is east.
    #[test]
    fn lanes_to_and_fro_have_one_axis() {
        let lanes: Vec<(f64, f64)> = [0.0_f64, 180.0, 2.0, 178.0, 1.0, 181.0, 359.0, 179.0]
            .iter()
            .map(|deg| (deg.to_radians(), 1.0))
            .collect();
        let found = lane_direction(&lanes).unwrap();
        assert!((found.one_axis - 0.999_086).abs() < 1e-6);
        let from_east_deg = found.axis_deg.min(180.0 - found.axis_deg);
        assert!(from_east_deg < 1e-6, "{}", found.axis_deg);
        let turned: Vec<(f64, f64)> = lanes.iter().map(|(rad, weight)| (rad + 0.7, *weight)).collect();
        let found = lane_direction(&turned).unwrap();
        assert!((found.axis_deg - 0.7_f64.to_degrees()).abs() < 1e-6);
        assert_eq!(lane_direction(&[]), None);
    }

    #[test]
    fn each_law_is_told_from_the_other_and_from_a_mirror() {
        // Evenly spaced quantiles of each law: the sample is as similar to it as possible.
        let count = 400;
        let part = |index: i32| (f64::from(index) + 0.5) / f64::from(count);
        // Golden-ratio steps do not depend on where it came from.
        let mirror = |index: i32| (f64::from(index) * 0.618_034).fract() * 3.0 - 1.5;
        let with = |out: &dyn Fn(i32) -> f64| -> TurnLaws {
            let pairs: Vec<TurnPair> = (0..count)
                .map(|index| TurnPair {
                    mirror_rad: mirror(index),
                    out_rad: out(index),
                })
                .collect();
            of_pairs(&pairs).unwrap()
        };
        let cosine = with(&|index| math::asin(2.0 * part(index) - 1.0));
        assert!(cosine.cosine.probability > 0.99 && cosine.uniform.probability < 1e-3);
        // Mean of |angle| under the cosine law: pi / 2 - 1.
        assert!((cosine.mean_size_deg - (std::f64::consts::FRAC_PI_2 - 1.0).to_degrees()).abs() < 0.05);
        assert!(cosine.mirror_correlation.abs() < 0.1);
        let uniform = with(&|index| (part(index) - 0.5) * std::f64::consts::PI);
        assert!(uniform.uniform.probability > 0.99 && uniform.cosine.probability < 1e-3);
        assert!((uniform.mean_size_deg - 45.0).abs() < 0.05);
        let reflected = with(&|index| mirror(index) + if index % 2 == 0 { 0.05 } else { -0.05 });
        assert!(reflected.mirror_correlation > 0.99);
        assert!((reflected.about_mirror_sd_deg - 0.05_f64.to_degrees()).abs() < 1e-9);
        assert_eq!(of_pairs(&[]), None);
    }
}
