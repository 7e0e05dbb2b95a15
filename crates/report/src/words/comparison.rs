//! Words for before and after.

use super::{ListMark, listed, number, percent};
use crate::messages::say;
use tussock_types::{
    BuiltAs, ComparedPocket, Comparison, Difference, Estimate, PocketChange, PredictionHeld,
};

/// What a change brought, in a few sentences.
pub(crate) fn comparison_said(comparison: &Comparison) -> String {
    comparison
        .said
        .iter()
        .map(crate::text)
        .collect::<Vec<_>>()
        .join(" ")
}

/// A number with its sign.
fn signed(value: f64, decimals: usize) -> String {
    let text = number(value, decimals);
    if value > 0.0 && text.chars().any(|c| c.is_ascii_digit() && c != '0') {
        format!("+{text}")
    } else {
        text
    }
}

/// A difference of fractions in points.
pub(crate) fn points(fraction: f64) -> String {
    say!("points-fraction", fraction = signed(fraction * 100.0, 1))
}

/// The same with its interval.
pub(crate) fn points_with_interval(difference: Estimate) -> String {
    match (difference.low, difference.high) {
        (Some(low), Some(high)) => say!(
            "interval-points",
            points = points(difference.estimate),
            low = signed(low * 100.0, 1),
            high = signed(high * 100.0, 1)
        ),
        _ => say!("interval-not-worked-out", points = points(difference.estimate)),
    }
}

/// Whether a difference is more than luck.
pub(crate) fn difference_meaning(is_real: bool) -> String {
    if is_real {
        say!("more-than-luck")
    } else {
        say!("luck-may-explain")
    }
}

/// Where the uncertainty of a difference comes from.
pub(crate) fn difference_sources(difference: &Difference) -> String {
    let nightly = match difference.nightly_sd_fraction {
        Some(sd) => say!("points-from-night-night", number = number(sd * 100.0, 1)),
        None => say!("how-nights-differ-cannot"),
    };
    say!(
        "standard-deviations-points-from",
        number = number(difference.position_sd_fraction * 100.0, 1),
        nightly = nightly
    )
}

/// How many pockets were mended, better, unchanged, new.
pub(crate) fn pocket_changes(pockets: &[ComparedPocket]) -> String {
    let kinds = [
        PocketChange::Mended,
        PocketChange::Better,
        PocketChange::Unchanged,
        PocketChange::New,
    ];
    let parts = kinds.into_iter().filter_map(|kind| {
        let count = pockets.iter().filter(|pocket| pocket.change == kind).count();
        (count > 0).then(|| say!("count-pocket-change", count = count, value = kind))
    });
    say!(
        "pocket-sum",
        pockets = say!("count-pocket", count = pockets.len()),
        list = listed(parts, ListMark::Comma)
    )
}

/// Whether a prediction holds.
pub(crate) fn prediction_meaning(held: &PredictionHeld) -> String {
    match (held.built, held.holds) {
        (BuiltAs::Nothing, _) => say!("nothing-to-hold-against"),
        (_, true) => say!("prediction-holds"),
        (_, false) => say!("prediction-fails"),
    }
}

/// A fraction with its interval in brackets, where there is one.
pub(crate) fn with_interval(estimate: Estimate) -> String {
    match (estimate.low, estimate.high) {
        (Some(low), Some(high)) => say!(
            "to-percent",
            percent = percent(estimate.estimate),
            number = number(low * 100.0, 1),
            percent_2 = percent(high)
        ),
        _ => percent(estimate.estimate),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn differences_carry_their_sign_and_zero_has_none() {
        assert_eq!(points(0.0123), "+1.2 points");
        assert_eq!(points(-0.0123), "−1.2 points");
        assert_eq!(points(0.0001), "0.0 points");
        let difference = Estimate {
            estimate: 0.1,
            low: Some(-0.004),
            high: Some(0.204),
        };
        assert_eq!(
            points_with_interval(difference),
            "+10.0 points (90 % interval −0.4 to +20.4 points)"
        );
    }
}
