//! Odd gardens from any bytes: a plan, settings and logs as nobody foresaw them, as files, so that they pass the readers first.
//! A plain test and a fuzz target drive a whole analysis with them; the same garden without its oddities is its twin.
//!
//! The first entry of every table is the usual one: bytes that have run out give the usual garden.

use arbitrary::{Result, Unstructured};
use tussock::types::{
    Fix, FixQuality, GeoPoint, GeoPolygon, Place, Plan, PlanFeature, PlanRole, PlanShape, Positions, Trace,
    math,
};
use tussock_plane::{Frame, Site};
use tussock_simulate::gardens::{GardenKind, ORIGIN, Surprise, Wish, invent_as};
use tussock_simulate::{
    Lanes, LogNoise, Machine, Pattern, Run, Sampling, csv_bytes, gpx_bytes, nmea_bytes, sample, simulate,
};

/// A garden as files.
#[derive(Clone, Debug, Default)]
pub struct Odd {
    /// What is odd about it, in words.
    pub said: String,
    /// GeoJSON; nothing where there is no plan.
    pub plan: Option<String>,
    /// TOML.
    pub settings: String,
    /// Names and bytes of logs.
    pub logs: Vec<(String, Vec<u8>)>,
    /// Fixes in the logs, as written.
    pub fixes: usize,
}

const KINDS: [GardenKind; 6] = [
    GardenKind::Convex,
    GardenKind::Ell,
    GardenKind::Islands,
    GardenKind::TwoRooms { passage_m: 1.6 },
    GardenKind::TwoRooms { passage_m: 0.3 },
    GardenKind::You,
];
const AREAS_M2: [f64; 7] = [120.0, 300.0, 900.0, 30.0, 4.0, 0.3, 2_500.0];
const PERIODS_S: [f64; 11] = [1.0, 5.0, 2.0, 0.2, 0.1, 10.0, 30.0, 60.0, 150.0, 160.0, 600.0];
const HOURS: [f64; 7] = [1.0, 0.5, 3.0, 12.0, 0.2, 0.02, 200.0];
/// Logs are made no longer, so that one garden takes a fraction of a second.
const MOST_FIXES: f64 = 3_000.0;
const ASTRAY: LogNoise = LogNoise {
    white_m: 3.0,
    drift_m: 20.0,
    drift_time_s: 60.0,
};
const GRADES: [LogNoise; 5] = [
    LogNoise::CENTIMETRES,
    LogNoise::DECIMETRES,
    LogNoise::METRES,
    LogNoise::NONE,
    ASTRAY,
];
/// Where the garden lies: the invented place, the corners of the Earth, and beside them.
const PLACES_DEG: [(f64, f64); 8] = [
    (ORIGIN.lat_deg, ORIGIN.lon_deg),
    (-33.9, 151.2),
    (0.0001, -0.0001),
    (-17.0, 179.99999),
    (65.0, -180.0),
    (89.9, 0.0),
    (89.99999, 10.0),
    (-89.9999, -170.0),
];
/// A second log begins so much after the first.
const NEXT_LOG_S: [f64; 5] = [0.0, 86_400.0, 300.0, -3_600.0, 400.0 * 86_400.0];
/// 1 May 2026, 20:00 UTC; the edges of what is read; a garden in the year of a dead clock.
const STARTS_UNIX_S: [f64; 5] = [
    1_777_665_600.0,
    316_000_000.0,
    4_102_000_000.0,
    0.0,
    3_471_292_800.0,
];

/// What can be odd about a plan.
#[derive(Clone, Copy, Debug)]
enum PlanOddity {
    Without(PlanRole),
    /// A hole of this size in the middle, as a part of it.
    Island(f64),
    /// A cut of this width into the middle.
    Slit(f64),
    /// All corners on one line.
    Collinear,
    /// Two corners exchanged.
    Crossed,
    /// So many copies, so many metres apart.
    Copies(u8, f64),
    Scaled(f64),
    Moved(f64),
    /// Every feature of the role twice.
    Twice(PlanRole),
    /// A disc of this radius in the middle.
    Obstacle(f64),
    /// A zone of this size over the middle.
    Zone(f64),
    /// A station so far to the east.
    StationAt(f64),
    /// A guide run of so many equal corners.
    StandingGuide(u8),
    /// Corners between corners.
    Finer(u8),
    /// A boundary of this size.
    Boundary(f64),
}

const PLAN_ODDITIES: [PlanOddity; 32] = [
    PlanOddity::Without(PlanRole::Station),
    PlanOddity::Without(PlanRole::Lawn),
    PlanOddity::Without(PlanRole::Exclusion),
    PlanOddity::Without(PlanRole::Obstacle),
    PlanOddity::Without(PlanRole::Guide),
    PlanOddity::Without(PlanRole::Boundary),
    PlanOddity::Island(0.3),
    PlanOddity::Island(0.99),
    PlanOddity::Slit(0.0),
    PlanOddity::Slit(1e-6),
    PlanOddity::Slit(0.1),
    PlanOddity::Collinear,
    PlanOddity::Crossed,
    PlanOddity::Copies(3, 40.0),
    PlanOddity::Copies(40, 0.5),
    PlanOddity::Copies(2, 4_000.0),
    PlanOddity::Scaled(0.01),
    PlanOddity::Scaled(3.0),
    PlanOddity::Scaled(300.0),
    PlanOddity::Moved(0.7),
    PlanOddity::Moved(15.0),
    PlanOddity::Moved(59.0),
    PlanOddity::Twice(PlanRole::Lawn),
    PlanOddity::Twice(PlanRole::Station),
    PlanOddity::Obstacle(0.01),
    PlanOddity::Obstacle(80.0),
    PlanOddity::Zone(0.999),
    PlanOddity::StationAt(3.0),
    PlanOddity::StationAt(900.0),
    PlanOddity::StandingGuide(3),
    PlanOddity::Finer(60),
    PlanOddity::Boundary(1.05),
];

/// What can be odd about a log.
#[derive(Clone, Copy, Debug)]
enum LogOddity {
    /// Fixes from one part of the log to another are not there.
    Gap(f64, f64),
    /// From its middle on it is off by so much, to the end or for a tenth of it.
    Step(f64),
    StepAndBack(f64),
    /// Every so many fixes one is so far off.
    Jumps(usize, f64),
    Constant,
    /// A position is written so often.
    Repeated(usize),
    /// Its second half so much later.
    Clock(f64),
    Year(f64),
    /// All of it at one time.
    Frozen,
    Backwards,
    Quality(FixQuality),
    Hdop(f32),
    /// Times so dense that it drives so many times faster.
    Faster(f64),
    /// From the middle to here it moves straight on at this speed.
    Carried(f64),
    /// Digits of a degree, or of a metre.
    Digits(i32),
    /// So many segments.
    Segments(usize),
    /// The end of the file is missing.
    CutOff(f64),
    /// Every so many fixes only one remains, at random places.
    Thinned(usize),
    /// Places are so many times as far from the first.
    Blown(f64),
    /// So many fixes remain.
    Only(usize),
}

const LOG_ODDITIES: [LogOddity; 40] = [
    LogOddity::Gap(0.3, 0.5),
    LogOddity::Gap(0.02, 0.98),
    LogOddity::Step(1.5),
    LogOddity::Step(4.0),
    LogOddity::Step(30.0),
    LogOddity::StepAndBack(4.0),
    LogOddity::StepAndBack(60.0),
    LogOddity::Jumps(10, 20.0),
    LogOddity::Jumps(2, 5.0),
    LogOddity::Jumps(100, 1e6),
    LogOddity::Constant,
    LogOddity::Repeated(2),
    LogOddity::Repeated(60),
    LogOddity::Clock(86_400.0),
    LogOddity::Clock(31_536_000.0),
    LogOddity::Clock(-3_600.0),
    LogOddity::Clock(-0.5),
    LogOddity::Clock(3_600.0),
    LogOddity::Year(0.0),
    LogOddity::Year(3_471_292_800.0),
    LogOddity::Frozen,
    LogOddity::Backwards,
    LogOddity::Quality(FixQuality::Manual),
    LogOddity::Quality(FixQuality::Unknown),
    LogOddity::Quality(FixQuality::RtkFixed),
    LogOddity::Quality(FixQuality::Autonomous),
    LogOddity::Hdop(99.0),
    LogOddity::Hdop(0.0),
    LogOddity::Hdop(f32::NAN),
    LogOddity::Faster(4.0),
    LogOddity::Faster(40.0),
    LogOddity::Carried(2.5),
    LogOddity::Digits(4),
    LogOddity::Digits(0),
    LogOddity::Segments(50),
    LogOddity::CutOff(0.7),
    LogOddity::Thinned(7),
    LogOddity::Blown(60.0),
    LogOddity::Blown(1e7),
    LogOddity::Only(3),
];

/// How a log is written.
type Writer = fn(&Trace) -> Vec<u8>;
const WRITERS: [(&str, Writer); 3] = [("gpx", gpx_bytes), ("nmea", nmea_bytes), ("csv", csv_bytes)];

/// One of a table.
fn pick<T: Copy>(bytes: &mut Unstructured<'_>, table: &[T]) -> Result<T> {
    Ok(table[bytes.int_in_range(0..=table.len() - 1)?])
}

/// One of a table, three times in four the first.
fn mostly<T: Copy>(bytes: &mut Unstructured<'_>, table: &[T]) -> Result<T> {
    if bytes.int_in_range(0..=3)? < 3 {
        Ok(table[0])
    } else {
        pick(bytes, table)
    }
}

/// None, one or a few of a table, half the time none.
fn some<T: Copy>(bytes: &mut Unstructured<'_>, table: &[T]) -> Result<Vec<T>> {
    let count = pick(bytes, &[0, 0, 0, 1, 1, 2])?;
    (0..count).map(|_| pick(bytes, table)).collect()
}

/// An odd garden, and the same with its log as it should be.
///
/// # Errors
/// Never in fact: bytes that have run out are zeros.
pub fn invent(bytes: &mut Unstructured<'_>) -> Result<(Odd, Odd)> {
    let wish = Wish {
        area_m2: {
            let area_m2 = mostly(bytes, &AREAS_M2)?;
            (area_m2, area_m2)
        },
        guide_share_fraction: pick(bytes, &[None, Some(0.5)])?,
        surprise: mostly(bytes, &[Surprise::None, Surprise::BlockedPart])?,
        ..Wish::new(pick(bytes, &KINDS)?)
    };
    let seed = u64::from(bytes.int_in_range(0..=255_u8)?);
    let garden = invent_as(&wish, seed);
    let drive = Drive::draw(bytes, seed)?;
    let machines = pick(bytes, &[1_u8, 1, 1, 2, 2, 3])?;
    let later_s = pick(bytes, &NEXT_LOG_S)?;
    let traces: Vec<Trace> = (0..machines)
        .map(|number| drive.trace(&garden.ground, number, later_s))
        .collect();
    let (plan_oddities, log_oddities) = (some(bytes, &PLAN_ODDITIES)?, some(bytes, &LOG_ODDITIES)?);
    let at_deg = mostly(bytes, &PLACES_DEG)?;
    let has_plan = bytes.int_in_range(0..=4_u8)? < 4;
    let is_local = bytes.int_in_range(0..=7_u8)? == 7;
    let writer = if is_local {
        WRITERS[2]
    } else {
        pick(bytes, &WRITERS)?
    };
    let settings = odd_settings(bytes)?;

    let mut plan = garden.plan.clone();
    plan_oddities.iter().for_each(|oddity| oddity.befall(&mut plan));
    // Each log for itself: the second machine may be sound.
    let mut odd_traces = traces.clone();
    for oddity in &log_oddities {
        let which = bytes.int_in_range(0..=odd_traces.len() - 1)?;
        oddity.befall(&mut odd_traces[which]);
    }
    let mut sound_traces = traces;
    carry_to(at_deg, &mut plan, odd_traces.iter_mut().chain(&mut sound_traces));
    if is_local {
        odd_traces.iter_mut().for_each(|trace| *trace = in_metres(trace));
    }
    let said = format!(
        "{:?}, {:.1} m2, {drive:?}, {machines} machines, plan {has_plan} {plan_oddities:?}, log {} local {is_local} \
         {log_oddities:?}, at {at_deg:?}, settings {settings:?}",
        wish.kind, wish.area_m2.0, writer.0
    );
    let mut odd = as_files(said, has_plan.then_some(&plan), &odd_traces, writer, &settings);
    for oddity in &log_oddities {
        if let (LogOddity::CutOff(fraction), Some((_, log))) = (oddity, odd.logs.first_mut()) {
            log.truncate((log.len() as f64 * fraction) as usize);
        }
    }
    let twin = Odd {
        said: format!("without oddities in its log: {}", odd.said),
        logs: as_files(String::new(), None, &sound_traces, writer, &[]).logs,
        ..odd.clone()
    };
    Ok((odd, twin))
}

fn as_files(
    said: String,
    plan: Option<&Plan>,
    traces: &[Trace],
    (ending, write): (&str, Writer),
    settings: &[(String, String, String)],
) -> Odd {
    let mut text = String::from("machine.cut_width_m = 0.22\n");
    for (table, key, value) in settings {
        if (table.as_str(), key.as_str()) == ("machine", "cut_width_m") {
            text.clear();
        }
        // One key stands once.
        let name = format!("{table}.{key} = ");
        if !text.contains(&name) {
            text = format!("{text}{name}{value}\n");
        }
    }
    Odd {
        said,
        plan: plan.map(tussock_ingest::write_plan),
        settings: text,
        logs: traces
            .iter()
            .enumerate()
            .map(|(number, trace)| (format!("log-{number}.{ending}"), write(trace)))
            .collect(),
        fixes: traces.iter().map(Trace::len).sum(),
    }
}

/// Settings at the ends of what the reader allows, which its own reference tells.
fn odd_settings(bytes: &mut Unstructured<'_>) -> Result<Vec<(String, String, String)>> {
    let mut known: Vec<(String, String, String, String)> = Vec::new();
    let (mut table, mut range) = (String::new(), None);
    let reference = tussock_ingest::settings_reference().replace("\n# number", " number");
    let reference = reference.replace("(a\n# ", "(a ").replace("whole\n# ", "whole ");
    for line in reference.lines() {
        if let Some(name) = line.strip_prefix('[') {
            table = name.trim_end_matches(']').to_owned();
        } else if let Some((_, told)) = line.split_once("number from ") {
            let told = told.trim_end_matches([')', '.']);
            range = told
                .split_once(" to ")
                .or_else(|| Some((told.strip_suffix(" up")?, "9000000000000000000")));
        } else if let Some((key, _)) = line.trim_start_matches("# ").split_once(" = ")
            && let Some((low, high)) = range.take()
        {
            known.push((table.clone(), key.to_owned(), low.to_owned(), high.to_owned()));
        }
    }
    assert!(known.len() > 30, "the reference of settings was not understood");
    let count = pick(bytes, &[0, 0, 0, 1, 2])?;
    (0..count)
        .map(|_| {
            let which = bytes.int_in_range(0..=known.len() - 1)?;
            let (table, key, low, high) = &known[which];
            let value = if bytes.ratio(1_u8, 2)? { low } else { high };
            Ok((table.clone(), key.clone(), value.clone()))
        })
        .collect()
}

/// Who drove, how long, and how it was logged.
#[derive(Debug)]
struct Drive {
    manner: u8,
    hours: f64,
    period_s: f64,
    grade: LogNoise,
    start_unix_s: f64,
    seed: u64,
}

impl Drive {
    fn draw(bytes: &mut Unstructured<'_>, seed: u64) -> Result<Self> {
        let period_s = mostly(bytes, &PERIODS_S)?;
        Ok(Self {
            manner: mostly(bytes, &[0, 1, 2, 3, 4])?,
            hours: mostly(bytes, &HOURS)?.min(MOST_FIXES * period_s / 3600.0),
            period_s,
            grade: pick(bytes, &GRADES)?,
            start_unix_s: mostly(bytes, &STARTS_UNIX_S)?,
            seed,
        })
    }

    fn machine(&self) -> Machine {
        match self.manner {
            1 => Machine::of(Pattern::Lanes(Lanes::new(0.18, 30.0, 0.02))),
            2 => Machine::of(Pattern::Spiral { pitch_m: 0.2 }),
            3 => Machine::of(Pattern::Combined(Lanes::new(0.2, 100.0, 0.05))),
            _ => Machine::default(),
        }
    }

    fn trace(&self, ground: &Plan, number: u8, later_s: f64) -> Trace {
        let seed = self.seed + u64::from(number) * 1000;
        let sampling = Sampling {
            start_unix_s: self.start_unix_s + later_s * f64::from(number),
            machine: format!("machine-{}", number + 1),
            ..Sampling::geographic(self.period_s, self.grade, seed, Frame::at(ORIGIN))
        };
        let run = Site::build_in(ground, Frame::at(ORIGIN))
            .ok()
            .filter(|_| self.manner < 4)
            .and_then(|(site, _)| simulate(&site, &self.machine(), &Run::new(self.hours, seed)).ok());
        match run {
            Some(run) => sample(&run, &sampling),
            None => self.straight_on(&sampling),
        }
    }

    /// No machine could be let loose: somebody walks on and on.
    fn straight_on(&self, sampling: &Sampling) -> Trace {
        let (frame, mut trace) = (Frame::at(ORIGIN), Trace::geographic(&*sampling.machine));
        let fixes = (3600.0 * self.hours / self.period_s).min(MOST_FIXES) as u32;
        for number in 0..fixes {
            let lapse_s = self.period_s * f64::from(number);
            let geo = frame.to_geo(Place::new(0.4 * lapse_s, 3.0 * math::sin(0.02 * lapse_s)));
            trace.push(Fix::bare(
                sampling.start_unix_s + lapse_s,
                geo.lat_deg,
                geo.lon_deg,
            ));
        }
        trace
    }
}

/// Takes plan and logs to another place on Earth.
fn carry_to<'a>(at_deg: (f64, f64), plan: &mut Plan, traces: impl Iterator<Item = &'a mut Trace>) {
    if at_deg == PLACES_DEG[0] {
        return;
    }
    let (from, to) = (
        Frame::at(ORIGIN),
        Frame::at(GeoPoint {
            lat_deg: at_deg.0,
            lon_deg: at_deg.1,
        }),
    );
    let carried = |point: GeoPoint| to.to_geo(from.to_place(point));
    plan.for_each_point(|point| *point = carried(*point));
    for trace in traces {
        each_place(trace, |_, pair| {
            let geo = carried(GeoPoint {
                lat_deg: pair.0,
                lon_deg: pair.1,
            });
            (geo.lat_deg, geo.lon_deg)
        });
    }
}

fn each_place(trace: &mut Trace, change: impl Fn(usize, (f64, f64)) -> (f64, f64)) {
    if let Positions::Geographic { lat_deg, lon_deg } = &mut trace.positions {
        for (index, (lat, lon)) in lat_deg.iter_mut().zip(lon_deg).enumerate() {
            (*lat, *lon) = change(index, (*lat, *lon));
        }
    }
}

/// The same in metres of its own.
fn in_metres(trace: &Trace) -> Trace {
    let mut local = Trace::local(&*trace.machine);
    let frame = (!trace.is_empty()).then(|| {
        let (lat_deg, lon_deg) = trace.positions.pair(0);
        Frame::at(GeoPoint { lat_deg, lon_deg })
    });
    for index in 0..trace.len() {
        let fix = trace.fix(index);
        let place = frame.map_or_else(Place::default, |frame| {
            frame.to_place(GeoPoint {
                lat_deg: fix.first,
                lon_deg: fix.second,
            })
        });
        local.push(Fix {
            first: place.east_m,
            second: place.north_m,
            ..fix
        });
    }
    local
}

/// Metres of a degree of latitude, roughly.
const DEGREE_M: f64 = 111_000.0;

impl PlanOddity {
    fn befall(self, plan: &mut Plan) {
        let frame = Frame::at(ORIGIN);
        let lawn = plan
            .features
            .iter_mut()
            .find_map(|feature| match &mut feature.shape {
                PlanShape::Polygons(polygons) if feature.role == PlanRole::Lawn => polygons.first_mut(),
                _ => None,
            });
        let outer: Vec<Place> = lawn
            .iter()
            .flat_map(|polygon| polygon.rings.first())
            .flatten()
            .map(|point| frame.to_place(*point))
            .collect();
        // The first corner stands twice.
        let corners = outer.len().saturating_sub(1).max(1);
        let sum = outer.iter().take(corners).fold((0.0, 0.0), |sum, place| {
            (sum.0 + place.east_m, sum.1 + place.north_m)
        });
        let middle = Place::new(sum.0 / corners as f64, sum.1 / corners as f64);
        let toward = |place: Place, share: f64| {
            frame.to_geo(Place::new(
                middle.east_m + share * (place.east_m - middle.east_m),
                middle.north_m + share * (place.north_m - middle.north_m),
            ))
        };
        let sized = |share: f64| GeoPolygon {
            rings: vec![outer.iter().map(|place| toward(*place, share)).collect()],
        };
        let ring = lawn.and_then(|polygon| {
            if let Self::Island(share) = self {
                polygon.rings.extend(sized(share).rings);
            }
            polygon.rings.first_mut()
        });
        let mut added: Vec<(PlanRole, PlanShape, Option<f64>)> = Vec::new();
        match (self, ring) {
            (Self::Slit(width_m), Some(ring)) if ring.len() > 2 => {
                let side = Place::new(outer[0].east_m + width_m, outer[0].north_m);
                ring.splice(1..1, [toward(outer[0], 0.1), frame.to_geo(side)]);
            }
            (Self::Collinear, Some(ring)) => ring.iter_mut().for_each(|point| point.lat_deg = ORIGIN.lat_deg),
            (Self::Crossed, Some(ring)) if ring.len() > 4 => ring.swap(1, 2),
            (Self::Finer(parts), Some(ring)) => {
                *ring = outer
                    .windows(2)
                    .flat_map(|pair| {
                        (0..parts).map(move |part| {
                            let share = f64::from(part) / f64::from(parts);
                            frame.to_geo(Place::new(
                                pair[0].east_m + share * (pair[1].east_m - pair[0].east_m),
                                pair[0].north_m + share * (pair[1].north_m - pair[0].north_m),
                            ))
                        })
                    })
                    .collect();
                ring.extend(ring.first().copied());
            }
            _ => {}
        }
        match self {
            Self::Without(role) => plan.features.retain(|feature| feature.role != role),
            Self::Twice(role) => {
                let again: Vec<PlanFeature> = plan.of_role(role).cloned().collect();
                plan.features.extend(again);
            }
            Self::Scaled(times) => {
                plan.for_each_point(|point| *point = toward(frame.to_place(*point), times))
            }
            Self::Moved(by_m) => plan.for_each_point(|point| point.lat_deg += by_m / DEGREE_M),
            Self::Copies(copies, apart_m) => {
                for copy in 1..=copies {
                    let mut other = Plan {
                        features: plan.of_role(PlanRole::Lawn).take(1).cloned().collect(),
                    };
                    other.for_each_point(|point| point.lat_deg += f64::from(copy) * apart_m / DEGREE_M);
                    plan.features.extend(other.features);
                }
            }
            Self::Obstacle(radius_m) => added.push((
                PlanRole::Obstacle,
                PlanShape::Point(frame.to_geo(middle)),
                Some(radius_m),
            )),
            Self::Zone(share) => {
                added.push((PlanRole::Exclusion, PlanShape::Polygons(vec![sized(share)]), None));
            }
            Self::Boundary(share) => {
                added.push((PlanRole::Boundary, PlanShape::Polygons(vec![sized(share)]), None));
            }
            Self::StationAt(east_m) => {
                plan.features.retain(|feature| feature.role != PlanRole::Station);
                let place = Place::new(middle.east_m + east_m, middle.north_m);
                added.push((PlanRole::Station, PlanShape::Point(frame.to_geo(place)), None));
            }
            Self::StandingGuide(times) => added.push((
                PlanRole::Guide,
                PlanShape::Line(vec![frame.to_geo(middle); usize::from(times)]),
                None,
            )),
            _ => {}
        }
        for (role, shape, radius_m) in added {
            let index = plan.features.len();
            plan.features.push(PlanFeature {
                radius_m,
                ..PlanFeature::new(role, format!("odd {index}"), index, shape)
            });
        }
    }
}

impl LogOddity {
    fn befall(self, trace: &mut Trace) {
        let count = trace.len();
        if count == 0 {
            return;
        }
        let (half, first) = (count / 2, trace.positions.pair(0));
        let keep = |trace: &Trace, is_kept: &dyn Fn(usize) -> bool| {
            let mut left = Trace::geographic(&*trace.machine);
            (0..count)
                .filter(|index| is_kept(*index))
                .for_each(|index| left.push(trace.fix(index)));
            left
        };
        let part = |index: usize| index as f64 / count as f64;
        let north = |(lat, lon): (f64, f64), by_m: f64| (lat + by_m / DEGREE_M, lon);
        match self {
            Self::Gap(from, to) => *trace = keep(trace, &|index| !(from..to).contains(&part(index))),
            Self::Thinned(every) => *trace = keep(trace, &|index| index * 7 % every == index % 3),
            Self::Only(fixes) => *trace = keep(trace, &|index| index < fixes),
            Self::Step(by_m) => each_place(trace, |index, at| {
                north(at, if index > half { by_m } else { 0.0 })
            }),
            Self::StepAndBack(by_m) => each_place(trace, |index, at| {
                north(
                    at,
                    if (0.5..0.6).contains(&part(index)) {
                        by_m
                    } else {
                        0.0
                    },
                )
            }),
            Self::Jumps(every, by_m) => each_place(trace, |index, at| {
                let (lat, lon) = north(at, if index % every == every - 1 { by_m } else { 0.0 });
                (lat.clamp(-90.0, 90.0), lon)
            }),
            Self::Constant => each_place(trace, |_, _| first),
            Self::Repeated(times) => {
                let places: Vec<_> = (0..count).map(|index| trace.positions.pair(index)).collect();
                each_place(trace, |index, _| places[index / times * times]);
            }
            Self::Carried(speed_mps) => {
                let (since_s, from) = (trace.time_s[half], trace.positions.pair(half));
                let times_s = trace.time_s.clone();
                each_place(trace, |index, at| match index.checked_sub(half) {
                    Some(_) => north(from, speed_mps * (times_s[index] - since_s)),
                    None => at,
                });
            }
            Self::Digits(digits) => {
                let steps = 10_f64.powi(digits);
                each_place(trace, |_, (lat, lon)| {
                    ((lat * steps).round() / steps, (lon * steps).round() / steps)
                });
            }
            Self::Blown(times) => each_place(trace, |_, (lat, lon)| {
                let blown =
                    |value: f64, from: f64, most: f64| (from + times * (value - from)).clamp(-most, most);
                (blown(lat, first.0, 89.9), blown(lon, first.1, 179.9))
            }),
            Self::Clock(by_s) => trace.time_s[half..].iter_mut().for_each(|time_s| *time_s += by_s),
            Self::Year(start_s) => {
                let since_s = trace.time_s[0];
                trace
                    .time_s
                    .iter_mut()
                    .for_each(|time_s| *time_s += start_s - since_s);
            }
            Self::Frozen => {
                let since_s = trace.time_s[0];
                trace.time_s.fill(since_s);
            }
            Self::Backwards => trace.time_s.reverse(),
            Self::Faster(times) => {
                let since_s = trace.time_s[0];
                let sooner = |time_s: &mut f64| *time_s = since_s + (*time_s - since_s) / times;
                trace.time_s.iter_mut().for_each(sooner);
            }
            Self::Quality(quality) => trace.quality.fill(quality),
            Self::Hdop(hdop) => trace.hdop.fill(hdop),
            Self::Segments(parts) => {
                let most = parts as u32;
                (0..count).for_each(|index| trace.segment[index] = (part(index) * f64::from(most)) as u32);
            }
            Self::CutOff(_) => {}
        }
    }
}
