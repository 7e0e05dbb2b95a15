use super::*;
use approx::assert_abs_diff_eq;
use tussock_simulate::{Machine, Run, TurnLaw, gardens};
use tussock_types::math;

/// Two rooms, 20 x 15 and 14 x 15, joined by a straight neck, the whole turned.
fn rooms(neck_width_m: f64, neck_length_m: f64, turn_deg: f64) -> Region {
    let (low, high) = (7.0 - 0.5 * neck_width_m, 7.0 + 0.5 * neck_width_m);
    let far = 20.0 + neck_length_m;
    let ring = [
        (0.0, 0.0),
        (20.0, 0.0),
        (20.0, low),
        (far, low),
        (far, 0.0),
        (far + 14.0, 0.0),
        (far + 14.0, 15.0),
        (far, 15.0),
        (far, high),
        (20.0, high),
        (20.0, 15.0),
        (0.0, 15.0),
        (0.0, 0.0),
    ];
    let (sine, cosine) = math::sin_cos(turn_deg.to_radians());
    let ring = ring
        .iter()
        .map(|(x, y)| Place::new(cosine * x - sine * y, sine * x + cosine * y))
        .collect();
    Region::from_rings(vec![vec![ring]]).unwrap()
}

fn home(clearance: &Clearance, turn_deg: f64) -> Option<usize> {
    let (sine, cosine) = math::sin_cos(turn_deg.to_radians());
    clearance.cell(Place::new(cosine - sine, sine + cosine))
}

#[test]
fn a_straight_neck_is_found_with_its_width_length_and_the_room_behind() {
    for (width_m, length_m, turn_deg) in [
        (0.8, 1.0, 0.0),
        (1.0, 4.0, 17.0),
        (1.6, 2.0, 45.0),
        (3.0, 8.0, 71.0),
    ] {
        let region = rooms(width_m, length_m, turn_deg);
        let clearance = Clearance::of(&region);
        let necks = necks(&clearance, &region, home(&clearance, turn_deg));
        assert_eq!(necks.len(), 1, "{width_m} {turn_deg}");
        assert_abs_diff_eq!(necks[0].width_m, width_m, epsilon = 1e-6);
        assert_abs_diff_eq!(necks[0].length_m, length_m, epsilon = 0.5);
        // The neck itself is shared between both sides.
        assert_abs_diff_eq!(
            necks[0].behind_m2,
            14.0 * 15.0,
            epsilon = 0.6 * width_m * length_m + 3.0
        );
        assert_abs_diff_eq!(
            necks[0].all_m2,
            region.area_m2(),
            epsilon = 0.01 * region.area_m2()
        );
    }
}

#[test]
fn open_lawns_have_no_necks() {
    for seed in 0..6 {
        let plan = gardens::invent(gardens::GardenKind::Convex, seed);
        let (site, _) = tussock_plane::Site::build(&plan).unwrap();
        let clearance = Clearance::of(&site.lawn);
        assert!(necks(&clearance, &site.lawn, None).is_empty(), "{seed}");
    }
}

// Two lawns 1 m wide in the neck: one part for a setback of 0.49 m, two for 0.51 m (closed form).
#[test]
fn a_neck_closes_when_the_setback_passes_half_its_width() {
    let region = rooms(1.0, 3.0, 0.0);
    let parts = |setback_m: f64| {
        region
            .grown_by(-setback_m, tussock_plane::Joins::Mitred)
            .unwrap()
            .parts()
            .len()
    };
    assert_eq!((parts(0.49), parts(0.51)), (1, 2));
    let clearance = Clearance::of(&region);
    let neck = &necks(&clearance, &region, None)[0];
    assert!(neck.free_m(0.49) > 0.0 && neck.free_m(0.51) < 0.0);
    assert_eq!(neck.crossings_expected(10_000.0, 0.51), 0.0);
}

#[test]
fn the_reach_ends_at_a_neck_that_is_too_narrow() {
    let region = rooms(1.0, 3.0, 0.0);
    let clearance = Clearance::of(&region);
    let start = home(&clearance, 0.0).unwrap();
    let far = clearance.cell(Place::new(30.0, 7.0)).unwrap();
    let reach = |setback_m| crate::clearance::Reach::of(&clearance, &[start], setback_m, 0.11);
    assert!(reach(0.3).reached[far]);
    assert!(!reach(0.6).reached[far] && reach(0.6).anywhere[far]);
    // A disc of 0.22 m about a middle 0.3 m inside leaves a strip of 0.19 m.
    let strip = reach(0.3).reached.iter().filter(|one| !**one).count();
    let ground = clearance.clear_m.iter().filter(|clear_m| **clear_m > 0.0).count();
    let left_m2 = (strip + ground - clearance.clear_m.len()) as f64 * clearance.grid.cell_m2();
    assert_abs_diff_eq!(
        left_m2,
        0.19 * region.perimeter_m(),
        epsilon = 0.06 * region.perimeter_m()
    );
}

/// Seeds of the runs whose crossings are counted.
const SEEDS: std::ops::Range<u64> = 1..13;

/// A roaming machine goes through necks as often as Buffon's needle and the neck's length predict.
#[test]
fn crossings_of_simulated_machines_agree_with_the_formula() {
    for (width_m, length_m) in [(1.0, 1.0), (1.5, 4.0), (3.0, 2.0)] {
        let region = rooms(width_m, length_m, 0.0);
        let setback_m = 0.1;
        let site = site_of(&region);
        let clearance = Clearance::of(&region);
        let neck = &necks(&clearance, &region, home(&clearance, 0.0))[0];
        let machine = Machine {
            past_boundary_m: -setback_m,
            turn_law: TurnLaw::CosineFromNormal,
            // No outings: the long run counts.
            roaming: tussock_simulate::Spell::Fixed { s: 1e6 },
            ..Machine::default()
        };
        let yard = tussock_simulate::Yard::new(&site, -setback_m).unwrap();
        let (mut crossings, mut expected) = (0, 0.0);
        for seed in SEEDS {
            let run = yard.drive(&machine, &Run::new(24.0, seed)).unwrap();
            let line: Vec<Place> = run.vertices.iter().map(|vertex| vertex.place).collect();
            let traffic = neck.traffic(
                &clearance,
                std::iter::once(line.as_slice()),
                0.5 * length_m + 0.2,
                0.0,
            );
            crossings += traffic.crossings;
            expected += neck.crossings_expected(traffic.all_m, setback_m);
        }
        assert!(expected > 100.0);
        assert_abs_diff_eq!(crossings as f64 / expected, 1.0, epsilon = 0.15);
    }
}

fn site_of(region: &Region) -> tussock_plane::Site {
    let frame = tussock_plane::Frame::at(gardens::ORIGIN);
    let geo = |place: &Place| frame.to_geo(*place);
    let feature = |role, shape, index| tussock_types::PlanFeature::new(role, "", index, shape);
    let polygons = region
        .rings()
        .iter()
        .map(|rings| tussock_types::GeoPolygon {
            rings: rings.iter().map(|ring| ring.iter().map(geo).collect()).collect(),
        })
        .collect();
    let plan = tussock_types::Plan {
        features: vec![
            feature(
                tussock_types::PlanRole::Lawn,
                tussock_types::PlanShape::Polygons(polygons),
                0,
            ),
            feature(
                tussock_types::PlanRole::Station,
                tussock_types::PlanShape::Point(geo(&Place::new(2.0, 0.0))),
                1,
            ),
        ],
    };
    tussock_plane::Site::build_in(&plan, frame).unwrap().0
}

// A shed 0.3 m from the fence: the gap is 0.3 m, not the 0 m at which the shed's own sides meet.
#[test]
fn a_gap_beside_a_corner_keeps_its_width() {
    let ring = |corners: &[(f64, f64)]| {
        corners
            .iter()
            .chain(corners.first())
            .map(|(x, y)| Place::new(*x, *y))
            .collect::<Vec<Place>>()
    };
    let outer = Region::from_rings(vec![vec![ring(&[
        (0.0, 0.0),
        (20.0, 0.0),
        (20.0, 10.0),
        (0.0, 10.0),
    ])]])
    .unwrap();
    let shed = Region::from_rings(vec![vec![ring(&[
        (10.0, 0.3),
        (11.0, 0.3),
        (11.0, 10.5),
        (10.0, 10.5),
    ])]])
    .unwrap();
    let region = outer.minus(&shed).unwrap();
    let clearance = Clearance::of(&region);
    let necks = necks(&clearance, &region, None);
    assert_eq!(necks.len(), 1);
    assert_abs_diff_eq!(necks[0].width_m, 0.3, epsilon = 1e-6);
}
