//! What every reader returns, before it becomes a trace.

use crate::ledger::{Ledger, SkippedStretch};
use tussock_types::{Fix, FixQuality, Notice, Said, SkipReason, Skipped, Trace};

/// A fix with the bytes from which it was read.
#[derive(Clone, Copy, Debug)]
pub(crate) struct FoundFix {
    pub(crate) fix: Fix,
    /// First byte of its (first) piece.
    pub(crate) start: u64,
    /// One past the last byte of that piece.
    pub(crate) end: u64,
    /// Index of a further piece in [`Reading::more`], or [`NO_MORE`].
    pub(crate) more: u32,
    /// Sentences, points or rows in its first piece.
    pub(crate) count: u32,
}

/// A fix as it was found, and what is made of it: 51 bytes of the trace, or (for sentences) the 48 that find its date, which
/// are gone before the trace is made.
const FIX_BYTES: usize = size_of::<FoundFix>() + 51;
/// A stretch in the ledger, and the place that it becomes.
const STRETCH_BYTES: usize = size_of::<SkippedStretch>() + size_of::<Skipped>();

/// Reserves space for as many entries as will come if the rest of a text is like what was read, at most sixteen times as
/// many as there are: each copy is one more walk through memory. If there is not that much memory, the list grows in the
/// usual way.
fn make_room<T>(list: &mut Vec<T>, read_bytes: u64, text_bytes: usize) {
    let count = list.len();
    let all = count as f64 * text_bytes as f64 / (read_bytes as f64).max(1.0) * 1.02;
    let wanted = (all as usize).clamp(2 * count, 16 * count).max(64);
    let _ = list.try_reserve_exact(wanted - count);
}

/// No further piece.
pub(crate) const NO_MORE: u32 = u32::MAX;

/// A further piece of one fix: another sentence of the same epoch.
#[derive(Clone, Copy, Debug)]
pub(crate) struct More {
    pub(crate) start: u64,
    pub(crate) length: u32,
    pub(crate) next: u32,
}

/// Whether positions are on Earth or on the logger's own plane.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum PositionsOn {
    Earth,
    Plane,
}

impl PositionsOn {
    /// A trace without fixes there.
    pub(crate) fn trace(self) -> Trace {
        match self {
            Self::Earth => Trace::geographic(""),
            Self::Plane => Trace::local(""),
        }
    }
}

/// Positions without time: how many, and where the first begins.
#[derive(Clone, Copy, Debug, Default)]
pub(crate) struct Timeless {
    pub(crate) count: u64,
    pub(crate) first_byte: u64,
}

/// A log that has been read but not yet put in order.
pub(crate) struct Reading {
    /// Added to by [`Self::keep`].
    pub(crate) found: Vec<FoundFix>,
    /// The times of `found` are known to increase strictly.
    pub(crate) rises: bool,
    /// Bytes of the text being read.
    text_bytes: usize,
    pub(crate) more: Vec<More>,
    pub(crate) ledger: Ledger,
    pub(crate) notices: Vec<Notice>,
    pub(crate) resolution_m: Option<f64>,
    pub(crate) made_by: Option<String>,
    pub(crate) ground: PositionsOn,
    pub(crate) timeless: Timeless,
    /// Numbers of segments are those of names in a column, not of tracks.
    pub(crate) names_machines: bool,
    /// Times count from a start of the logger's own.
    pub(crate) times_are_relative: bool,
    /// What the log contains besides fixes, for the message if there are none.
    pub(crate) holds: String,
}

impl Reading {
    pub(crate) fn new(text_bytes: usize) -> Self {
        Self {
            found: Vec::new(),
            rises: true,
            text_bytes,
            more: Vec::new(),
            ledger: Ledger::default(),
            notices: Vec::new(),
            resolution_m: None,
            made_by: None,
            ground: PositionsOn::Earth,
            timeless: Timeless::default(),
            names_machines: false,
            times_are_relative: false,
            holds: String::new(),
        }
    }

    /// Adds a fix.
    #[inline]
    pub(crate) fn keep(&mut self, found: FoundFix) {
        if self.found.len() == self.found.capacity() {
            make_room(&mut self.found, found.end, self.text_bytes);
        }
        self.rises &= self
            .found
            .last()
            .is_none_or(|last| last.fix.time_s < found.fix.time_s);
        self.found.push(found);
    }

    /// Adds a fix that is in one piece of the text, which is used with it.
    pub(crate) fn take(&mut self, fix: Fix, start: u64, end: u64) {
        self.ledger.used(start, end);
        self.keep(FoundFix {
            fix,
            start,
            end,
            more: NO_MORE,
            count: 1,
        });
    }

    /// Skips a piece of the text with a position that cannot be used.
    pub(crate) fn skip(&mut self, start: u64, end: u64, reason: SkipReason) {
        if reason == SkipReason::NoTime {
            self.timeless_at(start);
        }
        self.ledger.skip(start, end, reason, 1);
    }

    /// Adds the fixes of another reading that continues where this one ends, as fixes of one segment.
    pub(crate) fn keep_all(&mut self, other: &Self, segment: u32) {
        let Some(first) = other.found.first() else {
            return;
        };
        if self.found.capacity() - self.found.len() < other.found.len() {
            make_room(&mut self.found, first.start, self.text_bytes);
        }
        self.rises &= other.rises
            && self
                .found
                .last()
                .is_none_or(|before| before.fix.time_s < first.fix.time_s);
        self.found.extend(other.found.iter().map(|&found| FoundFix {
            fix: Fix { segment, ..found.fix },
            ..found
        }));
    }

    /// Drops the fixes and keeps their memory.
    pub(crate) fn forget_found(&mut self) {
        self.found.clear();
        self.rises = true;
    }

    /// Checks whether times increase, after they were changed.
    pub(crate) fn look_at_order(&mut self) {
        let mut pairs = self.found.windows(2);
        self.rises = pairs.all(|pair| pair[0].fix.time_s < pair[1].fix.time_s);
    }

    /// The first and the last time, if all times are known to increase.
    pub(crate) fn rising_s(&self) -> Option<(f64, f64)> {
        let (first, last) = self.found.first().zip(self.found.last())?;
        self.rises.then_some((first.fix.time_s, last.fix.time_s))
    }

    /// Records something once.
    pub(crate) fn notice(&mut self, line: u64, said: Said) {
        self.notice_at(|| line, said);
    }

    /// As [`Self::notice`], with a line that is only looked for if it is needed.
    pub(crate) fn notice_at(&mut self, line: impl FnOnce() -> u64, said: Said) {
        if self
            .notices
            .iter()
            .all(|notice| notice.said.code() != said.code())
        {
            self.notices.push(Notice { said, line: line() });
        }
    }

    /// Records that a time did not state its zone; the first is on a line.
    pub(crate) fn without_zone(&mut self, line: u64) {
        self.notice(line, Said::TimeWithoutZone {});
    }

    /// Memory that the fixes and places take, including the trace and the closed ledger.
    pub(crate) fn memory_bytes(&self) -> u64 {
        (self.found.len() * FIX_BYTES
            + self.more.len() * size_of::<More>()
            + self.ledger.stretches() * STRETCH_BYTES) as u64
    }

    /// How many fixes [`Self::memory_bytes`] allows within this many bytes, if nothing else is added.
    pub(crate) fn fixes_within(&self, room_bytes: u64) -> u64 {
        let others = self.memory_bytes() - (self.found.len() * FIX_BYTES) as u64;
        room_bytes.saturating_sub(others) / FIX_BYTES as u64
    }

    pub(crate) fn timeless_at(&mut self, byte: u64) {
        if self.timeless.count == 0 {
            self.timeless.first_byte = byte;
        }
        self.timeless.count += 1;
    }
}

/// Quality from a GGA code. `None` for 0: no fix.
pub(crate) fn gga_quality(code: u32) -> Option<FixQuality> {
    Some(match code {
        0 => return None,
        1 => FixQuality::Autonomous,
        2 => FixQuality::Differential,
        3 => FixQuality::Precise,
        4 => FixQuality::RtkFixed,
        5 => FixQuality::RtkFloat,
        6 => FixQuality::Estimated,
        7 => FixQuality::Manual,
        8 => FixQuality::Simulated,
        _ => FixQuality::Other,
    })
}

/// Quality from a number or nothing, as in solution files (RTKLIB, `rtklib.h`, SOLQ): not the codes of GGA.
pub(crate) fn solution_quality(cell: &[u8]) -> Result<FixQuality, tussock_types::SkipReason> {
    Ok(match cell {
        b"" => FixQuality::Unknown,
        b"0" => return Err(tussock_types::SkipReason::NoFix),
        b"1" => FixQuality::RtkFixed,
        b"2" => FixQuality::RtkFloat,
        b"3" | b"4" => FixQuality::Differential,
        b"5" => FixQuality::Autonomous,
        b"6" => FixQuality::Precise,
        b"7" => FixQuality::Estimated,
        _ => FixQuality::Other,
    })
}

/// The preference for a quality if one instant has two positions.
pub(crate) fn rank(quality: FixQuality) -> u8 {
    match quality {
        FixQuality::RtkFixed => 9,
        FixQuality::RtkFloat => 8,
        FixQuality::Precise => 7,
        FixQuality::Differential => 6,
        FixQuality::Autonomous => 5,
        FixQuality::Unknown => 4,
        FixQuality::Other => 3,
        FixQuality::Estimated => 2,
        FixQuality::Simulated => 1,
        FixQuality::Manual => 0,
    }
}

/// Receivers for more than 600 m/s are under export control (MTCR annex, item 11.A.3): no logger of a mower has one.
const MOST_SPEED_MPS: f64 = 600.0;
/// Receivers without a position write up to 9999 (common practice, no source).
const MOST_HDOP: f64 = 1e4;
/// If a position is uncertain by more than the size of the Earth, the receiver says nothing.
const MOST_SD_M: f64 = 1e7;
/// From the deepest sea to where space begins.
const HEIGHTS_M: std::ops::RangeInclusive<f64> = -12_000.0..=100_000.0;
/// Twice round the Earth: no logger's plane is larger.
const MOST_LOCAL_M: f64 = 8e7;

/// A value from zero to the possible maximum; NaN beyond. Zero has no sign.
fn up_to(value: f64, most: f64) -> f32 {
    if (0.0..=most).contains(&value) {
        value as f32 + 0.0
    } else {
        f32::NAN
    }
}

/// A speed, NaN if no receiver can report it.
pub(crate) fn speed_mps(value: f64) -> f32 {
    up_to(value, MOST_SPEED_MPS)
}

/// A dilution of precision, NaN if the value cannot be one.
pub(crate) fn hdop(value: f64) -> f32 {
    up_to(value, MOST_HDOP)
}

/// A standard deviation, NaN if the value cannot be one.
pub(crate) fn sd_m(value: f64) -> f32 {
    up_to(value, MOST_SD_M)
}

/// Standard deviation per axis from those of two axes: the root of their mean square.
pub(crate) fn per_axis_sd_m(one_m: f64, other_m: f64) -> f32 {
    sd_m(((one_m * one_m + other_m * other_m) / 2.0).sqrt())
}

/// A height; NaN outside the range where anybody can be.
pub(crate) fn height_m(value: f64) -> f32 {
    if HEIGHTS_M.contains(&value) {
        value as f32
    } else {
        f32::NAN
    }
}

/// Why two numbers are not a place on a logger's own plane; `None` if they are.
pub(crate) fn local_fault(east_m: f64, north_m: f64) -> Option<tussock_types::SkipReason> {
    use tussock_types::SkipReason;
    if !(east_m.is_finite() && north_m.is_finite()) {
        Some(SkipReason::NotFinite)
    } else if east_m.abs().max(north_m.abs()) > MOST_LOCAL_M {
        Some(SkipReason::OutOfRange)
    } else {
        None
    }
}

/// Degrees from 0 to 360; NaN beyond.
pub(crate) fn course(value: f64) -> f32 {
    if (0.0..=360.0).contains(&value) {
        (value % 360.0) as f32
    } else {
        f32::NAN
    }
}

/// A count of satellites.
pub(crate) fn satellites(value: u32) -> u8 {
    value.min(u32::from(u8::MAX) - 1) as u8
}

/// Why a latitude and a longitude are not a position; `None` if they are.
pub(crate) fn geographic_fault(lat_deg: f64, lon_deg: f64) -> Option<tussock_types::SkipReason> {
    use tussock_types::SkipReason;
    if !lat_deg.is_finite() || !lon_deg.is_finite() {
        return Some(SkipReason::NotFinite);
    }
    if lat_deg.abs() > 90.0 || lon_deg.abs() > 180.0 {
        return Some(SkipReason::OutOfRange);
    }
    if lat_deg.abs() == 90.0 {
        return Some(SkipReason::Pole);
    }
    if lat_deg == 0.0 && lon_deg == 0.0 {
        return Some(SkipReason::NullIsland);
    }
    None
}

/// A receiver's radius of 68 % confidence (which phones call accuracy) over the standard deviation per axis, for a circular
/// normal error: sqrt(-2 ln 0.32) (Rayleigh distribution).
pub(crate) const RADIUS_68_PER_SD: f64 = 1.509_6;
