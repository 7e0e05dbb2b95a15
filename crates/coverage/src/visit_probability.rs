//! How likely is it that a cell was visited?
//!
//! Question: positions are only known to within an error; which ground was visited in most of the pasts that agree with the
//! log, and how much do those differ? Each past is marked as a mask of its own. The number of masks that hold a cell is
//! counted 64 cells at a time, in binary digits kept in planes (vertical counters). Exact for the masks given. Cost: a few
//! word operations per word and mask.

use tussock_plane::BitGrid;

/// Counts over the masks of several pasts.
pub struct VisitProbability {
    lawn: BitGrid,
    /// Binary digits of each cell's count, least significant first.
    planes: Vec<Vec<u64>>,
    /// Visited part of the lawn in each past.
    pub fractions: Vec<f64>,
}

impl VisitProbability {
    /// No past yet.
    pub fn new(lawn: &BitGrid) -> Self {
        Self {
            lawn: lawn.clone(),
            planes: Vec::new(),
            fractions: Vec::new(),
        }
    }

    /// Number of pasts.
    pub fn pasts(&self) -> usize {
        self.fractions.len()
    }

    /// Adds the mask of one past. It must be on the lawn's grid.
    pub fn add(&mut self, mask: &BitGrid) {
        let mut cells = 0_u64;
        for (word, lawn) in mask.words().iter().zip(self.lawn.words()) {
            cells += u64::from((word & lawn).count_ones());
        }
        self.fractions
            .push(cells as f64 / (self.lawn.count() as f64).max(1.0));
        // One more digit when all are needed.
        if self.fractions.len() >= 1 << self.planes.len() {
            self.planes.push(vec![0; mask.words().len()]);
        }
        for (at, (word, lawn)) in mask.words().iter().zip(self.lawn.words()).enumerate() {
            let mut carry = word & lawn;
            for plane in &mut self.planes {
                if carry == 0 {
                    break;
                }
                let both = plane[at] & carry;
                plane[at] ^= carry;
                carry = both;
            }
        }
    }

    /// The number of pasts in which a cell was visited.
    pub fn times(&self, column: usize, row: usize) -> u32 {
        let at = row * self.lawn.row_words() + column / 64;
        self.planes.iter().enumerate().fold(0, |sum, (digit, plane)| {
            sum + (((plane[at] >> (column % 64)) & 1) as u32) * (1 << digit)
        })
    }

    /// Cells visited in more than half of the pasts.
    pub fn mostly(&self) -> BitGrid {
        let least = (self.pasts() / 2 + 1) as u32;
        let mut mask = BitGrid::new(self.lawn.grid);
        for (at, word) in mask.words_mut().iter_mut().enumerate() {
            // Compares the counts with `least`, digit by digit from the top.
            let (mut more, mut same) = (0_u64, u64::MAX);
            for (digit, plane) in self.planes.iter().enumerate().rev() {
                if least >> digit & 1 == 1 {
                    same &= plane[at];
                } else {
                    more |= same & plane[at];
                    same &= !plane[at];
                }
            }
            *word = more | same;
        }
        mask.and_in_place(&self.lawn);
        mask
    }

    /// Mean visited part of the lawn.
    pub fn mean_fraction(&self) -> f64 {
        self.fractions.iter().sum::<f64>() / (self.pasts() as f64).max(1.0)
    }

    /// Standard deviation of the visited part from past to past.
    pub fn fraction_sd(&self) -> f64 {
        let mean = self.mean_fraction();
        let squares: f64 = self
            .fractions
            .iter()
            .map(|fraction| (fraction - mean).powi(2))
            .sum();
        (squares / (self.pasts() as f64 - 1.0).max(1.0)).sqrt()
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use rand::{RngExt, SeedableRng};
    use rand_chacha::ChaCha8Rng;
    use tussock_types::Grid;

    const SEED: u64 = 20_260_502;

    /// The slow twin: one number for each cell.
    #[test]
    fn planes_count_what_a_number_for_each_cell_counts() {
        let grid = Grid {
            east_min_m: 0.0,
            north_min_m: 0.0,
            cell_m: 0.1,
            columns: 150,
            rows: 9,
        };
        let mut dice = ChaCha8Rng::seed_from_u64(SEED);
        let mut random = |share: f64| {
            let mut mask = BitGrid::new(grid);
            for row in 0..grid.rows {
                for column in 0..grid.columns {
                    if dice.random::<f64>() < share {
                        mask.set(column, row);
                    }
                }
            }
            mask
        };
        let lawn = random(0.8);
        for pasts in [1, 2, 3, 7, 8, 16, 17] {
            let masks: Vec<BitGrid> = (0..pasts).map(|_| random(0.5)).collect();
            let mut likely = VisitProbability::new(&lawn);
            masks.iter().for_each(|mask| likely.add(mask));
            let mostly = likely.mostly();
            for row in 0..grid.rows {
                for column in 0..grid.columns {
                    let on_lawn = lawn.get(column, row);
                    let times = masks
                        .iter()
                        .filter(|mask| on_lawn && mask.get(column, row))
                        .count();
                    assert_eq!(likely.times(column, row) as usize, times);
                    assert_eq!(mostly.get(column, row), 2 * times > pasts, "{times} of {pasts}");
                }
            }
            let mut last = masks[pasts - 1].clone();
            last.and_in_place(&lawn);
            assert_eq!(
                likely.fractions[pasts - 1],
                last.count() as f64 / lawn.count() as f64
            );
        }
    }
}
