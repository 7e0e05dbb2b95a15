//! The second road to the visited fraction: as logged, less what such errors add.
//!
//! Question: a receiver that smooths its own positions errs by metres without looking rough, so legs and edges cannot be
//! relied on to hold the path. How much of the lawn was driven over all the same? Method: the fixes are joined and counted
//! as they are, without stays. Machines fitted to the log are driven on the plan, and their exact fixes are given the error
//! seen in the log's own stays, stay after stay in random order and direction (a block bootstrap, Kunsch 1989, DOI
//! 10.1214/aos/1176347265); the average excess of their counts is subtracted. Nothing is associated with an edge, and no law
//! of the error is assumed.
//!
//! Exact: the truth of the simulated runs, to their cells. Approximate: the machine, and the assumption that the error at
//! the station is that of the lawn. Cost: eight runs and counts, up to four times as many if few resemble the log.

use super::{Fit, Tiles, Tiling, seed_of, true_mask, true_pieces};
use crate::Survey;
use crate::coverage_count::CoverageCount;
use rayon::prelude::*;
use std::ops::Range;
use tussock_coverage::luck;
use tussock_coverage::swath;
use tussock_locate::stays::Standing;
use tussock_locate::turns::Setback;
use tussock_locate::{Piece, Track};
use tussock_plane::BitGrid;
use tussock_simulate::{TrueRun, Yard};
use tussock_types::math;
use tussock_types::{ErrorSeries, Estimate, NoiseSource, Place};

/// Simulated runs per batch, and the most batches. They stop as soon as half as many runs as one batch has match the counts of
/// the log, tile by tile, to within this mean difference (rejection sampling, Pritchard et al. 1999, DOI
/// 10.1093/oxfordjournals.molbev.a026091).
const RUNS: usize = 8;
const MOST_BATCHES: usize = 4;
const ALIKE_FRACTION: f64 = 0.1;
/// Stays are used if they are at least this fraction of the mean length of the longest three ...
const LONG_FRACTION: f64 = 0.6;
/// ... without their ends.
const END_CUT_S: f64 = 60.0;
/// What all runs share, above all the machine: standard deviation of the fraction (chosen on a prototype under recorded
/// errors; judged by `tests/python/judge_recorded_errors.py`).
const SHARED_SD_FRACTION: f64 = 0.01;
/// How far inside its edges a machine turns whose width is not stated (common practice, no source).
const SETBACK_SD_M: f64 = 0.1;
/// Estimates this many standard deviations apart contradict each other.
pub const CONFLICT: f64 = 3.0;

/// The visited fraction by this road.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct AsLogged {
    /// Its estimate.
    pub visited_fraction: f64,
    /// Standard deviation.
    pub sd_fraction: f64,
}

impl AsLogged {
    /// Both estimates together, each weighted by how sure it is. If they disagree by more than that allows, the interval
    /// grows with the difference (Birge 1932, DOI 10.1103/PhysRev.40.207). If they contradict each other, this one alone,
    /// with twice its width.
    pub fn with(self, other: Estimate) -> Estimate {
        let (one, two) = (self.sd_fraction.powi(-2), sd_of(other).powi(-2));
        let (estimate, sd) = if self.contradicts(other) {
            (self.visited_fraction, 2.0 * self.sd_fraction)
        } else {
            // Both methods rest on one machine and one plan.
            let sd = (self.apart(other).max(1.0) / (one + two).sqrt()).max(SHARED_SD_FRACTION);
            (
                (one * self.visited_fraction + two * other.estimate) / (one + two),
                sd,
            )
        };
        Estimate::of_fraction(estimate, sd)
    }

    /// Whether the two cannot both be right: the path was then held by the wrong edges and does not show which ground was
    /// driven over.
    pub fn contradicts(self, other: Estimate) -> bool {
        self.apart(other) > CONFLICT
    }

    /// How far apart the two are, in standard deviations of the difference. A path that is less sure than this road excuses nothing by
    /// that: either both show the same ground, or the path does not show it.
    pub fn apart(self, other: Estimate) -> f64 {
        let sd_fraction = math::hypot(self.sd_fraction, sd_of(other).min(self.sd_fraction));
        (self.visited_fraction - other.estimate).abs() / sd_fraction
    }
}

/// Standard deviation behind a 90 % interval, by its longer side.
fn sd_of(estimate: Estimate) -> f64 {
    let half = |end: Option<f64>| end.map_or(0.0, |end| (end - estimate.estimate).abs() / Estimate::END_SDS);
    half(estimate.low).max(half(estimate.high)).max(1e-6)
}

/// The fraction by this road; `None` without a plan, for lanes, and if no stay shows how the receiver smooths.
pub fn as_logged(survey: &Survey<'_>, counted: &CoverageCount) -> Option<AsLogged> {
    let settings = survey.settings();
    settings.machine.cut_width_m?;
    let site = survey.site.as_ref()?;
    if survey.drive().ok()?.pattern == luck::Pattern::Lanes {
        return None;
    }
    let card = settings.positions.card.as_ref();
    let card = card.and_then(|card| card.errors.as_deref());
    let errors = survey
        .tracks
        .iter()
        .map(|track| StayErrors::of(track).or_else(|| StayErrors::known(track, card?)));
    let errors: Vec<StayErrors> = errors.collect::<Option<_>>()?;
    let past_boundary_m = -Setback::expected(&settings.machine).inside_m;
    let yard = Yard::new(site, past_boundary_m).ok()?;
    let fits: Vec<Fit> = survey
        .tracks
        .iter()
        .map(|track| {
            let mut known = settings.clone();
            known.machine.speed_mps = known.machine.speed_mps.or(track.speed_mps);
            Fit::of(track)?.tuned(&yard, past_boundary_m, &known, survey.job().seed)
        })
        .collect::<Option<_>>()?;
    let lawn = &counted.count.lawn;
    let tiling = Tiling::of(lawn);
    let radius_m = 0.5 * survey.swath_m();
    let logged = {
        let mut mask = BitGrid::new(lawn.grid);
        let tracks = survey.tracks.iter();
        tracks.for_each(|track| swath::mark(&mut mask, driven(track), radius_m));
        mask.and_in_place(lawn);
        tiling.tiles(&mask, |_, _| 1.0)
    };
    let added = added(survey, lawn, (&tiling, &logged), |number, mask| {
        let mut pieces = Vec::new();
        for (machine, (fit, errors)) in fits.iter().zip(&errors).enumerate() {
            let seed = seed_of(survey.job().seed, 3000 + number as u64) ^ (machine as u64) << 40;
            let run = fit.run(&yard, number, seed)?;
            let fixes = errors.laid_on(&run, fit.exact_fixes(&run, settings), seed ^ 1);
            swath::mark(mask, fixes.into_iter(), radius_m);
            pieces.extend(true_pieces(&run, settings));
        }
        Some(pieces)
    })?;
    // Where the machine turns decides how much of the rim is cut, which cannot be separated from what errors spread there.
    let machine = &settings.machine;
    let is_known = machine.body_width_m.is_some() || machine.past_boundary_m.is_some();
    let rim = if is_known {
        0.0
    } else {
        SETBACK_SD_M * counted.rim_m() / counted.lawn_m2.max(1e-9)
    };
    let count = added.len() as f64;
    let mean = added.iter().sum::<f64>() / count;
    let variance = added.iter().map(|one| (one - mean).powi(2)).sum::<f64>() / (count - 1.0);
    Some(AsLogged {
        visited_fraction: (logged.overall(&tiling) - mean).clamp(0.0, 1.0),
        sd_fraction: math::hypot(
            rim,
            math::hypot((variance * (2.0 + 1.0 / count)).sqrt(), SHARED_SD_FRACTION),
        ),
    })
}

/// What errors add to the visited fraction in each of the simulated runs that cover the lawn as the log does. A run is
/// selected by its number: the cells that its log would count are marked, and its exact path is returned.
fn added(
    survey: &Survey<'_>,
    lawn: &BitGrid,
    (tiling, logged): (&Tiling, &Tiles),
    drive: impl Fn(usize, &mut BitGrid) -> Option<Vec<Piece>> + Sync,
) -> Option<Vec<f64>> {
    let simulated = |number: usize| {
        let mut mask = BitGrid::new(lawn.grid);
        let pieces = drive(number, &mut mask)?;
        mask.and_in_place(lawn);
        let tiles = tiling.tiles(&mask, |_, _| 1.0);
        let truth = true_mask(lawn, &pieces, survey.settings(), survey.swath_m());
        let true_fraction = truth.count() as f64 / (lawn.count() as f64).max(1.0);
        let apart =
            tiling.overall(|tile| (tiles.visited_fraction[tile] - logged.visited_fraction[tile]).abs());
        Some((tiles.overall(tiling) - true_fraction, apart))
    };
    let mut added: Vec<f64> = Vec::new();
    for batch in 0..MOST_BATCHES {
        let runs = (batch * RUNS..(batch + 1) * RUNS).into_par_iter().map(simulated);
        let runs = runs.collect::<Option<Vec<_>>>()?;
        added.extend(
            runs.iter()
                .filter(|(_, apart)| *apart <= ALIKE_FRACTION)
                .map(|(added, _)| *added),
        );
        if 2 * added.len() >= RUNS {
            return Some(added);
        }
    }
    None
}

/// From fix to fix, without stays and silences.
fn driven(track: &Track) -> impl Iterator<Item = (Place, Place)> {
    let kept = &track.kept;
    let mut stays = track.stays.iter().peekable();
    (1..kept.len()).filter_map(move |index| {
        let time_s = kept.time_s[index];
        while stays.next_if(|stay| stay.end_s < time_s).is_some() {}
        let stands = stays.peek().is_some_and(|stay| stay.start_s <= time_s);
        (!stands && kept.run[index] == kept.run[index - 1])
            .then(|| (kept.place(index - 1), kept.place(index)))
    })
}

/// Error of the log's own stays, fix by fix, one list per stay.
struct StayErrors(Vec<Vec<(f64, f64)>>);

impl StayErrors {
    fn of(track: &Track) -> Option<Self> {
        let mut lasts_s: Vec<f64> = track.stays.iter().map(Standing::lasts_s).collect();
        lasts_s.sort_by(|a, b| b.total_cmp(a));
        lasts_s.truncate(3);
        let least_s = LONG_FRACTION * lasts_s.iter().sum::<f64>() / (lasts_s.len() as f64).max(1.0);
        let kept = &track.kept;
        let stays = track.stays.iter().filter(|stay| stay.lasts_s() >= least_s);
        let fixes: Vec<Vec<Place>> = stays
            .map(|stay| {
                stay.fixes(kept, END_CUT_S)
                    .map(|index| kept.place(index))
                    .collect()
            })
            .filter(|fixes: &Vec<Place>| fixes.len() > 1)
            .collect();
        let all = fixes.iter().flatten().count() as f64;
        let home = track.station.unwrap_or_else(|| {
            let sum = |of: fn(&Place) -> f64| fixes.iter().flatten().map(of).sum::<f64>() / all.max(1.0);
            Place::new(sum(|place| place.east_m), sum(|place| place.north_m))
        });
        let errors: Vec<Vec<(f64, f64)>> = fixes
            .iter()
            .map(|fixes| {
                fixes
                    .iter()
                    .map(|place| (place.east_m - home.east_m, place.north_m - home.north_m))
                    .collect()
            })
            .collect();
        (!errors.is_empty()).then_some(Self(errors))
    }

    /// As the device card has it, where the receiver smooths by that.
    fn known(track: &Track, card: &ErrorSeries) -> Option<Self> {
        let is_asked = track.smooths && track.noise.source == NoiseSource::DeviceCard;
        let step = (track.period_s / card.step_s()).round().max(1.0) as usize;
        let of_stretch = |stretch: Range<usize>| {
            let rows = stretch.step_by(step);
            rows.map(|row| (card.east_m[row], card.north_m[row])).collect()
        };
        is_asked.then(|| Self(card.stretches().into_iter().map(of_stretch).collect()))
    }

    /// What the log of a run would join, from fix to fix: stays are left out, and nothing is joined from one stretch of error
    /// to the next.
    fn laid_on(&self, run: &TrueRun, fixes: Vec<(f64, Place)>, seed: u64) -> Vec<(Place, Place)> {
        let mut block = 0_u64;
        let next = |block: &mut u64| {
            let dice = seed_of(seed, *block);
            *block += 1;
            let errors = &self.0[(dice >> 1) as usize % self.0.len()];
            let turned: Vec<(f64, f64)> = match dice & 1 {
                0 => errors.clone(),
                _ => errors.iter().rev().copied().collect(),
            };
            turned.into_iter()
        };
        let mut errors = next(&mut block);
        let mut last: Option<Place> = None;
        let mut stays = run.stays.iter().peekable();
        let mut joined = Vec::new();
        for (time_s, place) in fixes {
            let error = match errors.next() {
                Some(error) => error,
                None => {
                    errors = next(&mut block);
                    last = None;
                    errors.next().unwrap_or_default()
                }
            };
            while stays.next_if(|stay| stay.end_s < time_s).is_some() {}
            if stays.peek().is_some_and(|stay| stay.start_s <= time_s) {
                last = None;
                continue;
            }
            let place = Place::new(place.east_m + error.0, place.north_m + error.1);
            joined.extend(last.map(|last| (last, place)));
            last = Some(place);
        }
        joined
    }
}
