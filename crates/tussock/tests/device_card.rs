//! The visited fraction of logs whose logger slept at the station, with and without a device card of the receiver.
//!
//! Recorded errors of two telephones: one half of each is the card, the other is laid on drives whose truth is known.

use std::sync::Arc;
use tussock::{Job, analyse, errors_at_rest};
use tussock_ingest::{read_error_series, write_error_series};
use tussock_plane::Site;
use tussock_simulate::gardens::{GardenKind, Wish, invent_as};
use tussock_simulate::{Counting, LogNoise, Machine, Run, Sampling, sample, simulate, truth};
use tussock_types::{DeviceCard, ErrorSeries, Fix, FixQuality, LimitSettings, NoiseSource, Settings, Trace};

const SEEDS: [u64; 3] = [71, 72, 73];
const HOURS: f64 = 8.0;
const CUT_WIDTH_M: f64 = 0.22;

fn phones() -> [(&'static str, ErrorSeries); 2] {
    [
        (
            "phone-a.csv",
            include_str!("../../../fixtures/errors/phone-a.csv"),
        ),
        (
            "phone-b.csv",
            include_str!("../../../fixtures/errors/phone-b.csv"),
        ),
    ]
    .map(|(name, text)| {
        let series = read_error_series(name, text.as_bytes(), &LimitSettings::default());
        (name, series.expect("a series"))
    })
}

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

#[test]
fn a_device_card_mends_the_answer_of_logs_without_stays() {
    let (mut without, mut with, mut held, mut widths) = (Vec::new(), Vec::new(), 0, Vec::new());
    for (name, series) in phones() {
        let half = series.time_s.len() / 2;
        let card = card_of(&part(&series, 0..half));
        let laid = part(&series, half..series.time_s.len());
        for seed in SEEDS {
            let garden = invent_as(&Wish::new(GardenKind::Convex), seed);
            let (site, _) = Site::build(&garden.plan).expect("invented plans are sound");
            let machine = Machine::default();
            let run = simulate(&site, &machine, &Run::new(HOURS, seed)).expect("there is room");
            let whole = sample(
                &run,
                &Sampling {
                    recorded: Some(laid.clone()),
                    quality: FixQuality::Unknown,
                    ..Sampling::geographic(1.0, LogNoise::NONE, seed, site.frame)
                },
            );
            // The logger is fed by the motor: it sleeps while the machine charges.
            let sleeps = |time_s: f64| {
                let since_s = time_s - whole.time_s[0];
                run.stays
                    .iter()
                    .any(|stay| stay.start_s + 20.0 <= since_s && since_s <= stay.end_s - 20.0)
            };
            let mut trace = Trace::geographic("mower");
            let awake = (0..whole.len()).filter(|index| !sleeps(whole.time_s[*index]));
            awake.for_each(|index| trace.push(whole.fix(index)));
            let true_fraction = truth(&run, &site, &Counting::new(CUT_WIDTH_M, 0.05)).visited_fraction;
            let mut settings = Settings::default();
            settings.machine.cut_width_m = Some(CUT_WIDTH_M);
            settings.machine.body_width_m = Some(-2.0 * machine.past_boundary_m);
            let traces = [trace];
            let answer = |settings: &Settings| {
                let job = Job::new(&traces, settings).on(&garden.plan).without_advice();
                let findings = analyse(&job).expect("a drive on a plan");
                (
                    findings.coverage.expect("the width is known").visited_fraction,
                    findings.positions.source,
                )
            };
            let (blind, _) = answer(&settings);
            settings.positions.card = Some(card.clone());
            let (told, source) = answer(&settings);
            assert_eq!(source, NoiseSource::DeviceCard);
            let points = |fraction: f64| 100.0 * (fraction - true_fraction);
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
            held += usize::from((low..=high).contains(&true_fraction));
        }
    }
    for list in [&mut without, &mut with, &mut widths] {
        list.sort_by(f64::total_cmp);
    }
    println!("without {without:.2?}\nwith    {with:.2?}\nwidths  {widths:.1?}, {held} hold");
    assert!(with[3] < without[3], "{with:?}, {without:?} without");
    assert!(held >= 5, "{held} of 6 hold");
}
