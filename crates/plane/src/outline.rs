//! What outline do these squares have?
//!
//! ```text
//!   . . # .        +-+           squares that share an edge are one part; squares that only share a corner are two,
//!   # # . .    +---+-+           so that every ring meets itself nowhere
//!   # # . .    |   |
//!              +---+
//! ```
//!
//! Boundary following on the lattice of cell corners with the ground on the left, always turning left where two cells
//! touch at a corner (Rosenfeld & Kak 1982, section 11.1; four-connected ground, eight-connected rest).
//!
//! Exact: the rings of a part, without holes, enclose the area of its cells.
//!
//! Cost: one step for every cell side on the outline, times the logarithm of their number.

use crate::BitGrid;
use crate::raster::bits_on;
use std::collections::BTreeMap;
use std::collections::HashMap;
use tussock_types::Place;

/// A corner of the lattice.
type LatticeCorner = (u32, u32);

/// East, north, west, south.
const STEPS: [(i64, i64); 4] = [(1, 0), (0, 1), (-1, 0), (0, -1)];

/// Closed outlines of the connected parts of a mask: for each part its outer ring (anticlockwise), then its holes
/// (clockwise), without corners on straight lines. Parts are in the order of their southernmost, then westernmost cell.
pub fn outlines(mask: &BitGrid) -> Vec<Vec<Vec<Place>>> {
    let parts = Parts::of(mask);
    let sides = sides_of(mask);
    let mut is_used = vec![false; sides.len()];
    let mut rings_by_part: BTreeMap<usize, Vec<Vec<LatticeCorner>>> = BTreeMap::new();
    for start in 0..sides.len() {
        if is_used[start] {
            continue;
        }
        // The lowest, then westernmost corner of a ring: the ring turns there.
        let (corner, direction) = unpacked(sides[start]);
        let part = parts.part_at(cell_on_left(corner, direction));
        let ring = follow(&sides, &mut is_used, start);
        let rings = rings_by_part.entry(part).or_default();
        split_where_it_touches_itself(&ring, rings);
    }
    let grid = mask.grid;
    let place = |&(x, y): &LatticeCorner| {
        Place::new(
            grid.east_min_m + f64::from(x) * grid.cell_m,
            grid.north_min_m + f64::from(y) * grid.cell_m,
        )
    };
    rings_by_part
        .into_values()
        .map(|mut rings| {
            rings.sort_by_key(|ring| doubled_area(ring) < 0);
            rings
                .iter()
                .map(|ring| ring.iter().chain(ring.first()).map(place).collect())
                .collect()
        })
        .collect()
}

fn packed(corner: LatticeCorner, direction: usize) -> u128 {
    u128::from(corner.1) << 64 | u128::from(corner.0) << 8 | direction as u128
}

fn unpacked(side: u128) -> (LatticeCorner, usize) {
    (((side >> 8) as u32, (side >> 64) as u32), (side & 3) as usize)
}

/// Every cell side between ground and rest, with ground on its left, sorted by its first corner.
fn sides_of(mask: &BitGrid) -> Vec<u128> {
    let rows = mask.grid.rows;
    let none = vec![0u64; mask.row_words()];
    let mut sides = Vec::new();
    for row in 0..rows {
        let (words, y) = (mask.row(row), row as u32);
        let below = if row > 0 { mask.row(row - 1) } else { &none };
        let above = if row + 1 < rows { mask.row(row + 1) } else { &none };
        for (start, end) in mask.runs(row) {
            sides.push(packed((start as u32, y + 1), 3));
            sides.push(packed((end as u32, y), 1));
        }
        for (word, &bits) in words.iter().enumerate() {
            for x in columns_on(bits & !below[word], word) {
                sides.push(packed((x, y), 0));
            }
            for x in columns_on(bits & !above[word], word) {
                sides.push(packed((x + 1, y + 1), 2));
            }
        }
    }
    sides.sort_unstable();
    sides
}

fn columns_on(bits: u64, word: usize) -> impl Iterator<Item = u32> {
    bits_on(bits).map(move |bit| (word * 64 + bit) as u32)
}

fn cell_on_left((x, y): LatticeCorner, direction: usize) -> (u32, u32) {
    match direction {
        0 => (x, y),
        1 => (x.wrapping_sub(1), y),
        2 => (x.wrapping_sub(1), y.wrapping_sub(1)),
        _ => (x, y.wrapping_sub(1)),
    }
}

/// Follows one ring from a side on; returns the corners at which it turns.
fn follow(sides: &[u128], is_used: &mut [bool], start: usize) -> Vec<LatticeCorner> {
    let mut ring = Vec::new();
    let mut side = start;
    let mut came: Option<usize> = None;
    loop {
        let (corner, direction) = unpacked(sides[side]);
        is_used[side] = true;
        if came != Some(direction) {
            ring.push(corner);
        }
        let (dx, dy) = STEPS[direction];
        let next = (
            (i64::from(corner.0) + dx) as u32,
            (i64::from(corner.1) + dy) as u32,
        );
        // Left first: where two cells touch at a corner, the ring stays with its own.
        let turns = [(direction + 1) % 4, direction, (direction + 3) % 4];
        let found = turns
            .iter()
            .find_map(|&turn| sides.binary_search(&packed(next, turn)).ok());
        came = Some(direction);
        match found {
            Some(found) if found != start && !is_used[found] => side = found,
            _ => return ring,
        }
    }
}

/// A part can touch itself at a corner; its ring is then divided into rings that never meet themselves.
fn split_where_it_touches_itself(ring: &[LatticeCorner], rings: &mut Vec<Vec<LatticeCorner>>) {
    let mut path: Vec<LatticeCorner> = Vec::new();
    let mut position: HashMap<LatticeCorner, usize> = HashMap::new();
    for &corner in ring {
        if let Some(&at) = position.get(&corner) {
            let lobe = path.split_off(at);
            for passed in &lobe[1..] {
                position.remove(passed);
            }
            rings.push(lobe);
        }
        position.insert(corner, path.len());
        path.push(corner);
    }
    rings.push(path);
}

fn doubled_area(ring: &[LatticeCorner]) -> i64 {
    let signed = |(x, y): LatticeCorner| (i64::from(x), i64::from(y));
    ring.iter()
        .zip(ring.iter().cycle().skip(1))
        .map(|(&a, &b)| {
            let ((ax, ay), (bx, by)) = (signed(a), signed(b));
            ax * by - bx * ay
        })
        .sum()
}

/// Four-connected parts of a mask, by runs of cells.
struct Parts {
    /// For each row, its runs: first column, column after the last, number of the part.
    rows: Vec<Vec<(u32, u32, usize)>>,
}

impl Parts {
    fn of(mask: &BitGrid) -> Self {
        let mut rows: Vec<Vec<(u32, u32, usize)>> = Vec::with_capacity(mask.grid.rows);
        let mut parent: Vec<usize> = Vec::new();
        for row in 0..mask.grid.rows {
            let below = rows.last().map_or(&[][..], Vec::as_slice);
            let mut runs = Vec::new();
            let mut first_near = 0;
            for (start, end) in mask.runs(row) {
                let (start, end) = (start as u32, end as u32);
                let number = parent.len();
                parent.push(number);
                while first_near < below.len() && below[first_near].1 <= start {
                    first_near += 1;
                }
                for &(_, _, other) in below[first_near..].iter().take_while(|run| run.0 < end) {
                    let (a, b) = (root(&mut parent, number), root(&mut parent, other));
                    let (low, high) = (a.min(b), a.max(b));
                    parent[high] = low;
                }
                runs.push((start, end, number));
            }
            rows.push(runs);
        }
        for run in rows.iter_mut().flatten() {
            run.2 = root(&mut parent, run.2);
        }
        Self { rows }
    }

    fn part_at(&self, (column, row): (u32, u32)) -> usize {
        let runs = self.rows.get(row as usize).map_or(&[][..], Vec::as_slice);
        let after = runs.partition_point(|run| run.0 <= column);
        runs[..after].last().map_or(0, |run| run.2)
    }
}

/// Root of a set, halving the path to it on the way (Tarjan & van Leeuwen 1984).
fn root(parent: &mut [usize], mut number: usize) -> usize {
    while parent[number] != number {
        parent[number] = parent[parent[number]];
        number = parent[number];
    }
    number
}

#[cfg(test)]
#[path = "outline_tests.rs"]
mod tests;
