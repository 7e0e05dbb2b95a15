//! All sentences of one time of day.

use super::sentence::{FixClaim, Position};
use crate::reading::{FoundFix, More, NO_MORE};
use tussock_types::{Fix, FixQuality, SkipReason};

/// Times of day that differ by less are one: receivers round fractions differently in different sentences.
const SAME_EPOCH_US: i64 = 2_000;

/// What the sentences of one time of day have said so far.
#[derive(Clone, Copy, Debug)]
pub(super) struct Epoch {
    pub(super) id: u32,
    pub(super) of_day_us: i64,
    pub(super) day: Option<i32>,
    pub(super) rmc: FixClaim,
    pub(super) gga: FixClaim,
    pub(super) gns: FixClaim,
    pub(super) gll: FixClaim,
    position: Option<Position>,
    position_rank: u8,
    quality: FixQuality,
    quality_rank: u8,
    pub(super) rmc_quality: Option<FixQuality>,
    pub(super) hdop: f32,
    pub(super) claimed_sd_m: f32,
    pub(super) speed_mps: f32,
    pub(super) course_deg: f32,
    pub(super) vtg_speed_mps: f32,
    pub(super) vtg_course_deg: f32,
    pub(super) has_vtg: bool,
    pub(super) height_msl_m: f32,
    pub(super) satellites: u8,
    pub(super) start: u64,
    pub(super) end: u64,
    /// Sentences in the first piece.
    pub(super) count: u32,
    pub(super) more: u32,
    last_more: u32,
}

impl Epoch {
    pub(super) fn new(id: u32, of_day_us: i64) -> Self {
        Self {
            id,
            of_day_us,
            day: None,
            rmc: FixClaim::Nothing,
            gga: FixClaim::Nothing,
            gns: FixClaim::Nothing,
            gll: FixClaim::Nothing,
            position: None,
            position_rank: 0,
            quality: FixQuality::Unknown,
            quality_rank: 0,
            rmc_quality: None,
            hdop: f32::NAN,
            claimed_sd_m: f32::NAN,
            speed_mps: f32::NAN,
            course_deg: f32::NAN,
            vtg_speed_mps: f32::NAN,
            vtg_course_deg: f32::NAN,
            has_vtg: false,
            height_msl_m: f32::NAN,
            satellites: u8::MAX,
            start: 0,
            end: 0,
            count: 0,
            more: NO_MORE,
            last_more: NO_MORE,
        }
    }

    /// Takes a position, unless there is one from a better sentence.
    #[inline]
    pub(super) fn place(&mut self, rank: u8, position: Option<Position>) {
        if position.is_some() && rank > self.position_rank {
            self.position = position;
            self.position_rank = rank;
        }
    }

    /// Takes a quality, unless there is one from a better sentence.
    #[inline]
    pub(super) fn quality(&mut self, rank: u8, quality: FixQuality) {
        if quality != FixQuality::Unknown && rank > self.quality_rank {
            self.quality = quality;
            self.quality_rank = rank;
        }
    }

    /// Assigns a sentence's bytes to this epoch.
    #[inline]
    pub(super) fn add(&mut self, start: u64, end: u64, more: &mut Vec<More>) {
        if self.end == 0 {
            self.start = start;
            self.end = end;
            self.count += 1;
            return;
        }
        if self.more == NO_MORE && self.end == start {
            self.end = end;
            self.count += 1;
            return;
        }
        if more.len() >= NO_MORE as usize {
            return;
        }
        let index = more.len() as u32;
        let length = u32::try_from(end - start).unwrap_or(u32::MAX);
        more.push(More {
            start,
            length,
            next: NO_MORE,
        });
        match more.get_mut(self.last_more as usize) {
            Some(last) => last.next = index,
            None => self.more = index,
        }
        self.last_more = index;
    }

    /// The fix that all of this makes, with its time still open, and the digits of its position; or why there is none.
    #[inline]
    pub(super) fn fix(&self) -> Result<(FoundFix, u8), SkipReason> {
        let deciding = [self.gga, self.gns, self.rmc, self.gll];
        let says = deciding
            .into_iter()
            .find(|&says| says != FixClaim::Nothing)
            .unwrap_or(FixClaim::Nothing);
        if self.rmc == FixClaim::NoFix || says == FixClaim::NoFix {
            return Err(SkipReason::NoFix);
        }
        let Some(position) = self.position else {
            return Err(SkipReason::NotAPosition);
        };
        let or = |value: f32, other: f32| if value.is_nan() { other } else { value };
        let fix = Fix {
            time_s: 0.0,
            first: position.lat_deg,
            second: position.lon_deg,
            segment: 0,
            quality: self.quality,
            hdop: self.hdop,
            claimed_sd_m: self.claimed_sd_m,
            speed_mps: or(self.speed_mps, self.vtg_speed_mps),
            course_deg: or(self.course_deg, self.vtg_course_deg),
            height_msl_m: self.height_msl_m,
            satellites: self.satellites,
        };
        Ok((
            FoundFix {
                fix,
                start: self.start,
                end: self.end,
                more: self.more,
                count: self.count,
            },
            position.decimals,
        ))
    }
}

/// The epochs that may still receive sentences: a slow sentence may come after faster ones of the following instants. A
/// ring, with the oldest at `first`.
#[derive(Debug)]
pub(super) struct OpenEpochs {
    epochs: [Epoch; Self::MOST],
    first: usize,
    count: usize,
    current: usize,
}

impl OpenEpochs {
    const MOST: usize = 4;

    pub(super) fn new() -> Self {
        Self {
            epochs: [Epoch::new(0, 0); Self::MOST],
            first: 0,
            count: 0,
            current: 0,
        }
    }

    /// True if there is an open epoch for a time of day; it becomes the current one. Epochs that state different days are
    /// different.
    #[inline]
    pub(super) fn find(&mut self, of_day_us: i64, day: Option<i32>) -> bool {
        let fits = |epoch: &Epoch| {
            (epoch.of_day_us - of_day_us).abs() < SAME_EPOCH_US
                && !matches!((epoch.day, day), (Some(one), Some(other)) if one != other)
        };
        let place = (0..self.count)
            .rev()
            .map(|age| (self.first + age) % Self::MOST)
            .find(|&place| fits(&self.epochs[place]));
        self.current = place.unwrap_or(self.current);
        place.is_some()
    }

    /// The epoch that the last sentence went to.
    pub(super) fn latest(&mut self) -> Option<&mut Epoch> {
        (self.count > 0).then_some(&mut self.epochs[self.current])
    }

    /// True if there is no room for another one.
    #[inline]
    pub(super) fn is_full(&self) -> bool {
        self.count == Self::MOST
    }

    #[inline]
    pub(super) fn oldest(&self) -> Option<&Epoch> {
        (self.count > 0).then_some(&self.epochs[self.first])
    }

    #[inline]
    pub(super) fn drop_oldest(&mut self) {
        if self.count > 0 {
            self.first = (self.first + 1) % Self::MOST;
            self.count -= 1;
        }
    }

    /// Opens an epoch, which becomes the current one. There must be room.
    #[inline]
    pub(super) fn push(&mut self, id: u32, of_day_us: i64) {
        if !self.is_full() {
            self.current = (self.first + self.count) % Self::MOST;
            self.epochs[self.current] = Epoch::new(id, of_day_us);
            self.count += 1;
        }
    }

    /// The epoch found or pushed last.
    #[inline]
    pub(super) fn current(&mut self) -> &mut Epoch {
        &mut self.epochs[self.current]
    }
}
