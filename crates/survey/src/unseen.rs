//! Ground without evidence.
//!
//! Question: may a pocket have been visited while nothing was logged? In a silence the machine can be anywhere that its
//! speed allows from where it was last seen and where it was seen again: an ellipse. Driving there as it does on the whole
//! lawn it meets a place of width D with probability 1 - exp(-(D + w) v t / A), A the lawn inside the ellipse (laws of
//! lines over a region, Koopman 1946). Where that reaches one half over all silences, the pocket is neither missed nor not
//! yet visited: it is unseen. Silences at the station and long rests between nights hide no pocket.
//!
//! What silences add to the visited fraction: short ones the same chance, summed over all ground that the log does not show as
//! visited, half of it to either side being unsure (found in simulated gardens). From a silence in which the machine could get
//! everywhere nothing of its way is left; the log itself has other stretches as long that begin and end in the same way, at the
//! station or out. What each of them alone has visited, corrected for the ground that is still open, is what such a silence may
//! hide: their mean and nine of ten of them. Approximate: silences do not choose their time.

use crate::Survey;
use tussock_coverage::{luck, visits};
use tussock_locate::{Gap, HaltPlace, Track};
use tussock_types::math;
use tussock_types::{Cells, Place};

/// Ground is unseen from this chance on.
pub const UNSEEN_CHANCE: f64 = 0.5;
/// Both ends so near to the station: it was there.
const AT_STATION_M: f64 = 3.0;
/// A log that goes on after so long is of another night.
const NIGHT_S: f64 = 6.0 * 3600.0;
/// Speeds vary a little.
const SLACK: f64 = 1.02;
/// A silence whose ends agree so closely is a stand, or charging.
const REST_S: f64 = 1800.0;

/// A silence during which it may have driven.
#[derive(Clone, Copy, Debug)]
pub struct Hidden {
    /// It may have stood at its station all the time, or rested between two nights.
    is_rest: bool,
    track: usize,
    start_s: f64,
    end_s: f64,
    from: Place,
    to: Place,
    way_m: f64,
    lawn_m2: f64,
}

/// Silences during which a machine may have driven.
pub fn hidden(survey: &Survey<'_>, lawn_m2: f64) -> Vec<Hidden> {
    let mut found = Vec::new();
    for (number, track) in survey.tracks.iter().enumerate() {
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
            // Where it went straight on, its own speed is what it did.
            let way_m = SLACK * (speed_mps * lapse_s).max(gap.moved_m);
            // Axes of the ellipse.
            let half_m = 0.5 * way_m.max(gap.moved_m);
            let across_m = (half_m * half_m - 0.25 * gap.moved_m * gap.moved_m)
                .max(0.0)
                .sqrt();
            let reach_m2 = std::f64::consts::PI * half_m * across_m;
            found.push(Hidden {
                is_rest: is_home || (gap.moved_m < AT_STATION_M && lapse_s > REST_S) || lapse_s > NIGHT_S,
                track: number,
                start_s: gap.start_s,
                end_s: gap.end_s,
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
pub fn chance(hidden: &[Hidden], place: Place, widest_m: f64, cut_width_m: f64) -> f64 {
    let met: f64 = hidden
        .iter()
        .filter(|hidden| !hidden.is_rest)
        .filter(|hidden| place.distance_m(hidden.from) + place.distance_m(hidden.to) <= hidden.way_m)
        .map(|hidden| (widest_m + cut_width_m) * hidden.way_m / hidden.lawn_m2)
        .sum();
    1.0 - math::exp(-met)
}

/// What silences hide, as a part of the lawn, with the ends of its 90 % interval.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct HiddenFraction {
    /// As expected.
    pub expected_fraction: f64,
    /// Lower end.
    pub low_fraction: f64,
    /// Upper end.
    pub high_fraction: f64,
}

/// Part of the lawn that was visited in the silences and that the log does not show.
pub fn hidden_fraction(
    survey: &Survey<'_>,
    count: &visits::Count,
    cells: &Cells,
    drive: &luck::Drive,
) -> HiddenFraction {
    let hidden = hidden(survey, drive.lawn_m2);
    if hidden.is_empty() {
        return HiddenFraction::default();
    }
    // Where its reach is all of the lawn, a silence is likened to others as long; else the ground within its reach counts.
    let (long, short): (Vec<Hidden>, Vec<Hidden>) =
        (hidden.into_iter()).partition(|hidden| hidden.is_rest || hidden.lawn_m2 >= drive.lawn_m2);
    let (mut lawn, mut open, mut within) = (0.0, 0.0, 0.0);
    for (at, lawn_fraction) in cells.lawn_fraction.iter().enumerate() {
        let lawn_fraction = f64::from(*lawn_fraction);
        let open_here = lawn_fraction * (1.0 - f64::from(cells.visited_probability[at]));
        lawn += lawn_fraction;
        open += open_here;
        if open_here > 0.0 && !short.is_empty() {
            let place = cells
                .grid
                .centre(at % cells.grid.columns, at / cells.grid.columns);
            within += open_here * chance(&short, place, 0.0, survey.swath_m());
        }
    }
    let (lawn, within) = (f64::max(lawn, 1.0), within / f64::max(lawn, 1.0));
    let mut found = HiddenFraction {
        expected_fraction: within,
        low_fraction: 0.5 * within,
        high_fraction: 1.5 * within,
    };
    let stretches = Stretches::of(survey, count);
    let (mut below, mut above) = ((0.5 * within).powi(2), (0.5 * within).powi(2));
    for silence in &long {
        let one = stretches.hidden(silence, open / lawn, drive);
        found.expected_fraction += one.expected_fraction;
        below += (one.expected_fraction - one.low_fraction).powi(2);
        above += (one.high_fraction - one.expected_fraction).powi(2);
    }
    let most = open / lawn;
    found.expected_fraction = found.expected_fraction.min(most);
    found.low_fraction = (found.expected_fraction - below.sqrt()).max(0.0);
    found.high_fraction = (found.expected_fraction + above.sqrt()).min(most);
    found
}

/// What each stretch of the log alone has visited: cells whose visits all lie within it.
struct Stretches<'a> {
    survey: &'a Survey<'a>,
    /// First and last visit of each cell of the lawn, seconds since 1970, by the first.
    visits_s: Vec<(f64, f64)>,
    lawn_cells: f64,
}

/// Stretches that are looked at for each silence.
const MOST_STRETCHES: f64 = 200.0;
/// Shorter silences within a stretch do not matter.
const LEAST_GAP_S: f64 = 60.0;
/// Fewer stretches than this, of those that begin and end as the silence does, tell nothing.
const LEAST_STRETCHES: usize = 10;

impl<'a> Stretches<'a> {
    fn of(survey: &'a Survey<'a>, count: &visits::Count) -> Self {
        let (start_s, _) = survey.span_s();
        let mut visits_s: Vec<(f64, f64)> = (count.lawn.cells_on())
            .filter_map(|(column, row)| count.first_and_last_s(column, row))
            .map(|(first_s, last_s)| (start_s + f64::from(first_s), start_s + f64::from(last_s)))
            .collect();
        visits_s.sort_by(|a, b| a.0.total_cmp(&b.0));
        Self {
            survey,
            visits_s,
            lawn_cells: (count.lawn.count() as f64).max(1.0),
        }
    }

    /// Part of the lawn that only this stretch has visited.
    fn alone_fraction(&self, start_s: f64, end_s: f64) -> f64 {
        let first = self.visits_s.partition_point(|visit| visit.0 < start_s);
        let inside = self.visits_s[first..].iter().take_while(|visit| visit.0 <= end_s);
        inside.filter(|visit| visit.1 <= end_s).count() as f64 / self.lawn_cells
    }

    /// What a silence hides, `open` of the lawn not being visited.
    fn hidden(&self, silence: &Hidden, open: f64, drive: &luck::Drive) -> HiddenFraction {
        let track = &self.survey.tracks[silence.track];
        let lapse_s = silence.end_s - silence.start_s;
        let (from_s, to_s) = track.span_s.unwrap_or_default();
        let step_s = ((to_s - from_s - lapse_s) / MOST_STRETCHES).max(30.0);
        let ends_at_home = |start_s: f64, end_s: f64| [is_home(track, start_s), is_home(track, end_s)];
        let wanted = ends_at_home(silence.start_s, silence.end_s);
        let is_logged = |start_s: f64, end_s: f64| {
            !(track.gaps.iter()).any(|gap| {
                gap.end_s - gap.start_s >= LEAST_GAP_S && gap.start_s < end_s && start_s < gap.end_s
            })
        };
        let mut gains: Vec<f64> = (0..)
            .map(|number| from_s + step_s * f64::from(number))
            .take_while(|start_s| start_s + lapse_s <= to_s)
            .filter(|start_s| is_logged(*start_s, start_s + lapse_s))
            .filter(|start_s| ends_at_home(*start_s, start_s + lapse_s) == wanted)
            .map(|start_s| self.alone_fraction(start_s, start_s + lapse_s))
            .map(|alone| match drive.pattern {
                luck::Pattern::Lanes => alone.min(open),
                // Chance leaves open an exponential in the time driven: what one more stretch adds is less than what leaving one
                // out takes away.
                luck::Pattern::Roaming => open * alone / (open + alone).max(1e-12),
            })
            .collect();
        if gains.len() < LEAST_STRETCHES && silence.is_rest {
            return HiddenFraction::default();
        }
        if gains.len() < LEAST_STRETCHES {
            let met = drive.cut_width_m * silence.way_m / silence.lawn_m2;
            let most = open * (1.0 - math::exp(-met));
            return HiddenFraction {
                expected_fraction: 0.5 * most,
                low_fraction: 0.0,
                high_fraction: most,
            };
        }
        gains.sort_by(f64::total_cmp);
        let at = |share: f64| gains[(share * (gains.len() - 1) as f64).round() as usize];
        HiddenFraction {
            expected_fraction: gains.iter().sum::<f64>() / gains.len() as f64,
            low_fraction: at(0.05),
            high_fraction: at(0.95),
        }
    }
}

/// Whether a machine stood at its station then.
fn is_home(track: &Track, time_s: f64) -> bool {
    const SLACK_S: f64 = 5.0;
    let mut at_station = track.halts.iter().filter(|halt| halt.at == HaltPlace::Station);
    at_station.any(|halt| (halt.start_s - SLACK_S..=halt.end_s + SLACK_S).contains(&time_s))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_place_out_of_reach_was_not_visited_in_a_silence() {
        let hidden = [Hidden {
            is_rest: false,
            track: 0,
            start_s: 0.0,
            end_s: 100.0,
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
