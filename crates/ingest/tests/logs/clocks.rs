//! Clocks of every kind in tables: dates beside times of day, GPS weeks, solution files, and numbers without a known start.

use crate::{noticed, read, read_with, refuse, skipped, unix_s};
use tussock_ingest::{IngestError, ReadOptions};
use tussock_types::{FixQuality, LogFormat, Positions, Said, SkipReason};

fn with_columns(columns: &str) -> ReadOptions {
    ReadOptions {
        columns: Some(columns.parse().unwrap_or_else(|error| panic!("{error}"))),
        ..ReadOptions::default()
    }
}

fn first_time_s(log: &str) -> f64 {
    read(log).trace.time_s[0]
}

#[test]
fn a_date_and_a_time_of_day_are_known_by_many_names_and_spellings() {
    let noon_s = unix_s("2026-05-13T12:00:00Z");
    for (header, date, time) in [
        ("date,time", "2026-05-13", "12:00:00"),
        ("Date,Time (UTC)", "13.05.2026", "12:00"),
        ("utc date,utc time", "2026-05-13", "12:00:00.000Z"),
        ("GPS Date,time_of_day", "05/13/2026", "12:00:00 PM"),
        ("date,time", "2026-05-13", "14:00:00+02:00"),
        ("date,time", "2026-05-14", "01:30:00+13:30"),
    ] {
        let log = format!("{header},lat,lon\n{date},{time},52,5\n");
        assert_eq!(first_time_s(&log), noon_s, "{log}");
        // The same by what the user says of them.
        let names: Vec<&str> = header.split(',').collect();
        for columns in [
            format!("date={},time={},lat=lat,lon=lon", names[0], names[1]),
            "date=#1,time=#2,lat=#3,lon=#4".to_owned(),
        ] {
            let file = read_with(log.as_bytes(), &with_columns(&columns)).unwrap();
            assert_eq!(file.trace.time_s, [noon_s], "{columns} of {log}");
        }
    }
    for (time, hour) in [
        ("12:30 am", "00:30"),
        ("1:05 PM", ""),
        ("01:05 PM", "13:05"),
        ("13:05 PM", ""),
    ] {
        let log = format!("date,time,lat,lon\n2026-05-13,{time},52,5\n2026-05-13,23:00:00,52,5\n");
        let file = read(&log);
        let expected = (!hour.is_empty()).then(|| unix_s(&format!("2026-05-13T{hour}:00Z")));
        assert_eq!(
            file.trace
                .time_s
                .first()
                .copied()
                .filter(|_| file.trace.len() == 2),
            expected,
            "{time}"
        );
    }
}

#[test]
fn a_column_called_date_may_hold_the_time_as_well() {
    let log = "date,lat,lon\n2026-05-13T12:00:00Z,52,5\n";
    assert_eq!(first_time_s(log), unix_s("2026-05-13T12:00:00Z"));
}

#[test]
fn cells_may_say_themselves_what_they_are() {
    let row = |second: u32| format!("date=2026-05-01,time=10:00:0{second},lat=52.1,lon=5.2,hdop=0.8");
    let log = format!(
        "{}\n{}\nlon=5.2,lat=52.1,time=10:00:02,date=2026-05-01\ndate=2026-05-01,time=10:00:03,52.1,5.2\n",
        row(0),
        row(1)
    );
    let file = read(&log);
    assert_eq!(file.trace.len(), 3);
    assert_eq!(file.trace.time_s[2], unix_s("2026-05-01T10:00:02Z"));
    assert_eq!(file.trace.positions.pair(2), (52.1, 5.2));
    assert_eq!(
        (file.trace.hdop[0], skipped(&file, SkipReason::Malformed)),
        (0.8, 1)
    );
    let file = read(log.replace(',', " "));
    assert_eq!(file.trace.len(), 3);
}

/// GPS week 2137, second 422922 is 2020-12-24 21:28:42 of GPS time, as the header of the recorded solution file says.
#[test]
fn gps_weeks_and_seconds_of_the_week_become_utc() {
    let expected_s = unix_s("2020-12-24T21:28:24Z");
    for log in [
        "week,tow,lat,lon\n2137,422922.0,52,5\n",
        "gps_week;gps_tow;lat;lon\n2137;422922,0;52;5\n",
        "GPS Week,time,lat,lon\n2137,422922.000,52,5\n",
        "wn,itow,lat,lon\n2137,422922000,52,5\n",
        "week,tow_ms,lat,lon\n2137,422922000,52,5\n",
        "week,tow,time_s,lat,lon\n2137,422922,0.5,52,5\n",
        "week,time,lat,lon\n2137,422922000,52,5\n",
        // A week of the calendar changes nothing.
        "date,week,time,lat,lon\n2020-12-24,52,212824,52,5\n",
    ] {
        let file = read(log);
        assert_eq!(file.trace.time_s, [expected_s], "{log}");
        assert_eq!(noticed(&file, "GpsTime"), !log.contains("date"), "{log}");
    }
    let file = read("week,time_s,x_m,y_m\n2137,0.5,1,2\n");
    assert_eq!(file.trace.time_s, [0.5]);
    let options = with_columns("week=#1,tow=#2,lat=#3,lon=#4");
    let file = read_with(b"2137,422922,52,5\n2137,422923,52,5\n", &options).unwrap();
    assert_eq!(file.trace.time_s[0], expected_s);
    // A second leapt between these two (IERS, Bulletin C 52): 17 s before, 18 s after.
    let file = read("week,tow,lat,lon\n1930,16,52,5\n1930,19,52,5\n");
    assert_eq!(
        file.trace.time_s,
        [unix_s("2016-12-31T23:59:59Z"), unix_s("2017-01-01T00:00:01Z")]
    );
}

#[test]
fn a_time_of_the_week_or_a_week_alone_is_never_a_clock_of_1970() {
    for (log, value) in [
        ("time,lat,lon\n422922.0,52,5\n422923.0,52,5\n", "422922.0"),
        ("tow,lat,lon\n422922,52,5\n", "422922"),
        ("itow,lat,lon\n102030,52,5\n", "102030"),
        ("timestamp,lat,lon\n75.5,52,5\n76.5,52,5\n", "75.5"),
    ] {
        let error = refuse(log);
        assert!(
            matches!(&error, IngestError::NoClock { value: found, line: 2, .. } if found == value),
            "{log}: {error}"
        );
    }
    // A week number may look like 21 minutes and 37 seconds, which is no day either.
    let error = refuse("time,lat,lon\n2137,52,5\n2137,52,5.00001\n");
    assert!(matches!(error, IngestError::NoDate { .. }), "{error}");
    // They look like times of day, but run past 59 seconds.
    let rows: String = (102_030..102_200)
        .map(|of_week| format!("{of_week},52,5\n"))
        .collect();
    let error = refuse(format!("time,lat,lon\n{rows}"));
    assert!(matches!(error, IngestError::NoClock { .. }), "{error}");
    // A user who says that a logger counts from its own start is believed.
    let file = read_with(
        b"time,lat,lon\n0.5,52,5\n1.5,52,5\n",
        &with_columns("time_s=time,lat=lat,lon=lon"),
    );
    assert!(noticed(&file.unwrap(), "TimeIsRelative"));
}

#[test]
fn a_week_of_ten_bits_needs_a_day() {
    let log = "week,tow,lat,lon\n89,422922,52,5\n";
    let error = refuse(log);
    assert!(error.to_string().contains("times such as 89 (line 2)"), "{error}");
    let options = ReadOptions {
        date: time::Date::from_calendar_date(2020, time::Month::December, 24).ok(),
        ..ReadOptions::default()
    };
    let file = read_with(log.as_bytes(), &options).unwrap();
    assert_eq!(file.trace.time_s, [unix_s("2020-12-24T21:28:24Z")]);
}

const SOLUTION: &str =
    "% (lat/lon/height=WGS84/ellipsoidal,Q=1:fix,2:float,3:sbas,4:dgps,5:single,6:ppp,ns=# of satellites)\n";

#[test]
fn a_solution_file_is_read_with_its_own_clock_and_its_own_codes() {
    let names = "latitude(deg) longitude(deg)  height(m)   Q  ns   sdn(m)   sde(m)";
    let values = "52.100000001 5.200000001 12.5 1 9 0.03 0.04";
    let utc_s = unix_s("2020-12-24T21:28:42Z");
    for (clock, time, expected_s) in [
        ("GPST", "2020/12/24 21:28:42.000", utc_s - 18.0),
        ("UTC", "2020/12/24 21:28:42.000", utc_s),
        ("JST", "2020/12/25 06:28:42.000", utc_s),
        ("GPST", "2137 422922.000", utc_s - 18.0),
        ("UTC", "2137 422922.000", utc_s),
    ] {
        let blanks = format!("{SOLUTION}%  {clock}  {names}\n{time} {values}\n");
        let comma = |text: &str| text.split_whitespace().collect::<Vec<_>>().join(",");
        let time_with_comma = if time.contains('/') {
            time.to_owned()
        } else {
            comma(time)
        };
        let commas = format!(
            "{SOLUTION}%  {clock} ,{}\n{time_with_comma},{}\n",
            comma(names),
            comma(values)
        );
        for log in [blanks, commas] {
            let file = read(&log);
            let fix = file.trace.fix(0);
            assert_eq!(file.facts.format, LogFormat::Pos);
            assert_eq!(
                (fix.time_s, fix.first, fix.second),
                (expected_s, 52.100_000_001, 5.200_000_001),
                "{log}"
            );
            assert_eq!((fix.quality, fix.satellites), (FixQuality::RtkFixed, 9));
            assert!(
                (fix.claimed_sd_m - 0.035_355_34).abs() < 1e-7,
                "the root of the mean of two squares"
            );
            assert_eq!(noticed(&file, "GpsTime"), clock == "GPST", "{log}");
            assert!(!noticed(&file, "TimeWithoutZone"));
        }
    }
}

#[test]
fn a_solution_file_of_baselines_is_in_metres_from_the_other_receiver() {
    let file = read(
        "%  GPST  e-baseline(m)  n-baseline(m)  u-baseline(m)   Q\n2020/12/24 21:28:42.000 1.5 -2.5 0.1 2\n",
    );
    assert!(matches!(file.trace.positions, Positions::Local { .. }));
    assert_eq!(file.trace.positions.pair(0), (1.5, -2.5));
    assert_eq!(file.trace.quality, [FixQuality::RtkFloat]);
}

#[test]
fn kinds_that_are_not_read_are_named_with_the_way_to_convert_them() {
    // A frame of UBX: NAV-EOE, four bytes, Fletcher's checksum worked out by hand.
    let mut frame = vec![0xb5, 0x62, 0x01, 0x61, 4, 0, 1, 2, 3, 4];
    let sums = frame[2..].iter().fold((0_u8, 0_u8), |(a, b), byte| {
        let a = a.wrapping_add(*byte);
        (a, b.wrapping_add(a))
    });
    frame.extend([sums.0, sums.1]);
    let log = [&[0_u8, 7][..], &frame.repeat(20)].concat();
    let error = refuse(&log).to_string();
    assert!(
        error.contains("UBX binary") && error.contains("gpsdecode") && error.contains("at byte 2"),
        "{error}"
    );
    frame[7] ^= 1;
    let error = refuse(frame.repeat(20)).to_string();
    assert!(error.contains("binary data"), "{error}");
    let error =
        refuse("%  GPST  x-ecef(m)  y-ecef(m)  z-ecef(m)   Q\n2020/12/24 21:28:42.000 1 2 3 1\n").to_string();
    assert!(error.contains("out-solformat = llh"), "{error}");
    let error = refuse(
        "%  GPST  latitude(d'\") longitude(d'\") height(m) Q\n2020/12/24 21:28:42 52 10 1.0 5 3 2.0 9 1\n",
    );
    assert!(error.to_string().contains("out-degform = deg"), "{error}");
}

#[test]
fn late_lines_are_put_where_they_belong() {
    let log = |seconds: &[u32]| {
        let rows = seconds
            .iter()
            .map(|second| format!("2026-05-01T12:00:{second:02}Z,52,5.{second:02}\n"));
        format!("time,lat,lon\n{}", rows.collect::<String>())
    };
    for seconds in [
        &[0, 1, 3, 2, 4, 5, 6, 7][..],
        &[1, 0, 2, 3, 4, 5, 6, 7],
        &[0, 1, 2, 5, 6, 7, 3, 4],
        &[1, 0, 3, 2, 5, 4, 7, 6],
        &[0, 1, 2, 3, 4, 5, 7, 6],
    ] {
        let file = read(log(seconds));
        assert_eq!((file.trace.len(), file.facts.faults()), (8, 0), "{seconds:?}");
        let in_order = (0..8).map(|second| 5.0 + f64::from(second) / 100.0);
        let found = (0..8).map(|index| file.trace.positions.pair(index).1);
        assert!(
            found
                .zip(in_order)
                .all(|(found, expected)| (found - expected).abs() < 1e-9),
            "{seconds:?}"
        );
        assert!(file.trace.segment.iter().all(|segment| *segment == 0));
        assert!(noticed(&file, "LateFixes"), "{seconds:?}");
    }
    let told = &read(log(&[0, 1, 2, 5, 6, 7, 3, 4])).facts.notices[0].said;
    assert_eq!(told, &Said::LateFixes { fixes: 2 });
}

#[test]
fn a_clock_that_jumps_back_is_no_late_line() {
    let log = |times: &[f64]| {
        let rows = times
            .iter()
            .map(|second| format!("2026-05-01T12:00:{second:06.3}Z,52,5\n"));
        format!("time,lat,lon\n{}", rows.collect::<String>())
    };
    let steady: Vec<f64> = (10..30).map(f64::from).collect();
    for behind in [
        // Set back by whole seconds, by a part of one, and far into a silence.
        vec![27.0, 28.0, 29.0, 30.0],
        vec![26.5, 27.5, 28.5, 29.5, 30.5],
        vec![1.0, 31.0],
    ] {
        let times = [&steady[..], &behind].concat();
        let file = read(log(&times));
        assert!(file.facts.faults() > 0, "{behind:?}");
        assert!(!noticed(&file, "LateFixes"), "{behind:?}");
    }
}
