//! The bytes of a log in readable form: unpacked, and as text in which every ASCII character is one byte.
//!
//! - gzip and Zstandard are recognised by their first bytes, never by the name. If the end is damaged, everything before it
//!   is kept.
//! - UTF-16 (with or without byte order mark) becomes UTF-8; places are converted back into places of the log.
//! - Everything else stays as it is, byte for byte: sentences, tags and numbers are ASCII in all other encodings.
//! - Of a line or a piece of markup longer than the limit, only the first and last bytes are kept in memory: a card filled
//!   with zeros costs the time to read it, not its size ([`crate::sieve`]).
//!
//! Cost: one copy of the text in memory (two for UTF-16), SHA-256 of the bytes as given (in parallel, if another core is
//! free), and no copy of the packed bytes.

mod fetch;

pub use fetch::digest;

use crate::error::IngestError;
use crate::sieve::Hole;
use encoding_rs::Encoding;
use std::io::Read;
use tussock_types::LimitSettings;

/// A log in memory.
pub(crate) struct Source {
    /// What readers read.
    pub(crate) text: Vec<u8>,
    /// Hash of the bytes as given, hexadecimal; `None` if it is that of the text.
    sha256: Option<String>,
    /// Bytes after unpacking, in the log's own encoding.
    pub(crate) bytes: u64,
    /// What was removed or converted to get the text.
    encoding: TextEncoding,
    /// The unpacked bytes end in the middle, with the unpacker's message.
    pub(crate) damaged: Option<String>,
    /// What was left out of the text, in ascending order.
    holes: Vec<Hole>,
}

/// How the log's bytes became the text.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum TextEncoding {
    AsGiven,
    /// A UTF-8 byte order mark was removed.
    Utf8Mark,
    /// Converted from UTF-16 that began with a mark of this many bytes.
    Utf16 {
        mark: u64,
    },
}

impl Source {
    pub(crate) fn read(name: &str, input: impl Read, limits: &LimitSettings) -> Result<Self, IngestError> {
        let fetched = fetch::fetch(name, input, limits)?;
        let mut source = Self {
            text: fetched.sifted.text,
            sha256: fetched.sha256,
            bytes: fetched.sifted.bytes,
            encoding: TextEncoding::AsGiven,
            damaged: fetched.damaged,
            holes: fetched.sifted.holes,
        };
        source.make_text(name, limits)?;
        Ok(source)
    }

    /// The longest stretch that cannot be a line or element: its length, and where in the text it was cut.
    pub(crate) fn longest_hole(&self) -> Option<Hole> {
        self.holes.iter().copied().max_by_key(|hole| hole.bytes)
    }

    /// Hash of the bytes as given, hexadecimal. Cost: one pass, if nothing had to be unpacked or converted.
    pub(crate) fn sha256(&self) -> String {
        self.sha256.clone().unwrap_or_else(|| digest(&self.text))
    }

    fn make_text(&mut self, name: &str, limits: &LimitSettings) -> Result<(), IngestError> {
        if self.text.starts_with(b"\xef\xbb\xbf") {
            self.sha256 = Some(self.sha256());
            self.text.drain(..3);
            self.encoding = TextEncoding::Utf8Mark;
            return Ok(());
        }
        let Some((big_endian, mark)) = utf16(&self.text) else {
            return Ok(());
        };
        self.sha256 = Some(self.sha256());
        // Both copies exist at once; a character of two bytes has at most three in the other encoding.
        let both = self.text.len() as u64 * 5 / 2;
        crate::check_memory(name, both, limits, self.bytes)?;
        let units = self.text[mark..].chunks_exact(2).map(|pair| {
            if big_endian {
                u16::from_be_bytes([pair[0], pair[1]])
            } else {
                u16::from_le_bytes([pair[0], pair[1]])
            }
        });
        let mut text = String::with_capacity(self.text.len() / 2 + 16);
        for unit in char::decode_utf16(units) {
            text.push(unit.unwrap_or(char::REPLACEMENT_CHARACTER));
        }
        self.text = text.into_bytes();
        self.encoding = TextEncoding::Utf16 { mark: mark as u64 };
        Ok(())
    }

    /// True if places in the text are not places in the log.
    pub(crate) fn is_converted(&self) -> bool {
        self.encoding != TextEncoding::AsGiven || !self.holes.is_empty()
    }

    /// Converts places in the text, requested in ascending order, into places in the log. The mark and an odd last byte are
    /// assigned to the neighbours at either end.
    pub(crate) fn to_log(&self) -> impl FnMut(u64) -> u64 + '_ {
        let mut to_kept = self.to_kept();
        let (mut passed, mut left_out) = (0_usize, 0_u64);
        move |place| {
            if place as usize >= self.text.len() {
                return self.bytes;
            }
            let kept = to_kept(place);
            if passed > 0 && self.holes[passed - 1].at >= kept {
                (passed, left_out) = (0, 0);
            }
            while let Some(hole) = self.holes.get(passed).filter(|hole| hole.at < kept) {
                left_out += hole.bytes;
                passed += 1;
            }
            kept + left_out
        }
    }

    /// Converts places in the text into places in the kept bytes of the log.
    fn to_kept(&self) -> impl FnMut(u64) -> u64 + '_ {
        let mut at = 0_usize;
        let mut log = match self.encoding {
            TextEncoding::Utf16 { mark } => mark,
            _ => 0,
        };
        move |place| {
            let mark = match self.encoding {
                TextEncoding::AsGiven => return place,
                TextEncoding::Utf8Mark => return if place == 0 { 0 } else { place + 3 },
                TextEncoding::Utf16 { mark } => mark,
            };
            let place = place as usize;
            if place == 0 {
                return 0;
            }
            if place < at {
                (at, log) = (0, mark);
            }
            for &byte in &self.text[at..place] {
                // Continuation bytes add nothing; a character outside the basic plane has two units.
                log += match byte {
                    0x80..=0xbf => 0,
                    0xf0..=0xff => 4,
                    _ => 2,
                };
            }
            at = place;
            log
        }
    }

    /// The encoding in the XML declaration, if it is one of the single-byte family.
    pub(crate) fn declared_encoding(&self) -> Option<&'static Encoding> {
        let head = &self.text[..self.text.len().min(256)];
        let close = memchr::memmem::find(head, b"?>")?;
        let at = memchr::memmem::find(&head[..close], b"encoding")?;
        let rest = &head[at + 8..close];
        let quote = rest.iter().position(|&b| b == b'"' || b == b'\'')?;
        let end = rest[quote + 1..].iter().position(|&b| b == rest[quote])?;
        Encoding::for_label(&rest[quote + 1..quote + 1 + end])
    }
}

/// Byte order and length of the mark, if the bytes are UTF-16.
fn utf16(bytes: &[u8]) -> Option<(bool, usize)> {
    match bytes {
        [0xff, 0xfe, ..] => return Some((false, 2)),
        [0xfe, 0xff, ..] => return Some((true, 2)),
        _ => {}
    }
    // Without a mark: text is mostly ASCII, so nearly every other byte is zero, and the ones between are not.
    let head = &bytes[..bytes.len().min(4096) & !1];
    if head.len() < 16 {
        return None;
    }
    let pairs = head.len() / 2;
    let zeros = |offset: usize| head.iter().skip(offset).step_by(2).filter(|&&b| b == 0).count();
    let (even, odd) = (zeros(0), zeros(1));
    if odd * 10 >= pairs * 9 && even * 10 <= pairs {
        Some((false, 0))
    } else if even * 10 >= pairs * 9 && odd * 10 <= pairs {
        Some((true, 0))
    } else {
        None
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_digest_is_that_of_the_bytes_as_given() {
        let utf16: Vec<u8> = "\u{feff}<gpx>\u{e9}</gpx>"
            .encode_utf16()
            .flat_map(u16::to_le_bytes)
            .collect();
        let line = |length: usize| [&vec![b'x'; length][..], b"\n"].concat();
        let mut logs = vec![
            utf16,
            b"\xef\xbb\xbf<gpx/>".to_vec(),
            b"$GPRMC".to_vec(),
            line(300_000),
        ];
        // Lines round about the limit and what is kept beyond it, alone, behind others and before others.
        for length in (990..1300).step_by(7) {
            logs.push(line(length));
            logs.push([line(70_000), line(length), line(90)].concat());
        }
        let limits = LimitSettings {
            line_bytes: 1000,
            ..LimitSettings::default()
        };
        let mut cut = 0;
        for log in logs {
            let source = Source::read("log", &log[..], &limits).unwrap();
            assert_eq!(source.sha256(), digest(&log), "{} bytes", log.len());
            cut += usize::from(source.longest_hole().is_some());
        }
        assert!(cut > 20, "{cut}");
    }
}
