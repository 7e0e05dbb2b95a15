//! Did a person walk round the garden with the logger, instead of the mower?
//!
//! A walk goes round something once or twice at walking pace, is over within an hour, ends where it began, and leaves nearly
//! all the ground inside alone. A mower that follows the edge does so for part of an outing, comes to rest at its station,
//! and drives over the rest as well. Every condition must hold; if the settings state the machine's speed, none is tested.
//!
//! Path length and turns are read from positions about five seconds apart: noise of metres hardly lengthens such chords.

use tussock_locate::{Kept, Track};
use tussock_types::math::{self, median};
use tussock_types::{Place, Settings};

/// Length of the chords.
const CHORD_S: f64 = 5.0;
/// Slowest and fastest speed at which people walk along an edge.
const SLOWEST_MPS: f64 = 0.5;
const FASTEST_MPS: f64 = 1.8;
/// Slower is standing.
const STANDING_MPS: f64 = 0.2;
/// Nobody takes less or more time to walk round a garden.
const SHORTEST_S: f64 = 30.0;
const LONGEST_S: f64 = 3600.0;
/// Whatever stands still for longer within this distance is a machine at its station, even in drives of three minutes, a few
/// legs out and back.
const LONGEST_STAND_S: f64 = 60.0;
const STAND_M: f64 = 4.0;
/// The ends meet within this distance, or within this part of the way.
const CLOSED_M: f64 = 8.0;
const CLOSED_FRACTION: f64 = 0.1;
/// Smaller ground is not a lawn.
const LEAST_M2: f64 = 15.0;
/// Least part of a full turn round the middle, and least part of all turning that goes in the same direction.
const LEAST_ROUND: f64 = 0.85;
const SAME_WAY_FRACTION: f64 = 0.6;
/// Ground inside, compared with a circle of the same circumference: there and back is not a round. A strip of 4 m by 35 m
/// has 0.29.
const LEAST_OF_CIRCLE: f64 = 0.28;
/// More rounds mean a machine that spirals, or a sport.
const MOST_ROUNDS: f64 = 2.5;
/// A usual swath, and the largest part of the ground that it may have swept in one round.
const SWATH_M: f64 = 0.22;
const MOST_SWEPT_FRACTION: f64 = 0.35;
/// Zones and guide runs that were walked too are at most this many times as long as the round.
const MOST_BESIDES_RATIO: f64 = 3.0;

/// A walk round something.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct WalkRound {
    /// Walking speed.
    pub speed_mps: f64,
    /// Length of the longest round.
    pub length_m: f64,
    /// Area of the ground inside.
    pub area_m2: f64,
}

/// The walk that a log shows; `None` where it may be a mower's.
pub fn walk_round(tracks: &[Track], settings: &Settings) -> Option<WalkRound> {
    let [track] = tracks else { return None };
    let is_machine = settings.machine.speed_mps.is_some() || track.outings.is_some_and(|outings| outings > 1);
    if is_machine { None } else { round(&track.kept) }
}

fn round(kept: &Kept) -> Option<WalkRound> {
    let lasted_s = kept.time_s.last()? - kept.time_s.first()?;
    if !(SHORTEST_S..=LONGEST_S).contains(&lasted_s) {
        return None;
    }
    let mut runs: Vec<Vec<(f64, Place)>> = Vec::new();
    let mut last_run = None;
    for (at, &time_s) in kept.time_s.iter().enumerate() {
        if last_run != Some(kept.run[at]) {
            runs.push(Vec::new());
            last_run = Some(kept.run[at]);
        }
        let Some(run) = runs.last_mut() else { continue };
        let place = Place::new(kept.east_m[at], kept.north_m[at]);
        if run.last().is_none_or(|(last_s, _)| time_s - last_s >= CHORD_S) {
            run.push((time_s, place));
        }
    }
    if runs.iter().any(|run| stands_long(run)) {
        return None;
    }
    let chords = runs.iter().flat_map(|run| run.windows(2));
    let speeds = chords.map(|ends| ends[0].1.distance_m(ends[1].1) / (ends[1].0 - ends[0].0));
    let mut speeds: Vec<f64> = speeds.filter(|mps| *mps > STANDING_MPS).collect();
    let speed_mps = median(&mut speeds).filter(|mps| (SLOWEST_MPS..=FASTEST_MPS).contains(mps))?;
    let all_m: f64 = runs.iter().map(|run| length_m(run)).sum();
    let longest = runs.iter().max_by(|a, b| length_m(a).total_cmp(&length_m(b)))?;
    let (length_m, area_m2) = once_round(longest)?;
    let is_sparse = SWATH_M * length_m <= MOST_SWEPT_FRACTION * area_m2;
    (is_sparse && all_m <= (1.0 + MOST_BESIDES_RATIO) * length_m).then_some(WalkRound {
        speed_mps,
        length_m,
        area_m2,
    })
}

/// Whether it stays in one place for longer than a person who marks a corner.
fn stands_long(run: &[(f64, Place)]) -> bool {
    (0..run.len()).any(|first| {
        let (start_s, place) = run[first];
        let mut here = run[first..]
            .iter()
            .take_while(|(_, at)| at.distance_m(place) < STAND_M);
        here.any(|(time_s, _)| time_s - start_s > LONGEST_STAND_S)
    })
}

fn length_m(run: &[(f64, Place)]) -> f64 {
    run.windows(2).map(|ends| ends[0].1.distance_m(ends[1].1)).sum()
}

/// Length of one round and the area inside, for a way that goes round its middle and comes back.
fn once_round(run: &[(f64, Place)]) -> Option<(f64, f64)> {
    let (_, start) = *run.first()?;
    let (low, high) = Place::bounds(run.iter().map(|(_, place)| *place))?;
    let middle = low.middle(high);
    let bearing_rad =
        |place: Place| math::atan2(place.north_m - middle.north_m, place.east_m - middle.east_m);
    let cross = |a: Place, b: Place| {
        (a.east_m - middle.east_m) * (b.north_m - middle.north_m)
            - (b.east_m - middle.east_m) * (a.north_m - middle.north_m)
    };
    let (mut net_rad, mut all_rad, mut doubled_m2) = (0.0f64, 0.0, 0.0);
    let closed = run.iter().skip(1).map(|(_, place)| *place).chain([start]);
    let mut last = start;
    for place in closed {
        let turned_rad = bearing_rad(place) - bearing_rad(last);
        let turned_rad = turned_rad - std::f64::consts::TAU * (turned_rad / std::f64::consts::TAU).round();
        net_rad += turned_rad;
        all_rad += turned_rad.abs();
        doubled_m2 += cross(last, place);
        last = place;
    }
    let rounds = net_rad.abs() / std::f64::consts::TAU;
    let way_m = length_m(run);
    let second_half = &run[run.len() / 2..];
    let gap_m = second_half.iter().map(|(_, place)| place.distance_m(start));
    let is_back = gap_m.fold(f64::INFINITY, f64::min) <= CLOSED_M.max(CLOSED_FRACTION * way_m);
    let goes_round =
        (LEAST_ROUND..=MOST_ROUNDS).contains(&rounds) && net_rad.abs() >= SAME_WAY_FRACTION * all_rad;
    let whole_rounds = rounds.round().max(1.0);
    let area_m2 = 0.5 * doubled_m2.abs() / whole_rounds;
    let round_m = way_m / whole_rounds;
    let of_circle = 4.0 * std::f64::consts::PI * area_m2 / (round_m * round_m);
    let is_wide = of_circle >= LEAST_OF_CIRCLE && area_m2 >= LEAST_M2;
    (is_back && goes_round && is_wide).then_some((round_m, area_m2))
}

#[cfg(test)]
#[path = "walk_round_tests.rs"]
mod tests;
