//! Hand-drawn traces and grids, fixtures, tolerances (tests only).
