//! How far is it from here to the nearest cell that is not ground?
//!
//! Exact Euclidean distance transform between cell centres by the lower envelope of parabolas (Felzenszwalb &
//! Huttenlocher 2012), first along columns, then along rows.
//!
//! Cost: linear in cells.

/// What lies beyond the grid.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Beyond {
    /// Cells that are off.
    Off,
    /// Cells that are on.
    On,
}

/// Squared distances in cells from each cell that is `on` to the nearest one that is off; 0 where off, and more than any
/// distance in the grid if none is off.
pub(crate) fn squared_distances(on: &[bool], columns: usize, rows: usize, beyond: Beyond) -> Vec<f64> {
    // One ring of such cells around everything.
    let (wide, high) = (columns + 2, rows + 2);
    let far = (wide * wide + high * high) as f64;
    let mut field = vec![if beyond == Beyond::On { far } else { 0.0 }; wide * high];
    for row in 0..rows {
        for column in 0..columns {
            field[(row + 1) * wide + column + 1] = if on[row * columns + column] { far } else { 0.0 };
        }
    }
    let mut envelope = Envelope::new(wide.max(high));
    for column in 0..wide {
        envelope.transform(high, |row| row * wide + column, &mut field);
    }
    for row in 0..high {
        envelope.transform(wide, |column| row * wide + column, &mut field);
    }
    (0..rows * columns)
        .map(|cell| field[(cell / columns + 1) * wide + cell % columns + 1])
        .collect()
}

/// Room for one line.
struct Envelope {
    values: Vec<f64>,
    tops: Vec<usize>,
    starts: Vec<f64>,
}

impl Envelope {
    fn new(length: usize) -> Self {
        Self {
            values: vec![0.0; length],
            tops: vec![0; length],
            starts: vec![0.0; length + 1],
        }
    }

    fn transform(&mut self, length: usize, at: impl Fn(usize) -> usize, field: &mut [f64]) {
        for place in 0..length {
            self.values[place] = field[at(place)];
        }
        let meets = |values: &[f64], a: usize, b: usize| {
            let (x, y) = (a as f64, b as f64);
            ((values[b] + y * y) - (values[a] + x * x)) / (2.0 * (y - x))
        };
        let mut last = 0;
        self.tops[0] = 0;
        self.starts[0] = f64::NEG_INFINITY;
        self.starts[1] = f64::INFINITY;
        for place in 1..length {
            let mut start = meets(&self.values, self.tops[last], place);
            while start <= self.starts[last] {
                last -= 1;
                start = meets(&self.values, self.tops[last], place);
            }
            last += 1;
            self.tops[last] = place;
            self.starts[last] = start;
            self.starts[last + 1] = f64::INFINITY;
        }
        let mut here = 0;
        for place in 0..length {
            while self.starts[here + 1] < place as f64 {
                here += 1;
            }
            let gap = place as f64 - self.tops[here] as f64;
            field[at(place)] = gap * gap + self.values[self.tops[here]];
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::dice::Dice;

    #[test]
    fn distances_are_those_of_a_look_at_every_cell() {
        const SEED: u64 = 5;
        let mut dice = Dice::new(SEED, 0);
        for share in [0.3, 0.8, 0.97, 1.0] {
            let (columns, rows) = (23, 17);
            let on: Vec<bool> = (0..columns * rows).map(|_| dice.happens(share)).collect();
            for beyond in [Beyond::Off, Beyond::On] {
                let fast = squared_distances(&on, columns, rows, beyond);
                for row in 0..rows as i64 {
                    for column in 0..columns as i64 {
                        let mut least = f64::INFINITY;
                        for other_row in -1..=rows as i64 {
                            for other_column in -1..=columns as i64 {
                                let inside = (0..rows as i64).contains(&other_row)
                                    && (0..columns as i64).contains(&other_column);
                                let is_off = if inside {
                                    !on[(other_row * columns as i64 + other_column) as usize]
                                } else {
                                    beyond == Beyond::Off
                                };
                                if is_off {
                                    least = least.min(
                                        ((row - other_row).pow(2) + (column - other_column).pow(2)) as f64,
                                    );
                                }
                            }
                        }
                        let fast = fast[(row * columns as i64 + column) as usize];
                        if least.is_finite() {
                            assert_eq!(fast, least);
                        } else {
                            assert!(fast > (columns * columns + rows * rows) as f64);
                        }
                    }
                }
            }
        }
    }
}
