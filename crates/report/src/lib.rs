//! The windows: terminal, HTML, picture, GeoJSON, GPX, GeoParquet, from findings alone.
//!
//! | question | function |
//! |---|---|
//! | what does the answer say, in a terminal? | [`answer`], [`answer_map`], [`hints`], [`answer_inspection`] |
//! | what does a plan promise? | [`html_forecast`] |
//! | what did a change bring? | [`answer_comparison`], [`html_comparison`], [`comparison_to_json`] |
//! | what do I hand to the customer? | [`html`], [`map_png`] |
//! | how do I walk to the pockets? | [`pockets_gpx`] |
//! | how do other tools open it? | [`geojson`], [`cells_parquet`], [`legs_parquet`], [`fixes_parquet`] |
//! | how is it stored and drawn again? | [`to_json`], [`from_json`] |
//! | everything at once | [`outputs`] |
//!
//! Nothing here knows how a figure was found: the input is [`Findings`](tussock_types::Findings), made today or read from a
//! file made long ago. Nothing opens a path, asks the clock or reads the environment; the same findings give the same bytes.
//!
//! Without the features `parquet` and `picture`, files of those kinds are not made.
//!
//! Text from logs, plans and settings is treated as hostile: every window removes control characters and direction marks,
//! cuts what is too long, and escapes the rest for its context.

mod error;
#[cfg(test)]
mod error_tests;
mod filters;
mod forecast;
mod geojson;
mod gpx;
mod html;
mod json;
mod map;
mod messages;
mod morning;
mod outputs;
#[cfg(feature = "parquet")]
mod parquet;
mod private;
mod ramp;
mod raster;
mod terminal;
mod visits;
mod words;

pub use error::ReportError;
pub use geojson::geojson;
pub use gpx::pockets_gpx;
pub use html::{html, html_comparison, html_forecast, html_morning, html_visits, metrics};
pub use json::{
    comparison_from_json, comparison_to_json, complaints_to_json, from_json, inspection_to_json, looks_saved,
    to_json, visits_to_json,
};
#[cfg(feature = "picture")]
pub use map::map_png;
pub use map::map_svg;
pub use messages::{Voice, said, text};
pub use morning::{alarm_sentence, answer_morning, summary as morning_summary};
pub use outputs::{MAP_WIDTH_PX, Output, left_out, output, output_names, outputs, outputs_sized};
#[cfg(feature = "parquet")]
pub use parquet::{cells_parquet, fixes_parquet, legs_parquet};
pub use private::{Privacy, redact};
pub use terminal::{
    Colour, Style, answer, answer_comparison, answer_complaint, answer_files, answer_inspection, answer_map,
    answer_plan, answer_visits, hints,
};
pub use visits::visits;
pub use words::is_hostile;
