//! Where does a line end? At a line feed, at a carriage return, or at both, but not inside a quoted cell.

use memchr::{memchr, memchr2};

/// A cell that opens a quote closes it within this many bytes: one without an end must not swallow the rest of a log.
const QUOTED_BYTES: usize = 1_000;

/// A line with its place; the line end is part of the place but not of the content.
#[derive(Clone, Copy)]
pub(crate) struct TextLine<'a> {
    pub(crate) start: usize,
    pub(crate) end: usize,
    pub(crate) content: &'a [u8],
    pub(crate) is_complete: bool,
}

/// All lines of a text, one after the other.
pub(crate) struct TextLines<'a> {
    text: &'a [u8],
    at: usize,
}

impl<'a> TextLines<'a> {
    pub(crate) fn new(text: &'a [u8]) -> Self {
        Self { text, at: 0 }
    }
}

impl<'a> Iterator for TextLines<'a> {
    type Item = TextLine<'a>;

    fn next(&mut self) -> Option<TextLine<'a>> {
        let start = self.at;
        let rest = self.text.get(start..).filter(|rest| !rest.is_empty())?;
        let mut length = end_from(rest, 0);
        if memchr(b'"', &rest[..length]).is_some() {
            length = past_quotes(rest, length);
        }
        let ending = match &rest[length..] {
            [] => 0,
            [b'\r', b'\n', ..] => 2,
            _ => 1,
        };
        self.at = start + length + ending;
        Some(TextLine {
            start,
            end: self.at,
            content: &rest[..length],
            is_complete: ending > 0,
        })
    }
}

/// The first line end from a place on, or the end of the text.
fn end_from(text: &[u8], from: usize) -> usize {
    memchr2(b'\n', b'\r', &text[from..]).map_or(text.len(), |at| from + at)
}

/// Where a line really ends that seems to end at `length` and contains quotes.
fn past_quotes(text: &[u8], mut length: usize) -> usize {
    let mut at = 0;
    while let Some(open) = memchr(b'"', &text[at..length]).map(|offset| at + offset) {
        at = open + 1;
        if open > 0 && !parts_cells(text[open - 1]) {
            continue;
        }
        let within = &text[..text.len().min(open + QUOTED_BYTES)];
        // A quote inside the cell is doubled.
        let close = loop {
            match memchr(b'"', &within[at..]).map(|offset| at + offset) {
                Some(quote) if within.get(quote + 1) == Some(&b'"') => at = quote + 2,
                other => break other,
            }
        };
        let Some(close) = close else {
            at = within.len().min(length);
            continue;
        };
        at = close + 1;
        if close >= length {
            if text.get(at).is_some_and(|&byte| !parts_cells(byte)) {
                // Another cell opens there, so this one never closed.
                return length;
            }
            length = end_from(text, at);
        }
    }
    length
}

fn parts_cells(byte: u8) -> bool {
    matches!(byte, b',' | b';' | b'\t' | b'\r' | b'\n')
}

#[cfg(test)]
mod tests {
    use super::*;

    fn contents(text: &str) -> Vec<&str> {
        TextLines::new(text.as_bytes())
            .map(|line| std::str::from_utf8(line.content).expect("text"))
            .collect()
    }

    #[test]
    fn line_ends_of_all_kinds_may_stand_in_one_text() {
        assert_eq!(contents("a\nb\rc\r\nd\n\re"), ["a", "b", "c", "d", "", "e"]);
        assert_eq!(contents("a\r"), ["a"]);
        assert_eq!(contents(""), [""; 0]);
    }

    #[test]
    fn a_line_end_in_a_quoted_cell_ends_no_line() {
        assert_eq!(
            contents("1,\"a\rb\r\nc \"\"d\"\"\",2\n3"),
            ["1,\"a\rb\r\nc \"\"d\"\"\",2", "3"]
        );
    }

    #[test]
    fn a_quote_that_is_never_closed_costs_no_other_line() {
        assert_eq!(contents("1,\"a\n2,\"b\"\n3"), ["1,\"a", "2,\"b\"", "3"]);
        assert_eq!(contents("1,5\" wide\n2,6\"\n3"), ["1,5\" wide", "2,6\"", "3"]);
        let far = format!("1,\"a\n{}\n2,\"", "x".repeat(2_000));
        assert_eq!(contents(&far).len(), 3);
    }

    #[test]
    fn lines_and_their_ends_are_the_whole_text() {
        let text = b"\"\r\"\",\"\n,\"x\r\ny\",\r\r\"";
        let mut at = 0;
        for line in TextLines::new(text) {
            assert_eq!(line.start, at);
            at = line.end;
        }
        assert_eq!(at, text.len());
    }
}
