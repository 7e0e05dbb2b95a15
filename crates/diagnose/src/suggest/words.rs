//! What is said beside a suggestion.

use super::Change;
use tussock_types::{Estimate, Said, SuggestionKind};

/// The cautions for a change of this kind.
pub(super) fn cautions(kind: SuggestionKind, is_exit_known: bool, adds_hours: bool) -> Vec<Said> {
    let first = match kind {
        SuggestionKind::ZoneMove | SuggestionKind::ZoneShrink => Some(Said::ZoneMayProtect {}),
        SuggestionKind::ZoneAdd => Some(Said::LookBeforeZone {}),
        SuggestionKind::BoundaryShift => Some(Said::BeyondTheLine {}),
        SuggestionKind::GuideRun | SuggestionKind::MoreHours => None,
    };
    let is_work = kind != SuggestionKind::MoreHours;
    let is_exit_assumed = kind == SuggestionKind::GuideRun && !is_exit_known;
    [
        first,
        is_work.then_some(Said::Dig {}),
        is_work.then_some(Said::BladesNear {}),
        (adds_hours || !is_work).then_some(Said::HoursByDay {}),
        is_exit_assumed.then_some(Said::GuideExitUnknown {}),
        Some(Said::LocalCodes {}),
    ]
    .into_iter()
    .flatten()
    .collect()
}

/// What to do, and what most logs of this many hours will show.
pub(super) fn why(change: &Change, pocket: &str, before: Estimate, after: Estimate) -> Said {
    let (pocket, log_h) = (pocket.to_owned(), change.cast.run.hours);
    let (before_fraction, after_fraction) = (before.estimate, after.estimate);
    let longer = change.added_h_per_day.is_some().into();
    let added_h = change.added_h_per_day.unwrap_or(0.0);
    let shift_m = change.shift_m.unwrap_or(0.0);
    let name = change.name.clone();
    match change.kind {
        SuggestionKind::GuideRun => Said::LayGuideRun {
            wire_m: change.wire_m.unwrap_or(0.0),
            outings_of_ten: (10.0 * change.share_fraction.unwrap_or(0.0)).round() as u64,
            pocket,
            longer,
            added_h,
            log_h,
            before_fraction,
            after_fraction,
        },
        SuggestionKind::ZoneMove => Said::MoveZone {
            zone: name,
            shift_m,
            pocket,
            longer,
            added_h,
            log_h,
            before_fraction,
            after_fraction,
        },
        SuggestionKind::ZoneShrink => Said::ShrinkZone {
            zone: name,
            faces_deg: change.faces_deg.unwrap_or(0.0),
            shift_m,
            passage_m: change.passage_m.unwrap_or(0.0),
            pocket,
            longer,
            added_h,
            log_h,
            before_fraction,
            after_fraction,
        },
        SuggestionKind::ZoneAdd => Said::AddZone {
            spot: name,
            pocket,
            longer,
            added_h,
            log_h,
            before_fraction,
            after_fraction,
        },
        SuggestionKind::MoreHours => Said::WorkLonger {
            added_h,
            pocket,
            log_h,
            before_fraction,
            after_fraction,
        },
        SuggestionKind::BoundaryShift => Said::ShiftBoundary {
            shift_m,
            pocket,
            longer,
            added_h,
            log_h,
            before_fraction,
            after_fraction,
        },
    }
}
