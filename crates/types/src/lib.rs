//! The words of Tussock as plain data.
//!
//! All rooms share these types: what was logged ([`Trace`]), what was installed ([`Plan`]), what the user wants
//! ([`Settings`]), and what was found ([`Findings`]). Nothing here reads a file, asks the clock or starts a thread, so a
//! saved result can be drawn again tomorrow by code that knows no algorithm.
//!
//! Every bare number carries its unit in its name. `_fraction` runs from 0 to 1; percentages appear only on screen.

#[macro_use]
mod words;

mod comparison;
mod error_series;
mod findings;
mod forecast;
mod frame;
mod grid;
mod hours;
mod installation;
mod language;
mod log;
pub mod math;
mod morning;
mod plan;
mod reference;
mod said;
mod settings;
mod trace;
mod zone;

pub use comparison::*;
pub use error_series::*;
pub use findings::*;
pub use forecast::*;
pub use frame::NotAPlace;
pub use grid::*;
pub use hours::*;
pub use installation::*;
pub use language::*;
pub use log::*;
pub use morning::*;
pub use plan::*;
pub use reference::*;
pub use said::*;
pub use settings::*;
pub use trace::*;
pub use words::*;
pub use zone::*;
