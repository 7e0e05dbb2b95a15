//! Shows every way in which simulating can fail, in the words that a user reads.

use crate::SimulateError;
use std::collections::BTreeSet;
use tussock_plane::RegionError;

/// Does not compile when a variant is added, so that its words are added to the table below.
fn simulate_variant(error: &SimulateError) -> usize {
    match error {
        SimulateError::OutOfRange { .. } => 0,
        SimulateError::NoRoom { .. } => 1,
        SimulateError::TurningLine(_) => 2,
    }
}

#[test]
fn every_simulate_error_says_what_it_means() {
    let table: Vec<(SimulateError, &str)> = vec![
        (
            SimulateError::OutOfRange {
                what: "speed_mps",
                value: -1.0,
                expected: "a speed above 0",
            },
            "speed_mps is -1; expected a speed above 0",
        ),
        (
            SimulateError::NoRoom {
                past_boundary_m: -3.0,
                lawn_m2: 25.0,
            },
            "a machine that turns -3 m past the edge has no room on 25.0 m2 of lawn; expected a smaller setback or a larger lawn",
        ),
        (
            SimulateError::TurningLine(RegionError::DistanceNotFinite { distance_m: f64::NAN }),
            "the turning line could not be drawn",
        ),
    ];
    let seen: BTreeSet<usize> = table.iter().map(|(error, _)| simulate_variant(error)).collect();
    assert_eq!(seen.len(), 3, "a variant is missing in the table");
    for (error, words) in table {
        assert_eq!(error.to_string(), words);
    }
}
