//! The demo garden, its machine, its nights and its change: everything that `fixtures/demo` holds.
//!
//! ```text
//!            +----------------------+--shed--+-------+
//!            |   tree               |  zone  | yard  |   the way past the shed is the gap
//!            |          back lawn        gap         |   below its zone
//!            |  pond                +----------------+
//!            +---------------+ +----+
//!               house        | |  passage 1.6 m
//!      +--------- S ---------+ +---+
//!      |   front lawn              |
//!      |  tree          tree       |
//!      +---------------------------+
//! ```

use flate2::{Compression, GzBuilder};
use serde_json::{Value, json};
use std::fmt::Write as _;
use std::io::Write as _;
use tussock_plane::{Frame, Site};
use tussock_simulate::{
    Counting, Doing, LogNoise, Machine, Manner, Run, Sampling, Spell, StuckSpot, TrueRun, Truth, TurnLaw,
    gpx_bytes, sample, simulate, truth,
};
use tussock_types::{GeoPoint, GeoPolygon, Place, Plan, PlanFeature, PlanRole, PlanShape, Trace};

/// Where the garden would be. The point was chosen for its round numbers.
const ORIGIN: GeoPoint = GeoPoint {
    lat_deg: 53.86,
    lon_deg: 12.42,
};
/// Seeds of the four nights, in order.
pub(crate) const RUN_SEEDS: [u64; 4] = [210, 211, 124, 125];
/// Seeds of the position error of the four logs.
pub(crate) const LOG_SEEDS: [u64; 4] = [1364, 1365, 1114, 1115];
/// Seeds of other nights, for comparison.
const OTHER_SEEDS: std::ops::Range<u64> = 400..440;
/// 4, 5, 11 and 12 May 2026, 19:30 UTC.
const STARTS_UNIX_S: [f64; 4] = [1_777_923_000.0, 1_778_009_400.0, 1_778_527_800.0, 1_778_614_200.0];
const NAMES: [&str; 4] = [
    "before/2026-05-04.gpx.gz",
    "before/2026-05-05.gpx.gz",
    "after/2026-05-11.gpx.gz",
    "after/2026-05-12.gpx.gz",
];
pub(crate) const HOURS: f64 = 8.0;
pub(crate) const CUT_WIDTH_M: f64 = 0.22;
const NOISE: LogNoise = LogNoise {
    white_m: 0.012,
    drift_m: 0.015,
    drift_time_s: 600.0,
};
/// Roots beside the eastern tree of the front lawn.
pub(crate) const ROOTS: Place = Place::new(19.1, 5.7);

/// Before or after the change.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum When {
    Before,
    After,
}

/// A file of the folder.
pub(crate) struct File {
    /// Its path in the folder.
    pub(crate) name: String,
    /// What it holds, before it is packed.
    pub(crate) bytes: Vec<u8>,
}

impl File {
    /// What is written: packed if the name says so, without a time, so that the same content gives the same bytes.
    pub(crate) fn stored(&self) -> std::io::Result<Vec<u8>> {
        if !self.name.ends_with(".gz") {
            return Ok(self.bytes.clone());
        }
        let mut packer = GzBuilder::new().mtime(0).write(Vec::new(), Compression::best());
        packer.write_all(&self.bytes)?;
        packer.finish()
    }
}

fn rounded(value: f64) -> f64 {
    (value * 1e8).round() / 1e8
}

struct Sheet {
    frame: Frame,
    features: Vec<PlanFeature>,
}

impl Sheet {
    /// A place in metres as it is written: 8 decimals of a degree are a millimetre.
    fn geo(&self, (east_m, north_m): (f64, f64)) -> GeoPoint {
        let point = self.frame.to_geo(Place::new(east_m, north_m));
        GeoPoint {
            lat_deg: rounded(point.lat_deg),
            lon_deg: rounded(point.lon_deg),
        }
    }

    fn add(&mut self, role: PlanRole, name: &str, shape: PlanShape) -> &mut PlanFeature {
        let index = self.features.len();
        self.features.push(PlanFeature::new(role, name, index, shape));
        &mut self.features[index]
    }

    fn area(&mut self, role: PlanRole, name: &str, corners: &[(f64, f64)]) {
        let ring = corners
            .iter()
            .chain(&corners[..1])
            .map(|corner| self.geo(*corner))
            .collect();
        self.add(
            role,
            name,
            PlanShape::Polygons(vec![GeoPolygon { rings: vec![ring] }]),
        );
    }

    fn tree(&mut self, name: &str, at: (f64, f64), radius_m: f64) {
        let point = self.geo(at);
        self.add(PlanRole::Obstacle, name, PlanShape::Point(point))
            .radius_m = Some(radius_m);
    }
}

/// The frame in which the garden is drawn.
pub(crate) fn frame() -> Frame {
    Frame::at(ORIGIN)
}

/// The plan before or after the change.
pub(crate) fn plan(when: When) -> Plan {
    let mut sheet = Sheet {
        frame: frame(),
        features: Vec::new(),
    };
    sheet.area(
        PlanRole::Lawn,
        "front lawn",
        &[
            (0.0, 0.0),
            (25.8, 0.4),
            (26.2, 9.0),
            (25.4, 16.6),
            (23.1, 16.6),
            (21.5, 16.6),
            (10.0, 16.6),
            (0.4, 16.2),
        ],
    );
    sheet.area(
        PlanRole::Lawn,
        "back lawn",
        &[
            (21.5, 16.6),
            (23.1, 16.6),
            (23.1, 27.5),
            (24.4, 27.5),
            (24.4, 37.0),
            (33.4, 37.0),
            (33.4, 43.5),
            (27.6, 43.5),
            (23.8, 43.5),
            (3.6, 43.5),
            (2.8, 34.0),
            (3.2, 27.5),
            (21.5, 27.5),
        ],
    );
    sheet.area(
        PlanRole::Exclusion,
        "pond",
        &[
            (6.3, 31.2),
            (8.4, 31.6),
            (9.5, 33.0),
            (9.1, 34.6),
            (7.4, 35.4),
            (5.7, 34.9),
            (5.0, 33.3),
            (5.4, 31.9),
        ],
    );
    // Before the change the zone reaches 1.7 m farther south than the shed needs.
    let south_m = match when {
        When::Before => 37.2,
        When::After => 38.9,
    };
    sheet.area(
        PlanRole::Exclusion,
        "shed",
        &[(23.8, south_m), (27.6, south_m), (27.6, 43.5), (23.8, 43.5)],
    );
    if when == When::After {
        let hexagon: Vec<(f64, f64)> = [
            (1.4, 0.0),
            (0.7, 1.21),
            (-0.7, 1.21),
            (-1.4, 0.0),
            (-0.7, -1.21),
            (0.7, -1.21),
        ]
        .map(|(x, y)| (18.7 + x, 5.4 + y))
        .to_vec();
        sheet.area(PlanRole::Exclusion, "roots", &hexagon);
    }
    sheet.tree("apple tree", (6.2, 7.4), 0.3);
    sheet.tree("walnut tree", (18.2, 5.0), 0.4);
    sheet.tree("birch", (13.5, 39.6), 0.25);
    let line = [
        (13.0, 16.5),
        (13.0, 14.2),
        (22.3, 14.2),
        (22.3, 27.8),
        (19.0, 31.0),
        (12.0, 33.5),
    ]
    .map(|at| sheet.geo(at));
    sheet
        .add(
            PlanRole::Guide,
            "guide to the back",
            PlanShape::Line(line.to_vec()),
        )
        .outing_share_fraction = Some(0.45);
    let station = sheet.geo((13.0, 16.5));
    sheet.add(PlanRole::Station, "station", PlanShape::Point(station));
    Plan {
        features: sheet.features,
    }
}

/// The site of a plan, on the frame in which it was drawn.
pub(crate) fn site(when: When) -> Site {
    match Site::build_in(&plan(when), frame()) {
        Ok((site, _)) => site,
        Err(faults) => panic!("the demo plan is faulty: {faults:?}"),
    }
}

pub(crate) fn machine() -> Machine {
    Machine {
        speed_mps: 0.42,
        past_boundary_m: -0.12,
        turn_law: TurnLaw::CosineFromNormal,
        roaming: Spell::Between {
            min_s: 3300.0,
            max_s: 4200.0,
        },
        charging: Spell::Between {
            min_s: 1800.0,
            max_s: 2400.0,
        },
        speed_sd_fraction: 0.01,
        ..Machine::default()
    }
}

/// What happened in one of the four nights.
pub(crate) fn night(number: usize) -> TrueRun {
    night_of(when(number), RUN_SEEDS[number])
}

/// A night with its own seed.
pub(crate) fn night_of(when: When, seed: u64) -> TrueRun {
    let mut run = Run::new(HOURS, seed);
    run.start_stay_s = 600.0;
    run.stuck_spots.push(StuckSpot {
        place: ROOTS,
        radius_m: 0.5,
        probability: 0.35,
        duration: Spell::Between {
            min_s: 240.0,
            max_s: 720.0,
        },
        manner: Manner::Wiggles,
    });
    match simulate(&site(when), &machine(), &run) {
        Ok(run) => run,
        Err(error) => panic!("the demo machine does not run: {error}"),
    }
}

pub(crate) const fn when(number: usize) -> When {
    if number < 2 { When::Before } else { When::After }
}

/// The log of one of the four nights.
pub(crate) fn log(number: usize) -> Trace {
    let sampling = Sampling {
        start_unix_s: STARTS_UNIX_S[number],
        machine: "demo machine".to_owned(),
        height_msl_m: 38.0,
        ..Sampling::geographic(2.0, NOISE, LOG_SEEDS[number], frame())
    };
    sample(&night(number), &sampling)
}

/// Truth over the two nights before or after, one after the other.
pub(crate) fn both_nights(when: When) -> (TrueRun, Truth) {
    match when {
        When::Before => joined(when, night(0), night(1), 0.02),
        When::After => joined(when, night(2), night(3), 0.02),
    }
}

/// Two nights as one run, and their truth.
pub(crate) fn joined(when: When, first: TrueRun, second: TrueRun, cell_m: f64) -> (TrueRun, Truth) {
    // The second night begins at the station, where the first was left during the day.
    let mut joined = first;
    let gap_s = joined.end_s() + 16.0 * 3600.0;
    joined.vertices.extend(second.vertices.iter().map(|vertex| {
        let mut vertex = *vertex;
        vertex.time_s += gap_s;
        vertex
    }));
    joined.stuck.extend(second.stuck.iter().map(|episode| {
        let mut episode = *episode;
        episode.start_s += gap_s;
        episode.end_s += gap_s;
        episode
    }));
    joined.outings.extend(second.outings);
    // Nothing is painted between the nights.
    let joint = HOURS * 3600.0;
    if let Some(last) = joined.vertices.iter().rposition(|vertex| vertex.time_s <= joint)
        && let Some(next) = joined.vertices.get(last + 1).copied()
    {
        joined.vertices[last].place = next.place;
        joined.vertices[last].doing = Doing::AtStation;
    }
    let counted = truth(&joined, &site(when), &Counting::new(CUT_WIDTH_M, cell_m));
    (joined, counted)
}

/// Visited fractions of other pairs of nights, in ascending order.
fn other_nights(when: When) -> Vec<f64> {
    let pair = |seed| {
        joined(when, night_of(when, seed), night_of(when, seed + 1), 0.05)
            .1
            .visited_fraction
    };
    let mut fractions: Vec<f64> = OTHER_SEEDS.step_by(2).map(pair).collect();
    fractions.sort_by(f64::total_cmp);
    fractions
}

fn position(point: &GeoPoint) -> Value {
    json!([point.lon_deg, point.lat_deg])
}

/// A plan as GeoJSON (RFC 7946).
pub(crate) fn geojson(plan: &Plan) -> Vec<u8> {
    let ring = |points: &Vec<GeoPoint>| points.iter().map(position).collect::<Vec<_>>();
    let features: Vec<Value> = plan
        .features
        .iter()
        .map(|feature| {
            let geometry = match &feature.shape {
                PlanShape::Polygons(polygons) => json!({
                    "type": "Polygon",
                    "coordinates": polygons.iter().flat_map(|polygon| &polygon.rings).map(ring).collect::<Vec<_>>(),
                }),
                PlanShape::Line(points) => json!({ "type": "LineString", "coordinates": ring(points) }),
                PlanShape::Point(point) => json!({ "type": "Point", "coordinates": position(point) }),
            };
            let mut properties = json!({ "role": feature.role.word(), "name": feature.name });
            if let Some(radius_m) = feature.radius_m {
                properties["radius_m"] = json!(radius_m);
            }
            if let Some(share_fraction) = feature.outing_share_fraction {
                properties["outing_share_fraction"] = json!(share_fraction);
            }
            json!({ "type": "Feature", "properties": properties, "geometry": geometry })
        })
        .collect();
    // One feature per line, so that a change shows as one line in a comparison.
    let mut text = String::from("{\"type\":\"FeatureCollection\",\"features\":[\n");
    for (number, feature) in features.iter().enumerate() {
        let comma = if number + 1 < features.len() { "," } else { "" };
        let _ = writeln!(text, "{feature}{comma}");
    }
    text.push_str("]}\n");
    text.into_bytes()
}

const SETTINGS: &str = r#"# The demo garden. Every key left out has a default with its reason.

[machine]
cut_width_m = 0.22
cut_width_sd_m = 0.005
body_width_m = 0.45

[promise]
visited_fraction = 0.95
days = 3

[turf]
cut_height_mm = 45
growth_mm_per_day = 4
grass = "cool"

[garden]
name = "Demo garden"
time_zone = "+02:00"
remarks = "The customer sees long grass in the yard behind the shed."

[pockets]
min_width_m = 0.8
min_area_m2 = 0.5
"#;

fn card() -> String {
    let mut text = String::from(
        "# The demo garden\n\n\
        **It does not exist.** Lawns, pond, shed, trees, machine and nights are invented; the position was picked for its\n\
        round numbers. The logs were simulated, not recorded. Licence: that of this repository.\n\n\
        Two lawns are joined by a passage of 1.6 m beside the house. The station stands at the house; a guide run leads\n\
        through the passage to the back lawn. East of the back lawn, behind the shed, lies a small yard of grass.\n\n\
        ## What it shows\n\n\
        - *Before* (`plan.geojson`, `before/`): the zone around the shed was drawn 1.7 m too far south. It leaves 0.2 m of\n\
          grass between zone and lawn edge, no way for a machine: the yard behind is never visited. Beside the walnut tree roots\n\
          catch the machine again and again. The smaller gaps are chance.\n\
        - *After* (`plan-after.geojson`, `after/`): the zone was shrunk to what the shed needs, and a small zone keeps\n\
          the machine off the roots. Nothing else was changed.\n\n\
        ## What is true\n\n\
        Two nights each, swath 0.22 m, counted on the exact paths in cells of 2 cm; pockets from 0.8 m wide and 0.5 m2.\n\n\
        | | before | after |\n|---|---|---|\n",
    );
    let (before, after) = (both_nights(When::Before), both_nights(When::After));
    let mut row = |name: &str, value: &dyn Fn(&TrueRun, &Truth) -> String| {
        let _ = writeln!(
            text,
            "| {name} | {} | {} |",
            value(&before.0, &before.1),
            value(&after.0, &after.1)
        );
    };
    row("lawn, zones and obstacles out", &|_, truth| {
        format!("{:.1} m2", truth.lawn.area_m2())
    });
    row("driven", &|run, _| {
        format!("{:.0} m in {:.1} h", run.driven_m(), run.driving_s() / 3600.0)
    });
    row("outings, of them along the guide run", &|run, _| {
        let guided = run.outings.iter().filter(|outing| outing.guide.is_some()).count();
        format!("{}, {guided}", run.outings.len())
    });
    row("visited", &|_, truth| {
        format!("{:.2} %", 100.0 * truth.visited_fraction)
    });
    row("largest pocket", &|_, truth| {
        truth.pockets.first().map_or("none".to_owned(), |pocket| {
            format!("{:.1} m2, {:.1} m wide", pocket.area_m2, pocket.widest_m)
        })
    });
    row("further pockets", &|_, truth| {
        truth.pockets.len().saturating_sub(1).to_string()
    });
    row("stuck at the roots", &|run, _| match run.stuck.len() {
        0 => "never".to_owned(),
        times => format!("{times} times, {:.0} min", run.time_s(Doing::Stuck) / 60.0),
    });
    text.push('\n');
    for (name, when) in [("before", When::Before), ("after", When::After)] {
        let fractions = other_nights(when);
        let percent = |at: usize| 100.0 * fractions[at];
        let _ = writeln!(
            text,
            "{} other pairs of nights, seeds {} to {}, {name} the change: {:.1} to {:.1} % visited, median {:.1} %.",
            fractions.len(),
            OTHER_SEEDS.start,
            OTHER_SEEDS.end - 1,
            percent(0),
            percent(fractions.len() - 1),
            percent(fractions.len() / 2),
        );
    }
    let _ = write!(
        text,
        "\n## How it was made\n\n\
        `cargo run --release -p tussock-simulate --example demo` writes this folder; a test makes it anew and compares.\n\n\
        Machine: 0.42 m/s (1 % scatter from leg to leg), turns 0.12 m before the edge by Lambert's law,\n\
        55 to 70 min out, 30 to 40 min at the station, 45 % of outings along the guide run. Roots: radius 0.5 m, catch\n\
        35 % of entries for 4 to 12 min. Log: a fix every 2 s for {HOURS} h, white error 0.012 m and drift 0.015 m\n\
        (600 s) per axis. Seeds of the nights: {RUN_SEEDS:?}; of the position error: {LOG_SEEDS:?}. The seeds of the nights\n\
        were picked so that about six stuck episodes, a few chance gaps and no unlucky night occur; the walled-off yard does\n\
        not depend on them.\n",
    );
    text
}

/// Everything that the folder holds.
pub(crate) fn files() -> Vec<File> {
    let file = |name: &str, bytes: Vec<u8>| File {
        name: name.to_owned(),
        bytes,
    };
    let mut files = vec![
        file("plan.geojson", geojson(&plan(When::Before))),
        file("plan-after.geojson", geojson(&plan(When::After))),
        file("settings.toml", SETTINGS.as_bytes().to_vec()),
        file("CARD.md", card().into_bytes()),
    ];
    for (number, name) in NAMES.iter().enumerate() {
        files.push(file(name, gpx_bytes(&log(number))));
    }
    files
}
