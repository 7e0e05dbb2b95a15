//! Seeded chance.

use crate::machine::Spell;
use rand::{RngExt, SeedableRng};
use rand_chacha::ChaCha8Rng;
use rand_distr::StandardNormal;

/// A stream of random numbers that is the same on every platform.
#[derive(Clone, Debug)]
pub struct Dice(ChaCha8Rng);

impl Dice {
    /// Streams of the same seed are independent of each other: what one part draws does not shift the others.
    pub fn new(seed: u64, stream: u64) -> Self {
        let mut rng = ChaCha8Rng::seed_from_u64(seed);
        rng.set_stream(stream);
        Self(rng)
    }

    /// From 0 up to, but not including, 1.
    pub(crate) fn unit(&mut self) -> f64 {
        self.0.random()
    }

    /// From `low` up to, but not including, `high`.
    pub fn between(&mut self, low: f64, high: f64) -> f64 {
        low + (high - low) * self.unit()
    }

    pub(crate) fn normal(&mut self) -> f64 {
        self.0.sample(StandardNormal)
    }

    /// True with this probability.
    pub fn happens(&mut self, probability: f64) -> bool {
        self.unit() < probability
    }

    /// A number below `count`, which must not be 0.
    pub fn below(&mut self, count: usize) -> usize {
        ((self.unit() * count as f64) as usize).min(count.saturating_sub(1))
    }

    pub(crate) fn spell_s(&mut self, spell: &Spell) -> f64 {
        match spell {
            Spell::Fixed { s } => *s,
            Spell::Between { min_s, max_s } => self.between(*min_s, *max_s),
            Spell::Observed { s, jitter_fraction } => {
                if s.is_empty() {
                    return 0.0;
                }
                let picked_s = s[self.below(s.len())];
                picked_s * self.between(1.0 - jitter_fraction, 1.0 + jitter_fraction)
            }
        }
    }
}
