//! A night on 3,000 square metres where everything went wrong at once: more of each thing than fits on paper.

#![allow(clippy::unwrap_used)]

use super::{between, full_findings};
use tussock_types::*;

/// Side of a square of the ground.
const CELL_M: f64 = 0.2;

fn long(words: &str) -> String {
    format!("{words} ").repeat(40).trim().to_owned()
}

/// A code with the longest possible sentence.
fn fault(text: &str) -> Said {
    Said::PlanFault {
        fault: text.to_owned(),
    }
}

/// Twelve pockets, eight stuck spots, six suggestions with long sentences, on a square lawn of 3,000 square metres.
pub(crate) fn crowded_findings() -> Findings {
    let mut findings = full_findings();
    let side_m = 3_000f64.sqrt();
    let corner = |e: f64, n: f64| Place::new((e - 0.5) * side_m, (n - 0.5) * side_m);
    findings.lawn_outline = vec![vec![vec![
        corner(0.0, 0.0),
        corner(1.0, 0.0),
        corner(1.0, 1.0),
        corner(0.0, 1.0),
        corner(0.0, 0.0),
    ]]];
    let columns = (side_m / CELL_M) as usize;
    let count = columns * columns;
    // A number that compression cannot predict, so that the page gets as large as possible.
    let mix = |index: usize| (index as u64).wrapping_mul(0x9e37_79b9_7f4a_7c15) >> 40;
    findings.cells = Some(Cells {
        grid: Grid {
            east_min_m: -0.5 * side_m,
            north_min_m: -0.5 * side_m,
            cell_m: CELL_M,
            columns,
            rows: columns,
        },
        lawn_fraction: vec![1.0; count],
        visited_probability: vec![0.95; count],
        visits_expected: (0..count).map(|index| (mix(index) % 12) as f32).collect(),
        first_visit_s: (0..count).map(|index| (mix(index + 7) % 20_000) as f32).collect(),
        last_visit_s: (0..count)
            .map(|index| 20_000.0 + (mix(index + 3) % 9_000) as f32)
            .collect(),
    });
    let line = |index: usize| {
        corner(
            (mix(index) % 1_000) as f64 / 1_000.0,
            (mix(index + 1) % 1_000) as f64 / 1_000.0,
        )
    };
    findings.driven_lines = vec![(0..9_000).map(line).collect()];
    findings.settings.garden.name = Some(
        long("The long meadow behind the orangery")
            .chars()
            .take(300)
            .collect(),
    );
    findings.settings.garden.remarks = Some(long("Mind the dog."));
    let pocket = findings.missed_pockets[0].clone();
    findings.missed_pockets = (0..12)
        .map(|index| {
            let middle = corner(0.14 + 0.24 * (index % 4) as f64, 0.15 + 0.3 * (index / 4) as f64);
            let at = |e: f64, n: f64| Place::new(middle.east_m + e, middle.north_m + n);
            MissedPocket {
                id: format!("M{}", index + 1),
                area_m2: 12.0 - index as f64 * 0.5,
                east_m: middle.east_m,
                north_m: middle.north_m,
                outline: vec![vec![
                    at(-1.5, -1.0),
                    at(1.5, -1.2),
                    at(1.2, 1.4),
                    at(-1.4, 1.0),
                    at(-1.5, -1.0),
                ]],
                why: fault(&long("The way in is narrower than the body.")),
                tape: pocket
                    .tape
                    .iter()
                    .map(|tape| Tape {
                        from: long("the north-eastern corner of the orangery")
                            .chars()
                            .take(79)
                            .collect(),
                        ..tape.clone()
                    })
                    .collect(),
                ..pocket.clone()
            }
        })
        .collect();
    let spot = findings.stuck_spots[0].clone();
    findings.stuck_spots = (0..8)
        .map(|index| {
            let place = corner(0.26 + 0.24 * (index % 3) as f64, 0.3 + 0.2 * (index / 3) as f64);
            StuckSpot {
                id: format!("S{}", index + 1),
                east_m: place.east_m,
                north_m: place.north_m,
                why: fault(&long("Look for ruts and roots.")),
                ..spot.clone()
            }
        })
        .collect();
    let change = findings.suggestions.as_ref().unwrap()[0].clone();
    findings.suggestions = Some(
        (0..6)
            .map(|index| Suggestion {
                id: format!("G{}", index + 1),
                why: fault(&long("A guide run leads there.")),
                geometry: vec![
                    corner(0.02, 0.02 + 0.05 * index as f64),
                    corner(0.05 + 0.15 * index as f64, 0.06),
                    corner(0.06 + 0.15 * index as f64, 0.01),
                ],
                pocket_ids: vec![format!("M{}", index + 1)],
                pocket_fraction_in_log: 0.02,
                cautions: (0..4)
                    .map(|n| fault(&long(&format!("Caution {index}.{n}."))))
                    .collect(),
                ..change.clone()
            })
            .collect(),
    );
    let night = findings.nights.as_ref().unwrap()[0].clone();
    findings.nights = Some(
        (0..9)
            .map(|index| Night {
                date: Some(format!("2026-06-{:02}", index + 2)),
                hours: ActivityHours {
                    driving_h: 5.0 + f64::from(index) * 0.4,
                    ..night.hours
                },
                visited_so_far_fraction: Some(0.86 + f64::from(index) * 0.01),
                ..night.clone()
            })
            .collect(),
    );
    findings.coverage.as_mut().unwrap().visited_fraction = between(0.871, 0.866, 0.875);
    findings
}
