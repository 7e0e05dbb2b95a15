//! What is known of one place, asked of saved findings.

use crate::support::{Folder, run};

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
    assert_eq!(answer[0]["answer"]["code"], "place_never");
    assert_eq!(answer[0]["said"], "brown");

    let ran = folder
        .tussock("ask result/findings.json --at-m 9000,0")
        .with_code(0);
    assert!(ran.stdout.contains("from the lawn: in another garden"), "{ran}");
    let ran = folder
        .tussock("ask result/findings.json --at-m here")
        .with_code(2);
    assert!(ran.stderr.contains("expected metres east,north"), "{ran}");

    let waypoints = format!(
        "<gpx version=\"1.1\" creator=\"x\"><wpt lat=\"{}\" lon=\"{}\"><name>brown corner</name></wpt>\
         <wpt lat=\"{}\" lon=\"{}\"/></gpx>",
        pocket["lat"], pocket["lon"], findings["stuck_spots"][0]["lat"], findings["stuck_spots"][0]["lon"]
    );
    folder.write("asked.gpx", waypoints.as_bytes());
    let ran = folder
        .tussock("ask result/findings.json --waypoints asked.gpx")
        .with_code(0);
    let (first, second) = (
        ran.stdout.find("Missed: it lies"),
        ran.stdout.find("stuck spot S1"),
    );
    assert!(first.is_some() && first < second, "{ran}");
    assert!(ran.stdout.contains("brown corner"), "{ran}");
    folder.write("none.gpx", b"<gpx version=\"1.1\" creator=\"x\"></gpx>");
    let ran = folder
        .tussock("ask result/findings.json --waypoints none.gpx")
        .with_code(2);
    assert!(ran.stderr.contains("no waypoint with a position"), "{ran}");

    let mut command = folder.command(&format!(
        "analyse {demo}/before/2026-05-04.gpx.gz --plan {demo}/plan.geojson --settings {demo}/settings.toml --no-suggestions --out asked"
    ));
    command.args(["--complaint", &format!("{at}=brown behind the plum tree")]);
    let ran = run(&mut command, b"").with_code(0);
    assert!(ran.stdout.starts_with("Missed: it lies in pocket M1"), "{ran}");
    assert!(ran.stdout.contains("“brown behind the plum tree”"), "{ran}");
    let page = std::fs::read_to_string(folder.path("asked/report.html")).unwrap();
    assert!(page.contains("brown behind the plum tree"));
    let ran = folder
        .tussock(&format!(
            "compare --before asked/findings.json --after {demo}/after/2026-05-11.gpx.gz --plan {demo}/plan-after.geojson \
             --settings {demo}/settings.toml"
        ))
        .with_code(0);
    assert!(
        ran.stdout
            .starts_with("“brown behind the plum tree”: driven over 0 times in"),
        "{ran}"
    );
    assert!(ran.stdout.contains("M1: 0 % before, "), "{ran}");
    let ran = folder
        .tussock(&format!(
            "analyse {demo}/before/2026-05-04.gpx.gz --complaint here=there"
        ))
        .with_code(2);
    assert!(ran.stderr.contains("--complaint: \"here\""), "{ran}");
}
