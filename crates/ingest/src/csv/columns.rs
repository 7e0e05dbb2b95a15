//! Which column holds what.

use std::str::FromStr;

/// What a column can hold.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(crate) enum Field {
    Time,
    Date,
    Lat,
    Lon,
    East,
    North,
    Hdop,
    Quality,
    Satellites,
    SpeedMps,
    SpeedKmh,
    Course,
    Height,
    Sd,
    Accuracy,
    Week,
    OfWeek,
    SdEast,
    SdNorth,
    Machine,
}

/// How many there are.
const FIELDS: usize = 20;

/// Names by which a column is recognised in a header, separated by blanks; the first is the key of `--columns`. Compared
/// without case, with blanks and dashes as underscores.
const NAMES: [(Field, &str); FIELDS] = [
    (
        Field::Time,
        "time timestamp timestamp_utc utc time_utc utc_time datetime date_time datetime_utc utc_datetime gps_time \
         iso_time unix_time unix_s epoch epoch_s time_s t_s elapsed_s seconds timestamp_s timestamp_ms time_ms \
         unix_ms epoch_ms time_(utc) time_of_day time_of_day_utc",
    ),
    (Field::Date, "date utc_date date_utc gps_date date_(utc)"),
    (
        Field::Lat,
        "lat latitude lat_deg latitude_deg gps_lat gps_latitude latitude(deg)",
    ),
    (
        Field::Lon,
        "lon lng long longitude lon_deg longitude_deg gps_lon gps_longitude longitude(deg)",
    ),
    (Field::East, "x_m east_m x east e_m local_x_m e_baseline(m)"),
    (Field::North, "y_m north_m y north n_m local_y_m n_baseline(m)"),
    (Field::Hdop, "hdop"),
    (Field::Quality, "quality fix fix_quality gps_quality gga_quality"),
    (
        Field::Satellites,
        "sats sat satellites sats_used satellites_used num_sats num_satellites numsv nsat",
    ),
    (
        Field::SpeedMps,
        "speed_mps speed_ms speed_m_s speed_(m/s) ground_speed_mps velocity_mps",
    ),
    (Field::SpeedKmh, "speed_kmh speed_kph speed_km_h speed_(km/h)"),
    (
        Field::Course,
        "course_deg course heading heading_deg track_deg bearing bearing_deg",
    ),
    (
        Field::Height,
        "height_m height_msl_m alt alt_m altitude altitude_m ele elevation elevation_m height hmsl height(m)",
    ),
    (Field::Sd, "sd_m claimed_sd_m horizontal_sd_m"),
    (
        Field::Accuracy,
        "accuracy_m accuracy horizontal_accuracy horizontal_accuracy_m hacc hacc_m h_acc",
    ),
    (
        Field::Week,
        "week gps_week gpsweek week_number gps_week_number wn",
    ),
    (
        Field::OfWeek,
        "tow tow_s gps_tow gps_tow_s time_of_week seconds_of_week sow gps_seconds tow_ms gps_tow_ms itow itow_ms",
    ),
    (Field::SdEast, "sd_east_m sde(m)"),
    (Field::SdNorth, "sd_north_m sdn(m)"),
    (
        Field::Machine,
        "machine machine_id machine_name mower mower_id robot robot_id device device_id device_name vehicle vehicle_id unit_id imei",
    ),
];

/// Header names of milliseconds into the week.
const OF_WEEK_MS_NAMES: [&str; 4] = ["tow_ms", "gps_tow_ms", "itow", "itow_ms"];

/// Header names whose times count from the logger's own start, if the numbers allow it.
pub(super) const RELATIVE_NAMES: [&str; 4] = ["time_s", "t_s", "elapsed_s", "seconds"];

impl Field {
    pub(super) fn key(self) -> &'static str {
        NAMES
            .iter()
            .find(|(field, _)| *field == self)
            .map_or("", |(_, names)| first_of(names))
    }

    /// The field with this name, in its plain spelling.
    fn named(name: &str) -> Option<Self> {
        NAMES
            .iter()
            .find(|(_, names)| names.split(' ').any(|known| known == name))
            .map(|(field, _)| *field)
    }
}

fn first_of(names: &'static str) -> &'static str {
    names.split(' ').next().unwrap_or_default()
}

fn plain(name: &str) -> String {
    let name = name
        .trim()
        .trim_matches('"')
        .trim()
        .trim_start_matches('\u{feff}');
    name.to_ascii_lowercase().replace([' ', '-', '.'], "_")
}

/// A column by its name in the header or by its number.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) enum ColumnRef {
    Named(String),
    /// From 0; written `#1` for the first.
    Numbered(usize),
}

/// Which column of a CSV log holds what: `time=stamp,lat=y,lon=x`, or by number if there is no header,
/// `date=#1,time=#2,lat=#4,lon=#5`.
///
/// Keys are `time` (`time_s` for seconds from the logger's own start), `date` (if the time of day is in its own column) or
/// `week` and `tow` of GPS time, `lat` and `lon`, or `x_m` and `y_m` for metres on the logger's own plane, and optionally
/// `hdop`, `quality`, `sats`, `speed_mps`, `speed_kmh`, `course_deg`, `height_m`, `sd_m`, `accuracy_m`.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Columns {
    pub(super) entries: Vec<(Field, ColumnRef)>,
    /// The time's key says that it counts from its own start.
    time_is_relative: bool,
    /// The key of the seconds of the week says that they are milliseconds.
    of_week_is_ms: bool,
}

/// Why a list of columns is not understood.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
#[non_exhaustive]
pub enum ColumnsError {
    /// A part without an equals sign, or with nothing on one side of it.
    #[error("{part:?} is no column, expected key=column, such as lat=latitude or lat=#4")]
    NoPair {
        /// The part.
        part: String,
    },
    /// An unknown key.
    #[error("unknown key {key:?}, expected one of {expected}")]
    UnknownKey {
        /// The key.
        key: String,
        /// All keys.
        expected: String,
    },
    /// An invalid number.
    #[error("{column:?} is no column number, expected #1 for the first column")]
    BadNumber {
        /// What was given.
        column: String,
    },
    /// The same key twice.
    #[error("key {key:?} is given twice")]
    Twice {
        /// The key.
        key: String,
    },
    /// A required key is missing.
    #[error("no column for {missing}, expected time (or week and tow) with lat and lon, or with x_m and y_m")]
    Missing {
        /// The key.
        missing: String,
    },
}

impl FromStr for Columns {
    type Err = ColumnsError;

    fn from_str(text: &str) -> Result<Self, ColumnsError> {
        let mut entries: Vec<(Field, ColumnRef)> = Vec::new();
        let (mut time_is_relative, mut of_week_is_ms) = (false, false);
        for part in text.split(',') {
            let Some((key, column)) = part.split_once('=') else {
                return Err(ColumnsError::NoPair {
                    part: part.trim().into(),
                });
            };
            let (key, column) = (key.trim(), column.trim());
            if key.is_empty() || column.is_empty() {
                return Err(ColumnsError::NoPair {
                    part: part.trim().into(),
                });
            }
            let Some(field) = Field::named(&plain(key)) else {
                let expected: Vec<&str> = NAMES.iter().map(|(_, names)| first_of(names)).collect();
                return Err(ColumnsError::UnknownKey {
                    key: key.into(),
                    expected: expected.join(", "),
                });
            };
            if entries.iter().any(|(known, _)| *known == field) {
                return Err(ColumnsError::Twice {
                    key: field.key().into(),
                });
            }
            let column = match column.strip_prefix('#') {
                None => ColumnRef::Named(column.into()),
                Some(number) => match number.parse::<usize>() {
                    Ok(number @ 1..=100_000) => ColumnRef::Numbered(number - 1),
                    _ => {
                        return Err(ColumnsError::BadNumber {
                            column: column.into(),
                        });
                    }
                },
            };
            time_is_relative |= field == Field::Time && RELATIVE_NAMES.contains(&plain(key).as_str());
            of_week_is_ms |= OF_WEEK_MS_NAMES.contains(&plain(key).as_str());
            entries.push((field, column));
        }
        let has = |field: Field| entries.iter().any(|(known, _)| *known == field);
        let position: &[Field] = if has(Field::East) || has(Field::North) {
            &[Field::East, Field::North]
        } else {
            &[Field::Lat, Field::Lon]
        };
        let clock: &[Field] = match has(Field::Week) || has(Field::OfWeek) {
            true if !has(Field::Time) => &[Field::Week, Field::OfWeek],
            _ => &[Field::Time],
        };
        for &field in clock.iter().chain(position) {
            if !has(field) {
                return Err(ColumnsError::Missing {
                    missing: field.key().into(),
                });
            }
        }
        if has(Field::East) && (has(Field::Lat) || has(Field::Lon)) {
            return Err(ColumnsError::Missing {
                missing: "one kind of position only".into(),
            });
        }
        Ok(Self {
            entries,
            time_is_relative,
            of_week_is_ms,
        })
    }
}

/// The place of each field in a row.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub(super) struct FieldPlaces {
    places: [Option<usize>; FIELDS],
    /// The header's name of the time column says that it counts from its own start.
    pub(super) time_is_relative: bool,
    /// The header's name of the seconds of the week says that they are milliseconds.
    pub(super) of_week_is_ms: bool,
}

impl FieldPlaces {
    #[inline]
    pub(super) fn get(&self, field: Field) -> Option<usize> {
        self.places[field as usize]
    }

    fn set(&mut self, field: Field, place: usize) {
        self.places[field as usize].get_or_insert(place);
    }

    /// One past the last column that is read.
    pub(super) fn width(&self) -> usize {
        self.places.iter().flatten().max().map_or(0, |last| last + 1)
    }

    pub(super) fn has_position(&self) -> bool {
        let both = |a, b| self.get(a).is_some() && self.get(b).is_some();
        both(Field::Lat, Field::Lon) || both(Field::East, Field::North)
    }

    pub(super) fn has_time(&self) -> bool {
        [Field::Time, Field::Date, Field::OfWeek]
            .into_iter()
            .any(|field| self.get(field).is_some())
    }

    /// From the names in a header.
    pub(super) fn of_header(cells: &[&[u8]]) -> Self {
        let mut layout = Self::default();
        // Names begin with a letter, so numbers need not be looked up.
        let is_word = |cell: &&[u8]| {
            let first = cell.iter().find(|byte| !b" \"\xef\xbb\xbf".contains(byte));
            first.is_some_and(u8::is_ascii_alphabetic)
        };
        for (place, cell) in cells.iter().enumerate().filter(|(_, cell)| is_word(cell)) {
            let name = plain(&String::from_utf8_lossy(cell));
            if let Some(field) = Field::named(&name) {
                if field == Field::Time && layout.get(Field::Time).is_none() {
                    layout.time_is_relative = RELATIVE_NAMES.contains(&name.as_str());
                }
                layout.of_week_is_ms |= OF_WEEK_MS_NAMES.contains(&name.as_str());
                layout.set(field, place);
            }
        }
        if layout.get(Field::Lat).is_some() && layout.get(Field::Lon).is_some() {
            layout.places[Field::East as usize] = None;
            layout.places[Field::North as usize] = None;
        }
        layout
    }

    /// From what the user says, and the header if columns are named. The error is the column that does not exist.
    pub(super) fn of_columns(columns: &Columns, header: &[&[u8]]) -> Result<Self, (Field, String)> {
        let mut layout = Self {
            time_is_relative: columns.time_is_relative,
            of_week_is_ms: columns.of_week_is_ms,
            ..Self::default()
        };
        for (field, column) in &columns.entries {
            let place = match column {
                ColumnRef::Numbered(place) => *place,
                ColumnRef::Named(name) => header
                    .iter()
                    .position(|cell| String::from_utf8_lossy(cell).trim().trim_matches('"') == name)
                    .or_else(|| {
                        header
                            .iter()
                            .position(|cell| plain(&String::from_utf8_lossy(cell)) == plain(name))
                    })
                    .ok_or_else(|| (*field, name.clone()))?,
            };
            if *field == Field::Time
                && let Some(cell) = header.get(place)
            {
                layout.time_is_relative |=
                    RELATIVE_NAMES.contains(&plain(&String::from_utf8_lossy(cell)).as_str());
            }
            layout.set(*field, place);
        }
        Ok(layout)
    }
}

impl Columns {
    /// True if at least one column is named, so that there must be a header.
    pub(super) fn needs_header(&self) -> bool {
        self.entries
            .iter()
            .any(|(_, column)| matches!(column, ColumnRef::Named(_)))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn names_and_numbers_are_read() {
        let columns: Columns = "date=#1, time=#2,lat=#4,lon=#5".parse().unwrap();
        assert_eq!(columns.entries[2], (Field::Lat, ColumnRef::Numbered(3)));
        let columns: Columns = "time=stamp,x_m=e,y_m=n".parse().unwrap();
        assert_eq!(columns.entries[1], (Field::East, ColumnRef::Named("e".into())));
        assert!(columns.needs_header());
    }

    #[test]
    fn what_cannot_be_understood_says_why() {
        for (text, words) in [
            ("time", "\"time\" is no column"),
            ("time=", "is no column"),
            (
                "tyme=a,lat=b,lon=c",
                "unknown key \"tyme\", expected one of time, date, lat",
            ),
            ("time=#0,lat=#1,lon=#2", "\"#0\" is no column number"),
            ("time=#x,lat=#1,lon=#2", "\"#x\" is no column number"),
            ("time=a,lat=b,lat=c", "key \"lat\" is given twice"),
            ("lat=a,lon=b", "no column for time"),
            ("time=a,lat=b", "no column for lon"),
            ("time=a,x_m=b", "no column for y_m"),
            ("time=a,x_m=b,y_m=c,lat=d", "one kind of position only"),
        ] {
            let error = text.parse::<Columns>().unwrap_err().to_string();
            assert!(error.contains(words), "{text}: {error}");
        }
    }
}
