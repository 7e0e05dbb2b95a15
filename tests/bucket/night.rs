//! A night whose logs lie in a bucket ends as one whose logs lie in a folder, also where one request in ten fails.

use std::collections::BTreeMap;
use std::path::{Path, PathBuf};
use std::process::{Command, ExitStatus};
use tempfile::TempDir;
use tussock::simulate::gardens::load::{LoadGarden, LoadWish, load_garden};
use tussock_batch::table::{FAILURES, LOGS, Row, TABLES};
use tussock_batch::{Columns, Store, night};
use tussock_bucket::{ACCESS_KEY, SECRET_KEY, Server};

/// 2026-05-01T20:00:00Z.
const START_UNIX_S: f64 = 1_777_665_600.0;
const GARDENS: u32 = 6;
const NIGHTS: u32 = 2;
/// A garden whose second log is no log.
const BROKEN: usize = 4;

/// Gardens below `root/lawns/spring`, and below each its logs.
fn fill(root: &Path) -> Vec<LoadGarden> {
    let wish = LoadWish {
        nights: NIGHTS,
        hours: 0.3,
        period_s: 2.0,
        area_m2: (120.0, 200.0),
        trouble_fraction: 0.0,
        fault_fraction: 0.0,
        start_unix_s: START_UNIX_S,
        seed: 5,
    };
    let gardens: Vec<LoadGarden> = (0..GARDENS).map(|number| load_garden(number, &wish)).collect();
    for (number, garden) in gardens.iter().enumerate() {
        let place = root.join("lawns/spring").join(&garden.name);
        std::fs::create_dir_all(place.join("logs")).unwrap();
        std::fs::write(
            place.join("plan.geojson"),
            tussock_ingest::write_plan(&garden.garden.plan),
        )
        .unwrap();
        std::fs::write(
            place.join("settings.toml"),
            format!("[machine]\ncut_width_m = {}\n", garden.cut_width_m),
        )
        .unwrap();
        for night in 0..NIGHTS {
            let log = garden.log(night, &wish).unwrap().unwrap().bytes;
            let log = if number == BROKEN && night == 1 {
                b"\x89PNG no log at all".to_vec()
            } else {
                log
            };
            // A second machine in every third garden, and a name that has to be escaped on its way.
            let name = if number % 3 == 0 {
                format!("left & right/{night} early.gpx")
            } else {
                format!("{night}.gpx")
            };
            let path = place.join("logs").join(name);
            std::fs::create_dir_all(path.parent().unwrap()).unwrap();
            std::fs::write(path, log).unwrap();
        }
    }
    gardens
}

fn run(place: &str, store: &Path, server: Option<&Server>) -> ExitStatus {
    let mut command = Command::new(env!("CARGO_BIN_EXE_night_shift"));
    command
        .args(["run", place])
        .arg(store)
        .args(["2", "60"])
        .stderr(std::process::Stdio::null());
    for (name, _) in std::env::vars().filter(|(name, _)| name.starts_with("AWS_")) {
        command.env_remove(name);
    }
    if let Some(server) = server {
        command
            .env("AWS_ENDPOINT", format!("http://{}", server.address))
            .env("AWS_ALLOW_HTTP", "true")
            .env("AWS_REGION", "us-east-1")
            .env("AWS_ACCESS_KEY_ID", ACCESS_KEY)
            .env("AWS_SECRET_ACCESS_KEY", SECRET_KEY);
    }
    command.status().unwrap()
}

/// Every row of the store, in order.
fn content(store: &Path) -> BTreeMap<(&'static str, night::Night), Vec<Row>> {
    let store = Store::open(store).unwrap();
    let mut out: BTreeMap<_, Vec<Row>> = BTreeMap::new();
    for table in TABLES {
        let ever = night::Night::MIN..=night::Night::MAX;
        for (night, row) in store.rows(table, Columns::All, ever, &|_| true).unwrap() {
            out.entry((table.name, night)).or_default().push(row);
        }
    }
    out.values_mut()
        .for_each(|rows| rows.sort_by(tussock_batch::table::order));
    out
}

fn stores_are_the_same(one_in: usize) {
    let root = TempDir::new().unwrap();
    fill(root.path());
    let folder: PathBuf = root.path().join("lawns/spring");
    let (near, far) = (root.path().join("near"), root.path().join("far"));
    // The broken log alone makes the run end with a word.
    assert_eq!(run(folder.to_str().unwrap(), &near, None).code(), Some(1));
    let server = Server::start(root.path(), one_in);
    assert_eq!(run("s3://lawns/spring", &far, Some(&server)).code(), Some(1));
    let (near, found) = (content(&near), content(&far));
    assert_eq!(near, found);
    let rows = |name: &str| {
        found
            .iter()
            .filter(|((table, _), _)| *table == name)
            .map(|(_, rows)| rows.len())
            .sum::<usize>()
    };
    assert_eq!((rows("nights"), rows("logs"), rows("failures")), (11, 11, 1));
    let machines = found
        .iter()
        .filter(|((table, _), _)| *table == "logs")
        .flat_map(|(_, rows)| rows);
    assert_eq!(
        machines
            .filter(|row| row[LOGS.at("machine")].text() == Some("left & right"))
            .count(),
        4
    );
    let failed = found
        .iter()
        .find(|((table, _), _)| *table == "failures")
        .unwrap()
        .1;
    assert_eq!(failed[0][FAILURES.at("reason")].text(), Some("damaged"));
    if one_in > 0 {
        let share = server.refused() as f64 / server.requests() as f64;
        assert!((0.05..0.2).contains(&share), "{share} of {}", server.requests());
    }
    // Once more: everything is known, so that the logs are listed and none is read.
    let before = server.requests();
    assert!(run("s3://lawns/spring", &far, Some(&server)).success());
    assert_eq!(content(&far), near);
    assert!(
        server.requests() - before < 2 * before / 3,
        "{before} and {}",
        server.requests() - before
    );
}

#[test]
fn a_night_out_of_a_bucket_is_that_out_of_a_folder() {
    stores_are_the_same(0);
}

#[test]
fn a_bucket_that_fails_one_request_in_ten_loses_nothing() {
    stores_are_the_same(10);
}

#[test]
fn a_bucket_that_lets_nobody_in_is_told() {
    let root = TempDir::new().unwrap();
    fill(root.path());
    let server = Server::start(root.path(), 0);
    let mut command = Command::new(env!("CARGO_BIN_EXE_night_shift"));
    let store = root.path().join("store");
    let out = command
        .args(["run", "s3://lawns/spring"])
        .arg(&store)
        .args(["2", "60"])
        .env("AWS_ENDPOINT", format!("http://{}", server.address))
        .env("AWS_ALLOW_HTTP", "true")
        .env("AWS_REGION", "us-east-1")
        .env("AWS_ACCESS_KEY_ID", ACCESS_KEY)
        .env("AWS_SECRET_ACCESS_KEY", "not this one")
        .output()
        .unwrap();
    assert!(!out.status.success());
    let words = String::from_utf8_lossy(&out.stderr);
    assert!(
        words.contains("s3://lawns/spring") || words.contains("listed"),
        "{words}"
    );
    assert!(
        !words.contains("not this one"),
        "a key is no part of a message: {words}"
    );
}
