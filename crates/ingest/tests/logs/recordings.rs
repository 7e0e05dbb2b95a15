//! Every recording under `fixtures/recordings`: used and skipped by reason, compared with a table.
//!
//! `REGENERATE=1` writes the table anew.

use crate::{hold, workspace};
use std::fmt::Write;
use std::path::{Path, PathBuf};
use tussock_ingest::{ReadOptions, read_log};
use tussock_types::Notice;

/// What the reader must be told about a recording.
pub(crate) fn options(name: &str) -> ReadOptions {
    let mut options = ReadOptions::default();
    let columns = if name.contains("water_depth/") {
        Some("date=#1,time=#2,lat=#4,lon=#5,speed_mps=#6,sats=#7")
    } else {
        None
    };
    options.columns = columns.and_then(|columns| columns.parse().ok());
    // The day is not in these files; their folders and neighbours show it.
    let day = if name.contains("adsb-grid/north") {
        Some((2026, time::Month::February, 2))
    } else if name.ends_with("pygpsdata-mixed.log") {
        Some((2021, time::Month::March, 6))
    } else {
        None
    };
    options.date = day.and_then(|(year, month, day)| time::Date::from_calendar_date(year, month, day).ok());
    options
}

/// All recordings below a folder, by their relative name.
pub(crate) fn recordings(root: &Path) -> Vec<(String, PathBuf)> {
    let mut found = Vec::new();
    let mut folders = vec![root.to_path_buf()];
    while let Some(folder) = folders.pop() {
        let entries =
            std::fs::read_dir(&folder).unwrap_or_else(|error| panic!("{}: {error}", folder.display()));
        for entry in entries.flatten() {
            let path = entry.path();
            if path.is_dir() {
                folders.push(path);
                continue;
            }
            let name = path
                .strip_prefix(root)
                .unwrap_or(&path)
                .to_string_lossy()
                .into_owned();
            if !name.contains("LICENSE") && !name.ends_with(".md") {
                found.push((name, path));
            }
        }
    }
    found.sort();
    found
}

pub(crate) fn vendored() -> Vec<(String, PathBuf)> {
    recordings(&workspace().join("fixtures/recordings"))
}

fn row(name: &str, bytes: &[u8]) -> String {
    match read_log(name, bytes, &options(name)) {
        Ok(file) => {
            hold(&file);
            let facts = &file.facts;
            let skipped: Vec<String> = facts
                .skipped
                .iter()
                .map(|(reason, count)| format!("{} {count}", reason.words()))
                .collect();
            let code = |notice: &Notice| {
                serde_json::to_value(&notice.said).unwrap()["code"]
                    .as_str()
                    .unwrap()
                    .to_owned()
            };
            let notices: Vec<String> = facts.notices.iter().map(code).collect();
            format!(
                "| {name} | {} | {} | {} of {} | {} | {} |",
                facts.format.words(),
                facts.fixes,
                facts.bytes_used,
                facts.bytes,
                if skipped.is_empty() {
                    "nothing".into()
                } else {
                    skipped.join("; ")
                },
                notices.join(", ")
            )
        }
        Err(error) => format!(
            "| {name} | refused | 0 | | {} | |",
            error
                .to_string()
                .replace(&format!("{name}: "), "")
                .replace('|', "/")
        ),
    }
}

#[test]
fn every_recording_reads_as_the_table_says() {
    let mut table = String::from(
        "# What is read from each recording\n\nWritten by the test `every_recording_reads_as_the_table_says` \
         (`REGENERATE=1`). Counts are of sentences, points and rows.\n\n\
         | recording | format | fixes | bytes used | skipped | notices |\n|---|---|---|---|---|---|\n",
    );
    for (name, path) in vendored() {
        let bytes = std::fs::read(&path).unwrap();
        let _ = writeln!(table, "{}", row(&name, &bytes));
    }
    let path = workspace().join("fixtures/recordings/TABLE.md");
    if std::env::var_os("REGENERATE").is_some() {
        std::fs::write(&path, &table).unwrap();
    }
    let kept = std::fs::read_to_string(&path).unwrap_or_default();
    for (found, expected) in table.lines().zip(kept.lines()) {
        assert_eq!(found, expected);
    }
    assert_eq!(table.lines().count(), kept.lines().count());
}

/// Counts made independently of this reader: rows and sentences counted with grep and by hand.
#[test]
fn counts_of_recordings_agree_with_counts_made_by_hand() {
    for (name, fixes) in [
        ("coverage/plaza_lawnmower/Plaza1_GT.derived.csv", 9658),
        ("coverage/water_depth/261005.LOG", 724),
        ("coverage/water_depth/260939.LOG", 1226),
        ("static/adsb-grid/east_gnss.csv", 2500),
        ("nmea/rtklib-pos/demo5_b34f_f.pos", 4521),
        ("kml/gxtrack.kml", 7),
        ("mf-json/mftrajectory.json", 5),
        ("mf-json/movingfeatures.json", 5),
        ("mf-json/movingfeatures_collection.json", 37),
        ("gpsd/nmea-rtk.json", 122),
        ("nmea/aerorust/nmea1.log", 993),
        ("nmea/gpsd/beidou-bd.log", 5),
        ("nmea/gpsd/ericsson-gru04-02-70sec.log", 71),
        ("nmea/gpsd/et-332.log", 19),
        ("nmea/gpsd/firefly-II.log", 23),
        ("nmea/gpsd/furuno_gl_ga.log", 16),
        ("nmea/gpsd/geos-1m.log", 7),
        ("nmea/gpsd/iTrek.log", 35),
        ("nmea/gpsd/mtk-3301.log", 4),
        ("nmea/gpsd/nmea-fuzzy-cases.log", 14),
        ("nmea/gpsd/nmea-rtk.log", 122),
        ("nmea/gpsd/quectel-l76k-dual.log", 130),
        ("nmea/gpsd/skytraq-PX1172RH_DS.log", 9),
        // Both talkers of each epoch together.
        ("nmea/gpsd/telit-pls83-w.log", 10),
        ("nmea/gpsd/ublox-zed-f9p-nmea.log", 29),
        ("nmea/gpsd/unicore-um621.log", 16),
        ("nmea/leaflet-nmealayer/test.nmea", 360),
        ("nmea/misc/TrimbleR2SampleData.txt", 34),
        ("nmea/pynmeagps/pygpsdata-mixed.log", 2),
        ("nmea/pynmeagps/pygpsdata-um981.log", 2),
        ("nmea/pynmeagps/pygpsdata-nmeabadck.log", 1),
        ("gpx/georust/garmin-activity.gpx", 988),
        ("gpx/georust/with_accuracy.gpx", 3),
        ("gpx/gps-accuracy/routeA/Garmin-Edge-605.gpx", 6398),
        ("gpx/gps-accuracy/routeA/Garmin-Etrex-30x.gpx", 1043),
        ("gpx/gps-accuracy/routeA/Lezyne.gpx", 2577),
        ("gpx/gps-accuracy/routeA/MotoG3.gpx", 2363),
        ("gpx/gps-accuracy/routeA/adafruit.gpx", 1267),
        ("gpx/gps-accuracy/routeA/openlog.gpx", 641),
        ("gpx/gps-accuracy/routeA/xiaomi.gpx", 4062),
        ("gpx/gps-accuracy/whitchurch-routeB.gpx", 351),
        ("gpx/gpxpy/around-visnjan-with-car.gpx", 104),
        ("gpx/gpxpy/cerknicko-jezero.gpx", 296),
        ("gpx/gpxpy/cerknicko-without-times.gpx", 5),
        ("gpx/phpgpx/timezero.gpx", 6),
    ] {
        let bytes = std::fs::read(workspace().join("fixtures/recordings").join(name)).unwrap();
        let file = read_log(name, &bytes[..], &options(name)).unwrap_or_else(|error| panic!("{error}"));
        assert_eq!(file.facts.fixes, fixes, "{name}");
    }
}
