//! Properties of any count.

use crate::laid::{AWAY_S, WIDTH_M, cell_error_m2, counted, driven, lawn, lawn_around, placed, visited_m2};
use proptest::prelude::*;
use rand::{RngExt, SeedableRng};
use rand_chacha::ChaCha8Rng;
use std::f64::consts::FRAC_PI_4;
use tussock_coverage::squares::squares;
use tussock_coverage::swath::Sweep;
use tussock_coverage::visits::{Count, count};
use tussock_plane::BitGrid;
use tussock_types::Place;

const REACH_M: f64 = 2.0;

/// Some legs reach past the lawn, some stand.
fn legs() -> impl Strategy<Value = Vec<(Place, Place)>> {
    let along_m = || -1.3 * REACH_M..1.3 * REACH_M;
    let leg = (along_m(), along_m(), along_m(), along_m(), 0..8_u8).prop_map(|(ae, an, be, bn, kind)| {
        let from = Place::new(ae, an);
        let to = match kind {
            0 => from,
            1 => Place::new(ae, bn),
            2 => Place::new(be, an),
            _ => Place::new(be, bn),
        };
        (from, to)
    });
    prop::collection::vec(leg, 1..14)
}

/// Cells that only one of two masks holds.
fn differing(one: &BitGrid, other: &BitGrid) -> u64 {
    let pairs = one.words().iter().zip(other.words());
    pairs.map(|(a, b)| u64::from((a ^ b).count_ones())).sum()
}

/// Some ULPs farther up or down.
fn nudged(value: f64, ulps: i8) -> f64 {
    (0..ulps.unsigned_abs()).fold(value, |value, _| {
        if ulps > 0 {
            value.next_up()
        } else {
            value.next_down()
        }
    })
}

/// A coordinate rounded to millimetres lies on the rims and centres of cells more often than one drawn at random.
fn nudge() -> impl Strategy<Value = [i8; 4]> {
    prop::array::uniform4(-4..=4_i8)
}

/// Time of the last sweep's end becomes time zero.
fn reversed(sweeps: &[Sweep]) -> Vec<Sweep> {
    let end_s = sweeps.iter().map(|sweep| sweep.end_s).fold(0.0, f64::max);
    let mut driven_s = 0.0;
    let mut back: Vec<Sweep> = sweeps
        .iter()
        .rev()
        .map(|sweep| Sweep {
            from: sweep.to,
            to: sweep.from,
            start_s: end_s - sweep.end_s,
            end_s: end_s - sweep.start_s,
            ..*sweep
        })
        .collect();
    for sweep in &mut back {
        sweep.driving_before_s = driven_s;
        driven_s += sweep.driving_s;
    }
    back
}

fn split(sweep: &Sweep, part: f64) -> [Sweep; 2] {
    let middle = sweep.from.towards(sweep.to, part);
    let middle_s = sweep.start_s + part * (sweep.end_s - sweep.start_s);
    [
        Sweep {
            to: middle,
            end_s: middle_s,
            driving_s: part * sweep.driving_s,
            ..*sweep
        },
        Sweep {
            from: middle,
            start_s: middle_s,
            driving_before_s: sweep.driving_before_s + part * sweep.driving_s,
            driving_s: (1.0 - part) * sweep.driving_s,
            ..*sweep
        },
    ]
}

/// So far apart in time that each sweep is a separate visit everywhere.
fn apart(mut sweeps: Vec<Sweep>) -> Vec<Sweep> {
    let mut wait_s = 0.0;
    for sweep in &mut sweeps {
        sweep.start_s += wait_s;
        sweep.end_s += wait_s;
        wait_s += 2.0 * AWAY_S;
    }
    sweeps
}

fn total_visits(count: &Count) -> u64 {
    let histogram = count.visit_histogram();
    (0_u64..)
        .zip(&histogram)
        .map(|(visits, cells)| visits * cells)
        .sum()
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(100))]

    #[test]
    fn another_sweep_never_takes_ground_away(legs in legs()) {
        let sweeps = driven(&legs);
        let mut before: Option<Count> = None;
        for until in 0..=sweeps.len() {
            let now = counted(lawn_around(REACH_M), &sweeps[..until]);
            let fraction = now.visited_fraction();
            prop_assert!((0.0..=1.0).contains(&fraction));
            if let Some(before) = before {
                prop_assert!(fraction >= before.visited_fraction());
                let mut lost = before.visited.clone();
                lost.and_not_in_place(&now.visited);
                prop_assert_eq!(lost.count(), 0);
                prop_assert!(total_visits(&now) >= total_visits(&before));
            }
            before = Some(now);
        }
    }

    /// Only cells whose centre lies on the rim to the last digits may change sides.
    #[test]
    fn driving_it_backwards_visits_the_same_ground(legs in legs()) {
        let sweeps = driven(&legs);
        let forth = counted(lawn_around(REACH_M), &sweeps);
        let back = counted(lawn_around(REACH_M), &reversed(&sweeps));
        prop_assert!(differing(&forth.visited, &back.visited) <= 4);
    }

    #[test]
    fn a_corner_on_a_straight_leg_changes_nothing(legs in legs(), part in 0.05..0.95_f64) {
        let sweeps = apart(driven(&legs));
        let halves: Vec<Sweep> = sweeps
            .iter()
            .flat_map(|sweep| split(sweep, part))
            .collect();
        let whole = counted(lawn_around(REACH_M), &sweeps);
        let parts = counted(lawn_around(REACH_M), &halves);
        prop_assert!(differing(&whole.visited, &parts.visited) <= 4);
        prop_assert!(total_visits(&whole).abs_diff(total_visits(&parts)) <= 8);
    }

    /// Inside the lawn every visit of a cell is swept area, L w + pi w^2 / 4 for each sweep. A line of cells along the
    /// shorter extent is wrong by one cell at most, and there are as many such lines as fit into the longer extent: together
    /// no more than (L + 4 w) u for cells of side u, reached if a leg runs along the grid.
    #[test]
    fn visits_times_cells_is_the_swept_area(legs in legs()) {
        let sweeps = apart(driven(&legs));
        let lawn = || lawn_around(1.3 * REACH_M + WIDTH_M);
        let mut cells = 0;
        let mut expected_m2 = 0.0;
        let mut bound_m2 = 0.0;
        for sweep in &sweeps {
            let alone = counted(lawn(), &[*sweep]);
            let length_m = sweep.from.distance_m(sweep.to);
            let swept_m2 = length_m * WIDTH_M + FRAC_PI_4 * WIDTH_M * WIDTH_M;
            let most_m2 = (length_m + 4.0 * WIDTH_M) * alone.grid.cell_m;
            prop_assert!((visited_m2(&alone) - swept_m2).abs() <= most_m2);
            cells += alone.visited.count();
            expected_m2 += swept_m2;
            bound_m2 += most_m2;
        }
        let count = counted(lawn(), &sweeps);
        prop_assert_eq!(total_visits(&count), cells);
        let swept_m2 = cells as f64 * count.grid.cell_m2();
        prop_assert!((swept_m2 - expected_m2).abs() <= bound_m2);
        prop_assert!(count.visited.count() <= cells);
    }

    #[test]
    fn squares_add_up_to_the_count(legs in legs()) {
        let sweeps = driven(&legs);
        let count = counted(lawn(Place::new(-REACH_M, -1.0), Place::new(1.1, REACH_M)), &sweeps);
        let cells = squares(&count);
        let square_m2 = cells.grid.cell_m2();
        let lawn_m2: f64 = cells.lawn_fraction.iter().map(|part| f64::from(*part) * square_m2).sum();
        let sum_m2 = |column: &[f32]| -> f64 {
            column
                .iter()
                .zip(&cells.lawn_fraction)
                .map(|(value, part)| f64::from(*value) * f64::from(*part) * square_m2)
                .sum()
        };
        let cell_m2 = count.grid.cell_m2();
        // Shares are kept in single precision.
        let close = |found: f64, cells: u64| {
            (found - cells as f64 * cell_m2).abs() <= 1e-6 * (1.0 + cells as f64 * cell_m2)
        };
        prop_assert!(close(lawn_m2, count.lawn.count()));
        prop_assert!(close(sum_m2(&cells.visited_probability), count.visited.count()));
        prop_assert!(close(sum_m2(&cells.visits_expected), total_visits(&count)));
    }

    #[test]
    fn visit_times_lie_within_the_sweeps(legs in legs(), start_s in 0.0..5000.0_f64) {
        // From the count's start on, as a log of some weeks ago.
        let from_s = 1.78e9 + start_s;
        let mut sweeps = driven(&legs);
        for sweep in &mut sweeps {
            sweep.start_s += from_s + 100.0;
            sweep.end_s += from_s + 100.0;
        }
        let last_s = sweeps[sweeps.len() - 1].end_s - from_s;
        let count = count(lawn_around(REACH_M), &sweeps, WIDTH_M, AWAY_S, (from_s, from_s + last_s));
        for (column, row) in count.visited.cells_on() {
            let (first, last) = count.first_and_last_s(column, row).unwrap_or((f32::NAN, f32::NAN));
            prop_assert!(first <= last);
            prop_assert!(f64::from(first) >= 100.0 - 1e-3 && f64::from(last) <= last_s + 1e-3);
        }
        prop_assert_eq!(count.new_cells.iter().sum::<u64>(), count.visited.count());
    }

    /// The last digits of a leg's end decide only about cells whose centre is on the rim to those digits.
    #[test]
    fn places_a_few_ulps_apart_have_the_same_swath(legs in legs(), nudges in prop::collection::vec(nudge(), 14)) {
        let near: Vec<(Place, Place)> = legs
            .iter()
            .zip(&nudges)
            .map(|((from, to), [ae, an, be, bn])| {
                (
                    Place::new(nudged(from.east_m, *ae), nudged(from.north_m, *an)),
                    Place::new(nudged(to.east_m, *be), nudged(to.north_m, *bn)),
                )
            })
            .collect();
        let one = counted(lawn_around(REACH_M), &driven(&legs));
        let other = counted(lawn_around(REACH_M), &driven(&near));
        prop_assert!(differing(&one.visited, &other.visited) <= 4);
    }

    /// A leg of a few ULPs is a stand: it has no direction, and must not be treated as if it had one.
    #[test]
    fn a_leg_of_a_few_ulps_paints_a_disc(
        east_m in -REACH_M..REACH_M, north_m in -REACH_M..REACH_M, nudge in nudge(),
    ) {
        let at = Place::new(nudged(east_m, nudge[0]), nudged(north_m, nudge[1]));
        let near = Place::new(nudged(east_m, nudge[2]), nudged(north_m, nudge[3]));
        let lawn = || lawn_around(REACH_M + WIDTH_M);
        let stand = counted(lawn(), &driven(&[(at, at)]));
        let leg = counted(lawn(), &driven(&[(at, near)]));
        prop_assert!(differing(&stand.visited, &leg.visited) <= 4);
    }

    /// A fix that is repeated while the machine stands is a leg without length; one that is repeated in the middle of a
    /// drive is a corner and a leg without length. Tested with visits well apart: a corner moves the time of a visit by
    /// fractions of a second, which decides if the machine returns just at the end of the time that makes a new visit.
    #[test]
    fn repeated_fixes_change_nothing(legs in legs(), part in 0.0..1.0_f64, again in 1..4_usize) {
        let sweeps = apart(driven(&legs));
        let with: Vec<Sweep> = sweeps
            .iter()
            .flat_map(|sweep| {
                let [before, after] = split(sweep, part);
                let stand = Sweep {
                    from: before.to,
                    to: before.to,
                    start_s: before.end_s,
                    end_s: before.end_s,
                    driving_before_s: after.driving_before_s,
                    driving_s: 0.0,
                };
                std::iter::once(before).chain(std::iter::repeat_n(stand, again)).chain([after])
            })
            .collect();
        let once = counted(lawn_around(REACH_M), &sweeps);
        let repeated = counted(lawn_around(REACH_M), &with);
        prop_assert!(differing(&once.visited, &repeated.visited) <= 4);
        prop_assert!(total_visits(&once).abs_diff(total_visits(&repeated)) <= 8);
    }

    /// Shifting and rotating the frame puts the cells differently under the same swath. Whatever the slope, each leg is
    /// right to `(L + 4 w) u`, see above; so are spans of a row that merge into one.
    #[test]
    fn shifting_and_turning_the_frame_changes_no_more_than_a_row_of_cells(
        legs in legs(), turn_rad in 0.0..6.3_f64, east_m in -0.5..0.5_f64, north_m in -0.5..0.5_f64,
    ) {
        let lawn = || lawn_around(2.0 * REACH_M + 1.0);
        let here = counted(lawn(), &driven(&legs));
        let there = counted(lawn(), &driven(&placed(&legs, turn_rad, Place::new(east_m, north_m))));
        let most_m2: f64 = legs
            .iter()
            .map(|(from, to)| (from.distance_m(*to) + 4.0 * WIDTH_M) * here.grid.cell_m)
            .sum();
        let off_m2 = (visited_m2(&here) - visited_m2(&there)).abs();
        prop_assert!(off_m2 <= 2.0 * most_m2, "{off_m2} m2 off, at most {most_m2} m2 each");
    }
}

/// The stated accuracy is a standard deviation. At slopes that interfere with the grid (along it, 1 : 1, 1 : 2) the cells of
/// a rim err together and a few draws lie far out, so the test checks the sum of squares, and how many lie beyond three.
#[test]
fn shifting_and_turning_the_frame_changes_as_much_as_is_stated() {
    const SEED: u64 = 20_260_504;
    const DRAWS: usize = 400;
    let mut dice = ChaCha8Rng::seed_from_u64(SEED);
    let mut scores: Vec<f64> = Vec::new();
    for _ in 0..DRAWS {
        let mut place = || {
            Place::new(
                dice.random_range(-REACH_M..REACH_M),
                dice.random_range(-REACH_M..REACH_M),
            )
        };
        let legs: Vec<(Place, Place)> = (0..8).map(|_| (place(), place())).collect();
        let shift = place();
        let turn_rad = dice.random_range(0.0..std::f64::consts::TAU);
        let lawn = || lawn_around(3.0 * REACH_M);
        let here = counted(lawn(), &driven(&legs));
        let there = counted(lawn(), &driven(&placed(&legs, turn_rad, shift)));
        let stated_m2 = cell_error_m2(&here).hypot(cell_error_m2(&there));
        scores.push((visited_m2(&here) - visited_m2(&there)) / stated_m2);
    }
    let rms = (scores.iter().map(|score| score * score).sum::<f64>() / DRAWS as f64).sqrt();
    assert!((0.2..1.2).contains(&rms), "root mean square {rms}");
    let beyond = scores.iter().filter(|score| score.abs() > 3.0).count();
    assert!(
        beyond <= DRAWS / 100,
        "{beyond} of {DRAWS} beyond three, rms {rms}"
    );
    let mean = scores.iter().sum::<f64>() / DRAWS as f64;
    assert!(
        mean.abs() < 4.0 * rms / (DRAWS as f64).sqrt(),
        "mean {mean}, rms {rms}"
    );
}
