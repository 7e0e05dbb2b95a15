//! Corners, length, time and speed of the path.

use crate::drawn::{Drive, corner, plainly_located, raw_path_m};
use approx::{assert_abs_diff_eq, assert_relative_eq};
use std::f64::consts::PI;
use tussock_locate::PathMethod;

const SEEDS: [u64; 4] = [20_260_601, 20_260_602, 20_260_603, 20_260_604];

#[test]
fn a_drawn_polyline_without_noise_comes_back() {
    let drive = Drive::around(3, 0.4);
    let track = plainly_located(&drive.fixes());
    assert_eq!(track.method, PathMethod::Legs);
    assert_eq!(track.pieces.len(), 1);
    let vertices = &track.pieces[0].vertices;
    assert_eq!(vertices.len(), drive.stops.len(), "one vertex for each corner");
    for (vertex, stop) in vertices.iter().zip(&drive.stops) {
        let off_m = vertex.place.distance_m(stop.place);
        assert!(off_m <= 0.01, "corner {:?} is {off_m} m off", stop.place);
        // A wait of two seconds between fixes a second apart: its ends are known to within a second.
        assert_abs_diff_eq!(vertex.arrive_s, stop.arrive_s, epsilon = 1.0);
        assert_abs_diff_eq!(vertex.leave_s, stop.leave_s, epsilon = 1.0);
    }
    assert_relative_eq!(track.path_m(), drive.length_m(), max_relative = 0.002);
    assert_relative_eq!(track.driving_s(), drive.driving_s(), max_relative = 0.03);
    assert!(track.gaps.is_empty() && track.halts.is_empty());
    assert_eq!((track.gated_quality, track.gated_jumps), (0, 0));
}

#[test]
fn speed_is_right_to_a_percent() {
    for speed_mps in [0.25, 0.4, 0.62] {
        let drive = Drive::around(8, speed_mps);
        for white_m in [0.0, 0.01, 0.05] {
            let track = plainly_located(&drive.noisy_fixes(white_m, SEEDS[0]));
            let found_mps = track.speed_mps.unwrap();
            assert!(
                (found_mps / speed_mps - 1.0).abs() <= 0.01,
                "{found_mps} m/s for {speed_mps} m/s with noise {white_m} m"
            );
        }
    }
}

#[test]
fn the_path_of_a_noisy_drive_is_right_to_half_a_percent() {
    let drive = Drive::around(8, 0.4);
    for white_m in [0.01, 0.02, 0.05] {
        for seed in SEEDS {
            let fixes = drive.noisy_fixes(white_m, seed);
            let track = plainly_located(&fixes);
            let error_fraction = track.path_m() / drive.length_m() - 1.0;
            assert!(
                error_fraction.abs() <= 0.005,
                "{error_fraction} with noise {white_m} m, seed {seed}"
            );
        }
    }
}

/// Two fixes with white noise s on each axis are Rayleigh distributed with scale s sqrt(2), mean s sqrt(pi)
/// (Rayleigh distribution, Papoulis & Pillai, Probability, Random Variables and Stochastic Processes).
#[test]
fn a_standing_log_has_no_path_although_its_steps_add_up() {
    let drive = Drive::new(&[corner(3.0, 4.0, 3600.0)], 0.4);
    for white_m in [0.01, 0.05, 0.3] {
        for seed in SEEDS {
            let fixes = drive.noisy_fixes(white_m, seed);
            let steps_m = raw_path_m(&fixes);
            // Neighbouring steps share a fix; 3600 of them deviate from the mean by 1 %.
            assert_relative_eq!(steps_m, 3600.0 * white_m * PI.sqrt(), max_relative = 0.04);
            let track = plainly_located(&fixes);
            assert!(
                track.path_m() <= 0.001 * steps_m,
                "{} m of path out of {steps_m} m of steps, noise {white_m} m, seed {seed}",
                track.path_m()
            );
        }
    }
}

#[test]
fn nothing_and_one_fix_give_a_track_without_path() {
    let track = plainly_located(&[]);
    assert!(track.pieces.is_empty() && track.halts.is_empty() && track.gaps.is_empty());
    assert_eq!(track.span_s, None);
    assert_eq!(track.speed_mps, None);
    assert_eq!(track.fixes_used, 0);

    let drive = Drive::new(&[corner(3.0, 4.0, 0.0)], 0.4);
    let fixes = drive.fixes();
    assert_eq!(fixes.len(), 1);
    let track = plainly_located(&fixes);
    assert_eq!(track.fixes_used, 1);
    assert_eq!(track.legs().count(), 0);
    assert_abs_diff_eq!(track.path_m(), 0.0);
    assert_eq!(track.span_s, Some((fixes[0].time_s, fixes[0].time_s)));
    assert!(track.halts.is_empty() && track.gaps.is_empty());
}
