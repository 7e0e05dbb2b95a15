//! How does an error leave, and how is it kept that nothing else does? And how is work done after a fork?

use pyo3::prelude::*;
use pyo3::types::PyList;
use rayon::{ThreadPool, ThreadPoolBuilder};
use std::error::Error;
use std::panic::{AssertUnwindSafe, catch_unwind};
use std::process;
use std::sync::OnceLock;

/// Exceptions of `tussock._errors`, without the `Error` that their names end in.
#[derive(Clone, Copy, Debug)]
pub(crate) enum Class {
    Log,
    Plan,
    Settings,
    Analyse,
    Compare,
    Simulate,
    Report,
    Batch,
    Internal,
}

/// An error on its way out.
pub(crate) struct Fault {
    class: Class,
    message: String,
    kind: String,
    hint: Option<String>,
    faults: Vec<String>,
}

impl Fault {
    pub(crate) fn new(class: Class, kind: &str, message: impl Into<String>) -> Self {
        Self {
            class,
            message: message.into(),
            kind: kind.to_owned(),
            hint: None,
            faults: Vec::new(),
        }
    }

    /// An error with its causes; its kind is the name of its variant.
    pub(crate) fn of(class: Class, error: &impl Error) -> Self {
        let shown = format!("{error:?}");
        let variant: String = shown.chars().take_while(char::is_ascii_alphanumeric).collect();
        Self::new(class, &snake_case(&variant), tussock_types::with_causes(error))
    }

    /// The same with other words.
    pub(crate) fn said(mut self, message: String) -> Self {
        self.message = message;
        self
    }

    pub(crate) fn hint(mut self, hint: Option<String>) -> Self {
        self.hint = hint;
        self
    }

    pub(crate) fn faults(mut self, faults: Vec<String>) -> Self {
        self.faults = faults;
        self
    }

    pub(crate) fn raise(self, py: Python<'_>) -> PyErr {
        let built = || -> PyResult<PyErr> {
            let class = py
                .import("tussock._errors")?
                .getattr(format!("{:?}Error", self.class))?;
            let faults = PyList::new(py, &self.faults)?;
            let error = class.call1((&self.message, &self.kind, self.hint.as_deref(), faults))?;
            Ok(PyErr::from_value(error))
        };
        built().unwrap_or_else(|error| error)
    }
}

fn snake_case(camel: &str) -> String {
    let mut snake = String::new();
    for letter in camel.chars() {
        if letter.is_ascii_uppercase() && !snake.is_empty() {
            snake.push('_');
        }
        snake.push(letter.to_ascii_lowercase());
    }
    snake
}

/// Threads of one process, and those of the processes that were forked from it.
struct Pool {
    process: u32,
    threads: ThreadPool,
    forked: OnceLock<Box<Pool>>,
}

/// As on the main thread of most systems.
const STACK_BYTES: usize = 8 << 20;

/// The pool of the process that first asked. A chain to which only ever something is added: a lock would be copied by a fork as it
/// is held.
static POOLS: OnceLock<Box<Pool>> = OnceLock::new();

/// Threads of this process. They do not live on in a fork, where waiting for them would never end, so each process has its own.
fn threads() -> Result<&'static ThreadPool, Fault> {
    let process = process::id();
    let mut slot = &POOLS;
    loop {
        match slot.get() {
            Some(pool) if pool.process == process => return Ok(&pool.threads),
            Some(pool) => slot = &pool.forked,
            None => {
                let built = ThreadPoolBuilder::new().stack_size(STACK_BYTES).build();
                let threads = built.map_err(|error| {
                    let message = format!("no threads can be started: {error}");
                    Fault::new(Class::Analyse, "threads", message)
                })?;
                let forked = OnceLock::new();
                // Another thread may have been first: then its pool is taken.
                let _ = slot.set(Box::new(Pool {
                    process,
                    threads,
                    forked,
                }));
            }
        }
    }
}

/// Works without holding the interpreter. A panic becomes an `InternalError`.
pub(crate) fn work<T: Send>(py: Python<'_>, job: impl FnOnce() -> Result<T, Fault> + Send) -> PyResult<T> {
    let done = py.detach(|| catch_unwind(AssertUnwindSafe(|| threads()?.install(job))));
    match done {
        Ok(result) => result.map_err(|fault| fault.raise(py)),
        Err(panic) => {
            let said = panic
                .downcast_ref::<String>()
                .map(String::as_str)
                .or_else(|| panic.downcast_ref::<&str>().copied())
                .unwrap_or("no words");
            let message = format!("a bug in tussock {}: {said}", tussock::TOOL_VERSION);
            Err(Fault::new(Class::Internal, "panic", message).raise(py))
        }
    }
}
