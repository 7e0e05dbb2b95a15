//! The plain part of the job alone, for timing beside scripts that do just that: read, find the path, count on cells of
//! 5 cm, pockets, an index of legs with the nearest leg of each pocket, stuck spots.
//!
//! `count LOG PLAN` prints one line. Used by `tests/bench/beside.py`.
#![allow(clippy::print_stdout)]

use rayon::prelude::*;
use std::error::Error;
use std::fs::File;
use tussock::{coverage, diagnose, locate, plane, types};
use tussock_ingest::{ReadOptions, assemble, read_log, read_plan};

const CUT_WIDTH_M: f64 = 0.22;
const CELL_M: f64 = 0.05;
const AWAY_S: f64 = 30.0;
const LEAST_POCKET_M: f64 = 0.2;
const LEAST_POCKET_M2: f64 = 0.01;
const STUCK_AFTER_S: f64 = 60.0;

fn main() -> Result<(), Box<dyn Error>> {
    let mut arguments = std::env::args().skip(1);
    let (Some(log), Some(plan), None) = (arguments.next(), arguments.next(), arguments.next()) else {
        return Err("expected a log and a plan".into());
    };
    let settings = types::Settings::default();
    let read = assemble(vec![read_log(&log, File::open(&log)?, &ReadOptions::default())?])?;
    let plan = read_plan(&plan, &std::fs::read(&plan)?, &settings.limits)?.plan;
    let (site, _) = plane::Site::build(&plan).map_err(|_| "expected a plan without faults")?;
    let trace = read.traces.first().ok_or("expected a trace")?;
    let types::Positions::Geographic { lat_deg, lon_deg } = &trace.positions else {
        return Err("expected positions on Earth".into());
    };
    let (east_m, north_m) = site.frame.places(lat_deg, lon_deg);
    let track = locate::locate(
        trace,
        &east_m,
        &north_m,
        locate::Surroundings::of(&settings)
            .on(Some(&site.lawn))
            .with_station(site.station),
    );
    let span_s = track.span_s.ok_or("expected a drive")?;
    let (low, high) = site.lawn.bounds().ok_or("expected a lawn")?;
    let grid = coverage::visits::grid_over(low, high, CELL_M, settings.limits.cells);
    let lawn = plane::rasterise(&site.lawn, &grid);
    let legs: Vec<plane::Leg> = track.straight_legs().collect();
    let tracks = [track];
    let sweeps = coverage::swath::sweeps(&tracks, &settings);
    let count = coverage::visits::count(lawn, &sweeps, CUT_WIDTH_M, AWAY_S, span_s);
    let mut unvisited = count.lawn.clone();
    unvisited.and_not_in_place(&count.visited);
    let pockets = coverage::pockets::pockets(&unvisited, LEAST_POCKET_M, LEAST_POCKET_M2);
    let index = plane::LegIndex::build(legs);
    let nearest = pockets
        .par_iter()
        .filter_map(|pocket| index.nearest(pocket.place))
        .count();
    let stuck = diagnose::stuck::stuck_spots(&tracks, &index, STUCK_AFTER_S);
    println!(
        "{} fixes, {:.4} of the lawn visited, {} pockets ({nearest} with a leg near), {} stuck spots",
        trace.len(),
        count.visited_fraction(),
        pockets.len(),
        stuck.len()
    );
    Ok(())
}
