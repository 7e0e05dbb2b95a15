//! Which fixes does a file of moving features contain?
//!
//! `datetimes` and `coordinates` of one object belong together (a moving point), and so do `datetimes` in the properties and
//! `coordinates` in the geometry of one feature (a trajectory): OGC 19-045r3. Longitude comes first. Times are RFC 3339, or
//! milliseconds since 1970.
//!
//! The text is read token by token, so a file that breaks off keeps what it contains.
//!
//! Cost: one pass; the lists of one feature in memory.

use crate::clock::{self, TimeFault, Zone};
use crate::error::IngestError;
use crate::number::decimal;
use crate::pairs::{Geographic, Lists, Pairs, Placed, Timed};
use crate::reading::Reading;
use tussock_types::{LimitSettings, Said, SkipReason};

/// True if there are times of a moving feature near the top.
pub(crate) fn holds_datetimes(head: &[u8]) -> bool {
    matches!(head.trim_ascii_start().first(), Some(b'{' | b'['))
        && memchr::memmem::find(head, b"\"datetimes\"").is_some()
        && memchr::memmem::find(head, b"\"coordinates\"").is_some()
}

/// A piece of the text.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Token<'a> {
    Open,
    Close,
    Colon,
    /// The text between quotes, with escapes as written.
    Text(&'a [u8]),
    /// A number, true, false, null, or anything else.
    Word(&'a [u8]),
}

struct Tokens<'a> {
    text: &'a [u8],
    at: usize,
}

impl<'a> Tokens<'a> {
    /// The next token and where it begins. `None` at the end, or if a text never ends.
    fn next(&mut self) -> Option<(Token<'a>, u64)> {
        let is_apart = |byte: u8| byte.is_ascii_whitespace() || byte == b',';
        self.at += self.text[self.at..].iter().position(|&byte| !is_apart(byte))?;
        let start = self.at;
        let rest = &self.text[start..];
        let (token, length) = match rest[0] {
            b'{' | b'[' => (Token::Open, 1),
            b'}' | b']' => (Token::Close, 1),
            b':' => (Token::Colon, 1),
            b'"' => {
                let length = text_length(rest)?;
                (Token::Text(&rest[1..length - 1]), length)
            }
            _ => {
                let ends = |byte: &u8| is_apart(*byte) || b"{}[]:\"".contains(byte);
                let length = rest.iter().position(ends).unwrap_or(rest.len());
                (Token::Word(&rest[..length]), length)
            }
        };
        self.at = start + length;
        Some((token, start as u64))
    }
}

/// Bytes of a text in quotes, both included.
fn text_length(text: &[u8]) -> Option<usize> {
    let mut at = 1;
    loop {
        at += memchr::memchr2(b'"', b'\\', text.get(at..)?)?;
        if text[at] == b'"' {
            return Some(at + 1);
        }
        at += 2;
    }
}

/// An object or array that is open.
#[derive(Default)]
struct Scope<'a> {
    key: &'a [u8],
    times: Vec<Timed>,
    places: Vec<Placed>,
}

struct Features<'a> {
    name: &'a str,
    limits: &'a LimitSettings,
    tokens: Tokens<'a>,
    scopes: Vec<Scope<'a>>,
    pairs: Pairs,
    features: u64,
}

/// Reads all moving points.
pub(crate) fn read(name: &str, text: &[u8], limits: &LimitSettings) -> Result<Reading, IngestError> {
    let mut features = Features {
        name,
        limits,
        tokens: Tokens { text, at: 0 },
        scopes: Vec::new(),
        pairs: Pairs::new(text.len()),
        features: 0,
    };
    features.run()?;
    let what = format!("{} moving points", features.features);
    Ok(features.pairs.finish(&what, text.len()))
}

impl<'a> Features<'a> {
    fn run(&mut self) -> Result<(), IngestError> {
        let (mut key, mut last): (&[u8], &[u8]) = (b"", b"");
        while let Some((token, start)) = self.tokens.next() {
            match token {
                Token::Open => {
                    self.open(std::mem::take(&mut key), start)?;
                }
                Token::Close => {
                    self.close(Lists::Whole);
                    key = b"";
                }
                Token::Colon => key = std::mem::take(&mut last),
                Token::Text(text) => {
                    if matches!(key, b"name" | b"srsName") {
                        self.check_system(text, start)?;
                    }
                    (key, last) = (b"", text);
                }
                Token::Word(word) => {
                    if self.scopes.is_empty() {
                        let end = start + word.len() as u64;
                        self.pairs.skip(start, end, SkipReason::NotOfTheFormat, 1);
                    }
                    (key, last) = (b"", b"");
                }
            }
        }
        let (from, to) = (self.tokens.at as u64, self.tokens.text.len() as u64);
        if self.tokens.text[self.tokens.at..]
            .iter()
            .any(|byte| !byte.is_ascii_whitespace())
        {
            self.pairs.skip(from, to, SkipReason::Truncated, 1);
        }
        if !self.scopes.is_empty() {
            self.pairs.reading.notice(0, Said::FileNotClosed {});
        }
        while !self.scopes.is_empty() {
            self.close(Lists::CutOff);
        }
        Ok(())
    }

    fn open(&mut self, key: &'a [u8], start: u64) -> Result<(), IngestError> {
        let depth = u32::try_from(self.scopes.len()).unwrap_or(u32::MAX);
        crate::check_depth(self.name, depth, self.limits, start)?;
        match key {
            b"datetimes" => {
                let times = self.times(start)?;
                self.pend(|scope| &mut scope.times, times, Pairs::alone);
            }
            b"coordinates" => {
                let places = self.places(start)?;
                self.pend(|scope| &mut scope.places, places, Pairs::without_time);
            }
            _ => self.scopes.push(Scope {
                key,
                ..Scope::default()
            }),
        }
        Ok(())
    }

    /// Keeps a list until its other half comes; one that waited in vain belongs to nothing.
    fn pend<T>(
        &mut self,
        of: impl for<'b> Fn(&'b mut Scope<'a>) -> &'b mut Vec<T>,
        list: Vec<T>,
        in_vain: impl Fn(&mut Pairs, &T),
    ) {
        let waited = match self.scopes.last_mut() {
            Some(scope) => std::mem::replace(of(scope), list),
            None => list,
        };
        waited.iter().for_each(|one| in_vain(&mut self.pairs, one));
    }

    fn close(&mut self, lists: Lists) {
        let Some(scope) = self.scopes.pop() else { return };
        match (&scope.times[..], &scope.places[..]) {
            ([], []) => {}
            ([], places) if scope.key == b"geometry" && !self.scopes.is_empty() => {
                self.pend(|scope| &mut scope.places, places.to_vec(), Pairs::without_time);
            }
            (times, []) if scope.key == b"properties" && !self.scopes.is_empty() => {
                self.pend(|scope| &mut scope.times, times.to_vec(), Pairs::alone);
            }
            (times, []) => times.iter().for_each(|time| self.pairs.alone(time)),
            ([], places) => places.iter().for_each(|place| self.pairs.without_time(place)),
            (times, places) => {
                self.features += 1;
                self.pairs.lists(times, places, lists);
            }
        }
    }

    /// The elements of the open array: where each begins, and its text.
    fn elements(&mut self, start: u64) -> Result<Vec<(u64, &'a [u8])>, IngestError> {
        let mut elements: Vec<(u64, &[u8])> = Vec::new();
        let mut depth = 0;
        while let Some((token, at)) = self.tokens.next() {
            match token {
                Token::Close if depth == 0 => break,
                Token::Close => depth -= 1,
                _ if depth == 0 => elements.push((at, b"")),
                _ => {}
            }
            depth += usize::from(token == Token::Open);
            if let Some((from, content)) = elements.last_mut() {
                *content = &self.tokens.text[*from as usize..self.tokens.at];
            }
            if elements.len().is_multiple_of(1024) {
                self.check(elements.len(), start)?;
            }
        }
        Ok(elements)
    }

    fn times(&mut self, start: u64) -> Result<Vec<Timed>, IngestError> {
        let time_of = |content: &[u8]| match content {
            [b'"', text @ .., b'"'] => clock::instant(text),
            number => decimal(number)
                .ok_or(TimeFault::Malformed)
                .and_then(|number| clock::in_range(number.value / 1e3, Zone::Stated)),
        };
        let elements = self.elements(start)?.into_iter();
        Ok(elements
            .map(|(start, content)| Timed {
                start,
                end: start + content.len() as u64,
                time: time_of(content),
            })
            .collect())
    }

    /// The positions of an array; none for areas and for a single position.
    fn places(&mut self, start: u64) -> Result<Vec<Placed>, IngestError> {
        let elements = self.elements(start)?;
        let is_position = |content: &[u8]| content.starts_with(b"[") && !content[1..].contains(&b'[');
        if !elements.iter().any(|(_, content)| is_position(content)) {
            return Ok(Vec::new());
        }
        let place_of = |content: &'a [u8]| {
            let numbers = content.strip_prefix(b"[")?.strip_suffix(b"]")?;
            Geographic::of(numbers.split(|&byte| byte == b','))
        };
        Ok(elements
            .into_iter()
            .map(|(start, content)| Placed {
                start,
                end: start + content.len() as u64,
                place: place_of(content),
            })
            .collect())
    }

    fn check(&self, waiting: usize, byte: u64) -> Result<(), IngestError> {
        let waiting = waiting
            + self
                .scopes
                .iter()
                .map(|scope| scope.times.len() + scope.places.len())
                .sum::<usize>();
        self.pairs
            .check(self.name, self.tokens.text, waiting, self.limits, byte)
    }

    /// Refuses positions in a system other than longitude and latitude, if the file names one.
    fn check_system(&self, system: &[u8], byte: u64) -> Result<(), IngestError> {
        let system = String::from_utf8_lossy(system);
        let code = system.rsplit([':', '/']).next().unwrap_or_default();
        let is_other = code
            .parse::<u32>()
            .is_ok_and(|code| ![4326, 4979, 4258].contains(&code));
        if system.to_ascii_uppercase().contains("EPSG") && is_other {
            return Err(IngestError::NotALog {
                name: self.name.into(),
                found: format!(
                    "MF-JSON in the reference system {} (convert it to longitude and latitude, EPSG:4326)",
                    crate::ledger::excerpt(system.as_bytes())
                ),
                byte,
            });
        }
        Ok(())
    }
}
