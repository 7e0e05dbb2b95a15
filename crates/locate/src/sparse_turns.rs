//! Puts turns between sparse fixes back where they were.
//!
//! Question: between two fixes 5 to 30 s apart a straight chord cuts off the corner that the machine drove into; which way
//! did it really take?
//!
//! ```text
//!        E                a fix at A and one at B, the chord shorter than speed times time: the machine turned at a
//!  _____/\_____ line      place E of the line with |AE| + |EB| = speed x (time - wait), with the heading that it had
//!      /  \               at A and the one that it has at B
//!     A    B
//! ```
//!
//! Method. A hidden Markov model over fixes: the state is the heading (or a turn under way). The ways between two fixes are
//! straight, one to three turns at the line, hops from lane to lane, following the line, a turn away from it, and the plain
//! chord, each weighted by the density with which it leads to the next fix. The likeliest chain of ways is found by dynamic
//! programming over the likeliest states of each fix (Viterbi 1967, pruned to a beam as in Lowerre 1976). Speed, wait and
//! inset of the line are read from the log itself ([`estimate`]): straight intervals share one speed, and where two of them
//! enclose an interval, their lines meet at the turn.
//!
//! Exact: the geometry of each way. Approximate: the beam, and ways of four turns and more, which stay chords. Known limits:
//! if position and plan disagree by more than a swath, the places of turns are no better than that.
//!
//! Cost: fixes times beam times edges nearby; a night with a fix every 20 s takes a few tens of milliseconds.

mod estimated;
mod outline;
#[cfg(test)]
mod outline_tests;
mod turns;
mod ways;

pub use estimated::{Rebuild, estimate, white_m};
pub use outline::Outline;

use crate::{Halt, Kept, Piece, Vertex};
use std::ops::Range;
use tussock_plane::Vector;
use tussock_types::Place;
use tussock_types::math;
use ways::{Interval, State, Way, Ways};

/// States kept at each fix.
const BEAM: usize = 12;
/// Headings closer than this count as one state.
const ALIKE_RAD: f64 = 0.015;

/// A state that was reached, and the way to it.
struct Node {
    before: usize,
    way: Option<Way>,
    state: State,
}

/// The likeliest way through the fixes of a run; long halts are corners. Vertices get their times from the way.
pub fn rebuild(kept: &Kept, run: Range<usize>, outline: &Outline, halts: &[Halt], how: &Rebuild) -> Piece {
    let mut piece = Piece::default();
    let standing: Vec<Halt> = halts
        .iter()
        .copied()
        .filter(|halt| stands(kept, run.clone(), halt, how))
        .collect();
    let stops = stops(kept, run, &standing);
    let mut nodes: Vec<Node> = Vec::new();
    let mut open: Vec<usize> = Vec::new();
    let mut first = 0;
    // A long halt forgets the heading, so stretches between halts are searched separately.
    while first < stops.len() {
        let mut last = first + 1;
        while last < stops.len() && !stops[last].is_halt {
            last += 1;
        }
        // Up to and including the next halt, where the next stretch begins.
        let end = last.min(stops.len() - 1);
        search(&stops[first..=end], outline, how, BEAM, &mut nodes, &mut open);
        write(&stops[first..=end], &nodes, &open, how, &mut piece);
        first = last;
    }
    piece
}

/// The likeliest chain of ways.
fn likeliest(nodes: &[Node], open: &[usize]) -> Vec<Way> {
    let best = open
        .iter()
        .copied()
        .min_by(|one, two| nodes[*one].state.cost.total_cmp(&nodes[*two].state.cost));
    let mut ways = Vec::new();
    let mut at = best.unwrap_or(0);
    while let Some(way) = nodes[at].way {
        ways.push(way);
        at = nodes[at].before;
    }
    ways.reverse();
    ways
}

/// How well machine and line agree with several drives.
#[derive(Clone, Copy, Debug, Default)]
struct Weight {
    /// Total cost of the likeliest ways: the smaller, the better.
    cost: f64,
    ways: usize,
    unexplained: usize,
}

fn weigh(drives: &[Vec<Stop>], outline: &Outline, how: &Rebuild) -> Weight {
    const WEIGHING_BEAM: usize = 5;
    let mut nodes: Vec<Node> = Vec::new();
    let mut open: Vec<usize> = Vec::new();
    let mut weight = Weight::default();
    for stops in drives {
        search(stops, outline, how, WEIGHING_BEAM, &mut nodes, &mut open);
        let ways = likeliest(&nodes, &open);
        weight.cost += ways.last().map_or(0.0, |way| way.to.cost);
        weight.ways += ways.len();
        weight.unexplained += ways.iter().filter(|way| !way.is_explained).count();
    }
    weight
}

/// A fix, or a halt.
#[derive(Clone, Copy, Debug)]
struct Stop {
    place: Vector,
    arrive_s: f64,
    leave_s: f64,
    is_halt: bool,
}

impl Stop {
    fn passing(place: Place, time_s: f64) -> Self {
        Self {
            place: place.into(),
            arrive_s: time_s,
            leave_s: time_s,
            is_halt: false,
        }
    }
}

/// False for a halt within which the machine drove to and fro: if positions are poor, the box that defines a halt is wide.
fn stands(kept: &Kept, run: Range<usize>, halt: &Halt, how: &Rebuild) -> bool {
    const STANDING_FRACTION: f64 = 0.4;
    let times_s = &kept.time_s[run.clone()];
    let first = run.start + times_s.partition_point(|time_s| *time_s < halt.start_s);
    let end = run.start + times_s.partition_point(|time_s| *time_s <= halt.end_s);
    let mut shares: Vec<f64> = (first + 1..end)
        .map(|index| {
            let lapse_s = kept.time_s[index] - kept.time_s[index - 1];
            let error_m = 2.0 * how.white_m;
            let moved_m = kept.place(index).distance_m(kept.place(index - 1)) - error_m;
            moved_m / (how.speed_mps * lapse_s).max(1e-9)
        })
        .collect();
    math::median(&mut shares).is_none_or(|share| share < STANDING_FRACTION)
}

/// Fixes of a run, with those within a halt combined into one.
fn stops(kept: &Kept, run: Range<usize>, halts: &[Halt]) -> Vec<Stop> {
    let mut stops: Vec<Stop> = Vec::new();
    let mut next_halt = 0;
    let mut inside = None;
    for index in run {
        let time_s = kept.time_s[index];
        while halts.get(next_halt).is_some_and(|halt| halt.end_s < time_s) {
            next_halt += 1;
        }
        let halt = halts.get(next_halt).filter(|halt| halt.start_s <= time_s);
        if let (Some(_), Some(number), Some(last)) = (halt, inside, stops.last_mut())
            && number == next_halt
        {
            last.leave_s = time_s;
            continue;
        }
        inside = halt.map(|_| next_halt);
        stops.push(Stop {
            place: halt.map_or_else(|| kept.place(index), |halt| halt.place).into(),
            arrive_s: time_s,
            leave_s: time_s,
            is_halt: halt.is_some(),
        });
    }
    stops
}

/// Heading of an interval that looks straight.
fn straight_heading(stops: &[Stop], from: usize, how: &Rebuild) -> Option<Vector> {
    let (a, b) = (stops.get(from)?, stops.get(from + 1)?);
    if a.is_halt || b.is_halt {
        return None;
    }
    let step = b.place - a.place;
    let reach_m = how.speed_mps * (b.arrive_s - a.leave_s);
    let off_m = (step.length() - reach_m).abs();
    if off_m <= how.straight_within_m(reach_m) {
        step.unit()
    } else {
        None
    }
}

fn search(
    stops: &[Stop],
    outline: &Outline,
    how: &Rebuild,
    beam: usize,
    nodes: &mut Vec<Node>,
    open: &mut Vec<usize>,
) {
    nodes.clear();
    open.clear();
    nodes.push(Node {
        before: usize::MAX,
        way: None,
        state: State {
            heading: None,
            turning_s: None,
            cost: 0.0,
        },
    });
    open.push(0);
    let on_line_m = 3.0 * how.line_sd_m();
    for number in 1..stops.len() {
        let (a, b) = (&stops[number - 1], &stops[number]);
        let lapse_s = (b.arrive_s - a.leave_s).max(0.0);
        let reach_m =
            0.5 * (how.speed_mps * lapse_s - (b.place - a.place).length()).max(0.0) + 1.0 + on_line_m;
        let near = outline.near(a.place, b.place, reach_m);
        let foot = |stop: &Stop| {
            near.foot(stop.place)
                .filter(|foot| !stop.is_halt && foot.distance_m <= on_line_m)
        };
        let interval = Interval {
            from: a.place,
            to: b.place,
            lapse_s,
            next_heading: straight_heading(stops, number, how),
            from_foot: foot(a),
            to_foot: foot(b),
            near,
        };
        let mut ways = Ways::new(how, &interval);
        for (position, node) in open.iter().enumerate() {
            let state = &nodes[*node].state;
            if a.is_halt || b.is_halt {
                // Nobody knows when it left, or how long it had been there.
                ways.plain(position, state);
            } else {
                ways.from(position, state);
            }
        }
        let mut found = ways.found;
        found.sort_by(|one, two| one.1.to.cost.total_cmp(&two.1.to.cost));
        let mut kept: Vec<(usize, Way)> = Vec::with_capacity(beam);
        for (position, way) in found {
            if kept.len() == beam {
                break;
            }
            if !kept.iter().any(|(_, other)| is_alike(&other.to, &way.to)) {
                kept.push((position, way));
            }
        }
        let before = std::mem::take(open);
        for (position, way) in kept {
            open.push(nodes.len());
            nodes.push(Node {
                before: before[position],
                way: Some(way),
                state: way.to,
            });
        }
    }
}

/// True for states with the same future.
fn is_alike(one: &State, two: &State) -> bool {
    match (one.heading, two.heading) {
        (Some((one, _)), Some((two, _))) => one.angle_to_rad(two).abs() < ALIKE_RAD,
        (None, None) => one.turning_s.is_some() == two.turning_s.is_some(),
        _ => false,
    }
}

/// Appends the likeliest way to a piece.
fn write(stops: &[Stop], nodes: &[Node], open: &[usize], how: &Rebuild, piece: &mut Piece) {
    let ways = likeliest(nodes, open);
    let stand = |stop: &Stop| Vertex {
        place: stop.place.into(),
        arrive_s: stop.arrive_s,
        leave_s: stop.leave_s,
    };
    if let (Some(first), true) = (stops.first(), piece.vertices.is_empty()) {
        piece.vertices.push(stand(first));
    }
    for (pair, way) in stops.windows(2).zip(&ways) {
        let (a, b) = (&pair[0], &pair[1]);
        let lapse_s = (b.arrive_s - a.leave_s).max(0.0);
        let start_s = way.start_wait_s.clamp(0.0, lapse_s);
        let end_s = way.end_wait_s.clamp(0.0, lapse_s - start_s);
        if let Some(last) = piece.vertices.last_mut() {
            last.leave_s = a.leave_s + start_s;
        }
        let corners = way.corners();
        let mut length_m = 0.0;
        let mut before = a.place;
        for corner in corners.iter().chain([&b.place]) {
            length_m += (*corner - before).length();
            before = *corner;
        }
        let time_s = lapse_s - start_s - end_s;
        let spare_s = if way.waits_at_corners && !corners.is_empty() {
            (time_s - length_m / how.speed_mps).max(0.0)
        } else {
            0.0
        };
        let wait_s = spare_s / corners.len().max(1) as f64;
        let mut now_s = a.leave_s + start_s;
        before = a.place;
        for corner in corners {
            let leg_m = (*corner - before).length();
            let arrive_s = now_s + (time_s - spare_s) * leg_m / length_m.max(1e-9);
            now_s = (arrive_s + wait_s).min(b.arrive_s);
            piece.vertices.push(Vertex {
                place: (*corner).into(),
                arrive_s: arrive_s.min(now_s),
                leave_s: now_s,
            });
            before = *corner;
        }
        piece.vertices.push(Vertex {
            arrive_s: (b.arrive_s - end_s).max(now_s).min(b.arrive_s),
            ..stand(b)
        });
    }
}
