//! Which legs passed within r metres of this place?
//!
//! An R-tree over straight legs (Guttman 1984; bulk loading after Leutenegger, Lopez & Edgington 1997), from `rstar`: loaded
//! once, envelopes cached, never changed afterwards.
//!
//! Long legs are cut into pieces, because the envelope of a slanting leg covers ground that is far from the leg.
//!
//! Exact: the answers are the same as from looking at every leg (tested). Legs with a coordinate that is not finite keep
//! their number but are never found.
//!
//! Cost: building n log n, 120 bytes per piece, at most sixteen pieces per leg on average; a query log n plus its answers.

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
        place.off_piece_m(self.from, self.to)
    }

    /// Length.
    pub fn length_m(&self) -> f64 {
        self.from.distance_m(self.to)
    }
}

/// The first distance that is searched for the nearest leg, and how often it is doubled.
const FIRST_REACH_M: f64 = 0.25;
const REACHES: u32 = 5;

/// A leg of this length or less is one piece.
const PIECE_M: f64 = 2.0;
/// No more than this many pieces per leg are made on average; they become longer instead.
const PIECES_A_LEG: f64 = 16.0;

type IndexedLeg = CachedEnvelope<GeomWithData<Line<[f64; 2]>, u32>>;

/// Legs that can be searched by place.
#[derive(Clone, Debug)]
pub struct LegIndex {
    legs: Vec<Leg>,
    tree: RTree<IndexedLeg>,
    /// The ends of pieces lie this close to their leg.
    rounding_m: f64,
}

impl LegIndex {
    /// Indexes legs; they keep their numbers.
    pub fn build(legs: Vec<Leg>) -> Self {
        let sound = || {
            legs.iter().zip(0u32..).filter(|(leg, _)| {
                [leg.from, leg.to]
                    .iter()
                    .all(|place| place.east_m.is_finite() && place.north_m.is_finite())
            })
        };
        let whole_m: f64 = sound().map(|(leg, _)| leg.length_m()).sum();
        let coordinates = sound().flat_map(|(leg, _)| [leg.from, leg.to]);
        let farthest_m = coordinates.fold(0.0, |most: f64, place| {
            most.max(place.east_m.abs()).max(place.north_m.abs())
        });
        let piece_m = PIECE_M.max(whole_m / (PIECES_A_LEG * legs.len() as f64));
        let entries = sound()
            .flat_map(|(leg, number)| {
                let length_m = leg.length_m();
                // Farther than any number is: such a leg stays whole.
                let pieces = if length_m.is_finite() && piece_m.is_finite() {
                    (length_m / piece_m).ceil().max(1.0) as u32
                } else {
                    1
                };
                let at = move |piece: u32| {
                    if piece == pieces {
                        return [leg.to.east_m, leg.to.north_m];
                    }
                    let share = f64::from(piece) / f64::from(pieces);
                    [
                        leg.from.east_m + share * (leg.to.east_m - leg.from.east_m),
                        leg.from.north_m + share * (leg.to.north_m - leg.from.north_m),
                    ]
                };
                (0..pieces).map(move |piece| {
                    let line = Line::new(at(piece), at(piece + 1));
                    CachedEnvelope::new(GeomWithData::new(line, number))
                })
            })
            .collect();
        Self {
            tree: RTree::bulk_load(entries),
            rounding_m: 4.0 * f64::EPSILON * farthest_m,
            legs,
        }
    }

    /// The legs by number.
    pub fn legs(&self) -> &[Leg] {
        &self.legs
    }

    /// Numbers of the legs that come within a distance of a place, in ascending order.
    pub fn within(&self, place: Place, radius_m: f64) -> Vec<usize> {
        let mut numbers: Vec<usize> = self
            .candidates(place, radius_m)
            .filter(|&number| self.legs[number].distance_m(place) <= radius_m)
            .collect();
        numbers.sort_unstable();
        numbers.dedup();
        numbers
    }

    /// Number and distance of the nearest leg, the first of several at the same distance; `None` without legs.
    pub fn nearest(&self, place: Place) -> Option<(usize, f64)> {
        if !(place.east_m.is_finite() && place.north_m.is_finite()) {
            return None;
        }
        // Long legs overlap, so the tree's own nearest-first search looks at many of them; mostly a leg is close by.
        let mut reach_m = FIRST_REACH_M;
        for _ in 0..REACHES {
            let nearest = self
                .candidates(place, reach_m)
                .map(|number| (number, self.legs[number].distance_m(place)))
                .min_by(|a, b| a.1.total_cmp(&b.1).then(a.0.cmp(&b.0)));
            // Whatever is nearer than this distance has been checked.
            if let Some(nearest) = nearest.filter(|(_, distance_m)| *distance_m <= reach_m) {
                return Some(nearest);
            }
            reach_m *= 2.0;
        }
        let found = self.tree.nearest_neighbor([place.east_m, place.north_m])?.data as usize;
        // The tree's own arithmetic differs from ours by rounding: check all legs again that could be as near.
        let bound_m = self.legs[found].distance_m(place);
        self.candidates(place, bound_m)
            .map(|number| (number, self.legs[number].distance_m(place)))
            .chain([(found, bound_m)])
            .min_by(|a, b| a.1.total_cmp(&b.1).then(a.0.cmp(&b.0)))
    }

    /// Legs whose envelope meets the square around a place.
    fn candidates(&self, place: Place, radius_m: f64) -> impl Iterator<Item = usize> {
        let is_sound = place.east_m.is_finite() && place.north_m.is_finite() && radius_m >= 0.0;
        // Slightly wider than requested, so that rounding in the square's corners loses nothing.
        let reach_m = radius_m
            + self.rounding_m
            + 1e-9 * (1.0 + place.east_m.abs().max(place.north_m.abs()) + radius_m);
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
