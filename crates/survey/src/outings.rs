//! How does the machine go out and come home?
//!
//! Question: how long are its outings, where does free driving begin, along what does it come home, and how long does each
//! way take? And when was it outside the ground that it may drive on?
//!
//! Method. Stays at the station divide the log into outings. A drive out of the station or home that follows a guide run or
//! the boundary is transit ([`tussock_locate::activities::transits`]); if both are possible, the nearer line was followed.
//! Positions outside the outline by more than the position error explains are strays.
//!
//! Exact, given the path. If positions cannot show transit, ways home are not given.

use tussock_locate::activities::{self, Lines};
use tussock_locate::{HaltPlace, Piece, Track};
use tussock_plane::Region;
use tussock_types::{HomeAlong, Place};

/// One trip from the station.
#[derive(Clone, Debug, PartialEq)]
pub struct Outing {
    /// Leaves the station.
    pub start_s: f64,
    /// When it is back; the end of the log if it is not.
    pub end_s: f64,
    /// Whether it came back within the log.
    pub is_back: bool,
    /// Where free driving began.
    pub free_from: Option<Place>,
    /// When free driving began.
    pub free_from_s: f64,
    /// Whether it left along a guide run.
    pub along_guide: bool,
    /// Along what it came home, and how long that took; `None` if it did not, or if positions cannot show it.
    pub home: Option<(HomeAlong, f64)>,
}

/// Shorter trips are manoeuvring.
const LEAST_OUT_S: f64 = 60.0;

/// Outings of a track in time order; empty if no station is known.
pub fn outings(track: &Track, lines: Lines<'_>) -> Vec<Outing> {
    let Some((_, log_end_s)) = track.span_s else {
        return Vec::new();
    };
    let stays: Vec<_> = track
        .halts
        .iter()
        .filter(|halt| halt.at == HaltPlace::Station)
        .collect();
    let tells = activities::tells_transit(track, lines);
    let transits = activities::transits(track, lines);
    let mut found = Vec::new();
    for (at, stay) in stays.iter().enumerate() {
        let next = stays.get(at + 1);
        let (start_s, end_s) = (stay.end_s, next.map_or(log_end_s, |next| next.start_s));
        if end_s - start_s < LEAST_OUT_S {
            continue;
        }
        let within = |one: &&(f64, f64)| one.0 >= start_s - 2.0 && one.1 <= end_s + 2.0;
        let out = transits.iter().filter(within).find(|one| one.0 - start_s < 30.0);
        let home = transits
            .iter()
            .filter(within)
            .filter(|one| Some(*one) != out)
            .rfind(|one| end_s - one.1 < 60.0);
        let free_from_s = out.map_or(start_s, |one| one.1);
        found.push(Outing {
            start_s,
            end_s,
            is_back: next.is_some(),
            free_from: place_at(&track.pieces, free_from_s),
            free_from_s,
            along_guide: out.is_some_and(|one| along(track, *one, lines) == HomeAlong::GuideRun),
            home: (tells && next.is_some()).then(|| match home {
                Some(one) => (along(track, *one, lines), one.1 - one.0),
                None => (HomeAlong::Straight, last_leg_s(track, end_s)),
            }),
        });
    }
    found
}

/// Duration of the drive that ended at this time.
fn last_leg_s(track: &Track, end_s: f64) -> f64 {
    track
        .legs()
        .filter(|(_, to)| (to.arrive_s - end_s).abs() < 5.0)
        .map(|(from, to)| to.arrive_s - from.leave_s)
        .fold(0.0, f64::max)
}

/// Which line a transit followed.
fn along(track: &Track, span_s: (f64, f64), lines: Lines<'_>) -> HomeAlong {
    let places: Vec<Place> = track
        .pieces
        .iter()
        .flat_map(|piece| &piece.vertices)
        .filter(|vertex| vertex.arrive_s >= span_s.0 - 1.0 && vertex.arrive_s <= span_s.1 + 1.0)
        .map(|vertex| vertex.place)
        .collect();
    let guide_m = |place: &Place| {
        lines
            .guides
            .iter()
            .flat_map(|guide| guide.windows(2))
            .map(|pair| place.off_piece_m(pair[0], pair[1]))
            .fold(f64::INFINITY, f64::min)
    };
    let edge_m = |place: &Place| {
        lines
            .boundary
            .map_or(f64::INFINITY, |boundary| boundary.edge_distance_m(*place))
    };
    let mean = |off_m: &dyn Fn(&Place) -> f64| {
        places.iter().map(off_m).sum::<f64>() / (places.len() as f64).max(1.0)
    };
    if mean(&guide_m) <= mean(&edge_m) && !lines.guides.is_empty() {
        HomeAlong::GuideRun
    } else {
        HomeAlong::Boundary
    }
}

/// Place on the path at a time; `None` in a silence.
pub fn place_at(pieces: &[Piece], time_s: f64) -> Option<Place> {
    let piece = pieces.iter().find(|piece| {
        piece
            .vertices
            .first()
            .is_some_and(|first| first.arrive_s <= time_s + 1e-6)
            && piece
                .vertices
                .last()
                .is_some_and(|last| last.leave_s >= time_s - 1e-6)
    })?;
    let after = piece.vertices.partition_point(|vertex| vertex.arrive_s <= time_s);
    let from = piece.vertices.get(after.checked_sub(1)?)?;
    let Some(to) = piece.vertices.get(after).filter(|_| time_s > from.leave_s) else {
        return Some(from.place);
    };
    let share = ((time_s - from.leave_s) / (to.arrive_s - from.leave_s).max(1e-9)).clamp(0.0, 1.0);
    Some(from.place.towards(to.place, share))
}

/// Time outside the outline.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Stray {
    /// From.
    pub start_s: f64,
    /// Until.
    pub end_s: f64,
    /// How far out.
    pub farthest_m: f64,
    /// Where that was.
    pub place: Place,
    /// Whether it came back by itself.
    pub came_back: bool,
}

/// Shorter ones are corners that the path cuts.
const LEAST_STRAY_S: f64 = 5.0;
/// A machine may lean over the edge by this much (common practice, no source).
const LEAN_M: f64 = 0.3;
/// Near the station and guide runs it may be anywhere.
const ALLOWED_M: f64 = 2.5;

/// Times outside the outline by more than `error_m` explains, longest first. `past_m` is how far the machine turns past the
/// edge.
pub fn strays(track: &Track, outline: &Region, guides: &[&[Place]], past_m: f64, error_m: f64) -> Vec<Stray> {
    const STEP_S: f64 = 1.0;
    let margin_m = LEAN_M + past_m.max(0.0) + 3.0 * error_m;
    let is_allowed = |place: Place| {
        track
            .station
            .is_some_and(|station| station.distance_m(place) <= ALLOWED_M)
            || guides
                .iter()
                .flat_map(|guide| guide.windows(2))
                .any(|pair| place.off_piece_m(pair[0], pair[1]) <= ALLOWED_M)
    };
    let mut found = Vec::new();
    for piece in &track.pieces {
        let mut open: Option<Stray> = None;
        let mut close = |open: &mut Option<Stray>, came_back: bool| {
            found.extend(
                open.take()
                    .filter(|stray| stray.end_s - stray.start_s >= LEAST_STRAY_S)
                    .map(|stray| Stray { came_back, ..stray }),
            );
        };
        for pair in piece.vertices.windows(2) {
            let (from, to) = (pair[0], pair[1]);
            // Legs whose ends both lie well inside convex surroundings need no steps.
            let steps = ((to.arrive_s - from.arrive_s) / STEP_S).ceil().max(1.0);
            for step in 0..steps as usize {
                let time_s = from.arrive_s + (to.arrive_s - from.arrive_s) * step as f64 / steps;
                let share =
                    ((time_s - from.leave_s) / (to.arrive_s - from.leave_s).max(1e-9)).clamp(0.0, 1.0);
                let place = from.place.towards(to.place, share);
                let out_m = if outline.contains(place) {
                    0.0
                } else {
                    outline.edge_distance_m(place)
                };
                if out_m > margin_m && !is_allowed(place) {
                    let stray = open.get_or_insert(Stray {
                        start_s: time_s,
                        end_s: time_s,
                        farthest_m: 0.0,
                        place,
                        came_back: false,
                    });
                    stray.end_s = time_s;
                    if out_m > stray.farthest_m {
                        (stray.farthest_m, stray.place) = (out_m, place);
                    }
                } else if out_m == 0.0 {
                    close(&mut open, true);
                }
            }
        }
        close(&mut open, false);
    }
    found.sort_by(|a, b| (b.end_s - b.start_s).total_cmp(&(a.end_s - a.start_s)));
    found
}
