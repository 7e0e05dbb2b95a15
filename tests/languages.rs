//! In the reader's language and units: what changes, what does not, and how hard the short answers are to read.
//!
//! `REGENERATE=1 cargo test --test main languages` writes the table of `docs/languages.md` anew.

use crate::support::{Folder, run, tussock};
use std::path::{Path, PathBuf};
use std::process::Command;

const LANGUAGES: [&str; 8] = ["en", "de", "fr", "es", "it", "nl", "sv", "pl"];

fn demo() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("fixtures/demo")
}

/// A night of the demo, on its plan.
fn night(arguments: &[&str]) -> Command {
    let mut command = tussock();
    command
        .arg("analyse")
        .arg(demo().join("before/2026-05-04.gpx.gz"))
        .arg("--plan")
        .arg(demo().join("plan.geojson"))
        .arg("--no-suggestions")
        .args(arguments);
    command
}

#[test]
fn a_language_changes_pages_and_answers_and_no_file_for_programs() {
    let folder = Folder::new();
    let out = |language: &str| folder.path(&format!("out-{language}"));
    let width = ["--cut-width", "22cm", "--out"];
    let english = run(night(&width).arg(out("en")), b"").with_code(0);
    let german = run(night(&width).arg(out("de")).args(["--language", "de"]), b"").with_code(0);
    assert_ne!(english.stdout, german.stdout);
    for file in [
        "findings.json",
        "findings.geojson",
        "cells.parquet",
        "legs.parquet",
        "fixes.parquet",
    ] {
        let bytes = |language| std::fs::read(out(language).join(file)).expect(file);
        assert!(bytes("en") == bytes("de"), "{file}");
    }
    let page = std::fs::read_to_string(out("de").join("report.html")).expect("a page");
    assert!(page.contains("<html lang=\"de\">"));
    // The environment speaks for the terminal alone; the first variable that is set counts, and --language before all.
    let here = |set: &[(&str, &str)], more: &[&str]| {
        let mut command = night(&["--cut-width", "22cm"]);
        command.envs(set.iter().copied()).args(more);
        run(&mut command, b"").with_code(0).stdout
    };
    let short = |text: &str| {
        text.lines()
            .take_while(|line| !line.contains("out-"))
            .map(str::to_owned)
            .collect::<Vec<_>>()
    };
    let words = |text: &str| short(text).first().cloned().unwrap_or_default();
    assert_eq!(
        words(&here(&[("LANG", "de_DE.UTF-8")], &[])),
        words(&german.stdout)
    );
    assert_eq!(
        words(&here(&[("LANG", "de_DE.UTF-8"), ("LC_ALL", "C")], &[])),
        words(&english.stdout)
    );
    assert_eq!(
        words(&here(&[("LANG", "de_DE.UTF-8")], &["--language", "en"])),
        words(&english.stdout)
    );
    let from_env = folder.path("out-env");
    run(night(&width).arg(&from_env).env("LC_MESSAGES", "de"), b"").with_code(0);
    let page = std::fs::read_to_string(from_env.join("report.html")).expect("a page");
    assert!(page.contains("<html lang=\"en\">"));
}

#[test]
fn the_garden_says_in_which_language_and_units_its_page_is() {
    let folder = Folder::new();
    let settings = folder.path("garden.toml");
    std::fs::write(
        &settings,
        "[machine]\ncut_width_m = \"9in\"\n[garden]\nlanguage = \"sv\"\nunits = \"imperial\"\n",
    )
    .expect("settings");
    let out = folder.path("out");
    let ran = run(night(&["--out"]).arg(&out).arg("--settings").arg(&settings), b"").with_code(0);
    assert!(
        ran.stdout.contains(" sq ft") && !ran.stdout.contains(" m²"),
        "{ran}"
    );
    let page = std::fs::read_to_string(out.join("report.html")).expect("a page");
    assert!(page.contains("<html lang=\"sv\">") && page.contains("sq ft"));
    let findings = std::fs::read_to_string(out.join("findings.json")).expect("findings");
    assert!(findings.contains("\"cut_width_m\": 0.2286,"));
    // Drawn again, the page is in the same language, unless another is asked for.
    for (asked, language) in [
        (&[][..], "sv"),
        (&["--language", "fr", "--units", "metric"][..], "fr"),
    ] {
        let again = folder.path(&format!("again-{language}"));
        let mut command = tussock();
        command
            .arg("report")
            .arg(out.join("findings.json"))
            .arg("--out")
            .arg(&again)
            .args(asked);
        run(&mut command, b"").with_code(0);
        let page = std::fs::read_to_string(again.join("report.html")).expect("a page");
        assert!(page.contains(&format!("<html lang=\"{language}\">")));
    }
}

#[test]
fn a_width_in_inches_is_the_same_width() {
    let of = |width| {
        run(&mut night(&["--cut-width", width, "--format", "json"]), b"")
            .with_code(0)
            .stdout
    };
    assert!(of("9in") == of("22.86cm"));
    assert!(of("0.75 ft") == of("9in"));
    let refused = run(&mut night(&["--cut-width", "22cm", "--language", "xx"]), b"").with_code(2);
    assert!(
        refused
            .stderr
            .contains("expected en, de, fr, es, it, nl, sv or pl"),
        "{refused}"
    );
}

/// Sentences, words, letters, syllables, words of more than six letters, words of four syllables or more.
#[derive(Default)]
struct Counted {
    sentences: f64,
    words: f64,
    letters: f64,
    syllables: f64,
    long: f64,
    hard: f64,
}

/// Syllables are groups of vowels: near enough for an index, and the same for everybody who counts again.
fn syllables(word: &str, language: &str) -> f64 {
    let is_vowel = |letter: char| "aeiouyáàâäãåæéèêëíìîïóòôöõøœúùûüýÿąęŷ".contains(letter);
    let word = word.to_lowercase();
    let mut count = 0;
    let mut was_vowel = false;
    for letter in word.chars() {
        count += usize::from(is_vowel(letter) && !was_vowel);
        was_vowel = is_vowel(letter);
    }
    let is_silent = |ending: &str| word.ends_with(ending) && !word.ends_with("le") && count > 1;
    count -= usize::from(
        language == "en" && is_silent("e") || language == "fr" && (is_silent("e") || is_silent("es")),
    );
    count.max(1) as f64
}

fn count(text: &str, language: &str) -> Counted {
    let mut counted = Counted::default();
    for sentence in text.split_inclusive(['.', ':', ';', '?', '!', '\n']) {
        let words: Vec<&str> = (sentence.split(|letter: char| !letter.is_alphabetic() && letter != '\''))
            .filter(|word| word.chars().filter(|letter| letter.is_alphabetic()).count() > 1)
            .collect();
        counted.sentences += f64::from(u8::from(!words.is_empty()));
        for word in words {
            let letters = word.chars().count() as f64;
            let syllables = syllables(word, language);
            counted.words += 1.0;
            counted.letters += letters;
            counted.syllables += syllables;
            counted.long += f64::from(u8::from(letters > 6.0));
            counted.hard += f64::from(u8::from(syllables >= 4.0));
        }
    }
    counted
}

/// The index that a language has of its own: its name with its source, its value, and what is plain by it.
fn index(language: &str, of: &Counted) -> (&'static str, f64, &'static str) {
    let (length, beat) = (of.words / of.sentences, of.syllables / of.words);
    match language {
        "en" => (
            "Flesch reading ease (Flesch 1948)",
            206.835 - 1.015 * length - 84.6 * beat,
            "60 and more",
        ),
        "de" => ("Amstad (1978)", 180.0 - length - 58.5 * beat, "60 and more"),
        "fr" => (
            "Kandel and Moles (1958)",
            207.0 - 1.015 * length - 73.6 * beat,
            "60 and more",
        ),
        "es" => (
            "Fernández Huerta (1959)",
            206.84 - 1.02 * length - 60.0 * beat,
            "60 and more",
        ),
        "it" => (
            "Gulpease (Lucisano and Piemontese 1988)",
            89.0 + (300.0 * of.sentences - 10.0 * of.letters) / of.words,
            "60 and more",
        ),
        "nl" => (
            "Douma (1960)",
            206.84 - 0.93 * length - 77.0 * beat,
            "60 and more",
        ),
        "sv" => (
            "LIX (Björnsson 1968)",
            length + 100.0 * of.long / of.words,
            "40 and less",
        ),
        _ => (
            "FOG-PL (Gruszczyński and Ogrodniczuk 2015)",
            0.4 * (length + 100.0 * of.hard / of.words),
            "9 and less",
        ),
    }
}

/// The short answers of a page, without tags, ids and numbers.
fn answers(page: &str) -> String {
    let from = page.find("id=\"answers\"").expect("answers");
    let answers = &page[from..from + page[from..].find("</section>").expect("their end")];
    let mut text = String::new();
    for part in answers.split("<p class=\"").skip(1) {
        if part.starts_with("word\"") || part.starts_with("line") {
            let said = part
                .split_once('>')
                .map_or("", |(_, rest)| rest.split("</p>").next().unwrap_or(""));
            text += &said.replace("&#x27;", "'").replace('\u{a0}', " ");
            text += "\n";
        }
    }
    text
}

#[test]
fn the_short_answers_of_the_demo_are_plain_in_every_language() {
    let folder = Folder::new();
    let out = folder.path("demo");
    let mut command = crate::demo::analyse("before", "plan.geojson");
    run(command.arg("--out").arg(&out), b"").with_code(0);
    let mut table =
        String::from("| language | index | short answers of the demo | plain is |\n|---|---|---|---|\n");
    for language in LANGUAGES {
        let place = folder.path(language);
        let mut command = tussock();
        command
            .arg("report")
            .arg(out.join("findings.json"))
            .args(["--language", language, "--out"])
            .arg(&place);
        run(&mut command, b"").with_code(0);
        let page = std::fs::read_to_string(place.join("report.html")).expect("a page");
        let counted = count(&answers(&page), language);
        assert!(counted.words > 60.0, "{language}: {}", answers(&page));
        let (name, value, plain) = index(language, &counted);
        table += &format!("| {language} | {name} | {value:.0} | {plain} |\n");
    }
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("docs/languages.md");
    let kept = std::fs::read_to_string(&path).expect("docs/languages.md");
    let (before, rest) = kept.split_once("<!-- reading level -->\n").expect("a mark");
    let (_, after) = rest.split_once("<!-- end -->").expect("its end");
    let made = format!("{before}<!-- reading level -->\n{table}<!-- end -->{after}");
    if std::env::var_os("REGENERATE").is_some() {
        std::fs::write(&path, &made).expect("docs can be written");
    }
    assert!(made == kept, "run with REGENERATE=1 and read the diff:\n{table}");
}
