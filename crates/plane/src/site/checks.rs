//! Do the pieces of a plan fit together?

use super::{Builder, FeatureGround, OVERLAP_NOTED_M2};
use crate::Region;
use crate::faults::{fatal, of_plan, warning};
use tussock_types::{Place, Plan, PlanFeature, PlanRole};

/// A smaller lawn is a slip of the pen.
const SMALLEST_LAWN_M2: f64 = 1.0;
/// A guide run starts at the station, so it must not begin farther away than this.
const GUIDE_START_M: f64 = 3.0;
/// A station farther from the lawn than this hardly serves it.
const STATION_OFF_LAWN_M: f64 = 5.0;
/// A guide run that is in a zone for less than this only brushes it.
const GUIDE_IN_ZONE_M: f64 = 0.1;

impl Builder {
    pub(super) fn check_lawns(&mut self, lawns: &FeatureGround, drawn_lawn: &Region) {
        for (position, (feature, region)) in lawns.iter().enumerate() {
            for (other, other_region) in &lawns[..position] {
                let Some(overlap) = self.engine(region.intersect(other_region)) else {
                    return;
                };
                if overlap.area_m2() > OVERLAP_NOTED_M2 {
                    let found = format!(
                        "it overlaps lawn \"{}\" by {:.2} m2",
                        other.name,
                        overlap.area_m2()
                    );
                    let expected = "each piece of lawn drawn once; it is counted once";
                    let at = overlap.centroid().map(|middle| self.frame.to_geo(middle));
                    self.faults.push(warning(feature, found, expected).at(at));
                }
            }
        }
        if drawn_lawn.area_m2() < SMALLEST_LAWN_M2 {
            let found = format!("the lawn has only {:.2} m2", drawn_lawn.area_m2());
            self.faults
                .push(of_plan(found, format!("at least {SMALLEST_LAWN_M2} m2"), true));
        }
    }

    /// Zones and obstacles that are not on the lawn.
    pub(super) fn check_inside(&mut self, grounds: &FeatureGround, drawn_lawn: &Region) {
        let filled = drawn_lawn.filled();
        for (feature, region) in grounds {
            let area_m2 = region.area_m2();
            let (Some(on_lawn), Some(within)) = (
                self.engine(region.intersect(drawn_lawn)),
                self.engine(region.intersect(&filled)),
            ) else {
                return;
            };
            let at = region.centroid().map(|middle| self.frame.to_geo(middle));
            let outside_m2 = area_m2 - within.area_m2();
            if within.area_m2() < OVERLAP_NOTED_M2.min(area_m2 / 2.0) {
                let found = format!("it lies wholly outside the lawn, {:.1} m from its edge", {
                    let middle = region.centroid().unwrap_or_default();
                    drawn_lawn.edge_distance_m(middle)
                });
                // An obstacle beside the lawn does no harm, but a zone there was meant to have an effect.
                let fault = match feature.role {
                    PlanRole::Exclusion => fatal(feature, found, "a zone on the lawn"),
                    _ => warning(feature, found, "an obstacle on the lawn"),
                };
                self.faults.push(fault.at(at));
            } else if on_lawn.area_m2() < OVERLAP_NOTED_M2.min(area_m2 / 2.0) {
                let found = "the lawn already has a hole there; it takes nothing away";
                self.faults.push(warning(feature, found, "").at(at));
            } else if outside_m2 > OVERLAP_NOTED_M2.max(0.01 * area_m2) {
                let found = format!("{outside_m2:.2} m2 of its {area_m2:.2} m2 lie outside the lawn");
                self.faults.push(warning(feature, found, "").at(at));
            }
        }
    }

    pub(super) fn check_guides(
        &mut self,
        guides: &[(&PlanFeature, Vec<Place>)],
        exclusions: &FeatureGround,
        station: Option<Place>,
    ) {
        for (feature, line) in guides {
            match station {
                None => {
                    let found = "there is no station for this guide run to start from";
                    self.faults
                        .push(warning(feature, found, "a feature with the role station"));
                }
                Some(station) => {
                    let gap_m = line[0].distance_m(station);
                    if gap_m > GUIDE_START_M {
                        let end_gap_m = line[line.len() - 1].distance_m(station);
                        let hint = if end_gap_m <= GUIDE_START_M {
                            "; it seems drawn the other way round"
                        } else {
                            ""
                        };
                        let found = format!("it starts {gap_m:.1} m from the station{hint}");
                        let expected = format!("a start within {GUIDE_START_M} m of it");
                        let start = self.frame.to_geo(line[0]);
                        self.faults.push(warning(feature, found, expected).at(start));
                    }
                }
            }
            for (zone, region) in exclusions {
                let inside_m = region.length_inside_m(line);
                if inside_m > GUIDE_IN_ZONE_M {
                    let found = format!("it runs {inside_m:.1} m through zone \"{}\"", zone.name);
                    self.faults
                        .push(warning(feature, found, "a guide run around exclusion zones"));
                }
            }
        }
    }

    pub(super) fn check_station(&mut self, plan: &Plan, station: Option<Place>, drawn_lawn: &Region) {
        let feature = plan.of_role(PlanRole::Station).next();
        let (Some(station), Some(feature)) = (station, feature) else {
            return;
        };
        let gap_m = drawn_lawn.edge_distance_m(station);
        if !drawn_lawn.contains(station) && gap_m > STATION_OFF_LAWN_M {
            let found = format!("it stands {gap_m:.1} m outside the lawn");
            let expected = format!("a station within {STATION_OFF_LAWN_M} m of it");
            let at = self.frame.to_geo(station);
            self.faults.push(warning(feature, found, expected).at(at));
        }
    }
}
