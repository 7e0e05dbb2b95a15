//! What a receiver shows of itself at rest, and what that is worth in logs that do not show it.

use crate::stays::{drive, log, phones};
use rand::SeedableRng;
use rand_chacha::ChaCha8Rng;
use rand_distr::{Distribution, StandardNormal};
use std::sync::Arc;
use tussock_locate::{PathMethod, ReceiverLaw, Surroundings, Track, locate};
use tussock_plane::Site;
use tussock_simulate::{LogNoise, TrueRun};
use tussock_types::{
    DeviceCard, ErrorSeries, Fix, NoiseSource, Place, PositionSettings, Positions, Settings, Trace,
};

const SEED: u64 = 1_130;

/// White noise on a first-order drift, once a second.
fn wandering(hours: usize, noise: LogNoise) -> ErrorSeries {
    let mut dice = ChaCha8Rng::seed_from_u64(SEED);
    let mut normal = || -> f64 { StandardNormal.sample(&mut dice) };
    let keeps = (-1.0 / noise.drift_time_s).exp();
    let mut drift = [noise.drift_m * normal(), noise.drift_m * normal()];
    let mut series = ErrorSeries::default();
    for second in 0..3600 * hours {
        for axis in &mut drift {
            *axis = keeps * *axis + noise.drift_m * (1.0 - keeps * keeps).sqrt() * normal();
        }
        series.time_s.push(second as f64);
        series.east_m.push(drift[0] + noise.white_m * normal());
        series.north_m.push(drift[1] + noise.white_m * normal());
    }
    series
}

fn with_card(errors: ErrorSeries) -> Settings {
    let mut settings = Settings::default();
    settings.positions.card = Some(DeviceCard {
        file: "card.csv".to_owned(),
        errors: Some(Arc::new(errors)),
    });
    settings
}

fn located(trace: &Trace, site: &Site, settings: &Settings) -> Track {
    let Positions::Local { east_m, north_m } = &trace.positions else {
        panic!("the trace lies on a plane");
    };
    let (receiver, ground) = (ReceiverLaw::of(&settings.positions), site.drivable());
    let known = Surroundings {
        receiver: receiver.as_ref(),
        ..Surroundings::of(settings).on(ground.as_ref())
    };
    locate(trace, east_m, north_m, known)
}

#[test]
fn a_card_has_the_law_that_made_it() {
    let noise = LogNoise::DECIMETRES;
    let settings = with_card(wandering(8, noise));
    let law = ReceiverLaw::of(&settings.positions).expect("it lasts for hours");
    let white_m = law.white_m.expect("a card shows it");
    assert!((white_m / noise.white_m - 1.0).abs() < 0.03, "{law:?}");
    assert!((law.drift_m / noise.drift_m - 1.0).abs() < 0.25, "{law:?}");
    assert!(
        (0.5..2.0).contains(&(law.drift_time_s / noise.drift_time_s)),
        "{law:?}"
    );
}

#[test]
fn a_card_comes_before_two_numbers_and_a_short_one_tells_nothing() {
    let stated = PositionSettings {
        drift_m: Some(0.4),
        drift_time_s: 200.0,
        ..PositionSettings::default()
    };
    let law = ReceiverLaw::of(&stated).expect("it is stated");
    assert_eq!((law.white_m, law.drift_m, law.drift_time_s), (None, 0.4, 200.0));
    let mut settings = with_card(wandering(1, LogNoise::DECIMETRES));
    settings.positions.drift_m = Some(9.0);
    assert!(ReceiverLaw::of(&settings.positions).is_some_and(|law| law.drift_m < 1.0));
    let mut short = wandering(1, LogNoise::DECIMETRES);
    for column in [&mut short.time_s, &mut short.east_m, &mut short.north_m] {
        column.truncate(500);
    }
    assert_eq!(ReceiverLaw::of(&with_card(short).positions), None);
    assert_eq!(ReceiverLaw::of(&PositionSettings::default()), None);
}

/// Mean distance of the path from where the machine was, at every tenth second of driving.
fn off_m(track: &Track, run: &TrueRun, start_s: f64) -> f64 {
    let legs: Vec<_> = track.legs().collect();
    let (mut sum_m, mut count) = (0.0, 0.0);
    for (from, to) in run.pieces() {
        let middle_s = start_s + 0.5 * (from.time_s + to.time_s);
        let place = from.place.towards(to.place, 0.5);
        let leg = legs.iter().find(|(from, to)| {
            from.leave_s <= middle_s && middle_s <= to.arrive_s && to.arrive_s > from.leave_s
        });
        if let Some((from, to)) = leg {
            let share = (middle_s - from.leave_s) / (to.arrive_s - from.leave_s);
            sum_m += place.distance_m(from.place.towards(to.place, share));
            count += 1.0;
        }
    }
    assert!(count > 20.0, "{count} legs are compared");
    sum_m / count
}

/// A quiet receiver that drifts by decimetres, and a log without a stay: it looks precise.
#[test]
fn what_is_known_of_a_receiver_holds_the_path_by_the_edges() {
    let (run, site) = drive(0.9);
    let noise = LogNoise {
        white_m: 0.01,
        drift_m: 0.3,
        drift_time_s: 300.0,
    };
    let trace = log(&run, noise, None);
    let blind = located(&trace, &site, &Settings::default());
    let mut stated = Settings::default();
    stated.positions.drift_m = Some(noise.drift_m);
    stated.positions.drift_time_s = noise.drift_time_s;
    let off = |track: &Track| off_m(track, &run, trace.time_s[0]);
    assert_eq!(blind.method, PathMethod::Legs);
    for (settings, source) in [
        (stated, NoiseSource::Stated),
        (with_card(wandering(6, noise)), NoiseSource::DeviceCard),
    ] {
        let told = located(&trace, &site, &settings);
        assert_eq!((told.method, told.noise.source), (PathMethod::Anchored, source));
        println!(
            "{source:?}: {:.3} m off, {:.3} m without",
            off(&told),
            off(&blind)
        );
        assert!(
            off(&told) < 0.5 * off(&blind),
            "{} m, {} m without",
            off(&told),
            off(&blind)
        );
    }
}

/// Where the log stands long enough, it is believed and not the card.
#[test]
fn what_the_log_shows_comes_first() {
    let (run, site) = drive(8.0);
    let trace = log(&run, LogNoise::DECIMETRES, None);
    let alone = located(&trace, &site, &Settings::default());
    let settings = with_card(wandering(6, LogNoise::METRES));
    let told = located(&trace, &site, &settings);
    assert_eq!(told.noise.source, NoiseSource::StationScatter);
    assert_eq!((told.noise, told.method), (alone.noise, alone.method));
}

#[test]
fn a_log_that_stands_gives_back_the_error_that_was_laid_on() {
    let laid = wandering(1, LogNoise::DECIMETRES);
    let mut trace = Trace::local("standing");
    for row in 0..laid.time_s.len() {
        trace.push(Fix::bare(
            1.8e9 + laid.time_s[row],
            40.0 + laid.east_m[row],
            laid.north_m[row] - 7.0,
        ));
    }
    let Positions::Local { east_m, north_m } = trace.positions.clone() else {
        panic!("the trace lies on a plane");
    };
    let found = locate(&trace, &east_m, &north_m, Surroundings::of(&Settings::default())).errors_at_rest();
    assert_eq!(found.time_s, laid.time_s);
    for (found, laid) in [(&found.east_m, &laid.east_m), (&found.north_m, &laid.north_m)] {
        let mean = laid.iter().sum::<f64>() / laid.len() as f64;
        let worst = found
            .iter()
            .zip(laid)
            .map(|(found, laid)| (found - laid + mean).abs());
        assert!(worst.fold(0.0, f64::max) < 1e-9);
    }
}

/// A night of a receiver that smooths: the written error is that of the true stays.
#[test]
fn the_stays_of_a_night_give_the_error_of_its_receiver() {
    let (run, site) = drive(8.0);
    for series in phones() {
        let trace = log(&run, LogNoise::NONE, Some(series.clone()));
        let found = located(&trace, &site, &Settings::default()).errors_at_rest();
        let stood_s: f64 = run.stays.iter().map(|stay| stay.end_s - stay.start_s).sum();
        assert!(
            found.lasts_s() > 0.6 * stood_s,
            "{} s of {stood_s}",
            found.lasts_s()
        );
        assert!(found.stretches().len() >= 2);
        let spread_m = |east_m: &[f64], north_m: &[f64]| {
            let places: Vec<Place> = east_m
                .iter()
                .zip(north_m)
                .map(|(e, n)| Place::new(*e, *n))
                .collect();
            let middle = places.iter().fold((0.0, 0.0), |sum, place| {
                (sum.0 + place.east_m, sum.1 + place.north_m)
            });
            let count = places.len() as f64;
            let middle = Place::new(middle.0 / count, middle.1 / count);
            (places
                .iter()
                .map(|place| place.distance_m(middle).powi(2))
                .sum::<f64>()
                / count)
                .sqrt()
        };
        let (found_m, laid_m) = (
            spread_m(&found.east_m, &found.north_m),
            spread_m(&series.east_m, &series.north_m),
        );
        assert!((found_m / laid_m - 1.0).abs() < 0.35, "{found_m} m for {laid_m}");
    }
}
