//! Does the machine turn where the plan has its edges, and drive as one fitted to it would?

use crate::Follows;
use tussock_locate::PathMethod;
use tussock_locate::plan_fit::{DISPLACED_M, EdgeFit, LEAST_EXPLAINED, MOST_TELLING_M};
use tussock_simulate::{Doing, TrueRun, Yard};
use tussock_survey::Survey;
use tussock_survey::fitted::LEAST_LEG_M;
use tussock_survey::log_findings::{self, TOLD_FRACTION};
use tussock_types::math;
use tussock_types::{Check, CheckKind, Said};

/// The plan's place against the turns: the fraction of the turns that its edges explain.
pub fn plan_place(survey: &Survey<'_>) -> Option<(Check, Follows)> {
    let fit = survey.turns_fit()?;
    let low = match fit.error_m >= MOST_TELLING_M {
        true => TOLD_FRACTION,
        false => LEAST_EXPLAINED,
    };
    let explained_fraction = fit.explained_fraction;
    let check = Check::of(
        CheckKind::PlanPlace,
        explained_fraction,
        (Some(low), None),
        Said::PlanNotBelieved { explained_fraction },
    );
    Some((check, Follows::Nothing))
}

/// Turns against each edge of the plan: for the edge that is off most, how far it lies from where the turns are made, over
/// the largest distance allowed (a ratio).
pub fn turns_at_edges(survey: &Survey<'_>) -> Option<(Check, Follows)> {
    let edges = &survey.plan_fit()?.edges;
    let over = |edge: &EdgeFit| edge.inside_m.abs() / f64::max(DISPLACED_M, 4.0 * edge.sd_m);
    let worst = edges.iter().max_by(|a, b| over(a).total_cmp(&over(b)))?;
    let check = Check::of(
        CheckKind::TurnsAtEdges,
        over(worst),
        (None, Some(1.0)),
        log_findings::edge_said(worst),
    );
    Some((check, Follows::Nothing))
}

/// Number of runs of the fitted machine.
const RUNS: u64 = 6;
/// Usual legs may differ by this factor: runs of one machine differ by a tenth, and corners blurred by positions add as much
/// again.
pub const LEGS_ALIKE: f64 = 1.5;

/// A garden drawn from the fitted machine against the log: the usual leg in the log over that in the runs, as a natural
/// logarithm.
pub fn drawn_garden(survey: &Survey<'_>) -> Option<(Check, Follows)> {
    let (site, fitted) = (survey.site.as_ref()?, survey.machine().ok()?);
    let yard = Yard::new(&fitted.site(site), fitted.machine.past_boundary_m).ok()?;
    let mut legs_m: Vec<f64> = (0..RUNS)
        .filter_map(|number| {
            let run = fitted.run(survey.job().seed ^ (4000 + number));
            usual_leg_m(&yard.drive(&fitted.machine, &run).ok()?)
        })
        .collect();
    let drawn_m = math::median(&mut legs_m)?;
    let logged_m = fitted.median_leg_m;
    if !(logged_m > 0.0) {
        return None;
    }
    let most = math::ln(LEGS_ALIKE);
    let check = Check::of(
        CheckKind::DrawnGarden,
        math::ln(logged_m / drawn_m),
        (Some(-most), Some(most)),
        Said::LegsUnlike { logged_m, drawn_m },
    );
    // Dense fixes hold the path of any machine; turns that were put back between sparse ones rest on the model alone.
    let is_put_back = survey
        .tracks
        .iter()
        .any(|track| track.method == PathMethod::Rebuilt);
    let follows = match is_put_back {
        true => Follows::Times {
            times: f64::max(logged_m / drawn_m, drawn_m / logged_m),
        },
        false => Follows::Nothing,
    };
    Some((check, follows))
}

fn usual_leg_m(run: &TrueRun) -> Option<f64> {
    let legs = run.pieces().filter(|(from, _)| from.doing == Doing::Driving);
    let mut legs_m: Vec<f64> = legs
        .map(|(from, to)| from.place.distance_m(to.place))
        .filter(|leg_m| *leg_m >= LEAST_LEG_M)
        .collect();
    math::median(&mut legs_m)
}
