//! Cell counts on public recordings, compared with counts in whole fractions by an independent script
//! (`fixtures/grids/count.py`).

use crate::nights;
use std::path::Path;
use tussock::coverage::custom::{Division, VisitRule};
use tussock::{GridCorners, GridJob, GridJobError, GridPath, Job, count_on_grid};
use tussock_ingest::{ReadOptions, assemble, read_log};
use tussock_types::{GeoPoint, Place, Settings, Trace};

fn fixture(name: &str) -> Vec<u8> {
    let path = Path::new(env!("CARGO_MANIFEST_DIR"))
        .join("../../fixtures")
        .join(name);
    std::fs::read(&path).unwrap_or_else(|error| panic!("{}: {error}", path.display()))
}

fn traces(names: &[&str], columns: Option<&str>) -> Vec<Trace> {
    let options = ReadOptions {
        columns: columns.and_then(|columns| columns.parse().ok()),
        ..ReadOptions::default()
    };
    let files = names.iter().map(|name| {
        let bytes = fixture(&format!("recordings/coverage/{name}"));
        read_log(name, &bytes[..], &options).expect("the recording can be read")
    });
    assemble(files.collect()).expect("they belong together").traces
}

fn job<'a>(traces: &'a [Trace], settings: &'a Settings) -> Job<'a> {
    Job {
        seed: 0,
        ..nights::job(traces, None, settings)
    }
}

/// Fixes in each cell, as the script wrote them.
fn expected(name: &str) -> Vec<u32> {
    let text = String::from_utf8(fixture(&format!("grids/{name}.txt"))).expect("it is text");
    text.split_whitespace()
        .map(|word| word.parse().expect("a number of fixes"))
        .collect()
}

const PLAZA: GridCorners = GridCorners::Local([
    Place::new(-44.0, -6.0),
    Place::new(4.0, -12.0),
    Place::new(-36.25, 56.0),
]);

#[test]
fn fixes_in_the_cells_of_a_grid_of_three_corners_are_those_that_whole_fractions_say() {
    let settings = Settings::default();
    let traces = traces(&["plaza_lawnmower/Plaza1_GT.derived.csv"], None);
    let job = job(&traces, &settings);
    let wanted = GridJob {
        job: &job,
        corners: PLAZA,
        division: Division::Counts {
            columns: 45,
            rows: 58,
        },
        rule: VisitRule::FixInside,
        path: GridPath::AsLogged,
        new_pass_after_s: 30.0,
    };
    let found = count_on_grid(&wanted).unwrap();
    assert_eq!(found.hits, expected("plaza"));
    assert_eq!(found.cells_visited(), 1607);

    // Each rule sees what the stricter one sees, and more.
    let by = |rule| count_on_grid(&GridJob { rule, ..wanted }).unwrap();
    let crossed = by(VisitRule::PathCrosses);
    let centres = by(VisitRule::SwathCoversCentre { cut_width_m: 0.5 });
    let area = by(VisitRule::AreaWeighted { cut_width_m: 0.5 });
    for cell in 0..found.grid.cells() {
        assert!(found.hits[cell] == 0 || crossed.hits[cell] > 0);
        assert!(crossed.hits[cell] == 0 || area.visited_fraction[cell] > 0.0 || area.hits[cell] == 0);
    }
    assert!(crossed.cells_visited() > found.cells_visited());
    // Centres sample the area: over 2,610 cells both agree to within a few per cent.
    let ratio = centres.visited_m2() / area.visited_m2();
    assert!((0.97..1.03).contains(&ratio), "{ratio}");
}

#[test]
fn a_grid_of_degrees_counts_two_logs_as_a_spreadsheet_would() {
    let settings = Settings::default();
    let traces = traces(
        &["water_depth/260939.LOG", "water_depth/261005.LOG"],
        Some("date=#1,time=#2,lat=#4,lon=#5,speed_mps=#6,sats=#7"),
    );
    let corner = |lon_deg, lat_deg| GeoPoint { lat_deg, lon_deg };
    let corners = [
        corner(8.6380, 53.1608),
        corner(8.6427, 53.1610),
        corner(8.6379, 53.1621),
    ];
    let job = job(&traces, &settings);
    let wanted = GridJob {
        job: &job,
        corners: GridCorners::Degrees(corners),
        division: Division::Counts {
            columns: 60,
            rows: 30,
        },
        rule: VisitRule::FixInside,
        path: GridPath::AsLogged,
        new_pass_after_s: 30.0,
    };
    let found = count_on_grid(&wanted).unwrap();
    assert_eq!(found.hits, expected("harbour"));
    // On the tangent plane through the same corners hardly any fix changes its cell: 300 m are flat.
    let plane = count_on_grid(&GridJob {
        corners: GridCorners::Earth(corners),
        ..wanted
    })
    .unwrap();
    let moved: u32 = found
        .hits
        .iter()
        .zip(&plane.hits)
        .map(|(a, b)| a.abs_diff(*b))
        .sum();
    assert!(moved <= 40, "{moved} of {} fixes", traces[0].len());

    let width = GridJob {
        rule: VisitRule::AreaWeighted { cut_width_m: 0.5 },
        ..wanted
    };
    assert!(matches!(
        count_on_grid(&width),
        Err(GridJobError::NoMetres { .. })
    ));
    let apart = GridJob {
        corners: PLAZA,
        ..wanted
    };
    assert!(matches!(count_on_grid(&apart), Err(GridJobError::Apart { .. })));
}

#[test]
fn the_located_path_visits_the_cells_of_the_logged_one() {
    let settings = Settings::default();
    let traces = traces(&["plaza_lawnmower/Plaza1_GT.derived.csv"], None);
    let job = job(&traces, &settings);
    let wanted = GridJob {
        job: &job,
        corners: PLAZA,
        division: Division::Sides {
            column_m: 1.0,
            row_m: 1.0,
        },
        rule: VisitRule::PathCrosses,
        path: GridPath::AsLogged,
        new_pass_after_s: 30.0,
    };
    let logged = count_on_grid(&wanted).unwrap();
    let located = count_on_grid(&GridJob {
        path: GridPath::Located,
        ..wanted
    })
    .unwrap();
    let both = logged
        .hits
        .iter()
        .zip(&located.hits)
        .filter(|(a, b)| (**a > 0) == (**b > 0))
        .count();
    let share = both as f64 / logged.hits.len() as f64;
    assert!(share > 0.97, "{share}");
}
