//! What a comparison says about halves of one log, about a change that was made, and about what was predicted.

use crate::nights::{self, logged, of_width};
use tussock::{Advice, Job, Side, Sides, analyse, built, compare};
use tussock_plane::{Frame, Site};
use tussock_simulate::gardens::{GardenKind, Surprise, Wish, invent_as};
use tussock_simulate::{LogNoise, Machine, Run, Sampling, sample, simulate};
use tussock_types::{
    BuiltAs, Comparison, Findings, GeoPolygon, LawnWhen, Place, Plan, PlanFeature, PlanRole, PlanShape,
    PocketChange, Settings, SuggestionKind, Trace,
};

const CUT_WIDTH_M: f64 = 0.22;

fn settings() -> Settings {
    of_width(CUT_WIDTH_M)
}

fn job<'a>(trace: &'a Trace, plan: &'a Plan, settings: &'a Settings, advice: Advice) -> Job<'a> {
    Job {
        advice,
        ..nights::job(std::slice::from_ref(trace), Some(plan), settings)
    }
}

/// A log of a machine on the ground, in the plane of the plan.
fn log(ground: &Plan, plan: &Plan, hours: f64, seed: u64) -> Trace {
    let (site, _) = Site::build(plan).unwrap();
    let (on_ground, _) = Site::build_in(ground, site.frame).unwrap();
    let run = simulate(&on_ground, &Machine::default(), &Run::new(hours, seed)).unwrap();
    logged(&run, &site, 1.0, LogNoise::CENTIMETRES, seed)
}

/// The part of a log from one fix to another.
fn part(trace: &Trace, from: usize, to: usize) -> Trace {
    let mut cut = Trace::geographic("");
    (from..to).for_each(|index| cut.push(trace.fix(index)));
    cut
}

pub(crate) fn frame() -> Frame {
    Frame::at(tussock_simulate::gardens::ORIGIN)
}

pub(crate) fn ring(corners: &[(f64, f64)]) -> PlanShape {
    let mut ring: Vec<_> = corners
        .iter()
        .map(|(x, y)| frame().to_geo(Place::new(*x, *y)))
        .collect();
    ring.push(ring[0]);
    PlanShape::Polygons(vec![GeoPolygon { rings: vec![ring] }])
}

pub(crate) fn feature(index: usize, role: PlanRole, name: &str, shape: PlanShape) -> PlanFeature {
    PlanFeature {
        role,
        name: name.to_owned(),
        index,
        shape,
        radius_m: None,
        outing_share_fraction: None,
    }
}

fn compared(before: (&Trace, &Plan), after: (&Trace, &Plan), advice: Advice) -> Comparison {
    let settings = settings();
    let (job_before, job_after) = (
        job(before.0, before.1, &settings, advice),
        job(after.0, after.1, &settings, Advice::LeftOut),
    );
    let (found_before, found_after) = (analyse(&job_before).unwrap(), analyse(&job_after).unwrap());
    let side = |findings, job| Side {
        names: vec!["log".to_owned()],
        findings,
        job: Some(job),
    };
    compare(&Sides {
        before: side(&found_before, &job_before),
        after: side(&found_after, &job_after),
        seed: 1,
    })
    .unwrap()
}

/// Halves of one log: the same machine, the same plan, equally many hours. True if the comparison finds any difference.
fn halves_differ(seed: u64) -> bool {
    let kind = GardenKind::ALL[(seed % 5) as usize];
    let garden = invent_as(&Wish::new(kind), seed);
    let whole = log(&garden.plan, &garden.plan, 16.0, seed);
    let half = whole.len() / 2;
    let (one, two) = (part(&whole, 0, half), part(&whole, half, whole.len()));
    let comparison = compared((&one, &garden.plan), (&two, &garden.plan), Advice::LeftOut);
    let luck = |change: PocketChange| matches!(change, PocketChange::Better);
    comparison.difference.is_real || comparison.pockets.iter().any(|pocket| luck(pocket.change))
}

#[test]
fn halves_of_the_same_log_hardly_ever_differ() {
    let differ = (0..6).filter(|seed| halves_differ(*seed)).count();
    assert!(differ <= 2, "{differ} of 6 pairs differ");
}

#[test]
#[ignore = "takes minutes: tests/run --full"]
fn halves_of_the_same_log_differ_in_at_most_a_tenth_of_a_hundred_pairs() {
    let differ = (0..100).filter(|seed| halves_differ(*seed)).count();
    println!("{differ} of 100 pairs of halves differ");
    assert!(differ <= 10, "{differ} of 100 pairs differ");
}

/// A fenced-off part is opened, so that a pocket gains at least 20 points: is it found? `None` if it gains less.
fn opened_part_is_found(seed: u64) -> Option<bool> {
    let kind = GardenKind::ALL[(seed % 5) as usize];
    let garden = invent_as(
        &Wish {
            surprise: Surprise::BlockedPart,
            ..Wish::new(kind)
        },
        seed,
    );
    let before = log(&garden.ground, &garden.plan, 8.0, seed);
    let after = log(&garden.plan, &garden.plan, 8.0, seed + 5000);
    let comparison = compared((&before, &garden.plan), (&after, &garden.plan), Advice::LeftOut);
    let pocket = comparison
        .pockets
        .iter()
        .find(|pocket| pocket.found == LawnWhen::Before)?;
    let gain = pocket.after_fraction.estimate - pocket.before_fraction.estimate;
    (gain >= 0.2).then_some(matches!(
        pocket.change,
        PocketChange::Mended | PocketChange::Better
    ))
}

#[test]
fn a_change_of_twenty_points_in_a_pocket_is_found() {
    let found: Vec<bool> = (0..6).filter_map(opened_part_is_found).collect();
    assert!(found.len() >= 3, "{} pockets gained", found.len());
    let share = found.iter().filter(|found| **found).count() as f64 / found.len() as f64;
    assert!(share >= 0.8, "{found:?}");
}

#[test]
#[ignore = "takes minutes: tests/run --full"]
fn a_change_of_twenty_points_in_a_pocket_is_found_in_four_of_five_of_many() {
    let found: Vec<bool> = (0..60).filter_map(opened_part_is_found).collect();
    let share = found.iter().filter(|found| **found).count() as f64 / found.len() as f64;
    println!("{share:.2} of {} changes found", found.len());
    assert!(found.len() >= 20 && share >= 0.8, "{share} of {}", found.len());
}

/// A lawn with a station and a heap of a given size in front of one end.
struct HeapedLawn {
    width_m: f64,
    depth_m: f64,
}

impl HeapedLawn {
    fn numbered(seed: u64) -> Self {
        Self {
            width_m: 22.0 + (seed % 5) as f64,
            depth_m: 9.0 + (seed % 4) as f64,
        }
    }

    fn plan(&self, heap_m: Option<f64>) -> Plan {
        let (width_m, depth_m) = (self.width_m, self.depth_m);
        let mut features = vec![feature(
            0,
            PlanRole::Lawn,
            "lawn",
            ring(&[(0.0, 0.0), (width_m, 0.0), (width_m, depth_m), (0.0, depth_m)]),
        )];
        if let Some(heap_m) = heap_m {
            let corners = [
                (width_m - heap_m, -0.5),
                (width_m + 0.5, -0.5),
                (width_m + 0.5, depth_m + 0.5),
                (width_m - heap_m, depth_m + 0.5),
            ];
            features.push(feature(1, PlanRole::Exclusion, "heap", ring(&corners)));
        }
        let station = PlanShape::Point(frame().to_geo(Place::new(4.0, 0.0)));
        features.push(feature(features.len(), PlanRole::Station, "station", station));
        Plan { features }
    }
}

/// A heap that no plan shows keeps the machine off one end of a lawn; a part of it, a quarter of that ground, is removed.
/// Returns the true gain of the pocket, and whether the comparison finds it.
fn quarter_is_found(seed: u64) -> Option<(f64, bool)> {
    let closed_m = 5.0 + 0.5 * (seed % 3) as f64;
    // A machine that turns 0.2 m before the heap, with half a cutting width, leaves about 0.1 m of what is opened.
    let opened_m = 0.25 * closed_m + 0.1;
    let lawn = HeapedLawn::numbered(seed);
    let plan = lawn.plan(None);
    let before = log(&lawn.plan(Some(closed_m)), &plan, 8.0, 40 + seed);
    let after = log(&lawn.plan(Some(closed_m - opened_m)), &plan, 8.0, 4000 + seed);
    let comparison = compared((&before, &plan), (&after, &plan), Advice::LeftOut);
    let pocket = comparison
        .pockets
        .iter()
        .filter(|pocket| pocket.found == LawnWhen::Before)
        .max_by(|a, b| a.area_m2.total_cmp(&b.area_m2))?;
    Some((
        pocket.after_fraction.estimate - pocket.before_fraction.estimate,
        pocket.change == PocketChange::Better,
    ))
}

fn quarters_are_found(seeds: std::ops::Range<u64>) {
    let count = seeds.end - seeds.start;
    let found: Vec<(f64, bool)> = seeds.filter_map(quarter_is_found).collect();
    assert!(found.len() as u64 == count, "{} of {count} pockets", found.len());
    assert!(
        found.iter().all(|(gain, _)| (0.17..0.33).contains(gain)),
        "{found:?}"
    );
    let share = found.iter().filter(|(_, found)| *found).count() as f64 / count as f64;
    assert!(share >= 0.8, "{share} of {found:?}");
}

#[test]
fn a_pocket_that_gains_hardly_more_than_twenty_points_is_found_better() {
    quarters_are_found(0..5);
}

#[test]
#[ignore = "takes minutes: tests/run --full"]
fn many_pockets_that_gain_hardly_more_than_twenty_points_are_found_better() {
    quarters_are_found(0..40);
}

/// Nights of five hours, day by day, in one trace.
fn log_of_nights(ground: &Plan, plan: &Plan, nights: u64, seed: u64) -> Trace {
    let mut all = Trace::geographic("");
    for night in 0..nights {
        let one = log(ground, plan, 5.0, seed + night);
        for index in 0..one.len() {
            let mut fix = one.fix(index);
            fix.time_s += 86_400.0 * night as f64;
            all.push(fix);
        }
    }
    all
}

/// Whether a garden without any change is called better, in a pocket or in the lawn, at any of several nights at which one
/// may stop.
fn unchanged_is_called_better(seed: u64, last: u64) -> bool {
    let lawn = HeapedLawn::numbered(seed);
    let heap_m = seed.is_multiple_of(2).then_some(4.0 + 0.5 * (seed % 3) as f64);
    let (plan, ground) = (lawn.plan(None), lawn.plan(heap_m));
    let before = log_of_nights(&ground, &plan, 1, 100 * seed + 7);
    (1..=last).any(|nights| {
        let after = log_of_nights(&ground, &plan, nights, 100 * seed + 50);
        let comparison = compared((&before, &plan), (&after, &plan), Advice::LeftOut);
        let is_better = |pocket: &tussock_types::ComparedPocket| {
            matches!(pocket.change, PocketChange::Better | PocketChange::Mended)
                && pocket.decided_after_nights.is_some()
        };
        let lawn = &comparison.difference;
        comparison.pockets.iter().any(is_better) || (lawn.is_real && lawn.visited_fraction.estimate > 0.0)
    })
}

/// Three nights after a part of a heap was removed, 30 points of the pocket are open: whether and when that is decided.
fn thirty_points_are_decided(seed: u64) -> Option<u32> {
    let lawn = HeapedLawn::numbered(seed);
    let closed_m = 5.0 + 0.5 * (seed % 3) as f64;
    let plan = lawn.plan(None);
    let before = log_of_nights(&lawn.plan(Some(closed_m)), &plan, 1, 100 * seed + 7);
    let after = log_of_nights(&lawn.plan(Some(0.7 * closed_m - 0.1)), &plan, 3, 100 * seed + 50);
    let comparison = compared((&before, &plan), (&after, &plan), Advice::LeftOut);
    let pockets = comparison.pockets.iter();
    pockets.filter_map(|pocket| pocket.decided_after_nights).min()
}

#[test]
fn a_garden_without_change_is_hardly_ever_called_better_at_whatever_night_one_stops() {
    let called = nights::in_parallel(4, |seed| unchanged_is_called_better(seed as u64, 3));
    assert!(called.iter().filter(|called| **called).count() <= 1, "{called:?}");
}

#[test]
#[ignore = "takes minutes: tests/run --full"]
fn of_a_hundred_gardens_without_change_at_most_five_are_called_better_at_any_night() {
    let called = nights::in_parallel(100, |seed| unchanged_is_called_better(seed as u64, 5));
    let called = called.into_iter().filter(|called| *called).count();
    println!("{called} of 100 gardens without change called better within five nights");
    assert!(called <= 5, "{called}");
}

#[test]
fn thirty_points_more_in_a_pocket_are_decided_within_three_nights() {
    let decided = nights::in_parallel(5, |seed| thirty_points_are_decided(seed as u64));
    assert!(decided.iter().flatten().count() >= 4, "{decided:?}");
}

#[test]
#[ignore = "takes minutes: tests/run --full"]
fn of_a_hundred_pockets_with_thirty_points_more_eighty_are_decided_within_three_nights() {
    let decided = nights::in_parallel(100, |seed| thirty_points_are_decided(seed as u64));
    let by = |nights: u32| decided.iter().flatten().filter(|at| **at <= nights).count();
    println!(
        "decided after 1, 2, 3 nights: {}, {}, {} of 100",
        by(1),
        by(2),
        by(3)
    );
    assert!(by(3) >= 80, "{decided:?}");
}

/// A lawn nearly closed by a zone: before, the suggestion, built, after. The prediction is shown beside what was measured.
#[test]
fn a_prediction_made_before_stands_beside_the_measurement_and_changed_ground_is_listed_apart() {
    let plan = pinched();
    let settings = settings();
    let before = log(&plan, &plan, 8.0, 3);
    let found: Findings = analyse(&job(&before, &plan, &settings, Advice::Given)).unwrap();
    let best = found.suggestions.as_ref().unwrap().first().unwrap().clone();
    assert_eq!(best.kind, SuggestionKind::ZoneShrink, "{best:?}");
    let (site, _) = Site::build(&plan).unwrap();
    let changed = built(&plan, &site.frame, &best);
    let after = log(&changed, &changed, 8.0, 4);
    let comparison = compared((&before, &plan), (&after, &changed), Advice::Given);
    assert!(comparison.difference.is_real, "{:?}", comparison.difference);
    assert!(comparison.difference.visited_fraction.estimate > 0.15);
    assert_eq!(comparison.pockets[0].change, PocketChange::Mended);
    // What the zone gave back is lawn only afterwards.
    assert!(
        comparison
            .changed
            .iter()
            .all(|ground| ground.lawn == LawnWhen::After)
    );
    let changed_m2: f64 = comparison.changed.iter().map(|ground| ground.area_m2).sum();
    let (site_after, _) = Site::build_in(&changed, site.frame).unwrap();
    let lawn_m2 = site_after.lawn.area_m2();
    assert!((comparison.common_m2 + changed_m2 - lawn_m2).abs() < 1.0);
    let held = &comparison.predictions[0];
    assert!(held.built == BuiltAs::Suggested && held.holds, "{held:?}");
    assert!((held.predicted_fraction.estimate - held.measured_fraction).abs() < 0.15);
    // Against the plan as it was, nothing was built.
    let again = compared((&before, &plan), (&after, &plan), Advice::Given);
    assert!(
        again
            .predictions
            .iter()
            .all(|held| held.built == BuiltAs::Nothing)
    );
    assert!(again.changed.is_empty());
}

/// A rectangle with a bed that leaves a way of 0.45 m at its far end, too narrow for a machine that turns 0.2 m before the edge.
pub(crate) fn pinched() -> Plan {
    Plan {
        features: vec![
            feature(
                0,
                PlanRole::Lawn,
                "lawn",
                ring(&[(0.0, 0.0), (24.0, 0.0), (24.0, 12.0), (0.0, 12.0)]),
            ),
            feature(
                1,
                PlanRole::Exclusion,
                "bed",
                ring(&[(15.0, -0.5), (17.0, -0.5), (17.0, 11.55), (15.0, 11.55)]),
            ),
            feature(
                2,
                PlanRole::Station,
                "station",
                PlanShape::Point(frame().to_geo(Place::new(5.0, 0.0))),
            ),
        ],
    }
}

/// The trace as logged by a receiver with its own offset.
fn beside(trace: &Trace, site: &Site, east_m: f64, north_m: f64) -> Trace {
    let mut shifted = Trace::geographic("");
    for index in 0..trace.len() {
        let mut fix = trace.fix(index);
        let place = site.frame.to_place(tussock_types::GeoPoint {
            lat_deg: fix.first,
            lon_deg: fix.second,
        });
        let geo = site.frame.to_geo(tussock_types::Place::new(
            place.east_m + east_m,
            place.north_m + north_m,
        ));
        (fix.first, fix.second) = (geo.lat_deg, geo.lon_deg);
        shifted.push(fix);
    }
    shifted
}

#[test]
fn two_receivers_that_lie_a_metre_apart_change_no_ground_and_no_pocket() {
    let garden = invent_as(
        &Wish {
            surprise: Surprise::BlockedPart,
            ..Wish::new(GardenKind::Ell)
        },
        3,
    );
    let (site, _) = Site::build(&garden.plan).unwrap();
    let (on_ground, _) = Site::build_in(&garden.ground, site.frame).unwrap();
    let logged = |seed| {
        let run = simulate(&on_ground, &Machine::default(), &Run::new(12.0, seed)).unwrap();
        let how = Sampling::geographic(1.0, LogNoise::DECIMETRES, seed, site.frame);
        sample(&run, &how)
    };
    let before = beside(&logged(31), &site, 1.0, 0.6);
    let after = beside(&logged(32), &site, -0.7, 0.5);
    let comparison = compared((&before, &garden.plan), (&after, &garden.plan), Advice::LeftOut);
    // Either log lies beside the plan, each on its own side.
    let offset = |findings: &Option<Box<Findings>>| findings.as_ref().unwrap().plan_offset().unwrap();
    assert!((offset(&comparison.findings_before).east_m - 1.0).abs() < 0.2);
    assert!((offset(&comparison.findings_after).east_m + 0.7).abs() < 0.2);
    assert!(comparison.changed.is_empty(), "{:?}", comparison.changed);
    assert!((comparison.common_m2 - site.lawn.area_m2()).abs() < 0.01 * site.lawn.area_m2());
    let closed_off = &comparison.pockets[0];
    assert_eq!(
        closed_off.change,
        PocketChange::Unchanged,
        "{:?}",
        closed_off.said
    );
    assert!(closed_off.after_fraction.estimate < 0.1, "{:?}", closed_off.said);
    assert!(!comparison.difference.is_real, "{:?}", comparison.said);
}
