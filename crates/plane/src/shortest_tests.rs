//! Ways that were worked out elsewhere, and by a slower method.

use super::*;
use approx::assert_abs_diff_eq;
use proptest::prelude::*;

fn grid(columns: usize, rows: usize, cell_m: f64) -> Grid {
    Grid {
        east_min_m: -3.0,
        north_min_m: 7.0,
        cell_m,
        columns,
        rows,
    }
}

// ALG-24: networkx 3.6.1, A-B4 A-C2 C-B1 B-D5 C-D8 C-E10 D-E2 D-F6 E-F3.
#[test]
fn the_six_nodes_of_the_textbook_have_their_distances() {
    const EDGES: [(usize, usize, f64); 9] = [
        (0, 1, 4.0),
        (0, 2, 2.0),
        (2, 1, 1.0),
        (1, 3, 5.0),
        (2, 3, 8.0),
        (2, 4, 10.0),
        (3, 4, 2.0),
        (3, 5, 6.0),
        (4, 5, 3.0),
    ];
    let to = |goal: usize| {
        search(
            6,
            0,
            |node| node == goal,
            |node, offer| {
                for (one, other, length) in EDGES {
                    if one == node {
                        offer(other, length);
                    } else if other == node {
                        offer(one, length);
                    }
                }
            },
        )
        .unwrap()
    };
    let distances: Vec<f64> = (1..6).map(|goal| to(goal).cost).collect();
    assert_eq!(distances, [3.0, 2.0, 8.0, 10.0, 13.0]);
    assert_eq!(to(5).nodes, [0, 2, 1, 3, 4, 5], "A C B D E F");
}

// ALG-25: networkx 3.6.1, five by five cells from corner to corner.
#[test]
fn from_corner_to_corner_with_each_rule_of_stepping() {
    let length = |steps, middle: Option<f64>| {
        let price = |column, row| {
            if (column, row) == (2, 2) {
                middle
            } else {
                Some(1.0)
            }
        };
        let way = cheapest_way(
            &grid(5, 5, 1.0),
            (0, 0),
            |column, row| (column, row) == (4, 4),
            price,
            steps,
        )
        .unwrap();
        assert_abs_diff_eq!(way.cost, way.length_m, epsilon = 1e-12);
        way.cost
    };
    assert_abs_diff_eq!(length(Steps::Four, Some(1.0)), 8.0, epsilon = 1e-6);
    assert_abs_diff_eq!(length(Steps::Eight, Some(1.0)), 5.656_854, epsilon = 1e-6);
    assert_abs_diff_eq!(length(Steps::Eight, None), 6.828_427, epsilon = 1e-6);
    assert_abs_diff_eq!(
        length(Steps::EightCuttingCorners, None),
        6.242_641,
        epsilon = 1e-6
    );
}

#[test]
fn a_dear_strip_is_walked_round_where_that_is_cheaper() {
    // A strip of three cells in the way, its gap four cells to the side.
    let price =
        |strip: f64| move |column: usize, row: usize| Some(if row == 2 && column < 4 { strip } else { 1.0 });
    let way = |strip| {
        cheapest_way(
            &grid(5, 5, 0.5),
            (0, 0),
            |column, row| (column, row) == (0, 4),
            price(strip),
            Steps::Four,
        )
        .unwrap()
    };
    assert_abs_diff_eq!(way(1.0).length_m, 2.0, epsilon = 1e-12);
    assert_abs_diff_eq!(way(10.0).length_m, 6.0, epsilon = 1e-12);
    assert!(way(10.0).cells.contains(&(4, 2)));
}

#[test]
fn where_no_way_leads_none_is_found() {
    let wall = |column: usize, _: usize| (column != 2).then_some(1.0);
    let way = |from, price: &dyn Fn(usize, usize) -> Option<f64>| {
        cheapest_way(
            &grid(5, 3, 1.0),
            from,
            |column, _| column == 4,
            price,
            Steps::EightCuttingCorners,
        )
    };
    assert_eq!(way((0, 0), &wall), None);
    assert_eq!(way((2, 0), &wall), None, "from a closed cell");
    assert_eq!(way((5, 0), &|_, _| Some(1.0)), None, "from outside");
    assert_eq!(
        way((0, 0), &|column, _| Some(if column == 2 {
            f64::NAN
        } else {
            1.0
        })),
        None
    );
    assert_eq!(
        way((0, 0), &|column, _| Some(if column == 2 { -1.0 } else { 1.0 })),
        None
    );
    let there = way((4, 1), &wall).unwrap();
    assert_eq!((there.cells, there.cost), (vec![(4, 1)], 0.0));
}

/// Bellman (1958) and Ford: every step of the grid again and again, until nothing gets cheaper.
fn slow_cost(grid: &Grid, prices: &[Option<f64>], steps: Steps, goal: (usize, usize)) -> Option<f64> {
    let (columns, rows) = (grid.columns as i64, grid.rows as i64);
    let price = |column: i64, row: i64| {
        (column >= 0 && row >= 0 && column < columns && row < rows)
            .then(|| prices[(row * columns + column) as usize])
            .flatten()
    };
    let mut cost = vec![f64::INFINITY; prices.len()];
    cost[0] = price(0, 0).map_or(f64::INFINITY, |_| 0.0);
    loop {
        let mut is_settled = true;
        for row in 0..rows {
            for column in 0..columns {
                let here = (row * columns + column) as usize;
                for (dx, dy) in (-1..=1).flat_map(|dx| (-1..=1).map(move |dy| (dx, dy))) {
                    let oblique = dx != 0 && dy != 0;
                    let squeezed = price(column + dx, row).is_none() || price(column, row + dy).is_none();
                    if (dx, dy) == (0, 0)
                        || oblique && (steps == Steps::Four || steps == Steps::Eight && squeezed)
                    {
                        continue;
                    }
                    let (Some(one), Some(other)) = (price(column, row), price(column + dx, row + dy)) else {
                        continue;
                    };
                    let there = ((row + dy) * columns + column + dx) as usize;
                    let length_m = ((dx * dx + dy * dy) as f64).sqrt() * grid.cell_m;
                    let sum = cost[here] + 0.5 * (one + other) * length_m;
                    if sum < cost[there] - 1e-12 {
                        cost[there] = sum;
                        is_settled = false;
                    }
                }
            }
        }
        if is_settled {
            let found = cost[goal.1 * grid.columns + goal.0];
            return found.is_finite().then_some(found);
        }
    }
}

proptest! {
    #[test]
    fn the_way_costs_what_relaxing_every_step_finds(
        columns in 1..12_usize,
        rows in 1..10_usize,
        drawn in prop::collection::vec(prop::option::weighted(0.75, 0.0..5.0_f64), 120),
        steps in prop::sample::select(vec![Steps::Four, Steps::Eight, Steps::EightCuttingCorners]),
    ) {
        let grid = grid(columns, rows, 0.3);
        let prices = &drawn[..columns * rows];
        let goal = (columns - 1, rows - 1);
        let price = |column: usize, row: usize| prices[row * columns + column];
        let found = cheapest_way(&grid, (0, 0), |column, row| (column, row) == goal, price, steps);
        let expected = slow_cost(&grid, prices, steps, goal);
        prop_assert_eq!(found.is_some(), expected.is_some());
        if let (Some(way), Some(cost)) = (found, expected) {
            prop_assert!((way.cost - cost).abs() < 1e-9, "{} {}", way.cost, cost);
            // The way itself has that cost, step by step, over open cells.
            let mut sum = 0.0;
            for pair in way.cells.windows(2) {
                let prices = [pair[0], pair[1]].map(|(column, row)| price(column, row));
                prop_assert!(prices.iter().all(Option::is_some));
                let step_m = grid.centre(pair[0].0, pair[0].1).distance_m(grid.centre(pair[1].0, pair[1].1));
                sum += step_m * 0.5 * prices.iter().flatten().sum::<f64>();
            }
            prop_assert!((sum - cost).abs() < 1e-9);
            prop_assert_eq!((way.cells[0], way.cells[way.cells.len() - 1]), ((0, 0), goal));
        }
    }
}
