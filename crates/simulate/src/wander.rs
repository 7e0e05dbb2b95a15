//! Where would the machine drive if every place were equally easy to reach?
//!
//! The machine is put down at a uniformly drawn place of the turning region, drives and turns by its law, and after a given
//! number of metres is put down somewhere else. Station, outings and passages no longer matter: what such a drive leaves
//! unvisited, it leaves by luck. The restart depends on the length of path, not on the number of legs, because that would
//! starve small rooms, whose legs are shorter.

use crate::drive::{Driver, LegLimits, Yard, somewhere_in};
use crate::machine::{Machine, Run, SimulateError};
use std::f64::consts::TAU;
use tussock_plane::Vector;
use tussock_types::Place;

/// Attempts to hit the ground before its largest part is taken.
const TRIALS: usize = 10_000;

impl Yard {
    /// Legs of a well mixed drive of `path_m`, with a new start every `restart_m`.
    ///
    /// # Errors
    /// [`SimulateError::OutOfRange`].
    pub fn wander(
        &self,
        machine: &Machine,
        path_m: f64,
        restart_m: f64,
        seed: u64,
    ) -> Result<Vec<[Place; 2]>, SimulateError> {
        machine.check()?;
        crate::machine::check("path_m", path_m, 0.0, 1e8, "0 to 100,000,000 m")?;
        crate::machine::check("restart_m", restart_m, 0.1, 1e8, "0.1 to 100,000,000 m")?;
        // Time does not matter here.
        let run = Run::new(10_000.0, seed);
        let mut driver = Driver::new(self, machine, &run);
        let mut legs = Vec::new();
        let mut left_m = path_m;
        // A place where no leg fits moves nothing; the count ends that too.
        let mut put_down = 0.0;
        while left_m > 0.0 && put_down <= 10.0 + 4.0 * path_m / restart_m {
            put_down += 1.0;
            driver.put_down_anywhere();
            let mut until_restart_m = restart_m.min(left_m);
            let mut still = 0;
            while until_restart_m > 1e-9 && still < 100 {
                let from = driver.place;
                driver.record.vertices.clear();
                driver.record.halts.clear();
                driver.time_s = 0.0;
                let turn_at = driver.straight_on(until_restart_m);
                let driven_m = (driver.place - from).length();
                if driven_m > 0.0 {
                    legs.push([from.into(), driver.place.into()]);
                    still = 0;
                } else {
                    still += 1;
                }
                until_restart_m -= driven_m;
                left_m -= driven_m;
                if let Some(edge) = turn_at {
                    driver.heading = driver.after_edge(driver.part().edges[edge]);
                }
            }
        }
        Ok(legs)
    }
}

impl Driver<'_> {
    /// Drives on for at most this far; returns the edge that it met.
    fn straight_on(&mut self, within_m: f64) -> Option<usize> {
        let end = self.leg(LegLimits {
            guides_from_s: f64::INFINITY,
            within_m,
        });
        match end {
            crate::drive::LegEnd::Edge(edge) => Some(edge),
            _ => None,
        }
    }

    fn put_down_anywhere(&mut self) {
        self.time_s = 0.0;
        let yard = self.yard;
        let spot = yard.turning_region().bounds().and_then(|(low, high)| {
            (0..TRIALS).find_map(|_| {
                let place = Vector::new(
                    self.dice.between(low.east_m, high.east_m),
                    self.dice.between(low.north_m, high.north_m),
                );
                let part = yard.parts.iter().position(|part| part.contains(place))?;
                Some((part, place))
            })
        });
        (self.part, self.place) = spot.unwrap_or_else(|| {
            (
                yard.home_part,
                somewhere_in(&yard.parts[yard.home_part], &mut self.dice),
            )
        });
        self.heading = Vector::of_angle(self.dice.between(0.0, TAU));
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::gardens::{GardenKind, invent};
    use tussock_plane::Site;

    #[test]
    fn a_well_mixed_drive_spreads_over_both_rooms_by_their_area() {
        const SEED: u64 = 3;
        let plan = invent(GardenKind::TwoRooms { passage_m: 0.9 }, SEED);
        let (site, _) = Site::build(&plan).unwrap();
        let machine = Machine::default();
        let yard = Yard::new(&site, machine.past_boundary_m).unwrap();
        let legs = yard.wander(&machine, 40_000.0, 60.0, SEED).unwrap();
        let path_m: f64 = legs.iter().map(|[from, to]| from.distance_m(*to)).sum();
        assert!((path_m - 40_000.0).abs() < 1e-3, "{path_m}");
        // The path per area differs little between the halves of the ground, cut across its longest extent.
        let middle = site.lawn.centroid().unwrap();
        let half = |side: f64| -> (f64, f64) {
            let region = yard.turning_region();
            let (low, high) = region.bounds().unwrap();
            let mut cells = 0.0;
            let step_m = 0.25;
            let mut north_m = low.north_m;
            while north_m < high.north_m {
                let mut east_m = low.east_m;
                while east_m < high.east_m {
                    let place = Place::new(east_m, north_m);
                    if (east_m - middle.east_m) * side > 0.0 && region.contains(place) {
                        cells += step_m * step_m;
                    }
                    east_m += step_m;
                }
                north_m += step_m;
            }
            let path_m: f64 = legs
                .iter()
                .filter(|[from, to]| (0.5 * (from.east_m + to.east_m) - middle.east_m) * side > 0.0)
                .map(|[from, to]| from.distance_m(*to))
                .sum();
            (path_m, cells)
        };
        let ((west_m, west_m2), (east_m, east_m2)) = (half(-1.0), half(1.0));
        let ratio = (west_m / west_m2) / (east_m / east_m2);
        assert!((0.85..1.18).contains(&ratio), "{ratio}");
    }

    #[test]
    fn the_same_seed_gives_the_same_drive_and_another_seed_another() {
        let plan = invent(GardenKind::Ell, 4);
        let (site, _) = Site::build(&plan).unwrap();
        let machine = Machine::default();
        let yard = Yard::new(&site, machine.past_boundary_m).unwrap();
        let drive = |seed| yard.wander(&machine, 500.0, 60.0, seed).unwrap();
        assert_eq!(drive(1), drive(1));
        assert_ne!(drive(1), drive(2));
    }
}
