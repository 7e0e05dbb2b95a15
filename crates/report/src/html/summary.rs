//! The first screen in five answers: is the log good enough, what was missed, why, what to change, how sure.

use super::plots;
use crate::messages::{named, say};
use crate::terminal::{later, verdict_sentence};
use crate::words::{self, area, hours, percent};
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
    let mut lines = vec![verdict_sentence(verdict), crate::text(&verdict.advice)];
    lines.extend(
        verdict
            .hours_more_needed
            .map(|hours_more| say!("about-more-driving-are", hours = hours(hours_more))),
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
        let lines = vec![say!("how-much-driven-over")];
        return answer("missed", question, say!("not-counted"), lines);
    };
    let pockets = &findings.missed_pockets;
    let total_m2: f64 = pockets.iter().map(|pocket| pocket.area_m2).sum();
    let word = match pockets.len() {
        0 => words::capital(&words::none_missed(
            &findings.log_verdict,
            findings.outline_source,
            coverage.unseen_m2,
        )),
        count => format!("{}, {}", say!("count-pocket", count = count), area(total_m2)),
    };
    let mut lines = vec![say!(
        "driven-over-percent-area",
        percent = percent(coverage.visited_fraction.estimate),
        area = area(coverage.lawn_m2)
    )];
    if findings.outline_source == OutlineSource::Trace {
        lines.push(say!("outline-drawn-from-log"));
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
                say!(
                    "lost-at",
                    time = words::minutes(spot.minutes),
                    id = words::plain(&spot.id, 12)
                ),
                vec![crate::text(&spot.why)],
            ),
            None if shows_all(findings) => {
                answer("why", question, say!("nothing-needs-reason-again"), Vec::new())
            }
            None => answer("why", question, say!("this-log-cannot-tell"), Vec::new()),
        };
    };
    let id = words::plain(&pocket.id, 12);
    let first = pocket.causes.as_ref().and_then(|causes| causes.first());
    let word = first.map_or_else(
        || say!("not-by"),
        |found| words::capital(&named("cause", &found.cause)),
    );
    let mut lines = vec![format!("{id}: {}", crate::text(&pocket.why))];
    let others: Vec<String> = findings
        .missed_pockets
        .iter()
        .skip(1)
        .filter_map(|other| {
            let found = other.causes.as_ref()?.first()?;
            let is_other = first.is_some_and(|first| first.cause != found.cause);
            is_other.then(|| {
                format!(
                    "{}: {}",
                    words::plain(&other.id, 12),
                    named("cause", &found.cause)
                )
            })
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
            more => format!(" {} below.", say!("count-more-change-is", count = more)),
        };
        let cost = super::facts::cost(first);
        let kind = named("suggestion", &first.kind);
        let word = match (first.shift_m, cost.first()) {
            (Some(shift_m), _) if first.wire_m.is_none() => {
                say!("by-kind", kind = kind, length = words::metres(shift_m))
            }
            (_, Some(cost)) => format!("{kind}, {cost}"),
            (_, None) => kind.to_owned(),
        };
        return said(
            &word,
            say!(
                "nine-ten-logs-pocket",
                id = words::plain(&first.id, 12),
                said = crate::text(&first.why),
                range = words::range(first.predicted.pocket_fraction_before),
                range_2 = words::range(first.predicted.pocket_fraction_after),
                more = more
            ),
        );
    }
    let verdict = &findings.log_verdict;
    if verdict.positions != LogLevel::Good || verdict.level == LogLevel::Unusable {
        return said("Log again first", say!("change-nothing-garden-on"));
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
            format!("{}: {}", words::plain(&spot.id, 12), crate::text(&spot.why)),
        );
    }
    let decide_h = findings
        .not_yet
        .iter()
        .filter_map(|pocket| pocket.hours_to_decide)
        .fold(None, later);
    match (findings.coverage.is_some(), decide_h) {
        (false, _) => said("Give the cutting width", say!("measure-width-cutting-disc")),
        (true, Some(decide_h)) => said("Nothing yet", say!("let-run-on-after", hours = hours(decide_h))),
        (true, None) if findings.outline_source == OutlineSource::Trace => {
            said("Give the outline first", say!("walk-round-lawn-with"))
        }
        (true, None) if !shows_all(findings) => said(
            "Nothing yet",
            crate::text(verdict.remarks.first().unwrap_or(&verdict.advice)),
        ),
        (true, None) => said("Nothing", say!("no-ground-left-out")),
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
        Some(_) => say!("one-count-no-interval"),
        None => say!("not-counted"),
    };
    let mut lines = Vec::new();
    let has_interval = |coverage: &tussock_types::Coverage| coverage.visited_fraction.low.is_some();
    if findings.coverage.as_ref().is_some_and(has_interval) {
        lines.push(say!("lawn-driven-over-with"));
    }
    if let Some(pocket) = findings.missed_pockets.first() {
        let id = words::plain(&pocket.id, 12);
        let mut said = vec![say!(
            "luck-leaves-such-gap",
            id = id,
            chance = super::facts::chance(pocket.chance_fraction)
        )];
        if let Some(certainty) = pocket.certainty {
            said.push(say!("bare-with", percent = words::whole_percent(certainty)));
        }
        lines.push(format!("{}.", said.join("; ")));
    }
    if let Some(certainty) = best(findings).and_then(|best| best.certainty) {
        lines.push(say!(
            "change-brings-its-gain",
            percent = words::whole_percent(certainty)
        ));
    }
    answer("sure", question, word, lines)
}
