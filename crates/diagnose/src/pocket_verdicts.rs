//! Decides which pockets are missed, and which not yet visited.

use crate::cause_wording::cause_wording;
use crate::causes::{self, Chance};
use crate::chance_baseline::ChanceBaseline;
use crate::night_simulation::{self, Access, Cast, Scene};
use crate::pocket::Shape;
use crate::site_analysis::SiteAnalysis;
use tussock_coverage::luck;
use tussock_coverage::pockets;
use tussock_plane::{BitGrid, Region, Site, outlines, tape};
use tussock_simulate::Yard;
use tussock_survey::AnalyseError;
use tussock_survey::Survey;
use tussock_survey::coverage_count::{CoverageCount, PocketAreas, SMALL_ERROR_M};
use tussock_survey::interval::WIDTH_PER_SD;
use tussock_survey::unseen;
use tussock_types::math;
use tussock_types::{
    Cells, LogLevel, LogVerdict, MissedPocket, NotYetPocket, Place, Said, Settings, Tape, UnseenGround,
};

/// Pockets by their verdict.
#[derive(Default)]
pub struct PocketVerdicts {
    /// Luck does not explain these.
    pub missed: Vec<MissedPocket>,
    /// Luck still explains these.
    pub not_yet: Vec<NotYetPocket>,
    /// Without evidence.
    pub unseen: Vec<UnseenGround>,
    /// Largest width of unvisited ground that does not become a pocket; 0 if positions show everything.
    bare_m: f64,
}

/// True width that unvisited ground too narrow for a pocket may have: errors carry passes into it from both sides, as far as
/// in the pass that errs most (the largest of n normal errors is about √(2 ln n) standard deviations; Cramér, Mathematical
/// Methods of Statistics, 28.6; from memory).
fn bare_m(unvisited: &BitGrid, shown_m: f64, drive: &luck::Drive, settings: &Settings) -> f64 {
    if shown_m <= settings.pockets.min_width_m {
        return 0.0;
    }
    let bare = pockets::pockets(
        unvisited,
        settings.pockets.min_width_m,
        settings.pockets.min_area_m2,
    );
    let widest_m = bare
        .iter()
        .map(|pocket| pocket.widest_m)
        .filter(|widest_m| *widest_m < shown_m);
    let passes = std::f64::consts::PI * shown_m * drive.path_m / drive.lawn_m2.max(1.0);
    let largest_sd = (2.0 * math::ln(passes.max(1.0))).sqrt();
    let hidden_m = shown_m * f64::max(1.0, 2.0 * largest_sd / WIDTH_PER_SD);
    widest_m.map(|widest_m| widest_m + hidden_m).fold(0.0, f64::max)
}

impl PocketVerdicts {
    /// Pockets of the count that are at least `shown_m` wide (or as wide as the settings require), judged one by one.
    ///
    /// # Errors
    /// As [`Survey::lawn`].
    pub fn of(
        survey: &Survey<'_>,
        counted: &CoverageCount,
        cells: &Cells,
        layout: &SiteAnalysis,
        shown_m: f64,
    ) -> Result<Self, AnalyseError> {
        let (settings, drive) = (survey.settings(), survey.drive()?);
        let mut unvisited = counted.count.lawn.clone();
        unvisited.and_not_in_place(&counted.count.visited);
        // No more detail than the positions support.
        let found = pockets::pockets(
            &unvisited,
            settings.pockets.min_width_m.max(shown_m),
            settings.pockets.min_area_m2.max(0.25 * shown_m * shown_m),
        );
        let landmarks = survey.site.as_ref().map(Site::landmarks).unwrap_or_default();
        let mut sorted = Self {
            missed: Vec::new(),
            not_yet: Vec::new(),
            unseen: Vec::new(),
            bare_m: bare_m(&unvisited, shown_m, drive, settings),
        };
        let hidden = unseen::hidden(survey, drive.lawn_m2);
        let mean = mean_visits(cells);
        let lines = layout.lines();
        let scene = layout.scene(&lines, drive);
        let outing_m = outing_m(survey, drive);
        let mut usual: Option<Option<ChanceBaseline>> = None;
        for pocket in found {
            let shape = Shape::of(
                &pocket.cells,
                pocket.place,
                pocket.area_m2 * counted.area_ratio,
                pocket.widest_m,
                0.0,
                &layout.clearance,
            );
            let nearby = nearby(&pocket, cells);
            let place_share = if mean > 0.0 { nearby / mean } else { 0.0 };
            let chance = chance(drive, place_share, layout, &shape, outing_m);
            let chance = if needs_rehearsal(chance) {
                rehearsed(
                    chance,
                    &shape,
                    usual.get_or_insert_with(|| usual_for(survey, drive)).as_ref(),
                )
            } else {
                chance
            };
            // If the layout is to blame, what is normal there; otherwise the luckier of the two.
            let (is_missed, chance_fraction) = is_more_than_luck(chance, layout.error_m);
            let geo = survey.geo(pocket.place);
            let outline = simplified(&pocket.cells);
            let tape = measured(
                tape(&landmarks, pocket.place),
                survey,
                counted.count.lawn.grid.cell_m,
            );
            let area_m2 = pocket.area_m2 * counted.area_ratio;
            let hidden_chance = unseen::chance(&hidden, pocket.place, pocket.widest_m, drive.cut_width_m);
            if hidden_chance >= unseen::UNSEEN_CHANCE {
                sorted.unseen.push(UnseenGround {
                    id: format!("U{}", sorted.unseen.len() + 1),
                    area_m2,
                    outline,
                    why: Said::HiddenBySilence {
                        chance_fraction: hidden_chance,
                    },
                });
                continue;
            }
            if is_missed {
                let judgement = causes::judge(&scene, &shape, chance);
                let has_plan = survey.site.is_some();
                let wording = cause_wording(&judgement, &shape, layout, drive, chance, has_plan);
                sorted.missed.push(MissedPocket {
                    id: format!("M{}", sorted.missed.len() + 1),
                    area_m2,
                    widest_m: pocket.widest_m,
                    lat: geo.map(|geo| geo.lat_deg),
                    lon: geo.map(|geo| geo.lon_deg),
                    east_m: pocket.place.east_m,
                    north_m: pocket.place.north_m,
                    outline,
                    certainty: certainty(counted, &pocket, layout.error_m),
                    chance_fraction,
                    visited_fraction: 0.0,
                    causes: Some(wording.causes),
                    next_look: wording.next_look,
                    why: wording.why,
                    tape,
                    suggestion_ids: Vec::new(),
                });
            } else {
                let hours_to_decide = drive.at_place(place_share).hours_to_decide(pocket.widest_m);
                sorted.not_yet.push(NotYetPocket {
                    id: format!("N{}", sorted.not_yet.len() + 1),
                    area_m2,
                    widest_m: pocket.widest_m,
                    lat: geo.map(|geo| geo.lat_deg),
                    lon: geo.map(|geo| geo.lon_deg),
                    east_m: pocket.place.east_m,
                    north_m: pocket.place.north_m,
                    outline,
                    chance_fraction,
                    hours_to_decide,
                    why: why_not_yet(pocket.widest_m, drive, hours_to_decide),
                    tape,
                });
            }
        }
        Ok(sorted)
    }

    /// Ground in pockets, by their verdict.
    pub fn areas(&self) -> PocketAreas {
        PocketAreas {
            missed_m2: self.missed.iter().map(|pocket| pocket.area_m2).sum(),
            not_yet_m2: self.not_yet.iter().map(|pocket| pocket.area_m2).sum(),
            unseen_m2: self.unseen.iter().map(|ground| ground.area_m2).sum(),
        }
    }

    /// Makes pockets and verdict consistent: a log that shows nothing shows no missed pocket, and poor positions that leave
    /// a wide pocket undecided, and find none, cannot show any of that width.
    pub fn hold_to(&mut self, verdict: &mut LogVerdict) {
        if verdict.level == LogLevel::Unusable {
            let first = self.unseen.len() + 1;
            self.unseen.extend(
                self.missed
                    .drain(..)
                    .enumerate()
                    .map(|(at, pocket)| UnseenGround {
                        id: format!("U{}", first + at),
                        area_m2: pocket.area_m2,
                        outline: pocket.outline,
                        why: Said::ShownTooLittle {},
                    }),
            );
        }
        if verdict.positions != LogLevel::Good && self.missed.is_empty() {
            let undecided_m = self.not_yet.iter().map(|pocket| pocket.widest_m);
            let widest_m = undecided_m.fold(self.bare_m, f64::max);
            if widest_m > verdict.smallest_findable_width_m {
                verdict.shows_from(widest_m);
            }
        }
    }
}

/// Too little time so far.
fn why_not_yet(widest_m: f64, drive: &luck::Drive, hours_to_decide: Option<f64>) -> Said {
    let driven_h = drive.path_m / drive.speed_mps.max(1e-9) / 3600.0;
    let lawn_m2 = drive.lawn_m2;
    match hours_to_decide.filter(|hours| *hours > driven_h) {
        Some(decided_h) => Said::NotYetUntil {
            driven_h,
            lawn_m2,
            widest_m,
            decided_h,
        },
        None => Said::NotYet {
            driven_h,
            lawn_m2,
            widest_m,
        },
    }
}

/// Path of one outing; the whole path if outings are unknown.
fn outing_m(survey: &Survey<'_>, drive: &luck::Drive) -> f64 {
    let outings: usize = survey.tracks.iter().filter_map(|track| track.outings).sum();
    drive.path_m / (outings as f64).max(1.0)
}

/// What luck would leave there: with free access, and compared with what is normal for that place.
fn chance(
    drive: &luck::Drive,
    place_share: f64,
    layout: &SiteAnalysis,
    shape: &Shape,
    outing_m: f64,
) -> Chance {
    let behind = layout
        .necks
        .iter()
        .find(|(neck, _)| shape.behind_fraction(&layout.clearance, neck) >= 0.6);
    Chance {
        free_fraction: drive.chance_fraction(shape.widest_m),
        as_is_fraction: Some(drive.at_place(place_share).chance_fraction(shape.widest_m)),
        as_is_share_fraction: behind
            .map(|(neck, _)| neck.share_expected_fraction(outing_m, layout.setback_m)),
    }
}

/// Chances between these are worth a simulation: below, luck is out of the question; above, it is likely anyway.
const REHEARSED: std::ops::RangeInclusive<f64> = 1e-4..=luck::MISSED_CHANCE_FRACTION;

fn needs_rehearsal(chance: Chance) -> bool {
    REHEARSED.contains(&chance.free_fraction)
}

/// Nights of the fitted machine on this plan; `None` without a plan, and for machines that cannot be fitted.
fn usual_for(survey: &Survey<'_>, drive: &luck::Drive) -> Option<ChanceBaseline> {
    let site = survey.site.as_ref()?;
    let fitted = survey.machine().ok()?;
    let site = fitted.site(site);
    let cast = Cast {
        yard: Yard::new(&site, fitted.machine.past_boundary_m).ok()?,
        machine: fitted.machine.clone(),
        run: fitted.run(0),
        access: Access::AsIs,
    };
    let scene = Scene::of(&site, night_simulation::CELL_M, drive.cut_width_m);
    ChanceBaseline::of(&cast, scene, survey.job().seed).ok()
}

/// The chance, including what this machine on this plan usually leaves there.
fn rehearsed(chance: Chance, shape: &Shape, usual: Option<&ChanceBaseline>) -> Chance {
    let Some(usual) = usual else { return chance };
    let by_runs = usual.chance_fraction(shape.place, shape.widest_m);
    Chance {
        as_is_fraction: Some(chance.as_is_fraction.map_or(by_runs, |local| local.max(by_runs))),
        as_is_share_fraction: Some(usual.share(shape.place)),
        ..chance
    }
}

/// Below this share of its fair path, a place is left out by the layout, not by luck.
const STARVED_SHARE: f64 = 0.6;

/// Larger position errors are those of metre logs: they merge and move pockets by themselves, so luck must be ten times less
/// likely.
const COARSE_M: f64 = 0.4;

/// Whether a pocket is missed, and the chance to report.
fn is_more_than_luck(chance: Chance, error_m: f64) -> (bool, f64) {
    let is_starved = chance
        .as_is_share_fraction
        .is_some_and(|share| share < STARVED_SHARE);
    let fraction = match chance.as_is_fraction {
        Some(as_is) if !is_starved => chance.free_fraction.max(as_is),
        _ => chance.free_fraction,
    };
    let fraction = if error_m > COARSE_M {
        (10.0 * fraction).min(1.0)
    } else {
        fraction
    };
    (fraction <= luck::MISSED_CHANCE_FRACTION, fraction)
}

/// Certainty of a pocket in a centimetre log that shows one path only: all 123 that were found in simulated gardens were
/// there.
const ONE_PATH_CERTAINTY: f64 = 0.99;

/// How sure it is that a pocket's ground was not driven over: the share of pasts that leave each cell out, averaged over its
/// cells. `None` for a single path with larger errors, for which it was not measured.
fn certainty(counted: &CoverageCount, pocket: &pockets::Pocket, error_m: f64) -> Option<f64> {
    let Some(likely) = &counted.likely else {
        return (error_m <= SMALL_ERROR_M).then_some(ONE_PATH_CERTAINTY);
    };
    let (own, grid) = (pocket.cells.grid, counted.count.grid);
    let (mut left_out, mut cells) = (0.0, 0.0);
    for (column, row) in pocket.cells.cells_on() {
        if let Some((x, y)) = grid.cell_at(own.centre(column, row)) {
            cells += 1.0;
            left_out += 1.0 - f64::from(likely.times(x, y)) / (likely.pasts() as f64).max(1.0);
        }
    }
    (cells > 0.0).then(|| left_out / cells)
}

/// Ground within this distance of a pocket shows how often that neighbourhood is visited.
const NEARBY_M: f64 = 4.0;

/// Tape distances with their error: that of the positions around the pocket, the uncertainty of the plan's offset from the
/// log, and half a counting cell.
fn measured(mut tapes: Vec<Tape>, survey: &Survey<'_>, cell_m: f64) -> Vec<Tape> {
    let place_m = |track: &tussock_locate::Track| {
        let plan_m = track
            .anchored
            .as_ref()
            .map_or(0.0, |anchored| anchored.offset.sd_m);
        math::hypot(track.position_error_m(), plan_m)
    };
    let error_m = math::hypot(
        survey.tracks.iter().map(place_m).fold(0.0, f64::max),
        0.5 * cell_m,
    );
    for tape in &mut tapes {
        tape.sd_m = error_m.is_finite().then_some(error_m);
    }
    tapes
}

/// Mean visits over all lawn.
fn mean_visits(cells: &Cells) -> f64 {
    let (mut sum, mut lawn) = (0.0, 0.0);
    for (visits, part) in cells.visits_expected.iter().zip(&cells.lawn_fraction) {
        sum += f64::from(*visits) * f64::from(*part);
        lawn += f64::from(*part);
    }
    if lawn > 0.0 { sum / lawn } else { 0.0 }
}

/// Mean visits of the lawn around a pocket, without the pocket itself.
fn nearby(pocket: &pockets::Pocket, cells: &Cells) -> f64 {
    let (own, grid) = (pocket.cells.grid, cells.grid);
    let at = |value_m: f64, min_m: f64, most: usize| {
        (((value_m - min_m) / grid.cell_m).floor().max(0.0) as usize).min(most.saturating_sub(1))
    };
    let columns = at(own.east_min_m - NEARBY_M, grid.east_min_m, grid.columns)
        ..=at(
            own.east_min_m + own.columns as f64 * own.cell_m + NEARBY_M,
            grid.east_min_m,
            grid.columns,
        );
    let rows = at(own.north_min_m - NEARBY_M, grid.north_min_m, grid.rows)
        ..=at(
            own.north_min_m + own.rows as f64 * own.cell_m + NEARBY_M,
            grid.north_min_m,
            grid.rows,
        );
    let (mut sum, mut lawn) = (0.0, 0.0);
    for row in rows {
        for column in columns.clone() {
            let square = row * grid.columns + column;
            let part = f64::from(cells.lawn_fraction[square]);
            let inside = own
                .cell_at(grid.centre(column, row))
                .is_some_and(|(x, y)| pocket.cells.get(x, y));
            if part > 0.0 && !inside {
                sum += f64::from(cells.visits_expected[square]) * part;
                lawn += part;
            }
        }
    }
    if lawn > 0.0 { sum / lawn } else { 0.0 }
}

/// Outline of a mask with its steps smoothed.
fn simplified(cells: &BitGrid) -> Vec<Vec<Place>> {
    let stepped = outlines(cells);
    match Region::from_rings(stepped.clone()) {
        Ok(region) => region
            .outline_simplified(cells.grid.cell_m)
            .into_iter()
            .flatten()
            .collect(),
        Err(_) => stepped.into_iter().flatten().collect(),
    }
}
