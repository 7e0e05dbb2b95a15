//! Check values of geodesy. Those of the standard: IOGP Publication 373-7-2, Geomatics Guidance Note 7 part 2 (2019).
//! Those of geodesics: GeographicLib (Karney 2013) and its published test cases.

use super::*;
use geo::line_measures::metric_spaces::Geodesic;
use geo::{Bearing, Destination, Distance, GeodesicArea};
use geo_types::{Point, Polygon};
use proptest::prelude::*;
use tussock_types::math;

fn at(lat_deg: f64, lon_deg: f64) -> GeoPoint {
    GeoPoint { lat_deg, lon_deg }
}

fn lon_lat(point: GeoPoint) -> Point<f64> {
    Point::new(point.lon_deg, point.lat_deg)
}

fn close(found: &[f64], expected: &[f64], tolerance: f64) {
    assert_eq!(found.len(), expected.len());
    for (f, e) in found.iter().zip(expected) {
        assert!(
            (f - e).abs() <= tolerance,
            "{found:?} is not {expected:?} within {tolerance}"
        );
    }
}

#[test]
fn geo_01_the_ellipsoid_is_wgs_84() {
    // EPSG ellipsoid 7030.
    let e2 = eccentricity_squared();
    let semi_minor_m = SEMI_MAJOR_M * (1.0 - 1.0 / INVERSE_FLATTENING);
    let relative =
        |found: f64, expected: f64| assert!((found / expected - 1.0).abs() < 1e-14, "{found} {expected}");
    relative(SEMI_MAJOR_M, 6_378_137.0);
    relative(INVERSE_FLATTENING, 298.257_223_563);
    relative(semi_minor_m, 6_356_752.314_245_179);
    relative(e2, 0.006_694_379_990_141_316_5);
    relative(e2 / (1.0 - e2), 0.006_739_496_742_276_434);
}

#[test]
fn geo_02_and_03_radii_and_degrees_have_their_lengths() {
    // IOGP 373-7-2, section 4.1.1. A thousandth of a degree on the plane is a thousandth of the degree's length to
    // within the curvature, which enters with the third power.
    let rows = [
        (0.0, 110_574.275_8, 111_319.490_8),
        (30.0, 110_852.442_5, 96_486.280_3),
        (45.0, 111_131.777_4, 78_846.835_1),
        (52.0, 111_267.353_3, 68_678.016_1),
        (60.0, 111_412.287_5, 55_800.001_6),
        (70.0, 111_562.025_1, 38_186.541_3),
    ];
    for (lat_deg, north_m, east_m) in rows {
        let frame = Frame::at(at(lat_deg, 7.0));
        let step_deg = 1e-4;
        let north = frame.to_place(at(lat_deg + step_deg, 7.0)).north_m
            - frame.to_place(at(lat_deg - step_deg, 7.0)).north_m;
        let east = frame.to_place(at(lat_deg, 7.0 + step_deg)).east_m;
        close(
            &[north / 2.0 / step_deg, east / step_deg],
            &[north_m, east_m],
            1e-3,
        );
    }
}

const IOGP_POINT: GeoPoint = GeoPoint {
    lat_deg: 53.0 + 48.0 / 60.0 + 33.820 / 3600.0,
    lon_deg: 2.0 + 7.0 / 60.0 + 46.380 / 3600.0,
};

#[test]
fn geo_04_geographic_to_geocentric_as_in_the_standard() {
    close(
        &geocentric_m(IOGP_POINT, 73.0),
        &[3_771_793.968, 140_253.342, 5_124_304.349],
        1e-3,
    );
}

#[test]
fn geo_05_the_topocentric_origin_as_in_the_standard() {
    close(
        &geocentric_m(at(55.0, 5.0), 200.0),
        &[3_652_755.305_8, 319_574.679_9, 5_201_547.353_6],
        1e-4,
    );
}

#[test]
fn geo_06_geographic_to_topocentric_as_in_the_standard() {
    let plane = Topocentric::at(at(55.0, 5.0), 200.0);
    close(
        &plane.to_east_north_up_m(IOGP_POINT, 73.0),
        &[-189_013.869, -128_642.040, -4_220.171],
        1e-3,
    );
}

#[test]
fn geo_09_and_10_the_reference_geodesics_are_karneys() {
    // GeographicLib test cases GeodSolve0 and GeodSolve1: that the oracle of the tests below is the right one.
    let (from, to) = (Point::new(-73.8, 40.6), Point::new(2.55, 49.016_666_67));
    close(&[Geodesic.distance(from, to)], &[5_853_226.255_6], 1e-4);
    close(&[Geodesic.bearing(from, to)], &[53.470_218_239_4], 1e-9);
    let end = Geodesic.destination(Point::new(-73.778_888_89, 40.639_722_22), 53.5, 5_850_000.0);
    close(&[end.y(), end.x()], &[49.014_668_928_9, 2.561_062_258_6], 1e-9);
}

#[test]
fn geo_11_to_13_the_reference_areas_are_karneys() {
    // GeographicLib test case Planimeter0.
    let ring = |points: [(f64, f64); 4]| {
        let polygon = Polygon::new(points.map(|(lat, lon)| (lon, lat)).to_vec().into(), vec![]);
        let (perimeter_m, area_m2) = polygon.geodesic_perimeter_area_signed();
        [perimeter_m, area_m2]
    };
    let check = |found: [f64; 2], perimeter_m: f64, area_m2: f64| {
        close(&[found[0]], &[perimeter_m], 1e-4);
        close(&[found[1]], &[area_m2], 1.0);
    };
    check(
        ring([(89.0, 0.0), (89.0, 90.0), (89.0, 180.0), (89.0, 270.0)]),
        631_819.874_5,
        24_952_305_678.0,
    );
    check(
        ring([(-89.0, 0.0), (-89.0, 90.0), (-89.0, 180.0), (-89.0, 270.0)]),
        631_819.874_5,
        -24_952_305_678.0,
    );
    check(
        ring([(0.0, -1.0), (-1.0, 0.0), (0.0, 1.0), (1.0, 0.0)]),
        627_598.273_1,
        24_619_419_146.0,
    );
}

/// A lawn of 40 by 25 metres.
const LAWN: [GeoPoint; 4] = [
    GeoPoint {
        lat_deg: 52.0,
        lon_deg: 5.0,
    },
    GeoPoint {
        lat_deg: 51.999_999_999,
        lon_deg: 5.000_582_428,
    },
    GeoPoint {
        lat_deg: 52.000_224_683,
        lon_deg: 5.000_582_431,
    },
    GeoPoint {
        lat_deg: 52.000_224_684,
        lon_deg: 5.0,
    },
];

#[test]
fn geo_14_a_lawn_has_its_geodesic_perimeter_and_area() {
    // GeographicLib PolygonArea: 129.99999385 m, 999.9998406 m2. A sphere of 6371 km would give 996.16 m2.
    for origin in [LAWN[0], at(52.000_112, 5.000_291)] {
        let frame = Frame::at(origin);
        let ring = LAWN.map(|point| frame.to_place(point)).to_vec();
        let region = crate::Region::from_rings(vec![vec![ring]]).unwrap();
        close(
            &[region.perimeter_m(), region.area_m2()],
            &[129.999_993_85, 999.999_840_6],
            1e-4,
        );
    }
}

#[test]
fn geo_15_its_corners_lie_where_the_standard_puts_them() {
    let frame = Frame::at(LAWN[0]);
    let expected = [
        (0.0, 0.0),
        (40.0, 0.000_049),
        (40.000_005, 25.000_043),
        (0.0, 24.999_994),
    ];
    for (point, (east_m, north_m)) in LAWN.iter().zip(expected) {
        let place = frame.to_place(*point);
        close(&[place.east_m, place.north_m], &[east_m, north_m], 2e-6);
    }
}

#[test]
fn geo_16_short_lines_have_their_length_and_direction() {
    // GeographicLib Inverse. The azimuth's tolerance is that of the printed figure and of a 2 micrometre end.
    let rows = [
        ("a", (52.0, 5.0), (52.0001, 5.0001), 13.075_582, 31.684_236),
        ("b", (52.0, 5.0), (52.001, 5.0), 111.267_363, 0.0),
        ("c", (52.0, 5.0), (52.0, 5.001), 68.678_016, 89.999_606),
        (
            "d",
            (-33.8568, 151.2153),
            (-33.857, 151.2155),
            28.890_653,
            140.162_111,
        ),
        ("e", (60.0, 25.0), (60.000_01, 25.000_01), 1.246_047, 26.603_645),
        ("f", (0.0, 0.0), (0.001, 0.001), 156.903_472, 45.192_423),
    ];
    for (row, from, to, length_m, azimuth_deg) in rows {
        let place = Frame::at(at(from.0, from.1)).to_place(at(to.0, to.1));
        let found_m = place.distance_m(Place::default());
        assert!((found_m - length_m).abs() < 2e-6, "GEO-16{row}: {found_m}");
        let found_deg = math::atan2(place.east_m, place.north_m).to_degrees();
        assert!((found_deg - azimuth_deg).abs() < 2e-6, "GEO-16{row}: {found_deg}");
    }
}

#[test]
fn geo_17_the_plane_is_true_to_micrometres_where_simpler_maps_are_not() {
    // Largest distance, over 24 azimuths, between mapped and geodesic polar coordinates: sphere of 6371 km,
    // equirectangular with the radii of curvature at the origin, tangent plane. Reference: GeographicLib Direct.
    let rows = [
        ("a", 52.0, 100.0, 0.319_731, 0.001_148, 0.0),
        ("b", 52.0, 1000.0, 3.198_868, 0.114_846, 4e-6),
        ("c", 45.0, 1000.0, 2.793_208, 0.089_795, 4e-6),
        ("d", 60.0, 1000.0, 3.632_258, 0.155_288, 4e-6),
        ("e", 30.0, 1000.0, 3.090_238, 0.051_924, 4e-6),
        ("f", 0.0, 1000.0, 5.612_977, 3e-6, 4e-6),
        ("g", 70.0, 1000.0, 4.096_008, 0.246_129, 4e-6),
    ];
    for (row, lat_deg, distance_m, sphere_m, radii_m, plane_m) in rows {
        let origin = at(lat_deg, 5.0);
        let e2 = eccentricity_squared();
        let sin = math::sin(f64::to_radians(lat_deg));
        let prime_vertical_m = SEMI_MAJOR_M / (1.0 - e2 * sin * sin).sqrt();
        let meridian_m = prime_vertical_m * (1.0 - e2) / (1.0 - e2 * sin * sin);
        let cos = math::cos(f64::to_radians(lat_deg));
        let mut worst = [0.0f64; 3];
        for step in 0..24 {
            let azimuth_deg = f64::from(step) * 15.0;
            let end = Geodesic.destination(lon_lat(origin), azimuth_deg, distance_m);
            let (s, c) = math::sin_cos(azimuth_deg.to_radians());
            let truth = Place::new(distance_m * s, distance_m * c);
            let (dlat, dlon) = ((end.y() - lat_deg).to_radians(), (end.x() - 5.0).to_radians());
            let mapped = [
                Place::new(6_371_000.0 * cos * dlon, 6_371_000.0 * dlat),
                Place::new(prime_vertical_m * cos * dlon, meridian_m * dlat),
                Frame::at(origin).to_place(at(end.y(), end.x())),
            ];
            for (worst, mapped) in worst.iter_mut().zip(mapped) {
                *worst = worst.max(mapped.distance_m(truth));
            }
        }
        for (found, expected) in worst.iter().zip([sphere_m, radii_m, plane_m]) {
            assert!((found - expected).abs() < 2e-6, "GEO-17{row}: {worst:?}");
        }
    }
}

#[test]
fn geo_18_the_ellipsoid_drops_below_the_plane() {
    let end = Geodesic.destination(Point::new(5.0, 52.0), 0.0, 1000.0);
    let up_m = Topocentric::at(at(52.0, 5.0), 0.0).to_east_north_up_m(at(end.y(), end.x()), 0.0)[2];
    close(&[up_m], &[-0.0784], 1e-4);
}

#[test]
fn geo_20_a_sphere_would_be_told_from_this_plane() {
    // Negative control: the haversine formula with 6371 km on true 100 m lines.
    let sphere = geo::HaversineMeasure::new(6_371_000.0);
    let from = Point::new(5.0, 52.0);
    for (azimuth_deg, haversine_m) in [(0.0, 99.9349), (45.0, 99.8077), (90.0, 99.6803)] {
        let to = Geodesic.destination(from, azimuth_deg, 100.0);
        close(&[sphere.distance(from, to)], &[haversine_m], 1e-3);
        let place = Frame::at(at(52.0, 5.0)).to_place(at(to.y(), to.x()));
        close(&[place.distance_m(Place::default())], &[100.0], 1e-6);
    }
}

#[test]
fn geo_21_east_north_up_of_three_points() {
    let plane = Topocentric::at(at(52.0, 5.0), 0.0);
    let rows = [
        (at(52.001, 5.001), [68.6765, 111.2678, -0.0013]),
        (at(51.9995, 4.9992), [-54.9430, -55.6334, -0.0005]),
        (at(52.0089, 5.0145), [995.6337, 990.3795, -0.1545]),
    ];
    for (point, expected) in rows {
        close(&plane.to_east_north_up_m(point, 0.0), &expected, 1e-4);
    }
}

#[test]
fn the_antimeridian_is_no_edge() {
    let frame = Frame::at(at(-17.0, 179.9999));
    let place = frame.to_place(at(-17.0, -179.9999));
    assert!((place.east_m - 21.29).abs() < 0.1, "{place:?}");
    let back = frame.to_geo(place);
    assert!((back.lon_deg + 179.9999).abs() < 1e-12, "{back:?}");
}

#[test]
fn a_pole_is_a_place_like_others() {
    let frame = Frame::at(at(90.0, 0.0));
    let place = frame.to_place(at(89.9999, 90.0));
    assert!(
        (place.east_m - 11.169).abs() < 0.01 && place.north_m.abs() < 1e-8,
        "{place:?}"
    );
}

proptest! {
    #[test]
    fn there_and_back_is_the_same_position(
        lat in -89.9f64..89.9, lon in -180.0f64..180.0, east_m in -5e3f64..5e3, north_m in -5e3f64..5e3,
    ) {
        let frame = Frame::at(at(lat, lon));
        let place = Place::new(east_m, north_m);
        let back = frame.to_place(frame.to_geo(place));
        prop_assert!(back.distance_m(place) < 1e-8, "{place:?} {back:?}");
    }

    #[test]
    fn columns_equal_single_positions(lat in prop::collection::vec(-80.0f64..80.0, 0..20)) {
        let frame = Frame::at(at(50.0, 8.0));
        let lon: Vec<f64> = lat.iter().map(|lat| lat / 7.0).collect();
        let (east_m, north_m) = frame.places(&lat, &lon);
        for row in 0..lat.len() {
            prop_assert_eq!(frame.to_place(at(lat[row], lon[row])), Place::new(east_m[row], north_m[row]));
        }
    }

    #[test]
    fn distances_between_places_are_geodesic(
        lat in -80.0f64..80.0, east_a in -300.0f64..300.0, north_a in -300.0f64..300.0,
        east_b in -300.0f64..300.0, north_b in -300.0f64..300.0,
    ) {
        let frame = Frame::at(at(lat, 11.0));
        let (a, b) = (Place::new(east_a, north_a), Place::new(east_b, north_b));
        let geodesic_m = Geodesic.distance(lon_lat(frame.to_geo(a)), lon_lat(frame.to_geo(b)));
        // Between two places off the origin the plane's scale is 1 + d^2 / 2 R^2: below 4e-9 within 430 m.
        prop_assert!((geodesic_m - a.distance_m(b)).abs() < 1e-8 + 4e-9 * geodesic_m);
    }
}
