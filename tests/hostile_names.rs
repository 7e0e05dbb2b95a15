//! Names from logs, plans, settings and the file system that try to be more than names.

use crate::support::{Folder, at, run};
use std::process::Command;

/// Script tags, an attribute break, a template, a terminal escape, a turn of the reading direction, an XML end.
const HOSTILE: &str =
    "</script><script>alert(1)</script>\" onload='x' {{ 7*7 }} \u{1b}[2J\u{202e}gpj.]]><!--";

/// As XML text: controls are no XML, so they are left out there.
fn xml(text: &str) -> String {
    text.replace('\u{1b}', "")
        .replace('&', "&amp;")
        .replace('<', "&lt;")
        .replace('>', "&gt;")
}

fn gpx() -> String {
    let mut fixes = String::new();
    for second in 0..1_800u32 {
        // To and fro over the lawn at 0.4 m/s.
        let lane = second / 45;
        let along_m = f64::from(second % 45) * 0.4 + 0.5;
        let east_m = if lane % 2 == 0 { along_m } else { 19.0 - along_m };
        let (lon, lat) = at((east_m, 0.5 + f64::from(lane) * 0.25));
        fixes.push_str(&format!(
            "<trkpt lat=\"{lat:.8}\" lon=\"{lon:.8}\"><time>2026-05-01T20:{:02}:{:02}Z</time></trkpt>",
            second / 60,
            second % 60
        ));
    }
    let name = xml(HOSTILE) + &"A".repeat(1 << 20);
    format!(
        "<gpx version=\"1.1\" creator=\"{}\" xmlns=\"http://www.topografix.com/GPX/1/1\"><trk><name>{name}</name><trkseg>{fixes}</trkseg></trk></gpx>",
        xml(HOSTILE).replace('"', "&quot;")
    )
}

/// What acts where it stands: marks in pages and XML, escapes and turns of direction everywhere.
fn assert_harmless(name: &str, text: &str) {
    // A quote ends nothing but an attribute, and GPX has none from outside.
    let marks: &[&str] = match name.rsplit('.').next() {
        Some("html") => &["<script>alert", "\" onload='x'"],
        Some("gpx") => &["<script>alert", "]]>"],
        _ => &[],
    };
    // Saved findings keep text as it came; JSON escapes its controls.
    let turns: &[&str] = if name == "findings.json" {
        &[]
    } else {
        &["\u{202e}", "\\u001b", "\\u202e"]
    };
    for needle in marks.iter().chain(turns).chain(&["\u{1b}", "\u{7}"]) {
        assert!(!text.contains(needle), "{name} holds {needle:?}");
    }
}

#[test]
fn hostile_names_stay_text_in_every_output_and_on_the_terminal() {
    let folder = Folder::with_garden();
    let plan = String::from_utf8(folder.read("garden.geojson")).expect("text");
    let mut plan: serde_json::Value = serde_json::from_str(&plan).expect("JSON");
    for feature in plan["features"].as_array_mut().expect("features") {
        feature["properties"]["name"] = format!("{HOSTILE}{}", "B".repeat(1 << 16)).into();
    }
    folder.write("plan.geojson", plan.to_string());
    let shown = folder.tussock("plan check plan.geojson").with_code(0);
    assert_harmless("the terminal", &shown.stdout);
    let shown = folder
        .tussock("plan check plan.geojson --format json")
        .with_code(0);
    let turned = |text: &str| text.contains(['\u{1b}', '\u{202e}', '\u{7}', '\u{9b}', '\u{61c}']);
    assert!(!turned(&shown.stdout));
    let names: serde_json::Value = serde_json::from_str(&shown.stdout).expect("JSON");
    assert_eq!(
        names["features"][0]["name"],
        plan["features"][0]["properties"]["name"]
    );
    // A role that is none is told with its marks taken out.
    let strange = plan
        .to_string()
        .replacen("\"lawn\"", "\"la\u{61c}\u{9b}wn\u{202e}\"", 1);
    folder.write("strange.geojson", strange);
    let refused = folder.tussock("plan check strange.geojson").with_code(2);
    assert!(!turned(&refused.stderr) && !turned(&refused.stdout), "{refused}");
    // TOML knows the escapes of JSON.
    let settings = |text: &str| {
        let text = serde_json::to_string(text).expect("JSON");
        format!("[machine]\ncut_width_m = 0.22\n[garden]\nname = {text}\nremarks = {text}\n")
    };
    folder.write(
        "long.toml",
        settings(&format!("{HOSTILE}{}", "C".repeat(1 << 20))),
    );
    folder.write("garden.toml", settings(HOSTILE));
    let log = "night <script>alert(1)<\u{2215}script>\u{1b}[2J\u{202e}.gpx";
    folder.write(log, gpx());
    let mut command: Command =
        folder.command("analyse --plan plan.geojson --settings long.toml --out result");
    command.arg(log);
    let refused = run(&mut command, b"").with_code(2);
    assert_harmless("the terminal", &refused.stderr);
    assert!(refused.stderr.len() < 2_000, "{} bytes", refused.stderr.len());
    let mut command: Command =
        folder.command("analyse --plan plan.geojson --settings garden.toml --out result --map");
    command.arg(log);
    let ran = run(&mut command, b"").with_code(0);
    assert_harmless("the terminal", &ran.stdout);
    assert_harmless("the terminal", &ran.stderr);
    let page = String::from_utf8(folder.read("result/report.html")).expect("text");
    assert_eq!(page.matches("<script>").count(), 1, "ours alone");
    assert!(page.len() < 1_000_000, "{} bytes", page.len());
    for name in ["report.html", "findings.geojson", "pockets.gpx", "findings.json"] {
        let text = String::from_utf8(folder.read(&format!("result/{name}"))).expect("text");
        assert_harmless(name, &text);
    }
    for name in ["map.png", "cells.parquet", "legs.parquet", "fixes.parquet"] {
        assert!(folder.read(&format!("result/{name}")).len() > 100);
    }
}
