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
    ] {
        let ran = folder
            .tussock(&format!("simulate --plan garden.geojson {flags} --out night.gpx"))
            .with_code(2);
        assert_ran!(ran, format!("simulate-{name}"));
    }
    assert_eq!(folder.content(), before);
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
