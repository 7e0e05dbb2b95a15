//! Hours by activity, one row a night.

use super::{axis_title, step, tick};
use crate::map::escaped;
use crate::messages::Voice;
use crate::messages::{message, say};
use crate::words;
use serde::Serialize;
use std::fmt::Write;
use tussock_types::{ActivityHours, Night};

/// Number of nights that are drawn; if there are more, the last ones.
const SHOWN: usize = 31;
const WIDTH: f64 = 620.0;
/// Space for a date in a phone's letters.
const LEFT: f64 = 160.0;
const RIGHT: f64 = 20.0;
const ROW: f64 = 30.0;
const TOP: f64 = 6.0;
const BOTTOM: f64 = 56.0;

/// The activities in the order of the bars: class, message, hours.
fn activities(hours: &ActivityHours) -> [(&'static str, &'static str, f64); 8] {
    [
        ("a-drive", "activity-driving", hours.driving_h),
        ("a-turn", "activity-turning", hours.turning_h),
        ("a-back", "activity-reversing", hours.reversing_h),
        ("a-way", "activity-transit", hours.transit_h),
        ("a-halt", "activity-standing", hours.halted_h),
        ("a-home", "activity-station", hours.at_station_h),
        ("a-carry", "activity-carried", hours.carried_h),
        ("a-quiet", "activity-silent", hours.silent_h),
    ]
}

/// Nights as a drawing and as a table.
#[derive(Serialize)]
pub(crate) struct Nights {
    svg: String,
    key: Vec<(&'static str, String)>,
    head: Vec<String>,
    rows: Vec<Vec<String>>,
    left_out: usize,
}

fn sound(h: f64) -> f64 {
    if h.is_finite() { h.max(0.0) } else { 0.0 }
}

fn label(voice: Voice, night: &Night, number: usize) -> String {
    night
        .date
        .as_deref()
        .map(|date| words::plain(date, 10))
        .unwrap_or_else(|| say!(voice, "night-number", number = number))
}

/// The nights; `None` if they were not separated.
pub(crate) fn nights(voice: Voice, nights: &[Night]) -> Option<Nights> {
    let left_out = nights.len().saturating_sub(SHOWN);
    let shown = &nights[left_out..];
    let total = |night: &Night| -> f64 { activities(&night.hours).iter().map(|(_, _, h)| sound(*h)).sum() };
    let longest_h = shown.iter().map(total).fold(0.0, f64::max);
    if longest_h <= 0.0 {
        return None;
    }
    let step_h = step(longest_h, 6.0);
    let end_h = longest_h;
    let height = TOP + ROW * shown.len() as f64 + BOTTOM;
    let foot = TOP + ROW * shown.len() as f64;
    let x_of = |h: f64| LEFT + h / end_h * (WIDTH - LEFT - RIGHT);
    let mut svg = format!(
        "<svg class=\"plot nights\" viewBox=\"0 0 {WIDTH} {height:.0}\" role=\"img\" aria-label=\"{}\">",
        escaped(&say!(voice, "nights-drawing"))
    );
    let mut at_h = 0.0;
    while at_h <= end_h * 1.0001 {
        let number = words::number(voice, at_h, usize::from(step_h < 1.0));
        let line = format!("{TOP}V{:.1}", foot + 4.0);
        tick(&mut svg, x_of(at_h), &line, foot + 23.0, &number);
        at_h += step_h;
    }
    axis_title(
        &mut svg,
        (LEFT + WIDTH - RIGHT) / 2.0,
        height - 6.0,
        &say!(voice, "axis-hours"),
    );
    let mut rows = Vec::new();
    for (index, night) in shown.iter().enumerate() {
        let y = TOP + ROW * index as f64;
        let name = label(voice, night, left_out + index + 1);
        put!(
            svg,
            "<text x=\"{:.1}\" y=\"{:.1}\" text-anchor=\"end\">{}</text>",
            LEFT - 10.0,
            y + ROW * 0.66,
            escaped(&name)
        );
        let mut so_far_h = 0.0;
        for (class, _, h) in activities(&night.hours) {
            let h = sound(h);
            let (x, end) = (x_of(so_far_h), x_of(so_far_h + h));
            so_far_h += h;
            if end - x >= 0.4 {
                put!(
                    svg,
                    "<rect class=\"act {class}\" x=\"{x:.1}\" y=\"{:.1}\" width=\"{:.1}\" height=\"{:.1}\"/>",
                    y + 4.0,
                    end - x,
                    ROW - 8.0
                );
            }
        }
        let mut row = vec![name];
        row.extend(activities(&night.hours).map(|(_, _, h)| words::hours(voice, sound(h))));
        let share = |fraction: Option<f64>| {
            fraction.map_or_else(
                || say!(voice, "not-counted-again"),
                |fraction| words::percent(voice, fraction),
            )
        };
        row.push(share(night.visited_fraction));
        row.push(share(night.visited_so_far_fraction));
        rows.push(row);
    }
    svg.push_str("</svg>");
    let is_used = |class: &str| {
        shown.iter().any(|night| {
            activities(&night.hours)
                .iter()
                .any(|(of, _, h)| *of == class && sound(*h) > 0.0)
        })
    };
    let names = activities(&ActivityHours::default());
    let mut head = vec![say!(voice, "head-night")];
    head.extend(names.iter().map(|(_, id, _)| message(voice, id, &[])));
    head.extend([say!(voice, "driven-that-night"), say!(voice, "so-far")]);
    Some(Nights {
        svg,
        key: (names.iter().filter(|(class, ..)| is_used(class)))
            .map(|(class, id, _)| (*class, message(voice, id, &[])))
            .collect(),
        head,
        rows,
        left_out,
    })
}
