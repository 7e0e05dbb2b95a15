//! A night whose logs lie in a bucket ends as one whose logs lie in a folder, also where one request in ten fails.

#[path = "../../crates/batch/tests/night_shift/load.rs"]
mod load;

use load::{content, log_of, wish};
use std::path::{Path, PathBuf};
use std::process::{Command, Output};
use tempfile::TempDir;
use tussock::simulate::gardens::load::{LoadGarden, load_garden};
use tussock_batch::table::{FAILURES, LOGS};
use tussock_bucket::{ACCESS_KEY, SECRET_KEY, Server};

const BUCKET: &str = "s3://lawns/spring";
const GARDENS: u32 = 6;
const NIGHTS: u32 = 2;
/// A garden whose second log is no log.
const BROKEN: usize = 4;

/// Gardens below `root/lawns/spring`, and below each its logs.
fn fill(root: &Path) {
    let (wish, place) = (wish(NIGHTS), root.join("lawns/spring"));
    let gardens: Vec<LoadGarden> = (0..GARDENS).map(|number| load_garden(number, &wish)).collect();
    for (number, garden) in gardens.iter().enumerate() {
        load::lay_out(&place, garden);
        for night in 0..NIGHTS {
            let log = if number == BROKEN && night == 1 {
                b"\x89PNG no log at all".to_vec()
            } else {
                log_of(garden, night, &wish)
            };
            // A second machine in every third garden, and a name that has to be escaped on its way.
            let name = if number % 3 == 0 {
                format!("left & right/{night} early.gpx")
            } else {
                format!("{night}.gpx")
            };
            load::put_log(&place, garden, &name, &log);
        }
    }
}

fn run(place: &str, store: &Path, server: Option<(&Server, &str)>) -> Output {
    let mut command = Command::new(env!("CARGO_BIN_EXE_night_shift"));
    command.args(["run", place]).arg(store).args(["2", "60", "1780000000"]);
    for (name, _) in std::env::vars().filter(|(name, _)| name.starts_with("AWS_")) {
        command.env_remove(name);
    }
    if let Some((server, secret_key)) = server {
        command
            .env("AWS_ENDPOINT", format!("http://{}", server.address))
            .env("AWS_ALLOW_HTTP", "true")
            .env("AWS_REGION", "us-east-1")
            .env("AWS_ACCESS_KEY_ID", ACCESS_KEY)
            .env("AWS_SECRET_ACCESS_KEY", secret_key);
    }
    command.output().unwrap()
}

fn stores_are_the_same(one_in: usize) {
    let root = TempDir::new().unwrap();
    fill(root.path());
    let folder: PathBuf = root.path().join("lawns/spring");
    let (near, far) = (root.path().join("near"), root.path().join("far"));
    // The broken log alone makes the run end with a word.
    assert_eq!(run(folder.to_str().unwrap(), &near, None).status.code(), Some(1));
    let server = Server::start(root.path(), one_in);
    assert_eq!(
        run(BUCKET, &far, Some((&server, SECRET_KEY))).status.code(),
        Some(1)
    );
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
    assert!(run(BUCKET, &far, Some((&server, SECRET_KEY))).status.success());
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
    let out = run(
        BUCKET,
        &root.path().join("store"),
        Some((&server, "not this one")),
    );
    assert!(!out.status.success());
    let words = String::from_utf8_lossy(&out.stderr);
    assert!(words.contains(BUCKET) || words.contains("listed"), "{words}");
    assert!(
        !words.contains("not this one"),
        "a key is no part of a message: {words}"
    );
}
