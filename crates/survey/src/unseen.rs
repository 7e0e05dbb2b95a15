//! Ground without evidence.
//!
//! Question: may a pocket have been visited while nothing was logged? In a silence the machine can be anywhere that its
//! speed allows between where it was last seen and where it was seen again: an ellipse. If it drives there as it does on the
//! whole lawn, it meets a place of width D with probability 1 - exp(-(D + w) v t / A), where A is the lawn inside the
//! ellipse (laws of lines over a region, Koopman 1946). If that reaches one half over all silences, the pocket is neither
//! missed nor not yet visited: it is unseen. Silences at the station and long rests between nights hide no pocket.
//!
//! What silences add to the visited fraction: for short ones the same chance, summed over all ground that the log does not
//! show as visited, with an uncertainty of half of it to either side (found in simulated gardens). A silence in which the
//! machine could get everywhere leaves no trace of its way, but the log has other stretches that are as long and begin and
//! end in the same way, at the station or out. If both ends are at the station and no stretch of the log is from stay to stay, the logger
//! sleeps while the machine charges, and nothing is hidden. What each of them alone has visited, corrected for the ground that is still
//! open, is what such a silence may hide: their mean, and the range of nine in ten. Approximate: silences are assumed not to
//! choose their time.

use crate::Survey;
use tussock_coverage::{luck, visits};
use tussock_locate::{Gap, HaltPlace, Track};
use tussock_types::math;
use tussock_types::{Cells, Grid, Place};

/// Ground is unseen from this chance on.
pub const UNSEEN_CHANCE: f64 = 0.5;
/// If both ends are this close to the station, the machine was there.
const AT_STATION_M: f64 = 3.0;
/// A log that continues after this long belongs to another night.
const NIGHT_S: f64 = 6.0 * 3600.0;
/// A machine that stood is seen again within so many standard deviations of the position error; this is as close as any can be told.
const ERRORS_APART: f64 = 3.0;
const LEAST_APART_M: f64 = 0.3;
/// Speeds vary a little.
const SLACK: f64 = 1.02;
/// A silence whose ends agree this closely is a stand, or charging.
const REST_S: f64 = 1800.0;
/// From so long on one whose ends agree may be a stop; a shorter one, anywhere else, may hold a turn.
const STOPS_S: f64 = 300.0;

/// A silence during which it may have driven.
#[derive(Clone, Copy, Debug)]
pub struct Hidden {
    /// It may have stood at its station all the time, or rested between two nights.
    is_rest: bool,
    /// Both ends are at the station.
    is_home: bool,
    /// How likely it drove at all.
    driven_chance: f64,
    track: usize,
    start_s: f64,
    end_s: f64,
    from: Place,
    to: Place,
    way_m: f64,
    lawn_m2: f64,
}

impl Hidden {
    fn lapse_s(&self) -> f64 {
        self.end_s - self.start_s
    }

    /// Whether it could reach a place and come back in time.
    fn reaches(&self, place: Place) -> bool {
        place.distance_m(self.from) + place.distance_m(self.to) <= self.way_m
    }

    /// Expected number of times it met a place of some width within its reach.
    fn met(&self, widest_m: f64, cut_width_m: f64) -> f64 {
        (widest_m + cut_width_m) * self.way_m / self.lawn_m2
    }
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
            // If it went straight on, its own speed is what it drove.
            let way_m = SLACK * (speed_mps * lapse_s).max(gap.moved_m);
            // Axes of the ellipse.
            let half_m = 0.5 * way_m;
            let across_m = (half_m * half_m - 0.25 * gap.moved_m * gap.moved_m)
                .max(0.0)
                .sqrt();
            let reach_m2 = std::f64::consts::PI * half_m * across_m;
            let is_rest = is_home || (gap.moved_m < AT_STATION_M && lapse_s > REST_S) || lapse_s > NIGHT_S;
            let near_m = apart_m(gap.moved_m, track.position_error_m());
            let is_long_stop = |other: &&Gap| {
                other.moved_m < AT_STATION_M
                    && (STOPS_S..=NIGHT_S).contains(&(other.end_s - other.start_s))
                    && ends(track, other).is_some_and(|(there, _)| there.distance_m(from) <= near_m)
            };
            let stops_there = match gap.moved_m < AT_STATION_M && lapse_s <= NIGHT_S {
                true => track.gaps.iter().filter(is_long_stop).count(),
                false => 0,
            };
            found.push(Hidden {
                is_rest,
                is_home,
                // At the station the other stretches of the log tell whether it drove.
                driven_chance: match stops_there > 0 && !is_home {
                    true => back_by_chance(near_m, lawn_m2, stops_there),
                    false => 1.0,
                },
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

/// A machine that stood is seen again so close.
fn apart_m(moved_m: f64, error_m: f64) -> f64 {
    (moved_m + ERRORS_APART * error_m).clamp(LEAST_APART_M, AT_STATION_M)
}

/// Chance that a machine drove in a silence whose ends agree, driving or standing being as likely beforehand (Bayes): one that drove is
/// back so close by no more than the part of the lawn that is so close, and after several long silences at one place by the product of
/// these. A short silence there is one more stop.
fn back_by_chance(near_m: f64, lawn_m2: f64, stops_there: usize) -> f64 {
    let part = (std::f64::consts::PI * near_m * near_m / lawn_m2.max(1.0)).min(1.0);
    let odds = part.powi(stops_there as i32);
    odds / (1.0 + odds)
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
    let not_met: f64 = hidden
        .iter()
        .filter(|hidden| !hidden.is_rest && hidden.reaches(place))
        .map(|hidden| 1.0 - hidden.driven_chance * (1.0 - math::exp(-hidden.met(widest_m, cut_width_m))))
        .product();
    1.0 - not_met
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

impl HiddenFraction {
    fn times(&self, factor: f64) -> Self {
        Self {
            expected_fraction: factor * self.expected_fraction,
            low_fraction: factor * self.low_fraction,
            high_fraction: factor * self.high_fraction,
        }
    }
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
    // If its reach covers the whole lawn, a silence is compared with others as long; otherwise the ground within its reach
    // counts.
    let (mut long, short): (Vec<Hidden>, Vec<Hidden>) =
        (hidden.into_iter()).partition(|hidden| hidden.is_rest || hidden.lawn_m2 >= drive.lawn_m2);
    let met = met(&short, &cells.grid, survey.swath_m());
    let (mut lawn, mut open, mut within) = (0.0, 0.0, 0.0);
    for (at, lawn_fraction) in cells.lawn_fraction.iter().enumerate() {
        let lawn_fraction = f64::from(*lawn_fraction);
        let open_here = lawn_fraction * (1.0 - f64::from(cells.visited_probability[at]));
        lawn += lawn_fraction;
        open += open_here;
        within += open_here * (1.0 - math::exp(-met.get(at).copied().unwrap_or(0.0)));
    }
    let lawn = f64::max(lawn, 1.0);
    let (open, within) = (open / lawn, within / lawn);
    let (mut expected, mut below, mut above) = (within, (0.5 * within).powi(2), (0.5 * within).powi(2));
    long.sort_by(|a, b| b.lapse_s().total_cmp(&a.lapse_s()));
    let longest_s = long.first().map(Hidden::lapse_s);
    let stretches = longest_s.map(|longest_s| Stretches::of(survey, count, longest_s));
    let mut last: Option<(f64, HiddenFraction)> = None;
    for (number, silence) in long.iter().enumerate() {
        let one = match last {
            // If there are very many, the shorter ones hide as much in proportion to their time as the last one that was
            // examined.
            Some((lapse_s, last)) if number >= MOST_LOOKED_AT => last.times(silence.lapse_s() / lapse_s),
            _ => {
                let all = stretches.as_ref().map(|all| all.hidden(silence, open, drive));
                all.unwrap_or_default().times(silence.driven_chance)
            }
        };
        if number < MOST_LOOKED_AT {
            last = Some((silence.lapse_s().max(1e-9), one));
        }
        expected += one.expected_fraction;
        below += (one.expected_fraction - one.low_fraction).powi(2);
        above += (one.high_fraction - one.expected_fraction).powi(2);
    }
    let expected_fraction = expected.min(open);
    HiddenFraction {
        expected_fraction,
        low_fraction: (expected_fraction - below.sqrt()).max(0.0),
        high_fraction: (expected_fraction + above.sqrt()).min(open),
    }
}

/// Expected number of times each cell was met in short silences; empty without any.
fn met(short: &[Hidden], grid: &Grid, cut_width_m: f64) -> Vec<f64> {
    if short.is_empty() {
        return Vec::new();
    }
    let mut met = vec![0.0; grid.cells()];
    for silence in short {
        let half_m = 0.5 * silence.way_m;
        let (middle_east_m, middle_north_m) = (
            0.5 * (silence.from.east_m + silence.to.east_m),
            0.5 * (silence.from.north_m + silence.to.north_m),
        );
        let cell = |value_m: f64, from_m: f64, cells: usize| {
            (((value_m - from_m) / grid.cell_m).floor().max(0.0) as usize).min(cells)
        };
        let columns = cell(middle_east_m - half_m, grid.east_min_m, grid.columns)
            ..cell(
                middle_east_m + half_m + grid.cell_m,
                grid.east_min_m,
                grid.columns,
            );
        let rows = cell(middle_north_m - half_m, grid.north_min_m, grid.rows)
            ..cell(middle_north_m + half_m + grid.cell_m, grid.north_min_m, grid.rows);
        for row in rows {
            for column in columns.clone() {
                if silence.reaches(grid.centre(column, row)) {
                    met[row * grid.columns + column] += silence.met(0.0, cut_width_m);
                }
            }
        }
    }
    met
}

/// What each stretch of the log alone has visited: cells whose visits all lie within it.
struct Stretches<'a> {
    survey: &'a Survey<'a>,
    /// First and last visit, in seconds since 1970, of each lawn cell whose visits all lie in one stretch; sorted by the
    /// first visit.
    visits_s: Vec<(f64, f64)>,
    lawn_cells: f64,
}

/// Long silences that are examined one by one.
const MOST_LOOKED_AT: usize = 24;
/// Stretches that are examined for each silence.
const MOST_STRETCHES: f64 = 200.0;
/// Shorter silences within a stretch do not matter.
const LEAST_GAP_S: f64 = 60.0;
/// Fewer stretches that begin and end as the silence does show nothing.
const LEAST_STRETCHES: usize = 10;

impl<'a> Stretches<'a> {
    fn of(survey: &'a Survey<'a>, count: &visits::Count, longest_s: f64) -> Self {
        let (start_s, _) = survey.span_s();
        let mut visits_s: Vec<(f64, f64)> = (count.lawn.cells_on())
            .filter_map(|(column, row)| count.first_and_last_s(column, row))
            .filter(|(first_s, last_s)| f64::from(last_s - first_s) <= longest_s)
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

    /// What a silence hides if `open` of the lawn has not been visited.
    fn hidden(&self, silence: &Hidden, open: f64, drive: &luck::Drive) -> HiddenFraction {
        let track = &self.survey.tracks[silence.track];
        let lapse_s = silence.lapse_s();
        let (from_s, to_s) = track.span_s.unwrap_or_default();
        let step_s = ((to_s - from_s - lapse_s) / MOST_STRETCHES).max(30.0);
        let ends_at_home = |start_s: f64, end_s: f64| [is_home(track, start_s), is_home(track, end_s)];
        let wanted = match silence.is_home {
            true => [true; 2],
            false => ends_at_home(silence.start_s, silence.end_s),
        };
        let is_logged = |start_s: f64, end_s: f64| {
            let first = track.gaps.partition_point(|gap| gap.end_s <= start_s);
            let mut within = track.gaps[first..].iter().take_while(|gap| gap.start_s < end_s);
            within.all(|gap| gap.end_s - gap.start_s < LEAST_GAP_S)
        };
        let mut gains: Vec<f64> = (0..)
            .map(|number| from_s + step_s * f64::from(number))
            .take_while(|start_s| start_s + lapse_s <= to_s)
            .filter(|start_s| is_logged(*start_s, start_s + lapse_s))
            .filter(|start_s| ends_at_home(*start_s, start_s + lapse_s) == wanted)
            .map(|start_s| self.alone_fraction(start_s, start_s + lapse_s))
            .map(|alone| match drive.pattern {
                luck::Pattern::Lanes => alone.min(open),
                // Chance leaves open a part that falls exponentially with the time driven: one more stretch adds less than
                // leaving one out takes away.
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

    /// 0.3 m of radius on 800 m2, as far as a poor receiver may be off, no farther than the station reaches; the same place again.
    #[test]
    fn ends_that_agree_closely_were_hardly_driven_between() {
        let part = std::f64::consts::PI * 0.09 / 800.0;
        let near_m = apart_m(0.0, 0.01);
        assert!((back_by_chance(near_m, 800.0, 1) - part / (1.0 + part)).abs() < 1e-15);
        assert!((back_by_chance(near_m, 800.0, 3) / part.powi(3) - 1.0).abs() < 1e-9);
        assert!((apart_m(0.5, 0.3) - 1.4).abs() < 1e-12);
        assert_eq!(apart_m(2.0, 2.0), AT_STATION_M);
        assert_eq!(back_by_chance(AT_STATION_M, 1.0, 1), 0.5);
    }

    #[test]
    fn a_place_out_of_reach_was_not_visited_in_a_silence() {
        let hidden = [Hidden {
            is_rest: false,
            is_home: false,
            driven_chance: 1.0,
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
