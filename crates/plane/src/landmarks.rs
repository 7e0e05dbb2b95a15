//! How does a person find this place with a tape?
//!
//! Landmarks are features of the plan that one can see in a garden: the station, obstacles, and sharp corners of
//! lawns and zones. Two tapes from two of them cross at the place. The crossing is the sharper the nearer the angle
//! between the tapes is to a right one: an error of the tape grows by 1 / sin(angle).
//!
//! Every landmark has words that fit no other landmark of the plan; corners for which no such words exist are left
//! out.

use crate::{Region, Site};
use std::collections::BTreeMap;
use tussock_types::math;
use tussock_types::{Place, Tape};

/// A corner is seen as one where the edge turns by more than this.
const SHARP_DEG: f64 = 30.0;
/// Corners nearer to each other than this are one.
const MERGED_M: f64 = 1.0;
/// Edges are straightened by so much before corners are looked for.
const STRAIGHTENED_M: f64 = 0.2;
/// Tapes cross well from this angle up to its supplement.
const LEAST_CROSSING_DEG: f64 = 40.0;
/// A usual long tape.
const TAPE_M: f64 = 25.0;
/// A landmark nearer than this gives no direction.
const ON_THE_SPOT_M: f64 = 0.5;

/// Something that can be seen in a garden, and where it is.
#[derive(Clone, Debug, PartialEq)]
pub struct Landmark {
    /// What it is, in words that fit nothing else in this plan.
    pub words: String,
    /// Where it is.
    pub place: Place,
}

impl Site {
    /// Features of the plan that one can see in a garden, the station first.
    pub fn landmarks(&self) -> Vec<Landmark> {
        let mut found = Vec::new();
        if let Some(station) = self.station {
            found.push(Landmark {
                words: "the station".to_owned(),
                place: station,
            });
        }
        let names = Names::of(self);
        for obstacle in &self.obstacles {
            let title = names.title("obstacle", &obstacle.name, obstacle.feature);
            // What one walks around is known by its corners, what one could embrace by its middle.
            let corners = if is_round(&obstacle.shape) {
                Vec::new()
            } else {
                corners_of(&obstacle.shape)
            };
            if corners.is_empty() {
                if let Some(place) = obstacle.shape.centroid() {
                    found.push(Landmark {
                        words: format!("the middle of {title}"),
                        place,
                    });
                }
            } else {
                self.add_corners(&title, &obstacle.shape, corners, &mut found);
            }
        }
        for lawn in &self.lawns {
            let title = names.title("lawn", &lawn.name, lawn.feature);
            // Where a zone or an obstacle bites into it, the corner is theirs.
            let corners = corners_of(&lawn.shape)
                .into_iter()
                .filter(|corner| self.drawn_lawn.edge_distance_m(*corner) < STRAIGHTENED_M)
                .collect();
            self.add_corners(&title, &lawn.shape, corners, &mut found);
        }
        for zone in &self.exclusions {
            let title = names.title("zone", &zone.name, zone.feature);
            self.add_corners(&title, &zone.shape, corners_of(&zone.shape), &mut found);
        }
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

    /// Names each corner after the wind in which it lies from the middle.
    fn add_corners(&self, title: &str, shape: &Region, corners: Vec<Place>, found: &mut Vec<Landmark>) {
        let Some((low, high)) = shape.bounds() else { return };
        let middle = Place::new(
            (low.east_m + high.east_m) / 2.0,
            (low.north_m + high.north_m) / 2.0,
        );
        let half = Place::new(
            (high.east_m - low.east_m) / 2.0,
            (high.north_m - low.north_m) / 2.0,
        );
        let mut by_wind: BTreeMap<usize, Vec<Place>> = BTreeMap::new();
        for corner in &corners {
            by_wind
                .entry(wind_of(*corner, middle, half))
                .or_default()
                .push(*corner);
        }
        let mut left_over = Vec::new();
        for (wind, mut group) in by_wind {
            let words = format!("the {} corner of {title}", WINDS[wind]);
            match group.len() {
                1 => found.push(Landmark {
                    words,
                    place: group[0],
                }),
                2 => {
                    let (a, b) = (group[0], group[1]);
                    let (de, dn) = (a.east_m - b.east_m, a.north_m - b.north_m);
                    let (first, which) = if de.abs() > dn.abs() {
                        (de > 0.0, ["more easterly", "more westerly"])
                    } else {
                        (dn > 0.0, ["more northerly", "more southerly"])
                    };
                    if !first {
                        group.swap(0, 1);
                    }
                    for (place, which) in group.into_iter().zip(which) {
                        found.push(Landmark {
                            words: format!("{words}, the {which} of two"),
                            place,
                        });
                    }
                }
                _ => left_over.extend(group),
            }
        }
        // Of corners that no wind tells apart, one is still known: the one nearest the station.
        let Some(station) = self.station else { return };
        let distance_m = |place: &Place| place.distance_m(station);
        let nearest = corners
            .iter()
            .min_by(|a, b| distance_m(a).total_cmp(&distance_m(b)));
        if let Some(&place) = nearest.filter(|place| left_over.contains(place)) {
            found.push(Landmark {
                words: format!("the corner of {title} nearest the station"),
                place,
            });
        }
    }
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

/// Eighth of the compass in which a corner lies, seen from the middle of its box stretched to a square, so that the
/// corners of a long lawn lie in the four diagonal winds.
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

/// Sharp corners of a region's edge, those nearer than a metre to each other merged.
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

/// Names of features as they are said, made unambiguous.
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
        site.exclusions.iter().for_each(|zone| add("zone", &zone.name));
        site.obstacles
            .iter()
            .for_each(|obstacle| add("obstacle", &obstacle.name));
        Self { count }
    }

    fn title(&self, role: &str, name: &str, feature: usize) -> String {
        let plain = plain_title(role, name);
        match self.count.get(&plain) {
            Some(1) => plain,
            _ => format!("{plain} (feature {feature})"),
        }
    }
}

/// The name with the word for what it is, where the name does not say so itself.
fn plain_title(role: &str, name: &str) -> String {
    let says_so = name.to_lowercase().contains(role) || role == "obstacle";
    if says_so {
        name.to_owned()
    } else {
        format!("{role} {name}")
    }
}

/// Two tapes that cross at a place, the shorter first; one where there is only one landmark, none without.
///
/// Preferred are crossings between 40 and 140 degrees, then tapes of up to 25 m, then short ones.
pub fn tape(landmarks: &[Landmark], target: Place) -> Vec<Tape> {
    let mut near: Vec<(&Landmark, f64)> = landmarks
        .iter()
        .map(|landmark| (landmark, landmark.place.distance_m(target)))
        .filter(|(_, distance_m)| distance_m.is_finite())
        .collect();
    near.sort_by(|a, b| a.1.total_cmp(&b.1).then_with(|| a.0.words.cmp(&b.0.words)));
    // Beyond these the pair is never better; a plan can have thousands of corners.
    near.truncate(60);
    let cost = |a: (&Landmark, f64), b: (&Landmark, f64)| {
        let crossing_deg = angle_deg(target, a.0.place, target, b.0.place);
        let is_slanting =
            !(LEAST_CROSSING_DEG..=180.0 - LEAST_CROSSING_DEG).contains(&crossing_deg) || a.1 < ON_THE_SPOT_M;
        let too_long_m = (a.1 - TAPE_M).max(0.0) + (b.1 - TAPE_M).max(0.0);
        // A slanting pair is taken only where there is no other; among others the error of the place counts.
        let spread = 1.0 / math::sin(crossing_deg.to_radians()).max(0.05);
        let fixed = if is_slanting { 1e6 } else { 0.0 };
        fixed + 100.0 * too_long_m + (a.1 + b.1) * spread
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
