//! Benches of the reasons: stuck spots among a summer's halts, and luck.
#![allow(missing_docs)]

use criterion::{Criterion, criterion_group, criterion_main};
use rand::{RngExt, SeedableRng};
use rand_chacha::ChaCha8Rng;
use std::hint::black_box;
use tussock_coverage::luck::{Drive, MIDDLE_SHARE, Pattern, pattern};
use tussock_diagnose::stuck::stuck_spots;
use tussock_locate::{Halt, HaltPlace, Kept, NoiseEstimate, PathMethod, Track};
use tussock_plane::{Leg, LegIndex};
use tussock_types::{NoiseSource, Place};

const SEED: u64 = 20_260_503;
const SIDE_M: f64 = 40.0;

fn reasons(criterion: &mut Criterion) {
    let mut random = ChaCha8Rng::seed_from_u64(SEED);
    let mut anywhere = || Place::new(random.random_range(0.0..SIDE_M), random.random_range(0.0..SIDE_M));
    let legs: Vec<Leg> = (0..20_000)
        .map(|number| Leg {
            from: anywhere(),
            to: anywhere(),
            start_s: f64::from(number) * 60.0,
            end_s: f64::from(number) * 60.0 + 50.0,
        })
        .collect();
    let halts: Vec<Halt> = (1..=2_000)
        .map(|number| Halt {
            place: anywhere(),
            start_s: f64::from(number) * 600.0,
            end_s: f64::from(number) * 600.0 + 200.0,
            at: HaltPlace::Elsewhere,
            radius_m: 0.1,
            came_from: Some(anywhere()),
        })
        .collect();
    let track = Track {
        machine: String::new(),
        pieces: Vec::new(),
        halts,
        smooths: false,
        stays: Vec::new(),
        gaps: Vec::new(),
        steps: Vec::new(),
        carried: Vec::new(),
        method: PathMethod::Legs,
        noise: NoiseEstimate {
            white_m: 0.02,
            drift_m: Some(0.02),
            drift_rate_m2_per_s: 1e-6,
            drift_time_s: None,
            source: NoiseSource::StationScatter,
        },
        reckoned_drift: tussock_locate::ReckonedDrift::Measured { drift_m: 0.0 },
        period_s: 1.0,
        speed_mps: Some(0.4),
        fixes_used: 0,
        gated_quality: 0,
        gated_jumps: 0,
        station: None,
        outings: None,
        span_s: Some((0.0, 1_300_000.0)),
        read_s: Some((0.0, 1_300_000.0)),
        kept: Kept::default(),
        anchored: None,
        bent: None,
    };
    let directions: Vec<(f64, f64)> = legs
        .iter()
        .map(|leg| (leg.to.east_m - leg.from.east_m, leg.to.north_m - leg.from.north_m))
        .collect();
    let index = LegIndex::build(legs);
    let tracks = [track];
    let mut group = criterion.benchmark_group("reasons");
    group.sample_size(10);
    group.bench_function("stuck spots of 2,000 halts", |bench| {
        bench.iter(|| stuck_spots(black_box(&tracks), &index, 120.0));
    });
    group.bench_function("lanes or not, 20,000 legs", |bench| {
        bench.iter(|| pattern(black_box(&directions).iter().copied()));
    });
    let drive = Drive {
        lawn_m2: 1500.0,
        path_m: 11_520.0,
        cut_width_m: 0.22,
        speed_mps: 0.4,
        pattern: Pattern::Roaming,
        place_share: MIDDLE_SHARE,
    };
    group.bench_function("luck of a pocket", |bench| {
        bench.iter(|| {
            let drive = black_box(drive);
            (
                drive.chance_fraction(1.4),
                drive.decisive_width_m(),
                drive.hours_to_decide(1.4),
            )
        });
    });
    group.finish();
}

criterion_group!(benches, reasons);
criterion_main!(benches);
