//! Closed forms of strips and discs, and laws on random polygons.

use super::*;
use crate::BitGrid;
use geo::{Area, Contains, Validation};
use proptest::prelude::*;
use tussock_types::Grid;
use tussock_types::math;

fn ring(corners: &[(f64, f64)]) -> Vec<Place> {
    corners.iter().map(|&(e, n)| Place::new(e, n)).collect()
}

fn region(corners: &[(f64, f64)]) -> Region {
    Region::from_rings(vec![vec![ring(corners)]]).unwrap()
}

fn rectangle(e0: f64, n0: f64, e1: f64, n1: f64) -> Region {
    region(&[(e0, n0), (e1, n0), (e1, n1), (e0, n1)])
}

fn near(found: f64, expected: f64, tolerance: f64) {
    assert!(
        (found - expected).abs() <= tolerance,
        "{found} is not {expected} within {tolerance}"
    );
}

/// Ground within half a width of a line: what the region door makes of a path's swath.
fn swath(line: &[(f64, f64)], width_m: f64) -> Region {
    let r = width_m / 2.0;
    let pieces: Vec<Region> = line
        .windows(2)
        .flat_map(|piece| {
            let (a, b) = (piece[0], piece[1]);
            let (de, dn) = (b.0 - a.0, b.1 - a.1);
            let length = math::hypot(de, dn);
            let (ne, nn) = (-dn / length * r, de / length * r);
            [
                region(&[
                    (a.0 - ne, a.1 - nn),
                    (b.0 - ne, b.1 - nn),
                    (b.0 + ne, b.1 + nn),
                    (a.0 + ne, a.1 + nn),
                ]),
                many_cornered_disc(a, r),
                many_cornered_disc(b, r),
            ]
        })
        .collect();
    Region::union_of(&pieces).unwrap()
}

fn many_cornered_disc(middle: (f64, f64), radius_m: f64) -> Region {
    let corners: Vec<(f64, f64)> = (0..2000)
        .map(|step| {
            let (sin, cos) = math::sin_cos(f64::from(step) / 2000.0 * std::f64::consts::TAU);
            (middle.0 + radius_m * cos, middle.1 + radius_m * sin)
        })
        .collect();
    region(&corners)
}

#[test]
fn alg_04_and_05_a_capsule_has_length_times_width_and_a_disc() {
    // L w + pi w^2 / 4; with polygonised caps of q segments a quarter the disc loses the factor
    // (n / 2 pi) sin(2 pi / n), n = 4 q, as in GEOS' buffer.
    let exact = 10.0 * 0.22 + std::f64::consts::PI * 0.22 * 0.22 / 4.0;
    near(exact, 2.238_013_271_1, 1e-9);
    near(swath(&[(0.0, 0.0), (10.0, 0.0)], 0.22).area_m2(), exact, 1e-6);
    for (quarter, expected) in [(8, 2.237_769_486_3), (16, 2.237_952_236_7), (64, 2.238_009_454_7)] {
        let n = f64::from(quarter) * 4.0;
        let corners: Vec<(f64, f64)> = (0..=2 * quarter)
            .map(|step| {
                (
                    10.0,
                    -0.5 * std::f64::consts::PI + std::f64::consts::TAU * f64::from(step) / n,
                )
            })
            .chain((0..=2 * quarter).map(|step| {
                (
                    0.0,
                    0.5 * std::f64::consts::PI + std::f64::consts::TAU * f64::from(step) / n,
                )
            }))
            .map(|(east, angle): (f64, f64)| (east + 0.11 * math::cos(angle), 0.11 * math::sin(angle)))
            .collect();
        near(region(&corners).area_m2(), expected, 1e-9);
    }
}

#[test]
fn alg_06_two_crossing_capsules_count_their_crossing_once() {
    let across = swath(&[(-5.0, 0.0), (5.0, 0.0)], 0.22);
    let along = swath(&[(0.0, -5.0), (0.0, 5.0)], 0.22);
    near(across.union(&along).unwrap().area_m2(), 4.427_626_542_2, 2e-5);
    near(across.intersect(&along).unwrap().area_m2(), 0.22 * 0.22, 1e-6);
}

#[test]
fn alg_07_ten_flat_passes_overlap_by_sixteen_percent() {
    let passes: Vec<Region> = (0..10)
        .map(|pass| f64::from(pass) * 0.18)
        .map(|north| rectangle(0.0, north - 0.11, 10.0, north + 0.11))
        .collect();
    let union_m2 = Region::union_of(&passes).unwrap().area_m2();
    near(union_m2, 18.4, 1e-6);
    near(1.0 - union_m2 / 22.0, 0.163_636_4, 1e-6);
}

#[test]
fn alg_08_a_boustrophedon_path_sweeps_its_area() {
    let mut line = Vec::new();
    for pass in 0..10 {
        let north = f64::from(pass) * 0.18;
        let (from, to) = if pass % 2 == 0 { (0.0, 10.0) } else { (10.0, 0.0) };
        line.extend([(from, north), (to, north)]);
    }
    let length_m: f64 = line
        .windows(2)
        .map(|p: &[(f64, f64)]| math::hypot(p[1].0 - p[0].0, p[1].1 - p[0].1))
        .sum();
    near(length_m, 101.62, 1e-9);
    near(swath(&line, 0.22).area_m2(), 18.771_78, 2e-4);
}

#[test]
fn alg_09_a_right_bend_sweeps_its_closed_form() {
    let bend = swath(&[(0.0, 0.0), (5.0, 0.0), (5.0, 5.0)], 0.22);
    near(bend.area_m2(), 2.235_416_588_9, 1e-5);
}

#[test]
fn alg_10_a_circle_sweeps_a_ring() {
    let outer = many_cornered_disc((0.0, 0.0), 3.11);
    let inner = many_cornered_disc((0.0, 0.0), 2.89);
    near(outer.minus(&inner).unwrap().area_m2(), 4.146_902_302_7, 2e-5);
}

#[test]
fn alg_11_a_body_leaves_the_corners() {
    let lawn = rectangle(0.0, 0.0, 40.0, 25.0);
    let middles = lawn.grown_by(-0.3, Joins::Round).unwrap();
    near(middles.area_m2(), 961.36, 1e-4);
    let reached = middles.grown_by(0.3, Joins::Round).unwrap();
    // (4 - pi) r^2 = 0.0772567; the joins are polygons, within 0.13 % of the radius of the arc.
    near(lawn.area_m2() - reached.area_m2(), 0.077_256_7, 5e-4);
    let squared = middles.grown_by(0.3, Joins::Mitred).unwrap();
    near(squared.area_m2(), 1000.0, 1e-4);
}

/// Two lawns of 10 by 10 m joined by a passage of 5 by 1 m.
fn dumbbell() -> Region {
    region(&[
        (0.0, 0.0),
        (10.0, 0.0),
        (10.0, 4.5),
        (15.0, 4.5),
        (15.0, 0.0),
        (25.0, 0.0),
        (25.0, 10.0),
        (15.0, 10.0),
        (15.0, 5.5),
        (10.0, 5.5),
        (10.0, 10.0),
        (0.0, 10.0),
    ])
}

#[test]
fn alg_12_a_passage_closes_when_the_body_is_as_wide() {
    for (half_width_m, parts, area_m2) in [(0.49, 1, 163.047_715), (0.51, 2, 161.487_505)] {
        let left = dumbbell().grown_by(-half_width_m, Joins::Round).unwrap();
        assert_eq!(left.parts().len(), parts, "at {half_width_m}");
        near(left.area_m2(), area_m2, 0.02);
    }
}

#[test]
fn a_hole_grows_when_the_ground_shrinks() {
    let lawn = rectangle(0.0, 0.0, 10.0, 10.0)
        .minus(&rectangle(4.0, 4.0, 6.0, 6.0))
        .unwrap();
    near(lawn.area_m2(), 96.0, 1e-6);
    near(
        lawn.grown_by(-0.5, Joins::Mitred).unwrap().area_m2(),
        81.0 - 9.0,
        1e-4,
    );
    near(
        lawn.grown_by(0.5, Joins::Mitred).unwrap().area_m2(),
        121.0 - 1.0,
        1e-4,
    );
    // Shrunk by 2.1 m, the strips beside the hole are gone and its four corners are left.
    assert_eq!(lawn.grown_by(-2.1, Joins::Round).unwrap().parts().len(), 4);
    assert!(lawn.grown_by(-3.0, Joins::Round).unwrap().is_empty());
    near(lawn.grown_by(1.5, Joins::Mitred).unwrap().area_m2(), 169.0, 1e-4);
}

#[test]
fn edges_belong_to_the_ground_east_and_north_of_them() {
    let (west, east) = (rectangle(0.0, 0.0, 1.0, 1.0), rectangle(1.0, 0.0, 2.0, 1.0));
    for place in [Place::new(1.0, 0.0), Place::new(1.0, 0.5)] {
        assert!(!west.contains(place) && east.contains(place), "{place:?}");
    }
    assert!(!west.contains(Place::new(0.5, 1.0)) && west.contains(Place::new(0.5, 0.0)));
    assert!(!west.contains(Place::new(f64::NAN, 0.5)));
}

#[test]
fn rings_either_way_round_open_or_closed_are_the_same_ground() {
    let corners = [(0.0, 0.0), (4.0, 0.0), (4.0, 3.0), (0.0, 3.0)];
    let mut turned = corners;
    turned.reverse();
    let mut closed = corners.to_vec();
    closed.push(corners[0]);
    for other in [region(&turned), region(&closed)] {
        assert_eq!(other.area_m2(), 12.0);
        assert!(other.rings()[0][0].len() == 5 && other.perimeter_m() == 14.0);
    }
}

#[test]
fn degenerate_rings_are_dropped() {
    let dropped = Region::from_rings(vec![
        vec![ring(&[])],
        vec![],
        vec![ring(&[(1.0, 1.0)])],
        vec![ring(&[(1.0, 1.0), (2.0, 2.0), (1.0, 1.0)])],
        vec![ring(&[(0.0, 0.0), (1e-7, 0.0), (0.0, 1e-7)])],
    ]);
    assert!(dropped.unwrap().is_empty());
    let hole_gone = Region::from_rings(vec![vec![
        ring(&[(0.0, 0.0), (1.0, 0.0), (1.0, 1.0), (0.0, 1.0)]),
        ring(&[(0.5, 0.5), (0.5, 0.5), (0.5 + 1e-9, 0.5), (0.5, 0.5 + 1e-9)]),
    ]]);
    assert_eq!(hole_gone.unwrap().rings()[0].len(), 1);
}

#[test]
fn crossing_and_overlapping_rings_are_put_in_order() {
    let bow_tie = region(&[(0.0, 0.0), (2.0, 2.0), (2.0, 0.0), (0.0, 2.0)]);
    near(bow_tie.area_m2(), 2.0, 1e-6);
    let square = ring(&[(0.0, 0.0), (2.0, 0.0), (2.0, 2.0), (0.0, 2.0)]);
    let shifted = ring(&[(1.0, 0.0), (3.0, 0.0), (3.0, 2.0), (1.0, 2.0)]);
    let both = Region::from_rings(vec![vec![square.clone()], vec![shifted.clone()]]).unwrap();
    near(both.area_m2(), 6.0, 1e-6);
    // Two holes that overlap take their ground away once.
    let big = ring(&[(-1.0, -1.0), (4.0, -1.0), (4.0, 4.0), (-1.0, 4.0)]);
    let holed = Region::from_rings(vec![vec![big, square, shifted]]).unwrap();
    near(holed.area_m2(), 25.0 - 6.0, 1e-6);
    assert!(holed.as_multi_polygon().is_valid());
}

#[test]
fn numbers_that_are_no_numbers_are_refused_with_their_place() {
    let error = Region::from_rings(vec![vec![ring(&[(0.0, 0.0), (f64::NAN, 0.0), (1.0, 1.0)])]]).unwrap_err();
    assert_eq!(
        error.to_string(),
        "part 0, ring 0, corner 1 lies at NaN m east, 0 m north; expected finite numbers below 10000000 m"
    );
    assert!(Region::from_rings(vec![vec![ring(&[(0.0, 0.0), (1e200, 0.0), (1.0, 1.0)])]]).is_err());
    let error = rectangle(0.0, 0.0, 1.0, 1.0)
        .grown_by(f64::NAN, Joins::Round)
        .unwrap_err();
    assert_eq!(
        error.to_string(),
        "cannot grow a region by NaN m; expected a finite number below 10000000 m"
    );
}

#[test]
fn a_panic_of_the_engine_is_an_error_here() {
    let error = catch("a test", 7, || -> () { panic!("corner {} is odd", 3) }).unwrap_err();
    assert_eq!(
        error.to_string(),
        "the polygon engine failed at \"a test\" on 7 corners: corner 3 is odd"
    );
}

#[test]
fn a_disc_given_by_its_radius_has_the_area_of_the_disc() {
    let disc = Region::disc(Place::new(3.0, -2.0), 0.4).unwrap();
    near(disc.area_m2(), std::f64::consts::PI * 0.16, 1e-12);
    let middle = disc.centroid().unwrap();
    near(middle.distance_m(Place::new(3.0, -2.0)), 0.0, 1e-12);
}

#[test]
fn a_line_is_inside_for_its_length_inside() {
    let lawn = rectangle(0.0, 0.0, 10.0, 10.0)
        .minus(&rectangle(4.0, 4.0, 6.0, 6.0))
        .unwrap();
    let line = ring(&[(-5.0, 5.0), (15.0, 5.0), (15.0, 20.0)]);
    near(lawn.length_inside_m(&line), 8.0, 1e-9);
    near(lawn.length_inside_m(&ring(&[(4.0, 1.0), (4.0, 9.0)])), 6.0, 1e-9);
    assert_eq!(Region::empty().length_inside_m(&line), 0.0);
}

#[test]
fn filling_holes_joins_an_island_with_the_ground_around_it() {
    let lawn = rectangle(0.0, 0.0, 10.0, 10.0)
        .minus(&rectangle(2.0, 2.0, 8.0, 8.0))
        .unwrap()
        .union(&rectangle(4.0, 4.0, 6.0, 6.0))
        .unwrap();
    assert_eq!(lawn.parts().len(), 2);
    near(lawn.filled().area_m2(), 100.0, 1e-6);
    assert_eq!(lawn.filled().parts().len(), 1);
}

#[test]
fn a_simplified_outline_stays_near_the_outline() {
    let disc = many_cornered_disc((0.0, 0.0), 10.0);
    let outline = disc.outline_simplified(0.05);
    assert!(outline[0][0].len() < 80, "{}", outline[0][0].len());
    let coarse = Region::from_rings(outline).unwrap();
    near(coarse.area_m2(), disc.area_m2(), disc.perimeter_m() * 0.05);
    assert_eq!(disc.outline_simplified(0.0), disc.rings());
}

/// A star around the origin: any angles and radii make a simple polygon.
fn star() -> impl Strategy<Value = Region> {
    let corner = (0.5f64..20.0, 0.05f64..1.0);
    (
        prop::collection::vec(corner, 3..80),
        -10.0f64..10.0,
        -10.0f64..10.0,
    )
        .prop_map(|(corners, east_m, north_m)| {
            let total: f64 = corners.iter().map(|corner| corner.1).sum();
            let mut angle_rad = 0.0;
            let corners: Vec<(f64, f64)> = corners
                .iter()
                .map(|(radius_m, turn)| {
                    angle_rad += turn / total * std::f64::consts::TAU;
                    (
                        east_m + radius_m * math::cos(angle_rad),
                        north_m + radius_m * math::sin(angle_rad),
                    )
                })
                .collect();
            region(&corners)
        })
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(128))]

    #[test]
    fn the_parts_of_two_regions_add_up(a in star(), b in star()) {
        let both = a.intersect(&b).unwrap().area_m2();
        let either = a.union(&b).unwrap().area_m2();
        let only_a = a.minus(&b).unwrap().area_m2();
        let only_b = b.minus(&a).unwrap().area_m2();
        // The engine moves corners by up to a billionth of the extent, along each of the edges.
        let slack_m2 = 1e-6 * (a.perimeter_m() + b.perimeter_m());
        prop_assert!((a.area_m2() + b.area_m2() - both - either).abs() < slack_m2);
        prop_assert!((a.area_m2() - both - only_a).abs() < slack_m2);
        prop_assert!((b.area_m2() - both - only_b).abs() < slack_m2);
    }

    #[test]
    fn area_and_contains_agree_with_the_library(a in star(), b in star(), east_m in -20.0f64..20.0, north_m in -20.0f64..20.0) {
        let region = a.minus(&b).unwrap();
        let shape = region.as_multi_polygon();
        prop_assert!((region.area_m2() - shape.unsigned_area()).abs() < 1e-9 * (1.0 + region.area_m2()));
        let place = Place::new(east_m, north_m);
        // On an edge the two rules differ; a random place lies on none.
        prop_assume!(region.edge_distance_m(place) > 0.0);
        prop_assert_eq!(region.contains(place), shape.contains(&geo_types::Point::new(east_m, north_m)));
    }

    #[test]
    fn rings_are_found_valid_as_the_library_finds_them(
        outers in prop::collection::vec(prop::collection::vec((0_i8..7, 0_i8..7), 3..7), 1..3),
        holes in prop::collection::vec(prop::collection::vec((1_i8..6, 1_i8..6), 3..5), 0..3),
    ) {
        let ring = |corners: &Vec<(i8, i8)>| geo_types::LineString::from_iter(
            corners.iter().map(|(x, y)| (f64::from(*x), f64::from(*y))),
        );
        let polygon = |outer: &Vec<(i8, i8)>| geo_types::Polygon::new(ring(outer), holes.iter().map(ring).collect());
        let shape = super::cleaned(outers.iter().map(polygon).collect());
        prop_assert_eq!(super::is_valid(&shape), shape.is_valid());
    }

    #[test]
    fn questions_with_and_without_the_index_of_edges_agree(a in star(), east_m in -25.0f64..25.0, north_m in -25.0f64..25.0) {
        let place = Place::new(east_m, north_m);
        let nearest = a.edges().map(|(p, q)| place.off_piece_m(p, q)).fold(f64::INFINITY, f64::min);
        prop_assert!((a.edge_distance_m(place) - nearest).abs() < 1e-12 * (1.0 + nearest));
        let crossings = a.edges().filter(|(p, q)| ring::ray_crosses(ring::coord(*p), ring::coord(*q), ring::coord(place))).count();
        prop_assert_eq!(a.contains(place), crossings % 2 == 1);
    }

    #[test]
    fn every_place_of_the_shrunken_ground_is_that_far_from_the_edge(a in star(), distance_m in 0.1f64..1.5) {
        let shrunken = a.grown_by(-distance_m, Joins::Round).unwrap();
        let grid = Grid { east_min_m: -31.0, north_min_m: -31.0, cell_m: 0.61, columns: 102, rows: 102 };
        let mask: BitGrid = crate::rasterise(&a, &grid);
        for (column, row) in mask.cells_on() {
            let place = grid.centre(column, row);
            let slack_m = a.edge_distance_m(place) - distance_m;
            // Arcs are polygons inside them: a place may lie between the two.
            if slack_m.abs() > 0.002 * distance_m + 1e-6 {
                prop_assert_eq!(shrunken.contains(place), slack_m > 0.0, "{:?} {}", place, slack_m);
            }
        }
        let outside = crate::rasterise(&shrunken, &grid);
        prop_assert!(outside.cells_on().all(|(column, row)| mask.get(column, row)));
    }
}
