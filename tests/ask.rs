//! What is known of one place, asked of saved findings.

use crate::support::Folder;

#[test]
fn a_place_in_a_pocket_is_missed_and_says_why_and_one_on_the_lawn_is_driven_over() {
    let folder = Folder::new();
    let demo = concat!(env!("CARGO_MANIFEST_DIR"), "/fixtures/demo");
    folder
        .tussock(&format!(
            "analyse {demo}/before/2026-05-04.gpx.gz --plan {demo}/plan.geojson --settings {demo}/settings.toml --no-suggestions --out result"
        ))
        .with_code(0);
    let text = std::fs::read_to_string(folder.path("result/findings.json")).unwrap();
    let findings: serde_json::Value = serde_json::from_str(&text).unwrap();
    let pocket = &findings["missed_pockets"][0];
    let at = format!("{},{}", pocket["lat"], pocket["lon"]);
    let ran = folder
        .tussock(&format!("ask result/findings.json --at {at}"))
        .with_code(0);
    assert!(ran.stdout.starts_with("Missed: it lies in pocket M1"), "{ran}");
    assert!(ran.stdout.contains("cannot be reached"), "{ran}");

    let ran = folder
        .tussock(&format!(
            "ask result/findings.json --at {at} --said brown --format json"
        ))
        .with_code(0);
    let answer: serde_json::Value = serde_json::from_str(&ran.stdout).unwrap();
    assert_eq!(answer["answer"]["code"], "place_never");
    assert_eq!(answer["said"], "brown");

    let ran = folder
        .tussock("ask result/findings.json --at-m 9000,0")
        .with_code(2);
    assert!(ran.stderr.contains("from the lawn"), "{ran}");
    let ran = folder
        .tussock("ask result/findings.json --at-m here")
        .with_code(2);
    assert!(ran.stderr.contains("expected metres east,north"), "{ran}");
}
