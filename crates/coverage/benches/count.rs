//! Benches of the count, stage by stage: 8 h on a lawn of 1,400 m2, driven straight from edge to edge.
#![allow(missing_docs, clippy::unwrap_used)]

use criterion::{BatchSize, Criterion, criterion_group, criterion_main};
use rand::{RngExt, SeedableRng};
use rand_chacha::ChaCha8Rng;
use std::hint::black_box;
use tussock_coverage::pockets::pockets;
use tussock_coverage::revisits::{gini, median};
use tussock_coverage::squares::squares;
use tussock_coverage::swath::{self, Sweep};
use tussock_coverage::{bias, visits};
use tussock_plane::BitGrid;
use tussock_plane::distance::{self, Connectivity};
use tussock_types::Place;

const SEED: u64 = 20_260_502;
const CUT_WIDTH_M: f64 = 0.22;
const SPEED_MPS: f64 = 0.4;
const EAST_M: f64 = 40.0;
const NORTH_M: f64 = 35.0;

/// Chords between places drawn on the edge, until the night is over.
fn night() -> Vec<Sweep> {
    let mut random = ChaCha8Rng::seed_from_u64(SEED);
    let mut on_edge = || {
        let along_m: f64 = random.random_range(0.0..2.0 * (EAST_M + NORTH_M));
        if along_m < EAST_M {
            Place::new(along_m, 0.0)
        } else if along_m < EAST_M + NORTH_M {
            Place::new(EAST_M, along_m - EAST_M)
        } else if along_m < 2.0 * EAST_M + NORTH_M {
            Place::new(along_m - EAST_M - NORTH_M, NORTH_M)
        } else {
            Place::new(0.0, along_m - 2.0 * EAST_M - NORTH_M)
        }
    };
    let mut from = on_edge();
    let mut now_s = 0.0;
    let mut sweeps = Vec::new();
    while now_s < 8.0 * 3600.0 {
        let to = on_edge();
        let driving_s = from.distance_m(to) / SPEED_MPS;
        sweeps.push(Sweep {
            from,
            to,
            start_s: now_s,
            end_s: now_s + driving_s,
            driving_before_s: now_s,
            driving_s,
        });
        now_s += driving_s;
        from = to;
    }
    sweeps
}

fn stages(criterion: &mut Criterion) {
    let sweeps = night();
    let end_s = sweeps[sweeps.len() - 1].end_s;
    let mut lawn = BitGrid::new(visits::grid_over(
        Place::new(0.0, 0.0),
        Place::new(EAST_M, NORTH_M),
        visits::cell_for_width_m(CUT_WIDTH_M),
        40_000_000,
    ));
    (0..lawn.grid.rows).for_each(|row| lawn.set_span(row, 0, lawn.grid.columns));
    let count = |lawn: BitGrid| visits::count(lawn, &sweeps, CUT_WIDTH_M, 30.0, (0.0, end_s));

    let mut group = criterion.benchmark_group("count");
    group.sample_size(20);
    group.bench_function("mark the swath", |bench| {
        bench.iter_batched_ref(
            || BitGrid::new(lawn.grid),
            |mask| {
                let legs = sweeps.iter().map(|sweep| (sweep.from, sweep.to));
                swath::mark(mask, legs, 0.5 * CUT_WIDTH_M);
            },
            BatchSize::LargeInput,
        );
    });
    group.bench_function("visits and revisits", |bench| {
        bench.iter_batched(|| lawn.clone(), count, BatchSize::LargeInput);
    });
    let counted = count(lawn.clone());
    group.bench_function("histogram, Gini coefficient, median and intervals", |bench| {
        bench.iter(|| {
            let histogram = black_box(&counted).visit_histogram();
            (
                gini(&histogram),
                median(&histogram),
                counted.intervals.quantiles(),
            )
        });
    });
    group.bench_function("squares", |bench| bench.iter(|| squares(black_box(&counted))));
    let mut unvisited = lawn.clone();
    unvisited.and_not_in_place(&counted.visited);
    group.bench_function("distance of every cell", |bench| {
        let grid = unvisited.grid;
        bench.iter(|| {
            distance::squared(grid.columns, grid.rows, |column, row| {
                !black_box(&unvisited).get(column, row)
            })
        });
    });
    group.bench_function("parts", |bench| {
        bench.iter(|| distance::parts(black_box(&unvisited), Connectivity::Four));
    });
    group.bench_function("pockets of 0.5 m", |bench| {
        bench.iter(|| pockets(black_box(&unvisited), 0.5, 0.2));
    });
    let error = bias::PathError {
        drift_m: 0.05,
        drift_time_s: 300.0,
        corner_m: 0.03,
    };
    group.bench_function("the swath with error added", |bench| {
        bench.iter(|| bias::fraction_with_error_added(&lawn, black_box(&sweeps), CUT_WIDTH_M, error, SEED));
    });
    group.finish();
}

criterion_group!(benches, stages);
criterion_main!(benches);
