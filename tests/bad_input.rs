//! Bad input: a clear error that names value, expectation and place; exit 2; nothing written.

use crate::support::{Folder, LAWN, assert_ran, at, collection, feature, garden, lanes_csv, ring};

/// Runs, insists on exit 2, silence on stdout and an untouched folder, and takes the snapshot.
#[track_caller]
fn refused(folder: &Folder, name: &str, line: &str) {
    let before = folder.content();
    let ran = folder.tussock(line).with_code(2);
    assert!(ran.stdout.is_empty(), "{ran}");
    assert!(ran.stderr.starts_with("error: "), "{ran}");
    assert_eq!(folder.content(), before, "something was written\n{ran}");
    assert_ran!(ran, format!("bad-{name}"));
}

fn with_log() -> Folder {
    let folder = Folder::with_garden();
    folder.write("night.csv", lanes_csv(1800));
    folder
}

/// Everything in the invented garden, moved and mended: the ground for one fault.
fn with_lawn(lawn: &[(f64, f64)]) -> Folder {
    let folder = with_log();
    folder.write("garden.geojson", garden(lawn));
    folder
}

const ANALYSE: &str = "analyse night.csv --plan garden.geojson --cut-width 22cm --out result";

#[test]
fn the_good_twin_of_all_these_is_accepted() {
    with_log().tussock(ANALYSE).with_code(0);
}

#[test]
fn an_empty_file() {
    let folder = with_log();
    folder.write("empty.gpx", "");
    refused(
        &folder,
        "empty-file",
        "analyse empty.gpx --cut-width 22cm --out result",
    );
    refused(&folder, "empty-file-inspect", "inspect empty.gpx");
}

#[test]
fn a_directory_as_log_or_plan() {
    let folder = with_log();
    folder.write("logs/night.csv", lanes_csv(10));
    refused(&folder, "directory", "analyse logs --cut-width 22cm --out result");
    refused(
        &folder,
        "directory-as-plan",
        "analyse night.csv --plan logs --cut-width 22cm",
    );
}

#[test]
fn a_file_that_does_not_exist() {
    let folder = with_log();
    refused(
        &folder,
        "missing-log",
        "analyse nigth.csv --cut-width 22cm --out result",
    );
    refused(
        &folder,
        "missing-plan",
        "analyse night.csv --plan gone.geojson --cut-width 22cm",
    );
}

#[test]
fn not_a_log() {
    let folder = with_log();
    folder.write(
        "picture.gpx",
        b"\x89PNG\r\n\x1a\n\0\0\0\rIHDR\0\0\0\x01\0\0\0\x01",
    );
    folder.write("letter.txt", "Dear customer,\nyour lawn is fine.\n");
    refused(
        &folder,
        "picture",
        "analyse picture.gpx --cut-width 22cm --out result",
    );
    refused(&folder, "letter", "inspect letter.txt");
}

#[test]
fn a_log_without_times() {
    let folder = with_log();
    folder.write(
        "route.gpx",
        "<?xml version=\"1.0\"?>\n<gpx version=\"1.1\" xmlns=\"http://www.topografix.com/GPX/1/1\"><trk><trkseg>\n\
         <trkpt lat=\"40.0001\" lon=\"-30.0001\"/>\n<trkpt lat=\"40.0002\" lon=\"-30.0001\"/>\n</trkseg></trk></gpx>\n",
    );
    refused(
        &folder,
        "no-times",
        "analyse route.gpx --cut-width 22cm --out result",
    );
}

#[test]
fn times_of_day_without_a_date() {
    let folder = with_log();
    folder.write(
        "gga.nmea",
        "$GPGGA,200000.00,4000.0060,N,03000.0060,W,4,20,0.7,12.0,M,0.0,M,,\n".repeat(3),
    );
    refused(&folder, "no-date", "inspect gga.nmea");
}

#[test]
fn strict_stops_at_the_first_fault() {
    let folder = with_log();
    folder.write(
        "night.csv",
        lanes_csv(100).replace("2026-05-01T20:00:50Z", "a quarter past"),
    );
    folder.tussock("inspect night.csv").with_code(0);
    refused(&folder, "strict", "inspect night.csv --strict");
}

#[test]
fn a_plan_that_is_not_geojson() {
    let folder = with_log();
    folder.write("garden.geojson", "lawn: yes\n");
    refused(&folder, "plan-not-json", ANALYSE);
    folder.write("garden.geojson", "{\"lawn\": [1, 2]}");
    refused(&folder, "plan-not-geojson", ANALYSE);
    folder.write("garden.geojson", collection(&[]));
    refused(&folder, "plan-empty", ANALYSE);
}

#[test]
fn a_lawn_that_crosses_itself() {
    let folder = with_lawn(&[(0.0, 0.0), (24.0, 16.0), (24.0, 0.0), (0.0, 16.0), (0.0, 0.0)]);
    refused(&folder, "lawn-crosses-itself", ANALYSE);
}

#[test]
fn a_lawn_that_is_not_closed() {
    let folder = with_lawn(&LAWN[..4]);
    refused(&folder, "lawn-not-closed", ANALYSE);
}

#[test]
fn a_zone_outside_the_lawn() {
    let folder = with_log();
    let zone = [(40.0, 2.0), (44.0, 2.0), (44.0, 6.0), (40.0, 6.0), (40.0, 2.0)];
    folder.write(
        "garden.geojson",
        collection(&[
            feature("lawn", "front", "Polygon", &format!("[{}]", ring(LAWN))),
            feature("exclusion", "rose bed", "Polygon", &format!("[{}]", ring(&zone))),
        ]),
    );
    refused(&folder, "zone-outside", ANALYSE);
}

#[test]
fn every_fault_of_a_plan_at_once() {
    let folder = with_log();
    let twisted = [(0.0, 0.0), (24.0, 16.0), (24.0, 0.0), (0.0, 16.0), (0.0, 0.0)];
    let (lon, lat) = at((0.5, 8.0));
    folder.write(
        "garden.geojson",
        collection(&[
            feature("lawn", "front", "Polygon", &format!("[{}]", ring(&twisted))),
            feature("exclusoin", "bed", "Polygon", &format!("[{}]", ring(&LAWN[..4]))),
            feature("lawn", "back", "Polygon", &format!("[{}]", ring(&LAWN[..4]))),
            feature("station", "station", "Point", &format!("[{lat:.8},{lon:.8}]")),
        ]),
    );
    refused(&folder, "plan-many-faults", ANALYSE);
}

#[test]
fn latitude_and_longitude_exchanged() {
    let folder = with_log();
    let swapped: Vec<String> = LAWN
        .iter()
        .map(|corner| {
            let (lon, lat) = at(*corner);
            format!("[{lat:.8},{lon:.8}]")
        })
        .collect();
    folder.write(
        "garden.geojson",
        collection(&[feature(
            "lawn",
            "front",
            "Polygon",
            &format!("[[{}]]", swapped.join(",")),
        )]),
    );
    refused(&folder, "swapped", ANALYSE);
}

#[test]
fn a_plan_far_from_the_log() {
    let folder = with_lawn(
        &LAWN
            .iter()
            .map(|(east_m, north_m)| (east_m + 3000.0, north_m + 4000.0))
            .collect::<Vec<_>>(),
    );
    let plan = String::from_utf8(folder.read("garden.geojson")).expect("text");
    // The bed and the station move along.
    let lawn_only = collection(&[plan
        .lines()
        .nth(1)
        .expect("the lawn")
        .trim_end_matches(',')
        .to_owned()]);
    folder.write("garden.geojson", lawn_only);
    refused(&folder, "far-apart", ANALYSE);
}

#[test]
fn widths_that_no_machine_has() {
    let folder = with_log();
    for (name, width) in [
        ("zero", "0cm"),
        ("forty", "40m"),
        ("negative", "-0.22m"),
        ("bare", "22"),
        ("yards", "9yd"),
        ("word", "wide"),
    ] {
        refused(
            &folder,
            &format!("width-{name}"),
            &format!("analyse night.csv --cut-width={width} --out result"),
        );
    }
    folder.write("garden.toml", "[machine]\ncut_width_m = 40.0\n");
    refused(
        &folder,
        "width-in-settings",
        "analyse night.csv --settings garden.toml --out result",
    );
}

#[test]
fn settings_that_are_not_known() {
    let folder = with_log();
    folder.write(
        "garden.toml",
        "[machine]\ncut_widht_m = 0.22\n\n[promise]\nvisited_fraction = 95\n",
    );
    refused(
        &folder,
        "settings-unknown-key",
        "analyse night.csv --settings garden.toml --out result",
    );
}

#[test]
fn flags_with_values_that_cannot_be() {
    let folder = with_log();
    for (name, flags) in [
        ("percent", "--cut-width 22cm --fail-under 950"),
        ("percent-without-width", "--fail-under 95"),
        ("date", "--date 1.5.2026"),
        ("columns", "--columns when=1,where=2"),
        ("threads", "--threads 0"),
    ] {
        refused(
            &folder,
            &format!("flag-{name}"),
            &format!("analyse night.csv {flags} --out result"),
        );
    }
}

#[test]
fn stdin_twice() {
    refused(&with_log(), "stdin-twice", "inspect - -");
}

#[test]
fn an_output_folder_that_cannot_be_written() {
    let folder = with_log();
    folder.write("file", "not a folder");
    refused(
        &folder,
        "out-below-a-file",
        "analyse night.csv --cut-width 22cm --out file/result",
    );
    refused(
        &folder,
        "out-is-a-file",
        "analyse night.csv --cut-width 22cm --out file",
    );
    #[cfg(target_os = "linux")]
    refused(
        &folder,
        "out-below-proc",
        "analyse night.csv --cut-width 22cm --out /proc/result",
    );
    refused(
        &folder,
        "out-is-stdout",
        "analyse night.csv --cut-width 22cm --out -",
    );
}

#[test]
fn arguments_and_outputs_are_checked_before_inputs() {
    // The log is missing too, yet the folder is told: it was looked at first.
    let folder = with_log();
    folder.write("file", "not a folder");
    refused(
        &folder,
        "out-before-log",
        "analyse gone.csv --cut-width 22cm --out file/result",
    );
}

#[test]
fn somebody_elses_files_in_the_output_folder() {
    let folder = with_log();
    folder.write("result/report.html", "<p>my own page</p>");
    refused(&folder, "out-foreign", ANALYSE);
    let folder = with_log();
    folder.write(
        "findings.json",
        "{\"schema_version\": 1, \"tool_version\": \"0.1.0\", \"mine\": true}",
    );
    refused(
        &folder,
        "out-is-the-inputs-folder",
        "analyse night.csv --cut-width 22cm --out .",
    );
}

/// Words of an error are part of what the command says, so that each variant is displayed in a table of the crate that has it.
#[test]
fn every_public_error_has_a_table_that_displays_each_of_its_variants() {
    let crates = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("crates");
    let mut files = Vec::new();
    let mut folders = vec![crates];
    while let Some(folder) = folders.pop() {
        for entry in std::fs::read_dir(&folder).expect("it is there").flatten() {
            match entry.path() {
                path if path.is_dir() => folders.push(path),
                path if path.extension().is_some_and(|kind| kind == "rs") => {
                    files.push(std::fs::read_to_string(&path).expect("it is there"));
                }
                _ => {}
            }
        }
    }
    let tables: Vec<&String> = files
        .iter()
        .filter(|text| text.contains("says_what_it_means() {"))
        .collect();
    let mut checked = 0;
    for text in &files {
        for part in text.split("\npub enum ").skip(1) {
            let (name, rest) = part.split_once(" {").expect("a body");
            if !name.ends_with("Error") {
                continue;
            }
            let body = rest.split("\n}").next().expect("its end");
            let variants = body
                .lines()
                .filter_map(|line| line.strip_prefix("    "))
                .filter_map(|line| {
                    let end = line
                        .find(|letter: char| !letter.is_alphanumeric())
                        .unwrap_or(line.len());
                    line.starts_with(char::is_uppercase).then(|| &line[..end])
                });
            for variant in variants {
                let wanted = format!("{name}::{variant}");
                let shown = tables.iter().any(|table| table.matches(&wanted).count() >= 2);
                assert!(shown, "{wanted} is displayed in no table");
                checked += 1;
            }
        }
    }
    assert!(checked > 60, "only {checked} variants were found");
}
