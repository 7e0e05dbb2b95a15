//! Repeats one stage of a night a given number of times, for counting instructions: `stages NAME TIMES`.
//!
//! The night is that of the benches: 28,800 fixes on 1,400 m2, made from named seeds. The cost of the preparation does not
//! depend on TIMES, so two runs with one and two repetitions give the cost of the stage. Used by `tests/bench/counts.py`.
#![allow(clippy::print_stdout)]

use std::error::Error;
use std::hint::black_box;
use tussock::coverage::{pockets, swath, visits};
use tussock::locate::{Surroundings, Track, locate};
use tussock::plane::{BitGrid, Leg, LegIndex, Site, rasterise};
use tussock::simulate::gardens::{GardenKind, Wish, invent_as};
use tussock::simulate::{LogNoise, Machine, Run, Sampling, gpx_bytes, nmea_bytes, sample, simulate};
use tussock::types::{Plan, Positions, Settings};
use tussock::{Advice, Job, analyse};
use tussock_ingest::{Assembled, ReadOptions, assemble, read_log};

const CUT_WIDTH_M: f64 = 0.22;
const AWAY_S: f64 = 30.0;
const LEAST_POCKET_M: f64 = 0.2;
const LEAST_POCKET_M2: f64 = 0.01;
const GARDEN_SEED: u64 = 7;
const RUN_SEED: u64 = 11;
const NOISE_SEED: u64 = 13;

struct Night {
    gpx: Vec<u8>,
    nmea: Vec<u8>,
    plan: Plan,
    site: Site,
    settings: Settings,
    lawn: BitGrid,
}

fn night() -> Result<Night, Box<dyn Error>> {
    let wish = Wish {
        area_m2: (1380.0, 1420.0),
        ..Wish::new(GardenKind::Islands)
    };
    let plan = invent_as(&wish, GARDEN_SEED).plan;
    let (site, _) = Site::build(&plan).map_err(|_| "expected a plan without faults")?;
    let run = simulate(&site, &Machine::default(), &Run::new(8.0, RUN_SEED))?;
    let trace = sample(
        &run,
        &Sampling::geographic(1.0, LogNoise::CENTIMETRES, NOISE_SEED, site.frame),
    );
    let mut settings = Settings::default();
    settings.machine.cut_width_m = Some(CUT_WIDTH_M);
    let (low, high) = site.lawn.bounds().ok_or("expected a lawn")?;
    let cell_m = visits::cell_for_width_m(CUT_WIDTH_M);
    let grid = visits::grid_over(low, high, cell_m, settings.limits.cells);
    Ok(Night {
        gpx: gpx_bytes(&trace),
        nmea: nmea_bytes(&trace),
        lawn: rasterise(&site.lawn, &grid),
        plan,
        site,
        settings,
    })
}

fn read(name: &str, bytes: &[u8]) -> Result<Assembled, Box<dyn Error>> {
    Ok(assemble(vec![read_log(name, bytes, &ReadOptions::default())?])?)
}

fn located(night: &Night, read: &Assembled) -> Result<Track, Box<dyn Error>> {
    let trace = read.traces.first().ok_or("expected a trace")?;
    let Positions::Geographic { lat_deg, lon_deg } = &trace.positions else {
        return Err("expected positions on Earth".into());
    };
    let (east_m, north_m) = night.site.frame.places(lat_deg, lon_deg);
    Ok(locate(
        trace,
        &east_m,
        &north_m,
        Surroundings::of(&night.settings)
            .on(Some(&night.site.lawn))
            .with_station(night.site.station),
    ))
}

fn counted(night: &Night, track: &Track) -> Result<visits::Count, Box<dyn Error>> {
    let span_s = track.span_s.ok_or("expected a drive")?;
    let sweeps = swath::sweeps(std::slice::from_ref(track), &night.settings);
    Ok(visits::count(
        night.lawn.clone(),
        &sweeps,
        CUT_WIDTH_M,
        AWAY_S,
        span_s,
    ))
}

fn main() -> Result<(), Box<dyn Error>> {
    let words: Vec<String> = std::env::args().skip(1).collect();
    let [stage, times] = &words[..] else {
        return Err("expected a stage and how many times".into());
    };
    let night = night()?;
    let from_gpx = read("night.gpx", &night.gpx)?;
    let track = located(&night, &from_gpx)?;
    let count = counted(&night, &track)?;
    let mut unvisited = count.lawn.clone();
    unvisited.and_not_in_place(&count.visited);
    let legs: Vec<Leg> = track.straight_legs().collect();
    for _ in 0..times.parse::<u32>()? {
        match &stage[..] {
            "read_gpx" => drop(black_box(read("night.gpx", black_box(&night.gpx))?)),
            "read_nmea" => drop(black_box(read("night.nmea", black_box(&night.nmea))?)),
            "locate" => drop(black_box(located(&night, black_box(&from_gpx))?)),
            "rasterise" => drop(black_box(rasterise(&night.site.lawn, &night.lawn.grid))),
            "count" => drop(black_box(counted(&night, black_box(&track))?)),
            "pockets" => drop(black_box(pockets::pockets(
                black_box(&unvisited),
                LEAST_POCKET_M,
                LEAST_POCKET_M2,
            ))),
            "legs" => drop(black_box(LegIndex::build(black_box(legs.clone())))),
            "everything" => drop(black_box(analyse(&Job {
                traces: &from_gpx.traces,
                inputs: &from_gpx.inputs,
                plan: Some(&night.plan),
                settings: &night.settings,
                seed: 1,
                advice: Advice::LeftOut,
                progress: None,
            })?)),
            _ => return Err(format!("{stage} is no stage").into()),
        }
    }
    println!("{stage}: {times} times");
    Ok(())
}
