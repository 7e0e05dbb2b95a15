//! In which words is it said?
//!
//! A catalogue for each language: `messages/en.ftl` and its translations, in the language of Project Fluent. A code of the findings
//! ([`Said`]) is the name of its message. Values carry their unit in the name, and the unit says how a number is written; counts choose
//! the plural. What a translation lacks is said in English. Text from outside that stands among the values is made harmless before it
//! comes into a sentence.

use crate::words::{self, number};
use ciborium::Value;
use fluent_bundle::concurrent::FluentBundle;
use fluent_bundle::types::{FluentNumber, FluentNumberOptions};
use fluent_bundle::{FluentArgs, FluentResource, FluentValue};
use serde::Serialize;
use std::fmt;
use std::sync::LazyLock;
use tussock_types::{Language, MILE_M, Said, Units};

/// A message of the windows with its values: `say!(voice, "stuck-came", course_deg = 80.0)`.
macro_rules! say {
    ($voice:expr, $id:literal $(, $name:ident = $value:expr)* $(,)?) => {
        $crate::messages::message($voice, $id, &[$((stringify!($name), $crate::messages::value(&$value))),*])
    };
}
pub(crate) use say;

type Catalogue = FluentBundle<FluentResource>;

/// In which language and in which units a window speaks.
#[derive(Clone, Copy, Default)]
pub struct Voice {
    pub(crate) language: Language,
    pub(crate) units: Units,
    /// A catalogue in place of that of the language.
    own: Option<&'static Catalogue>,
}

impl Voice {
    /// Whether it speaks English from our own catalogue.
    pub(crate) fn is_plain_english(self) -> bool {
        self.language == Language::English && self.own.is_none()
    }

    /// A voice of ours.
    pub const fn new(language: Language, units: Units) -> Self {
        Self {
            language,
            units,
            own: None,
        }
    }

    /// A voice that speaks from a catalogue of one's own, in the grammar of a language. The catalogue is kept for good.
    #[doc(hidden)]
    pub fn of_catalogue(language: Language, units: Units, source: String) -> Self {
        Self {
            language,
            units,
            own: Some(Box::leak(Box::new(catalogue(language, source)))),
        }
    }
}

impl fmt::Debug for Voice {
    fn fmt(&self, to: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(to, "Voice({}, {})", self.language.word(), self.units.word())
    }
}

/// Letters of one value.
const LONGEST_VALUE: usize = 700;

/// The catalogues as they are written.
const SOURCES: [&str; Language::ALL.len()] = [
    include_str!("../messages/en.ftl"),
    include_str!("../messages/de.ftl"),
    include_str!("../messages/fr.ftl"),
    include_str!("../messages/es.ftl"),
    include_str!("../messages/it.ftl"),
    include_str!("../messages/nl.ftl"),
    include_str!("../messages/sv.ftl"),
    include_str!("../messages/pl.ftl"),
];

macro_rules! catalogues {
    ($($language:ident),*) => {
        /// Each is read when it is first spoken from.
        static CATALOGUES: [LazyLock<Catalogue>; Language::ALL.len()] =
            [$(LazyLock::new(|| catalogue(Language::$language, SOURCES[Language::$language as usize].to_owned()))),*];
    };
}
catalogues!(English, German, French, Spanish, Italian, Dutch, Swedish, Polish);

/// What has a unit comes written: Fluent has room for one text beside a number, the currency. A count is written here, so that it still
/// equals the count that a message names.
fn written<const LANGUAGE: usize, M>(value: &FluentValue<'_>, _: &M) -> Option<String> {
    let FluentValue::Number(number) = value else {
        return None;
    };
    let voice = Voice::new(Language::ALL[LANGUAGE], Units::Metric);
    let written = number.options.currency.clone();
    Some(written.unwrap_or_else(|| with_unit(voice, number.value, None)))
}

fn catalogue(language: Language, source: String) -> Catalogue {
    // What does not parse is left out, and missing is what a test looks for.
    let resource = FluentResource::try_new(source).unwrap_or_else(|(resource, _)| resource);
    let mut bundle = FluentBundle::new_concurrent(vec![language.word().parse().unwrap_or_default()]);
    bundle.set_use_isolating(false);
    // A writer can carry nothing with it, so that each language has one.
    bundle.set_formatter(Some(match language {
        Language::English => written::<0, _>,
        Language::German => written::<1, _>,
        Language::French => written::<2, _>,
        Language::Spanish => written::<3, _>,
        Language::Italian => written::<4, _>,
        Language::Dutch => written::<5, _>,
        Language::Swedish => written::<6, _>,
        Language::Polish => written::<7, _>,
    }));
    bundle.add_resource_overriding(resource);
    bundle
}

/// A number as its unit asks for.
fn with_unit(voice: Voice, value: f64, unit: Option<&str>) -> String {
    let text = match unit {
        Some("m") if value.abs() >= 9_999.5 => match voice.units {
            Units::Metric => format!("{} km", number(voice, value / 1000.0, 1)),
            Units::Imperial => format!("{} mi", number(voice, value / MILE_M, 1)),
        },
        Some("m") => words::metres(voice, value),
        Some("m2") => words::area(voice, value),
        Some("mm") => words::millimetres(voice, value, 1),
        Some("mps") => words::speed(voice, value),
        Some("s") => words::duration(voice, value),
        Some("min") => words::minutes(voice, value),
        Some("h") => words::hours(voice, value),
        Some("fraction" | "ratio") => words::share(voice, value),
        _ => return number(voice, value, usize::from(value.fract() != 0.0)),
    };
    // In a sentence 8 h are no more than 8.0 h claim to be.
    let nothing_more = words::numerals(voice).decimal.to_string() + "0 ";
    text.replacen(&nothing_more, " ", 1)
}

/// Units that a name may end in.
const UNITS: [&str; 9] = ["m", "m2", "mm", "mps", "s", "min", "h", "fraction", "ratio"];

fn argument(voice: Voice, name: &str, value: &Value) -> FluentValue<'static> {
    let value = match value {
        // A part of a sentence may begin with the blank before it.
        Value::Text(text) => {
            let blank = if text.starts_with(' ') { " " } else { "" };
            return format!("{blank}{}", words::plain(text, LONGEST_VALUE)).into();
        }
        Value::Integer(count) => i128::from(*count) as f64,
        Value::Float(value) => *value,
        _ => return FluentValue::Error,
    };
    if name.ends_with("_deg") {
        return compass(voice, value).into();
    }
    let unit = name
        .rsplit_once('_')
        .map(|(_, unit)| unit)
        .filter(|unit| UNITS.contains(unit));
    // What is written with one decimal chooses its plural by that.
    let value = if unit.is_some() {
        value
    } else {
        (10.0 * value).round() / 10.0
    };
    let options = FluentNumberOptions {
        currency: unit.map(|unit| with_unit(voice, value, Some(unit))),
        ..FluentNumberOptions::default()
    };
    FluentNumber::new(value, options).into()
}

fn formatted(voice: Voice, id: &str, arguments: &FluentArgs<'_>) -> String {
    let of = |language: Language| &*CATALOGUES[language as usize];
    let first = voice.own.unwrap_or_else(|| of(voice.language));
    for catalogue in [first, of(Language::English)] {
        let message = catalogue.get_message(id);
        if let Some(pattern) = message.as_ref().and_then(|message| message.value()) {
            let text = catalogue.format_pattern(pattern, Some(arguments), &mut Vec::new());
            return text.into_owned();
        }
    }
    id.to_owned()
}

/// A message of the windows.
pub(crate) fn message(voice: Voice, id: &str, values: &[(&str, Value)]) -> String {
    let values = values
        .iter()
        .map(|(name, value)| (*name, argument(voice, name, value)));
    formatted(voice, id, &values.collect())
}

/// What one of our enums is called: its word in JSON chooses.
pub(crate) fn named(voice: Voice, id: &str, of: &impl Serialize) -> String {
    message(voice, id, &[("value", value(of))])
}

/// Anything as a value of a message.
pub(crate) fn value(of: &impl Serialize) -> Value {
    Value::serialized(of).unwrap_or(Value::Null)
}

/// A course as a word of the compass.
pub(crate) fn compass(voice: Voice, course_deg: f64) -> String {
    say!(voice, "compass", eighth = eighth(course_deg))
}

/// A course as its eighth of the circle, from 0 in the north.
pub(crate) fn eighth(course_deg: f64) -> f64 {
    (course_deg.rem_euclid(360.0) / 45.0).round() % 8.0
}

/// What is said, in English: the words of files.
pub fn text(said: &Said) -> String {
    self::said(Voice::default(), said)
}

/// What is said, in words.
pub fn said(voice: Voice, said: &Said) -> String {
    Value::serialized(said)
        .ok()
        .and_then(|said| in_words(voice, &said))
        .unwrap_or_default()
}

/// The English of a tree; nothing where it is no code with values.
pub(crate) fn text_of(said: &Value) -> Option<String> {
    in_words(Voice::default(), said)
}

fn in_words(voice: Voice, said: &Value) -> Option<String> {
    let [
        (Value::Text(code), Value::Text(id)),
        (Value::Text(values), Value::Map(named)),
    ] = &said.as_map()?[..]
    else {
        return None;
    };
    if (code.as_str(), values.as_str()) != ("code", "values") {
        return None;
    }
    let named = named
        .iter()
        .filter_map(|(name, value)| Some((name.as_text()?, value)));
    let arguments = named.map(|(name, value)| match value {
        Value::Text(text) if text.is_empty() => (name.to_owned(), "none".into()),
        _ => (name.to_owned(), argument(voice, name, value)),
    });
    Some(formatted(voice, id, &arguments.collect()))
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::collections::{BTreeMap, BTreeSet};

    /// Messages of a catalogue, each with the variables that stand in it.
    fn messages(source: &str) -> BTreeMap<String, BTreeSet<String>> {
        let mut messages: BTreeMap<String, BTreeSet<String>> = BTreeMap::new();
        let mut at = String::new();
        for line in source.lines().filter(|line| !line.starts_with('#')) {
            if let Some((id, _)) = line
                .split_once(" = ")
                .filter(|_| line.starts_with(|c: char| c.is_ascii_lowercase()))
            {
                at = id.to_owned();
                assert!(
                    messages.insert(at.clone(), BTreeSet::new()).is_none(),
                    "{at} stands there twice"
                );
            }
            let is_name = |c: char| c.is_ascii_alphanumeric() || c == '_';
            let names = line
                .split('$')
                .skip(1)
                .map(|rest| rest.split(|c| !is_name(c)).next().unwrap_or_default());
            messages
                .entry(at.clone())
                .or_default()
                .extend(names.map(str::to_owned));
        }
        messages.remove("");
        messages
    }

    fn snake(code: &str) -> String {
        let letters = code.char_indices().map(|(at, letter)| match letter {
            upper if upper.is_ascii_uppercase() && at > 0 => format!("_{}", upper.to_ascii_lowercase()),
            letter => letter.to_ascii_lowercase().to_string(),
        });
        letters.collect()
    }

    /// Every source and template of this room.
    fn sources(folder: &std::path::Path) -> String {
        let mut all = String::new();
        for entry in std::fs::read_dir(folder).unwrap() {
            let path = entry.unwrap().path();
            if path.is_dir() {
                all += &sources(&path);
            } else if path
                .extension()
                .is_some_and(|end| ["rs", "html", "txt", "js"].iter().any(|of| end == *of))
            {
                all += &std::fs::read_to_string(&path).unwrap();
            }
        }
        all
    }

    #[test]
    fn every_code_has_its_message_every_message_its_values_and_none_is_unused() {
        let messages = messages(SOURCES[0]);
        let parsed = FluentResource::try_new(SOURCES[0].to_owned());
        assert!(parsed.is_ok(), "{:?}", parsed.err().map(|(_, errors)| errors));
        for id in messages.keys() {
            assert!(CATALOGUES[0].has_message(id), "{id}");
        }
        let codes: BTreeMap<String, BTreeSet<String>> = Said::CODES
            .iter()
            .map(|(code, values)| {
                (
                    snake(code),
                    values.iter().map(|name| (*name).to_owned()).collect(),
                )
            })
            .collect();
        for (code, values) in &codes {
            assert_eq!(messages.get(code), Some(values), "{code}");
        }
        let room = std::path::Path::new(env!("CARGO_MANIFEST_DIR"));
        let rooms = ["src", "templates", "../web/page"].map(|folder| sources(&room.join(folder)));
        let sources = rooms.concat();
        for id in messages.keys().filter(|id| !codes.contains_key(*id)) {
            // The library tells the local page which stage it is in.
            let asked = if id.starts_with("page-stage-") {
                "page-stage-${".to_owned()
            } else {
                format!("\"{id}\"")
            };
            assert!(sources.contains(&asked), "nobody says {id}");
        }
        // What is asked for is there.
        let asked = ["say!(voice, \"", " say(\"", "named(\""].map(|call| sources.split(call).skip(1));
        for rest in asked.into_iter().flatten() {
            let id = rest.split('"').next().unwrap_or_default();
            assert!(
                !id.starts_with(|c: char| c.is_ascii_lowercase())
                    || id.len() > 60
                    || messages.contains_key(id),
                "{id}"
            );
        }
    }

    /// Values that choose every plural of every language, and texts as long as they come.
    fn extremes(voice: Voice, name: &str, source: &str) -> Vec<FluentValue<'static>> {
        let numbers = [
            0.0,
            1.0,
            2.0,
            3.0,
            5.0,
            11.0,
            21.0,
            22.0,
            25.0,
            101.0,
            1.5,
            1e6,
            -3.0,
            f64::NAN,
        ];
        let keys = source.split('[').skip(1).filter_map(|rest| rest.split_once(']'));
        let texts = keys
            .map(|(key, _)| key.to_owned())
            .chain(["none".to_owned(), "W".repeat(200)]);
        let numbers = numbers.into_iter().map(Value::from);
        (texts.map(Value::from).chain(numbers))
            .map(|value| argument(voice, name, &value))
            .collect()
    }

    #[test]
    fn every_catalogue_has_every_message_with_its_values_and_says_it_without_a_fault() {
        let english = messages(SOURCES[0]);
        for (language, source) in Language::ALL.into_iter().zip(SOURCES) {
            let tag = language.word();
            let parsed = FluentResource::try_new(source.to_owned());
            assert!(
                parsed.is_ok(),
                "{tag}: {:?}",
                parsed.err().map(|(_, faults)| faults)
            );
            let ours = messages(source);
            let missing: Vec<_> = english.keys().filter(|id| !ours.contains_key(*id)).collect();
            assert!(
                missing.is_empty(),
                "{tag} lacks {}: {:?}",
                missing.len(),
                missing.get(..missing.len().min(40))
            );
            let unknown: Vec<_> = ours.keys().filter(|id| !english.contains_key(*id)).collect();
            assert!(unknown.is_empty(), "{tag} has {unknown:?}, which English lacks");
            for units in Units::ALL {
                let voice = Voice::new(language, units);
                let catalogue = &CATALOGUES[language as usize];
                for (id, names) in &english {
                    assert_eq!(&ours[id], names, "{tag}: values of {id}");
                    let at = source.find(&format!("\n{id} = ")).unwrap_or_default();
                    let text = source[at..].split("\n\n").next().unwrap_or_default();
                    let text = &text[..text[1..]
                        .find("\n}")
                        .map_or(text.len(), |end| end + 3)
                        .min(text.len())];
                    let usual = || {
                        names
                            .iter()
                            .map(|name| (name.clone(), argument(voice, name, &7.0.into())))
                    };
                    let pattern = catalogue.get_message(id).and_then(|message| message.value());
                    let pattern = pattern.unwrap_or_else(|| panic!("{tag}: {id} has no text"));
                    for name in names {
                        for value in extremes(voice, name, text) {
                            let mut values: FluentArgs<'_> = usual().collect();
                            values.set(name.clone(), value.clone());
                            let mut faults = Vec::new();
                            let said = catalogue.format_pattern(pattern, Some(&values), &mut faults);
                            assert!(faults.is_empty(), "{tag}: {id} with {name} {value:?}: {faults:?}");
                            assert!(
                                !said.trim().is_empty() || id == "is-known",
                                "{tag}: {id} is empty"
                            );
                        }
                    }
                }
            }
        }
    }

    #[test]
    fn labels_of_the_terminal_have_room_in_every_language() {
        for language in Language::ALL {
            let voice = Voice::new(language, Units::Metric);
            for id in messages(SOURCES[0]).keys() {
                let said = message(voice, id, &[("id", "M12".into())]);
                let most = match id.as_str() {
                    "row-by-lawn" | "row-used" | "row-skipped" | "row-note" => 10,
                    "col-id" => 3,
                    "col-where-why" | "col-became" => 40,
                    id if id.starts_with("row-") => 12,
                    id if id.starts_with("col-") => 7,
                    _ => continue,
                };
                assert!(
                    words::columns(&said) <= most,
                    "{voice:?}: {id} = {said}, expected {most} columns at most"
                );
            }
        }
    }

    #[test]
    fn numbers_are_written_by_their_unit_and_counts_choose_the_plural() {
        let said = |said: Said| text(&said);
        assert_eq!(
            said(Said::TurnsAlong { turns: 1 }),
            "1 turn along its inner side."
        );
        assert_eq!(
            said(Said::TurnsAlong { turns: 1200 }),
            "1,200 turns along its inner side."
        );
        assert_eq!(
            said(Said::FixesLeftOut { poor: 0, jumps: 2 }),
            "2 fixes were left out as jumps."
        );
        assert_eq!(
            said(Said::PassageSeldomFound {
                entries: 0,
                at_least: false.into(),
                driven_h: 8.04,
                width_m: 1.253,
                behind_m2: 172.4,
                share_ratio: 0.004,
            }),
            "Not once in 8 h of driving did the mower find its way through the 1.3 m passage; the 172 m² behind got \
             0.4 % of their share."
        );
        assert_eq!(
            said(Said::StripStays {
                length_m: 8.0,
                width_m: 0.3,
                edge_deg: 350.0
            }),
            "A strip 0.3 m wide is left along 8 m of the north edge."
        );
        assert_eq!(
            said(Said::NotOneGarden {
                extent_m: 1_234_567.0
            }),
            "The positions extend over 1,234.6 km: this is not the log of one garden, or jumps hide it. Give the files of one \
             garden only."
        );
    }

    #[test]
    fn numbers_are_written_as_a_language_writes_them() {
        let of = |language: Language| {
            let voice = Voice::new(language, Units::Metric);
            [
                words::area(voice, 12.34),
                words::area(voice, 1234.0),
                words::area(voice, 12_345.0),
                words::percent(voice, 0.314),
            ]
            .join("; ")
        };
        let written = Language::ALL.map(of);
        assert_eq!(
            written,
            [
                "12.3 m²; 1,234 m²; 12,345 m²; 31.4 %",
                "12,3 m²; 1.234 m²; 12.345 m²; 31,4 %",
                "12,3 m²; 1\u{202f}234 m²; 12\u{202f}345 m²; 31,4 %",
                "12,3 m²; 1234 m²; 12.345 m²; 31,4 %",
                "12,3 m²; 1234 m²; 12.345 m²; 31,4%",
                "12,3 m²; 1.234 m²; 12.345 m²; 31,4%",
                "12,3 m²; 1\u{a0}234 m²; 12\u{a0}345 m²; 31,4 %",
                "12,3 m²; 1234 m²; 12\u{a0}345 m²; 31,4%",
            ]
        );
    }

    #[test]
    fn imperial_units_follow_from_the_international_foot() {
        let voice = Voice::new(Language::English, Units::Imperial);
        assert_eq!(words::metres(voice, 0.2286), "9.0 in");
        assert_eq!(words::metres(voice, 3.048), "10.0 ft");
        assert_eq!(words::area(voice, 92.903_04), "1,000 sq ft");
        assert_eq!(words::speed(voice, 0.447_04), "1.00 mph");
        assert_eq!(words::path_length(voice, 1609.344), "1.00 mi");
        assert_eq!(words::tape_length(voice, 1.524), "5.0 ft");
    }

    #[test]
    fn what_is_said_comes_back_from_json_and_its_text_is_said_anew() {
        let before = Said::ZoneElsewhere {
            zone: String::new(),
            path_m: 3.0,
        };
        let mut json = serde_json::to_value(&before).unwrap();
        assert_eq!(json["code"], "zone_elsewhere");
        json["text"] = "something else".into();
        assert_eq!(serde_json::from_value::<Said>(json).unwrap(), before);
        assert!(
            text(&before).starts_with("The zone seems to lie elsewhere"),
            "{}",
            text(&before)
        );
    }
}
