//! The questions that are asked of a log.

use crate::door::{Class, Fault, work};
use crate::findings::Findings;
use crate::garden::{Plan, Settings, faulty};
use crate::trace::{Reference, Trace};
use pyo3::prelude::*;
use std::collections::BTreeSet;
use std::sync::Arc;
use tussock::{Advice, AnalyseError, Calibrate, Job, Survey};
use tussock_types::LogFacts;

/// Traces, plan and settings: what every question is asked of.
pub(crate) type AskedOf = (Vec<Py<Trace>>, Option<Py<Plan>>, Py<Settings>);

/// What an analysis was given, kept for a comparison later.
pub(crate) struct GivenInputs {
    traces: Vec<tussock_types::Trace>,
    inputs: Vec<LogFacts>,
    plan: Option<Arc<tussock_types::Plan>>,
    settings: Arc<tussock_types::Settings>,
    seed: u64,
}

impl GivenInputs {
    pub(crate) fn gather((traces, plan, settings): &AskedOf, seed: u64) -> Result<Self, Fault> {
        let mut machines = BTreeSet::new();
        for trace in traces {
            let machine = &trace.get().inner.machine;
            if !machines.insert(machine.clone()) {
                let message =
                    format!("two traces of the machine {machine:?}, expected one trace for each machine");
                return Err(
                    Fault::new(Class::Analyse, "same_machine_twice", message).hint(Some(
                        "read the logs of one machine together: tussock.read([first, second])".to_owned(),
                    )),
                );
            }
        }
        let mut inputs: Vec<&(usize, LogFacts)> =
            traces.iter().flat_map(|trace| trace.get().facts.iter()).collect();
        inputs.sort_by_key(|(place, _)| *place);
        Ok(Self {
            traces: traces
                .iter()
                .map(|trace| tussock_types::Trace::clone(&trace.get().inner))
                .collect(),
            inputs: inputs.into_iter().map(|(_, facts)| facts.clone()).collect(),
            plan: plan.as_ref().map(|plan| Arc::clone(&plan.get().inner)),
            settings: Arc::clone(&settings.get().inner),
            seed,
        })
    }

    pub(crate) fn job(&self, advice: Advice) -> Job<'_> {
        Job {
            plan: self.plan.as_deref(),
            seed: self.seed,
            advice,
            ..Job::new(&self.traces, &self.settings).with_inputs(&self.inputs)
        }
    }
}

impl From<AnalyseError> for Fault {
    fn from(error: AnalyseError) -> Self {
        if let AnalyseError::PlanFaults(faults) = &error {
            return faulty("the plan", faults);
        }
        let hint = error.hint().map(str::to_owned);
        Self::of(Class::Analyse, &error).hint(hint)
    }
}

/// Traces, plan and settings in, findings out.
#[pyfunction]
pub(crate) fn analyse(
    py: Python<'_>,
    asked: AskedOf,
    seed: u64,
    has_suggestions: bool,
    reference: Option<Py<Reference>>,
) -> PyResult<Findings> {
    work(py, move || {
        let kept = GivenInputs::gather(&asked, seed)?;
        let advice = if has_suggestions {
            Advice::Given
        } else {
            Advice::LeftOut
        };
        let job = kept.job(advice);
        let survey = Survey::of(&job)?;
        let mut found = tussock::analyse_survey(&survey, Calibrate::Auto)?;
        if let Some(reference) = &reference {
            found.reference = Some(tussock::against_reference(&survey, &reference.get().inner)?);
        }
        Ok(Findings::of(found, Some(kept)))
    })
}

/// Asks a question of traces, without suggestions.
pub(crate) fn ask<T: Send>(
    py: Python<'_>,
    asked: AskedOf,
    question: impl FnOnce(&Job<'_>) -> Result<T, Fault> + Send,
) -> PyResult<T> {
    work(py, move || {
        let given = GivenInputs::gather(&asked, 0)?;
        question(&given.job(Advice::LeftOut))
    })
}

/// The same of a survey of them, answered as JSON.
pub(crate) fn ask_survey<T: serde::Serialize>(
    py: Python<'_>,
    asked: AskedOf,
    question: impl FnOnce(&Survey<'_>) -> Result<T, AnalyseError> + Send,
) -> PyResult<String> {
    ask(py, asked, |job| json(&question(&Survey::of(job)?)?))
}

/// A plan drawn from the drive alone.
#[pyfunction]
pub(crate) fn plan_from_trace(py: Python<'_>, asked: AskedOf) -> PyResult<Plan> {
    ask(py, asked, |job| Ok(Plan::of(tussock::plan_from_trace(job)?)))
}

/// The plan as the log shows the garden to be.
#[pyfunction]
pub(crate) fn mended_plan(py: Python<'_>, asked: AskedOf) -> PyResult<Plan> {
    ask(py, asked, |job| {
        let survey = Survey::of(job)?;
        let found = tussock::analyse_survey(&survey, Calibrate::Auto)?;
        Ok(Plan::of(tussock::mended_plan(&survey, &found)?.plan))
    })
}

/// Any plain result as JSON.
pub(crate) fn json(value: &impl serde::Serialize) -> Result<String, Fault> {
    serde_json::to_string(value).map_err(|error| Fault::of(Class::Report, &error))
}

/// How far is the log from a surveyed path? As JSON.
#[pyfunction]
pub(crate) fn against_reference(
    py: Python<'_>,
    asked: AskedOf,
    reference: Py<Reference>,
) -> PyResult<String> {
    ask_survey(py, asked, |survey| {
        tussock::against_reference(survey, &reference.get().inner)
    })
}

/// Is this log good enough? As JSON, the same as the command's.
#[pyfunction]
pub(crate) fn inspect(py: Python<'_>, asked: AskedOf) -> PyResult<String> {
    ask(py, asked, |job| {
        let inspection = tussock::inspect(job)?;
        tussock_report::inspection_to_json(&inspection).map_err(|error| Fault::of(Class::Report, &error))
    })
}
