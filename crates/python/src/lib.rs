//! The Python module `tussock`: wrappers only.
//!
//! | question | item |
//! |---|---|
//! | how do logs, plans and settings come in? | `read`, `Trace`, `Plan`, `Settings` |
//! | what can be asked of them? | `inspect`, `analyse`, `against_reference`, `compare`, `simulate`, `plan_check`, `plan_from_trace`, `mended_plan` |
//! | what do papers call that, and how sure is it? | `measures`, `count_on_grid`, `compare_paired`, `nights_needed` |
//! | how do many machines share a night? | `Hand`, `Store`, `batch_lookout`, for `tussock.spark` |
//! | how do answers go out? | `Findings`, `Comparison`: JSON, bytes of files, columns as NumPy arrays |
//!
//! Python users see `python/tussock`, which is typed and documented. This half reads bytes, releases the interpreter while it
//! works, and turns every error into an exception with its kind and hint. A panic is caught here and becomes an
//! `InternalError`, so that it cannot end a notebook.
//!
//! Columns go out without a copy: an array borrows the memory of a frozen object, keeps it alive, and is read-only.
//! Python opens the paths; the night shift opens those of its store and its workers.

mod bench;
mod door;
mod findings;
mod garden;
mod sandbox;
mod shift;
mod trace;
mod work;

use pyo3::prelude::*;

#[pymodule]
mod _tussock {
    #[pymodule_export]
    use super::bench::{
        compare_paired, count_on_grid, definitions, gardens_needed, guess_pattern, measures, nights_needed,
        power, spread_of,
    };
    #[pymodule_export]
    use super::findings::{Comparison, Findings, compare, read_comparison, read_findings};
    #[pymodule_export]
    use super::garden::{Plan, Settings, plan_check};
    #[pymodule_export]
    use super::sandbox::{invent_garden, law, simulate};
    #[pymodule_export]
    use super::shift::{Hand, Store, batch_gave_up, batch_lookout, batch_tables, batch_worker};
    #[pymodule_export]
    use super::trace::{Reference, Trace, read};
    #[pymodule_export]
    use super::work::{against_reference, analyse, inspect, mended_plan, plan_from_trace};

    /// Version of the tool, as it stands in every result.
    #[pymodule_export]
    const TOOL_VERSION: &str = tussock::TOOL_VERSION;
}
