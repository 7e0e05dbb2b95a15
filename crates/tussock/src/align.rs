//! Where does the plan lie, according to the log?
//!
//! Question: drawings and receivers seldom agree to a metre; how must a plan be moved and rotated so that the machine turns
//! at its edge? Method: the turns of the log against the edges of the plan ([`tussock_locate::plan_fit`],
//! [`tussock_locate::anchor`]). Good to a few centimetres once the machine has turned a hundred times; rotations of the plan
//! up to a few degrees are found.

use crate::{AnalyseError, Job, Stage};
use tussock_locate::Track;
use tussock_locate::anchor::EdgeUse;
use tussock_locate::turns::{Setback, plan_fit};
use tussock_survey::Survey;
use tussock_survey::log_findings::plan_offset;
use tussock_survey::plan_offset::PlanShift;
use tussock_types::math;
use tussock_types::{Plan, PlanOffset};

/// A plan aligned with the log.
#[derive(Clone, Debug, PartialEq)]
pub struct Aligned {
    /// The plan, moved and rotated; unchanged if the offset is within its error.
    pub plan: Plan,
    /// By how much.
    pub offset: PlanOffset,
    /// Whether it was moved.
    pub verdict: AlignVerdict,
}

/// The result of aligning.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum AlignVerdict {
    /// The plan was moved.
    Moved,
    /// It lies where the log shows it, within the error.
    InPlace,
}

/// Smaller offsets are left alone whatever the log shows: nobody draws a plan more exactly.
const LEAST_OFFSET_M: f64 = 0.05;
/// Smaller rotations move no corner of a garden by more than a hand's width.
const LEAST_TURN_DEG: f64 = 0.1;
/// An offset within this many standard deviations does not count as one.
const SURE: f64 = 3.0;

/// Aligns a plan with the logs.
///
/// # Errors
/// [`AnalyseError::CannotAlign`] if the turns of the log do not show the edges of the plan, and the errors of
/// [`crate::inspect`].
pub fn align(job: &Job<'_>) -> Result<Aligned, AnalyseError> {
    let Some(plan) = job.plan else {
        return Err(AnalyseError::CannotAlign {
            why: "there is no plan".to_owned(),
        });
    };
    job.tell(Stage::Locating, 0.0);
    let survey = Survey::of(job)?;
    survey.must_be_a_garden()?;
    job.tell(Stage::Locating, 1.0);
    let is_shown = survey.laid.is_some() || survey.tracks.iter().any(is_held);
    let (Some(offset), Some(frame), true) = (plan_offset(&survey), survey.frame, is_shown) else {
        return Err(AnalyseError::CannotAlign {
            why: why_not(&survey),
        });
    };
    let off_m = math::hypot(offset.east_m, offset.north_m);
    let is_off = off_m > LEAST_OFFSET_M.max(SURE * offset.sd_m) || offset.rotation_deg.abs() > LEAST_TURN_DEG;
    let mut plan = plan.clone();
    if is_off {
        PlanShift::from(&offset).plan(&mut plan, &frame);
    }
    Ok(Aligned {
        plan,
        offset,
        verdict: match is_off {
            true => AlignVerdict::Moved,
            false => AlignVerdict::InPlace,
        },
    })
}

/// Whether the edges of the plan held its path.
fn is_held(track: &Track) -> bool {
    let edges = track.anchored.as_ref().map(|anchored| anchored.edges);
    matches!(edges, Some(EdgeUse::Used { .. }))
}

fn why_not(survey: &Survey<'_>) -> String {
    let expected = Setback::expected(&survey.settings().machine);
    let has_turns = survey
        .drivable()
        .is_ok_and(|ground| plan_fit(&survey.tracks, ground, &expected).is_some());
    if !has_turns && survey.tracks.iter().all(|track| track.anchored.is_none()) {
        "the log has too few fixes or turns for that; log one fix a second".to_owned()
    } else {
        "the turns in the log do not gather at the edge of the plan; is it the plan of this garden, and drawn as it is?".to_owned()
    }
}
