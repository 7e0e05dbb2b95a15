//! A log against a surveyed path: closed forms, and paths as they occur in practice.

use crate::nights::job;
use std::path::Path;
use tussock::{AnalyseError, Job, Survey, against_reference};
use tussock_ingest::{IngestError, ReadOptions, read_reference};
use tussock_types::{ErrorLength, Fix, Positions, Reference, ReferenceFindings, Settings, Trace};

const SPEED_MPS: f64 = 0.5;

fn near(value: f64, expected: f64, tolerance: f64) {
    assert!(
        (value - expected).abs() <= tolerance,
        "{value}, expected {expected}"
    );
}

/// One fix a second.
fn logged(places: &[(f64, f64)]) -> Trace {
    let mut trace = Trace::local("machine-1");
    for (second, (east_m, north_m)) in places.iter().enumerate() {
        trace.push(Fix::bare(1.7e9 + second as f64, *east_m, *north_m));
    }
    trace
}

fn surveyed(places: &[(f64, f64)], time_s: Option<Vec<f64>>) -> Reference {
    Reference {
        name: "path.csv".to_owned(),
        positions: Positions::Local {
            east_m: places.iter().map(|place| place.0).collect(),
            north_m: places.iter().map(|place| place.1).collect(),
        },
        piece: vec![0; places.len()],
        time_s,
    }
}

fn found(trace: Trace, reference: &Reference) -> Result<ReferenceFindings, AnalyseError> {
    let (traces, settings) = ([trace], Settings::default());
    let job = Job {
        seed: 0,
        ..job(&traces, None, &settings)
    };
    Survey::of(&job).and_then(|survey| against_reference(&survey, reference))
}

/// Seconds of the log, one each.
fn clock(seconds: usize) -> Vec<f64> {
    (0..seconds).map(|second| 1.7e9 + second as f64).collect()
}

#[test]
fn a_log_beside_and_ahead_of_the_path_is_so_far_beside_and_ahead() {
    // 10 cm to the left and 30 cm ahead on a path whose corners are 50 cm apart.
    let path: Vec<(f64, f64)> = (0..400)
        .map(|second| (SPEED_MPS * f64::from(second), 0.0))
        .collect();
    // The log ends before the path does, where "ahead" would be past the end.
    let log: Vec<(f64, f64)> = path[..399]
        .iter()
        .map(|(east_m, _)| (east_m + 0.3, 0.1))
        .collect();
    let found = found(logged(&log), &surveyed(&path, Some(clock(400)))).unwrap();
    let cross = found.logged.cross_track.unwrap();
    for size_m in [cross.mean_m, cross.rms_m, cross.p95_m] {
        near(size_m, 0.1, 1e-9);
    }
    let along = found.logged.along_track.unwrap();
    near(along.p95_m, 0.3, 1e-6);
    near(along.mean_m, 0.3, 1e-3);
    // Ahead by 30 cm at 0.5 m/s is early by 0.6 s.
    near(found.logged.timing.unwrap().p95_s, 0.6, 1e-5);
    assert!(found.logged.timing.unwrap().mean_s < -0.59);
    near(found.located.cross_track.unwrap().mean_m, 0.1, 0.01);
    near(cross.max_m, 0.1, 1e-9);
    // Nothing is passed again.
    assert_eq!(found.logged.pass_to_pass, None);
    assert_eq!(found.beside_fixes, 0);
    near(found.length_m, 199.5, 1e-9);
}

#[test]
fn cross_track_is_measured_to_the_segment_and_not_to_the_vertex() {
    // Corners far apart, with the log between them: the nearest vertex is up to 5 m away, the segment 2 cm.
    let path: Vec<(f64, f64)> = (0..21).map(|corner| (10.0 * f64::from(corner), 0.0)).collect();
    let log: Vec<(f64, f64)> = (0..400)
        .map(|second| (SPEED_MPS * f64::from(second), -0.02))
        .collect();
    let found = found(logged(&log), &surveyed(&path, None)).unwrap();
    let cross = found.logged.cross_track.unwrap();
    near(cross.mean_m, -0.02, 1e-9);
    near(cross.max_m, 0.02, 1e-9);
    assert_eq!((found.logged.along_track, found.logged.timing), (None, None));
    assert!(!found.is_timed);
}

#[test]
fn pass_to_pass_is_the_change_of_the_error_from_lap_to_lap() {
    // Laps of 150 s round a circle; the error outwards swings with a period of 400 s. The change over a lap of a sine of amplitude
    // a swings with amplitude 2 a sin(pi 150 / 400): its root mean square is sqrt(2) a sin(pi 150 / 400).
    let (lap_s, period_s, swing_m, seconds) = (150.0, 400.0, 0.05, 6000_usize);
    let radius_m = SPEED_MPS * lap_s / std::f64::consts::TAU;
    let at = |radius_m: f64, second: f64| {
        let angle = std::f64::consts::TAU * second / lap_s;
        (radius_m * angle.cos(), radius_m * angle.sin())
    };
    let error_m = |second: f64| swing_m * (std::f64::consts::TAU * second / period_s).sin();
    let path: Vec<(f64, f64)> = (0..=3600)
        .map(|step| at(radius_m, lap_s * f64::from(step) / 3600.0))
        .collect();
    let log: Vec<(f64, f64)> = (0..seconds)
        .map(|second| at(radius_m + error_m(second as f64), second as f64))
        .collect();
    let found = found(logged(&log), &surveyed(&path, None)).unwrap();
    let cross = found.logged.cross_track.unwrap();
    near(cross.rms_m, swing_m / 2.0_f64.sqrt(), 3e-4);
    near(
        cross.p95_m,
        swing_m * (0.95 * std::f64::consts::FRAC_PI_2).sin(),
        3e-4,
    );
    let passes = found.logged.pass_to_pass.unwrap();
    let expected_m = 2.0_f64.sqrt() * swing_m * (std::f64::consts::PI * lap_s / period_s).sin();
    near(passes.rms_m, expected_m, 0.02 * expected_m);
    // All but the last lap have one to follow.
    assert!(
        passes.values as f64 > 0.95 * (seconds as f64 - lap_s),
        "{}",
        passes.values
    );
}

#[test]
fn a_shift_of_the_whole_log_is_no_pass_to_pass_error_and_an_antenna_off_the_middle_is() {
    let to_and_fro = |second: usize| {
        let along = second % 400;
        if along < 200 {
            (SPEED_MPS * along as f64, 1.0)
        } else {
            (SPEED_MPS * (400 - along) as f64, -1.0)
        }
    };
    let path: Vec<(f64, f64)> = (0..1600).map(|second| (to_and_fro(second).0, 0.0)).collect();
    let timed = surveyed(&path, Some(clock(1600)));
    let passes = |off: &dyn Fn(f64) -> f64| -> ErrorLength {
        let log: Vec<(f64, f64)> = (0..1600)
            .map(|second| (to_and_fro(second).0, off(to_and_fro(second).1)))
            .collect();
        found(logged(&log), &timed).unwrap().logged.pass_to_pass.unwrap()
    };
    near(passes(&|_| 0.1).rms_m, 0.0, 1e-6);
    // Always to the machine's left: 20 cm from one pass to the pass back.
    near(passes(&|out| 0.1 * out).p95_m, 0.2, 1e-6);
}

#[test]
fn fixes_on_another_errand_are_counted_apart_and_what_cannot_be_laid_on_the_log_is_said() {
    let path: Vec<(f64, f64)> = (0..100)
        .map(|second| (SPEED_MPS * f64::from(second), 0.0))
        .collect();
    let log: Vec<(f64, f64)> = (0..200)
        .map(|second| (SPEED_MPS * f64::from(second), 0.0))
        .collect();
    let sound = found(logged(&log), &surveyed(&path, None)).unwrap();
    // From 49.5 m on, 10 m more count.
    assert_eq!((sound.compared_fixes, sound.beside_fixes), (120, 80));
    let short = found(logged(&log), &surveyed(&path[..1], None)).unwrap_err();
    assert_eq!(
        short.to_string(),
        "path.csv: it has no two places, expected a path"
    );
    let on_earth = Reference {
        positions: Positions::Geographic {
            lat_deg: vec![52.0; 2],
            lon_deg: vec![5.0, 5.1],
        },
        ..surveyed(&path[..2], None)
    };
    assert!(matches!(
        found(logged(&log), &on_earth),
        Err(AnalyseError::ReferenceApart { .. })
    ));
}

fn read(name: &str, bytes: &[u8]) -> Result<Reference, IngestError> {
    read_reference(name, bytes, &ReadOptions::default())
}

#[test]
fn surveyed_paths_are_read_with_and_without_times() {
    let recording = |name: &str| {
        let root = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../fixtures/recordings/gpx/gps-accuracy");
        std::fs::read(root.join(name)).unwrap()
    };
    // A planned route of 833 points without times, and one with.
    let route = read("a.gpx", &recording("whitchurch-routeA.gpx")).unwrap();
    assert_eq!((route.positions.len(), route.time_s), (833, None));
    let timed = read("b.gpx", &recording("whitchurch-routeB.gpx")).unwrap();
    assert_eq!(timed.time_s.map(|times| times.len()), Some(timed.positions.len()));

    let gpx = b"<gpx version=\"1.1\"><trk><trkseg><trkpt lat=\"1\" lon=\"2\"/><trkpt lat=\"1\" lon=\"3\"/></trkseg>\
        <trkseg><trkpt lat=\"2\" lon=\"2\"/><trkpt lat=\"2\" lon=\"3\"/></trkseg></trk></gpx>";
    assert_eq!(read("c.gpx", gpx).unwrap().piece, [0, 0, 1, 1]);

    let table = read("d.csv", b"x_m;y_m\n0;0\n\n10,5;0\n10,5;4\n").unwrap();
    assert_eq!(
        table.positions,
        Positions::Local {
            east_m: vec![0.0, 10.5, 10.5],
            north_m: vec![0.0, 0.0, 4.0]
        }
    );
    let timed = read("e.csv", b"time_s,x_m,y_m\n0,0,0\n1,10,0\n").unwrap();
    assert_eq!(timed.time_s, Some(vec![0.0, 1.0]));

    let faulty = read("f.csv", b"lat,lon\n52,5\n52,x\n").unwrap_err();
    assert!(faulty.to_string().starts_with("f.csv: line 3, byte"), "{faulty}");
    assert!(matches!(
        read("g.csv", b"lat,lon\n52,5\n"),
        Err(IngestError::NoPath { corners: 1, .. })
    ));
    assert!(matches!(
        read("h.txt", b"nothing of the kind\n"),
        Err(IngestError::NotALog { .. })
    ));
}
