//! Can the machine get everywhere, and how many hours will it take? Asked about a plan, before anyone digs.
//!
//! Passages, ground out of reach and corners come from the plan alone ([`tussock_diagnose::clearance`],
//! [`tussock_diagnose::passages`]); the share of path that a part behind a passage gets comes from a two-state chain along
//! the path. How the lawn fills up over days comes from seeded runs of a roaming machine on the plan ([`tussock_simulate`]):
//! the median, and the range that holds nine in ten runs. Weak places, their causes and their remedies come from the median
//! run, which is analysed like a log without errors. Exact for a machine that drives as simulated; a real one differs, so
//! treat the days as a guess to within about a third. Cost: 16 runs of ten days at most; the typical run costs one more
//! analysis with suggestions.

use crate::{Job, analyse};
use rayon::prelude::*;
use tussock_coverage::{swath, visits};
use tussock_diagnose::clearance::{Clearance, Reach};
use tussock_diagnose::passages::{self, Neck};
use tussock_locate::turns::Setback;
use tussock_plane::{BitGrid, Site, rasterise};
use tussock_simulate::{LogNoise, Machine, Run, Sampling, TrueRun, Yard, sample};
use tussock_types::math;
use tussock_types::{
    Estimate, Findings, ForecastDays, OutOfReach, OutOfReachWhy, Passage, Plan, PlanForecast,
    PromiseSettings, Settings,
};

/// Working hours if the settings give none: a working day (common practice, no source).
const USUAL_HOURS: f64 = 10.0;
/// The driven fraction of a working hour, without charging and turning (about what simulated outings give).
const DRIVING_SHARE: f64 = 0.5;
/// Path of an outing that lasts an hour.
const OUTING_S: f64 = 3600.0;
const RUNS: u64 = 16;
/// The cell for painting: fine enough for a promise.
const CELL_M: f64 = 0.06;
const LEAST_PART_M2: f64 = 0.5;

/// Look ahead at least this many days.
const LEAST_DAYS: f64 = 7.0;
/// A part counts as done when this fraction of it is driven over.
const DONE_FRACTION: f64 = 0.9;
/// Time between fixes of the typical run.
const TYPICAL_PERIOD_S: f64 = 2.0;

/// Whether a typical run is analysed too.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum TypicalRun {
    /// Weak places, and what would mend them.
    Analysed,
    /// Hours and passages only.
    LeftOut,
}

/// Makes the forecast; `None` for a plan that is not sound.
pub fn plan_forecast(
    plan: &Plan,
    settings: &Settings,
    typical: TypicalRun,
    seed: u64,
) -> Option<PlanForecast> {
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
    let (out_of_reach, edges_m2) = match machine.cut_width_m {
        Some(_) => unreached(&site, &clearance, &reach),
        None => (Vec::new(), 0.0),
    };
    let ahead = PlannedDrive::of(&site, settings, setback_m, working_h_per_day, seed);
    let behind: Vec<BitGrid> = match &ahead {
        // Where the disc never gets to, the grass stays long, however often the machine comes.
        Some(ahead) => necks
            .iter()
            .map(|neck| ahead.part(&clearance, |cell| neck.behind[cell] && reach.reached[cell]))
            .collect(),
        None => Vec::new(),
    };
    let filled = ahead.as_ref().and_then(|ahead| ahead.filled(&behind));
    let days = ahead
        .as_ref()
        .zip(filled.as_ref())
        .map(|(ahead, filled)| ahead.days(filled));
    let edge_m = site.boundary.as_ref().unwrap_or(&site.drawn_lawn).perimeter_m();
    let zones_m: f64 = site.exclusions.iter().map(|zone| zone.shape.perimeter_m()).sum();
    Some(PlanForecast {
        lawn_m2: site.lawn.area_m2(),
        setback_m,
        speed_mps,
        passage_share_fraction: necks
            .iter()
            .map(|neck| neck.share_expected_fraction(OUTING_S * DRIVING_SHARE * speed_mps, setback_m))
            .collect(),
        passage_done_fraction: match (&ahead, &filled) {
            (Some(ahead), Some(filled)) => (0..necks.len())
                .map(|part| ahead.done_fractions(filled, part))
                .collect(),
            _ => Vec::new(),
        },
        passages: (1..)
            .zip(&necks)
            .map(|(number, neck)| passage(&site, neck, number, setback_m, day_m))
            .collect(),
        out_of_reach,
        edges_m2,
        boundary_m: edge_m + zones_m,
        guides_m: site
            .guides
            .iter()
            .flat_map(|guide| guide.shape.windows(2))
            .map(|pair| pair[0].distance_m(pair[1]))
            .sum(),
        days,
        typical: match (typical, &ahead, &filled) {
            (TypicalRun::Analysed, Some(ahead), Some(filled)) => ahead.typical(plan, settings, filled, seed),
            _ => None,
        },
    })
}

fn passage(site: &Site, neck: &Neck, number: usize, setback_m: f64, day_m: f64) -> Passage {
    let geo = site.frame.to_geo(neck.middle);
    Passage {
        id: format!("P{number}"),
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
}

/// Parts that are cut off, and the area of strips along edges.
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

/// A machine on the plan, with the number of days to look ahead.
struct PlannedDrive<'a> {
    site: &'a Site,
    yard: Yard,
    machine: Machine,
    lawn: BitGrid,
    cut_width_m: f64,
    promise: &'a PromiseSettings,
    working_h_per_day: f64,
    /// Working hours of a run.
    all_h: f64,
    seed: u64,
}

/// How a run fills the lawn and the parts behind passages: fractions after each hour, starting from none.
struct Filling {
    lawn: Vec<f64>,
    parts: Vec<Vec<f64>>,
}

/// Between the whole hours.
fn at_hour(curve: &[f64], hours: f64) -> f64 {
    let last = curve.len().saturating_sub(1);
    let step = (hours.max(0.0).floor() as usize).min(last);
    let next = (step + 1).min(last);
    curve[step] + (hours.min(last as f64) - step as f64) * (curve[next] - curve[step])
}

impl<'a> PlannedDrive<'a> {
    /// `None` without a cutting width, or if the machine has no room.
    fn of(
        site: &'a Site,
        settings: &'a Settings,
        setback_m: f64,
        working_h_per_day: f64,
        seed: u64,
    ) -> Option<Self> {
        let cut_width_m = settings.machine.cut_width_m?;
        let usual = Machine::default();
        let machine = Machine {
            speed_mps: settings.machine.speed_mps.unwrap_or(usual.speed_mps),
            past_boundary_m: -setback_m,
            turning_radius_m: settings.machine.turning_radius_m,
            ..usual
        };
        let (low, high) = site.lawn.bounds()?;
        let cells = settings.limits.cells.min(2_000_000);
        let days = settings.promise.days.ceil().clamp(LEAST_DAYS, 30.0);
        Some(Self {
            site,
            yard: Yard::new(site, -setback_m).ok()?,
            machine,
            lawn: rasterise(&site.lawn, &visits::grid_over(low, high, CELL_M, cells)),
            cut_width_m,
            promise: &settings.promise,
            working_h_per_day,
            all_h: (24.0 * days).min(240.0),
            seed,
        })
    }

    /// The lawn in some of the ground's cells.
    fn part(&self, clearance: &Clearance, is_in: impl Fn(usize) -> bool) -> BitGrid {
        let mut part = BitGrid::new(self.lawn.grid);
        for (column, row) in self.lawn.cells_on() {
            let cell = clearance.cell(self.lawn.grid.centre(column, row));
            if cell.is_some_and(&is_in) {
                part.set(column, row);
            }
        }
        part
    }

    fn run(&self, number: u64, hours: f64) -> Option<TrueRun> {
        let run = Run::new(hours, self.seed.wrapping_mul(1000).wrapping_add(number));
        self.yard.drive(&self.machine, &run).ok()
    }

    /// All runs; `None` if one of them has no room.
    fn filled(&self, parts: &[BitGrid]) -> Option<Vec<Filling>> {
        let masks: Vec<&BitGrid> = std::iter::once(&self.lawn).chain(parts).collect();
        let filling = |number: u64| {
            let run = self.run(number, self.all_h)?;
            let mut painted = BitGrid::new(self.lawn.grid);
            let mut curves = vec![vec![0.0]; masks.len()];
            let mut pieces = run.pieces().peekable();
            for hour in 1..=self.all_h as usize {
                let until_s = 3600.0 * hour as f64;
                let mine = std::iter::from_fn(|| pieces.next_if(|(_, to)| to.time_s <= until_s));
                let legs = mine.map(|(from, to)| (from.place, to.place));
                swath::mark(&mut painted, legs, 0.5 * self.cut_width_m);
                for (mask, curve) in masks.iter().zip(&mut curves) {
                    let mut done = painted.clone();
                    done.and_in_place(mask);
                    curve.push(done.count() as f64 / (mask.count() as f64).max(1.0));
                }
            }
            let mut curves = curves.into_iter();
            Some(Filling {
                lawn: curves.next().unwrap_or_default(),
                parts: curves.collect(),
            })
        };
        (0..RUNS).into_par_iter().map(filling).collect()
    }

    /// Working hours until the end of each day.
    fn day_ends_h(&self) -> impl Iterator<Item = f64> + '_ {
        let days = self.promise.days.ceil().clamp(LEAST_DAYS, 30.0) as usize;
        (1..=days).map(|day| self.working_h_per_day * day as f64)
    }

    fn days(&self, filled: &[Filling]) -> ForecastDays {
        let at = |hours: f64| {
            let mut values: Vec<f64> = filled.iter().map(|run| at_hour(&run.lawn, hours)).collect();
            values.sort_by(f64::total_cmp);
            let quantile = |fraction: f64| math::quantile(&values, fraction).unwrap_or(0.0);
            Estimate {
                estimate: quantile(0.5),
                low: Some(quantile(0.05)),
                high: Some(quantile(0.95)),
            }
        };
        let needed_h = (1..=self.all_h as usize)
            .find(|hours| at(*hours as f64).estimate >= self.promise.visited_fraction)
            .map(|hours| hours as f64);
        ForecastDays {
            working_h_per_day: self.working_h_per_day,
            visited_fraction: self.day_ends_h().map(at).collect(),
            needed_h_per_day: needed_h
                .map(|hours| hours / self.promise.days.max(1e-9))
                .filter(|hours| *hours <= 24.0),
            runs: filled.len() as u64,
        }
    }

    /// The fraction of runs in which a part is done after each day.
    fn done_fractions(&self, filled: &[Filling], part: usize) -> Vec<f64> {
        let done = |hours: f64| {
            let runs = filled
                .iter()
                .filter(|run| at_hour(&run.parts[part], hours) >= DONE_FRACTION);
            runs.count() as f64 / filled.len().max(1) as f64
        };
        self.day_ends_h().map(done).collect()
    }

    /// The run that is nearest to the median when the promise ends, analysed as a log without errors.
    fn typical(
        &self,
        plan: &Plan,
        settings: &Settings,
        filled: &[Filling],
        seed: u64,
    ) -> Option<Box<Findings>> {
        let hours = (self.working_h_per_day * self.promise.days).clamp(1.0, self.all_h);
        let mut ends: Vec<f64> = filled.iter().map(|run| at_hour(&run.lawn, hours)).collect();
        let off = |number: &usize, middle: f64| (at_hour(&filled[*number].lawn, hours) - middle).abs();
        let middle = math::median(&mut ends)?;
        let number =
            (0..filled.len()).min_by(|one, other| off(one, middle).total_cmp(&off(other, middle)))?;
        let run = self.run(number as u64, hours)?;
        let how = Sampling::geographic(TYPICAL_PERIOD_S, LogNoise::NONE, seed, self.site.frame);
        let trace = sample(&run, &how);
        let job = Job::new(std::slice::from_ref(&trace), settings)
            .on(plan)
            .with_seed(seed);
        analyse(&job).ok().map(Box::new)
    }
}
