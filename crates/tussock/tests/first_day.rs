//! What a first day brings: plans without a station, and logs that show nothing.

use crate::nights::{self, logged, of_width};
use tussock::{
    AlignVerdict, AnalyseError, Job, Side, Sides, align, analyse, compare, inspect, plan_from_trace,
};
use tussock_plane::{Frame, Site};
use tussock_simulate::gardens::{GardenKind, ORIGIN, invent};
use tussock_simulate::{LogNoise, Machine, Run, simulate};
use tussock_types::{Fix, Place, Plan, PlanRole, Said, Settings, Trace};

const SEED: u64 = 20_261_129;
const GRADES: [LogNoise; 3] = [LogNoise::CENTIMETRES, LogNoise::DECIMETRES, LogNoise::METRES];

fn settings() -> Settings {
    of_width(0.22)
}

fn job<'a>(trace: &'a Trace, plan: Option<&'a Plan>, settings: &'a Settings) -> Job<'a> {
    Job {
        seed: SEED,
        ..nights::job(std::slice::from_ref(trace), plan, settings)
    }
}

fn without_station(plan: &Plan) -> Plan {
    let mut plan = plan.clone();
    plan.features.retain(|feature| feature.role != PlanRole::Station);
    plan
}

fn night(plan: &Plan, noise: LogNoise, seed: u64) -> Trace {
    let (site, _) = Site::build(plan).unwrap();
    let run = simulate(&site, &Machine::default(), &Run::new(4.0, seed)).unwrap();
    logged(&run, &site, 1.0, noise, seed)
}

#[test]
fn a_plan_without_a_station_is_analysed_inspected_and_compared_at_every_grade() {
    let (settings, whole) = (settings(), invent(GardenKind::Convex, SEED));
    let bare = without_station(&whole);
    for noise in GRADES {
        let (before, after) = (night(&whole, noise, 1), night(&whole, noise, 2));
        let sides = [&before, &after].map(|trace| job(trace, Some(&bare), &settings));
        let findings = sides.map(|job| analyse(&job).unwrap());
        let drawn = analyse(&job(&before, Some(&whole), &settings)).unwrap();
        let visited = |findings: &tussock_types::Findings| {
            findings.coverage.as_ref().unwrap().visited_fraction.estimate
        };
        assert!(
            (visited(&findings[0]) - visited(&drawn)).abs() < 0.03,
            "{noise:?}: {} without a station, {} with it",
            visited(&findings[0]),
            visited(&drawn)
        );
        assert_eq!(
            inspect(&sides[0]).unwrap().log_verdict.level,
            findings[0].log_verdict.level
        );
        let side = |at: usize| Side {
            names: vec![format!("side {at}")],
            findings: &findings[at],
            job: Some(&sides[at]),
        };
        let compared = compare(&Sides {
            before: side(0),
            after: side(1),
            seed: SEED,
        });
        compared.unwrap_or_else(|error| panic!("{noise:?}: {error}"));
    }
}

#[test]
fn a_plan_without_a_station_is_aligned_by_its_edges() {
    let settings = settings();
    let whole = invent(GardenKind::Convex, SEED);
    let mut bare = without_station(&whole);
    let frame = Frame::at(ORIGIN);
    bare.for_each_point(|point| {
        let place = frame.to_place(*point);
        *point = frame.to_geo(Place::new(place.east_m + 0.6, place.north_m));
    });
    for noise in GRADES {
        let trace = night(&whole, noise, 3);
        match align(&job(&trace, Some(&bare), &settings)) {
            Ok(aligned) => {
                let offset = aligned.offset;
                let off_m = (offset.east_m + 0.6).hypot(offset.north_m);
                assert!(off_m < 0.1 + 4.0 * offset.sd_m, "{noise:?}: {offset:?}");
                assert!(noise.drift_m > 1.0 || aligned.verdict == AlignVerdict::Moved);
            }
            Err(error) => assert!(
                matches!(error, AnalyseError::CannotAlign { .. }) && noise.drift_m > 1.0,
                "{noise:?}: {error}"
            ),
        }
    }
}

/// Fixes so far apart in time that nobody knows what lies between them, to and fro over 3.4 km.
fn coarse(fixes: u32, period_s: f64) -> Trace {
    let mut trace = Trace::geographic("machine-1");
    let frame = Frame::at(ORIGIN);
    for number in 0..fixes {
        // 37 and 64 have no common divisor: places far apart follow each other.
        let at = |times: u32| f64::from(number * times % 64) / 63.0 * 2400.0;
        let geo = frame.to_geo(Place::new(at(37), at(27)));
        trace.push(Fix::bare(
            1_777_665_600.0 + period_s * f64::from(number),
            geo.lat_deg,
            geo.lon_deg,
        ));
    }
    trace
}

#[test]
fn a_fix_every_half_hour_says_nothing_of_a_lawn_and_that_is_told_before_anything_is_counted() {
    let settings = settings();
    for fixes in [50, 20_000] {
        let trace = coarse(fixes, 2000.0);
        let job = job(&trace, None, &settings);
        let verdict = inspect(&job).unwrap().log_verdict;
        assert!(
            matches!(verdict.advice, Said::FixesFarTooRare { period_s } if (period_s - 2000.0).abs() < 1.0),
            "{verdict:?}"
        );
        for error in [analyse(&job).unwrap_err(), plan_from_trace(&job).unwrap_err()] {
            assert!(
                matches!(
                    error,
                    AnalyseError::TooCoarse {
                        period_s: 2000.0,
                        limit_s: 40.0
                    }
                ),
                "{error}"
            );
        }
    }
}

#[test]
fn lawns_and_paths_beyond_the_limits_are_refused_before_they_are_counted() {
    let (mut settings, garden) = (settings(), invent(GardenKind::Convex, SEED));
    let trace = night(&garden, LogNoise::CENTIMETRES, 1);
    let (mut large, frame) = (garden, Frame::at(ORIGIN));
    large.for_each_point(|point| {
        let place = frame.to_place(*point);
        *point = frame.to_geo(Place::new(60.0 * place.east_m, 60.0 * place.north_m));
    });
    let error = analyse(&job(&trace, Some(&large), &settings)).unwrap_err();
    assert!(matches!(error, AnalyseError::LawnTooLarge { .. }), "{error}");
    assert!(error.to_string().contains("limits.cells"), "{error}");

    // On a lawn that can be counted, but with as much path as years of driving.
    settings.limits.cells = 10_000;
    let mut years = Trace::geographic("machine-1");
    for number in 0..60_000 {
        let fix = trace.fix(number * 97 % trace.len());
        years.push(Fix {
            time_s: 1_777_665_600.0 + 20.0 * number as f64,
            ..fix
        });
    }
    let plan = invent(GardenKind::Convex, SEED);
    settings.machine.cut_width_m = Some(2.0);
    let error = analyse(&job(&years, Some(&plan), &settings)).unwrap_err();
    assert!(matches!(error, AnalyseError::PathTooLong { .. }), "{error}");
    assert!(error.to_string().contains("100 times limits.cells"), "{error}");
}
