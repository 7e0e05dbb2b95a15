//! Plots with axes and units, as SVG that takes its colours from the page.

/// Writing to a string cannot fail.
macro_rules! put {
    ($out:expr, $($part:tt)*) => {{ let _ = write!($out, $($part)*); }};
}

mod gains;
mod nights;
mod waits;

use crate::map::escaped;
use crate::messages::Voice;
use crate::messages::say;
use crate::{ramp::VisitScale, words};
use std::fmt::Write;
use tussock_types::math;
use tussock_types::{Estimate, OverTime, Revisits};

pub(super) use gains::{GainRow, gains};
pub(super) use nights::nights;
pub(super) use waits::waits;

const WIDTH: f64 = 620.0;
const HEIGHT: f64 = 360.0;
const LEFT: f64 = 84.0;
const RIGHT: f64 = 16.0;
const TOP: f64 = 18.0;
const BOTTOM: f64 = 58.0;
/// Widest number below an axis in a phone's letters.
const NUMBER: f64 = 46.0;

/// A step of 1, 2 or 5 times a power of ten that gives about this many steps.
fn step(range: f64, steps: f64) -> f64 {
    let rough = range / steps;
    let power = math::powf(10f64, math::log10(rough).floor());
    [1.0, 2.0, 5.0, 10.0]
        .map(|factor| factor * power)
        .into_iter()
        .find(|step| *step >= rough)
        .unwrap_or(rough)
}

fn head(label: &str) -> String {
    let label = escaped(label);
    format!("<svg class=\"plot\" viewBox=\"0 0 {WIDTH} {HEIGHT}\" role=\"img\" aria-label=\"{label}\">")
}

fn y_of(fraction: f64, top_fraction: f64) -> f64 {
    HEIGHT - BOTTOM - fraction.clamp(0.0, top_fraction) / top_fraction * (HEIGHT - TOP - BOTTOM)
}

/// Horizontal grid lines with percent.
fn percent_axis(voice: Voice, out: &mut String, top_fraction: f64, step_fraction: f64, title: &str) {
    let mut at = 0.0;
    while at <= top_fraction + 1e-9 {
        let y = y_of(at, top_fraction);
        put!(
            out,
            "<path class=\"grid\" d=\"M{LEFT},{y:.1}H{:.1}\"/><text x=\"{:.1}\" y=\"{:.1}\" \
             text-anchor=\"end\">{}</text>",
            WIDTH - RIGHT,
            LEFT - 9.0,
            y + 5.0,
            words::number(voice, at * 100.0, 0)
        );
        at += step_fraction;
    }
    let middle = (TOP + HEIGHT - BOTTOM) / 2.0;
    put!(
        out,
        "<text class=\"axis\" x=\"25\" y=\"{middle:.1}\" text-anchor=\"middle\" transform=\"rotate(-90 25 {middle:.1})\">{}</text>",
        escaped(title)
    );
}

/// The title of an axis, at its middle.
fn axis_title(out: &mut String, x: f64, y: f64, title: &str) {
    put!(
        out,
        "<text class=\"axis\" x=\"{x:.1}\" y=\"{y:.1}\" text-anchor=\"middle\">{title}</text>"
    );
}

fn x_title(out: &mut String, title: &str) {
    axis_title(out, (LEFT + WIDTH - RIGHT) / 2.0, HEIGHT - 10.0, title);
}

/// A mark on the axis along the foot: the continuation of its line from `x`, and a number below it.
fn tick(out: &mut String, x: f64, line: &str, y: f64, number: &str) {
    put!(
        out,
        "<path class=\"grid\" d=\"M{x:.1},{line}\"/><text x=\"{x:.1}\" y=\"{y:.1}\" text-anchor=\"middle\">{number}</text>"
    );
}

/// Visited fraction over driving hours, beside the random-search law and the exhaustive line.
///
/// The interval is known at the end, where it is drawn as a bracket.
pub(super) fn over_time(
    voice: Voice,
    over_time: &OverTime,
    visited_fraction: Option<Estimate>,
    promised_fraction: f64,
) -> Option<String> {
    let hours = &over_time.driving_h;
    let end_h = hours
        .iter()
        .copied()
        .filter(|h| h.is_finite())
        .fold(0.0, f64::max);
    if end_h <= 0.0 {
        return None;
    }
    let mut out = head(&say!(voice, "plot-over-time"));
    percent_axis(voice, &mut out, 1.0, 0.25, &say!(voice, "axis-lawn-percent"));
    let x_of = |h: f64| LEFT + h / end_h * (WIDTH - LEFT - RIGHT);
    let step_h = step(end_h, 6.0);
    let decimals = usize::from(step_h < 1.0);
    let mut at_h = 0.0;
    while at_h <= end_h * 1.0001 {
        let line = format!("{:.1}v6", HEIGHT - BOTTOM);
        let number = words::number(voice, at_h, decimals);
        tick(&mut out, x_of(at_h), &line, HEIGHT - BOTTOM + 23.0, &number);
        at_h += step_h;
    }
    x_title(&mut out, &say!(voice, "axis-hours-driving"));
    if promised_fraction.is_finite() {
        let y = y_of(promised_fraction, 1.0);
        put!(
            out,
            "<path class=\"promised\" d=\"M{LEFT},{y:.1}H{:.1}\"/>",
            WIDTH - RIGHT
        );
    }
    let lines = [
        ("exhaustive", &over_time.exhaustive_fraction),
        ("law", &over_time.random_law_fraction),
        ("log", &over_time.visited_fraction),
    ];
    for (class, values) in lines {
        let points: Vec<String> = hours
            .iter()
            .zip(values)
            .filter(|(h, fraction)| h.is_finite() && fraction.is_finite())
            .map(|(&h, &fraction)| format!("{:.1},{:.1}", x_of(h), y_of(fraction, 1.0)))
            .collect();
        put!(
            out,
            "<polyline class=\"{class}\" points=\"{}\"/>",
            points.join(" ")
        );
    }
    if let Some(Estimate {
        low: Some(low),
        high: Some(high),
        ..
    }) = visited_fraction
        && low.is_finite()
        && high.is_finite()
    {
        let (top, foot) = (y_of(high, 1.0), y_of(low, 1.0));
        put!(
            out,
            "<path class=\"whisker\" d=\"M{:.1},{top:.1}h14m-7,0V{foot:.1}m-7,0h14\"/>",
            x_of(end_h) - 7.0
        );
    }
    out.push_str("</svg>");
    Some(out)
}

/// Fraction of the lawn by number of visits.
pub(super) fn histogram(voice: Voice, revisits: &Revisits) -> Option<String> {
    let bars = &revisits.histogram;
    let most = bars
        .iter()
        .copied()
        .filter(|part| part.is_finite())
        .fold(0.0, f64::max);
    if bars.len() < 2 || most <= 0.0 {
        return None;
    }
    let mut out = head(&say!(voice, "plot-histogram"));
    let step_fraction = step(most, 4.0);
    let top = (most / step_fraction).ceil() * step_fraction;
    percent_axis(
        voice,
        &mut out,
        top,
        step_fraction,
        &say!(voice, "axis-part-percent"),
    );
    let scale = VisitScale {
        most: (bars.len() as f64 - 1.0).max(4.0),
    };
    let slot = (WIDTH - LEFT - RIGHT) / bars.len() as f64;
    let last = bars.len() - 1;
    // Numbers are far enough apart not to touch in a phone's letters; the last one is always shown.
    let every = (NUMBER / slot).ceil().max(1.0) as usize;
    let is_said = |visits: usize| visits == last || (visits.is_multiple_of(every) && visits + every <= last);
    for (visits, &part) in bars.iter().enumerate() {
        let part = if part.is_finite() { part } else { 0.0 };
        let (x, y) = (LEFT + visits as f64 * slot, y_of(part, top));
        let fill = match visits {
            0 => "url(#ph)".to_owned(),
            visits => crate::ramp::hex(scale.colour(visits as f64)),
        };
        put!(
            out,
            "<rect class=\"bar\" x=\"{:.1}\" y=\"{y:.1}\" width=\"{:.1}\" height=\"{:.1}\" fill=\"{fill}\"/>",
            x + slot * 0.1,
            slot * 0.8,
            HEIGHT - BOTTOM - y,
        );
        if is_said(visits) {
            let plus = if visits == last { "+" } else { "" };
            put!(
                out,
                "<text x=\"{:.1}\" y=\"{:.1}\" text-anchor=\"middle\">{visits}{plus}</text>",
                x + slot / 2.0,
                HEIGHT - BOTTOM + 23.0
            );
        }
    }
    put!(
        out,
        "<path class=\"base\" d=\"M{LEFT},{:.1}H{:.1}\"/>",
        HEIGHT - BOTTOM,
        WIDTH - RIGHT
    );
    x_title(&mut out, &say!(voice, "axis-times"));
    out.push_str("</svg>");
    Some(out)
}

/// The lawn as one strip: driven over, missed, not yet, without evidence, too narrow.
pub(super) fn strip(parts: &[(String, String, f64)]) -> String {
    // Either zero may be the larger one, depending on the machine.
    let positive = |part: f64| if part > 0.0 { part } else { 0.0 };
    let total: f64 = parts.iter().map(|(_, _, part)| positive(*part)).sum();
    let mut out = String::from(
        "<svg class=\"strip\" viewBox=\"0 0 600 30\" preserveAspectRatio=\"none\" aria-hidden=\"true\">",
    );
    let mut x = 0.0;
    for (class, _, part) in parts {
        let width = if total > 0.0 {
            positive(*part) / total * 600.0
        } else {
            0.0
        };
        put!(
            out,
            "<rect class=\"{class}\" x=\"{x:.2}\" width=\"{width:.2}\" height=\"30\"/>"
        );
        x += width;
    }
    out.push_str("</svg>");
    out
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn steps_are_round_and_few() {
        for (range, expected) in [(8.0, 2.0), (0.9, 0.2), (33.0, 10.0), (300.0, 50.0)] {
            let step = step(range, 6.0);
            assert!((step - expected).abs() < 1e-12, "{range}: {step}");
        }
    }

    #[test]
    fn the_parts_of_the_strip_add_up_to_its_width_and_none_is_below_zero() {
        let strip = strip(
            &[("a", 3.0), ("b", 1.0), ("c", -0.0), ("d", 2.0)]
                .map(|(class, part)| (class.into(), String::new(), part)),
        );
        assert!(!strip.contains("\"-"), "{strip}");
        let widths: Vec<f64> = strip
            .split(" width=\"")
            .skip(1)
            .map(|rest| rest.split('"').next().unwrap().parse().unwrap())
            .collect();
        assert!((widths.iter().sum::<f64>() - 600.0).abs() < 0.05, "{widths:?}");
    }
}
