//! Walks with every habit of walkers, and the plans made from them.

use super::*;
use proptest::prelude::*;
use std::fmt::Write;
use tussock_types::math;
use tussock_types::{GeoPoint, Said};

/// A degree of latitude and of longitude at 52 degrees north, metres (IOGP 373-7-2, section 4.1.1).
const NORTH_M_PER_DEG: f64 = 111_267.353_3;
const EAST_M_PER_DEG: f64 = 68_678.016_1;

fn point(east_m: f64, north_m: f64) -> GeoPoint {
    GeoPoint {
        lat_deg: 52.0 + north_m / NORTH_M_PER_DEG,
        lon_deg: 5.0 + east_m / EAST_M_PER_DEG,
    }
}

fn metres(point: GeoPoint) -> (f64, f64) {
    (
        (point.lon_deg - 5.0) * EAST_M_PER_DEG,
        (point.lat_deg - 52.0) * NORTH_M_PER_DEG,
    )
}

fn track(name: &str, corners: &[(f64, f64)]) -> String {
    let mut text = format!("<trk><name>{name}</name><trkseg>\n");
    for &(east_m, north_m) in corners {
        let at = point(east_m, north_m);
        let _ = writeln!(
            text,
            "<trkpt lat=\"{:.9}\" lon=\"{:.9}\"><ele>3</ele><name>a point</name></trkpt>",
            at.lat_deg, at.lon_deg
        );
    }
    text + "</trkseg></trk>\n"
}

fn waypoint(name: &str, east_m: f64, north_m: f64) -> String {
    let at = point(east_m, north_m);
    format!(
        "<wpt lat=\"{:.9}\" lon=\"{:.9}\"><name>{name}</name></wpt>\n",
        at.lat_deg, at.lon_deg
    )
}

fn gpx(parts: &[String]) -> String {
    format!(
        "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<gpx version=\"1.1\" creator=\"test\">\n{}</gpx>\n",
        parts.concat()
    )
}

fn made(parts: &[String]) -> WalkedPlan {
    plan_from_walk("walk.gpx", gpx(parts).as_bytes(), &[]).unwrap()
}

fn said(parts: &[String]) -> String {
    plan_from_walk("walk.gpx", gpx(parts).as_bytes(), &[])
        .unwrap_err()
        .to_string()
}

/// Steps of half a metre along a line, with a wiggle of a few centimetres.
fn steps(corners: &[(f64, f64)], wiggle_m: f64) -> Vec<(f64, f64)> {
    let mut out = Vec::new();
    let mut count = 0u32;
    for piece in corners.windows(2) {
        let (a, b) = (piece[0], piece[1]);
        let number = (math::hypot(b.0 - a.0, b.1 - a.1) / 0.5).ceil() as usize;
        for step in 0..number {
            let share = step as f64 / number as f64;
            count += 1;
            let side = wiggle_m * f64::from(count % 3) - wiggle_m;
            out.push((a.0 + share * (b.0 - a.0) + side, a.1 + share * (b.1 - a.1) - side));
        }
    }
    out.extend(corners.last());
    out
}

const LAWN: [(f64, f64); 5] = [(0.0, 0.0), (30.0, 0.0), (30.0, 20.0), (0.0, 20.0), (0.0, 0.0)];

fn ring(feature: &PlanFeature) -> Vec<(f64, f64)> {
    match &feature.shape {
        PlanShape::Polygons(polygons) => polygons[0].rings[0].iter().map(|point| metres(*point)).collect(),
        other => panic!("{other:?}"),
    }
}

fn area_m2(ring: &[(f64, f64)]) -> f64 {
    ring.windows(2)
        .map(|e| e[0].0 * e[1].1 - e[1].0 * e[0].1)
        .sum::<f64>()
        / 2.0
}

fn keys(walked: &WalkedPlan) -> Vec<&str> {
    walked.notices.iter().map(|notice| notice.said.code()).collect()
}

#[test]
fn a_walk_becomes_a_plan() {
    let walked = made(&[
        waypoint("Station", 1.0, 1.0),
        waypoint("apple tree 0.4 m", 10.0, 10.0),
        waypoint("Pole 15cm", 12.0, 10.0),
        waypoint("obstacle 0,5 m", 14.0, 10.0),
        track("Lawn front", &steps(&LAWN, 0.02)),
        track(
            "LAWN back",
            &steps(
                &[(40.0, 0.0), (50.0, 0.0), (50.0, 9.0), (40.0, 9.0), (40.0, 0.0)],
                0.0,
            ),
        ),
        track("boundary", &steps(&LAWN, 0.0)),
        track(
            "zone pond",
            &steps(
                &[(20.0, 5.0), (24.0, 5.0), (24.0, 9.0), (20.0, 9.0), (20.0, 5.0)],
                0.0,
            ),
        ),
        track(
            "exclusion bed",
            &steps(&[(5.0, 5.0), (7.0, 5.0), (7.0, 7.0), (5.0, 7.0), (5.0, 5.0)], 0.0),
        ),
        track(
            "obstacle shed",
            &steps(
                &[(0.0, 15.0), (3.0, 15.0), (3.0, 18.0), (0.0, 18.0), (0.0, 15.0)],
                0.0,
            ),
        ),
        track("guide east", &steps(&[(1.0, 1.0), (15.0, 2.0), (45.0, 3.0)], 0.0)),
    ]);
    assert_eq!(walked.notices, []);
    let found: Vec<(PlanRole, &str)> = walked
        .plan
        .features
        .iter()
        .map(|feature| (feature.role, feature.name.as_str()))
        .collect();
    use PlanRole::{Boundary, Exclusion, Guide, Lawn, Obstacle, Station};
    assert_eq!(
        found,
        [
            (Station, "Station"),
            (Obstacle, "apple tree"),
            (Obstacle, "Pole"),
            (Obstacle, "obstacle"),
            (Lawn, "Lawn front"),
            (Lawn, "LAWN back"),
            (Boundary, "boundary"),
            (Exclusion, "zone pond"),
            (Exclusion, "exclusion bed"),
            (Obstacle, "obstacle shed"),
            (Guide, "guide east"),
        ]
    );
    let radii: Vec<Option<f64>> = walked.plan.features[1..4]
        .iter()
        .map(|feature| feature.radius_m)
        .collect();
    assert_eq!(radii, [Some(0.4), Some(0.15), Some(0.5)]);
    let front = ring(&walked.plan.features[4]);
    assert_eq!(front.first(), front.last());
    assert!(front.len() <= 8, "{front:?}");
    assert!((area_m2(&front).abs() - 600.0).abs() < 5.0, "{}", area_m2(&front));
    let PlanShape::Line(guide) = &walked.plan.features[10].shape else {
        panic!()
    };
    assert_eq!(guide.len(), 3);
}

#[test]
fn the_plan_of_a_walk_can_be_written_and_read() {
    let walked = made(&[track("lawn", &steps(&LAWN, 0.02)), waypoint("station", 1.0, 1.0)]);
    let text = crate::write_plan(&walked.plan);
    let read = crate::read_plan("plan", text.as_bytes(), &tussock_types::LimitSettings::default()).unwrap();
    assert_eq!((read.faults.len(), read.plan.features.len()), (0, 2));
}

#[test]
fn what_was_walked_past_the_start_is_cut_off() {
    let mut walk = steps(&LAWN, 0.0);
    walk.extend(steps(&[(0.2, 0.1), (9.0, 0.3)], 0.0));
    let walked = made(&[track("lawn", &walk)]);
    assert_eq!(keys(&walked), ["WalkOverlapCut"]);
    let Said::WalkOverlapCut { past_m, track } = &walked.notices[0].said else {
        panic!("{:?}", walked.notices);
    };
    assert!((past_m - 9.0).abs() < 0.05 && track == "lawn", "{past_m} {track}");
    assert_eq!(walked.notices[0].line, 3);
    let ring = ring(&walked.plan.features[0]);
    assert!(
        (area_m2(&ring).abs() - 600.0).abs() < 0.1 && ring.len() == 5,
        "{ring:?}"
    );
}

#[test]
fn a_small_gap_is_closed_and_a_large_one_refused() {
    let closing = |gap_m: f64| {
        steps(
            &[(0.0, 0.0), (30.0, 0.0), (30.0, 20.0), (0.0, 20.0), (0.0, gap_m)],
            0.0,
        )
    };
    let walked = made(&[track("lawn", &closing(4.9))]);
    let Said::WalkGapClosed { gap_m, track: name } = &walked.notices[0].said else {
        panic!("{:?}", walked.notices);
    };
    assert!((gap_m - 4.9).abs() < 0.05 && name == "lawn", "{gap_m} {name}");
    let ring = ring(&walked.plan.features[0]);
    assert_eq!(ring.first(), ring.last());
    assert_eq!(
        said(&[track("lawn", &closing(5.1))]),
        "walk.gpx: line 3: \"lawn\": the walk does not come back to its start: it stays 5.1 m away, expected an end \
         within 5.0 m of the start"
    );
    // Of a small zone a smaller gap is already too much.
    let pond = [(1.0, 1.0), (3.0, 1.0), (3.0, 3.0), (2.9, 3.0)];
    assert!(
        said(&[track("lawn", &closing(0.0)), track("zone pond", &pond)])
            .contains("within 1.0 m of the start")
    );
}

#[test]
fn loops_of_a_walker_who_stands_are_cut_off() {
    let mut walk = steps(&[(0.0, 0.0), (30.0, 0.0)], 0.0);
    walk.extend([(30.4, 0.3), (30.1, 0.6), (29.8, 0.1), (30.3, -0.2), (30.2, 0.5)]);
    walk.extend(steps(&[(30.0, 1.0), (30.0, 20.0), (0.0, 20.0), (0.0, 0.0)], 0.0));
    let walked = made(&[track("lawn", &walk)]);
    assert_eq!(keys(&walked), ["WalkLoopsCut"]);
    let ring = ring(&walked.plan.features[0]);
    assert!((area_m2(&ring).abs() - 600.0).abs() < 2.0, "{ring:?}");
    let crossings = ring
        .windows(2)
        .enumerate()
        .flat_map(|(n, a)| ring.windows(2).skip(n + 2).map(move |b| (a, b)))
        .filter(|(a, b)| {
            let side = |p: (f64, f64), q: (f64, f64), r: (f64, f64)| {
                (q.0 - p.0) * (r.1 - p.1) - (q.1 - p.1) * (r.0 - p.0)
            };
            side(a[0], a[1], b[0]) * side(a[0], a[1], b[1]) < -1e-9
                && side(b[0], b[1], a[0]) * side(b[0], b[1], a[1]) < -1e-9
        })
        .count();
    assert_eq!(crossings, 0);
}

#[test]
fn names_that_mean_nothing_are_told() {
    let walked = made(&[
        track("lawn", &LAWN),
        track("Track 12", &LAWN),
        track("lawnmower", &LAWN),
        track("", &LAWN),
        waypoint("gate", 3.0, 3.0),
        waypoint("12.5 km", 3.0, 3.0),
    ]);
    assert_eq!(walked.plan.features.len(), 1);
    let notices = walked.notices.iter();
    let told: Vec<(&str, &str)> = notices
        .map(|notice| match &notice.said {
            Said::WalkNameUnknown { track, seems } => (&track[..], &seems[..]),
            other => panic!("{other:?}"),
        })
        .collect();
    assert_eq!(
        told,
        [
            ("Track 12", "boundary"),
            ("lawnmower", "boundary"),
            ("track 1", "boundary"),
            ("gate", ""),
            ("12.5 km", ""),
        ]
    );
}

#[test]
fn things_recorded_the_wrong_way_are_refused_all_at_once() {
    let text = said(&[
        track("lawn", &LAWN),
        waypoint("lawn back", 3.0, 3.0),
        waypoint("obstacle rock", 3.0, 3.0),
        waypoint("tree 0 m", 3.0, 3.0),
        track("station", &LAWN),
        track("guide", &[(1.0, 1.0), (1.0, 1.0)]),
        track("zone", &[(1.0, 1.0), (2.0, 1.0)]),
    ]);
    let lines: Vec<&str> = text
        .lines()
        .map(|line| line.split_once(": ").unwrap().1)
        .map(|line| line.split_once(": ").unwrap().1)
        .collect();
    assert_eq!(
        lines,
        [
            "\"lawn back\": a waypoint cannot be a lawn, expected a track",
            "\"obstacle rock\": the waypoint has no radius, expected a name that ends in one, as \"obstacle rock 0.4 m\"",
            "\"tree 0 m\": the radius is 0 m, expected a radius above 0 and up to 50 m",
            "\"station\": a track cannot be a station, expected a waypoint",
            "\"guide\": the track has 1 different position(s), expected at least 2, from the station outwards",
            "\"zone\": the track has 2 different position(s), expected a walk around it, at least 3",
        ]
    );
}

#[test]
fn a_walk_without_a_lawn_says_what_it_holds() {
    assert_eq!(
        said(&[track("zone pond", &LAWN), waypoint("gate", 0.0, 0.0)]),
        "walk.gpx: no track has a name that begins with \"lawn\"; its names are \"zone pond\", \"gate\""
    );
    assert_eq!(
        said(&[]),
        "walk.gpx: no track has a name that begins with \"lawn\"; its names are none"
    );
}

/// Corners of a square with its south-west corner there.
fn square(east_m: f64, north_m: f64, side_m: f64) -> [(f64, f64); 5] {
    let (e, n) = (east_m + side_m, north_m + side_m);
    [
        (east_m, north_m),
        (e, north_m),
        (e, n),
        (east_m, n),
        (east_m, north_m),
    ]
}

fn roles_of(walked: &WalkedPlan) -> Vec<(PlanRole, &str)> {
    let features = walked.plan.features.iter();
    features.map(|one| (one.role, one.name.as_str())).collect()
}

#[test]
fn the_only_closed_track_is_the_lawn_whatever_its_name() {
    for name in ["Front garden", "Vorgarten", "前庭", ""] {
        let walked = made(&[
            track(name, &LAWN),
            waypoint("Tor", 3.0, 3.0),
            waypoint("Haus", 9.0, 3.0),
        ]);
        let title = if name.is_empty() { "track 1" } else { name };
        assert_eq!(roles_of(&walked), [(PlanRole::Lawn, title)]);
        let Said::WalkTakenAsLawn {
            track,
            area_m2,
            length_m,
        } = &walked.notices[0].said
        else {
            panic!("{:?}", walked.notices);
        };
        assert_eq!(track, title);
        assert!(
            (area_m2 - 600.0).abs() < 0.05 && (length_m - 100.0).abs() < 0.05,
            "{area_m2} {length_m}"
        );
    }
    // The same goes for anything that may be a bend of somebody's way, and for ground as large as a park.
    let way = [(0.0, 50.0), (200.0, 50.0), (300.0, 80.0)];
    assert!(said(&[track("bend", &square(0.0, 0.0, 10.0)), track("way", &way)]).contains("by their shape"));
    let park = square(0.0, 0.0, 240.0);
    assert!(said(&[track("round", &park)]).contains("\"round\", closed, 57600.0 m2, 960.0 m round: a lawn"));
}

#[test]
fn foreign_names_are_asked_about_at_once_and_the_answer_is_taken() {
    let parts = [
        waypoint("Ladestation", 1.0, 1.0),
        track("Vorgarten", &LAWN),
        track("Teich", &square(10.0, 5.0, 4.0)),
        track("Weg", &[(1.0, 1.0), (12.0, 3.0), (22.0, 12.0)]),
        track("Hinten", &square(60.0, 0.0, 10.0)),
        track("", &square(20.0, 10.0, 3.0)),
        track(
            "Kabel",
            &[(0.5, 0.5), (29.5, 0.5), (29.5, 19.5), (0.5, 19.5), (0.5, 0.5)],
        ),
        track("zur Straße", &[(-5.0, 0.0), (-40.0, 0.0)]),
    ];
    let text = said(&parts);
    let lines: Vec<&str> = text.lines().collect();
    assert_eq!(
        lines[0],
        "walk.gpx: no name says which track is the lawn; by their shape"
    );
    let told: Vec<&str> = lines[1..]
        .iter()
        .map(|line| line.split_once(": ").unwrap().1)
        .collect();
    assert_eq!(
        told,
        [
            "\"Ladestation\", a waypoint: the station",
            "\"Vorgarten\", closed, 600.0 m2, 100.0 m round: a lawn",
            "\"Teich\", closed, 16.0 m2, 16.0 m round: an exclusion zone, inside the lawn",
            "\"Weg\", open by 23.7 m, 24.6 m long: a guide run, inside the lawn",
            "\"Hinten\", closed, 100.0 m2, 40.0 m round: a lawn",
            "\"track 1\", closed, 9.0 m2, 12.0 m round: an exclusion zone, inside the lawn",
            "\"Kabel\", closed, 551.0 m2, 96.0 m round: the boundary, a second line round the lawn",
            "\"zur Straße\", open by 35.0 m, 35.0 m long: nothing that a plan has",
        ]
    );
    let error = plan_from_walk("walk.gpx", gpx(&parts).as_bytes(), &[]).unwrap_err();
    let WalkError::Unclear { guesses, .. } = error else {
        panic!("{error}")
    };
    let given = |guess: &WalkGuess| {
        Some(WalkRole {
            name: guess.title.clone(),
            role: guess.role?,
        })
    };
    let roles: Vec<WalkRole> = guesses.iter().filter_map(given).collect();
    let walked = plan_from_walk("walk.gpx", gpx(&parts).as_bytes(), &roles).unwrap();
    use PlanRole::{Boundary, Exclusion, Guide, Lawn, Station};
    assert_eq!(
        roles_of(&walked),
        [
            (Station, "Ladestation"),
            (Lawn, "Vorgarten"),
            (Exclusion, "Teich"),
            (Guide, "Weg"),
            (Lawn, "Hinten"),
            (Exclusion, "track 1"),
            (Boundary, "Kabel"),
        ]
    );
    assert_eq!(keys(&walked), ["WalkNameUnknown"]);
}

#[test]
fn a_role_goes_before_a_name_and_names_that_are_not_there_are_told() {
    let parts = [
        track("Track", &LAWN),
        track("Track", &square(5.0, 5.0, 3.0)),
        track("lawn old", &square(50.0, 5.0, 5.0)),
        waypoint("tree 0.4 m", 12.0, 12.0),
    ];
    let with = |roles: &[(&str, PlanRole)]| {
        let roles: Vec<WalkRole> = roles
            .iter()
            .map(|(name, role)| WalkRole {
                name: (*name).to_owned(),
                role: *role,
            })
            .collect();
        plan_from_walk("walk.gpx", gpx(&parts).as_bytes(), &roles)
    };
    use PlanRole::{Exclusion, Lawn, Obstacle};
    let walked = with(&[("Track 1", Lawn), ("Track 2", Obstacle), ("lawn old", Exclusion)]).unwrap();
    let roles: Vec<PlanRole> = walked.plan.features.iter().map(|one| one.role).collect();
    assert_eq!(roles, [Lawn, Obstacle, Exclusion, Obstacle]);
    // A name that several have means all of them.
    let walked = with(&[("Track", Lawn)]).unwrap();
    assert_eq!(
        walked.plan.features.iter().filter(|one| one.role == Lawn).count(),
        3
    );
    assert_eq!(
        with(&[("track", Lawn)]).unwrap_err().to_string(),
        "walk.gpx: nothing is called \"track\"; its names are \"Track 1\", \"Track 2\", \"lawn old\", \"tree 0.4 m\""
    );
}

#[test]
fn a_walk_that_never_comes_back_is_told_as_that() {
    assert_eq!(
        said(&[track(
            "Runde",
            &[(0.0, 0.0), (30.0, 0.0), (30.0, 20.0), (10.0, 20.0)]
        )]),
        "walk.gpx: no track is named as the lawn, and none comes back to where it began\n  line 3: \"Runde\", open by 22.4 m, 70.0 m \
         long: nothing that a plan has"
    );
}

/// A draw between -1 and 1 (xorshift, Marsaglia 2003).
struct Dice(u64);

impl Dice {
    fn draw(&mut self) -> f64 {
        self.0 ^= self.0 << 13;
        self.0 ^= self.0 >> 7;
        self.0 ^= self.0 << 17;
        (self.0 >> 11) as f64 / (1u64 << 52) as f64 - 1.0
    }

    /// Normal enough: variance 1.
    fn normal(&mut self) -> f64 {
        (0..12).map(|_| self.draw()).sum::<f64>() / 2.0
    }
}

/// How somebody walked.
#[derive(Clone, Copy, Default)]
struct Habit {
    noise_m: f64,
    /// For a receiver that filters: how slowly its error changes.
    filter_s: f64,
    spikes: usize,
    wait_s: usize,
    rounds: usize,
    open_m: f64,
}

/// Fixes of a walk round corners at 1.2 m/s, one a second, with their times.
fn walked(corners: &[(f64, f64)], habit: Habit, seed: u64) -> String {
    let mut dice = Dice(seed.wrapping_mul(0x9E37_79B9_7F4A_7C15) | 1);
    let mut path: Vec<(f64, f64)> = Vec::new();
    for _ in 0..habit.rounds.max(1) {
        for edge in corners.windows(2) {
            let length_m = math::hypot(edge[1].0 - edge[0].0, edge[1].1 - edge[0].1);
            path.extend(std::iter::repeat_n(edge[0], habit.wait_s));
            let fixes = (length_m / 1.2).ceil();
            path.extend((0..fixes as usize).map(|fix| {
                let part = fix as f64 / fixes;
                (
                    edge[0].0 + part * (edge[1].0 - edge[0].0),
                    edge[0].1 + part * (edge[1].1 - edge[0].1),
                )
            }));
        }
    }
    path.extend(corners.last());
    path.truncate(path.len() - (habit.open_m / 1.2) as usize);
    let keep = if habit.filter_s > 0.0 {
        math::exp(-1.0 / habit.filter_s)
    } else {
        0.0
    };
    let (mut east_m, mut north_m) = (0.0, 0.0);
    for place in &mut path {
        let new = habit.noise_m * (1.0 - keep * keep).sqrt();
        east_m = keep * east_m + new * dice.normal();
        north_m = keep * north_m + new * dice.normal();
        *place = (place.0 + east_m, place.1 + north_m);
    }
    for spike in 1..=habit.spikes {
        let at = path.len() * spike / (habit.spikes + 1);
        for (fix, place) in path.iter_mut().skip(at).take(1 + spike % 3).enumerate() {
            *place = (place.0 + 9.0 + fix as f64, place.1 - 7.0);
        }
    }
    let mut text = "<trk><name>Garten</name><trkseg>\n".to_owned();
    for (second, &(east_m, north_m)) in path.iter().enumerate() {
        let at = point(east_m, north_m);
        let _ = writeln!(
            text,
            "<trkpt lat=\"{:.9}\" lon=\"{:.9}\"><time>2026-05-01T10:{:02}:{:02}Z</time></trkpt>",
            at.lat_deg,
            at.lon_deg,
            second / 60,
            second % 60
        );
    }
    text + "</trkseg></trk>\n"
}

/// How often the outline crosses itself.
fn crossings(ring: &[(f64, f64)]) -> usize {
    let side =
        |p: (f64, f64), q: (f64, f64), r: (f64, f64)| (q.0 - p.0) * (r.1 - p.1) - (q.1 - p.1) * (r.0 - p.0);
    ring.windows(2)
        .enumerate()
        .flat_map(|(n, a)| ring.windows(2).skip(n + 2).map(move |b| (a, b)))
        .filter(|(a, b)| {
            side(a[0], a[1], b[0]) * side(a[0], a[1], b[1]) < -1e-9
                && side(b[0], b[1], a[0]) * side(b[0], b[1], a[1]) < -1e-9
        })
        .count()
}

/// Distance from a corner to the nearest of the outline.
fn nearest_m(ring: &[(f64, f64)], corner: (f64, f64)) -> f64 {
    let distances = ring
        .iter()
        .map(|at| math::hypot(at.0 - corner.0, at.1 - corner.1));
    distances.fold(f64::INFINITY, f64::min)
}

/// A lawn with an inner corner, 650 m2.
const BENT: [(f64, f64); 7] = [
    (0.0, 0.0),
    (35.0, 0.0),
    (35.0, 12.0),
    (20.0, 12.0),
    (20.0, 27.5),
    (0.0, 27.5),
    (0.0, 0.0),
];
const BENT_M2: f64 = 35.0 * 12.0 + 20.0 * 15.5;

#[test]
fn spikes_are_left_out_and_told() {
    let habit = Habit {
        spikes: 4,
        ..Habit::default()
    };
    let walked = made(&[walked(&BENT, habit, 1)]);
    assert_eq!(keys(&walked), ["WalkTakenAsLawn", "WalkSpikesCut"]);
    let track = "Garten".to_owned();
    let cut = Said::WalkSpikesCut { positions: 8, track };
    assert_eq!(walked.notices[1].said, cut);
    let ring = ring(&walked.plan.features[0]);
    assert!((area_m2(&ring).abs() - BENT_M2).abs() < 3.0, "{}", area_m2(&ring));
    assert!(ring.len() <= 12, "{ring:?}");
}

#[test]
fn who_stands_still_marks_a_corner() {
    let habit = Habit {
        noise_m: 0.3,
        wait_s: 10,
        ..Habit::default()
    };
    for seed in 1..20 {
        let walked = made(&[walked(&BENT, habit, seed)]);
        let waits = walked
            .notices
            .iter()
            .find(|notice| notice.said.code() == "WalkWaitsAsCorners");
        let track = "Garten".to_owned();
        let said = Said::WalkWaitsAsCorners { places: 6, track };
        assert_eq!(waits.unwrap().said, said, "{seed}");
        let ring = ring(&walked.plan.features[0]);
        // The median of ten fixes of 0.3 m, and what was walked before and after.
        for corner in &BENT[..6] {
            assert!(nearest_m(&ring, *corner) < 0.45, "{seed}: {corner:?} {ring:?}");
        }
    }
}

#[test]
fn walks_as_people_make_them_become_a_sound_outline() {
    let (mut runs, mut sound, mut worst_fraction) = (0, 0, 0.0f64);
    for noise_m in [0.3, 1.0, 2.0, 3.0] {
        for (filter_s, spikes, wait_s, rounds, open_m) in [
            (0.0, 0, 0, 1, 0.0),
            (30.0, 3, 0, 1, 0.0),
            (10.0, 0, 12, 1, 0.0),
            (60.0, 2, 8, 2, 0.0),
            (30.0, 0, 0, 1, 3.0),
            (0.0, 2, 15, 1, 0.0),
        ] {
            for seed in 1..6 {
                let habit = Habit {
                    noise_m,
                    filter_s,
                    spikes,
                    wait_s,
                    rounds,
                    open_m,
                };
                runs += 1;
                let bytes = gpx(&[walked(&BENT, habit, seed)]);
                let Ok(walked) = plan_from_walk("walk", bytes.as_bytes(), &[]) else {
                    println!("refused: {noise_m} {filter_s} {spikes} {wait_s} {rounds} {open_m} {seed}");
                    continue;
                };
                let ring = ring(&walked.plan.features[0]);
                let off = (area_m2(&ring).abs() / BENT_M2 - 1.0).abs();
                let crossed = crossings(&ring);
                if crossed == 0 && off < 0.05 * (1.0 + noise_m) {
                    sound += 1;
                    worst_fraction = worst_fraction.max(off);
                } else {
                    println!(
                        "{noise_m} {filter_s} {spikes} {wait_s} {rounds} {open_m} {seed}: {crossed} crossings, {off:.3} off"
                    );
                }
            }
        }
    }
    println!("{sound} of {runs}, worst {worst_fraction}");
    assert!(100 * sound >= 90 * runs, "{sound} of {runs}");
}

#[test]
fn a_second_round_is_cut_off() {
    let habit = Habit {
        noise_m: 0.3,
        filter_s: 20.0,
        rounds: 2,
        ..Habit::default()
    };
    let walked = made(&[walked(&BENT, habit, 3)]);
    assert!(keys(&walked).contains(&"WalkOverlapCut"), "{:?}", walked.notices);
    let area_m2 = area_m2(&ring(&walked.plan.features[0])).abs();
    assert!((area_m2 - BENT_M2).abs() < 0.05 * BENT_M2, "{area_m2}");
}

#[test]
fn what_is_no_gpx_is_refused() {
    let of = |text: &str| {
        plan_from_walk("walk.gpx", text.as_bytes(), &[])
            .unwrap_err()
            .to_string()
    };
    let rest = ", expected a file that begins with <gpx>";
    assert_eq!(
        of(""),
        format!("walk.gpx: is not a GPX file: the file is empty{rest}")
    );
    assert_eq!(
        of("hello"),
        format!("walk.gpx: is not a GPX file: it begins with text{rest}")
    );
    assert_eq!(
        of("<kml></kml>"),
        format!("walk.gpx: is not a GPX file: it begins with <kml>{rest}")
    );
    assert_eq!(
        of("<gpx>\n<trk>\n<name>lawn"),
        "walk.gpx: line 3: faulty XML: the file breaks off"
    );
    assert!(
        of("<gpx>\n<trk>\n<name x=\"5>lawn</name></trk></gpx>").starts_with("walk.gpx: line 3: faulty XML: "),
        "{}",
        of("<gpx>\n<trk>\n<name x=\"5>lawn</name></trk></gpx>")
    );
}

#[test]
fn broken_markup_costs_the_position_in_which_it_stands_and_is_told() {
    let walk = steps(&LAWN, 0.0);
    let pond = [(5.0, 5.0), (9.0, 5.0), (9.0, 9.0), (5.0, 9.0), (5.0, 5.0)];
    let whole = gpx(&[
        waypoint("station", 1.0, 1.0),
        track("lawn front", &walk),
        track("zone pond", &steps(&pond, 0.0)),
    ]);
    let sound = plan_from_walk("walk", whole.as_bytes(), &[]).unwrap();
    assert!(!keys(&sound).contains(&"WalkMarkupBroken"));
    let point_40 = whole.match_indices("<trkpt").nth(40).unwrap().0;
    let second_track = whole.rfind("<trk>").unwrap();
    let at = |from: usize, what: &str| from + whole[from..].find(what).unwrap();
    // One byte is lost: where, and whether an element of the plan is lost with it.
    for (place, what) in [
        (at(point_40, "\" lon"), "the quote behind a latitude"),
        (at(point_40, "><ele"), "the end of a tag"),
        (at(point_40, "</ele"), "the beginning of an end tag"),
        (at(point_40, "/ele"), "the stroke of an end tag"),
        (at(point_40, "</trkpt") + 1, "the stroke of the point's end tag"),
        (second_track - "</trk>\n".len(), "the end tag of a track"),
        (at(0, "</wpt>"), "the end tag of a waypoint"),
    ] {
        let mut damaged = whole.clone();
        damaged.remove(place);
        let walked =
            plan_from_walk("walk", damaged.as_bytes(), &[]).unwrap_or_else(|error| panic!("{what}: {error}"));
        let roles = |plan: &WalkedPlan| plan.plan.features.iter().map(|one| one.role).collect::<Vec<_>>();
        assert_eq!(roles(&walked), roles(&sound), "{what}");
        let (area, expected) = (ring(&walked.plan.features[1]), ring(&sound.plan.features[1]));
        assert!((area_m2(&area) - area_m2(&expected)).abs() < 0.3, "{what}");
    }
    let mut damaged = whole.clone();
    damaged.remove(at(point_40, "\" lon"));
    let notices = plan_from_walk("walk", damaged.as_bytes(), &[]).unwrap().notices;
    let told = notices
        .iter()
        .find(|notice| notice.said.code() == "WalkMarkupBroken")
        .unwrap();
    let line = 1 + whole[..point_40].matches('\n').count() as u64;
    assert_eq!(told.line, line);
    assert_eq!(told.said, Said::WalkMarkupBroken { places: 1 });
    // A surveyed path with a hole is none to measure against.
    assert!(lines("path", whole.as_bytes()).is_ok());
    let error = lines("path", damaged.as_bytes()).unwrap_err().to_string();
    assert_eq!(
        error,
        format!("path: line {line}: faulty XML: an element does not end where it should")
    );
}

#[test]
fn pieces_prefixes_entities_and_routes_are_understood() {
    let half = |corners: &[(f64, f64)]| {
        let text = track("", corners);
        text[text.find("<trkseg>").unwrap()..text.find("</trk>").unwrap()].to_owned()
    };
    let two_pieces = format!(
        "<trk><name>lawn A &amp; B &#228;</name>{}{}</trk>",
        half(&LAWN[..3]),
        half(&LAWN[3..])
    );
    let route = track(
        "zone r",
        &[(1.0, 1.0), (3.0, 1.0), (3.0, 3.0), (1.0, 3.0), (1.0, 1.0)],
    )
    .replace("trkpt", "rtept")
    .replace("<trkseg>", "")
    .replace("</trkseg>", "")
    .replace("trk>", "rte>");
    let walked = made(&[
        two_pieces,
        route,
        "<trk><name><![CDATA[lawn <2>]]></name>".to_owned() + &half(&LAWN) + "</trk>",
    ]);
    assert_eq!(keys(&walked), ["WalkPiecesJoined"]);
    let names: Vec<&str> = walked
        .plan
        .features
        .iter()
        .map(|feature| feature.name.as_str())
        .collect();
    assert_eq!(names, ["lawn A & B ä", "zone r", "lawn <2>"]);
    let prefixed = gpx(&[track("lawn", &LAWN)])
        .replace("<", "<g:")
        .replace("<g:/", "</g:")
        .replace("<g:?xml", "<?xml");
    assert_eq!(
        plan_from_walk("walk.gpx", prefixed.as_bytes(), &[])
            .unwrap()
            .plan
            .features
            .len(),
        1
    );
}

#[test]
fn guides_start_at_the_station_and_names_are_free() {
    let walked = made(&[
        track("lawn", &LAWN),
        track("lawn", &LAWN),
        track("guide", &[(20.0, 10.0), (1.0, 1.0)]),
        waypoint("charging station", 1.0, 1.0),
    ]);
    assert_eq!(keys(&walked), ["WalkGuideTurned"]);
    let PlanShape::Line(guide) = &walked.plan.features[2].shape else {
        panic!()
    };
    assert!(metres(guide[0]).0 < 2.0);
    assert_eq!(walked.plan.features[1].name, "lawn 2");
}

#[test]
fn positions_that_are_none_are_counted() {
    let broken = track("lawn", &LAWN).replace("</trkseg>", "<trkpt lat=\"x52\" lon=\"5\"></trkpt></trkseg>");
    assert!(keys(&made(&[broken])).contains(&"WalkPositionsSkipped"));
    assert!(!keys(&made(&[track("lawn", &LAWN)])).contains(&"WalkPositionsSkipped"));
}

#[test]
fn a_walk_is_limited_to_so_many_positions_on_both_sides() {
    let text = gpx(&[track("lawn", &LAWN), waypoint("station", 1.0, 1.0)]);
    let most = LAWN.len() + 1;
    assert!(gpx::read_within("walk", text.as_bytes(), most).is_ok());
    assert_eq!(
        gpx::read_within("walk", text.as_bytes(), most - 1)
            .unwrap_err()
            .to_string(),
        "walk: more than 5 positions, expected the walk around one garden"
    );
}

#[test]
fn lengths_at_the_end_of_a_name_are_read() {
    let rows = [
        ("tree 0.4 m", Some(("tree", 0.4))),
        ("tree 40cm", Some(("tree", 0.4))),
        ("tree0.4M", Some(("tree", 0.4))),
        ("0.4 m", Some(("", 0.4))),
        ("Bäume 1,5 m", Some(("Bäume", 1.5))),
        ("gate m", None),
        ("tree 0.4", None),
        ("atom", None),
        ("", None),
    ];
    for (name, expected) in rows {
        let found = length_at_end(name);
        assert_eq!(
            found.map(|(title, _)| title),
            expected.map(|(title, _): (&str, f64)| title),
            "{name}"
        );
        let near = |a: f64, b: f64| (a - b).abs() < 1e-12;
        assert!(found.zip(expected).is_none_or(|(a, b)| near(a.1, b.1)), "{name}");
    }
}

proptest! {
    #[test]
    fn no_bytes_make_the_reader_panic(text in "[<>/a-z\"=& .0-9\\[\\]!;#-]{0,200}") {
        let _ = plan_from_walk("x", text.as_bytes(), &[]);
        let _ = plan_from_walk("x", format!("<gpx><trk><name>lawn</name>{text}</trk></gpx>").as_bytes(), &[]);
    }

    #[test]
    fn a_noisy_walk_keeps_its_area(
        noise in prop::collection::vec((-0.04f64..0.04, -0.04f64..0.04), 210), start in 0usize..200, past in 0usize..10,
    ) {
        let mut walk: Vec<(f64, f64)> = steps(&LAWN, 0.0);
        walk.pop();
        let turn = start % walk.len();
        walk.rotate_left(turn);
        let again: Vec<(f64, f64)> = walk[..=past].to_vec();
        walk.extend(again);
        for (at, (e, n)) in walk.iter_mut().zip(noise) {
            *at = (at.0 + e, at.1 + n);
        }
        let walked = made(&[track("lawn", &walk)]);
        let area = area_m2(&ring(&walked.plan.features[0])).abs();
        // Noise of 4 cm and a simplification by 5 cm, each of random sign along 100 m of edge.
        prop_assert!((area - 600.0).abs() < 5.0, "{area}");
    }
}
