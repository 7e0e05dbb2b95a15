//! What the first day shows, before anybody has drawn a plan: the outline, what stands in it, and how sure the fraction is.

use crate::nights::{driven, job, logged, of_width};
use tussock::{analyse, plan_from_trace};
use tussock_plane::{Frame, Region, Site};
use tussock_simulate::gardens::ORIGIN;
use tussock_simulate::{Counting, LogNoise, Machine, truth};
use tussock_types::{
    Cause, Findings, GeoPoint, GeoPolygon, OutlineSource, Place, Plan, PlanFeature, PlanRole, PlanShape,
    PromiseVerdict, Trace,
};

const SEED: u64 = 20_261_130;
const CUT_WIDTH_M: f64 = 0.22;
/// Beds of the garden: middle and radius.
const BEDS: [(f64, f64, f64); 3] = [(5.0, 5.0, 0.5), (11.0, 8.0, 1.0), (16.5, 4.5, 1.6)];

fn geo(place: Place) -> GeoPoint {
    Frame::at(ORIGIN).to_geo(place)
}

/// A lawn of 20 by 13 m with three beds and a station on its edge.
fn garden() -> Plan {
    let corners = [(0.0, 0.0), (20.0, 0.0), (20.0, 13.0), (0.0, 13.0), (0.0, 0.0)];
    let ring = corners.map(|(east_m, north_m)| geo(Place::new(east_m, north_m)));
    let lawn = PlanShape::Polygons(vec![GeoPolygon {
        rings: vec![ring.to_vec()],
    }]);
    let mut features = vec![PlanFeature::new(PlanRole::Lawn, "lawn".to_owned(), 0, lawn)];
    for (number, (east_m, north_m, radius_m)) in BEDS.into_iter().enumerate() {
        let point = PlanShape::Point(geo(Place::new(east_m, north_m)));
        features.push(PlanFeature {
            radius_m: Some(radius_m),
            ..PlanFeature::new(PlanRole::Obstacle, format!("bed {number}"), number + 1, point)
        });
    }
    let station = PlanShape::Point(geo(Place::new(8.0, 0.0)));
    features.push(PlanFeature::new(
        PlanRole::Station,
        "station".to_owned(),
        4,
        station,
    ));
    Plan { features }
}

/// A night of this many hours, and the fraction that was really visited.
fn night(plan: &Plan, hours: f64, noise: LogNoise) -> (Trace, Site, f64) {
    let (site, _) = Site::build(plan).unwrap();
    let machine = Machine {
        past_boundary_m: -0.16,
        ..Machine::default()
    };
    let run = driven(&site, &machine, hours, SEED);
    let visited = truth(&run, &site, &Counting::new(CUT_WIDTH_M, 0.04)).visited_fraction;
    (logged(&run, &site, 1.0, noise, SEED), site, visited)
}

fn analysed(trace: &Trace) -> Findings {
    let mut settings = of_width(CUT_WIDTH_M);
    settings.machine.body_width_m = Some(0.42);
    analyse(&job(std::slice::from_ref(trace), None, &settings)).unwrap()
}

/// Share of the true edges within a distance of a drawn one.
fn near_fraction(drawn: &Region, truth: &Region, within_m: f64) -> f64 {
    let places: Vec<Place> = (truth.edges())
        .flat_map(|(from, to)| from.pieces(to, 0.1).1)
        .collect();
    let near = places
        .iter()
        .filter(|place| drawn.edge_distance_m(**place) <= within_m);
    near.count() as f64 / places.len() as f64
}

#[test]
fn the_drive_draws_the_lawn_and_asks_about_what_it_went_round() {
    let grades = [
        (LogNoise::CENTIMETRES, 0.15, 0.9, 3),
        (LogNoise::DECIMETRES, 0.4, 0.8, 1),
    ];
    for (noise, within_m, least_share, beds) in grades {
        let (trace, site, truth) = night(&garden(), 8.0, noise);
        let findings = analysed(&trace);
        assert_eq!(findings.outline_source, OutlineSource::Trace);
        let frame = Frame::at(GeoPoint {
            lat_deg: findings.frame.origin_lat.unwrap(),
            lon_deg: findings.frame.origin_lon.unwrap(),
        });
        let moved = |ring: &Vec<Place>| {
            let places = ring.iter().map(|place| site.frame.to_place(frame.to_geo(*place)));
            places.collect()
        };
        let parts = findings.lawn_outline.iter();
        let drawn =
            Region::from_rings(parts.map(|rings| rings.iter().map(moved).collect()).collect()).unwrap();
        let share = near_fraction(&drawn, &site.lawn, within_m);
        assert!(share >= least_share, "{noise:?}: {share} of the edges");

        let islands = &findings.drawn_outline.as_ref().unwrap().islands;
        let found = BEDS.iter().filter(|(east_m, north_m, radius_m)| {
            let bed = site.frame.to_place(geo(Place::new(*east_m, *north_m)));
            islands.iter().any(|island| {
                let geo = GeoPoint {
                    lat_deg: island.lat.unwrap(),
                    lon_deg: island.lon.unwrap(),
                };
                let off_m = site.frame.to_place(geo).distance_m(bed);
                let true_m2 = std::f64::consts::PI * radius_m * radius_m;
                off_m < 0.5 * radius_m && (0.5 * true_m2..1.8 * true_m2).contains(&island.area_m2)
            })
        });
        assert!(
            found.count() >= beds && islands.len() <= 3,
            "{noise:?}: {islands:?}"
        );

        let visited = findings.coverage.as_ref().unwrap().visited_fraction;
        let held = visited.low.unwrap()..=visited.high.unwrap();
        assert!(held.contains(&truth), "{noise:?}: {truth} in {visited:?}");
        assert!(held.end() - held.start() < 0.12, "{noise:?}: {visited:?}");
        let promise = findings.over_time.as_ref().unwrap().promise.verdict;
        assert_eq!(promise, PromiseVerdict::CannotTell);
        let causes = findings
            .missed_pockets
            .iter()
            .flat_map(|pocket| pocket.causes.iter().flatten());
        assert!(causes.into_iter().all(|cause| cause.cause != Cause::WalledOff));
    }
}

#[test]
fn what_luck_left_out_in_the_first_hours_is_no_island() {
    let mut plan = garden();
    plan.features.retain(|feature| feature.role != PlanRole::Obstacle);
    for hours in [1.5, 3.0] {
        let (trace, _, truth) = night(&plan, hours, LogNoise::CENTIMETRES);
        let findings = analysed(&trace);
        let drawn = findings.drawn_outline.unwrap();
        assert!(
            drawn.islands.is_empty(),
            "{hours} h, {truth}: {:?}",
            drawn.islands
        );
    }
}

#[test]
fn a_plan_from_a_log_has_its_islands_as_obstacles() {
    let (trace, _, _) = night(&garden(), 8.0, LogNoise::CENTIMETRES);
    let settings = of_width(CUT_WIDTH_M);
    let drawn = plan_from_trace(&job(std::slice::from_ref(&trace), None, &settings)).unwrap();
    assert_eq!(drawn.of_role(PlanRole::Obstacle).count(), 3);
    assert_eq!(drawn.of_role(PlanRole::Station).count(), 1);
    let (site, faults) = Site::build(&drawn).unwrap();
    assert!(faults.is_empty(), "{faults:?}");
    let true_m2 = 260.0
        - BEDS
            .iter()
            .map(|(_, _, radius_m)| std::f64::consts::PI * radius_m * radius_m)
            .sum::<f64>();
    assert!(
        (site.lawn.area_m2() / true_m2 - 1.0).abs() < 0.03,
        "{} m2 of {true_m2}",
        site.lawn.area_m2()
    );
}
