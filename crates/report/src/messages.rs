//! In which words is it said?
//!
//! One catalogue for one language: `messages/en.ftl`, in the language of Project Fluent. A code of the findings ([`Said`]) is the name
//! of its message. Values carry their unit in the name, and the unit says how a number is written; counts choose the plural.
//! Text from outside that stands among the values is made harmless before it comes into a sentence.

use crate::words::{self, number};
use ciborium::Value;
use fluent_bundle::concurrent::FluentBundle;
use fluent_bundle::types::{FluentNumber, FluentNumberOptions};
use fluent_bundle::{FluentArgs, FluentResource, FluentValue};
use serde::Serialize;
use std::sync::LazyLock;
use tussock_types::Said;

/// A message of the windows with its values: `say!("stuck-came", course_deg = 80.0)`.
macro_rules! say {
    ($id:literal $(, $name:ident = $value:expr)* $(,)?) => {
        $crate::messages::message($id, &[$((stringify!($name), $crate::messages::value(&$value))),*])
    };
}
pub(crate) use say;

/// Letters of one value.
const LONGEST_VALUE: usize = 700;

static CATALOGUE: LazyLock<FluentBundle<FluentResource>> = LazyLock::new(|| {
    let source = include_str!("../messages/en.ftl").to_owned();
    // What does not parse is left out, and missing is what a test looks for.
    let resource = FluentResource::try_new(source).unwrap_or_else(|(resource, _)| resource);
    let mut bundle = FluentBundle::new_concurrent(vec!["en".parse().unwrap_or_default()]);
    bundle.set_use_isolating(false);
    bundle.set_formatter(Some(|value, _| match value {
        FluentValue::Number(number) => Some(with_unit(number)),
        _ => None,
    }));
    bundle.add_resource_overriding(resource);
    bundle
});

/// A number as its unit asks for. Fluent has room for one unit beside a number: the currency.
fn with_unit(value: &FluentNumber) -> String {
    let unit = value.options.currency.as_deref().unwrap_or_default();
    let value = value.value;
    let text = match unit {
        "m" if value.abs() >= 9_999.5 => format!("{} km", number(value / 1000.0, 1)),
        "m" => words::metres(value),
        "m2" => words::area(value),
        "mm" => format!("{} mm", number(value, 1)),
        "mps" => format!("{} m/s", number(value, 2)),
        "s" => words::duration(value),
        "min" => words::minutes(value),
        "h" => words::hours(value),
        "fraction" | "ratio" => words::share(value),
        _ => number(value, usize::from(value.fract() != 0.0)),
    };
    // In a sentence 8 h are no more than 8.0 h claim to be.
    text.replacen(".0 ", " ", 1)
}

/// Units that a name may end in.
const UNITS: [&str; 9] = ["m", "m2", "mm", "mps", "s", "min", "h", "fraction", "ratio"];

fn argument(name: &str, value: &Value) -> FluentValue<'static> {
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
        return compass(value).into();
    }
    let unit = name
        .rsplit_once('_')
        .map(|(_, unit)| unit)
        .filter(|unit| UNITS.contains(unit));
    let options = FluentNumberOptions {
        currency: unit.map(str::to_owned),
        ..FluentNumberOptions::default()
    };
    // What is written with one decimal chooses its plural by that.
    let value = if unit.is_some() {
        value
    } else {
        (10.0 * value).round() / 10.0
    };
    FluentNumber::new(value, options).into()
}

fn formatted(id: &str, arguments: &FluentArgs<'_>) -> String {
    let message = CATALOGUE.get_message(id);
    match message.as_ref().and_then(|message| message.value()) {
        Some(pattern) => CATALOGUE
            .format_pattern(pattern, Some(arguments), &mut Vec::new())
            .into_owned(),
        None => id.to_owned(),
    }
}

/// A message of the windows.
pub(crate) fn message(id: &str, values: &[(&str, Value)]) -> String {
    let values = values.iter().map(|(name, value)| (*name, argument(name, value)));
    formatted(id, &values.collect())
}

/// What one of our enums is called: its word in JSON chooses.
pub(crate) fn named(id: &str, of: &impl Serialize) -> String {
    message(id, &[("value", value(of))])
}

/// Anything as a value of a message.
pub(crate) fn value(of: &impl Serialize) -> Value {
    Value::serialized(of).unwrap_or(Value::Null)
}

/// A course as a word of the compass.
pub(crate) fn compass(course_deg: f64) -> String {
    say!("compass", eighth = eighth(course_deg))
}

/// A course as its eighth of the circle, from 0 in the north.
pub(crate) fn eighth(course_deg: f64) -> f64 {
    (course_deg.rem_euclid(360.0) / 45.0).round() % 8.0
}

/// What is said, in words.
pub fn text(said: &Said) -> String {
    Value::serialized(said)
        .ok()
        .and_then(|said| text_of(&said))
        .unwrap_or_default()
}

/// The same of a tree; nothing where it is no code with values.
pub(crate) fn text_of(said: &Value) -> Option<String> {
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
        _ => (name.to_owned(), argument(name, value)),
    });
    Some(formatted(id, &arguments.collect()))
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::collections::{BTreeMap, BTreeSet};

    const SOURCE: &str = include_str!("../messages/en.ftl");

    /// Messages of the catalogue, each with the variables that stand in it.
    fn messages() -> BTreeMap<String, BTreeSet<String>> {
        let mut messages: BTreeMap<String, BTreeSet<String>> = BTreeMap::new();
        let mut at = String::new();
        for line in SOURCE.lines().filter(|line| !line.starts_with('#')) {
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
        let messages = messages();
        let parsed = FluentResource::try_new(SOURCE.to_owned());
        assert!(parsed.is_ok(), "{:?}", parsed.err().map(|(_, errors)| errors));
        for id in messages.keys() {
            assert!(CATALOGUE.has_message(id), "{id}");
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
        let asked = ["say!(\"", " say(\"", "named(\""].map(|call| sources.split(call).skip(1));
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
