//! What a change brings to its pocket: in this log, if nothing changes, if changed, and measured afterwards.

use super::{axis_title, tick};
use crate::map::escaped;
use crate::messages::Voice;
use crate::messages::say;
use crate::words;
use serde::Deserialize;
use std::fmt::Write;
use tussock_types::Estimate;

const WIDTH: f64 = 620.0;
/// Room for labels in the letters of a phone; more where a language needs it.
const LEFT: f64 = 256.0;
/// A letter of a label on a phone.
const LETTER: f64 = 13.3;
const RIGHT: f64 = 24.0;
const ROW: f64 = 44.0;
const TOP: f64 = 8.0;
const BOTTOM: f64 = 54.0;

/// One row: its words and its value.
#[derive(Deserialize)]
pub(crate) struct GainRow {
    pub(crate) label: String,
    pub(crate) value: Estimate,
    /// A solid mark for what was measured, a ring for what was simulated.
    pub(crate) is_measured: bool,
}

/// Dots with their ranges on an axis from 0 to 100 %.
pub(crate) fn gains(voice: Voice, rows: &[GainRow]) -> String {
    let height = TOP + ROW * rows.len() as f64 + BOTTOM;
    let longest = (rows.iter().map(|row| words::columns(&row.label)).max()).unwrap_or_default();
    let left = LEFT.max(16.0 + LETTER * longest as f64).min(0.6 * WIDTH);
    let x_of = |fraction: f64| left + fraction.clamp(0.0, 1.0) * (WIDTH - left - RIGHT);
    let said = rows.iter().map(|row| {
        say!(
            voice,
            "gain-row",
            label = row.label,
            fraction = words::with_interval(voice, row.value)
        )
    });
    let said = say!(
        voice,
        "plot-gains",
        list = words::listed(voice, said, words::ListMark::Comma)
    );
    let mut out = format!(
        "<svg class=\"plot gains\" viewBox=\"0 0 {WIDTH} {height:.0}\" role=\"img\" aria-label=\"{}\">",
        escaped(&said)
    );
    let foot = TOP + ROW * rows.len() as f64;
    for step in 0..=4 {
        let fraction = f64::from(step) / 4.0;
        let number = words::number(voice, fraction * 100.0, 0);
        let line = format!("{TOP}V{foot:.1}");
        tick(&mut out, x_of(fraction), &line, foot + 21.0, &number);
    }
    let middle = (left + WIDTH - RIGHT) / 2.0;
    axis_title(
        &mut out,
        middle,
        height - 8.0,
        &say!(voice, "axis-pocket-percent"),
    );
    for (index, row) in rows.iter().enumerate() {
        let y = TOP + ROW * (index as f64 + 0.5);
        put!(
            out,
            "<text x=\"{:.1}\" y=\"{:.1}\" text-anchor=\"end\">{}</text>",
            left - 16.0,
            y + 5.0,
            escaped(&row.label)
        );
        if let (Some(low), Some(high)) = (row.value.low, row.value.high)
            && low.is_finite()
            && high.is_finite()
        {
            put!(
                out,
                "<path class=\"whisker\" d=\"M{a:.1},{:.1}v12m0,-6H{b:.1}m0,-6v12\"/>",
                y - 6.0,
                a = x_of(low),
                b = x_of(high)
            );
        }
        if row.value.estimate.is_finite() {
            let class = if row.is_measured { "dot" } else { "ring" };
            put!(
                out,
                "<circle class=\"{class}\" cx=\"{:.1}\" cy=\"{y:.1}\" r=\"8\"/>",
                x_of(row.value.estimate)
            );
        }
    }
    out.push_str("</svg>");
    out
}
