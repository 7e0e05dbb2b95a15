//! What does somebody see who reads the tables twenty times a second while runs write, and are killed?

use super::{House, log_of, wish};
use std::collections::BTreeSet;
use std::path::Path;
use std::sync::atomic::{AtomicBool, Ordering};
use std::time::{Duration, Instant};
use tussock::simulate::gardens::load::{LoadGarden, load_garden};
use tussock_batch::table::{self, Keep, NIGHTS};

const EVERY: Duration = Duration::from_millis(50);
const NIGHT_COUNT: u32 = 3;
const KILLS: u32 = 3;

/// Garden and night of every row below the target of `snapshot`, as found by a program that knows nothing of the list: by
/// the names of folders and files.
fn listed(store: &Path) -> Vec<(String, String)> {
    let Ok(whole) = store.join("snapshot").canonicalize() else {
        return Vec::new();
    };
    let mut out = Vec::new();
    let Ok(nights) = std::fs::read_dir(whole.join("nights")) else {
        return out;
    };
    for night in nights {
        let night = night.unwrap();
        for file in std::fs::read_dir(night.path()).unwrap() {
            let bytes = bytes::Bytes::from(std::fs::read(file.unwrap().path()).unwrap());
            let rows = table::read(&NIGHTS, "nights", bytes, &[], Keep::All).unwrap();
            let name = night.file_name().into_string().unwrap();
            out.extend(
                rows.into_iter()
                    .map(|row| (row[0].text().unwrap().to_owned(), name.clone())),
            );
        }
    }
    out
}

#[cfg(unix)]
#[test]
fn a_reader_at_20_hz_sees_every_row_once_while_runs_write_and_are_killed() {
    let wish = wish(NIGHT_COUNT);
    let gardens: Vec<LoadGarden> = (0..4).map(|number| load_garden(number, &wish)).collect();
    let house = House::new();
    gardens.iter().for_each(|garden| house.garden(garden));
    let (store, stops) = (house.path("store"), AtomicBool::new(false));
    let seen = std::thread::scope(|scope| {
        let reader = scope.spawn(|| {
            let mut seen: Vec<usize> = Vec::new();
            while !stops.load(Ordering::SeqCst) {
                let begin = Instant::now();
                let rows = listed(&store);
                let different: BTreeSet<&(String, String)> = rows.iter().collect();
                assert_eq!(different.len(), rows.len(), "a row twice: {rows:?}");
                seen.push(rows.len());
                std::thread::sleep(EVERY.saturating_sub(begin.elapsed()));
            }
            seen
        });
        let mut whole_run = Duration::from_secs(1);
        for night in 0..NIGHT_COUNT {
            for garden in &gardens {
                house.log(garden, &format!("{night}.gpx"), &log_of(garden, night, &wish));
            }
            for kill in 0..KILLS {
                let mut child = house.start("store", 1, 60.0);
                std::thread::sleep(whole_run.mul_f64(f64::from(kill + 1) / f64::from(KILLS + 1)));
                child.kill().unwrap();
                child.wait().unwrap();
            }
            let begin = Instant::now();
            assert!(house.run("store").success());
            whole_run = begin.elapsed().max(Duration::from_millis(200));
            assert_eq!(listed(&store).len(), gardens.len() * (night as usize + 1));
        }
        stops.store(true, Ordering::SeqCst);
        reader.join().unwrap()
    });
    // Whole nights of all gardens, never fewer than before.
    assert!(seen.len() >= 20, "{} reads", seen.len());
    assert!(seen.iter().all(|rows| rows % gardens.len() == 0), "{seen:?}");
    assert!(seen.windows(2).all(|pair| pair[0] <= pair[1]), "{seen:?}");
}
