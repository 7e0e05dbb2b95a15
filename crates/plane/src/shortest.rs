//! The cheapest way from one cell of a grid to another.
//!
//! Question: along which cells is a goal reached at the least cost, if each cell has its own price per metre?
//!
//! Method: Dijkstra (1959), A note on two problems in connexion with graphs, DOI 10.1007/BF01386390, with a binary heap. A
//! step costs its length times the mean price of its two cells, so a way through the middle of an open lawn can be made
//! cheaper than one along its edge.
//!
//! Exact on the grid for prices that are not negative; ties are broken by the number of the cell, equally on every machine.
//! Approximate as a way over ground: steps go in eight directions, so an oblique way is up to 8 % too long (at 22.5 degrees,
//! 1 / cos 22.5). Cost: n log n in the cells that cost no more than the goal, 16 bytes per cell of the grid.

use std::cmp::Ordering;
use std::collections::BinaryHeap;
use tussock_types::Grid;

/// Which cells are one step away.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Steps {
    /// Those that share a side.
    Four,
    /// Those that share a side or a corner; a diagonal step needs both adjacent cells free, since a body has width.
    Eight,
    /// Those that share a side or a corner, whatever is adjacent.
    EightCuttingCorners,
}

/// A way over cells.
#[derive(Clone, Debug, PartialEq)]
pub struct CellWay {
    /// Columns and rows, start and goal included.
    pub cells: Vec<(usize, usize)>,
    /// Metres times price.
    pub cost: f64,
    /// Its length from centre to centre.
    pub length_m: f64,
}

/// The cheapest way from a cell to the nearest one for which `is_goal` holds; `None` if there is none.
///
/// `price` is the cost of a metre at a column and row. `None`, a negative price or one that is not a finite number closes
/// the cell.
pub fn cheapest_way(
    grid: &Grid,
    from: (usize, usize),
    is_goal: impl Fn(usize, usize) -> bool,
    price: impl Fn(usize, usize) -> Option<f64>,
    steps: Steps,
) -> Option<CellWay> {
    let (columns, rows) = (grid.columns, grid.rows);
    if from.0 >= columns || from.1 >= rows {
        return None;
    }
    let price =
        |column: usize, row: usize| price(column, row).filter(|price| price.is_finite() && *price >= 0.0);
    price(from.0, from.1)?;
    let found = search(
        columns * rows,
        from.1 * columns + from.0,
        |cell| is_goal(cell % columns, cell / columns),
        |cell, offer| {
            let (column, row) = (cell % columns, cell / columns);
            let Some(here) = price(column, row) else {
                return;
            };
            let beside = |by: (isize, isize)| {
                let column = column
                    .checked_add_signed(by.0)
                    .filter(|column| *column < columns)?;
                let row = row.checked_add_signed(by.1).filter(|row| *row < rows)?;
                Some((row * columns + column, price(column, row)?))
            };
            for by in DIRECTIONS {
                let is_oblique = by.0 != 0 && by.1 != 0;
                let may_step = !is_oblique
                    || match steps {
                        Steps::Four => false,
                        Steps::Eight => beside((by.0, 0)).is_some() && beside((0, by.1)).is_some(),
                        Steps::EightCuttingCorners => true,
                    };
                if let Some((next, there)) = beside(by).filter(|_| may_step) {
                    let step_m = grid.cell_m * if is_oblique { std::f64::consts::SQRT_2 } else { 1.0 };
                    offer(next, step_m * 0.5 * (here + there));
                }
            }
        },
    )?;
    let cells: Vec<(usize, usize)> = found
        .nodes
        .iter()
        .map(|cell| (cell % columns, cell / columns))
        .collect();
    let length_m = cells
        .windows(2)
        .map(|pair| {
            grid.centre(pair[0].0, pair[0].1)
                .distance_m(grid.centre(pair[1].0, pair[1].1))
        })
        .sum();
    Some(CellWay {
        cells,
        cost: found.cost,
        length_m,
    })
}

/// East and north, sides first.
const DIRECTIONS: [(isize, isize); 8] = [
    (1, 0),
    (0, 1),
    (-1, 0),
    (0, -1),
    (1, 1),
    (-1, 1),
    (-1, -1),
    (1, -1),
];

/// A way over numbered nodes.
struct NodeWay {
    nodes: Vec<usize>,
    cost: f64,
}

/// A node that can be reached at a cost. The cheapest one is the greatest, as the heap requires.
#[derive(PartialEq)]
struct Open {
    cost: f64,
    node: usize,
}

impl Eq for Open {}

impl Ord for Open {
    fn cmp(&self, other: &Self) -> Ordering {
        other
            .cost
            .total_cmp(&self.cost)
            .then_with(|| other.node.cmp(&self.node))
    }
}

impl PartialOrd for Open {
    fn partial_cmp(&self, other: &Self) -> Option<Ordering> {
        Some(self.cmp(other))
    }
}

/// No node.
const NONE: usize = usize::MAX;

/// Dijkstra's search; `neighbours` offers each neighbour of a node with the cost of the step.
fn search(
    nodes: usize,
    from: usize,
    is_goal: impl Fn(usize) -> bool,
    neighbours: impl Fn(usize, &mut dyn FnMut(usize, f64)),
) -> Option<NodeWay> {
    let mut costs = vec![f64::INFINITY; nodes];
    let mut before = vec![NONE; nodes];
    let mut open = BinaryHeap::from([Open {
        cost: 0.0,
        node: from,
    }]);
    costs[from] = 0.0;
    while let Some(Open { cost, node }) = open.pop() {
        if cost > costs[node] {
            continue;
        }
        if is_goal(node) {
            let mut way: Vec<usize> = std::iter::successors(Some(node), |node| {
                Some(before[*node]).filter(|before| *before != NONE)
            })
            .collect();
            way.reverse();
            return Some(NodeWay { nodes: way, cost });
        }
        neighbours(node, &mut |next, step| {
            let sum = cost + step;
            if sum < costs[next] {
                costs[next] = sum;
                before[next] = node;
                open.push(Open {
                    cost: sum,
                    node: next,
                });
            }
        });
    }
    None
}

#[cfg(test)]
#[path = "shortest_tests.rs"]
mod tests;
