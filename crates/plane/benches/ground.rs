//! Benches of the ground: masks of a lawn, and an index of legs of a night and of a month.
#![allow(clippy::disallowed_methods)] // the host's mathematics is the oracle here

use criterion::{BatchSize, Criterion, criterion_group, criterion_main};
use rand::{RngExt, SeedableRng};
use rand_chacha::ChaCha8Rng;
use std::hint::black_box;
use tussock_plane::{Frame, Leg, LegIndex, Region, outlines, rasterise};
use tussock_types::{GeoPoint, Grid, Place};

/// Seed of the driven legs.
const SEED_LEGS: u64 = 20_260_501;

/// A lawn with a wavy edge of 400 corners and a pond of 60.
fn lawn() -> Region {
    let wave = |count: u32, radius_m: f64, waves: f64, height: f64| -> Vec<Place> {
        (0..count)
            .map(|step| {
                let angle_rad = f64::from(step) / f64::from(count) * std::f64::consts::TAU;
                let radius_m = radius_m * (1.0 + height * (waves * angle_rad).cos());
                Place::new(radius_m * angle_rad.cos(), radius_m * angle_rad.sin())
            })
            .collect()
    };
    match Region::from_rings(vec![vec![wave(400, 21.0, 9.0, 0.08), wave(60, 3.0, 3.0, 0.1)]]) {
        Ok(region) => region,
        Err(error) => panic!("{error}"),
    }
}

/// Legs of half a metre that turn at random inside a square of 40 m.
fn legs(count: usize) -> Vec<Leg> {
    let mut random = ChaCha8Rng::seed_from_u64(SEED_LEGS);
    let mut place = Place::new(0.0, 0.0);
    let mut heading_rad: f64 = 0.3;
    (0..count)
        .map(|number| {
            let from = place;
            let ahead = Place::new(
                from.east_m + 0.5 * heading_rad.cos(),
                from.north_m + 0.5 * heading_rad.sin(),
            );
            if ahead.east_m.abs() > 20.0 || ahead.north_m.abs() > 20.0 {
                heading_rad = random.random_range(0.0..std::f64::consts::TAU);
            } else {
                place = ahead;
            }
            let start_s = number as f64;
            Leg {
                from,
                to: place,
                start_s,
                end_s: start_s + 1.0,
            }
        })
        .collect()
}

fn ground(criterion: &mut Criterion) {
    let lawn = lawn();
    // 1,600 x 1,600 cells of 3 cm.
    let grid = Grid {
        east_min_m: -24.0,
        north_min_m: -24.0,
        cell_m: 0.03,
        columns: 1600,
        rows: 1600,
    };
    criterion.bench_function("rasterise 2.56 million cells", |bench| {
        bench.iter(|| rasterise(black_box(&lawn), black_box(&grid)));
    });
    let mask = rasterise(&lawn, &grid);
    criterion.bench_function("outlines of 2.56 million cells", |bench| {
        bench.iter(|| outlines(black_box(&mask)))
    });
    let frame = Frame::at(GeoPoint {
        lat_deg: 52.0,
        lon_deg: 5.0,
    });
    let (lat_deg, lon_deg): (Vec<f64>, Vec<f64>) = (0..28_800)
        .map(|n| (52.0 + f64::from(n) * 1e-8, 5.0 - f64::from(n) * 1e-8))
        .unzip();
    criterion.bench_function("28,800 positions to places", |bench| {
        bench.iter(|| frame.places(black_box(&lat_deg), black_box(&lon_deg)));
    });
}

fn index(criterion: &mut Criterion) {
    let mut group = criterion.benchmark_group("legs");
    group.sample_size(10);
    for count in [28_800, 864_000] {
        let legs = legs(count);
        group.bench_function(format!("build {count}"), |bench| {
            bench.iter_batched(|| legs.clone(), LegIndex::build, BatchSize::LargeInput);
        });
        let index = LegIndex::build(legs);
        group.bench_function(format!("within 0.5 m of a place, {count}"), |bench| {
            bench.iter(|| index.within(black_box(Place::new(3.0, -4.0)), 0.5));
        });
        group.bench_function(format!("nearest to a place, {count}"), |bench| {
            bench.iter(|| index.nearest(black_box(Place::new(3.0, -4.0))));
        });
    }
    group.finish();
}

criterion_group!(benches, ground, index);
criterion_main!(benches);
