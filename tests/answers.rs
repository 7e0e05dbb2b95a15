//! What an analysis answers, whatever the road by which the log came.

use crate::support::{Folder, run};
use serde_json::Value;
use std::io::Write;
use time::OffsetDateTime;
use time::format_description::well_known::Rfc3339;

/// A simulated outing of two hours in the invented garden, as `night.<kind>`.
fn simulated(folder: &Folder, kind: &str) {
    folder
        .tussock(&format!(
            "simulate --plan garden.geojson --hours 2 --seed 11 --noise centimetre --format {kind} --out night.{kind}"
        ))
        .with_code(0);
}

fn findings(folder: &Folder, line: &str) -> Value {
    let ran = folder.tussock(&format!("{line} --format json")).with_code(0);
    serde_json::from_str(&ran.stdout).expect("stdout is JSON")
}

const ANALYSE: &str = "--plan garden.geojson --cut-width 22cm --seed 3";

/// The rows of a table as a log of another format.
fn converted(csv: &str, kind: &str) -> String {
    let rows: Vec<[&str; 3]> = csv
        .lines()
        .skip(1)
        .map(|line| {
            let mut cells = line.split(',');
            [(); 3].map(|()| cells.next().expect("time, latitude, longitude"))
        })
        .collect();
    let all =
        |of: fn(&[&str; 3]) -> String, between: &str| rows.iter().map(of).collect::<Vec<_>>().join(between);
    match kind {
        "kml" => format!(
            "<kml><Document><Placemark><gx:Track>{}\n{}</gx:Track></Placemark></Document></kml>",
            all(|[time, ..]| format!("<when>{time}</when>"), "\n"),
            all(
                |[_, lat, lon]| format!("<gx:coord>{lon} {lat} 0</gx:coord>"),
                "\n"
            )
        ),
        "mf.json" => format!(
            "{{\"type\":\"Feature\",\"temporalGeometry\":{{\"type\":\"MovingPoint\",\"datetimes\":[{}],\"coordinates\":[{}]}}}}",
            all(|[time, ..]| format!("\"{time}\""), ","),
            all(|[_, lat, lon]| format!("[{lon},{lat}]"), ",")
        ),
        "gpsd.json" => all(
            |[time, lat, lon]| {
                format!("{{\"class\":\"TPV\",\"mode\":3,\"time\":\"{time}\",\"lat\":{lat},\"lon\":{lon}}}\n")
            },
            "",
        ),
        _ => {
            let head = "%  GPST  latitude(deg) longitude(deg)  height(m)   Q  ns\n".to_owned();
            head + &all(
                |[time, lat, lon]| {
                    let utc = OffsetDateTime::parse(time, &Rfc3339).expect("a time");
                    // GPS time has been 18 s ahead since 2017 (IERS, Bulletin C).
                    let gps = utc + time::Duration::seconds(18);
                    let (date, clock) = (gps.date(), gps.time());
                    format!(
                        "{} {}:{}:{} {lat} {lon} 0 5 9\n",
                        date.to_string().replace('-', "/"),
                        two(clock.hour()),
                        two(clock.minute()),
                        two(clock.second())
                    )
                },
                "",
            )
        }
    }
}

fn two(number: u8) -> String {
    format!("{number:02}")
}

#[test]
fn the_same_outing_in_any_format_gives_the_same_findings() {
    let folder = Folder::with_garden();
    let [gpx, nmea, csv] = ["gpx", "nmea", "csv"].map(|kind| {
        simulated(&folder, kind);
        findings(&folder, &format!("analyse night.{kind} {ANALYSE}"))
    });
    let table = String::from_utf8(folder.read("night.csv")).expect("text");
    let [kml, moving, gpsd, solution] = ["kml", "mf.json", "gpsd.json", "pos"].map(|kind| {
        folder.write(&format!("night.{kind}"), converted(&table, kind));
        findings(&folder, &format!("analyse night.{kind} {ANALYSE}"))
    });
    let visited_m2 = |findings: &Value| findings["coverage"]["visited_m2"].as_f64().expect("a number");
    let lawn_m2 = gpx["coverage"]["lawn_m2"].as_f64().expect("a number");
    for (name, other) in [
        ("nmea", &nmea),
        ("csv", &csv),
        ("kml", &kml),
        ("mf_json", &moving),
        ("gpsd_json", &gpsd),
        ("pos", &solution),
    ] {
        let format = &other["inputs"][0]["format"];
        assert_eq!(format, name, "told by its content");
        // Formats write coordinates to a different last digit (below 1 mm), so single cells at the rim of a swath may
        // flip; 0.02 % of the lawn is the width of a hair along the whole path.
        let difference = (visited_m2(&gpx) - visited_m2(other)).abs() / lawn_m2;
        assert!(
            difference <= 0.0002,
            "{name}: visited area differs by {difference} of the lawn"
        );
        alike(name, "", &gpx, other);
    }
}

/// Parts that tell about the log file itself, or that draw single cells and corners.
const OF_THE_FILE: &[&str] = &[
    "inputs",
    "positions",
    "cells",
    "driven_lines",
    "lawn_outline",
    "outline",
    "log_verdict",
];

/// Compares two findings: words and whole numbers of places alike, lengths and areas within the stated tolerance.
fn alike(name: &str, place: &str, left: &Value, right: &Value) {
    match (left, right) {
        (Value::Object(left), Value::Object(right)) => {
            assert!(left.keys().eq(right.keys()), "{name} {place}: other fields");
            for (key, value) in left
                .iter()
                .filter(|(key, _)| !OF_THE_FILE.contains(&key.as_str()))
            {
                alike(name, &format!("{place}.{key}"), value, &right[key]);
            }
        }
        (Value::Array(left), Value::Array(right)) => {
            assert_eq!(
                left.len(),
                right.len(),
                "{name} {place}: another number of entries"
            );
            for (index, (left, right)) in left.iter().zip(right).enumerate() {
                alike(name, &format!("{place}[{index}]"), left, right);
            }
        }
        (Value::Number(left), Value::Number(right)) => {
            let (left, right) = (
                left.as_f64().expect("a number"),
                right.as_f64().expect("a number"),
            );
            // Latitudes and longitudes: a cell of a pocket may move its middle by some centimetres.
            let absolute: f64 = if place.ends_with(".lat") || place.ends_with(".lon") {
                2e-6
            } else {
                0.05
            };
            let near = (left - right).abs() <= absolute.max(0.01 * left.abs());
            assert!(near, "{name} {place}: {left} and {right}");
        }
        // Sentences hold rounded numbers; that they are there is enough.
        (Value::String(_), Value::String(_)) => {}
        (left, right) => assert_eq!(left, right, "{name} {place}"),
    }
}

#[test]
fn one_thread_and_two_give_the_same_bytes() {
    let folder = Folder::with_garden();
    simulated(&folder, "gpx");
    for threads in [1, 2] {
        folder
            .tussock(&format!(
                "analyse night.gpx {ANALYSE} --threads {threads} --out on-{threads}"
            ))
            .with_code(0);
    }
    let content = folder.content();
    let of = |threads: u8| -> Vec<(&str, &[u8])> {
        let prefix = format!("on-{threads}/");
        content
            .iter()
            .filter_map(|(name, bytes)| Some((name.strip_prefix(&prefix)?, &bytes[..])))
            .filter(|(name, _)| !name.is_empty())
            .collect()
    };
    let (one, two) = (of(1), of(2));
    assert!(
        one.len() >= 6,
        "{:?}",
        one.iter().map(|(name, _)| name).collect::<Vec<_>>()
    );
    assert_eq!(one.len(), two.len());
    for ((name, left), (_, right)) in one.iter().zip(&two) {
        assert!(left == right, "{name} differs between one thread and two");
    }
}

#[test]
fn a_log_from_stdin_gives_what_the_file_gives() {
    let folder = Folder::with_garden();
    simulated(&folder, "nmea");
    let from_file = findings(&folder, &format!("analyse night.nmea {ANALYSE}"));
    let bytes = folder.read("night.nmea");
    let ran = run(
        &mut folder.command(&format!("analyse - {ANALYSE} --format json")),
        &bytes,
    )
    .with_code(0);
    let mut from_stdin: Value = serde_json::from_str(&ran.stdout).expect("stdout is JSON");
    assert_eq!(from_stdin["inputs"][0]["name"], "stdin");
    from_stdin["inputs"][0]["name"] = from_file["inputs"][0]["name"].clone();
    assert_eq!(from_stdin, from_file);
}

#[test]
fn a_compressed_log_gives_what_the_plain_one_gives() {
    let folder = Folder::with_garden();
    simulated(&folder, "gpx");
    let mut packer = flate2::write::GzEncoder::new(Vec::new(), flate2::Compression::fast());
    packer.write_all(&folder.read("night.gpx")).expect("packed");
    // The name says nothing: the kind is told by the content.
    folder.write("night", packer.finish().expect("packed"));
    let [mut plain, mut packed] =
        ["night.gpx", "night"].map(|name| findings(&folder, &format!("analyse {name} {ANALYSE}")));
    plain["inputs"] = Value::Null;
    packed["inputs"] = Value::Null;
    assert_eq!(plain, packed);
}

#[test]
fn a_log_alone_with_a_width_gives_a_useful_answer() {
    let folder = Folder::with_garden();
    simulated(&folder, "gpx");
    let ran = folder.tussock("analyse night.gpx --cut-width 22cm").with_code(0);
    // What to do next may be said, nothing else.
    assert!(ran.stderr.lines().all(|line| line.starts_with("hint: ")), "{ran}");
    let first = ran.stdout.lines().next().unwrap_or_default();
    assert!(
        first.starts_with("The log is"),
        "the first line is the verdict on the log: {first}"
    );
    assert!(ran.stdout.contains("Driven over"), "{ran}");
    assert!(ran.stdout.contains("outline was drawn from the log"), "{ran}");
}

#[test]
fn without_a_width_the_fraction_is_given_for_several() {
    let folder = Folder::with_garden();
    simulated(&folder, "gpx");
    let findings = findings(&folder, "analyse night.gpx --plan garden.geojson");
    assert_eq!(findings["coverage"], Value::Null);
    let rows = findings["by_width"].as_array().expect("rows");
    let fractions: Vec<f64> = rows
        .iter()
        .map(|row| row["visited_fraction"]["estimate"].as_f64().expect("a number"))
        .collect();
    assert!(rows.len() >= 3 && fractions.is_sorted(), "{fractions:?}");
}

#[test]
fn the_count_agrees_with_the_exact_truth_of_the_simulation() {
    let folder = Folder::with_garden();
    simulated(&folder, "gpx");
    let truth = folder.json("night.gpx.truth.json");
    let found = findings(&folder, &format!("analyse night.gpx {ANALYSE}"));
    let is_fraction = |value: &Value| value.as_f64().expect("a number");
    let (true_fraction, found_fraction) = (
        is_fraction(&truth["visited_fraction"]),
        is_fraction(&found["coverage"]["visited_fraction"]["estimate"]),
    );
    // The promise for logs of centimetres: 0.2 points.
    assert!(
        (true_fraction - found_fraction).abs() <= 0.002,
        "true {true_fraction}, found {found_fraction}"
    );
    let (true_m2, found_m2) = (
        is_fraction(&truth["lawn_m2"]),
        is_fraction(&found["coverage"]["lawn_m2"]),
    );
    assert!(
        (true_m2 - found_m2).abs() <= 0.002 * true_m2,
        "lawn: true {true_m2} m2, found {found_m2} m2"
    );
}

#[test]
fn the_five_areas_add_up_to_the_lawn() {
    let folder = Folder::with_garden();
    simulated(&folder, "gpx");
    let coverage = findings(&folder, &format!("analyse night.gpx {ANALYSE}"))["coverage"].clone();
    let m2 = |name: &str| coverage[name].as_f64().expect("a number");
    let sum = m2("visited_m2") + m2("missed_m2") + m2("not_yet_m2") + m2("unseen_m2") + m2("sliver_m2");
    assert!((sum - m2("lawn_m2")).abs() < 1e-6 * m2("lawn_m2"), "{coverage}");
}

#[test]
fn findings_fit_their_schema_on_stdout_and_in_the_folder() {
    let folder = Folder::with_garden();
    simulated(&folder, "gpx");
    let schema: Value = serde_json::from_slice(
        &std::fs::read(concat!(env!("CARGO_MANIFEST_DIR"), "/docs/findings.schema.json"))
            .expect("the schema"),
    )
    .expect("the schema is JSON");
    let validator = jsonschema::validator_for(&schema).expect("the schema is one");
    for line in [
        format!("analyse night.gpx {ANALYSE}"),
        "analyse night.gpx".to_owned(),
        format!("analyse night.gpx {ANALYSE} --private"),
    ] {
        let findings = findings(&folder, &line);
        let faults: Vec<String> = validator
            .iter_errors(&findings)
            .map(|fault| format!("{}: {fault}", fault.instance_path()))
            .collect();
        assert!(faults.is_empty(), "{line}\n{}", faults.join("\n"));
    }
    folder
        .tussock(&format!("analyse night.gpx {ANALYSE} --out result"))
        .with_code(0);
    assert!(validator.is_valid(&folder.json("result/findings.json")));
    // The schema is no yes-sayer.
    let mut broken = folder.json("result/findings.json");
    broken["coverage"]["visited_m2"] = "much".into();
    assert!(!validator.is_valid(&broken));
}

#[test]
fn an_inspection_fits_its_schema() {
    let folder = Folder::with_garden();
    simulated(&folder, "nmea");
    let schema = concat!(env!("CARGO_MANIFEST_DIR"), "/docs/inspection.schema.json");
    let schema: Value =
        serde_json::from_slice(&std::fs::read(schema).expect("the schema")).expect("the schema is JSON");
    let validator = jsonschema::validator_for(&schema).expect("the schema is one");
    let inspection = findings(&folder, "inspect night.nmea");
    let faults: Vec<String> = validator
        .iter_errors(&inspection)
        .map(|fault| fault.to_string())
        .collect();
    assert!(faults.is_empty(), "{}", faults.join("\n"));
}

#[test]
fn below_the_threshold_the_exit_code_is_1_and_the_answer_is_still_given() {
    let folder = Folder::with_garden();
    simulated(&folder, "gpx");
    let ran = folder
        .tussock(&format!("analyse night.gpx {ANALYSE} --fail-under 99.9"))
        .with_code(1);
    assert!(ran.stdout.contains("Driven over"), "{ran}");
    assert!(
        ran.stderr
            .lines()
            .any(|line| line.starts_with("below the threshold: ")),
        "{ran}"
    );
    assert!(ran.stderr.contains("expected at least 99.9 %"), "{ran}");
    let ran = folder
        .tussock(&format!("analyse night.gpx {ANALYSE} --fail-under 5%"))
        .with_code(0);
    assert!(!ran.stderr.contains("threshold"), "{ran}");
}

#[test]
fn colour_is_for_terminals_and_no_color_wins_over_force() {
    let folder = Folder::with_garden();
    simulated(&folder, "gpx");
    let line = format!("analyse night.gpx {ANALYSE}");
    let escape = '\u{1b}';
    let forced = run(folder.command(&line).env("CLICOLOR_FORCE", "1"), b"").with_code(0);
    assert!(forced.stdout.contains(escape), "asked for, colour is there");
    let plain = run(&mut folder.command(&line), b"").with_code(0);
    assert!(!plain.stdout.contains(escape), "a pipe gets no colour");
    let refused = run(folder.command(&line).env("NO_COLOR", "1"), b"").with_code(0);
    assert!(!refused.stdout.contains(escape));
    let error = run(folder.command("analyse gone.gpx").env("NO_COLOR", "1"), b"").with_code(2);
    assert!(!error.stderr.contains(escape));
    // Colour adds nothing that text does not say.
    let stripped: String = anstream::adapter::strip_str(&forced.stdout).to_string();
    assert_eq!(stripped, plain.stdout);
}

#[test]
fn a_reader_that_goes_away_is_no_failure() {
    let folder = Folder::with_garden();
    simulated(&folder, "gpx");
    for line in [
        format!("analyse night.gpx {ANALYSE} --format json"),
        "inspect night.gpx".to_owned(),
        "plan check garden.geojson".to_owned(),
    ] {
        let (reader, writer) = std::io::pipe().expect("a pipe");
        drop(reader);
        let output = folder.command(&line).stdout(writer).output().expect("it ends");
        let stderr = String::from_utf8_lossy(&output.stderr);
        assert_eq!((output.status.code(), &*stderr), (Some(0), ""), "{line}");
    }
}

#[test]
fn a_private_answer_does_not_tell_where_or_when() {
    let folder = Folder::with_garden();
    simulated(&folder, "gpx");
    folder
        .tussock(&format!("analyse night.gpx {ANALYSE} --private --out private"))
        .with_code(0);
    let names: Vec<String> = folder
        .content()
        .into_keys()
        .filter(|name| name.starts_with("private/"))
        .collect();
    assert!(
        !names
            .iter()
            .any(|name| name.ends_with(".gpx") || name.ends_with(".geojson")),
        "{names:?}"
    );
    let found = folder.json("private/findings.json");
    assert_eq!(
        (&found["frame"]["origin_lat"], &found["span"]["start"]),
        (&Value::Null, &Value::Null)
    );
    let text = String::from_utf8(folder.read("private/findings.json")).expect("text");
    for telling in ["flower bed", "2026-05", "night.gpx", "-30.0", "40.00"] {
        assert!(
            !text.contains(telling),
            "{telling:?} stands in the private findings"
        );
    }
}

#[test]
fn two_files_of_one_machine_make_one_trace_and_two_machines_make_two() {
    let folder = Folder::with_garden();
    for (name, seed, start) in [
        ("a", 5, "2026-05-01T20:00:00Z"),
        ("b", 6, "2026-05-02T20:00:00Z"),
        ("c", 7, "2026-05-01T20:00:00Z"),
    ] {
        folder
            .tussock(&format!(
                "simulate --plan garden.geojson --hours 0.5 --seed {seed} --start {start} --out {name}.gpx"
            ))
            .with_code(0);
    }
    let machines = |line: &str| {
        findings(&folder, line)["machines"]
            .as_array()
            .expect("machines")
            .len()
    };
    assert_eq!(machines(&format!("analyse a.gpx b.gpx {ANALYSE}")), 1);
    assert_eq!(machines(&format!("analyse a.gpx c.gpx {ANALYSE}")), 2);
}

#[cfg(unix)]
#[test]
fn an_interrupt_ends_with_130_and_leaves_nothing_half_written() {
    use std::process::Stdio;
    let folder = Folder::with_garden();
    // Reading from a stdin that never ends: the run is surely under way when the signal comes.
    let mut child = folder
        .command("analyse - --cut-width 22cm --out result")
        .stdin(Stdio::piped())
        .stdout(Stdio::null())
        .stderr(Stdio::null())
        .spawn()
        .expect("it starts");
    // Held open until the end: waiting would close it, and the run would end by itself.
    let stdin = child.stdin.take();
    std::thread::sleep(std::time::Duration::from_millis(500));
    let killed = std::process::Command::new("kill")
        .args(["-INT", &child.id().to_string()])
        .status()
        .expect("kill runs");
    assert!(killed.success());
    let status = child.wait().expect("it ends");
    drop(stdin);
    assert_eq!(status.code(), Some(130));
    assert_eq!(
        folder.content().into_keys().collect::<Vec<_>>(),
        ["garden.geojson"]
    );
}
