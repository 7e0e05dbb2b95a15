//! What does a plan promise, before anyone digs?
//!
//! One page from a forecast: the lawn as a typical simulated run leaves it, parts out of reach, passages, the days, lengths
//! of wire, and the assumptions.

use super::page;
use crate::map::{Drawing, Furniture, Grounds};
use crate::messages::{Voice, say};
use minijinja::{Value, context, value::Serde};
use tussock_types::{PlanForecast, Settings};

pub(super) fn page(voice: Voice, forecast: &PlanForecast, settings: &Settings, tool_version: &str) -> Value {
    let drawing = forecast.typical.as_deref().map(|typical| {
        let drawing = Drawing::of(voice, typical, Furniture::Bare);
        let key = drawing
            .ground
            .as_ref()
            .map(|ground| page::visit_key(voice, ground.scale));
        let svg = drawing.page_svg(&say!(voice, "map-north-up"), Grounds::Visits);
        context! { svg, scale => drawing.scale_svg(typical), key => Serde(key.unwrap_or_default()) }
    });
    context! { map => drawing, tool_version, ..crate::forecast::told(voice, forecast, settings) }
}
