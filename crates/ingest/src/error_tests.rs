//! Shows every way in which reading can fail, in the words that a user reads.

use crate::{ColumnsError, IngestError, PlanFileError, SettingsError, SettingsFault, WalkError, WalkFault};
use std::collections::BTreeSet;
use std::io::Error;
use tussock_types::{LogFormat, SkipReason};

/// Does not compile when a variant is added, so that its words are added to the table below.
fn ingest_variant(error: &IngestError) -> usize {
    match error {
        IngestError::Read { .. } => 0,
        IngestError::Empty { .. } => 1,
        IngestError::NotALog { .. } => 2,
        IngestError::Unpack { .. } => 3,
        IngestError::NoTimes { .. } => 4,
        IngestError::NoDate { .. } => 5,
        IngestError::NoPositions { .. } => 6,
        IngestError::Limit { .. } => 7,
        IngestError::ColumnMissing { .. } => 8,
        IngestError::DateOrder { .. } => 9,
        IngestError::Strict { .. } => 10,
        IngestError::MixedPositions { .. } => 11,
        IngestError::NoPath { .. } => 12,
        IngestError::NoClock { .. } => 13,
        IngestError::ErrorSeries { .. } => 14,
        IngestError::TwoMachines { .. } => 15,
    }
}

#[test]
fn every_ingest_error_says_what_it_means() {
    let table: Vec<(IngestError, &str)> = vec![
        (
            IngestError::Read {
                name: "night.gpx".into(),
                byte: 0,
                source: Error::other("is a directory"),
            },
            "night.gpx: cannot be read: is a directory",
        ),
        (
            IngestError::Read {
                name: "night.gpx".into(),
                byte: 4096,
                source: Error::other("input/output error"),
            },
            "night.gpx: cannot be read past byte 4096: input/output error",
        ),
        (
            IngestError::TwoMachines {
                name: "night.csv".into(),
                apart_m: 12.4,
            },
            "night.csv: its positions jump to and fro between places 12 m apart: two machines in one file, or a receiver that jumps, \
             expected one machine, or a column that names it (--columns machine=NAME,...)",
        ),
        (
            IngestError::NoPath {
                name: "survey.csv".into(),
                corners: 1,
            },
            "survey.csv: holds 1 positions, expected a path of at least two",
        ),
        (
            IngestError::ErrorSeries {
                name: "error.csv".into(),
                line: 3,
                found: "t_s 1".into(),
                expected: "a time later than the row before",
            },
            "error.csv: line 3: found t_s 1, expected a time later than the row before",
        ),
        (
            IngestError::Empty {
                name: "night.gpx".into(),
            },
            "night.gpx: is empty (0 bytes), expected a log (GPX, NMEA 0183, CSV, ...)",
        ),
        (
            IngestError::NotALog {
                name: "night.gpx".into(),
                found: "a PDF document".into(),
                byte: 0,
            },
            "night.gpx: is not a log: found a PDF document at byte 0, expected GPX, NMEA 0183 sentences, CSV with named columns, KML tracks, RTKLIB .pos, MF-JSON or gpsd JSON",
        ),
        (
            IngestError::Unpack {
                name: "night.gpx".into(),
                unpacked: 0,
                source: Error::other("corrupt deflate stream"),
            },
            "night.gpx: compressed data cannot be unpacked after 0 bytes: corrupt deflate stream",
        ),
        (
            IngestError::NoTimes {
                name: "night.gpx".into(),
                positions: 7,
                line: 3,
            },
            "night.gpx: holds 7 positions but no times (first at line 3), expected a time with each position",
        ),
        (
            IngestError::NoDate {
                name: "night.gpx".into(),
                time_of_day: "12:00:00".into(),
                line: 2,
            },
            "night.gpx: holds times of day (12:00:00 at line 2) but no date anywhere, expected a sentence or column with the date",
        ),
        (
            IngestError::NoClock {
                name: "night.csv".into(),
                value: "422922.0".into(),
                line: 2,
                expected: "dates",
            },
            "night.csv: times such as 422922.0 (line 2) do not say on which day they were, expected dates",
        ),
        (
            IngestError::NoPositions {
                name: "night.gpx".into(),
                format: LogFormat::Gpx,
                found: "2 waypoints".into(),
            },
            "night.gpx: GPX log without a usable position: 2 waypoints, expected positions with times",
        ),
        (
            IngestError::Limit {
                name: "night.gpx".into(),
                what: "number of fixes",
                value: 3,
                limit: 2,
                key: "fixes",
                byte: 90,
            },
            "night.gpx: number of fixes at byte 90: 3 is more than 2, the limit set by limits.fixes",
        ),
        (
            IngestError::ColumnMissing {
                name: "night.gpx".into(),
                wanted: "latitude".into(),
                field: "lat",
                have: "\"a\", \"b\"".into(),
                line: 1,
            },
            "night.gpx: line 1 has no column \"latitude\" for lat, its columns are \"a\", \"b\"",
        ),
        (
            IngestError::DateOrder {
                name: "night.gpx".into(),
                value: "05/06/2026".into(),
                line: 2,
            },
            "night.gpx: dates such as 05/06/2026 (line 2) can be read with the day or the month first, expected year-month-day or a day above 12 somewhere",
        ),
        (
            IngestError::Strict {
                name: "night.gpx".into(),
                reason: SkipReason::Malformed,
                line: 5,
                byte: 91,
                excerpt: "x".into(),
            },
            "night.gpx: line 5, byte 91: malformed field: \"x\"",
        ),
        (
            IngestError::MixedPositions {
                local: "a.csv".into(),
                geographic: "b.gpx".into(),
            },
            "a.csv is in local metres and b.gpx in latitude and longitude, expected one kind for all logs",
        ),
    ];
    let seen: BTreeSet<usize> = table.iter().map(|(error, _)| ingest_variant(error)).collect();
    assert_eq!(seen.len(), 16, "a variant is missing in the table");
    for (error, words) in table {
        assert_eq!(error.to_string(), words);
    }
}

/// Does not compile when a variant is added, so that its words are added to the table below.
fn columns_variant(error: &ColumnsError) -> usize {
    match error {
        ColumnsError::NoPair { .. } => 0,
        ColumnsError::UnknownKey { .. } => 1,
        ColumnsError::BadNumber { .. } => 2,
        ColumnsError::Twice { .. } => 3,
        ColumnsError::Missing { .. } => 4,
    }
}

#[test]
fn every_columns_error_says_what_it_means() {
    let table: Vec<(ColumnsError, &str)> = vec![
        (
            ColumnsError::NoPair { part: "lat".into() },
            "\"lat\" is no column, expected key=column, such as lat=latitude or lat=#4",
        ),
        (
            ColumnsError::UnknownKey {
                key: "when".into(),
                expected: "time, lat".into(),
            },
            "unknown key \"when\", expected one of time, lat",
        ),
        (
            ColumnsError::BadNumber { column: "#x".into() },
            "\"#x\" is no column number, expected #1 for the first column",
        ),
        (
            ColumnsError::Twice { key: "lat".into() },
            "key \"lat\" is given twice",
        ),
        (
            ColumnsError::Missing {
                missing: "lon".into(),
            },
            "no column for lon, expected time (or week and tow) with lat and lon, or with x_m and y_m",
        ),
    ];
    let seen: BTreeSet<usize> = table.iter().map(|(error, _)| columns_variant(error)).collect();
    assert_eq!(seen.len(), 5, "a variant is missing in the table");
    for (error, words) in table {
        assert_eq!(error.to_string(), words);
    }
}

/// Does not compile when a variant is added, so that its words are added to the table below.
fn plan_variant(error: &PlanFileError) -> usize {
    match error {
        PlanFileError::NotJson { .. } => 0,
        PlanFileError::NotAFeatureCollection { .. } => 1,
        PlanFileError::TooLarge { .. } => 2,
    }
}

#[test]
fn every_plan_error_says_what_it_means() {
    let table: Vec<(PlanFileError, &str)> = vec![
        (
            PlanFileError::NotJson {
                name: "garden".into(),
                line: 1,
                column: 2,
                reason: "expected value".into(),
            },
            "garden: line 1, column 2: not JSON: expected value",
        ),
        (
            PlanFileError::NotAFeatureCollection {
                name: "garden".into(),
                found: "it has no \"type\"".into(),
            },
            "garden: it has no \"type\", expected a GeoJSON FeatureCollection (an object with \"type\": \"FeatureCollection\" and \"features\")",
        ),
        (
            PlanFileError::TooLarge {
                name: "garden".into(),
                found: 10,
                unit: "corners",
                limit: 9,
            },
            "garden: 10 corners are more than the limit of 9 (limits.plan_corners)",
        ),
    ];
    let seen: BTreeSet<usize> = table.iter().map(|(error, _)| plan_variant(error)).collect();
    assert_eq!(seen.len(), 3, "a variant is missing in the table");
    for (error, words) in table {
        assert_eq!(error.to_string(), words);
    }
}

/// Does not compile when a variant is added, so that its words are added to the table below.
fn walk_variant(error: &WalkError) -> usize {
    match error {
        WalkError::NotGpx { .. } => 0,
        WalkError::FaultyXml { .. } => 1,
        WalkError::TooLong { .. } => 2,
        WalkError::NoLawn { .. } => 3,
        WalkError::Faults { .. } => 4,
        WalkError::Unclear { .. } => 5,
        WalkError::NoSuchName { .. } => 6,
        WalkError::NoWaypoint { .. } => 7,
    }
}

#[test]
fn every_walk_error_says_what_it_means() {
    let table: Vec<(WalkError, &str)> = vec![
        (
            WalkError::NotGpx {
                name: "walk".into(),
                found: "it is no XML".into(),
            },
            "walk: is not a GPX file: it is no XML, expected a file that begins with <gpx>",
        ),
        (
            WalkError::FaultyXml {
                name: "walk".into(),
                line: 4,
                reason: "the file breaks off".into(),
            },
            "walk: line 4: faulty XML: the file breaks off",
        ),
        (
            WalkError::TooLong {
                name: "walk".into(),
                limit: 5,
            },
            "walk: more than 5 positions, expected the walk around one garden",
        ),
        (
            WalkError::NoWaypoint { name: "asked".into() },
            "asked: holds no waypoint with a position, expected one <wpt> for each place",
        ),
        (
            WalkError::NoLawn {
                name: "walk".into(),
                names: "\"bed\"".into(),
            },
            "walk: no track has a name that begins with \"lawn\"; its names are \"bed\"",
        ),
        (
            WalkError::Faults {
                name: "walk".into(),
                faults: vec![
                    WalkFault {
                        line: 3,
                        name: "zone".into(),
                        found: "it has 2 positions".into(),
                        expected: "a ring".into(),
                    },
                    WalkFault {
                        line: 9,
                        name: "x".into(),
                        found: "odd".into(),
                        expected: String::new(),
                    },
                ],
            },
            "walk: line 3: \"zone\": it has 2 positions, expected a ring\nwalk: line 9: \"x\": odd",
        ),
        (
            WalkError::Unclear {
                name: "walk".into(),
                guesses: Vec::new(),
            },
            "walk: no track is named as the lawn, and none comes back to where it began",
        ),
        (
            WalkError::NoSuchName {
                name: "walk".into(),
                wanted: "bed".into(),
                names: "\"pond\"".into(),
            },
            "walk: nothing is called \"bed\"; its names are \"pond\"",
        ),
    ];
    let seen: BTreeSet<usize> = table.iter().map(|(error, _)| walk_variant(error)).collect();
    assert_eq!(seen.len(), 8, "a variant is missing in the table");
    for (error, words) in table {
        assert_eq!(error.to_string(), words);
    }
}

/// Does not compile when a variant is added, so that its words are added to the table below.
fn settings_variant(error: &SettingsError) -> usize {
    match error {
        SettingsError::NotToml { .. } => 0,
        SettingsError::Faults { .. } => 1,
        SettingsError::NotText { .. } => 2,
    }
}

#[test]
fn every_settings_error_says_what_it_means() {
    let table: Vec<(SettingsError, &str)> = vec![
        (
            SettingsError::NotToml {
                name: "garden".into(),
                line: 1,
                column: 2,
                reason: "expected a key".into(),
            },
            "garden: line 1, column 2: not TOML: expected a key",
        ),
        (
            SettingsError::Faults {
                name: "garden".into(),
                faults: vec![SettingsFault {
                    line: 2,
                    key: "limits.fixes".into(),
                    found: "is 0".into(),
                    expected: "a whole number from 1 up".into(),
                }],
            },
            "garden: line 2: limits.fixes is 0, expected a whole number from 1 up",
        ),
        (
            SettingsError::NotText {
                name: "garden".into(),
                byte: 7,
            },
            "garden: is not UTF-8 text from byte 7 on, expected settings in TOML",
        ),
    ];
    let seen: BTreeSet<usize> = table.iter().map(|(error, _)| settings_variant(error)).collect();
    assert_eq!(seen.len(), 3, "a variant is missing in the table");
    for (error, words) in table {
        assert_eq!(error.to_string(), words);
    }
}
