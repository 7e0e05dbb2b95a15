//! Each kind of suggestion in the case where it helps: a displaced zone, a place that catches the machine, a strip that
//! stays uncut along the whole boundary, a guide run that needs more hours. The suggestion is built and run again.

use crate::nights::{job, logged, of_width};
use tussock::{Advice, Job, analyse, built};
use tussock_plane::{Frame, Region, Site, rasterise};
use tussock_simulate::{Counting, LogNoise, Machine, Manner, Run, Spell, StuckSpot, simulate, truth};
use tussock_types::{
    Findings, GeoPolygon, Place, Plan, PlanFeature, PlanRole, PlanShape, Suggestion, SuggestionKind,
};

const CUT_WIDTH_M: f64 = 0.22;
const TRUTH_CELL_M: f64 = 0.04;
/// Runs after a change.
const AFTER_RUNS: u64 = 4;

fn frame() -> Frame {
    Frame::at(tussock_simulate::gardens::ORIGIN)
}

fn ring(corners: &[(f64, f64)]) -> PlanShape {
    let mut ring: Vec<_> = corners
        .iter()
        .map(|(x, y)| frame().to_geo(Place::new(*x, *y)))
        .collect();
    ring.push(ring[0]);
    PlanShape::Polygons(vec![GeoPolygon { rings: vec![ring] }])
}

fn block(west_m: f64, south_m: f64, east_m: f64, north_m: f64) -> PlanShape {
    ring(&[
        (west_m, south_m),
        (east_m, south_m),
        (east_m, north_m),
        (west_m, north_m),
    ])
}

fn plan(shapes: Vec<(PlanRole, PlanShape)>) -> Plan {
    let features = shapes
        .into_iter()
        .enumerate()
        .map(|(index, (role, shape))| {
            PlanFeature::new(role, format!("{role:?} {index}").to_lowercase(), index, shape)
        })
        .collect();
    Plan { features }
}

fn station(east_m: f64, north_m: f64) -> (PlanRole, PlanShape) {
    (
        PlanRole::Station,
        PlanShape::Point(frame().to_geo(Place::new(east_m, north_m))),
    )
}

/// What was logged on the real ground and found with the plan.
fn found(ground: &Plan, drawn: &Plan, machine: &Machine, run: &Run) -> Findings {
    let (site, _) = Site::build(drawn).unwrap();
    let (site, _) = Site::build_in(ground, site.frame).unwrap();
    let driven = simulate(&site, machine, run).unwrap();
    let trace = logged(&driven, &site, 1.0, LogNoise::CENTIMETRES, run.seed + 7);
    let settings = of_width(CUT_WIDTH_M);
    analyse(&Job {
        advice: Advice::Given,
        ..job(std::slice::from_ref(&trace), Some(drawn), &settings)
    })
    .unwrap()
}

fn of_kind(findings: &Findings, kind: SuggestionKind) -> Suggestion {
    let all = findings.suggestions.as_ref().unwrap();
    all.iter()
        .find(|suggestion| suggestion.kind == kind)
        .unwrap_or_else(|| panic!("no {kind:?} among {all:#?} for {:#?}", findings.missed_pockets))
        .clone()
}

/// The plan with the suggestion built; the suggestion's places are in the plan's own plane.
fn with(suggestion: &Suggestion, drawn: &Plan) -> Plan {
    let (site, _) = Site::build(drawn).unwrap();
    built(drawn, &site.frame, suggestion)
}

/// Visited fraction of the suggestion's pocket when the machine runs on changed ground: mean of several runs.
fn measured_fraction(
    findings: &Findings,
    suggestion: &Suggestion,
    drawn: &Plan,
    changed: &Plan,
    machine: &Machine,
    run: &Run,
) -> f64 {
    let (as_drawn, _) = Site::build(drawn).unwrap();
    let (site, _) = Site::build_in(changed, as_drawn.frame).unwrap();
    let pocket = findings
        .missed_pockets
        .iter()
        .find(|pocket| pocket.id == suggestion.pocket_ids[0])
        .unwrap();
    let region = Region::from_rings(vec![pocket.outline.clone()]).unwrap();
    let sum: f64 = (0..AFTER_RUNS)
        .map(|number| {
            let mut again = run.clone();
            again.seed = 1000 * run.seed + number;
            again.hours += suggestion.added_h_per_day.unwrap_or(0.0);
            let after = simulate(&site, machine, &again).unwrap();
            let truth = truth(&after, &as_drawn, &Counting::new(CUT_WIDTH_M, TRUTH_CELL_M));
            let mut lawn = rasterise(&region, &truth.lawn.grid);
            lawn.and_in_place(&truth.lawn);
            let mut visited = lawn.clone();
            visited.and_in_place(&truth.visited);
            visited.count() as f64 / (lawn.count() as f64).max(1.0)
        })
        .sum();
    sum / AFTER_RUNS as f64
}

/// The pocket gains more than 20 points and lies within 15 points of the prediction.
fn holds(suggestion: &Suggestion, measured_fraction: f64) {
    let predicted = suggestion.predicted.pocket_fraction_after.estimate;
    assert!(
        measured_fraction - suggestion.pocket_fraction_in_log > 0.2,
        "{measured_fraction} {suggestion:#?}"
    );
    assert!(
        (measured_fraction - predicted).abs() < 0.15,
        "{measured_fraction} {suggestion:#?}"
    );
}

#[test]
fn a_zone_drawn_beside_its_place_is_moved_there() {
    let garden = |west_m: f64| {
        plan(vec![
            (PlanRole::Lawn, block(0.0, 0.0, 26.0, 14.0)),
            (PlanRole::Exclusion, block(west_m, 5.0, west_m + 4.0, 9.0)),
            station(3.0, 0.0),
        ])
    };
    let (stands, drawn) = (garden(11.0), garden(12.0));
    let (machine, run) = (Machine::default(), Run::new(10.0, 11));
    let findings = found(&stands, &drawn, &machine, &run);
    let suggestion = of_kind(&findings, SuggestionKind::ZoneMove);
    assert!(
        (suggestion.shift_m.unwrap() - 1.0).abs() < 0.06,
        "{suggestion:#?}"
    );
    // The zone is moved on the ground, to where the plan has it.
    let measured = measured_fraction(&findings, &suggestion, &drawn, &drawn, &machine, &run);
    holds(&suggestion, measured);
}

/// Two lawns with a passage between them, from 4 m to `north_m`.
fn two_lawns(north_m: f64) -> Plan {
    plan(vec![
        (
            PlanRole::Lawn,
            ring(&[
                (0.0, 0.0),
                (12.0, 0.0),
                (12.0, 4.0),
                (15.0, 4.0),
                (15.0, 0.0),
                (24.0, 0.0),
                (24.0, 12.0),
                (15.0, 12.0),
                (15.0, north_m),
                (12.0, north_m),
                (12.0, 12.0),
                (0.0, 12.0),
            ]),
        ),
        station(3.0, 0.0),
    ])
}

fn caught_at(north_m: f64, radius_m: f64, minutes: (f64, f64)) -> Run {
    let mut run = Run::new(9.0, 12);
    // On the plane of the two lawns.
    let (site, _) = Site::build(&two_lawns(7.4)).unwrap();
    let place = site.frame.to_place(frame().to_geo(Place::new(13.5, north_m)));
    run.stuck_spots = vec![StuckSpot {
        place,
        radius_m,
        probability: 1.0,
        duration: Spell::Between {
            min_s: 60.0 * minutes.0,
            max_s: 60.0 * minutes.1,
        },
        manner: Manner::Wiggles,
    }];
    run
}

#[test]
fn a_place_that_catches_the_machine_is_fenced_off() {
    let garden = two_lawns(7.4);
    let (machine, run) = (Machine::default(), caught_at(5.0, 0.9, (40.0, 60.0)));
    let findings = found(&garden, &garden, &machine, &run);
    let suggestion = of_kind(&findings, SuggestionKind::ZoneAdd);
    let fenced = with(&suggestion, &garden);
    let measured = measured_fraction(&findings, &suggestion, &garden, &fenced, &machine, &run);
    holds(&suggestion, measured);
}

#[test]
fn a_guide_run_that_is_not_enough_comes_with_hours() {
    let garden = two_lawns(6.4);
    let (machine, run) = (Machine::default(), caught_at(4.7, 0.8, (25.0, 40.0)));
    let findings = found(&garden, &garden, &machine, &run);
    let suggestion = of_kind(&findings, SuggestionKind::GuideRun);
    assert!(
        suggestion.added_h_per_day.is_some_and(|added_h| added_h > 0.0),
        "{suggestion:#?}"
    );
    let laid = with(&suggestion, &garden);
    let measured = measured_fraction(&findings, &suggestion, &garden, &laid, &machine, &run);
    holds(&suggestion, measured);
}

#[test]
fn a_strip_along_the_whole_boundary_asks_for_the_boundary_to_be_shifted() {
    let garden = plan(vec![
        (PlanRole::Lawn, block(0.0, 0.0, 24.0, 13.0)),
        station(3.0, 0.0),
    ]);
    let machine = Machine {
        past_boundary_m: -1.0,
        ..Machine::default()
    };
    let run = Run::new(12.0, 13);
    let findings = found(&garden, &garden, &machine, &run);
    let suggestion = of_kind(&findings, SuggestionKind::BoundaryShift);
    // What the disc does not reach, and two centimetres.
    assert!(
        (suggestion.shift_m.unwrap() - (1.0 - 0.5 * CUT_WIDTH_M + 0.02)).abs() < 0.03,
        "{suggestion:#?}"
    );
    let shifted = with(&suggestion, &garden);
    let measured = measured_fraction(&findings, &suggestion, &garden, &shifted, &machine, &run);
    holds(&suggestion, measured);
}
