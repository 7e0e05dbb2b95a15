//! What a log file contained: what could be used, what could not, and where.

use crate::Said;
use serde::{Deserialize, Deserializer, Serialize};
use std::collections::BTreeMap;

worded! {
    /// The kind of a log, detected from its content, never from its name.
    #[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
    #[serde(rename_all = "snake_case")]
    LogFormat,
    /// The name that people use.
    words {
        /// GPX 1.0 or 1.1.
        Gpx = "GPX",
        /// NMEA 0183 sentences, one per line, with whatever lies between them.
        Nmea = "NMEA 0183",
        /// Rows of values under named columns.
        Csv = "CSV",
        /// A solution file of RTKLIB.
        Pos = "RTKLIB .pos",
        /// KML with times.
        Kml = "KML",
        /// Moving features of the OGC as JSON.
        MfJson = "MF-JSON",
        /// Reports of gpsd, one JSON object per line.
        GpsdJson = "gpsd JSON",
    }
}

worded! {
    /// Why a piece of a log was not used.
    #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
    #[serde(rename_all = "snake_case")]
    SkipReason,
    /// What to call it on screen.
    words {
        /// The checksum at the end of a sentence does not match its characters.
        BadChecksum = "checksum does not fit",
        /// A sentence, element or line without a position that we can use (satellites in view, waypoints, headings).
        NotAPosition = "carries no position",
        /// Bytes that are not text of the format (binary frames between sentences, prose).
        NotOfTheFormat = "not of the format",
        /// The receiver itself says that it had no fix.
        NoFix = "receiver had no fix",
        /// A position without a time.
        NoTime = "position without time",
        /// A time of day without a date, and the rest of the log supplies none.
        NoDate = "time of day without date",
        /// A field that should hold a number or a time does not.
        Malformed = "malformed field",
        /// Not a number, or infinite.
        NotFinite = "not a finite number",
        /// Latitude beyond 90 or longitude beyond 180 degrees, or a time before 1980 or past 2100.
        OutOfRange = "out of range",
        /// Exactly latitude 0 and longitude 0: some receivers write this when they have no position.
        NullIsland = "latitude 0, longitude 0",
        /// Latitude of exactly 90 degrees while searching: some receivers write this when they have no position.
        Pole = "latitude 90 while searching",
        /// Earlier than the fix before it, and impossible to put in order.
        TimeReversed = "time runs backwards",
        /// The same time again, with the same or a worse position.
        DuplicateTime = "same time twice",
        /// The same epoch again under another talker.
        DuplicateEpoch = "same epoch twice",
        /// The last line or element ends in the middle.
        Truncated = "cut off at the end",
        /// The same content was already read under another name.
        SameLogTwice = "same log under two names",
        /// A line or element longer than the limit.
        TooLong = "longer than the limit",
        /// The position repeats while the receiver reports a speed, or lies too far away for the machine: removed later.
        Implausible = "implausible position",
    }
}

impl SkipReason {
    /// True if the piece was not damaged data but valid data about something else.
    pub const fn is_expected(self) -> bool {
        matches!(self, Self::NotAPosition)
    }
}

/// One stretch of a log that was not used. Neighbouring stretches with the same reason are joined.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Skipped {
    /// Why.
    pub reason: SkipReason,
    /// First byte of the stretch in the decompressed log, from 0.
    pub byte_start: u64,
    /// One past its last byte.
    pub byte_end: u64,
    /// Line on which it begins, from 1.
    pub line: u64,
    /// How many sentences, points or rows it holds.
    pub count: u64,
    /// Its first characters, at most 60, with control characters replaced.
    pub excerpt: String,
}

/// Something that the reader did or noticed and that the user should be told once.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Notice {
    /// What.
    pub said: Said,
    /// Line on which it was first seen, from 1; 0 if it concerns the whole file.
    pub line: u64,
}

/// Findings of older versions have sentences in place of codes: these are left out.
fn notices<'de, D: Deserializer<'de>>(from: D) -> Result<Vec<Notice>, D::Error> {
    #[derive(Deserialize)]
    struct Saved {
        #[serde(default, deserialize_with = "coded")]
        said: Option<Said>,
        line: u64,
    }
    fn coded<'de, D: Deserializer<'de>>(from: D) -> Result<Option<Said>, D::Error> {
        Said::deserialize(from).map(Some)
    }
    let coded = |saved: Saved| {
        saved.said.map(|said| Notice {
            said,
            line: saved.line,
        })
    };
    Ok(Vec::<Saved>::deserialize(from)?
        .into_iter()
        .filter_map(coded)
        .collect())
}

/// Facts about one log file, apart from its fixes.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct LogFacts {
    /// Name as given by the user.
    pub name: String,
    /// SHA-256 of the bytes as given, hexadecimal.
    pub sha256: String,
    /// Kind of log.
    pub format: LogFormat,
    /// What made the log, if the log says so (GPX `creator`).
    pub made_by: Option<String>,
    /// The machine to whose trace its fixes were added.
    pub machine: String,
    /// Bytes after decompression.
    pub bytes: u64,
    /// Bytes of the sentences, elements and rows that gave a fix or helped to give one, including their framing.
    pub bytes_used: u64,
    /// Fixes that went into the trace.
    pub fixes: u64,
    /// Number of skipped pieces for each reason.
    pub skipped: BTreeMap<SkipReason, u64>,
    /// Number of skipped bytes for each reason: together with [`LogFacts::bytes_used`] they add up to [`LogFacts::bytes`].
    pub skipped_bytes: BTreeMap<SkipReason, u64>,
    /// Where the skipped pieces are, in file order; at most [`LogFacts::PLACES_KEPT`] of each reason keep an excerpt.
    pub places: Vec<Skipped>,
    /// What else the user should know.
    #[serde(deserialize_with = "notices")]
    pub notices: Vec<Notice>,
    /// Resolution of the coordinates: the smallest step that their digits allow, in metres of latitude, if it can be
    /// determined.
    pub resolution_m: Option<f64>,
}

impl LogFacts {
    /// This many places of each reason are kept with an excerpt; the rest keep their bytes only.
    pub const PLACES_KEPT: usize = 20;

    /// Skipped pieces that count as faults, over all reasons.
    pub fn faults(&self) -> u64 {
        self.skipped
            .iter()
            .filter(|(reason, _)| !reason.is_expected())
            .map(|(_, count)| count)
            .sum()
    }
}
