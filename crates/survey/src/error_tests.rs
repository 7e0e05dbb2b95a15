//! Shows every way in which an analysis can fail, in the words that a user reads.

use crate::AnalyseError;
use crate::fitted::NoFit;
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

/// Does not compile when a variant is added, so that its words are added to the table below.
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
        AnalyseError::TooCoarse { .. } => 15,
        AnalyseError::LawnTooLarge { .. } => 16,
        AnalyseError::PathTooLong { .. } => 17,
        AnalyseError::PlanOfAnotherGarden { .. } => 18,
        AnalyseError::ComplaintWithoutPlace => 19,
        AnalyseError::NeverStands => 20,
        AnalyseError::SeveralReceivers { .. } => 21,
        AnalyseError::CardNotRead { .. } => 22,
        AnalyseError::CardTellsNothing { .. } => 23,
        AnalyseError::TwoGardens { .. } => 24,
        AnalyseError::LogOfAnotherGarden { .. } => 25,
    }
}

#[test]
fn every_analyse_error_says_what_it_means() {
    let table: Vec<(AnalyseError, &str)> = vec![
        (
            AnalyseError::PlanOfAnotherGarden {
                turns: 340,
                explained_fraction: 0.24,
                outside_fraction: 0.31,
            },
            "the plan is of another garden, or lacks a part of this one: of 340 turns in the log, 24 % were made at its edges and \
             31 % metres outside it, wherever it is laid within 4 m (expected seven in ten and more, and one in ten at most)",
        ),
        (
            AnalyseError::NeverStands,
            "the machine never stands for ten minutes in this log (expected a stay, which shows how the receiver errs)",
        ),
        (
            AnalyseError::SeveralReceivers { machines: 2 },
            "the logs are of 2 machines (expected those of one: each receiver has errors of its own)",
        ),
        (
            AnalyseError::CardNotRead {
                file: "roof.csv".into(),
            },
            "the device card \"roof.csv\" was not read (expected positions.card to be read together with the settings)",
        ),
        (
            AnalyseError::CardTellsNothing {
                file: "roof.csv".into(),
                lasts_s: 40.0,
            },
            "the device card \"roof.csv\" does not show how the receiver errs: it lasts 40 s, or holds its positions (expected the error of \
             ten minutes at rest and more, as tussock inspect --write-error writes it)",
        ),
        (
            AnalyseError::TwoGardens {
                one: "elm.gpx".into(),
                other: "oak.gpx and 1 more file".into(),
                apart_m: 812.3,
            },
            "elm.gpx and oak.gpx and 1 more file lie 812 m apart: logs of two gardens in one call (expected those of one, or a plan \
             that has both lawns)",
        ),
        (
            AnalyseError::LogOfAnotherGarden {
                files: "oak.gpx".into(),
                distance_m: 1240.0,
            },
            "oak.gpx was logged 1.2 km from the lawn of the plan: a log of another garden (expected logs of this one)",
        ),
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
            "the log is in metres of its own, and plans and degrees are of places on Earth (expected positions.origin_lat_deg and positions.origin_lon_deg in the settings)",
        ),
        (
            AnalyseError::ComplaintWithoutPlace,
            "a complaint has no place (expected one of complaint.at and complaint.at_m)",
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
            AnalyseError::TooCoarse {
                period_s: 2000.0,
                limit_s: 40.0,
            },
            "one fix every 33 minutes says nothing of a lawn: a mower turns too often to be followed for longer than 40 s (expected a logger that writes one fix a second)",
        ),
        (
            AnalyseError::LawnTooLarge {
                width_m: 3000.0,
                height_m: 2000.0,
                cells: 495_000_000,
                limit: 40_000_000,
            },
            "the lawn fills a box of 3000 by 2000 m, which takes 495000000 cells of half a swath (limit 40000000, raised by limits.cells)",
        ),
        (
            AnalyseError::PathTooLong {
                path_m: 9e6,
                cells: 5_000_000_000,
                limit: 4_000_000_000,
            },
            "a path of 9000 km sweeps 5000000000 cells (limit 4000000000, 100 times limits.cells: expected fewer logs at a time)",
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
    assert_eq!(seen.len(), 26, "a variant is missing in the table");
    for (error, words) in table {
        assert_eq!(error.to_string(), words);
    }
}

/// Does not compile when a variant is added, so that its words are added to the table below.
fn fit_variant(error: &NoFit) -> usize {
    match error {
        NoFit::Lanes => 0,
        NoFit::SeveralMachines { .. } => 1,
        NoFit::TooFewTurns { .. } => 2,
        NoFit::NoLegs => 3,
        NoFit::NoGround => 4,
    }
}

#[test]
fn every_fit_error_says_what_it_means() {
    let table: Vec<(NoFit, &str)> = vec![
        (NoFit::Lanes, "it drives lanes, which are no matter of chance"),
        (
            NoFit::SeveralMachines { machines: 2 },
            "2 machines worked here; expected one",
        ),
        (
            NoFit::TooFewTurns { turns: 3 },
            "3 turns at an edge can be told; expected at least 15",
        ),
        (NoFit::NoLegs, "the path shows no straight legs between turns"),
        (NoFit::NoGround, "the plan leaves no ground to drive on"),
    ];
    let seen: BTreeSet<usize> = table.iter().map(|(error, _)| fit_variant(error)).collect();
    assert_eq!(seen.len(), 5, "a variant is missing in the table");
    for (error, words) in table {
        assert_eq!(error.to_string(), words);
    }
}
