//! The reasons, and what to change.
//!
//! | question | room |
//! |---|---|
//! | would luck leave a pocket so wide? | [`luck`] by the closed form, [`chance_baseline`] by rehearsing this machine on this plan |
//! | how much room is there, where does it narrow, what is reached? | [`clearance`], [`passages`] |
//! | why was a pocket missed? | [`causes`], from its [`pocket`] shape and the [`turns`] round it |
//! | where does it lose time, go astray, wear the turf? | [`stuck`], [`outings`], [`worn`] |
//! | how often does the grass need it? | [`turf`] |
//! | what machine was it, and what do many nights of it leave? | [`fitted`], [`night_simulation`] |
//! | what to change, and what will it bring? | [`suggest`] |
//!
//! Approximate where the modules say so; causes and remedies beyond that are not drawn from a log that does not show them.

pub mod causes;
pub mod chance_baseline;
pub mod clearance;
#[cfg(test)]
mod error_tests;
pub mod fitted;
pub mod luck;
pub mod night_simulation;
pub mod outings;
pub mod passages;
pub mod pocket;
pub mod stuck;
pub mod suggest;
pub mod turf;
pub mod turns;
pub mod worn;
