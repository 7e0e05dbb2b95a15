//! A first plan, drawn from logs alone.
//!
//! The outline is that of the driven ground ([`tussock_survey::outline`]), and the station is where the machine rested again
//! and again. Islands that turned the machine and were never entered are drawn as obstacles whose names the user fills in: a
//! log cannot distinguish a flower bed from lawn behind a fence. Good to about 0.15 m with centimetre logs; otherwise a
//! sketch to correct by hand.

use crate::{AnalyseError, Job};
use tussock_plane::Region;
use tussock_survey::Survey;
use tussock_survey::outline;
use tussock_types::{GeoPoint, GeoPolygon, Place, Plan, PlanFeature, PlanRole, PlanShape};

/// Width to paint with if none is set.
const PAINT_WIDTH_M: f64 = 0.26;
/// Corners closer to the line than this are left out.
const TOLERANCE_M: f64 = 0.1;
/// Smaller holes in the drive are not islands: the foot of a tree leaves one as large (common practice, no source).
const LEAST_ISLAND_M2: f64 = 0.1;

/// Draws a plan from the job's traces; the job's own plan is ignored.
///
/// # Errors
/// [`AnalyseError::NoPlaceOnEarth`] for logs in metres without an origin, and the errors of [`crate::inspect`].
pub fn plan_from_trace(job: &Job<'_>) -> Result<Plan, AnalyseError> {
    let job = Job { plan: None, ..*job };
    let survey = Survey::of(&job)?;
    survey.must_be_a_garden()?;
    let frame = survey.frame.ok_or(AnalyseError::NoPlaceOnEarth)?;
    let drawn = outline::drawn_lawn(
        &survey.tracks,
        &job.settings.machine,
        job.settings.machine.cut_width_m.unwrap_or(PAINT_WIDTH_M),
        job.settings.limits.cells,
    )?;
    let geo = |place: Place| -> GeoPoint { frame.to_geo(place) };
    let ring_of = |ring: Vec<Place>| -> Vec<GeoPoint> { ring.into_iter().map(geo).collect() };
    let mut plan = Plan::default();
    let mut add = |role, name: String, shape| {
        let index = plan.features.len();
        plan.features.push(PlanFeature::new(role, name, index, shape));
    };
    let polygon = |rings: Vec<Vec<Place>>| GeoPolygon {
        rings: rings.into_iter().map(ring_of).collect(),
    };
    for (number, rings) in drawn_rings(&drawn.whole()?)?.into_iter().enumerate() {
        let shape = PlanShape::Polygons(vec![polygon(rings)]);
        add(PlanRole::Lawn, format!("lawn {}", number + 1), shape);
    }
    for (number, island) in drawn.islands.iter().enumerate() {
        let rings = island.outline_simplified(TOLERANCE_M);
        let shape = PlanShape::Polygons(rings.into_iter().map(polygon).collect());
        add(PlanRole::Obstacle, format!("obstacle {}", number + 1), shape);
    }
    if let Some(station) = survey.tracks.iter().find_map(|track| track.station) {
        add(
            PlanRole::Station,
            "station".to_owned(),
            PlanShape::Point(geo(station)),
        );
    }
    Ok(plan)
}

/// The outline with few corners, crossing lines untangled, and without islands that nobody would draw.
fn drawn_rings(region: &Region) -> Result<Vec<Vec<Vec<Place>>>, AnalyseError> {
    let mut parts = Region::from_rings(region.outline_simplified(TOLERANCE_M))?.rings();
    for hole_by_hole in &mut parts {
        let mut rings = Vec::new();
        for (number, ring) in hole_by_hole.drain(..).enumerate() {
            let enclosed = Region::from_rings(vec![vec![ring.clone()]])?;
            if number == 0 || enclosed.area_m2() >= LEAST_ISLAND_M2 {
                rings.push(ring);
            }
        }
        *hole_by_hole = rings;
    }
    Ok(parts)
}
