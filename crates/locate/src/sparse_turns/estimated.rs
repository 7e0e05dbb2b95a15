//! Speed, wait and inset of a machine, read from its own sparse log.
//!
//! Intervals without a turn share one speed, so speeds cluster there. Where such straight intervals enclose another one,
//! their lines meet at the turn in between: its distance from the ground's edge is the inset, and the time that is left over
//! is the wait. The few that hide a second turn scatter, and the half-sample mode (Robertson & Cryer 1974) ignores them.
//! Lanes have no lines that meet: their inset is where fixes cluster, since the machine waits there, and their wait follows
//! from lines that run to and fro.
//!
//! Cost: linear in fixes, times edges nearby.

use super::outline::Outline;
use super::{Stop, weigh};
use crate::{Kept, NoiseEstimate};
use std::f64::consts::PI;
use tussock_plane::Region;
use tussock_plane::Vector;
use tussock_types::math;
use tussock_types::{NoiseSource, Place};

/// What the search for turns needs to know about a machine and its log.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Rebuild {
    /// Driving speed.
    pub speed_mps: f64,
    /// Standard deviation of the speed from leg to leg, as a fraction of it.
    pub speed_sd_fraction: f64,
    /// Usual duration of a turn.
    pub wait_s: f64,
    /// Its standard deviation.
    pub wait_sd_s: f64,
    /// How far inside the ground's edge it turns; negative outside.
    pub inset_m: f64,
    /// Error of a fix relative to its neighbours, per axis.
    pub white_m: f64,
    /// Error of the turning line relative to the fixes.
    pub outline_m: f64,
    /// Fraction of the turns that lead to a parallel lane, and back the way that the machine came.
    pub lane_share_fraction: f64,
    /// Direction of the lanes, anticlockwise from east; `None` if straight drives run in all directions.
    pub lane_rad: Option<f64>,
}

/// If more of the ways than this are plain chords or turn away from the line, chords are the more honest answer.
const MOST_UNEXPLAINED_FRACTION: f64 = 0.35;
/// Fewer turns do not give an estimate.
const LEAST_TURNS: usize = 6;
/// Fewer straight intervals show neither error nor direction.
const LEAST_STRAIGHT: usize = 8;
/// Fewer intervals at one speed do not show the speed.
const LEAST_ALIKE: usize = 4;
/// Farthest distances inside and outside the edge at which turns are searched for.
const INSETS_M: (f64, f64) = (-1.5, 2.5);
/// No turn takes longer than this.
const LONGEST_WAIT_S: f64 = 20.0;
/// The spread of waits is never assumed to be smaller.
const LEAST_WAIT_SD_S: f64 = 0.1;
/// Speeds are never assumed to be steadier.
const LEAST_SPEED_SD_FRACTION: f64 = 0.004;

impl Rebuild {
    /// How far a chord may differ from speed times time and still be a straight drive.
    pub(super) fn straight_within_m(&self, reach_m: f64) -> f64 {
        3.0 * (2.0 * self.white_m * self.white_m + (self.speed_sd_fraction * reach_m).powi(2) + 1e-4).sqrt()
    }
}

/// Estimates from the log itself; `None` if it shows too few straight drives or turns. `speed_mps` is the speed as known
/// from elsewhere.
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
        ..Rebuild::default()
    };
    let straight = |step: &Step, how: &Rebuild| {
        let reach_m = how.speed_mps * step.lapse_s;
        (step.length_m - reach_m).abs() <= how.straight_within_m(reach_m)
    };
    how.white_m = across_m(&steps, |step| straight(step, &how)).unwrap_or(noise.white_m);
    if noise.source == NoiseSource::StationScatter {
        how.white_m = how.white_m.min(3.0 * noise.white_m);
    }
    let flags: Vec<bool> = steps.iter().map(|step| straight(step, &how)).collect();
    how.lane_rad = lane_direction_rad(&steps, &flags);
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
    how.lane_share_fraction = match how.lane_rad {
        Some(_) => 0.9,
        None => lane_share(reversals, enclosed.len()),
    };
    let drives = drives(kept, &steps, &how);
    if how.lane_rad.is_none() && meetings.len() >= LEAST_TURNS {
        from_meetings(meetings, &mut how);
    } else {
        how.outline_m = noise.drift_m.unwrap_or(how.white_m);
        by_weighing(ground, &drives, &mut how)?;
        if how.lane_rad.is_some() {
            from_hops(ground, &enclosed, &mut how);
        }
    }
    // A machine of another kind, or a plan of another garden.
    let weight = weigh(&drives, &Outline::of(ground, how.inset_m)?, &how);
    let unexplained = weight.unexplained as f64 / weight.ways.max(1) as f64;
    (weight.ways > 0 && unexplained <= MOST_UNEXPLAINED_FRACTION).then_some(how)
}

/// White part of the error from sparse fixes alone: how far they lie beside the line through their neighbours on straight
/// drives. `None` if the log shows too few.
pub fn white_m(kept: &Kept) -> Option<f64> {
    let steps = steps(kept);
    let (speed_mps, speed_sd_fraction) = usual_speed(&steps, None)?;
    let is_straight = |step: &Step| {
        let reach_m = speed_mps * step.lapse_s;
        (step.length_m - reach_m).abs() <= 3.0 * speed_sd_fraction * reach_m + 0.03
    };
    across_m(&steps, is_straight)
}

/// One step from fix to fix while the machine moves.
#[derive(Clone, Copy, Debug)]
struct Step {
    first: usize,
    last: usize,
    length_m: f64,
    lapse_s: f64,
    heading: Vector,
}

fn steps(kept: &Kept) -> Vec<Step> {
    (1..kept.len())
        .filter(|index| kept.run[*index] == kept.run[index - 1])
        .filter_map(|index| {
            let step = Vector::from(kept.place(index)) - Vector::from(kept.place(index - 1));
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

/// The speed at which most steps cluster, above the median of all; and its spread.
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
    // If most steps hold a turn, straight ones are few, but they are the fastest, and alike.
    let fastest = {
        let top = speeds_mps.len().saturating_sub(1 + speeds_mps.len() / 100);
        let least = speeds_mps
            .get(top)
            .map_or(0.0, |mps| mps / (1.0 + WINDOW_FRACTION));
        let start = speeds_mps.partition_point(|mps| *mps < least);
        (speeds_mps.len() - start, start, speeds_mps.len())
    };
    let is_crowded = 6 * best.0 < speeds_mps.len();
    let (count, start, end) = if is_crowded && fastest.1 > best.1 {
        fastest
    } else {
        best
    };
    if count < LEAST_ALIKE {
        return None;
    }
    let mut gathered = speeds_mps[start..end].to_vec();
    let middle_mps = math::median(&mut gathered)?;
    // What the user says is right, unless the log shows a speed close to it.
    let speed_mps = match known_mps {
        Some(known_mps) if (middle_mps / known_mps - 1.0).abs() > 0.15 => known_mps,
        _ => middle_mps,
    };
    let mut off: Vec<f64> = gathered.iter().map(|mps| (mps / speed_mps - 1.0).abs()).collect();
    let spread = 1.4826 * math::median(&mut off)?;
    Some((speed_mps, spread.max(LEAST_SPEED_SD_FRACTION)))
}

/// Error of a fix, from how far it lies beside the line through its neighbours on straight drives.
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
    math::median(&mut off_m).map(|off_m| (off_m / (0.6745 * 1.5_f64.sqrt())).max(crate::noise::LEAST_WHITE_M))
}

/// An interval with a turn, between two straight ones.
#[derive(Clone, Copy, Debug)]
struct Enclosed {
    from: Vector,
    to: Vector,
    comes: Vector,
    goes: Vector,
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
        self.comes.angle_to_rad(self.goes).abs() > PI - 0.05
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

    /// The wait of each of the two turns in a hop from lane to lane.
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

/// Fraction of the turns that go to and fro; by chance alone a roaming machine reverses to within three degrees now and
/// then.
fn lane_share(reversals: usize, turns: usize) -> f64 {
    const BY_CHANCE: f64 = 0.04;
    let share = reversals as f64 / turns.max(1) as f64;
    if reversals < LEAST_TURNS || share < 2.0 * BY_CHANCE {
        0.0
    } else {
        share
    }
}

/// Where values cluster: half-sample mode. Values must increase.
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
    let spread_m = 1.4826 * math::median(&mut near).unwrap_or(0.0);
    let reach_m = (3.0 * spread_m).clamp(0.06, 0.8);
    meetings.retain(|one| (one.inset_m - mode_m).abs() <= reach_m);
    let mut insets_m: Vec<f64> = meetings.iter().map(|one| one.inset_m).collect();
    how.inset_m = math::median(&mut insets_m).unwrap_or(mode_m);
    let mut off_m: Vec<f64> = insets_m
        .iter()
        .map(|inset_m| (inset_m - how.inset_m).abs())
        .collect();
    how.outline_m = 1.4826 * math::median(&mut off_m).unwrap_or(0.0);
    let mut waits_s: Vec<f64> = meetings.iter().map(|one| one.wait_s).collect();
    how.wait_s = math::median(&mut waits_s).unwrap_or(0.0);
    let mut off_s: Vec<f64> = waits_s.iter().map(|wait_s| (wait_s - how.wait_s).abs()).collect();
    how.wait_sd_s =
        (1.4826 * math::median(&mut off_s).unwrap_or(0.0)).clamp(LEAST_WAIT_SD_S, 0.5 * how.wait_s + 0.2);
}

/// Wait from hops between lanes, if the log has enough of them.
fn from_hops(ground: &Region, enclosed: &[Enclosed], how: &mut Rebuild) {
    let Some(outline) = Outline::of(ground, how.inset_m) else {
        return;
    };
    let mut waits_s: Vec<f64> = enclosed
        .iter()
        .filter(|one| one.is_reversal())
        .filter_map(|one| one.hop_wait_s(&outline, how))
        .collect();
    if waits_s.len() < LEAST_TURNS {
        return;
    }
    waits_s.sort_unstable_by(f64::total_cmp);
    let Some(mode_s) = gathering(&waits_s) else { return };
    how.wait_s = mode_s.max(0.0);
    let mut off_s: Vec<f64> = waits_s.iter().map(|wait_s| (wait_s - mode_s).abs()).collect();
    let spread_s = 1.4826 * math::median(&mut off_s).unwrap_or(0.0);
    how.wait_sd_s = spread_s.clamp(LEAST_WAIT_SD_S, 0.5 * how.wait_s + 0.2);
}

/// The inset and wait for which the ways through a part of the log weigh least, from coarse to fine.
fn by_weighing(ground: &Region, drives: &[Vec<Stop>], how: &mut Rebuild) -> Option<()> {
    const COARSE_WAITS_S: [f64; 4] = [0.5, 1.0, 2.0, 4.0];
    const COARSE_INSETS_M: [f64; 7] = [-0.4, -0.2, 0.0, 0.2, 0.4, 0.6, 0.8];
    const FINER: [(f64, f64, f64); 3] = [(0.1, 0.5, 0.1), (0.05, 0.25, 0.05), (0.025, 0.15, 0.03)];
    let (outline_m, mut least) = (how.outline_m, f64::INFINITY);
    how.wait_sd_s = 0.4;
    how.outline_m = outline_m.max(0.15);
    let mut best = *how;
    for inset_m in COARSE_INSETS_M {
        let Some(outline) = Outline::of(ground, inset_m) else {
            continue;
        };
        for wait_s in COARSE_WAITS_S {
            let tried = Rebuild {
                inset_m,
                wait_s,
                ..*how
            };
            let weight = weigh(drives, &outline, &tried).cost;
            if weight < least {
                (least, best) = (weight, tried);
            }
        }
    }
    for (inset_step_m, wait_step_s, coarseness_m) in FINER {
        best.outline_m = outline_m.max(coarseness_m);
        let centre = best;
        least = f64::INFINITY;
        for inset_steps in [0.0, -1.0, 1.0] {
            let inset_m = centre.inset_m + inset_steps * inset_step_m;
            let Some(outline) = Outline::of(ground, inset_m) else {
                continue;
            };
            for wait_steps in [0.0, -1.0, 1.0] {
                let wait_s = (centre.wait_s + wait_steps * wait_step_s).max(0.0);
                let tried = Rebuild {
                    inset_m,
                    wait_s,
                    ..centre
                };
                let weight = weigh(drives, &outline, &tried).cost;
                if weight < least {
                    (least, best) = (weight, tried);
                }
            }
        }
    }
    *how = Rebuild {
        outline_m,
        wait_sd_s: 0.3,
        ..best
    };
    least.is_finite().then_some(())
}

/// Several drives of the log, spread over it.
fn drives(kept: &Kept, steps: &[Step], how: &Rebuild) -> Vec<Vec<Stop>> {
    const LENGTH: usize = 14;
    const MOST: usize = 8;
    let moves = |step: &Step| step.length_m > 0.1 * how.speed_mps * step.lapse_s;
    let mut all: Vec<Vec<Stop>> = Vec::new();
    let mut drive: Vec<Stop> = Vec::new();
    for (number, step) in steps.iter().enumerate() {
        let follows = number > 0 && steps[number - 1].last == step.first;
        if !follows || !moves(step) || drive.len() > LENGTH {
            if drive.len() > LENGTH / 2 {
                all.push(std::mem::take(&mut drive));
            }
            drive.clear();
        }
        if moves(step) {
            if drive.is_empty() {
                drive.push(Stop::passing(kept.place(step.first), kept.time_s[step.first]));
            }
            drive.push(Stop::passing(kept.place(step.last), kept.time_s[step.last]));
        }
    }
    let stride = all.len().div_ceil(MOST).max(1);
    all.into_iter().step_by(stride).collect()
}

/// Direction that most straight drives share, to and fro.
fn lane_direction_rad(steps: &[Step], flags: &[bool]) -> Option<f64> {
    const BINS: usize = 90;
    const LEAST_SHARE: f64 = 0.7;
    let mut counts = [0_usize; BINS];
    let straight = || {
        steps
            .iter()
            .zip(flags)
            .filter(|(_, flag)| **flag)
            .map(|(step, _)| step)
    };
    let angle_rad = |step: &Step| math::atan2(step.heading.north, step.heading.east).rem_euclid(PI);
    for step in straight() {
        counts[((angle_rad(step) / PI * BINS as f64) as usize).min(BINS - 1)] += 1;
    }
    let all: usize = counts.iter().sum();
    let around = |bin: usize| counts[(bin + BINS - 1) % BINS] + counts[bin] + counts[(bin + 1) % BINS];
    let mode = (0..BINS).max_by_key(|bin| around(*bin))?;
    if all < LEAST_STRAIGHT || (around(mode) as f64) < LEAST_SHARE * all as f64 {
        return None;
    }
    let middle_rad = (mode as f64 + 0.5) / BINS as f64 * PI;
    let off_rad = |step: &Step| (angle_rad(step) - middle_rad + 0.5 * PI).rem_euclid(PI) - 0.5 * PI;
    let mut near_rad: Vec<f64> = straight()
        .map(off_rad)
        .filter(|off_rad| off_rad.abs() < 1.5 / BINS as f64 * PI)
        .collect();
    math::median(&mut near_rad).map(|off_rad| middle_rad + off_rad)
}
