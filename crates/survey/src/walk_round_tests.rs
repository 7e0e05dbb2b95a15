//! Walks, and drives of mowers that slightly resemble one.

use super::*;

/// One fix a second along a path at a given speed, with waits at each corner.
fn along(corners: &[(f64, f64)], speed_mps: f64, wait_s: usize) -> Kept {
    let (mut east_m, mut north_m) = (Vec::new(), Vec::new());
    for edge in corners.windows(2) {
        let (from, to) = (Place::new(edge[0].0, edge[0].1), Place::new(edge[1].0, edge[1].1));
        let fixes = (from.distance_m(to) / speed_mps).ceil();
        let standing = (0..wait_s).map(|_| 0.0);
        for part in standing.chain((0..fixes as usize).map(|fix| fix as f64 / fixes)) {
            east_m.push(from.east_m + part * (to.east_m - from.east_m));
            north_m.push(from.north_m + part * (to.north_m - from.north_m));
        }
    }
    Kept {
        time_s: (0..east_m.len()).map(|second| 1.0e9 + second as f64).collect(),
        run: vec![0; east_m.len()],
        east_m,
        north_m,
        error_factor: Vec::new(),
    }
}

const GARDEN: [(f64, f64); 7] = [
    (0.0, 0.0),
    (35.0, 0.0),
    (35.0, 12.0),
    (20.0, 12.0),
    (20.0, 27.5),
    (0.0, 27.5),
    (0.0, 0.0),
];

#[test]
fn a_walk_round_a_garden_is_one_at_every_pace_twice_round_and_with_waits() {
    for speed_mps in [0.6, 1.0, 1.5] {
        for wait_s in [0, 10] {
            let found = round(&along(&GARDEN, speed_mps, wait_s)).expect("a walk");
            assert!(
                (found.area_m2 - 730.0).abs() < 80.0 && (found.length_m - 125.0).abs() < 25.0,
                "{speed_mps} {wait_s}: {found:?}"
            );
            assert!((found.speed_mps - speed_mps).abs() < 0.1, "{found:?}");
        }
    }
    let twice: Vec<(f64, f64)> = GARDEN.iter().chain(&GARDEN[1..]).copied().collect();
    let found = round(&along(&twice, 1.2, 0)).expect("a walk");
    assert!((found.area_m2 - 730.0).abs() < 80.0, "{found:?}");
}

#[test]
fn what_a_mower_drives_is_none() {
    // At its own pace, or for hours.
    assert_eq!(round(&along(&GARDEN, 0.4, 0)), None);
    let mut slow_logger = along(&GARDEN, 1.0, 0);
    let start_s = slow_logger.time_s[0];
    slow_logger
        .time_s
        .iter_mut()
        .for_each(|time_s| *time_s = start_s + 40.0 * (*time_s - start_s));
    assert_eq!(round(&slow_logger), None);
    // A minute and a half at the station, then a few legs and home.
    assert_eq!(round(&along(&GARDEN, 0.7, 90)), None);
    // A round along the edge, then lanes: the ground inside is driven over.
    let lanes = (0..40).flat_map(|lane| {
        let north_m = f64::from(lane) * 0.3;
        let ends = [(0.5, north_m), (34.5, north_m)];
        if lane % 2 == 0 { ends } else { [ends[1], ends[0]] }
    });
    let drive: Vec<(f64, f64)> = GARDEN.iter().copied().chain(lanes).chain([(0.0, 0.0)]).collect();
    assert_eq!(round(&along(&drive, 0.6, 0)), None);
    // A spiral: round and round, and everything is driven over.
    let spiral: Vec<(f64, f64)> = (0..2000)
        .map(|step| {
            let (angle_rad, radius_m) = (f64::from(step) * 0.05, 0.2 + f64::from(step) * 0.002);
            let (sin, cos) = math::sin_cos(angle_rad);
            (radius_m * cos, radius_m * sin)
        })
        .collect();
    assert_eq!(round(&along(&spiral, 0.7, 0)), None);
    // There and back, and a drive that ends elsewhere.
    assert_eq!(
        round(&along(&[(0.0, 0.0), (60.0, 3.0), (0.0, 4.0)], 0.8, 0)),
        None
    );
    assert_eq!(round(&along(&GARDEN[..5], 0.8, 0)), None);
}

#[test]
fn roaming_at_walking_pace_is_none_however_short() {
    // Straight legs from edge to edge of a square, drawn by a multiplicative generator (Lehmer 1951).
    for seed in 1..200u64 {
        let mut state = seed;
        let mut draw = || {
            state = state * 48_271 % 2_147_483_647;
            state as f64 / 2_147_483_647.0
        };
        let legs = 4 + (seed % 30) as usize;
        let mut corners = vec![(0.0, 10.0)];
        for leg in 0..legs {
            let along_m = 20.0 * draw();
            corners.push(match (leg + (draw() * 3.0) as usize) % 4 {
                0 => (along_m, 0.0),
                1 => (20.0, along_m),
                2 => (along_m, 20.0),
                _ => (0.0, along_m),
            });
        }
        corners.push((0.0, 10.0));
        let found = round(&along(&corners, 0.6, 0));
        // A few legs from edge to edge can form a round: nobody could know, and two minutes show nothing of a lawn.
        assert!(
            found.is_none() || legs < 12,
            "{legs} legs, seed {seed}: {found:?}"
        );
    }
}
