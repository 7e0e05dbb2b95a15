//! Do plan and log belong together, and what about things that neither shows?

use crate::aligned::{corners, off};
use crate::nights::{invented, job, logged, of_width};
use tussock::{AnalyseError, Calibrate, Survey, analyse, analyse_survey, mended_plan};
use tussock_plane::{Frame, Joins, Region, Site};
use tussock_simulate::gardens::{GardenKind, Surprise};
use tussock_simulate::{LogNoise, Machine, Run, simulate};
use tussock_types::{
    Findings, GeoPolygon, Place, Plan, PlanFeature, PlanFitVerdict, PlanRole, PlanShape, Said, Trace,
};

const SEED: u64 = 20_261_130;
const CUT_WIDTH_M: f64 = 0.22;

struct Night {
    plan: Plan,
    site: Site,
    trace: Trace,
}

fn night(kind: GardenKind, noise: LogNoise, seed: u64) -> Night {
    let garden = invented(kind, (400.0, 700.0), Surprise::None, seed);
    let (site, _) = Site::build(&garden.plan).expect("invented plans are sound");
    let run = simulate(&site, &Machine::default(), &Run::new(8.0, seed)).expect("there is room");
    let trace = logged(&run, &site, 1.0, noise, seed + 1);
    Night {
        plan: garden.plan,
        site,
        trace,
    }
}

fn asked(traces: &[Trace], plan: &Plan) -> Result<Findings, AnalyseError> {
    analyse(&job(traces, Some(plan), &of_width(CUT_WIDTH_M)))
}

fn findings(trace: &Trace, plan: &Plan) -> Findings {
    asked(std::slice::from_ref(trace), plan).expect("a night can be analysed")
}

fn fraction(findings: &Findings) -> f64 {
    let coverage = findings.coverage.as_ref().expect("the width is known");
    coverage.visited_fraction.estimate
}

#[test]
fn a_plan_beside_a_centimetre_log_gives_the_answer_of_the_right_one() {
    let Night { plan, site, trace } = night(GardenKind::Ell, LogNoise::CENTIMETRES, SEED);
    let right = findings(&trace, &plan);
    assert_eq!(
        right.plan_fit.as_ref().map(|fit| fit.verdict),
        Some(PlanFitVerdict::Fits)
    );
    for (east_m, north_m, turn_deg) in [
        (0.3, 0.0, 0.0),
        (-1.0, 1.0, 0.0),
        (2.0, 2.2, 0.0),
        (0.0, 0.0, 2.0),
    ] {
        let drawn = off(&plan, &site.frame, east_m, north_m, turn_deg);
        let found = findings(&trace, &drawn);
        let fit = found.plan_fit.as_ref().expect("a plan was given");
        assert_eq!(
            fit.verdict,
            PlanFitVerdict::Moved,
            "{east_m} {north_m} {turn_deg}"
        );
        assert!(
            (fraction(&found) - fraction(&right)).abs() < 0.004,
            "{east_m} {north_m} {turn_deg}: {} instead of {}",
            fraction(&found),
            fraction(&right)
        );
        assert_eq!(found.missed_pockets.len(), right.missed_pockets.len());
        assert_eq!(found.stuck_spots.len(), right.stuck_spots.len());
    }
}

/// The plan of another garden, with its middle placed on that of this one.
fn laid_over(other: &Night, site: &Site) -> Plan {
    let middle = |site: &Site| site.drawn_lawn.centroid().expect("a lawn has a middle");
    let (to, from) = (middle(site), middle(&other.site));
    let mut plan = other.plan.clone();
    plan.for_each_point(|point| {
        let at = other.site.frame.to_place(*point);
        let there = Place::new(
            at.east_m - from.east_m + to.east_m,
            at.north_m - from.north_m + to.north_m,
        );
        *point = site.frame.to_geo(there);
    });
    plan
}

#[test]
fn the_plan_of_another_garden_is_refused() {
    let kinds = [GardenKind::Ell, GardenKind::Convex, GardenKind::You];
    for (number, kind) in kinds.into_iter().enumerate() {
        let Night { site, trace, .. } = night(kind, LogNoise::CENTIMETRES, SEED + number as u64);
        let other = night(kinds[(number + 1) % kinds.len()], LogNoise::CENTIMETRES, SEED + 7);
        let plan = laid_over(&other, &site);
        let refused = asked(std::slice::from_ref(&trace), &plan);
        assert!(
            matches!(refused, Err(AnalyseError::PlanOfAnotherGarden { .. })),
            "{kind:?}: {:?}",
            refused.map(|found| found.plan_fit)
        );
    }
}

#[test]
fn where_the_log_does_not_show_how_the_plan_lies_nothing_is_blamed_on_it() {
    let Night { plan, site, trace } = night(GardenKind::Ell, LogNoise::DECIMETRES, SEED);
    // A lawn that is drawn too large all round.
    let asked = |by_m: f64| {
        let grown = site
            .drawn_lawn
            .grown_by(by_m, Joins::Mitred)
            .expect("it is simple");
        let rings = grown.rings().swap_remove(0).into_iter();
        let ring = |ring: Vec<Place>| ring.into_iter().map(|place| site.frame.to_geo(place)).collect();
        let mut drawn = plan.clone();
        let lawn = (drawn.features.iter_mut()).find(|feature| feature.role == PlanRole::Lawn);
        lawn.expect("a plan has a lawn").shape = PlanShape::Polygons(vec![GeoPolygon {
            rings: rings.map(ring).collect(),
        }]);
        findings(&trace, &drawn)
    };
    // With an uncertainty at which no turn is near its edges, they may be anywhere.
    let unsure = asked(3.0);
    assert_eq!(
        unsure.plan_fit.as_ref().map(|fit| fit.verdict),
        Some(PlanFitVerdict::Unknown)
    );
    assert_eq!(unsure.suggestions.as_deref(), Some(&[][..]));
    assert!(!unsure.missed_pockets.is_empty(), "the rim is bare");
    for pocket in &unsure.missed_pockets {
        assert_eq!(pocket.causes.as_deref(), Some(&[][..]));
        assert_eq!(pocket.why, Said::CauseWithheld {});
    }
    // With a smaller one, the machine is seen to turn before the edge, and the report says so.
    let shown = asked(2.0);
    assert!(!shown.missed_pockets.is_empty(), "the rim is bare");
    for pocket in &shown.missed_pockets {
        assert!(
            matches!(pocket.why, Said::TurnsBeforeEdge { .. }),
            "{:?}",
            pocket.why
        );
    }
}

fn square(frame: &Frame, middle: Place, half_m: f64) -> PlanShape {
    let corner = |east: f64, north: f64| {
        frame.to_geo(Place::new(
            middle.east_m + east * half_m,
            middle.north_m + north * half_m,
        ))
    };
    PlanShape::Polygons(vec![GeoPolygon {
        rings: vec![vec![
            corner(-1.0, -1.0),
            corner(1.0, -1.0),
            corner(1.0, 1.0),
            corner(-1.0, 1.0),
            corner(-1.0, -1.0),
        ]],
    }])
}

#[test]
fn a_zone_that_is_driven_over_is_named_and_one_that_is_not_is_none() {
    let Night { plan, site, trace } = night(GardenKind::Convex, LogNoise::CENTIMETRES, SEED);
    let is_driven = |found: &Findings| {
        let remarks = &found.log_verdict.remarks;
        remarks.iter().any(|said| matches!(said, Said::ZoneDriven { .. }))
    };
    assert!(!is_driven(&findings(&trace, &plan)));
    let middle = site.drawn_lawn.centroid().expect("a lawn has a middle");
    let mut drawn = plan.clone();
    drawn.features.push(PlanFeature {
        role: PlanRole::Exclusion,
        name: "old bed".to_owned(),
        shape: square(&site.frame, middle, 2.0),
        ..plan.features[0].clone()
    });
    let found = findings(&trace, &drawn);
    assert!(is_driven(&found), "{:?}", found.log_verdict.remarks);
    assert_eq!(found.plan_fit.expect("a plan was given").driven_zones.len(), 1);
}

#[test]
fn an_hour_of_silence_is_in_the_estimate_and_in_the_interval() {
    let (mut held, mut nights) = (0, 0);
    for seed in SEED..SEED + 3 {
        let Night { plan, trace, .. } = night(GardenKind::Convex, LogNoise::CENTIMETRES, seed);
        let whole = findings(&trace, &plan);
        for silent_from in [4000, 14_000] {
            let mut cut = Trace::geographic("");
            let kept = (0..trace.len()).filter(|at| !(silent_from..silent_from + 3600).contains(at));
            kept.for_each(|at| cut.push(trace.fix(at)));
            let found = findings(&cut, &plan);
            let coverage = found.coverage.as_ref().expect("the width is known");
            let (low, high) = coverage
                .visited_fraction
                .low
                .zip(coverage.visited_fraction.high)
                .expect("an interval");
            nights += 1;
            held += usize::from((low..=high).contains(&fraction(&whole)));
            assert!(high - low > 0.005, "{low} to {high}");
        }
    }
    assert!(held + 1 >= nights, "{held} of {nights}");
}

#[test]
fn each_machine_charges_at_its_own_station() {
    let Night { plan, site, trace } = night(GardenKind::Convex, LogNoise::CENTIMETRES, SEED);
    let own = site.station.expect("invented plans have one");
    let middle = site.drawn_lawn.centroid().expect("a lawn has a middle");
    let across = Place::new(
        2.0 * middle.east_m - own.east_m,
        2.0 * middle.north_m - own.north_m,
    );
    let moved_to = |plan: &Plan, station: Place| {
        let mut plan = plan.clone();
        for feature in plan
            .features
            .iter_mut()
            .filter(|feature| feature.role == PlanRole::Station)
        {
            feature.shape = PlanShape::Point(site.frame.to_geo(station));
        }
        plan
    };
    let other_plan = moved_to(&plan, across);
    let (other_site, _) = Site::build_in(&other_plan, site.frame).expect("a sound plan");
    let run = simulate(&other_site, &Machine::default(), &Run::new(8.0, SEED + 3)).expect("there is room");
    let other = logged(&run, &other_site, 1.0, LogNoise::CENTIMETRES, SEED + 4);
    let mut both = plan.clone();
    let stations = other_plan
        .features
        .iter()
        .filter(|feature| feature.role == PlanRole::Station);
    both.features.extend(stations.cloned());
    let found = asked(&[trace, other], &both).expect("two nights can be analysed");
    assert!(found.stuck_spots.is_empty(), "{:?}", found.stuck_spots);
    assert!(found.machines.iter().all(|machine| machine.outings > Some(0)));
}

/// The plan with one side of its lawn drawn outwards.
fn with_a_side_out(plan: &Plan, frame: &Frame, out_m: f64) -> Plan {
    let mut drawn = plan.clone();
    let lawn = (drawn.features.iter_mut()).find(|feature| feature.role == PlanRole::Lawn);
    let Some(PlanShape::Polygons(polygons)) = lawn.map(|lawn| &mut lawn.shape) else {
        panic!("a plan has a lawn")
    };
    let ring = &mut polygons[0].rings[0];
    let places: Vec<Place> = ring.iter().map(|point| frame.to_place(*point)).collect();
    let length_m = |at: &usize| places[*at].distance_m(places[at + 1]);
    // Not the first, whose corner is at both ends of the ring.
    let longest = (1..places.len() - 2).max_by(|a, b| length_m(a).total_cmp(&length_m(b)));
    let at = longest.expect("a lawn has sides");
    let length_m = length_m(&at);
    let (east, north) = (
        (places[at + 1].east_m - places[at].east_m) / length_m,
        (places[at + 1].north_m - places[at].north_m) / length_m,
    );
    let doubled_m2: f64 = (places.windows(2))
        .map(|pair| pair[0].east_m * pair[1].north_m - pair[1].east_m * pair[0].north_m)
        .sum();
    let out_m = out_m * doubled_m2.signum();
    for corner in [at, at + 1] {
        let place = places[corner];
        ring[corner] = frame.to_geo(Place::new(
            place.east_m + out_m * north,
            place.north_m - out_m * east,
        ));
    }
    drawn
}

#[test]
fn the_mended_plan_is_that_of_the_garden() {
    let Night { plan, site, trace } = night(GardenKind::Ell, LogNoise::CENTIMETRES, SEED);
    let mut drawn = with_a_side_out(&plan, &site.frame, 0.5);
    let middle = site.drawn_lawn.rings()[0][0]
        .iter()
        .fold(Place::default(), |sum, place| {
            let corners = site.drawn_lawn.rings()[0][0].len() as f64;
            Place::new(
                sum.east_m + place.east_m / corners,
                sum.north_m + place.north_m / corners,
            )
        });
    let index = drawn.features.len();
    drawn.features.push(PlanFeature::new(
        PlanRole::Exclusion,
        "old bed",
        index,
        square(&site.frame, middle, 1.5),
    ));
    let drawn = off(&drawn, &site.frame, -1.0, 0.8, 0.0);
    let settings = of_width(CUT_WIDTH_M);
    let traces = [trace];
    let asked = job(&traces, Some(&drawn), &settings);
    let survey = Survey::of(&asked).expect("a night can be surveyed");
    let found = analyse_survey(&survey, Calibrate::Auto).expect("a night can be analysed");
    let mended = mended_plan(&survey, &found).expect("it is the plan of this garden");
    assert_eq!(
        (mended.sides, mended.left_out.as_slice()),
        (1, &["old bed".to_owned()][..])
    );
    assert!((mended.moved_m - 1.28).abs() < 0.1, "{}", mended.moved_m);
    let (truth, mended_corners) = (corners(&plan, &site.frame), corners(&mended.plan, &site.frame));
    for (there, here) in truth.iter().zip(&mended_corners) {
        assert!(there.distance_m(*here) < 0.12, "{truth:?}\n{mended_corners:?}");
    }
    // The map shows the side where it really is, although the plan is displaced from the log.
    let [side] = found.plan_fit.as_ref().expect("a plan was given").edges[..] else {
        panic!("one side was drawn elsewhere: {:?}", found.plan_fit)
    };
    let middle = (survey.frame.expect("the log is on Earth")).to_geo(side.line[0].middle(side.line[1]));
    let off_m = site.drawn_lawn.edge_distance_m(site.frame.to_place(middle));
    assert!(off_m < 0.12, "{off_m}");
    // And nothing is left to mend.
    let again = findings(&traces[0], &mended.plan);
    let fit = again.plan_fit.as_ref().expect("a plan was given");
    assert_eq!(fit.verdict, PlanFitVerdict::Fits);
    assert!(fit.edges.is_empty() && fit.driven_zones.is_empty(), "{fit:?}");
}

#[test]
fn what_the_plan_lacks_is_added_where_it_stands() {
    let Night { plan, site, trace } = night(GardenKind::Islands, LogNoise::CENTIMETRES, SEED);
    let stands = |feature: &PlanFeature| matches!(feature.role, PlanRole::Exclusion | PlanRole::Obstacle);
    let mut drawn = plan.clone();
    drawn.features.retain(|feature| !stands(feature));
    assert!(
        drawn.features.len() < plan.features.len(),
        "something stands in the lawn"
    );
    let settings = of_width(CUT_WIDTH_M);
    let traces = [trace];
    let asked = job(&traces, Some(&drawn), &settings);
    let survey = Survey::of(&asked).expect("a night can be surveyed");
    let found = analyse_survey(&survey, Calibrate::Auto).expect("a night can be analysed");
    let mended = mended_plan(&survey, &found).expect("it is the plan of this garden");
    let added: Vec<&PlanFeature> = mended
        .plan
        .features
        .iter()
        .filter(|feature| stands(feature))
        .collect();
    let missing = plan.features.len() - drawn.features.len();
    assert_eq!((added.len(), mended.added), (missing, missing));
    let (mended_site, _) = Site::build(&mended.plan).expect("a mended plan is sound");
    let ground = |site: &Site| site.drivable().expect("there is a lawn");
    let (truth, after) = (ground(&site), ground(&mended_site));
    let wrong_m2 = |ground: &Region| {
        let over = ground.minus(&truth).expect("regions");
        let under = truth.minus(ground).expect("regions");
        over.area_m2() + under.area_m2()
    };
    // Circles stand for what is no circle.
    assert!(
        wrong_m2(&after) < 0.25 * wrong_m2(&site.drawn_lawn),
        "{}",
        wrong_m2(&after)
    );
}
