//! The findings again: with everything, with nothing, local, without width, hostile.

#![allow(clippy::unwrap_used)]

use super::extras::{between, fit, installation, nights, possible_stops, reference};
use super::{ORIGIN_LAT, ORIGIN_LON, SPEED_MPS, findings};
use tussock_types::*;

/// Everything that a later version can find, with no field null and no list empty.
pub(crate) fn full_findings() -> Findings {
    let mut findings = findings();
    findings.log_verdict.level = LogLevel::Limited;
    findings.log_verdict.duration = LogLevel::Limited;
    findings.log_verdict.hours_more_needed = Some(3.5);
    let settings = &mut findings.settings;
    settings.machine.body_width_m = Some(0.5);
    settings.machine.track_width_m = Some(0.32);
    settings.machine.past_boundary_m = Some(0.2);
    settings.machine.speed_mps = Some(SPEED_MPS);
    settings.turf = TurfSettings {
        cut_height_mm: Some(40.0),
        growth_mm_per_day: Some(3.0),
        mean_temperature_c: Some(17.0),
        grass: Grass::Cool,
    };
    let day = Some(vec!["20:00-23:59".to_owned()]);
    settings.hours = HoursSettings {
        monday: day.clone(),
        tuesday: day.clone(),
        wednesday: day.clone(),
        thursday: day.clone(),
        friday: day.clone(),
        saturday: day.clone(),
        sunday: day,
    };
    settings.garden.language = Some(tussock_types::Language::English);
    settings.garden.units = Some(tussock_types::Units::Metric);
    settings.garden.remarks = Some("Gate code with the neighbours.".to_owned());
    settings.positions.max_silence_s = Some(10.0);
    settings.positions.drift_m = Some(0.05);
    settings.positions.card = Some("receiver-3.csv".to_owned().into());
    settings.positions.origin_lat_deg = Some(ORIGIN_LAT);
    settings.positions.origin_lon_deg = Some(ORIGIN_LON);
    settings.visit = SiteVisit {
        who: Some("B. Fennmoor".to_owned()),
        when: Some("2026-06-03".to_owned()),
        machine: Some("Bertha".to_owned()),
        serial: Some("SN 4711".to_owned()),
        done: Some("Walked the edge.".to_owned()),
    };
    settings.complaint = vec![ComplaintSettings {
        at_deg: Some([ORIGIN_LAT, ORIGIN_LON]),
        at_m: Some([23.0, -4.6]),
        radius_m: 0.5,
        said: Some("Behind the plum tree, always.".to_owned()),
    }];
    let visit = settings.visit.clone();
    findings.span.transit_s = Some(900.0);
    findings.span.carried_s = Some(60.0);
    findings.positions.anchored = Some(true);
    findings.positions.filtered_m = Some(0.4);
    findings.positions.filtered_time_s = Some(28.0);
    findings.positions.tails = Some(4.0);
    findings.checks = checks();
    findings.plan_fit = Some(PlanFit {
        verdict: PlanFitVerdict::Moved,
        offset: Some(PlanOffset {
            east_m: 0.15,
            north_m: -0.1,
            rotation_deg: 0.2,
            about_east_m: 1.5,
            about_north_m: -2.0,
            sd_m: 0.03,
        }),
        edges: vec![PlanEdge {
            edge: 3,
            offset_m: 0.4,
            sd_m: 0.05,
            line: [Place::new(-12.0, -9.4), Place::new(12.0, -9.4)],
        }],
        driven_zones: vec![DrivenZone {
            feature: 1,
            path_m: 42.0,
        }],
        unlisted_obstacles: installation().unlisted_obstacles,
        unlisted_islands: vec![island()],
    });
    findings.drawn_outline = Some(DrawnOutline {
        setback_m: 0.16,
        edge_sd_m: 0.06,
        islands: vec![island()],
        unturned: Some(UnturnedEdge {
            lat: Some(53.1),
            lon: Some(12.2),
            east_m: 4.0,
            north_m: 9.0,
            length_m: 5.5,
        }),
    });
    findings.machines[0] = MachineFindings {
        model: Some(MotionModel::Legs),
        turning_radius_m: Some(0.0),
        setback_m: Some(0.24),
        legs_m: Some(LegLengths {
            median: 8.4,
            p90: 21.0,
        }),
        turns: Some(812),
        trusted: Some(true),
        ..findings.machines[0].clone()
    };
    findings.complaints = vec![ComplaintFindings {
        lat: Some(ORIGIN_LAT),
        lon: Some(ORIGIN_LON),
        east_m: 23.0,
        north_m: -4.6,
        said: Some("Behind the plum tree, always.".to_owned()),
        visits: Some(between(0.0, 0.0, 1.0)),
        last_visit: Some("2026-06-02T02:14:00Z".to_owned()),
        due_h: Some(2.4),
        answer: Some(Said::NotShown {}),
    }];
    findings.visit = Some(visit);
    findings.silences[0].place = Some(Place::new(-11.0, 6.5));
    findings.silences[0].bridged_m2 = Some(3.5);
    let coverage = findings.coverage.as_mut().unwrap();
    let share = coverage.visited_fraction.estimate;
    coverage.reachable_m2 = Some(coverage.lawn_m2 - 20.0);
    coverage.visited_fraction = between(share, share - 0.004, share + 0.003);
    coverage.lawns[0].visited_fraction = coverage.visited_fraction;
    coverage.realisations = 40;
    coverage.as_logged_differs = Some(Said::AsLoggedSpread {
        as_logged_fraction: coverage.as_logged_fraction,
        error_m: 0.02,
    });
    findings.by_width = Some(
        (17..=35)
            .map(|width_cm| WidthRow {
                cut_width_m: f64::from(width_cm) / 100.0,
                visited_fraction: between(0.7 + f64::from(width_cm) / 200.0, 0.7, 0.9),
            })
            .collect(),
    );
    let revisits = findings.revisits.as_mut().unwrap();
    revisits.interval_h = IntervalQuantiles {
        p50: Some(2.4),
        p90: Some(6.5),
        p99: Some(7.9),
    };
    revisits.overdue_fraction = Some(0.02);
    let over_time = findings.over_time.as_mut().unwrap();
    over_time.hours_to_95 = Some(14.0);
    over_time.hours_to_99 = Some(31.0);
    over_time.promise = Promise {
        verdict: PromiseVerdict::Broken,
        probability: Some(0.02),
    };
    let pocket = &mut findings.missed_pockets[0];
    pocket.certainty = Some(0.99);
    pocket.why = Said::StuckOnTheWayPast {
        times: 7,
        lost_min: 19.5,
        past: 31,
        at_least: Whether::No,
    };
    pocket.causes = Some(vec![
        CauseFindings {
            cause: Cause::BeyondStuckSpot,
            rank: 1,
            certainty_fraction: Some(0.8),
            evidence_for: vec![Said::StopsOnTheWay {
                stops: 7,
                lost_min: 19.5,
                passes: 31,
            }],
            evidence_against: vec![Said::AlsoBehindPassage { width_m: 2.0 }],
        },
        CauseFindings {
            cause: Cause::NarrowPassage,
            rank: 2,
            certainty_fraction: Some(0.2),
            evidence_for: vec![Said::PassageWidth {
                width_m: 2.0,
                free_m: 1.5,
                length_m: 4.0,
            }],
            evidence_against: Vec::new(),
        },
    ]);
    pocket.next_look = Some(Said::LookDecides {
        look: NextLook::StuckSpot,
        log_h: 16.0,
        told_fraction: 0.4,
    });
    pocket.suggestion_ids = vec!["G1".to_owned()];
    findings.missed_pockets[1].certainty = Some(0.97);
    findings.missed_pockets[1].causes = Some(Vec::new());
    findings.missed_pockets[1].next_look = Some(Said::LookDecides {
        look: NextLook::AnotherLog,
        log_h: 8.0,
        told_fraction: 0.8,
    });
    findings.unseen = Some(vec![UnseenGround {
        id: "U1".to_owned(),
        area_m2: 3.5,
        outline: vec![
            [
                (-18.0, -4.0),
                (-16.0, -4.2),
                (-15.8, -2.5),
                (-18.1, -2.4),
                (-18.0, -4.0),
            ]
            .map(|(east_m, north_m)| Place::new(east_m, north_m))
            .to_vec(),
        ],
        why: Said::HiddenBySilence { chance_fraction: 0.3 },
    }]);
    findings.worn_lines = Some(vec![WornLine {
        id: "W1".to_owned(),
        line: vec![
            Place::new(-4.0, -12.0),
            Place::new(-4.0, -8.0),
            Place::new(4.0, -4.0),
        ],
        times_mean: 4.1,
        length_m: 12.9,
        most_visits: 31,
    }]);
    findings.strays = Some(vec![Stray {
        id: "X1".to_owned(),
        start_s: 12_000.0,
        duration_s: 40.0,
        farthest_m: 1.2,
        east_m: 21.0,
        north_m: 3.0,
        came_back: true,
    }]);
    findings.suggestions = Some(vec![Suggestion {
        id: "G1".to_owned(),
        kind: SuggestionKind::GuideRun,
        why: Said::LayGuideRun {
            wire_m: 9.4,
            outings_of_ten: 3,
            pocket: "M1".to_owned(),
            longer: Whether::Yes,
            added_h: 1.5,
            log_h: 8.0,
            before_fraction: 0.02,
            after_fraction: 0.81,
        },
        geometry: vec![
            Place::new(12.0, -0.8),
            Place::new(16.0, -1.0),
            Place::new(20.0, -3.5),
        ],
        feature: Some(2),
        wire_m: Some(9.4),
        outing_share_fraction: Some(0.33),
        side: Some(Said::AlsoBehindPassage { width_m: 2.0 }),
        pocket_ids: vec!["M1".to_owned()],
        ladder: Some(vec![Rung {
            size_m: Some(0.4),
            outing_share_fraction: Some(0.25),
            added_h_per_day: Some(0.5),
            pocket_fraction_after: between(0.55, 0.4, 0.7),
            lawn_gain_fraction: Some(-0.002),
        }]),
        shift_m: Some(0.4),
        added_h_per_day: Some(1.5),
        together_with: vec!["G2".to_owned()],
        pocket_fraction_in_log: 0.0,
        predicted: Predicted {
            visited_fraction_before: between(share, share - 0.01, share + 0.01),
            visited_fraction_after: between(share + 0.05, share + 0.03, share + 0.06),
            pocket_fraction_before: between(0.02, 0.0, 0.06),
            pocket_fraction_after: between(0.81, 0.66, 0.9),
        },
        certainty: Some(0.86),
        shown_after_h: Some(9.0),
        done_after_h: Some(17.5),
        cautions: vec![Said::Dig {}],
    }]);
    findings.change_set = vec![SetStep {
        id: "G1".to_owned(),
        gained_m2: 5.5,
        pockets_fraction_after: between(0.81, 0.66, 0.9),
        visited_fraction_after: between(share + 0.05, share + 0.03, share + 0.06),
    }];
    findings.possible_stops = Some(possible_stops());
    findings.installation = Some(installation());
    findings.nights = Some(nights());
    findings.fit = Some(fit());
    findings.reference = Some(reference());
    findings
}

/// A log in local metres, without geographic coordinates.
pub(crate) fn local_findings() -> Findings {
    let mut findings = findings();
    findings.frame = FrameFindings {
        origin_lat: None,
        origin_lon: None,
    };
    findings.plan = None;
    for pocket in &mut findings.missed_pockets {
        (pocket.lat, pocket.lon) = (None, None);
    }
    for pocket in &mut findings.not_yet {
        (pocket.lat, pocket.lon) = (None, None);
    }
    for spot in &mut findings.stuck_spots {
        (spot.lat, spot.lon) = (None, None);
    }
    findings
}

/// A log without a cutting width: no coverage, no squares.
pub(crate) fn findings_without_width() -> Findings {
    let full = full_findings();
    Findings {
        coverage: None,
        revisits: None,
        over_time: None,
        missed_pockets: Vec::new(),
        not_yet: Vec::new(),
        suggestions: None,
        change_set: Vec::new(),
        cells: None,
        ..full
    }
}

/// Everything null that may be null, every list empty.
pub(crate) fn bare_findings() -> Findings {
    let mut findings = local_findings();
    findings.settings = Settings::default();
    findings.inputs.clear();
    findings.log_verdict.remarks.clear();
    findings.log_verdict.level = LogLevel::Unusable;
    findings.log_verdict.positions = LogLevel::Unusable;
    findings.log_verdict.duration = LogLevel::Unusable;
    let span = &mut findings.span;
    *span = Span {
        start: None,
        end: None,
        start_unix_s: None,
        at_station_s: None,
        speed_mps: None,
        outings: None,
        ..span.clone()
    };
    findings.silences.clear();
    findings.machines.clear();
    findings.positions = PositionFindings {
        white_m: None,
        filtered_m: None,
        filtered_time_s: None,
        tails: None,
        drift_m: None,
        drift_time_s: None,
        source: NoiseSource::Default,
        steps: Vec::new(),
        anchored: None,
    };
    Findings {
        coverage: None,
        revisits: None,
        over_time: None,
        missed_pockets: Vec::new(),
        not_yet: Vec::new(),
        stuck_spots: Vec::new(),
        cautions: Vec::new(),
        lawn_outline: Vec::new(),
        driven_lines: Vec::new(),
        cells: None,
        ..findings
    }
}

/// Text that tries everything.
pub(crate) const HOSTILE: &str =
    "</script><script>alert(1)</script>\" onload='x' {{ 7*7 }} \u{1b}[2J\u{202e}gpj.\u{0}\u{7}&amp;]]><!--";

/// Hostile text in every place that comes from outside.
pub(crate) fn hostile_findings() -> Findings {
    let mut findings = full_findings();
    let long = format!("{HOSTILE}{}", "A".repeat(1 << 20));
    let hostile = || HOSTILE.to_owned();
    let said = || Said::PlanFault { fault: hostile() };
    findings.tool_version = hostile();
    findings.settings.garden.name = Some(long.clone());
    findings.settings.garden.remarks = Some(long.clone());
    findings.settings.garden.time_zone = Some(hostile());
    findings.span.start = Some(hostile());
    findings.machines[0].id = hostile();
    let facts = &mut findings.inputs[0].facts;
    facts.name = long;
    facts.made_by = Some(hostile());
    facts.machine = hostile();
    facts.sha256 = hostile();
    facts.places[0].excerpt = hostile();
    facts.notices[0].said = said();
    findings.log_verdict.advice = said();
    findings.log_verdict.remarks = vec![said()];
    for feature in &mut findings.plan.as_mut().unwrap().features {
        feature.name = hostile();
    }
    findings.coverage.as_mut().unwrap().lawns[0].name = hostile();
    for pocket in &mut findings.missed_pockets {
        pocket.id = hostile();
        pocket.why = said();
        pocket.tape[0].from = hostile();
        pocket.tape[0].landmark = Some(said());
        for cause in pocket.causes.iter_mut().flatten() {
            cause.evidence_for = vec![said()];
            cause.evidence_against = vec![said()];
        }
    }
    findings.not_yet[0].id = hostile();
    findings.not_yet[0].tape[0].from = hostile();
    findings.not_yet[0].tape[0].landmark = Some(said());
    findings.stuck_spots[0].id = hostile();
    findings.stuck_spots[0].why = said();
    findings.unseen.as_mut().unwrap()[0].why = said();
    findings.worn_lines.as_mut().unwrap()[0].id = hostile();
    let suggestion = &mut findings.suggestions.as_mut().unwrap()[0];
    suggestion.id = hostile();
    suggestion.why = said();
    suggestion.cautions = vec![said()];
    suggestion.pocket_ids = vec![hostile()];
    findings.cautions = vec![said()];
    findings
}

/// Two checks that do not hold and one that does.
fn checks() -> Vec<Check> {
    let edge = Said::EdgeInside {
        edge_deg: 2.0,
        offset_m: 0.4,
        turns: 21,
    };
    let both = Said::IntervalHoldsBoth {
        one_fraction: 0.955,
        other_fraction: 0.931,
    };
    let within = |most: f64| (Some(-most), Some(most));
    vec![
        Check::of(CheckKind::TurnsAtEdges, 2.6, within(1.0), edge),
        Check::of(CheckKind::CellSum, -0.024, within(0.01), both.clone()),
        Check::of(CheckKind::AsLogged, 0.006, within(0.01), both),
    ]
}

/// An inspection of the invented log.
pub(crate) fn inspection() -> Inspection {
    let mut findings = findings();
    findings.log_verdict.hours_more_needed = Some(3.5);
    Inspection {
        schema_version: SCHEMA_VERSION,
        tool_version: findings.tool_version,
        inputs: findings.inputs,
        log_verdict: findings.log_verdict,
        checks: checks(),
        span: findings.span,
        positions: findings.positions,
        extent_m: (46.2, 25.9),
        middle: Some(GeoPoint {
            lat_deg: ORIGIN_LAT,
            lon_deg: ORIGIN_LON,
        }),
        plan_fit: findings.plan_fit,
        machines: findings.machines,
        silences: findings.silences,
        qualities: vec![(FixQuality::RtkFixed, 28_100), (FixQuality::RtkFloat, 690)],
        hdop: Some((0.7, 1.1)),
        repeated_positions: 12,
    }
}

/// Ground that is circled and never entered.
fn island() -> UnlistedIsland {
    UnlistedIsland {
        id: "I1".to_owned(),
        lat: Some(53.1),
        lon: Some(12.2),
        east_m: 1.3,
        north_m: 1.3,
        area_m2: 1.2,
        outline: vec![Place::new(1.0, 1.0), Place::new(2.0, 1.0), Place::new(1.0, 1.0)],
    }
}
