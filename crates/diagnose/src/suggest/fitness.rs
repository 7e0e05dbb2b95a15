//! Does the fitted machine resemble the log?
//!
//! Figures of the log beside the median and the nine-in-ten range of simulated runs; first those on which predictions depend
//! most.

use tussock_plane::BitGrid;
use tussock_survey::fitted::Fitted;
use tussock_types::math;
use tussock_types::{Estimate, FitFigure, FitFound, FitRow, Grid, Place, Said};

/// Side of the tiles of the visits map.
const TILE_M: f64 = 2.0;
/// Runs that differ from the log by more than this beyond their own range are not believed.
const VISITED_SLACK: f64 = 0.02;
const PATH_SLACK: f64 = 0.1;

/// What is compared for one drive.
#[derive(Clone, Debug, Default)]
pub(super) struct Looks {
    pub(super) visited_fraction: f64,
    pub(super) path_m: f64,
    pub(super) median_leg_m: f64,
    /// Path in each tile.
    pub(super) tiles_m: Vec<f32>,
    /// Path between two visits of a tile, median.
    pub(super) revisit_m: f64,
}

/// Tiles over a grid.
pub(super) struct Tiles {
    grid: Grid,
    lawn: Vec<bool>,
}

impl Tiles {
    /// Tiles of which at least half is lawn.
    pub(super) fn over(lawn: &BitGrid) -> Self {
        let fine = lawn.grid;
        let count = |cells: usize| (cells as f64 * fine.cell_m / TILE_M).ceil().max(1.0) as usize;
        let grid = Grid {
            cell_m: TILE_M,
            columns: count(fine.columns),
            rows: count(fine.rows),
            ..fine
        };
        let mut cells = vec![0_usize; grid.cells()];
        for (column, row) in lawn.cells_on() {
            if let Some((x, y)) = grid.cell_at(fine.centre(column, row)) {
                cells[y * grid.columns + x] += 1;
            }
        }
        let half = (0.5 * TILE_M * TILE_M / fine.cell_m2()) as usize;
        Self {
            grid,
            lawn: cells.into_iter().map(|cells| cells >= half).collect(),
        }
    }

    pub(super) fn looks(&self, legs: &[[Place; 2]], visited_fraction: f64) -> Looks {
        let mut tiles_m = vec![0.0_f32; self.grid.cells()];
        let mut last_m = vec![f64::NAN; self.grid.cells()];
        let mut legs_m: Vec<f64> = Vec::with_capacity(legs.len());
        let mut gaps_m: Vec<f64> = Vec::new();
        let mut path_m = 0.0;
        for [from, to] in legs {
            let length_m = from.distance_m(*to);
            if length_m >= 0.3 {
                legs_m.push(length_m);
            }
            let (step_m, places) = from.pieces(*to, 0.5);
            for place in places {
                path_m += step_m;
                let Some((x, y)) = self.grid.cell_at(place) else {
                    continue;
                };
                let tile = y * self.grid.columns + x;
                tiles_m[tile] += step_m as f32;
                // Away for at least ten metres: a new visit.
                let since_m = path_m - last_m[tile];
                if since_m > 10.0 {
                    gaps_m.push(since_m);
                }
                last_m[tile] = path_m;
            }
        }
        let middle = |values: &mut Vec<f64>| math::median(values).unwrap_or(0.0);
        Looks {
            visited_fraction,
            path_m,
            median_leg_m: middle(&mut legs_m),
            tiles_m,
            revisit_m: middle(&mut gaps_m),
        }
    }

    /// Correlation of the path in lawn tiles with a mean map.
    fn likeness(&self, tiles_m: &[f32], mean_m: &[f64]) -> f64 {
        let pairs: Vec<(f64, f64)> = self
            .lawn
            .iter()
            .zip(tiles_m.iter().zip(mean_m))
            .filter(|(is_lawn, _)| **is_lawn)
            .map(|(_, (one, mean))| (f64::from(*one), *mean))
            .collect();
        let count = pairs.len().max(1) as f64;
        let (a, b) = pairs
            .iter()
            .fold((0.0, 0.0), |sum, pair| (sum.0 + pair.0, sum.1 + pair.1));
        let (a, b) = (a / count, b / count);
        let (mut ab, mut aa, mut bb) = (0.0, 0.0, 0.0);
        for (x, y) in pairs {
            ab += (x - a) * (y - b);
            aa += (x - a) * (x - a);
            bb += (y - b) * (y - b);
        }
        if aa > 0.0 && bb > 0.0 {
            ab / (aa * bb).sqrt()
        } else {
            0.0
        }
    }
}

fn range(mut values: Vec<f64>) -> Estimate {
    values.sort_by(f64::total_cmp);
    let at = |fraction| math::quantile(&values, fraction).unwrap_or(0.0);
    Estimate {
        estimate: at(0.5),
        low: Some(at(0.05)),
        high: Some(at(0.95)),
    }
}

/// The log beside its simulated runs.
pub(super) fn fit_found(tiles: &Tiles, log: &Looks, runs: &[Looks], fitted: &Fitted) -> FitFound {
    let count = runs.len().max(1) as f64;
    let mut mean_m = vec![0.0; log.tiles_m.len()];
    for run in runs {
        mean_m
            .iter_mut()
            .zip(&run.tiles_m)
            .for_each(|(sum, one)| *sum += f64::from(*one) / count);
    }
    let row = |what: FitFigure, logged: f64, of: &dyn Fn(&Looks) -> f64| FitRow {
        what,
        logged,
        simulated: range(runs.iter().map(of).collect()),
    };
    let rows = vec![
        row(FitFigure::VisitedFraction, log.visited_fraction, &|looks| {
            looks.visited_fraction
        }),
        row(FitFigure::PathM, log.path_m, &|looks| looks.path_m),
        row(
            FitFigure::VisitsMapCorrelation,
            tiles.likeness(&log.tiles_m, &mean_m),
            &|looks| tiles.likeness(&looks.tiles_m, &mean_m),
        ),
        row(FitFigure::LegM, log.median_leg_m, &|looks| looks.median_leg_m),
        row(FitFigure::RevisitPathM, log.revisit_m, &|looks| looks.revisit_m),
    ];
    let is_within = |row: &FitRow, slack: f64| {
        let (low, high) = (
            row.simulated.low.unwrap_or(f64::NEG_INFINITY),
            row.simulated.high.unwrap_or(f64::INFINITY),
        );
        row.logged >= low - slack && row.logged <= high + slack
    };
    let visited_holds = is_within(&rows[0], VISITED_SLACK);
    let path_holds = is_within(&rows[1], PATH_SLACK * log.path_m);
    let is_trusted = visited_holds && path_holds;
    let said = if is_trusted {
        Said::FitTrusted {
            speed_mps: fitted.machine.speed_mps,
            turns: fitted.turns as u64,
            outings: fitted.outings.len() as u64,
        }
    } else if path_holds {
        Said::FitVisitsDiffer {}
    } else {
        Said::FitPathDiffers {}
    };
    FitFound {
        is_trusted,
        said,
        runs: runs.len() as u32,
        rows,
    }
}
