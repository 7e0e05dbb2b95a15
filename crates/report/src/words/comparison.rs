//! Words for before and after.

use super::{ListMark, listed, number, percent};
use crate::messages::Voice;
use crate::messages::say;
use tussock_types::{
    BuiltAs, ComparedPocket, Comparison, Difference, Estimate, PocketChange, PredictionHeld,
};

/// What a change brought, in a few sentences.
pub(crate) fn comparison_said(voice: Voice, comparison: &Comparison) -> String {
    comparison
        .said
        .iter()
        .map(|said| crate::messages::said(voice, said))
        .collect::<Vec<_>>()
        .join(" ")
}

/// A number with its sign.
fn signed(voice: Voice, value: f64, decimals: usize) -> String {
    let text = number(voice, value, decimals);
    if value > 0.0 && text.chars().any(|c| c.is_ascii_digit() && c != '0') {
        format!("+{text}")
    } else {
        text
    }
}

/// A difference of fractions in points.
pub(crate) fn points(voice: Voice, fraction: f64) -> String {
    say!(
        voice,
        "points-fraction",
        fraction = signed(voice, fraction * 100.0, 1)
    )
}

/// The same with its interval.
pub(crate) fn points_with_interval(voice: Voice, difference: Estimate) -> String {
    match (difference.low, difference.high) {
        (Some(low), Some(high)) => say!(
            voice,
            "interval-points",
            points = points(voice, difference.estimate),
            low = signed(voice, low * 100.0, 1),
            high = signed(voice, high * 100.0, 1)
        ),
        _ => say!(
            voice,
            "interval-not-worked-out",
            points = points(voice, difference.estimate)
        ),
    }
}

/// Whether a difference is more than luck.
pub(crate) fn difference_meaning(voice: Voice, is_real: bool) -> String {
    if is_real {
        say!(voice, "more-than-luck")
    } else {
        say!(voice, "luck-may-explain")
    }
}

/// Where the uncertainty of a difference comes from.
pub(crate) fn difference_sources(voice: Voice, difference: &Difference) -> String {
    let nightly = match difference.nightly_sd_fraction {
        Some(sd) => say!(
            voice,
            "points-from-night-night",
            number = number(voice, sd * 100.0, 1)
        ),
        None => say!(voice, "how-nights-differ-cannot"),
    };
    say!(
        voice,
        "standard-deviations-points-from",
        number = number(voice, difference.position_sd_fraction * 100.0, 1),
        nightly = nightly
    )
}

/// How many pockets were mended, better, unchanged, new.
pub(crate) fn pocket_changes(voice: Voice, pockets: &[ComparedPocket]) -> String {
    let kinds = [
        PocketChange::Mended,
        PocketChange::Better,
        PocketChange::Unchanged,
        PocketChange::New,
    ];
    let parts = kinds.into_iter().filter_map(|kind| {
        let count = pockets.iter().filter(|pocket| pocket.change == kind).count();
        (count > 0).then(|| say!(voice, "count-pocket-change", count = count, value = kind))
    });
    say!(
        voice,
        "pocket-sum",
        pockets = say!(voice, "count-pocket", count = pockets.len()),
        list = listed(voice, parts, ListMark::Comma)
    )
}

/// Whether a prediction holds.
pub(crate) fn prediction_meaning(voice: Voice, held: &PredictionHeld) -> String {
    match (held.built, held.holds) {
        (BuiltAs::Nothing, _) => say!(voice, "nothing-to-hold-against"),
        (_, true) => say!(voice, "prediction-holds"),
        (_, false) => say!(voice, "prediction-fails"),
    }
}

/// A fraction with its interval in brackets, if there is one.
pub(crate) fn with_interval(voice: Voice, estimate: Estimate) -> String {
    match (estimate.low, estimate.high) {
        (Some(low), Some(high)) => say!(
            voice,
            "to-percent",
            percent = percent(voice, estimate.estimate),
            number = number(voice, low * 100.0, 1),
            percent_2 = percent(voice, high)
        ),
        _ => percent(voice, estimate.estimate),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn differences_carry_their_sign_and_zero_has_none() {
        assert_eq!(points(Voice::default(), 0.0123), "+1.2 points");
        assert_eq!(points(Voice::default(), -0.0123), "−1.2 points");
        assert_eq!(points(Voice::default(), 0.0001), "0.0 points");
        let difference = Estimate {
            estimate: 0.1,
            low: Some(-0.004),
            high: Some(0.204),
        };
        assert_eq!(
            points_with_interval(Voice::default(), difference),
            "+10.0 points (90 % interval −0.4 to +20.4 points)"
        );
    }
}
