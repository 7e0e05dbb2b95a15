//! The reasons, and what to change.
//!
//! | question | room |
//! |---|---|
//! | would luck leave a pocket this wide? | [`tussock_coverage::luck`] in closed form, [`chance_baseline`] for this machine and plan |
//! | how much room is there, where does it narrow, what can be reached? | [`clearance`], [`passages`] |
//! | why was a pocket missed? | [`causes`], from its shape ([`pocket`]) and the turns round it ([`turns`]) |
//! | where does the machine lose time or wear the turf? | [`stuck`], [`worn`] |
//! | what do many nights of the fitted machine leave uncut? | [`night_simulation`] |
//! | what to change, and what will it bring? | [`suggest`] |
//!
//! Approximate where the modules say so. No cause and no remedy is claimed unless the log shows it.

pub mod advice;
mod cause_wording;
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
pub mod worn;
