//! How long does each window take, for the invented garden (32,640 squares, 8 h)?

#![allow(clippy::disallowed_methods)] // the host's mathematics is the oracle here
#![allow(missing_docs, clippy::unwrap_used)]

#[path = "../tests/garden/mod.rs"]
mod garden;

use criterion::{Criterion, criterion_group, criterion_main};
use std::hint::black_box;
use tussock_report::{
    Privacy, Style, Voice, answer, cells_parquet, from_json, geojson, html, map_png, outputs, pockets_gpx,
    to_json,
};

fn windows(criterion: &mut Criterion) {
    let findings = garden::findings();
    let text = to_json(&findings).unwrap();
    let mut group = criterion.benchmark_group("report");
    group.bench_function("answer", |b| {
        b.iter(|| answer(black_box(&findings), Style::default()))
    });
    group.bench_function("to_json", |b| b.iter(|| to_json(black_box(&findings)).unwrap()));
    group.bench_function("from_json", |b| {
        b.iter(|| from_json(black_box(text.as_bytes())).unwrap())
    });
    group.bench_function("geojson", |b| b.iter(|| geojson(black_box(&findings)).unwrap()));
    group.bench_function("pockets_gpx", |b| {
        b.iter(|| pockets_gpx(black_box(&findings), Voice::default()).unwrap())
    });
    group.bench_function("cells_parquet", |b| {
        b.iter(|| cells_parquet(black_box(&findings)).unwrap())
    });
    group.bench_function("html", |b| {
        b.iter(|| html(black_box(&findings), Voice::default()).unwrap())
    });
    group.sample_size(20);
    group.bench_function("map_png", |b| {
        b.iter(|| map_png(black_box(&findings), 1_600, Voice::default()).unwrap())
    });
    group.bench_function("outputs", |b| {
        b.iter(|| outputs(black_box(&findings), Privacy::Full, Voice::default()).unwrap())
    });
    group.finish();
}

criterion_group!(benches, windows);
criterion_main!(benches);
