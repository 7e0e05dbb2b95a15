//! The papers of the house say what the tool does today.
//!
//! `REGENERATE=1 cargo test --test main papers` writes the generated parts anew.

use crate::support::{run, tussock};
use std::path::{Path, PathBuf};

fn root() -> &'static Path {
    Path::new(env!("CARGO_MANIFEST_DIR"))
}

/// Compares the last block of a kind after a heading with what it should be, or writes it.
fn block_is(paper: &str, heading: &str, kind: &str, wanted: &str) {
    let path = root().join(paper);
    let text = std::fs::read_to_string(&path).expect("the paper is there");
    let opening = format!("```{kind}\n");
    let after_heading = text.find(heading).expect("the heading is there");
    let start =
        after_heading + text[after_heading..].find(&opening).expect("the block is there") + opening.len();
    let end = start + text[start..].find("```").expect("the block ends");
    if std::env::var_os("REGENERATE").is_some() {
        let written = format!("{}{wanted}{}", &text[..start], &text[end..]);
        std::fs::write(&path, written).expect("the paper is written");
        return;
    }
    assert!(
        &text[start..end] == wanted,
        "{paper}, \"{heading}\" should say:\n{wanted}"
    );
}

#[test]
fn the_settings_reference_is_the_generated_one() {
    block_is(
        "docs/formats.md",
        "## Settings",
        "toml",
        &tussock_ingest::settings_reference(),
    );
}

#[test]
fn answer_and_map_in_the_readme_are_those_of_the_demo() {
    let folder = tempfile::TempDir::new().expect("a folder");
    let out = folder.path().join("target/demo");
    let before: Vec<PathBuf> = ["2026-05-04.gpx.gz", "2026-05-05.gpx.gz"]
        .map(|name| root().join("fixtures/demo/before").join(name))
        .to_vec();
    let ran = run(
        tussock()
            .arg("analyse")
            .args(&before)
            .arg("--plan")
            .arg(root().join("fixtures/demo/plan.geojson"))
            .arg("--settings")
            .arg(root().join("fixtures/demo/settings.toml"))
            .args(["--out", "target/demo"])
            .current_dir(folder.path()),
        b"",
    )
    .with_code(0);
    assert!(out.join("report.html").is_file());
    let (drawn, shown) = (
        std::fs::read(out.join("map.png")).expect("a map"),
        root().join("docs/demo-map.png"),
    );
    if std::env::var_os("REGENERATE").is_some() {
        std::fs::write(&shown, &drawn).expect("the picture is written");
    }
    assert!(
        std::fs::read(&shown).is_ok_and(|shown| shown == drawn),
        "docs/demo-map.png is not the map of the demo"
    );
    block_is("README.md", "## What the answer looks like", "text", &ran.stdout);
}

#[test]
fn links_between_papers_lead_somewhere() {
    for paper in [
        "README.md",
        "DEVELOPERS.md",
        "CONTRIBUTING.md",
        "CHANGELOG.md",
        "docs/architecture.md",
        "docs/logging.md",
        "docs/formats.md",
        "docs/bibliography.md",
        "docs/methods.md",
        "docs/python.md",
        "docs/recorded-accuracy.md",
        "docs/releasing.md",
        "docs/scale.md",
        "docs/store.md",
    ] {
        let path = root().join(paper);
        let text = std::fs::read_to_string(&path).expect("the paper is there");
        for target in text.split("](").skip(1).filter_map(|rest| rest.split(')').next()) {
            let file = target.split('#').next().unwrap_or_default();
            if file.is_empty() || file.contains("://") {
                continue;
            }
            assert!(
                path.parent().expect("a folder").join(file).exists(),
                "{paper} links to {target}"
            );
        }
    }
}

#[test]
fn the_plan_in_the_docs_is_sound() {
    let text = std::fs::read_to_string(root().join("docs/formats.md")).expect("the paper is there");
    let plan = text
        .split("```json\n")
        .nth(1)
        .and_then(|rest| rest.split("```").next())
        .expect("the example");
    run(tussock().args(["plan", "check", "-"]), plan.as_bytes()).with_code(0);
}

/// One word for one thing, and the one that a native reader would use: what stands left is not written where people read.
const WORDS: [(&str, &str); 16] = [
    ("face value", "as logged"),
    ("place on earth", "coordinates"),
    ("set apart", "set aside"),
    ("told by", "detected from, shown by"),
    ("good enough to tell", "good enough to draw conclusions"),
    ("what estimating does", "estimation bias"),
    ("lay a plan", "align a plan"),
    ("lay one where", "align one with"),
    ("seed of everything", "random seed"),
    ("where it is missing", "if it does not exist"),
    ("how the answer is given", "output format"),
    (
        "a file that exists is not replaced",
        "an existing file is not replaced",
    ),
    ("make no suggestions", "do not suggest changes"),
    ("to be expected, none", "expected, none"),
    ("cannot be had", "cannot be reached"),
    ("cutting swath", "swath"),
];

#[test]
fn one_word_for_one_thing_where_people_read() {
    let mut papers = vec![
        root().join("README.md"),
        root().join("crates/report/messages/en.ftl"),
    ];
    for (folder, is_one) in [("docs", ".md"), ("tests/snapshots", ".snap")] {
        let files = std::fs::read_dir(root().join(folder)).expect("the folder is there");
        let files = files.map(|file| file.expect("a file").path());
        papers.extend(files.filter(|path| path.to_string_lossy().ends_with(is_one)));
    }
    assert!(papers.len() > 20, "{papers:?}");
    let mut found = Vec::new();
    for path in papers {
        let text = std::fs::read_to_string(&path).expect("text").to_lowercase();
        // A line may break anywhere.
        let text = text.split_whitespace().collect::<Vec<_>>().join(" ");
        for (word, better) in WORDS {
            if text.contains(word) {
                found.push(format!("{}: {word:?}, expected {better:?}", path.display()));
            }
        }
    }
    assert!(found.is_empty(), "{}", found.join("\n"));
}
