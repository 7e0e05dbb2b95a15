//! The usual shape of a point, read straight from the bytes.
//!
//! ```text
//! <trkpt lat="51.057924" lon="-1.321018"><ele>42.75</ele><time>2026-05-01T12:00:00Z</time></trkpt>
//! ```
//!
//! `lat` and `lon` in either order and no other attribute, blanks anywhere between elements, children in any order and
//! nested up to four deep (extensions) as long as they have no attributes. Everything else (comments, entities, empty
//! elements, faulty values, points that would be skipped) ends the run: the full reader takes that point and this one
//! goes on behind it. So do limits that a usual point could pass.
//!
//! Exact: numbers and times are those of the full reader, digit for digit. Cost: one look at each byte; heights, times and
//! coordinates are turned into numbers eight bytes at a time.

use super::{Point, State, field_name};
use crate::clock::{Written, Zone};
use crate::number::{Decimal, decimal, plain_decimal};
use crate::reading;
use tussock_types::SkipReason;

/// Children nested deeper are left to the full reader.
const NESTED: usize = 4;
/// The point, its children, and one that holds a value.
const MOST_DEPTH: u32 = NESTED as u32 + 2;
/// Longer tags and values are left to the full reader.
const NAME_BYTES: usize = 48;
const VALUE_BYTES: usize = 96;
/// No attribute that is read here is longer.
const ATTRIBUTE_BYTES: usize = 48;

const CLOSING: &[u8] = b"</trkpt>";

/// Reads points from `from` on, and returns where the first byte lies that it did not take.
pub(super) fn points(state: &mut State<'_>, text: &[u8], from: usize) -> usize {
    let mut at = from;
    let limits = state.limits;
    if state.depth.saturating_add(MOST_DEPTH) > limits.element_depth
        || limits.attribute_bytes < ATTRIBUTE_BYTES as u64
    {
        return at;
    }
    // Past this the full reader, or a check behind this run, says that it is too much.
    let most = crate::most_fixes(&state.reading, text, limits);
    while state.reading.found.len() <= most
        && let Some(end) = point(state, text, at)
    {
        at = end;
    }
    at
}

/// Where the end tag of the point begins that ends at `end`: that is where the full reader looks at limits.
pub(super) fn closing_tag(end: usize) -> u64 {
    (end - CLOSING.len()) as u64
}

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

#[inline]
fn skip_blanks(text: &[u8], mut at: usize) -> usize {
    while matches!(text.get(at), Some(b' ' | b'\t' | b'\r' | b'\n')) {
        at += 1;
    }
    at
}

#[inline]
fn expect(text: &[u8], at: usize, wanted: &[u8]) -> Option<usize> {
    text.get(at..)?.starts_with(wanted).then_some(at + wanted.len())
}

#[inline]
fn point(state: &mut State<'_>, text: &[u8], from: usize) -> Option<usize> {
    let start = skip_blanks(text, from);
    let mut at = expect(text, start, b"<trkpt")?;
    let mut point = Point::new(start as u64, 0);
    let (mut lat, mut lon) = (None, None);
    for _ in 0..2 {
        let name = skip_blanks(text, at);
        if name == at {
            return None;
        }
        let (slot, other) = match text.get(name..name + 4)? {
            b"lat=" => (&mut lat, &lon),
            b"lon=" => (&mut lon, &lat),
            _ => return None,
        };
        if slot.is_some() {
            return None;
        }
        let (number, end) = quoted(text, name + 4)?;
        let other: Option<Decimal> = *other;
        point.decimals = number.decimals.max(other.map_or(0, |other| other.decimals));
        *slot = Some(number);
        at = end;
    }
    point.lat = lat.map(|number| number.value);
    point.lon = lon.map(|number| number.value);
    at = expect(text, skip_blanks(text, at), b">")?;
    let end = children(state, &mut point, text, at)?;
    match state.check(&mut point, end as u64) {
        Ok(()) => {
            state.keep(point.fix, point.decimals, point.start, end as u64);
            Some(end)
        }
        Err(reason) => {
            debug_assert_ne!(reason, SkipReason::NotAPosition);
            None
        }
    }
}

/// A number between quotes, and where the closing one ends.
#[inline]
fn quoted(text: &[u8], at: usize) -> Option<(Decimal, usize)> {
    let quote = *text.get(at)?;
    let from = at + 1;
    if let Some((number, end)) = plain_decimal(text, from)
        && text.get(end) == Some(&quote)
        && matches!(quote, b'"' | b'\'')
    {
        return Some((number, end + 1));
    }
    if !matches!(quote, b'"' | b'\'') {
        return None;
    }
    let window = text.get(from..text.len().min(from + ATTRIBUTE_BYTES))?;
    let length = window.iter().position(|&b| b == quote)?;
    Some((decimal(&window[..length])?, from + length + 1))
}

/// Reads what is in a point, and returns where its end tag ends.
#[inline]
fn children(state: &mut State<'_>, point: &mut Point, text: &[u8], from: usize) -> Option<usize> {
    let mut at = from;
    let mut open = Nested::default();
    loop {
        at = skip_blanks(text, at);
        if open.depth == 0 {
            // Nearly all direct children are these two; any other way to write them is read below.
            let rest = text.get(at..)?;
            if rest.starts_with(b"<time>")
                && let Some((time_s, end)) = state.plain_utc.read(text, at + 6)
                && let Some(end) = expect(text, end, b"</time>")
            {
                let zone = Zone::Stated;
                point.time = Some(Ok(Written { time_s, zone }));
                at = end;
                continue;
            }
            if rest.starts_with(b"<ele>")
                && let Some((number, end)) = plain_decimal(text, at + 5)
                && let Some(end) = expect(text, end, b"</ele>")
            {
                point.fix.height_msl_m = reading::finite(number.value);
                at = end;
                continue;
            }
            if rest.starts_with(CLOSING) {
                return Some(at + CLOSING.len());
            }
        }
        at = child(point, &mut open, text, at)?;
    }
}

/// Reads a child with its value, opens one that holds others, or closes one.
fn child<'a>(point: &mut Point, open: &mut Nested<'a>, text: &'a [u8], at: usize) -> Option<usize> {
    if *text.get(at)? != b'<' {
        return None;
    }
    if text.get(at + 1) == Some(&b'/') {
        let at = expect(text, at + 2, open.pop()?)?;
        return expect(text, at, b">");
    }
    let (name, local) = start_tag(text, at + 1)?;
    let from = at + 1 + name.len() + 1;
    let content = skip_blanks(text, from);
    if *text.get(content)? == b'<' && text.get(content + 1) != Some(&b'/') {
        open.push(name)?;
        return Some(content);
    }
    let window = text.get(from..text.len().min(from + VALUE_BYTES))?;
    let length = window.iter().position(|b| matches!(b, b'<' | b'&'))?;
    let (value, close) = (&window[..length], from + length);
    let end = expect(text, expect(text, expect(text, close, b"</")?, name)?, b">")?;
    if field_name(local).is_some() {
        if value.trim_ascii().is_empty() {
            return None;
        }
        point.field(local, value, open.depth == 0);
    }
    Some(end)
}

/// The name of a plain start tag without attributes, and what stands behind its prefix; `None` for any other, and for
/// one that cannot stand in a point.
#[inline]
fn start_tag(text: &[u8], from: usize) -> Option<(&[u8], &[u8])> {
    let window = text.get(from..text.len().min(from + NAME_BYTES))?;
    let mut local = 0;
    for (at, byte) in window.iter().enumerate() {
        match byte {
            b'>' => {
                let (name, local) = (&window[..at], &window[local..at]);
                let is_frame = matches!(
                    local,
                    b"" | b"trkpt" | b"trkseg" | b"trk" | b"gpx" | b"wpt" | b"rte" | b"rtept"
                );
                return (!is_frame).then_some((name, local));
            }
            b':' if local == 0 => local = at + 1,
            b'a'..=b'z' | b'A'..=b'Z' | b'0'..=b'9' | b'_' | b'-' | b'.' => {}
            _ => return None,
        }
    }
    None
}
