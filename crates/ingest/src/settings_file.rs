//! What does the user want, from a TOML file?
//!
//! Every key is known here once, in [`KEYS`], with the values that it may have and the reason of its default. From
//! this list come the check of a file (all faults at once, each with its line; an unknown key with the nearest known
//! one) and the reference page ([`settings_reference`]).
//!
//! Cost: nothing to speak of.

mod keys;

use keys::{KEYS, Key, Value as Allowed};
use std::fmt::Write;
use toml::Spanned;
use toml::de::{DeTable, DeValue};
use tussock_types::{Settings, day_span_min, offset_s};

/// One thing wrong with a settings file, and where.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct SettingsFault {
    /// Line in the file, from 1.
    pub line: usize,
    /// The key with its table, as `machine.cut_width_m`.
    pub key: String,
    /// What is wrong, with the offending value.
    pub found: String,
    /// What was expected instead.
    pub expected: String,
}

impl std::fmt::Display for SettingsFault {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        write!(f, "line {}: {} {}", self.line, self.key, self.found)?;
        if !self.expected.is_empty() {
            write!(f, ", expected {}", self.expected)?;
        }
        Ok(())
    }
}

/// Why settings could not be read.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
#[non_exhaustive]
pub enum SettingsError {
    /// The text is not TOML.
    #[error("{name}: line {line}, column {column}: not TOML: {reason}")]
    NotToml {
        /// Name of the file.
        name: String,
        /// Line, from 1.
        line: usize,
        /// Column, from 1.
        column: usize,
        /// What the parser says.
        reason: String,
    },
    /// Keys or values that cannot be used, all of them, in the order of the file.
    #[error("{}", listed(name, faults))]
    Faults {
        /// Name of the file.
        name: String,
        /// Each fault.
        faults: Vec<SettingsFault>,
    },
}

fn listed(name: &str, faults: &[SettingsFault]) -> String {
    let lines: Vec<String> = faults.iter().map(|fault| format!("{name}: {fault}")).collect();
    lines.join("\n")
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
    let mut check = Check {
        text,
        faults: Vec::new(),
    };
    check.root(root.get_ref());
    if !check.faults.is_empty() {
        check.faults.sort_by_key(|fault| fault.line);
        return Err(SettingsError::Faults {
            name: name.to_owned(),
            faults: check.faults,
        });
    }
    toml::from_str(text).map_err(not_toml)
}

fn line_at(text: &str, at: usize) -> usize {
    1 + text.bytes().take(at).filter(|byte| *byte == b'\n').count()
}

struct Check<'a> {
    text: &'a str,
    faults: Vec<SettingsFault>,
}

impl Check<'_> {
    fn push(&mut self, at: usize, key: &str, found: impl Into<String>, expected: impl Into<String>) {
        self.faults.push(SettingsFault {
            line: line_at(self.text, at),
            key: key.to_owned(),
            found: found.into(),
            expected: expected.into(),
        });
    }

    fn root(&mut self, root: &DeTable<'_>) {
        let tables = || KEYS.iter().map(|key| key.table);
        for (table, value) in root {
            let (at, table) = (table.span().start, table.get_ref().as_ref());
            if !tables().any(|known| known == table) {
                let expected = match KEYS.iter().find(|key| key.name == table) {
                    // A key of ours above the first table.
                    Some(key) => format!("it in the table [{}]", key.table),
                    None => {
                        let near = nearest(table, tables()).unwrap_or_default();
                        format!("[{near}] as the nearest known table")
                    }
                };
                self.push(at, table, "is not known", expected);
                continue;
            }
            let Some(entries) = value.get_ref().as_table() else {
                self.push(
                    at,
                    table,
                    format!("is {}", kind_of(value.get_ref())),
                    format!("a table [{table}]"),
                );
                continue;
            };
            for (name, value) in entries {
                self.entry(table, name.span().start, name.get_ref(), value);
            }
        }
        self.origin(root);
    }

    fn entry(&mut self, table: &str, at: usize, name: &str, value: &Spanned<DeValue<'_>>) {
        let full = format!("{table}.{name}");
        let Some(key) = KEYS.iter().find(|key| key.table == table && key.name == name) else {
            let expected = match KEYS.iter().find(|key| key.name == name) {
                Some(other) => format!("it in the table [{}]", other.table),
                None => {
                    let here = KEYS.iter().filter(|key| key.table == table).map(|key| key.name);
                    let near = nearest(name, here).unwrap_or_default();
                    format!("{table}.{near} as the nearest known key")
                }
            };
            self.push(at, &full, "is not known", expected);
            return;
        };
        let at = value.span().start;
        let written = self.text.get(value.span()).unwrap_or("").trim();
        if let Err(expected) = fits(key, value.get_ref()) {
            let found = match value.get_ref() {
                DeValue::Table(_) => "is a table".to_owned(),
                _ => format!("is {}", cut(written)),
            };
            self.push(at, &full, found, expected);
        }
    }

    /// Latitude and longitude of the origin come together.
    fn origin(&mut self, root: &DeTable<'_>) {
        let Some((table, value)) = root.iter().find(|(table, _)| table.get_ref() == "positions") else {
            return;
        };
        let Some(entries) = value.get_ref().as_table() else {
            return;
        };
        let has = |name: &str| entries.keys().any(|key| key.get_ref() == name);
        let (lat, lon) = ("origin_lat_deg", "origin_lon_deg");
        let missing = match (has(lat), has(lon)) {
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

/// Whether a value is one that a key may have; else what it may have.
fn fits(key: &Key, value: &DeValue<'_>) -> Result<(), String> {
    let is_fine = match key.value {
        Allowed::Number { low, high } => {
            number_of(value).is_some_and(|number| (low..=high).contains(&number))
        }
        Allowed::Whole { low, high } => whole_of(value).is_some_and(|number| (low..=high).contains(&number)),
        Allowed::Claim => value.is_bool(),
        Allowed::Word(words) => value.as_str().is_some_and(|word| words.contains(&word)),
        Allowed::Text { longest } => value.as_str().is_some_and(|text| text.chars().count() <= longest),
        Allowed::TimeZone => value.as_str().is_some_and(|text| offset_s(text).is_some()),
        Allowed::Hours => return hours_fit(value),
    };
    if is_fine { Ok(()) } else { Err(key.value.words()) }
}

fn number_of(value: &DeValue<'_>) -> Option<f64> {
    match value {
        DeValue::Float(float) => float.as_str().replace('_', "").parse().ok(),
        DeValue::Integer(_) => whole_of(value).map(|whole| whole as f64),
        _ => None,
    }
}

fn whole_of(value: &DeValue<'_>) -> Option<i128> {
    let integer = value.as_integer()?;
    i128::from_str_radix(&integer.as_str().replace('_', ""), integer.radix()).ok()
}

fn hours_fit(value: &DeValue<'_>) -> Result<(), String> {
    let Some(spans) = value.as_array() else {
        return Err(Allowed::Hours.words());
    };
    let mut last_end = 0;
    for span in spans {
        let Some(text) = span.get_ref().as_str() else {
            return Err(Allowed::Hours.words());
        };
        let Some((start, end)) = day_span_min(text) else {
            return Err(Allowed::Hours.words());
        };
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

/// The known word that is spelled most like another.
fn nearest<'a>(word: &str, known: impl Iterator<Item = &'a str>) -> Option<&'a str> {
    let word = word.to_lowercase();
    let mut best: Option<(f64, &str)> = None;
    for candidate in known {
        // A unit or a part left out says more than the letters that differ.
        let is_part = candidate.contains(&word) || word.contains(candidate);
        let likeness =
            strsim::normalized_damerau_levenshtein(candidate, &word) + if is_part { 0.3 } else { 0.0 };
        if best.is_none_or(|(most, _)| likeness > most) {
            best = Some((likeness, candidate));
        }
    }
    best.map(|(_, candidate)| candidate)
}

/// All settings with their defaults and reasons, as a commented TOML file that reads back as the defaults. Keys
/// without a default stand behind a `#` with an example.
pub fn settings_reference() -> String {
    let mut text = String::from(
        "# Settings of tussock. Every key may be left out; it then has the default given here.\n\
         # Keys without a default stand behind a # with an example.\n",
    );
    let mut table = "";
    for key in KEYS {
        if key.table != table {
            table = key.table;
            let about = keys::TABLES
                .iter()
                .find(|(name, _)| *name == table)
                .map_or("", |(_, about)| about);
            let _ = write!(text, "\n# {about}\n[{table}]\n");
        }
        for line in wrapped(&format!("{} ({}).", key.about, key.value.words()), 100) {
            let _ = writeln!(text, "# {line}");
        }
        for line in wrapped(
            &format!("Default {}: {}.", key.default.unwrap_or("none"), key.reason),
            100,
        ) {
            let _ = writeln!(text, "# {line}");
        }
        let _ = match key.default {
            Some(default) => writeln!(text, "{} = {default}", key.name),
            None => writeln!(text, "# {} = {}", key.name, key.example),
        };
    }
    text
}

/// Breaks a text at blanks into lines of at most a width.
fn wrapped(text: &str, width: usize) -> Vec<String> {
    let mut lines = vec![String::new()];
    for word in text.split_whitespace() {
        let last = lines.len() - 1;
        if !lines[last].is_empty() && lines[last].chars().count() + 1 + word.chars().count() > width {
            lines.push(word.to_owned());
            continue;
        }
        if !lines[last].is_empty() {
            lines[last].push(' ');
        }
        lines[last].push_str(word);
    }
    lines
}

#[cfg(test)]
#[path = "settings_file_tests.rs"]
mod tests;
