//! Which machine, and which errors, would make a log like this one?
//!
//! Stays and outings are read from the halts at the station, the errors from standing time there (maximum likelihood,
//! [`tussock_locate::drift`]). The speed is chosen so that simulated logs, errors and turns included, have the same long
//! steps between fixes as the real one: a few drives are simulated to find it, and to find the time that the way home takes.

use super::seed_of;
use tussock_locate::blocks::Blocks;
use tussock_locate::drift::{self, Stand};
use tussock_locate::{HaltPlace, Track};
use tussock_simulate::{LogNoise, Machine, Run, Sampling, Spell, TrueRun, TurnLaw, Yard, sample};
use tussock_types::math;
use tussock_types::{Place, Positions, Settings, Trace};

/// Stays closer together than this are one, interrupted by drift.
const SAME_STAY_S: f64 = 300.0;
/// The ends of a stay are cut off: the machine may still be rolling into place.
const END_CUT_S: f64 = 30.0;
/// Number of drives that are simulated to find the speed.
const PILOTS: u64 = 4;
/// Speeds that a machine may have.
const SPEEDS_MPS: (f64, f64) = (0.1, 1.5);
/// Quantiles of the steps between fixes that show the speed: long ones, with few turns in them.
const LONG_STEPS_FRACTION: (f64, f64) = (0.7, 0.95);
/// Stays and outings are varied by at most this fraction of their length.
const JITTER_FRACTION: f64 = 0.05;
/// No outing is shorter.
const LEAST_OUTING_S: f64 = 120.0;

/// A machine and its log, as far as needed to simulate them.
#[derive(Clone, Debug)]
pub(super) struct Fit {
    pub(super) noise: LogNoise,
    period_s: f64,
    machine: Machine,
    first_stay_s: f64,
    lasts_s: f64,
    outings_s: Vec<f64>,
    long_steps_m: f64,
}

impl Fit {
    /// Reads everything except the speed from a track; `None` if it shows no drive.
    pub(super) fn of(track: &Track) -> Option<Self> {
        let (start_s, end_s) = track.span_s?;
        let stays = stays(track);
        let silent_s = track.silent_s();
        let lasts_s = end_s - start_s - silent_s;
        if lasts_s <= 0.0 || track.period_s <= 0.0 {
            return None;
        }
        let inner = |stay: &&(f64, f64)| stay.0 > start_s + SAME_STAY_S && stay.1 < end_s - SAME_STAY_S;
        let charging_s: Vec<f64> = stays.iter().filter(inner).map(|stay| stay.1 - stay.0).collect();
        let outings_s: Vec<f64> = stays
            .windows(2)
            .map(|pair| pair[1].0 - pair[0].1)
            .filter(|outing_s| *outing_s >= LEAST_OUTING_S)
            .collect();
        let outings_s = if outings_s.is_empty() {
            vec![lasts_s.max(LEAST_OUTING_S)]
        } else {
            outings_s
        };
        let first_stay_s = stays
            .first()
            .filter(|stay| stay.0 <= start_s + SAME_STAY_S)
            .map_or(0.0, |stay| stay.1 - start_s);
        let mut machine = Machine {
            speed_mps: track.speed_mps.unwrap_or(0.35).clamp(SPEEDS_MPS.0, SPEEDS_MPS.1),
            ..Machine::default()
        };
        if !charging_s.is_empty() {
            machine.charging = Spell::Observed {
                s: charging_s,
                jitter_fraction: JITTER_FRACTION,
            };
        }
        let steps_m: Vec<f64> = (1..track.kept.len())
            .filter(|index| {
                let time_s = track.kept.time_s[*index];
                let at_rest = track
                    .halts
                    .iter()
                    .any(|halt| time_s >= halt.start_s && time_s <= halt.end_s + track.period_s);
                track.kept.run[*index] == track.kept.run[index - 1] && !at_rest
            })
            .map(|index| track.kept.place(index).distance_m(track.kept.place(index - 1)))
            .collect();
        Some(Self {
            noise: noise(track),
            period_s: track.period_s,
            machine,
            first_stay_s,
            lasts_s,
            outings_s,
            long_steps_m: long_steps_m(steps_m)?,
        })
    }

    /// Adds the speed, and takes the way home out of the outings.
    pub(super) fn tuned(
        &self,
        yard: &Yard,
        past_boundary_m: f64,
        settings: &Settings,
        seed: u64,
    ) -> Option<Self> {
        let mut fit = self.clone();
        fit.machine.past_boundary_m = past_boundary_m;
        fit.roam_for(0.0);
        let known = settings.machine.speed_mps;
        fit.machine.speed_mps = known.unwrap_or(fit.machine.speed_mps);
        for pilot in 0..PILOTS {
            let seed = seed_of(seed, pilot);
            let run = fit.run(yard, pilot as usize, seed)?;
            let home: Vec<f64> = run
                .outings
                .iter()
                .filter(|outing| outing.end_s < run.end_s())
                .map(|outing| outing.end_s - outing.homeward_s)
                .collect();
            if !home.is_empty() {
                fit.roam_for(home.iter().sum::<f64>() / home.len() as f64);
            }
            if known.is_some() {
                continue;
            }
            let trace = fit.log(&run, settings, seed ^ 1);
            let Positions::Local { east_m, north_m } = &trace.positions else {
                return None;
            };
            let at_rest = |time_s: f64| {
                run.stays
                    .iter()
                    .any(|stay| time_s >= stay.start_s && time_s <= stay.end_s + self.period_s)
            };
            let start_s = trace.time_s.first().copied()?;
            let steps_m = (1..trace.len())
                .filter(|index| !at_rest(trace.time_s[*index] - start_s))
                .map(|index| {
                    math::hypot(
                        east_m[index] - east_m[index - 1],
                        north_m[index] - north_m[index - 1],
                    )
                })
                .collect();
            let ratio = self.long_steps_m / long_steps_m(steps_m)?.max(1e-6);
            // Later drives change it less: their own luck averages out.
            let weight = if pilot == 0 { 1.0 } else { 0.7 };
            let speed_mps = fit.machine.speed_mps * math::powf(ratio, weight);
            fit.machine.speed_mps = speed_mps.clamp(SPEEDS_MPS.0, SPEEDS_MPS.1);
        }
        Some(fit)
    }

    fn roam_for(&mut self, home_s: f64) {
        self.machine.roaming = Spell::Observed {
            s: self
                .outings_s
                .iter()
                .map(|outing_s| (outing_s - home_s).max(0.5 * outing_s))
                .collect(),
            jitter_fraction: JITTER_FRACTION,
        };
    }

    /// One drive. The laws of turning alternate.
    pub(super) fn run(&self, yard: &Yard, number: usize, seed: u64) -> Option<TrueRun> {
        let turn_law = if number.is_multiple_of(2) {
            TurnLaw::CosineFromNormal
        } else {
            TurnLaw::FromHeading {
                min_deg: 90.0,
                max_deg: 170.0,
            }
        };
        let machine = Machine {
            turn_law,
            ..self.machine.clone()
        };
        let run = Run {
            start_stay_s: self.first_stay_s,
            ..Run::new(self.lasts_s / 3600.0, seed)
        };
        yard.drive(&machine, &run).ok()
    }

    /// Fixes of a simulated log away from the station.
    pub(super) fn under_way(&self, run: &TrueRun, trace: &Trace) -> Vec<Place> {
        let start_s = trace.time_s.first().copied().unwrap_or(0.0);
        (0..trace.len())
            .filter(|index| {
                let time_s = trace.time_s[*index] - start_s;
                !run.stays
                    .iter()
                    .any(|stay| time_s >= stay.start_s && time_s <= stay.end_s + self.period_s)
            })
            .map(|index| {
                let (east_m, north_m) = trace.positions.pair(index);
                Place::new(east_m, north_m)
            })
            .collect()
    }

    /// Its log, in metres on the plane of the plan.
    pub(super) fn log(&self, run: &TrueRun, settings: &Settings, seed: u64) -> Trace {
        self.log_with(self.noise, run, settings, seed)
    }

    /// Where the antenna really was at each fix, seconds from the start of the run.
    pub(super) fn exact_fixes(&self, run: &TrueRun, settings: &Settings) -> Vec<(f64, Place)> {
        let trace = self.log_with(LogNoise::NONE, run, settings, 0);
        let start_s = trace.time_s.first().copied().unwrap_or(0.0);
        let fixes = 0..trace.len();
        fixes
            .map(|index| {
                let (east_m, north_m) = trace.positions.pair(index);
                (trace.time_s[index] - start_s, Place::new(east_m, north_m))
            })
            .collect()
    }

    fn log_with(&self, noise: LogNoise, run: &TrueRun, settings: &Settings, seed: u64) -> Trace {
        let sampling = Sampling {
            antenna_forward_m: settings.machine.antenna_forward_m,
            antenna_left_m: settings.machine.antenna_left_m,
            ..Sampling::local(self.period_s, noise, seed)
        };
        sample(run, &sampling)
    }
}

/// Fixes away from all rests.
pub(super) fn under_way(track: &Track) -> impl Iterator<Item = Place> + '_ {
    (0..track.kept.len())
        .filter(|index| {
            let time_s = track.kept.time_s[*index];
            !track
                .halts
                .iter()
                .any(|halt| time_s >= halt.start_s && time_s <= halt.end_s + track.period_s)
        })
        .map(|index| track.kept.place(index))
}

/// Mean of the long steps; `None` without any.
fn long_steps_m(mut steps_m: Vec<f64>) -> Option<f64> {
    steps_m.sort_by(f64::total_cmp);
    let at = |fraction: f64| (steps_m.len() as f64 * fraction) as usize;
    let long = steps_m.get(at(LONG_STEPS_FRACTION.0)..at(LONG_STEPS_FRACTION.1))?;
    (!long.is_empty()).then(|| long.iter().sum::<f64>() / long.len() as f64)
}

/// Stays at the station, with pieces that drift broke apart joined.
fn stays(track: &Track) -> Vec<(f64, f64)> {
    let mut stays: Vec<(f64, f64)> = Vec::new();
    for halt in track.halts.iter().filter(|halt| halt.at == HaltPlace::Station) {
        match stays.last_mut() {
            Some(last) if halt.start_s - last.1 < SAME_STAY_S => last.1 = last.1.max(halt.end_s),
            _ => stays.push((halt.start_s, halt.end_s)),
        }
    }
    stays
}

/// Errors from standing time at the station, or else as found when the log was located.
fn noise(track: &Track) -> LogNoise {
    let kept = &track.kept;
    let stands: Vec<Stand> = stays(track)
        .into_iter()
        .filter(|(start_s, end_s)| end_s - start_s >= 6.0 * END_CUT_S)
        .map(|(start_s, end_s)| {
            let cut_s = END_CUT_S.max(track.period_s);
            let first = kept.time_s.partition_point(|time_s| *time_s < start_s + cut_s);
            let end = kept
                .time_s
                .partition_point(|time_s| *time_s <= end_s - cut_s)
                .max(first);
            Stand {
                fixes: Blocks {
                    time_s: kept.time_s[first..end].to_vec(),
                    east_m: kept.east_m[first..end].to_vec(),
                    north_m: kept.north_m[first..end].to_vec(),
                    ..Blocks::default()
                },
                place: 0,
            }
        })
        .collect();
    if let Some(fit) = drift::fit(&stands) {
        return LogNoise {
            white_m: fit.white_m,
            drift_m: fit.drift_m,
            drift_time_s: fit.drift_time_s,
        };
    }
    let drift_m = track.noise.drift_m.unwrap_or(0.0);
    let by_rate_s = 2.0 * drift_m * drift_m / track.noise.drift_rate_m2_per_s.max(1e-12);
    LogNoise {
        white_m: track.noise.white_m,
        drift_m,
        drift_time_s: track.noise.drift_time_s.unwrap_or(by_rate_s).clamp(20.0, 7200.0),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn long_steps_leave_out_the_short_and_the_longest() {
        let steps_m: Vec<f64> = (0..100).map(f64::from).collect();
        assert_eq!(long_steps_m(steps_m), Some(82.0));
        assert_eq!(long_steps_m(Vec::new()), None);
    }
}
