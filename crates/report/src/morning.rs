//! Which gardens need a visit, in the terminal and in the operator's mail?

use crate::messages::{named, say};
use crate::words;
use std::fmt::Write;
use tussock_types::{AlarmState, AlarmTold, Morning, MorningDelivery, MorningMended, MorningReason};

/// One line that says it all.
pub fn summary(morning: &Morning) -> String {
    say!(
        "night-visit-with-log",
        id = words::plain(&morning.night, 12),
        gardens = morning.gardens.len(),
        count = say!("count-garden", count = morning.known as usize),
        with_log = morning.with_log,
        resting = morning.resting,
        count_2 = say!("count-thing", count = morning.failures.len())
    )
}

/// What an alarm says; nothing but the alarm's own sentence where its figures are not known.
pub fn alarm_sentence(reason: &MorningReason) -> String {
    let Some(told) = &reason.told else {
        return words::sentence(&reason.sentence);
    };
    let since = words::plain(&reason.since, 12);
    let nights = reason.nights;
    match told {
        AlarmTold::LessVisited {
            found_fraction,
            usual_fraction,
        } => say!(
            "alarm-less-visited",
            found = words::whole_percent(*found_fraction),
            usual = words::whole_percent(*usual_fraction),
            since = since
        ),
        AlarmTold::Hours { found_h, usual_h } => say!(
            "alarm-hours",
            value = reason.alarm,
            found = words::hours(*found_h),
            usual = words::hours(*usual_h),
            since = since
        ),
        AlarmTold::ReceiverWorse { found_m, usual_m } => say!(
            "alarm-receiver-worse",
            found = words::whole_cm(*found_m),
            usual = words::whole_cm(*usual_m),
            since = since
        ),
        AlarmTold::Stuck { found_min, why } => say!(
            "alarm-stuck-spot",
            nights = nights,
            found = words::whole_minutes(*found_min),
            since = since,
            why = why
        ),
        AlarmTold::Missed { found_m2, why } => say!(
            "alarm-missed-pocket",
            nights = nights,
            found = words::area(*found_m2),
            since = since,
            why = why
        ),
        AlarmTold::Promise {
            visited_fraction,
            promised_fraction,
            days,
        } => say!(
            "alarm-promise",
            found = words::whole_percent(*visited_fraction),
            usual = words::whole_percent(*promised_fraction),
            count = *days,
            since = since
        ),
        AlarmTold::Absent => say!(
            "alarm-absent",
            machine = match reason.what.as_str() {
                "" => "none".to_owned(),
                machine => words::name(machine),
            },
            nights = nights,
            since = since
        ),
    }
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

/// The morning as text: one line that says it all, then the gardens in the order of what a visit gains, then what failed.
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
        let gain = say!(
            "garden-gain",
            garden = words::name(name) + &also,
            area = words::area(garden.gain_m2)
        );
        let _ = writeln!(text, "\n{gain}");
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
            let _ = writeln!(text, "  {}{known} {bring}.", alarm_sentence(reason));
        }
    }
    for (at, line) in mended(morning).into_iter().enumerate() {
        let _ = writeln!(text, "{}{line}", if at == 0 { "\n" } else { "" });
    }
    if !morning.failures.is_empty() {
        let _ = writeln!(text, "\n{}", say!("failed"));
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
