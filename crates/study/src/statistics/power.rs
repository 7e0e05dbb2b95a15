//! How many nights and gardens are needed to distinguish two patterns?
//!
//! The mean difference over G gardens of N nights each has the variance `g / G + (n + p) / (G N)` with the variances of
//! gardens, nights and position error ([`Spread`]). A normal test at level alpha detects a true difference d with the
//! required power if d is at least `z(1 - alpha / 2) + z(power)` of its standard deviations (Cohen 1988, chapter 2; for two
//! levels Snijders & Bosker, *Standard errors and sample sizes for two-level research*, 1993, DOI
//! 10.3102/10769986018003237). Because the spread itself is only estimated, `z(1 - alpha / 2)^2 / 2` gardens are added
//! (Guenther, *Sample size formulas for normal theory t tests*, 1981).
//!
//! Approximate: normal laws, and gardens with equally variable nights. More nights never make up for too few gardens: if the
//! gardens' part alone is too large, the answer is `None`.

use super::{Spread, StatisticsError, normal_below, normal_quantile};

fn check(difference: f64, level: f64, power: f64) -> Result<f64, StatisticsError> {
    let out = |what, value, expected| StatisticsError::OutOfRange {
        what,
        value,
        expected,
    };
    if !(difference.abs() > 0.0 && difference.is_finite()) {
        return Err(out("difference", difference, "a difference that is not 0"));
    }
    if !(level > 0.0 && level < 1.0) {
        return Err(out("level", level, "a probability such as 0.05"));
    }
    if !(power > 0.0 && power < 1.0) {
        return Err(out("power", power, "a probability such as 0.8"));
    }
    Ok(normal_quantile(1.0 - 0.5 * level) + normal_quantile(power))
}

/// Variance of one garden's mean over this many nights.
fn of_garden(spread: &Spread, nights: f64) -> f64 {
    spread.garden_sd.powi(2) + (spread.night_sd.powi(2) + spread.position_sd.powi(2)) / nights
}

/// Gardens to add because the spread is only estimated.
fn guenther(level: f64) -> f64 {
    0.5 * normal_quantile(1.0 - 0.5 * level).powi(2)
}

/// Probability that a two-sided normal test at a level detects a true difference with this many gardens, and nights in each.
pub fn power(spread: &Spread, difference: f64, gardens: usize, nights: usize, level: f64) -> f64 {
    let sd = (of_garden(spread, nights as f64) / gardens as f64).sqrt();
    let critical = normal_quantile(1.0 - 0.5 * level);
    let shift = difference.abs() / sd;
    normal_below(shift - critical) + normal_below(-shift - critical)
}

/// Gardens needed to detect a true difference, with this many nights of each pattern in each.
///
/// # Errors
/// [`StatisticsError::OutOfRange`].
pub fn gardens_needed(
    spread: &Spread,
    difference: f64,
    nights: usize,
    level: f64,
    power: f64,
) -> Result<usize, StatisticsError> {
    let reach = check(difference, level, power)?;
    let gardens = of_garden(spread, nights.max(1) as f64) * (reach / difference).powi(2);
    Ok((gardens + guenther(level)).ceil().max(2.0) as usize)
}

/// Nights of each pattern needed in each of this many gardens; `None` if the gardens' own spread hides the difference
/// however many nights there are.
///
/// # Errors
/// [`StatisticsError::OutOfRange`].
pub fn nights_needed(
    spread: &Spread,
    difference: f64,
    gardens: usize,
    level: f64,
    power: f64,
) -> Result<Option<usize>, StatisticsError> {
    let reach = check(difference, level, power)?;
    let worth = gardens as f64 - guenther(level);
    let room = worth * (difference / reach).powi(2) - spread.garden_sd.powi(2);
    if !(worth > 0.0 && room > 0.0) {
        return Ok(None);
    }
    let nights = (spread.night_sd.powi(2) + spread.position_sd.powi(2)) / room;
    Ok((nights < 1e6).then_some(nights.ceil().max(1.0) as usize))
}
