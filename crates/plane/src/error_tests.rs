//! Shows every way in which polygon work can fail, in the words that a user reads.

use crate::RegionError;
use std::collections::BTreeSet;

/// Does not compile when a variant is added, so that its words are added to the table below.
fn region_variant(error: &RegionError) -> usize {
    match error {
        RegionError::NotOnThePlane { .. } => 0,
        RegionError::DistanceNotFinite { .. } => 1,
        RegionError::EngineFailed { .. } => 2,
    }
}

#[test]
fn every_region_error_says_what_it_means() {
    let table: Vec<(RegionError, &str)> = vec![
        (
            RegionError::NotOnThePlane {
                part: 0,
                ring: 1,
                corner: 2,
                east_m: 1e9,
                north_m: 0.5,
            },
            "part 0, ring 1, corner 2 lies at 1000000000 m east, 0.5 m north; expected finite numbers below 10000000 m",
        ),
        (
            RegionError::DistanceNotFinite { distance_m: f64::NAN },
            "cannot grow a region by NaN m; expected a finite number below 10000000 m",
        ),
        (
            RegionError::EngineFailed {
                operation: "union",
                corners: 7,
                reason: "no end".into(),
            },
            "the polygon engine failed at \"union\" on 7 corners: no end",
        ),
    ];
    let seen: BTreeSet<usize> = table.iter().map(|(error, _)| region_variant(error)).collect();
    assert_eq!(seen.len(), 3, "a variant is missing in the table");
    for (error, words) in table {
        assert_eq!(error.to_string(), words);
    }
}
