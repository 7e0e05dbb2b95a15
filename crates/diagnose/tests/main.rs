//! Reasons and remedies, compared with slow twins, published values and gardens whose truth is known.
#![allow(clippy::disallowed_methods)] // the host's mathematics is the oracle here
#![allow(clippy::unwrap_used)] // helpers of tests are tests

mod advice;
mod spots;
