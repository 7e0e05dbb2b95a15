//! Fetching: limits, digest and unpacking in one pass, in pieces.

use crate::error::IngestError;
use crate::sieve::{Sieve, Sifted};
use sha2::{Digest, Sha256};
use std::io::{self, BufRead, BufReader, Cursor, ErrorKind, Read};
use tussock_types::LimitSettings;

/// Number of bytes fetched at once.
const PIECE_BYTES: usize = 1 << 16;
/// Logs that unpack to less than this are small whatever their ratio.
const RATIO_FROM_BYTES: u64 = 16 << 20;

/// Kinds of file that people choose by mistake, by their first bytes.
const OTHER_FILES: &[(&[u8], &str)] = &[
    (b"PK\x03\x04", "a ZIP archive (unpack it first)"),
    (b"\xfd7zXZ\x00", "XZ data (unpack it first)"),
    (b"BZh", "bzip2 data (unpack it first)"),
    (b"7z\xbc\xaf", "a 7-Zip archive (unpack it first)"),
    (b"%PDF", "a PDF document"),
    (b"\x89PNG", "a PNG picture"),
    (b"\xff\xd8\xff", "a JPEG picture"),
    (b"SQLite format 3", "an SQLite database"),
    #[cfg(not(feature = "zstd"))]
    (&ZSTANDARD, "Zstandard data (unpack it first)"),
];

/// First bytes of a gzip member and of a Zstandard frame (RFC 1952, RFC 8878).
const GZIP: [u8; 2] = [0x1f, 0x8b];
const ZSTANDARD: [u8; 4] = [0x28, 0xb5, 0x2f, 0xfd];

/// Unpacks several members or frames one after the other.
enum Unpacker<R: BufRead> {
    Gzip(flate2::bufread::MultiGzDecoder<R>),
    #[cfg(feature = "zstd")]
    Zstandard(Box<zstd::stream::read::Decoder<'static, R>>),
}

impl<R: BufRead> Unpacker<R> {
    fn of(head: &[u8], packed: R) -> io::Result<Self> {
        Ok(match head {
            #[cfg(feature = "zstd")]
            head if head.starts_with(&ZSTANDARD) => {
                Self::Zstandard(Box::new(zstd::stream::read::Decoder::with_buffer(packed)?))
            }
            _ => Self::Gzip(flate2::bufread::MultiGzDecoder::new(packed)),
        })
    }

    fn get_ref(&self) -> &R {
        match self {
            Self::Gzip(unpacker) => unpacker.get_ref(),
            #[cfg(feature = "zstd")]
            Self::Zstandard(unpacker) => unpacker.get_ref(),
        }
    }
}

impl<R: BufRead> Read for Unpacker<R> {
    fn read(&mut self, buffer: &mut [u8]) -> io::Result<usize> {
        match self {
            Self::Gzip(unpacker) => unpacker.read(buffer),
            #[cfg(feature = "zstd")]
            Self::Zstandard(unpacker) => unpacker.read(buffer),
        }
    }
}

/// The result of fetching.
pub(super) struct Fetched {
    pub(super) sifted: Sifted,
    /// `None` if the text contains every byte as given: its digest is then that of the log.
    pub(super) sha256: Option<String>,
    pub(super) damaged: Option<String>,
}

/// The bytes as given: counted, hashed if the text differs, and stopped at the limit.
struct Tap<R> {
    inner: R,
    sha256: Option<Sha256>,
    bytes: u64,
    most_bytes: u64,
    /// Why it stopped. Unpackers wrap errors, so it is kept here.
    fault: Option<FetchFault>,
}

enum FetchFault {
    TooLarge,
    Read(io::Error),
}

impl<R: Read> Read for Tap<R> {
    fn read(&mut self, buffer: &mut [u8]) -> io::Result<usize> {
        if self.fault.is_some() {
            return Err(ErrorKind::Other.into());
        }
        // One byte beyond the limit shows that there are more.
        let room = room(self.most_bytes, self.bytes, buffer.len());
        match self.inner.read(&mut buffer[..room]) {
            Ok(count) => {
                if let Some(sha256) = &mut self.sha256 {
                    sha256.update(&buffer[..count]);
                }
                self.bytes += count as u64;
                if self.bytes > self.most_bytes {
                    self.fault = Some(FetchFault::TooLarge);
                    return Err(ErrorKind::Other.into());
                }
                Ok(count)
            }
            Err(error) if error.kind() == ErrorKind::Interrupted => Err(error),
            Err(error) => {
                self.fault = Some(FetchFault::Read(error));
                Err(ErrorKind::Other.into())
            }
        }
    }
}

impl<R> Tap<R> {
    /// The reason why it stopped, as an error of this log.
    fn check(&mut self, name: &str) -> Result<(), IngestError> {
        match self.fault.take() {
            None => Ok(()),
            Some(FetchFault::TooLarge) => Err(IngestError::Limit {
                name: name.into(),
                what: "stored log",
                value: self.bytes,
                limit: self.most_bytes,
                key: "log_bytes",
                byte: self.most_bytes,
            }),
            Some(FetchFault::Read(source)) => Err(IngestError::Read {
                name: name.into(),
                byte: self.bytes,
                source,
            }),
        }
    }
}

/// How much of a buffer may be filled, including one byte beyond the limit.
fn room(most: u64, so_far: u64, buffer: usize) -> usize {
    usize::try_from(most.saturating_sub(so_far).saturating_add(1)).map_or(buffer, |room| room.min(buffer))
}

/// Reads once, ignoring interruptions.
fn read(input: &mut impl Read, buffer: &mut [u8]) -> io::Result<usize> {
    loop {
        match input.read(buffer) {
            Err(error) if error.kind() == ErrorKind::Interrupted => {}
            other => return other,
        }
    }
}

/// Fetches all bytes.
pub(super) fn fetch(name: &str, input: impl Read, limits: &LimitSettings) -> Result<Fetched, IngestError> {
    let mut tap = Tap {
        inner: input,
        sha256: None,
        bytes: 0,
        most_bytes: limits.log_bytes,
        fault: None,
    };
    let mut head = [0; 16];
    let mut length = 0;
    while length < head.len() {
        let count = read(&mut tap, &mut head[length..]).unwrap_or(0);
        tap.check(name)?;
        if count == 0 {
            break;
        }
        length += count;
    }
    let head = &head[..length];
    if head.is_empty() {
        return Err(IngestError::Empty { name: name.into() });
    }
    for &(magic, found) in OTHER_FILES {
        if head.starts_with(magic) {
            return Err(IngestError::NotALog {
                name: name.into(),
                found: found.into(),
                byte: 0,
            });
        }
    }
    let mut sieve = Sieve::new(limits.line_bytes);
    let damaged = if head.starts_with(&GZIP) || head.starts_with(&ZSTANDARD) {
        tap.sha256 = Some(Sha256::new_with_prefix(head));
        unpack(name, head, &mut tap, &mut sieve, limits)?
    } else {
        sieve.push(head);
        let mut piece = vec![0; PIECE_BYTES];
        loop {
            let count = read(&mut tap, &mut piece).unwrap_or(0);
            tap.check(name)?;
            if count == 0 {
                break None;
            }
            let before = sieve.text().len();
            sieve.push(&piece[..count]);
            if tap.sha256.is_none() && sieve.leaves_out() {
                // From here on the text differs from the log.
                let sha256 = Sha256::new_with_prefix(&sieve.text()[..before]);
                tap.sha256 = Some(sha256.chain_update(&piece[..count]));
            }
            crate::check_memory(name, sieve.kept_bytes(), limits, sieve.bytes())?;
        }
    };
    let sifted = sieve.close();
    if sifted.bytes == 0 {
        return Err(IngestError::Empty { name: name.into() });
    }
    Ok(Fetched {
        sifted,
        sha256: tap.sha256.map(|sha256| hexadecimal(&sha256.finalize())),
        damaged,
    })
}

/// Unpacks gzip and Zstandard. Returns what is wrong with the end.
fn unpack<R: Read>(
    name: &str,
    head: &[u8],
    tap: &mut Tap<R>,
    sieve: &mut Sieve,
    limits: &LimitSettings,
) -> Result<Option<String>, IngestError> {
    let packed = BufReader::with_capacity(PIECE_BYTES, Cursor::new(head).chain(&mut *tap));
    let mut unpacker = Unpacker::of(head, packed).map_err(|source| IngestError::Unpack {
        name: name.into(),
        unpacked: 0,
        source,
    })?;
    let mut piece = vec![0; PIECE_BYTES];
    let damage = loop {
        let room = room(limits.unpacked_bytes, sieve.bytes(), PIECE_BYTES);
        match read(&mut unpacker, &mut piece[..room]) {
            Ok(0) => break None,
            Ok(count) => sieve.push(&piece[..count]),
            Err(error) => break Some(error),
        }
        check_unpacked(
            name,
            sieve.bytes(),
            unpacker.get_ref().get_ref().get_ref().1.bytes,
            limits,
        )?;
        crate::check_memory(name, sieve.kept_bytes(), limits, sieve.bytes())?;
    };
    drop(unpacker);
    tap.check(name)?;
    match damage {
        None => Ok(None),
        Some(source) if sieve.bytes() == 0 => Err(IngestError::Unpack {
            name: name.into(),
            unpacked: 0,
            source,
        }),
        Some(error) => {
            // The digest covers all bytes, including those after the damage.
            while read(tap, &mut piece).is_ok_and(|count| count > 0) {}
            tap.check(name)?;
            Ok(Some(error.to_string()))
        }
    }
}

fn check_unpacked(name: &str, unpacked: u64, packed: u64, limits: &LimitSettings) -> Result<(), IngestError> {
    let refuse = |what, value, limit, key| {
        Err(IngestError::Limit {
            name: name.into(),
            what,
            value,
            limit,
            key,
            byte: unpacked.min(limits.unpacked_bytes),
        })
    };
    if unpacked > limits.unpacked_bytes {
        return refuse("unpacked log", unpacked, limits.unpacked_bytes, "unpacked_bytes");
    }
    let ratio = unpacked / packed.max(1);
    if unpacked > RATIO_FROM_BYTES && ratio > limits.unpacked_ratio {
        let what = "unpacked over stored bytes";
        return refuse(what, ratio, limits.unpacked_ratio, "unpacked_ratio");
    }
    Ok(())
}

/// The SHA-256 digest of bytes, hexadecimal, by which an input or an output is recognised again.
pub fn digest(bytes: &[u8]) -> String {
    hexadecimal(&Sha256::digest(bytes))
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
