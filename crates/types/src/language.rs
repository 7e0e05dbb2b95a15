//! In which language, and in which units, does a window speak?

use serde::{Deserialize, Serialize};

worded! {
    /// Languages of the catalogues.
    #[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
    Language,
    /// Its tag (BCP 47), as in `--language de`.
    word {
        /// English, the language that every other falls back to.
        #[default]
        #[serde(rename = "en")]
        English = "en",
        /// German.
        #[serde(rename = "de")]
        German = "de",
        /// French.
        #[serde(rename = "fr")]
        French = "fr",
        /// Spanish.
        #[serde(rename = "es")]
        Spanish = "es",
        /// Italian.
        #[serde(rename = "it")]
        Italian = "it",
        /// Dutch.
        #[serde(rename = "nl")]
        Dutch = "nl",
        /// Swedish.
        #[serde(rename = "sv")]
        Swedish = "sv",
        /// Polish.
        #[serde(rename = "pl")]
        Polish = "pl",
    }
}

impl Language {
    /// The language of a tag or a locale: of `de`, `de-AT` and `de_DE.UTF-8` German. `None` for any other.
    pub fn of_locale(locale: &str) -> Option<Self> {
        let tag = locale.split(['-', '_', '.', '@']).next()?;
        let is_it = |language: &Self| language.word().eq_ignore_ascii_case(tag);
        Self::ALL.into_iter().find(is_it)
    }
}

worded! {
    /// Units of the windows. Files are metric.
    #[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
    #[serde(rename_all = "snake_case")]
    Units,
    /// Its word, as in `--units imperial`.
    word {
        /// Metres, square metres, metres a second.
        #[default]
        Metric = "metric",
        /// Feet and inches, square feet, miles an hour.
        Imperial = "imperial",
    }
}

/// Metres of an inch (international yard and pound agreement of 1959; NIST SP 811, appendix B).
pub const INCH_M: f64 = 0.0254;
/// Metres of an international foot, of the same source.
pub const FOOT_M: f64 = 0.3048;
/// Metres of an international mile.
pub const MILE_M: f64 = 5280.0 * FOOT_M;

/// Units of a length as people type them: a number of them is so many metres, times the one and divided by the other.
pub const LENGTH_UNITS: [(&str, f64, f64); 5] = [
    ("mm", 1.0, 1000.0),
    ("cm", 1.0, 100.0),
    ("m", 1.0, 1.0),
    ("in", 254.0, 10_000.0),
    ("ft", 3048.0, 10_000.0),
];

/// A length as typed, `9in`, `0.25 ft` or `22cm`, in metres. `None` without a unit that is known here.
///
/// ```
/// use tussock_types::typed_length_m;
///
/// assert_eq!(typed_length_m("9in"), Some(0.2286));
/// assert_eq!(typed_length_m("0.25 ft"), Some(0.0762));
/// assert_eq!(typed_length_m("22cm"), Some(0.22));
/// assert_eq!(typed_length_m("22"), None);
/// ```
pub fn typed_length_m(typed: &str) -> Option<f64> {
    let typed = typed.trim();
    let unit_at = typed.find(|letter: char| letter.is_alphabetic() && !matches!(letter, 'e' | 'E'))?;
    let (number, unit) = typed.split_at(unit_at);
    let (_, times, per) = LENGTH_UNITS.iter().find(|(name, ..)| *name == unit)?;
    let number: f64 = number.trim().parse().ok()?;
    Some(number * times / per).filter(|length_m| length_m.is_finite())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_locale_names_its_language_and_others_none() {
        assert_eq!(Language::of_locale("de_DE.UTF-8"), Some(Language::German));
        assert_eq!(Language::of_locale("pl"), Some(Language::Polish));
        assert_eq!(Language::of_locale("SV-fi"), Some(Language::Swedish));
        for other in ["C", "C.UTF-8", "POSIX", "", "ja_JP", "deu"] {
            assert_eq!(Language::of_locale(other), None, "{other}");
        }
    }
}
