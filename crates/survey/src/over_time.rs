//! How the lawn filled up over the hours of driving.

use crate::Survey;
use crate::coverage_count::CoverageCount;
use crate::laws;
use crate::nights::Nights;
use crate::promise;
use tussock_locate::Track;
use tussock_simulate::laws::{exhaustive_fraction, random_search_fraction};
use tussock_types::{Coverage, OverTime};

/// Points of the filling curve.
const CURVE_POINTS: usize = 100;

/// Visited fraction over driving time beside the laws, the hours still needed, and the promise.
pub fn over_time(
    counted: &CoverageCount,
    survey: &Survey<'_>,
    coverage: &Coverage,
    nights: &Nights,
) -> OverTime {
    let lawn_cells = (counted.count.lawn.count() as f64).max(1.0);
    let driving_s = survey
        .sweeps()
        .last()
        .map_or(0.0, |sweep| sweep.driving_before_s + sweep.driving_s);
    let path_m: f64 = survey.tracks.iter().map(Track::path_m).sum();
    let speed_mps = if driving_s > 0.0 { path_m / driving_s } else { 0.0 };
    let buckets = counted.count.new_cells.len();
    let mut curve = OverTime {
        driving_h: Vec::new(),
        visited_fraction: Vec::new(),
        random_law_fraction: Vec::new(),
        exhaustive_fraction: Vec::new(),
        efficiency: None,
        hours_to_95: None,
        hours_to_99: None,
        promise: promise::CANNOT_TELL,
    };
    let mut seen = 0;
    let mut next = 0;
    for point in 0..=CURVE_POINTS {
        let upto = buckets * point / CURVE_POINTS;
        seen += counted.count.new_cells[next..upto].iter().sum::<u64>();
        next = upto;
        let driven_s = driving_s * upto as f64 / buckets as f64;
        let swept = coverage.cut_width_m * speed_mps * driven_s / counted.lawn_m2.max(1e-9);
        curve.driving_h.push(driven_s / 3600.0);
        curve.visited_fraction.push(seen as f64 / lawn_cells);
        curve.random_law_fraction.push(random_search_fraction(swept));
        curve.exhaustive_fraction.push(exhaustive_fraction(swept));
    }
    // The laws differ most when the swept area equals the lawn.
    let judged = curve
        .exhaustive_fraction
        .iter()
        .position(|part| *part >= 1.0)
        .unwrap_or(CURVE_POINTS);
    let swept =
        coverage.cut_width_m * speed_mps * curve.driving_h[judged] * 3600.0 / counted.lawn_m2.max(1e-9);
    curve.efficiency = laws::pattern_efficiency(swept, curve.visited_fraction[judged]);
    let out_of_reach = coverage.missed_m2 / counted.lawn_m2.max(1e-9);
    let hours = |target| laws::hours_to(target, &curve.driving_h, &curve.visited_fraction, out_of_reach);
    (curve.hours_to_95, curve.hours_to_99) = (hours(0.95), hours(0.99));
    curve.promise = promise::promise(coverage, nights, survey.settings());
    curve
}
