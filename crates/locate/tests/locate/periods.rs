//! One drive logged every 1, 2, 3 and 4 s: equally many turns, equally long legs.

use tussock_locate::turns::turns;
use tussock_locate::{Surroundings, Track, locate};
use tussock_plane::{Region, Site};
use tussock_simulate::gardens::{GardenKind, Wish, invent_as};
use tussock_simulate::{LogNoise, Machine, Run, Sampling, TrueRun, sample, simulate};
use tussock_types::{Positions, Settings};

const GARDEN_SEEDS: [u64; 2] = [71, 72];
const HOURS: f64 = 3.0;
/// Turns and the median leg agree within this.
const AGREE_FRACTION: f64 = 0.1;

fn drive(seed: u64) -> (TrueRun, Region) {
    let garden = invent_as(&Wish::new(GardenKind::Convex), seed);
    let (site, _) = Site::build(&garden.plan).expect("invented plans are sound");
    let run = simulate(&site, &Machine::default(), &Run::new(HOURS, seed)).expect("there is room");
    (run, site.drivable().expect("there is ground"))
}

fn track(run: &TrueRun, ground: &Region, period_s: f64) -> Track {
    let trace = sample(run, &Sampling::local(period_s, LogNoise::CENTIMETRES, 5));
    let Positions::Local { east_m, north_m } = &trace.positions else {
        panic!("the trace lies on a plane");
    };
    locate(
        &trace,
        east_m,
        north_m,
        Surroundings::of(&Settings::default()).on(Some(ground)),
    )
}

/// Turns, and the length of the middle leg of those that are longer than manoeuvring.
fn seen(track: &Track, ground: &Region) -> (f64, f64) {
    let mut legs_m: Vec<f64> = track
        .legs()
        .map(|(from, to)| from.place.distance_m(to.place))
        .filter(|length_m| *length_m >= 0.3)
        .collect();
    legs_m.sort_by(f64::total_cmp);
    (turns(track, ground, &[]).len() as f64, legs_m[legs_m.len() / 2])
}

#[test]
fn a_drive_has_as_many_turns_and_as_long_legs_at_two_to_four_seconds_as_at_one() {
    for seed in GARDEN_SEEDS {
        let (run, ground) = drive(seed);
        let (turns_at_1, leg_at_1_m) = seen(&track(&run, &ground, 1.0), &ground);
        for period_s in [2.0, 3.0, 4.0] {
            let (turns, leg_m) = seen(&track(&run, &ground, period_s), &ground);
            println!(
                "{seed} {period_s} s: {turns} turns for {turns_at_1}, {leg_m:.2} m for {leg_at_1_m:.2} m"
            );
            assert!(
                (turns / turns_at_1 - 1.0).abs() <= AGREE_FRACTION,
                "{period_s} s: {turns} for {turns_at_1}"
            );
            assert!(
                (leg_m / leg_at_1_m - 1.0).abs() <= AGREE_FRACTION,
                "{period_s} s: {leg_m} for {leg_at_1_m}"
            );
        }
    }
}
