//! What does the garden look like from above, with all that was found?
//!
//! North is up; one scale for both axes. From the ground upwards: visits as squares (pale to dark), the lawn's
//! outline, what was installed in quiet lines, not-yet pockets dotted, missed pockets hatched, worn lines,
//! suggestions, tape distances, stuck spots, and names. Everything can be told apart without colour: by
//! hatching, dots, shapes and letters.
//!
//! The same drawing is used for the page and for the picture; the picture adds a title and a legend, and is
//! rendered with DejaVu Sans, which ships with the crate `dejavu`, so that words appear on a machine without
//! fonts.

mod legend;
mod marks;
mod picture;
pub(crate) mod view;

use crate::{ramp, raster::Ground};
use std::fmt::Write;
use tussock_types::Findings;
use view::View;

pub(crate) use legend::samples as legend_entries;
pub use picture::map_png;

/// Ink for what was found.
pub(crate) const INK: &str = "#1c2431";
/// Quieter ink for what was installed.
pub(crate) const QUIET: &str = "#5d6470";
/// The sheet around the lawn.
pub(crate) const SHEET: &str = "#efebdf";

/// What stands around the map.
#[derive(Clone, Copy, PartialEq)]
pub(crate) enum Furniture {
    /// Title above, legend below: the map stands alone.
    Full,
    /// Scale bar and north only: the page around it says the rest.
    Bare,
}

/// Units from west to east of a map that stands alone.
const FULL_WIDTH: f64 = 1000.0;
/// The same on the page, where it is shown smaller.
const PAGE_WIDTH: f64 = 760.0;
/// A garden may be this much taller than wide before it is drawn smaller.
const TALLEST: f64 = 1.15;

/// A map in layers, so that the picture can put its own ground below the marks.
pub(crate) struct Drawing {
    pub(crate) width: f64,
    pub(crate) height: f64,
    pub(crate) view: Option<View>,
    pub(crate) ground: Option<Ground>,
    /// Everything above the ground.
    pub(crate) marks: String,
}

/// Text for inside an SVG element or attribute.
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
    pub(crate) fn of(findings: &Findings, furniture: Furniture) -> Self {
        let (max_width, top) = match furniture {
            Furniture::Full => (FULL_WIDTH, legend::TITLE_HEIGHT),
            Furniture::Bare => (PAGE_WIDTH, 0.0),
        };
        let view = View::of(findings, max_width, max_width * TALLEST).map(|view| view.below(top));
        let ground = findings.cells.as_ref().and_then(Ground::of);
        let mut marks = String::new();
        let Some(view) = view else {
            let (width, height) = (max_width, max_width * 0.3);
            legend::nothing(&mut marks, width, height);
            return Self {
                width,
                height,
                view: None,
                ground: None,
                marks,
            };
        };
        let width = match furniture {
            // A title and a legend need room even above a garden that is tall and narrow.
            Furniture::Full => view.width.max(FULL_WIDTH * 0.72),
            Furniture::Bare => view.width,
        };
        marks::draw(&mut marks, findings, &view, ground.is_some());
        let foot = view.top + view.height;
        legend::scale_and_north(&mut marks, findings, &view, foot);
        let mut height = foot + legend::SCALE_HEIGHT;
        if furniture == Furniture::Full {
            legend::title(&mut marks, findings);
            height = legend::full(&mut marks, findings, ground.as_ref(), width, height);
        }
        Self {
            width,
            height,
            view: Some(view),
            ground,
            marks,
        }
    }

    /// The opening tag with the patterns.
    fn head(&self) -> String {
        format!(
            "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 {w:.0} {h:.0}\" width=\"{w:.0}\" \
             height=\"{h:.0}\" font-family=\"DejaVu Sans, Verdana, sans-serif\" font-size=\"14\" \
             class=\"map\" role=\"img\" aria-label=\"Map of the lawn: visits, missed ground, stuck spots\">\
             <defs><pattern id=\"hatch\" width=\"9\" height=\"9\" patternUnits=\"userSpaceOnUse\" \
             patternTransform=\"rotate(45)\"><rect width=\"9\" height=\"9\" fill=\"#fffefa\"/><rect \
             width=\"2.6\" height=\"9\" fill=\"{INK}\"/></pattern></defs>",
            w = self.width,
            h = self.height,
        )
    }

    /// The marks alone, on clear ground.
    pub(crate) fn marks_svg(&self) -> String {
        format!("{}{}</svg>", self.head(), self.marks)
    }

    /// The whole map.
    pub(crate) fn svg(&self) -> String {
        let mut out = self.head();
        let _ = write!(
            out,
            "<rect width=\"{:.0}\" height=\"{:.0}\" fill=\"{SHEET}\"/>",
            self.width, self.height
        );
        if let (Some(view), Some(ground)) = (&self.view, &self.ground) {
            let grid = ground.grid;
            let north_m = grid.north_min_m + grid.rows as f64 * grid.cell_m;
            let (x, y) = view.at(tussock_types::Place::new(grid.east_min_m, north_m));
            let _ = write!(
                out,
                "<image x=\"{x:.2}\" y=\"{y:.2}\" width=\"{:.2}\" height=\"{:.2}\" \
                 preserveAspectRatio=\"none\" style=\"image-rendering:pixelated\" href=\"{}\"/>",
                grid.columns as f64 * grid.cell_m * view.scale,
                grid.rows as f64 * grid.cell_m * view.scale,
                ground.visits_uri()
            );
        }
        out.push_str(&self.marks);
        out.push_str("</svg>");
        out
    }
}

/// The map as SVG, with title and legend.
pub fn map_svg(findings: &Findings) -> String {
    Drawing::of(findings, Furniture::Full).svg()
}

/// The colour of the sheet as numbers.
pub(crate) const SHEET_RGB: ramp::Rgb = [0xef, 0xeb, 0xdf];
