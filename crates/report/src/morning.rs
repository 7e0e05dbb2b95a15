//! Which gardens need a visit, in the terminal and in the operator's mail?

use crate::messages::say;
use crate::words;
use std::fmt::Write;
use tussock_types::Morning;

/// One line that says it all.
pub(crate) fn summary(morning: &Morning) -> String {
    let resting = match morning.resting {
        0 => String::new(),
        resting => say!("resting-resting", resting = resting),
    };
    say!(
        "night-visit-with-log",
        id = words::plain(&morning.night, 12),
        gardens = morning.gardens.len(),
        count = say!("count-garden", count = morning.known as usize),
        with_log = morning.with_log,
        resting = resting,
        count_2 = say!("count-thing", count = morning.failures.len())
    )
}

/// The morning as text: one line that says it all, then the gardens in the order of what a visit gains, then what failed.
pub fn answer_morning(morning: &Morning) -> String {
    let mut text = summary(morning);
    text.push('\n');
    for garden in &morning.gardens {
        let name = garden.name.as_deref().unwrap_or(&garden.garden);
        let also = if name == garden.garden {
            String::new()
        } else {
            format!(" ({})", words::name(&garden.garden))
        };
        let _ = writeln!(
            text,
            "\n{}{also}: {} a night to gain",
            words::name(name),
            words::area(garden.gain_m2)
        );
        for reason in &garden.reasons {
            let _ = writeln!(text, "  {}", words::sentence(&reason.sentence));
        }
    }
    if !morning.failures.is_empty() {
        text.push_str("\nFailed\n");
        for failure in &morning.failures {
            let _ = writeln!(
                text,
                "  {}: {} ({}): {}",
                words::name(&failure.garden),
                words::name(&failure.what),
                words::plain(&failure.reason, 20),
                words::sentence(&failure.detail)
            );
        }
    }
    text
}
