//! A small bouncing walk that fills the squares of the garden.

#![allow(clippy::unwrap_used)]

use super::{CUT_WIDTH_M, HOURS, SPEED_MPS, WALK_SEED, inside, is_lawn, kept_out};
use tussock_types::*;

struct Walk {
    state: u64,
}

impl Walk {
    /// The next number from 0 to 1 (splitmix64).
    fn draw(&mut self) -> f64 {
        self.state = self.state.wrapping_add(0x9E37_79B9_7F4A_7C15);
        let mut z = self.state;
        z = (z ^ (z >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
        ((z ^ (z >> 31)) >> 11) as f64 / (1u64 << 53) as f64
    }
}

/// Fine cells behind the squares.
pub(super) struct Count {
    pub(super) grid: Grid,
    pub(super) lawn: Vec<bool>,
    pub(super) visits: Vec<u32>,
    pub(super) first_s: Vec<f32>,
    pub(super) last_s: Vec<f32>,
    pub(super) lines: Vec<Place>,
    pub(super) filled: Vec<(f64, u64)>,
}

pub(super) fn walk() -> Count {
    let grid = Grid {
        east_min_m: -21.6,
        north_min_m: -13.6,
        cell_m: 0.1,
        columns: 480,
        rows: 272,
    };
    let out = kept_out();
    let places: Vec<Place> = (0..grid.cells())
        .map(|i| grid.centre(i % grid.columns, i / grid.columns))
        .collect();
    let lawn: Vec<bool> = places.iter().map(|&place| is_lawn(place)).collect();
    let free: Vec<bool> = places
        .iter()
        .zip(&lawn)
        .map(|(&place, &lawn)| lawn && !out.iter().any(|ring| inside(ring, place)))
        .collect();
    let mut count = Count {
        grid,
        visits: vec![0; lawn.len()],
        first_s: vec![f32::NAN; lawn.len()],
        last_s: vec![f32::NAN; lawn.len()],
        lawn,
        lines: Vec::new(),
        filled: vec![(0.0, 0)],
    };
    let mut walk = Walk { state: WALK_SEED };
    let mut place = Place::new(-4.0, -11.0);
    let mut heading = 1.2f64;
    let mut visited = 0;
    let step_m = 0.05;
    let steps = (HOURS * 3600.0 * SPEED_MPS / step_m) as usize;
    count.lines.push(place);
    for step in 0..steps {
        let time_s = step as f64 * step_m / SPEED_MPS;
        let next = Place::new(
            place.east_m + step_m * heading.cos(),
            place.north_m + step_m * heading.sin(),
        );
        let is_free = grid
            .cell_at(next)
            .is_some_and(|(column, row)| free[row * grid.columns + column]);
        if is_free {
            place = next;
        } else {
            heading = walk.draw() * std::f64::consts::TAU;
            if count.lines.last() != Some(&place) {
                count.lines.push(place);
            }
        }
        let (column, row) = grid.cell_at(place).unwrap();
        for row in row - 1..=row + 1 {
            for column in column - 1..=column + 1 {
                let cell = row * grid.columns + column;
                let is_under = grid.centre(column, row).distance_m(place) <= CUT_WIDTH_M / 2.0;
                if !is_under || !free[cell] {
                    continue;
                }
                if count.visits[cell] == 0 {
                    count.first_s[cell] = time_s as f32;
                    visited += 1;
                }
                if count.visits[cell] == 0 || time_s - f64::from(count.last_s[cell]) > 30.0 {
                    count.visits[cell] += 1;
                }
                count.last_s[cell] = time_s as f32;
            }
        }
        if (step + 1) % (steps / 40) == 0 {
            count
                .filled
                .push(((time_s + step_m / SPEED_MPS) / 3600.0, visited));
        }
    }
    count
}

pub(super) fn squares(count: &Count) -> Cells {
    let k = 2;
    let grid = Grid {
        cell_m: count.grid.cell_m * k as f64,
        columns: count.grid.columns / k,
        rows: count.grid.rows / k,
        ..count.grid
    };
    let mut cells = Cells {
        grid,
        lawn_fraction: Vec::new(),
        visited_probability: Vec::new(),
        visits_expected: Vec::new(),
        first_visit_s: Vec::new(),
        last_visit_s: Vec::new(),
    };
    for square in 0..grid.cells() {
        let (column, row) = (square % grid.columns, square / grid.columns);
        let parts: Vec<usize> = (0..k * k)
            .map(|part| (row * k + part / k) * count.grid.columns + column * k + part % k)
            .filter(|&cell| count.lawn[cell])
            .collect();
        let lawn = parts.len() as f32;
        let of_lawn = |sum: f32| if lawn > 0.0 { sum / lawn } else { 0.0 };
        let seen = parts.iter().filter(|&&cell| count.visits[cell] > 0).count() as f32;
        let visits: u32 = parts.iter().map(|&cell| count.visits[cell]).sum();
        cells.lawn_fraction.push(lawn / (k * k) as f32);
        cells.visited_probability.push(of_lawn(seen));
        cells.visits_expected.push(of_lawn(visits as f32));
        // f32::min and max pass NaN by where the other is a number.
        cells.first_visit_s.push(
            parts
                .iter()
                .map(|&cell| count.first_s[cell])
                .fold(f32::NAN, f32::min),
        );
        cells.last_visit_s.push(
            parts
                .iter()
                .map(|&cell| count.last_s[cell])
                .fold(f32::NAN, f32::max),
        );
    }
    cells
}
