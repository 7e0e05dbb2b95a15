//! Ground without evidence.
//!
//! Question: may a pocket have been visited while nothing was logged? In a silence the machine can be anywhere that its
//! speed allows from where it was last seen and where it was seen again: an ellipse. Driving there as it does on the whole
//! lawn it meets a place of width D with probability 1 - exp(-(D + w) v t / A), A the lawn inside the ellipse (laws of
//! lines over a region, Koopman 1946). Where that reaches one half over all silences, the pocket is neither missed nor not
//! yet visited: it is unseen. Silences at the station and long rests between nights are none of these.

use tussock_locate::Gap;
use tussock_survey::Survey;
use tussock_types::Place;
use tussock_types::math;

/// Ground is unseen from this chance on.
pub(crate) const UNSEEN_CHANCE: f64 = 0.5;
/// Shorter silences hide less than a swath's length of anything.
const LEAST_S: f64 = 20.0;
/// Both ends so near to the station: it was there.
const AT_STATION_M: f64 = 3.0;
/// A silence whose ends agree so closely is a stand, or charging.
const REST_S: f64 = 1800.0;

/// A silence during which it may have driven.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Hidden {
    from: Place,
    to: Place,
    way_m: f64,
    lawn_m2: f64,
}

/// Silences during which a machine may have driven.
pub(crate) fn hidden(survey: &Survey<'_>, lawn_m2: f64) -> Vec<Hidden> {
    let mut found = Vec::new();
    for track in &survey.tracks {
        let Some(speed_mps) = track.speed_mps else {
            continue;
        };
        for gap in &track.gaps {
            let Some((from, to)) = ends(track, gap) else {
                continue;
            };
            let lapse_s = gap.end_s - gap.start_s;
            let is_home = track.station.is_some_and(|station| {
                station.distance_m(from) < AT_STATION_M && station.distance_m(to) < AT_STATION_M
            });
            if lapse_s < LEAST_S || is_home || (gap.moved_m < AT_STATION_M && lapse_s > REST_S) {
                continue;
            }
            let way_m = speed_mps * lapse_s;
            // Axes of the ellipse.
            let half_m = 0.5 * way_m.max(gap.moved_m);
            let across_m = (half_m * half_m - 0.25 * gap.moved_m * gap.moved_m)
                .max(0.0)
                .sqrt();
            let reach_m2 = std::f64::consts::PI * half_m * across_m;
            found.push(Hidden {
                from,
                to,
                way_m,
                lawn_m2: reach_m2.min(lawn_m2).max(1.0),
            });
        }
    }
    found
}

/// Where it was before and after a silence.
fn ends(track: &tussock_locate::Track, gap: &Gap) -> Option<(Place, Place)> {
    let after = track.kept.time_s.partition_point(|time_s| *time_s < gap.end_s);
    let before = track.kept.time_s.partition_point(|time_s| *time_s <= gap.start_s);
    let before = before.checked_sub(1)?;
    (after < track.kept.len()).then(|| (track.kept.place(before), track.kept.place(after)))
}

/// Chance that a place of some width was visited in one of the silences.
pub(crate) fn chance(hidden: &[Hidden], place: Place, widest_m: f64, cut_width_m: f64) -> f64 {
    let met: f64 = hidden
        .iter()
        .filter(|hidden| place.distance_m(hidden.from) + place.distance_m(hidden.to) <= hidden.way_m)
        .map(|hidden| (widest_m + cut_width_m) * hidden.way_m / hidden.lawn_m2)
        .sum();
    1.0 - math::exp(-met)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_place_out_of_reach_was_not_visited_in_a_silence() {
        let hidden = [Hidden {
            from: Place::new(0.0, 0.0),
            to: Place::new(4.0, 0.0),
            way_m: 30.0,
            lawn_m2: 100.0,
        }];
        assert_eq!(chance(&hidden, Place::new(40.0, 0.0), 2.0, 0.2), 0.0);
        let near = chance(&hidden, Place::new(5.0, 3.0), 2.0, 0.2);
        assert!(
            (near - (1.0 - math::exp(-2.2 * 30.0 / 100.0_f64))).abs() < 1e-12,
            "{near}"
        );
    }
}
