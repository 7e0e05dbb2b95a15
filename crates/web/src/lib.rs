//! The counter in the hand: the one call in a browser, as one local page.
//!
//! A worker of the page hands over files as bytes and says what it wants; the rooms below read, analyse and draw; the
//! answers go back as JSON or as files. Nothing is measured here, and nothing leaves the page: its policy forbids every
//! connection. `node crates/web/build.mjs` makes the page.
//!
//! The same files and settings give the same bytes as the command: `tests/browser/web.mjs` compares them.

pub mod counter;
#[cfg(target_family = "wasm")]
mod exports;
