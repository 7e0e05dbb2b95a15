//! The usual shape of a point, read straight from the bytes.
//!
//! ```text
//! <trkpt lat="51.057924" lon="-1.321018"><ele>42.75</ele><time>2026-05-01T12:00:00Z</time></trkpt>
//! ```
//!
//! Attributes in either order, blanks anywhere between elements, and the leaves `ele`, `time`, `speed`, `course`,
//! `hdop`, `sat`, `fix` in any order. Everything else (extensions, comments, entities, prefixes, faulty values, points
//! that would be skipped) ends the run: the full reader takes that point and this one goes on behind it.

use super::{Point, State};
use tussock_types::SkipReason;

/// Reads points from `from` on, and returns where the first byte lies that it did not take.
pub(super) fn points(state: &mut State<'_>, text: &[u8], from: usize) -> usize {
    let mut at = from;
    while let Some(end) = point(state, text, at) {
        at = end;
    }
    at
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
    loop {
        at = skip_blanks(text, at);
        if *text.get(at)? != b'<' {
            return None;
        }
        let name_from = at + 1;
        let head = text.get(name_from..name_from + 16.min(text.len() - name_from))?;
        let name_length = head.iter().position(|&b| b == b'>')?;
        let name = &head[..name_length];
        if name == b"/trkpt" {
            at = name_from + name_length + 1;
            break;
        }
        if !matches!(
            name,
            b"ele" | b"time" | b"speed" | b"course" | b"hdop" | b"sat" | b"fix"
        ) {
            return None;
        }
        let value_from = name_from + name_length + 1;
        let window = text.get(value_from..text.len().min(value_from + 64))?;
        let value_length = window.iter().position(|&b| b == b'<')?;
        let value = &window[..value_length];
        if value.trim_ascii().is_empty() || value.contains(&b'&') {
            return None;
        }
        let close = value_from + value_length;
        at = expect(text, close, b"</")?;
        at = expect(text, at, name)?;
        at = expect(text, at, b">")?;
        point.field(name, value, true);
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
