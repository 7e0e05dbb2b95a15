//! Where could a guide run lie?
//!
//! Method: cheapest way over the clearance grid ([`tussock_plane::cheapest_way`]), where a metre costs more the closer it
//! passes to the turning line; then string pulling: a bend is left out if the straight piece keeps enough clearance; then
//! bends are moved where that gives more room. The clearance stated in [`Laid::clearance_m`] is kept along the whole line,
//! and measured exactly on the final line.
//!
//! Ends: `far`, the farthest place of the pocket along the way that has room; `centre then far`. A machine leaves a guide
//! run somewhere on its last part, so a run that ends at the mouth of a pocket lets it out before it is inside.

use super::room::Room;
use std::cell::Cell;
use tussock_plane::{BitGrid, Steps, cheapest_way};
use tussock_types::Place;

/// A way is expensive below this clearance.
const ROOMY_M: f64 = 0.8;
/// How much more expensive at zero clearance.
const DEARER: f64 = 3.0;
/// A cell with less clearance is closed.
const LEAST_M: f64 = 0.01;
/// The final line keeps at least this, if the ground allows a line at all.
pub(super) const KEPT_M: f64 = 0.02;
/// A straight piece keeps at least this fraction of what the bends kept.
const PULLED: f64 = 0.8;
/// More clearance than this need not be kept.
const ENOUGH_M: f64 = 0.5;
/// Clearance is not reduced below this where there was more.
const LEAST_PULLED_M: f64 = 0.05;

/// A line that can be laid.
#[derive(Clone, Debug, PartialEq)]
pub struct Laid {
    /// From the station outwards.
    pub line: Vec<Place>,
    /// Least clearance of the line for the machine's middle, from where the line enters the machine's ground.
    pub clearance_m: f64,
    /// New wire.
    pub wire_m: f64,
}

/// Where a guide run ends in a pocket.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum End {
    /// At the far end.
    Far,
    /// Through its widest place to the far end.
    CentreThenFar,
}

pub(super) fn length_m(line: &[Place]) -> f64 {
    line.windows(2).map(|pair| pair[0].distance_m(pair[1])).sum()
}

fn price(room: &Room, column: usize, row: usize) -> Option<f64> {
    let clear_m = room.at(column, row);
    (clear_m >= LEAST_M).then(|| 1.0 + DEARER * (1.0 - clear_m / ROOMY_M).max(0.0))
}

fn way(room: &Room, from: (usize, usize), is_goal: impl Fn(usize, usize) -> bool) -> Option<Vec<Place>> {
    let way = cheapest_way(
        &room.grid,
        from,
        is_goal,
        |column, row| price(room, column, row),
        Steps::EightCuttingCorners,
    )?;
    Some(
        way.cells
            .iter()
            .map(|(column, row)| room.grid.centre(*column, *row))
            .collect(),
    )
}

/// Places of a pocket on the way: its widest place, and the farthest one with enough room.
#[derive(Clone, Copy, Debug)]
struct Goals {
    centre: (usize, usize),
    far: (usize, usize),
}

fn goals(room: &Room, start: (usize, usize), pocket: &BitGrid) -> Option<Goals> {
    let in_pocket = |column: usize, row: usize| {
        pocket
            .grid
            .cell_at(room.grid.centre(column, row))
            .is_some_and(|(x, y)| pocket.get(x, y))
    };
    // Every cell is queried when it is reached, the cheapest first.
    let centre: Cell<Option<(f64, (usize, usize))>> = Cell::new(None);
    way(room, start, |column, row| {
        let clear_m = room.at(column, row);
        if in_pocket(column, row) && centre.get().is_none_or(|(best_m, _)| clear_m > best_m) {
            centre.set(Some((clear_m, (column, row))));
        }
        false
    });
    let (centre_m, centre) = centre.get()?;
    let least_m = (0.6 * centre_m).min(1.0);
    let far: Cell<(usize, usize)> = Cell::new(centre);
    way(room, start, |column, row| {
        if room.at(column, row) >= least_m && in_pocket(column, row) {
            far.set((column, row));
        }
        false
    });
    Some(Goals {
        centre,
        far: far.get(),
    })
}

/// Pulls a line straight where enough clearance is left.
pub(super) fn pulled(room: &Room, line: &[Place]) -> Vec<Place> {
    let Some(&start) = line.first() else {
        return Vec::new();
    };
    let clear_m: Vec<f64> = line
        .iter()
        .map(|place| {
            room.grid
                .cell_at(*place)
                .map_or(0.0, |(column, row)| room.at(column, row))
        })
        .collect();
    let mut pulled = vec![start];
    let mut here = 0;
    while here + 1 < line.len() {
        let mut next = here + 1;
        let mut least_m = clear_m[here].min(clear_m[next]);
        // Take the farthest place in sight; a hidden piece may be followed by a visible one, so look a little further.
        let mut hidden = 0;
        for there in here + 2..line.len() {
            least_m = least_m.min(clear_m[there]);
            let wanted_m = (PULLED * least_m).min(ENOUGH_M).max(LEAST_PULLED_M.min(least_m));
            if room.along_m(line[here], line[there]) >= wanted_m {
                next = there;
                hidden = 0;
            } else {
                hidden += 1;
                if hidden > 40 {
                    break;
                }
            }
        }
        pulled.push(line[next]);
        here = next;
    }
    pulled
}

/// Moves bends to where the two adjoining pieces have more room, up to half a metre of it.
fn roomier(room: &Room, line: &mut [Place]) {
    for step_m in [0.2, 0.1, 0.05, 0.025] {
        for _ in 0..4 {
            let mut moved = false;
            for bend in 1..line.len().saturating_sub(1) {
                let room_m = |place: Place| {
                    room.along_m(line[bend - 1], place)
                        .min(room.along_m(place, line[bend + 1]))
                        .min(ENOUGH_M)
                };
                let mut best = (room_m(line[bend]), line[bend]);
                for by in [
                    (1.0, 0.0),
                    (0.0, 1.0),
                    (-1.0, 0.0),
                    (0.0, -1.0),
                    (0.7, 0.7),
                    (-0.7, 0.7),
                    (-0.7, -0.7),
                    (0.7, -0.7),
                ] {
                    let place = Place::new(
                        line[bend].east_m + step_m * by.0,
                        line[bend].north_m + step_m * by.1,
                    );
                    let has_m = room_m(place);
                    if has_m > best.0 + 1e-6 {
                        best = (has_m, place);
                    }
                }
                if best.1 != line[bend] {
                    line[bend] = best.1;
                    moved = true;
                }
            }
            if !moved {
                break;
            }
        }
    }
}

/// Rounded to the centimetre: nobody can lay it more exactly.
pub(super) fn rounded(place: Place) -> Place {
    Place::new(
        (100.0 * place.east_m).round() / 100.0,
        (100.0 * place.north_m).round() / 100.0,
    )
}

fn finish(room: &Room, raw: &[Place]) -> Option<(Vec<Place>, f64)> {
    let mut line = pulled(room, raw);
    roomier(room, &mut line);
    let mut line: Vec<Place> = line.into_iter().map(rounded).collect();
    line.dedup();
    let clearance_m = room.along_line_m(&line);
    (line.len() > 1 && clearance_m >= KEPT_M).then_some((line, clearance_m))
}

/// Lines from the station into a pocket, one for each distinct end; none if no way leads there.
pub fn guide_lines(
    room: &Room,
    station: Place,
    existing: &[Vec<Place>],
    pocket: &BitGrid,
) -> Vec<(End, Laid)> {
    let Some(start) = room.nearest_cell(station, LEAST_M) else {
        return Vec::new();
    };
    let Some(goals) = goals(room, start, pocket) else {
        return Vec::new();
    };
    let to =
        |from: (usize, usize), goal: (usize, usize)| way(room, from, |column, row| (column, row) == goal);
    let mut found: Vec<(End, Laid)> = Vec::new();
    let mut add = |end: End, raw: Option<Vec<Place>>| {
        let Some((line, clearance_m)) = raw.and_then(|raw| finish(room, &raw)) else {
            return;
        };
        let mut laid = Laid {
            wire_m: length_m(&line) + station.distance_m(line[0]),
            line: [vec![station], line].concat(),
            clearance_m,
        };
        laid.line.dedup();
        if let Some(branch) = branched(room, existing, &laid) {
            laid = branch;
        }
        if found.iter().all(|(_, other)| other.line != laid.line) {
            found.push((end, laid));
        }
    };
    add(End::Far, to(start, goals.far));
    if goals.centre != goals.far {
        let through = to(start, goals.centre).zip(to(goals.centre, goals.far));
        add(
            End::CentreThenFar,
            through.map(|(mut first, second)| {
                first.extend(second.into_iter().skip(1));
                first
            }),
        );
    }
    found
}

/// Reaches the same end by branching off an existing guide run, if that saves at least a third of the wire.
fn branched(room: &Room, existing: &[Vec<Place>], laid: &Laid) -> Option<Laid> {
    const SAVES: f64 = 0.67;
    let end = *laid.line.last()?;
    let goal = room.nearest_cell(end, LEAST_M)?;
    let mut best: Option<Laid> = None;
    for guide in existing.iter().filter(|guide| guide.len() > 1) {
        let reach_m = 0.75 * room.grid.cell_m;
        let is_on = |column: usize, row: usize| {
            let place = room.grid.centre(column, row);
            guide
                .windows(2)
                .any(|pair| place.off_piece_m(pair[0], pair[1]) <= reach_m)
        };
        let Some(mut raw) = way(room, goal, is_on) else {
            continue;
        };
        raw.reverse();
        let Some((line, clearance_m)) = finish(room, &raw) else {
            continue;
        };
        let wire_m = length_m(&line);
        if wire_m < SAVES * laid.wire_m && best.as_ref().is_none_or(|best| wire_m < best.wire_m) {
            let mut whole = up_to(guide, line[0]);
            whole.extend(line);
            whole.dedup_by(|a, b| a.distance_m(*b) < 0.005);
            best = Some(Laid {
                line: whole,
                clearance_m,
                wire_m,
            });
        }
    }
    best
}

/// Corners of a line from its beginning to its place nearest to another one, including that place.
fn up_to(line: &[Place], place: Place) -> Vec<Place> {
    let nearest = line
        .windows(2)
        .enumerate()
        .min_by(|a, b| {
            let off_m = |pair: &[Place]| place.off_piece_m(pair[0], pair[1]);
            off_m(a.1).total_cmp(&off_m(b.1))
        })
        .map_or(0, |(number, _)| number);
    let mut way = line[..=nearest].to_vec();
    if let Some(next) = line.get(nearest + 1) {
        let from = line[nearest];
        let (dx, dy) = (next.east_m - from.east_m, next.north_m - from.north_m);
        let square = dx * dx + dy * dy;
        if square > 0.0 {
            let along = (((place.east_m - from.east_m) * dx + (place.north_m - from.north_m) * dy) / square)
                .clamp(0.0, 1.0);
            way.push(rounded(Place::new(
                from.east_m + along * dx,
                from.north_m + along * dy,
            )));
        }
    }
    way
}

/// Fraction of the last stretch of a line, on which machines leave it, that lies in a pocket.
pub(super) fn inside_fraction(line: &[Place], exit_fraction: (f64, f64), pocket: &BitGrid) -> f64 {
    const LOOKS: usize = 40;
    let whole_m = length_m(line);
    let inside = (0..LOOKS).filter(|look| {
        let part = (*look as f64 + 0.5) / LOOKS as f64;
        let mut left_m = whole_m * (exit_fraction.0 + part * (exit_fraction.1 - exit_fraction.0));
        let place = line.windows(2).find_map(|pair| {
            let piece_m = pair[0].distance_m(pair[1]);
            if left_m <= piece_m {
                let share = left_m / piece_m.max(1e-9);
                return Some(pair[0].towards(pair[1], share));
            }
            left_m -= piece_m;
            None
        });
        place
            .and_then(|place| pocket.grid.cell_at(place))
            .is_some_and(|(column, row)| pocket.get(column, row))
    });
    inside.count() as f64 / LOOKS as f64
}
