//! On what gardens can all this be tried?
//!
//! Invented ones: families of shapes with random sizes, proportions and orientations and, if requested, a difference between
//! the drawing and the ground. None exists; they lie around a point that was chosen for its round numbers.

pub mod load;

use crate::dice::Dice;
use std::f64::consts::TAU;
use tussock_plane::Frame;
use tussock_plane::Vector;
use tussock_types::{GeoPoint, GeoPolygon, Plan, PlanFeature, PlanRole, PlanShape};

/// About where invented gardens lie.
pub const ORIGIN: GeoPoint = GeoPoint {
    lat_deg: 53.9,
    lon_deg: 12.3,
};

/// A family of shapes.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum GardenKind {
    /// A rectangle or a convex lawn with 5 to 8 corners.
    Convex,
    /// An L.
    Ell,
    /// A rectangle with one to three islands: zones and trees.
    Islands,
    /// Two rectangles joined by a passage.
    TwoRooms {
        /// Width of the passage, lawn to lawn.
        passage_m: f64,
    },
    /// A U.
    You,
}

impl GardenKind {
    /// One of each, the passage 1.6 m wide.
    pub const ALL: [Self; 5] = [
        Self::Convex,
        Self::Ell,
        Self::Islands,
        Self::TwoRooms { passage_m: 1.6 },
        Self::You,
    ];
}

/// How the ground differs from the drawing.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Surprise {
    /// Not at all.
    None,
    /// A fence that is not drawn closes off a part.
    BlockedPart,
    /// An obstacle of this radius stands in the middle of the lawn.
    UnlistedObstacle {
        /// Radius.
        radius_m: f64,
    },
    /// A zone of three by two metres lies this far from where it is drawn.
    ZoneMoved {
        /// How far it was moved.
        by_m: f64,
    },
}

/// What kind of garden is requested.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Wish {
    /// Family.
    pub kind: GardenKind,
    /// Least and largest area of the lawn as drawn, including islands.
    pub area_m2: (f64, f64),
    /// Share of outings along a guide run; if `None`, there is no guide run.
    pub guide_share_fraction: Option<f64>,
    /// Difference between drawing and ground.
    pub surprise: Surprise,
}

impl Wish {
    /// 300 to 900 m2, no guide run, no surprise.
    pub const fn new(kind: GardenKind) -> Self {
        Self {
            kind,
            area_m2: (300.0, 900.0),
            guide_share_fraction: None,
            surprise: Surprise::None,
        }
    }
}

/// An invented garden.
#[derive(Clone, Debug, PartialEq)]
pub struct InventedGarden {
    /// As drawn.
    pub plan: Plan,
    /// The garden as it is on the ground; the same unless a surprise was requested.
    pub ground: Plan,
}

/// Invents the plan of a garden of a family.
pub fn invent(kind: GardenKind, seed: u64) -> Plan {
    invent_as(&Wish::new(kind), seed).plan
}

/// Invents a garden.
pub fn invent_as(wish: &Wish, seed: u64) -> InventedGarden {
    let mut dice = Dice::new(seed, 7);
    let area_m2 = dice.between(wish.area_m2.0, wish.area_m2.1);
    let drawn = match wish.kind {
        GardenKind::Convex => convex(area_m2, &mut dice),
        GardenKind::Ell => ell(area_m2, &mut dice),
        GardenKind::Islands => islands(area_m2, &mut dice),
        GardenKind::TwoRooms { passage_m } => two_rooms(area_m2, passage_m, &mut dice),
        GardenKind::You => you(area_m2, &mut dice),
    };
    let turn_rad = dice.between(0.0, TAU);
    let frame = Frame::at(ORIGIN);
    let middle = drawn.middle;
    let geo = move |at: Vector| frame.to_geo((at - middle).turned(turn_rad).into());
    let mut plan = PlanSheet::new(Plan::default(), geo);
    plan.area(PlanRole::Lawn, "lawn", &drawn.lawn);
    for (number, zone) in drawn.zones.iter().enumerate() {
        plan.area(PlanRole::Exclusion, &format!("bed {}", number + 1), zone);
    }
    for (number, (at, radius_m)) in drawn.trees.iter().enumerate() {
        plan.disc(&format!("tree {}", number + 1), *at, *radius_m);
    }
    plan.station(drawn.guide[0]);
    if let Some(share_fraction) = wish.guide_share_fraction {
        plan.guide("guide", &drawn.guide, share_fraction);
    }
    let mut ground = PlanSheet::new(plan.plan.clone(), geo);
    match wish.surprise {
        Surprise::None => {}
        Surprise::BlockedPart => ground.area(PlanRole::Exclusion, "fence", &bar(drawn.fence, 0.3)),
        Surprise::UnlistedObstacle { radius_m } => ground.disc("unlisted", drawn.open, radius_m),
        Surprise::ZoneMoved { by_m } => {
            let zone = |at: Vector| {
                [(-1.5, -1.0), (1.5, -1.0), (1.5, 1.0), (-1.5, 1.0)]
                    .map(|(x, y)| at + Vector::new(x, y))
                    .to_vec()
            };
            let step = Vector::of_angle(dice.between(0.0, TAU)) * by_m;
            plan.area(PlanRole::Exclusion, "pond", &zone(drawn.open));
            ground.area(PlanRole::Exclusion, "pond", &zone(drawn.open + step));
        }
    }
    InventedGarden {
        plan: plan.plan,
        ground: ground.plan,
    }
}

/// A garden in metres, before it is rotated.
#[derive(Default)]
pub struct DrawnGarden {
    /// Corners.
    pub lawn: Vec<Vector>,
    zones: Vec<Vec<Vector>>,
    trees: Vec<(Vector, f64)>,
    /// From the station outwards.
    pub guide: Vec<Vector>,
    /// Where a fence would close off a part, from edge to edge and slightly beyond.
    pub fence: (Vector, Vector),
    /// A place with room around.
    open: Vector,
    /// The point about which it is rotated.
    pub middle: Vector,
}

/// A bar with this half width about a line.
pub fn bar((from, to): (Vector, Vector), half_m: f64) -> Vec<Vector> {
    let aside = (to - from).unit().unwrap_or(Vector::new(1.0, 0.0)).left() * half_m;
    vec![from - aside, to - aside, to + aside, from + aside]
}

fn corners(list: &[(f64, f64)]) -> Vec<Vector> {
    list.iter().map(|&(x, y)| Vector::new(x, y)).collect()
}

/// Width and height of a rectangle.
fn sides(area_m2: f64, dice: &mut Dice) -> (f64, f64) {
    let ratio = dice.between(1.1, 2.2);
    ((area_m2 * ratio).sqrt(), (area_m2 / ratio).sqrt())
}

/// A rectangle or a convex lawn with 5 to 8 corners.
pub fn convex(area_m2: f64, dice: &mut Dice) -> DrawnGarden {
    let (width_m, height_m) = sides(area_m2, dice);
    let rectangle = corners(&[(0.0, 0.0), (width_m, 0.0), (width_m, height_m), (0.0, height_m)]);
    let lawn = if dice.happens(0.4) {
        rectangle
    } else {
        let count = 5 + dice.below(4);
        // Corners on an ellipse, one in each sector; then scaled to the area.
        let raw: Vec<Vector> = (0..count)
            .map(|number| {
                let turn = Vector::of_angle((number as f64 + dice.between(0.25, 0.75)) * TAU / count as f64);
                Vector::new(turn.east * width_m, turn.north * height_m)
            })
            .collect();
        let raw_m2: f64 = (0..count)
            .map(|number| raw[number].cross(raw[(number + 1) % count]) / 2.0)
            .sum();
        let scale = (area_m2 / raw_m2).sqrt();
        raw.into_iter().map(|corner| corner * scale).collect()
    };
    let middle = lawn.iter().fold(Vector::default(), |sum, corner| sum + *corner) * (1.0 / lawn.len() as f64);
    let station = (lawn[0] + lawn[1]) * 0.5;
    let far = middle + (middle - station) * 0.5;
    // Between the edges on both sides of the far end, and well beyond them.
    let across = (far - station).unit().unwrap_or(Vector::new(0.0, 1.0)).left() * (width_m + height_m);
    DrawnGarden {
        guide: vec![station, middle, far],
        fence: (far - across, far + across),
        open: middle,
        lawn,
        middle,
        ..DrawnGarden::default()
    }
}

/// An L.
pub fn ell(area_m2: f64, dice: &mut Dice) -> DrawnGarden {
    let (wide, high) = (dice.between(0.4, 0.6), dice.between(0.4, 0.6));
    // A rectangle without its far corner, a part `(1 - wide) (1 - high)` of it.
    let (width_m, height_m) = sides(area_m2 / (1.0 - (1.0 - wide) * (1.0 - high)), dice);
    let (arm_m, foot_m) = (wide * width_m, high * height_m);
    DrawnGarden {
        lawn: corners(&[
            (0.0, 0.0),
            (width_m, 0.0),
            (width_m, foot_m),
            (arm_m, foot_m),
            (arm_m, height_m),
            (0.0, height_m),
        ]),
        guide: corners(&[
            (0.7 * width_m, 0.0),
            (0.7 * width_m, foot_m / 2.0),
            (arm_m / 2.0, foot_m / 2.0),
            (arm_m / 2.0, foot_m + 0.7 * (height_m - foot_m)),
        ]),
        fence: (
            Vector::new(-0.5, foot_m + 0.3),
            Vector::new(arm_m + 0.5, foot_m + 0.3),
        ),
        open: Vector::new(arm_m / 2.0, foot_m / 2.0),
        middle: Vector::new(arm_m / 2.0, foot_m / 2.0),
        ..DrawnGarden::default()
    }
}

fn islands(area_m2: f64, dice: &mut Dice) -> DrawnGarden {
    let (width_m, height_m) = sides(area_m2, dice);
    let mut zones = Vec::new();
    let mut trees = Vec::new();
    // One island in each third of the width, clear of the edges.
    let count = 1 + dice.below(3);
    for third in 0..count {
        let at = Vector::new(
            (third as f64 + dice.between(0.4, 0.6)) * width_m / count as f64,
            dice.between(0.55, 0.7) * height_m,
        );
        if third == 0 || dice.happens(0.5) {
            let size_m = dice.between(0.07, 0.1) * height_m + 0.5;
            let corners = 5 + dice.below(4);
            let turn = dice.between(0.0, TAU);
            let ring = (0..corners)
                .map(|number| {
                    at + Vector::of_angle(turn + number as f64 * TAU / corners as f64)
                        * size_m
                        * dice.between(0.8, 1.2)
                })
                .collect();
            zones.push(ring);
        } else {
            trees.push((at, dice.between(0.2, 0.5)));
        }
    }
    let middle = Vector::new(width_m / 2.0, height_m / 2.0);
    DrawnGarden {
        lawn: corners(&[(0.0, 0.0), (width_m, 0.0), (width_m, height_m), (0.0, height_m)]),
        zones,
        trees,
        guide: corners(&[
            (0.3 * width_m, 0.0),
            (0.3 * width_m, 0.25 * height_m),
            (0.85 * width_m, 0.3 * height_m),
        ]),
        fence: (
            Vector::new(0.8 * width_m, -0.5),
            Vector::new(0.8 * width_m, height_m + 0.5),
        ),
        open: Vector::new(0.5 * width_m, 0.25 * height_m),
        middle,
    }
}

/// Two rectangles joined by a passage: corners 0 to 3 and 8 to 11 are those of the first, 4 to 7 those of the second.
pub fn two_rooms(area_m2: f64, passage_m: f64, dice: &mut Dice) -> DrawnGarden {
    let share = dice.between(0.45, 0.65);
    let (front_w_m, front_h_m) = sides(area_m2 * share, dice);
    let (back_w_m, back_h_m) = sides(area_m2 * (1.0 - share), dice);
    let length_m = dice.between(1.0, 4.0);
    let (half_m, low_m) = (passage_m / 2.0, front_w_m);
    let axis_m = dice.between(0.25, 0.75) * front_h_m.min(back_h_m);
    let far_m = low_m + length_m;
    DrawnGarden {
        lawn: corners(&[
            (0.0, 0.0),
            (low_m, 0.0),
            (low_m, axis_m - half_m),
            (far_m, axis_m - half_m),
            (far_m, 0.0),
            (far_m + back_w_m, 0.0),
            (far_m + back_w_m, back_h_m),
            (far_m, back_h_m),
            (far_m, axis_m + half_m),
            (low_m, axis_m + half_m),
            (low_m, front_h_m),
            (0.0, front_h_m),
        ]),
        guide: corners(&[
            (0.3 * front_w_m, 0.0),
            (0.3 * front_w_m, axis_m),
            (far_m + 0.6 * back_w_m, axis_m),
            (far_m + 0.6 * back_w_m, 0.6 * back_h_m),
        ]),
        fence: (
            Vector::new(low_m + length_m / 2.0, axis_m - half_m - 0.5),
            Vector::new(low_m + length_m / 2.0, axis_m + half_m + 0.5),
        ),
        open: Vector::new(front_w_m / 2.0, front_h_m / 2.0),
        middle: Vector::new(low_m, front_h_m / 2.0),
        ..DrawnGarden::default()
    }
}

fn you(area_m2: f64, dice: &mut Dice) -> DrawnGarden {
    // Two arms and a foot around a notch that takes a third of the width and the upper part of the height.
    let notch_high = dice.between(0.4, 0.6);
    let (width_m, height_m) = sides(area_m2 / (1.0 - notch_high / 3.0), dice);
    let (left_m, right_m) = (width_m / 3.0, 2.0 * width_m / 3.0);
    let foot_m = (1.0 - notch_high) * height_m;
    DrawnGarden {
        lawn: corners(&[
            (0.0, 0.0),
            (width_m, 0.0),
            (width_m, height_m),
            (right_m, height_m),
            (right_m, foot_m),
            (left_m, foot_m),
            (left_m, height_m),
            (0.0, height_m),
        ]),
        guide: corners(&[
            (left_m / 2.0, 0.0),
            (left_m / 2.0, foot_m / 2.0),
            ((right_m + width_m) / 2.0, foot_m / 2.0),
            ((right_m + width_m) / 2.0, foot_m + 0.7 * (height_m - foot_m)),
        ]),
        fence: (
            Vector::new(right_m - 0.5, foot_m + 0.3),
            Vector::new(width_m + 0.5, foot_m + 0.3),
        ),
        open: Vector::new(width_m / 2.0, foot_m / 2.0),
        middle: Vector::new(width_m / 2.0, foot_m / 2.0),
        ..DrawnGarden::default()
    }
}

/// A plan that is being drawn, in metres.
pub struct PlanSheet {
    /// As far as it is drawn.
    pub plan: Plan,
    geo: Box<dyn Fn(Vector) -> GeoPoint>,
}

impl PlanSheet {
    /// Continues a plan; `geo` gives the coordinates of a place of the drawing.
    pub fn new(plan: Plan, geo: impl Fn(Vector) -> GeoPoint + 'static) -> Self {
        let geo = Box::new(geo);
        Self { plan, geo }
    }

    fn add(&mut self, role: PlanRole, name: &str, shape: PlanShape) -> &mut PlanFeature {
        let index = self.plan.features.len();
        self.plan
            .features
            .push(PlanFeature::new(role, name, index, shape));
        &mut self.plan.features[index]
    }

    /// Adds an area by its corners.
    pub fn area(&mut self, role: PlanRole, name: &str, ring: &[Vector]) {
        let closed = ring
            .iter()
            .chain(ring.first())
            .map(|corner| (self.geo)(*corner))
            .collect();
        self.add(
            role,
            name,
            PlanShape::Polygons(vec![GeoPolygon { rings: vec![closed] }]),
        );
    }

    fn disc(&mut self, name: &str, at: Vector, radius_m: f64) {
        let point = (self.geo)(at);
        self.add(PlanRole::Obstacle, name, PlanShape::Point(point))
            .radius_m = Some(radius_m);
    }

    /// Adds the station.
    pub fn station(&mut self, at: Vector) {
        let point = (self.geo)(at);
        self.add(PlanRole::Station, "station", PlanShape::Point(point));
    }

    fn guide(&mut self, name: &str, line: &[Vector], share_fraction: f64) {
        let points = line.iter().map(|corner| (self.geo)(*corner)).collect();
        self.add(PlanRole::Guide, name, PlanShape::Line(points))
            .outing_share_fraction = Some(share_fraction);
    }
}
