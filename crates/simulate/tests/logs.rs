//! Logs say what the run did, files say what the log contains, and truth is what a slow search finds.

use std::collections::BTreeMap;
use tussock_plane::Site;
use tussock_simulate::gardens::{GardenKind, Surprise, Wish, invent_as};
use tussock_simulate::{
    Bend, Counting, Departure, Doing, LogNoise, Machine, Manner, PoorSky, Run, Sampling, Spell, StuckSpot,
    TimeWindow, TrueRun, csv_bytes, gpx_bytes, nmea_bytes, sample, simulate, truth,
};
use tussock_types::{Fix, FixQuality, Place, Positions, Trace};

const SEED: u64 = 73;

fn site_and_run(hours: f64) -> (Site, TrueRun) {
    let wish = Wish {
        area_m2: (120.0, 160.0),
        ..Wish::new(GardenKind::Islands)
    };
    let site = Site::build(&invent_as(&wish, SEED).ground).unwrap().0;
    let machine = Machine {
        roaming: Spell::Fixed { s: 1500.0 },
        charging: Spell::Fixed { s: 600.0 },
        ..Machine::default()
    };
    let mut run = Run::new(hours, SEED);
    run.stuck_spots.push(StuckSpot {
        place: site.lawn.centroid().unwrap(),
        radius_m: 0.5,
        probability: 0.5,
        duration: Spell::Fixed { s: 200.0 },
        manner: Manner::Wiggles,
    });
    let run = simulate(&site, &machine, &run).unwrap();
    (site, run)
}

fn local(trace: &Trace, number: usize) -> Place {
    let (east_m, north_m) = trace.positions.pair(number);
    Place::new(east_m, north_m)
}

#[test]
fn a_log_without_error_lies_on_the_path_in_metres_and_in_degrees() {
    let (site, run) = site_and_run(1.0);
    let metres = sample(&run, &Sampling::local(1.0, LogNoise::NONE, 1));
    let degrees = sample(&run, &Sampling::geographic(1.0, LogNoise::NONE, 1, site.frame));
    assert_eq!(metres.len(), 3601);
    assert_eq!(degrees.len(), 3601);
    let Positions::Geographic { lat_deg, lon_deg } = &degrees.positions else {
        panic!("not geographic")
    };
    let (east_m, north_m) = site.frame.places(lat_deg, lon_deg);
    for number in 0..metres.len() {
        let truth = run.place_at(number as f64);
        assert!(local(&metres, number).distance_m(truth) < 1e-9);
        assert!(Place::new(east_m[number], north_m[number]).distance_m(truth) < 1e-6);
    }
}

#[test]
fn outages_leave_out_fixes_open_segments_and_change_no_other_fix() {
    let (_, run) = site_and_run(1.0);
    let whole = Sampling::local(1.0, LogNoise::DECIMETRES, 1);
    let outages = vec![
        TimeWindow {
            start_s: 0.0,
            end_s: 5.0,
        },
        TimeWindow {
            start_s: 600.0,
            end_s: 700.0,
        },
    ];
    let broken = Sampling {
        outages,
        ..whole.clone()
    };
    let (whole, broken) = (sample(&run, &whole), sample(&run, &broken));
    assert_eq!(whole.len() - broken.len(), 105);
    let by_time = |trace: &Trace| -> BTreeMap<u64, (Fix, Place)> {
        (0..trace.len())
            .map(|number| {
                (
                    trace.time_s[number] as u64,
                    (trace.fix(number), local(trace, number)),
                )
            })
            .collect()
    };
    let all = by_time(&whole);
    for (time, (fix, place)) in by_time(&broken) {
        assert_eq!(all[&time].1, place);
        let after_s = fix.time_s - whole.time_s[0];
        assert_eq!(fix.segment, u32::from(after_s >= 700.0));
    }
}

#[test]
fn poor_sky_scales_the_error_and_says_so() {
    let (_, run) = site_and_run(4.0);
    let window = TimeWindow {
        start_s: 3600.0,
        end_s: 7200.0,
    };
    let poor = PoorSky {
        window,
        error_factor: 4.0,
        quality: FixQuality::Autonomous,
    };
    let noise = LogNoise {
        white_m: 0.1,
        drift_m: 0.0,
        drift_time_s: 60.0,
    };
    let trace = sample(
        &run,
        &Sampling {
            poor_sky: vec![poor],
            ..Sampling::local(1.0, noise, 5)
        },
    );
    let sd_m = |from: usize, to: usize| {
        let squares = (from..to).map(|number| {
            local(&trace, number)
                .distance_m(run.place_at(number as f64))
                .powi(2)
        });
        (squares.sum::<f64>() / (2 * (to - from)) as f64).sqrt()
    };
    // 7,200 deviates: standard error 0.8 %.
    assert!((sd_m(0, 3600) / 0.1 - 1.0).abs() < 0.03);
    assert!((sd_m(3600, 7200) / 0.4 - 1.0).abs() < 0.03);
    assert_eq!(trace.quality[5000], FixQuality::Autonomous);
    assert_eq!(trace.quality[100], FixQuality::RtkFloat);
    assert!(trace.hdop[5000] > 2.0 * trace.hdop[100]);
    assert!((trace.claimed_sd_m[5000] / trace.claimed_sd_m[100] - 4.0).abs() < 1e-5);
}

#[test]
fn a_bend_moves_fixes_near_its_place_and_no_others() {
    let (site, run) = site_and_run(1.0);
    let place = site.lawn.centroid().unwrap();
    let bend = Bend {
        place,
        radius_m: 3.0,
        east_m: 1.0,
        north_m: -0.5,
    };
    let straight = sample(&run, &Sampling::local(1.0, LogNoise::NONE, 1));
    let bent = sample(
        &run,
        &Sampling {
            bends: vec![bend],
            ..Sampling::local(1.0, LogNoise::NONE, 1)
        },
    );
    let mut largest_m: f64 = 0.0;
    for number in 0..straight.len() {
        let moved_m = local(&straight, number).distance_m(local(&bent, number));
        let from_m = local(&straight, number).distance_m(place);
        assert_eq!(moved_m > 0.0, from_m < 3.0);
        largest_m = largest_m.max(moved_m);
    }
    assert!(largest_m > 0.9 && largest_m <= 1.25_f64.sqrt() + 1e-12);
}

#[test]
fn an_antenna_rides_ahead_of_the_body_and_behind_the_motion_when_reversing() {
    let wish = Wish {
        area_m2: (120.0, 160.0),
        ..Wish::new(GardenKind::Islands)
    };
    let site = Site::build(&invent_as(&wish, SEED).ground).unwrap().0;
    let machine = Machine {
        departure: Departure::Backwards,
        roaming: Spell::Fixed { s: 600.0 },
        charging: Spell::Fixed { s: 300.0 },
        past_boundary_m: -0.5,
        ..Machine::default()
    };
    let run = simulate(&site, &machine, &Run::new(2.0, SEED)).unwrap();
    let sampling = Sampling {
        antenna_forward_m: 0.3,
        antenna_left_m: 0.1,
        ..Sampling::local(0.1, LogNoise::NONE, 1)
    };
    let trace = sample(&run, &sampling);
    let mut seen = BTreeMap::new();
    for (from, to) in run.pieces() {
        let length_m = from.place.distance_m(to.place);
        let (first, last) = (
            (from.time_s * 10.0).ceil() as usize + 1,
            (to.time_s * 10.0).floor() as usize,
        );
        for number in first..last {
            let middle = run.place_at(number as f64 * 0.1);
            let antenna = local(&trace, number);
            assert!((antenna.distance_m(middle) - 0.1_f64.sqrt()).abs() < 1e-9);
            if length_m > 0.0 {
                let ahead_m = ((antenna.east_m - middle.east_m) * (to.place.east_m - from.place.east_m)
                    + (antenna.north_m - middle.north_m) * (to.place.north_m - from.place.north_m))
                    / length_m;
                let expected_m = if from.doing == Doing::Reversing { -0.3 } else { 0.3 };
                assert!((ahead_m - expected_m).abs() < 1e-9, "{:?}: {ahead_m}", from.doing);
                *seen.entry(format!("{:?}", from.doing)).or_insert(0) += 1;
            }
        }
    }
    assert_eq!(
        seen.keys().collect::<Vec<_>>(),
        ["Driving", "Reversing", "Transit"]
    );
}

#[test]
fn speed_and_course_are_those_of_the_path() {
    let (_, run) = site_and_run(1.0);
    let trace = sample(&run, &Sampling::local(1.0, LogNoise::NONE, 1));
    let mut moving = 0;
    for (from, to) in run.pieces().filter(|(from, _)| from.doing == Doing::Driving) {
        let (first, last) = (from.time_s.ceil() as usize, to.time_s.floor() as usize);
        let course_deg = (to.place.east_m - from.place.east_m)
            .atan2(to.place.north_m - from.place.north_m)
            .to_degrees();
        for number in first..last {
            assert!((trace.speed_mps[number] - 0.4).abs() < 0.06);
            let off_deg =
                (f64::from(trace.course_deg[number]) - course_deg + 540.0).rem_euclid(360.0) - 180.0;
            assert!(off_deg.abs() < 8.0, "{off_deg}");
            moving += 1;
        }
    }
    assert!(moving > 1000);
    assert!(trace.course_deg[10].is_nan(), "no course at the station");
}

#[test]
fn gpx_nmea_and_csv_carry_the_same_positions_and_times() {
    let (site, run) = site_and_run(0.5);
    let outages = vec![TimeWindow {
        start_s: 900.0,
        end_s: 960.0,
    }];
    let trace = sample(
        &run,
        &Sampling {
            outages,
            ..Sampling::geographic(1.0, LogNoise::CENTIMETRES, 3, site.frame)
        },
    );
    let between = |text: &str, before: &str, after: &str| -> Option<String> {
        let start = text.find(before)? + before.len();
        Some(text[start..start + text[start..].find(after)?].to_owned())
    };
    let gpx = String::from_utf8(gpx_bytes(&trace)).unwrap();
    assert_eq!(gpx.matches("<trkseg>").count(), 2);
    let points: Vec<(f64, f64, String)> = gpx
        .lines()
        .filter(|line| line.starts_with("<trkpt"))
        .map(|line| {
            let number = |before| between(line, before, "\"").unwrap().parse().unwrap();
            (
                number("lat=\""),
                number("lon=\""),
                between(line, "<time>", "</time>").unwrap(),
            )
        })
        .collect();
    let csv = String::from_utf8(csv_bytes(&trace)).unwrap();
    let rows: Vec<(f64, f64, String)> = csv
        .lines()
        .skip(1)
        .map(|line| {
            let fields: Vec<&str> = line.split(',').collect();
            (
                fields[1].parse().unwrap(),
                fields[2].parse().unwrap(),
                fields[0].to_owned(),
            )
        })
        .collect();
    assert_eq!(points, rows);
    assert_eq!(points.len(), trace.len());
    let nmea = String::from_utf8(nmea_bytes(&trace)).unwrap();
    let mut epochs = Vec::new();
    for line in nmea.lines() {
        let (body, sum) = line[1..].split_once('*').unwrap();
        assert_eq!(
            u8::from_str_radix(sum, 16).unwrap(),
            body.bytes().fold(0, |sum, byte| sum ^ byte)
        );
        let fields: Vec<&str> = body.split(',').collect();
        if fields[0] == "GNRMC" && fields[2] == "A" {
            let degrees = |text: &str, width: usize| {
                text[..width].parse::<f64>().unwrap() + text[width..].parse::<f64>().unwrap() / 60.0
            };
            epochs.push((degrees(fields[3], 2), degrees(fields[5], 3), fields[1].to_owned()));
        }
    }
    assert_eq!(epochs.len(), points.len());
    assert_eq!(
        nmea.matches(",V,").count(),
        1,
        "one void epoch between the segments"
    );
    for (epoch, point) in epochs.iter().zip(&points) {
        // Rounded to 9 decimals of a degree and to 8 of a minute.
        assert!((epoch.0 - point.0).abs() < 7e-10 && (epoch.1 - point.1).abs() < 7e-10);
        assert_eq!(epoch.2.replace('.', ""), point.2[11..23].replace([':', '.'], ""));
    }
    assert!(gpx_bytes(&Trace::local("x")).starts_with(b"<?xml"));
    assert!(nmea_bytes(&Trace::local("x")).is_empty());
}

#[test]
fn names_and_southern_and_western_places_are_written_as_the_formats_want_them() {
    let mut trace = Trace::geographic("<me & \"you\">");
    trace.push(Fix::bare(1_777_593_599.999_6, -0.000_000_01, -179.999_999_999_95));
    let gpx = String::from_utf8(gpx_bytes(&trace)).unwrap();
    assert!(gpx.contains("<name>&lt;me &amp; &quot;you&quot;&gt;</name>"));
    assert!(
        gpx.contains("<time>2026-05-01T00:00:00.000Z</time>"),
        "rounded up to the next day"
    );
    let nmea = String::from_utf8(nmea_bytes(&trace)).unwrap();
    // 59.99999999.. minutes become the next degree, as a whole.
    assert!(
        nmea.contains("$GNRMC,000000.000,A,0000.00000060,S,18000.00000000,W,,,010526,,,A*"),
        "{nmea}"
    );
}

#[test]
fn truth_is_what_a_slow_look_at_every_cell_finds() {
    let (site, run) = site_and_run(1.0);
    let counting = Counting::new(0.22, 0.1);
    let fast = truth(&run, &site, &counting);
    let grid = fast.lawn.grid;
    let pieces: Vec<_> = run.pieces().collect();
    let mut visited = 0;
    for row in 0..grid.rows {
        for column in 0..grid.columns {
            let centre = grid.centre(column, row);
            assert_eq!(fast.lawn.get(column, row), site.lawn.contains(centre));
            if !site.lawn.contains(centre) {
                continue;
            }
            // Times at which the disc was over the centre, checked piece by piece.
            let is_visited = pieces.iter().any(|(from, to)| {
                let (x, y) = (
                    to.place.east_m - from.place.east_m,
                    to.place.north_m - from.place.north_m,
                );
                let length_m2 = x * x + y * y;
                let part = if length_m2 > 0.0 {
                    ((x * (centre.east_m - from.place.east_m) + y * (centre.north_m - from.place.north_m))
                        / length_m2)
                        .clamp(0.0, 1.0)
                } else {
                    0.0
                };
                centre.distance_m(Place::new(
                    from.place.east_m + part * x,
                    from.place.north_m + part * y,
                )) <= 0.11
            });
            assert_eq!(fast.visited.get(column, row), is_visited, "cell {column}, {row}");
            assert_eq!(fast.visits[row * grid.columns + column] > 0, is_visited);
            visited += u64::from(is_visited);
        }
    }
    assert_eq!(fast.visited.count(), visited);
}

#[test]
fn an_unvisited_part_is_one_pocket_with_its_area_and_width() {
    // Behind a fence that is not drawn, everything stays unvisited.
    for kind in [
        GardenKind::Islands,
        GardenKind::TwoRooms { passage_m: 1.5 },
        GardenKind::You,
        GardenKind::Ell,
    ] {
        let wish = Wish {
            surprise: Surprise::BlockedPart,
            ..Wish::new(kind)
        };
        let garden = invent_as(&wish, SEED);
        let (drawn, ground) = (
            Site::build(&garden.plan).unwrap().0,
            Site::build(&garden.ground).unwrap().0,
        );
        let run = simulate(
            &ground,
            &Machine {
                past_boundary_m: -0.1,
                ..Machine::default()
            },
            &Run::new(40.0, SEED),
        )
        .unwrap();
        let counted = truth(&run, &drawn, &Counting::new(0.22, 0.05));
        let parts = ground.lawn.parts();
        assert_eq!(parts.len(), 2, "{kind:?}");
        let station = drawn.station.unwrap();
        let cut_off = if parts[0].edge_distance_m(station) > parts[1].edge_distance_m(station) {
            &parts[0]
        } else {
            &parts[1]
        };
        let pocket = &counted.pockets[0];
        let fence_m2 = drawn.lawn.area_m2() - ground.lawn.area_m2();
        assert!(
            pocket.area_m2 > 0.95 * cut_off.area_m2()
                && pocket.area_m2 < cut_off.area_m2() + 1.1 * fence_m2 + 0.5,
            "{kind:?}: {} of {}",
            pocket.area_m2,
            cut_off.area_m2()
        );
        assert!(cut_off.contains(pocket.middle));
        // The circle fits and a larger one does not.
        assert!(2.0 * cut_off.edge_distance_m(pocket.middle) > pocket.widest_m - 1.3);
        assert!(pocket.widest_m * pocket.widest_m * 0.785 < pocket.area_m2 * 1.01);
    }
}

#[test]
fn a_drawn_zone_that_lies_elsewhere_and_a_body_that_is_not_drawn_are_missed_ground() {
    let wish = Wish {
        surprise: Surprise::UnlistedObstacle { radius_m: 1.0 },
        ..Wish::new(GardenKind::Convex)
    };
    let garden = invent_as(&wish, SEED);
    let (drawn, ground) = (
        Site::build(&garden.plan).unwrap().0,
        Site::build(&garden.ground).unwrap().0,
    );
    let run = simulate(
        &ground,
        &Machine {
            past_boundary_m: -0.1,
            ..Machine::default()
        },
        &Run::new(40.0, SEED),
    )
    .unwrap();
    let counted = truth(&run, &drawn, &Counting::new(0.22, 0.02));
    let pocket = &counted.pockets[0];
    assert!(
        pocket
            .middle
            .distance_m(ground.obstacles[0].shape.centroid().unwrap())
            < 0.1
    );
    // A disc of 1 m, plus what the swath leaves around it: the middle turns 0.1 m before it, the disc reaches 0.11 m.
    assert!((pocket.widest_m - 2.0).abs() < 0.06, "{}", pocket.widest_m);
    let moved = invent_as(
        &Wish {
            surprise: Surprise::ZoneMoved { by_m: 0.7 },
            ..Wish::new(GardenKind::Convex)
        },
        SEED,
    );
    let zone = |plan| {
        Site::build(plan).unwrap().0.exclusions[0]
            .shape
            .centroid()
            .unwrap()
    };
    assert!((zone(&moved.plan).distance_m(zone(&moved.ground)) - 0.7).abs() < 0.05);
}

#[test]
fn every_invented_garden_is_a_sound_plan_of_the_wished_area() {
    for kind in GardenKind::ALL {
        for seed in 0..100 {
            let wish = Wish {
                area_m2: (100.0, 1500.0),
                guide_share_fraction: Some(0.3),
                ..Wish::new(kind)
            };
            let garden = invent_as(&wish, seed);
            assert_eq!(garden.plan, garden.ground);
            let (site, faults) = Site::build(&garden.plan).unwrap();
            assert_eq!(faults, Vec::new(), "{kind:?} {seed}");
            let area_m2 = site.drawn_lawn.area_m2();
            assert!((100.0..1520.0).contains(&area_m2), "{kind:?} {seed}: {area_m2}");
            assert_eq!(site.lawn.parts().len(), 1);
        }
    }
}
