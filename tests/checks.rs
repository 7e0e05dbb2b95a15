//! Published values stay asserted: each id of the list stands in the name of a test that asserts something.
//!
//! Names read `nmea_18_and_19_...`, `nmea_10_to_14_...`, `geo_16_...`; rows with a letter stand in a table of that test.

use std::collections::BTreeSet;
use std::path::Path;

/// First and last number of each run of ids.
const WANTED: &[(&str, u32, u32)] = &[
    ("nmea", 1, 22),
    ("nmea", 30, 39),
    ("gpx", 1, 7),
    ("geo", 1, 6),
    ("geo", 9, 17),
    ("geo", 20, 21),
    ("err", 1, 8),
    ("err", 16, 21),
    ("err", 23, 23),
    ("alg", 15, 17),
    ("alg", 19, 19),
    ("alg", 22, 22),
];

/// Ids with a table of rows: the letters of its last row.
const ROWS: &[(&str, char)] = &[("geo_16", 'f'), ("geo_17", 'g')];

fn sources(folder: &Path, found: &mut Vec<String>) {
    for entry in std::fs::read_dir(folder).expect("the folder is there").flatten() {
        let path = entry.path();
        if path.is_dir() {
            sources(&path, found);
        } else if path.extension().is_some_and(|ending| ending == "rs") {
            found.push(std::fs::read_to_string(&path).expect("a source is text"));
        }
    }
}

/// Name and body of every test.
fn tests() -> Vec<(String, String)> {
    let root = Path::new(env!("CARGO_MANIFEST_DIR"));
    let mut files = Vec::new();
    sources(&root.join("crates"), &mut files);
    files
        .iter()
        .flat_map(|text| text.split("#[test]").skip(1))
        .filter_map(|text| {
            let (name, body) = text.split_once("fn ")?.1.split_once('(')?;
            Some((name.to_owned(), body.to_owned()))
        })
        .collect()
}

/// The ids in a name: `nmea_10_to_14_gga` holds 10 to 14, `geo_02_and_03_radii` holds 2 and 3.
fn ids(name: &str) -> Vec<(&str, u32)> {
    let mut words = name.split('_');
    let Some(kind) = words
        .next()
        .filter(|kind| ["nmea", "gpx", "geo", "err", "alg"].contains(kind))
    else {
        return Vec::new();
    };
    let mut out: Vec<(&str, u32)> = Vec::new();
    let mut is_run = false;
    for word in words {
        match (word, word.parse::<u32>()) {
            (_, Ok(number)) if word.len() == 2 => {
                let from = match out.last() {
                    Some((_, last)) if is_run => last + 1,
                    _ => number,
                };
                out.extend((from..=number).map(|number| (kind, number)));
                is_run = false;
            }
            ("to", _) => is_run = true,
            ("and", _) => {}
            _ => break,
        }
    }
    out
}

#[test]
fn names_tell_their_ids() {
    assert_eq!(
        ids("nmea_10_to_12_gga"),
        [("nmea", 10), ("nmea", 11), ("nmea", 12)]
    );
    assert_eq!(ids("geo_02_and_03_radii_of_20_m"), [("geo", 2), ("geo", 3)]);
    assert_eq!(ids("geometry_10"), []);
}

#[test]
fn every_published_value_is_asserted_under_its_id() {
    let tests = tests();
    let held: BTreeSet<(&str, u32)> = tests
        .iter()
        .filter(|(_, body)| {
            ["assert", "close(", "near("]
                .iter()
                .any(|word| body.contains(word))
        })
        .flat_map(|(name, _)| ids(name))
        .collect();
    let missing: Vec<String> = WANTED
        .iter()
        .flat_map(|&(kind, first, last)| (first..=last).map(move |number| (kind, number)))
        .filter(|id| !held.contains(id))
        .map(|(kind, number)| format!("{kind}_{number:02}"))
        .collect();
    assert!(missing.is_empty(), "no test asserts {missing:?}");
    for (id, last) in ROWS {
        let (_, body) = tests
            .iter()
            .find(|(name, _)| name.starts_with(id))
            .expect("held above");
        for row in 'a'..=*last {
            assert!(body.contains(&format!("\"{row}\",")), "{id} has no row {row}");
        }
    }
}
