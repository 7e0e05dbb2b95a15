//! Every variant is displayed: the value, what was expected, and where.

use crate::BatchError;
use std::collections::BTreeSet;
use std::io::{Error, ErrorKind};

/// Fails to compile when a variant is added, so that its words come into the table below.
fn variant(error: &BatchError) -> usize {
    match error {
        BatchError::Disk { .. } => 0,
        BatchError::NoStore { .. } => 1,
        BatchError::SchemaVersion { .. } => 2,
        BatchError::InUse { .. } => 3,
        BatchError::Overtaken { .. } => 4,
        BatchError::Table { .. } => 5,
        BatchError::BadTable { .. } => 6,
        BatchError::Bucket { .. } => 7,
        BatchError::Place { .. } => 8,
        BatchError::Manifest { .. } => 9,
        BatchError::NoWorker { .. } => 10,
        BatchError::Json(_) => 11,
        BatchError::ExpiresTooMuch { .. } => 12,
    }
}

#[test]
fn every_batch_error_says_what_it_means() {
    let no_json = serde_json::from_str::<u8>("x").unwrap_err();
    let table: Vec<(BatchError, &str)> = vec![
        (
            BatchError::Disk {
                path: "store/a".into(),
                what: "written",
                source: Error::new(ErrorKind::StorageFull, "no space"),
            },
            "store/a: cannot be written: no space",
        ),
        (
            BatchError::NoStore {
                path: "store".into(),
                why: "it holds photos".into(),
            },
            "store: is no store: it holds photos (expected an empty folder, or one that tussock batch made)",
        ),
        (
            BatchError::SchemaVersion {
                path: "store".into(),
                found: 9,
                expected: 3,
            },
            "store: store has schema version 9, expected 3 or an earlier one",
        ),
        (
            BatchError::InUse { path: "store".into() },
            "store: another run is writing to this store (expected one at a time)",
        ),
        (
            BatchError::Overtaken {
                path: "store".into(),
                found: 5,
                expected: 4,
            },
            "store: the store was changed by another run meanwhile (commit 5, expected 4); nothing of this commit was kept",
        ),
        (
            BatchError::Table {
                table: "nights",
                file: "a.parquet".into(),
                source: parquet::errors::ParquetError::General("no footer".into()),
            },
            "table nights, a.parquet: Parquet error: no footer",
        ),
        (
            BatchError::BadTable {
                table: "nights",
                file: "a.parquet".into(),
                found: "3 columns".into(),
                expected: "4".into(),
            },
            "table nights, a.parquet: 3 columns (expected 4)",
        ),
        (
            BatchError::Bucket {
                place: "logs".into(),
                what: "listed",
                source: Error::new(ErrorKind::TimedOut, "timed out"),
            },
            "logs: cannot be listed: timed out",
        ),
        (
            BatchError::Place {
                place: "ftp://logs".into(),
                why: "expected a folder".into(),
            },
            "ftp://logs: expected a folder",
        ),
        (
            BatchError::Manifest {
                file: "gardens.toml".into(),
                why: "line 3: no name".into(),
            },
            "gardens.toml: line 3: no name",
        ),
        (
            BatchError::NoWorker {
                program: "tussock".into(),
                source: Error::new(ErrorKind::NotFound, "not found"),
            },
            "tussock: no worker can be started: not found",
        ),
        (
            BatchError::ExpiresTooMuch {
                first: "2026-05-01".into(),
                taken: 330,
                nights: 730,
                at_most_fraction: 1.0 / 3.0,
            },
            "nights before 2026-05-01 are older than retention_days: 330 of 730 nights of gardens, expected at most 0.33 of them; \
             nothing was taken (where it is meant: one run with --expire-at-most 46%)",
        ),
        (
            BatchError::Json(no_json),
            "cannot be written as JSON: expected value at line 1 column 1",
        ),
    ];
    let seen: BTreeSet<usize> = table.iter().map(|(error, _)| variant(error)).collect();
    assert_eq!(seen.len(), 13, "a variant is missing in the table");
    for (error, words) in table {
        assert_eq!(error.to_string(), words);
    }
}
