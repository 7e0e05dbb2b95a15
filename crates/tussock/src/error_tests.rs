//! Every way in which an analysis can fail, shown: the words are what a user reads.

use crate::coverage::custom::CustomGridError;
use crate::statistics::StatisticsError;
use crate::{AnalyseError, CompareError, GridJobError};
use std::collections::BTreeSet;
use tussock_plane::RegionError;
use tussock_types::PlanFault;

fn fault(is_fatal: bool) -> PlanFault {
    PlanFault {
        feature: None,
        name: None,
        ring: None,
        at: None,
        found: "x".into(),
        expected: "y".into(),
        is_fatal,
    }
}

/// Fails to compile when a variant is added, so that its words come into the table below.
fn analyse_variant(error: &AnalyseError) -> usize {
    match error {
        AnalyseError::NoFixes { .. } => 0,
        AnalyseError::NoMovement { .. } => 1,
        AnalyseError::PlanFaults(_) => 2,
        AnalyseError::PlanAndLogFarApart { .. } => 3,
        AnalyseError::CutWidthOutOfRange { .. } => 4,
        AnalyseError::LocalLogWithPlan => 5,
        AnalyseError::NoPlaceOnEarth => 6,
        AnalyseError::MixedFrames => 7,
        AnalyseError::ExtentTooLarge { .. } => 8,
        AnalyseError::TooManyFixes { .. } => 9,
        AnalyseError::NoOutline { .. } => 10,
        AnalyseError::CannotAlign { .. } => 11,
        AnalyseError::Region(_) => 12,
        AnalyseError::ReferenceApart { .. } => 13,
        AnalyseError::NoCutWidth => 14,
        AnalyseError::CellsTooLarge { .. } => 15,
    }
}

#[test]
fn every_analyse_error_says_what_it_means() {
    let table: Vec<(AnalyseError, &str)> = vec![
        (
            AnalyseError::NoFixes { read: 9, gated: 9 },
            "no usable fix: 9 were read, 9 of them taken out for poor quality or as jumps (expected at least two)",
        ),
        (
            AnalyseError::NoMovement {
                extent_m: 0.4,
                least_m: 1.5,
            },
            "the positions never leave a circle of 0.4 m: the machine did not drive (expected at least 1.5 m)",
        ),
        (
            AnalyseError::PlanFaults(vec![fault(true), fault(false)]),
            "the plan has 1 fault that must be mended first",
        ),
        (
            AnalyseError::PlanFaults(vec![fault(true), fault(true)]),
            "the plan has 2 faults that must be mended first",
        ),
        (
            AnalyseError::PlanAndLogFarApart {
                distance_m: 5000.0,
                log_lat_deg: 40.0,
                log_lon_deg: -30.0,
                plan_lat_deg: -30.0,
                plan_lon_deg: 40.0,
                is_swapped: true,
            },
            "plan and log lie 5.0 km apart: the middle of the log is at 40.000000, -30.000000, the lawn at -30.000000, 40.000000; with latitude and longitude of the plan exchanged they would meet (GeoJSON wants longitude first)",
        ),
        (
            AnalyseError::PlanAndLogFarApart {
                distance_m: 80.0,
                log_lat_deg: 40.0,
                log_lon_deg: -30.0,
                plan_lat_deg: 40.0,
                plan_lon_deg: -30.001,
                is_swapped: false,
            },
            "plan and log lie 80 m apart: the middle of the log is at 40.000000, -30.000000, the lawn at 40.000000, -30.001000",
        ),
        (
            AnalyseError::ReferenceApart {
                name: "survey.csv".to_owned(),
                why: "it is in metres of its own, the log on Earth",
            },
            "survey.csv: it is in metres of its own, the log on Earth",
        ),
        (
            AnalyseError::NoCutWidth,
            "no cutting width is given; expected one, such as 0.22 m",
        ),
        (
            AnalyseError::CutWidthOutOfRange { cut_width_m: 40.0 },
            "cutting width 40 m (expected 0.05 to 2 m)",
        ),
        (
            AnalyseError::LocalLogWithPlan,
            "the log is in metres of its own and the plan on Earth (expected positions.origin_lat_deg and positions.origin_lon_deg in the settings, or no plan)",
        ),
        (
            AnalyseError::NoPlaceOnEarth,
            "the log is in metres of its own and a plan lies on Earth (expected positions.origin_lat_deg and positions.origin_lon_deg in the settings)",
        ),
        (
            AnalyseError::MixedFrames,
            "some logs are on Earth and some in metres of their own (expected one kind)",
        ),
        (
            AnalyseError::ExtentTooLarge {
                extent_m: 100_000.0,
                limit_m: 5000.0,
            },
            "the positions extend over 100000 m (limit 5000 m, raised by limits.extent_m)",
        ),
        (
            AnalyseError::TooManyFixes { fixes: 3, limit: 2 },
            "3 fixes (limit 2, raised by limits.fixes)",
        ),
        (
            AnalyseError::CellsTooLarge {
                cell_m: 1.2,
                cut_width_m: 0.22,
                limit: 100,
                needed: 1_000_000,
            },
            "the lawn falls into cells of 1.20 m, larger than the cutting width of 0.22 m (limit 100, expected 1000000: raise \
             limits.cells to that)",
        ),
        (
            AnalyseError::NoOutline { least_m: 0.5 },
            "no outline can be drawn from this trace: nothing of it is wider than 0.5 m (expected a plan, or a longer log)",
        ),
        (
            AnalyseError::CannotAlign {
                why: "it has no edges".into(),
            },
            "the plan cannot be aligned: it has no edges",
        ),
        (
            AnalyseError::Region(RegionError::DistanceNotFinite { distance_m: f64::NAN }),
            "polygon work on the plan failed",
        ),
    ];
    let seen: BTreeSet<usize> = table.iter().map(|(error, _)| analyse_variant(error)).collect();
    assert_eq!(seen.len(), 15, "a variant is missing in the table");
    for (error, words) in table {
        assert_eq!(error.to_string(), words);
    }
}

/// Fails to compile when a variant is added, so that its words come into the table below.
fn compare_variant(error: &CompareError) -> usize {
    match error {
        CompareError::NoPlan { .. } => 0,
        CompareError::NoWidth { .. } => 1,
        CompareError::WidthsDiffer { .. } => 2,
        CompareError::NoPlace => 3,
        CompareError::NothingInCommon { .. } => 4,
        CompareError::Analyse(_) => 5,
    }
}

#[test]
fn every_compare_error_says_what_it_means() {
    let table: Vec<(CompareError, &str)> = vec![
        (
            CompareError::NoPlan { side: "before" },
            "no plan on the side before (expected a plan on both sides)",
        ),
        (
            CompareError::NoWidth { side: "after" },
            "no cutting width on the side after (expected the same width on both sides)",
        ),
        (
            CompareError::WidthsDiffer {
                before_m: 0.22,
                after_m: 0.24,
            },
            "cutting width 0.22 m before and 0.24 m after (expected one width)",
        ),
        (
            CompareError::NoPlace,
            "private findings and findings on Earth cannot be laid over each other (expected both of one kind)",
        ),
        (
            CompareError::NothingInCommon { common_m2: 0.0 },
            "the two plans have 0.0 m2 of lawn in common (expected plans of one garden)",
        ),
        (
            CompareError::Analyse(AnalyseError::MixedFrames),
            "some logs are on Earth and some in metres of their own (expected one kind)",
        ),
    ];
    let seen: BTreeSet<usize> = table.iter().map(|(error, _)| compare_variant(error)).collect();
    assert_eq!(seen.len(), 6, "a variant is missing in the table");
    for (error, words) in table {
        assert_eq!(error.to_string(), words);
    }
}

/// Fails to compile when a variant is added, so that its words come into the table below.
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

/// Fails to compile when a variant is added, so that its words come into the table below.
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
