//! What machine was this?
//!
//! Question: which simulated machine drives like the logged one, so that the effect of a change can be tried on it? Speed,
//! turns and their law, distance from the edge, outings, charging and the use of guide runs are read from where the machine
//! was.
//!
//! Method. The turn law is not chosen but taken from the log: pairs of angles in and out, both measured from the inward
//! normal of the edge, from which the simulated machine draws one with a similar way in (resampling, Efron 1979, DOI
//! 10.1214/aos/1176344552; with neighbours as in Stone 1977, DOI 10.1214/aos/1176343886). From two hundred turns on, the
//! pair is used; from forty on, the way out alone; with fewer, the closer of two laws. Roaming time runs to the beginning of
//! the ride home ([`outings`](Ride)). Each outing gives one value, varied by a few per cent. The share of a guide run is its
//! outings over all outings, pulled towards the planned share with the weight of four outings.
//!
//! Exact: nothing. Approximate: turns are read from corners of the path, so position error blurs angles; only legs longer
//! than five position errors are used. Not fitted: slopes, slip, curvature. Lanes are refused: they are not a matter of
//! chance. Cost: turns times edges, and drives near the station times edges; a few milliseconds a night.

mod rides;

pub use rides::{OutingSeen, Ride};

use crate::pattern;
use std::sync::Arc;
use tussock_coverage::luck::Pattern;
use tussock_locate::turns::{Setback, Turn};
use tussock_locate::{PathMethod, Track, Vertex};
use tussock_plane::{Edge, Region, Site, Vector};
use tussock_simulate::{HomeWay, Machine, Run, Spell, StuckSpot, TurnLaw, TurnPair};
use tussock_types::math;
use tussock_types::{Place, Said, Settings, plural};

/// Fewer turns at edges show neither a law nor a setback.
pub const LEAST_TURNS: usize = 15;
/// From this many turns on, the joint law of angles in and out is used.
pub const JOINT_TURNS: usize = 200;
/// From this many on, the law of angles out.
pub const LAW_TURNS: usize = 40;
/// Neighbours in the joint law, on both sides together.
const NEIGHBOURS: usize = 60;
/// Few outings stand for many: each value is varied by up to this fraction.
const JITTER_FRACTION: f64 = 0.07;
/// The planned share has the weight of this many outings.
const PRIOR_OUTINGS: f64 = 4.0;
/// Share of outings along a guide run if neither plan nor log shows it.
pub const UNKNOWN_SHARE_FRACTION: f64 = 0.3;
/// Part of a guide run on which machines leave it, if the log does not show it. An earlier exit is on the safe side.
const USUAL_EXIT_FRACTION: (f64, f64) = (0.6, 1.0);
/// Longer waits are not turns.
const LONGEST_TURN_S: f64 = 10.0;
/// Shorter pieces are no legs.
pub const LEAST_LEG_M: f64 = 0.3;
/// A smaller turn is none (cosine of 20 degrees).
const STRAIGHT_ON: f64 = 0.94;
/// Common times, if no outing is whole.
const USUAL_OUTING_S: f64 = 4500.0;

/// Why no machine was fitted.
#[derive(Clone, Copy, Debug, PartialEq, thiserror::Error)]
#[non_exhaustive]
pub enum NoFit {
    /// It drives in lanes.
    #[error("it drives lanes, which are no matter of chance")]
    Lanes,
    /// More than one machine, and they meet each other.
    #[error("{machines} machines worked here; expected one")]
    SeveralMachines {
        /// How many.
        machines: usize,
    },
    /// Too little to learn from.
    #[error("{} at an edge can be told; expected at least {LEAST_TURNS}", plural(*turns, "turn", "turns"))]
    TooFewTurns {
        /// How many.
        turns: usize,
    },
    /// Nothing like a straight drive.
    #[error("the path shows no straight legs between turns")]
    NoLegs,
    /// The plan leaves no ground.
    #[error("the plan leaves no ground to drive on")]
    NoGround,
}

impl NoFit {
    /// The same for findings.
    pub fn said(&self) -> Said {
        match *self {
            Self::Lanes => Said::NotFittedLanes {},
            Self::SeveralMachines { machines } => Said::NotFittedSeveralMachines {
                machines: machines as u64,
            },
            Self::TooFewTurns { turns } => Said::NotFittedFewTurns {
                turns: turns as u64,
                expected: LEAST_TURNS as u64,
            },
            Self::NoLegs => Said::NotFittedNoLegs {},
            Self::NoGround => Said::NotFittedNoGround {},
        }
    }
}

/// The machine as the log shows it.
#[derive(Clone, Debug, PartialEq)]
pub struct Fitted {
    /// What to simulate.
    pub machine: Machine,
    /// Share of outings along each guide run of the site.
    pub guide_shares_fraction: Vec<Option<f64>>,
    /// Hours from the first departure to the end, without breaks between days.
    pub hours: f64,
    /// Number of working days that these hours cover.
    pub days: usize,
    /// Outings, in order. Empty if no station is known.
    pub outings: Vec<OutingSeen>,
    /// Number of turns that the law is drawn from.
    pub turns: usize,
    /// Standard deviation of the setback.
    pub setback_sd_m: f64,
    /// Path driven.
    pub path_m: f64,
    /// Legs from edge to edge: median length.
    pub median_leg_m: f64,
    /// Standard deviation of a place on the path.
    pub position_sd_m: f64,
    /// The station: from the plan, or else where the log shows one.
    pub station: Option<Place>,
    /// Places that catch it: none, until somebody adds them.
    pub stuck_spots: Vec<StuckSpot>,
}

impl Fitted {
    /// The site as the log shows it: with fitted shares of guide runs, and the station filled in.
    pub fn site(&self, site: &Site) -> Site {
        Site {
            guide_shares_fraction: self.guide_shares_fraction.clone(),
            station: self.station,
            ..site.clone()
        }
    }

    /// A run as long as the log.
    pub fn run(&self, seed: u64) -> Run {
        Run {
            start_stay_s: 0.0,
            stuck_spots: self.stuck_spots.clone(),
            ..Run::new(self.hours.max(1e-3), seed)
        }
    }
}

/// Fits a machine to its positions on the ground that it may drive on.
///
/// # Errors
/// [`NoFit`] if chance does not govern the drive, or too little of it is seen.
pub fn fit(
    site: &Site,
    ground: &Region,
    tracks: &[Track],
    turns: &[Vec<Turn>],
    settings: &Settings,
) -> Result<Fitted, NoFit> {
    let ([track], [turns]) = (tracks, turns) else {
        return Err(NoFit::SeveralMachines {
            machines: tracks.len(),
        });
    };
    if matches!(track.method, PathMethod::Smoothed | PathMethod::Chords) {
        return Err(NoFit::NoLegs);
    }
    if pattern::by_legs(tracks) == Pattern::Lanes {
        return Err(NoFit::Lanes);
    }
    let sd_m = track.position_error_m();
    let setback = Setback::measured(track, turns).ok_or(NoFit::TooFewTurns { turns: 0 })?;
    let seen = rides::seen(track, site, &Edge::all_of(ground), setback.inside_m, sd_m);
    let outings: Vec<OutingSeen> = seen.as_ref().map_or_else(Vec::new, |seen| seen.outings.clone());
    let roams = |time_s: f64| {
        outings.is_empty()
            || outings
                .iter()
                .any(|outing| outing.start_s < time_s && time_s < outing.homeward_s)
    };
    let pairs = turn_pairs(turns.iter().filter(|turn| roams(turn.time_s)), setback, sd_m);
    if pairs.len() < LEAST_TURNS {
        return Err(NoFit::TooFewTurns { turns: pairs.len() });
    }
    let pace = pace(track, &roams, sd_m);
    let station = site.station.or(track.station);
    let turns_used = pairs.len();
    let (departure_headings_rad, departure_spread_deg) = departures(&outings);
    let machine = Machine {
        speed_mps: settings
            .machine
            .speed_mps
            .unwrap_or(pace.speed_mps)
            .clamp(0.02, 5.0),
        past_boundary_m: (-setback.inside_m).clamp(-4.0, 4.0),
        turning: pace.turning,
        turn_law: turn_law(pairs),
        roaming: roaming(&outings),
        charging: charging(seen.as_ref().map_or(&[], |seen| &seen.charging_s)),
        departure_spread_deg,
        departure_headings_rad,
        guide_share_fraction: 0.0,
        guide_exit_fraction: exits(&outings),
        home_way: HomeWay::GuideOrBoundary,
        ..Machine::default()
    };
    let span_s = track.span_s.map_or(0.0, |(first_s, last_s)| last_s - first_s);
    let working_s = match &seen {
        Some(seen) => seen.working_s,
        None => span_s - standing_s(track),
    };
    Ok(Fitted {
        guide_shares_fraction: shares(site, &outings),
        machine,
        hours: working_s / 3600.0,
        days: seen.as_ref().map_or(1, |seen| seen.breaks + 1),
        outings,
        turns: turns_used,
        setback_sd_m: setback.sd_m,
        path_m: track.path_m(),
        median_leg_m: pace.median_leg_m,
        position_sd_m: sd_m,
        station,
        stuck_spots: Vec::new(),
    })
}

/// Angles before and after, from the inward normal, of the turns that were made at an edge at the usual distance.
fn turn_pairs<'a>(turns: impl Iterator<Item = &'a Turn>, setback: Setback, error_m: f64) -> Vec<TurnPair> {
    let pair = |turn: &Turn| {
        let at = turn.at.filter(|at| setback.holds(at, error_m))?;
        let mirror = turn.into - at.inwards * (2.0 * turn.into.dot(at.inwards));
        Some(TurnPair {
            mirror_rad: at.inwards.angle_to_rad(mirror),
            out_rad: at.inwards.angle_to_rad(turn.onward),
        })
    };
    turns.filter_map(pair).collect()
}

/// The same for one machine, including the way home; none if too few are seen.
pub(crate) fn turn_pairs_of(track: &Track, turns: &[Turn]) -> Vec<TurnPair> {
    let Some(setback) = Setback::measured(track, turns) else {
        return Vec::new();
    };
    let pairs = turn_pairs(turns.iter(), setback, track.position_error_m());
    if pairs.len() >= LEAST_TURNS {
        pairs
    } else {
        Vec::new()
    }
}

fn standing_s(track: &Track) -> f64 {
    track.halts.iter().map(|halt| halt.end_s - halt.start_s).sum()
}

/// Speed and waits of roaming.
struct Pace {
    speed_mps: f64,
    turning: Spell,
    median_leg_m: f64,
}

/// Speed is the median of legs over three metres. Waits are the time that is left over, so that path and time of the log
/// agree whatever happened at single corners.
fn pace(track: &Track, roams: &impl Fn(f64) -> bool, sd_m: f64) -> Pace {
    let least_m = 3.0 + 10.0 * sd_m;
    let mut speeds: Vec<(f64, f64)> = Vec::new();
    let mut legs_m: Vec<f64> = Vec::new();
    let mut waits_s: Vec<f64> = Vec::new();
    let (mut path_m, mut moving_s) = (0.0, 0.0);
    for piece in &track.pieces {
        let mut leg_m = 0.0;
        for (number, pair) in piece.vertices.windows(2).enumerate() {
            let (from, to) = (pair[0], pair[1]);
            let (length_m, lasts_s) = (from.place.distance_m(to.place), to.arrive_s - from.leave_s);
            if !roams(from.leave_s) || lasts_s <= 0.0 {
                leg_m = 0.0;
                continue;
            }
            path_m += length_m;
            moving_s += lasts_s;
            if length_m >= least_m {
                speeds.push((length_m / lasts_s, length_m));
            }
            leg_m += length_m;
            if ends_leg(track, from, to, piece.vertices.get(number + 2)) {
                if leg_m >= LEAST_LEG_M {
                    legs_m.push(leg_m);
                }
                leg_m = 0.0;
            }
            let wait_s = from.leave_s - from.arrive_s;
            if number > 0 && wait_s <= LONGEST_TURN_S {
                waits_s.push(wait_s);
            }
        }
    }
    speeds.sort_by(|a, b| a.0.total_cmp(&b.0));
    legs_m.sort_by(f64::total_cmp);
    let half_m = 0.5 * speeds.iter().map(|speed| speed.1).sum::<f64>();
    let mut sum_m = 0.0;
    let speed_mps = speeds
        .iter()
        .find(|speed| {
            sum_m += speed.1;
            sum_m >= half_m
        })
        .map(|speed| speed.0)
        .or(track.speed_mps)
        .unwrap_or(0.35);
    let turns = legs_m.len().max(1) as f64;
    let waited_s: f64 = waits_s.iter().sum();
    let mean_s = ((waited_s + moving_s - path_m / speed_mps) / turns).clamp(0.0, LONGEST_TURN_S);
    Pace {
        speed_mps,
        turning: Spell::Between {
            min_s: 0.8 * mean_s,
            max_s: 1.2 * mean_s,
        },
        median_leg_m: legs_m.get(legs_m.len() / 2).copied().unwrap_or(0.0),
    }
}

/// Whether a leg ends where this step does. Between sparse fixes each fix is a corner of the path, straight on or not.
fn ends_leg(track: &Track, from: Vertex, to: Vertex, next: Option<&Vertex>) -> bool {
    let Some(next) = next.filter(|_| track.method == PathMethod::Rebuilt) else {
        return true;
    };
    let step = Vector::between(from.place, to.place);
    let onward = Vector::between(to.place, next.place);
    step.dot(onward) < STRAIGHT_ON * step.length() * onward.length()
}

fn turn_law(mut pairs: Vec<TurnPair>) -> TurnLaw {
    if pairs.len() < LAW_TURNS {
        // Mean sine of the way out: 1/2 by the cosine law, 2/pi if all directions are equally likely.
        let mean = pairs
            .iter()
            .map(|pair| math::sin(pair.out_rad).abs())
            .sum::<f64>()
            / pairs.len() as f64;
        return if mean < 0.5 * (0.5 + 2.0 / std::f64::consts::PI) {
            TurnLaw::CosineFromNormal
        } else {
            TurnLaw::UniformFromNormal
        };
    }
    pairs.sort_by(|a, b| a.mirror_rad.total_cmp(&b.mirror_rad));
    let neighbours = if pairs.len() >= JOINT_TURNS {
        NEIGHBOURS
    } else {
        2 * pairs.len()
    };
    TurnLaw::Observed {
        pairs: Arc::from(pairs),
        neighbours,
    }
}

fn observed(mut values_s: Vec<f64>) -> Spell {
    values_s.retain(|value_s| *value_s >= 1.0);
    values_s.sort_by(f64::total_cmp);
    Spell::Observed {
        s: values_s,
        jitter_fraction: JITTER_FRACTION,
    }
}

fn roaming(outings: &[OutingSeen]) -> Spell {
    let lasts_s = |outing: &OutingSeen| outing.homeward_s - outing.start_s;
    let whole: Vec<f64> = outings
        .iter()
        .filter(|outing| outing.is_whole)
        .map(lasts_s)
        .collect();
    if whole.iter().any(|lasts_s| *lasts_s >= 60.0) {
        // A machine that was brought home at once says nothing about its battery.
        return observed(whole.into_iter().filter(|lasts_s| *lasts_s >= 60.0).collect());
    }
    // At least as long as the longest one that is only partly seen.
    let longest_s = outings.iter().map(lasts_s).fold(0.0, f64::max);
    Spell::Fixed {
        s: longest_s.max(USUAL_OUTING_S),
    }
}

fn charging(charging_s: &[f64]) -> Spell {
    if charging_s.is_empty() {
        Spell::Fixed { s: 3600.0 }
    } else {
        observed(charging_s.to_vec())
    }
}

/// Headings of departures, and by how much they are varied.
fn departures(outings: &[OutingSeen]) -> (Arc<[f64]>, f64) {
    let headings: Vec<f64> = outings.iter().filter_map(|outing| outing.heading_rad).collect();
    match headings.len() {
        0..=2 => (Arc::from([]), 70.0),
        3..=7 => (Arc::from(headings), 40.0),
        _ => (Arc::from(headings), 25.0),
    }
}

/// Where machines leave guide runs: as the log shows, once there are four outings.
fn exits(outings: &[OutingSeen]) -> (f64, f64) {
    let mut along: Vec<f64> = outings
        .iter()
        .filter_map(|outing| outing.guide.map(|guide| guide.1))
        .collect();
    if along.len() < 4 {
        return USUAL_EXIT_FRACTION;
    }
    along.sort_by(f64::total_cmp);
    let (low, high) = (along[0], along[along.len() - 1]);
    // On average, the ends of a uniform range lie beyond the outermost of n values by one part in n-1 of their range.
    let beyond = (high - low) / (along.len() as f64 - 1.0);
    ((low - beyond).max(0.05), (high + beyond).clamp(0.05, 1.0))
}

fn shares(site: &Site, outings: &[OutingSeen]) -> Vec<Option<f64>> {
    let departures: Vec<&OutingSeen> = outings
        .iter()
        .filter(|outing| outing.guide.is_some() || outing.heading_rad.is_some())
        .collect();
    (0..site.guides.len())
        .map(|guide| {
            let along = departures
                .iter()
                .filter(|outing| outing.guide.is_some_and(|(number, _)| number == guide))
                .count() as f64;
            let planned = site.guide_shares_fraction.get(guide).copied().flatten();
            // Guide runs that nobody planned count less.
            let weight = if planned.is_some() { PRIOR_OUTINGS } else { 1.0 };
            let prior = planned.unwrap_or(UNKNOWN_SHARE_FRACTION);
            Some((along + weight * prior) / (departures.len() as f64 + weight))
        })
        .collect()
}
