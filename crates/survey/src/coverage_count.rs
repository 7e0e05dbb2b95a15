//! Counts cells and turns them into square metres, fractions and hours.

use crate::{AnalyseError, Survey};
use rayon::prelude::*;
use tussock_coverage::turf;
use tussock_coverage::visit_probability::VisitProbability;
use tussock_coverage::{bias, revisits, squares, swath, visits};
use tussock_locate::{PathMethod, Piece};
use tussock_plane::{BitGrid, rasterise};
use tussock_types::math;
use tussock_types::{Cells, Coverage, Estimate, LawnCoverage, Revisits, TurfSettings, WidthRow};

/// Widths for which the visited fraction is given when the user does not know it.
const WIDTHS_M: [f64; 7] = [0.17, 0.20, 0.23, 0.26, 0.29, 0.32, 0.35];

/// Ground of the lawn that is in pockets, by their verdict.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct PocketAreas {
    /// Missed.
    pub missed_m2: f64,
    /// Not yet visited, but luck still explains it.
    pub not_yet_m2: f64,
    /// Without evidence.
    pub unseen_m2: f64,
}

/// The count with what is needed to turn cells into square metres.
pub struct CoverageCount {
    /// Visits, cell by cell.
    pub count: visits::Count,
    /// Exact area of the lawn over the area of its cells: cells are scaled so that areas add up to the polygon's.
    pub area_ratio: f64,
    /// Exact area of the lawn.
    pub lawn_m2: f64,
    rim_m: f64,
    /// The limit on cells made them larger than usual.
    is_coarse: bool,
    as_logged_fraction: f64,
    /// What position error has added to the visited fraction.
    bias_fraction: f64,
    /// Pasts that agree with the log, if positions are poor.
    pub likely: Option<VisitProbability>,
}

/// Errors up to this are small compared with a swath, and the bias they cause is nearly linear.
pub const SMALL_ERROR_M: f64 = 0.06;
/// Share of the white part that line fits leave in a corner.
const CORNER_SHARE: f64 = 0.3;

/// Bias of the visited fraction from the error that is still in the path; 0 if that error is unknown, or not small.
fn bias_fraction(survey: &Survey<'_>, count: &visits::Count) -> f64 {
    let Some(track) = survey
        .tracks
        .iter()
        .max_by(|a, b| a.noise.white_m.total_cmp(&b.noise.white_m))
    else {
        return 0.0;
    };
    let Some(drift_m) = track.noise.drift_m.filter(|drift_m| *drift_m > 0.0) else {
        return 0.0;
    };
    if track.method != PathMethod::Legs || drift_m.max(track.noise.white_m) > SMALL_ERROR_M {
        return 0.0;
    }
    let drift_time_s = (2.0 * drift_m * drift_m / track.noise.drift_rate_m2_per_s).clamp(60.0, 3600.0);
    let error = bias::PathError {
        drift_m,
        drift_time_s,
        corner_m: CORNER_SHARE * track.noise.white_m,
    };
    let with_more = bias::fraction_with_error_added(
        &count.lawn,
        survey.sweeps(),
        survey.swath_m(),
        error,
        survey.job().seed,
    );
    bias::WAS_THERE * (with_more - count.visited_fraction())
}

/// Number of pasts that are drawn: the mean visited fraction is then right to a quarter of their spread.
const PASTS: u64 = 16;

/// Marks pasts that agree with the logs; `None` if each log allows one path only.
fn likely(survey: &Survey<'_>, lawn: &BitGrid) -> Option<VisitProbability> {
    if survey.tracks.iter().all(|track| track.anchored.is_none()) {
        return None;
    }
    let masks: Vec<BitGrid> = (0..PASTS)
        .into_par_iter()
        .map(|past| {
            let pieces: Vec<Piece> = survey
                .tracks
                .iter()
                .enumerate()
                .flat_map(|(number, track)| {
                    let pieces = track
                        .drawn(survey.job().seed, past)
                        .unwrap_or_else(|| track.pieces.clone());
                    survey.swept(number, pieces)
                })
                .collect();
            let sweeps = swath::sweeps_of(pieces.iter(), survey.settings());
            swath::swept(lawn.grid, &sweeps, 0.5 * survey.swath_m())
        })
        .collect();
    let mut likely = VisitProbability::new(lawn);
    masks.iter().for_each(|mask| likely.add(mask));
    Some(likely)
}

impl CoverageCount {
    /// Counts what was swept, and marks other pasts if positions are poor.
    ///
    /// # Errors
    /// As [`Survey::lawn`].
    pub fn of(survey: &Survey<'_>) -> Result<Self, AnalyseError> {
        let (ground, swath_m) = (survey.lawn()?, survey.swath_m());
        let (region, lawn) = (&ground.region, ground.cells.clone());
        let grid = lawn.grid;
        let mut face = BitGrid::new(grid);
        let raw = survey.tracks.iter().flat_map(|track| {
            let kept = &track.kept;
            (1..kept.len())
                .filter(|index| kept.run[*index] == kept.run[index - 1])
                .map(|index| (kept.place(index - 1), kept.place(index)))
        });
        swath::mark(&mut face, raw, 0.5 * swath_m);
        face.and_in_place(&lawn);
        let lawn_cells = (lawn.count() as f64).max(1.0);
        let as_logged_fraction = face.count() as f64 / lawn_cells;
        let mut count = visits::count(
            lawn,
            survey.sweeps(),
            swath_m,
            survey.settings().pockets.new_pass_after_s,
            survey.span_s(),
        );
        let lawn_m2 = region.area_m2();
        let likely = likely(survey, &count.lawn);
        let bias_fraction = match &likely {
            Some(likely) => {
                count.visited = likely.mostly();
                0.0
            }
            None => bias_fraction(survey, &count),
        };
        Ok(Self {
            count,
            is_coarse: grid.cell_m > visits::cell_for_width_m(swath_m),
            area_ratio: lawn_m2 / (lawn_cells * grid.cell_m2()),
            lawn_m2,
            rim_m: region.perimeter_m(),
            as_logged_fraction,
            bias_fraction,
            likely,
        })
    }

    /// Visited part of the lawn, without the bias of position error.
    pub fn visited_fraction(&self) -> f64 {
        let found = self
            .likely
            .as_ref()
            .map_or_else(|| self.count.visited_fraction(), VisitProbability::mean_fraction);
        (found - self.bias_fraction).clamp(0.0, 1.0)
    }

    /// The same with every fix joined to the next.
    pub fn as_logged_fraction(&self) -> f64 {
        self.as_logged_fraction
    }

    /// Length of the lawn's edges.
    pub fn rim_m(&self) -> f64 {
        self.rim_m
    }

    /// What position error was found to have added.
    pub fn bias_fraction(&self) -> f64 {
        self.bias_fraction
    }

    /// The effect of one standard deviation of the cutting width, including the error of larger cells than usual; the error
    /// of usual cells is already in the intervals.
    pub fn width_effect(&self, survey: &Survey<'_>) -> f64 {
        let (cut_width_m, sd_m) = (survey.swath_m(), survey.settings().machine.cut_width_sd_m);
        let cells = if self.is_coarse {
            self.count.cell_error_fraction()
        } else {
            0.0
        };
        if sd_m <= 0.0 {
            return cells;
        }
        let fraction = |width_m: f64| self.fraction_at(survey, width_m);
        let width = 0.5 * (fraction(cut_width_m + sd_m) - fraction((cut_width_m - sd_m).max(0.0)));
        if self.is_coarse {
            math::hypot(width, cells)
        } else {
            width
        }
    }

    /// The squares of the count, with probabilities from all pasts if there are several.
    pub fn squares(&self) -> Cells {
        let mut cells = squares::squares(&self.count);
        if let Some(likely) = &self.likely {
            let (fine, coarse) = (self.count.grid, cells.grid);
            let mut sums = vec![0_u32; coarse.cells()];
            let mut lawn = vec![0_u32; coarse.cells()];
            for (column, row) in self.count.lawn.cells_on() {
                if let Some((x, y)) = coarse.cell_at(fine.centre(column, row)) {
                    sums[y * coarse.columns + x] += likely.times(column, row);
                    lawn[y * coarse.columns + x] += 1;
                }
            }
            for ((probability, sum), lawn) in cells.visited_probability.iter_mut().zip(sums).zip(lawn) {
                if lawn > 0 {
                    *probability = sum as f32 / (lawn as f32 * likely.pasts() as f32);
                }
            }
        }
        cells
    }

    /// The visited fraction for each of the usual widths.
    pub fn by_width(&self, survey: &Survey<'_>) -> Vec<WidthRow> {
        let row = |cut_width_m| WidthRow {
            cut_width_m,
            visited_fraction: Estimate::bare(self.fraction_at(survey, cut_width_m)),
        };
        WIDTHS_M.into_iter().map(row).collect()
    }

    /// Part of the lawn that the path covers at a width.
    fn fraction_at(&self, survey: &Survey<'_>, width_m: f64) -> f64 {
        let mut mask = swath::swept(self.count.grid, survey.sweeps(), 0.5 * width_m);
        mask.and_in_place(&self.count.lawn);
        mask.count() as f64 / (self.count.lawn.count() as f64).max(1.0)
    }

    /// Areas and fractions; `visited` is the estimate for the whole lawn.
    pub fn coverage(&self, survey: &Survey<'_>, told: PocketAreas, visited: Estimate) -> Coverage {
        let PocketAreas {
            missed_m2,
            not_yet_m2,
            unseen_m2,
        } = told;
        // Ground that is shown as pockets must not also count as driven over.
        let most = 1.0 - (missed_m2 + not_yet_m2 + unseen_m2) / self.lawn_m2.max(1e-9);
        let visited = at_most(visited, most.max(0.0));
        let visited_m2 = visited.estimate * self.lawn_m2;
        let lawns = survey.site.as_ref().map_or_else(
            || {
                vec![LawnCoverage {
                    name: "lawn".to_owned(),
                    lawn_m2: self.lawn_m2,
                    visited_fraction: visited,
                }]
            },
            |site| {
                site.lawns
                    .iter()
                    .map(|lawn| {
                        let mut mask = rasterise(&lawn.shape, &self.count.grid);
                        let cells = (mask.count() as f64).max(1.0);
                        mask.and_in_place(&self.count.visited);
                        LawnCoverage {
                            name: lawn.name.clone(),
                            lawn_m2: lawn.shape.area_m2(),
                            visited_fraction: of_part(
                                visited,
                                self.count.visited_fraction(),
                                mask.count() as f64 / cells,
                                cells / (self.count.lawn.count() as f64).max(1.0),
                            ),
                        }
                    })
                    .collect()
            },
        );
        Coverage {
            lawn_m2: self.lawn_m2,
            reachable_m2: None,
            visited_m2,
            missed_m2,
            not_yet_m2,
            unseen_m2,
            // Below zero only by rounding.
            sliver_m2: (self.lawn_m2 - visited_m2 - missed_m2 - not_yet_m2 - unseen_m2).max(0.0),
            visited_fraction: visited,
            as_logged_fraction: self.as_logged_fraction,
            as_logged_differs: None,
            cut_width_m: survey.swath_m(),
            cell_m: self.count.grid.cell_m,
            cell_error_fraction: self.count.cell_error_fraction(),
            realisations: self.likely.as_ref().map_or(1, |likely| likely.pasts() as u32),
            lawns,
        }
    }

    /// How often, and at what intervals, cells were visited.
    pub fn revisits(&self, survey: &Survey<'_>) -> Revisits {
        let histogram = self.count.visit_histogram();
        let cells: u64 = histogram.iter().sum();
        let visits: f64 = histogram
            .iter()
            .enumerate()
            .map(|(times, class)| times as f64 * *class as f64)
            .sum();
        let (start_s, end_s) = survey.span_s();
        Revisits {
            median_per_cell: revisits::median(&histogram),
            mean_per_cell: visits / (cells as f64).max(1.0),
            gini: revisits::gini(&histogram),
            interval_h: self.count.intervals.quantiles(),
            overdue_fraction: allowed_interval_s(&survey.settings().turf)
                .filter(|allowed_s| *allowed_s < end_s - start_s)
                .map(|allowed_s| self.overdue_fraction(end_s - start_s, allowed_s)),
            histogram: shares(&histogram),
        }
    }

    /// Part of the lawn not visited within the last `allowed_s`.
    fn overdue_fraction(&self, lapse_s: f64, allowed_s: f64) -> f64 {
        let mut overdue = 0_u64;
        for row in 0..self.count.grid.rows {
            for (start, end) in self.count.lawn.runs(row) {
                for column in start..end {
                    let last_s = self
                        .count
                        .first_and_last_s(column, row)
                        .map_or(0.0, |(_, last_s)| f64::from(last_s));
                    overdue += u64::from(lapse_s - last_s > allowed_s);
                }
            }
        }
        overdue as f64 / (self.count.lawn.count() as f64).max(1.0)
    }
}

/// The interval with its estimate capped; its upper end stays.
fn at_most(interval: Estimate, most: f64) -> Estimate {
    Estimate {
        estimate: interval.estimate.min(most),
        low: interval.low.map(|low| low.min(most)),
        ..interval
    }
}

/// Estimate for a part of the lawn: corrected like the whole, and less certain in proportion as it is smaller.
fn of_part(whole: Estimate, counted: f64, part: f64, share: f64) -> Estimate {
    let estimate = (part + whole.estimate - counted).clamp(0.0, 1.0);
    let wider = 1.0 / share.max(0.05).sqrt();
    Estimate {
        estimate,
        low: whole
            .low
            .map(|low| (estimate - wider * (whole.estimate - low)).max(0.0)),
        high: whole
            .high
            .map(|high| (estimate + wider * (high - whole.estimate)).min(1.0)),
    }
}

/// Part of the lawn visited 0, 1, 2, ... times; the last entry holds everything above.
fn shares(histogram: &[u64]) -> Vec<f64> {
    const MOST: usize = 20;
    let cells: u64 = histogram.iter().sum();
    let mut shares: Vec<f64> = histogram
        .iter()
        .map(|class| *class as f64 / (cells as f64).max(1.0))
        .collect();
    if shares.len() > MOST + 1 {
        let rest = shares[MOST..].iter().sum();
        shares.truncate(MOST);
        shares.push(rest);
    }
    shares
}

/// Longest time between visits that the one-third rule allows.
fn allowed_interval_s(settings: &TurfSettings) -> Option<f64> {
    let (growth_mm_per_day, _) = turf::growth_mm_per_day(settings)?;
    turf::allowed_interval_days(settings.cut_height_mm?, growth_mm_per_day).map(|days| days * 86_400.0)
}
