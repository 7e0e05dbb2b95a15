//! Named tracks, routes and waypoints of a GPX file, and nothing else of it.

use super::WalkError;
use quick_xml::events::{BytesStart, Event};
use quick_xml::{Reader, XmlVersion};
use tussock_types::GeoPoint;

/// Nobody walks farther around a garden: three weeks at 1 Hz.
const MOST_POINTS: usize = 2_000_000;

#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Kind {
    /// A track or a route.
    Track,
    Waypoint,
}

/// A named thing as recorded.
#[derive(Clone, Debug)]
pub(super) struct Recorded {
    pub(super) kind: Kind,
    pub(super) name: String,
    /// Line on which it begins, from 1.
    pub(super) line: u64,
    pub(super) points: Vec<GeoPoint>,
    /// Track segments that hold positions.
    pub(super) pieces: usize,
    /// Number of the first position of each.
    pub(super) piece_starts: Vec<usize>,
    /// Positions without usable latitude and longitude.
    pub(super) unusable: usize,
}

pub(super) fn read(name: &str, bytes: &[u8]) -> Result<Vec<Recorded>, WalkError> {
    let not_gpx = |found: &str| WalkError::NotGpx {
        name: name.to_owned(),
        found: found.to_owned(),
    };
    // By the byte order mark, else UTF-8; GPX files in other encodings carry ASCII where it matters.
    let (text, _, _) = encoding_rs::UTF_8.decode(bytes);
    if text.trim().is_empty() {
        return Err(not_gpx("the file is empty"));
    }
    let mut reader = Reader::from_str(&text);
    reader.config_mut().check_end_names = true;
    let mut state = State::default();
    let mut lines = LineCount::of_text(&text);
    loop {
        let at = reader.buffer_position();
        let faulty = |reason: String, at: u64| WalkError::FaultyXml {
            name: name.to_owned(),
            line: line_of(&text, at),
            reason,
        };
        let event = reader.read_event();
        let event = match event {
            Ok(event) => event,
            Err(_) if !state.is_gpx => return Err(not_gpx("it is no XML")),
            Err(error) => return Err(faulty(error.to_string(), reader.error_position())),
        };
        match event {
            Event::Start(tag) => {
                if state.depth == 0 {
                    if tag.local_name().into_inner() != "gpx" {
                        return Err(not_gpx(&format!(
                            "it begins with <{}>",
                            tag.local_name().into_inner()
                        )));
                    }
                    state.is_gpx = true;
                }
                state.open(&tag, lines.of(at));
            }
            Event::Empty(tag) => {
                if state.depth == 0 {
                    if tag.local_name().into_inner() != "gpx" {
                        return Err(not_gpx(&format!(
                            "it begins with <{}>",
                            tag.local_name().into_inner()
                        )));
                    }
                    state.is_gpx = true;
                }
                state.open(&tag, lines.of(at));
                state.close();
            }
            Event::End(_) => state.close(),
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
            Event::Eof if !state.is_gpx => return Err(not_gpx("it has no element")),
            Event::Eof if state.depth > 0 => return Err(faulty("the file breaks off".to_owned(), at)),
            Event::Eof => break,
            _ => {}
        }
        if state.points > MOST_POINTS {
            return Err(WalkError::TooLong {
                name: name.to_owned(),
                limit: MOST_POINTS,
            });
        }
    }
    for item in &mut state.recorded {
        item.name = item.name.split_whitespace().collect::<Vec<_>>().join(" ");
    }
    Ok(state.recorded)
}

/// Line numbers of places asked for in rising order, each line end counted once.
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

    fn of(&mut self, at: u64) -> u64 {
        let to = usize::try_from(at).unwrap_or(usize::MAX).min(self.text.len());
        if let Some(between) = self.text.get(self.at..to) {
            self.line += memchr::memchr_iter(b'\n', between).count() as u64;
            self.at = to;
        }
        self.line
    }
}

fn line_of(text: &str, at: u64) -> u64 {
    let before = text
        .as_bytes()
        .iter()
        .take(usize::try_from(at).unwrap_or(usize::MAX));
    1 + before.filter(|byte| **byte == b'\n').count() as u64
}

#[derive(Default)]
struct State {
    recorded: Vec<Recorded>,
    depth: usize,
    is_gpx: bool,
    points: usize,
    /// Depth of the open track, route or waypoint.
    item_depth: Option<usize>,
    /// Depth of the open name of that item.
    name_depth: Option<usize>,
    is_new_piece: bool,
}

impl State {
    fn open(&mut self, tag: &BytesStart<'_>, line: u64) {
        self.depth += 1;
        let local = tag.local_name().into_inner();
        match (local, self.item_depth) {
            ("trk" | "rte" | "wpt", None) => {
                self.item_depth = Some(self.depth);
                self.is_new_piece = true;
                self.recorded.push(Recorded {
                    kind: if local == "wpt" {
                        Kind::Waypoint
                    } else {
                        Kind::Track
                    },
                    name: String::new(),
                    line,
                    points: Vec::new(),
                    pieces: 0,
                    piece_starts: Vec::new(),
                    unusable: 0,
                });
                if local == "wpt" {
                    self.point(tag);
                }
            }
            ("name", Some(depth)) if self.depth == depth + 1 => self.name_depth = Some(self.depth),
            ("trkseg", Some(_)) => self.is_new_piece = true,
            ("trkpt" | "rtept", Some(_)) => self.point(tag),
            _ => {}
        }
    }

    fn point(&mut self, tag: &BytesStart<'_>) {
        let number = |key: &str| {
            let value = tag
                .attributes()
                // Looking for doubles costs the square of their number.
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
        let Some(item) = self.recorded.last_mut() else {
            return;
        };
        match (number("lat"), number("lon")) {
            (Some(lat_deg), Some(lon_deg)) if lat_deg.abs() <= 90.0 && lon_deg.abs() <= 180.0 => {
                if self.is_new_piece {
                    item.piece_starts.push(item.points.len());
                }
                item.points.push(GeoPoint { lat_deg, lon_deg });
                item.pieces += usize::from(self.is_new_piece);
                self.is_new_piece = false;
            }
            _ => item.unusable += 1,
        }
    }

    fn text(&mut self, text: &str) {
        // The name of a point inside a track is not the name of the track.
        if self.name_depth == Some(self.depth)
            && let Some(item) = self.recorded.last_mut()
        {
            item.name.push_str(text);
        }
    }

    fn close(&mut self) {
        if self.item_depth == Some(self.depth) {
            self.item_depth = None;
        }
        if self.name_depth == Some(self.depth) {
            self.name_depth = None;
        }
        self.depth = self.depth.saturating_sub(1);
    }
}
