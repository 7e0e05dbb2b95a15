//! What does a technician read in the terminal, standing in a garden?
//!
//! About twenty lines: first the verdict on the log, since nothing below it is worth more than the log; then how much was
//! driven over, what was missed and where to walk with a tape, what is not yet decided, where the machine lost time, and the
//! promise. Every line says the same without colour, nothing is wider than the terminal, and text from outside cannot
//! control it.

mod chart;
mod hints;

use crate::filters::{compared, fields, input, shown, surveyed};
use crate::messages::Voice;
use crate::messages::say;
use crate::words;
use minijinja::{Environment, UndefinedBehavior, Value, context, value::Serde};
use tussock_types::{
    Comparison, ComplaintFindings, Findings, Inspection, PlanFault, PlanForecast, Settings, VisitDone,
};

pub use chart::answer_map;
pub use hints::hints;

/// Whether the text contains terminal styles.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Colour {
    /// Plain text.
    Plain,
    /// Headings highlighted with ANSI escape sequences (ECMA-48 SGR).
    Ansi,
}

/// How an answer is laid out.
#[derive(Clone, Copy, Debug)]
pub struct Style {
    /// Whether the text contains terminal styles.
    pub colour: Colour,
    /// Columns of the terminal; lines are kept within them (40 at least, 120 at most).
    pub width_columns: usize,
    /// Language and units.
    pub voice: Voice,
}

impl Default for Style {
    fn default() -> Self {
        Self {
            colour: Colour::Plain,
            width_columns: 80,
            voice: Voice::default(),
        }
    }
}

/// Column at which the text beside a label starts.
const LABEL_COLUMNS: usize = 13;
/// Column at which the words of a pocket start.
const POCKET_WORDS_COLUMN: usize = 24;

/// Lays out lines.
pub(crate) struct Sheet {
    out: String,
    style: Style,
}

impl Sheet {
    pub(crate) fn new(style: Style) -> Self {
        let width_columns = style.width_columns.clamp(40, 120);
        Self {
            out: String::new(),
            style: Style {
                width_columns,
                ..style
            },
        }
    }

    pub(crate) fn width(&self) -> usize {
        self.style.width_columns
    }

    fn strong(&self, text: &str) -> String {
        match self.style.colour {
            Colour::Plain => text.to_owned(),
            Colour::Ansi => format!("\u{1b}[1m{text}\u{1b}[0m"),
        }
    }

    /// A line in bold type, wrapped.
    pub(crate) fn headline(&mut self, text: &str) {
        for line in words::wrap(text, self.width()) {
            let line = self.strong(&line);
            self.out.push_str(&line);
            self.out.push('\n');
        }
    }

    /// Wrapped text that starts at a column.
    pub(crate) fn indented(&mut self, column: usize, text: &str) {
        for line in words::wrap(text, self.width().saturating_sub(column)) {
            self.out.push_str(&" ".repeat(column));
            self.out.push_str(&line);
            self.out.push('\n');
        }
    }

    /// A label and the text beside it.
    pub(crate) fn row(&mut self, label: &str, text: &str) {
        let mut lines = words::wrap(text, self.width() - LABEL_COLUMNS).into_iter();
        let label = &words::fit(label, LABEL_COLUMNS - 1);
        let gap = " ".repeat(LABEL_COLUMNS.saturating_sub(words::columns(label)));
        let first = lines.next().unwrap_or_default();
        let line = format!("{}{gap}{first}", self.strong(label));
        self.out.push_str(line.trim_end());
        self.out.push('\n');
        for line in lines {
            self.out.push_str(&" ".repeat(LABEL_COLUMNS));
            self.out.push_str(&line);
            self.out.push('\n');
        }
    }

    /// One line unchanged, cut at the width.
    pub(crate) fn line(&mut self, text: &str) {
        self.out.push_str(words::fit(text, self.width()).trim_end());
        self.out.push('\n');
    }

    /// A pocket: id, area, width, and from a column on whatever else there is to say.
    fn pocket(&mut self, text: &str) {
        let mut cells = text.splitn(4, " | ");
        let [id, area, widest, rest] = std::array::from_fn(|_| cells.next().unwrap_or_default());
        let mut lines = words::wrap(rest, self.width() - POCKET_WORDS_COLUMN).into_iter();
        let first = lines.next().unwrap_or_default();
        let (area, widest) = (words::right(area, 8), words::right(widest, 8));
        self.line(&format!("  {id:<4}{area}{widest}  {first}"));
        for line in lines {
            self.indented(POCKET_WORDS_COLUMN, &line);
        }
    }

    pub(crate) fn blank(&mut self) {
        self.out.push('\n');
    }

    pub(crate) fn into_text(self) -> String {
        self.out
    }
}

/// A template of an answer, and its name.
type Template = (&'static str, &'static str);
const ANSWER: Template = ("answer.txt", include_str!("../../templates/answer.txt"));
const REFERENCE: Template = ("reference.txt", include_str!("../../templates/reference.txt"));
const INSPECTION: Template = ("inspection.txt", include_str!("../../templates/inspection.txt"));
const COMPLAINT: Template = ("complaint.txt", include_str!("../../templates/complaint.txt"));
const VISITS: Template = ("visits.txt", include_str!("../../templates/visits.txt"));
const PLAN: Template = ("plan.txt", include_str!("../../templates/plan.txt"));
const COMPARISON: Template = ("comparison.txt", include_str!("../../templates/comparison.txt"));

/// Fills a template and lays it out. The beginning of each line says what it becomes: `=` a headline, `| label | text` a
/// row, `>6` text from a column on, `~` a row of the table of pockets, `.` a line unchanged, `-` a blank line.
fn filled((name, template): Template, context: Value, style: Style) -> String {
    let mut sheet = Sheet::new(style);
    let mut environment = Environment::new();
    environment.set_undefined_behavior(UndefinedBehavior::SemiStrict);
    crate::filters::add(&mut environment, style.voice);
    let width = sheet.width();
    let text = environment
        .add_template(REFERENCE.0, REFERENCE.1)
        .and_then(|()| environment.add_template(name, template))
        .and_then(|()| {
            environment
                .get_template(name)?
                .render(context! { width, ..context })
        });
    // A template that cannot be filled is a bug of ours; then the error is all that can be shown.
    for line in text.unwrap_or_else(|error| format!("= {error}")).lines() {
        let (mark, text) = line.split_once(' ').unwrap_or((line, ""));
        match mark {
            "" => {}
            "=" => sheet.headline(text),
            "|" => {
                let (label, text) = text.split_once(" | ").unwrap_or(("", text));
                sheet.row(label, text);
            }
            "~" => sheet.pocket(text),
            "." => sheet.line(text),
            "-" => sheet.blank(),
            column => sheet.indented(column[1..].parse().unwrap_or(0), text),
        }
    }
    sheet.into_text()
}

/// The answer of an analysis as text.
pub fn answer(findings: &Findings, style: Style) -> String {
    let context = context! {
        findings => shown(findings),
        checks_line => words::checks_line(style.voice, &findings.checks),
        decide_h => decide_h(findings),
        none_missed => none_missed(style.voice, findings),
        dark => words::dark(style.voice, findings),
        surveyed => findings.reference.as_ref().map(|found| surveyed(style.voice, found)),
    };
    // What was asked about comes first.
    let mut text = String::new();
    for complaint in &findings.complaints {
        text.push_str(&answer_complaint(complaint, findings, style));
        text.push('\n');
    }
    text + &filled(ANSWER, context, style)
}

/// The answer of an inspection as text.
pub fn answer_inspection(inspection: &Inspection, style: Style) -> String {
    let found = fields!(inspection: log_verdict, span, positions, silences, extent_m, middle, hdop, repeated_positions);
    let inputs: Vec<Value> = inspection
        .inputs
        .iter()
        .map(|of| input(style.voice, of))
        .collect();
    let context = context! {
        found,
        inputs,
        qualities => Serde(&inspection.qualities),
        checks_line => words::checks_line(style.voice, &inspection.checks),
    };
    filled(INSPECTION, context, style)
}

/// What is known about a place, with what the findings say about the pocket or spot that holds it, as text.
pub fn answer_complaint(complaint: &ComplaintFindings, findings: &Findings, style: Style) -> String {
    filled(
        COMPLAINT,
        context! { asked => Serde(words::asked(style.voice, complaint, findings)) },
        style,
    )
}

/// The answer of a comparison as text.
pub fn answer_comparison(comparison: &Comparison, style: Style) -> String {
    filled(COMPARISON, compared(style.voice, comparison), style)
}

/// A plan that was checked as text: its features as in the JSON of the same answer, its faults, and what it promises.
pub fn answer_plan(
    checked: &serde_json::Value,
    faults: &[PlanFault],
    forecast: Option<&PlanForecast>,
    settings: &Settings,
    style: Style,
) -> String {
    let ahead = forecast.map(|forecast| crate::forecast::told(style.voice, forecast, settings));
    let faults: Vec<String> = faults.iter().map(ToString::to_string).collect();
    let context = context! { checked => Serde(checked), faults, ..ahead.unwrap_or_default() };
    filled(PLAN, context, style)
}

/// The visits to a garden as text.
pub fn answer_visits(visits: &[VisitDone], style: Style) -> String {
    filled(VISITS, crate::visits::told(style.voice, visits), style)
}

/// The names of the files that were written, as one row.
pub fn answer_files(names: &[String], style: Style) -> String {
    let mut sheet = Sheet::new(style);
    if !names.is_empty() {
        let list: Vec<String> = names.iter().map(|name| words::plain(name, 300)).collect();
        sheet.row(
            &say!(style.voice, "row-written"),
            &words::listed(style.voice, list, words::ListMark::Comma),
        );
    }
    sheet.into_text()
}

/// When everything that is not yet decided will be.
pub(crate) fn decide_h(findings: &Findings) -> Option<f64> {
    let hours = findings
        .not_yet
        .iter()
        .filter_map(|pocket| pocket.hours_to_decide);
    hours.reduce(f64::max)
}

/// The message if nothing counts as missed; `None` if nothing was counted.
pub(crate) fn none_missed(voice: Voice, findings: &Findings) -> Option<String> {
    let unseen_m2 = findings.coverage.as_ref()?.unseen_m2;
    Some(words::none_missed(
        voice,
        &findings.log_verdict,
        findings.outline_source,
        unseen_m2,
    ))
}
