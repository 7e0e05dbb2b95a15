//! `tussock simulate`: seeded, with the truth beside it.

use crate::support::{Folder, assert_ran, at};

const SIMULATE: &str = "simulate --plan garden.geojson --hours 1 --seed 4";

#[test]
fn the_same_seed_gives_the_same_bytes_and_another_one_others() {
    let folder = Folder::with_garden();
    for (name, seed) in [("a", 4), ("b", 4), ("c", 5)] {
        folder
            .tussock(&format!(
                "simulate --plan garden.geojson --hours 1 --seed {seed} --out {name}.gpx"
            ))
            .with_code(0);
    }
    assert!(folder.read("a.gpx") == folder.read("b.gpx"));
    assert!(folder.read("a.gpx.truth.json") == folder.read("b.gpx.truth.json"));
    assert!(folder.read("a.gpx") != folder.read("c.gpx"));
}

#[test]
fn a_stuck_spot_of_the_simulation_is_found_by_the_analysis() {
    let folder = Folder::with_garden();
    let (lon, lat) = at((8.0, 5.0));
    folder
        .tussock(&format!(
            "simulate --plan garden.geojson --hours 8 --seed 4 --stuck {lat:.7},{lon:.7} --out night.gpx"
        ))
        .with_code(0);
    let truth = folder.json("night.gpx.truth.json");
    assert!(
        truth["stuck_spots"][0]["episodes"].as_u64().expect("a number") >= 2,
        "{truth}"
    );
    let ran = folder
        .tussock("analyse night.gpx --plan garden.geojson --cut-width 22cm --format json")
        .with_code(0);
    let found: serde_json::Value = serde_json::from_str(&ran.stdout).expect("stdout is JSON");
    let spots = found["stuck_spots"].as_array().expect("spots");
    assert_eq!(spots.len(), 1, "{spots:?}");
    let metre = |spot: &serde_json::Value, name: &str| spot[name].as_f64().expect("a number");
    let true_place = &truth["stuck_spots"][0]["place"];
    let off_m = (metre(&spots[0], "east_m") - metre(true_place, "east_m"))
        .hypot(metre(&spots[0], "north_m") - metre(true_place, "north_m"));
    // Within a metre, as promised for a log of centimetres; the machine is caught anywhere within 0.6 m of the middle.
    assert!(off_m < 1.0, "found {off_m} m away");
}

#[test]
fn wishes_that_cannot_be_are_refused_before_anything_is_written() {
    let folder = Folder::with_garden();
    let before = folder.content();
    for (name, flags) in [
        ("period", "--period 1"),
        ("noise", "--noise loud"),
        ("stuck", "--stuck 40.0"),
        ("start", "--start tonight"),
        ("start-early", "--start 1981-01-01T01:00:00+02:00"),
        ("start-late", "--start 2080-01-01T00:00:00Z"),
        ("hours", "--hours 0"),
        ("curvature", "--curvature 0.02"),
        ("radius", "--turning-radius 9m"),
        ("radius-of-lanes", "--turning-radius 40cm --pattern lanes"),
        ("lane-pause", "--lane-pause 3s"),
    ] {
        let ran = folder
            .tussock(&format!("simulate --plan garden.geojson {flags} --out night.gpx"))
            .with_code(2);
        assert_ran!(ran, format!("simulate-{name}"));
    }
    assert_eq!(folder.content(), before);
}

/// Length driven, by the truth beside a log.
fn driven_m(folder: &Folder, name: &str, options: &str) -> f64 {
    let call =
        format!("simulate --plan garden.geojson --hours 2 --seed 4 --noise none {options} --out {name}.gpx");
    folder.tussock(&call).with_code(0);
    folder.json(&format!("{name}.gpx.truth.json"))["driven_m"]
        .as_f64()
        .expect("a number")
}

#[test]
fn every_option_of_motion_changes_the_drive_and_the_settings_know_the_radius() {
    let folder = Folder::with_garden();
    folder.write("turns.toml", "[machine]\nturning_radius_m = 0.4\n");
    let usual_m = driven_m(&folder, "usual", "");
    for (number, options) in [
        "--turning-radius 40cm",
        "--slowing 0.6m",
        "--curvature 0.02/m",
        "--heading-walk 3deg",
        "--slope-pull 0.1/m --downhill 180deg",
        "--slip 5",
        "--edge-round night",
    ]
    .into_iter()
    .enumerate()
    {
        let name = format!("roaming-{number}");
        assert_ne!(driven_m(&folder, &name, options), usual_m, "{options}");
    }
    let lanes_m = driven_m(&folder, "lanes", "--pattern lanes");
    for (number, options) in ["--headland-rounds 2", "--lane-pause 3s", "--edge-round outing"]
        .into_iter()
        .enumerate()
    {
        let options = format!("--pattern lanes {options}");
        assert_ne!(
            driven_m(&folder, &format!("lanes-{number}"), &options),
            lanes_m,
            "{options}"
        );
    }
    driven_m(&folder, "set", "--settings turns.toml");
    assert!(folder.read("set.gpx") == folder.read("roaming-0.gpx"));
    // A machine that drives lanes turns on the spot all the same.
    assert_eq!(
        driven_m(&folder, "set-lanes", "--pattern lanes --settings turns.toml"),
        lanes_m
    );
}

#[test]
fn a_log_that_exists_is_not_replaced() {
    let folder = Folder::with_garden();
    folder.write("night.gpx", "mine");
    folder.write("day.gpx.truth.json", "mine too");
    let before = folder.content();
    folder
        .tussock(&format!("{SIMULATE} --out night.gpx"))
        .with_code(2);
    folder.tussock(&format!("{SIMULATE} --out day.gpx")).with_code(2);
    assert_eq!(folder.content(), before);
}
