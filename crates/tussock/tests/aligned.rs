//! A plan that is displaced from the log is moved to where the log shows it.

use crate::nights::{self, invented, job, logged, sites};
use tussock::{AlignVerdict, AnalyseError, align};
use tussock_plane::{Frame, Site};
use tussock_simulate::gardens::{GardenKind, Surprise};
use tussock_simulate::{Counting, LogNoise, Machine, Run, Sampling, sample, simulate, truth};
use tussock_types::{Findings, GeoPoint, Place, Plan, PlanShape, Settings, Trace};

const SEED: u64 = 20_260_505;

/// The plan rotated about the frame's origin, then moved.
pub(crate) fn off(plan: &Plan, frame: &Frame, east_m: f64, north_m: f64, turn_deg: f64) -> Plan {
    let (sin, cos) = turn_deg.to_radians().sin_cos();
    let mut plan = plan.clone();
    plan.for_each_point(|point| {
        let at = frame.to_place(*point);
        *point = frame.to_geo(Place::new(
            cos * at.east_m - sin * at.north_m + east_m,
            sin * at.east_m + cos * at.north_m + north_m,
        ));
    });
    plan
}

pub(crate) fn corners(plan: &Plan, frame: &Frame) -> Vec<Place> {
    plan.features
        .iter()
        .filter_map(|feature| match &feature.shape {
            PlanShape::Polygons(polygons) => {
                Some(polygons.iter().flat_map(|polygon| polygon.rings.iter().flatten()))
            }
            _ => None,
        })
        .flatten()
        .map(|point| frame.to_place(*point))
        .collect()
}

fn garden(noise: LogNoise, seed: u64) -> (Plan, Frame, Trace) {
    let garden = invented(GardenKind::Ell, (500.0, 1000.0), Surprise::None, seed);
    let (site, _) = Site::build(&garden.plan).expect("invented plans are sound");
    let run = simulate(&site, &Machine::default(), &Run::new(8.0, seed)).expect("there is room");
    let trace = logged(&run, &site, 1.0, noise, seed + 1);
    (garden.plan, site.frame, trace)
}

fn aligned(plan: &Plan, trace: &Trace) -> Result<tussock::Aligned, AnalyseError> {
    align(&job(
        std::slice::from_ref(trace),
        Some(plan),
        &Settings::default(),
    ))
}

#[test]
fn a_plan_beside_the_log_is_laid_where_the_log_says() {
    for (noise, most_m) in [(LogNoise::CENTIMETRES, 0.12), (LogNoise::DECIMETRES, 0.25)] {
        let (plan, frame, trace) = garden(noise, SEED);
        let truth = corners(&plan, &frame);
        for (east_m, north_m, turn_deg) in [
            (0.5, 0.0, 0.0),
            (-0.8, 0.6, 0.5),
            (0.0, 2.0, 0.0),
            (2.0, -2.0, 1.0),
        ] {
            let drawn = off(&plan, &frame, east_m, north_m, turn_deg);
            let found = aligned(&drawn, &trace).expect("a night shows where the plan lies");
            assert_eq!(found.verdict, AlignVerdict::Moved);
            let worst_m = corners(&found.plan, &frame)
                .iter()
                .zip(&truth)
                .map(|(found, truth)| found.distance_m(*truth))
                .fold(0.0, f64::max);
            assert!(
                worst_m <= most_m,
                "{noise:?}, off by {east_m} {north_m} {turn_deg}: corners still {worst_m} m off, {:?}",
                found.offset
            );
        }
    }
}

#[test]
fn a_plan_in_its_place_stays_there() {
    let (plan, _, trace) = garden(LogNoise::DECIMETRES, SEED + 10);
    let found = aligned(&plan, &trace).expect("a night shows where the plan lies");
    assert_eq!(found.verdict, AlignVerdict::InPlace, "{:?}", found.offset);
    assert_eq!(found.plan, plan);
}

#[test]
fn without_a_plan_there_is_nothing_to_align() {
    let (_, _, trace) = garden(LogNoise::DECIMETRES, SEED);
    let settings = Settings::default();
    let job = job(std::slice::from_ref(&trace), None, &settings);
    assert!(matches!(align(&job), Err(AnalyseError::CannotAlign { .. })));
}

/// A lawn with an obstacle that no plan shows, whose ground is a pocket. Plan, log, and the middle of the pocket.
struct Bodied {
    plan: Plan,
    site: Site,
    trace: Trace,
    middle: Place,
}

const CUT_WIDTH_M: f64 = 0.22;

fn bodied(seed: u64) -> Bodied {
    let garden = invented(
        GardenKind::Ell,
        (500.0, 700.0),
        Surprise::UnlistedObstacle { radius_m: 1.5 },
        seed,
    );
    let (site, ground) = sites(&garden.plan, &garden.ground);
    let run = simulate(&ground, &Machine::default(), &Run::new(8.0, seed)).expect("there is room");
    let sampling = Sampling::geographic(1.0, LogNoise::DECIMETRES, seed + 1, site.frame);
    let truth = truth(&run, &site, &Counting::new(CUT_WIDTH_M, 0.03));
    let widest = truth
        .pockets
        .iter()
        .max_by(|a, b| a.widest_m.total_cmp(&b.widest_m))
        .expect("the body leaves a pocket");
    assert!(widest.widest_m > 2.5, "{}", widest.widest_m);
    Bodied {
        plan: garden.plan,
        middle: widest.middle,
        trace: sample(&run, &sampling),
        site,
    }
}

fn found(plan: &Plan, trace: &Trace) -> Findings {
    nights::found(trace, plan, CUT_WIDTH_M)
}

/// The farthest that a line's places lie from the edge of a region.
fn off_edge_m(rings: &[Vec<Vec<Place>>], edge: &tussock_plane::Region) -> f64 {
    rings
        .iter()
        .flatten()
        .flatten()
        .map(|place| edge.edge_distance_m(*place))
        .fold(0.0, f64::max)
}

#[test]
fn findings_lie_where_the_log_says_however_the_plan_is_drawn() {
    const NEAR_M: f64 = 0.3;
    let garden = bodied(SEED + 20);
    for (east_m, north_m, turn_deg) in [(1.2, 0.0, 0.0), (-0.7, 1.0, 0.8)] {
        let drawn = off(&garden.plan, &garden.site.frame, east_m, north_m, turn_deg);
        let findings = found(&drawn, &garden.trace);
        let told = findings.plan_offset().expect("a night tells");
        assert!(told.is_beside(), "{told:?}");
        let what = format!("drawn off by {east_m} {north_m} {turn_deg}: {told:?}");
        // On Earth, and in metres on the plane of the findings.
        let plane = Frame::at(GeoPoint {
            lat_deg: findings.frame.origin_lat.expect("on Earth"),
            lon_deg: findings.frame.origin_lon.expect("on Earth"),
        });
        let pocket = findings
            .missed_pockets
            .iter()
            .max_by(|a, b| a.widest_m.total_cmp(&b.widest_m))
            .expect("the body leaves a pocket");
        let geo = GeoPoint {
            lat_deg: pocket.lat.expect("on Earth"),
            lon_deg: pocket.lon.expect("on Earth"),
        };
        let off_m = garden.site.frame.to_place(geo).distance_m(garden.middle);
        assert!(off_m <= NEAR_M, "{what}: pocket {off_m} m off");
        let off_m = plane
            .to_place(geo)
            .distance_m(Place::new(pocket.east_m, pocket.north_m));
        assert!(off_m < 1e-3, "{what}: metres and degrees {off_m} m apart");
        // The lawn as drawn on the page, with the plan and the squares.
        let on_truth = |place: &Place| garden.site.frame.to_place(plane.to_geo(*place));
        let outline: Vec<Vec<Vec<Place>>> = findings
            .lawn_outline
            .iter()
            .map(|part| {
                part.iter()
                    .map(|ring| ring.iter().map(on_truth).collect())
                    .collect()
            })
            .collect();
        let off_m = off_edge_m(&outline, &garden.site.lawn);
        assert!(off_m <= NEAR_M, "{what}: outline {off_m} m off");
        let plan = findings.plan.as_ref().expect("a plan was given");
        let off_m = corners(plan, &garden.site.frame)
            .iter()
            .zip(&corners(&garden.plan, &garden.site.frame))
            .map(|(found, truth)| found.distance_m(*truth))
            .fold(0.0, f64::max);
        assert!(off_m <= NEAR_M, "{what}: plan {off_m} m off");
        let cells = findings.cells.as_ref().expect("squares");
        let (mut lawn, mut on_lawn) = (0.0, 0.0);
        for row in 0..cells.grid.rows {
            for column in 0..cells.grid.columns {
                let part = f64::from(cells.lawn_fraction[row * cells.grid.columns + column]);
                lawn += part;
                if garden
                    .site
                    .lawn
                    .contains(on_truth(&cells.grid.centre(column, row)))
                {
                    on_lawn += part;
                }
            }
        }
        let perimeter_m2 = NEAR_M * garden.site.lawn.perimeter_m();
        let beside_m2 = (lawn - on_lawn) * cells.grid.cell_m2();
        assert!(
            beside_m2 <= perimeter_m2,
            "{what}: {beside_m2} m2 of squares beside the lawn"
        );
        let area_m2 = lawn * cells.grid.cell_m2();
        let lawn_m2 = garden.site.lawn.area_m2();
        assert!(
            (area_m2 - lawn_m2).abs() < 0.005 * lawn_m2,
            "{what}: {area_m2} m2 of {lawn_m2} m2"
        );
        // Driving ends at the edge that the log shows.
        let out_m = findings
            .driven_lines
            .iter()
            .flatten()
            .map(on_truth)
            .filter(|place| !garden.site.lawn.contains(*place))
            .map(|place| garden.site.lawn.edge_distance_m(place))
            .fold(0.0, f64::max);
        assert!(out_m <= NEAR_M, "{what}: driven {out_m} m outside");
    }
}

#[test]
fn where_plan_and_log_agree_nothing_is_moved() {
    let garden = bodied(SEED + 20);
    let findings = found(&garden.plan, &garden.trace);
    let told = findings.plan_offset().expect("a night tells");
    assert!(!told.is_beside(), "{told:?}");
    assert_eq!(findings.plan.as_ref(), Some(&garden.plan));
    assert_eq!(findings.lawn_outline, garden.site.lawn.rings());
}
