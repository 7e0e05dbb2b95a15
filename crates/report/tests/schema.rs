//! The published JSON Schemas agree with what is written.

use crate::garden::{
    bare_findings, findings, findings_without_width, full_findings, hostile_findings, inspection,
    local_findings,
};
use serde_json::Value;
use std::collections::BTreeSet;
use tussock_report::{from_json, inspection_to_json, redact, to_json};
use tussock_types::{Cells, Findings, Grid, Said};

fn schema(name: &str) -> Value {
    let path = format!("{}/../../docs/{name}", env!("CARGO_MANIFEST_DIR"));
    serde_json::from_str(&std::fs::read_to_string(path).unwrap()).unwrap()
}

fn assert_valid(schema: &Value, value: &Value) {
    let validator = jsonschema::validator_for(schema).unwrap();
    let errors: Vec<String> = validator
        .iter_errors(value)
        .map(|error| format!("{}: {error}", error.instance_path()))
        .take(5)
        .collect();
    assert!(errors.is_empty(), "{errors:#?}");
}

/// Everything that can occur, but few squares and short lines.
fn small() -> Findings {
    let mut sample = full_findings();
    sample.driven_lines[0].truncate(3);
    sample.cells = Some(Cells {
        grid: Grid {
            east_min_m: 0.0,
            north_min_m: 0.0,
            cell_m: 0.2,
            columns: 2,
            rows: 1,
        },
        lawn_fraction: vec![1.0, 0.5],
        visited_probability: vec![1.0, 0.0],
        visits_expected: vec![2.0, 0.0],
        first_visit_s: vec![5.0, f32::NAN],
        last_visit_s: vec![9.0, f32::NAN],
    });
    sample
}

fn written(findings: &Findings) -> Value {
    serde_json::from_str(&to_json(findings).unwrap()).unwrap()
}

#[test]
fn every_kind_of_findings_is_valid() {
    let schema = schema("findings.schema.json");
    let samples = [
        findings(),
        full_findings(),
        bare_findings(),
        local_findings(),
        findings_without_width(),
        hostile_findings(),
        redact(&full_findings()).unwrap(),
        small(),
    ];
    for sample in samples {
        assert_valid(&schema, &written(&sample));
    }
}

#[test]
fn an_inspection_is_valid() {
    let schema = schema("inspection.schema.json");
    let mut look = inspection();
    assert_valid(
        &schema,
        &serde_json::from_str(&inspection_to_json(&look).unwrap()).unwrap(),
    );
    (look.middle, look.hdop) = (None, None);
    assert_valid(
        &schema,
        &serde_json::from_str(&inspection_to_json(&look).unwrap()).unwrap(),
    );
}

#[test]
fn the_schemas_are_valid_themselves() {
    for name in ["findings.schema.json", "inspection.schema.json"] {
        let schema = schema(name);
        assert!(jsonschema::meta::is_valid(&schema), "{name}");
        assert_eq!(schema["$schema"], "https://json-schema.org/draft/2020-12/schema");
    }
}

#[test]
fn the_schemas_list_every_code_that_is_said() {
    let snake = |code: &str| {
        let mut word = String::new();
        for letter in code.chars() {
            if letter.is_uppercase() && !word.is_empty() {
                word.push('_');
            }
            word.extend(letter.to_lowercase());
        }
        word
    };
    let codes: Vec<String> = Said::CODES.iter().map(|(code, _)| snake(code)).collect();
    for name in [
        "findings.schema.json",
        "inspection.schema.json",
        "comparison.schema.json",
    ] {
        assert_eq!(
            schema(name)["$defs"]["Said"]["properties"]["code"]["enum"],
            serde_json::json!(codes),
            "{name}"
        );
    }
}

/// Walks a value and its schema together.
struct Walk<'a> {
    schema: &'a Value,
    seen: BTreeSet<String>,
    paths: Vec<Vec<String>>,
}

impl<'a> Walk<'a> {
    /// The part of the schema that describes a value which is not null.
    fn resolve(&mut self, mut part: &'a Value, value: &Value) -> &'a Value {
        loop {
            if let Some(name) = part.get("$ref").and_then(Value::as_str) {
                let name = name.strip_prefix("#/$defs/").unwrap();
                self.seen.insert(name.to_owned());
                part = &self.schema["$defs"][name];
            } else if let Some(any) = part.get("anyOf") {
                part = &any[0];
            } else if let Some(one) = part.get("oneOf").and_then(Value::as_array) {
                let key = value.as_object().unwrap().keys().next().unwrap();
                part = one
                    .iter()
                    .find(|choice| choice["properties"].get(key).is_some())
                    .unwrap();
            } else {
                return part;
            }
        }
    }

    fn walk(&mut self, part: &'a Value, value: &Value, path: &[String]) {
        self.paths.push(path.to_vec());
        if value.is_null() {
            panic!("{path:?} is null in the sample that should hold everything");
        }
        let part = self.resolve(part, value);
        let under = |key: &str| [path, &[key.to_owned()]].concat();
        match value {
            Value::Object(members) => {
                if let Some(of_all) = part.get("additionalProperties").filter(|more| more.is_object()) {
                    for (key, member) in members {
                        self.walk(of_all, member, &under(key));
                    }
                    return;
                }
                assert_eq!(part["additionalProperties"], false, "{path:?}");
                let keys: BTreeSet<&str> = members.keys().map(String::as_str).collect();
                let listed: BTreeSet<&str> = part["properties"]
                    .as_object()
                    .unwrap()
                    .keys()
                    .map(String::as_str)
                    .collect();
                let required: BTreeSet<&str> = part["required"]
                    .as_array()
                    .unwrap()
                    .iter()
                    .map(|key| key.as_str().unwrap())
                    .collect();
                assert_eq!(keys, listed, "{path:?}");
                assert_eq!(listed, required, "{path:?}");
                for (key, member) in members {
                    self.walk(&part["properties"][key], member, &under(key));
                }
            }
            Value::Array(items) => {
                for (index, item) in items.iter().enumerate() {
                    let of_item = match part.get("prefixItems") {
                        Some(prefix) => &prefix[index],
                        None => &part["items"],
                    };
                    if index < 2 {
                        self.walk(of_item, item, &under(&index.to_string()));
                    }
                }
            }
            _ => {}
        }
    }
}

fn walk<'a>(schema: &'a Value, value: &Value) -> Walk<'a> {
    let mut walk = Walk {
        schema,
        seen: BTreeSet::new(),
        paths: Vec::new(),
    };
    walk.walk(schema, value, &[]);
    walk
}

#[test]
fn the_schema_lists_exactly_the_fields_that_are_written() {
    // The second station point of a guide and the rest of each list repeat what the first shows.
    let schema = schema("findings.schema.json");
    let mut sample = written(&small());
    // One feature holds no radius, another no share: each optional part is walked where it is.
    for feature in sample["plan"]["features"].as_array_mut().unwrap() {
        feature["radius_m"] = 0.5.into();
        feature["outing_share_fraction"] = 0.5.into();
    }
    let features = sample["plan"]["features"].as_array_mut().unwrap();
    features.swap(1, 5);
    for pocket in sample["missed_pockets"].as_array_mut().unwrap() {
        pocket["certainty"] = 0.5.into();
    }
    let walked = walk(&schema, &sample);
    let all: BTreeSet<String> = schema["$defs"].as_object().unwrap().keys().cloned().collect();
    let enums: BTreeSet<String> = all
        .iter()
        .filter(|name| schema["$defs"][name].get("enum").is_some())
        .cloned()
        .collect();
    let missing: Vec<&String> = all
        .difference(&walked.seen)
        .filter(|name| !enums.contains(*name))
        .collect();
    assert!(missing.is_empty(), "never walked: {missing:?}");
}

#[test]
fn the_schema_of_inspections_lists_exactly_the_fields_that_are_written() {
    let schema = schema("inspection.schema.json");
    let mut sample: Value = serde_json::from_str(&inspection_to_json(&inspection()).unwrap()).unwrap();
    let full = written(&small());
    sample["span"] = full["span"].clone();
    for field in ["positions", "plan_fit", "machines", "silences"] {
        sample[field] = full[field].clone();
    }
    walk(&schema, &sample);
}

#[test]
fn the_schema_allows_null_exactly_where_it_can_be_read_back() {
    let schema = schema("findings.schema.json");
    let validator = jsonschema::validator_for(&schema).unwrap();
    let mut sample = written(&small());
    for feature in sample["plan"]["features"].as_array_mut().unwrap() {
        feature["radius_m"] = 0.5.into();
        feature["outing_share_fraction"] = 0.5.into();
    }
    let mut refused = 0;
    let mut allowed = 0;
    let is_read_back = |path: &Vec<String>| path.last().is_none_or(|key| key != "text");
    for path in walk(&schema, &sample).paths.into_iter().filter(is_read_back) {
        let pointer: String = path
            .iter()
            .map(|key| format!("/{}", key.replace('~', "~0").replace('/', "~1")))
            .collect();
        let mut value = sample.clone();
        *value.pointer_mut(&pointer).unwrap() = Value::Null;
        let is_valid = validator.is_valid(&value);
        let is_read = from_json(value.to_string().as_bytes()).is_ok();
        assert_eq!(is_valid, is_read, "{pointer}");
        if is_valid { allowed += 1 } else { refused += 1 }
    }
    assert!(allowed > 40 && refused > 150, "{allowed} {refused}");
}
