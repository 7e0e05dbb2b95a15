//! What the user wants, with a default and its reason for every key.

use crate::{ErrorSeries, Language, Units};
use serde::{Deserialize, Serialize};
use std::sync::Arc;

/// Everything that can be set. A settings file is TOML with these tables and keys; a key left out has the
/// default named at the field.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct Settings {
    /// The machine.
    pub machine: MachineSettings,
    /// What the customer was promised.
    pub promise: PromiseSettings,
    /// The grass.
    pub turf: TurfSettings,
    /// When the machine may work.
    pub hours: HoursSettings,
    /// Names for the page.
    pub garden: GardenSettings,
    /// How positions are treated.
    pub positions: PositionSettings,
    /// Which unvisited ground is worth a word.
    pub pockets: PocketSettings,
    /// What the tool refuses to take on.
    pub limits: LimitSettings,
    /// Who came, when and why.
    pub visit: SiteVisit,
    /// Places that somebody pointed at.
    pub complaint: Vec<ComplaintSettings>,
}

/// `[machine]`: geometry and speed.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct MachineSettings {
    /// Width of the swath. No default: without it the visited fraction is given for widths from 17 to 35 cm.
    pub cut_width_m: Option<f64>,
    /// Standard deviation of the true cutting width. Default 0: the width is taken as it is given. Where it is not sure,
    /// say so: in a night on a middling lawn each millimetre is worth about 0.15 points.
    pub cut_width_sd_m: f64,
    /// Width of the body. Default: none; the cutting width then stands in where a body is needed.
    pub body_width_m: Option<f64>,
    /// Distance between the middles of the driven wheels. No default: without it nothing is said of wheel passes.
    pub track_width_m: Option<f64>,
    /// How far the antenna's place goes past the boundary before the machine turns; negative when it turns
    /// before. Default: none, it is read from the log.
    pub past_boundary_m: Option<f64>,
    /// Middle of the cutting disc ahead of the middle of the drive axle. Default 0.
    pub cutter_forward_m: f64,
    /// Antenna ahead of the middle of the drive axle. Default 0.
    pub antenna_forward_m: f64,
    /// Antenna left of the middle line. Default 0.
    pub antenna_left_m: f64,
    /// Driving speed. Default: none, it is read from the log.
    pub speed_mps: Option<f64>,
    /// Radius of the arcs on which simulated machines turn. Default 0: on the spot, as two driven wheels do.
    pub turning_radius_m: f64,
    /// Whether the blades turn while it follows a guide run or the boundary. Default true.
    pub cuts_in_transit: bool,
}

impl Default for MachineSettings {
    fn default() -> Self {
        Self {
            cut_width_m: None,
            cut_width_sd_m: 0.0,
            body_width_m: None,
            track_width_m: None,
            past_boundary_m: None,
            cutter_forward_m: 0.0,
            antenna_forward_m: 0.0,
            antenna_left_m: 0.0,
            speed_mps: None,
            turning_radius_m: 0.0,
            cuts_in_transit: true,
        }
    }
}

/// `[promise]`: so much of the lawn, within so many days.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct PromiseSettings {
    /// Promised visited fraction. Default 0.95: what is left is a strip along edges and thin gaps.
    pub visited_fraction: f64,
    /// Within so many days. Default 3: how long a customer waits after an installation (common practice, no
    /// source).
    pub days: f64,
}

impl Default for PromiseSettings {
    fn default() -> Self {
        Self {
            visited_fraction: 0.95,
            days: 3.0,
        }
    }
}

/// Which curve of growth against temperature holds (Gelernter & Stowell 2005).
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Grass {
    /// Cool-season grass (C3), best at 20 degrees Celsius.
    #[default]
    Cool,
    /// Warm-season grass (C4), best at 31 degrees Celsius.
    Warm,
}

/// `[turf]`: the grass.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct TurfSettings {
    /// Cutting height. No default: without it nothing is said of overdue ground.
    pub cut_height_mm: Option<f64>,
    /// Growth per day. No default.
    pub growth_mm_per_day: Option<f64>,
    /// Mean air temperature, from which growth follows where it is not given. No default.
    pub mean_temperature_c: Option<f64>,
    /// Kind of grass. Default cool.
    pub grass: Grass,
}

/// `[hours]`: working hours per weekday in local time, as `["08:00-12:00", "14:00-19:00"]`; an empty list rests.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct HoursSettings {
    /// Monday.
    pub monday: Option<Vec<String>>,
    /// Tuesday.
    pub tuesday: Option<Vec<String>>,
    /// Wednesday.
    pub wednesday: Option<Vec<String>>,
    /// Thursday.
    pub thursday: Option<Vec<String>>,
    /// Friday.
    pub friday: Option<Vec<String>>,
    /// Saturday.
    pub saturday: Option<Vec<String>>,
    /// Sunday.
    pub sunday: Option<Vec<String>>,
}

/// `[garden]`: words for the page.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct GardenSettings {
    /// Name of the garden.
    pub name: Option<String>,
    /// Time zone of the garden: `UTC`, `+02:00`, or a name such as `Europe/Berlin`. Default UTC.
    pub time_zone: Option<String>,
    /// Remarks for the customer.
    pub remarks: Option<String>,
    /// Language of the page. Default English.
    pub language: Option<Language>,
    /// Units of page and terminal. Default metric; files are always metric.
    pub units: Option<Units>,
}

/// `[positions]`: how positions are treated.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct PositionSettings {
    /// Fixes with a larger HDOP are not used. Default 6: beyond it errors of tens of metres are usual (common
    /// practice, no source).
    pub max_hdop: f64,
    /// A longer time between two fixes is a silence. Default: none, 5 times the usual period, 10 to 150 s.
    pub max_silence_s: Option<f64>,
    /// No machine moves faster than this. Default 3: several times the speed of any mower, so that only jumps and
    /// walks to the car are cut (common practice, no source).
    pub max_speed_mps: f64,
    /// How far positions wander, standard deviation per axis, where the log does not show it. No default: standing time
    /// shows it, else the device card, else straight drives, else the quality of the fixes.
    pub drift_m: Option<f64>,
    /// In what time the slow part of the error forgets itself, where `drift_m` is stated. Default 600 (customary for multipath;
    /// from memory).
    pub drift_time_s: f64,
    /// How the receiver errs where the log does not show it: the recorded error of a stay. No default.
    pub card: Option<DeviceCard>,
    /// Latitude of the origin of a log in local metres. No default: without it such a log has no place on Earth.
    pub origin_lat_deg: Option<f64>,
    /// Longitude of that origin.
    pub origin_lon_deg: Option<f64>,
}

/// A file with the recorded error of a receiver. Settings hold its name; who opens files reads it.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(from = "String", into = "String")]
pub struct DeviceCard {
    /// Its name, as the settings have it.
    pub file: String,
    /// What it holds, once it was read.
    pub errors: Option<Arc<ErrorSeries>>,
}

impl From<String> for DeviceCard {
    fn from(file: String) -> Self {
        Self { file, errors: None }
    }
}

impl From<DeviceCard> for String {
    fn from(card: DeviceCard) -> Self {
        card.file
    }
}

impl Default for PositionSettings {
    fn default() -> Self {
        Self {
            max_hdop: 6.0,
            max_silence_s: None,
            max_speed_mps: 3.0,
            drift_m: None,
            drift_time_s: 600.0,
            card: None,
            origin_lat_deg: None,
            origin_lon_deg: None,
        }
    }
}

/// `[pockets]`: which unvisited ground is worth a word.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct PocketSettings {
    /// Least width (diameter of the largest circle that fits in). Default 0.8: about four swaths; narrower gaps
    /// hardly show in the grass and close by luck.
    pub min_width_m: f64,
    /// Least area. Default 0.5.
    pub min_area_m2: f64,
    /// Time away after which coming back is a new pass. Default 30.
    pub new_pass_after_s: f64,
    /// Shortest loss of time that counts as getting stuck. Default 90: turning takes a few seconds, driving to and
    /// fro in a passage up to about a minute. A log with a fix every 9 s or less often needs ten fixes.
    pub stuck_after_s: f64,
}

impl Default for PocketSettings {
    fn default() -> Self {
        Self {
            min_width_m: 0.8,
            min_area_m2: 0.5,
            new_pass_after_s: 30.0,
            stuck_after_s: 90.0,
        }
    }
}

/// `[visit]`: who came to the garden, for the page. All of it is optional.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct SiteVisit {
    /// Who.
    pub who: Option<String>,
    /// When.
    pub when: Option<String>,
    /// The machine that was found there.
    pub machine: Option<String>,
    /// Its serial number.
    pub serial: Option<String>,
    /// What was done.
    pub done: Option<String>,
}

/// `[[complaint]]`: a place that somebody pointed at, in degrees or in metres.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct ComplaintSettings {
    /// Latitude and longitude in degrees.
    #[serde(rename = "at")]
    pub at_deg: Option<[f64; 2]>,
    /// Metres east and north of the origin of the findings.
    pub at_m: Option<[f64; 2]>,
    /// The ground meant lies within this distance. Default 0.3: nobody points better than half a step (common practice,
    /// no source).
    pub radius_m: f64,
    /// What was said of it.
    pub said: Option<String>,
}

impl Default for ComplaintSettings {
    fn default() -> Self {
        Self {
            at_deg: None,
            at_m: None,
            radius_m: 0.3,
            said: None,
        }
    }
}

/// `[limits]`: what the tool refuses, so that one odd file cannot take the machine down.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct LimitSettings {
    /// Bytes of one log as stored. Default 4 GiB.
    pub log_bytes: u64,
    /// Bytes of one log after decompression. Default 8 GiB.
    pub unpacked_bytes: u64,
    /// Bytes after decompression for each stored byte, in logs that unpack to more than 16 MiB. Default 200: logs of a mower
    /// pack to a tenth or a thirtieth, a bomb to a thousandth.
    pub unpacked_ratio: u64,
    /// Memory for the text and the fixes of one log while it is read. Default 256 MiB: a day at 10 Hz, as GPX or
    /// as RMC and GGA.
    pub memory_bytes: u64,
    /// Bytes of one line or element. Default 1 MiB: sentences have 82, elements a few thousand.
    pub line_bytes: u64,
    /// Bytes of one attribute of an element. Default 64 KiB: the longest in a log, a list of schemas, has some hundred.
    pub attribute_bytes: u64,
    /// Nested elements. Default 64.
    pub element_depth: u32,
    /// Fixes of one analysis. Default 50 million: half a year at 5 Hz.
    pub fixes: u64,
    /// Corners of one plan. Default 200,000.
    pub plan_corners: u64,
    /// Cells of the counting grid. Default 30 million; the cell grows until the lawn fits, to half a swath at most.
    /// The path may sweep a hundred times as many, each counted as often as it is swept.
    pub cells: u64,
    /// Extent of all positions together. Default 5,000 m: no garden is larger, and a wrong jump is.
    pub extent_m: f64,
}

impl Default for LimitSettings {
    fn default() -> Self {
        Self {
            log_bytes: 4 << 30,
            unpacked_bytes: 8 << 30,
            unpacked_ratio: 200,
            memory_bytes: 256 << 20,
            line_bytes: 1 << 20,
            attribute_bytes: 1 << 16,
            element_depth: 64,
            fixes: 50_000_000,
            plan_corners: 200_000,
            cells: 30_000_000,
            extent_m: 5_000.0,
        }
    }
}
