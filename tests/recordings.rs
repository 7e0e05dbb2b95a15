//! Every recording that we may keep goes through `inspect` without a panic.

use crate::support::{Ran, run, tussock};
use std::path::{Path, PathBuf};

fn recordings() -> Vec<PathBuf> {
    fn walk(folder: &Path, found: &mut Vec<PathBuf>) {
        for entry in std::fs::read_dir(folder).expect("the folder is there") {
            let path = entry.expect("the entry is there").path();
            if path.is_dir() {
                walk(&path, found);
            } else {
                found.push(path);
            }
        }
    }
    let mut found = Vec::new();
    walk(
        &Path::new(env!("CARGO_MANIFEST_DIR")).join("fixtures/recordings"),
        &mut found,
    );
    let is_paper = |path: &PathBuf| {
        let name = path.file_name().unwrap_or_default().to_string_lossy().to_string();
        name.starts_with("LICENSE") || name.ends_with(".md")
    };
    found.retain(|path| !is_paper(path));
    found.sort();
    found
}

#[test]
fn every_recording_is_inspected_or_refused_with_a_reason() {
    let recordings = recordings();
    assert!(
        recordings.len() >= 50,
        "only {} recordings were seen",
        recordings.len()
    );
    let mut inspected = 0;
    for path in &recordings {
        let ran: Ran = run(tussock().arg("inspect").arg(path), b"");
        let name = path.display();
        assert!(!ran.stderr.contains("panicked"), "{name}\n{ran}");
        match ran.code {
            Some(0) => {
                inspected += 1;
                assert!(ran.stdout.lines().count() > 5, "{name}\n{ran}");
            }
            Some(2) => assert!(
                ran.stdout.is_empty() && ran.stderr.starts_with("error: "),
                "{name}\n{ran}"
            ),
            _ => panic!("{name}\n{ran}"),
        }
    }
    // Most of them are drives; the rest are start-ups without a fix, routes without times, and the like.
    assert!(
        inspected * 2 > recordings.len(),
        "only {inspected} of {} were inspected",
        recordings.len()
    );
}
