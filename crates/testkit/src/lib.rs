//! Hand-drawn traces and grids, fixtures, tolerances (tests only).
//!
//! | for | item |
//! |---|---|
//! | a mask drawn as text | [`grid!`], [`drawing`] |
//! | a few fixes by hand | [`trace!`] |
//! | files of the repository | [`fixture`] |
//! | figures with a stated tolerance | [`assert_near`] |
//! | the statistics of a few outcomes | [`statistics`] |
//!
//! A mistake in a test must stop the test: everything here panics on one and says where.

pub mod statistics;

use std::path::PathBuf;
use tussock_plane::BitGrid;
use tussock_types::{Fix, Grid, Trace};

/// Draws a mask: `#` is on, `.` is off, the first row is the northernmost. The south-western corner lies at 0, 0.
///
/// ```
/// let mask = tussock_testkit::grid![0.5; "##.", "..#"];
/// assert_eq!(mask.count(), 3);
/// assert!(mask.get(0, 1) && mask.get(2, 0));
/// assert_eq!(mask.area_m2(), 0.75);
/// ```
#[macro_export]
macro_rules! grid {
    [$cell_m:expr; $($row:literal),+ $(,)?] => {
        $crate::mask($cell_m, &[$($row),+])
    };
}

/// Draws a trace in local metres: `seconds => (east, north)`, in order of time; a semicolon opens a new segment.
///
/// ```
/// let trace = tussock_testkit::trace![0 => (0, 0), 1 => (0.4, 0); 60 => (5, 2)];
/// assert_eq!(trace.len(), 3);
/// assert_eq!(trace.segment, [0, 0, 1]);
/// assert_eq!(trace.positions.pair(1), (0.4, 0.0));
/// ```
#[macro_export]
macro_rules! trace {
    [$($($time_s:expr => ($east_m:expr, $north_m:expr)),+ $(,)?);+ $(;)?] => {
        $crate::drawn_trace(&[$(&[$(($time_s as f64, $east_m as f64, $north_m as f64)),+]),+])
    };
}

/// The mask of a drawing, see [`grid!`].
///
/// # Panics
/// When rows differ in length or hold another character.
pub fn mask(cell_m: f64, rows: &[&str]) -> BitGrid {
    let columns = rows.first().map_or(0, |row| row.chars().count());
    let grid = Grid {
        east_min_m: 0.0,
        north_min_m: 0.0,
        cell_m,
        columns,
        rows: rows.len(),
    };
    let mut mask = BitGrid::new(grid);
    for (row, drawn) in rows.iter().rev().enumerate() {
        assert_eq!(
            drawn.chars().count(),
            columns,
            "row \"{drawn}\" is not as long as the first one"
        );
        for (column, cell) in drawn.chars().enumerate() {
            match cell {
                '#' => mask.set(column, row),
                '.' => {}
                other => panic!("'{other}' in row \"{drawn}\"; expected '#' or '.'"),
            }
        }
    }
    mask
}

/// A mask as it would be drawn, the northernmost row first: what a failed comparison should show.
pub fn drawing(mask: &BitGrid) -> String {
    let line = |row: usize| -> String {
        (0..mask.grid.columns)
            .map(|column| if mask.get(column, row) { '#' } else { '.' })
            .collect()
    };
    (0..mask.grid.rows).rev().map(line).collect::<Vec<_>>().join("\n")
}

/// A trace from segments of seconds, metres east and metres north, see [`trace!`].
///
/// # Panics
/// When time does not rise.
pub fn drawn_trace(segments: &[&[(f64, f64, f64)]]) -> Trace {
    let mut trace = Trace::local("machine-1");
    for (segment, fixes) in (0..).zip(segments) {
        for &(time_s, east_m, north_m) in *fixes {
            assert!(
                trace.time_s.last().is_none_or(|&last_s| time_s > last_s),
                "time does not rise at {time_s} s"
            );
            trace.push(Fix {
                segment,
                ..Fix::bare(time_s, east_m, north_m)
            });
        }
    }
    trace
}

/// Path of something in the repository's `fixtures`.
///
/// # Panics
/// When it is not there.
pub fn fixture(name: &str) -> PathBuf {
    let path = PathBuf::from(env!("CARGO_MANIFEST_DIR"))
        .join("../../fixtures")
        .join(name);
    assert!(path.exists(), "there is no fixture {}", path.display());
    path
}

/// Holds a value to another within a tolerance in its own unit.
///
/// # Panics
/// When it is farther off, or no number.
#[track_caller]
pub fn assert_near(what: &str, value: f64, expected: f64, tolerance: f64) {
    let off = (value - expected).abs();
    assert!(
        off <= tolerance,
        "{what} is {value}; expected {expected} +- {tolerance}, off by {off}"
    );
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_drawing_comes_back_as_it_was_drawn() {
        let mask = grid![1.0; "#..#", ".##.", "...."];
        assert_eq!(drawing(&mask), "#..#\n.##.\n....");
        assert!(mask.get(0, 2) && !mask.get(0, 0));
    }

    #[test]
    #[should_panic(expected = "is not as long as the first one")]
    fn a_ragged_drawing_is_a_mistake() {
        let _ = grid![1.0; "##", "#"];
    }

    #[test]
    #[should_panic(expected = "time does not rise at 1 s")]
    fn time_that_stands_still_is_a_mistake() {
        let _ = trace![0 => (0, 0), 1 => (1, 0), 1 => (2, 0)];
    }

    #[test]
    #[should_panic(expected = "path is 1.2; expected 1 +- 0.1")]
    fn a_value_too_far_off_is_named() {
        assert_near("path", 1.2, 1.0, 0.1);
    }

    #[test]
    #[should_panic(expected = "path is NaN")]
    fn a_value_that_is_no_number_is_never_near() {
        assert_near("path", f64::NAN, 1.0, 10.0);
    }
}
