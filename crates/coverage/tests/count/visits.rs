//! How often and when.

use crate::laid::{AWAY_S, WIDTH_M, along, counted, driven, lawn, lawn_around};
use approx::assert_abs_diff_eq;
use tussock_coverage::swath::Sweep;
use tussock_coverage::visits::count;
use tussock_types::Place;

/// The same leg again after some time, measured from where it starts.
fn twice(second_start_s: f64) -> [Sweep; 2] {
    let first = driven(&[(Place::new(-2.0, 0.1), Place::new(2.0, 0.3))])[0];
    let lapse_s = first.end_s - first.start_s;
    [
        first,
        Sweep {
            start_s: second_start_s,
            end_s: second_start_s + lapse_s,
            driving_before_s: lapse_s,
            ..first
        },
    ]
}

#[test]
fn coming_back_within_thirty_seconds_is_the_same_visit() {
    let count = counted(lawn_around(3.0), &twice(AWAY_S - 0.1));
    let histogram = count.visit_histogram();
    assert_eq!(histogram.len(), 2, "{histogram:?}");
    assert_eq!(histogram[1], count.visited.count());
}

#[test]
fn coming_back_after_thirty_seconds_is_a_second_visit() {
    let count = counted(lawn_around(3.0), &twice(AWAY_S + 0.1));
    let histogram = count.visit_histogram();
    assert_eq!(histogram.len(), 3, "{histogram:?}");
    assert_eq!((histogram[1], histogram[2]), (0, count.visited.count()));
}

#[test]
fn standing_on_for_minutes_is_one_visit() {
    let at = Place::new(0.02, 0.03);
    let stand = |start_s: f64, end_s: f64| Sweep {
        from: at,
        to: at,
        start_s,
        end_s,
        driving_before_s: 0.0,
        driving_s: 0.0,
    };
    // The second follows within the time from the end of the first, not from its start; the third does not.
    let count = counted(
        lawn_around(1.0),
        &[stand(0.0, 300.0), stand(320.0, 400.0), stand(440.0, 441.0)],
    );
    assert_eq!(count.visit_histogram()[2], count.visited.count());
    let (column, row) = count.grid.cell_at(at).unwrap();
    assert_eq!(count.visits(column, row), 2);
    assert_eq!(count.first_and_last_s(column, row), Some((0.0, 441.0)));
}

/// Closest approach of a leg to a cell runs at its speed from its start.
#[test]
fn a_cell_is_visited_when_the_disc_is_nearest() {
    let sweeps = driven(&[(Place::new(-2.0, 0.0), Place::new(2.0, 0.0))]);
    let count = counted(lawn_around(3.0), &sweeps);
    for (column, row) in count.visited.cells_on() {
        let east_m = count.grid.centre(column, row).east_m;
        let expected_s = (east_m.clamp(-2.0, 2.0) + 2.0) / 0.4;
        let (first_s, last_s) = count.first_and_last_s(column, row).unwrap();
        assert_abs_diff_eq!(f64::from(first_s), expected_s, epsilon = 1e-5);
        assert_abs_diff_eq!(f64::from(last_s), expected_s, epsilon = 1e-5);
    }
}

#[test]
fn ground_that_is_no_lawn_is_not_counted() {
    let mut half = lawn(Place::new(-3.0, -1.0), Place::new(3.0, 1.0));
    let grid = half.grid;
    for row in 0..grid.rows {
        for column in 0..grid.columns {
            if grid.centre(column, row).east_m > 0.0 {
                half.clear(column, row);
            }
        }
    }
    let sweeps = driven(&[(Place::new(-2.0, 0.0), Place::new(2.0, 0.0))]);
    let count = counted(half, &sweeps);
    assert!(count.visited.count() > 0);
    assert!(
        count
            .visited
            .cells_on()
            .all(|(column, row)| count.lawn.get(column, row) && grid.centre(column, row).east_m <= 0.0)
    );
    assert_eq!(count.new_cells.iter().sum::<u64>(), count.visited.count());
}

/// A long count is divided into strips, one per thread.
#[test]
fn any_number_of_threads_counts_the_same() {
    let at = |number: u32| {
        let turn_rad = 2.399_963 * f64::from(number);
        let reach_m = 2.9 * (0.754_878 * f64::from(number)).fract();
        Place::new(reach_m * turn_rad.cos(), reach_m * turn_rad.sin())
    };
    let legs: Vec<(Place, Place)> = (0..600).map(|number| (at(number), at(number + 1))).collect();
    let sweeps = driven(&legs);
    let by = |threads: usize| {
        let pool = rayon::ThreadPoolBuilder::new()
            .num_threads(threads)
            .build()
            .unwrap();
        pool.install(|| counted(lawn_around(3.0), &sweeps))
    };
    let alone = by(1);
    assert!(alone.visited_fraction() > 0.5);
    for threads in [2, 3, 16] {
        let several = by(threads);
        assert_eq!(several.visited, alone.visited, "{threads} threads");
        assert_eq!(several.new_cells, alone.new_cells);
        assert_eq!(several.touched_tiles(), alone.touched_tiles());
        assert_eq!(several.intervals.survival(), alone.intervals.survival());
        for (column, row) in alone.visited.cells_on() {
            assert_eq!(several.visits(column, row), alone.visits(column, row));
            assert_eq!(
                several.first_and_last_s(column, row),
                alone.first_and_last_s(column, row)
            );
        }
    }
}

#[test]
fn no_sweep_visits_nothing() {
    let count = count(lawn_around(1.0), &[], WIDTH_M, AWAY_S, (0.0, 0.0));
    assert_eq!(count.visited.count(), 0);
    assert_abs_diff_eq!(count.visited_fraction(), 0.0);
    assert_abs_diff_eq!(count.cell_error_fraction(), 0.0);
    assert_eq!(count.visit_histogram(), [count.lawn.count()]);
}

/// A quarter of an hour in lanes: what is new in each bucket adds up to all that was visited.
#[test]
fn new_ground_adds_up_over_driving_time() {
    let corners: Vec<Place> = (0..30)
        .flat_map(|lane| {
            let north_m = 0.15 * (f64::from(lane) - 15.0);
            let (start_m, end_m) = if lane % 2 == 0 { (-3.0, 3.0) } else { (3.0, -3.0) };
            [Place::new(start_m, north_m), Place::new(end_m, north_m)]
        })
        .collect();
    let sweeps = driven(&along(&corners));
    let count = counted(lawn_around(4.0), &sweeps);
    assert_eq!(count.new_cells.iter().sum::<u64>(), count.visited.count());
    let driving_s: f64 = sweeps.iter().map(|sweep| sweep.driving_s).sum();
    assert_abs_diff_eq!(
        count.bucket_s * count.new_cells.len() as f64,
        driving_s,
        epsilon = 1e-6
    );
    // After half of the driving half of the ground is done: lanes go on at the same pace.
    let half: u64 = count.new_cells[..count.new_cells.len() / 2].iter().sum();
    let share = half as f64 / count.visited.count() as f64;
    assert_abs_diff_eq!(share, 0.5, epsilon = 0.02);
}
