//! Stays under recorded errors of receivers that smooth their own positions, and none if nothing stands.

use tussock_locate::stays::{Smoothing, change_m, stays};
use tussock_locate::{HaltPlace, Kept, Surroundings, Track, locate};
use tussock_plane::Site;
use tussock_simulate::gardens::{GardenKind, Wish, invent_as};
use tussock_simulate::{LogNoise, Machine, Run, Sampling, TrueRun, sample, simulate};
use tussock_types::{ErrorSeries, Positions, Settings, Trace};

const SEED: u64 = 84;
/// Both ends of a stay are known to within half a window.
const ENDS_S: f64 = 90.0;

fn recorded(text: &str) -> ErrorSeries {
    let mut series = ErrorSeries::default();
    for line in text.lines().skip(1) {
        let row: Vec<f64> = line
            .split(',')
            .map(|cell| cell.parse().expect("a number"))
            .collect();
        series.time_s.push(row[0]);
        series.east_m.push(row[1]);
        series.north_m.push(row[2]);
    }
    series
}

pub(crate) fn phones() -> [ErrorSeries; 2] {
    [
        recorded(include_str!("../../../../fixtures/errors/phone-a.csv")),
        recorded(include_str!("../../../../fixtures/errors/phone-b.csv")),
    ]
}

pub(crate) fn drive(hours: f64) -> (TrueRun, Site) {
    let garden = invent_as(&Wish::new(GardenKind::Convex), SEED);
    let (site, _) = Site::build(&garden.plan).expect("invented plans are sound");
    let run = simulate(&site, &Machine::default(), &Run::new(hours, SEED)).expect("there is room");
    (run, site)
}

pub(crate) fn log(run: &TrueRun, noise: LogNoise, recorded: Option<ErrorSeries>) -> Trace {
    sample(
        run,
        &Sampling {
            recorded,
            ..Sampling::local(1.0, noise, 3)
        },
    )
}

fn kept(trace: &Trace) -> Kept {
    let Positions::Local { east_m, north_m } = &trace.positions else {
        panic!("the trace lies on a plane");
    };
    Kept {
        time_s: trace.time_s.clone(),
        east_m: east_m.clone(),
        north_m: north_m.clone(),
        run: vec![0; trace.len()],
        error_factor: Vec::new(),
    }
}

fn located(trace: &Trace, site: &Site) -> Track {
    let kept = kept(trace);
    locate(
        trace,
        &kept.east_m,
        &kept.north_m,
        Surroundings::of(&Settings::default())
            .on(site.drivable().as_ref())
            .with_station(site.station),
    )
}

#[test]
fn stays_are_found_under_recorded_errors() {
    let (run, _) = drive(8.0);
    for series in phones() {
        let trace = log(&run, LogNoise::NONE, Some(series));
        let start_s = trace.time_s[0];
        let found = stays(&kept(&trace));
        let true_stays = run.stays.iter().filter(|stay| stay.end_s - stay.start_s > 600.0);
        for (stay, found) in true_stays.clone().zip(&found) {
            assert!(
                (found.start_s - start_s - stay.start_s).abs() < ENDS_S,
                "{found:?} for {stay:?}"
            );
            assert!(
                (found.end_s - start_s - stay.end_s).abs() < ENDS_S,
                "{found:?} for {stay:?}"
            );
        }
        assert_eq!(found.len(), true_stays.count());
    }
}

/// No law is assumed: what a first-order drift does within a lag is `sd sqrt(1 - exp(-lag / time))`, on top of the white part.
#[test]
fn what_stays_show_of_the_error_is_its_closed_form() {
    let (run, _) = drive(24.0);
    let noise = LogNoise {
        white_m: 0.1,
        drift_m: 1.0,
        drift_time_s: 100.0,
    };
    let kept = kept(&log(&run, noise, None));
    let stays = stays(&kept);
    for lag_s in [1.0, 10.0, 60.0, 300.0] {
        let law_m = (0.01 + (1.0 - (-lag_s / 100.0_f64).exp())).sqrt();
        let found_m = change_m(&kept, &stays, lag_s).expect("it stands for hours");
        assert!(
            (found_m / law_m - 1.0).abs() < 0.15,
            "{lag_s} s: {found_m} m for {law_m}"
        );
    }
}

#[test]
fn a_drive_without_a_stay_shows_none_whatever_the_error() {
    let (run, _) = drive(0.9);
    for noise in [
        LogNoise::NONE,
        LogNoise::CENTIMETRES,
        LogNoise::DECIMETRES,
        LogNoise::METRES,
    ] {
        let kept = kept(&log(&run, noise, None));
        assert_eq!(Smoothing::of(&kept, &stays(&kept), 1.0), None, "{noise:?}");
    }
}

#[test]
fn precise_receivers_do_not_smooth() {
    let (run, _) = drive(8.0);
    for noise in [LogNoise::CENTIMETRES, LogNoise::DECIMETRES] {
        let kept = kept(&log(&run, noise, None));
        assert_eq!(Smoothing::of(&kept, &stays(&kept), 1.0), None, "{noise:?}");
    }
}

#[test]
fn a_stay_at_the_station_is_nowhere_else_under_recorded_errors() {
    let (run, site) = drive(8.0);
    for series in phones() {
        let track = located(&log(&run, LogNoise::NONE, Some(series)), &site);
        let elsewhere_s: f64 = (track.halts.iter())
            .filter(|halt| halt.at == HaltPlace::Elsewhere)
            .map(|halt| halt.end_s - halt.start_s)
            .sum();
        assert!(elsewhere_s < 180.0, "{:?}", track.halts);
        let speed_mps = track.speed_mps.expect("it drives");
        assert!(
            (speed_mps / Machine::default().speed_mps - 1.0).abs() < 0.06,
            "{speed_mps}"
        );
    }
}
