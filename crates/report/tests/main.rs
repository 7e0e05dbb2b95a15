//! The windows: what they say about sample gardens, and that files are what other tools expect.
#![allow(clippy::disallowed_methods)] // the host's mathematics is the oracle here
#![allow(clippy::unwrap_used)] // helpers of tests are tests

mod comparison;
mod forecast;
mod garden;
mod json;
mod language;
mod layers;
mod look;
mod morning;
mod outputs;
mod page;
mod schema;
mod terminal;
mod visits;
