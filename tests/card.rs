//! A device card: the error of a receiver at rest, written from one log and used with others.

use crate::support::{Folder, assert_ran, at};

/// A receiver at rest for so many minutes whose positions wander through decimetres, smoothly.
fn standing(minutes: usize) -> String {
    let mut text = String::from("time,lat,lon\n");
    for second in 0..60 * minutes {
        let turn = |period_s: f64| (second as f64 * std::f64::consts::TAU / period_s).sin();
        let (lon, lat) = at((
            4.0 + 0.3 * turn(700.0) + 0.05 * turn(41.0),
            3.0 + 0.2 * turn(430.0) + 0.05 * turn(29.0),
        ));
        text.push_str(&format!(
            "2026-05-01T{:02}:{:02}:{:02}Z,{lat:.9},{lon:.9}\n",
            18 + second / 3600,
            second / 60 % 60,
            second % 60
        ));
    }
    text
}

fn source(folder: &Folder, settings: &str) -> (String, f64) {
    folder.write("garden.toml", settings);
    let ran = folder
        .tussock(
            "analyse night.gpx --plan garden.geojson --settings garden.toml --no-suggestions --format json",
        )
        .with_code(0);
    let found: serde_json::Value = serde_json::from_str(&ran.stdout).expect("stdout is JSON");
    let positions = &found["positions"];
    (
        positions["source"].as_str().expect("a word").to_owned(),
        positions["drift_m"].as_f64().unwrap_or(0.0),
    )
}

#[test]
fn a_card_is_written_of_a_standing_log_and_used_in_a_garden() {
    let folder = Folder::with_garden();
    folder.write("standing.csv", standing(60));
    folder
        .tussock("inspect standing.csv --write-error cards/receiver.csv")
        .with_code(0);
    let card = String::from_utf8(folder.read("cards/receiver.csv")).expect("text");
    assert!(card.starts_with("t_s,east_m,north_m\n0.000,"), "{card:.60}");
    assert_eq!(card.lines().count(), 3601);
    // What a user has is not written over.
    folder
        .tussock("inspect standing.csv --write-error cards/receiver.csv")
        .with_code(2);
    assert_eq!(
        String::from_utf8(folder.read("cards/receiver.csv")).expect("text"),
        card
    );

    folder
        .tussock("simulate --plan garden.geojson --hours 0.8 --seed 4 --error-from cards/receiver.csv --out night.gpx")
        .with_code(0);
    let width = "[machine]\ncut_width_m = 0.22\n";
    let (alone, _) = source(&folder, width);
    assert_ne!(alone, "device_card");
    let (by_card, drift_m) = source(
        &folder,
        &format!("{width}[positions]\ncard = \"cards/receiver.csv\"\n"),
    );
    assert_eq!(by_card, "device_card");
    assert!((0.1..0.5).contains(&drift_m), "{drift_m}");
    let (stated, drift_m) = source(&folder, &format!("{width}[positions]\ndrift_m = 0.25\n"));
    assert_eq!((stated.as_str(), drift_m), ("stated", 0.25));
}

#[test]
fn a_card_that_cannot_be_used_is_named_with_what_was_expected() {
    let folder = Folder::with_garden();
    folder.write("standing.csv", standing(5));
    folder.write("short.csv", "t_s,east_m,north_m\n0,0.1,0\n1,0.1,0.1\n2,0,0.1\n");
    folder.write("broken.csv", "t_s,east_m,north_m\n0,0,0\n1,far,0\n");
    let before = folder.content();
    assert_ran!(
        folder
            .tussock("inspect standing.csv --write-error card.csv")
            .with_code(2),
        "card-of-five-minutes"
    );
    for name in ["none", "short", "broken"] {
        folder.write("garden.toml", format!("[positions]\ncard = \"{name}.csv\"\n"));
        let ran = folder
            .tussock("inspect standing.csv --settings garden.toml")
            .with_code(2);
        assert_ran!(ran, format!("card-{name}"));
    }
    std::fs::remove_file(folder.path("garden.toml")).expect("it was written");
    assert_eq!(folder.content(), before);
}
