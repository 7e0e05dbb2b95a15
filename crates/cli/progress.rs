//! A sign of life on stderr for a waiting person: only on a terminal, and only for work that takes more than a second.

use kdam::{Bar, BarBuilder, BarExt, term::Writer};
use std::io::{IsTerminal, Write};
use std::sync::Mutex;

/// Quick work shows nothing.
const QUIET_FOR_S: f32 = 1.0;
const FULL: usize = 1000;

/// A bar that appears when it is needed.
pub(crate) struct Progress {
    bar: Option<Mutex<Shown>>,
}

struct Shown {
    bar: Bar,
    is_visible: bool,
}

impl Progress {
    pub(crate) fn new() -> Self {
        let bar = std::io::stderr().is_terminal().then(|| {
            BarBuilder::default()
                .total(FULL)
                .delay(QUIET_FOR_S)
                .mininterval(0.1)
                .dynamic_ncols(true)
                .leave(false)
                .bar_format("{desc suffix=' '}{animation} {percentage:3.0} % after {elapsed}")
                .writer(Writer::Stderr)
                .build()
        });
        let bar = bar.and_then(Result::ok).map(|bar| {
            Mutex::new(Shown {
                bar,
                is_visible: false,
            })
        });
        Self { bar }
    }

    /// What is being done, and how much of it is behind us.
    pub(crate) fn tell(&self, what: &str, done_fraction: f64) {
        let Some(Ok(mut shown)) = self.bar.as_ref().map(Mutex::lock) else {
            return;
        };
        shown.bar.set_description(what);
        // One short of full, because a full bar would be drawn even for quick work.
        let done = (done_fraction.clamp(0.0, 1.0) * FULL as f64) as usize;
        if matches!(shown.bar.update_to(done.clamp(1, FULL - 1)), Ok(true)) {
            shown.is_visible = true;
        }
    }
}

impl Drop for Progress {
    fn drop(&mut self) {
        if let Some(Ok(mut shown)) = self.bar.as_ref().map(Mutex::lock)
            && shown.is_visible
        {
            // Nothing depends on this: a terminal that has gone needs no clearing.
            let _ = shown.bar.clear();
            let _ = std::io::stderr().write_all(b"\r");
        }
    }
}
