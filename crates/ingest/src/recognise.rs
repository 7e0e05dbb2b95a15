//! What kind of log is this? Detected from its content alone.

use crate::csv::{self, Columns};
use crate::{gpsd, mf_json, nmea};
use tussock_types::LogFormat;

/// Recognised, or what it seems to be instead.
pub(crate) enum Recognised {
    Log(LogFormat),
    /// What was found, and at which byte of the text.
    Not(String, u64),
}

/// How far the root element of an XML file is searched for, or points if there is none.
const ROOT_WITHIN: usize = 1 << 20;

pub(crate) fn recognise(text: &[u8], columns: Option<&Columns>) -> Recognised {
    let start = text
        .iter()
        .position(|b| !b.is_ascii_whitespace())
        .unwrap_or(text.len());
    if start == text.len() {
        return Recognised::Not("nothing but blanks".into(), 0);
    }
    let xml = root(text, start);
    if let Some((name, _)) = &xml
        && name == "gpx"
    {
        return Recognised::Log(LogFormat::Gpx);
    }
    if columns.is_some() {
        return Recognised::Log(LogFormat::Csv);
    }
    let head = &text[..text.len().min(ROOT_WITHIN)];
    if xml.as_ref().is_some_and(|(name, _)| name == "kml") {
        return Recognised::Log(LogFormat::Kml);
    }
    if mf_json::holds_datetimes(head) {
        return Recognised::Log(LogFormat::MfJson);
    }
    if gpsd::holds_reports(head) {
        return Recognised::Log(LogFormat::GpsdJson);
    }
    if let Some(format) = csv::kind(text) {
        return Recognised::Log(format);
    }
    if nmea::holds_sentences(text) {
        return Recognised::Log(LogFormat::Nmea);
    }
    if holds_points(text) {
        return Recognised::Log(LogFormat::Gpx);
    }
    if let Some((found, byte)) = to_convert(head) {
        return Recognised::Not(found.into(), byte as u64);
    }
    if let Some((name, byte)) = xml {
        return Recognised::Not(format!("XML with the root <{name}>"), byte as u64);
    }
    match text[start] {
        b'<' => Recognised::Not("markup without a <gpx> element".into(), start as u64),
        b'{' | b'[' => Recognised::Not("JSON".into(), start as u64),
        _ => {
            let head = &text[..text.len().min(4096)];
            let odd = head
                .iter()
                .filter(|b| !b.is_ascii_graphic() && !b.is_ascii_whitespace())
                .count();
            if odd * 10 > head.len() {
                Recognised::Not("binary data".into(), start as u64)
            } else {
                Recognised::Not(
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

/// Kinds of log that are known but not read, how to convert them, and the place that gives them away.
fn to_convert(head: &[u8]) -> Option<(&'static str, usize)> {
    const KINDS: [(&[u8], &str); 3] = [
        (
            b"\xb5\x62",
            "UBX binary (let the receiver write NMEA 0183, or convert it: gpsdecode < FILE > night.json)",
        ),
        (
            b"x-ecef(m)",
            "an RTKLIB solution in Earth-centred metres (write it anew with out-solformat = llh)",
        ),
        (
            b"latitude(d'\")",
            "an RTKLIB solution in degrees, minutes and seconds (write it anew with out-degform = deg)",
        ),
    ];
    KINDS.into_iter().find_map(|(mark, found)| {
        let at = memchr::memmem::find_iter(&head[..head.len().min(ROOT_WITHIN / 16)], mark)
            .find(|&at| mark != KINDS[0].0 || is_ubx_frame(&head[at..]))?;
        Some((found, at))
    })
}

/// Longer frames are not searched for, so that looking is cheap.
const UBX_FRAME_BYTES: usize = 1_024;

/// True for a whole UBX frame: sync, class, id, length, payload, and Fletcher's checksum (RFC 1145) over everything except
/// the sync.
fn is_ubx_frame(text: &[u8]) -> bool {
    let Some(&[low, high]) = text.get(4..6) else {
        return false;
    };
    let end = 6 + usize::from(u16::from_le_bytes([low, high]));
    if end > UBX_FRAME_BYTES {
        return false;
    }
    let (Some(summed), Some(sums)) = (text.get(2..end), text.get(end..end + 2)) else {
        return false;
    };
    let sums_of = summed.iter().fold([0_u8; 2], |[a, b], byte| {
        let a = a.wrapping_add(*byte);
        [a, b.wrapping_add(a)]
    });
    sums == sums_of
}

/// True if the text contains points of a track: a damaged or missing root does not lose all of them.
fn holds_points(text: &[u8]) -> bool {
    let head = &text[..text.len().min(ROOT_WITHIN)];
    memchr::memmem::find_iter(head, b"<trkpt").any(|at| head.get(at + 6).is_some_and(u8::is_ascii_whitespace))
}

/// Local name and place of the root element, after the declaration, comments, document type and anything that a logger may
/// have written before it.
fn root(text: &[u8], start: usize) -> Option<(String, usize)> {
    let head = &text[..text.len().min(ROOT_WITHIN)];
    // Something preceded the markup: then only a gpx root is convincing.
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
