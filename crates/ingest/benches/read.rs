//! How fast are logs read? On one core, with checksums, limits and the book of skipped bytes: once with the bytes already
//! fetched and hashed, once with copying and SHA-256 as `read_log` does it.

use criterion::{Criterion, Throughput, criterion_group, criterion_main};
use rand::{Rng, RngExt, SeedableRng};
use rand_chacha::ChaCha8Rng;
use std::fmt::Write;
use std::hint::black_box;
use tussock_ingest::{RawLog, ReadOptions, read_log};

const SEED: u64 = 20_260_501;
const FIXES: usize = 57_600;

/// A wandering point, as latitude, longitude and time of day in deciseconds.
fn wander() -> impl Iterator<Item = (f64, f64, usize)> {
    let mut rng = ChaCha8Rng::seed_from_u64(SEED);
    let (mut lat, mut lon) = (52.0_f64, 5.0_f64);
    (0..FIXES).map(move |index| {
        lat += rng.random_range(-4e-6..4e-6);
        lon += rng.random_range(-6e-6..6e-6);
        (lat, lon, index * 5)
    })
}

fn clock(deciseconds: usize) -> (usize, usize, usize, usize) {
    let seconds = deciseconds / 10;
    (seconds / 3600, seconds / 60 % 60, seconds % 60, deciseconds % 10)
}

fn gpx(extensions: bool) -> String {
    let mut text = String::from(
        "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<gpx version=\"1.1\" creator=\"bench\" xmlns=\"http://www.topografix.com/GPX/1/1\">\n<trk><trkseg>\n",
    );
    for (lat, lon, at) in wander() {
        let (hour, minute, second, tenth) = clock(at);
        let time = if tenth == 0 {
            String::new()
        } else {
            format!(".{tenth}00")
        };
        let _ = write!(
            text,
            "<trkpt lat=\"{lat:.7}\" lon=\"{lon:.7}\">\n  <ele>12.3</ele>\n  <time>2026-05-01T{hour:02}:{minute:02}:{second:02}{time}Z</time>\n"
        );
        if extensions {
            text.push_str("  <extensions>\n   <ns3:TrackPointExtension>\n    <ns3:speed>0.41</ns3:speed>\n    <ns3:hr>88</ns3:hr>\n   </ns3:TrackPointExtension>\n  </extensions>\n");
        }
        text.push_str("</trkpt>\n");
    }
    text.push_str("</trkseg></trk>\n</gpx>\n");
    text
}

fn sentence(text: &mut String, body: &str) {
    let sum = body.bytes().fold(0, |sum, b| sum ^ b);
    let _ = write!(text, "${body}*{sum:02X}\r\n");
}

fn minutes(degrees: f64, width: usize) -> String {
    let whole = degrees.trunc();
    format!("{:0width$}{:08.5}", whole as usize, (degrees - whole) * 60.0)
}

fn nmea(full: bool) -> String {
    let mut text = String::new();
    let mut rng = ChaCha8Rng::seed_from_u64(SEED);
    for (lat, lon, at) in wander() {
        let (hour, minute, second, tenth) = clock(at);
        let time = format!("{hour:02}{minute:02}{second:02}.{tenth}0");
        let (lat, lon) = (minutes(lat, 2), minutes(lon, 3));
        sentence(
            &mut text,
            &format!("GNRMC,{time},A,{lat},N,{lon},E,0.812,123.45,010526,,,R,V"),
        );
        if full {
            sentence(&mut text, "GNVTG,123.45,T,,M,0.812,N,1.504,K,D");
        }
        sentence(
            &mut text,
            &format!("GNGGA,{time},{lat},N,{lon},E,4,12,0.71,12.3,M,43.1,M,1.0,0001"),
        );
        if full {
            sentence(
                &mut text,
                "GNGSA,A,3,13,17,02,06,28,12,15,24,19,,,,1.62,0.71,1.35,1",
            );
            sentence(
                &mut text,
                &format!("GNGST,{time},0.021,0.014,0.009,35.0,0.012,0.011,0.020"),
            );
            for part in 1..=3 {
                let strength = rng.next_u32() % 40 + 10;
                sentence(
                    &mut text,
                    &format!(
                        "GPGSV,3,{part},11,02,31,180,46,03,00,059,{strength},06,50,142,46,12,22,296,50,1"
                    ),
                );
            }
            sentence(&mut text, &format!("GNGLL,{lat},N,{lon},E,{time},A,R"));
        }
    }
    text
}

fn csv() -> String {
    let mut text = String::from("time,lat,lon,quality,hdop,sats\n");
    for (lat, lon, at) in wander() {
        let (hour, minute, second, tenth) = clock(at);
        let _ = writeln!(
            text,
            "2026-05-01T{hour:02}:{minute:02}:{second:02}.{tenth}Z,{lat:.7},{lon:.7},4,0.71,12"
        );
    }
    text
}

fn read(c: &mut Criterion) {
    let options = ReadOptions::default();
    let logs = [
        ("gpx", gpx(false)),
        ("gpx with extensions", gpx(true)),
        ("nmea rmc+gga", nmea(false)),
        ("nmea all sentences", nmea(true)),
        ("csv", csv()),
    ];
    let mut group = c.benchmark_group("read");
    for (name, text) in &logs {
        let raw = RawLog::fetch(name, text.as_bytes(), &options.limits).expect("a log");
        group.throughput(Throughput::Bytes(text.len() as u64));
        group.bench_function(*name, |b| {
            b.iter(|| {
                let file = black_box(&raw).read(&options).expect("a log that can be read");
                assert_eq!(file.trace.len(), FIXES);
                file
            });
        });
    }
    group.finish();
    let mut group = c.benchmark_group("fetch, hash and read");
    for (name, text) in &logs {
        group.throughput(Throughput::Bytes(text.len() as u64));
        group.bench_function(*name, |b| {
            b.iter(|| read_log(name, black_box(text.as_bytes()), &options).expect("a log that can be read"));
        });
    }
    group.finish();
}

criterion_group!(benches, read);
criterion_main!(benches);
