//! What may be shown of a garden without revealing where it is?
//!
//! Built up, not cut down: `private.txt` lists every field that may be shown, and anything that is not on the list is null
//! or empty, including fields that are added tomorrow. Not on it are the origin and every latitude and longitude, dates and
//! times of day, names (garden, files, machines, makers of files, lawns, plan features, remarks), digests of inputs,
//! excerpts of logs, and the drawn plan, whose corners are coordinates. Everything in metres and in seconds from the start
//! is shown. Names among the values of messages are replaced by stand-ins, and so is anything that looks like a date or like
//! degrees with many decimals.
//!
//! Known limit: the outline of a lawn is itself a shape that somebody could search for from above.

use crate::ReportError;
use crate::json::tree;
use ciborium::Value;
use std::collections::BTreeMap;
use std::sync::LazyLock;
use tussock_types::{Findings, PlanRole};

/// Whether the files may reveal where and when.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Privacy {
    /// Everything.
    Full,
    /// Only files that make sense without coordinates, names, dates and digests; see [`redact`].
    Private,
}

impl From<bool> for Privacy {
    fn from(is_private: bool) -> Self {
        if is_private { Self::Private } else { Self::Full }
    }
}

/// How a field is shown.
#[derive(Clone, Copy)]
enum Telling {
    AsIs,
    Name,
    Text,
    Said,
    Blank,
}

static TOLD: LazyLock<BTreeMap<String, Telling>> = LazyLock::new(|| {
    let mut told = BTreeMap::new();
    let lines = include_str!("private.txt")
        .lines()
        .filter(|line| !line.starts_with('#'));
    for (place, fields) in lines.filter_map(|line| line.split_once(':')) {
        for field in fields.split_whitespace() {
            let (field, telling) = field.split_once('=').unwrap_or((field, ""));
            let telling = match telling {
                "name" => Telling::Name,
                "text" => Telling::Text,
                "said" => Telling::Said,
                "blank" => Telling::Blank,
                _ => Telling::AsIs,
            };
            let dot = if place.is_empty() { "" } else { "." };
            let mut add = |end: &str| {
                told.insert(
                    format!("{place}{dot}{}{end}", field.trim_end_matches('~')),
                    telling,
                );
            };
            if field.ends_with('~') {
                [".estimate", ".low", ".high"].into_iter().for_each(&mut add);
            } else {
                add("");
            }
        }
    }
    told
});

/// The findings without coordinates, names, dates and digests.
///
/// # Errors
/// As [`to_json`](crate::to_json); also for a saved result whose fields do not fit together.
pub fn redact(findings: &Findings) -> Result<Findings, ReportError> {
    let names = stand_ins(findings);
    let private: Findings = names
        .told(&tree(findings)?, "", 0)
        .deserialized()
        .map_err(|error| ReportError::Private {
            message: error.to_string(),
        })?;
    Ok(Findings {
        cells: findings.cells.clone(),
        ..private
    })
}

/// Names and their stand-ins, longest name first.
struct StandIns {
    pairs: Vec<(String, String)>,
}

fn stand_ins(findings: &Findings) -> StandIns {
    let mut pairs = BTreeMap::new();
    let mut add = |name: &str, stand_in: String| {
        let name = name.trim();
        // A name of one letter would occur in every word; a word for a role reveals nothing.
        let is_role = PlanRole::ALL.iter().any(|role| role.word() == name);
        if name.chars().count() > 1 && name != stand_in && !is_role {
            pairs.entry(name.to_owned()).or_insert(stand_in);
        }
    };
    let garden = &findings.settings.garden;
    for text in garden.name.iter().chain(&garden.remarks) {
        add(text, "the garden".to_owned());
    }
    let mut counts: BTreeMap<&str, usize> = BTreeMap::new();
    for feature in findings.plan.iter().flat_map(|plan| &plan.features) {
        let count = counts.entry(feature.role.word()).or_insert(0);
        *count += 1;
        add(&feature.name, format!("{}-{count}", feature.role.word()));
    }
    for (index, lawn) in findings
        .coverage
        .iter()
        .flat_map(|coverage| &coverage.lawns)
        .enumerate()
    {
        add(&lawn.name, format!("{}-{}", PlanRole::Lawn.word(), index + 1));
    }
    for (index, machine) in findings.machines.iter().enumerate() {
        add(&machine.id, format!("machine-{}", index + 1));
    }
    for (index, input) in findings.inputs.iter().enumerate() {
        add(&input.facts.name, format!("log-{}", index + 1));
        add(&input.facts.machine, format!("machine-{}", index + 1));
        add(&input.facts.sha256, "the file".to_owned());
        if let Some(made_by) = &input.facts.made_by {
            add(made_by, "a logger".to_owned());
        }
    }
    let mut pairs: Vec<(String, String)> = pairs.into_iter().collect();
    pairs.sort_by_key(|(name, _)| std::cmp::Reverse(name.len()));
    StandIns { pairs }
}

impl StandIns {
    /// What may be shown of a value at a path; `number` is that of the nearest list.
    fn told(&self, value: &Value, path: &str, number: usize) -> Value {
        match (value, TOLD.get(path)) {
            (_, Some(Telling::AsIs)) => value.clone(),
            (Value::Map(_), Some(Telling::Blank)) => Value::Map(Vec::new()),
            (_, Some(Telling::Blank)) => "".into(),
            (Value::Text(text), Some(Telling::Name)) => self.stand_in(text, path, number).into(),
            (Value::Text(text), Some(Telling::Text)) => self.replace(text).into(),
            (_, Some(Telling::Said)) => self.said(value),
            (Value::Map(fields), _) if is_within(path) => {
                let dot = if path.is_empty() { "" } else { "." };
                let field = |(name, field): &(Value, Value)| {
                    let under = format!("{path}{dot}{}", name.as_text().unwrap_or_default());
                    let any = format!("{path}{dot}*");
                    let is_named = TOLD.contains_key(&under) || is_within(&under);
                    (
                        name.clone(),
                        self.told(field, if is_named { &under } else { &any }, number),
                    )
                };
                Value::Map(fields.iter().map(field).collect())
            }
            (Value::Array(items), _) => {
                let under = format!("{path}[]");
                let is_told = TOLD.contains_key(&under) || is_within(&under);
                let items = (1..).zip(items).filter(|_| is_told);
                Value::Array(
                    items
                        .map(|(number, item)| self.told(item, &under, number))
                        .collect(),
                )
            }
            _ => Value::Null,
        }
    }

    /// A code with its values, with names among them replaced; its text will be written again.
    fn said(&self, value: &Value) -> Value {
        match value {
            Value::Text(text) => self.replace(text).into(),
            Value::Map(fields) => {
                let fields = fields
                    .iter()
                    .map(|(name, field)| (name.clone(), self.said(field)));
                Value::Map(fields.collect())
            }
            other => other.clone(),
        }
    }

    /// The stand-in for a whole name, even one that is too short to search for in sentences.
    fn stand_in(&self, name: &str, path: &str, number: usize) -> String {
        let known = self.pairs.iter().find(|(known, _)| known == name.trim());
        let what = if path.starts_with("coverage") {
            "lawn"
        } else {
            "machine"
        };
        known.map_or_else(
            || format!("{what}-{}", number.max(1)),
            |(_, stand_in)| stand_in.clone(),
        )
    }

    fn replace(&self, text: &str) -> String {
        let mut out = text.to_owned();
        for (name, stand_in) in &self.pairs {
            if out.contains(name.as_str()) {
                out = out.replace(name.as_str(), stand_in);
            }
        }
        without_dates_and_degrees(&out)
    }
}

/// Whether something below this path is shown.
fn is_within(path: &str) -> bool {
    let next = TOLD
        .range(path.to_owned()..)
        .map(|(told, _)| told)
        .find(|told| *told != path);
    path.is_empty()
        || next.is_some_and(|told| {
            told.strip_prefix(path)
                .is_some_and(|rest| rest.starts_with(['.', '[']))
        })
}

/// Removes runs of digits that read as a date, a time of day or degrees with four or more decimals.
fn without_dates_and_degrees(text: &str) -> String {
    let mut out = String::new();
    let mut run = String::new();
    for c in text.chars().chain(std::iter::once('\0')) {
        let joins = c.is_ascii_digit() || (!run.is_empty() && matches!(c, '-' | ':' | '.' | '/' | 'T' | 'Z'));
        if joins {
            run.push(c);
            continue;
        }
        if !run.is_empty() {
            let tail_at = run
                .trim_end_matches(|c: char| !c.is_ascii_digit() && c != 'Z')
                .len();
            let (core, tail) = run.split_at(tail_at);
            out.push_str(if tells_when_or_where(core) {
                "[left out]"
            } else {
                core
            });
            out.push_str(tail);
            run.clear();
        }
        if c != '\0' {
            out.push(c);
        }
    }
    out
}

fn tells_when_or_where(run: &str) -> bool {
    let marks = |mark: char| run.matches(mark).count();
    let is_date = marks('-') >= 2 || marks('/') >= 2 || marks('.') >= 2;
    let is_clock = marks(':') >= 1;
    let decimals = run.split_once('.').map_or(0, |(_, part)| part.len());
    is_date || is_clock || decimals >= 4
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_field_that_nobody_declared_is_left_out() {
        let mut findings = Value::Map(vec![
            ("schema_version".into(), 2.into()),
            ("owner".into(), "Fennmoor House".into()),
            (
                "nights".into(),
                Value::Array(vec![Value::Map(vec![("who".into(), "B.".into())])]),
            ),
            ("photographs".into(), Value::Array(vec!["a.jpg".into()])),
            ("visit".into(), Value::Map(vec![("who".into(), "B.".into())])),
        ]);
        let private = StandIns { pairs: Vec::new() }.told(&findings, "", 0);
        let fields = findings.as_map_mut().unwrap();
        fields[1].1 = Value::Null;
        fields[2].1 = Value::Array(vec![Value::Map(vec![("who".into(), Value::Null)])]);
        fields[3].1 = Value::Array(Vec::new());
        fields[4].1 = Value::Null;
        assert_eq!(private, findings);
    }

    #[test]
    fn dates_clocks_and_degrees_leave_sentences_and_other_numbers_stay() {
        assert_eq!(
            without_dates_and_degrees("since 2026-06-01T22:10:05Z at 47.1234567, about 3.25 m, 12 times."),
            "since [left out] at [left out], about 3.25 m, 12 times."
        );
        assert_eq!(
            without_dates_and_degrees("on 1.6.2026 at 22:10."),
            "on [left out] at [left out]."
        );
        assert_eq!(
            without_dates_and_degrees("exclusion-2 and 5-6 m"),
            "exclusion-2 and 5-6 m"
        );
    }
}
