//! Every variant is displayed, and the limit of cells is tested on both sides.

use crate::custom::{CustomGrid, CustomGridError, Division, MOST_CELLS};
use std::collections::BTreeSet;
use tussock_types::Place;

/// Fails to compile when a variant is added, so that its words come into the table below.
fn variant(error: &CustomGridError) -> usize {
    match error {
        CustomGridError::NotFinite { .. } => 0,
        CustomGridError::Flat { .. } => 1,
        CustomGridError::Cells { .. } => 2,
    }
}

#[test]
fn every_custom_grid_error_says_what_it_means() {
    let table = [
        (
            CustomGridError::NotFinite {
                corner: "origin",
                place: Place::new(f64::NAN, 2.0),
            },
            "the origin of the grid is at NaN, 2; expected finite numbers",
        ),
        (
            CustomGridError::Flat { area_m2: 0.0 },
            "the three corners of the grid span 0e0 m2; expected corners that do not lie on one line",
        ),
        (
            CustomGridError::Cells {
                columns: 0.0,
                rows: 5.0,
            },
            "the grid has 0 x 5 cells; expected at least one along each axis and at most 50000000 in all",
        ),
    ];
    let seen: BTreeSet<usize> = table.iter().map(|(error, _)| variant(error)).collect();
    assert_eq!(seen.len(), 3, "a variant is missing in the table");
    for (error, words) in table {
        assert_eq!(error.to_string(), words);
    }
}

#[test]
fn cells_of_a_custom_grid_are_limited_on_both_sides() {
    let laid = |columns: usize, rows: usize| {
        let (east, north) = (Place::new(100.0, 0.0), Place::new(0.0, 50.0));
        CustomGrid::from_corners(Place::default(), east, north, Division::Counts { columns, rows })
    };
    assert_eq!(10_000 * 5_000, MOST_CELLS);
    assert!(laid(10_000, 5_000).is_ok());
    for (columns, rows) in [(10_000, 5_001), (0, 5), (5, 0)] {
        let error = laid(columns, rows).expect_err("too many or too few");
        assert!(matches!(error, CustomGridError::Cells { .. }), "{error}");
    }
}
