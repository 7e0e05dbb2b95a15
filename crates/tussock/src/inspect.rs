//! Is this log good enough? Answered before anything is counted.

use crate::{AnalyseError, Job, Stage, Survey, TOOL_VERSION, verdict};
use tussock_survey::log_findings::{driven_zones, inputs, machines, plan_fit, positions, silences, span};
use tussock_types::{ErrorSeries, FixQuality, Inspection, SCHEMA_VERSION, Trace};

/// Looks at the logs alone; if the job has a plan, only its station is used.
///
/// A log without any usable data, or one that spans half the world, is not an error here: the verdict says so.
///
/// # Errors
/// [`AnalyseError`] if plan and logs do not fit together at all.
pub fn inspect(job: &Job<'_>) -> Result<Inspection, AnalyseError> {
    job.tell(Stage::Locating, 0.0);
    let survey = Survey::of(job)?;
    job.tell(Stage::Locating, 1.0);
    let (low, high) = survey.bounds();
    let middle = low.middle(high);
    let mut hdop: Vec<f64> = job
        .traces
        .iter()
        .flat_map(|trace| &trace.hdop)
        .copied()
        .filter(|value| value.is_finite())
        .map(f64::from)
        .collect();
    hdop.sort_by(f64::total_cmp);
    let at = |part: f64| {
        hdop.get(((hdop.len() as f64 - 1.0) * part).round() as usize)
            .copied()
    };
    let driven_zones = driven_zones(&survey);
    let checks = tussock_check::of_log(&survey);
    let mut log_verdict = verdict::verdict(&survey, &driven_zones);
    checks.hold_to(&mut log_verdict);
    Ok(Inspection {
        schema_version: SCHEMA_VERSION,
        tool_version: TOOL_VERSION.to_owned(),
        inputs: inputs(job),
        log_verdict,
        checks: checks.into_findings(),
        span: span(&survey, job.traces),
        positions: positions(&survey),
        plan_fit: plan_fit(&survey, driven_zones),
        machines: machines(&survey.tracks),
        silences: silences(&survey),
        extent_m: survey.extent_m(),
        middle: survey.geo(middle),
        qualities: FixQuality::ALL
            .into_iter()
            .map(|quality| {
                let of =
                    |trace: &Trace| trace.quality.iter().filter(|found| **found == quality).count() as u64;
                (quality, job.traces.iter().map(of).sum())
            })
            .filter(|(_, count)| *count > 0)
            .collect(),
        hdop: if hdop.is_empty() {
            None
        } else {
            at(0.5).zip(at(0.95))
        },
        repeated_positions: job.traces.iter().map(repeated).sum(),
    })
}

/// How the receiver erred while the machine stood: a device card for other logs of the same receiver.
///
/// # Errors
/// [`AnalyseError::NeverStands`] of a log that never stands for ten minutes, [`AnalyseError::SeveralReceivers`] of the logs of several
/// machines, and those of [`inspect`].
pub fn errors_at_rest(job: &Job<'_>) -> Result<ErrorSeries, AnalyseError> {
    let survey = Survey::of(job)?;
    let [track] = &survey.tracks[..] else {
        return Err(AnalyseError::SeveralReceivers {
            machines: survey.tracks.len(),
        });
    };
    let errors = track.errors_at_rest();
    if errors.time_s.len() < 2 {
        return Err(AnalyseError::NeverStands);
    }
    Ok(errors)
}

fn repeated(trace: &Trace) -> u64 {
    (1..trace.len())
        .filter(|index| trace.positions.pair(*index) == trace.positions.pair(index - 1))
        .count() as u64
}
