//! NMEA 0183: framing, epochs, what counts as a fix.

use crate::{noticed, read, refuse, sentence, sentences, skipped};
use tussock_ingest::IngestError;
use tussock_types::{FixQuality, SkipReason};

const RMC: &str = "GNRMC,120000.00,A,5200.00000,N,00500.00000,E,1.00,90.0,010526,,,A";
const GGA: &str = "GNGGA,120000.00,5200.00010,N,00500.00000,E,4,14,0.70,12.3,M,43.1,M,1.0,0001";

fn rmc(at: usize) -> String {
    let (minute, second) = (at / 60, at % 60);
    sentence(&format!(
        "GNRMC,12{minute:02}{second:02}.00,A,5200.{at:05},N,00500.00000,E,1.00,90.0,010526,,,A"
    ))
}

#[test]
fn any_talker_is_read() {
    for talker in [
        "GP", "GN", "GL", "GA", "GB", "BD", "GQ", "GI", "II", "SD", "XX", "Z9",
    ] {
        let file = read(sentence(&format!("{talker}{}", &RMC[2..])));
        assert_eq!(file.trace.len(), 1, "{talker}");
    }
}

#[test]
fn a_makers_own_sentence_is_not_taken_for_a_standard_one() {
    // PGRMC sets up a receiver; its last three letters are those of a position sentence.
    let file = read(sentence("PGRMC,120000.00,A,5300.00000,N,00500.00000,E,1.00,90.0,010526,,,A") + &rmc(1));
    assert_eq!(file.trace.len(), 1);
    assert_eq!(skipped(&file, SkipReason::NotAPosition), 1);
}

#[test]
fn a_doubled_dollar_costs_one_byte() {
    let file = read(format!("${}", sentence(RMC)));
    assert_eq!(file.trace.len(), 1);
    assert_eq!(file.facts.skipped_bytes[&SkipReason::NotOfTheFormat], 1);
}

#[test]
fn of_two_sentences_spliced_together_the_whole_one_is_read() {
    let whole = sentence(RMC);
    let file = read(format!("{}{}", &sentence(GGA)[..30], whole));
    assert_eq!(file.trace.len(), 1);
    assert_eq!(skipped(&file, SkipReason::Malformed), 1);
    assert_eq!(file.facts.places[0].byte_end, 30);
}

#[test]
fn zeros_and_binary_frames_between_sentences_are_passed_over() {
    let mut log = vec![0_u8; 40];
    log.extend_from_slice(rmc(0).as_bytes());
    log.extend_from_slice(b"\xb5\x62\x01\x07$\x5c\x00!\xff\xfe\xd3\x00\x13");
    log.extend_from_slice(rmc(1).as_bytes());
    log.extend_from_slice(&rmc(2).as_bytes()[..20]);
    log.extend_from_slice(&[0xff; 9]);
    log.extend_from_slice(rmc(3).as_bytes());
    let file = read(&log);
    assert_eq!(file.trace.len(), 3);
    assert_eq!(skipped(&file, SkipReason::NotOfTheFormat), 3);
    assert_eq!(skipped(&file, SkipReason::Malformed), 1);
}

#[test]
fn prose_and_a_time_stamp_of_the_logger_before_each_sentence_are_passed_over() {
    let log = format!(
        "a note: it cost $5, twice!\n2026-05-01 12:00:00 | {}2026-05-01 12:00:01 | {}",
        rmc(0),
        rmc(1)
    );
    let file = read(log);
    assert_eq!(file.trace.len(), 2);
    assert_eq!(
        file.facts.places[0].excerpt,
        "a note: it cost $5, twice!\u{b7}2026-05-01 12:00:00 |"
    );
}

#[test]
fn a_wrong_checksum_costs_the_sentence_and_a_missing_one_does_not() {
    let bad = rmc(1).replace(",A,", ",a,");
    let unsummed = rmc(2).split('*').next().unwrap_or_default().to_string() + "\r\n";
    let file = read(rmc(0) + &bad + &unsummed);
    assert_eq!(file.trace.len(), 2);
    assert_eq!(skipped(&file, SkipReason::BadChecksum), 1);
    assert_eq!(file.facts.places[0].line, 2);
}

#[test]
fn gga_may_stand_before_or_after_its_rmc() {
    for log in [sentences(&[RMC, GGA]), sentences(&[GGA, RMC])] {
        let file = read(log);
        assert_eq!(file.trace.len(), 1);
        let fix = file.trace.fix(0);
        assert_eq!(fix.first, 52.0 + 0.0001 / 60.0);
        assert_eq!(fix.quality, FixQuality::RtkFixed);
        assert_eq!((fix.hdop, fix.satellites, fix.height_msl_m), (0.7, 14, 12.3));
        assert!((fix.speed_mps - 0.514_444).abs() < 1e-6);
        assert_eq!(fix.course_deg, 90.0);
        assert_eq!(file.facts.bytes_used, file.facts.bytes);
    }
}

#[test]
fn an_epoch_is_whole_whatever_stands_between_its_sentences() {
    let log = sentences(&[
        RMC,
        "GPGSV,1,1,01,02,31,180,46,1",
        "GNVTG,90.0,T,,M,1.00,N,1.85,K,A",
        "GNGST,120000.00,0.010,0.014,0.009,35.0,0.012,0.011,0.020",
        "GNZDA,120000.00,01,05,2026,00,00",
        GGA,
        "GNGLL,5200.00010,N,00500.00000,E,120000.00,A,R",
    ]);
    let file = read(log);
    assert_eq!(file.trace.len(), 1);
    assert!(
        (file.trace.claimed_sd_m[0] - ((0.012_f32.powi(2) + 0.011_f32.powi(2)) / 2.0).sqrt()).abs() < 1e-7
    );
    assert_eq!(skipped(&file, SkipReason::NotAPosition), 1);
}

#[test]
fn sentences_at_different_rates_make_one_fix_for_each_time() {
    // GGA ten times a second, RMC once, and late.
    let mut log = String::new();
    for tenth in 0..30 {
        let (second, part) = (tenth / 10, tenth % 10);
        log += &sentence(&format!(
            "GPGGA,12000{second}.{part}0,5200.{tenth:05},N,00500.00000,E,2,08,1.0,1.0,M,,,3,0138"
        ));
        if part == 2 {
            log += &sentence(&format!(
                "GPRMC,12000{second}.00,A,5200.{:05},N,00500.00000,E,1.0,,010526,,,D",
                tenth - 2
            ));
        }
    }
    let file = read(log);
    assert_eq!(file.trace.len(), 30);
    assert_eq!(
        file.trace
            .speed_mps
            .iter()
            .filter(|speed| speed.is_finite())
            .count(),
        3
    );
    assert!((file.trace.time_s[29] - file.trace.time_s[0] - 2.9).abs() < 1e-6);
}

#[test]
fn an_epoch_told_by_two_talkers_is_one_fix() {
    let log = sentences(&[RMC, GGA, &format!("GP{}", &GGA[2..]), &format!("GL{}", &RMC[2..])]);
    let file = read(log);
    assert_eq!(file.trace.len(), 1);
    assert_eq!(skipped(&file, SkipReason::DuplicateEpoch), 2);
}

#[test]
fn of_two_talkers_the_one_with_a_fix_counts() {
    let log = sentences(&["GPGGA,120000.00,,,,,0,00,99.9,,,,,,", GGA, RMC]);
    let file = read(log);
    assert_eq!(file.trace.quality, [FixQuality::RtkFixed]);
}

#[test]
fn a_void_epoch_is_no_fix_whatever_coordinates_it_repeats() {
    let log = rmc(0)
        + &sentences(&[
            "GPGGA,120001.00,5200.00000,N,00500.00000,E,0,00,50.0,280.2,M,-31.6,M,0.0,0000",
            "GPRMC,120001.00,V,5200.00000,N,00500.00000,E,0.00,,010526,,,N",
            "GPRMC,120002.00,V,5200.00000,N,00500.00000,E,0.00,,010526,,,N",
            "GPGLL,5200.00000,N,00500.00000,E,120003.00,V,N",
            "GPGGA,120004.00,5200.00000,N,00500.00000,E,1,05,1.0,280.2,M,,,,",
            "GPRMC,120004.00,V,5200.00000,N,00500.00000,E,0.00,,010526,,,A",
            "GPRMC,120005.00,A,5200.00000,N,00500.00000,E,0.00,,010526,,,N",
            "GPGNS,120006.00,5200.00000,N,00500.00000,E,NNN,00,,,,,",
        ]);
    let file = read(log);
    assert_eq!(file.trace.len(), 1);
    assert_eq!(skipped(&file, SkipReason::NoFix), 8);
}

#[test]
fn an_empty_position_is_never_latitude_0_longitude_0() {
    let log = rmc(0)
        + &sentences(&[
            "GPGGA,120001.00,,,,,1,05,1.0,,,,,,",
            "GPRMC,120002.00,A,,,,,0.0,,010526,,,A",
        ]);
    let file = read(log);
    assert_eq!(file.trace.len(), 1);
    assert_eq!(skipped(&file, SkipReason::NoFix), 2);
}

#[test]
fn every_quality_from_0_to_9_and_none_is_known() {
    let expected = [
        (Some("0"), None),
        (Some("1"), Some(FixQuality::Autonomous)),
        (Some("2"), Some(FixQuality::Differential)),
        (Some("3"), Some(FixQuality::Precise)),
        (Some("4"), Some(FixQuality::RtkFixed)),
        (Some("5"), Some(FixQuality::RtkFloat)),
        (Some("6"), Some(FixQuality::Estimated)),
        (Some("7"), Some(FixQuality::Manual)),
        (Some("8"), Some(FixQuality::Simulated)),
        (Some("9"), Some(FixQuality::Other)),
        (None, Some(FixQuality::Unknown)),
    ];
    for (code, quality) in expected {
        let gga = GGA.replace(",4,14,", &format!(",{},14,", code.unwrap_or("")));
        let file = read(sentence("GPZDA,115959.00,01,05,2026,00,00") + &sentence(&gga) + &rmc(9));
        let found = (file.trace.len() == 2).then(|| file.trace.quality[0]);
        assert_eq!(found, quality, "{code:?}");
    }
}

#[test]
fn the_mode_letters_of_gns_and_rmc_give_the_quality() {
    for (modes, quality) in [
        ("A", FixQuality::Autonomous),
        ("D", FixQuality::Differential),
        ("E", FixQuality::Estimated),
        ("F", FixQuality::RtkFloat),
        ("M", FixQuality::Manual),
        ("P", FixQuality::Precise),
        ("R", FixQuality::RtkFixed),
        ("S", FixQuality::Simulated),
        ("ANNA", FixQuality::Autonomous),
        ("NDD", FixQuality::Differential),
        ("NFRA", FixQuality::RtkFixed),
    ] {
        let gns = format!("GNGNS,120000.00,5200.00000,N,00500.00000,E,{modes},14,0.70,12.3,43.1,1.0,0001");
        let file = read(sentences(&["GPZDA,120000.00,01,05,2026,00,00", &gns]));
        assert_eq!(file.trace.quality, [quality], "GNS {modes}");
        assert_eq!(
            (
                file.trace.hdop[0],
                file.trace.satellites[0],
                file.trace.height_msl_m[0]
            ),
            (0.7, 14, 12.3)
        );
    }
    let file = read(sentence(&RMC.replace(",,,A", ",,,F")));
    assert_eq!(file.trace.quality, [FixQuality::RtkFloat]);
}

#[test]
fn gns_of_single_systems_beside_the_common_one_does_not_count_again() {
    let log = sentences(&[
        "GNGNS,120000.00,5200.00000,N,00500.00000,E,RR,14,0.70,12.3,43.1,1.0,0001",
        "GPGNS,120000.00,,,,,,07,,,,1.0,0001",
        "GLGNS,120000.00,,,,,,07,,,,1.0,0001",
        "GPZDA,120000.00,01,05,2026,00,00",
    ]);
    let file = read(log);
    assert_eq!(file.trace.len(), 1);
    assert_eq!(skipped(&file, SkipReason::NotAPosition), 2);
}

#[test]
fn positions_that_cannot_be_are_skipped_by_their_reason() {
    for (position, reason) in [
        ("0000.00000,N,00000.00000,E", SkipReason::NullIsland),
        ("8960.00000,N,00000.00000,E", SkipReason::Pole),
        ("9000.00000,S,00500.00000,E", SkipReason::Pole),
        ("9100.00000,N,00500.00000,E", SkipReason::OutOfRange),
        ("5200.00000,N,18100.00000,E", SkipReason::OutOfRange),
        ("5261.00000,N,00500.00000,E", SkipReason::Malformed),
        ("5200.0x000,N,00500.00000,E", SkipReason::Malformed),
        ("5200.00000,X,00500.00000,E", SkipReason::Malformed),
        ("5200.00000,N,-0500.00000,W", SkipReason::Malformed),
        ("NaN,N,NaN,E", SkipReason::Malformed),
        (",,00500.00000,E", SkipReason::Malformed),
    ] {
        let bad = format!("GPGGA,120001.00,{position},1,05,1.0,280.2,M,,,,");
        let file = read(rmc(0) + &sentence(&bad));
        assert_eq!(file.trace.len(), 1, "{position}");
        assert_eq!(skipped(&file, reason), 1, "{position}: {:?}", file.facts.skipped);
    }
    let file = read(sentence(&RMC.replace("00500.00000", "18000.00000")));
    assert_eq!(file.trace.positions.pair(0).1, 180.0);
}

#[test]
fn malformed_times_cost_their_sentence_and_blanks_round_a_field_do_not() {
    let at = |time: &str| {
        sentence(&format!(
            "GPRMC,{time},A,5200.00000,N,00500.00000,E,1.00,90.0,010526,,,A"
        ))
    };
    for (time, seconds) in [
        ("120005", 5.0),
        ("120005.", 5.0),
        (" 120005", 5.0),
        ("120005.5 ", 5.5),
        ("120005.0009", 5.0009),
        ("120060", 60.0),
    ] {
        let file = read(rmc(0) + &at(time));
        assert_eq!(file.trace.len(), 2, "{time}");
        assert!(
            (file.trace.time_s[1] - file.trace.time_s[0] - seconds).abs() < 1e-6,
            "{time}"
        );
    }
    for time in [
        "120005.x",
        "1200",
        ".1",
        "12:00:05",
        "250000",
        "126000",
        "120061",
        "120005.0x",
    ] {
        let file = read(rmc(0) + &at(time));
        assert_eq!(
            (file.trace.len(), skipped(&file, SkipReason::Malformed)),
            (1, 1),
            "{time}"
        );
    }
}

#[test]
fn one_field_that_is_no_number_does_not_cost_the_position() {
    let file = read(sentence(&RMC.replace(",1.00,", ",XXXXX,")));
    assert_eq!(file.trace.len(), 1);
    assert!(file.trace.speed_mps[0].is_nan());
}

#[test]
fn a_sentence_longer_than_the_standard_allows_is_read() {
    let file = read(sentence(&(RMC.to_string() + &",".repeat(120))));
    assert_eq!(file.trace.len(), 1);
}

#[test]
fn a_half_written_last_sentence_is_cut_off() {
    let whole = rmc(1);
    for length in 8..whole.len() - 4 {
        let file = read(rmc(0) + &whole[..length]);
        assert_eq!(file.trace.len(), 1);
        assert_eq!(skipped(&file, SkipReason::Truncated), 1, "{:?}", &whole[..length]);
        assert_eq!(file.facts.places[0].byte_start, rmc(0).len() as u64);
    }
    // With its checksum complete, the line end is no loss.
    assert_eq!(read(rmc(0) + whole.trim_end()).trace.len(), 2);
}

#[test]
fn line_ends_of_every_kind_are_fine() {
    for ending in ["\r\n", "\n", "\r", "\r\r\n", "", " \r\n"] {
        let log: String = (0..5).map(|at| rmc(at).trim_end().to_string() + ending).collect();
        let file = read(log);
        assert_eq!(
            (file.trace.len(), file.facts.bytes_used),
            (5, file.facts.bytes),
            "{ending:?}"
        );
    }
}

#[test]
fn speed_and_course_come_from_vtg_where_rmc_is_missing() {
    for (vtg, speed_mps) in [
        ("GPVTG,220.86,T,,M,2.550,N,4.724,K,A", 1.311_833),
        ("GPVTG,220.86,T,,M,,N,4.724,K,A", 1.312_222),
        ("GPVTG,220.86,,2.550,", 1.311_833),
    ] {
        let file = read(sentences(&["GPZDA,120000.00,01,05,2026,00,00", GGA, vtg]));
        assert!(
            (f64::from(file.trace.speed_mps[0]) - speed_mps).abs() < 1e-5,
            "{vtg}"
        );
        assert_eq!(file.trace.course_deg, [220.86]);
    }
}

#[test]
fn gll_alone_gives_fixes_once_a_date_is_known() {
    let log = sentences(&[
        "GPZDA,115959.00,01,05,2026,00,00",
        "GPGLL,5200.00000,N,00500.00000,E,120000.00,A,A",
        "GPGLL,5200.00010,N,00500.00000,E,120001.00,A",
    ]);
    assert_eq!(read(log).trace.len(), 2);
}

#[test]
fn the_step_of_the_coordinates_is_told_from_their_digits() {
    for (digits, resolution_m) in [(3, 1.852), (4, 0.1852), (5, 0.018_52), (7, 0.000_185_2)] {
        let minutes = format!("00.{:0digits$}", 1);
        let file = read(sentence(&format!(
            "GPRMC,120000,A,52{minutes},N,005{minutes},E,1.00,90.0,010526,,,A"
        )));
        let found = file.facts.resolution_m.unwrap_or(0.0);
        assert!((found - resolution_m).abs() < 1e-9, "{digits}: {found}");
    }
}

#[test]
fn a_log_of_waypoints_only_says_so() {
    let error = refuse(sentence("GPWPL,4807.038,N,01131.324,E,WPTNME"));
    assert!(matches!(error, IngestError::NoPositions { .. }), "{error}");
    assert!(
        error
            .to_string()
            .contains("1 sentence; skipped 1 x carries no position"),
        "{error}"
    );
}

#[test]
fn a_receiver_that_never_had_a_fix_is_told_from_a_broken_log() {
    let error = refuse(sentence("GPRMC,120000.00,V,,,,,,,010526,,,N"));
    assert!(error.to_string().contains("receiver had no fix"), "{error}");
}

#[test]
fn positions_without_any_time_are_refused_as_such() {
    let error = refuse(sentences(&[
        "GPGLL,5200.00000,N,00500.00000,E,,A,A",
        "GPGLL,5200.00000,N,00500.00000,E",
    ]));
    assert!(
        matches!(
            error,
            IngestError::NoTimes {
                positions: 2,
                line: 1,
                ..
            }
        ),
        "{error}"
    );
}

/// Ten epochs of RMC and GGA with the same mode letter and the same quality.
fn with_quality(mode: &str, quality: u32) -> String {
    (0..10)
        .map(|second| {
            sentences(&[
                &format!("GPRMC,12000{second},A,5206.0,N,00512.0,E,0.1,90.0,010526,,{mode}"),
                &format!("GPGGA,12000{second},5206.0,N,00512.0,E,{quality},08,0.9,12.0,M,45.0,M,,"),
            ])
        })
        .collect()
}

#[test]
fn a_constant_quality_that_rmc_denies_is_not_believed() {
    for (mode, quality, expected) in [
        (",A", 7, FixQuality::Autonomous),
        (",D", 7, FixQuality::Differential),
        ("", 7, FixQuality::Unknown),
        (",A", 8, FixQuality::Autonomous),
    ] {
        let file = read(with_quality(mode, quality));
        assert!(
            file.trace.quality.iter().all(|found| *found == expected),
            "{mode} {quality}"
        );
        assert!(noticed(&file, "ConstantQuality"), "{mode} {quality}");
    }
    for (mode, quality, expected) in [
        (",M", 7, FixQuality::Manual),
        (",S", 8, FixQuality::Simulated),
        (",A", 4, FixQuality::RtkFixed),
    ] {
        let file = read(with_quality(mode, quality));
        assert!(
            file.trace.quality.iter().all(|found| *found == expected),
            "{mode} {quality}"
        );
        assert!(!noticed(&file, "ConstantQuality"));
    }
}

#[test]
fn a_quality_that_changes_is_believed_and_so_is_one_without_rmc() {
    let mixed = with_quality(",A", 7)
        + &with_quality(",A", 1)
            .replace("$GPRMC,1200", "$GPRMC,1201")
            .replace("$GPGGA,1200", "$GPGGA,1201");
    let mixed: String = mixed
        .lines()
        .map(|line| sentence(&line[1..line.len() - 3]))
        .collect();
    let file = read(mixed);
    assert_eq!(
        file.trace
            .quality
            .iter()
            .filter(|found| **found == FixQuality::Manual)
            .count(),
        10
    );
    let alone: String = with_quality("", 7)
        .lines()
        .filter(|line| line.contains("GGA"))
        .map(|line| format!("{line}\r\n"))
        .collect();
    let file = read("$GPZDA,120000,01,05,2026,00,00*49\r\n".to_owned() + &alone);
    assert!(
        file.trace
            .quality
            .iter()
            .all(|found| *found == FixQuality::Manual)
    );
}
