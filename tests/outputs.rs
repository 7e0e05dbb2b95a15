//! `--out`: what is written, and what never is.

use crate::support::{Folder, assert_ran, lanes_csv};

const ANALYSE: &str = "analyse night.csv --plan garden.geojson --cut-width 22cm --out result";

fn with_log() -> Folder {
    let folder = Folder::with_garden();
    folder.write("night.csv", lanes_csv(1800));
    folder
}

#[test]
fn a_run_writes_every_output_and_names_it() {
    let folder = with_log();
    let ran = folder.tussock(ANALYSE).with_code(0);
    let content = folder.content();
    for name in [
        "findings.json",
        "findings.geojson",
        "report.html",
        "map.png",
        "cells.parquet",
        "legs.parquet",
        "fixes.parquet",
        "pockets.gpx",
    ] {
        let bytes = content
            .get(&format!("result/{name}"))
            .unwrap_or_else(|| panic!("no {name}"));
        assert!(bytes.len() > 100, "{name} holds {} bytes", bytes.len());
        assert!(
            ran.stdout.contains(&format!("result/{name}")),
            "{name} is not named\n{ran}"
        );
    }
    let others: Vec<&String> = content
        .keys()
        .filter(|name| name.contains(".part") || name.contains(".tmp"))
        .collect();
    assert!(others.is_empty(), "{others:?}");
}

#[test]
fn a_second_run_replaces_the_first_and_a_private_one_takes_the_telling_files_away() {
    let folder = with_log();
    folder.tussock(ANALYSE).with_code(0);
    let first = folder.content();
    folder.tussock(ANALYSE).with_code(0);
    assert_eq!(folder.content(), first, "same input, same bytes");
    folder.tussock(&format!("{ANALYSE} --private")).with_code(0);
    let content = folder.content();
    assert!(!content.contains_key("result/pockets.gpx") && !content.contains_key("result/findings.geojson"));
    assert!(content.contains_key("result/report.html"));
}

#[test]
fn files_under_other_names_stay() {
    let folder = with_log();
    folder.write("result/notes.txt", "ask about the gate");
    folder.tussock(ANALYSE).with_code(0);
    assert_eq!(folder.read("result/notes.txt"), b"ask about the gate");
}

#[test]
fn a_page_that_was_edited_by_hand_is_not_replaced() {
    let folder = with_log();
    folder.tussock(ANALYSE).with_code(0);
    let mut page = folder.read("result/report.html");
    page.extend_from_slice(b"<!-- call on Monday -->");
    folder.write("result/report.html", &page);
    let before = folder.content();
    let ran = folder.tussock(ANALYSE).with_code(2);
    assert_eq!(folder.content(), before);
    assert_ran!(ran, "out-edited");
}

#[test]
fn an_input_is_never_written_over() {
    let folder = with_log();
    folder.tussock(ANALYSE).with_code(0);
    let before = folder.content();
    let ran = folder
        .tussock("report result/findings.json --out result")
        .with_code(2);
    assert_eq!(folder.content(), before);
    assert_ran!(ran, "out-is-input");
    // The same file by another road.
    folder
        .tussock("report result/../result/./findings.json --out ./result")
        .with_code(2);
    assert_eq!(folder.content(), before);
}

#[test]
fn a_report_from_saved_findings_is_the_report_of_the_analysis() {
    let folder = with_log();
    folder.tussock(ANALYSE).with_code(0);
    folder
        .tussock("report result/findings.json --out again")
        .with_code(0);
    for name in [
        "findings.json",
        "findings.geojson",
        "report.html",
        "map.png",
        "cells.parquet",
        "pockets.gpx",
    ] {
        assert!(
            folder.read(&format!("result/{name}")) == folder.read(&format!("again/{name}")),
            "{name} differs"
        );
    }
}

#[test]
fn something_else_as_findings_is_refused() {
    let folder = with_log();
    folder.write("a.json", "{\"schema_version\": 99}");
    folder.write("b.json", "no findings");
    let before = folder.content();
    for (name, file) in [
        ("report-version", "a.json"),
        ("report-not-json", "b.json"),
        ("report-a-plan", "garden.geojson"),
    ] {
        let ran = folder.tussock(&format!("report {file} --out page")).with_code(2);
        assert_ran!(ran, name);
    }
    assert_eq!(folder.content(), before);
}

#[test]
fn json_on_stdout_stays_json_when_files_are_written_too() {
    let folder = with_log();
    let ran = folder.tussock(&format!("{ANALYSE} --format json")).with_code(0);
    serde_json::from_str::<serde_json::Value>(&ran.stdout).expect("stdout is JSON");
    assert!(ran.stderr.starts_with("written: result/"), "{ran}");
}

#[test]
fn inputs_are_not_touched() {
    let folder = with_log();
    let stamp = |name: &str| {
        std::fs::metadata(folder.path(name))
            .and_then(|found| found.modified())
            .expect("a time")
    };
    let before = (
        stamp("night.csv"),
        stamp("garden.geojson"),
        folder.read("night.csv"),
    );
    folder.tussock(ANALYSE).with_code(0);
    assert_eq!(
        (
            stamp("night.csv"),
            stamp("garden.geojson"),
            folder.read("night.csv")
        ),
        before
    );
}
