//! An invented garden with invented findings: two lawns joined by a passage, a pond, a shed, two trees. A small
//! bouncing walk fills its squares, so that sums, maps and plots have something true to show.

#![allow(dead_code)]

use std::collections::BTreeMap;
use tussock_types::*;

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

/// Ground that the walk is kept out of, so that it stays unvisited: two missed pockets, two not-yet ones.
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

struct Walk {
    state: u64,
}

impl Walk {
    /// The next number from 0 to 1 (splitmix64).
    fn draw(&mut self) -> f64 {
        self.state = self.state.wrapping_add(0x9E37_79B9_7F4A_7C15);
        let mut z = self.state;
        z = (z ^ (z >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
        ((z ^ (z >> 31)) >> 11) as f64 / (1u64 << 53) as f64
    }
}

/// Fine cells behind the squares.
struct Count {
    grid: Grid,
    lawn: Vec<bool>,
    visits: Vec<u32>,
    first_s: Vec<f32>,
    last_s: Vec<f32>,
    lines: Vec<Place>,
    filled: Vec<(f64, u64)>,
}

fn walk() -> Count {
    let grid = Grid {
        east_min_m: -21.6,
        north_min_m: -13.6,
        cell_m: 0.1,
        columns: 480,
        rows: 272,
    };
    let out = kept_out();
    let places: Vec<Place> = (0..grid.cells())
        .map(|i| grid.centre(i % grid.columns, i / grid.columns))
        .collect();
    let lawn: Vec<bool> = places.iter().map(|&place| is_lawn(place)).collect();
    let free: Vec<bool> = places
        .iter()
        .zip(&lawn)
        .map(|(&place, &lawn)| lawn && !out.iter().any(|ring| inside(ring, place)))
        .collect();
    let mut count = Count {
        grid,
        visits: vec![0; lawn.len()],
        first_s: vec![f32::NAN; lawn.len()],
        last_s: vec![f32::NAN; lawn.len()],
        lawn,
        lines: Vec::new(),
        filled: vec![(0.0, 0)],
    };
    let mut walk = Walk { state: WALK_SEED };
    let mut place = Place::new(-4.0, -11.0);
    let mut heading = 1.2f64;
    let mut visited = 0;
    let step_m = 0.05;
    let steps = (HOURS * 3600.0 * SPEED_MPS / step_m) as usize;
    count.lines.push(place);
    for step in 0..steps {
        let time_s = step as f64 * step_m / SPEED_MPS;
        let next = Place::new(
            place.east_m + step_m * heading.cos(),
            place.north_m + step_m * heading.sin(),
        );
        let is_free = grid
            .cell_at(next)
            .is_some_and(|(column, row)| free[row * grid.columns + column]);
        if is_free {
            place = next;
        } else {
            heading = walk.draw() * std::f64::consts::TAU;
            if count.lines.last() != Some(&place) {
                count.lines.push(place);
            }
        }
        let (column, row) = grid.cell_at(place).unwrap();
        for row in row - 1..=row + 1 {
            for column in column - 1..=column + 1 {
                let cell = row * grid.columns + column;
                let is_under = grid.centre(column, row).distance_m(place) <= CUT_WIDTH_M / 2.0;
                if !is_under || !free[cell] {
                    continue;
                }
                if count.visits[cell] == 0 {
                    count.first_s[cell] = time_s as f32;
                    visited += 1;
                }
                if count.visits[cell] == 0 || time_s - f64::from(count.last_s[cell]) > 30.0 {
                    count.visits[cell] += 1;
                }
                count.last_s[cell] = time_s as f32;
            }
        }
        if (step + 1) % (steps / 40) == 0 {
            count
                .filled
                .push(((time_s + step_m / SPEED_MPS) / 3600.0, visited));
        }
    }
    count
}

fn squares(count: &Count) -> Cells {
    let k = 2;
    let grid = Grid {
        cell_m: count.grid.cell_m * k as f64,
        columns: count.grid.columns / k,
        rows: count.grid.rows / k,
        ..count.grid
    };
    let mut cells = Cells {
        grid,
        lawn_fraction: Vec::new(),
        visited_probability: Vec::new(),
        visits_expected: Vec::new(),
        first_visit_s: Vec::new(),
        last_visit_s: Vec::new(),
    };
    for square in 0..grid.cells() {
        let (column, row) = (square % grid.columns, square / grid.columns);
        let parts: Vec<usize> = (0..k * k)
            .map(|part| (row * k + part / k) * count.grid.columns + column * k + part % k)
            .filter(|&cell| count.lawn[cell])
            .collect();
        let lawn = parts.len() as f32;
        let of_lawn = |sum: f32| if lawn > 0.0 { sum / lawn } else { 0.0 };
        let seen = parts.iter().filter(|&&cell| count.visits[cell] > 0).count() as f32;
        let visits: u32 = parts.iter().map(|&cell| count.visits[cell]).sum();
        cells.lawn_fraction.push(lawn / (k * k) as f32);
        cells.visited_probability.push(of_lawn(seen));
        cells.visits_expected.push(of_lawn(visits as f32));
        // f32::min and max pass NaN by where the other is a number.
        cells.first_visit_s.push(
            parts
                .iter()
                .map(|&cell| count.first_s[cell])
                .fold(f32::NAN, f32::min),
        );
        cells.last_visit_s.push(
            parts
                .iter()
                .map(|&cell| count.last_s[cell])
                .fold(f32::NAN, f32::max),
        );
    }
    cells
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
            key: "date_from_rmc".to_owned(),
            sentence: "dates were taken from RMC sentences, first 2026-06-01".to_owned(),
            line: 2,
        }],
        resolution_m: Some(0.0186),
    }
}

fn tape(from: &str, at: Place, to: Place) -> Tape {
    Tape {
        from: from.to_owned(),
        distance_m: at.distance_m(to),
        from_east_m: at.east_m,
        from_north_m: at.north_m,
    }
}

/// Middle of the first missed pocket.
pub(crate) const M1: Place = Place::new(23.0, -4.6);
/// Middle of the second one.
pub(crate) const M2: Place = Place::new(7.6, 9.6);

fn missed(id: &str, index: usize, middle: Place, area_m2: f64, widest_m: f64, why: &str) -> MissedPocket {
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
        why: why.to_owned(),
        tape: vec![
            tape("the tool shed's south-east corner", Place::new(8.0, 5.0), middle),
            tape("the station", Place::new(-4.0, -12.4), middle),
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
        tape: vec![tape("the old pear tree", Place::new(-14.0, 1.0), middle)],
    }
}

fn span(count: &Count) -> Span {
    let path_m: f64 = count.lines.windows(2).map(|leg| leg[0].distance_m(leg[1])).sum();
    Span {
        start: Some("2026-06-01T22:10:00Z".to_owned()),
        end: Some("2026-06-02T08:05:00Z".to_owned()),
        start_unix_s: Some(START_UNIX_S),
        fixes_used: 28_781,
        period_s: 1.0,
        fixes_gated: 9,
        path_m,
        driving_s: HOURS * 3600.0,
        transit_s: None,
        at_station_s: Some(5_200.0),
        halted_s: 1_320.0,
        carried_s: None,
        silent_s: 380.0,
        silences: vec![Silence {
            start_s: 9_000.0,
            duration_s: 260.0,
            moved_m: 0.4,
        }],
        speed_mps: Some(SPEED_MPS),
        outings: Some(5),
        machines: vec!["machine-1".to_owned()],
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
            smallest_findable_pocket_m2: 0.6,
            smallest_findable_width_m: 0.8,
            good_enough: true,
            advice:
                "One fix a second with a scatter of 2 cm shows every pocket of the width that was asked for."
                    .to_owned(),
            remarks: vec![
                "4 min without fixes in the second outing; nothing is claimed about them".to_owned(),
            ],
        },
        span: span(&count),
        positions: PositionFindings {
            white_m: Some(0.012),
            drift_m: Some(0.02),
            drift_time_s: Some(310.0),
            source: NoiseSource::StationScatter,
            anchored: None,
            plan_offset: None,
        },
        coverage: Some(Coverage {
            lawn_m2,
            reachable_m2: None,
            visited_m2,
            missed_m2,
            not_yet_m2,
            unseen_m2: 0.0,
            sliver_m2: lawn_m2 - visited_m2 - missed_m2 - not_yet_m2,
            visited_fraction: Estimate::bare(visited_m2 / lawn_m2),
            face_value_fraction: visited_m2 / lawn_m2 + 0.006,
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
                "Luck would leave a gap this wide less than once in a million such logs.",
            ),
            missed(
                "M2",
                1,
                M2,
                pockets_m2[1],
                3.0,
                "Luck would leave a gap this wide about twice in a million such logs.",
            ),
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
            certainty: 0.98,
            why: "Look at the ground in the passage: it stood there 7 times on the way in.".to_owned(),
        }],
        worn_lines: None,
        strays: None,
        suggestions: None,
        cautions: vec!["Stop the machine and disable it before touching it.".to_owned()],
        plan: Some(plan()),
        lawn_outline: vec![vec![
            lawn_outer(),
            pond(),
            shed(),
            hole(Place::new(-14.0, 1.0)),
            hole(Place::new(20.0, 4.0)),
        ]],
        outline_source: OutlineSource::Plan,
        driven_lines: vec![count.lines.clone()],
        cells: Some(squares(&count)),
    }
}

/// An estimate with an interval.
pub(crate) fn between(estimate: f64, low: f64, high: f64) -> Estimate {
    Estimate {
        estimate,
        low: Some(low),
        high: Some(high),
    }
}

/// Everything that a later version can find, with no field null and no list empty.
pub(crate) fn full_findings() -> Findings {
    let mut findings = findings();
    let settings = &mut findings.settings;
    settings.machine.body_width_m = Some(0.5);
    settings.machine.past_boundary_m = Some(0.2);
    settings.machine.speed_mps = Some(SPEED_MPS);
    settings.turf = TurfSettings {
        cut_height_mm: Some(40.0),
        growth_mm_per_day: Some(3.0),
        mean_temperature_c: Some(17.0),
        grass: Grass::Cool,
    };
    let day = Some(vec!["20:00-23:59".to_owned()]);
    settings.hours = HoursSettings {
        monday: day.clone(),
        tuesday: day.clone(),
        wednesday: day.clone(),
        thursday: day.clone(),
        friday: day.clone(),
        saturday: day.clone(),
        sunday: day,
    };
    settings.garden.remarks = Some("Gate code with the neighbours.".to_owned());
    settings.positions.max_silence_s = Some(10.0);
    settings.positions.origin_lat_deg = Some(ORIGIN_LAT);
    settings.positions.origin_lon_deg = Some(ORIGIN_LON);
    findings.span.transit_s = Some(900.0);
    findings.span.carried_s = Some(60.0);
    findings.positions.anchored = Some(true);
    findings.positions.plan_offset = Some(PlanOffset {
        east_m: 0.15,
        north_m: -0.1,
        rotation_deg: 0.2,
        sd_m: 0.03,
    });
    let coverage = findings.coverage.as_mut().unwrap();
    let share = coverage.visited_fraction.estimate;
    coverage.reachable_m2 = Some(coverage.lawn_m2 - 20.0);
    coverage.visited_fraction = between(share, share - 0.004, share + 0.003);
    coverage.lawns[0].visited_fraction = coverage.visited_fraction;
    coverage.realisations = 40;
    findings.by_width = Some(
        (17..=35)
            .map(|width_cm| WidthRow {
                cut_width_m: f64::from(width_cm) / 100.0,
                visited_fraction: between(0.7 + f64::from(width_cm) / 200.0, 0.7, 0.9),
            })
            .collect(),
    );
    let revisits = findings.revisits.as_mut().unwrap();
    revisits.interval_h = IntervalQuantiles {
        p50: Some(2.4),
        p90: Some(6.5),
        p99: Some(7.9),
    };
    revisits.overdue_fraction = Some(0.02);
    let over_time = findings.over_time.as_mut().unwrap();
    over_time.hours_to_95 = Some(14.0);
    over_time.hours_to_99 = Some(31.0);
    over_time.promise = Promise {
        verdict: PromiseVerdict::Broken,
        probability: Some(0.02),
    };
    let pocket = &mut findings.missed_pockets[0];
    pocket.certainty = Some(0.99);
    pocket.causes = Some(vec![
        CauseFindings {
            cause: Cause::BeyondStuckSpot,
            weight_fraction: 0.8,
            evidence_for: vec!["7 of 38 drives through the passage ended at S1".to_owned()],
            evidence_against: vec!["31 drives came through".to_owned()],
        },
        CauseFindings {
            cause: Cause::NarrowPassage,
            weight_fraction: 0.2,
            evidence_for: vec!["the passage is 2.0 m wide".to_owned()],
            evidence_against: Vec::new(),
        },
    ]);
    pocket.suggestion_ids = vec!["G1".to_owned()];
    findings.missed_pockets[1].certainty = Some(0.97);
    findings.missed_pockets[1].causes = Some(Vec::new());
    findings.unseen = Some(vec![UnseenGround {
        id: "U1".to_owned(),
        area_m2: 3.5,
        why: "The log is silent for 260 s here.".to_owned(),
    }]);
    findings.worn_lines = Some(vec![WornLine {
        id: "W1".to_owned(),
        line: vec![
            Place::new(-4.0, -12.0),
            Place::new(-4.0, -8.0),
            Place::new(4.0, -4.0),
        ],
        times_mean: 4.1,
    }]);
    findings.strays = Some(vec![Stray {
        id: "X1".to_owned(),
        start_s: 12_000.0,
        duration_s: 40.0,
        farthest_m: 1.2,
    }]);
    findings.suggestions = Some(vec![Suggestion {
        id: "G1".to_owned(),
        kind: SuggestionKind::GuideRun,
        why: "A guide run through the passage to M1 leads every third outing past the stuck spot.".to_owned(),
        geometry: vec![
            Place::new(12.0, -0.8),
            Place::new(16.0, -1.0),
            Place::new(20.0, -3.5),
        ],
        wire_m: Some(9.4),
        outing_share_fraction: Some(0.33),
        addresses: vec!["M1".to_owned()],
        predicted: Predicted {
            visited_fraction_before: between(share, share - 0.01, share + 0.01),
            visited_fraction_after: between(share + 0.05, share + 0.03, share + 0.06),
            pocket_fraction_before: between(0.02, 0.0, 0.06),
            pocket_fraction_after: between(0.81, 0.66, 0.9),
        },
        cautions: vec![
            "Locate buried cables and pipes before digging; private lines are not marked.".to_owned(),
        ],
    }]);
    findings
}

/// A log in local metres without a place on Earth.
pub(crate) fn local_findings() -> Findings {
    let mut findings = findings();
    findings.frame = FrameFindings {
        origin_lat: None,
        origin_lon: None,
    };
    findings.plan = None;
    for pocket in &mut findings.missed_pockets {
        (pocket.lat, pocket.lon) = (None, None);
    }
    for pocket in &mut findings.not_yet {
        (pocket.lat, pocket.lon) = (None, None);
    }
    for spot in &mut findings.stuck_spots {
        (spot.lat, spot.lon) = (None, None);
    }
    findings
}

/// A log without a cutting width: no coverage, no squares.
pub(crate) fn findings_without_width() -> Findings {
    let full = full_findings();
    Findings {
        coverage: None,
        revisits: None,
        over_time: None,
        missed_pockets: Vec::new(),
        not_yet: Vec::new(),
        suggestions: None,
        cells: None,
        ..full
    }
}

/// Everything null that may be null, every list empty.
pub(crate) fn bare_findings() -> Findings {
    let mut findings = local_findings();
    findings.settings = Settings::default();
    findings.inputs.clear();
    findings.log_verdict.remarks.clear();
    findings.log_verdict.good_enough = false;
    let span = &mut findings.span;
    *span = Span {
        start: None,
        end: None,
        start_unix_s: None,
        at_station_s: None,
        speed_mps: None,
        outings: None,
        silences: Vec::new(),
        machines: Vec::new(),
        ..span.clone()
    };
    findings.positions = PositionFindings {
        white_m: None,
        drift_m: None,
        drift_time_s: None,
        source: NoiseSource::Default,
        anchored: None,
        plan_offset: None,
    };
    Findings {
        coverage: None,
        revisits: None,
        over_time: None,
        missed_pockets: Vec::new(),
        not_yet: Vec::new(),
        stuck_spots: Vec::new(),
        cautions: Vec::new(),
        lawn_outline: Vec::new(),
        driven_lines: Vec::new(),
        cells: None,
        ..findings
    }
}

/// Text that tries everything.
pub(crate) const HOSTILE: &str =
    "</script><script>alert(1)</script>\" onload='x' {{ 7*7 }} \u{1b}[2J\u{202e}gpj.\u{0}\u{7}&amp;]]><!--";

/// Hostile text in every place that comes from outside.
pub(crate) fn hostile_findings() -> Findings {
    let mut findings = full_findings();
    let long = format!("{HOSTILE}{}", "A".repeat(1 << 20));
    let hostile = || HOSTILE.to_owned();
    findings.tool_version = hostile();
    findings.settings.garden.name = Some(long.clone());
    findings.settings.garden.remarks = Some(long.clone());
    findings.settings.garden.time_zone = Some(hostile());
    findings.span.start = Some(hostile());
    findings.span.machines = vec![hostile()];
    let facts = &mut findings.inputs[0].facts;
    facts.name = long;
    facts.made_by = Some(hostile());
    facts.machine = hostile();
    facts.sha256 = hostile();
    facts.places[0].excerpt = hostile();
    facts.notices[0].sentence = hostile();
    findings.log_verdict.advice = hostile();
    findings.log_verdict.remarks = vec![hostile()];
    for feature in &mut findings.plan.as_mut().unwrap().features {
        feature.name = hostile();
    }
    findings.coverage.as_mut().unwrap().lawns[0].name = hostile();
    for pocket in &mut findings.missed_pockets {
        pocket.id = hostile();
        pocket.why = hostile();
        pocket.tape[0].from = hostile();
        for cause in pocket.causes.iter_mut().flatten() {
            cause.evidence_for = vec![hostile()];
            cause.evidence_against = vec![hostile()];
        }
    }
    findings.not_yet[0].id = hostile();
    findings.not_yet[0].tape[0].from = hostile();
    findings.stuck_spots[0].id = hostile();
    findings.stuck_spots[0].why = hostile();
    findings.unseen.as_mut().unwrap()[0].why = hostile();
    findings.worn_lines.as_mut().unwrap()[0].id = hostile();
    let suggestion = &mut findings.suggestions.as_mut().unwrap()[0];
    suggestion.id = hostile();
    suggestion.why = hostile();
    suggestion.cautions = vec![hostile()];
    suggestion.addresses = vec![hostile()];
    findings.cautions = vec![hostile()];
    findings
}

/// An inspection of the invented log.
pub(crate) fn inspection() -> Inspection {
    let findings = findings();
    Inspection {
        schema_version: SCHEMA_VERSION,
        tool_version: findings.tool_version,
        inputs: findings.inputs,
        log_verdict: findings.log_verdict,
        span: findings.span,
        positions: findings.positions,
        extent_m: (46.2, 25.9),
        middle: Some(GeoPoint {
            lat_deg: ORIGIN_LAT,
            lon_deg: ORIGIN_LON,
        }),
        qualities: vec![("RTK fixed".to_owned(), 28_100), ("RTK float".to_owned(), 690)],
        hdop: Some((0.7, 1.1)),
        repeated_positions: 12,
    }
}
