//! The demo garden is what its generator makes, and shows what its card says.

use flate2::read::GzDecoder;
use std::io::Read;
use std::path::Path;
use tussock_plane::Site;
use tussock_simulate::{Doing, StuckEpisode, Yard};

#[path = "../examples/demo/garden.rs"]
#[allow(dead_code, unreachable_pub)]
mod garden;

use garden::When;

#[test]
fn the_folder_holds_what_the_generator_makes_and_stays_small() {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../fixtures/demo");
    let mut total = 0;
    for file in garden::files() {
        let stored = std::fs::read(folder.join(&file.name)).unwrap();
        total += stored.len();
        let content = if file.name.ends_with(".gz") {
            let mut content = Vec::new();
            GzDecoder::new(&stored[..]).read_to_end(&mut content).unwrap();
            content
        } else {
            stored
        };
        assert!(
            content == file.bytes,
            "{} differs: run the demo example again",
            file.name
        );
    }
    assert!(total <= 2_500_000, "{total} bytes");
}

#[test]
fn both_plans_are_without_fault_and_of_the_stated_size() {
    for when in [When::Before, When::After] {
        let (site, faults) = Site::build(&garden::plan(when)).unwrap();
        assert_eq!(faults, Vec::new());
        let [front, back] = &site.lawns[..] else {
            panic!("two lawns")
        };
        assert!(
            (410.0..430.0).contains(&front.shape.area_m2()),
            "{}",
            front.shape.area_m2()
        );
        assert!(
            (360.0..400.0).contains(&back.shape.area_m2()),
            "{}",
            back.shape.area_m2()
        );
    }
}

#[test]
fn before_the_change_the_yard_behind_the_shed_is_walled_off_and_after_it_is_not() {
    let parts = |when| {
        Yard::new(&garden::site(when), garden::machine().past_boundary_m)
            .unwrap()
            .turning_region()
            .parts()
            .len()
    };
    assert_eq!(parts(When::Before), 2);
    assert_eq!(parts(When::After), 1);
}

#[test]
fn before_shows_a_pocket_a_stuck_spot_and_chance_gaps_and_after_is_mended() {
    let (run, before) = garden::both_nights(When::Before);
    let pocket = &before.pockets[0];
    assert!(pocket.area_m2 > 30.0 && pocket.widest_m > 5.0, "{pocket:?}");
    assert!(pocket.middle.east_m > 27.6 && pocket.middle.north_m > 37.0);
    let chance = &before.pockets[1..];
    assert!((2..=12).contains(&chance.len()), "{}", chance.len());
    assert!(chance.iter().all(|pocket| pocket.area_m2 < 6.0));
    assert!((4..=9).contains(&run.stuck.len()), "{}", run.stuck.len());
    let is_at_roots = |episode: &StuckEpisode| episode.place.distance_m(garden::ROOTS) < 0.6;
    assert!(run.stuck.iter().all(is_at_roots));
    assert!(run.time_s(Doing::Stuck) > 1200.0);
    let (run, after) = garden::both_nights(When::After);
    assert!(run.stuck.is_empty());
    assert_eq!(run.time_s(Doing::Stuck), 0.0);
    assert!(after.visited_fraction > before.visited_fraction + 0.04);
    assert!(after.pockets.iter().all(|pocket| pocket.area_m2 < 6.0));
}
