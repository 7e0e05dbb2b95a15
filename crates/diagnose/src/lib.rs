//! The reasons: luck or not, stuck spots.
