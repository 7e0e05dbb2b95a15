//! Reads the usual shape of a point straight from the bytes.
//!
//! ```text
//! <trkpt lat="51.057924" lon="-1.321018"><ele>42.75</ele><time>2026-05-01T12:00:00Z</time></trkpt>
//! ```
//!
//! `lat` and `lon` in either order and no other attribute, blanks anywhere between elements, children in any order and
//! nested up to four deep (extensions), provided that they have no attributes. Everything else (comments, entities, empty
//! elements, faulty values, points that would be skipped) ends the run: the full reader takes that point and this one
//! continues after it. So do limits that a usual point could exceed.
//!
//! Long runs are read by all cores ([`Ahead`]): while one reads on, the others read the following chunks, each from where a
//! point seems to begin. A chunk counts only if the first core arrives at that very place, so the answer is the same as with
//! one core alone.
//!
//! Exact: numbers and times are those of the full reader, digit for digit. Cost: one look at each byte; heights, times and
//! coordinates are turned into numbers eight bytes at a time. If points of the usual shape are mixed with others, each core
//! reads at most as much in vain as it reads usefully.

use super::{GpxReader, Point, PointField};
use crate::clock::{Written, Zone};
use crate::number::{Decimal, decimal, eight, plain_decimal};
use crate::reading;
use memchr::memmem;
use rayon::prelude::*;
use tussock_types::SkipReason;

/// Children nested more deeply are left to the full reader.
const NESTED: usize = 4;
/// The point, its children, and one that holds a value.
const MOST_DEPTH: u32 = NESTED as u32 + 2;
/// Longer tags and values are left to the full reader.
const NAME_BYTES: usize = 48;
const VALUE_BYTES: usize = 96;
/// No attribute that is read here is longer.
const ATTRIBUTE_BYTES: usize = 48;

const OPENING: &[u8] = b"<trkpt";
const CLOSING: &[u8] = b"</trkpt>";

/// Reads points from `from` on, and returns the place of the first byte that it did not take. Runs of more than
/// `chunk_bytes` are read by all cores.
pub(super) fn points(state: &mut GpxReader<'_>, text: &[u8], from: usize, chunk_bytes: usize) -> usize {
    let limits = state.limits;
    if state.depth.saturating_add(MOST_DEPTH) > limits.element_depth
        || limits.attribute_bytes < ATTRIBUTE_BYTES as u64
    {
        return from;
    }
    // Beyond this, the full reader or a check after this run reports that it is too much.
    let most = crate::most_fixes(&state.reading, text, limits);
    let first_end = from.saturating_add(chunk_bytes);
    let mut at = points_up_to(state, text, from, first_end, most);
    if at < first_end || text.len() - at < chunk_bytes || rayon::current_num_threads() == 1 {
        return points_up_to(state, text, at, usize::MAX, most);
    }
    let mut ahead: Vec<Ahead<'_>> = (1..rayon::current_num_threads())
        .map(|_| Ahead::new(state))
        .collect();
    loop {
        let mut end = at.saturating_add(chunk_bytes);
        for chunk in &mut ahead {
            chunk.start = next_point(text, end);
            end = next_point(text, chunk.start.saturating_add(chunk_bytes));
            chunk.end = end;
        }
        let own_end = ahead[0].start;
        (at, ()) = rayon::join(
            || points_up_to(state, text, at, own_end, most),
            || ahead.par_iter_mut().for_each(|chunk| chunk.read(text)),
        );
        for chunk in &ahead {
            let place = skip_blanks(text, at);
            let fits = state.reading.found.len() + chunk.state.reading.found.len() <= most;
            if place != chunk.start || place == text.len() || !fits {
                return points_up_to(state, text, at, usize::MAX, most);
            }
            state.take_ahead(&chunk.state);
            at = chunk.reached;
            if at < chunk.end {
                return at;
            }
        }
    }
}

/// Reads points that begin before `end`.
#[inline]
fn points_up_to(state: &mut GpxReader<'_>, text: &[u8], from: usize, end: usize, most: usize) -> usize {
    let mut at = from;
    while at < end
        && state.reading.found.len() <= most
        && let Some(next) = point(state, text, at)
    {
        at = next;
    }
    at
}

/// Where the next point seems to begin.
fn next_point(text: &[u8], from: usize) -> usize {
    text.get(from..)
        .and_then(|rest| memmem::find(rest, OPENING))
        .map_or(text.len(), |offset| from + offset)
}

/// Points that another core read ahead, from a place at which the first may arrive.
struct Ahead<'a> {
    state: GpxReader<'a>,
    start: usize,
    end: usize,
    /// The place of the first byte that was not taken.
    reached: usize,
}

impl<'a> Ahead<'a> {
    fn new(state: &GpxReader<'a>) -> Self {
        let mut state = GpxReader::new(state.name, state.limits, state.text_bytes);
        state.fresh_segment = false;
        Self {
            state,
            start: 0,
            end: 0,
            reached: 0,
        }
    }

    fn read(&mut self, text: &[u8]) {
        self.state.forget();
        self.reached = points_up_to(&mut self.state, text, self.start, self.end, usize::MAX);
    }
}

/// Where the end tag begins of the point that ends at `end`: there the full reader checks limits.
pub(super) fn closing_tag(end: usize) -> u64 {
    (end - CLOSING.len()) as u64
}

/// A start tag of a child.
#[derive(Clone, Copy, Default)]
struct Tag {
    /// Where its name begins.
    start: usize,
    /// Bytes of the name including the `>` after it; 0 if there is no tag yet.
    length: usize,
    field: Option<PointField>,
}

impl Tag {
    /// The name with the `>` behind it.
    #[inline]
    fn written<'a>(&self, text: &'a [u8]) -> &'a [u8] {
        text.get(self.start..self.start + self.length).unwrap_or_default()
    }
}

/// Start tags of the previous point, in order: those of the next are nearly always the same.
#[derive(Default)]
pub(super) struct UsualTags([Tag; 16]);

impl UsualTags {
    /// The tag whose name begins at `from`, number `number` of its point, as [`start_tag`] reads it.
    #[inline]
    fn read(&mut self, number: usize, text: &[u8], from: usize) -> Option<Tag> {
        if let Some(usual) = self.0.get(number)
            && usual.length > 0
            && is_same(text, from, usual.written(text))
        {
            return Some(Tag {
                start: from,
                ..*usual
            });
        }
        let (name, local) = start_tag(text, from)?;
        let tag = Tag {
            start: from,
            length: name.len() + 1,
            field: PointField::of(local),
        };
        if let Some(slot) = self.0.get_mut(number) {
            *slot = tag;
        }
        Some(tag)
    }
}

/// True if a text continues with these bytes, compared eight at a time: they are few.
#[inline]
fn is_same(text: &[u8], at: usize, bytes: &[u8]) -> bool {
    let Some(last) = bytes.len().checked_sub(8) else {
        return text.get(at..).is_some_and(|rest| rest.starts_with(bytes));
    };
    let mut offset = 0;
    while offset < last {
        if eight(text, at + offset) != eight(bytes, offset) {
            return false;
        }
        offset += 8;
    }
    eight(text, at + last) == eight(bytes, last)
}

/// The elements that are open inside of a point.
#[derive(Default)]
struct Nested {
    tags: [Tag; NESTED],
    depth: usize,
    /// Start tags so far.
    count: usize,
}

impl Nested {
    fn push(&mut self, tag: Tag) -> Option<()> {
        *self.tags.get_mut(self.depth)? = tag;
        self.depth += 1;
        Some(())
    }

    fn pop(&mut self) -> Option<Tag> {
        self.depth = self.depth.checked_sub(1)?;
        self.tags.get(self.depth).copied()
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
fn point(state: &mut GpxReader<'_>, text: &[u8], from: usize) -> Option<usize> {
    let start = skip_blanks(text, from);
    let mut at = expect(text, start, OPENING)?;
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

/// A number between quotes, and where the closing quote ends.
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

/// Reads the contents of a point, and returns where its end tag ends.
#[inline]
fn children(state: &mut GpxReader<'_>, point: &mut Point, text: &[u8], from: usize) -> Option<usize> {
    let mut at = from;
    let mut open = Nested::default();
    loop {
        at = skip_blanks(text, at);
        if open.depth == 0 {
            // Nearly all direct children are these two; any other way of writing them is handled below.
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
                point.fix.height_msl_m = reading::height_m(number.value);
                at = end;
                continue;
            }
            if rest.starts_with(CLOSING) {
                return Some(at + CLOSING.len());
            }
        }
        at = child(point, &mut open, &mut state.usual_tags, text, at)?;
    }
}

/// Reads a child with its value, opens one that contains others, or closes one.
#[inline]
fn child(
    point: &mut Point,
    open: &mut Nested,
    usual: &mut UsualTags,
    text: &[u8],
    at: usize,
) -> Option<usize> {
    if *text.get(at)? != b'<' {
        return None;
    }
    if text.get(at + 1) == Some(&b'/') {
        return end_tag(text, at, open.pop()?);
    }
    let tag = usual.read(open.count, text, at + 1)?;
    open.count += 1;
    let from = at + 1 + tag.length;
    let content = skip_blanks(text, from);
    if *text.get(content)? == b'<' && text.get(content + 1) != Some(&b'/') {
        open.push(tag)?;
        return Some(content);
    }
    let window = text.get(from..text.len().min(from + VALUE_BYTES))?;
    let length = window.iter().position(|b| matches!(b, b'<' | b'&'))?;
    let (value, close) = (&window[..length], from + length);
    let end = end_tag(text, close, tag)?;
    if let Some(field) = tag.field {
        if value.trim_ascii().is_empty() {
            return None;
        }
        point.field(field, value, open.depth == 0);
    }
    Some(end)
}

/// Where the end tag ends that matches a start tag and begins at a place; `None` if another one begins there.
#[inline]
fn end_tag(text: &[u8], at: usize, tag: Tag) -> Option<usize> {
    let name = expect(text, at, b"</")?;
    is_same(text, name, tag.written(text)).then_some(name + tag.length)
}

/// The name of a plain start tag without attributes, and the part after its prefix; `None` for any other, and for one that
/// cannot be in a point.
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
