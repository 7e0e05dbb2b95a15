//! How sure is the visited fraction?
//!
//! Pasts drawn from the log spread too little: what they share (a fence that is missing from the plan, a corner that was
//! missed, the distance at which the machine turns) does not show in them. On a few hundred simulated gardens the error of
//! the estimate was compared with what is known about a log: its spread from past to past, the position error that is left,
//! and the share of turns that no edge explains. The constants here are the result, and a test checks them. The interval is
//! the estimate plus and minus 1.645 standard deviations (90 %), kept within 0 and 1.
//!
//! | how the path was found | bias removed | standard deviation |
//! |---|---|---|
//! | lines fitted to legs | what more of the same error adds ([`tussock_coverage::bias`]) | 0.06 points, and more with drift |
//! | held by edges | by position error and unexplained turns | 0.17 points + 1.1 per metre of position error, more with unexplained turns |
//! | not held by edges | none | 3 points per metre of position error |
//! | turns put back | none | 0.1 points + 0.007 points per second of period, + 1.4 points per metre; lanes 0.15 + 0.03 points per second; metre errors 4 points |
//! | smoothed, chords | none | 0.6 points; on the upper side 0.4 points per second of period |
//!
//! Metre logs with hours of poor sky lose path beyond the edges of the lawn: 20 points for the share of such time are added
//! back, with a standard deviation of 13.
//!
//! Silences raise the estimate by what was probably driven over in them, and widen the interval ([`crate::unseen`]).
//!
//! A jump of the receiver that stays (a step) adds half of the strip by which it moves the lawn.
//!
//! Edges that lie elsewhere than the turns show, once the whole plan has been moved, add three quarters of the ground
//! between.
//!
//! An outline drawn from the drive adds the strip by which its edges may be off ([`crate::outline`]).
//!
//! Ground on which positions are always off in the same direction ([`tussock_locate::local_bias`]) and were straightened
//! adds 7 points for its share of the lawn.
//!
//! Lanes with poor positions: how far they overlap cannot be seen, so their number and spacing tell (`lanes`), less the rim that
//! the usual setback leaves. Where lanes are not told one by one, the interval runs from the random-search law to all ground that was reached.

use crate::Survey;
use crate::coverage_count::CoverageCount;
use crate::lanes;
use crate::unseen::HiddenFraction;
use tussock_coverage::luck;
use tussock_coverage::pockets;
use tussock_locate::plan_fit::EdgeFit;
use tussock_locate::turns::Setback;
use tussock_locate::{PathMethod, Track};
use tussock_simulate::laws;
use tussock_types::Estimate;
use tussock_types::math;

/// Points per standard deviation are small numbers; this turns them into fractions.
const POINT: f64 = 0.01;
/// Share of turns that no edge explains, on lawns without surprises.
const USUAL_UNEXPLAINED: f64 = 0.22;
/// With a larger position error the overlap of lanes cannot be seen.
const LANES_SEEN_M: f64 = 0.03;
/// Under larger errors, turns that were put back are guesses.
const POOR_M: f64 = 0.5;
/// Least width of a gap that lanes leave when they skip ground.
const SKIPPED_M: f64 = 0.4;

/// Share of straightened ground whose visits are uncertain, as a standard deviation.
const BENT_SHARE: f64 = 0.07;

/// Edges of good plans lie within half a centimetre of where precise logs turn.
const EDGE_OFF_M: f64 = 0.012;
/// Share of the ground between edges as drawn and as shown by turns that is uncertain, as a standard deviation: on four
/// gardens with bent positions the estimate was off by 0.6 to 1.0 of it.
const EDGES_SHARE: f64 = 0.75;

/// A fraction with the bias to remove and its standard deviation, all as fractions.
#[derive(Clone, Copy, Debug, Default)]
struct Doubt {
    bias: f64,
    sd: f64,
    /// Additional uncertainty on the upper side.
    more_above: f64,
}

/// Estimate of the visited fraction with its 90 % interval.
pub fn visited(
    survey: &Survey<'_>,
    counted: &CoverageCount,
    drive: &luck::Drive,
    width_effect: f64,
) -> Estimate {
    let found = counted.visited_fraction();
    let left_m = survey.position_error_m();
    if rests_on_lanes(survey, drive) {
        let estimate = by_lanes(survey, counted, drive, left_m);
        // A drift that nothing shows is no reason to shift the estimate.
        let is_shown = survey.tracks.iter().all(|track| track.unseen_drift_m().is_none());
        return if is_shown {
            estimate
        } else {
            around(found, estimate)
        };
    }
    let doubt = survey
        .tracks
        .iter()
        .map(|track| doubt(track, counted, drive.pattern))
        .fold(
            Doubt::default(),
            |worst, one| if one.sd > worst.sd { one } else { worst },
        );
    let estimate = (found - doubt.bias).clamp(0.0, 1.0);
    let bent_m2: f64 = survey
        .tracks
        .iter()
        .filter_map(|track| track.bent.as_ref())
        .map(|bent| bent.area_m2)
        .sum();
    let bent_sd = BENT_SHARE * (bent_m2 / drive.lawn_m2.max(1e-9)).min(1.0);
    // After a step the drive is displaced from the ground that it drove on, by a strip as wide as the remaining step and as
    // long as the lawn is wide, which is the length of its edges over pi, averaged over all directions (Cauchy 1832).
    let strip_m2 = step_m(survey) * counted.rim_m() / std::f64::consts::PI;
    let step_sd = 0.5 * (strip_m2 / drive.lawn_m2.max(1e-9)).min(1.0);
    let edges_sd = EDGES_SHARE * (edges_m2(survey) / drive.lawn_m2.max(1e-9)).min(1.0);
    // Along all edges of an outline drawn from the drive lies a strip, beyond or inside it, of which little is under the
    // disc.
    let drawn = survey.lawn().ok().and_then(|lawn| lawn.drawn.as_ref());
    let outline_sd = drawn.map_or(0.0, |drawn| {
        drawn.edge_sd_m * counted.rim_m() * found / drive.lawn_m2.max(1e-9)
    });
    let sds = [doubt.sd, width_effect, bent_sd, step_sd, edges_sd, outline_sd];
    let sd = sds.into_iter().fold(0.0, math::hypot);
    Estimate {
        high: Some((estimate + Estimate::END_SDS * sd + doubt.more_above).min(1.0)),
        ..Estimate::of_fraction(estimate, sd)
    }
}

/// Whether positions do not show the places of lanes, so that the visited fraction rests on their number and not on the squares of the map.
pub fn rests_on_lanes(survey: &Survey<'_>, drive: &luck::Drive) -> bool {
    drive.pattern == luck::Pattern::Lanes && survey.position_error_m() > LANES_SEEN_M
}

/// Ground between the edges of the plan and where the turns show them, once the whole plan has been moved; less what chance
/// explains.
fn edges_m2(survey: &Survey<'_>) -> f64 {
    let edges = survey.plan_fit().into_iter().flat_map(|fit| &fit.edges);
    let strip_m2 = |edge: &EdgeFit| {
        let chance_m = EDGE_OFF_M.max(1.5 * edge.sd_m);
        (edge.inside_m * edge.inside_m - chance_m * chance_m)
            .max(0.0)
            .sqrt()
            * edge.edge.length_m
    };
    edges.map(strip_m2).sum()
}

/// The same with what was driven over while nothing was logged. Each has its own uncertainty.
pub fn beyond_silences(logged: Estimate, hidden: HiddenFraction) -> Estimate {
    let estimate = (logged.estimate + hidden.expected_fraction).min(1.0);
    let low = |low: f64| {
        estimate
            - math::hypot(
                logged.estimate - low,
                hidden.expected_fraction - hidden.low_fraction,
            )
    };
    let high = |high: f64| {
        estimate
            + math::hypot(
                high - logged.estimate,
                hidden.high_fraction - hidden.expected_fraction,
            )
    };
    Estimate {
        estimate,
        low: logged.low.map(|end| low(end).max(0.0)),
        high: logged.high.map(|end| high(end).min(1.0)),
    }
}

/// The interval, widened to hold what was counted.
fn around(found: f64, interval: Estimate) -> Estimate {
    Estimate {
        estimate: found,
        low: interval.low.map(|low| low.min(found)),
        high: interval.high.map(|high| high.max(found)),
    }
}

/// Width of the smallest pocket that the positions support, over the position error per axis: 2.5 times the 90 % radius of a
/// circular normal error, which is 2.146 standard deviations (rounded; found in simulated gardens).
pub const WIDTH_PER_SD: f64 = 5.4;

/// How far stretches before and after a step of the receiver may still be displaced against each other; 0 without steps.
pub fn step_m(survey: &Survey<'_>) -> f64 {
    let steps = survey.tracks.iter().flat_map(|track| &track.steps);
    steps.map(|step| step.left_m).fold(0.0, f64::max)
}

/// Time in which the receiver assumes several times its usual error, each second weighted by how much of it is lost: one
/// part in `error_factor` is left.
fn poor_share(track: &Track) -> f64 {
    let kept = &track.kept;
    let lost: f64 = (0..kept.len())
        .map(|index| 1.0 - 1.0 / kept.error_factor_at(index))
        .sum();
    lost / (kept.len() as f64).max(1.0)
}

fn doubt(track: &Track, counted: &CoverageCount, pattern: luck::Pattern) -> Doubt {
    let left_m = track.position_error_m();
    let of_sd = |sd| Doubt {
        sd,
        ..Doubt::default()
    };
    match (track.method, &track.anchored) {
        (PathMethod::Anchored, Some(anchored)) => {
            let spread = counted.likely.as_ref().map_or(0.0, |likely| likely.fraction_sd());
            if !anchored.is_held() {
                return of_sd(math::hypot(spread, POINT * (0.3 + 3.0 * left_m)));
            }
            let poor = if track.noise.drift_m.is_some_and(|drift_m| drift_m > POOR_M) {
                poor_share(track)
            } else {
                0.0
            };
            let unexplained = (1.0 - anchored.explained_fraction() - USUAL_UNEXPLAINED).max(0.0);
            let surprise = unexplained * left_m.sqrt();
            Doubt {
                bias: POINT * (0.13 - 0.24 * left_m.min(0.6) + 4.8 * surprise - 20.0 * poor),
                sd: math::hypot(
                    spread,
                    POINT * (0.17 + 1.1 * left_m + 5.0 * surprise + 13.0 * poor),
                ),
                ..Doubt::default()
            }
        }
        (PathMethod::Legs, _) => of_sd(math::hypot(
            POINT * (0.04 + 3.0 * left_m),
            0.5 * counted.bias_fraction(),
        )),
        (PathMethod::Rebuilt, _) if pattern == luck::Pattern::Lanes => {
            of_sd(POINT * (0.15 + 0.03 * track.period_s + 1.4 * left_m))
        }
        (PathMethod::Rebuilt, _) if left_m > POOR_M => of_sd(POINT * 4.0),
        (PathMethod::Rebuilt, _) => of_sd(POINT * (0.1 + 0.007 * track.period_s + 1.4 * left_m)),
        _ => Doubt {
            more_above: POINT * 0.4 * (track.period_s - 1.0).max(0.0),
            ..of_sd(POINT * (0.6 + 2.0 * left_m))
        },
    }
}

/// Lanes whose places cannot be seen. Where they are told one by one, their spacing tells what they cover; else it lies between chance and
/// all ground that was reached. Where the machine turns decides how much of the rim is left.
fn by_lanes(survey: &Survey<'_>, counted: &CoverageCount, drive: &luck::Drive, left_m: f64) -> Estimate {
    let settings = survey.settings();
    let mut unvisited = counted.count.lawn.clone();
    unvisited.and_not_in_place(&counted.count.visited);
    let skipped_m2: f64 = pockets::pockets(
        &unvisited,
        SKIPPED_M + 5.0 * left_m,
        settings.pockets.min_area_m2.max(left_m * left_m),
    )
    .iter()
    .map(|pocket| pocket.area_m2 * counted.area_ratio)
    .sum();
    let reached_m2 = (drive.lawn_m2 - skipped_m2).max(1e-9);
    let reached = (reached_m2 / drive.lawn_m2.max(1e-9)).min(1.0);
    let setback = Setback::expected(&settings.machine);
    let rim = |more_sds: f64| {
        let bare_m = setback.inside_m + more_sds * setback.sd_m - 0.5 * drive.cut_width_m;
        (bare_m.max(0.0) * counted.rim_m() / drive.lawn_m2.max(1e-9)).min(1.0)
    };
    let (bare, most_bare, least_bare) = (rim(0.0), rim(Estimate::END_SDS), rim(-Estimate::END_SDS));
    let within = reached * (1.0 - bare);
    let swept = drive.path_m * drive.cut_width_m / reached_m2;
    let by_chance = reached * laws::random_search_fraction(swept);
    match lanes::lanes(&survey.tracks, reached_m2) {
        Some(lanes) => {
            let (covered, [least, most]) = lanes.covered(drive.cut_width_m);
            // Ground that lanes have not come to shows as a pocket unless it is narrower than these; along one side of the lawn it is as long.
            let hidden_m2 = (SKIPPED_M + 5.0 * left_m) * counted.rim_m() / 4.0;
            let hidden = (hidden_m2 / drive.lawn_m2.max(1e-9)).min(1.0);
            let [beyond, most_beyond] = lanes.beyond().map(|fraction| fraction.min(hidden));
            let estimate = within * (1.0 - beyond) * covered;
            let below = [covered - least, most_bare - bare, most_beyond - beyond];
            let least_new = match lanes.are_new() {
                true => (1.0 - most_bare) * by_chance,
                false => 0.0,
            };
            let below = reached * below.into_iter().fold(0.0, math::hypot);
            Estimate {
                estimate,
                low: Some((estimate - below).max(least_new).clamp(0.0, estimate)),
                high: Some((reached * (1.0 - least_bare) * most + POINT).clamp(estimate, 1.0)),
            }
        }
        None => {
            let estimate = within * swept.min(1.0);
            Estimate {
                estimate,
                low: Some(by_chance.min(estimate).min(counted.visited_fraction())),
                high: Some((reached + POINT + 0.02 * left_m).min(1.0)),
            }
        }
    }
}
