//! What does `inspect` say of a log, before anything is counted?

use super::{Sheet, Style, verdict_sentence};
use crate::messages::{named, say};
use crate::words::{self, count, decimal, duration, metres, number};
use tussock_types::{Inspection, LogFacts, PositionFindings};

/// Silences that are shown.
const SILENCES_SHOWN: usize = 3;

/// The answer of an inspection as text.
pub fn answer_inspection(inspection: &Inspection, style: Style) -> String {
    let mut sheet = Sheet::new(style);
    let verdict = &inspection.log_verdict;
    sheet.headline(&verdict_sentence(verdict));
    sheet.indented(2, &crate::text(&verdict.advice));
    for remark in &verdict.remarks {
        sheet.indented(2, &say!("also-said", said = crate::text(remark)));
    }
    sheet.blank();
    for input in &inspection.inputs {
        file_rows(&mut sheet, &input.facts);
    }
    sheet.blank();
    span_rows(&mut sheet, inspection);
    quality_rows(&mut sheet, inspection);
    position_row(&mut sheet, &inspection.positions);
    let (east_m, north_m) = inspection.extent_m;
    let middle = match inspection.middle {
        Some(middle) => say!(
            "around-lat",
            lat_deg = decimal(middle.lat_deg, 5),
            lon_deg = decimal(middle.lon_deg, 5)
        ),
        None => say!("local-metres-no-place"),
    };
    sheet.row(
        "Extent",
        &say!(
            "east-by",
            length = metres(east_m),
            length_2 = metres(north_m),
            middle = middle
        ),
    );
    sheet.into_text()
}

fn file_rows(sheet: &mut Sheet, facts: &LogFacts) {
    let made_by = facts
        .made_by
        .as_ref()
        .map(|made_by| say!("made-by", id = words::plain(made_by, 40)))
        .unwrap_or_default();
    sheet.headline(&format!(
        "{} ({}{made_by})",
        words::name(&facts.name),
        facts.format.words()
    ));
    let share = match facts.bytes {
        0 => say!("no-bytes"),
        bytes => say!(
            "its-bytes",
            percent = words::percent(facts.bytes_used as f64 / bytes as f64)
        ),
    };
    let resolution = facts
        .resolution_m
        .map(|step_m| say!("steps-step", step_m = step(step_m)))
        .unwrap_or_default();
    sheet.row(
        "  Used",
        &say!(
            "from-count",
            count = say!("count-fix", count = facts.fixes),
            share = share,
            resolution = resolution
        ),
    );
    if facts.skipped.is_empty() {
        sheet.row("  Skipped", "nothing");
    }
    for (index, (reason, skipped)) in facts.skipped.iter().enumerate() {
        let label = if index == 0 { "  Skipped" } else { "" };
        let first = facts.places.iter().find(|place| place.reason == *reason);
        let place = match first {
            Some(place) if place.excerpt.is_empty() => say!("first-on", count = count(place.line)),
            Some(place) => {
                say!(
                    "first-on-line",
                    count = count(place.line),
                    id = words::plain(&place.excerpt, 24)
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
        m if m < 0.0995 => say!(
            "mm-number",
            number = number(m * 1000.0, if m < 0.00995 { 1 } else { 0 })
        ),
        m => metres(m),
    }
}

fn span_rows(sheet: &mut Sheet, look: &Inspection) {
    let span = &look.span;
    let when = match (&span.start, &span.end) {
        (Some(start), Some(end)) => say!(
            "to-id",
            id = words::plain(start, 35),
            id_2 = words::plain(end, 35)
        ),
        _ => say!("no-dates"),
    };
    sheet.row("Time", &when);
    sheet.row(
        "Fixes",
        &say!(
            "one-every",
            fixes = words::fixes(span),
            time = duration(span.period_s)
        ),
    );
    let mut hours = vec![say!("driving-time", time = duration(span.driving_s))];
    if let Some(at_station_s) = span.at_station_s {
        hours.push(say!("at-station", time = duration(at_station_s)));
    }
    hours.push(say!("standing-elsewhere", time = duration(span.halted_s)));
    hours.push(say!("silent-time", time = duration(span.silent_s)));
    sheet.row("Hours", &hours.join(", "));
    if look.silences.is_empty() {
        sheet.row("Silences", "none");
    } else {
        let longest: Vec<String> = look
            .silences
            .iter()
            .take(SILENCES_SHOWN)
            .map(|silence| {
                say!(
                    "from-after-start-further",
                    time = duration(silence.duration_s),
                    time_2 = duration(silence.start_s),
                    length = metres(silence.moved_m)
                )
            })
            .collect();
        let more = match look.silences.len() {
            n if n > SILENCES_SHOWN => say!("shorter-value", value = n - SILENCES_SHOWN),
            _ => String::new(),
        };
        sheet.row("Silences", &format!("{}{more}", longest.join("; ")));
    }
}

fn quality_rows(sheet: &mut Sheet, inspection: &Inspection) {
    let qualities: Vec<String> = inspection
        .qualities
        .iter()
        .map(|(quality, fixes)| format!("{} {}", named("fix-quality", quality), count(*fixes)))
        .collect();
    if !qualities.is_empty() {
        sheet.row("Quality", &qualities.join(", "));
    }
    if let Some((median, most)) = inspection.hdop {
        sheet.row(
            "HDOP",
            &say!(
                "middle-below-number-number",
                number = number(median, 1),
                number_2 = number(most, 1)
            ),
        );
    }
    if inspection.repeated_positions > 0 {
        sheet.row(
            "Repeats",
            &say!(
                "last-digit-count-again",
                count = say!("count-fix-repeats-the", count = inspection.repeated_positions)
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
        parts.push(say!("from-fix-fix-length", length = metres(white_m)));
    }
    if let Some(drift_m) = positions.drift_m {
        let time = positions
            .drift_time_s
            .map(|time_s| format!(" over about {}", duration(time_s)))
            .unwrap_or_default();
        parts.push(say!("drifting-length", length = metres(drift_m), time = time));
    }
    let figures = match parts.is_empty() {
        true => say!("not-known"),
        false => say!("standard-deviation-per-axis", join = parts.join(", ")),
    };
    say!(
        "from-figures",
        figures = figures,
        word = named("noise-source", &positions.source)
    )
}
