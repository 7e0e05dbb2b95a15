//! How much of the spread comes from position error, how much from nights, how much from gardens?

use super::{StatisticsError, mean};

/// The difference of two patterns on one night, with the part that position error contributes.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct NightDifference {
    /// The difference, or any measure of one night.
    pub value: f64,
    /// Standard deviation from position error: half the width of a 90 % interval over 1.645.
    pub position_sd: f64,
}

/// Spread divided by its origin: standard deviations, in the unit of the measure.
#[derive(Clone, Copy, Debug, PartialEq, serde::Serialize, serde::Deserialize)]
pub struct Spread {
    /// What position error adds to one night (root mean square of what was given).
    pub position_sd: f64,
    /// True spread from night to night within a garden, without position error; 0 if position error explains all of it.
    pub night_sd: f64,
    /// True spread from garden to garden, without nights; 0 if nights explain all of it.
    pub garden_sd: f64,
    /// Mean over gardens.
    pub mean: f64,
    /// Gardens.
    pub gardens: usize,
    /// Nights.
    pub nights: usize,
}

/// Separates the three by moments: mean squares within and between gardens of a random-effects analysis of variance,
/// allowing gardens of unequal size (method 1 of Henderson 1953, cited from memory), with the known position error
/// subtracted from the part within.
///
/// Approximate: with few gardens the gardens' part is itself uncertain by 1 / sqrt(2 (n - 1)) of it; estimates below zero
/// are given as 0.
///
/// # Errors
/// [`StatisticsError`] for fewer than two gardens, no garden with two nights, or values that are not finite.
pub fn spread_of(gardens: &[Vec<NightDifference>]) -> Result<Spread, StatisticsError> {
    let filled: Vec<&Vec<NightDifference>> = gardens.iter().filter(|garden| !garden.is_empty()).collect();
    let few = |what: &str, found: usize, least: usize| StatisticsError::TooFew {
        what: what.to_owned(),
        found,
        least,
    };
    if filled.len() < 2 {
        return Err(few("gardens with nights", filled.len(), 2));
    }
    let nights: usize = filled.iter().map(|garden| garden.len()).sum();
    if nights == filled.len() {
        return Err(few("nights in the fullest garden", 1, 2));
    }
    for night in filled.iter().flat_map(|garden| garden.iter()) {
        if !(night.value.is_finite() && night.position_sd >= 0.0 && night.position_sd.is_finite()) {
            return Err(StatisticsError::NotFinite {
                what: "a night, or its position error,".to_owned(),
                value: if night.value.is_finite() {
                    night.position_sd
                } else {
                    night.value
                },
            });
        }
    }
    let (total, count) = (nights as f64, filled.len() as f64);
    let means: Vec<f64> = filled
        .iter()
        .map(|garden| mean(&garden.iter().map(|night| night.value).collect::<Vec<_>>()))
        .collect();
    let grand = filled
        .iter()
        .zip(&means)
        .map(|(garden, middle)| garden.len() as f64 * middle)
        .sum::<f64>()
        / total;
    let within = filled
        .iter()
        .zip(&means)
        .flat_map(|(garden, middle)| garden.iter().map(move |night| (night.value - middle).powi(2)))
        .sum::<f64>()
        / (total - count);
    let between = filled
        .iter()
        .zip(&means)
        .map(|(garden, middle)| garden.len() as f64 * (middle - grand).powi(2))
        .sum::<f64>()
        / (count - 1.0);
    let squares: f64 = filled.iter().map(|garden| (garden.len() as f64).powi(2)).sum();
    let usual_nights = (total - squares / total) / (count - 1.0);
    let position = filled
        .iter()
        .flat_map(|garden| garden.iter())
        .map(|night| night.position_sd.powi(2))
        .sum::<f64>()
        / total;
    Ok(Spread {
        position_sd: position.sqrt(),
        night_sd: (within - position).max(0.0).sqrt(),
        garden_sd: ((between - within) / usual_nights).max(0.0).sqrt(),
        mean: mean(&means),
        gardens: filled.len(),
        nights,
    })
}
