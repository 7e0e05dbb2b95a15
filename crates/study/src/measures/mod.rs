//! What do a pattern's numbers mean, in the form that papers give them?
//!
//! [`DEFINITIONS`] has unit, definition and source of each; `docs/methods.md` is made from it.
//!
//! **The default axis is the driven path.** Visits depend on where the disc went, and the laws are stated in swept area:
//! width times path over lawn area. Two machines with different speeds, or one that stands and turns for longer, give one
//! curve over path and two over time. Time is the axis for promises, and outings the axis for station settings.
//!
//! Exact: counts, for the located path. Approximate: everything affected by position error, as described for the count; the
//! curve has 400 steps of driving time. Laws are tested as if turns were independent and without error: a small probability
//! is evidence against the law only if positions are good to centimetres. Cost: one count, a half
//! again for evenness, one for wheels, and one distance transform; a night takes about two seconds.

mod curve;
mod definitions;
mod guess;
mod in_lanes;
mod laws;
mod work;

pub use curve::{Curve, CurveAxis, OutingPoint};
pub use definitions::{DEFINITIONS, Definition};
pub use guess::{GuessedPattern, PatternGuess, guess_pattern};
pub use in_lanes::LaneSpacing;
pub use laws::{LaneDirection, LegLaws, TurnLaws};
pub use work::{EvennessPoint, FieldWork, WayShape, WheelPasses, morans_i};

use serde::{Deserialize, Serialize};
use tussock_coverage::revisits;
use tussock_locate::Track;
use tussock_plane::distance;
use tussock_simulate::laws as theory;
use tussock_survey::AnalyseError;
use tussock_survey::Survey;
use tussock_survey::coverage_count::CoverageCount;
use tussock_survey::laws as search_laws;

/// Legs shorter than this are turns and cross-overs.
const LEAST_LEG_M: f64 = 1.0;

/// The measures of one log, or of several that are counted together.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Measures {
    /// Machines whose visits are combined.
    pub machines: Vec<String>,
    /// Area of the lawn without zones and obstacles.
    pub lawn_m2: f64,
    /// Cutting width.
    pub cut_width_m: f64,
    /// Driven path.
    pub path_m: f64,
    /// Time on the move.
    pub driving_s: f64,
    /// From first to last fix.
    pub span_s: f64,
    /// Path over driving time.
    pub speed_mps: f64,
    /// Swept area over lawn area: width times path over lawn.
    pub swept_times: f64,
    /// Visited area over lawn area, as counted (without correcting for position error).
    pub visited_fraction: f64,
    /// How the lawn filled up.
    pub curve: Curve,
    /// 0 on the random law, 1 on the exhaustive line, read where the swept area equals the lawn, or at the end; null if the
    /// two laws are too close to distinguish.
    pub efficiency: Option<f64>,
    /// Part of the area swept on the lawn that had been swept before, whenever that was: it grows with the hours.
    pub swept_again_fraction: f64,
    /// Distance of neighbouring lanes and how far their passes overlap; null if the path is not in lanes or positions do not show it.
    pub lane_spacing: Option<LaneSpacing>,
    /// Pace of the work; null without a drive.
    pub field_work: Option<FieldWork>,
    /// Shape of the way.
    pub way: WayShape,
    /// Passes of the wheels; null without a track width in the settings.
    pub wheels: Option<WheelPasses>,
    /// Moran's I of the mean visits of squares of a metre: 0 for chance, towards 1 where much visited ground lies together; null if all are
    /// alike.
    pub clustering: Option<f64>,
    /// Evenness of the visits after each quarter of the driven path.
    pub evenness: Vec<EvennessPoint>,
    /// How evenly visits are spread.
    pub visits: VisitSpread,
    /// Time between visits.
    pub revisits: RevisitCurve,
    /// Laws of the turns; null if too few turns at the edge are seen.
    pub turns: Option<TurnLaws>,
    /// Laws of the legs; null without legs.
    pub legs: Option<LegLaws>,
    /// Direction of lanes; null without long legs.
    pub lanes: Option<LaneDirection>,
    /// The lawn's edge against its interior.
    pub edge: EdgeAgainstInterior,
    /// Driving hours to 95 %, read off the curve or continued by its own law; null if out of reach.
    pub driving_h_to_95: Option<f64>,
    /// Driving hours to 99 %.
    pub driving_h_to_99: Option<f64>,
}

/// How evenly visits are spread over the lawn's cells.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct VisitSpread {
    /// Mean visits of a cell.
    pub mean_visits: f64,
    /// Part of the lawn visited 0, 1, 2, ... times.
    pub fractions: Vec<f64>,
    /// Gini coefficient: 0 if all cells are equal.
    pub gini: f64,
    /// Gini coefficient of a Poisson law with the same mean: the value for "random, but fair".
    pub gini_of_poisson: f64,
    /// Variance over mean (Fisher's index of dispersion): 1 for a Poisson law, below for an even pattern, above for a clustered one; null
    /// without visits.
    pub dispersion: Option<f64>,
}

/// Time between visits of one cell, with the unfinished last interval censored.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct RevisitCurve {
    /// Length of the interval.
    pub interval_h: Vec<f64>,
    /// Fraction of all intervals that are longer (Kaplan & Meier).
    pub longer_fraction: Vec<f64>,
    /// Ends of its 90 % interval for independent cells (Greenwood); neighbouring cells share passes, so the true interval is
    /// wider.
    pub low_fraction: Vec<f64>,
    /// See `low_fraction`.
    pub high_fraction: Vec<f64>,
    /// Intervals that a visit ended.
    pub finished: u64,
    /// Intervals that the end of the log cut short.
    pub unfinished: u64,
    /// How finished intervals gather: standard deviation less mean over their sum, -1 for a clock, 0 for chance, towards 1 for bursts;
    /// null without any.
    pub burstiness: Option<f64>,
    /// Median; null if the log is too short.
    pub median_h: Option<f64>,
    /// Mean interval of random search at this pace, including time not spent driving: lawn over width and speed, over the
    /// driving fraction of the span.
    pub random_mean_h: Option<f64>,
}

/// A strip along the lawn's edge, one cutting width wide, against the rest.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct EdgeAgainstInterior {
    /// Width of the strip.
    pub strip_m: f64,
    /// Its area.
    pub edge_m2: f64,
    /// Visited part of it.
    pub edge_visited_fraction: f64,
    /// Mean visits of it.
    pub edge_visits: f64,
    /// Visited part of the rest.
    pub interior_visited_fraction: f64,
    /// Mean visits of the rest.
    pub interior_visits: f64,
}

/// The measures of a log. Needs a cutting width; without a plan the outline is drawn from the log, which makes the figures
/// look better.
///
/// # Errors
/// [`AnalyseError`].
pub fn measures(survey: &Survey<'_>) -> Result<Measures, AnalyseError> {
    let cut_width_m = survey
        .settings()
        .machine
        .cut_width_m
        .ok_or(AnalyseError::NoCutWidth)?;
    survey.must_be_a_garden()?;
    let (lawn, sweeps) = (&survey.lawn()?.region, survey.sweeps());
    let counted = CoverageCount::of(survey)?;
    let count = &counted.count;
    let lawn_m2 = lawn.area_m2();
    let path_m: f64 = survey.tracks.iter().map(Track::path_m).sum();
    let driving_s: f64 = survey.tracks.iter().map(Track::driving_s).sum();
    let (start_s, end_s) = survey.span_s();
    let swept_m2: f64 = sweeps
        .iter()
        .filter(|sweep| sweep.driving_s > 0.0)
        .map(|sweep| cut_width_m * lawn.length_inside_m(&[sweep.from, sweep.to]))
        .sum();
    let visited_fraction = count.visited_fraction();
    let swept_again_fraction = if swept_m2 > 0.0 {
        (1.0 - visited_fraction * lawn_m2 / swept_m2).clamp(0.0, 1.0)
    } else {
        0.0
    };
    let curve = curve::curve(count, sweeps, survey, cut_width_m, lawn_m2);
    let speed_mps = if driving_s > 0.0 { path_m / driving_s } else { 0.0 };
    let reached = |target| search_laws::hours_to(target, &curve.driving_h, &curve.visited_fraction, 0.0);
    let steps = count.intervals.survival();
    let (finished, unfinished) = count.intervals.finished_and_unfinished();
    let span_s = end_s - start_s;
    Ok(Measures {
        machines: survey.tracks.iter().map(|track| track.machine.clone()).collect(),
        lawn_m2,
        cut_width_m,
        path_m,
        driving_s,
        span_s,
        speed_mps,
        swept_times: cut_width_m * path_m / lawn_m2,
        visited_fraction,
        efficiency: curve.efficiency(),
        swept_again_fraction,
        lane_spacing: in_lanes::spacing(survey, cut_width_m, path_m),
        field_work: work::field_work(survey, cut_width_m, path_m, visited_fraction * lawn_m2),
        way: work::way_shape(survey),
        wheels: work::wheel_passes(survey, count),
        clustering: work::clustering(count),
        evenness: work::evenness(survey, count, cut_width_m, path_m),
        visits: spread(&count.visit_histogram()),
        revisits: RevisitCurve {
            interval_h: steps.iter().map(|step| step.interval_s / 3600.0).collect(),
            longer_fraction: steps.iter().map(|step| step.survival_fraction).collect(),
            low_fraction: steps.iter().map(|step| step.low_fraction).collect(),
            high_fraction: steps.iter().map(|step| step.high_fraction).collect(),
            finished,
            unfinished,
            burstiness: (count.intervals.finished_law_s())
                .map(|(mean_s, sd_s)| (sd_s - mean_s) / (sd_s + mean_s)),
            median_h: count.intervals.quantiles().p50,
            random_mean_h: (driving_s > 0.0 && speed_mps > 0.0).then(|| {
                theory::mean_revisit_s(cut_width_m, speed_mps, lawn_m2) * span_s / driving_s / 3600.0
            }),
        },
        turns: laws::turns(survey),
        legs: laws::legs(survey),
        lanes: laws::lanes(survey),
        edge: edge(&counted, cut_width_m),
        driving_h_to_95: reached(0.95),
        driving_h_to_99: reached(0.99),
        curve,
    })
}

/// Measures of how many cells were visited 0, 1, 2, ... times.
pub fn spread(histogram: &[u64]) -> VisitSpread {
    let cells: f64 = histogram.iter().map(|cells| *cells as f64).sum::<f64>().max(1.0);
    let moment = |power: i32| {
        histogram
            .iter()
            .enumerate()
            .map(|(visits, cells)| (visits as f64).powi(power) * *cells as f64)
            .sum::<f64>()
            / cells
    };
    let mean_visits = moment(1);
    VisitSpread {
        mean_visits,
        fractions: histogram.iter().map(|part| *part as f64 / cells).collect(),
        gini: revisits::gini(histogram),
        gini_of_poisson: if mean_visits > 0.0 {
            theory::gini_of_poisson(mean_visits)
        } else {
            0.0
        },
        dispersion: (mean_visits > 0.0).then(|| (moment(2) - mean_visits * mean_visits) / mean_visits),
    }
}

fn edge(counted: &CoverageCount, strip_m: f64) -> EdgeAgainstInterior {
    let count = &counted.count;
    let grid = count.grid;
    // From a centre to the nearest centre off the lawn; the edge lies half a cell nearer. The grid has a margin.
    let squared = distance::squared(grid.columns, grid.rows, |column, row| {
        !count.lawn.get(column, row)
    });
    let reach = (strip_m / grid.cell_m + 0.5).powi(2);
    let (mut cells, mut visited, mut visits) = ([0_u64; 2], [0_u64; 2], [0_u64; 2]);
    for (column, row) in count.lawn.cells_on() {
        let part = usize::from(f64::from(squared[row * grid.columns + column]) > reach);
        cells[part] += 1;
        visited[part] += u64::from(count.visited.get(column, row));
        visits[part] += u64::from(count.visits(column, row));
    }
    let over = |sum: u64, part: usize| sum as f64 / (cells[part] as f64).max(1.0);
    EdgeAgainstInterior {
        strip_m,
        edge_m2: cells[0] as f64 * grid.cell_m2() * counted.area_ratio,
        edge_visited_fraction: over(visited[0], 0),
        edge_visits: over(visits[0], 0),
        interior_visited_fraction: over(visited[1], 1),
        interior_visits: over(visits[1], 1),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use tussock_types::math;

    // COV-24: Gini coefficients of Poisson counts, recomputed.
    #[test]
    fn a_poisson_law_is_its_own_baseline() {
        for (mean, gini) in [
            (0.5, 0.673_670),
            (1.0, 0.523_778),
            (2.0, 0.385_753),
            (5.0, 0.249_096),
        ] {
            let histogram: Vec<u64> = (0..40)
                .scan(math::exp(-mean), |part, visits| {
                    let here = *part;
                    *part *= mean / f64::from(visits + 1);
                    Some((1e12 * here) as u64)
                })
                .collect();
            let found = spread(&histogram);
            assert!((found.gini - gini).abs() < 1e-6, "{mean}: {}", found.gini);
            assert!((found.gini_of_poisson - gini).abs() < 1e-6);
            assert!((found.dispersion.unwrap() - 1.0).abs() < 1e-6);
            assert!((found.mean_visits - mean).abs() < 1e-6);
        }
        // All alike: no dispersion at all.
        let found = spread(&[0, 0, 7]);
        assert_eq!((found.gini, found.dispersion), (0.0, Some(0.0)));
        assert_eq!(spread(&[9]).dispersion, None);
    }
}
