//! Are suggestions worth their wire? Gardens with a pocket that is hard to get to, the suggestion built into the plan, and run
//! again by the machine that made the log, not by the one that was fitted to it.

mod family;
mod proof;
mod table;
