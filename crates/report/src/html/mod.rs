//! What is handed to the customer?
//!
//! One page in one file: pictures as data, no network (a content security policy forbids it, and allows only our own style
//! and script, by their digests). The first screen answers, with or without script: is the log good enough, what was missed,
//! why, what to change, how sure; the map is beside it. Details follow, folded away if they are long. Every number has its
//! unit, its interval if there is one, and a plain sentence. On paper it is two pages.
//!
//! With script the map can be moved and enlarged, its legend becomes switches, and a place chosen in a list shows on the map
//! and vice versa. Without it the same marks are links to the same cards.
//!
//! Text from outside is shortened, cleared of control characters and escaped by the template engine; only drawings made here
//! are inserted unescaped. Anchors are numbered, never made from an id in a file.

mod compare;
mod forecast;
mod handout;
mod page;
mod plots;
mod stills;

use crate::ReportError;
use crate::messages::Voice;
use base64::{Engine, engine::general_purpose::STANDARD};
use minijinja::value::Serde;
use minijinja::{AutoEscape, Environment, UndefinedBehavior, Value, context, escape_formatter};
use serde::Serialize;
use sha2::{Digest, Sha256};
use tussock_types::{Alarm, Comparison, Findings, Morning, PlanForecast, Settings, VisitDone};

const PAGE: &str = include_str!("../../templates/report.html");
const COMPARE_PAGE: &str = include_str!("../../templates/compare.html");
const PLAN_PAGE: &str = include_str!("../../templates/plan.html");
const MORNING_PAGE: &str = include_str!("../../templates/morning.html");
const VISITS_PAGE: &str = include_str!("../../templates/visits.html");
const METRICS: &str = include_str!("../../templates/metrics.txt");
const HEAD: &str = include_str!("../../templates/head.html");
const ANSWERS: &str = include_str!("../../templates/answers.html");
const PARTS: &str = include_str!("../../templates/parts.html");
const STYLE: &str = concat!(
    include_str!("../../templates/report.css"),
    include_str!("../../templates/print.css")
);
const SCRIPT: &str = include_str!("../../templates/report.js");

/// The head of every page.
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
/// [`ReportError::Page`] if the template cannot be filled, which would be a bug of ours.
pub fn html(findings: &Findings, voice: Voice) -> Result<String, ReportError> {
    render(voice, "report.html", PAGE, page::page(voice, findings))
}

/// A comparison as `comparison.html`.
///
/// # Errors
/// [`ReportError::Page`] if the template cannot be filled, which would be a bug of ours.
pub fn html_comparison(comparison: &Comparison, voice: Voice) -> Result<String, ReportError> {
    render(
        voice,
        "comparison.html",
        COMPARE_PAGE,
        compare::page(voice, comparison),
    )
}

/// A plan's forecast as `plan.html`.
///
/// # Errors
/// [`ReportError::Page`] if the template cannot be filled, which would be a bug of ours.
pub fn html_forecast(
    forecast: &PlanForecast,
    settings: &Settings,
    tool_version: &str,
    voice: Voice,
) -> Result<String, ReportError> {
    render(
        voice,
        "plan.html",
        PLAN_PAGE,
        forecast::page(voice, forecast, settings, tool_version),
    )
}

/// The visits to a garden as `visits.html`.
///
/// # Errors
/// [`ReportError::Page`] if the template cannot be filled, which would be a bug of ours.
pub fn html_visits(visits: &[VisitDone], voice: Voice) -> Result<String, ReportError> {
    render(
        voice,
        "visits.html",
        VISITS_PAGE,
        crate::visits::told(voice, visits),
    )
}

/// Keeps a unit on the line of its number.
fn units_stay(text: &str) -> String {
    const UNITS: [&str; 12] = [
        "%", "m²", "m", "cm", "h", "min", "s", "points", "ft", "sq", "mi", "mph",
    ];
    let mut out = String::with_capacity(text.len());
    let mut rest = text;
    while let Some(at) = rest.find(' ') {
        let (before, after) = (&rest[..at], &rest[at + 1..]);
        let word_end = after.find([' ', ',', '.', ';', ')', ':']).unwrap_or(after.len());
        let is_unit = before.ends_with(|c: char| c.is_ascii_digit()) && UNITS.contains(&&after[..word_end]);
        out.push_str(before);
        out.push(if is_unit { '\u{a0}' } else { ' ' });
        rest = after;
    }
    out.push_str(rest);
    out
}

/// A morning as a page.
///
/// # Errors
/// [`ReportError::Page`] if the template cannot be filled, which would be a bug of ours.
pub fn html_morning(morning: &Morning, voice: Voice) -> Result<String, ReportError> {
    let mut told = morning.clone();
    for reason in told.gardens.iter_mut().flat_map(|garden| &mut garden.reasons) {
        reason.sentence = crate::morning::alarm_sentence(reason, voice);
    }
    let page = context! {
        morning => Serde(told),
        summary => crate::morning::summary(morning, voice),
        deliveries => crate::morning::deliveries(voice, morning),
        mended => crate::morning::mended(voice, morning),
    };
    render(voice, "morning.html", MORNING_PAGE, page)
}

/// Figures of a run and of its morning in the text exposition format of Prometheus, version 0.0.4.
///
/// # Errors
/// [`ReportError::Page`] if the template cannot be filled, which would be a bug of ours.
pub fn metrics(run: &impl Serialize, morning: Option<&Morning>) -> Result<String, ReportError> {
    let kinds: Vec<&str> = Alarm::ALL.iter().map(|alarm| alarm.word()).collect();
    let page = context! { run => Serde(run), morning => morning.map(Serde), kinds => kinds };
    render(Voice::default(), "metrics.txt", METRICS, page)
}

fn render(voice: Voice, name: &str, template: &str, page: Value) -> Result<String, ReportError> {
    let failed = |source| ReportError::Page { source };
    let mut environment = Environment::new();
    environment.set_undefined_behavior(UndefinedBehavior::SemiStrict);
    crate::filters::add(&mut environment, voice);
    environment.add_function("gains", move |rows: Serde<Vec<plots::GainRow>>| {
        plots::gains(voice, &rows)
    });
    environment.add_function("strip", |parts: Serde<Vec<(String, String, f64)>>| {
        plots::strip(&parts)
    });
    environment.add_global("lang", voice.language.word());
    environment.add_global("head", Value::from(Serde(Head::new())));
    environment.set_auto_escape_callback(|_| AutoEscape::Html);
    environment.set_formatter(|out, state, value| match value.as_str() {
        Some(text) if !value.is_safe() => escape_formatter(out, state, &Value::from(units_stay(text))),
        _ => escape_formatter(out, state, value),
    });
    let parts = [
        ("head.html", HEAD),
        ("parts.html", PARTS),
        ("answers.html", ANSWERS),
    ];
    for (name, template) in parts.into_iter().chain([(name, template)]) {
        environment.add_template(name, template).map_err(failed)?;
    }
    let template = environment.get_template(name).map_err(failed)?;
    template.render(page).map_err(failed)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_unit_stays_on_the_line_of_its_number_and_other_words_do_not() {
        let shown = units_stay("745 of 856 m² (90 % interval), 9 h 38 min; 4 men, 3.2 m.");
        assert_eq!(
            shown,
            "745 of 856\u{a0}m² (90\u{a0}% interval), 9\u{a0}h 38\u{a0}min; 4 men, 3.2\u{a0}m."
        );
    }
}
