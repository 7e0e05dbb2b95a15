//! What should be changed, and what will it bring?
//!
//! Question: which smallest change mends a missed pocket, and what will a night as long as this log then show? For each
//! pocket a few candidates are built (guide runs, zones, hours, the boundary), the machine fitted to this log
//! ([`tussock_survey::fitted`]) runs with each of them ([`crate::night_simulation`]), and candidates that are uncertain or
//! bring nothing are dropped.
//!
//! Method. Of each kind the most certain candidate is kept: the one with the largest share of its own runs in which the
//! pocket gains more than 20 points and lies within 15 points of the prediction, and the lawn within 5. It is suggested only
//! if the lower end of the *mean* gain is above zero (bootstrap over runs) and the lawn's mean does not fall by more than
//! half a point. The prediction is what most runs show (densest window); the interval is that of single runs, widened for
//! what the fit does not know. Smaller changes of the same kind are tried as well (a side moved back less far, a shorter
//! guide run or fewer outings along it, fewer hours), and the smallest one is suggested that brings nine tenths of the gain
//! and is about as sure. Sorted by gain for effort. Nothing that exists already is suggested, and nothing for ground that the
//! unchanged machine mostly visits, because missing that was luck. Where several pockets can be mended, `set.rs` chooses
//! the changes that go together.
//!
//! Exact: clearances of the lines. Approximate: everything predicted; `docs/advice.md` shows how well it holds. Known
//! limits: no lanes; no slopes; a zone is only shrunk on one straight side. Cost: about 400 runs for each of the worst three
//! pockets, 300 more for each kind of change that comes in sizes; a run of 8 h takes 0.7 ms on one core.

mod changes;
mod fitness;
mod guides;
mod room;
mod set;
mod trial;
mod way;
mod words;

pub use changes::{ZoneChange, as_driven, shrunk};
pub use room::Room;
pub use trial::pocket_predicted;
pub use way::{End, Laid, guide_lines};

use crate::night_simulation::{Access, CELL_M, Cast, Fractions, Scene};
use std::ops::Range;
use trial::{Runs, Widened, least_mean_gain};
use tussock_locate::Track;
use tussock_locate::turns::Turn;
use tussock_plane::{Joins, Region, Site, rasterise};
use tussock_simulate::{Run, SimulateError, StuckSpot, Yard};
use tussock_survey::fitted::Fitted;
use tussock_types::math::{self, mean};
use tussock_types::{
    Estimate, FitFound, MissedPocket, Place, Predicted, Rung, Said, SetStep, Suggestion, SuggestionKind,
};

/// Suggestions are made for this many of the largest pockets.
pub const POCKETS: usize = 3;
/// Runs of candidates before the best is chosen.
const FIRST_RUNS: u64 = 32;
/// Runs of a prediction.
const RUNS: u64 = 100;
/// If the unchanged machine visits more than this of the pocket on average, missing it was luck.
const MOSTLY_VISITED: f64 = 0.75;
/// A less certain guide run is combined with more hours.
const UNCERTAIN: f64 = 0.7;
/// If it is even less certain than this, it is not suggested.
const TOO_UNCERTAIN: f64 = 0.6;
/// A smaller change is enough if it brings this much of the gain,
const AIM: f64 = 0.9;
/// and is less sure by no more than the luck of 100 runs each: 1.645 sqrt(2 0.8 0.2 / 100).
const AS_SURE: f64 = 0.1;
/// More hours are tried up to this many on the clock.
const MOST_HOURS: f64 = 2.0 * HORIZON_H;
/// Runs last no longer than this on the clock, however long the log is.
const HORIZON_H: f64 = 48.0;
/// Number of full-length runs for a log that is longer than that.
const LONG_RUNS: u64 = 12;

/// The question.
#[derive(Clone, Copy)]
pub struct Question<'a> {
    /// The garden as planned.
    pub site: &'a Site,
    /// The machine.
    pub fitted: &'a Fitted,
    /// Where it was.
    pub track: &'a Track,
    /// Where it turned.
    pub turns: &'a [Turn],
    /// Missed pockets, largest first.
    pub pockets: &'a [MissedPocket],
    /// Places that caught the machine, from which a zone could keep it away.
    pub stuck_spots: &'a [StuckSpot],
    /// Width of the cutting disc.
    pub cut_width_m: f64,
    /// Random seed.
    pub seed: u64,
}

/// The answer.
#[derive(Clone, Debug, PartialEq)]
pub struct Suggestions {
    /// Best first.
    pub suggestions: Vec<Suggestion>,
    /// Those that go together; empty where fewer than two pockets can be mended.
    pub change_set: Vec<SetStep>,
    /// How well the machine fits.
    pub fit: FitFound,
}

/// A change that can be tried.
#[derive(Clone, Debug)]
struct Change {
    kind: SuggestionKind,
    geometry: Vec<Place>,
    /// The plan feature that the geometry replaces.
    feature: Option<usize>,
    name: String,
    wire_m: Option<f64>,
    share_fraction: Option<f64>,
    shift_m: Option<f64>,
    passage_m: Option<f64>,
    faces_deg: Option<f64>,
    /// Smaller versions of the same change, the smallest first.
    smaller: Vec<Change>,
    added_h_per_day: Option<f64>,
    /// The machine with the change.
    cast: Cast,
    /// Hours of work, roughly.
    effort_h: f64,
}

/// A change, its runs, and what larger and smaller versions bring.
struct Tried {
    change: Change,
    runs: Runs,
    ladder: Option<Vec<Rung>>,
}

/// A suggestion, what it is worth and the work that it makes.
struct Told {
    worth: f64,
    effort_h: f64,
    suggestion: Suggestion,
}

/// Everything that is the same for all pockets.
struct Workshop<'a> {
    question: &'a Question<'a>,
    /// As planned, but with zones where turns show them and shares as fitted.
    site: Site,
    cast: Cast,
    scene: Scene,
    before: Vec<Fractions>,
    path_m: f64,
    widened: Widened,
    room: Room,
}

/// What to change for the largest missed pockets.
///
/// # Errors
/// [`SimulateError`] if the fitted machine has no room on this site.
pub fn suggest(question: &Question<'_>) -> Result<Suggestions, SimulateError> {
    let fitted = question.fitted;
    let (site, moved) = as_driven(question.site, fitted, question.turns, &|place| place);
    let cast = Cast {
        yard: Yard::new(&site, fitted.machine.past_boundary_m)?,
        machine: fitted.machine.clone(),
        run: Run {
            hours: fitted.run(0).hours.min(HORIZON_H),
            stuck_spots: question.stuck_spots.to_vec(),
            ..fitted.run(0)
        },
        access: Access::AsIs,
    };
    let mut scene = Scene::of(question.site, CELL_M, question.cut_width_m);
    let pockets = &question.pockets[..question.pockets.len().min(POCKETS)];
    for pocket in pockets {
        let mask = Region::from_rings(vec![pocket.outline.clone()])
            .map(|region| rasterise(&region, &scene.lawn.grid))
            .unwrap_or_else(|_| tussock_plane::BitGrid::new(scene.lawn.grid));
        scene = scene.with_pocket(&mask);
    }
    let tiles = fitness::Tiles::over(&scene.lawn);
    let judged = cast.judge(&scene, question.seed, 0..RUNS, |legs, painted| {
        let fractions = scene.fractions(painted);
        (tiles.looks(legs, fractions.lawn), fractions)
    })?;
    let (looks, before): (Vec<_>, Vec<_>) = judged.into_iter().unzip();
    let legs: Vec<[Place; 2]> = question
        .track
        .legs()
        .map(|(from, to)| [from.place, to.place])
        .collect();
    let in_log = scene.fractions(&scene.paint(legs.iter().copied()));
    let log = tiles.looks(&legs, in_log.lawn);
    // Beyond the horizon runs are shorter than the log, so a few as long as the log show how well they fit.
    let fit = if fitted.hours > HORIZON_H {
        let whole = Cast {
            run: Run {
                hours: fitted.hours,
                ..cast.run.clone()
            },
            ..cast.clone()
        };
        let whole = whole.judge(&scene, question.seed, 0..LONG_RUNS, |legs, painted| {
            tiles.looks(legs, scene.fractions(painted).lawn)
        })?;
        fitness::fit_found(&tiles, &log, &whole, fitted)
    } else {
        fitness::fit_found(&tiles, &log, &looks, fitted)
    };
    let mut widened = Widened::by(fitted.position_sd_m);
    if !fit.is_trusted {
        widened.pocket *= 2.0;
        widened.lawn *= 2.0;
    }
    let room = Room::of(cast.yard.turning_region(), room_cell_m(&site));
    let workshop = Workshop {
        question,
        path_m: mean(&looks.iter().map(|looks| looks.path_m).collect::<Vec<f64>>()),
        site,
        cast,
        scene,
        before,
        widened,
        room,
    };
    let mut found: Vec<Told> = Vec::new();
    for (number, pocket) in pockets.iter().enumerate() {
        let in_log = in_log.pockets.get(number).copied().unwrap_or(0.0);
        found.extend(workshop.for_pocket(number, pocket, in_log, &moved)?);
    }
    found.sort_by(|a, b| b.worth.total_cmp(&a.worth));
    for (number, told) in found.iter_mut().enumerate() {
        told.suggestion.id = format!("G{}", number + 1);
    }
    let change_set = workshop.together(pockets, &found)?;
    let suggestions = found.into_iter().map(|told| told.suggestion).collect();
    Ok(Suggestions {
        suggestions,
        change_set,
        fit,
    })
}

/// Cell size of the clearance grid: fine enough for narrow ways, coarse enough to be searched.
fn room_cell_m(site: &Site) -> f64 {
    (site.drawn_lawn.area_m2().sqrt() / 300.0).clamp(0.1, 0.25)
}

impl Workshop<'_> {
    fn run(&self, change: &Change, numbers: Range<u64>, pocket: usize) -> Result<Runs, SimulateError> {
        let runs = change.cast.play(&self.scene, self.question.seed, numbers)?;
        Ok(Runs::of(&runs, pocket))
    }

    fn for_pocket(
        &self,
        number: usize,
        pocket: &MissedPocket,
        in_log: f64,
        moved: &[ZoneChange],
    ) -> Result<Vec<Told>, SimulateError> {
        let before = Runs::of(&self.before, number);
        if mean(&before.pocket) > MOSTLY_VISITED {
            return Ok(Vec::new());
        }
        let mut found: Vec<Tried> = Vec::new();
        for candidates in [
            self.zone_moves(moved),
            self.zone_shrinks(),
            self.zone_adds(),
            self.boundary_shifts(number),
            self.hours(),
        ] {
            if let Some(best) = self.best(candidates, number, in_log, &before)? {
                found.push(self.smallest(best, number, in_log, &before)?);
            }
        }
        if let Some((change, runs)) = self.best(self.guide_runs(number), number, in_log, &before)? {
            let certainty = runs.certainty(in_log);
            let paired = if certainty < UNCERTAIN {
                let longer = self.with_hours(&change);
                self.best(longer, number, in_log, &before)?
                    .filter(|(_, runs)| runs.certainty(in_log) > certainty + 0.1)
            } else {
                None
            };
            found.push(match paired {
                Some((change, runs)) => Tried {
                    change,
                    runs,
                    ladder: None,
                },
                None => {
                    let smaller = self.smaller_guides(&change, number);
                    self.smallest((Change { smaller, ..change }, runs), number, in_log, &before)?
                }
            });
        }
        found.retain(|tried| tried.runs.certainty(in_log) >= TOO_UNCERTAIN);
        Ok(found
            .into_iter()
            .map(|tried| self.told(tried, pocket, in_log, &before))
            .collect())
    }

    /// The most certain of several candidates that passes the gain test.
    fn best(
        &self,
        candidates: Vec<Change>,
        pocket: usize,
        in_log: f64,
        before: &Runs,
    ) -> Result<Option<(Change, Runs)>, SimulateError> {
        let mut tried: Vec<(f64, Change, Runs)> = Vec::new();
        for change in candidates {
            let runs = self.run(&change, 0..FIRST_RUNS, pocket)?;
            // Hopeless for the lawn, even allowing for the luck of few runs.
            if mean(&runs.lawn) < mean(&before.lawn) - 0.02 {
                continue;
            }
            tried.push((runs.score(in_log), change, runs));
        }
        tried.sort_by(|a, b| b.0.total_cmp(&a.0));
        // The best of many small samples is partly luck, so the leading ones are compared again on all runs.
        let mut passed: Vec<(f64, Change, Runs)> = Vec::new();
        for (place, (_, change, mut runs)) in tried.into_iter().take(3).enumerate() {
            if place >= 2 && !passed.is_empty() {
                break;
            }
            runs.append(self.run(&change, FIRST_RUNS..RUNS, pocket)?);
            let gains = least_mean_gain(&before.pocket, &runs.pocket, self.question.seed) > 0.0;
            let loses = mean(&runs.lawn) < mean(&before.lawn) - trial::LAWN_LOSS;
            if gains && !loses {
                passed.push((runs.score(in_log), change, runs));
            }
        }
        passed.sort_by(|a, b| b.0.total_cmp(&a.0));
        Ok(passed.into_iter().next().map(|(_, change, runs)| (change, runs)))
    }

    fn told(&self, tried: Tried, pocket: &MissedPocket, in_log: f64, before: &Runs) -> Told {
        let Tried {
            change,
            runs: after,
            ladder,
        } = tried;
        let predicted = Predicted {
            visited_fraction_before: before.lawn_estimate(self.widened),
            visited_fraction_after: after.lawn_estimate(self.widened),
            pocket_fraction_before: before.pocket_estimate(self.widened),
            pocket_fraction_after: after.pocket_estimate(self.widened),
        };
        let certainty = after.certainty(in_log);
        let gain = (mean(&after.pocket) - mean(&before.pocket)).max(0.0);
        let worth = pocket.area_m2 * gain * certainty.powi(3) / (1.0 + 0.15 * change.effort_h);
        let fitted = self.question.fitted;
        let is_exit_known = fitted
            .outings
            .iter()
            .filter(|outing| outing.guide.is_some())
            .count()
            >= 4;
        let suggestion = Suggestion {
            id: String::new(),
            kind: change.kind,
            why: words::why(
                &change,
                &pocket.id,
                predicted.pocket_fraction_before,
                predicted.pocket_fraction_after,
            ),
            geometry: change.geometry.clone(),
            feature: change.feature,
            wire_m: change.wire_m,
            outing_share_fraction: change.share_fraction,
            side: change.faces_deg.map(|faces_deg| Said::FacingSide { faces_deg }),
            pocket_ids: vec![pocket.id.clone()],
            ladder,
            shift_m: change.shift_m,
            added_h_per_day: change.added_h_per_day,
            together_with: Vec::new(),
            pocket_fraction_in_log: in_log,
            predicted,
            certainty: Some(certainty),
            shown_after_h: self.after_h(&change, &after, trial::GAIN),
            done_after_h: self.after_h(&change, &after, trial::DONE),
            cautions: words::cautions(change.kind, is_exit_known, change.added_h_per_day.is_some()),
        };
        Told {
            worth,
            effort_h: change.effort_h,
            suggestion,
        }
    }

    /// Driving hours after which nine gardens in ten have visited more than a given part of the pocket: those of one run if
    /// nine runs in ten do; otherwise as many times longer as it takes if every further run is equally lucky.
    fn after_h(&self, change: &Change, after: &Runs, part: f64) -> Option<f64> {
        let shows = after.pocket.iter().filter(|fraction| **fraction > part).count() as f64;
        let odds = shows / after.pocket.len().max(1) as f64;
        let runs = if odds >= 0.9 {
            1.0
        } else if odds > 0.05 {
            (math::ln(0.1_f64) / math::ln(1.0 - odds)).max(1.0)
        } else {
            return None;
        };
        let longer = change.cast.run.hours / self.cast.run.hours;
        let driving_h = self.path_m / self.cast.machine.speed_mps / 3600.0;
        Some(runs * longer * driving_h)
    }

    fn blank(&self, kind: SuggestionKind, cast: Cast) -> Change {
        Change {
            kind,
            geometry: Vec::new(),
            feature: None,
            name: String::new(),
            wire_m: None,
            share_fraction: None,
            shift_m: None,
            passage_m: None,
            faces_deg: None,
            smaller: Vec::new(),
            added_h_per_day: None,
            cast,
            effort_h: 1.0,
        }
    }

    /// The machine on a changed site; `None` if it has no room there.
    fn on(&self, site: &Site) -> Option<Cast> {
        let yard = Yard::new(site, self.cast.machine.past_boundary_m).ok()?;
        Some(Cast {
            yard,
            ..self.cast.clone()
        })
    }

    /// The machine with another outline for one zone; `None` if it has no room there.
    fn with_zone(&self, kind: SuggestionKind, number: usize, shape: &Region, by_m: f64) -> Option<Change> {
        let zone = &self.question.site.exclusions[number];
        let site = changes::with_zone(&self.site, number, shape);
        Some(Change {
            geometry: changes::outline_of(shape),
            feature: Some(zone.feature),
            name: zone.name.clone(),
            shift_m: Some(by_m),
            ..self.blank(kind, self.on(&site)?)
        })
    }

    fn zone_moves(&self, moved: &[ZoneChange]) -> Vec<Change> {
        let to_where_drawn = |change: &ZoneChange| {
            let drawn = &self.question.site.exclusions[change.zone];
            self.with_zone(SuggestionKind::ZoneMove, change.zone, &drawn.shape, change.by_m)
        };
        moved.iter().filter_map(to_where_drawn).collect()
    }

    fn zone_shrinks(&self) -> Vec<Change> {
        let setback_m = -self.cast.machine.past_boundary_m;
        let ground_m2 = self.cast.yard.turning_region().area_m2();
        shrunk(&self.site, setback_m, self.path_m, ground_m2)
            .iter()
            .filter_map(|change| self.zone_shrink(change))
            .collect()
    }

    fn zone_shrink(&self, change: &ZoneChange) -> Option<Change> {
        let smaller = change.smaller.iter().filter_map(|less| self.zone_shrink(less));
        Some(Change {
            passage_m: Some(change.passage_m),
            faces_deg: change.faces_deg,
            smaller: smaller.collect(),
            ..self.with_zone(
                SuggestionKind::ZoneShrink,
                change.zone,
                &change.shape,
                change.by_m,
            )?
        })
    }

    /// The smallest version of a change that reaches the aim, and what each size brings.
    fn smallest(
        &self,
        (largest, runs): (Change, Runs),
        pocket: usize,
        in_log: f64,
        before: &Runs,
    ) -> Result<Tried, SimulateError> {
        let mut sizes: Vec<(Change, Runs)> = Vec::new();
        for less in &largest.smaller {
            sizes.push((less.clone(), self.run(less, 0..RUNS, pocket)?));
        }
        let aim = mean(&before.pocket) + AIM * (mean(&runs.pocket) - mean(&before.pocket));
        let sure = runs.certainty(in_log) - AS_SURE;
        sizes.push((largest, runs));
        let rung = |(change, runs): &(Change, Runs)| Rung {
            size_m: change.shift_m.or(change.wire_m),
            outing_share_fraction: change.share_fraction,
            added_h_per_day: change.added_h_per_day,
            pocket_fraction_after: Estimate {
                estimate: mean(&runs.pocket),
                ..runs.pocket_estimate(self.widened)
            },
            lawn_gain_fraction: Some(mean(&runs.lawn) - mean(&before.lawn)),
        };
        let ladder: Vec<Rung> = sizes.iter().map(rung).collect();
        let reaches = |(_, runs): &(Change, Runs)| {
            mean(&runs.pocket) >= aim
                && runs.certainty(in_log) >= sure
                && mean(&runs.lawn) >= mean(&before.lawn) - trial::LAWN_LOSS
        };
        // The last one always does.
        let at = sizes.iter().position(reaches).unwrap_or(sizes.len() - 1);
        let (change, runs) = sizes.swap_remove(at);
        Ok(Tried {
            change,
            runs,
            ladder: (ladder.len() > 1).then_some(ladder),
        })
    }

    /// A round zone over each place that caught the machine, if that closes no way.
    fn zone_adds(&self) -> Vec<Change> {
        self.question
            .stuck_spots
            .iter()
            .enumerate()
            .filter_map(|(number, spot)| {
                let disc = Region::disc(spot.place, spot.radius_m + 0.3).ok()?;
                let mut site = self.site.clone();
                site.exclusions.push(tussock_plane::Named {
                    name: format!("stuck spot {}", number + 1),
                    feature: usize::MAX,
                    shape: disc.clone(),
                });
                let cast = self.on(&site)?;
                let parts =
                    |region: &Region| region.parts().iter().filter(|part| part.area_m2() > 1.0).count();
                if parts(cast.yard.turning_region()) > parts(self.cast.yard.turning_region()) {
                    return None;
                }
                Some(Change {
                    geometry: changes::outline_of(&disc),
                    name: format!("stuck spot {}", number + 1),
                    ..self.blank(SuggestionKind::ZoneAdd, cast)
                })
            })
            .collect()
    }

    /// The boundary moved outwards by what the disc does not reach, for strips along it.
    fn boundary_shifts(&self, pocket: usize) -> Vec<Change> {
        let setback_m = -self.cast.machine.past_boundary_m;
        let short_m = setback_m - 0.5 * self.question.cut_width_m;
        let mask = &self.scene.pockets[pocket];
        let region = self.cast.yard.turning_region();
        let (mut beyond, mut cells) = (0.0, 0.0);
        for (column, row) in mask.cells_on() {
            let place = mask.grid.centre(column, row);
            cells += 1.0;
            if !region.contains(place) && region.edge_distance_m(place) > 0.5 * self.question.cut_width_m {
                beyond += 1.0;
            }
        }
        if !(0.05..=1.5).contains(&short_m) || beyond < 0.5 * cells || cells == 0.0 {
            return Vec::new();
        }
        let by_m = (100.0 * (short_m + 0.02)).ceil() / 100.0;
        let drawn = self.site.boundary.as_ref().unwrap_or(&self.site.drawn_lawn);
        let Ok(shifted) = drawn.grown_by(by_m, Joins::Mitred) else {
            return Vec::new();
        };
        let mut site = self.site.clone();
        site.boundary = Some(shifted.clone());
        let Some(cast) = self.on(&site) else {
            return Vec::new();
        };
        vec![Change {
            geometry: changes::outline_of(&shifted),
            shift_m: Some(by_m),
            effort_h: 2.0 + drawn.perimeter_m() / 40.0,
            ..self.blank(SuggestionKind::BoundaryShift, cast)
        }]
    }

    /// The change with a quarter and half as many hours again, and with twice as many.
    fn with_hours(&self, change: &Change) -> Vec<Change> {
        let days = self.question.fitted.days.max(1) as f64;
        let (hours, per_day_h) = (self.cast.run.hours, self.question.fitted.hours / days);
        [1.25, 1.5, 2.0]
            .into_iter()
            // A day has 24 hours.
            .filter(|times| hours * times <= MOST_HOURS && per_day_h * times <= 24.0)
            .map(|times| {
                let added_h = per_day_h * (times - 1.0);
                let mut longer = change.clone();
                longer.cast.run.hours = hours * times;
                longer.added_h_per_day = Some(added_h);
                longer.effort_h += 1.0 + 0.25 * added_h;
                longer
            })
            .collect()
    }

    fn hours(&self) -> Vec<Change> {
        let unchanged = Change {
            effort_h: 0.0,
            ..self.blank(SuggestionKind::MoreHours, self.cast.clone())
        };
        // The longest is the surest; shorter ones are its smaller sizes.
        let mut longer = self.with_hours(&unchanged);
        let longest = longer.pop().map(|longest| Change {
            smaller: longer,
            ..longest
        });
        longest.into_iter().collect()
    }
}
