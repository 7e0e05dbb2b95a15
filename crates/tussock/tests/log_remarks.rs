//! What the verdict remarks of clocks, held positions and digits.

use std::fmt::Write;
use time::macros::datetime;
use tussock::{Job, inspect};
use tussock_ingest::{ReadOptions, read_log};
use tussock_plane::Frame;
use tussock_types::{Fix, FixQuality, GeoPoint, LogFacts, LogVerdict, Place, Settings, Trace};

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
        traces: std::slice::from_ref(trace),
        inputs,
        plan: None,
        settings,
        seed: 1,
        advice: tussock::Advice::LeftOut,
        progress: None,
    };
    inspect(&job).expect("the log is sound").log_verdict
}

fn remark(verdict: &LogVerdict, words: &str) -> Option<String> {
    verdict
        .remarks
        .iter()
        .find(|remark| remark.contains(words))
        .cloned()
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

const REST: &str = "hours at which the settings let the machine rest";

#[test]
fn local_time_labelled_z_shows_as_driving_at_hours_of_rest() {
    // Ten past eight to ten past eleven by the clock on the wall, written as UTC: in +02:00 that would end at 13:10.
    let labelled = trace(&lanes(MONDAY_S, 3.0 * HOUR_S), f32::NAN);
    let said = remark(&verdict(&labelled, &[], &mondays()), REST).expect("seventy minutes fall in the rest");
    let minutes: f64 = said
        .split(' ')
        .next()
        .and_then(|word| word.parse().ok())
        .expect("a number leads");
    assert!((minutes - 70.0).abs() <= 1.0, "{said}");
    assert!(
        said.ends_with("2 h earlier they would fit: the log seems to have local time labelled as UTC."),
        "{said}"
    );
}

#[test]
fn the_same_drive_in_utc_gives_no_remark() {
    let right = trace(&lanes(MONDAY_S - 2.0 * HOUR_S, 3.0 * HOUR_S), f32::NAN);
    assert_eq!(remark(&verdict(&right, &[], &mondays()), REST), None);
}

#[test]
fn driving_on_a_day_of_rest_is_said_to_fit_no_shift() {
    let wednesday_s = MONDAY_S + 48.0 * HOUR_S;
    let wrong = trace(&lanes(wednesday_s, 2.0 * HOUR_S), f32::NAN);
    let said = remark(&verdict(&wrong, &[], &mondays()), REST).expect("two hours fall in the rest");
    assert!(
        said.ends_with("no shift by whole hours makes them fit."),
        "{said}"
    );
}

#[test]
fn of_weekdays_without_hours_nothing_is_said() {
    let mut settings = mondays();
    settings.hours.wednesday = None;
    let driven = trace(&lanes(MONDAY_S + 48.0 * HOUR_S, 2.0 * HOUR_S), f32::NAN);
    assert_eq!(remark(&verdict(&driven, &[], &settings), REST), None);
    assert_eq!(remark(&verdict(&driven, &[], &Settings::default()), REST), None);
}

/// Drives for ten minutes, stands for five, again and again; `wander_m` is how far fixes at rest lie apart.
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
    let said = remark(&verdict(&held, &[], &Settings::default()), "holds its position")
        .expect("five minutes are held");
    // A third of the time it stands.
    assert!(
        said.starts_with("33 %") && said.contains("longest for 300 s"),
        "{said}"
    );
    let free = trace(&with_rests(0.004), f32::NAN);
    assert_eq!(
        remark(&verdict(&free, &[], &Settings::default()), "repeat the position"),
        None
    );
}

#[test]
fn a_position_that_is_repeated_while_the_machine_drives_is_remarked() {
    let mut places = lanes(MONDAY_S, HOUR_S);
    for index in (1..places.len()).step_by(2) {
        places[index].1 = places[index - 1].1;
    }
    let repeated = trace(&places, SPEED_MPS as f32);
    let said =
        remark(&verdict(&repeated, &[], &Settings::default()), "old positions").expect("half are repeats");
    assert!(said.starts_with("50 %"), "{said}");
}

/// RMC and GGA of the lanes, with so many decimals of a minute.
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
        verdict(&file.trace, &[file.facts], &Settings::default())
    };
    let (coarse, fine) = (judged(4), judged(6));
    // 1e-4 minutes of latitude at 52 degrees are 0.185446 m (meridian radius of WGS 84, EPSG 7030, GEO-19).
    assert!(coarse.smallest_findable_width_m >= 4.0 * 0.185, "{coarse:?}");
    assert!(
        fine.smallest_findable_width_m < coarse.smallest_findable_width_m - 0.2,
        "{fine:?} {coarse:?}"
    );
}

mod claims {
    use super::*;
    use tussock_plane::Site;
    use tussock_simulate::gardens::{GardenKind, invent};
    use tussock_simulate::{LogNoise, Machine, Run, Sampling, sample, simulate};

    const SEED: u64 = 640;

    fn night(noise: LogNoise) -> Trace {
        let (site, _) = Site::build(&invent(GardenKind::Convex, SEED)).expect("invented plans are sound");
        let run = simulate(&site, &Machine::default(), &Run::new(4.0, SEED)).expect("there is room");
        sample(&run, &Sampling::geographic(1.0, noise, SEED, site.frame))
    }

    fn said(trace: &Trace) -> Option<String> {
        remark(
            &verdict(trace, &[], &Settings::default()),
            "its positions scatter by",
        )
    }

    #[test]
    fn a_receiver_that_claims_a_centimetre_and_scatters_by_metres_is_told_so() {
        let mut trace = night(LogNoise::METRES);
        assert_eq!(said(&trace), None, "its own claim is honest");
        trace.claimed_sd_m.fill(0.01);
        let words = said(&trace).expect("metres are no centimetre");
        let scatter_m: f64 = words
            .split("scatter by ")
            .nth(1)
            .and_then(|rest| rest.split(' ').next())
            .and_then(|word| word.parse().ok())
            .expect("a figure");
        assert!(words.starts_with("The receiver claims 1 cm, "), "{words}");
        // True: 2.02 m; four hours hold some fifty drift times.
        assert!((1.3..2.8).contains(&scatter_m), "{words}");
    }

    #[test]
    fn fixes_called_rtk_fixed_that_scatter_by_decimetres_are_no_rtk_fixes() {
        let mut trace = night(LogNoise::DECIMETRES);
        trace.claimed_sd_m.fill(f32::NAN);
        trace.quality.fill(tussock_types::FixQuality::RtkFixed);
        let words = said(&trace).expect("decimetres are no centimetre");
        assert!(
            words.starts_with("The receiver calls its fixes RTK fixed, "),
            "{words}"
        );
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
    let mut settings = Settings::default();
    settings.machine.cut_width_m = Some(0.22);
    let findings = tussock::analyse(&Job {
        traces: std::slice::from_ref(&trace),
        inputs: &[],
        plan: None,
        settings: &settings,
        seed: 1,
        advice: tussock::Advice::LeftOut,
        progress: None,
    })
    .expect("the log is sound");
    let stops = findings.possible_stops.expect("they were looked for");
    assert_eq!(stops.len(), 1, "{stops:?}");
    assert!((stops[0].most_minutes - 20.0).abs() < 0.1, "{stops:?}");
    assert!((stops[0].start_s - (last.0 - MONDAY_S)).abs() < 1.0, "{stops:?}");
}
