//! The count, compared with closed forms, with polygons, and with properties that any count must have.
#![allow(clippy::disallowed_methods)] // the host's mathematics is the oracle here

mod areas;
mod custom;
mod laid;
mod properties;
mod visits;
