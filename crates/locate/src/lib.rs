//! Where was the machine really?
//!
//! Question: what path, with which halts and silences, lies behind a trace of noisy fixes?
//!
//! ```text
//!  fixes      gates           legs and halts        corners          Track
//!  . . .  ->  . x .   ->   ----/ (o) \----   ->   ----/\----   ->   pieces, halts, silences
//! ```
//!
//! Method. Fixes of poor quality, jumps ([`outlier_filter`]) and stretches where the machine was carried ([`carried`]) are
//! removed. The white part of the error is estimated from the roughness of the path, the slow part from standing time
//! ([`noise`]). A roaming machine drives straight legs at a steady speed between turns, so each unbroken piece is cut into
//! legs and halts by exact dynamic programming on whitened steps ([`segment`]; optimal partitioning after Jackson et al.
//! 2005 with pruning in the manner of Killick, Fearnhead & Eckley 2012, DOI 10.1080/01621459.2012.737745). A line is fitted
//! to each leg, and corners are placed where lines meet ([`path`]). If straight legs do not fit, a constant-velocity Kalman
//! filter with Rauch-Tung-Striebel smoothing takes over ([`kalman`]). If positions are poor (decimetres or metres), legs,
//! speed, corners, the station and the edge of the lawn are solved together ([`anchor`]), and other pasts that agree with
//! the log can be drawn. Between fixes more than four seconds apart, turns are rebuilt from speed, time and the edge of the
//! lawn ([`sparse_turns`]). If a receiver smooths its own positions, so that a machine at rest creeps, stays are separated
//! from driving by what each looks like ([`stays`]). What a log does not show of its receiver, a device card may
//! ([`ReceiverLaw`]). The path gives the turns and their setback ([`turns`]) and, last, what
//! the machine did in every second ([`activities`]).
//!
//! Exact: the segmentation, for the stated cost. Approximate: the noise law while driving. Known limits: in precise logs the
//! slow part of the error (drift) stays in the path; fixes more than four seconds apart are joined by straight chords if no
//! ground is known, or if the machine does not turn at its edge.
//!
//! Cost: linear in fixes, times the longest leg; a night of 28,800 fixes takes a few tens of milliseconds.

pub mod activities;
pub mod anchor;
pub mod blocks;
pub mod carried;
pub mod drift;
pub mod halts;
pub mod kalman;
pub mod left_out;
pub mod local_bias;
mod locating;
pub mod noise;
pub mod outlier_filter;
mod parts;
pub mod path;
pub mod plan_fit;
mod receiver;
pub mod segment;
pub mod sparse_turns;
pub mod stays;
mod stepped;
mod straight;
mod track;
pub mod turns;

pub use locating::*;
pub use parts::*;
pub use receiver::*;
pub use track::*;
