//! Every help text, word for word.

use crate::support::{assert_ran, run, tussock};

const PAGES: &[(&str, &[&str])] = &[
    ("top", &[]),
    ("inspect", &["inspect"]),
    ("analyse", &["analyse"]),
    ("compare", &["compare"]),
    ("plan", &["plan"]),
    ("plan-check", &["plan", "check"]),
    ("plan-from-walk", &["plan", "from-walk"]),
    ("plan-from-trace", &["plan", "from-trace"]),
    ("plan-align", &["plan", "align"]),
    ("ask", &["ask"]),
    ("visits", &["visits"]),
    ("report", &["report"]),
    ("simulate", &["simulate"]),
    ("simulate-gardens", &["simulate", "gardens"]),
    ("batch", &["batch"]),
    ("batch-run", &["batch", "run"]),
    ("batch-report", &["batch", "report"]),
    ("batch-check", &["batch", "check"]),
    ("batch-acknowledge", &["batch", "acknowledge"]),
    ("batch-mute", &["batch", "mute"]),
    ("batch-forget", &["batch", "forget"]),
];

#[test]
fn every_page_of_help_is_known() {
    for (name, words) in PAGES {
        for (flag, kind) in [("-h", "short"), ("--help", "long")] {
            let ran = run(tussock().args(*words).arg(flag), b"").with_code(0);
            assert!(ran.stderr.is_empty(), "{ran}");
            assert_ran!(ran, format!("help-{name}-{kind}"));
        }
    }
}

#[test]
fn every_command_that_help_names_has_a_page_here() {
    let ran = run(tussock().arg("--help"), b"").with_code(0);
    let commands = ran
        .stdout
        .split("Commands:")
        .nth(1)
        .expect("there is a list of commands");
    let listed: Vec<&str> = commands
        .lines()
        .skip(1)
        .take_while(|line| !line.is_empty())
        .filter(|line| line.starts_with("  ") && !line.starts_with("   "))
        .filter_map(|line| line.split_whitespace().next())
        .collect();
    assert!(listed.len() >= 5, "{listed:?}");
    for command in listed {
        assert!(
            PAGES.iter().any(|(_, words)| words.first() == Some(&command)),
            "no snapshot of {command} --help"
        );
    }
}

#[test]
fn wrong_use_ends_with_2_and_says_what_is_known() {
    for (name, words) in [
        ("nothing", &[] as &[&str]),
        ("unknown-command", &["analyze", "night.gpx"]),
        ("unknown-flag", &["analyse", "night.gpx", "--widht", "22cm"]),
        ("no-log", &["analyse"]),
        ("unknown-format", &["inspect", "night.gpx", "--format", "xml"]),
    ] {
        let ran = run(tussock().args(words), b"").with_code(2);
        assert!(ran.stdout.is_empty(), "{ran}");
        assert_ran!(ran, format!("wrong-use-{name}"));
    }
}

#[test]
fn help_into_a_closed_pipe_is_no_failure() {
    let (reader, writer) = std::io::pipe().expect("a pipe");
    drop(reader);
    let status = tussock().arg("--help").stdout(writer).status().expect("it ends");
    assert_eq!(status.code(), Some(0));
}
