//! Which bytes of a log were used, which were not, and why?
//!
//! Every byte of the log (after decompression) is either used or in exactly one skipped stretch. Readers record stretches in
//! any order, since the fate of a sentence may be known only at the end of the file; the ledger is sorted and joined once,
//! when it is closed. Line numbers and excerpts are made then too, so that good logs do not pay for them.
//!
//! Cost: 32 bytes per stretch while reading, and one pass over the bytes for line numbers that no reader has counted.

use std::collections::BTreeMap;
use tussock_types::{LogFacts, SkipReason, Skipped};

/// A stretch that was not used.
#[derive(Clone, Copy, Debug)]
pub(crate) struct SkippedStretch {
    pub(crate) start: u64,
    pub(crate) end: u64,
    pub(crate) reason: SkipReason,
    pub(crate) count: u32,
    /// Line on which it begins, from 1; 0 if it has not been counted.
    line: u32,
}

/// The ledger of one log.
#[derive(Debug, Default)]
pub(crate) struct Ledger {
    stretches: Vec<SkippedStretch>,
    used_bytes: u64,
}

/// The contents of the ledger when it is closed.
pub(crate) struct Closed {
    pub(crate) places: Vec<Skipped>,
    pub(crate) skipped: BTreeMap<SkipReason, u64>,
    pub(crate) skipped_bytes: BTreeMap<SkipReason, u64>,
    pub(crate) used_bytes: u64,
}

/// More places than this are counted but not listed separately: about 300 MB.
const PLACES_LISTED: usize = 4_000_000;
const EXCERPT_CHARACTERS: usize = 60;

impl Ledger {
    /// These bytes gave a fix, helped to give one, or are framing around them.
    pub(crate) fn used(&mut self, start: u64, end: u64) {
        self.used_bytes += end.saturating_sub(start);
    }

    /// These bytes were recorded as used and turn out not to be.
    pub(crate) fn unused(&mut self, start: u64, end: u64, reason: SkipReason, count: u32) {
        self.used_bytes = self.used_bytes.saturating_sub(end.saturating_sub(start));
        self.skip(start, end, reason, count);
    }

    /// These bytes contain `count` pieces that were not used.
    pub(crate) fn skip(&mut self, start: u64, end: u64, reason: SkipReason, count: u32) {
        self.skip_on(0, start, end, reason, count);
    }

    /// Like [`Self::skip`], for bytes that begin on a known line, so that it need not be counted again.
    #[inline]
    pub(crate) fn skip_on(&mut self, line: u64, start: u64, end: u64, reason: SkipReason, count: u32) {
        if start >= end {
            return;
        }
        if let Some(last) = self.stretches.last_mut()
            && last.end == start
            && last.reason == reason
        {
            last.end = end;
            last.count = last.count.saturating_add(count);
            return;
        }
        self.stretches.push(SkippedStretch {
            start,
            end,
            reason,
            count,
            line: u32::try_from(line).unwrap_or(0),
        });
    }

    /// Stretches so far.
    pub(crate) fn stretches(&self) -> usize {
        self.stretches.len()
    }

    /// Bytes skipped so far.
    pub(crate) fn skipped_bytes(&self) -> u64 {
        self.stretches.iter().map(|s| s.end - s.start).sum()
    }

    /// How many pieces were skipped, by reason, in words.
    pub(crate) fn words(&self) -> String {
        let mut counts: BTreeMap<SkipReason, u64> = BTreeMap::new();
        for stretch in &self.stretches {
            *counts.entry(stretch.reason).or_default() += u64::from(stretch.count);
        }
        let parts: Vec<String> = counts
            .iter()
            .map(|(reason, count)| format!("{count} x {}", reason.words()))
            .collect();
        if parts.is_empty() {
            "nothing that could be one".into()
        } else {
            parts.join(", ")
        }
    }

    /// Sorts, joins, numbers lines and cuts excerpts. `to_log` turns a place in `text` into one in the log, in ascending
    /// order.
    pub(crate) fn close(self, text: &[u8], mut to_log: impl FnMut(u64) -> u64) -> Closed {
        let mut joined = self.stretches;
        if !joined.is_sorted_by_key(|stretch| stretch.start) {
            joined.sort_unstable_by_key(|stretch| stretch.start);
        }
        joined.dedup_by(|next, last| {
            let joins = last.end == next.start && last.reason == next.reason;
            if joins {
                last.end = next.end;
                last.count = last.count.saturating_add(next.count);
            }
            joins
        });
        let mut closed = Closed {
            places: Vec::with_capacity(joined.len().min(PLACES_LISTED)),
            skipped: BTreeMap::new(),
            skipped_bytes: BTreeMap::new(),
            used_bytes: self.used_bytes,
        };
        let mut kept: BTreeMap<SkipReason, usize> = BTreeMap::new();
        let (mut line, mut counted_to) = (1_u64, 0_usize);
        for stretch in joined {
            let (start, end) = (stretch.start as usize, stretch.end as usize);
            if stretch.line > 0 {
                line = u64::from(stretch.line);
            } else {
                line += line_ends(text, counted_to, start);
            }
            counted_to = start;
            let with_excerpt = kept.entry(stretch.reason).or_default();
            *with_excerpt += 1;
            let excerpt = if *with_excerpt <= LogFacts::PLACES_KEPT {
                excerpt(&text[start..end])
            } else {
                String::new()
            };
            let (byte_start, byte_end) = (to_log(stretch.start), to_log(stretch.end));
            *closed.skipped.entry(stretch.reason).or_default() += u64::from(stretch.count);
            *closed.skipped_bytes.entry(stretch.reason).or_default() += byte_end - byte_start;
            if closed.places.len() < PLACES_LISTED {
                closed.places.push(Skipped {
                    reason: stretch.reason,
                    byte_start,
                    byte_end,
                    line,
                    count: u64::from(stretch.count),
                    excerpt,
                });
            }
        }
        closed
    }
}

/// The first characters of a stretch, without blanks at its start, and with control characters and non-text replaced.
pub(crate) fn excerpt(bytes: &[u8]) -> String {
    let bytes = bytes.trim_ascii_start();
    let head = &bytes[..bytes.len().min(EXCERPT_CHARACTERS * 4)];
    String::from_utf8_lossy(head)
        .trim_end()
        .chars()
        .take(EXCERPT_CHARACTERS)
        .map(|c| if c.is_control() { '\u{b7}' } else { c })
        .collect()
}

/// The line, from 1, on which a byte lies.
pub(crate) fn line_of(text: &[u8], byte: u64) -> u64 {
    1 + line_ends(text, 0, (byte as usize).min(text.len()))
}

/// Line ends between two places: line feeds, and carriage returns not followed by one.
fn line_ends(text: &[u8], from: usize, to: usize) -> u64 {
    let feeds = memchr::memchr_iter(b'\n', &text[from..to]).count();
    let alone = memchr::memchr_iter(b'\r', &text[from..to])
        .filter(|at| text.get(from + at + 1) != Some(&b'\n'))
        .count();
    (feeds + alone) as u64
}
