//! What would the plan look like if it were drawn to match the garden?
//!
//! Question: plan and log are displaced, an edge is drawn elsewhere than the machine turns, a zone is driven over, something
//! stands in the lawn that no plan shows; which plan agrees with the log? Method: what [`crate::analyse`] found is built in:
//! the plan is aligned with the log, each displaced edge is moved along its normal and its corners to where the moved lines
//! cross, driven zones are left out, and things that turned the machine are added. As good as those findings: an edge is
//! moved to where the machine turns, which is wrong if the receiver is off beside that edge.

use crate::{AnalyseError, Survey};
use tussock_locate::plan_fit::EdgeFit;
use tussock_plane::{Edge, Vector};
use tussock_survey::log_findings;
use tussock_survey::plan_offset::PlanShift;
use tussock_types::math;
use tussock_types::{
    Findings, GeoPolygon, Place, Plan, PlanFeature, PlanFit, PlanFitVerdict, PlanRole, PlanShape,
};

/// A plan drawn to match the garden.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct MendedPlan {
    /// The plan, in the frame of the log.
    pub plan: Plan,
    /// How far it was moved as a whole.
    pub moved_m: f64,
    /// Number of sides that were moved separately.
    pub sides: usize,
    /// Names of zones that were left out because they are driven over like the lawn.
    pub left_out: Vec<String>,
    /// Number of things that were added because they turned the machine.
    pub added: usize,
}

/// If the directions of two sides differ by less than this (sine), their lines do not define a corner.
const LEAST_CORNER: f64 = 0.2;
/// A side belongs to an edge if it is this close to it.
const ON_EDGE_M: f64 = 0.05;

/// Corrects the plan of a survey by what was found in it.
///
/// # Errors
/// [`AnalyseError::CannotAlign`] if there is no plan, or the log does not show how it lies.
pub fn mended_plan(survey: &Survey<'_>, findings: &Findings) -> Result<MendedPlan, AnalyseError> {
    let cannot = |why: &str| AnalyseError::CannotAlign { why: why.to_owned() };
    let (Some(plan), Some(frame)) = (&findings.plan, survey.frame) else {
        return Err(cannot("there is no plan"));
    };
    let is_told = |fit: &&PlanFit| {
        !matches!(
            fit.verdict,
            PlanFitVerdict::Unknown | PlanFitVerdict::AnotherGarden
        )
    };
    let Some(fit) = findings.plan_fit.as_ref().filter(is_told) else {
        return Err(cannot("the log does not tell how the plan lies in it"));
    };
    let is_moved = survey.laid.as_ref().is_some_and(|laid| laid.moved.is_some())
        || log_findings::shift(survey).is_some();
    let offset = fit.offset.filter(|_| is_moved);
    let mut mended = MendedPlan {
        plan: plan.clone(),
        moved_m: offset.map_or(0.0, |offset| math::hypot(offset.east_m, offset.north_m)),
        ..MendedPlan::default()
    };
    let by = offset.map(|offset| PlanShift::from(&offset));
    let displaced: Vec<(Edge, Vector)> = (survey.plan_fit().into_iter())
        .flat_map(|fit| fit.displaced())
        .filter_map(|edge| displacement(edge, by.as_ref()))
        .collect();
    for shape in mended.plan.features.iter_mut().map(|feature| &mut feature.shape) {
        let PlanShape::Polygons(polygons) = shape else {
            continue;
        };
        for ring in polygons.iter_mut().flat_map(|polygon| &mut polygon.rings) {
            let mut places: Vec<Place> = ring.iter().map(|point| frame.to_place(*point)).collect();
            let sides = move_sides(&mut places, &displaced);
            if sides > 0 {
                mended.sides += sides;
                *ring = places.into_iter().map(|place| frame.to_geo(place)).collect();
            }
        }
    }
    mended.plan.features.retain(|feature| {
        let is_driven = feature.role == PlanRole::Exclusion
            && (fit.driven_zones.iter()).any(|zone| zone.feature == feature.index);
        mended.left_out.extend(is_driven.then(|| feature.name.clone()));
        !is_driven
    });
    let first = plan.features.iter().map(|feature| feature.index + 1).max();
    let islands = fit.unlisted_islands.iter().map(|island| {
        let ring = island.outline.iter().map(|place| frame.to_geo(*place)).collect();
        let shape = PlanShape::Polygons(vec![GeoPolygon { rings: vec![ring] }]);
        (PlanRole::Exclusion, &island.id, shape, None)
    });
    let things = fit.unlisted_obstacles.iter();
    let things = things
        .filter(|thing| thing.radius_m < log_findings::ISLAND_RADIUS_M && thing.presence.is_at_the_end());
    let things = things.map(|thing| {
        let place = frame.to_geo(Place::new(thing.east_m, thing.north_m));
        (
            PlanRole::Obstacle,
            &thing.id,
            PlanShape::Point(place),
            Some(thing.radius_m),
        )
    });
    for (role, id, shape, radius_m) in islands.chain(things) {
        let index = first.unwrap_or(0) + mended.added;
        mended.plan.features.push(PlanFeature {
            radius_m,
            ..PlanFeature::new(role, format!("{} {id}", role.word()), index, shape)
        });
        mended.added += 1;
    }
    Ok(mended)
}

/// An edge as drawn, in the frame of the log, and the vector by which to move it there.
fn displacement(fit: &EdgeFit, by: Option<&PlanShift>) -> Option<(Edge, Vector)> {
    let laid = |place: Vector| by.map_or(place, |by| by.place(place.into()).into());
    let edge = Edge::between(laid(fit.edge.from), laid(fit.edge.end()))?;
    Some((edge, edge.inwards() * fit.inside_m))
}

/// Moves the sides of a closed ring that lie on displaced edges; returns how many.
fn move_sides(ring: &mut [Place], displaced: &[(Edge, Vector)]) -> usize {
    let sides: Vec<(Edge, f64)> = (ring.windows(2))
        .filter_map(|pair| Edge::between(pair[0].into(), pair[1].into()))
        .map(|side| {
            let lies_on = |edge: &Edge| {
                let middle = Place::from(side.from + side.along * (0.5 * side.length_m));
                edge.inside_m(middle).abs() < ON_EDGE_M
                    && edge.past_m(middle) < ON_EDGE_M
                    && edge.along.cross(side.along).abs() < LEAST_CORNER
            };
            let by = displaced.iter().find(|(edge, _)| lies_on(edge));
            (side, by.map_or(0.0, |(_, by)| by.dot(side.inwards())))
        })
        .collect();
    // Sides without length would put corners out of step.
    if sides.len() + 1 != ring.len() || sides.is_empty() {
        return 0;
    }
    let last = sides.len() - 1;
    for (number, (side, by_m)) in sides.iter().enumerate() {
        let (before, before_m) = &sides[number.checked_sub(1).unwrap_or(last)];
        let (one, two) = (before.inwards(), side.inwards());
        let crossing = one.cross(two);
        let step = if crossing.abs() < LEAST_CORNER {
            (one * *before_m + two * *by_m) * 0.5
        } else {
            Vector::new(
                before_m * two.north - by_m * one.north,
                by_m * one.east - before_m * two.east,
            ) * (1.0 / crossing)
        };
        ring[number] = (Vector::from(ring[number]) + step).into();
    }
    ring[last + 1] = ring[0];
    sides.iter().filter(|(_, by_m)| *by_m != 0.0).count()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn square() -> Vec<Place> {
        [(0.0, 0.0), (10.0, 0.0), (10.0, 8.0), (0.0, 8.0), (0.0, 0.0)]
            .map(|(east_m, north_m)| Place::new(east_m, north_m))
            .to_vec()
    }

    #[test]
    fn a_side_moves_with_its_corners() {
        let mut ring = square();
        let east = Edge::between(Vector::new(10.0, 0.0), Vector::new(10.0, 8.0)).unwrap();
        assert_eq!(move_sides(&mut ring, &[(east, east.inwards() * 0.4)]), 1);
        let expected = [(0.0, 0.0), (9.6, 0.0), (9.6, 8.0), (0.0, 8.0), (0.0, 0.0)];
        for (place, (east_m, north_m)) in ring.iter().zip(expected) {
            assert!(place.distance_m(Place::new(east_m, north_m)) < 1e-12, "{ring:?}");
        }
        // Drawn in the other direction it is the same side.
        let mut ring: Vec<Place> = square().into_iter().rev().collect();
        assert_eq!(move_sides(&mut ring, &[(east, east.inwards() * 0.4)]), 1);
        assert!(ring.iter().all(|place| place.east_m < 9.6 + 1e-12), "{ring:?}");
        // Edges of other shapes leave it alone.
        let elsewhere = Edge::between(Vector::new(20.0, 0.0), Vector::new(20.0, 8.0)).unwrap();
        assert_eq!(move_sides(&mut ring, &[(elsewhere, elsewhere.inwards())]), 0);
    }

    #[test]
    fn a_side_of_two_pieces_moves_as_one() {
        let mut ring = square();
        ring.insert(2, Place::new(10.0, 5.0));
        let east = Edge::between(Vector::new(10.0, 0.0), Vector::new(10.0, 8.0)).unwrap();
        assert_eq!(move_sides(&mut ring, &[(east, east.inwards() * -0.3)]), 2);
        let out: Vec<f64> = ring
            .iter()
            .map(|place| place.east_m)
            .filter(|east_m| *east_m > 5.0)
            .collect();
        assert!(
            out.iter().all(|east_m| (east_m - 10.3).abs() < 1e-12) && out.len() == 3,
            "{ring:?}"
        );
    }
}
