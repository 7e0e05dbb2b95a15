//! What does a track seem to be if its name does not say so? By its shape, and by what lies inside what.

use super::clean::cleaned;
use super::gpx::{Recorded, WalkKind};
use super::place::{LocalScale, distance_m};
use super::ring;
use tussock_types::{GeoPoint, Place, PlanRole};

/// Ground outside this range is not taken for a lawn without asking.
const PLAINLY_LAWN_M2: std::ops::RangeInclusive<f64> = 10.0..=50_000.0;
/// Smaller ground is neither a lawn nor a flower bed, but somebody who stood still.
const LEAST_RING_M2: f64 = 1.0;
/// A ring inside another one and nearly as large is a second line round the same ground.
const SAME_GROUND_FRACTION: f64 = 0.8;
/// Shorter lines lead nowhere.
const LEAST_LINE_M: f64 = 3.0;
/// How far the places of a track are moved towards their middle before they are compared with a ring.
const INWARDS_FRACTION: f64 = 0.05;
/// Number of a ring's edges that places are compared with.
const MOST_EDGES: usize = 1_000;

/// A track or waypoint whose name does not say what it is.
#[derive(Clone, Debug, PartialEq)]
pub struct WalkGuess {
    /// Line of the file, from 1.
    pub line: u64,
    /// What it is called: its name, with a number if that is missing or taken.
    pub title: String,
    /// What it looks like, with its size.
    pub looks: String,
    /// What it therefore seems to be; `None` if nothing shows it.
    pub role: Option<PlanRole>,
    pub(super) area_m2: Option<f64>,
    pub(super) length_m: f64,
}

/// Shape of a track.
enum Form {
    Ring { area_m2: f64, length_m: f64 },
    Line { length_m: f64, gap_m: f64 },
    Point,
}

/// A recorded thing, on the plane of the file.
struct DrawnShape {
    form: Form,
    places: Vec<Place>,
}

impl DrawnShape {
    fn of(item: &Recorded, scale: LocalScale) -> Self {
        let walk = cleaned(&item.points, &item.times_s);
        let (form, points): (Form, Vec<GeoPoint>) = match (item.kind, ring::ring_of(&walk)) {
            (WalkKind::Waypoint, _) => (Form::Point, item.points.clone()),
            (WalkKind::Track, Ok(ring)) if ring.area_m2 >= LEAST_RING_M2 => {
                let form = Form::Ring {
                    area_m2: ring.area_m2,
                    length_m: ring.length_m,
                };
                (form, ring.points)
            }
            (WalkKind::Track, _) => {
                let line = ring::simplified_line(&walk);
                let length_m = line.windows(2).map(|two| distance_m(two[0], two[1])).sum();
                let ends = line.first().zip(line.last());
                let gap_m = ends.map_or(0.0, |(first, last)| distance_m(*first, *last));
                (Form::Line { length_m, gap_m }, line)
            }
        };
        let every = points.len() / MOST_EDGES + 1;
        Self {
            form,
            places: points
                .iter()
                .step_by(every)
                .map(|point| scale.place(*point))
                .collect(),
        }
    }

    fn area_m2(&self) -> Option<f64> {
        match self.form {
            Form::Ring { area_m2, .. } => Some(area_m2),
            _ => None,
        }
    }

    fn length_m(&self) -> f64 {
        match self.form {
            Form::Ring { length_m, .. } | Form::Line { length_m, .. } => length_m,
            Form::Point => 0.0,
        }
    }

    /// Whether most of it lies within a ring.
    fn is_within(&self, ring: &Self) -> bool {
        let sum = |coordinate: fn(&Place) -> f64| self.places.iter().map(coordinate).sum::<f64>();
        let share = 1.0 / self.places.len().max(1) as f64;
        let middle = Place::new(sum(|at| at.east_m) * share, sum(|at| at.north_m) * share);
        // Anything walked along the very edge counts as inside.
        let drawn_in = |at: f64, to: f64| at + INWARDS_FRACTION * (to - at);
        let inside = self.places.iter().filter(|at| {
            let place = Place::new(
                drawn_in(at.east_m, middle.east_m),
                drawn_in(at.north_m, middle.north_m),
            );
            is_inside(place, &ring.places)
        });
        2 * inside.count() > self.places.len()
    }

    fn looks(&self) -> String {
        match self.form {
            Form::Ring { area_m2, length_m } => format!("closed, {area_m2:.1} m2, {length_m:.1} m round"),
            Form::Line { length_m, gap_m } => format!("open by {gap_m:.1} m, {length_m:.1} m long"),
            Form::Point => "a waypoint".to_owned(),
        }
    }
}

/// An even number of edges to the east means outside.
fn is_inside(place: Place, ring: &[Place]) -> bool {
    let ends = ring.iter().zip(ring.iter().skip(1).chain(ring.first()));
    let crossed = ends.filter(|(a, b)| {
        (a.north_m > place.north_m) != (b.north_m > place.north_m)
            && place.east_m
                < a.east_m + (place.north_m - a.north_m) / (b.north_m - a.north_m) * (b.east_m - a.east_m)
    });
    crossed.count() % 2 == 1
}

/// Guesses for those whose role is unknown; the largest ring is the lawn if no lawn is known.
pub(super) fn guesses(
    recorded: &[Recorded],
    titles: &[String],
    roles: &[Option<PlanRole>],
) -> Vec<Option<WalkGuess>> {
    if roles.iter().all(Option::is_some) {
        return vec![None; roles.len()];
    }
    let first = recorded.iter().find_map(|item| item.points.first());
    let scale = LocalScale::at(first.copied().unwrap_or_default());
    let drawn: Vec<DrawnShape> = recorded.iter().map(|item| DrawnShape::of(item, scale)).collect();
    let largest = |wanted: Option<PlanRole>| {
        let rings = (0..drawn.len()).filter(|&at| roles[at] == wanted);
        let sized = rings.filter_map(|at| Some((at, drawn[at].area_m2()?)));
        sized.max_by(|a, b| a.1.total_cmp(&b.1)).map(|(at, _)| at)
    };
    let known_lawn = largest(Some(PlanRole::Lawn));
    let lawn = known_lawn.or_else(|| largest(None));
    let has_station = roles.contains(&Some(PlanRole::Station));
    let is_waypoint = |at: &usize| recorded[*at].kind == WalkKind::Waypoint && roles[*at].is_none();
    let waypoints = (0..drawn.len()).filter(is_waypoint).count();
    let role = |at: usize| {
        let (this, lawn) = (&drawn[at], lawn.map(|lawn| (lawn, &drawn[lawn])));
        match (&this.form, lawn) {
            (Form::Point, _) => (waypoints == 1 && !has_station).then_some(PlanRole::Station),
            (Form::Ring { .. }, Some((lawn, _))) if lawn == at => Some(PlanRole::Lawn),
            (Form::Ring { area_m2, .. }, Some((_, lawn))) if this.is_within(lawn) => {
                let is_same = *area_m2 > SAME_GROUND_FRACTION * lawn.area_m2().unwrap_or(0.0);
                Some(if is_same {
                    PlanRole::Boundary
                } else {
                    PlanRole::Exclusion
                })
            }
            (Form::Ring { .. }, _) => Some(PlanRole::Lawn),
            (Form::Line { length_m, .. }, Some((_, lawn))) => {
                (*length_m >= LEAST_LINE_M && this.is_within(lawn)).then_some(PlanRole::Guide)
            }
            (Form::Line { .. }, None) => None,
        }
    };
    let guess = |at: usize| {
        roles[at].is_none().then(|| WalkGuess {
            line: recorded[at].line,
            title: titles[at].clone(),
            looks: drawn[at].looks(),
            role: role(at),
            area_m2: drawn[at].area_m2(),
            length_m: drawn[at].length_m(),
        })
    };
    (0..drawn.len()).map(guess).collect()
}

impl WalkGuess {
    pub(super) fn is_ring(&self) -> bool {
        self.area_m2.is_some()
    }

    /// Closed, of the size of a lawn, and longer than all others: not a bend of somebody's way.
    pub(super) fn is_plainly_lawn<'a>(&self, mut all: impl Iterator<Item = &'a Self>) -> bool {
        let is_lawn = self
            .area_m2
            .is_some_and(|area_m2| PLAINLY_LAWN_M2.contains(&area_m2));
        is_lawn && all.all(|other| other.length_m <= self.length_m)
    }

    /// What it seems to be, in words.
    pub(super) fn seems(&self) -> &'static str {
        match self.role {
            Some(PlanRole::Lawn) => "a lawn",
            Some(PlanRole::Boundary) => "the boundary, a second line round the lawn",
            Some(PlanRole::Exclusion) => "an exclusion zone, inside the lawn",
            Some(PlanRole::Obstacle) => "an obstacle",
            Some(PlanRole::Guide) => "a guide run, inside the lawn",
            Some(PlanRole::Station) => "the station",
            None => "nothing that a plan has",
        }
    }
}
