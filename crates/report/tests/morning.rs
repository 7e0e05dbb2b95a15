//! The morning: a row for each garden, what is folded, what is reported of a delivery, and figures for programs.

use tussock_report::{Voice, answer_morning, html_morning, metrics, morning_summary};
use tussock_types::{
    Alarm, AlarmState, AlarmTold, Estimate, GardenMorning, Morning, MorningDelivery, MorningMended,
    MorningNight, MorningReason, Said,
};

const GARDENS: usize = 22;

fn date(day: usize) -> String {
    format!("2026-05-{:02}", day + 1)
}

fn told(alarm: Alarm) -> AlarmTold {
    match alarm {
        Alarm::LessVisited => AlarmTold::LessVisited {
            found_fraction: 0.71,
            usual_fraction: 0.93,
        },
        Alarm::LostHours | Alarm::Silences => AlarmTold::Hours {
            found_h: 2.5,
            usual_h: 6.1,
        },
        Alarm::ReceiverWorse => AlarmTold::ReceiverWorse {
            found_m: 0.4,
            usual_m: 0.03,
        },
        Alarm::StuckSpot => AlarmTold::Stuck {
            found_min: 42.0,
            why: Some(Said::StuckInTheOpen {}),
        },
        Alarm::MissedPocket => AlarmTold::Missed {
            found_m2: 12.0,
            why: None,
        },
        Alarm::Promise => AlarmTold::Promise {
            visited_fraction: 0.9,
            promised_fraction: 0.95,
            days: 3,
        },
        Alarm::Absent => AlarmTold::Absent,
    }
}

fn garden(number: usize) -> GardenMorning {
    let alarm = Alarm::ALL[number % Alarm::ALL.len()];
    let reason = |alarm: Alarm, gain_m2: f64| MorningReason {
        alarm,
        what: String::new(),
        since: date(9),
        nights: 5,
        gain_m2,
        state: if number == 3 {
            AlarmState::Acknowledged
        } else {
            AlarmState::Open
        },
        said: (number == 3).then(|| "root, boards ordered".to_owned()),
        at_deg: (alarm == Alarm::StuckSpot).then_some((52.1, 13.2)),
        sentence: String::new(),
        told: Some(told(alarm)),
    };
    let gain_m2 = 90.0 - 4.0 * number as f64;
    GardenMorning {
        garden: format!("garden-{number:04}"),
        name: Some(if number == 1 {
            "<b>Villa</b> \u{202e}".to_owned()
        } else {
            format!("Residence with a rather long name, number {number}")
        }),
        night: date(14),
        gain_m2,
        worth_m2: gain_m2,
        days_open: 6,
        outline_m: vec![vec![
            (0.0, 0.0),
            (20.0, 0.0),
            (20.0, 9.0 + number as f64),
            (0.0, 9.0),
        ]],
        lawn_m2: Some(400.0),
        reasons: vec![
            reason(alarm, gain_m2),
            reason(Alarm::LessVisited, 1.0),
            reason(Alarm::Promise, 0.5),
        ],
        visited_within_days_fraction: Some(0.9),
        promised_fraction: Some(0.95),
        promised_days: Some(3.0),
        nights: (0..15)
            .filter(|day| day % 6 != 4)
            .map(|day| MorningNight {
                night: date(day),
                visited_fraction: Some(Estimate {
                    estimate: if day < 9 { 0.93 } else { 0.71 },
                    low: None,
                    high: None,
                }),
                missed_m2: Some(3.0),
                driving_h: Some(6.1),
                stuck_min: Some(0.0),
                silent_h: None,
                position_error_m: Some(0.03),
            })
            .collect(),
        window: (0..15).map(date).collect(),
    }
}

pub(crate) fn morning(gardens: usize) -> Morning {
    Morning {
        schema_version: 2,
        tool_version: "1".to_owned(),
        night: date(14),
        known: 300,
        with_log: 250,
        resting: 4,
        gardens: (0..gardens).map(garden).collect(),
        deliveries: vec![MorningDelivery {
            since: date(13),
            gardens: 40,
            expected: 290,
        }],
        muted: 2,
        mended: vec![MorningMended {
            garden: "garden-0099".to_owned(),
            alarm: Alarm::ReceiverWorse,
            since: date(2),
            mended: date(12),
        }],
        failures: Vec::new(),
    }
}

#[test]
fn the_page_has_a_row_for_each_garden_and_folds_the_rest() {
    let page = html_morning(&morning(GARDENS), Voice::default()).unwrap();
    // For a look by eye and by browser.
    let path = std::path::Path::new(env!("CARGO_TARGET_TMPDIR")).join("morning.html");
    std::fs::write(path, &page).unwrap();
    assert_eq!(page.matches("<details class=\"garden\">").count(), GARDENS);
    assert_eq!(page.matches("class=\"lawnline\"").count(), GARDENS);
    // Three stretches: nights 4 and 10 brought no log.
    let trend = page
        .split("class=\"trend\"")
        .nth(1)
        .unwrap()
        .split("</svg>")
        .next()
        .unwrap();
    assert_eq!(trend.matches('M').count(), 3, "{trend}");
    assert_eq!(trend.matches('L').count(), 10, "{trend}");
    assert!(!page.contains("<b>Villa") && page.contains("&lt;b&gt;Villa"));
    assert!(page.contains("Bring a spade, turf or boards") && page.contains("geo:52.1000000,13.2000000"));
    assert!(page.contains("40 of 290 gardens have sent nothing since 2026-05-14"));
    assert!(page.contains("garden-0099: receiver worse since 2026-05-03 is mended since 2026-05-13"));
    assert!(page.contains("2 muted") && page.contains("root, boards ordered"));
    let quiet = html_morning(
        &Morning {
            deliveries: Vec::new(),
            mended: Vec::new(),
            ..morning(0)
        },
        Voice::default(),
    )
    .unwrap();
    assert!(!quiet.contains("<details") && !quiet.contains("class=\"delivery\""));
}

#[test]
fn the_text_says_the_same_and_the_summary_is_one_line() {
    let found = morning(4);
    let summary = morning_summary(&found, Voice::default());
    assert!(
        summary.starts_with("Night of 2026-05-15: 4 of 300 gardens to visit, 250 with a log"),
        "{summary}"
    );
    assert_eq!(summary.lines().count(), 1);
    let text = answer_morning(&found, Voice::default());
    assert!(text.starts_with(&summary), "{text}");
    for part in [
        "40 of 290 gardens have sent nothing since 2026-05-14",
        "Stuck at one place since 2026-05-10, 5 nights, 42 min in the last: Nothing on the plan is near: look for roots, a hole or \
         soft ground. Bring a spade, turf or boards.",
        "(known: root, boards ordered)",
        "garden-0099: receiver worse since 2026-05-03 is mended since 2026-05-13.",
    ] {
        assert!(text.contains(part), "{part}\n{text}");
    }
}

#[test]
fn every_figure_has_its_help_and_type_once_before_its_samples() {
    let run = serde_json::json!({
        "exit_code": 3, "end_unix_s": 1_778_000_000.0, "duration_s": 3.5, "gardens": 300, "with_news": 250, "found": 900,
        "logs": 250, "nights": 250, "failures": 1, "files": 40, "night_unix_s": 1_778_803_200_i64, "to_visit": 20,
    });
    let found = morning(GARDENS);
    let (with, without) = (metrics(&run, Some(&found)).unwrap(), metrics(&run, None).unwrap());
    for (text, figures) in [(&with, 17 + Alarm::ALL.len()), (&without, 10)] {
        assert!(
            text.ends_with('\n') && text.lines().all(|line| !line.trim().is_empty()),
            "{text}"
        );
        let mut seen = std::collections::BTreeSet::new();
        let mut named = "";
        for line in text.lines() {
            let words: Vec<&str> = line.split(' ').collect();
            match words[..] {
                ["#", "HELP", name, _, ..] => named = name,
                ["#", "TYPE", name, "gauge"] => assert_eq!(name, named),
                [sample, value] => {
                    assert_eq!(sample.split('{').next(), Some(named), "{line}");
                    assert!(value.parse::<f64>().is_ok() && seen.insert(sample), "{line}");
                }
                _ => panic!("{line}"),
            }
        }
        assert_eq!(seen.len(), figures, "{text}");
    }
    for line in [
        "tussock_run_exit_code 3",
        "tussock_gardens_undelivered 40",
        "tussock_alarms_open{kind=\"promise\"} 24",
    ] {
        assert!(with.lines().any(|one| one == line), "{line}\n{with}");
    }
}
