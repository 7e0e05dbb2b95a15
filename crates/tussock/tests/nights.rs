//! The parts of nights in tests: a garden, a machine on its ground, a log, and a job.

use std::sync::atomic::{AtomicUsize, Ordering};
use tussock::{Advice, Job, analyse};
use tussock_plane::Site;
use tussock_simulate::gardens::{GardenKind, InventedGarden, Surprise, Wish, invent_as};
use tussock_simulate::{LogNoise, Machine, Run, Sampling, TrueRun, sample, simulate};
use tussock_types::{Findings, Plan, Settings, Trace};

/// Settings with only the cutting width.
pub(crate) fn of_width(cut_width_m: f64) -> Settings {
    let mut settings = Settings::default();
    settings.machine.cut_width_m = Some(cut_width_m);
    settings
}

/// A job with the seed 1, without advice, and without facts about files.
pub(crate) fn job<'a>(traces: &'a [Trace], plan: Option<&'a Plan>, settings: &'a Settings) -> Job<'a> {
    Job {
        traces,
        inputs: &[],
        plan,
        settings,
        seed: 1,
        advice: Advice::LeftOut,
        progress: None,
    }
}

/// What is found in one log, given only its plan and the cutting width.
pub(crate) fn found(trace: &Trace, plan: &Plan, cut_width_m: f64) -> Findings {
    let settings = of_width(cut_width_m);
    analyse(&job(std::slice::from_ref(trace), Some(plan), &settings)).expect("a night can be analysed")
}

/// A garden of a size, with a surprise.
pub(crate) fn invented(
    kind: GardenKind,
    area_m2: (f64, f64),
    surprise: Surprise,
    seed: u64,
) -> InventedGarden {
    let wish = Wish {
        area_m2,
        surprise,
        ..Wish::new(kind)
    };
    invent_as(&wish, seed)
}

/// The garden as drawn and as the machine meets it, on one plane.
pub(crate) fn sites(plan: &Plan, ground: &Plan) -> (Site, Site) {
    let (site, _) = Site::build(plan).expect("invented plans are sound");
    let (ground, _) = Site::build_in(ground, site.frame).expect("the ground is sound");
    (site, ground)
}

/// A night on a ground.
pub(crate) fn driven(ground: &Site, machine: &Machine, hours: f64, seed: u64) -> TrueRun {
    simulate(ground, machine, &Run::new(hours, seed)).expect("there is room to drive")
}

/// What a logger recorded of it, in degrees.
pub(crate) fn logged(run: &TrueRun, site: &Site, period_s: f64, noise: LogNoise, seed: u64) -> Trace {
    sample(run, &Sampling::geographic(period_s, noise, seed, site.frame))
}

/// Runs jobs on all cores, with results in order.
pub(crate) fn in_parallel<T: Send>(count: usize, job: impl Fn(usize) -> T + Sync) -> Vec<T> {
    let next = AtomicUsize::new(0);
    let threads = std::thread::available_parallelism().map_or(2, usize::from);
    let mine = || {
        let numbers = std::iter::repeat_with(|| next.fetch_add(1, Ordering::Relaxed));
        let own = numbers.take_while(|number| *number < count);
        own.map(|number| (number, job(number))).collect::<Vec<_>>()
    };
    let mut results: Vec<(usize, T)> = std::thread::scope(|scope| {
        let workers: Vec<_> = (0..threads).map(|_| scope.spawn(mine)).collect();
        let done = workers
            .into_iter()
            .map(|worker| worker.join().expect("no garden panics"));
        done.flatten().collect()
    });
    results.sort_by_key(|(number, _)| *number);
    results.into_iter().map(|(_, result)| result).collect()
}
