//! Which fixes does a KML file contain?
//!
//! Tracks (`gx:Track` of KML 2.2, `Track` of 2.3) list times (`when`) and positions (`coord`), one list after the other or
//! alternating. A placemark with a time stamp and a point is a fix too. Lines and polygons have no times; points without one
//! are places, not positions of a machine.
//!
//! Reference: OGC 12-007r2 (KML 2.3); longitude comes first. Element names are compared without their prefix, and broken
//! markup loses everything up to the next time, as in GPX.
//!
//! Cost: one pass; times and positions of one track in memory.

use crate::clock;
use crate::error::IngestError;
use crate::gpx::{Broken, Events, MarkupStep, as_utf8};
use crate::pairs::{Geographic, Lists, Pairs, Placed, Timed};
use crate::reading::Reading;
use quick_xml::events::Event;
use std::borrow::Cow;
use tussock_types::{LimitSettings, Said, SkipReason};

/// An element whose text is read.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum KmlField {
    When,
    Coord,
    Coordinates,
}

impl KmlField {
    fn of(local: &str) -> Option<Self> {
        match local {
            "when" => Some(Self::When),
            "coord" => Some(Self::Coord),
            "coordinates" => Some(Self::Coordinates),
            _ => None,
        }
    }
}

struct KmlReader {
    pairs: Pairs,
    /// Of the open track or placemark.
    times: Vec<Timed>,
    places: Vec<Placed>,
    in_track: bool,
    in_point: bool,
    depth: u32,
    /// Something was passed over that may have been a time or a position.
    is_broken: bool,
    /// The open element, where it begins, and its text.
    open: Option<(KmlField, u64, Vec<u8>)>,
    tracks: u64,
    without_time: u64,
}

/// Reads all tracks and stamped points.
pub(crate) fn read(name: &str, original: &[u8], limits: &LimitSettings) -> Result<Reading, IngestError> {
    let text = as_utf8(original);
    if let Cow::Owned(copy) = &text {
        let both = (original.len() + copy.len()) as u64;
        crate::check_memory(name, both, limits, original.len() as u64)?;
    }
    let mut events = Events::new(&text, 0);
    let mut broken = Broken::before(b"<when", text.as_bytes());
    let mut state = KmlReader {
        pairs: Pairs::new(text.len()),
        times: Vec::new(),
        places: Vec::new(),
        in_track: false,
        in_point: false,
        depth: 0,
        is_broken: false,
        open: None,
        tracks: 0,
        without_time: 0,
    };
    loop {
        let (place, step) = events.step(&mut broken);
        let at = place as u64;
        match step {
            MarkupStep::Event(Event::Start(tag)) => {
                state.depth += 1;
                crate::check_depth(name, state.depth, limits, at)?;
                state.start(tag.local_name().into_inner(), at);
            }
            MarkupStep::Event(Event::End(tag)) => {
                state.depth = state.depth.saturating_sub(1);
                state.end(tag.local_name().into_inner(), events.position() as u64);
                let waiting = state.times.len() + state.places.len();
                state.pairs.check(name, original, waiting, limits, at)?;
            }
            MarkupStep::Event(Event::Text(content)) => state.content(content.as_bytes()),
            MarkupStep::Event(Event::CData(content)) => state.content(content.as_bytes()),
            // Neither occurs in a number or a time.
            MarkupStep::Event(Event::GeneralRef(_)) | MarkupStep::Stray => state.content(b"?"),
            MarkupStep::Event(_) => {}
            MarkupStep::PassedOver(next) => {
                state.is_broken = true;
                let start = state.open.take().map_or(at, |(_, start, _)| start);
                state.pairs.skip(start, next as u64, SkipReason::Malformed, 1);
            }
            MarkupStep::CutOff(_) | MarkupStep::End => {
                let start = state.open.take().map_or(at, |(_, start, _)| start);
                state
                    .pairs
                    .skip(start, text.len() as u64, SkipReason::Truncated, 1);
                break;
            }
        }
    }
    let is_cut_off = state.depth > 0 && !state.is_broken;
    state.settle(if is_cut_off { Lists::CutOff } else { Lists::Whole });
    if state.depth > 0 {
        state.pairs.reading.notice(0, Said::FileNotClosed {});
    }
    let what = format!(
        "{} tracks, {} lines and places without times",
        state.tracks, state.without_time
    );
    Ok(state.pairs.finish(&what, text.len()))
}

impl KmlReader {
    fn start(&mut self, local: &str, at: u64) {
        match local {
            "Track" => {
                self.settle(Lists::Whole);
                self.in_track = true;
                self.tracks += 1;
            }
            "Placemark" => self.settle(Lists::Whole),
            "Folder" | "Document" => self.pairs.new_segment(),
            "Point" => self.in_point = true,
            _ => {}
        }
        if let Some(field) = KmlField::of(local) {
            self.open = Some((field, at, Vec::new()));
        }
    }

    fn content(&mut self, content: &[u8]) {
        if let Some((_, _, text)) = &mut self.open {
            text.extend_from_slice(content);
        }
    }

    fn end(&mut self, local: &str, end: u64) {
        match local {
            "Track" | "Placemark" => self.settle(Lists::Whole),
            "Point" => self.in_point = false,
            _ => {}
        }
        let Some((field, start, text)) = self
            .open
            .take_if(|(field, ..)| KmlField::of(local) == Some(*field))
        else {
            return;
        };
        match field {
            KmlField::When => self.times.push(Timed {
                start,
                end,
                time: clock::instant(&text),
            }),
            KmlField::Coord | KmlField::Coordinates if self.in_track || self.in_point => {
                let numbers = text
                    .split(|byte| byte.is_ascii_whitespace() || *byte == b',')
                    .filter(|number| !number.is_empty());
                self.places.push(Placed {
                    start,
                    end,
                    place: Geographic::of(numbers),
                });
            }
            KmlField::Coord | KmlField::Coordinates => {
                self.without_time += 1;
                let corners = text
                    .split(u8::is_ascii_whitespace)
                    .filter(|corner| !corner.is_empty());
                let corners = corners.count() as u32;
                (0..corners).for_each(|_| self.pairs.reading.timeless_at(start));
                self.pairs.skip(start, end, SkipReason::NoTime, corners);
            }
        }
    }

    /// Makes fixes from what a track or placemark contained.
    fn settle(&mut self, lists: Lists) {
        let (times, places) = (std::mem::take(&mut self.times), std::mem::take(&mut self.places));
        match (&times[..], &places[..]) {
            _ if std::mem::take(&mut self.in_track) => self.track(&times, &places, lists),
            ([time], [place]) => self.pairs.pair(time, place),
            _ => {
                self.without_time += places.len() as u64;
                times.iter().for_each(|time| self.pairs.alone(time));
                for place in &places {
                    self.pairs
                        .skip(place.start, place.end, SkipReason::NotAPosition, 1);
                }
            }
        }
    }

    fn track(&mut self, times: &[Timed], places: &[Placed], lists: Lists) {
        // The time right before each position, unless another position stands between.
        let own: Vec<Option<usize>> = (0..places.len())
            .map(|index| {
                let before = times
                    .partition_point(|time| time.start < places[index].start)
                    .checked_sub(1)?;
                let is_next = index == 0 || places[index - 1].start < times[before].start;
                is_next.then_some(before)
            })
            .collect();
        let begins_with_time =
            matches!((times, places), ([time, ..], [place, ..]) if time.start < place.start);
        let turns = own.iter().flatten().count();
        if !begins_with_time || 2 * turns <= times.len().min(places.len()) {
            self.pairs.lists(times, places, lists);
            return;
        }
        self.pairs.new_segment();
        let mut after = 0;
        for (place, own) in places.iter().zip(own) {
            match own {
                Some(time) => {
                    times[after..time].iter().for_each(|time| self.pairs.alone(time));
                    self.pairs.pair(&times[time], place);
                    after = time + 1;
                }
                None => self.pairs.without_time(place),
            }
        }
        times[after..].iter().for_each(|time| self.pairs.alone(time));
    }
}
