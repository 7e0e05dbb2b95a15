//! Who passed within r metres of this place?
//!
//! An R-tree over straight legs (Guttman 1984; bulk loading after Leutenegger, Lopez & Edgington 1997), from `rstar`:
//! loaded once, envelopes cached, never changed afterwards.
//!
//! Exact: the answers are those of a look at every leg (tested). Legs with a coordinate that is not finite keep
//! their number but are never found.
//!
//! Cost: building n log n, 120 bytes a leg; a question log n plus its answers.

use crate::ring::distance_to_piece_m;
use rstar::primitives::{CachedEnvelope, GeomWithData, Line};
use rstar::{AABB, RTree};
use tussock_types::Place;

/// A stretch of straight driving.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Leg {
    /// Where it began.
    pub from: Place,
    /// Where it ended.
    pub to: Place,
    /// When it began, on the clock of the trace.
    pub start_s: f64,
    /// When it ended.
    pub end_s: f64,
}

impl Leg {
    /// Distance from a place to the nearest point of the leg.
    pub fn distance_m(&self, place: Place) -> f64 {
        distance_to_piece_m(place, self.from, self.to)
    }

    /// Length.
    pub fn length_m(&self) -> f64 {
        self.from.distance_m(self.to)
    }
}

/// How far is looked first for the nearest leg, and how often twice as far.
const FIRST_REACH_M: f64 = 0.25;
const REACHES: u32 = 5;

type Entry = CachedEnvelope<GeomWithData<Line<[f64; 2]>, u32>>;

/// Legs that can be asked for by place.
#[derive(Clone, Debug)]
pub struct LegIndex {
    legs: Vec<Leg>,
    tree: RTree<Entry>,
}

impl LegIndex {
    /// Indexes legs; they keep their numbers.
    pub fn build(legs: Vec<Leg>) -> Self {
        let entries = legs
            .iter()
            .zip(0u32..)
            .filter(|(leg, _)| {
                [leg.from, leg.to]
                    .iter()
                    .all(|place| place.east_m.is_finite() && place.north_m.is_finite())
            })
            .map(|(leg, number)| {
                let line = Line::new(
                    [leg.from.east_m, leg.from.north_m],
                    [leg.to.east_m, leg.to.north_m],
                );
                CachedEnvelope::new(GeomWithData::new(line, number))
            })
            .collect();
        Self {
            legs,
            tree: RTree::bulk_load(entries),
        }
    }

    /// The legs by number.
    pub fn legs(&self) -> &[Leg] {
        &self.legs
    }

    /// Numbers of the legs that come within a distance of a place, rising.
    pub fn within(&self, place: Place, radius_m: f64) -> Vec<usize> {
        let mut numbers: Vec<usize> = self
            .candidates(place, radius_m)
            .filter(|&number| self.legs[number].distance_m(place) <= radius_m)
            .collect();
        numbers.sort_unstable();
        numbers
    }

    /// Number and distance of the nearest leg, the first of several at the same distance; `None` without legs.
    pub fn nearest(&self, place: Place) -> Option<(usize, f64)> {
        if !(place.east_m.is_finite() && place.north_m.is_finite()) {
            return None;
        }
        // Long legs overlap, so that the tree's own search from near to far looks at many of them; a leg is mostly close by.
        let mut reach_m = FIRST_REACH_M;
        for _ in 0..REACHES {
            let nearest = self
                .candidates(place, reach_m)
                .map(|number| (number, self.legs[number].distance_m(place)))
                .min_by(|a, b| a.1.total_cmp(&b.1).then(a.0.cmp(&b.0)));
            // What is nearer than the reach was looked at.
            if let Some(nearest) = nearest.filter(|(_, distance_m)| *distance_m <= reach_m) {
                return Some(nearest);
            }
            reach_m *= 2.0;
        }
        let found = self.tree.nearest_neighbor([place.east_m, place.north_m])?.data as usize;
        // The tree's own arithmetic differs from ours by rounding: look again at all that could be as near.
        let bound_m = self.legs[found].distance_m(place);
        self.candidates(place, bound_m)
            .map(|number| (number, self.legs[number].distance_m(place)))
            .chain([(found, bound_m)])
            .min_by(|a, b| a.1.total_cmp(&b.1).then(a.0.cmp(&b.0)))
    }

    /// Legs whose envelope meets the square around a place.
    fn candidates(&self, place: Place, radius_m: f64) -> impl Iterator<Item = usize> {
        let is_sound = place.east_m.is_finite() && place.north_m.is_finite() && radius_m >= 0.0;
        // A little wider than asked, so that rounding in the square's corners loses nothing.
        let reach_m = radius_m + 1e-9 * (1.0 + place.east_m.abs().max(place.north_m.abs()) + radius_m);
        let square = is_sound.then(|| {
            AABB::from_corners(
                [place.east_m - reach_m, place.north_m - reach_m],
                [place.east_m + reach_m, place.north_m + reach_m],
            )
        });
        square
            .into_iter()
            .flat_map(|square| self.tree.locate_in_envelope_intersecting(square))
            .map(|entry| entry.data as usize)
    }
}

#[cfg(test)]
#[path = "legs_tests.rs"]
mod tests;
