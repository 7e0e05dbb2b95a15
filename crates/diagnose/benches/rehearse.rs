//! Benches of night simulations: one run of a night on one core, as it is and well mixed.
#![allow(missing_docs)]

use criterion::{Criterion, criterion_group, criterion_main};
use std::hint::black_box;
use tussock_diagnose::night_simulation::{Access, CELL_M, Cast, Scene};
use tussock_plane::Site;
use tussock_simulate::gardens::{GardenKind, Wish, invent_as};
use tussock_simulate::{Machine, Run, Yard};

const SEED: u64 = 20_260_503;

fn rehearse(criterion: &mut Criterion) {
    let plan = invent_as(
        &Wish {
            area_m2: (1000.0, 1001.0),
            ..Wish::new(GardenKind::TwoRooms { passage_m: 0.9 })
        },
        SEED,
    )
    .plan;
    let Ok((site, _)) = Site::build(&plan) else { return };
    let scene = Scene::of(&site, CELL_M, 0.22);
    let machine = Machine::default();
    let Ok(yard) = Yard::new(&site, machine.past_boundary_m) else {
        return;
    };
    for (name, access) in [
        ("as it is", Access::AsIs),
        ("well mixed", Access::Free { path_m: 6000.0 }),
    ] {
        let cast = Cast {
            yard: yard.clone(),
            machine: machine.clone(),
            run: Run::new(8.0, 0),
            access,
        };
        let mut number = 0;
        criterion.bench_function(&format!("8 h on 1,000 m2, {name}: drive"), |bencher| {
            bencher.iter(|| {
                number += 1;
                black_box(cast.legs(SEED, number)).map(|legs| legs.len())
            });
        });
        criterion.bench_function(&format!("8 h on 1,000 m2, {name}: drive and paint"), |bencher| {
            bencher.iter(|| {
                number += 1;
                let legs = cast.legs(SEED, number).unwrap_or_default();
                scene.fractions(&scene.paint(legs.into_iter())).lawn
            });
        });
    }
}

criterion_group!(benches, rehearse);
criterion_main!(benches);
