//! In which order does a machine with lanes drive them?
//!
//! ```text
//!  +--------------------+      lanes are cut by the edge into strips; strips that follow each other one by one make a
//!  | 1 | 1 | 1 | 1 | 4  |      cell, and where the ground splits or joins, new cells begin
//!  | 1 | 1 +---+ 1 | 4  |
//!  | 2 | 2 |   | 3 | 3  |
//! ```
//!
//! Boustrophedon cellular decomposition (Choset & Pignon 1998) on lanes instead of sweep events. A cell is driven to and
//! fro; the next one is the cell whose beginning is nearest. Ways between strips run straight if they can; otherwise from
//! strip to strip over places where a sideways hop stays on the ground, pulled tight afterwards; otherwise over corners.
//!
//! Never leaves the turning region by more than rounding. Approximate: ground that no lane meets (corners thinner than the
//! spacing) is not visited.
//!
//! Cost: strips of neighbouring lanes are compared once a round; a night takes about a millisecond.

use crate::drive::{Driver, LegEnd, LegLimits};
use crate::ground::{GroundEdge, GroundPart};
use crate::machine::{Lanes, Pattern, SimulateError};
use crate::run::Doing;
use std::collections::VecDeque;
use tussock_plane::{Joins, Vector};

/// Strips end this far before the edge, so that their ends are on the ground.
const SHY_M: f64 = 5e-4;
/// Shorter strips are left out.
const SHORTEST_STRIP_M: f64 = 0.05;
/// Places tried for a hop between two strips.
const HOPS_TRIED: usize = 9;

/// A lane's piece of ground.
#[derive(Clone, Copy, Debug)]
struct LaneStrip {
    /// Lower and upper end.
    ends: [Vector; 2],
    /// The same along the lane.
    along_m: [f64; 2],
}

/// One round over the ground.
struct Layout {
    strips: Vec<LaneStrip>,
    /// Strips of each cell, lane by lane.
    cells: Vec<Vec<usize>>,
    /// Sideways hops: other strip, place here, place there.
    hops: Vec<Vec<(usize, Vector, Vector)>>,
}

impl Layout {
    /// Lanes lie between the inner edges, ways between them anywhere on the ground.
    fn new(part: &GroundPart, inner: &[GroundEdge], direction: Vector, offsets_m: &[f64]) -> Self {
        let aside = direction.left();
        let mut strips = Vec::new();
        let mut lanes: Vec<Vec<usize>> = Vec::new();
        for &offset_m in offsets_m {
            let mut here = Vec::new();
            for (low_m, high_m) in crossings(inner, direction, aside, offset_m) {
                if high_m - low_m > SHORTEST_STRIP_M {
                    let place = |along_m: f64| direction * along_m + aside * offset_m;
                    let along_m = [low_m + SHY_M, high_m - SHY_M];
                    here.push(strips.len());
                    strips.push(LaneStrip {
                        ends: along_m.map(place),
                        along_m,
                    });
                }
            }
            lanes.push(here);
        }
        let mut hops = vec![Vec::new(); strips.len()];
        let (mut after, mut before) = (vec![Vec::new(); strips.len()], vec![Vec::new(); strips.len()]);
        for pair in lanes.windows(2) {
            for &a in &pair[0] {
                for &b in &pair[1] {
                    if let Some((from, to)) = hop(part, direction, &strips[a], &strips[b]) {
                        hops[a].push((b, from, to));
                        hops[b].push((a, to, from));
                        after[a].push(b);
                        before[b].push(a);
                    }
                }
            }
        }
        let mut cells: Vec<Vec<usize>> = Vec::new();
        let mut cell_of = vec![usize::MAX; strips.len()];
        for strip in 0..strips.len() {
            match before[strip].as_slice() {
                // The only way on from the only previous one: the same cell.
                &[only] if after[only].len() == 1 => cell_of[strip] = cell_of[only],
                _ => {
                    cell_of[strip] = cells.len();
                    cells.push(Vec::new());
                }
            }
            cells[cell_of[strip]].push(strip);
        }
        Self { strips, cells, hops }
    }

    /// A way between two places near strips: straight if that is free, else over hops, else (through passages where no hop
    /// fits) the shortest way over corners.
    fn way(
        &self,
        part: &GroundPart,
        from: Vector,
        to: Vector,
        strips: (Option<usize>, Option<usize>),
    ) -> Option<Vec<Vector>> {
        if part.is_free(from, to) {
            return Some(vec![to]);
        }
        let strips = strips.0.zip(strips.1);
        strips
            .and_then(|strips| self.way_over_hops(part, from, to, strips))
            .filter(|way| is_all_free(part, from, way))
            .or_else(|| part.shortest_way(from, to))
    }

    fn way_over_hops(
        &self,
        part: &GroundPart,
        from: Vector,
        to: Vector,
        strips: (usize, usize),
    ) -> Option<Vec<Vector>> {
        let mut came: Vec<Option<(usize, Vector, Vector)>> = vec![None; self.strips.len()];
        let mut queue = VecDeque::from([strips.0]);
        while let Some(strip) = queue.pop_front() {
            if strip == strips.1 {
                break;
            }
            for &(next, here, there) in &self.hops[strip] {
                if next != strips.0 && came[next].is_none() {
                    came[next] = Some((strip, here, there));
                    queue.push_back(next);
                }
            }
        }
        let mut corners = vec![to, self.strips[strips.1].foot(to)];
        let mut strip = strips.1;
        while strip != strips.0 {
            let (earlier, here, there) = came[strip]?;
            corners.push(there);
            corners.push(here);
            strip = earlier;
        }
        corners.push(self.strips[strips.0].foot(from));
        corners.reverse();
        Some(tight(part, from, &corners))
    }

    /// The strip nearest to a place, among those visible from there.
    fn nearest(&self, part: &GroundPart, place: Vector) -> Option<usize> {
        let distance_m = |strip: usize| (place - self.strips[strip].foot(place)).length();
        let mut order: Vec<usize> = (0..self.strips.len()).collect();
        order.sort_by(|&a, &b| distance_m(a).total_cmp(&distance_m(b)));
        let seen = order
            .iter()
            .copied()
            .find(|&strip| part.is_free(place, self.strips[strip].foot(place)));
        seen.or(order.first().copied())
    }
}

impl LaneStrip {
    /// Its place nearest to another.
    fn foot(&self, place: Vector) -> Vector {
        let [low, high] = self.ends;
        let step = high - low;
        low + step * ((place - low).dot(step) / step.dot(step)).clamp(0.0, 1.0)
    }
}

fn is_all_free(part: &GroundPart, from: Vector, way: &[Vector]) -> bool {
    let starts = std::iter::once(&from).chain(way);
    starts.zip(way).all(|(from, to)| part.is_free(*from, *to))
}

/// Drops corners that can be cut.
fn tight(part: &GroundPart, from: Vector, corners: &[Vector]) -> Vec<Vector> {
    let mut way = Vec::new();
    let mut here = from;
    let mut next = 0;
    while next < corners.len() {
        let farthest = (next..corners.len())
            .rev()
            .find(|&corner| part.is_free(here, corners[corner]));
        let chosen = farthest.unwrap_or(next);
        here = corners[chosen];
        way.push(here);
        next = chosen + 1;
    }
    way
}

/// Where a lane is on the ground: pairs of its lower and upper ends.
fn crossings(inner: &[GroundEdge], direction: Vector, aside: Vector, offset_m: f64) -> Vec<(f64, f64)> {
    let mut at_m: Vec<f64> = inner
        .iter()
        .filter_map(|edge| {
            let (from, to) = (edge.from, edge.from + edge.along * edge.length_m);
            let (below, above) = (from.dot(aside) - offset_m, to.dot(aside) - offset_m);
            ((below <= 0.0) != (above <= 0.0)).then(|| {
                let place = from + (to - from) * (below / (below - above));
                place.dot(direction)
            })
        })
        .collect();
    at_m.sort_by(f64::total_cmp);
    at_m.chunks_exact(2).map(|pair| (pair[0], pair[1])).collect()
}

/// A sideways hop between strips of neighbouring lanes, the one nearest to the middle of their common length.
fn hop(part: &GroundPart, direction: Vector, a: &LaneStrip, b: &LaneStrip) -> Option<(Vector, Vector)> {
    let (low_m, high_m) = (a.along_m[0].max(b.along_m[0]), a.along_m[1].min(b.along_m[1]));
    if low_m > high_m {
        return None;
    }
    let on = |strip: &LaneStrip, along_m: f64| strip.ends[0] + direction * (along_m - strip.along_m[0]);
    (0..HOPS_TRIED)
        .map(|number| {
            // 1/2, then alternately to either side.
            let swing = number.div_ceil(2) as f64 / HOPS_TRIED as f64;
            let share = if number % 2 == 0 { 0.5 - swing } else { 0.5 + swing };
            low_m + (high_m - low_m) * share
        })
        .map(|along_m| (on(a, along_m), on(b, along_m)))
        .find(|&(from, to)| part.is_free(from, to) && part.is_free(to, from))
}

/// How a stretch of lane ended.
enum Stretch {
    Finished,
    TimeIsOver,
}

pub(crate) fn drive(driver: &mut Driver<'_>) -> Result<(), SimulateError> {
    let Some(lanes) = driver.machine.pattern.lanes() else {
        return Ok(());
    };
    driver.begin();
    // Lanes lie on the part at which the station stands.
    let headland = Headland::new(&driver.yard.parts[driver.yard.home_part], &lanes)?;
    let mut outing_ends_s = set_out(driver);
    let mut round = 0.0;
    while !driver.is_over() {
        let direction =
            Vector::of_angle((lanes.direction_deg + round * lanes.turn_each_round_deg).to_radians());
        let offsets_m = offsets(driver, &headland.inner, direction, &lanes);
        let layout = Layout::new(driver.part(), &headland.inner, direction, &offsets_m);
        let begun_s = driver.time_s;
        for ring in &headland.rings {
            along_ring(driver, &layout, ring, &mut outing_ends_s);
        }
        one_round(driver, &layout, &mut outing_ends_s);
        if driver.time_s <= begun_s {
            // No way leads to any lane, or there is none.
            driver.strand();
        }
        round += 1.0;
    }
    Ok(())
}

/// What is driven along the edges before any lane, and what that leaves.
struct Headland {
    /// Closed rings, the outermost first.
    rings: Vec<Vec<Vector>>,
    /// Edges between which lanes lie.
    inner: Vec<GroundEdge>,
}

impl Headland {
    fn new(part: &GroundPart, lanes: &Lanes) -> Result<Self, SimulateError> {
        let within = |inset_m: f64| -> Result<Vec<GroundPart>, SimulateError> {
            Ok(GroundPart::all_of(
                &part.region.grown_by(-inset_m, Joins::Mitred)?,
            ))
        };
        let mut rings = Vec::new();
        for round in 0..lanes.headland_rounds {
            let parts = within(round as f64 * lanes.spacing_m + SHY_M)?;
            rings.extend(parts.into_iter().flat_map(|part| part.rings));
        }
        let inner = match lanes.headland_rounds {
            0 => part.edges.clone(),
            rounds => {
                let parts = within((rounds as f64 - 0.5) * lanes.spacing_m)?;
                parts.into_iter().flat_map(|part| part.edges).collect()
            }
        };
        Ok(Self { rings, inner })
    }
}

/// Once round on a closed ring, from its corner that is nearest.
fn along_ring(driver: &mut Driver<'_>, layout: &Layout, ring: &[Vector], outing_ends_s: &mut f64) {
    let corners = &ring[..ring.len().saturating_sub(1)];
    let distance_m = |number: &usize| (corners[*number] - driver.place).length();
    let Some(first) = (0..corners.len()).min_by(|a, b| distance_m(a).total_cmp(&distance_m(b))) else {
        return;
    };
    let mut is_under_way = reach_place(driver, layout, corners[first], None);
    for number in 1..=corners.len() {
        let corner = corners[(first + number) % corners.len()];
        is_under_way = is_under_way && drive_to(driver, layout, corner, None, outing_ends_s);
    }
}

fn is_combined(driver: &Driver<'_>) -> bool {
    matches!(driver.machine.pattern, Pattern::Combined { .. })
}

/// Sets out for lanes; returns the time at which the outing's time is over.
fn set_out(driver: &mut Driver<'_>) -> f64 {
    let ends_s = driver.set_out();
    // Without a station lanes never end, except for a machine that roams in between.
    if ends_s.is_infinite() && is_combined(driver) {
        return driver.time_s + driver.dice.spell_s(&driver.machine.roaming);
    }
    ends_s
}

/// Sideways places of the lanes.
fn offsets(driver: &mut Driver<'_>, inner: &[GroundEdge], direction: Vector, lanes: &Lanes) -> Vec<f64> {
    let Lanes {
        spacing_m, jitter_m, ..
    } = *lanes;
    let aside = direction.left();
    // Rings are closed: every corner begins an edge.
    let across = inner.iter().map(|edge| edge.from.dot(aside));
    let (low_m, high_m) = across.fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), at| {
        (low.min(at), high.max(at))
    });
    if !low_m.is_finite() {
        return Vec::new();
    }
    // Lanes at both edges, and none farther apart than asked.
    let (first_m, width_m) = (low_m + 2.0 * SHY_M, high_m - low_m - 4.0 * SHY_M);
    let gaps = (width_m / spacing_m).ceil().max(1.0);
    let step_m = width_m / gaps;
    (0..=gaps as usize)
        .map(|lane| {
            let error_m = if jitter_m > 0.0 {
                jitter_m * driver.dice.normal()
            } else {
                0.0
            };
            (first_m + lane as f64 * step_m + error_m).clamp(first_m, first_m + width_m)
        })
        .collect()
}

fn one_round(driver: &mut Driver<'_>, layout: &Layout, outing_ends_s: &mut f64) {
    let mut left: Vec<usize> = (0..layout.cells.len()).collect();
    while !left.is_empty() && !driver.is_over() {
        // The nearest of the four ends of each cell.
        let here = driver.place;
        let begins = |cell: usize| {
            let strips = &layout.cells[cell];
            let (first, last) = (strips[0], strips[strips.len() - 1]);
            [
                (first, 0, false),
                (first, 1, false),
                (last, 0, true),
                (last, 1, true),
            ]
        };
        let distance_m = |strip: usize, end: usize| (layout.strips[strip].ends[end] - here).length();
        let chosen = left
            .iter()
            .enumerate()
            .flat_map(|(position, &cell)| {
                begins(cell).map(|(strip, end, reversed)| (position, strip, end, reversed))
            })
            .min_by(|a, b| distance_m(a.1, a.2).total_cmp(&distance_m(b.1, b.2)));
        let Some((position, _, mut end, is_reversed)) = chosen else {
            return;
        };
        let mut strips = layout.cells[left.swap_remove(position)].clone();
        if is_reversed {
            strips.reverse();
        }
        for strip in strips {
            if !reach_place(driver, layout, layout.strips[strip].ends[end], Some(strip)) {
                break;
            }
            let to = layout.strips[strip].ends[1 - end];
            if !drive_to(driver, layout, to, Some(strip), outing_ends_s) {
                return;
            }
            driver.wait(
                driver.machine.pattern.lanes().map_or(0.0, |lanes| lanes.pause_s),
                Doing::Turning,
            );
            end = 1 - end;
            if driver.is_over() {
                return;
            }
        }
    }
}

/// Straight to a place along a strip or an edge, with whatever outings come in between; false if it never comes there.
fn drive_to(
    driver: &mut Driver<'_>,
    layout: &Layout,
    to: Vector,
    strip: Option<usize>,
    outing_ends_s: &mut f64,
) -> bool {
    while let Stretch::TimeIsOver = stretch(driver, to, *outing_ends_s) {
        if driver.is_over() {
            return false;
        }
        let left_at = driver.place;
        if driver.yard.station.is_some() || !is_combined(driver) {
            if !go_home(driver, layout, strip) {
                return false;
            }
            driver.charge();
        }
        if is_combined(driver) {
            driver.roam_once();
            if driver.is_over() {
                return false;
            }
        }
        *outing_ends_s = set_out(driver);
        if !reach_place(driver, layout, left_at, strip) {
            return false;
        }
    }
    true
}

/// Drives to a place over any ground; false when there is no way.
fn reach_place(driver: &mut Driver<'_>, layout: &Layout, to: Vector, strip: Option<usize>) -> bool {
    if (to - driver.place).length() < 1e-9 {
        return true;
    }
    // Mostly this is the next lane, straight ahead: no need to search for a way.
    let way = if driver.part().is_free(driver.place, to) {
        Some(vec![to])
    } else {
        let nearest = layout.nearest(driver.part(), driver.place);
        layout.way(driver.part(), driver.place, to, (nearest, strip))
    };
    let Some(way) = way else { return false };
    let share = 1.0 / (way.len() + 1) as f64;
    for corner in way {
        if let Some(heading) = (corner - driver.place).unit() {
            driver.turn_to(heading, share);
        }
        driver.go(corner, driver.machine.speed_mps, Doing::Driving);
    }
    true
}

/// Drives along a lane to a place, or until the outing's time is over.
fn stretch(driver: &mut Driver<'_>, to: Vector, outing_ends_s: f64) -> Stretch {
    if let Some(heading) = (to - driver.place).unit() {
        driver.turn_to(heading, 0.5);
    }
    while !driver.is_over() {
        let step = to - driver.place;
        let Some(heading) = step.unit() else {
            return Stretch::Finished;
        };
        if step.length() < 1e-6 {
            return Stretch::Finished;
        }
        let open_m = (outing_ends_s - driver.time_s) * driver.machine.speed_mps;
        if open_m <= 1e-6 {
            return Stretch::TimeIsOver;
        }
        driver.heading = heading;
        let within_m = step.length().min(open_m);
        let begun_s = driver.time_s;
        let end = driver.leg(LegLimits {
            guides_from_s: f64::INFINITY,
            within_m,
        });
        // A curved leg that meets the edge has come as far as it can.
        let rest_m = (to - driver.place).length();
        if rest_m < 1e-6 || matches!(end, LegEnd::Edge(_)) && rest_m < 0.1 {
            driver.slow_down();
            return Stretch::Finished;
        }
        if driver.time_s <= begun_s {
            // Bent against an edge: the rest of this lane is left out.
            return Stretch::Finished;
        }
    }
    Stretch::TimeIsOver
}

/// Drives home through the lawn.
fn go_home(driver: &mut Driver<'_>, layout: &Layout, strip: Option<usize>) -> bool {
    driver.note(|outing, now_s| outing.homeward_s = now_s);
    let target = match (driver.yard.station, driver.yard.gate) {
        (Some(station), _) if driver.part().contains(station) => station,
        (_, Some(gate)) => gate.place,
        _ => return false,
    };
    let last = layout.nearest(driver.part(), target);
    let Some(way) = layout.way(driver.part(), driver.place, target, (strip, last)) else {
        driver.strand();
        return false;
    };
    driver.follow(&way);
    driver.go_to_station();
    driver.note(|outing, now_s| outing.end_s = now_s);
    true
}
