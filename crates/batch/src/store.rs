//! The folder that holds everything, and the one file that says what counts.
//!
//! `tussock-store.json` lists the files that are alive. A commit writes new files beside the old ones, replaces the list in
//! one step, then removes what the list no longer names. A run that is killed before that step has changed nothing; after
//! it, everything. Whatever a killed run leaves behind is swept away by the next one.
//!
//! `snapshot` leads to a folder that holds the files of one commit and no others, the last one of a run that ended; others
//! read it while a run is writing. Its files are further names of those in the tables. The previous snapshot stays for
//! readers that have not finished.
//!
//! One run writes at a time: it holds a lock that the system releases when the process ends, however it ends. If a file
//! system has no locks, the number of the last commit is checked again before each step: a run that was overtaken keeps
//! nothing.

use crate::disk::{Disk, RealDisk};
use crate::night::NightNumber;
use crate::table::{self, Keep, OLDEST_SCHEMA_VERSION, Parted, SCHEMA_VERSION, StoreTable, TABLES, TableRow};
use crate::{BatchError, night};
use serde::{Deserialize, Serialize};
use std::collections::{BTreeMap, BTreeSet};
use std::fs::{File, TryLockError};
use std::path::{Path, PathBuf};

const RECORD: &str = "tussock-store.json";
const LOCK: &str = ".tussock-lock";
const SNAPSHOT: &str = "snapshot";
const SNAPSHOTS: &str = "snapshots";
/// After all nights: for a store in which no run has ended yet.
const AFTER_ALL: &str = "9999-12-31";
/// Files of a night are joined up to this many rows, and no more than that in one commit, because they are in memory at
/// once.
const JOINED_ROWS: usize = 50_000;
/// A row with a rolling state counts as much as this many others.
const STATE_ROWS: usize = 25;

/// The commit record.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
struct Record {
    schema_version: u32,
    tool_version: String,
    commit: u64,
    /// Nights before this one are deleted without being counted: such nights were deleted before, or no run has ended yet.
    #[serde(default)]
    expired_before: Option<String>,
    /// Files of each table that are alive, with `/` as separator, relative to the store.
    tables: BTreeMap<String, Vec<Alive>>,
}

#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
struct Alive {
    file: String,
    night: Option<String>,
    rows: usize,
}

impl Alive {
    fn night(&self) -> Option<NightNumber> {
        self.night.as_deref().and_then(night::parse)
    }
}

/// What identifies a row within its table and night: the garden, and a key if the table has one.
type RowKey = (String, Option<String>);

/// A row to add to a table and night; night 0 in a table without nights.
pub type PutRow = (&'static StoreTable, NightNumber, TableRow);
/// Rows of a garden to remove from a table and night: all, or those with one value in the second column.
pub type DropRows = (&'static StoreTable, NightNumber, Option<String>);

/// What a commit changes.
#[derive(Clone, Debug, Default)]
pub struct StoreChange {
    put: BTreeMap<(usize, Option<NightNumber>), Vec<TableRow>>,
    drop: BTreeMap<(usize, Option<NightNumber>), BTreeSet<RowKey>>,
}

impl StoreChange {
    /// Rows to add. For a table without nights the night is ignored.
    pub fn put(&mut self, table: &'static StoreTable, night: NightNumber, row: TableRow) {
        self.put.entry(place(table, night)).or_default().push(row);
    }

    /// Removes the rows of a garden (and night): all, or those with one value in the second column.
    pub fn drop(
        &mut self,
        table: &'static StoreTable,
        night: NightNumber,
        garden: &str,
        second: Option<&str>,
    ) {
        self.drop
            .entry(place(table, night))
            .or_default()
            .insert((garden.to_owned(), second.map(str::to_owned)));
    }

    /// Whether there is nothing to do.
    pub fn is_empty(&self) -> bool {
        self.put.is_empty() && self.drop.is_empty()
    }

    fn gardens_dropped(&self, at: &(usize, Option<NightNumber>)) -> BTreeSet<&str> {
        let drop = self.drop.get(at).into_iter().flatten();
        drop.map(|(garden, _)| &garden[..]).collect()
    }

    /// What to add, and what to remove.
    pub(crate) fn into_parts(self) -> (Vec<PutRow>, Vec<DropRows>) {
        let put = self.put.into_iter().flat_map(|((number, night), rows)| {
            rows.into_iter()
                .map(move |row| (TABLES[number], night.unwrap_or(0), row))
        });
        let drop = self.drop.into_iter().flat_map(|((number, night), keys)| {
            keys.into_iter()
                .map(move |(_, second)| (TABLES[number], night.unwrap_or(0), second))
        });
        (put.collect(), drop.collect())
    }

    fn drops(&self, at: &(usize, Option<NightNumber>), row: &TableRow) -> bool {
        let Some(drop) = self.drop.get(at) else {
            return false;
        };
        let garden = row[0].text().unwrap_or_default().to_owned();
        let second = row[1].text().map(str::to_owned);
        drop.contains(&(garden.clone(), None)) || drop.contains(&(garden, second))
    }
}

fn place(table: &'static StoreTable, night: NightNumber) -> (usize, Option<NightNumber>) {
    (number(table), (table.parted == Parted::ByNight).then_some(night))
}

fn number(table: &'static StoreTable) -> usize {
    TABLES.iter().position(|one| one.name == table.name).unwrap_or(0)
}

/// An open store.
pub struct Store {
    path: PathBuf,
    disk: Box<dyn Disk>,
    record: Record,
    tool_version: String,
    /// Released by the system when it is closed. None for readers.
    _lock: Option<File>,
}

impl Store {
    /// Opens a store for reading.
    ///
    /// # Errors
    /// If there is none, or it has another version.
    pub fn open(path: &Path) -> Result<Self, BatchError> {
        let disk = RealDisk;
        let record = record(&disk, path)?.ok_or_else(|| BatchError::NoStore {
            path: path.to_owned(),
            why: format!("it has no {RECORD}"),
        })?;
        Ok(Self {
            path: path.to_owned(),
            disk: Box::new(disk),
            tool_version: record.tool_version.clone(),
            record,
            _lock: None,
        })
    }

    /// Opens a store for writing, or creates it if there is none; sweeps away whatever a killed run left behind.
    ///
    /// # Errors
    /// If the folder contains something else, another run is writing, or the disk refuses.
    pub fn open_to_write(path: &Path, tool_version: &str) -> Result<Self, BatchError> {
        Self::open_on(path, tool_version, Box::new(RealDisk))
    }

    /// The same on the caller's disk.
    ///
    /// # Errors
    /// As [`Store::open_to_write`].
    pub fn open_on(path: &Path, tool_version: &str, disk: Box<dyn Disk>) -> Result<Self, BatchError> {
        let failed = |what| {
            move |source| BatchError::Disk {
                path: path.to_owned(),
                what,
                source,
            }
        };
        // Somebody else's folder is not written to.
        if record(&*disk, path)?.is_none() {
            let foreign = disk
                .list(path)
                .map_err(failed("listed"))?
                .into_iter()
                .find(|(found, _)| {
                    let name = found
                        .file_name()
                        .unwrap_or_default()
                        .to_string_lossy()
                        .into_owned();
                    name != LOCK && !name.starts_with(RECORD) && TABLES.iter().all(|table| table.name != name)
                });
            if let Some((found, _)) = foreign {
                return Err(BatchError::NoStore {
                    path: path.to_owned(),
                    why: format!("it has no {RECORD}, but {}", found.display()),
                });
            }
        }
        disk.make_folder(path).map_err(failed("made"))?;
        let lock = File::create(path.join(LOCK)).map_err(failed("locked"))?;
        match lock.try_lock() {
            Ok(()) => {}
            Err(TryLockError::WouldBlock) => {
                return Err(BatchError::InUse {
                    path: path.to_owned(),
                });
            }
            // No locks here: the number of the commit must do.
            Err(TryLockError::Error(_)) => {}
        }
        let record = record(&*disk, path)?.unwrap_or_else(|| Record {
            schema_version: SCHEMA_VERSION,
            tool_version: tool_version.to_owned(),
            commit: 0,
            expired_before: Some(AFTER_ALL.to_owned()),
            tables: TABLES
                .iter()
                .map(|table| (table.name.to_owned(), Vec::new()))
                .collect(),
        });
        let store = Self {
            path: path.to_owned(),
            disk,
            record,
            tool_version: tool_version.to_owned(),
            _lock: Some(lock),
        };
        store.sweep()?;
        Ok(store)
    }

    /// Where it is.
    pub fn path(&self) -> &Path {
        &self.path
    }

    /// Nights of a table, in order; none for a table without nights.
    pub fn nights(&self, table: &'static StoreTable) -> Vec<NightNumber> {
        let nights: BTreeSet<NightNumber> = self.alive(table).iter().filter_map(Alive::night).collect();
        nights.into_iter().collect()
    }

    /// Files that are alive.
    pub fn files(&self) -> usize {
        self.record.tables.values().map(Vec::len).sum()
    }

    /// Number of rows in a table, according to the list.
    pub(crate) fn count_rows(&self, table: &'static StoreTable) -> usize {
        self.alive(table).iter().map(|alive| alive.rows).sum()
    }

    /// Number of nights (per garden), according to the list.
    pub(crate) fn count_nights(&self, nights: std::ops::RangeInclusive<NightNumber>) -> usize {
        let files = self.alive(&table::NIGHTS).iter();
        let of_nights = files.filter(|alive| alive.night().is_some_and(|night| nights.contains(&night)));
        of_nights.map(|alive| alive.rows).sum()
    }

    /// Nights before this one are deleted without being counted.
    pub(crate) fn expired_before(&self) -> Option<NightNumber> {
        self.record.expired_before.as_deref().and_then(night::parse)
    }

    fn alive(&self, table: &'static StoreTable) -> &[Alive] {
        self.record.tables.get(table.name).map_or(&[], Vec::as_slice)
    }

    /// Rows of a table with their nights (0 for a table without), for some nights and for gardens for which `keep` holds. Columns
    /// that are not named are null.
    ///
    /// # Errors
    /// If a file cannot be read.
    pub fn rows(
        &self,
        table: &'static StoreTable,
        columns: ColumnChoice<'_>,
        nights: std::ops::RangeInclusive<NightNumber>,
        keep: &dyn Fn(&str) -> bool,
    ) -> Result<Vec<(NightNumber, TableRow)>, BatchError> {
        self.rows_kept(table, columns, nights, Keep::If(keep))
    }

    /// The same for gardens by name. The cost depends on their part of each file, not on the size of the files.
    ///
    /// # Errors
    /// If a file cannot be read.
    pub fn rows_of(
        &self,
        table: &'static StoreTable,
        columns: ColumnChoice<'_>,
        nights: std::ops::RangeInclusive<NightNumber>,
        gardens: &BTreeSet<&str>,
    ) -> Result<Vec<(NightNumber, TableRow)>, BatchError> {
        self.rows_kept(table, columns, nights, Keep::Named(gardens))
    }

    fn rows_kept(
        &self,
        table: &'static StoreTable,
        columns: ColumnChoice<'_>,
        nights: std::ops::RangeInclusive<NightNumber>,
        keep: Keep<'_>,
    ) -> Result<Vec<(NightNumber, TableRow)>, BatchError> {
        let wanted: Vec<usize> = match columns {
            ColumnChoice::All => (0..table.columns.len()).collect(),
            ColumnChoice::Some(names) => names.iter().map(|name| table.at(name)).collect(),
        };
        let mut out = Vec::new();
        for alive in self.alive(table) {
            let night = alive.night().unwrap_or(0);
            if table.parted == Parted::ByNight && !nights.contains(&night) {
                continue;
            }
            let rows = self.file_rows(table, &alive.file, &wanted, keep)?;
            out.extend(rows.into_iter().map(|row| (night, row)));
        }
        Ok(out)
    }

    fn file_rows(
        &self,
        table: &'static StoreTable,
        file: &str,
        wanted: &[usize],
        keep: Keep<'_>,
    ) -> Result<Vec<TableRow>, BatchError> {
        let path = self.path.join(file);
        let open = self.disk.open(&path).map_err(|source| BatchError::Disk {
            path,
            what: "read",
            source,
        })?;
        table::read(table, file, open, wanted, keep)
    }

    /// Makes a change, completely or not at all.
    ///
    /// # Errors
    /// If the disk refuses or another run overtook this one; the store is then unchanged.
    pub fn commit(&mut self, change: StoreChange) -> Result<(), BatchError> {
        self.commit_as(self.next_record(), change)
    }

    /// Makes a change that ends a run, and records the night before which everything is deleted.
    pub(crate) fn commit_expiry(
        &mut self,
        change: StoreChange,
        first: Option<NightNumber>,
    ) -> Result<(), BatchError> {
        let next = Record {
            expired_before: first.map(night::words),
            ..self.next_record()
        };
        if change.is_empty() && next.expired_before == self.record.expired_before {
            return Ok(());
        }
        self.commit_as(next, change)
    }

    fn commit_as(&mut self, mut next: Record, mut change: StoreChange) -> Result<(), BatchError> {
        let mut new_files: Vec<(String, Vec<u8>)> = Vec::new();
        let places: BTreeSet<(usize, Option<NightNumber>)> =
            change.put.keys().chain(change.drop.keys()).copied().collect();
        for at in places {
            let (table, night) = (TABLES[at.0], at.1);
            let mut rows = change.put.remove(&at).unwrap_or_default();
            let dropped = change.gardens_dropped(&at);
            let mut alive_after = Vec::new();
            for alive in next.tables.remove(table.name).unwrap_or_default() {
                let left = if alive.night() == night && !dropped.is_empty() {
                    self.rows_left(table, &alive, &change, &at, &dropped)?
                } else {
                    None
                };
                match left {
                    Some(left) => rows.extend(left),
                    None => alive_after.push(alive),
                }
            }
            if !rows.is_empty() {
                alive_after.push(new_file(table, night, rows, &next, &mut new_files)?);
                alive_after.sort_by_key(Alive::night);
            }
            next.tables.insert(table.name.to_owned(), alive_after);
        }
        self.put_in_place(next, &new_files)
    }

    /// What a change leaves of a file; `None` if it removes nothing from it. Most files of a night contain none of the
    /// gardens in question, so their names are checked first.
    fn rows_left(
        &self,
        table: &'static StoreTable,
        alive: &Alive,
        change: &StoreChange,
        at: &(usize, Option<NightNumber>),
        dropped: &BTreeSet<&str>,
    ) -> Result<Option<Vec<TableRow>>, BatchError> {
        if self
            .file_rows(table, &alive.file, &[], Keep::Named(dropped))?
            .is_empty()
        {
            return Ok(None);
        }
        let mut rows = self.whole_file(table, alive)?;
        let before = rows.len();
        rows.retain(|row| !change.drops(at, row));
        Ok((rows.len() < before).then_some(rows))
    }

    fn whole_file(&self, table: &'static StoreTable, alive: &Alive) -> Result<Vec<TableRow>, BatchError> {
        let all: Vec<usize> = (0..table.columns.len()).collect();
        self.file_rows(table, &alive.file, &all, Keep::All)
    }

    fn next_record(&self) -> Record {
        Record {
            schema_version: SCHEMA_VERSION,
            commit: self.record.commit + 1,
            tool_version: self.tool_version.clone(),
            ..self.record.clone()
        }
    }

    /// Joins small files of a night, as many as fit into memory; the rows stay the same. Returns false if there is nothing
    /// to join; call it until then.
    ///
    /// # Errors
    /// As [`Store::commit`].
    pub fn join(&mut self) -> Result<bool, BatchError> {
        let mut next = self.next_record();
        let mut new_files: Vec<(String, Vec<u8>)> = Vec::new();
        let mut room = JOINED_ROWS;
        for table in TABLES {
            let mut alive_after = Vec::new();
            for (night, files) in by_night(self.alive(table)) {
                for group in groups_to_join(table, files, &mut room) {
                    if group.len() == 1 {
                        alive_after.extend(group);
                        continue;
                    }
                    let mut rows = Vec::new();
                    for alive in &group {
                        rows.extend(self.whole_file(table, alive)?);
                    }
                    alive_after.push(new_file(table, night, rows, &next, &mut new_files)?);
                }
            }
            next.tables.insert(table.name.to_owned(), alive_after);
        }
        if new_files.is_empty() {
            return Ok(false);
        }
        self.put_in_place(next, &new_files)?;
        Ok(true)
    }

    /// Makes `snapshot` lead to what the store holds now.
    ///
    /// # Errors
    /// If the disk refuses; it then leads where it did before.
    pub fn publish(&self, before: Before) -> Result<(), BatchError> {
        let all = self.path.join(SNAPSHOTS);
        let name = format!("{:08}", self.record.commit);
        let failed = |source| BatchError::Disk {
            path: all.join(&name),
            what: "written",
            source,
        };
        let mut known: Vec<String> = self
            .disk
            .list(&all)
            .map_err(failed)?
            .iter()
            .filter_map(|(path, _)| Some(path.file_name()?.to_str()?.to_owned()))
            .collect();
        if !known.contains(&name) {
            let part = all.join(format!("{name}.part"));
            if known.contains(&format!("{name}.part")) {
                self.disk.remove_folder(&part).map_err(failed)?;
            }
            self.disk.make_folder(&part).map_err(failed)?;
            for alive in self.record.tables.values().flatten() {
                let to = part.join(&alive.file);
                self.disk
                    .make_folder(to.parent().unwrap_or(&part))
                    .map_err(failed)?;
                self.disk
                    .link(&self.path.join(&alive.file), &to)
                    .map_err(failed)?;
            }
            self.disk.rename(&part, &all.join(&name)).map_err(failed)?;
        }
        let leads = self.path.join(SNAPSHOT);
        let failed_there = |source| BatchError::Disk {
            path: leads.clone(),
            what: "written",
            source,
        };
        // A store that was copied by following its links has a folder of copies there.
        let is_folder = |(path, is_folder): &(PathBuf, bool)| *is_folder && *path == leads;
        let is_copy = self
            .disk
            .list(&self.path)
            .map_err(failed_there)?
            .iter()
            .any(is_folder)
            && holds_rows_alone(&*self.disk, &leads).map_err(failed_there)?;
        if is_copy {
            self.disk.remove_folder(&leads).map_err(failed_there)?;
        }
        self.disk
            .lead(&leads, &Path::new(SNAPSHOTS).join(&name))
            .map_err(failed_there)?;
        known.retain(|one| *one < name);
        if before == Before::Stays {
            known.pop_if(|newest| !newest.ends_with(".part"));
        }
        for old in known {
            self.disk.remove_folder(&all.join(old)).map_err(failed)?;
        }
        Ok(())
    }

    /// Files of a table that count, with their nights.
    pub fn table_files(&self, table: &'static StoreTable) -> Vec<(Option<NightNumber>, PathBuf)> {
        self.alive(table)
            .iter()
            .map(|alive| (alive.night(), self.path.join(&alive.file)))
            .collect()
    }

    /// Adds files that others wrote, replacing everything that the store has in some tables and nights; completely or not at
    /// all. The files are checked and copied; the originals stay where they are.
    ///
    /// # Errors
    /// If a file does not belong to its table, the disk refuses or another run overtook this one; the store is then
    /// unchanged.
    pub fn adopt(
        &mut self,
        renewed: &[(&'static StoreTable, Option<NightNumber>)],
        written: &[(&'static StoreTable, Option<NightNumber>, PathBuf)],
    ) -> Result<(), BatchError> {
        let mut next = self.next_record();
        for (table, night) in renewed {
            if let Some(files) = next.tables.get_mut(table.name) {
                files.retain(|alive| alive.night() != *night);
            }
        }
        let mut new_files: Vec<(String, Vec<u8>)> = Vec::new();
        for (table, night, path) in written {
            let bytes = self.disk.read(path).map_err(|source| BatchError::Disk {
                path: path.clone(),
                what: "read",
                source,
            })?;
            let rows = table::rows_in(table, &path.display().to_string(), bytes.clone().into())?;
            let file = file_name(table, *night, next.commit, new_files.len(), &bytes);
            next.tables.entry(table.name.to_owned()).or_default().push(Alive {
                file: file.clone(),
                night: night.map(night::words),
                rows,
            });
            new_files.push((file, bytes));
        }
        self.put_in_place(next, &new_files)
    }

    fn put_in_place(&mut self, next: Record, new_files: &[(String, Vec<u8>)]) -> Result<(), BatchError> {
        for (file, bytes) in new_files {
            let path = self.path.join(file);
            let failed = |source| BatchError::Disk {
                path: path.clone(),
                what: "written",
                source,
            };
            if let Some(folder) = path.parent() {
                self.disk.make_folder(folder).map_err(failed)?;
            }
            // Readers that list the folder take whatever ends in .parquet, so only whole files get that name.
            let part = path.with_extension("part");
            self.disk.write(&part, bytes).map_err(failed)?;
            self.disk.rename(&part, &path).map_err(failed)?;
        }
        let mut text = serde_json::to_vec_pretty(&next)?;
        text.push(b'\n');
        let (path, part) = (self.path.join(RECORD), self.path.join(format!("{RECORD}.part")));
        let failed = |source| BatchError::Disk {
            path: path.clone(),
            what: "written",
            source,
        };
        self.disk.write(&part, &text).map_err(failed)?;
        let found = record(&*self.disk, &self.path)?.map_or(0, |record| record.commit);
        if found != self.record.commit {
            return Err(BatchError::Overtaken {
                path: self.path.clone(),
                found,
                expected: self.record.commit,
            });
        }
        self.disk.rename(&part, &path).map_err(failed)?;
        let before = std::mem::replace(&mut self.record, next);
        let alive: BTreeSet<&String> = self
            .record
            .tables
            .values()
            .flatten()
            .map(|alive| &alive.file)
            .collect();
        for gone in before
            .tables
            .values()
            .flatten()
            .filter(|gone| !alive.contains(&gone.file))
        {
            // The record is in place: what cannot be removed now is swept away later.
            let _ = self.disk.remove(&self.path.join(&gone.file));
        }
        Ok(())
    }

    /// Removes files in the folders of the tables that no commit names.
    fn sweep(&self) -> Result<(), BatchError> {
        let alive: BTreeSet<PathBuf> = self
            .record
            .tables
            .values()
            .flatten()
            .map(|alive| self.path.join(&alive.file))
            .collect();
        let list = |path: &Path| {
            self.disk.list(path).map_err(|source| BatchError::Disk {
                path: path.to_owned(),
                what: "listed",
                source,
            })
        };
        for table in TABLES {
            for (path, is_folder) in list(&self.path.join(table.name))? {
                let files = if is_folder {
                    list(&path)?
                } else {
                    vec![(path, false)]
                };
                for (file, is_folder) in files {
                    let is_ours = file
                        .extension()
                        .is_some_and(|ending| ending == "parquet" || ending == "part");
                    if !is_folder && is_ours && !alive.contains(&file) {
                        self.disk.remove(&file).map_err(|source| BatchError::Disk {
                            path: file.clone(),
                            what: "swept away",
                            source,
                        })?;
                    }
                }
            }
        }
        Ok(())
    }
}

/// A new file with some rows, to be written when the record is replaced.
fn new_file(
    table: &'static StoreTable,
    night: Option<NightNumber>,
    rows: Vec<TableRow>,
    next: &Record,
    new_files: &mut Vec<(String, Vec<u8>)>,
) -> Result<Alive, BatchError> {
    let count = rows.len();
    let bytes = table::write(table, rows, &next.tool_version)?;
    let file = file_name(table, night, next.commit, new_files.len(), &bytes);
    new_files.push((file.clone(), bytes));
    Ok(Alive {
        file,
        night: night.map(night::words),
        rows: count,
    })
}

fn file_name(
    table: &StoreTable,
    night: Option<NightNumber>,
    commit: u64,
    number: usize,
    bytes: &[u8],
) -> String {
    // Two runs that write at once on a disk without locks must not take each other's names.
    let digest = &tussock_ingest::digest(bytes)[..8];
    format!(
        "{}/part-{commit:08}-{number}-{digest}.parquet",
        table.folder(night)
    )
}

fn by_night(files: &[Alive]) -> BTreeMap<Option<NightNumber>, Vec<Alive>> {
    let mut out: BTreeMap<Option<NightNumber>, Vec<Alive>> = BTreeMap::new();
    for alive in files {
        out.entry(alive.night()).or_default().push(alive.clone());
    }
    out
}

/// Files of a night in groups that will be one file each; most are alone. What is joined is subtracted from the room.
fn groups_to_join(table: &StoreTable, files: Vec<Alive>, room: &mut usize) -> Vec<Vec<Alive>> {
    let row_weight = if table.parted == Parted::Not {
        STATE_ROWS
    } else {
        1
    };
    let mut groups: Vec<Vec<Alive>> = Vec::new();
    let mut open = 0;
    for file in files {
        let weight = file.rows * row_weight;
        // The first two of a group both take space.
        let needed = match groups.last() {
            Some(group) if group.len() == 1 => open + weight,
            _ => weight,
        };
        match groups.last_mut() {
            Some(group) if open + weight <= JOINED_ROWS && needed <= *room => {
                *room -= needed;
                open += weight;
                group.push(file);
            }
            _ => {
                open = weight;
                groups.push(vec![file]);
            }
        }
    }
    groups
}

/// Whether a folder contains tables and nothing else.
fn holds_rows_alone(disk: &dyn Disk, folder: &Path) -> std::io::Result<bool> {
    for (path, is_folder) in disk.list(folder)? {
        let is_ours = match is_folder {
            true => holds_rows_alone(disk, &path)?,
            false => path.extension().is_some_and(|ending| ending == "parquet"),
        };
        if !is_ours {
            return Ok(false);
        }
    }
    Ok(true)
}

/// What happens to the previous snapshot.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Before {
    /// It stays until the next, for readers that have not finished.
    Stays,
    /// It is removed: a customer was forgotten.
    Goes,
}

/// Which columns are read.
#[derive(Clone, Copy, Debug)]
pub enum ColumnChoice<'a> {
    /// All.
    All,
    /// These; `garden` always.
    Some(&'a [&'a str]),
}

fn record(disk: &dyn Disk, path: &Path) -> Result<Option<Record>, BatchError> {
    let file = path.join(RECORD);
    let bytes = match disk.read(&file) {
        Ok(bytes) => bytes,
        Err(error)
            if matches!(
                error.kind(),
                std::io::ErrorKind::NotFound | std::io::ErrorKind::NotADirectory
            ) =>
        {
            return Ok(None);
        }
        Err(source) => {
            return Err(BatchError::Disk {
                path: file,
                what: "read",
                source,
            });
        }
    };
    #[derive(Deserialize)]
    struct Version {
        schema_version: u32,
    }
    let no_store = |error: serde_json::Error| BatchError::NoStore {
        path: path.to_owned(),
        why: format!("{RECORD} is not one of ours: {error}"),
    };
    let version: Version = serde_json::from_slice(&bytes).map_err(no_store)?;
    if !(OLDEST_SCHEMA_VERSION..=SCHEMA_VERSION).contains(&version.schema_version) {
        return Err(BatchError::SchemaVersion {
            path: path.to_owned(),
            found: version.schema_version,
            expected: SCHEMA_VERSION,
        });
    }
    serde_json::from_slice(&bytes).map(Some).map_err(no_store)
}

#[cfg(test)]
#[path = "store_tests.rs"]
mod tests;
