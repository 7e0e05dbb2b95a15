//! Which fixes does a GPX file contain?
//!
//! A lenient pull reader over `quick-xml` (GPX 1.0 and 1.1, Topografix schemas). Element names are compared without their
//! namespace prefix, children may come in any order, and speed, course, HDOP and accuracy are taken from extensions of any
//! namespace. An unusable point affects that point alone. Where the XML itself breaks, reading continues at the next point
//! ([`broken`]).
//!
//! Most points of a log look alike, so [`fast`] reads the usual shape straight from the bytes and passes anything else to
//! the full reader; a property test checks that the two give the same answer.
//!
//! - Exact: numbers are the nearest doubles; times are whole microseconds.
//! - Waypoints and routes are not positions of a machine: skipped as [`SkipReason::NotAPosition`].
//! - `accuracy` is taken as a radius of 68 % confidence, and divided by 1.51 to give a standard deviation per axis.
//! - Text outside ASCII is never decoded, except for the `creator`.
//!
//! Cost: one pass, no allocation per point.

#[cfg(test)]
mod agreement_tests;
mod broken;
mod fast;

use crate::clock::{self, TimeFault, Zone};
use crate::error::IngestError;
use crate::ledger::line_of;
use crate::number::{DEGREE_M, WrittenSteps, decimal, whole};
use crate::reading::{self, FoundFix, NO_MORE, RADIUS_68_PER_SD, Reading};
use crate::source::Source;
pub(crate) use broken::Broken;
use quick_xml::Reader;
use quick_xml::errors::Error as XmlError;
use quick_xml::events::{BytesStart, Event};
use std::borrow::Cow;
use std::io::BufRead;
use tussock_types::{Fix, FixQuality, LimitSettings, Said, SkipReason};

/// Whether the usual shape is read straight from the bytes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum FastPath {
    /// On all cores if the usual shape continues for this long.
    On { chunk_bytes: usize },
    /// Everything goes through the full reader, so that a test can compare the two.
    #[cfg_attr(not(test), allow(dead_code))]
    Off,
}

impl FastPath {
    /// A quarter of a millisecond of work.
    pub(crate) const USUAL: Self = Self::On { chunk_bytes: 1 << 18 };
}

/// The point that is being read.
#[derive(Clone, Copy)]
struct Point {
    fix: Fix,
    start: u64,
    depth: u32,
    lat: Option<f64>,
    lon: Option<f64>,
    decimals: u8,
    time: Option<Result<clock::Written, TimeFault>>,
    no_fix: bool,
    overlong: bool,
}

impl Point {
    fn new(start: u64, depth: u32) -> Self {
        Self {
            fix: Fix::bare(f64::NAN, f64::NAN, f64::NAN),
            start,
            depth,
            lat: None,
            lon: None,
            decimals: 0,
            time: None,
            no_fix: false,
            overlong: false,
        }
    }

    /// Takes one child, direct or inside extensions.
    #[inline]
    fn field(&mut self, field: PointField, text: &[u8], direct: bool) {
        let fix = &mut self.fix;
        match field {
            PointField::Time if direct => self.time = Some(clock::instant(text)),
            PointField::Height if direct => fix.height_msl_m = number(text, reading::height_m),
            PointField::Time | PointField::Height => {}
            PointField::Speed => fix.speed_mps = number(text, reading::speed_mps),
            PointField::Course => fix.course_deg = number(text, reading::course),
            PointField::Hdop => fix.hdop = number(text, reading::hdop),
            PointField::Satellites => fix.satellites = whole(text).map_or(u8::MAX, reading::satellites),
            PointField::Accuracy => {
                fix.claimed_sd_m = number(text, |v| reading::sd_m(v / RADIUS_68_PER_SD));
            }
            PointField::Fix => match quality(text) {
                Some(quality) => fix.quality = quality,
                None => self.no_fix = true,
            },
        }
    }
}

fn number(text: &[u8], check: impl Fn(f64) -> f32) -> f32 {
    decimal(text).map_or(f32::NAN, |number| check(number.value))
}

/// The schema knows none, 2d, 3d, dgps and pps; the RTK words are added by loggers in extensions. Unknown words say nothing.
fn quality(text: &[u8]) -> Option<FixQuality> {
    let text = text.trim_ascii();
    Some(match text {
        b"none" => return None,
        b"2d" | b"3d" => FixQuality::Autonomous,
        b"dgps" => FixQuality::Differential,
        b"pps" => FixQuality::Precise,
        _ if text.eq_ignore_ascii_case(b"none") => return None,
        _ if text.eq_ignore_ascii_case(b"2d") || text.eq_ignore_ascii_case(b"3d") => FixQuality::Autonomous,
        _ if text.eq_ignore_ascii_case(b"rtk") || text.eq_ignore_ascii_case(b"rtk_fixed") => {
            FixQuality::RtkFixed
        }
        _ if text.eq_ignore_ascii_case(b"float") || text.eq_ignore_ascii_case(b"rtk_float") => {
            FixQuality::RtkFloat
        }
        _ => FixQuality::Unknown,
    })
}

/// A child that is examined.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum PointField {
    Time,
    Height,
    Speed,
    Course,
    Hdop,
    Satellites,
    Fix,
    Accuracy,
}

impl PointField {
    /// The one with this name, without its prefix.
    #[inline]
    fn of(local: &[u8]) -> Option<Self> {
        Some(match local {
            b"time" => Self::Time,
            b"ele" => Self::Height,
            b"speed" => Self::Speed,
            b"course" | b"bearing" | b"heading" => Self::Course,
            b"hdop" => Self::Hdop,
            b"sat" => Self::Satellites,
            b"fix" => Self::Fix,
            b"accuracy" | b"hacc" | b"haccuracy" | b"horizontal_accuracy" | b"horizontalAccuracy" => {
                Self::Accuracy
            }
            _ => return None,
        })
    }
}

/// Reads all points.
pub(crate) fn read(
    name: &str,
    source: &Source,
    limits: &LimitSettings,
    fast_path: FastPath,
) -> Result<Reading, IngestError> {
    let original = &source.text[..];
    let text = as_utf8(original);
    if let Cow::Owned(copy) = &text {
        let both = (original.len() + copy.len()) as u64;
        crate::check_memory(name, both, limits, original.len() as u64)?;
    }
    let state = GpxReader::new(name, limits, text.len());
    state.run(&text, original, source, fast_path)
}

/// The reader below, restarted after broken markup.
pub(crate) struct Events<'a> {
    text: &'a str,
    reader: Reader<&'a [u8]>,
    /// Where it began.
    from: usize,
    /// Consecutive faults at one place.
    stalled: u32,
}

impl<'a> Events<'a> {
    pub(crate) fn new(text: &'a str, from: usize) -> Self {
        // The reader removes a byte order mark and does not count it.
        let from = text.len() - text[from..].trim_start_matches('\u{feff}').len();
        let mut reader = Reader::from_str(&text[from..]);
        let config = reader.config_mut();
        config.allow_dangling_amp = true;
        config.allow_unmatched_ends = true;
        config.check_end_names = false;
        Self {
            text,
            reader,
            from,
            stalled: 0,
        }
    }

    pub(crate) fn position(&self) -> usize {
        self.from + self.reader.buffer_position() as usize
    }

    fn pass_over(&mut self, bytes: usize) {
        self.reader.stream().consume(bytes);
    }

    /// The next piece of markup or text, and where it begins.
    pub(crate) fn step(&mut self, broken: &mut Broken<'_>) -> (usize, MarkupStep<'a>) {
        let place = self.position();
        let mut next = broken.until(place);
        if next.is_none() {
            match self.reader.read_event() {
                Ok(Event::Eof) => return (place, MarkupStep::End),
                Ok(event) => {
                    self.stalled = 0;
                    // A document type may swallow what comes after it.
                    next = matches!(event, Event::DocType(_))
                        .then(|| broken.next_track(place))
                        .flatten();
                    if next.is_none_or(|next| next >= self.position()) {
                        return (place, MarkupStep::Event(event));
                    }
                }
                Err(error) => {
                    self.stalled = if self.position() == place {
                        self.stalled + 1
                    } else {
                        0
                    };
                    // After a stray ampersand or the like the reader can continue.
                    if matches!(error, XmlError::IllFormed(_)) && self.stalled <= 2 {
                        return (place, MarkupStep::Stray);
                    }
                    next = broken.next_track(place);
                    if next.is_none() {
                        return (place, MarkupStep::CutOff(error));
                    }
                }
            }
        }
        let next = next.unwrap_or(place);
        *self = Self::new(self.text, next);
        (place, MarkupStep::PassedOver(next))
    }
}

/// The next piece of a text.
pub(crate) enum MarkupStep<'a> {
    Event(Event<'a>),
    /// Something odd that broke nothing.
    Stray,
    /// Broken markup up to a place.
    PassedOver(usize),
    /// Nothing readable follows.
    CutOff(XmlError),
    End,
}

/// The text or, if it is not UTF-8, a copy of the same length with every byte outside ASCII replaced.
pub(crate) fn as_utf8(bytes: &[u8]) -> Cow<'_, str> {
    match simdutf8::basic::from_utf8(bytes) {
        Ok(text) => Cow::Borrowed(text),
        Err(_) => Cow::Owned(
            bytes
                .iter()
                .map(|&b| if b.is_ascii() { b as char } else { '?' })
                .collect(),
        ),
    }
}

/// A waypoint or route that is being passed over.
struct Aside {
    start: u64,
    depth: u32,
    name: &'static str,
    count: u32,
}

struct GpxReader<'a> {
    name: &'a str,
    limits: &'a LimitSettings,
    text_bytes: usize,
    reading: Reading,
    steps: WrittenSteps,
    segment: u32,
    fresh_segment: bool,
    point: Option<Point>,
    aside: Option<Aside>,
    depth: u32,
    waypoints: u64,
    routes: u64,
    tracks: u64,
    without_zone: Option<u64>,
    /// Start and length of the first point that is longer than the limit.
    too_long: Option<(u64, u64)>,
    /// For the usual shape.
    plain_utc: clock::PlainUtc,
    usual_tags: fast::UsualTags,
}

impl<'a> GpxReader<'a> {
    fn new(name: &'a str, limits: &'a LimitSettings, text_bytes: usize) -> Self {
        Self {
            name,
            limits,
            text_bytes,
            reading: Reading::new(text_bytes),
            steps: WrittenSteps::default(),
            segment: 0,
            fresh_segment: false,
            point: None,
            aside: None,
            depth: 0,
            waypoints: 0,
            routes: 0,
            tracks: 0,
            without_zone: None,
            too_long: None,
            plain_utc: clock::PlainUtc::default(),
            usual_tags: fast::UsualTags::default(),
        }
    }

    fn run(
        mut self,
        text: &str,
        original: &[u8],
        source: &Source,
        fast_path: FastPath,
    ) -> Result<Reading, IngestError> {
        let mut events = Events::new(text, 0);
        let mut broken = Broken::before(b"<trk", text.as_bytes());
        let mut field: Option<PointField> = None;
        let mut field_is_direct = false;
        let mut in_segment = false;
        let mut after_markup = false;
        loop {
            if let FastPath::On { chunk_bytes } = fast_path
                && after_markup
                && in_segment
                && self.point.is_none()
                && self.aside.is_none()
            {
                let from = events.position();
                let to = fast::points(&mut self, text.as_bytes(), from, chunk_bytes);
                if to > from {
                    events.pass_over(to - from);
                    self.check_size(text, fast::closing_tag(to))?;
                }
            }
            let (place, step) = events.step(&mut broken);
            let at = place as u64;
            let event = match step {
                MarkupStep::Event(event) => event,
                MarkupStep::Stray => {
                    after_markup = false;
                    continue;
                }
                MarkupStep::PassedOver(next) => {
                    self.pass_over(at, next as u64);
                    self.check_size(text, at)?;
                    (field, after_markup) = (None, true);
                    continue;
                }
                MarkupStep::CutOff(_) => {
                    self.cut_off(at, text.len() as u64);
                    break;
                }
                MarkupStep::End => {
                    self.end_of_file(text.len() as u64);
                    break;
                }
            };
            let end = events.position() as u64;
            after_markup = !matches!(event, Event::Text(_) | Event::GeneralRef(_));
            match event {
                Event::Start(tag) => {
                    self.depth += 1;
                    self.check_depth(at)?;
                    self.open(&tag, at, original, source, &mut in_segment);
                    field = None;
                    if let Some(point) = &self.point
                        && self.depth > point.depth
                    {
                        field_is_direct = self.depth == point.depth + 1;
                        let local = tag.local_name();
                        let local: &str = local.as_ref();
                        field = PointField::of(local.as_bytes());
                    }
                }
                Event::Empty(tag) => {
                    self.depth += 1;
                    self.check_depth(at)?;
                    self.open(&tag, at, original, source, &mut in_segment);
                    let local = tag.local_name();
                    self.close(local.as_ref(), at, end, &mut in_segment);
                }
                Event::End(tag) => {
                    field = None;
                    let local = tag.local_name();
                    self.close(local.as_ref(), at, end, &mut in_segment);
                    self.check_size(text, at)?;
                }
                Event::Text(content) => self.content(field, field_is_direct, content.as_bytes(), at, end),
                Event::CData(content) => self.content(field, field_is_direct, content.as_bytes(), at, end),
                Event::DocType(_) => {
                    // Entities that it defines stay as they are: text that says nothing to us.
                    self.reading
                        .notice_at(|| line_of(original, at), Said::DocumentTypeIgnored {});
                }
                _ => {}
            }
        }
        Ok(self.finish(original))
    }

    fn open(
        &mut self,
        tag: &BytesStart<'_>,
        at: u64,
        original: &[u8],
        source: &Source,
        in_segment: &mut bool,
    ) {
        if let Some(aside) = &mut self.aside {
            match tag.local_name().as_ref() {
                // None of them can be inside: the end tag is missing.
                "trk" | "trkseg" | "trkpt" => {
                    self.depth = aside.depth;
                    self.aside_ends(at);
                }
                "rtept" => {
                    aside.count += 1;
                    return;
                }
                _ => return,
            }
        }
        match tag.local_name().as_ref() {
            "trkpt" => {
                if let Some(depth) = self.point_not_closed(at) {
                    self.depth = depth;
                }
                let mut point = Point::new(at, self.depth);
                point.overlong = self.is_overlong(tag, at, original);
                for attribute in tag.attributes().with_checks(false).flatten() {
                    let value = attribute.value.as_bytes();
                    let slot = match attribute.key.local_name().as_ref() {
                        "lat" => &mut point.lat,
                        "lon" => &mut point.lon,
                        _ => continue,
                    };
                    if let Some(number) = decimal(value) {
                        *slot = Some(number.value);
                        point.decimals = point.decimals.max(number.decimals);
                    }
                }
                self.point = Some(point);
            }
            _ if self.point.is_some() => {}
            "trkseg" => {
                self.fresh_segment = true;
                *in_segment = true;
            }
            "trk" => {
                self.fresh_segment = true;
                self.tracks += 1;
            }
            name @ ("wpt" | "rte") => {
                let is_route = name == "rte";
                self.waypoints += u64::from(!is_route);
                self.routes += u64::from(is_route);
                self.aside = Some(Aside {
                    start: at,
                    depth: self.depth,
                    name: if is_route { "rte" } else { "wpt" },
                    count: 1,
                });
            }
            "gpx" if self.is_overlong(tag, at, original) => {}
            "gpx" if self.reading.made_by.is_none() => {
                self.reading.made_by = creator(tag, at, original, source);
            }
            _ => {}
        }
    }

    fn close(&mut self, local: &str, at: u64, end: u64, in_segment: &mut bool) {
        if let Some(aside) = &self.aside {
            if aside.name == local {
                self.depth = aside.depth;
                self.aside_ends(end);
            }
        } else {
            match local {
                "trkpt" => {
                    if let Some(point) = self.point.take() {
                        self.depth = point.depth;
                        self.point_ends(point, end);
                    }
                }
                "trkseg" | "trk" | "gpx" => {
                    // The end tag itself counts as framing.
                    if let Some(depth) = self.point_not_closed(at) {
                        self.depth = depth.saturating_sub(1);
                    }
                    *in_segment = false;
                }
                _ => {}
            }
        }
        self.depth = self.depth.saturating_sub(1);
    }

    fn content(&mut self, field: Option<PointField>, direct: bool, content: &[u8], at: u64, end: u64) {
        if let (Some(point), Some(field)) = (&mut self.point, field) {
            if !content.trim_ascii().is_empty() {
                point.field(field, content, direct);
            }
        } else if self.depth == 0 && self.aside.is_none() && self.point.is_none() && !is_blank(content) {
            let blanks = content.len() - content.trim_ascii_start().len();
            let ledger = &mut self.reading.ledger;
            ledger.skip(at + blanks as u64, end, SkipReason::NotOfTheFormat, 1);
        }
    }

    /// A point's end tag did not come before something that cannot be inside it. Returns the depth of the point.
    fn point_not_closed(&mut self, before: u64) -> Option<u32> {
        let point = self.point.take()?;
        let ledger = &mut self.reading.ledger;
        ledger.skip(point.start, before, SkipReason::Malformed, 1);
        Some(point.depth)
    }

    fn aside_ends(&mut self, end: u64) {
        if let Some(aside) = self.aside.take() {
            let ledger = &mut self.reading.ledger;
            ledger.skip(aside.start, end, SkipReason::NotAPosition, aside.count);
        }
    }

    /// Broken markup from a place on also loses the point that contains it. A waypoint or route continues up to its end.
    fn pass_over(&mut self, at: u64, next: u64) {
        if self.aside.is_some() {
            return;
        }
        match self.point_not_closed(next) {
            Some(depth) => self.depth = depth.saturating_sub(1),
            None => self.reading.ledger.skip(at, next, SkipReason::Malformed, 1),
        }
    }

    fn point_ends(&mut self, mut point: Point, end: u64) {
        match self.check(&mut point, end) {
            Ok(()) => self.keep(point.fix, point.decimals, point.start, end),
            Err(reason) => self.reading.skip(point.start, end, reason),
        }
    }

    fn check(&mut self, point: &mut Point, end: u64) -> Result<(), SkipReason> {
        if point.overlong {
            return Err(SkipReason::TooLong);
        }
        if end - point.start > self.limits.line_bytes {
            self.too_long = self.too_long.or(Some((point.start, end - point.start)));
            return Err(SkipReason::TooLong);
        }
        let (Some(lat), Some(lon)) = (point.lat, point.lon) else {
            return Err(SkipReason::Malformed);
        };
        if let Some(fault) = reading::geographic_fault(lat, lon) {
            return Err(fault);
        }
        if point.no_fix {
            return Err(SkipReason::NoFix);
        }
        match point.time {
            None => return Err(SkipReason::NoTime),
            Some(Err(fault)) => return Err(fault.into()),
            Some(Ok(written)) => {
                if written.zone == Zone::Missing {
                    self.without_zone.get_or_insert(point.start);
                }
                point.fix.time_s = written.time_s;
            }
        }
        point.fix.first = lat;
        point.fix.second = lon;
        Ok(())
    }

    #[inline]
    fn keep(&mut self, mut fix: Fix, decimals: u8, start: u64, end: u64) {
        if self.fresh_segment {
            self.segment += 1;
            self.fresh_segment = false;
        }
        fix.segment = self.segment;
        self.steps.add(decimals);
        self.reading.keep(FoundFix {
            fix,
            start,
            end,
            more: NO_MORE,
            count: 1,
        });
    }

    /// Adds the points that another core read to the open segment.
    fn take_ahead(&mut self, ahead: &GpxReader<'_>) {
        debug_assert!(!self.fresh_segment);
        self.steps.join(&ahead.steps);
        self.without_zone = self.without_zone.or(ahead.without_zone);
        self.reading.keep_all(&ahead.reading, self.segment);
    }

    /// Prepares to read ahead from another place.
    fn forget(&mut self) {
        self.steps = WrittenSteps::default();
        self.without_zone = None;
        self.reading.forget_found();
    }

    fn check_size(&self, text: &str, byte: u64) -> Result<(), IngestError> {
        crate::check_size(self.name, &self.reading, text.as_bytes(), self.limits, byte)
    }

    fn check_depth(&self, byte: u64) -> Result<(), IngestError> {
        crate::check_depth(self.name, self.depth, self.limits, byte)
    }

    /// True if an attribute of a tag is longer than the limit, which is reported once.
    fn is_overlong(&mut self, tag: &BytesStart<'_>, at: u64, original: &[u8]) -> bool {
        let limit = self.limits.attribute_bytes;
        if tag.len() as u64 <= limit {
            return false;
        }
        let mut attributes = tag.attributes();
        let lengths = attributes.with_checks(false).flatten();
        let longest = lengths.map(|attribute| attribute.value.len() as u64).max();
        // A tag of that length without distinguishable attributes is just as bad.
        let bytes = longest.unwrap_or(tag.len() as u64);
        if bytes > limit {
            let line = || line_of(original, at);
            self.reading
                .notice_at(line, Said::AttributeTooLong { bytes, limit });
        }
        bytes > limit
    }

    fn cut_off(&mut self, at: u64, end: u64) {
        let start = match (&self.point, &self.aside) {
            (Some(point), _) => point.start,
            (None, Some(aside)) => aside.start,
            (None, None) => at,
        };
        self.reading.ledger.skip(start, end, SkipReason::Truncated, 1);
        self.point = None;
        self.aside = None;
        self.depth = 0;
    }

    fn end_of_file(&mut self, end: u64) {
        if self.point.is_some() || self.aside.is_some() {
            self.cut_off(end, end);
        } else if self.depth > 0 {
            self.reading.notice(0, Said::FileNotClosed {});
        }
    }

    fn finish(mut self, original: &[u8]) -> Reading {
        if let Some(byte) = self.without_zone {
            self.reading.without_zone(line_of(original, byte));
        }
        if let Some((byte, bytes)) = self.too_long {
            let line = || line_of(original, byte);
            self.reading.notice_at(
                line,
                Said::LineTooLong {
                    bytes,
                    limit: self.limits.line_bytes,
                },
            );
        }
        self.reading.resolution_m = self.steps.resolution_m(DEGREE_M);
        self.reading.holds = format!(
            "{} tracks, {} waypoints, {} routes; skipped {}",
            self.tracks,
            self.waypoints,
            self.routes,
            self.reading.ledger.words()
        );
        let total = original.len() as u64;
        let skipped = self.reading.ledger.skipped_bytes();
        self.reading.ledger.used(skipped, total);
        self.reading
    }
}

/// Nothing but blanks and line ends.
fn is_blank(content: &[u8]) -> bool {
    content.iter().all(u8::is_ascii_whitespace)
}

/// The `creator`, decoded as the file states.
fn creator(tag: &BytesStart<'_>, at: u64, original: &[u8], source: &Source) -> Option<String> {
    let attribute = tag
        .attributes()
        .with_checks(false)
        .flatten()
        .find(|attribute| attribute.key.local_name().as_ref() == "creator")?;
    let value: &str = &attribute.value;
    // The value is a part of the tag's own text; the same bytes in the log are still in the log's encoding.
    let raw = match tag.find(value) {
        Some(offset) if !value.is_empty() => {
            let from = at as usize + 1 + offset;
            original.get(from..from + value.len()).unwrap_or_default()
        }
        _ => return None,
    };
    let decoded: Cow<'_, str> = match (std::str::from_utf8(raw), source.declared_encoding()) {
        (Ok(text), _) => text.into(),
        (Err(_), Some(encoding)) => encoding.decode_without_bom_handling(raw).0,
        (Err(_), None) => encoding_rs::WINDOWS_1252.decode_without_bom_handling(raw).0,
    };
    let unescaped =
        quick_xml::escape::unescape(&decoded).map_or_else(|_| decoded.to_string(), |text| text.to_string());
    let trimmed: String = unescaped
        .trim()
        .chars()
        .filter(|c| !c.is_control())
        .take(200)
        .collect();
    (!trimmed.is_empty()).then_some(trimmed)
}
