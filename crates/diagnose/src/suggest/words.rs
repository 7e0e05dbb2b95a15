//! What is said beside a suggestion.

use super::Change;
use tussock_types::{Estimate, SuggestionKind};

const DIG: &str = "Before you dig: have buried cables and pipes located; private lines are not marked.";
const BLADES: &str = "Moving blades: stop and disable the machine before you work near it.";
const ZONE: &str =
    "A zone may protect roots, wiring or people: find out why it is there before you change it.";
const HOURS: &str = "Add hours by day: at night small animals are about.";
const OUTSIDE: &str =
    "Beyond the line may be paving, water, a slope or somebody else's ground: look before you shift it.";
const MANUAL: &str = "Local codes and the machine's own manual come first.";

/// What stands beside a change of this kind.
pub(super) fn cautions(kind: SuggestionKind, is_exit_known: bool, adds_hours: bool) -> Vec<String> {
    let mut said: Vec<&str> = match kind {
        SuggestionKind::GuideRun => vec![DIG, BLADES],
        SuggestionKind::ZoneMove | SuggestionKind::ZoneShrink => vec![ZONE, DIG, BLADES],
        SuggestionKind::ZoneAdd => vec![
            "Look at the ground first: a root, an edge or wet ground that can be mended needs no zone.",
            DIG,
            BLADES,
        ],
        SuggestionKind::MoreHours => vec![HOURS],
        SuggestionKind::BoundaryShift => vec![OUTSIDE, DIG, BLADES],
    };
    if adds_hours && kind != SuggestionKind::MoreHours {
        said.push(HOURS);
    }
    if kind == SuggestionKind::GuideRun && !is_exit_known {
        said.push(
            "Where along a guide run this machine leaves it is not in the log; somewhere on the last two fifths is assumed. Where \
             it can be set, let it leave near the end.",
        );
    }
    said.push(MANUAL);
    said.into_iter().map(str::to_owned).collect()
}

fn percent(fraction: f64) -> String {
    format!("{:.0} %", 100.0 * fraction)
}

/// The change in one sentence, without its gain.
fn deed(change: &Change, pocket: &str) -> String {
    let mut deed = match change.kind {
        SuggestionKind::GuideRun => format!(
            "Lay a guide run of {:.0} m of new wire to the far end of {pocket} and send {:.0} of 10 outings along it",
            change.wire_m.unwrap_or(0.0),
            10.0 * change.share_fraction.unwrap_or(0.0)
        ),
        SuggestionKind::ZoneMove => format!(
            "Move the zone \"{}\" by {:.2} m to where it is drawn: turns show that it stands beside that place",
            change.name,
            change.shift_m.unwrap_or(0.0)
        ),
        SuggestionKind::ZoneShrink => format!(
            "Move the side of the zone \"{}\" back by {:.2} m, so that the way beside it to {pocket} is {:.2} m wide",
            change.name,
            change.shift_m.unwrap_or(0.0),
            change.passage_m.unwrap_or(0.0)
        ),
        SuggestionKind::ZoneAdd => format!(
            "Keep the machine out of the place where it gets stuck ({}), so that it comes to {pocket} more often",
            change.name
        ),
        SuggestionKind::MoreHours => {
            return format!(
                "Let it work {:.1} h longer a day",
                change.added_h_per_day.unwrap_or(0.0)
            );
        }
        SuggestionKind::BoundaryShift => format!(
            "Shift the boundary outwards by {:.0} cm along {pocket}",
            100.0 * change.shift_m.unwrap_or(0.0)
        ),
    };
    if let Some(added_h) = change.added_h_per_day {
        deed.push_str(&format!(", and let it work {added_h:.1} h longer a day"));
    }
    deed
}

/// One sentence: what to do, and what most logs of so many hours will show.
pub(super) fn why(change: &Change, pocket: &str, before: Estimate, after: Estimate) -> String {
    format!(
        "{}: in most logs of {:.0} h about {} of {pocket} is then driven over, against {} if nothing changes.",
        deed(change, pocket),
        change.cast.run.hours,
        percent(after.estimate),
        percent(before.estimate)
    )
}
