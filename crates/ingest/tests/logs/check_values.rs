//! Published examples and values, each with its id and source.

use crate::{read, refuse, sentence, skipped, unix_s};
use tussock_types::{Fix, FixQuality, SkipReason};

/// "NMEA Revealed", gpsd project (www/NMEA.adoc of 2026-08-20).
const DATE: &str = "$GPZDA,000000.00,10,01,2017,00,00\r\n";

fn dated(text: &str) -> Vec<Fix> {
    let file = read(format!("{DATE}{text}\r\n"));
    (0..file.trace.len()).map(|index| file.trace.fix(index)).collect()
}

fn one(text: &str) -> Fix {
    let fixes = dated(text);
    assert_eq!(fixes.len(), 1, "{text}");
    fixes[0]
}

fn near(found: f64, expected: f64, tolerance: f64) {
    assert!((found - expected).abs() <= tolerance, "{found} is not {expected}");
}

/// The checksum that a sentence must have, whatever it states.
fn checksum(text: &str) -> String {
    let body = text[1..].split('*').next().unwrap_or_default();
    format!("{:02X}", body.bytes().fold(0, |sum, byte| sum ^ byte))
}

#[test]
fn nmea_01_gga_with_a_short_tail() {
    let fix = one("$GNGGA,001043.00,4404.14036,N,12118.85961,W,1,12,0.98,1113.0,M,-21.3,M*47");
    near(fix.first, 44.069_006, 1e-8);
    near(fix.second, -121.314_326_833, 1e-8);
    assert_eq!(
        (fix.quality, fix.satellites, fix.hdop, fix.height_msl_m),
        (FixQuality::Autonomous, 12, 0.98, 1113.0)
    );
    assert_eq!(fix.time_s, unix_s("2017-01-10T00:10:43Z"));
}

#[test]
fn nmea_02_rmc_without_course() {
    let file = read("$GNRMC,001031.00,A,4404.13993,N,12118.86023,W,0.146,,100117,,,A*7B\r\n");
    let fix = file.trace.fix(0);
    near(fix.first, 44.068_998_833, 1e-8);
    near(fix.second, -121.314_337_167, 1e-8);
    near(f64::from(fix.speed_mps), 0.075_108_9, 1e-7);
    assert!(fix.course_deg.is_nan());
    assert_eq!(fix.time_s, unix_s("2017-01-10T00:10:31Z"));
}

#[test]
fn nmea_03_gst() {
    let gst = "$GPGST,182141.000,15.5,15.3,7.2,21.8,0.9,0.5,0.8*54\r\n";
    let fix =
        one(&(gst.to_string()
            + &sentence("GPGGA,182141.000,4404.14036,N,12118.85961,W,1,12,0.98,1.0,M,,M,,")));
    near(
        f64::from(fix.claimed_sd_m),
        ((0.9_f64.powi(2) + 0.5_f64.powi(2)) / 2.0).sqrt(),
        1e-6,
    );
}

#[test]
fn err_07_gst_with_the_ellipse_only_claims_as_much() {
    let fix = one(&(sentence("GPGST,182141.000,15.5,0.014,0.009,35.0,,,")
        + &sentence("GPGGA,182141.000,4404.14036,N,12118.85961,W,1,12,0.98,1.0,M,,M,,")));
    let per_axis_m = ((0.012_576_413_f64.powi(2) + 0.010_901_094_f64.powi(2)) / 2.0).sqrt();
    near(f64::from(fix.claimed_sd_m), per_axis_m, 1e-8);
}

#[test]
fn nmea_04_and_09_sentences_that_are_not_read_keep_their_checksum() {
    for (id, text) in [
        ("NMEA-04", "$GNGSA,A,3,80,71,73,79,69,,,,,,,,1.83,1.09,1.47*17"),
        ("NMEA-09", "$GPGBS,125027,23.43,M,13.91,M,34.01,M*07"),
    ] {
        let fine = sentence("GPRMC,123519,A,4807.038,N,01131.000,E,022.4,084.4,230394,003.1,W");
        let file = read(format!("{fine}{text}\r\n"));
        assert_eq!(skipped(&file, SkipReason::NotAPosition), 1, "{id}");
        assert_eq!(file.facts.faults(), 0, "{id}");
    }
}

#[test]
fn nmea_05_vtg() {
    let gga = sentence("GNGGA,001043.00,4404.14036,N,12118.85961,W,1,12,0.98,1113.0,M,-21.3,M");
    let fix = one(&format!("{gga}$GPVTG,220.86,T,,M,2.550,N,4.724,K,A*34"));
    near(f64::from(fix.speed_mps), 1.311_833_3, 1e-6);
    assert_eq!(fix.course_deg, 220.86);
    let fix = one(&(gga + &sentence("GPVTG,220.86,T,,M,,N,4.724,K,A")));
    near(f64::from(fix.speed_mps), 1.312_222_2, 1e-6);
}

#[test]
fn nmea_06_gns_with_a_short_tail() {
    let fix = one("$GPGNS,112257.00,3844.24011,N,00908.43828,W,AN,03,10.5,,*57");
    near(fix.first, 38.737_335_167, 1e-8);
    near(fix.second, -9.140_638, 1e-8);
    assert_eq!(
        (fix.quality, fix.satellites, fix.hdop),
        (FixQuality::Autonomous, 3, 10.5)
    );
    assert!(fix.height_msl_m.is_nan());
}

#[test]
fn nmea_07_zda() {
    let gga = sentence("GNGGA,160012.71,4404.14036,N,12118.85961,W,1,12,0.98,1113.0,M,-21.3,M");
    let file = read(format!("$GPZDA,160012.71,11,03,2004,-1,00*7D\r\n{gga}"));
    near(file.trace.time_s[0], unix_s("2004-03-11T16:00:12.71Z"), 1e-6);
}

#[test]
fn nmea_08_gll() {
    let fix = one("$GNGLL,4404.14012,N,12118.85993,W,001037.00,A,A*67");
    near(fix.first, 44.069_002, 1e-8);
    near(fix.second, -121.314_332_167, 1e-8);
}

#[test]
fn nmea_10_to_14_gga_and_rmc_of_public_pages() {
    // D. DePriest's NMEA page; go-nmea, serialcs and pynmea2 documentation.
    let fix = one("$GPGGA,123519,4807.038,N,01131.000,E,1,08,0.9,545.4,M,46.9,M,,*47");
    near(fix.first, 48.1173, 1e-8);
    near(fix.second, 11.516_666_667, 1e-8);
    assert_eq!((fix.satellites, fix.hdop, fix.height_msl_m), (8, 0.9, 545.4));
    let file = read("$GPRMC,123519,A,4807.038,N,01131.000,E,022.4,084.4,230394,003.1,W*6A\r\n");
    let fix = file.trace.fix(0);
    near(f64::from(fix.speed_mps), 11.523_555_6, 1e-6);
    assert_eq!(
        (fix.course_deg, fix.time_s),
        (84.4, unix_s("1994-03-23T12:35:19Z"))
    );
    let fix = one("$GNGGA,203415.000,6325.6138,N,01021.4290,E,1,8,2.42,72.5,M,41.5,M,,*7C");
    near(fix.first, 63.426_896_667, 1e-8);
    near(fix.second, 10.357_15, 1e-8);
    assert_eq!((fix.hdop, fix.satellites), (2.42, 8));
    let fix = one("$GPGGA,200329.000,4932.7248,N,01159.2531,E,1,06,1.5,401.0,M,47.4,M,,0000*5A");
    near(fix.first, 49.545_413_333, 1e-8);
    near(fix.second, 11.987_551_667, 1e-8);
    let fix = one("$GPGGA,184353.07,1929.045,S,02410.506,E,1,04,2.6,100.00,M,-33.9,M,,0000*6D");
    near(fix.first, -19.484_083_333, 1e-8);
    near(fix.second, 24.1751, 1e-8);
}

#[test]
fn nmea_15_to_17_quality_and_no_fix() {
    let fix = one("$GNGGA,120000.00,5200.00000,N,00500.00000,E,4,14,0.70,12.3,M,43.1,M,1.0,0001*5C");
    assert_eq!(fix.quality, FixQuality::RtkFixed);
    let fix = one("$GNGGA,120001.00,5200.00027,N,00500.00000,E,5,14,0.70,12.3,M,43.1,M,1.0,0001*59");
    assert_eq!(fix.quality, FixQuality::RtkFloat);
    near(fix.first, 52.000_004_5, 1e-10);
    let error = refuse(format!("{DATE}$GNGGA,120002.00,,,,,0,00,99.99,,,,,,*79\r\n"));
    assert!(error.to_string().contains("1 x receiver had no fix"), "{error}");
}

#[test]
fn nmea_18_and_19_midnight_and_new_year() {
    let file = read(
        "$GNRMC,235959.80,A,5200.00000,N,00500.00000,E,0.97,90.0,311225,,,R*59\r\n\
         $GNRMC,000000.00,A,5200.00000,N,00500.00000,E,0.97,90.0,010126,,,R*52\r\n",
    );
    near(file.trace.time_s[0], unix_s("2025-12-31T23:59:59.80Z"), 1e-6);
    assert_eq!(file.trace.time_s[1], unix_s("2026-01-01T00:00:00Z"));
}

#[test]
fn nmea_20_to_22_gst_gns_and_the_antimeridian() {
    let gns = "$GNGNS,120000.00,5200.00000,N,00500.00000,E,RRNN,14,0.70,12.3,43.1,1.0,0001*73";
    let fix = one(&format!(
        "$GNGST,120000.00,0.010,0.014,0.009,35.0,0.012,0.011,0.020*70\r\n{gns}"
    ));
    assert_eq!(fix.quality, FixQuality::RtkFixed);
    near(
        f64::from(fix.claimed_sd_m),
        ((0.012_f64.powi(2) + 0.011_f64.powi(2)) / 2.0).sqrt(),
        1e-7,
    );
    let fix = one("$GNGGA,120000.00,0015.50000,S,17959.99999,W,2,09,1.10,5.0,M,0.0,M,,*7A");
    near(fix.first, -0.258_333_333, 1e-8);
    near(fix.second, -179.999_999_833, 1e-8);
}

#[test]
fn nmea_30_a_printed_example_with_a_wrong_checksum_is_rejected_and_counted() {
    // NMEA 0183 sentences page of a public help system.
    let text = "$GPGGA,121505,4807.038,N,01131.324,E,1,08,0.9,133.4,M,46.9,M, , *42";
    assert_eq!(checksum(text), "48");
    let file = read(format!(
        "{}{text}\r\n",
        sentence("GPRMC,121504,A,4807.038,N,01131.324,E,0.0,,010526,,,A")
    ));
    assert_eq!(
        (file.trace.len(), skipped(&file, SkipReason::BadChecksum)),
        (1, 1)
    );
    // With its checksum corrected, fields that contain a blank do no harm.
    assert_eq!(one(&text.replace("*42", "*48")).satellites, 8);
}

#[test]
fn nmea_31_and_32_are_held_where_quality_and_mode_are_tested() {
    // GGA: 1 GPS, 2 differential, 3 PPS, 4 RTK, 5 float RTK, 6 estimated, 7 manual, 8 simulation ("NMEA Revealed").
    let words = ["", "A", "D", "P", "R", "F", "E", "M", "S"];
    for (code, mode) in words.iter().enumerate().skip(1) {
        let gga = one(&sentence(&format!(
            "GNGGA,120000.00,5200.0,N,00500.0,E,{code},14,0.70,12.3,M,43.1,M,1.0,0001"
        )));
        let gns = one(&sentence(&format!(
            "GNGNS,120000.00,5200.0,N,00500.0,E,{mode},14,0.70,12.3,43.1,1.0,0001"
        )));
        assert_eq!(gga.quality, gns.quality, "{code} and {mode}");
    }
}

#[test]
fn nmea_33_a_knot_is_1852_metres_an_hour() {
    let fix = read(sentence("GPRMC,120000,A,5200.0,N,00500.0,E,1000,,010526,,,A"))
        .trace
        .fix(0);
    near(f64::from(fix.speed_mps), 514.444_444_444, 0.000_04);
}

#[test]
fn nmea_34_minutes_are_sixtieths() {
    let fix = one(&sentence(
        "GPGGA,120000,4533.35,N,16708.033,E,1,08,0.9,1.0,M,,M,,",
    ));
    near(fix.first, 45.555_833_333_333, 1e-10);
    near(fix.second, 167.133_883_333_333, 1e-10);
}

#[test]
fn nmea_35_sentences_beyond_82_bytes_are_read_as_real_logs_need() {
    let long = sentence(
        "GNGGA,132819.60,4134.497954591234,N,09345.034314081234,W,2,10,0.9,278.161,M,-31.442,M,6.6,0133",
    );
    assert!(long.len() > 82);
    assert_eq!(dated(&long).len(), 1);
}

#[test]
fn nmea_36_two_digit_years_turn_over_at_80() {
    // POSIX takes 69 to 99 as 19xx; the GPS time scale begins in 1980, so that 69 to 79 can only be 20xx in a log.
    let log = |year: &str| sentence(&format!("GPRMC,120000,A,5200.0,N,00500.0,E,0.0,,0105{year},,,A"));
    for (year, full) in [
        ("94", 1994),
        ("81", 1981),
        ("00", 2000),
        ("26", 2026),
        ("68", 2068),
        ("79", 2079),
    ] {
        assert_eq!(
            read(log(year)).trace.time_s,
            [unix_s(&format!("{full}-05-01T12:00:00Z"))],
            "{year}"
        );
    }
    // 1980 is the year of receivers that do not know the date.
    refuse(log("80"));
}

#[test]
fn nmea_37_and_38_rollovers_are_1024_weeks_apart() {
    let day = |text: &str| unix_s(&format!("{text}T00:00:00Z")) / 86_400.0;
    let rollovers = ["1980-01-06", "1999-08-22", "2019-04-07", "2038-11-21"];
    for pair in rollovers.windows(2) {
        assert_eq!(day(pair[1]) - day(pair[0]), 7168.0);
    }
    // A receiver one rollover behind shows 2026-05-01 as 2006-09-15.
    let log = sentence("GPRMC,120000,A,5200.0,N,00500.0,E,0.0,,150906,,,A")
        + &sentence("GPRMC,120001,A,5200.0,N,00500.0,E,0.0,,010526,,,A");
    assert_eq!(read(log).trace.time_s[0], unix_s("2026-05-01T12:00:00Z"));
}

#[test]
fn nmea_39_week_and_time_of_week_agree_with_the_calendar() {
    // GPS week 2416, 475218 s, with GPS 18 s ahead of UTC.
    let gps_s = f64::from(2416 * 7) * 86_400.0 + 475_218.0 - 18.0;
    assert_eq!(
        unix_s("1980-01-06T00:00:00Z") + gps_s,
        unix_s("2026-05-01T12:00:00Z")
    );
    let file = read(sentence("GPRMC,120000,A,5200.0,N,00500.0,E,0.0,,010526,,,A"));
    assert_eq!(file.trace.time_s[0] - unix_s("1980-01-06T00:00:00Z"), gps_s);
}

fn point(attributes: &str, children: &str) -> String {
    format!(
        "<gpx version=\"1.1\" creator=\"x\"><trk><trkseg><trkpt {attributes}>{children}</trkpt></trkseg></trk></gpx>"
    )
}

/// GPX 1.1 schema, topografix.com, `wptType`; GPX 1.0 order as in gpxpy's field tables.
#[test]
fn gpx_01_and_02_children_in_schema_order_are_read() {
    let children_1_1 = "<ele>1</ele><time>2026-05-01T12:00:00Z</time><magvar>1</magvar><geoidheight>2</geoidheight><name>n</name>\
        <cmt>c</cmt><desc>d</desc><src>s</src><link href=\"x\"><text>t</text></link><sym>y</sym><type>t</type><fix>dgps</fix>\
        <sat>7</sat><hdop>0.5</hdop><vdop>1</vdop><pdop>2</pdop><ageofdgpsdata>3</ageofdgpsdata><dgpsid>4</dgpsid>\
        <extensions><q:speed xmlns:q=\"urn:q\">0.4</q:speed></extensions>";
    let children_1_0 = "<ele>1</ele><time>2026-05-01T12:00:00Z</time><course>90</course><speed>0.4</speed><magvar>1</magvar>\
        <geoidheight>2</geoidheight><name>n</name><cmt>c</cmt><desc>d</desc><src>s</src><url>u</url><urlname>v</urlname><sym>y</sym>\
        <type>t</type><fix>dgps</fix><sat>7</sat><hdop>0.5</hdop><vdop>1</vdop><pdop>2</pdop><ageofdgpsdata>3</ageofdgpsdata><dgpsid>4</dgpsid>";
    for children in [children_1_1, children_1_0] {
        let fix = read(point("lat=\"52\" lon=\"5\"", children)).trace.fix(0);
        assert_eq!(
            (fix.height_msl_m, fix.satellites, fix.hdop, fix.speed_mps),
            (1.0, 7, 0.5, 0.4)
        );
        assert_eq!(fix.quality, FixQuality::Differential);
    }
}

#[test]
fn gpx_03_children_of_the_root_may_come_in_any_order() {
    let track =
        "<trk><trkseg><trkpt lat=\"52\" lon=\"5\"><time>2026-05-01T12:00:00Z</time></trkpt></trkseg></trk>";
    let rest =
        "<wpt lat=\"1\" lon=\"1\"/><rte/><metadata><time>2020-01-01T00:00:00Z</time></metadata><extensions/>";
    for log in [
        format!("<gpx>{track}{rest}</gpx>"),
        format!("<gpx>{rest}{track}</gpx>"),
    ] {
        assert_eq!(read(log).trace.time_s, [unix_s("2026-05-01T12:00:00Z")]);
    }
}

#[test]
fn gpx_04_the_five_words_for_a_fix() {
    let quality = |word: &str| {
        let time = format!("<time>2026-05-01T12:00:00Z</time><fix>{word}</fix>");
        read(point("lat=\"52\" lon=\"5\"", &time)).trace.quality[0]
    };
    assert_eq!(["2d", "3d"].map(quality), [FixQuality::Autonomous; 2]);
    assert_eq!(
        (quality("dgps"), quality("pps")),
        (FixQuality::Differential, FixQuality::Precise)
    );
    let none = refuse(point(
        "lat=\"52\" lon=\"5\"",
        "<time>2026-05-01T12:00:00Z</time><fix>none</fix>",
    ));
    assert!(none.to_string().contains("receiver had no fix"), "{none}");
}

#[test]
fn gpx_05_to_07_a_lenient_reader_takes_more_than_the_schema() {
    let position = "lat=\"52\" lon=\"5\"";
    let noon = "<time>2026-05-01T12:00:00Z</time>";
    let accepted = [
        (position, "<ele>1</ele><time>2026-05-01T12:00:00Z</time>"),
        (position, "<time>2026-05-01T12:00:00Z</time><ele>1</ele>"),
        (
            position,
            "<time>2026-05-01T12:00:00Z</time><speed>1</speed><course>1</course>",
        ),
        ("lat=\"52\" lon=\"-180\"", noon),
        ("lat=\"52\" lon=\"180\"", noon),
        (position, "<time>2026-05-01T12:00:00.250Z</time>"),
        (position, "<time>2026-05-01T12:00:00+02:00</time>"),
        (position, "<time>2026-05-01T12:00:00</time>"),
        (position, "<time>2026-05-01 12:00:00</time>"),
        (position, "<time>2016-12-31T23:59:60Z</time>"),
        (
            position,
            "<time>2026-05-01T12:00:00Z</time><ele>1e2</ele><sat>-1</sat><hdop>INF</hdop><dgpsid>1024</dgpsid><magvar>360</magvar>",
        ),
        (
            position,
            "<time>2026-05-01T12:00:00Z</time><ele>.5</ele><sat>3.5</sat>",
        ),
    ];
    for (attributes, children) in accepted {
        assert_eq!(
            read(point(attributes, children)).trace.len(),
            1,
            "{attributes} {children}"
        );
    }
    let fix = read(point(
        position,
        "<time>2026-05-01T12:00:00Z</time><ele>.5</ele><sat>3.5</sat><hdop>INF</hdop>",
    ))
    .trace
    .fix(0);
    assert_eq!(
        (fix.height_msl_m, fix.satellites, fix.hdop.is_nan()),
        (0.5, u8::MAX, true)
    );
    assert!(
        refuse(point("lat=\"90.0000001\" lon=\"5\"", noon))
            .to_string()
            .contains("out of range")
    );
    // Latitude 90 is a place by the schema, but no garden lies there, and receivers write it while they search.
    assert!(
        refuse(point("lat=\"90\" lon=\"5\"", noon))
            .to_string()
            .contains("latitude 90")
    );
}
