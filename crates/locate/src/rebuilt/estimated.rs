//! Speed, wait and inset of a machine, read from its own sparse log.
//!
//! Intervals without a turn share one speed, so speeds gather there. Where such straight intervals enclose another one, their
//! lines meet at the turn between: its distance from the ground's edge is the inset, and what time is left over is
//! the wait. The few that hide a second turn scatter; the half-sample mode (Robertson & Cryer 1974) does not see them. Lanes give
//! no meeting lines: their inset is where fixes gather, since the machine waits there, and their wait follows from lines
//! that run to and fro.
//!
//! Cost: linear in fixes, times edges nearby.

use super::outline::{Outline, V};
use crate::noise::median;
use crate::{Kept, NoiseEstimate};
use tussock_plane::Region;
use tussock_types::Place;

/// What the search for turns needs to know of a machine and its log.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Rebuild {
    /// Driving speed.
    pub speed_mps: f64,
    /// Its standard deviation from leg to leg, as a part of it.
    pub speed_sd_fraction: f64,
    /// Usual time that a turn takes.
    pub wait_s: f64,
    /// Its standard deviation.
    pub wait_sd_s: f64,
    /// How far inside of the ground's edge it turns; negative outside.
    pub inset_m: f64,
    /// Error of a fix against its neighbours, per axis.
    pub white_m: f64,
    /// Error of the line at which it turns against the fixes.
    pub outline_m: f64,
    /// Part of the turns that lead to a parallel lane, and back the way that it came.
    pub lane_share_fraction: f64,
}

/// Fewer turns than this are no estimate.
const LEAST_TURNS: usize = 6;
/// Fewer straight intervals than this show no speed.
const LEAST_STRAIGHT: usize = 8;
/// Farthest inside and outside of the edge that turns are looked for.
const INSETS_M: (f64, f64) = (-1.5, 2.5);
/// No turn takes longer.
const LONGEST_WAIT_S: f64 = 20.0;
/// Spread of waits is never taken for less than this.
const LEAST_WAIT_SD_S: f64 = 0.1;
/// Speeds are never taken for steadier than this.
const LEAST_SPEED_SD_FRACTION: f64 = 0.004;

impl Rebuild {
    /// How far a chord may differ from speed times time and still be a straight drive.
    pub(super) fn straight_within_m(&self, reach_m: f64) -> f64 {
        3.0 * (2.0 * self.white_m * self.white_m + (self.speed_sd_fraction * reach_m).powi(2) + 1e-4).sqrt()
    }
}

/// Estimates from the log itself; `None` where it shows too few straight drives or turns. `speed_mps` is what is known of the
/// speed otherwise.
pub fn estimate(
    kept: &Kept,
    ground: &Region,
    noise: &NoiseEstimate,
    speed_mps: Option<f64>,
) -> Option<Rebuild> {
    let steps = steps(kept);
    let (speed_mps, speed_sd_fraction) = usual_speed(&steps, speed_mps)?;
    let mut how = Rebuild {
        speed_mps,
        speed_sd_fraction,
        wait_s: 0.0,
        wait_sd_s: 0.0,
        inset_m: 0.0,
        white_m: 0.0,
        outline_m: 0.0,
        lane_share_fraction: 0.0,
    };
    let straight = |step: &Step, how: &Rebuild| {
        let reach_m = how.speed_mps * step.lapse_s;
        (step.length_m - reach_m).abs() <= how.straight_within_m(reach_m)
    };
    how.white_m = across_m(&steps, |step| straight(step, &how)).unwrap_or(noise.white_m);
    let flags: Vec<bool> = steps.iter().map(|step| straight(step, &how)).collect();
    if flags.iter().filter(|is_straight| **is_straight).count() < LEAST_STRAIGHT {
        return None;
    }
    let enclosed: Vec<Enclosed> = (1..steps.len().saturating_sub(1))
        .filter(|index| flags[index - 1] && !flags[*index] && flags[index + 1])
        .filter(|index| {
            steps[index - 1].last == steps[*index].first && steps[*index].last == steps[index + 1].first
        })
        .map(|index| Enclosed {
            from: kept.place(steps[index].first).into(),
            to: kept.place(steps[index].last).into(),
            comes: steps[index - 1].heading,
            goes: steps[index + 1].heading,
            lapse_s: steps[index].lapse_s,
        })
        .collect();
    let meetings: Vec<Meeting> = enclosed
        .iter()
        .filter_map(|one| one.meeting(ground, &how))
        .collect();
    let reversals = enclosed.iter().filter(|one| one.is_reversal()).count();
    how.lane_share_fraction = lane_share(reversals, enclosed.len());
    if how.lane_share_fraction < 0.3 && meetings.len() >= LEAST_TURNS {
        from_meetings(meetings, &mut how);
    } else {
        from_gathering(kept, ground, &steps, &enclosed, &mut how)?;
    }
    Some(how)
}

/// White part of the error from sparse fixes alone: how far they lie beside the line of their neighbours on straight
/// drives. `None` where the log shows too few.
pub fn white_m(kept: &Kept) -> Option<f64> {
    let steps = steps(kept);
    let (speed_mps, speed_sd_fraction) = usual_speed(&steps, None)?;
    let is_straight = |step: &Step| {
        let reach_m = speed_mps * step.lapse_s;
        (step.length_m - reach_m).abs() <= 3.0 * speed_sd_fraction * reach_m + 0.03
    };
    across_m(&steps, is_straight)
}

/// One step from fix to fix, on the move.
#[derive(Clone, Copy, Debug)]
struct Step {
    first: usize,
    last: usize,
    length_m: f64,
    lapse_s: f64,
    heading: V,
}

fn steps(kept: &Kept) -> Vec<Step> {
    (1..kept.len())
        .filter(|index| kept.run[*index] == kept.run[index - 1])
        .filter_map(|index| {
            let step = V::from(kept.place(index)) - V::from(kept.place(index - 1));
            let lapse_s = kept.time_s[index] - kept.time_s[index - 1];
            (lapse_s > 0.5).then_some(Step {
                first: index - 1,
                last: index,
                length_m: step.length(),
                lapse_s,
                heading: step.unit()?,
            })
        })
        .collect()
}

/// The speed at which most steps gather, above the middle of all; and its spread.
fn usual_speed(steps: &[Step], known_mps: Option<f64>) -> Option<(f64, f64)> {
    const WINDOW_FRACTION: f64 = 0.03;
    let mut speeds_mps: Vec<f64> = steps
        .iter()
        .map(|step| step.length_m / step.lapse_s)
        .filter(|speed_mps| *speed_mps > 0.05)
        .collect();
    speeds_mps.sort_unstable_by(f64::total_cmp);
    let from = speeds_mps.len() * 2 / 5;
    let mut best = (0, 0, 0);
    let mut end = from;
    for start in from..speeds_mps.len() {
        while end < speeds_mps.len() && speeds_mps[end] <= speeds_mps[start] * (1.0 + WINDOW_FRACTION) {
            end += 1;
        }
        if end - start > best.0 {
            best = (end - start, start, end);
        }
    }
    let (count, start, end) = best;
    if count < LEAST_STRAIGHT {
        return None;
    }
    let mut gathered = speeds_mps[start..end].to_vec();
    let middle_mps = median(&mut gathered)?;
    // What the user says is right, unless the log shows a speed close to it.
    let speed_mps = match known_mps {
        Some(known_mps) if (middle_mps / known_mps - 1.0).abs() > 0.15 => known_mps,
        _ => middle_mps,
    };
    let mut off: Vec<f64> = gathered.iter().map(|mps| (mps / speed_mps - 1.0).abs()).collect();
    let spread = 1.4826 * median(&mut off)?;
    Some((speed_mps, spread.max(LEAST_SPEED_SD_FRACTION)))
}

/// Error of a fix from how far it lies beside the line of its neighbours on straight drives.
fn across_m(steps: &[Step], is_straight: impl Fn(&Step) -> bool) -> Option<f64> {
    const STRAIGHT_ON_RAD: f64 = 0.12;
    let mut off_m: Vec<f64> = steps
        .windows(2)
        .filter(|pair| pair[0].last == pair[1].first && pair.iter().all(&is_straight))
        .filter_map(|pair| {
            let turned_rad = pair[0].heading.angle_to_rad(pair[1].heading);
            let (one_m, two_m) = (pair[0].length_m, pair[1].length_m);
            // The middle fix lies off the line of its neighbours by this.
            (turned_rad.abs() < STRAIGHT_ON_RAD).then(|| turned_rad.abs() * one_m * two_m / (one_m + two_m))
        })
        .collect();
    if off_m.len() < LEAST_STRAIGHT {
        return None;
    }
    // Half of |N(0, 1.5 w^2)| lies below 0.6745 sqrt(1.5) w.
    median(&mut off_m).map(|off_m| (off_m / (0.6745 * 1.5_f64.sqrt())).max(crate::noise::LEAST_WHITE_M))
}

/// An interval with a turn, between two straight ones.
#[derive(Clone, Copy, Debug)]
struct Enclosed {
    from: V,
    to: V,
    comes: V,
    goes: V,
    lapse_s: f64,
}

/// Where two lines meet at a turn.
#[derive(Clone, Copy, Debug)]
struct Meeting {
    inset_m: f64,
    wait_s: f64,
}

impl Enclosed {
    /// To and fro on parallel lanes.
    fn is_reversal(&self) -> bool {
        self.comes.angle_to_rad(self.goes).abs() > std::f64::consts::PI - 0.05
    }

    fn meeting(&self, ground: &Region, how: &Rebuild) -> Option<Meeting> {
        const LEAST_SINE: f64 = 0.3;
        let across = self.comes.cross(self.goes);
        if across.abs() < LEAST_SINE {
            return None;
        }
        let gap = self.to - self.from;
        let before_m = gap.cross(self.goes) / across;
        let turn = self.from + self.comes * before_m;
        let after_m = (self.to - turn).dot(self.goes);
        let wait_s = self.lapse_s - (before_m + after_m) / how.speed_mps;
        if before_m < 0.0 || after_m < 0.0 || !(0.0..=LONGEST_WAIT_S.min(self.lapse_s)).contains(&wait_s) {
            return None;
        }
        let inset_m = signed_edge_distance_m(ground, turn.into());
        (INSETS_M.0..=INSETS_M.1)
            .contains(&inset_m)
            .then_some(Meeting { inset_m, wait_s })
    }

    /// Wait of each of the two turns of a hop from lane to lane.
    fn hop_wait_s(&self, outline: &Outline, how: &Rebuild) -> Option<f64> {
        let reach_m = how.speed_mps * self.lapse_s;
        let near = outline.near(self.from, self.to, reach_m);
        let leaves = near.cast(self.from, self.comes, reach_m, 0.1)?;
        let enters = near.cast(self.to, self.goes * -1.0, reach_m, 0.1)?;
        let length_m = leaves.distance_m + enters.distance_m + (enters.place - leaves.place).length();
        let wait_s = 0.5 * (self.lapse_s - length_m / how.speed_mps);
        (-1.0..=LONGEST_WAIT_S).contains(&wait_s).then_some(wait_s)
    }
}

/// Distance to the edge, negative outside.
fn signed_edge_distance_m(ground: &Region, place: Place) -> f64 {
    let distance_m = ground.edge_distance_m(place);
    if ground.contains(place) {
        distance_m
    } else {
        -distance_m
    }
}

/// Part of the turns that are to and fro; chance alone reverses a roaming machine within three degrees now and then.
fn lane_share(reversals: usize, turns: usize) -> f64 {
    const BY_CHANCE: f64 = 0.04;
    let share = reversals as f64 / turns.max(1) as f64;
    if reversals < LEAST_TURNS || share < 2.0 * BY_CHANCE {
        0.0
    } else {
        share
    }
}

/// Where values gather: half-sample mode. Values rise.
fn gathering(values: &[f64]) -> Option<f64> {
    let mut values = values;
    while values.len() > 3 {
        let half = values.len().div_ceil(2);
        let start = (0..=values.len() - half).min_by(|one, two| {
            let width = |start: usize| values[start + half - 1] - values[start];
            width(*one).total_cmp(&width(*two))
        })?;
        values = &values[start..start + half];
    }
    (!values.is_empty()).then(|| values.iter().sum::<f64>() / values.len() as f64)
}

fn from_meetings(mut meetings: Vec<Meeting>, how: &mut Rebuild) {
    meetings.sort_by(|one, two| one.inset_m.total_cmp(&two.inset_m));
    let insets_m: Vec<f64> = meetings.iter().map(|one| one.inset_m).collect();
    let Some(mode_m) = gathering(&insets_m) else {
        return;
    };
    // Wide enough for decimetres of drift; a hidden second turn is off by metres.
    let mut near: Vec<f64> = insets_m.iter().map(|inset_m| (inset_m - mode_m).abs()).collect();
    let spread_m = 1.4826 * median(&mut near).unwrap_or(0.0);
    let reach_m = (3.0 * spread_m).clamp(0.06, 0.8);
    meetings.retain(|one| (one.inset_m - mode_m).abs() <= reach_m);
    let mut insets_m: Vec<f64> = meetings.iter().map(|one| one.inset_m).collect();
    how.inset_m = median(&mut insets_m).unwrap_or(mode_m);
    let mut off_m: Vec<f64> = insets_m
        .iter()
        .map(|inset_m| (inset_m - how.inset_m).abs())
        .collect();
    how.outline_m = 1.4826 * median(&mut off_m).unwrap_or(0.0);
    let mut waits_s: Vec<f64> = meetings.iter().map(|one| one.wait_s).collect();
    how.wait_s = median(&mut waits_s).unwrap_or(0.0);
    let mut off_s: Vec<f64> = waits_s.iter().map(|wait_s| (wait_s - how.wait_s).abs()).collect();
    how.wait_sd_s =
        (1.4826 * median(&mut off_s).unwrap_or(0.0)).clamp(LEAST_WAIT_SD_S, 0.5 * how.wait_s + 0.2);
}

/// Inset from where fixes gather near the edge, wait from hops between lanes.
fn from_gathering(
    kept: &Kept,
    ground: &Region,
    steps: &[Step],
    enclosed: &[Enclosed],
    how: &mut Rebuild,
) -> Option<()> {
    let mut distances_m: Vec<f64> = steps
        .iter()
        .filter(|step| step.length_m > 0.2 * how.speed_mps * step.lapse_s)
        .map(|step| signed_edge_distance_m(ground, kept.place(step.last)))
        .filter(|distance_m| (INSETS_M.0..=INSETS_M.1).contains(distance_m))
        .collect();
    distances_m.sort_unstable_by(f64::total_cmp);
    let width_m = 0.02 + 2.0 * how.white_m;
    let count_from = |start: usize| {
        distances_m[start..].partition_point(|distance_m| *distance_m <= distances_m[start] + width_m)
    };
    let most = (0..distances_m.len()).map(count_from).max()?;
    // Lanes along the edge gather too; the line of turns is the outermost.
    let first = (0..distances_m.len()).find(|start| 2 * count_from(*start) >= most)?;
    let mut gathered = distances_m[first..first + count_from(first)].to_vec();
    how.inset_m = median(&mut gathered)?;
    how.outline_m = how.white_m;
    let outline = Outline::of(ground, how.inset_m)?;
    let mut waits_s: Vec<f64> = enclosed
        .iter()
        .filter(|one| one.is_reversal())
        .filter_map(|one| one.hop_wait_s(&outline, how))
        .collect();
    if waits_s.len() < LEAST_TURNS {
        return None;
    }
    waits_s.sort_unstable_by(f64::total_cmp);
    let mode_s = gathering(&waits_s)?;
    how.wait_s = mode_s.max(0.0);
    let mut off_s: Vec<f64> = waits_s.iter().map(|wait_s| (wait_s - mode_s).abs()).collect();
    how.wait_sd_s = (1.4826 * median(&mut off_s)?).clamp(LEAST_WAIT_SD_S, 0.5 * how.wait_s + 0.2);
    Some(())
}
