//! Are the claims about single places consistent with the verdict and the silences?

use crate::Follows;
use tussock_coverage::luck::MISSED_CHANCE_FRACTION;
use tussock_survey::{Survey, unseen};
use tussock_types::{Check, CheckKind, LogVerdict, MissedPocket, NotYetPocket, Place, Said, UnseenGround};

/// Silences against claims of missed ground: the largest chance that such ground was driven over during a silence.
pub fn silences(survey: &Survey<'_>, missed: &[MissedPocket]) -> Option<(Check, Follows)> {
    let drive = survey.drive().ok()?;
    let hidden = unseen::hidden(survey, drive.lawn_m2);
    if hidden.is_empty() {
        return None;
    }
    let chance = |pocket: &MissedPocket| {
        let place = Place::new(pocket.east_m, pocket.north_m);
        unseen::chance(&hidden, place, pocket.widest_m, drive.cut_width_m)
    };
    let chance_fraction = missed.iter().map(chance).fold(0.0, f64::max);
    let check = Check::of(
        CheckKind::Silences,
        chance_fraction,
        (None, Some(MISSED_CHANCE_FRACTION)),
        Said::HiddenBySilence { chance_fraction },
    );
    Some((check, Follows::Nothing))
}

/// The width that the verdict says the log can show, against what is drawn: the widest ground that stays undecided, in
/// metres.
pub fn shown_ground(
    verdict: &LogVerdict,
    not_yet: &[NotYetPocket],
    unseen: &[UnseenGround],
) -> (Check, Follows) {
    // The widest place of unseen ground is at most that of a disc of the same area.
    let widest_m = |ground: &UnseenGround| (ground.area_m2 / std::f64::consts::FRAC_PI_4).sqrt();
    let undecided_m = (not_yet.iter().map(|pocket| pocket.widest_m))
        .chain(unseen.iter().map(widest_m))
        .fold(0.0, f64::max);
    let check = Check::of(
        CheckKind::ShownGround,
        undecided_m,
        (None, Some(verdict.smallest_findable_width_m)),
        Said::ShowsWider {
            widest_m: undecided_m,
        },
    );
    (check, Follows::Nothing)
}
