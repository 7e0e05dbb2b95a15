//! What a worker calls, and the progress it is told meanwhile.
//!
//! Bytes come in through memory that is reserved for them first; answers stay where they are until the next call. The
//! numbers of kinds and outcomes are those in `page/worker.js`.
#![allow(unsafe_code)] // Names that a worker can call; no memory is touched by hand.

use crate::counter::{Answer, Counter, Failure, Kind, Request, Tell};
use std::sync::{LazyLock, Mutex, MutexGuard, PoisonError};

unsafe extern "C" {
    safe fn progress(words: *const u8, words_bytes: usize, done_fraction: f64);
    safe fn panicked(words: *const u8, words_bytes: usize);
}

const TELL: Tell = |words, done_fraction| progress(words.as_ptr(), words.len(), done_fraction);

/// The outcome of a call; its text is in the answer memory.
#[repr(u32)]
enum CallEnd {
    Answered = 0,
    Failed = 1,
    Made = 2,
}

#[derive(Default)]
struct Desk {
    counter: Counter,
    given: Vec<u8>,
    answer: Vec<u8>,
}

static DESK: LazyLock<Mutex<Desk>> = LazyLock::new(Mutex::default);

fn desk() -> MutexGuard<'static, Desk> {
    DESK.lock().unwrap_or_else(PoisonError::into_inner)
}

/// Called once, before anything else: a bug of ours is then reported to the page and ends this instance.
#[unsafe(no_mangle)]
extern "C" fn init() {
    std::panic::set_hook(Box::new(|fault| {
        let words = fault.to_string();
        panicked(words.as_ptr(), words.len());
    }));
}

/// Where this many bytes may be written.
#[unsafe(no_mangle)]
extern "C" fn room(bytes: usize) -> *mut u8 {
    let mut desk = desk();
    desk.given = vec![0; bytes];
    desk.given.as_mut_ptr()
}

/// The memory holds a file, followed by this many bytes of its name.
#[unsafe(no_mangle)]
extern "C" fn take(kind: u32, name_bytes: usize) -> u32 {
    let desk = &mut *desk();
    let given = std::mem::take(&mut desk.given);
    let (bytes, name) = given.split_at(given.len().saturating_sub(name_bytes));
    let taken = match Kind::of(kind) {
        Some(kind) => desk.counter.take(kind, &String::from_utf8_lossy(name), bytes),
        None => Ok(()),
    };
    desk.tell(taken.map(|()| None))
}

/// The memory holds a request, as JSON.
#[unsafe(no_mangle)]
extern "C" fn act() -> u32 {
    let desk = &mut *desk();
    let given = std::mem::take(&mut desk.given);
    let wish = serde_json::from_slice::<Request>(&given).map_err(Failure::from);
    let answer = wish.and_then(|wish| desk.counter.act(wish, TELL));
    desk.tell(answer.map(Some))
}

/// The place of the answer.
#[unsafe(no_mangle)]
extern "C" fn answer() -> *const u8 {
    desk().answer.as_ptr()
}

/// Its length.
#[unsafe(no_mangle)]
extern "C" fn answer_bytes() -> usize {
    desk().answer.len()
}

impl Desk {
    fn tell(&mut self, answer: Result<Option<Answer>, Failure>) -> u32 {
        let (outcome, bytes) = match answer {
            Ok(Some(Answer::Made(bytes))) => (CallEnd::Made, Ok(bytes)),
            Ok(answer) => (CallEnd::Answered, serde_json::to_vec(&answer)),
            Err(failure) => (CallEnd::Failed, serde_json::to_vec(&failure)),
        };
        self.answer = bytes.unwrap_or_default();
        outcome as u32
    }
}
