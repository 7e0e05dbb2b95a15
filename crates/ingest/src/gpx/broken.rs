//! Where does reading continue if markup does not end where it should?
//!
//! One flipped bit can open a quote, a remark or an instruction that swallows every point after it. None of them may contain
//! an element of its own, so markup that has not ended where the next track, segment or point begins is broken, and reading
//! continues there:
//!
//! ```text
//! <trkpt lat="52.1" lon="5.1><time>...</time></trkpt>   <- a quote is gone: this point is lost
//! <trkpt lat="52.2" lon="5.2"><time>...</time></trkpt>  <- and this one is read
//! ```
//!
//! Remarks and character data may contain anything, including points that somebody took out. They are broken if they never
//! end, or if another of their kind begins before they do, with a track, segment or point in between.
//!
//! Known limits: elements with a namespace prefix (`<g:trkpt>`) are not searched for, so broken markup loses those too, up
//! to the next element without one. A document type counts as one remark.
//!
//! Cost: each search continues where the last one ended, so all of them together pass over the text once.

use memchr::{memchr3_iter, memmem};

/// The next place of a few bytes.
struct Next {
    finder: memmem::Finder<'static>,
    /// The answer is valid from here up to the place found.
    asked: usize,
    found: Option<usize>,
    is_known: bool,
}

impl Next {
    fn of(bytes: &'static [u8]) -> Self {
        Self {
            finder: memmem::Finder::new(bytes),
            asked: 0,
            found: None,
            is_known: false,
        }
    }

    /// The first place from `from` on.
    fn from(&mut self, text: &[u8], from: usize) -> Option<usize> {
        let holds = self.is_known && self.asked <= from && self.found.is_none_or(|found| from <= found);
        if !holds {
            let rest = text.get(from..).unwrap_or_default();
            self.found = self.finder.find(rest).map(|at| from + at);
            (self.asked, self.is_known) = (from, true);
        }
        self.found
    }
}

/// Looks ahead in one text.
pub(crate) struct Broken<'a> {
    text: &'a [u8],
    /// Begins tracks, segments and points alike.
    track: Next,
    remark: Next,
    remark_end: Next,
    data: Next,
    data_end: Next,
    instruction_end: Next,
    has_document_type: bool,
}

impl<'a> Broken<'a> {
    /// `track` is how tracks, segments and points begin.
    pub(crate) fn before(track: &'static [u8], text: &'a [u8]) -> Self {
        Self {
            text,
            track: Next::of(track),
            remark: Next::of(b"<!--"),
            remark_end: Next::of(b"-->"),
            data: Next::of(b"<![CDATA["),
            data_end: Next::of(b"]]>"),
            instruction_end: Next::of(b"?>"),
            has_document_type: false,
        }
    }

    /// Where to continue after markup that cannot be read.
    pub(crate) fn next_track(&mut self, at: usize) -> Option<usize> {
        self.track.from(self.text, at + 1)
    }

    /// Where to continue, if the markup that begins at a place is broken.
    pub(crate) fn until(&mut self, at: usize) -> Option<usize> {
        let rest = self.text.get(at..)?;
        if *rest.first()? != b'<' {
            return None;
        }
        let next = self.next_track(at)?;
        let is_whole = match rest {
            [_, b'!', b'-', b'-', ..] => {
                let (from, end) = (at + 4, self.remark_end.from(self.text, at + 4));
                end.is_some_and(|end| {
                    end < next || self.remark.from(self.text, from).is_none_or(|again| end < again)
                })
            }
            [_, b'!', b'[', ..] if rest.starts_with(b"<![CDATA[") => {
                let (from, end) = (at + 9, self.data_end.from(self.text, at + 9));
                end.is_some_and(|end| {
                    end < next || self.data.from(self.text, from).is_none_or(|again| end < again)
                })
            }
            [_, b'!', ..] => {
                let is_first = !self.has_document_type
                    && rest
                        .get(..9)
                        .is_some_and(|head| head.eq_ignore_ascii_case(b"<!DOCTYPE"));
                self.has_document_type |= is_first;
                is_first
            }
            [_, b'?', ..] => {
                let end = self.instruction_end.from(self.text, at + 2);
                end.is_some_and(|end| end < next)
            }
            _ => self.tag_ends(at, next),
        };
        (!is_whole).then_some(next)
    }

    /// True if a tag ends before a place; anything in quotes does not end it.
    fn tag_ends(&self, at: usize, before: usize) -> bool {
        let mut quote = None;
        for place in memchr3_iter(b'>', b'"', b'\'', &self.text[at..before]) {
            let byte = self.text[at + place];
            match quote {
                None if byte == b'>' => return true,
                None => quote = Some(byte),
                Some(open) if open == byte => quote = None,
                Some(_) => {}
            }
        }
        false
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn goes_on(text: &str) -> Option<&str> {
        Broken::before(b"<trk", text.as_bytes())
            .until(0)
            .map(|at| &text[at..])
    }

    #[test]
    fn whole_markup_is_left_alone() {
        for text in [
            "<a><trkpt>",
            "<a x=\">\" y='\"'/><trkpt>",
            "</a x=\"5\"><trkpt>",
            "<!-- a <trkpt> --><trkpt>",
            "<!-- a --><trkpt><!-- b -->",
            "<![CDATA[ <trkpt> ]]><trkpt>",
            "<?x y?><trkpt>",
            "<!DOCTYPE gpx [<!ENTITY a \"b\">]><trkpt>",
            "text <trkpt>",
            "<a \" no point comes any more",
        ] {
            assert_eq!(goes_on(text), None, "{text}");
        }
    }

    #[test]
    fn behind_broken_markup_reading_goes_on_at_the_next_point_segment_or_track() {
        for text in [
            "<a x=\"5>1</a>|<trkpt lat=\"5\">",
            "<a '>|<trkpt lat='5'>",
            "<a |<trkpt>",
            "<trkpt lat=\"5><time>1</time></trkpt></trkseg>|<trkseg><trkpt>",
            "<!-- never ends |<trkpt>",
            "<!-- |<trkpt> <!-- b --><trkpt>",
            "<![CDATA[ |<trkpt> ]>",
            "<![CDATA[ |<trkpt> <![CDATA[ ]]>",
            "<?trkpt>\n|<trkpt>",
            "<?trkpt>\n|<trkpt><?x?>",
            "<?>|<trkpt>",
            "<!ccuracy>3</accuracy>|<trkpt>",
            "<!-x-->|<trk>",
        ] {
            let (whole, behind) = (
                text.replace('|', ""),
                text.split_once('|').map(|(_, behind)| behind),
            );
            assert_eq!(goes_on(&whole), behind, "{text}");
        }
    }

    #[test]
    fn a_second_document_type_is_none() {
        let text = b"<!DOCTYPE a><!DOCTYPE b><trk>";
        let mut broken = Broken::before(b"<trk", text);
        assert_eq!(broken.until(0), None);
        assert_eq!(broken.until(12), Some(24));
    }

    proptest! {
        #[test]
        fn looking_on_finds_what_looking_anew_finds(text in "[<>!?tk-]{0,60}", mut places in proptest::collection::vec(0..60_usize, 1..20)) {
            places.sort_unstable();
            let mut next = Next::of(b"<t");
            for from in places {
                let anew = text.get(from..).and_then(|rest| rest.find("<t")).map(|at| from + at);
                prop_assert_eq!(next.from(text.as_bytes(), from), anew);
            }
        }
    }
}
