//! How fast was the work, how straight the way, how evenly did it spread, and what did the wheels do?

use super::in_lanes::long_legs;
use super::{VisitSpread, spread};
use serde::{Deserialize, Serialize};
use tussock_coverage::swath::Sweep;
use tussock_coverage::visits::{self, Count};
use tussock_locate::{Piece, Vertex};
use tussock_plane::Vector;
use tussock_survey::Survey;
use tussock_types::{Place, math};

/// Pace of the work.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct FieldWork {
    /// Time away from the station: driving, turning and standing; without a known station all but silences and being carried.
    pub field_s: f64,
    /// Newly visited area over that time.
    pub area_per_h_m2: f64,
    /// The same over what width and speed allow without turns, halts and overlap.
    pub field_efficiency_fraction: f64,
    /// Driven path over visited area.
    pub path_per_area_m_per_m2: f64,
}

/// Shape of the way.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct WayShape {
    /// Length of the stretches on which straightness is read: it depends on the scale.
    pub stretch_m: f64,
    /// Distance between the ends of a stretch over its length, mean over all; null without a whole stretch.
    pub straightness_fraction: Option<f64>,
    /// From each leg of a metre or more to the next, in time order, -180 to 180; to the left is positive.
    pub turn_angles_deg: Vec<f64>,
    /// Length of the mean unit vector of these angles: 1 if all are equal, 0 if they point everywhere; null without turns.
    pub turn_agreement: Option<f64>,
}

/// Passes of the driven wheels, whose lines lie half a track to the sides of the middle.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct WheelPasses {
    /// Distance between the wheels, from the settings.
    pub track_width_m: f64,
    /// Width of ground that a wheel presses, as assumed.
    pub tyre_m: f64,
    /// Mean passes of a point of the lawn.
    pub mean_passes: f64,
    /// Part of the lawn that a wheel went over.
    pub trafficked_fraction: f64,
    /// Part of the lawn that wheels went over more than once.
    pub repeatedly_fraction: f64,
}

/// How evenly visits were spread by the end of a quarter of the driven path.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct EvennessPoint {
    /// Driven path so far.
    pub path_m: f64,
    /// Gini coefficient of the visits so far.
    pub gini: f64,
    /// The same of a Poisson law of the same mean.
    pub gini_of_poisson: f64,
}

/// Scale of straightness: a lawn's width, roughly (common practice, no source).
const STRETCH_M: f64 = 10.0;
/// Ground under a wheel (common practice, no source).
const TYRE_M: f64 = 0.1;
/// Side of the squares on which clustering is read: wider than a disc, narrower than a place (common practice, no source).
const BLOCK_M: f64 = 1.0;

pub(super) fn field_work(
    survey: &Survey<'_>,
    cut_width_m: f64,
    path_m: f64,
    visited_m2: f64,
) -> Option<FieldWork> {
    let span = tussock_survey::log_findings::span(survey, &[]);
    let field_s = span.driving_s + span.halted_s;
    let swept_m2 = cut_width_m * span.speed_mps? * field_s;
    (visited_m2 > 0.0 && field_s > 0.0).then(|| FieldWork {
        field_s,
        area_per_h_m2: visited_m2 / field_s * 3600.0,
        field_efficiency_fraction: visited_m2 / swept_m2,
        path_per_area_m_per_m2: path_m / visited_m2,
    })
}

pub(super) fn way_shape(survey: &Survey<'_>) -> WayShape {
    let pieces = || survey.tracks.iter().flat_map(|track| &track.pieces);
    let chords_m: Vec<f64> = pieces().flat_map(chords_m).collect();
    let turn_angles_deg: Vec<f64> = pieces()
        .flat_map(|piece| {
            let long = long_legs(piece);
            let angle = |pair: &[super::in_lanes::LongLeg]| {
                let (before, after) = (pair[0].along, pair[1].along);
                math::atan2(before.cross(after), before.dot(after)).to_degrees()
            };
            long.windows(2).map(angle).collect::<Vec<f64>>()
        })
        .collect();
    let turns = turn_angles_deg.len() as f64;
    let mean = |of: fn(f64) -> f64| {
        turn_angles_deg
            .iter()
            .map(|deg| of(deg.to_radians()))
            .sum::<f64>()
            / turns
    };
    WayShape {
        stretch_m: STRETCH_M,
        straightness_fraction: (!chords_m.is_empty())
            .then(|| chords_m.iter().sum::<f64>() / (STRETCH_M * chords_m.len() as f64)),
        turn_agreement: (turns > 0.0).then(|| math::hypot(mean(math::cos), mean(math::sin))),
        turn_angles_deg,
    }
}

/// Distances between the ends of consecutive stretches of an unbroken path; what is left at its end is no stretch.
fn chords_m(piece: &Piece) -> Vec<f64> {
    let (mut chords_m, mut from, mut way_m) =
        (Vec::new(), piece.vertices.first().map(|vertex| vertex.place), 0.0);
    for pair in piece.vertices.windows(2) {
        let [Vertex { place: mut at, .. }, Vertex { place: to, .. }] = [pair[0], pair[1]];
        let mut left_m = at.distance_m(to);
        while way_m + left_m >= STRETCH_M {
            let step_m = STRETCH_M - way_m;
            at = at.towards(to, step_m / left_m);
            chords_m.extend(from.map(|from| from.distance_m(at)));
            (from, left_m, way_m) = (Some(at), left_m - step_m, 0.0);
        }
        way_m += left_m;
    }
    chords_m
}

pub(super) fn wheel_passes(survey: &Survey<'_>, count: &Count) -> Option<WheelPasses> {
    let track_width_m = survey.settings().machine.track_width_m?;
    let wheels = survey.sweeps().iter().flat_map(|sweep| {
        let aside = Vector::direction(sweep.from, sweep.to).map(Vector::left);
        [-0.5, 0.5].into_iter().filter_map(move |side| {
            let off = aside?;
            let beside = |place: Place| {
                let off_m = side * track_width_m;
                Place::new(place.east_m + off_m * off.east, place.north_m + off_m * off.north)
            };
            Some(Sweep {
                from: beside(sweep.from),
                to: beside(sweep.to),
                ..*sweep
            })
        })
    });
    let histogram = again(survey, count, &wheels.collect::<Vec<Sweep>>(), TYRE_M).visit_histogram();
    let VisitSpread {
        mean_visits,
        fractions,
        ..
    } = spread(&histogram);
    let at_most_once: f64 = fractions.iter().take(2).sum();
    Some(WheelPasses {
        track_width_m,
        tyre_m: TYRE_M,
        mean_passes: mean_visits,
        trafficked_fraction: 1.0 - fractions.first().copied().unwrap_or(1.0),
        repeatedly_fraction: (1.0 - at_most_once).max(0.0),
    })
}

fn again(survey: &Survey<'_>, count: &Count, sweeps: &[Sweep], width_m: f64) -> Count {
    let away_s = survey.settings().pockets.new_pass_after_s;
    visits::count(count.lawn.clone(), sweeps, width_m, away_s, survey.span_s())
}

/// After each quarter of the path; the last is the count itself.
pub(super) fn evenness(
    survey: &Survey<'_>,
    count: &Count,
    cut_width_m: f64,
    path_m: f64,
) -> Vec<EvennessPoint> {
    let sweeps = survey.sweeps();
    let mut way_m = 0.0;
    let upto_m: Vec<f64> = sweeps
        .iter()
        .map(|sweep| {
            way_m += if sweep.driving_s > 0.0 {
                sweep.from.distance_m(sweep.to)
            } else {
                0.0
            };
            way_m
        })
        .collect();
    (1..=4)
        .map(|quarter| {
            let end = upto_m.partition_point(|upto_m| *upto_m <= 0.25 * f64::from(quarter) * way_m);
            let histogram = match quarter {
                4 => count.visit_histogram(),
                _ => again(survey, count, &sweeps[..end], cut_width_m).visit_histogram(),
            };
            let spread = spread(&histogram);
            EvennessPoint {
                path_m: 0.25 * f64::from(quarter) * path_m,
                gini: spread.gini,
                gini_of_poisson: spread.gini_of_poisson,
            }
        })
        .collect()
}

/// Moran's I of the mean visits of squares of a metre; `None` if all are alike.
pub(super) fn clustering(count: &Count) -> Option<f64> {
    let grid = count.grid;
    let side = (BLOCK_M / grid.cell_m).round().max(1.0) as usize;
    let (columns, rows) = (grid.columns.div_ceil(side), grid.rows.div_ceil(side));
    let mut sums = vec![(0_u32, 0_u32); columns * rows];
    for (column, row) in count.lawn.cells_on() {
        let (cells, visits) = &mut sums[(row / side) * columns + column / side];
        *cells += 1;
        *visits += u32::from(count.visits(column, row));
    }
    // Squares of which less than half is lawn say little.
    let least = (side * side / 2) as u32;
    let value = |(cells, visits): &(u32, u32)| {
        (*cells >= least.max(1)).then(|| f64::from(*visits) / f64::from(*cells))
    };
    morans_i(columns, &sums.iter().map(value).collect::<Vec<_>>())
}

/// Moran's I of values on squares, row by row, between neighbours that share a side (Moran 1950); `None` if all are alike or none adjoin.
pub fn morans_i(columns: usize, values: &[Option<f64>]) -> Option<f64> {
    let known = || values.iter().flatten();
    let count = known().count() as f64;
    let mean = known().sum::<f64>() / count;
    let (mut together, mut pairs) = (0.0, 0.0);
    for (at, value) in values.iter().enumerate() {
        let beside = (at % columns + 1 < columns).then_some(at + 1);
        for next in beside.into_iter().chain([at + columns]) {
            if let (Some(one), Some(Some(other))) = (value, values.get(next)) {
                together += (one - mean) * (other - mean);
                pairs += 1.0;
            }
        }
    }
    let squares = known().map(|value| (value - mean).powi(2)).sum::<f64>();
    (squares > 0.0 && pairs > 0.0).then(|| together / pairs / (squares / count))
}
