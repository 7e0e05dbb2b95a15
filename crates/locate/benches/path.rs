//! Benches of locating, stage by stage: a night of 28,800 fixes, precise and poor.
#![allow(missing_docs, clippy::unwrap_used)]

use criterion::{Criterion, criterion_group, criterion_main};
use std::hint::black_box;
use tussock_locate::segment::{StepLaw, segment};
use tussock_locate::{Surroundings, blocks, halts, kalman, locate, noise, outlier_filter};
use tussock_plane::Site;
use tussock_simulate::gardens::{GardenKind, invent};
use tussock_simulate::{LogNoise, Machine, Run, Sampling, sample, simulate};
use tussock_types::{Positions, Settings};

const GARDEN_SEED: u64 = 3;
const RUN_SEED: u64 = 5;
const NOISE_SEED: u64 = 9;

fn stages(criterion: &mut Criterion) {
    let plan = invent(GardenKind::Convex, GARDEN_SEED);
    let (site, _) = Site::build(&plan).unwrap();
    let run = simulate(&site, &Machine::default(), &Run::new(8.0, RUN_SEED)).unwrap();
    let settings = Settings::default();
    let mut group = criterion.benchmark_group("locate");
    group.sample_size(20);
    for (name, log_noise) in [
        ("centimetres", LogNoise::CENTIMETRES),
        ("metres", LogNoise::METRES),
    ] {
        let trace = sample(
            &run,
            &Sampling::geographic(1.0, log_noise, NOISE_SEED, site.frame),
        );
        let Positions::Geographic { lat_deg, lon_deg } = &trace.positions else {
            unreachable!()
        };
        let (east_m, north_m) = site.frame.places(lat_deg, lon_deg);
        group.bench_function(format!("gate, {name}"), |bench| {
            bench.iter(|| {
                outlier_filter::gate(
                    black_box(&trace),
                    &east_m,
                    &north_m,
                    &settings.positions,
                    2.0,
                    3.0,
                )
            });
        });
        let kept = outlier_filter::gate(&trace, &east_m, &north_m, &settings.positions, 2.0, 3.0).kept;
        let period_s = noise::usual_period_s(&kept);
        group.bench_function(format!("noise, {name}"), |bench| {
            bench.iter(|| {
                let rough = noise::roughness(black_box(&kept), period_s);
                let speed_mps = noise::usual_speed_mps(&kept, rough.white_m, 0.0);
                let rests = halts::rests(&kept, rough.white_m, 60.0);
                noise::estimate(
                    &kept,
                    &rests,
                    rough,
                    period_s,
                    speed_mps,
                    &noise::Claims::of(&trace),
                )
            });
        });
        let track = locate(
            &trace,
            &east_m,
            &north_m,
            Surroundings::of(&settings)
                .on(Some(&site.lawn))
                .with_station(site.station),
        );
        let speed_mps = track.speed_mps.unwrap();
        let blocks = blocks::blocks(&kept, 0..kept.len(), 0.9);
        let law = StepLaw::new(&track.noise, speed_mps, blocks::median_step_s(&blocks));
        group.bench_function(format!("legs and halts, {name}"), |bench| {
            bench.iter(|| segment(black_box(&blocks), &law));
        });
        group.bench_function(format!("smoothing of one axis, {name}"), |bench| {
            let model = kalman::Model {
                acceleration_m2_per_s4: 0.05,
                measurement_m2: track.noise.white_m.powi(2),
            };
            let first = kalman::State {
                position_m: kept.east_m[0],
                velocity_mps: 0.0,
                covariance: [1.0, 0.0, 1.0],
            };
            bench.iter(|| kalman::smooth(black_box(&kept.time_s), &kept.east_m, first, model));
        });
        group.bench_function(format!("all, {name}"), |bench| {
            bench.iter(|| {
                locate(
                    black_box(&trace),
                    &east_m,
                    &north_m,
                    Surroundings::of(&settings)
                        .on(Some(&site.lawn))
                        .with_station(site.station),
                )
            });
        });
    }
    group.finish();
}

criterion_group!(benches, stages);
criterion_main!(benches);
