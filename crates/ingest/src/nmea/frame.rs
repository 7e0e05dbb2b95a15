//! Where do sentences begin and end in a stream of bytes?
//!
//! A sentence is `$` or `!`, an address of capital letters and digits, a comma, printable ASCII, and `*` with two
//! hexadecimal digits: the exclusive or of all characters between the two ends (NMEA 0183; "NMEA Revealed", gpsd project). A
//! checksum is verified if there is one; a line without one is accepted if it ends as a line should. Whatever lies between
//! sentences (binary frames, prose, zeros, a second `$`) is junk, and never becomes part of one.
//!
//! The standard's 82 characters are not a limit here: real receivers write longer sentences.

use crate::number::eight;
use memchr::memchr2;

/// The result of the checksum.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Checksum {
    /// It matches.
    Good,
    /// There is none, and the line ends as it should.
    Missing,
    /// It does not match.
    Bad,
    /// Broken off by another sentence or by bytes that are not text.
    Broken,
    /// The file ends in the middle.
    CutOff,
}

/// A stretch of the stream.
#[derive(Clone, Copy, Debug)]
pub(super) enum StreamPiece<'a> {
    /// Not part of any sentence.
    Junk {
        start: usize,
        end: usize,
        /// Nothing but line ends and blanks.
        blank: bool,
    },
    /// A sentence with the line end after it.
    Sentence {
        start: usize,
        end: usize,
        /// Between `$` and `*`, without either.
        body: &'a [u8],
        check: Checksum,
    },
}

impl StreamPiece<'_> {
    /// Where it begins.
    pub(super) fn start(&self) -> u64 {
        let (Self::Junk { start, .. } | Self::Sentence { start, .. }) = self;
        *start as u64
    }
}

/// Cuts a stream into pieces without gaps.
pub(super) struct Frames<'a> {
    text: &'a [u8],
    at: usize,
    /// Line, from 1, on which the next piece begins.
    line: u64,
}

impl<'a> Frames<'a> {
    pub(super) fn new(text: &'a [u8]) -> Self {
        Self { text, at: 0, line: 1 }
    }

    /// Line, from 1, on which the next piece begins.
    #[inline]
    pub(super) fn line(&self) -> u64 {
        self.line
    }
}

impl<'a> Iterator for Frames<'a> {
    type Item = StreamPiece<'a>;

    #[inline]
    fn next(&mut self) -> Option<StreamPiece<'a>> {
        let text = self.text;
        let from = self.at;
        if from >= text.len() {
            return None;
        }
        let mut search = from;
        let start = loop {
            let start = match text[search] {
                b'$' | b'!' => search,
                _ => match memchr2(b'$', b'!', &text[search..]) {
                    Some(offset) => search + offset,
                    None => break text.len(),
                },
            };
            if has_address(&text[start + 1..]) {
                break start;
            }
            search = start + 1;
            if search >= text.len() {
                break text.len();
            }
        };
        if start > from {
            self.at = start;
            let junk = &text[from..start];
            self.line += memchr::memchr_iter(b'\n', junk).count() as u64;
            let blank = junk.iter().all(u8::is_ascii_whitespace);
            return Some(StreamPiece::Junk {
                start: from,
                end: start,
                blank,
            });
        }
        let (end, body, check) = sentence(text, start, &mut self.line);
        self.at = end;
        Some(StreamPiece::Sentence {
            start,
            end,
            body,
            check,
        })
    }
}

/// Three to twelve capital letters and digits, a letter first, then a comma or an asterisk.
#[inline]
fn has_address(text: &[u8]) -> bool {
    // Nearly all are of this kind.
    if let Some(bytes) = eight(text, 0)
        && bytes[5] == b','
    {
        // The high bit of a byte holds its answer; beyond ASCII it may carry, but only upwards from a byte that is refused.
        let word = u64::from_le_bytes(bytes);
        let from = |low: u8, high: u8| {
            word.wrapping_add(ONES * u64::from(0x80 - low))
                & !word.wrapping_add(ONES * u64::from(0x7f - high))
        };
        let letters = from(b'A', b'Z');
        let fits = (letters | from(b'0', b'9')) & !word & HIGH;
        if fits & 0x80_8080_8080 == 0x80_8080_8080 && letters & 0x80 != 0 {
            return true;
        }
    }
    let length = text
        .iter()
        .take(13)
        .take_while(|b| b.is_ascii_uppercase() || b.is_ascii_digit())
        .count();
    (3..=12).contains(&length)
        && text[0].is_ascii_uppercase()
        && matches!(text.get(length), Some(b',' | b'*'))
}

/// What one look at a sentence shows.
#[derive(Debug, Default, PartialEq, Eq)]
struct Looked {
    /// Bytes before the first one that cannot be in a body: an asterisk, a dollar, or anything that is not printable ASCII.
    length: usize,
    /// Exclusive or of those.
    sum: u8,
}

const HIGH: u64 = 0x8080_8080_8080_8080;
const ONES: u64 = 0x0101_0101_0101_0101;

/// True if a byte cannot be in a body. Written so that compilers handle sixteen at once.
#[inline]
fn has_stop(bytes: &[u8; 16]) -> bool {
    let mut stops = 0;
    for &byte in bytes {
        // Beyond ASCII is below zero.
        stops |= u8::from((byte.cast_signed()) < 0x20)
            | u8::from(byte == 0x7f)
            | u8::from(byte == b'*')
            | u8::from(byte == b'$');
    }
    stops != 0
}

/// Looks at each byte once, up to the first one that cannot be in a body: sixteen at a time, the last ones eight at a time.
///
/// The high bit of a byte holds its answer. Sums may carry, but only upwards from a byte that ends the search: whatever is
/// below the first such byte is exact, and nothing above it counts.
#[inline]
fn look(rest: &[u8]) -> Looked {
    let (mut sums, mut at) = (0_u128, 0);
    while let Some(bytes) = rest
        .get(at..at + 16)
        .and_then(|bytes| <&[u8; 16]>::try_from(bytes).ok())
        && !has_stop(bytes)
    {
        sums ^= u128::from_le_bytes(*bytes);
        at += 16;
    }
    let mut sum = sums as u64 ^ (sums >> 64) as u64;
    let unlike = |word: u64, byte: u8| word ^ (ONES * u64::from(byte));
    while let Some(bytes) = eight(rest, at) {
        let word = u64::from_le_bytes(bytes);
        // Not ASCII, 0x7f, below a blank, an asterisk, a dollar.
        let stop = (word
            | word.wrapping_add(ONES)
            | word.wrapping_sub(ONES * 0x20)
            | unlike(word, b'*').wrapping_sub(ONES)
            | unlike(word, b'$').wrapping_sub(ONES))
            & HIGH;
        if stop != 0 {
            let count = stop.trailing_zeros() / 8;
            sum ^= word & ((1 << (8 * count)) - 1);
            at += count as usize;
            break;
        }
        sum ^= word;
        at += 8;
    }
    sum ^= sum >> 32;
    sum ^= sum >> 16;
    sum ^= sum >> 8;
    let mut looked = Looked {
        length: at,
        sum: sum as u8,
    };
    if rest.len() - at < 8 {
        look_at_end(rest, &mut looked);
    }
    looked
}

/// The last bytes of a text, one by one.
#[cold]
fn look_at_end(rest: &[u8], looked: &mut Looked) {
    while let Some(&byte) = rest.get(looked.length)
        && (0x20..0x7f).contains(&byte)
        && !matches!(byte, b'*' | b'$')
    {
        looked.sum ^= byte;
        looked.length += 1;
    }
}

/// The sentence that begins at `start`: where it ends, its body, and the result of its checksum. Line ends are counted.
#[inline]
fn sentence<'a>(text: &'a [u8], start: usize, line: &mut u64) -> (usize, &'a [u8], Checksum) {
    let rest = &text[start + 1..];
    let Looked { length, sum } = look(rest);
    let body = &rest[..length];
    let (after, check) = match rest.get(length) {
        Some(b'*') => match (rest.get(length + 1), rest.get(length + 2)) {
            (Some(&high), Some(&low)) => match (hex(high), hex(low)) {
                (Some(high), Some(low)) if high * 16 + low == sum => (length + 3, Checksum::Good),
                (Some(_), Some(_)) => (length + 3, Checksum::Bad),
                _ => (length + 1, Checksum::Bad),
            },
            _ => (rest.len(), Checksum::CutOff),
        },
        Some(b'\r' | b'\n') => (length, Checksum::Missing),
        None => (length, Checksum::CutOff),
        Some(_) => (length, Checksum::Broken),
    };
    let (mut after, mut check, mut body) = (after, check, body);
    if !matches!(check, Checksum::Good)
        && let Some(splice) = spliced(body)
    {
        (after, check, body) = (splice, Checksum::Broken, &body[..splice]);
    }
    if check == Checksum::CutOff {
        // Anything may follow an asterisk.
        let tail = rest.get(length..after).unwrap_or_default();
        *line += memchr::memchr_iter(b'\n', tail).count() as u64;
    }
    if check != Checksum::Broken {
        while let Some(byte @ (b'\r' | b'\n' | b' ' | b'\t')) = rest.get(after) {
            *line += u64::from(*byte == b'\n');
            after += 1;
        }
    }
    (start + 1 + after, body, check)
}

/// Where the last sentence inside a body with an invalid ending begins. Any before it have no end.
#[cold]
fn spliced(body: &[u8]) -> Option<usize> {
    memchr::memrchr_iter(b'!', body).find(|&at| at > 0 && has_address(&body[at + 1..]))
}

fn hex(digit: u8) -> Option<u8> {
    match digit {
        b'0'..=b'9' => Some(digit - b'0'),
        b'A'..=b'F' => Some(digit - b'A' + 10),
        b'a'..=b'f' => Some(digit - b'a' + 10),
        _ => None,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn pieces(text: &[u8]) -> Vec<(String, Option<Checksum>)> {
        let mut at = 0;
        let mut frames = Frames::new(text);
        let pieces = std::iter::from_fn(|| {
            let line = frames.line();
            let piece = frames.next()?;
            let before = &text[..piece.start() as usize];
            assert_eq!(
                line,
                1 + before.iter().filter(|byte| **byte == b'\n').count() as u64
            );
            Some(piece)
        })
        .map(|piece| match piece {
            StreamPiece::Junk { start, end, .. } => {
                assert_eq!(start, at);
                at = end;
                ("junk".to_string(), None)
            }
            StreamPiece::Sentence {
                start,
                end,
                body,
                check,
                ..
            } => {
                assert_eq!(start, at);
                at = end;
                (
                    String::from_utf8_lossy(&body[..body.len().min(5)]).into_owned(),
                    Some(check),
                )
            }
        })
        .collect();
        assert_eq!(at, text.len());
        pieces
    }

    /// The slow twin of [`look`].
    fn byte_by_byte(rest: &[u8]) -> Looked {
        let mut looked = Looked::default();
        look_at_end(rest, &mut looked);
        looked
    }

    #[test]
    fn one_look_agrees_with_byte_by_byte() {
        let mut state = 12345_u32;
        let mut next = || {
            state = state.wrapping_mul(1_664_525).wrapping_add(1_013_904_223);
            state >> 16
        };
        for length in 0..300 {
            let mut bytes: Vec<u8> = (0..length).map(|_| 0x20 + (next() % 0x5f) as u8).collect();
            for byte in &mut bytes {
                *byte = match *byte {
                    b'*' | b'$' | b'a'..=b'm' => b',',
                    other => other,
                };
            }
            assert_eq!(look(&bytes).length, length);
            assert_eq!(look(&bytes), byte_by_byte(&bytes));
            if length > 0 {
                let at = next() as usize % length;
                for byte in 0..=255 {
                    bytes[at] = byte;
                    assert_eq!(
                        look(&bytes),
                        byte_by_byte(&bytes),
                        "{byte:#x} at {at} of {length}"
                    );
                }
            }
        }
        let body = b"GPZDA,160012.71,11,03,2004,-1,00*7D\r\n";
        let expected = Looked {
            length: 32,
            sum: 0x7d,
        };
        assert_eq!(look(body), expected);
    }

    #[test]
    fn an_address_is_capital_letters_and_digits() {
        let slow = |text: &[u8]| {
            let length = text
                .iter()
                .take_while(|b| b.is_ascii_uppercase() || b.is_ascii_digit())
                .count();
            (3..=12).contains(&length)
                && text[0].is_ascii_uppercase()
                && matches!(text.get(length), Some(b',' | b'*'))
        };
        for place in 0..7 {
            for byte in 0..=255 {
                let mut text = *b"GP0GA,123456";
                text[place] = byte;
                assert_eq!(has_address(&text), slow(&text), "{text:?}");
                assert_eq!(has_address(&text[..7]), slow(&text[..7]), "{text:?}");
            }
        }
    }

    #[test]
    fn a_checksum_is_verified_when_present() {
        assert_eq!(
            pieces(b"$GPZDA,160012.71,11,03,2004,-1,00*7D\r\n"),
            [("GPZDA".into(), Some(Checksum::Good))]
        );
        assert_eq!(
            pieces(b"$GPZDA,160012.71,11,03,2004,-1,00*7d"),
            [("GPZDA".into(), Some(Checksum::Good))]
        );
        assert_eq!(
            pieces(b"$GPZDA,160012.71,11,03,2004,-1,00*7C\r\n"),
            [("GPZDA".into(), Some(Checksum::Bad))]
        );
        assert_eq!(
            pieces(b"$GPZDA,160012.71,11,03,2004,-1,00\r\n"),
            [("GPZDA".into(), Some(Checksum::Missing))]
        );
    }

    #[test]
    fn a_half_written_last_sentence_is_cut_off() {
        assert_eq!(
            pieces(b"$GPZDA,160012.71,11,03,20"),
            [("GPZDA".into(), Some(Checksum::CutOff))]
        );
        assert_eq!(
            pieces(b"$GPZDA,160012.71,11,03,2004,-1,00*\n"),
            [("GPZDA".into(), Some(Checksum::CutOff))]
        );
        assert_eq!(
            pieces(b"$GPZDA,160012.71,11,03,2004,-1,00*7"),
            [("GPZDA".into(), Some(Checksum::CutOff))]
        );
    }

    #[test]
    fn a_doubled_dollar_and_a_spliced_sentence_cost_only_what_is_broken() {
        let good = b"$GPZDA,160012.71,11,03,2004,-1,00*7D\r\n";
        let mut text = b"$$".to_vec();
        text.extend_from_slice(&good[1..]);
        assert_eq!(
            pieces(&text),
            [("junk".into(), None), ("GPZDA".into(), Some(Checksum::Good))]
        );
        let mut text = b"$GPGGA,1600".to_vec();
        text.extend_from_slice(good);
        assert_eq!(
            pieces(&text),
            [
                ("GPGGA".into(), Some(Checksum::Broken)),
                ("GPZDA".into(), Some(Checksum::Good))
            ]
        );
        let mut text = b"$GPGGA,1600!AIVDM,1,1,,B,177KQJ5000G?tO`K>RA1wUbN0TKH,0*5C\r\n".to_vec();
        text.extend_from_slice(good);
        assert_eq!(
            pieces(&text),
            [
                ("GPGGA".into(), Some(Checksum::Broken)),
                ("AIVDM".into(), Some(Checksum::Good)),
                ("GPZDA".into(), Some(Checksum::Good))
            ]
        );
    }

    #[test]
    fn binary_zeros_and_prose_between_sentences_are_junk() {
        let mut text = b"a note of 5 $ and more\n".to_vec();
        text.extend_from_slice(b"$GPZDA,160012.71,11,03,2004,-1,00*7D\r\n\0\0\0\xb5\x62$\x01\xff");
        text.extend_from_slice(b"$GPZDA,160012.71,11,03,2004,-1,00*7D\r$GPZDA,16\xff\xfe");
        assert_eq!(
            pieces(&text),
            [
                ("junk".into(), None),
                ("GPZDA".into(), Some(Checksum::Good)),
                ("junk".into(), None),
                ("GPZDA".into(), Some(Checksum::Good)),
                ("GPZDA".into(), Some(Checksum::Broken)),
                ("junk".into(), None),
            ]
        );
    }
}
