//! Drawn masks and the area identity.

use super::*;
use crate::{Region, rasterise};
use geo::Validation;
use proptest::prelude::*;
use tussock_types::Grid;

/// A mask as drawn, north up.
fn drawn(lines: &[&str]) -> BitGrid {
    let grid = Grid {
        east_min_m: 10.0,
        north_min_m: -3.0,
        cell_m: 0.5,
        columns: lines[0].len(),
        rows: lines.len(),
    };
    let mut mask = BitGrid::new(grid);
    for (row, line) in lines.iter().rev().enumerate() {
        for (column, cell) in line.chars().enumerate() {
            if cell == '#' {
                mask.set(column, row);
            }
        }
    }
    mask
}

fn corners(mask: &BitGrid) -> Vec<Vec<Vec<(f64, f64)>>> {
    let cells = |place: &Place| ((place.east_m - 10.0) / 0.5, (place.north_m + 3.0) / 0.5);
    outlines(mask)
        .iter()
        .map(|rings| {
            rings
                .iter()
                .map(|ring| ring.iter().map(cells).collect())
                .collect()
        })
        .collect()
}

#[test]
fn a_rectangle_has_four_corners() {
    let found = corners(&drawn(&["....", ".###", ".###"]));
    assert_eq!(
        found,
        [[[(1.0, 0.0), (4.0, 0.0), (4.0, 2.0), (1.0, 2.0), (1.0, 0.0)]]]
    );
}

#[test]
fn cells_that_share_only_a_corner_are_two_parts() {
    let found = corners(&drawn(&[".#", "#."]));
    assert_eq!(found.len(), 2);
    assert!(found.iter().all(|rings| rings.len() == 1 && rings[0].len() == 5));
}

#[test]
fn a_ring_of_cells_has_a_hole() {
    let found = corners(&drawn(&["###", "#.#", "###"]));
    assert_eq!(found.len(), 1);
    assert_eq!(
        found[0][0],
        [(0.0, 0.0), (3.0, 0.0), (3.0, 3.0), (0.0, 3.0), (0.0, 0.0)]
    );
    // Clockwise.
    assert_eq!(
        found[0][1],
        [(1.0, 1.0), (1.0, 2.0), (2.0, 2.0), (2.0, 1.0), (1.0, 1.0)]
    );
}

#[test]
fn a_part_that_touches_itself_at_a_corner_has_rings_that_do_not() {
    // The gap in the middle is closed only by a corner.
    let open = drawn(&["###.", "#..#", "####"]);
    let found = corners(&open);
    assert_eq!(found.len(), 1);
    assert!(found[0].iter().all(|ring| {
        let mut seen: Vec<_> = ring[1..].to_vec();
        seen.sort_by(|a, b| a.partial_cmp(b).unwrap());
        seen.dedup();
        seen.len() == ring.len() - 1
    }));
    let ring_shaped = drawn(&[".##", "#.#", "###"]);
    assert_eq!(corners(&ring_shaped)[0].len(), 2);
}

#[test]
fn alg_01_four_connected_parts_have_their_sizes() {
    // scipy.ndimage.label on the same grid: sizes 3, 3, 1, 1, 1, 1, 1.
    let mask = drawn(&["#..##.", ".#..#.", "......", "##..#.", ".#.#..", ".....#"]);
    let mut sizes: Vec<f64> = outlines(&mask)
        .into_iter()
        .map(|rings| Region::from_rings(vec![rings]).unwrap().area_m2() / 0.25)
        .collect();
    sizes.sort_by(|a, b| b.total_cmp(a));
    assert_eq!(sizes, [3.0, 3.0, 1.0, 1.0, 1.0, 1.0, 1.0]);
}

#[test]
fn an_empty_mask_has_no_outline() {
    assert!(outlines(&drawn(&["...", "..."])).is_empty());
    let nothing = Grid {
        east_min_m: 0.0,
        north_min_m: 0.0,
        cell_m: 1.0,
        columns: 0,
        rows: 0,
    };
    assert!(outlines(&BitGrid::new(nothing)).is_empty());
}

/// The slow twin: flood fill.
fn part_sizes_slowly(mask: &BitGrid) -> Vec<u64> {
    let (columns, rows) = (mask.grid.columns, mask.grid.rows);
    let mut rest = mask.clone();
    let mut sizes = Vec::new();
    for row in 0..rows {
        for column in 0..columns {
            let mut stack = vec![(column, row)];
            let mut size = 0;
            while let Some((c, r)) = stack.pop() {
                if rest.get(c, r) {
                    rest.clear(c, r);
                    size += 1;
                    stack.extend([
                        (c + 1, r),
                        (c.wrapping_sub(1), r),
                        (c, r + 1),
                        (c, r.wrapping_sub(1)),
                    ]);
                }
            }
            if size > 0 {
                sizes.push(size);
            }
        }
    }
    sizes
}

proptest! {
    #[test]
    fn outlines_enclose_exactly_their_cells(
        columns in 1usize..80, rows in 1usize..14, seed in prop::collection::vec(any::<bool>(), 80 * 14), dense in any::<bool>(),
    ) {
        let grid = Grid { east_min_m: -7.0, north_min_m: 3.0, cell_m: 0.25, columns, rows };
        let mut mask = BitGrid::new(grid);
        for row in 0..rows {
            for column in 0..columns {
                // Dense masks have holes, thin ones have specks.
                let place = row * columns + column;
                if seed[place] || (dense && seed[(place + 1) % seed.len()]) {
                    mask.set(column, row);
                }
            }
        }
        let parts = outlines(&mask);
        let sizes: Vec<u64> = parts
            .iter()
            .map(|rings| {
                let area_m2: f64 = rings
                    .iter()
                    .map(|ring| {
                        let coords: Vec<_> = ring.iter().map(|place| crate::ring::coord(*place)).collect();
                        crate::ring::signed_area_m2(&coords)
                    })
                    .sum();
                (area_m2 / 0.0625).round() as u64
            })
            .collect();
        prop_assert_eq!(sizes, part_sizes_slowly(&mask));
        let region = Region::from_rings(parts.clone()).unwrap();
        prop_assert_eq!(rasterise(&region, &grid), mask);
        for rings in parts {
            let single = Region::from_rings(vec![rings.clone()]).unwrap();
            prop_assert!(single.as_multi_polygon().is_valid());
            prop_assert_eq!(single.rings(), vec![rings]);
        }
    }
}
