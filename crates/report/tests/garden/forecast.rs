//! A forecast of the sample garden.

use super::{between, full_findings};
use tussock_types::*;

pub(crate) fn forecast() -> PlanForecast {
    let typical = full_findings();
    let installation = typical.installation.as_ref().expect("the full sample has one");
    PlanForecast {
        lawn_m2: 412.0,
        setback_m: 0.23,
        speed_mps: 0.4,
        passages: installation.passages.clone(),
        passage_share_fraction: vec![0.42; installation.passages.len()],
        passage_done_fraction: vec![vec![0.0, 0.25, 0.5, 0.75, 1.0, 1.0, 1.0]; installation.passages.len()],
        out_of_reach: vec![OutOfReach {
            area_m2: 3.2,
            east_m: -8.0,
            north_m: 2.0,
            why: OutOfReachWhy::CutOff,
        }],
        edges_m2: 12.4,
        boundary_m: 96.0,
        guides_m: 0.0,
        days: Some(ForecastDays {
            working_h_per_day: 10.0,
            visited_fraction: [0.79, 0.92, 0.95, 0.96, 0.96, 0.965, 0.97]
                .map(|middle| between(middle, middle - 0.05, middle + 0.01))
                .to_vec(),
            needed_h_per_day: Some(9.0),
            runs: 16,
        }),
        typical: Some(Box::new(typical)),
    }
}
