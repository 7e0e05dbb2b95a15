//! When may the machine work?
//!
//! Working hours are written per weekday in local time. A weekday that is not mentioned is unknown, not a day of rest.

use crate::HoursSettings;

const DAY_MIN: u32 = 24 * 60;

impl HoursSettings {
    /// The spans of one weekday, 0 for Monday to 6 for Sunday; `None` if the settings do not mention it.
    pub fn of_weekday(&self, weekday: u32) -> Option<&[String]> {
        match weekday % 7 {
            0 => self.monday.as_deref(),
            1 => self.tuesday.as_deref(),
            2 => self.wednesday.as_deref(),
            3 => self.thursday.as_deref(),
            4 => self.friday.as_deref(),
            5 => self.saturday.as_deref(),
            _ => self.sunday.as_deref(),
        }
    }

    /// What each minute of a week is, starting on Monday at 00:00 local time.
    pub fn week(&self) -> Vec<Duty> {
        let mut week = Vec::with_capacity(7 * DAY_MIN as usize);
        for weekday in 0..7 {
            let spans: Option<Vec<(u32, u32)>> = self
                .of_weekday(weekday)
                .map(|spans| spans.iter().filter_map(|span| day_span_min(span)).collect());
            week.extend((0..DAY_MIN).map(|minute| match &spans {
                None => Duty::Unknown,
                Some(spans) if spans.iter().any(|(start, end)| (*start..*end).contains(&minute)) => {
                    Duty::Work
                }
                Some(_) => Duty::Rest,
            }));
        }
        week
    }
}

/// What the settings say about a minute.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Duty {
    /// Nothing.
    Unknown,
    /// The machine may work.
    Work,
    /// The machine rests.
    Rest,
}

/// Parses working hours such as `08:00-12:30` into minutes after midnight of their start and end; `None` for another form.
/// The end may be 24:00.
pub fn day_span_min(text: &str) -> Option<(u32, u32)> {
    let (start, end) = text.trim().split_once('-')?;
    let minutes = |clock: &str| {
        let (hour, minute) = clock.trim().split_once(':')?;
        let is_plain =
            |part: &str| (1..=2).contains(&part.len()) && part.bytes().all(|byte| byte.is_ascii_digit());
        if !is_plain(hour) || !is_plain(minute) || minute.len() != 2 {
            return None;
        }
        let (hour, minute): (u32, u32) = (hour.parse().ok()?, minute.parse().ok()?);
        let total = hour * 60 + minute;
        (minute < 60 && total <= 24 * 60).then_some(total)
    };
    Some((minutes(start)?, minutes(end)?))
}
