//! The reasons, and what to change.
//!
//! | question | room |
//! |---|---|
//! | would luck leave a pocket so wide? | [`tussock_coverage::luck`] by the closed form, [`chance_baseline`] by rehearsing this machine on this plan |
//! | how much room is there, where does it narrow, what is reached? | [`clearance`], [`passages`] |
//! | why was a pocket missed? | [`causes`], from its [`pocket`] shape and the [`turns`] round it |
//! | where does it lose time, wear the turf? | [`stuck`], [`worn`] |
//! | what do many nights of the fitted machine leave? | [`night_simulation`] |
//! | what to change, and what will it bring? | [`suggest`] |
//!
//! Approximate where the modules say so; causes and remedies beyond that are not drawn from a log that does not show them.

pub mod advice;
mod because;
pub mod causes;
pub mod chance_baseline;
pub mod clearance;
pub mod installation;
pub mod night_simulation;
pub mod passages;
pub mod pocket;
pub mod pocket_verdicts;
pub mod site_analysis;
pub mod spots;
pub mod stuck;
pub mod suggest;
pub mod turns;
mod unseen;
pub mod worn;
