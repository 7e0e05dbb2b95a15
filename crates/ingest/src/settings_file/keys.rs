//! Every key of the settings, once.

/// What a key may have as its value.
#[derive(Clone, Copy, Debug)]
pub(super) enum Value {
    /// A number in a range, both ends included.
    Number {
        /// Least.
        low: f64,
        /// Largest.
        high: f64,
    },
    /// A whole number in a range, both ends included.
    Whole {
        /// Least.
        low: i128,
        /// Largest.
        high: i128,
    },
    /// True or false.
    Claim,
    /// One of some words.
    Word(&'static [&'static str]),
    /// Any text.
    Text {
        /// Most characters.
        longest: usize,
    },
    /// Working hours of a day.
    Hours,
    /// Offset from UTC.
    TimeZone,
}

impl Value {
    pub(super) fn words(self) -> String {
        match self {
            Self::Number { low, high } => format!("a number from {low} to {high}"),
            Self::Whole { low, high } if high == i128::from(i64::MAX) => {
                format!("a whole number from {low} up")
            }
            Self::Whole { low, high } => format!("a whole number from {low} to {high}"),
            Self::Claim => "true or false".to_owned(),
            Self::Word(words) => {
                let quoted: Vec<String> = words.iter().map(|word| format!("\"{word}\"")).collect();
                quoted.join(" or ")
            }
            Self::Text { longest } => format!("a text of at most {longest} characters"),
            Self::Hours => "a list such as [\"08:00-12:00\", \"14:00-19:00\"]".to_owned(),
            Self::TimeZone => "an offset such as \"+02:00\", or \"UTC\"".to_owned(),
        }
    }
}

/// One key.
#[derive(Clone, Copy, Debug)]
pub(super) struct Key {
    pub(super) table: &'static str,
    pub(super) name: &'static str,
    pub(super) about: &'static str,
    pub(super) value: Value,
    /// As written in TOML; `None` when there is none.
    pub(super) default: Option<&'static str>,
    /// For keys without a default.
    pub(super) example: &'static str,
    pub(super) reason: &'static str,
}

/// Tables in the order of the reference, each with what it is about.
pub(super) const TABLES: &[(&str, &str)] = &[
    ("machine", "The machine: geometry and speed."),
    (
        "promise",
        "What the customer was promised: so much of the lawn, within so many days.",
    ),
    ("turf", "The grass."),
    ("hours", "When the machine may work."),
    ("garden", "Words for the page."),
    ("positions", "How positions are treated."),
    ("pockets", "Which unvisited ground is worth a word."),
    (
        "limits",
        "What the tool refuses, so that one odd file cannot take the computer down.",
    ),
];

/// Every key, in the order of the reference.
pub(super) const KEYS: &[Key] = &[
    Key {
        table: "machine",
        name: "cut_width_m",
        about: "Width of the swath, metres",
        value: Value::Number { low: 0.05, high: 2.0 },
        default: None,
        example: "0.22",
        reason: "without it the visited fraction is given for widths from 17 to 35 cm",
    },
    Key {
        table: "machine",
        name: "cut_width_sd_m",
        about: "Standard deviation of the true cutting width, metres",
        value: Value::Number { low: 0.0, high: 0.2 },
        default: Some("0.0"),
        example: "",
        reason: "the width is taken as it is given; where it is not sure, say so",
    },
    Key {
        table: "machine",
        name: "body_width_m",
        about: "Width of the body, metres",
        value: Value::Number { low: 0.05, high: 3.0 },
        default: None,
        example: "0.45",
        reason: "the cutting width then stands in where a body is needed",
    },
    Key {
        table: "machine",
        name: "past_boundary_m",
        about: "How far the antenna's place goes past the boundary before the machine turns, metres; negative when it turns before",
        value: Value::Number { low: -5.0, high: 5.0 },
        default: None,
        example: "0.3",
        reason: "it is read from the log",
    },
    Key {
        table: "machine",
        name: "cutter_forward_m",
        about: "Middle of the cutting disc ahead of the middle of the drive axle, metres",
        value: Value::Number { low: -2.0, high: 2.0 },
        default: Some("0.0"),
        example: "",
        reason: "the disc then lies where the machine turns",
    },
    Key {
        table: "machine",
        name: "antenna_forward_m",
        about: "Antenna ahead of the middle of the drive axle, metres",
        value: Value::Number { low: -2.0, high: 2.0 },
        default: Some("0.0"),
        example: "",
        reason: "positions are then taken as those of the axle",
    },
    Key {
        table: "machine",
        name: "antenna_left_m",
        about: "Antenna left of the middle line, metres",
        value: Value::Number { low: -2.0, high: 2.0 },
        default: Some("0.0"),
        example: "",
        reason: "loggers are mostly strapped on in the middle",
    },
    Key {
        table: "machine",
        name: "speed_mps",
        about: "Driving speed, metres a second",
        value: Value::Number { low: 0.05, high: 3.0 },
        default: None,
        example: "0.4",
        reason: "it is read from the log",
    },
    Key {
        table: "machine",
        name: "cuts_in_transit",
        about: "Whether the blades turn while it follows a guide run or the boundary",
        value: Value::Claim,
        default: Some("true"),
        example: "",
        reason: "a log seldom says otherwise",
    },
    Key {
        table: "promise",
        name: "visited_fraction",
        about: "Promised part of the lawn that is driven over, 0 to 1",
        value: Value::Number { low: 0.0, high: 1.0 },
        default: Some("0.95"),
        example: "",
        reason: "what is left is a strip along edges and thin gaps",
    },
    Key {
        table: "promise",
        name: "days",
        about: "Within so many days",
        value: Value::Number {
            low: 0.01,
            high: 365.0,
        },
        default: Some("3.0"),
        example: "",
        reason: "how long a customer waits after an installation (common practice, no source)",
    },
    Key {
        table: "turf",
        name: "cut_height_mm",
        about: "Cutting height, millimetres",
        value: Value::Number {
            low: 5.0,
            high: 200.0,
        },
        default: None,
        example: "35.0",
        reason: "without it nothing is said of overdue ground",
    },
    Key {
        table: "turf",
        name: "growth_mm_per_day",
        about: "Growth, millimetres a day",
        value: Value::Number { low: 0.0, high: 50.0 },
        default: None,
        example: "3.0",
        reason: "it follows from the temperature where that is given",
    },
    Key {
        table: "turf",
        name: "mean_temperature_c",
        about: "Mean air temperature, degrees Celsius",
        value: Value::Number {
            low: -50.0,
            high: 60.0,
        },
        default: None,
        example: "17.0",
        reason: "growth must then be given",
    },
    Key {
        table: "turf",
        name: "grass",
        about: "Which curve of growth against temperature holds",
        value: Value::Word(&["cool", "warm"]),
        default: Some("\"cool\""),
        example: "",
        reason: "cool-season grass (C3) covers most lawns of temperate climates",
    },
    Key {
        table: "hours",
        name: "monday",
        about: "Working hours on Monday in local time; an empty list rests",
        value: Value::Hours,
        default: None,
        example: "[\"08:00-12:00\", \"14:00-19:00\"]",
        reason: "nothing is said of driving at other hours",
    },
    Key {
        table: "hours",
        name: "tuesday",
        about: "Working hours on Tuesday in local time; an empty list rests",
        value: Value::Hours,
        default: None,
        example: "[\"08:00-12:00\", \"14:00-19:00\"]",
        reason: "nothing is said of driving at other hours",
    },
    Key {
        table: "hours",
        name: "wednesday",
        about: "Working hours on Wednesday in local time; an empty list rests",
        value: Value::Hours,
        default: None,
        example: "[\"08:00-12:00\", \"14:00-19:00\"]",
        reason: "nothing is said of driving at other hours",
    },
    Key {
        table: "hours",
        name: "thursday",
        about: "Working hours on Thursday in local time; an empty list rests",
        value: Value::Hours,
        default: None,
        example: "[\"08:00-12:00\", \"14:00-19:00\"]",
        reason: "nothing is said of driving at other hours",
    },
    Key {
        table: "hours",
        name: "friday",
        about: "Working hours on Friday in local time; an empty list rests",
        value: Value::Hours,
        default: None,
        example: "[\"08:00-12:00\", \"14:00-19:00\"]",
        reason: "nothing is said of driving at other hours",
    },
    Key {
        table: "hours",
        name: "saturday",
        about: "Working hours on Saturday in local time; an empty list rests",
        value: Value::Hours,
        default: None,
        example: "[\"08:00-12:00\", \"14:00-19:00\"]",
        reason: "nothing is said of driving at other hours",
    },
    Key {
        table: "hours",
        name: "sunday",
        about: "Working hours on Sunday in local time; an empty list rests",
        value: Value::Hours,
        default: None,
        example: "[\"08:00-12:00\", \"14:00-19:00\"]",
        reason: "nothing is said of driving at other hours",
    },
    Key {
        table: "garden",
        name: "name",
        about: "Name of the garden",
        value: Value::Text { longest: 200 },
        default: None,
        example: "\"Mill Lane 3\"",
        reason: "the page has no name then",
    },
    Key {
        table: "garden",
        name: "time_zone",
        about: "Offset from UTC in which times are shown",
        value: Value::TimeZone,
        default: None,
        example: "\"+02:00\"",
        reason: "times are shown in UTC",
    },
    Key {
        table: "garden",
        name: "remarks",
        about: "Remarks for the customer",
        value: Value::Text { longest: 2000 },
        default: None,
        example: "\"The gate is open from eight.\"",
        reason: "the page has no remarks then",
    },
    Key {
        table: "positions",
        name: "max_hdop",
        about: "Fixes with a larger HDOP are not used",
        value: Value::Number {
            low: 0.5,
            high: 100.0,
        },
        default: Some("6.0"),
        example: "",
        reason: "beyond it errors of tens of metres are usual (common practice, no source)",
    },
    Key {
        table: "positions",
        name: "max_silence_s",
        about: "A longer time between two fixes is a silence, seconds",
        value: Value::Number {
            low: 0.1,
            high: 86400.0,
        },
        default: None,
        example: "30.0",
        reason: "it is 5 times the usual period, 10 to 150 s",
    },
    Key {
        table: "positions",
        name: "max_speed_mps",
        about: "No machine moves faster than this, metres a second",
        value: Value::Number { low: 0.1, high: 50.0 },
        default: Some("3.0"),
        example: "",
        reason: "several times the speed of any mower, so that only jumps and walks to the car are cut (common practice, no source)",
    },
    Key {
        table: "positions",
        name: "drift_m",
        about: "How far positions wander where the log does not show it, standard deviation per axis, metres",
        value: Value::Number { low: 0.0, high: 50.0 },
        default: None,
        example: "0.05",
        reason: "standing time shows it, else straight drives, else the quality of the fixes",
    },
    Key {
        table: "positions",
        name: "origin_lat_deg",
        about: "Latitude of the origin of a log in local metres, degrees",
        value: Value::Number {
            low: -90.0,
            high: 90.0,
        },
        default: None,
        example: "52.0",
        reason: "without it such a log has no place on Earth",
    },
    Key {
        table: "positions",
        name: "origin_lon_deg",
        about: "Longitude of that origin, degrees",
        value: Value::Number {
            low: -180.0,
            high: 180.0,
        },
        default: None,
        example: "5.0",
        reason: "as for the latitude",
    },
    Key {
        table: "pockets",
        name: "min_width_m",
        about: "Least width of a pocket that is worth a word (diameter of the largest circle that fits in), metres",
        value: Value::Number {
            low: 0.05,
            high: 50.0,
        },
        default: Some("0.8"),
        example: "",
        reason: "about four swaths; narrower gaps hardly show in the grass and close by luck",
    },
    Key {
        table: "pockets",
        name: "min_area_m2",
        about: "Least area of such a pocket, square metres",
        value: Value::Number {
            low: 0.0,
            high: 10000.0,
        },
        default: Some("0.5"),
        example: "",
        reason: "the area of a circle of that width",
    },
    Key {
        table: "pockets",
        name: "new_pass_after_s",
        about: "Time away after which coming back is a new pass, seconds",
        value: Value::Number {
            low: 0.0,
            high: 86400.0,
        },
        default: Some("30.0"),
        example: "",
        reason: "longer than a turn takes",
    },
    Key {
        table: "pockets",
        name: "stuck_after_s",
        about: "Shortest loss of time that counts as getting stuck, seconds",
        value: Value::Number {
            low: 1.0,
            high: 86400.0,
        },
        default: Some("90.0"),
        example: "",
        reason: "turning takes a few seconds, driving to and fro in a passage up to about a minute",
    },
    Key {
        table: "limits",
        name: "log_bytes",
        about: "Bytes of one log as stored",
        value: Value::Whole {
            low: 1,
            high: i64::MAX as i128,
        },
        default: Some("4_294_967_296"),
        example: "",
        reason: "4 GiB: larger files are no logs of a mower",
    },
    Key {
        table: "limits",
        name: "unpacked_bytes",
        about: "Bytes of one log after decompression",
        value: Value::Whole {
            low: 1,
            high: i64::MAX as i128,
        },
        default: Some("8_589_934_592"),
        example: "",
        reason: "8 GiB: a small file can unpack to a very large one",
    },
    Key {
        table: "limits",
        name: "unpacked_ratio",
        about: "Bytes after decompression for each stored byte, in logs that unpack to more than 16 MiB",
        value: Value::Whole {
            low: 1,
            high: i64::MAX as i128,
        },
        default: Some("200"),
        example: "",
        reason: "logs of a mower pack to a tenth or a thirtieth, a bomb to a thousandth",
    },
    Key {
        table: "limits",
        name: "memory_bytes",
        about: "Bytes of memory for the text and the fixes of one log while it is read",
        value: Value::Whole {
            low: 1,
            high: i64::MAX as i128,
        },
        default: Some("268_435_456"),
        example: "",
        reason: "256 MiB: a day at 10 Hz, as GPX or as RMC and GGA",
    },
    Key {
        table: "limits",
        name: "line_bytes",
        about: "Bytes of one line or element",
        value: Value::Whole {
            low: 82,
            high: i64::MAX as i128,
        },
        default: Some("1_048_576"),
        example: "",
        reason: "sentences have 82, elements a few thousand",
    },
    Key {
        table: "limits",
        name: "attribute_bytes",
        about: "Bytes of one attribute of an element",
        value: Value::Whole {
            low: 1,
            high: i64::MAX as i128,
        },
        default: Some("65_536"),
        example: "",
        reason: "64 KiB: the longest in a log, a list of schemas, has some hundred",
    },
    Key {
        table: "limits",
        name: "element_depth",
        about: "Nested elements",
        value: Value::Whole {
            low: 8,
            high: 100_000,
        },
        default: Some("64"),
        example: "",
        reason: "logs nest fewer than ten",
    },
    Key {
        table: "limits",
        name: "fixes",
        about: "Fixes of one analysis",
        value: Value::Whole {
            low: 1,
            high: i64::MAX as i128,
        },
        default: Some("50_000_000"),
        example: "",
        reason: "half a year at 5 Hz",
    },
    Key {
        table: "limits",
        name: "plan_corners",
        about: "Corners of one plan",
        value: Value::Whole {
            low: 3,
            high: i64::MAX as i128,
        },
        default: Some("200_000"),
        example: "",
        reason: "a walk of two days at 1 Hz",
    },
    Key {
        table: "limits",
        name: "cells",
        about: "Cells of the counting grid",
        value: Value::Whole {
            low: 100,
            high: i64::MAX as i128,
        },
        default: Some("40_000_000"),
        example: "",
        reason: "the cell grows until the lawn fits, to half a swath at most",
    },
    Key {
        table: "limits",
        name: "extent_m",
        about: "Extent of all positions together, metres",
        value: Value::Number {
            low: 1.0,
            high: 100000.0,
        },
        default: Some("5_000.0"),
        example: "",
        reason: "no garden is larger, and a wrong jump is",
    },
];
