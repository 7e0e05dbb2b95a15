//! The one call compared with invented gardens whose truth is known, recordings, closed forms and published figures.
#![allow(clippy::disallowed_methods)] // the host's mathematics is the oracle here
#![allow(clippy::unwrap_used)] // helpers of tests are tests

mod advice;
mod aligned;
mod ask;
mod calibrate;
mod causes;
mod checks;
mod compared;
mod device_card;
mod first_day;
mod grids;
mod installation;
mod kinds;
mod known_night;
mod log_remarks;
mod long_table;
mod machines;
mod measures;
mod nights;
mod no_plan;
mod place_bound;
mod plan_and_log;
mod poor_lanes;
mod poor_sky;
mod rebuilt;
mod recorded_accuracy;
mod recorded_error;
mod reference;
mod statistics;
mod validation;
