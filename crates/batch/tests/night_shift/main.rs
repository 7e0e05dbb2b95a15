//! Whole nights with worker processes: late, twice, torn, killed, forgotten.
#![allow(clippy::print_stdout)] // scores are for the docs
#![allow(clippy::disallowed_methods)] // the host's mathematics is the oracle here
#![allow(clippy::unwrap_used)] // helpers of tests are tests

use std::path::PathBuf;
use std::process::{Child, Command, ExitStatus, Stdio};
use std::time::Duration;
use tempfile::TempDir;
use tussock::simulate::gardens::load::{LoadGarden, LoadTrouble, LoadWish, load_garden};
use tussock_batch::morning::{self, NightChoice};
use tussock_batch::table::{FAILURES, LOGS, NIGHTS, POCKETS};
use tussock_batch::{ColumnChoice, Store, night};
use tussock_types::Alarm;

mod alarms;
mod clocks;
mod load;
mod readers;
mod season;

use load::{Content, START_UNIX_S, WRITTEN_UNIX_S, log_of, wish};

/// The default: as soon as the logs are written.
const NOW_UNIX_S: f64 = WRITTEN_UNIX_S;

fn first_night() -> night::NightNumber {
    night::night_of(START_UNIX_S, &tussock_types::GardenClock::Fixed(0), 12)
}

/// The path of the example, beside the tests.
fn example() -> PathBuf {
    let mut path = std::env::current_exe().unwrap();
    path.pop();
    path.pop();
    path.join("examples")
        .join(format!("night_shift{}", std::env::consts::EXE_SUFFIX))
}

struct House {
    folder: TempDir,
}

impl House {
    fn new() -> Self {
        let folder = TempDir::new().unwrap();
        std::fs::create_dir_all(folder.path().join("gardens")).unwrap();
        Self { folder }
    }

    fn path(&self, name: &str) -> PathBuf {
        self.folder.path().join(name)
    }

    fn garden(&self, garden: &LoadGarden) {
        load::lay_out(&self.path("gardens"), garden);
    }

    fn log(&self, garden: &LoadGarden, name: &str, bytes: &[u8]) {
        load::put_log(&self.path("gardens"), garden, name, bytes);
    }

    fn start(&self, store: &str, chunk: usize, longest_s: f64) -> Child {
        self.start_at(store, chunk, longest_s, NOW_UNIX_S)
    }

    fn start_at(&self, store: &str, chunk: usize, longest_s: f64, now_unix_s: f64) -> Child {
        Command::new(example())
            .args(["run"])
            .arg(self.path("gardens"))
            .arg(self.path(store))
            .args([chunk.to_string(), longest_s.to_string(), now_unix_s.to_string()])
            .stdout(Stdio::null())
            .stderr(Stdio::null())
            .spawn()
            .unwrap()
    }

    fn run(&self, store: &str) -> ExitStatus {
        self.start(store, 2, 60.0).wait().unwrap()
    }

    fn content(&self, store: &str) -> Content {
        load::content(&self.path(store))
    }
}

/// Points of a GPX file, one per line, divided at a given fraction.
fn parted(gpx: &[u8], fraction: f64) -> (Vec<u8>, Vec<u8>) {
    let text = std::str::from_utf8(gpx).unwrap();
    let points: Vec<&str> = text.lines().filter(|line| line.starts_with("<trkpt")).collect();
    let at = (points.len() as f64 * fraction) as usize;
    let file = |points: &[&str]| {
        format!(
            "<?xml version=\"1.0\"?>\n<gpx xmlns=\"http://www.topografix.com/GPX/1/1\" version=\"1.1\" creator=\"x\">\n<trk><trkseg>\n{}\n</trkseg></trk>\n</gpx>\n",
            points.join("\n")
        )
        .into_bytes()
    };
    (file(&points[..at]), file(&points[at..]))
}

#[test]
fn late_twice_and_in_pieces_ends_in_the_same_nights_as_whole_and_in_time() {
    let wish = wish(3);
    let gardens: Vec<LoadGarden> = (0..2).map(|number| load_garden(number, &wish)).collect();
    let (plain, odd) = (House::new(), House::new());
    for garden in &gardens {
        plain.garden(garden);
        odd.garden(garden);
        for night in 0..3 {
            plain.log(garden, &format!("{night}.gpx"), &log_of(garden, night, &wish));
        }
    }
    assert!(plain.run("store").success());
    // The last night first; the first night in two pieces, the later one first; the second night twice, packed.
    for garden in &gardens {
        odd.log(garden, "2.gpx", &log_of(garden, 2, &wish));
    }
    assert!(odd.run("store").success());
    for garden in &gardens {
        let (_, late) = parted(&log_of(garden, 0, &wish), 0.6);
        odd.log(garden, "0b.gpx", &late);
    }
    assert!(odd.run("store").success());
    for garden in &gardens {
        let (early, _) = parted(&log_of(garden, 0, &wish), 0.6);
        odd.log(garden, "0a.gpx", &early);
        let packed = zstd::encode_all(&log_of(garden, 1, &wish)[..], 3).unwrap();
        odd.log(garden, "1.gpx.zst", &packed);
        odd.log(garden, "1-again.gpx.zst", &packed);
    }
    assert!(odd.run("store").success());
    let before = odd.content("store");
    assert!(odd.run("store").success());
    assert_eq!(
        before,
        odd.content("store"),
        "a second run over known logs changes nothing"
    );
    let (plain, odd) = (plain.content("store"), odd.content("store"));
    let visited = NIGHTS.at("visited_fraction");
    for number in 0..3 {
        let at = ("nights", first_night() + number);
        assert_eq!(plain[&at].len(), 2);
        for (a, b) in plain[&at].iter().zip(&odd[&at]) {
            assert_eq!(a[0], b[0]);
            let (a, b) = (a[visited].number().unwrap(), b[visited].number().unwrap());
            // The chord between two pieces is all that may differ.
            assert!((a - b).abs() < 0.003, "night {number}: {a} {b}");
        }
    }
    let same_as = LOGS.at("same_as");
    let twice = odd[&("logs", first_night() + 1)]
        .iter()
        .filter(|row| row[same_as].text().is_some())
        .count();
    assert_eq!(twice, 2);
    // The rolling state: the same nights, the same squares but for that chord.
    let state = |content: &Content| -> Vec<f64> {
        let at = tussock_batch::table::GARDENS.at("last_visits");
        content[&("gardens", 0)]
            .iter()
            .map(|row| match &row[at] {
                tussock_batch::table::Value::Packed(packed) => tussock_batch::LastVisits::unpack(packed)
                    .and_then(|state| state.visited_since_fraction(first_night()))
                    .unwrap(),
                other => panic!("{other:?}"),
            })
            .collect()
    };
    for (a, b) in state(&plain).into_iter().zip(state(&odd)) {
        assert!(a > 0.3 && (a - b).abs() < 0.003, "{a} {b}");
    }
}

fn killed_and_started_again(times: u32, nights: [u32; 2]) {
    let wish = wish(2);
    let house = House::new();
    std::fs::write(house.path("gardens/gardens.toml"), "retention_days = 15").unwrap();
    for number in 0..4 {
        let garden = load_garden(number, &wish);
        house.garden(&garden);
        for night in nights {
            house.log(&garden, &format!("{night}.gpx"), &log_of(&garden, night, &wish));
        }
    }
    let begin = std::time::Instant::now();
    assert!(house.run("calm").success());
    let whole = begin.elapsed();
    let wanted = house.content("calm");
    for time in 0..times {
        let store = format!("store-{time}");
        // Seeded instants, spread over a whole run by the golden ratio.
        let part = (f64::from(time) * 0.618_034 + 0.1).fract();
        let mut child = house.start(&store, 1, 60.0);
        std::thread::sleep(Duration::from_secs_f64(whole.as_secs_f64() * part));
        child.kill().unwrap();
        child.wait().unwrap();
        // A worker of the killed run may still be at its log; it holds nothing.
        assert!(house.run(&store).success(), "kill {time} at {part:.2}");
        assert_eq!(house.content(&store), wanted, "kill {time} at {part:.2}");
    }
}

#[test]
fn killed_at_eight_instants_the_store_ends_as_undisturbed() {
    killed_and_started_again(8, [0, 1]);
}

#[test]
fn killed_over_an_archive_that_is_older_than_what_is_kept_it_ends_as_undisturbed() {
    killed_and_started_again(4, [0, 40]);
}

#[test]
#[ignore = "some minutes"]
fn killed_at_a_hundred_instants_the_store_ends_as_undisturbed() {
    killed_and_started_again(100, [0, 1]);
}

#[test]
fn damaged_logs_are_named_once_and_take_nothing_with_them() {
    let wish = wish(1);
    let house = House::new();
    for number in 0..3 {
        let garden = load_garden(number, &wish);
        house.garden(&garden);
        house.log(&garden, "0.gpx", &log_of(&garden, 0, &wish));
    }
    let broken = load_garden(1, &wish);
    house.log(&broken, "1.gpx", b"\x89PNG no log at all");
    let planless = load_garden(9, &wish);
    house.garden(&planless);
    house.log(&planless, "0.gpx", &log_of(&planless, 0, &wish));
    std::fs::remove_file(house.path("gardens").join(&planless.name).join("plan.geojson")).unwrap();
    assert_eq!(house.run("store").code(), Some(1));
    let content = house.content("store");
    let failures: Vec<(String, String, usize)> = content
        .iter()
        .filter(|((table, _), _)| *table == "failures")
        .flat_map(|(_, rows)| rows)
        .map(|row| {
            let text = |name: &str| row[FAILURES.at(name)].text().unwrap_or_default().to_owned();
            (text("what"), text("reason"), text("sha256").len())
        })
        .collect();
    assert!(
        failures.contains(&(format!("{}/logs/1.gpx", broken.name), "damaged".to_owned(), 64)),
        "{failures:?}"
    );
    assert!(
        failures.contains(&("plan".to_owned(), "plan".to_owned(), 0)),
        "{failures:?}"
    );
    assert_eq!(failures.len(), 2);
    assert_eq!(content[&("nights", first_night())].len(), 3);
    // Mended: the failures go, the night comes.
    house.garden(&planless);
    std::fs::remove_file(house.path("gardens").join(&broken.name).join("logs/1.gpx")).unwrap();
    assert!(house.run("store").success());
    assert_eq!(house.content("store")[&("nights", first_night())].len(), 4);
}

#[test]
fn two_at_once_do_not_harm_each_other_and_a_forgotten_garden_is_gone() {
    let wish = wish(1);
    let house = House::new();
    let gardens: Vec<LoadGarden> = (0..4).map(|number| load_garden(number, &wish)).collect();
    for garden in &gardens {
        house.garden(garden);
        house.log(garden, "0.gpx", &log_of(garden, 0, &wish));
    }
    let mut both = [house.start("store", 1, 60.0), house.start("store", 1, 60.0)];
    let codes: Vec<bool> = both
        .iter_mut()
        .map(|child| child.wait().unwrap().success())
        .collect();
    assert!(codes.contains(&true), "{codes:?}");
    assert!(house.run("store").success());
    assert!(house.run("alone").success());
    assert_eq!(house.content("store"), house.content("alone"));

    let mut store = Store::open_to_write(&house.path("store"), "x").unwrap();
    assert!(store.forget(&gardens[2].name).unwrap() >= 3);
    drop(store);
    assert!(
        !house
            .content("store")
            .values()
            .flatten()
            .any(|row| row[0].text() == Some(&gardens[2].name))
    );
}

#[test]
fn a_blocked_part_is_told_with_one_identity_and_a_mended_garden_is_quiet() {
    let wish = LoadWish {
        nights: 12,
        hours: 3.0,
        period_s: 3.0,
        area_m2: (180.0, 200.0),
        trouble_fraction: 1.0,
        ..wish(12)
    };
    let mut garden = (0..60)
        .map(|number| load_garden(number, &wish))
        .find(|garden| garden.trouble == LoadTrouble::BlockedPart)
        .unwrap();
    (garden.from_night, garden.until_night) = (4, 8);
    let house = House::new();
    house.garden(&garden);
    for night in 0..12 {
        house.log(
            &garden,
            &format!("{night:02}.gpx"),
            &log_of(&garden, night, &wish),
        );
    }
    assert!(house.run("store").success());
    let store = Store::open(&house.path("store")).unwrap();
    let told = |number: night::NightNumber| -> Vec<(String, String)> {
        morning::morning(&store, NightChoice::Date(first_night() + number))
            .unwrap()
            .gardens
            .into_iter()
            .flat_map(|garden| garden.reasons)
            .filter(|reason| reason.alarm == Alarm::MissedPocket)
            .map(|reason| (reason.what, reason.since))
            .collect()
    };
    assert_eq!(told(3), []);
    let mut largest = Vec::new();
    for night in 5..8 {
        let found = told(night);
        assert!(!found.is_empty(), "night {night}");
        largest.push(found[0].clone());
    }
    assert!(largest.iter().all(|one| *one == largest[0]), "{largest:?}");
    assert_eq!(largest[0].1, night::words(first_night() + 4));
    // It stands until three nights have shown that it is mended.
    for night in 8..12 {
        assert_eq!(told(night).is_empty(), night >= 10, "night {night}");
    }
    let rows = store
        .rows(
            &POCKETS,
            ColumnChoice::All,
            first_night()..=first_night() + 12,
            &|_| true,
        )
        .unwrap();
    assert!(
        rows.iter().all(|(_, row)| row[2].text().is_some()),
        "every pocket has an identity"
    );
}

#[test]
fn what_did_not_come_is_told_and_what_rests_is_not() {
    let wish = wish(8);
    let house = House::new();
    let gardens: Vec<LoadGarden> = (0..3).map(|number| load_garden(number, &wish)).collect();
    for (number, garden) in gardens.iter().enumerate() {
        house.garden(garden);
        for night in 0..if number == 0 { 8 } else { 4 } {
            house.log(garden, &format!("{night}.gpx"), &log_of(garden, night, &wish));
        }
    }
    let rest = format!(
        "{}/{}",
        night::words(first_night() + 3),
        night::words(first_night() + 30)
    );
    let manifest: String = gardens
        .iter()
        .enumerate()
        .map(|(number, garden)| {
            let rests = if number == 2 {
                format!("rests = [\"{rest}\"]\n")
            } else {
                String::new()
            };
            format!("[[garden]]\nname = \"{}\"\n{rests}", garden.name)
        })
        .collect();
    std::fs::write(house.path("gardens/gardens.toml"), manifest).unwrap();
    assert!(house.run("store").success());
    let store = Store::open(&house.path("store")).unwrap();
    let found = morning::morning(&store, NightChoice::Date(first_night() + 7)).unwrap();
    assert_eq!((found.known, found.with_log, found.resting), (3, 1, 1));
    let absent: Vec<(&str, &str, u64)> = found
        .gardens
        .iter()
        .flat_map(|garden| {
            garden
                .reasons
                .iter()
                .map(|reason| (&garden.garden[..], &reason.since[..], reason.nights))
        })
        .collect();
    assert_eq!(
        absent,
        [(&gardens[1].name[..], &night::words(first_night() + 4)[..], 4)]
    );
    assert!(found.gardens[0].gain_m2 > 100.0);
}
