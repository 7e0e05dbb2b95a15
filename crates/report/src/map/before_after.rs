//! One of two maps side by side: a lawn before or after a change, with the same pockets drawn on both.

use super::labels::Labels;
use super::layers::Layer;
use super::marks::{ComparedMarks, key, put};
use super::view::View;
use super::{Drawing, Furniture, Grounds, INK, escaped};
use crate::messages::Voice;
use crate::messages::say;
use crate::ramp::VisitScale;
use crate::words;
use std::fmt::Write;
use tussock_types::{ComparedPocket, Findings, LawnWhen};

/// Which of the two.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Side {
    Before,
    After,
}

/// The map of one side. A pocket is hatched if most of it was not driven over on this side.
///
/// Both sides use one colour scale, so that the same colour means the same number of visits.
pub(crate) fn twin_svg(
    voice: Voice,
    findings: &Findings,
    side: Side,
    pockets: &[ComparedPocket],
    scale: VisitScale,
) -> Drawn {
    let mut drawing = Drawing::with(voice, findings, Furniture::Twin, |view| {
        Some(compared(voice, view, side, pockets))
    });
    if let Some(ground) = &mut drawing.ground {
        ground.scale = scale;
    }
    let label = match side {
        Side::Before => say!(voice, "map-before"),
        Side::After => say!(voice, "map-after"),
    };
    Drawn {
        svg: drawing.page_svg(&label, Grounds::Visits),
        scale: drawing.scale_svg(findings),
    }
}

/// The pockets as they are on one side.
fn compared(voice: Voice, view: &View, side: Side, pockets: &[ComparedPocket]) -> ComparedMarks {
    let mut labels = Labels::new(view, Furniture::Twin);
    let mut out = String::new();
    for (index, pocket) in pockets.iter().enumerate() {
        let fraction = match side {
            Side::Before => pocket.before_fraction.estimate,
            Side::After => pocket.after_fraction.estimate,
        };
        let (fill, width, dash) = match fraction < 0.5 {
            true => ("url(#hatch)", 2.6, "none"),
            false => ("none", 2.2, "6 3"),
        };
        let data = view.rings(&pocket.outline);
        let (x, y) = view.at(pocket.middle);
        if !(x.is_finite() && y.is_finite()) {
            continue;
        }
        let id = pocket_id(pocket);
        put!(
            out,
            "<a class=\"mk\" href=\"#{key}\" data-item=\"{key}\" data-x=\"{x:.1}\" data-y=\"{y:.1}\" \
             aria-label=\"{}\"><path d=\"{data}\" fill=\"none\" stroke=\"#fffefa\" \
             stroke-opacity=\"0.85\" stroke-width=\"5\"/><path d=\"{data}\" fill=\"{fill}\" \
             fill-rule=\"evenodd\" stroke=\"{INK}\" stroke-width=\"{width}\" stroke-dasharray=\"{dash}\" \
             stroke-linejoin=\"round\"/><g transform=\"translate({x:.1} {y:.1})\"><circle class=\"pin hit\" \
             r=\"14\"/></g></a>",
            escaped(&say!(
                voice,
                "mark-compared",
                id = id,
                percent = words::percent(voice, fraction)
            )),
            key = key('c', index),
        );
        let room = pocket.area_m2.max(0.0).sqrt() * view.scale;
        labels.id(Layer::Missed, (x, y), room, &id);
    }
    ComparedMarks { pockets: out, labels }
}

/// A pocket of the side after has a mark, because both sides count from 1.
pub(crate) fn pocket_id(pocket: &ComparedPocket) -> String {
    let id = words::plain(&pocket.id, 8);
    match pocket.found {
        LawnWhen::Before => id,
        LawnWhen::After => format!("{id}′"),
    }
}

/// A map and its scale bar.
pub(crate) struct Drawn {
    pub(crate) svg: String,
    pub(crate) scale: Option<String>,
}
