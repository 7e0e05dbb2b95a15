//! Which zones and lines could be changed?
//!
//! Geometry only: what a change brings is for the simulated nights to show.

use tussock_locate::turns::Turn;
use tussock_plane::{Joins, Region, Site};
use tussock_survey::fitted::Fitted;
use tussock_types::Place;
use tussock_types::math;

/// A passage widened to allow this many entries over the logged hours nearly always mends; the chance of no entry is about
/// exp(-6).
const ENTRIES: f64 = 6.0;
/// With fewer entries, opening is no use.
const LEAST_ENTRIES: f64 = 3.0;
/// Smaller passages tried beside the one that the formula gives, as fractions of its free width.
const SMALLER: [f64; 3] = [0.25, 0.5, 0.75];
/// A side is moved back no farther than this.
const MOST_CUT_M: f64 = 2.5;
/// Wider gaps do not hinder the machine.
const WIDE_M: f64 = 1.5;
/// If less of a zone is left, it is not a zone.
const LEAST_ZONE_M2: f64 = 0.3;

/// A zone with another outline.
#[derive(Clone, Debug)]
pub struct ZoneChange {
    /// Its number among the exclusion zones.
    pub zone: usize,
    /// Its new shape.
    pub shape: Region,
    /// How far a side, or the whole zone, is moved.
    pub by_m: f64,
    /// Width of the passage beside it afterwards, from lawn to lawn.
    pub passage_m: f64,
    /// Course towards which the moved side faces; none if the whole zone moves.
    pub faces_deg: Option<f64>,
    /// The same side moved back less far, the smallest move first.
    pub smaller: Vec<ZoneChange>,
}

/// Share of crossings that pass a passage and do not just reach its mouth.
fn passes(gap_m: f64, length_m: f64) -> f64 {
    1.0 / (1.0 + length_m / (1.5 * gap_m))
}

/// Smallest gap, free for the machine's middle, through which it comes this often within its path.
fn gap_for(entries: f64, path_m: f64, ground_m2: f64, length_m: f64) -> Option<f64> {
    let of = |gap_m: f64| path_m * gap_m * passes(gap_m, length_m) / (std::f64::consts::PI * ground_m2);
    let most_m = 3.0;
    if of(most_m) < entries {
        return None;
    }
    let (mut low_m, mut high_m) = (0.01, most_m);
    for _ in 0..40 {
        let middle_m = 0.5 * (low_m + high_m);
        if of(middle_m) < entries {
            low_m = middle_m
        } else {
            high_m = middle_m
        }
    }
    Some(high_m.max(0.25))
}

/// Distance along a ray to the nearest of several edges.
fn ray_m(from: Place, heading: (f64, f64), edges: &[(Place, Place)]) -> Option<f64> {
    edges
        .iter()
        .filter_map(|(a, b)| {
            let (ex, ey) = (b.east_m - a.east_m, b.north_m - a.north_m);
            let across = heading.0 * ey - heading.1 * ex;
            if across.abs() < 1e-12 {
                return None;
            }
            let (gx, gy) = (a.east_m - from.east_m, a.north_m - from.north_m);
            let distance_m = (gx * ey - gy * ex) / across;
            let part = (gx * heading.1 - gy * heading.0) / across;
            (distance_m > 1e-6 && (-1e-9..=1.0 + 1e-9).contains(&part)).then_some(distance_m)
        })
        .min_by(f64::total_cmp)
}

/// A side of a zone that faces something close.
struct Face {
    gap_m: f64,
    length_m: f64,
    wall: Place,
    outwards: (f64, f64),
}

fn faces(zone: &Region, others: &Region, within_m: f64) -> Vec<Face> {
    let walls: Vec<(Place, Place)> = others.edges().collect();
    let mut faces: Vec<Face> = Vec::new();
    for (from, to) in zone.edges() {
        let side_m = from.distance_m(to);
        if side_m < 1e-6 {
            continue;
        }
        let along = (
            (to.east_m - from.east_m) / side_m,
            (to.north_m - from.north_m) / side_m,
        );
        // Ground of the zone on the left.
        let outwards = (along.1, -along.0);
        let steps = (side_m / 0.25).ceil().max(1.0) as usize;
        let mut gaps: Vec<(f64, Place)> = Vec::new();
        for step in 0..steps {
            let at_m = (step as f64 + 0.5) / steps as f64 * side_m;
            let place = Place::new(from.east_m + at_m * along.0, from.north_m + at_m * along.1);
            if !others.contains(place) {
                continue;
            }
            if let Some(gap_m) = ray_m(place, outwards, &walls) {
                gaps.push((
                    gap_m,
                    Place::new(
                        place.east_m + gap_m * outwards.0,
                        place.north_m + gap_m * outwards.1,
                    ),
                ));
            }
        }
        let Some(&(gap_m, wall)) = gaps.iter().min_by(|a, b| a.0.total_cmp(&b.0)) else {
            continue;
        };
        if gap_m > within_m {
            continue;
        }
        let narrow = gaps.iter().filter(|gap| gap.0 < gap_m + 0.4).count() as f64;
        let face = Face {
            gap_m,
            length_m: narrow * side_m / steps as f64,
            wall,
            outwards,
        };
        // Neighbouring sides of a round zone count as one face, the closest of them.
        let alike = faces.iter_mut().find(|other| {
            other.outwards.0 * face.outwards.0 + other.outwards.1 * face.outwards.1 > 0.5
                && other.wall.distance_m(face.wall) < 3.0
        });
        match alike {
            Some(other) => {
                let length_m = other.length_m + face.length_m;
                if face.gap_m < other.gap_m {
                    *other = face;
                }
                other.length_m = length_m;
            }
            None => faces.push(face),
        }
    }
    faces
}

/// Ground on one side of a line across a direction, starting this far along it.
fn strip(at: Place, along: (f64, f64), depth_m: f64) -> Option<Region> {
    const WIDE: f64 = 60.0;
    let corner = |ahead_m: f64, aside_m: f64| {
        Place::new(
            at.east_m + ahead_m * along.0 - aside_m * along.1,
            at.north_m + ahead_m * along.1 + aside_m * along.0,
        )
    };
    let ring = vec![
        corner(-0.01, -WIDE),
        corner(depth_m, -WIDE),
        corner(depth_m, WIDE),
        corner(-0.01, WIDE),
        corner(-0.01, -WIDE),
    ];
    Region::from_rings(vec![vec![ring]]).ok()
}

/// The outer ring of the largest part, to the centimetre.
pub(super) fn outline_of(region: &Region) -> Vec<Place> {
    let round = |place: &Place| {
        Place::new(
            (100.0 * place.east_m).round() / 100.0,
            (100.0 * place.north_m).round() / 100.0,
        )
    };
    region
        .parts()
        .iter()
        .max_by(|a, b| a.area_m2().total_cmp(&b.area_m2()))
        .and_then(|part| part.rings().into_iter().flatten().next())
        .map(|ring| ring.iter().map(round).collect())
        .unwrap_or_default()
}

/// A site in which one zone has another outline.
pub(super) fn with_zone(site: &Site, zone: usize, shape: &Region) -> Site {
    let mut changed = site.clone();
    changed.exclusions[zone].shape = shape.clone();
    changed
}

/// A zone with a side moved back until the passage beside it has this width, to the next 5 cm.
fn moved_back(number: usize, zone: &Region, face: &Face, passage_m: f64) -> Option<ZoneChange> {
    let passage_m = (20.0 * passage_m).ceil() / 20.0;
    let by_m = passage_m - face.gap_m;
    if !(0.05..=MOST_CUT_M).contains(&by_m) {
        return None;
    }
    let inwards = (-face.outwards.0, -face.outwards.1);
    let left = zone.minus(&strip(face.wall, inwards, passage_m)?).ok()?;
    let ring = outline_of(&left);
    let shape = Region::from_rings(vec![vec![ring]]).ok()?;
    (shape.area_m2() >= LEAST_ZONE_M2).then_some(ZoneChange {
        zone: number,
        shape,
        by_m,
        passage_m,
        faces_deg: Some(
            math::atan2(face.outwards.0, face.outwards.1)
                .to_degrees()
                .rem_euclid(360.0),
        ),
        smaller: Vec::new(),
    })
}

/// Ground on which the machine could drive if a zone were not there.
fn drivable_without(site: &Site, zone: usize) -> Option<Region> {
    let mut without = site.clone();
    without.exclusions.remove(zone);
    without.drivable()
}

/// Zones with a side moved back so that a passage beside them lets enough entries through.
pub fn shrunk(site: &Site, setback_m: f64, path_m: f64, ground_m2: f64) -> Vec<ZoneChange> {
    let mut changes = Vec::new();
    for (number, zone) in site.exclusions.iter().enumerate() {
        let Some(others) = drivable_without(site, number) else {
            continue;
        };
        for face in faces(&zone.shape, &others, 2.0 * setback_m.max(0.0) + WIDE_M) {
            let length_m = face.length_m + 2.0 * setback_m.max(0.0);
            let change = [ENTRIES, LEAST_ENTRIES].into_iter().find_map(|entries| {
                let gap_m = gap_for(entries, path_m, ground_m2, length_m)?;
                let of = |part: f64| moved_back(number, &zone.shape, &face, part * gap_m + 2.0 * setback_m);
                Some(ZoneChange {
                    smaller: SMALLER.into_iter().filter_map(of).collect(),
                    ..of(1.0)?
                })
            });
            changes.extend(change);
        }
    }
    changes
}

/// Turns this close to the edge of other ground may have been made there.
const OTHER_EDGE_M: f64 = 0.6;
/// Turns farther than this from a drawn zone do not belong to it.
const NEAR_ZONE_M: f64 = 2.0;
/// A zone is searched for within this distance.
const MOST_SHIFT_M: f64 = 1.4;
/// Fewer turns cannot locate a zone.
const LEAST_ZONE_TURNS: usize = 10;
/// A shift is reported from here on, in precise logs and in others.
const LEAST_SHIFT_M: (f64, f64) = (0.15, 0.4);
/// A turn that is farther off its edge than this adds no information.
const CAPPED_M: f64 = 0.5;

/// A site with its zones where turns show them, and shares and station as fitted, and which zones those are. `to` maps
/// places of the log to the plane of the site.
pub fn as_driven(
    site: &Site,
    fitted: &Fitted,
    turns: &[Turn],
    to: &dyn Fn(Place) -> Place,
) -> (Site, Vec<ZoneChange>) {
    let told = turns
        .iter()
        .filter(|turn| turn.tells_headings(fitted.position_sd_m));
    let places: Vec<Place> = told.map(|turn| to(turn.place)).collect();
    let moved = displaced(
        site,
        &places,
        -fitted.machine.past_boundary_m,
        fitted.position_sd_m,
    );
    let driven = moved.iter().fold(fitted.site(site), |driven, change| {
        with_zone(&driven, change.zone, &change.shape)
    });
    (driven, moved)
}

/// Zones that are displaced from where they are drawn, with their shape where turns show it.
pub(super) fn displaced(site: &Site, turns: &[Place], setback_m: f64, sd_m: f64) -> Vec<ZoneChange> {
    let mut changes = Vec::new();
    for (number, zone) in site.exclusions.iter().enumerate() {
        let Some(others) = drivable_without(site, number) else {
            continue;
        };
        let Ok(line) = zone.shape.grown_by(setback_m, Joins::Mitred) else {
            continue;
        };
        let edges: Vec<(Place, Place)> = line.edges().collect();
        let own: Vec<Place> = turns
            .iter()
            .copied()
            .filter(|turn| {
                let reach_m = OTHER_EDGE_M + 3.0 * sd_m + setback_m.max(0.0);
                others.contains(*turn)
                    && others.edge_distance_m(*turn) > reach_m
                    && (zone.shape.contains(*turn)
                        || zone.shape.edge_distance_m(*turn) <= NEAR_ZONE_M + setback_m.max(0.0))
            })
            .collect();
        if own.len() < LEAST_ZONE_TURNS {
            continue;
        }
        let cost = |shift: (f64, f64)| {
            let sum: f64 = own
                .iter()
                .map(|turn| {
                    let moved = Place::new(turn.east_m - shift.0, turn.north_m - shift.1);
                    let off_m = edges
                        .iter()
                        .map(|(from, to)| moved.off_piece_m(*from, *to))
                        .fold(CAPPED_M, f64::min);
                    // Soft: quadratic close by, linear farther off.
                    let scale_m = 0.03 + sd_m;
                    ((off_m / scale_m).powi(2) + 1.0).sqrt() - 1.0
                })
                .sum();
            sum / own.len() as f64
        };
        let steps = (MOST_SHIFT_M / 0.2).round() as i32;
        let mut best = (cost((0.0, 0.0)), (0.0, 0.0));
        let at_drawn = best.0;
        for east in -steps..=steps {
            for north in -steps..=steps {
                let shift = (0.2 * f64::from(east), 0.2 * f64::from(north));
                let here = cost(shift);
                if here < best.0 {
                    best = (here, shift);
                }
            }
        }
        for step_m in [0.1, 0.05, 0.02, 0.01, 0.005] {
            loop {
                let tried = [(1.0, 0.0), (-1.0, 0.0), (0.0, 1.0), (0.0, -1.0)]
                    .map(|by| (best.1.0 + step_m * by.0, best.1.1 + step_m * by.1))
                    .map(|shift| (cost(shift), shift));
                match tried.into_iter().min_by(|a, b| a.0.total_cmp(&b.0)) {
                    Some(better) if better.0 < best.0 => best = better,
                    _ => break,
                }
            }
        }
        let by_m = math::hypot(best.1.0, best.1.1);
        let least_m = if sd_m <= 0.05 {
            LEAST_SHIFT_M.0
        } else {
            LEAST_SHIFT_M.1
        };
        if by_m < least_m || best.0 > 0.5 * at_drawn {
            continue;
        }
        let moved: Vec<Vec<Vec<Place>>> = zone
            .shape
            .rings()
            .into_iter()
            .map(|part| {
                part.into_iter()
                    .map(|ring| {
                        ring.into_iter()
                            .map(|place| Place::new(place.east_m + best.1.0, place.north_m + best.1.1))
                            .collect()
                    })
                    .collect()
            })
            .collect();
        if let Ok(shape) = Region::from_rings(moved) {
            changes.push(ZoneChange {
                zone: number,
                shape,
                by_m,
                passage_m: 0.0,
                faces_deg: None,
                smaller: Vec::new(),
            });
        }
    }
    changes
}
