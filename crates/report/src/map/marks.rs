//! Everything that is drawn above the ground.

use super::view::{Shape, View, shape};
use super::{INK, QUIET, SHEET, escaped};
use crate::{ramp, words};
use std::fmt::Write;
use tussock_types::{Findings, Place, PlanRole, SuggestionKind};

/// Missed pockets whose tape distances are drawn; more would cover the map.
const TAPES_SHOWN: usize = 3;

/// Writing to a string cannot fail.
macro_rules! put {
    ($out:expr, $($part:tt)*) => {{ let _ = write!($out, $($part)*); }};
}
pub(super) use put;

pub(super) fn draw(out: &mut String, findings: &Findings, view: &View, has_ground: bool) {
    if !has_ground {
        let lawn: String = findings
            .lawn_outline
            .iter()
            .map(|part| view.rings(part))
            .collect();
        put!(
            out,
            "<path d=\"{lawn}\" fill=\"{}\" fill-rule=\"evenodd\"/>",
            ramp::hex(ramp::NEVER)
        );
        let lines: Vec<String> = findings.driven_lines.iter().map(|line| view.line(line)).collect();
        put!(
            out,
            "<path d=\"{}\" fill=\"none\" stroke=\"{QUIET}\" stroke-width=\"0.7\"/>",
            lines.concat()
        );
    }
    let outline: String = findings
        .lawn_outline
        .iter()
        .map(|part| view.rings(part))
        .collect();
    put!(
        out,
        "<path d=\"{outline}\" fill=\"none\" stroke=\"{INK}\" stroke-width=\"1.8\" stroke-linejoin=\"round\"/>"
    );
    let mut labels = Labels::new(view);
    plan(out, findings, view, &mut labels);
    not_yet(out, findings, view, &mut labels);
    missed(out, findings, view, &mut labels);
    worn(out, findings, view, &mut labels);
    tapes(out, findings, view, &mut labels);
    suggestions(out, findings, view, &mut labels);
    stuck(out, findings, view, &mut labels);
    labels.draw(out);
}

fn plan(out: &mut String, findings: &Findings, view: &View, labels: &mut Labels) {
    let mut station = None;
    for feature in findings.plan.iter().flat_map(|plan| &plan.features) {
        let Some(shape) = shape(findings, feature) else {
            continue;
        };
        let (fill, stroke, dash) = match feature.role {
            PlanRole::Lawn => continue,
            PlanRole::Boundary => ("none", QUIET, "2 4"),
            PlanRole::Exclusion => (SHEET, QUIET, "7 3"),
            PlanRole::Obstacle => ("#cfcabb", QUIET, "none"),
            PlanRole::Guide => ("none", INK, "12 4 2 4"),
            PlanRole::Station => ("none", INK, "none"),
        };
        let style = format!(
            "fill=\"{fill}\" fill-rule=\"evenodd\" stroke=\"{stroke}\" stroke-width=\"1.4\" stroke-dasharray=\"{dash}\""
        );
        let is_point = matches!(shape, Shape::Point(_));
        let anchor = match &shape {
            Shape::Area(rings) => {
                put!(out, "<path d=\"{}\" {style}/>", view.rings(rings));
                rings.first().and_then(|ring| middle(ring))
            }
            Shape::Line(line) => {
                // A pale line below keeps it readable on dark ground.
                let data = view.line(line);
                put!(
                    out,
                    "<path d=\"{data}\" fill=\"none\" stroke=\"#fffefa\" stroke-opacity=\"0.75\" stroke-width=\"4\"/>"
                );
                put!(out, "<path d=\"{data}\" {style}/>");
                line.get(line.len() / 2).copied()
            }
            Shape::Point(place) if feature.role == PlanRole::Station => {
                station = Some(*place);
                None
            }
            Shape::Point(place) => {
                let (x, y) = view.at(*place);
                let radius = feature.radius_m.unwrap_or(0.3) * view.scale;
                if radius.is_finite() {
                    put!(
                        out,
                        "<circle cx=\"{x:.1}\" cy=\"{y:.1}\" r=\"{:.1}\" {style}/>",
                        radius.clamp(2.0, 400.0)
                    );
                }
                Some(*place)
            }
        };
        if let Some(anchor) = anchor.filter(|_| feature.role != PlanRole::Boundary) {
            let near = if is_point { Near::Beside } else { Near::On };
            labels.name(view.at(anchor), near, &words::plain(&feature.name, 24));
        }
    }
    if let Some(place) = station {
        let (x, y) = view.at(place);
        put!(
            out,
            "<path d=\"M{:.1},{:.1}h18v11h-18z M{:.1},{:.1}l10.5,-8 10.5,8z\" fill=\"#fffefa\" stroke=\"{INK}\" \
             stroke-width=\"1.8\" stroke-linejoin=\"round\"/>",
            x - 9.0,
            y - 5.0,
            x - 10.5,
            y - 5.0
        );
        labels.name((x, y), Near::Beside, "station");
    }
}

/// Middle of a ring's corners.
fn middle(ring: &[Place]) -> Option<Place> {
    let corners = &ring[..ring.len().saturating_sub(1)];
    let count = corners.len() as f64;
    (count > 0.0).then(|| {
        Place::new(
            corners.iter().map(|corner| corner.east_m).sum::<f64>() / count,
            corners.iter().map(|corner| corner.north_m).sum::<f64>() / count,
        )
    })
}

fn missed(out: &mut String, findings: &Findings, view: &View, labels: &mut Labels) {
    for pocket in &findings.missed_pockets {
        let data = view.rings(&pocket.outline);
        put!(
            out,
            "<path d=\"{data}\" fill=\"url(#hatch)\" fill-rule=\"evenodd\" stroke=\"{INK}\" stroke-width=\"2.6\" \
             stroke-linejoin=\"round\"/>"
        );
        let at = view.at(Place::new(pocket.east_m, pocket.north_m));
        labels.id(at, pocket.widest_m * view.scale, &words::plain(&pocket.id, 8));
    }
}

fn not_yet(out: &mut String, findings: &Findings, view: &View, labels: &mut Labels) {
    for pocket in &findings.not_yet {
        let data = view.rings(&pocket.outline);
        put!(
            out,
            "<path d=\"{data}\" fill=\"none\" stroke=\"#fffefa\" stroke-opacity=\"0.8\" stroke-width=\"4\"/><path \
             d=\"{data}\" fill=\"none\" stroke=\"{INK}\" stroke-width=\"1.7\" stroke-dasharray=\"0.1 3.6\" \
             stroke-linecap=\"round\"/>"
        );
        let at = view.at(Place::new(pocket.east_m, pocket.north_m));
        labels.id(at, pocket.widest_m * view.scale, &words::plain(&pocket.id, 8));
    }
}

fn worn(out: &mut String, findings: &Findings, view: &View, labels: &mut Labels) {
    for worn in findings.worn_lines.iter().flatten() {
        let data = view.line(&worn.line);
        put!(
            out,
            "<path d=\"{data}\" fill=\"none\" stroke=\"#fffefa\" stroke-width=\"7\"/><path d=\"{data}\" \
             fill=\"none\" stroke=\"{INK}\" stroke-width=\"5\" stroke-dasharray=\"1.4 3\"/>"
        );
        if let Some(&place) = worn.line.get(worn.line.len() / 2) {
            labels.id(view.at(place), 0.0, &words::plain(&worn.id, 8));
        }
    }
}

fn tapes(out: &mut String, findings: &Findings, view: &View, labels: &mut Labels) {
    for pocket in findings.missed_pockets.iter().take(TAPES_SHOWN) {
        let to = Place::new(pocket.east_m, pocket.north_m);
        for tape in &pocket.tape {
            let from = Place::new(tape.from_east_m, tape.from_north_m);
            let data = view.line(&[from, to]);
            let (x, y) = view.at(from);
            if !(x.is_finite() && y.is_finite()) {
                continue;
            }
            put!(
                out,
                "<path d=\"{data}\" stroke=\"#fffefa\" stroke-opacity=\"0.85\" stroke-width=\"3.4\"/><path \
                 d=\"{data}\" stroke=\"{INK}\" stroke-width=\"1\" stroke-dasharray=\"5 3\"/><circle cx=\"{x:.1}\" \
                 cy=\"{y:.1}\" r=\"3.4\" fill=\"#fffefa\" stroke=\"{INK}\" stroke-width=\"1.6\"/>"
            );
            let (to_x, to_y) = view.at(to);
            let length = (to_x - x).hypot(to_y - y);
            if length > 90.0 {
                labels.distance(
                    ((x + to_x) / 2.0, (y + to_y) / 2.0),
                    &words::metres(tape.distance_m),
                );
            }
        }
    }
}

fn suggestions(out: &mut String, findings: &Findings, view: &View, labels: &mut Labels) {
    for suggestion in findings.suggestions.iter().flatten() {
        let mut data = view.line(&suggestion.geometry);
        let is_area = matches!(
            suggestion.kind,
            SuggestionKind::ZoneMove | SuggestionKind::ZoneShrink | SuggestionKind::ZoneAdd
        );
        if is_area && !data.is_empty() {
            data.push('Z');
        }
        put!(
            out,
            "<path d=\"{data}\" fill=\"none\" stroke=\"{INK}\" stroke-width=\"7\" stroke-linejoin=\"round\" \
             stroke-linecap=\"round\"/><path d=\"{data}\" fill=\"none\" stroke=\"#fffefa\" stroke-width=\"3.4\" \
             stroke-linejoin=\"round\"/>"
        );
        if let Some(&place) = suggestion.geometry.get(suggestion.geometry.len() / 2) {
            labels.id(view.at(place), 0.0, &words::plain(&suggestion.id, 8));
        }
    }
}

/// An hourglass: time that ran away here.
pub(super) fn hourglass(out: &mut String, x: f64, y: f64) {
    put!(
        out,
        "<circle cx=\"{x:.1}\" cy=\"{y:.1}\" r=\"12\" fill=\"#fffefa\" stroke=\"{INK}\" stroke-width=\"2\"/><path \
         d=\"M{:.1},{:.1}h9.6l-9.6,12.4h9.6z\" fill=\"{INK}\" stroke=\"{INK}\" stroke-width=\"1.4\" \
         stroke-linejoin=\"round\"/>",
        x - 4.8,
        y - 6.2
    );
}

fn stuck(out: &mut String, findings: &Findings, view: &View, labels: &mut Labels) {
    for spot in &findings.stuck_spots {
        let (x, y) = view.at(Place::new(spot.east_m, spot.north_m));
        if !(x.is_finite() && y.is_finite()) {
            continue;
        }
        let radius = spot.radius_m * view.scale;
        if radius > 13.0 && radius < 1_000.0 {
            put!(
                out,
                "<circle cx=\"{x:.1}\" cy=\"{y:.1}\" r=\"{radius:.1}\" fill=\"none\" stroke=\"{INK}\" \
                 stroke-width=\"1.2\"/>"
            );
        }
        hourglass(out, x, y);
        labels.beside((x, y), &words::plain(&spot.id, 8));
    }
}

/// Whether a name may cover its own place.
#[derive(Clone, Copy, PartialEq)]
enum Near {
    On,
    Beside,
}

/// Names, placed so that they do not cover each other, drawn last.
struct Labels {
    taken: Vec<[f64; 4]>,
    text: String,
    right: f64,
    top: f64,
    bottom: f64,
}

impl Labels {
    fn new(view: &View) -> Self {
        Self {
            taken: Vec::new(),
            text: String::new(),
            right: view.width,
            top: view.top,
            bottom: view.top + view.height,
        }
    }

    fn is_free(&self, rect: [f64; 4]) -> bool {
        let inside = rect[0] >= 0.0 && rect[2] <= self.right && rect[1] >= self.top && rect[3] <= self.bottom;
        inside
            && self.taken.iter().all(|other| {
                rect[2] <= other[0] || rect[0] >= other[2] || rect[3] <= other[1] || rect[1] >= other[3]
            })
    }

    /// Width of a text at a size, near enough.
    fn rect(at: (f64, f64), text: &str, size: f64) -> [f64; 4] {
        let half = words::columns(text) as f64 * size * 0.32 + 2.0;
        [at.0 - half, at.1 - size * 0.62, at.0 + half, at.1 + size * 0.62]
    }

    fn put(&mut self, at: (f64, f64), text: &str, size: f64, class: &str, style: &str) {
        if !(at.0.is_finite() && at.1.is_finite()) {
            return;
        }
        self.taken.push(Self::rect(at, text, size));
        put!(
            self.text,
            "<text class=\"{class}\" x=\"{:.1}\" y=\"{:.1}\" font-size=\"{size}\" text-anchor=\"middle\" {style} \
             paint-order=\"stroke\" stroke=\"#fffefa\" stroke-width=\"4.5\" stroke-linejoin=\"round\">{}</text>",
            at.0,
            at.1 + size * 0.36,
            escaped(text)
        );
    }

    /// Of some places the first that is free, else the first of all.
    fn choose(&self, places: &[(f64, f64)], text: &str, size: f64) -> (f64, f64) {
        let free = places
            .iter()
            .find(|&&at| self.is_free(Self::rect(at, text, size)));
        free.or(places.first()).copied().unwrap_or_default()
    }

    fn around(at: (f64, f64), reach: f64) -> [(f64, f64); 8] {
        let slant = reach * 0.8;
        [
            (at.0 + reach * 1.2, at.1),
            (at.0, at.1 - reach),
            (at.0 - reach * 1.2, at.1),
            (at.0, at.1 + reach),
            (at.0 + slant, at.1 - slant),
            (at.0 - slant, at.1 - slant),
            (at.0 + slant, at.1 + slant),
            (at.0 - slant, at.1 + slant),
        ]
    }

    /// The id of a pocket: inside where there is room, else beside it.
    fn id(&mut self, at: (f64, f64), room: f64, text: &str) {
        let size = 19.0;
        let mut places = Vec::new();
        if room > 40.0 {
            places.push(at);
        }
        places.extend(Self::around(at, room / 2.0 + 16.0));
        let at = self.choose(&places, text, size);
        self.put(
            at,
            text,
            size,
            "id",
            &format!("font-weight=\"bold\" fill=\"{INK}\""),
        );
    }

    /// The id of a mark.
    fn beside(&mut self, at: (f64, f64), text: &str) {
        self.taken
            .push([at.0 - 13.0, at.1 - 13.0, at.0 + 13.0, at.1 + 13.0]);
        let at = self.choose(&Self::around(at, 26.0), text, 19.0);
        self.put(
            at,
            text,
            19.0,
            "id",
            &format!("font-weight=\"bold\" fill=\"{INK}\""),
        );
    }

    /// The name of something installed; left out where there is no room.
    fn name(&mut self, at: (f64, f64), near: Near, text: &str) {
        let mut places = Vec::new();
        if near == Near::On {
            places.push(at);
        }
        let half = words::columns(text) as f64 * 4.0;
        places.extend([
            (at.0, at.1 + 20.0),
            (at.0, at.1 - 20.0),
            (at.0 + half + 14.0, at.1),
            (at.0 - half - 14.0, at.1),
        ]);
        if let Some(&at) = places
            .iter()
            .find(|&&at| self.is_free(Self::rect(at, text, 12.5)))
        {
            self.put(at, text, 12.5, "nm", &format!("fill=\"{QUIET}\""));
        }
    }

    /// A distance on a tape; left out where there is no room.
    fn distance(&mut self, at: (f64, f64), text: &str) {
        if self.is_free(Self::rect(at, text, 13.5)) {
            self.put(at, text, 13.5, "tp", &format!("fill=\"{INK}\""));
        }
    }

    fn draw(self, out: &mut String) {
        out.push_str(&self.text);
    }
}
