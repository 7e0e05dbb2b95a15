//! What is handed to the customer?
//!
//! One page in one file: pictures as data, no network (a content security policy forbids it, and lets only our own
//! style and script run, by their digests). The first screen answers, with script and without: is the log good enough,
//! what was missed, why, what to change, how sure; beside it the map. Then the deeper things, folded away where they
//! are long. Every number has its unit, its interval where there is one, and a plain sentence. On paper it is two
//! pages.
//!
//! With script the map can be moved and drawn nearer, its legend becomes switches, and a place chosen in a list shows
//! on the map and the other way round. Without it the same marks are links to the same cards.
//!
//! Text from outside is cut, freed of acting characters and escaped by the template engine; only drawings made
//! here are let through unescaped. Anchors are counted, never made of an id from a file.

mod compare;
mod facts;
mod lie;
mod method;
mod morning;
mod page;
mod paper;
mod plots;
mod short;
mod stills;

use crate::ReportError;
use base64::{Engine, engine::general_purpose::STANDARD};
use minijinja::{AutoEscape, Environment, value::Serde};
use serde::Serialize;
use sha2::{Digest, Sha256};
use tussock_types::{Comparison, Findings, Morning};

const PAGE: &str = include_str!("../../templates/report.html");
const COMPARE_PAGE: &str = include_str!("../../templates/compare.html");
const MORNING_PAGE: &str = include_str!("../../templates/morning.html");
const HEAD: &str = include_str!("../../templates/head.html");
const STYLE: &str = concat!(
    include_str!("../../templates/report.css"),
    include_str!("../../templates/print.css")
);
const SCRIPT: &str = include_str!("../../templates/report.js");

/// What stands in the head of every page.
#[derive(Serialize)]
struct Head {
    style: &'static str,
    script: &'static str,
    policy: String,
    defs: &'static str,
}

impl Head {
    fn new() -> Self {
        let digest = |text: &str| format!("'sha256-{}'", STANDARD.encode(Sha256::digest(text.as_bytes())));
        Self {
            style: STYLE,
            defs: crate::map::DEFS,
            script: SCRIPT,
            policy: format!(
                "default-src 'none'; style-src {}; script-src {}; img-src data:; base-uri 'none'; form-action 'none'",
                digest(STYLE),
                digest(SCRIPT)
            ),
        }
    }
}

/// The findings as `report.html`.
///
/// # Errors
/// [`ReportError::Page`] when the template cannot be filled, which would be a fault of ours.
pub fn html(findings: &Findings) -> Result<String, ReportError> {
    render("report.html", PAGE, page::page(findings))
}

/// A comparison as `comparison.html`.
///
/// # Errors
/// [`ReportError::Page`] when the template cannot be filled, which would be a fault of ours.
pub fn html_comparison(comparison: &Comparison) -> Result<String, ReportError> {
    render("comparison.html", COMPARE_PAGE, compare::page(comparison))
}

/// A morning as a page.
///
/// # Errors
/// [`ReportError::Page`] when the template cannot be filled, which would be a fault of ours.
pub fn html_morning(morning: &Morning) -> Result<String, ReportError> {
    render("morning.html", MORNING_PAGE, morning::page(morning))
}

fn render(name: &str, template: &str, page: impl Serialize) -> Result<String, ReportError> {
    let failed = |source| ReportError::Page { source };
    let mut environment = Environment::new();
    environment.set_auto_escape_callback(|_| AutoEscape::Html);
    environment.add_template("head.html", HEAD).map_err(failed)?;
    environment.add_template(name, template).map_err(failed)?;
    let template = environment.get_template(name).map_err(failed)?;
    template.render(Serde(page)).map_err(failed)
}
