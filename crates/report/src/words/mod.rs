//! How is a number said, and how is text from outside kept harmless?
//!
//! Every window speaks through these: a number with its unit, rounded so that it claims no more than it knows,
//! and text from logs, plans and settings with everything taken out that could steer a terminal, turn the
//! reading direction or hide itself.

mod comparison;
mod complaint;
mod reference;

use crate::messages::{eighth, named, say};
pub(crate) use comparison::*;
pub(crate) use complaint::*;
pub(crate) use reference::*;
use tussock_types::math;
use tussock_types::{
    Check, DarkHours, Estimate, Findings, LeftOut, LogLevel, LogVerdict, Night, OutlineSource, OverTime,
    Place, Rung, Said, Span, StuckSpot, Suggestion, Tape, WayHome,
};
pub(crate) use tussock_types::{decimal, grouped, plural};
use unicode_width::{UnicodeWidthChar, UnicodeWidthStr};

/// Less driving in the dark is not worth a line.
const LEAST_TOLD_H: f64 = 0.05;
/// Stands for a character that was taken out.
const TAKEN_OUT: char = '\u{FFFD}';

/// Characters that act instead of being read: controls, direction marks, invisible joins, tags.
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
        // Runs of spaces and of taken-out characters say nothing more than one of them.
        if (shown == ' ' || shown == TAKEN_OUT) && out.ends_with(shown) {
            continue;
        }
        out.push(shown);
        count += 1;
    }
    out.trim().to_owned()
}

/// As many whole sentences of a text as fit into so many letters: none is cut before it says how much or how sure.
pub(crate) fn whole_sentences(text: &str, max_chars: usize) -> String {
    let text = plain(text, usize::MAX);
    let ends = text.match_indices(". ").map(|(at, _)| at + 1).chain([text.len()]);
    let fits = |end: &usize| text[..*end].chars().count() <= max_chars;
    let end = ends.take_while(fits).last().unwrap_or_default();
    text[..end].to_owned()
}

/// A sentence from the outside: longer than a name, but no novel.
pub(crate) fn sentence(text: &str) -> String {
    plain(text, 600)
}

/// A name from the outside.
pub(crate) fn name(text: &str) -> String {
    plain(text, 80)
}

/// Columns that a text takes on a terminal.
pub(crate) fn columns(text: &str) -> usize {
    text.width()
}

/// Cuts text to so many columns, with a mark where something is gone.
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

/// Text at the right end of so many columns.
pub(crate) fn right(text: &str, width_columns: usize) -> String {
    " ".repeat(width_columns.saturating_sub(columns(text))) + text
}

/// Breaks text into lines of at most so many columns, between words where there are any.
pub(crate) fn wrap(text: &str, width_columns: usize) -> Vec<String> {
    let width_columns = width_columns.max(8);
    let mut lines = vec![String::new()];
    let mut used = 0;
    for word in text.split_whitespace() {
        let mut rest = word;
        let gap = usize::from(used > 0);
        if used > 0 && used + gap + columns(rest) > width_columns {
            lines.push(String::new());
            used = 0;
        }
        // A word longer than a line is cut, not let out of the frame.
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

/// A number with so many decimals and commas between thousands; `unknown` when it is not finite.
pub(crate) fn number(value: f64, decimals: usize) -> String {
    if !value.is_finite() {
        return "unknown".to_owned();
    }
    let text = decimal(value, decimals);
    let (sign, text) = text.strip_prefix('-').map_or(("", &text[..]), |size| ("−", size));
    format!("{sign}{}", grouped(text))
}

/// A count with commas between thousands.
pub(crate) fn count(value: u64) -> String {
    number(value as f64, 0)
}

/// Square metres.
pub(crate) fn area(value_m2: f64) -> String {
    format!(
        "{} m²",
        number(value_m2, if value_m2.abs() < 99.95 { 1 } else { 0 })
    )
}

/// Metres: centimetres below 10 cm are of no use, tenths beyond 1 km neither.
pub(crate) fn metres(value_m: f64) -> String {
    match value_m.abs() {
        v if v < 0.0995 => format!("{} cm", number(value_m * 100.0, 1)),
        v if v < 0.995 => {
            let text = number(value_m, 2);
            format!("{} m", text.strip_suffix('0').unwrap_or(&text))
        }
        v if v < 999.95 => format!("{} m", number(value_m, 1)),
        _ => format!("{} m", number(value_m, 0)),
    }
}

/// A step of the coordinates: millimetres matter here.
pub(crate) fn step(step_m: f64) -> String {
    match step_m {
        m if m < 0.0995 => say!(
            "mm-number",
            number = number(m * 1000.0, if m < 0.00995 { 1 } else { 0 })
        ),
        m => metres(m),
    }
}

/// A length to lay a tape out: to a tenth of a metre.
pub(crate) fn tape_length(value_m: f64) -> String {
    format!("{} m", number(value_m, 1))
}

/// A path: kilometres from 1 km up.
pub(crate) fn path_length(value_m: f64) -> String {
    match value_m.abs() {
        v if v < 999.5 => format!("{} m", number(value_m, 0)),
        _ => format!("{} km", number(value_m / 1000.0, 2)),
    }
}

/// Percent with one decimal; never rounds to all or nothing what is neither.
pub(crate) fn percent(fraction: f64) -> String {
    if !fraction.is_finite() {
        return "unknown".to_owned();
    }
    let percent = fraction * 100.0;
    if percent > 0.0 && percent < 0.05 {
        return "under 0.1 %".to_owned();
    }
    if (99.95..100.0).contains(&percent) {
        return "over 99.9 %".to_owned();
    }
    format!("{} %", number(percent, 1))
}

/// Whole percent, for plain sentences.
pub(crate) fn whole_percent(fraction: f64) -> String {
    format!("{} %", number(fraction * 100.0, 0))
}

/// A share in a sentence: whole percent, with a decimal where it is nearly nothing or nearly all.
pub(crate) fn share(fraction: f64) -> String {
    let is_plain = (0.095..0.945).contains(&fraction) || fraction >= 1.0 || fraction == 0.0;
    if is_plain {
        whole_percent(fraction)
    } else {
        percent(fraction)
    }
}

/// Hours.
pub(crate) fn hours(value_h: f64) -> String {
    format!("{} h", number(value_h, if value_h.abs() < 9.95 { 1 } else { 0 }))
}

/// What of the driving fell in the dark, with the last dusk and dawn by the garden's clock; `None` where nothing did, or nobody knows.
pub(crate) fn dark(findings: &Findings) -> Option<String> {
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
    let between = both.map(|(dusk, dawn)| say!("dark-between", dusk = dusk, dawn = dawn, zone = utc));
    Some(say!(
        "dark-of-driven",
        dark = hours(dark_h),
        driven = hours(known.iter().map(|(night, _)| drives_h(night)).sum()),
        between = between.unwrap_or_default()
    ))
}

/// A time that passed.
pub(crate) fn duration(value_s: f64) -> String {
    if !value_s.is_finite() {
        return "unknown".to_owned();
    }
    match value_s {
        v if v < 99.5 => format!(
            "{} s",
            number(v, if v < 9.95 && v.fract() != 0.0 { 1 } else { 0 })
        ),
        v if v < 5970.0 => format!("{} min", number(v / 60.0, 0)),
        v => {
            let minutes = (v / 60.0).round();
            let whole_h = (minutes / 60.0).floor();
            let rest = minutes - whole_h * 60.0;
            match rest {
                0.0 => format!("{} h", number(whole_h, 0)),
                _ => format!("{} h {rest:.0} min", number(whole_h, 0)),
            }
        }
    }
}

/// Minutes.
pub(crate) fn minutes(value_min: f64) -> String {
    duration(value_min * 60.0)
}

/// The interval of an estimate, or that there is none.
pub(crate) fn interval(estimate: Estimate) -> String {
    match (estimate.low, estimate.high) {
        (Some(low), Some(high)) => {
            format!("90 % interval {} to {}", number(low * 100.0, 1), percent(high))
        }
        _ => "no interval".to_owned(),
    }
}

/// Both ends of an interval: `87.1 to 88.1 %`.
pub(crate) fn range(estimate: Estimate) -> String {
    match (estimate.low, estimate.high) {
        (Some(low), Some(high)) => format!("{} to {}", number(low * 100.0, 1), percent(high)),
        _ => "no interval".to_owned(),
    }
}

/// The first letter as a capital.
pub(crate) fn capital(text: &str) -> String {
    let mut letters = text.chars();
    letters
        .next()
        .map(|first| first.to_uppercase().collect::<String>() + letters.as_str())
        .unwrap_or_default()
}

/// A probability in words that do not pretend to more digits than they have.
pub(crate) fn chance(fraction: f64) -> String {
    match fraction {
        f if !f.is_finite() => "unknown".to_owned(),
        f if f < 1e-4 => say!("less-than"),
        f if f < 0.000_95 => say!(
            "about-number",
            number = number((1.0 / f / 100.0).round() * 100.0, 0)
        ),
        f if f < 0.01 => say!(
            "about-number",
            number = number((1.0 / f / 10.0).round() * 10.0, 0)
        ),
        f => percent(f),
    }
}

/// A figure whose unit stands in its words: three digits that count.
pub(crate) fn figure(value: f64) -> String {
    let decimals = match value.abs() {
        v if v >= 100.0 => 0,
        v if v >= 10.0 => 1,
        _ => 2,
    };
    number(value, decimals)
}

/// What a change needs, in a few words each.
pub(crate) fn cost(suggestion: &Suggestion) -> Vec<String> {
    let mut cost = Vec::new();
    if let Some(wire_m) = suggestion.wire_m {
        cost.push(say!("wire-length", length = metres(wire_m)));
    }
    if let Some(shift_m) = suggestion.shift_m {
        cost.push(say!("shift-length", length = metres(shift_m)));
    }
    if let Some(added_h) = suggestion.added_h_per_day {
        cost.push(say!("more-day", hours = hours(added_h)));
    }
    if let Some(share) = suggestion.outing_share_fraction {
        cost.push(say!("outings-sent-along-percent", percent = whole_percent(share)));
    }
    cost
}

/// How it came home: how often on each way, and in which time.
pub(crate) fn ways_home(ways: &[WayHome]) -> String {
    let way = |way: &WayHome| {
        let along = named("way-home", &way.along);
        format!("{} {along} ({})", count(way.times), minutes(way.median_min))
    };
    ways.iter().map(way).collect::<Vec<_>>().join(", ")
}

/// What a pattern efficiency means.
pub(crate) fn efficiency(fraction: f64) -> String {
    let figure = whole_percent(fraction);
    match fraction {
        f if f < -0.1 => say!("less-new-than-chance", figure = figure),
        f if f < 0.1 => say!("new-as-chance", figure = figure),
        f if f < 0.9 => say!("more-new-than-chance", figure = figure),
        _ => say!("hardly-twice", figure = figure),
    }
}

/// When so much of the lawn will have been driven over.
pub(crate) fn reach(over_time: &OverTime) -> String {
    match (over_time.hours_to_95, over_time.hours_to_99) {
        (Some(to_95), Some(to_99)) => say!("reach-both", first = hours(to_95), second = hours(to_99)),
        (Some(to_95), None) => say!("reach-95", after = hours(to_95)),
        (None, Some(to_99)) => say!("reach-99", after = hours(to_99)),
        (None, None) => say!("reach-none"),
    }
}

/// `3 days`, `1 day`, `1.5 days`.
pub(crate) fn days(days: f64) -> String {
    match days {
        1.0 => "1 day".to_owned(),
        days => format!("{} days", number(days, usize::from(days.fract() != 0.0))),
    }
}

/// Tape distances, and on which side of the line between the two ends the place lies: two tapes cross twice.
pub(crate) fn tapes(tape: &[Tape], target: Place) -> Vec<String> {
    let mut parts: Vec<String> = tape
        .iter()
        .map(|tape| {
            let length = match tape.sd_m.filter(|sd_m| sd_m.is_finite()) {
                // Twice a standard deviation, never said finer than a tape shows.
                Some(sd_m) => format!(
                    "{} ± {}",
                    number(tape.distance_m, 1),
                    tape_length((2.0 * sd_m).max(0.1))
                ),
                None => tape_length(tape.distance_m),
            };
            format!("{length} from {}", name(&tape.from))
        })
        .collect();
    if let (Some(side), Some(last)) = (tape_side(tape, target), parts.last_mut()) {
        last.push_str(&format!(", on their {side} side"));
    }
    parts
}

/// On which side of the line through both ends the place lies, as a word of the compass.
fn tape_side(tape: &[Tape], target: Place) -> Option<String> {
    let [first, second] = tape else { return None };
    let (east_m, north_m) = (
        second.from_east_m - first.from_east_m,
        second.from_north_m - first.from_north_m,
    );
    let length_m = math::hypot(east_m, north_m);
    let across_m = (east_m * (target.north_m - first.from_north_m)
        - north_m * (target.east_m - first.from_east_m))
        / length_m;
    // On the line itself both crossings are one.
    if !across_m.is_finite() || across_m.abs() < 0.3 {
        return None;
    }
    let (out_east, out_north) = match across_m > 0.0 {
        true => (-north_m, east_m),
        false => (north_m, -east_m),
    };
    let course_deg = math::atan2(out_east, out_north).to_degrees();
    Some(say!("side", eighth = eighth(course_deg)))
}

/// Tape distances as one phrase.
pub(crate) fn tape(tape: &[Tape], target: Place) -> Option<String> {
    let parts = tapes(tape, target);
    (!parts.is_empty()).then(|| parts.join(", "))
}

/// What more and less of a change would bring.
pub(crate) fn ladder(rungs: &[Rung], chosen_m: Option<f64>) -> String {
    let told = rungs.iter().map(|rung| {
        let (size, fraction) = (metres(rung.size_m), percent(rung.pocket_fraction_after.estimate));
        if Some(rung.size_m) == chosen_m {
            say!("rung-chosen", size = size, fraction = fraction)
        } else {
            say!("rung", size = size, fraction = fraction)
        }
    });
    say!("ladder", list = told.collect::<Vec<String>>().join(", "))
}

/// What to look at where it got stuck, and from where it came.
pub(crate) fn why_stuck(spot: &StuckSpot) -> String {
    let course = spot
        .approach_deg
        .map(|course_deg| say!("stuck-came", course_deg = course_deg));
    let why = std::iter::once(crate::text(&spot.why)).chain(course);
    why.collect::<Vec<_>>().join(" ")
}

/// Where a place lies: by latitude and longitude, else by metres on the plane.
pub(crate) fn position(lat: Option<f64>, lon: Option<f64>, place: Place) -> String {
    match (lat, lon) {
        (Some(lat), Some(lon)) => format!("{}, {}", decimal(lat, 7), decimal(lon, 7)),
        _ => format!(
            "{} m east, {} m north of the origin",
            number(place.east_m, 1),
            number(place.north_m, 1)
        ),
    }
}

/// What is said where nothing counts as missed: a poor or short log shows wide pockets only, and what lies beyond a drive
/// that drew its own outline nobody knows, nor what ground without evidence would show.
pub(crate) fn none_missed(verdict: &LogVerdict, source: OutlineSource, unseen_m2: f64) -> String {
    let width = || metres(verdict.smallest_findable_width_m);
    match (verdict.level, source) {
        (LogLevel::Unusable, _) => say!("none-told"),
        _ if unseen_m2 > verdict.smallest_findable_pocket_m2 => {
            say!("none-shown-unseen", area = area(unseen_m2))
        }
        (LogLevel::Limited, OutlineSource::Trace) => say!("none-known-narrower", width = width()),
        (LogLevel::Good, OutlineSource::Trace) => say!("none-known"),
        (LogLevel::Limited, OutlineSource::Plan) => say!("none-narrower", width = width()),
        (LogLevel::Good, OutlineSource::Plan) => say!("none-but-luck"),
    }
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

/// How many checks hold, and which do not; `None` without any.
pub(crate) fn checks_line(checks: &[Check]) -> Option<String> {
    let failing: Vec<&Check> = checks.iter().filter(|check| !check.holds).collect();
    let held = checks.len() - failing.len();
    let sum = say!("checks-hold", held = held, all = checks.len());
    match (checks.is_empty(), failing.is_empty()) {
        (true, _) => None,
        (_, true) => Some(sum),
        _ => {
            let fails: Vec<String> = failing.into_iter().map(check_fails).collect();
            Some(say!("checks-say", sum = sum, fails = fails.join(", ")))
        }
    }
}

/// What contradicts what, in a few words.
fn check_fails(check: &Check) -> String {
    match check.consequence {
        Some(Said::EdgeInside { edge_deg, .. } | Said::EdgeOutside { edge_deg, .. }) => {
            say!("check-fails-edge", edge_deg = edge_deg)
        }
        _ => named("check-fails", &check.check),
    }
}

/// What was measured, with its unit.
pub(crate) fn check_is(check: &Check) -> String {
    say!(
        "check-is",
        value = check.check,
        number = number(check.statistic, 2),
        percent = percent(check.statistic),
        points = number(100.0 * check.statistic, 2),
    )
}

/// How many fixes were used, and what became of the others that were read.
pub(crate) fn fixes(span: &Span) -> String {
    let mut others: Vec<String> = span
        .fixes_left_out
        .iter()
        .map(|(reason, number)| match reason {
            LeftOut::PoorQuality => format!("{} of poor quality", count(*number)),
            LeftOut::Jump => plural(*number, "jump", "jumps"),
        })
        .collect();
    if span.fixes_carried > 0 {
        others.push(format!("{} while carried", count(span.fixes_carried)));
    }
    match others.is_empty() {
        true => plural(span.fixes_used, "fix", "fixes"),
        false => format!(
            "{} of {} read (left out: {})",
            count(span.fixes_used),
            plural(span.fixes_read, "fix", "fixes"),
            others.join(", ")
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
            distance_m: 5.0,
            sd_m: Some(0.04),
            from_east_m: east_m,
            from_north_m: north_m,
        };
        let ends = [tape("the shed", 0.0, 0.0), tape("the birch", 6.0, 0.0)];
        let said = |east_m, north_m| tapes(&ends, Place::new(east_m, north_m)).join("; ");
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
        let side = tapes(&slanting, Place::new(4.0, 0.0)).join("; ");
        assert!(side.ends_with("on their south-eastern side"), "{side}");
        let alone = [Tape {
            sd_m: None,
            ..tape("the shed", 0.0, 0.0)
        }];
        assert_eq!(tapes(&alone, Place::new(3.0, 4.0)), ["5.0 m from the shed"]);
        let poor = [Tape {
            sd_m: Some(0.61),
            ..tape("the shed", 0.0, 0.0)
        }];
        assert_eq!(tapes(&poor, Place::new(3.0, 4.0)), ["5.0 ± 1.2 m from the shed"]);
    }

    #[test]
    fn numbers_never_round_to_all_or_nothing_what_is_neither() {
        assert_eq!(percent(1.0), "100.0 %");
        assert_eq!(percent(0.99999), "over 99.9 %");
        assert_eq!(percent(0.0), "0.0 %");
        assert_eq!(percent(0.0001), "under 0.1 %");
        assert_eq!(percent(f64::NAN), "unknown");
        assert_eq!(number(1_234_567.891, 1), "1,234,567.9");
        assert_eq!(number(-0.04, 1), "0.0");
        assert_eq!(number(-1234.0, 0), "−1,234");
    }

    #[test]
    fn lengths_areas_and_times_carry_units_that_fit_their_size() {
        assert_eq!(metres(0.021), "2.1 cm");
        assert_eq!(metres(0.3), "0.3 m");
        assert_eq!(metres(0.25), "0.25 m");
        assert_eq!(metres(12.34), "12.3 m");
        assert_eq!(area(4.56), "4.6 m²");
        assert_eq!(area(1412.3), "1,412 m²");
        assert_eq!(path_length(11_234.0), "11.23 km");
        assert_eq!(duration(1.0), "1 s");
        assert_eq!(duration(0.2), "0.2 s");
        assert_eq!(duration(600.0), "10 min");
        assert_eq!(duration(8.0 * 3600.0 - 1.0), "8 h");
        assert_eq!(duration(2.0 * 3600.0 + 14.0 * 60.0), "2 h 14 min");
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
        let said = |verdict: &LogVerdict| none_missed(verdict, OutlineSource::Plan, 0.0);
        assert_eq!(
            said(&verdict),
            "nothing from 10.8 m wide up; narrower pockets this log cannot show"
        );
        let drawn = |verdict: &LogVerdict| none_missed(verdict, OutlineSource::Trace, 0.0);
        assert_eq!(
            drawn(&verdict),
            "nothing from 10.8 m wide up inside the drawn outline; narrower pockets, and what lies beyond it, this log cannot show"
        );
        verdict.level = LogLevel::Good;
        assert_eq!(said(&verdict), "nothing; luck explains the gaps");
        assert!(drawn(&verdict).starts_with("nothing inside the drawn outline"));
        assert_eq!(
            none_missed(&verdict, OutlineSource::Plan, 260.0),
            "none is shown, but 260 m² are without evidence: this log cannot tell"
        );
        verdict.level = LogLevel::Unusable;
        assert_eq!(said(&verdict), "this log cannot tell");
    }
}
