//! The short way through the usual shape and the full reader say the same of any file.

use super::{FastPath, read};
use crate::source::Source;
use proptest::prelude::*;
use tussock_types::LimitSettings;

/// All that a reading says, as text, so that missing values compare equal.
fn said(text: &[u8], fast_path: FastPath) -> String {
    let limits = LimitSettings {
        line_bytes: 400,
        ..LimitSettings::default()
    };
    let Ok(source) = Source::read("log", text, &limits) else {
        return "no bytes".into();
    };
    match read("log", &source, &limits, fast_path) {
        Ok(reading) => format!(
            "{:?} {:?} {:?} {:?} {:?} {}",
            reading.found,
            reading.ledger,
            reading.notices,
            reading.resolution_m,
            reading.timeless.count,
            reading.holds
        ),
        Err(error) => error.to_string(),
    }
}

fn agree(text: &[u8]) {
    assert_eq!(
        said(text, FastPath::On),
        said(text, FastPath::Off),
        "{}",
        String::from_utf8_lossy(text)
    );
}

fn number() -> impl Strategy<Value = String> {
    prop_oneof![
        6 => (-90.0..90.0_f64).prop_map(|value| format!("{value:.7}")),
        1 => (-200.0..200.0_f64).prop_map(|value| format!("{value}")),
        1 => proptest::sample::select(vec!["0", "90", "", " 52 ", "NaN", "1e1", "52,1", "+5", ".5", "5.", "&#53;", "123456789012345678901234567890"])
            .prop_map(String::from),
    ]
}

fn time_of() -> impl Strategy<Value = String> {
    prop_oneof![
        6 => (0..86_400_u32).prop_map(|s| format!("2026-05-01T{:02}:{:02}:{:02}Z", s / 3600, s / 60 % 60, s % 60)),
        2 => (0..60_u32, 0..1000_u32).prop_map(|(s, ms)| format!("2026-05-01T12:00:{s:02}.{ms:03}Z")),
        1 => proptest::sample::select(vec!["", " ", "2026-05-01T12:00:00", "2026-05-01T12:00:00+02:00", "1980-01-06T00:00:00Z", "now", "&amp;"])
            .prop_map(String::from),
    ]
}

fn child() -> impl Strategy<Value = String> {
    prop_oneof![
        4 => time_of().prop_map(|time| format!("<time>{time}</time>")),
        2 => number().prop_map(|value| format!("<ele>{value}</ele>")),
        1 => number().prop_map(|value| format!("<extensions><a:b><a:speed>{value}</a:speed><a:x>1</a:x></a:b></extensions>")),
        1 => number().prop_map(|value| format!("\n <hdop>{value}</hdop>\n <sat>7</sat>\n")),
        1 => number().prop_map(|value| format!("<course>{value}</course><speed>0.4</speed>")),
        1 => proptest::sample::select(vec![
            "<fix>3d</fix>", "<fix>none</fix>", "<fix/>", "<name>a &amp; b</name>", "<name>x</name>", "<!-- c -->", "<name><![CDATA[<time>]]></name>",
            "<extensions a=\"1\"><speed>2</speed></extensions>", "<extensions><trkpt>x</trkpt></extensions>", "<a><b><c><d><e><speed>3</speed></e></d></c></b></a>",
            "<extensions></extensions>", "<extensions> <time>2026-05-01T12:00:00Z</time></extensions>", "text", "<a></b>", "</a>", "<time>", "</trkseg>", "&",
            "<accuracy> 3 </accuracy>", "<q:accuracy></q:accuracy>", "<ele>1<b/></ele>",
        ]).prop_map(String::from),
    ]
}

fn point() -> impl Strategy<Value = String> {
    let attributes = prop_oneof![
        8 => (number(), number()).prop_map(|(lat, lon)| format!("lat=\"{lat}\" lon=\"{lon}\"")),
        2 => (number(), number()).prop_map(|(lat, lon)| format!("lon=\"{lon}\"  lat=\"{lat}\" ")),
        1 => (number(), number()).prop_map(|(lat, lon)| format!("lat='{lat}' lon=\"{lon}\"")),
        1 => number().prop_map(|lat| format!("lat=\"{lat}\" lat=\"{lat}\"")),
        1 => number().prop_map(|lat| format!("lat=\"{lat}\" lon=\"5\" id=\"7\"")),
    ];
    let name = prop_oneof![9 => Just("trkpt"), 1 => Just("g:trkpt"), 1 => Just("wpt")];
    (
        name,
        attributes,
        proptest::collection::vec(child(), 0..5),
        proptest::sample::select(vec!["", "\n", "  ", "<!-- x -->", "junk", "\0"]),
    )
        .prop_map(|(name, attributes, children, after)| {
            format!("<{name} {attributes}>{}</{name}>{after}", children.concat())
        })
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(3000))]

    #[test]
    fn both_ways_through_a_point_agree(points in proptest::collection::vec(point(), 1..8), cut in 0..400_usize) {
        let text = format!("<gpx><trk><trkseg>\n{}</trkseg></trk></gpx>", points.concat());
        agree(text.as_bytes());
        let mut end = text.len().saturating_sub(cut);
        while !text.is_char_boundary(end) {
            end -= 1;
        }
        agree(&text.as_bytes()[..end]);
    }
}

#[test]
fn both_ways_agree_on_a_limit_of_nesting() {
    let text = "<gpx><trk><trkseg><trkpt lat=\"52\" lon=\"5\"><time>2026-05-01T12:00:00Z</time><a><b><speed>1</speed></b></a></trkpt></trkseg></trk></gpx>";
    for element_depth in 1..20 {
        let limits = LimitSettings {
            element_depth,
            ..LimitSettings::default()
        };
        let source = Source::read("log", text.as_bytes(), &limits).unwrap();
        let both = [FastPath::On, FastPath::Off].map(|fast_path| {
            read("log", &source, &limits, fast_path)
                .map(|reading| reading.found.len())
                .map_err(|e| e.to_string())
        });
        assert_eq!(both[0], both[1], "{element_depth}");
        assert_eq!(both[0].is_ok(), element_depth >= 7, "{element_depth}");
    }
}
