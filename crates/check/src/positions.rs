//! Are the positions as good as stated, and the same in both halves of the log?

use crate::{Follows, ground};
use tussock_locate::left_out::{self, MOST_RATIO};
use tussock_locate::noise::USUAL_DRIFT_TIME_S;
use tussock_locate::turns::Turn;
use tussock_survey::Survey;
use tussock_types::math;
use tussock_types::{Check, CheckKind, Said};

/// Fixes that are left out, against the fixes before and after on the same straight leg: their spread over the stated one (a
/// ratio).
pub fn fixes_left_out(survey: &Survey<'_>) -> Option<(Check, Follows)> {
    let ratios = survey.tracks.iter().filter_map(left_out::error_ratio);
    let ratio = ratios.max_by(|a, b| a.total_cmp(b))?;
    let times = (ratio / MOST_RATIO).max(1.0);
    let check = Check::of(
        CheckKind::FixesLeftOut,
        ratio,
        (None, Some(MOST_RATIO)),
        Said::IntervalWider { times },
    );
    // Turns that lie along the edges confirm the path, whatever the errors are.
    let follows = match ground::plan_place(survey) {
        Some((place, _)) if place.holds => Follows::Times { times },
        _ => Follows::TimesAndAsLogged { times },
    };
    Some((check, follows))
}

/// The halves may lie this far apart whatever chance says: nobody draws an edge more exactly ...
pub const HALVES_M: f64 = 0.05;
/// ... and by this many standard deviations of the difference: chance does that in one of three thousand logs (Rayleigh).
pub const HALVES_SDS: f64 = 4.0;
/// Fewer turns than this in a half do not show a place.
const LEAST_TURNS: usize = 25;
/// Turns farther than this from where they are usual were made at something else.
const REACH_M: f64 = 1.0;

/// Where the plan lies according to the turns of the first half, against those of the second: how far apart, in metres.
pub fn halves_of_log(survey: &Survey<'_>) -> Option<(Check, Follows)> {
    survey.site.as_ref()?;
    let (turns, setback) = (survey.turns().ok()?, survey.setback().ok()?);
    let mut worst: Option<(f64, f64)> = None;
    for (track, turns) in survey.tracks.iter().zip(turns) {
        if track.anchored.is_some() {
            continue;
        }
        let at_edges: Vec<&Turn> = (turns.iter())
            .filter(|turn| {
                turn.at
                    .is_some_and(|at| (at.inside_m - setback.inside_m).abs() <= REACH_M)
            })
            .collect();
        let (first, second) = at_edges.split_at(at_edges.len() / 2);
        let (Some(first), Some(second)) = (place(first, setback.inside_m), place(second, setback.inside_m))
        else {
            continue;
        };
        let apart_m = math::hypot(first.0 - second.0, first.1 - second.1);
        let span_s = track.span_s.map_or(0.0, |(from_s, to_s)| 0.5 * (to_s - from_s));
        let drift_m = track
            .noise
            .drift_m
            .or_else(|| track.unseen_drift_m())
            .unwrap_or(0.0);
        let drift_s = track.noise.drift_time_s.unwrap_or(USUAL_DRIFT_TIME_S);
        let shared_m = drift_m / (1.0 + span_s / (2.0 * drift_s)).sqrt();
        let sd_m = math::hypot(
            math::hypot(first.2, second.2),
            std::f64::consts::SQRT_2 * shared_m,
        );
        if worst.is_none_or(|(other_m, _)| apart_m > other_m) {
            worst = Some((apart_m, sd_m));
        }
    }
    let (apart_m, sd_m) = worst?;
    let high_m = f64::max(HALVES_M, HALVES_SDS * sd_m);
    let lawn = survey.lawn().ok()?;
    let more_fraction =
        0.5 * apart_m * lawn.region.perimeter_m() / std::f64::consts::PI / lawn.region.area_m2().max(1e-9);
    let check = Check::of(
        CheckKind::HalvesOfLog,
        apart_m,
        (None, Some(high_m)),
        Said::IntervalWiderBy { more_fraction },
    );
    Some((
        check,
        Follows::Adds {
            sd_fraction: more_fraction,
        },
    ))
}

/// How far the turns lie to the east and north of where the edges put them (least squares), and the standard deviation per
/// axis.
fn place(turns: &[&Turn], setback_m: f64) -> Option<(f64, f64, f64)> {
    if turns.len() < LEAST_TURNS {
        return None;
    }
    let (mut ee, mut en, mut nn, mut re, mut rn) = (0.0, 0.0, 0.0, 0.0, 0.0);
    let offs = || {
        (turns.iter())
            .filter_map(|turn| turn.at)
            .map(|at| (at.inwards, at.inside_m - setback_m))
    };
    for (inwards, off_m) in offs() {
        ee += inwards.east * inwards.east;
        en += inwards.east * inwards.north;
        nn += inwards.north * inwards.north;
        re += inwards.east * off_m;
        rn += inwards.north * off_m;
    }
    let determinant = ee * nn - en * en;
    if !(determinant > 0.01 * (turns.len() as f64).powi(2)) {
        return None;
    }
    let (east_m, north_m) = (
        (nn * re - en * rn) / determinant,
        (ee * rn - en * re) / determinant,
    );
    let squares: f64 = offs()
        .map(|(inwards, off_m)| (off_m - east_m * inwards.east - north_m * inwards.north).powi(2))
        .sum();
    let scatter_m2 = squares / (turns.len() as f64 - 2.0);
    let sd_m = (0.5 * scatter_m2 * (ee + nn) / determinant).sqrt();
    Some((east_m, north_m, sd_m))
}
