use super::*;
use approx::assert_abs_diff_eq;
use rand_chacha::ChaCha8Rng;
use rand_chacha::rand_core::{Rng, SeedableRng};

const SEED: u64 = 71;
const INSET_M: f64 = 0.2;
const EXPECTED_M: (f64, f64) = (0.2, 0.15);
const CENTIMETRES: TurnError = TurnError {
    each_m: 0.01,
    shared_m: 0.02,
    shared_s: 300.0,
};
const DECIMETRES: TurnError = TurnError {
    each_m: 0.05,
    shared_m: 0.3,
    shared_s: 300.0,
};

fn edges(corners: &[(f64, f64)]) -> Vec<Edge> {
    let corner = |at: usize| {
        let (east, north) = corners[at % corners.len()];
        Vector::new(east, north)
    };
    let pairs = (0..corners.len()).filter_map(|at| Edge::between(corner(at), corner(at + 1)));
    pairs.collect()
}

const HALL: [(f64, f64); 4] = [(-12.0, -8.0), (12.0, -8.0), (12.0, 8.0), (-12.0, 8.0)];
const ELL: [(f64, f64); 6] = [
    (-12.0, -8.0),
    (14.0, -8.0),
    (14.0, 1.0),
    (1.0, 1.0),
    (1.0, 15.0),
    (-12.0, 15.0),
];

fn even(dice: &mut ChaCha8Rng) -> f64 {
    f64::from(dice.next_u32()) / f64::from(u32::MAX)
}

/// Turns at the edges of a ground, each edge according to its length, `moved` by the offset of the log.
fn turns_at(edges: &[Edge], moved: impl Fn(Vector) -> Vector) -> Vec<EdgeTurn> {
    let mut dice = ChaCha8Rng::seed_from_u64(SEED);
    let whole_m: f64 = edges.iter().map(|edge| edge.length_m).sum();
    let mut turns = Vec::new();
    for edge in edges {
        for _ in 0..(400.0 * edge.length_m / whole_m) as usize {
            let run_m = edge.length_m * (0.05 + 0.9 * even(&mut dice));
            let at = edge.from + edge.along * run_m + edge.inwards() * INSET_M;
            let heading =
                |dice: &mut ChaCha8Rng| (edge.along * (2.0 * even(dice) - 1.0) + edge.inwards()).unit();
            let (into, onward) = (heading(&mut dice).unwrap(), heading(&mut dice).unwrap());
            turns.push(turn(moved(at), -into, onward, turns.len()));
        }
    }
    turns
}

fn turn(at: Vector, into: Vector, onward: Vector, number: usize) -> EdgeTurn {
    EdgeTurn {
        place: at.into(),
        // In an order of its own: edges are met in turn.
        time_s: 30.0 * ((number * 167) % 401) as f64,
        into,
        onward,
    }
}

#[test]
fn a_plan_is_found_where_the_turns_lie_as_drawn_moved_or_turned() {
    let drawn = edges(&ELL);
    for (east_m, north_m, turned_deg) in [
        (0.0, 0.0, 0.0),
        (0.2, -0.1, 0.0),
        (1.4, 0.9, 1.0),
        (-2.4, 1.8, -3.0),
    ] {
        let (sin, cos) = math::sin_cos(f64::to_radians(turned_deg));
        let moved = |at: Vector| {
            Vector::new(
                cos * at.east - sin * at.north + east_m,
                sin * at.east + cos * at.north + north_m,
            )
        };
        let turns: Vec<EdgeTurn> = turns_at(&drawn, moved)
            .into_iter()
            .map(|turn| EdgeTurn {
                into: turn.into.turned(f64::to_radians(turned_deg)),
                onward: turn.onward.turned(f64::to_radians(turned_deg)),
                ..turn
            })
            .collect();
        let fit = fit(&turns, &drawn, EXPECTED_M, CENTIMETRES).unwrap();
        assert_abs_diff_eq!(fit.offset.rotation_deg, turned_deg, epsilon = 0.02);
        // Where the plan's origin went: rotated about the middle of the turns, then moved.
        let about = Vector::new(fit.offset.about_east_m, fit.offset.about_north_m);
        let origin = about
            + (-about).turned(fit.offset.rotation_deg.to_radians())
            + Vector::new(fit.offset.east_m, fit.offset.north_m);
        assert_abs_diff_eq!(origin.east, east_m, epsilon = 0.01);
        assert_abs_diff_eq!(origin.north, north_m, epsilon = 0.01);
        assert_abs_diff_eq!(fit.inset_m, INSET_M, epsilon = 0.01);
        assert!(
            fit.explained_fraction > 0.95 && !fit.is_another_garden(),
            "{fit:?}"
        );
        assert_eq!(fit.displaced().count(), 0, "{fit:?}");
    }
}

#[test]
fn an_end_out_of_reach_does_not_move_the_plan() {
    // Moved by the missing end, the plan would gather as many turns: at three sides, as where it is drawn.
    let drawn = edges(&HALL);
    for closed_m in [2.0, 3.0, 4.0, 5.0, 6.0] {
        for (west_m, east_m) in [(-12.0 + closed_m, 12.0), (-12.0, 12.0 - closed_m)] {
            let reached = edges(&[(west_m, -8.0), (east_m, -8.0), (east_m, 8.0), (west_m, 8.0)]);
            // By chance, the end that is reached has a fifth fewer turns than the other.
            let mut turns = turns_at(&reached, |at| at);
            let mut number = 0;
            turns.retain(|turn| {
                let is_at_end = match west_m > -12.0 {
                    true => turn.place.east_m > 11.7,
                    false => turn.place.east_m < -11.7,
                };
                number += usize::from(is_at_end);
                !is_at_end || number % 5 > 0
            });
            let fit = fit(&turns, &drawn, EXPECTED_M, CENTIMETRES).unwrap();
            assert!(
                math::hypot(fit.offset.east_m, fit.offset.north_m) < 0.1,
                "{closed_m}: {fit:?}"
            );
        }
    }
}

#[test]
fn one_side_that_is_drawn_too_far_out_is_that_side_and_no_other() {
    let true_edges = edges(&HALL);
    let drawn = edges(&[(-12.0, -8.0), (12.4, -8.0), (12.4, 8.0), (-12.0, 8.0)]);
    let fit = fit(&turns_at(&true_edges, |at| at), &drawn, EXPECTED_M, CENTIMETRES).unwrap();
    let displaced: Vec<&EdgeFit> = fit.displaced().collect();
    assert_eq!(displaced.len(), 1, "{fit:?}");
    assert_eq!(displaced[0].number, 1);
    assert_abs_diff_eq!(displaced[0].inside_m, 0.4, epsilon = 0.02);
    assert!(
        math::hypot(fit.offset.east_m, fit.offset.north_m) < 0.02 && !fit.is_another_garden(),
        "{fit:?}"
    );
}

#[test]
fn the_plan_of_another_garden_is_one_and_spirals_are_none() {
    for error in [CENTIMETRES, DECIMETRES] {
        let (hall, ell) = (edges(&HALL), edges(&ELL));
        assert!(
            fit(&turns_at(&ell, |at| at), &hall, EXPECTED_M, error)
                .unwrap()
                .is_another_garden()
        );
        assert!(
            fit(&turns_at(&hall, |at| at), &ell, EXPECTED_M, error)
                .unwrap()
                .is_another_garden()
        );
        // Twice as many turns in the middle of the lawn as at its edges.
        let mut turns = turns_at(&hall, |at| at);
        let mut dice = ChaCha8Rng::seed_from_u64(SEED);
        for number in 0..800 {
            let at = Vector::new(20.0 * even(&mut dice) - 10.0, 12.0 * even(&mut dice) - 6.0);
            let angle_rad = std::f64::consts::TAU * even(&mut dice);
            let (sin, cos) = math::sin_cos(angle_rad);
            turns.push(turn(at, Vector::new(cos, sin), Vector::new(-sin, cos), number));
        }
        let fit = fit(&turns, &hall, EXPECTED_M, error).unwrap();
        assert!(
            fit.explained_fraction < LEAST_EXPLAINED && !fit.is_another_garden(),
            "{fit:?}"
        );
    }
}

#[test]
fn turns_that_were_made_anywhere_tell_nothing() {
    let hall = edges(&HALL);
    let mut dice = ChaCha8Rng::seed_from_u64(SEED);
    let turns: Vec<EdgeTurn> = (0..60)
        .map(|number| {
            let at = Vector::new(24.0 * even(&mut dice) - 12.0, 16.0 * even(&mut dice) - 8.0);
            let (sin, cos) = math::sin_cos(std::f64::consts::TAU * even(&mut dice));
            turn(at, Vector::new(cos, sin), Vector::new(-sin, cos), number)
        })
        .collect();
    let fit = fit(&turns, &hall, EXPECTED_M, CENTIMETRES).unwrap();
    assert!(!fit.is_trusted() && !fit.is_another_garden(), "{fit:?}");
}

#[test]
fn few_turns_and_no_edges_tell_nothing() {
    let hall = edges(&HALL);
    let turns = turns_at(&hall, |at| at);
    assert_eq!(
        fit(&turns[..LEAST_TURNS - 1], &hall, EXPECTED_M, CENTIMETRES),
        None
    );
    assert_eq!(fit(&turns, &[], EXPECTED_M, CENTIMETRES), None);
}

#[test]
fn metres_do_not_tell_one_garden_from_another() {
    let metres = TurnError {
        each_m: 0.3,
        shared_m: 2.0,
        shared_s: 600.0,
    };
    let fit = fit(
        &turns_at(&edges(&ELL), |at| at),
        &edges(&HALL),
        EXPECTED_M,
        metres,
    )
    .unwrap();
    assert!(!fit.is_another_garden());
}

#[test]
fn four_equations_are_solved_or_have_no_solution() {
    let matrix = [
        [4.0, 1.0, 0.0, 2.0],
        [1.0, 3.0, 1.0, 0.0],
        [0.0, 1.0, 0.0, 1.0],
        [2.0, 0.0, 1.0, 5.0],
    ];
    let expected = [1.0, -2.0, 3.0, 0.5];
    let right: Lie =
        std::array::from_fn(|row| (0..4).map(|column| matrix[row][column] * expected[column]).sum());
    let found = solved(matrix, right).unwrap();
    for (found, expected) in found.into_iter().zip(expected) {
        assert_abs_diff_eq!(found, expected, epsilon = 1e-12);
    }
    assert_eq!(solved([[1.0; 4]; 4], right), None);
}
