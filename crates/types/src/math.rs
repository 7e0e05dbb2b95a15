//! The transcendental functions of `f64`, equal to the last bit on every machine.
//!
//! The standard library hands these to the C library of the host. Their last bits differ between systems and from
//! WebAssembly, and a simulated night doubles such a difference at every turn. Here they come from `libm`, a port of MUSL's,
//! which is plain Rust. What IEEE 754 rounds exactly (the four operations, `sqrt`, `mul_add`) can be used directly. Clippy's
//! `disallowed-methods` (`clippy.toml`) keeps the standard ones out. Accuracy: below 1 unit in the last place, as MUSL
//! states.

macro_rules! of_one {
    ($($name:ident $from:ident $what:literal),+ $(,)?) => {$(
        #[doc = $what]
        #[inline]
        pub fn $name(x: f64) -> f64 {
            libm::$from(x)
        }
    )+};
}

of_one! {
    sin sin "The sine of an angle in radians.",
    cos cos "The cosine of an angle in radians.",
    asin asin "The angle in radians, from -π/2 to π/2, whose sine is `x`.",
    exp exp "e to the power of `x`.",
    exp_m1 expm1 "e to the power of `x`, less 1, exact near 0.",
    ln log "The natural logarithm.",
    ln_1p log1p "The natural logarithm of 1 + `x`, exact near 0.",
    log10 log10 "The logarithm to base 10.",
}

/// The sine and the cosine of an angle in radians.
#[inline]
pub fn sin_cos(x: f64) -> (f64, f64) {
    libm::sincos(x)
}

/// The angle in radians, from -π to π, of the point (`x`, `y`): the ordinate comes first, as everywhere.
#[inline]
pub fn atan2(y: f64, x: f64) -> f64 {
    libm::atan2(y, x)
}

/// The length of the diagonal, without intermediate overflow.
#[inline]
pub fn hypot(x: f64, y: f64) -> f64 {
    libm::hypot(x, y)
}

/// `base` to the power of `exponent`.
#[inline]
pub fn powf(base: f64, exponent: f64) -> f64 {
    libm::pow(base, exponent)
}

/// The error function.
#[inline]
pub fn erf(x: f64) -> f64 {
    libm::erf(x)
}

/// 1 minus the error function, exact far from 0.
#[inline]
pub fn erfc(x: f64) -> f64 {
    libm::erfc(x)
}

/// Arithmetic mean; NaN without values.
pub fn mean(values: &[f64]) -> f64 {
    values.iter().sum::<f64>() / values.len() as f64
}

/// Unbiased variance; NaN for fewer than two values.
pub fn variance(values: &[f64]) -> f64 {
    let middle = mean(values);
    values.iter().map(|value| (value - middle).powi(2)).sum::<f64>() / (values.len() as f64 - 1.0)
}

/// Median; for an even number of values, the middle between the two central ones; `None` without values. Reorders the slice.
pub fn median(values: &mut [f64]) -> Option<f64> {
    if values.is_empty() {
        return None;
    }
    let (middle, is_odd) = (values.len() / 2, values.len() % 2 == 1);
    let (below, upper, _) = values.select_nth_unstable_by(middle, f64::total_cmp);
    if is_odd {
        return Some(*upper);
    }
    let lower = below.iter().copied().fold(f64::NEG_INFINITY, f64::max);
    Some(0.5 * (lower + *upper))
}

/// The value below which a fraction of sorted values lies, linear between neighbours (type 7 of Hyndman & Fan, *Sample
/// quantiles in statistical packages*, 1996); `None` without values.
pub fn quantile(sorted: &[f64], fraction: f64) -> Option<f64> {
    let last = sorted.len().checked_sub(1)?;
    let at = fraction.clamp(0.0, 1.0) * last as f64;
    let low = at.floor() as usize;
    let high = (low + 1).min(last);
    Some(sorted[low] + (at - low as f64) * (sorted[high] - sorted[low]))
}
