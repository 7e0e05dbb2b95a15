//! Which colour means how often?
//!
//! Cividis, a ramp with perceptually even steps that people with and without colour vision deficiency read alike: Nuñez,
//! Anderton & Renslow (2018), Optimizing colormaps with consideration for color vision deficiency to enable accurate
//! interpretation of scientific data, PLoS ONE 13(7): e0199239. Its 256 published colours are stored as 17 stops with linear
//! interpolation; no channel is more than 1.5 of 255 away from the table.
//!
//! On paper the ramp runs from pale to dark: ground that was never driven over stays paper white, one visit is
//! straw, many are deep blue, so that the order survives a printer without colour.

use crate::messages::Voice;
use crate::messages::say;
use crate::words::number;
use tussock_types::math;

/// An sRGB colour.
pub(crate) type Rgb = [u8; 3];

/// Stops of cividis: index in the published table, colour.
const STOPS: [(u8, Rgb); 17] = [
    (0, [0, 34, 78]),
    (19, [0, 48, 111]),
    (21, [0, 49, 112]),
    (23, [1, 50, 113]),
    (28, [18, 53, 112]),
    (34, [30, 58, 111]),
    (52, [54, 70, 108]),
    (84, [86, 92, 109]),
    (126, [123, 122, 120]),
    (147, [143, 138, 120]),
    (179, [174, 163, 113]),
    (205, [201, 185, 101]),
    (219, [217, 197, 92]),
    (232, [231, 209, 80]),
    (243, [243, 219, 66]),
    (251, [253, 227, 52]),
    (255, [254, 232, 56]),
];

/// The colour at a fraction of the ramp, 0 dark blue, 1 yellow.
pub(crate) fn cividis(fraction: f64) -> Rgb {
    let at = if fraction.is_nan() {
        0.0
    } else {
        fraction.clamp(0.0, 1.0) * 255.0
    };
    let upper = STOPS
        .iter()
        .position(|&(index, _)| f64::from(index) >= at)
        .unwrap_or(STOPS.len() - 1)
        .max(1);
    let (low, high) = (STOPS[upper - 1], STOPS[upper]);
    let share = (at - f64::from(low.0)) / f64::from(high.0 - low.0);
    mix(low.1, high.1, share)
}

/// A colour between two others.
pub(crate) fn mix(from: Rgb, to: Rgb, fraction: f64) -> Rgb {
    std::array::from_fn(|channel| {
        let (from, to) = (f64::from(from[channel]), f64::from(to[channel]));
        (from + (to - from) * fraction.clamp(0.0, 1.0)).round() as u8
    })
}

/// Ground that nothing drove over, on paper.
pub(crate) const NEVER: Rgb = [255, 254, 250];

/// How visits become colours: none is paper, one is straw, `most` and more are deep blue.
#[derive(Clone, Copy)]
pub(crate) struct VisitScale {
    /// Visits at the dark end.
    pub(crate) most: f64,
}

impl VisitScale {
    /// A scale whose end exceeds nearly all of the lawn's squares.
    pub(crate) fn of(visits: impl Iterator<Item = f32>) -> Self {
        let mut visits: Vec<f32> = visits
            .filter(|visits| visits.is_finite() && *visits > 0.0)
            .collect();
        visits.sort_unstable_by(f32::total_cmp);
        let rank = (visits.len() as f64 * 0.98) as usize;
        let most = visits.get(rank).or(visits.last()).copied().unwrap_or(4.0);
        Self {
            most: f64::from(most).clamp(4.0, 10_000.0).ceil(),
        }
    }

    /// Where on the scale a number of visits lies: 0 for one, 1 for the most. Logarithmic, because the step from one to two
    /// means as much as from ten to twenty.
    pub(crate) fn position(self, visits: f64) -> f64 {
        (math::ln(visits.max(1.0)) / math::ln(self.most)).clamp(0.0, 1.0)
    }

    /// The colour of a number of visits; below one, part of the square was missed and paper shines through.
    pub(crate) fn colour(self, visits: f64) -> Rgb {
        let position = self.position(visits);
        // The yellow end is too loud on a whole lawn: paper shines through it, and less so the darker it gets.
        let full = mix(NEVER, cividis(0.94 - 0.94 * position), 0.62 + 0.38 * position);
        mix(NEVER, full, visits)
    }

    /// Numbers to write beside the scale.
    pub(crate) fn ticks(self) -> Vec<f64> {
        let mut ticks = vec![1.0];
        let mut next = 2.0;
        while next < self.most * 0.75 {
            ticks.push(next);
            next *= 2.0;
        }
        ticks.push(self.most);
        ticks
    }

    /// The key of the scale: colours and the visits that they stand for, starting with none.
    pub(crate) fn key(self, voice: Voice) -> Vec<(String, String)> {
        let ticks = self.ticks();
        let step = |(index, visits): (usize, f64)| {
            let words = number(voice, visits, 0);
            let words = match visits {
                0.0 => say!(voice, "never"),
                _ if index == ticks.len() => words + "+",
                _ => words,
            };
            (hex(self.colour(visits)), words)
        };
        let visits = std::iter::once(0.0).chain(ticks.iter().copied());
        visits.enumerate().map(step).collect()
    }
}

/// `#rrggbb`.
pub(crate) fn hex(colour: Rgb) -> String {
    format!("#{:02x}{:02x}{:02x}", colour[0], colour[1], colour[2])
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Colours of the published table at indices between the stops.
    const BETWEEN: [(u8, Rgb); 6] = [
        (8, [0, 40, 91]),
        (20, [0, 48, 112]),
        (100, [101, 104, 112]),
        (140, [136, 133, 120]),
        (200, [196, 180, 104]),
        (250, [252, 226, 54]),
    ];

    #[test]
    fn the_ramp_follows_the_published_table_within_two_of_255() {
        for (index, colour) in BETWEEN.into_iter().chain(STOPS) {
            let drawn = cividis(f64::from(index) / 255.0);
            for channel in 0..3 {
                assert!(
                    drawn[channel].abs_diff(colour[channel]) <= 2,
                    "{index}: {drawn:?} {colour:?}"
                );
            }
        }
    }

    /// Luminance of sRGB (IEC 61966-2-1).
    fn luminance(colour: Rgb) -> f64 {
        let linear = |value: u8| {
            let value = f64::from(value) / 255.0;
            if value <= 0.04045 {
                value / 12.92
            } else {
                math::powf((value + 0.055) / 1.055, 2.4)
            }
        };
        0.2126 * linear(colour[0]) + 0.7152 * linear(colour[1]) + 0.0722 * linear(colour[2])
    }

    #[test]
    fn more_visits_are_always_darker_so_that_grey_paper_tells_the_same() {
        let scale = VisitScale { most: 24.0 };
        let mut last = luminance(scale.colour(0.0));
        for step in 1..=240 {
            let next = luminance(scale.colour(f64::from(step) / 10.0));
            assert!(next <= last + 1e-3, "{step}");
            last = next;
        }
        assert!(luminance(scale.colour(24.0)) < 0.05 && luminance(scale.colour(0.0)) > 0.95);
    }

    #[test]
    fn odd_numbers_of_visits_still_make_a_scale() {
        let scale = VisitScale::of([f32::NAN, f32::INFINITY, 0.0, -3.0].into_iter());
        assert_eq!(scale.most, 4.0);
        assert_eq!(scale.ticks(), [1.0, 2.0, 4.0]);
        assert_eq!(cividis(f64::NAN), cividis(0.0));
    }
}
