//! Invented gardens and outings with their truth, and what theory says.

use crate::door::{Class, Fault, work};
use crate::garden::{Plan, Settings, faulty};
use crate::trace::Trace;
use pyo3::prelude::*;
use serde::Deserialize;
use serde_json::json;
use tussock::plane::Site;
use tussock_simulate::gardens::{GardenKind, Wish, invent_as};
use tussock_simulate::{
    Counting, Doing, Lanes, LogNoise, Machine, Pattern, Run, Sampling, Spell, TurnLaw, laws, sample, truth,
};

/// The error of the log is drawn from a stream of its own, as in the command.
const LOG_SEED_OFFSET: u64 = 1_000_003;

#[derive(Clone, Copy, Deserialize)]
#[serde(rename_all = "snake_case")]
enum PatternName {
    Roaming,
    Lanes,
    Spiral,
    Combined,
}

#[derive(Clone, Copy, Deserialize)]
#[serde(rename_all = "snake_case")]
enum Law {
    UniformFromNormal,
    CosineFromNormal,
    ReflectWithSpread,
    FromHeading,
}

/// A wish as the Python half writes it; it fills in every default.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Wanted {
    hours: f64,
    seed: u64,
    pattern: PatternName,
    turn_law: Law,
    speed_mps: f64,
    cut_width_m: f64,
    past_boundary_m: f64,
    turning_s: (f64, f64),
    outing_s: (f64, f64),
    charging_s: (f64, f64),
    lane_spacing_m: f64,
    lane_direction_deg: f64,
    lane_jitter_m: f64,
    lane_turn_each_round_deg: f64,
    period_s: f64,
    white_m: f64,
    drift_m: f64,
    drift_time_s: f64,
    start_unix_s: f64,
    truth_cell_m: f64,
}

impl Wanted {
    fn machine(&self) -> Machine {
        let between = |(min_s, max_s): (f64, f64)| {
            if min_s == max_s {
                Spell::Fixed { s: min_s }
            } else {
                Spell::Between { min_s, max_s }
            }
        };
        let lanes = Lanes {
            turn_each_round_deg: self.lane_turn_each_round_deg,
            ..Lanes::new(self.lane_spacing_m, self.lane_direction_deg, self.lane_jitter_m)
        };
        Machine {
            speed_mps: self.speed_mps,
            past_boundary_m: self.past_boundary_m,
            turning: between(self.turning_s),
            turn_law: match self.turn_law {
                Law::UniformFromNormal => TurnLaw::UniformFromNormal,
                Law::CosineFromNormal => TurnLaw::CosineFromNormal,
                Law::ReflectWithSpread => TurnLaw::ReflectWithSpread { sd_deg: 20.0 },
                Law::FromHeading => TurnLaw::FromHeading {
                    min_deg: 90.0,
                    max_deg: 180.0,
                },
            },
            pattern: match self.pattern {
                PatternName::Roaming => Pattern::Roaming,
                PatternName::Lanes => Pattern::Lanes(lanes),
                PatternName::Spiral => Pattern::Spiral {
                    pitch_m: self.lane_spacing_m,
                },
                PatternName::Combined => Pattern::Combined(lanes),
            },
            roaming: between(self.outing_s),
            charging: between(self.charging_s),
            ..Machine::default()
        }
    }
}

fn in_range(what: &str, value: f64, low: f64, high: f64) -> Result<(), Fault> {
    // Written so that NaN fails too.
    if value >= low && value <= high {
        return Ok(());
    }
    Err(Fault::new(
        Class::Simulate,
        "out_of_range",
        format!("{what} is {value}, expected {low} to {high}"),
    ))
}

/// Drives a machine over a plan and logs it: the trace, and the truth as JSON.
#[pyfunction]
pub(crate) fn simulate(
    py: Python<'_>,
    plan: Py<Plan>,
    settings: Py<Settings>,
    wish_json: String,
) -> PyResult<(Trace, String)> {
    work(py, move || {
        let wanted: Wanted = serde_json::from_str(&wish_json)
            .map_err(|error| Fault::new(Class::Simulate, "out_of_range", error.to_string()))?;
        in_range("hours", wanted.hours, 1e-3, 1000.0)?;
        in_range("period_s", wanted.period_s, 0.02, 3600.0)?;
        in_range("cut_width_m", wanted.cut_width_m, 0.05, 2.0)?;
        in_range("truth_cell_m", wanted.truth_cell_m, 0.005, 0.5)?;
        in_range("lane_spacing_m", wanted.lane_spacing_m, 0.02, 10.0)?;
        in_range("white_m", wanted.white_m, 0.0, 100.0)?;
        in_range("drift_m", wanted.drift_m, 0.0, 100.0)?;
        in_range("drift_time_s", wanted.drift_time_s, 1e-3, 1e6)?;
        let settings = &settings.get().inner;
        let (site, _) = Site::build(&plan.get().inner).map_err(|faults| faulty("the plan", &faults))?;
        let run = Run::new(wanted.hours, wanted.seed);
        let driven = tussock_simulate::simulate(&site, &wanted.machine(), &run)
            .map_err(|error| Fault::of(Class::Simulate, &error))?;
        let noise = LogNoise {
            white_m: wanted.white_m,
            drift_m: wanted.drift_m,
            drift_time_s: wanted.drift_time_s,
        };
        let sampling = Sampling {
            start_unix_s: wanted.start_unix_s,
            antenna_forward_m: settings.machine.antenna_forward_m,
            antenna_left_m: settings.machine.antenna_left_m,
            ..Sampling::geographic(
                wanted.period_s,
                noise,
                wanted.seed.wrapping_add(LOG_SEED_OFFSET),
                site.frame,
            )
        };
        let trace = sample(&driven, &sampling);
        let counting = Counting {
            min_width_m: settings.pockets.min_width_m,
            min_area_m2: settings.pockets.min_area_m2,
            new_pass_after_s: settings.pockets.new_pass_after_s,
            cuts_in_transit: settings.machine.cuts_in_transit,
            ..Counting::new(wanted.cut_width_m, wanted.truth_cell_m)
        };
        let found = truth(&driven, &site, &counting);
        let cell_m2 = found.lawn.grid.cell_m2();
        let pockets: Vec<_> = found
            .pockets
            .iter()
            .map(|pocket| {
                json!({"area_m2": pocket.area_m2, "widest_m": pocket.widest_m,
                    "east_m": pocket.middle.east_m, "north_m": pocket.middle.north_m})
            })
            .collect();
        let told = json!({
            "seed": wanted.seed,
            "hours": wanted.hours,
            "cut_width_m": wanted.cut_width_m,
            "cell_m": wanted.truth_cell_m,
            "lawn_m2": found.lawn.count() as f64 * cell_m2,
            "visited_m2": found.visited.count() as f64 * cell_m2,
            "visited_fraction": found.visited_fraction,
            "visits_histogram": found.visits_histogram(),
            "pockets": pockets,
            "outings": driven.outings.len(),
            "driven_m": driven.driven_m(),
            "driving_s": driven.driving_s(),
            "at_station_s": driven.time_s(Doing::AtStation),
        });
        Ok((Trace::bare(trace), told.to_string()))
    })
}

/// Invents the plan of a garden of a family.
#[pyfunction]
pub(crate) fn invent_garden(
    py: Python<'_>,
    kind: String,
    seed: u64,
    area_m2: (f64, f64),
    passage_m: f64,
) -> PyResult<Plan> {
    work(py, move || {
        in_range("the least area in m2", area_m2.0, 20.0, 1e5)?;
        in_range("the largest area in m2", area_m2.1, area_m2.0, 1e5)?;
        in_range("passage_m", passage_m, 0.5, 20.0)?;
        let kind = match kind.as_str() {
            "convex" => GardenKind::Convex,
            "ell" => GardenKind::Ell,
            "islands" => GardenKind::Islands,
            "two_rooms" => GardenKind::TwoRooms { passage_m },
            "you" => GardenKind::You,
            _ => {
                return Err(Fault::new(
                    Class::Simulate,
                    "unknown_kind",
                    format!("garden kind {kind:?}, expected convex, ell, islands, two_rooms or you"),
                ));
            }
        };
        let wish = Wish {
            area_m2,
            ..Wish::new(kind)
        };
        Ok(Plan::of(invent_as(&wish, seed).plan))
    })
}

/// Closed forms by name, over a list of values.
#[pyfunction]
pub(crate) fn law(py: Python<'_>, name: String, values: Vec<f64>) -> PyResult<Vec<f64>> {
    work(py, move || {
        let form: fn(f64) -> f64 = match name.as_str() {
            "random_search_fraction" => laws::random_search_fraction,
            "random_search_factor" => laws::random_search_factor,
            "exhaustive_fraction" => laws::exhaustive_fraction,
            "inverse_cube_fraction" => laws::inverse_cube_fraction,
            "gini_of_poisson" => laws::gini_of_poisson,
            _ => {
                return Err(Fault::new(
                    Class::Simulate,
                    "unknown_law",
                    format!("law {name:?}, expected one of those of tussock.laws"),
                ));
            }
        };
        Ok(values.into_iter().map(form).collect())
    })
}
