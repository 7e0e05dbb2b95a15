//! Logs, files and computers with wrong clocks: what becomes history, and what is lost?

use super::load::{Content, START_UNIX_S, log_of, wish};
use super::{House, NOW_UNIX_S, example, first_night};
use std::path::Path;
use tussock::simulate::gardens::load::{LoadGarden, load_garden};
use tussock_batch::apart::{Absent, KnownRows, Listing, work_apart};
use tussock_batch::pool::{Crew, Hand};
use tussock_batch::run::{Shift, run, run_over};
use tussock_batch::table::{FAILURES, LOGS};
use tussock_batch::{
    BatchError, Bucket, Clock, Folder, Listed, Objects, PlaceReach, SeenFile, gardens, night,
};

const DAY_S: f64 = 86_400.0;

/// A night with all its dates changed: the first ten letters of every time.
fn dated(garden: &LoadGarden, number: u32, date: &str) -> Vec<u8> {
    let text = String::from_utf8(log_of(garden, number, &wish(1))).unwrap();
    let true_date = night::words(first_night() + number as night::NightNumber);
    assert!(text.contains(&true_date));
    text.replace(&true_date, date).into_bytes()
}

/// A log that begins before its receiver knew the time.
fn woken_late(garden: &LoadGarden, number: u32, fixes: usize) -> Vec<u8> {
    let text = String::from_utf8(log_of(garden, number, &wish(1))).unwrap();
    let true_date = night::words(first_night() + number as night::NightNumber);
    text.replacen(&true_date, "2000-01-01", fixes).into_bytes()
}

fn crew() -> Crew {
    Crew {
        program: example(),
        arguments: vec!["worker".into(), "512".into()],
        workers: 2,
        longest_s: 60.0,
    }
}

fn job(house: &House, store: &str, now_unix_s: f64, expire_at_most_fraction: f64) -> Shift {
    Shift {
        place: house.path("gardens").display().to_string(),
        store: house.path(store),
        crew: crew(),
        chunk: 2,
        advice: tussock::Advice::LeftOut,
        now_unix_s,
        expire_at_most_fraction,
        reach: PlaceReach::Inside,
    }
}

/// Runs like the example, and returns whether something failed.
fn run_at(house: &House, store: &str, now_unix_s: f64) -> bool {
    !house
        .start_at(store, 2, 60.0, now_unix_s)
        .wait()
        .unwrap()
        .success()
}

/// All rows except those about the logs themselves.
fn history(content: &Content) -> Content {
    let mut out = content.clone();
    out.retain(|(table, _), _| !["logs", "failures"].contains(table));
    out
}

fn failures(content: &Content) -> Vec<(String, String)> {
    let rows = content
        .iter()
        .filter(|((table, _), _)| *table == "failures")
        .flat_map(|(_, rows)| rows);
    let text =
        |row: &[tussock_batch::table::Value], name: &str| row[FAILURES.at(name)].text().unwrap().to_owned();
    let mut out: Vec<(String, String)> = rows
        .map(|row| {
            let what = text(row, "what");
            (what.rsplit('/').next().unwrap().to_owned(), text(row, "reason"))
        })
        .collect();
    out.sort();
    out
}

/// Logs with wrong times: name, content, and whether it is a failure of the run.
fn lies(garden: &LoadGarden) -> [(&'static str, Vec<u8>, bool); 4] {
    [
        ("a-year-ahead.gpx", dated(garden, 0, "2027-05-01"), true),
        ("a-year-ahead-again.gpx", dated(garden, 0, "2027-05-01"), true),
        ("rolled-over.gpx", dated(garden, 1, "2006-09-16"), true),
        ("never-set.gpx", dated(garden, 1, "2000-01-01"), true),
    ]
}

#[test]
fn logs_whose_clocks_lie_are_named_and_kept_and_change_no_history_in_any_order() {
    let garden = load_garden(0, &wish(1));
    let (honest, lied, late) = (House::new(), House::new(), House::new());
    for house in [&honest, &lied, &late] {
        std::fs::write(house.path("gardens/gardens.toml"), "retention_days = 15").unwrap();
        house.garden(&garden);
    }
    for number in [0, 1, 2] {
        let log = log_of(&garden, number, &wish(1));
        honest.log(&garden, &format!("{number}.gpx"), &log);
        lied.log(&garden, &format!("{number}.gpx"), &log);
    }
    assert!(!run_at(&honest, "store", NOW_UNIX_S));
    let wanted = honest.content("store");
    assert_eq!(wanted.keys().filter(|(table, _)| *table == "nights").count(), 3);
    for (name, log, _) in lies(&garden) {
        lied.log(&garden, name, &log);
    }
    assert!(run_at(&lied, "store", NOW_UNIX_S));
    let content = lied.content("store");
    assert_eq!(history(&content), history(&wanted));
    let named: Vec<(String, String)> = failures(&content);
    let mut expected: Vec<(String, String)> = lies(&garden)
        .map(|(name, ..)| (name.to_owned(), "clock".to_owned()))
        .to_vec();
    expected.sort();
    assert_eq!(named, expected);
    // Kept: what it was, and where it says that it belongs.
    let ahead = &content[&("logs", night::parse("2027-05-01").unwrap())];
    assert_eq!(ahead.len(), 2);
    assert!(ahead.iter().all(|row| row[LOGS.at("nights")].text() == Some("")));
    // Nothing new, and nothing to complain about, even when its date has come, because it was here before.
    for now_unix_s in [NOW_UNIX_S, NOW_UNIX_S + DAY_S, NOW_UNIX_S + 400.0 * DAY_S] {
        assert!(!run_at(&lied, "store", now_unix_s));
        assert_eq!(lied.content("store"), content);
    }
    // The other way round, a run for each.
    for (name, log, fails) in lies(&garden) {
        late.log(&garden, name, &log);
        assert_eq!(run_at(&late, "store", NOW_UNIX_S - DAY_S), fails, "{name}");
    }
    for number in [2, 0, 1] {
        late.log(
            &garden,
            &format!("{number}.gpx"),
            &log_of(&garden, number, &wish(1)),
        );
        assert!(!run_at(&late, "store", NOW_UNIX_S));
    }
    let found = late.content("store");
    assert_eq!(history(&found), history(&wanted));
    assert_eq!(failures(&found), expected);
}

#[test]
fn fixes_from_before_the_receiver_knew_the_time_are_skipped_and_the_night_is_kept() {
    let garden = load_garden(0, &wish(1));
    for (fixes, is_named) in [(20, false), (200, true)] {
        let house = House::new();
        house.garden(&garden);
        house.log(&garden, "0.gpx", &woken_late(&garden, 0, fixes));
        assert_eq!(run_at(&house, "store", NOW_UNIX_S), is_named);
        let content = house.content("store");
        assert_eq!(content[&("nights", first_night())].len(), 1);
        assert_eq!(failures(&content).len(), usize::from(is_named));
        let row = &content[&("logs", first_night())][0];
        assert!(
            row[LOGS.at("skipped")].count().unwrap() >= fixes as i64,
            "{row:?}"
        );
        assert_eq!(
            row[LOGS.at("nights")].text(),
            Some(&night::words(first_night())[..])
        );
    }
}

#[test]
fn a_computer_whose_clock_is_behind_takes_logs_at_their_files_word_and_lets_nothing_expire() {
    let garden = load_garden(0, &wish(1));
    let house = House::new();
    std::fs::write(house.path("gardens/gardens.toml"), "retention_days = 15").unwrap();
    house.garden(&garden);
    for number in [0, 40] {
        house.log(
            &garden,
            &format!("{number}.gpx"),
            &log_of(&garden, number, &wish(1)),
        );
    }
    assert!(!run_at(&house, "behind", 0.0));
    assert!(!run_at(&house, "right", NOW_UNIX_S));
    let (behind, right) = (house.content("behind"), house.content("right"));
    for number in [0, 40] {
        assert!(behind.contains_key(&("nights", first_night() + number)));
    }
    assert!(!right.contains_key(&("nights", first_night())));
    // When the clock is right again, the store is the same, but now the night has been kept by a run that ended.
    assert!(run_at(&house, "behind", NOW_UNIX_S));
    let outcome = run(&job(&house, "behind", NOW_UNIX_S, 0.5), &mut |_| {}).unwrap();
    assert!(outcome.expired > 0);
    assert_eq!(house.content("behind"), right);
}

#[test]
fn expiry_that_would_take_too_much_takes_nothing_until_it_is_allowed() {
    let garden = load_garden(0, &wish(1));
    let house = House::new();
    house.garden(&garden);
    for number in [0, 1, 2] {
        house.log(
            &garden,
            &format!("{number}.gpx"),
            &log_of(&garden, number, &wish(1)),
        );
    }
    assert!(!run_at(&house, "store", NOW_UNIX_S));
    std::fs::write(house.path("gardens/gardens.toml"), "retention_days = 15").unwrap();
    house.log(&garden, "20.gpx", &log_of(&garden, 20, &wish(1)));
    for _ in 0..2 {
        let refused = run(&job(&house, "store", NOW_UNIX_S, 0.7), &mut |_| {});
        assert!(
            matches!(
                refused,
                Err(BatchError::ExpiresTooMuch {
                    taken: 3,
                    nights: 4,
                    ..
                })
            ),
            "{refused:?}"
        );
        let content = house.content("store");
        assert_eq!(content.keys().filter(|(table, _)| *table == "nights").count(), 4);
    }
    let mut told = Vec::new();
    let done = run(&job(&house, "store", NOW_UNIX_S, 0.75), &mut |what| {
        told.push(what)
    })
    .unwrap();
    assert!(done.expired >= 6);
    let expired = told.iter().find_map(|what| match what {
        tussock_batch::run::ShiftNews::Expired(expired) => Some(expired.clone()),
        _ => None,
    });
    assert_eq!(
        expired.map(|one| (one.first, one.nights)),
        Some((first_night() + 6, 3))
    );
    // Old logs still come and go: nothing is lost by that, so nothing is reported.
    let kept = house.content("store");
    for _ in 0..2 {
        assert!(run(&job(&house, "store", NOW_UNIX_S, 0.0), &mut |_| {}).is_ok());
        assert_eq!(house.content("store"), kept);
    }
}

/// A place that says that its files were written then.
struct Stamped(Folder, i64);

impl Objects for Stamped {
    fn read(&self, path: &str) -> std::io::Result<Vec<u8>> {
        self.0.read(path)
    }
    fn list(&self, path: &str) -> std::io::Result<Listed> {
        let (folders, files) = self.0.list(path)?;
        let stamped = files.into_iter().map(|found| SeenFile {
            modified_unix_ms: self.1,
            ..found
        });
        Ok((folders, stamped.collect()))
    }
}

fn stamped(place: &Path, unix_s: f64) -> Bucket {
    let folder = Folder::new(place.to_owned(), PlaceReach::Inside);
    Bucket::over("stamped", Box::new(Stamped(folder, (unix_s * 1000.0) as i64)))
}

#[test]
fn a_bucket_and_many_machines_judge_by_the_same_time() {
    let garden = load_garden(0, &wish(1));
    let house = House::new();
    house.garden(&garden);
    house.log(&garden, "0.gpx", &log_of(&garden, 0, &wish(1)));
    house.log(&garden, "ahead.gpx", &dated(&garden, 0, "2027-05-01"));
    let place = house.path("gardens");
    for (number, (written_unix_s, taken)) in [(NOW_UNIX_S, 1), (0.0, 1), (START_UNIX_S + 366.0 * DAY_S, 2)]
        .into_iter()
        .enumerate()
    {
        let bucket = stamped(&place, written_unix_s);
        let store = format!("store-{number}");
        let done = run_over(&job(&house, &store, NOW_UNIX_S, 0.5), &bucket, &mut |_| {}).unwrap();
        assert_eq!(
            (done.nights, done.failures),
            (taken, 2 - taken),
            "{written_unix_s}"
        );
        // The same garden where nobody has a store.
        let wishes = gardens(&bucket).unwrap();
        let listed = wishes.gardens[0].logs(&bucket).unwrap();
        let found = listed.into_iter().map(|log| log.found);
        let setup = ["plan.geojson", "settings.toml"].map(|name| SeenFile {
            path: format!("{}/{name}", garden.name),
            bytes: 1,
            modified_unix_ms: 0,
        });
        let listing = Listing::new(place.clone(), found.chain(setup));
        let clock = Clock {
            now_unix_s: NOW_UNIX_S,
            night_turns_at_h: 12,
            oldest_log_days: tussock_batch::USUAL_OLDEST_LOG_DAYS,
        };
        let outcome = work_apart(
            &mut Hand::new(crew()),
            &place.display().to_string(),
            &Bucket::over("list", Box::new(listing)),
            &wishes.gardens[0],
            clock,
            KnownRows::default(),
            Absent::Failed,
        )
        .unwrap();
        let mut apart = Content::new();
        for (table, night, row) in outcome.put {
            apart.entry((table.name, night)).or_default().push(row);
        }
        apart
            .values_mut()
            .for_each(|rows| rows.sort_by(tussock_batch::table::order));
        // What a run works out from the tables at its end does not belong to a single garden.
        let mut whole = house.content(&store);
        whole.retain(|(table, _), _| !["usual", "alarms"].contains(table));
        assert_eq!(apart, whole, "{written_unix_s}");
    }
}
