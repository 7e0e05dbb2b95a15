//! A surveyed path, and how far a log is from it.

use crate::Positions;
use serde::{Deserialize, Serialize};

/// A path that somebody surveyed, in the order in which it is driven.
#[derive(Clone, Debug, PartialEq)]
pub struct Reference {
    /// Name of the file.
    pub name: String,
    /// Its corners.
    pub positions: Positions,
    /// Goes up by one wherever the path breaks off; nothing is drawn between two pieces. One value per position.
    pub piece: Vec<u32>,
    /// When each corner was passed, seconds since 1970 in UTC (or on the log's own clock), increasing; `None` for a path
    /// without times.
    pub time_s: Option<Vec<f64>>,
}

/// How far a log is from a surveyed path. Definitions follow ISO 12188-1: see the documentation of the analysis.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct ReferenceFindings {
    /// Name of the surveyed path.
    pub name: String,
    /// Its length.
    pub length_m: f64,
    /// Whether the path has times; without them only the cross-track error can be given.
    pub is_timed: bool,
    /// Fixes that were compared.
    pub compared_fixes: u64,
    /// Fixes that were left out because they are farther from the path than `beside_m`.
    pub beside_fixes: u64,
    /// See `beside_fixes`.
    pub beside_m: f64,
    /// Fixes left out because the machine stood still.
    pub halted_fixes: u64,
    /// Errors of the fixes as logged, after the outlier filter.
    pub logged: ReferenceErrors,
    /// Errors of the path that was found from them, at the same times.
    pub located: ReferenceErrors,
}

/// Errors against a surveyed path.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct ReferenceErrors {
    /// Distance to the nearest place on the path (to the segment, not to the vertex), positive to its left. Null if nothing
    /// could be compared.
    pub cross_track: Option<ErrorLength>,
    /// Along the path, positive ahead of where it should have been. Null without times.
    pub along_track: Option<ErrorLength>,
    /// How much later the machine passed than the path says. Null without times.
    pub timing: Option<ErrorTime>,
    /// Change of the cross-track error from one pass to the adjacent one, within 15 minutes. Null if no ground was passed
    /// again.
    pub pass_to_pass: Option<ErrorLength>,
}

/// A set of signed errors in metres.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct ErrorLength {
    /// How many.
    pub values: u64,
    /// Mean, with its sign.
    pub mean_m: f64,
    /// Root mean square.
    pub rms_m: f64,
    /// 95 in 100 are no larger, signs ignored.
    pub p95_m: f64,
    /// Largest, sign ignored.
    pub max_m: f64,
}

/// A set of signed errors in seconds.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct ErrorTime {
    /// How many.
    pub values: u64,
    /// Mean, with its sign.
    pub mean_s: f64,
    /// Root mean square.
    pub rms_s: f64,
    /// 95 in 100 are no larger, signs ignored.
    pub p95_s: f64,
    /// Largest, sign ignored.
    pub max_s: f64,
}
