//! The count, held to closed forms, to polygons, and to properties that any count must have.

mod areas;
mod custom;
mod laid;
mod properties;
mod visits;
