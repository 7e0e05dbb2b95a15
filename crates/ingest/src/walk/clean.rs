//! Cleans a walk: removes the receiver's spikes, merges waits into the corners that they mark, and smooths noise.
//!
//! All lengths are judged against the walk itself: its usual step, its own noise. Tracks with few positions are drawings,
//! not recordings, and stay as they are; so does everything that a good receiver wrote.

use super::place::{LocalScale, SAME_M, WalkedPlace};
use tussock_types::math::{self, median, quantile};
use tussock_types::{GeoPoint, Place};

/// With fewer positions a track was drawn, corner by corner.
const RECORDED: usize = 20;
/// Without times, noise is smoothed only in tracks with more positions than anybody draws.
const SURELY_RECORDED: usize = 60;
/// A spike lasts for at most this many fixes.
const SPIKE_FIXES: usize = 5;
/// A spike goes out by this many of the longest usual steps, and by at least a metre.
const SPIKE_STEPS: f64 = 2.0;
const SPIKE_M: f64 = 1.0;
/// The pace is read from chords over this many steps, which noise hardly lengthens.
const CHORD_STEPS: usize = 8;
/// Slower is standing.
const STANDING_MPS: f64 = 0.1;
/// Anyone who stops for this long means the corner.
const WAIT_S: f64 = 5.0;
/// Without times: this many fixes in one place.
const WAIT_FIXES: f64 = 10.0;
/// This many fixes in one place are a wait, whatever their times are.
const SURELY_WAITED: usize = 1_000;
/// And this many times as long as walking across takes.
const WAIT_RATIO: f64 = 2.5;
/// Standing fixes lie within this many times the noise, between these limits.
const WAIT_PER_NOISE: f64 = 2.5;
const LEAST_WAIT_M: f64 = 0.75;
const MOST_WAIT_M: f64 = 4.0;
/// And within this fraction of the walk, so that a small flower bed is not a wait.
const PART_OF_WALK: f64 = 0.05;
/// Less noise than this, or than this fraction of a step, is left alone: the second differences of a curve look the same.
const LEAST_NOISE_M: f64 = 0.15;
const NOISE_PER_STEP: f64 = 0.2;
/// The fraction of the noise that smoothing leaves, provided that the walk is long enough.
pub(super) const LEFT_FRACTION: f64 = 0.3;
/// Longest stretch averaged on each side, as a fraction of the walk.
const EVENED_FRACTION: f64 = 1.0 / 30.0;
/// Most fixes averaged on each side.
const MOST_EVENED: f64 = 50.0;
/// Median length of the second difference of white noise, over its standard deviation per axis: sqrt(6) times that of
/// Rayleigh's law.
const SECOND_DIFFERENCE: f64 = 2.884;

/// A walk without the effects of the receiver and of pauses.
pub(super) struct Cleaned {
    pub(super) steps: Vec<WalkedPlace>,
    /// Positions that jumped away and back.
    pub(super) spikes: usize,
    /// Places at which the walker stood.
    pub(super) waits: usize,
    /// White noise that was smoothed, standard deviation per axis; 0 if it does not matter.
    pub(super) noise_m: f64,
}

#[derive(Clone, Copy)]
struct TimedPlace {
    place: Place,
    /// NaN if the file has none.
    time_s: f64,
    is_corner: bool,
}

/// What a walk is judged against.
struct WalkPace {
    /// Distance covered from fix to fix.
    step_m: f64,
    /// The same as a walking speed; NaN without times.
    speed_mps: f64,
    noise_m: f64,
    length_m: f64,
}

pub(super) fn cleaned(points: &[GeoPoint], times_s: &[f64]) -> Cleaned {
    let scale = LocalScale::at(points.first().copied().unwrap_or_default());
    let timed = points.iter().zip(times_s).map(|(point, time_s)| TimedPlace {
        place: scale.place(*point),
        time_s: *time_s,
        is_corner: false,
    });
    let fixes: Vec<TimedPlace> = timed.collect();
    if fixes.len() < RECORDED {
        let steps = points.iter().zip(&fixes).map(|(point, fix)| step(*point, fix));
        return uncleaned(steps.collect());
    }
    let read = fixes.len();
    let mut fixes = without_spikes(fixes);
    let spikes = read - fixes.len();
    let pace = WalkPace::of(&fixes);
    let waits = draw_waits_together(&mut fixes, &pace);
    let is_recorded = pace.speed_mps.is_finite() || read >= SURELY_RECORDED;
    let is_noisy = is_recorded && pace.noise_m > LEAST_NOISE_M && pace.noise_m > NOISE_PER_STEP * pace.step_m;
    if is_noisy {
        even_out(&mut fixes, &pace);
    }
    let noise_m = if is_noisy { pace.noise_m } else { 0.0 };
    let steps = fixes.iter().map(|fix| step(scale.point(fix.place), fix));
    Cleaned {
        spikes,
        waits,
        noise_m,
        ..uncleaned(steps.collect())
    }
}

fn step(point: GeoPoint, fix: &TimedPlace) -> WalkedPlace {
    WalkedPlace {
        point,
        place: fix.place,
        is_corner: fix.is_corner,
    }
}

fn uncleaned(mut steps: Vec<WalkedPlace>) -> Cleaned {
    steps.dedup_by(|later, kept| {
        let is_same = later.place.distance_m(kept.place) < SAME_M;
        kept.is_corner |= is_same && later.is_corner;
        is_same
    });
    Cleaned {
        steps,
        spikes: 0,
        waits: 0,
        noise_m: 0.0,
    }
}

/// Lengths of all non-zero steps, in order of the walk.
fn lengths_m(fixes: &[TimedPlace]) -> Vec<f64> {
    let lengths = fixes
        .windows(2)
        .map(|pair| pair[0].place.distance_m(pair[1].place));
    lengths.filter(|length_m| *length_m > SAME_M).collect()
}

/// Drops fixes that lie away from those before and after, if these lie beside each other.
fn without_spikes(fixes: Vec<TimedPlace>) -> Vec<TimedPlace> {
    let mut lengths_m = lengths_m(&fixes);
    lengths_m.sort_by(f64::total_cmp);
    let long_m = quantile(&lengths_m, 0.9).unwrap_or(0.0);
    let jump_m = (SPIKE_STEPS * long_m).max(SPIKE_M);
    let is_spike = |first: usize, last: usize| {
        let between_m = |a: usize, b: usize| fixes[a].place.distance_m(fixes[b].place);
        let (out_m, back_m) = (between_m(first, first + 1), between_m(last - 1, last));
        let direct_m = between_m(first, last);
        out_m > jump_m
            && back_m > jump_m
            && direct_m < long_m * (last - first) as f64
            && direct_m < 0.5 * (out_m + back_m)
    };
    let mut kept = Vec::with_capacity(fixes.len());
    let mut at = 0;
    while at < fixes.len() {
        kept.push(fixes[at]);
        let mut ends = (at + 2..fixes.len()).take(SPIKE_FIXES);
        at = ends.find(|&end| is_spike(at, end)).unwrap_or(at + 1);
    }
    kept
}

impl WalkPace {
    fn of(fixes: &[TimedPlace]) -> Self {
        let chord = |ends: &[TimedPlace]| {
            let (first, last) = (ends[0], ends[ends.len() - 1]);
            (first.place.distance_m(last.place), last.time_s - first.time_s)
        };
        let chords: Vec<(f64, f64)> = fixes.windows(CHORD_STEPS + 1).map(chord).collect();
        let moving = chords
            .iter()
            .filter(|(length_m, _)| *length_m > CHORD_STEPS as f64 * SAME_M);
        let mut steps_m: Vec<f64> = moving
            .map(|(length_m, _)| length_m / CHORD_STEPS as f64)
            .collect();
        let speeds_mps = chords.iter().map(|(length_m, seconds)| length_m / seconds);
        let mut speeds_mps: Vec<f64> = speeds_mps
            .filter(|mps| mps.is_finite() && *mps > STANDING_MPS)
            .collect();
        let bends_m = fixes.windows(3).map(|three| {
            let [a, b, c] = [three[0].place, three[1].place, three[2].place];
            math::hypot(
                a.east_m - 2.0 * b.east_m + c.east_m,
                a.north_m - 2.0 * b.north_m + c.north_m,
            )
        });
        let mut bends_m: Vec<f64> = bends_m.collect();
        Self {
            step_m: median(&mut steps_m).unwrap_or(0.0),
            speed_mps: median(&mut speeds_mps).unwrap_or(f64::NAN),
            noise_m: median(&mut bends_m).unwrap_or(0.0) / SECOND_DIFFERENCE,
            length_m: lengths_m(fixes).iter().sum(),
        }
    }
}

/// Replaces the fixes of each wait by one corner, their middle; returns the number of waits.
fn draw_waits_together(fixes: &mut Vec<TimedPlace>, pace: &WalkPace) -> usize {
    let wait_m = (WAIT_PER_NOISE * pace.noise_m)
        .clamp(LEAST_WAIT_M, MOST_WAIT_M)
        .min(PART_OF_WALK * pace.length_m);
    let least_s = WAIT_S.max(WAIT_RATIO * 2.0 * wait_m / pace.speed_mps);
    let least_fixes = WAIT_FIXES.max(WAIT_RATIO * 2.0 * wait_m / pace.step_m.max(SAME_M));
    let is_wait = |first: usize, end: usize| {
        let seconds = fixes[end - 1].time_s - fixes[first].time_s;
        let is_long = match seconds.is_finite() && pace.speed_mps.is_finite() {
            true => end - first > 1 && seconds >= least_s,
            false => (end - first) as f64 >= least_fixes,
        };
        is_long || end - first >= SURELY_WAITED
    };
    let mut kept: Vec<TimedPlace> = Vec::with_capacity(fixes.len());
    let mut last: Option<Wait> = None;
    let (mut at, mut waits) = (0, 0);
    while at < fixes.len() {
        let end = end_of_box(fixes, at, 2.0 * wait_m);
        if !is_wait(at, end) {
            kept.push(fixes[at]);
            at += 1;
            continue;
        }
        let here = Wait {
            end,
            kept: kept.len(),
            middle: middle(&fixes[at..end]),
            fixes: end - at,
        };
        // A drifting receiver, or one stray fix, does not make two waits of one.
        let before =
            last.filter(|last| at - last.end <= 3 && last.middle.distance_m(here.middle) < 3.0 * wait_m);
        let wait = before.map_or(here, |before| before.and(here));
        waits += usize::from(before.is_none());
        kept.truncate(wait.kept);
        kept.push(TimedPlace {
            place: wait.middle,
            is_corner: true,
            ..fixes[at]
        });
        last = Some(wait);
        at = end;
    }
    *fixes = kept;
    waits
}

#[derive(Clone, Copy)]
struct Wait {
    /// The first fix after it.
    end: usize,
    /// Fixes that were kept before it.
    kept: usize,
    middle: Place,
    fixes: usize,
}

impl Wait {
    /// This one, continued by another.
    fn and(self, next: Self) -> Self {
        let fixes = self.fixes + next.fixes;
        let share = next.fixes as f64 / fixes as f64;
        let mean = |a: f64, b: f64| a + share * (b - a);
        Self {
            end: next.end,
            kept: self.kept,
            middle: Place::new(
                mean(self.middle.east_m, next.middle.east_m),
                mean(self.middle.north_m, next.middle.north_m),
            ),
            fixes,
        }
    }
}

/// The first fix after `first` that does not fit into a box of this side with all fixes from `first` on.
fn end_of_box(fixes: &[TimedPlace], first: usize, side_m: f64) -> usize {
    let (mut low, mut high) = (fixes[first].place, fixes[first].place);
    let inside = fixes[first..].iter().take_while(|fix| {
        low = Place::new(
            low.east_m.min(fix.place.east_m),
            low.north_m.min(fix.place.north_m),
        );
        high = Place::new(
            high.east_m.max(fix.place.east_m),
            high.north_m.max(fix.place.north_m),
        );
        (high.east_m - low.east_m).max(high.north_m - low.north_m) <= side_m
    });
    first + inside.count().max(1)
}

/// Median of each coordinate, which a stray fix does not move.
fn middle(fixes: &[TimedPlace]) -> Place {
    let of = |coordinate: fn(&TimedPlace) -> f64| {
        let mut values: Vec<f64> = fixes.iter().map(coordinate).collect();
        median(&mut values).unwrap_or(0.0)
    };
    Place::new(of(|fix| fix.place.east_m), of(|fix| fix.place.north_m))
}

/// Puts each fix at the mean of as many before as after it, fewer beside a corner and at the ends.
fn even_out(fixes: &mut [TimedPlace], pace: &WalkPace) {
    let step_m = pace.step_m.max(SAME_M);
    let wanted = (pace.noise_m / (LEFT_FRACTION * step_m)).ceil().min(MOST_EVENED);
    let most = wanted.min((EVENED_FRACTION * pace.length_m / step_m).floor()) as usize;
    let raw: Vec<TimedPlace> = fixes.to_vec();
    let last = raw.len() - 1;
    let is_end = |at: usize| at == 0 || at == last || raw[at].is_corner;
    for at in 0..raw.len() {
        let mut half = 0;
        while half < most && !is_end(at - half) && !is_end(at + half) {
            half += 1;
        }
        let near = &raw[at - half..=at + half];
        let mean =
            |coordinate: fn(&TimedPlace) -> f64| near.iter().map(coordinate).sum::<f64>() / near.len() as f64;
        fixes[at].place = Place::new(mean(|fix| fix.place.east_m), mean(|fix| fix.place.north_m));
    }
}
