//! Are suggestions worth their wire? Gardens with a pocket that is hard to reach; the suggestion is built into the plan, and
//! the machine that made the log, not the fitted one, runs again.

mod family;
mod proof;
mod sets;
mod table;
