//! CSV of any layout.

use crate::{noticed, read, read_with, refuse, skipped, unix_s};
use tussock_ingest::{IngestError, ReadOptions};
use tussock_types::{FixQuality, Positions, SkipReason};

fn with_columns(columns: &str) -> ReadOptions {
    ReadOptions {
        columns: Some(columns.parse().unwrap_or_else(|error| panic!("{error}"))),
        ..ReadOptions::default()
    }
}

fn on(mut options: ReadOptions, year: i32, month: u8, day: u8) -> ReadOptions {
    let month = time::Month::try_from(month).unwrap();
    options.date = Some(time::Date::from_calendar_date(year, month, day).unwrap());
    options
}

#[test]
fn columns_are_known_by_many_names() {
    for header in [
        "time,lat,lon",
        "Timestamp,Latitude,Longitude",
        "timestamp_utc;LAT;LNG",
        "UTC\tlat_deg\tlon_deg",
        "\"time\", \"lat\", \"lon\"",
        "# time,lat,lon",
        "unix time,gps lat,gps lon",
    ] {
        let separator = if header.contains(';') {
            ";"
        } else if header.contains('\t') {
            "\t"
        } else {
            ","
        };
        let row = ["2026-05-01T12:00:00Z", "52.1", "5.2"].join(separator);
        let file = read(format!("{header}\n{row}\n"));
        assert_eq!(file.trace.positions.pair(0), (52.1, 5.2), "{header}");
        assert_eq!(file.trace.time_s, [unix_s("2026-05-01T12:00:00Z")]);
        assert_eq!(file.facts.bytes_used, file.facts.bytes);
    }
}

#[test]
fn columns_may_stand_in_any_order_among_others() {
    let log = "id,lon,name,hdop,lat,sats,fix,speed_mps,heading,altitude,time,sd_m\n\
               1,5.2,\"a, b\",0.8,52.1,11,4,0.4,271,12.5,2026-05-01T12:00:00Z,0.02\n";
    let fix = read(log).trace.fix(0);
    assert_eq!(
        (fix.first, fix.second, fix.quality),
        (52.1, 5.2, FixQuality::RtkFixed)
    );
    assert_eq!(
        (fix.hdop, fix.satellites, fix.speed_mps, fix.course_deg),
        (0.8, 11, 0.4, 271.0)
    );
    assert_eq!((fix.height_msl_m, fix.claimed_sd_m), (12.5, 0.02));
}

#[test]
fn decimal_commas_are_read_where_the_comma_parts_no_cells() {
    let file = read("time;lat;lon;hdop\n2026-05-01T12:00:00Z;52,12345;5,5;0,9\n");
    assert_eq!(file.trace.positions.pair(0), (52.12345, 5.5));
    assert_eq!(file.trace.hdop, [0.9]);
    assert!((file.facts.resolution_m.unwrap() - 1.1112).abs() < 1e-9);
}

#[test]
fn times_may_be_unix_seconds_milliseconds_or_microseconds() {
    for (time, seconds) in [
        ("1777636800", 1_777_636_800.0),
        ("1777636800.25", 1_777_636_800.25),
        ("1777636800250", 1_777_636_800.25),
        ("1777636800250000", 1_777_636_800.25),
    ] {
        assert_eq!(
            read(format!("time,lat,lon\n{time},52,5\n")).trace.time_s,
            [seconds],
            "{time}"
        );
    }
}

#[test]
fn metres_on_the_loggers_own_plane_may_count_time_from_its_own_start() {
    for header in ["time_s,x_m,y_m", "time,east_m,north_m", "t_s,x,y"] {
        let file = read(format!(
            "{header}\n3856.8573,0.0000,0.0000\n3857.0532,-29.4677,3.2299\n"
        ));
        assert!(matches!(file.trace.positions, Positions::Local { .. }));
        assert_eq!(file.trace.time_s, [3856.8573, 3857.0532]);
        assert_eq!(file.trace.positions.pair(1), (-29.4677, 3.2299));
        assert_eq!(file.facts.resolution_m, Some(0.0001));
    }
}

#[test]
fn date_and_time_may_stand_in_two_columns() {
    for (date, time) in [
        ("2026-05-13", "12:00:00"),
        ("2026/05/13", "12:00:00.000"),
        ("05/13/2026", "12:00:00"),
        ("13/05/2026", "12:00:00"),
        ("13.05.2026", "12:00:00Z"),
        ("20260513", "120000.00"),
        ("130526", "120000"),
    ] {
        let file = read(format!("date,time,lat,lon\n{date},{time},52,5\n"));
        assert_eq!(
            file.trace.time_s,
            [unix_s("2026-05-13T12:00:00Z")],
            "{date} {time}"
        );
    }
}

#[test]
fn one_date_that_proves_its_order_decides_for_all() {
    let rows: String = (11..=13)
        .map(|day| format!("05/{day}/2026,12:00:00,52,5\n"))
        .collect();
    let file = read(format!("date,time,lat,lon\n{rows}"));
    assert_eq!(file.trace.time_s[0], unix_s("2026-05-11T12:00:00Z"));
    let rows: String = (11..=13)
        .map(|day| format!("{day}/05/2026 12:00:00,52,5\n"))
        .collect();
    let file = read(format!("time,lat,lon\n{rows}"));
    assert_eq!(file.trace.time_s[0], unix_s("2026-05-11T12:00:00Z"));
}

#[test]
fn a_date_that_can_be_read_in_two_ways_is_refused_unless_a_given_date_decides() {
    let log = "date,time,lat,lon\n05/06/2026,12:00:00,52,5\n";
    let error = refuse(log);
    assert!(
        matches!(&error, IngestError::DateOrder { value, line: 2, .. } if value == "05/06/2026"),
        "{error}"
    );
    let file = read_with(log.as_bytes(), &on(ReadOptions::default(), 2026, 5, 6)).unwrap();
    assert_eq!(file.trace.time_s, [unix_s("2026-05-06T12:00:00Z")]);
    let file = read_with(log.as_bytes(), &on(ReadOptions::default(), 2026, 6, 5)).unwrap();
    assert_eq!(file.trace.time_s, [unix_s("2026-06-05T12:00:00Z")]);
}

#[test]
fn a_time_of_day_alone_needs_a_given_date_and_goes_across_midnight() {
    for rows in [
        "235959.00,52,5\n000000.00,52,5\n",
        "23:59:59,52,5\n00:00:00,52,5\n",
    ] {
        let log = format!("timestamp,lat,lon\n{rows}");
        let error = refuse(&log);
        assert!(matches!(error, IngestError::NoDate { line: 2, .. }), "{error}");
        let file = read_with(log.as_bytes(), &on(ReadOptions::default(), 2026, 5, 1)).unwrap();
        assert_eq!(
            file.trace.time_s,
            [unix_s("2026-05-01T23:59:59Z"), unix_s("2026-05-02T00:00:00Z")]
        );
    }
}

#[test]
fn a_file_without_header_is_read_by_column_numbers() {
    let log = "08/26/2021,10:05:40,0.50,53.161804,8.639353,0.31,0\n08/26/2021,10:05:41,0.60,53.161808,8.639353,0.17,12\n";
    assert!(matches!(refuse(log), IngestError::NotALog { .. }));
    let file = read_with(
        log.as_bytes(),
        &with_columns("date=#1,time=#2,lat=#4,lon=#5,speed_mps=#6,sats=#7"),
    )
    .unwrap();
    assert_eq!(file.trace.len(), 2);
    assert_eq!(file.trace.time_s[0], unix_s("2021-08-26T10:05:40Z"));
    assert_eq!(file.trace.fix(1).satellites, 12);
    assert_eq!(file.facts.bytes_used, file.facts.bytes);
}

#[test]
fn columns_parted_by_blanks_are_read_by_number() {
    let log = "% remark\n%  GPST      latitude longitude  Q\n2020/12/24 21:28:42.000   40.097025378 -105.147247371  2\n\
               2020/12/24 21:28:43.000   40.097025245 -105.147247922  2\n";
    let file = read_with(log.as_bytes(), &with_columns("date=#1,time=#2,lat=#3,lon=#4")).unwrap();
    assert_eq!(file.trace.len(), 2);
    // If the remark says that these are GPS times, they are 18 s ahead of UTC.
    assert_eq!(file.trace.time_s[1], unix_s("2020-12-24T21:28:25Z"));
    assert_eq!(skipped(&file, SkipReason::NotAPosition), 2);
    assert!(noticed(&file, "GpsTime"));
}

#[test]
fn named_columns_choose_among_several() {
    let log = "time,lat,lon,lat_raw,lon_raw\n2026-05-01T12:00:00Z,52,5,52.5,5.5\n";
    let file = read_with(log.as_bytes(), &with_columns("time=time,lat=lat_raw,lon=LON_RAW")).unwrap();
    assert_eq!(file.trace.positions.pair(0), (52.5, 5.5));
    let error = read_with(log.as_bytes(), &with_columns("time=time,lat=breite,lon=lon")).unwrap_err();
    assert!(
        error
            .to_string()
            .contains("line 1 has no column \"breite\" for lat, its columns are \"time\", \"lat\""),
        "{error}"
    );
    let error = read_with(log.as_bytes(), &with_columns("time=#1,lat=#2,lon=#9")).unwrap_err();
    assert!(error.to_string().contains("no column \"#9\""), "{error}");
}

#[test]
fn numbered_columns_pass_over_a_header_that_is_there() {
    let log = "stamp,y,x\n2026-05-01T12:00:00Z,52,5\n";
    let file = read_with(log.as_bytes(), &with_columns("time=#1,lat=#2,lon=#3")).unwrap();
    assert_eq!((file.trace.len(), file.facts.faults()), (1, 0));
}

#[test]
fn a_faulty_row_costs_that_row_and_is_located() {
    for (bad, reason) in [
        ("2026-05-01T12:00:01Z,52", SkipReason::Malformed),
        ("2026-05-01T12:00:01Z,north,5", SkipReason::Malformed),
        ("2026-05-01T12:00:01Z,,", SkipReason::NoFix),
        (",52,5", SkipReason::NoTime),
        ("later,52,5", SkipReason::Malformed),
        ("2026-05-01T12:00:01Z,nan,5", SkipReason::NotFinite),
        ("2026-05-01T12:00:01Z,95,5", SkipReason::OutOfRange),
        ("2026-05-01T12:00:01Z,0,0", SkipReason::NullIsland),
        ("1970-01-01T00:00:01Z,52,5", SkipReason::OutOfRange),
        ("# a remark", SkipReason::NotAPosition),
        ("time,lat,lon", SkipReason::NotAPosition),
        ("2026-05-01T12:00:00Z,52,5", SkipReason::DuplicateTime),
    ] {
        let log = format!("time,lat,lon\n2026-05-01T12:00:00Z,52,5\n{bad}\n2026-05-01T12:00:02Z,52,5\n");
        let file = read(&log);
        assert_eq!(file.trace.len(), 2, "{bad}");
        let place = &file.facts.places[0];
        assert_eq!((place.reason, place.line, &place.excerpt[..]), (reason, 3, bad));
    }
}

#[test]
fn quality_0_and_words_for_it_are_no_fix() {
    for word in ["0", "none", "No Fix"] {
        let file = read(format!(
            "time,lat,lon,quality\n2026-05-01T12:00:00Z,52,5,1\n2026-05-01T12:00:01Z,52,5,{word}\n"
        ));
        assert_eq!(
            (file.trace.len(), skipped(&file, SkipReason::NoFix)),
            (1, 1),
            "{word}"
        );
    }
    for (word, quality) in [
        ("5", FixQuality::RtkFloat),
        ("RTK fixed", FixQuality::RtkFixed),
        ("", FixQuality::Unknown),
    ] {
        let file = read(format!(
            "time,lat,lon,quality\n2026-05-01T12:00:00Z,52,5,{word}\n"
        ));
        assert_eq!(file.trace.quality, [quality]);
    }
}

#[test]
fn a_half_written_last_row_is_cut_off() {
    let log = "time,lat,lon,hdop\n2026-05-01T12:00:00Z,52,5,1\n2026-05-01T12:00:01Z,52,5";
    let file = read(log);
    assert_eq!((file.trace.len(), skipped(&file, SkipReason::Truncated)), (1, 1));
    assert_eq!(read(log.to_string() + ",1").trace.len(), 2);
}

#[test]
fn lines_before_the_header_are_passed_over() {
    let file = read("Logger 7\nfirmware;1.2\n\ntime;lat;lon\n2026-05-01T12:00:00Z;52;5\n");
    assert_eq!(
        (file.trace.len(), skipped(&file, SkipReason::NotOfTheFormat)),
        (1, 2)
    );
}

#[test]
fn carriage_returns_alone_end_lines_too() {
    assert_eq!(
        read("time,lat,lon\r2026-05-01T12:00:00Z,52,5\r2026-05-01T12:00:01Z,52,5\r")
            .trace
            .len(),
        2
    );
}

#[test]
fn line_ends_of_three_kinds_in_one_file_cost_no_row() {
    let rows = ["0", "1", "2", "3", "4", "5"].map(|second| format!("2026-05-01T12:00:0{second}Z,52,5"));
    let log = format!(
        "time,lat,lon\r\n{}\r{}\n{}\r\n{}\r{}\r\r{}",
        rows[0], rows[1], rows[2], rows[3], rows[4], rows[5]
    );
    let file = read(&log);
    assert_eq!((file.trace.len(), file.facts.faults()), (6, 0));
    let file = read(log.replace("12:00:03Z,52", "12:00:03Z,north"));
    assert_eq!((file.trace.len(), file.facts.places[0].line), (5, 5));
}

#[test]
fn a_line_end_in_a_quoted_cell_is_no_line_end() {
    let file =
        read("time,note,lat,lon\n2026-05-01T12:00:00Z,\"two\rlines\",52,5\n2026-05-01T12:00:01Z,,52,5\n");
    assert_eq!((file.trace.len(), file.facts.faults()), (2, 0));
}

#[test]
fn a_value_that_no_receiver_can_mean_is_none() {
    for value in ["1e308", "1e39", "inf", "-1", "700", "nan"] {
        let fix = read(format!(
            "time,lat,lon,speed_mps\n2026-05-01T12:00:00Z,52,5,{value}\n"
        ))
        .trace
        .fix(0);
        assert!(fix.speed_mps.is_nan(), "{value}");
    }
    for value in ["1e308", "1e39", "inf", "-1e5", "2e5"] {
        let log = format!("time,lat,lon,height_m,hdop,sd_m\n2026-05-01T12:00:00Z,52,5,{value},1e308,1e300\n");
        let fix = read(log).trace.fix(0);
        assert!(
            fix.height_msl_m.is_nan() && fix.hdop.is_nan() && fix.claimed_sd_m.is_nan(),
            "{value}"
        );
    }
    let file = read("time_s,x_m,y_m\n1,0,0\n2,1e300,0\n1e300,1,1\n4,-0.5,7\n");
    assert_eq!((file.trace.len(), skipped(&file, SkipReason::OutOfRange)), (2, 2));
}

#[test]
fn columns_without_a_time_are_refused_as_such() {
    let error = refuse("lat,lon\n52,5\n52,5.1\n");
    assert!(
        matches!(
            error,
            IngestError::NoTimes {
                positions: 2,
                line: 2,
                ..
            }
        ),
        "{error}"
    );
}

#[test]
fn relative_times_with_latitude_and_longitude_are_said() {
    let file = read("elapsed_s,lat,lon\n0.5,52,5\n1.5,52,5\n");
    assert_eq!(file.trace.time_s, [0.5, 1.5]);
    assert!(noticed(&file, "TimeIsRelative"));
}

#[test]
fn a_log_that_holds_whole_sentences_in_a_column_is_still_a_table() {
    let log = "time,lat,lon,raw\n2026-05-01T12:00:00Z,52,5,\"$GPRMC,120000.00,V,,,,,,,010526,,,N*7C\"\n";
    assert_eq!(read(log).trace.len(), 1);
}
