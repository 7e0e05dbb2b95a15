//! What later stages find in the invented garden: passages, ways home, nights, the fit of a simulated machine.

#![allow(clippy::unwrap_used)]

use super::frame;
use tussock_types::*;

/// An estimate with an interval.
pub(crate) fn between(estimate: f64, low: f64, high: f64) -> Estimate {
    Estimate {
        estimate,
        low: Some(low),
        high: Some(high),
    }
}

/// How the garden is laid out and worked, with nothing null.
pub(crate) fn installation() -> Installation {
    let passage = frame().to_geo(Place::new(12.0, -0.8)).unwrap();
    let chair = frame().to_geo(Place::new(2.5, -6.0)).unwrap();
    Installation {
        setback_m: Some(0.24),
        passages: vec![Passage {
            id: "P1".to_owned(),
            across: [Place::new(12.0, -1.8), Place::new(12.0, 0.3)],
            lat: Some(passage.lat_deg),
            lon: Some(passage.lon_deg),
            width_m: 2.1,
            free_width_m: 1.62,
            length_m: 4.0,
            behind_m2: 172.0,
            crossings: Some(38),
            crossings_expected: Some(64.0),
            crossings_per_day: Some(92.0),
            share_ratio: Some(0.61),
        }],
        unlisted_obstacles: vec![UnlistedObstacle {
            id: "O1".to_owned(),
            lat: Some(chair.lat_deg),
            lon: Some(chair.lon_deg),
            east_m: 2.5,
            north_m: -6.0,
            radius_m: 0.35,
            presence: tussock_types::Presence::Went,
            turns: 14,
        }],
        out_of_reach: vec![
            OutOfReach {
                area_m2: 13.5,
                east_m: -20.6,
                north_m: -1.0,
                why: OutOfReachWhy::Edge,
            },
            OutOfReach {
                area_m2: 6.5,
                east_m: 7.8,
                north_m: 10.4,
                why: OutOfReachWhy::CutOff,
            },
        ],
        ways_home: vec![
            WayHome {
                along: HomeAlong::GuideRun,
                times: 3,
                median_min: 4.5,
            },
            WayHome {
                along: HomeAlong::Boundary,
                times: 2,
                median_min: 9.0,
            },
        ],
        outings: Some(OutingsFound {
            count: 5,
            median_out_min: 96.0,
            median_charging_min: Some(22.0),
            starts: vec![Place::new(-4.0, -8.0), Place::new(4.0, -4.0)],
            along_guide: 2,
        }),
        hours: Some(HoursFound {
            driving_h_per_day: 8.0,
            working_h_per_day: 9.6,
            allowed_h_per_day: Some(4.0),
            needed_h_per_day: Some(13.0),
            said: Said::PromiseNeedsHours {
                promised_fraction: 0.95,
                promised_days: 3.0,
                needed_h: 13.0,
                worked_h: 9.6,
                driven_h: 8.0,
            },
        }),
        lower_cut: Some(LowerCut {
            answer: LowerCutAnswer::NotYet,
            said: Said::LowerCutPlacesOpen { places: 2 },
        }),
        turf: Some(TurfFound {
            growth_mm_per_day: 3.0,
            growth_source: GrowthSource::Settings,
            allowed_interval_h: 160.0,
            overdue_fraction: Some(0.02),
            said: Said::GrassTooManyPasses {
                passes: 66.0,
                allowed_days: 6.7,
            },
        }),
        slope: Some(SlopeFound {
            steep_deg: 11.0,
            sd_deg: 1.5,
            steepest_at: Place::new(-15.0, -8.0),
        }),
    }
}

/// Silences during which the machine may have been stuck.
pub(crate) fn possible_stops() -> Vec<PossibleStop> {
    vec![PossibleStop {
        east_m: -11.0,
        north_m: 6.5,
        start_s: 9_000.0,
        most_minutes: 4.3,
    }]
}

/// One night.
pub(crate) fn nights() -> Vec<Night> {
    vec![Night {
        date: Some("2026-06-02".to_owned()),
        start_s: 0.0,
        end_s: 35_700.0,
        hours: ActivityHours {
            at_station_h: 1.44,
            driving_h: 7.3,
            transit_h: 0.25,
            turning_h: 0.35,
            reversing_h: 0.1,
            halted_h: 0.35,
            carried_h: 0.02,
            silent_h: 0.11,
        },
        visited_fraction: Some(0.86),
        visited_so_far_fraction: Some(0.86),
        dark: Some(DarkHours {
            driven_h: 5.1,
            sunset: Some("2026-06-02T19:25:10Z".to_owned()),
            dusk: Some("2026-06-02T20:11:35Z".to_owned()),
            dawn: Some("2026-06-03T02:02:18Z".to_owned()),
            sunrise: Some("2026-06-03T02:48:44Z".to_owned()),
        }),
    }]
}

/// A log compared with a surveyed path.
pub(crate) fn reference() -> ReferenceFindings {
    let length = |mean_m: f64, rms_m: f64| ErrorLength {
        values: 28_000,
        mean_m,
        rms_m,
        p95_m: 1.96 * rms_m,
        max_m: 3.2 * rms_m,
    };
    let errors = |times: f64| ReferenceErrors {
        cross_track: Some(length(-0.004, 0.021 * times)),
        along_track: Some(length(0.012, 0.034 * times)),
        timing: Some(ErrorTime {
            values: 28_000,
            mean_s: -0.03,
            rms_s: 0.09 * times,
            p95_s: 0.2 * times,
            max_s: 0.6 * times,
        }),
        pass_to_pass: Some(length(0.001, 0.026 * times)),
    };
    ReferenceFindings {
        name: "Mill Lane survey.csv".to_owned(),
        length_m: 7_800.0,
        is_timed: true,
        compared_fixes: 28_000,
        beside_fixes: 120,
        beside_m: 10.0,
        halted_fixes: 660,
        logged: errors(1.0),
        located: errors(0.7),
    }
}

/// How well simulated runs resemble the log.
pub(crate) fn fit() -> FitFound {
    FitFound {
        is_trusted: true,
        said: Said::FitTrusted {
            speed_mps: 0.4,
            turns: 812,
            outings: 5,
        },
        runs: 24,
        rows: vec![
            FitRow {
                what: FitFigure::LegM,
                logged: 8.4,
                simulated: between(8.1, 7.6, 8.7),
            },
            FitRow {
                what: FitFigure::VisitedFraction,
                logged: 0.872,
                simulated: between(0.88, 0.835, 0.924),
            },
        ],
    }
}
