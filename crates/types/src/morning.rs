//! What the operator reads in the morning.

use crate::{Estimate, Said};
use serde::{Deserialize, Serialize};

/// One morning: which gardens need a visit, and since when.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Morning {
    /// Version of this layout.
    pub schema_version: u32,
    /// Version of the tool.
    pub tool_version: String,
    /// Date of the night that is over, `2026-05-01`.
    pub night: String,
    /// Gardens in the store.
    pub known: u64,
    /// Gardens whose log of this night is there.
    pub with_log: u64,
    /// Gardens that rest: they raise no alarm.
    pub resting: u64,
    /// Gardens that need a visit, those to which it brings most first; those whose alarms are all acknowledged stand last.
    pub gardens: Vec<GardenMorning>,
    /// Nights whose logs so many gardens lack at once that it is their delivery, not the gardens.
    pub deliveries: Vec<MorningDelivery>,
    /// Gardens all of whose alarms are muted.
    pub muted: u64,
    /// Alarms that this night's logs showed to be mended.
    pub mended: Vec<MorningMended>,
    /// What failed in this night and the one before.
    pub failures: Vec<MorningFailure>,
}

/// A garden that needs a visit.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct GardenMorning {
    /// Its name in the store.
    pub garden: String,
    /// Its name in the settings.
    pub name: Option<String>,
    /// Date of its night that is over, `2026-05-01`.
    pub night: String,
    /// Lawn that would be driven over each night, and is not.
    pub gain_m2: f64,
    /// What it is ranked by: the gain, half as much more where the promise is broken, and up to half as much more by the time that
    /// it has been open, full after fourteen days.
    pub worth_m2: f64,
    /// Days since the first night of its oldest alarm, that night included.
    pub days_open: u64,
    /// Rings of its lawn, east and north; none where the plan gave none.
    pub outline_m: Vec<Vec<(f64, f64)>>,
    /// Its lawn.
    pub lawn_m2: Option<f64>,
    /// What is wrong, the most important first.
    pub reasons: Vec<MorningReason>,
    /// Part of the lawn that was driven over within the promised days.
    pub visited_within_days_fraction: Option<f64>,
    /// Promised part.
    pub promised_fraction: Option<f64>,
    /// Promised days.
    pub promised_days: Option<f64>,
    /// Its last two weeks, oldest first.
    pub nights: Vec<MorningNight>,
    /// Dates of those two weeks, oldest first, nights without a log among them.
    pub window: Vec<String>,
}

macro_rules! alarms {
    ($($(#[$about:meta])* $alarm:ident $word:literal),+ $(,)?) => {
        /// What kind of trouble.
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
        pub enum Alarm {
            $($(#[$about])* #[serde(rename = $word)] $alarm,)+
        }

        impl Alarm {
            /// All of them.
            pub const ALL: &[Self] = &[$(Self::$alarm),+];

            /// The word for it in tables and JSON.
            pub const fn word(self) -> &'static str {
                match self { $(Self::$alarm => $word),+ }
            }
        }
    };
}

alarms! {
    /// A missed pocket that persists.
    MissedPocket "missed_pocket",
    /// A place that catches the machine night after night.
    StuckSpot "stuck_spot",
    /// It drives fewer hours than it did.
    LostHours "lost_hours",
    /// Less of the lawn is visited than was usual.
    LessVisited "less_visited",
    /// An expected log did not come.
    Absent "absent",
    /// Positions are worse than they were.
    ReceiverWorse "receiver_worse",
    /// Longer without usable positions than before.
    Silences "silences",
    /// Less of the lawn was driven over within the promised days than was promised.
    Promise "promise",
}

impl Alarm {
    /// The alarm of a word.
    pub fn parse(word: &str) -> Option<Self> {
        Self::ALL.iter().find(|alarm| alarm.word() == word).copied()
    }
}

/// What the operator has said to an alarm.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum AlarmState {
    /// Nothing yet.
    Open,
    /// That it is known.
    Acknowledged,
}

/// One thing that is wrong.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct MorningReason {
    /// What kind.
    pub alarm: Alarm,
    /// What it is about: identity of a pocket, a spot, a machine; empty for the whole garden.
    pub what: String,
    /// First night of it, `2026-05-01`.
    pub since: String,
    /// Nights in which it showed.
    pub nights: u64,
    /// Lawn that would be driven over each night without it.
    pub gain_m2: f64,
    /// What the operator has said to it.
    pub state: AlarmState,
    /// Why it was acknowledged.
    pub said: Option<String>,
    /// Where it is: latitude and longitude of a pocket or a spot.
    pub at_deg: Option<(f64, f64)>,
    /// One sentence, in English.
    pub sentence: String,
    /// What the sentence says, so that it can be said in other words.
    #[serde(skip)]
    pub told: Option<AlarmTold>,
}

/// What raised an alarm: found in the last night, and usual before it.
#[derive(Clone, Debug, PartialEq)]
pub enum AlarmTold {
    /// Less of the lawn driven over than is usual in as many hours.
    LessVisited {
        /// Visited fraction of the last night.
        found_fraction: f64,
        /// Visited fraction that is usual.
        usual_fraction: f64,
    },
    /// Hours of driving, fewer than usual, or without positions, more than usual.
    Hours {
        /// Hours of the last night.
        found_h: f64,
        /// Hours that are usual.
        usual_h: f64,
    },
    /// Positions err by more than usual.
    ReceiverWorse {
        /// Error of the last night.
        found_m: f64,
        /// Error that is usual.
        usual_m: f64,
    },
    /// Time lost at one place.
    Stuck {
        /// Minutes lost in the last night.
        found_min: f64,
        /// Where to look; `None` if an older version wrote the night.
        why: Option<Said>,
    },
    /// Ground that is missed night after night.
    Missed {
        /// Its area.
        found_m2: f64,
        /// Why it is missed; `None` if an older version wrote the night.
        why: Option<Said>,
    },
    /// Less driven over than promised.
    Promise {
        /// Fraction driven over within the promised days.
        visited_fraction: f64,
        /// Fraction that is promised.
        promised_fraction: f64,
        /// Days within which it is promised.
        days: u64,
    },
    /// Logs that did not come, of the garden or of the machine that the alarm is about.
    Absent,
}

/// Logs that failed to come from many gardens at once.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct MorningDelivery {
    /// First night without them, `2026-05-01`.
    pub since: String,
    /// Gardens that have sent nothing since.
    pub gardens: u64,
    /// Gardens that were expected to.
    pub expected: u64,
}

/// An alarm that is over.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct MorningMended {
    /// Garden.
    pub garden: String,
    /// What kind.
    pub alarm: Alarm,
    /// First night of it, `2026-05-01`.
    pub since: String,
    /// First night without it.
    pub mended: String,
}

/// One night behind it.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct MorningNight {
    /// Its date.
    pub night: String,
    /// Visited fraction.
    pub visited_fraction: Option<Estimate>,
    /// Area of missed pockets.
    pub missed_m2: Option<f64>,
    /// Hours driving.
    pub driving_h: Option<f64>,
    /// Minutes lost at stuck spots.
    pub stuck_min: Option<f64>,
    /// Hours without usable fixes.
    pub silent_h: Option<f64>,
    /// Standard deviation of positions.
    pub position_error_m: Option<f64>,
}

/// Something that failed.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct MorningFailure {
    /// Garden.
    pub garden: String,
    /// Log, night, plan or settings.
    pub what: String,
    /// A word.
    pub reason: String,
    /// One sentence.
    pub detail: String,
}
