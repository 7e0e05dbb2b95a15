//! Which time belongs to which position, if a log lists them separately?
//!
//! They are matched by number, if there are as many of one as of the other. A list that lost one of either would shift all
//! that follow, so lists of unequal length give no fixes at all, unless the file breaks off in the second one.

use crate::clock::{TimeFault, Written, Zone};
use crate::error::IngestError;
use crate::number::WrittenSteps;
use crate::reading::{self, FoundFix, More, NO_MORE, Reading};
use tussock_types::{Fix, LimitSettings, Said, SkipReason};

/// A time, and its place in the text.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Timed {
    pub(crate) start: u64,
    pub(crate) end: u64,
    pub(crate) time: Result<Written, TimeFault>,
}

/// A position, and its place in the text.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Placed {
    pub(crate) start: u64,
    pub(crate) end: u64,
    pub(crate) place: Option<Geographic>,
}

/// Degrees as written, height above the log's reference, and digits after the point.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Geographic {
    pub(crate) lat_deg: f64,
    pub(crate) lon_deg: f64,
    pub(crate) height_m: Option<f64>,
    pub(crate) decimals: u8,
}

impl Geographic {
    /// From its numbers in the order of KML and GeoJSON, longitude first.
    pub(crate) fn of<'a>(mut numbers: impl Iterator<Item = &'a [u8]>) -> Option<Self> {
        let mut next = || crate::number::decimal(numbers.next()?);
        let (lon, lat) = (next()?, next()?);
        Some(Self {
            lat_deg: lat.value,
            lon_deg: lon.value,
            height_m: next().map(|height| height.value),
            decimals: lat.decimals.max(lon.decimals),
        })
    }
}

/// Whether both lists are complete.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Lists {
    Whole,
    /// The file ends within them.
    CutOff,
}

/// Makes fixes from times and positions that belong together.
pub(crate) struct Pairs {
    pub(crate) reading: Reading,
    steps: WrittenSteps,
    segment: u32,
    without_zone: bool,
}

impl Pairs {
    pub(crate) fn new(text_bytes: usize) -> Self {
        Self {
            reading: Reading::new(text_bytes),
            steps: WrittenSteps::default(),
            segment: 0,
            without_zone: false,
        }
    }

    /// The following fixes do not continue the previous ones.
    pub(crate) fn new_segment(&mut self) {
        self.segment += 1;
    }

    /// Refuses more fixes than the limit, and more memory, including waiting lists with this many entries.
    pub(crate) fn check(
        &self,
        name: &str,
        text: &[u8],
        waiting: usize,
        limits: &LimitSettings,
        byte: u64,
    ) -> Result<(), IngestError> {
        crate::check_size(name, &self.reading, text, limits, byte)?;
        let waiting_bytes = waiting * size_of::<Timed>().max(size_of::<Placed>());
        let held_bytes = text.len() + waiting_bytes;
        crate::check_memory(
            name,
            held_bytes as u64 + self.reading.memory_bytes(),
            limits,
            byte,
        )
    }

    /// Adds two lists as one segment.
    pub(crate) fn lists(&mut self, times: &[Timed], places: &[Placed], lists: Lists) {
        self.new_segment();
        if lists == Lists::Whole && times.len() != places.len() {
            let said = Said::TimesDoNotFit {
                times: times.len() as u64,
                positions: places.len() as u64,
            };
            self.reading.notice(0, said);
            places.iter().for_each(|place| self.without_time(place));
            times.iter().for_each(|time| self.alone(time));
            return;
        }
        let both = times.len().min(places.len());
        for (time, place) in times.iter().zip(places) {
            self.pair(time, place);
        }
        for place in &places[both..] {
            self.skip(place.start, place.end, SkipReason::Truncated, 1);
        }
        for time in &times[both..] {
            self.skip(time.start, time.end, SkipReason::Truncated, 1);
        }
    }

    /// Adds a time and a position that stand beside each other.
    pub(crate) fn pair(&mut self, time: &Timed, place: &Placed) {
        match self.fix(time, place) {
            Ok((fix, decimals)) => {
                self.steps.add(decimals);
                let more = if self.reading.more.len() < NO_MORE as usize {
                    self.reading.more.push(More {
                        start: time.start,
                        length: u32::try_from(time.end - time.start).unwrap_or(u32::MAX),
                        next: NO_MORE,
                    });
                    self.reading.more.len() as u32 - 1
                } else {
                    NO_MORE
                };
                self.reading.keep(FoundFix {
                    fix,
                    start: place.start,
                    end: place.end,
                    more,
                    // The time counts for both.
                    count: 0,
                });
            }
            Err(reason) => {
                self.skip(time.start, time.end, reason, 0);
                self.skip(place.start, place.end, reason, 1);
            }
        }
    }

    fn fix(&mut self, time: &Timed, placed: &Placed) -> Result<(Fix, u8), SkipReason> {
        let place = placed.place.ok_or(SkipReason::Malformed)?;
        if let Some(fault) = reading::geographic_fault(place.lat_deg, place.lon_deg) {
            return Err(fault);
        }
        let written = time.time.map_err(SkipReason::from)?;
        self.without_zone |= written.zone == Zone::Missing;
        let mut fix = Fix::bare(written.time_s, place.lat_deg, place.lon_deg);
        fix.segment = self.segment;
        fix.height_msl_m = place.height_m.map_or(f32::NAN, reading::height_m);
        Ok((fix, place.decimals))
    }

    /// A position without a time.
    pub(crate) fn without_time(&mut self, place: &Placed) {
        self.reading.timeless_at(place.start);
        self.skip(place.start, place.end, SkipReason::NoTime, 1);
    }

    /// A time without a position.
    pub(crate) fn alone(&mut self, time: &Timed) {
        self.skip(time.start, time.end, SkipReason::NotAPosition, 1);
    }

    /// Skips a stretch of the text with this many pieces.
    pub(crate) fn skip(&mut self, start: u64, end: u64, reason: SkipReason, count: u32) {
        self.reading.ledger.skip(start, end, reason, count);
    }

    /// Whatever is neither a fix nor skipped is framing around the fixes.
    pub(crate) fn finish(mut self, what: &str, text_bytes: usize) -> Reading {
        if self.without_zone {
            self.reading.without_zone(0);
        }
        self.reading.resolution_m = self.steps.resolution_m(crate::number::DEGREE_M);
        self.reading.holds = format!("{what}; skipped {}", self.reading.ledger.words());
        let skipped = self.reading.ledger.skipped_bytes();
        self.reading.ledger.used(skipped, text_bytes as u64);
        self.reading
    }
}
