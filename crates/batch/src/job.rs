//! What a worker is told, and what it answers: one JSON object per line.

use crate::bucket::PlaceReach;
use crate::clock::Clock;
use crate::night::NightNumber;
use crate::table::TableRow;
use serde::{Deserialize, Serialize};
use tussock_types::Grid;

/// One garden's new logs.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct GardenJob {
    /// Place of the logs, as given.
    pub place: String,
    /// Name of the garden.
    pub garden: String,
    /// Path of the plan.
    pub plan: String,
    /// Path of the settings.
    pub settings: String,
    /// Whether the place may lead elsewhere.
    pub reach: PlaceReach,
    /// What time it is.
    pub clock: Clock,
    /// All logs there, in the order of their paths.
    pub logs: Vec<LogRef>,
    /// Nights whose row is in the store, with its key.
    pub done: Vec<(NightNumber, String)>,
    /// Nights that failed before, with the digest of their logs.
    pub failed: Vec<(NightNumber, String)>,
    /// Whether suggestions are made, and for which night.
    pub advice: Option<NightNumber>,
}

/// A log in the place.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct LogRef {
    /// Its path.
    pub path: String,
    /// Machine, if the place names it.
    pub machine: Option<String>,
    /// Bytes as stored.
    pub bytes: u64,
    /// When it was last written, milliseconds since 1970.
    pub modified_unix_ms: i64,
    /// What is known about it: digest and nights.
    pub known: Option<(String, Vec<NightNumber>)>,
    /// Whether it still exists: the pieces of a night may have been cleared away.
    pub is_there: bool,
}

/// A message of a worker.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Message {
    /// It begins something; if nothing follows, this is what ended it.
    Begins(JobStage),
    /// The whole answer.
    Done(Box<GardenAnswer>),
}

/// What a worker is doing.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
pub struct JobStage {
    /// Path of a log, or a night.
    pub what: String,
    /// The night, if it is one.
    pub night: Option<NightNumber>,
    /// Digest of the log, or of the night's logs; empty if not known yet.
    pub sha256: String,
}

/// The result for a garden.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
pub struct GardenAnswer {
    /// Name from the settings.
    pub name: Option<String>,
    /// Digest of the plan.
    pub plan_sha256: String,
    /// Digest of the settings.
    pub settings_sha256: String,
    /// Time zone from the settings.
    #[serde(default)]
    pub time_zone: Option<String>,
    /// Rings of the lawn on the plan's plane, metres east and north, as JSON.
    #[serde(default)]
    pub outline: Option<String>,
    /// Promised visited fraction, if the settings contain a promise.
    pub promised_fraction: Option<f64>,
    /// Within this many days.
    pub promised_days: Option<f64>,
    /// Logs that were read.
    pub logs: Vec<LogAnswer>,
    /// Nights that were analysed.
    pub nights: Vec<NightAnswer>,
    /// What failed.
    pub failed: Vec<Failed>,
    /// Known logs that a night needs again, and that were listed but no longer existed when they were to be read.
    #[serde(default)]
    pub absent: Vec<String>,
}

/// One log that was read.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct LogAnswer {
    /// Its path.
    pub path: String,
    /// Night to which its row is booked.
    pub night: NightNumber,
    /// Its row of `logs`.
    pub row: TableRow,
}

/// One night that was analysed.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct NightAnswer {
    /// The night.
    pub night: NightNumber,
    /// Machines that logged.
    pub machines: Vec<String>,
    /// Its row of `nights`.
    pub row: TableRow,
    /// Rows of `pockets`, without their identity.
    pub pockets: Vec<TableRow>,
    /// Rows of `stuck_spots`.
    pub stuck_spots: Vec<TableRow>,
    /// Rows of `suggestions`.
    pub suggestions: Vec<TableRow>,
    /// The grid of the lawn's squares, as they lie on the plan.
    pub grid: Option<Grid>,
    /// For each square: 0 off the lawn, 1 not visited, 2 visited; zstd, base64.
    pub visited: String,
}

/// Something that failed.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Failed {
    /// Path of a log, a night, `plan` or `settings`.
    pub what: String,
    /// Night to which it is booked.
    pub night: NightNumber,
    /// One of the table's words.
    pub reason: String,
    /// One sentence.
    pub detail: String,
    /// Digest of what should have been read.
    pub sha256: String,
    /// Bytes of a log, as stored.
    pub bytes: u64,
    /// When a log was last written, milliseconds since 1970.
    pub modified_unix_ms: i64,
}

impl Failed {
    /// What failed, in which night and why; without a log's bytes and time.
    pub fn of(what: &str, night: NightNumber, reason: &str, detail: String, sha256: &str) -> Self {
        Self {
            what: what.to_owned(),
            night,
            reason: reason.to_owned(),
            detail,
            sha256: sha256.to_owned(),
            bytes: 0,
            modified_unix_ms: 0,
        }
    }
}
