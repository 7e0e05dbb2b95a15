//! What was predicted before, beside what was measured after.

use super::{Both, SideSeen, built};
use tussock_diagnose::suggest::pocket_predicted;
use tussock_plane::{Named, Region, Site};
use tussock_simulate::Yard;
use tussock_survey::Survey;
use tussock_survey::fitted::UNKNOWN_SHARE_FRACTION;
use tussock_types::{
    BuiltAs, Estimate, Findings, LawnWhen, Place, PredictionHeld, Suggestion, SuggestionKind,
};

/// A guide run that lies this close to the suggested one, on average, is taken to be that one.
const SAME_LINE_M: f64 = 1.0;
/// Zones that differ by less than this part of their area are the same.
const SAME_ZONE: f64 = 0.15;
/// The change of hours counts as made once this part of the added hours is there.
const MOST_OF_HOURS: f64 = 0.7;
/// Nights whose hours differ by less than this part count as equally long.
const OTHER_HOURS: f64 = 0.2;

/// Smaller changes of the lawn come from drawing.
const SAME_LAWN_M2: f64 = 0.5;
/// Runs behind a prediction of what was built.
const RUNS: u64 = 100;
/// Longer runs are not made.
const MOST_RUN_H: f64 = 200.0;

/// The state after the change, and the machine from before it.
pub(super) struct AfterPlan<'a> {
    pub(super) site: &'a Site,
    pub(super) survey: Option<&'a Survey<'a>>,
    /// Driving hours of a night after the change over those before.
    pub(super) times_night_h: f64,
    /// Driving hours of the logs after the change over those before.
    pub(super) times_log_h: f64,
    pub(super) seed: u64,
}

/// The suggestions of the side before, with what came of them; and, for pockets for which something else was built, what the
/// earlier machine is predicted to do with that.
pub(super) fn predictions(
    before: &Findings,
    site_before: &Site,
    after_plan: &AfterPlan<'_>,
    pockets: &[Both],
    seen_before: &SideSeen,
    seen_after: &SideSeen,
) -> Vec<PredictionHeld> {
    let otherwise = as_built(before, site_before, after_plan, seen_before);
    let mut all = Vec::new();
    for (number, both) in pockets.iter().enumerate() {
        let Some(measured) = seen_after.pockets.get(number).copied() else {
            continue;
        };
        if both.found != LawnWhen::Before {
            continue;
        }
        let mut tell = |suggestion: Option<&Suggestion>, built, predicted: Estimate| {
            all.push(PredictionHeld {
                id: suggestion.map(|suggestion| suggestion.id.clone()),
                built,
                pocket: both.id.clone(),
                predicted_fraction: predicted,
                measured_fraction: measured,
                holds: predicted.low.is_none_or(|low| measured >= low)
                    && predicted.high.is_none_or(|high| measured <= high),
            });
        };
        let (built, others): (Vec<&Suggestion>, Vec<&Suggestion>) = before
            .suggestions
            .iter()
            .flatten()
            .filter(|suggestion| suggestion.pocket_ids.first() == Some(&both.id))
            .partition(|suggestion| was_built(before, site_before, after_plan, suggestion));
        let told = |suggestion: &Suggestion| suggestion.predicted.pocket_fraction_after;
        if let (true, Some(runs)) = (built.is_empty(), &otherwise) {
            tell(others.first().copied(), BuiltAs::Otherwise, runs[number]);
            continue;
        }
        for suggestion in built {
            tell(Some(suggestion), BuiltAs::Suggested, told(suggestion));
        }
        for suggestion in others {
            tell(Some(suggestion), BuiltAs::Nothing, told(suggestion));
        }
    }
    all
}

/// What the earlier machine is predicted to visit of each pocket on the later plan, in as many hours as were logged; `None`
/// if the plans are alike, or if no machine is trusted to drive like the logged one.
fn as_built(
    before: &Findings,
    site_before: &Site,
    after_plan: &AfterPlan<'_>,
    seen_before: &SideSeen,
) -> Option<Vec<Estimate>> {
    let site_after = after_plan.site;
    let is_trusted = before.fit.as_ref().is_none_or(|fit| fit.is_trusted);
    if !is_trusted || !differs(site_before, site_after, after_plan.times_night_h) {
        return None;
    }
    let fitted = after_plan.survey?.machine().ok()?;
    let mut cast = seen_before.cast.clone()?;
    cast.run.hours *= after_plan.times_log_h;
    if cast.run.hours > MOST_RUN_H {
        return None;
    }
    let share = |number: usize, guide: &[Place]| {
        let known = site_before
            .guides
            .iter()
            .position(|other| apart_m(&other.shape, guide) <= SAME_LINE_M);
        let of_log = known.and_then(|known| fitted.guide_shares_fraction.get(known).copied().flatten());
        let planned = site_after.guide_shares_fraction.get(number).copied().flatten();
        Some(of_log.or(planned).unwrap_or(UNKNOWN_SHARE_FRACTION))
    };
    let mut site = site_after.clone();
    site.station = site.station.or(fitted.station);
    site.guide_shares_fraction = site_after
        .guides
        .iter()
        .enumerate()
        .map(|(number, guide)| share(number, &guide.shape))
        .collect();
    cast.yard = Yard::new(&site, fitted.machine.past_boundary_m).ok()?;
    let runs = cast.play(&seen_before.scene, after_plan.seed, 0..RUNS).ok()?;
    let predicted = |number: usize| {
        let visited: Vec<f64> = runs.iter().map(|run| run.pockets[number]).collect();
        pocket_predicted(&visited, fitted.position_sd_m)
    };
    Some((0..seen_before.pockets.len()).map(predicted).collect())
}

/// Whether anything was built, or hours changed.
fn differs(before: &Site, after: &Site, times_night_h: f64) -> bool {
    let has = |guides: &[Named<Vec<Place>>], guide: &[Place]| {
        guides
            .iter()
            .any(|other| apart_m(&other.shape, guide) <= SAME_LINE_M)
    };
    let outline = |site: &Site| site.boundary.clone().unwrap_or_else(|| site.drawn_lawn.clone());
    off_m2(&before.lawn, &after.lawn) > SAME_LAWN_M2
        || off_m2(&outline(before), &outline(after)) > SAME_LAWN_M2
        || after
            .guides
            .iter()
            .any(|guide| !has(&before.guides, &guide.shape))
        || before
            .guides
            .iter()
            .any(|guide| !has(&after.guides, &guide.shape))
        || (times_night_h - 1.0).abs() > OTHER_HOURS
}

/// Ground that belongs to only one of the two regions.
fn off_m2(one: &Region, other: &Region) -> f64 {
    let less = |one: &Region, other: &Region| one.minus(other).map_or(f64::INFINITY, |left| left.area_m2());
    less(one, other) + less(other, one)
}

fn was_built(
    before: &Findings,
    site_before: &Site,
    after_plan: &AfterPlan<'_>,
    suggestion: &Suggestion,
) -> bool {
    let (site_after, times_hours) = (after_plan.site, after_plan.times_night_h);
    let Some(plan) = &before.plan else { return false };
    let hours_h = super::hours_per_night(before);
    let hours_done = suggestion.added_h_per_day.is_none_or(|added_h| {
        // Added hours are on the clock; driving is a part of them.
        let on_clock_h = before
            .nights
            .as_ref()
            .and_then(|nights| nights.first())
            .map_or(hours_h, |night| (night.end_s - night.start_s) / 3600.0);
        times_hours >= 1.0 + MOST_OF_HOURS * added_h / on_clock_h.max(1e-9)
    });
    let is_there = match suggestion.kind {
        SuggestionKind::MoreHours => true,
        SuggestionKind::GuideRun => site_after
            .guides
            .iter()
            .any(|guide| apart_m(&suggestion.geometry, &guide.shape) <= SAME_LINE_M),
        SuggestionKind::ZoneAdd => {
            Region::from_rings(vec![vec![suggestion.geometry.clone()]]).is_ok_and(|zone| {
                site_after.exclusions.iter().any(|other| {
                    other
                        .shape
                        .intersect(&zone)
                        .is_ok_and(|shared| shared.area_m2() > 0.5 * zone.area_m2())
                })
            })
        }
        SuggestionKind::ZoneMove | SuggestionKind::ZoneShrink | SuggestionKind::BoundaryShift => {
            // The plan must look as it would with the suggestion, and be closer to that than to the plan before.
            let wished = Site::build_in(&built(plan, &site_before.frame, suggestion), site_before.frame);
            wished.is_ok_and(|(wished, _)| {
                let change_m2 = off_m2(&wished.lawn, &site_before.lawn);
                let zone_m2 = Region::from_rings(vec![vec![suggestion.geometry.clone()]])
                    .map_or(0.0, |zone| zone.area_m2());
                let left_m2 = off_m2(&wished.lawn, &site_after.lawn);
                // A shifted boundary does not change the lawn.
                match (suggestion.kind, &wished.boundary, &site_after.boundary) {
                    (SuggestionKind::BoundaryShift, Some(one), Some(two)) => {
                        off_m2(one, two) < SAME_ZONE * one.perimeter_m()
                    }
                    (SuggestionKind::BoundaryShift, ..) => false,
                    _ => left_m2 < 0.5 * change_m2 || (change_m2 == 0.0 && left_m2 < SAME_ZONE * zone_m2),
                }
            })
        }
    };
    is_there && hours_done
}

/// Mean distance of one line's places from the other line, the larger of both directions.
fn apart_m(one: &[Place], two: &[Place]) -> f64 {
    let looks = |line: &[Place]| -> Vec<Place> {
        line.windows(2)
            .flat_map(|pair| pair[0].pieces(pair[1], 0.5).1)
            .collect()
    };
    let mean_m = |from: &[Place], to: &[Place]| {
        let from = looks(from);
        let sum: f64 = from
            .iter()
            .map(|place| {
                to.windows(2)
                    .map(|pair| {
                        let near = tussock_plane::nearest_on_piece(pair[0], pair[1], *place);
                        near.distance_m(*place)
                    })
                    .fold(f64::INFINITY, f64::min)
            })
            .sum();
        sum / from.len().max(1) as f64
    };
    mean_m(one, two).max(mean_m(two, one))
}
