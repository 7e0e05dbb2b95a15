//! The demo garden, before and after the change: what the answer says, and that it is true.

use crate::support::{assert_ran, run, tussock};
use serde_json::Value;
use std::path::{Path, PathBuf};
use std::process::Command;

/// `tussock analyse` on one half of the demo.
pub(crate) fn analyse(half: &str, plan: &str) -> Command {
    let demo = Path::new(env!("CARGO_MANIFEST_DIR")).join("fixtures/demo");
    let mut logs: Vec<PathBuf> = std::fs::read_dir(demo.join(half))
        .expect("the logs are there")
        .map(|entry| entry.expect("a log").path())
        .collect();
    logs.sort();
    let mut command = tussock();
    command
        .arg("analyse")
        .args(logs)
        .arg("--plan")
        .arg(demo.join(plan))
        .arg("--settings")
        .arg(demo.join("settings.toml"));
    command
}

fn findings(half: &str, plan: &str) -> Value {
    let ran = run(analyse(half, plan).args(["--format", "json"]), b"").with_code(0);
    serde_json::from_str(&ran.stdout).expect("stdout is JSON")
}

#[test]
fn what_it_says_before_the_change() {
    assert_ran!(
        run(&mut analyse("before", "plan.geojson"), b"").with_code(0),
        "demo-before"
    );
}

#[test]
fn what_it_says_after_the_change() {
    assert_ran!(
        run(&mut analyse("after", "plan-after.geojson"), b"").with_code(0),
        "demo-after"
    );
}

#[test]
fn the_card_of_the_demo_holds() {
    let before = findings("before", "plan.geojson");
    let after = findings("after", "plan-after.geojson");
    let visited = |findings: &Value| {
        findings["coverage"]["visited_fraction"]["estimate"]
            .as_f64()
            .expect("a number")
    };
    // The card's truth was counted on the exact paths: 88.04 and 96.96 %. The promise for logs of centimetres is 0.2 points.
    assert!((visited(&before) - 0.8804).abs() < 0.002, "{}", visited(&before));
    assert!((visited(&after) - 0.9696).abs() < 0.002, "{}", visited(&after));
    // The yard behind the shed: 37.5 m2, 5.8 m wide.
    let yard = &before["missed_pockets"][0];
    assert!(
        (yard["area_m2"].as_f64().expect("a number") - 37.5).abs() < 0.4,
        "{yard}"
    );
    assert!(
        (yard["widest_m"].as_f64().expect("a number") - 5.8).abs() < 0.1,
        "{yard}"
    );
    assert_eq!(after["missed_pockets"], Value::Array(Vec::new()));
    // The roots: seven times before, never after.
    assert_eq!(before["stuck_spots"].as_array().map(Vec::len), Some(1));
    assert_eq!(before["stuck_spots"][0]["episodes"], 7);
    assert_eq!(after["stuck_spots"], Value::Array(Vec::new()));
}

/// `tussock compare` of both halves: logs, or what an analysis of the first half saved.
fn compare(before: &[PathBuf]) -> Command {
    let demo = Path::new(env!("CARGO_MANIFEST_DIR")).join("fixtures/demo");
    let mut logs: Vec<PathBuf> = std::fs::read_dir(demo.join("after"))
        .expect("the logs are there")
        .map(|entry| entry.expect("a log").path())
        .collect();
    logs.sort();
    let mut command = tussock();
    command
        .arg("compare")
        .arg("--before")
        .args(before)
        .arg("--after")
        .args(logs)
        .arg("--plan")
        .arg(demo.join("plan.geojson"))
        .arg("--after-plan")
        .arg(demo.join("plan-after.geojson"))
        .arg("--settings")
        .arg(demo.join("settings.toml"));
    command
}

#[test]
fn the_whole_story_before_cause_suggestion_predicted_after_measured() {
    let folder = tempfile::tempdir().expect("a folder");
    let saved = folder.path().join("before");
    run(analyse("before", "plan.geojson").arg("--out").arg(&saved), b"").with_code(0);
    let bytes = std::fs::read(saved.join("findings.json")).expect("findings");
    let before: Value = serde_json::from_slice(&bytes).expect("JSON");
    // The cause, and the change that mends it.
    let yard = &before["missed_pockets"][0];
    assert_eq!(yard["causes"][0]["cause"], "walled_off", "{yard}");
    let best = &before["suggestions"][0];
    assert_eq!(best["kind"], "zone_shrink", "{best}");
    assert_eq!(best["pocket_ids"][0], yard["id"]);
    let out = folder.path().join("proof");
    let told = run(
        compare(&[saved.join("findings.json")])
            .args(["--format", "json", "--out"])
            .arg(&out),
        b"",
    )
    .with_code(0);
    let told: Value = serde_json::from_str(&told.stdout).expect("stdout is JSON");
    assert_eq!(told["pockets"][0]["change"], "mended", "{}", told["pockets"][0]);
    // The prediction stands beside the measurement. In the demo the zone was laid where it belongs, which is not quite what was
    // suggested, so that it is not called built; two nights on either side are too few to tell the lawn's gain from luck.
    let held = &told["predictions"][0];
    assert_eq!(held["built"], "nothing", "{held}");
    let off = held["predicted_fraction"]["estimate"].as_f64().expect("a number")
        - held["measured_fraction"].as_f64().expect("a number");
    assert!(off.abs() < 0.15, "{held}");
    assert!(out.join("comparison.html").is_file() && out.join("comparison.json").is_file());
    // And it is the first visit in the garden's history.
    let history = folder.path().join("history");
    let told = run(
        tussock()
            .arg("visits")
            .arg(folder.path())
            .arg("--out")
            .arg(&history),
        b"",
    )
    .with_code(0);
    assert!(told.stdout.contains("M1 0.0 % → 98.0 %"), "{told}");
    assert!(history.join("visits.html").is_file());
    let empty = run(tussock().arg("visits").arg(&history), b"").with_code(2);
    assert!(empty.stderr.contains("no comparison.json in it"), "{empty}");
}

#[test]
fn what_compare_says_of_the_demo() {
    let demo = Path::new(env!("CARGO_MANIFEST_DIR")).join("fixtures/demo/before");
    let mut logs: Vec<PathBuf> = std::fs::read_dir(demo)
        .expect("the logs are there")
        .map(|entry| entry.expect("a log").path())
        .collect();
    logs.sort();
    assert_ran!(run(&mut compare(&logs), b"").with_code(0), "demo-compared");
    // With the logs before, each half hour speaks, and the prediction is for what was built.
    let told = run(compare(&logs).args(["--format", "json"]), b"").with_code(0);
    let told: Value = serde_json::from_str(&told.stdout).expect("stdout is JSON");
    let pocket = &told["pockets"][0];
    assert_eq!(pocket["decided_after_nights"], 1, "{pocket}");
    let held = &told["predictions"][0];
    assert_eq!(
        (&held["built"], &held["holds"]),
        (&Value::from("otherwise"), &Value::from(true)),
        "{held}"
    );
}
