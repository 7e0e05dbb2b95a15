//! The ground: local metric frame, guarded polygon work, index of legs.
//!
//! | question | item |
//! |---|---|
//! | where are this latitude and longitude, in metres? | [`Frame`] |
//! | how large is this ground, what is left without that zone, where does the machine's body fit? | [`Region`] |
//! | is this plan sound, and what lawn does it leave? | [`Site`] |
//! | which squares of a grid are lawn? | [`rasterise`], [`BitGrid`] |
//! | what outline do these squares have? | [`outlines`] |
//! | which legs passed within r metres of this place? | [`LegIndex`] |
//! | what is the cheapest way over the cells? | [`cheapest_way`] |
//! | how does a person find this place with a tape? | [`Site::landmarks`], [`tape`] |
//!
//! Polygon operations happen here and nowhere else, behind [`Region`]: coordinates must be finite, degenerate rings are
//! dropped, and a panic in the library below becomes a [`RegionError`].

pub mod distance;
#[cfg(test)]
mod error_tests;
mod faults;
mod frame;
mod landmarks;
mod legs;
mod line;
mod outline;
mod raster;
mod region;
mod ring;
mod shortest;
mod site;
mod vector;

pub use faults::merge_faults;
pub use frame::{Frame, Topocentric, geocentric_m};
pub use landmarks::{Landmark, LandmarkKind, tape};
pub use legs::{Leg, LegIndex};
pub use line::{line_simplified, nearest_on_piece, smallest_box_m};
pub use outline::outlines;
pub use raster::{BitGrid, CellRuns, rasterise};
pub use region::{Joins, Region, RegionError};
pub use shortest::{CellWay, Steps, cheapest_way};
pub use site::{Named, Site};
pub use vector::{Edge, Vector};
