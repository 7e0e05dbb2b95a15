//! What do one garden's new logs show?
//!
//! The work of a worker process: it reads jobs from its input, one per line, fetches the new logs, sorts their fixes into
//! nights, and analyses every night that has something new, using all of its pieces. Before each log and each night it
//! announces what it begins, so that whoever watches knows what ended it.
//!
//! A night is identified by the digests of its logs. With another tool version or other settings, the nights of the last two
//! weeks are analysed again, because the next mornings are compared with them; older ones stay as they are. A new plan
//! applies from the next night on: nights that were driven under the old one keep their result.

use crate::bucket::Bucket;
use crate::clock::NightDoubt;
use crate::job::{Failed, GardenAnswer, GardenJob, JobStage, LogAnswer, LogRef, Message, NightAnswer};
use crate::night::{self, NightNumber};
use crate::table::{LOGS, TableRow, row};
use crate::{BatchError, rows};
use base64::{Engine, engine::general_purpose::STANDARD};
use std::collections::{BTreeMap, BTreeSet, HashMap};
use std::io::{BufRead, Write};
use std::sync::Arc;
use tussock::{Advice, Job};
use tussock_ingest::{IngestError, LogFile, RawLog, ReadOptions, digest};
use tussock_types::{GardenClock, Place, Plan, Positions, Settings, Trace};

/// Nights that are analysed again with another tool version or other settings.
pub(crate) const ANEW_NIGHTS: NightNumber = 14;
/// End of the key of a night for which suggestions were sought.
pub(crate) const ADVISED: &str = "-s";
/// Logs whose fixes are kept in memory between reading and analysing; others are read again.
const AT_HAND: usize = 12;
/// A night with fewer fixes cannot be analysed; a log that ends just after the turn has one like that.
const LEAST_FIXES: usize = 60;

/// Reads jobs and writes their results until the input ends.
///
/// # Errors
/// If the input is not a job or the output cannot be written: whoever watches has then gone, or is somebody else.
pub fn serve(input: impl BufRead, mut output: impl Write) -> std::io::Result<()> {
    let mut bucket: Option<Bucket> = None;
    for line in input.lines() {
        let job: GardenJob = serde_json::from_str(&line?)?;
        let open = match bucket.take() {
            Some(open) if open.place() == job.place && open.reach() == job.reach => open,
            _ => Bucket::open(&job.place, job.reach).map_err(std::io::Error::other)?,
        };
        let answer = do_job(&job, &open, &mut |stage| {
            send(&mut output, &Message::Begins(stage))
        })?;
        send(&mut output, &Message::Done(Box::new(answer)))?;
        bucket = Some(open);
    }
    Ok(())
}

fn send(output: &mut impl Write, message: &Message) -> std::io::Result<()> {
    let mut text = serde_json::to_vec(message)?;
    text.push(b'\n');
    output.write_all(&text)?;
    output.flush()
}

/// Limits this process to this many bytes of its own memory; does nothing if the system has no such limit.
///
/// # Errors
/// The error of the system.
pub fn limit_memory(bytes: u64) -> std::io::Result<()> {
    #[cfg(unix)]
    {
        use rustix::process::{Resource, Rlimit, getrlimit, setrlimit};
        let maximum = getrlimit(Resource::Data).maximum;
        let limit = Rlimit {
            current: Some(maximum.map_or(bytes, |most| most.min(bytes))),
            maximum,
        };
        setrlimit(Resource::Data, limit)?;
    }
    #[cfg(not(unix))]
    let _ = bytes;
    Ok(())
}

/// Digest of a night's logs, whatever their order.
fn logs_digest<'a>(logs: impl Iterator<Item = &'a str>) -> String {
    let sorted: BTreeSet<&str> = logs.collect();
    digest(sorted.into_iter().collect::<Vec<_>>().join("\n").as_bytes())
}

/// `logs-setup`, sixteen digits each: enough to be unique, short enough to read.
fn key(logs_sha256: &str, setup_sha256: &str) -> String {
    format!("{}-{}", &logs_sha256[..16], &setup_sha256[..16])
}

struct KnownLog {
    log: LogRef,
    sha256: String,
    nights: Vec<NightNumber>,
}

/// A log that was read.
struct Read {
    file: LogFile,
    /// Nights that are history.
    nights: Vec<NightNumber>,
    /// Nights that are not accepted, with the reason and the number of their fixes.
    apart: Vec<(NightNumber, NightDoubt, u64)>,
}

impl Read {
    fn fixes_apart(&self) -> u64 {
        self.apart.iter().map(|(_, _, fixes)| fixes).sum()
    }

    /// The message about nights that are set aside. A few fixes from before the receiver knew the time count as skipped.
    fn set_apart(&self) -> Option<String> {
        let why = match self.apart.iter().map(|(_, doubt, _)| *doubt).min()? {
            NightDoubt::NotBegun => "had not begun when the file was written, nor by the clock of the run",
            NightDoubt::LongAgo => {
                "lie longer back than logs come late (a clock never set, a week counter that rolled over; oldest_log_days in gardens.toml lets an archive in)"
            }
        };
        let (fixes, few) = (self.fixes_apart(), LEAST_FIXES as u64);
        let mut ends = vec![
            night::words(self.apart.first()?.0),
            night::words(self.apart.last()?.0),
        ];
        ends.dedup();
        (fixes >= few || self.nights.is_empty()).then(|| {
            format!(
                "{fixes} fixes of nights that {why}, set aside: {}",
                ends.join(" to ")
            )
        })
    }
}

/// The parts of a garden that all its nights share.
struct GardenInputs<'a> {
    job: &'a GardenJob,
    bucket: &'a Bucket,
    settings: Settings,
    plan: Plan,
    bounds: Option<(Place, Place)>,
    plan_sha256: String,
    setup_sha256: String,
    zone: GardenClock,
    at_hand: HashMap<String, LogFile>,
    absent: BTreeSet<String>,
}

/// Does one job. `begins` is called before each log and each night.
///
/// # Errors
/// Only if `begins` fails. Faults of a log, a night, the plan or the settings are in the answer.
pub fn do_job(
    job: &GardenJob,
    bucket: &Bucket,
    begins: &mut dyn FnMut(JobStage) -> std::io::Result<()>,
) -> std::io::Result<GardenAnswer> {
    let mut answer = GardenAnswer::default();
    let Some(mut garden) = open(job, bucket, &mut answer) else {
        return Ok(answer);
    };
    let known = garden.read_new(&mut answer, begins)?;
    garden.analyse_new(&known, &mut answer, begins)?;
    answer.absent = garden.absent.into_iter().collect();
    Ok(answer)
}

/// Reads everything that a job would read, and analyses nothing.
pub(crate) fn try_job(job: &GardenJob, bucket: &Bucket) -> GardenAnswer {
    let mut answer = GardenAnswer::default();
    if let Some(mut garden) = open(job, bucket, &mut answer) {
        // Nobody is listening, so nothing fails.
        let _ = garden.read_new(&mut answer, &mut |_| Ok(()));
    }
    answer
}

/// Plan and settings of a garden; if they cannot be used, the answer says so.
fn open<'a>(job: &'a GardenJob, bucket: &'a Bucket, answer: &mut GardenAnswer) -> Option<GardenInputs<'a>> {
    let last_unix_ms = job.logs.iter().map(|log| log.modified_unix_ms).max().unwrap_or(0);
    let landed = job.clock.landed(last_unix_ms, &GardenClock::Fixed(0));
    let (settings, promises, settings_sha256) = match settings(job, bucket) {
        Ok(read) => read,
        Err((detail, sha256)) => {
            answer
                .failed
                .push(Failed::of("settings", landed, "settings", detail, &sha256));
            return None;
        }
    };
    answer.name.clone_from(&settings.garden.name);
    answer.settings_sha256.clone_from(&settings_sha256);
    answer.time_zone.clone_from(&settings.garden.time_zone);
    if promises {
        answer.promised_fraction = Some(settings.promise.visited_fraction);
        answer.promised_days = Some(settings.promise.days);
    }
    let (plan, plan_sha256) = match plan(job, bucket, &settings) {
        Ok(read) => read,
        Err((detail, sha256)) => {
            answer
                .failed
                .push(Failed::of("plan", landed, "plan", detail, &sha256));
            return None;
        }
    };
    answer.plan_sha256.clone_from(&plan_sha256);
    let zone = GardenClock::of(settings.garden.time_zone.as_deref());
    let site = tussock::plane::Site::build(&plan).ok();
    let bounds = site.as_ref().and_then(|(site, _)| site.lawn.bounds());
    answer.outline = site.and_then(|(site, _)| {
        let rings: Vec<Vec<Place>> = site.lawn.rings().into_iter().flatten().collect();
        rows::outline(&rings, None).text().map(str::to_owned)
    });
    Some(GardenInputs {
        job,
        bucket,
        settings,
        plan,
        bounds,
        plan_sha256,
        setup_sha256: setup(&settings_sha256, job.clock.night_turns_at_h),
        zone,
        at_hand: HashMap::new(),
        absent: BTreeSet::new(),
    })
}

/// Digest of what applies to every night of a garden, whatever its plan.
fn setup(settings_sha256: &str, night_turns_at_h: u8) -> String {
    digest(format!("{}\n{settings_sha256}\n{night_turns_at_h}", tussock::TOOL_VERSION).as_bytes())
}

/// Digest of settings and of the device card that they name: with another card nights come out otherwise.
fn settings_digest(bucket: &Bucket, path: &str, bytes: &[u8]) -> String {
    let table = || std::str::from_utf8(bytes).ok()?.parse::<toml::Table>().ok();
    let named = bytes.windows(4).any(|word| word == b"card").then(table).flatten();
    let card = named.and_then(|table| Some(table.get("positions")?.get("card")?.as_str()?.to_owned()));
    match card.map(|file| bucket.read(&beside(path, &file))) {
        Some(Ok(card)) => digest(format!("{}\n{}", digest(bytes), digest(&card)).as_bytes()),
        _ => digest(bytes),
    }
}

/// The path of a file that is named from the folder of another.
fn beside(path: &str, file: &str) -> String {
    let mut parts: Vec<&str> = path.split('/').collect();
    parts.pop();
    for part in file.split('/') {
        match part {
            "" | "." => {}
            ".." => _ = parts.pop(),
            part => parts.push(part),
        }
    }
    parts.join("/")
}

/// The same from the settings as they lie there.
pub(crate) fn setup_of(bucket: &Bucket, path: &str, night_turns_at_h: u8) -> Result<String, BatchError> {
    match bucket.read(path) {
        Ok(bytes) => Ok(setup(&settings_digest(bucket, path, &bytes), night_turns_at_h)),
        Err(BatchError::Bucket { source, .. }) if source.kind() == std::io::ErrorKind::NotFound => {
            Ok(setup("", night_turns_at_h))
        }
        Err(error) => Err(error),
    }
}

type Unread = (String, String);

/// Settings, whether they contain a promise, and their digest.
fn settings(job: &GardenJob, bucket: &Bucket) -> Result<(Settings, bool, String), Unread> {
    match bucket.read(&job.settings) {
        Ok(bytes) => {
            let sha256 = settings_digest(bucket, &job.settings, &bytes);
            let text = std::str::from_utf8(&bytes).map_err(|error| {
                (
                    format!("{}: is not UTF-8 text: {error}", job.settings),
                    sha256.clone(),
                )
            })?;
            let told = |error: &dyn std::error::Error| (error.to_string(), sha256.clone());
            let mut settings =
                tussock_ingest::read_settings(&job.settings, text).map_err(|error| told(&error))?;
            let limits = settings.limits.clone();
            if let Some(card) = &mut settings.positions.card {
                let path = beside(&job.settings, &card.file);
                let bytes = bucket.read(&path).map_err(|error| told(&error))?;
                let errors = tussock_ingest::read_error_series(&path, &bytes[..], &limits);
                card.errors = Some(Arc::new(errors.map_err(|error| told(&error))?));
            }
            let promises = text
                .parse::<toml::Table>()
                .is_ok_and(|table| table.contains_key("promise"));
            Ok((settings, promises, sha256))
        }
        Err(BatchError::Bucket { source, .. }) if source.kind() == std::io::ErrorKind::NotFound => {
            Ok((Settings::default(), false, String::new()))
        }
        Err(error) => Err((error.to_string(), String::new())),
    }
}

fn plan(job: &GardenJob, bucket: &Bucket, settings: &Settings) -> Result<(Plan, String), Unread> {
    let bytes = bucket
        .read(&job.plan)
        .map_err(|error| (error.to_string(), String::new()))?;
    let sha256 = digest(&bytes);
    let read = tussock_ingest::read_plan(&job.plan, &bytes, &settings.limits)
        .map_err(|error| (error.to_string(), sha256.clone()))?;
    match read.faults.iter().find(|fault| fault.is_fatal) {
        Some(fault) => Err((format!("{}: {fault}", job.plan), sha256)),
        None => Ok((read.plan, sha256)),
    }
}

/// The table's word for a log that cannot be read.
const fn reason(error: &IngestError) -> &'static str {
    match error {
        IngestError::Read { .. } => "unreadable",
        _ => "damaged",
    }
}

impl GardenInputs<'_> {
    fn options(&self) -> ReadOptions {
        ReadOptions {
            limits: self.settings.limits.clone(),
            ..ReadOptions::default()
        }
    }

    /// Reads what is new, and records what is known about every log.
    fn read_new(
        &mut self,
        answer: &mut GardenAnswer,
        begins: &mut dyn FnMut(JobStage) -> std::io::Result<()>,
    ) -> std::io::Result<Vec<KnownLog>> {
        let job = self.job;
        let mut known: Vec<KnownLog> = Vec::new();
        let mut first_of: HashMap<String, String> = HashMap::new();
        for log in &job.logs {
            if let Some((sha256, nights)) = &log.known {
                first_of.entry(sha256.clone()).or_insert_with(|| log.path.clone());
                known.push(KnownLog {
                    log: log.clone(),
                    sha256: sha256.clone(),
                    nights: nights.clone(),
                });
            }
        }
        for log in job.logs.iter().filter(|log| log.known.is_none() && log.is_there) {
            begins(JobStage {
                what: log.path.clone(),
                night: None,
                sha256: String::new(),
            })?;
            match self.read_one(log, begins)? {
                Ok(read) => {
                    let sha256 = read.file.facts.sha256.clone();
                    let same_as = first_of.get(&sha256).filter(|first| **first != log.path);
                    answer.logs.push(LogAnswer {
                        path: log.path.clone(),
                        night: self.booked(log, &read),
                        row: log_row(&job.garden, log, same_as, &read),
                    });
                    if let Some(detail) = read.set_apart() {
                        let failed = self.failed(log, "clock", detail, sha256.clone());
                        answer.failed.push(failed);
                    }
                    first_of.entry(sha256.clone()).or_insert_with(|| log.path.clone());
                    known.push(KnownLog {
                        log: log.clone(),
                        sha256,
                        nights: read.nights,
                    });
                    if self.at_hand.len() < AT_HAND {
                        self.at_hand.insert(log.path.clone(), read.file);
                    }
                }
                Err((reason, detail, sha256)) => answer.failed.push(self.failed(log, reason, detail, sha256)),
            }
        }
        Ok(known)
    }

    fn failed(&self, log: &LogRef, reason: &str, detail: String, sha256: String) -> Failed {
        let night = self.job.clock.landed(log.modified_unix_ms, &self.zone);
        Failed {
            bytes: log.bytes,
            modified_unix_ms: log.modified_unix_ms,
            ..Failed::of(&log.path, night, reason, detail, &sha256)
        }
    }

    /// The night to which the row of a log is booked. If the whole log is dated in the future, it stays there until then, so
    /// that it is not examined again once its date has come.
    fn booked(&self, log: &LogRef, read: &Read) -> NightNumber {
        let to_come = read
            .apart
            .iter()
            .find(|(_, doubt, _)| *doubt == NightDoubt::NotBegun);
        let first = read.nights.first().or(to_come.map(|(night, ..)| night));
        first.map_or_else(
            || {
                self.job
                    .clock
                    .landed(log.modified_unix_ms, &GardenClock::Fixed(0))
            },
            |night| *night,
        )
    }

    fn read_one(
        &self,
        log: &LogRef,
        begins: &mut dyn FnMut(JobStage) -> std::io::Result<()>,
    ) -> std::io::Result<Result<Read, (&'static str, String, String)>> {
        let bytes = match self.bucket.read(&log.path) {
            Ok(bytes) => bytes,
            Err(error) => return Ok(Err(("unreadable", error.to_string(), String::new()))),
        };
        let sha256 = digest(&bytes);
        begins(JobStage {
            what: log.path.clone(),
            night: None,
            sha256: sha256.clone(),
        })?;
        let options = self.options();
        let file = RawLog::fetch(&log.path, &bytes[..], &options.limits).and_then(|raw| raw.read(&options));
        let file = match file {
            Ok(file) => file,
            Err(error) => return Ok(Err((reason(&error), error.to_string(), sha256))),
        };
        let (mut nights, mut apart) = (Vec::new(), Vec::new());
        for (night, fixes) in self.nights_of(&file.trace) {
            match self.job.clock.doubt(night, &self.zone, log.modified_unix_ms) {
                None => nights.push(night),
                Some(doubt) => apart.push((night, doubt, fixes)),
            }
        }
        Ok(Ok(Read { file, nights, apart }))
    }

    /// Nights of a trace, with the number of their fixes.
    fn nights_of(&self, trace: &Trace) -> BTreeMap<NightNumber, u64> {
        let mut nights = BTreeMap::new();
        for time_s in &trace.time_s {
            let night = night::night_of(*time_s, &self.zone, self.job.clock.night_turns_at_h);
            *nights.entry(night).or_insert(0) += 1;
        }
        nights
    }

    /// Analyses every night that has something new.
    fn analyse_new(
        &mut self,
        known: &[KnownLog],
        answer: &mut GardenAnswer,
        begins: &mut dyn FnMut(JobStage) -> std::io::Result<()>,
    ) -> std::io::Result<()> {
        let job = self.job;
        let mut by_night: BTreeMap<NightNumber, Vec<&KnownLog>> = BTreeMap::new();
        for log in known {
            for night in &log.nights {
                by_night.entry(*night).or_default().push(log);
            }
        }
        let newest = by_night.range(..=job.clock.latest_night()).next_back();
        let newest = newest.map_or(0, |(night, _)| *night);
        let done: BTreeMap<NightNumber, &str> =
            job.done.iter().map(|(night, key)| (*night, &key[..])).collect();
        for (night, logs) in &by_night {
            let logs_sha256 = logs_digest(logs.iter().map(|log| &log.sha256[..]));
            let wanted = key(&logs_sha256, &self.setup_sha256);
            let same_logs = done
                .get(night)
                .is_some_and(|key| key.get(..16) == logs_sha256.get(..16));
            let is_settled = same_logs
                && job.advice != Some(*night)
                && (done.get(night).is_some_and(|key| key.starts_with(&wanted))
                    || *night < newest - ANEW_NIGHTS);
            let has_failed = job
                .failed
                .iter()
                .any(|(failed, sha256)| failed == night && *sha256 == logs_sha256);
            if is_settled || has_failed {
                continue;
            }
            let mut fails = |reason: &str, detail: String| {
                let failed = Failed::of(&night::words(*night), *night, reason, detail, &logs_sha256);
                answer.failed.push(failed);
            };
            // One log of each content is enough; of several, the first that still exists.
            let mut pieces: BTreeMap<&str, &KnownLog> = BTreeMap::new();
            for log in logs.iter().filter(|log| log.log.is_there) {
                pieces.entry(&log.sha256).or_insert(log);
            }
            let gone: Vec<&str> = logs
                .iter()
                .filter(|log| !pieces.contains_key(&log.sha256[..]))
                .map(|log| &log.log.path[..])
                .collect();
            if !gone.is_empty() {
                if !same_logs {
                    fails(
                        "pieces",
                        format!(
                            "a new piece came, but {} is no longer there (expected all pieces of the night)",
                            gone.join(", ")
                        ),
                    );
                }
                continue;
            }
            begins(JobStage {
                what: night::words(*night),
                night: Some(*night),
                sha256: logs_sha256.clone(),
            })?;
            let advised = if job.advice == Some(*night) { ADVISED } else { "" };
            match self.analyse(*night, pieces.values().copied().collect(), wanted + advised) {
                Ok(Some(one)) => answer.nights.push(one),
                Ok(None) => {}
                Err(detail) => fails("analysis", detail),
            }
        }
        Ok(())
    }

    fn analyse(
        &mut self,
        night: NightNumber,
        mut logs: Vec<&KnownLog>,
        key: String,
    ) -> Result<Option<NightAnswer>, String> {
        logs.sort_by(|a, b| a.log.path.cmp(&b.log.path));
        let turn_h = self.job.clock.night_turns_at_h;
        let from_s = night::start_unix_s(night, &self.zone, turn_h);
        let to_s = night::start_unix_s(night + 1, &self.zone, turn_h);
        let mut by_machine: BTreeMap<Option<String>, Vec<LogFile>> = BTreeMap::new();
        for log in &logs {
            let mut file = match self.at_hand.get(&log.log.path) {
                Some(file) => file.clone(),
                None => {
                    let bytes = self.bucket.read(&log.log.path).map_err(|error| {
                        if matches!(&error, BatchError::Bucket { source, .. } if source.kind() == std::io::ErrorKind::NotFound) {
                            self.absent.insert(log.log.path.clone());
                        }
                        error.to_string()
                    })?;
                    tussock_ingest::read_log(&log.log.path, &bytes[..], &self.options())
                        .map_err(|error| error.to_string())?
                }
            };
            file.trace = cut(&file.trace, from_s, to_s);
            file.facts.fixes = file.trace.len() as u64;
            by_machine.entry(log.log.machine.clone()).or_default().push(file);
        }
        let (mut traces, mut inputs) = (Vec::new(), Vec::new());
        for (machine, files) in by_machine {
            let mut assembled = tussock_ingest::assemble(files).map_err(|error| error.to_string())?;
            if let Some(machine) = machine {
                let several = assembled.traces.len() > 1;
                for (number, trace) in assembled.traces.iter_mut().enumerate() {
                    let name = if several {
                        format!("{machine}-{}", number + 1)
                    } else {
                        machine.clone()
                    };
                    for facts in assembled
                        .inputs
                        .iter_mut()
                        .filter(|facts| facts.machine == trace.machine)
                    {
                        facts.machine.clone_from(&name);
                    }
                    trace.machine = name;
                }
            }
            traces.append(&mut assembled.traces);
            inputs.append(&mut assembled.inputs);
        }
        traces.retain(|trace| trace.len() >= LEAST_FIXES);
        if traces.is_empty() {
            return Ok(None);
        }
        let found = tussock::analyse(&Job {
            advice: if self.job.advice == Some(night) {
                Advice::Given
            } else {
                Advice::LeftOut
            },
            ..Job::new(&traces, &self.settings)
                .with_inputs(&inputs)
                .on(&self.plan)
        })
        .map_err(|error| error.to_string())?;
        let garden = &self.job.garden;
        let facts = rows::NightFacts {
            garden,
            key,
            plan_sha256: &self.plan_sha256,
            logs: logs.len(),
        };
        let squares = self.bounds.and_then(|bounds| rows::visited(&found, bounds));
        let (grid, visited) = match squares {
            None => (None, String::new()),
            Some((grid, marks)) => {
                let packed = zstd::encode_all(&marks[..], 1).map_err(|error| error.to_string())?;
                (Some(grid), STANDARD.encode(packed))
            }
        };
        Ok(Some(NightAnswer {
            night,
            machines: traces.iter().map(|trace| trace.machine.clone()).collect(),
            row: rows::night(facts, &found),
            pockets: rows::pockets(garden, &found),
            stuck_spots: rows::stuck_spots(garden, &found),
            suggestions: rows::suggestions(garden, &found),
            grid,
            visited,
        }))
    }
}

/// Fixes from one moment until just before another.
fn cut(trace: &Trace, from_s: f64, to_s: f64) -> Trace {
    let mut out = match trace.positions {
        Positions::Geographic { .. } => Trace::geographic(trace.machine.clone()),
        Positions::Local { .. } => Trace::local(trace.machine.clone()),
    };
    let start = trace.time_s.partition_point(|time_s| *time_s < from_s);
    let end = trace.time_s.partition_point(|time_s| *time_s < to_s);
    if start == 0 && end == trace.len() {
        return trace.clone();
    }
    (start..end).for_each(|index| out.push(trace.fix(index)));
    out
}

fn log_row(garden: &str, log: &LogRef, same_as: Option<&String>, read: &Read) -> TableRow {
    let LogFile { facts, trace, .. } = &read.file;
    let words: Vec<String> = read.nights.iter().map(|night| night::words(*night)).collect();
    row!(LOGS {
        garden: garden,
        log: &log.path,
        machine: log.machine.as_deref(),
        sha256: &facts.sha256,
        same_as: same_as,
        bytes: log.bytes,
        modified_unix_ms: log.modified_unix_ms,
        format: facts.format.words(),
        fixes: facts.fixes,
        skipped: facts.faults() + read.fixes_apart(),
        first_fix_unix_s: trace.time_s.first().copied(),
        last_fix_unix_s: trace.time_s.last().copied(),
        nights: words.join(","),
    })
}
