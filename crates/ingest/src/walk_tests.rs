//! Walks with every habit of a walker, and what is made of them.

use super::*;
use proptest::prelude::*;
use std::fmt::Write;
use tussock_types::GeoPoint;
use tussock_types::math;

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
    plan_from_walk("walk.gpx", gpx(parts).as_bytes()).unwrap()
}

fn said(parts: &[String]) -> String {
    plan_from_walk("walk.gpx", gpx(parts).as_bytes())
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
    walked.notices.iter().map(|notice| notice.key.as_str()).collect()
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
    assert_eq!(keys(&walked), ["walk_overlap_cut"]);
    assert!(
        walked.notices[0]
            .sentence
            .starts_with("\"lawn\" was walked 9.0 m past its start"),
        "{:?}",
        walked.notices
    );
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
    assert_eq!(
        walked.notices[0].sentence,
        "\"lawn\" was closed by a straight line of 4.9 m (up to 5 m are)"
    );
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
    assert_eq!(keys(&walked), ["walk_loops_cut"]);
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
    let sentences: Vec<&str> = walked
        .notices
        .iter()
        .map(|notice| notice.sentence.as_str())
        .collect();
    assert_eq!(
        sentences,
        [
            "the track \"Track 12\" is left out, its name says nothing of what it is",
            "the track \"lawnmower\" is left out, its name says nothing of what it is",
            "a track without a name is left out",
            "the waypoint \"gate\" is left out, its name says nothing of what it is",
            "the waypoint \"12.5 km\" is left out, its name says nothing of what it is",
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

#[test]
fn what_is_no_gpx_is_refused() {
    let of = |text: &str| {
        plan_from_walk("walk.gpx", text.as_bytes())
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
    let sound = plan_from_walk("walk", whole.as_bytes()).unwrap();
    assert!(!keys(&sound).contains(&"walk_markup_broken"));
    let point_40 = whole.match_indices("<trkpt").nth(40).unwrap().0;
    let second_track = whole.rfind("<trk>").unwrap();
    let at = |from: usize, what: &str| from + whole[from..].find(what).unwrap();
    // One byte is lost: where, and whether an element of the plan goes with it.
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
            plan_from_walk("walk", damaged.as_bytes()).unwrap_or_else(|error| panic!("{what}: {error}"));
        let roles = |plan: &WalkedPlan| plan.plan.features.iter().map(|one| one.role).collect::<Vec<_>>();
        assert_eq!(roles(&walked), roles(&sound), "{what}");
        let (area, expected) = (ring(&walked.plan.features[1]), ring(&sound.plan.features[1]));
        assert!((area_m2(&area) - area_m2(&expected)).abs() < 0.3, "{what}");
    }
    let mut damaged = whole.clone();
    damaged.remove(at(point_40, "\" lon"));
    let notices = plan_from_walk("walk", damaged.as_bytes()).unwrap().notices;
    let told = notices
        .iter()
        .find(|notice| notice.key == "walk_markup_broken")
        .unwrap();
    let line = 1 + whole[..point_40].matches('\n').count() as u64;
    assert_eq!(told.line, line);
    assert!(
        told.sentence.starts_with("the file is damaged at 1 place(s)"),
        "{}",
        told.sentence
    );
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
    assert_eq!(keys(&walked), ["walk_pieces_joined"]);
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
        plan_from_walk("walk.gpx", prefixed.as_bytes())
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
    assert_eq!(keys(&walked), ["walk_guide_turned"]);
    let PlanShape::Line(guide) = &walked.plan.features[2].shape else {
        panic!()
    };
    assert!(metres(guide[0]).0 < 2.0);
    assert_eq!(walked.plan.features[1].name, "lawn 2");
}

#[test]
fn positions_that_are_none_are_counted() {
    let broken = track("lawn", &LAWN).replace("</trkseg>", "<trkpt lat=\"x52\" lon=\"5\"></trkpt></trkseg>");
    assert!(keys(&made(&[broken])).contains(&"walk_positions_skipped"));
    assert!(!keys(&made(&[track("lawn", &LAWN)])).contains(&"walk_positions_skipped"));
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
        let _ = plan_from_walk("x", text.as_bytes());
        let _ = plan_from_walk("x", format!("<gpx><trk><name>lawn</name>{text}</trk></gpx>").as_bytes());
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
