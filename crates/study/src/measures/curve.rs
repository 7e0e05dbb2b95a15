//! How did the lawn fill up?

use serde::{Deserialize, Serialize};
use tussock_coverage::swath::Sweep;
use tussock_coverage::visits;
use tussock_simulate::laws::{exhaustive_fraction, random_search_fraction};
use tussock_survey::Survey;
use tussock_survey::laws;
use tussock_survey::outings;

/// Points of a curve.
const POINTS: usize = 200;

/// The axis against which the visited fraction is drawn.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum CurveAxis {
    /// Driven path. The default: the laws are stated in swept area, so speed, halts and charging cancel out.
    #[default]
    Path,
    /// Time on the move.
    Driving,
    /// Trips from the station.
    Outings,
}

/// Visited fraction against all possible axes. All columns have one length.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Curve {
    /// The axis to draw first.
    pub axis: CurveAxis,
    /// Driven path.
    pub path_m: Vec<f64>,
    /// Time on the move.
    pub driving_h: Vec<f64>,
    /// Visited fraction.
    pub visited_fraction: Vec<f64>,
    /// Koopman's random search law for that path.
    pub random_law_fraction: Vec<f64>,
    /// The exhaustive line for that path.
    pub exhaustive_fraction: Vec<f64>,
    /// Swept area over lawn area.
    pub swept_times: Vec<f64>,
    /// The same at the end of each outing; null if no station is known.
    pub outings: Option<Vec<OutingPoint>>,
}

/// How far the lawn was filled up by the end of an outing.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct OutingPoint {
    /// Outings so far.
    pub outings: u64,
    /// Time on the move so far.
    pub driving_h: f64,
    /// Driven path so far.
    pub path_m: f64,
    /// Visited fraction so far.
    pub visited_fraction: f64,
}

impl Curve {
    /// Where the curve lies between the two laws, read where the swept area equals the lawn, or at its end.
    pub fn efficiency(&self) -> Option<f64> {
        let full = self.swept_times.iter().position(|swept| *swept >= 1.0);
        let at = full.unwrap_or(self.swept_times.len().checked_sub(1)?);
        laws::pattern_efficiency(self.swept_times[at], self.visited_fraction[at])
    }

    /// Visited fraction after this many driving hours, linear between points and constant beyond the ends.
    pub fn fraction_at_driving(&self, driving_h: f64) -> f64 {
        straight(&self.driving_h, &self.visited_fraction, driving_h)
    }
}

/// Value at a position between points in ascending order.
fn straight(at: &[f64], values: &[f64], wanted: f64) -> f64 {
    let after = at.partition_point(|one| *one <= wanted);
    match (after.checked_sub(1), at.get(after)) {
        (None, _) => values.first().copied().unwrap_or(0.0),
        (Some(before), None) => values.get(before).copied().unwrap_or(0.0),
        (Some(before), Some(next)) => {
            let part = (wanted - at[before]) / (next - at[before]);
            values[before] + part * (values[after] - values[before])
        }
    }
}

pub(super) fn curve(
    count: &visits::Count,
    sweeps: &[Sweep],
    survey: &Survey<'_>,
    cut_width_m: f64,
    lawn_m2: f64,
) -> Curve {
    // Path against time on the move, at the end of each sweep.
    let (mut driven_s, mut driven_m) = (vec![0.0], vec![0.0]);
    let mut way_m = 0.0;
    for sweep in sweeps.iter().filter(|sweep| sweep.driving_s > 0.0) {
        way_m += sweep.from.distance_m(sweep.to);
        driven_s.push(sweep.driving_before_s + sweep.driving_s);
        driven_m.push(way_m);
    }
    let driving_s = driven_s.last().copied().unwrap_or(0.0);
    let lawn_cells = (count.lawn.count() as f64).max(1.0);
    let buckets = count.new_cells.len();
    let mut curve = Curve {
        axis: CurveAxis::Path,
        path_m: Vec::new(),
        driving_h: Vec::new(),
        visited_fraction: Vec::new(),
        random_law_fraction: Vec::new(),
        exhaustive_fraction: Vec::new(),
        swept_times: Vec::new(),
        outings: None,
    };
    let (mut seen, mut next) = (0, 0);
    for point in 0..=POINTS {
        let upto = buckets * point / POINTS;
        seen += count.new_cells[next..upto].iter().sum::<u64>();
        next = upto;
        let at_s = driving_s * upto as f64 / buckets as f64;
        let at_m = straight(&driven_s, &driven_m, at_s);
        let swept = cut_width_m * at_m / lawn_m2.max(1e-9);
        curve.path_m.push(at_m);
        curve.driving_h.push(at_s / 3600.0);
        curve.visited_fraction.push(seen as f64 / lawn_cells);
        curve.random_law_fraction.push(random_search_fraction(swept));
        curve.exhaustive_fraction.push(exhaustive_fraction(swept));
        curve.swept_times.push(swept);
    }
    let guides = survey.guides();
    let mut ends_s: Vec<f64> = survey
        .tracks
        .iter()
        .flat_map(|track| outings::outings(track, survey.lines(&guides)))
        .map(|outing| outing.end_s)
        .collect();
    ends_s.sort_by(f64::total_cmp);
    if !ends_s.is_empty() {
        let points = (1..).zip(ends_s).map(|(outings, end_s)| {
            let at = sweeps.partition_point(|sweep| sweep.start_s <= end_s);
            let at_s = at.checked_sub(1).map_or(0.0, |last| {
                let sweep = &sweeps[last];
                let lapse_s = (sweep.end_s - sweep.start_s).max(1e-9);
                let part = ((end_s - sweep.start_s) / lapse_s).clamp(0.0, 1.0);
                sweep.driving_before_s + part * sweep.driving_s
            });
            OutingPoint {
                outings,
                driving_h: at_s / 3600.0,
                path_m: straight(&driven_s, &driven_m, at_s),
                visited_fraction: curve.fraction_at_driving(at_s / 3600.0),
            }
        });
        let points = points.collect();
        curve.outings = Some(points);
    }
    curve
}
