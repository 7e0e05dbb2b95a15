//! What does `inspect` say of a log, before anything is counted?

use super::{Sheet, Style, verdict_sentence};
use crate::words::{self, count, decimal, duration, metres, number, plural};
use tussock_types::{Inspection, LogFacts, PositionFindings, Span};

/// Silences that are shown.
const SILENCES_SHOWN: usize = 3;

/// The answer of an inspection as text.
pub fn answer_inspection(inspection: &Inspection, style: Style) -> String {
    let mut sheet = Sheet::new(style);
    let verdict = &inspection.log_verdict;
    sheet.headline(&verdict_sentence(verdict));
    sheet.indented(2, &words::sentence(&verdict.advice));
    for remark in &verdict.remarks {
        sheet.indented(2, &format!("Also: {}", words::sentence(remark)));
    }
    sheet.blank();
    for input in &inspection.inputs {
        file_rows(&mut sheet, &input.facts);
    }
    sheet.blank();
    span_rows(&mut sheet, &inspection.span);
    quality_rows(&mut sheet, inspection);
    position_row(&mut sheet, &inspection.positions);
    let (east_m, north_m) = inspection.extent_m;
    let middle = match inspection.middle {
        Some(middle) => format!(
            "around {}, {}",
            decimal(middle.lat_deg, 5),
            decimal(middle.lon_deg, 5)
        ),
        None => "in local metres, no place on Earth".to_owned(),
    };
    sheet.row(
        "Extent",
        &format!("{} east by {} north, {middle}", metres(east_m), metres(north_m)),
    );
    sheet.into_text()
}

fn file_rows(sheet: &mut Sheet, facts: &LogFacts) {
    let made_by = facts
        .made_by
        .as_ref()
        .map(|made_by| format!(", made by {}", words::plain(made_by, 40)))
        .unwrap_or_default();
    sheet.headline(&format!(
        "{} ({}{made_by})",
        words::name(&facts.name),
        facts.format.words()
    ));
    let share = match facts.bytes {
        0 => "no bytes".to_owned(),
        bytes => format!(
            "{} of its bytes",
            words::percent(facts.bytes_used as f64 / bytes as f64)
        ),
    };
    let resolution = facts
        .resolution_m
        .map(|step_m| format!(", steps of {}", step(step_m)))
        .unwrap_or_default();
    sheet.row(
        "  Used",
        &format!("{} from {share}{resolution}", plural(facts.fixes, "fix", "fixes")),
    );
    if facts.skipped.is_empty() {
        sheet.row("  Skipped", "nothing");
    }
    for (index, (reason, skipped)) in facts.skipped.iter().enumerate() {
        let label = if index == 0 { "  Skipped" } else { "" };
        let first = facts.places.iter().find(|place| place.reason == *reason);
        let place = match first {
            Some(place) if place.excerpt.is_empty() => format!("; first on line {}", count(place.line)),
            Some(place) => {
                format!(
                    "; first on line {}: {}",
                    count(place.line),
                    words::plain(&place.excerpt, 24)
                )
            }
            None => String::new(),
        };
        sheet.row(label, &format!("{} × {}{place}", count(*skipped), reason.words()));
    }
    for notice in &facts.notices {
        let place = match notice.line {
            0 => String::new(),
            line => format!(" (line {})", count(line)),
        };
        sheet.row("  Note", &format!("{}{place}", words::sentence(&notice.sentence)));
    }
}

/// A step of the coordinates: millimetres matter here.
fn step(step_m: f64) -> String {
    match step_m {
        m if m < 0.0995 => format!("{} mm", number(m * 1000.0, if m < 0.00995 { 1 } else { 0 })),
        m => metres(m),
    }
}

fn span_rows(sheet: &mut Sheet, span: &Span) {
    let when = match (&span.start, &span.end) {
        (Some(start), Some(end)) => format!("{} to {}", words::plain(start, 35), words::plain(end, 35)),
        _ => "no dates".to_owned(),
    };
    sheet.row("Time", &when);
    sheet.row(
        "Fixes",
        &format!("{}, one every {}", words::fixes(span), duration(span.period_s)),
    );
    let mut hours = vec![format!("driving {}", duration(span.driving_s))];
    if let Some(at_station_s) = span.at_station_s {
        hours.push(format!("at the station {}", duration(at_station_s)));
    }
    hours.push(format!("standing elsewhere {}", duration(span.halted_s)));
    hours.push(format!("silent {}", duration(span.silent_s)));
    sheet.row("Hours", &hours.join(", "));
    if span.silences.is_empty() {
        sheet.row("Silences", "none");
    } else {
        let longest: Vec<String> = span
            .silences
            .iter()
            .take(SILENCES_SHOWN)
            .map(|silence| {
                format!(
                    "{} from {} after the start, {} further on",
                    duration(silence.duration_s),
                    duration(silence.start_s),
                    metres(silence.moved_m)
                )
            })
            .collect();
        let more = match span.silences.len() {
            n if n > SILENCES_SHOWN => format!("; and {} shorter", n - SILENCES_SHOWN),
            _ => String::new(),
        };
        sheet.row("Silences", &format!("{}{more}", longest.join("; ")));
    }
}

fn quality_rows(sheet: &mut Sheet, inspection: &Inspection) {
    let qualities: Vec<String> = inspection
        .qualities
        .iter()
        .map(|(words, fixes)| format!("{} {}", words::plain(words, 30), count(*fixes)))
        .collect();
    if !qualities.is_empty() {
        sheet.row("Quality", &qualities.join(", "));
    }
    if let Some((median, most)) = inspection.hdop {
        sheet.row(
            "HDOP",
            &format!(
                "{} in the middle, 95 % below {}",
                number(median, 1),
                number(most, 1)
            ),
        );
    }
    if inspection.repeated_positions > 0 {
        sheet.row(
            "Repeats",
            &format!(
                "{} to the last digit",
                plural(
                    inspection.repeated_positions,
                    "fix repeats the position before it",
                    "fixes repeat the position before them"
                )
            ),
        );
    }
}

fn position_row(sheet: &mut Sheet, positions: &PositionFindings) {
    sheet.row("Error", &position_error(positions));
}

/// The position error in words.
pub(crate) fn position_error(positions: &PositionFindings) -> String {
    let mut parts = Vec::new();
    if let Some(white_m) = positions.white_m {
        parts.push(format!("{} from fix to fix", metres(white_m)));
    }
    if let Some(drift_m) = positions.drift_m {
        let time = positions
            .drift_time_s
            .map(|time_s| format!(" over about {}", duration(time_s)))
            .unwrap_or_default();
        parts.push(format!("{} drifting{time}", metres(drift_m)));
    }
    let figures = match parts.is_empty() {
        true => "not known".to_owned(),
        false => format!("{} (standard deviation per axis)", parts.join(", ")),
    };
    format!("{figures}; from {}", words::noise_source(positions.source))
}
