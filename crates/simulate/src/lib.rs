//! The sandbox: seeded machines on a plan, with exact truth.
//!
//! | question | item |
//! |---|---|
//! | where would this machine drive on this site? | [`simulate`], [`Yard`] |
//! | and if every place were equally easy to reach? | [`Yard::wander`] |
//! | what would a logger on it have recorded? | [`sample`] |
//! | what was really visited, and what was not? | [`truth`] |
//! | what does that look like as a file? | [`gpx_bytes`], [`nmea_bytes`], [`csv_bytes`] |
//! | on which gardens can all this be tried? | [`gardens`] |
//! | what does theory say? | [`laws`] |
//!
//! Truth must not be computed by the code that it judges: this room uses none of the rooms that locate, count or diagnose,
//! and does its own rasterising, measuring and labelling.
//!
//! The same site, machine, run and seed give the same path, bit for bit, on every platform: random numbers come from ChaCha8
//! (Bernstein 2008), sines and arctangents from `libm`, and everything else is IEEE 754 arithmetic.

mod arc;
mod dice;
mod distance;
mod drive;
#[cfg(test)]
mod error_tests;
pub mod gardens;
mod ground;
mod home;
mod lanes;
pub mod laws;
mod machine;
mod run;
mod sample;
mod spiral;
#[cfg(test)]
mod square_tests;
mod stuck;
mod swath;
mod truth;
mod turn;
mod wander;
mod write;

pub use dice::Dice;
pub use drive::{Yard, simulate};
pub use ground::turning_region;
pub use machine::{
    Departure, EdgeRound, HomeWay, Lanes, Machine, Manner, Pattern, Run, SimulateError, Spell, StuckSpot,
    TurnLaw, TurnPair,
};
pub use run::{Doing, Stay, StuckEpisode, TrueHalt, TrueOuting, TrueRun, TrueVertex};
pub use sample::{Bend, LogNoise, PoorSky, Sampling, TimeWindow, sample};
pub use truth::{Counting, TruePocket, Truth, truth};
pub use write::{csv_bytes, gpx_bytes, nmea_bytes};
