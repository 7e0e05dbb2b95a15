//! How is one garden processed on a machine that has no store?
//!
//! Many machines share the work of a night: each gets whole gardens, their files and what the tables know about them, and
//! returns the changes to the tables. Whoever has the tables makes them. The lookout, the worker and the bookkeeping are
//! those of [`crate::run`], for one garden at a time, so the tables are the same as after a run on one machine.
//!
//! Files come as a list ([`Listing`]) and, as far as they are needed, as files in a folder. A known log that a night needs
//! again but that was not supplied is named in [`Outcome::absent`]; then nothing is booked, and the garden must be supplied
//! again with its logs.
//!
//! Exact: the same rows as [`crate::run::run`] without suggestions. Not done here, because they need all gardens:
//! suggestions for the worst, and deleting old nights.

use crate::bucket::{Bucket, Listed, Objects, SeenFile};
use crate::clock::Clock;
use crate::job::Failed;
use crate::night::NightNumber;
use crate::pool::Hand;
use crate::run::{Done, KnownGardens, changes};
use crate::store::{DropRows, PutRow, StoreChange};
use crate::table::{FAILURES, GARDENS, LOGS, NIGHTS, POCKETS, TableRow};
use crate::{BatchError, GardenInput};
use std::collections::{BTreeMap, BTreeSet};
use std::io::{Error, ErrorKind};
use std::path::PathBuf;

/// A list of files, and a folder with those that can be read.
pub struct Listing {
    folder: PathBuf,
    files: BTreeMap<String, SeenFile>,
}

/// A path below the place with single `/` between names; `None` if it leads out of the place.
pub fn plain(path: &str) -> Option<String> {
    let mut names: Vec<&str> = Vec::new();
    for name in path.split('/') {
        match name {
            "" | "." => {}
            ".." => {
                names.pop()?;
            }
            name => names.push(name),
        }
    }
    (!path.starts_with('/')).then(|| names.join("/"))
}

impl Listing {
    /// Files by their paths below the place. Their contents have the same paths in the folder.
    pub fn new(folder: PathBuf, found: impl IntoIterator<Item = SeenFile>) -> Self {
        Self {
            folder,
            files: found
                .into_iter()
                .map(|found| (found.path.clone(), found))
                .collect(),
        }
    }
}

impl Objects for Listing {
    fn read(&self, path: &str) -> std::io::Result<Vec<u8>> {
        let plain =
            plain(path).ok_or_else(|| Error::new(ErrorKind::NotFound, "lies outside of the place"))?;
        std::fs::read(self.folder.join(plain))
    }

    fn list(&self, path: &str) -> std::io::Result<Listed> {
        let Some(folder) = plain(path) else {
            return Ok((Vec::new(), Vec::new()));
        };
        let start = if folder.is_empty() {
            String::new()
        } else {
            format!("{folder}/")
        };
        // Paths are returned under the name that was requested, as from a folder.
        let below = |name: &str| {
            if path.is_empty() {
                name.to_owned()
            } else {
                format!("{path}/{name}")
            }
        };
        let (mut folders, mut files) = (Vec::new(), Vec::new());
        for (key, found) in self.files.range(start.clone()..) {
            let Some(rest) = key.strip_prefix(&start) else {
                break;
            };
            match rest.split_once('/') {
                None => files.push(SeenFile {
                    path: below(rest),
                    ..found.clone()
                }),
                Some((name, _)) => {
                    let name = below(name);
                    if folders.last() != Some(&name) {
                        folders.push(name);
                    }
                }
            }
        }
        // "a-b/x" sorts between "a" and "a/x", so a folder may come up again.
        folders.sort();
        folders.dedup();
        Ok((folders, files))
    }
}

/// Rows that the tables have about one garden, with their nights (0 in `gardens`).
#[derive(Clone, Debug, Default, PartialEq)]
pub struct KnownRows {
    /// Of `logs`.
    pub logs: Vec<(NightNumber, TableRow)>,
    /// Of `nights`; `key` and `plan_sha256` are enough.
    pub nights: Vec<(NightNumber, TableRow)>,
    /// Of `pockets`.
    pub pockets: Vec<(NightNumber, TableRow)>,
    /// Of `failures`.
    pub failures: Vec<(NightNumber, TableRow)>,
    /// Of `gardens`.
    pub gardens: Vec<(NightNumber, TableRow)>,
}

impl KnownRows {
    /// Adds a row to its table; rows of other tables are not needed.
    pub fn push(&mut self, table: &str, night: NightNumber, row: TableRow) {
        let rows = match table {
            name if name == LOGS.name => &mut self.logs,
            name if name == NIGHTS.name => &mut self.nights,
            name if name == POCKETS.name => &mut self.pockets,
            name if name == FAILURES.name => &mut self.failures,
            name if name == GARDENS.name => &mut self.gardens,
            _ => return,
        };
        rows.push((night, row));
    }
}

/// The changes to make in the tables.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Outcome {
    /// Rows to add, after others were removed.
    pub put: Vec<PutRow>,
    /// Rows of this garden to remove.
    pub drop: Vec<DropRows>,
    /// Known logs that are needed too; if there are any, nothing is to be changed yet.
    pub absent: Vec<String>,
    /// How much was done.
    pub done: Done,
}

impl Outcome {
    fn of(change: StoreChange, done: Done) -> Self {
        let (put, drop) = change.into_parts();
        Self {
            put,
            drop,
            absent: Vec::new(),
            done,
        }
    }
}

/// What happens to a known log that a night needs again and that was not supplied.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Absent {
    /// It is requested, and nothing is booked.
    AskedFor,
    /// It is unavailable: its nights become rows of `failures`.
    Failed,
}

/// Processes one garden. `folder` is where a worker finds the files, `bucket` lists them.
///
/// # Errors
/// If no worker can be started, or the rows of the tables are not understood. Faults of a log, a night, the plan or the
/// settings become rows of `failures`.
pub fn work_apart(
    hand: &mut Hand,
    folder: &str,
    bucket: &Bucket,
    garden: &GardenInput,
    clock: Clock,
    known_rows: KnownRows,
    absent: Absent,
) -> Result<Outcome, BatchError> {
    let KnownRows {
        logs,
        nights,
        pockets,
        failures,
        gardens,
    } = known_rows;
    let known = KnownGardens::from_rows(logs, nights, failures, gardens);
    let chunk = std::slice::from_ref(garden);
    let mut done = Done {
        gardens: 1,
        ..Done::default()
    };
    let jobs = known.jobs(folder, bucket, clock, chunk, &mut done, &mut |_| {});
    let Some(job) = jobs.jobs.into_iter().next() else {
        return Ok(Outcome::of(jobs.change, done));
    };
    let answer = hand.job(&job)?;
    if absent == Absent::AskedFor && !answer.absent.is_empty() {
        return Ok(Outcome {
            absent: answer.absent,
            ..Outcome::default()
        });
    }
    let stored_pockets = |nights: std::ops::RangeInclusive<NightNumber>, gardens: &BTreeSet<&str>| {
        Ok(pockets
            .iter()
            .filter(|(night, row)| {
                nights.contains(night) && row[0].text().is_some_and(|garden| gardens.contains(garden))
            })
            .cloned()
            .collect())
    };
    let change = changes(
        |each| each(&job, answer),
        &stored_pockets,
        &known,
        chunk,
        &mut done,
        &mut |_| {},
    )?;
    Ok(Outcome::of(change, done))
}

/// The row of `failures` for a garden that could not be processed at all; its other rows stay as they are. It is booked to
/// the night in which the newest of its files arrived.
pub fn gave_up(
    garden: &GardenInput,
    clock: Clock,
    landed_unix_ms: i64,
    detail: String,
    known_rows: KnownRows,
) -> Outcome {
    let failed = Failed::of(
        "garden",
        clock.landed(landed_unix_ms, &tussock_types::GardenClock::Fixed(0)),
        "died",
        detail,
        "",
    );
    let known = KnownGardens::from_rows(Vec::new(), Vec::new(), known_rows.failures, Vec::new());
    let mut change = StoreChange::default();
    known.book_failures(garden, std::slice::from_ref(&failed), &mut change);
    Outcome::of(
        change,
        Done {
            gardens: 1,
            with_news: 1,
            failures: 1,
            ..Done::default()
        },
    )
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::bucket::{Folder, PlaceReach};
    use tempfile::TempDir;

    fn found(path: &str) -> SeenFile {
        SeenFile {
            path: path.to_owned(),
            bytes: 3,
            modified_unix_ms: 0,
        }
    }

    #[test]
    fn a_list_is_listed_as_the_folder_would_be() {
        let folder = TempDir::new().unwrap();
        let paths = [
            "a/logs/1",
            "a/logs/m/2",
            "a/logs/m.x/3",
            "a/logs/m-x",
            "a/plan",
            "a-b/logs/4",
            "c",
            "gardens.toml",
        ];
        for path in paths {
            let path = folder.path().join(path);
            std::fs::create_dir_all(path.parent().unwrap()).unwrap();
            std::fs::write(path, "log").unwrap();
        }
        let here = Bucket::over(
            "here",
            Box::new(Folder::new(folder.path().to_owned(), PlaceReach::Inside)),
        );
        let list = Bucket::over(
            "list",
            Box::new(Listing::new(folder.path().to_owned(), paths.map(found))),
        );
        let names = |bucket: &Bucket, path: &str| {
            let (folders, files) = bucket.list(path).unwrap();
            (
                folders,
                files.into_iter().map(|file| file.path).collect::<Vec<_>>(),
            )
        };
        for path in [
            "",
            "a",
            "a/logs",
            "a/logs/",
            "a/logs/m",
            "./a/logs",
            "a/../a-b/logs",
            "nowhere",
            "a/lo",
        ] {
            assert_eq!(names(&list, path), names(&here, path), "{path}");
        }
        assert_eq!(names(&list, "..").0, Vec::<String>::new());
        assert_eq!(list.read("a//logs/1").unwrap(), b"log");
        assert!(list.read("../../etc/hostname").is_err());
        assert_eq!(plain("/etc"), None);
    }
}
