//! The auditor: two independent answers to one question, held against each other.
//!
//! Question: an answer rests on a model (straight legs, one law of errors, a plan that is right). How does it know when its
//! model fails? Method: each check works out one quantity in two ways that fail for different reasons, and states where the
//! difference should lie if the model is right. If it lies elsewhere, the answer says so, and becomes less sure by at least
//! as much as the two differ. `docs/checks.md` has the table: what is compared, the unit, the range, what follows, and how
//! often each check fails.
//!
//! | question | module |
//! |---|---|
//! | are the positions as good as stated, and the same in both halves of the log? | [`positions`] |
//! | does the machine turn where the plan has its edges, and drive as one fitted to it would? | [`ground`] |
//! | do cells, headline, fixes as logged and simulated runs give the same fraction? | [`count`] |
//! | are the claims about single places consistent with the verdict and the silences? | [`claims`] |
//!
//! Exact: that a check holds if and only if its statistic lies in its range. Approximate: the ranges; they come from the
//! model, and `docs/checks.md` shows how often a healthy garden falls outside. A check that a log does not allow (no plan,
//! no width) is not listed. This room judges what the rooms below measured, and none of them sees it. Cost: a few per cent
//! of an analysis.

pub mod claims;
pub mod count;
pub mod ground;
mod outcome;
pub mod positions;

pub use outcome::{Checks, Follows};

use tussock_survey::Survey;

/// The checks that need no count.
pub fn of_log(survey: &Survey<'_>) -> Checks {
    let mut checks = Checks::default();
    checks.extend(positions::fixes_left_out(survey));
    checks.extend(positions::halves_of_log(survey));
    checks.extend(ground::plan_place(survey));
    checks.extend(ground::turns_at_edges(survey));
    checks.extend(ground::drawn_garden(survey));
    checks
}
