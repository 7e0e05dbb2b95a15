//! Can a log belong to the night that it names?
//!
//! A machine's clock may be wrong by years; one such night in the tables would be the newest, and everything else would be
//! old. So a night is history only if the time of its file and the time of this computer allow it. The later of the two is
//! used, because either may be behind. A night must not begin more than a day after that time (nobody logs tomorrow), nor
//! lie two years or more before it (a clock that was never set, or a week counter of ten bits that rolled over, IS-GPS-200).
//! The manifest may allow older logs (`oldest_log_days`), up to the 1024 weeks of that counter, for archives that are read
//! in after years.
//!
//! Limits: a clock that is a few months behind cannot be distinguished from a log that comes late. The time is an input.

use crate::night::{self, NightNumber};
use serde::{Deserialize, Serialize};
use tussock_types::GardenClock;

/// Allows for time zones, and clocks that are slightly off.
const TOLERANCE_S: f64 = 86_400.0;
const DAY_S: f64 = 86_400.0;
/// 1024 weeks: the ten bits of the week number that GPS satellites send.
pub(crate) const ROLLOVER_DAYS: i32 = 7168;
/// Older logs are set aside if the manifest says nothing: two years.
pub const USUAL_OLDEST_LOG_DAYS: i32 = 730;

/// What time it is, and when a night turns.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Clock {
    /// Now, seconds since 1970.
    pub now_unix_s: f64,
    /// Hour of the day at which a night ends and the next begins.
    pub night_turns_at_h: u8,
    /// Nights that lie this many days back or more are not history.
    #[serde(default = "usual_oldest_log_days")]
    pub oldest_log_days: i32,
}

const fn usual_oldest_log_days() -> i32 {
    USUAL_OLDEST_LOG_DAYS
}

/// Why a night is not history.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(crate) enum NightDoubt {
    /// It had not begun.
    NotBegun,
    /// No log is so old.
    LongAgo,
}

impl Clock {
    /// What speaks against a night of a log that was written at this time.
    pub(crate) fn doubt(
        self,
        night: NightNumber,
        zone: &GardenClock,
        modified_unix_ms: i64,
    ) -> Option<NightDoubt> {
        let start_s = night::start_unix_s(night, zone, self.night_turns_at_h);
        let later_s = self.now_unix_s.max(modified_unix_ms as f64 / 1000.0);
        if start_s > later_s + TOLERANCE_S {
            Some(NightDoubt::NotBegun)
        } else if start_s + f64::from(self.oldest_log_days) * DAY_S <= later_s + TOLERANCE_S {
            Some(NightDoubt::LongAgo)
        } else {
            None
        }
    }

    /// The last night that can have begun.
    pub fn latest_night(self) -> NightNumber {
        night::night_of(
            self.now_unix_s + TOLERANCE_S,
            &GardenClock::Fixed(0),
            self.night_turns_at_h,
        )
    }

    /// The night to which something that arrived then is booked; tonight, if that is impossible.
    pub fn landed(self, modified_unix_ms: i64, zone: &GardenClock) -> NightNumber {
        let landed_s = modified_unix_ms as f64 / 1000.0;
        let is_possible = (self.now_unix_s - f64::from(ROLLOVER_DAYS) * DAY_S
            ..=self.now_unix_s + TOLERANCE_S)
            .contains(&landed_s);
        let time_s = if is_possible { landed_s } else { self.now_unix_s };
        night::night_of(time_s, zone, self.night_turns_at_h)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const NOW: NightNumber = 20_574;
    const DAY_MS: i64 = 86_400_000;
    const UTC: GardenClock = GardenClock::Fixed(0);

    fn clock() -> Clock {
        Clock {
            now_unix_s: night::start_unix_s(NOW, &UTC, 12),
            night_turns_at_h: 12,
            oldest_log_days: USUAL_OLDEST_LOG_DAYS,
        }
    }

    #[test]
    fn a_night_is_believed_where_the_file_or_the_clock_allows_it() {
        let noon_ms = |night: NightNumber| i64::from(night) * DAY_MS + DAY_MS / 2;
        for (night, written, doubt) in [
            (NOW, NOW, None),
            (NOW + 1, NOW, None),
            (NOW + 2, NOW, Some(NightDoubt::NotBegun)),
            (NOW + 365, NOW, Some(NightDoubt::NotBegun)),
            // The computer's clock is behind.
            (NOW + 365, NOW + 365, None),
            // The file's clock is behind: a card whose clock begins in 1980.
            (NOW, 3652, None),
            (NOW + 2, 3652, Some(NightDoubt::NotBegun)),
            // Late, however late it is.
            (NOW - 700, NOW, None),
            (NOW - 728, NOW, None),
            (NOW - 730, NOW, Some(NightDoubt::LongAgo)),
            (NOW - 700, NOW + 365, Some(NightDoubt::LongAgo)),
            (NOW - 7168, NOW, Some(NightDoubt::LongAgo)),
            (10_824, NOW, Some(NightDoubt::LongAgo)),
            (0, 0, Some(NightDoubt::LongAgo)),
        ] {
            assert_eq!(
                clock().doubt(night, &UTC, noon_ms(written)),
                doubt,
                "{night} {written}"
            );
        }
        // Half a day to the east, it begins half a day earlier.
        let doubt = |night, zone_s| clock().doubt(night, &GardenClock::Fixed(zone_s), 0);
        assert_eq!(doubt(NOW + 2, 0), Some(NightDoubt::NotBegun));
        assert_eq!(doubt(NOW + 1, -43_200), Some(NightDoubt::NotBegun));
        assert_eq!(doubt(NOW + 1, 43_200), None);
        // An archive that the manifest allows, up to the counter's end.
        let archive = Clock {
            oldest_log_days: ROLLOVER_DAYS,
            ..clock()
        };
        assert_eq!(archive.doubt(NOW - 7166, &UTC, 0), None);
        assert_eq!(archive.doubt(NOW - 7168, &UTC, 0), Some(NightDoubt::LongAgo));
    }

    #[test]
    fn what_landed_at_no_possible_time_is_booked_to_tonight() {
        assert_eq!(clock().latest_night(), NOW + 1);
        for (landed_ms, night) in [
            (i64::from(NOW) * DAY_MS, NOW - 1),
            (i64::from(NOW - 400) * DAY_MS + DAY_MS / 2, NOW - 400),
            (0, NOW),
            (i64::from(NOW + 400) * DAY_MS, NOW),
            (i64::MAX, NOW),
            (i64::MIN, NOW),
        ] {
            assert_eq!(clock().landed(landed_ms, &UTC), night, "{landed_ms}");
        }
    }
}
