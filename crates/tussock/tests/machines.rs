//! Several machines, no plan, no width: the shapes of an answer.

use crate::nights::job;
use tussock::analyse;
use tussock_plane::Site;
use tussock_simulate::gardens::{GardenKind, Wish, invent_as};
use tussock_simulate::{LogNoise, Machine, Run, Sampling, sample, simulate};
use tussock_types::{Findings, OutlineSource, Plan, Said, Settings, Trace};

const SEED: u64 = 41;
const CUT_WIDTH_M: f64 = 0.22;

/// Two machines in one garden at the same time.
fn two_machines() -> (Plan, Vec<Trace>) {
    let plan = invent_as(&Wish::new(GardenKind::Convex), SEED).plan;
    let (site, _) = Site::build(&plan).expect("an invented plan is sound");
    let traces = (0..2)
        .map(|number| {
            let run = simulate(&site, &Machine::default(), &Run::new(2.0, SEED + number)).expect("it drives");
            let mut sampling =
                Sampling::geographic(1.0, LogNoise::CENTIMETRES, SEED + 10 + number, site.frame);
            sampling.machine = format!("machine-{}", number + 1);
            sample(&run, &sampling)
        })
        .collect();
    (plan, traces)
}

fn found(traces: &[Trace], plan: Option<&Plan>, cut_width_m: Option<f64>) -> Findings {
    let mut settings = Settings::default();
    settings.machine.cut_width_m = cut_width_m;
    let job = job(traces, plan, &settings);
    analyse(&job).expect("the logs are sound")
}

fn visited_fraction(findings: &Findings) -> f64 {
    findings
        .coverage
        .as_ref()
        .expect("a width was given")
        .visited_fraction
        .estimate
}

#[test]
fn visits_of_two_machines_are_united() {
    let (plan, traces) = two_machines();
    let both = found(&traces, Some(&plan), Some(CUT_WIDTH_M));
    let alone: Vec<f64> = traces
        .iter()
        .map(|trace| {
            visited_fraction(&found(
                std::slice::from_ref(trace),
                Some(&plan),
                Some(CUT_WIDTH_M),
            ))
        })
        .collect();
    let united = visited_fraction(&both);
    assert!(united > alone[0].max(alone[1]) + 0.05, "{united} of {alone:?}");
    // Two independent random searches leave the product of what each leaves, except at edges and on the way home.
    let independent = 1.0 - (1.0 - alone[0]) * (1.0 - alone[1]);
    assert!(
        (united - independent).abs() < 0.05,
        "{united} against {independent}"
    );
    let machines: Vec<&str> = both.machines.iter().map(|machine| &machine.id[..]).collect();
    assert_eq!(machines, ["machine-1", "machine-2"]);
}

#[test]
fn areas_add_up_to_the_lawn() {
    let (plan, traces) = two_machines();
    let findings = found(&traces[..1], Some(&plan), Some(CUT_WIDTH_M));
    let areas = findings.coverage.as_ref().expect("a width was given");
    let sum = areas.visited_m2 + areas.missed_m2 + areas.not_yet_m2 + areas.unseen_m2 + areas.sliver_m2;
    assert!((sum - areas.lawn_m2).abs() < 1e-6 * areas.lawn_m2, "{areas:?}");
    let pockets: f64 = findings
        .missed_pockets
        .iter()
        .map(|pocket| pocket.area_m2)
        .sum::<f64>()
        + findings.not_yet.iter().map(|pocket| pocket.area_m2).sum::<f64>();
    assert!((pockets - areas.missed_m2 - areas.not_yet_m2).abs() < 1e-9 * areas.lawn_m2);
}

#[test]
fn without_a_plan_the_outline_is_drawn_from_the_trace() {
    let (plan, traces) = two_machines();
    let planned = found(&traces, Some(&plan), Some(CUT_WIDTH_M));
    let drawn = found(&traces, None, Some(CUT_WIDTH_M));
    assert_eq!(drawn.outline_source, OutlineSource::Trace);
    assert!(drawn.cautions.contains(&Said::OutlineFromDrive {}));
    let lawn_m2 = |findings: &Findings| findings.coverage.as_ref().expect("a width was given").lawn_m2;
    let ratio = lawn_m2(&drawn) / lawn_m2(&planned);
    assert!((0.95..1.03).contains(&ratio), "{ratio}");
}

#[test]
fn without_a_width_the_fraction_is_given_for_a_range_of_widths() {
    let (plan, traces) = two_machines();
    let findings = found(&traces, Some(&plan), None);
    assert!(findings.coverage.is_none() && findings.missed_pockets.is_empty());
    let rows = findings.by_width.expect("a row for each width");
    assert_eq!(
        (rows[0].cut_width_m, rows[rows.len() - 1].cut_width_m),
        (0.17, 0.35)
    );
    assert!(
        rows.windows(2)
            .all(|pair| pair[0].visited_fraction.estimate < pair[1].visited_fraction.estimate)
    );
}
