//! Which gardens need a visit, in the terminal and in the operator's mail?

use crate::messages::{named, say};
use crate::words;
use std::fmt::Write;
use tussock_types::{AlarmState, Morning, MorningDelivery, MorningMended};

/// One line that sums it up.
pub fn summary(morning: &Morning) -> String {
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

/// A line for each delivery that failed.
pub(crate) fn deliveries(morning: &Morning) -> Vec<String> {
    let told = |one: &MorningDelivery| {
        say!(
            "your-delivery",
            gardens = one.gardens,
            count = say!("count-garden", count = one.expected as usize),
            since = words::plain(&one.since, 12)
        )
    };
    morning.deliveries.iter().map(told).collect()
}

/// A line for each alarm that this night's logs showed to be mended.
pub(crate) fn mended(morning: &Morning) -> Vec<String> {
    let told = |one: &MorningMended| {
        say!(
            "is-mended",
            garden = words::name(&one.garden),
            alarm = named("alarm", &one.alarm),
            since = words::plain(&one.since, 12),
            mended = words::plain(&one.mended, 12)
        )
    };
    morning.mended.iter().map(told).collect()
}

/// The morning as text: one line that sums it up, then the gardens in the order of what a visit gains, then what failed.
pub fn answer_morning(morning: &Morning) -> String {
    let mut text = summary(morning);
    text.push('\n');
    for line in deliveries(morning) {
        let _ = writeln!(text, "\n{line}");
    }
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
            let known = match reason.state {
                AlarmState::Open => String::new(),
                AlarmState::Acknowledged => say!(
                    "is-known",
                    said = reason
                        .said
                        .as_deref()
                        .map_or_else(|| "none".to_owned(), words::sentence)
                ),
            };
            let bring = named("bring", &reason.alarm);
            let _ = writeln!(text, "  {}{known} {bring}.", words::sentence(&reason.sentence));
        }
    }
    for (at, line) in mended(morning).into_iter().enumerate() {
        let _ = writeln!(text, "{}{line}", if at == 0 { "\n" } else { "" });
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
