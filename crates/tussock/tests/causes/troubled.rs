//! Gardens with one known fault each, to judge whether its cause is found.
//!
//! Each has ground where grass is left standing for a reason that is built in: the reason is true by construction, and the
//! analyser sees only the plan. Sizes, proportions, directions and turns are random; faults that depend on luck (a narrow
//! passage) are drawn again until the part behind it got little.

use std::f64::consts::TAU;
use tussock_plane::{Frame, Region, Site, Vector};
use tussock_simulate::gardens::{DrawnGarden, ORIGIN, PlanSheet, bar, convex, ell, two_rooms};
use tussock_simulate::{Dice, Machine, Manner, Run, Spell, StuckSpot};
use tussock_types::{Cause, GeoPoint, Place, Plan, PlanRole};

/// What is wrong.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Trouble {
    /// The gap is narrower than the machine needs.
    ShutGap,
    /// An obstacle stands on the lawn that the plan does not show.
    Body,
    /// A fence that the plan does not show closes a passage.
    ClosedPassage,
    /// A passage that is seldom found.
    NarrowPassage,
    /// A fence that the plan does not show keeps the machine off a strip along an edge.
    EdgeStrip,
    /// A zone is elsewhere than drawn.
    ZoneElsewhere,
    /// A bad place catches the machine on the way.
    BadPlaceOnTheWay,
    /// A wide passage, far from the station, and short outings.
    FarPart,
}

impl Trouble {
    /// All of them.
    pub(crate) const ALL: [Self; 8] = [
        Self::ShutGap,
        Self::Body,
        Self::ClosedPassage,
        Self::NarrowPassage,
        Self::EdgeStrip,
        Self::ZoneElsewhere,
        Self::BadPlaceOnTheWay,
        Self::FarPart,
    ];

    /// The cause that a technician would name.
    pub(crate) const fn cause(self) -> Cause {
        match self {
            Self::ShutGap | Self::Body | Self::ClosedPassage => Cause::WalledOff,
            Self::NarrowPassage => Cause::NarrowPassage,
            Self::EdgeStrip => Cause::EdgeBand,
            Self::ZoneElsewhere => Cause::ZoneMisplaced,
            Self::BadPlaceOnTheWay => Cause::BeyondStuckSpot,
            Self::FarPart => Cause::TooFewVisits,
        }
    }
}

/// A garden with a fault, and the machine that meets it.
#[derive(Clone, Debug)]
pub(crate) struct Troubled {
    /// As drawn.
    pub(crate) plan: Plan,
    /// As it is.
    pub(crate) ground: Plan,
    /// The machine.
    pub(crate) machine: Machine,
    /// Its run.
    pub(crate) run: Run,
    /// The ground that suffers, on the plan's plane.
    pub(crate) suffers: Region,
    /// Path in that ground over its fair share must stay below this for the fault to count; run it to find out.
    pub(crate) most_share_fraction: f64,
}

/// Invents one. Areas are in square metres; larger ones give metre logs a chance.
pub(crate) fn troubled(trouble: Trouble, area_m2: (f64, f64), seed: u64) -> Option<Troubled> {
    let mut dice = Dice::new(seed, 11);
    let dice = &mut dice;
    let setback_m = dice.between(0.1, 0.25);
    let speed_mps = dice.between(0.3, 0.45);
    let mut machine = Machine {
        speed_mps,
        past_boundary_m: -setback_m,
        ..Machine::default()
    };
    let area = dice.between(area_m2.0, area_m2.1);
    let large = (area / 500.0).sqrt().max(1.0);
    let mut drawn = match trouble {
        Trouble::ShutGap => two_rooms(area, 2.0 * setback_m - dice.between(0.03, 0.12), dice),
        Trouble::ClosedPassage => two_rooms(area, dice.between(1.5, 3.0), dice),
        Trouble::NarrowPassage => two_rooms(area, 2.0 * setback_m + dice.between(0.2, 0.6), dice),
        Trouble::BadPlaceOnTheWay => two_rooms(area, 2.0 * setback_m + dice.between(0.9, 1.8), dice),
        Trouble::FarPart => two_rooms(area, 2.0 * setback_m + dice.between(1.7, 2.6), dice),
        Trouble::Body | Trouble::ZoneElsewhere | Trouble::EdgeStrip => {
            if dice.happens(0.5) {
                convex(area, dice)
            } else {
                ell(area, dice)
            }
        }
    };
    let mut more: Vec<(PlanRole, &str, Vec<Vector>)> = Vec::new();
    let mut on_plan_too: Vec<(PlanRole, &str, Vec<Vector>)> = Vec::new();
    let mut bad_places: Vec<(Vector, f64, f64)> = Vec::new();
    let mut most_share_fraction = 0.4;
    let back = |drawn: &DrawnGarden| {
        // The second room: corners 4 to 7 of two rooms.
        vec![drawn.lawn[4], drawn.lawn[5], drawn.lawn[6], drawn.lawn[7]]
    };
    let suffers: Vec<Vector> = match trouble {
        Trouble::ShutGap | Trouble::NarrowPassage => back(&drawn),
        Trouble::ClosedPassage => {
            // Askew by up to a third of a right angle.
            let (from, to) = drawn.fence;
            let middle = (from + to) * 0.5;
            let half = ((to - from) * 0.5).turned(dice.between(-0.5, 0.5)) * 1.2;
            more.push((
                PlanRole::Exclusion,
                "fence",
                bar((middle - half, middle + half), 0.1),
            ));
            back(&drawn)
        }
        Trouble::BadPlaceOnTheWay => {
            let (from, to) = drawn.fence;
            let width_m = (to - from).length() - 1.0;
            bad_places.push(((from + to) * 0.5, 0.5 * width_m, dice.between(0.85, 0.97)));
            back(&drawn)
        }
        Trouble::FarPart => {
            machine.roaming = Spell::Between {
                min_s: 1500.0,
                max_s: 2400.0,
            };
            most_share_fraction = 0.5;
            back(&drawn)
        }
        Trouble::Body => {
            let radius_m = dice.between(0.9, 1.5) * large;
            let at = open_place(&drawn, radius_m + 2.5, dice)?;
            let count = 5 + dice.below(4);
            let turn = dice.between(0.0, TAU);
            let ring: Vec<Vector> = (0..count)
                .map(|number| {
                    at + Vector::of_angle(turn + number as f64 * TAU / count as f64)
                        * radius_m
                        * dice.between(0.85, 1.15)
                })
                .collect();
            more.push((PlanRole::Exclusion, "body", ring.clone()));
            ring
        }
        Trouble::ZoneElsewhere => {
            let (long_m, wide_m) = (dice.between(1.2, 1.8) * large, dice.between(0.9, 1.3) * large);
            let at = open_place(&drawn, long_m + 2.5, dice)?;
            let way = Vector::of_angle(dice.between(0.0, TAU));
            let to = at + way * (long_m + wide_m) * dice.between(0.9, 1.2);
            let (tilt, more_tilt) = (dice.between(0.0, TAU), dice.between(-0.3, 0.3));
            let zone = |at: Vector, tilt: f64| {
                [
                    (-long_m, -wide_m),
                    (long_m, -wide_m),
                    (long_m, wide_m),
                    (-long_m, wide_m),
                ]
                .map(|(x, y)| at + Vector::new(x, y).turned(tilt))
                .to_vec()
            };
            let moved = zone(to, tilt + more_tilt);
            if !inside(&drawn.lawn, &moved, 1.2) || !inside(&drawn.lawn, &zone(at, tilt), 1.2) {
                return None;
            }
            on_plan_too.push((PlanRole::Exclusion, "pond", zone(at, tilt)));
            more.push((PlanRole::Exclusion, "pond", moved.clone()));
            moved
        }
        Trouble::EdgeStrip => {
            let side = longest_side(&drawn.lawn);
            let (from, to) = (drawn.lawn[side], drawn.lawn[(side + 1) % drawn.lawn.len()]);
            let along = (to - from).unit()?;
            let length_m = (to - from).length();
            let strip_m = (length_m * dice.between(0.4, 0.7)).max(6.0).min(length_m - 2.0);
            let start_m = dice.between(1.0, length_m - strip_m - 0.9);
            let width_m = dice.between(0.85, 1.3) * large;
            let (a, b) = (from + along * start_m, from + along * (start_m + strip_m));
            let inwards = along.left() * width_m;
            let ring = vec![
                a - along.left() * 0.3,
                b - along.left() * 0.3,
                b + inwards,
                a + inwards,
            ];
            more.push((PlanRole::Exclusion, "hedge", ring));
            vec![a, b, b + inwards, a + inwards]
        }
    };
    if trouble == Trouble::FarPart || trouble == Trouble::NarrowPassage {
        // The station far from the passage.
        let far = (drawn.lawn[0] + drawn.lawn[11]) * 0.5;
        drawn.guide[0] = far;
    }
    let turn_rad = dice.between(0.0, TAU);
    let frame = Frame::at(ORIGIN);
    let middle = drawn.middle;
    let geo = move |at: Vector| -> GeoPoint { frame.to_geo((at - middle).turned(turn_rad).into()) };
    let mut plan = PlanSheet::new(Plan::default(), geo);
    plan.area(PlanRole::Lawn, "lawn", &drawn.lawn);
    plan.station(drawn.guide[0]);
    let mut ground = PlanSheet::new(plan.plan.clone(), geo);
    for (role, name, ring) in &on_plan_too {
        plan.area(*role, name, ring);
    }
    for (role, name, ring) in &more {
        ground.area(*role, name, ring);
    }
    let (site, _) = Site::build(&plan.plan).ok()?;
    let place = |at: Vector| -> Place { site.frame.to_place(geo(at)) };
    let mut ring: Vec<Place> = suffers.iter().map(|at| place(*at)).collect();
    ring.push(ring[0]);
    let suffers = Region::from_rings(vec![vec![ring]])
        .ok()?
        .intersect(&site.lawn)
        .ok()?;
    let run = Run {
        stuck_spots: bad_places
            .into_iter()
            .map(|(at, radius_m, probability)| StuckSpot {
                place: place(at),
                radius_m,
                probability,
                duration: Spell::Between {
                    min_s: 150.0,
                    max_s: 900.0,
                },
                manner: Manner::Stands,
            })
            .collect(),
        ..Run::new(dice.between(10.0, 16.0) * (area / 500.0).clamp(1.0, 3.0), seed)
    };
    Some(Troubled {
        plan: plan.plan,
        ground: ground.plan,
        machine,
        run,
        suffers,
        most_share_fraction,
    })
}

/// A place with this much room around it, by trial.
fn open_place(drawn: &DrawnGarden, room_m: f64, dice: &mut Dice) -> Option<Vector> {
    let (mut low, mut high) = (drawn.lawn[0], drawn.lawn[0]);
    for corner in &drawn.lawn {
        low = Vector::new(low.east.min(corner.east), low.north.min(corner.north));
        high = Vector::new(high.east.max(corner.east), high.north.max(corner.north));
    }
    (0..200)
        .map(|_| {
            Vector::new(
                dice.between(low.east, high.east),
                dice.between(low.north, high.north),
            )
        })
        .find(|at| inside(&drawn.lawn, &[*at], room_m) && (*at - drawn.guide[0]).length() > room_m + 1.0)
}

/// Whether all the places lie within a ring, at least this far from its edge.
fn inside(ring: &[Vector], places: &[Vector], room_m: f64) -> bool {
    let closed: Vec<Place> = ring.iter().chain(ring.first()).map(|at| (*at).into()).collect();
    Region::from_rings(vec![vec![closed]]).is_ok_and(|region| {
        places.iter().all(|at| {
            let place: Place = (*at).into();
            region.contains(place) && region.edge_distance_m(place) >= room_m
        })
    })
}

fn longest_side(ring: &[Vector]) -> usize {
    let length_m = |side: usize| (ring[(side + 1) % ring.len()] - ring[side]).length();
    // The first side holds the station.
    (1..ring.len())
        .max_by(|a, b| length_m(*a).total_cmp(&length_m(*b)))
        .unwrap_or(0)
}
