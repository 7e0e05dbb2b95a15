//! An invented garden with invented findings: two lawns joined by a passage, a pond, a shed, two trees. A small
//! bouncing walk fills its squares, so that sums, maps and plots have something true to show.

#![allow(dead_code, unused_imports, clippy::unwrap_used)]

mod after;
mod crowded;
mod extras;
mod forecast;
mod variants;
mod walk;

pub(crate) use after::*;
pub(crate) use crowded::*;
pub(crate) use extras::*;
pub(crate) use forecast::*;
use std::collections::BTreeMap;
use tussock_types::*;
pub(crate) use variants::*;
use walk::{Count, squares, walk};

/// Seed of the walk.
pub(crate) const WALK_SEED: u64 = 20_260_601;
/// Latitude of the origin; it lies at sea.
pub(crate) const ORIGIN_LAT: f64 = 54.523_417_9;
/// Longitude of the origin.
pub(crate) const ORIGIN_LON: f64 = 3.217_650_3;

const CUT_WIDTH_M: f64 = 0.22;
const SPEED_MPS: f64 = 0.4;
const HOURS: f64 = 8.0;
const START_UNIX_S: f64 = 1_780_351_800.0;

fn ring(corners: &[(f64, f64)]) -> Vec<Place> {
    let mut ring: Vec<Place> = corners
        .iter()
        .map(|&(east_m, north_m)| Place::new(east_m, north_m))
        .collect();
    ring.push(ring[0]);
    ring
}

fn round(east_m: f64, north_m: f64, radius_m: f64, corners: usize) -> Vec<Place> {
    let corner = |index: usize| {
        let angle = index as f64 / corners as f64 * std::f64::consts::TAU;
        (east_m + radius_m * angle.cos(), north_m + radius_m * angle.sin())
    };
    ring(&(0..corners).map(corner).collect::<Vec<_>>())
}

fn lawn_outer() -> Vec<Place> {
    ring(&[
        (-20.0, -12.0),
        (9.0, -13.0),
        (10.0, -2.0),
        (14.0, -1.6),
        (14.2, -9.0),
        (26.0, -8.0),
        (25.0, 8.0),
        (14.0, 7.0),
        (14.0, 0.4),
        (10.0, 0.2),
        (10.5, 11.0),
        (-2.0, 13.0),
        (-8.0, 9.0),
        (-21.0, 10.0),
    ])
}

fn pond() -> Vec<Place> {
    round(-8.0, -3.0, 3.2, 12)
}

fn shed() -> Vec<Place> {
    ring(&[(4.0, 5.0), (8.0, 5.0), (8.0, 8.0), (4.0, 8.0)])
}

/// Ground that the walk avoids, so that it stays unvisited: two missed pockets, two not-yet ones.
fn kept_out() -> [Vec<Place>; 4] {
    [
        ring(&[(20.0, -8.4), (25.9, -7.9), (25.4, 2.0), (22.5, 1.0), (20.6, -3.0)]),
        ring(&[(5.0, 8.0), (8.0, 8.0), (10.3, 8.0), (10.5, 10.9), (5.4, 11.7)]),
        round(-15.0, 6.0, 0.6, 10),
        round(0.0, -9.0, 0.45, 10),
    ]
}

fn inside(ring: &[Place], place: Place) -> bool {
    let mut odd = false;
    for edge in ring.windows(2) {
        let (a, b) = (edge[0], edge[1]);
        if (a.north_m > place.north_m) != (b.north_m > place.north_m) {
            let east_m =
                a.east_m + (place.north_m - a.north_m) / (b.north_m - a.north_m) * (b.east_m - a.east_m);
            odd ^= place.east_m < east_m;
        }
    }
    odd
}

/// Area of a ring.
pub(crate) fn ring_area_m2(ring: &[Place]) -> f64 {
    let twice: f64 = ring
        .windows(2)
        .map(|edge| edge[0].east_m * edge[1].north_m - edge[1].east_m * edge[0].north_m)
        .sum();
    twice.abs() / 2.0
}

fn is_lawn(place: Place) -> bool {
    inside(&lawn_outer(), place)
        && !inside(&pond(), place)
        && !inside(&shed(), place)
        && place.distance_m(Place::new(-14.0, 1.0)) > 0.5
        && place.distance_m(Place::new(20.0, 4.0)) > 0.5
}

/// The frame of the garden.
pub(crate) fn frame() -> FrameFindings {
    FrameFindings {
        origin_lat: Some(ORIGIN_LAT),
        origin_lon: Some(ORIGIN_LON),
    }
}

fn geo(places: &[Place]) -> Vec<GeoPoint> {
    places
        .iter()
        .map(|&place| frame().to_geo(place).unwrap())
        .collect()
}

fn feature(index: usize, role: PlanRole, name: &str, shape: PlanShape) -> PlanFeature {
    PlanFeature {
        role,
        name: name.to_owned(),
        index,
        shape,
        radius_m: None,
        outing_share_fraction: None,
    }
}

fn polygon(ring: Vec<Place>) -> PlanShape {
    PlanShape::Polygons(vec![GeoPolygon {
        rings: vec![geo(&ring)],
    }])
}

fn plan() -> Plan {
    let mut tree = feature(
        3,
        PlanRole::Obstacle,
        "old pear tree",
        PlanShape::Point(geo(&[Place::new(-14.0, 1.0)])[0]),
    );
    tree.radius_m = Some(0.5);
    let mut plum = feature(
        4,
        PlanRole::Obstacle,
        "plum tree",
        PlanShape::Point(geo(&[Place::new(20.0, 4.0)])[0]),
    );
    plum.radius_m = Some(0.5);
    let run = [(-4.0, -12.4), (-4.0, -8.0), (4.0, -4.0), (12.0, -0.8)].map(|(e, n)| Place::new(e, n));
    let mut guide = feature(
        5,
        PlanRole::Guide,
        "guide to the passage",
        PlanShape::Line(geo(&run)),
    );
    guide.outing_share_fraction = Some(0.3);
    Plan {
        features: vec![
            feature(0, PlanRole::Lawn, "Orchard lawn", polygon(lawn_outer())),
            feature(1, PlanRole::Exclusion, "lily pond", polygon(pond())),
            feature(2, PlanRole::Obstacle, "tool shed", polygon(shed())),
            tree,
            plum,
            guide,
            feature(
                6,
                PlanRole::Station,
                "station",
                PlanShape::Point(geo(&[Place::new(-4.0, -12.4)])[0]),
            ),
        ],
    }
}

fn facts() -> LogFacts {
    LogFacts {
        name: "night-0601.nmea".to_owned(),
        sha256: "9f86d081884c7d659a2feaa0c55ad015a3bf4f1b2b0b822cd15d6c15b0f00a08".to_owned(),
        format: LogFormat::Nmea,
        made_by: Some("field logger 7".to_owned()),
        machine: "machine-1".to_owned(),
        bytes: 4_182_400,
        bytes_used: 4_096_113,
        fixes: 28_790,
        skipped: BTreeMap::from([(SkipReason::BadChecksum, 9), (SkipReason::NotAPosition, 57_600)]),
        skipped_bytes: BTreeMap::from([(SkipReason::BadChecksum, 738), (SkipReason::NotAPosition, 85_549)]),
        places: vec![Skipped {
            reason: SkipReason::BadChecksum,
            byte_start: 10_240,
            byte_end: 10_322,
            line: 139,
            count: 1,
            excerpt: "$GPGGA,221205.00,5431.40507,N,00313.0".to_owned(),
        }],
        notices: vec![Notice {
            said: Said::OverlapsAnotherLog {
                fixes: 12,
                date: "2026-06-01".to_owned(),
            },
            line: 2,
        }],
        resolution_m: Some(0.0186),
    }
}

fn tape(from: &str, landmark: Said, at: Place, to: Place) -> Tape {
    Tape {
        from: from.to_owned(),
        landmark: Some(landmark),
        distance_m: at.distance_m(to),
        sd_m: Some(0.05),
        from_east_m: at.east_m,
        from_north_m: at.north_m,
    }
}

/// Middle of the first missed pocket.
pub(crate) const M1: Place = Place::new(23.0, -4.6);
/// Middle of the second one.
pub(crate) const M2: Place = Place::new(7.6, 9.6);

fn missed(id: &str, index: usize, middle: Place, area_m2: f64, widest_m: f64, why: Said) -> MissedPocket {
    let geo = frame().to_geo(middle).unwrap();
    MissedPocket {
        id: id.to_owned(),
        area_m2,
        widest_m,
        lat: Some(geo.lat_deg),
        lon: Some(geo.lon_deg),
        east_m: middle.east_m,
        north_m: middle.north_m,
        outline: vec![kept_out()[index].clone()],
        certainty: None,
        chance_fraction: if index == 0 { 1e-9 } else { 2e-6 },
        visited_fraction: 0.0,
        causes: None,
        next_look: None,
        why,
        tape: vec![
            tape(
                "the tool shed's south-east corner",
                Said::LandmarkCorner {
                    body: "tool shed".to_owned(),
                    wind_deg: 135.0,
                    outermost: Whether::No,
                },
                Place::new(8.0, 5.0),
                middle,
            ),
            tape(
                "the station",
                Said::LandmarkStation {},
                Place::new(-4.0, -12.4),
                middle,
            ),
        ],
        suggestion_ids: Vec::new(),
    }
}

fn not_yet(id: &str, index: usize, middle: Place, area_m2: f64, widest_m: f64) -> NotYetPocket {
    let geo = frame().to_geo(middle).unwrap();
    NotYetPocket {
        id: id.to_owned(),
        area_m2,
        widest_m,
        lat: Some(geo.lat_deg),
        lon: Some(geo.lon_deg),
        east_m: middle.east_m,
        north_m: middle.north_m,
        outline: vec![kept_out()[index].clone()],
        chance_fraction: 0.21,
        hours_to_decide: Some(14.0 + index as f64),
        why: Said::NotYetUntil {
            driven_h: HOURS,
            lawn_m2: 700.0,
            widest_m,
            decided_h: 14.0,
        },
        tape: vec![tape(
            "the old pear tree",
            Said::LandmarkMiddle {
                body: "old pear tree".to_owned(),
            },
            Place::new(-14.0, 1.0),
            middle,
        )],
    }
}

fn span(count: &Count) -> Span {
    let path_m: f64 = count.lines.windows(2).map(|leg| leg[0].distance_m(leg[1])).sum();
    Span {
        start: Some("2026-06-01T22:10:00Z".to_owned()),
        end: Some("2026-06-02T08:05:00Z".to_owned()),
        start_unix_s: Some(START_UNIX_S),
        fixes_read: 28_790,
        fixes_used: 28_781,
        fixes_carried: 0,
        period_s: 1.0,
        fixes_left_out: BTreeMap::from([(LeftOut::PoorQuality, 2), (LeftOut::Jump, 7)]),
        path_m,
        driving_s: HOURS * 3600.0,
        transit_s: None,
        at_station_s: Some(5_200.0),
        halted_s: 1_320.0,
        carried_s: None,
        silent_s: 380.0,
        speed_mps: Some(SPEED_MPS),
        outings: Some(5),
    }
}

fn over_time(count: &Count, lawn_m2: f64) -> OverTime {
    let driving_h: Vec<f64> = count.filled.iter().map(|&(h, _)| h).collect();
    let swept = |h: f64| CUT_WIDTH_M * SPEED_MPS * h * 3600.0 / lawn_m2;
    OverTime {
        visited_fraction: count
            .filled
            .iter()
            .map(|&(_, cells)| cells as f64 * count.grid.cell_m2() / lawn_m2)
            .collect(),
        random_law_fraction: driving_h.iter().map(|&h| 1.0 - (-swept(h)).exp()).collect(),
        exhaustive_fraction: driving_h.iter().map(|&h| swept(h).min(1.0)).collect(),
        driving_h,
        efficiency: Some(-0.04),
        hours_to_95: None,
        hours_to_99: None,
        promise: Promise {
            verdict: PromiseVerdict::CannotTell,
            probability: None,
        },
    }
}

fn revisits(count: &Count) -> Revisits {
    let mut visits: Vec<u32> = count
        .lawn
        .iter()
        .zip(&count.visits)
        .filter(|(lawn, _)| **lawn)
        .map(|(_, &visits)| visits)
        .collect();
    visits.sort_unstable();
    let cells = visits.len() as f64;
    let mut histogram = vec![0.0; 11];
    for &visits in &visits {
        histogram[(visits as usize).min(10)] += 1.0 / cells;
    }
    let total: f64 = visits.iter().map(|&visits| f64::from(visits)).sum();
    let weighted: f64 = visits
        .iter()
        .enumerate()
        .map(|(rank, &v)| (rank + 1) as f64 * f64::from(v))
        .sum();
    Revisits {
        median_per_cell: f64::from(visits[visits.len() / 2]),
        mean_per_cell: total / cells,
        histogram,
        gini: 2.0 * weighted / (cells * total) - (cells + 1.0) / cells,
        interval_h: IntervalQuantiles {
            p50: Some(2.4),
            p90: None,
            p99: None,
        },
        overdue_fraction: None,
    }
}

/// What a first version of the tool finds: no intervals, no causes, no suggestions.
pub(crate) fn findings() -> Findings {
    let count = walk();
    let cell_m2 = count.grid.cell_m2();
    let lawn_m2 = count.lawn.iter().filter(|lawn| **lawn).count() as f64 * cell_m2;
    let visited_m2 = count.visits.iter().filter(|visits| **visits > 0).count() as f64 * cell_m2;
    let out = kept_out();
    let unvisited_in = |ring: &[Place]| {
        let cells = (0..count.grid.cells()).filter(|&i| {
            let centre = count.grid.centre(i % count.grid.columns, i / count.grid.columns);
            count.lawn[i] && count.visits[i] == 0 && inside(ring, centre)
        });
        cells.count() as f64 * cell_m2
    };
    let pockets_m2: Vec<f64> = out.iter().map(|ring| unvisited_in(ring)).collect();
    let missed_m2 = pockets_m2[0] + pockets_m2[1];
    let not_yet_m2 = pockets_m2[2] + pockets_m2[3];
    let hole = |centre: Place| round(centre.east_m, centre.north_m, 0.5, 16);
    let mut settings = Settings::default();
    settings.machine.cut_width_m = Some(CUT_WIDTH_M);
    settings.garden.name = Some("Fennmoor House".to_owned());
    settings.garden.time_zone = Some("+02:00".to_owned());
    let spot = Place::new(12.1, -0.6);
    let spot_geo = frame().to_geo(spot).unwrap();
    Findings {
        schema_version: SCHEMA_VERSION,
        tool_version: "0.1.0".to_owned(),
        settings,
        inputs: vec![InputFindings { facts: facts() }],
        frame: frame(),
        log_verdict: LogVerdict {
            level: LogLevel::Good,
            positions: LogLevel::Good,
            duration: LogLevel::Good,
            hours_more_needed: None,
            smallest_findable_pocket_m2: 0.6,
            smallest_findable_width_m: 0.8,
            advice: Said::PositionsRight { error_m: 0.023 },
            remarks: vec![Said::SilentLong {
                silent_fraction: 0.07,
            }],
        },
        checks: Vec::new(),
        span: span(&count),
        positions: PositionFindings {
            white_m: Some(0.012),
            filtered_m: None,
            filtered_time_s: None,
            drift_m: Some(0.02),
            drift_time_s: Some(310.0),
            tails: None,
            source: NoiseSource::StationScatter,
            steps: vec![ReceiverStep {
                time: Some("2026-06-02T01:15:00Z".to_owned()),
                east_m: 0.3,
                north_m: -0.4,
            }],
            anchored: None,
        },
        plan_fit: None,
        machines: vec![MachineFindings {
            id: "machine-1".to_owned(),
            model: None,
            speed_mps: Some(SPEED_MPS),
            turning_radius_m: None,
            setback_m: None,
            legs_m: None,
            turns: None,
            trusted: None,
            outings: Some(5),
        }],
        complaints: Vec::new(),
        visit: None,
        silences: vec![Silence {
            start: Some("2026-06-02T00:40:00Z".to_owned()),
            end: Some("2026-06-02T00:44:20Z".to_owned()),
            start_s: 9_000.0,
            duration_s: 260.0,
            moved_m: 0.4,
            place: None,
            bridged_m2: None,
        }],
        coverage: Some(Coverage {
            lawn_m2,
            reachable_m2: None,
            visited_m2,
            missed_m2,
            not_yet_m2,
            unseen_m2: 0.0,
            sliver_m2: lawn_m2 - visited_m2 - missed_m2 - not_yet_m2,
            visited_fraction: Estimate::bare(visited_m2 / lawn_m2),
            as_logged_fraction: visited_m2 / lawn_m2 + 0.006,
            as_logged_differs: None,
            cut_width_m: CUT_WIDTH_M,
            cell_m: count.grid.cell_m,
            cell_error_fraction: 0.0004,
            realisations: 1,
            lawns: vec![LawnCoverage {
                name: "Orchard lawn".to_owned(),
                lawn_m2,
                visited_fraction: Estimate::bare(visited_m2 / lawn_m2),
            }],
        }),
        by_width: None,
        revisits: Some(revisits(&count)),
        over_time: Some(over_time(&count, lawn_m2)),
        missed_pockets: vec![
            missed(
                "M1",
                0,
                M1,
                pockets_m2[0],
                4.3,
                Said::LuckUnderThousandth { width_m: 4.3 },
            ),
            missed("M2", 1, M2, pockets_m2[1], 3.0, Said::NotShown {}),
        ],
        not_yet: vec![
            not_yet("N1", 2, Place::new(-15.0, 6.0), pockets_m2[2], 1.1),
            not_yet("N2", 3, Place::new(0.0, -9.0), pockets_m2[3], 0.8),
        ],
        unseen: None,
        stuck_spots: vec![StuckSpot {
            id: "S1".to_owned(),
            lat: Some(spot_geo.lat_deg),
            lon: Some(spot_geo.lon_deg),
            east_m: spot.east_m,
            north_m: spot.north_m,
            radius_m: 0.6,
            episodes: 7,
            minutes: 19.5,
            passes_through: 31,
            certainty: Some(0.98),
            why: Said::StuckInPassage { width_m: 2.1 },
            approach_deg: Some(80.0),
        }],
        worn_lines: None,
        strays: None,
        possible_stops: None,
        installation: None,
        nights: None,
        fit: None,
        reference: None,
        suggestions: None,
        change_set: Vec::new(),
        cautions: vec![Said::BladesOnLawn {}],
        plan: Some(plan()),
        lawn_outline: vec![vec![
            lawn_outer(),
            pond(),
            shed(),
            hole(Place::new(-14.0, 1.0)),
            hole(Place::new(20.0, 4.0)),
        ]],
        outline_source: OutlineSource::Plan,
        drawn_outline: None,
        driven_lines: vec![count.lines.clone()],
        cells: Some(squares(&count)),
    }
}
