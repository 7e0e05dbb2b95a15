//! One garden: logged, advised, built, run again.

use super::family::{Family, Garden, member};
use crate::nights::{self, job, of_width};
use tussock::{Advice, Job, analyse, built};
use tussock_plane::{Region, Site, rasterise};
use tussock_simulate::{Counting, LogNoise, Machine, Run, Spell, TurnLaw, simulate, truth};
use tussock_types::{Estimate, Findings, Suggestion, SuggestionKind};

/// Cells of the truth.
const TRUTH_CELL_M: f64 = 0.05;

/// How the later machine differs from the one that made the log.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) enum Reality {
    /// In nothing.
    AsLogged,
    /// It turns like a mirror, give or take 30 degrees.
    Reflecting,
    /// It turns by 60 to 160 degrees from its heading.
    FromHeading,
    /// It is this much faster.
    Speed(f64),
    /// It uses guide runs this much.
    GuideUse(f64),
}

#[derive(Clone, Debug)]
pub(crate) struct Proof {
    pub(crate) kind: SuggestionKind,
    pub(crate) certainty: f64,
    pub(crate) pocket_m2: f64,
    pub(crate) lawn_m2: f64,
    pub(crate) pocket: Estimate,
    pub(crate) lawn: Estimate,
    /// Pocket and lawn of each run afterwards.
    pub(crate) after: Vec<(f64, f64)>,
    /// Gain, pocket close, lawn close, all three: fractions of the runs.
    pub(crate) rates: [f64; 4],
    /// Whether the interval of the pocket and of the lawn holds: fractions of the runs.
    pub(crate) holds: [f64; 2],
}

fn machine(garden: &Garden, reality: Reality, is_log: bool) -> Machine {
    let mut machine = Machine {
        speed_mps: garden.speed_mps,
        past_boundary_m: -garden.setback_m,
        roaming: Spell::Between {
            min_s: 3000.0,
            max_s: 4800.0,
        },
        ..Machine::default()
    };
    // Turn laws belong to the machine, including its log; speed and guide use change afterwards.
    match reality {
        Reality::Reflecting => machine.turn_law = TurnLaw::ReflectWithSpread { sd_deg: 30.0 },
        Reality::FromHeading => {
            machine.turn_law = TurnLaw::FromHeading {
                min_deg: 60.0,
                max_deg: 160.0,
            };
        }
        Reality::Speed(factor) if !is_log => machine.speed_mps *= factor,
        _ => {}
    }
    machine
}

pub(crate) fn logged(garden: &Garden, reality: Reality, noise: LogNoise, seed: u64) -> (Site, Findings) {
    let (site, _) = Site::build(&garden.plan).unwrap();
    let run = simulate(
        &site,
        &machine(garden, reality, true),
        &Run::new(garden.hours, seed),
    )
    .unwrap();
    let trace = nights::logged(&run, &site, 1.0, noise, seed + 7);
    let settings = of_width(garden.cut_width_m);
    let findings = analyse(&Job {
        advice: Advice::Given,
        ..job(std::slice::from_ref(&trace), Some(&garden.plan), &settings)
    })
    .unwrap();
    (site, findings)
}

/// The first suggestion, built and run again; `None` if there is none.
pub(crate) fn prove(
    family: Family,
    seed: u64,
    noise: LogNoise,
    reality: Reality,
    runs: u64,
) -> (Findings, Option<Proof>) {
    let garden = member(family, seed);
    let (site, findings) = logged(&garden, reality, noise, seed);
    let Some(best) = findings.suggestions.as_ref().and_then(|all| all.first()).cloned() else {
        return (findings, None);
    };
    let proof = of(&garden, &site, &findings, &best, reality, runs, seed);
    (findings, Some(proof))
}

fn of(
    garden: &Garden,
    site: &Site,
    findings: &Findings,
    best: &Suggestion,
    reality: Reality,
    runs: u64,
    seed: u64,
) -> Proof {
    let mut plan = built(&garden.plan, &site.frame, best);
    if let Reality::GuideUse(factor) = reality {
        for feature in &mut plan.features {
            feature.outing_share_fraction = feature.outing_share_fraction.map(|share| share * factor);
        }
    }
    let (after_site, _) = Site::build_in(&plan, site.frame).unwrap();
    let per_day = garden.hours;
    let hours = garden.hours * (1.0 + best.added_h_per_day.unwrap_or(0.0) / per_day);
    let pocket = findings
        .missed_pockets
        .iter()
        .find(|pocket| pocket.id == best.pocket_ids[0])
        .unwrap();
    let region = Region::from_rings(vec![pocket.outline.clone()]).unwrap();
    let predicted = &best.predicted;
    let (pocket_estimate, lawn_estimate) =
        (predicted.pocket_fraction_after, predicted.visited_fraction_after);
    let after: Vec<(f64, f64)> = (0..runs)
        .map(|number| {
            let run = simulate(
                &after_site,
                &machine(garden, reality, false),
                &Run::new(hours, 1000 * seed + 500 + number),
            )
            .unwrap();
            // Of the lawn as it was.
            let truth = truth(&run, site, &Counting::new(garden.cut_width_m, TRUTH_CELL_M));
            let mask = rasterise(&region, &truth.lawn.grid);
            let mut lawn = mask.clone();
            lawn.and_in_place(&truth.lawn);
            let mut visited = lawn.clone();
            visited.and_in_place(&truth.visited);
            (
                visited.count() as f64 / (lawn.count() as f64).max(1.0),
                truth.visited_fraction,
            )
        })
        .collect();
    let share = |holds: &dyn Fn(&(f64, f64)) -> bool| {
        after.iter().filter(|one| holds(one)).count() as f64 / after.len() as f64
    };
    let gains = |one: &(f64, f64)| one.0 - best.pocket_fraction_in_log > 0.2;
    let pocket_near = |one: &(f64, f64)| (one.0 - pocket_estimate.estimate).abs() <= 0.15;
    let lawn_near = |one: &(f64, f64)| (one.1 - lawn_estimate.estimate).abs() <= 0.05;
    let within =
        |value: f64, estimate: Estimate| estimate.low.unwrap() <= value && value <= estimate.high.unwrap();
    Proof {
        kind: best.kind,
        certainty: best.certainty.unwrap_or(0.0),
        pocket_m2: pocket.area_m2,
        lawn_m2: site.lawn.area_m2(),
        pocket: pocket_estimate,
        lawn: lawn_estimate,
        rates: [
            share(&gains),
            share(&pocket_near),
            share(&lawn_near),
            share(&|one| gains(one) && pocket_near(one) && lawn_near(one)),
        ],
        holds: [
            share(&|one| within(one.0, pocket_estimate)),
            share(&|one| within(one.1, lawn_estimate)),
        ],
        after,
    }
}
