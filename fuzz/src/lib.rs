//! What each fuzz target does with its bytes.

pub mod bodies;
