//! Can the machine get everywhere, and how many hours will that take? Asked of a plan, before anyone digs.
//!
//! Passages, ground out of reach and corners come from the plan's own room ([`tussock_diagnose::clearance`],
//! [`tussock_diagnose::passages`]); the share of path that a part behind a passage gets, from a two-state chain along the path.
//! How the lawn fills up over days comes from seeded runs of a roaming machine on the plan ([`tussock_simulate`]): median and the
//! range of nine in ten runs. Exact for a machine that drives as simulated; a real one differs, so that days are a guess to
//! about a third.

use rayon::prelude::*;
use tussock_coverage::{swath, visits};
use tussock_diagnose::clearance::{Clearance, Reach};
use tussock_diagnose::passages;
use tussock_locate::turns::Setback;
use tussock_plane::{BitGrid, Site, rasterise};
use tussock_simulate::{Machine, Run, Yard};
use tussock_types::math;
use tussock_types::{Estimate, OutOfReach, OutOfReachWhy, Passage, Plan, Settings};

/// What a plan promises.
#[derive(Clone, Debug, PartialEq)]
pub struct PlanForecast {
    /// Distance inside the edge at which the machine's middle is taken to turn.
    pub setback_m: f64,
    /// Narrow connections, narrowest first; crossings are those of a day's driving.
    pub passages: Vec<Passage>,
    /// Share of path behind each passage over its fair share, in the same order, for outings of an hour.
    pub passage_share_fraction: Vec<f64>,
    /// Parts that the cutting disc cannot get to, largest first.
    pub out_of_reach: Vec<OutOfReach>,
    /// Strips along edges and corners that the disc leaves, all together.
    pub edges_m2: f64,
    /// What working days bring; `None` without a cutting width, or where no machine has room.
    pub days: Option<Days>,
}

/// How the lawn fills up.
#[derive(Clone, Debug, PartialEq)]
pub struct Days {
    /// Working hours a day, charging included.
    pub working_h_per_day: f64,
    /// Visited fraction after each day: median of the runs and the range of nine in ten.
    pub visited_fraction: Vec<Estimate>,
    /// Working hours a day that the promise needs; `None` where 24 do not do.
    pub needed_h_per_day: Option<f64>,
    /// Runs behind it.
    pub runs: usize,
}

/// Working hours where the settings do not say: a working day (common practice, no source).
const USUAL_HOURS: f64 = 10.0;
/// Driving is so much of a working hour, charging and turning taken off (about what simulated outings give).
const DRIVING_SHARE: f64 = 0.5;
/// Path of an outing of an hour.
const OUTING_S: f64 = 3600.0;
const RUNS: u64 = 16;
/// The painted cell: coarse enough for a promise.
const CELL_M: f64 = 0.06;
const LEAST_PART_M2: f64 = 0.5;

/// Looks ahead; `None` for a plan that is not sound.
pub fn plan_forecast(plan: &Plan, settings: &Settings, seed: u64) -> Option<PlanForecast> {
    let (site, _) = Site::build(plan).ok()?;
    let region = site.drivable()?;
    let machine = &settings.machine;
    let setback_m = Setback::expected(machine).inside_m;
    let clearance = Clearance::of(&region);
    let home = site.station.and_then(|station| clearance.nearest_cell(station));
    let starts: Vec<usize> = site
        .guides
        .iter()
        .flat_map(|guide| &guide.shape)
        .filter_map(|place| clearance.nearest_cell(*place))
        .chain(home.or_else(|| clearance.roomiest(0..clearance.clear_m.len())))
        .collect();
    let half_m = 0.5 * machine.cut_width_m.unwrap_or(0.0) + machine.cutter_forward_m.abs();
    let reach = Reach::of(&clearance, &starts, setback_m, half_m);
    let speed_mps = machine.speed_mps.unwrap_or_else(|| Machine::default().speed_mps);
    let working_h_per_day =
        tussock_diagnose::installation::allowed_h_per_day(settings).unwrap_or(USUAL_HOURS);
    let day_m = working_h_per_day * DRIVING_SHARE * 3600.0 * speed_mps;
    let necks = passages::necks(&clearance, &region, home);
    let passages = necks
        .iter()
        .enumerate()
        .map(|(number, neck)| {
            let geo = site.frame.to_geo(neck.middle);
            Passage {
                id: format!("P{}", number + 1),
                across: neck.across,
                lat: Some(geo.lat_deg),
                lon: Some(geo.lon_deg),
                width_m: neck.width_m,
                free_width_m: neck.free_m(setback_m),
                length_m: neck.length_m,
                behind_m2: neck.behind_m2,
                crossings: None,
                crossings_expected: Some(neck.crossings_expected(day_m, setback_m)),
                crossings_per_day: None,
                share_ratio: None,
            }
        })
        .collect();
    let passage_share_fraction = necks
        .iter()
        .map(|neck| neck.share_expected_fraction(OUTING_S * DRIVING_SHARE * speed_mps, setback_m))
        .collect();
    let (out_of_reach, edges_m2) = if machine.cut_width_m.is_some() {
        unreached(&site, &clearance, &reach)
    } else {
        (Vec::new(), 0.0)
    };
    Some(PlanForecast {
        setback_m,
        passages,
        passage_share_fraction,
        out_of_reach,
        edges_m2,
        days: machine
            .cut_width_m
            .and_then(|cut_width_m| days(&site, settings, cut_width_m, setback_m, working_h_per_day, seed)),
    })
}

/// Parts cut off, and the area of strips along edges.
fn unreached(site: &Site, clearance: &Clearance, reach: &Reach) -> (Vec<OutOfReach>, f64) {
    let lawn = rasterise(&site.lawn, &clearance.grid);
    let (mut parts, edges): (Vec<OutOfReach>, Vec<OutOfReach>) = reach
        .left_out(clearance, |place| {
            lawn.grid
                .cell_at(place)
                .is_some_and(|(column, row)| lawn.get(column, row))
        })
        .into_iter()
        .partition(|part| part.why == OutOfReachWhy::CutOff);
    parts.retain(|part| part.area_m2 >= LEAST_PART_M2);
    (parts, edges.iter().map(|part| part.area_m2).sum())
}

fn days(
    site: &Site,
    settings: &Settings,
    cut_width_m: f64,
    setback_m: f64,
    working_h_per_day: f64,
    seed: u64,
) -> Option<Days> {
    let machine = Machine {
        speed_mps: settings
            .machine
            .speed_mps
            .unwrap_or_else(|| Machine::default().speed_mps),
        past_boundary_m: -setback_m,
        ..Machine::default()
    };
    let yard = Yard::new(site, -setback_m).ok()?;
    let (low, high) = site.lawn.bounds()?;
    let lawn = rasterise(
        &site.lawn,
        &visits::grid_over(low, high, CELL_M, settings.limits.cells.min(2_000_000)),
    );
    let cells = (lawn.count() as f64).max(1.0);
    let days = settings.promise.days.ceil().clamp(1.0, 30.0);
    let all_h = (24.0 * days).min(240.0);
    // Steps of an hour: the curve of working hours against visited fraction.
    let curves: Vec<Vec<f64>> = (0..RUNS)
        .into_par_iter()
        .map(|number| {
            let run = Run::new(all_h, seed.wrapping_mul(1000).wrapping_add(number));
            let Ok(run) = yard.drive(&machine, &run) else {
                return Vec::new();
            };
            let mut mask = BitGrid::new(lawn.grid);
            let mut curve = vec![0.0];
            let mut pieces = run.pieces().peekable();
            for hour in 1..=all_h as usize {
                let until_s = 3600.0 * hour as f64;
                let mine = std::iter::from_fn(|| pieces.next_if(|(_, to)| to.time_s <= until_s));
                swath::mark(
                    &mut mask,
                    mine.map(|(from, to)| (from.place, to.place)),
                    0.5 * cut_width_m,
                );
                let mut on_lawn = mask.clone();
                on_lawn.and_in_place(&lawn);
                curve.push(on_lawn.count() as f64 / cells);
            }
            curve
        })
        .collect();
    if curves.iter().any(Vec::is_empty) {
        return None;
    }
    let at = |hours: f64| {
        let hours = hours.min(all_h);
        let step = (hours.floor() as usize).min(all_h as usize - 1);
        let mut values: Vec<f64> = curves
            .iter()
            .map(|curve| curve[step] + (hours - step as f64) * (curve[step + 1] - curve[step]))
            .collect();
        values.sort_by(f64::total_cmp);
        let quantile = |fraction: f64| math::quantile(&values, fraction).unwrap_or(0.0);
        Estimate {
            estimate: quantile(0.5),
            low: Some(quantile(0.05)),
            high: Some(quantile(0.95)),
        }
    };
    let needed_h = (1..=all_h as usize)
        .find(|hours| at(*hours as f64).estimate >= settings.promise.visited_fraction)
        .map(|hours| hours as f64);
    Some(Days {
        working_h_per_day,
        visited_fraction: (1..=days as usize)
            .map(|day| at(working_h_per_day * day as f64))
            .collect(),
        needed_h_per_day: needed_h
            .map(|hours| hours / settings.promise.days.max(1e-9))
            .filter(|hours| *hours <= 24.0),
        runs: curves.len(),
    })
}
