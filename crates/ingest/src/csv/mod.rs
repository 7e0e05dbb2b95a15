//! Which fixes does a table of values contain?
//!
//! One row per fix, with columns known by their header or by [`Columns`]. Separators are comma, semicolon, tab or blanks;
//! with any except the comma, numbers may have a decimal comma. Cells may be in double quotes. Lines that begin with `#`,
//! `%` or `//` are remarks.
//!
//! - Times: RFC 3339 and similar, Unix seconds, milliseconds or microseconds, date and time in two columns, a time of day
//!   alone (with a given date), or seconds since the logger's own start. The kind is decided from the first rows. Dates with
//!   slashes are read in the order that one of them proves; if none does, the log is refused. GPS weeks and seconds of the
//!   week become UTC; a number that counts from an unknown start is refused.
//! - Solution files of RTKLIB (manual of version 2.4.2, appendix B.1) are tables whose header is a remark; their first
//!   column, the clock, may be two columns in rows, and their quality codes are their own.
//! - Rows may also be `key=value` in every cell, without a header.
//! - A column that names machines parts their fixes, as tracks do; what belongs together is decided by places.
//! - Positions: degrees of latitude and longitude, or metres on the logger's own plane.
//!
//! Cost: one pass, no allocation per row.

mod columns;
mod line;
mod table;
mod times;

pub use columns::{Columns, ColumnsError};
pub(crate) use line::corners;
pub(crate) use table::kind;

use crate::clock::{self, DAY_US, Zone, seconds};
use crate::error::IngestError;
use crate::ledger::{excerpt, line_of};
use crate::lines::TextLines;
use crate::number::{DEGREE_M, WrittenSteps, whole};
use crate::reading::{self, PositionsOn, RADIUS_68_PER_SD, Reading};
use crate::{ReadOptions, check_size};
use columns::{Field, FieldPlaces};
use table::{CsvTable, cells, find_header, is_remark, number, table_of_columns};
use times::{Order, TimeKind};
use tussock_types::{Fix, FixQuality, Said, SkipReason, plural};

/// The kind of times is decided from this many rows.
const PROBED_ROWS: usize = 200;

/// More names than this in a column are no machines, and are not learnt.
const MOST_MACHINES: usize = 64;

/// Reads all rows.
pub(crate) fn read(name: &str, text: &[u8], options: &ReadOptions) -> Result<Reading, IngestError> {
    let table = match &options.columns {
        Some(columns) => table_of_columns(name, text, columns)?,
        None => find_header(text).ok_or_else(|| IngestError::NotALog {
            name: name.into(),
            found: "rows without known column names".into(),
            byte: 0,
        })?,
    };
    let scale = table.scale;
    let mut reading = Reading::new(text.len());
    if table.layout.get(Field::Lat).is_none() {
        reading.ground = PositionsOn::Plane;
    }
    let mut rows = CsvRows {
        name,
        text,
        options,
        kind: None,
        order: None,
        table,
        reading,
        steps: WrittenSteps::default(),
        last_of_day: None,
        scale,
        of_week_unit_s: 1.0,
        without_zone: None,
        machines: Vec::new(),
        rows: 0,
    };
    rows.preamble();
    if rows.table.layout.has_time() {
        rows.decide_times()?;
    }
    rows.run()?;
    Ok(rows.finish())
}

/// The clock that the times belong to.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Scale {
    Utc,
    Gps,
    /// Japan, nine hours ahead of UTC.
    Jst,
}

impl Scale {
    /// From its name in the header of a solution file.
    fn of(name: &[u8]) -> Option<Self> {
        match name {
            b"GPST" => Some(Self::Gps),
            b"UTC" => Some(Self::Utc),
            b"JST" => Some(Self::Jst),
            _ => None,
        }
    }

    fn utc_s(self, time_s: f64) -> f64 {
        match self {
            Self::Utc => time_s,
            Self::Gps => clock::utc_of_gps_s(time_s),
            Self::Jst => time_s - 9.0 * 3600.0,
        }
    }
}

struct CsvRows<'a> {
    name: &'a str,
    text: &'a [u8],
    options: &'a ReadOptions,
    table: CsvTable,
    kind: Option<TimeKind>,
    order: Option<Order>,
    reading: Reading,
    steps: WrittenSteps,
    /// Day and time of day of the previous row, if rows have no date.
    last_of_day: Option<(i32, i64)>,
    /// Stated in the header of a solution file.
    scale: Option<Scale>,
    /// Seconds in one unit of the time of week.
    of_week_unit_s: f64,
    without_zone: Option<usize>,
    /// Names of machines, in the order in which they appear.
    machines: Vec<&'a [u8]>,
    rows: u64,
}

impl<'a> CsvRows<'a> {
    /// Lines before the header.
    fn preamble(&mut self) {
        let header = self.table.header;
        for line in TextLines::new(self.text).take_while(|line| line.start < header) {
            let (start, end) = (line.start as u64, line.end as u64);
            let content = line.content.trim_ascii();
            if content.is_empty() {
                self.reading.ledger.used(start, end);
            } else {
                self.remark(content);
                let reason = if is_remark(content) {
                    SkipReason::NotAPosition
                } else {
                    SkipReason::NotOfTheFormat
                };
                self.reading.ledger.skip(start, end, reason, 1);
            }
        }
        self.reading
            .ledger
            .used(self.table.header as u64, self.table.body as u64);
    }

    /// The header of a solution file is a remark that begins with the clock of its times.
    fn remark(&mut self, content: &[u8]) {
        if let Some(scale) = table::clock_of_solution(content) {
            self.scale = Some(scale);
        }
    }

    /// Decides how times are written, and in which order dates are.
    fn decide_times(&mut self) -> Result<(), IngestError> {
        let layout = &self.table.layout;
        let fields = [Field::Time, Field::OfWeek, Field::Date];
        let Some(time) = fields.into_iter().find(|&field| layout.get(field).is_some()) else {
            return Ok(());
        };
        let date = if layout.get(Field::Date).is_some() {
            Field::Date
        } else {
            time
        };
        let is_relative = layout.time_is_relative || self.reading.ground == PositionsOn::Plane;
        let mut row = Vec::new();
        let mut ambiguous: Option<(usize, &'a [u8])> = None;
        let mut counts: Vec<(TimeKind, u32)> = Vec::new();
        let (mut first, mut probed) = (None, 0);
        for line in TextLines::new(&self.text[self.table.body..]) {
            if probed >= PROBED_ROWS && (ambiguous.is_none() || self.order.is_some()) {
                break;
            }
            if is_remark(line.content) {
                continue;
            }
            cells(line.content, self.table.separator, &mut row);
            let at = self.table.body + line.start;
            if let Some(cell) = self.cell(&row, time)
                && let Some(kind) = TimeKind::of(cell, number(cell, self.table.separator), is_relative)
            {
                probed += 1;
                first.get_or_insert((at, row.clone()));
                match counts.iter_mut().find(|(known, _)| *known == kind) {
                    Some((_, count)) => *count += 1,
                    None => counts.push((kind, 1)),
                }
            }
            if let Some(cell) = self.cell(&row, date) {
                if self.order.is_none() {
                    self.order = times::order_of(cell).filter(|_| !is_same(cell));
                }
                if ambiguous.is_none() && times::is_ambiguous(cell) {
                    ambiguous = Some((at, cell));
                }
            }
        }
        self.kind = times::most(&counts);
        if let Some((at, row)) = first {
            self.decide_clock(time, at, &row)?;
        }
        if let (Some((at, cell)), None) = (ambiguous, self.order) {
            self.order = self.order_by_date(cell);
            if self.order.is_none() {
                return Err(IngestError::DateOrder {
                    name: self.name.into(),
                    value: excerpt(cell),
                    line: line_of(self.text, at as u64),
                });
            }
        }
        if self.kind == Some(TimeKind::Relative) {
            self.reading.times_are_relative = true;
            if self.reading.ground == PositionsOn::Earth {
                self.reading.notice(0, Said::TimeIsRelative {});
            }
        }
        Ok(())
    }

    /// Numbers that are not Unix times count from somewhere: a GPS week, the logger's own start, or an unknown point.
    fn decide_clock(&mut self, time: Field, at: usize, row: &[&'a [u8]]) -> Result<(), IngestError> {
        let layout = &self.table.layout;
        let has = |field| layout.get(field).is_some();
        let of_week = self.of_week();
        // Anything with a name of its own, or a date beside it, is not a time of the week.
        let counts_weeks = has(Field::Week)
            && match self.kind {
                Some(TimeKind::Relative | TimeKind::Packed) if of_week == Field::OfWeek => true,
                Some(TimeKind::Relative) => !layout.time_is_relative,
                Some(TimeKind::Packed) => !has(Field::Date),
                Some(TimeKind::Unix) => self
                    .value(row, time)
                    .is_some_and(|value| value <= clock::WEEK_S * 1e3),
                _ => time == Field::OfWeek,
            };
        let no_clock = |value: Option<&[u8]>, expected| IngestError::NoClock {
            name: self.name.into(),
            value: excerpt(value.unwrap_or_default()),
            line: line_of(self.text, at as u64),
            expected,
        };
        if counts_weeks {
            let week = self.cell(row, Field::Week);
            let given = self.options.date.map(clock::day_of);
            if week
                .and_then(whole)
                .is_some_and(|week| times::full_week(week, given).is_none())
            {
                return Err(no_clock(
                    week,
                    "full GPS weeks (from 1024 on), or the day on which the log begins",
                ));
            }
            if layout.of_week_is_ms
                || self
                    .value(row, of_week)
                    .is_some_and(|of_week| of_week > clock::WEEK_S)
            {
                self.of_week_unit_s = 1e-3;
            }
            self.kind = Some(TimeKind::OfWeek);
        } else if time == Field::OfWeek
            || (self.kind == Some(TimeKind::Relative)
                && self.reading.ground == PositionsOn::Earth
                && !layout.time_is_relative)
        {
            return Err(no_clock(
                self.cell(row, time),
                "dates, Unix seconds, or a GPS week beside the seconds of the week",
            ));
        }
        Ok(())
    }

    /// The order in which a date equals the given one.
    fn order_by_date(&self, cell: &[u8]) -> Option<Order> {
        let given = clock::day_of(self.options.date?);
        [Order::DayFirst, Order::MonthFirst]
            .into_iter()
            .find(|&order| times::date_and_rest(cell, Some(order)).is_some_and(|(day, _)| day == Some(given)))
    }

    fn run(&mut self) -> Result<(), IngestError> {
        let mut row: Vec<&'a [u8]> = Vec::new();
        let body = self.table.body;
        for line in TextLines::new(&self.text[body..]) {
            let (start, end) = ((body + line.start) as u64, (body + line.end) as u64);
            let content = line.content;
            if content.trim_ascii().is_empty() {
                self.reading.ledger.used(start, end);
                continue;
            }
            if is_remark(content) {
                self.remark(content);
                self.reading.ledger.skip(start, end, SkipReason::NotAPosition, 1);
                continue;
            }
            if content.len() as u64 > self.options.limits.line_bytes {
                let text = self.text;
                let limit = self.options.limits.line_bytes;
                let line = || line_of(text, start);
                self.reading.notice_at(
                    line,
                    Said::LineTooLong {
                        bytes: content.len() as u64,
                        limit,
                    },
                );
                self.reading.ledger.skip(start, end, SkipReason::TooLong, 1);
                continue;
            }
            cells(content, self.table.separator, &mut row);
            self.rows += 1;
            let outcome = if !line.is_complete && row.len() < self.table.width {
                Err(SkipReason::Truncated)
            } else {
                self.fix(&row)
            };
            match outcome {
                Ok((fix, decimals)) => {
                    if fix.time_s.is_nan() {
                        return Err(self.no_date(&row, start));
                    }
                    self.steps.add(decimals);
                    self.reading.take(fix, start, end);
                }
                Err(reason) => {
                    let reason = match reason {
                        SkipReason::Malformed if FieldPlaces::of_header(&row).has_position() => {
                            SkipReason::NotAPosition
                        }
                        SkipReason::Malformed if !line.is_complete => SkipReason::Truncated,
                        reason => reason,
                    };
                    self.reading.skip(start, end, reason);
                }
            }
            check_size(self.name, &self.reading, self.text, &self.options.limits, end)?;
        }
        Ok(())
    }

    fn no_date(&self, row: &[&[u8]], start: u64) -> IngestError {
        let cell = self
            .table
            .layout
            .get(Field::Time)
            .and_then(|at| row.get(at))
            .copied()
            .unwrap_or_default();
        IngestError::NoDate {
            name: self.name.into(),
            time_of_day: excerpt(cell),
            line: line_of(self.text, start),
        }
    }

    fn cell(&self, row: &[&'a [u8]], field: Field) -> Option<&'a [u8]> {
        let at = self.table.layout.get(field)?;
        match self.table.keys.get(at) {
            None => row.get(at).copied(),
            Some(key) => row
                .iter()
                .find_map(|cell| cell.strip_prefix(&key[..]))
                .map(<[u8]>::trim_ascii),
        }
    }

    fn value(&self, row: &[&'a [u8]], field: Field) -> Option<f64> {
        number(self.cell(row, field)?, self.table.separator).map(|number| number.value)
    }

    /// A row as a fix, with the digits of its position. The time is NaN if a date is missing.
    fn fix(&mut self, row: &[&'a [u8]]) -> Result<(Fix, u8), SkipReason> {
        let (first, second) = match self.reading.ground {
            PositionsOn::Earth => (self.cell(row, Field::Lat), self.cell(row, Field::Lon)),
            PositionsOn::Plane => (self.cell(row, Field::East), self.cell(row, Field::North)),
        };
        let (Some(first), Some(second)) = (first, second) else {
            return Err(SkipReason::Malformed);
        };
        if first.is_empty() && second.is_empty() {
            return Err(SkipReason::NoFix);
        }
        let (Some(first), Some(second)) = (
            number(first, self.table.separator),
            number(second, self.table.separator),
        ) else {
            return Err(SkipReason::Malformed);
        };
        let fault = match self.reading.ground {
            PositionsOn::Earth => reading::geographic_fault(first.value, second.value),
            PositionsOn::Plane => reading::local_fault(first.value, second.value),
        };
        fault.map_or(Ok(()), Err)?;
        let mut fix = Fix::bare(0.0, first.value, second.value);
        if let Some(cell) = self.cell(row, Field::Quality) {
            fix.quality = if self.scale.is_some() {
                reading::solution_quality(cell)?
            } else {
                quality(cell)?
            };
        }
        fix.time_s = self.time(row)?;
        if let Some(name) = self.cell(row, Field::Machine)
            && self.machines.len() <= MOST_MACHINES
        {
            let known = self.machines.iter().rposition(|known| *known == name);
            fix.segment = known.unwrap_or_else(|| {
                self.machines.push(name);
                self.machines.len() - 1
            }) as u32;
        }
        fix.hdop = self.value(row, Field::Hdop).map_or(f32::NAN, reading::hdop);
        fix.claimed_sd_m = self
            .value(row, Field::Sd)
            .or_else(|| {
                let (east_m, north_m) = (self.value(row, Field::SdEast)?, self.value(row, Field::SdNorth)?);
                Some(f64::from(reading::per_axis_sd_m(east_m, north_m)))
            })
            .or_else(|| {
                self.value(row, Field::Accuracy)
                    .map(|radius| radius / RADIUS_68_PER_SD)
            })
            .map_or(f32::NAN, reading::sd_m);
        fix.speed_mps = self
            .value(row, Field::SpeedMps)
            .or_else(|| self.value(row, Field::SpeedKmh).map(|kmh| kmh / 3.6))
            .map_or(f32::NAN, reading::speed_mps);
        fix.course_deg = self.value(row, Field::Course).map_or(f32::NAN, reading::course);
        fix.height_msl_m = self.value(row, Field::Height).map_or(f32::NAN, reading::height_m);
        fix.satellites = self
            .cell(row, Field::Satellites)
            .and_then(whole)
            .map_or(u8::MAX, reading::satellites);
        Ok((fix, first.decimals.max(second.decimals)))
    }

    fn time(&mut self, row: &[&'a [u8]]) -> Result<f64, SkipReason> {
        let given = self.options.date.map(clock::day_of);
        let some = |field| self.cell(row, field).filter(|cell| !cell.is_empty());
        if self.kind == Some(TimeKind::OfWeek) {
            let of_week = some(self.of_week()).ok_or(SkipReason::NoTime)?;
            let week = some(Field::Week).ok_or(SkipReason::NoTime)?;
            let time_s = number(of_week, self.table.separator)
                .and_then(|of_week| times::of_week(week, of_week.value * self.of_week_unit_s, given))
                .ok_or(SkipReason::Malformed)?;
            return self.in_range(time_s, Zone::Stated);
        }
        let cell = some(Field::Time)
            .or_else(|| some(Field::Date).filter(|_| self.table.layout.get(Field::Time).is_none()))
            .ok_or(SkipReason::NoTime)?;
        let kind = self.kind.ok_or(SkipReason::Malformed)?;
        if !kind.is_of_day() {
            let written = times::instant(cell, number(cell, self.table.separator), kind, self.order)
                .map_err(SkipReason::from)?;
            self.note_zone(written.zone, cell);
            return if kind == TimeKind::Instant {
                self.in_range(written.time_s, written.zone)
            } else {
                Ok(written.time_s)
            };
        }
        let (micros, ahead_s, zone) = times::of_day(cell, kind).ok_or(SkipReason::Malformed)?;
        if let Some(date) = self.cell(row, Field::Date) {
            let (day, rest) = times::date_and_rest(date, self.order).ok_or(SkipReason::Malformed)?;
            if !rest.is_empty() {
                return Err(SkipReason::Malformed);
            }
            self.note_zone(zone, cell);
            let day = day.ok_or(SkipReason::OutOfRange)?;
            return self.in_range(seconds(day, micros - ahead_s * 1_000_000), zone);
        }
        let Some(given) = given else {
            return Ok(f64::NAN);
        };
        if ahead_s != 0 {
            // The time zone of the given day is unknown.
            return Err(SkipReason::Malformed);
        }
        let (mut day, last) = self.last_of_day.unwrap_or((given, micros));
        // As in NMEA logs: a fall of more than an hour means the next day.
        if micros < last - 3_600_000_000 {
            day += 1;
        } else if micros > last + DAY_US - 3_600_000_000 {
            day -= 1;
        }
        self.last_of_day = Some((day, micros));
        Ok(seconds(day, micros))
    }

    /// The column with the time of the week, if weeks are counted.
    fn of_week(&self) -> Field {
        match self.table.layout.get(Field::OfWeek) {
            Some(_) => Field::OfWeek,
            None => Field::Time,
        }
    }

    fn scale(&self) -> Scale {
        match self.kind {
            Some(TimeKind::OfWeek) => self.scale.unwrap_or(Scale::Gps),
            _ => self.scale.unwrap_or(Scale::Utc),
        }
    }

    /// A time of the log's own clock as UTC.
    fn in_range(&self, time_s: f64, zone: Zone) -> Result<f64, SkipReason> {
        clock::in_range(self.scale().utc_s(time_s), zone)
            .map(|written| written.time_s)
            .map_err(SkipReason::from)
    }

    fn note_zone(&mut self, zone: Zone, cell: &[u8]) {
        if zone == Zone::Missing && self.without_zone.is_none() {
            self.without_zone = Some(cell.as_ptr() as usize - self.text.as_ptr() as usize);
        }
    }

    fn finish(mut self) -> Reading {
        if self.scale() == Scale::Gps && !self.reading.found.is_empty() {
            self.reading.notice(0, Said::GpsTime {});
        } else if let Some(byte) = self.without_zone.filter(|_| self.scale.is_none()) {
            let line = line_of(self.text, byte as u64);
            self.reading.without_zone(line);
        }
        self.reading.names_machines = !self.machines.is_empty();
        let unit_m = if self.reading.ground == PositionsOn::Earth {
            DEGREE_M
        } else {
            1.0
        };
        self.reading.resolution_m = self.steps.resolution_m(unit_m);
        self.reading.holds = format!(
            "{}; skipped {}",
            plural(self.rows, "row", "rows"),
            self.reading.ledger.words()
        );
        self.reading
    }
}

/// True for a date whose day and month are the same number, which proves no order.
fn is_same(cell: &[u8]) -> bool {
    let same = |order| times::date_and_rest(cell, Some(order)).and_then(|(day, _)| day);
    let numbers: Vec<&[u8]> = cell.split(|b| !b.is_ascii_digit()).take(2).collect();
    numbers.len() == 2 && numbers[0] == numbers[1] && same(Order::DayFirst).is_some()
}

/// Quality as a GGA code, or in the words of GPX.
fn quality(cell: &[u8]) -> Result<FixQuality, SkipReason> {
    if cell.is_empty() {
        return Ok(FixQuality::Unknown);
    }
    if let Some(code) = whole(cell) {
        return reading::gga_quality(code).ok_or(SkipReason::NoFix);
    }
    let word = String::from_utf8_lossy(cell)
        .to_ascii_lowercase()
        .replace([' ', '-'], "_");
    Ok(match word.as_str() {
        "none" | "no_fix" | "nofix" | "invalid" => return Err(SkipReason::NoFix),
        "2d" | "3d" | "single" | "autonomous" | "gps" => FixQuality::Autonomous,
        "dgps" | "differential" | "sbas" => FixQuality::Differential,
        "pps" | "precise" => FixQuality::Precise,
        "rtk" | "rtk_fixed" | "fixed" | "rtk_fix" => FixQuality::RtkFixed,
        "float" | "rtk_float" => FixQuality::RtkFloat,
        "estimated" | "dead_reckoning" | "dr" => FixQuality::Estimated,
        "manual" => FixQuality::Manual,
        "simulated" | "simulation" => FixQuality::Simulated,
        _ => FixQuality::Unknown,
    })
}
