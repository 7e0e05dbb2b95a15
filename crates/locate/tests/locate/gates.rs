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

/// Moves all fixes from `from` up to `until` north by `step_m`.
fn stepped(fixes: &mut [tussock_types::Fix], from: usize, until: usize, step_m: f64) {
    fixes[from..until].iter_mut().for_each(|fix| fix.second += step_m);
}

fn assert_all_used(track: &Track, fixes: usize) {
    assert_eq!((track.gated_jumps, track.gated_quality), (0, 0));
    assert_eq!(track.fixes_used, fixes);
    assert!(track.carried.is_empty());
}

#[test]
fn a_step_of_the_receiver_keeps_both_stretches_and_is_named() {
    let drive = Drive::around(6, 0.4);
    let mut fixes = drive.fixes();
    let (at, total) = (250, fixes.len());
    stepped(&mut fixes, at, total, 4.0);
    let track = plainly_located(&fixes);
    assert_all_used(&track, total);
    let [step] = track.steps[..] else {
        panic!("{:?}", track.steps)
    };
    assert_abs_diff_eq!(step.time_s, fixes[at].time_s);
    // And what it drove in that second.
    assert_abs_diff_eq!(step.north_m, 4.0, epsilon = 0.41);
    assert_abs_diff_eq!(step.east_m, 0.0, epsilon = 0.41);
    // The step is undone: the drive continues where it was.
    assert_eq!((track.pieces.len(), track.gaps.len()), (1, 0));
    assert!(step.left_m < 0.3, "{}", step.left_m);
    assert_relative_eq!(track.path_m(), drive.length_m(), max_relative = 0.01);
}

#[test]
fn a_small_step_between_quick_fixes_is_one_too() {
    let drive = Drive::around(6, 0.4);
    let mut fixes: Vec<_> = (0..2500)
        .map(|index| {
            let time_s = START_S + 0.2 * f64::from(index);
            let place = drive.at(time_s);
            tussock_types::Fix::bare(time_s, place.east_m, place.north_m)
        })
        .collect();
    stepped(&mut fixes, 1250, 2500, 1.5);
    let track = plainly_located(&fixes);
    assert_all_used(&track, 2500);
    assert_eq!(track.steps.len(), 1);
}

#[test]
fn steps_there_and_back_and_onwards_lose_nothing() {
    let drive = Drive::around(12, 0.4);
    let mut fixes = drive.fixes();
    let total = fixes.len();
    stepped(&mut fixes, 250, 500, 6.0);
    stepped(&mut fixes, 700, total, -5.0);
    let track = plainly_located(&fixes);
    assert_all_used(&track, total);
    assert_eq!(track.steps.len(), 3);
    assert_eq!(track.pieces.len(), 1);
    assert_relative_eq!(track.path_m(), drive.length_m(), max_relative = 0.01);
}

#[test]
fn a_burst_of_half_a_minute_is_no_step() {
    let drive = Drive::around(6, 0.4);
    let mut fixes = drive.fixes();
    stepped(&mut fixes, 250, 280, 25.0);
    let track = plainly_located(&fixes);
    assert_eq!((track.gated_jumps, track.steps.len()), (30, 0));
}

#[test]
fn unusable_fixes_at_the_end_are_silence() {
    let drive = Drive::around(6, 0.4);
    let mut fixes = drive.fixes();
    let total = fixes.len();
    fixes.iter_mut().for_each(|fix| fix.hdop = 0.9);
    fixes[total - 100..].iter_mut().for_each(|fix| fix.hdop = 30.0);
    let track = plainly_located(&fixes);
    assert_eq!(track.gated_quality, 100);
    let spells = tussock_locate::activities::spells(&track, Default::default());
    let silent_s = tussock_locate::activities::time_s(&spells, tussock_locate::activities::Activity::Silent);
    assert_abs_diff_eq!(silent_s, 100.0, epsilon = 1e-6);
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
