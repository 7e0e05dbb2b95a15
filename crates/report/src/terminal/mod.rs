//! What does a technician read in the terminal, standing in a garden?
//!
//! About twenty lines: the verdict on the log first, since nothing below it is worth more than the log; then how
//! much was driven over, what was missed and where to walk with a tape, what is not yet decided, where the
//! machine lost time, and the promise. Every line says the same without colour; nothing is wider than the
//! terminal; text from outside cannot steer it.

mod chart;
mod comparison;
mod hints;
mod inspection;
mod reference;

use crate::messages::{named, say};
use crate::words::{self, area, hours, metres, minutes, percent};
use tussock_types::{Coverage, Findings, LogLevel, LogVerdict, MissedPocket, OutlineSource, Place, Span};

pub use chart::answer_map;
pub use comparison::answer_comparison;
pub use hints::hints;
pub use inspection::answer_inspection;

/// Whether the text carries terminal styles.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Colour {
    /// Plain text.
    Plain,
    /// Headings set off by ANSI escape sequences (ECMA-48 SGR).
    Ansi,
}

/// How an answer is set.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Style {
    /// Whether the text carries terminal styles.
    pub colour: Colour,
    /// Columns of the terminal; lines are kept within them (40 at least, 120 at most).
    pub width_columns: usize,
}

impl Default for Style {
    fn default() -> Self {
        Self {
            colour: Colour::Plain,
            width_columns: 80,
        }
    }
}

/// Missed pockets that are shown; the page shows all.
const POCKETS_SHOWN: usize = 3;
/// Stuck spots that are shown.
const SPOTS_SHOWN: usize = 3;
/// Column at which the text beside a label starts.
const LABEL_COLUMNS: usize = 13;

/// Sets lines.
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

    /// A line in heavy type, wrapped.
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

    /// One line as it is, cut at the width.
    pub(crate) fn line(&mut self, text: &str) {
        self.out.push_str(words::fit(text, self.width()).trim_end());
        self.out.push('\n');
    }

    pub(crate) fn blank(&mut self) {
        self.out.push('\n');
    }

    pub(crate) fn into_text(self) -> String {
        self.out
    }
}

/// The answer of an analysis as text.
pub fn answer(findings: &Findings, style: Style) -> String {
    let mut sheet = Sheet::new(style);
    verdict(&mut sheet, &findings.log_verdict);
    sheet.blank();
    match (&findings.coverage, &findings.by_width) {
        (Some(coverage), _) => coverage_rows(&mut sheet, coverage),
        (None, Some(rows)) => {
            // Every third centimetre: the page lists them all.
            let list: Vec<String> = rows
                .iter()
                .step_by(3)
                .map(|row| {
                    let width_cm = words::number(row.cut_width_m * 100.0, 0);
                    say!(
                        "at-cm",
                        percent = percent(row.visited_fraction.estimate),
                        width_cm = width_cm
                    )
                })
                .collect();
            let list = list.join(", ");
            sheet.row("Driven over", &say!("depends-on-cutting-width", list = list));
        }
        (None, None) => sheet.row("Driven over", "not counted"),
    }
    if findings.outline_source == OutlineSource::Trace {
        sheet.indented(LABEL_COLUMNS, &say!("outline-drawn-from-log"));
    }
    missed_rows(&mut sheet, findings);
    not_yet_row(&mut sheet, findings);
    stuck_rows(&mut sheet, findings);
    suggestion_rows(&mut sheet, findings);
    over_time_rows(&mut sheet, findings);
    if let Some(found) = &findings.reference {
        reference::rows(&mut sheet, found);
    }
    span_row(&mut sheet, &findings.span);
    sheet.into_text()
}

/// The names of the files that were written, one row.
pub fn answer_files(names: &[String], style: Style) -> String {
    let mut sheet = Sheet::new(style);
    if !names.is_empty() {
        let list: Vec<String> = names.iter().map(|name| words::plain(name, 300)).collect();
        sheet.row("Written", &list.join(", "));
    }
    sheet.into_text()
}

/// The verdict as one sentence.
pub(crate) fn verdict_sentence(verdict: &LogVerdict) -> String {
    let smallest = say!(
        "pockets-from",
        length = metres(verdict.smallest_findable_width_m),
        area = area(verdict.smallest_findable_pocket_m2)
    );
    match (verdict.level, verdict.positions) {
        (LogLevel::Unusable, LogLevel::Good) => {
            say!("log-too-short-positions")
        }
        (LogLevel::Unusable, _) => say!("log-not-good-enough-shows"),
        (LogLevel::Good, _) => say!("log-good-enough-can", smallest = smallest),
        (LogLevel::Limited, LogLevel::Good) => say!(
            "log-too-short-its",
            length = metres(verdict.smallest_findable_width_m),
            area = area(verdict.smallest_findable_pocket_m2)
        ),
        (LogLevel::Limited, _) => say!("log-not-good-enough", smallest = smallest),
    }
}

fn verdict(sheet: &mut Sheet, verdict: &LogVerdict) {
    sheet.headline(&verdict_sentence(verdict));
    sheet.indented(2, &crate::text(&verdict.advice));
    for remark in verdict.remarks.iter().take(3) {
        sheet.indented(2, &say!("also-said", said = crate::text(remark)));
    }
}

fn coverage_rows(sheet: &mut Sheet, coverage: &Coverage) {
    let fraction = coverage.visited_fraction;
    sheet.row(
        "Driven over",
        &say!(
            "lawn-percent-number-area",
            percent = percent(fraction.estimate),
            number = words::number(coverage.visited_m2, 0),
            area = area(coverage.lawn_m2),
            interval = words::interval(fraction)
        ),
    );
    let mut rest = vec![
        say!("missed-area", area = area(coverage.missed_m2)),
        say!("not-yet", area = area(coverage.not_yet_m2)),
    ];
    if coverage.unseen_m2 > 0.0 {
        rest.push(say!("without-evidence", area = area(coverage.unseen_m2)));
    }
    rest.push(say!("gaps-too-thin-see", area = area(coverage.sliver_m2)));
    sheet.indented(LABEL_COLUMNS, &rest.join(", "));
    if coverage.lawns.len() > 1 {
        let lawns: Vec<String> = coverage
            .lawns
            .iter()
            .map(|lawn| {
                let share = percent(lawn.visited_fraction.estimate);
                say!(
                    "of-id",
                    id = words::plain(&lawn.name, 30),
                    share = share,
                    area = area(lawn.lawn_m2)
                )
            })
            .collect();
        sheet.row("  by lawn", &lawns.join("; "));
    }
}

fn missed_rows(sheet: &mut Sheet, findings: &Findings) {
    let pockets = &findings.missed_pockets;
    if pockets.is_empty() {
        let text = match &findings.coverage {
            Some(coverage) => {
                words::none_missed(&findings.log_verdict, findings.outline_source, coverage.unseen_m2)
            }
            None => say!("not-looked-for-without"),
        };
        sheet.row("Missed", &text);
        return;
    }
    let total_m2: f64 = pockets.iter().map(|pocket| pocket.area_m2).sum();
    sheet.row(
        "Missed",
        &say!(
            "all-luck-does-not",
            count = say!("count-pocket", count = pockets.len()),
            area = area(total_m2)
        ),
    );
    sheet.line(&table_line("id", "area", "widest", "where, and why"));
    for (index, pocket) in pockets.iter().take(POCKETS_SHOWN).enumerate() {
        pocket_lines(sheet, pocket, index == 0);
    }
    if pockets.len() > POCKETS_SHOWN {
        let more = say!("count-smaller-pocket", count = pockets.len() - POCKETS_SHOWN);
        sheet.indented(2, &say!("and-more", more = more));
    }
}

/// Column at which the words of a pocket start.
const POCKET_WORDS_COLUMN: usize = 24;
/// Column at which the reason stands below it.
const POCKET_WHY_COLUMN: usize = 6;

fn table_line(id: &str, area: &str, widest: &str, rest: &str) -> String {
    let right = |text: &str, width: usize| {
        format!("{}{text}", " ".repeat(width.saturating_sub(words::columns(text))))
    };
    format!(
        "  {:<4}{}{}  {rest}",
        words::plain(id, 4),
        right(area, 8),
        right(widest, 8)
    )
}

/// The reason stands below the first in full, below the others where it has a name.
fn pocket_lines(sheet: &mut Sheet, pocket: &MissedPocket, is_first: bool) {
    let place = Place::new(pocket.east_m, pocket.north_m);
    let whereabouts =
        words::tape(&pocket.tape, place).unwrap_or_else(|| words::position(pocket.lat, pocket.lon, place));
    let mut lines = words::wrap(&whereabouts, sheet.width() - POCKET_WORDS_COLUMN).into_iter();
    let first = lines.next().unwrap_or_default();
    sheet.line(&table_line(
        &pocket.id,
        &area(pocket.area_m2),
        &metres(pocket.widest_m),
        &first,
    ));
    for line in lines {
        sheet.indented(POCKET_WORDS_COLUMN, &line);
    }
    let first_cause = pocket.causes.as_ref().and_then(|causes| causes.first());
    let why = match first_cause {
        Some(found) => {
            let why = match is_first {
                true => format!(": {}", crate::text(&pocket.why)),
                false => String::new(),
            };
            format!("{}{why}", named("cause", &found.cause))
        }
        None if is_first => crate::text(&pocket.why),
        None => return,
    };
    sheet.indented(POCKET_WHY_COLUMN, &why);
    let others = pocket.causes.iter().flatten().skip(1);
    let others: Vec<String> = others.map(|found| named("cause", &found.cause)).collect();
    if !others.is_empty() {
        sheet.indented(
            POCKET_WHY_COLUMN,
            &say!("also-possible", join = others.join(", ")),
        );
    }
}

fn not_yet_row(sheet: &mut Sheet, findings: &Findings) {
    if findings.not_yet.is_empty() {
        return;
    }
    let total_m2: f64 = findings.not_yet.iter().map(|pocket| pocket.area_m2).sum();
    let decide = findings
        .not_yet
        .iter()
        .filter_map(|pocket| pocket.hours_to_decide)
        .fold(None, later);
    let decide = match decide {
        Some(decide_h) => say!("decided-after-driving-all", hours = hours(decide_h)),
        None => say!("after-how-many-hours"),
    };
    sheet.row(
        "Not yet",
        &say!(
            "luck-still-explains-them",
            count = say!("count-pocket", count = findings.not_yet.len()),
            area = area(total_m2),
            decide = decide
        ),
    );
}

/// The later of two times.
pub(crate) fn later(so_far: Option<f64>, next: f64) -> Option<f64> {
    Some(so_far.map_or(next, |so_far| so_far.max(next)))
}

fn stuck_rows(sheet: &mut Sheet, findings: &Findings) {
    let spots = &findings.stuck_spots;
    if spots.is_empty() {
        sheet.row("Stuck spots", "none seen");
        return;
    }
    let lost_min: f64 = spots.iter().map(|spot| spot.minutes).sum();
    sheet.row(
        "Stuck spots",
        &say!(
            "lost-count",
            count = say!("count-place", count = spots.len()),
            time = minutes(lost_min)
        ),
    );
    for spot in spots.iter().take(SPOTS_SHOWN) {
        let at = words::position(spot.lat, spot.lon, Place::new(spot.east_m, spot.north_m));
        let times = say!("count-time", count = spot.episodes);
        let head = format!(
            "  {:<4}{times}, {} lost, within {} of {at}",
            words::plain(&spot.id, 4),
            minutes(spot.minutes),
            metres(spot.radius_m)
        );
        sheet.line(&head);
        sheet.indented(POCKET_WHY_COLUMN, &words::why_stuck(spot));
    }
    if spots.len() > SPOTS_SHOWN {
        sheet.indented(2, &say!("more-spots", spots = spots.len() - SPOTS_SHOWN));
    }
}

/// The best one; the page shows all.
fn suggestion_rows(sheet: &mut Sheet, findings: &Findings) {
    let suggestions = findings.suggestions.as_deref().unwrap_or_default();
    let Some(best) = suggestions.first() else {
        return;
    };
    let predicted = best.predicted;
    let id = words::plain(&best.id, 5);
    sheet.row(&say!("change-id", id = id), &crate::text(&best.why));
    let sure = best
        .certainty
        .map(|certainty| say!("sure-percent", percent = words::whole_percent(certainty)))
        .unwrap_or_default();
    let more = match suggestions.len() - 1 {
        0 => String::new(),
        more => format!(" And {}.", say!("count-more-change", count = more)),
    };
    sheet.indented(
        LABEL_COLUMNS,
        &say!(
            "pocket-this-log-if",
            percent = percent(best.pocket_fraction_in_log),
            fraction = words::with_interval(predicted.pocket_fraction_before),
            fraction_2 = words::with_interval(predicted.pocket_fraction_after),
            sure = sure,
            more = more
        ),
    );
}

fn over_time_rows(sheet: &mut Sheet, findings: &Findings) {
    let Some(over_time) = &findings.over_time else {
        return;
    };
    let pattern = over_time
        .efficiency
        .map(words::efficiency)
        .map(|text| format!("{text}; "))
        .unwrap_or_default();
    sheet.row("Pattern", &format!("{pattern}{}", words::reach(over_time)));
    let promise = &findings.settings.promise;
    let days = words::days(promise.days);
    let probability = over_time
        .promise
        .probability
        .map(|probability| format!(" (probability kept: {})", words::whole_percent(probability)))
        .unwrap_or_default();
    sheet.row(
        "Promise",
        &say!(
            "lawn-within-percent-days",
            percent = percent(promise.visited_fraction),
            days = days,
            word = named("promise", &over_time.promise.verdict),
            probability = probability
        ),
    );
}

fn span_row(sheet: &mut Sheet, span: &Span) {
    let silent = match span.silent_s {
        s if s > 0.0 => say!("without-fixes", time = words::duration(s)),
        _ => String::new(),
    };
    sheet.row(
        "From",
        &say!(
            "one-every-driven-fixes",
            fixes = words::fixes(span),
            time = words::duration(span.period_s),
            path = words::path_length(span.path_m),
            time_2 = words::duration(span.driving_s),
            silent = silent
        ),
    );
}
