//! The visited fraction of logs whose logger slept at the station: nothing is hidden there, and a device card of the receiver says
//! what the stays would have said.

use crate::known_night::{KnownNight, phones};
use std::sync::Arc;
use tussock::{Job, analyse, errors_at_rest};
use tussock_ingest::{read_error_series, write_error_series};
use tussock_simulate::LogNoise;
use tussock_simulate::gardens::GardenKind;
use tussock_types::{
    DeviceCard, ErrorSeries, Estimate, Fix, LimitSettings, NoiseSource, PlanRole, Settings, Trace,
};

const SEEDS: [u64; 3] = [71, 72, 73];

fn part(series: &ErrorSeries, rows: std::ops::Range<usize>) -> ErrorSeries {
    ErrorSeries {
        time_s: series.time_s[rows.clone()].to_vec(),
        east_m: series.east_m[rows.clone()].to_vec(),
        north_m: series.north_m[rows].to_vec(),
    }
}

/// The log of a standing receiver, written as a card and read again.
fn card_of(errors: &ErrorSeries) -> DeviceCard {
    let mut standing = Trace::local("standing");
    for row in 0..errors.time_s.len() {
        let time_s = 1.8e9 + errors.time_s[row];
        standing.push(Fix::bare(time_s, errors.east_m[row], errors.north_m[row]));
    }
    let (traces, settings) = ([standing], Settings::default());
    let found = errors_at_rest(&Job::new(&traces, &settings)).expect("it stands");
    let text = write_error_series(&found);
    let read = read_error_series("card.csv", text.as_bytes(), &LimitSettings::default()).expect("as written");
    assert_eq!(read.time_s.len(), errors.time_s.len());
    DeviceCard {
        file: "card.csv".to_owned(),
        errors: Some(Arc::new(read)),
    }
}

fn visited(traces: &[Trace], night: &KnownNight, settings: &Settings) -> (Estimate, NoiseSource) {
    let job = Job::new(traces, settings).on(&night.plan).without_advice();
    let findings = analyse(&job).expect("a drive on a plan");
    let coverage = findings.coverage.expect("the width is known");
    (coverage.visited_fraction, findings.positions.source)
}

/// Whether or not the plan has the station.
#[test]
fn a_logger_that_sleeps_while_the_machine_charges_hides_nothing() {
    for seed in SEEDS {
        let mut night = KnownNight::of(GardenKind::Convex, seed);
        let logs = [night.log(LogNoise::CENTIMETRES, None)];
        let asleep = [night.without_stays(&logs[0])];
        assert!(asleep[0].len() < logs[0].len() * 3 / 4, "it slept for hours");
        for plan in ["with its station", "without"] {
            let (whole, _) = visited(&logs, &night, &night.settings);
            let (found, _) = visited(&asleep, &night, &night.settings);
            let (off, more) = (
                found.estimate - night.true_fraction,
                found.estimate - whole.estimate,
            );
            println!(
                "{seed}, plan {plan}: {:+.2} points, {:+.2} to the whole log",
                100.0 * off,
                100.0 * more
            );
            assert!(
                off.abs() < 0.003 && more.abs() < 0.002,
                "{found:?} for {}",
                night.true_fraction
            );
            night
                .plan
                .features
                .retain(|feature| feature.role != PlanRole::Station);
        }
    }
}

/// One half of each recording is the card, the other is laid on the drives.
#[test]
fn a_device_card_mends_the_answer_of_logs_without_stays() {
    let (mut without, mut with, mut held, mut widths) = (Vec::new(), Vec::new(), 0, Vec::new());
    for (name, series) in phones() {
        let half = series.time_s.len() / 2;
        let card = card_of(&part(&series, 0..half));
        let laid = part(&series, half..series.time_s.len());
        for seed in SEEDS {
            let mut night = KnownNight::of(GardenKind::Convex, seed);
            let traces = [night.without_stays(&night.log(LogNoise::NONE, Some(&laid)))];
            let (blind, _) = visited(&traces, &night, &night.settings);
            night.settings.positions.card = Some(card.clone());
            let (told, source) = visited(&traces, &night, &night.settings);
            assert_eq!(source, NoiseSource::DeviceCard);
            let points = |fraction: f64| 100.0 * (fraction - night.true_fraction);
            let (low, high) = (told.low.unwrap_or(0.0), told.high.unwrap_or(1.0));
            println!(
                "{name} {seed}: {:+.2} points without, {:+.2} with, {:.1} wide",
                points(blind.estimate),
                points(told.estimate),
                100.0 * (high - low)
            );
            without.push(points(blind.estimate).abs());
            with.push(points(told.estimate).abs());
            widths.push(100.0 * (high - low));
            held += usize::from((low..=high).contains(&night.true_fraction));
        }
    }
    for list in [&mut without, &mut with, &mut widths] {
        list.sort_by(f64::total_cmp);
    }
    println!("without {without:.2?}\nwith    {with:.2?}\nwidths  {widths:.1?}, {held} hold");
    assert!(with[3] < without[3], "{with:?}, {without:?} without");
    assert!(held >= 5, "{held} of 6 hold");
}
