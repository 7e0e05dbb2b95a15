//! On which side of a cell's edge is a place?
//!
//! Sums of doubles that are kept exactly, as expansions whose parts do not overlap (Shewchuk 1997, Adaptive precision
//! floating-point arithmetic, DOI 10.1007/PL00009321): the sign of `count * (p - o) x b - edge * a x b` comes out right
//! however close to the edge the place lies. Needed only if plain arithmetic cannot decide.

use std::cmp::Ordering;
use tussock_types::Place;

/// A number as the unevaluated sum of doubles, smallest first, none overlapping.
#[derive(Default)]
struct Expansion(Vec<f64>);

/// `a + b` as rounded sum and what the rounding lost (Knuth).
fn two_sum(a: f64, b: f64) -> (f64, f64) {
    let sum = a + b;
    let shared = sum - a;
    (sum, (a - (sum - shared)) + (b - shared))
}

/// `a b` as rounded product and what the rounding lost.
fn two_product(a: f64, b: f64) -> (f64, f64) {
    let product = a * b;
    (product, a.mul_add(b, -product))
}

impl Expansion {
    /// Adds a double; nothing is lost.
    fn add(&mut self, value: f64) {
        let mut carry = value;
        for part in &mut self.0 {
            let (sum, lost) = two_sum(carry, *part);
            *part = lost;
            carry = sum;
        }
        self.0.push(carry);
    }

    /// Adds the product of three doubles.
    fn add_product(&mut self, a: f64, b: f64, c: f64) {
        let (high, low) = two_product(a, b);
        for part in [high, low] {
            let (high, low) = two_product(part, c);
            self.add(low);
            self.add(high);
        }
    }

    /// Adds `times * (a x b)` of two vectors whose coordinates are differences kept whole.
    fn add_cross(&mut self, a: [(f64, f64); 2], b: [(f64, f64); 2], times: f64) {
        for (one, other, sign) in [(a[0], b[1], times), (a[1], b[0], -times)] {
            for first in [one.0, one.1] {
                for second in [other.0, other.1] {
                    self.add_product(first, second, sign);
                }
            }
        }
    }

    /// How it compares with zero: the largest non-zero part outweighs everything below it.
    fn sign(&self) -> Ordering {
        let largest = self.0.iter().rev().find(|part| **part != 0.0);
        largest.map_or(Ordering::Equal, |part| part.total_cmp(&0.0))
    }
}

fn difference(to: Place, from: Place) -> [(f64, f64); 2] {
    [
        two_sum(to.east_m, -from.east_m),
        two_sum(to.north_m, -from.north_m),
    ]
}

/// How `count * ((place - origin) x other)` compares with `edge * ((end - origin) x other)`, where `other` is the vector from
/// the origin to `other_end`.
pub(super) fn side_of_edge(
    place: Place,
    origin: Place,
    end: Place,
    other_end: Place,
    count: f64,
    edge: f64,
) -> Ordering {
    let other = difference(other_end, origin);
    let mut sum = Expansion::default();
    sum.add_cross(difference(place, origin), other, count);
    sum.add_cross(difference(end, origin), other, -edge);
    sum.sign()
}
