//! What did the machine do in every second?
//!
//! Question: how long did it drive, turn, back off, follow a line, stand, charge, get carried, stay silent? The spells of a
//! track tile its span: no gaps, no overlaps, and their lengths add up to it.
//!
//! Method. Silences and carried stretches are known from the fixes. The rest is drives from corner to corner and stands
//! between them. A stand of a few seconds between two drives is a turn. A short drive straight back along the way that the
//! machine came is reversing: the body does not turn for it. Drives out of the station, or home to it, that follow a guide
//! run or the boundary without interruption are transit.
//!
//! Exact: the times, as far as corners are exact in time. Approximate: transit is recognised by nearness alone, so a drive
//! that happens to start along a guide run counts as transit; if positions are poorer than the corridor is wide, no transit
//! is reported. A machine that drives to and fro on one spot is driving here, and a stuck spot in the diagnosis.
//!
//! Cost: linear in corners, times the edges of the lines for drives next to the station.

use crate::{Halt, HaltPlace, Piece, Track, Vertex};
use tussock_plane::{Region, Vector};
use tussock_types::Place;
use tussock_types::math;

/// What a machine may be doing.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Activity {
    /// Standing at its station.
    AtStation,
    /// Driving around.
    Driving,
    /// Along a guide run or the boundary, out of the station or home.
    Transit,
    /// Turning between two drives, including the wait.
    Turning,
    /// Backing off before a turn; the body keeps its heading.
    Reversing,
    /// Standing anywhere else.
    Halted,
    /// Carried or pushed by somebody.
    Carried,
    /// No usable fix; nothing is claimed.
    Silent,
}

impl Activity {
    /// Whether the machine moves on its own wheels.
    pub const fn is_drive(self) -> bool {
        matches!(self, Self::Driving | Self::Transit | Self::Reversing)
    }
}

/// One activity without a break.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Spell {
    /// What it did.
    pub activity: Activity,
    /// From, seconds since 1970 in UTC.
    pub start_s: f64,
    /// Until.
    pub end_s: f64,
}

/// Lines that a machine can follow.
#[derive(Clone, Copy, Debug, Default)]
pub struct Lines<'a> {
    /// Guide runs from the station outwards.
    pub guides: &'a [&'a [Place]],
    /// The boundary; if none is drawn, the lawn.
    pub boundary: Option<&'a Region>,
}

/// A silence that may have been a stop: the machine reappeared where it fell silent.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PossibleStop {
    /// Between its two ends.
    pub place: Place,
    /// Last fix before.
    pub start_s: f64,
    /// First fix afterwards: the stop lasted at most until then.
    pub end_s: f64,
}

/// Longest stand between two drives that is a turn (common practice, no source).
const TURN_S: f64 = 10.0;
/// A machine backs off no farther than this (common practice, no source).
const MOST_REVERSE_M: f64 = 1.5;
/// Straight back: cosine of 25 degrees.
const BACKWARDS: f64 = 0.906;
/// A machine follows a line to within this, apart from the position error.
const KEEPS_TO_M: f64 = 0.4;
/// In wider corridors drives may stay by chance.
const WIDEST_CORRIDOR_M: f64 = 1.5;
/// A shorter way along a line may be chance.
const LEAST_TRANSIT_M: f64 = 5.0;
/// Within this distance of the station a machine manoeuvres.
const APRON_M: f64 = 3.0;

/// Width to either side of a line within which a drive follows it; `None` if positions are too poor.
fn corridor_m(track: &Track) -> Option<f64> {
    Some(KEEPS_TO_M + 3.0 * track.position_error_m()).filter(|corridor_m| *corridor_m <= WIDEST_CORRIDOR_M)
}

/// Whether transit can be distinguished from driving at all: a station, lines to follow, and positions that are good enough.
pub fn tells_transit(track: &Track, lines: Lines<'_>) -> bool {
    track.station.is_some()
        && (!lines.guides.is_empty() || lines.boundary.is_some())
        && corridor_m(track).is_some()
}

/// Every second of a track, in time order; empty for a track without fixes.
pub fn spells(track: &Track, lines: Lines<'_>) -> Vec<Spell> {
    let Some((first_s, last_s)) = track.read_s else {
        return Vec::new();
    };
    let known = |activity, start_s, end_s| Spell {
        activity,
        start_s,
        end_s,
    };
    let mut items: Vec<Spell> = Vec::new();
    items.extend(
        track
            .gaps
            .iter()
            .map(|gap| known(Activity::Silent, gap.start_s, gap.end_s)),
    );
    items.extend(
        track
            .carried
            .iter()
            .map(|one| known(Activity::Carried, one.start_s, one.end_s)),
    );
    if let Some((from_s, until_s)) = track.span_s {
        // The fixes before and after cannot be used.
        items.push(known(Activity::Silent, first_s, from_s));
        items.push(known(Activity::Silent, until_s, last_s));
    }
    let least_m = 0.05 + 3.0 * track.noise.white_m;
    for piece in &track.pieces {
        let mut before: Option<(Vertex, Vertex)> = None;
        for pair in piece.vertices.windows(2) {
            let leg = (pair[0], pair[1]);
            let activity = match before {
                Some(before) if backs_off(before, leg, least_m) => Activity::Reversing,
                _ => Activity::Driving,
            };
            items.push(known(activity, leg.0.leave_s, leg.1.arrive_s));
            before = Some(leg);
        }
    }
    for (start_s, end_s) in transits(track, lines) {
        for item in &mut items {
            if item.activity.is_drive() && item.start_s >= start_s && item.end_s <= end_s {
                item.activity = Activity::Transit;
            }
        }
    }
    items.sort_by(|a, b| a.start_s.total_cmp(&b.start_s));
    // Whatever lies in between is standing.
    let mut tiles: Vec<Spell> = Vec::new();
    let mut now_s = first_s;
    for item in items {
        let (start_s, end_s) = (item.start_s.clamp(now_s, last_s), item.end_s.min(last_s));
        append(&mut tiles, Activity::Halted, now_s, start_s);
        append(&mut tiles, item.activity, start_s, end_s);
        now_s = now_s.max(start_s).max(end_s);
    }
    append(&mut tiles, Activity::Halted, now_s, last_s);
    let tiles = with_station(&tiles, &track.halts);
    let mut done: Vec<Spell> = Vec::with_capacity(tiles.len());
    for (at, tile) in tiles.iter().enumerate() {
        let is_drive = |at: Option<usize>| {
            at.and_then(|at| tiles.get(at))
                .is_some_and(|tile| tile.activity.is_drive())
        };
        let is_turn = tile.activity == Activity::Halted
            && tile.end_s - tile.start_s <= TURN_S
            && is_drive(at.checked_sub(1))
            && is_drive(Some(at + 1));
        let activity = if is_turn { Activity::Turning } else { tile.activity };
        append(&mut done, activity, tile.start_s, tile.end_s);
    }
    done
}

/// Time spent on one activity.
pub fn time_s(spells: &[Spell], activity: Activity) -> f64 {
    let of = spells.iter().filter(|spell| spell.activity == activity);
    of.map(|spell| spell.end_s - spell.start_s).sum()
}

/// Adds a spell, extending the last one if both are alike; does nothing for an empty one.
fn append(tiles: &mut Vec<Spell>, activity: Activity, start_s: f64, end_s: f64) {
    if end_s <= start_s {
        return;
    }
    match tiles.last_mut() {
        Some(last) if last.activity == activity => last.end_s = end_s,
        _ => tiles.push(Spell {
            activity,
            start_s,
            end_s,
        }),
    }
}

/// Places the stays at the station over everything except silence and carrying.
fn with_station(tiles: &[Spell], halts: &[Halt]) -> Vec<Spell> {
    let mut laid: Vec<Spell> = Vec::with_capacity(tiles.len());
    let mut first = 0;
    let stays: Vec<&Halt> = halts
        .iter()
        .filter(|halt| halt.at == HaltPlace::Station)
        .collect();
    for tile in tiles {
        if matches!(tile.activity, Activity::Silent | Activity::Carried) {
            append(&mut laid, tile.activity, tile.start_s, tile.end_s);
            continue;
        }
        let mut now_s = tile.start_s;
        while stays.get(first).is_some_and(|stay| stay.end_s <= tile.start_s) {
            first += 1;
        }
        for stay in stays[first..].iter().take_while(|stay| stay.start_s < tile.end_s) {
            let (start_s, end_s) = (
                stay.start_s.clamp(now_s, tile.end_s),
                stay.end_s.clamp(now_s, tile.end_s),
            );
            append(&mut laid, tile.activity, now_s, start_s);
            append(&mut laid, Activity::AtStation, start_s, end_s);
            now_s = end_s;
        }
        append(&mut laid, tile.activity, now_s, tile.end_s);
    }
    laid
}

/// Whether a drive goes straight back along the one before it, a little but at least `least_m`: reversing, with the body
/// keeping its heading.
pub fn backs_off(before: (Vertex, Vertex), leg: (Vertex, Vertex), least_m: f64) -> bool {
    let way = |leg: (Vertex, Vertex)| Vector::between(leg.0.place, leg.1.place);
    let (came, goes) = (way(before), way(leg));
    let (came_m, goes_m) = (
        math::hypot(came.east, came.north),
        math::hypot(goes.east, goes.north),
    );
    let dot_m2 = came.dot(goes);
    (least_m..=MOST_REVERSE_M).contains(&goes_m)
        && came_m >= 1.5 * goes_m
        && dot_m2 <= -BACKWARDS * came_m * goes_m
}

/// Times of the drives out of the station, and home to it, that follow one line.
pub fn transits(track: &Track, lines: Lines<'_>) -> Vec<(f64, f64)> {
    let (Some(station), Some(corridor_m)) = (track.station, corridor_m(track)) else {
        return Vec::new();
    };
    if !tells_transit(track, lines) {
        return Vec::new();
    }
    let least_m = LEAST_TRANSIT_M.max(8.0 * corridor_m - 8.0 * KEEPS_TO_M);
    let keeps = |line: &[(Place, Place)], from: Place, to: Place| {
        const STEP_M: f64 = 0.25;
        let steps = (from.distance_m(to) / STEP_M).ceil().max(1.0) as usize;
        (0..=steps).all(|step| {
            let share = step as f64 / steps as f64;
            let place = from.towards(to, share);
            place.distance_m(station) <= APRON_M
                || line.iter().any(|(a, b)| place.off_piece_m(*a, *b) <= corridor_m)
        })
    };
    let mut followed: Vec<Vec<(Place, Place)>> = lines
        .guides
        .iter()
        .map(|guide| guide.windows(2).map(|pair| (pair[0], pair[1])).collect())
        .collect();
    followed.extend(lines.boundary.map(|boundary| boundary.edges().collect()));
    // One chain of drives, nearest to the station first: how far does it follow one line?
    let chain = |legs: &mut dyn Iterator<Item = (Vertex, Vertex)>| -> Option<(f64, f64)> {
        let legs: Vec<(Vertex, Vertex)> = legs.collect();
        followed
            .iter()
            .filter_map(|line| {
                let along: Vec<&(Vertex, Vertex)> = legs
                    .iter()
                    .take_while(|(from, to)| keeps(line, from.place, to.place))
                    .collect();
                let away_m: f64 = along
                    .iter()
                    .filter(|(from, to)| {
                        from.place.distance_m(station).max(to.place.distance_m(station)) > APRON_M
                    })
                    .map(|(from, to)| from.place.distance_m(to.place))
                    .sum();
                let start_s = along.iter().map(|(from, _)| from.leave_s).reduce(f64::min)?;
                let end_s = along.iter().map(|(_, to)| to.arrive_s).reduce(f64::max)?;
                (away_m > least_m).then_some((away_m, start_s, end_s))
            })
            .max_by(|a, b| a.0.total_cmp(&b.0))
            .map(|(_, start_s, end_s)| (start_s, end_s))
    };
    let mut found = Vec::new();
    for stay in track.halts.iter().filter(|halt| halt.at == HaltPlace::Station) {
        let next_s = track
            .halts
            .iter()
            .filter(|halt| halt.at == HaltPlace::Station && halt.start_s >= stay.end_s)
            .map(|halt| halt.start_s)
            .fold(f64::INFINITY, f64::min);
        let last_s = track
            .halts
            .iter()
            .filter(|halt| halt.at == HaltPlace::Station && halt.end_s <= stay.start_s)
            .map(|halt| halt.end_s)
            .fold(f64::NEG_INFINITY, f64::max);
        let middle_s = 0.5 * (stay.start_s + stay.end_s);
        if let Some(piece) = holding(&track.pieces, middle_s) {
            let pairs = || piece.vertices.windows(2).map(|pair| (pair[0], pair[1]));
            found.extend(chain(&mut pairs().filter(|(from, to)| {
                from.leave_s >= stay.end_s - 1.0 && to.arrive_s <= next_s + 1.0
            })));
            found.extend(chain(&mut pairs().rev().filter(|(from, to)| {
                to.arrive_s <= stay.start_s + 1.0 && from.leave_s >= last_s - 1.0
            })));
        }
    }
    found
}

/// The piece that contains a time.
fn holding(pieces: &[Piece], time_s: f64) -> Option<&Piece> {
    pieces
        .iter()
        .find(|piece| match (piece.vertices.first(), piece.vertices.last()) {
            (Some(first), Some(last)) => (first.arrive_s..=last.leave_s).contains(&time_s),
            _ => false,
        })
}

/// What is left of pieces when some times are cut out: for a machine that does not cut while it follows a line.
pub fn without(pieces: &[Piece], spans_s: &[(f64, f64)]) -> Vec<Piece> {
    let is_out = |from: &Vertex, to: &Vertex| {
        spans_s
            .iter()
            .any(|(start_s, end_s)| from.leave_s >= start_s - 1e-6 && to.arrive_s <= end_s + 1e-6)
    };
    let mut left: Vec<Piece> = Vec::new();
    for piece in pieces {
        let mut open = Piece::default();
        for (at, vertex) in piece.vertices.iter().enumerate() {
            if at > 0 && is_out(&piece.vertices[at - 1], vertex) {
                left.extend(Some(std::mem::take(&mut open)).filter(|piece| piece.vertices.len() > 1));
            }
            open.vertices.push(*vertex);
        }
        left.extend(Some(open).filter(|open| open.vertices.len() > 1 || piece.vertices.len() == 1));
    }
    left
}

/// Silences away from the station whose two ends are at the same place, in time order.
pub fn possible_stops(track: &Track) -> Vec<PossibleStop> {
    let sd_m = math::hypot(track.noise.white_m, track.noise.drift_m.unwrap_or(0.0));
    let reach_m = 0.5 + 3.0 * 2.0_f64.sqrt() * sd_m;
    let at = |time_s: f64| {
        track
            .kept
            .time_s
            .binary_search_by(|other_s| other_s.total_cmp(&time_s))
            .ok()
    };
    track
        .gaps
        .iter()
        .filter(|gap| gap.moved_m <= reach_m)
        .filter_map(|gap| {
            let (from, to) = (
                track.kept.place(at(gap.start_s)?),
                track.kept.place(at(gap.end_s)?),
            );
            let place = from.middle(to);
            Some(PossibleStop {
                place,
                start_s: gap.start_s,
                end_s: gap.end_s,
            })
        })
        .filter(|stop| {
            track
                .station
                .is_none_or(|station| stop.place.distance_m(station) > 1.0 + reach_m)
        })
        .collect()
}
