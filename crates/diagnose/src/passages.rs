//! Where does the lawn narrow so much that a machine gets through only by luck?
//!
//! Question: which necks divide the ground, how wide and long are they, what lies behind each, and how often should a
//! roaming machine get through?
//!
//! Method. Cells are taken in descending order of clearance and joined (a component tree; Salembier, Oliveras & Garrido
//! 1998). Where two parts meet that are both clearly wider than the place where they meet, there is a neck, twice as wide as
//! its clearance: the best way between the two goes through it. Its exact width is the shortest chord between edges there.
//! The ground behind it is what is nearer to the far part than to the near one, measured along the ground.
//!
//! Crossings after Buffon (Santalo 1976): a machine with isotropic headings that drives L metres in open ground A crosses a
//! line of free length g `2 L g / (pi A)` times, counting both directions; of these, a fraction
//! `1 / (1 + 0.43 (l / g)^0.88)` are whole passages through a neck of length l, as found by simulation (within 12 % for g
//! from 0.3 m, l up to 8 m).
//!
//! Exact: widths. Approximate: lengths and areas, by the cell. Cost: n log n in cells, and a few passes per neck.

use crate::clearance::Clearance;
use std::collections::VecDeque;
use tussock_plane::{Region, nearest_on_piece};
use tussock_types::Place;
use tussock_types::math;

/// Wider places are not passages.
const WIDEST_M: f64 = 6.0;
/// Both parts must have a place that is wider than the neck by this factor and by this much.
const WIDER_FACTOR: f64 = 1.25;
const WIDER_M: f64 = 0.1;
/// Smaller parts are only nooks.
const LEAST_BEHIND_M2: f64 = 1.0;
/// A garden with more necks than this needs to be looked at; a list would not help.
const MOST: usize = 24;

/// A narrow connection between two parts of the ground.
#[derive(Clone, Debug)]
pub struct Neck {
    /// From side to side at its narrowest.
    pub across: [Place; 2],
    /// Its middle.
    pub middle: Place,
    /// Width at its narrowest.
    pub width_m: f64,
    /// Length over which it stays within a quarter of its narrowest width.
    pub length_m: f64,
    /// Cells of the ground behind it, seen from the station; without a station, those of the smaller side.
    pub behind: Vec<bool>,
    /// Ground behind it.
    pub behind_m2: f64,
    /// Ground on both sides together.
    pub all_m2: f64,
    /// Way along the ground from each cell to the border between the two sides; infinite (not worked out) beyond the
    /// distance that matters.
    border_m: Vec<f32>,
}

/// The distance to the border is worked out up to this value.
const BORDER_WITHIN_M: f64 = 6.0;

/// Necks of the ground, narrowest first. `home` is a cell at the station.
pub fn necks(clearance: &Clearance, region: &Region, home: Option<usize>) -> Vec<Neck> {
    let mut found: Vec<Neck> = saddles(clearance)
        .into_iter()
        .filter_map(|saddle| neck(clearance, region, saddle, home))
        .collect();
    found.sort_by(|a, b| a.width_m.total_cmp(&b.width_m));
    found.truncate(MOST);
    found
}

/// A place where two parts meet, and the widest place of each.
#[derive(Clone, Copy, Debug)]
struct Saddle {
    cell: usize,
    clear_m: f64,
    peaks: [usize; 2],
}

fn saddles(clearance: &Clearance) -> Vec<Saddle> {
    let clear = &clearance.clear_m;
    let mut order: Vec<u32> = (0..clear.len() as u32)
        .filter(|cell| clear[*cell as usize] > 0.0)
        .collect();
    order.sort_unstable_by(|a, b| clear[*b as usize].total_cmp(&clear[*a as usize]).then(a.cmp(b)));
    const NONE: u32 = u32::MAX;
    let mut parent = vec![NONE; clear.len()];
    let mut peak: Vec<u32> = vec![NONE; clear.len()];
    fn root(parent: &mut [u32], mut cell: u32) -> u32 {
        while parent[cell as usize] != cell {
            parent[cell as usize] = parent[parent[cell as usize] as usize];
            cell = parent[cell as usize];
        }
        cell
    }
    let columns = clearance.grid.columns as isize;
    let around = [
        -1,
        1,
        -columns,
        columns,
        -columns - 1,
        -columns + 1,
        columns - 1,
        columns + 1,
    ];
    let mut found = Vec::new();
    for cell in order {
        parent[cell as usize] = cell;
        peak[cell as usize] = cell;
        let level_m = f64::from(clear[cell as usize]);
        for step in around {
            let Some(next) = (cell as usize)
                .checked_add_signed(step)
                .filter(|next| *next < clear.len())
            else {
                continue;
            };
            if parent[next] == NONE {
                continue;
            }
            let (a, b) = (root(&mut parent, cell), root(&mut parent, next as u32));
            if a == b {
                continue;
            }
            let (high, low) = if clear[peak[a as usize] as usize] >= clear[peak[b as usize] as usize] {
                (a, b)
            } else {
                (b, a)
            };
            let low_m = f64::from(clear[peak[low as usize] as usize]);
            if 2.0 * level_m <= WIDEST_M && low_m >= WIDER_FACTOR * level_m + WIDER_M {
                found.push(Saddle {
                    cell: cell as usize,
                    clear_m: level_m,
                    peaks: [peak[high as usize] as usize, peak[low as usize] as usize],
                });
            }
            parent[low as usize] = high;
        }
    }
    found
}

fn neck(clearance: &Clearance, region: &Region, saddle: Saddle, home: Option<usize>) -> Option<Neck> {
    let cell_m = clearance.grid.cell_m;
    let wide_m = (WIDER_FACTOR * saddle.clear_m).max(saddle.clear_m + 0.5 * WIDER_M);
    let sides = saddle.peaks.map(|peak| clearance.joined(peak, wide_m));
    if sides[0][saddle.peaks[1]] {
        // A second way round joins them: this neck separates nothing.
        return None;
    }
    let (side, seeds) = nearer(clearance, &sides);
    let off_m = |cell: usize| clearance.centre(cell).distance_m(clearance.centre(seeds[cell]));
    // The smallest sum of the ways to both sides, over the cells where they meet.
    let mut length_m = f64::INFINITY;
    let mut border: VecDeque<usize> = VecDeque::new();
    let mut border_m = vec![f32::INFINITY; side.len()];
    let mut areas = [0_usize; 2];
    for cell in 0..side.len() {
        let mine = side[cell];
        if mine == NOWHERE {
            continue;
        }
        areas[usize::from(mine)] += 1;
        for next in clearance.beside(cell) {
            if side[next] != NOWHERE && side[next] != mine {
                length_m = length_m.min(off_m(cell) + off_m(next) + cell_m);
                if border_m[cell] > 0.0 {
                    border_m[cell] = 0.0;
                    border.push_back(cell);
                }
            }
        }
    }
    if length_m.is_infinite() {
        return None;
    }
    let far = match home.map(|cell| side[cell]) {
        Some(near) if near != NOWHERE => 1 - near,
        _ => u8::from(areas[1] <= areas[0]),
    };
    let behind_m2 = areas[usize::from(far)] as f64 * cell_m * cell_m;
    let all_m2 = (areas[0] + areas[1]) as f64 * cell_m * cell_m;
    if behind_m2.min(all_m2 - behind_m2) < LEAST_BEHIND_M2 {
        return None;
    }
    while let Some(cell) = border.pop_front() {
        let next_m = border_m[cell] + cell_m as f32;
        if f64::from(next_m) > BORDER_WITHIN_M {
            continue;
        }
        for next in clearance.beside(cell) {
            if side[next] != NOWHERE && border_m[next] > next_m {
                border_m[next] = next_m;
                border.push_back(next);
            }
        }
    }
    let (across, width_m) = chord(clearance, region, saddle);
    Some(Neck {
        middle: across[0].middle(across[1]),
        across,
        width_m,
        // Beyond a mouth of half width h there is room for 1.25 h after 0.75 h.
        length_m: (length_m - 1.5 * saddle.clear_m).max(0.0),
        behind: side.iter().map(|one| *one == far).collect(),
        behind_m2,
        all_m2,
        border_m,
    })
}

const NOWHERE: u8 = u8::MAX;

/// For each cell of the ground, the side that is nearer along it and the previous cell on the way from that side.
fn nearer(clearance: &Clearance, sides: &[Vec<bool>; 2]) -> (Vec<u8>, Vec<usize>) {
    let mut side = vec![NOWHERE; clearance.clear_m.len()];
    let mut seeds = vec![0_usize; side.len()];
    let mut queue = VecDeque::new();
    for (number, cells) in sides.iter().enumerate() {
        for cell in (0..cells.len()).filter(|cell| cells[*cell]) {
            side[cell] = number as u8;
            seeds[cell] = cell;
            queue.push_back(cell);
        }
    }
    while let Some(cell) = queue.pop_front() {
        for next in clearance.beside(cell) {
            if side[next] == NOWHERE && clearance.clear_m[next] > 0.0 {
                side[next] = side[cell];
                seeds[next] = seeds[cell];
                queue.push_back(next);
            }
        }
    }
    (side, seeds)
}

/// The shortest chord between two edges near a saddle, no shorter than the cells allow.
fn chord(clearance: &Clearance, region: &Region, saddle: Saddle) -> ([Place; 2], f64) {
    let cell_m = clearance.grid.cell_m;
    let at = clearance.centre(saddle.cell);
    let about_m = 2.0 * saddle.clear_m;
    let near: Vec<(Place, Place)> = region
        .edges()
        .filter(|(from, to)| at.off_piece_m(*from, *to) <= saddle.clear_m + 4.0 * cell_m)
        .collect();
    let mut best: Option<([Place; 2], f64)> = None;
    for (number, one) in near.iter().enumerate() {
        for other in &near[number + 1..] {
            // Edges that share a corner meet there, and nothing passes between them.
            let shares = [one.0, one.1]
                .iter()
                .any(|end| end.distance_m(other.0).min(end.distance_m(other.1)) < 1e-6);
            if shares {
                continue;
            }
            let ends = between(*one, *other, at);
            let length_m = ends[0].distance_m(ends[1]);
            let middle = ends[0].middle(ends[1]);
            let fits = (length_m - about_m).abs() <= 3.0 * cell_m && middle.distance_m(at) <= 4.0 * cell_m;
            if fits && best.is_none_or(|(_, least_m)| length_m < least_m) {
                best = Some((ends, length_m));
            }
        }
    }
    best.unwrap_or_else(|| {
        // If there is no such pair, use the cells.
        let half_m = saddle.clear_m;
        (
            [
                Place::new(at.east_m - half_m, at.north_m),
                Place::new(at.east_m + half_m, at.north_m),
            ],
            about_m,
        )
    })
}

/// The nearest places of two pieces; if several are equally near (parallel edges), those closest to a third place.
fn between(one: (Place, Place), other: (Place, Place), near: Place) -> [Place; 2] {
    let start = nearest_on_piece(one.0, one.1, near);
    let mut best = [start, nearest_on_piece(other.0, other.1, start)];
    let mut least_m = best[0].distance_m(best[1]);
    let mut take = |ends: [Place; 2]| {
        let length_m = ends[0].distance_m(ends[1]);
        // Rounding must not prefer a far end of parallel edges to the middle.
        if length_m < least_m - 1e-6 {
            (best, least_m) = (ends, length_m);
        }
    };
    let start = nearest_on_piece(other.0, other.1, near);
    take([nearest_on_piece(one.0, one.1, start), start]);
    for end in [other.0, other.1] {
        take([nearest_on_piece(one.0, one.1, end), end]);
    }
    for end in [one.0, one.1] {
        take([end, nearest_on_piece(other.0, other.1, end)]);
    }
    best
}

/// How well a log places the machine.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Positions {
    /// Errors of centimetres or decimetres.
    Fine,
    /// Errors of metres: half a metre and more is left.
    Coarse,
}

impl Positions {
    /// By the remaining error, per axis.
    pub fn of(error_m: f64) -> Self {
        if error_m > 0.4 { Self::Coarse } else { Self::Fine }
    }
}

/// What a path did at a neck.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Traffic {
    /// Number of crossings. A lower bound for positions with errors.
    pub crossings: usize,
    /// Path on the far side.
    pub behind_m: f64,
    /// The part of it that is deeper than a crossing requires: position errors alone do not get there.
    pub deep_m: f64,
    /// Path on both sides.
    pub all_m: f64,
}

impl Neck {
    /// Width that is free for the machine's middle.
    pub fn free_m(&self, setback_m: f64) -> f64 {
        self.width_m - 2.0 * setback_m
    }

    /// Whether a place lies behind it; `None` off the ground.
    pub fn is_behind(&self, clearance: &Clearance, place: Place) -> Option<bool> {
        let cell = clearance.cell(place)?;
        (clearance.clear_m[cell] > 0.0).then(|| self.behind[cell])
    }

    /// Number of whole passages through it, in both directions, that a roaming machine makes on this much path.
    pub fn crossings_expected(&self, path_m: f64, setback_m: f64) -> f64 {
        let free_m = self.free_m(setback_m);
        if free_m <= 0.0 || !(self.all_m2 > 0.0) {
            return 0.0;
        }
        let length_m = self.length_m + 2.0 * setback_m.max(0.0);
        let through = 1.0 / (1.0 + 0.43 * math::powf(length_m / free_m, 0.88));
        2.0 * path_m * free_m / (std::f64::consts::PI * self.all_m2) * through
    }

    /// Share of the path that falls behind it, over its fair share, for outings of a given length that start in front of it:
    /// a two-state Markov chain along the path.
    pub fn share_expected_fraction(&self, outing_m: f64, setback_m: f64) -> f64 {
        let per_m = self.crossings_expected(1.0, setback_m) / 2.0;
        let front_m2 = (self.all_m2 - self.behind_m2).max(1e-9);
        // n counts both directions over all ground: take half of it, over each side's own share of the ground.
        let (into, out) = (
            per_m * self.all_m2 / front_m2,
            per_m * self.all_m2 / self.behind_m2.max(1e-9),
        );
        let x = (into + out) * outing_m;
        if x <= 0.0 {
            return 0.0;
        }
        if x < 1e-6 {
            return 0.5 * x;
        }
        1.0 + math::exp_m1(-x) / x
    }

    /// Follows a path, given as unbroken lines of places.
    ///
    /// A crossing counts once the machine is deeper than `hysteresis_m` on the other side and has driven at least
    /// `confirm_m` there: position errors jump across, but they do not drive around.
    pub fn traffic<'a>(
        &self,
        clearance: &Clearance,
        lines: impl Iterator<Item = &'a [Place]>,
        hysteresis_m: f64,
        confirm_m: f64,
    ) -> Traffic {
        let step_m = clearance.grid.cell_m;
        let mut traffic = Traffic::default();
        let deep_m = hysteresis_m.min(0.9 * BORDER_WITHIN_M) as f32;
        let mut on: Option<bool> = None;
        // Distance driven deep on the other side since it was last deep on this one.
        let mut over_m = 0.0;
        for line in lines {
            for pair in line.windows(2) {
                let (by_m, places) = pair[0].pieces(pair[1], step_m);
                for place in places {
                    let Some(cell) = clearance
                        .cell(place)
                        .filter(|cell| clearance.clear_m[*cell] > 0.0)
                    else {
                        continue;
                    };
                    let behind = self.behind[cell];
                    traffic.all_m += by_m;
                    if behind {
                        traffic.behind_m += by_m;
                    }
                    if self.border_m[cell] < deep_m {
                        continue;
                    }
                    if on == Some(behind) {
                        over_m = 0.0;
                    } else {
                        over_m += by_m;
                        if over_m >= confirm_m {
                            traffic.crossings += usize::from(on.is_some());
                            on = Some(behind);
                            if behind {
                                traffic.deep_m += over_m;
                            }
                            over_m = 0.0;
                            continue;
                        }
                    }
                    if behind && on == Some(true) {
                        traffic.deep_m += by_m;
                    }
                }
            }
        }
        traffic
    }
}

impl Traffic {
    /// Whether the far side was entered at all. `positions` says whether crossings can be believed; if not, a hundredth of
    /// the fair share of path must lie deep in it, because a machine that gets in stays for long.
    pub fn has_entered(&self, neck: &Neck, positions: Positions) -> bool {
        let fair_m = self.all_m * neck.behind_m2 / neck.all_m2.max(1e-9);
        match positions {
            Positions::Fine => self.crossings > 0 || self.deep_m >= 0.02 * fair_m,
            Positions::Coarse => self.deep_m >= 0.01 * fair_m,
        }
    }

    /// Path behind the neck over its fair share.
    pub fn share_ratio(&self, neck: &Neck) -> f64 {
        if self.all_m > 0.0 && neck.behind_m2 > 0.0 {
            self.behind_m / self.all_m / (neck.behind_m2 / neck.all_m2)
        } else {
            0.0
        }
    }
}

#[cfg(test)]
#[path = "passages_tests.rs"]
mod tests;
