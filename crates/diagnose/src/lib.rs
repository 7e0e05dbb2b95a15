//! The reasons.
//!
//! Question: is an unvisited pocket missed or only not yet visited, and where does the machine lose time?
//!
//! [`luck`] compares a pocket's width with what a free-roaming machine leaves by chance after the same drive;
//! [`stuck`] gathers halts away from the station into places; [`fitted`] makes the logged machine ready to be simulated, and
//! [`rehearse`] says what many nights of it leave. Approximate where the modules say so; causes and remedies
//! beyond that are not drawn from a log that does not show them.

pub mod fitted;
pub mod luck;
pub mod rehearse;
pub mod stuck;
pub mod suggest;
