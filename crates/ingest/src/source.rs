//! Bytes of a log as they can be read: unpacked, and as text in which every ASCII character is one byte.
//!
//! - gzip and Zstandard are known by their first bytes, never by the name. A damaged end keeps what came before.
//! - UTF-16 (with or without byte order mark) becomes UTF-8; places are turned back into places of the log.
//! - Everything else stays as it is, byte for byte: sentences, tags and numbers are ASCII in all other encodings.
//!
//! Cost: one copy in memory (two for UTF-16), SHA-256 of the bytes as given.

use crate::error::IngestError;
use encoding_rs::Encoding;
use sha2::{Digest, Sha256};
use std::io::Read;
use tussock_types::LimitSettings;

/// A log in memory.
pub(crate) struct Source {
    /// What readers read.
    pub(crate) text: Vec<u8>,
    /// Hash of the bytes as given, hexadecimal.
    pub(crate) sha256: String,
    /// Bytes after unpacking, in the log's own encoding.
    pub(crate) bytes: u64,
    /// What was taken off or turned round to get the text.
    encoding: TextEncoding,
    /// The unpacked bytes end in the middle, and what the unpacker said.
    pub(crate) damaged: Option<String>,
}

/// How the log's bytes became the text.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum TextEncoding {
    AsGiven,
    /// A UTF-8 byte order mark was taken off.
    Utf8Mark,
    /// Turned from UTF-16 that began with a mark of so many bytes.
    Utf16 {
        mark: u64,
    },
}

/// Kinds of file that people pick by mistake, by their first bytes.
const OTHER_FILES: [(&[u8], &str); 8] = [
    (b"PK\x03\x04", "a ZIP archive (unpack it first)"),
    (b"\xfd7zXZ\x00", "XZ data (unpack it first)"),
    (b"BZh", "bzip2 data (unpack it first)"),
    (b"7z\xbc\xaf", "a 7-Zip archive (unpack it first)"),
    (b"%PDF", "a PDF document"),
    (b"\x89PNG", "a PNG picture"),
    (b"\xff\xd8\xff", "a JPEG picture"),
    (b"SQLite format 3", "an SQLite database"),
];

impl Source {
    pub(crate) fn read(name: &str, input: impl Read, limits: &LimitSettings) -> Result<Self, IngestError> {
        let given = read_up_to(name, input, limits.log_bytes, "log_bytes", "stored log")?;
        if given.is_empty() {
            return Err(IngestError::Empty { name: name.into() });
        }
        let sha256 = hexadecimal(&Sha256::digest(&given));
        for (magic, found) in OTHER_FILES {
            if given.starts_with(magic) {
                return Err(IngestError::NotALog {
                    name: name.into(),
                    found: found.into(),
                    byte: 0,
                });
            }
        }
        let (unpacked, damaged) = unpack(name, given, limits)?;
        if unpacked.is_empty() {
            return Err(IngestError::Empty { name: name.into() });
        }
        let bytes = unpacked.len() as u64;
        let mut source = Self {
            text: unpacked,
            sha256,
            bytes,
            encoding: TextEncoding::AsGiven,
            damaged,
        };
        source.make_text();
        Ok(source)
    }

    fn make_text(&mut self) {
        if self.text.starts_with(b"\xef\xbb\xbf") {
            self.text.drain(..3);
            self.encoding = TextEncoding::Utf8Mark;
            return;
        }
        let Some((big_endian, mark)) = utf16(&self.text) else {
            return;
        };
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
    }

    /// True when the places of the text are not those of the log.
    pub(crate) fn is_converted(&self) -> bool {
        self.encoding != TextEncoding::AsGiven
    }

    /// Turns places in the text, asked for in rising order, into places in the log. The mark and an odd last byte go to
    /// the neighbours at either end.
    pub(crate) fn to_log(&self) -> impl FnMut(u64) -> u64 + '_ {
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
            if place >= self.text.len() {
                return self.bytes;
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

    /// The XML declaration's encoding, where it is one of the single-byte family.
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

fn read_up_to(
    name: &str,
    input: impl Read,
    limit: u64,
    key: &'static str,
    what: &'static str,
) -> Result<Vec<u8>, IngestError> {
    let mut bytes = Vec::new();
    input
        .take(limit.saturating_add(1))
        .read_to_end(&mut bytes)
        .map_err(|source| IngestError::Read {
            name: name.into(),
            source,
        })?;
    if bytes.len() as u64 > limit {
        return Err(IngestError::Limit {
            name: name.into(),
            what,
            value: bytes.len() as u64,
            limit,
            key,
            byte: limit,
        });
    }
    Ok(bytes)
}

/// Unpacks gzip and Zstandard, several members one after the other among them.
fn unpack(
    name: &str,
    given: Vec<u8>,
    limits: &LimitSettings,
) -> Result<(Vec<u8>, Option<String>), IngestError> {
    let limit = limits.unpacked_bytes;
    let mut unpacked = Vec::new();
    let most = limit.saturating_add(1);
    let outcome = if given.starts_with(&[0x1f, 0x8b]) {
        flate2::read::MultiGzDecoder::new(&given[..])
            .take(most)
            .read_to_end(&mut unpacked)
    } else if given.starts_with(&[0x28, 0xb5, 0x2f, 0xfd]) {
        zstd::stream::read::Decoder::with_buffer(&given[..])
            .and_then(|unpacker| unpacker.take(most).read_to_end(&mut unpacked))
    } else {
        return Ok((given, None));
    };
    if unpacked.len() as u64 > limit {
        return Err(IngestError::Limit {
            name: name.into(),
            what: "unpacked log",
            value: unpacked.len() as u64,
            limit,
            key: "unpacked_bytes",
            byte: limit,
        });
    }
    match outcome {
        Ok(_) => Ok((unpacked, None)),
        Err(source) if unpacked.is_empty() => Err(IngestError::Unpack {
            name: name.into(),
            unpacked: 0,
            source,
        }),
        Err(source) => Ok((unpacked, Some(source.to_string()))),
    }
}

/// Byte order and length of the mark, where the bytes are UTF-16.
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

fn hexadecimal(bytes: &[u8]) -> String {
    use std::fmt::Write;
    bytes
        .iter()
        .fold(String::with_capacity(bytes.len() * 2), |mut text, byte| {
            let _ = write!(text, "{byte:02x}");
            text
        })
}
