//! Is this plan sound, and what lawn does it leave?
//!
//! Every fault is reported at once, each with its feature, its ring and its place. The lawn is the union of the drawn lawns,
//! without exclusion zones and obstacles; an obstacle given as a point is a 48-cornered disc with the area of the true one.
//!
//! The frame's origin is the centre of mass of the drawn lawns, so that no part of a garden is far from it.

mod checks;

use crate::faults::{checked_ring, fatal, of_plan, positions_are_sound, warning};
use crate::{Frame, Region};
use tussock_types::math;
use tussock_types::{GeoPoint, Place, Plan, PlanFault, PlanFeature, PlanRole, PlanShape};

/// No garden is larger, but a plan with a wrong position is.
const WIDEST_M: f64 = 5_000.0;
/// Smaller overlaps come from drawing, not from intent (a sheet of paper).
const OVERLAP_NOTED_M2: f64 = 0.05;

/// Something in the plan, with the name and number of its feature.
#[derive(Clone, Debug, PartialEq)]
pub struct Named<T> {
    /// Name.
    pub name: String,
    /// Position of the feature in the plan's file, from 0.
    pub feature: usize,
    /// What it is.
    pub shape: T,
}

/// A garden as planned, in metres.
#[derive(Clone, Debug)]
pub struct Site {
    /// The plane in which everything lies.
    pub frame: Frame,
    /// Each lawn, without zones and obstacles.
    pub lawns: Vec<Named<Region>>,
    /// All lawns together, without zones and obstacles.
    pub lawn: Region,
    /// All lawns together as drawn.
    pub drawn_lawn: Region,
    /// The line at which the machine turns, if the plan has one.
    pub boundary: Option<Region>,
    /// Exclusion zones as drawn.
    pub exclusions: Vec<Named<Region>>,
    /// Obstacles as drawn.
    pub obstacles: Vec<Named<Region>>,
    /// Guide runs, from the station outwards.
    pub guides: Vec<Named<Vec<Place>>>,
    /// Share of outings along each guide run, if the plan states it.
    pub guide_shares_fraction: Vec<Option<f64>>,
    /// Where the machine charges; of several, the first.
    pub station: Option<Place>,
    /// Where machines charge.
    pub stations: Vec<Place>,
}

/// The site with faults that do not stop an analysis, or all faults, including the fatal ones.
type BuiltSite = Result<(Site, Vec<PlanFault>), Vec<PlanFault>>;

impl Site {
    /// Builds a site on its own plane.
    ///
    /// # Errors
    /// All faults of the plan, if at least one of them is fatal.
    pub fn build(plan: &Plan) -> BuiltSite {
        Self::build_in(plan, middle_frame(plan))
    }

    /// Builds a site on a given plane.
    ///
    /// # Errors
    /// All faults of the plan, if at least one of them is fatal.
    pub fn build_in(plan: &Plan, frame: Frame) -> BuiltSite {
        let mut builder = Builder {
            frame,
            faults: Vec::new(),
        };
        let site = builder.site(plan);
        let mut faults = builder.faults;
        faults.sort_by_key(|fault| fault.feature.map_or(0, |feature| feature + 1));
        match site {
            Some(site) if !faults.iter().any(|fault| fault.is_fatal) => Ok((site, faults)),
            _ => Err(faults),
        }
    }

    /// Where the machine's middle can be before any setback: within the boundary, or else the lawn as drawn, outside zones
    /// and obstacles; `None` if nothing is left.
    pub fn drivable(&self) -> Option<Region> {
        let kept_out = self.exclusions.iter().chain(&self.obstacles);
        let kept_out = Region::union_of(kept_out.map(|zone| &zone.shape)).ok()?;
        let outline = self.boundary.as_ref().unwrap_or(&self.drawn_lawn);
        let ground = outline.minus(&kept_out).ok()?;
        (!ground.is_empty()).then_some(ground)
    }
}

/// The plane at the centre of mass of the drawn lawns, or else at the middle of all positions.
fn middle_frame(plan: &Plan) -> Frame {
    let lawn_points: Vec<GeoPoint> = plan.of_role(PlanRole::Lawn).flat_map(points_of).collect();
    let points = if lawn_points.is_empty() {
        plan.features.iter().flat_map(points_of).collect()
    } else {
        lawn_points
    };
    let Some(&first) = points.first() else {
        return Frame::at(GeoPoint::default());
    };
    let rough = Frame::at(first);
    let parts = plan
        .of_role(PlanRole::Lawn)
        .filter_map(|feature| match &feature.shape {
            PlanShape::Polygons(polygons) => Some(polygons),
            _ => None,
        })
        .flatten()
        .map(|polygon| {
            let places = |ring: &Vec<GeoPoint>| ring.iter().map(|point| rough.to_place(*point)).collect();
            polygon.rings.iter().map(places).collect()
        })
        .collect();
    let middle = Region::from_rings(parts)
        .ok()
        .and_then(|region| region.centroid())
        .filter(|middle| middle.east_m.is_finite() && middle.north_m.is_finite());
    middle.map_or(rough, |middle| Frame::at(rough.to_geo(middle)))
}

/// All valid positions of a feature.
fn points_of(feature: &PlanFeature) -> Vec<GeoPoint> {
    let all = feature.shape.points().into_iter();
    all.filter(|point| point.lat_deg.abs() <= 90.0 && point.lon_deg.abs() <= 180.0)
        .collect()
}

/// An obstacle, zone, lawn: the feature and its ground.
type FeatureGround<'a> = Vec<(&'a PlanFeature, Region)>;

struct Builder {
    frame: Frame,
    faults: Vec<PlanFault>,
}

impl Builder {
    fn site(&mut self, plan: &Plan) -> Option<Site> {
        let lawns = self.grounds(plan, PlanRole::Lawn);
        let boundaries = self.grounds(plan, PlanRole::Boundary);
        let exclusions = self.grounds(plan, PlanRole::Exclusion);
        let obstacles = self.grounds(plan, PlanRole::Obstacle);
        let guides = self.guides(plan);
        let stations = self.stations(plan);
        let station = stations.first().copied();
        if plan.of_role(PlanRole::Lawn).next().is_none() {
            self.faults.push(of_plan(
                "no feature has the role lawn",
                "at least one polygon with properties.role = \"lawn\"",
                true,
            ));
        }
        if !self.extent_is_sound(plan) || lawns.is_empty() {
            return None;
        }
        let drawn_lawn = self.all(&lawns)?;
        let out = {
            let zones = self.all(&exclusions)?;
            let bodies = self.all(&obstacles)?;
            self.engine(zones.union(&bodies))?
        };
        self.check_lawns(&lawns, &drawn_lawn);
        self.check_inside(&exclusions, &drawn_lawn);
        self.check_inside(&obstacles, &drawn_lawn);
        self.check_guides(&guides, &exclusions, station);
        self.check_station(plan, station, &drawn_lawn);
        let lawn = self.engine(drawn_lawn.minus(&out))?;
        if lawn.is_empty() {
            let found = "exclusion zones and obstacles leave no lawn";
            self.faults.push(of_plan(found, "lawn that is left to cut", true));
        }
        let mut cut_lawns = Vec::new();
        for (feature, region) in &lawns {
            let left = self.engine(region.minus(&out))?;
            if left.is_empty() && !lawn.is_empty() {
                let found = "exclusion zones and obstacles leave nothing of it";
                self.faults
                    .push(warning(feature, found, "lawn that is left to cut"));
            }
            cut_lawns.push(named(feature, left));
        }
        let boundary = if boundaries.is_empty() {
            None
        } else {
            Some(self.all(&boundaries)?)
        };
        let take = |grounds: FeatureGround| {
            grounds
                .into_iter()
                .map(|(feature, region)| named(feature, region))
                .collect()
        };
        Some(Site {
            frame: self.frame,
            lawns: cut_lawns,
            lawn,
            drawn_lawn,
            boundary,
            exclusions: take(exclusions),
            obstacles: take(obstacles),
            guide_shares_fraction: guides
                .iter()
                .map(|(feature, _)| feature.outing_share_fraction)
                .collect(),
            guides: guides
                .into_iter()
                .map(|(feature, line)| named(feature, line))
                .collect(),
            station,
            stations,
        })
    }

    /// Takes a region out of a result, or reports the engine's error.
    fn engine(&mut self, result: Result<Region, crate::RegionError>) -> Option<Region> {
        result
            .map_err(|error| self.faults.push(of_plan(error.to_string(), "", true)))
            .ok()
    }

    fn all(&mut self, grounds: &FeatureGround) -> Option<Region> {
        self.engine(Region::union_of(grounds.iter().map(|(_, region)| region)))
    }

    fn grounds<'a>(&mut self, plan: &'a Plan, role: PlanRole) -> FeatureGround<'a> {
        plan.of_role(role)
            .filter_map(|feature| Some((feature, self.ground(feature)?)))
            .collect()
    }

    fn ground(&mut self, feature: &PlanFeature) -> Option<Region> {
        match (&feature.shape, feature.role) {
            (PlanShape::Polygons(polygons), _) => {
                let rings: Vec<&[Vec<GeoPoint>]> =
                    polygons.iter().map(|polygon| &polygon.rings[..]).collect();
                self.polygons(feature, &rings)
            }
            (PlanShape::Line(points), PlanRole::Boundary) => {
                self.polygons(feature, &[std::slice::from_ref(points)])
            }
            (PlanShape::Point(point), PlanRole::Obstacle) => self.disc(feature, *point),
            (shape, role) => {
                let found = format!("a {} cannot be a {}", shape_word(shape), role.word());
                self.faults.push(fatal(feature, found, shapes_of(role)));
                None
            }
        }
    }

    fn disc(&mut self, feature: &PlanFeature, point: GeoPoint) -> Option<Region> {
        let is_sound = positions_are_sound(feature, None, &[point], &mut self.faults);
        let radius_m = match feature.radius_m {
            Some(radius_m) if radius_m > 0.0 && radius_m <= WIDEST_M => radius_m,
            Some(radius_m) => {
                let expected = "a radius above 0 and no larger than a garden";
                self.faults
                    .push(fatal(feature, format!("radius_m is {radius_m}"), expected));
                return None;
            }
            None => {
                let expected = "properties.radius_m for an obstacle given as a point";
                self.faults.push(fatal(feature, "radius_m is missing", expected));
                return None;
            }
        };
        if !is_sound {
            return None;
        }
        let region = Region::disc(self.frame.to_place(point), radius_m);
        self.engine(region).filter(|region| !region.is_empty())
    }

    fn polygons(&mut self, feature: &PlanFeature, polygons: &[&[Vec<GeoPoint>]]) -> Option<Region> {
        if polygons.iter().all(|rings| rings.is_empty()) {
            self.faults
                .push(fatal(feature, "it has no outline", shapes_of(feature.role)));
            return None;
        }
        let mut number = 0;
        let mut sum = Region::empty();
        for rings in polygons {
            let mut outer: Option<Region> = None;
            let mut holes = Region::empty();
            for (position, points) in rings.iter().enumerate() {
                let ring_number = number;
                number += 1;
                let checked = checked_ring(feature, ring_number, points, &self.frame, &mut self.faults);
                let Some(region) = checked.and_then(|ring| self.engine(Region::from_rings(vec![vec![ring]])))
                else {
                    continue;
                };
                if position == 0 {
                    outer = Some(region);
                    continue;
                }
                let of_ring = |fault: PlanFault, frame: &Frame| PlanFault {
                    ring: Some(ring_number),
                    at: region.centroid().map(|middle| frame.to_geo(middle)),
                    ..fault
                };
                if let Some(outer) = &outer {
                    let outside_m2 = self.engine(region.minus(outer))?.area_m2();
                    if outside_m2 > OVERLAP_NOTED_M2 {
                        let found = format!(
                            "the hole is not inside the outline, {outside_m2:.2} m2 of it lie outside"
                        );
                        let fault = fatal(feature, found, "holes inside the outline");
                        self.faults.push(of_ring(fault, &self.frame));
                    }
                }
                let overlap_m2 = self.engine(region.intersect(&holes))?.area_m2();
                if overlap_m2 > OVERLAP_NOTED_M2 {
                    let found = format!("the hole overlaps another one by {overlap_m2:.2} m2");
                    let fault = warning(feature, found, "holes apart from each other");
                    self.faults.push(of_ring(fault, &self.frame));
                }
                holes = self.engine(holes.union(&region))?;
            }
            if let Some(outer) = outer {
                let part = self.engine(outer.minus(&holes))?;
                let overlap_m2 = self.engine(part.intersect(&sum))?.area_m2();
                if overlap_m2 > OVERLAP_NOTED_M2 {
                    let found = format!("two of its polygons overlap by {overlap_m2:.2} m2");
                    self.faults
                        .push(warning(feature, found, "polygons apart from each other"));
                }
                sum = self.engine(sum.union(&part))?;
            }
        }
        (!sum.is_empty()).then_some(sum)
    }

    fn guides<'a>(&mut self, plan: &'a Plan) -> Vec<(&'a PlanFeature, Vec<Place>)> {
        let mut guides = Vec::new();
        let mut shares_fraction = 0.0;
        for feature in plan.of_role(PlanRole::Guide) {
            let PlanShape::Line(points) = &feature.shape else {
                let found = format!("a {} cannot be a guide", shape_word(&feature.shape));
                self.faults
                    .push(fatal(feature, found, shapes_of(PlanRole::Guide)));
                continue;
            };
            match feature.outing_share_fraction {
                Some(share_fraction) if !(0.0..=1.0).contains(&share_fraction) => {
                    let found = format!("outing_share_fraction is {share_fraction}");
                    self.faults.push(fatal(feature, found, "a number from 0 to 1"));
                }
                share_fraction => shares_fraction += share_fraction.unwrap_or(0.0),
            }
            if !positions_are_sound(feature, None, points, &mut self.faults) {
                continue;
            }
            let mut line: Vec<Place> = points.iter().map(|point| self.frame.to_place(*point)).collect();
            line.dedup_by(|later, kept| later.distance_m(*kept) < 0.001);
            if line.len() < 2 {
                let found = format!("the line has {} different point(s)", line.len());
                self.faults.push(fatal(
                    feature,
                    found,
                    "at least 2 points, from the station outwards",
                ));
                continue;
            }
            guides.push((feature, line));
        }
        if shares_fraction > 1.0 + 1e-9 {
            let found = format!("the outing shares of all guide runs add up to {shares_fraction:.3}");
            self.faults.push(of_plan(found, "at most 1", false));
        }
        guides
    }

    fn stations(&mut self, plan: &Plan) -> Vec<Place> {
        let mut stations = Vec::new();
        for feature in plan.of_role(PlanRole::Station) {
            let PlanShape::Point(point) = &feature.shape else {
                let found = format!("a {} cannot be a station", shape_word(&feature.shape));
                self.faults
                    .push(fatal(feature, found, shapes_of(PlanRole::Station)));
                continue;
            };
            if positions_are_sound(feature, None, &[*point], &mut self.faults) {
                stations.push(self.frame.to_place(*point));
            }
        }
        stations
    }

    /// Reports positions that are too far apart; false if nothing more can be said about the plan.
    fn extent_is_sound(&mut self, plan: &Plan) -> bool {
        let mut points = plan
            .features
            .iter()
            .flat_map(|feature| points_of(feature).into_iter().map(move |point| (feature, point)));
        let Some((_, first)) = points.next() else {
            return true;
        };
        // Measure from a point of the lawn if there is one: the stray feature is then the one to name.
        let middle = plan
            .of_role(PlanRole::Lawn)
            .flat_map(points_of)
            .next()
            .unwrap_or(first);
        let frame = Frame::at(middle);
        let is_near = |point: GeoPoint| {
            // On a plane, the far side of the Earth looks close.
            let turn_deg = (point.lon_deg - middle.lon_deg).abs() % 360.0;
            let turn_deg = turn_deg.min(360.0 - turn_deg);
            let sideways_deg = turn_deg * math::cos(middle.lat_deg.to_radians()).abs();
            (point.lat_deg - middle.lat_deg).abs() < 1.0
                && (sideways_deg < 1.0 || middle.lat_deg.abs() > 89.0)
        };
        let distance_m = |point: GeoPoint| {
            if is_near(point) {
                frame.to_place(point).distance_m(Place::default())
            } else {
                f64::INFINITY
            }
        };
        let farthest = points.max_by(|a, b| distance_m(a.1).total_cmp(&distance_m(b.1)));
        let Some((feature, point)) = farthest else {
            return true;
        };
        let farthest_m = distance_m(point);
        if farthest_m <= WIDEST_M {
            return true;
        }
        let how_far = if farthest_m.is_finite() {
            format!("{:.0} m", farthest_m)
        } else {
            "more than 100 km".to_owned()
        };
        let found = format!("it reaches {how_far} from the lawn's first corner");
        let expected = format!("a plan no wider than {WIDEST_M} m");
        self.faults.push(fatal(feature, found, expected).at(point));
        false
    }
}

fn named<T>(feature: &PlanFeature, shape: T) -> Named<T> {
    Named {
        name: feature.name.clone(),
        feature: feature.index,
        shape,
    }
}

const fn shape_word(shape: &PlanShape) -> &'static str {
    match shape {
        PlanShape::Polygons(_) => "polygon",
        PlanShape::Line(_) => "line",
        PlanShape::Point(_) => "point",
    }
}

/// The shapes that are allowed for a role.
const fn shapes_of(role: PlanRole) -> &'static str {
    match role {
        PlanRole::Lawn | PlanRole::Exclusion => "a polygon",
        PlanRole::Boundary => "a polygon or a closed line",
        PlanRole::Obstacle => "a polygon, or a point with radius_m",
        PlanRole::Guide => "a line from the station outwards",
        PlanRole::Station => "a point",
    }
}

#[cfg(test)]
#[path = "site_tests.rs"]
mod tests;
