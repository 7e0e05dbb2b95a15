//! Which fixes does a table of values hold?
//!
//! One row a fix, columns known by their header or by [`Columns`]. Separators are comma, semicolon, tab or blanks; with
//! any but the comma, numbers may have a decimal comma. Cells may stand in double quotes. Lines that begin with `#`, `%`
//! or `//` are remarks.
//!
//! - Times: RFC 3339 and the like, Unix seconds, milliseconds or microseconds, date and time in two columns, a time of
//!   day alone (with a given date), or seconds since a start of the logger's own. The kind is decided from the first
//!   rows. Dates with slashes are read in the order that one of them proves; where none does, the log is refused.
//! - Positions: degrees of latitude and longitude, or metres on the logger's own plane.
//!
//! Cost: one pass, no allocation per row.

mod columns;
mod line;
mod table;
mod times;

pub use columns::{Columns, ColumnsError};
pub(crate) use line::corners;
pub(crate) use table::has_header;

use crate::clock::{self, DAY_US, TimeFault, Zone, seconds};
use crate::error::IngestError;
use crate::ledger::{excerpt, line_of};
use crate::number::{DEGREE_M, Steps, whole};
use crate::reading::{self, Found, Ground, NO_MORE, RADIUS_68_PER_SD, Reading};
use crate::{ReadOptions, check_size};
use columns::{Field, Layout};
use table::{Lines, Table, cells, find_header, is_remark, number, table_of_columns};
use times::{Order, TimeKind};
use tussock_types::{Fix, FixQuality, SkipReason, plural};

/// The kind of times is decided from so many rows.
const PROBED_ROWS: usize = 200;

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
    let mut reading = Reading::new(text.len());
    if table.layout.get(Field::Lat).is_none() {
        reading.ground = Ground::Plane;
    }
    let mut rows = Rows {
        name,
        text,
        options,
        kind: None,
        order: None,
        table,
        reading,
        steps: Steps::default(),
        last_of_day: None,
        without_zone: None,
        rows: 0,
    };
    rows.preamble();
    if rows.table.layout.has_time() {
        rows.decide_times()?;
    }
    rows.run()?;
    Ok(rows.finish())
}

struct Rows<'a> {
    name: &'a str,
    text: &'a [u8],
    options: &'a ReadOptions,
    table: Table,
    kind: Option<TimeKind>,
    order: Option<Order>,
    reading: Reading,
    steps: Steps,
    /// Day and time of day of the row before, where rows have no date.
    last_of_day: Option<(i32, i64)>,
    without_zone: Option<usize>,
    rows: u64,
}

impl<'a> Rows<'a> {
    /// Lines before the header.
    fn preamble(&mut self) {
        let header = self.table.header;
        for line in Lines::new(self.text).take_while(|line| line.start < header) {
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

    /// Solution files of surveying software say in a remark that their times are GPS time.
    fn remark(&mut self, content: &[u8]) {
        if memchr::memmem::find(content, b"GPST").is_some() {
            self.reading.notice("gps_time", 0, || {
                "a remark says that times are GPS time, 18 s ahead of UTC since 2017; they are left as they are".into()
            });
        }
    }

    /// Decides how times are written, and in which order dates.
    fn decide_times(&mut self) -> Result<(), IngestError> {
        let (Some(time_at), date_at) = (
            self.table.layout.get(Field::Time),
            self.table.layout.get(Field::Date),
        ) else {
            return Ok(());
        };
        let is_relative = self.table.layout.time_is_relative || self.reading.ground == Ground::Plane;
        let mut row = Vec::new();
        let mut ambiguous: Option<(usize, &'a [u8])> = None;
        let mut counts: Vec<(TimeKind, u32)> = Vec::new();
        let mut probed = 0;
        for line in Lines::new(&self.text[self.table.body..]) {
            if probed >= PROBED_ROWS && (ambiguous.is_none() || self.order.is_some()) {
                break;
            }
            if is_remark(line.content) {
                continue;
            }
            cells(line.content, self.table.separator, &mut row);
            if let Some(cell) = row.get(time_at)
                && let Some(kind) = TimeKind::of(cell, is_relative)
            {
                probed += 1;
                match counts.iter_mut().find(|(known, _)| *known == kind) {
                    Some((_, count)) => *count += 1,
                    None => counts.push((kind, 1)),
                }
            }
            if let Some(&cell) = row.get(date_at.unwrap_or(time_at)) {
                if self.order.is_none() {
                    self.order = times::order_of(cell).filter(|_| !is_same(cell));
                }
                if ambiguous.is_none() && times::is_ambiguous(cell) {
                    ambiguous = Some((self.table.body + line.start, cell));
                }
            }
        }
        self.kind = counts
            .iter()
            .max_by_key(|(_, count)| *count)
            .map(|(kind, _)| *kind);
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
            if self.reading.ground == Ground::Earth {
                self.reading.notice("time_is_relative", 0, || {
                    "times count from a start of the logger's own and carry no date".into()
                });
            }
        }
        Ok(())
    }

    /// The order in which a date is the given one.
    fn order_by_date(&self, cell: &[u8]) -> Option<Order> {
        let given = clock::day_of(self.options.date?);
        [Order::DayFirst, Order::MonthFirst]
            .into_iter()
            .find(|&order| times::date_and_rest(cell, Some(order)).is_some_and(|(day, _)| day == Some(given)))
    }

    fn run(&mut self) -> Result<(), IngestError> {
        let mut row: Vec<&'a [u8]> = Vec::new();
        let body = self.table.body;
        for line in Lines::new(&self.text[body..]) {
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
                self.reading
                    .too_long("line", "line_bytes", line, content.len() as u64, limit);
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
                    self.reading.ledger.used(start, end);
                    self.reading.keep(Found {
                        fix,
                        start,
                        end,
                        more: NO_MORE,
                        count: 1,
                    });
                }
                Err(reason) => {
                    let reason = match reason {
                        SkipReason::Malformed if Layout::of_header(&row).has_position() => {
                            SkipReason::NotAPosition
                        }
                        SkipReason::Malformed if !line.is_complete => SkipReason::Truncated,
                        reason => reason,
                    };
                    if reason == SkipReason::NoTime {
                        self.reading.timeless_at(start);
                    }
                    self.reading.ledger.skip(start, end, reason, 1);
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
        self.table.layout.get(field).and_then(|at| row.get(at)).copied()
    }

    fn value(&self, row: &[&'a [u8]], field: Field) -> Option<f64> {
        number(self.cell(row, field)?, self.table.separator).map(|number| number.value)
    }

    /// A row as a fix, with the digits of its position. The time is NaN where a date is wanting.
    fn fix(&mut self, row: &[&'a [u8]]) -> Result<(Fix, u8), SkipReason> {
        let (first, second) = match self.reading.ground {
            Ground::Earth => (self.cell(row, Field::Lat), self.cell(row, Field::Lon)),
            Ground::Plane => (self.cell(row, Field::East), self.cell(row, Field::North)),
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
        match self.reading.ground {
            Ground::Earth => reading::geographic_fault(first.value, second.value).map_or(Ok(()), Err)?,
            Ground::Plane if !(first.value.is_finite() && second.value.is_finite()) => {
                return Err(SkipReason::NotFinite);
            }
            Ground::Plane => {}
        }
        let mut fix = Fix::bare(0.0, first.value, second.value);
        if let Some(cell) = self.cell(row, Field::Quality) {
            fix.quality = quality(cell)?;
        }
        fix.time_s = self.time(row)?;
        fix.hdop = self
            .value(row, Field::Hdop)
            .map_or(f32::NAN, reading::not_negative);
        fix.claimed_sd_m = self
            .value(row, Field::Sd)
            .or_else(|| {
                self.value(row, Field::Accuracy)
                    .map(|radius| radius / RADIUS_68_PER_SD)
            })
            .map_or(f32::NAN, reading::not_negative);
        fix.speed_mps = self
            .value(row, Field::SpeedMps)
            .or_else(|| self.value(row, Field::SpeedKmh).map(|kmh| kmh / 3.6))
            .map_or(f32::NAN, reading::not_negative);
        fix.course_deg = self.value(row, Field::Course).map_or(f32::NAN, reading::course);
        fix.height_msl_m = self.value(row, Field::Height).map_or(f32::NAN, reading::finite);
        fix.satellites = self
            .cell(row, Field::Satellites)
            .and_then(whole)
            .map_or(u8::MAX, reading::satellites);
        Ok((fix, first.decimals.max(second.decimals)))
    }

    fn time(&mut self, row: &[&'a [u8]]) -> Result<f64, SkipReason> {
        let fault = |fault| match fault {
            TimeFault::Malformed => SkipReason::Malformed,
            TimeFault::OutOfRange => SkipReason::OutOfRange,
        };
        let cell = self
            .cell(row, Field::Time)
            .filter(|cell| !cell.is_empty())
            .ok_or(SkipReason::NoTime)?;
        let kind = self.kind.ok_or(SkipReason::Malformed)?;
        if !kind.is_of_day() {
            let written = times::instant(cell, kind, self.order).map_err(fault)?;
            self.note_zone(written.zone, cell);
            return Ok(written.time_s);
        }
        let (micros, zone) = times::of_day(cell, kind).ok_or(SkipReason::Malformed)?;
        if let Some(date) = self.cell(row, Field::Date) {
            let (day, rest) = times::date_and_rest(date, self.order).ok_or(SkipReason::Malformed)?;
            if !rest.is_empty() {
                return Err(SkipReason::Malformed);
            }
            self.note_zone(zone, cell);
            let day = day.ok_or(SkipReason::OutOfRange)?;
            return clock::in_range(seconds(day, micros), zone)
                .map(|written| written.time_s)
                .map_err(fault);
        }
        let Some(given) = self.options.date else {
            return Ok(f64::NAN);
        };
        let (mut day, last) = self.last_of_day.unwrap_or((clock::day_of(given), micros));
        // As in NMEA logs: a fall of more than an hour is the next day.
        if micros < last - 3_600_000_000 {
            day += 1;
        } else if micros > last + DAY_US - 3_600_000_000 {
            day -= 1;
        }
        self.last_of_day = Some((day, micros));
        Ok(seconds(day, micros))
    }

    fn note_zone(&mut self, zone: Zone, cell: &[u8]) {
        if zone == Zone::Missing && self.without_zone.is_none() {
            self.without_zone = Some(cell.as_ptr() as usize - self.text.as_ptr() as usize);
        }
    }

    fn finish(mut self) -> Reading {
        if let Some(byte) = self.without_zone {
            let line = line_of(self.text, byte as u64);
            self.reading.notice("time_without_zone", line, || {
                "times do not say their zone and are taken as UTC".into()
            });
        }
        let unit_m = if self.reading.ground == Ground::Earth {
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

/// True for a date whose day and month are one number, which proves no order.
fn is_same(cell: &[u8]) -> bool {
    let same = |order| times::date_and_rest(cell, Some(order)).and_then(|(day, _)| day);
    let numbers: Vec<&[u8]> = cell.split(|b| !b.is_ascii_digit()).take(2).collect();
    numbers.len() == 2 && numbers[0] == numbers[1] && same(Order::DayFirst).is_some()
}

/// Quality as GGA codes it, or in the words of GPX.
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
