//! The machine never leaves its ground, its clock never stands still, and the seed determines everything.

use proptest::prelude::*;
use tussock_plane::{Joins, Region, Site};
use tussock_simulate::gardens::{GardenKind, Surprise, Wish, invent_as};
use tussock_simulate::{
    Counting, Departure, Doing, EdgeRound, HomeWay, Lanes, Machine, Manner, Pattern, Run, Spell, StuckSpot,
    TrueRun, TurnLaw, TurnPair, Yard, simulate, truth,
};
use tussock_types::Place;

fn site(wish: &Wish, seed: u64) -> Site {
    Site::build(&invent_as(wish, seed).ground).unwrap().0
}

/// How far outside a region a place is; 0 inside.
fn outside_m(region: &Region, place: Place) -> f64 {
    if region.contains(place) {
        0.0
    } else {
        region.edge_distance_m(place)
    }
}

/// Every property that holds for every run.
fn keeps_its_promises(run: &TrueRun, region: &Region, machine: &Machine, hours: f64) {
    assert!(run.vertices.len() >= 2);
    assert_eq!(run.vertices[0].time_s, 0.0);
    assert!(
        (run.end_s() - hours * 3600.0).abs() < 1e-6,
        "ends at {}",
        run.end_s()
    );
    for (from, to) in run.pieces() {
        assert!(to.time_s > from.time_s, "clock stands still at {}", from.time_s);
        let length_m = from.place.distance_m(to.place);
        match from.doing {
            Doing::AtStation | Doing::Turning | Doing::Stranded => assert!(length_m < 1e-7),
            _ => {}
        }
        if matches!(from.doing, Doing::Driving | Doing::Turning | Doing::Stuck) {
            for part in [0.0, 0.25, 0.5, 0.75, 1.0] {
                let place = from.place.towards(to.place, part);
                let out_m = outside_m(region, place);
                assert!(
                    out_m < 1e-3,
                    "{out_m} m outside while {:?} at {} s",
                    from.doing,
                    from.time_s
                );
            }
        }
    }
    if machine.speed_sd_fraction == 0.0 && machine.slip_fraction == 0.0 && machine.slowing_m == 0.0 {
        let driven_m = run.driven_m();
        assert!((driven_m - machine.speed_mps * run.driving_s()).abs() < 1e-6 * driven_m.max(1.0));
    }
    let named_s: f64 = [
        Doing::AtStation,
        Doing::Driving,
        Doing::Transit,
        Doing::Turning,
        Doing::Reversing,
        Doing::Stuck,
        Doing::Stranded,
    ]
    .iter()
    .map(|doing| run.time_s(*doing))
    .sum();
    assert!((named_s - run.end_s()).abs() < 1e-6);
    assert!(
        run.outings
            .windows(2)
            .all(|pair| pair[0].end_s <= pair[1].start_s)
    );
    assert!(
        run.outings
            .iter()
            .all(|outing| outing.start_s <= outing.homeward_s && outing.homeward_s <= outing.end_s)
    );
    assert!(
        run.halts
            .windows(2)
            .all(|pair| pair[0].end_s <= pair[1].start_s + 1e-9)
    );
    let stuck_s: f64 = run
        .stuck
        .iter()
        .map(|episode| episode.end_s - episode.start_s)
        .sum();
    assert!((stuck_s - run.time_s(Doing::Stuck)).abs() < 1e-6);
}

fn laws() -> Vec<TurnLaw> {
    let pairs: Vec<TurnPair> = (0..50)
        .map(|number| TurnPair {
            mirror_rad: -1.4 + 0.056 * f64::from(number),
            out_rad: 1.2 - 0.048 * f64::from(number),
        })
        .collect();
    vec![
        TurnLaw::CosineFromNormal,
        TurnLaw::UniformFromNormal,
        TurnLaw::ReflectWithSpread { sd_deg: 20.0 },
        TurnLaw::ReflectWithSpread { sd_deg: 0.0 },
        TurnLaw::FromHeading {
            min_deg: 60.0,
            max_deg: 160.0,
        },
        TurnLaw::Observed {
            pairs: pairs.into(),
            neighbours: 10,
        },
    ]
}

fn kind() -> impl Strategy<Value = GardenKind> {
    prop_oneof![
        Just(GardenKind::Convex),
        Just(GardenKind::Ell),
        Just(GardenKind::Islands),
        (0.45_f64..2.0).prop_map(|passage_m| GardenKind::TwoRooms { passage_m }),
        Just(GardenKind::You),
    ]
}

fn edge_round() -> impl Strategy<Value = EdgeRound> {
    prop_oneof![
        Just(EdgeRound::Never),
        Just(EdgeRound::EachNight),
        Just(EdgeRound::EachOuting)
    ]
}

/// Where two stretches that were driven meet, the angle between them is that of one chord of an arc at most.
fn keeps_its_radius(run: &TrueRun, radius_m: f64) {
    // Chords leave arcs by 2 mm.
    let most_rad = (8.0 * 0.002 / radius_m).sqrt().min(0.5) + 1e-6;
    let pieces: Vec<_> = run.pieces().collect();
    for pair in pieces.windows(2) {
        let [(a, b), (_, c)] = [pair[0], pair[1]];
        let lengths_m = [a.place.distance_m(b.place), b.place.distance_m(c.place)];
        if (a.doing, b.doing) != (Doing::Driving, Doing::Driving) || lengths_m.iter().any(|&m| m < 1e-5) {
            continue;
        }
        let raw_rad = (b.heading_rad - a.heading_rad).abs();
        let turn_rad = raw_rad.min(std::f64::consts::TAU - raw_rad);
        let longest_m = lengths_m[0].max(lengths_m[1]);
        let one_chord_rad = 2.0 * (0.5 * longest_m / radius_m).min(1.0).asin() + 1e-4;
        assert!(
            turn_rad < most_rad.min(one_chord_rad),
            "{turn_rad} rad within {lengths_m:?} m at {} s",
            b.time_s
        );
    }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 96, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn a_roaming_machine_stays_on_its_ground_and_its_clock_runs(
        kind in kind(),
        seed in 0_u64..1_000_000,
        law in 0_usize..6,
        past_boundary_m in -0.4_f64..0.15,
        guide_share_fraction in proptest::option::of(0.0_f64..=1.0),
        surprise in prop_oneof![
            Just(Surprise::None),
            Just(Surprise::BlockedPart),
            Just(Surprise::UnlistedObstacle { radius_m: 0.4 }),
            Just(Surprise::ZoneMoved { by_m: 0.7 })
        ],
        rough in any::<bool>(),
        backwards in any::<bool>(),
        search_s in 0.0_f64..900.0,
    ) {
        let wish = Wish { kind, area_m2: (80.0, 900.0), guide_share_fraction, surprise };
        let site = site(&wish, seed);
        let mut machine = Machine {
            past_boundary_m,
            turn_law: laws()[law].clone(),
            departure: if backwards { Departure::Backwards } else { Departure::Forwards },
            home_way: HomeWay::GuideElseBoundary { search_s },
            roaming: Spell::Between { min_s: 600.0, max_s: 1800.0 },
            charging: Spell::Fixed { s: 900.0 },
            ..Machine::default()
        };
        if rough {
            machine.speed_sd_fraction = 0.05;
            machine.curvature_sd_per_m = 0.01;
            machine.slip_fraction = 0.05;
        }
        let middle = site.lawn.centroid().unwrap_or_default();
        let mut run = Run::new(3.0, seed);
        run.stuck_spots.push(StuckSpot {
            place: middle,
            radius_m: 0.6,
            probability: 0.3,
            duration: Spell::Between { min_s: 100.0, max_s: 300.0 },
            manner: if rough { Manner::Wiggles } else { Manner::Stands },
        });
        let yard = Yard::new(&site, past_boundary_m).unwrap();
        let driven = yard.drive(&machine, &run).unwrap();
        keeps_its_promises(&driven, yard.turning_region(), &machine, run.hours);
        prop_assert_eq!(&driven, &simulate(&site, &machine, &run).unwrap());
    }

    #[test]
    fn a_machine_that_turns_on_arcs_stays_on_its_ground_and_keeps_its_radius(
        kind in kind(),
        seed in 0_u64..1_000_000,
        law in 0_usize..6,
        past_boundary_m in -0.3_f64..0.1,
        turning_radius_m in 0.1_f64..1.0,
        slowing_m in prop_oneof![Just(0.0), 0.1_f64..1.0],
        curvature_sd_per_m in prop_oneof![Just(0.0), 0.001_f64..0.05],
        heading_walk_deg in prop_oneof![Just(0.0), 0.1_f64..5.0],
        slope_pull_per_m in prop_oneof![Just(0.0), 0.01_f64..0.1],
        edge_round in edge_round(),
    ) {
        let site = site(&Wish { area_m2: (80.0, 600.0), ..Wish::new(kind) }, seed);
        let machine = Machine {
            past_boundary_m,
            turn_law: laws()[law].clone(),
            turning_radius_m,
            slowing_m,
            curvature_sd_per_m,
            heading_walk_deg,
            slope_pull_per_m,
            edge_round,
            roaming: Spell::Fixed { s: 1500.0 },
            charging: Spell::Fixed { s: 900.0 },
            ..Machine::default()
        };
        let run = Run::new(2.0, seed);
        let yard = Yard::new(&site, past_boundary_m).unwrap();
        let driven = yard.drive(&machine, &run).unwrap();
        keeps_its_promises(&driven, yard.turning_region(), &machine, run.hours);
        // Edges have corners, and a bent leg bends at its pieces.
        if edge_round == EdgeRound::Never && curvature_sd_per_m + heading_walk_deg + slope_pull_per_m == 0.0 {
            keeps_its_radius(&driven, turning_radius_m);
        }
        prop_assert_eq!(&driven, &yard.drive(&machine, &run).unwrap());
    }

    #[test]
    fn a_machine_with_lanes_stays_on_its_ground_and_its_clock_runs(
        kind in kind(),
        seed in 0_u64..1_000_000,
        past_boundary_m in -0.4_f64..0.1,
        spacing_m in 0.15_f64..0.5,
        direction_deg in -180.0_f64..180.0,
        jitter_m in 0.0_f64..0.05,
        bends in any::<bool>(),
        headland_rounds in 0_usize..4,
        pause_s in prop_oneof![Just(0.0), 1.0_f64..5.0],
        slowing_m in prop_oneof![Just(0.0), 0.1_f64..1.0],
        edge_round in edge_round(),
    ) {
        let site = site(&Wish { area_m2: (80.0, 500.0), ..Wish::new(kind) }, seed);
        let machine = Machine {
            past_boundary_m,
            pattern: Pattern::Lanes(Lanes {
                turn_each_round_deg: 90.0,
                headland_rounds,
                pause_s,
                ..Lanes::new(spacing_m, direction_deg, jitter_m)
            }),
            slowing_m,
            edge_round,
            curvature_sd_per_m: if bends { 0.01 } else { 0.0 },
            ..Machine::default()
        };
        let run = Run::new(3.0, seed);
        let yard = Yard::new(&site, past_boundary_m).unwrap();
        let driven = yard.drive(&machine, &run).unwrap();
        keeps_its_promises(&driven, yard.turning_region(), &machine, run.hours);
        prop_assert!(driven.time_s(Doing::Stranded) == 0.0, "stranded {} s", driven.time_s(Doing::Stranded));
        prop_assert_eq!(&driven, &yard.drive(&machine, &run).unwrap());
    }
}

#[test]
fn only_a_roaming_machine_turns_on_arcs() {
    let site = site(&Wish::new(GardenKind::Ell), 3);
    let machine = Machine {
        turning_radius_m: 0.4,
        ..Machine::of(Pattern::Lanes(Lanes::new(0.2, 0.0, 0.0)))
    };
    let said = simulate(&site, &machine, &Run::new(1.0, 1))
        .unwrap_err()
        .to_string();
    assert_eq!(
        said,
        "turning_radius_m is 0.4; expected 0: only a roaming machine turns on arcs"
    );
}

#[test]
fn another_seed_is_another_run() {
    let site = site(&Wish::new(GardenKind::Ell), 3);
    let drive = |seed| simulate(&site, &Machine::default(), &Run::new(1.0, seed)).unwrap();
    assert_ne!(drive(1).vertices, drive(2).vertices);
}

#[test]
fn guided_outings_are_as_many_as_their_share_and_leave_the_guide_in_its_last_part() {
    const SEED: u64 = 77;
    let wish = Wish {
        guide_share_fraction: Some(0.4),
        ..Wish::new(GardenKind::TwoRooms { passage_m: 1.4 })
    };
    let site = site(&wish, SEED);
    let machine = Machine {
        roaming: Spell::Fixed { s: 900.0 },
        charging: Spell::Fixed { s: 600.0 },
        ..Machine::default()
    };
    let run = simulate(&site, &machine, &Run::new(200.0, SEED)).unwrap();
    let guided = run
        .outings
        .iter()
        .filter(|outing| outing.guide == Some(0))
        .count() as f64;
    let outings = run.outings.len() as f64;
    // 3 standard deviations of a share over about 400 outings.
    assert!(outings > 250.0);
    assert!(
        (guided / outings - 0.4).abs() < 3.0 * (0.24 / outings).sqrt(),
        "{guided} of {outings}"
    );
    let guide = &site.guides[0].shape;
    let along_m = |place: Place| {
        let mut walked_m = 0.0;
        for pair in guide.windows(2) {
            let (whole_m, to_m) = (pair[0].distance_m(pair[1]), pair[0].distance_m(place));
            if (to_m + place.distance_m(pair[1]) - whole_m).abs() < 1e-6 {
                return walked_m + to_m;
            }
            walked_m += whole_m;
        }
        panic!("{place:?} is not on the guide run");
    };
    let length_m: f64 = guide.windows(2).map(|pair| pair[0].distance_m(pair[1])).sum();
    for exit in run.outings.iter().filter_map(|outing| outing.guide_exit) {
        assert!(along_m(exit) > 0.6 * length_m - 1e-6);
    }
    assert!(run.outings.iter().any(|outing| outing.home_guide == Some(0)));
}

#[test]
fn a_closed_passage_keeps_the_machine_out_and_a_guide_run_brings_it_in() {
    const SEED: u64 = 12;
    for (guide_share_fraction, is_reached) in [(None, false), (Some(0.5), true)] {
        let wish = Wish {
            guide_share_fraction,
            ..Wish::new(GardenKind::TwoRooms { passage_m: 0.35 })
        };
        let site = site(&wish, SEED);
        let yard = Yard::new(&site, -0.2).unwrap();
        let parts = yard.turning_region().parts();
        assert_eq!(
            parts.len(),
            2,
            "a passage of 0.35 m is closed to a setback of 0.2 m"
        );
        let station = site.station.unwrap();
        let far = parts
            .iter()
            .max_by(|a, b| a.edge_distance_m(station).total_cmp(&b.edge_distance_m(station)))
            .unwrap();
        let run = yard.drive(&Machine::default(), &Run::new(24.0, SEED)).unwrap();
        let visits = run
            .vertices
            .iter()
            .filter(|vertex| vertex.doing == Doing::Driving && far.contains(vertex.place))
            .count();
        assert_eq!(visits > 0, is_reached, "{visits} legs begin behind the passage");
        assert_eq!(run.time_s(Doing::Stranded), 0.0);
    }
}

#[test]
fn a_stuck_spot_catches_as_many_entries_as_it_says() {
    const SEED: u64 = 9;
    let site = site(&Wish::new(GardenKind::Convex), SEED);
    let middle = site.lawn.centroid().unwrap();
    let spot = |probability| StuckSpot {
        place: middle,
        radius_m: 0.5,
        probability,
        duration: Spell::Fixed { s: 1.0 },
        manner: Manner::Stands,
    };
    let caught = |probability: f64| {
        let mut run = Run::new(400.0, SEED);
        run.stuck_spots.push(spot(probability));
        simulate(&site, &Machine::default(), &run).unwrap().stuck.len() as f64
    };
    let (all, some) = (caught(1.0), caught(0.25));
    assert!(all > 200.0);
    // A caught machine turns back and returns slightly more often: allow 15 %, and 3 sd of the count.
    assert!(
        (some / all - 0.25).abs() < 0.04 + 3.0 * (0.25 * 0.75 / all).sqrt(),
        "{some} of {all}"
    );
}

#[test]
fn growing_the_yard_by_the_setback_gives_the_lawn_back() {
    let site = site(&Wish::new(GardenKind::Convex), 4);
    let yard = Yard::new(&site, -0.3).unwrap();
    let back = yard.turning_region().grown_by(0.3, Joins::Mitred).unwrap();
    assert!((back.area_m2() - site.lawn.area_m2()).abs() < 1e-3);
}

#[test]
fn values_that_no_machine_has_are_refused_with_their_name() {
    let site = site(&Wish::new(GardenKind::Convex), 4);
    let refused = |machine: Machine, hours: f64| {
        simulate(&site, &machine, &Run::new(hours, 1))
            .unwrap_err()
            .to_string()
    };
    let base = Machine::default;
    assert_eq!(
        refused(
            Machine {
                speed_mps: 0.0,
                ..base()
            },
            1.0
        ),
        "speed_mps is 0; expected 0.01 to 10 m/s"
    );
    assert_eq!(
        refused(
            Machine {
                speed_mps: f64::NAN,
                ..base()
            },
            1.0
        ),
        "speed_mps is NaN; expected 0.01 to 10 m/s"
    );
    assert!(refused(base(), -1.0).starts_with("hours is -1;"));
    let no_turns = TurnLaw::Observed {
        pairs: Vec::new().into(),
        neighbours: 3,
    };
    assert!(
        refused(
            Machine {
                turn_law: no_turns,
                ..base()
            },
            1.0
        )
        .starts_with("number of observed turns is 0;")
    );
    let small = Wish {
        area_m2: (20.0, 21.0),
        ..Wish::new(GardenKind::Convex)
    };
    let small = Site::build(&invent_as(&small, 4).ground).unwrap().0;
    let machine = Machine {
        past_boundary_m: -3.0,
        ..base()
    };
    let said = simulate(&small, &machine, &Run::new(1.0, 1))
        .unwrap_err()
        .to_string();
    assert!(said.contains("has no room on 20."), "{said}");
}

#[test]
fn lanes_leave_little_of_a_lawn_in_one_round_and_overlap_little() {
    const SEED: u64 = 31;
    for kind in GardenKind::ALL {
        let site = site(
            &Wish {
                area_m2: (300.0, 500.0),
                ..Wish::new(kind)
            },
            SEED,
        );
        let machine = Machine {
            past_boundary_m: -0.1,
            pattern: Pattern::Lanes(Lanes::new(0.2, 20.0, 0.0)),
            roaming: Spell::Fixed { s: 1e6 },
            ..Machine::default()
        };
        // Long enough for one round (the exhaustive time plus turns), too short for two.
        let exhaustive_h = site.lawn.area_m2() / (0.2 * machine.speed_mps) / 3600.0;
        let run = simulate(&site, &machine, &Run::new(1.35 * exhaustive_h, SEED)).unwrap();
        let counted = truth(&run, &site, &Counting::new(0.22, 0.02));
        assert!(
            counted.visited_fraction > 0.97,
            "{kind:?}: {}",
            counted.visited_fraction
        );
        assert!(
            counted.pockets.is_empty(),
            "{kind:?}: {:?}",
            counted.pockets[0].middle
        );
    }
}
