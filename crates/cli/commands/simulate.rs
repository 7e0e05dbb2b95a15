//! `tussock simulate`: log an invented outing, with the truth beside it.

use crate::args::{EdgeRoundKind, LogKind, MotionArguments, PatternKind, SimulateArguments, SimulateCommand};
use crate::exit::{CommandFailure, Exit, failure};
use crate::inputs;
use crate::outputs::{NewFile, write_new};
use crate::printer::Printer;
use crate::{CommandResult, commands, units, wishes};
use serde_json::{Value, json};
use std::path::{Path, PathBuf};
use tussock::plane::{Frame, Site};
use tussock_simulate::{
    Counting, Doing, EdgeRound, Lanes, LogNoise, Machine, Manner, Pattern, Run, Sampling, Spell, StuckSpot,
    TrueRun, Truth, csv_bytes, gpx_bytes, nmea_bytes, sample, simulate, truth,
};
use tussock_types::{FixQuality, GeoPoint, Place, Settings, plural};

/// Cutting width if neither flag nor settings give one: in the middle of the range of such machines.
const USUAL_CUT_WIDTH_M: f64 = 0.22;
/// Truth is counted in cells of 2 cm: a hundredth of a lawn's edge strip, and fine enough for 0.1 points on 100 m2.
const TRUTH_CELL_M: f64 = 0.02;
/// Distance between lanes as a fraction of the cutting width, so that they overlap a little.
const LANE_SPACING: f64 = 0.9;
/// The error of the log is drawn from its own random stream.
const LOG_SEED_OFFSET: u64 = 1_000_003;

/// What is wanted, checked.
struct SimulateWish {
    period_s: f64,
    noise: LogNoise,
    start_unix_s: f64,
    stuck_at: Vec<GeoPoint>,
    cut_width_m: Option<f64>,
    /// How the machine moves; pattern, speed and setback are filled in from the settings.
    moving: Machine,
    pause_s: f64,
}

pub(crate) fn run(arguments: &SimulateArguments, printer: &Printer) -> CommandResult {
    if let Some(SimulateCommand::Gardens(many)) = &arguments.many {
        return super::gardens::run(many, printer);
    }
    let (Some(plan_path), Some(out)) = (&arguments.plan, &arguments.out) else {
        return Err(CommandFailure::told(
            "--plan and --out are missing, expected both",
        ));
    };
    let wish = SimulateWish {
        period_s: period_s(&arguments.period)?,
        noise: noise(&arguments.noise)?,
        start_unix_s: start_unix_s(&arguments.start)?,
        stuck_at: arguments
            .stuck
            .iter()
            .map(|typed| wishes::position("--stuck", typed))
            .collect::<Result<_, _>>()?,
        cut_width_m: wishes::cut_width_m(arguments.cut_width.as_deref())?,
        moving: moving(&arguments.motion)?,
        pause_s: asked(&arguments.motion.lane_pause, "--lane-pause", "3s", units::time_s)?,
    };
    let has_lanes = matches!(arguments.pattern, PatternKind::Lanes | PatternKind::Combined);
    if !has_lanes && (arguments.motion.headland_rounds > 0 || wish.pause_s > 0.0) {
        return Err(CommandFailure::told(
            "--headland-rounds and --lane-pause belong to lanes, expected --pattern lanes or combined",
        ));
    }
    if !(arguments.hours > 0.0 && arguments.hours <= 1000.0) {
        return Err(failure!(
            "--hours: {}, expected more than 0 and at most 1000",
            arguments.hours
        ));
    }
    let log_file = NewFile::probe(out)?;
    let truth_file = NewFile::probe(&beside(out, ".truth.json"))?;
    inputs::check_garden(Some(plan_path), arguments.settings.as_ref())?;
    let settings = inputs::settings(arguments.settings.as_deref())?;
    let plan = commands::sound_plan(plan_path, &settings)?;
    let recorded = arguments
        .error_from
        .as_deref()
        .map(|path| inputs::error_series(path, &settings.limits))
        .transpose()?;
    let (site, _) =
        Site::build(&plan).map_err(|faults| commands::plan_faults(&inputs::name(plan_path), &faults))?;

    let cut_width_m = wish
        .cut_width_m
        .or(settings.machine.cut_width_m)
        .unwrap_or(USUAL_CUT_WIDTH_M);
    let machine = machine(&settings, arguments, &wish, cut_width_m);
    let run = Run {
        stuck_spots: stuck_spots(&wish.stuck_at, &site.frame),
        ..Run::new(arguments.hours, arguments.seed)
    };
    let true_run = simulate(&site, &machine, &run)?;
    let usual = Sampling::geographic(
        wish.period_s,
        if recorded.is_some() {
            LogNoise::NONE
        } else {
            wish.noise
        },
        arguments.seed.wrapping_add(LOG_SEED_OFFSET),
        site.frame,
    );
    let sampling = Sampling {
        start_unix_s: wish.start_unix_s,
        // A recorded error holds all parts of the error, and says nothing about the receiver's own claims.
        quality: if recorded.is_some() {
            FixQuality::Unknown
        } else {
            usual.quality
        },
        antenna_forward_m: settings.machine.antenna_forward_m,
        antenna_left_m: settings.machine.antenna_left_m,
        recorded,
        ..usual
    };
    let trace = sample(&true_run, &sampling);
    let log = match arguments.format {
        LogKind::Gpx => gpx_bytes(&trace),
        LogKind::Nmea => nmea_bytes(&trace),
        LogKind::Csv => csv_bytes(&trace),
    };
    let counting = Counting {
        min_width_m: settings.pockets.min_width_m,
        min_area_m2: settings.pockets.min_area_m2,
        new_pass_after_s: settings.pockets.new_pass_after_s,
        cuts_in_transit: settings.machine.cuts_in_transit,
        ..Counting::new(cut_width_m, TRUTH_CELL_M)
    };
    let found = truth(&true_run, &site, &counting);
    let told_truth = format!(
        "{:#}\n",
        truth_json(&true_run, &found, &counting, &run, &site.frame)
    );
    write_new(&[(&log_file, &log), (&truth_file, told_truth.as_bytes())])?;
    printer.note(&format!(
        "{}: {}, {:.2} % of the lawn visited; truth in {}",
        log_file.path().display(),
        plural(trace.len(), "fix", "fixes"),
        found.visited_fraction * 100.0,
        truth_file.path().display()
    ));
    Ok(Exit::Done)
}

/// A number with its unit, 0 where none is given.
fn asked(
    typed: &Option<String>,
    flag: &str,
    example: &str,
    read: impl Fn(&str, &str, &str) -> Result<f64, CommandFailure>,
) -> Result<f64, CommandFailure> {
    typed
        .as_deref()
        .map_or(Ok(0.0), |typed| read(flag, typed, example))
}

/// What the options say of how it moves.
fn moving(motion: &MotionArguments) -> Result<Machine, CommandFailure> {
    let slip = motion.slip.as_deref();
    let length_m = |typed, flag, example| asked(typed, flag, example, units::length_m);
    let per_m = |typed, flag, example| asked(typed, flag, example, units::curvature_per_m);
    Ok(Machine {
        turning_radius_m: length_m(&motion.turning_radius, "--turning-radius", "0.4m")?,
        slowing_m: length_m(&motion.slowing, "--slowing", "0.6m")?,
        curvature_sd_per_m: per_m(&motion.curvature, "--curvature", "0.02/m")?,
        heading_walk_deg: asked(&motion.heading_walk, "--heading-walk", "3deg", units::angle_deg)?,
        slope_pull_per_m: per_m(&motion.slope_pull, "--slope-pull", "0.1/m")?,
        // A compass turns clockwise from north.
        downhill_deg: 90.0 - asked(&motion.downhill, "--downhill", "180deg", units::angle_deg)?,
        slip_fraction: slip.map_or(Ok(0.0), |typed| units::percent_as_fraction("--slip", typed))?,
        edge_round: match motion.edge_round {
            EdgeRoundKind::Never => EdgeRound::Never,
            EdgeRoundKind::Night => EdgeRound::EachNight,
            EdgeRoundKind::Outing => EdgeRound::EachOuting,
        },
        ..Machine::default()
    })
}

fn machine(
    settings: &Settings,
    arguments: &SimulateArguments,
    wish: &SimulateWish,
    cut_width_m: f64,
) -> Machine {
    let usual = &wish.moving;
    let lanes = Lanes {
        turn_each_round_deg: 90.0,
        headland_rounds: arguments.motion.headland_rounds,
        pause_s: wish.pause_s,
        ..Lanes::new(LANE_SPACING * cut_width_m, 0.0, 0.02)
    };
    Machine {
        speed_mps: settings.machine.speed_mps.unwrap_or(usual.speed_mps),
        past_boundary_m: settings.machine.past_boundary_m.unwrap_or(usual.past_boundary_m),
        turning_radius_m: match arguments.motion.turning_radius {
            Some(_) => usual.turning_radius_m,
            None if arguments.pattern == PatternKind::Roaming => settings.machine.turning_radius_m,
            None => 0.0,
        },
        pattern: match arguments.pattern {
            PatternKind::Roaming => Pattern::Roaming,
            PatternKind::Lanes => Pattern::Lanes(lanes),
            PatternKind::Spiral => Pattern::Spiral {
                pitch_m: lanes.spacing_m,
            },
            PatternKind::Combined => Pattern::Combined(lanes),
        },
        ..usual.clone()
    }
}

fn stuck_spots(places: &[GeoPoint], frame: &Frame) -> Vec<StuckSpot> {
    let spot = |point: &GeoPoint| StuckSpot {
        place: frame.to_place(*point),
        radius_m: 0.6,
        probability: 1.0 / 3.0,
        duration: Spell::Between {
            min_s: 120.0,
            max_s: 360.0,
        },
        manner: Manner::Wiggles,
    };
    places.iter().map(spot).collect()
}

fn truth_json(run: &TrueRun, truth: &Truth, counting: &Counting, wanted: &Run, frame: &Frame) -> Value {
    let at = |place: Place| {
        let point = frame.to_geo(place);
        json!({"lat": point.lat_deg, "lon": point.lon_deg, "east_m": place.east_m, "north_m": place.north_m})
    };
    let cell_m2 = truth.lawn.grid.cell_m2();
    let pockets: Vec<Value> = truth
        .pockets
        .iter()
        .map(|pocket| json!({"area_m2": pocket.area_m2, "widest_m": pocket.widest_m, "middle": at(pocket.middle)}))
        .collect();
    let spots: Vec<Value> = wanted
        .stuck_spots
        .iter()
        .enumerate()
        .map(|(number, spot)| {
            let caught = run.stuck.iter().filter(|episode| episode.spot == number);
            let lost_s: f64 = caught.clone().map(|episode| episode.end_s - episode.start_s).sum();
            json!({"place": at(spot.place), "radius_m": spot.radius_m, "episodes": caught.count(), "minutes": lost_s / 60.0})
        })
        .collect();
    json!({
        "tool_version": tussock::TOOL_VERSION,
        "seed": wanted.seed,
        "hours": wanted.hours,
        "cut_width_m": counting.cut_width_m,
        "cell_m": counting.cell_m,
        "lawn_m2": truth.lawn.count() as f64 * cell_m2,
        "visited_m2": truth.visited.count() as f64 * cell_m2,
        "visited_fraction": truth.visited_fraction,
        "pockets": pockets,
        "stuck_spots": spots,
        "outings": run.outings.len(),
        "driven_m": run.driven_m(),
        "driving_s": run.driving_s(),
        "at_station_s": run.time_s(Doing::AtStation),
    })
}

/// The name with another extension added.
fn beside(path: &Path, ending: &str) -> PathBuf {
    let mut name = path.as_os_str().to_owned();
    name.push(ending);
    PathBuf::from(name)
}

pub(super) fn period_s(typed: &str) -> Result<f64, CommandFailure> {
    let period_s = units::time_s("--period", typed, "1s")?;
    if (0.02..=3600.0).contains(&period_s) {
        return Ok(period_s);
    }
    Err(failure!(
        "--period: {typed:?} is {period_s} s, expected 20 ms to 1 h"
    ))
}

pub(super) fn start_unix_s(typed: &str) -> Result<f64, CommandFailure> {
    let start_s = units::moment_unix_s("--start", typed)?;
    // GPS time begins in 1980, and from 2080 on the two digits of NMEA 0183 mean 1980 again; the longest runs last a year
    // and a half.
    let year =
        time::OffsetDateTime::from_unix_timestamp(start_s as i64).map_or(0, time::OffsetDateTime::year);
    if !(1981..=2077).contains(&year) {
        return Err(failure!(
            "--start: {typed:?} is in the year {year}, expected one from 1981 to 2077, which every log can hold"
        ));
    }
    Ok(start_s)
}

fn noise(typed: &str) -> Result<LogNoise, CommandFailure> {
    let expected = "none, centimetre, decimetre, metre, or white=2cm,drift=30cm,drift-time=10min";
    let mut noise = match typed.trim() {
        "none" => return Ok(LogNoise::NONE),
        "centimetre" => return Ok(LogNoise::CENTIMETRES),
        "decimetre" => return Ok(LogNoise::DECIMETRES),
        "metre" => return Ok(LogNoise::METRES),
        _ => LogNoise::NONE,
    };
    for part in typed.split(',') {
        match part.split_once('=').map(|(key, value)| (key.trim(), value)) {
            Some(("white", value)) => noise.white_m = spread_m(value)?,
            Some(("drift", value)) => noise.drift_m = spread_m(value)?,
            Some(("drift-time", value)) => {
                noise.drift_time_s = units::time_s("--noise", value, "10min")?;
                if noise.drift_time_s <= 0.0 {
                    return Err(failure!("--noise: drift time {value:?}, expected more than 0 s"));
                }
            }
            _ => {
                return Err(failure!("--noise: {part:?} is not known, expected {expected}"));
            }
        }
    }
    Ok(noise)
}

fn spread_m(typed: &str) -> Result<f64, CommandFailure> {
    let spread_m = units::length_m("--noise", typed, "2cm")?;
    if (0.0..=100.0).contains(&spread_m) {
        return Ok(spread_m);
    }
    Err(failure!(
        "--noise: {typed:?} is {spread_m} m, expected 0 to 100 m"
    ))
}
