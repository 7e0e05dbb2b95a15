//! How do fixes come in, and how are they lent out?

use crate::door::{Class, Fault, work};
use crate::garden::Settings;
use numpy::ndarray::ArrayView1;
use numpy::{Element, PyArray1, PyArrayMethods, PyReadonlyArray1};
use pyo3::prelude::*;
use pyo3::pybacked::PyBackedBytes;
use pyo3::types::{PyBytes, PyDict};
use std::sync::Arc;
use tussock_ingest::{Policy, ReadOptions};
use tussock_types::{FixQuality, LogFacts, Positions};

/// Lends a column out as a read-only array that keeps its owner alive.
#[expect(unsafe_code, reason = "NumPy is given memory that it does not own")]
pub(crate) fn lend<'py, T: Element>(owner: Bound<'py, PyAny>, values: &[T]) -> Bound<'py, PyAny> {
    let view = ArrayView1::from(values);
    // SAFETY: every caller passes the frozen object that owns `values`; its columns are never changed or moved, and the array
    // holds a reference to it.
    let array = unsafe { PyArray1::borrow_from_array(&view, owner) };
    // Nobody else has seen the array yet.
    array.readwrite().make_nonwriteable();
    array.into_any()
}

/// Fixes of one machine in strictly rising time order, as columns.
#[pyclass(frozen, module = "tussock._tussock")]
pub(crate) struct Trace {
    pub(crate) inner: Arc<tussock_types::Trace>,
    /// Facts about the files it came from, each with its place in the order given.
    pub(crate) facts: Arc<Vec<(usize, LogFacts)>>,
    /// Rows of arrays that had no time or no position.
    left_out: Vec<usize>,
}

impl Trace {
    pub(crate) fn bare(inner: tussock_types::Trace) -> Self {
        Self {
            inner: Arc::new(inner),
            facts: Arc::default(),
            left_out: Vec::new(),
        }
    }
}

#[pymethods]
impl Trace {
    /// A trace from float64 columns: `first` and `second` are degrees of latitude and longitude where `is_geographic`, else metres
    /// east and north. `others` holds the columns of a receiver by name.
    #[new]
    fn new(
        py: Python<'_>,
        machine: String,
        time_s: PyReadonlyArray1<'_, f64>,
        first: PyReadonlyArray1<'_, f64>,
        second: PyReadonlyArray1<'_, f64>,
        is_geographic: bool,
        others: &Bound<'_, PyDict>,
    ) -> PyResult<Self> {
        let (first, second) = (first.as_slice()?.to_vec(), second.as_slice()?.to_vec());
        let time_s = time_s.as_slice()?.to_vec();
        let count = time_s.len();
        let codes = column(others, "quality", 0_u8, count)?;
        let trace = tussock_types::Trace {
            machine,
            positions: if is_geographic {
                Positions::Geographic {
                    lat_deg: first,
                    lon_deg: second,
                }
            } else {
                Positions::Local {
                    east_m: first,
                    north_m: second,
                }
            },
            time_s,
            segment: column(others, "segment", 0, count)?,
            quality: Vec::new(),
            hdop: column(others, "hdop", f32::NAN, count)?,
            claimed_sd_m: column(others, "claimed_sd_m", f32::NAN, count)?,
            speed_mps: column(others, "speed_mps", f32::NAN, count)?,
            course_deg: column(others, "course_deg", f32::NAN, count)?,
            height_msl_m: column(others, "height_msl_m", f32::NAN, count)?,
            satellites: column(others, "satellites", u8::MAX, count)?,
        };
        let (inner, left_out) = work(py, move || {
            let known = |&code: &u8| {
                let known = FixQuality::ALL.get(usize::from(code)).copied();
                known.ok_or_else(|| refused("out_of_range", format!("no quality has the code {code}")))
            };
            let quality = codes.iter().map(known).collect::<Result<Vec<_>, _>>()?;
            sifted(tussock_types::Trace { quality, ..trace })
        })?;
        Ok(Self {
            left_out,
            ..Self::bare(inner)
        })
    }

    /// Rows of the arrays that are not in the trace.
    #[getter]
    fn left_out(&self) -> Vec<usize> {
        self.left_out.clone()
    }

    fn __len__(&self) -> usize {
        self.inner.len()
    }

    #[getter]
    fn machine(&self) -> &str {
        &self.inner.machine
    }

    #[getter]
    fn is_geographic(&self) -> bool {
        matches!(self.inner.positions, Positions::Geographic { .. })
    }

    /// A column by name, without a copy; `quality` alone is copied, as codes.
    fn column<'py>(slf: Bound<'py, Self>, name: &str) -> PyResult<Bound<'py, PyAny>> {
        let trace = Arc::clone(&slf.get().inner);
        let py = slf.py();
        let owner = slf.into_any();
        let (first, second, first_name, second_name) = match &trace.positions {
            Positions::Geographic { lat_deg, lon_deg } => (lat_deg, lon_deg, "lat_deg", "lon_deg"),
            Positions::Local { east_m, north_m } => (east_m, north_m, "east_m", "north_m"),
        };
        Ok(match name {
            "time_s" => lend(owner, &trace.time_s),
            "segment" => lend(owner, &trace.segment),
            "hdop" => lend(owner, &trace.hdop),
            "claimed_sd_m" => lend(owner, &trace.claimed_sd_m),
            "speed_mps" => lend(owner, &trace.speed_mps),
            "course_deg" => lend(owner, &trace.course_deg),
            "height_msl_m" => lend(owner, &trace.height_msl_m),
            "satellites" => lend(owner, &trace.satellites),
            "quality" => {
                let codes = trace.quality.iter().map(|quality| *quality as u8).collect();
                PyArray1::<u8>::from_vec(py, codes).into_any()
            }
            _ if name == first_name => lend(owner, first),
            _ if name == second_name => lend(owner, second),
            _ => {
                let message = format!("no column {name:?} in a trace");
                return Err(refused("no_column", message).raise(py));
            }
        })
    }

    /// Facts about the files it came from, as a JSON list.
    fn facts_json(&self, py: Python<'_>) -> PyResult<String> {
        let facts = Arc::clone(&self.facts);
        work(py, move || {
            let plain: Vec<&LogFacts> = facts.iter().map(|(_, facts)| facts).collect();
            serde_json::to_string(&plain).map_err(|error| Fault::of(Class::Report, &error))
        })
    }

    /// The trace as a log: `gpx`, `nmea` or `csv`.
    fn log_bytes<'py>(&self, py: Python<'py>, format: &str) -> PyResult<Bound<'py, PyBytes>> {
        let trace = Arc::clone(&self.inner);
        let format = format.to_owned();
        let bytes = work(py, move || match format.as_str() {
            "gpx" | "nmea" if matches!(trace.positions, Positions::Local { .. }) => Err(refused(
                "no_place_on_earth",
                format!("positions in local metres have no place in a {format} log, expected csv"),
            )),
            "gpx" => Ok(tussock_simulate::gpx_bytes(&trace)),
            "nmea" => Ok(tussock_simulate::nmea_bytes(&trace)),
            "csv" => Ok(tussock_simulate::csv_bytes(&trace)),
            _ => Err(refused("not_a_log", format!("no log format {format:?}"))),
        })?;
        Ok(PyBytes::new(py, &bytes))
    }
}

/// A column of a receiver; where it is not given, so many of what stands for "not logged".
fn column<T: Element + Copy>(
    others: &Bound<'_, PyDict>,
    name: &str,
    usual: T,
    count: usize,
) -> PyResult<Vec<T>> {
    match others.get_item(name)? {
        None => Ok(vec![usual; count]),
        Some(column) => Ok(column.extract::<PyReadonlyArray1<'_, T>>()?.as_slice()?.to_vec()),
    }
}

fn refused(kind: &str, message: String) -> Fault {
    Fault::new(Class::Log, kind, message)
}

/// Later than every log: 2100-01-01 in seconds since 1970, as in the readers. Milliseconds of any year from 1970 on are above it.
const LATEST_S: f64 = 4_102_444_800.0;

/// The fixes that a reader would hand on, and the rows that have no time or no position. All else that is wrong is refused.
fn sifted(trace: tussock_types::Trace) -> Result<(tussock_types::Trace, Vec<usize>), Fault> {
    let (names, places) = match &trace.positions {
        Positions::Geographic { lat_deg, lon_deg } => (["lat_deg", "lon_deg"], [lat_deg, lon_deg]),
        Positions::Local { east_m, north_m } => (["east_m", "north_m"], [east_m, north_m]),
    };
    let count = trace.len();
    let lengths = [
        (names[0], places[0].len()),
        (names[1], places[1].len()),
        ("segment", trace.segment.len()),
        ("quality", trace.quality.len()),
        ("hdop", trace.hdop.len()),
        ("claimed_sd_m", trace.claimed_sd_m.len()),
        ("speed_mps", trace.speed_mps.len()),
        ("course_deg", trace.course_deg.len()),
        ("height_msl_m", trace.height_msl_m.len()),
        ("satellites", trace.satellites.len()),
    ];
    if let Some((name, length)) = lengths.iter().find(|(_, length)| *length != count) {
        let message = format!("column {name} has {length} values, expected {count} as in time_s");
        return Err(refused("uneven_columns", message));
    }
    let (mut left_out, mut before_s) = (Vec::new(), f64::NEG_INFINITY);
    for row in 0..count {
        let (time_s, (first, second)) = (trace.time_s[row], trace.positions.pair(row));
        if time_s.is_nan() || first.is_nan() || second.is_nan() {
            left_out.push(row);
            continue;
        }
        row_is_sound(&trace, row, before_s)?;
        before_s = time_s;
    }
    if left_out.is_empty() {
        return Ok((trace, left_out));
    }
    let mut kept = match &trace.positions {
        Positions::Geographic { .. } => tussock_types::Trace::geographic(trace.machine.clone()),
        Positions::Local { .. } => tussock_types::Trace::local(trace.machine.clone()),
    };
    (0..count)
        .filter(|row| left_out.binary_search(row).is_err())
        .for_each(|row| kept.push(trace.fix(row)));
    Ok((kept, left_out))
}

fn row_is_sound(trace: &tussock_types::Trace, row: usize, before_s: f64) -> Result<(), Fault> {
    let (time_s, (first, second)) = (trace.time_s[row], trace.positions.pair(row));
    if time_s.abs() >= LATEST_S {
        let message = format!("time_s[{row}] is {time_s}, expected seconds since 1970, before the year 2100");
        let hint = "divide milliseconds by 1e3, microseconds by 1e6, nanoseconds by 1e9; dates with a zone are taken too";
        return Err(refused("out_of_range", message).hint(Some(hint.to_owned())));
    }
    if time_s <= before_s {
        let message = format!("time_s[{row}] is {time_s} after {before_s}, expected strictly rising times");
        return Err(refused("time_reversed", message));
    }
    let (is_sound, expected) = match &trace.positions {
        Positions::Geographic { .. } => (
            first.abs() <= 90.0 && second.abs() <= 180.0,
            "a latitude within 90 and a longitude within 180 degrees",
        ),
        Positions::Local { .. } => (
            first.is_finite() && second.is_finite(),
            "finite metres east and north",
        ),
    };
    if !is_sound {
        let message = format!("fix {row} lies at {first}, {second}, expected {expected}");
        return Err(refused("out_of_range", message));
    }
    for (name, value, least) in [
        ("hdop", trace.hdop[row], 0.0),
        ("claimed_sd_m", trace.claimed_sd_m[row], 0.0),
        ("speed_mps", trace.speed_mps[row], 0.0),
        ("course_deg", trace.course_deg[row], f32::MIN),
        ("height_msl_m", trace.height_msl_m[row], f32::MIN),
    ] {
        if value < least || value == f32::INFINITY {
            let least = if least == 0.0 { " of 0 or more" } else { "" };
            let message =
                format!("{name}[{row}] is {value}, expected a finite number{least}, or NaN where not logged");
            return Err(refused("out_of_range", message));
        }
    }
    Ok(())
}

/// Reads logs and sorts them out by machine: one trace for each.
#[pyfunction]
pub(crate) fn read(
    py: Python<'_>,
    names: Vec<String>,
    contents: Vec<PyBackedBytes>,
    settings: Py<Settings>,
    date: Option<String>,
    columns: Option<String>,
    is_strict: bool,
) -> PyResult<Vec<Trace>> {
    work(py, move || {
        let options = ReadOptions {
            date: date.as_deref().map(day).transpose()?,
            columns: (columns
                .as_deref()
                .map(str::parse::<tussock_ingest::Columns>)
                .transpose())
            .map_err(|error| Fault::of(Class::Log, &error))?,
            policy: if is_strict {
                Policy::Strict
            } else {
                Policy::Lenient
            },
            limits: settings.get().inner.limits.clone(),
        };
        let mut files = Vec::with_capacity(names.len());
        for (name, content) in names.iter().zip(&contents) {
            files.push(tussock_ingest::read_log(name, &content[..], &options)?);
        }
        let assembled = tussock_ingest::assemble(files)?;
        let first = assembled.traces.first().map(|trace| trace.machine.clone());
        let belongs = |facts: &LogFacts, machine: &str| {
            facts.machine == machine || (facts.machine.is_empty() && first.as_deref() == Some(machine))
        };
        let facts_of = |machine: &str| -> Vec<(usize, LogFacts)> {
            assembled
                .inputs
                .iter()
                .cloned()
                .enumerate()
                .filter(|(_, facts)| belongs(facts, machine))
                .collect()
        };
        Ok(assembled
            .traces
            .iter()
            .map(|trace| Trace {
                facts: Arc::new(facts_of(&trace.machine)),
                ..Trace::bare(trace.clone())
            })
            .collect())
    })
}

/// A path that somebody surveyed.
#[pyclass(frozen, module = "tussock._tussock")]
pub(crate) struct Reference {
    pub(crate) inner: Arc<tussock_types::Reference>,
}

#[pymethods]
impl Reference {
    /// A surveyed path from a GPX file or a table, by the rules of the command.
    #[new]
    fn new(py: Python<'_>, name: String, content: PyBackedBytes, settings: Py<Settings>) -> PyResult<Self> {
        work(py, move || {
            let options = ReadOptions {
                limits: settings.get().inner.limits.clone(),
                ..ReadOptions::default()
            };
            let read = tussock_ingest::read_reference(&name, &content[..], &options)?;
            Ok(Self {
                inner: Arc::new(read),
            })
        })
    }

    /// A trace that is taken for the truth: its fixes are the corners, with their times.
    #[staticmethod]
    fn of_trace(trace: Py<Trace>, is_timed: bool) -> Self {
        let trace = &trace.get().inner;
        Self {
            inner: Arc::new(tussock_types::Reference {
                name: trace.machine.clone(),
                positions: trace.positions.clone(),
                piece: trace.segment.clone(),
                time_s: is_timed.then(|| trace.time_s.clone()),
            }),
        }
    }

    fn __len__(&self) -> usize {
        self.inner.positions.len()
    }

    #[getter]
    fn name(&self) -> &str {
        &self.inner.name
    }

    #[getter]
    fn is_timed(&self) -> bool {
        self.inner.time_s.is_some()
    }
}

impl From<tussock_ingest::IngestError> for Fault {
    fn from(error: tussock_ingest::IngestError) -> Self {
        Self::of(Class::Log, &error).hint(error.hint())
    }
}

fn day(typed: &str) -> Result<time::Date, Fault> {
    let format = time::macros::format_description!("[year]-[month]-[day]");
    time::Date::parse(typed, format).map_err(|_| {
        refused(
            "date",
            format!("date {typed:?}, expected year-month-day, such as 2026-05-01"),
        )
    })
}
