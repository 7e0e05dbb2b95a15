//! The reasons, and what to change.
//!
//! | question | module |
//! |---|---|
//! | does luck leave a pocket so wide? | [`luck`] |
//! | where did the machine lose time? | [`stuck`] |
//! | why was a pocket missed? | [`causes`], from [`clearance`], [`passages`], [`turns`], [`outings`], [`pocket`] |
//! | what machine was this, ready to be simulated? | [`fitted`] |
//! | what do many nights of it leave? | [`rehearse`] |
//! | what to change, and what will it bring? | [`suggest`] |
//! | what does the grass need, where is it worn? | [`turf`], [`worn`] |
//!
//! Approximate where the modules say so; causes and remedies beyond that are not drawn from a log that does not show them.

pub mod causes;
pub mod clearance;
pub mod fitted;
pub mod luck;
pub mod outings;
pub mod passages;
pub mod pocket;
pub mod rehearse;
pub mod stuck;
pub mod suggest;
pub mod turf;
pub mod turns;
pub mod worn;
