//! Writes the sample outputs to where a person can look at them.

use crate::garden;
use fluent_bundle::{FluentArgs, FluentBundle, FluentResource, FluentValue};
use std::collections::BTreeSet;
use std::path::Path;
use tussock_report::{Privacy, Voice, html, html_comparison, html_forecast, left_out, map_svg, outputs};
use tussock_types::{Language, Units};

const FILES: [&str; 7] = [
    "cells.parquet",
    "findings.geojson",
    "findings.json",
    "legs.parquet",
    "map.png",
    "pockets.gpx",
    "report.html",
];

#[test]
fn samples_are_written_whole_for_looking_at() {
    let folder = Path::new(env!("CARGO_TARGET_TMPDIR")).join("look");
    let samples = [
        ("first", garden::findings(), Privacy::Full),
        ("full", garden::full_findings(), Privacy::Full),
        ("crowded", garden::crowded_findings(), Privacy::Full),
        ("private", garden::full_findings(), Privacy::Private),
        ("local", garden::local_findings(), Privacy::Full),
        ("without-width", garden::findings_without_width(), Privacy::Full),
        ("bare", garden::bare_findings(), Privacy::Full),
        ("hostile", garden::hostile_findings(), Privacy::Full),
    ];
    for (name, findings, privacy) in samples {
        let folder = folder.join(name);
        std::fs::create_dir_all(&folder).unwrap();
        // Each file is there, or it is said why not.
        let mut named: Vec<&str> = left_out(&findings, privacy, Voice::default())
            .iter()
            .map(|(file, _)| *file)
            .collect();
        for output in outputs(&findings, privacy, Voice::default()).unwrap() {
            println!("{name}/{}: {} bytes", output.name, output.bytes.len());
            assert!(!output.bytes.is_empty(), "{name}/{}", output.name);
            named.push(output.name);
            std::fs::write(folder.join(output.name), output.bytes).unwrap();
        }
        named.sort_unstable();
        assert_eq!(named, FILES, "{name}");
        let svg = map_svg(&findings, Voice::default());
        assert!(svg.ends_with("</svg>") && !svg.contains("NaN"), "{name}/map.svg");
        std::fs::write(folder.join("map.svg"), svg).unwrap();
    }
    let page = html_comparison(&garden::comparison(), Voice::default()).unwrap();
    assert!(page.trim_end().ends_with("</html>"));
    std::fs::create_dir_all(folder.join("comparison")).unwrap();
    std::fs::write(folder.join("comparison/comparison.html"), page).unwrap();
    let mut settings = tussock_types::Settings::default();
    settings.machine.cut_width_m = Some(0.22);
    let page = html_forecast(&garden::forecast(), &settings, "0.1.0", Voice::default()).unwrap();
    std::fs::create_dir_all(folder.join("forecast")).unwrap();
    std::fs::write(folder.join("forecast/plan.html"), page).unwrap();
    // Everything that a page can hold, in every language.
    for language in Language::ALL {
        let place = folder.join(format!("full-{}", language.word()));
        let page = html(&garden::full_findings(), Voice::new(language, Units::Metric)).unwrap();
        std::fs::create_dir_all(&place).unwrap();
        std::fs::write(place.join("report.html"), page).unwrap();
    }
    println!("{}", folder.display());
}

/// Every message of a catalogue, with each of its texts and with values as long as they come.
fn sheet(language: Language, source: &str) -> String {
    let resource = FluentResource::try_new(source.to_owned()).unwrap();
    let mut bundle = FluentBundle::new(vec![language.word().parse().unwrap()]);
    bundle.set_use_isolating(false);
    bundle.add_resource_overriding(resource);
    let mut rows = String::new();
    for block in messages_of(source) {
        let id = block.split(" = ").next().unwrap();
        let names: BTreeSet<&str> = (block.split("{ $").skip(1))
            .filter_map(|rest| rest.split([' ', '}']).next())
            .collect();
        let keys = block
            .split("\n")
            .filter_map(|line| line.trim().trim_start_matches('*').strip_prefix('['));
        let keys: Vec<&str> = keys.filter_map(|line| line.split(']').next()).collect();
        let pattern = bundle.get_message(id).unwrap().value().unwrap();
        let mut said = BTreeSet::new();
        for key in keys
            .iter()
            .copied()
            .chain(["none", "1", "2", "5", "22", "1000000", "long"])
        {
            let value = |name: &str| match (key.parse::<f64>(), key) {
                _ if name == "id" => FluentValue::from("M12"),
                (Ok(number), _) => FluentValue::from(number),
                (_, "long") => FluentValue::from("1 234 567,8 m² (99,9 %)"),
                _ => FluentValue::from(key.to_owned()),
            };
            let values: FluentArgs<'_> = names.iter().map(|name| (*name, value(name))).collect();
            said.insert(
                bundle
                    .format_pattern(pattern, Some(&values), &mut Vec::new())
                    .into_owned(),
            );
        }
        for text in said {
            let text = text.replace('&', "&amp;").replace('<', "&lt;");
            rows += &format!("<div><dt>{id}</dt><dd><p class=\"line\">{text}</p></dd></div>\n");
        }
    }
    let style = concat!(
        include_str!("../templates/report.css"),
        include_str!("../templates/print.css")
    );
    format!(
        "<!doctype html>\n<html lang=\"{}\">\n<head><meta charset=\"utf-8\"><meta name=\"viewport\" content=\"width=device-width, \
         initial-scale=1\"><title>{}</title><style>{style}</style></head>\n<body><main><dl class=\"facts\">{rows}</dl></main></body></html>\n",
        language.word(),
        language.word()
    )
}

/// The messages of a part of a catalogue, each with all of its lines.
fn messages_of(part: &str) -> Vec<String> {
    let mut messages: Vec<String> = Vec::new();
    for line in part.lines().filter(|line| !line.starts_with('#')) {
        if line.starts_with(|letter: char| letter.is_ascii_lowercase()) {
            messages.push(line.to_owned());
        } else if let Some(last) = messages.last_mut() {
            *last += "\n";
            *last += line;
        }
    }
    messages
}

#[test]
fn sheets_of_every_message_are_written_for_the_browser() {
    let folder = Path::new(env!("CARGO_TARGET_TMPDIR")).join("look");
    std::fs::create_dir_all(&folder).unwrap();
    for language in Language::ALL {
        let path = format!("{}/messages/{}.ftl", env!("CARGO_MANIFEST_DIR"), language.word());
        let sheet = sheet(language, &std::fs::read_to_string(path).unwrap());
        assert!(sheet.matches("<dt>").count() > 1000, "{}", language.word());
        std::fs::write(folder.join(format!("messages-{}.html", language.word())), sheet).unwrap();
    }
}
