//! What was predicted before, beside what is measured after.

use super::{Both, SideSeen, built};
use tussock_plane::{Region, Site};
use tussock_types::{Findings, LawnWhen, Place, PredictionHeld, Suggestion, SuggestionKind};

/// A guide run that lies this near to the suggested one, on average, is that one.
const SAME_LINE_M: f64 = 1.0;
/// Zones that differ by less of their area are the same.
const SAME_ZONE: f64 = 0.15;
/// Part of the added hours that counts as done.
const MOST_OF_HOURS: f64 = 0.7;

/// Suggestions of the before side with what came of them.
pub(super) fn predictions(
    before: &Findings,
    site_before: &Site,
    site_after: &Site,
    pockets: &[Both],
    after: &SideSeen,
    times_hours: f64,
) -> Vec<PredictionHeld> {
    before
        .suggestions
        .iter()
        .flatten()
        .filter_map(|suggestion| {
            let pocket = suggestion.pocket_ids.first()?;
            let number = pockets
                .iter()
                .position(|both| both.found == LawnWhen::Before && both.id == *pocket)?;
            let measured = after.pockets.get(number).copied()?;
            let predicted = suggestion.predicted.pocket_fraction_after;
            let holds = predicted.low.is_none_or(|low| measured >= low)
                && predicted.high.is_none_or(|high| measured <= high);
            Some(PredictionHeld {
                id: suggestion.id.clone(),
                was_built: was_built(before, site_before, site_after, suggestion, times_hours),
                pocket: pocket.clone(),
                predicted_fraction: predicted,
                measured_fraction: measured,
                holds,
            })
        })
        .collect()
}

fn was_built(
    before: &Findings,
    site_before: &Site,
    site_after: &Site,
    suggestion: &Suggestion,
    times_hours: f64,
) -> bool {
    let Some(plan) = &before.plan else { return false };
    let hours_h = super::hours_per_night(before);
    let hours_done = suggestion.added_h_per_day.is_none_or(|added_h| {
        // Added hours are on the clock, driving is a part of them.
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
            // As the plan would be with it, and nearer to that than to the plan before.
            let wished = Site::build_in(&built(plan, &site_before.frame, suggestion), site_before.frame);
            wished.is_ok_and(|(wished, _)| {
                let off_m2 = |a: &Region, b: &Region| {
                    let less =
                        |x: &Region, y: &Region| x.minus(y).map_or(f64::INFINITY, |left| left.area_m2());
                    less(a, b) + less(b, a)
                };
                let change_m2 = off_m2(&wished.lawn, &site_before.lawn);
                let zone_m2 = Region::from_rings(vec![vec![suggestion.geometry.clone()]])
                    .map_or(0.0, |zone| zone.area_m2());
                let left_m2 = off_m2(&wished.lawn, &site_after.lawn);
                // A shifted boundary changes no lawn.
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

/// Mean distance of a line's places from another line, the larger of both ways.
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
