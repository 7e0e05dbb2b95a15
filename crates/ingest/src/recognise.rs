//! What kind of log is this? Told by content alone.

use crate::csv::{self, Columns};
use crate::nmea;
use tussock_types::LogFormat;

/// Told, or what it seems to be instead.
pub(crate) enum Told {
    Log(LogFormat),
    /// What was found, and at which byte of the text.
    Not(String, u64),
}

/// How far in the root element of an XML file is looked for, and points where there is none.
const ROOT_WITHIN: usize = 1 << 20;

pub(crate) fn recognise(text: &[u8], columns: Option<&Columns>) -> Told {
    let start = text
        .iter()
        .position(|b| !b.is_ascii_whitespace())
        .unwrap_or(text.len());
    if start == text.len() {
        return Told::Not("nothing but blanks".into(), 0);
    }
    let xml = root(text, start);
    if let Some((name, _)) = &xml
        && name == "gpx"
    {
        return Told::Log(LogFormat::Gpx);
    }
    if columns.is_some() {
        return Told::Log(LogFormat::Csv);
    }
    if csv::has_header(text) {
        return Told::Log(LogFormat::Csv);
    }
    if nmea::holds_sentences(text) {
        return Told::Log(LogFormat::Nmea);
    }
    if holds_points(text) {
        return Told::Log(LogFormat::Gpx);
    }
    if let Some((name, byte)) = xml {
        return Told::Not(format!("XML with the root <{name}>"), byte as u64);
    }
    match text[start] {
        b'<' => Told::Not("markup without a <gpx> element".into(), start as u64),
        b'{' | b'[' => Told::Not("JSON".into(), start as u64),
        _ => {
            let head = &text[..text.len().min(4096)];
            let odd = head
                .iter()
                .filter(|b| !b.is_ascii_graphic() && !b.is_ascii_whitespace())
                .count();
            if odd * 10 > head.len() {
                Told::Not("binary data".into(), start as u64)
            } else {
                Told::Not(
                    format!(
                        "text that begins with {:?}",
                        crate::ledger::excerpt(&text[start..])
                    ),
                    start as u64,
                )
            }
        }
    }
}

/// True when points of a track stand in the text: a root that is damaged or missing does not cost all of them.
fn holds_points(text: &[u8]) -> bool {
    let head = &text[..text.len().min(ROOT_WITHIN)];
    memchr::memmem::find_iter(head, b"<trkpt").any(|at| head.get(at + 6).is_some_and(u8::is_ascii_whitespace))
}

/// Local name and place of the root element, behind declaration, comments, document type and what a logger may have
/// put before.
fn root(text: &[u8], start: usize) -> Option<(String, usize)> {
    let head = &text[..text.len().min(ROOT_WITHIN)];
    // Something stood before the markup: only a gpx root convinces then.
    let strict = head.get(start) != Some(&b'<');
    let mut at = start;
    loop {
        at += memchr::memchr(b'<', head.get(at..)?)?;
        let rest = &head[at..];
        let skip_to = |end: &[u8]| memchr::memmem::find(rest, end).map(|n| at + n + end.len());
        if rest.starts_with(b"<!--") {
            at = skip_to(b"-->")?;
        } else if rest.starts_with(b"<?") {
            at = skip_to(b"?>")?;
        } else if rest.starts_with(b"<!") {
            let close = memchr::memchr(b'>', rest)?;
            at = match memchr::memchr(b'[', &rest[..close]) {
                Some(_) => skip_to(b"]>").unwrap_or(at + close + 1),
                None => at + close + 1,
            };
        } else {
            let name = &rest[1..];
            let length = name
                .iter()
                .take(64)
                .take_while(|b| !b.is_ascii_whitespace() && !matches!(b, b'>' | b'/'))
                .count();
            let name = String::from_utf8_lossy(&name[..length]).into_owned();
            let local = name.rsplit(':').next().unwrap_or_default().to_string();
            if local == "gpx" {
                return Some((local, at));
            }
            if !strict {
                return (!local.is_empty() && local.starts_with(|c: char| c.is_alphabetic()))
                    .then_some((local, at));
            }
            at += 1;
        }
    }
}
