//! How are numbers written, and how is text from outside kept harmless?
//!
//! Every window uses these: a number with its unit, rounded so that it claims no more than is known, and text from logs,
//! plans and settings with everything removed that could control a terminal, change the reading direction or hide itself.

mod comparison;
mod complaint;
mod reference;

use crate::messages::Voice;
use crate::messages::{eighth, named, say};
pub(crate) use comparison::*;
pub(crate) use complaint::*;
pub(crate) use reference::*;
pub(crate) use tussock_types::decimal;
use tussock_types::grouped;
use tussock_types::math;
use tussock_types::{
    Check, DarkHours, Estimate, Findings, LeftOut, LogLevel, LogVerdict, Night, OutlineSource, OverTime,
    Place, Said, SetStep, Span, StuckSpot, Suggestion, Tape, WayHome, Whether,
};
use tussock_types::{FOOT_M, INCH_M, Language, MILE_M, Units};
use unicode_width::{UnicodeWidthChar, UnicodeWidthStr};

/// Less driving in the dark is not worth a line.
const LEAST_TOLD_H: f64 = 0.05;
/// Stands for a character that was taken out.
const TAKEN_OUT: char = '\u{FFFD}';

/// Characters that have an effect instead of being read: controls, direction marks, invisible joins, tags.
pub fn is_hostile(c: char) -> bool {
    c.is_control()
        || matches!(
            c,
            '\u{00AD}'
                | '\u{061C}'
                | '\u{180E}'
                | '\u{200B}'..='\u{200F}'
                | '\u{2028}'..='\u{202E}'
                | '\u{2060}'..='\u{206F}'
                | '\u{FEFF}'
                | '\u{FFF9}'..='\u{FFFB}'
                | '\u{FFFE}'..='\u{FFFF}'
                | '\u{E0000}'..='\u{E0FFF}'
        )
}

/// Text from outside as one harmless line of at most `max_chars` characters.
pub(crate) fn plain(text: &str, max_chars: usize) -> String {
    let mut out = String::new();
    let mut count = 0;
    for c in text.chars() {
        if count == max_chars {
            out.pop();
            out.push('…');
            break;
        }
        let is_break = matches!(c, '\n' | '\r' | '\t' | '\u{2028}' | '\u{2029}');
        let shown = match () {
            () if is_break => ' ',
            () if is_hostile(c) => TAKEN_OUT,
            () => c,
        };
        // Runs of spaces and of removed characters say no more than one of them.
        if (shown == ' ' || shown == TAKEN_OUT) && out.ends_with(shown) {
            continue;
        }
        out.push(shown);
        count += 1;
    }
    out.trim().to_owned()
}

/// As many whole sentences of a text as fit into this many letters: none is cut before it says how much or how sure.
pub(crate) fn whole_sentences(text: &str, max_chars: usize) -> String {
    let text = plain(text, usize::MAX);
    let ends = text.match_indices(". ").map(|(at, _)| at + 1).chain([text.len()]);
    let fits = |end: &usize| text[..*end].chars().count() <= max_chars;
    let end = ends.take_while(fits).last().unwrap_or_default();
    text[..end].to_owned()
}

/// A sentence from outside: longer than a name, but not a novel.
pub(crate) fn sentence(text: &str) -> String {
    plain(text, 600)
}

/// A name from outside.
pub(crate) fn name(text: &str) -> String {
    plain(text, 80)
}

/// Columns that a text occupies on a terminal.
pub(crate) fn columns(text: &str) -> usize {
    text.width()
}

/// Cuts text to this many columns, with a mark where something was removed.
pub(crate) fn fit(text: &str, width_columns: usize) -> String {
    if columns(text) <= width_columns {
        return text.to_owned();
    }
    let mut out = String::new();
    let mut used = 0;
    for c in text.chars() {
        let wide = c.width().unwrap_or(0);
        if used + wide + 1 > width_columns {
            break;
        }
        used += wide;
        out.push(c);
    }
    out.push('…');
    out
}

/// Text right-aligned in this many columns.
pub(crate) fn right(text: &str, width_columns: usize) -> String {
    " ".repeat(width_columns.saturating_sub(columns(text))) + text
}

/// Breaks text into lines of at most this many columns, between words if possible.
pub(crate) fn wrap(text: &str, width_columns: usize) -> Vec<String> {
    let width_columns = width_columns.max(8);
    let mut lines = vec![String::new()];
    let mut used = 0;
    for word in text.split_ascii_whitespace() {
        let mut rest = word;
        let gap = usize::from(used > 0);
        if used > 0 && used + gap + columns(rest) > width_columns {
            lines.push(String::new());
            used = 0;
        }
        // A word longer than a line is cut, so that it stays within the frame.
        while columns(rest) > width_columns {
            let mut end = 0;
            let mut taken = 0;
            for (at, c) in rest.char_indices() {
                let wide = c.width().unwrap_or(0);
                if taken + wide > width_columns {
                    break;
                }
                taken += wide;
                end = at + c.len_utf8();
            }
            let line = lines.len() - 1;
            lines[line].push_str(&rest[..end]);
            lines.push(String::new());
            rest = &rest[end..];
        }
        let line = lines.len() - 1;
        if used > 0 {
            lines[line].push(' ');
            used += 1;
        }
        lines[line].push_str(rest);
        used += columns(rest);
    }
    lines.retain(|line| !line.is_empty());
    lines
}

/// How a language writes numbers.
pub(crate) struct Numerals {
    /// Between whole and part.
    pub(crate) decimal: char,
    /// Between thousands.
    group: char,
    /// Digits before the decimal mark from which on thousands are set apart.
    least_grouped: usize,
    /// Percent, with what stands before it.
    percent: &'static str,
}

/// Unicode CLDR 48, numbers: symbols, minimum grouping digits and the pattern of percent (as ICU 78 writes them). English keeps a space
/// before percent, as the SI has it.
pub(crate) const fn numerals(voice: Voice) -> Numerals {
    let (decimal, group, least_grouped, percent) = match voice.language {
        Language::English => ('.', ',', 4, " %"),
        Language::German => (',', '.', 4, " %"),
        Language::French => (',', '\u{202f}', 4, " %"),
        Language::Spanish => (',', '.', 5, " %"),
        Language::Italian => (',', '.', 5, "%"),
        Language::Dutch => (',', '.', 4, "%"),
        Language::Swedish => (',', '\u{a0}', 4, " %"),
        Language::Polish => (',', '\u{a0}', 5, "%"),
    };
    Numerals {
        decimal,
        group,
        least_grouped,
        percent,
    }
}

/// A number with so many decimals, and thousands set apart; `unknown` when it is not finite.
pub(crate) fn number(voice: Voice, value: f64, decimals: usize) -> String {
    if !value.is_finite() {
        return say!(voice, "unknown");
    }
    let text = decimal(value, decimals);
    let (sign, text) = text.strip_prefix('-').map_or(("", &text[..]), |size| ("−", size));
    let numerals = numerals(voice);
    let whole = text.find('.').unwrap_or(text.len());
    let grouped = match whole < numerals.least_grouped {
        true => text.to_owned(),
        false => grouped(text),
    };
    let mark = |letter: char| match letter {
        '.' => numerals.decimal,
        ',' => numerals.group,
        digit => digit,
    };
    sign.chars().chain(grouped.chars().map(mark)).collect()
}

/// A number with its unit, in metric or in imperial units: value, decimals, sign of the unit.
fn in_units(voice: Voice, metric: (f64, usize, &str), imperial: (f64, usize, &str)) -> String {
    let (value, decimals, unit) = match voice.units {
        Units::Metric => metric,
        Units::Imperial => imperial,
    };
    format!("{} {unit}", number(voice, value, decimals))
}

/// Metres as they are, or as feet where those are asked for.
fn in_feet(voice: Voice, value_m: f64) -> f64 {
    match voice.units {
        Units::Metric => value_m,
        Units::Imperial => value_m / FOOT_M,
    }
}

/// What a figure of the fit is called, with the unit in which it stands.
pub(crate) fn fit_figure(voice: Voice, what: &str) -> String {
    let unit = match voice.units {
        Units::Metric => "m",
        Units::Imperial => "ft",
    };
    say!(voice, "fit-figure", value = what, unit = unit)
}

/// By how much a figure of the fit is multiplied before it is shown.
pub(crate) fn fit_scale(voice: Voice, what: &str) -> f64 {
    match what {
        "visited_fraction" => 100.0,
        length if length.ends_with("_m") => in_feet(voice, 1.0),
        _ => 1.0,
    }
}

/// An area before another that has the unit.
pub(crate) fn bare_area(voice: Voice, value_m2: f64) -> String {
    number(voice, in_feet(voice, in_feet(voice, value_m2)), 0)
}

/// An area.
pub(crate) fn area(voice: Voice, value_m2: f64) -> String {
    let decimals = |value: f64| usize::from(value.abs() < 99.95);
    let value_sqft = value_m2 / (FOOT_M * FOOT_M);
    in_units(
        voice,
        (value_m2, decimals(value_m2), "m²"),
        (value_sqft, decimals(value_sqft), "sq ft"),
    )
}

/// A length: centimetres below 10 cm are of no use, tenths beyond 1 km neither; inches below a foot.
pub(crate) fn metres(voice: Voice, value_m: f64) -> String {
    let metric = match value_m.abs() {
        v if v < 0.0995 => (value_m * 100.0, 1, "cm"),
        v if v < 0.995 && decimal(value_m, 2).ends_with('0') => (value_m, 1, "m"),
        v if v < 0.995 => (value_m, 2, "m"),
        v if v < 999.95 => (value_m, 1, "m"),
        _ => (value_m, 0, "m"),
    };
    let imperial = match value_m.abs() / FOOT_M {
        v if v < 0.995 => (value_m / INCH_M, 1, "in"),
        v if v < 999.95 => (value_m / FOOT_M, 1, "ft"),
        _ => (value_m / FOOT_M, 0, "ft"),
    };
    in_units(voice, metric, imperial)
}

/// Millimetres.
pub(crate) fn millimetres(voice: Voice, value_mm: f64, decimals: usize) -> String {
    in_units(
        voice,
        (value_mm, decimals, "mm"),
        (value_mm / 1000.0 / INCH_M, decimals + 2, "in"),
    )
}

/// A step of the coordinates: millimetres matter here.
pub(crate) fn step(voice: Voice, step_m: f64) -> String {
    match step_m {
        m if m < 0.0995 => millimetres(voice, m * 1000.0, if m < 0.00995 { 1 } else { 0 }),
        m => metres(voice, m),
    }
}

/// A length for laying out a tape: to a tenth of a metre.
pub(crate) fn tape_length(voice: Voice, value_m: f64) -> String {
    length(voice, value_m, 1)
}

/// A length in metres with so many decimals; what asks for two or more is in inches, with one less.
pub(crate) fn length(voice: Voice, value_m: f64, decimals: usize) -> String {
    let imperial = match decimals {
        0 | 1 => (value_m / FOOT_M, decimals, "ft"),
        _ => (value_m / INCH_M, decimals - 1, "in"),
    };
    in_units(voice, (value_m, decimals, "m"), imperial)
}

/// A speed.
pub(crate) fn speed(voice: Voice, value_mps: f64) -> String {
    in_units(
        voice,
        (value_mps, 2, "m/s"),
        (value_mps * 3600.0 / MILE_M, 2, "mph"),
    )
}

/// Centimetres without decimals; inches with one.
pub(crate) fn whole_cm(voice: Voice, value_m: f64) -> String {
    in_units(voice, (100.0 * value_m, 0, "cm"), (value_m / INCH_M, 1, "in"))
}

/// A path: kilometres from 1 km up, miles from one up.
pub(crate) fn path_length(voice: Voice, value_m: f64) -> String {
    let metric = match value_m.abs() {
        v if v < 999.5 => (value_m, 0, "m"),
        _ => (value_m / 1000.0, 2, "km"),
    };
    let imperial = match value_m.abs() {
        v if v < MILE_M => (value_m / FOOT_M, 0, "ft"),
        _ => (value_m / MILE_M, 2, "mi"),
    };
    in_units(voice, metric, imperial)
}

/// Per cent with one decimal; never rounded to all or nothing unless it is.
pub(crate) fn percent(voice: Voice, fraction: f64) -> String {
    if !fraction.is_finite() {
        return say!(voice, "unknown");
    }
    let hundredths = fraction * 100.0;
    if hundredths > 0.0 && hundredths < 0.05 {
        return say!(voice, "under-percent", percent = percent(voice, 0.001));
    }
    if (99.95..100.0).contains(&hundredths) {
        return say!(voice, "over-percent", percent = percent(voice, 0.999));
    }
    number(voice, hundredths, 1) + numerals(voice).percent
}

/// Whole per cent, for plain sentences.
pub(crate) fn whole_percent(voice: Voice, fraction: f64) -> String {
    number(voice, fraction * 100.0, 0) + numerals(voice).percent
}

/// A share in a sentence: whole per cent, with a decimal if it is nearly nothing or nearly all.
pub(crate) fn share(voice: Voice, fraction: f64) -> String {
    let is_plain = (0.095..0.945).contains(&fraction) || fraction >= 1.0 || fraction == 0.0;
    if is_plain {
        whole_percent(voice, fraction)
    } else {
        percent(voice, fraction)
    }
}

/// Hours.
pub(crate) fn hours(voice: Voice, value_h: f64) -> String {
    format!(
        "{} h",
        number(voice, value_h, if value_h.abs() < 9.95 { 1 } else { 0 })
    )
}

/// What of the driving fell in the dark, with the last dusk and dawn by the garden's clock; `None` where nothing did, or nobody knows.
pub(crate) fn dark(voice: Voice, findings: &Findings) -> Option<String> {
    let nights = findings.nights.iter().flatten();
    let known: Vec<(&Night, &DarkHours)> = nights
        .filter_map(|night| Some((night, night.dark.as_ref()?)))
        .collect();
    let dark_h: f64 = known.iter().map(|(_, dark)| dark.driven_h).sum();
    if dark_h < LEAST_TOLD_H {
        return None;
    }
    let drives_h = |night: &Night| night.hours.driving_h + night.hours.transit_h + night.hours.reversing_h;
    let zone = findings.settings.garden.time_zone.as_deref();
    let clock = |text: &Option<String>| clock(text.as_deref()?, zone);
    let (_, last) = known.last()?;
    let utc = if zone.is_none() { " UTC" } else { "" };
    let both = clock(&last.dusk).zip(clock(&last.dawn));
    let between = both.map(|(dusk, dawn)| say!(voice, "dark-between", dusk = dusk, dawn = dawn, zone = utc));
    Some(say!(
        voice,
        "dark-of-driven",
        dark = hours(voice, dark_h),
        driven = hours(voice, known.iter().map(|(night, _)| drives_h(night)).sum()),
        between = between.unwrap_or_default()
    ))
}

/// A time that passed.
pub(crate) fn duration(voice: Voice, value_s: f64) -> String {
    if !value_s.is_finite() {
        return say!(voice, "unknown");
    }
    match value_s {
        v if v < 99.5 => format!(
            "{} s",
            number(voice, v, if v < 9.95 && v.fract() != 0.0 { 1 } else { 0 })
        ),
        v if v < 5970.0 => format!("{} min", number(voice, v / 60.0, 0)),
        v => {
            let minutes = (v / 60.0).round();
            let whole_h = (minutes / 60.0).floor();
            let rest = minutes - whole_h * 60.0;
            match rest {
                0.0 => format!("{} h", number(voice, whole_h, 0)),
                _ => format!("{} h {rest:.0} min", number(voice, whole_h, 0)),
            }
        }
    }
}

/// Minutes.
pub(crate) fn minutes(voice: Voice, value_min: f64) -> String {
    duration(voice, value_min * 60.0)
}

/// Minutes, however many.
pub(crate) fn whole_minutes(voice: Voice, value_min: f64) -> String {
    format!("{} min", number(voice, value_min, 0))
}

/// The interval of an estimate, or the statement that there is none.
pub(crate) fn interval(voice: Voice, estimate: Estimate) -> String {
    match (estimate.low, estimate.high) {
        (Some(low), Some(high)) => {
            say!(
                voice,
                "interval",
                low = number(voice, low * 100.0, 1),
                high = percent(voice, high)
            )
        }
        _ => say!(voice, "no-interval"),
    }
}

/// Both ends of an interval: `87.1 to 88.1 %`.
pub(crate) fn range(voice: Voice, estimate: Estimate) -> String {
    match (estimate.low, estimate.high) {
        (Some(low), Some(high)) => say!(
            voice,
            "range",
            low = number(voice, low * 100.0, 1),
            high = percent(voice, high)
        ),
        _ => say!(voice, "no-interval"),
    }
}

/// What stands between the parts of a list.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum ListMark {
    Comma,
    /// For parts that hold commas.
    Semicolon,
}

/// Parts as a list.
pub(crate) fn listed(voice: Voice, parts: impl IntoIterator<Item = String>, mark: ListMark) -> String {
    let join = |before: String, next: String| match mark {
        ListMark::Comma => say!(voice, "list", before = before, next = next),
        ListMark::Semicolon => say!(voice, "list-apart", before = before, next = next),
    };
    parts.into_iter().reduce(join).unwrap_or_default()
}

/// The first letter as a capital.
pub(crate) fn capital(text: &str) -> String {
    let mut letters = text.chars();
    letters
        .next()
        .map(|first| first.to_uppercase().collect::<String>() + letters.as_str())
        .unwrap_or_default()
}

/// A probability in words that do not claim more digits than are known.
pub(crate) fn chance(voice: Voice, fraction: f64) -> String {
    match fraction {
        f if !f.is_finite() => say!(voice, "unknown"),
        f if f < 1e-4 => say!(voice, "less-than"),
        f if f < 0.000_95 => say!(
            voice,
            "about-number",
            number = number(voice, (1.0 / f / 100.0).round() * 100.0, 0)
        ),
        f if f < 0.01 => say!(
            voice,
            "about-number",
            number = number(voice, (1.0 / f / 10.0).round() * 10.0, 0)
        ),
        f => percent(voice, f),
    }
}

/// A figure whose unit is in its words: three significant digits.
pub(crate) fn figure(voice: Voice, value: f64) -> String {
    let decimals = match value.abs() {
        v if v >= 100.0 => 0,
        v if v >= 10.0 => 1,
        _ => 2,
    };
    number(voice, value, decimals)
}

/// What a change needs, in a few words each.
pub(crate) fn cost(voice: Voice, suggestion: &Suggestion) -> Vec<String> {
    let shift = |shift_m: f64| say!(voice, "shift-length", length = metres(voice, shift_m));
    let mut cost: Vec<String> = suggestion.shift_m.map(shift).into_iter().collect();
    let (added_h, share) = (suggestion.added_h_per_day, suggestion.outing_share_fraction);
    cost.extend(work(voice, suggestion.wire_m, added_h, share));
    cost
}

fn work(voice: Voice, wire_m: Option<f64>, added_h: Option<f64>, share: Option<f64>) -> Vec<String> {
    let wire = |wire_m: f64| say!(voice, "wire-length", length = metres(voice, wire_m));
    let longer = |added_h: f64| say!(voice, "more-day", hours = hours(voice, added_h));
    let sent = |share: f64| {
        let percent = whole_percent(voice, share);
        say!(voice, "outings-sent-along-percent", percent = percent)
    };
    [wire_m.map(wire), added_h.map(longer), share.map(sent)]
        .into_iter()
        .flatten()
        .collect()
}

/// How the machine came home: how often by each way, and how long that took.
pub(crate) fn ways_home(voice: Voice, ways: &[WayHome]) -> String {
    let way = |way: &WayHome| {
        let along = named(voice, "way-home", &way.along);
        say!(
            voice,
            "way-home-row",
            times = way.times,
            along = along,
            time = minutes(voice, way.median_min)
        )
    };
    listed(voice, ways.iter().map(way), ListMark::Comma)
}

/// What a pattern efficiency means.
pub(crate) fn efficiency(voice: Voice, fraction: f64) -> String {
    let figure = whole_percent(voice, fraction);
    match fraction {
        f if f < -0.1 => say!(voice, "less-new-than-chance", figure = figure),
        f if f < 0.1 => say!(voice, "new-as-chance", figure = figure),
        f if f < 0.9 => say!(voice, "more-new-than-chance", figure = figure),
        _ => say!(voice, "hardly-twice", figure = figure),
    }
}

/// When this much of the lawn will have been driven over.
pub(crate) fn reach(voice: Voice, over_time: &OverTime) -> String {
    match (over_time.hours_to_95, over_time.hours_to_99) {
        (Some(to_95), Some(to_99)) => say!(
            voice,
            "reach-both",
            first = hours(voice, to_95),
            second = hours(voice, to_99)
        ),
        (Some(to_95), None) => say!(voice, "reach-95", after = hours(voice, to_95)),
        (None, Some(to_99)) => say!(voice, "reach-99", after = hours(voice, to_99)),
        (None, None) => say!(voice, "reach-none"),
    }
}

/// `3 days`, `1 day`, `1.5 days`.
pub(crate) fn days(voice: Voice, days: f64) -> String {
    say!(voice, "count-day", count = days)
}

/// Tape distances, and on which side of the line between the two ends the place lies, because two tapes cross twice.
pub(crate) fn tapes(voice: Voice, tape: &[Tape], target: Place) -> Vec<String> {
    let mut parts: Vec<String> = tape
        .iter()
        .map(|tape| {
            let length = match tape.sd_m.filter(|sd_m| sd_m.is_finite()) {
                // Twice a standard deviation, but never stated more finely than a tape shows.
                Some(sd_m) => format!(
                    "{} ± {}",
                    number(voice, in_feet(voice, tape.distance_m), 1),
                    tape_length(voice, (2.0 * sd_m).max(0.1))
                ),
                None => tape_length(voice, tape.distance_m),
            };
            // In English a name is spoken with its article.
            let from = match &tape.landmark {
                Some(landmark) if !voice.is_plain_english() => crate::messages::said(voice, landmark),
                _ => name(&tape.from),
            };
            say!(voice, "tape-from", length = length, from = from)
        })
        .collect();
    if let (Some(eighth), Some(last)) = (tape_side(tape, target), parts.last_mut()) {
        *last = say!(voice, "tape-side", tape = *last, eighth = eighth);
    }
    parts
}

/// On which side of the line through both ends the place lies, as a compass direction.
fn tape_side(tape: &[Tape], target: Place) -> Option<f64> {
    let [first, second] = tape else { return None };
    let (east_m, north_m) = (
        second.from_east_m - first.from_east_m,
        second.from_north_m - first.from_north_m,
    );
    let length_m = math::hypot(east_m, north_m);
    let across_m = (east_m * (target.north_m - first.from_north_m)
        - north_m * (target.east_m - first.from_east_m))
        / length_m;
    // On the line itself, both crossings coincide.
    if !across_m.is_finite() || across_m.abs() < 0.3 {
        return None;
    }
    let (out_east, out_north) = match across_m > 0.0 {
        true => (-north_m, east_m),
        false => (north_m, -east_m),
    };
    let course_deg = math::atan2(out_east, out_north).to_degrees();
    Some(eighth(course_deg))
}

/// Tape distances as one phrase.
pub(crate) fn tape(voice: Voice, tape: &[Tape], target: Place) -> Option<String> {
    let parts = tapes(voice, tape, target);
    (!parts.is_empty()).then(|| listed(voice, parts, ListMark::Comma))
}

/// What larger and smaller versions of a change would bring, and cost the lawn.
pub(crate) fn ladder(voice: Voice, change: &Suggestion) -> String {
    let chosen = (
        change.shift_m.or(change.wire_m),
        change.outing_share_fraction,
        change.added_h_per_day,
    );
    let told = change.ladder.iter().flatten().map(|rung| {
        let (share, added_h) = (rung.outing_share_fraction, rung.added_h_per_day);
        let size = match rung.size_m {
            Some(size_m) if share.is_none() => metres(voice, size_m),
            wire_m => listed(voice, work(voice, wire_m, added_h, share), ListMark::Comma),
        };
        say!(
            voice,
            "rung",
            size = size,
            fraction = percent(voice, rung.pocket_fraction_after.estimate),
            lawn = rung
                .lawn_gain_fraction
                .map_or_else(|| "none".to_owned(), |gain| points(voice, gain)),
            chosen = Whether::from((rung.size_m, share, added_h) == chosen)
        )
    });
    say!(voice, "ladder", list = listed(voice, told, ListMark::Semicolon))
}

/// Several changes together, each with what it adds to those before it.
pub(crate) fn change_set(voice: Voice, steps: &[SetStep]) -> String {
    let told = steps.iter().map(|step| {
        say!(
            voice,
            "set-step",
            id = plain(&step.id, 12),
            area = area(voice, step.gained_m2),
            fraction = percent(voice, step.pockets_fraction_after.estimate)
        )
    });
    let lawn = steps
        .last()
        .map(|step| with_interval(voice, step.visited_fraction_after));
    say!(
        voice,
        "change-set",
        list = listed(voice, told, ListMark::Semicolon),
        lawn = lawn.unwrap_or_default()
    )
}

/// What to look at where the machine got stuck, and where it came from.
pub(crate) fn why_stuck(voice: Voice, spot: &StuckSpot) -> String {
    let course = spot
        .approach_deg
        .map(|course_deg| say!(voice, "stuck-came", course_deg = course_deg));
    let why = std::iter::once(crate::messages::said(voice, &spot.why)).chain(course);
    why.collect::<Vec<_>>().join(" ")
}

/// Where a place lies: by latitude and longitude, or else by metres on the plane.
pub(crate) fn position(voice: Voice, lat: Option<f64>, lon: Option<f64>, place: Place) -> String {
    match (lat, lon) {
        (Some(lat), Some(lon)) => format!("{}, {}", decimal(lat, 7), decimal(lon, 7)),
        _ => say!(
            voice,
            "position-metres",
            east = tape_length(voice, place.east_m),
            north = tape_length(voice, place.north_m)
        ),
    }
}

/// The message if nothing counts as missed: a poor or short log shows only wide pockets, nobody knows what lies beyond a
/// drive that drew its own outline, and nobody knows what ground without evidence would show.
pub(crate) fn none_missed(
    voice: Voice,
    verdict: &LogVerdict,
    source: OutlineSource,
    unseen_m2: f64,
) -> String {
    let width = || metres(voice, verdict.smallest_findable_width_m);
    match (verdict.level, source) {
        (LogLevel::Unusable, _) => say!(voice, "none-told"),
        _ if unseen_m2 > verdict.smallest_findable_pocket_m2 => {
            say!(voice, "none-shown-unseen", area = area(voice, unseen_m2))
        }
        (LogLevel::Limited, OutlineSource::Trace) => say!(voice, "none-known-narrower", width = width()),
        (LogLevel::Good, OutlineSource::Trace) => say!(voice, "none-known"),
        (LogLevel::Limited, OutlineSource::Plan) => say!(voice, "none-narrower", width = width()),
        (LogLevel::Good, OutlineSource::Plan) => say!(voice, "none-but-luck"),
    }
}

/// The verdict as one sentence.
pub(crate) fn verdict_sentence(voice: Voice, verdict: &LogVerdict) -> String {
    let smallest = say!(
        voice,
        "pockets-from",
        length = metres(voice, verdict.smallest_findable_width_m),
        area = area(voice, verdict.smallest_findable_pocket_m2)
    );
    match (verdict.level, verdict.positions) {
        (LogLevel::Unusable, LogLevel::Good) => {
            say!(voice, "log-too-short-positions")
        }
        (LogLevel::Unusable, _) => say!(voice, "log-not-good-enough-shows"),
        (LogLevel::Good, _) => say!(voice, "log-good-enough-can", smallest = smallest),
        (LogLevel::Limited, LogLevel::Good) => say!(
            voice,
            "log-too-short-its",
            length = metres(voice, verdict.smallest_findable_width_m),
            area = area(voice, verdict.smallest_findable_pocket_m2)
        ),
        (LogLevel::Limited, _) => say!(voice, "log-not-good-enough", smallest = smallest),
    }
}

/// How many checks hold, and which do not; `None` without checks.
pub(crate) fn checks_line(voice: Voice, checks: &[Check]) -> Option<String> {
    let failing: Vec<&Check> = checks.iter().filter(|check| !check.holds).collect();
    let held = checks.len() - failing.len();
    let sum = say!(voice, "checks-hold", held = held, all = checks.len());
    match (checks.is_empty(), failing.is_empty()) {
        (true, _) => None,
        (_, true) => Some(sum),
        _ => {
            let fails = listed(
                voice,
                failing.into_iter().map(|check| check_fails(voice, check)),
                ListMark::Comma,
            );
            Some(say!(voice, "checks-say", sum = sum, fails = fails))
        }
    }
}

/// What contradicts what, in a few words.
fn check_fails(voice: Voice, check: &Check) -> String {
    match check.consequence {
        Some(Said::EdgeInside { edge_deg, .. } | Said::EdgeOutside { edge_deg, .. }) => {
            say!(voice, "check-fails-edge", edge_deg = edge_deg)
        }
        _ => named(voice, "check-fails", &check.check),
    }
}

/// What was measured, with its unit.
pub(crate) fn check_is(voice: Voice, check: &Check) -> String {
    say!(
        voice,
        "check-is",
        value = check.check,
        number = number(voice, check.statistic, 2),
        length = length(voice, check.statistic, 2),
        percent = percent(voice, check.statistic),
        points = number(voice, 100.0 * check.statistic, 2),
    )
}

/// How many fixes were used, and what happened to the others that were read.
pub(crate) fn fixes(voice: Voice, span: &Span) -> String {
    let mut others: Vec<String> = span
        .fixes_left_out
        .iter()
        .map(|(reason, number)| match reason {
            LeftOut::PoorQuality => say!(voice, "fixes-poor", count = *number),
            LeftOut::Jump => say!(voice, "fixes-jumped", count = *number),
        })
        .collect();
    if span.fixes_carried > 0 {
        others.push(say!(voice, "fixes-carried", count = span.fixes_carried));
    }
    match others.is_empty() {
        true => say!(voice, "count-fix", count = span.fixes_used),
        false => say!(
            voice,
            "fixes-used-of",
            used = span.fixes_used,
            count = span.fixes_read,
            list = listed(voice, others, ListMark::Comma)
        ),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use tussock_types::Said;

    #[test]
    fn what_could_steer_a_terminal_or_turn_the_reading_direction_is_taken_out() {
        assert_eq!(
            plain("a\u{1b}[2Jb\u{202e}c\u{7}", 80),
            "a\u{FFFD}[2Jb\u{FFFD}c\u{FFFD}"
        );
        assert_eq!(plain("one\r\n\ttwo", 80), "one two");
        assert_eq!(plain("Grünfläche 芝生 ✓", 80), "Grünfläche 芝生 ✓");
        assert_eq!(plain("abcdef", 4), "abc…");
        assert_eq!(plain("abcd", 4), "abcd");
        assert_eq!(plain(&"\u{200b}".repeat(1000), 4), "\u{FFFD}");
    }

    #[test]
    fn two_tapes_say_on_which_side_they_meet_and_how_exact_they_are() {
        let tape = |from: &str, east_m: f64, north_m: f64| Tape {
            from: from.to_owned(),
            landmark: None,
            distance_m: 5.0,
            sd_m: Some(0.04),
            from_east_m: east_m,
            from_north_m: north_m,
        };
        let ends = [tape("the shed", 0.0, 0.0), tape("the birch", 6.0, 0.0)];
        let said = |east_m, north_m| tapes(Voice::default(), &ends, Place::new(east_m, north_m)).join("; ");
        assert_eq!(
            said(3.0, 4.0),
            "5.0 ± 0.1 m from the shed; 5.0 ± 0.1 m from the birch, on their northern side"
        );
        assert!(said(3.0, -4.0).ends_with("on their southern side"));
        assert!(
            said(3.0, 0.1).ends_with("from the birch"),
            "on the line both crossings are one"
        );
        let slanting = [tape("a", 0.0, 0.0), tape("b", 4.0, 4.0)];
        let side = tapes(Voice::default(), &slanting, Place::new(4.0, 0.0)).join("; ");
        assert!(side.ends_with("on their south-eastern side"), "{side}");
        let alone = [Tape {
            sd_m: None,
            ..tape("the shed", 0.0, 0.0)
        }];
        assert_eq!(
            tapes(Voice::default(), &alone, Place::new(3.0, 4.0)),
            ["5.0 m from the shed"]
        );
        let poor = [Tape {
            sd_m: Some(0.61),
            ..tape("the shed", 0.0, 0.0)
        }];
        let imperial = Voice::new(Language::English, Units::Imperial);
        let said = tapes(imperial, &poor, Place::new(3.0, 4.0));
        assert_eq!(said, ["16.4 ± 4.0 ft from the shed"]);
        assert_eq!(
            tapes(Voice::default(), &poor, Place::new(3.0, 4.0)),
            ["5.0 ± 1.2 m from the shed"]
        );
    }

    #[test]
    fn numbers_never_round_to_all_or_nothing_what_is_neither() {
        assert_eq!(percent(Voice::default(), 1.0), "100.0 %");
        assert_eq!(percent(Voice::default(), 0.99999), "over 99.9 %");
        assert_eq!(percent(Voice::default(), 0.0), "0.0 %");
        assert_eq!(percent(Voice::default(), 0.0001), "under 0.1 %");
        assert_eq!(percent(Voice::default(), f64::NAN), "unknown");
        assert_eq!(number(Voice::default(), 1_234_567.891, 1), "1,234,567.9");
        assert_eq!(number(Voice::default(), -0.04, 1), "0.0");
        assert_eq!(number(Voice::default(), -1234.0, 0), "−1,234");
    }

    #[test]
    fn lengths_areas_and_times_carry_units_that_fit_their_size() {
        assert_eq!(metres(Voice::default(), 0.021), "2.1 cm");
        assert_eq!(metres(Voice::default(), 0.3), "0.3 m");
        assert_eq!(metres(Voice::default(), 0.25), "0.25 m");
        assert_eq!(metres(Voice::default(), 12.34), "12.3 m");
        assert_eq!(area(Voice::default(), 4.56), "4.6 m²");
        assert_eq!(area(Voice::default(), 1412.3), "1,412 m²");
        assert_eq!(path_length(Voice::default(), 11_234.0), "11.23 km");
        assert_eq!(duration(Voice::default(), 1.0), "1 s");
        assert_eq!(duration(Voice::default(), 0.2), "0.2 s");
        assert_eq!(duration(Voice::default(), 600.0), "10 min");
        assert_eq!(duration(Voice::default(), 8.0 * 3600.0 - 1.0), "8 h");
        assert_eq!(
            duration(Voice::default(), 2.0 * 3600.0 + 14.0 * 60.0),
            "2 h 14 min"
        );
    }

    #[test]
    fn no_sentence_is_cut_where_there_is_little_room() {
        let text = "It is 2.4 m wide. About 94 % is driven over (58.9 to 100 %).";
        assert_eq!(whole_sentences(text, 100), text);
        assert_eq!(whole_sentences(text, 59), "It is 2.4 m wide.");
        assert_eq!(whole_sentences(text, 10), "");
        assert_eq!(whole_sentences("", 10), "");
    }

    #[test]
    fn lines_break_between_words_and_count_wide_characters_twice() {
        assert_eq!(wrap("one two three", 8), ["one two", "three"]);
        assert_eq!(wrap("芝生芝生芝生", 8), ["芝生芝生", "芝生"]);
        assert_eq!(fit("芝生芝生", 5), "芝生…");
        for line in wrap("a bb ccc dddd eeeee ffffff ggggggggggggggggg", 9) {
            assert!(columns(&line) <= 9);
        }
    }

    #[test]
    fn a_poor_log_says_only_which_widths_it_can_speak_of() {
        let mut verdict = LogVerdict {
            level: LogLevel::Limited,
            positions: LogLevel::Limited,
            duration: LogLevel::Good,
            smallest_findable_pocket_m2: 91.6,
            smallest_findable_width_m: 10.8,
            hours_more_needed: None,
            advice: Said::NoStation {},
            remarks: Vec::new(),
        };
        let said = |verdict: &LogVerdict| none_missed(Voice::default(), verdict, OutlineSource::Plan, 0.0);
        assert_eq!(
            said(&verdict),
            "nothing from 10.8 m wide up; narrower pockets this log cannot show"
        );
        let drawn = |verdict: &LogVerdict| none_missed(Voice::default(), verdict, OutlineSource::Trace, 0.0);
        assert_eq!(
            drawn(&verdict),
            "nothing from 10.8 m wide up inside the drawn outline; narrower pockets, and what lies beyond it, this log cannot show"
        );
        verdict.level = LogLevel::Good;
        assert_eq!(said(&verdict), "nothing; luck explains the gaps");
        assert!(drawn(&verdict).starts_with("nothing inside the drawn outline"));
        assert_eq!(
            none_missed(Voice::default(), &verdict, OutlineSource::Plan, 260.0),
            "none is shown, but 260 m² are without evidence: this log cannot tell"
        );
        verdict.level = LogLevel::Unusable;
        assert_eq!(said(&verdict), "this log cannot tell");
    }
}
