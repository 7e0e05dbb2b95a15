//! What a fuzz target does with its bytes, and what must hold then. Plain tests of the command include this file and run the
//! same bodies over the corpora and over mutations of them, so that nothing here needs a special compiler.
//!
//! A body panics where something does not hold: that is what a fuzzer looks for.

#[path = "analysis.rs"]
pub mod analysis;
#[path = "odd.rs"]
pub mod odd;

pub use analysis::analysis;
use arbitrary::{Arbitrary, Unstructured};
use std::fmt::Write as _;
use tussock_batch::{Bucket, Expected, Listed, Objects, SeenFile, gardens};
use tussock_ingest::{
    LogFile, Policy, ReadOptions, plan_from_walk, read_log, read_plan, read_reference, read_settings,
};
use tussock_types::{LimitSettings, LogFormat, Positions};

/// A target by its name.
pub type Body = fn(&[u8]);

/// All targets.
pub const TARGETS: [(&str, Body); 14] = [
    ("gpx", gpx),
    ("gpx_structured", gpx_structured),
    ("nmea", nmea),
    ("nmea_structured", nmea_structured),
    ("csv", csv),
    ("kml", kml),
    ("mf_json", mf_json),
    ("gpsd", gpsd),
    ("plan", plan),
    ("walk", walk),
    ("settings", settings),
    ("findings", findings),
    ("manifest", manifest),
    ("analysis", analysis),
];

/// Limits under which hostile bytes cost little, and which are met often.
fn limits() -> LimitSettings {
    LimitSettings {
        log_bytes: 1 << 20,
        unpacked_bytes: 4 << 20,
        line_bytes: 2_000,
        attribute_bytes: 300,
        element_depth: 24,
        fixes: 5_000,
        plan_corners: 500,
        ..LimitSettings::default()
    }
}

/// What holds for every log that was read: all bytes accounted for, times rising, no place that means nothing.
///
/// # Panics
/// Where it does not hold.
pub fn hold(file: &LogFile) {
    let facts = &file.facts;
    let listed: u64 = facts
        .places
        .iter()
        .map(|place| place.byte_end - place.byte_start)
        .sum();
    assert_eq!(facts.bytes_used + listed, facts.bytes, "used + skipped");
    assert_eq!(listed, facts.skipped_bytes.values().sum::<u64>());
    let rises = facts
        .places
        .windows(2)
        .all(|pair| pair[0].byte_end <= pair[1].byte_start);
    assert!(rises, "places overlap");
    let trace = &file.trace;
    assert_eq!(facts.fixes, trace.len() as u64);
    assert!(
        trace.time_s.windows(2).all(|pair| pair[0] < pair[1]),
        "times do not rise"
    );
    assert!(trace.time_s.iter().all(|time_s| time_s.is_finite()));
    for told in [
        &trace.speed_mps,
        &trace.hdop,
        &trace.claimed_sd_m,
        &trace.height_msl_m,
    ] {
        assert!(
            told.iter().all(|value| !value.is_infinite()),
            "a value without end"
        );
    }
    for index in 0..trace.len() {
        let (a, b) = trace.positions.pair(index);
        assert!(a.is_finite() && b.is_finite());
        if let Positions::Geographic { .. } = trace.positions {
            assert!(a.abs() < 90.0 && b.abs() <= 180.0, "{a} {b}");
            assert!((a, b) != (0.0, 0.0), "a fix at latitude 0, longitude 0");
        }
    }
}

/// Reads a log in every way in which it can be asked for.
fn log(data: &[u8], columns: Option<&str>, wanted: Option<LogFormat>) {
    for policy in [Policy::Lenient, Policy::Strict] {
        for date in [None, time::Date::from_ordinal_date(2026, 121).ok()] {
            let options = ReadOptions {
                policy,
                date,
                columns: columns.and_then(|columns| columns.parse().ok()),
                limits: limits(),
            };
            match read_log("log", data, &options) {
                Ok(file) => {
                    hold(&file);
                    assert!(wanted.is_none_or(|wanted| wanted == file.facts.format));
                }
                Err(error) => assert!(!error.to_string().is_empty()),
            }
        }
    }
}

/// Reads a surveyed path: what is one has at least two places, all of them finite, and times that rise or none.
fn reference(data: &[u8]) {
    let options = ReadOptions {
        limits: limits(),
        ..ReadOptions::default()
    };
    match read_reference("path", data, &options) {
        Ok(path) => {
            let places = path.positions.len();
            assert!(places >= 2 && path.piece.len() == places);
            for index in 0..places {
                let (a, b) = path.positions.pair(index);
                assert!(a.is_finite() && b.is_finite());
            }
            if let Some(time_s) = path.time_s {
                assert!(time_s.len() == places && time_s.windows(2).all(|pair| pair[0] < pair[1]));
            }
        }
        Err(error) => assert!(!error.to_string().is_empty()),
    }
}

/// GPX from any bytes, a log or a surveyed path; what is no GPX gets a root before it.
pub fn gpx(data: &[u8]) {
    log(data, None, None);
    reference(data);
    if !data.starts_with(b"<") {
        log(&[b"<gpx><trk><trkseg>", data].concat(), None, None);
    }
}

/// NMEA 0183 from any bytes.
pub fn nmea(data: &[u8]) {
    log(data, None, None);
    log(
        &[b"$GPZDA,120000,01,05,2026,00,00*49\r\n", data].concat(),
        None,
        None,
    );
}

/// CSV from any bytes, with a header of its own, one given, and columns that are asked for; a log or a surveyed path.
pub fn csv(data: &[u8]) {
    log(data, None, None);
    reference(data);
    reference(&[b"lat,lon\n", data].concat());
    log(&[b"time,lat,lon,hdop\n", data].concat(), None, None);
    log(data, Some("time=#1,x_m=#2,y_m=#3"), None);
    log(data, Some("date=#1,time=#2,lat=#3,lon=#4"), None);
    log(data, Some("week=#1,tow=#2,lat=#3,lon=#4"), None);
    let solution = b"%  GPST  latitude(deg) longitude(deg)  height(m)   Q  ns   sdn(m)   sde(m)\n";
    log(&[&solution[..], data].concat(), None, None);
}

/// KML from any bytes, and inside of a track.
pub fn kml(data: &[u8]) {
    log(data, None, None);
    reference(data);
    let head = b"<kml><Document><gx:Track><when>2026-05-01T12:00:00Z</when><gx:coord>5 52 0</gx:coord>";
    log(&[&head[..], data].concat(), None, None);
}

/// Moving features from any bytes, and as the times of positions.
pub fn mf_json(data: &[u8]) {
    log(data, None, None);
    let head = b"{\"coordinates\":[[5,52],[5.00001,52,1]],\"datetimes\":[\"2026-05-01T12:00:00Z\"";
    log(&[&head[..], data].concat(), None, None);
}

/// Reports of gpsd from any bytes, and behind one that is sound.
pub fn gpsd(data: &[u8]) {
    log(data, None, None);
    let head = b"{\"class\":\"TPV\",\"mode\":3,\"time\":\"2026-05-01T12:00:00Z\",\"lat\":52,\"lon\":5}\n";
    log(&[&head[..], data].concat(), None, None);
}

/// A plan from any bytes: what is read can be built or has faults, and can be written and read again.
pub fn plan(data: &[u8]) {
    match read_plan("plan", data, &limits()) {
        Ok(read) => {
            read.faults
                .iter()
                .for_each(|fault| assert!(!fault.to_string().is_empty()));
            if read.faults.iter().all(|fault| !fault.is_fatal) {
                built(&read.plan);
                let text = tussock_ingest::write_plan(&read.plan);
                let again = read_plan("again", text.as_bytes(), &LimitSettings::default());
                let again = again.unwrap_or_else(|error| panic!("{error}\n{text}"));
                assert_eq!(again.plan.features.len(), read.plan.features.len(), "{text}");
            }
        }
        Err(error) => assert!(!error.to_string().is_empty()),
    }
}

fn built(plan: &tussock_types::Plan) {
    match tussock_plane::Site::build(plan) {
        Ok((_, faults)) | Err(faults) => {
            faults
                .iter()
                .for_each(|fault| assert!(!fault.to_string().is_empty()));
        }
    }
}

/// A recorded walk from any bytes.
pub fn walk(data: &[u8]) {
    match plan_from_walk("walk", data, &[]) {
        Ok(walked) => {
            let text = tussock_ingest::write_plan(&walked.plan);
            let read = read_plan("walked", text.as_bytes(), &LimitSettings::default());
            let read = read.unwrap_or_else(|error| panic!("{error}\n{text}"));
            assert_eq!(read.plan.features.len(), walked.plan.features.len(), "{text}");
        }
        Err(error) => assert!(!error.to_string().is_empty()),
    }
}

/// Settings from any bytes that are text.
pub fn settings(data: &[u8]) {
    let Ok(text) = std::str::from_utf8(data) else {
        return;
    };
    match read_settings("settings", text) {
        Ok(settings) => {
            for number in [
                settings.promise.visited_fraction,
                settings.positions.max_hdop,
                settings.limits.extent_m,
            ] {
                assert!(number.is_finite());
            }
        }
        Err(error) => assert!(!error.to_string().is_empty()),
    }
}

/// Saved findings from any bytes: what is read can be told, drawn and written, and comes back the same.
pub fn findings(data: &[u8]) {
    match tussock_report::from_json(data) {
        Ok(findings) => {
            let text = tussock_report::to_json(&findings).unwrap_or_else(|error| panic!("{error}"));
            let again = tussock_report::from_json(text.as_bytes()).unwrap_or_else(|error| panic!("{error}"));
            assert_eq!(tussock_report::to_json(&again).ok().as_deref(), Some(&text[..]));
            let _ = tussock_report::geojson(&findings);
            let _ = tussock_report::pockets_gpx(&findings, tussock_report::Voice::default());
        }
        Err(error) => assert!(!error.to_string().is_empty()),
    }
    match tussock_report::comparison_from_json(data) {
        Ok(comparison) => {
            let text =
                tussock_report::comparison_to_json(&comparison).unwrap_or_else(|error| panic!("{error}"));
            let again = tussock_report::comparison_from_json(text.as_bytes())
                .unwrap_or_else(|error| panic!("{error}"));
            assert_eq!(
                tussock_report::comparison_to_json(&again).ok().as_deref(),
                Some(&text[..])
            );
        }
        Err(error) => assert!(!error.to_string().is_empty()),
    }
}

/// A place with two gardens and a manifest of these bytes. Every other folder holds logs, one of them half-written, and
/// another folder, without end.
struct Place(Vec<u8>);

impl Objects for Place {
    fn read(&self, path: &str) -> std::io::Result<Vec<u8>> {
        match path {
            "gardens.toml" => Ok(self.0.clone()),
            _ => Err(std::io::ErrorKind::NotFound.into()),
        }
    }

    fn list(&self, path: &str) -> std::io::Result<Listed> {
        let file = |path: String| SeenFile {
            path,
            bytes: self.0.len() as u64,
            modified_unix_ms: 0,
        };
        if !path.is_empty() {
            let files = ["log.gpx", "log.gpx.part", ".log.gpx"].map(|name| file(format!("{path}/{name}")));
            return Ok((vec![format!("{path}/deeper")], files.into()));
        }
        Ok((vec!["b".into(), "a".into()], vec![file("gardens.toml".into())]))
    }
}

/// The manifest of many gardens from any bytes: what is read has names in order, hours of a day and spans that end after they
/// begin.
pub fn manifest(data: &[u8]) {
    let bucket = Bucket::over("place", Box::new(Place(data.to_vec())));
    match gardens(&bucket) {
        Ok(wishes) => {
            assert!(wishes.night_turns_at_h < 24);
            assert!(wishes.retention_days.is_none_or(|days| days >= 15));
            assert!(wishes.gardens.windows(2).all(|pair| pair[0].name < pair[1].name));
            for garden in &wishes.gardens {
                assert!(!garden.name.is_empty() && !garden.name.contains(char::is_control));
                assert!(garden.rests.iter().all(|(from, to)| from <= to));
                assert_eq!(Expected::parse(&garden.expected.words()), garden.expected);
                let logs = garden.logs(&bucket).unwrap_or_else(|error| panic!("{error}"));
                assert!(garden.logs.is_empty() || logs.len() > 1);
                assert!(
                    logs.windows(2)
                        .all(|pair| pair[0].found.path < pair[1].found.path)
                );
                assert!(logs.iter().all(|log| !log.found.path.ends_with(".part")));
                let nights = (0..7).filter(|night| garden.expected.holds(*night)).count();
                assert_eq!(nights, garden.expected.0.iter().filter(|day| **day).count());
            }
        }
        Err(error) => assert!(!error.to_string().is_empty()),
    }
}

/// A number as loggers and fuzzers write them.
fn number(bytes: &mut Unstructured<'_>, usual: f64) -> arbitrary::Result<String> {
    Ok(match bytes.int_in_range(0..=9)? {
        0 => String::new(),
        1 => f64::arbitrary(bytes)?.to_string(),
        2 => ["nan", "inf", "-0", "1e999", "+5", ".", "0x10", "1,5", "９"][bytes.choose_index(9)?].to_owned(),
        3 => i64::arbitrary(bytes)?.to_string(),
        _ => format!(
            "{:.*}",
            bytes.int_in_range(0..=9_usize)?,
            usual + f64::from(i16::arbitrary(bytes)?) * 1e-7
        ),
    })
}

/// A time that mostly goes on.
fn time(bytes: &mut Unstructured<'_>, second: &mut u32) -> arbitrary::Result<String> {
    *second = match bytes.int_in_range(0..=15)? {
        0 => bytes.int_in_range(0..=86_400)?,
        1 => *second,
        step => *second + step / 5,
    };
    Ok(format!(
        "{:02}:{:02}:{:02}",
        *second / 3600,
        *second / 60 % 60,
        *second % 60
    ))
}

/// GPX that looks like GPX: elements open and close in their places, mostly.
pub fn gpx_structured(data: &[u8]) {
    if let Ok(text) = gpx_text(&mut Unstructured::new(data)) {
        log(text.as_bytes(), None, Some(LogFormat::Gpx));
        walk(text.as_bytes());
    }
}

fn gpx_text(bytes: &mut Unstructured<'_>) -> arbitrary::Result<String> {
    let mut text = String::from("<gpx version=\"1.1\">");
    let mut second = 0;
    while !bytes.is_empty() && text.len() < 60_000 {
        match bytes.int_in_range(0..=19)? {
            0 => text.push_str("<trk><name>lawn front</name><trkseg>"),
            1 => text.push_str("</trkseg></trk>"),
            2 => text.push_str("</trkseg><trkseg>"),
            3 => {
                let _ = write!(
                    text,
                    "<wpt lat=\"{}\" lon=\"{}\"><name>tree {} m</name></wpt>",
                    number(bytes, 52.0)?,
                    number(bytes, 5.0)?,
                    number(bytes, 0.4)?
                );
            }
            4 => text.push_str(
                [
                    "<!-- x -->",
                    "<![CDATA[5]]>",
                    "&amp;",
                    "&",
                    "<?p?>",
                    "<!DOCTYPE gpx>",
                    "\n",
                    "<",
                    ">",
                    "\"",
                ][bytes.choose_index(10)?],
            ),
            5 => text.push_str(
                [
                    "<rte>",
                    "</rte>",
                    "<extensions>",
                    "</extensions>",
                    "</trkpt>",
                    "</gpx>",
                ][bytes.choose_index(6)?],
            ),
            6 => text.push_str(<&str>::arbitrary(bytes)?),
            _ => point(bytes, &mut text, &mut second)?,
        }
    }
    if bool::arbitrary(bytes)? {
        text.push_str("</trkseg></trk></gpx>");
    }
    Ok(text)
}

fn point(bytes: &mut Unstructured<'_>, text: &mut String, second: &mut u32) -> arbitrary::Result<()> {
    let _ = write!(
        text,
        "<trkpt lat=\"{}\" lon=\"{}\">",
        number(bytes, 52.0)?,
        number(bytes, 5.0)?
    );
    let order = bytes.int_in_range(0..=3)?;
    if order != 3 {
        let _ = write!(text, "<time>2026-05-01T{}Z</time>", time(bytes, second)?);
    }
    if order == 1 {
        let name = ["ele", "hdop", "speed", "sat", "fix", "x:accuracy", "course"][bytes.choose_index(7)?];
        let value = number(bytes, 3.0)?;
        let _ = write!(text, "<extensions><{name}>{value}</{name}></extensions>");
    }
    text.push_str(if order == 2 { "" } else { "</trkpt>" });
    Ok(())
}

/// NMEA 0183 whose checksums fit, mostly.
pub fn nmea_structured(data: &[u8]) {
    if let Ok(text) = nmea_text(&mut Unstructured::new(data)) {
        log(&text, None, None);
    }
}

fn nmea_text(bytes: &mut Unstructured<'_>) -> arbitrary::Result<Vec<u8>> {
    let mut text = Vec::new();
    let mut second = 43_200;
    while !bytes.is_empty() && text.len() < 60_000 {
        let talker = ["GP", "GN", "GL", "GB", "P", "II"][bytes.choose_index(6)?];
        let at = time(bytes, &mut second)?.replace(':', "");
        let (lat, lon) = (number(bytes, 5200.0)?, number(bytes, 500.0)?);
        let body = match bytes.int_in_range(0..=7)? {
            0 => format!(
                "{talker}GGA,{at},{lat},N,{lon},E,{},08,0.9,1.0,M,,M,,",
                bytes.int_in_range(0..=9)?
            ),
            1 => format!(
                "{talker}RMC,{at},A,{lat},N,{lon},E,1,9,{:02}0526,,,A",
                bytes.int_in_range(0..=33)?
            ),
            2 => format!("{talker}GNS,{at},{lat},N,{lon},E,AN,08,0.9,1.0,,,"),
            3 => format!("{talker}GLL,{lat},S,{lon},W,{at},A,A"),
            4 => format!(
                "{talker}ZDA,{at},{:02},05,{},00,00",
                bytes.int_in_range(0..=33)?,
                bytes.int_in_range(0..=9999)?
            ),
            5 => format!(
                "{talker}GST,{at},1,,,,{},{},1",
                number(bytes, 1.0)?,
                number(bytes, 1.0)?
            ),
            6 => format!(
                "{talker}VTG,{},T,,M,{},N,,K,A",
                number(bytes, 90.0)?,
                number(bytes, 1.0)?
            ),
            _ => <&str>::arbitrary(bytes)?.to_owned(),
        };
        let sum = body.bytes().fold(0, |sum, byte| sum ^ byte);
        text.extend_from_slice(b"$");
        text.extend_from_slice(body.as_bytes());
        match bytes.int_in_range(0..=15)? {
            0 => text.extend_from_slice(b"*00\r\n"),
            1 => text.extend_from_slice(b"\r\n"),
            2 => text.extend_from_slice(b"\0\0\xb5\x62"),
            3 => {}
            _ => text.extend_from_slice(format!("*{sum:02X}\r\n").as_bytes()),
        }
    }
    Ok(text)
}
