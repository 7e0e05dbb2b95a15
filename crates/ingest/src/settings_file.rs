//! What does the user want, from a TOML file?
//!
//! Every key is listed once in `settings_keys.toml`, with its possible values and the reason for its default. This list
//! gives the check of a file (all faults at once, each with its line; an unknown key with the nearest known one) and the
//! reference page ([`settings_reference`]).
//!
//! Cost: negligible.

use crate::error::{listed, wanted};
use serde::Deserialize;
use std::fmt::Write;
use std::sync::LazyLock;
use toml::Spanned;
use toml::de::{DeTable, DeValue};
use tussock_types::{GardenClock, Settings, day_span_min, typed_length_m};

static TABLES: LazyLock<Vec<KeyTable>> = LazyLock::new(|| {
    #[derive(Deserialize)]
    struct KeyList {
        table: Vec<KeyTable>,
    }
    let list: KeyList =
        toml::from_str(include_str!("settings_keys.toml")).expect("a test reads the same list");
    list.table
});

/// A table of settings.
#[derive(Deserialize)]
struct KeyTable {
    name: String,
    about: String,
    /// Whether there may be several, as `[[name]]`.
    #[serde(default)]
    repeats: bool,
    key: Vec<Key>,
}

impl KeyTable {
    fn key(&self, name: &str) -> Option<&Key> {
        self.key.iter().find(|key| key.name == name)
    }

    /// As written in a file.
    fn head(&self) -> String {
        if self.repeats {
            format!("[[{}]]", self.name)
        } else {
            format!("[{}]", self.name)
        }
    }
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Key {
    name: String,
    about: String,
    allowed: Allowed,
    /// As written in TOML; `None` when there is none.
    default: Option<String>,
    /// For keys without a default.
    #[serde(default)]
    example: String,
    reason: String,
}

/// The values that a key may have. Both ends of a range are included.
#[derive(Deserialize)]
#[serde(rename_all = "snake_case")]
enum Allowed {
    Number(f64, f64),
    Whole(i64, i64),
    WholeFrom(i64),
    Claim,
    Word(Vec<String>),
    /// A text of at most this many characters.
    Text(usize),
    /// Two numbers, each with its range.
    Pair([f64; 2], [f64; 2]),
    Hours,
    TimeZone,
}

impl Allowed {
    fn words(&self) -> String {
        match self {
            Self::Number(low, high) => format!("a number from {low} to {high}"),
            Self::Whole(low, high) => format!("a whole number from {low} to {high}"),
            Self::WholeFrom(low) => format!("a whole number from {low} up"),
            Self::Claim => "true or false".to_owned(),
            Self::Word(words) => format!("\"{}\"", words.join("\" or \"")),
            Self::Text(longest) => format!("a text of at most {longest} characters"),
            Self::Pair([first_low, first_high], [low, high]) => {
                format!("a list of two numbers, from {first_low} to {first_high} and from {low} to {high}")
            }
            Self::Hours => "a list such as [\"08:00-12:00\", \"14:00-19:00\"]".to_owned(),
            Self::TimeZone => {
                "a name such as \"Europe/Berlin\", an offset such as \"+02:00\", or \"UTC\"".to_owned()
            }
        }
    }
}

/// One thing that is wrong with a settings file, and where.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
#[error("line {line}: {key} {found}{}", wanted(expected))]
pub struct SettingsFault {
    /// Line in the file, from 1.
    pub line: usize,
    /// The key with its table, such as `machine.cut_width_m`.
    pub key: String,
    /// What is wrong, with the offending value.
    pub found: String,
    /// What was expected instead.
    pub expected: String,
}

/// Why settings could not be read.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
#[non_exhaustive]
pub enum SettingsError {
    /// The bytes are not text.
    #[error("{name}: is not UTF-8 text from byte {byte} on, expected settings in TOML")]
    NotText {
        /// Name of the file.
        name: String,
        /// The first byte that is none, from 0.
        byte: usize,
    },
    /// The text is not TOML.
    #[error("{name}: line {line}, column {column}: not TOML: {reason}")]
    NotToml {
        /// Name of the file.
        name: String,
        /// Line, from 1.
        line: usize,
        /// Column, from 1.
        column: usize,
        /// The parser's message.
        reason: String,
    },
    /// All keys or values that cannot be used, in the order of the file.
    #[error("{}", listed(name, faults))]
    Faults {
        /// Name of the file.
        name: String,
        /// Each fault.
        faults: Vec<SettingsFault>,
    },
}

/// Reads settings from the bytes of a file.
///
/// # Errors
/// [`SettingsError`].
pub fn read_settings_bytes(name: &str, bytes: &[u8]) -> Result<Settings, SettingsError> {
    let text = std::str::from_utf8(bytes).map_err(|error| SettingsError::NotText {
        name: name.to_owned(),
        byte: error.valid_up_to(),
    })?;
    read_settings(name, text)
}

/// Reads settings; keys that are left out have their default.
///
/// # Errors
/// [`SettingsError`].
///
/// # Example
/// ```
/// use tussock_ingest::read_settings;
///
/// let settings = read_settings("garden.toml", "[machine]\ncut_width_m = 0.22\n")?;
/// assert_eq!(settings.machine.cut_width_m, Some(0.22));
/// let error = read_settings("garden.toml", "[machine]\ncutwidth_m = 0.22\n").unwrap_err();
/// assert_eq!(
///     error.to_string(),
///     "garden.toml: line 2: machine.cutwidth_m is not known, expected machine.cut_width_m as the nearest known key"
/// );
/// # Ok::<(), tussock_ingest::SettingsError>(())
/// ```
pub fn read_settings(name: &str, text: &str) -> Result<Settings, SettingsError> {
    let text = text.strip_prefix('\u{feff}').unwrap_or(text);
    let not_toml = |error: toml::de::Error| {
        let at = error.span().map_or(text.len(), |span| span.start);
        let line = line_at(text, at);
        let before = text.get(..at).unwrap_or(text);
        let column = before.rsplit('\n').next().unwrap_or(before).chars().count() + 1;
        SettingsError::NotToml {
            name: name.to_owned(),
            line,
            column,
            reason: error.message().trim().replace('\n', ", "),
        }
    };
    let root = DeTable::parse(text).map_err(not_toml)?;
    let mut check = SettingsCheck {
        text,
        faults: Vec::new(),
        lengths: Vec::new(),
    };
    check.root(root.get_ref());
    if !check.faults.is_empty() {
        check.faults.sort_by_key(|fault| fault.line);
        return Err(SettingsError::Faults {
            name: name.to_owned(),
            faults: check.faults,
        });
    }
    // Lengths that carry a unit become metres; from the end, so that what stands before keeps its place.
    let mut in_metres = text.to_owned();
    check.lengths.sort_by_key(|(at, _)| std::cmp::Reverse(at.start));
    for (at, length_m) in check.lengths {
        in_metres.replace_range(at, &format!("{length_m:?}"));
    }
    toml::from_str(&in_metres).map_err(not_toml)
}

fn line_at(text: &str, at: usize) -> usize {
    1 + text.bytes().take(at).filter(|byte| *byte == b'\n').count()
}

struct SettingsCheck<'a> {
    text: &'a str,
    faults: Vec<SettingsFault>,
    /// Where a length stands with its unit, and how many metres it is.
    lengths: Vec<(std::ops::Range<usize>, f64)>,
}

impl SettingsCheck<'_> {
    fn push(&mut self, at: usize, key: &str, found: impl Into<String>, expected: impl Into<String>) {
        self.faults.push(SettingsFault {
            line: line_at(self.text, at),
            key: key.to_owned(),
            found: found.into(),
            expected: expected.into(),
        });
    }

    fn root(&mut self, root: &DeTable<'_>) {
        for (name, value) in root {
            let (at, name) = (name.span().start, name.get_ref().as_ref());
            let found = value.get_ref();
            match (TABLES.iter().find(|table| table.name == name), found) {
                (Some(table), DeValue::Table(entries)) if !table.repeats => self.entries(table, entries),
                (Some(table), DeValue::Array(items)) if table.repeats => {
                    for item in items {
                        match item.get_ref().as_table() {
                            Some(entries) => self.entries(table, entries),
                            None => self.is_no_table(item.span().start, table, item.get_ref()),
                        }
                    }
                }
                (Some(table), _) => self.is_no_table(at, table, found),
                (None, _) => {
                    let near = || nearest(name, TABLES.iter().map(|table| &table.name[..]));
                    // Perhaps it is one of our keys above the first table.
                    let expected = home_of(name).unwrap_or_else(|| {
                        format!("[{}] as the nearest known table", near().unwrap_or_default())
                    });
                    self.push(at, name, "is not known", expected);
                }
            }
        }
        self.origin(root);
        self.complaints(root);
    }

    fn is_no_table(&mut self, at: usize, table: &KeyTable, found: &DeValue<'_>) {
        let found = format!("is {}", kind_of(found));
        self.push(at, &table.name, found, format!("a table {}", table.head()));
    }

    fn entries(&mut self, table: &KeyTable, entries: &DeTable<'_>) {
        for (key, value) in entries {
            self.entry(table, key.span().start, key.get_ref(), value);
        }
    }

    fn entry(&mut self, table: &KeyTable, at: usize, name: &str, value: &Spanned<DeValue<'_>>) {
        let full = format!("{}.{name}", table.name);
        let Some(key) = table.key(name) else {
            let near = || nearest(name, table.key.iter().map(|key| &key.name[..])).unwrap_or_default();
            let expected = home_of(name)
                .unwrap_or_else(|| format!("{}.{} as the nearest known key", table.name, near()));
            self.push(at, &full, "is not known", expected);
            return;
        };
        if let Err(expected) = fits(key, value.get_ref()) {
            let found = match value.get_ref() {
                DeValue::Table(_) => "is a table".to_owned(),
                _ => format!("is {}", cut(self.text.get(value.span()).unwrap_or("").trim())),
            };
            self.push(value.span().start, &full, found, expected);
        } else if let Some(length_m) = length_of(key, value.get_ref()) {
            self.lengths.push((value.span(), length_m));
        }
    }

    /// Latitude and longitude of the origin must be given together.
    fn origin(&mut self, root: &DeTable<'_>) {
        let Some((table, value)) = root.iter().find(|(table, _)| table.get_ref() == "positions") else {
            return;
        };
        let Some(entries) = value.get_ref().as_table() else {
            return;
        };
        let (lat, lon) = ("origin_lat_deg", "origin_lon_deg");
        let missing = match (entries.contains_key(lat), entries.contains_key(lon)) {
            (true, false) => lon,
            (false, true) => lat,
            _ => return,
        };
        let at = table.span().start;
        self.push(
            at,
            &format!("positions.{missing}"),
            "is missing",
            "both coordinates of the origin or none",
        );
    }

    /// A complaint concerns one place, given in one way.
    fn complaints(&mut self, root: &DeTable<'_>) {
        let list = root.get("complaint").and_then(|value| value.get_ref().as_array());
        for item in list.into_iter().flatten() {
            let Some(entries) = item.get_ref().as_table() else {
                continue;
            };
            let found = match (entries.contains_key("at"), entries.contains_key("at_m")) {
                (true, true) => "is given beside complaint.at_m",
                (false, false) => "is missing",
                _ => continue,
            };
            let expected = "one of complaint.at and complaint.at_m";
            self.push(item.span().start, "complaint.at", found, expected);
        }
    }
}

/// The table of a key that was written elsewhere.
fn home_of(key: &str) -> Option<String> {
    let table = TABLES.iter().find(|table| table.key(key).is_some())?;
    Some(format!("it in the table {}", table.head()))
}

/// A value as written, cut to a line.
fn cut(written: &str) -> String {
    const MOST: usize = 60;
    let line = written.lines().next().unwrap_or("");
    if line.chars().count() > MOST || line.len() < written.len() {
        return format!("{}...", line.chars().take(MOST).collect::<String>());
    }
    line.to_owned()
}

fn kind_of(value: &DeValue<'_>) -> &'static str {
    match value {
        DeValue::String(_) => "a text",
        DeValue::Integer(_) | DeValue::Float(_) => "a number",
        DeValue::Boolean(_) => "true or false",
        DeValue::Datetime(_) => "a date",
        DeValue::Array(_) => "a list",
        DeValue::Table(_) => "a table",
    }
}

/// Checks that a value is allowed for a key; the error says what is.
fn fits(key: &Key, value: &DeValue<'_>) -> Result<(), String> {
    let is_fine = match &key.allowed {
        Allowed::Number(low, high) => (number_of(value).or_else(|| length_of(key, value)))
            .is_some_and(|number| (*low..=*high).contains(&number)),
        Allowed::Whole(low, high) => whole_of(value).is_some_and(|number| (*low..=*high).contains(&number)),
        Allowed::WholeFrom(low) => whole_of(value).is_some_and(|number| number >= *low),
        Allowed::Claim => value.is_bool(),
        Allowed::Word(words) => value
            .as_str()
            .is_some_and(|text| words.iter().any(|word| word == text)),
        Allowed::Text(longest) => value
            .as_str()
            .is_some_and(|text| text.chars().count() <= *longest),
        Allowed::TimeZone => value
            .as_str()
            .is_some_and(|text| GardenClock::parse(text).is_some()),
        Allowed::Pair(first, second) => {
            let numbers = value
                .as_array()
                .map(|list| list.iter().map(|item| number_of(item.get_ref())));
            let numbers: Option<Vec<f64>> = numbers.and_then(Iterator::collect);
            let is_in = |[low, high]: [f64; 2], number: f64| (low..=high).contains(&number);
            matches!(numbers.as_deref(), Some([one, two]) if is_in(*first, *one) && is_in(*second, *two))
        }
        Allowed::Hours => return hours_fit(value),
    };
    if is_fine { Ok(()) } else { Err(key.allowed.words()) }
}

/// A length with its unit, such as `"9in"`, where a key is in metres.
fn length_of(key: &Key, value: &DeValue<'_>) -> Option<f64> {
    let is_length = key.name.ends_with("_m") && matches!(key.allowed, Allowed::Number(..));
    value.as_str().filter(|_| is_length).and_then(typed_length_m)
}

fn number_of(value: &DeValue<'_>) -> Option<f64> {
    match value {
        DeValue::Float(float) => float.as_str().replace('_', "").parse().ok(),
        DeValue::Integer(_) => whole_of(value).map(|whole| whole as f64),
        _ => None,
    }
}

fn whole_of(value: &DeValue<'_>) -> Option<i64> {
    let integer = value.as_integer()?;
    i64::from_str_radix(&integer.as_str().replace('_', ""), integer.radix()).ok()
}

fn hours_fit(value: &DeValue<'_>) -> Result<(), String> {
    let form = || Allowed::Hours.words();
    let mut last_end = 0;
    for span in value.as_array().ok_or_else(form)? {
        let text = span.get_ref().as_str().ok_or_else(form)?;
        let (start, end) = day_span_min(text).ok_or_else(form)?;
        if end <= start {
            return Err(format!(
                "\"{text}\" to end after it starts (one past midnight is two: up to 24:00, and from 00:00 on the next day)"
            ));
        }
        if start < last_end {
            return Err(format!("\"{text}\" to start after the one before it has ended"));
        }
        last_end = end;
    }
    Ok(())
}

/// The known word with the spelling most similar to another word.
fn nearest<'a>(word: &str, known: impl Iterator<Item = &'a str>) -> Option<&'a str> {
    let word = word.to_lowercase();
    // A missing unit or part says more than the letters that differ.
    let likeness = |known: &str| {
        let is_part = known.contains(&word) || word.contains(known);
        strsim::normalized_damerau_levenshtein(known, &word) + if is_part { 0.3 } else { 0.0 }
    };
    // The first of several that are equally similar.
    let known: Vec<&str> = known.collect();
    known
        .into_iter()
        .rev()
        .max_by(|one, other| likeness(one).total_cmp(&likeness(other)))
}

/// All settings with their defaults and reasons, as a commented TOML file that reads back as the defaults. Keys without a
/// default are commented out with `#` and an example.
pub fn settings_reference() -> String {
    let mut text = String::from(
        "# Settings of tussock. Every key may be left out; it then has the default given here.\n\
         # Keys without a default stand behind a # with an example.\n",
    );
    for table in TABLES.iter() {
        // A table that may occur several times has none by default.
        let off = if table.repeats { "# " } else { "" };
        let _ = write!(text, "\n# {}\n{off}{}\n", table.about, table.head());
        for key in &table.key {
            let about = format!("{} ({}).", key.about, key.allowed.words());
            let reason = format!(
                "Default {}: {}.",
                key.default.as_deref().unwrap_or("none"),
                key.reason
            );
            for line in [about, reason].iter().flat_map(|words| wrapped(words, 100)) {
                let _ = writeln!(text, "# {line}");
            }
            let _ = match &key.default {
                Some(default) => writeln!(text, "{off}{} = {default}", key.name),
                None => writeln!(text, "# {} = {}", key.name, key.example),
            };
        }
    }
    text
}

/// Breaks a text at blanks into lines of at most a given width.
fn wrapped(text: &str, width: usize) -> Vec<String> {
    let mut lines: Vec<String> = Vec::new();
    for word in text.split_whitespace() {
        match lines.last_mut() {
            Some(line) if line.chars().count() + 1 + word.chars().count() <= width => {
                line.push(' ');
                line.push_str(word);
            }
            _ => lines.push(word.to_owned()),
        }
    }
    lines
}

#[cfg(test)]
#[path = "settings_file_tests.rs"]
mod tests;
