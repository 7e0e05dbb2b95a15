//! Intervals by resampling.

use super::{cliffs_delta, cohen_d_paired, mean, normal_below, normal_quantile, quantile};
use rand::{RngExt, SeedableRng};
use rand_chacha::ChaCha8Rng;
use tussock_types::math;

/// How an interval is read off the drawn values.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum IntervalKind {
    /// The percentiles themselves (Efron 1979).
    Percentile,
    /// Corrected for bias and for a spread that changes with the value (BCa; Efron, *Better bootstrap confidence intervals*, 1987,
    /// DOI 10.1080/01621459.1987.10478410).
    #[default]
    Bca,
}

/// How draws are made.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Resampling {
    /// Number of draws. 2,000 leave the ends of a 90 % interval uncertain by about a twentieth of its half width.
    pub draws: usize,
    /// Part of the drawn values between the ends.
    pub interval_fraction: f64,
    /// How the ends are found.
    pub kind: IntervalKind,
    /// Seed of the draws.
    pub seed: u64,
}

impl Default for Resampling {
    fn default() -> Self {
        Self {
            draws: 2000,
            interval_fraction: 0.9,
            kind: IntervalKind::Bca,
            seed: 0,
        }
    }
}

/// Why no answer is possible.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
#[non_exhaustive]
pub enum StatisticsError {
    /// Too few values.
    #[error("{what}: {found}, expected at least {least}")]
    TooFew {
        /// Of what.
        what: String,
        /// How many there are.
        found: usize,
        /// How many are needed.
        least: usize,
    },
    /// An invalid value.
    #[error("{what} is {value}; expected a finite number")]
    NotFinite {
        /// Which.
        what: String,
        /// The value.
        value: f64,
    },
    /// Nights that belong together must be equally many on both sides.
    #[error("garden {garden}: {a} nights against {b}, expected as many on both sides when nights are pairs")]
    Unpaired {
        /// Its name.
        garden: String,
        /// Nights of the first pattern.
        a: usize,
        /// Nights of the second.
        b: usize,
    },
    /// A request that cannot be met.
    #[error("{what} is {value}; expected {expected}")]
    OutOfRange {
        /// Which.
        what: &'static str,
        /// The value.
        value: f64,
        /// What it should be.
        expected: &'static str,
    },
}

impl Resampling {
    fn check(&self) -> Result<(), StatisticsError> {
        if self.draws < 100 {
            return Err(StatisticsError::TooFew {
                what: "draws".to_owned(),
                found: self.draws,
                least: 100,
            });
        }
        if !(self.interval_fraction > 0.0 && self.interval_fraction < 1.0) {
            return Err(StatisticsError::OutOfRange {
                what: "interval_fraction",
                value: self.interval_fraction,
                expected: "a part of the whole, such as 0.9",
            });
        }
        Ok(())
    }

    /// Ends of the interval of drawn values; `left_out` are the figures with one unit left out, for the BCa acceleration.
    fn ends(&self, mut drawn: Vec<f64>, estimate: f64, left_out: &[f64]) -> (f64, f64) {
        drawn.sort_by(f64::total_cmp);
        let tail = 0.5 * (1.0 - self.interval_fraction);
        let at = |fraction: f64| quantile(&drawn, fraction).unwrap_or(estimate);
        let plain = (at(tail), at(1.0 - tail));
        if self.kind == IntervalKind::Percentile {
            return plain;
        }
        // Ties count half, because few values give few distinct sums; sums in another order differ by rounding.
        let rounding = 1e-9 * (at(1.0) - at(0.0));
        let below = drawn.partition_point(|value| *value < estimate - rounding);
        let upto = drawn.partition_point(|value| *value <= estimate + rounding);
        let share = 0.5 * (below + upto) as f64 / drawn.len() as f64;
        let bias = normal_quantile(share);
        let middle = mean(left_out);
        let (mut squares, mut cubes) = (0.0, 0.0);
        for value in left_out {
            let off = middle - value;
            squares += off * off;
            cubes += off * off * off;
        }
        let acceleration = if squares > 0.0 {
            cubes / (6.0 * math::powf(squares, 1.5))
        } else {
            0.0
        };
        if !bias.is_finite() || !acceleration.is_finite() {
            return plain;
        }
        let moved = |fraction: f64| {
            let z = bias + normal_quantile(fraction);
            normal_below(bias + z / (1.0 - acceleration * z))
        };
        (at(moved(tail)), at(moved(1.0 - tail)))
    }
}

/// Draws numbers below a count.
struct Draw(ChaCha8Rng);

impl Draw {
    fn below(&mut self, count: usize) -> usize {
        let unit: f64 = self.0.random();
        ((unit * count as f64) as usize).min(count - 1)
    }
}

/// Estimate and interval of any figure of independent values, by drawing values with replacement.
///
/// # Errors
/// [`StatisticsError`] for fewer than two values, or if any is not finite.
pub fn bootstrap(
    values: &[f64],
    figure: impl Fn(&[f64]) -> f64,
    resampling: &Resampling,
) -> Result<tussock_types::Estimate, StatisticsError> {
    resampling.check()?;
    if values.len() < 2 {
        return Err(StatisticsError::TooFew {
            what: "values".to_owned(),
            found: values.len(),
            least: 2,
        });
    }
    finite("a value", values)?;
    let mut draw = Draw(ChaCha8Rng::seed_from_u64(resampling.seed));
    let estimate = figure(values);
    let mut sample = values.to_vec();
    let drawn = (0..resampling.draws)
        .map(|_| {
            for value in &mut sample {
                *value = values[draw.below(values.len())];
            }
            figure(&sample)
        })
        .collect();
    let left_out: Vec<f64> = (0..values.len())
        .map(|out| {
            let mut rest = values.to_vec();
            rest.remove(out);
            figure(&rest)
        })
        .collect();
    let (low, high) = resampling.ends(drawn, estimate, &left_out);
    Ok(tussock_types::Estimate {
        estimate,
        low: Some(low),
        high: Some(high),
    })
}

/// Nights of one garden under two patterns.
#[derive(Clone, Debug, PartialEq, serde::Serialize, serde::Deserialize)]
pub struct GardenPair {
    /// Its name.
    pub name: String,
    /// A measure of each night under the first pattern.
    pub a: Vec<f64>,
    /// The same under the second.
    pub b: Vec<f64>,
}

/// Whether nights of the two patterns belong together.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum NightPairing {
    /// Nights of each pattern are drawn independently.
    #[default]
    Apart,
    /// The first night of one pattern belongs to the first of the other (same weather, same seed), and they are drawn
    /// together.
    Together,
}

/// The result of a paired comparison. Differences are the second minus the first, in the unit of the measure.
#[derive(Clone, Debug, PartialEq, serde::Serialize, serde::Deserialize)]
pub struct Compared {
    /// Mean over gardens of the difference between their nights' means, with its interval.
    pub difference: tussock_types::Estimate,
    /// Difference of each garden, in the order given.
    pub by_garden: Vec<f64>,
    /// Fraction of the draws in which the second pattern is ahead.
    pub ahead_fraction: f64,
    /// Cohen's d over gardens; `None` for fewer than two, or if all are equal.
    pub cohen_d: Option<f64>,
    /// Cliff's delta over all nights, with equal weight for each garden.
    pub cliffs_delta: f64,
    /// Gardens.
    pub gardens: usize,
    /// Nights, over both patterns.
    pub nights: usize,
}

/// Compares two patterns over gardens: gardens are drawn, then nights within each.
///
/// Approximate: with few gardens the interval is too narrow, by the square root of (n - 1) / n of the gardens' part, and it
/// can never leave the range of the gardens seen: with three gardens it says something about those three, and little about
/// others.
///
/// # Errors
/// [`StatisticsError`] without two gardens, for a garden without nights on either side, for values that are not finite, and
/// for nights that do not form pairs if pairs were requested.
pub fn compare_paired(
    gardens: &[GardenPair],
    pairing: NightPairing,
    resampling: &Resampling,
) -> Result<Compared, StatisticsError> {
    resampling.check()?;
    if gardens.len() < 2 {
        return Err(StatisticsError::TooFew {
            what: "gardens".to_owned(),
            found: gardens.len(),
            least: 2,
        });
    }
    for garden in gardens {
        for side in [&garden.a, &garden.b] {
            if side.is_empty() {
                return Err(StatisticsError::TooFew {
                    what: format!("nights of garden {} under one pattern", garden.name),
                    found: 0,
                    least: 1,
                });
            }
            finite(&format!("a night of garden {}", garden.name), side)?;
        }
        if pairing == NightPairing::Together && garden.a.len() != garden.b.len() {
            return Err(StatisticsError::Unpaired {
                garden: garden.name.clone(),
                a: garden.a.len(),
                b: garden.b.len(),
            });
        }
    }
    let by_garden: Vec<f64> = gardens
        .iter()
        .map(|garden| mean(&garden.b) - mean(&garden.a))
        .collect();
    let estimate = mean(&by_garden);
    let mut draw = Draw(ChaCha8Rng::seed_from_u64(resampling.seed));
    let drawn: Vec<f64> = (0..resampling.draws)
        .map(|_| {
            let sum: f64 = (0..gardens.len())
                .map(|_| night_draw(&gardens[draw.below(gardens.len())], pairing, &mut draw))
                .sum();
            sum / gardens.len() as f64
        })
        .collect();
    let ahead = drawn.iter().filter(|value| **value > 0.0).count() as f64
        + 0.5 * drawn.iter().filter(|value| **value == 0.0).count() as f64;
    let left_out: Vec<f64> = (0..by_garden.len())
        .map(|out| (by_garden.iter().sum::<f64>() - by_garden[out]) / (by_garden.len() as f64 - 1.0))
        .collect();
    let ahead_fraction = ahead / drawn.len() as f64;
    let (low, high) = resampling.ends(drawn, estimate, &left_out);
    let deltas: Vec<f64> = gardens
        .iter()
        .filter_map(|garden| cliffs_delta(&garden.a, &garden.b))
        .collect();
    Ok(Compared {
        difference: tussock_types::Estimate {
            estimate,
            low: Some(low),
            high: Some(high),
        },
        cohen_d: cohen_d_paired(&by_garden),
        cliffs_delta: mean(&deltas),
        ahead_fraction,
        gardens: gardens.len(),
        nights: gardens.iter().map(|garden| garden.a.len() + garden.b.len()).sum(),
        by_garden,
    })
}

fn night_draw(garden: &GardenPair, pairing: NightPairing, draw: &mut Draw) -> f64 {
    match pairing {
        NightPairing::Apart => {
            let mut of = |nights: &[f64]| {
                let sum: f64 = nights.iter().map(|_| nights[draw.below(nights.len())]).sum();
                sum / nights.len() as f64
            };
            let a = of(&garden.a);
            of(&garden.b) - a
        }
        NightPairing::Together => {
            let nights = garden.a.len();
            let sum: f64 = (0..nights)
                .map(|_| {
                    let night = draw.below(nights);
                    garden.b[night] - garden.a[night]
                })
                .sum();
            sum / nights as f64
        }
    }
}

fn finite(what: &str, values: &[f64]) -> Result<(), StatisticsError> {
    match values.iter().find(|value| !value.is_finite()) {
        Some(value) => Err(StatisticsError::NotFinite {
            what: what.to_owned(),
            value: *value,
        }),
        None => Ok(()),
    }
}
