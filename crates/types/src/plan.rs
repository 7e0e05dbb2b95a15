//! What was installed.

use crate::{GeoPoint, plural};
use serde::{Deserialize, Serialize};

/// A polygon on Earth: outer ring first, holes after it. Rings are closed (first point = last point).
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
pub struct GeoPolygon {
    /// Rings in the order of the file.
    pub rings: Vec<Vec<GeoPoint>>,
}

worded! {
    /// What a feature of a plan represents.
    #[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
    #[serde(rename_all = "snake_case")]
    PlanRole,
    /// The word in the plan file.
    word {
        /// Grass to be cut.
        Lawn = "lawn",
        /// The line at which the machine turns.
        Boundary = "boundary",
        /// Ground that the machine must keep out of.
        Exclusion = "exclusion",
        /// A solid object that stands in the lawn.
        Obstacle = "obstacle",
        /// A line that the machine can follow from the station.
        Guide = "guide",
        /// Where the machine charges.
        Station = "station",
    }
}

/// The shape of one plan feature.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum PlanShape {
    /// One or more polygons (lawn, boundary, exclusion, obstacle).
    Polygons(Vec<GeoPolygon>),
    /// A line (guide from the station outwards; a closed one for a boundary).
    Line(Vec<GeoPoint>),
    /// A point (station; obstacle with a radius).
    Point(GeoPoint),
}

impl PlanShape {
    /// All of its positions.
    pub fn points(&self) -> Vec<GeoPoint> {
        match self {
            Self::Polygons(polygons) => polygons
                .iter()
                .flat_map(|polygon| polygon.rings.iter().flatten().copied())
                .collect(),
            Self::Line(points) => points.clone(),
            Self::Point(point) => vec![*point],
        }
    }
}

/// One feature of a plan.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct PlanFeature {
    /// Its role.
    pub role: PlanRole,
    /// Its name: from the file, or else the role and a number (`exclusion-2`).
    pub name: String,
    /// Position of the feature in the file, from 0.
    pub index: usize,
    /// Its shape.
    pub shape: PlanShape,
    /// Radius of an obstacle given as a point.
    pub radius_m: Option<f64>,
    /// Share of outings that leave along a guide run.
    pub outing_share_fraction: Option<f64>,
}

impl PlanFeature {
    /// A feature without a radius and without a share of outings.
    pub fn new(role: PlanRole, name: impl Into<String>, index: usize, shape: PlanShape) -> Self {
        Self {
            role,
            name: name.into(),
            index,
            shape,
            radius_m: None,
            outing_share_fraction: None,
        }
    }
}

/// What was installed in one garden, as drawn.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
pub struct Plan {
    /// The features in the order of the file.
    pub features: Vec<PlanFeature>,
}

impl Plan {
    /// Features of one role, in the order of the file.
    pub fn of_role(&self, role: PlanRole) -> impl Iterator<Item = &PlanFeature> {
        self.features.iter().filter(move |feature| feature.role == role)
    }

    /// Applies a change to every point of every feature.
    pub fn for_each_point(&mut self, mut change: impl FnMut(&mut GeoPoint)) {
        for feature in &mut self.features {
            match &mut feature.shape {
                PlanShape::Polygons(polygons) => polygons
                    .iter_mut()
                    .flat_map(|polygon| &mut polygon.rings)
                    .flatten()
                    .for_each(&mut change),
                PlanShape::Line(points) => points.iter_mut().for_each(&mut change),
                PlanShape::Point(point) => change(point),
            }
        }
    }
}

/// One thing that is wrong with a plan, and where.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
pub struct PlanFault {
    /// Feature in the file, from 0; `None` if the fault concerns the whole file.
    pub feature: Option<usize>,
    /// Name of the feature, if it has one.
    pub name: Option<String>,
    /// Ring of the feature, from 0 (the outer one), counted over all its polygons.
    pub ring: Option<usize>,
    /// Position on Earth, if one can be given.
    pub at: Option<GeoPoint>,
    /// What is wrong, with the offending value: lower case, no full stop.
    pub found: String,
    /// What was expected instead.
    pub expected: String,
    /// False for things worth a look that do not stop an analysis.
    pub is_fatal: bool,
}

impl PlanFault {
    /// The same fault, with a place.
    #[must_use]
    pub fn at(self, at: impl Into<Option<GeoPoint>>) -> Self {
        Self {
            at: at.into(),
            ..self
        }
    }
}

/// The message for a plan that cannot be used: the number of faults, then each on its own line.
pub fn plan_faults(plan_name: &str, faults: &[PlanFault]) -> String {
    let fatal = faults.iter().filter(|fault| fault.is_fatal).count();
    let count = plural(fatal, "fault", "faults");
    let line = |fault: &PlanFault| format!("\n{}{fault}", if fault.is_fatal { "" } else { "to look at: " });
    let lines: String = faults.iter().map(line).collect();
    format!("{plan_name}: {count} in this plan, expected none{lines}")
}

impl std::fmt::Display for PlanFault {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        match (self.feature, &self.name) {
            (Some(index), Some(name)) => write!(f, "feature {index} \"{name}\"")?,
            (Some(index), None) => write!(f, "feature {index}")?,
            (None, _) => write!(f, "plan")?,
        }
        if let Some(ring) = self.ring {
            write!(f, ", ring {ring}")?;
        }
        write!(f, ": {}", self.found)?;
        if let Some(at) = self.at {
            write!(f, " at {:.7}, {:.7}", at.lat_deg, at.lon_deg)?;
        }
        if !self.expected.is_empty() {
            write!(f, " (expected {})", self.expected)?;
        }
        Ok(())
    }
}
