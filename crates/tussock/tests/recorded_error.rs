//! The visited fraction under recorded errors of real receivers, added to drives whose truth is known.

use crate::known_night::{KnownNight, phones};
use tussock::{Job, analyse};
use tussock_simulate::LogNoise;
use tussock_simulate::gardens::GardenKind;

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
