//! What a machine did in every second, found from drives that are known.

use crate::drawn::{Corner, Drive, START_S, corner, located, plainly_located};
use approx::{assert_abs_diff_eq, assert_relative_eq};
use rand::SeedableRng;
use rand_chacha::ChaCha8Rng;
use rand_distr::{Distribution, StandardNormal};
use tussock_locate::activities::{Activity, Lines, possible_stops, spells, time_s, transits, without};
use tussock_locate::carried::Carried;
use tussock_locate::{Gap, Halt, HaltPlace, Piece, Surroundings, Track, Vertex, locate};
use tussock_plane::{Joins, Region};
use tussock_types::{Fix, Place, Settings, Trace};

const SEED: u64 = 20_260_625;
const SPEED_MPS: f64 = 0.4;

fn vertex(east_m: f64, north_m: f64, arrive_s: f64, leave_s: f64) -> Vertex {
    Vertex {
        place: Place::new(east_m, north_m),
        arrive_s,
        leave_s,
    }
}

/// A track assembled by hand: station, guide out, a leg, a step back, a leg, a stand; carried; silent; home along the guide;
/// station.
fn by_hand() -> Track {
    let mut track = plainly_located(&Drive::around(3, SPEED_MPS).fixes());
    let stay = |start_s: f64, end_s: f64| Halt {
        place: Place::new(0.0, 0.0),
        start_s,
        end_s,
        at: HaltPlace::Station,
        radius_m: 0.1,
        came_from: None,
    };
    track.station = Some(Place::new(0.0, 0.0));
    track.halts = vec![stay(0.0, 600.0), stay(1000.0, 1500.0)];
    (track.span_s, track.read_s) = (Some((0.0, 1500.0)), Some((0.0, 1500.0)));
    track.pieces = vec![
        Piece {
            vertices: vec![
                vertex(0.0, 0.0, 0.0, 600.0),
                vertex(10.0, 0.0, 625.0, 627.0),
                vertex(10.0, 8.0, 647.0, 648.0),
                vertex(10.0, 7.5, 650.0, 652.0),
                vertex(2.0, 12.0, 680.0, 750.0),
            ],
        },
        Piece {
            vertices: vec![
                vertex(12.0, 9.0, 850.0, 850.0),
                vertex(12.0, 0.2, 872.0, 874.0),
                vertex(0.0, 0.0, 904.0, 1500.0),
            ],
        },
    ];
    track.gaps = vec![Gap {
        start_s: 790.0,
        end_s: 850.0,
        moved_m: 0.3,
    }];
    track.carried = vec![Carried {
        start_s: 750.0,
        end_s: 790.0,
        fixes: 39,
    }];
    track
}

#[test]
fn spells_of_a_known_day_have_the_lengths_that_it_had() {
    let track = by_hand();
    let guide = [Place::new(0.0, 0.0), Place::new(15.0, 0.0)];
    let lines = Lines {
        guides: &[&guide],
        boundary: None,
    };
    let spells = spells(&track, lines);
    let expected = [
        (Activity::AtStation, 600.0 + 500.0),
        (Activity::Transit, 25.0 + 30.0),
        (Activity::Driving, 20.0 + 28.0 + 22.0),
        (Activity::Reversing, 2.0),
        (Activity::Turning, 2.0 + 1.0 + 2.0 + 2.0),
        // The stand before it was picked up, and the wait in front of the station.
        (Activity::Halted, 70.0 + 96.0),
        (Activity::Carried, 40.0),
        (Activity::Silent, 60.0),
    ];
    for (activity, seconds) in expected {
        assert_abs_diff_eq!(time_s(&spells, activity), seconds, epsilon = 1e-9);
    }
    let total_s: f64 = spells.iter().map(|spell| spell.end_s - spell.start_s).sum();
    assert_abs_diff_eq!(total_s, 1500.0, epsilon = 1e-9);
}

#[test]
fn without_lines_or_with_poor_positions_nothing_is_said_of_transit() {
    let mut track = by_hand();
    assert_eq!(transits(&track, Lines::default()), []);
    let guide = [Place::new(0.0, 0.0), Place::new(15.0, 0.0)];
    let lines = Lines {
        guides: &[&guide],
        boundary: None,
    };
    assert_eq!(transits(&track, lines), [(600.0, 625.0), (874.0, 904.0)]);
    track.noise.white_m = 0.4;
    assert_eq!(transits(&track, lines), []);
}

#[test]
fn ground_that_is_not_cut_in_transit_falls_out_of_the_pieces() {
    let track = by_hand();
    let left = without(&track.pieces, &[(600.0, 625.0), (874.0, 904.0)]);
    let first = &track.pieces[0].vertices;
    assert_eq!(left[0].vertices, first[1..]);
    assert_eq!(left[1].vertices, track.pieces[1].vertices[..2]);
    assert_eq!(left.len(), 2);
    assert_eq!(without(&track.pieces, &[]), track.pieces);
}

/// Lanes, then a walk of 18 m with the machine in hand, then lanes again.
fn with_a_walk(pace_mps: f64) -> (Vec<Fix>, f64, f64) {
    let lanes = |north_m: f64| -> Vec<Corner> {
        (0..16)
            .map(|at| {
                corner(
                    [0.0, 9.0, 9.0, 0.0][at % 4],
                    north_m + f64::from((at / 2) as u32),
                    2.0,
                )
            })
            .collect()
    };
    let mut fixes = Drive::new(&lanes(0.0), SPEED_MPS).fixes();
    let from = fixes[fixes.len() - 1];
    let walk_s = (18.0 / pace_mps).round();
    for second in 1..walk_s as u32 {
        let north_m = from.second + 18.0 * f64::from(second) / walk_s;
        fixes.push(Fix::bare(from.time_s + f64::from(second), from.first, north_m));
    }
    let to_s = from.time_s + walk_s;
    fixes.extend(
        Drive::new(&lanes(from.second + 18.0), SPEED_MPS)
            .fixes()
            .iter()
            .map(|fix| Fix::bare(fix.time_s - START_S + to_s, fix.first, fix.second)),
    );
    (fixes, from.time_s, to_s)
}

fn shaken(fixes: &[Fix], white_m: f64, seed: u64) -> Vec<Fix> {
    let mut dice = ChaCha8Rng::seed_from_u64(seed);
    let mut shaken = fixes.to_vec();
    for fix in &mut shaken {
        let (east, north): (f64, f64) = (StandardNormal.sample(&mut dice), StandardNormal.sample(&mut dice));
        fix.first += white_m * east;
        fix.second += white_m * north;
    }
    shaken
}

/// The walk starts from 0 m east and ends there, 18 m farther north.
#[test]
fn a_machine_that_is_carried_paints_nothing_on_its_way() {
    let (fixes, from_s, to_s) = with_a_walk(1.3);
    for (white_m, slack_s) in [(0.0, 1.5), (0.02, 1.5), (0.2, 3.0)] {
        let track = plainly_located(&shaken(&fixes, white_m, SEED));
        assert_eq!(track.carried.len(), 1, "white {white_m}");
        let carried = track.carried[0];
        assert_abs_diff_eq!(carried.start_s, from_s, epsilon = slack_s);
        assert_abs_diff_eq!(carried.end_s, to_s, epsilon = slack_s);
        let spells = spells(&track, Lines::default());
        assert_abs_diff_eq!(
            time_s(&spells, Activity::Carried),
            to_s - from_s,
            epsilon = 2.0 * slack_s
        );
        assert_eq!(track.pieces.len(), 2);
        let longest_m = track
            .legs()
            .map(|(from, to)| from.place.distance_m(to.place))
            .fold(0.0, f64::max);
        assert!(longest_m < 10.5, "a leg of {longest_m} m at white {white_m}");
    }
}

/// First-order Gauss-Markov drift is not a walk, however large it is.
#[test]
fn a_drive_under_metre_drift_is_never_carried() {
    let clean = Drive::around(40, SPEED_MPS).fixes();
    for run in 0..6 {
        let mut dice = ChaCha8Rng::seed_from_u64(SEED + run);
        let mut normal = || -> f64 { StandardNormal.sample(&mut dice) };
        let (drift_m, keeps) = (2.0, (-1.0_f64 / 300.0).exp());
        let mut drift = [drift_m * normal(), drift_m * normal()];
        let mut fixes = clean.clone();
        for fix in &mut fixes {
            for axis in &mut drift {
                *axis = keeps * *axis + drift_m * (1.0 - keeps * keeps).sqrt() * normal();
            }
            fix.first += drift[0] + 0.3 * normal();
            fix.second += drift[1] + 0.3 * normal();
        }
        assert_eq!(plainly_located(&fixes).carried, [], "run {run}");
    }
}

fn on_ground(fixes: &[Fix], ground: Option<&Region>) -> Track {
    let mut trace = Trace::local("drawn");
    fixes.iter().for_each(|fix| trace.push(*fix));
    let (east_m, north_m): (Vec<f64>, Vec<f64>) = fixes.iter().map(|fix| (fix.first, fix.second)).unzip();
    locate(
        &trace,
        &east_m,
        &north_m,
        Surroundings::of(&Settings::default()).on(ground),
    )
}

/// Pushed at 0.7 m/s it is no faster than some machines; but no machine drives out of its garden at another pace.
#[test]
fn a_walk_through_the_gate_is_carried_where_the_plan_shows_the_garden() {
    let (fixes, from_s, to_s) = with_a_walk(0.7);
    assert_eq!(on_ground(&fixes, None).carried, []);
    let rectangle = |south_m: f64, north_m: f64| {
        vec![vec![
            Place::new(-0.5, south_m),
            Place::new(9.5, south_m),
            Place::new(9.5, north_m),
            Place::new(-0.5, north_m),
            Place::new(-0.5, south_m),
        ]]
    };
    let end_m = fixes[fixes.len() - 1].second;
    let ground =
        Region::from_rings(vec![rectangle(-0.5, 7.5), rectangle(24.5, end_m + 0.5)]).expect("two lawns");
    let track = on_ground(&fixes, Some(&ground));
    assert_eq!(track.carried.len(), 1);
    let carried = track.carried[0];
    // The first and last metre lie within the garden.
    assert!(carried.start_s >= from_s && carried.start_s <= from_s + 3.0);
    assert!(carried.end_s <= to_s && carried.end_s >= to_s - 3.0);
    // A plan drawn a metre too small is no reason to discard a drive.
    let tight = ground.grown_by(-1.0, Joins::Mitred).expect("shrinks");
    let drive = Drive::around(20, SPEED_MPS).fixes();
    assert_eq!(on_ground(&drive, Some(&tight)).carried, []);
}

/// It reappears where it fell silent: a possible stop, no longer than the silence.
#[test]
fn a_silence_whose_ends_agree_is_a_possible_stop() {
    let drive = Drive::new(
        &[
            corner(0.0, 0.0, 0.0),
            corner(30.0, 0.0, 300.0),
            corner(30.0, 30.0, 2.0),
            corner(0.0, 30.0, 2.0),
        ],
        SPEED_MPS,
    );
    let mut fixes = drive.fixes();
    // Silent from 20 s after it came to the corner to 20 s before it leaves.
    let stop = drive.stops[1];
    fixes.retain(|fix| fix.time_s < stop.arrive_s + 20.0 || fix.time_s > stop.leave_s - 20.0);
    // And for 15 s on the move.
    let moving_s = drive.stops[2].arrive_s - 40.0;
    fixes.retain(|fix| !(moving_s..moving_s + 15.0).contains(&fix.time_s));
    let track = plainly_located(&fixes);
    assert_eq!(track.gaps.len(), 2);
    let stops = possible_stops(&track);
    assert_eq!(stops.len(), 1);
    assert_abs_diff_eq!(stops[0].place.distance_m(stop.place), 0.0, epsilon = 0.05);
    assert_abs_diff_eq!(stops[0].end_s - stops[0].start_s, 260.0, epsilon = 2.0);
    let near = located(&fixes, Some(stop.place), &Settings::default());
    assert_eq!(possible_stops(&near), []);
}

/// Legs of 8 m, half a metre back before every turn.
fn backing_off(rounds: u32) -> Drive {
    let corners: Vec<Corner> = (0..rounds)
        .flat_map(|_| {
            [
                (0.0, 0.0),
                (8.0, 0.0),
                (7.2, 0.0),
                (7.2, 8.0),
                (7.2, 7.2),
                (0.0, 7.2),
                (0.8, 7.2),
                (0.8, -0.8),
                (0.8, 0.0),
            ]
        })
        .map(|(east_m, north_m)| corner(east_m, north_m, 1.0))
        .collect();
    Drive::new(&corners, SPEED_MPS)
}

#[test]
fn backing_off_before_a_turn_is_reversing() {
    let rounds = 12;
    let drive = backing_off(rounds);
    let true_s = f64::from(rounds) * 4.0 * 0.8 / SPEED_MPS;
    for white_m in [0.0, 0.01] {
        let track = plainly_located(&shaken(&drive.fixes(), white_m, SEED));
        let found_s = time_s(&spells(&track, Lines::default()), Activity::Reversing);
        assert_relative_eq!(found_s, true_s, max_relative = 0.15);
    }
    let plain = plainly_located(&Drive::around(20, SPEED_MPS).fixes());
    assert_eq!(
        time_s(&spells(&plain, Lines::default()), Activity::Reversing),
        0.0
    );
}

/// Out along a guide of 14 m, some legs, home along it; three outings.
#[test]
fn driving_along_the_guide_is_transit_and_nothing_else_is() {
    let station = Place::new(0.0, 0.0);
    let mut corners = Vec::new();
    for _ in 0..3 {
        corners.push(corner(0.0, 0.0, 900.0));
        corners.push(corner(14.0, 0.0, 2.0));
        for (east_m, north_m) in [(6.0, 9.0), (15.0, 11.0), (2.0, 4.0), (12.0, 8.0), (14.0, 0.0)] {
            corners.push(corner(east_m, north_m, 2.0));
        }
    }
    corners.push(corner(0.0, 0.0, 900.0));
    let drive = Drive::new(&corners, SPEED_MPS);
    let guide = [station, Place::new(14.0, 0.0), Place::new(14.0, 3.0)];
    let lines = Lines {
        guides: &[&guide],
        boundary: None,
    };
    for white_m in [0.0, 0.02] {
        let track = located(
            &shaken(&drive.fixes(), white_m, SEED),
            Some(station),
            &Settings::default(),
        );
        let spells = spells(&track, lines);
        assert_abs_diff_eq!(
            time_s(&spells, Activity::Transit),
            6.0 * 14.0 / SPEED_MPS,
            epsilon = 6.0
        );
        assert_abs_diff_eq!(time_s(&spells, Activity::AtStation), 3600.0, epsilon = 8.0);
        assert_abs_diff_eq!(
            time_s(&spells, Activity::Driving),
            drive.driving_s() - 6.0 * 14.0 / SPEED_MPS,
            epsilon = 12.0
        );
    }
}
