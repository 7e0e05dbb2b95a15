//! A plan that lies beside the log is laid where the log says.

use tussock::{AlignVerdict, AnalyseError, Job, align};
use tussock_plane::{Frame, Site};
use tussock_simulate::gardens::{GardenKind, Wish, invent_as};
use tussock_simulate::{LogNoise, Machine, Run, Sampling, sample, simulate};
use tussock_types::{GeoPoint, Place, Plan, PlanShape, Settings, Trace};

const SEED: u64 = 20_260_505;

/// The plan turned about the frame's origin, then moved.
fn off(plan: &Plan, frame: &Frame, east_m: f64, north_m: f64, turn_deg: f64) -> Plan {
    let (sin, cos) = turn_deg.to_radians().sin_cos();
    let mut plan = plan.clone();
    let shift = |point: &mut GeoPoint| {
        let at = frame.to_place(*point);
        *point = frame.to_geo(Place::new(
            cos * at.east_m - sin * at.north_m + east_m,
            sin * at.east_m + cos * at.north_m + north_m,
        ));
    };
    for feature in &mut plan.features {
        match &mut feature.shape {
            PlanShape::Polygons(polygons) => polygons
                .iter_mut()
                .flat_map(|polygon| &mut polygon.rings)
                .flatten()
                .for_each(shift),
            PlanShape::Line(points) => points.iter_mut().for_each(shift),
            PlanShape::Point(point) => shift(point),
        }
    }
    plan
}

fn corners(plan: &Plan, frame: &Frame) -> Vec<Place> {
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
    let garden = invent_as(
        &Wish {
            area_m2: (500.0, 1000.0),
            ..Wish::new(GardenKind::Ell)
        },
        seed,
    );
    let (site, _) = Site::build(&garden.plan).expect("invented plans are sound");
    let run = simulate(&site, &Machine::default(), &Run::new(8.0, seed)).expect("there is room");
    let trace = sample(&run, &Sampling::geographic(1.0, noise, seed + 1, site.frame));
    (garden.plan, site.frame, trace)
}

fn aligned(plan: &Plan, trace: &Trace) -> Result<tussock::Aligned, AnalyseError> {
    align(&Job {
        traces: std::slice::from_ref(trace),
        inputs: &[],
        plan: Some(plan),
        settings: &Settings::default(),
        seed: 1,
        advice: tussock::Advice::LeftOut,
        progress: None,
    })
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
    let job = Job {
        traces: std::slice::from_ref(&trace),
        inputs: &[],
        plan: None,
        settings: &settings,
        seed: 1,
        advice: tussock::Advice::LeftOut,
        progress: None,
    };
    assert!(matches!(align(&job), Err(AnalyseError::CannotAlign { .. })));
}
