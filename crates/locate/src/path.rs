//! From legs and halts to a polyline with times.
//!
//! A leg's line is fitted by total least squares. A corner is the place that agrees best with the lines that meet there and
//! with the fixes of the wait between them, each weighted by its own error; if lines are nearly parallel the fixes decide. A
//! cloud of fixes at rest becomes one corner, so that standing paints one disc.

use crate::blocks::{Blocks, median_step_s};
use crate::segment::{Part, PartKind};
use crate::{Halt, Kept, NoiseEstimate, Piece, Vertex, kalman};
use std::ops::Range;
use tussock_plane::Vector;
use tussock_types::Place;
use tussock_types::math;

/// A fitted leg.
#[derive(Clone, Copy, Debug)]
struct Line {
    centre: Place,
    /// Unit vector along the drive.
    along: Vector,
    /// Standard deviation across, at an end.
    across_sd_m: f64,
    speed_mps: f64,
    /// First and last fix, projected onto the line.
    start: Place,
    end: Place,
    start_s: f64,
    end_s: f64,
    /// Fixes stray from the line by much more than noise: it is a curve.
    is_curved: bool,
}

impl Line {
    /// Distance of a place from the line.
    fn across_m(&self, place: Place) -> f64 {
        self.along.cross(Vector::between(self.centre, place)).abs()
    }

    /// Whether a place lies on the line, within the error of both.
    fn holds(&self, place: Place, place_sd_m: f64) -> bool {
        self.across_m(place) <= 0.03 + 3.0 * math::hypot(self.across_sd_m, place_sd_m)
    }

    /// The place this far beyond `from`, one of its ends, along the line.
    fn beyond(&self, from: Place, by_m: f64) -> Place {
        (Vector::from(from) + self.along * by_m).into()
    }

    /// How far the line continues beyond `end` before the machine leaves it for a place beside it: along the line, then
    /// straight there, over as long a way as takes `lapse_s` at its speed. Never past the place. `side` is 1 at the line's
    /// end and -1 at its start.
    fn runs_on_m(&self, (end, side): (Place, f64), place: Place, lapse_s: f64) -> f64 {
        let aside = Vector::between(end, place);
        let ahead_m = (side * aside.dot(self.along)).max(0.0);
        let (way_m, straight_m) = (self.speed_mps * lapse_s, math::hypot(aside.east, aside.north));
        if way_m <= straight_m {
            return 0.0;
        }
        // b + sqrt(across^2 + (ahead - b)^2) = way, solved for b.
        let run_m = (way_m * way_m - straight_m * straight_m) / (2.0 * (way_m - ahead_m).max(1e-9));
        run_m.min(ahead_m)
    }

    fn first_vertex(&self) -> Vertex {
        Vertex::passed(self.start, self.start_s)
    }

    fn last_vertex(&self) -> Vertex {
        Vertex::passed(self.end, self.end_s)
    }
}

/// Curvature and wobble that a straight line hides, metres across.
const WOBBLE_M: f64 = 0.005;

fn fit(blocks: &Blocks, part: Part, white_m: f64) -> Line {
    let fixes = part.first..part.last + 1;
    let count = fixes.len() as f64;
    let mean = |column: &[f64]| column[fixes.clone()].iter().sum::<f64>() / count;
    let centre = Place::new(mean(&blocks.east_m), mean(&blocks.north_m));
    let middle_s = mean(&blocks.time_s);
    let (mut ee, mut en, mut nn, mut te, mut tn, mut tt) = (0.0, 0.0, 0.0, 0.0, 0.0, 0.0);
    for index in fixes.clone() {
        let east_m = blocks.east_m[index] - centre.east_m;
        let north_m = blocks.north_m[index] - centre.north_m;
        let time_s = blocks.time_s[index] - middle_s;
        ee += east_m * east_m;
        en += east_m * north_m;
        nn += north_m * north_m;
        te += time_s * east_m;
        tn += time_s * north_m;
        tt += time_s * time_s;
    }
    // Direction: principal axis, pointing forwards in time.
    let angle_rad = 0.5 * math::atan2(2.0 * en, ee - nn);
    let mut along = Vector::new(math::cos(angle_rad), math::sin(angle_rad));
    if along.dot(Vector::new(te, tn)) < 0.0 {
        along = -along;
    }
    if fixes.len() == 2 {
        along = Vector::direction(blocks.place(part.first), blocks.place(part.last)).unwrap_or(along);
    }
    let speed_mps = (along.dot(Vector::new(te, tn)) / tt.max(1e-9)).max(1e-3);
    let off = |index: usize| Vector::between(centre, blocks.place(index));
    let across_m2 = fixes
        .clone()
        .map(|index| along.cross(off(index)).powi(2))
        .sum::<f64>()
        / count;
    let drop = |index: usize| (Vector::from(centre) + along * off(index).dot(along)).into();
    Line {
        centre,
        along,
        across_sd_m: 2.0 * white_m / count.sqrt() + WOBBLE_M,
        speed_mps,
        start: drop(part.first),
        end: drop(part.last),
        start_s: blocks.time_s[part.first],
        end_s: blocks.time_s[part.last],
        is_curved: fixes.len() > 3 && across_m2.sqrt() > 3.0 * white_m + 0.015,
    }
}

/// The place that agrees best with lines and an anchor: least squares, two by two.
fn meet(lines: &[Line], anchor: Place, anchor_sd_m: f64) -> Place {
    let weight = 1.0 / (anchor_sd_m * anchor_sd_m);
    let (mut a, mut b, mut c) = (weight, 0.0, weight);
    let (mut right_e, mut right_n) = (weight * anchor.east_m, weight * anchor.north_m);
    for line in lines {
        let normal = line.along.left();
        let weight = 1.0 / (line.across_sd_m * line.across_sd_m);
        let offset = normal.dot(line.centre.into());
        a += weight * normal.east * normal.east;
        b += weight * normal.east * normal.north;
        c += weight * normal.north * normal.north;
        right_e += weight * normal.east * offset;
        right_n += weight * normal.north * offset;
    }
    let determinant = a * c - b * b;
    Place::new(
        (c * right_e - b * right_n) / determinant,
        (a * right_n - b * right_e) / determinant,
    )
}

/// The polyline of the parts of one run.
pub fn from_parts(blocks: &Blocks, parts: &[Part], noise: &NoiseEstimate) -> Piece {
    let mut corners = Corners {
        blocks,
        white_m: noise.white_m,
        step_s: median_step_s(blocks),
        vertices: Vec::new(),
        before: None,
    };
    let mut parts = parts.iter().copied().peekable();
    while let Some(part) = parts.next() {
        match part.kind {
            PartKind::Leg => {
                let line = fit(blocks, part, noise.white_m);
                corners.meet_before(&line);
                corners.go(part, line);
            }
            PartKind::Halt => {
                let next = parts.next_if(|next| next.kind == PartKind::Leg);
                let after = next.map(|next| (next, fit(blocks, next, noise.white_m)));
                corners.wait(part, after.map(|(_, line)| line));
                // The leg that follows starts at this corner.
                corners.before = None;
                if let Some((next, line)) = after {
                    corners.go(next, line);
                }
            }
        }
    }
    let last = corners.before.map(|line| line.last_vertex());
    corners.vertices.extend(last);
    let mut piece = Piece {
        vertices: corners.vertices,
    };
    crate::parts::in_order(std::slice::from_mut(&mut piece));
    piece
}

/// Corners so far, and the leg that leads on.
struct Corners<'a> {
    blocks: &'a Blocks,
    white_m: f64,
    step_s: f64,
    vertices: Vec<Vertex>,
    before: Option<Line>,
}

impl Corners<'_> {
    /// The corner between the previous leg and this one, without a wait in between.
    fn meet_before(&mut self, line: &Line) {
        let Some(earlier) = self.before else {
            if self.vertices.is_empty() {
                self.vertices.push(line.first_vertex());
            }
            return;
        };
        let anchor = earlier.end.middle(line.start);
        let anchor_sd_m = 0.5 * earlier.end.distance_m(line.start)
            + self.white_m
            + 0.3 * self.step_s * earlier.speed_mps.max(line.speed_mps);
        let place = meet(&[earlier, *line], anchor, anchor_sd_m);
        if earlier.holds(place, 0.0) && line.holds(place, 0.0) {
            self.vertices.push(timed(place, Some(&earlier), Some(line)));
            return;
        }
        // Something short lies between the two: a cross-over from lane to lane. The time that is left over was driven on
        // both lanes, half on each.
        let crossed_m = earlier.end.distance_m(line.start);
        let lapse_s = line.start_s - earlier.end_s;
        let way_m = 0.5 * (earlier.speed_mps + line.speed_mps) * lapse_s;
        let (mut last, mut first) = (earlier.last_vertex(), line.first_vertex());
        let run_m = 0.5 * (way_m - crossed_m).max(0.0);
        if run_m > 0.0 {
            last.place = earlier.beyond(earlier.end, run_m);
            first.place = line.beyond(line.start, -run_m);
        }
        self.vertices.extend([last, first]);
    }

    /// Follows a leg, or its fixes if it is a curve.
    fn go(&mut self, part: Part, line: Line) {
        if line.is_curved {
            let passed = |fix| Vertex::passed(self.blocks.place(fix), self.blocks.time_s[fix]);
            self.vertices.extend((part.first + 1..part.last).map(passed));
        }
        self.before = Some(line);
    }

    /// The corner at which the machine waits between two legs.
    fn wait(&mut self, part: Part, after: Option<Line>) {
        let (blocks, before) = (self.blocks, self.before);
        // During the first and the last fix of a wait the machine may still roll.
        let (first, last) = match part.last - part.first {
            0..=2 => (part.first, part.last),
            _ => (part.first + 1, part.last - 1),
        };
        let count = (last - first + 1) as f64;
        let mean = |column: &[f64]| column[first..=last].iter().sum::<f64>() / count;
        let anchor = Place::new(mean(&blocks.east_m), mean(&blocks.north_m));
        let anchor_sd_m = self.white_m / count.sqrt() + WOBBLE_M;
        // The next lane is another line and must not pull this corner over.
        let straight = [before, after].into_iter().flatten();
        let meets = |line: &Line| !line.is_curved && line.holds(anchor, anchor_sd_m);
        let lines: Vec<Line> = straight.filter(meets).collect();
        let place = meet(&lines, anchor, anchor_sd_m);
        let mut vertex = timed(place, before.as_ref(), after.as_ref());
        // It stood at least as long as the fixes of the halt show.
        vertex.arrive_s = vertex.arrive_s.min(blocks.time_s[first]);
        vertex.leave_s = vertex.leave_s.max(blocks.time_s[last]);
        if before.is_none() {
            vertex.arrive_s = blocks.time_s[part.first];
        }
        if after.is_none() {
            vertex.leave_s = blocks.time_s[part.last];
        }
        // A short jog, before or after the halt, that is in none of the legs.
        let jog_before = before.filter(|line| !line.holds(place, 0.0));
        let jog_after = after.filter(|line| !line.holds(place, 0.0));
        self.vertices.extend(jog_before.map(|line| {
            let run_m = line.runs_on_m((line.end, 1.0), place, blocks.time_s[first] - line.end_s);
            Vertex {
                place: line.beyond(line.end, run_m),
                ..line.last_vertex()
            }
        }));
        self.vertices.push(vertex);
        self.vertices.extend(jog_after.map(|line| {
            let run_m = line.runs_on_m((line.start, -1.0), place, line.start_s - blocks.time_s[last]);
            Vertex {
                place: line.beyond(line.start, -run_m),
                ..line.first_vertex()
            }
        }));
    }
}

/// A corner with the times given by the legs on its two sides, never inside the fixes of a leg.
fn timed(place: Place, before: Option<&Line>, after: Option<&Line>) -> Vertex {
    let signed_m = |line: &Line, from: Place, to: Place| Vector::between(from, to).dot(line.along);
    let earliest_s = before.map_or(f64::NEG_INFINITY, |line| line.end_s);
    let latest_s = after.map_or(f64::INFINITY, |line| line.start_s);
    let arrive_s = before.map(|line| earliest_s + signed_m(line, line.end, place) / line.speed_mps);
    let leave_s = after.map(|line| latest_s - signed_m(line, place, line.start) / line.speed_mps);
    let inside = |time_s: f64| time_s.min(latest_s).max(earliest_s);
    match (arrive_s.map(inside), leave_s.map(inside)) {
        (Some(arrive_s), Some(leave_s)) if arrive_s > leave_s => {
            Vertex::passed(place, 0.5 * (arrive_s + leave_s))
        }
        (Some(arrive_s), Some(leave_s)) => Vertex {
            place,
            arrive_s,
            leave_s,
        },
        (Some(only_s), None) | (None, Some(only_s)) => Vertex::passed(place, only_s),
        (None, None) => Vertex {
            place,
            arrive_s: f64::INFINITY,
            leave_s: f64::NEG_INFINITY,
        },
    }
}

/// Puts one corner in the place of all that lie within a halt: whatever moved there was drift, or spinning wheels.
pub fn collapse_halts(piece: &mut Piece, halts: &[Halt], noise: &NoiseEstimate) {
    // A corner at the rim of a halt, farther off than the error explains, is the end of a leg with a jog in between.
    const JOG_S: f64 = 3.0;
    let jog_m = 0.05 + 4.0 * noise.white_m + 2.0 * noise.drift_m.unwrap_or(0.0);
    let (Some(first), Some(last)) = (piece.vertices.first(), piece.vertices.last()) else {
        return;
    };
    let (start_s, end_s) = (first.arrive_s, last.leave_s);
    // A halt belongs to the piece that contains its middle; another piece may begin right after a silence.
    let inside: Vec<&Halt> = halts
        .iter()
        .filter(|halt| (start_s..=end_s).contains(&(0.5 * (halt.start_s + halt.end_s))))
        .collect();
    if inside.is_empty() {
        return;
    }
    let mut vertices: Vec<Vertex> = Vec::with_capacity(piece.vertices.len());
    let mut next = inside.iter().peekable();
    for vertex in &piece.vertices {
        while let Some(halt) = next.next_if(|halt| halt.end_s <= vertex.arrive_s) {
            vertices.push(Vertex::of_halt(halt));
        }
        match next.peek() {
            // A corner that is left after the halt, or reached before it, is outside, at least in part. One within a second
            // of it is the same corner if it lies at the same place.
            Some(halt)
                if {
                    let slack_s = if vertex.place.distance_m(halt.place) < 0.15 {
                        1.0
                    } else {
                        0.0
                    };
                    vertex.arrive_s >= halt.start_s - slack_s && vertex.leave_s <= halt.end_s + slack_s
                } =>
            {
                let is_jog = vertex.place.distance_m(halt.place) > jog_m;
                if is_jog && vertex.leave_s <= halt.start_s + JOG_S {
                    vertices.push(Vertex::passed(vertex.place, halt.start_s));
                } else if is_jog && vertex.arrive_s >= halt.end_s - JOG_S {
                    vertices.push(Vertex::of_halt(halt));
                    vertices.push(Vertex::passed(vertex.place, halt.end_s));
                    next.next();
                }
            }
            Some(halt) if vertex.arrive_s <= halt.start_s && vertex.leave_s >= halt.end_s => {
                vertices.push(*vertex);
                next.next();
            }
            Some(halt) if vertex.leave_s > halt.start_s && vertex.arrive_s <= halt.start_s => {
                vertices.push(Vertex {
                    leave_s: halt.start_s.max(vertex.arrive_s),
                    ..*vertex
                });
            }
            Some(halt) if vertex.arrive_s < halt.end_s && vertex.leave_s > halt.end_s => {
                vertices.push(Vertex::of_halt(halt));
                vertices.push(Vertex {
                    arrive_s: halt.end_s,
                    ..*vertex
                });
                next.next();
            }
            _ => vertices.push(*vertex),
        }
    }
    vertices.extend(next.map(|halt| Vertex::of_halt(halt)));
    piece.vertices = vertices;
}

/// Constant-velocity smoothing of every fix of a run; standing becomes a single corner.
pub fn smoothed(kept: &Kept, run: Range<usize>, noise: &NoiseEstimate, speed_mps: f64) -> Piece {
    let time_s = &kept.time_s[run.clone()];
    let white_m2 = noise.white_m * noise.white_m;
    // A machine that does not drive straight changes its velocity by about half within a second.
    let model = kalman::Model {
        acceleration_m2_per_s4: (0.5 * speed_mps).powi(2),
        measurement_m2: white_m2,
    };
    let axis = |column: &[f64]| {
        let first = kalman::State {
            position_m: column[0],
            velocity_mps: 0.0,
            covariance: [4.0 * white_m2, 0.0, speed_mps * speed_mps],
        };
        kalman::smooth(time_s, column, first, model).smoothed
    };
    let east = axis(&kept.east_m[run.clone()]);
    let north = axis(&kept.north_m[run]);
    let mut vertices: Vec<Vertex> = Vec::new();
    let mut stood = false;
    for (index, (east, north)) in east.iter().zip(&north).enumerate() {
        let stands = math::hypot(east.velocity_mps, north.velocity_mps) < 0.15 * speed_mps;
        if let (true, true, Some(last)) = (stands, stood, vertices.last_mut()) {
            last.leave_s = time_s[index];
            continue;
        }
        stood = stands;
        let place = Place::new(east.position_m, north.position_m);
        vertices.push(Vertex::passed(place, time_s[index]));
    }
    Piece { vertices }
}

/// Straight chords between fixes; long halts become a single corner.
pub fn chords(kept: &Kept, run: Range<usize>, halts: &[Halt]) -> Piece {
    let mut vertices: Vec<Vertex> = Vec::new();
    let mut next_halt = 0;
    let mut inside: Option<usize> = None;
    for index in run {
        let time_s = kept.time_s[index];
        while next_halt < halts.len() && halts[next_halt].end_s < time_s {
            next_halt += 1;
        }
        let halt = halts.get(next_halt).filter(|halt| halt.start_s <= time_s);
        match (halt, inside, vertices.last_mut()) {
            (Some(_), Some(number), Some(last)) if number == next_halt => {
                last.leave_s = time_s;
                continue;
            }
            _ => {}
        }
        inside = halt.map(|_| next_halt);
        let place = halt.map_or_else(|| kept.place(index), |halt| halt.place);
        vertices.push(Vertex::passed(place, time_s));
    }
    Piece { vertices }
}
