//! What has come in since yesterday, and what does it show?
//!
//! Gardens are taken in hundreds, in the order of their names. For each hundred the store says what is known about every log
//! and night; only gardens with something new become jobs. Their results are committed together: a run that is stopped has
//! lost at most the hundred that it was working on, and the next one does just that hundred again.
//!
//! A log is identified by path, size and time of last change, and by its content if these are new. A log that failed is not
//! tried again by the same version of the tool unless it changed; one that could not be fetched is.

use crate::bucket::{Bucket, PlaceReach};
use crate::clock::Clock;
use crate::forget::Expired;
use crate::gardens::{GardenInput, Wishes};
use crate::job::{Failed, GardenAnswer, GardenJob, LogRef};
use crate::last_visits::LastVisits;
use crate::night::{self, NightNumber};
use crate::pool::Crew;
use crate::store::{ColumnChoice, Store, StoreChange};
use crate::table::{
    FAILURES, GARDENS, LOGS, NIGHTS, POCKETS, STUCK_SPOTS, SUGGESTIONS, TableRow, Value, row,
};
use crate::{BatchError, gardens, identity, rows, work};
use base64::{Engine, engine::general_purpose::STANDARD};
use std::collections::{BTreeMap, BTreeSet, HashMap};
use std::path::PathBuf;
use tussock_types::GardenClock;

/// Gardens that are committed together.
pub const USUAL_CHUNK: usize = 200;
const EVER: std::ops::RangeInclusive<NightNumber> = NightNumber::MIN..=NightNumber::MAX;

/// The work to do.
pub struct Shift {
    /// Place of the gardens: a folder or bucket.
    pub place: String,
    /// Folder of the store.
    pub store: PathBuf,
    /// The workers.
    pub crew: Crew,
    /// Gardens that are committed together, usually [`USUAL_CHUNK`].
    pub chunk: usize,
    /// Whether suggestions are made for the worst gardens.
    pub advice: tussock::Advice,
    /// Now, seconds since 1970.
    pub now_unix_s: f64,
    /// Share of the nights that may expire in one run, usually [`crate::forget::USUAL_EXPIRY_FRACTION`].
    pub expire_at_most_fraction: f64,
    /// Whether the place may lead elsewhere.
    pub reach: PlaceReach,
}

/// What is reported while it runs.
#[derive(Clone, Debug, PartialEq)]
pub enum ShiftNews {
    /// This many gardens were found.
    Gardens(usize),
    /// A garden is done.
    Garden {
        /// Its name.
        garden: String,
        /// Logs that were read.
        logs: usize,
        /// Nights that were analysed.
        nights: usize,
        /// What failed.
        failed: Vec<Failed>,
    },
    /// This many gardens are done, including those without news.
    Behind(usize),
    /// Suggestions are being made for this many gardens.
    Advising(usize),
    /// Nights were deleted because they were too old.
    Expired(Expired),
}

/// What a run did.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Done {
    /// Gardens that were found.
    pub gardens: usize,
    /// Logs that exist, including known ones.
    pub found: usize,
    /// Logs of these gardens that the store knew before the run; if no garden was found, gardens that it knew.
    pub known: usize,
    /// Gardens with something new.
    pub with_news: usize,
    /// Logs that were read.
    pub logs: usize,
    /// Nights that were analysed.
    pub nights: usize,
    /// Things that failed in this run.
    pub failures: usize,
    /// Rows deleted because they were too old.
    pub expired: usize,
    /// Files in the store.
    pub files: usize,
}

/// Does a night's work.
///
/// # Errors
/// If the place or the store cannot be used. Faults of one log or garden become rows of `failures` and are counted.
pub fn run(run: &Shift, tell: &mut dyn FnMut(ShiftNews)) -> Result<Done, BatchError> {
    let bucket = Bucket::open(&run.place, run.reach)?;
    run_over(run, &bucket, tell)
}

/// The same over the caller's bucket; workers open `run.place` for themselves.
///
/// # Errors
/// As [`run`].
pub fn run_over(run: &Shift, bucket: &Bucket, tell: &mut dyn FnMut(ShiftNews)) -> Result<Done, BatchError> {
    let wishes = gardens(bucket)?;
    let clock = wishes.clock(run.now_unix_s);
    let mut store = Store::open_to_write(&run.store, tussock::TOOL_VERSION)?;
    let known_gardens = store.count_rows(&GARDENS);
    let mut done = Done {
        gardens: wishes.gardens.len(),
        ..Done::default()
    };
    tell(ShiftNews::Gardens(done.gardens));
    let mut behind = 0;
    for chunk in wishes.gardens.chunks(run.chunk.max(1)) {
        let known = KnownGardens::of(&store, chunk)?;
        done.known += known.logs.values().map(Vec::len).sum::<usize>();
        let jobs = known.jobs(&run.place, bucket, clock, chunk, &mut done, tell);
        if !jobs.change.is_empty() {
            store.commit(jobs.change)?;
        }
        do_jobs(run, &mut store, &known, chunk, jobs.jobs, &mut done, tell)?;
        behind += chunk.len();
        tell(ShiftNews::Behind(behind));
    }
    if run.advice == tussock::Advice::Given {
        advise((run, clock), bucket, &mut store, &wishes, &mut done, tell)?;
    }
    store.renew_alarms()?;
    let expired = store.expire(wishes.retention_days, clock, run.expire_at_most_fraction)?;
    done.expired = expired.rows;
    if expired.rows > 0 {
        tell(ShiftNews::Expired(expired));
    }
    while store.join()? {}
    store.publish(crate::Before::Stays)?;
    done.files = store.files();
    if done.gardens == 0 {
        done.known = known_gardens;
    }
    Ok(done)
}

/// What the store knows about some gardens.
#[derive(Default)]
pub(crate) struct KnownGardens {
    logs: HashMap<String, Vec<(NightNumber, TableRow)>>,
    nights: HashMap<String, BTreeMap<NightNumber, (String, String)>>,
    failures: HashMap<String, Vec<(NightNumber, TableRow)>>,
    gardens: HashMap<String, TableRow>,
    pub(crate) wanted: JobsFor,
}

/// Which gardens become jobs.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(crate) enum JobsFor {
    /// Those with something new.
    #[default]
    News,
    /// All: a dry run.
    All,
}

pub(crate) struct Jobs {
    pub(crate) jobs: Vec<GardenJob>,
    /// The failures that the lookout itself found.
    pub(crate) change: StoreChange,
}

fn by_garden(rows: Vec<(NightNumber, TableRow)>) -> HashMap<String, Vec<(NightNumber, TableRow)>> {
    let mut out: HashMap<String, Vec<(NightNumber, TableRow)>> = HashMap::new();
    for (night, row) in rows {
        out.entry(row[0].text().unwrap_or_default().to_owned())
            .or_default()
            .push((night, row));
    }
    out
}

/// The rows of one garden.
fn of<'a>(
    rows: &'a HashMap<String, Vec<(NightNumber, TableRow)>>,
    garden: &str,
) -> impl Iterator<Item = &'a (NightNumber, TableRow)> {
    rows.get(garden).into_iter().flatten()
}

/// A row under the path in its second column.
fn by_path((_, row): &(NightNumber, TableRow)) -> Option<(&str, &TableRow)> {
    Some((row[1].text()?, row))
}

impl KnownGardens {
    fn of(store: &Store, chunk: &[GardenInput]) -> Result<Self, BatchError> {
        let names: BTreeSet<&str> = chunk.iter().map(|garden| &garden.name[..]).collect();
        let logs = store.rows_of(&LOGS, ColumnChoice::All, EVER, &names)?;
        let nights = store.rows_of(&NIGHTS, ColumnChoice::Some(&["key", "plan_sha256"]), EVER, &names)?;
        let failures = store.rows_of(&FAILURES, ColumnChoice::All, EVER, &names)?;
        let gardens = store.rows_of(&GARDENS, ColumnChoice::All, EVER, &names)?;
        Ok(Self::from_rows(logs, nights, failures, gardens))
    }

    /// The same from the rows of each table.
    pub(crate) fn from_rows(
        logs: Vec<(NightNumber, TableRow)>,
        nights: Vec<(NightNumber, TableRow)>,
        failures: Vec<(NightNumber, TableRow)>,
        gardens: Vec<(NightNumber, TableRow)>,
    ) -> Self {
        let text = |row: &TableRow, name: &str| row[NIGHTS.at(name)].text().unwrap_or_default().to_owned();
        let mut by_night: HashMap<String, BTreeMap<NightNumber, (String, String)>> = HashMap::new();
        for (night, row) in nights {
            by_night
                .entry(row[0].text().unwrap_or_default().to_owned())
                .or_default()
                .insert(night, (text(&row, "key"), text(&row, "plan_sha256")));
        }
        Self {
            logs: by_garden(logs),
            nights: by_night,
            failures: by_garden(failures),
            gardens: gardens
                .into_iter()
                .map(|(_, row)| (row[0].text().unwrap_or_default().to_owned(), row))
                .collect(),
            wanted: JobsFor::News,
        }
    }

    pub(crate) fn jobs(
        &self,
        place: &str,
        bucket: &Bucket,
        clock: Clock,
        chunk: &[GardenInput],
        done: &mut Done,
        tell: &mut dyn FnMut(ShiftNews),
    ) -> Jobs {
        let mut out = Jobs {
            jobs: Vec::new(),
            change: StoreChange::default(),
        };
        for garden in chunk {
            match self.job(place, bucket, clock, garden, &mut done.found) {
                Ok(Some(job)) => out.jobs.push(job),
                Ok(None) => self.renew_wishes(garden, &mut out.change),
                Err(error) => {
                    // The garden exists, but its logs cannot be listed: report it, and try again next time.
                    let night = self
                        .newest(garden, clock)
                        .unwrap_or_else(|| clock.landed(0, &GardenClock::Fixed(0)));
                    let failed = Failed::of("logs", night, "unreadable", error.to_string(), "");
                    self.book_failures(garden, std::slice::from_ref(&failed), &mut out.change);
                    done.failures += 1;
                    tell(ShiftNews::Garden {
                        garden: garden.name.clone(),
                        logs: 0,
                        nights: 0,
                        failed: vec![failed],
                    });
                }
            }
        }
        out
    }

    /// Key and plan of a night.
    fn night(&self, garden: &str, night: NightNumber) -> Option<&(String, String)> {
        self.nights.get(garden)?.get(&night)
    }

    fn newest(&self, garden: &GardenInput, clock: Clock) -> Option<NightNumber> {
        let nights = self.nights.get(&garden.name)?;
        let newest = nights.range(..=clock.latest_night()).next_back();
        newest.map(|(night, _)| *night)
    }

    /// A job, if something is new.
    fn job(
        &self,
        place: &str,
        bucket: &Bucket,
        clock: Clock,
        garden: &GardenInput,
        found_count: &mut usize,
    ) -> Result<Option<GardenJob>, BatchError> {
        let found = garden.logs(bucket)?;
        *found_count += found.len();
        let at = |name: &str| LOGS.at(name);
        let stored: HashMap<&str, &TableRow> = of(&self.logs, &garden.name).filter_map(by_path).collect();
        let of_this_version =
            |row: &TableRow| row[FAILURES.at("tool_version")].text() == Some(tussock::TOOL_VERSION);
        let given_up: HashMap<&str, &TableRow> = of(&self.failures, &garden.name)
            .filter(|(_, row)| {
                row[FAILURES.at("reason")].text() != Some("unreadable") && of_this_version(row)
            })
            .filter_map(by_path)
            .collect();
        let mut logs = Vec::with_capacity(found.len());
        let mut is_new = false;
        for log in &found {
            let path = &log.found.path[..];
            let bytes = i64::try_from(log.found.bytes).ok();
            let same = |row: &TableRow, bytes_at: usize, modified_at: usize| {
                row[bytes_at].count() == bytes && row[modified_at].count() == Some(log.found.modified_unix_ms)
            };
            let known = stored
                .get(path)
                .filter(|row| same(row, at("bytes"), at("modified_unix_ms")))
                .and_then(|row| {
                    Some((
                        row[at("sha256")].text()?.to_owned(),
                        rows::nights_in(row[at("nights")].text()?),
                    ))
                });
            let has_failed = given_up
                .get(path)
                .is_some_and(|row| same(row, FAILURES.at("bytes"), FAILURES.at("modified_unix_ms")));
            if known.is_none() && has_failed {
                continue;
            }
            is_new |= known.is_none();
            logs.push(LogRef {
                known,
                path: path.to_owned(),
                machine: log.machine.clone(),
                bytes: log.found.bytes,
                modified_unix_ms: log.found.modified_unix_ms,
                is_there: true,
            });
        }
        let there: BTreeSet<&str> = found.iter().map(|log| &log.found.path[..]).collect();
        for (path, row) in stored.iter().filter(|(path, _)| !there.contains(*path)) {
            logs.push(LogRef {
                path: (*path).to_owned(),
                machine: row[at("machine")].text().map(str::to_owned),
                bytes: 0,
                modified_unix_ms: row[at("modified_unix_ms")].count().unwrap_or(0),
                known: row[at("sha256")].text().map(|sha256| {
                    (
                        sha256.to_owned(),
                        rows::nights_in(row[at("nights")].text().unwrap_or_default()),
                    )
                }),
                is_there: false,
            });
        }
        logs.sort_by(|a, b| a.path.cmp(&b.path));
        let nights = self.nights.get(&garden.name);
        let newest = self.newest(garden, clock).unwrap_or(NightNumber::MAX);
        let is_stale = match nights {
            None => false,
            Some(nights) => {
                let setup = work::setup_of(bucket, &garden.settings, garden.night_turns_at_h)?;
                nights
                    .range(newest - work::ANEW_NIGHTS..)
                    .any(|(_, (key, _))| key.get(17..33) != setup.get(..16))
            }
        };
        if !is_new && !is_stale && self.wanted == JobsFor::News {
            return Ok(None);
        }
        let failed = of(&self.failures, &garden.name)
            .filter(|(night, row)| of_this_version(row) && row[1].text() == Some(&night::words(*night)))
            .filter_map(|(night, row)| Some((*night, row[FAILURES.at("sha256")].text()?.to_owned())))
            .collect();
        Ok(Some(GardenJob {
            place: place.to_owned(),
            garden: garden.name.clone(),
            plan: garden.plan.clone(),
            settings: garden.settings.clone(),
            reach: bucket.reach(),
            clock: garden.clock(clock),
            logs,
            done: nights
                .into_iter()
                .flatten()
                .map(|(night, (key, _))| (*night, key.clone()))
                .collect(),
            failed,
            advice: None,
        }))
    }

    /// Expected nights and rests may change without any new log; a garden that never logged has a row too.
    fn renew_wishes(&self, garden: &GardenInput, change: &mut StoreChange) {
        let old = self.gardens.get(&garden.name);
        let mut row = old
            .cloned()
            .unwrap_or_else(|| row!(GARDENS { garden: &garden.name }));
        wish(&mut row, garden);
        if old != Some(&row) {
            change.drop(&GARDENS, 0, &garden.name, None);
            change.put(&GARDENS, 0, row);
        }
    }

    pub(crate) fn book_failures(&self, garden: &GardenInput, failed: &[Failed], change: &mut StoreChange) {
        for one in failed {
            self.forget_failure(&garden.name, &one.what, change);
            let row = row!(FAILURES {
                garden: &garden.name,
                what: &one.what,
                reason: &one.reason,
                detail: &one.detail,
                sha256: &one.sha256,
                bytes: one.bytes,
                modified_unix_ms: one.modified_unix_ms,
                tool_version: tussock::TOOL_VERSION,
            });
            change.put(&FAILURES, one.night, row);
        }
    }

    fn forget_failure(&self, garden: &str, what: &str, change: &mut StoreChange) {
        for (night, row) in of(&self.failures, garden) {
            if row[1].text() == Some(what) {
                change.drop(&FAILURES, *night, garden, Some(what));
            }
        }
    }
}

fn wish(row: &mut TableRow, garden: &GardenInput) {
    let rests: Vec<String> = garden
        .rests
        .iter()
        .map(|(from, to)| format!("{}/{}", night::words(*from), night::words(*to)))
        .collect();
    row[GARDENS.at("expected")] = garden.expected.words().into();
    row[GARDENS.at("rests")] = rests.join(",").into();
    row[GARDENS.at("night_turns_at_h")] = i64::from(garden.night_turns_at_h).into();
}

fn do_jobs(
    run: &Shift,
    store: &mut Store,
    known: &KnownGardens,
    chunk: &[GardenInput],
    jobs: Vec<GardenJob>,
    done: &mut Done,
    tell: &mut dyn FnMut(ShiftNews),
) -> Result<(), BatchError> {
    if jobs.is_empty() {
        return Ok(());
    }
    let pockets = |nights: std::ops::RangeInclusive<NightNumber>, gardens: &BTreeSet<&str>| {
        store.rows_of(&POCKETS, ColumnChoice::All, nights, gardens)
    };
    let change = changes(
        |each| run.crew.work(jobs, each),
        &pockets,
        known,
        chunk,
        done,
        tell,
    )?;
    store.commit(change)
}

/// Receives the answer to a job.
pub(crate) type Each<'a> = dyn FnMut(&GardenJob, GardenAnswer) -> Result<(), BatchError> + 'a;
/// Rows of `pockets` from the store, of some nights and gardens.
pub(crate) type StoredPockets<'a> = dyn Fn(
        std::ops::RangeInclusive<NightNumber>,
        &BTreeSet<&str>,
    ) -> Result<Vec<(NightNumber, TableRow)>, BatchError>
    + 'a;

/// Has the jobs done, and returns the resulting changes in the tables.
pub(crate) fn changes(
    work: impl FnOnce(&mut Each<'_>) -> Result<(), BatchError>,
    stored_pockets: &StoredPockets<'_>,
    known: &KnownGardens,
    chunk: &[GardenInput],
    done: &mut Done,
    tell: &mut dyn FnMut(ShiftNews),
) -> Result<StoreChange, BatchError> {
    let inputs: HashMap<&str, &GardenInput> = chunk.iter().map(|garden| (&garden.name[..], garden)).collect();
    let mut change = StoreChange::default();
    let mut pockets: BTreeMap<String, (String, BTreeMap<NightNumber, Vec<TableRow>>)> = BTreeMap::new();
    work(&mut |job, mut answer| {
        let Some(garden) = inputs.get(&job.garden[..]) else {
            return Ok(());
        };
        done.with_news += 1;
        done.logs += answer.logs.len();
        done.nights += answer.nights.len();
        done.failures += answer.failed.len();
        let of_nights = answer
            .nights
            .iter_mut()
            .map(|night| (night.night, std::mem::take(&mut night.pockets)))
            .collect();
        book(known, garden, &answer, &mut change)?;
        pockets.insert(job.garden.clone(), (answer.plan_sha256.clone(), of_nights));
        tell(ShiftNews::Garden {
            garden: job.garden.clone(),
            logs: answer.logs.len(),
            nights: answer.nights.len(),
            failed: answer.failed,
        });
        Ok(())
    })?;
    name_pockets(stored_pockets, known, pockets, &mut change)?;
    Ok(change)
}

/// Books everything in an answer except its pockets.
fn book(
    known: &KnownGardens,
    garden: &GardenInput,
    answer: &GardenAnswer,
    change: &mut StoreChange,
) -> Result<(), BatchError> {
    let name = &garden.name[..];
    known.book_failures(garden, &answer.failed, change);
    let has_failed = |what: &str| answer.failed.iter().any(|failed| failed.what == what);
    for what in ["logs", "plan", "settings", "garden"] {
        if !has_failed(what) {
            known.forget_failure(name, what, change);
        }
    }
    let stored: HashMap<&str, NightNumber> = of(&known.logs, name)
        .filter_map(|(night, row)| Some((row[1].text()?, *night)))
        .collect();
    for log in &answer.logs {
        if let Some(night) = stored.get(&log.path[..]) {
            change.drop(&LOGS, *night, name, Some(&log.path));
        }
        known.forget_failure(name, &log.path, change);
        change.put(&LOGS, log.night, log.row.clone());
    }
    for night in &answer.nights {
        known.forget_failure(name, &night::words(night.night), change);
        for table in [&NIGHTS, &STUCK_SPOTS, &SUGGESTIONS] {
            change.drop(table, night.night, name, None);
        }
        change.put(&NIGHTS, night.night, night.row.clone());
        for (table, rows) in [
            (&STUCK_SPOTS, &night.stuck_spots),
            (&SUGGESTIONS, &night.suggestions),
        ] {
            rows.iter()
                .for_each(|row| change.put(table, night.night, row.clone()));
        }
    }
    let row = garden_row(known.gardens.get(name), garden, answer)?;
    change.drop(&GARDENS, 0, name, None);
    change.put(&GARDENS, 0, row);
    Ok(())
}

/// The row of a garden with its rolling state brought up to date.
fn garden_row(
    old: Option<&TableRow>,
    garden: &GardenInput,
    answer: &GardenAnswer,
) -> Result<TableRow, BatchError> {
    let mut row = old
        .cloned()
        .unwrap_or_else(|| row!(GARDENS { garden: &garden.name }));
    wish(&mut row, garden);
    if answer.plan_sha256.is_empty() {
        return Ok(row);
    }
    let at = |name: &str| GARDENS.at(name);
    let same_plan = row[at("plan_sha256")].text() == Some(&answer.plan_sha256);
    let mut state = match &row[at("last_visits")] {
        Value::Packed(packed) if same_plan => LastVisits::unpack(packed),
        _ => None,
    };
    let first = answer.nights.iter().map(|night| night.night).min();
    if !same_plan {
        row[at("plan_since")] = first.map(night::words).into();
        row[at("last_night")] = Value::Null;
    } else if let Some(first) = first.map(night::words)
        && row[at("plan_since")]
            .text()
            .is_none_or(|since| first[..] < *since)
    {
        row[at("plan_since")] = first.into();
    }
    let mut machines: BTreeMap<String, String> = row[at("machines")]
        .text()
        .unwrap_or_default()
        .split(',')
        .filter_map(|pair| pair.split_once('='))
        .map(|(name, night)| (name.to_owned(), night.to_owned()))
        .collect();
    for night in &answer.nights {
        let words = night::words(night.night);
        for machine in &night.machines {
            // Names come from folders: characters that separate the list must not occur in them.
            let plain = machine.replace([',', '='], " ");
            let last = machines.entry(plain).or_default();
            if *last < words {
                last.clone_from(&words);
            }
        }
        if row[at("last_night")].text().is_none_or(|last| *last < words[..]) {
            row[at("last_night")] = words.into();
        }
        let Some(grid) = &night.grid else { continue };
        let marks = STANDARD
            .decode(&night.visited)
            .ok()
            .and_then(|packed| zstd::decode_all(&packed[..]).ok())
            .unwrap_or_default();
        let mut rolling = state.take().unwrap_or_else(|| LastVisits::new(*grid, &marks));
        if !rolling.take(night.night, grid, &marks) {
            rolling = LastVisits::new(*grid, &marks);
            rolling.take(night.night, grid, &marks);
        }
        state = Some(rolling);
    }
    let machines: Vec<String> = machines
        .into_iter()
        .map(|(name, night)| format!("{name}={night}"))
        .collect();
    row[at("machines")] = machines.join(",").into();
    row[at("name")] = answer.name.as_deref().into();
    row[at("plan_sha256")] = (&answer.plan_sha256).into();
    row[at("settings_sha256")] = (&answer.settings_sha256).into();
    row[at("promised_fraction")] = answer.promised_fraction.into();
    row[at("promised_days")] = answer.promised_days.into();
    row[at("time_zone")] = answer.time_zone.as_deref().into();
    row[at("outline")] = answer.outline.as_deref().into();
    row[at("last_visits")] = match state {
        None => Value::Null,
        Some(state) => Value::Packed(state.pack().map_err(|source| BatchError::Disk {
            path: PathBuf::from(&garden.name),
            what: "packed",
            source,
        })?),
    };
    Ok(row)
}

/// Names pockets over nights, from the first night that changed on.
fn name_pockets(
    stored_pockets: &StoredPockets<'_>,
    known: &KnownGardens,
    fresh: BTreeMap<String, (String, BTreeMap<NightNumber, Vec<TableRow>>)>,
    change: &mut StoreChange,
) -> Result<(), BatchError> {
    let Some(earliest) = fresh
        .values()
        .filter_map(|(_, nights)| nights.keys().next())
        .min()
        .copied()
    else {
        return Ok(());
    };
    let from = earliest.saturating_sub(identity::MEMORY_NIGHTS);
    let with_nights = fresh.iter().filter(|(_, (_, nights))| !nights.is_empty());
    let names: BTreeSet<&str> = with_nights.map(|(garden, _)| &garden[..]).collect();
    let mut stored = by_garden(stored_pockets(from..=NightNumber::MAX, &names)?);
    for (garden, (plan_sha256, mut nights)) in fresh {
        let Some(first) = nights.keys().next().copied() else {
            continue;
        };
        let mut before = Vec::new();
        for (night, row) in stored.remove(&garden).unwrap_or_default() {
            // Under another plan pockets mean something else.
            let same_plan = known
                .night(&garden, night)
                .is_some_and(|(_, plan)| *plan == plan_sha256);
            if night < first {
                if same_plan {
                    before.push((night, row));
                }
            } else if same_plan && !fresh_holds(&nights, night) {
                nights.entry(night).or_default().push(row);
            }
        }
        let fresh_nights: Vec<NightNumber> = nights.keys().copied().collect();
        identity::name(&before, &mut nights);
        for night in fresh_nights {
            change.drop(&POCKETS, night, &garden, None);
        }
        for (night, rows) in nights {
            rows.into_iter().for_each(|row| change.put(&POCKETS, night, row));
        }
    }
    Ok(())
}

/// Whether a night's pockets come from this run; rows that were added from the store already have an identity.
fn fresh_holds(nights: &BTreeMap<NightNumber, Vec<TableRow>>, night: NightNumber) -> bool {
    nights
        .get(&night)
        .is_some_and(|rows| rows.iter().all(|row| row[POCKETS.at("id")] == Value::Null))
}

/// Suggestions for the worst gardens of the newest night.
fn advise(
    (run, clock): (&Shift, Clock),
    bucket: &Bucket,
    store: &mut Store,
    wishes: &Wishes,
    done: &mut Done,
    tell: &mut dyn FnMut(ShiftNews),
) -> Result<(), BatchError> {
    let Some(newest) = store.newest_night(clock) else {
        return Ok(());
    };
    let mut worst: Vec<(f64, String)> = store
        .rows(
            &NIGHTS,
            ColumnChoice::Some(&["missed_m2"]),
            newest..=newest,
            &|_| true,
        )?
        .into_iter()
        .filter_map(|(_, row)| Some((row[NIGHTS.at("missed_m2")].number()?, row[0].text()?.to_owned())))
        .filter(|(missed_m2, _)| *missed_m2 > 0.0)
        .collect();
    worst.sort_by(|a, b| b.0.total_cmp(&a.0).then(a.1.cmp(&b.1)));
    worst.truncate(wishes.worst_gardens);
    let names: BTreeSet<&str> = worst.iter().map(|(_, name)| &name[..]).collect();
    let chunk: Vec<GardenInput> = wishes
        .gardens
        .iter()
        .filter(|garden| names.contains(&garden.name[..]))
        .cloned()
        .collect();
    let known = KnownGardens::of(store, &chunk)?;
    let mut jobs = Vec::new();
    for garden in &chunk {
        let key = known.night(&garden.name, newest);
        if key.is_none_or(|(key, _)| key.ends_with(work::ADVISED)) {
            continue;
        }
        if let Some(job) = known.advice_job((run, clock), bucket, garden, newest)? {
            jobs.push(job);
        }
    }
    if jobs.is_empty() {
        return Ok(());
    }
    tell(ShiftNews::Advising(jobs.len()));
    let mut apart = Done::default();
    do_jobs(run, store, &known, &chunk, jobs, &mut apart, tell)?;
    done.failures += apart.failures;
    Ok(())
}

impl KnownGardens {
    /// The logs of one night, to be analysed again with suggestions.
    fn advice_job(
        &self,
        (run, clock): (&Shift, Clock),
        bucket: &Bucket,
        garden: &GardenInput,
        night: NightNumber,
    ) -> Result<Option<GardenJob>, BatchError> {
        let there: BTreeMap<String, crate::LogInput> = garden
            .logs(bucket)?
            .into_iter()
            .map(|log| (log.found.path.clone(), log))
            .collect();
        let at = |name: &str| LOGS.at(name);
        let mut logs = Vec::new();
        for (_, row) in of(&self.logs, &garden.name) {
            let (Some(path), Some(sha256)) = (row[1].text(), row[at("sha256")].text()) else {
                continue;
            };
            let nights = rows::nights_in(row[at("nights")].text().unwrap_or_default());
            if !nights.contains(&night) {
                continue;
            }
            let is_there = there
                .get(path)
                .is_some_and(|log| Some(log.found.modified_unix_ms) == row[at("modified_unix_ms")].count());
            if !is_there && row[at("same_as")] == Value::Null {
                return Ok(None);
            }
            logs.push(LogRef {
                path: path.to_owned(),
                machine: row[at("machine")].text().map(str::to_owned),
                bytes: 0,
                modified_unix_ms: row[at("modified_unix_ms")].count().unwrap_or(0),
                // One night only.
                known: Some((sha256.to_owned(), vec![night])),
                is_there,
            });
        }
        logs.sort_by(|a, b| a.path.cmp(&b.path));
        let key = self.night(&garden.name, night);
        Ok(Some(GardenJob {
            place: run.place.clone(),
            garden: garden.name.clone(),
            plan: garden.plan.clone(),
            settings: garden.settings.clone(),
            reach: bucket.reach(),
            clock: garden.clock(clock),
            logs,
            done: key.map(|(key, _)| (night, key.clone())).into_iter().collect(),
            failed: Vec::new(),
            advice: Some(night),
        }))
    }
}
