//! The visited fraction under recorded errors of real receivers, added to drives whose truth is known.

use tussock::{Advice, Job, analyse};
use tussock_ingest::read_error_series;
use tussock_plane::Site;
use tussock_simulate::gardens::{GardenKind, Wish, invent_as};
use tussock_simulate::{Counting, LogNoise, Machine, Run, Sampling, sample, simulate, truth};
use tussock_types::{FixQuality, LimitSettings, Settings};

const SEEDS: [u64; 2] = [61, 62];
const KINDS: [GardenKind; 2] = [GardenKind::Convex, GardenKind::TwoRooms { passage_m: 1.6 }];
const HOURS: f64 = 8.0;
const CUT_WIDTH_M: f64 = 0.22;

#[test]
fn recorded_errors_of_telephones_leave_the_answer_right_and_its_interval_true() {
    let (mut errors, mut as_logged, mut widths, mut held) = (Vec::new(), Vec::new(), Vec::new(), 0);
    for (name, text) in [
        (
            "phone-a.csv",
            include_str!("../../../fixtures/errors/phone-a.csv"),
        ),
        (
            "phone-b.csv",
            include_str!("../../../fixtures/errors/phone-b.csv"),
        ),
    ] {
        let series = read_error_series(name, text.as_bytes(), &LimitSettings::default()).expect("a series");
        for (kind, seed) in KINDS.into_iter().zip(SEEDS) {
            let garden = invent_as(&Wish::new(kind), seed);
            let (site, _) = Site::build(&garden.plan).expect("invented plans are sound");
            let machine = Machine::default();
            let run = simulate(&site, &machine, &Run::new(HOURS, seed)).expect("there is room");
            let trace = sample(
                &run,
                &Sampling {
                    recorded: Some(series.clone()),
                    quality: FixQuality::Unknown,
                    ..Sampling::geographic(1.0, LogNoise::NONE, seed, site.frame)
                },
            );
            let true_fraction = truth(&run, &site, &Counting::new(CUT_WIDTH_M, 0.05)).visited_fraction;
            let mut settings = Settings::default();
            settings.machine.cut_width_m = Some(CUT_WIDTH_M);
            settings.machine.body_width_m = Some(-2.0 * machine.past_boundary_m);
            let traces = [trace];
            let mut job = Job::new(&traces, &settings);
            job.plan = Some(&garden.plan);
            job.advice = Advice::LeftOut;
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
