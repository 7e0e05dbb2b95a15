//! The fitted machine, its rehearsals, and what they advise, beside gardens whose truth is known.

mod fitted;
mod rehearse;
mod ways;
mod world;
