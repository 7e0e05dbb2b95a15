//! How long does a simulated night take?

use criterion::{Criterion, criterion_group, criterion_main};
use std::hint::black_box;
use tussock_plane::Site;
use tussock_simulate::gardens::{GardenKind, Wish, invent_as};
use tussock_simulate::{
    Counting, Lanes, LogNoise, Machine, Pattern, Run, Sampling, Yard, gpx_bytes, sample, truth,
};

const GARDEN_SEED: u64 = 41;
const RUN_SEED: u64 = 42;

fn night(c: &mut Criterion) {
    let wish = Wish {
        area_m2: (1400.0, 1400.0),
        guide_share_fraction: Some(0.3),
        ..Wish::new(GardenKind::Islands)
    };
    let Ok((site, _)) = Site::build(&invent_as(&wish, GARDEN_SEED).ground) else {
        return;
    };
    let machine = Machine::default();
    let lanes = Machine {
        pattern: Pattern::Lanes(Lanes::new(0.18, 30.0, 0.01)),
        ..Machine::default()
    };
    let night = Run::new(8.0, RUN_SEED);
    let Ok(yard) = Yard::new(&site, machine.past_boundary_m) else {
        return;
    };
    c.bench_function("yard of 1,400 m2", |b| {
        b.iter(|| Yard::new(black_box(&site), machine.past_boundary_m))
    });
    c.bench_function("8 h roaming", |b| {
        b.iter(|| yard.drive(black_box(&machine), &night))
    });
    c.bench_function("8 h of lanes", |b| {
        b.iter(|| yard.drive(black_box(&lanes), &night))
    });
    let Ok(run) = yard.drive(&machine, &night) else {
        return;
    };
    let sampling = Sampling::geographic(1.0, LogNoise::CENTIMETRES, RUN_SEED, site.frame);
    c.bench_function("log of 28,801 fixes", |b| {
        b.iter(|| sample(black_box(&run), &sampling))
    });
    let trace = sample(&run, &sampling);
    c.bench_function("GPX of 28,801 fixes", |b| b.iter(|| gpx_bytes(black_box(&trace))));
    c.bench_function("truth at 5 cm", |b| {
        b.iter(|| truth(black_box(&run), &site, &Counting::new(0.22, 0.05)))
    });
}

criterion_group!(benches, night);
criterion_main!(benches);
