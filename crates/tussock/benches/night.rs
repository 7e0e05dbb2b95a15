//! A night of 28,800 fixes on 1,400 m2: reading, and everything from fixes to findings.
#![allow(missing_docs, clippy::unwrap_used)]

use criterion::{Criterion, criterion_group, criterion_main};
use std::hint::black_box;
use tussock::{Job, analyse};
use tussock_coverage::{swath, visits};
use tussock_ingest::{ReadOptions, assemble, read_log};
use tussock_locate::{Surroundings, locate};
use tussock_plane::{Site, rasterise};
use tussock_simulate::gardens::{GardenKind, InventedGarden, Wish, invent_as};
use tussock_simulate::{LogNoise, Machine, Run, Sampling, gpx_bytes, sample, simulate};
use tussock_types::{Positions, Settings};

const CUT_WIDTH_M: f64 = 0.22;
const GARDEN_SEED: u64 = 7;
const RUN_SEED: u64 = 11;
const NOISE_SEED: u64 = 13;

fn night(bencher: &mut Criterion) {
    let wish = Wish {
        area_m2: (1380.0, 1420.0),
        ..Wish::new(GardenKind::Islands)
    };
    let InventedGarden { plan, .. } = invent_as(&wish, GARDEN_SEED);
    let (site, _) = Site::build(&plan).unwrap();
    let run = simulate(&site, &Machine::default(), &Run::new(8.0, RUN_SEED)).unwrap();
    let trace = sample(
        &run,
        &Sampling::geographic(1.0, LogNoise::CENTIMETRES, NOISE_SEED, site.frame),
    );
    let log = gpx_bytes(&trace);
    let mut settings = Settings::default();
    settings.machine.cut_width_m = Some(CUT_WIDTH_M);

    let mut group = bencher.benchmark_group("night");
    group.sample_size(20);
    group.bench_function("read GPX", |timer| {
        timer.iter(|| read_log("night.gpx", black_box(log.as_slice()), &ReadOptions::default()).unwrap());
    });
    let (low, high) = site.lawn.bounds().unwrap();
    let cell_m = visits::cell_for_width_m(CUT_WIDTH_M);
    let lawn = rasterise(
        &site.lawn,
        &visits::grid_over(low, high, cell_m, settings.limits.cells),
    );
    group.bench_function("read GPX, locate and count", |timer| {
        timer.iter(|| {
            let file = read_log("night.gpx", black_box(log.as_slice()), &ReadOptions::default()).unwrap();
            let read = assemble(vec![file]).unwrap();
            let Positions::Geographic { lat_deg, lon_deg } = &read.traces[0].positions else {
                unreachable!()
            };
            let (east_m, north_m) = site.frame.places(lat_deg, lon_deg);
            let track = locate(
                &read.traces[0],
                &east_m,
                &north_m,
                Surroundings::of(&settings)
                    .on(Some(&site.lawn))
                    .with_station(site.station),
            );
            let span_s = track.span_s.unwrap();
            let sweeps = swath::sweeps(&[track], &settings);
            visits::count(lawn.clone(), &sweeps, CUT_WIDTH_M, 30.0, span_s).visited_fraction()
        });
    });
    group.bench_function("read GPX and find everything", |timer| {
        timer.iter(|| {
            let file = read_log("night.gpx", black_box(log.as_slice()), &ReadOptions::default()).unwrap();
            let read = assemble(vec![file]).unwrap();
            analyse(&Job {
                traces: &read.traces,
                inputs: &read.inputs,
                plan: Some(&plan),
                settings: &settings,
                seed: 1,
                advice: tussock::Advice::LeftOut,
                progress: None,
            })
            .unwrap()
        });
    });
    group.finish();
}

criterion_group!(benches, night);
criterion_main!(benches);
