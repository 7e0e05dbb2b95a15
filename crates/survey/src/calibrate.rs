//! What is the estimation bias for a log like this one?
//!
//! Question: if positions are poor and fixes sparse, the path between them is unknown, and the count of what was driven over
//! is wrong by an amount that depends on the garden. By how much?
//!
//! Method: parametric bootstrap (Efron & Tibshirani 1993, section 6.5) in the manner of indirect inference (Gourieroux,
//! Monfort & Renault 1993, DOI 10.1002/jae.3950080507). A machine is fitted to the log (speed, outings, stays), driven on
//! the plan several times, and logged with errors like those of the log's standing time (Gauss-Markov). Each of these logs
//! is located and counted as the real one was, but its truth is known. Ground is compared in tiles of 5 m: with
//! `n = -ln(1 - visited fraction)`, the passes per point of ground, the simulations show how many true passes there are for
//! each one found, and the log shows how many were found. Ground that the log leaves out although simulated machines enter
//! it (`blocked`) is closed off before the runs that count, so that simulating a way in does not open a fence. The average
//! error that remains when each simulation is judged by the others is removed too, and its scatter is the spread.
//!
//! Exact: the truth of the simulations, to their cells. Approximate: the machine. How it turns cannot be seen in sparse
//! fixes, so two laws are simulated in turn; where it turns is the setting, or else a usual value: 5 cm of that are worth
//! about a point. Known limits: at a fix every 30 s the results are still a few points too high behind fences that the plan
//! does not show. Lanes are not calibrated. If the path is well known (errors of decimetres) there is little to correct.
//!
//! Cost: several runs of the whole estimate, on all cores.

mod as_logged;
mod blocked;
mod fitted;

pub use as_logged::{AsLogged, CONFLICT, as_logged};

use crate::Survey;
use crate::coverage_count::CoverageCount;
use crate::{Calibrate, Stage};
use fitted::Fit;
use rayon::prelude::*;
use tussock_coverage::luck;
use tussock_coverage::swath;
use tussock_locate::turns::Setback;
use tussock_locate::{Piece, Track, Vertex};
use tussock_plane::{BitGrid, Named, Region, Site};
use tussock_simulate::{Doing, TrueRun, Yard};
use tussock_types::math;
use tussock_types::{Estimate, Place, Said, Settings};

/// Number of simulated runs: their mean is then right to less than a third of their spread.
const RUNS: usize = 12;
/// An estimate that is farther from the truth than the usual one of these runs by this much has lost the path altogether.
const LOST_FRACTION: f64 = 0.08;
/// Simulated logs that show where fixes are to be expected.
const LOOKS: usize = 6;
/// Poorer positions that are logged sparsely are always calibrated.
const POOR_M: f64 = 0.5;
/// Side of a tile.
const TILE_M: f64 = 5.0;
/// Weight of the whole lawn's ratio in each tile's ratio, in passes.
const PRIOR_PASSES: f64 = 0.1;
/// If the log shows less than this part of the passes that the simulations have, the machine met something that the plan
/// does not show: passes found there are drift from elsewhere, and are not multiplied.
const NEVER_ENTERED_FRACTION: f64 = 0.5;
/// A full tile has at most this many passes.
const MOST_PASSES: f64 = 5.0;
/// What does not vary from run to run in the simulation, above all where the machine turns: standard deviation of the
/// visited fraction, and what each second between fixes adds (found on 96 simulated gardens).
const SHARED_SD_FRACTION: f64 = 0.014;
const SHARED_SD_FRACTION_PER_S: f64 = 0.0005;

/// The estimation bias of logs like this one.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Calibration {
    /// To be subtracted from what was found.
    pub bias_fraction: f64,
    /// Standard deviation of what is left.
    pub spread_fraction: f64,
    /// Standard deviation of what all runs share.
    pub shared_fraction: f64,
    /// Number of simulated runs behind it.
    pub runs: usize,
}

/// Whether calibration was made, and if not, why.
#[derive(Clone, Debug, PartialEq)]
pub enum Calibrated {
    /// Nobody asked for it, and the log does not need it.
    NotNeeded,
    /// It was asked for, or needed, but is not possible, with the reason.
    NotPossible(Said),
    /// Done.
    Done(Calibration),
}

impl Calibrated {
    /// The remark in the verdict.
    pub fn remark(&self) -> Option<Said> {
        match self {
            Self::NotNeeded => None,
            Self::NotPossible(why) => Some(why.clone()),
            Self::Done(calibration) => Some(Said::Calibrated {
                runs: calibration.runs as u64,
                points: -100.0 * calibration.bias_fraction,
            }),
        }
    }
}

impl Calibration {
    /// What was found, without its bias, and its 90 % interval. `width_effect` is the effect of one standard deviation of
    /// the cutting width.
    pub fn estimate(&self, counted: &CoverageCount, width_effect: f64) -> Estimate {
        let estimate = (counted.visited_fraction() - self.bias_fraction).clamp(0.0, 1.0);
        let sd = math::hypot(
            math::hypot(self.spread_fraction, self.shared_fraction),
            width_effect,
        );
        Estimate::of_fraction(estimate, sd)
    }
}

/// Calibrates if the job asks for it, or the log needs it.
pub fn calibrate(
    survey: &Survey<'_>,
    wish: Calibrate,
    counted: &CoverageCount,
    pattern: luck::Pattern,
) -> Calibrated {
    let job = survey.job();
    let asked = match wish {
        Calibrate::Never => return Calibrated::NotNeeded,
        Calibrate::Always => true,
        Calibrate::Auto => false,
    };
    let not_possible = |why| {
        if asked {
            Calibrated::NotPossible(why)
        } else {
            Calibrated::NotNeeded
        }
    };
    let Some(cut_width_m) = job.settings.machine.cut_width_m else {
        return not_possible(Said::NotCalibratedNoWidth {});
    };
    let Some(site) = &survey.site else {
        return not_possible(Said::NotCalibratedNoPlan {});
    };
    if pattern == luck::Pattern::Lanes {
        return not_possible(Said::NotCalibratedLanes {});
    }
    let fits: Vec<Fit> = survey.tracks.iter().filter_map(Fit::of).collect();
    let needs = |(track, fit): (&Track, &Fit)| {
        track.period_s > tussock_locate::SPARSE_PERIOD_S && fit.noise.drift_m.max(fit.noise.white_m) > POOR_M
    };
    if fits.len() != survey.tracks.len() || fits.is_empty() {
        return not_possible(Said::NotCalibratedNoDrive {});
    }
    if !asked && !survey.tracks.iter().zip(&fits).any(needs) {
        return Calibrated::NotNeeded;
    }
    job.tell(Stage::Calibrating, 0.5);
    match runs(survey, site, counted, &fits, cut_width_m) {
        Some(calibration) => Calibrated::Done(calibration),
        None => not_possible(Said::NotCalibratedNoRun {}),
    }
}

/// Visited part of each tile.
struct Tiles {
    visited_fraction: Vec<f64>,
}

impl Tiles {
    /// The same of the whole lawn.
    fn overall(&self, tiling: &Tiling) -> f64 {
        tiling.overall(|tile| self.visited_fraction[tile])
    }
}

/// Tiles of a lawn.
struct Tiling {
    columns: usize,
    cells: Vec<f64>,
    per_tile: usize,
}

impl Tiling {
    fn of(lawn: &BitGrid) -> Self {
        let per_tile = (TILE_M / lawn.grid.cell_m).round().max(1.0) as usize;
        let columns = lawn.grid.columns.div_ceil(per_tile);
        let mut tiling = Self {
            columns,
            cells: vec![0.0; columns * lawn.grid.rows.div_ceil(per_tile)],
            per_tile,
        };
        for (column, row) in lawn.cells_on() {
            let tile = tiling.tile(column, row);
            tiling.cells[tile] += 1.0;
        }
        tiling
    }

    fn tile(&self, column: usize, row: usize) -> usize {
        column / self.per_tile + self.columns * (row / self.per_tile)
    }

    /// The visited share of each tile, weighting each visited cell of the lawn.
    fn tiles(&self, mask: &BitGrid, weight: impl Fn(usize, usize) -> f64) -> Tiles {
        let mut visited_fraction = vec![0.0; self.cells.len()];
        for (column, row) in mask.cells_on() {
            visited_fraction[self.tile(column, row)] += weight(column, row);
        }
        for (visited, cells) in visited_fraction.iter_mut().zip(&self.cells) {
            *visited /= cells.max(1.0);
        }
        Tiles { visited_fraction }
    }

    /// What was found by the same estimate that is reported.
    fn found(&self, counted: &CoverageCount) -> Tiles {
        match &counted.likely {
            Some(likely) => self.tiles(&counted.count.lawn, |column, row| {
                f64::from(likely.times(column, row)) / likely.pasts().max(1) as f64
            }),
            None => {
                let mut visited = counted.count.visited.clone();
                visited.and_in_place(&counted.count.lawn);
                self.tiles(&visited, |_, _| 1.0)
            }
        }
    }

    fn overall(&self, of_tile: impl Fn(usize) -> f64) -> f64 {
        let cells: f64 = self.cells.iter().sum();
        let visited: f64 = (0..self.cells.len())
            .map(|tile| self.cells[tile] * of_tile(tile))
            .sum();
        visited / cells.max(1.0)
    }
}

/// Passes per point of ground that leave this much of it visited, if they were scattered at random.
fn passes(visited_fraction: f64) -> f64 {
    (-math::ln((1.0 - visited_fraction).max(1e-12))).min(MOST_PASSES)
}

/// One simulated run: what was found, and what is true.
struct Pair {
    found: Tiles,
    truth: Tiles,
    true_fraction: f64,
}

/// Visited fraction with each tile's passes multiplied according to the runs.
fn corrected(tiling: &Tiling, found: &Tiles, runs: &[&Pair]) -> f64 {
    let count = runs.len().max(1) as f64;
    let mean = |tile: usize, of: &dyn Fn(&Pair) -> &Tiles| {
        passes(
            runs.iter()
                .map(|pair| of(pair).visited_fraction[tile])
                .sum::<f64>()
                / count,
        )
    };
    let all = |of: &dyn Fn(&Pair) -> &Tiles| tiling.overall(|tile| mean(tile, of));
    let ratio_of_all = all(&|pair| &pair.truth) / all(&|pair| &pair.found).max(1e-9);
    tiling.overall(|tile| {
        let ratio = (mean(tile, &|pair| &pair.truth) + PRIOR_PASSES * ratio_of_all)
            / (mean(tile, &|pair| &pair.found) + PRIOR_PASSES);
        let seen = passes(found.visited_fraction[tile]);
        let is_entered = seen >= NEVER_ENTERED_FRACTION * mean(tile, &|pair| &pair.found);
        1.0 - math::exp(-if is_entered { ratio } else { ratio.min(1.0) } * seen)
    })
}

fn runs(
    survey: &Survey<'_>,
    site: &Site,
    counted: &CoverageCount,
    fits: &[Fit],
    cut_width_m: f64,
) -> Option<Calibration> {
    let (job, settings) = (survey.job(), survey.settings());
    let past_boundary_m = -Setback::expected(&settings.machine).inside_m;
    let tiling = Tiling::of(&counted.count.lawn);
    let tuned = |yard: &Yard| -> Option<Vec<Fit>> {
        fits.iter()
            .enumerate()
            .map(|(number, fit)| fit.tuned(yard, past_boundary_m, settings, job.seed ^ (number as u64) << 40))
            .collect()
    };
    let mut yard = Yard::new(site, past_boundary_m).ok()?;
    let mut fits_here = tuned(&yard)?;
    let blocked = never_entered(survey, site, &yard, &fits_here);
    if let Some(blocked) = &blocked {
        yard = Yard::new(&without(site, blocked)?, past_boundary_m).ok()?;
        fits_here = tuned(&yard)?;
    }
    let fits = fits_here;
    let pairs: Vec<Pair> = (0..RUNS)
        .into_par_iter()
        .map(|number| {
            let seed = seed_of(job.seed, 1000 + number as u64);
            let (mut traces, mut pieces) = (Vec::new(), Vec::new());
            for (machine, fit) in fits.iter().enumerate() {
                let seed = seed ^ (machine as u64) << 40;
                let run = fit.run(&yard, number, seed)?;
                traces.push(fit.log(&run, settings, seed ^ 1));
                pieces.extend(true_pieces(&run, settings));
            }
            let simulated = survey.simulated(&traces, seed);
            let found = CoverageCount::of(&simulated).ok()?;
            let truth = true_mask(&counted.count.lawn, &pieces, settings, cut_width_m);
            let truth = tiling.tiles(&truth, |_, _| 1.0);
            Some(Pair {
                found: tiling.found(&found),
                true_fraction: truth.overall(&tiling),
                truth,
            })
        })
        .collect::<Option<_>>()?;
    let pairs = usual_ones(pairs, &tiling)?;
    let left: Vec<f64> = (0..pairs.len())
        .map(|judged| {
            let others: Vec<&Pair> = pairs
                .iter()
                .enumerate()
                .filter(|(number, _)| *number != judged)
                .map(|(_, pair)| pair)
                .collect();
            corrected(&tiling, &pairs[judged].found, &others) - pairs[judged].true_fraction
        })
        .collect();
    let period_s = survey
        .tracks
        .iter()
        .map(|track| track.period_s)
        .fold(0.0, f64::max);
    let count = left.len() as f64;
    let mean = left.iter().sum::<f64>() / count;
    let variance = left.iter().map(|one| (one - mean).powi(2)).sum::<f64>() / (count - 1.0).max(1.0);
    let all: Vec<&Pair> = pairs.iter().collect();
    let estimate = corrected(&tiling, &tiling.found(counted), &all) - mean;
    Some(Calibration {
        bias_fraction: counted.visited_fraction() - estimate,
        spread_fraction: (variance * (1.0 + 1.0 / count)).sqrt(),
        shared_fraction: math::hypot(SHARED_SD_FRACTION, SHARED_SD_FRACTION_PER_S * period_s),
        runs: pairs.len(),
    })
}

/// Runs without those in which the estimate lost the path; `None` if those are not exceptional.
fn usual_ones(pairs: Vec<Pair>, tiling: &Tiling) -> Option<Vec<Pair>> {
    let error = |pair: &Pair| pair.found.overall(tiling) - pair.true_fraction;
    let mut errors: Vec<f64> = pairs.iter().map(error).collect();
    errors.sort_by(f64::total_cmp);
    let usual = errors[errors.len() / 2];
    let kept: Vec<Pair> = pairs
        .into_iter()
        .filter(|pair| (error(pair) - usual).abs() <= LOST_FRACTION)
        .collect();
    (2 * kept.len() > RUNS).then_some(kept)
}

/// Ground that the logs leave out but logs simulated on the plan as drawn do not.
fn never_entered(survey: &Survey<'_>, site: &Site, yard: &Yard, fits: &[Fit]) -> Option<Region> {
    let job = survey.job();
    let logged: Vec<Place> = survey.tracks.iter().flat_map(fitted::under_way).collect();
    let simulated: Vec<Vec<Place>> = (0..LOOKS)
        .into_par_iter()
        .map(|number| {
            let mut places = Vec::new();
            for (machine, fit) in fits.iter().enumerate() {
                let seed = seed_of(job.seed, 2000 + number as u64) ^ (machine as u64) << 40;
                let run = fit.run(yard, number, seed)?;
                places.extend(fit.under_way(&run, &fit.log(&run, job.settings, seed ^ 1)));
            }
            Some(places)
        })
        .collect::<Option<_>>()?;
    let error_m = fits
        .iter()
        .map(|fit| math::hypot(fit.noise.white_m, fit.noise.drift_m))
        .fold(0.0, f64::max);
    blocked::never_entered(&site.lawn, &logged, &simulated, error_m)
}

/// The site without some ground.
fn without(site: &Site, blocked: &Region) -> Option<Site> {
    let mut site = site.clone();
    site.lawn = site.lawn.minus(blocked).ok()?;
    site.obstacles.push(Named {
        name: "never entered".to_owned(),
        feature: 0,
        shape: blocked.clone(),
    });
    Some(site)
}

/// Independent seeds (the finaliser of SplitMix64, Steele, Lea & Flood 2014).
fn seed_of(seed: u64, number: u64) -> u64 {
    let mut mixed = seed.wrapping_add(number.wrapping_mul(0x9e37_79b9_7f4a_7c15));
    mixed = (mixed ^ (mixed >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
    mixed = (mixed ^ (mixed >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
    mixed ^ (mixed >> 31)
}

/// The exact path as pieces, without transit for a machine that does not cut there.
fn true_pieces(run: &TrueRun, settings: &Settings) -> Vec<Piece> {
    let mut pieces = Vec::new();
    let mut piece = Piece::default();
    for (from, to) in run.pieces() {
        if !settings.machine.cuts_in_transit && from.doing == Doing::Transit {
            if !piece.vertices.is_empty() {
                pieces.push(std::mem::take(&mut piece));
            }
            continue;
        }
        let at = |vertex: tussock_simulate::TrueVertex| Vertex::passed(vertex.place, vertex.time_s);
        if piece.vertices.is_empty() {
            piece.vertices.push(at(from));
        }
        piece.vertices.push(at(to));
    }
    if !piece.vertices.is_empty() {
        pieces.push(piece);
    }
    pieces
}

/// Ground that was really driven over, on the cells of the count.
fn true_mask(lawn: &BitGrid, pieces: &[Piece], settings: &Settings, cut_width_m: f64) -> BitGrid {
    // The path is that of the machine's middle, not of its antenna.
    let mut of_middle = settings.clone();
    of_middle.machine.antenna_forward_m = 0.0;
    of_middle.machine.antenna_left_m = 0.0;
    let sweeps = swath::sweeps_of(pieces.iter(), &of_middle);
    let mut mask = swath::swept(lawn.grid, &sweeps, 0.5 * cut_width_m);
    mask.and_in_place(lawn);
    mask
}
