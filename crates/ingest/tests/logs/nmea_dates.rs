//! NMEA 0183: which day it was.

use crate::{noticed, read, read_with, refuse, sentence, sentences, skipped, unix_s};
use tussock_ingest::{IngestError, ReadOptions};
use tussock_types::SkipReason;

fn gga(time: &str) -> String {
    sentence(&format!(
        "GPGGA,{time},5200.00010,N,00500.00000,E,1,08,0.9,1.0,M,,M,,"
    ))
}

fn rmc(time: &str, date: &str) -> String {
    sentence(&format!(
        "GPRMC,{time},A,5200.00010,N,00500.00000,E,0.1,,{date},,,A"
    ))
}

fn date(year: i32, month: u8, day: u8) -> ReadOptions {
    let month = time::Month::try_from(month).unwrap();
    ReadOptions {
        date: Some(time::Date::from_calendar_date(year, month, day).unwrap()),
        ..ReadOptions::default()
    }
}

#[test]
fn a_log_without_any_date_is_refused_with_the_hint_to_give_one() {
    let error = refuse(gga("235958") + &gga("235959"));
    assert!(
        matches!(&error, IngestError::NoDate { time_of_day, line: 1, .. } if time_of_day == "23:59:58"),
        "{error}"
    );
    assert!(error.hint().is_some_and(|hint| hint.contains("--date")));
}

#[test]
fn a_given_date_holds_from_the_first_fix_on_and_across_midnight() {
    let log = gga("235958") + &gga("235959") + &gga("000000") + &gga("000001");
    let file = read_with(log.as_bytes(), &date(2026, 5, 1)).unwrap();
    let start = unix_s("2026-05-01T23:59:58Z");
    assert_eq!(file.trace.time_s, [start, start + 1.0, start + 2.0, start + 3.0]);
}

#[test]
fn a_date_in_rmc_or_zda_reaches_the_fixes_around_it() {
    let noon = unix_s("2026-05-01T12:00:00Z");
    for dated in [rmc("120001", "010526"), sentence("GPZDA,120001,01,05,2026,00,00")] {
        let file = read(gga("120000") + &dated + &gga("120001") + &gga("120002"));
        assert_eq!(file.trace.time_s, [noon, noon + 1.0, noon + 2.0]);
    }
}

#[test]
fn a_date_that_comes_only_at_the_end_is_applied_backwards() {
    let log = gga("235959") + &gga("000000") + &gga("000001") + &rmc("000002", "020526");
    let file = read(log);
    let start = unix_s("2026-05-01T23:59:59Z");
    assert_eq!(file.trace.time_s, [start, start + 1.0, start + 2.0, start + 3.0]);
}

#[test]
fn midnight_and_new_year_between_two_dated_sentences_are_no_gap() {
    let file = read(rmc("235959.80", "311225") + &rmc("000000.00", "010126"));
    assert!((file.trace.time_s[1] - file.trace.time_s[0] - 0.2).abs() < 1e-6);
}

#[test]
fn after_a_night_of_silence_the_date_that_is_nearer_in_time_counts() {
    // Only the end of the first evening and the next morning are dated.
    let log =
        rmc("200000", "010526") + &gga("200001") + &gga("083000") + &gga("083001") + &rmc("083002", "030526");
    let file = read(log);
    assert_eq!(file.trace.time_s[1], unix_s("2026-05-01T20:00:01Z"));
    assert_eq!(file.trace.time_s[2], unix_s("2026-05-03T08:30:00Z"));
}

#[test]
fn a_time_of_day_that_falls_by_hours_is_the_next_day() {
    let file = read_with(
        (gga("200000") + &gga("083000") + &gga("083001")).as_bytes(),
        &date(2026, 5, 1),
    )
    .unwrap();
    assert_eq!(file.trace.time_s[1], unix_s("2026-05-02T08:30:00Z"));
}

#[test]
fn two_digit_years_from_80_are_of_the_last_century() {
    assert_eq!(
        read(rmc("123519", "230394")).trace.time_s,
        [unix_s("1994-03-23T12:35:19Z")]
    );
    assert_eq!(
        read(rmc("123519", "230379")).trace.time_s,
        [unix_s("2079-03-23T12:35:19Z")]
    );
    let file = read(sentence("GPZDA,123519,23,03,94,00,00") + &gga("123519"));
    assert_eq!(file.trace.time_s, [unix_s("1994-03-23T12:35:19Z")]);
}

#[test]
fn the_four_digits_of_zda_win_over_the_two_of_rmc() {
    let log = rmc("123519", "230394") + &sentence("GPZDA,123519,23,03,2094,00,00");
    assert_eq!(read(log).trace.time_s, [unix_s("2094-03-23T12:35:19Z")]);
}

#[test]
fn the_default_date_of_a_searching_receiver_is_no_date() {
    let log = sentence("GPRMC,000010,V,,,,,,,060180,,,N") + &gga("120000") + &rmc("120001", "010526");
    assert_eq!(read(log).trace.time_s[0], unix_s("2026-05-01T12:00:00Z"));
    let log = rmc("000010", "060180") + &rmc("120001", "010526") + &rmc("120002", "010526");
    let file = read(log);
    assert_eq!(file.trace.len(), 2);
    assert_eq!(skipped(&file, SkipReason::OutOfRange), 1);
}

#[test]
fn a_date_sent_while_searching_is_used_when_there_is_no_better_one() {
    let log = sentence("GPRMC,115959,V,,,,,,,010526,,,N") + &gga("120000");
    assert_eq!(read(log).trace.time_s, [unix_s("2026-05-01T12:00:00Z")]);
}

#[test]
fn a_step_of_just_1024_weeks_inside_of_a_log_is_repaired() {
    // 2006-09-15 is 2026-05-01 less 7168 days.
    let log = rmc("120000", "150906")
        + &rmc("120001", "150906")
        + &rmc("120002", "010526")
        + &rmc("120003", "010526");
    let file = read(log);
    let noon = unix_s("2026-05-01T12:00:00Z");
    assert_eq!(file.trace.time_s, [noon, noon + 1.0, noon + 2.0, noon + 3.0]);
    assert!(noticed(&file, "WeekRolloverRepaired"));
    // The other way round: the receiver lost the week while it ran.
    let log = rmc("120000", "010526") + &rmc("120001", "150906") + &rmc("120002", "150906");
    assert_eq!(read(log).trace.time_s, [noon, noon + 1.0, noon + 2.0]);
}

#[test]
fn a_given_date_just_1024_weeks_later_is_evidence_of_a_rollover() {
    let log = rmc("120000", "150906") + &rmc("120001", "150906");
    let file = read_with(log.as_bytes(), &date(2026, 5, 1)).unwrap();
    assert_eq!(file.trace.time_s[0], unix_s("2026-05-01T12:00:00Z"));
    assert!(noticed(&file, "WeekRolloverRepaired"));
    // Any other given date leaves the log's own dates alone.
    for options in [date(2026, 5, 4), date(2006, 9, 15), date(1987, 1, 30)] {
        let file = read_with(log.as_bytes(), &options).unwrap();
        assert_eq!(file.trace.time_s[0], unix_s("2006-09-15T12:00:00Z"));
    }
}

#[test]
fn talkers_that_came_in_2012_under_an_older_date_are_evidence_of_a_rollover() {
    let log = rmc("120000", "150906") + &sentence("GAGSV,1,1,01,02,31,180,46,7");
    let file = read(log);
    assert_eq!(file.trace.time_s, [unix_s("2026-05-01T12:00:00Z")]);
    assert!(noticed(&file, "WeekRolloverRepaired"));
}

#[test]
fn a_log_that_is_merely_old_stays_old() {
    let log =
        rmc("120000", "150906") + &sentences(&["GPGSV,1,1,01,02,31,180,46", "GLGSV,1,1,01,72,31,180,46"]);
    let file = read(log);
    assert_eq!(file.trace.time_s, [unix_s("2006-09-15T12:00:00Z")]);
    assert!(!noticed(&file, "WeekRolloverRepaired"));
}

#[test]
fn single_fixes_whose_clock_was_wrong_are_skipped_and_a_block_written_late_is_put_in_order() {
    let at = |second: usize| rmc(&format!("12{:02}{:02}", second / 60, second % 60), "010526");
    let log: String = (0..30).map(at).collect::<String>() + &at(3) + &(30..60).map(at).collect::<String>();
    let file = read(log);
    assert_eq!(
        (file.trace.len(), skipped(&file, SkipReason::TimeReversed)),
        (60, 1)
    );
    let log: String = (100..200).chain(0..50).map(at).collect();
    let file = read(log);
    assert_eq!(file.trace.len(), 150);
    assert!(noticed(&file, "BlockOutOfOrder"));
    assert_eq!(file.trace.segment[49] + 1, file.trace.segment[50]);
}
