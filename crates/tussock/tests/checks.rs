//! Each check separately, with a garden, or figures, in which it must fail; and all of them in a healthy garden.

use crate::aligned::off;
use crate::nights::{found, invented, job, of_width};
use tussock::{Survey, inspect};
use tussock_check::{Checks, Follows, claims, count, ground, positions};
use tussock_coverage::luck;
use tussock_locate::{left_out, plan_fit};
use tussock_plane::{Joins, Site};
use tussock_simulate::gardens::{GardenKind, Surprise};
use tussock_simulate::{LogNoise, Machine, Run, Sampling, TimeWindow, sample, simulate};
use tussock_survey::calibrate::{self, AsLogged};
use tussock_survey::coverage_count::CoverageCount;
use tussock_survey::{log_findings, unseen};
use tussock_types::{
    Check, CheckKind, Estimate, Findings, GeoPolygon, LogLevel, MissedPocket, NotYetPocket, Place, Plan,
    PlanRole, PlanShape, Positions, Said, Trace,
};

const SEED: u64 = 20_261_201;
const CUT_WIDTH_M: f64 = 0.22;

struct Night {
    plan: Plan,
    site: Site,
    trace: Trace,
}

fn night_of(machine: &Machine, noise: LogNoise, change: impl FnOnce(&mut Sampling)) -> Night {
    let garden = invented(GardenKind::Ell, (400.0, 700.0), Surprise::None, SEED);
    let (site, _) = Site::build(&garden.plan).expect("invented plans are sound");
    let run = simulate(&site, machine, &Run::new(8.0, SEED)).expect("there is room");
    let mut sampling = Sampling::geographic(1.0, noise, SEED + 1, site.frame);
    change(&mut sampling);
    Night {
        plan: garden.plan,
        trace: sample(&run, &sampling),
        site,
    }
}

fn night(noise: LogNoise) -> Night {
    night_of(&Machine::default(), noise, |_| {})
}

fn of_kind(checks: &[Check], kind: CheckKind) -> Option<&Check> {
    checks.iter().find(|check| check.check == kind)
}

fn failing(checks: &[Check]) -> Vec<CheckKind> {
    let failing = checks.iter().filter(|check| !check.holds);
    failing.map(|check| check.check).collect()
}

/// Moves each fix that was not logged at the station to the north, by an amount that depends on its number.
fn moved(trace: &mut Trace, site: &Site, north_m: impl Fn(usize) -> f64) {
    const M_PER_DEG: f64 = 111_200.0;
    let station = site.station.unwrap();
    if let Positions::Geographic { lat_deg, lon_deg } = &mut trace.positions {
        let (east_m, all_north_m) = site.frame.places(lat_deg, lon_deg);
        let places = east_m.into_iter().zip(all_north_m);
        for (number, (lat_deg, (east_m, at_m))) in lat_deg.iter_mut().zip(places).enumerate() {
            if station.distance_m(Place::new(east_m, at_m)) > 3.0 {
                *lat_deg += north_m(number) / M_PER_DEG;
            }
        }
    }
}

#[test]
fn in_a_healthy_garden_every_check_holds() {
    for noise in [LogNoise::CENTIMETRES, LogNoise::DECIMETRES, LogNoise::METRES] {
        let Night { plan, trace, .. } = night(noise);
        let findings = found(&trace, &plan, CUT_WIDTH_M);
        assert_eq!(failing(&findings.checks), [], "{:#?}", findings.checks);
        assert!(findings.checks.len() >= 6, "{:#?}", findings.checks);
        let seen = inspect(&job(
            std::slice::from_ref(&trace),
            Some(&plan),
            &of_width(CUT_WIDTH_M),
        ))
        .unwrap();
        assert!(seen.checks.len() >= 4, "{:#?}", seen.checks);
        for check in &seen.checks {
            assert_eq!(Some(check), of_kind(&findings.checks, check.check));
        }
    }
}

#[test]
fn fixes_that_err_by_more_than_stated_widen_the_interval_and_limit_the_log() {
    let Night {
        plan,
        site,
        mut trace,
    } = night(LogNoise::CENTIMETRES);
    let right = found(&trace, &plan, CUT_WIDTH_M);
    // At the station it errs by a centimetre, on the lawn by four.
    moved(&mut trace, &site, |number| {
        let is_up = (number as u64).wrapping_mul(0x9e37_79b9_7f4a_7c15) >> 63 == 1;
        if is_up { 0.042 } else { -0.042 }
    });
    let findings = found(&trace, &plan, CUT_WIDTH_M);
    let check = of_kind(&findings.checks, CheckKind::FixesLeftOut).unwrap();
    assert!(!check.holds, "{check:?}");
    assert!(matches!(check.consequence, Some(Said::IntervalWider { times }) if times > 1.0));
    let width = |findings: &Findings| {
        let visited = findings.coverage.as_ref().unwrap().visited_fraction;
        visited.high.unwrap() - visited.low.unwrap()
    };
    assert!(width(&findings) > width(&right));
    assert_ne!(findings.log_verdict.level, LogLevel::Good);
}

#[test]
fn halves_of_a_log_that_lie_beside_each_other_are_seen() {
    let Night {
        plan,
        site,
        mut trace,
    } = night(LogNoise::CENTIMETRES);
    let half = trace.len() / 2;
    moved(&mut trace, &site, |number| if number < half { 0.0 } else { 0.3 });
    let findings = found(&trace, &plan, CUT_WIDTH_M);
    let check = of_kind(&findings.checks, CheckKind::HalvesOfLog).unwrap();
    assert!(!check.holds && (check.statistic - 0.3).abs() < 0.06, "{check:?}");
    assert_ne!(findings.log_verdict.level, LogLevel::Good);
}

#[test]
fn a_plan_at_whose_edges_no_turn_lies_is_not_believed() {
    let Night { plan, site, trace } = night(LogNoise::DECIMETRES);
    let grown = site.drawn_lawn.grown_by(3.0, Joins::Mitred).unwrap();
    let ring = |ring: Vec<Place>| ring.into_iter().map(|place| site.frame.to_geo(place)).collect();
    let rings = grown.rings().swap_remove(0).into_iter().map(ring).collect();
    let mut drawn = plan;
    let lawn = drawn
        .features
        .iter_mut()
        .find(|feature| feature.role == PlanRole::Lawn);
    lawn.unwrap().shape = PlanShape::Polygons(vec![GeoPolygon { rings }]);
    let findings = found(&trace, &drawn, CUT_WIDTH_M);
    let check = of_kind(&findings.checks, CheckKind::PlanPlace).unwrap();
    assert!(!check.holds, "{check:?}");
    assert!(
        findings
            .missed_pockets
            .iter()
            .all(|pocket| pocket.why == Said::CauseWithheld {})
    );
}

#[test]
fn an_edge_at_which_no_turn_lies_is_named() {
    let Night {
        mut plan,
        site,
        trace,
    } = night(LogNoise::CENTIMETRES);
    let (low, _) = site.drawn_lawn.bounds().unwrap();
    // The southernmost corner is drawn a metre too far out.
    plan.for_each_point(|point| {
        let at = site.frame.to_place(*point);
        if at.north_m < low.north_m + 0.01 {
            *point = site.frame.to_geo(Place::new(at.east_m, at.north_m - 1.0));
        }
    });
    let findings = found(&trace, &plan, CUT_WIDTH_M);
    let check = of_kind(&findings.checks, CheckKind::TurnsAtEdges).unwrap();
    assert!(!check.holds, "{:#?}", findings.checks);
    assert!(
        matches!(check.consequence, Some(Said::EdgeInside { turns, .. }) if turns > 20),
        "{check:?}"
    );
    // A plan that is displaced as a whole is moved first.
    let aside = off(&night(LogNoise::CENTIMETRES).plan, &site.frame, 0.8, -0.6, 0.0);
    assert_eq!(failing(&found(&trace, &aside, CUT_WIDTH_M).checks), []);
}

#[test]
fn a_machine_that_drives_otherwise_than_its_model_is_seen() {
    let Night { plan, mut trace, .. } = night(LogNoise::CENTIMETRES);
    if let Positions::Geographic { lat_deg, .. } = &mut trace.positions {
        // It weaves by 22 cm to either side, once in ten metres.
        for (lat_deg, time_s) in lat_deg.iter_mut().zip(&trace.time_s) {
            *lat_deg += 2e-6 * (time_s * std::f64::consts::TAU / 25.0).sin();
        }
    }
    let checks = found(&trace, &plan, CUT_WIDTH_M).checks;
    let check = of_kind(&checks, CheckKind::DrawnGarden).unwrap();
    assert!(!check.holds && check.statistic < 0.0, "{check:?}");
}

#[test]
fn counts_that_contradict_each_other_are_both_in_the_interval() {
    let Night { plan, trace, .. } = night(LogNoise::CENTIMETRES);
    let (traces, settings) = ([trace], of_width(CUT_WIDTH_M));
    let survey = Survey::of(&job(&traces, Some(&plan), &settings)).unwrap();
    let counted = CoverageCount::of(&survey).unwrap();
    let right = Estimate::of_fraction(counted.visited_fraction(), 0.001);
    let wrong = Estimate::of_fraction(counted.visited_fraction() - 0.05, 0.001);
    let made = |visited| {
        let mut checks = Checks::default();
        checks.extend(count::cell_sum(&counted.squares(), visited));
        checks.extend(count::as_logged(&survey, &counted, visited));
        let widened = checks.widened(visited, counted.as_logged_fraction());
        (failing(&checks.into_findings()), widened)
    };
    assert_eq!(made(right), (vec![], right));
    let (failing, widened) = made(wrong);
    assert_eq!(failing, [CheckKind::CellSum, CheckKind::AsLogged]);
    assert!(widened.low == wrong.low && widened.high >= Some(counted.as_logged_fraction()));
    assert!(widened.high >= Some(counted.visited_fraction()));

    let by_path = Estimate::of_fraction(0.95, 0.005);
    let road = |visited_fraction| AsLogged {
        visited_fraction,
        sd_fraction: 0.01,
    };
    assert!(count::two_roads(by_path, road(0.93)).0.holds);
    let (check, _) = count::two_roads(by_path, road(0.90));
    assert!(!check.holds && matches!(check.consequence, Some(Said::WaysDisagree { .. })));
}

#[test]
fn claims_that_a_silence_or_the_map_contradicts_are_seen() {
    let Night { plan, trace, .. } = night_of(&Machine::default(), LogNoise::CENTIMETRES, |sampling| {
        sampling.outages = vec![TimeWindow {
            start_s: 1500.0,
            end_s: 1560.0,
        }];
    });
    let findings = found(&trace, &plan, CUT_WIDTH_M);
    let (traces, settings) = ([trace], of_width(CUT_WIDTH_M));
    let survey = Survey::of(&job(&traces, Some(&plan), &settings)).unwrap();
    let gap = survey.tracks[0]
        .gaps
        .iter()
        .find(|gap| gap.end_s - gap.start_s > 50.0)
        .unwrap();
    let kept = &survey.tracks[0].kept;
    let before = kept.place(kept.time_s.partition_point(|time_s| *time_s < gap.start_s));
    assert!(
        claims::silences(&survey, &findings.missed_pockets)
            .unwrap()
            .0
            .holds
    );
    let (check, _) = claims::silences(&survey, &[pocket(before, 1.5)]).unwrap();
    assert!(
        !check.holds && matches!(check.consequence, Some(Said::HiddenBySilence { .. })),
        "{check:?}"
    );

    let verdict = &findings.log_verdict;
    let not_yet = |widest_m| NotYetPocket {
        id: "N1".to_owned(),
        area_m2: 1.0,
        widest_m,
        lat: None,
        lon: None,
        east_m: 0.0,
        north_m: 0.0,
        outline: Vec::new(),
        chance_fraction: 0.3,
        hours_to_decide: None,
        why: Said::NotShown {},
        tape: Vec::new(),
    };
    let shown_m = verdict.smallest_findable_width_m;
    assert!(claims::shown_ground(verdict, &[not_yet(shown_m)], &[]).0.holds);
    assert!(
        !claims::shown_ground(verdict, &[not_yet(1.1 * shown_m)], &[])
            .0
            .holds
    );
}

fn pocket(place: Place, widest_m: f64) -> MissedPocket {
    MissedPocket {
        id: "M1".to_owned(),
        area_m2: widest_m * widest_m,
        widest_m,
        lat: None,
        lon: None,
        east_m: place.east_m,
        north_m: place.north_m,
        outline: Vec::new(),
        certainty: None,
        chance_fraction: 0.0,
        visited_fraction: 0.0,
        causes: None,
        next_look: None,
        why: Said::NotShown {},
        tape: Vec::new(),
        suggestion_ids: Vec::new(),
    }
}

#[test]
fn a_check_that_holds_changes_nothing_and_one_that_fails_only_widens() {
    let visited = Estimate {
        estimate: 0.95,
        low: Some(0.94),
        high: Some(0.97),
    };
    const AS_LOGGED_FRACTION: f64 = 0.98;
    let all = [
        Follows::Nothing,
        Follows::Holds { fraction: 0.9 },
        Follows::Times { times: 1.5 },
        Follows::TimesAndAsLogged { times: 1.0 },
        Follows::Adds { sd_fraction: 0.02 },
    ];
    for follows in all {
        let widened = |statistic| {
            let mut checks = Checks::default();
            let check = Check::of(
                CheckKind::CellSum,
                statistic,
                (None, Some(1.0)),
                Said::NotShown {},
            );
            checks.extend(Some((check, follows)));
            checks.widened(visited, AS_LOGGED_FRACTION)
        };
        assert_eq!(widened(0.5), visited);
        let wider = widened(2.0);
        assert!(
            wider.low <= visited.low && wider.high >= visited.high,
            "{wider:?}"
        );
        assert_eq!(wider == visited, follows == Follows::Nothing);
    }
}

#[test]
fn the_published_table_has_every_check_with_the_range_of_the_code() {
    let table = include_str!("../../../docs/checks.md");
    let row = |kind: CheckKind| {
        let name = serde_json::to_value(kind).unwrap();
        let head = format!("| `{}` |", name.as_str().unwrap());
        let mut rows = table.lines().filter(|line| line.starts_with(&head));
        rows.next().unwrap_or_else(|| panic!("no row {head}"))
    };
    let ranges = |kind: CheckKind| match kind {
        CheckKind::FixesLeftOut => vec![format!("up to {}", left_out::MOST_RATIO)],
        CheckKind::HalvesOfLog => vec![
            format!("{} m", positions::HALVES_M),
            format!("{} standard deviations", positions::HALVES_SDS),
        ],
        CheckKind::PlanPlace => vec![
            format!("from {}", plan_fit::LEAST_EXPLAINED),
            format!("from {}", log_findings::TOLD_FRACTION),
        ],
        CheckKind::TurnsAtEdges => vec![format!("{} m", plan_fit::DISPLACED_M), "up to 1".to_owned()],
        CheckKind::DrawnGarden => vec![format!("ln {}", ground::LEGS_ALIKE)],
        CheckKind::CellSum | CheckKind::AsLogged => vec!["within the interval".to_owned()],
        CheckKind::TwoRoads => vec![format!("up to {}", calibrate::CONFLICT)],
        CheckKind::Silences => vec![
            format!("up to {}", luck::MISSED_CHANCE_FRACTION),
            format!("from {}", unseen::UNSEEN_CHANCE),
        ],
        CheckKind::ShownGround => vec!["the verdict's width".to_owned()],
    };
    for kind in CheckKind::ALL {
        for range in ranges(kind) {
            assert!(row(kind).contains(&range), "{range} in {}", row(kind));
        }
    }
}
