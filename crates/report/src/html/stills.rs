//! Six still maps of how the lawn filled up.
//!
//! Squares know the clock time at which they were first driven over, while the maps are at even steps of driving time. The
//! visited fraction, which is known for both, is the bridge: the clock time of a map is the one at which as much ground had
//! been driven over as at its driving hour. Approximate to within the time that one square takes to fill.

use crate::map::{INK, escaped, view::View};
use crate::messages::Voice;
use crate::messages::say;
use crate::{raster::Ground, words};
use serde::Serialize;
use tussock_types::{Findings, OverTime};

/// Number of maps.
const STILLS: usize = 6;
/// Units from west to east.
const WIDTH: f64 = 300.0;

/// One map with its words.
#[derive(Serialize)]
pub(super) struct Still {
    pub(super) svg: String,
    pub(super) label: String,
    pub(super) text: String,
}

/// The value of a curve at a point, linear between its samples.
fn at(xs: &[f64], ys: &[f64], x: f64) -> Option<f64> {
    let upper = xs.iter().position(|&next| next >= x)?;
    let (x1, y1) = (xs[upper], *ys.get(upper)?);
    let Some(lower) = upper.checked_sub(1) else {
        return Some(y1);
    };
    let (x0, y0) = (xs[lower], *ys.get(lower)?);
    Some(if x1 > x0 {
        y0 + (y1 - y0) * (x - x0) / (x1 - x0)
    } else {
        y1
    })
}

/// Driving hour and visited fraction of each map.
fn moments(over_time: &OverTime) -> Option<Vec<(f64, f64)>> {
    let end_h = *over_time.driving_h.last()?;
    (1..=STILLS)
        .map(|step| {
            let hour = end_h * step as f64 / STILLS as f64;
            Some((hour, at(&over_time.driving_h, &over_time.visited_fraction, hour)?))
        })
        .collect()
}

/// The maps; none without squares or without a curve over time.
pub(super) fn stills(voice: Voice, findings: &Findings) -> Vec<Still> {
    let Some(ground) = findings.cells.as_ref().and_then(Ground::of) else {
        return Vec::new();
    };
    let Some(moments) = findings.over_time.as_ref().and_then(moments) else {
        return Vec::new();
    };
    let Some(view) = View::of(findings, WIDTH, WIDTH) else {
        return Vec::new();
    };
    let Some(&(_, last)) = moments.last() else {
        return Vec::new();
    };
    let shares: Vec<f64> = moments
        .iter()
        .map(|(_, fraction)| if last > 0.0 { fraction / last } else { 1.0 })
        .collect();
    let mut times_s = ground.times_of_shares(&shares);
    if let Some(time_s) = times_s.last_mut() {
        *time_s = ground.end_s();
    }
    let outline: String = findings
        .lawn_outline
        .iter()
        .map(|part| view.rings(part))
        .collect();
    let grid = ground.grid;
    let north_m = grid.north_min_m + grid.rows as f64 * grid.cell_m;
    let (x, y) = view.at(tussock_types::Place::new(grid.east_min_m, north_m));
    let size = |squares: usize| squares as f64 * grid.cell_m * view.scale;
    let mut since_s = f64::NEG_INFINITY;
    let mut before = 0.0;
    let mut stills = Vec::new();
    for (index, (&(hour, fraction), &until_s)) in moments.iter().zip(&times_s).enumerate() {
        // The outline is written once and used again.
        let outline = match index {
            0 => format!(
                "<path id=\"lawn\" d=\"{outline}\" fill=\"none\" stroke=\"{INK}\" stroke-width=\"1.1\"/>"
            ),
            _ => "<use href=\"#lawn\"/>".to_owned(),
        };
        let svg = format!(
            "<svg viewBox=\"0 0 {:.0} {:.0}\" role=\"img\" aria-label=\"{}\"><image x=\"{x:.2}\" \
             y=\"{y:.2}\" width=\"{:.2}\" height=\"{:.2}\" preserveAspectRatio=\"none\" \
             href=\"{}\"/>{outline}</svg>",
            view.width,
            view.height,
            escaped(&say!(voice, "lawn-after", hours = words::hours(voice, hour))),
            size(grid.columns),
            size(grid.rows),
            ground.filling_uri(since_s, until_s)
        );
        stills.push(Still {
            svg,
            label: words::hours(voice, hour),
            text: say!(
                voice,
                "still-gained",
                percent = words::percent(voice, fraction),
                points = words::number(voice, (fraction - before) * 100.0, 1)
            ),
        });
        since_s = until_s;
        before = fraction;
    }
    stills
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_curve_is_read_between_its_samples() {
        let (xs, ys) = ([0.0, 2.0, 4.0], [0.0, 0.5, 0.6]);
        assert_eq!(at(&xs, &ys, 1.0), Some(0.25));
        assert_eq!(at(&xs, &ys, 4.0), Some(0.6));
        assert_eq!(at(&xs, &ys, 0.0), Some(0.0));
        assert_eq!(at(&xs, &ys, 4.1), None);
    }
}
