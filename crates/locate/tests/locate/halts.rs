//! Halts, the station, and trips from it.

use crate::drawn::{Corner, Drive, corner, located, plainly_located};
use approx::assert_abs_diff_eq;
use tussock_locate::{HaltPlace, Track};
use tussock_types::{Place, Settings};

const SEED: u64 = 20_260_621;
const STATION: Place = Place::new(0.0, 0.0);

#[test]
fn a_long_halt_is_one_corner_and_one_halt() {
    let corners = [
        corner(0.0, 0.0, 2.0),
        corner(9.0, 0.0, 2.0),
        corner(9.0, 7.0, 2.0),
        // It leaves between two fixes.
        corner(1.3, 7.0, 300.4),
        corner(1.3, 14.2, 2.0),
        corner(8.0, 12.0, 2.0),
    ];
    let drive = Drive::new(&corners, 0.4);
    let stop = drive.stops[3];
    for white_m in [0.0, 0.01] {
        let fixes = drive.noisy_fixes(white_m, SEED);
        let track = plainly_located(&fixes);
        assert_eq!(track.halts.len(), 1, "noise {white_m} m: {:?}", track.halts);
        let halt = track.halts[0];
        assert_eq!(halt.at, HaltPlace::Elsewhere);
        assert!(halt.place.distance_m(stop.place) <= 0.01);
        // The last fix inside ends it; a fix that is still rolling in may belong to it.
        assert!(fixes.iter().any(|fix| fix.time_s == halt.start_s));
        assert!(fixes.iter().any(|fix| fix.time_s == halt.end_s));
        assert_abs_diff_eq!(halt.start_s, stop.arrive_s, epsilon = 1.0);
        assert_abs_diff_eq!(halt.end_s, stop.leave_s, epsilon = 1.0);
        // It came along the leg before.
        let came_from = halt.came_from.unwrap();
        assert!(came_from.east_m > stop.place.east_m + 0.9 && (came_from.north_m - 7.0).abs() < 0.1);

        let there: Vec<_> = track.pieces[0]
            .vertices
            .iter()
            .filter(|vertex| vertex.place.distance_m(stop.place) < 0.4)
            .collect();
        assert_eq!(there.len(), 1, "one corner for the whole stay: {there:?}");
        assert_abs_diff_eq!(there[0].arrive_s, stop.arrive_s, epsilon = 1.0);
        assert_abs_diff_eq!(there[0].leave_s, stop.leave_s, epsilon = 1.0);
    }
}

#[test]
fn a_log_that_ends_in_a_halt_ends_with_its_last_fix() {
    let drive = Drive::new(
        &[
            corner(0.0, 0.0, 2.0),
            corner(9.0, 0.0, 2.0),
            corner(9.0, 8.0, 200.0),
        ],
        0.4,
    );
    let fixes = drive.fixes();
    let track = plainly_located(&fixes);
    assert_eq!(track.halts.len(), 1);
    assert_abs_diff_eq!(track.halts[0].end_s, fixes[fixes.len() - 1].time_s);
    assert_abs_diff_eq!(track.halts[0].start_s, drive.stops[2].arrive_s, epsilon = 1.0);
}

/// Rests of these lengths at the station, with a trip of 40 m between each two.
fn trips(rests_s: &[f64]) -> Drive {
    let mut corners: Vec<Corner> = Vec::new();
    for (index, rest_s) in rests_s.iter().enumerate() {
        if index > 0 {
            corners.extend([
                corner(9.0, 2.0, 2.0),
                corner(11.0, 9.0 + index as f64, 2.0),
                corner(1.5, 8.0, 2.0),
            ]);
        }
        corners.push(Corner {
            place: STATION,
            wait_s: *rest_s,
        });
    }
    Drive::new(&corners, 0.4)
}

fn stays(track: &Track) -> usize {
    track
        .halts
        .iter()
        .filter(|halt| halt.at == HaltPlace::Station)
        .count()
}

#[test]
fn a_station_shows_without_a_plan_where_rests_recur() {
    let rests_s = [700.0, 900.0, 800.0];
    for white_m in [0.0, 0.01] {
        let track = plainly_located(&trips(&rests_s).noisy_fixes(white_m, SEED));
        assert!(track.station.unwrap().distance_m(STATION) <= 0.02);
        assert_eq!(stays(&track), 3);
        assert_eq!(track.outings, Some(2));
        // Each end of each stay is known to a fix.
        let at_station = track.halts.iter().filter(|halt| halt.at == HaltPlace::Station);
        let at_station_s: f64 = at_station.map(|halt| halt.end_s - halt.start_s).sum();
        assert_abs_diff_eq!(at_station_s, 2400.0, epsilon = 6.0);
    }
}

#[test]
fn a_single_rest_makes_no_station() {
    // Out and back, but only one of the two stays is long.
    let track = plainly_located(&trips(&[5.0, 1800.0]).noisy_fixes(0.01, SEED));
    assert_eq!(track.station, None);
    assert_eq!(track.outings, None);
    assert_eq!((track.halts.len(), stays(&track)), (1, 0));
}

#[test]
fn rests_at_different_places_make_no_station() {
    let corners = [
        corner(0.0, 0.0, 900.0),
        corner(9.0, 2.0, 2.0),
        corner(11.0, 9.0, 900.0),
        corner(3.0, 12.0, 2.0),
    ];
    let track = plainly_located(&Drive::new(&corners, 0.4).noisy_fixes(0.01, SEED));
    assert_eq!(track.station, None);
    assert_eq!((track.halts.len(), stays(&track)), (2, 0));
}

#[test]
fn a_drawn_station_needs_no_long_rests() {
    let drive = trips(&[150.0, 200.0, 180.0, 160.0]);
    let track = located(
        &drive.noisy_fixes(0.01, SEED),
        Some(STATION),
        &Settings::default(),
    );
    assert_eq!(track.station, Some(STATION));
    assert_eq!(stays(&track), 4);
    assert_eq!(track.outings, Some(3));
    // The same log without the plan's station: rests of minutes are no proof.
    assert_eq!(plainly_located(&drive.noisy_fixes(0.01, SEED)).station, None);
}
/// A stay continues over a break; the part that was seen belongs to the piece in which it was seen.
#[test]
fn a_stay_that_a_break_cuts_is_shared_by_the_pieces() {
    let drive = Drive::new(
        &[
            corner(0.0, 0.0, 2.0),
            corner(9.0, 0.0, 2.0),
            corner(9.0, 8.0, 400.0),
            corner(2.0, 3.0, 2.0),
        ],
        0.4,
    );
    let mut new_segment = drive.fixes();
    new_segment[200..].iter_mut().for_each(|fix| fix.segment = 1);
    let mut silence = drive.fixes();
    silence.drain(200..215);
    for fixes in [new_segment, silence] {
        let track = plainly_located(&fixes);
        assert_eq!((track.pieces.len(), track.gaps.len()), (2, 1));
        let (before, after) = (&track.pieces[0].vertices, &track.pieces[1].vertices);
        assert!(before[before.len() - 1].leave_s <= track.gaps[0].start_s);
        assert!(after[0].arrive_s >= track.gaps[0].end_s);
    }
}
