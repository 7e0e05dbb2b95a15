//! How do squares become a small picture?
//!
//! One pixel per square, colours from a palette, PNG (ISO/IEC 15948) with row 0 in the north. Squares that are mostly off
//! the lawn are transparent. Ground with more than [`MAX_PIXELS`] squares is combined first, by means over the lawn, so that
//! the page stays small.

use crate::ramp::{NEVER, Rgb, VisitScale};
use base64::{Engine, engine::general_purpose::STANDARD};
use tussock_types::math;
use tussock_types::{Cells, Grid};

/// Pixels of one picture.
const MAX_PIXELS: usize = 160_000;

/// Squares for drawing.
pub(crate) struct Ground {
    pub(crate) grid: Grid,
    lawn: Vec<f32>,
    /// Visits, mean over the square's lawn.
    visits: Vec<f32>,
    /// First visit, NaN if never.
    first_s: Vec<f32>,
    /// Last visit, NaN if never.
    last_s: Vec<f32>,
    /// Lawn of the square that was driven over, as a fraction of the square.
    seen: Vec<f32>,
    pub(crate) scale: VisitScale,
}

impl Ground {
    /// Combines squares until they fit; `None` if the columns do not have the length that the grid requires.
    pub(crate) fn of(cells: &Cells) -> Option<Self> {
        let grid = cells.grid;
        let count = grid.columns.checked_mul(grid.rows)?;
        let columns = [
            &cells.lawn_fraction,
            &cells.visited_probability,
            &cells.visits_expected,
            &cells.first_visit_s,
            &cells.last_visit_s,
        ];
        if count == 0 || columns.iter().any(|column| column.len() != count) {
            return None;
        }
        let k = (count as f64 / MAX_PIXELS as f64).sqrt().ceil().max(1.0) as usize;
        let coarse = Grid {
            cell_m: grid.cell_m * k as f64,
            columns: grid.columns.div_ceil(k),
            rows: grid.rows.div_ceil(k),
            ..grid
        };
        let pixels = coarse.cells();
        let mut ground = Self {
            grid: coarse,
            lawn: vec![0.0; pixels],
            visits: vec![0.0; pixels],
            first_s: vec![f32::NAN; pixels],
            last_s: vec![f32::NAN; pixels],
            seen: vec![0.0; pixels],
            scale: VisitScale { most: 4.0 },
        };
        for square in 0..count {
            let lawn = cells.lawn_fraction[square];
            if lawn.is_nan() || lawn <= 0.0 {
                continue;
            }
            let pixel = square / grid.columns / k * coarse.columns + square % grid.columns / k;
            ground.lawn[pixel] += lawn;
            ground.visits[pixel] += lawn * finite(cells.visits_expected[square]);
            ground.seen[pixel] += lawn * finite(cells.visited_probability[square]);
            ground.first_s[pixel] = ground.first_s[pixel].min(cells.first_visit_s[square]);
            ground.last_s[pixel] = ground.last_s[pixel].max(cells.last_visit_s[square]);
        }
        let share = 1.0 / (k * k) as f32;
        for pixel in 0..pixels {
            if ground.lawn[pixel] > 0.0 {
                ground.visits[pixel] /= ground.lawn[pixel];
            }
            ground.lawn[pixel] *= share;
            ground.seen[pixel] *= share;
        }
        ground.scale = VisitScale::of(ground.visits.iter().copied());
        Some(ground)
    }

    /// True if the pixel shows lawn.
    fn is_shown(&self, pixel: usize) -> bool {
        self.lawn[pixel] >= 0.5
    }

    /// The colour of the lawn's visits at a pixel; `None` off the lawn.
    #[cfg(feature = "picture")]
    pub(crate) fn visit_colour(&self, pixel: usize) -> Option<Rgb> {
        self.is_shown(pixel)
            .then(|| self.scale.colour(f64::from(self.visits[pixel])))
    }

    /// The visits as a picture.
    pub(crate) fn visits_uri(&self) -> String {
        // Palette: 0 is transparent, 1 is never, the rest follow the scale.
        const LEVELS: usize = 200;
        let level = |visits: f64| -> u8 {
            if visits < 1.0 {
                return 1 + (visits * 20.0) as u8;
            }
            21 + (self.scale.position(visits) * (LEVELS - 1) as f64).round() as u8
        };
        let mut palette: Vec<Rgb> = vec![NEVER];
        palette.extend((0..20).map(|step| self.scale.colour(f64::from(step) / 20.0)));
        palette.extend((0..LEVELS).map(|step| {
            let visits = math::powf(self.scale.most, step as f64 / (LEVELS - 1) as f64);
            self.scale.colour(visits)
        }));
        let pixels = self.pixels(|pixel| level(f64::from(self.visits[pixel])));
        uri(&png(self.grid, &palette, &pixels))
    }

    /// Usual time between two visits of a pixel, in seconds: the time from first to last visit over the number of intervals.
    /// The unfinished wait at the end is not included.
    fn wait_s(&self, pixel: usize) -> Option<f64> {
        let between = f64::from(self.visits[pixel]) - 1.0;
        let wait_s = f64::from(self.last_s[pixel] - self.first_s[pixel]) / between;
        (between >= 0.5 && wait_s.is_finite() && wait_s > 0.0).then_some(wait_s)
    }

    /// Shortest and longest usual wait that the scale of waits distinguishes, in hours; `None` without any.
    pub(crate) fn waits_h(&self) -> Option<(f64, f64)> {
        let mut waits: Vec<f64> = (0..self.lawn.len())
            .filter(|&pixel| self.is_shown(pixel))
            .filter_map(|pixel| self.wait_s(pixel))
            .collect();
        waits.sort_unstable_by(f64::total_cmp);
        let at = |part: f64| waits.get((waits.len() as f64 * part) as usize).copied();
        let (low_s, high_s) = (at(0.02)?, at(0.98)?);
        (high_s > low_s).then_some((low_s / 3600.0, high_s / 3600.0))
    }

    /// Usual waits as a picture: dark is often, pale is seldom, paper is less than twice.
    pub(crate) fn waits_uri(&self) -> Option<String> {
        const LEVELS: usize = 200;
        let (low_h, high_h) = self.waits_h()?;
        let mut palette: Vec<Rgb> = vec![NEVER, NEVER];
        palette.extend((0..LEVELS).map(|step| wait_colour(step as f64 / (LEVELS - 1) as f64)));
        let pixels = self.pixels(|pixel| match self.wait_s(pixel) {
            None => 1,
            Some(wait_s) => {
                let share = math::ln(wait_s / 3600.0 / low_h) / math::ln(high_h / low_h);
                2 + (share.clamp(0.0, 1.0) * (LEVELS - 1) as f64).round() as u8
            }
        });
        Some(uri(&png(self.grid, &palette, &pixels)))
    }

    /// Ground whose last visit was longer ago than allowed, hatched; the rest in straw colour.
    pub(crate) fn overdue_uri(&self, allowed_s: f64, end_s: f64) -> String {
        let palette = [NEVER, NEVER, BEFORE, [28, 36, 49]];
        let columns = self.grid.columns;
        let pixels = self.pixels(|pixel| {
            let last_s = f64::from(self.last_s[pixel]);
            let is_line = (pixel % columns + pixel / columns).is_multiple_of(4);
            match last_s.is_nan() || end_s - last_s > allowed_s {
                true if is_line => 3,
                true => 1,
                false => 2,
            }
        });
        uri(&png(self.grid, &palette, &pixels))
    }

    /// Ground at one moment: driven over before `since_s`, since then until `until_s`, or not at all.
    pub(crate) fn filling_uri(&self, since_s: f64, until_s: f64) -> String {
        let palette = [NEVER, NEVER, BEFORE, SINCE];
        let pixels = self.pixels(|pixel| match f64::from(self.first_s[pixel]) {
            first_s if first_s <= since_s => 2,
            first_s if first_s <= until_s => 3,
            _ => 1,
        });
        uri(&png(self.grid, &palette, &pixels))
    }

    /// Times at which given shares (of all the ground that was driven over) had been driven over.
    pub(crate) fn times_of_shares(&self, shares: &[f64]) -> Vec<f64> {
        let mut order: Vec<usize> = (0..self.lawn.len())
            .filter(|&pixel| self.first_s[pixel].is_finite())
            .collect();
        order.sort_unstable_by(|&a, &b| self.first_s[a].total_cmp(&self.first_s[b]));
        let total: f64 = order.iter().map(|&pixel| f64::from(self.seen[pixel])).sum();
        let mut times = vec![f64::INFINITY; shares.len()];
        let mut sum = 0.0;
        for pixel in order {
            sum += f64::from(self.seen[pixel]);
            for (time, &share) in times.iter_mut().zip(shares) {
                if time.is_infinite() && sum >= share * total * (1.0 - 1e-9) {
                    *time = f64::from(self.first_s[pixel]);
                }
            }
        }
        times
    }

    /// Last first visit.
    pub(crate) fn end_s(&self) -> f64 {
        self.first_s
            .iter()
            .copied()
            .filter(|s| s.is_finite())
            .fold(0.0, f32::max)
            .into()
    }

    /// Palette index of each shown pixel, row 0 in the north.
    fn pixels(&self, index: impl Fn(usize) -> u8) -> Vec<u8> {
        let columns = self.grid.columns;
        (0..self.grid.rows)
            .rev()
            .flat_map(|row| row * columns..(row + 1) * columns)
            .map(|pixel| if self.is_shown(pixel) { index(pixel) } else { 0 })
            .collect()
    }
}

/// The colour of a wait, 0 the shortest, 1 the longest.
pub(crate) fn wait_colour(fraction: f64) -> Rgb {
    crate::ramp::cividis(0.08 + 0.89 * fraction)
}

/// Driven over before.
pub(crate) const BEFORE: Rgb = [226, 205, 118];
/// Driven over since the previous map.
pub(crate) const SINCE: Rgb = [30, 58, 111];

fn finite(value: f32) -> f32 {
    if value.is_finite() { value } else { 0.0 }
}

/// Palette entry 0 is transparent. Writing to memory does not fail; if it did, the picture would be empty.
fn png(grid: Grid, palette: &[Rgb], pixels: &[u8]) -> Vec<u8> {
    let mut bytes = Vec::new();
    let size = u32::try_from(grid.columns)
        .ok()
        .zip(u32::try_from(grid.rows).ok());
    if let Some((width, height)) = size {
        let mut encoder = png::Encoder::new(&mut bytes, width, height);
        encoder.set_color(png::ColorType::Indexed);
        encoder.set_depth(png::BitDepth::Eight);
        encoder.set_palette(palette.concat());
        encoder.set_trns(vec![0u8]);
        encoder.set_compression(png::Compression::Balanced);
        let done = encoder
            .write_header()
            .and_then(|mut writer| writer.write_image_data(pixels));
        if done.is_err() {
            return Vec::new();
        }
    }
    bytes
}

/// A data URI.
pub(crate) fn uri(png: &[u8]) -> String {
    format!("data:image/png;base64,{}", STANDARD.encode(png))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn cells(columns: usize, rows: usize) -> Cells {
        let count = columns * rows;
        Cells {
            grid: Grid {
                east_min_m: 0.0,
                north_min_m: 0.0,
                cell_m: 0.1,
                columns,
                rows,
            },
            lawn_fraction: vec![1.0; count],
            visited_probability: vec![1.0; count],
            visits_expected: (0..count).map(|square| (square % 7) as f32).collect(),
            first_visit_s: (0..count).map(|square| square as f32).collect(),
            last_visit_s: (0..count).map(|square| square as f32).collect(),
        }
    }

    #[test]
    fn the_picture_has_a_pixel_a_square_and_north_on_top() {
        let mut cells = cells(3, 2);
        cells.lawn_fraction[0] = 0.2;
        cells.visits_expected = vec![9.0, 9.0, 9.0, 0.0, 0.0, 0.0];
        let ground = Ground::of(&cells).unwrap();
        let uri = ground.visits_uri();
        let bytes = STANDARD
            .decode(uri.strip_prefix("data:image/png;base64,").unwrap())
            .unwrap();
        let mut decoder = png::Decoder::new(std::io::Cursor::new(bytes));
        decoder.set_transformations(png::Transformations::EXPAND | png::Transformations::ALPHA);
        let mut reader = decoder.read_info().unwrap();
        let mut out = vec![0; reader.output_buffer_size().unwrap()];
        let info = reader.next_frame(&mut out).unwrap();
        assert_eq!((info.width, info.height), (3, 2));
        assert_eq!(&out[0..4], &[NEVER[0], NEVER[1], NEVER[2], 255]);
        assert_eq!(out[4 * 3 + 3], 0, "the south-western square is off the lawn");
        let south = &out[4 * 4..4 * 4 + 3];
        let colour = ground.visit_colour(1).unwrap();
        assert!(
            south.iter().zip(colour).all(|(a, b)| a.abs_diff(b) <= 2),
            "{south:?} {colour:?}"
        );
    }

    #[test]
    fn a_large_ground_is_gathered_and_keeps_its_sums() {
        let cells = cells(1001, 403);
        let ground = Ground::of(&cells).unwrap();
        assert!(ground.grid.cells() <= MAX_PIXELS);
        let before: f64 = cells
            .visits_expected
            .iter()
            .map(|&visits| f64::from(visits))
            .sum();
        let k2 = (ground.grid.cell_m / cells.grid.cell_m).powi(2);
        let after: f64 = ground
            .visits
            .iter()
            .zip(&ground.lawn)
            .map(|(&v, &lawn)| f64::from(v) * f64::from(lawn) * k2)
            .sum();
        assert!((before - after).abs() < 1e-3 * before, "{before} {after}");
    }

    #[test]
    fn times_of_shares_split_the_ground_evenly() {
        let ground = Ground::of(&cells(10, 10)).unwrap();
        assert_eq!(ground.times_of_shares(&[0.5, 1.0]), [49.0, 99.0]);
    }

    #[test]
    fn columns_that_do_not_fit_the_grid_are_not_drawn() {
        let mut short = cells(4, 4);
        short.visits_expected.pop();
        assert!(Ground::of(&short).is_none());
        assert!(Ground::of(&cells(0, 4)).is_none());
    }
}
