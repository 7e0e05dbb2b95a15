//! Where did the machine stand?
//!
//! Question: when did the machine make no headway, and was that at the station? A halt is a longest stretch of one run that
//! stays within a small box, found with two pointers and monotone queues in linear time. Standing, spinning and driving to
//! and fro on the spot all count. The interval ends at the last fix inside.

use crate::{Halt, HaltPlace, Kept, NoiseEstimate, Step};
use tussock_types::Place;
use tussock_types::math;

/// A stretch of fixes that stays within a box.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Rest {
    /// Index of the first fix.
    pub first: usize,
    /// One past the last fix.
    pub end: usize,
    /// Time of the first fix.
    pub start_s: f64,
    /// Time of the last fix.
    pub end_s: f64,
}

impl Rest {
    fn of(kept: &Kept, first: usize, end: usize) -> Self {
        let (start_s, end_s) = (kept.time_s[first], kept.time_s[end - 1]);
        Self {
            first,
            end,
            start_s,
            end_s,
        }
    }

    fn lasts_s(&self) -> f64 {
        self.end_s - self.start_s
    }
}

/// Stretches of one run that stay within a box of side `side_m` for at least `least_s`, in time order, disjoint.
///
/// Each continues until a fix leaves the box; the next one may begin with that fix.
pub fn within_box(kept: &Kept, side_m: f64, least_s: f64) -> Vec<Rest> {
    let mut found: Vec<Rest> = Vec::new();
    // Largest and smallest east and north of the window; the smallest is the largest of the negated values.
    let mut extremes: [Highest; 4] = Default::default();
    for run in kept.runs() {
        let mut start = run.start;
        extremes.iter_mut().for_each(Highest::clear);
        for index in run.clone() {
            let (east_m, north_m) = (kept.east_m[index], kept.north_m[index]);
            let values = [east_m, -east_m, north_m, -north_m];
            loop {
                let [east, west, north, south] = [0, 1, 2, 3].map(|at| extremes[at].with(values[at]));
                if start >= index || !(east + west > side_m || north + south > side_m) {
                    break;
                }
                let rest = Rest::of(kept, start, index);
                if rest.lasts_s() >= least_s {
                    found.push(rest);
                    extremes.iter_mut().for_each(Highest::clear);
                    start = index;
                    break;
                }
                extremes.iter_mut().for_each(|highest| highest.leave(start));
                start += 1;
            }
            for (highest, value) in extremes.iter_mut().zip(values) {
                highest.push(index, value);
            }
        }
        if start < run.end {
            found.extend(Some(Rest::of(kept, start, run.end)).filter(|rest| rest.lasts_s() >= least_s));
        }
    }
    found
}

/// The largest value of a moving window, as a queue that descends from its front: number and value.
#[derive(Default)]
struct Highest {
    queue: Vec<(usize, f64)>,
    /// Where in the list the queue begins.
    front: usize,
}

impl Highest {
    fn clear(&mut self) {
        self.queue.clear();
        self.front = 0;
    }

    /// The largest, including another value.
    #[inline]
    fn with(&self, value: f64) -> f64 {
        self.queue
            .get(self.front)
            .map_or(f64::NEG_INFINITY, |(_, most)| *most)
            .max(value)
    }

    /// Removes the first number of the window.
    #[inline]
    fn leave(&mut self, number: usize) {
        if self
            .queue
            .get(self.front)
            .is_some_and(|(first, _)| *first == number)
        {
            self.front += 1;
        }
    }

    #[inline]
    fn push(&mut self, number: usize, value: f64) {
        while self.queue.len() > self.front && self.queue.last().is_some_and(|(_, last)| *last <= value) {
            self.queue.pop();
        }
        if self.queue.len() == self.front {
            self.clear();
        }
        self.queue.push((number, value));
    }
}

/// Standing time for the noise estimate: a small box for at least a minute.
pub fn rests(kept: &Kept, white_m: f64, least_s: f64) -> Vec<Rest> {
    within_box(kept, 0.25 + 9.0 * white_m, least_s)
}

/// Halts of at least `least_s`: stretches that stay within a box a little larger than the machine turns in.
pub fn long_halts(kept: &Kept, noise: &NoiseEstimate, least_s: f64) -> Vec<Halt> {
    const TURNING_ROOM_M: f64 = 1.0;
    let drift_m = (60.0 * noise.drift_rate_m2_per_s).sqrt();
    let side_m = TURNING_ROOM_M + 6.0 * noise.white_m + 3.0 * drift_m;
    let mut halts: Vec<(u32, Halt)> = within_box(kept, side_m, least_s)
        .into_iter()
        .map(|rest| {
            let rest = trimmed(kept, rest, noise);
            let halt = halt(kept, rest.first..rest.end, (rest.start_s, rest.end_s));
            (kept.run[rest.first], halt)
        })
        .filter(|(_, halt)| halt.end_s - halt.start_s >= least_s)
        .collect();
    // One stay that drift has broken in two: hardly any time in between, hardly any distance, and no silence.
    halts.dedup_by(|(later_run, later), (run, earlier)| {
        let one = later_run == run
            && later.start_s - earlier.end_s < 30.0
            && later.place.distance_m(earlier.place) < 0.5 * side_m;
        if one {
            let weight = (later.end_s - later.start_s) / (later.end_s - earlier.start_s).max(1e-9);
            earlier.place = earlier.place.towards(later.place, weight);
            earlier.radius_m = earlier.radius_m.max(later.radius_m);
            earlier.end_s = later.end_s;
        }
        one
    });
    halts.into_iter().map(|(_, halt)| halt).collect()
}

/// A halt from its fixes, of which there is at least one.
pub(crate) fn halt(kept: &Kept, fixes: std::ops::Range<usize>, (start_s, end_s): (f64, f64)) -> Halt {
    let place = middle(kept, fixes.clone());
    let mut off_m: Vec<f64> = fixes
        .clone()
        .map(|index| kept.place(index).distance_m(place))
        .collect();
    let most = (off_m.len() - 1) * 19 / 20;
    let radius_m = *off_m.select_nth_unstable_by(most, f64::total_cmp).1;
    let before = (kept.run[..fixes.start]
        .iter()
        .rposition(|run| *run != kept.run[fixes.start]))
    .map_or(0, |at| at + 1);
    let came_from = (before..fixes.start)
        .rev()
        .find(|index| kept.place(*index).distance_m(place) > 1.0 + radius_m)
        .map(|index| kept.place(index));
    Halt {
        place,
        start_s,
        end_s,
        at: HaltPlace::Elsewhere,
        radius_m,
        came_from,
    }
}

/// Removes the drive in and the drive out: fixes at both ends that lie away from the middle of the stay.
fn trimmed(kept: &Kept, rest: Rest, noise: &NoiseEstimate) -> Rest {
    let place = middle(kept, rest.first..rest.end);
    let near = |index: usize| kept.place(index).distance_m(place) <= 0.35 + 3.0 * noise.white_m;
    let first = (rest.first..rest.end)
        .find(|index| near(*index))
        .unwrap_or(rest.first);
    let last = (rest.first..rest.end)
        .rev()
        .find(|index| near(*index))
        .unwrap_or(rest.end - 1);
    Rest::of(kept, first, last + 1)
}

/// Median place of several fixes, which the drive in and out does not pull.
fn middle(kept: &Kept, fixes: std::ops::Range<usize>) -> Place {
    let mut east_m = kept.east_m[fixes.clone()].to_vec();
    let mut north_m = kept.north_m[fixes].to_vec();
    let half = east_m.len() / 2;
    east_m.select_nth_unstable_by(half, f64::total_cmp);
    north_m.select_nth_unstable_by(half, f64::total_cmp);
    Place::new(east_m[half], north_m[half])
}

/// A stay this long may be charging.
const LEAST_STATION_S: f64 = 120.0;
/// Without a plan, rests of at least this length that recur show a station.
const LEAST_UNPLANNED_STATION_S: f64 = 600.0;

/// While its receiver jumps, a machine drives no farther than this.
const DRIVEN_IN_STEP_M: f64 = 1.0;

/// Whether a halt is near a station, as logged or with the jumps before or after it undone.
fn is_near(halt: &Halt, station: Place, reach_m: f64, steps: &[Step]) -> bool {
    let moved = |is_in_force: &dyn Fn(&Step) -> bool, sign: f64| {
        let mut place = halt.place;
        for step in steps.iter().filter(|step| is_in_force(step)) {
            place.east_m += sign * step.east_m;
            place.north_m += sign * step.north_m;
        }
        place.distance_m(station)
    };
    let is_before = |step: &Step| step.time_s <= halt.start_s;
    let is_after = |step: &Step| !is_before(step);
    let taken_back_m = moved(&is_before, -1.0).min(moved(&is_after, 1.0));
    halt.place.distance_m(station) <= reach_m
        || (!steps.is_empty() && taken_back_m <= reach_m + DRIVEN_IN_STEP_M)
}

/// Separates halts at the station from halts elsewhere; counts outings.
///
/// With a station in the plan: halts of two minutes and more within reach of it. Without one, a station is assumed only if
/// rests of ten minutes and more recur at one place. If the receiver jumped and stayed there, the station is also where the
/// jump moved it to.
pub fn at_station(
    mut halts: Vec<Halt>,
    planned: Option<Place>,
    noise: &NoiseEstimate,
    kept: &Kept,
    steps: &[Step],
) -> (Vec<Halt>, Option<Place>, Option<usize>) {
    let spread_m = math::hypot(
        noise.white_m,
        noise
            .drift_m
            .unwrap_or_else(|| (600.0 * noise.drift_rate_m2_per_s).sqrt()),
    );
    let reach_m = 1.0 + 3.0 * spread_m;
    let station = planned.or_else(|| {
        let long: Vec<&Halt> = halts
            .iter()
            .filter(|halt| halt.end_s - halt.start_s >= LEAST_UNPLANNED_STATION_S)
            .collect();
        let alike = |halt: &Halt| {
            long.iter()
                .filter(|other| other.place.distance_m(halt.place) <= reach_m)
                .count()
        };
        let total_s = |halt: &Halt| -> f64 {
            long.iter()
                .filter(|other| other.place.distance_m(halt.place) <= reach_m)
                .map(|other| other.end_s - other.start_s)
                .sum()
        };
        long.iter()
            .filter(|halt| alike(halt) >= 2)
            .max_by(|a, b| total_s(a).total_cmp(&total_s(b)))
            .map(|halt| halt.place)
    });
    let Some(station) = station else {
        return (halts, None, None);
    };
    for halt in &mut halts {
        let stayed_s = halt.end_s - halt.start_s;
        if stayed_s >= LEAST_STATION_S && is_near(halt, station, reach_m, steps) {
            halt.at = HaltPlace::Station;
        }
    }
    // An outing is driving between two stays at the station, or before the first or after the last one.
    let stays: Vec<(f64, f64)> = halts
        .iter()
        .filter(|halt| halt.at == HaltPlace::Station)
        .map(|halt| (halt.start_s, halt.end_s))
        .collect();
    let (Some(first_s), Some(last_s)) = (kept.time_s.first(), kept.time_s.last()) else {
        return (halts, Some(station), Some(0));
    };
    let mut outings = 0;
    let mut since_s = *first_s;
    for (start_s, end_s) in stays.iter().copied().chain([(*last_s, *last_s)]) {
        outings += usize::from(start_s - since_s > 60.0);
        since_s = end_s;
    }
    (halts, Some(station), Some(outings))
}
