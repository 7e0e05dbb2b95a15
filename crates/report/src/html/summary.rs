//! The first screen in five answers: is the log good enough, what was missed, why, what to change, how sure.

use super::plots;
use crate::terminal::{later, verdict_sentence};
use crate::words::{self, area, hours, percent, plural};
use serde::Serialize;
use tussock_types::{Findings, LogLevel, OutlineSource, Suggestion};

/// One question with its answer.
#[derive(Serialize)]
pub(super) struct Answer {
    id: &'static str,
    question: &'static str,
    /// In a few words.
    word: String,
    /// In one or two sentences.
    lines: Vec<String>,
    /// A drawing made here.
    strip: Option<String>,
    /// What the drawing's parts are.
    parts: Vec<Part>,
}

#[derive(Serialize)]
struct Part {
    class: &'static str,
    label: &'static str,
    figure: String,
}

fn answer(id: &'static str, question: &'static str, word: String, lines: Vec<String>) -> Answer {
    Answer {
        id,
        question,
        word,
        lines,
        strip: None,
        parts: Vec::new(),
    }
}

pub(super) fn answers(findings: &Findings) -> Vec<Answer> {
    vec![
        log(findings),
        missed(findings),
        why(findings),
        change(findings),
        sure(findings),
    ]
}

fn log(findings: &Findings) -> Answer {
    let verdict = &findings.log_verdict;
    let word = match (verdict.level, verdict.positions) {
        (LogLevel::Good, _) => "Yes",
        (_, LogLevel::Good) => "Positions yes, but too short",
        _ => "No",
    };
    let mut lines = vec![verdict_sentence(verdict), words::sentence(&verdict.advice)];
    lines.extend(
        verdict
            .hours_more_needed
            .map(|hours_more| format!("About {} more of driving are needed.", hours(hours_more))),
    );
    answer("log", "Is the log good enough?", word.to_owned(), lines)
}

/// Whether what is not found missing can be called there.
fn shows_all(findings: &Findings) -> bool {
    findings.log_verdict.level == LogLevel::Good && findings.outline_source == OutlineSource::Plan
}

fn missed(findings: &Findings) -> Answer {
    let question = "What was missed?";
    let Some(coverage) = &findings.coverage else {
        let lines = vec![
            "How much was driven over depends on the width of the cutting disc, which was not given; the table for \
             each width is below."
                .to_owned(),
        ];
        return answer("missed", question, "Not counted".to_owned(), lines);
    };
    let pockets = &findings.missed_pockets;
    let total_m2: f64 = pockets.iter().map(|pocket| pocket.area_m2).sum();
    let word = match pockets.len() {
        0 => words::capital(&words::none_missed(
            &findings.log_verdict,
            findings.outline_source,
        )),
        count => format!("{}, {}", plural(count, "pocket", "pockets"), area(total_m2)),
    };
    let mut lines = vec![format!(
        "{} of {} was driven over.",
        percent(coverage.visited_fraction.estimate),
        area(coverage.lawn_m2)
    )];
    if findings.outline_source == OutlineSource::Trace {
        lines.push(
            "The outline was drawn from the log itself: ground beyond its outermost drive cannot be missed, so \
             this flatters."
                .to_owned(),
        );
    }
    let parts = [
        ("visited", "driven over", coverage.visited_m2),
        ("missed", "missed", coverage.missed_m2),
        ("notyet", "not yet", coverage.not_yet_m2),
        ("unseen", "unseen", coverage.unseen_m2),
        ("sliver", "gaps too thin to see", coverage.sliver_m2),
    ];
    let strip: Vec<(&str, f64)> = parts.iter().map(|&(class, _, m2)| (class, m2)).collect();
    let shown = parts
        .into_iter()
        .filter(|&(class, _, m2)| class != "unseen" || m2 > 0.0);
    Answer {
        strip: Some(plots::strip(&strip)),
        parts: shown
            .map(|(class, label, m2)| Part {
                class,
                label,
                figure: area(m2),
            })
            .collect(),
        ..answer("missed", question, word, lines)
    }
}

fn why(findings: &Findings) -> Answer {
    let question = "Why?";
    let Some(pocket) = findings.missed_pockets.first() else {
        return match findings.stuck_spots.first() {
            Some(spot) => answer(
                "why",
                question,
                format!(
                    "{} lost at {}",
                    words::minutes(spot.minutes),
                    words::plain(&spot.id, 12)
                ),
                vec![words::sentence(&spot.why)],
            ),
            None if shows_all(findings) => {
                answer("why", question, "Nothing needs a reason".to_owned(), Vec::new())
            }
            None => answer("why", question, "This log cannot tell".to_owned(), Vec::new()),
        };
    };
    let id = words::plain(&pocket.id, 12);
    let first = pocket.causes.as_ref().and_then(|causes| causes.first());
    let word = first.map_or_else(
        || "Not by luck".to_owned(),
        |found| words::capital(words::cause(found.cause)),
    );
    let mut lines = vec![format!("{id}: {}", words::sentence(&pocket.why))];
    let others: Vec<String> = findings
        .missed_pockets
        .iter()
        .skip(1)
        .filter_map(|other| {
            let found = other.causes.as_ref()?.first()?;
            let is_other = first.is_some_and(|first| first.cause != found.cause);
            is_other.then(|| format!("{}: {}", words::plain(&other.id, 12), words::cause(found.cause)))
        })
        .take(3)
        .collect();
    if !others.is_empty() {
        lines.push(format!("{}.", others.join("; ")));
    }
    answer("why", question, word, lines)
}

/// The suggestion that mends most: the one made for the largest pocket comes first.
pub(super) fn best(findings: &Findings) -> Option<&Suggestion> {
    findings.suggestions.as_ref()?.first()
}

fn change(findings: &Findings) -> Answer {
    let question = "What to change?";
    let said = |word: &str, line: String| answer("change", question, word.to_owned(), vec![line]);
    if let Some(first) = best(findings) {
        let count = findings.suggestions.as_ref().map_or(0, Vec::len);
        let more = match count - 1 {
            0 => String::new(),
            more => format!(" {} below.", plural(more, "more change is", "more changes are")),
        };
        let cost = super::facts::cost(first);
        let kind = words::suggestion(first.kind);
        let word = match (first.shift_m, cost.first()) {
            (Some(shift_m), _) if first.wire_m.is_none() => format!("{kind} by {}", words::metres(shift_m)),
            (_, Some(cost)) => format!("{kind}, {cost}"),
            (_, None) => kind.to_owned(),
        };
        return said(
            &word,
            format!(
                "{}: {} Nine of ten logs: {} of the pocket if nothing changes, {} if changed.{more}",
                words::plain(&first.id, 12),
                words::sentence(&first.why),
                words::range(first.predicted.pocket_fraction_before),
                words::range(first.predicted.pocket_fraction_after),
            ),
        );
    }
    let verdict = &findings.log_verdict;
    if verdict.positions != LogLevel::Good || verdict.level == LogLevel::Unusable {
        return said(
            "Log again first",
            "Change nothing in the garden on the strength of this log.".to_owned(),
        );
    }
    if let Some(pocket) = findings.missed_pockets.first() {
        let place = tussock_types::Place::new(pocket.east_m, pocket.north_m);
        let to = words::tape(&pocket.tape, place)
            .unwrap_or_else(|| words::position(pocket.lat, pocket.lon, place));
        return said(
            "Walk there and look",
            format!("{}: {to}.", words::plain(&pocket.id, 12)),
        );
    }
    if let Some(spot) = findings.stuck_spots.first() {
        return said(
            "Walk there and look",
            format!("{}: {}", words::plain(&spot.id, 12), words::sentence(&spot.why)),
        );
    }
    let decide_h = findings
        .not_yet
        .iter()
        .filter_map(|pocket| pocket.hours_to_decide)
        .fold(None, later);
    match (findings.coverage.is_some(), decide_h) {
        (false, _) => said(
            "Give the cutting width",
            "Measure the width of the cutting disc and count again.".to_owned(),
        ),
        (true, Some(decide_h)) => said(
            "Nothing yet",
            format!(
                "Let it run on. After {} of driving in all, what is still bare can be told from bad luck.",
                hours(decide_h)
            ),
        ),
        (true, None) if findings.outline_source == OutlineSource::Trace => said(
            "Give the outline first",
            "Walk round the lawn with the logger and make a plan of it: what lies beyond the drive cannot be seen in the \
             log."
                .to_owned(),
        ),
        (true, None) if !shows_all(findings) => said(
            "Nothing yet",
            words::sentence(verdict.remarks.first().map_or(verdict.advice.as_str(), String::as_str)),
        ),
        (true, None) => said(
            "Nothing",
            "No ground was left out that luck does not explain.".to_owned(),
        ),
    }
}

fn sure(findings: &Findings) -> Answer {
    let question = "How sure?";
    let word = match findings
        .coverage
        .as_ref()
        .map(|coverage| coverage.visited_fraction)
    {
        Some(fraction) if fraction.low.is_some() && fraction.high.is_some() => words::range(fraction),
        Some(_) => "One count, no interval yet".to_owned(),
        None => "Not counted".to_owned(),
    };
    let mut lines = Vec::new();
    let has_interval = |coverage: &tussock_types::Coverage| coverage.visited_fraction.low.is_some();
    if findings.coverage.as_ref().is_some_and(has_interval) {
        lines.push("of the lawn driven over, with a probability of 90 %.".to_owned());
    }
    if let Some(pocket) = findings.missed_pockets.first() {
        let id = words::plain(&pocket.id, 12);
        let mut said = vec![format!(
            "{id}: luck leaves such a gap {}",
            super::facts::chance(pocket.chance_fraction)
        )];
        if let Some(certainty) = pocket.certainty {
            said.push(format!("bare with {}", words::whole_percent(certainty)));
        }
        lines.push(format!("{}.", said.join("; ")));
    }
    if let Some(certainty) = best(findings).and_then(|best| best.certainty) {
        lines.push(format!(
            "The change brings its gain in {} of simulated runs.",
            words::whole_percent(certainty)
        ));
    }
    answer("sure", question, word, lines)
}
