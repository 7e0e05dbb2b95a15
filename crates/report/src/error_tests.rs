//! Shows every way in which drawing can fail, in the words that a user reads.

use crate::ReportError;
use serde::ser::Error as _;
use std::collections::BTreeSet;

/// Does not compile when a variant is added, so that its words are added to the table below.
fn report_variant(error: &ReportError) -> usize {
    match error {
        ReportError::NotFindings { .. } => 0,
        ReportError::SchemaVersion { .. } => 1,
        ReportError::Cells { .. } => 2,
        ReportError::NotFinite { .. } => 3,
        ReportError::Json { .. } => 4,
        ReportError::NoPlaceOnEarth { .. } => 5,
        ReportError::NoCells { .. } => 6,
        ReportError::Gpx { .. } => 7,
        ReportError::NoLines { .. } => 8,
        ReportError::Parquet { .. } => 9,
        ReportError::Picture { .. } => 10,
        ReportError::PictureWidth { .. } => 11,
        ReportError::Page { .. } => 12,
        ReportError::Private { .. } => 13,
    }
}

#[test]
fn every_report_error_says_what_it_means() {
    let table: Vec<(ReportError, &str)> = vec![
        (
            ReportError::NotFindings {
                message: "expected value".into(),
                line: 1,
                column: 2,
            },
            "not saved findings: expected value (line 1, column 2)",
        ),
        (
            ReportError::SchemaVersion {
                found: "9".into(),
                expected: 2,
            },
            "findings of schema version 9, expected 2; run `tussock analyse` on the log again",
        ),
        (
            ReportError::Cells {
                column: "grid",
                found: "0 x 0 squares".into(),
                expected: "some".into(),
            },
            "cells, column \"grid\": 0 x 0 squares, expected some",
        ),
        (
            ReportError::Private {
                message: "missing field `name`".into(),
            },
            "private findings cannot be made: missing field `name`",
        ),
        (
            ReportError::NotFinite {
                field: "span.path_m".into(),
                value: f64::INFINITY,
            },
            "span.path_m is inf, expected a finite number",
        ),
        (
            ReportError::Json {
                source: serde_json::Error::custom("no room"),
            },
            "findings cannot be written as JSON",
        ),
        (
            ReportError::NoPlaceOnEarth { file: "pockets.gpx" },
            "no pockets.gpx: positions are in local metres, without geographic coordinates, expected an origin in the settings",
        ),
        (
            ReportError::NoCells {
                file: "cells.parquet",
            },
            "no cells.parquet: the findings hold no squares, expected a cutting width in the settings",
        ),
        (
            ReportError::Gpx {
                source: gpx::errors::GpxError::InvalidElementLacksAttribute("lat", "wpt"),
            },
            "pockets.gpx cannot be written",
        ),
        (
            ReportError::NoLines { file: "legs.parquet" },
            "no legs.parquet: the findings hold no driven lines, expected a log with movement",
        ),
        (
            ReportError::Parquet {
                file: "cells.parquet",
                source: parquet::errors::ParquetError::General("full".into()),
            },
            "cells.parquet cannot be written",
        ),
        (
            ReportError::Picture {
                message: "too large".into(),
            },
            "map.png cannot be drawn: too large",
        ),
        (
            ReportError::PictureWidth {
                width_px: 3,
                min_px: 200,
                max_px: 8000,
            },
            "picture of 3 pixels, expected 200 to 8000",
        ),
        (
            ReportError::Page {
                source: minijinja::Error::new(minijinja::ErrorKind::InvalidOperation, "x"),
            },
            "report.html cannot be written",
        ),
    ];
    let seen: BTreeSet<usize> = table.iter().map(|(error, _)| report_variant(error)).collect();
    assert_eq!(seen.len(), 14, "a variant is missing in the table");
    for (error, words) in table {
        assert_eq!(error.to_string(), words);
    }
}
