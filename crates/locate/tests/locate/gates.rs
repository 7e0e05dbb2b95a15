//! Fixes that are not believed, and silences that are not bridged.

use crate::drawn::{Drive, START_S, plainly_located};
use approx::{assert_abs_diff_eq, assert_relative_eq};
use tussock_locate::{Gap, Track};
use tussock_types::FixQuality;

fn assert_no_piece_crosses(track: &Track, gap: &Gap) {
    for piece in &track.pieces {
        let first_s = piece.vertices[0].arrive_s;
        let last_s = piece.vertices[piece.vertices.len() - 1].leave_s;
        assert!(
            last_s <= gap.start_s || first_s >= gap.end_s,
            "a piece from {first_s} to {last_s} crosses {gap:?}"
        );
    }
}

#[test]
fn a_silence_is_never_bridged() {
    let drive = Drive::around(3, 0.4);
    let mut fixes = drive.fixes();
    let total = fixes.len();
    // It drives on meanwhile.
    fixes.retain(|fix| !(START_S + 101.0..=START_S + 139.0).contains(&fix.time_s));
    assert_eq!(fixes.len(), total - 39);
    let track = plainly_located(&fixes);
    assert_eq!(track.gaps.len(), 1);
    let gap = track.gaps[0];
    assert_abs_diff_eq!(gap.start_s, START_S + 100.0);
    assert_abs_diff_eq!(gap.end_s, START_S + 140.0);
    let moved_m = drive.at(gap.start_s).distance_m(drive.at(gap.end_s));
    assert_abs_diff_eq!(gap.moved_m, moved_m, epsilon = 1e-9);
    assert_abs_diff_eq!(track.silent_s(), 40.0);
    assert_eq!(track.pieces.len(), 2);
    assert_no_piece_crosses(&track, &gap);
    assert_eq!((track.gated_jumps, track.fixes_used), (0, fixes.len()));
}

#[test]
fn a_silence_of_nine_seconds_is_part_of_the_drive() {
    let drive = Drive::around(3, 0.4);
    let mut fixes = drive.fixes();
    // Out of the first leg, 20 s long.
    fixes.retain(|fix| !(START_S + 6.0..=START_S + 13.0).contains(&fix.time_s));
    let track = plainly_located(&fixes);
    assert!(track.gaps.is_empty());
    assert_relative_eq!(track.path_m(), drive.length_m(), max_relative = 0.002);
}

#[test]
fn a_new_segment_is_never_bridged() {
    let drive = Drive::around(3, 0.4);
    let mut fixes = drive.fixes();
    for fix in &mut fixes[121..] {
        fix.segment = 1;
    }
    let track = plainly_located(&fixes);
    assert_eq!(track.gaps.len(), 1);
    let gap = track.gaps[0];
    assert_abs_diff_eq!(gap.start_s, START_S + 120.0);
    assert_abs_diff_eq!(gap.end_s, START_S + 121.0);
    assert_eq!(track.pieces.len(), 2);
    assert_no_piece_crosses(&track, &gap);
}

#[test]
fn one_far_jump_goes_and_the_rest_stays() {
    let drive = Drive::around(3, 0.4);
    let mut fixes = drive.fixes();
    fixes[150].first += 40.0;
    let track = plainly_located(&fixes);
    assert_eq!((track.gated_jumps, track.gated_quality), (1, 0));
    assert_eq!(track.fixes_used, fixes.len() - 1);
    assert!(!track.kept.time_s.contains(&fixes[150].time_s));
    assert!(track.gaps.is_empty());
    assert_relative_eq!(track.path_m(), drive.length_m(), max_relative = 0.002);
}

#[test]
fn a_burst_of_jumps_goes_as_a_whole() {
    let drive = Drive::around(3, 0.4);
    let mut fixes = drive.fixes();
    for fix in &mut fixes[150..155] {
        fix.second -= 60.0;
    }
    let track = plainly_located(&fixes);
    assert_eq!(track.gated_jumps, 5);
    assert!(track.gaps.is_empty());
    assert_relative_eq!(track.path_m(), drive.length_m(), max_relative = 0.002);
}

#[test]
fn a_bad_first_fix_does_not_condemn_the_rest() {
    let drive = Drive::around(3, 0.4);
    let mut fixes = drive.fixes();
    fixes[0].second += 500.0;
    let track = plainly_located(&fixes);
    assert_eq!(track.gated_jumps, 1);
    assert_eq!(track.fixes_used, fixes.len() - 1);
    assert_eq!(track.span_s, Some((START_S + 1.0, fixes[fixes.len() - 1].time_s)));
    assert_relative_eq!(track.path_m(), drive.length_m(), max_relative = 0.002);
}

#[test]
fn fixes_with_a_dilution_above_the_limit_go() {
    let drive = Drive::around(3, 0.4);
    let mut fixes = drive.fixes();
    for fix in &mut fixes {
        fix.hdop = 0.9;
    }
    // At the limit of 6 it stays.
    fixes[30].hdop = 6.0;
    for fix in &mut fixes[150..155] {
        fix.hdop = 6.5;
        fix.first += 1.0;
    }
    let track = plainly_located(&fixes);
    assert_eq!((track.gated_quality, track.gated_jumps), (5, 0));
    assert_eq!(track.fixes_used, fixes.len() - 5);
    assert!(track.kept.time_s.contains(&fixes[30].time_s));
    assert!(
        fixes[150..155]
            .iter()
            .all(|fix| !track.kept.time_s.contains(&fix.time_s))
    );
    assert_relative_eq!(track.path_m(), drive.length_m(), max_relative = 0.002);
}

#[test]
fn fixes_typed_in_by_hand_go() {
    let drive = Drive::around(2, 0.4);
    let mut fixes = drive.fixes();
    fixes[40].quality = FixQuality::Manual;
    let track = plainly_located(&fixes);
    assert_eq!(track.gated_quality, 1);
    assert!(!track.kept.time_s.contains(&fixes[40].time_s));
}
