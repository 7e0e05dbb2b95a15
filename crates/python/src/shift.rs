//! Many gardens on many machines: what `tussock.spark` stands on.
//!
//! The engine brings files and rows and takes rows away; what is said of a garden is said by the code of the night shift, in a
//! worker process that a log may hang or end without taking the engine's process with it.

use crate::door::{Class, Fault, work};
use pyo3::exceptions::PyKeyError;
use pyo3::prelude::*;
use pyo3::types::{PyBytes, PyDict, PyList};
use std::path::PathBuf;
use std::sync::{Mutex, PoisonError};
use tussock_batch::apart::{Absent, KnownRows, Listing, Outcome, gave_up, plain, work_apart};
use tussock_batch::night::{self, NightNumber};
use tussock_batch::pool::{self, Crew};
use tussock_batch::table::{ColumnKind, Parted, StoreTable, TABLES, TableRow, Value};
use tussock_batch::{
    BatchError, Before, Bucket, Clock, GardenInput, Listed, MANIFEST, Objects, SeenFile, gardens,
};

/// Path below the place, bytes, and when it was last written in milliseconds since 1970.
type FoundFile = (String, u64, i64);
/// Table, night and values by their names.
type KnownRow<'py> = (String, Option<String>, Bound<'py, PyDict>);

impl From<BatchError> for Fault {
    fn from(error: BatchError) -> Self {
        Self::of(Class::Batch, &error)
    }
}

/// Now, seconds since 1970, the hour at which a night turns, and days after which a log is too old to be believed.
type Time = (f64, u8, i32);

const fn clock((now_unix_s, night_turns_at_h, oldest_log_days): Time) -> Clock {
    Clock {
        now_unix_s,
        night_turns_at_h,
        oldest_log_days,
    }
}

fn found(files: Vec<FoundFile>) -> Vec<SeenFile> {
    files
        .into_iter()
        .map(|(path, bytes, modified_unix_ms)| SeenFile {
            path,
            bytes,
            modified_unix_ms,
        })
        .collect()
}

fn table(name: &str) -> PyResult<&'static StoreTable> {
    TABLES
        .into_iter()
        .find(|table| table.name == name)
        .ok_or_else(|| PyKeyError::new_err(format!("{name} is no table")))
}

fn night_of(words: Option<&str>) -> PyResult<Option<NightNumber>> {
    words
        .map(|words| {
            night::parse(words).ok_or_else(|| {
                PyKeyError::new_err(format!("{words} is no night, expected one such as 2026-05-01"))
            })
        })
        .transpose()
}

fn words_of(table: &StoreTable, night: NightNumber) -> Option<String> {
    (table.parted == Parted::ByNight).then(|| night::words(night))
}

fn row_in(table: &StoreTable, given: &Bound<'_, PyDict>) -> PyResult<TableRow> {
    let mut row = table.empty();
    for (value, column) in row.iter_mut().zip(table.columns) {
        let Some(found) = given.get_item(column.name)?.filter(|found| !found.is_none()) else {
            continue;
        };
        *value = match column.kind {
            ColumnKind::Text => Value::Text(found.extract()?),
            ColumnKind::Count => Value::Count(found.extract()?),
            ColumnKind::Number => Value::Number(found.extract()?),
            ColumnKind::Packed => Value::Packed(found.extract()?),
        };
    }
    Ok(row)
}

fn row_out<'py>(py: Python<'py>, table: &StoreTable, row: &TableRow) -> PyResult<Bound<'py, PyDict>> {
    let out = PyDict::new(py);
    for (value, column) in row.iter().zip(table.columns) {
        match value {
            Value::Null => out.set_item(column.name, py.None()),
            Value::Text(text) => out.set_item(column.name, text),
            Value::Count(count) => out.set_item(column.name, count),
            Value::Number(number) => out.set_item(column.name, number),
            Value::Packed(bytes) => out.set_item(column.name, PyBytes::new(py, bytes)),
        }?;
    }
    Ok(out)
}

fn outcome_out<'py>(py: Python<'py>, outcome: Outcome) -> PyResult<Bound<'py, PyDict>> {
    let put = PyList::empty(py);
    for (table, night, row) in &outcome.put {
        put.append((table.name, words_of(table, *night), row_out(py, table, row)?))?;
    }
    let drop = PyList::empty(py);
    for (table, night, second) in &outcome.drop {
        drop.append((table.name, words_of(table, *night), second))?;
    }
    let out = PyDict::new(py);
    out.set_item("put", put)?;
    out.set_item("drop", drop)?;
    out.set_item("absent", outcome.absent)?;
    out.set_item("with_news", outcome.done.with_news)?;
    out.set_item("logs", outcome.done.logs)?;
    out.set_item("nights", outcome.done.nights)?;
    out.set_item("failures", outcome.done.failures)?;
    Ok(out)
}

/// A table: its name, whether it is parted by night, and its columns with their types.
type TableFace = (&'static str, bool, Vec<(&'static str, &'static str)>);

/// Tables: name, whether by night, and columns with what they hold.
#[pyfunction]
pub(crate) fn batch_tables() -> Vec<TableFace> {
    let kind = |kind: ColumnKind| match kind {
        ColumnKind::Text => "text",
        ColumnKind::Count => "count",
        ColumnKind::Number => "number",
        ColumnKind::Packed => "packed",
    };
    TABLES
        .into_iter()
        .map(|table| {
            let columns = table
                .columns
                .iter()
                .map(|column| (column.name, kind(column.kind)));
            (table.name, table.parted == Parted::ByNight, columns.collect())
        })
        .collect()
}

/// Files of a place, and the manifest's content.
struct ShiftPlace {
    listing: Listing,
    manifest: Vec<u8>,
}

impl Objects for ShiftPlace {
    fn read(&self, path: &str) -> std::io::Result<Vec<u8>> {
        if path == MANIFEST {
            return Ok(self.manifest.clone());
        }
        Err(std::io::ErrorKind::NotFound.into())
    }

    fn list(&self, path: &str) -> std::io::Result<Listed> {
        self.listing.list(path)
    }
}

/// Which gardens are there: the hour at which a night turns and days after which a log is too old, days that are kept, and of each garden its name, itself as JSON, its
/// plan and settings, and its logs, each with its path as the tables name it and its plain path.
#[pyfunction]
#[expect(clippy::type_complexity, reason = "unpacked where it is called")]
pub(crate) fn batch_lookout(
    py: Python<'_>,
    files: Vec<FoundFile>,
    manifest: Option<Vec<u8>>,
) -> PyResult<(
    (u8, i32),
    Option<i32>,
    Vec<(String, String, Vec<String>, Vec<(String, String)>)>,
)> {
    work(py, move || {
        let place = ShiftPlace {
            listing: Listing::new(PathBuf::new(), found(files)),
            manifest: manifest.unwrap_or_default(),
        };
        let bucket = Bucket::over("the place of the gardens", Box::new(place));
        let wishes = gardens(&bucket)?;
        let mut out = Vec::with_capacity(wishes.gardens.len());
        for garden in wishes.gardens {
            let json = serde_json::to_string(&garden).map_err(|error| Fault::of(Class::Batch, &error))?;
            let logs = garden.logs(&bucket)?;
            let logs = logs
                .into_iter()
                .filter_map(|log| Some((plain(&log.found.path)?, log.found.path)))
                .map(|(plain, named)| (named, plain));
            let setup = [&garden.plan, &garden.settings];
            out.push((
                garden.name.clone(),
                json,
                setup.into_iter().filter_map(|path| plain(path)).collect(),
                logs.collect(),
            ));
        }
        let time = (wishes.night_turns_at_h, wishes.oldest_log_days);
        Ok((time, wishes.retention_days, out))
    })
}

/// A worker process: reads jobs from the standard input until it ends.
#[pyfunction]
pub(crate) fn batch_worker(py: Python<'_>, memory_limit_mib: u64) -> PyResult<()> {
    py.detach(|| {
        tussock_batch::work::limit_memory(memory_limit_mib << 20)?;
        tussock_batch::work::serve(std::io::stdin().lock(), std::io::stdout().lock())
    })?;
    Ok(())
}

/// Works through gardens one after the other, with a worker process that is kept.
#[pyclass(frozen, module = "tussock._tussock")]
pub(crate) struct Hand {
    inner: Mutex<pool::Hand>,
}

/// One garden as a machine gets it.
struct Brought {
    garden: GardenInput,
    files: Vec<SeenFile>,
    known: KnownRows,
}

impl Brought {
    fn of(garden: &str, files: Vec<FoundFile>, known: Vec<KnownRow<'_>>) -> PyResult<Self> {
        let mut rows = KnownRows::default();
        for (name, night, row) in known {
            let table = table(&name)?;
            rows.push(
                table.name,
                night_of(night.as_deref())?.unwrap_or(0),
                row_in(table, &row)?,
            );
        }
        let garden = serde_json::from_str(garden)
            .map_err(|error| PyKeyError::new_err(format!("the garden cannot be understood: {error}")))?;
        Ok(Self {
            garden,
            files: found(files),
            known: rows,
        })
    }
}

#[pymethods]
impl Hand {
    #[new]
    fn new(program: PathBuf, arguments: Vec<String>, longest_s: f64) -> Self {
        Self {
            inner: Mutex::new(pool::Hand::new(Crew {
                program,
                arguments: arguments.into_iter().map(Into::into).collect(),
                workers: 1,
                longest_s,
            })),
        }
    }

    /// Works through a garden whose files lie in a folder: what is to change in the tables. Known logs that are needed and are not
    /// there are asked for, unless it is the last time.
    #[expect(clippy::too_many_arguments, reason = "called in one place, by position")]
    fn garden<'py>(
        &self,
        py: Python<'py>,
        folder: String,
        garden: &str,
        time: Time,
        files: Vec<FoundFile>,
        known: Vec<KnownRow<'py>>,
        is_last: bool,
    ) -> PyResult<Bound<'py, PyDict>> {
        let absent = if is_last { Absent::Failed } else { Absent::AskedFor };
        let Brought { garden, files, known } = Brought::of(garden, files, known)?;
        let outcome = work(py, || {
            let bucket = Bucket::over(&folder, Box::new(Listing::new(PathBuf::from(&folder), files)));
            let mut hand = self.inner.lock().unwrap_or_else(PoisonError::into_inner);
            Ok(work_apart(
                &mut hand,
                &folder,
                &bucket,
                &garden,
                clock(time),
                known,
                absent,
            )?)
        })?;
        outcome_out(py, outcome)
    }
}

/// What is to change in the tables where a garden could not be worked through at all.
#[pyfunction]
pub(crate) fn batch_gave_up<'py>(
    py: Python<'py>,
    garden: &str,
    time: Time,
    files: Vec<FoundFile>,
    known: Vec<KnownRow<'py>>,
    detail: String,
) -> PyResult<Bound<'py, PyDict>> {
    let Brought { garden, files, known } = Brought::of(garden, files, known)?;
    let landed_unix_ms = files.iter().map(|file| file.modified_unix_ms).max().unwrap_or(0);
    let outcome = gave_up(&garden, clock(time), landed_unix_ms, detail, known);
    outcome_out(py, outcome)
}

/// An open store; others wait until it is closed.
#[pyclass(frozen, module = "tussock._tussock")]
pub(crate) struct Store {
    inner: Mutex<Option<tussock_batch::Store>>,
}

impl Store {
    fn with<T: Send>(
        &self,
        py: Python<'_>,
        job: impl FnOnce(&mut tussock_batch::Store) -> Result<T, BatchError> + Send,
    ) -> PyResult<T> {
        work(py, || {
            let mut inner = self.inner.lock().unwrap_or_else(PoisonError::into_inner);
            match &mut *inner {
                Some(store) => Ok(job(store)?),
                None => Err(Fault::new(
                    Class::Batch,
                    "closed",
                    "the store is closed, expected an open one",
                )),
            }
        })
    }
}

type Part = (String, Option<String>);

fn part((name, night): &Part) -> PyResult<(&'static StoreTable, Option<NightNumber>)> {
    Ok((table(name)?, night_of(night.as_deref())?))
}

#[pymethods]
impl Store {
    #[new]
    fn new(py: Python<'_>, path: PathBuf) -> PyResult<Self> {
        let store = work(py, || {
            Ok(tussock_batch::Store::open_to_write(&path, tussock::TOOL_VERSION)?)
        })?;
        Ok(Self {
            inner: Mutex::new(Some(store)),
        })
    }

    /// Files of a table that count, with their nights.
    fn files(&self, py: Python<'_>, name: &str) -> PyResult<Vec<(Option<String>, PathBuf)>> {
        let table = table(name)?;
        self.with(py, |store| {
            let files = store.table_files(table).into_iter();
            Ok(files
                .map(|(night, path)| (night.map(night::words), path))
                .collect())
        })
    }

    /// Takes in files in the place of all that some parts of tables have.
    fn adopt(&self, py: Python<'_>, renewed: Vec<Part>, written: Vec<(Part, PathBuf)>) -> PyResult<()> {
        let renewed = renewed.iter().map(part).collect::<PyResult<Vec<_>>>()?;
        let written = written
            .iter()
            .map(|(where_to, path)| part(where_to).map(|(table, night)| (table, night, path.clone())))
            .collect::<PyResult<Vec<_>>>()?;
        self.with(py, |store| store.adopt(&renewed, &written))
    }

    /// Ends a run: works alarms out anew, and takes nights away that are older than so many days before the newest that can have
    /// begun. Returns how many rows went.
    fn expire(
        &self,
        py: Python<'_>,
        days: Option<i32>,
        time: Time,
        at_most_fraction: f64,
    ) -> PyResult<usize> {
        self.with(py, |store| {
            store.renew_alarms()?;
            let expired = store.expire(days, clock(time), at_most_fraction)?;
            store.publish(Before::Stays)?;
            Ok(expired.rows)
        })
    }

    /// How many files count.
    fn count(&self, py: Python<'_>) -> PyResult<usize> {
        self.with(py, |store| Ok(store.files()))
    }

    /// Lets others write.
    fn close(&self) {
        self.inner.lock().unwrap_or_else(PoisonError::into_inner).take();
    }
}
