//! The counter in the hand: the one call in a browser, as one local page.
//!
//! A worker of the page hands over files as bytes and says what is wanted; the rooms below read, analyse and draw; what they
//! answer goes back as JSON or as a file. Nothing is measured here, and nothing leaves the page: its policy forbids every
//! connection. `node crates/web/build.mjs` makes the page.
//!
//! Same files, same settings, same bytes as from the command: `tests/browser/web.mjs` compares them.

pub mod counter;
#[cfg(target_family = "wasm")]
mod exports;
