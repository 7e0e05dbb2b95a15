//! Before and after a change. The shape of `comparison.json`.

use crate::{Estimate, Findings, Place, PocketChange, Said, SiteVisit, SuggestionKind};
use serde::{Deserialize, Serialize};

/// What a change brought.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Comparison {
    /// [`crate::SCHEMA_VERSION`].
    pub schema_version: u32,
    /// Version of the tool.
    pub tool_version: String,
    /// What the change brought, or that this cannot be told; then pockets by what became of them.
    pub said: Vec<Said>,
    /// Lawn that both plans have: all differences are of this ground.
    pub common_m2: f64,
    /// Lawn of one plan only.
    pub changed: Vec<ChangedGround>,
    /// The two sides.
    pub before: ComparedSide,
    /// The two sides.
    pub after: ComparedSide,
    /// After minus before, of the common ground.
    pub difference: Difference,
    /// Pockets of either side, largest first.
    pub pockets: Vec<ComparedPocket>,
    /// Suggestions made before, with what came of them.
    pub predictions: Vec<PredictionHeld>,
    /// Findings before, for drawing; null where only a summary was kept.
    pub findings_before: Option<Box<Findings>>,
    /// Findings after.
    pub findings_after: Option<Box<Findings>>,
    /// General cautions.
    pub cautions: Vec<Said>,
}

/// One side of a comparison.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct ComparedSide {
    /// Names of logs or findings.
    pub names: Vec<String>,
    /// Nights in it.
    pub nights: u32,
    /// Driving hours.
    pub driving_h: f64,
    /// Visited fraction of the common ground.
    pub visited_fraction: Estimate,
    /// The same after as many driving hours as the shorter side has: the fair figure where hours differ.
    pub at_equal_hours_fraction: Option<f64>,
}

/// Ground of one plan only.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct ChangedGround {
    /// Area.
    pub area_m2: f64,
    /// A place in it.
    pub middle: Place,
    /// Lawn before, or after?
    pub lawn: LawnWhen,
}

/// When changed ground was lawn.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum LawnWhen {
    /// Only before.
    Before,
    /// Only after.
    After,
}

/// A difference of visited fractions with its interval, and where that comes from.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Difference {
    /// After minus before, with a 90 % interval of both kinds of error together.
    pub visited_fraction: Estimate,
    /// Standard deviation from position errors, both sides.
    pub position_sd_fraction: f64,
    /// Standard deviation from night to night; null where it could not be told.
    pub nightly_sd_fraction: Option<f64>,
    /// Whether it is more than luck explains, with an error of at most 2.5 % each way however often one looked.
    pub is_real: bool,
}

/// A pocket of either side.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct ComparedPocket {
    /// Its id on the side where it was found, `M1`.
    pub id: String,
    /// Which side.
    pub found: LawnWhen,
    /// Area on the common ground.
    pub area_m2: f64,
    /// Middle.
    pub middle: Place,
    /// Outline: outer ring and holes.
    pub outline: Vec<Vec<Place>>,
    /// What became of it.
    pub change: PocketChange,
    /// Visited fraction before.
    pub before_fraction: Estimate,
    /// Visited fraction after.
    pub after_fraction: Estimate,
    /// Nights after which its gain was more than luck, however often one looked (at most 5 % error for all pockets and the lawn
    /// together); null where it is not, or nights could not be told apart.
    pub decided_after_nights: Option<u32>,
    /// Nights more, each like those so far, until its gain is decided; null where it is, or where twenty would not do.
    pub more_nights: Option<u32>,
    /// What became of it.
    pub said: Said,
}

/// A prediction beside what was measured after.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct PredictionHeld {
    /// Its suggestion, `G1`; null where something was built for a pocket without one.
    pub id: Option<String>,
    /// Whether the plan afterwards holds what was suggested.
    pub built: BuiltAs,
    /// Pocket.
    pub pocket: String,
    /// Predicted for the pocket: with the suggestion, or with what was built otherwise, if the logs before were at hand.
    pub predicted_fraction: Estimate,
    /// Measured.
    pub measured_fraction: f64,
    /// Whether the measurement lies in the predicted interval.
    pub holds: bool,
}

/// What the plan afterwards holds of a suggestion.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum BuiltAs {
    /// What was suggested.
    Suggested,
    /// Something else, or a part of it; the prediction is for that.
    Otherwise,
    /// Nothing that could be predicted.
    Nothing,
}

/// One visit to a garden, as its comparison tells it.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct VisitDone {
    /// Name of the comparison's folder; empty if it is private.
    pub name: String,
    /// Who came, when and why; null if nobody said, or it is private.
    pub visit: Option<SiteVisit>,
    /// When the log after the change begins, RFC 3339 in UTC; null if it is private.
    pub start: Option<String>,
    /// What the customer said; null if it is private.
    pub said: Option<String>,
    /// Suggestions that were built.
    pub built: Vec<SuggestionKind>,
    /// The pocket that was to be mended: the customer's own, else the largest of those before. Null where there was none.
    pub pocket: Option<ComparedPocket>,
    /// Lawn, after minus before.
    pub difference: Difference,
}
