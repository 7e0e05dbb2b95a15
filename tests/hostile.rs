//! Files made to take a machine down: each ends with a clear word, in little memory, at the cost of reading it.

use crate::support::{Folder, Ran, lanes_csv};
use std::io::{Read, Write};
use std::process::Stdio;

/// No hostile input takes more: the limit of `limits.memory_bytes` and what the program itself takes.
const MOST_MEMORY_BYTES: u64 = 300_000_000;
/// Less than this is seen only before the command has begun.
const LEAST_MEMORY_BYTES: u64 = 1_000_000;

/// Runs with a stream on stdin; what came back, the most memory that was seen in use, and the time from the last byte.
#[cfg(target_os = "linux")]
fn streamed(
    folder: &Folder,
    line: &str,
    pieces: impl Iterator<Item = Vec<u8>> + Send + 'static,
) -> (Ran, u64) {
    let mut child = folder
        .command(line)
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .stderr(Stdio::piped())
        .spawn()
        .expect("the command starts");
    let mut pipe = child.stdin.take().expect("stdin is piped");
    // The first byte waits until the command is seen at work, so that none ends before anybody looked.
    let (seen, is_seen) = std::sync::mpsc::channel::<()>();
    let feeder = std::thread::spawn(move || {
        let _ = is_seen.recv();
        for piece in pieces {
            // Refused early: the rest is not wanted.
            if pipe.write_all(&piece).is_err() {
                break;
            }
        }
    });
    let status = format!("/proc/{}/status", child.id());
    let mut peak_bytes = 0;
    let mut seen = Some(seen);
    let code = loop {
        if let Ok(text) = std::fs::read_to_string(&status) {
            let line = text.lines().find_map(|line| line.strip_prefix("VmHWM:"));
            let kilobytes = line.and_then(|line| line.split_whitespace().next()?.parse::<u64>().ok());
            peak_bytes = peak_bytes.max(kilobytes.unwrap_or(0) * 1024);
        }
        if peak_bytes > LEAST_MEMORY_BYTES {
            // Dropped, it lets the feeder begin; so does the end of the command below.
            seen = None;
        }
        if let Some(status) = child.try_wait().expect("the command can be waited for") {
            break status.code();
        }
        std::thread::sleep(std::time::Duration::from_millis(3));
    };
    drop(seen);
    feeder.join().expect("the feeder ends");
    let text = |pipe: Option<&mut dyn Read>| {
        let mut text = String::new();
        pipe.expect("it is piped")
            .read_to_string(&mut text)
            .expect("UTF-8");
        text
    };
    let stdout = text(child.stdout.as_mut().map(|pipe| pipe as &mut dyn Read));
    let stderr = text(child.stderr.as_mut().map(|pipe| pipe as &mut dyn Read));
    (Ran { code, stdout, stderr }, peak_bytes)
}

/// Ends with exit 2 and these words, in little memory.
#[cfg(target_os = "linux")]
fn refused(folder: &Folder, line: &str, pieces: impl Iterator<Item = Vec<u8>> + Send + 'static, words: &str) {
    let (ran, peak_bytes) = streamed(folder, line, pieces);
    let ran = ran.with_code(2);
    assert!(ran.stderr.contains(words), "{ran}");
    assert!(!ran.stderr.contains("panicked"), "{ran}");
    assert!(
        peak_bytes > LEAST_MEMORY_BYTES && peak_bytes < MOST_MEMORY_BYTES,
        "{peak_bytes} bytes\n{ran}"
    );
}

/// A gigabyte of zeros in a megabyte: members of 16 MB, one after the other.
fn zeros_in_gzip() -> Vec<u8> {
    let mut encoder = flate2::write::GzEncoder::new(Vec::new(), flate2::Compression::best());
    encoder.write_all(&vec![0; 16 << 20]).expect("memory takes it");
    encoder.finish().expect("memory takes it").repeat(64)
}

#[cfg(target_os = "linux")]
#[test]
fn a_gigabyte_of_zeros_in_a_megabyte() {
    let folder = Folder::new();
    let packed = zeros_in_gzip();
    assert!(packed.len() < 1_100_000, "{}", packed.len());
    refused(
        &folder,
        "inspect -",
        std::iter::once(packed.clone()),
        "is more than 200, the limit set by limits.unpacked_ratio",
    );
    folder.write(
        "garden.toml",
        "[limits]\nunpacked_ratio = 5000\nunpacked_bytes = 200_000_000\n",
    );
    refused(
        &folder,
        "inspect - --settings garden.toml",
        std::iter::once(packed),
        "is more than 200000000, the limit set by limits.unpacked_bytes",
    );
}

#[cfg(target_os = "linux")]
#[test]
#[ignore = "a gigabyte is unpacked"]
fn a_gigabyte_of_zeros_with_the_ratio_raised_takes_no_memory() {
    let folder = Folder::new();
    folder.write("garden.toml", "[limits]\nunpacked_ratio = 5000\n");
    refused(
        &folder,
        "inspect - --settings garden.toml",
        std::iter::once(zeros_in_gzip()),
        "is not a log: found binary data",
    );
}

#[cfg(target_os = "linux")]
#[test]
fn a_document_whose_entities_would_grow_without_end() {
    let folder = Folder::new();
    let mut text = String::from("<?xml version=\"1.0\"?>\n<!DOCTYPE gpx [<!ENTITY e0 \"ha\">");
    for level in 1..30 {
        let before = format!("&e{};", level - 1).repeat(10);
        text.push_str(&format!("<!ENTITY e{level} \"{before}\">"));
    }
    text.push_str("]>\n<gpx><trk><name>&e29;</name><trkseg></trkseg></trk></gpx>\n");
    refused(
        &folder,
        "inspect -",
        std::iter::once(text.clone().into_bytes()),
        "GPX log without a usable position",
    );
    folder.write("walk.gpx", text);
    let ran = folder.tussock("plan from-walk walk.gpx").with_code(2);
    assert!(ran.stderr.contains("no track is named as the lawn"), "{ran}");
}

/// Rows of a table at one place, a thousand at a time.
fn rows_at_one_place(thousands: u64) -> impl Iterator<Item = Vec<u8>> + Send + 'static {
    let head = std::iter::once(b"time,lat,lon\n".to_vec());
    head.chain((0..thousands).map(|thousand| {
        (0..1000)
            .map(|row| {
                format!(
                    "{},40.000000000,-30.000000000\n",
                    1_777_636_800 + thousand * 1000 + row
                )
            })
            .collect::<String>()
            .into_bytes()
    }))
}

#[cfg(target_os = "linux")]
#[test]
fn ten_million_points_at_one_place() {
    let folder = Folder::new();
    refused(
        &folder,
        "analyse - --cut-width 22cm --out result",
        rows_at_one_place(10_000),
        "is more than 268435456, the limit set by limits.memory_bytes",
    );
}

#[cfg(target_os = "linux")]
#[test]
fn as_many_points_at_one_place_as_fit_in_memory() {
    let folder = Folder::new();
    refused(
        &folder,
        "analyse - --cut-width 22cm --out result",
        rows_at_one_place(1_000),
        "the machine did not drive",
    );
}

/// A line of so many megabytes, in the middle of a table.
fn one_long_line(megabytes: usize) -> impl Iterator<Item = Vec<u8>> + Send + 'static {
    let head = lanes_csv(300).into_bytes();
    let tail = b"\n2026-05-01T21:00:00Z,40.00001,-30\n".to_vec();
    std::iter::once(head)
        .chain(std::iter::repeat_n(vec![b'x'; 1_000_000], megabytes))
        .chain(std::iter::once(tail))
}

#[cfg(target_os = "linux")]
fn a_long_line_is_passed_over(megabytes: usize) {
    let folder = Folder::new();
    let (ran, peak_bytes) = streamed(&folder, "inspect - --format json", one_long_line(megabytes));
    let ran = ran.with_code(0);
    assert!(peak_bytes > 1_000_000 && peak_bytes < 100_000_000, "{peak_bytes}");
    let found: serde_json::Value = serde_json::from_str(&ran.stdout).expect("it is JSON");
    let facts = &found["inputs"][0];
    assert_eq!(facts["fixes"], 301, "{facts}");
    assert_eq!(facts["skipped"]["too_long"], 1, "{facts}");
    assert!(
        ran.stdout.contains("the limit set by limits.line_bytes"),
        "{facts}"
    );
    let skipped = facts["skipped_bytes"]["too_long"].as_u64();
    assert!(
        skipped.is_none_or(|bytes| bytes > megabytes as u64 * 1_000_000),
        "{facts}"
    );
}

#[cfg(target_os = "linux")]
#[test]
fn one_line_of_100_megabytes_costs_nothing_but_itself() {
    a_long_line_is_passed_over(100);
}

#[cfg(target_os = "linux")]
#[test]
#[ignore = "two gigabytes go through a pipe"]
fn one_line_of_two_gigabytes_costs_nothing_but_itself() {
    a_long_line_is_passed_over(2_000);
}

/// A night that jumps between two places far from each other.
fn alternating(rows: usize, far_deg: f64) -> String {
    lanes_csv(rows)
        .lines()
        .enumerate()
        .map(|(number, line)| {
            let moved = (number > 0 && number % 2 == 0).then(|| {
                let mut cells: Vec<String> = line.split(',').map(str::to_owned).collect();
                let lon: f64 = cells[2].parse().expect("a longitude");
                cells[2] = format!("{:.9}", lon + far_deg);
                cells.join(",")
            });
            moved.unwrap_or_else(|| line.to_owned()) + "\n"
        })
        .collect()
}

#[cfg(target_os = "linux")]
#[test]
fn fixes_that_alternate_between_places_10000_km_apart() {
    let folder = Folder::with_garden();
    let far_deg = 10_000_000.0 / 85_393.7;
    for line in [
        "analyse - --cut-width 22cm --out result",
        "analyse - --cut-width 22cm --plan garden.geojson --out result",
    ] {
        let log = alternating(3_500, far_deg).into_bytes();
        let (ran, peak_bytes) = streamed(&folder, line, std::iter::once(log));
        assert!(matches!(ran.code, Some(0 | 2)), "{ran}");
        assert!(!ran.stderr.contains("panicked"), "{ran}");
        if ran.code == Some(2) {
            assert!(ran.stderr.starts_with("error: "), "{ran}");
        }
        assert!(
            peak_bytes > 1_000_000 && peak_bytes < MOST_MEMORY_BYTES,
            "{peak_bytes}\n{ran}"
        );
    }
}

#[test]
fn one_jump_of_100_km_changes_nothing_else() {
    let folder = Folder::with_garden();
    let good = lanes_csv(1800);
    let jump = good.replace("2026-05-01T20:15:00Z,40.", "2026-05-01T20:15:00Z,41.");
    assert_ne!(good, jump);
    let grid = |log: &str| {
        folder.write("night.csv", log);
        let line = "analyse night.csv --cut-width 22cm --no-suggestions --format json";
        let ran = folder.tussock(line).with_code(0);
        let findings: serde_json::Value = serde_json::from_str(&ran.stdout).expect("it is JSON");
        findings["cells"]["grid"].clone()
    };
    let (good, jump) = (grid(&good), grid(&jump));
    let cells = |grid: &serde_json::Value| grid["columns"].as_u64().zip(grid["rows"].as_u64());
    assert_eq!(cells(&good), cells(&jump), "{good} and {jump}");
}

#[test]
fn limits_of_an_analysis_from_both_sides() {
    let folder = Folder::with_garden();
    folder.write("night.csv", lanes_csv(1800));
    let line =
        "analyse night.csv --plan garden.geojson --cut-width 22cm --settings garden.toml --no-suggestions";
    for (key, fits, refused, words) in [
        (
            "fixes",
            "1_800",
            "1_799",
            "1800 is more than 1799, the limit set by limits.fixes",
        ),
        (
            "extent_m",
            "30.0",
            "20.0",
            "(limit 20 m, raised by limits.extent_m)",
        ),
        (
            "plan_corners",
            "11",
            "10",
            "11 corners are more than the limit of 10 (limits.plan_corners)",
        ),
        (
            "memory_bytes",
            "400_000",
            "300_000",
            "the limit set by limits.memory_bytes",
        ),
    ] {
        folder.write("garden.toml", format!("[limits]\n{key} = {fits}\n"));
        folder.tussock(line).with_code(0);
        folder.write("garden.toml", format!("[limits]\n{key} = {refused}\n"));
        let ran = folder.tussock(line).with_code(2);
        assert!(ran.stderr.contains(words), "{key}\n{ran}");
    }
    // Fixes are counted over all logs together too.
    folder.write("second.csv", lanes_csv(1800).replace("2026-05-01", "2026-05-02"));
    let both = line.replace("night.csv", "night.csv second.csv");
    folder.write("garden.toml", "[limits]\nfixes = 3_600\n");
    folder.tussock(&both).with_code(0);
    folder.write("garden.toml", "[limits]\nfixes = 3_599\n");
    let ran = folder.tussock(&both).with_code(2);
    assert!(
        ran.stderr
            .contains("3,600 fixes (limit 3599, raised by limits.fixes)"),
        "{ran}"
    );
}

#[test]
fn the_cell_grows_until_the_lawn_fits_its_limit() {
    let folder = Folder::with_garden();
    folder.write("night.csv", lanes_csv(1800));
    let run = |cells: &str| {
        folder.write("garden.toml", format!("[limits]\ncells = {cells}\n"));
        let line = "analyse night.csv --plan garden.geojson --cut-width 22cm --settings garden.toml --no-suggestions";
        folder.tussock(&format!("{line} --format json"))
    };
    let cell_m = |cells: &str| {
        let ran = run(cells).with_code(0);
        let findings: serde_json::Value = serde_json::from_str(&ran.stdout).expect("it is JSON");
        let number = |key: &str| findings["coverage"][key].as_f64().expect("a number");
        let parts = ["visited_m2", "missed_m2", "not_yet_m2", "unseen_m2", "sliver_m2"].map(number);
        let rest_m2 = parts.iter().sum::<f64>() - number("lawn_m2");
        assert!(
            rest_m2.abs() < 1e-9 * number("lawn_m2"),
            "{parts:?} with {cells} cells"
        );
        let visited = &findings["coverage"]["visited_fraction"];
        let low = visited["low"].as_f64().expect("a number");
        let error = number("cell_error_fraction");
        assert!(
            visited["estimate"].as_f64().expect("a number") - low >= error,
            "{visited} +- {error}"
        );
        number("cell_m")
    };
    // 24 by 16 m with cells of 22 cm over 7 + sqrt 5.
    let wanted_m = 0.22 / (7.0 + 5.0_f64.sqrt());
    let needed = (24.0 / wanted_m + 3.0) * (16.0 / wanted_m + 3.0);
    let fits = cell_m(&format!("{}", needed.ceil() + 500.0));
    assert!((fits - wanted_m).abs() < 1e-9, "{fits}");
    let grown = cell_m(&format!("{}", (needed * 0.5).ceil()));
    assert!(grown > 1.3 * wanted_m && grown < 1.5 * wanted_m, "{grown}");
    // Nearly half as large as the swath: the sum and the interval hold still. Larger: nothing is counted.
    let coarse = cell_m("36_000");
    assert!(coarse > 0.1 && coarse < 0.11, "{coarse}");
    let ran = run("30_000").with_code(2);
    assert!(
        ran.stderr
            .contains("cells of half a swath (limit 30000, raised by limits.cells)"),
        "{ran}"
    );
}

#[test]
fn inputs_without_end_are_refused_where_a_small_file_is_expected() {
    #[cfg(target_os = "linux")]
    {
        let folder = Folder::with_garden();
        folder.write("night.csv", lanes_csv(100));
        for line in [
            "plan check /dev/zero",
            "plan from-walk /dev/zero",
            "analyse night.csv --settings /dev/zero",
            "report /dev/zero --out result",
        ] {
            let (ran, peak_bytes) = streamed(&folder, line, std::iter::empty());
            let ran = ran.with_code(2);
            assert!(ran.stderr.contains("holds more than 268435456 bytes"), "{ran}");
            assert!(peak_bytes < MOST_MEMORY_BYTES, "{line}: {peak_bytes}");
        }
    }
}

#[test]
fn brackets_nested_without_end_are_refused() {
    let folder = Folder::with_garden();
    folder.write("night.csv", lanes_csv(100));
    let deep = |open: &str| open.repeat(200_000);
    folder.write("deep.geojson", deep("["));
    folder.write("deep.json", deep("{\"a\":"));
    folder.write("deep.toml", format!("a = {}", deep("[")));
    folder.write("tables.toml", format!("a = {}", deep("{ b = ")));
    folder.write("walk.gpx", format!("<gpx>{}", deep("<a>")));
    for line in [
        "plan check deep.geojson",
        "report deep.json --out result",
        "analyse night.csv --settings deep.toml",
        "analyse night.csv --settings tables.toml",
        "plan from-walk walk.gpx",
        "inspect walk.gpx",
    ] {
        let ran = folder.tussock(line).with_code(2);
        assert!(ran.stderr.starts_with("error: "), "{line}\n{ran}");
        assert!(ran.stderr.len() < 5_000, "{line}: {} bytes", ran.stderr.len());
    }
}
