//! The long table of `docs/validation.md`: invented gardens, three grades of positions, five periods, roaming and lanes.
//!
//! `tests/run --full` makes it; `REGENERATE=1` writes it into the docs. Each estimate is shown beside the values given by
//! the fixes as logged and by the random-search law. Tiles are 5 m squares of lawn.

use crate::nights::{self, driven, in_parallel, logged, sites};
use std::fmt::Write as _;
use tussock_simulate::gardens::{GardenKind, Surprise, Wish, invent_as};
use tussock_simulate::{Counting, Lanes, LogNoise, Machine, Pattern, truth};
use tussock_types::Findings;

/// Gardens of one row of the table.
const GARDENS: u64 = 10;
const SEEDS_FROM: u64 = 5000;
const HOURS: f64 = 8.0;
const CUT_WIDTH_M: f64 = 0.22;
const TRUTH_CELL_M: f64 = 0.03;
const TILE_M: f64 = 5.0;

#[derive(Clone, Copy)]
struct Case {
    grade: &'static str,
    noise: LogNoise,
    period_s: f64,
    lanes: bool,
}

#[derive(Clone, Copy, Debug)]
struct Outcome {
    error: f64,
    face_error: f64,
    held: bool,
    width: f64,
    tile_error: f64,
    tile_law_error: f64,
}

fn cases() -> Vec<Case> {
    let mut cases = Vec::new();
    for (grade, noise) in [
        ("0.01 m, 0.015 m", LogNoise::CENTIMETRES),
        ("0.08 m, 0.3 m", LogNoise::DECIMETRES),
        ("0.3 m, 2 m", LogNoise::METRES),
    ] {
        for lanes in [false, true] {
            for period_s in [1.0, 5.0, 10.0, 20.0, 30.0] {
                cases.push(Case {
                    grade,
                    noise,
                    period_s,
                    lanes,
                });
            }
        }
    }
    cases
}

fn outcome(case: &Case, number: u64) -> Outcome {
    let seed = SEEDS_FROM + number;
    let kind = GardenKind::ALL[(number % 5) as usize];
    let surprise = match number % 4 {
        2 => Surprise::BlockedPart,
        3 => Surprise::UnlistedObstacle { radius_m: 0.8 },
        _ => Surprise::None,
    };
    let garden = invent_as(
        &Wish {
            area_m2: (400.0, 1200.0),
            surprise,
            guide_share_fraction: (number % 3 == 1).then_some(0.5),
            ..Wish::new(kind)
        },
        seed,
    );
    let (site, ground) = sites(&garden.plan, &garden.ground);
    let machine = Machine {
        speed_mps: 0.3 + 0.05 * (number % 4) as f64,
        past_boundary_m: if number.is_multiple_of(2) { -0.15 } else { 0.05 },
        pattern: if case.lanes {
            Pattern::Lanes(Lanes::new(0.18, 20.0 + 10.0 * number as f64, 0.02))
        } else {
            Pattern::Roaming
        },
        ..Machine::default()
    };
    let run = driven(&ground, &machine, HOURS, seed);
    let trace = logged(&run, &site, case.period_s, case.noise, 1000 + seed);
    let findings = nights::found(&trace, &garden.plan, CUT_WIDTH_M);
    let truth = truth(&run, &site, &Counting::new(CUT_WIDTH_M, TRUTH_CELL_M));
    let coverage = findings.coverage.as_ref().expect("the width is known");
    let (tile_error, tile_law_error) = tiles(&findings, &truth);
    let visited = coverage.visited_fraction;
    let (low, high) = visited.low.zip(visited.high).expect("an interval");
    Outcome {
        error: 100.0 * (visited.estimate - truth.visited_fraction),
        face_error: 100.0 * (coverage.as_logged_fraction - truth.visited_fraction),
        held: low <= truth.visited_fraction && truth.visited_fraction <= high,
        width: 100.0 * (high - low),
        tile_error,
        tile_law_error,
    }
}

/// Median error of the visited fraction of tiles, in points: ours and the law's.
fn tiles(findings: &Findings, truth: &tussock_simulate::Truth) -> (f64, f64) {
    let cells = findings.cells.as_ref().expect("cells");
    let coverage = findings.coverage.as_ref().expect("the width is known");
    let (fine, coarse) = (truth.lawn.grid, cells.grid);
    let columns = (fine.columns as f64 * fine.cell_m / TILE_M).ceil() as usize + 1;
    let rows = (fine.rows as f64 * fine.cell_m / TILE_M).ceil() as usize + 1;
    let tile = |east_m: f64, north_m: f64| {
        let column = ((east_m - fine.east_min_m) / TILE_M).max(0.0) as usize;
        let row = ((north_m - fine.north_min_m) / TILE_M).max(0.0) as usize;
        row.min(rows - 1) * columns + column.min(columns - 1)
    };
    let mut sums = vec![[0.0_f64; 4]; columns * rows];
    for (column, row) in truth.lawn.cells_on() {
        let place = fine.centre(column, row);
        let sum = &mut sums[tile(place.east_m, place.north_m)];
        sum[0] += fine.cell_m2();
        sum[1] += if truth.visited.get(column, row) {
            fine.cell_m2()
        } else {
            0.0
        };
    }
    for row in 0..coarse.rows {
        for column in 0..coarse.columns {
            let at = row * coarse.columns + column;
            let lawn_m2 = f64::from(cells.lawn_fraction[at]) * coarse.cell_m2();
            let place = coarse.centre(column, row);
            let sum = &mut sums[tile(place.east_m, place.north_m)];
            sum[2] += lawn_m2;
            sum[3] += lawn_m2 * f64::from(cells.visited_probability[at]);
        }
    }
    let swept = findings.span.path_m * CUT_WIDTH_M / coverage.lawn_m2;
    let law = 1.0 - (-swept).exp();
    let whole = |sum: &&[f64; 4]| sum[0] > 0.5 * TILE_M * TILE_M && sum[2] > 0.25 * TILE_M * TILE_M;
    let middle = |of: &dyn Fn(&[f64; 4]) -> f64| {
        let mut errors: Vec<f64> = sums.iter().filter(whole).map(of).collect();
        errors.sort_by(f64::total_cmp);
        100.0 * errors[errors.len() / 2]
    };
    (
        middle(&|sum| (sum[1] / sum[0] - sum[3] / sum[2]).abs()),
        middle(&|sum| (sum[1] / sum[0] - law).abs()),
    )
}

fn quantile(values: impl Iterator<Item = f64>, part: f64) -> f64 {
    let mut values: Vec<f64> = values.collect();
    values.sort_by(f64::total_cmp);
    values[((values.len() - 1) as f64 * part).round() as usize]
}

fn table() -> String {
    let cases = cases();
    let jobs: Vec<(usize, u64)> = (0..cases.len())
        .flat_map(|case| (0..GARDENS).map(move |number| (case, number)))
        .collect();
    let outcome_of = |number: usize| (jobs[number].0, outcome(&cases[jobs[number].0], jobs[number].1));
    let mut found = in_parallel(jobs.len(), outcome_of);
    found.sort_by(|a, b| a.0.cmp(&b.0).then(a.1.error.total_cmp(&b.1.error)));
    let mut page = format!(
        "# How far off are the figures?\n\n\
         {GARDENS} invented gardens in each row, 400 to 1,200 m2, of five shapes; every fourth with a fence and every fourth with an\n\
         obstacle that the plan does not show. {HOURS} h, cutting width {CUT_WIDTH_M} m. White part and drift per axis; drift time 600 s, at\n\
         2 m 300 s. Errors in percentage points. `tests/run --full` makes this table (`crates/tussock/tests/long_table.rs`).\n\n\
         | positions | pattern | period | error, median | 9 of 10 | as logged, 9 of 10 | interval holds | width | tile of 25 m2 | tile by the law |\n\
         |---|---|---|---|---|---|---|---|---|---|\n"
    );
    for (index, case) in cases.iter().enumerate() {
        let of: Vec<Outcome> = found
            .iter()
            .filter(|(at, _)| *at == index)
            .map(|(_, one)| *one)
            .collect();
        let _ = writeln!(
            page,
            "| {} | {} | {} s | {:.2} | {:.2} | {:.1} | {}/{} | {:.1} | {:.1} | {:.1} |",
            case.grade,
            if case.lanes { "lanes" } else { "roaming" },
            case.period_s,
            quantile(of.iter().map(|one| one.error.abs()), 0.5),
            quantile(of.iter().map(|one| one.error.abs()), 0.9),
            quantile(of.iter().map(|one| one.face_error.abs()), 0.9),
            of.iter().filter(|one| one.held).count(),
            of.len(),
            of.iter().map(|one| one.width).sum::<f64>() / of.len() as f64,
            quantile(of.iter().map(|one| one.tile_error), 0.5),
            quantile(of.iter().map(|one| one.tile_law_error), 0.5),
        );
    }
    page
}

/// The table in the docs equals the code's result, to the last digit.
#[test]
#[ignore = "takes minutes: tests/run --full"]
fn the_table_in_the_docs_is_what_comes_out() {
    let path = concat!(env!("CARGO_MANIFEST_DIR"), "/../../docs/validation.md");
    let made = table();
    println!("{made}");
    if std::env::var_os("REGENERATE").is_some() {
        std::fs::write(path, &made).expect("docs can be written");
    }
    let kept = std::fs::read_to_string(path).expect("docs/validation.md is there");
    assert_eq!(kept, made, "run with REGENERATE=1 and read the diff");
}
