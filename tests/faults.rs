//! Full disks, folders that vanish, two writers at once: outputs are complete or absent, inputs stay as they were.

use crate::support::{Folder, Ran, lanes_csv, run};
use std::collections::BTreeMap;
use std::io::Write;
use std::process::{Child, Command, Stdio};

fn with_log() -> Folder {
    let folder = Folder::with_garden();
    folder.write("night.csv", lanes_csv(1800));
    folder
}

const ANALYSE: &str = "analyse night.csv --plan garden.geojson --cut-width 22cm --out result";

/// The command under a shell that lets no file grow beyond some blocks of 512 bytes.
fn on_a_small_disk(folder: &Folder, line: &str, blocks: u32, signal: &str) -> Ran {
    let shell = format!("{signal} ulimit -f {blocks}; exec \"$TUSSOCK\" {line}");
    run(
        Command::new("sh")
            .args(["-c", &shell])
            .env("TUSSOCK", env!("CARGO_BIN_EXE_tussock"))
            .current_dir(folder.path("")),
        b"",
    )
}

#[cfg(unix)]
#[test]
fn a_disk_that_is_full_leaves_the_folder_as_it_was() {
    let folder = with_log();
    let before = folder.content();
    let ran = on_a_small_disk(&folder, ANALYSE, 8, "trap '' XFSZ;").with_code(2);
    assert!(ran.stdout.is_empty(), "{ran}");
    assert!(
        ran.stderr.contains("error: --out: result cannot be written"),
        "{ran}"
    );
    assert_eq!(folder.content(), before, "{ran}");
    // Over an earlier result: that one stays, whole.
    folder.tussock(ANALYSE).with_code(0);
    let before = folder.content();
    let other = ANALYSE.replace("22cm", "24cm");
    for blocks in [0, 1, 8, 40] {
        let ran = on_a_small_disk(&folder, &other, blocks, "trap '' XFSZ;").with_code(2);
        assert_eq!(folder.content(), before, "{blocks} blocks\n{ran}");
    }
    folder.tussock(&other).with_code(0);
}

#[cfg(unix)]
#[test]
fn a_run_that_is_killed_while_it_writes_leaves_the_earlier_result_whole() {
    let folder = with_log();
    folder.tussock(ANALYSE).with_code(0);
    let before = folder.content();
    let other = ANALYSE.replace("22cm", "24cm");
    let ran = on_a_small_disk(&folder, &other, 8, "");
    assert_eq!(ran.code, None, "killed by the signal\n{ran}");
    for (name, bytes) in &before {
        assert!(folder.content().get(name) == Some(bytes), "{name} changed");
    }
    folder.tussock(&other).with_code(0);
}

#[cfg(target_os = "linux")]
#[test]
fn a_stdout_that_takes_nothing_is_an_error() {
    let folder = with_log();
    for line in [
        "inspect night.csv",
        "analyse night.csv --cut-width 22cm",
        "analyse night.csv --cut-width 22cm --format json",
        "plan check garden.geojson",
    ] {
        let full = std::fs::OpenOptions::new()
            .write(true)
            .open("/dev/full")
            .expect("it is there");
        let output = folder
            .command(line)
            .stdout(Stdio::from(full))
            .output()
            .expect("the command runs");
        let said = String::from_utf8_lossy(&output.stderr);
        assert_eq!(output.status.code(), Some(2), "{line}: {said}");
        assert!(
            said.starts_with("error: ") && said.contains("space"),
            "{line}: {said}"
        );
    }
}

/// Starts a run that reads its log from stdin, and comes back when it has looked at its folder and reads.
fn waiting(folder: &Folder, line: &str) -> Child {
    let mut child = folder
        .command(line)
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .stderr(Stdio::piped())
        .spawn()
        .expect("the command starts");
    // More than a pipe holds: when all of it is gone, the command reads, and arguments come before inputs.
    let remarks = lanes_csv(10) + &"# a remark between rows\n".repeat(20_000);
    let pipe = child.stdin.as_mut().expect("stdin is piped");
    pipe.write_all(remarks.as_bytes()).expect("it reads");
    child
}

fn finish(mut child: Child) -> Ran {
    let mut pipe = child.stdin.take().expect("stdin is piped");
    let rows = lanes_csv(1800);
    let rest = rows.lines().skip(11).collect::<Vec<_>>().join("\n");
    // A command that gave up does not read on.
    let _ = pipe.write_all(rest.as_bytes());
    drop(pipe);
    let output = child.wait_with_output().expect("the command ends");
    Ran {
        code: output.status.code(),
        stdout: String::from_utf8(output.stdout).expect("stdout is UTF-8"),
        stderr: String::from_utf8(output.stderr).expect("stderr is UTF-8"),
    }
}

const FROM_STDIN: &str = "analyse - --cut-width 22cm --out place/result";

#[test]
fn a_folder_that_vanishes_while_the_run_works_is_an_error() {
    let folder = Folder::new();
    std::fs::create_dir(folder.path("place")).expect("it is made");
    let child = waiting(&folder, FROM_STDIN);
    std::fs::remove_dir(folder.path("place")).expect("it is empty");
    folder.write("place", "somebody put a file here");
    let before = folder.content();
    let ran = finish(child).with_code(2);
    assert!(ran.stderr.contains("place/result cannot be written"), "{ran}");
    assert_eq!(folder.content(), before, "{ran}");
}

#[test]
fn somebody_elses_file_that_appears_while_the_run_works_is_not_replaced() {
    let folder = Folder::new();
    std::fs::create_dir(folder.path("place")).expect("it is made");
    let child = waiting(&folder, FROM_STDIN);
    folder.write("place/result/report.html", "my own page");
    let before = folder.content();
    let ran = finish(child).with_code(2);
    assert!(ran.stderr.contains("was not written by this tool"), "{ran}");
    assert_eq!(folder.content(), before, "{ran}");
}

#[test]
fn of_several_writers_into_one_folder_one_wins_whole() {
    let folder = with_log();
    let widths = [18, 20, 22, 24, 26];
    let line = |width: u32, out: &str| {
        format!("analyse night.csv --plan garden.geojson --cut-width {width}cm --no-suggestions --out {out}")
    };
    let alone: Vec<BTreeMap<String, Vec<u8>>> = widths
        .iter()
        .map(|width| {
            folder
                .tussock(&line(*width, &format!("alone-{width}")))
                .with_code(0);
            files_of(&folder, &format!("alone-{width}/"))
        })
        .collect();
    for round in 0..3 {
        let children: Vec<Child> = widths
            .iter()
            .map(|width| {
                folder
                    .command(&line(*width, "shared"))
                    .stdout(Stdio::null())
                    .stderr(Stdio::piped())
                    .spawn()
                    .expect("the command starts")
            })
            .collect();
        for child in children {
            let output = child.wait_with_output().expect("the command ends");
            let said = String::from_utf8_lossy(&output.stderr);
            assert_eq!(output.status.code(), Some(0), "round {round}: {said}");
        }
        let shared = files_of(&folder, "shared/");
        assert!(
            alone.contains(&shared),
            "round {round}: the folder holds a mixture of {:?}",
            shared.keys()
        );
    }
}

/// Files of a folder by name.
fn files_of(folder: &Folder, prefix: &str) -> BTreeMap<String, Vec<u8>> {
    folder
        .content()
        .into_iter()
        .filter_map(|(name, bytes)| Some((name.strip_prefix(prefix)?.to_owned(), bytes)))
        .filter(|(name, _)| !name.is_empty())
        .collect()
}

#[cfg(unix)]
#[test]
fn inputs_are_only_read() {
    use std::os::unix::fs::{MetadataExt, PermissionsExt};
    let folder = with_log();
    folder.write("garden.toml", "[machine]\ncut_width_m = 0.22\n");
    // Turns at the edges of its plan: the lanes have theirs a metre inside.
    let demo = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("fixtures/demo");
    std::fs::copy(demo.join("plan.geojson"), folder.path("demo.geojson")).expect("the demo has a plan");
    std::fs::copy(demo.join("before/2026-05-04.gpx.gz"), folder.path("demo.gpx.gz"))
        .expect("the demo has a log");
    folder
        .tussock("analyse night.csv --plan garden.geojson --settings garden.toml --out first")
        .with_code(0);
    let inputs = [
        "demo.gpx.gz",
        "demo.geojson",
        "night.csv",
        "garden.geojson",
        "garden.toml",
        "first/findings.json",
    ];
    let old = std::time::SystemTime::UNIX_EPOCH + std::time::Duration::from_secs(1_700_000_000);
    let state = |name: &str| {
        let found = std::fs::metadata(folder.path(name)).expect("it is there");
        (
            found.mtime(),
            found.ctime(),
            found.ctime_nsec(),
            found.ino(),
            found.mode(),
            folder.read(name),
        )
    };
    for name in inputs {
        let file = std::fs::File::options()
            .append(true)
            .open(folder.path(name))
            .expect("it is there");
        file.set_modified(old).expect("its time is set");
        std::fs::set_permissions(folder.path(name), PermissionsExt::from_mode(0o444)).expect("it is ours");
    }
    let before: Vec<_> = inputs.iter().map(|name| state(name)).collect();
    for line in [
        "inspect night.csv",
        "analyse night.csv --plan garden.geojson --settings garden.toml --out second",
        "report first/findings.json --out third",
        "plan check garden.geojson",
        "plan from-trace night.csv --out fourth.geojson",
        "plan align demo.geojson demo.gpx.gz",
        "compare --before night.csv --after first/findings.json --plan garden.geojson --settings garden.toml",
    ] {
        let ran = folder.tussock(line);
        assert!(matches!(ran.code, Some(0 | 1)), "{line}\n{ran}");
        let after: Vec<_> = inputs.iter().map(|name| state(name)).collect();
        assert!(before == after, "{line} changed an input");
    }
}
