//! Hours in which the receiver is several times as far off, and says so.

use crate::nights::{driven, in_parallel, invented, job, sites};
use tussock::analyse;
use tussock_simulate::gardens::{GardenKind, Surprise};
use tussock_simulate::{Counting, LogNoise, Machine, PoorSky, Sampling, TimeWindow, sample, truth};
use tussock_types::{FixQuality, Settings, Trace};

const SEEDS_FROM: u64 = 9400;
const HOURS: f64 = 8.0;
const CUT_WIDTH_M: f64 = 0.22;
const TRUTH_CELL_M: f64 = 0.03;
/// The factor over the usual error, for two hours.
const FACTOR: f64 = 4.0;

/// Errors of the visited fraction in points, with and without the receiver's statement, and whether the interval holds with
/// it.
fn outcome(noise: LogNoise, number: u64) -> (f64, f64, bool) {
    let seed = SEEDS_FROM + number;
    let garden = invented(
        GardenKind::ALL[(number % 5) as usize],
        (400.0, 1200.0),
        Surprise::None,
        seed,
    );
    let (site, ground) = sites(&garden.plan, &garden.ground);
    let machine = Machine {
        past_boundary_m: if number.is_multiple_of(2) { -0.15 } else { 0.05 },
        ..Machine::default()
    };
    let run = driven(&ground, &machine, HOURS, seed);
    let mut sampling = Sampling::geographic(1.0, noise, 1000 + seed, site.frame);
    sampling.poor_sky = vec![PoorSky {
        window: TimeWindow {
            start_s: 7200.0,
            end_s: 14_400.0,
        },
        error_factor: FACTOR,
        quality: FixQuality::Autonomous,
    }];
    let told = sample(&run, &sampling);
    let mut untold = told.clone();
    untold.hdop.fill(f32::NAN);
    let truth = truth(&run, &site, &Counting::new(CUT_WIDTH_M, TRUTH_CELL_M));
    let mut settings = Settings::default();
    settings.machine.cut_width_m = Some(CUT_WIDTH_M);
    settings.positions.max_hdop = 50.0;
    let found = |trace: &Trace| {
        let findings = analyse(&job(std::slice::from_ref(trace), Some(&garden.plan), &settings))
            .expect("a night can be analysed");
        let visited = findings
            .coverage
            .as_ref()
            .expect("the width is known")
            .visited_fraction;
        let (low, high) = visited.low.zip(visited.high).expect("an interval");
        (
            100.0 * (visited.estimate - truth.visited_fraction),
            low <= truth.visited_fraction && truth.visited_fraction <= high,
        )
    };
    let ((told_points, held), (untold_points, _)) = (found(&told), found(&untold));
    (told_points, untold_points, held)
}

/// Mean size of the errors, with and without the receiver's statement, and how many intervals hold.
fn sums(noise: LogNoise, gardens: u64) -> (f64, f64, usize) {
    let found = in_parallel(gardens as usize, |number| outcome(noise, number as u64));
    let mean = |of: fn(&(f64, f64, bool)) -> f64| {
        found.iter().map(|one| of(one).abs()).sum::<f64>() / gardens as f64
    };
    (
        mean(|one| one.0),
        mean(|one| one.1),
        found.iter().filter(|one| one.2).count(),
    )
}

#[test]
fn a_receiver_that_says_when_it_is_poor_is_believed() {
    // Of 10 gardens: 0.16 points with its statement and 0.47 without, 10 intervals hold.
    let (told_points, untold_points, held) = sums(LogNoise::DECIMETRES, 4);
    assert!(told_points < 0.4, "{told_points} points");
    assert!(
        told_points < untold_points,
        "{told_points} and {untold_points} points"
    );
    assert!(held >= 3, "{held} of 4");
}

#[test]
fn metre_logs_under_poor_sky_know_what_they_do_not_know() {
    // Of 10 gardens: 3.0 points with its statement and 8.4 without, 10 intervals hold.
    let (told_points, untold_points, held) = sums(LogNoise::METRES, 4);
    assert!(
        told_points < 0.6 * untold_points,
        "{told_points} and {untold_points} points"
    );
    assert!(held >= 3, "{held} of 4");
}
