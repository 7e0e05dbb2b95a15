//! The fitted machine, its simulated nights, and its advice, compared with gardens whose truth is known.

mod fitted;
mod rehearse;
mod ways;
mod world;
