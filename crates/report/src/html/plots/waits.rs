//! How long does ground wait between two visits, and how long may it wait?

use super::{LEFT, NUMBER, RIGHT, WIDTH, axis_title, tick};
use crate::map::escaped;
use crate::messages::Voice;
use crate::messages::say;
use crate::words;
use std::fmt::Write;
use tussock_types::IntervalQuantiles;
use tussock_types::math;

const HEIGHT: f64 = 178.0;
const AXIS_Y: f64 = 120.0;
/// Each mark's words have their own row.
const ROW: f64 = 25.0;
/// Space for the longest words in a phone's letters.
const WORDS: f64 = 128.0;

/// Waits on a logarithmic axis of hours: half, nine in ten and 99 in 100 of them are shorter; the longest that the grass
/// allows. `None` if nothing is known.
pub(crate) fn waits(voice: Voice, interval_h: IntervalQuantiles, allowed_h: Option<f64>) -> Option<String> {
    let marks: Vec<(f64, String)> = [
        (interval_h.p50, say!(voice, "wait-half")),
        (interval_h.p90, say!(voice, "wait-nine-ten")),
        (interval_h.p99, say!(voice, "wait-99")),
    ]
    .into_iter()
    .filter_map(|(value, words)| value.filter(|h| h.is_finite() && *h > 0.0).map(|h| (h, words)))
    .collect();
    let allowed_h = allowed_h.filter(|h| h.is_finite() && *h > 0.0);
    let all = || marks.iter().map(|(h, _)| *h).chain(allowed_h);
    let (low, high) = (all().fold(f64::INFINITY, f64::min), all().fold(0.0, f64::max));
    if marks.is_empty() {
        return None;
    }
    let low_h = math::powf(10f64, math::log10(low * 0.8).floor()).max(low / 20.0);
    let high_h = high * 1.6;
    let x_of = |h: f64| LEFT + math::ln(h / low_h) / math::ln(high_h / low_h) * (WIDTH - LEFT - RIGHT);
    let said = marks
        .iter()
        .map(|(h, part)| say!(voice, "wait-under", part = part, hours = words::hours(voice, *h)));
    let said = say!(
        voice,
        "plot-waits",
        list = words::listed(voice, said, words::ListMark::Comma)
    );
    let mut out = format!(
        "<svg class=\"plot waits\" viewBox=\"0 0 {WIDTH} {HEIGHT}\" role=\"img\" aria-label=\"{}\"><path \
         class=\"base\" d=\"M{LEFT},{AXIS_Y}H{:.1}\"/>",
        escaped(&said),
        WIDTH - RIGHT
    );
    // Numbers that would touch are left out.
    let apart = math::ln(2.0) / math::ln(high_h / low_h) * (WIDTH - LEFT - RIGHT);
    let factors: &[f64] = if apart < NUMBER { &[1.0] } else { &[1.0, 2.0, 5.0] };
    let mut power = math::log10(low_h).floor() as i32 - 1;
    while 10f64.powi(power) <= high_h {
        for factor in factors {
            let h = factor * 10f64.powi(power);
            if h < low_h || h > high_h {
                continue;
            }
            let number = words::number(voice, h, usize::from(h < 1.0));
            tick(&mut out, x_of(h), &format!("{AXIS_Y}v6"), AXIS_Y + 22.0, &number);
        }
        power += 1;
    }
    let middle = (LEFT + WIDTH - RIGHT) / 2.0;
    axis_title(&mut out, middle, HEIGHT - 8.0, &say!(voice, "axis-waits"));
    let beside = |x: f64, gap: f64| match x + WORDS > WIDTH {
        true => (x - gap, "end"),
        false => (x + gap, "start"),
    };
    for (index, (h, words)) in marks.iter().enumerate() {
        let x = x_of(*h);
        let height = 20.0 + ROW * (2.0 - index as f64);
        let (text_x, anchor) = beside(x, 5.0);
        put!(
            out,
            "<path class=\"wait\" d=\"M{x:.1},{AXIS_Y}v-{height:.0}\"/><text x=\"{text_x:.1}\" y=\"{:.1}\" \
             text-anchor=\"{anchor}\">{}</text>",
            AXIS_Y - height + 14.0,
            escaped(words)
        );
    }
    if let Some(allowed_h) = allowed_h {
        let x = x_of(allowed_h);
        let (text_x, anchor) = beside(x, 6.0);
        put!(
            out,
            "<path class=\"allowed\" d=\"M{x:.1},{:.1}V4\"/><text x=\"{text_x:.1}\" y=\"20\" \
             text-anchor=\"{anchor}\">{}</text>",
            AXIS_Y + 6.0,
            escaped(&say!(voice, "wait-allowed"))
        );
    }
    out.push_str("</svg>");
    Some(out)
}
