//! When was each square last driven over?
//!
//! The rolling state of a garden: for each square of the lawn, the newest night that visited it. A maximum does not depend
//! on the order in which nights come, nor how often, so the state is the same however logs arrive. It shows which fraction
//! of the lawn was driven over within the promised days.
//!
//! A square counts as visited in a night if it was driven over with a probability of at least one half. Squares are about a
//! decimetre wide, half a swath; over a lawn the two errors of this rounding cancel to within a few tenths of a point.
//!
//! Cost: one or two bytes per square in the store, because neighbours mostly share their night.

use crate::night::NightNumber;
use serde::{Deserialize, Serialize};
use tussock_types::Grid;

/// Nights are counted from here, so that they fit into 16 bits until the year 2199.
const FIRST: NightNumber = 18_262;
const OFF: u16 = 0;
const NEVER: u16 = 1;

/// Last visit of each square.
#[derive(Clone, Debug, PartialEq)]
pub struct LastVisits {
    grid: Grid,
    marks: Vec<u16>,
}

#[derive(Serialize, Deserialize)]
struct SquaresHead {
    version: u32,
    grid: Grid,
}

impl LastVisits {
    /// A lawn that was never visited, from the marks of a night (0 off the lawn).
    pub fn new(grid: Grid, marks: &[u8]) -> Self {
        Self {
            grid,
            marks: marks
                .iter()
                .map(|mark| if *mark == 0 { OFF } else { NEVER })
                .collect(),
        }
    }

    /// Adds a night. Returns false, and changes nothing, if its squares are different because the lawn or the cutting width
    /// changed.
    pub fn take(&mut self, night: NightNumber, grid: &Grid, marks: &[u8]) -> bool {
        let same = grid.columns == self.grid.columns
            && grid.rows == self.grid.rows
            && (grid.cell_m - self.grid.cell_m).abs() < 1e-6
            && marks.len() == self.marks.len();
        if !same {
            return false;
        }
        let mark = Self::mark(night);
        for (last, now) in self.marks.iter_mut().zip(marks) {
            if *now != 0 && *last == OFF {
                *last = NEVER;
            }
            if *now == 2 {
                *last = (*last).max(mark);
            }
        }
        true
    }

    fn mark(night: NightNumber) -> u16 {
        u16::try_from((night - FIRST).max(0) + 2).unwrap_or(u16::MAX)
    }

    /// Fraction of the lawn that was visited in a night or since.
    pub fn visited_since_fraction(&self, night: NightNumber) -> Option<f64> {
        let first = Self::mark(night);
        let lawn = self.marks.iter().filter(|mark| **mark != OFF).count();
        let visited = self.marks.iter().filter(|mark| **mark >= first).count();
        (lawn > 0).then(|| visited as f64 / lawn as f64)
    }

    /// First night since which more than a share of the lawn has certainly been overdue without a break until a given night:
    /// not driven over in that night nor within the given number of days before it. `None` if that is not the case. Never
    /// too early: what has been driven over since may have been overdue before.
    pub fn overdue_since(
        &self,
        night: NightNumber,
        days: i32,
        at_most_fraction: f64,
        earliest: NightNumber,
    ) -> Option<NightNumber> {
        let is_broken = |night: NightNumber| {
            let visited = self.visited_since_fraction(night - days + 1);
            visited.is_some_and(|visited| 1.0 - visited > at_most_fraction)
        };
        (earliest..=night)
            .rev()
            .take_while(|night| is_broken(*night))
            .last()
    }

    /// The state in the form in which it is stored.
    ///
    /// # Errors
    /// If it cannot be packed, which would be a bug of ours.
    pub fn pack(&self) -> std::io::Result<Vec<u8>> {
        let mut bytes = serde_json::to_vec(&SquaresHead {
            version: 1,
            grid: self.grid,
        })?;
        bytes.push(b'\n');
        bytes.extend(self.marks.iter().flat_map(|mark| mark.to_le_bytes()));
        zstd::encode_all(&bytes[..], 3)
    }

    /// Reads the stored form; `None` if it is not understood (the state then starts again).
    pub fn unpack(packed: &[u8]) -> Option<Self> {
        let bytes = zstd::decode_all(packed).ok()?;
        let end = bytes.iter().position(|byte| *byte == b'\n')?;
        let head: SquaresHead = serde_json::from_slice(&bytes[..end]).ok()?;
        let marks: Vec<u16> = bytes[end + 1..]
            .chunks_exact(2)
            .map(|pair| u16::from_le_bytes([pair[0], pair[1]]))
            .collect();
        (head.version == 1 && marks.len() == head.grid.cells()).then_some(Self {
            grid: head.grid,
            marks,
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_order_in_which_nights_come_does_not_matter() {
        let grid = Grid {
            east_min_m: 0.0,
            north_min_m: 0.0,
            cell_m: 0.1,
            columns: 3,
            rows: 2,
        };
        let nights: [(NightNumber, [u8; 6]); 3] = [
            (20_000, [0, 2, 1, 1, 2, 1]),
            (20_001, [0, 1, 2, 1, 2, 1]),
            (20_004, [0, 1, 1, 1, 1, 2]),
        ];
        let of = |order: &[usize]| {
            let mut state = LastVisits::new(grid, &nights[0].1);
            for at in order {
                assert!(state.take(nights[*at].0, &grid, &nights[*at].1));
            }
            state
        };
        let forward = of(&[0, 1, 2]);
        assert_eq!(forward, of(&[2, 0, 1, 1]));
        // Five squares of lawn: two of them in the last night but three or since, one in the last.
        assert_eq!(forward.visited_since_fraction(20_001), Some(3.0 / 5.0));
        assert_eq!(forward.visited_since_fraction(20_004), Some(1.0 / 5.0));
        // Two squares never, one last in the first night, one in the second, one in the last: within two days a fifth was
        // driven over.
        assert_eq!(forward.overdue_since(20_004, 2, 0.5, 19_990), Some(20_003));
        assert_eq!(forward.overdue_since(20_004, 2, 0.3, 19_990), Some(20_002));
        assert_eq!(forward.overdue_since(20_004, 2, 0.3, 20_003), Some(20_003));
        assert_eq!(forward.overdue_since(20_004, 2, 0.8, 19_990), None);
        assert_eq!(
            LastVisits::unpack(&forward.pack().unwrap()),
            Some(forward.clone())
        );
        let other = Grid { cell_m: 0.2, ..grid };
        let mut state = forward.clone();
        assert!(!state.take(20_005, &other, &nights[0].1));
        assert_eq!(state, forward);
    }
}
