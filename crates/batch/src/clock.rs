//! Can a log be of the night that it names?
//!
//! A machine's clock may lie by years; one such night in the tables would be the newest, and everything else old. So a night is
//! history only where the time of its file and that of this computer allow it, the later of the two, since either may be
//! behind: not when it begins more than a day after it (nobody logs tomorrow), nor when it lies 1024 weeks or more before it (a
//! week counter of ten bits that rolled over, IS-GPS-200, or a clock that was never set).
//!
//! Limits: a clock that is some months behind cannot be told from a log that comes late. The time is an input.

use crate::night::{self, NightNumber};
use serde::{Deserialize, Serialize};

/// Zones, and clocks that are a little off.
const TOLERANCE_S: f64 = 86_400.0;
/// 1024 weeks: the ten bits of the week number that GPS satellites send.
const ROLLOVER_S: f64 = 7168.0 * 86_400.0;

/// What time it is, and when a night turns.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Clock {
    /// Now, seconds since 1970.
    pub now_unix_s: f64,
    /// Hour of the day at which a night ends and the next begins.
    pub night_turns_at_h: u8,
}

/// Why a night is no history.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(crate) enum NightDoubt {
    /// It had not begun.
    NotBegun,
    /// No log is so old.
    LongAgo,
}

impl Clock {
    /// What speaks against a night of a log that was written then.
    pub(crate) fn doubt(self, night: NightNumber, zone_s: i32, modified_unix_ms: i64) -> Option<NightDoubt> {
        let start_s = night::start_unix_s(night, zone_s, self.night_turns_at_h);
        let later_s = self.now_unix_s.max(modified_unix_ms as f64 / 1000.0);
        if start_s > later_s + TOLERANCE_S {
            Some(NightDoubt::NotBegun)
        } else if start_s + ROLLOVER_S <= later_s + TOLERANCE_S {
            Some(NightDoubt::LongAgo)
        } else {
            None
        }
    }

    /// The last night that can have begun.
    pub fn latest_night(self) -> NightNumber {
        night::night_of(self.now_unix_s + TOLERANCE_S, 0, self.night_turns_at_h)
    }

    /// The night to which something is booked that landed then; tonight, where that cannot be.
    pub fn landed(self, modified_unix_ms: i64, zone_s: i32) -> NightNumber {
        let landed_s = modified_unix_ms as f64 / 1000.0;
        let is_possible = (self.now_unix_s - ROLLOVER_S..=self.now_unix_s + TOLERANCE_S).contains(&landed_s);
        let time_s = if is_possible { landed_s } else { self.now_unix_s };
        night::night_of(time_s, zone_s, self.night_turns_at_h)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const NOW: NightNumber = 20_574;
    const DAY_MS: i64 = 86_400_000;

    fn clock() -> Clock {
        Clock {
            now_unix_s: night::start_unix_s(NOW, 0, 12),
            night_turns_at_h: 12,
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
            // The file's is: a card whose clock begins in 1980.
            (NOW, 3652, None),
            (NOW + 2, 3652, Some(NightDoubt::NotBegun)),
            // Late, however late.
            (NOW - 7000, NOW, None),
            (NOW - 7168, NOW, Some(NightDoubt::LongAgo)),
            (NOW - 7166, NOW, None),
            (NOW - 7000, NOW + 365, Some(NightDoubt::LongAgo)),
            (10_824, NOW, Some(NightDoubt::LongAgo)),
            (0, 0, Some(NightDoubt::LongAgo)),
        ] {
            assert_eq!(
                clock().doubt(night, 0, noon_ms(written)),
                doubt,
                "{night} {written}"
            );
        }
        // Half a day to the east it begins half a day earlier.
        assert_eq!(clock().doubt(NOW + 2, 0, 0), Some(NightDoubt::NotBegun));
        assert_eq!(clock().doubt(NOW + 1, -43_200, 0), Some(NightDoubt::NotBegun));
        assert_eq!(clock().doubt(NOW + 1, 43_200, 0), None);
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
            assert_eq!(clock().landed(landed_ms, 0), night, "{landed_ms}");
        }
    }
}
