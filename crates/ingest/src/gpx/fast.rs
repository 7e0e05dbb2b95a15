//! The usual shape of a point, read straight from the bytes.
//!
//! ```text
//! <trkpt lat="51.057924" lon="-1.321018"><ele>42.75</ele><time>2026-05-01T12:00:00Z</time></trkpt>
//! ```
//!
//! `lat` and `lon` in either order and no other attribute, blanks anywhere between elements, children in any order and
//! nested up to four deep (extensions) as long as they have no attributes. Everything else (comments, entities, empty
//! elements, faulty values, points that would be skipped) ends the run: the full reader takes that point and this one
//! goes on behind it.

use super::{FIELDS, Point, State};
use tussock_types::SkipReason;

/// Reads points from `from` on, and returns where the first byte lies that it did not take.
pub(super) fn points(state: &mut State<'_>, text: &[u8], from: usize) -> usize {
    let mut at = from;
    // A limit on nesting below what is taken here is left to the full reader.
    if state.limits.element_depth < 16 {
        return at;
    }
    while let Some(end) = point(state, text, at) {
        at = end;
    }
    at
}

/// Children nested deeper are left to the full reader.
const NESTED: usize = 4;

/// The elements that are open inside of a point.
#[derive(Default)]
struct Nested<'a> {
    names: [&'a [u8]; NESTED],
    depth: usize,
}

impl<'a> Nested<'a> {
    fn push(&mut self, name: &'a [u8]) -> Option<()> {
        *self.names.get_mut(self.depth)? = name;
        self.depth += 1;
        Some(())
    }

    fn pop(&mut self) -> Option<&'a [u8]> {
        self.depth = self.depth.checked_sub(1)?;
        Some(self.names[self.depth])
    }
}

/// The name behind the prefix; `None` for anything but a plain start tag of something that may stand in a point.
fn local_name(name: &[u8]) -> Option<&[u8]> {
    let plain = |b: &u8| b.is_ascii_alphanumeric() || matches!(b, b'_' | b'-' | b'.' | b':');
    if name.is_empty() || !name.iter().all(plain) {
        return None;
    }
    let local = match name.iter().position(|&b| b == b':') {
        Some(colon) => &name[colon + 1..],
        None => name,
    };
    let is_frame = matches!(
        local,
        b"trkpt" | b"trkseg" | b"trk" | b"gpx" | b"wpt" | b"rte" | b"rtept"
    );
    (!is_frame && !local.is_empty() && !local.contains(&b':')).then_some(local)
}

fn skip_blanks(text: &[u8], mut at: usize) -> usize {
    while matches!(text.get(at), Some(b' ' | b'\t' | b'\r' | b'\n')) {
        at += 1;
    }
    at
}

fn expect(text: &[u8], at: usize, wanted: &[u8]) -> Option<usize> {
    text.get(at..)?.starts_with(wanted).then_some(at + wanted.len())
}

fn point(state: &mut State<'_>, text: &[u8], from: usize) -> Option<usize> {
    let start = skip_blanks(text, from);
    let mut at = expect(text, start, b"<trkpt ")?;
    let mut point = Point::new(start as u64, 0);
    for _ in 0..2 {
        at = skip_blanks(text, at);
        let is_lat = match text.get(at..at + 5)? {
            b"lat=\"" => true,
            b"lon=\"" => false,
            _ => return None,
        };
        at += 5;
        let end = at
            + text
                .get(at..at + 48.min(text.len() - at))?
                .iter()
                .position(|&b| b == b'"')?;
        let number = crate::number::decimal(&text[at..end])?;
        point.decimals = point.decimals.max(number.decimals);
        let slot = if is_lat { &mut point.lat } else { &mut point.lon };
        if slot.is_some() {
            return None;
        }
        *slot = Some(number.value);
        at = end + 1;
    }
    at = expect(text, skip_blanks(text, at), b">")?;
    let mut open = Nested::default();
    loop {
        at = skip_blanks(text, at);
        if *text.get(at)? != b'<' {
            return None;
        }
        let name_from = at + 1;
        let head = text.get(name_from..text.len().min(name_from + 48))?;
        let name_length = head.iter().position(|&b| b == b'>')?;
        let name = &head[..name_length];
        at = name_from + name_length + 1;
        if name == b"/trkpt" {
            if open.depth > 0 {
                return None;
            }
            break;
        }
        if let Some(closed) = name.strip_prefix(b"/") {
            if open.pop()? != closed {
                return None;
            }
            continue;
        }
        let local = local_name(name)?;
        let window = text.get(at..text.len().min(at + 96))?;
        let value_length = window.iter().position(|&b| b == b'<')?;
        let value = &window[..value_length];
        let is_blank = value.trim_ascii().is_empty();
        let close = at + value_length;
        if text.get(close + 1) != Some(&b'/') {
            if !is_blank {
                return None;
            }
            open.push(name)?;
            at = close;
            continue;
        }
        at = expect(text, close, b"</")?;
        at = expect(text, at, name)?;
        at = expect(text, at, b">")?;
        if FIELDS.iter().any(|known| known.as_bytes() == local) {
            if is_blank || value.contains(&b'&') {
                return None;
            }
            point.field(local, value, open.depth == 0);
        }
    }
    match state.check(&mut point, at as u64) {
        Ok(()) => {
            state.keep(point.fix, point.decimals, point.start, at as u64);
            Some(at)
        }
        Err(reason) => {
            debug_assert_ne!(reason, SkipReason::NotAPosition);
            None
        }
    }
}
