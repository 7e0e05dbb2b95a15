//! Stuck spots.
//!
//! Halts away from the station that last longer than a turn are episodes; episodes within reach of each other are one spot
//! (single linkage over an R-tree's neighbours, which is DBSCAN, Ester et al. 1996, with one point as its core). Exact given
//! the halts; the reach grows with the position error.

use rstar::{RTree, primitives::GeomWithData};
use tussock_locate::{Halt, HaltPlace, Track};
use tussock_plane::LegIndex;
use tussock_types::Place;
use tussock_types::math;

/// Episodes closer together than this are one spot: about the size of a machine and its turning room.
const REACH_M: f64 = 1.5;

/// In a sparse log, fewer fixes than this in one place may also be manoeuvring.
const LEAST_FIXES: f64 = 10.0;

/// A place where the machine lost time.
#[derive(Clone, Debug, PartialEq)]
pub struct Spot {
    /// The middle of the episodes.
    pub place: Place,
    /// Radius that holds them.
    pub radius_m: f64,
    /// How often.
    pub episodes: usize,
    /// How long in all.
    pub lost_s: f64,
    /// Drives through the radius without a halt.
    pub passes_through: usize,
    /// Compass course from which the machine came, degrees, if most episodes agree.
    pub approach_deg: Option<f64>,
}

/// Gathers halts into stuck spots, the largest loss of time first.
///
/// Not counted: halts at the station, and standing before the first drive (somebody had put the machine there). If no
/// station is known, standing after the last drive is not counted either.
pub fn stuck_spots(tracks: &[Track], index: &LegIndex, stuck_after_s: f64) -> Vec<Spot> {
    let mut episodes: Vec<Halt> = Vec::new();
    let mut error_m: f64 = 0.0;
    for track in tracks {
        let Some((start_s, end_s)) = track.span_s else {
            continue;
        };
        let slow_m = track
            .noise
            .drift_m
            .unwrap_or_else(|| (600.0 * track.noise.drift_rate_m2_per_s).sqrt());
        error_m = error_m.max(slow_m);
        let least_s = stuck_after_s.max(LEAST_FIXES * track.period_s);
        episodes.extend(track.halts.iter().copied().filter(|halt| {
            halt.at == HaltPlace::Elsewhere
                && halt.end_s - halt.start_s >= least_s
                && halt.start_s > start_s + 1.0
                && (track.station.is_some() || halt.end_s < end_s - 1.0)
        }));
    }
    let reach_m = REACH_M + error_m;
    let tree = RTree::bulk_load(
        episodes
            .iter()
            .enumerate()
            .map(|(number, halt)| GeomWithData::new([halt.place.east_m, halt.place.north_m], number))
            .collect(),
    );
    let mut group = vec![usize::MAX; episodes.len()];
    let mut groups: Vec<Vec<usize>> = Vec::new();
    for first in 0..episodes.len() {
        if group[first] != usize::MAX {
            continue;
        }
        let number = groups.len();
        groups.push(Vec::new());
        let mut open = vec![first];
        group[first] = number;
        while let Some(at) = open.pop() {
            groups[number].push(at);
            let place = [episodes[at].place.east_m, episodes[at].place.north_m];
            for near in tree.locate_within_distance(place, reach_m * reach_m) {
                if group[near.data] == usize::MAX {
                    group[near.data] = number;
                    open.push(near.data);
                }
            }
        }
    }
    let mut spots: Vec<Spot> = groups
        .into_iter()
        .map(|mut members| {
            members.sort_unstable();
            let count = members.len() as f64;
            let mean =
                |value: fn(&Halt) -> f64| members.iter().map(|at| value(&episodes[*at])).sum::<f64>() / count;
            let place = Place::new(mean(|halt| halt.place.east_m), mean(|halt| halt.place.north_m));
            let radius_m = members
                .iter()
                .map(|at| episodes[*at].place.distance_m(place))
                .fold(0.3, f64::max);
            let passes_through = passes_through(index, place, radius_m, &members, &episodes);
            Spot {
                place,
                radius_m,
                episodes: members.len(),
                lost_s: members
                    .iter()
                    .map(|at| episodes[*at].end_s - episodes[*at].start_s)
                    .sum(),
                passes_through,
                approach_deg: approach_deg(&members, &episodes),
            }
        })
        .collect();
    spots.sort_by(|a, b| b.lost_s.total_cmp(&a.lost_s));
    spots
}

/// Separate drives through the radius during which no episode took place.
fn passes_through(
    index: &LegIndex,
    place: Place,
    radius_m: f64,
    members: &[usize],
    episodes: &[Halt],
) -> usize {
    let mut last_s = f64::NEG_INFINITY;
    let mut passes = 0;
    for leg in index
        .within(place, radius_m)
        .into_iter()
        .map(|number| index.legs()[number])
    {
        let stuck = members
            .iter()
            .any(|at| leg.end_s > episodes[*at].start_s - 30.0 && leg.start_s < episodes[*at].end_s + 30.0);
        if !stuck && leg.start_s - last_s > 30.0 {
            passes += 1;
        }
        if !stuck {
            last_s = last_s.max(leg.end_s);
        }
    }
    passes
}

/// Mean course of approach, if the courses agree (mean resultant length above one half).
fn approach_deg(members: &[usize], episodes: &[Halt]) -> Option<f64> {
    let courses: Vec<f64> = members
        .iter()
        .filter_map(|at| {
            let halt = &episodes[*at];
            let from = halt.came_from?;
            Some(math::atan2(
                halt.place.east_m - from.east_m,
                halt.place.north_m - from.north_m,
            ))
        })
        .collect();
    if courses.len() < 2 {
        return None;
    }
    let (east, north) = courses.iter().fold((0.0, 0.0), |(e, n), course| {
        (e + math::sin(*course), n + math::cos(*course))
    });
    let agreement = math::hypot(east / courses.len() as f64, north / courses.len() as f64);
    (agreement > 0.5).then(|| math::atan2(east, north).to_degrees().rem_euclid(360.0))
}
