//! What does the garden look like from above, with everything that was found?
//!
//! North is up, with one scale for both axes. From the ground upwards: visits as squares (pale to dark), the lawn's outline,
//! what was installed in quiet lines, not-yet pockets dotted, missed pockets hatched, worn lines, suggestions, tape
//! distances, stuck spots, and names. Everything can be distinguished without colour: by hatching, dots, shapes and letters.
//!
//! The same drawing is used for the page and for the picture; the picture adds a title and a legend, and is rendered with
//! DejaVu Sans, which comes with the crate `dejavu`, so that words appear on a machine without fonts.

mod before_after;
mod labels;
mod layers;
mod legend;
mod marks;
#[cfg(feature = "picture")]
mod picture;
pub(crate) mod view;

use crate::messages::Voice;
use crate::raster::Ground;
use std::fmt::Write;
use tussock_types::Findings;
use view::View;

pub(crate) use before_after::{Side, pocket_id, twin_svg};
pub(crate) use layers::Layer;
pub(crate) use legend::{entries as legend_entries, page_entries};
pub(crate) use marks::key;
#[cfg(feature = "picture")]
pub use picture::map_png;

/// Ink for what was found.
pub(crate) const INK: &str = "#1c2431";
/// Paler ink for what was installed.
pub(crate) const QUIET: &str = "#5d6470";
/// The sheet around the lawn.
pub(crate) const SHEET: &str = "#efebdf";

/// Hatching of missed ground, specks of unseen ground, and the jaws of a passage's calipers.
pub(crate) const DEFS: &str = "<defs><pattern id=\"hatch\" width=\"9\" height=\"9\" patternUnits=\"userSpaceOnUse\" \
    patternTransform=\"rotate(45)\"><rect width=\"9\" height=\"9\" fill=\"#fffefa\"/><rect width=\"2.6\" \
    height=\"9\" fill=\"#1c2431\"/></pattern><pattern id=\"specks\" width=\"8\" height=\"8\" \
    patternUnits=\"userSpaceOnUse\"><rect width=\"8\" height=\"8\" fill=\"#e4e0d3\"/><path \
    d=\"M1,3h2M5,7h2\" stroke=\"#1c2431\" stroke-width=\"1.3\"/></pattern><marker id=\"jaw\" \
    markerWidth=\"4\" markerHeight=\"10\" refX=\"2\" refY=\"5\" orient=\"auto\" \
    markerUnits=\"userSpaceOnUse\"><path d=\"M2,0v10\" stroke=\"#1c2431\" stroke-width=\"2\"/></marker></defs>";

/// What is around the map.
#[derive(Clone, Copy, PartialEq)]
pub(crate) enum Furniture {
    /// Title above, legend below: the map stands alone.
    Full,
    /// Nothing: the page around it says everything else.
    Bare,
    /// Nothing, and without what was found: one of two maps side by side.
    Twin,
}

/// Width in units of a map that stands alone.
const FULL_WIDTH: f64 = 1000.0;
/// The same on the page, where the map is shown smaller.
const PAGE_WIDTH: f64 = 760.0;
/// A garden may be this much taller than wide before it is drawn smaller.
const TALLEST: f64 = 1.15;

/// On the page a map's height is at most this many times its width.
const PAGE_RATIO: f64 = 1.15;

/// A map in layers, so that the picture can put its own ground below the marks.
pub(crate) struct Drawing {
    voice: Voice,
    pub(crate) width: f64,
    pub(crate) height: f64,
    pub(crate) view: Option<View>,
    pub(crate) ground: Option<Ground>,
    /// Everything above the ground.
    pub(crate) marks: String,
}

/// Text for use inside an SVG element or attribute.
pub(crate) fn escaped(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    for c in text.chars() {
        match c {
            '&' => out.push_str("&amp;"),
            '<' => out.push_str("&lt;"),
            '>' => out.push_str("&gt;"),
            '"' => out.push_str("&quot;"),
            '\'' => out.push_str("&#39;"),
            c => out.push(c),
        }
    }
    out
}

impl Drawing {
    pub(crate) fn of(voice: Voice, findings: &Findings, furniture: Furniture) -> Self {
        Self::with(voice, findings, furniture, |_| None)
    }

    /// With the pockets of a comparison instead of those of the findings.
    fn with(
        voice: Voice,
        findings: &Findings,
        furniture: Furniture,
        compared: impl Fn(&View) -> Option<marks::ComparedMarks>,
    ) -> Self {
        let (max_width, top) = match furniture {
            Furniture::Full => (FULL_WIDTH, legend::TITLE_HEIGHT),
            Furniture::Bare | Furniture::Twin => (PAGE_WIDTH, 0.0),
        };
        let view = View::of(findings, max_width, max_width * TALLEST)
            .map(|view| match furniture {
                Furniture::Full => view,
                Furniture::Bare | Furniture::Twin => view.no_taller_than(PAGE_RATIO).as_wide_as(PAGE_WIDTH),
            })
            .map(|view| view.below(top));
        let ground = findings.cells.as_ref().and_then(Ground::of);
        let mut marks = String::new();
        let Some(view) = view else {
            let (width, height) = (max_width, max_width * 0.3);
            legend::nothing(voice, &mut marks, width, height);
            return Self {
                voice,
                width,
                height,
                view: None,
                ground: None,
                marks,
            };
        };
        marks.push_str(&marks::draw(
            voice,
            findings,
            &view,
            ground.is_some(),
            furniture,
            compared(&view),
        ));
        let (mut width, mut height) = (view.width, view.height);
        if furniture == Furniture::Full {
            // A title and a legend need space even above a garden that is tall and narrow.
            width = view.width.max(FULL_WIDTH * 0.72);
            let foot = view.top + view.height;
            legend::scale_and_north(voice, &mut marks, findings, &view, foot);
            legend::title(voice, &mut marks, findings);
            height = legend::full(
                voice,
                &mut marks,
                findings,
                ground.as_ref(),
                width,
                foot + legend::SCALE_HEIGHT,
            );
        }
        Self {
            voice,
            width,
            height,
            view: Some(view),
            ground,
            marks,
        }
    }

    fn head(&self) -> String {
        format!(
            "<svg class=\"map\" xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 {w:.0} {h:.0}\" width=\"{w:.0}\" \
             height=\"{h:.0}\" font-family=\"DejaVu Sans, sans-serif\" font-size=\"14\" role=\"img\" \
             aria-label=\"{label}\">{DEFS}",
            label = escaped(&crate::messages::say!(self.voice, "map-of-lawn")),
            w = self.width,
            h = self.height,
        )
    }

    /// The marks alone, on a transparent ground.
    #[cfg(feature = "picture")]
    pub(crate) fn marks_svg(&self) -> String {
        format!("{}{}</svg>", self.head(), self.marks)
    }

    /// A picture of the squares, in their place.
    fn image(view: &View, ground: &Ground, uri: &str) -> String {
        let grid = ground.grid;
        let north_m = grid.north_min_m + grid.rows as f64 * grid.cell_m;
        let (x, y) = view.at(tussock_types::Place::new(grid.east_min_m, north_m));
        format!(
            "<image x=\"{x:.2}\" y=\"{y:.2}\" width=\"{:.2}\" height=\"{:.2}\" preserveAspectRatio=\"none\" \
             image-rendering=\"optimizeSpeed\" href=\"{uri}\"/>",
            grid.columns as f64 * grid.cell_m * view.scale,
            grid.rows as f64 * grid.cell_m * view.scale,
        )
    }

    fn sheet(&self) -> String {
        format!(
            "<rect class=\"sheet\" width=\"{:.0}\" height=\"{:.0}\" fill=\"{SHEET}\"/>",
            self.width, self.height
        )
    }

    /// The whole map.
    pub(crate) fn svg(&self) -> String {
        let mut out = self.head() + &self.sheet();
        if let (Some(view), Some(ground)) = (&self.view, &self.ground) {
            out.push_str(&Self::image(view, ground, &ground.visits_uri()));
        }
        out.push_str(&self.marks);
        out.push_str("</svg>");
        out
    }

    /// The map of the page, with every layer in its own group. A page may contain two maps, so names in it have a prefix.
    pub(crate) fn page_svg(&self, label: &str, grounds: Grounds) -> String {
        let mut out = format!(
            "<svg class=\"map\" viewBox=\"0 0 {w:.0} {h:.0}\" width=\"{w:.0}\" height=\"{h:.0}\" data-units-per-m=\"{scale:.4}\"{corner} \
             font-family=\"DejaVu Sans, sans-serif\" font-size=\"14\" role=\"group\" aria-label=\"{label}\">",
            label = escaped(label),
            w = self.width,
            h = self.height,
            scale = self.view.map_or(1.0, |view| view.scale),
            corner = match (grounds, self.view) {
                (Grounds::All { .. }, Some(view)) => corner(&view),
                _ => String::new(),
            },
        );
        out.push_str(&self.sheet());
        if let (Some(view), Some(ground)) = (&self.view, &self.ground) {
            let mut add = |layer: Layer, uri: &str| {
                let _ = write!(
                    out,
                    "<g class=\"ly{}\" data-layer=\"{}\">{}</g>",
                    if layer.is_on() { "" } else { " off" },
                    layer.key(),
                    Self::image(view, ground, uri)
                );
            };
            add(Layer::Visits, &ground.visits_uri());
            if let Grounds::All { allowed_h, end_s } = grounds {
                if let Some(uri) = ground.waits_uri() {
                    add(Layer::Waits, &uri);
                }
                if let Some(allowed_h) = allowed_h {
                    add(Layer::Overdue, &ground.overdue_uri(allowed_h * 3600.0, end_s));
                }
            }
        }
        out.push_str(&self.marks);
        out.push_str("</svg>");
        out
    }

    /// Scale bar and north for below the page's map, with the same width.
    pub(crate) fn scale_svg(&self, findings: &Findings) -> Option<String> {
        let view = self.view?;
        let (unit, unit_m) = legend::scale_unit(self.voice);
        let mut inside = String::new();
        legend::scale_and_north(self.voice, &mut inside, findings, &view, 0.0);
        Some(format!(
            "<svg class=\"scale\" data-unit=\"{unit}\" data-unit-m=\"{unit_m}\" data-decimal=\"{}\" viewBox=\"0 0 {:.0} {:.0}\" font-family=\"DejaVu Sans, sans-serif\" \
             font-size=\"14\" aria-hidden=\"true\">{inside}</svg>",
            crate::words::numerals(self.voice).decimal,
            self.width,
            legend::SCALE_HEIGHT - 6.0
        ))
    }
}

/// Where the upper left corner is, for anyone who asks which place is under a point, and which text describes the map.
fn corner(view: &View) -> String {
    let corner = view.place(0.0, 0.0);
    format!(
        " data-west-m=\"{:.3}\" data-north-m=\"{:.3}\" aria-describedby=\"about-map\"",
        corner.east_m, corner.north_m
    )
}

/// Which pictures of the ground a page contains.
#[derive(Clone, Copy)]
pub(crate) enum Grounds {
    /// Visits alone.
    Visits,
    /// Usual waits too, and overdue ground if a longest allowed wait is known.
    All {
        /// Longest allowed wait.
        allowed_h: Option<f64>,
        /// End of the log.
        end_s: f64,
    },
}

/// The map as SVG, with title and legend.
pub fn map_svg(findings: &Findings, voice: Voice) -> String {
    Drawing::of(voice, findings, Furniture::Full).svg()
}

/// The colour of the sheet as numbers.
#[cfg(feature = "picture")]
pub(crate) const SHEET_RGB: crate::ramp::Rgb = [0xef, 0xeb, 0xdf];
