//! Ctrl-C ends the run with code 130, and never leaves half a file.
//!
//! Outside the moment of writing there is nothing to clean up, so the process ends at once. While files are being written,
//! the writer is only asked to stop: it drops what it has in hand, or finishes renaming, and then ends. A second Ctrl-C does
//! not wait for that.

use crate::exit::{CommandFailure, Exit};
use std::sync::atomic::{AtomicU8, Ordering};

const AT_EASE: u8 = 0;
const WRITING: u8 = 1;
const ASKED_TO_STOP: u8 = 2;

static STATE: AtomicU8 = AtomicU8::new(AT_EASE);

/// Listens for Ctrl-C.
pub(crate) fn install() {
    let on_interrupt = || {
        let was_writing = STATE
            .compare_exchange(WRITING, ASKED_TO_STOP, Ordering::SeqCst, Ordering::SeqCst)
            .is_ok();
        if !was_writing {
            leave();
        }
    };
    // If no handler can be installed, the default one ends the process and leaves at most a temporary file behind.
    let _ = ctrlc::set_handler(on_interrupt);
}

#[expect(
    clippy::exit,
    reason = "runs on the handler's own thread, while the main thread may be in the middle of anything"
)]
fn leave() -> ! {
    std::process::exit(Exit::Interrupted as i32)
}

/// Held while files are written.
pub(crate) struct Writing(());

impl Writing {
    pub(crate) fn begin() -> Self {
        STATE.store(WRITING, Ordering::SeqCst);
        Self(())
    }

    /// Stops here if the user asked for it.
    pub(crate) fn go_on(&self) -> Result<(), CommandFailure> {
        match STATE.load(Ordering::SeqCst) {
            ASKED_TO_STOP => Err(CommandFailure::Interrupted),
            _ => Ok(()),
        }
    }
}

impl Drop for Writing {
    fn drop(&mut self) {
        STATE.store(AT_EASE, Ordering::SeqCst);
    }
}
