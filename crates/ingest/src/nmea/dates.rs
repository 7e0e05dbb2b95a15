//! Which day was it?
//!
//! Only RMC and ZDA have a date. A fix whose own epoch has none gets it from its neighbours in the file, from the side with
//! the shorter silence, so that a date which comes late also applies backwards. From one fix to the next time runs forward:
//! a time of day that falls by more than an hour belongs to the next day (less is a clock being set).
//!
//! Dates are used in this order: those of epochs with a fix, and ZDA on its own; then those that a receiver sends while it
//! searches; then the date given by the user. A date before 1981 is a receiver's default: such a fix is dropped.
//!
//! **Week rollover.** A log is moved forward by 1024 weeks (7168 days) if it shows that this is needed: talkers of systems
//! that came in 2012 under a date before 2012, a step of just 1024 weeks inside the log, or a given date just 1024 weeks
//! later. Dates that are merely old stay.

use super::TimeOfDay;
use crate::clock::{DAY_US, ROLLOVER_DAYS, first_day, last_day, seconds};
use crate::order::{note_rollover, repair_rollover};
use crate::reading::Reading;

/// A separate date.
#[derive(Clone, Copy, Debug)]
pub(super) struct Anchor {
    /// Number of the epoch before or in which it stands.
    pub(super) id: u32,
    pub(super) of_day_us: i64,
    pub(super) day: i32,
    pub(super) trust: Trust,
}

/// Where a separate date was read.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Trust {
    /// A ZDA sentence without an epoch.
    Zda,
    /// A sentence of an epoch without a fix.
    Void,
}

/// The fixes whose time is known from their own epoch.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Dated {
    /// All fixes, and the time is set.
    All,
    /// Some fixes, or none.
    Some,
}

/// First day of the year in which NMEA 0183 version 4.10 came out.
const MODERN_DAY: i32 = 15_340;

/// An instant in microseconds since 1970, and the longest silence on the way from where a date was read.
type Reckoned = Option<(i64, i64)>;

/// Gives every fix its time. The error is the time of day of the first fix, if there is no date at all.
pub(super) fn resolve(
    reading: &mut Reading,
    clock: &[TimeOfDay],
    anchors: &[Anchor],
    given: Option<time::Date>,
    known: Dated,
    is_modern: bool,
) -> Result<(), i64> {
    let Some(first) = clock.first() else { return Ok(()) };
    if known == Dated::Some {
        reckon_all(reading, clock, anchors, given, first)?;
        reading.look_at_order();
    }
    if is_modern {
        repair_old_dates(reading);
    }
    repair_rollover(reading, given);
    Ok(())
}

/// Works out the time of every fix, from its own date or from those around it.
fn reckon_all(
    reading: &mut Reading,
    clock: &[TimeOfDay],
    anchors: &[Anchor],
    given: Option<time::Date>,
    first: &TimeOfDay,
) -> Result<(), i64> {
    let usable = |day: i32| (first_day()..last_day()).contains(&day);
    let dated = |one: &TimeOfDay| one.day.filter(|&day| usable(day));
    let has_own = clock.iter().any(|one| dated(one).is_some());
    let has_zda = anchors
        .iter()
        .any(|anchor| anchor.trust == Trust::Zda && usable(anchor.day));
    let mut anchors: Vec<Anchor> = anchors
        .iter()
        .filter(|anchor| usable(anchor.day) && (anchor.trust == Trust::Zda || !(has_own || has_zda)))
        .copied()
        .collect();
    anchors.sort_by_key(|anchor| anchor.id);
    if !has_own && anchors.is_empty() {
        let day = given.map(crate::clock::day_of).ok_or(first.of_day_us)?;
        anchors.push(Anchor {
            id: 0,
            of_day_us: first.of_day_us,
            day,
            trust: Trust::Void,
        });
    }
    let forward: Vec<Reckoned> = reckon(clock.iter(), anchors.iter(), dated, Direction::Forward).collect();
    let backward = reckon(
        clock.iter().rev(),
        anchors.iter().rev(),
        dated,
        Direction::Backward,
    );
    let forward = forward.into_iter().rev();
    for ((found, a), b) in reading.found.iter_mut().rev().zip(forward).zip(backward) {
        let instant = match (a, b) {
            (Some((a, silence_a)), Some((b, silence_b))) => {
                if silence_b < silence_a {
                    b
                } else {
                    a
                }
            }
            (Some((instant, _)), None) | (None, Some((instant, _))) => instant,
            (None, None) => first.of_day_us,
        };
        found.fix.time_s = instant as f64 / 1e6;
    }
    // A default date comes with a default time of day: such a fix has no time, and is dropped because of its date.
    for (one, found) in clock.iter().zip(&mut reading.found) {
        if let Some(day) = one.day.filter(|&day| !usable(day)) {
            found.fix.time_s = seconds(day, one.of_day_us);
        }
    }
    Ok(())
}

#[derive(Clone, Copy, PartialEq, Eq)]
enum Direction {
    Forward,
    Backward,
}

/// Walks over the fixes in one direction and works out each instant from the last known one.
fn reckon<'a>(
    fixes: impl Iterator<Item = &'a TimeOfDay>,
    anchors: impl Iterator<Item = &'a Anchor>,
    dated: impl Fn(&TimeOfDay) -> Option<i32>,
    way: Direction,
) -> impl Iterator<Item = Reckoned> {
    let mut anchors = anchors.peekable();
    let mut known: Reckoned = None;
    let mut from_anchor = false;
    fixes.map(move |one| {
        while let Some(anchor) = anchors.next_if(|anchor| match way {
            Direction::Forward => anchor.id <= one.id,
            Direction::Backward => anchor.id > one.id,
        }) {
            known = Some((i64::from(anchor.day) * DAY_US + anchor.of_day_us, 0));
            from_anchor = true;
        }
        if let Some(day) = dated(one) {
            known = Some((i64::from(day) * DAY_US + one.of_day_us, 0));
        } else if let Some((instant, silence)) = known {
            let next = if from_anchor {
                nearest(instant, one.of_day_us)
            } else {
                onward(instant, one.of_day_us, way)
            };
            known = Some((next, silence.max((next - instant).abs())));
        }
        from_anchor = false;
        known
    })
}

/// The instant of a time of day within twelve hours of another instant.
fn nearest(instant: i64, of_day_us: i64) -> i64 {
    let step = (of_day_us - instant.rem_euclid(DAY_US) + DAY_US / 2).rem_euclid(DAY_US) - DAY_US / 2;
    instant + step
}

/// The instant of a time of day after another instant (before it, on the way back), at most an hour on its other side.
fn onward(instant: i64, of_day_us: i64, way: Direction) -> i64 {
    const BACK_US: i64 = 3_600_000_000;
    let behind = match way {
        Direction::Forward => BACK_US,
        Direction::Backward => DAY_US - BACK_US,
    };
    let step = (of_day_us - instant.rem_euclid(DAY_US) + behind).rem_euclid(DAY_US) - behind;
    instant + step
}

/// Moves dates before 2012 forward in a log that cannot be that old.
fn repair_old_dates(reading: &mut Reading) {
    let limit_s = seconds(MODERN_DAY, 0);
    let first_s = seconds(first_day(), 0);
    let rollover_s = seconds(ROLLOVER_DAYS, 0);
    let mut shifted = 0;
    if reading.rising_s().is_some_and(|(first_s, _)| first_s >= limit_s) {
        return;
    }
    for one in &mut reading.found {
        if one.fix.time_s < first_s || one.fix.time_s >= limit_s {
            continue;
        }
        shifted += 1;
        while one.fix.time_s < limit_s {
            one.fix.time_s += rollover_s;
        }
    }
    if shifted > 0 {
        reading.look_at_order();
        note_rollover(reading, shifted);
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_modern_day_is_the_first_of_2012() {
        assert_eq!(crate::clock::day_words(MODERN_DAY), "2012-01-01");
    }

    #[test]
    fn a_time_of_day_is_put_within_twelve_hours_of_a_date() {
        let noon = 10 * DAY_US + DAY_US / 2;
        assert_eq!(nearest(noon, DAY_US / 2), noon);
        assert_eq!(nearest(10 * DAY_US + 5, DAY_US - 5), 10 * DAY_US - 5);
        assert_eq!(nearest(10 * DAY_US - 5, 5), 10 * DAY_US + 5);
    }

    #[test]
    fn between_fixes_time_runs_forward() {
        let evening = 10 * DAY_US + 20 * 3_600_000_000;
        let morning_us = 8 * 3_600_000_000 + 1_800_000_000;
        assert_eq!(
            onward(evening, morning_us, Direction::Forward),
            11 * DAY_US + morning_us
        );
        assert_eq!(
            onward(evening, 20 * 3_600_000_000 - 60_000_000, Direction::Forward),
            evening - 60_000_000
        );
        assert_eq!(
            onward(11 * DAY_US + morning_us, 20 * 3_600_000_000, Direction::Backward),
            evening
        );
    }
}
