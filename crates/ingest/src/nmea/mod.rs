//! Which fixes does an NMEA 0183 log contain?
//!
//! ```text
//! bytes -> frames -> sentences -> epochs (all sentences of one time of day) -> dates -> fixes
//! ```
//!
//! - An epoch gathers RMC, GGA, GNS, GLL, GST and VTG of any talker with one time of day, in any order and at any rate, and
//!   is committed once and as a whole. GGA decides position and quality, then GNS, RMC, GLL.
//! - An epoch that RMC calls void, or for which GGA gives quality 0, is not a fix, whatever coordinates it repeats. An empty
//!   position is never latitude 0, longitude 0.
//! - Dates come from RMC and ZDA of epochs with a fix; see [`dates`] for midnight, late dates and week rollover.
//! - A checksum is verified if present. Sentences of other kinds are skipped as [`SkipReason::NotAPosition`].
//!
//! References: NMEA 0183 as described in "NMEA Revealed" (gpsd project); IS-GPS-200 for the week number.
//!
//! Exact: minutes are divided once, so positions are within one unit in the last place of the written number. Approximate:
//! VTG has no time and is assigned to the most recent open epoch.
//!
//! Cost: one look at each byte, sixteen at a time, finds the end and the checksum of a sentence; sentences of other kinds
//! cost no more. In those that are read, commas are found eight bytes at a time, and fields that matter are read once more.

mod dates;
mod epoch;
mod frame;
mod sentence;

use crate::clock::{first_day, last_day, seconds};
use crate::error::IngestError;
use crate::ledger::line_of;
use crate::number::MINUTE_M;
use crate::reading::{NO_MORE, Reading};
use crate::{ReadOptions, check_size};
use dates::{Anchor, Dated, Trust};
use epoch::{Epoch, OpenEpochs};
use frame::{Checksum, Frames, StreamPiece};
use sentence::{Fields, FixClaim};
use tussock_types::{FixQuality, Said, SkipReason, Whether, plural};

/// True if the bytes contain at least one sentence with a correct checksum, or of a known kind.
pub(crate) fn holds_sentences(text: &[u8]) -> bool {
    Frames::new(text).any(|piece| match piece {
        StreamPiece::Sentence { body, check, .. } => match check {
            Checksum::Good => true,
            Checksum::Missing | Checksum::Bad | Checksum::CutOff => kind(body).is_some(),
            Checksum::Broken => false,
        },
        StreamPiece::Junk { .. } => false,
    })
}

/// The sentences that are read.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum SentenceKind {
    Rmc,
    Gga,
    Gns,
    Gll,
    Gst,
    Vtg,
    Zda,
}

impl SentenceKind {
    /// How many fields are examined, including the address.
    #[inline]
    const fn fields(self) -> usize {
        match self {
            Self::Rmc => 13,
            Self::Gga | Self::Gns => 10,
            Self::Gll | Self::Gst => 8,
            Self::Vtg => 9,
            Self::Zda => 5,
        }
    }
}

/// The kind of a sentence, from any talker. An address that begins with P is proprietary.
#[inline]
fn kind(body: &[u8]) -> Option<SentenceKind> {
    let [talker, _, a, b, c, b',', ..] = body else {
        return None;
    };
    if *talker == b'P' {
        return None;
    }
    match [*a, *b, *c] {
        [b'R', b'M', b'C'] => Some(SentenceKind::Rmc),
        [b'G', b'G', b'A'] => Some(SentenceKind::Gga),
        [b'G', b'N', b'S'] => Some(SentenceKind::Gns),
        [b'G', b'L', b'L'] => Some(SentenceKind::Gll),
        [b'G', b'S', b'T'] => Some(SentenceKind::Gst),
        [b'V', b'T', b'G'] => Some(SentenceKind::Vtg),
        [b'Z', b'D', b'A'] => Some(SentenceKind::Zda),
        _ => None,
    }
}

/// Talkers of Galileo, BeiDou and QZSS came with NMEA 0183 version 4.10 in 2012, so a log that has them was not recorded
/// earlier.
#[inline]
fn is_modern_talker(body: &[u8]) -> bool {
    matches!(body, [b'G', b'A' | b'B' | b'Q', _, _, _, b',', ..])
}

/// Reads all fixes.
pub(crate) fn read(name: &str, text: &[u8], options: &ReadOptions) -> Result<Reading, IngestError> {
    let mut reader = Nmea {
        reading: Reading::new(text.len()),
        usable_days: first_day()..last_day(),
        all_are_dated: true,
        line: 1,
        open: OpenEpochs::new(),
        clock: Vec::new(),
        anchors: Vec::new(),
        steps: crate::number::WrittenSteps::default(),
        dates: sentence::Dates::default(),
        times: sentence::TimeReader::default(),
        positions: sentence::PositionReader::default(),
        next_id: 0,
        is_modern: false,
        sentences: 0,
        last_fate: Fate::Used,
    };
    let limit = options.limits.line_bytes as usize;
    let mut frames = Frames::new(text);
    let mut fields = Fields::new(text);
    loop {
        reader.line = frames.line();
        let Some(piece) = frames.next() else { break };
        check_size(name, &reader.reading, text, &options.limits, piece.start())?;
        match piece {
            StreamPiece::Junk { start, end, blank } => {
                let (start, end) = (start as u64, end as u64);
                match reader.last_fate {
                    _ if !blank => reader.skip(start, end, SkipReason::NotOfTheFormat),
                    // Blanks belong to what precedes them.
                    Fate::Used => reader.reading.ledger.used(start, end),
                    Fate::Skipped(reason) => {
                        reader.reading.ledger.skip_on(reader.line, start, end, reason, 0);
                    }
                }
            }
            StreamPiece::Sentence {
                start,
                end,
                body,
                check,
            } => {
                reader.sentences += 1;
                let (start, end) = (start as u64, end as u64);
                let fault = match check {
                    Checksum::Good | Checksum::Missing if body.len() > limit => Some(SkipReason::TooLong),
                    Checksum::Good | Checksum::Missing => None,
                    Checksum::Bad => Some(SkipReason::BadChecksum),
                    Checksum::Broken => Some(SkipReason::Malformed),
                    Checksum::CutOff => Some(SkipReason::Truncated),
                };
                if let Some(reason) = fault {
                    if reason == SkipReason::TooLong {
                        let line = || line_of(text, start);
                        let most = options.limits.line_bytes;
                        reader.reading.notice_at(
                            line,
                            Said::LineTooLong {
                                bytes: body.len() as u64,
                                limit: most,
                            },
                        );
                    }
                    reader.skip(start, end, reason);
                    continue;
                }
                if check == Checksum::Good && is_modern_talker(body) {
                    reader.is_modern = true;
                }
                match kind(body) {
                    None => reader.skip(start, end, SkipReason::NotAPosition),
                    Some(kind) => {
                        fields.take(&text[start as usize + 1..], body.len(), kind.fields());
                        if let Err(reason) = reader.sentence(kind, &fields, start, end) {
                            if reason == SkipReason::NoTime {
                                reader.reading.timeless_at(start);
                            }
                            reader.skip(start, end, reason);
                        } else {
                            reader.last_fate = Fate::Used;
                        }
                    }
                }
            }
        }
    }
    reader.finish(name, text, options)
}

/// What a sentence says about having a position; nothing without a time of day.
fn claimed(has_position: bool, of_day_us: Option<i64>) -> Result<(FixClaim, i64), SkipReason> {
    let (says, without_time) = match has_position {
        true => (FixClaim::Fix, SkipReason::NoTime),
        false => (FixClaim::NoFix, SkipReason::NoFix),
    };
    Ok((says, of_day_us.ok_or(without_time)?))
}

/// What happened to the previous piece.
#[derive(Clone, Copy)]
enum Fate {
    Used,
    Skipped(SkipReason),
}

/// The time of day of a fix, the date that its own epoch gave, and its place in the order of epochs.
#[derive(Clone, Copy, Debug)]
struct TimeOfDay {
    id: u32,
    of_day_us: i64,
    day: Option<i32>,
    /// The kind of fix according to RMC, if there is one.
    rmc_quality: Option<FixQuality>,
}

struct Nmea<'a> {
    reading: Reading,
    open: OpenEpochs,
    /// Parallel to `reading.found`, until dates are known.
    clock: Vec<TimeOfDay>,
    anchors: Vec<Anchor>,
    steps: crate::number::WrittenSteps,
    dates: sentence::Dates,
    times: sentence::TimeReader,
    positions: sentence::PositionReader<'a>,
    next_id: u32,
    /// Days that a log can contain.
    usable_days: std::ops::Range<i32>,
    /// Every fix so far has the date of its own epoch.
    all_are_dated: bool,
    /// Line on which the current piece begins.
    line: u64,
    is_modern: bool,
    sentences: u64,
    last_fate: Fate,
}

impl<'a> Nmea<'a> {
    fn skip(&mut self, start: u64, end: u64, reason: SkipReason) {
        self.reading.ledger.skip_on(self.line, start, end, reason, 1);
        self.last_fate = Fate::Skipped(reason);
    }

    /// Adds a sentence to its epoch, or says why not.
    #[inline]
    fn sentence(
        &mut self,
        kind: SentenceKind,
        fields: &Fields<'a>,
        start: u64,
        end: u64,
    ) -> Result<(), SkipReason> {
        match kind {
            SentenceKind::Rmc => self.rmc(fields, start, end),
            SentenceKind::Gga => self.gga(fields, start, end),
            SentenceKind::Gns => self.gns(fields, start, end),
            SentenceKind::Gll => self.gll(fields, start, end),
            SentenceKind::Gst => self.gst(fields, start, end),
            SentenceKind::Vtg => self.vtg(fields, start, end),
            SentenceKind::Zda => self.zda(fields, start, end),
        }
    }

    fn rmc(&mut self, fields: &Fields<'a>, start: u64, end: u64) -> Result<(), SkipReason> {
        let of_day = self.times.read(fields, 1)?;
        let (mode_says, mode_quality) = fields
            .get(12)
            .first()
            .map_or((FixClaim::Nothing, FixQuality::Unknown), |&letter| {
                sentence::mode(letter)
            });
        let says = match fields.get(2).trim_ascii() {
            b"A" | b"a" if mode_says != FixClaim::NoFix => FixClaim::Fix,
            b"A" | b"a" | b"V" | b"v" => FixClaim::NoFix,
            b"" if of_day.is_none() => FixClaim::NoFix,
            _ => return Err(SkipReason::Malformed),
        };
        let day = self.dates.read(fields.get(9));
        let Some(of_day_us) = of_day else {
            return Err(if says == FixClaim::Fix {
                SkipReason::NoTime
            } else {
                SkipReason::NoFix
            });
        };
        let position = match says {
            FixClaim::Fix => self.positions.read(fields, 3)?,
            _ => None,
        };
        let says = if position.is_none() { FixClaim::NoFix } else { says };
        let epoch = self.epoch(of_day_us, day);
        if epoch.rmc == FixClaim::Fix {
            return Err(SkipReason::DuplicateEpoch);
        }
        epoch.rmc = says;
        if says == FixClaim::Fix {
            epoch.place(2, position);
            epoch.speed_mps = fields.speed_mps(7, sentence::KNOT_MPS);
            epoch.course_deg = fields.course(8);
            epoch.quality(2, mode_quality);
            epoch.rmc_quality = Some(mode_quality);
        }
        if epoch.day.is_none() {
            epoch.day = day;
        }
        self.add(start, end);
        Ok(())
    }

    fn gga(&mut self, fields: &Fields<'a>, start: u64, end: u64) -> Result<(), SkipReason> {
        let of_day = self.times.read(fields, 1)?;
        let (says, quality) = sentence::quality(fields.get(6))?;
        let position = if says == FixClaim::NoFix {
            None
        } else {
            self.positions.read(fields, 2)?
        };
        let (says, of_day_us) = claimed(position.is_some(), of_day)?;
        let epoch = self.epoch(of_day_us, None);
        if epoch.gga == FixClaim::Fix || (epoch.gga == FixClaim::NoFix && says == FixClaim::NoFix) {
            return Err(if says == FixClaim::Fix {
                SkipReason::DuplicateEpoch
            } else {
                SkipReason::NoFix
            });
        }
        epoch.gga = says;
        if says == FixClaim::Fix {
            epoch.place(4, position);
            epoch.quality(4, quality);
            epoch.satellites =
                crate::number::whole(fields.get(7)).map_or(u8::MAX, crate::reading::satellites);
            epoch.hdop = fields.hdop(8);
            epoch.height_msl_m = fields.height_m(9);
        }
        self.add(start, end);
        Ok(())
    }

    fn gns(&mut self, fields: &Fields<'a>, start: u64, end: u64) -> Result<(), SkipReason> {
        let of_day = self.times.read(fields, 1)?;
        let (says, quality) = sentence::modes(fields.get(6));
        let position = if says == FixClaim::NoFix {
            None
        } else {
            self.positions.read(fields, 2)?
        };
        if position.is_none() && says != FixClaim::NoFix {
            // The satellites of one system among several: the position is in the sentence for all of them.
            return Err(SkipReason::NotAPosition);
        }
        let (says, of_day_us) = claimed(position.is_some(), of_day)?;
        let epoch = self.epoch(of_day_us, None);
        if epoch.gns == FixClaim::Fix {
            return Err(if says == FixClaim::Fix {
                SkipReason::DuplicateEpoch
            } else {
                SkipReason::NotAPosition
            });
        }
        epoch.gns = says;
        if says == FixClaim::Fix {
            epoch.place(3, position);
            epoch.quality(3, quality);
            if epoch.satellites == u8::MAX {
                epoch.satellites =
                    crate::number::whole(fields.get(7)).map_or(u8::MAX, crate::reading::satellites);
            }
            if epoch.hdop.is_nan() {
                epoch.hdop = fields.hdop(8);
            }
            if epoch.height_msl_m.is_nan() {
                epoch.height_msl_m = fields.height_m(9);
            }
        }
        self.add(start, end);
        Ok(())
    }

    fn gll(&mut self, fields: &Fields<'a>, start: u64, end: u64) -> Result<(), SkipReason> {
        let of_day = self.times.read(fields, 5)?;
        let (mode_says, quality) = fields
            .get(7)
            .first()
            .map_or((FixClaim::Nothing, FixQuality::Unknown), |&letter| {
                sentence::mode(letter)
            });
        let is_void = matches!(fields.get(6).trim_ascii(), b"V" | b"v") || mode_says == FixClaim::NoFix;
        let position = if is_void {
            None
        } else {
            self.positions.read(fields, 1)?
        };
        let (says, of_day_us) = claimed(position.is_some(), of_day)?;
        let epoch = self.epoch(of_day_us, None);
        if epoch.gll == FixClaim::Fix {
            return Err(SkipReason::DuplicateEpoch);
        }
        epoch.gll = says;
        if says == FixClaim::Fix {
            epoch.place(1, position);
            epoch.quality(1, quality);
        }
        self.add(start, end);
        Ok(())
    }

    fn gst(&mut self, fields: &Fields<'a>, start: u64, end: u64) -> Result<(), SkipReason> {
        let of_day_us = self.times.read(fields, 1)?.ok_or(SkipReason::NotAPosition)?;
        let sd = |at: usize| fields.decimal(at).map(|number| number.value);
        // Some receivers fill in only the ellipse.
        let ellipse = || {
            let (north_m, east_m, _) = sentence::of_ellipse(sd(3)?, sd(4)?, sd(5)?);
            Some((north_m, east_m))
        };
        let Some((lat_m, lon_m)) = sd(6).zip(sd(7)).or_else(ellipse) else {
            return Err(SkipReason::NotAPosition);
        };
        self.epoch(of_day_us, None).claimed_sd_m = crate::reading::per_axis_sd_m(lat_m, lon_m);
        self.add(start, end);
        Ok(())
    }

    fn vtg(&mut self, fields: &Fields<'a>, start: u64, end: u64) -> Result<(), SkipReason> {
        let Some(epoch) = self.open.latest() else {
            return Err(SkipReason::NotAPosition);
        };
        if epoch.has_vtg {
            return Err(SkipReason::NotAPosition);
        }
        let (course_deg, speed_mps) = if fields.count() > 5 {
            let knots = fields.speed_mps(5, sentence::KNOT_MPS);
            let kmh = if fields.count() > 7 {
                fields.speed_mps(7, 1.0 / 3.6)
            } else {
                f32::NAN
            };
            (fields.course(1), if knots.is_nan() { kmh } else { knots })
        } else {
            // Before version 2 it had neither unit letters nor the letter T.
            (fields.course(1), fields.speed_mps(3, sentence::KNOT_MPS))
        };
        if course_deg.is_nan() && speed_mps.is_nan() {
            return Err(SkipReason::NotAPosition);
        }
        epoch.has_vtg = true;
        epoch.vtg_course_deg = course_deg;
        epoch.vtg_speed_mps = speed_mps;
        self.add(start, end);
        Ok(())
    }

    fn zda(&mut self, fields: &Fields<'a>, start: u64, end: u64) -> Result<(), SkipReason> {
        let of_day = self.times.read(fields, 1)?;
        let (Some(of_day_us), Some(day)) = (of_day, sentence::zda_date(fields)) else {
            return Err(SkipReason::NotAPosition);
        };
        if self.open.find(of_day_us, None) {
            self.open.current().day = Some(day);
            self.add(start, end);
        } else {
            self.anchors.push(Anchor {
                id: self.next_id,
                of_day_us,
                day,
                trust: Trust::Zda,
            });
            self.reading.ledger.used(start, end);
        }
        Ok(())
    }

    /// The open epoch for a time of day, or a new one. The oldest is committed if there are too many.
    #[inline]
    fn epoch(&mut self, of_day_us: i64, day: Option<i32>) -> &mut Epoch {
        if !self.open.find(of_day_us, day) {
            if self.open.is_full() {
                self.commit_oldest();
            }
            self.open.push(self.next_id, of_day_us);
            self.next_id = self.next_id.saturating_add(1);
        }
        self.open.current()
    }

    /// Assigns a sentence to the epoch found last.
    #[inline]
    fn add(&mut self, start: u64, end: u64) {
        self.open.current().add(start, end, &mut self.reading.more);
    }

    /// Makes a fix from the epoch that was opened first, or says why there is none. False if none is open.
    fn commit_oldest(&mut self) -> bool {
        let Some(epoch) = self.open.oldest() else {
            return false;
        };
        let Reading { ledger, more, .. } = &mut self.reading;
        match epoch.fix() {
            Ok((mut fix, decimals)) => {
                ledger.used(fix.start, fix.end);
                let mut next = fix.more;
                while next != NO_MORE {
                    let piece = more[next as usize];
                    ledger.used(piece.start, piece.start + u64::from(piece.length));
                    next = piece.next;
                }
                self.steps.add(decimals);
                self.clock.push(TimeOfDay {
                    id: epoch.id,
                    of_day_us: epoch.of_day_us,
                    day: epoch.day,
                    rmc_quality: epoch.rmc_quality,
                });
                match epoch.day.filter(|day| self.usable_days.contains(day)) {
                    Some(day) => fix.fix.time_s = seconds(day, epoch.of_day_us),
                    None => self.all_are_dated = false,
                }
                self.reading.keep(fix);
            }
            Err(reason) => {
                if let Some(day) = epoch.day {
                    self.anchors.push(Anchor {
                        id: epoch.id,
                        of_day_us: epoch.of_day_us,
                        day,
                        trust: Trust::Void,
                    });
                }
                ledger.skip(epoch.start, epoch.end, reason, epoch.count);
                let mut next = epoch.more;
                while next != NO_MORE {
                    let piece = more[next as usize];
                    ledger.skip(piece.start, piece.start + u64::from(piece.length), reason, 1);
                    next = piece.next;
                }
            }
        }
        self.open.drop_oldest();
        true
    }

    /// Uses the kind of fix from RMC if GGA calls every fix manual, or every one simulated, and RMC disagrees: by the
    /// standard, status A belongs to measured positions only, so a constant 7 or 8 beside it is a number that the writer
    /// never set.
    fn doubt_constant_quality(&mut self) {
        let found = &mut self.reading.found;
        let Some(constant) = found.first().map(|one| one.fix.quality) else {
            return;
        };
        let is_doubtful = matches!(constant, FixQuality::Manual | FixQuality::Simulated)
            && found.iter().all(|one| one.fix.quality == constant)
            && self.clock.iter().all(|one| one.rmc_quality != Some(constant));
        let denied = self.clock.iter().filter(|one| one.rmc_quality.is_some()).count();
        if !is_doubtful || 2 * denied <= found.len() {
            return;
        }
        for (one, clock) in found.iter_mut().zip(&self.clock) {
            one.fix.quality = clock.rmc_quality.unwrap_or(FixQuality::Unknown);
        }
        let manual = Whether::from(constant == FixQuality::Manual);
        self.reading.notice(0, Said::ConstantQuality { manual });
    }

    fn finish(mut self, name: &str, text: &[u8], options: &ReadOptions) -> Result<Reading, IngestError> {
        while self.commit_oldest() {}
        dates::resolve(
            &mut self.reading,
            &self.clock,
            &self.anchors,
            options.date,
            if self.all_are_dated {
                Dated::All
            } else {
                Dated::Some
            },
            self.is_modern,
        )
        .map_err(|of_day_us| no_date(name, text, &self.reading, of_day_us))?;
        self.doubt_constant_quality();
        self.reading.resolution_m = self.steps.resolution_m(MINUTE_M);
        self.reading.holds = format!(
            "{}; skipped {}",
            plural(self.sentences, "sentence", "sentences"),
            self.reading.ledger.words()
        );
        Ok(self.reading)
    }
}

fn no_date(name: &str, text: &[u8], reading: &Reading, of_day_us: i64) -> IngestError {
    let seconds = of_day_us / 1_000_000;
    IngestError::NoDate {
        name: name.into(),
        time_of_day: format!(
            "{:02}:{:02}:{:02}",
            seconds / 3600,
            seconds / 60 % 60,
            seconds % 60
        ),
        line: crate::ledger::line_of(text, reading.found.first().map_or(0, |one| one.start)),
    }
}
