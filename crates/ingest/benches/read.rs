//! How fast are logs read? On one core, with checksums, limits and the ledger of skipped bytes: once with the bytes already
//! fetched and hashed, once with copying and SHA-256 as in `read_log`. They are compared with a scan written by hand for
//! just these bytes, which checks nothing but the checksums of NMEA, and with the crates `gpx` and `nmea`: ratios within one
//! run are what counts.

use criterion::{Criterion, Throughput, criterion_group, criterion_main};
use memchr::memmem;
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

fn gpx_log(extensions: bool) -> String {
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

fn nmea_log(full: bool) -> String {
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

/// What a scan by hand keeps of a fix: time of day, latitude, longitude, height.
type Scanned = [f64; 4];

fn of_text(text: &[u8]) -> f64 {
    std::str::from_utf8(text)
        .ok()
        .and_then(|text| text.parse().ok())
        .expect("a number")
}

fn two(text: &[u8]) -> f64 {
    f64::from((text[0] - b'0') * 10 + text[1] - b'0')
}

/// GPX by hand: searches for the four pieces of a point, in the order in which they occur.
fn scan_gpx(text: &[u8]) -> Vec<Scanned> {
    let mut found = Vec::new();
    let mut at = 0;
    let mut next = |opening: &memmem::Finder<'_>, close: u8| {
        let from = at + opening.find(&text[at..])? + opening.needle().len();
        at = from + memchr::memchr(close, &text[from..])?;
        Some(&text[from..at])
    };
    let [lat, lon, height, time] = ["lat=\"", "lon=\"", "<ele>", "<time>"].map(memmem::Finder::new);
    while let Some(value) = next(&lat, b'"') {
        let lat_deg = of_text(value);
        let lon_deg = of_text(next(&lon, b'"').expect("a longitude"));
        let height_m = of_text(next(&height, b'<').expect("a height"));
        let time = next(&time, b'<').expect("a time");
        let date = of_text(&time[..4]) * 372.0 + two(&time[5..]) * 31.0 + two(&time[8..]);
        let of_day_s =
            two(&time[11..]) * 3600.0 + two(&time[14..]) * 60.0 + of_text(&time[17..time.len() - 1]);
        found.push([date * 86_400.0 + of_day_s, lat_deg, lon_deg, height_m]);
    }
    found
}

fn nmea_degrees(text: &[u8], degrees: usize) -> f64 {
    of_text(&text[..degrees]) + of_text(&text[degrees..]) / 60.0
}

/// NMEA by hand: one loop over the bytes for checksum and commas; GGA is read, RMC gives the date.
fn scan_nmea(text: &[u8]) -> Vec<Scanned> {
    let mut found = Vec::new();
    let mut date = 0.0;
    let mut from = 0;
    while from < text.len() {
        assert_eq!(text[from], b'$');
        let mut at = from + 1;
        let (mut sum, mut fields, mut commas) = (0, 0, [0_usize; 24]);
        while text[at] != b'*' {
            sum ^= text[at];
            if text[at] == b',' && fields < commas.len() {
                commas[fields] = at;
                fields += 1;
            }
            at += 1;
        }
        let hex = |digit: u8| {
            if digit > b'9' {
                digit - b'A' + 10
            } else {
                digit - b'0'
            }
        };
        assert_eq!(sum, hex(text[at + 1]) * 16 + hex(text[at + 2]));
        let field = |index: usize| &text[commas[index - 1] + 1..commas[index]];
        match &text[from + 3..from + 6] {
            b"RMC" => date = of_text(field(9)),
            b"GGA" => {
                let time = field(1);
                let of_day_s = two(time) * 3600.0 + two(&time[2..]) * 60.0 + of_text(&time[4..]);
                let lat_deg = nmea_degrees(field(2), 2);
                let lon_deg = nmea_degrees(field(4), 3);
                found.push([date * 86_400.0 + of_day_s, lat_deg, lon_deg, of_text(field(9))]);
            }
            _ => {}
        }
        from = at + 5;
    }
    found
}

/// The `gpx` crate, on a log without extensions.
fn by_the_gpx_crate(text: &[u8]) -> usize {
    let file = gpx::read(text).expect("a log that it can read");
    file.tracks[0].segments[0].points.len()
}

/// The `nmea` crate, line by line into its own store: an epoch ends with GGA.
fn by_the_nmea_crate(text: &[u8]) -> usize {
    let mut store = nmea::Nmea::default();
    let mut found: Vec<(Option<f64>, Option<f64>)> = Vec::new();
    for line in std::str::from_utf8(text).expect("ASCII").lines() {
        let kind = store.parse(line).expect("a sentence that it can read");
        if kind == nmea::SentenceType::GGA {
            found.push((store.latitude(), store.longitude()));
        }
    }
    found.len()
}

fn read(c: &mut Criterion) {
    let options = ReadOptions::default();
    let logs = [
        ("gpx", gpx_log(false)),
        ("gpx with extensions", gpx_log(true)),
        ("nmea rmc+gga", nmea_log(false)),
        ("nmea all sentences", nmea_log(true)),
        ("csv", csv()),
    ];
    let one_core = rayon::ThreadPoolBuilder::new()
        .num_threads(1)
        .build()
        .expect("a thread");
    // What is compared runs side by side, so that a busy minute affects all of it.
    let mut group = c.benchmark_group("read");
    for (name, text) in &logs {
        let raw = RawLog::fetch(name, text.as_bytes(), &options.limits).expect("a log");
        raw.sha256();
        group.throughput(Throughput::Bytes(text.len() as u64));
        group.bench_function(*name, |b| {
            b.iter(|| {
                let raw = black_box(&raw);
                let file = one_core
                    .install(|| raw.read(&options))
                    .expect("a log that can be read");
                assert_eq!(file.trace.len(), FIXES);
                file
            });
        });
        let scan: fn(&[u8]) -> Vec<Scanned> = match &name[..3] {
            "gpx" => scan_gpx,
            "nme" => scan_nmea,
            _ => continue,
        };
        group.bench_function(format!("{name}, by hand"), |b| {
            b.iter(|| {
                let found = scan(black_box(text.as_bytes()));
                assert_eq!(found.len(), FIXES);
                found
            });
        });
        let known: fn(&[u8]) -> usize = match *name {
            "gpx" => by_the_gpx_crate,
            "nmea rmc+gga" => by_the_nmea_crate,
            _ => continue,
        };
        group.bench_function(format!("{name}, by the crate"), |b| {
            b.iter(|| assert_eq!(known(black_box(text.as_bytes())), FIXES));
        });
    }
    group.finish();
    let mut group = c.benchmark_group("fetch, hash and read");
    for (name, text) in &logs {
        group.throughput(Throughput::Bytes(text.len() as u64));
        group.bench_function(*name, |b| {
            b.iter(|| {
                let text = black_box(text.as_bytes());
                one_core
                    .install(|| read_log(name, text, &options))
                    .expect("a log that can be read")
            });
        });
    }
    group.finish();
}

criterion_group!(benches, read);
criterion_main!(benches);
