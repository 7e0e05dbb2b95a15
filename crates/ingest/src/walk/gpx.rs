//! Named tracks, routes and waypoints of a GPX file, and nothing else from it.
//!
//! Broken markup is passed over up to the next track, segment or point, as when logs are read ([`Broken`]), and such places
//! are counted. A file that breaks off, or is broken after the last track, is refused, because nobody knows what is missing.

use super::WalkError;
use crate::clock;
use crate::gpx::{Broken, Events, MarkupStep};
use quick_xml::XmlVersion;
use quick_xml::events::{BytesStart, Event};
use tussock_types::GeoPoint;

/// Nobody walks farther around a garden: three weeks at 1 Hz.
const MOST_POINTS: usize = 2_000_000;

#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum WalkKind {
    /// A track or a route.
    Track,
    Waypoint,
}

/// A named thing as recorded.
#[derive(Clone, Debug)]
pub(super) struct Recorded {
    pub(super) kind: WalkKind,
    pub(super) name: String,
    /// Line on which it begins, from 1.
    pub(super) line: u64,
    pub(super) points: Vec<GeoPoint>,
    /// Seconds since 1970 for each, NaN if the file has none.
    pub(super) times_s: Vec<f64>,
    /// Track segments that hold positions.
    pub(super) pieces: usize,
    /// Number of the first position of each.
    pub(super) piece_starts: Vec<usize>,
    /// Positions without a usable latitude and longitude.
    pub(super) unusable: usize,
}

/// What a file holds.
#[derive(Debug, Default)]
pub(super) struct Contents {
    /// In the order of the file.
    pub(super) recorded: Vec<Recorded>,
    /// Number of places with broken markup that were passed over.
    pub(super) broken: usize,
    /// Line of the first of them, from 1.
    pub(super) broken_line: u64,
}

pub(super) fn read(name: &str, bytes: &[u8]) -> Result<Contents, WalkError> {
    read_within(name, bytes, MOST_POINTS)
}

/// Reads a file with at most this many positions.
pub(super) fn read_within(name: &str, bytes: &[u8], most_points: usize) -> Result<Contents, WalkError> {
    let not_gpx = |found: &str| WalkError::NotGpx {
        name: name.to_owned(),
        found: found.to_owned(),
    };
    // By the byte order mark, or else UTF-8; GPX files in other encodings use ASCII where it matters.
    let (text, _, _) = encoding_rs::UTF_8.decode(bytes);
    if text.trim().is_empty() {
        return Err(not_gpx("the file is empty"));
    }
    let mut events = Events::new(&text, 0);
    let mut broken = Broken::before(b"<trk", text.as_bytes());
    let mut state = WalkReader::default();
    let mut lines = LineCount::of_text(&text);
    loop {
        let (place, step) = events.step(&mut broken);
        let line = lines.of(place);
        let faulty = |reason: String| WalkError::FaultyXml {
            name: name.to_owned(),
            line,
            reason,
        };
        let event = match step {
            MarkupStep::Event(event) => event,
            MarkupStep::End if !state.is_gpx => return Err(not_gpx("it has no element")),
            MarkupStep::End if state.depth > 0 => return Err(faulty("the file breaks off".to_owned())),
            MarkupStep::End => break,
            _ if !state.is_gpx => return Err(not_gpx("it is no XML")),
            MarkupStep::CutOff(error) => return Err(faulty(error.to_string())),
            MarkupStep::Stray | MarkupStep::PassedOver(_) => {
                state.broken_at(line);
                continue;
            }
        };
        match event {
            Event::Start(tag) => {
                state.root(&tag).map_err(|found| not_gpx(&found))?;
                state.open(&tag, line);
            }
            Event::Empty(tag) => {
                state.root(&tag).map_err(|found| not_gpx(&found))?;
                state.open(&tag, line);
                state.close(tag.local_name().into_inner(), line);
            }
            Event::End(tag) => state.close(tag.local_name().into_inner(), line),
            Event::Text(content) => {
                if state.depth == 0 && !state.is_gpx && !content.xml10_content().trim().is_empty() {
                    return Err(not_gpx("it begins with text"));
                }
                state.text(&content.xml10_content());
            }
            Event::CData(content) => state.text(&content.xml10_content()),
            Event::GeneralRef(reference) => {
                let character = reference.resolve_char_ref().ok().flatten();
                let known = match reference.xml10_content().as_ref() {
                    "lt" => Some('<'),
                    "gt" => Some('>'),
                    "amp" => Some('&'),
                    "quot" => Some('"'),
                    "apos" => Some('\''),
                    _ => None,
                };
                if let Some(character) = character.or(known) {
                    state.text(character.encode_utf8(&mut [0; 4]));
                }
            }
            _ => {}
        }
        if state.points > most_points {
            return Err(WalkError::TooLong {
                name: name.to_owned(),
                limit: most_points,
            });
        }
    }
    for item in &mut state.contents.recorded {
        item.name = item.name.split_whitespace().collect::<Vec<_>>().join(" ");
    }
    Ok(state.contents)
}

/// Line numbers of places requested in ascending order, counting each line end once.
struct LineCount<'a> {
    text: &'a [u8],
    at: usize,
    line: u64,
}

impl<'a> LineCount<'a> {
    fn of_text(text: &'a str) -> Self {
        Self {
            text: text.as_bytes(),
            at: 0,
            line: 1,
        }
    }

    fn of(&mut self, to: usize) -> u64 {
        if let Some(between) = self.text.get(self.at..to) {
            self.line += memchr::memchr_iter(b'\n', between).count() as u64;
            self.at = to;
        }
        self.line
    }
}

#[derive(Default)]
struct WalkReader {
    contents: Contents,
    depth: usize,
    is_gpx: bool,
    points: usize,
    /// The open track, route or waypoint: its kind, and its depth.
    item: Option<(Element, usize)>,
    /// Depth of the open name of that item.
    name_depth: Option<usize>,
    /// Depth of the open position.
    point_depth: Option<usize>,
    /// Depth of its open time, and the text in it.
    time_depth: Option<usize>,
    time: String,
    is_new_piece: bool,
}

/// An element that cannot contain another one of its kind.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Element {
    Track,
    Route,
    Waypoint,
}

impl Element {
    fn of(local: &str) -> Option<Self> {
        match local {
            "trk" => Some(Self::Track),
            "rte" => Some(Self::Route),
            "wpt" => Some(Self::Waypoint),
            _ => None,
        }
    }
}

impl WalkReader {
    fn broken_at(&mut self, line: u64) {
        if self.contents.broken == 0 {
            self.contents.broken_line = line;
        }
        self.contents.broken += 1;
    }

    /// The first element must be the root of a GPX file; the error says what it is instead.
    fn root(&mut self, tag: &BytesStart<'_>) -> Result<(), String> {
        if !self.is_gpx && tag.local_name().into_inner() != "gpx" {
            return Err(format!("it begins with <{}>", tag.local_name().into_inner()));
        }
        self.is_gpx = true;
        Ok(())
    }

    fn open(&mut self, tag: &BytesStart<'_>, line: u64) {
        let local = tag.local_name().into_inner();
        if let Some((open, depth)) = self.item {
            let is_of_a_track = matches!(local, "trkseg" | "trkpt");
            if Element::of(local).is_some() || (is_of_a_track && open == Element::Waypoint) {
                // The end tag is missing.
                self.broken_at(line);
                self.leave(depth);
                if is_of_a_track {
                    // The track's own tag is missing too, and its name with it.
                    self.depth += 1;
                    self.begin(Element::Track, line);
                }
            }
        }
        self.depth += 1;
        match (Element::of(local), local) {
            (Some(element), _) => {
                self.begin(element, line);
                if element == Element::Waypoint {
                    self.point(tag);
                }
            }
            (None, "name") if self.item.is_some_and(|(_, depth)| self.depth == depth + 1) => {
                self.name_depth = Some(self.depth);
            }
            (None, "time") if self.point_depth.is_some_and(|depth| self.depth == depth + 1) => {
                self.time_depth = Some(self.depth);
                self.time.clear();
            }
            (None, "trkseg") if self.item.is_some() => self.is_new_piece = true,
            (None, "trkpt" | "rtept") if self.item.is_some() => self.point(tag),
            _ => {}
        }
    }

    fn begin(&mut self, element: Element, line: u64) {
        self.item = Some((element, self.depth));
        self.is_new_piece = true;
        self.contents.recorded.push(Recorded {
            kind: match element {
                Element::Waypoint => WalkKind::Waypoint,
                Element::Track | Element::Route => WalkKind::Track,
            },
            name: String::new(),
            line,
            points: Vec::new(),
            times_s: Vec::new(),
            pieces: 0,
            piece_starts: Vec::new(),
            unusable: 0,
        });
    }

    fn point(&mut self, tag: &BytesStart<'_>) {
        let number = |key: &str| {
            let value = tag
                .attributes()
                // Searching for duplicates costs the square of their number.
                .with_checks(false)
                .flatten()
                .find(|attribute| attribute.key.local_name().into_inner() == key)?;
            value
                .normalized_value(XmlVersion::Implicit1_0)
                .ok()?
                .trim()
                .parse::<f64>()
                .ok()
        };
        self.points += 1;
        let Some(item) = self.contents.recorded.last_mut() else {
            return;
        };
        match (number("lat"), number("lon")) {
            (Some(lat_deg), Some(lon_deg)) if lat_deg.abs() <= 90.0 && lon_deg.abs() <= 180.0 => {
                if self.is_new_piece {
                    item.piece_starts.push(item.points.len());
                }
                item.points.push(GeoPoint { lat_deg, lon_deg });
                item.times_s.push(f64::NAN);
                self.point_depth = Some(self.depth);
                item.pieces += usize::from(self.is_new_piece);
                self.is_new_piece = false;
            }
            _ => item.unusable += 1,
        }
    }

    fn text(&mut self, text: &str) {
        // The name of a point inside a track is not the name of the track.
        if self.name_depth == Some(self.depth)
            && let Some(item) = self.contents.recorded.last_mut()
        {
            item.name.push_str(text);
        }
        if self.time_depth == Some(self.depth) {
            self.time.push_str(text);
        }
    }

    /// An end tag closes the item that it names, whatever is open inside it, and nothing outside it.
    fn close(&mut self, local: &str, line: u64) {
        match self.item {
            _ if local == "gpx" => {
                if self.item.is_some() {
                    self.broken_at(line);
                }
                self.leave(1);
            }
            Some((open, depth)) if Element::of(local) == Some(open) => self.leave(depth),
            Some((_, depth)) if self.depth <= depth => self.broken_at(line),
            None if self.depth <= 1 => self.broken_at(line),
            _ => self.leave(self.depth),
        }
    }

    /// Closes what is open at a depth, and everything inside.
    fn leave(&mut self, depth: usize) {
        self.depth = depth.saturating_sub(1);
        if self.item.is_some_and(|(_, item_depth)| item_depth >= depth) {
            self.item = None;
        }
        if self.name_depth.is_some_and(|name_depth| name_depth >= depth) {
            self.name_depth = None;
        }
        if self.time_depth.is_some_and(|time_depth| time_depth >= depth) {
            self.time_depth = None;
            let last = self.contents.recorded.last_mut();
            let last = last.and_then(|item| item.times_s.last_mut());
            if let (Some(last), Ok(written)) = (last, clock::instant(self.time.trim().as_bytes())) {
                *last = written.time_s;
            }
        }
        if self.point_depth.is_some_and(|point_depth| point_depth >= depth) {
            self.point_depth = None;
        }
    }
}
