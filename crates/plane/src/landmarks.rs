//! How does a person find this place with a tape?
//!
//! Landmarks are what can be seen in a garden and reached with the end of a tape: the station, obstacles, and sharp corners
//! of the lawn. Exclusion zones are not landmarks: nobody can see the corner of a zone that was drawn. Two tapes from two
//! landmarks cross at the place. The crossing is the more exact, the closer the angle between the tapes is to a right one:
//! an error of the tape grows by 1 / sin(angle).
//!
//! A corner is named by what is beside it, if anything is ("the corner of the lawn at the shed", "the corner of the lawn
//! nearest the station"), or else by its compass direction. Every landmark has words that fit no other landmark of the plan;
//! corners without such words are left out.

use crate::{Region, Site};
use std::collections::BTreeMap;
use tussock_types::math;
use tussock_types::{Place, Said, Tape, Whether};

/// A corner can be seen as one if the edge turns by more than this.
const SHARP_DEG: f64 = 30.0;
/// Corners closer to each other than this are one.
const MERGED_M: f64 = 1.0;
/// Edges are straightened by this much before corners are searched for.
const STRAIGHTENED_M: f64 = 0.2;
/// A corner is "at" a thing that is closer than this.
const BESIDE_M: f64 = 3.0;
/// People can see without a tape which of two is nearer if the difference is this large, in metres and as a factor.
const CLEARLY_M: f64 = 2.0;
const CLEARLY_RATIO: f64 = 1.3;
/// Tapes cross well from this angle up to its supplement.
const LEAST_CROSSING_DEG: f64 = 40.0;
/// Length of a usual long tape.
const TAPE_M: f64 = 25.0;
/// A closer landmark gives no direction.
const ON_THE_SPOT_M: f64 = 0.5;
/// A tape from a corner of the lawn counts as longer by this factor: a grown edge shows it less exactly than a wall.
const CORNER_RATIO: f64 = 1.25;

/// What a landmark is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum LandmarkKind {
    /// Something that stands there: the station, an obstacle.
    Body,
    /// A corner of the lawn's edge.
    LawnCorner,
}

/// Something that can be seen in a garden, and where it is.
#[derive(Clone, Debug, PartialEq)]
pub struct Landmark {
    /// A description that fits nothing else in this plan.
    pub words: String,
    /// The same as data.
    pub said: Said,
    /// Where it is.
    pub place: Place,
    /// What it is.
    pub kind: LandmarkKind,
}

/// What a thing is called: as spoken in English ("the shed"), and as named in the plan; empty for the station and an only lawn.
#[derive(Clone)]
struct LandmarkTitle {
    words: String,
    name: String,
}

/// A place with words for it.
struct LandmarkTold {
    words: String,
    said: Said,
    place: Place,
}

/// A thing by which corners are described.
struct Beside {
    /// As in "nearest the shed".
    title: LandmarkTitle,
    shape: BesideShape,
}

enum BesideShape {
    Station(Place),
    Obstacle(Region),
}

impl Beside {
    fn distance_m(&self, place: Place) -> f64 {
        match &self.shape {
            BesideShape::Station(station) => station.distance_m(place),
            BesideShape::Obstacle(body) => body.edge_distance_m(place),
        }
    }

    /// The place that is clearly nearest to it, and its distance.
    fn nearest(&self, places: &[Place]) -> Option<(Place, f64)> {
        let mut sorted: Vec<(Place, f64)> = places
            .iter()
            .map(|place| (*place, self.distance_m(*place)))
            .collect();
        sorted.sort_by(|a, b| a.1.total_cmp(&b.1));
        let first = *sorted.first()?;
        let is_clear = sorted
            .get(1)
            .is_none_or(|second| second.1 >= first.1 + CLEARLY_M && second.1 >= CLEARLY_RATIO * first.1);
        is_clear.then_some(first)
    }
}

impl Site {
    /// Features of the plan that can be seen in a garden, the station first.
    pub fn landmarks(&self) -> Vec<Landmark> {
        let names = Names::of(self);
        let words = "the station".to_owned();
        let station = self.station.map(|place| LandmarkTold {
            words: words.clone(),
            said: Said::LandmarkStation {},
            place,
        });
        let mut beside: Vec<Beside> = (self.station.into_iter())
            .map(|place| Beside {
                title: LandmarkTitle {
                    words: words.clone(),
                    name: String::new(),
                },
                shape: BesideShape::Station(place),
            })
            .collect();
        let bodies = self.obstacles.iter().flat_map(|obstacle| {
            let title = names.title("obstacle", &obstacle.name, obstacle.feature);
            told_of_body(&title, &obstacle.shape, &beside)
        });
        let mut found: Vec<Landmark> = (station.into_iter().chain(bodies))
            .map(|told| Landmark::of(LandmarkKind::Body, told))
            .collect();
        beside.extend(self.obstacles.iter().map(|obstacle| Beside {
            title: names.title("obstacle", &obstacle.name, obstacle.feature),
            shape: BesideShape::Obstacle(obstacle.shape.clone()),
        }));
        let corners = self.told_of_lawns(&names, &beside).into_iter();
        found.extend(corners.map(|told| Landmark::of(LandmarkKind::LawnCorner, told)));
        let mut kept: Vec<Landmark> = Vec::new();
        for landmark in found {
            let is_new = kept.iter().all(|other| {
                other.words != landmark.words && other.place.distance_m(landmark.place) >= MERGED_M
            });
            if is_new {
                kept.push(landmark);
            }
        }
        kept
    }

    /// Corners of the lawns as drawn: there is none where a zone or an obstacle cuts into one, or where two meet.
    fn told_of_lawns(&self, names: &Names, beside: &[Beside]) -> Vec<LandmarkTold> {
        let drawn = corners_of(&self.drawn_lawn);
        let is_drawn = |corner: &Place| drawn.iter().any(|at| at.distance_m(*corner) < STRAIGHTENED_M);
        let lawns = self.lawns.iter().flat_map(|lawn| {
            let title = match self.lawns.len() {
                1 => LandmarkTitle {
                    words: "the lawn".to_owned(),
                    name: String::new(),
                },
                _ => names.title("lawn", &lawn.name, lawn.feature),
            };
            let corners: Vec<Place> = corners_of(&lawn.shape).into_iter().filter(is_drawn).collect();
            told(&title, &lawn.shape, &corners, beside)
        });
        lawns.collect()
    }
}

impl Landmark {
    fn of(kind: LandmarkKind, told: LandmarkTold) -> Self {
        let LandmarkTold { words, said, place } = told;
        Self {
            words,
            said,
            place,
            kind,
        }
    }
}

/// Things that a person has to walk around are known by their corners, smaller ones by their middle.
fn told_of_body(title: &LandmarkTitle, shape: &Region, beside: &[Beside]) -> Vec<LandmarkTold> {
    let corners = if is_round(shape) {
        Vec::new()
    } else {
        corners_of(shape)
    };
    if corners.is_empty() {
        let middle = shape.centroid().map(|place| LandmarkTold {
            words: format!("the middle of {}", title.words),
            said: Said::LandmarkMiddle {
                body: title.name.clone(),
            },
            place,
        });
        return middle.into_iter().collect();
    }
    told(title, shape, &corners, beside)
}

/// Corners of a feature with words that fit no other of them: by what is beside them, by compass direction, or by both.
fn told(title: &LandmarkTitle, shape: &Region, corners: &[Place], beside: &[Beside]) -> Vec<LandmarkTold> {
    let mut found: Vec<LandmarkTold> = Vec::new();
    let (of, body) = (&title.words, || title.name.clone());
    for thing in beside {
        let is_at = |(_, distance_m): &(Place, f64)| *distance_m < BESIDE_M;
        let at = thing.nearest(corners).filter(is_at);
        found.extend(at.map(|(place, _)| LandmarkTold {
            words: format!("the corner of {of} at {}", thing.title.words),
            said: Said::LandmarkCornerAt {
                body: body(),
                beside: thing.title.name.clone(),
            },
            place,
        }));
    }
    // The station is known to everybody, wherever it is.
    let mut stations = beside
        .iter()
        .filter(|thing| matches!(thing.shape, BesideShape::Station(_)));
    let nearest = stations.next().and_then(|station| station.nearest(corners));
    found.extend(nearest.map(|(place, _)| LandmarkTold {
        words: format!("the corner of {of} nearest the station"),
        said: Said::LandmarkCornerNearest { body: body() },
        place,
    }));
    let Some((low, high)) = shape.bounds() else {
        return found;
    };
    let middle = low.middle(high);
    let half = Place::new(
        (high.east_m - low.east_m) / 2.0,
        (high.north_m - low.north_m) / 2.0,
    );
    let mut by_wind: BTreeMap<usize, Vec<Place>> = BTreeMap::new();
    for corner in corners {
        let wind = wind_of(*corner, middle, half);
        by_wind.entry(wind).or_default().push(*corner);
    }
    for (wind, group) in by_wind {
        let towards = |outermost: bool, place: Place| LandmarkTold {
            words: match outermost {
                true => format!("the outermost {} corner of {of}", WINDS[wind]),
                false => format!("the {} corner of {of}", WINDS[wind]),
            },
            said: Said::LandmarkCorner {
                body: body(),
                wind_deg: (90.0 - 45.0 * wind as f64).rem_euclid(360.0),
                outermost: Whether::from(outermost),
            },
            place,
        };
        match group[..] {
            [place] => found.push(towards(false, place)),
            _ => {
                let one = towards(false, group[0]);
                found.extend(beside.iter().flat_map(|thing| apart(&one, &group, thing)));
                found.extend(outermost(&group, wind).map(|place| towards(true, place)));
            }
        }
    }
    found
}

/// The corner that is clearly farthest in a compass direction.
fn outermost(group: &[Place], wind: usize) -> Option<Place> {
    let (sin, cos) = math::sin_cos(wind as f64 * std::f64::consts::FRAC_PI_4);
    let mut sorted: Vec<(f64, Place)> = group
        .iter()
        .map(|place| (cos * place.east_m + sin * place.north_m, *place))
        .collect();
    sorted.sort_by(|a, b| b.0.total_cmp(&a.0));
    match sorted[..] {
        [first, second, ..] => (first.0 >= second.0 + CLEARLY_M).then_some(first.1),
        _ => None,
    }
}

/// If several corners lie in one compass direction: the one that is clearly nearest to something and, of two, the other.
fn apart(one: &LandmarkTold, group: &[Place], thing: &Beside) -> Vec<LandmarkTold> {
    let Some((place, _)) = thing.nearest(group) else {
        return Vec::new();
    };
    let told = |which: &str, farther: bool, place: Place| LandmarkTold {
        words: format!("{}, the one {which} {}", one.words, thing.title.words),
        said: match one.said.clone() {
            Said::LandmarkCorner { body, wind_deg, .. } => Said::LandmarkCornerApart {
                body,
                wind_deg,
                farther: Whether::from(farther),
                beside: thing.title.name.clone(),
            },
            other => other,
        },
        place,
    };
    let which = if group.len() == 2 { "nearer" } else { "nearest" };
    let mut found = vec![told(which, false, place)];
    let others = group
        .iter()
        .filter(|corner| group.len() == 2 && **corner != place);
    found.extend(others.map(|corner| told("farther from", true, *corner)));
    found
}

const WINDS: [&str; 8] = [
    "eastern",
    "north-east",
    "northern",
    "north-west",
    "western",
    "south-west",
    "southern",
    "south-east",
];

/// Eighth of the compass in which a corner lies, seen from the middle of its box stretched to a square, so that the corners
/// of a long lawn lie in the four diagonal directions.
fn wind_of(corner: Place, middle: Place, half: Place) -> usize {
    let stretched = |offset_m: f64, half_m: f64| if half_m > 0.0 { offset_m / half_m } else { 0.0 };
    let east = stretched(corner.east_m - middle.east_m, half.east_m);
    let north = stretched(corner.north_m - middle.north_m, half.north_m);
    let eighth_rad = std::f64::consts::FRAC_PI_4;
    (math::atan2(north, east) / eighth_rad).round().rem_euclid(8.0) as usize
}

/// Nearly a disc: it fills its circle.
fn is_round(shape: &Region) -> bool {
    let perimeter_m = shape.perimeter_m();
    // The isoperimetric quotient is 1 for a disc and 0.785 for a square (Polya & Szego 1951).
    4.0 * std::f64::consts::PI * shape.area_m2() > 0.9 * perimeter_m * perimeter_m
}

/// Sharp corners of a region's edge, merging those closer than a metre to each other.
fn corners_of(shape: &Region) -> Vec<Place> {
    let mut corners: Vec<Place> = Vec::new();
    for ring in shape.outline_simplified(STRAIGHTENED_M).iter().flatten() {
        let open = &ring[..ring.len().saturating_sub(1)];
        for (position, &corner) in open.iter().enumerate() {
            let before = open[(position + open.len() - 1) % open.len()];
            let after = open[(position + 1) % open.len()];
            let turn_deg = angle_deg(before, corner, corner, after);
            if turn_deg > SHARP_DEG && corners.iter().all(|other| other.distance_m(corner) >= MERGED_M) {
                corners.push(corner);
            }
        }
    }
    corners
}

/// Angle from 0 to 180 between the directions of two pieces.
fn angle_deg(from_a: Place, to_a: Place, from_b: Place, to_b: Place) -> f64 {
    let a = (to_a.east_m - from_a.east_m, to_a.north_m - from_a.north_m);
    let b = (to_b.east_m - from_b.east_m, to_b.north_m - from_b.north_m);
    let cross = a.0 * b.1 - a.1 * b.0;
    let dot = a.0 * b.0 + a.1 * b.1;
    math::atan2(cross.abs(), dot).to_degrees()
}

/// Names of features as they are spoken, made unambiguous.
struct Names {
    count: BTreeMap<String, usize>,
}

impl Names {
    fn of(site: &Site) -> Self {
        let mut count = BTreeMap::new();
        let mut add = |role: &str, name: &str| {
            *count.entry(plain_title(role, name)).or_insert(0) += 1;
        };
        site.lawns.iter().for_each(|lawn| add("lawn", &lawn.name));
        let obstacles = site.obstacles.iter();
        obstacles.for_each(|obstacle| add("obstacle", &obstacle.name));
        Self { count }
    }

    fn title(&self, role: &str, name: &str, feature: usize) -> LandmarkTitle {
        let plain = plain_title(role, name);
        match self.count.get(&plain) {
            Some(1) => LandmarkTitle {
                words: plain,
                name: name.to_owned(),
            },
            _ => LandmarkTitle {
                words: format!("{plain} (feature {feature})"),
                name: format!("{name} ({feature})"),
            },
        }
    }
}

/// The name, with the word for what it is unless the name contains it, and with an article if it is a plain word.
fn plain_title(role: &str, name: &str) -> String {
    let says_so = name.to_lowercase().contains(role) || role == "obstacle";
    let name = if says_so {
        name.to_owned()
    } else {
        format!("{role} {name}")
    };
    let is_plain = says_so
        && name.starts_with(|letter: char| letter.is_ascii_lowercase())
        && !name.starts_with("the ")
        && !name.contains(|letter: char| letter.is_ascii_digit());
    if is_plain { format!("the {name}") } else { name }
}

/// Two tapes that cross at a place, the shorter first; one if there is only one landmark, none without.
///
/// Crossings between 40 and 140 degrees are preferred, then tapes of up to 25 m, then short ones, and the station and
/// obstacles over corners of the lawn.
pub fn tape(landmarks: &[Landmark], target: Place) -> Vec<Tape> {
    let mut near: Vec<(&Landmark, f64)> = landmarks
        .iter()
        .map(|landmark| (landmark, landmark.place.distance_m(target)))
        .filter(|(_, distance_m)| distance_m.is_finite())
        .collect();
    near.sort_by(|a, b| a.1.total_cmp(&b.1).then_with(|| a.0.words.cmp(&b.0.words)));
    // The pair is never better beyond these, and a plan can have thousands of corners.
    near.truncate(60);
    let cost = |a: (&Landmark, f64), b: (&Landmark, f64)| {
        let crossing_deg = angle_deg(target, a.0.place, target, b.0.place);
        let is_slanting =
            !(LEAST_CROSSING_DEG..=180.0 - LEAST_CROSSING_DEG).contains(&crossing_deg) || a.1 < ON_THE_SPOT_M;
        let too_long_m = (a.1 - TAPE_M).max(0.0) + (b.1 - TAPE_M).max(0.0);
        // A slanting pair is used only if there is no other; among others the error of the place counts.
        let spread = 1.0 / math::sin(crossing_deg.to_radians()).max(0.05);
        let fixed = if is_slanting { 1e6 } else { 0.0 };
        let counted_m = |(landmark, distance_m): (&Landmark, f64)| match landmark.kind {
            LandmarkKind::Body => distance_m,
            LandmarkKind::LawnCorner => CORNER_RATIO * distance_m,
        };
        fixed + 100.0 * too_long_m + (counted_m(a) + counted_m(b)) * spread
    };
    let pairs = (0..near.len()).flat_map(|first| (first + 1..near.len()).map(move |second| (first, second)));
    let best = pairs
        .map(|(first, second)| (cost(near[first], near[second]), first, second))
        .min_by(|a, b| a.0.total_cmp(&b.0));
    let chosen = match best {
        Some((_, first, second)) => vec![near[first], near[second]],
        None => near,
    };
    chosen
        .into_iter()
        .map(|(landmark, distance_m)| Tape {
            from: landmark.words.clone(),
            landmark: Some(landmark.said.clone()),
            distance_m: (distance_m * 10.0).round() / 10.0,
            sd_m: None,
            from_east_m: landmark.place.east_m,
            from_north_m: landmark.place.north_m,
        })
        .collect()
}

#[cfg(test)]
#[path = "landmarks_tests.rs"]
mod tests;
