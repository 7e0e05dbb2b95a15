//! Lanes whose places the log does not show: their number and spacing do.

use crate::nights::{driven, found, in_parallel, logged, sites};
use tussock_simulate::gardens::{GardenKind, Wish, invent_as};
use tussock_simulate::{Counting, Lanes, LogNoise, Machine, Pattern, truth};

const CUT_WIDTH_M: f64 = 0.22;
const HOURS: f64 = 8.0;
/// Spacing of the lanes and how far they stray, as usual and with gaps; the same lines are driven several times in these hours.
const LANES: [(u64, f64, f64); 4] = [
    (7101, 0.18, 0.02),
    (7102, 0.2, 0.01),
    (7103, 0.27, 0.02),
    (7104, 0.35, 0.02),
];

/// The count as logged is up to 21 points off here; where lanes leave gaps, nobody can tell how the next covering lies.
#[test]
fn lanes_that_the_log_does_not_show_are_told_by_their_spacing() {
    let nights = in_parallel(2 * LANES.len(), |number| {
        let (seed, spacing_m, strays_m) = LANES[number / 2];
        let noise = [LogNoise::DECIMETRES, LogNoise::METRES][number % 2];
        let garden = invent_as(&Wish::new(GardenKind::Convex), seed);
        let (site, ground) = sites(&garden.plan, &garden.ground);
        let machine = Machine {
            pattern: Pattern::Lanes(Lanes::new(spacing_m, 30.0, strays_m)),
            ..Machine::default()
        };
        let run = driven(&ground, &machine, HOURS, seed);
        let trace = logged(&run, &site, 1.0, noise, seed);
        let findings = found(&trace, &garden.plan, CUT_WIDTH_M);
        let true_fraction = truth(&run, &site, &Counting::new(CUT_WIDTH_M, 0.05)).visited_fraction;
        let coverage = findings.coverage.expect("the width is known");
        let visited = coverage.visited_fraction;
        println!(
            "{spacing_m} m: {:.3} in {:.3?} to {:.3?}, true {true_fraction:.3}, as logged {:.3}",
            visited.estimate, visited.low, visited.high, coverage.as_logged_fraction
        );
        (visited, true_fraction)
    });
    for (number, (visited, true_fraction)) in nights.into_iter().enumerate() {
        let (low, high) = visited.low.zip(visited.high).expect("an interval");
        assert!(
            (low..=high).contains(&true_fraction),
            "{visited:?} for {true_fraction}"
        );
        assert!(
            (visited.estimate - true_fraction).abs() < 0.08,
            "{visited:?} for {true_fraction}"
        );
        let leaves_gaps = LANES[number / 2].1 > CUT_WIDTH_M;
        assert!(leaves_gaps || high - low < 0.12, "{visited:?}");
    }
}
