//! Does the machine drive in lanes, or does it roam?
//!
//! Legs show it, if positions are good enough to find them ([`tussock_coverage::luck::pattern`]). With errors of metres,
//! short legs point anywhere. Chords over a quarter of a minute are long compared with the error that changes within them,
//! and those that are nearly as long as the machine can drive contain no turn: in lanes their directions agree, up to half a
//! turn.

use tussock_coverage::luck::{self, Pattern};
use tussock_locate::Track;
use tussock_plane::Vector;
use tussock_types::math;

/// Least time that a chord spans.
const CHORD_S: f64 = 15.0;
/// Chords that are at least this fraction of the longest usual ones contain no turn.
const STRAIGHT: f64 = 0.85;
/// The quantile of chords that counts as usual and long.
const LONG_QUANTILE: f64 = 0.85;
/// Fewer chords show nothing.
const LEAST_CHORDS: usize = 20;
/// Lanes are assumed from this agreement on: of 50 roaming logs with errors of metres none had more than 0.53, of 50 in
/// lanes none less than 0.90.
const LANES_AGREEMENT: f64 = 0.7;
/// With a smaller error than this, legs show the pattern.
const POOR_M: f64 = 0.1;

/// A leg of a round is no shorter; a corner of one turns by between these; a round turns by so much before it is told.
const LEAST_LEG_M: f64 = 1.0;
const CORNER_RAD: std::ops::Range<f64> = 0.2..2.6;
const LEAST_ROUNDS_RAD: f64 = 4.0 * std::f64::consts::PI;
/// Rounds that make up so much of a path are what the machine does: its turns then tell nothing of edges.
pub const GOES_ROUND: f64 = 0.25;

/// The part of the path in long legs of which several in a row turn to one side, for two turns and more. By chance eight corners to
/// one side follow each other seldom.
pub fn rounds_fraction(tracks: &[Track]) -> f64 {
    let path_m: f64 = tracks.iter().map(Track::path_m).sum();
    let rounds_m: f64 = tracks.iter().map(rounds_m).sum();
    if path_m > 0.0 {
        (rounds_m / path_m).min(1.0)
    } else {
        0.0
    }
}

fn rounds_m(track: &Track) -> f64 {
    let steps = track
        .legs()
        .map(|(from, to)| Vector::between(from.place, to.place));
    let long: Vec<Vector> = steps.filter(|step| step.length() >= LEAST_LEG_M).collect();
    let mut rounds_m = 0.0;
    for side in [1.0, -1.0] {
        let (mut first, mut turned_rad) = (0, 0.0);
        for end in 1..=long.len() {
            let corner_rad = long
                .get(end)
                .map_or(0.0, |leg| side * long[end - 1].angle_to_rad(*leg));
            if CORNER_RAD.contains(&corner_rad) {
                turned_rad += corner_rad;
                continue;
            }
            if turned_rad >= LEAST_ROUNDS_RAD {
                rounds_m += long[first..end].iter().map(|leg| leg.length()).sum::<f64>();
            }
            (first, turned_rad) = (end, 0.0);
        }
    }
    rounds_m
}

/// How the machines go about the lawn, by the directions of legs alone.
pub fn by_legs(tracks: &[Track]) -> Pattern {
    luck::pattern(tracks.iter().flat_map(Track::legs).map(|(from, to)| {
        (
            to.place.east_m - from.place.east_m,
            to.place.north_m - from.place.north_m,
        )
    }))
}

/// How the machines cover the lawn.
pub fn pattern(tracks: &[Track]) -> Pattern {
    let by_chords = tracks
        .iter()
        .filter(|track| track.position_error_m() > POOR_M)
        .filter_map(agreement)
        .any(|agreement| agreement > LANES_AGREEMENT);
    if by_chords {
        Pattern::Lanes
    } else {
        by_legs(tracks)
    }
}

/// Agreement of the directions of straight chords, up to half a turn; `None` if there are too few.
fn agreement(track: &Track) -> Option<f64> {
    let straight = straight_chords(track)?;
    Some(luck::agreement(&straight, 2.0).max(luck::agreement(&straight, 4.0)))
}

/// The directions of lanes: one, or two at right angles where these agree better; `None` if there are too few straight chords.
pub(crate) fn axes_rad(track: &Track) -> Option<Vec<f64>> {
    let straight = straight_chords(track)?;
    let (one, two) = (luck::axis(&straight, 2.0), luck::axis(&straight, 4.0));
    Some(match one.0 > LANES_AGREEMENT {
        true => vec![one.1],
        false => vec![two.1, two.1 + std::f64::consts::FRAC_PI_2],
    })
}

/// Directions of straight chords, each with the same weight; `None` if there are too few.
fn straight_chords(track: &Track) -> Option<Vec<(f64, f64)>> {
    let kept = &track.kept;
    let stride = (CHORD_S / track.period_s.max(1e-3)).ceil().max(1.0) as usize;
    let is_resting = |index: usize| {
        let time_s = kept.time_s[index];
        let after = track.halts.partition_point(|halt| halt.start_s <= time_s);
        after > 0 && time_s <= track.halts[after - 1].end_s
    };
    let chords: Vec<(f64, f64)> = (stride..kept.len())
        .step_by(stride)
        .filter(|to| kept.run[*to] == kept.run[to - stride] && !is_resting(*to) && !is_resting(to - stride))
        .map(|to| {
            let (from, to) = (kept.place(to - stride), kept.place(to));
            let (east_m, north_m) = (to.east_m - from.east_m, to.north_m - from.north_m);
            (math::atan2(north_m, east_m), math::hypot(east_m, north_m))
        })
        .collect();
    let mut lengths: Vec<f64> = chords.iter().map(|chord| chord.1).collect();
    lengths.sort_by(f64::total_cmp);
    let long_m = *lengths.get((lengths.len() as f64 * LONG_QUANTILE) as usize)?;
    let straight: Vec<(f64, f64)> = chords
        .into_iter()
        .filter(|chord| chord.1 >= STRAIGHT * long_m)
        .map(|(angle_rad, _)| (angle_rad, 1.0))
        .collect();
    (straight.len() >= LEAST_CHORDS).then_some(straight)
}
