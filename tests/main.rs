//! Acceptance tests of the command: what a user types, what comes back.
//!
//! Snapshots stand in `tests/snapshots`; after a wanted change `INSTA_UPDATE=always cargo test` writes them anew, and the
//! diff is read before it is committed.
#![allow(clippy::disallowed_methods)] // the host's mathematics is the oracle here

mod support;

mod answers;
mod ask;
mod bad_input;
mod card;
mod checks;
mod demo;
mod faults;
mod help;
mod hostile;
mod hostile_names;
mod languages;
mod nights;
mod outputs;
mod papers;
mod plan;
mod plaza;
mod recordings;
mod simulate;
mod surveyed;
