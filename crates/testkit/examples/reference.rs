//! What our methods say to a question, so that libraries that nobody here wrote can be asked the same.
//!
//! Reads a JSON list of questions, each with its `ask`, and prints the list of answers. The Python leg of the tests
//! puts the questions; see `tests/python/test_reference.py`.
#![allow(
    clippy::print_stdout,
    clippy::unwrap_used,
    reason = "a question that cannot be answered stops the test"
)]

use serde::Deserialize;
use serde_json::{Value, json};
use tussock::statistics;
use tussock_coverage::custom::{self, CustomGrid, Division, VisitRule};
use tussock_coverage::{pockets::pockets, revisits, swath::Sweep, visits};
use tussock_diagnose::stuck::stuck_spots;
use tussock_ingest::{ReadOptions, read_log};
use tussock_locate::blocks::Blocks;
use tussock_locate::drift::{self, Stand};
use tussock_locate::kalman::{self, Model, State};
use tussock_locate::{Halt, HaltPlace, Kept, NoiseEstimate, PathMethod, Track};
use tussock_plane::distance::{self, Connectivity};
use tussock_plane::{BitGrid, Frame, Joins, LegIndex, Region, Steps, cheapest_way};
use tussock_types::{GeoPoint, Grid, NoiseSource, Place};

/// One question. Masks are rows of `0` and `1`, the southernmost first.
#[derive(Deserialize)]
#[serde(tag = "ask", rename_all = "snake_case", deny_unknown_fields)]
enum Question {
    /// Squared distance of each cell to the nearest `0`.
    Distance { rows: Vec<String> },
    /// Moran's I of values on squares, row by row.
    Moran {
        columns: usize,
        values: Vec<Option<f64>>,
    },
    /// Sizes of connected parts.
    Parts { rows: Vec<String>, neighbours: u8 },
    /// Pockets of a mask.
    Pockets {
        rows: Vec<String>,
        cell_m: f64,
        least_width_m: f64,
    },
    /// Stuck spots of halts of ten minutes each.
    Spots { places_m: Vec<[f64; 2]> },
    /// Filtered and smoothed positions of one axis; `first` has position, velocity and three covariances.
    Smooth {
        time_s: Vec<f64>,
        measured_m: Vec<f64>,
        first: [f64; 5],
        acceleration_m2_per_s4: f64,
        measurement_m2: f64,
    },
    /// Places of latitudes and longitudes on the tangent plane at the first of them, and the way back.
    Frame { points_deg: Vec<[f64; 2]> },
    /// Area under a disc that is moved along a polyline, on a lawn that holds all of it.
    Swath {
        corners_m: Vec<[f64; 2]>,
        cut_width_m: f64,
    },
    /// Area of a polygon (outer ring, holes) grown by a distance, and of what another takes from it.
    Ground {
        rings_m: Vec<Vec<[f64; 2]>>,
        other_m: Vec<Vec<[f64; 2]>>,
        grown_m: f64,
    },
    /// Cheapest way from a cell to another, as column and row; what a metre costs, row by row, `null` where it is closed.
    Way {
        prices: Vec<Vec<Option<f64>>>,
        cell_m: f64,
        from: [usize; 2],
        to: [usize; 2],
        steps: String,
    },
    /// White part, slow part and drift time of stands at one place.
    Drift { stands: Vec<Fixes> },
    /// Part of each cell of a grid between three corners that is under a disc moved along a polyline, row by row.
    CellAreas {
        corners_m: [[f64; 2]; 3],
        cells: [usize; 2],
        way_m: Vec<[f64; 2]>,
        cut_width_m: f64,
    },
    /// Survival curve with its 90 % interval: rows of time, events, censored.
    Survival { rows: Vec<(f64, u64, u64)> },
    /// Values from 0 to 1 held to a uniform law.
    Uniform { values: Vec<f64> },
    /// Interval of a mean by drawing again.
    MeanInterval {
        values: Vec<f64>,
        draws: usize,
        interval_fraction: f64,
        bca: bool,
    },
    /// Cliff's delta.
    Delta { a: Vec<f64>, b: Vec<f64> },
    /// Fixes of a log file.
    Read { path: String },
}

/// Fixes of one stand, as columns.
#[derive(Deserialize)]
struct Fixes {
    time_s: Vec<f64>,
    east_m: Vec<f64>,
    north_m: Vec<f64>,
}

fn drift_of(stands: &[Fixes]) -> Value {
    let stands: Vec<Stand> = stands
        .iter()
        .map(|fixes| Stand {
            fixes: Blocks {
                time_s: fixes.time_s.clone(),
                east_m: fixes.east_m.clone(),
                north_m: fixes.north_m.clone(),
                ..Blocks::default()
            },
            place: 0,
        })
        .collect();
    drift::fit(&stands).map_or(
        Value::Null,
        |fit| json!({ "white_m": fit.white_m, "drift_m": fit.drift_m, "drift_time_s": fit.drift_time_s }),
    )
}

fn place([east_m, north_m]: [f64; 2]) -> Place {
    Place::new(east_m, north_m)
}

fn mask(rows: &[String], cell_m: f64) -> BitGrid {
    let mut mask = BitGrid::new(Grid {
        east_min_m: 0.0,
        north_min_m: 0.0,
        cell_m,
        columns: rows[0].len(),
        rows: rows.len(),
    });
    for (row, text) in rows.iter().enumerate() {
        text.bytes()
            .enumerate()
            .filter(|(_, letter)| *letter == b'1')
            .for_each(|(column, _)| mask.set(column, row));
    }
    mask
}

fn spots(places_m: &[[f64; 2]]) -> Value {
    let halts: Vec<Halt> = (1..)
        .zip(places_m)
        .map(|(number, at)| Halt {
            place: place(*at),
            start_s: f64::from(number) * 1000.0,
            end_s: f64::from(number) * 1000.0 + 600.0,
            at: HaltPlace::Elsewhere,
            radius_m: 0.1,
            came_from: None,
        })
        .collect();
    let end_s = 1000.0 * (places_m.len() as f64 + 2.0);
    let track = Track {
        machine: String::new(),
        pieces: Vec::new(),
        halts,
        smooths: false,
        stays: Vec::new(),
        gaps: Vec::new(),
        steps: Vec::new(),
        carried: Vec::new(),
        method: PathMethod::Legs,
        noise: NoiseEstimate {
            white_m: 0.0,
            drift_m: Some(0.0),
            drift_rate_m2_per_s: 0.0,
            drift_time_s: None,
            source: NoiseSource::Default,
        },
        reckoned_drift: tussock_locate::ReckonedDrift::Measured { drift_m: 0.0 },
        period_s: 1.0,
        speed_mps: None,
        fixes_used: 0,
        gated_quality: 0,
        gated_jumps: 0,
        station: None,
        outings: None,
        span_s: Some((0.0, end_s)),
        read_s: Some((0.0, end_s)),
        kept: Kept::default(),
        anchored: None,
        bent: None,
    };
    stuck_spots(&[track], &LegIndex::build(Vec::new()), 60.0)
        .iter()
        .map(|spot| json!({ "episodes": spot.episodes, "east_m": spot.place.east_m, "north_m": spot.place.north_m }))
        .collect()
}

fn states(states: &[State]) -> Value {
    states
        .iter()
        .map(|state| json!([state.position_m, state.velocity_mps, state.covariance]))
        .collect()
}

fn swath(corners_m: &[[f64; 2]], cut_width_m: f64) -> Value {
    let reach_m = corners_m
        .iter()
        .flatten()
        .fold(0.0, |most: f64, m| most.max(m.abs()))
        + cut_width_m;
    let (low, high) = (Place::new(-reach_m, -reach_m), Place::new(reach_m, reach_m));
    let mut lawn = BitGrid::new(visits::grid_over(
        low,
        high,
        visits::cell_for_width_m(cut_width_m),
        40_000_000,
    ));
    (0..lawn.grid.rows).for_each(|row| lawn.set_span(row, 0, lawn.grid.columns));
    let sweeps = sweeps(corners_m);
    let end_s = sweeps.last().map_or(0.0, |sweep| sweep.end_s);
    let lawn_m2 = lawn.area_m2();
    let count = visits::count(lawn, &sweeps, cut_width_m, 30.0, (0.0, end_s));
    json!({
        "visited_m2": count.visited.area_m2(),
        "cell_error_m2": count.cell_error_fraction() * lawn_m2,
    })
}

/// Legs at 0.4 m/s, one after the other.
fn sweeps(corners_m: &[[f64; 2]]) -> Vec<Sweep> {
    let mut now_s = 0.0;
    corners_m
        .windows(2)
        .map(|pair| {
            let (from, to) = (place(pair[0]), place(pair[1]));
            let (start_s, driving_s) = (now_s, from.distance_m(to) / 0.4);
            now_s += driving_s;
            Sweep {
                from,
                to,
                start_s,
                end_s: now_s,
                driving_before_s: start_s,
                driving_s,
            }
        })
        .collect()
}

fn region(rings_m: &[Vec<[f64; 2]>]) -> Region {
    let rings = rings_m
        .iter()
        .map(|ring| ring.iter().map(|at| place(*at)).collect())
        .collect();
    Region::from_rings(vec![rings]).unwrap()
}

fn answer(question: &Question) -> Value {
    match question {
        Question::Distance { rows } => {
            let mask = mask(rows, 1.0);
            json!(distance::squared(
                mask.grid.columns,
                mask.grid.rows,
                |column, row| !mask.get(column, row)
            ))
        }
        Question::Parts { rows, neighbours } => {
            let connectivity = if *neighbours == 8 {
                Connectivity::Eight
            } else {
                Connectivity::Four
            };
            distance::parts(&mask(rows, 1.0), connectivity)
                .iter()
                .map(distance::MaskPart::cells)
                .collect()
        }
        Question::Pockets {
            rows,
            cell_m,
            least_width_m,
        } => pockets(&mask(rows, *cell_m), *least_width_m, 0.0)
            .iter()
            .map(|pocket| json!({ "area_m2": pocket.area_m2, "widest_m": pocket.widest_m }))
            .collect(),
        Question::Spots { places_m } => spots(places_m),
        Question::Smooth {
            time_s,
            measured_m,
            first,
            acceleration_m2_per_s4,
            measurement_m2,
        } => {
            let [position_m, velocity_mps, covariance @ ..] = *first;
            let model = Model {
                acceleration_m2_per_s4: *acceleration_m2_per_s4,
                measurement_m2: *measurement_m2,
            };
            let found = kalman::smooth(
                time_s,
                measured_m,
                State {
                    position_m,
                    velocity_mps,
                    covariance,
                },
                model,
            );
            json!({
                "filtered": states(&found.filtered),
                "smoothed": states(&found.smoothed),
                "log_likelihood": found.log_likelihood,
            })
        }
        Question::Frame { points_deg } => {
            let point = |[lat_deg, lon_deg]: [f64; 2]| GeoPoint { lat_deg, lon_deg };
            let frame = Frame::at(point(points_deg[0]));
            points_deg
                .iter()
                .map(|at| {
                    let place = frame.to_place(point(*at));
                    let back = frame.to_geo(place);
                    json!([place.east_m, place.north_m, back.lat_deg, back.lon_deg])
                })
                .collect()
        }
        Question::Swath {
            corners_m,
            cut_width_m,
        } => swath(corners_m, *cut_width_m),
        Question::Ground {
            rings_m,
            other_m,
            grown_m,
        } => {
            let (one, other) = (region(rings_m), region(other_m));
            json!({
                "area_m2": one.area_m2(),
                "grown_round_m2": one.grown_by(*grown_m, Joins::Round).unwrap().area_m2(),
                "shrunk_m2": one.grown_by(-grown_m, Joins::Round).unwrap().area_m2(),
                "shrunk_parts": one.grown_by(-grown_m, Joins::Round).unwrap().parts().len(),
                "union_m2": one.union(&other).unwrap().area_m2(),
                "minus_m2": one.minus(&other).unwrap().area_m2(),
                "intersect_m2": one.intersect(&other).unwrap().area_m2(),
            })
        }
        Question::Way {
            prices,
            cell_m,
            from,
            to,
            steps,
        } => {
            let grid = Grid {
                east_min_m: 0.0,
                north_min_m: 0.0,
                cell_m: *cell_m,
                columns: prices[0].len(),
                rows: prices.len(),
            };
            let steps = match steps.as_str() {
                "four" => Steps::Four,
                "eight" => Steps::Eight,
                "eight_cutting_corners" => Steps::EightCuttingCorners,
                other => panic!("no such steps: {other}"),
            };
            let way = cheapest_way(
                &grid,
                (from[0], from[1]),
                |column, row| [column, row] == *to,
                |column, row| prices[row][column],
                steps,
            );
            json!(way.map(|way| json!({ "cost": way.cost, "length_m": way.length_m, "cells": way.cells })))
        }
        Question::Drift { stands } => drift_of(stands),
        Question::CellAreas {
            corners_m,
            cells,
            way_m,
            cut_width_m,
        } => {
            let [origin, columns_end, rows_end] = corners_m.map(place);
            let division = Division::Counts {
                columns: cells[0],
                rows: cells[1],
            };
            let grid = CustomGrid::from_corners(origin, columns_end, rows_end, division).unwrap();
            let sweeps = sweeps(way_m);
            let rule = VisitRule::AreaWeighted {
                cut_width_m: *cut_width_m,
            };
            json!(custom::count(&grid, rule, [], &sweeps, 0.0).visited_fraction)
        }
        Question::Survival { rows } => json!(
            revisits::survival(rows)
                .iter()
                .map(|step| {
                    [
                        step.interval_s,
                        step.survival_fraction,
                        step.low_fraction,
                        step.high_fraction,
                    ]
                })
                .collect::<Vec<_>>()
        ),
        Question::Uniform { values } => {
            let found = statistics::kolmogorov_smirnov(values, |value| value).unwrap();
            json!([found.distance_fraction, found.probability])
        }
        Question::MeanInterval {
            values,
            draws,
            interval_fraction,
            bca,
        } => {
            let resampling = statistics::Resampling {
                draws: *draws,
                interval_fraction: *interval_fraction,
                kind: if *bca {
                    statistics::IntervalKind::Bca
                } else {
                    statistics::IntervalKind::Percentile
                },
                seed: 1,
            };
            let found = statistics::bootstrap(values, statistics::mean, &resampling).unwrap();
            json!([found.low, found.high])
        }
        Question::Moran { columns, values } => json!(tussock::measures::morans_i(*columns, values)),
        Question::Delta { a, b } => json!(statistics::cliffs_delta(a, b)),
        Question::Read { path } => {
            match read_log(path, std::fs::File::open(path).unwrap(), &ReadOptions::default()) {
                Ok(file) => {
                    let fixes = (0..file.trace.len()).map(|index| file.trace.fix(index));
                    json!({
                        "format": file.facts.format.words(),
                        "fixes": fixes.map(|fix| [fix.time_s, fix.first, fix.second]).collect::<Vec<_>>(),
                        "skipped": file.facts.places.iter().map(|place| [place.byte_start, place.byte_end]).collect::<Vec<_>>(),
                    })
                }
                Err(error) => json!({ "refused": error.to_string() }),
            }
        }
    }
}

fn main() {
    let questions: Vec<Question> = serde_json::from_reader(std::io::stdin().lock()).unwrap();
    let answers: Vec<Value> = questions.iter().map(answer).collect();
    println!("{}", Value::from(answers));
}
