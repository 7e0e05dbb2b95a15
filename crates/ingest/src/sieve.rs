//! Keeps bytes in memory as they go by: all of them, except stretches longer than any line or element.
//!
//! A card that lost power may contain megabytes of zeros, and a hostile log one line of gigabytes. Such a stretch is not a
//! line, so if it is longer than the limit only its start and its last bytes are kept, enough for a reader to see that it is
//! too long and how it ends; the part in between is a [`Hole`].
//!
//! A stretch ends at a line end, where a tag begins or ends, and where a sentence begins. Holes have an even length, so that
//! text with two bytes per character stays in step.
//!
//! Exact: every byte is in the text or in one hole. Cost: one search for the first and the last end in each piece; memory
//! for the text that is kept.

use memchr::{memchr2, memchr3, memrchr2, memrchr3};

/// Bytes kept of a stretch beyond the limit, so that readers see it as too long.
const BEYOND_BYTES: usize = 64;
/// Bytes kept of its end: a closing quote or tag may be there.
const TAIL_BYTES: usize = 64;

/// Bytes that were not kept.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct Hole {
    /// Where in the kept bytes they are missing.
    pub(crate) at: u64,
    /// How many.
    pub(crate) bytes: u64,
}

/// What was kept.
#[derive(Debug)]
pub(crate) struct Sifted {
    /// The bytes that were kept.
    pub(crate) text: Vec<u8>,
    /// All bytes that went by.
    pub(crate) bytes: u64,
    /// What is missing from the text, in ascending order.
    pub(crate) holes: Vec<Hole>,
}

#[derive(Default)]
pub(crate) struct Sieve {
    text: Vec<u8>,
    bytes: u64,
    holes: Vec<Hole>,
    /// Bytes of the current stretch.
    stretch: usize,
    /// A longer stretch is cut.
    most: usize,
    /// The end of a stretch that is being cut, and how much of it was dropped.
    tail: Vec<u8>,
    dropped: u64,
}

impl Sieve {
    pub(crate) fn new(line_bytes: u64) -> Self {
        let most = usize::try_from(line_bytes).unwrap_or(usize::MAX);
        Self {
            most: most.saturating_add(BEYOND_BYTES),
            ..Self::default()
        }
    }

    /// Bytes kept so far, including what is known about holes.
    pub(crate) fn kept_bytes(&self) -> u64 {
        (self.text.len() + self.holes.len() * size_of::<Hole>()) as u64
    }

    /// The text so far.
    pub(crate) fn text(&self) -> &[u8] {
        &self.text
    }

    /// True if something is missing from the text, or held back.
    pub(crate) fn leaves_out(&self) -> bool {
        self.is_cutting() || !self.holes.is_empty()
    }

    /// Bytes that went by so far.
    pub(crate) fn bytes(&self) -> u64 {
        self.bytes
    }

    /// Takes the next bytes.
    pub(crate) fn push(&mut self, bytes: &[u8]) {
        self.bytes += bytes.len() as u64;
        // In pieces no longer than the limit, only a stretch from an earlier piece can exceed it within one.
        for piece in bytes.chunks(self.most) {
            self.piece(piece);
        }
    }

    fn piece(&mut self, mut piece: &[u8]) {
        if self.is_cutting() || self.stretch + piece.len() > self.most {
            let end = first_end(piece).unwrap_or(piece.len());
            self.go_on(&piece[..end]);
            piece = &piece[end..];
            if piece.is_empty() {
                return;
            }
            self.end_of_stretch();
        }
        self.text.extend_from_slice(piece);
        self.stretch = match last_end(piece) {
            Some(end) => piece.len() - end,
            None => self.stretch + piece.len(),
        };
    }

    fn is_cutting(&self) -> bool {
        self.stretch > self.most
    }

    /// More of a stretch that does not end here.
    fn go_on(&mut self, bytes: &[u8]) {
        let room = self.most.saturating_sub(self.stretch).min(bytes.len());
        self.text.extend_from_slice(&bytes[..room]);
        self.stretch = self.stretch.saturating_add(bytes.len());
        let rest = &bytes[room..];
        if rest.len() >= TAIL_BYTES {
            self.dropped += self.tail.len() as u64;
            self.tail.clear();
        }
        let from = rest.len().saturating_sub(TAIL_BYTES);
        self.dropped += from as u64;
        self.tail.extend_from_slice(&rest[from..]);
        if let Some(over) = self.tail.len().checked_sub(TAIL_BYTES) {
            self.tail.drain(..over);
            self.dropped += over as u64;
        }
    }

    /// Writes what was held back of a stretch.
    fn end_of_stretch(&mut self) {
        self.stretch = 0;
        let (mut tail, mut bytes) = (std::mem::take(&mut self.tail), self.dropped);
        self.dropped = 0;
        if bytes % 2 == 1 {
            // An odd length would put two-byte text out of step: drop one more byte of the tail.
            if tail.is_empty() {
                return;
            }
            tail.remove(0);
            bytes += 1;
        }
        if bytes > 0 {
            self.holes.push(Hole {
                at: self.text.len() as u64,
                bytes,
            });
        }
        self.text.extend_from_slice(&tail);
    }

    /// All bytes went by.
    pub(crate) fn close(mut self) -> Sifted {
        self.end_of_stretch();
        Sifted {
            text: self.text,
            bytes: self.bytes,
            holes: self.holes,
        }
    }
}

/// The first place where a stretch ends.
fn first_end(bytes: &[u8]) -> Option<usize> {
    let near = memchr3(b'\n', b'>', b'$', bytes);
    let far = near.map_or(bytes, |near| &bytes[..near]);
    memchr2(b'\r', b'<', far).or(near)
}

/// The last place where a stretch ends.
fn last_end(bytes: &[u8]) -> Option<usize> {
    let near = memrchr3(b'\n', b'>', b'$', bytes);
    let from = near.unwrap_or(0);
    memrchr2(b'\r', b'<', &bytes[from..]).map(|at| from + at).or(near)
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn sift(pieces: &[&[u8]], line_bytes: u64) -> Sifted {
        let mut sieve = Sieve::new(line_bytes);
        pieces.iter().for_each(|piece| sieve.push(piece));
        sieve.close()
    }

    /// The slow twin: cuts whole bytes at every end and shortens each stretch by itself.
    fn twin(bytes: &[u8], line_bytes: usize) -> (Vec<u8>, Vec<Hole>) {
        let (mut text, mut holes) = (Vec::new(), Vec::new());
        let mut from = 0;
        for at in 0..=bytes.len() {
            if at < bytes.len() && (at == from || !b"\n\r<>$".contains(&bytes[at])) {
                continue;
            }
            let stretch = &bytes[from..at];
            let (keep, total) = (line_bytes + BEYOND_BYTES, stretch.len());
            let hole = total.saturating_sub(keep + TAIL_BYTES).next_multiple_of(2);
            text.extend_from_slice(&stretch[..keep.min(total)]);
            if hole > 0 {
                holes.push(Hole {
                    at: text.len() as u64,
                    bytes: hole as u64,
                });
            }
            text.extend_from_slice(&stretch[total.min(keep + hole)..]);
            from = at;
        }
        (text, holes)
    }

    #[test]
    fn only_the_middle_of_a_long_stretch_is_left_out() {
        let zeros = vec![0; 1_000_001];
        let sifted = sift(&[b"a line\n", &zeros, b"\nthe next\n"], 100);
        assert_eq!(
            sifted.holes,
            [Hole {
                at: 6 + 164,
                bytes: 1_000_002 - 164 - 64
            }]
        );
        assert!(sifted.text.ends_with(b"\0\nthe next\n"));
        assert_eq!(sifted.bytes, 7 + 1_000_001 + 10);
    }

    proptest! {
        #[test]
        fn the_sieve_agrees_with_its_slow_twin_however_bytes_arrive(
            runs in proptest::collection::vec((0..6_usize, 0..700_usize), 0..12),
            cut in 1..900_usize,
            line_bytes in 1..300_usize,
        ) {
            let bytes: Vec<u8> = runs
                .iter()
                .flat_map(|(kind, length)| match kind {
                    0 => b"\n".to_vec(),
                    1 => b"\r".to_vec(),
                    2 => b"<tag>".to_vec(),
                    3 => b"$".to_vec(),
                    _ => vec![b'a' + *kind as u8; *length],
                })
                .collect();
            let pieces: Vec<&[u8]> = bytes.chunks(cut).collect();
            let sifted = sift(&pieces, line_bytes as u64);
            let (text, holes) = twin(&bytes, line_bytes);
            prop_assert_eq!(&sifted.text, &text);
            prop_assert_eq!(&sifted.holes, &holes);
            let left_out: u64 = sifted.holes.iter().map(|hole| hole.bytes).sum();
            prop_assert_eq!(sifted.text.len() as u64 + left_out, bytes.len() as u64);
        }
    }
}
