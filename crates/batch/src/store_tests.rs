//! The store on disks that fill up or fail, and with two writers.

use super::*;
use crate::clock::Clock;
use crate::table::{GARDENS, LOGS, NIGHTS};
use std::sync::Arc;
use std::sync::atomic::{AtomicUsize, Ordering};
use tempfile::TempDir;

/// What happens to the disk.
#[derive(Clone, Copy, PartialEq)]
enum Fate {
    /// From some step on nothing works any more: the process was killed.
    Killed,
    /// One step fails with half of the bytes written: the disk was full.
    Full,
}

struct Doomed {
    steps: Arc<AtomicUsize>,
    last: usize,
    fate: Fate,
}

impl Doomed {
    fn step(&self) -> std::io::Result<()> {
        let step = self.steps.fetch_add(1, Ordering::SeqCst);
        let fails = match self.fate {
            Fate::Killed => step >= self.last,
            Fate::Full => step == self.last,
        };
        if fails {
            return Err(std::io::Error::from(std::io::ErrorKind::StorageFull));
        }
        Ok(())
    }
}

impl Disk for Doomed {
    fn make_folder(&self, path: &Path) -> std::io::Result<()> {
        self.step()?;
        RealDisk.make_folder(path)
    }
    fn write(&self, path: &Path, bytes: &[u8]) -> std::io::Result<()> {
        if let Err(error) = self.step() {
            // A process that no longer exists writes nothing more.
            if self.fate == Fate::Full || self.steps.load(Ordering::SeqCst) == self.last + 1 {
                RealDisk.write(path, &bytes[..bytes.len() / 2])?;
            }
            return Err(error);
        }
        RealDisk.write(path, bytes)
    }
    fn rename(&self, from: &Path, to: &Path) -> std::io::Result<()> {
        self.step()?;
        RealDisk.rename(from, to)
    }
    fn remove(&self, path: &Path) -> std::io::Result<()> {
        self.step()?;
        RealDisk.remove(path)
    }
    fn link(&self, from: &Path, to: &Path) -> std::io::Result<()> {
        self.step()?;
        RealDisk.link(from, to)
    }
    fn lead(&self, name: &Path, to: &Path) -> std::io::Result<()> {
        self.step()?;
        RealDisk.lead(name, to)
    }
    fn remove_folder(&self, path: &Path) -> std::io::Result<()> {
        self.step()?;
        RealDisk.remove_folder(path)
    }
    fn read(&self, path: &Path) -> std::io::Result<Vec<u8>> {
        RealDisk.read(path)
    }
    fn open(&self, path: &Path) -> std::io::Result<std::fs::File> {
        RealDisk.open(path)
    }
    fn list(&self, path: &Path) -> std::io::Result<Vec<(PathBuf, bool)>> {
        RealDisk.list(path)
    }
}

fn row(table: &'static StoreTable, garden: &str, second: &str) -> TableRow {
    let mut row = table.empty();
    row[0] = garden.into();
    row[1] = second.into();
    row
}

const NIGHT: NightNumber = 20_000;

/// What is done to a store.
enum Step {
    Change(StoreChange),
    Join,
    Expire,
}

impl Step {
    fn take(self, store: &mut Store) -> Result<(), BatchError> {
        match self {
            Self::Change(change) => store.commit(change),
            Self::Join => store.join().map(|joined| assert!(joined)),
            Self::Expire => store.expire(Some(15), clock(), 1.0).map(|_| ()),
        }
    }
}

/// Five commits that add, replace, remove and join.
fn all_steps() -> Vec<Step> {
    let mut out = Vec::new();
    for number in 0..3 {
        let mut change = StoreChange::default();
        for garden in ["a", "b"] {
            change.put(
                &LOGS,
                NIGHT + number,
                row(&LOGS, garden, &format!("{garden}/{number}")),
            );
            change.put(&NIGHTS, NIGHT, row(&NIGHTS, &format!("{garden}{number}"), "k"));
        }
        change.drop(&GARDENS, 0, "a", None);
        change.put(&GARDENS, 0, row(&GARDENS, "a", &number.to_string()));
        out.push(Step::Change(change));
    }
    let mut change = StoreChange::default();
    change.drop(&LOGS, NIGHT + 1, "a", Some("a/1"));
    change.drop(&LOGS, NIGHT + 1, "b", Some("no such log"));
    change.drop(&NIGHTS, NIGHT, "b2", None);
    out.push(Step::Change(change));
    out.push(Step::Join);
    out
}

/// Noon at the end of the last night.
fn clock() -> Clock {
    Clock {
        now_unix_s: night::start_unix_s(NIGHT + 21, &tussock_types::GardenClock::Fixed(0), 12),
        night_turns_at_h: 12,
        oldest_log_days: crate::USUAL_OLDEST_LOG_DAYS,
    }
}

/// One night of this many gardens.
fn nights_of(night: NightNumber, gardens: usize) -> StoreChange {
    let mut change = StoreChange::default();
    for number in 0..gardens {
        change.put(&NIGHTS, night, row(&NIGHTS, &format!("g{number}"), "k"));
    }
    change
}

fn content(store: &Store) -> Vec<(usize, NightNumber, TableRow)> {
    let mut out = Vec::new();
    for (number, table) in TABLES.iter().enumerate() {
        let rows = store
            .rows(
                table,
                ColumnChoice::All,
                NightNumber::MIN..=NightNumber::MAX,
                &|_| true,
            )
            .unwrap();
        out.extend(rows.into_iter().map(|(night, row)| (number, night, row)));
    }
    out.sort_by(|a, b| (a.0, a.1).cmp(&(b.0, b.1)).then_with(|| table::order(&a.2, &b.2)));
    out
}

/// Every file below the folders of the tables, and how many of them are alive.
fn files(path: &Path) -> usize {
    let mut found = 0;
    for table in TABLES {
        for (folder, is_folder) in RealDisk.list(&path.join(table.name)).unwrap() {
            found += if is_folder {
                RealDisk.list(&folder).unwrap().len()
            } else {
                1
            };
        }
    }
    found
}

#[test]
fn rows_are_replaced_taken_away_and_joined() {
    let folder = TempDir::new().unwrap();
    let mut store = Store::open_to_write(folder.path(), "1").unwrap();
    let mut wanted: Vec<(usize, NightNumber, TableRow)> = Vec::new();
    for step in all_steps() {
        // The slow and obvious twin: a list.
        if let Step::Change(change) = &step {
            wanted.retain(|(number, night, row)| {
                let at = (
                    *number,
                    (TABLES[*number].parted == Parted::ByNight).then_some(*night),
                );
                !change.drops(&at, row)
            });
            for ((number, night), rows) in &change.put {
                wanted.extend(rows.iter().map(|row| (*number, night.unwrap_or(0), row.clone())));
            }
        }
        wanted.sort_by(|a, b| (a.0, a.1).cmp(&(b.0, b.1)).then_with(|| table::order(&a.2, &b.2)));
        step.take(&mut store).unwrap();
        assert_eq!(content(&store), wanted);
        assert_eq!(files(folder.path()), store.files());
    }
    // Three nights of logs, one of nights, the gardens: a file each.
    assert_eq!(store.files(), 5);
    assert!(!store.join().unwrap());
    drop(store);
    assert_eq!(content(&Store::open(folder.path()).unwrap()), wanted);
}

#[test]
fn many_small_files_become_few_of_a_size_that_fits_into_memory() {
    let folder = TempDir::new().unwrap();
    let mut store = Store::open_to_write(folder.path(), "1").unwrap();
    const EACH: usize = 900;
    for chunk in 0..9 {
        let mut change = StoreChange::default();
        for number in 0..EACH {
            let garden = format!("{:06}", chunk * EACH + number);
            change.put(&GARDENS, 0, row(&GARDENS, &garden, "x"));
            change.put(&NIGHTS, NIGHT, row(&NIGHTS, &garden, "x"));
        }
        store.commit(change).unwrap();
    }
    let before = content(&store);
    let mut commits = 0;
    while store.join().unwrap() {
        commits += 1;
    }
    // Rolling states: 2,000 to a file, two of nine files each; the night: all in one.
    assert_eq!(store.table_files(&GARDENS).len(), 5);
    assert_eq!(store.table_files(&NIGHTS).len(), 1);
    assert!((2..=6).contains(&commits), "{commits}");
    assert_eq!(content(&store), before);
    assert_eq!(files(folder.path()), store.files());
}

#[test]
fn killed_or_full_at_any_step_the_store_is_as_before_or_as_after() {
    let all_steps = || {
        let mut steps = all_steps();
        steps.extend([Step::Change(nights_of(NIGHT + 20, 2)), Step::Expire]);
        steps
    };
    // What it is after each commit, and how many steps all of it takes.
    let (folder, steps) = (TempDir::new().unwrap(), Arc::new(AtomicUsize::new(0)));
    let sound = Doomed {
        steps: Arc::clone(&steps),
        last: usize::MAX,
        fate: Fate::Full,
    };
    let mut store = Store::open_on(folder.path(), "1", Box::new(sound)).unwrap();
    let mut after = vec![content(&store)];
    for step in all_steps() {
        step.take(&mut store).unwrap();
        after.push(content(&store));
    }
    let all = steps.load(Ordering::SeqCst);
    assert!(all > 50, "{all}");
    assert_eq!(store.nights(&NIGHTS), [NIGHT + 20]);
    for fate in [Fate::Killed, Fate::Full] {
        for last in 0..all {
            let folder = TempDir::new().unwrap();
            let steps = Arc::new(AtomicUsize::new(0));
            let doomed = Doomed { steps, last, fate };
            let mut made = 0;
            if let Ok(mut store) = Store::open_on(folder.path(), "1", Box::new(doomed)) {
                for step in all_steps() {
                    if step.take(&mut store).is_err() {
                        break;
                    }
                    made += 1;
                }
            }
            let mut store = Store::open_to_write(folder.path(), "1").unwrap();
            // The last commit may have succeeded although it was reported as failed, but never the other way round.
            let found = usize::try_from(store.record.commit).unwrap();
            assert!(
                found == made || found == made + 1,
                "step {last}: {found} of {made}"
            );
            assert_eq!(content(&store), after[found], "step {last}");
            assert_eq!(
                files(folder.path()),
                store.files(),
                "step {last}: something was left lying"
            );
            for step in all_steps().into_iter().skip(found) {
                step.take(&mut store).unwrap();
            }
            assert_eq!(content(&store), after[after.len() - 1], "step {last}");
        }
    }
}

/// All rows of the files that a reader finds by listing the target of `snapshot`; none if it leads nowhere yet.
#[cfg(unix)]
fn snapshot(path: &Path) -> Vec<(usize, NightNumber, TableRow)> {
    let Ok(whole) = path.join(SNAPSHOT).canonicalize() else {
        return Vec::new();
    };
    let mut out = Vec::new();
    for (number, table) in TABLES.iter().enumerate() {
        let all: Vec<usize> = (0..table.columns.len()).collect();
        let mut take = |file: &Path, night| {
            let bytes = bytes::Bytes::from(RealDisk.read(file).unwrap());
            let rows = table::read(table, "x", bytes, &all, Keep::All).unwrap();
            out.extend(rows.into_iter().map(|row| (number, night, row)));
        };
        for (path, is_folder) in RealDisk.list(&whole.join(table.name)).unwrap() {
            let name = path.file_name().unwrap().to_str().unwrap();
            match name.strip_prefix("night=").and_then(night::parse) {
                Some(night) if is_folder => {
                    let files = RealDisk.list(&path).unwrap();
                    files.iter().for_each(|(file, _)| take(file, night));
                }
                _ => take(&path, 0),
            }
        }
    }
    out.sort_by(|a, b| (a.0, a.1).cmp(&(b.0, b.1)).then_with(|| table::order(&a.2, &b.2)));
    out
}

#[cfg(unix)]
#[test]
fn a_store_that_was_copied_with_its_links_followed_goes_on_and_files_of_others_stay() {
    let folder = TempDir::new().unwrap();
    let mut store = Store::open_to_write(folder.path(), "1").unwrap();
    let mut steps = all_steps().into_iter();
    steps.next().unwrap().take(&mut store).unwrap();
    store.publish(Before::Stays).unwrap();
    // What a copy leaves that knows no links: a folder of copies.
    let at = folder.path().join(SNAPSHOT);
    let led_to = at.canonicalize().unwrap();
    std::fs::remove_file(&at).unwrap();
    copy_folder(&led_to, &at);
    steps.next().unwrap().take(&mut store).unwrap();
    store.publish(Before::Stays).unwrap();
    assert!(at.symlink_metadata().unwrap().is_symlink());
    assert_eq!(snapshot(folder.path()), content(&store));
    // A folder with anything else in it is somebody's.
    std::fs::remove_file(&at).unwrap();
    std::fs::create_dir(&at).unwrap();
    std::fs::write(at.join("notes.txt"), "mine").unwrap();
    let refused = store.publish(Before::Stays).unwrap_err();
    assert!(matches!(refused, BatchError::Disk { path, .. } if path == at));
    assert_eq!(std::fs::read(at.join("notes.txt")).unwrap(), b"mine");
}

#[cfg(unix)]
fn copy_folder(from: &Path, to: &Path) {
    std::fs::create_dir(to).unwrap();
    for (path, is_folder) in RealDisk.list(from).unwrap() {
        let target = to.join(path.file_name().unwrap());
        if is_folder {
            copy_folder(&path, &target);
        } else {
            std::fs::copy(&path, &target).unwrap();
        }
    }
}

#[cfg(unix)]
#[test]
fn killed_or_full_at_any_step_the_snapshot_is_whole_and_of_one_run() {
    // A run is two commits, and the end of it.
    let runs = || -> Vec<Vec<Step>> {
        let mut steps = all_steps().into_iter();
        (0..2).map(|_| steps.by_ref().take(2).collect()).collect()
    };
    let work = |store: &mut Store, run: Vec<Step>| -> Result<(), BatchError> {
        run.into_iter().try_for_each(|step| step.take(store))?;
        store.publish(Before::Stays)
    };
    let (folder, steps) = (TempDir::new().unwrap(), Arc::new(AtomicUsize::new(0)));
    let (last, fate) = (usize::MAX, Fate::Full);
    let sound = Doomed {
        steps: Arc::clone(&steps),
        last,
        fate,
    };
    let mut store = Store::open_on(folder.path(), "1", Box::new(sound)).unwrap();
    let mut whole = vec![Vec::new()];
    for run in runs() {
        work(&mut store, run).unwrap();
        assert_eq!(snapshot(folder.path()), content(&store));
        whole.push(content(&store));
    }
    // The previous snapshot stays for those who are still reading it, until the next one; a garden that is forgotten is in
    // neither.
    let count = || RealDisk.list(&folder.path().join(SNAPSHOTS)).unwrap().len();
    assert_eq!(count(), 2);
    store.forget("a").unwrap();
    assert_eq!((count(), snapshot(folder.path())), (1, content(&store)));
    for fate in [Fate::Killed, Fate::Full] {
        for last in 0..steps.load(Ordering::SeqCst) {
            let folder = TempDir::new().unwrap();
            let steps = Arc::new(AtomicUsize::new(0));
            let mut ended = 0;
            if let Ok(mut store) = Store::open_on(folder.path(), "1", Box::new(Doomed { steps, last, fate }))
            {
                for run in runs() {
                    if work(&mut store, run).is_err() {
                        break;
                    }
                    ended += 1;
                }
            }
            let found = snapshot(folder.path());
            // The last step of a run may have succeeded although it was reported as failed.
            let next = whole.get(ended + 1);
            assert!(
                found == whole[ended] || Some(&found) == next,
                "{last}: {ended} runs ended"
            );
            let store = Store::open_to_write(folder.path(), "1").unwrap();
            store.publish(Before::Stays).unwrap();
            assert_eq!(snapshot(folder.path()), content(&store), "{last}");
            let left = RealDisk.list(&folder.path().join(SNAPSHOTS)).unwrap();
            assert!(
                left.len() <= 2 && left.iter().all(|(path, _)| path.extension().is_none()),
                "{left:?}"
            );
        }
    }
}

#[test]
fn a_store_of_version_1_is_read_and_is_of_this_version_after_the_next_commit() {
    let folder = TempDir::new().unwrap();
    let mut store = Store::open_to_write(folder.path(), "1").unwrap();
    let mut change = StoreChange::default();
    let mut old = row(&GARDENS, "a", "Villa");
    old[GARDENS.at("last_night")] = "2026-05-01".into();
    change.put(&GARDENS, 0, old.clone());
    change.put(&NIGHTS, NIGHT, row(&NIGHTS, "a", "k"));
    store.commit(change).unwrap();
    drop(store);
    // As that version wrote it: three columns fewer, and no mention of the tables that came later.
    static OLD_GARDENS: StoreTable = StoreTable {
        name: "gardens",
        parted: Parted::Not,
        columns: GARDENS.columns.split_at(12).0,
    };
    let file = Store::open(folder.path()).unwrap().table_files(&GARDENS)[0]
        .1
        .clone();
    let bytes = table::write(&OLD_GARDENS, vec![old[..12].to_vec()], "1").unwrap();
    std::fs::write(file, bytes).unwrap();
    let path = folder.path().join(RECORD);
    let mut record: serde_json::Value = serde_json::from_slice(&std::fs::read(&path).unwrap()).unwrap();
    record["schema_version"] = 1.into();
    for table in ["usual", "alarms"] {
        record["tables"].as_object_mut().unwrap().remove(table);
    }
    std::fs::write(&path, serde_json::to_vec(&record).unwrap()).unwrap();
    let version = || -> u64 {
        let record: serde_json::Value = serde_json::from_slice(&std::fs::read(&path).unwrap()).unwrap();
        record["schema_version"].as_u64().unwrap()
    };
    let rows = |store: &Store| store.rows(&GARDENS, ColumnChoice::All, 0..=0, &|_| true).unwrap();
    assert_eq!(rows(&Store::open(folder.path()).unwrap()), [(0, old.clone())]);
    assert_eq!(version(), 1);
    let mut store = Store::open_to_write(folder.path(), "2").unwrap();
    store.renew_alarms().unwrap();
    assert_eq!(version(), u64::from(SCHEMA_VERSION));
    assert_eq!(rows(&store), [(0, old)]);
    assert_eq!(store.table_files(&crate::table::USUAL).len(), 1);
}

#[test]
fn one_run_writes_at_a_time_and_an_overtaken_one_keeps_nothing() {
    let folder = TempDir::new().unwrap();
    let mut first = Store::open_to_write(folder.path(), "1").unwrap();
    assert!(matches!(
        Store::open_to_write(folder.path(), "1"),
        Err(BatchError::InUse { .. })
    ));
    // Where the file system knows no locks both would be open.
    let mut second = Store {
        path: folder.path().to_owned(),
        disk: Box::new(RealDisk),
        record: first.record.clone(),
        tool_version: "1".to_owned(),
        _lock: None,
    };
    let mut steps = all_steps().into_iter();
    let (mine, theirs) = (steps.next().unwrap(), steps.next().unwrap());
    theirs.take(&mut second).unwrap();
    let wanted = content(&second);
    assert!(matches!(
        mine.take(&mut first),
        Err(BatchError::Overtaken {
            found: 1,
            expected: 0,
            ..
        })
    ));
    assert_eq!(content(&Store::open(folder.path()).unwrap()), wanted);
    drop(first);
    Store::open_to_write(folder.path(), "1").unwrap();
}

#[test]
fn folders_of_others_and_stores_of_another_time_are_left_alone() {
    let folder = TempDir::new().unwrap();
    std::fs::write(folder.path().join("letter.txt"), "dear").unwrap();
    assert!(matches!(
        Store::open_to_write(folder.path(), "1"),
        Err(BatchError::NoStore { .. })
    ));
    assert!(matches!(
        Store::open(folder.path()),
        Err(BatchError::NoStore { .. })
    ));
    std::fs::remove_file(folder.path().join("letter.txt")).unwrap();
    std::fs::write(folder.path().join(RECORD), "{\"schema_version\": 7}").unwrap();
    assert!(matches!(
        Store::open_to_write(folder.path(), "1"),
        Err(BatchError::SchemaVersion {
            found: 7,
            expected: SCHEMA_VERSION,
            ..
        })
    ));
}

#[test]
fn a_forgotten_garden_leaves_no_trace_in_any_byte_and_old_nights_go() {
    let folder = TempDir::new().unwrap();
    let mut store = Store::open_to_write(folder.path(), "1").unwrap();
    let mut change = StoreChange::default();
    for table in TABLES {
        for garden in ["Villa Unforgettable", "other"] {
            change.put(table, NIGHT, row(table, garden, &format!("{garden}/x")));
            change.put(table, NIGHT + 5, row(table, garden, &format!("{garden}/y")));
        }
    }
    store.commit(change).unwrap();
    assert_eq!(store.forget("Villa Unforgettable").unwrap(), 18);
    assert_eq!(store.forget("nobody").unwrap(), 0);
    assert_eq!(content(&store).len(), 18);
    store.commit(nights_of(NIGHT + 15, 1)).unwrap();
    assert_eq!(store.expire(Some(15), clock(), 0.0).unwrap().rows, 6);
    assert_eq!(store.nights(&LOGS), [NIGHT + 5]);
    // Every byte, including packed columns: nothing of the rows' unpacked text may be left.
    fn walk(path: &Path, needle: &[u8]) {
        for (path, _) in RealDisk.list(path).unwrap() {
            // Where links lead, too.
            if path.is_dir() {
                walk(&path, needle);
            } else {
                let bytes = std::fs::read(&path).unwrap();
                assert!(
                    !bytes.windows(needle.len()).any(|window| window == needle),
                    "{}",
                    path.display()
                );
            }
        }
    }
    walk(folder.path(), b"Unforgettable");
}

#[test]
fn only_nights_that_a_run_has_kept_are_counted_when_too_many_are_too_old() {
    let folder = TempDir::new().unwrap();
    let mut store = Store::open_to_write(folder.path(), "1").unwrap();
    let refused = |store: &mut Store, at_most_fraction: f64| {
        let before = (content(store), store.record.commit);
        match store.expire(Some(15), clock(), at_most_fraction) {
            Err(BatchError::ExpiresTooMuch { taken, nights, .. }) => {
                assert_eq!((content(store), store.record.commit), before);
                (taken, nights)
            }
            other => panic!("{other:?}"),
        }
    };
    // An archive that is read for the first time: its old nights are deleted at once, and a night dated ahead makes nothing
    // old.
    for (night, gardens) in [(NIGHT - 300, 3), (NIGHT, 2), (NIGHT + 400, 1)] {
        store.commit(nights_of(night, gardens)).unwrap();
    }
    let expired = store.expire(Some(15), clock(), 0.0).unwrap();
    assert_eq!((expired.first, expired.nights, expired.rows), (NIGHT - 14, 3, 3));
    assert_eq!(store.nights(&NIGHTS), [NIGHT, NIGHT + 400]);
    // Again, by a run that is killed and one that is not.
    store.commit(nights_of(NIGHT - 300, 3)).unwrap();
    drop(store);
    let mut store = Store::open_to_write(folder.path(), "1").unwrap();
    assert_eq!(store.expire(Some(15), clock(), 0.0).unwrap().nights, 3);
    // Nights that were kept are counted: two of the four that there would be.
    store.commit(nights_of(NIGHT + 20, 1)).unwrap();
    assert_eq!(refused(&mut store, 0.49), (2, 4));
    assert_eq!(store.expire(Some(15), clock(), 0.5).unwrap().nights, 2);
    // A clock that is behind all nights makes none old; all count from then on, as in a store of an earlier version.
    let behind = Clock {
        now_unix_s: 0.0,
        ..clock()
    };
    assert_eq!(store.expire(Some(15), behind, 0.0).unwrap().nights, 0);
    store.commit(nights_of(NIGHT - 300, 3)).unwrap();
    assert_eq!(refused(&mut store, 0.5), (3, 5));
    // Without a limit of days nothing goes.
    assert_eq!(store.expire(None, clock(), 0.0).unwrap().rows, 0);
    assert_eq!(refused(&mut store, 0.5), (3, 5));
}

#[test]
fn files_that_others_wrote_are_taken_in_whole_or_not_at_all() {
    let written = |folder: &Path, table: &'static StoreTable| {
        let path = folder.join(format!("{}.parquet", table.name));
        let bytes = table::write(table, vec![row(table, "c", "c/9")], "another").unwrap();
        std::fs::write(&path, bytes).unwrap();
        path
    };
    let renewed = [(&LOGS, Some(NIGHT + 1)), (&NIGHTS, Some(NIGHT)), (&GARDENS, None)];
    let mut died = 0;
    for last in 0.. {
        let folder = TempDir::new().unwrap();
        let path = folder.path().join("store");
        let mut store = Store::open_to_write(&path, "1").unwrap();
        for step in all_steps() {
            step.take(&mut store).unwrap();
        }
        let before = content(&store);
        drop(store);
        let logs = (&LOGS, Some(NIGHT + 1), written(folder.path(), &LOGS));
        let foreign = (&NIGHTS, Some(NIGHT), written(folder.path(), &GARDENS));
        let steps = Arc::new(AtomicUsize::new(0));
        let disk = Doomed {
            steps: Arc::clone(&steps),
            last: usize::MAX,
            fate: Fate::Killed,
        };
        // What opening takes is no step of the adoption.
        drop(Store::open_on(&path, "1", Box::new(disk)).unwrap());
        let disk = Doomed {
            last: steps.load(Ordering::SeqCst) + last,
            steps: Arc::new(AtomicUsize::new(0)),
            fate: Fate::Killed,
        };
        let mut store = Store::open_on(&path, "1", Box::new(disk)).unwrap();
        let refused = store.adopt(&renewed, &[logs.clone(), foreign]);
        assert!(matches!(refused, Err(BatchError::BadTable { .. })), "{refused:?}");
        let outcome = store.adopt(
            &renewed,
            &[logs.clone(), (&GARDENS, None, written(folder.path(), &GARDENS))],
        );
        drop(store);
        let after = content(&Store::open_to_write(&path, "1").unwrap());
        if outcome.is_err() {
            died += 1;
            assert_eq!(after, before, "killed at step {last}");
            continue;
        }
        let gone = |number: usize, night: NightNumber| {
            renewed
                .iter()
                .any(|(table, renewed)| TABLES[number] == *table && renewed.unwrap_or(0) == night)
        };
        let mut expected: Vec<(usize, NightNumber, TableRow)> = before
            .into_iter()
            .filter(|(number, night, _)| !gone(*number, *night))
            .collect();
        expected.push((0, NIGHT + 1, row(&LOGS, "c", "c/9")));
        expected.push((6, 0, row(&GARDENS, "c", "c/9")));
        let sorted = |mut rows: Vec<(usize, NightNumber, TableRow)>| {
            rows.sort_by(|a, b| (a.0, a.1).cmp(&(b.0, b.1)).then(table::order(&a.2, &b.2)));
            rows
        };
        assert_eq!(sorted(after), sorted(expected));
        break;
    }
    assert!(died >= 5, "{died}");
}
