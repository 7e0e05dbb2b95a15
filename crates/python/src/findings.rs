//! How answers go out.

use crate::door::{Class, Fault, work};
use crate::trace::lend;
use crate::work::GivenInputs;
use pyo3::prelude::*;
use pyo3::pybacked::PyBackedBytes;
use pyo3::types::PyBytes;
use std::sync::Arc;
use tussock::{Advice, CompareError, Job, Side, Sides};
use tussock_report::{Privacy, ReportError, Style, Voice};
use tussock_types::{ComplaintSettings, Language, Units};

/// Everything that one analysis found.
#[pyclass(frozen, module = "tussock._tussock")]
pub(crate) struct Findings {
    inner: Arc<tussock_types::Findings>,
    from: Option<Arc<GivenInputs>>,
}

impl Findings {
    pub(crate) fn of(inner: tussock_types::Findings, from: Option<GivenInputs>) -> Self {
        Self {
            inner: Arc::new(inner),
            from: from.map(Arc::new),
        }
    }
}

fn failed(error: ReportError) -> Fault {
    Fault::of(Class::Report, &error)
}

/// A voice by its words, which the wrapper has checked; for any other it is ours.
fn voice(language: &str, units: &str) -> Voice {
    let units = Units::ALL.into_iter().find(|of| of.word() == units);
    Voice::new(
        Language::of_locale(language).unwrap_or_default(),
        units.unwrap_or_default(),
    )
}

/// East and north of the south-west corner, side of a cell, columns, rows.
type GridTuple = (f64, f64, f64, usize, usize);

#[pymethods]
impl Findings {
    /// `findings.json`.
    fn to_json(&self, py: Python<'_>, is_private: bool) -> PyResult<String> {
        work(py, || match Privacy::from(is_private) {
            Privacy::Full => tussock_report::to_json(&self.inner).map_err(failed),
            Privacy::Private => tussock_report::redact(&self.inner)
                .and_then(|private| tussock_report::to_json(&private))
                .map_err(failed),
        })
    }

    /// Every file that these findings allow: names and bytes.
    fn outputs<'py>(
        &self,
        py: Python<'py>,
        is_private: bool,
        map_width_px: u32,
        language: &str,
        units: &str,
    ) -> PyResult<Vec<(&'static str, Bound<'py, PyBytes>)>> {
        let voice = voice(language, units);
        let outputs = work(py, move || {
            tussock_report::outputs_sized(&self.inner, is_private.into(), map_width_px, voice).map_err(failed)
        })?;
        Ok(outputs
            .into_iter()
            .map(|output| (output.name, PyBytes::new(py, &output.bytes)))
            .collect())
    }

    /// What is known of a place, as a JSON list of one.
    fn ask(
        &self,
        py: Python<'_>,
        at: Option<[f64; 2]>,
        at_m: Option<[f64; 2]>,
        radius_m: f64,
        said: Option<String>,
    ) -> PyResult<String> {
        work(py, move || {
            let asked = ComplaintSettings {
                at_deg: at,
                at_m,
                radius_m,
                said,
            };
            let found = tussock::ask(&self.inner, &asked)?;
            tussock_report::complaints_to_json(&[found]).map_err(failed)
        })
    }

    /// Files that are left out, each with the reason.
    fn left_out(&self, is_private: bool) -> Vec<(&'static str, String)> {
        tussock_report::left_out(&self.inner, is_private.into(), Voice::default())
    }

    /// `findings.geojson`.
    fn geojson(&self, py: Python<'_>) -> PyResult<String> {
        work(py, move || tussock_report::geojson(&self.inner).map_err(failed))
    }

    /// `map.png` at a width.
    fn map_png<'py>(&self, py: Python<'py>, width_px: u32) -> PyResult<Bound<'py, PyBytes>> {
        let bytes = work(py, move || {
            tussock_report::map_png(&self.inner, width_px, Voice::default()).map_err(failed)
        })?;
        Ok(PyBytes::new(py, &bytes))
    }

    /// The answer of the terminal, plain.
    fn answer(&self, py: Python<'_>) -> PyResult<String> {
        work(py, move || {
            Ok(tussock_report::answer(&self.inner, Style::default()))
        })
    }

    /// The squares, or `None` without a cutting width.
    fn grid(&self) -> Option<GridTuple> {
        let grid = self.inner.cells.as_ref()?.grid;
        Some((
            grid.east_min_m,
            grid.north_min_m,
            grid.cell_m,
            grid.columns,
            grid.rows,
        ))
    }

    /// A column of the squares by name, row by row from the south-west, without a copy; `None` without squares.
    fn cells<'py>(slf: Bound<'py, Self>, name: &str) -> PyResult<Option<Bound<'py, PyAny>>> {
        let findings = Arc::clone(&slf.get().inner);
        let Some(cells) = &findings.cells else {
            return Ok(None);
        };
        let column = match name {
            "lawn_fraction" => &cells.lawn_fraction,
            "visited_probability" => &cells.visited_probability,
            "visits_expected" => &cells.visits_expected,
            "first_visit_s" => &cells.first_visit_s,
            "last_visit_s" => &cells.last_visit_s,
            _ => {
                let message = format!(
                    "no column {name:?} of cells, expected one of lawn_fraction, visited_probability, visits_expected, \
                     first_visit_s, last_visit_s"
                );
                return Err(Fault::new(Class::Report, "no_column", message).raise(slf.py()));
            }
        };
        Ok(Some(lend(slf.into_any(), column)))
    }
}

/// Reads `findings.json` back.
#[pyfunction]
pub(crate) fn read_findings(py: Python<'_>, name: String, content: PyBackedBytes) -> PyResult<Findings> {
    work(py, move || {
        let found = tussock_report::from_json(&content).map_err(|error| {
            let message = format!("{name}: {error}");
            Fault::of(Class::Report, &error).said(message).hint(Some(
                "findings.json is written by tussock analyse --out DIR and Findings.report".to_owned(),
            ))
        })?;
        Ok(Findings::of(found, None))
    })
}

/// What a change brought.
#[pyclass(frozen, module = "tussock._tussock")]
pub(crate) struct Comparison {
    inner: Arc<tussock_types::Comparison>,
}

#[pymethods]
impl Comparison {
    /// `comparison.json`.
    fn to_json(&self, py: Python<'_>) -> PyResult<String> {
        work(py, move || {
            tussock_report::comparison_to_json(&self.inner).map_err(failed)
        })
    }

    /// `comparison.html`.
    fn html(&self, py: Python<'_>, language: &str, units: &str) -> PyResult<String> {
        work(py, move || {
            tussock_report::html_comparison(&self.inner, voice(language, units)).map_err(failed)
        })
    }

    /// The answer of the terminal, plain.
    fn answer(&self, py: Python<'_>) -> PyResult<String> {
        work(py, move || {
            Ok(tussock_report::answer_comparison(&self.inner, Style::default()))
        })
    }
}

/// Reads `comparison.json` back.
#[pyfunction]
pub(crate) fn read_comparison(py: Python<'_>, name: String, content: PyBackedBytes) -> PyResult<Comparison> {
    work(py, move || {
        let found = tussock_report::comparison_from_json(&content).map_err(|error| {
            let message = format!("{name}: {error}");
            Fault::of(Class::Report, &error).said(message)
        })?;
        Ok(Comparison {
            inner: Arc::new(found),
        })
    })
}

/// What did a change bring?
#[pyfunction]
pub(crate) fn compare(
    py: Python<'_>,
    before: Py<Findings>,
    after: Py<Findings>,
    before_names: Vec<String>,
    after_names: Vec<String>,
    seed: u64,
) -> PyResult<Comparison> {
    work(py, move || {
        let (before, after) = (before.get(), after.get());
        let job = |side: &'_ Findings| side.from.clone();
        let (kept_before, kept_after) = (job(before), job(after));
        let before_job: Option<Job<'_>> = kept_before.as_deref().map(|kept| kept.job(Advice::LeftOut));
        let after_job: Option<Job<'_>> = kept_after.as_deref().map(|kept| kept.job(Advice::LeftOut));
        let compared = tussock::compare(&Sides {
            before: Side {
                names: before_names,
                findings: &before.inner,
                job: before_job.as_ref(),
            },
            after: Side {
                names: after_names,
                findings: &after.inner,
                job: after_job.as_ref(),
            },
            seed,
        })
        .map_err(|error| match error {
            CompareError::Analyse(error) => error.into(),
            CompareError::NoWidth { .. } => Fault::of(Class::Compare, &error)
                .hint(Some("give machine.cut_width_m in the settings".to_owned())),
            _ => Fault::of(Class::Compare, &error),
        })?;
        Ok(Comparison {
            inner: Arc::new(compared),
        })
    })
}
