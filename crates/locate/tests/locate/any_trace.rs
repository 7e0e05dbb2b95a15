//! Whatever the log contains, the track is sound.

use crate::drawn::{START_S, located};
use proptest::prelude::*;
use tussock_locate::Track;
use tussock_locate::activities::{Lines, spells};
use tussock_types::{Fix, Place, Settings};

/// A step in time, a place, and whether a new segment starts.
type Row = (f64, f64, f64, bool);

fn rows() -> impl Strategy<Value = Vec<Row>> {
    // From five fixes a second to silences of hours.
    let step_s = prop_oneof![
        6 => Just(1.0),
        3 => 0.2..5.0_f64,
        1 => 5.0..20_000.0_f64,
    ];
    // Close together, across a garden, across the largest extent that is accepted.
    let along_m = || {
        prop_oneof![
            4 => -1.0..1.0_f64,
            4 => -40.0..40.0_f64,
            1 => -2500.0..2500.0_f64,
            2 => Just(0.0),
        ]
    };
    prop::collection::vec((step_s, along_m(), along_m(), prop::bool::weighted(0.03)), 0..160)
}

fn fixes_of(rows: &[Row]) -> Vec<Fix> {
    let (mut time_s, mut segment) = (START_S, 0);
    rows.iter()
        .map(|(step_s, east_m, north_m, starts)| {
            time_s += step_s;
            segment += u32::from(*starts);
            Fix {
                segment,
                ..Fix::bare(time_s, *east_m, *north_m)
            }
        })
        .collect()
}

/// The same rows as small steps from fix to fix: more like a drive.
fn walked(rows: &[Row]) -> Vec<Row> {
    let (mut east_m, mut north_m) = (0.0, 0.0);
    rows.iter()
        .map(|(step_s, along_m, across_m, starts)| {
            east_m += (along_m * step_s).clamp(-0.5, 0.5);
            north_m += (across_m * step_s).clamp(-0.5, 0.5);
            (*step_s, east_m, north_m, *starts)
        })
        .collect()
}

fn check(track: &Track, fixes: &[Fix]) -> Result<(), TestCaseError> {
    prop_assert_eq!(
        track.fixes_used
            + track.gated_jumps
            + track.gated_quality
            + track.carried.iter().map(|carried| carried.fixes).sum::<usize>(),
        fixes.len()
    );
    prop_assert_eq!(track.kept.len(), track.fixes_used);
    prop_assert!(track.path_m().is_finite() && track.driving_s().is_finite());
    prop_assert!(track.noise.white_m.is_finite() && track.noise.white_m > 0.0);
    prop_assert!(track.noise.drift_rate_m2_per_s.is_finite());
    prop_assert!(track.noise.drift_m.is_none_or(f64::is_finite));
    prop_assert!(
        track
            .speed_mps
            .is_none_or(|speed_mps| speed_mps.is_finite() && speed_mps > 0.0)
    );
    let Some((first_s, last_s)) = track.span_s else {
        prop_assert!(track.pieces.is_empty() && track.halts.is_empty() && track.gaps.is_empty());
        return Ok(());
    };
    // Every second is one thing.
    let Some((read_from_s, read_until_s)) = track.read_s else {
        return Err(TestCaseError::fail("fixes were used but none was read"));
    };
    prop_assert!(read_from_s <= first_s && last_s <= read_until_s);
    let mut told_s = read_from_s;
    for spell in spells(track, Lines::default()) {
        prop_assert_eq!(spell.start_s, told_s);
        prop_assert!(spell.end_s > spell.start_s);
        told_s = spell.end_s;
    }
    prop_assert_eq!(told_s, read_until_s);
    let mut now_s = first_s;
    for piece in &track.pieces {
        let start_s = piece.vertices[0].arrive_s;
        for vertex in &piece.vertices {
            prop_assert!(vertex.place.east_m.is_finite() && vertex.place.north_m.is_finite());
            prop_assert!(
                now_s <= vertex.arrive_s && vertex.arrive_s <= vertex.leave_s,
                "times run backwards at {:?} after {}",
                vertex,
                now_s
            );
            now_s = vertex.leave_s;
        }
        for gap in &track.gaps {
            prop_assert!(
                now_s <= gap.start_s || start_s >= gap.end_s,
                "{:?} is bridged",
                gap
            );
        }
    }
    prop_assert!(now_s <= last_s);
    for carried in &track.carried {
        prop_assert!(
            first_s <= carried.start_s && carried.start_s < carried.end_s && carried.end_s <= last_s
        );
        for piece in &track.pieces {
            let (start_s, end_s) = (
                piece.vertices[0].arrive_s,
                piece.vertices[piece.vertices.len() - 1].leave_s,
            );
            prop_assert!(end_s <= carried.start_s || start_s >= carried.end_s);
        }
    }
    for halt in &track.halts {
        prop_assert!(halt.place.east_m.is_finite() && halt.place.north_m.is_finite());
        prop_assert!(halt.radius_m.is_finite());
        prop_assert!(first_s <= halt.start_s && halt.start_s <= halt.end_s && halt.end_s <= last_s);
    }
    for gap in &track.gaps {
        prop_assert!(gap.start_s < gap.end_s && gap.moved_m.is_finite());
    }
    Ok(())
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(300))]

    #[test]
    fn scattered_fixes_give_a_sound_track(rows in rows()) {
        let fixes = fixes_of(&rows);
        check(&located(&fixes, None, &Settings::default()), &fixes)?;
    }

    #[test]
    fn a_random_walk_gives_a_sound_track(rows in rows()) {
        let fixes = fixes_of(&walked(&rows));
        check(&located(&fixes, Some(Place::new(0.0, 0.0)), &Settings::default()), &fixes)?;
    }
}
