//! The short way for the usual shape and the full reader give the same for any file.

use super::{FastPath, read};
use crate::source::Source;
use proptest::prelude::*;
use std::path::{Path, PathBuf};
use std::sync::OnceLock;
use tussock_types::LimitSettings;

/// Everything that a reading contains, as text, so that missing values compare equal.
fn said(text: &[u8], limits: &LimitSettings, fast_path: FastPath) -> String {
    let Ok(source) = Source::read("log", text, limits) else {
        return "no bytes".into();
    };
    match read("log", &source, limits, fast_path) {
        Ok(reading) => format!(
            "{:?} {:?} {:?} {:?} {:?} {:?} {}",
            reading.found,
            reading.ledger,
            reading.notices,
            reading.resolution_m,
            reading.made_by,
            reading.timeless,
            reading.holds
        ),
        Err(error) => format!("{error:?}"),
    }
}

const ONE_CORE: FastPath = FastPath::On {
    chunk_bytes: usize::MAX,
};
/// Chunks of a point or two, so that some end in every kind of trouble.
const ALL_CORES: FastPath = FastPath::On { chunk_bytes: 150 };

/// A limit short enough for points to exceed.
fn short_lines() -> LimitSettings {
    LimitSettings {
        line_bytes: 400,
        ..LimitSettings::default()
    }
}

fn agree_within(text: &[u8], limits: &LimitSettings) {
    let full = said(text, limits, FastPath::Off);
    for fast_path in [ONE_CORE, ALL_CORES] {
        let fast = said(text, limits, fast_path);
        if fast != full {
            panic!(
                "{fast_path:?} with {limits:?}\n{fast}\nis not\n{full}\nof\n{}",
                String::from_utf8_lossy(&text[..text.len().min(10_000)])
            );
        }
    }
}

fn agree(text: &[u8]) {
    agree_within(text, &short_lines());
}

/// Every GPX file below a folder.
fn recorded(folder: &Path, found: &mut Vec<PathBuf>) {
    for entry in std::fs::read_dir(folder).unwrap() {
        let path = entry.unwrap().path();
        let name = path.to_string_lossy().into_owned();
        if path.is_dir() {
            recorded(&path, found);
        } else if name.ends_with(".gpx") || name.ends_with(".gpx.gz") {
            found.push(path);
        }
    }
}

fn recordings() -> Vec<PathBuf> {
    let mut found = Vec::new();
    recorded(
        &Path::new(env!("CARGO_MANIFEST_DIR")).join("../../fixtures"),
        &mut found,
    );
    assert!(found.len() >= 20, "{found:?}");
    found.sort();
    found
}

#[test]
fn both_ways_agree_on_every_recorded_file() {
    let mut points = 0;
    for path in recordings() {
        let text = std::fs::read(&path).unwrap();
        agree_within(&text, &LimitSettings::default());
        let source = Source::read("log", &text[..], &LimitSettings::default()).unwrap();
        points += read("log", &source, &LimitSettings::default(), ONE_CORE)
            .unwrap()
            .found
            .len();
    }
    assert!(points > 10_000, "{points}");
}

/// The first points of each recording.
fn heads() -> &'static Vec<Vec<u8>> {
    static HEADS: OnceLock<Vec<Vec<u8>>> = OnceLock::new();
    HEADS.get_or_init(|| {
        let heads = recordings().into_iter().filter_map(|path| {
            let stored = std::fs::read(path).unwrap();
            let source = Source::read("log", &stored[..], &LimitSettings::default()).unwrap();
            let first = memchr::memmem::find(&source.text, b"<trkpt")?;
            let mut head = b"<gpx><trk><trkseg>".to_vec();
            head.extend_from_slice(&source.text[first..source.text.len().min(first + 2500)]);
            Some(head)
        });
        heads.collect()
    })
}

/// What happens to a byte on a bad card, and in the hands of an attacker.
#[derive(Clone, Debug)]
enum Harm {
    Put(u8),
    Insert(&'static str),
    Lose(usize),
    Repeat(usize),
}

fn harm() -> impl Strategy<Value = (prop::sample::Index, Harm)> {
    let kind = prop_oneof![
        2 => any::<u8>().prop_map(Harm::Put),
        3 => prop::sample::select(b"<>/\"'&=:!?-. \n0e+".to_vec()).prop_map(Harm::Put),
        2 => prop::sample::select(vec![
            "<!-- x -->", "<![CDATA[1]]>", "&amp;", "<a/>", "</trkpt>", "<trkpt>", "<trkseg>", "</trkseg>", "<?x?>", " ", "<ele>", "</time>", "x:", " id='1'",
        ]).prop_map(Harm::Insert),
        1 => (1..60_usize).prop_map(Harm::Lose),
        1 => (1..200_usize).prop_map(Harm::Repeat),
    ];
    (any::<prop::sample::Index>(), kind)
}

fn harmed(text: &[u8], harms: &[(prop::sample::Index, Harm)]) -> Vec<u8> {
    let mut text = text.to_vec();
    for (place, harm) in harms {
        if text.is_empty() {
            break;
        }
        let at = place.index(text.len());
        match harm {
            Harm::Put(byte) => text[at] = *byte,
            Harm::Insert(piece) => drop(text.splice(at..at, piece.bytes())),
            Harm::Lose(count) => drop(text.drain(at..text.len().min(at + count))),
            Harm::Repeat(count) => {
                let again = text[at..text.len().min(at + count)].to_vec();
                drop(text.splice(at..at, again));
            }
        }
    }
    text
}

/// Limits that small files exceed.
fn tight() -> impl Strategy<Value = (LimitSettings, u64)> {
    (0..9_u64, 0..1500_u64, 2..14_u32, 1..70_u64, 30..400_u64).prop_map(
        |(fixes, room_bytes, element_depth, attribute_bytes, line_bytes)| {
            let limits = LimitSettings {
                fixes,
                element_depth,
                attribute_bytes,
                line_bytes,
                ..LimitSettings::default()
            };
            (limits, room_bytes)
        },
    )
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
        2 => (number(), number()).prop_map(|(lat, lon)| format!("lat='{lat}'\n lon='{lon}'")),
        1 => (number(), number()).prop_map(|(lat, lon)| format!("lat=\"{lat}\"lon=\"{lon}\"")),
        1 => (number(), number()).prop_map(|(lat, lon)| format!("lat = \"{lat}\" lon=\"{lon}' x='")),
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
    fn both_ways_agree_on_harmed_points(points in proptest::collection::vec(point(), 1..6), harms in proptest::collection::vec(harm(), 1..4)) {
        let text = format!("<gpx><trk><trkseg>\n{}</trkseg></trk></gpx>", points.concat());
        agree(&harmed(text.as_bytes(), &harms));
    }

    #[test]
    fn both_ways_agree_on_harmed_recordings(file in any::<prop::sample::Index>(), harms in proptest::collection::vec(harm(), 1..8)) {
        let heads = heads();
        agree(&harmed(&heads[file.index(heads.len())], &harms));
    }

    #[test]
    fn both_ways_agree_on_what_passes_a_limit(points in proptest::collection::vec(point(), 1..8), (limits, room_bytes) in tight()) {
        let text = format!("<gpx><trk><trkseg>\n{}</trkseg></trk></gpx>", points.concat());
        agree_within(text.as_bytes(), &limits);
        let memory_bytes = text.len() as u64 + room_bytes;
        agree_within(text.as_bytes(), &LimitSettings { memory_bytes, ..LimitSettings::default() });
        agree_within(text.as_bytes(), &LimitSettings { fixes: limits.fixes, ..LimitSettings::default() });
    }

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
        let both = [ONE_CORE, FastPath::Off].map(|fast_path| {
            read("log", &source, &limits, fast_path)
                .map(|reading| reading.found.len())
                .map_err(|e| e.to_string())
        });
        assert_eq!(both[0], both[1], "{element_depth}");
        assert_eq!(both[0].is_ok(), element_depth >= 7, "{element_depth}");
    }
}
