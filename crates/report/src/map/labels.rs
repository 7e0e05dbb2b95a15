//! Names on the map, placed so that they do not cover each other.

use super::layers::Layer;
use super::marks::put;
use super::view::View;
use super::{Furniture, INK, QUIET, escaped};
use crate::words;
use std::fmt::Write;

/// Whether a name may cover its own place.
#[derive(Clone, Copy, PartialEq)]
pub(super) enum Near {
    On,
    Beside,
}

/// Sizes of an id, a name and a distance, in units.
struct Sizes {
    id: f64,
    name: f64,
    tape: f64,
}

/// In the picture a unit is a pixel.
const OF_PICTURE: Sizes = Sizes {
    id: 19.0,
    name: 12.5,
    tape: 13.5,
};
/// On the page words keep their size on screen, so they take most units on the smallest screen: what is separate on a phone
/// is separate everywhere. Names show there only when the map is enlarged.
const OF_PAGE: Sizes = Sizes {
    id: 30.0,
    name: 20.0,
    tape: 24.5,
};
/// Units per pixel where the page is narrowest.
const UNITS_PER_PIXEL: f64 = 2.1;
/// Pixels between a place and the words beside it.
const GAP: f64 = 5.0;

/// Where words may be placed: a few pixels from a place on the map, a distance that stays the same when the map is enlarged.
#[derive(Clone, Copy)]
struct LabelSpot {
    at: (f64, f64),
    pixels: (f64, f64),
    anchor: &'static str,
}

impl LabelSpot {
    fn middle(at: (f64, f64)) -> Self {
        Self {
            at,
            pixels: (0.0, 0.0),
            anchor: "middle",
        }
    }
}

/// Names, drawn last.
pub(super) struct Labels {
    taken: Vec<[f64; 4]>,
    texts: Vec<(Layer, String)>,
    is_picture: bool,
    right: f64,
    top: f64,
    bottom: f64,
}

impl Labels {
    pub(super) fn new(view: &View, furniture: Furniture) -> Self {
        Self {
            taken: Vec::new(),
            texts: Vec::new(),
            is_picture: furniture == Furniture::Full,
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

    fn sizes(&self) -> Sizes {
        if self.is_picture { OF_PICTURE } else { OF_PAGE }
    }

    fn units_per_pixel(&self) -> f64 {
        if self.is_picture { 1.0 } else { UNITS_PER_PIXEL }
    }

    /// Approximate space that a text takes at a size.
    fn rect(&self, spot: LabelSpot, text: &str, size: f64) -> [f64; 4] {
        let half = words::columns(text) as f64 * size * 0.32 + 2.0;
        let unit = self.units_per_pixel();
        let (x, y) = (spot.at.0 + spot.pixels.0 * unit, spot.at.1 + spot.pixels.1 * unit);
        let middle = match spot.anchor {
            "start" => x + half,
            "end" => x - half,
            _ => x,
        };
        [middle - half, y - size * 0.62, middle + half, y + size * 0.62]
    }

    fn put(&mut self, layer: Layer, spot: LabelSpot, text: &str, size: f64, class: &str, style: &str) {
        let (x, y) = spot.at;
        if !(x.is_finite() && y.is_finite()) {
            return;
        }
        self.taken.push(self.rect(spot, text, size));
        self.write(layer, spot, text, size, class, style);
    }

    fn write(&mut self, layer: Layer, spot: LabelSpot, text: &str, size: f64, class: &str, style: &str) {
        let (x, y) = spot.at;
        let mut out = String::new();
        // The shift is in ems, so that it fits if the page sets another size.
        let common = format!(
            "dy=\"0.36em\" font-size=\"{size}\" text-anchor=\"{}\" {style} paint-order=\"stroke\" stroke=\"#fffefa\" \
             stroke-width=\"4.5\" stroke-linejoin=\"round\">{}</text>",
            spot.anchor,
            escaped(text)
        );
        if self.is_picture {
            let (x, y) = (x + spot.pixels.0, y + spot.pixels.1);
            put!(out, "<text class=\"{class}\" x=\"{x:.1}\" y=\"{y:.1}\" {common}");
        } else {
            put!(
                out,
                "<g transform=\"translate({x:.1} {y:.1})\"><text class=\"pin {class}\" x=\"{:.1}\" y=\"{:.1}\" {common}</g>",
                spot.pixels.0,
                spot.pixels.1
            );
        }
        self.texts.push((layer, out));
    }

    fn free(&self, spots: &[LabelSpot], text: &str, size: f64) -> Option<LabelSpot> {
        let is_free = |spot: &&LabelSpot| self.is_free(self.rect(**spot, text, size));
        spots.iter().find(is_free).copied()
    }

    /// Positions around a place: this many units of it are taken, and this many pixels by a sign.
    fn around(&self, at: (f64, f64), taken: f64, sign: f64) -> Vec<LabelSpot> {
        if self.is_picture {
            let reach = taken + sign;
            let slant = reach * 0.8;
            return [
                (at.0 + reach * 1.2, at.1),
                (at.0, at.1 - reach),
                (at.0 - reach * 1.2, at.1),
                (at.0, at.1 + reach),
                (at.0 + slant, at.1 - slant),
                (at.0 - slant, at.1 - slant),
                (at.0 + slant, at.1 + slant),
                (at.0 - slant, at.1 + slant),
            ]
            .map(LabelSpot::middle)
            .to_vec();
        }
        let high = self.sizes().id / self.units_per_pixel() * 0.62;
        let ways = [
            (1.0, 0.0, "start"),
            (0.0, -1.0, "middle"),
            (-1.0, 0.0, "end"),
            (0.0, 1.0, "middle"),
            (0.7, -0.7, "start"),
            (-0.7, -0.7, "end"),
            (0.7, 0.7, "start"),
            (-0.7, 0.7, "end"),
        ];
        // If all of these are taken, the same a little farther out.
        let rings = [sign + GAP, sign + GAP + 2.0 * high];
        let ring = |far: f64| {
            ways.map(|(x, y, anchor)| LabelSpot {
                at: (at.0 + x * taken, at.1 + y * taken),
                pixels: (x * far, y * (far + high)),
                anchor,
            })
        };
        rings.into_iter().flat_map(ring).collect()
    }

    fn bold(&mut self, layer: Layer, spot: LabelSpot, text: &str) {
        let style = format!("font-weight=\"bold\" fill=\"{INK}\"");
        self.put(layer, spot, text, self.sizes().id, "id", &style);
    }

    /// Around the ground of a pocket that is this many units wide.
    fn around_ground(&self, at: (f64, f64), room: f64) -> Vec<LabelSpot> {
        self.around(at, room / 2.0, if self.is_picture { 16.0 } else { 0.0 })
    }

    /// The id of a pocket: inside if there is space, else beside it.
    pub(super) fn id(&mut self, layer: Layer, at: (f64, f64), room: f64, text: &str) {
        let size = self.sizes().id;
        let mut spots = Vec::new();
        // An id that fills its pocket would hide the hatching.
        let wide = if self.is_picture {
            40.0
        } else {
            0.9 * size * words::columns(text) as f64
        };
        if room > wide {
            spots.push(LabelSpot::middle(at));
        }
        spots.extend(self.around_ground(at, room));
        let spot = self.free(&spots, text, size).unwrap_or(spots[0]);
        self.bold(layer, spot, text);
    }

    /// The id of one pocket among many; left out if there is no space. The list still shows where it is.
    pub(super) fn id_where_free(&mut self, layer: Layer, at: (f64, f64), room: f64, text: &str) {
        let spots = self.around_ground(at, room);
        if let Some(spot) = self.free(&spots, text, self.sizes().id) {
            self.bold(layer, spot, text);
        }
    }

    /// The id of a mark.
    pub(super) fn beside(&mut self, layer: Layer, at: (f64, f64), text: &str) {
        let half = 13.0 * self.units_per_pixel();
        self.taken
            .push([at.0 - half, at.1 - half, at.0 + half, at.1 + half]);
        let spots = self.around(at, 0.0, if self.is_picture { 26.0 } else { 11.0 });
        let spot = self.free(&spots, text, self.sizes().id).unwrap_or(spots[0]);
        self.bold(layer, spot, text);
    }

    /// The name of something installed. If there is no space it is left out of the picture; on the page it shows when the
    /// map is enlarged.
    pub(super) fn name(&mut self, layer: Layer, at: (f64, f64), near: Near, text: &str) {
        let mut spots = Vec::new();
        if near == Near::On {
            spots.push(LabelSpot::middle(at));
        }
        let half = words::columns(text) as f64 * 4.0;
        let spot = |x: f64, y: f64, anchor| LabelSpot {
            at,
            pixels: (x, y),
            anchor,
        };
        if self.is_picture {
            spots.extend([
                spot(0.0, 20.0, "middle"),
                spot(0.0, -20.0, "middle"),
                spot(half + 14.0, 0.0, "middle"),
                spot(-half - 14.0, 0.0, "middle"),
            ]);
        } else {
            spots.extend([
                spot(0.0, 18.0, "middle"),
                spot(0.0, -20.0, "middle"),
                spot(13.0, 0.0, "start"),
                spot(-13.0, 0.0, "end"),
            ]);
        }
        let (size, style) = (self.sizes().name, format!("fill=\"{QUIET}\""));
        match self.free(&spots, text, size) {
            Some(spot) => self.put(layer, spot, text, size, "nm", &style),
            None if self.is_picture || !(at.0.is_finite() && at.1.is_finite()) => {}
            None => self.write(layer, spots[0], text, size, "nm late", &style),
        }
    }

    /// A distance along a tape; left out if there is no space.
    pub(super) fn distance(&mut self, layer: Layer, from: (f64, f64), to: (f64, f64), text: &str) {
        let along =
            |part: f64| LabelSpot::middle((from.0 + part * (to.0 - from.0), from.1 + part * (to.1 - from.1)));
        let parts: &[f64] = if self.is_picture {
            &[0.5]
        } else {
            &[0.5, 0.35, 0.65]
        };
        let spots: Vec<LabelSpot> = parts.iter().map(|part| along(*part)).collect();
        let size = self.sizes().tape;
        if let Some(spot) = self.free(&spots, text, size) {
            self.put(layer, spot, text, size, "tp", &format!("fill=\"{INK}\""));
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
