//! Which legs are lanes, and how far apart do they lie?
//!
//! A lane is a long leg that runs back beside the long leg before. The guess of the pattern asks how much of the path is such, and the
//! measures ask how far neighbours are apart: both read the same pairs.

use super::LEAST_LEG_M;
use serde::{Deserialize, Serialize};
use tussock_locate::{PathMethod, Piece};
use tussock_plane::Vector;
use tussock_survey::Survey;
use tussock_types::{Place, math};

/// With larger errors lanes merge into one band.
pub(super) const MOST_ERROR_M: f64 = 0.3;
/// Legs of two adjacent lanes differ by less than this (cosine of 8 degrees).
const BESIDE_COS: f64 = 0.990;
/// So many lanes in a row, each beside the one before: chance turns a machine straight back once in a while, not three times.
const LEAST_CHAIN: usize = 4;
/// Neighbours are no farther apart than this many cutting widths.
pub(super) const FAR_BESIDE_WIDTHS: f64 = 5.0;
/// Part of the path in lanes from which on their spacing is that of a pattern.
const LEAST_SHARE: f64 = 0.2;

/// How far apart consecutive lanes lie.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct LaneSpacing {
    /// Pairs of lanes that follow each other.
    pub pairs: u64,
    /// Median distance between their middle lines.
    pub spacing_m: f64,
    /// A tenth of the pairs lie closer.
    pub spacing_p10_m: f64,
    /// A tenth of the pairs lie farther apart.
    pub spacing_p90_m: f64,
    /// Cutting width less the spacing: ground that two neighbouring passes share; negative if a strip is left between them.
    pub overlap_m: f64,
    /// The same over the cutting width.
    pub overlap_fraction: f64,
}

/// A long leg.
pub(super) struct LongLeg {
    from: Place,
    to: Place,
    pub(super) along: Vector,
    pub(super) length_m: f64,
}

impl LongLeg {
    /// Distance of another leg's middle from the line of this one.
    fn aside_m(&self, other: &Self) -> f64 {
        let middle = other.from.towards(other.to, 0.5);
        self.along.cross(Vector::between(self.from, middle)).abs()
    }
}

pub(super) fn long_legs(piece: &Piece) -> Vec<LongLeg> {
    let legs = piece.vertices.windows(2).filter_map(|pair| {
        let (from, to) = (pair[0].place, pair[1].place);
        Some(LongLeg {
            from,
            to,
            along: Vector::direction(from, to)?,
            length_m: from.distance_m(to),
        })
    });
    legs.filter(|leg| leg.length_m >= LEAST_LEG_M).collect()
}

/// Lanes of a path.
#[derive(Default)]
pub(super) struct InLanes {
    /// Their length.
    pub(super) path_m: f64,
    /// From each to the next.
    spacings_m: Vec<f64>,
}

impl InLanes {
    /// Adds the long legs of which several in a row run back beside the one before.
    pub(super) fn add(&mut self, long: &[LongLeg], beside_m: f64) {
        let (mut first, mut row_m) = (0, Vec::new());
        for end in 1..=long.len() {
            if let Some(b) = long.get(end) {
                let a = &long[end - 1];
                let turned = a.along.dot(b.along);
                // The way across from the end of the one to the line of the other: the next lane begins beside the end.
                let off = Vector::between(a.to, b.from);
                let (aside_m, along_m) = (a.along.cross(off).abs(), a.along.dot(off).abs());
                if turned <= -BESIDE_COS && aside_m <= beside_m && along_m <= LEAST_LEG_M + beside_m {
                    row_m.push(0.5 * (a.aside_m(b) + b.aside_m(a)));
                    continue;
                }
                // A lane that is driven in two legs goes straight on, and so does a curved leg.
                if turned >= BESIDE_COS && aside_m <= 0.5 * beside_m && along_m <= LEAST_LEG_M {
                    continue;
                }
            }
            if row_m.len() + 1 >= LEAST_CHAIN {
                self.path_m += long[first..end].iter().map(|leg| leg.length_m).sum::<f64>();
                self.spacings_m.append(&mut row_m);
            }
            first = end;
            row_m.clear();
        }
    }
}

/// Spacing of lanes; `None` where the path is not in lanes, or where positions do not show them.
pub(super) fn spacing(survey: &Survey<'_>, cut_width_m: f64, path_m: f64) -> Option<LaneSpacing> {
    let shows = |track: &tussock_locate::Track| track.method != PathMethod::Chords;
    if survey.position_error_m() > MOST_ERROR_M || !survey.tracks.iter().all(shows) {
        return None;
    }
    let mut lanes = InLanes::default();
    for piece in survey.tracks.iter().flat_map(|track| &track.pieces) {
        lanes.add(&long_legs(piece), FAR_BESIDE_WIDTHS * cut_width_m);
    }
    if lanes.path_m < LEAST_SHARE * path_m {
        return None;
    }
    lanes.spacings_m.sort_by(f64::total_cmp);
    let spacing_m = math::quantile(&lanes.spacings_m, 0.5)?;
    Some(LaneSpacing {
        pairs: lanes.spacings_m.len() as u64,
        spacing_m,
        spacing_p10_m: math::quantile(&lanes.spacings_m, 0.1)?,
        spacing_p90_m: math::quantile(&lanes.spacings_m, 0.9)?,
        overlap_m: cut_width_m - spacing_m,
        overlap_fraction: 1.0 - spacing_m / cut_width_m,
    })
}
