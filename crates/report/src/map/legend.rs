//! Title, scale, north and legend.

use super::layers::Layer;
use super::marks::{hourglass, put};
use super::view::View;
use super::{INK, QUIET, escaped};
use crate::messages::Voice;
use crate::messages::say;
use crate::{raster::Ground, words};
use std::fmt::Write;
use tussock_types::math;
use tussock_types::{FOOT_M, Findings, PlanRole, Units};

/// Units above the map.
pub(super) const TITLE_HEIGHT: f64 = 78.0;
/// Units below the map for scale and north.
pub(super) const SCALE_HEIGHT: f64 = 46.0;
/// Left edge of all words.
const LEFT: f64 = 24.0;

/// A map without anything to draw.
pub(super) fn nothing(voice: Voice, out: &mut String, width: f64, height: f64) {
    put!(
        out,
        "<text x=\"{:.0}\" y=\"{:.0}\" text-anchor=\"middle\" fill=\"{INK}\">{}</text>",
        width / 2.0,
        height / 2.0,
        escaped(&say!(voice, "nothing-to-draw"))
    );
}

pub(super) fn title(voice: Voice, out: &mut String, findings: &Findings) {
    let garden = findings
        .settings
        .garden
        .name
        .as_deref()
        .map(|name| words::plain(name, 48));
    let garden = garden
        .filter(|name| !name.is_empty())
        .unwrap_or_else(|| say!(voice, "where-not-been"));
    put!(
        out,
        "<text x=\"{LEFT}\" y=\"36\" font-size=\"25\" font-weight=\"bold\" fill=\"{INK}\">{}</text>",
        escaped(&garden)
    );
    let line = match &findings.coverage {
        Some(coverage) => say!(
            voice,
            "picture-line",
            percent = words::percent(voice, coverage.visited_fraction.estimate),
            lawn = words::area(voice, coverage.lawn_m2),
            pockets = say!(voice, "count-pocket", count = findings.missed_pockets.len()),
            missed = words::area(voice, coverage.missed_m2)
        ),
        None => say!(voice, "picture-not-counted"),
    };
    put!(
        out,
        "<text x=\"{LEFT}\" y=\"62\" font-size=\"16\" fill=\"{INK}\">{}</text>",
        escaped(&line)
    );
}

/// The longest of 1, 2, 5 times a power of ten that fits.
fn round_below(limit: f64) -> f64 {
    let power = math::powf(10f64, math::log10(limit).floor());
    [5.0, 2.0, 1.0]
        .map(|step| step * power)
        .into_iter()
        .find(|length| *length <= limit)
        .unwrap_or(power)
}

/// The unit of the scale bar, and its metres.
pub(super) const fn scale_unit(voice: Voice) -> (&'static str, f64) {
    match voice.units {
        Units::Metric => ("m", 1.0),
        Units::Imperial => ("ft", FOOT_M),
    }
}

pub(super) fn scale_and_north(voice: Voice, out: &mut String, findings: &Findings, view: &View, foot: f64) {
    let unit_m = scale_unit(voice).1;
    let bar_m = round_below(view.width / view.scale * 0.28 / unit_m) * unit_m;
    let bar = bar_m * view.scale;
    let y = foot + 20.0;
    let length = match bar_m {
        m if m < unit_m => words::metres(voice, m),
        m => words::length(voice, m, 0),
    };
    put!(
        out,
        "<g stroke=\"{INK}\" stroke-width=\"1.4\"><rect x=\"{LEFT}\" y=\"{y:.1}\" width=\"{bar:.1}\" height=\"6\" \
         fill=\"#fffefa\"/><rect x=\"{LEFT}\" y=\"{y:.1}\" width=\"{:.1}\" height=\"6\" fill=\"{INK}\"/></g><text \
         class=\"sc\" x=\"{:.1}\" y=\"{:.1}\" fill=\"{INK}\">{length}</text>",
        bar / 2.0,
        LEFT + bar + 10.0,
        y + 8.5,
    );
    // North is known only with geographic coordinates; otherwise the drawing says which axis points up.
    let up = if findings.frame.origin().is_some() {
        say!(voice, "north-letter")
    } else {
        say!(voice, "second-axis")
    };
    let x = view.width - 26.0;
    put!(
        out,
        "<path d=\"M{x:.1},{:.1}l6,22l-6,-5l-6,5z\" fill=\"{INK}\"/><text class=\"sc\" x=\"{:.1}\" y=\"{:.1}\" \
         text-anchor=\"end\" fill=\"{INK}\">{}</text>",
        foot + 10.0,
        x - 12.0,
        y + 8.5,
        escaped(&up)
    );
}

/// One entry: a sample of 34 units and its words.
pub(crate) struct Entry {
    pub(crate) layer: Layer,
    pub(crate) sample: String,
    pub(crate) words: String,
}

/// What the map shows: drawings of 34 units, from the baseline up, and their words.
pub(crate) fn entries(voice: Voice, findings: &Findings) -> Vec<Entry> {
    let mut entries = Vec::new();
    let mut add = |layer: Layer, is_there: bool, words: String, sample: String| {
        if is_there {
            entries.push(Entry { layer, sample, words });
        }
    };
    let boxed = |style: &str| format!("<rect x=\"1\" y=\"-12\" width=\"32\" height=\"16\" {style}/>");
    let line = |style: &str| format!("<path d=\"M0,-4h34\" fill=\"none\" {style}/>");
    let ink = |width: f64, dash: &str| {
        format!("stroke=\"{INK}\" stroke-width=\"{width}\" stroke-dasharray=\"{dash}\"")
    };
    add(
        Layer::Missed,
        !findings.missed_pockets.is_empty(),
        say!(voice, "key-missed"),
        boxed(&format!(
            "fill=\"url(#hatch)\" stroke=\"{INK}\" stroke-width=\"2.4\""
        )),
    );
    add(
        Layer::NotYet,
        !findings.not_yet.is_empty(),
        say!(voice, "key-not-yet"),
        boxed(&format!(
            "fill=\"#fffefa\" stroke-linecap=\"round\" {}",
            ink(1.7, "0.1 3.6")
        )),
    );
    let has_outline = |ground: &tussock_types::UnseenGround| !ground.outline.is_empty();
    add(
        Layer::Unseen,
        findings.unseen.iter().flatten().any(has_outline),
        say!(voice, "key-unseen"),
        boxed(&format!("fill=\"url(#specks)\" {}", ink(1.2, "none"))),
    );
    let mut sample = String::new();
    hourglass(&mut sample, 17.0, -4.0);
    add(
        Layer::Stuck,
        !findings.stuck_spots.is_empty(),
        say!(voice, "key-stuck"),
        sample,
    );
    let some = |list: Option<usize>| list.is_some_and(|count| count > 0);
    add(
        Layer::Worn,
        some(findings.worn_lines.as_ref().map(Vec::len)),
        say!(voice, "key-worn"),
        line(&ink(5.0, "1.4 3")),
    );
    add(
        Layer::Suggestions,
        some(findings.suggestions.as_ref().map(Vec::len)),
        say!(voice, "key-suggested"),
        format!(
            "{}{}",
            line(&ink(7.0, "none")),
            line("stroke=\"#fffefa\" stroke-width=\"3.4\"")
        ),
    );
    add(
        Layer::Tapes,
        findings
            .missed_pockets
            .iter()
            .any(|pocket| !pocket.tape.is_empty()),
        say!(voice, "key-tape"),
        line(&ink(1.0, "5 3")),
    );
    let quiet = |dash: &str| format!("stroke=\"{QUIET}\" stroke-width=\"1.4\" stroke-dasharray=\"{dash}\"");
    let zone = boxed(&format!("fill=\"none\" {}", quiet("7 3")));
    let obstacle = boxed(&format!("fill=\"#cfcabb\" {}", quiet("none")));
    for (role, words, sample) in [
        (
            PlanRole::Guide,
            say!(voice, "key-guide"),
            line(&ink(1.4, "12 4 2 4")),
        ),
        (PlanRole::Exclusion, say!(voice, "key-exclusion"), zone),
        (PlanRole::Obstacle, say!(voice, "key-obstacle"), obstacle),
        (
            PlanRole::Boundary,
            say!(voice, "key-boundary"),
            line(&quiet("2 4")),
        ),
    ] {
        let plan = findings.plan.as_ref();
        let has = plan.is_some_and(|plan| plan.of_role(role).next().is_some());
        add(Layer::Plan, has, words, sample);
    }
    entries
}

/// Entries of layers that exist only on the page.
pub(crate) fn page_entries(voice: Voice, findings: &Findings) -> Vec<Entry> {
    let mut entries = Vec::new();
    let mut add = |layer: Layer, is_there: bool, words: String, sample: String| {
        if is_there {
            entries.push(Entry { layer, sample, words });
        }
    };
    add(
        Layer::Legs,
        !findings.driven_lines.is_empty(),
        say!(voice, "key-lines"),
        format!("<path d=\"M0,-9l34,4l-30,4l26,3\" fill=\"none\" stroke=\"{INK}\" stroke-width=\"0.9\"/>"),
    );
    let has_lie = |installation: &tussock_types::Installation| {
        !installation.passages.is_empty()
            || !installation.unlisted_obstacles.is_empty()
            || installation
                .outings
                .as_ref()
                .is_some_and(|outings| !outings.starts.is_empty())
    };
    add(
        Layer::Lie,
        findings.installation.as_ref().is_some_and(has_lie)
            || (findings.drawn_outline.as_ref()).is_some_and(|drawn| !drawn.islands.is_empty())
            || (findings.plan_fit.as_ref()).is_some_and(|fit| !fit.edges.is_empty()),
        say!(voice, "key-lie"),
        format!(
            "<path d=\"M2,-9v10M2,-4h14M16,-9v10\" fill=\"none\" stroke=\"{INK}\" stroke-width=\"1.8\"/><path \
             d=\"M22,-4a5,5 0 1 0 10,0a5,5 0 1 0 -10,0M23.5,-7.5l7,7m0,-7l-7,7\" fill=\"none\" stroke=\"{INK}\" \
             stroke-width=\"1.4\"/>"
        ),
    );
    let count =
        findings.strays.as_ref().map_or(0, Vec::len) + findings.possible_stops.as_ref().map_or(0, Vec::len);
    add(
        Layer::Strays,
        count > 0,
        say!(voice, "key-strays"),
        format!(
            "<path d=\"M8,-12l8,8l-8,8l-8,-8z M4,-4h8\" fill=\"#fffefa\" stroke=\"{INK}\" \
             stroke-width=\"1.6\"/><path d=\"M21,-10h12v12h-12z M21,-4h12\" fill=\"none\" stroke=\"{INK}\" \
             stroke-width=\"1.4\" stroke-dasharray=\"2 2\"/>"
        ),
    );
    entries
}

/// The scale of visits: steps from paper to dark with numbers below.
fn visits(voice: Voice, out: &mut String, ground: &Ground, y: f64) {
    let (left, width) = (LEFT, 300.0);
    put!(
        out,
        "<text x=\"{left}\" y=\"{y:.1}\" fill=\"{INK}\">{}</text>",
        escaped(&say!(voice, "times-driven-over-darker"))
    );
    let key = ground.scale.key(voice);
    let step = width / key.len() as f64;
    for (index, (colour, words)) in key.iter().enumerate() {
        let x = left + index as f64 * step;
        put!(
            out,
            "<rect x=\"{x:.1}\" y=\"{:.1}\" width=\"{step:.1}\" height=\"15\" fill=\"{colour}\" stroke=\"{INK}\" \
             stroke-width=\"0.8\"/><text x=\"{:.1}\" y=\"{:.1}\" font-size=\"12.5\" text-anchor=\"middle\" \
             fill=\"{INK}\">{words}</text>",
            y + 8.0,
            x + step / 2.0,
            y + 38.0,
        );
    }
}

/// Draws the legend from a height on; returns the height at which it ends.
pub(super) fn full(
    voice: Voice,
    out: &mut String,
    findings: &Findings,
    ground: Option<&Ground>,
    width: f64,
    top: f64,
) -> f64 {
    let mut y = top + 22.0;
    put!(
        out,
        "<path d=\"M{LEFT},{:.1}H{:.1}\" stroke=\"{INK}\" stroke-width=\"0.8\"/>",
        top + 2.0,
        width - LEFT
    );
    let mut bottom = y;
    let mut column_x = LEFT;
    if let Some(ground) = ground {
        visits(voice, out, ground, y);
        bottom = y + 44.0;
        column_x = LEFT + 335.0;
    }
    let column_width = 300.0;
    let columns = (((width - column_x) / column_width).floor() as usize).max(1);
    let first_y = y;
    for (index, entry) in entries(voice, findings).iter().enumerate() {
        let x = column_x + (index % columns) as f64 * column_width;
        y = first_y + (index / columns) as f64 * 26.0;
        put!(
            out,
            "<g transform=\"translate({x:.1} {y:.1})\">{}<text x=\"44\" y=\"1\" fill=\"{INK}\">{}</text></g>",
            entry.sample,
            escaped(&entry.words)
        );
        bottom = bottom.max(y + 12.0);
    }
    put!(
        out,
        "<text x=\"{LEFT}\" y=\"{:.1}\" font-size=\"12\" fill=\"{QUIET}\">{}</text>",
        bottom + 22.0,
        escaped(&say!(voice, "picture-foot"))
    );
    bottom + 38.0
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn scale_bars_are_round_lengths() {
        for (limit, length) in [
            (13.0, 10.0),
            (9.9, 5.0),
            (2.0, 2.0),
            (1.99, 1.0),
            (0.7, 0.5),
            (420.0, 200.0),
        ] {
            assert!((round_below(limit) - length).abs() < 1e-12, "{limit}");
        }
    }
}
