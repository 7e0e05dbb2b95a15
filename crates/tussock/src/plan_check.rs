//! Is this plan sound, and how large is everything in it?

use tussock_plane::Site;
use tussock_types::{Plan, PlanFault, PlanRole};

/// Size of one feature.
#[derive(Clone, Debug, PartialEq)]
pub struct PlanRow {
    /// Its role.
    pub role: PlanRole,
    /// Its name.
    pub name: String,
    /// Position in the file, from 0.
    pub feature: usize,
    /// Area on the plane; for lawns, without zones and obstacles.
    pub area_m2: Option<f64>,
    /// Length of a line, or of all edges.
    pub length_m: Option<f64>,
}

/// The result of checking a plan.
#[derive(Clone, Debug, PartialEq)]
pub struct PlanReport {
    /// Lawn to be cut; `None` if the plan is not sound.
    pub lawn_m2: Option<f64>,
    /// Length of the lawn's edge, including zones and obstacles.
    pub edge_m: Option<f64>,
    /// One row per feature; empty if the plan is not sound.
    pub rows: Vec<PlanRow>,
    /// Everything that is wrong with the plan, fatal faults included.
    pub faults: Vec<PlanFault>,
}

impl PlanReport {
    /// Whether the plan can be used.
    pub fn is_sound(&self) -> bool {
        self.lawn_m2.is_some()
    }
}

/// A plan, given the faults found in its text, if none of them is fatal. Faults of its ground are found when it is used.
///
/// # Errors
/// All faults at once, in the text and in the ground.
pub fn sound_plan(plan: Plan, read_faults: Vec<PlanFault>) -> Result<Plan, Vec<PlanFault>> {
    if read_faults.iter().any(|fault| fault.is_fatal) {
        return Err(tussock_plane::merge_faults(read_faults, check_plan(&plan).faults));
    }
    Ok(plan)
}

/// Checks a plan and measures it. Areas are on the tangent plane at the lawn's middle: for a garden, within 1 part in 10
/// million of those on the ellipsoid.
pub fn check_plan(plan: &Plan) -> PlanReport {
    let (site, faults) = match Site::build(plan) {
        Ok(built) => built,
        Err(faults) => {
            return PlanReport {
                lawn_m2: None,
                edge_m: None,
                rows: Vec::new(),
                faults,
            };
        }
    };
    let mut rows = Vec::new();
    let mut area = |role: PlanRole, name: &str, feature: usize, region: &tussock_plane::Region| {
        rows.push(PlanRow {
            role,
            name: name.to_owned(),
            feature,
            area_m2: Some(region.area_m2()),
            length_m: Some(region.perimeter_m()),
        });
    };
    for lawn in &site.lawns {
        area(PlanRole::Lawn, &lawn.name, lawn.feature, &lawn.shape);
    }
    for zone in &site.exclusions {
        area(PlanRole::Exclusion, &zone.name, zone.feature, &zone.shape);
    }
    for obstacle in &site.obstacles {
        area(
            PlanRole::Obstacle,
            &obstacle.name,
            obstacle.feature,
            &obstacle.shape,
        );
    }
    for guide in &site.guides {
        rows.push(PlanRow {
            role: PlanRole::Guide,
            name: guide.name.clone(),
            feature: guide.feature,
            area_m2: None,
            length_m: Some(
                guide
                    .shape
                    .windows(2)
                    .map(|pair| pair[0].distance_m(pair[1]))
                    .sum(),
            ),
        });
    }
    for feature in plan
        .features
        .iter()
        .filter(|feature| matches!(feature.role, PlanRole::Station | PlanRole::Boundary))
    {
        let length_m = match (feature.role, &site.boundary) {
            (PlanRole::Boundary, Some(boundary)) => Some(boundary.perimeter_m()),
            _ => None,
        };
        rows.push(PlanRow {
            role: feature.role,
            name: feature.name.clone(),
            feature: feature.index,
            area_m2: None,
            length_m,
        });
    }
    rows.sort_by_key(|row| row.feature);
    PlanReport {
        lawn_m2: Some(site.lawn.area_m2()),
        edge_m: Some(site.lawn.perimeter_m()),
        rows,
        faults,
    }
}
