//! The visited fraction under errors of receivers that smooth, recorded and drawn, added to drives whose truth is known.

use crate::known_night::{KnownNight, phones};
use rand::SeedableRng;
use rand_chacha::ChaCha8Rng;
use rand_distr::{Distribution, StandardNormal};
use tussock::{Job, analyse};
use tussock_simulate::LogNoise;
use tussock_simulate::gardens::GardenKind;
use tussock_types::{ErrorSeries, math};

const SEEDS: [u64; 2] = [61, 62];
const KINDS: [GardenKind; 2] = [GardenKind::Convex, GardenKind::TwoRooms { passage_m: 1.6 }];

#[test]
fn recorded_errors_of_telephones_leave_the_answer_right_and_its_interval_true() {
    let (mut errors, mut as_logged, mut widths, mut held) = (Vec::new(), Vec::new(), Vec::new(), 0);
    for (name, series) in phones() {
        for (kind, seed) in KINDS.into_iter().zip(SEEDS) {
            let night = KnownNight::of(kind, seed);
            let true_fraction = night.true_fraction;
            let traces = [night.log(LogNoise::NONE, Some(&series))];
            let job = Job::new(&traces, &night.settings)
                .on(&night.plan)
                .without_advice();
            let findings = analyse(&job).expect("a drive on a plan");
            let coverage = findings.coverage.expect("the width is known");
            let visited = coverage.visited_fraction;
            let error = 100.0 * (visited.estimate - true_fraction);
            let (low, high) = (visited.low.unwrap_or(0.0), visited.high.unwrap_or(1.0));
            println!(
                "{name} {kind:?}: {error:+.2} points, {:.1} wide; as logged {:+.2}; {} spots",
                100.0 * (high - low),
                100.0 * (coverage.as_logged_fraction - true_fraction),
                findings.stuck_spots.len()
            );
            errors.push(error.abs());
            as_logged.push(100.0 * (coverage.as_logged_fraction - true_fraction).abs());
            widths.push(100.0 * (high - low));
            held += usize::from((low..=high).contains(&true_fraction));
            assert!(findings.stuck_spots.is_empty(), "{:?}", findings.stuck_spots);
        }
    }
    let mean = |values: &[f64]| values.iter().sum::<f64>() / values.len() as f64;
    assert!(errors.iter().all(|error| *error < 2.5), "{errors:?}");
    assert!(
        mean(&errors) < mean(&as_logged),
        "{errors:?}, as logged {as_logged:?}"
    );
    assert!(mean(&widths) < 8.0, "{widths:?}");
    assert!(held >= 3, "{held} of 4 intervals");
}

/// Two equal filters of the first order one after the other (Matern 3/2), one value a second.
fn second_order(sd_m: f64, time_s: f64, seed: u64) -> ErrorSeries {
    const LASTS_S: usize = 4 * 3600;
    const FORGETS_S: usize = 200;
    let keep = math::exp(-(3.0_f64.sqrt()) / time_s);
    let gain_m = sd_m * ((1.0 - keep * keep).powi(3) / (1.0 + keep * keep)).sqrt();
    let mut dice = ChaCha8Rng::seed_from_u64(seed);
    let mut axis_m = || {
        let (mut once_m, mut twice_m) = (0.0, 0.0);
        let mut values_m = Vec::new();
        for _ in 0..LASTS_S + FORGETS_S {
            let push: f64 = StandardNormal.sample(&mut dice);
            once_m = keep * once_m + gain_m * push;
            twice_m = keep * twice_m + once_m;
            values_m.push(twice_m);
        }
        values_m.split_off(FORGETS_S)
    };
    ErrorSeries {
        time_s: (0..LASTS_S as u32).map(f64::from).collect(),
        east_m: axis_m(),
        north_m: axis_m(),
    }
}

/// Errors that are over within seconds are neither white nor a slow drift; taken for such, these cost 7 to 36 points on the drift grid.
#[test]
fn errors_that_are_over_within_seconds_leave_the_answer_right_and_its_interval_true() {
    let first_order = LogNoise {
        white_m: 0.1,
        drift_m: 1.0,
        drift_time_s: 10.0,
    };
    let laws = [
        (
            "0.1 m, second order, 3 s",
            LogNoise::NONE,
            Some(second_order(0.1, 3.0, 81)),
        ),
        (
            "1 m, second order, 3 s",
            LogNoise::NONE,
            Some(second_order(1.0, 3.0, 82)),
        ),
        ("1 m, first order, 10 s", first_order, None),
    ];
    let mut held = 0;
    for (law, noise, series) in laws {
        for (kind, seed) in KINDS.into_iter().zip(SEEDS) {
            let night = KnownNight::of(kind, seed);
            let traces = [night.log(noise, series.as_ref())];
            let job = Job::new(&traces, &night.settings)
                .on(&night.plan)
                .without_advice();
            let findings = analyse(&job).expect("a drive on a plan");
            let visited = findings.coverage.expect("the width is known").visited_fraction;
            println!("{law}, {kind:?}: {visited:?}, true {}", night.true_fraction);
            assert!(
                (visited.estimate - night.true_fraction).abs() < 0.03,
                "{law}, {kind:?}: {visited:?} for {}",
                night.true_fraction
            );
            let interval = visited.low.unwrap_or(0.0)..=visited.high.unwrap_or(1.0);
            held += usize::from(interval.contains(&night.true_fraction));
        }
    }
    assert!(held >= 5, "{held} of 6 intervals");
}
