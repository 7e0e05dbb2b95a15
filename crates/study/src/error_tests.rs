//! Shows every way in which the bench can fail, in the words that a user reads.

use crate::GridJobError;
use crate::statistics::StatisticsError;
use std::collections::BTreeSet;
use tussock_coverage::custom::CustomGridError;
use tussock_survey::AnalyseError;

/// Does not compile when a variant is added, so that its words are added to the table below.
fn grid_job_variant(error: &GridJobError) -> usize {
    match error {
        GridJobError::Grid(_) => 0,
        GridJobError::CutWidth { .. } => 1,
        GridJobError::Apart { .. } => 2,
        GridJobError::NoMetres { .. } => 3,
        GridJobError::Analyse(_) => 4,
    }
}

#[test]
fn every_grid_job_error_says_what_it_means() {
    let table: Vec<(GridJobError, &str)> = vec![
        (
            GridJobError::Grid(CustomGridError::Flat { area_m2: 0.0 }),
            "the three corners of the grid span 0e0 m2; expected corners that do not lie on one line",
        ),
        (
            GridJobError::CutWidth { cut_width_m: 22.0 },
            "the rule has a cutting width of 22 m; expected 0.05 to 2 m",
        ),
        (
            GridJobError::Apart {
                grid: "on Earth",
                log: "in local metres",
            },
            "the grid lies on Earth, the log in local metres; expected both on Earth or both in local metres",
        ),
        (
            GridJobError::NoMetres {
                found: "a rule with a width",
            },
            "a grid of degrees has no metres: a rule with a width, expected the path as logged and a rule without a width",
        ),
        (
            GridJobError::Analyse(AnalyseError::MixedFrames),
            "some logs are on Earth and some in metres of their own (expected one kind)",
        ),
    ];
    let seen: BTreeSet<usize> = table.iter().map(|(error, _)| grid_job_variant(error)).collect();
    assert_eq!(seen.len(), 5, "a variant is missing in the table");
    for (error, words) in table {
        assert_eq!(error.to_string(), words);
    }
}

/// Does not compile when a variant is added, so that its words are added to the table below.
fn statistics_variant(error: &StatisticsError) -> usize {
    match error {
        StatisticsError::TooFew { .. } => 0,
        StatisticsError::NotFinite { .. } => 1,
        StatisticsError::Unpaired { .. } => 2,
        StatisticsError::OutOfRange { .. } => 3,
    }
}

#[test]
fn every_statistics_error_says_what_it_means() {
    let table: Vec<(StatisticsError, &str)> = vec![
        (
            StatisticsError::TooFew {
                what: "gardens".into(),
                found: 1,
                least: 2,
            },
            "gardens: 1, expected at least 2",
        ),
        (
            StatisticsError::NotFinite {
                what: "night 3 of garden a".into(),
                value: f64::INFINITY,
            },
            "night 3 of garden a is inf; expected a finite number",
        ),
        (
            StatisticsError::Unpaired {
                garden: "a".into(),
                a: 3,
                b: 4,
            },
            "garden a: 3 nights against 4, expected as many on both sides when nights are pairs",
        ),
        (
            StatisticsError::OutOfRange {
                what: "interval_fraction",
                value: 1.5,
                expected: "more than 0 and less than 1",
            },
            "interval_fraction is 1.5; expected more than 0 and less than 1",
        ),
    ];
    let seen: BTreeSet<usize> = table.iter().map(|(error, _)| statistics_variant(error)).collect();
    assert_eq!(seen.len(), 4, "a variant is missing in the table");
    for (error, words) in table {
        assert_eq!(error.to_string(), words);
    }
}
