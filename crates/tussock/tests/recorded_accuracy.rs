//! How wrong are recorded positions? One ride carried by seven receivers, and receivers that stood still.
//!
//! The tables are in `docs/recorded-accuracy.md`; `REGENERATE=1` writes them again, and the diff must be read before it is
//! committed. Distances are to the nearest segment of the planned route, not to its nearest point.

use crate::nights::job;
use std::fmt::Write;
use std::path::{Path, PathBuf};
use tussock::{Job, inspect};
use tussock_ingest::{LogFile, ReadOptions, read_log};
use tussock_plane::{Frame, Leg, LegIndex};
use tussock_types::{GeoPoint, Place, Positions, Settings};

/// Farther from the route than this, the ride took another way, and the distance is not an error.
const ON_ROUTE_M: f64 = 50.0;
/// Turns a median of absolute deviations into the standard deviation of a normal law (Rousseeuw & Croux 1993).
const SD_PER_MAD: f64 = 1.4826;
const TABLES: &str = "<!-- tables: written by the test -->\n";

fn root() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("../..")
}

fn recording(name: &str) -> Vec<u8> {
    std::fs::read(root().join("fixtures/recordings").join(name)).expect("the recording is there")
}

fn log(name: &str, options: &ReadOptions) -> LogFile {
    read_log(name, &recording(name)[..], options).expect("the recording can be read")
}

/// The points of the planned route, which has no times and so is not a log.
fn route() -> Vec<GeoPoint> {
    let bytes = recording("gpx/gps-accuracy/whitchurch-routeA.gpx");
    let text = String::from_utf8(bytes).expect("it is UTF-8");
    let value = |tag: &str, name: &str| -> f64 {
        let rest = tag
            .split(&format!("{name}=\""))
            .nth(1)
            .expect("the attribute is there");
        rest.split('"')
            .next()
            .and_then(|value| value.parse().ok())
            .expect("a number")
    };
    text.split("<trkpt")
        .skip(1)
        .map(|tag| GeoPoint {
            lat_deg: value(tag, "lat"),
            lon_deg: value(tag, "lon"),
        })
        .collect()
}

fn places(file: &LogFile, frame: &Frame) -> Vec<Place> {
    let Positions::Geographic { lat_deg, lon_deg } = &file.trace.positions else {
        panic!("positions lie on Earth");
    };
    let (east_m, north_m) = frame.places(lat_deg, lon_deg);
    east_m
        .into_iter()
        .zip(north_m)
        .map(|(east_m, north_m)| Place::new(east_m, north_m))
        .collect()
}

fn legs(points: &[Place]) -> Vec<Leg> {
    points
        .windows(2)
        .map(|pair| Leg {
            from: pair[0],
            to: pair[1],
            start_s: 0.0,
            end_s: 0.0,
        })
        .collect()
}

/// The smallest value that this share of all values does not exceed.
fn quantile(sorted: &[f64], fraction: f64) -> f64 {
    let rank = (fraction * sorted.len() as f64).ceil() as usize;
    sorted[rank.clamp(1, sorted.len()) - 1]
}

fn sd(values: &[f64]) -> f64 {
    let count = values.len() as f64;
    let mean = values.iter().sum::<f64>() / count;
    (values.iter().map(|value| (value - mean).powi(2)).sum::<f64>() / (count - 1.0)).sqrt()
}

fn robust_sd(values: &[f64]) -> f64 {
    let median = |mut values: Vec<f64>| {
        values.sort_by(f64::total_cmp);
        quantile(&values, 0.5)
    };
    let middle = median(values.to_vec());
    SD_PER_MAD * median(values.iter().map(|value| (value - middle).abs()).collect())
}

/// Distance to a segment by trying many points of it: slow, but obviously right.
fn slow_distance_m(place: Place, leg: &Leg) -> f64 {
    (0..=2000)
        .map(|step| f64::from(step) / 2000.0)
        .map(|share| leg.from.towards(leg.to, share).distance_m(place))
        .fold(f64::INFINITY, f64::min)
}

/// Distances of all fixes of a receiver from the route, in ascending order.
fn cross_track_m(name: &str) -> Vec<f64> {
    let points = route();
    let frame = Frame::at(points[points.len() / 2]);
    let corners: Vec<Place> = points.iter().map(|point| frame.to_place(*point)).collect();
    let index = LegIndex::build(legs(&corners));
    let file = log(
        &format!("gpx/gps-accuracy/routeA/{name}.gpx"),
        &ReadOptions::default(),
    );
    let mut out: Vec<f64> = Vec::new();
    for (number, place) in places(&file, &frame).into_iter().enumerate() {
        let (_, distance_m) = index.nearest(place).expect("the route has segments");
        if number % 500 == 0 {
            let slow_m = index
                .legs()
                .iter()
                .map(|leg| slow_distance_m(place, leg))
                .fold(f64::INFINITY, f64::min);
            // The slow method tries points up to half a two-thousandth of a segment away from the nearest one.
            assert!(
                distance_m <= slow_m + 1e-9 && slow_m - distance_m < 0.3,
                "{name}: {distance_m} {slow_m}"
            );
        }
        out.push(distance_m);
    }
    out.sort_by(f64::total_cmp);
    out
}

const RECEIVERS: [&str; 7] = [
    "Garmin-Edge-605",
    "Garmin-Etrex-30x",
    "Lezyne",
    "MotoG3",
    "adafruit",
    "openlog",
    "xiaomi",
];

fn ride_table() -> String {
    let mut out = String::from(
        "| recording | fixes | beyond 50 m % | median m | 68 % m | 95 % m | rms m |\n|---|--:|--:|--:|--:|--:|--:|\n",
    );
    for name in RECEIVERS {
        let all_m = cross_track_m(name);
        let on_route = all_m.partition_point(|distance_m| *distance_m <= ON_ROUTE_M);
        let near_m = &all_m[..on_route];
        let rms_m = (near_m.iter().map(|value| value * value).sum::<f64>() / on_route as f64).sqrt();
        let _ = writeln!(
            out,
            "| {name} | {} | {:.1} | {:.2} | {:.2} | {:.2} | {rms_m:.2} |",
            all_m.len(),
            100.0 * (all_m.len() - on_route) as f64 / all_m.len() as f64,
            quantile(near_m, 0.5),
            quantile(near_m, 0.68),
            quantile(near_m, 0.95),
        );
    }
    out
}

fn standing() -> Vec<(&'static str, LogFile)> {
    let north = ReadOptions {
        // The day is not in the file; it comes from the folder's name.
        date: time::Date::from_calendar_date(2026, time::Month::February, 2).ok(),
        ..ReadOptions::default()
    };
    let east = "static/adsb-grid/east_gnss.csv";
    let gold = "static/adsb-grid/north_gold_converted.csv";
    vec![
        (east, log(east, &ReadOptions::default())),
        (gold, log(gold, &north)),
    ]
}

fn rest_table() -> String {
    let mut out = String::from(
        "| recording | axis | fixes | sd m | robust sd m | step sd / sqrt 2 m | inspect: fix to fix m | inspect: slow m |\n\
         |---|---|--:|--:|--:|--:|--:|--:|\n",
    );
    for (name, file) in standing() {
        let (lat_deg, lon_deg) = file.trace.positions.pair(0);
        let all = places(&file, &Frame::at(GeoPoint { lat_deg, lon_deg }));
        let settings = Settings::default();
        let job = Job {
            inputs: std::slice::from_ref(&file.facts),
            ..job(std::slice::from_ref(&file.trace), None, &settings)
        };
        let claim = inspect(&job).map(|found| found.positions);
        let words = |value: Option<f64>| value.map_or("-".to_owned(), |value_m| format!("{value_m:.3}"));
        let (white, drift) = match &claim {
            Ok(found) => (words(found.white_m), words(found.drift_m)),
            Err(_) => ("refused".to_owned(), "refused".to_owned()),
        };
        for (axis, values) in [
            ("east", all.iter().map(|place| place.east_m).collect::<Vec<f64>>()),
            ("north", all.iter().map(|place| place.north_m).collect()),
        ] {
            // Differences across holes in the log are no steps.
            let steps: Vec<f64> = (1..values.len())
                .filter(|index| file.trace.time_s[*index] - file.trace.time_s[index - 1] <= 1.5)
                .map(|index| values[index] - values[index - 1])
                .collect();
            let _ = writeln!(
                out,
                "| {} | {axis} | {} | {:.3} | {:.3} | {:.3} | {white} | {drift} |",
                name.rsplit('/').next().unwrap_or(name),
                values.len(),
                sd(&values),
                robust_sd(&values),
                sd(&steps) / 2.0_f64.sqrt(),
            );
        }
    }
    out
}

#[test]
fn recorded_accuracy_is_as_the_tables_in_the_docs_say() {
    let page = root().join("docs/recorded-accuracy.md");
    let text = std::fs::read_to_string(&page).expect("the page is there");
    let (prose, kept) = text
        .split_once(TABLES)
        .expect("the page has a mark where its tables begin");
    let found = format!(
        "\n## One ride, seven receivers\n\n{}\n## Standing still\n\n{}",
        ride_table(),
        rest_table()
    );
    if std::env::var_os("REGENERATE").is_some() {
        std::fs::write(&page, format!("{prose}{TABLES}{found}")).expect("the page can be written");
        return;
    }
    for (found, kept) in found.lines().zip(kept.lines()) {
        assert_eq!(found, kept);
    }
    assert_eq!(found.lines().count(), kept.lines().count());
}

/// ERR-23: the distance to the nearest logged point is too long; the bound is sqrt(d^2 + (s/2)^2) - d, by Pythagoras. On
/// the matter: Trans. ASABE 59(6):1609-1616 (2016), on ISO/ASABE 12188-2.
#[test]
fn err_23_the_nearest_sample_overstates_the_distance_to_the_path() {
    for (spacing_m, offset_m, too_long_m) in [(0.5, 0.1, 0.169_26), (0.05, 0.1, 0.003_08)] {
        let points: Vec<Place> = (-50..=50)
            .map(|number| Place::new(f64::from(number) * spacing_m, 0.0))
            .collect();
        let index = LegIndex::build(legs(&points));
        let mut worst_m: f64 = 0.0;
        for step in 0..=1000 {
            let place = Place::new(spacing_m * f64::from(step) / 1000.0, offset_m);
            let to_segment_m = index.nearest(place).expect("there are segments").1;
            assert!((to_segment_m - offset_m).abs() < 1e-12, "{to_segment_m}");
            let to_sample_m = points
                .iter()
                .map(|point| point.distance_m(place))
                .fold(f64::INFINITY, f64::min);
            worst_m = worst_m.max(to_sample_m - to_segment_m);
        }
        assert!((worst_m - too_long_m).abs() < 1e-5, "{spacing_m}: {worst_m}");
    }
}
