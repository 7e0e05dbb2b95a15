//! How much do lanes cover whose places the log does not show?
//!
//! Question: positions that err by more than lanes are apart make gaps and overlaps that the machine did not leave. What is known all the
//! same? Method: each stretch driven one way along the common direction is a lane, whatever its place; lanes that follow each other lie
//! beside each other, so their mean step across (least squares over twenty in a row, in which drift all but cancels) is the spacing as
//! driven. Path and ground give the spacing that one covering has if it is even; their ratio tells how often the ground was covered.
//! Lanes are held to their lines by the machine, not by the log's receiver: to 2 cm, at worst 4 (common practice, no source). What is left
//! open between lanes a mean spacing apart follows from the normal law.
//!
//! Exact: the number of lanes. Approximate: evenness, and that coverings do not avoid each other. `None` if lanes that follow each other do
//! not lie beside each other, as for curved legs that only look like lanes. Cost: one pass over the fixes.

use crate::pattern;
use tussock_locate::Track;
use tussock_types::Estimate;
use tussock_types::math;

/// Half of the span over which a direction is read.
const HALF_S: f64 = 5.0;
/// Along a lane the machine gets at least this part of its speed.
const ALONG: f64 = 0.6;
/// Shorter stretches are no lanes.
const LEAST_S: f64 = 6.0;
/// The next lane begins within this time.
const NEXT_S: f64 = 45.0;
/// Lanes in a row that show a spacing.
const ROW: usize = 20;
/// Fewer rows do not show how sure their median is.
const LEAST_ROWS: usize = 5;
/// Standard deviation of a median over the median distance from it, times the root of the number (normal law).
const MEDIAN_SD: f64 = 1.858;
/// Steps from lane to lane that are less sure show no ground beyond the lanes.
const SHOWN_SD: f64 = 0.1;
/// Part of the drive that lanes must make up.
const LEAST_SHARE: f64 = 0.5;
/// Lanes that follow each other lie so close, plus this many position errors. In roaming they lie metres apart.
const BESIDE_M: f64 = 0.5;
const BESIDE_ERRORS: f64 = 1.5;
/// How exactly machines keep to a lane, usually and at worst (common practice, no source).
const KEEPS_M: f64 = 0.02;
const KEEPS_AT_BEST_M: f64 = 0.005;
const KEEPS_AT_WORST_M: f64 = 0.04;
/// Path that belongs to no lane, and ground that no lane reaches, put the spacing that follows from both off by up to this factor.
const OTHER_PATH: f64 = 1.06;

/// Lanes as they were driven.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct DrivenLanes {
    /// Mean spacing within one covering, m.
    spacing_m: f64,
    /// How often the ground was covered.
    coverings: u32,
    /// The same by the steps from lane to lane, with its standard deviation.
    swept: f64,
    swept_sd: f64,
}

/// One lane.
struct Lane {
    start_s: f64,
    end_s: f64,
    forwards: bool,
    across_m: f64,
}

/// The lanes of the logs; `None` if stretches that follow each other do not lie beside each other.
pub(crate) fn lanes(tracks: &[Track], reached_m2: f64) -> Option<DrivenLanes> {
    let error_m = tracks.iter().map(Track::position_error_m).fold(0.0, f64::max);
    let (mut lasts_s, mut steps_m, mut spacings_m) = (0.0, Vec::new(), Vec::new());
    for track in tracks {
        for axis_rad in pattern::axes_rad(track)? {
            let lanes = lanes_along(track, axis_rad)?;
            lasts_s += lanes.iter().map(|lane| lane.end_s - lane.start_s).sum::<f64>();
            for row in rows(&lanes) {
                steps_m.extend(
                    row.windows(2)
                        .map(|pair| (pair[1].across_m - pair[0].across_m).abs()),
                );
                spacings_m.extend(row.chunks_exact(ROW).map(spacing_m));
            }
        }
    }
    let driving_s: f64 = tracks.iter().map(Track::driving_s).sum();
    let is_beside = math::median(&mut steps_m)? <= BESIDE_M + BESIDE_ERRORS * error_m;
    if !is_beside || lasts_s < LEAST_SHARE * driving_s {
        return None;
    }
    let driven_m = math::median(&mut spacings_m)?;
    let mut off_m: Vec<f64> = spacings_m
        .iter()
        .map(|spacing_m| (spacing_m - driven_m).abs())
        .collect();
    let sd_m = match off_m.len() < LEAST_ROWS {
        true => driven_m,
        false => MEDIAN_SD * math::median(&mut off_m)? / (off_m.len() as f64).sqrt(),
    };
    let path_m: f64 = tracks.iter().map(Track::path_m).sum();
    let even_m = reached_m2 / path_m.max(1e-9);
    let coverings = (driven_m / even_m).round().clamp(1.0, 99.0);
    // The last covering may be one in part; the path does not tell.
    let spacing_m = match coverings > 1.0 && sd_m < SHOWN_SD * driven_m {
        true => driven_m,
        false => coverings * even_m,
    };
    Some(DrivenLanes {
        spacing_m,
        coverings: coverings as u32,
        swept: driven_m / even_m,
        swept_sd: sd_m / even_m,
    })
}

impl DrivenLanes {
    /// Part of the ground among the lanes that is covered: as expected, and with the ends of a 90 % interval.
    pub(crate) fn covered(&self, cut_width_m: f64) -> (f64, [f64; 2]) {
        let once = |more: f64, keeps_m: f64| covered_once(more * self.spacing_m, cut_width_m, keeps_m);
        let usual = once(1.0, KEEPS_M);
        let open = (0..self.coverings).fold(1.0, |open, _| open * (1.0 - usual));
        // More coverings may fall on the same lines, or between them: half way is expected.
        let most = match self.coverings {
            1 => once(1.0 / OTHER_PATH, KEEPS_AT_BEST_M),
            _ => 1.0,
        };
        let less = math::hypot(
            usual - once(OTHER_PATH, KEEPS_M),
            usual - once(1.0, KEEPS_AT_WORST_M),
        );
        (0.5 * (usual + 1.0 - open), [(usual - less).max(0.0), most])
    }

    /// Whether no line was driven twice: then lanes leave no more than chance would.
    pub(crate) fn are_new(&self) -> bool {
        self.coverings == 1
    }

    /// Part of the ground that lanes have not come to, as far as their steps show it, and at most: lanes as close as they were driven may
    /// reach less far.
    pub(crate) fn beyond(&self) -> [f64; 2] {
        let off = Estimate::END_SDS * self.swept_sd;
        let shown = match self.swept_sd < SHOWN_SD {
            true => 1.0 - self.swept - off,
            false => 0.0,
        };
        [shown, 1.0 - self.swept + off].map(|beyond| beyond.clamp(0.0, 1.0))
    }
}

/// Mean of the positive part of a normal deviate.
fn above_nought(mean: f64, sd: f64) -> f64 {
    let z = mean / sd.max(1e-9);
    let above = 0.5 * math::erfc(-z / std::f64::consts::SQRT_2);
    mean * above + sd * math::exp(-0.5 * z * z) / std::f64::consts::TAU.sqrt()
}

/// Part of the ground under passes of some width, if lanes a spacing apart keep to their lines to within a standard deviation.
fn covered_once(spacing_m: f64, cut_width_m: f64, keeps_m: f64) -> f64 {
    let open_m = above_nought(spacing_m - cut_width_m, std::f64::consts::SQRT_2 * keeps_m);
    (1.0 - open_m / spacing_m).clamp(0.0, 1.0)
}

fn lanes_along(track: &Track, axis_rad: f64) -> Option<Vec<Lane>> {
    let (kept, speed_mps) = (&track.kept, track.speed_mps?);
    let (east, north) = (math::cos(axis_rad), math::sin(axis_rad));
    let along = |index: usize| east * kept.east_m[index] + north * kept.north_m[index];
    let across = |index: usize| east * kept.north_m[index] - north * kept.east_m[index];
    let half = (HALF_S / track.period_s).ceil().max(1.0) as usize;
    let mut lanes: Vec<Lane> = Vec::new();
    let (mut sum_m, mut count, mut run) = (0.0, 0.0, usize::MAX);
    for index in half..kept.len().saturating_sub(half) {
        let (from, to) = (index - half, index + half);
        let moved_m = along(to) - along(from);
        let lapse_s = kept.time_s[to] - kept.time_s[from];
        if kept.run[from] != kept.run[to] || moved_m.abs() < ALONG * speed_mps * lapse_s {
            continue;
        }
        let (time_s, forwards) = (kept.time_s[index], moved_m > 0.0);
        match lanes.last_mut() {
            Some(lane)
                if lane.forwards == forwards
                    && run == kept.run[index] as usize
                    && time_s - lane.end_s <= 2.0 * HALF_S =>
            {
                sum_m += across(index);
                count += 1.0;
                lane.end_s = time_s;
                lane.across_m = sum_m / count;
            }
            _ => {
                (sum_m, count, run) = (across(index), 1.0, kept.run[index] as usize);
                lanes.push(Lane {
                    start_s: time_s,
                    end_s: time_s,
                    forwards,
                    across_m: sum_m,
                });
            }
        }
    }
    lanes.retain(|lane| lane.end_s - lane.start_s >= LEAST_S);
    Some(lanes)
}

/// Lanes that follow each other to and fro.
fn rows(lanes: &[Lane]) -> impl Iterator<Item = &[Lane]> {
    lanes.chunk_by(|one, next| one.forwards != next.forwards && next.start_s - one.end_s <= NEXT_S)
}

/// Step from lane to lane of a row, by least squares.
fn spacing_m(row: &[Lane]) -> f64 {
    let middle = 0.5 * (row.len() as f64 - 1.0);
    let off = |number: usize| number as f64 - middle;
    let squares: f64 = (0..row.len()).map(|number| off(number).powi(2)).sum();
    let steps = row
        .iter()
        .enumerate()
        .map(|(number, lane)| off(number) * lane.across_m);
    (steps.sum::<f64>() / squares).abs()
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Lanes closer than the width leave nothing if they are kept to; wider ones leave what lies between; and the mean of the positive part
    /// of a normal deviate is its standard deviation over the root of two pi where the gap is nought.
    #[test]
    fn what_lanes_leave_open_follows_from_their_spacing() {
        assert!(covered_once(0.19, 0.22, 0.001) > 0.999_99);
        assert!((covered_once(0.44, 0.22, 0.001) - 0.5).abs() < 1e-6);
        let sd_m = std::f64::consts::SQRT_2 * 0.02;
        let open_m = sd_m / std::f64::consts::TAU.sqrt();
        assert!((covered_once(0.22, 0.22, 0.02) - (1.0 - open_m / 0.22)).abs() < 1e-12);
        let twice = DrivenLanes {
            spacing_m: 0.44,
            coverings: 2,
            swept: 2.0,
            swept_sd: 0.1,
        };
        let (expected, [low, high]) = twice.covered(0.22);
        assert!((expected - 0.625).abs() < 0.01 && low < 0.5 && high == 1.0);
    }
}
