//! The machine never leaves its ground, its clock never stands still, and a seed says everything.

use tussock_plane::{Joins, Site};
use tussock_simulate::gardens::{GardenKind, Surprise, Wish, invent_as};
use tussock_simulate::{Doing, Machine, Run, TurnLaw, Yard, simulate};

fn site(plan: &tussock_types::Plan) -> Site {
    Site::build(plan).unwrap().0
}

#[test]
fn quick_look() {
    for kind in GardenKind::ALL {
        for seed in 0..4 {
            let wish = Wish { guide_share_fraction: Some(0.3), surprise: Surprise::None, ..Wish::new(kind) };
            let site = site(&invent_as(&wish, seed).ground);
            let start = std::time::Instant::now();
            let yard = Yard::new(&site, -0.2).unwrap();
            let mid = start.elapsed();
            let run = yard.drive(&Machine { turn_law: TurnLaw::CosineFromNormal, ..Machine::default() }, &Run::new(8.0, seed)).unwrap();
            println!("{kind:?} {seed}: lawn {:.0} m2 yard {mid:?} total {:?} vertices {} outings {} driven {:.0} m transit {:.0} s stranded {:.0} s end {}",
                site.lawn.area_m2(), start.elapsed(), run.vertices.len(), run.outings.len(), run.driven_m(), run.time_s(Doing::Transit), run.time_s(Doing::Stranded), run.end_s());
            let region = yard.turning_region().grown_by(0.001, Joins::Mitred).unwrap();
            for vertex in &run.vertices {
                if matches!(vertex.doing, Doing::Driving | Doing::Turning) { assert!(region.contains(vertex.place)); }
            }
            assert!(run.vertices.windows(2).all(|pair| pair[1].time_s > pair[0].time_s));
            assert_eq!(run, simulate(&site, &Machine { turn_law: TurnLaw::CosineFromNormal, ..Machine::default() }, &Run::new(8.0, seed)).unwrap());
        }
    }
}
