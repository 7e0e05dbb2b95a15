//! Names on the map, placed so that they do not cover each other.

use super::layers::Layer;
use super::marks::put;
use super::view::View;
use super::{INK, QUIET, escaped};
use crate::words;
use std::fmt::Write;

/// Whether a name may cover its own place.
#[derive(Clone, Copy, PartialEq)]
pub(super) enum Near {
    On,
    Beside,
}

/// Size of an id.
const ID_SIZE: f64 = 19.0;
/// Size of a name.
const NAME_SIZE: f64 = 12.5;
/// Size of a distance.
const TAPE_SIZE: f64 = 13.5;

/// Names, drawn last.
pub(super) struct Labels {
    taken: Vec<[f64; 4]>,
    texts: Vec<(Layer, String)>,
    right: f64,
    top: f64,
    bottom: f64,
}

impl Labels {
    pub(super) fn new(view: &View) -> Self {
        Self {
            taken: Vec::new(),
            texts: Vec::new(),
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

    fn put(&mut self, layer: Layer, at: (f64, f64), text: &str, size: f64, class: &str, style: &str) {
        if !(at.0.is_finite() && at.1.is_finite()) {
            return;
        }
        self.taken.push(Self::rect(at, text, size));
        let mut out = String::new();
        // The shift is in ems, so that it fits when the page sets another size.
        put!(
            out,
            "<text class=\"{class}\" x=\"{:.1}\" y=\"{:.1}\" dy=\"0.36em\" font-size=\"{size}\" \
             text-anchor=\"middle\" {style} paint-order=\"stroke\" stroke=\"#fffefa\" stroke-width=\"4.5\" \
             stroke-linejoin=\"round\">{}</text>",
            at.0,
            at.1,
            escaped(text)
        );
        self.texts.push((layer, out));
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

    fn bold(&mut self, layer: Layer, at: (f64, f64), text: &str) {
        let style = format!("font-weight=\"bold\" fill=\"{INK}\"");
        self.put(layer, at, text, ID_SIZE, "id", &style);
    }

    /// The id of a pocket: inside where there is room, else beside it.
    pub(super) fn id(&mut self, layer: Layer, at: (f64, f64), room: f64, text: &str) {
        let mut places = Vec::new();
        if room > 40.0 {
            places.push(at);
        }
        places.extend(Self::around(at, room / 2.0 + 16.0));
        let at = self.choose(&places, text, ID_SIZE);
        self.bold(layer, at, text);
    }

    /// The id of one pocket of many; left out where there is no room. The list still shows where it lies.
    pub(super) fn id_where_free(&mut self, layer: Layer, at: (f64, f64), room: f64, text: &str) {
        let places = Self::around(at, room / 2.0 + 16.0);
        let free = places
            .iter()
            .find(|&&at| self.is_free(Self::rect(at, text, ID_SIZE)));
        if let Some(&at) = free {
            self.bold(layer, at, text);
        }
    }

    /// The id of a mark.
    pub(super) fn beside(&mut self, layer: Layer, at: (f64, f64), text: &str) {
        self.taken
            .push([at.0 - 13.0, at.1 - 13.0, at.0 + 13.0, at.1 + 13.0]);
        let at = self.choose(&Self::around(at, 26.0), text, ID_SIZE);
        self.bold(layer, at, text);
    }

    /// The name of something installed; left out where there is no room.
    pub(super) fn name(&mut self, layer: Layer, at: (f64, f64), near: Near, text: &str) {
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
            .find(|&&at| self.is_free(Self::rect(at, text, NAME_SIZE)))
        {
            self.put(layer, at, text, NAME_SIZE, "nm", &format!("fill=\"{QUIET}\""));
        }
    }

    /// A distance on a tape; left out where there is no room.
    pub(super) fn distance(&mut self, layer: Layer, at: (f64, f64), text: &str) {
        if self.is_free(Self::rect(at, text, TAPE_SIZE)) {
            self.put(layer, at, text, TAPE_SIZE, "tp", &format!("fill=\"{INK}\""));
        }
    }

    /// The texts of one layer.
    pub(super) fn of(&self, layer: Layer) -> String {
        self.texts
            .iter()
            .filter(|(of, _)| *of == layer)
            .map(|(_, text)| text.as_str())
            .collect()
    }
}
