//! What was logged.

use crate::math;
use serde::{Deserialize, Serialize};

/// A place on the local tangent plane, in metres east and north of the frame's origin.
#[derive(Clone, Copy, Debug, Default, PartialEq, Serialize, Deserialize)]
pub struct Place {
    /// Metres east of the origin.
    pub east_m: f64,
    /// Metres north of the origin.
    pub north_m: f64,
}

impl Place {
    /// A place from its two coordinates.
    pub const fn new(east_m: f64, north_m: f64) -> Self {
        Self { east_m, north_m }
    }

    /// Straight distance to another place.
    pub fn distance_m(self, other: Self) -> f64 {
        math::hypot(self.east_m - other.east_m, self.north_m - other.north_m)
    }

    /// Distance from the straight piece between two other places, m; if the piece has no length, from its first end.
    pub fn off_piece_m(self, from: Self, to: Self) -> f64 {
        let (de, dn) = (to.east_m - from.east_m, to.north_m - from.north_m);
        let (pe, pn) = (self.east_m - from.east_m, self.north_m - from.north_m);
        let length_squared = de * de + dn * dn;
        let along = if length_squared > 0.0 {
            ((pe * de + pn * dn) / length_squared).clamp(0.0, 1.0)
        } else {
            0.0
        };
        math::hypot(pe - along * de, pn - along * dn)
    }

    /// The place at a share of the way to another one: 0 is this place, 1 the other; other numbers lie beyond them.
    pub fn towards(self, other: Self, share: f64) -> Self {
        Self::new(
            self.east_m + share * (other.east_m - self.east_m),
            self.north_m + share * (other.north_m - self.north_m),
        )
    }

    /// The place half way to another one.
    pub fn middle(self, other: Self) -> Self {
        Self::new(
            0.5 * (self.east_m + other.east_m),
            0.5 * (self.north_m + other.north_m),
        )
    }

    /// Cuts the way to another place into equal pieces of at most `most_m`, at least one: their length, m, and the middle of
    /// each.
    pub fn pieces(self, other: Self, most_m: f64) -> (f64, impl Iterator<Item = Self>) {
        let length_m = self.distance_m(other);
        let pieces = (length_m / most_m).ceil().max(1.0);
        let middles =
            (0..pieces as usize).map(move |piece| self.towards(other, (piece as f64 + 0.5) / pieces));
        (length_m / pieces, middles)
    }

    /// South-west and north-east corner of the box around places; `None` if there are none.
    pub fn bounds(places: impl IntoIterator<Item = Self>) -> Option<(Self, Self)> {
        (places.into_iter().map(|place| (place, place))).reduce(|(low, high), (place, _)| {
            (
                Self::new(low.east_m.min(place.east_m), low.north_m.min(place.north_m)),
                Self::new(high.east_m.max(place.east_m), high.north_m.max(place.north_m)),
            )
        })
    }
}

/// A position on Earth, WGS 84.
#[derive(Clone, Copy, Debug, Default, PartialEq, Serialize, Deserialize)]
pub struct GeoPoint {
    /// Latitude, degrees, north positive.
    pub lat_deg: f64,
    /// Longitude, degrees, east positive.
    pub lon_deg: f64,
}

/// Where the fixes of a trace lie: on Earth, or on a plane that the logger chose.
#[derive(Clone, Debug, PartialEq)]
pub enum Positions {
    /// WGS 84 latitude and longitude.
    Geographic {
        /// Latitudes, degrees.
        lat_deg: Vec<f64>,
        /// Longitudes, degrees.
        lon_deg: Vec<f64>,
    },
    /// Metres on a plane of the logger's own (a survey instrument, a simulator).
    Local {
        /// Metres along the first axis, taken as east.
        east_m: Vec<f64>,
        /// Metres along the second axis, taken as north.
        north_m: Vec<f64>,
    },
}

impl Positions {
    /// Distance of two pairs of this kind, good to a percent.
    pub fn distance_m(&self, one: (f64, f64), other: (f64, f64)) -> f64 {
        let (first, second) = (one.0 - other.0, one.1 - other.1);
        match self {
            Self::Local { .. } => math::hypot(first, second),
            Self::Geographic { .. } => {
                // The short way round the antimeridian.
                let second = (second + 540.0).rem_euclid(360.0) - 180.0;
                DEGREE_M * math::hypot(first, second * math::cos(one.0.to_radians()))
            }
        }
    }

    /// Nine in ten positions lie between these, each number for itself; `None` without any.
    fn most(&self) -> Option<((f64, f64), (f64, f64))> {
        let (Self::Geographic {
            lat_deg: first,
            lon_deg: second,
        }
        | Self::Local {
            east_m: first,
            north_m: second,
        }) = self;
        let ends = |values: &[f64]| {
            let mut sorted: Vec<f64> = values
                .iter()
                .step_by(values.len() / 10_000 + 1)
                .copied()
                .collect();
            sorted.sort_by(f64::total_cmp);
            Some((math::quantile(&sorted, 0.05)?, math::quantile(&sorted, 0.95)?))
        };
        Some((ends(first)?, ends(second)?))
    }

    /// Number of positions.
    pub fn len(&self) -> usize {
        match self {
            Self::Geographic { lat_deg, .. } => lat_deg.len(),
            Self::Local { east_m, .. } => east_m.len(),
        }
    }

    /// True if there are none.
    pub fn is_empty(&self) -> bool {
        self.len() == 0
    }

    /// The pair at `index`: latitude and longitude, or east and north.
    pub fn pair(&self, index: usize) -> (f64, f64) {
        match self {
            Self::Geographic { lat_deg, lon_deg } => (lat_deg[index], lon_deg[index]),
            Self::Local { east_m, north_m } => (east_m[index], north_m[index]),
        }
    }

    /// Appends a pair: latitude and longitude, or east and north.
    pub fn push(&mut self, first: f64, second: f64) {
        match self {
            Self::Geographic { lat_deg, lon_deg } => {
                lat_deg.push(first);
                lon_deg.push(second);
            }
            Self::Local { east_m, north_m } => {
                east_m.push(first);
                north_m.push(second);
            }
        }
    }
}

/// How the receiver says it found a position (NMEA 0183 GGA quality, GNS mode, GPX `fix`).
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum FixQuality {
    /// The log does not say.
    Unknown,
    /// Satellites only, without corrections (GGA 1).
    Autonomous,
    /// Differential or augmentation corrections (GGA 2).
    Differential,
    /// Precise positioning service (GGA 3).
    Precise,
    /// Carrier phase, whole cycles known (GGA 4): centimetres.
    RtkFixed,
    /// Carrier phase, whole cycles not known (GGA 5): decimetres.
    RtkFloat,
    /// Dead reckoning (GGA 6).
    Estimated,
    /// Typed in by hand (GGA 7).
    Manual,
    /// Simulator (GGA 8).
    Simulated,
    /// A code that no standard explains (GGA 9 and above).
    Other,
}

impl FixQuality {
    /// Every quality, in the order of the enum.
    pub const ALL: [Self; 10] = [
        Self::Unknown,
        Self::Autonomous,
        Self::Differential,
        Self::Precise,
        Self::RtkFixed,
        Self::RtkFloat,
        Self::Estimated,
        Self::Manual,
        Self::Simulated,
        Self::Other,
    ];
}

/// One logged position. Traces keep fixes in columns; this is one row.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Fix {
    /// Seconds since 1970-01-01T00:00:00 UTC.
    pub time_s: f64,
    /// Latitude in degrees, or metres along the first local axis.
    pub first: f64,
    /// Longitude in degrees, or metres along the second local axis.
    pub second: f64,
    /// Goes up by one wherever the log itself says that reception was lost or a file ended; such breaks are never bridged.
    pub segment: u32,
    /// How the receiver found it.
    pub quality: FixQuality,
    /// Horizontal dilution of precision; NaN when not logged.
    pub hdop: f32,
    /// Standard deviation per axis that the receiver claims; NaN when not logged.
    pub claimed_sd_m: f32,
    /// Speed over ground that the receiver reports; NaN when not logged.
    pub speed_mps: f32,
    /// Course over ground, degrees clockwise from true north; NaN when not logged.
    pub course_deg: f32,
    /// Height above mean sea level; NaN when not logged.
    pub height_msl_m: f32,
    /// Satellites used; `u8::MAX` when not logged.
    pub satellites: u8,
}

impl Fix {
    /// A fix of which only time and place are known.
    pub const fn bare(time_s: f64, first: f64, second: f64) -> Self {
        Self {
            time_s,
            first,
            second,
            segment: 0,
            quality: FixQuality::Unknown,
            hdop: f32::NAN,
            claimed_sd_m: f32::NAN,
            speed_mps: f32::NAN,
            course_deg: f32::NAN,
            height_msl_m: f32::NAN,
            satellites: u8::MAX,
        }
    }
}

/// Fixes of one machine in strictly increasing time order, as columns of equal length.
#[derive(Clone, Debug, PartialEq)]
pub struct Trace {
    /// Name of the machine: from the log, else `machine-1`, `machine-2` in order of appearance.
    pub machine: String,
    /// Where.
    pub positions: Positions,
    /// Seconds since 1970-01-01T00:00:00 UTC, strictly increasing.
    pub time_s: Vec<f64>,
    /// See [`Fix::segment`].
    pub segment: Vec<u32>,
    /// See [`Fix::quality`].
    pub quality: Vec<FixQuality>,
    /// See [`Fix::hdop`].
    pub hdop: Vec<f32>,
    /// See [`Fix::claimed_sd_m`].
    pub claimed_sd_m: Vec<f32>,
    /// See [`Fix::speed_mps`].
    pub speed_mps: Vec<f32>,
    /// See [`Fix::course_deg`].
    pub course_deg: Vec<f32>,
    /// See [`Fix::height_msl_m`].
    pub height_msl_m: Vec<f32>,
    /// See [`Fix::satellites`].
    pub satellites: Vec<u8>,
}

/// Metres of a degree on the WGS 84 equator.
const DEGREE_M: f64 = 111_320.0;
/// Ground of two logs that lies farther apart than this is no one lawn (common practice, no source).
const GARDENS_APART_M: f64 = 150.0;

impl Trace {
    /// An empty trace whose positions lie on Earth.
    pub fn geographic(machine: impl Into<String>) -> Self {
        Self::empty(
            machine.into(),
            Positions::Geographic {
                lat_deg: Vec::new(),
                lon_deg: Vec::new(),
            },
        )
    }

    /// An empty trace in metres on the logger's own plane.
    pub fn local(machine: impl Into<String>) -> Self {
        Self::empty(
            machine.into(),
            Positions::Local {
                east_m: Vec::new(),
                north_m: Vec::new(),
            },
        )
    }

    /// Between the boxes round nine in ten fixes of two traces, good to a percent; `None` where one is empty or they are on different
    /// planes.
    pub fn apart_m(&self, other: &Self) -> Option<f64> {
        let (mine, others) = (self.positions.most()?, other.positions.most()?);
        let gap = |a: (f64, f64), b: (f64, f64)| (b.0 - a.1).max(a.0 - b.1).max(0.0);
        let (low, gaps) = (
            (mine.0.0, mine.1.0),
            (gap(mine.0, others.0), gap(mine.1, others.1)),
        );
        let is_one_kind = std::mem::discriminant(&self.positions) == std::mem::discriminant(&other.positions);
        is_one_kind.then(|| self.positions.distance_m(low, (low.0 + gaps.0, low.1 + gaps.1)))
    }

    /// Whether two logs are of two gardens, or of two lawns of a large one.
    pub fn is_far_from(&self, other: &Self) -> bool {
        self.apart_m(other)
            .is_some_and(|apart_m| apart_m > GARDENS_APART_M)
    }

    fn empty(machine: String, positions: Positions) -> Self {
        Self {
            machine,
            positions,
            time_s: Vec::new(),
            segment: Vec::new(),
            quality: Vec::new(),
            hdop: Vec::new(),
            claimed_sd_m: Vec::new(),
            speed_mps: Vec::new(),
            course_deg: Vec::new(),
            height_msl_m: Vec::new(),
            satellites: Vec::new(),
        }
    }

    /// Number of fixes.
    pub fn len(&self) -> usize {
        self.time_s.len()
    }

    /// True without fixes.
    pub fn is_empty(&self) -> bool {
        self.time_s.is_empty()
    }

    /// Appends one fix to every column. The caller keeps them in time order.
    pub fn push(&mut self, fix: Fix) {
        self.positions.push(fix.first, fix.second);
        self.time_s.push(fix.time_s);
        self.segment.push(fix.segment);
        self.quality.push(fix.quality);
        self.hdop.push(fix.hdop);
        self.claimed_sd_m.push(fix.claimed_sd_m);
        self.speed_mps.push(fix.speed_mps);
        self.course_deg.push(fix.course_deg);
        self.height_msl_m.push(fix.height_msl_m);
        self.satellites.push(fix.satellites);
    }

    /// The fix at `index`, assembled from the columns.
    ///
    /// # Panics
    /// When `index` is not below [`Trace::len`].
    pub fn fix(&self, index: usize) -> Fix {
        let (first, second) = self.positions.pair(index);
        Fix {
            time_s: self.time_s[index],
            first,
            second,
            segment: self.segment[index],
            quality: self.quality[index],
            hdop: self.hdop[index],
            claimed_sd_m: self.claimed_sd_m[index],
            speed_mps: self.speed_mps[index],
            course_deg: self.course_deg[index],
            height_msl_m: self.height_msl_m[index],
            satellites: self.satellites[index],
        }
    }
}
