//! Changes that go together: two yards, each behind a gap that the machine hardly ever finds.

use crate::compared::{feature, frame, ring};
use crate::nights::{driven, job, logged, of_width};
use tussock::{Advice, Job, analyse, built};
use tussock_plane::{Region, Site, rasterise};
use tussock_simulate::{Counting, LogNoise, Machine, truth};
use tussock_types::{Findings, Place, Plan, PlanRole, PlanShape, SuggestionKind};

const SEED: u64 = 4;
const HOURS: f64 = 16.0;
const CUT_WIDTH_M: f64 = 0.22;
const TRUTH_CELL_M: f64 = 0.05;
const RUNS: u64 = 12;

/// A lawn of 20 m with a yard to either side, behind gaps 0.65 m wide.
fn two_yards() -> Plan {
    let (low_m, high_m) = (9.65, 10.3);
    let corners = [
        (0.0, 0.0),
        (20.0, 0.0),
        (20.0, low_m),
        (22.0, low_m),
        (22.0, 6.0),
        (29.0, 6.0),
        (29.0, 14.0),
        (22.0, 14.0),
        (22.0, high_m),
        (20.0, high_m),
        (20.0, 20.0),
        (0.0, 20.0),
        (0.0, high_m),
        (-2.0, high_m),
        (-2.0, 14.0),
        (-8.0, 14.0),
        (-8.0, 6.0),
        (-2.0, 6.0),
        (-2.0, low_m),
        (0.0, low_m),
    ];
    let station = PlanShape::Point(frame().to_geo(Place::new(10.0, 0.6)));
    Plan {
        features: vec![
            feature(0, PlanRole::Lawn, "lawn", ring(&corners)),
            feature(1, PlanRole::Station, "station", station),
        ],
    }
}

fn advised(plan: &Plan, site: &Site) -> Findings {
    let run = driven(site, &Machine::default(), HOURS, SEED);
    let trace = logged(&run, site, 1.0, LogNoise::CENTIMETRES, SEED);
    let settings = of_width(CUT_WIDTH_M);
    analyse(&Job {
        advice: Advice::Given,
        ..job(std::slice::from_ref(&trace), Some(plan), &settings)
    })
    .unwrap()
}

/// Mean ground of all pockets that runs of the true machine drive over, as a part of it.
fn measured_fraction(plan: &Plan, site: &Site, pockets: &Region) -> f64 {
    let (after, _) = Site::build_in(plan, site.frame).unwrap();
    let fraction = |number: u64| {
        let run = driven(&after, &Machine::default(), HOURS, 1_000 + number);
        let truth = truth(&run, site, &Counting::new(CUT_WIDTH_M, TRUTH_CELL_M));
        let mut lawn = rasterise(pockets, &truth.lawn.grid);
        lawn.and_in_place(&truth.lawn);
        let mut visited = lawn.clone();
        visited.and_in_place(&truth.visited);
        visited.count() as f64 / lawn.count() as f64
    };
    (0..RUNS).map(fraction).sum::<f64>() / RUNS as f64
}

#[test]
fn two_guide_runs_go_together_and_the_second_counts_the_first() {
    let plan = two_yards();
    let (site, _) = Site::build(&plan).unwrap();
    let findings = advised(&plan, &site);
    let suggestions = findings.suggestions.as_ref().unwrap();
    let steps = &findings.change_set;
    let named = |id: &str| suggestions.iter().find(|one| one.id == id).unwrap();
    assert_eq!(steps.len(), 2, "{steps:?}");
    let kinds: Vec<SuggestionKind> = steps.iter().map(|step| named(&step.id).kind).collect();
    assert_eq!(kinds, [SuggestionKind::GuideRun; 2]);
    // What each adds is counted after the one before it, and both together have no more outings than there are.
    let whole_m2: f64 = findings.missed_pockets.iter().map(|pocket| pocket.area_m2).sum();
    let gained = |step: usize| steps[step].gained_m2 / whole_m2;
    let rise = steps[1].pockets_fraction_after.estimate - steps[0].pockets_fraction_after.estimate;
    assert!((gained(1) - rise).abs() < 1e-9, "{steps:?}");
    let shares = steps
        .iter()
        .filter_map(|step| named(&step.id).outing_share_fraction);
    assert!(shares.sum::<f64>() <= 1.0 + 1e-9);
    // Built one after the other and driven again by the machine that made the log.
    let outlines = findings
        .missed_pockets
        .iter()
        .map(|pocket| pocket.outline.clone());
    let pockets = Region::from_rings(outlines.collect()).unwrap();
    let mut changed = plan.clone();
    for step in steps {
        changed = built(&changed, &site.frame, named(&step.id));
        let fraction = measured_fraction(&changed, &site, &pockets);
        let predicted = step.pockets_fraction_after.estimate;
        assert!((fraction - predicted).abs() <= 0.15, "{fraction} for {predicted}");
    }
    // Guide runs come in sizes, the cheapest first, and the one suggested is among them.
    let first = named(&steps[0].id);
    let ladder = first.ladder.as_ref().unwrap();
    assert!(
        ladder.len() >= 2 && ladder.is_sorted_by(|a, b| a.size_m <= b.size_m),
        "{ladder:?}"
    );
    assert!(
        ladder
            .iter()
            .any(|rung| (rung.size_m, rung.outing_share_fraction)
                == (first.wire_m, first.outing_share_fraction))
    );
}
