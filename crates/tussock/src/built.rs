//! A plan with a suggestion built in.

use tussock_plane::Frame;
use tussock_types::{GeoPolygon, Place, Plan, PlanFeature, PlanRole, PlanShape, Suggestion, SuggestionKind};

/// The plan as it would be with the suggestion built. A suggestion of more hours does not change the plan.
pub fn built(plan: &Plan, frame: &Frame, suggestion: &Suggestion) -> Plan {
    let mut changed = plan.clone();
    let points = |places: &[Place]| {
        places
            .iter()
            .map(|place| frame.to_geo(*place))
            .collect::<Vec<_>>()
    };
    let polygon = || {
        PlanShape::Polygons(vec![GeoPolygon {
            rings: vec![points(&suggestion.geometry)],
        }])
    };
    let index = plan
        .features
        .iter()
        .map(|feature| feature.index + 1)
        .max()
        .unwrap_or(0);
    let added = |role: PlanRole, shape: PlanShape, outing_share_fraction: Option<f64>| PlanFeature {
        role,
        name: suggestion.id.clone(),
        index,
        shape,
        radius_m: None,
        outing_share_fraction,
    };
    match suggestion.kind {
        SuggestionKind::MoreHours => {}
        SuggestionKind::GuideRun => changed.features.push(added(
            PlanRole::Guide,
            PlanShape::Line(points(&suggestion.geometry)),
            suggestion.outing_share_fraction,
        )),
        SuggestionKind::ZoneAdd => changed.features.push(added(PlanRole::Exclusion, polygon(), None)),
        SuggestionKind::ZoneMove | SuggestionKind::ZoneShrink => {
            let zone = changed
                .features
                .iter_mut()
                .find(|feature| Some(feature.index) == suggestion.feature);
            if let Some(zone) = zone {
                zone.shape = polygon();
            }
        }
        SuggestionKind::BoundaryShift => {
            changed
                .features
                .retain(|feature| feature.role != PlanRole::Boundary);
            changed.features.push(added(PlanRole::Boundary, polygon(), None));
        }
    }
    changed
}
