//! A folder, an invented garden in it, and the command.

use std::collections::BTreeMap;
use std::fmt;
use std::io::Write;
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};
use tempfile::TempDir;

/// The invented garden lies in the middle of an ocean, where nobody has one.
pub(crate) const ORIGIN_LAT: f64 = 40.0;
pub(crate) const ORIGIN_LON: f64 = -30.0;
/// Metres of one degree there (WGS 84; within a millimetre over the garden).
const LAT_DEGREE_M: f64 = 111_034.6;
const LON_DEGREE_M: f64 = 85_393.7;

/// What came back.
pub(crate) struct Ran {
    pub(crate) code: Option<i32>,
    pub(crate) stdout: String,
    pub(crate) stderr: String,
}

impl fmt::Display for Ran {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let code = self.code.map_or("killed".to_owned(), |code| code.to_string());
        write!(
            f,
            "exit {code}\n--- stdout\n{}\n--- stderr\n{}",
            self.stdout.trim_end(),
            self.stderr.trim_end()
        )
    }
}

impl Ran {
    /// Insists on an exit code; shows everything where it is another.
    pub(crate) fn with_code(self, code: i32) -> Self {
        assert_eq!(self.code, Some(code), "{self}");
        self
    }
}

/// The command, with nothing in its environment that changes what it prints.
pub(crate) fn tussock() -> Command {
    let mut command = Command::new(env!("CARGO_BIN_EXE_tussock"));
    for name in [
        "NO_COLOR",
        "CLICOLOR",
        "CLICOLOR_FORCE",
        "COLUMNS",
        "RUST_BACKTRACE",
        "LC_ALL",
        "LC_MESSAGES",
        "LANG",
    ] {
        command.env_remove(name);
    }
    command
}

/// Runs a command to its end, with bytes on its stdin.
pub(crate) fn run(command: &mut Command, stdin: &[u8]) -> Ran {
    let mut child = command
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .stderr(Stdio::piped())
        .spawn()
        .expect("the command starts");
    let mut pipe = child.stdin.take().expect("stdin is piped");
    let bytes = stdin.to_vec();
    let feeder = std::thread::spawn(move || {
        // A command that does not read its stdin closes it; that is its right.
        let _ = pipe.write_all(&bytes);
    });
    let output = child.wait_with_output().expect("the command ends");
    feeder.join().expect("the feeder ends");
    Ran {
        code: output.status.code(),
        stdout: String::from_utf8(output.stdout).expect("stdout is UTF-8"),
        stderr: String::from_utf8(output.stderr).expect("stderr is UTF-8"),
    }
}

/// A folder that goes away after the test.
pub(crate) struct Folder {
    folder: TempDir,
}

impl Folder {
    pub(crate) fn new() -> Self {
        Self {
            folder: TempDir::new().expect("a folder for the test"),
        }
    }

    /// A folder with the plan of the invented garden.
    pub(crate) fn with_garden() -> Self {
        let folder = Self::new();
        folder.write("garden.geojson", garden(LAWN));
        folder
    }

    pub(crate) fn path(&self, name: &str) -> PathBuf {
        self.folder.path().join(name)
    }

    pub(crate) fn write(&self, name: &str, bytes: impl AsRef<[u8]>) -> PathBuf {
        let path = self.path(name);
        std::fs::create_dir_all(path.parent().expect("a folder")).expect("the folder is made");
        std::fs::write(&path, bytes).expect("the file is written");
        path
    }

    pub(crate) fn read(&self, name: &str) -> Vec<u8> {
        std::fs::read(self.path(name)).unwrap_or_else(|error| panic!("{name}: {error}"))
    }

    pub(crate) fn json(&self, name: &str) -> serde_json::Value {
        serde_json::from_slice(&self.read(name)).expect("it is JSON")
    }

    /// Runs `tussock` in the folder; words are split at blanks.
    pub(crate) fn tussock(&self, line: &str) -> Ran {
        run(
            tussock()
                .args(line.split_whitespace())
                .current_dir(self.folder.path()),
            b"",
        )
    }

    pub(crate) fn command(&self, line: &str) -> Command {
        let mut command = tussock();
        command
            .args(line.split_whitespace())
            .current_dir(self.folder.path());
        command
    }

    /// Everything in the folder with its content; folders end in `/`.
    pub(crate) fn content(&self) -> BTreeMap<String, Vec<u8>> {
        fn walk(root: &Path, folder: &Path, found: &mut BTreeMap<String, Vec<u8>>) {
            for entry in std::fs::read_dir(folder).expect("the folder is there") {
                let path = entry.expect("the entry is there").path();
                let name = path
                    .strip_prefix(root)
                    .expect("below the root")
                    .display()
                    .to_string();
                if path.is_dir() {
                    found.insert(format!("{name}/"), Vec::new());
                    walk(root, &path, found);
                } else {
                    found.insert(name, std::fs::read(&path).expect("the file is there"));
                }
            }
        }
        let mut found = BTreeMap::new();
        walk(self.folder.path(), self.folder.path(), &mut found);
        found
    }
}

/// A lawn of 24 by 16 m.
pub(crate) const LAWN: &[(f64, f64)] = &[(0.0, 0.0), (24.0, 0.0), (24.0, 16.0), (0.0, 16.0), (0.0, 0.0)];

/// Longitude and latitude of a place in the invented garden.
pub(crate) fn at((east_m, north_m): (f64, f64)) -> (f64, f64) {
    (
        ORIGIN_LON + east_m / LON_DEGREE_M,
        ORIGIN_LAT + north_m / LAT_DEGREE_M,
    )
}

pub(crate) fn ring(corners: &[(f64, f64)]) -> String {
    let corners: Vec<String> = corners
        .iter()
        .map(|corner| {
            let (lon, lat) = at(*corner);
            format!("[{lon:.8},{lat:.8}]")
        })
        .collect();
    format!("[{}]", corners.join(","))
}

/// One feature of a plan.
pub(crate) fn feature(role: &str, name: &str, kind: &str, coordinates: &str) -> String {
    format!(
        r#"{{"type":"Feature","properties":{{"role":"{role}","name":"{name}"}},"geometry":{{"type":"{kind}","coordinates":{coordinates}}}}}"#
    )
}

pub(crate) fn collection(features: &[String]) -> String {
    format!(
        "{{\"type\":\"FeatureCollection\",\"features\":[\n{}\n]}}\n",
        features.join(",\n")
    )
}

/// A plan with one lawn, a flower bed and a station.
pub(crate) fn garden(lawn: &[(f64, f64)]) -> String {
    let bed = [(15.0, 9.0), (18.0, 9.0), (18.0, 12.0), (15.0, 12.0), (15.0, 9.0)];
    let (lon, lat) = at((0.5, 8.0));
    collection(&[
        feature("lawn", "front", "Polygon", &format!("[{}]", ring(lawn))),
        feature("exclusion", "flower bed", "Polygon", &format!("[{}]", ring(&bed))),
        feature("station", "station", "Point", &format!("[{lon:.8},{lat:.8}]")),
    ])
}

/// A log that goes to and fro over the lawn, one fix a second at 0.4 m/s, as CSV.
pub(crate) fn lanes_csv(rows: usize) -> String {
    let mut text = String::from("time,lat,lon\n");
    for row in 0..rows {
        let driven_m = 0.4 * row as f64;
        let (lane, along_m) = ((driven_m / 22.0).floor(), driven_m % 22.0);
        let east_m = if lane % 2.0 == 0.0 {
            1.0 + along_m
        } else {
            23.0 - along_m
        };
        let (lon, lat) = at((east_m, 1.0 + 0.2 * lane));
        text.push_str(&format!(
            "2026-05-01T20:{:02}:{:02}Z,{lat:.9},{lon:.9}\n",
            row / 60 % 60,
            row % 60
        ));
    }
    text
}

/// Snapshot of what came back, version numbers taken out.
macro_rules! assert_ran {
    ($ran:expr, $name:expr) => {
        insta::with_settings!({filters => vec![
            (r"tussock \d+\.\d+\.\d+", "tussock [version]"),
        ], snapshot_path => "snapshots", prepend_module_to_snapshot => false, omit_expression => true}, {
            insta::assert_snapshot!($name, $ran.to_string());
        });
    };
}
pub(crate) use assert_ran;
