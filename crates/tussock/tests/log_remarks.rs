//! What the verdict remarks about clocks, held positions and digits.

use crate::nights::{job, logged, of_width};
use std::fmt::Write;
use time::macros::datetime;
use tussock::{Job, inspect};
use tussock_ingest::{ReadOptions, read_log};
use tussock_plane::{Frame, Site};
use tussock_simulate::gardens::{GardenKind, Wish, invent_as};
use tussock_simulate::{LogNoise, Machine, Run, simulate};
use tussock_types::{
    Findings, Fix, FixQuality, GeoPoint, LogFacts, LogLevel, LogVerdict, Place, Plan, PromiseVerdict, Said,
    Settings, Trace, Whether,
};

const SPEED_MPS: f64 = 0.4;
const LANE_M: f64 = 20.0;
const HOUR_S: f64 = 3600.0;
/// Monday, ten past eight.
const MONDAY_S: f64 = datetime!(2026-05-04 08:10 UTC).unix_timestamp() as f64;

/// Up and down lanes of half a metre, one fix a second.
fn lanes(start_s: f64, duration_s: f64) -> Vec<(f64, Place)> {
    (0..duration_s as u32)
        .map(|second| {
            let path_m = f64::from(second) * SPEED_MPS;
            let lane = (path_m / LANE_M).floor();
            let along_m = path_m - lane * LANE_M;
            let north_m = if lane % 2.0 == 0.0 {
                along_m
            } else {
                LANE_M - along_m
            };
            // Out and back again, so that nothing jumps.
            let out = (lane % 120.0).min(120.0 - lane % 120.0);
            (start_s + f64::from(second), Place::new(0.5 * out, north_m))
        })
        .collect()
}

fn trace(places: &[(f64, Place)], speed_mps: f32) -> Trace {
    let frame = Frame::at(GeoPoint {
        lat_deg: 52.0,
        lon_deg: 5.0,
    });
    let mut trace = Trace::geographic("machine-1");
    for (time_s, place) in places {
        let geo = frame.to_geo(*place);
        trace.push(Fix {
            quality: FixQuality::RtkFixed,
            speed_mps,
            ..Fix::bare(*time_s, geo.lat_deg, geo.lon_deg)
        });
    }
    trace
}

fn verdict(trace: &Trace, inputs: &[LogFacts], settings: &Settings) -> LogVerdict {
    let job = Job {
        inputs,
        ..job(std::slice::from_ref(trace), None, settings)
    };
    inspect(&job).expect("the log is sound").log_verdict
}

/// The first remark of a kind.
macro_rules! remark {
    ($verdict:expr, $kind:pat) => {
        $verdict
            .remarks
            .iter()
            .find(|said| matches!(said, $kind))
            .cloned()
    };
}

/// Mondays from eight to noon in summer time, and rest on all other days.
fn mondays() -> Settings {
    let mut settings = Settings::default();
    settings.garden.time_zone = Some("+02:00".to_owned());
    let hours = &mut settings.hours;
    hours.monday = Some(vec!["08:00-12:00".to_owned()]);
    for day in [
        &mut hours.tuesday,
        &mut hours.wednesday,
        &mut hours.thursday,
        &mut hours.friday,
        &mut hours.saturday,
        &mut hours.sunday,
    ] {
        *day = Some(Vec::new());
    }
    settings
}

/// The remark about driving in hours of rest.
fn at_rest(trace: &Trace, settings: &Settings) -> Option<Said> {
    remark!(
        verdict(trace, &[], settings),
        Said::DrivesAtRest { .. } | Said::DrivesAtRestShifted { .. }
    )
}

#[test]
fn local_time_labelled_z_shows_as_driving_at_hours_of_rest() {
    // Ten past eight to ten past eleven by the clock on the wall, written as UTC: in +02:00 that would end at 13:10.
    let labelled = trace(&lanes(MONDAY_S, 3.0 * HOUR_S), f32::NAN);
    let said = at_rest(&labelled, &mondays()).expect("seventy minutes fall in the rest");
    let Said::DrivesAtRestShifted {
        rest_min,
        shift_h,
        later,
        local_time,
        ..
    } = said
    else {
        panic!("{said:?}")
    };
    assert!((rest_min - 70.0).abs() <= 1.0, "{rest_min}");
    assert_eq!((shift_h, later, local_time), (2.0, Whether::No, Whether::Yes));
}

#[test]
fn the_same_drive_in_utc_gives_no_remark() {
    let right = trace(&lanes(MONDAY_S - 2.0 * HOUR_S, 3.0 * HOUR_S), f32::NAN);
    assert_eq!(at_rest(&right, &mondays()), None);
}

#[test]
fn driving_on_a_day_of_rest_is_said_to_fit_no_shift() {
    let wednesday_s = MONDAY_S + 48.0 * HOUR_S;
    let wrong = trace(&lanes(wednesday_s, 2.0 * HOUR_S), f32::NAN);
    let said = at_rest(&wrong, &mondays()).expect("two hours fall in the rest");
    assert!(matches!(said, Said::DrivesAtRest { .. }), "{said:?}");
}

#[test]
fn of_weekdays_without_hours_nothing_is_said() {
    let mut settings = mondays();
    settings.hours.wednesday = None;
    let driven = trace(&lanes(MONDAY_S + 48.0 * HOUR_S, 2.0 * HOUR_S), f32::NAN);
    assert_eq!(at_rest(&driven, &settings), None);
    assert_eq!(at_rest(&driven, &Settings::default()), None);
}

/// Drives for ten minutes, stands for five, again and again; `wander_m` is how far apart fixes at rest are.
fn with_rests(wander_m: f64) -> Vec<(f64, Place)> {
    let mut out: Vec<(f64, Place)> = Vec::new();
    for part in 0..6 {
        let driven = lanes(0.0, 600.0);
        let from_s = MONDAY_S + f64::from(part) * 900.0;
        out.extend(driven.iter().map(|(time_s, place)| (from_s + time_s, *place)));
        let last = driven.last().expect("it drives").1;
        out.extend((0..300_u32).map(|second| {
            let east_m = wander_m * f64::from(second % 7);
            let place = Place::new(last.east_m + east_m, last.north_m);
            (from_s + 600.0 + f64::from(second), place)
        }));
    }
    out
}

#[test]
fn a_position_that_is_held_while_the_machine_stands_is_remarked() {
    let held = trace(&with_rests(0.0), f32::NAN);
    let of = |trace| {
        remark!(
            verdict(trace, &[], &Settings::default()),
            Said::PositionsHeld { .. } | Said::PositionsRepeated { .. }
        )
    };
    let said = of(&held).expect("five minutes are held");
    // A third of the time it stands.
    let Said::PositionsHeld {
        repeated_fraction,
        longest_s,
    } = said
    else {
        panic!("{said:?}")
    };
    assert!((repeated_fraction - 0.333).abs() < 0.005, "{repeated_fraction}");
    assert!((longest_s - 300.0).abs() < 0.5, "{longest_s}");
    assert_eq!(of(&trace(&with_rests(0.004), f32::NAN)), None);
}

#[test]
fn a_position_that_is_repeated_while_the_machine_drives_is_remarked() {
    let mut places = lanes(MONDAY_S, HOUR_S);
    for index in (1..places.len()).step_by(2) {
        places[index].1 = places[index - 1].1;
    }
    let repeated = trace(&places, SPEED_MPS as f32);
    let verdict = verdict(&repeated, &[], &Settings::default());
    let Some(Said::PositionsRepeated {
        repeated_fraction, ..
    }) = remark!(verdict, Said::PositionsRepeated { .. })
    else {
        panic!("half are repeats: {:?}", verdict.remarks)
    };
    assert!((repeated_fraction - 0.5).abs() < 0.005, "{repeated_fraction}");
}

/// RMC and GGA of the lanes, with this many decimals of a minute.
fn nmea(decimals: usize) -> String {
    let frame = Frame::at(GeoPoint {
        lat_deg: 52.0,
        lon_deg: 5.0,
    });
    let angle = |deg: f64, width: usize| {
        let whole = deg.floor();
        let minutes = 60.0 * (deg - whole);
        format!("{whole:0width$}{minutes:0wide$.decimals$}", wide = decimals + 3)
    };
    let mut log = String::new();
    for (time_s, place) in lanes(MONDAY_S, HOUR_S) {
        let geo = frame.to_geo(Place::new(place.east_m + 5.0, place.north_m + 5.0));
        let second = (time_s - MONDAY_S) as u32 + 490 * 60;
        let time = format!("{:02}{:02}{:02}.00", second / 3600, second / 60 % 60, second % 60);
        let (lat, lon) = (angle(geo.lat_deg, 2), angle(geo.lon_deg, 3));
        for body in [
            format!("GNRMC,{time},A,{lat},N,{lon},E,0.8,,040526,,,R"),
            format!("GNGGA,{time},{lat},N,{lon},E,4,18,0.6,10.0,M,40.0,M,1.0,0001"),
        ] {
            let sum = body.bytes().fold(0, |sum, byte| sum ^ byte);
            let _ = writeln!(log, "${body}*{sum:02X}\r");
        }
    }
    log
}

#[test]
fn four_decimals_of_a_minute_are_18_cm_and_part_of_the_verdict() {
    let judged = |decimals| {
        let file =
            read_log("log.nmea", nmea(decimals).as_bytes(), &ReadOptions::default()).expect("a sound log");
        let mut settings = Settings::default();
        settings.pockets.min_width_m = 0.7;
        verdict(&file.trace, &[file.facts], &settings)
    };
    let (coarse, fine) = (judged(4), judged(6));
    // 1e-4 minutes of latitude at 52 degrees are 0.185446 m (meridian radius of WGS 84, EPSG 7030, GEO-19).
    assert!(coarse.smallest_findable_width_m >= 4.0 * 0.185, "{coarse:?}");
    assert_eq!(
        (coarse.positions, fine.positions),
        (LogLevel::Limited, LogLevel::Good),
        "{coarse:?} {fine:?}"
    );
}

mod claims {
    use super::*;
    use tussock_plane::Site;
    use tussock_simulate::gardens::{GardenKind, invent};
    use tussock_simulate::{LogNoise, Machine, Run, simulate};

    const SEED: u64 = 640;

    fn night(noise: LogNoise) -> Trace {
        let (site, _) = Site::build(&invent(GardenKind::Convex, SEED)).expect("invented plans are sound");
        let run = simulate(&site, &Machine::default(), &Run::new(4.0, SEED)).expect("there is room");
        logged(&run, &site, 1.0, noise, SEED)
    }

    fn said(trace: &Trace) -> Option<Said> {
        remark!(
            verdict(trace, &[], &Settings::default()),
            Said::ClaimTooGood { .. } | Said::RtkFixedTooGood { .. }
        )
    }

    #[test]
    fn a_receiver_that_claims_a_centimetre_and_scatters_by_metres_is_told_so() {
        let mut trace = night(LogNoise::METRES);
        assert_eq!(said(&trace), None, "its own claim is honest");
        trace.claimed_sd_m.fill(0.01);
        let said = said(&trace).expect("metres are no centimetre");
        let Said::ClaimTooGood { claimed_m, scatter_m } = said else {
            panic!("{said:?}")
        };
        assert!((claimed_m - 0.01).abs() < 1e-6, "{claimed_m}");
        // True: 2.02 m; four hours hold some fifty drift times.
        assert!((1.3..2.8).contains(&scatter_m), "{scatter_m}");
    }

    #[test]
    fn fixes_called_rtk_fixed_that_scatter_by_decimetres_are_no_rtk_fixes() {
        let mut trace = night(LogNoise::DECIMETRES);
        trace.claimed_sd_m.fill(f32::NAN);
        trace.quality.fill(tussock_types::FixQuality::RtkFixed);
        let said = said(&trace).expect("decimetres are no centimetre");
        assert!(matches!(said, Said::RtkFixedTooGood { .. }), "{said:?}");
    }

    #[test]
    fn an_honest_centimetre_log_is_left_in_peace() {
        assert_eq!(said(&night(LogNoise::CENTIMETRES)), None);
    }
}

#[test]
fn a_silence_that_ends_where_it_began_is_a_possible_stop() {
    // Lanes for an hour, twenty minutes of silence on the spot, lanes again.
    let mut before = lanes(MONDAY_S, HOUR_S);
    let last = *before.last().expect("an hour of fixes");
    let later_s = last.0 + 1200.0;
    let after: Vec<_> = lanes(MONDAY_S, HOUR_S)
        .into_iter()
        .rev()
        .enumerate()
        .map(|(number, fix)| (later_s + number as f64, fix.1))
        .collect();
    before.extend(after);
    let trace = trace(&before, f32::NAN);
    let settings = of_width(0.22);
    let findings =
        tussock::analyse(&job(std::slice::from_ref(&trace), None, &settings)).expect("the log is sound");
    let stops = findings.possible_stops.expect("they were looked for");
    assert_eq!(stops.len(), 1, "{stops:?}");
    assert!((stops[0].most_minutes - 20.0).abs() < 0.1, "{stops:?}");
    assert!((stops[0].start_s - (last.0 - MONDAY_S)).abs() < 1.0, "{stops:?}");
}

const GARDEN_SEED: u64 = 19;
const RUN_SEED: u64 = 191;
const LOG_SEED: u64 = 1919;

/// A log of this many hours in an invented garden, and its plan.
fn driven(hours: f64, noise: LogNoise) -> (Plan, Trace) {
    let plan = invent_as(&Wish::new(GardenKind::Convex), GARDEN_SEED).plan;
    let (site, _) = Site::build(&plan).expect("an invented plan is sound");
    let run = simulate(&site, &Machine::default(), &Run::new(hours, RUN_SEED)).expect("it drives");
    let log = logged(&run, &site, 1.0, noise, LOG_SEED);
    (plan, log)
}

/// The verdicts of `inspect` and `analyse` on the same log.
fn both(trace: &Trace, plan: Option<&Plan>, settings: &Settings) -> (LogVerdict, Findings) {
    let job = job(std::slice::from_ref(trace), plan, settings);
    (
        inspect(&job).expect("the log is sound").log_verdict,
        tussock::analyse(&job).expect("the log is sound"),
    )
}

fn width_given() -> Settings {
    let mut settings = Settings::default();
    settings.machine.cut_width_m = Some(0.22);
    settings
}

#[test]
fn a_short_log_with_good_positions_says_yes_and_how_many_hours_are_missing() {
    let (plan, trace) = driven(2.0, LogNoise::CENTIMETRES);
    let (inspected, findings) = both(&trace, Some(&plan), &width_given());
    let verdict = &findings.log_verdict;
    assert_eq!(verdict.positions, LogLevel::Good);
    assert_eq!(verdict.duration, LogLevel::Limited);
    assert_eq!(verdict.level, LogLevel::Limited);
    let hours = verdict.hours_more_needed.expect("hours would do");
    // As many hours more, and the same law calls it enough.
    let (_, longer) = both(
        &driven(3.0 + 1.6 * hours, LogNoise::CENTIMETRES).1,
        Some(&plan),
        &width_given(),
    );
    assert_eq!(longer.log_verdict.duration, LogLevel::Good, "{hours} h more");
    assert_eq!(
        (
            inspected.level,
            inspected.hours_more_needed,
            inspected.smallest_findable_width_m
        ),
        (
            verdict.level,
            verdict.hours_more_needed,
            verdict.smallest_findable_width_m
        )
    );
    assert!(
        remark!(verdict, Said::DroveTooShortBy { .. }).is_some(),
        "{:?}",
        verdict.remarks
    );
}

#[test]
fn minutes_of_driving_a_stand_and_a_walk_are_never_good_enough() {
    let unusable = |places: &[(f64, Place)]| {
        let (inspected, findings) = both(&trace(places, f32::NAN), None, &width_given());
        assert_eq!(inspected.level, LogLevel::Unusable, "{inspected:?}");
        assert_eq!(findings.log_verdict.level, LogLevel::Unusable, "{inspected:?}");
        assert!(findings.missed_pockets.is_empty());
        inspected
    };
    let short = unusable(&lanes(MONDAY_S, 300.0));
    let said = remark!(short, Said::DroveTooShort { .. } | Said::DroveTooShortBy { .. });
    assert!(said.is_some(), "{short:?}");
    let walked: Vec<(f64, Place)> = lanes(MONDAY_S, 4.0 * HOUR_S)
        .into_iter()
        .map(|(time_s, place)| (MONDAY_S + (time_s - MONDAY_S) / 3.5, place))
        .collect();
    let advice = unusable(&walked).advice;
    assert!(matches!(advice, Said::WalkingPace { .. }), "{advice:?}");
}

#[test]
fn a_jump_of_the_receiver_is_taken_off_and_named() {
    let mut places = lanes(MONDAY_S, 4.0 * HOUR_S);
    let unjumped = both(&trace(&places, f32::NAN), None, &width_given()).1;
    // Half way along a lane: in the turns of these lanes the machine itself jumps by half a metre.
    places[7225..]
        .iter_mut()
        .for_each(|(_, place)| place.north_m += 6.0);
    let (inspected, findings) = both(&trace(&places, f32::NAN), None, &width_given());
    // What the machine drove while it jumped stays unsure.
    assert!(inspected.smallest_findable_width_m < 2.0, "{inspected:?}");
    let Some(Said::ReceiverJumped { size_m, time }) = remark!(inspected, Said::ReceiverJumped { .. }) else {
        panic!("{inspected:?}")
    };
    assert!(
        (size_m - 6.0).abs() < 0.5 && time.starts_with("2026-05-04T"),
        "{size_m} {time}"
    );
    let [step] = &findings.positions.steps[..] else {
        panic!("{:?}", findings.positions)
    };
    assert!((step.north_m - 6.0).abs() < 0.5);
    let span = &findings.span;
    assert_eq!((span.fixes_read, span.fixes_used), (14_400, 14_400));
    assert!(span.fixes_left_out.is_empty());
    // The visited fraction equals that without the jump; counted as logged, half of the ground would be elsewhere.
    let seen = [&findings, &unjumped].map(|found| found.coverage.as_ref().expect("it drove"));
    let [jumped, plain] = seen.map(|coverage| coverage.visited_fraction.estimate);
    assert!((jumped - plain).abs() < 0.01, "{jumped} {plain}");
    let [jumped_m2, plain_m2] = seen.map(|coverage| coverage.lawn_m2);
    assert!(
        (jumped_m2 / plain_m2 - 1.0).abs() < 0.02,
        "{jumped_m2} {plain_m2}"
    );
}

#[test]
fn without_an_outline_no_promise_is_kept() {
    let (plan, trace) = driven(30.0, LogNoise::CENTIMETRES);
    let promise = |plan| {
        both(&trace, plan, &width_given())
            .1
            .over_time
            .expect("a width was given")
            .promise
    };
    assert_eq!(promise(Some(&plan)).verdict, PromiseVerdict::Kept);
    assert_eq!(promise(None).verdict, PromiseVerdict::CannotTell);
}

/// A corner that the machine never entered and that is not in the plan, at metre grade: either it is found, or no claim is
/// made about its width.
#[test]
fn a_bare_corner_is_found_or_nothing_is_said_of_its_width() {
    /// Errors at the corner's rim may take this much of it.
    const RIM: f64 = 0.9;
    let place = |east_m: f64, north_m: f64| {
        let frame = Frame::at(GeoPoint {
            lat_deg: 52.0,
            lon_deg: 5.0,
        });
        let geo = frame.to_geo(Place::new(east_m, north_m));
        serde_json::json!([geo.lon_deg, geo.lat_deg])
    };
    let ring = |low: (f64, f64), high: (f64, f64)| {
        let corners = [
            (low.0, low.1),
            (high.0, low.1),
            (high.0, high.1),
            (low.0, high.1),
            (low.0, low.1),
        ];
        let ring: Vec<_> = corners
            .iter()
            .map(|(east_m, north_m)| place(*east_m, *north_m))
            .collect();
        serde_json::json!({"type": "Polygon", "coordinates": [ring]})
    };
    let feature = |role: &str, geometry| serde_json::json!({"type": "Feature", "properties": {"role": role}, "geometry": geometry});
    let plan = |bare_m: Option<f64>| {
        let mut features = vec![
            feature("lawn", ring((0.0, 0.0), (30.0, 22.0))),
            feature(
                "station",
                serde_json::json!({"type": "Point", "coordinates": place(1.0, 11.0)}),
            ),
        ];
        features.extend(
            bare_m.map(|bare_m| feature("exclusion", ring((30.0 - bare_m, 22.0 - bare_m), (30.5, 22.5)))),
        );
        let text = serde_json::json!({"type": "FeatureCollection", "features": features}).to_string();
        tussock_ingest::read_plan("plan", text.as_bytes(), &Settings::default().limits)
            .expect("a sound plan")
            .plan
    };
    for (number, bare_m) in [4.0, 5.0, 6.0].into_iter().enumerate() {
        let (site, _) = Site::build(&plan(Some(bare_m))).expect("a sound plan");
        let seed = RUN_SEED + number as u64;
        let run = simulate(&site, &Machine::default(), &Run::new(16.0, seed)).expect("it drives");
        let log = logged(&run, &site, 1.0, LogNoise::METRES, LOG_SEED);
        let findings = both(&log, Some(&plan(None)), &width_given()).1;
        let claimed_m = findings.log_verdict.smallest_findable_width_m;
        assert!(
            !findings.missed_pockets.is_empty() || claimed_m >= RIM * bare_m,
            "a corner of {bare_m} m is bare, and nothing is missed from {claimed_m} m up"
        );
    }
}

#[test]
fn stays_at_a_station_that_a_jump_moved_are_no_stuck_spots() {
    let (plan, mut trace) = driven(9.0, LogNoise::CENTIMETRES);
    let half = trace.len() / 2;
    let tussock_types::Positions::Geographic { lat_deg, .. } = &mut trace.positions else {
        panic!("on Earth")
    };
    // Four metres north.
    lat_deg[half..]
        .iter_mut()
        .for_each(|lat_deg| *lat_deg += 4.0 / 111_200.0);
    let findings = both(&trace, Some(&plan), &width_given()).1;
    assert_eq!(findings.positions.steps.len(), 1);
    assert!(findings.stuck_spots.is_empty(), "{:?}", findings.stuck_spots);
    // What a jump may have moved is in the interval.
    let truth = both(&driven(9.0, LogNoise::CENTIMETRES).1, Some(&plan), &width_given()).1;
    let fraction = |findings: &Findings| {
        findings
            .coverage
            .as_ref()
            .expect("a width was given")
            .visited_fraction
    };
    let (moved, still) = (fraction(&findings), fraction(&truth).estimate);
    assert!(
        moved.low.is_some_and(|low| low < still) && moved.high.is_some_and(|high| high > still),
        "{moved:?}"
    );
}

#[test]
fn a_log_of_the_last_century_says_that_its_clock_is_wrong() {
    let old: Vec<(f64, Place)> = lanes(datetime!(1999-08-22 00:00 UTC).unix_timestamp() as f64, HOUR_S);
    let said = verdict(&trace(&old, f32::NAN), &[], &Settings::default());
    let date = "1999-08-22".to_owned();
    assert!(
        said.remarks.contains(&Said::DateTooOld { date }),
        "{:?}",
        said.remarks
    );
    let today = verdict(
        &trace(&lanes(MONDAY_S, HOUR_S), f32::NAN),
        &[],
        &Settings::default(),
    );
    assert_eq!(remark!(today, Said::DateTooOld { .. }), None);
}
