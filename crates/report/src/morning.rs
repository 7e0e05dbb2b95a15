//! Which gardens need a visit, in the terminal and in the operator's mail?

use crate::messages::Voice;
use crate::messages::{message, named, said, say, value};
use crate::words;
use std::fmt::Write;
use tussock_types::{AlarmState, AlarmTold, Morning, MorningDelivery, MorningMended, MorningReason};

/// One line that sums it up.
pub fn summary(morning: &Morning, voice: Voice) -> String {
    say!(
        voice,
        "night-visit-with-log",
        id = words::plain(&morning.night, 12),
        gardens = morning.gardens.len(),
        count = say!(voice, "count-garden", count = morning.known as usize),
        with_log = morning.with_log,
        resting = morning.resting,
        count_2 = say!(voice, "count-thing", count = morning.failures.len())
    )
}

/// What an alarm says; nothing but the alarm's own sentence where its figures are not known.
pub fn alarm_sentence(reason: &MorningReason, voice: Voice) -> String {
    let Some(told) = &reason.told else {
        return words::sentence(&reason.sentence);
    };
    let share = |fraction: f64| words::whole_percent(voice, fraction);
    let mut count = reason.nights;
    let (mut usual, mut because) = (String::new(), None);
    let (id, found) = match told {
        AlarmTold::LessVisited {
            found_fraction,
            usual_fraction,
        } => {
            usual = share(*usual_fraction);
            ("alarm-less-visited", share(*found_fraction))
        }
        AlarmTold::Hours { found_h, usual_h } => {
            usual = words::hours(voice, *usual_h);
            ("alarm-hours", words::hours(voice, *found_h))
        }
        AlarmTold::ReceiverWorse { found_m, usual_m } => {
            usual = words::whole_cm(voice, *usual_m);
            ("alarm-receiver-worse", words::whole_cm(voice, *found_m))
        }
        AlarmTold::Stuck { found_min, why } => {
            because = why.as_ref();
            ("alarm-stuck-spot", words::whole_minutes(voice, *found_min))
        }
        AlarmTold::Missed { found_m2, why } => {
            because = why.as_ref();
            ("alarm-missed-pocket", words::area(voice, *found_m2))
        }
        AlarmTold::Promise {
            visited_fraction,
            promised_fraction,
            days,
        } => {
            (usual, count) = (share(*promised_fraction), *days);
            ("alarm-promise", share(*visited_fraction))
        }
        AlarmTold::Absent => ("alarm-absent", String::new()),
    };
    let machine = match reason.what.as_str() {
        "" => "none".to_owned(),
        machine => words::name(machine),
    };
    let because = because.map(|why| said(voice, why)).unwrap_or_default();
    let values = [
        ("found", value(&found)),
        ("usual", value(&usual)),
        ("why", value(&because)),
        ("machine", value(&machine)),
        ("since", value(&words::plain(&reason.since, 12))),
        ("value", value(&reason.alarm)),
        ("nights", value(&count)),
        ("count", value(&count)),
    ];
    // Nothing stands behind the colon where no reason is known.
    let sentence = message(voice, id, &values);
    sentence.trim_end_matches([' ', '\u{a0}', ':']).to_owned()
}

/// A line for each delivery that failed.
pub(crate) fn deliveries(voice: Voice, morning: &Morning) -> Vec<String> {
    let told = |one: &MorningDelivery| {
        say!(
            voice,
            "your-delivery",
            gardens = one.gardens,
            count = say!(voice, "count-garden", count = one.expected as usize),
            since = words::plain(&one.since, 12)
        )
    };
    morning.deliveries.iter().map(told).collect()
}

/// A line for each alarm that this night's logs showed to be mended.
pub(crate) fn mended(voice: Voice, morning: &Morning) -> Vec<String> {
    let told = |one: &MorningMended| {
        say!(
            voice,
            "is-mended",
            garden = words::name(&one.garden),
            alarm = named(voice, "alarm", &one.alarm),
            since = words::plain(&one.since, 12),
            mended = words::plain(&one.mended, 12)
        )
    };
    morning.mended.iter().map(told).collect()
}

/// The morning as text: one line that sums it up, then the gardens in the order of what a visit gains, then what failed.
pub fn answer_morning(morning: &Morning, voice: Voice) -> String {
    let mut text = summary(morning, voice);
    text.push('\n');
    for line in deliveries(voice, morning) {
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
            voice,
            "garden-gain",
            garden = words::name(name) + &also,
            area = words::area(voice, garden.gain_m2)
        );
        let _ = writeln!(text, "\n{gain}");
        for reason in &garden.reasons {
            let known = match reason.state {
                AlarmState::Open => String::new(),
                AlarmState::Acknowledged => say!(
                    voice,
                    "is-known",
                    said = reason
                        .said
                        .as_deref()
                        .map_or_else(|| "none".to_owned(), words::sentence)
                ),
            };
            let bring = named(voice, "bring", &reason.alarm);
            let _ = writeln!(text, "  {}{known} {bring}.", alarm_sentence(reason, voice));
        }
    }
    for (at, line) in mended(voice, morning).into_iter().enumerate() {
        let _ = writeln!(text, "{}{line}", if at == 0 { "\n" } else { "" });
    }
    if !morning.failures.is_empty() {
        let _ = writeln!(text, "\n{}", say!(voice, "failed"));
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
