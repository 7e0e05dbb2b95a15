//! The night shift as an operator runs it: damaged logs among good ones, a disk that is really full, a build without buckets.

use crate::support::{Folder, Ran, run, tussock};
use std::collections::BTreeMap;
use std::path::Path;
use std::process::Command;
use tussock_batch::night::NightNumber;
use tussock_batch::table::{TABLES, TableRow};
use tussock_batch::{ColumnChoice, Store};

const EVER: std::ops::RangeInclusive<NightNumber> = NightNumber::MIN..=NightNumber::MAX;

/// Rows of all tables by table, garden and night. The wall clock stands in none of them.
type Content = BTreeMap<(&'static str, String, NightNumber), Vec<TableRow>>;

fn content(store: &Path) -> Content {
    let store = Store::open(store).expect("a store");
    let mut out = Content::new();
    for table in TABLES {
        for (night, row) in store
            .rows(table, ColumnChoice::All, EVER, &|_| true)
            .expect("rows")
        {
            let garden = row[0].text().expect("a garden").to_owned();
            out.entry((table.name, garden, night)).or_default().push(row);
        }
    }
    out.values_mut()
        .for_each(|rows| rows.sort_by(tussock_batch::table::order));
    out
}

fn with_gardens(count: u32, nights: u32) -> Folder {
    let folder = Folder::new();
    folder
        .tussock(&format!(
            "simulate gardens --count {count} --nights {nights} --hours 0.3 --period 2s --area 120-200 --faulty 0 --troubled 0 --out load"
        ))
        .with_code(0);
    folder
}

const RUN: &str = "batch run load/gardens --no-suggestions --store";

#[test]
fn with_one_log_in_twenty_damaged_the_others_are_as_they_would_have_been() {
    let folder = with_gardens(20, 2);
    folder.tussock(&format!("{RUN} whole")).with_code(0);
    // No log at all, and a packed one whose first bytes are gone: nothing can be had from either.
    let lost = ["garden-0004/logs/night-000.gpx", "garden-0017/logs/night-001.gpx"];
    for (number, log) in lost.iter().enumerate() {
        let path = folder.path("load/gardens").join(log);
        let bytes = std::fs::read(&path).expect("the log");
        let damaged = if number == 0 {
            bytes.iter().map(|byte| byte ^ 0x5a).collect()
        } else {
            bytes[..40].to_vec()
        };
        std::fs::write(path, damaged).expect("written");
    }
    let ran = folder.tussock(&format!("{RUN} damaged")).with_code(3);
    for log in lost {
        let told = ran.stderr.lines().filter(|line| line.contains(log)).count();
        assert_eq!(told, 1, "{log}\n{ran}");
    }
    assert!(ran.stderr.contains("38 nights analysed, 2 failed"), "{ran}");
    let (whole, damaged) = (content(&folder.path("whole")), content(&folder.path("damaged")));
    let is_hit = |garden: &str| ["garden-0004", "garden-0017"].contains(&garden);
    let mut same = 0;
    for (at, rows) in &whole {
        if is_hit(&at.1) {
            continue;
        }
        assert_eq!(damaged.get(at), Some(rows), "{at:?}");
        same += rows.len();
    }
    assert!(same >= 18 * 5, "{same} rows");
    // Of the gardens that were hit, the other night is there, and the failure with its digest.
    for garden in ["garden-0004", "garden-0017"] {
        let count = |table: &str| {
            damaged
                .iter()
                .filter(|((name, of, _), _)| *name == table && of == garden)
                .map(|(_, rows)| rows.len())
                .sum::<usize>()
        };
        assert_eq!(
            (count("nights"), count("logs"), count("failures")),
            (1, 1, 1),
            "{garden}"
        );
    }
    // Known to fail: not tried again, nothing new, so nothing to complain about.
    folder.tussock(&format!("{RUN} damaged")).with_code(0);
    assert_eq!(content(&folder.path("damaged")), damaged);
}

/// A shell in which `store` is a file system of its own with so few KiB; none where this machine lets us make none.
#[cfg(target_os = "linux")]
fn on_a_disk_of(kib: u64, folder: &Folder, script: &str) -> Option<Ran> {
    let inside = format!("mount -t tmpfs -o size={kib}k tmpfs store || exit 77\n{script}");
    std::fs::create_dir_all(folder.path("store")).expect("a folder");
    let mut ways = [
        vec!["unshare", "--mount", "sh", "-c", &inside],
        vec![
            "unshare",
            "--user",
            "--map-root-user",
            "--mount",
            "sh",
            "-c",
            &inside,
        ],
    ]
    .into_iter()
    .map(|words| {
        run(
            Command::new(words[0])
                .args(&words[1..])
                .env("TUSSOCK", tussock().get_program())
                .current_dir(folder.path("")),
            b"",
        )
    });
    ways.find(|ran| ran.code != Some(77) && !ran.stderr.starts_with("unshare:"))
}

#[cfg(target_os = "linux")]
#[test]
fn on_a_full_disk_nothing_is_lost_and_with_room_again_it_goes_on() {
    let folder = with_gardens(8, 2);
    folder.tussock(&format!("{RUN} calm --chunk 2")).with_code(0);
    let calm = content(&folder.path("calm"));
    // A file that is not ours leaves room for nothing, for a part, for nearly all of what the store needs at its largest; then it
    // goes. Small files take whole pages, and a commit writes the new files before the old ones go.
    let pages = |bytes: &Vec<u8>| (bytes.len() as u64).div_ceil(4096);
    let calm_files = folder.content();
    let calm_kib: u64 = 4 * calm_files
        .iter()
        .filter(|(name, _)| name.starts_with("calm/"))
        .map(|(_, bytes)| pages(bytes) + 1)
        .sum::<u64>();
    let disk_kib = 3 * calm_kib;
    let filled: Vec<u64> = [0, 2, 4, 6, 9]
        .iter()
        .map(|tenths| disk_kib - calm_kib * tenths / 10)
        .collect();
    let steps: String = filled.iter().map(|kib| format!("{kib} ")).collect();
    let script = format!(
        "for kib in {steps}; do
             rm -f store/ballast; head -c ${{kib}}K /dev/zero > store/ballast 2> /dev/null
             \"$TUSSOCK\" {RUN} store/of-us --chunk 2 > /dev/null 2>> told; echo \"code $?\"
             cp -r store/of-us copy-$kib 2> /dev/null
         done
         rm store/ballast
         \"$TUSSOCK\" {RUN} store/of-us --chunk 2 2>> told; echo \"code $?\"
         cp -r store/of-us end"
    );
    let Some(ran) = on_a_disk_of(disk_kib, &folder, &script) else {
        eprintln!(
            "no file system can be mounted here; tests of the store fill a disk step by step without one"
        );
        return;
    };
    let codes: Vec<&str> = ran
        .stdout
        .lines()
        .filter(|line| line.starts_with("code"))
        .collect();
    assert_eq!(codes.len(), 6, "{ran}");
    assert_eq!((codes[0], codes[5]), ("code 5", "code 0"), "{ran}");
    assert!(
        codes.iter().all(|code| ["code 0", "code 5"].contains(code)),
        "{ran}"
    );
    let told = String::from_utf8(folder.read("told")).expect("text");
    assert!(told.contains("store"), "{told}");
    // At every stop the store could be read, and what it held was right.
    for kib in filled {
        let copy = folder.path(&format!("copy-{kib}"));
        if !copy.join("tussock-store.json").exists() {
            continue;
        }
        for (at, rows) in content(&copy) {
            assert!(
                at.0 == "gardens" || calm.get(&at) == Some(&rows),
                "{kib} KiB filled, {at:?}"
            );
        }
    }
    assert_eq!(content(&folder.path("end")), calm);
}

#[test]
fn a_build_without_buckets_says_which_one_reads_them() {
    let folder = Folder::new();
    let ran = folder
        .tussock("batch run s3://lawns/spring --store store")
        .with_code(2);
    assert!(ran.stderr.contains("s3://lawns/spring"), "{ran}");
    assert!(ran.stderr.contains("feature s3"), "{ran}");
    assert!(!folder.path("store").exists(), "{ran}");
}

/// 2026-06-30T20:00:00Z: after all nights that are invented here.
const NOW: &str = "2026-06-30T20:00:00Z";

/// Says of a file that it was written at [`NOW`].
fn written_now(path: &Path) {
    let now = std::time::UNIX_EPOCH + std::time::Duration::from_secs(1_782_849_600);
    let file = std::fs::File::options().write(true).open(path).expect("a file");
    file.set_modified(now).expect("its time is set");
}

#[test]
fn a_log_dated_a_year_ahead_empties_nothing_and_what_expires_is_said() {
    let folder = with_gardens(1, 3);
    let logs = folder.path("load/gardens/garden-0001/logs");
    let first = std::fs::read_to_string(logs.join("night-000.gpx")).expect("the log");
    folder.write("load/gardens/gardens.toml", "retention_days = 15");
    for (name, date) in [("ahead", "2027-05-01"), ("older", "2026-04-10")] {
        let text = first.replace("2026-05-01", date);
        assert_ne!(text, first);
        std::fs::write(logs.join(format!("{name}.gpx")), text).expect("written");
    }
    for log in std::fs::read_dir(&logs).expect("logs") {
        written_now(&log.expect("a log").path());
    }
    let line = format!("{RUN} store --now {NOW}");
    let ran = folder.tussock(&line).with_code(3);
    assert!(ran.stderr.contains("logs/ahead.gpx (clock)"), "{ran}");
    assert!(ran.stderr.contains("set aside: 2027-05-01"), "{ran}");
    assert!(
        ran.stderr
            .contains("expired: 1 night of gardens before 2026-04-19"),
        "{ran}"
    );
    let nights = |content: &Content| -> Vec<NightNumber> {
        let of_nights = content.keys().filter(|(table, ..)| *table == "nights");
        of_nights.map(|(_, _, night)| *night).collect()
    };
    let kept = content(&folder.path("store"));
    assert_eq!(nights(&kept).len(), 3);
    // As told to programs.
    let ran = folder.tussock(&format!("{line} --log-format json")).with_code(0);
    assert!(ran.stderr.contains("\"expired_before\":\"2026-04-19\""), "{ran}");
    assert_eq!(content(&folder.path("store")), kept);
    // Forty days later: nothing goes without a word.
    let text = first.replace("2026-05-01", "2026-06-12");
    std::fs::write(logs.join("later.gpx"), text).expect("written");
    written_now(&logs.join("later.gpx"));
    let ran = folder.tussock(&line).with_code(2);
    assert!(ran.stderr.contains("3 of 4 nights"), "{ran}");
    assert!(ran.stderr.contains("--expire-at-most 75%"), "{ran}");
    assert_eq!(nights(&content(&folder.path("store"))).len(), 5);
    let ran = folder
        .tussock(&format!("{line} --expire-at-most 75%"))
        .with_code(0);
    assert!(
        ran.stderr
            .contains("expired: 4 nights of gardens before 2026-05-29"),
        "{ran}"
    );
    assert_eq!(nights(&content(&folder.path("store"))).len(), 1);
    for (words, told) in [
        ("--now yesterday", "--now: \"yesterday\""),
        ("--expire-at-most 120", "--expire-at-most: \"120\""),
    ] {
        let ran = folder.tussock(&format!("{RUN} store {words}")).with_code(2);
        assert!(ran.stderr.contains(told), "{ran}");
    }
}

#[cfg(unix)]
#[test]
fn what_lies_outside_of_the_gardens_is_not_read_unless_it_is_allowed() {
    let folder = with_gardens(3, 1);
    let place = folder.path("load/gardens");
    // A link in the place of a log, one in the place of a folder of logs, and a garden that is as it should be.
    let (log, logs) = (
        place.join("garden-0001/logs/night-000.gpx"),
        place.join("garden-0002/logs"),
    );
    std::fs::rename(&log, folder.path("elsewhere.gpx")).expect("moved");
    std::os::unix::fs::symlink(folder.path("elsewhere.gpx"), &log).expect("a link");
    std::fs::rename(&logs, folder.path("elsewhere")).expect("moved");
    std::os::unix::fs::symlink("../../../elsewhere", &logs).expect("a link");
    let gardens = |store: &str| -> Vec<String> {
        let content = content(&folder.path(store));
        let of_nights = content.keys().filter(|(table, ..)| *table == "nights");
        of_nights.map(|(_, garden, _)| garden.clone()).collect()
    };
    let ran = folder.tussock(&format!("{RUN} store")).with_code(3);
    for what in [
        "garden-0001: garden-0001/logs/night-000.gpx (unreadable)",
        "garden-0002: logs (unreadable)",
    ] {
        assert!(ran.stderr.contains(what), "{ran}");
    }
    assert!(
        ran.stderr.contains("leads out of the folder of the gardens"),
        "{ran}"
    );
    assert_eq!(gardens("store"), ["garden-0003"]);
    folder
        .tussock(&format!("{RUN} store --allow-outside"))
        .with_code(0);
    assert_eq!(gardens("store").len(), 3);
    // The same by the manifest: then nothing is done at all.
    folder.write(
        "load/gardens/gardens.toml",
        "[[garden]]\nname = \"garden-0003\"\n[[garden]]\nname = \"x\"\nplan = \"garden-0003/plan.geojson\"\nlogs = \"../../elsewhere\"\n",
    );
    let ran = folder.tussock(&format!("{RUN} other")).with_code(2);
    assert!(
        ran.stderr
            .contains("logs \"../../elsewhere\" leads out of the folder of gardens.toml"),
        "{ran}"
    );
    assert!(!folder.path("other").exists(), "{ran}");
    folder
        .tussock(&format!("{RUN} other --allow-outside"))
        .with_code(0);
    assert_eq!(gardens("other"), ["garden-0003", "x"]);
}

/// Lines of stderr as JSON; each says when, how grave, of which run and of which garden.
fn log_lines(ran: &Ran) -> Vec<serde_json::Value> {
    let lines: Vec<serde_json::Value> = ran
        .stderr
        .lines()
        .map(|line| serde_json::from_str(line).unwrap_or_else(|error| panic!("{error}: {line}\n{ran}")))
        .collect();
    for line in &lines {
        let text = |key: &str| line[key].as_str().unwrap_or_else(|| panic!("{key}: {line}"));
        assert!(text("time").ends_with('Z') && text("time").len() == 20, "{line}");
        assert!(["info", "warning", "error"].contains(&text("level")), "{line}");
        assert_eq!(text("run"), lines[0]["run"].as_str().expect("a run"), "{line}");
        assert!(
            !text("message").is_empty() && line.get("garden").is_some(),
            "{line}"
        );
    }
    lines
}

#[test]
fn each_exit_code_tells_a_scheduler_what_became_of_the_night() {
    let folder = with_gardens(4, 2);
    let run = format!("{RUN} store --now {NOW}");
    // 0, with one line for people, and figures for programs where they are wished for.
    let ran = folder.tussock(&run).with_code(0);
    assert_eq!((ran.stdout.len(), ran.stderr.lines().count()), (0, 1), "{ran}");
    let ran = folder.tussock(&format!("{run} --format json")).with_code(0);
    let figures: serde_json::Value = serde_json::from_str(&ran.stdout).expect("JSON");
    assert_eq!(
        (figures["gardens"].as_u64(), figures["logs"].as_u64()),
        (Some(4), Some(0)),
        "{ran}"
    );
    // 1, where it was asked for: three nights without a log of one garden; known, it no longer counts.
    let report = "batch report store --date 2026-05-05 --fail-on-visit";
    let now = "2026-05-05";
    folder
        .tussock("batch report store --date 2026-05-02 --fail-on-visit")
        .with_code(0);
    for garden in ["garden-0001", "garden-0002", "garden-0003"] {
        let log = folder.path(&format!("load/gardens/{garden}/logs/night-001.gpx"));
        let text = std::fs::read_to_string(log)
            .expect("the log")
            .replace("2026-05-02", now);
        folder.write(&format!("load/gardens/{garden}/logs/night-004.gpx"), &text);
    }
    folder.tussock(&run).with_code(0);
    let ran = folder.tussock(report).with_code(1);
    assert!(
        ran.stdout.contains("No log since 2026-05-03: 3 expected nights."),
        "{ran}"
    );
    assert!(ran.stderr.contains("2 of 4 gardens to visit"), "{ran}");
    for (garden, alarm) in [("garden-0003", "missed_pocket"), ("garden-0004", "absent")] {
        let mark =
            format!("batch acknowledge store {garden} --alarm {alarm} --date 2026-05-05 --reason holidays");
        folder.tussock(&mark).with_code(0);
    }
    let ran = folder.tussock(report).with_code(0);
    assert!(ran.stdout.contains("(known: holidays)"), "{ran}");
    // What opens later is told anew; muted, it is not told at all.
    folder
        .tussock("batch mute store garden-0004 --until 2026-05-05")
        .with_code(0);
    let ran = folder.tussock(report).with_code(0);
    assert!(!ran.stdout.contains("garden-0004"), "{ran}");
    // 2: wrong use.
    folder
        .tussock("batch mute store garden-0099 --until 2026-05-04")
        .with_code(2);
    folder
        .tussock("batch mute store garden-0004 --until soon")
        .with_code(2);
    folder
        .tussock("batch acknowledge store garden-0004 --alarm moles")
        .with_code(2);
    folder.tussock(&format!("{RUN} store --now soon")).with_code(2);
    folder.tussock("batch run nowhere --store other").with_code(2);
    folder.write("load/gardens/gardens.toml", "night_turns_at_h = 30");
    folder.tussock(&run).with_code(2);
    std::fs::remove_file(folder.path("load/gardens/gardens.toml")).expect("gone");
    // 3: a log that is none.
    folder.write("load/gardens/garden-0001/logs/letter.gpx", "Dear customer");
    let ran = folder.tussock(&format!("{run} --log-format json")).with_code(3);
    let lines = log_lines(&ran);
    let warned = lines
        .iter()
        .find(|line| line["what"] == "garden-0001/logs/letter.gpx")
        .expect("a line");
    assert_eq!(
        (warned["level"].as_str(), warned["garden"].as_str()),
        (Some("warning"), Some("garden-0001"))
    );
    // 5: the store cannot be used, by a run or a report; a log of it in JSON says so too.
    let list = folder.read("store/tussock-store.json");
    let broken = &list[..list.len() / 2];
    std::fs::write(folder.path("store/tussock-store.json"), broken).expect("written");
    let ran = folder.tussock(&format!("{run} --log-format json")).with_code(5);
    assert_eq!(
        log_lines(&ran).last().map(|line| line["level"].clone()),
        Some("error".into()),
        "{ran}"
    );
    folder.tussock(report).with_code(5);
    folder.tussock("batch report nowhere").with_code(5);
    std::fs::write(folder.path("store/tussock-store.json"), &list).expect("written");
    let held = Store::open_to_write(&folder.path("store"), "x").expect("open");
    folder.tussock(&run).with_code(5);
    // What the operator says needs no run to end.
    folder
        .tussock("batch mute store garden-0001 --until 2026-05-04")
        .with_code(0);
    drop(held);
    // 4: what was there is gone: all logs, all gardens, the place itself. Nothing is taken from the store.
    let before = content(&folder.path("store"));
    for garden in 1..=4 {
        std::fs::remove_dir_all(folder.path(&format!("load/gardens/garden-000{garden}/logs"))).expect("gone");
    }
    let ran = folder.tussock(&run).with_code(4);
    assert!(ran.stderr.contains("4 gardens, 0 with something new"), "{ran}");
    for garden in 1..=4 {
        std::fs::remove_dir_all(folder.path(&format!("load/gardens/garden-000{garden}"))).expect("gone");
    }
    folder.tussock(&run).with_code(4);
    std::fs::remove_dir_all(folder.path("load/gardens")).expect("gone");
    folder.tussock(&run).with_code(4);
    assert_eq!(content(&folder.path("store")), before);
    // Silent all at once: nobody is to be visited, but nothing came.
    let ran = folder
        .tussock("batch report store --date 2026-05-09 --fail-on-visit")
        .with_code(4);
    assert!(
        ran.stdout
            .contains("3 of 4 gardens have sent nothing since 2026-05-06"),
        "{ran}"
    );
}

#[test]
fn a_dry_run_names_what_could_not_be_used_and_writes_nothing() {
    let folder = with_gardens(3, 1);
    let check = "batch check load/gardens";
    let before = folder.content();
    let ran = folder.tussock(check).with_code(0);
    assert!(
        ran.stderr
            .contains("3 gardens, 3 logs in all: 0 could not be used"),
        "{ran}"
    );
    assert_eq!(folder.content(), before);
    folder.write("load/gardens/garden-0001/plan.geojson", "{}");
    folder.write(
        "load/gardens/garden-0002/settings.toml",
        "[machine]\ncut_widht_m = 0.2\n",
    );
    folder.write("load/gardens/garden-0003/logs/new.gpx", "no log");
    let ran = folder.tussock(&format!("{check} --log-format json")).with_code(3);
    let lines = log_lines(&ran);
    for (garden, reason) in [
        ("garden-0001", "plan"),
        ("garden-0002", "settings"),
        ("garden-0003", "damaged"),
    ] {
        let named = lines
            .iter()
            .any(|line| line["garden"] == garden && line["reason"] == reason);
        assert!(named, "{garden}\n{ran}");
    }
    folder.write("load/gardens/gardens.toml", "widht = 3");
    folder.tussock(check).with_code(2);
    std::fs::create_dir_all(folder.path("empty")).expect("a folder");
    folder.tussock("batch check empty").with_code(4);
}

#[test]
fn figures_for_prometheus_are_whole_and_replace_nothing_of_others() {
    let folder = with_gardens(3, 1);
    let run = format!("{RUN} store --now {NOW} --metrics figures.prom");
    folder.tussock(&run).with_code(0);
    let text = || String::from_utf8(folder.read("figures.prom")).expect("text");
    let has = |line: &str| assert!(text().lines().any(|one| one == line), "{line}\n{}", text());
    has("tussock_run_exit_code 0");
    has("tussock_run_nights_analysed 3");
    has("tussock_gardens_known 3");
    has("tussock_gardens_undelivered 3");
    has("tussock_alarms_open{kind=\"stuck_spot\"} 0");
    for line in text().lines().filter(|line| !line.starts_with('#')) {
        let (name, value) = line.rsplit_once(' ').expect("a sample");
        assert!(
            name.starts_with("tussock_") && value.parse::<f64>().is_ok(),
            "{line}"
        );
    }
    // A run that fails says so too.
    std::fs::remove_dir_all(folder.path("load/gardens")).expect("gone");
    folder.tussock(&run).with_code(4);
    has("tussock_run_exit_code 4");
    folder.write("figures.prom", "somebody else's");
    folder.tussock(&run).with_code(2);
    assert_eq!(folder.read("figures.prom"), b"somebody else's");
}

#[test]
fn the_report_of_six_o_clock_is_of_the_night_that_has_just_ended_by_the_gardens_clock() {
    let folder = with_gardens(2, 2);
    for (garden, zone) in [(1, "Pacific/Auckland"), (2, "America/Los_Angeles")] {
        let path = format!("load/gardens/garden-000{garden}/settings.toml");
        let text = String::from_utf8(folder.read(&path)).expect("text");
        let text = text.replace("[garden]\n", &format!("[garden]\ntime_zone = \"{zone}\"\n"));
        folder.write(&path, &text);
    }
    folder.tussock(&format!("{RUN} store --now {NOW}")).with_code(0);
    // Logs begin at 20:00 UTC on 1 and 2 May: in Auckland (UTC+12) at 8 in the morning, before noon, so still in the nights of 1 and 2
    // May; in Los Angeles (UTC-7) at 13:00, after it.
    let nights: Vec<String> = content(&folder.path("store"))
        .into_keys()
        .filter(|(table, ..)| *table == "nights")
        .map(|(_, garden, night)| format!("{garden} {}", tussock_batch::night::words(night)))
        .collect();
    let expected = [
        "garden-0001 2026-05-01",
        "garden-0001 2026-05-02",
        "garden-0002 2026-05-01",
        "garden-0002 2026-05-02",
    ];
    assert_eq!(nights, expected);
    // Six in the morning in Auckland on 3 May is 18:00 UTC on 2 May; in Los Angeles it is then eleven, and the night of 1 May is over.
    for (now, night, with_log) in [
        ("2026-05-02T17:59:00Z", "2026-05-01", "2 with a log"),
        ("2026-05-02T18:00:00Z", "2026-05-02", "2 with a log"),
        ("2026-05-03T18:00:00Z", "2026-05-03", "1 with a log"),
    ] {
        let ran = folder
            .tussock(&format!("batch report store --now {now}"))
            .with_code(0);
        assert!(
            ran.stderr.contains(&format!("Night of {night}")) && ran.stderr.contains(with_log),
            "{now}\n{ran}"
        );
    }
}
