//! No word but from the catalogue, and no file for programs that depends on a language.

use crate::garden::{
    comparison, crowded_findings, findings, findings_without_width, forecast, full_findings, inspection,
};
use crate::morning::morning;
use std::collections::BTreeSet;
use tussock_report::{
    Privacy, Style, Voice, answer, answer_comparison, answer_inspection, answer_map, answer_morning,
    answer_plan, answer_visits, hints, html, html_comparison, html_forecast, html_morning, html_visits,
    map_svg, outputs, visits,
};
use tussock_types::{Findings, Language, Settings, Units};

const ENGLISH: &str = include_str!("../messages/en.ftl");
/// A letter that nobody writes in place of each of ours.
fn ringed(letter: char) -> char {
    match letter {
        'a'..='z' => char::from_u32(0x24D0 + u32::from(letter) - u32::from('a')).unwrap(),
        'A'..='Z' => char::from_u32(0x24B6 + u32::from(letter) - u32::from('A')).unwrap(),
        other => other,
    }
}

/// The words of a line of the catalogue in ringed letters; what stands in braces stays.
fn ringed_line(line: &str) -> String {
    let mut depth = 0;
    let ring = |letter: char| {
        depth += i32::from(letter == '{') - i32::from(letter == '}' && depth > 0);
        if depth > 0 { letter } else { ringed(letter) }
    };
    line.chars().map(ring).collect()
}

/// English in ringed letters: whatever stands there in plain ones is not from the catalogue.
fn marked() -> Voice {
    let mut source = String::new();
    for line in ENGLISH.lines() {
        let begins = line.starts_with(|letter: char| letter.is_ascii_lowercase());
        let chosen = line.trim_start().starts_with(['[', '*']);
        source += &match (
            line.split_once(" = ").filter(|_| begins),
            line.split_once(']').filter(|_| chosen),
        ) {
            (Some((id, text)), _) => format!("{id} = {}", ringed_line(text)),
            (_, Some((key, text))) => format!("{key}]{}", ringed_line(text)),
            _ if line.starts_with('#') => line.to_owned(),
            _ => ringed_line(line),
        };
        source.push('\n');
    }
    Voice::of_catalogue(Language::English, Units::Metric, source)
}

/// Everything of a page that is read or read aloud; not what people, plans and logs say.
fn read_aloud(page: &str) -> String {
    let page = page.split("<script>").next().unwrap();
    let page = page
        .replace("&#x27;", "'")
        .replace("&#39;", "'")
        .replace("&#x2f;", "/");
    let mut out = String::new();
    let mut is_theirs = false;
    for part in page.split('<').skip(1) {
        let (tag, text) = part.split_once('>').unwrap_or((part, ""));
        let name = tag
            .split([' ', '/'])
            .find(|name| !name.is_empty())
            .unwrap_or_default();
        is_theirs = match (name, tag.starts_with('/')) {
            ("bdi" | "style", is_end) => !is_end,
            _ => is_theirs,
        };
        // Ids, and names on the map, are those of the findings.
        let is_name = tag.contains("class=\"tag") || tag.contains("class=\"pin") || name == "meta";
        for label in ["aria-label=\"", "data-h=\"", "data-more=\"", "data-close=\""] {
            let said = tag.split(label).nth(1).and_then(|rest| rest.split('"').next());
            out += said.unwrap_or_default();
            out.push('\n');
        }
        if !is_theirs && !is_name {
            out += text;
        }
        out.push('\n');
    }
    out
}

/// Signs of units, and names of formats and of ourselves.
const NO_WORDS: [&str; 17] = [
    "m", "m²", "cm", "mm", "km", "s", "min", "h", "UTC", "GPX", "NMEA", "CSV", "SHA", "RTK", "tussock",
    "geo", "C",
];

/// Words in plain letters that are neither ids, such as `M12`, nor theirs: of names, plans, logs.
fn bare_words(text: &str, theirs: &str) -> Vec<String> {
    let theirs: BTreeSet<&str> = theirs.split(|letter: char| !letter.is_alphanumeric()).collect();
    let is_word = |word: &&str| {
        let is_number = word.starts_with(|letter: char| letter.is_ascii_digit());
        let is_id = word.chars().skip(1).all(|letter| letter.is_ascii_digit()) && word.len() < 5;
        let is_plain = word.chars().any(|letter| letter.is_ascii_alphabetic());
        is_plain && !is_number && !is_id && !NO_WORDS.contains(word) && !theirs.contains(*word)
    };
    // A word that is cut is none.
    let parts = text
        .split_inclusive('…')
        .map(|part| match part.strip_suffix('…') {
            Some(cut) => cut.trim_end_matches(char::is_alphanumeric),
            None => part,
        });
    let words = parts.flat_map(|part| part.split(|letter: char| !letter.is_alphanumeric()));
    words.filter(is_word).map(str::to_owned).collect()
}

#[test]
fn every_word_of_every_window_is_from_the_catalogue() {
    let voice = marked();
    let style = Style {
        width_columns: 120,
        voice,
        ..Style::default()
    };
    // What is theirs: names, places, what was said and skipped, as the findings hold it; none of our codes has a blank.
    let theirs = |findings: &Findings| {
        let mut theirs = String::from(
            "tool shed old pear tree Residence with a rather long name, number Villa garden root, boards ordered Caution lt gt Look for ruts and \
             roots. The way in is narrower than the body. A guide run leads there. The long meadow behind the orangery, the north-eastern corner of \
             it.",
        );
        let plan = findings.plan.iter().flat_map(|plan| &plan.features);
        theirs.extend(plan.map(|feature| format!(" {}", feature.name)));
        theirs.extend(findings.inputs.iter().map(|input| {
            let facts = &input.facts;
            format!(
                " {} {} {:?} {:?}",
                facts.name, facts.machine, facts.made_by, facts.places
            )
        }));
        theirs.extend(
            findings
                .complaints
                .iter()
                .map(|place| format!(" {:?}", place.said)),
        );
        theirs += &format!(
            " {:?} {:?} {:?}",
            findings.settings.garden,
            findings.visit,
            findings.reference.as_ref().map(|found| &found.name)
        );
        theirs
    };
    let mut faults = Vec::new();
    let mut look = |what: &str, text: &str, theirs: &str| {
        faults.extend(
            bare_words(text, theirs)
                .into_iter()
                .map(|word| format!("{what}: {word}")),
        );
    };
    for (name, sample) in [
        ("findings", findings()),
        ("full", full_findings()),
        ("without width", findings_without_width()),
        ("crowded", crowded_findings()),
    ] {
        let theirs = theirs(&sample);
        look(
            &format!("{name} page"),
            &read_aloud(&html(&sample, voice).unwrap()),
            &theirs,
        );
        look(
            &format!("{name} picture"),
            &read_aloud(&map_svg(&sample, voice)),
            &theirs,
        );
        look(&format!("{name} hints"), &hints(&sample, voice).concat(), &theirs);
        let map = answer_map(&sample, style);
        let key = map.find(ringed('n')).map_or("", |at| &map[at..]);
        look(
            &format!("{name} terminal"),
            &(answer(&sample, style) + key),
            &theirs,
        );
    }
    let mut settings = Settings::default();
    settings.machine.cut_width_m = Some(0.22);
    let plan = html_forecast(&forecast(), &settings, "0.1.0", voice).unwrap();
    let theirs = theirs(&full_findings());
    look("plan", &read_aloud(&plan), &theirs);
    let checked = serde_json::json!({"is_sound": true, "lawn_m2": 412.0, "edge_m": 96.0, "features": [
        {"feature": 0, "role": "lawn", "name": "garden", "area_m2": 412.0, "length_m": null}]});
    look(
        "plan terminal",
        &answer_plan(&checked, &[], Some(&forecast()), &settings, style),
        &format!("{theirs} lawn"),
    );
    let done = visits(vec![("folder".to_owned(), comparison())], Privacy::Private);
    look(
        "visits",
        &read_aloud(&html_visits(&done, voice).unwrap()),
        &theirs,
    );
    look("visits terminal", &answer_visits(&done, style), &theirs);
    look(
        "comparison",
        &read_aloud(&html_comparison(&comparison(), voice).unwrap()),
        &theirs,
    );
    look(
        "comparison terminal",
        &answer_comparison(&comparison(), style),
        &theirs,
    );
    look(
        "morning",
        &read_aloud(&html_morning(&morning(5), voice).unwrap()),
        &theirs,
    );
    look("morning terminal", &answer_morning(&morning(5), voice), &theirs);
    let inputs = inspection().inputs;
    let logs = inputs.iter().map(|input| {
        format!(
            " {} {:?} {:?}",
            input.facts.name, input.facts.made_by, input.facts.places
        )
    });
    let logs = theirs + &logs.collect::<String>();
    look("inspection", &answer_inspection(&inspection(), style), &logs);
    faults.sort();
    faults.dedup();
    assert!(faults.is_empty(), "{faults:#?}");
}

#[test]
fn scripts_and_the_local_page_hold_no_words() {
    let room = concat!(env!("CARGO_MANIFEST_DIR"), "/../web/page/");
    let page = std::fs::read_to_string(format!("{room}page.html")).unwrap();
    let body = page.split("<body>").nth(1).unwrap();
    for part in body.split('<').skip(1) {
        let (tag, text) = part.split_once('>').unwrap();
        let text = text.trim();
        assert!(
            text.is_empty() || text.starts_with("{{") || text == "Tussock",
            "{text}"
        );
        for label in [" aria-label=\"", " title=\"", " placeholder=\"", " alt=\""] {
            assert!(!tag.contains(label), "{tag}");
        }
    }
    let own = include_str!("../templates/report.js").to_owned();
    for script in [own, std::fs::read_to_string(format!("{room}page.js")).unwrap()] {
        // What is shown is set as text, as a label, or made with its words.
        for shows in [
            "textContent = ",
            "\"aria-label\", ",
            "made(\"button\", ",
            "made(\"p\", ",
            "made(\"span\", ",
            "message: ",
            "hints: [",
        ] {
            for rest in script.split(shows).skip(1) {
                let literal = rest
                    .strip_prefix(['"', '`'])
                    .map(|rest| rest.split(['"', '`', '$']).next().unwrap());
                let is_word = literal.is_some_and(|text| text.chars().any(char::is_alphabetic));
                assert!(!is_word, "{shows}{}", rest.lines().next().unwrap());
            }
        }
    }
}

#[test]
fn files_for_programs_are_the_same_in_every_language_and_pages_say_theirs() {
    let sample = full_findings();
    let of = |voice| outputs(&sample, Privacy::Full, voice).unwrap();
    let english = of(Voice::default());
    for language in Language::ALL {
        for units in Units::ALL {
            let voice = Voice::new(language, units);
            for (ours, theirs) in english.iter().zip(of(voice)) {
                assert_eq!(ours.name, theirs.name);
                if !matches!(ours.name, "report.html" | "map.png" | "pockets.gpx") {
                    assert!(ours.bytes == theirs.bytes, "{} in {voice:?}", ours.name);
                }
                if ours.name == "report.html" {
                    let page = String::from_utf8(theirs.bytes).unwrap();
                    assert!(page.contains(&format!("<html lang=\"{}\">", language.word())));
                    // For a look by eye and by browser.
                    let name = format!("report-{}-{}.html", language.word(), units.word());
                    let path = std::path::Path::new(env!("CARGO_TARGET_TMPDIR")).join(name);
                    std::fs::write(path, page).unwrap();
                }
            }
        }
    }
}

#[test]
fn feet_and_miles_stand_in_place_of_metres() {
    let voice = Voice::new(Language::English, Units::Imperial);
    let style = Style {
        voice,
        ..Style::default()
    };
    let text = answer(&full_findings(), style);
    for metric in [" m²", " m ", " cm", " m,", " km", " m/s"] {
        assert!(!text.contains(metric), "{metric}: {text}");
    }
    assert!(text.contains(" sq ft") && text.contains(" ft"), "{text}");
    let page = html(&full_findings(), voice).unwrap().replace('\u{a0}', " ");
    let read = read_aloud(&page);
    for metric in [" m²", " m ", " m,", " m.", " m\n", " cm", " mm", " km", " m/s"] {
        let at = read.find(metric);
        assert!(
            at.is_none(),
            "{metric}: {:?}",
            at.map(|at| &read[at.saturating_sub(60)..at + 5])
        );
    }
    assert!(page.contains(" mph") && page.contains("8.7 in"));
}
