//! What the terminal shows to a technician.

use crate::garden::{
    bare_findings, findings, findings_without_width, full_findings, hostile_findings, inspection,
};
use tussock_report::{Colour, Style, Voice, answer, answer_files, answer_inspection, answer_map, hints};
use tussock_types::Findings;
use unicode_width::UnicodeWidthStr;

#[test]
fn the_answer_of_a_good_night_reads_from_the_verdict_down() {
    insta::assert_snapshot!(answer(&findings(), Style::default()));
}

#[test]
fn the_answer_with_everything_worked_out_shows_intervals_causes_and_changes() {
    insta::assert_snapshot!(answer(&full_findings(), Style::default()));
}

#[test]
fn the_lawn_in_characters_shows_what_was_missed_and_where_it_got_stuck() {
    let map = answer_map(&full_findings(), Style::default());
    insta::assert_snapshot!(map);
    for sign in ["M1", "/", "X", "H"] {
        assert!(map.contains(sign), "{sign}");
    }
    assert_eq!(answer_map(&bare_findings(), Style::default()), "");
}

#[test]
fn hints_say_what_to_do_to_know_more() {
    assert_eq!(
        hints(&findings(), Voice::default()),
        ["the promise is of 3 days: give the logs of as many days together"]
    );
    assert!(hints(&findings_without_width(), Voice::default())[0].contains("--cut-width"));
    let mut drawn = findings();
    drawn.outline_source = tussock_types::OutlineSource::Trace;
    assert!(hints(&drawn, Voice::default())[0].contains("plan from-walk"));
    assert!(hints(&full_findings(), Voice::default()).is_empty());
}

#[test]
fn the_answer_without_a_width_lists_the_fraction_for_each_width() {
    insta::assert_snapshot!(answer(&findings_without_width(), Style::default()));
}

#[test]
fn the_answer_with_nothing_found_still_says_what_is_known() {
    insta::assert_snapshot!(answer(&bare_findings(), Style::default()));
}

#[test]
fn the_inspection_says_what_was_skipped_and_where() {
    insta::assert_snapshot!(answer_inspection(&inspection(), Style::default()));
}

#[test]
fn the_files_that_were_written_are_named() {
    let names = [
        "out/findings.json".to_owned(),
        "out/re\u{1b}[2Jport.html".to_owned(),
    ];
    insta::assert_snapshot!(answer_files(&names, Style::default()));
    assert_eq!(answer_files(&[], Style::default()), "");
}

fn every_answer(style: Style) -> Vec<String> {
    let mut hostile_inspection = inspection();
    hostile_inspection.inputs = hostile_findings().inputs;
    let samples: [Findings; 5] = [
        findings(),
        full_findings(),
        findings_without_width(),
        bare_findings(),
        hostile_findings(),
    ];
    let mut answers: Vec<String> = samples.iter().map(|sample| answer(sample, style)).collect();
    for sample in &samples {
        // The map alone has nothing in heavy type.
        if style.colour == Colour::Plain {
            answers.push(answer_map(sample, style));
        }
    }
    answers.push(answer_inspection(&inspection(), style));
    answers.push(answer_inspection(&hostile_inspection, style));
    answers
}

#[test]
fn no_line_is_wider_than_the_terminal() {
    for width_columns in [40, 60, 80, 100] {
        let style = Style {
            voice: Voice::default(),
            colour: Colour::Plain,
            width_columns,
        };
        for text in every_answer(style) {
            for line in text.lines() {
                assert!(line.width() <= width_columns, "{width_columns}: {line}");
            }
        }
    }
}

#[test]
fn nothing_that_steers_a_terminal_or_turns_text_comes_through() {
    for text in every_answer(Style::default()) {
        assert!(!text.chars().any(|c| c != '\n' && c.is_control()), "{text:?}");
        assert!(!text.contains('\u{202e}'));
        assert!(text.len() < 20_000, "{}", text.len());
    }
}

#[test]
fn colour_adds_styles_and_changes_no_word() {
    let style = Style {
        voice: Voice::default(),
        colour: Colour::Ansi,
        width_columns: 80,
    };
    let plain_answers = every_answer(Style::default());
    let plain_answers = plain_answers
        .iter()
        .filter(|text| !text.contains("a character is"));
    let plain_answers = plain_answers.filter(|text| !text.is_empty());
    for (coloured, plain) in every_answer(style).iter().zip(plain_answers) {
        assert!(coloured.contains("\u{1b}[1m"));
        let stripped = coloured.replace("\u{1b}[1m", "").replace("\u{1b}[0m", "");
        assert_eq!(stripped, *plain);
    }
}

#[test]
fn a_common_answer_fits_on_a_screen() {
    let lines = answer(&findings(), Style::default()).lines().count();
    assert!((15..=26).contains(&lines), "{lines} lines");
}
