//! The error that the log itself shows.

use crate::drawn::{Corner, Drive, corner, plainly_located};

const SEEDS: [u64; 4] = [20_260_611, 20_260_612, 20_260_613, 20_260_614];

fn assert_read_off(drive: &Drive, whites_m: &[f64]) {
    for white_m in whites_m {
        for seed in SEEDS {
            let track = plainly_located(&drive.noisy_fixes(*white_m, seed));
            let found_m = track.noise.white_m;
            assert!(
                (found_m / white_m - 1.0).abs() <= 0.15,
                "{found_m} m for {white_m} m, seed {seed}"
            );
        }
    }
}

/// Legs of 13 to 25 m. Turns and waits are taken for noise, so the finest noise is overestimated: by 6 % here.
#[test]
fn white_noise_is_read_off_to_fifteen_percent() {
    let lanes: Vec<Corner> = (0..80)
        .map(|lane| {
            let along_m = [0.0, 18.0, 5.0, 21.0][lane % 4];
            corner(along_m, [0.0, 4.0, 9.0, 14.0][lane / 2 % 4], 2.0)
        })
        .collect();
    assert_read_off(&Drive::new(&lanes, 0.4), &[0.01, 0.05, 0.3]);
}

/// Legs of 6 to 11 m: with a turn and a wait every twenty seconds only noise from 0.02 m up is right to 15 %; 0.01 m is
/// overestimated by up to 17 %.
#[test]
fn white_noise_among_short_legs_is_read_off_from_two_centimetres_up() {
    assert_read_off(&Drive::around(20, 0.4), &[0.02, 0.05, 0.3]);
}
