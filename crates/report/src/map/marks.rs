//! Everything that is drawn above the ground, layer by layer.

use super::labels::{Labels, Near};
use super::layers::Layer;
use super::view::{Shape, View, shape};
use super::{Furniture, INK, QUIET, SHEET, escaped};
use crate::messages::Voice;
use crate::messages::{named, say};
use crate::{ramp, words};
use std::fmt::Write;
use tussock_types::math;
use tussock_types::{Findings, Place, PlanRole, SuggestionKind};

/// Undecided pockets that always show their id; the largest come first.
const NAMED_ALWAYS: usize = 6;
/// Undecided pockets that show it if there is space: a map full of names shows no ground.
const NAMED_AT_MOST: usize = 16;

/// Missed pockets whose tape distances are drawn; more would cover the map.
const TAPES_SHOWN: usize = 1;

/// Writing to a string cannot fail.
macro_rules! put {
    ($out:expr, $($part:tt)*) => {{ let _ = write!($out, $($part)*); }};
}
pub(super) use put;

/// The name of a thing within the page, whatever its id is, because ids come from files.
pub(crate) fn key(letter: char, index: usize) -> String {
    format!("{letter}{}", index + 1)
}

struct Marks<'a> {
    voice: Voice,
    findings: &'a Findings,
    view: &'a View,
    furniture: Furniture,
    labels: Labels,
}

/// Pockets of a comparison: their drawing, and their ids, which come before every other name.
pub(super) struct ComparedMarks {
    pub(super) pockets: String,
    pub(super) labels: Labels,
}

/// The marks of every layer on the map, each in its own group.
pub(super) fn draw(
    voice: Voice,
    findings: &Findings,
    view: &View,
    has_ground: bool,
    furniture: Furniture,
    compared: Option<ComparedMarks>,
) -> String {
    let (pockets, labels) = match compared {
        Some(compared) => (Some(compared.pockets), compared.labels),
        None => (None, Labels::new(view, furniture)),
    };
    let mut marks = Marks {
        voice,
        findings,
        view,
        furniture,
        labels,
    };
    // Names are placed in this order: what was found comes before what was installed.
    let found = match pockets {
        Some(pockets) => vec![
            (Layer::Missed, pockets),
            (Layer::Stuck, marks.stuck()),
            (Layer::Plan, marks.plan()),
            (Layer::Legs, marks.legs(has_ground)),
        ],
        None => vec![
            (Layer::Asked, marks.asked()),
            (Layer::NotYet, marks.not_yet()),
            (Layer::Missed, marks.missed()),
            (Layer::Unseen, marks.unseen()),
            (Layer::Worn, marks.worn()),
            (Layer::Stuck, marks.stuck()),
            (Layer::Suggestions, marks.suggestions()),
            (Layer::Tapes, marks.tapes()),
            (Layer::Plan, marks.plan()),
            (Layer::Lie, marks.lie()),
            (Layer::Strays, marks.strays()),
            (Layer::Legs, marks.legs(has_ground)),
        ],
    };
    let mut out = marks.outline(has_ground);
    let group = |layer: Layer, class: &str, inside: &str| match inside {
        "" => String::new(),
        inside if furniture == Furniture::Full => inside.to_owned(),
        inside => format!(
            "<g class=\"{class}{}\" data-layer=\"{}\">{inside}</g>",
            if layer.is_on() || (layer == Layer::Legs && !has_ground) {
                ""
            } else {
                " off"
            },
            layer.key()
        ),
    };
    let shown = |layer: &Layer| match furniture {
        Furniture::Bare => true,
        Furniture::Full => layer.is_on() || (*layer == Layer::Legs && !has_ground),
        Furniture::Twin => {
            matches!(layer, Layer::Plan | Layer::Missed | Layer::Stuck)
                || (*layer == Layer::Legs && !has_ground)
        }
    };
    for layer in Layer::ALL.into_iter().filter(shown) {
        for (_, inside) in found.iter().filter(|(of, _)| *of == layer) {
            out.push_str(&group(layer, "ly", inside));
        }
    }
    for layer in Layer::ALL.into_iter().filter(shown) {
        out.push_str(&group(layer, "ly words", &marks.labels.of(layer)));
    }
    out
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

/// A side of the plan where the mower really turns: dots, as in an unfinished sketch.
fn as_turned(data: &str) -> String {
    format!(
        "<path d=\"{data}\" fill=\"none\" stroke=\"{SHEET}\" stroke-width=\"5\"/><path d=\"{data}\" fill=\"none\" \
         stroke=\"{INK}\" stroke-width=\"3\" stroke-dasharray=\"0.1 6\" stroke-linecap=\"round\"/>"
    )
}

/// A flag: somebody stood here and pointed.
fn flag() -> String {
    format!(
        "<path d=\"M0,0v-22\" fill=\"none\" stroke=\"{INK}\" stroke-width=\"2.2\"/><path d=\"M0,-22h14l-4,5l4,5h-14z\" \
         fill=\"{SHEET}\" stroke=\"{INK}\" stroke-width=\"1.8\" stroke-linejoin=\"round\"/>"
    )
}

impl Marks<'_> {
    /// On the page a mark is a link to its card, which works even without script.
    fn mark(&self, key: &str, label: &str, at: (f64, f64), body: &str) -> String {
        if self.furniture != Furniture::Bare || !(at.0.is_finite() && at.1.is_finite()) {
            return body.to_owned();
        }
        format!(
            "<a class=\"mk\" id=\"at-{key}\" href=\"#{key}\" data-item=\"{key}\" data-x=\"{:.1}\" data-y=\"{:.1}\" \
             aria-label=\"{}\">{body}<g transform=\"translate({:.1} {:.1})\"><circle class=\"pin hit\" \
             r=\"14\"/></g></a>",
            at.0,
            at.1,
            escaped(label),
            at.0,
            at.1
        )
    }

    /// A sign that keeps its size when the map is enlarged.
    fn pin(&self, at: (f64, f64), body: &str) -> String {
        format!(
            "<g transform=\"translate({:.1} {:.1})\"><g class=\"pin\">{body}</g></g>",
            at.0, at.1
        )
    }

    fn outline(&self, has_ground: bool) -> String {
        let mut out = String::new();
        let lawn = &self.findings.lawn_outline;
        let data: String = lawn.iter().map(|part| self.view.rings(part)).collect();
        let fill = if has_ground {
            "none".to_owned()
        } else {
            ramp::hex(ramp::NEVER)
        };
        put!(
            out,
            "<path d=\"{data}\" fill=\"{fill}\" fill-rule=\"evenodd\" stroke=\"{INK}\" stroke-width=\"1.8\" \
             stroke-linejoin=\"round\"/>"
        );
        out
    }

    /// Thin and half transparent, so that the ground shows through thousands of legs.
    fn legs(&self, has_ground: bool) -> String {
        let lines = &self.findings.driven_lines;
        let data: String = lines.iter().map(|line| self.view.line(line)).collect();
        if data.is_empty() {
            return data;
        }
        let (colour, width) = match (has_ground, self.furniture) {
            (true, Furniture::Full) => (INK, "0.8"),
            (true, _) => (INK, "0.5\" stroke-opacity=\"0.4"),
            (false, _) => (QUIET, "0.7"),
        };
        format!(
            "<path class=\"legs\" d=\"{data}\" fill=\"none\" stroke=\"{colour}\" stroke-width=\"{width}\"/>"
        )
    }

    /// Displaced sides of the plan, drawn where they really are.
    fn edges_as_turned(&self) -> String {
        let fit = self.findings.plan_fit.iter();
        let lines = fit
            .flat_map(|fit| &fit.edges)
            .map(|edge| self.view.line(&edge.line));
        lines.map(|data| as_turned(&data)).collect()
    }

    fn plan(&mut self) -> String {
        let mut out = String::new();
        let mut station = None;
        for feature in self.findings.plan.iter().flat_map(|plan| &plan.features) {
            let Some(shape) = shape(self.findings, feature) else {
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
                    put!(out, "<path d=\"{}\" {style}/>", self.view.rings(rings));
                    rings.first().and_then(|ring| middle(ring))
                }
                Shape::Line(line) => {
                    // A pale line below it keeps it readable on dark ground.
                    let data = self.view.line(line);
                    put!(
                        out,
                        "<path d=\"{data}\" fill=\"none\" stroke=\"#fffefa\" stroke-opacity=\"0.75\" \
                         stroke-width=\"4\"/><path d=\"{data}\" {style}/>"
                    );
                    line.get(line.len() / 2).copied()
                }
                Shape::Point(place) if feature.role == PlanRole::Station => {
                    station = Some(*place);
                    None
                }
                Shape::Point(place) => {
                    let (x, y) = self.view.at(*place);
                    let radius = feature.radius_m.unwrap_or(0.3) * self.view.scale;
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
                let at = self.view.at(anchor);
                self.labels
                    .name(Layer::Plan, at, near, &words::plain(&feature.name, 24));
            }
        }
        if let Some(place) = station {
            let at = self.view.at(place);
            let house = format!(
                "<path d=\"M-9,-5h18v11h-18z M-10.5,-5l10.5,-8 10.5,8z\" fill=\"#fffefa\" stroke=\"{INK}\" \
                 stroke-width=\"1.8\" stroke-linejoin=\"round\"/>"
            );
            out.push_str(&self.pin(at, &house));
            self.labels
                .name(Layer::Plan, at, Near::Beside, &say!(self.voice, "mark-station"));
        }
        out
    }

    fn missed(&mut self) -> String {
        let mut out = String::new();
        for (index, pocket) in self.findings.missed_pockets.iter().enumerate() {
            let data = self.view.rings(&pocket.outline);
            let body = format!(
                "<path d=\"{data}\" fill=\"url(#hatch)\" fill-rule=\"evenodd\" stroke=\"{INK}\" \
                 stroke-width=\"2.6\" stroke-linejoin=\"round\"/>"
            );
            let at = self.view.at(Place::new(pocket.east_m, pocket.north_m));
            let id = words::plain(&pocket.id, 8);
            let label = say!(
                self.voice,
                "mark-missed",
                id = id,
                area = words::area(self.voice, pocket.area_m2)
            );
            out.push_str(&self.mark(&key('m', index), &label, at, &body));
            self.labels
                .id(Layer::Missed, at, pocket.widest_m * self.view.scale, &id);
        }
        out
    }

    fn not_yet(&mut self) -> String {
        let mut out = String::new();
        for (index, pocket) in self.findings.not_yet.iter().enumerate() {
            let data = self.view.rings(&pocket.outline);
            let body = format!(
                "<path d=\"{data}\" fill=\"#fffefa\" fill-opacity=\"0.01\" stroke=\"#fffefa\" \
                 stroke-opacity=\"0.8\" stroke-width=\"4\"/><path d=\"{data}\" fill=\"none\" stroke=\"{INK}\" \
                 stroke-width=\"1.9\" stroke-dasharray=\"0.1 3.8\" stroke-linecap=\"round\"/>"
            );
            let at = self.view.at(Place::new(pocket.east_m, pocket.north_m));
            let id = words::plain(&pocket.id, 8);
            let label = say!(
                self.voice,
                "mark-not-yet",
                id = id,
                area = words::area(self.voice, pocket.area_m2)
            );
            out.push_str(&self.mark(&key('n', index), &label, at, &body));
            let room = pocket.widest_m * self.view.scale;
            if index < NAMED_ALWAYS {
                self.labels.id(Layer::NotYet, at, room, &id);
            } else if index < NAMED_AT_MOST {
                self.labels.id_where_free(Layer::NotYet, at, room, &id);
            }
        }
        out
    }

    fn unseen(&mut self) -> String {
        let mut out = String::new();
        for (index, ground) in self.findings.unseen.iter().flatten().enumerate() {
            let data = self.view.rings(&ground.outline);
            let Some(middle) = ground.outline.first().and_then(|ring| middle(ring)) else {
                continue;
            };
            let body = format!(
                "<path d=\"{data}\" fill=\"url(#specks)\" fill-rule=\"evenodd\" stroke=\"{INK}\" \
                 stroke-width=\"1.2\" stroke-linejoin=\"round\"/>"
            );
            let at = self.view.at(middle);
            let id = words::plain(&ground.id, 8);
            let label = say!(
                self.voice,
                "mark-unseen",
                id = id,
                area = words::area(self.voice, ground.area_m2)
            );
            out.push_str(&self.mark(&key('u', index), &label, at, &body));
            self.labels.id(Layer::Unseen, at, 0.0, &id);
        }
        out
    }

    fn worn(&mut self) -> String {
        let mut out = String::new();
        for (index, worn) in self.findings.worn_lines.iter().flatten().enumerate() {
            let data = self.view.line(&worn.line);
            let body = format!(
                "<path d=\"{data}\" fill=\"none\" stroke=\"#fffefa\" stroke-width=\"7\"/><path d=\"{data}\" \
                 fill=\"none\" stroke=\"{INK}\" stroke-width=\"5\" stroke-dasharray=\"1.4 3\"/>"
            );
            let Some(&place) = worn.line.get(worn.line.len() / 2) else {
                continue;
            };
            let id = words::plain(&worn.id, 8);
            let label = say!(
                self.voice,
                "mark-worn",
                id = id,
                length = words::metres(self.voice, worn.length_m)
            );
            let at = self.view.at(place);
            out.push_str(&self.mark(&key('w', index), &label, at, &body));
            self.labels.id(Layer::Worn, at, 0.0, &id);
        }
        out
    }

    fn tapes(&mut self) -> String {
        let mut out = String::new();
        let pockets = self.findings.missed_pockets.iter().enumerate();
        let count = match self.furniture {
            Furniture::Full => TAPES_SHOWN,
            Furniture::Bare | Furniture::Twin => usize::MAX,
        };
        for (index, pocket) in pockets.take(count) {
            let to = Place::new(pocket.east_m, pocket.north_m);
            // On the page, the tapes of the other pockets show when a pocket is chosen.
            let is_shown = index < TAPES_SHOWN;
            if self.furniture == Furniture::Bare {
                let others = if is_shown { "" } else { " others" };
                put!(
                    out,
                    "<g class=\"tapes{others}\" data-item=\"{}\">",
                    key('m', index)
                );
            }
            for tape in &pocket.tape {
                let from = Place::new(tape.from_east_m, tape.from_north_m);
                let data = self.view.line(&[from, to]);
                let (x, y) = self.view.at(from);
                if !(x.is_finite() && y.is_finite()) {
                    continue;
                }
                put!(
                    out,
                    "<path d=\"{data}\" stroke=\"#fffefa\" stroke-opacity=\"0.85\" stroke-width=\"3.4\"/><path \
                     d=\"{data}\" stroke=\"{INK}\" stroke-width=\"1\" stroke-dasharray=\"5 3\"/>"
                );
                let ring =
                    format!("<circle r=\"3.4\" fill=\"#fffefa\" stroke=\"{INK}\" stroke-width=\"1.6\"/>");
                out.push_str(&self.pin((x, y), &ring));
                let (to_x, to_y) = self.view.at(to);
                let length = math::hypot(to_x - x, to_y - y);
                if length > 90.0 && is_shown {
                    self.labels.distance(
                        Layer::Tapes,
                        (x, y),
                        (to_x, to_y),
                        &words::tape_length(self.voice, tape.distance_m),
                    );
                }
            }
            if self.furniture == Furniture::Bare {
                out.push_str("</g>");
            }
        }
        out
    }

    fn suggestions(&mut self) -> String {
        let mut out = String::new();
        for (index, suggestion) in self.findings.suggestions.iter().flatten().enumerate() {
            let mut data = self.view.line(&suggestion.geometry);
            let is_area = matches!(
                suggestion.kind,
                SuggestionKind::ZoneMove | SuggestionKind::ZoneShrink | SuggestionKind::ZoneAdd
            );
            if is_area && !data.is_empty() {
                data.push('Z');
            }
            let Some(&place) = suggestion.geometry.get(suggestion.geometry.len() / 2) else {
                continue;
            };
            let body = format!(
                "<path d=\"{data}\" fill=\"none\" stroke=\"{INK}\" stroke-width=\"7\" stroke-linejoin=\"round\" \
                 stroke-linecap=\"round\"/><path d=\"{data}\" fill=\"none\" stroke=\"#fffefa\" \
                 stroke-width=\"3.4\" stroke-linejoin=\"round\"/>"
            );
            let id = words::plain(&suggestion.id, 8);
            let label = say!(
                self.voice,
                "mark-suggested",
                id = id,
                change = named(self.voice, "suggestion", &suggestion.kind)
            );
            let at = self.view.at(place);
            out.push_str(&self.mark(&key('g', index), &label, at, &body));
            self.labels.id(Layer::Suggestions, at, 0.0, &id);
        }
        out
    }

    fn stuck(&mut self) -> String {
        let mut out = String::new();
        for (index, spot) in self.findings.stuck_spots.iter().enumerate() {
            let (x, y) = self.view.at(Place::new(spot.east_m, spot.north_m));
            if !(x.is_finite() && y.is_finite()) {
                continue;
            }
            let mut body = String::new();
            let radius = spot.radius_m * self.view.scale;
            if radius > 13.0 && radius < 1_000.0 {
                put!(
                    body,
                    "<circle cx=\"{x:.1}\" cy=\"{y:.1}\" r=\"{radius:.1}\" fill=\"none\" stroke=\"{INK}\" \
                     stroke-width=\"1.2\"/>"
                );
            }
            let mut sign = String::new();
            if let Some(course_deg) = spot.approach_deg.filter(|deg| deg.is_finite()) {
                // A barb on the side from which the machine came.
                put!(
                    sign,
                    "<path transform=\"rotate({:.0})\" d=\"M0,-26v11 M-3.5,-19.5l3.5,5l3.5,-5\" fill=\"none\" \
                     stroke=\"{INK}\" stroke-width=\"1.8\"/>",
                    (course_deg + 180.0).rem_euclid(360.0)
                );
            }
            hourglass(&mut sign, 0.0, 0.0);
            body.push_str(&self.pin((x, y), &sign));
            let id = words::plain(&spot.id, 8);
            let label = say!(
                self.voice,
                "mark-stuck",
                id = id,
                time = words::minutes(self.voice, spot.minutes)
            );
            out.push_str(&self.mark(&key('s', index), &label, (x, y), &body));
            self.labels.beside(Layer::Stuck, (x, y), &id);
        }
        out
    }

    fn asked(&mut self) -> String {
        let mut out = String::new();
        for (index, complaint) in self.findings.complaints.iter().enumerate() {
            let at = self.view.at(Place::new(complaint.east_m, complaint.north_m));
            let (across, down) = (0.0..=self.view.width, 0.0..=self.view.height);
            if !(across.contains(&at.0) && down.contains(&(at.1 - self.view.top))) {
                continue;
            }
            let (id, asked) = (
                format!("C{}", index + 1),
                words::asked(self.voice, complaint, self.findings),
            );
            let label = say!(
                self.voice,
                "asked-mark",
                id = id,
                said = asked.said.unwrap_or(asked.word)
            );
            out.push_str(&self.mark(&key('c', index), &label, at, &self.pin(at, &flag())));
            self.labels.beside(Layer::Asked, at, &id);
        }
        out
    }

    /// Islands drawn from the drive, which the user is asked about.
    fn islands(&mut self) -> String {
        let mut out = String::new();
        let drawn = self.findings.drawn_outline.iter();
        for (index, island) in drawn.flat_map(|drawn| &drawn.islands).enumerate() {
            let data = self.view.line(&island.outline);
            let body = format!(
                "<path d=\"{data}\" fill=\"{SHEET}\" stroke=\"{INK}\" stroke-width=\"1.6\" stroke-dasharray=\"3 3\"/>"
            );
            let at = self.view.at(Place::new(island.east_m, island.north_m));
            let id = words::plain(&island.id, 8);
            let label = say!(
                self.voice,
                "mark-island",
                id = id,
                area = words::area(self.voice, island.area_m2)
            );
            out.push_str(&self.mark(&key('i', index), &label, at, &body));
            let across = (island.area_m2 / std::f64::consts::PI).max(0.0).sqrt() * self.view.scale;
            self.labels.id(Layer::Lie, at, 2.0 * across, &id);
        }
        out
    }

    /// Passages as calipers, obstacles that are in no plan as crossed circles, starts of outings as small rings.
    fn lie(&mut self) -> String {
        let mut out = self.edges_as_turned() + &self.islands();
        let Some(installation) = &self.findings.installation else {
            return out;
        };
        for (index, passage) in installation.passages.iter().enumerate() {
            let [from, to] = passage.across;
            let data = self.view.line(&[from, to]);
            let (a, b) = (self.view.at(from), self.view.at(to));
            let at = ((a.0 + b.0) / 2.0, (a.1 + b.1) / 2.0);
            let body = format!(
                "<path d=\"{data}\" fill=\"none\" stroke=\"#fffefa\" stroke-width=\"6\"/><path d=\"{data}\" \
                 fill=\"none\" stroke=\"{INK}\" stroke-width=\"2\" marker-start=\"url(#jaw)\" \
                 marker-end=\"url(#jaw)\"/>"
            );
            let id = words::plain(&passage.id, 8);
            let label = say!(
                self.voice,
                "mark-passage",
                id = id,
                length = words::metres(self.voice, passage.width_m)
            );
            out.push_str(&self.mark(&key('p', index), &label, at, &body));
            self.labels.id(Layer::Lie, at, 0.0, &id);
        }
        for (index, thing) in installation.unlisted_obstacles.iter().enumerate() {
            let at = self.view.at(Place::new(thing.east_m, thing.north_m));
            let radius = (thing.radius_m * self.view.scale).clamp(5.0, 400.0);
            if !(at.0.is_finite() && at.1.is_finite() && radius.is_finite()) {
                continue;
            }
            let half = radius * 0.7;
            let body = format!(
                "<path d=\"M{:.1},{:.1}m{:.1},0a{radius:.1},{radius:.1} 0 1 0 {:.1},0a{radius:.1},{radius:.1} 0 1 0 \
                 {:.1},0M{:.1},{:.1}l{:.1},{:.1}m0,{:.1}l{:.1},{:.1}\" fill=\"#fffefa\" fill-opacity=\"0.8\" \
                 stroke=\"{INK}\" stroke-width=\"1.6\"/>",
                at.0,
                at.1,
                -radius,
                2.0 * radius,
                -2.0 * radius,
                at.0 - half,
                at.1 - half,
                2.0 * half,
                2.0 * half,
                -2.0 * half,
                -2.0 * half,
                2.0 * half,
            );
            let id = words::plain(&thing.id, 8);
            let label = say!(self.voice, "mark-in-no-plan", id = id, count = thing.turns);
            out.push_str(&self.mark(&key('o', index), &label, at, &body));
            self.labels.id(Layer::Lie, at, 2.0 * radius, &id);
        }
        for start in installation.outings.iter().flat_map(|outings| &outings.starts) {
            let at = self.view.at(*start);
            if at.0.is_finite() && at.1.is_finite() {
                let ring = format!("<circle r=\"3\" fill=\"none\" stroke=\"{INK}\" stroke-width=\"1.4\"/>");
                out.push_str(&self.pin(at, &ring));
            }
        }
        out
    }

    fn strays(&mut self) -> String {
        let mut out = String::new();
        for (index, stray) in self.findings.strays.iter().flatten().enumerate() {
            let at = self.view.at(Place::new(stray.east_m, stray.north_m));
            let sign = format!(
                "<path d=\"M0,-9l9,9l-9,9l-9,-9z M-4,0h8\" fill=\"#fffefa\" stroke=\"{INK}\" stroke-width=\"1.8\"/>"
            );
            let id = words::plain(&stray.id, 8);
            let label = say!(
                self.voice,
                "mark-stray",
                id = id,
                length = words::metres(self.voice, stray.farthest_m)
            );
            let body = self.pin(at, &sign);
            out.push_str(&self.mark(&key('x', index), &label, at, &body));
            self.labels.beside(Layer::Strays, at, &id);
        }
        for stop in self.findings.possible_stops.iter().flatten() {
            let at = self.view.at(Place::new(stop.east_m, stop.north_m));
            if at.0.is_finite() && at.1.is_finite() {
                let sign = format!(
                    "<path d=\"M-7,-7h14v14h-14z M-7,0h14\" fill=\"#fffefa\" fill-opacity=\"0.8\" stroke=\"{INK}\" \
                     stroke-width=\"1.4\" stroke-dasharray=\"2 2\"/>"
                );
                out.push_str(&self.pin(at, &sign));
            }
        }
        out
    }
}
