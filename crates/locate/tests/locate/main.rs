//! Locating, compared with drives that are known because they were drawn.
#![allow(clippy::disallowed_methods)] // the host's mathematics is the oracle here

mod activities;
mod anchored;
mod any_trace;
mod drawn;
mod gates;
mod halts;
mod named_set;
mod noise;
mod path;
mod periods;
mod rebuilt;
mod receiver;
mod stays;
