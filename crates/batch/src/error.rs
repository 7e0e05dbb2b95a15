//! Why can a run, a report or a store not continue?

use std::path::PathBuf;

/// Why the night shift cannot continue. Faults of one log or one garden are not such errors: they become rows of `failures`.
#[derive(Debug, thiserror::Error)]
#[non_exhaustive]
pub enum BatchError {
    /// A file of the store cannot be read or written.
    #[error("{}: cannot be {what}: {source}", .path.display())]
    Disk {
        /// The file.
        path: PathBuf,
        /// What was tried.
        what: &'static str,
        /// The system's error.
        source: std::io::Error,
    },
    /// The folder contains something else.
    #[error("{}: is no store: {why} (expected an empty folder, or one that tussock batch made)", .path.display())]
    NoStore {
        /// The folder.
        path: PathBuf,
        /// What was found.
        why: String,
    },
    /// A store of another version.
    #[error("{}: store has schema version {found}, expected {expected} or an earlier one", .path.display())]
    SchemaVersion {
        /// The folder.
        path: PathBuf,
        /// Version found.
        found: u32,
        /// Version that this tool writes.
        expected: u32,
    },
    /// Somebody else is writing.
    #[error("{}: another run is writing to this store (expected one at a time)", .path.display())]
    InUse {
        /// The folder.
        path: PathBuf,
    },
    /// Somebody else wrote despite the lock.
    #[error("{}: the store was changed by another run meanwhile (commit {found}, expected {expected}); nothing of this commit was kept", .path.display())]
    Overtaken {
        /// The folder.
        path: PathBuf,
        /// Commit found.
        found: u64,
        /// The commit from which this run began.
        expected: u64,
    },
    /// A table cannot be read or written.
    #[error("table {table}, {file}: {source}")]
    Table {
        /// Name of the table.
        table: &'static str,
        /// File.
        file: String,
        /// The library's error.
        source: parquet::errors::ParquetError,
    },
    /// A table file that does not contain what it should.
    #[error("table {table}, {file}: {found} (expected {expected})")]
    BadTable {
        /// Name of the table.
        table: &'static str,
        /// File.
        file: String,
        /// What was found.
        found: String,
        /// What was expected.
        expected: String,
    },
    /// The place of the logs cannot be listed or read after several attempts.
    #[error("{place}: cannot be {what}: {source}")]
    Bucket {
        /// Where.
        place: String,
        /// What was tried.
        what: &'static str,
        /// The error of the place.
        source: std::io::Error,
    },
    /// The place of the logs is not understood.
    #[error("{place}: {why}")]
    Place {
        /// As given.
        place: String,
        /// Why not.
        why: String,
    },
    /// The manifest is not sound.
    #[error("{file}: {why}")]
    Manifest {
        /// File.
        file: String,
        /// What is wrong, and what was expected.
        why: String,
    },
    /// Expiry would delete too much: a wrong clock or setting is likelier than that all of it is old.
    #[error(
        "nights before {first} are older than retention_days: {taken} of {nights} nights of gardens, expected at most {at_most_fraction:.2} of them; \
         nothing was taken (where it is meant: one run with --expire-at-most {}%)", (100.0 * *.taken as f64 / (*.nights).max(1) as f64).ceil()
    )]
    ExpiresTooMuch {
        /// First night that would be kept.
        first: String,
        /// Nights (per garden) that would be deleted, without those that were deleted before.
        taken: usize,
        /// Nights (per garden) that exist.
        nights: usize,
        /// Share that may go.
        at_most_fraction: f64,
    },
    /// No worker can be started.
    #[error("{program}: no worker can be started: {source}")]
    NoWorker {
        /// Program.
        program: String,
        /// The system's error.
        source: std::io::Error,
    },
    /// Data of ours cannot be written as JSON.
    #[error("cannot be written as JSON: {0}")]
    Json(#[from] serde_json::Error),
}
