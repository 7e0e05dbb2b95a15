//! The sandbox: motion, logs, truth, published laws, and the demo garden.
#![allow(clippy::disallowed_methods)] // the host's mathematics is the oracle here
#![allow(clippy::unwrap_used)] // helpers of tests are tests

mod demo;
mod laws;
mod logs;
mod motion;
mod patterns;
mod theory;
