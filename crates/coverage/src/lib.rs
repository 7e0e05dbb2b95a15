//! The count.
//!
//! Question: which ground was under the cutting disc, how often and when, and what connected ground was not?
//!
//! ```text
//!   corner a o=========o corner b      swath of one leg: all points within half a width of it
//!            row by row: one span of cells whose centres lie inside
//! ```
//!
//! Method. The disc's sweep along a leg is a capsule; each row of the grid meets it in one span, computed in closed form
//! ([`swath`]). A cell belongs if its centre does. Visits are counted per cell with the time of closest approach; a new
//! visit needs time away ([`visits`]). Unvisited lawn is opened by a disc and grown back (mathematical morphology, Serra
//! 1982); its parts are pockets ([`pockets`]). Revisit intervals are Kaplan-Meier quantiles (Kaplan & Meier 1958, DOI
//! 10.1080/01621459.1958.10501452), with the unfinished last interval of each cell censored ([`revisits`]).
//!
//! Counts on the user's own grid, by a rule of the user's choice, have their own module ([`custom`]).
//!
//! Exact: spans, for the given corners. Approximate: areas, by the cell; [`visits::Count::cell_error_fraction`] says how
//! much. The side of a cell is the width over 7 + sqrt(5), so that lanes spaced at a simple fraction of the width do not
//! interfere with the grid.
//!
//! Cost: proportional to swept area over cell area; tiles of untouched ground take no memory.

pub mod bias;
pub mod custom;
#[cfg(test)]
mod error_tests;
pub mod luck;
pub mod pockets;
pub mod revisits;
pub mod squares;
pub mod swath;
pub mod turf;
pub mod visit_probability;
pub mod visits;
