//! `analyse --reference`: a log held to a surveyed path.

use crate::support::{Folder, run, tussock};
use serde_json::Value;
use std::path::PathBuf;

fn recording() -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR"))
        .join("fixtures/recordings/coverage/plaza_lawnmower/Plaza1_GT.derived.csv")
}

/// The recording moved 20 cm north and made half a second later, as the surveyed path.
fn moved(with_times: bool) -> String {
    let text = std::fs::read_to_string(recording()).expect("the recording is there");
    let mut path = String::from(if with_times {
        "time_s,x_m,y_m\n"
    } else {
        "x_m,y_m\n"
    });
    for line in text.lines().skip(1) {
        let numbers: Vec<f64> = line.split(',').filter_map(|field| field.parse().ok()).collect();
        let place = format!("{},{}\n", numbers[1], numbers[2] + 0.2);
        if with_times {
            path.push_str(&format!("{:.4},", numbers[0] + 0.5));
        }
        path.push_str(&place);
    }
    path
}

fn held_to(path: &str, format: &str) -> String {
    let folder = Folder::new();
    let file = folder.write("path.csv", path);
    run(
        tussock()
            .arg("analyse")
            .arg(recording())
            .args([
                "--cut-width",
                "50cm",
                "--no-suggestions",
                "--format",
                format,
                "--reference",
            ])
            .arg(file),
        b"",
    )
    .with_code(0)
    .stdout
}

#[test]
fn a_path_moved_in_place_and_time_is_found_so_far_off() {
    let found: Value = serde_json::from_str(&held_to(&moved(true), "json")).expect("stdout is JSON");
    let reference = &found["reference"];
    assert_eq!(reference["is_timed"], true);
    let number = |path: [&str; 3]| {
        let [whose, what, which] = path;
        reference[whose][what][which].as_f64().unwrap_or(f64::NAN)
    };
    // It drives in all directions: 20 cm to one side show as 20 cm times the sine of the heading, along as the cosine.
    let cross_m = number(["logged", "cross_track", "rms_m"]);
    assert!((0.02..0.2).contains(&cross_m), "{cross_m}");
    let largest_m = number(["logged", "cross_track", "max_m"]);
    assert!(largest_m > cross_m && largest_m < 0.5, "{largest_m}");
    // Half a second early, but for the way that the move itself is worth.
    let early_s = number(["logged", "timing", "mean_s"]);
    assert!((-0.7..-0.3).contains(&early_s), "{early_s}");
    assert!(number(["located", "cross_track", "rms_m"]) < 0.25);
    assert!(reference["compared_fixes"].as_u64() > Some(5_000));
}

#[test]
fn without_times_the_table_says_so_and_without_a_path_nothing_is_invented() {
    let text = held_to(&moved(false), "human");
    assert!(text.contains("Reference"), "{text}");
    assert!(text.contains("cross-track, logged"), "{text}");
    assert!(!text.contains("timing"), "{text}");
    assert!(text.contains("has no times"), "{text}");

    let ran = run(
        tussock()
            .arg("analyse")
            .arg(recording())
            .args(["--no-suggestions", "--format", "json"]),
        b"",
    );
    let found: Value = serde_json::from_str(&ran.with_code(0).stdout).expect("stdout is JSON");
    assert!(found["reference"].is_null());
}

#[test]
fn a_path_that_is_none_is_refused_before_the_log_is_read() {
    let folder = Folder::new();
    let file = folder.write("path.csv", "x_m,y_m\n1,2\n1,north\n");
    let ran = run(
        tussock()
            .arg("analyse")
            .arg(recording())
            .arg("--reference")
            .arg(&file),
        b"",
    )
    .with_code(2);
    assert!(ran.stderr.contains("line 3"), "{ran}");
    let ran = run(
        tussock()
            .arg("analyse")
            .arg(recording())
            .args(["--reference", "nowhere.gpx"]),
        b"",
    )
    .with_code(2);
    assert!(ran.stderr.contains("nowhere.gpx: does not exist"), "{ran}");
}
