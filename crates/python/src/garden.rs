//! What was installed, and what is wanted.

use crate::door::{Class, Fault, work};
use pyo3::prelude::*;
use pyo3::pybacked::PyBackedBytes;
use serde_json::json;
use std::sync::Arc;
use tussock_types::PlanFault;

/// What the user wants, from TOML text.
#[pyclass(frozen, module = "tussock._tussock")]
pub(crate) struct Settings {
    pub(crate) inner: Arc<tussock_types::Settings>,
}

#[pymethods]
impl Settings {
    #[new]
    fn new(py: Python<'_>, name: String, text: String) -> PyResult<Self> {
        work(py, move || {
            let inner = tussock_ingest::read_settings(&name, &text).map_err(|error| {
                let faults = match &error {
                    tussock_ingest::SettingsError::Faults { faults, .. } => {
                        faults.iter().map(ToString::to_string).collect()
                    }
                    _ => Vec::new(),
                };
                Fault::of(Class::Settings, &error).faults(faults)
            })?;
            Ok(Self {
                inner: Arc::new(inner),
            })
        })
    }

    /// File of the device card that is to be read, as the settings name it.
    #[getter]
    fn card(&self) -> Option<String> {
        let card = self.inner.positions.card.as_ref()?;
        Some(card.file.clone())
    }

    /// The same with the device card read.
    fn with_card(&self, py: Python<'_>, name: String, content: PyBackedBytes) -> PyResult<Self> {
        let mut settings = (*self.inner).clone();
        work(py, move || {
            let read = tussock_ingest::read_error_series(&name, &content[..], &settings.limits);
            let errors = Arc::new(read.map_err(|error| Fault::of(Class::Settings, &error))?);
            if let Some(card) = &mut settings.positions.card {
                card.errors = Some(errors);
            }
            Ok(Self {
                inner: Arc::new(settings),
            })
        })
    }

    /// All settings as JSON, defaults included.
    fn to_json(&self, py: Python<'_>) -> PyResult<String> {
        let settings = Arc::clone(&self.inner);
        work(py, move || {
            serde_json::to_string(&*settings).map_err(|error| Fault::of(Class::Settings, &error))
        })
    }
}

/// What was installed, from GeoJSON.
#[pyclass(frozen, module = "tussock._tussock")]
pub(crate) struct Plan {
    pub(crate) inner: Arc<tussock_types::Plan>,
    faults: Vec<String>,
}

impl Plan {
    pub(crate) fn of(inner: tussock_types::Plan) -> Self {
        Self {
            inner: Arc::new(inner),
            faults: Vec::new(),
        }
    }
}

/// A plan with faults that must be mended first.
pub(crate) fn faulty(name: &str, faults: &[PlanFault]) -> Fault {
    let lines: Vec<String> = faults.iter().map(ToString::to_string).collect();
    let message = tussock_types::plan_faults(name, faults);
    Fault::new(Class::Plan, "faults", message).faults(lines)
}

#[pymethods]
impl Plan {
    /// A plan whose text and ground are sound.
    #[new]
    fn new(py: Python<'_>, name: String, content: PyBackedBytes, settings: Py<Settings>) -> PyResult<Self> {
        work(py, move || {
            let read = tussock_ingest::read_plan(&name, &content, &settings.get().inner.limits)
                .map_err(|error| Fault::of(Class::Plan, &error))?;
            let built = tussock::check_plan(&read.plan).faults;
            let faults = tussock::plane::merge_faults(read.faults, built);
            if faults.iter().any(|fault| fault.is_fatal) {
                return Err(faulty(&name, &faults));
            }
            Ok(Self {
                inner: Arc::new(read.plan),
                faults: faults.iter().map(ToString::to_string).collect(),
            })
        })
    }

    /// Things to look at that do not stop an analysis.
    #[getter]
    fn remarks(&self) -> Vec<String> {
        self.faults.clone()
    }

    /// RFC 7946, one feature a line, 8 decimals.
    fn to_geojson(&self, py: Python<'_>) -> PyResult<String> {
        let plan = Arc::clone(&self.inner);
        work(py, move || Ok(tussock_ingest::write_plan(&plan)))
    }
}

/// Is this plan sound, and how large is everything in it? As JSON; faults do not raise.
#[pyfunction]
pub(crate) fn plan_check(
    py: Python<'_>,
    name: String,
    content: PyBackedBytes,
    settings: Py<Settings>,
) -> PyResult<String> {
    work(py, move || {
        let read = tussock_ingest::read_plan(&name, &content, &settings.get().inner.limits)
            .map_err(|error| Fault::of(Class::Plan, &error))?;
        let text_is_sound = !read.faults.iter().any(|fault| fault.is_fatal);
        let report = tussock::check_plan(&read.plan);
        let rows: Vec<_> = report
            .rows
            .iter()
            .map(|row| {
                json!({"role": row.role.word(), "name": row.name, "feature": row.feature, "area_m2": row.area_m2, "length_m": row.length_m})
            })
            .collect();
        let is_sound = report.is_sound() && text_is_sound;
        let (lawn_m2, edge_m) = (report.lawn_m2, report.edge_m);
        let faults = tussock::plane::merge_faults(read.faults, report.faults);
        let words: Vec<_> = faults
            .iter()
            .map(|fault| json!({"words": fault.to_string(), "feature": fault.feature, "ring": fault.ring, "is_fatal": fault.is_fatal}))
            .collect();
        Ok(json!({"is_sound": is_sound, "lawn_m2": lawn_m2, "edge_m": edge_m, "rows": rows, "faults": words}).to_string())
    })
}
