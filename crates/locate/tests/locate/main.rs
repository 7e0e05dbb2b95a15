//! Locating, held to drives that are known because they were drawn.

mod activities;
mod anchored;
mod any_trace;
mod drawn;
mod gates;
mod halts;
mod named_set;
mod noise;
mod path;
mod rebuilt;
